package org.papermath.evidence;

/** What an assumption is for, and so whether it is varied in bands. */
public enum Role {
    /** A property of nature or of the studio: varied in bands, replaced by calibration. */
    PHYSICAL,
    /** A default setting, such as sheets in a post: never varied, replaced by one's own habit. */
    HABIT,
    /** A limit for warnings and refusals: never varied, never calibrated. */
    LIMIT
}
