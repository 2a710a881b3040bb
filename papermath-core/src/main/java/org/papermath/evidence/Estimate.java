package org.papermath.evidence;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import javax.measure.Quantity;
import org.jspecify.annotations.Nullable;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kind;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Limits;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Units;

/**
 * What will come out of the next making: a likely value, the band its mean lies in nine times in ten, the assumptions behind
 * the band, and, where it is known, the scatter from sheet to sheet as a separate figure. Immutable.
 *
 * <pre>{@code
 * Estimate<Grammage> grammage = MakingPlan.of(order, studio).piece("programme").finished().grammage();
 * grammage.likely().in(GSM) > grammage.low().in(GSM); // true
 * }</pre>
 *
 * <p>Three levels are kept apart: what is not known of the studio ({@link #unknown()}, which shrinks with records), what one
 * making differs from the next ({@link #makings()}, which stays), both of them in the band; and what one sheet differs from
 * the next ({@link #scatter()}).
 *
 * <p>The only arithmetic on estimates is {@link #times} an exact count. Two of them are not added: their errors are not
 * independent. Totals come from the plan.
 *
 * @param <Q> the quantity type
 */
public final class Estimate<Q extends Quantity<Q>> {
    /** What several pieces have more of than one. */
    private static final Set<Kind<?>> ADD_UP = Set.of(Kinds.LENGTH, Kinds.AREA, Kinds.VOLUME, Kinds.MASS, Kinds.TIME);

    private final Amount<Q> likely;
    private final Amount<Q> low;
    private final Amount<Q> high;
    private final double scatter;
    private final List<Driver> drivers;
    private final boolean openBelow;
    private final boolean openAbove;
    private final @Nullable Spread<Q> spread;
    private final double fromMakings;
    /** The pieces it is the sum of; 1 for a mean. */
    private final int pieces;

    /**
     * A band that is part of another one.
     *
     * @param <Q> the quantity type
     */
    public sealed interface Part<Q extends Quantity<Q>> permits FoundPart {
        /** {@return the 5 % point} */
        Amount<Q> low();

        /** {@return the 95 % point} */
        Amount<Q> high();
    }

    private record FoundPart<Q extends Quantity<Q>>(Amount<Q> low, Amount<Q> high) implements Part<Q> {
        @Override
        public String toString() {
            return low + " to " + high;
        }
    }

    /**
     * One assumption's part in a band.
     *
     * @param assumption the assumption
     * @param share its share in the squared width of the band, 0 to 1
     */
    public record Driver(Assumption assumption, double share) {
        /**
         * Names a part.
         *
         * @param assumption the assumption
         * @param share its share in the squared width of the band, 0 to 1
         * @throws Refused if the share is out of range
         */
        public Driver {
            Objects.requireNonNull(assumption, "assumption");
            if (!(share >= 0 && share <= 1)) {
                throw Refused.of(
                        "estimate.driver-share",
                        "part of " + assumption.key() + " in a band: " + share
                                + " given; must be from 0 to 1. Give the part of the squared width.",
                        "given",
                        String.valueOf(share),
                        "least",
                        0,
                        "most",
                        1);
            }
        }

        @Override
        public String toString() {
            return assumption.key() + " " + Math.round(100 * share) + " %";
        }
    }

    private Estimate(
            Amount<Q> likely,
            Amount<Q> low,
            Amount<Q> high,
            double scatter,
            List<Driver> drivers,
            boolean openBelow,
            boolean openAbove,
            @Nullable Spread<Q> spread,
            double fromMakings,
            int pieces) {
        this.likely = likely;
        this.low = low;
        this.high = high;
        this.scatter = scatter;
        this.drivers = List.copyOf(drivers);
        this.openBelow = openBelow;
        this.openAbove = openAbove;
        this.spread = spread;
        this.fromMakings = fromMakings;
        this.pieces = pieces;
    }

    /**
     * Makes an estimate.
     *
     * @param <Q> the quantity type
     * @param likely the likely value of the mean
     * @param low the 5 % point of the mean
     * @param high the 95 % point of the mean
     * @param drivers the assumptions behind the band, the strongest first
     * @return the estimate, in the unit of the likely value, without a scatter
     * @throws Refused if the likely value lies outside the band
     */
    public static <Q extends Quantity<Q>> Estimate<Q> of(
            Amount<Q> likely, Amount<Q> low, Amount<Q> high, List<Driver> drivers) {
        Objects.requireNonNull(low, "low");
        Objects.requireNonNull(drivers, "drivers");
        if (low.compareTo(likely) > 0 || likely.compareTo(high) > 0) {
            throw Refused.of(
                    "estimate.order",
                    "estimate: likely " + likely + " is not inside its band " + low + " to " + high + ".",
                    "likely",
                    likely.toString(),
                    "low",
                    low.toString(),
                    "high",
                    high.toString());
        }
        return new Estimate<>(
                likely,
                low.to(likely.getUnit()),
                high.to(likely.getUnit()),
                Double.NaN,
                drivers,
                false,
                false,
                null,
                0,
                1);
    }

