package org.papermath.quantity;

import javax.measure.Quantity;

/**
 * A flow of air or water by volume.
 */
public interface VolumeFlow extends Quantity<VolumeFlow> {
    /**
     * Makes an amount in the unit "cubic metre per hour".
     *
     * @param value a finite number; range 0 or more
     * @return the amount
     * @throws Refused if the value is not a number or out of range
     */
    static Amount<VolumeFlow> cubicMetresPerHour(double value) {
        return Kinds.VOLUME_FLOW.of(value, "m3/h");
    }

    /**
     * Makes an amount in the unit "cubic foot per minute".
     *
     * @param value a finite number; range 0 or more
     * @return the amount
     * @throws Refused if the value is not a number or out of range
     */
    static Amount<VolumeFlow> cubicFeetPerMinute(double value) {
        return Kinds.VOLUME_FLOW.of(value, "ft3/min");
    }
}
