package org.papermath.engine;

import org.papermath.quantity.Kinds;

/** What goes into the mail: the piece by itself, or the envelope with what is in it. */
public final class Mailing {
    static final StageFigures FIGURES = new StageFigures();

    public static final PieceFigure MAIL_MASS = FIGURES.piece("mass of what is mailed", Kinds.MASS, "g", Scale.FACTOR);
    public static final PieceFigure MAIL_THICKNESS =
            FIGURES.pieceIfKnown("thickness of what is mailed", Kinds.LENGTH, "mm", Scale.FACTOR);

    private Mailing() {}

    /** A piece mailed by itself. */
    static void forecastAlone(int piece, int layers, Figures out) {
        out.set(MAIL_MASS, piece, out.of(CuttingAndFolding.MASS, piece));
        out.set(MAIL_THICKNESS, piece, out.of(FinishedSheet.CALIPER, piece) * layers);
    }

    /** An envelope mailed with so many of another piece in it, of a thickness together. */
    static void forecast(int piece, int inserts, int held, double filling, Figures out) {
        double mass = out.of(CuttingAndFolding.MASS, piece);
        out.set(MAIL_MASS, piece, mass(mass, inserts, out.of(CuttingAndFolding.MASS, held)));
        out.set(MAIL_THICKNESS, piece, thickness(filling, out.of(FinishedSheet.CALIPER, piece)));
    }

    /** Mass of a closed envelope. */
    static double mass(double envelope, int inserts, double held) {
        return envelope + inserts * held;
    }

    /** Thickness of a closed envelope. */
    static double thickness(double filling, double caliper) {
        return filling + MakingEnvelopes.LAYERS * caliper;
    }
}
