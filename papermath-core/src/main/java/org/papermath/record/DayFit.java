package org.papermath.record;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import org.papermath.equation.BeatingLaw;
import org.papermath.equation.CaliperLaw;
import org.papermath.equation.DensityLaw;
import org.papermath.equation.DrainageLaw;
import org.papermath.equation.Freeness;
import org.papermath.equation.ShrinkageLaw;
import org.papermath.evidence.Assumption;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Scope;
import org.papermath.evidence.Shape;
import org.papermath.numeric.LeastSquares;
import org.papermath.numeric.Normal;
import org.papermath.numeric.RobustFit;
import org.papermath.quantity.Units;

/**
 * The numbers behind a calibrating day, in coherent SI: what every reading would be by the laws of the models, the
 * distance of all of them from what was read, and the values that make it least.
 */
final class DayFit {
    static final String UNBEATEN = "beating.drainability-unbeaten";
    static final String LIMIT = "beating.drainability-limit";
    static final String RATE = "beating.rate";
    static final String EXPONENT = "beating.exponent";
    static final String RESISTANCE = "drainage.resistance-factor";
    static final String SHRINK_INITIAL = "shrinkage.initial";
    static final String SHRINK_LIMIT = "shrinkage.limit";
    static final String DIRECTIONS = "shrinkage.direction-difference";
    static final String HELD = "restraint.share";
    static final String DENSITY_UNBEATEN = "sheet.density-unbeaten";
    static final String DENSITY_BEATEN = "sheet.density-long-beaten";

    /** What a reading without an error is still good to, as a part of it; so exact ones outweigh all else. */
    private static final double EXACT = 1e-7;
    /** By how much of shrinkage the corner of its law is rounded, where the search would stay in it; in the end below readings. */
    private static final double[] ROUNDED = {1e-3, 1e-4};
    /** Squares that are not worth finding, over those of the errors: a tenth of an error. */
    private static final double NEGLIGIBLE = 0.01;
    /** Of so many readings one may be left out; of fewer it is not sure which of them is off. */
    private static final int READINGS_FOR_ONE = 8;
    /** What has more of a say than this cannot be told from the others. */
    private static final double JUDGED = 0.5;
    /** Squares of no more than so many for a reading are those of readings that follow the laws. */
    private static final double NEAR = 4;
    /** Fibre of which nothing is known may be anything within a factor of so many. */
    private static final double UNKNOWN = 3;

    /** What all readings share. */
    record Conditions(
            double gain,
            DrainageLaw drainage,
            double depth,
            double strength,
            double viscosity,
            double water,
            double clearReading,
            double resistanceExponent,
            double wetAlong,
            double wetAcross,
            double shrunk,
            double freeHeld,
            double pressure,
            DensityLaw.Pressing pressing,
            CaliperLaw caliper) {}

    /** A value to be found: where it stands in the table, and on what scale it varies. */
    private record Parameter(String id, Scope scope, Optional<Assumption> known, boolean factor, double scale) {
        double least() {
            return factor ? Double.NEGATIVE_INFINITY : bound(Assumption::least, Double.NEGATIVE_INFINITY);
        }

        double most() {
            double most = bound(Assumption::most, Double.POSITIVE_INFINITY);
            return factor ? Math.log(most) : most;
        }

        private double bound(ToDoubleFunction<Assumption> of, double otherwise) {
            return known.map(row -> Units.toSi(of.applyAsDouble(row), row.unit()))
                    .orElse(otherwise);
        }

        double plain(double value) {
            return factor ? Math.exp(value) : value;
        }
    }

    /** What something is by the values, under the conditions of a fit. */
    interface Curve {
        double at(DayFit under, double[] values);
    }

    /** A reading: what it is by the values, what it was, its error, and whether it is without one. */
    private record Read(String what, Curve law, double value, double error, boolean exact) {
        /** How far the values lie from it, over its error. */
        double distance(DayFit under, double[] values) {
            return (law.at(under, values) - value) / error;
        }
    }

    /**
     * A reading that was left out.
     *
     * @param what what was read
     * @param errors how many of its errors it lies from where the others put it
     */
    record Left(String what, double errors) {}

