package org.papermath.equation;

/** The wet sheet on the mould, on the felt and in the post: thickness, height, water given up. */
public final class WetWeb {
    private static final double KILOGRAMS_PER_GRAM_PER_CM3 = 1000;

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

    /** Height (m) of a post: layers of sheets, the thickness of a felt and of a wet sheet (m); one felt lies on top. */
    public static double postHeight(double layers, double felt, double sheet) {
        return layers * (felt + sheet) + felt;
    }

    /** The most layers of sheets that go into a height; none where not even one does. */
    public static double layersWithin(double height, double felt, double sheet) {
        return Math.max(0, (height - felt) / (felt + sheet));
    }

    /** Thickness (m) of a felt from its dry grammage (kg/m2) and density (kg/m3). */
    public static double feltThickness(double grammage, double density) {
        return grammage / density;
    }

    /**
     * Water a soaked felt holds over its dry mass: a share of the room between its fibres, {@code k (1/rho - 1/rho_f)}
     * with the densities of felt and fibre (kg/m3) in g/cm3.
     */
    public static double soakedFelt(double share, double density, double fibreDensity) {
        return Math.max(0, share * KILOGRAMS_PER_GRAM_PER_CM3 * (1 / density - 1 / fibreDensity));
    }

    /** Water (kg) the felts of a post take up: felts, dry mass of one (kg), water over dry mass after and before. */
    public static double feltWater(double felts, double feltMass, double after, double before) {
        return felts * feltMass * (after - before);
    }
}
