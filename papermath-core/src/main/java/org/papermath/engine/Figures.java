package org.papermath.engine;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The forecasts of a job, in coherent SI: of each batch, of each piece, and the hours of the whole. One that cannot be
 * made is not a number, or infinite.
 *
 * <p>Only this class knows that they stand in one array, so that bands can go through all of them.
 */
public final class Figures {
    /** The stages that declare figures, in the order in which these stand: what comes out, then the way there. */
    private static final List<StageFigures> STAGES = List.of(
            PreparingStock.FIGURES,
            FinishedSheet.FIGURES,
            CuttingAndFolding.FIGURES,
            Rejects.FIGURES,
            FormingSheets.FIGURES,
            Pressing.FIGURES,
            DryingSheets.FIGURES,
            SizingSheets.FIGURES,
            FillingVat.FIGURES,
            Posts.FIGURES,
            MakingEnvelopes.FIGURES,
            Mailing.FIGURES,
            PieceWork.FIGURES);

    private static final List<BatchFigure> BATCH_FIGURES = new ArrayList<>();
    private static final List<PieceFigure> PIECE_FIGURES = new ArrayList<>();

    static {
        for (StageFigures stage : STAGES) {
            stage.firstOfBatch = BATCH_FIGURES.size();
            stage.firstOfPiece = PIECE_FIGURES.size();
            BATCH_FIGURES.addAll(stage.ofBatch);
            PIECE_FIGURES.addAll(stage.ofPiece);
        }
    }

    private static final int BATCH = BATCH_FIGURES.size();
    private static final int PIECE = PIECE_FIGURES.size();

    private final int batches;
    final double[] all;

    Figures(int batches, int pieces) {
        this(batches, new double[batches * BATCH + pieces * PIECE + 1]);
    }

    private Figures(int batches, double[] all) {
        this.batches = batches;
        this.all = all;
    }

    /** Every figure of a batch. */
    public static List<BatchFigure> ofBatches() {
        return Collections.unmodifiableList(BATCH_FIGURES);
    }

    /** Every figure of a piece. */
    public static List<PieceFigure> ofPieces() {
        return Collections.unmodifiableList(PIECE_FIGURES);
    }

    /** Figures of the same job that hold other numbers, such as the ends of bands. */
    public Figures like(double[] numbers) {
        return new Figures(batches, numbers);
    }

    void copyFrom(Figures other) {
        System.arraycopy(other.all, 0, all, 0, all.length);
    }

    void set(BatchFigure figure, int batch, double x) {
        all[place(figure, batch)] = x;
    }

    void set(PieceFigure figure, int piece, double x) {
        all[place(figure, piece)] = x;
    }

    void setHours(double seconds) {
        all[hoursPlace()] = seconds;
    }

    /** A forecast of a batch. */
    public double of(BatchFigure figure, int batch) {
        return all[place(figure, batch)];
    }

    /** A forecast of a piece. */
    public double of(PieceFigure figure, int piece) {
        return all[place(figure, piece)];
    }

    /** The hours of the whole job, s. */
    public double hours() {
        return all[hoursPlace()];
    }

    /** The number of figures. */
    public int size() {
        return all.length;
    }

    /** The figure at a place. */
    public double at(int place) {
        return all[place];
    }

    /** The place of a figure of a batch. */
    public int place(BatchFigure figure, int batch) {
        return batch * BATCH + figure.place();
    }

    /** The place of a figure of a piece. */
    public int place(PieceFigure figure, int piece) {
        return batches * BATCH + piece * PIECE + figure.place();
    }

    /** The place of the hours of the whole. */
    public int hoursPlace() {
        return all.length - 1;
    }

    /** What stands at a place; null for the hours of the whole. */
    public @Nullable Figure figure(int place) {
        int pieces = place - batches * BATCH;
        if (place == hoursPlace()) {
            return null;
        }
        return pieces < 0 ? BATCH_FIGURES.get(place % BATCH) : PIECE_FIGURES.get(pieces % PIECE);
    }

    /** The batch a place is of, or -1. */
    public int batchAt(int place) {
        return place < batches * BATCH ? place / BATCH : -1;
    }

    /** The piece a place is of, or -1. */
    public int pieceAt(int place) {
        int pieces = place - batches * BATCH;
        return pieces < 0 || place == hoursPlace() ? -1 : pieces / PIECE;
    }
}
