package org.papermath.plan;

import java.util.Arrays;
import java.util.Objects;
import java.util.Set;

import org.jspecify.annotations.Nullable;
import org.papermath.quantity.Kind;
import org.papermath.quantity.Kinds;

/**
 * Places of the forecasts in the array of results; one stretch of the array for each batch, then one for each piece.
 */
final class Out {
    // A batch.
    static final int DRAINABILITY = 0;
    static final int WATER_RETENTION = 1;
    static final int FREE_SHRINKAGE = 2;
    static final int STOCK_CONSISTENCY = 3;
    static final int STOCK_LEFT = 4;
    static final int VAT_FIBRE = 5;
    static final int VAT_STOCK = 6;
    static final int WHITE_WATER = 7;
    static final int FIBRE_WEIGHED = 8;
    static final int HANDLING = 9;
    static final int BATCH_HOURS = 10;
    static final int BATCH = 11;

    // A piece.
    static final int GRAMMAGE = 0;
    static final int WIDTH = 1;
    static final int HEIGHT = 2;
    static final int CALIPER = 3;
    static final int MASS = 4;
    static final int PILE = 5;
    static final int GOOD = 6;
    static final int MAT = 7;
    static final int COUCHED = 8;
    static final int DRAIN = 9;
    static final int SOLIDS = 10;
    static final int DRYING = 11;
    static final int EVAPORATED = 12;
    static final int LOAD = 13;
    static final int SIZE = 14;
    static final int CLEAR_WIDTH = 15;
    static final int CLEAR_HEIGHT = 16;
    static final int MAIL_MASS = 17;
    static final int MAIL_THICKNESS = 18;
    static final int SHRINK_ALONG = 19;
    static final int SHRINK_ACROSS = 20;
    static final int LIGHTEST = 21;
    static final int HEAVIEST = 22;
    static final int POST_MASS = 23;
    static final int POST_HEIGHT = 24;
    static final int FINAL_RATIO = 25;
    static final int PRESSED_RATIO = 26;
    static final int SHEET_FIBRE = 27;
    static final int HOURS = 28;
    static final int DENSITY = 29;
    static final int DRYING_AGAIN = 30;
    static final int PIECE = 31;

    private static final Scale[] BATCH_SCALES = new Scale[BATCH];
    private static final Scale[] PIECE_SCALES = new Scale[PIECE];

    static {
        Arrays.fill(BATCH_SCALES, Scale.FACTOR);
        BATCH_SCALES[DRAINABILITY] = Scale.SHARE;
        BATCH_SCALES[FREE_SHRINKAGE] = Scale.ROOT;
        BATCH_SCALES[STOCK_CONSISTENCY] = Scale.SHARE;
        BATCH_SCALES[STOCK_LEFT] = Scale.DIFFERENCE;
        BATCH_SCALES[VAT_FIBRE] = Scale.ROOT;
        BATCH_SCALES[VAT_STOCK] = Scale.ROOT;
        BATCH_SCALES[WHITE_WATER] = Scale.ROOT;
        BATCH_SCALES[HANDLING] = Scale.ROOT;
        BATCH_SCALES[BATCH_HOURS] = Scale.ROOT;
        Arrays.fill(PIECE_SCALES, Scale.FACTOR);
        PIECE_SCALES[SOLIDS] = Scale.SHARE;
        PIECE_SCALES[EVAPORATED] = Scale.ROOT;
        PIECE_SCALES[LOAD] = Scale.ROOT;
        PIECE_SCALES[SIZE] = Scale.ROOT;
        PIECE_SCALES[DRYING_AGAIN] = Scale.ROOT;
        PIECE_SCALES[SHRINK_ALONG] = Scale.ROOT;
        PIECE_SCALES[SHRINK_ACROSS] = Scale.ROOT;
        PIECE_SCALES[CLEAR_WIDTH] = Scale.DIFFERENCE;
        PIECE_SCALES[CLEAR_HEIGHT] = Scale.DIFFERENCE;
        PIECE_SCALES[HOURS] = Scale.ROOT;
    }

    /** What each result is read as; null where it is not read as an amount. */
    private static final @Nullable Kind<?>[] BATCH_KINDS = new Kind<?>[BATCH];
    private static final @Nullable Kind<?>[] PIECE_KINDS = new Kind<?>[PIECE];

