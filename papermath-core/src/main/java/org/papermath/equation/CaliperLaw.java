package org.papermath.equation;

/**
 * How thick a dry sheet is: grammage over density, and below a grammage, where single fibres set the thickness,
 * {@code t0 + W/rho}.
 *
 * @param thinBelow grammage below which a sheet is thin, kg/m2
 * @param thinOffset the part of the thickness of a thin sheet that does not grow with its grammage, m
 * @param thinDensity density in a thin sheet, kg/m3
 */
public record CaliperLaw(double thinBelow, double thinOffset, double thinDensity) {
    /** Whether single fibres set the thickness of a sheet of this grammage (kg/m2). */
    public boolean isThin(double grammage) {
        return grammage < thinBelow;
    }

    /** The thickness (m) of a sheet of a grammage (kg/m2), of a density (kg/m3) where it is not thin. */
    public double caliper(double grammage, double density) {
        return isThin(grammage) ? thin(grammage) : Density.caliper(grammage, density);
    }

    /** The thickness (m) by the rule for thin sheets. */
    public double thin(double grammage) {
        return Density.thinSheetCaliper(grammage, thinOffset, thinDensity);
    }
}
