package org.papermath.cost;

import java.util.Objects;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Time;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;

/**
 * What a studio costs whether an order is made or not, such as rent, insurance and the books, and how an order takes its part:
 * by the hour of hands, by the working day, or as a share on all the rest. Immutable.
 *
 * <pre>{@code
 * Overhead.perMonth("rent and insurance", Money.of("620 EUR"), hours(120)); // rent and insurance: 620 EUR per 120 h
 * Overhead.onCost("office", Markup.percent(15));
 * }</pre>
 */
public final class Overhead {
    private static final int MOST_OF_A_MONTH = 744 * 3600;

    /** How an order takes its part. */
    public enum Basis {
        /** By the hours of hands on the order. */
        HOUR("per hour of hands"),
        /** By the hours of hands on the order, as parts of a working day of the studio. */
        DAY("per working day"),
        /** As a share on every other line. */
        COST("on all other lines");

        private final String words;

        Basis(String words) {
            this.words = words;
        }

        /**
         * Returns the basis in words.
         *
         * @return for example {@code per working day}
         */
        public String words() {
            return words;
        }
    }

    private final String name;
    private final Basis basis;
    private final Optional<MoneyRate<Time>> rate;
    private final Optional<Money> day;
    private final Optional<Markup> share;

    private Overhead(
            String name, Basis basis, Optional<MoneyRate<Time>> rate, Optional<Money> day, Optional<Markup> share) {
        this.name = Named.require(name, "overhead", "Say what it is for.");
        this.basis = basis;
        this.rate = rate;
        this.day = day;
        this.share = share;
    }

    /**
     * Makes an overhead by the hour of hands.
     *
     * @param name what it is for
     * @param rate money per time
     * @return the overhead
     * @throws Refused if the name is empty or cannot be shown
     */
    public static Overhead perHour(String name, MoneyRate<Time> rate) {
        return new Overhead(
                Objects.requireNonNull(name, "name"),
                Basis.HOUR,
                Optional.of(Objects.requireNonNull(rate, "rate")),
                Optional.empty(),
                Optional.empty());
    }

    /**
     * Makes an overhead of a month, spread over the hours that hands work in a month.
     *
     * @param name what it is for
     * @param month the money of a month, zero or more
     * @param hours hours of hands in a month, above zero, at most 744 h
     * @return the overhead, by the hour
     * @throws Refused if the name is empty, the money below zero, or the hours out of range
     */
    public static Overhead perMonth(String name, Money month, Quantity<Time> hours) {
        Objects.requireNonNull(name, "name");
        Objects.requireNonNull(month, "month");
        Amount<Time> checked = Kinds.TIME.checkWithin(hours, "hours of hands in a month", 1, MOST_OF_A_MONTH);
        return perHour(name, MoneyRate.of(month, checked));
    }

    /**
     * Makes an overhead by the working day of the studio; a part of a day takes that part of it.
     *
     * @param name what it is for
     * @param day the money of a day, zero or more
     * @return the overhead
     * @throws Refused if the name is empty, or the money below zero
     */
    public static Overhead perDay(String name, Money day) {
        Objects.requireNonNull(name, "name");
        Objects.requireNonNull(day, "day");
        OwnLine.requireNotBelowZero(day, name);
        return new Overhead(name, Basis.DAY, Optional.empty(), Optional.of(day), Optional.empty());
    }

    /**
     * Makes an overhead that is a share on all other lines, other such shares not counted in.
     *
     * @param name what it is for
     * @param share the share
     * @return the overhead
     * @throws Refused if the name is empty
     */
    public static Overhead onCost(String name, Markup share) {
        return new Overhead(
                Objects.requireNonNull(name, "name"),
                Basis.COST,
                Optional.empty(),
                Optional.empty(),
                Optional.of(Objects.requireNonNull(share, "share")));
    }

    /** The price of an hour of hands in a studio with such a working day; empty for a share on cost. */
    Optional<MoneyRate<Time>> hourly(Amount<Time> workingDay) {
        return rate.or(() -> day.map(money -> MoneyRate.of(money, workingDay)));
    }

    /**
     * Returns what it is for.
     *
     * @return the name
     */
    public String name() {
        return name;
    }

    /**
     * Returns how an order takes its part.
     *
     * @return the basis
     */
    public Basis basis() {
        return basis;
    }

    /**
     * Returns the money per time.
     *
     * @return the rate; empty unless it goes by the hour
     */
    public Optional<MoneyRate<Time>> rate() {
        return rate;
    }

    /**
     * Returns the money of a working day.
     *
     * @return the money; empty unless it goes by the day
     */
    public Optional<Money> day() {
        return day;
    }

    /**
     * Returns the share on all other lines.
     *
     * @return the share; empty unless it is one
     */
    public Optional<Markup> share() {
        return share;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Overhead that
                && name.equals(that.name)
                && basis == that.basis
                && rate.equals(that.rate)
                && day.equals(that.day)
                && share.equals(that.share);
    }

    @Override
    public int hashCode() {
        return Objects.hash(name, basis, rate, day, share);
    }

    @Override
    public String toString() {
        return name + ": "
                + rate.map(MoneyRate::toString)
                        .or(() -> day.map(money -> money + " per working day"))
                        .or(() -> share.map(Markup::toString))
                        .orElse("");
    }
}