    /** What has less of a say than this in another value is not told apart from rounding. */
    private static final double LEAST_SLOPE = 1e-3;

    private static final double ROUNDING = 1e-9;

    private final Assumptions store;
    private final Conditions conditions;
    private final List<Parameter> parameters = new ArrayList<>();
    private final Map<String, Integer> places = new HashMap<>();
    private final List<Read> readings = new ArrayList<>();
    private double longest;

    /** Where the search begins: what is known, or a guess. */
    private double[] begin = new double[0];

    private double[] found = new double[0];
    private double[][] covariance = new double[0][0];
    private final List<DayFit[]> unsure = new ArrayList<>();
    private boolean settled;
    private boolean inCorner;
    private double rounding;
    private final List<String> atBound = new ArrayList<>();
    private double ratio = 1;
    private double chi;

    DayFit(Assumptions store, Conditions conditions) {
        this.store = store;
        this.conditions = conditions;
    }

    // ------------------------------------------------------------------------------------------------ what is asked

    /** Lets a value be found. Where nobody knows it, it begins at a guess. */
    void find(String id, Scope scope, double guess) {
        Optional<Assumption> known = store.find(id, scope);
        Assumption pattern = known.or(() -> store.pattern(id)).orElseThrow();
        boolean factor = pattern.shape() == Shape.LOG_NORMAL && !id.equals(SHRINK_LIMIT);
        double scale = known.filter(row -> row.low() < row.high())
                .map(row ->
                        (scaled(row.highSi(), factor) - scaled(row.lowSi(), factor)) / (2 * Normal.FIVE_PERCENT_POINT))
                .orElse(factor ? Math.log(UNKNOWN) : 0.1 * Math.max(0.1, Math.abs(guess)));
        places.put(id, parameters.size());
        parameters.add(new Parameter(id, scope, known.or(() -> Optional.of(pattern)), factor, scale));
        double start = known.map(Assumption::likelySi).orElse(guess);
        begin = Arrays.copyOf(begin, parameters.size());
        begin[parameters.size() - 1] = scaled(start, factor);
    }

    private int place(String id) {
        return Objects.requireNonNull(places.get(id), id);
    }

    private static double scaled(double value, boolean factor) {
        return factor ? Math.log(value) : value;
    }

    private double of(double[] values, String id) {
        int place = places.getOrDefault(id, -1);
        return place < 0 ? Double.NaN : parameters.get(place).plain(values[place]);
    }

    /** How far beating has brought the fibre after a time. */
    double state(double[] values, double time) {
        return beating(values).state(time * conditions.gain());
    }

    private BeatingLaw beating(double[] values) {
        return new BeatingLaw(of(values, UNBEATEN), of(values, LIMIT), of(values, RATE), of(values, EXPONENT));
    }

    double number(double[] values, double time) {
        BeatingLaw law = beating(values);
        return law.drainability(law.state(time * conditions.gain()));
    }

    double drained(double[] values, double time) {
        double alpha = Freeness.alphaOfSchopperRiegler(
                number(values, time),
                of(values, RESISTANCE),
                conditions.clearReading(),
                conditions.resistanceExponent());
        return conditions
                .drainage()
                .time(conditions.depth(), alpha, conditions.strength(), conditions.viscosity(), conditions.water());
    }

    double shrinkage(double[] values, double time) {
        return new ShrinkageLaw.Ends(of(values, SHRINK_INITIAL), of(values, SHRINK_LIMIT)).free(state(values, time));
    }

    double density(double[] values, double time) {
        return new DensityLaw.Beaten(
                        of(values, DENSITY_UNBEATEN),
                        of(values, DENSITY_BEATEN),
                        state(values, time),
                        conditions.pressing())
                .uncapped(conditions.pressure());
    }

    private double dry(double[] values, double time, boolean along, double held) {
        double mean = shrinkage(values, time);
        double difference = of(values, DIRECTIONS);
        double[] both = new ShrinkageLaw(1, difference).directions(mean);
        // How much less the corner is where one direction does not shrink, for having been rounded.
        double less = rounding > 0
                ? rounding * Math.log1p(Math.exp(-Math.abs(Math.abs(mean) - Math.abs(difference) / 2) / rounding))
                : 0;
        double shrunk = both[along ? 0 : 1] + Math.copySign(less, along ? difference : -difference);
        double wet = along ? conditions.wetAlong() : conditions.wetAcross();
        return wet * (1 - shrunk * conditions.shrunk() * (1 - held));
    }

