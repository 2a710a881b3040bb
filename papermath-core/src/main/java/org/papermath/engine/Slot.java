package org.papermath.engine;

/** The place of one assumption among the values of a job; only {@link Values} can read it. */
public final class Slot {
    final int at;

    Slot(int at) {
        this.at = at;
    }
}
