package org.papermath.evidence;

/** The form of the distribution of an assumption between and beyond its 5 % and 95 % points. */
public enum Shape {
    /** Normal. */
    NORMAL,
    /** Log-normal: factors rather than differences; above zero. */
    LOG_NORMAL,
    /** Logit-normal: shares, kept between zero and one. */
    LOGIT
}
