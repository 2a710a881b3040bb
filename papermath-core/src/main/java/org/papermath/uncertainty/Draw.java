package org.papermath.uncertainty;

import java.util.SplittableRandom;
import org.papermath.evidence.Assumption;

/**
 * Draws an assumption in its own shape: on the scale of its shape a normal distribution with its 5 % and 95 % points, each
 * side of the likely value by itself. What would pass a bound is drawn again.
 */
final class Draw {
    /** Standard deviations to the 95 % point. */
    private static final double NINE_IN_TEN = 1.6448536269514722;

    /** Draws given up after, for bounds so near that nearly all pass them; the likely value is taken then. */
    private static final int PATIENCE = 100;

    private final Assumption row;
    private final double unit;
    private final double middle;
    private final double below;
    private final double above;

    Draw(Assumption row) {
        this.row = row;
        unit = row.likely() == 0 ? 1 : row.likelySi() / row.likely();
        middle = row.shape().scaled(row.likely());
        below = Math.max(0, middle - row.shape().scaled(row.low()));
        above = Math.max(0, row.shape().scaled(row.high()) - middle);
    }

    /** A value in coherent SI. */
    double next(SplittableRandom random) {
        for (int i = 0; i < PATIENCE; i++) {
            double z = random.nextGaussian();
            double x = row.shape().plain(middle + z / NINE_IN_TEN * (z < 0 ? below : above));
            if (!(x < row.least()) && !(x > row.most())) {
                return x * unit;
            }
        }
        return row.likelySi();
    }
}
