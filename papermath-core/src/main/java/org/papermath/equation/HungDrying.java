package org.papermath.equation;

/**
 * Drying in still or moving air, hung or on boards: heat gained by wet faces is spent on evaporation.
 *
 * @param convection film coefficient, W/(m2 K)
 * @param radiation radiative coefficient, W/(m2 K)
 * @param lewis Lewis number
 * @param tail factor for the falling rate at the end
 */
public record HungDrying(double convection, double radiation, double lewis, double tail) {
    /** In saturated air without sun the root leaves a trace of rounding, which is no drying. */
    private static final double NO_FLUX = 1e-12;

    /** Water (kg/(m2 s)) leaving one wet face in air of a temperature (°C) and humidity, with heat from the sun (W/m2). */
    public double flux(double celsius, double humidity, double sun) {
        double flux = Drying.surfaceFlux(celsius, humidity, convection, radiation, lewis, sun);
        return flux < NO_FLUX ? 0 : flux;
    }

    /**
     * Time (s) to dry a grammage (kg/m2) from one moisture ratio to another; infinite where nothing evaporates or the
     * air keeps more water in the sheet than it is to end with.
     */
    public double time(
            double grammage, double start, double end, double equilibrium, double sheets, double faces, double flux) {
        return end <= equilibrium && start > end
                ? Double.POSITIVE_INFINITY
                : Drying.hungTime(grammage, start, end, sheets, faces, flux, tail);
    }
}