    void readNumber(double time, double value, double error) {
        read("drainability", time, (fit, values) -> fit.number(values, time), value, error);
    }

    void readDrained(double time, double value, double error) {
        read("time to drain", time, (fit, values) -> fit.drained(values, time), value, error);
    }

    void readFree(double time, boolean along, double value, double error) {
        read(
                along ? "length along of the sheet dried free" : "length across of the sheet dried free",
                time,
                (fit, values) -> fit.dry(values, time, along, fit.conditions.freeHeld()),
                value,
                error);
    }

    void readHeld(double time, boolean along, double value, double error) {
        read(
                along ? "length along of the sheet dried held" : "length across of the sheet dried held",
                time,
                (fit, values) -> fit.dry(values, time, along, fit.of(values, HELD)),
                value,
                error);
    }

    void readCaliper(double time, double grammage, double value, double error) {
        read(
                "thickness of the sheet dried held",
                time,
                (fit, values) -> fit.conditions.caliper().caliper(grammage, fit.density(values, time)),
                value,
                error);
    }

    private void read(String what, double time, Curve law, double value, double error) {
        longest = Math.max(longest, time);
        readings.add(new Read(
                what + " after " + Units.fourDigits(time / 3600) + " h",
                law,
                value,
                Math.max(error, EXACT * Math.abs(value)),
                error < EXACT * Math.abs(value)));
    }

    // ------------------------------------------------------------------------------------------------ what is found

    void solve() {
        double[] centre = begin;
        double[] scales = scales();
        atBound.clear();
        LeastSquares fit = roundCorner(nearest(centre, scales), scales, centre);
        double[] first = IntStream.range(0, scales.length)
                .mapToDouble(i -> fit.covariance(i, i))
                .toArray();
        LeastSquares best = fit;
        // A value beyond what it can be stands at that bound, and the others are found with it there.
        for (int again = 0; again < scales.length; again++) {
            double[] values = best.parameters();
            boolean moved = false;
            for (int i = 0; i < values.length; i++) {
                double within = Math.max(
                        parameters.get(i).least(), Math.min(parameters.get(i).most(), values[i]));
                if (within != values[i]) {
                    values[i] = within;
                    scales[i] = 0;
                    atBound.add(parameters.get(i).id());
                    moved = true;
                }
            }
            if (!moved) {
                break;
            }
            best = roundCorner(LeastSquares.of(values, scales, at -> distances(at, centre)), scales, centre);
        }
        found = best.parameters();
        chi = 0;
        for (Read one : readings) {
            double off = one.distance(this, found);
            chi += off * off;
        }
        ratio = degrees() > 0 ? Math.sqrt(chi / degrees()) : 1;
        settled = best.isTold() && (best.isConverged() || inCorner);
        covariance = new double[found.length][found.length];
        for (int i = 0; i < found.length; i++) {
            for (int j = 0; j < found.length; j++) {
                covariance[i][j] = best.covariance(i, j);
            }
            if (scales[i] == 0) {
                covariance[i][i] = first[i];
            }
        }
    }

    /**
     * Where one direction does not shrink, the law has a corner, in which a search stops that goes by slopes. It is led along
     * the corner by a law that has it rounded, and ends by the law itself.
     */
    private LeastSquares roundCorner(LeastSquares fit, double[] scales, double[] centre) {
        inCorner = false;
        if (fit.isConverged() || !fit.isTold()) {
            return fit;
        }
        LeastSquares rounded = fit;
        for (double round : ROUNDED) {
            rounding = round;
            rounded = LeastSquares.of(rounded.parameters(), scales, at -> distances(at, centre));
        }
        rounding = 0;
        LeastSquares sharp = LeastSquares.of(rounded.parameters(), scales, at -> distances(at, centre));
        inCorner = rounded.leftToGain() <= NEGLIGIBLE;
        return sharp.squares() < fit.squares() ? sharp : fit;
    }

    private double[] scales() {
        return parameters.stream().mapToDouble(Parameter::scale).toArray();
    }

