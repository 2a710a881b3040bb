package org.papermath.cost;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Currency;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import javax.measure.Quantity;
import org.jspecify.annotations.Nullable;
import org.papermath.evidence.Assumption;
import org.papermath.evidence.Basis;
import org.papermath.evidence.Estimate;
import org.papermath.plan.FinishedPiece;
import org.papermath.plan.MakingPlan;
import org.papermath.plan.PiecePlan;
import org.papermath.quantity.Limits;
import org.papermath.quantity.Name;
import org.papermath.quantity.Refused;
import org.papermath.text.Wrap;

/**
 * What is offered to a customer: pieces, counts, prices, what they will measure, how long the offer holds, and what it rests on.
 * A value, and a text of at most 80 columns. Immutable; it says no costs.
 *
 * <pre>{@code
 * Quotation quotation = Quotation.from(pricing, LocalDate.of(2026, 11, 28), 30)
 *         .deposit(new BigDecimal("40"))
 *         .tax("sales tax", new BigDecimal("19"))
 *         .build();
 * quotation.toPay();
 * }</pre>
 *
 * <p>What is promised of a size, a weight and a thickness is what nine makings in ten will give as their mean, read from the
 * bands of the plan, and what single pieces differ by beside it. Taxes are a per cent and a word given by the studio; the
 * library knows no taxes.
 */
public final class Quotation {
    private static final int WIDTH = 80;
    private static final int MOST_DAYS = 3650;

    /** One piece that is offered. */
    public sealed interface Line permits OfferedLine {
        /** {@return the name of the piece} */
        String piece();

        /** {@return how many} */
        int count();

        /** {@return the price of one} */
        Money price();

        /** {@return the price of all} */
        Money sum();

        /** {@return what is promised of it, a sentence for each: size, weight, thickness} */
        List<String> promised();

        /** {@return the price of one that is not of the first choice, if there is one} */
        Optional<Money> seconds();
    }

    private record OfferedLine(
            String piece, int count, Money price, Money sum, List<String> promised, Optional<Money> seconds)
            implements Line {
        @Override
        public String toString() {
            return piece + ": " + count + " at " + price + " = " + sum;
        }
    }

    private final Builder given;
    private final List<Line> lines;
    private final Money sum;

    private Quotation(Builder given) {
        this.given = given;
        this.lines = List.copyOf(given.lines);
        this.sum = lines.stream().map(Line::sum).reduce(Money.zero(given.currency), Money::plus);
    }

    /** Builds a quotation. */
    public static final class Builder {
        private final String name;
        private final String studio;
        private final LocalDate date;
        private final LocalDate holdsUntil;
        private final Currency currency;
        private final List<Line> lines = new ArrayList<>();
        private String restsOn = "";
        private @Nullable Money least;
        private @Nullable BigDecimal deposit;
        private String taxName = "";
        private @Nullable BigDecimal tax;
        private String note = "";

        private Builder(String name, String studio, LocalDate date, LocalDate holdsUntil, Currency currency) {
            this.name = named(name, "quotation");
            this.studio = named(studio, "studio");
            this.date = Limits.day(date, "date of the quotation");
            this.holdsUntil = Limits.day(holdsUntil, "last day of the quotation");
            this.currency = Money.zero(currency).currency();
            if (holdsUntil.isBefore(date)) {
                throw Refused.of(
                        "quotation.days",
                        "quotation: it is of " + date + " and holds until " + holdsUntil
                                + "; it must hold that day at least.",
                        "date",
                        date.toString(),
                        "until",
                        holdsUntil.toString());
            }
        }

        private Builder(Quotation from) {
            this(from.name(), from.studio(), from.date(), from.holdsUntil(), from.currency());
            lines.addAll(from.lines);
            restsOn = from.given.restsOn;
            least = from.given.least;
            deposit = from.given.deposit;
            taxName = from.given.taxName;
            tax = from.given.tax;
            note = from.given.note;
        }

        private static String named(String name, String what) {
            return Named.require(Objects.requireNonNull(name, what), what, "");
        }

        private Money same(Money money) {
            return Money.zero(currency).same(money);
        }

