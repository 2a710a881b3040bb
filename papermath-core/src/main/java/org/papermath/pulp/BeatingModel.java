package org.papermath.pulp;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Time;
import org.papermath.equation.Beating;
import org.papermath.evidence.Assumption;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Basis;
import org.papermath.evidence.Estimate;
import org.papermath.evidence.Scope;
import org.papermath.evidence.Source;
import org.papermath.fibre.Fibre;
import org.papermath.fibre.Furnish;
import org.papermath.numeric.Normal;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;
import org.papermath.quantity.SchopperRiegler;

/**
 * Drainability after a time in a beater: SR(t) = SR_m − (SR_m − SR_0) exp(−(k t)^p). Immutable.
 *
 * <p>The rate k belongs to a fibre in a beater near its rated load. Until it is calibrated it is good to a factor of
 * two. Fibres without a default, such as kozo, have none because hours in a beater say little of them.
 *
 * @source common practice; the form is chosen here to run from the unbeaten value to the limit
 */
public final class BeatingModel {
    /** Readings whose course is flatter or steeper than this do not follow the form. */
    private static final double LEAST_EXPONENT = 0.2;

    private static final double MOST_EXPONENT = 6;
    /** Times that differ by no more of themselves are one time, read several times. */
    private static final double SAME_TIME = 1e-3;
    /** No reading is surer than this on the scale of the line, so that one without an error leaves the others a say. */
    private static final double SUREST = 1e-3;

    private final double start;

    private final double limit;
    private final Assumption rate;
    private final double exponent;

    private BeatingModel(double start, double limit, Assumption rate, double exponent) {
        this.start = start;
        this.limit = limit;
        this.rate = rate;
        this.exponent = exponent;
    }

    /**
     * Builds the model of a fibre in a beater.
     *
     * @param assumptions where the constants are looked up
     * @param scope the fibre and the beater, for example {@code Scope.of("abaca").on("big beater")}
     * @return the model
     * @throws Refused if there is no rate for the fibre, or the limit does not lie above the unbeaten value
     */
    public static BeatingModel from(Assumptions assumptions, Scope scope) {
        Objects.requireNonNull(assumptions, "assumptions");
        Objects.requireNonNull(scope, "scope");
        double start = assumptions.si("beating.drainability-unbeaten", scope);
        double limit = assumptions.si("beating.drainability-limit", scope);
        if (!(limit > start)) {
            throw Refused.of(
                    "beating.limit-below-start",
                    "limit of beating: " + sr(limit) + " given, not above the unbeaten " + sr(start) + ".",
                    "limit",
                    sr(limit).toString(),
                    "start",
                    sr(start).toString());
        }
        return new BeatingModel(
                start, limit, assumptions.get("beating.rate", scope), assumptions.si("beating.exponent", scope));
    }

    /**
     * Builds the model of a fibre from the shipped table.
     *
     * @param scope the fibre
     * @return the model
     * @throws Refused if there is no rate for the fibre
     */
    public static BeatingModel standard(Scope scope) {
        Objects.requireNonNull(scope, "scope");
        return from(Assumptions.standard(), scope);
    }

    /**
     * Returns the model for the same fibre cooked with soda, where this one is of kraft pulp: it beats more slowly.
     *
     * @param assumptions where {@code beating.soda-rate-factor} is looked up
     * @return the model with its rate and the band of it times the factor
     * @source BioResources study of olive wood pulped by soda, sulphite and kraft, from its abstract
     */
    public BeatingModel sodaCooked(Assumptions assumptions) {
        Assumption factor = assumptions.get("beating.soda-rate-factor", rate.scope());
        double half = Math.hypot(Math.log(rate.high() / rate.likely()), Math.log(factor.high() / factor.likely()));
        double likely = rate.likely() * factor.likely();
        return new BeatingModel(
                start,
                limit,
                rate.with(
                        rate.scope(),
                        likely,
                        likely * Math.exp(-half),
                        likely * Math.exp(half),
                        rate.basis(),
                        rate.source()),
                exponent);
    }