    static {
        BATCH_KINDS[DRAINABILITY] = Kinds.SCHOPPER_RIEGLER;
        BATCH_KINDS[WATER_RETENTION] = Kinds.WATER_RETENTION;
        BATCH_KINDS[FREE_SHRINKAGE] = Kinds.LINEAR_SHRINKAGE;
        BATCH_KINDS[STOCK_CONSISTENCY] = Kinds.CONSISTENCY;
        BATCH_KINDS[VAT_FIBRE] = Kinds.MASS;
        BATCH_KINDS[WHITE_WATER] = Kinds.MASS;
        BATCH_KINDS[BATCH_HOURS] = Kinds.TIME;
        PIECE_KINDS[GRAMMAGE] = Kinds.GRAMMAGE;
        PIECE_KINDS[WIDTH] = Kinds.LENGTH;
        PIECE_KINDS[HEIGHT] = Kinds.LENGTH;
        PIECE_KINDS[CALIPER] = Kinds.LENGTH;
        PIECE_KINDS[MASS] = Kinds.MASS;
        PIECE_KINDS[PILE] = Kinds.LENGTH;
        PIECE_KINDS[GOOD] = Kinds.NUMBER;
        PIECE_KINDS[MAT] = Kinds.LENGTH;
        PIECE_KINDS[COUCHED] = Kinds.MASS;
        PIECE_KINDS[DRAIN] = Kinds.TIME;
        PIECE_KINDS[SOLIDS] = Kinds.SOLIDS;
        PIECE_KINDS[DRYING] = Kinds.TIME;
        PIECE_KINDS[EVAPORATED] = Kinds.MASS;
        PIECE_KINDS[LOAD] = Kinds.NUMBER;
        PIECE_KINDS[SIZE] = Kinds.NUMBER;
        PIECE_KINDS[MAIL_MASS] = Kinds.MASS;
        PIECE_KINDS[MAIL_THICKNESS] = Kinds.LENGTH;
        PIECE_KINDS[SHRINK_ALONG] = Kinds.LINEAR_SHRINKAGE;
        PIECE_KINDS[SHRINK_ACROSS] = Kinds.LINEAR_SHRINKAGE;
        PIECE_KINDS[LIGHTEST] = Kinds.NUMBER;
        PIECE_KINDS[HEAVIEST] = Kinds.NUMBER;
        PIECE_KINDS[POST_MASS] = Kinds.MASS;
        PIECE_KINDS[POST_HEIGHT] = Kinds.LENGTH;
        PIECE_KINDS[HOURS] = Kinds.TIME;
        PIECE_KINDS[DRYING_AGAIN] = Kinds.TIME;
    }

    /** Results a plan may go on without. */
    private static final Set<Integer> MAY_BE_UNKNOWN = Set.of(CALIPER, PILE, DRAIN, DRYING, DRYING_AGAIN,
            MAIL_THICKNESS, POST_MASS);

    private Out() {
    }

    /** What a result is read as; null where it is not read as an amount. */
    static @Nullable Kind<?> kind(Job job, int at) {
        int pieces = at - job.batches.length * BATCH;
        if (at == hours(job)) {
            return Kinds.TIME;
        }
        return pieces < 0 ? BATCH_KINDS[at % BATCH] : PIECE_KINDS[pieces % PIECE];
    }

    /** Whether a plan goes on where the result cannot be told. */
    static boolean mayBeUnknown(Job job, int at) {
        int pieces = at - job.batches.length * BATCH;
        return pieces >= 0 && at != hours(job) && MAY_BE_UNKNOWN.contains(pieces % PIECE);
    }

    /** A result in words. */
    static String words(Job job, int at) {
        int pieces = at - job.batches.length * BATCH;
        if (pieces < 0) {
            return switch (at % BATCH) {
                case DRAINABILITY -> "drainability";
                case STOCK_CONSISTENCY -> "consistency of the stock";
                case VAT_FIBRE -> "fibre kept in the vat";
                case WHITE_WATER -> "fibre in the white water";
                case BATCH_HOURS -> "hours of work";
                default -> Objects.requireNonNull(kind(job, at)).name();
            };
        }
        return switch (pieces % PIECE) {
            case CALIPER -> "thickness";
            case PILE -> "height of the pile";
            case GOOD -> "number of good pieces";
            case MAT -> "thickness of the wet sheet";
            case COUCHED -> "mass of the couched sheet";
            case DRAIN -> "time to drain";
            case SOLIDS -> "solids after pressing";
            case DRYING -> "time to dry";
            case DRYING_AGAIN -> "time to dry after sizing";
            case EVAPORATED -> "water to dry out";
            case MAIL_MASS -> "mass of what is mailed";
            case MAIL_THICKNESS -> "thickness of what is mailed";
            case POST_MASS -> "mass of the post";
            case POST_HEIGHT -> "height of the post";
            case HOURS -> "hours of work";
            default -> Objects.requireNonNull(kind(job, at)).name();
        };
    }

    /** Whose result it is: the batch, the piece or the order. */
    static String owner(Job job, int at) {
        int pieces = at - job.batches.length * BATCH;
        if (at == hours(job)) {
            return "order";
        }
        return pieces < 0 ? "batch " + job.batches[at / BATCH].name : "piece " + job.pieces[pieces / PIECE].name;
    }

    /** The scale on which the shifts of a result add up to its band. */
    static Scale scale(Job job, int at) {
        int pieces = at - job.batches.length * BATCH;
        if (at == hours(job)) {
            return Scale.FACTOR;
        }
        return pieces < 0 ? BATCH_SCALES[at % BATCH] : PIECE_SCALES[pieces % PIECE];
    }

    /** The end of the scale of a share. */
    static double most(Job job, int at) {
        return at < job.batches.length * BATCH && at % BATCH == DRAINABILITY ? 100 : 1;
    }

    static int size(Job job) {
        return job.batches.length * BATCH + job.pieces.length * PIECE + 1;
    }

    /** The working hours of the whole order. */
    static int hours(Job job) {
        return size(job) - 1;
    }

    static int batch(int index) {
        return index * BATCH;
    }

    static int piece(Job job, int index) {
        return job.batches.length * BATCH + index * PIECE;
    }
}