        private static BigDecimal percent(BigDecimal percent, String what) {
            if (percent.signum() < 0
                    || percent.compareTo(Decimals.HUNDRED) > 0
                    || percent.stripTrailingZeros().scale() > 9) {
                throw Refused.of(
                        "quotation.per-cent",
                        what + ": " + Decimals.plain(percent)
                                + " % given; must be from 0 to 100 %, with at most 9 digits" + " behind the point.",
                        "of",
                        what,
                        "given",
                        Decimals.plain(percent));
            }
            return percent.stripTrailingZeros();
        }

        /**
         * Adds a piece.
         *
         * @param piece its name
         * @param count how many, within {@link Limits#PIECES}
         * @param price the price of one, zero or more
         * @param promised what is promised of it, a sentence for each
         * @return this builder
         * @throws Refused if a name is empty, the count out of range, or the price below zero or of another currency
         */
        public Builder line(String piece, int count, Money price, List<String> promised) {
            Objects.requireNonNull(price, "price");
            Objects.requireNonNull(promised, "promised");
            OwnLine.requireNotBelowZero(same(price), "price");
            lines.add(new OfferedLine(
                    named(piece, "piece"),
                    Limits.PIECES.check(count, "pieces"),
                    price,
                    price.times(count),
                    promised.stream().map(one -> Name.check(one, "promise")).toList(),
                    Optional.empty()));
            return this;
        }

        /**
         * Sets the price of a piece that is not of the first choice, of a piece added before.
         *
         * @param piece the name of the piece
         * @param price the price of one, not above that of the first choice
         * @return this builder
         * @throws Refused if there is no such piece, or the price is above that of the first choice or below zero
         */
        public Builder seconds(String piece, Money price) {
            Objects.requireNonNull(piece, "piece");
            Objects.requireNonNull(price, "price");
            for (int i = 0; i < lines.size(); i++) {
                Line line = lines.get(i);
                if (line.piece().equals(piece)) {
                    if (OwnLine.requireNotBelowZero(same(price), "seconds").compareTo(line.price()) > 0) {
                        throw Refused.of(
                                "quotation.seconds",
                                "seconds of " + piece + ": " + price + " given; must not be above " + line.price()
                                        + ", the price of the first choice.",
                                "piece",
                                piece,
                                "given",
                                price.toString());
                    }
                    lines.set(
                            i,
                            new OfferedLine(
                                    line.piece(),
                                    line.count(),
                                    line.price(),
                                    line.sum(),
                                    line.promised(),
                                    Optional.of(price)));
                    return this;
                }
            }
            throw Refused.of(
                    "quotation.no-piece",
                    "quotation: there is no piece \"" + piece + "\"; it has: "
                            + lines.stream().map(Line::piece).toList() + ".",
                    "given",
                    piece);
        }

        /**
         * Sets the price of all pieces that are not of the first choice, as so much off the price.
         *
         * @param percent per cent off, 0 to 100; rounded to the coin, halves up
         * @return this builder
         * @throws Refused if it is out of range
         */
        public Builder secondsLess(BigDecimal percent) {
            Objects.requireNonNull(percent, "percent");
            BigDecimal left = Decimals.HUNDRED.subtract(percent(percent, "off for seconds"));
            for (Line line : List.copyOf(lines)) {
                seconds(line.piece(), line.price().times(left.movePointLeft(2), RoundingMode.HALF_UP));
            }
            return this;
        }

        /**
         * Sets the least order.
         *
         * @param money zero or more
         * @return this builder
         * @throws Refused if it is below zero or of another currency
         */
        public Builder leastOrder(Money money) {
            Objects.requireNonNull(money, "money");
            least = OwnLine.requireNotBelowZero(same(money), "least order");
            return this;
        }

        /**
         * Sets what is paid with the order, of what is to be paid in all.
         *
         * @param percent per cent, 0 to 100
         * @return this builder
         * @throws Refused if it is out of range
         */
        public Builder deposit(BigDecimal percent) {
            deposit = percent(Objects.requireNonNull(percent, "percent"), "deposit");
            return this;
        }

        /**
         * Sets a tax on the sum, as the studio has to put it.
         *
         * @param name what it is called
         * @param percent per cent of the sum, 0 to 100
         * @return this builder
         * @throws Refused if the name is empty, or the per cent out of range
         */
        public Builder tax(String name, BigDecimal percent) {
            tax = percent(Objects.requireNonNull(percent, "percent"), "tax");
            taxName = named(Objects.requireNonNull(name, "name"), "tax");
            return this;
        }