    /**
     * Returns the drainability after a time.
     *
     * @param time the beating time, zero or more
     * @return the Schopper–Riegler number, from the unbeaten value towards the limit
     * @throws Refused if the time is out of range
     */
    public Amount<SchopperRiegler> after(Quantity<Time> time) {
        return at(Kinds.TIME.si(time, "beating time"), rate.likelySi());
    }

    /**
     * Returns the drainability after a time with the band that the rate leaves open, which is wide until a load was
     * read here.
     *
     * @param time the beating time, zero or more
     * @return the Schopper–Riegler number with its band
     * @throws Refused if the time is out of range
     */
    public Estimate<SchopperRiegler> forecast(Quantity<Time> time) {
        double seconds = Kinds.TIME.si(time, "beating time");
        return Estimate.of(
                at(seconds, rate.likelySi()),
                at(seconds, rate.lowSi()),
                at(seconds, rate.highSi()),
                List.of(new Estimate.Driver(rate, 1)));
    }

    private Amount<SchopperRiegler> at(double seconds, double ratePerSecond) {
        return sr(Beating.schopperRiegler(seconds, start, limit, ratePerSecond, exponent));
    }

    /**
     * Returns the time to a drainability.
     *
     * @param wanted the Schopper–Riegler number, from the unbeaten value to below the limit
     * @return the beating time
     * @throws Refused if the number is below the unbeaten value, or at the limit or beyond, where no time is long
     *     enough
     */
    public Amount<Time> timeTo(Quantity<SchopperRiegler> wanted) {
        double value = Kinds.SCHOPPER_RIEGLER.si(wanted, "Schopper-Riegler number");
        requireReachable(value, start, limit);
        return Kinds.TIME.ofSi(
                value == start ? 0 : Beating.doseFor(value, start, limit, rate.likelySi(), exponent), "h");
    }

    private static void requireReachable(double value, double start, double limit) {
        if (value < start || value >= limit) {
            throw Refused.of(
                    "beating.unreachable",
                    "Schopper-Riegler number: " + sr(value) + " given; beating goes from " + sr(start)
                            + " unbeaten towards " + sr(limit)
                            + " and does not get there. Check the reading, or read your own unbeaten pulp.",
                    "given",
                    sr(value).toString(),
                    "least",
                    sr(start).toString(),
                    "most",
                    sr(limit).toString());
        }
    }

