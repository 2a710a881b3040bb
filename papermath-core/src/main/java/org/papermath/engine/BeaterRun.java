package org.papermath.engine;

/**
 * Fibres that are beaten together, in loads of one size.
 *
 * @param fibres their places in the furnish
 * @param time how long each load is beaten, s
 * @param loads how many loads
 * @param ovenDry oven-dry fibre of a load, kg
 * @param water water to a load, what the fibre brings with it taken off, m³
 */
public record BeaterRun(int[] fibres, double time, int loads, double ovenDry, double water) {
    /** The same of nothing. */
    BeaterRun without() {
        return new BeaterRun(fibres, time, 0, 0, 0);
    }
}
