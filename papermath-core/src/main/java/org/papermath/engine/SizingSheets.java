package org.papermath.engine;

import org.jspecify.annotations.Nullable;
import org.papermath.numeric.Rounding;
import org.papermath.order.Recipe;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kinds;

/** Dry sheets through a bath of size: the bath to make, what they take up. */
public final class SizingSheets {
    static final StageFigures FIGURES = new StageFigures();

    public static final PieceFigure SIZE = FIGURES.piece("size taken up", Kinds.NUMBER, "%", Scale.ROOT);

    /** The step in which a size bath is made, m³. */
    private static final double BATH_STEP = 1e-4;

    private final Workshop workshop;
    private final double strength;
    private final Slot taken;
    private final Slot heel;
    private final Slot time;

    /**
     * The bath.
     *
     * @param taken size solution the sheets take up, kg
     * @param bath bath to make, m³
     * @param drySize dry size in it, kg
     */
    public record Setting(double taken, double bath, double drySize) {}

    SizingSheets(Known known, Workshop workshop, Recipe recipe) {
        this.workshop = workshop;
        strength = recipe.sizeBath().map(Amount::si).orElse(Double.NaN);
        taken = known.slot("size.bath-taken");
        heel = known.slot("size.bath-heel");
        time = known.slot("labour.size");
    }

    /** Whether the recipe has a size bath. */
    public boolean isDone() {
        return !Double.isNaN(strength);
    }

    /** What the sheets take up. */
    void forecast(Passage on) {
        on.gain = gain(on.v);
        on.taken = on.gain == 0 ? 0 : taken(on.v);
        on.set(SIZE, on.gain);
    }

    /** Dry size taken up, over oven-dry solids. */
    double gain(Values v) {
        return isDone() ? v.of(taken) * strength / workshop.waterDensity : 0;
    }

    /** Solution taken up, over oven-dry solids. */
    double taken(Values v) {
        return v.of(taken);
    }

    @Nullable
    Setting decide(FormingSheets.Setting sheet, double gain, Values v) {
        if (!(gain > 0)) {
            return null;
        }
        double solution = sheet.sheets() * sheet.solids() * v.of(taken);
        double bath = Rounding.ceilTo(solution / workshop.waterDensity + v.of(heel), BATH_STEP);
        return new Setting(solution, bath, Rounding.ceilTo(bath * strength, workshop.scale));
    }

    /** Hands at the bath, s. */
    double hours(int sheets, Values v) {
        return isDone() ? sheets * v.of(time) : 0;
    }
}