        /**
         * Sets what the promises rest on.
         *
         * @param text a sentence
         * @return this builder
         * @throws Refused if it is too long or cannot be shown
         */
        public Builder restsOn(String text) {
            restsOn = Name.check(Objects.requireNonNull(text, "text"), "what it rests on");
            return this;
        }

        /**
         * Adds a note to the customer.
         *
         * @param text a sentence or two
         * @return this builder
         * @throws Refused if it is too long or cannot be shown
         */
        public Builder note(String text) {
            note = Name.check(Objects.requireNonNull(text, "text"), "note");
            return this;
        }

        /**
         * Makes the quotation.
         *
         * @return the quotation
         * @throws Refused if nothing is offered
         */
        public Quotation build() {
            if (lines.isEmpty()) {
                throw Refused.of("quotation.empty", "quotation: nothing is offered. Add a piece.");
            }
            // What is built must not change with the builder.
            Builder own = new Builder(name, studio, date, holdsUntil, currency);
            own.lines.addAll(lines);
            own.restsOn = restsOn;
            own.least = least;
            own.deposit = deposit;
            own.taxName = taxName;
            own.tax = tax;
            own.note = note;
            return new Quotation(own);
        }

        @Override
        public String toString() {
            return "quotation " + name + " of " + date + ", being put together: " + lines.size()
                    + (lines.size() == 1 ? " line" : " lines") + " in " + currency.getCurrencyCode();
        }
    }

    /**
     * Begins a quotation.
     *
     * @param name what is offered, such as the name of the order
     * @param studio who offers it
     * @param date the day
     * @param holdsUntil the last day it holds
     * @param currency the currency
     * @return a builder
     * @throws Refused if a name is empty, a day out of range, or the last before the first
     */
    public static Builder of(String name, String studio, LocalDate date, LocalDate holdsUntil, Currency currency) {
        Objects.requireNonNull(name, "name");
        Objects.requireNonNull(studio, "studio");
        Objects.requireNonNull(date, "date");
        Objects.requireNonNull(holdsUntil, "holdsUntil");
        Objects.requireNonNull(currency, "currency");
        return new Builder(name, studio, date, holdsUntil, currency);
    }

    /**
     * Begins a quotation of the prices of a plan: its pieces, what is promised of them, and what that rests on.
     *
     * @param pricing the prices
     * @param date the day
     * @param days how many days it holds, 0 to 3650
     * @return a builder
     * @throws Refused if the days are out of range, or the costs are not whole: something has no price, so no price should be
     *     offered
     */
    public static Builder from(Pricing pricing, LocalDate date, int days) {
        Objects.requireNonNull(pricing, "pricing");
        Objects.requireNonNull(date, "date");
        if (days < 0 || days > MOST_DAYS) {
            throw Refused.of(
                    "quotation.holds",
                    "quotation: to hold " + days + " days; must be from 0 to " + MOST_DAYS + ".",
                    "given",
                    days,
                    "least",
                    0,
                    "most",
                    MOST_DAYS);
        }
        Costing costing = pricing.costing();
        if (costing.isAtLeast()) {
            throw Refused.of(
                    "quotation.gaps",
                    "quotation: the costs are not whole; without a price are: "
                            + String.join(
                                    ", ",
                                    costing.gaps().stream()
                                            .map(Costing.Gap::what)
                                            .toList())
                            + ". Add them to the list " + costing.prices().name() + ", also where they are 0.",
                    "missing",
                    costing.gaps().stream().map(Costing.Gap::what).toList().toString());
        }
        MakingPlan plan = costing.plan();
        Builder builder = new Builder(
                plan.order().name(),
                plan.studio().name(),
                date,
                Limits.day(date, "date of the quotation").plusDays(days),
                costing.prices().currency());
        for (Pricing.Priced piece : pricing.pieces()) {
            builder.line(piece.name(), piece.count(), piece.price(), promised(plan.piece(piece.name())));
        }
        pricing.least().ifPresent(builder::leastOrder);
        return builder.restsOn(restsOn(plan));
    }