    /**
     * Returns what readings of one's own pulp show about the fibre in the beater. A reading before beating sets the
     * unbeaten value. Readings after one time of beating set the rate, those at two times or more set rate and exponent
     * by a straight line through ln(−ln((SR_m − SR)/(SR_m − SR_0))) over ln t, each weighed by its error.
     *
     * @param assumptions what is taken for the rest
     * @param scope the fibre and the beater the readings hold for
     * @param readings one or more readings
     * @return the assumptions with {@code beating.rate}, and where the readings determine them {@code beating.exponent} and
     *     {@code beating.drainability-unbeaten}, in that scope
     * @throws Refused if there is no reading, a number is not between the unbeaten value and the limit, or the readings
     *     fall with beating, lie too near each other or are too unsure to give a rate
     */
    public static Assumptions calibrate(
            Assumptions assumptions, Scope scope, List<BeatingRecord.Point<SchopperRiegler>> readings) {
        Objects.requireNonNull(assumptions, "assumptions");
        Objects.requireNonNull(scope, "scope");
        Objects.requireNonNull(readings, "readings");
        Assumptions result = assumptions;
        List<BeatingRecord.Point<SchopperRiegler>> beaten =
                readings.stream().filter(point -> point.time().value().si() > 0).toList();
        for (BeatingRecord.Point<SchopperRiegler> point : readings) {
            if (point.time().value().si() == 0) {
                double value = point.drainability().value().si();
                double half =
                        Normal.FIVE_PERCENT_POINT * point.drainability().error().si();
                result = result.with(result.get("beating.drainability-unbeaten", scope)
                        .with(
                                scope,
                                value,
                                Math.max(0, value - half),
                                Math.min(100, value + half),
                                Basis.MEASURED_HERE,
                                here(readings.size())));
            }
        }
        if (beaten.isEmpty()) {
            throw noReading();
        }
        double start = result.si("beating.drainability-unbeaten", scope);
        double limit = result.si("beating.drainability-limit", scope);
        double prior = result.si("beating.exponent", scope);
        int count = beaten.size();
        double[] time = new double[count];
        double[] value = new double[count];
        for (int i = 0; i < count; i++) {
            time[i] = beaten.get(i).time().value().si();
            value[i] = beaten.get(i).drainability().value().si();
            requireReachable(value[i], start, limit);
            if (value[i] == start) {
                throw Refused.of(
                        "beating.no-rise",
                        "Schopper-Riegler number: " + sr(value[i]) + " given after "
                                + beaten.get(i).time().value()
                                + ", the same as before beating; such a reading gives no rate. Beat longer and read"
                                + " again.",
                        "given",
                        sr(value[i]).toString());
            }
        }
        double[] weight = weights(beaten, start, limit, prior);
        double[] fit = fit(time, value, weight, start, limit, prior);
        double[] square = new double[2];
        double both = 0;
        for (int i = 0; i < count; i++) {
            // A small step towards the middle of the range keeps the neighbour inside it.
            double step = (value[i] > (start + limit) / 2 ? -1 : 1) * 1e-6 * (limit - start);
            double[] moved = value.clone();
            moved[i] += step;
            double[] byValue = logarithms(fit(time, moved, weight, start, limit, prior), fit);
            double[] later = time.clone();
            later[i] *= 1 + 1e-6;
            double[] byTime = logarithms(fit(later, value, weight, start, limit, prior), fit);
            double ofValue = beaten.get(i).drainability().error().si() / step;
            double ofTime = beaten.get(i).time().error().si() / time[i] / 1e-6;
            for (int k = 0; k < 2; k++) {
                square[k] += square(byValue[k] * ofValue) + square(byTime[k] * ofTime);
            }
            both += byValue[0] * byValue[1] * square(ofValue) + byTime[0] * byTime[1] * square(ofTime);
        }
        if (!(Math.sqrt(square[0]) <= result.si("beating.rate-unsure", scope))
                || !(fit[1] > LEAST_EXPONENT)
                || !(fit[1] < MOST_EXPONENT)) {
            throw tellNothing();
        }
        double surest = result.si("beating.rate-surest", scope);
        List<Assumption.Lean> ofRate = new ArrayList<>();
        List<Assumption.Lean> ofExponent = new ArrayList<>();
        if (beaten.size() < readings.size()) {
            double step = -1e-6 * (limit - start);
            double[] byStart = logarithms(fit(time, value, weight, start + step, limit, prior), fit);
            ofRate.add(Assumption.Lean.of("beating.drainability-unbeaten", scope, byStart[0] / step));
            ofExponent.add(Assumption.Lean.of("beating.drainability-unbeaten", scope, byStart[1] / step));
        }
        double alone = square[0];
        if (!isOneTime(time)) {
            if (square[1] > 0) {
                ofRate.add(Assumption.Lean.of("beating.exponent", scope, both / square[1]));
                alone = Math.max(0, square[0] - both * both / square[1]);
            }
            result = result.with(measured(
                            result.get("beating.exponent", scope),
                            scope,
                            fit[1],
                            Math.max(surest, Math.sqrt(square[1])),
                            count)
                    .leaning(ofExponent));
        }
        result = result.with(measured(
                        result.get("beating.rate", scopeOfPattern(result, scope)),
                        scope,
                        fit[0] * 3600,
                        Math.max(surest, Math.sqrt(alone)),
                        count)
                .leaning(ofRate));
        return result;
    }

