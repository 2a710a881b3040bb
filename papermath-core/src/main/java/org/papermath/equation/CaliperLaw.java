package org.papermath.equation;

/**
 * How thick a dry sheet is: {@code t = w + t0 exp(-w/t0)}, with w its grammage over its density. A sheet in which many
 * fibres lie over one another is as thick as w; the thinner it gets, the more it is single fibres that set the
 * thickness, down to t0. It never thins when it gets heavier, and every thickness above t0 belongs to one grammage.
 *
 * @param thinnest t0, the thickness of single fibres with gaps between them, m
 */
public record CaliperLaw(double thinnest) {
    private static final int MOST_STEPS = 60;

    /** The thickness (m) of a sheet of a grammage (kg/m2) and a density (kg/m3). */
    public double caliper(double grammage, double density) {
        double solid = Density.caliper(grammage, density);
        return thinnest > 0 ? solid + thinnest * Math.exp(-solid / thinnest) : solid;
    }

    /**
     * The thickness (m) that the mass alone would have in a sheet of a thickness (m); not a number for a sheet as thin
     * as single fibres or thinner.
     */
    public double solid(double caliper) {
        if (!(thinnest > 0)) {
            return caliper;
        }
        if (!(caliper > thinnest)) {
            return Double.NaN;
        }
        // From above Newton's steps come down to the root without passing it: the curve bends upwards.
        double solid = caliper;
        for (int i = 0; i < MOST_STEPS; i++) {
            double part = Math.exp(-solid / thinnest);
            double next = solid - (solid + thinnest * part - caliper) / -Math.expm1(-solid / thinnest);
            if (!(next < solid)) {
                return solid;
            }
            solid = next;
        }
        return solid;
    }
}
