package org.papermath.equation;

/**
 * Drying in a stack that a fan blows through.
 *
 * @param efficiency share of the drying power of the air that is used
 * @param critical moisture ratio at which the rate begins to fall
 */
public record StackDrying(double efficiency, double critical) {
    /**
     * The air that is drawn in.
     *
     * @param volume of a kilogram of dry air in it, m3/kg
     * @param saturated humidity ratio at its wet bulb
     * @param ratio its humidity ratio
     */
    public record Inlet(double volume, double saturated, double ratio) {
        /** The air of a temperature (°C), humidity and pressure (Pa). */
        public static Inlet of(double celsius, double humidity, double pressure) {
            double ratio = Psychrometrics.humidityRatio(Psychrometrics.vapourPressure(celsius, humidity), pressure);
            return new Inlet(
                    Psychrometrics.volume(celsius, ratio, pressure),
                    Psychrometrics.saturatedHumidityRatio(Psychrometrics.wetBulb(celsius, ratio, pressure), pressure),
                    ratio);
        }
    }

    /** Water (kg/s) a stack gives up to a flow of air (m3/s). */
    public double evaporation(double flow, Inlet air) {
        return Drying.stackEvaporation(efficiency, Drying.dryAirFlow(flow, air.volume), air.saturated, air.ratio);
    }

    /** Time (s) to dry an oven-dry mass (kg) from one moisture ratio to another. */
    public double time(double ovenDry, double evaporation, double start, double end, double equilibrium) {
        return Drying.twoPeriodTime(ovenDry, evaporation, start, critical, equilibrium, end);
    }
}