    /**
     * Returns what readings of one's own pulp show about a furnish in a beater. Of one fibre that is what
     * {@link #calibrate(Assumptions, Scope, List)} says. Fibres beaten together had one dose, and one number of the whole
     * tells of them all: by what factor the rate of every one of them goes beyond that taken until now. Their bands are
     * as much wider as makes up for being taken one by one in a plan.
     *
     * @param assumptions what is taken for the rest
     * @param furnish the fibres the readings are of
     * @param beater the name of the beater
     * @param readings one or more readings after beating; of a blend those before it tell nothing
     * @return the assumptions with {@code beating.rate} of each fibre in the beater
     * @throws Refused as the other form
     */
    public static Assumptions calibrate(
            Assumptions assumptions,
            Furnish furnish,
            String beater,
            List<BeatingRecord.Point<SchopperRiegler>> readings) {
        Objects.requireNonNull(assumptions, "assumptions");
        Objects.requireNonNull(furnish, "furnish");
        Objects.requireNonNull(beater, "beater");
        Objects.requireNonNull(readings, "readings");
        if (!furnish.isBlend()) {
            Scope scope = furnish.scope();
            return calibrate(assumptions, beater.isEmpty() ? scope : scope.on(beater), readings);
        }
        double surest = assumptions.si("beating.rate-surest", Scope.GENERAL);
        double sum = 0;
        double weights = 0;
        double information = 0;
        int count = 0;
        for (BeatingRecord.Point<SchopperRiegler> point : readings) {
            double time = point.time().value().si();
            if (time > 0) {
                double value = point.drainability().value().si();
                double asked = reachable(assumptions, furnish, beater, value);
                double step = 1e-4;
                double slope = (Math.log(reachable(assumptions, furnish, beater, value + step))
                                - Math.log(reachable(assumptions, furnish, beater, value - step)))
                        / (2 * step);
                double error = Math.hypot(
                        slope * point.drainability().error().si(),
                        point.time().error().si() / time);
                double weight = 1 / (Math.max(error, surest) * Math.max(error, surest));
                sum += weight * Math.log(asked / time);
                weights += weight;
                information += 1 / (error * error);
                count++;
            }
        }
        double left = Math.sqrt(1 / information);
        if (count == 0 || !(left <= assumptions.si("beating.rate-unsure", Scope.GENERAL))) {
            throw count == 0 ? noReading() : tellNothing();
        }
        double factor = Math.exp(sum / weights);
        double half = Math.max(surest, left) * Math.sqrt(furnish.fibres().size());
        Assumptions result = assumptions;
        for (Fibre fibre : furnish.fibres()) {
            Scope scope = beater.isEmpty() ? fibre.scope() : fibre.scope().on(beater);
            Assumption old = assumptions.get("beating.rate", scope);
            result = result.with(measured(old, scope, old.likely() * factor, half, count));
        }
        return result;
    }

    private static double reachable(Assumptions assumptions, Furnish furnish, String beater, double value) {
        double time = BeatingState.timeTo(assumptions, furnish, beater, value);
        if (!(time > 0) || Double.isInfinite(time)) {
            requireReachable(
                    value,
                    BeatingState.mixed(assumptions, furnish, beater, 0),
                    BeatingState.mixed(assumptions, furnish, beater, Double.POSITIVE_INFINITY));
            throw noRise(value);
        }
        return time;
    }

    private static double[] logarithms(double[] there, double[] here) {
        return new double[] {Math.log(there[0] / here[0]), Math.log(there[1] / here[1])};
    }

    private static double square(double value) {
        return value * value;
    }

    private static Refused noRise(double value) {
        return Refused.of(
                "beating.no-rise",
                "Schopper-Riegler number: " + sr(value) + " given after beating, the same as before it; such a reading"
                        + " tells no rate. Beat longer and read again.",
                "given",
                sr(value).toString());
    }

    private static Refused noReading() {
        return Refused.of(
                "beating.no-reading",
                "beating readings: none after beating given; one or more is wanted to tell the rate.");
    }

    private static Refused tellNothing() {
        return Refused.of(
                "beating.readings-tell-nothing",
                "beating readings: they lie so near each other, or are so unsure, that no rate can be told from"
                        + " them. Read at"
                        + " times further apart.");
    }

