package org.papermath.equation;

/** The wet sheet on the mould, on the felt and in the post: thickness, height, water given up. */
public final class WetWeb {
    private WetWeb() {}

    /**
     * Thickness (m) of a wet sheet without air in it, from oven-dry grammage (kg/m2), moisture ratio and the densities
     * of fibre wall and water (kg/m3): {@code W (1/rho_c + M/rho_w)}.
     */
    public static double thickness(double grammage, double ratio, double wallDensity, double waterDensity) {
        return grammage * (1 / wallDensity + ratio / waterDensity);
    }

    /** Water given up per area (kg/m2) between two moisture ratios. */
    public static double waterOut(double grammage, double ratioIn, double ratioOut) {
        return grammage * (ratioIn - ratioOut);
    }

    /** Height (m) of a post from the number of sheets and the height one sheet takes up with its felt. */
    public static double postHeight(double sheets, double heightPerFeltAndSheet) {
        return sheets * heightPerFeltAndSheet;
    }

    /** Water (kg) the felts of a post take up: sheets, felt area (m2), water per area after and before (kg/m2). */
    public static double feltWater(double sheets, double feltArea, double waterAfter, double waterBefore) {
        return sheets * feltArea * (waterAfter - waterBefore);
    }
}