    /**
     * Leaves out the readings that lie far off all others, and finds the values without them; nothing if there are none,
     * if they are too many of all, or if the rest contradict each other as well.
     *
     * @param mostRatio how many times as far as their errors the rest may lie
     */
    List<Left> leaveOut(double mostRatio) {
        int all = readings.size();
        boolean[] doubted = new boolean[all + parameters.size()];
        for (int i = 0; i < all; i++) {
            doubted[i] = !readings.get(i).exact();
        }
        double[] scales = scales();
        double[] leverages = LeastSquares.of(found, scales, values -> distances(values, begin))
                .leverages();
        RobustFit robust = RobustFit.of(found, scales, doubted, 1, values -> distances(values, begin));
        List<Read> off = IntStream.range(0, all)
                .filter(robust::isOff)
                .mapToObj(readings::get)
                .toList();
        boolean judged =
                IntStream.range(0, all).filter(robust::isOff).allMatch(reading -> leverages[reading] <= JUDGED);
        if (off.isEmpty() || off.size() * READINGS_FOR_ONE > all || !judged || !robust.isConverged()) {
            return List.of();
        }
        List<Read> before = List.copyOf(readings);
        readings.removeAll(off);
        solve();
        if (!settled || ratio > mostRatio) {
            readings.clear();
            readings.addAll(before);
            solve();
            return List.of();
        }
        return off.stream()
                .map(one -> new Left(one.what(), Math.abs(one.distance(this, found))))
                .toList();
    }

    /** Whether the readings, and what is known without them, tell all values. */
    boolean isSettled() {
        return settled;
    }

    /** From what is known, and where that does not lead near to what was read, from faster and slower courses. */
    private LeastSquares nearest(double[] centre, double[] scales) {
        LeastSquares best = LeastSquares.of(centre, scales, values -> distances(values, centre));
        for (double rate : new double[] {-0.7, 0.7, -1.5, 1.5, -2.5, 2.5}) {
            for (double exponent : new double[] {0, -0.4, 0.4}) {
                if (best.squares() <= NEAR * (readings.size() + scales.length)) {
                    return best;
                }
                double[] values = centre.clone();
                values[place(RATE)] += rate;
                values[place(EXPONENT)] += exponent;
                // The course stays at first, and the ends are found for it.
                LeastSquares ends = LeastSquares.of(values, within(scales), at -> distances(at, centre));
                LeastSquares tried = LeastSquares.of(ends.parameters(), scales, at -> distances(at, centre));
                if (tried.squares() < best.squares()) {
                    best = tried;
                }
            }
        }
        return best;
    }

    private double[] within(double[] scales) {
        double[] ends = scales.clone();
        ends[place(RATE)] = 0;
        ends[place(EXPONENT)] = 0;
        return ends;
    }

    /** Of what was read, and of what is known without, where that has a band. */
    private double[] distances(double[] values, double[] centre) {
        double[] off = new double[readings.size() + values.length];
        for (int i = 0; i < readings.size(); i++) {
            off[i] = readings.get(i).distance(this, values);
        }
        for (int i = 0; i < values.length; i++) {
            off[readings.size() + i] =
                    isKnown(i) ? (values[i] - centre[i]) / parameters.get(i).scale() : 0;
        }
        return off;
    }

    private boolean isKnown(int place) {
        return store.find(parameters.get(place).id(), parameters.get(place).scope())
                .filter(row -> row.low() < row.high())
                .isPresent();
    }

    /** Readings that are not used up by the values they tell. */
    int degrees() {
        return readings.size() - parameters.size();
    }

    double chi() {
        return chi;
    }

    /** How many times as far from the laws the readings lie as their errors let them. */
    double ratio() {
        return ratio;
    }

    int count() {
        return readings.size();
    }

    /** The reading that lies furthest off. */
    String worst() {
        return readings.stream()
                .max(Comparator.comparingDouble(one -> Math.abs(one.distance(this, found))))
                .map(Read::what)
                .orElseThrow();
    }

    void widen(double factor) {
        for (double[] row : covariance) {
            for (int j = 0; j < row.length; j++) {
                row[j] *= factor * factor;
            }
        }
    }

