package org.papermath.evidence;

/** The form of the distribution of an assumption between and beyond its 5 % and 95 % points. */
public enum Shape {
    /** Normal. */
    NORMAL,
    /** Log-normal: factors rather than differences; above zero. */
    LOG_NORMAL,
    /** Logit-normal: shares, kept between zero and one. */
    LOGIT;

    /**
     * Returns where a value lies on the scale on which the distribution is normal.
     *
     * @param value the value, in the unit of its assumption
     * @return the value as it is, its logarithm, or the logarithm of its odds; not finite where it has no place there
     */
    public double scaled(double value) {
        return switch (this) {
            case NORMAL -> value;
            case LOG_NORMAL -> Math.log(value);
            case LOGIT -> Math.log(value / (1 - value));
        };
    }

    /**
     * Returns the value at a place on that scale.
     *
     * @param scaled the place
     * @return the value, in the unit of its assumption
     */
    public double plain(double scaled) {
        return switch (this) {
            case NORMAL -> scaled;
            case LOG_NORMAL -> Math.exp(scaled);
            case LOGIT -> 1 / (1 + Math.exp(-scaled));
        };
    }
}
