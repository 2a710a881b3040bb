package org.papermath.plan;

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

    private Out() {
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