    /** A fibre without a default rate still needs a row to take the meaning and unit of. */
    private static Scope scopeOfPattern(Assumptions assumptions, Scope scope) {
        if (assumptions.find("beating.rate", scope).isPresent()) {
            return scope;
        }
        return assumptions.pattern("beating.rate").orElseThrow().scope();
    }

    /**
     * What each reading counts for, together one: the inverse of the square of what its error is on the scale of the
     * line. Near the limit a degree is much on it, and such a reading counts for little.
     */
    private static double[] weights(
            List<BeatingRecord.Point<SchopperRiegler>> beaten, double start, double limit, double exponent) {
        double[] weight = new double[beaten.size()];
        double sum = 0;
        for (int i = 0; i < weight.length; i++) {
            BeatingRecord.Point<SchopperRiegler> point = beaten.get(i);
            double rest = 1 - (point.drainability().value().si() - start) / (limit - start);
            double byNumber = point.drainability().error().si() / ((limit - start) * rest * -Math.log(rest));
            double byTime =
                    exponent * point.time().error().si() / point.time().value().si();
            double error = Math.max(SUREST, Math.hypot(byNumber, byTime));
            weight[i] = 1 / (error * error);
            sum += weight[i];
        }
        for (int i = 0; i < weight.length; i++) {
            weight[i] /= sum;
        }
        return weight;
    }

    private static boolean isOneTime(double[] time) {
        for (double one : time) {
            if (Math.abs(one - time[0]) > SAME_TIME * time[0]) {
                return false;
            }
        }
        return true;
    }

    /** Rate and exponent; with one reading, or several after one time, the exponent stays. */
    private static double[] fit(
            double[] time, double[] value, double[] weight, double start, double limit, double prior) {
        if (isOneTime(time)) {
            double sum = 0;
            for (int i = 0; i < time.length; i++) {
                sum += weight[i] * Math.log(Beating.rateFrom(value[i], time[i], start, limit, prior));
            }
            return new double[] {Math.exp(sum), prior};
        }
        double meanX = 0;
        double meanY = 0;
        double[] x = new double[time.length];
        double[] y = new double[time.length];
        for (int i = 0; i < time.length; i++) {
            x[i] = Math.log(time[i]);
            y[i] = Math.log(-Math.log1p(-(value[i] - start) / (limit - start)));
            meanX += weight[i] * x[i];
            meanY += weight[i] * y[i];
        }
        double xx = 0;
        double xy = 0;
        for (int i = 0; i < time.length; i++) {
            xx += weight[i] * (x[i] - meanX) * (x[i] - meanX);
            xy += weight[i] * (x[i] - meanX) * (y[i] - meanY);
        }
        double slope = xy / xx;
        if (!(xx > 0) || !(slope > 0)) {
            throw Refused.of(
                    "beating.readings-do-not-rise",
                    "beating readings: they do not rise with the time; a rate cannot be found from them. See whether"
                            + " the readings"
                            + " were changed over, or are of Canadian freeness, which falls.");
        }
        return new double[] {Math.exp(meanY / slope - meanX), slope};
    }

    private static Assumption measured(Assumption pattern, Scope scope, double value, double relative, int count) {
        double factor = Math.exp(Normal.FIVE_PERCENT_POINT * relative);
        return pattern.with(
                scope,
                value,
                Math.max(pattern.least(), value / factor),
                Math.min(pattern.most(), value * factor),
                Basis.MEASURED_HERE,
                here(count));
    }

    private static Source here(int count) {
        return new Source("measured here, " + count + (count == 1 ? " reading" : " readings") + " of drainability");
    }

    private static Amount<SchopperRiegler> sr(double value) {
        return Kinds.SCHOPPER_RIEGLER.ofSi(value, "SR");
    }

    @Override
    public String toString() {
        return "beating from " + sr(start) + " towards " + sr(limit) + " at " + Kinds.RATE.ofSi(rate.likelySi(), "1/h");
    }
}