    /**
     * Returns the estimate with its band open below, above, or on both sides: at that end of what an assumption may be,
     * the result cannot be calculated. The end it has there is the farthest that could still be worked out.
     *
     * @param below whether the band has no end below
     * @param above whether the band has no end above
     * @return the estimate
     */
    public Estimate<Q> open(boolean below, boolean above) {
        return below == openBelow && above == openAbove
                ? this
                : new Estimate<>(likely, low, high, scatter, drivers, below, above, spread, fromMakings, pieces);
    }

    /**
     * Returns the estimate with the scatter of single pieces.
     *
     * @param relative nine pieces in ten lie within plus or minus this fraction of the mean; 0 or more
     * @return the estimate
     * @throws Refused if the fraction is below zero or not finite
     */
    public Estimate<Q> withScatter(double relative) {
        if (!(relative >= 0 && Double.isFinite(relative))) {
            throw Refused.of(
                    "estimate.scatter",
                    "scatter: " + relative + " given; must be a fraction of 0 or more.",
                    "given",
                    String.valueOf(relative));
        }
        return new Estimate<>(likely, low, high, relative, drivers, openBelow, openAbove, spread, fromMakings, pieces);
    }

    /**
     * Returns the estimate with the part of its band that is from one making to the next.
     *
     * @param share its share in the squared width of the band, 0 to 1
     * @return the estimate
     * @throws Refused if the share is out of range
     */
    public Estimate<Q> withMakings(double share) {
        if (!(share >= 0 && share <= 1)) {
            throw Refused.of(
                    "estimate.makings-share",
                    "part of a band from making to making: " + share
                            + " given; must be from 0 to 1. Give the part of the squared width.",
                    "given",
                    String.valueOf(share),
                    "least",
                    0,
                    "most",
                    1);
        }
        return new Estimate<>(likely, low, high, scatter, drivers, openBelow, openAbove, spread, share, pieces);
    }

    /**
     * Returns how much of the band is from one making to the next. The rest is what is not known of the studio; it
     * shrinks with every making that is recorded, while this stays.
     *
     * @return its share in the squared width of the band, 0 to 1
     */
    public double fromMakings() {
        return fromMakings;
    }

    /**
     * Returns the band of what is not known of the studio: nine in ten means over many makings lie in it. It shrinks with
     * every making that is recorded.
     *
     * @return the band
     */
    public Part<Q> unknown() {
        return part(Math.sqrt(1 - fromMakings));
    }

    /**
     * Returns the band of what one making differs from the next, were the studio known: nine makings in ten lie in it.
     *
     * @return the band
     */
    public Part<Q> makings() {
        return part(Math.sqrt(fromMakings));
    }

    /** So much of the way to either end: by factors where all is above zero. */
    private Part<Q> part(double share) {
        return new FoundPart<>(toward(low, share), toward(high, share));
    }

    private Amount<Q> toward(Amount<Q> end, double share) {
        double from = likely.si();
        double to = end.si();
        if (share == 1 || from == to) {
            return end;
        }
        double si = from > 0 && low.si() > 0 ? from * Math.pow(to / from, share) : from + share * (to - from);
        return si >= 0 || likely.kind().lowestSi() < 0
                ? likely.kind().ofSi(si).to(likely.getUnit())
                : likely.kind().ofSi(-si).negate().to(likely.getUnit());
    }

    /**
     * Returns the likely value of the mean.
     *
     * @return the value
     */
    public Amount<Q> likely() {
        return likely;
    }

    /**
     * Returns the 5 % point of the mean. Where the band is open below, the mean may be lower than this, by how much is
     * not known.
     *
     * @return the value
     */
    public Amount<Q> low() {
        return low;
    }

    /**
     * Returns the 95 % point of the mean. Where the band is open above, the mean may be higher than this, by how much
     * is not known.
     *
     * @return the value
     */
    public Amount<Q> high() {
        return high;
    }

    /**
     * Returns whether the band has no end below: at one end of an assumption, the result cannot be calculated.
     *
     * @return whether it is open below
     */
    public boolean isOpenBelow() {
        return openBelow;
    }

    /**
     * Returns whether the band has no end above: at one end of an assumption, the result cannot be calculated.
     *
     * @return whether it is open above
     */
    public boolean isOpenAbove() {
        return openAbove;
    }

    /**
     * Returns the scatter from piece to piece, if it is known; of a sum, from one lot of so many to the next.
     *
     * @return the fraction of the mean within which nine pieces, or lots, in ten lie
     */
    public Optional<Double> scatter() {
        return Double.isNaN(scatter) ? Optional.empty() : Optional.of(scatter);
    }

