package org.papermath.pulp;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Time;
import org.papermath.evidence.Reading;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kind;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;

/**
 * One's own table for one fibre in one beater: drainability after so much beating, as it was measured. Immutable.
 *
 * <p>Between its readings it goes in straight lines; outside them it has no answer. Schopper–Riegler numbers and
 * Canadian freeness are kept apart by the type.
 *
 * @param <Q> the kind of drainability: {@code SchopperRiegler} or {@code CanadianFreeness}
 */
public final class BeatingRecord<Q extends Quantity<Q>> {
    private final String name;
    private final Kind<Q> kind;
    private final List<Point<Q>> points;

    /**
     * One reading of a record.
     *
     * @param <Q> the kind of drainability
     * @param time the beating time
     * @param drainability the value read after it
     */
    public record Point<Q extends Quantity<Q>>(Reading<Time> time, Reading<Q> drainability) {
        /**
         * Checks that nothing is missing.
         *
         * @param time the beating time
         * @param drainability the value read after it
         */
        public Point {
            Objects.requireNonNull(time, "time");
            Objects.requireNonNull(drainability, "drainability");
        }

        /**
         * Makes a point.
         *
         * @param <Q> the kind of drainability
         * @param time the beating time
         * @param drainability the value read after it
         * @return the point
         */
        public static <Q extends Quantity<Q>> Point<Q> of(Reading<Time> time, Reading<Q> drainability) {
            return new Point<>(time, drainability);
        }

        /**
         * Makes a point of a reading that is taken as it was read, without an error. The record answers alike; what
         * calibrates a model needs the errors.
         *
         * @param <Q> the kind of drainability
         * @param time the beating time
         * @param drainability the value read after it
         * @return the point
         */
        public static <Q extends Quantity<Q>> Point<Q> read(Amount<Time> time, Amount<Q> drainability) {
            Objects.requireNonNull(time, "time");
            Objects.requireNonNull(drainability, "drainability");
            return new Point<>(exact(time), exact(drainability));
        }

        private static <Q extends Quantity<Q>> Reading<Q> exact(Amount<Q> value) {
            return Reading.of(value, value.subtract(value));
        }

        @Override
        public String toString() {
            return drainability + " after " + time;
        }
    }

    private BeatingRecord(String name, Kind<Q> kind, List<Point<Q>> points) {
        this.name = name;
        this.kind = kind;
        this.points = points;
    }

    /**
     * Makes a record.
     *
     * @param <Q> the kind of drainability
     * @param name what it is of, for messages, for example {@code abaca in the big beater}
     * @param kind the kind of drainability
     * @param points two or more readings at different times, in any order
     * @return the record
     * @throws Refused if there are fewer than two readings or two at the same time
     */
    public static <Q extends Quantity<Q>> BeatingRecord<Q> of(String name, Kind<Q> kind, List<Point<Q>> points) {
        Objects.requireNonNull(points, "points");
        if (points.size() < 2) {
            throw Refused.of(
                    "beating.record-too-short",
                    "beating record of " + name + ": " + points.size() + " readings given; at least two are needed.",
                    "record",
                    name,
                    "given",
                    points.size());
        }
        List<Point<Q>> sorted = new ArrayList<>(points);
        sorted.sort(Comparator.comparingDouble(point -> point.time().value().si()));
        for (int i = 1; i < sorted.size(); i++) {
            if (sorted.get(i).time().value().si()
                    == sorted.get(i - 1).time().value().si()) {
                throw Refused.of(
                        "beating.record-twice",
                        "beating record of " + name + ": two readings after "
                                + sorted.get(i).time().value() + "; take their mean.",
                        "record",
                        name,
                        "time",
                        sorted.get(i).time().value().toString());
            }
        }
        return new BeatingRecord<>(name, kind, List.copyOf(sorted));
    }

    /**
     * Returns the readings in order of time.
     *
     * @return an unmodifiable list
     */
    public List<Point<Q>> points() {
        return points;
    }

    /**
     * Returns the drainability after a time, between two readings in a straight line.
     *
     * @param time the beating time, inside the record
     * @return the drainability
     * @throws Refused if the time is outside the record
     */
    public Amount<Q> after(Quantity<Time> time) {
        double t = Kinds.TIME.si(time, "beating time");
        double first = time(0);
        double last = time(points.size() - 1);
        if (t < first || t > last) {
            throw outside(
                    "beating time",
                    likeTime(t).toString(),
                    likeTime(first).toString(),
                    likeTime(last).toString());
        }
        for (int i = 1; i < points.size(); i++) {
            if (t <= time(i)) {
                double part = (t - time(i - 1)) / (time(i) - time(i - 1));
                return like(value(i - 1) + part * (value(i) - value(i - 1)));
            }
        }
        return like(value(points.size() - 1));
    }

    /**
     * Returns the time that first reaches a drainability, between two readings in a straight line.
     *
     * @param drainability the wanted drainability, inside the record
     * @return the beating time, in the unit of the first reading
     * @throws Refused if the record does not reach that value
     */
    public Amount<Time> timeTo(Quantity<Q> drainability) {
        double wanted = kind.si(drainability, kind.name());
        double least = Double.POSITIVE_INFINITY;
        double most = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < points.size(); i++) {
            least = Math.min(least, value(i));
            most = Math.max(most, value(i));
        }
        if (wanted < least || wanted > most) {
            throw outside(
                    kind.name(),
                    like(wanted).toString(),
                    like(least).toString(),
                    like(most).toString());
        }
        for (int i = 1; i < points.size(); i++) {
            double a = value(i - 1);
            double b = value(i);
            if (wanted >= Math.min(a, b) && wanted <= Math.max(a, b)) {
                double part = a == b ? 0 : (wanted - a) / (b - a);
                return likeTime(time(i - 1) + part * (time(i) - time(i - 1)));
            }
        }
        throw new IllegalStateException("a value inside the record lies between two of its readings");
    }

    private Refused outside(String what, String given, String least, String most) {
        return Refused.of(
                "beating.outside-record",
                what + ": " + given + " asked for, but the record of " + name + " goes from " + least + " to " + most
                        + ". It is not extrapolated: beat further once and read.",
                "quantity",
                what,
                "given",
                given,
                "least",
                least,
                "most",
                most,
                "record",
                name);
    }

    private Amount<Time> likeTime(double si) {
        return Kinds.TIME.ofSi(si).to(points.get(0).time().value().getUnit());
    }

    private double time(int i) {
        return points.get(i).time().value().si();
    }

    private double value(int i) {
        return points.get(i).drainability().value().si();
    }

    private Amount<Q> like(double si) {
        return kind.ofSi(si);
    }

    @Override
    public String toString() {
        return "record of " + name + ": " + points.size() + " readings, "
                + points.get(0).time().value() + " to "
                + points.get(points.size() - 1).time().value();
    }
}
