package org.papermath.uncertainty;

import java.util.SplittableRandom;
import org.papermath.engine.Known;
import org.papermath.evidence.Assumption;
import org.papermath.numeric.Normal;
import org.papermath.quantity.Units;

/**
 * Draws an assumption in its own shape: on the scale of its shape a normal distribution with its 5 % and 95 % points, each
 * side of the likely value by itself; what makings differ by is added, and what goes with what else was drawn. What would
 * pass a bound is drawn again.
 */
final class Draw {
    /** Draws given up after, for bounds so near that nearly all pass them; the likely value is taken then. */
    private static final int PATIENCE = 100;

    private final Known.Drawn drawn;
    private final Assumption row;
    private final double middle;
    private final double below;
    private final double above;
    /** The bounds, on its scale. */
    private final double least;

    private final double most;
    /** From its unit to coherent SI. */
    private final double zero;

    private final double unit;

    Draw(Known.Drawn drawn) {
        this.drawn = drawn;
        row = drawn.row();
        middle = row.shape().scaled(row.likely());
        below = row.low() < row.likely() ? middle - row.shape().scaled(row.low()) : 0;
        above = row.high() > row.likely() ? row.shape().scaled(row.high()) - middle : 0;
        least = bound(row.least(), Double.NEGATIVE_INFINITY);
        most = bound(row.most(), Double.POSITIVE_INFINITY);
        zero = Units.toSi(0, row.unit());
        unit = Units.toSi(1, row.unit()) - zero;
    }

    /** A bound that has no place on the scale is none. */
    private double bound(double value, double none) {
        double scaled = row.shape().scaled(value);
        return Double.isNaN(scaled) ? none : scaled;
    }

    /** How far what is not known of it lies off the likely value, on its scale. */
    double next(SplittableRandom random) {
        for (int i = 0; i < PATIENCE; i++) {
            double z = random.nextGaussian();
            double off = z / Normal.FIVE_PERCENT_POINT * (z < 0 ? below : above);
            if (isInside(middle + off)) {
                return off;
            }
        }
        return 0;
    }

    /**
     * Its value in one making, in coherent SI.
     *
     * @param off how far all that is drawn lies off, by place
     */
    double value(double[] off, SplittableRandom random) {
        double at = middle + off[drawn.place()];
        for (int i = 0; i < drawn.with().length; i++) {
            at += drawn.leans().get(i).by(off[drawn.with()[i]]);
        }
        for (int i = 0; drawn.making() > 0 && i < PATIENCE; i++) {
            double there = at + random.nextGaussian() / Normal.FIVE_PERCENT_POINT * drawn.making();
            if (isInside(there)) {
                return si(there);
            }
        }
        return at == middle ? row.likelySi() : si(at);
    }

    private boolean isInside(double scaled) {
        return scaled >= least && scaled <= most;
    }

    private double si(double scaled) {
        return zero + unit * row.shape().plain(Math.min(most, Math.max(least, scaled)));
    }
}
