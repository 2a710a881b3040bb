package org.papermath.uncertainty;

import java.util.List;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.papermath.engine.Figure;
import org.papermath.engine.Figures;
import org.papermath.engine.Known;
import org.papermath.quantity.Kind;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Units;

/**
 * The figures of a job at their likely values, the ends of their bands, and how far each varied assumption moves each
 * of them, on the scale of the figure. By the places of {@link Figures}.
 */
public final class FigureBands {
    private static final double[] NONE = {};

    private final Figures likely;
    private final double[] low;
    private final double[] high;
    private final boolean[] openBelow;
    private final boolean[] openAbove;
    private final List<Known.Varied> varied;
    /** By assumption, then by place; empty without bands. */
    private final double[][] moves;
    /** By place, then by draw; empty without draws. */
    private final double[][] draws;
    /** By place. */
    private final boolean[] bends;

    FigureBands(
            Figures likely,
            double[] low,
            double[] high,
            boolean[] openBelow,
            boolean[] openAbove,
            List<Known.Varied> varied,
            double[][] moves,
            double[][] draws,
            boolean[] bends) {
        this.draws = draws;
        this.bends = bends;
        this.likely = likely;
        this.low = low;
        this.high = high;
        this.openBelow = openBelow;
        this.openAbove = openAbove;
        this.varied = varied;
        this.moves = moves;
    }

    /** The same moves, with ends from draws. */
    FigureBands drawn(double[] lows, double[] highs, boolean[] openBelows, boolean[] openAboves, double[][] drawn) {
        return new FigureBands(
                likely, lows, highs, openBelows, openAboves, varied, moves, drawn, new boolean[likely.size()]);
    }

    /** Whether a figure is not smooth, so that its band is better taken from draws. */
    public boolean bends(int at) {
        return bends[at];
    }

    /** The bands a figure is read from: these, or those from draws where it is not smooth. */
    public FigureBands orOfDraws(int at, Supplier<FigureBands> drawn) {
        if (!bends(at) || isOpenBelow(at) || isOpenAbove(at)) {
            return this;
        }
        // Where one making in twenty takes nothing at all, the sum says how little the others take.
        FigureBands draws = drawn.get();
        return draws.low(at) == 0 && low(at) > 0 ? this : draws;
    }

    /** What a figure came to in each draw; empty without draws. */
    public double[] draws(int at) {
        return draws.length == 0 ? NONE : draws[at];
    }

    /** Likely values only. */
    public static FigureBands without(Figures likely) {
        double[] same = new double[likely.size()];
        for (int at = 0; at < same.length; at++) {
            same[at] = likely.at(at);
        }
        boolean[] open = new boolean[same.length];
        return new FigureBands(likely, same, same, open, open, List.of(), new double[0][], new double[0][], open);
    }

    /** The figures at the likely values; they also give the places. */
    public Figures likely() {
        return likely;
    }

    /** The 5 % point of a figure, or the farthest that could be worked out. */
    public double low(int at) {
        return low[at];
    }

    /** The 95 % point of a figure, or the farthest that could be worked out. */
    public double high(int at) {
        return high[at];
    }

    /** Whether the band has no end below. */
    public boolean isOpenBelow(int at) {
        return openBelow[at];
    }

    /** Whether the band has no end above. */
    public boolean isOpenAbove(int at) {
        return openAbove[at];
    }

    /** What was varied. */
    public List<Known.Varied> varied() {
        return varied;
    }

    /** The share of the squared width of a band that is from one making to the next. */
    public double fromMakings(int at) {
        double all = 0;
        double part = 0;
        for (int i = 0; i < moves.length; i++) {
            double square = moves[i][at] * moves[i][at];
            all += square;
            part += square * varied.get(i).fromMakings();
        }
        return all > 0 ? Math.min(1, part / all) : 0;
    }

    /** How two figures move together, from -1 to 1: as far as the same assumptions move both. */
    public double correlation(int one, int other) {
        double both = 0;
        double ones = 0;
        double others = 0;
        for (double[] move : moves) {
            both += move[one] * move[other];
            ones += move[one] * move[one];
            others += move[other] * move[other];
        }
        return both == 0 ? 0 : Math.max(-1, Math.min(1, both / Math.sqrt(ones * others)));
    }

    /**
     * How far an assumption, by its place among the varied, moves a figure at most; below zero where a higher value of it
     * makes the figure less.
     */
    public double move(int varied, int at) {
        return moves[varied][at];
    }

    /**
     * Refuses a plan with a figure that is nothing in nature, so that what is planned can be read to its last figure.
     * Values of a studio's own far from usual can make such figures, each by itself allowed.
     */
    public void require(List<String> batches, List<String> pieces) {
        for (int at = 0; at < likely.size(); at++) {
            Figure figure = likely.figure(at);
            @Nullable Kind<?> kind = figure == null ? Kinds.TIME : figure.kind();
            boolean known = Double.isFinite(likely.at(at));
            if (kind != null && (known || figure == null || !figure.mayBeUnknown()) && !isNatural(kind, at)) {
                String whose = figure == null
                        ? "order"
                        : likely.batchAt(at) >= 0
                                ? "batch " + batches.get(likely.batchAt(at))
                                : "piece " + pieces.get(likely.pieceAt(at));
                String recipe = figure != null && likely.batchAt(at) >= 0 ? batches.get(likely.batchAt(at)) : "";
                String piece = figure != null && recipe.isEmpty() ? pieces.get(likely.pieceAt(at)) : "";
                require(whose, recipe, piece, kind, likely.at(at));
                require(whose, recipe, piece, kind, low(at));
                require(whose, recipe, piece, kind, high(at));
            }
        }
    }

    private boolean isNatural(Kind<?> kind, int at) {
        return kind.holds(likely.at(at)) && kind.holds(low(at)) && kind.holds(high(at));
    }

    private static void require(String whose, String recipe, String piece, Kind<?> kind, double si) {
        if (!kind.holds(si)) {
            throw Refused.of(
                    "plan.figure-beyond-nature",
                    whose + ": "
                            + (Double.isFinite(si)
                                    ? kind.name()
                                            + " comes out as " + Units.fourDigits(si) + " " + kind.siUnit()
                                            + ", which no " + kind.name()
                                            + " can be."
                                    : "nothing comes out that has a " + kind.name() + ".")
                            + " Check the order, the"
                            + " recipe, the steps of scale and jug, and the values of the studio's own.",
                    "of",
                    whose,
                    "quantity",
                    kind.name(),
                    "value",
                    String.valueOf(si),
                    "recipe",
                    recipe,
                    "piece",
                    piece);
        }
    }
}
