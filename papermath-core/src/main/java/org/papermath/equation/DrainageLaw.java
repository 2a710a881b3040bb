package org.papermath.equation;

/**
 * How long stock drains on a mould.
 *
 * @param endShare share of the water above the mould that has left when the sheen goes
 * @param matRetention share of the fibre the growing mat holds back
 * @param wireResistance of the cover, 1/m
 * @param factor for shake and tilt
 */
public record DrainageLaw(double endShare, double matRetention, double wireResistance, double factor) {
    /** Time (s) until the sheen goes. */
    public double time(double depth, double alpha, double perVolume, double viscosity, double density) {
        return time(endShare, depth, alpha, perVolume, viscosity, density);
    }

    /**
     * Time (s) until a share of the water has left.
     *
     * @param share of the depth
     * @param depth of stock, m
     * @param alpha specific resistance of the mat, m/kg
     * @param perVolume fibre in a volume of stock, kg/m3
     * @param viscosity of the water, Pa s
     * @param density of the water, kg/m3
     */
    public double time(double share, double depth, double alpha, double perVolume, double viscosity, double density) {
        return factor
                * Drainage.time(
                        share * depth, depth, alpha, matRetention, perVolume, wireResistance, viscosity, density);
    }

    /** Depth (m) of water that has left after a time (s). */
    public double drained(double time, double depth, double alpha, double perVolume, double viscosity, double density) {
        return Drainage.filtrateAfter(
                time / factor, depth, alpha, matRetention, perVolume, wireResistance, viscosity, density);
    }

    /** The specific resistance (m/kg) behind a time (s); inverse of {@link #time}. */
    public double alpha(double time, double depth, double perVolume, double viscosity, double density) {
        return Drainage.alphaOfTime(
                time / factor, endShare * depth, depth, matRetention, perVolume, wireResistance, viscosity, density);
    }
}
