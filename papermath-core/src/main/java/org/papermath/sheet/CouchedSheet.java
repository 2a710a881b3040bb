package org.papermath.sheet;

import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Reading;
import org.papermath.evidence.Scope;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Solids;

/** A sheet on its felt, before pressing. Immutable. */
public final class CouchedSheet extends Sheet {
    /** What one weighing leaves, of solids. */
    private static final double LEFT = 0.01;

    CouchedSheet(
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
     * Makes a couched sheet from the scale: weighed wet, and dry after the oven.
     *
     * @param wet the mass as couched
     * @param ovenDry the oven-dry mass, above zero and at most the wet mass
     * @param width the width, above zero
     * @param height the height, above zero
     * @return the sheet, its oven-dry mass counted as fibre
     * @throws Refused if a value is out of range
     */
    public static CouchedSheet weighed(
            Quantity<Mass> wet, Quantity<Mass> ovenDry, Quantity<Length> width, Quantity<Length> height) {
        double whole = Kinds.MASS.siAboveZero(wet, "mass of the couched sheet");
        double dry = Kinds.MASS.siAboveZero(ovenDry, "oven-dry mass of the sheet");
        Kinds.MASS.siWithin(ovenDry, "oven-dry mass of the sheet", 0, whole);
        return new CouchedSheet(
                dry, 0, 0, whole - dry, side(width, "width of the sheet"), side(height, "height of the sheet"), 0);
    }

    /**
     * Makes a couched sheet from the scale when it was dried in air rather than in the oven.
     *
     * @param wet the mass as couched
     * @param dry the same sheet dry, weighed in known air
     * @param width the width as couched, above zero
     * @param height the height as couched, above zero
     * @return the sheet
     * @throws Refused if a value is out of range
     */
    public static CouchedSheet weighed(
            Quantity<Mass> wet, DrySheet dry, Quantity<Length> width, Quantity<Length> height) {
        Objects.requireNonNull(dry, "dry");
        return weighed(wet, dry.ovenDry(), width, height);
    }

    /**
     * Presses the sheet to known solids; {@code PressingModel} predicts them.
     *
     * @param solids the solids after pressing
     * @return the pressed sheet
     * @throws Refused if the solids are below those of the couched sheet
     */
    public PressedSheet pressed(Quantity<Solids> solids) {
        double left = waterAt(Kinds.SOLIDS.si(solids, "solids of the pressed sheet"), "solids of the pressed sheet");
        return new PressedSheet(fibre, additives, minerals, left, width, height, water - left);
    }

    /**
     * Leaves the sheet unpressed: it dries as it was couched, which takes about twice as long.
     *
     * @return the sheet, ready to dry
     */
    public PressedSheet unpressed() {
        return new PressedSheet(fibre, additives, minerals, water, width, height, 0);
    }

    /**
     * Calibrates the solids of couched sheets by one that was weighed couched and dry: {@code dry/wet}.
     *
     * @param assumptions the store
     * @param scope the vat, {@code Scope.at(name)}
     * @param couched the mass as couched
     * @param ovenDry the mass out of the oven
     * @return the store with {@code web.solids-couched} measured in that scope
     * @throws Refused if the sheet became heavier
     */
    public static Assumptions calibrate(
            Assumptions assumptions, Scope scope, Reading<Mass> couched, Reading<Mass> ovenDry) {
        Objects.requireNonNull(couched, "couched");
        return dryMatter(assumptions, "web.solids-couched", scope, couched, ovenDry, LEFT, false);
    }

    @Override
    public String toString() {
        return text("couched");
    }
}