    private static List<String> promised(PiecePlan piece) {
        FinishedPiece finished = piece.finished();
        List<String> promised = new ArrayList<>();
        promised.add(piece.envelopeStage()
                .map(envelope -> "outside " + envelope.outsideWidth() + " by " + envelope.outsideHeight())
                .orElse("size " + within(finished.width()) + " by " + within(finished.height()) + folded(piece)));
        promised.add("weight " + within(finished.grammage()));
        finished.caliperStage().optional().ifPresent(caliper -> promised.add("thickness " + within(caliper)));
        return promised;
    }

    private static String folded(PiecePlan piece) {
        return piece.piece().folds() == 0
                ? ""
                : ", folded to " + piece.finished().foldedWidth() + " by "
                        + piece.finished().foldedHeight();
    }

    private static <Q extends Quantity<Q>> String within(Estimate<Q> estimate) {
        return estimate.toString().replace(", mean ", ", ");
    }

    private static String restsOn(MakingPlan plan) {
        List<Assumption> used = plan.assumptionsUsed();
        long measured =
                used.stream().filter(one -> one.basis() == Basis.MEASURED_HERE).count();
        return "table of assumptions " + plan.studio().assumptions().edition() + "; of " + used.size() + " values used "
                + measured + (measured == 1 ? " was" : " were") + " measured in this studio";
    }

    /**
     * Returns what is offered.
     *
     * @return the name
     */
    public String name() {
        return given.name;
    }

    /**
     * Returns who offers it.
     *
     * @return the name of the studio
     */
    public String studio() {
        return given.studio;
    }

    /**
     * Returns the day it was made.
     *
     * @return the day
     */
    public LocalDate date() {
        return given.date;
    }

    /**
     * Returns the last day it holds.
     *
     * @return the day
     */
    public LocalDate holdsUntil() {
        return given.holdsUntil;
    }

    /**
     * Returns the currency.
     *
     * @return the currency
     */
    public Currency currency() {
        return given.currency;
    }

    /**
     * Returns the pieces.
     *
     * @return an unmodifiable list
     */
    public List<Line> lines() {
        return lines;
    }

    /**
     * Returns what the promises rest on.
     *
     * @return a sentence; empty where nothing is said
     */
    public String restsOn() {
        return given.restsOn;
    }

    /**
     * Returns the note to the customer.
     *
     * @return the text; empty where there is none
     */
    public String note() {
        return given.note;
    }

    /**
     * Returns the least order.
     *
     * @return empty where there is none
     */
    public Optional<Money> leastOrder() {
        return Optional.ofNullable(given.least);
    }

    /**
     * Returns the sum of the pieces, or the least order where that is more; without tax.
     *
     * @return the sum
     */
    public Money sum() {
        Money least = given.least;
        return least == null || least.compareTo(sum) < 0 ? sum : least;
    }

    /**
     * Returns what the tax is called.
     *
     * @return the name; empty where there is none
     */
    public String taxName() {
        return given.taxName;
    }

    /**
     * Returns the per cent of the tax.
     *
     * @return empty where there is none
     */
    public Optional<BigDecimal> taxPercent() {
        return Optional.ofNullable(given.tax);
    }

    /**
     * Returns the tax on the sum, rounded to the coin, halves up.
     *
     * @return zero where there is none
     */
    public Money tax() {
        return share(sum(), given.tax);
    }

    /**
     * Returns what is to be paid in all.
     *
     * @return sum and tax
     */
    public Money toPay() {
        return sum().plus(tax());
    }

    /**
     * Returns the per cent that is paid with the order.
     *
     * @return empty where none is
     */
    public Optional<BigDecimal> depositPercent() {
        return Optional.ofNullable(given.deposit);
    }

    /**
     * Returns what is paid with the order, rounded to the coin, halves up.
     *
     * @return zero where nothing is
     */
    public Money deposit() {
        return share(toPay(), given.deposit);
    }

    private static Money share(Money of, @Nullable BigDecimal percent) {
        return percent == null ? Money.zero(of.currency()) : of.times(percent.movePointLeft(2), RoundingMode.HALF_UP);
    }

