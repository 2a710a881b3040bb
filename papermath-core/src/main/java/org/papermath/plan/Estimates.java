package org.papermath.plan;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.DoubleFunction;
import java.util.function.Supplier;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Time;
import org.papermath.engine.BatchFigure;
import org.papermath.engine.Figure;
import org.papermath.engine.Figures;
import org.papermath.engine.FillingVat;
import org.papermath.engine.PieceFigure;
import org.papermath.evidence.Estimate;
import org.papermath.evidence.Spread;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kind;
import org.papermath.quantity.Kinds;
import org.papermath.uncertainty.FigureBands;

/** Reads figures and their bands as estimates. */
final class Estimates {
    /** Drivers weaker than this share of a band are left out. */
    private static final double LEAST_SHARE = 0.01;

    private final FigureBands bands;
    /** The bands of figures that are not smooth, from draws. */
    private final Lazy<FigureBands> drawn;

    private final Figures likely;

    Estimates(FigureBands bands, Supplier<FigureBands> drawn) {
        this.bands = bands;
        this.drawn = new Lazy<>(drawn);
        this.likely = bands.likely();
    }

    private FigureBands bands(int at) {
        return bands.orOfDraws(at, drawn::get);
    }

    FigureBands bands() {
        return bands;
    }

    double likely(BatchFigure figure, int batch) {
        return likely.of(figure, batch);
    }

    double likely(PieceFigure figure, int piece) {
        return likely.of(figure, piece);
    }

    double low(BatchFigure figure, int batch) {
        return bands(likely.place(figure, batch)).low(likely.place(figure, batch));
    }

    double low(PieceFigure figure, int piece) {
        return bands(likely.place(figure, piece)).low(likely.place(figure, piece));
    }

    boolean isKnown(PieceFigure figure, int piece) {
        return Double.isFinite(likely.of(figure, piece));
    }

    /** The kind a figure is read as stands with the figure; the caller says it again for the compiler. */
    <Q extends Quantity<Q>> Estimate<Q> of(Kind<Q> kind, BatchFigure figure, int batch) {
        return estimate(kind, figure, likely.place(figure, batch));
    }

    <Q extends Quantity<Q>> Estimate<Q> of(Kind<Q> kind, PieceFigure figure, int piece) {
        return estimate(kind, figure, likely.place(figure, piece));
    }

    private <Q extends Quantity<Q>> Estimate<Q> estimate(Kind<Q> kind, Figure figure, int at) {
        if (figure.kind() != (Kind<?>) kind) {
            throw new IllegalStateException(figure + " is no " + kind.name());
        }
        return estimate(kind, at, figure.unit());
    }

    private <Q extends Quantity<Q>> Estimate<Q> estimate(Kind<Q> kind, int at, String unit) {
        return estimate(kind, at, unit, si -> kind.ofSi(si, unit));
    }

    private <Q extends Quantity<Q>> Estimate<Q> estimate(
            Kind<Q> kind, int at, String unit, DoubleFunction<Amount<Q>> amount) {
        FigureBands band = bands(at);
        Estimate<Q> estimate = Estimate.of(
                        amount.apply(likely.at(at)),
                        amount.apply(band.low(at)),
                        amount.apply(band.high(at)),
                        drivers(at))
                .open(band.isOpenBelow(at), band.isOpenAbove(at))
                .withMakings(bands.fromMakings(at));
        double[] draws = bands.draws(at);
        return draws.length == 0 ? estimate : estimate.withSpread(Spread.of(kind, unit, draws));
    }

    /** The hours of the whole. */
    Estimate<Time> hours() {
        return estimate(Kinds.TIME, likely.hoursPlace(), "h");
    }

    /** The play of a card in its envelope, along the width or the height; below zero where it does not go in. */
    Estimate<Length> play(PieceFigure figure, int piece) {
        return estimate(
                Kinds.LENGTH,
                likely.place(figure, piece),
                figure.unit(),
                si -> signed(Kinds.LENGTH, si, figure.unit()));
    }

    /**
     * How likely two figures of a piece both lie above their limits: over the draws of what is not known and what makings differ
     * by, which move both together, and each by itself from pair to pair.
     *
     * @param own the standard deviation of each from pair to pair
     * @param least the limit of one
     * @param leastOther that of the other
     */
    double both(PieceFigure one, PieceFigure other, int piece, double own, double least, double leastOther) {
        int first = likely.place(one, piece);
        int second = likely.place(other, piece);
        FigureBands draws = bands.bends(first) || bands.bends(second) ? drawn.get() : bands;
        double[] ones = draws.draws(first);
        double[] others = draws.draws(second);
        if (ones.length == 0) {
            return below(likely.at(first) - least, own) * below(likely.at(second) - leastOther, own);
        }
        double sum = 0;
        int count = 0;
        for (int i = 0; i < ones.length; i++) {
            if (Double.isFinite(ones[i]) && Double.isFinite(others[i])) {
                sum += below(ones[i] - least, own) * below(others[i] - leastOther, own);
                count++;
            }
        }
        return sum / count;
    }

    /** How likely a scatter leaves so much above nothing. */
    private static double below(double play, double own) {
        return PlainNumbers.STANDARD.cumulativeProbability(play / own);
    }

    /** How two figures of a piece move together, from -1 to 1. */
    double correlation(PieceFigure one, PieceFigure other, int piece) {
        return bands.correlation(likely.place(one, piece), likely.place(other, piece));
    }

    /** What is there of the stock at the end: nothing, where it runs short. */
    Estimate<Mass> stockLeft(int batch) {
        int at = likely.place(FillingVat.STOCK_LEFT, batch);
        double low = bands.low(at);
        double high = bands.high(at);
        String unit = FillingVat.STOCK_LEFT.unit();
        return Estimate.of(
                        Kinds.MASS.ofSi(Math.max(0, likely.at(at)), unit),
                        Kinds.MASS.ofSi(Math.max(0, low), unit),
                        Kinds.MASS.ofSi(Math.max(0, high), unit),
                        drivers(at))
                .open(bands.isOpenBelow(at) || (low <= 0 && low < high), bands.isOpenAbove(at))
                .withMakings(bands.fromMakings(at));
    }

    static <Q extends Quantity<Q>> Amount<Q> signed(Kind<Q> kind, double si, String code) {
        return si >= 0 ? kind.ofSi(si, code) : kind.ofSi(-si, code).negate();
    }

    private List<Estimate.Driver> drivers(int at) {
        int n = bands.varied().size();
        double sum = 0;
        for (int i = 0; i < n; i++) {
            sum += bands.move(i, at) * bands.move(i, at);
        }
        if (sum == 0) {
            return List.of();
        }
        List<Estimate.Driver> drivers = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            double share = bands.move(i, at) * bands.move(i, at) / sum;
            if (share >= LEAST_SHARE) {
                drivers.add(new Estimate.Driver(bands.varied().get(i).row(), share));
            }
        }
        drivers.sort(Comparator.comparingDouble(Estimate.Driver::share).reversed());
        return drivers;
    }
}
