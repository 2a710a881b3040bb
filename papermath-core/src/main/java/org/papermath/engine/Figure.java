package org.papermath.engine;

import org.jspecify.annotations.Nullable;
import org.papermath.quantity.Kind;

/**
 * A forecast of a batch or of a piece: what it is called, what it is read as, in which unit, and how its band adds up.
 * The stage that works it out declares it with its {@link StageFigures}.
 */
public abstract sealed class Figure permits BatchFigure, PieceFigure {
    private final String words;
    private final @Nullable Kind<?> kind;
    private final String unit;
    private final Scale scale;
    private final double most;
    private final boolean mayBeUnknown;
    private final double bend;

    Figure(
            String words,
            @Nullable Kind<?> kind,
            String unit,
            Scale scale,
            double most,
            boolean mayBeUnknown,
            double bend) {
        this.words = words;
        this.kind = kind;
        this.unit = unit;
        this.scale = scale;
        this.most = most;
        this.mayBeUnknown = mayBeUnknown;
        this.bend = bend;
    }

    /** What it is called. */
    public String words() {
        return words;
    }

    /** What it is read as; null where it is not read as an amount of its own. */
    public @Nullable Kind<?> kind() {
        return kind;
    }

    /** The code of the unit it is told in. */
    public String unit() {
        return unit;
    }

    /** The scale on which the shifts of its band add up. */
    public Scale scale() {
        return scale;
    }

    /** The end of the scale, where that is a share of something. */
    public double most() {
        return most;
    }

    /** Whether a plan goes on where it cannot be told. */
    public boolean mayBeUnknown() {
        return mayBeUnknown;
    }

    /**
     * From which share of its squared band on it is taken not to be smooth: the share of what moves it one way and hardly the
     * other, as where a limit is reached. Its band then is taken from draws. Above 1 it never is. In a job that lies where two
     * laws meet it may be less; see {@link Engine#bend}.
     */
    public double bend() {
        return bend;
    }

    /** Its place among the figures of a batch, or of a piece. */
    abstract int place();

    @Override
    public String toString() {
        return words;
    }
}