    /**
     * Returns whether it holds on a day.
     *
     * @param day the day
     * @return whether the day is not after the last one it holds
     */
    public boolean holdsOn(LocalDate day) {
        return !Objects.requireNonNull(day, "day").isAfter(given.holdsUntil);
    }

    /**
     * Begins a quotation with all that this one has.
     *
     * @return a builder
     */
    public Builder toBuilder() {
        return new Builder(this);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Quotation that
                && given.name.equals(that.given.name)
                && given.studio.equals(that.given.studio)
                && given.date.equals(that.given.date)
                && given.holdsUntil.equals(that.given.holdsUntil)
                && given.currency.equals(that.given.currency)
                && lines.equals(that.lines)
                && given.restsOn.equals(that.given.restsOn)
                && Objects.equals(given.least, that.given.least)
                && Objects.equals(given.deposit, that.given.deposit)
                && given.taxName.equals(that.given.taxName)
                && Objects.equals(given.tax, that.given.tax)
                && given.note.equals(that.given.note);
    }

    @Override
    public int hashCode() {
        return Objects.hash(given.name, given.date, lines);
    }

    /** Returns the quotation as text, at most 80 columns wide, lines ended by line feeds; the same in every locale. */
    @Override
    public String toString() {
        List<String> text = new ArrayList<>();
        text.addAll(Wrap.lines("QUOTATION: " + given.name, WIDTH));
        text.addAll(Wrap.lines(
                "from " + given.studio + ", " + given.date + "; holds until " + given.holdsUntil + "; in "
                        + given.currency.getCurrencyCode(),
                WIDTH));
        text.add("");
        text.add(columns("piece", "count", "each", "sum"));
        text.add("-".repeat(WIDTH));
        for (Line line : lines) {
            List<String> name = Wrap.lines(line.piece(), 43);
            for (int i = 0; i < name.size(); i++) {
                text.add(
                        i + 1 < name.size()
                                ? name.get(i)
                                : columns(
                                        name.get(i),
                                        String.valueOf(line.count()),
                                        bare(line.price()),
                                        bare(line.sum())));
            }
            for (String promise : line.promised()) {
                for (String one : Wrap.lines(promise, WIDTH - 2)) {
                    text.add("  " + one);
                }
            }
            line.seconds().ifPresent(money -> text.add("  seconds, if there are any, at " + bare(money) + " each"));
        }
        text.add("-".repeat(WIDTH));
        if (!sum().equals(sum)) {
            text.add(total("pieces", sum));
            text.add(total("least order", sum()));
        } else {
            text.add(total("sum", sum));
        }
        taxPercent().ifPresent(percent -> {
            text.add(total(given.taxName + " " + Decimals.plain(percent) + " %", tax()));
            text.add(total("to pay", toPay()));
        });
        depositPercent()
                .ifPresent(percent ->
                        text.add(total("of it with the order, " + Decimals.plain(percent) + " %", deposit())));
        text.add("");
        text.addAll(Wrap.lines(
                "Sizes, weights and thicknesses are those that nine makings in ten will give as their mean; single"
                        + " pieces differ from it by what is said beside.",
                WIDTH));
        if (!given.restsOn.isEmpty()) {
            text.addAll(Wrap.lines("They rest on: " + given.restsOn + ".", WIDTH));
        }
        text.addAll(given.note.isEmpty() ? List.of() : Wrap.lines(given.note, WIDTH));
        return String.join("\n", text) + "\n";
    }

    private static String bare(Money money) {
        return money.amount().toPlainString();
    }

    private static String columns(String name, String count, String each, String sum) {
        return left(name, 44) + right(count, 7) + right(each, 13) + right(sum, 16);
    }

    /** Words that are too long for one line stand on several, the money on the last. */
    private static String total(String words, Money money) {
        List<String> lines = Wrap.lines(words, 60);
        StringBuilder text = new StringBuilder();
        for (int i = 0; i + 1 < lines.size(); i++) {
            text.append(lines.get(i)).append('\n');
        }
        return text.append(left(lines.get(lines.size() - 1), 61))
                .append(right(bare(money), 19))
                .toString();
    }

    private static String left(String text, int width) {
        return text + " ".repeat(Math.max(0, width - text.length()));
    }

    private static String right(String text, int width) {
        return " ".repeat(Math.max(0, width - text.length())) + text;
    }
}
