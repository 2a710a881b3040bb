package org.papermath.colour;

import org.papermath.quantity.Refused;

/**
 * How the light falls, from a plain white board photographed in place of the sheets: the means over small regions, and between
 * their middles in proportion, so that the noise of its pixels does not come in.
 */
final class FlatField {
    /** The longer edge of the picture is divided into so many regions, if they are some pixels wide. */
    private static final int REGIONS = 64;

    private static final int LEAST_EDGE = 8;

    private final int width;
    private final int height;
    private final int across;
    private final int down;
    private final double[][] means;
    private final Photograph.Sums sums;

    FlatField(Photograph board) {
        width = board.width();
        height = board.height();
        double edge = Math.max(LEAST_EDGE, (double) Math.max(width, height) / REGIONS);
        across = (int) Math.max(1, Math.round(width / edge));
        down = (int) Math.max(1, Math.round(height / edge));
        sums = board.sums(new int[] {0, 0, width, height}, null, across, down);
        means = sums.means();
    }

    /** Puts down the light at a pixel. */
    void at(int x, int y, double[] light) {
        double u = (x + 0.5) * across / width - 0.5;
        double v = (y + 0.5) * down / height - 0.5;
        int i = first(u, across);
        int j = first(v, down);
        double right = across > 1 ? u - i : 0;
        double below = down > 1 ? v - j : 0;
        int nextAcross = Math.min(i + 1, across - 1);
        int nextDown = Math.min(j + 1, down - 1);
        for (int k = 0; k < 3; k++) {
            double upper = means[j * across + i][k] * (1 - right) + means[j * across + nextAcross][k] * right;
            double lower =
                    means[nextDown * across + i][k] * (1 - right) + means[nextDown * across + nextAcross][k] * right;
            light[k] = upper * (1 - below) + lower * below;
        }
    }

    /** The region left of or above a place; at the edges the nearest two go on beyond their middles. */
    private static int first(double at, int count) {
        return Math.max(0, Math.min((int) Math.floor(at), count - 2));
    }

    /** Refuses a part of the board that is too bright or too dark. */
    void check(int[] box, String what) {
        int left = first((box[0] + 0.5) * across / width - 0.5, across);
        int right = Math.min(across - 1, first((box[2] - 0.5) * across / width - 0.5, across) + 1);
        int top = first((box[1] + 0.5) * down / height - 0.5, down);
        int bottom = Math.min(down - 1, first((box[3] - 0.5) * down / height - 0.5, down) + 1);
        String board = "white board behind " + what;
        for (int j = top; j <= bottom; j++) {
            for (int i = left; i <= right; i++) {
                int region = j * across + i;
                Photograph.checkClipped(board, (double) sums.clipped[region] / sums.count[region]);
                checkBright(board, means[region]);
            }
        }
    }

    /** What is to be divided by stands well above the steps and the noise of a picture. */
    static void checkBright(String what, double[] light) {
        double least = Math.min(light[0], Math.min(light[1], light[2]));
        if (!(least >= PhotographCalibration.DARK)) {
            throw Refused.of(
                    "photograph.dark",
                    what + ": its light is " + ColourRange.said(100 * least, 1)
                            + " % of the range in one colour; at least "
                            + ColourRange.said(100 * PhotographCalibration.DARK, 1)
                            + " % are needed to divide by it. Expose more, or light it better.",
                    "what",
                    what,
                    "given",
                    least,
                    "least",
                    PhotographCalibration.DARK);
        }
    }
}