    /** Values that stand at a bound. */
    List<String> atBound() {
        return List.copyOf(atBound);
    }

    boolean finds(String id) {
        return places.containsKey(id);
    }

    double value(String id) {
        return of(found, id);
    }

    /** A curve at the values found. */
    double at(Curve curve) {
        return curve.at(this, found);
    }

    /** The standard error of a curve, from how the values vary together, and with what was not known of the conditions. */
    double error(Curve curve) {
        double[] slopes = slopes(curve);
        double sum = 0;
        for (int i = 0; i < slopes.length; i++) {
            for (int j = 0; j < slopes.length; j++) {
                sum += slopes[i] * slopes[j] * covariance[i][j];
            }
        }
        for (DayFit[] ends : unsure) {
            double error = (ends[1].at(curve) - ends[0].at(curve)) / (2 * Normal.FIVE_PERCENT_POINT);
            sum += error * error;
        }
        return Math.sqrt(Math.max(0, sum));
    }

    private double[] slopes(Curve curve) {
        double[] slopes = new double[found.length];
        for (int i = 0; i < slopes.length; i++) {
            double step = 1e-5 * parameters.get(i).scale();
            double[] above = found.clone();
            above[i] += step;
            double[] below = found.clone();
            below[i] -= step;
            slopes[i] = (curve.at(this, above) - curve.at(this, below)) / (2 * step);
        }
        return slopes;
    }

    // ------------------------------------------------------------------------------------------------ into the table

    /**
     * What the day tells of a value, given the values before it in the order of {@link #ids()}.
     *
     * @param error its standard error where those are known, on its scale
     * @param slopes by how much it is higher where one of those is higher, each on its scale
     */
    record Told(double error, Map<String, Double> slopes) {}

    /**
     * How the values vary together, told one after the other, so that each by itself may be varied with what goes with it.
     *
     * @param besides the standard error of a value, on its scale, that no reading of the day makes less
     */
    Map<String, Told> told(ToDoubleFunction<String> besides) {
        int n = found.length;
        double[][] root = new double[n][n];
        Map<String, Told> told = new LinkedHashMap<>();
        for (int i = 0; i < n; i++) {
            String id = parameters.get(i).id();
            double own = besides.applyAsDouble(id);
            double all = covariance[i][i] + own * own;
            double left = all;
            Map<String, Double> slopes = new LinkedHashMap<>();
            for (int j = 0; j < i; j++) {
                double sum = covariance[i][j];
                for (int k = 0; k < j; k++) {
                    sum -= root[i][k] * root[j][k];
                }
                root[i][j] = root[j][j] > 0 ? sum / root[j][j] : 0;
                left -= root[i][j] * root[i][j];
                if (Math.abs(root[i][j]) > LEAST_SLOPE * Math.sqrt(all)) {
                    slopes.put(parameters.get(j).id(), root[i][j] / root[j][j]);
                }
            }
            root[i][i] = left > ROUNDING * all ? Math.sqrt(left) : 0;
            told.put(id, new Told(root[i][i], slopes));
        }
        return told;
    }

    /** The standard error of a value, whatever the others are. */
    double error(String id) {
        return Math.sqrt(covariance[place(id)][place(id)]);
    }

    /** What would have been found, had the day been under other conditions with the same readings. */
    DayFit under(Conditions others) {
        DayFit there = new DayFit(store, others);
        there.parameters.addAll(parameters);
        there.places.putAll(places);
        there.readings.addAll(readings);
        double[] scales = scales();
        for (int i = 0; i < scales.length; i++) {
            scales[i] = atBound.contains(parameters.get(i).id()) ? 0 : scales[i];
        }
        there.found =
                LeastSquares.of(found, scales, at -> there.distances(at, begin)).parameters();
        return there;
    }

    /** Lets the errors of the curves hold what is not known of a condition: the day with it at its 5 % and its 95 % point. */
    void unsure(DayFit low, DayFit high) {
        unsure.add(new DayFit[] {low, high});
    }

    boolean isFactor(String id) {
        return parameters.get(place(id)).factor();
    }

    Scope scope(String id) {
        return parameters.get(place(id)).scope();
    }

    List<String> ids() {
        return parameters.stream().map(Parameter::id).toList();
    }
}