    /**
     * Returns what so many pieces come to together: the likely value and its band times the count, since what is not known
     * of the mean goes the same way in all of them. What single pieces scatter by evens out: of the sum it is a part
     * smaller by the root of the count, the pieces being independent.
     *
     * <pre>{@code
     * var one = MakingPlan.of(order, studio).piece("programme").finished().mass();
     * var seventyNine = one.times(79);
     * Math.round(seventyNine.low().in("g") / one.low().in("g")); // 79
     * }</pre>
     *
     * @param count the pieces, an exact count of 1 or more
     * @return the estimate of the sum
     * @throws Refused if the count is below 1, or the quantity does not grow with the count, as a grammage or a density
     */
    public Estimate<Q> times(int count) {
        if (count < 1) {
            throw Refused.of(
                    "count.below-one", "pieces: " + count + " given; must be 1 or more.", "given", count, "least", 1);
        }
        Limits.PULLED.check(count, "pieces");
        String name = likely.kind().name();
        if (!ADD_UP.contains(likely.kind())) {
            throw Refused.of(
                    "estimate.does-not-add",
                    name + ": " + likely + " times " + count + " pieces is asked for, but " + name
                            + " does not grow with their number. Multiply a mass, a length, an area, a volume or a time.",
                    "quantity",
                    name,
                    "given",
                    likely.toString(),
                    "count",
                    count);
        }
        return new Estimate<>(
                likely.multiply(count),
                low.multiply(count),
                high.multiply(count),
                scatter / Math.sqrt(count),
                drivers,
                openBelow,
                openAbove,
                spread == null ? null : spread.times(count),
                fromMakings,
                (int) Math.min(Integer.MAX_VALUE, (long) pieces * count));
    }

    /**
     * Returns the assumptions behind the band, the strongest first.
     *
     * @return an unmodifiable list
     */
    public List<Driver> drivers() {
        return drivers;
    }

    /**
     * Returns the estimate with the draws its band was taken from.
     *
     * @param drawn the draws
     * @return the estimate
     */
    public Estimate<Q> withSpread(Spread<Q> drawn) {
        Objects.requireNonNull(drawn, "drawn");
        return new Estimate<>(likely, low, high, scatter, drivers, openBelow, openAbove, drawn, fromMakings, pieces);
    }

    /**
     * Returns the draws its band was taken from.
     *
     * @return the draws, or empty where the band was worked out without any
     */
    public Optional<Spread<Q>> spread() {
        return Optional.ofNullable(spread);
    }

    /**
     * Returns whether the estimate rests only on values that are anchored, common practice or recalled, where it rests
     * on any.
     *
     * @return whether it is uncalibrated
     */
    public boolean isUncalibrated() {
        return !drivers.isEmpty()
                && drivers.stream()
                        .allMatch(driver -> driver.assumption().basis().isUncalibrated());
    }

    /**
     * Returns the same estimate in another unit.
     *
     * @param code a unit code of the kind
     * @return the estimate
     * @throws Refused if the code is not one of the kind
     */
    public Estimate<Q> in(String code) {
        return new Estimate<>(
                likely.to(code),
                low.to(code),
                high.to(code),
                scatter,
                drivers,
                openBelow,
                openAbove,
                spread,
                fromMakings,
                pieces);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Estimate<?> that
                && likely.kind() == that.likely.kind()
                && likely.equals(that.likely)
                && low.equals(that.low)
                && high.equals(that.high)
                && Double.compare(scatter, that.scatter) == 0
                && Double.compare(fromMakings, that.fromMakings) == 0
                && openBelow == that.openBelow
                && openAbove == that.openAbove
                && pieces == that.pieces
                && drivers.equals(that.drivers);
    }

    @Override
    public int hashCode() {
        return Objects.hash(likely, low, high, scatter, drivers, openBelow, openAbove, fromMakings, pieces);
    }

    /** Returns for example {@code 214 g/m², mean 203–226; single pieces ±8 %}; of a sum {@code lots of 79 ±0.9 %}. */
    @Override
    public String toString() {
        StringBuilder text = new StringBuilder(likely.toString());
        if (openBelow && openAbove) {
            text.append(", mean not known");
        } else if (openBelow) {
            text.append(", mean ").append(Units.fourDigits(high.value())).append(" or less");
        } else if (openAbove) {
            text.append(", mean ").append(Units.fourDigits(low.value())).append(" or more");
        } else if (low.compareTo(high) < 0) {
            text.append(", mean ")
                    .append(Units.fourDigits(low.value()))
                    .append("–")
                    .append(Units.fourDigits(high.value()));
        }
        if (!Double.isNaN(scatter)) {
            text.append(pieces > 1 ? "; lots of " + pieces + " ±" : "; single pieces ±")
                    .append(Units.fourDigits(100 * scatter))
                    .append(" %");
        }
        return text.toString();
    }
}
