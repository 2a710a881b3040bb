package org.papermath.json;

import java.util.Objects;

/**
 * A member that had another name in an earlier version of a format. The old name is read, reported as a
 * {@linkplain Document#notes() note}, and never written.
 *
 * @param object the JSON Pointer of its object, with {@code *} for the number of any item: {@code /pieces/*}
 * @param old the earlier name
 * @param now the name today
 */
public record Renamed(String object, String old, String now) {
    /**
     * Checks that nothing is missing.
     *
     * @param object the JSON Pointer of its object, with {@code *} for the number of any item: {@code /pieces/*}
     * @param old the earlier name
     * @param now the name today
     */
    public Renamed {
        Objects.requireNonNull(object, "object");
        Objects.requireNonNull(old, "old");
        Objects.requireNonNull(now, "now");
    }
}
