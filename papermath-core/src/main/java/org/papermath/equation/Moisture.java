package org.papermath.equation;

/**
 * Water in fibre: the four ways of saying it, and what is dry in what was bought.
 *
 * <p>Wet-basis moisture w is water over wet mass, moisture ratio M (or regain r) is water over oven-dry mass, solids
 * S is oven-dry mass over wet mass; all are fractions.
 */
public final class Moisture {
    /** Solids of pulp called air-dry when it is invoiced: 900 kg of oven-dry fibre in a tonne. */
    public static final double AIR_DRY_SOLIDS = 0.90;

    private Moisture() {}

    /** Moisture ratio M (water over oven-dry mass) from wet-basis moisture w. */
    public static double ratioOfWetBasis(double w) {
        return w / (1 - w);
    }

    /** Wet-basis moisture w from moisture ratio M. */
    public static double wetBasisOfRatio(double ratio) {
        return ratio / (1 + ratio);
    }

    /** Moisture ratio M from solids S. */
    public static double ratioOfSolids(double solids) {
        return (1 - solids) / solids;
    }

    /** Solids S from moisture ratio M. */
    public static double solidsOfRatio(double ratio) {
        return 1 / (1 + ratio);
    }

    /** Oven-dry mass in a mass with wet-basis moisture w. */
    public static double ovenDryOfWetBasis(double mass, double w) {
        return mass * (1 - w);
    }

    /** Oven-dry mass in a mass with moisture ratio M. */
    public static double ovenDryOfRatio(double mass, double ratio) {
        return mass / (1 + ratio);
    }

    /** Mass with wet-basis moisture w that holds an oven-dry mass. */
    public static double massAtWetBasis(double ovenDry, double w) {
        return ovenDry / (1 - w);
    }

    /** Mass invoiced as air-dry for an oven-dry mass. */
    public static double airDry(double ovenDry) {
        return ovenDry / AIR_DRY_SOLIDS;
    }

    /** Wet-basis moisture of a sample from its mass before and after drying in the oven. */
    public static double wetBasisOfSample(double wet, double dried) {
        return (wet - dried) / wet;
    }

    /** Oven-dry stuff that sorting, cooking and washing leave of an oven-dry raw mass. */
    public static double stuff(double ovenDryRaw, double yield) {
        return ovenDryRaw * yield;
    }

    /** Oven-dry raw mass to start from for an oven-dry mass of stuff. */
    public static double rawForStuff(double ovenDryStuff, double yield) {
        return ovenDryStuff / yield;
    }
}
