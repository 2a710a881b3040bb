package org.papermath.engine;

/** What goes into the mail: the piece by itself, or the envelope with what is in it. */
final class Mailing {
    private Mailing() {}

    /** Mass of a closed envelope. */
    static double mass(double envelope, int inserts, double held) {
        return envelope + inserts * held;
    }

    /** Thickness of a closed envelope. */
    static double thickness(double filling, double caliper) {
        return filling + MakingEnvelopes.LAYERS * caliper;
    }
}
