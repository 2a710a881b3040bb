package org.papermath.sheet;

import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Mass;
import org.papermath.air.Air;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Reading;
import org.papermath.evidence.Scope;
import org.papermath.fibre.SorptionModel;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Solids;
import org.papermath.shape.Shrinkage;

/** A sheet out of the press, before drying; also a sized sheet before it is dried again. Immutable. */
public final class PressedSheet extends Sheet {
    /** What one weighing leaves, of solids. */
    private static final double LEFT = 0.01;

    PressedSheet(
            double fibre,
            double additives,
            double minerals,
            double water,
            double width,
            double height,
            double released) {
        super(fibre, additives, minerals, water, width, height, released);
    }

    /**
     * Presses the sheet once more, by exchange of felts or blotters.
     *
     * @param solids the solids after it
     * @return the sheet
     * @throws Refused if the solids are below those before
     */
    public PressedSheet pressedAgain(Quantity<Solids> solids) {
        double left = waterAt(Kinds.SOLIDS.si(solids, "solids after pressing again"), "solids after pressing again");
        return new PressedSheet(fibre, additives, minerals, left, width, height, water - left);
    }

    /**
     * Dries the sheet until it is in equilibrium with the air:
     * {@code grammage = W (1 + M)/((1 - s_along)(1 - s_across))}, where minerals hold no water.
     *
     * @param shrinkage what it shrinks in each direction, as the drying lets it
     * @param sorption the moisture of its fibre in air
     * @param air the air of the room
     * @return the dry sheet
     * @throws Refused if the sheet is drier than that already
     */
    public DrySheet dried(Shrinkage shrinkage, SorptionModel sorption, Air air) {
        double left = sorbing() * sorption.ratio(air).si();
        if (left > water) {
            throw Refused.of(
                    "sheet.drier",
                    "drying: the sheet is at " + moisture() + " moisture and the air would bring it to "
                            + Kinds.MOISTURE_RATIO.ofSi(left / ovenDrySi(), "g/g")
                            + "; it would not dry but take up water.",
                    "given",
                    moisture().toString());
        }
        return new DrySheet(
                fibre,
                additives,
                minerals,
                left,
                width * (1 - shrinkage.acrossFraction()),
                height * (1 - shrinkage.alongFraction()),
                water - left,
                sorption);
    }

    /**
     * Calibrates the solids of pressed sheets by one that was weighed pressed and dry: {@code dry/pressed}.
     *
     * @param assumptions the store
     * @param scope the recipe and the dryer
     * @param pressed the mass out of the press
     * @param ovenDry the mass out of the oven
     * @return the store with {@code web.solids-pressed} measured in that scope
     * @throws Refused if the sheet became heavier
     */
    public static Assumptions calibrate(
            Assumptions assumptions, Scope scope, Reading<Mass> pressed, Reading<Mass> ovenDry) {
        Objects.requireNonNull(pressed, "pressed");
        return dryMatter(assumptions, "web.solids-pressed", scope, pressed, ovenDry, LEFT, false);
    }

    @Override
    public String toString() {
        return text("pressed");
    }
}
