package org.papermath.cost;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Currency;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Energy;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Power;
import javax.measure.quantity.Time;
import javax.measure.quantity.Volume;
import org.jspecify.annotations.Nullable;
import org.papermath.fibre.Alkali;
import org.papermath.fibre.BoughtFibre;
import org.papermath.fibre.Fibre;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Limits;
import org.papermath.quantity.Refused;

/**
 * What a studio pays for fibre, additives, water, current and hands, on a day, in one currency. Immutable. The library brings
 * no prices: every one of them is the studio's, and what a list has not is told by the {@link Costing}.
 *
 * <pre>{@code
 * PriceList prices = PriceList.of("winter 2026", LocalDate.of(2026, 11, 1), Currency.getInstance("EUR"))
 *         .fibre(Fibres.COTTON_RAG, MoneyRate.read(Kinds.MASS, "14 EUR per kg"))
 *         .additive("calcium carbonate", MoneyRate.read(Kinds.MASS, "3.80 EUR per 1 kg pack"))
 *         .water(MoneyRate.read(Kinds.VOLUME, "2.10 EUR per m3"))
 *         .energy(MoneyRate.read(Kinds.ENERGY, "0.31 EUR per kW.h"))
 *         .beaterPower(watts(750))
 *         .hands(MoneyRate.read(Kinds.TIME, "24 EUR per h"))
 *         .overhead(Overhead.onCost("office", Markup.percent(15)))
 *         .build();
 * }</pre>
 */
public final class PriceList {
    private final String name;
    private final LocalDate date;
    private final Currency currency;
    private final Map<String, MoneyRate<Mass>> fibres;
    private final Map<String, MoneyRate<Mass>> additives;
    private final Map<Alkali, MoneyRate<Mass>> alkalis;
    private final Optional<MoneyRate<Mass>> size;
    private final Optional<MoneyRate<Volume>> water;
    private final Optional<MoneyRate<Volume>> drain;
    private final Optional<MoneyRate<Energy>> energy;
    private final Optional<MoneyRate<Time>> hands;
    private final Optional<MoneyRate<Time>> machine;
    private final Optional<Wear> felt;
    private final Optional<Wear> blotter;
    private final Optional<Amount<Power>> beaterPower;
    private final Optional<Amount<Power>> dryerPower;
    private final Optional<Amount<Time>> cleaning;
    private final List<Overhead> overheads;
    private final List<OwnLine> lines;
    private final Optional<PostageTable> postage;
    private final List<Postage> posted;

    private PriceList(Builder builder) {
        name = builder.name;
        date = builder.date;
        currency = builder.currency;
        fibres = Collections.unmodifiableMap(new LinkedHashMap<>(builder.fibres));
        additives = Collections.unmodifiableMap(new LinkedHashMap<>(builder.additives));
        alkalis = Collections.unmodifiableMap(new LinkedHashMap<>(builder.alkalis));
        size = Optional.ofNullable(builder.size);
        water = Optional.ofNullable(builder.water);
        drain = Optional.ofNullable(builder.drain);
        energy = Optional.ofNullable(builder.energy);
        hands = Optional.ofNullable(builder.hands);
        machine = Optional.ofNullable(builder.machine);
        felt = Optional.ofNullable(builder.felt);
        blotter = Optional.ofNullable(builder.blotter);
        beaterPower = Optional.ofNullable(builder.beaterPower);
        dryerPower = Optional.ofNullable(builder.dryerPower);
        cleaning = Optional.ofNullable(builder.cleaning);
        overheads = List.copyOf(builder.overheads);
        lines = List.copyOf(builder.lines);
        postage = Optional.ofNullable(builder.postage);
        posted = List.copyOf(builder.posted);
    }

    /**
     * Begins a list.
     *
     * @param name what it is called
     * @param date the day its prices are of, within {@link Limits#FIRST_DAY} to {@link Limits#LAST_DAY}
     * @param currency the currency of all of them
     * @return a builder
     * @throws Refused if the name is empty, the day out of range, or the currency has no smallest unit
     */
    public static Builder of(String name, LocalDate date, Currency currency) {
        Objects.requireNonNull(name, "name");
        Objects.requireNonNull(date, "date");
        Objects.requireNonNull(currency, "currency");
        return new Builder(name, date, currency);
    }

    /** Builds a list of prices. What is set again takes the place of what was set before; lines and overheads are added. */
    public static final class Builder {
        private final String name;
        private final LocalDate date;
        private final Currency currency;
        private final Map<String, MoneyRate<Mass>> fibres = new LinkedHashMap<>();
        private final Map<String, MoneyRate<Mass>> additives = new LinkedHashMap<>();
        private final Map<Alkali, MoneyRate<Mass>> alkalis = new LinkedHashMap<>();
        private final List<Overhead> overheads = new ArrayList<>();
        private final List<OwnLine> lines = new ArrayList<>();
        private final List<Postage> posted = new ArrayList<>();
        private @Nullable PostageTable postage;
        private @Nullable MoneyRate<Mass> size;
        private @Nullable MoneyRate<Volume> water;
        private @Nullable MoneyRate<Volume> drain;
        private @Nullable MoneyRate<Energy> energy;
        private @Nullable MoneyRate<Time> hands;
        private @Nullable MoneyRate<Time> machine;
        private @Nullable Wear felt;
        private @Nullable Wear blotter;
        private @Nullable Amount<Power> beaterPower;
        private @Nullable Amount<Power> dryerPower;
        private @Nullable Amount<Time> cleaning;

        private Builder(String name, LocalDate date, Currency currency) {
            this.name = Named.require(name, "list of prices", "Give it one, such as the season.");
            this.date = Limits.day(date, "date of the prices");
            this.currency = Money.zero(currency).currency();
        }

        private void same(MoneyRate<?> rate, String what) {
            same(rate.currency(), what, rate.toString());
        }

        private void same(Money money, String what) {
            same(money.currency(), what, money.toString());
        }

        private void same(Currency given, String what, String shown) {
            if (!given.equals(currency)) {
                throw Refused.of(
                        "price.other-currency",
                        what + ": " + shown + " is of another currency than the list, " + currency.getCurrencyCode()
                                + ". Change it first, at a rate of your own.",
                        "of",
                        what,
                        "given",
                        shown,
                        "currency",
                        currency.getCurrencyCode());
            }
        }

        /**
         * Sets the price of a fibre as it is bought, in its usual form and every other that has no price of its own.
         *
         * @param fibre the fibre
         * @param price money per mass as bought, with its water
         * @return this builder
         * @throws Refused if it is of another currency
         */
        public Builder fibre(Fibre fibre, MoneyRate<Mass> price) {
            Objects.requireNonNull(fibre, "fibre");
            return fibre(fibre.name(), price);
        }

        /**
         * Sets the price of a fibre as it is bought in one form.
         *
         * @param fibre the fibre
         * @param form the form
         * @param price money per mass as bought, with its water
         * @return this builder
         * @throws Refused if it is of another currency
         */
        public Builder fibre(Fibre fibre, BoughtFibre.Form form, MoneyRate<Mass> price) {
            Objects.requireNonNull(fibre, "fibre");
            Objects.requireNonNull(form, "form");
            return fibre(inForm(fibre, form), price);
        }

        /**
         * Sets the price of a fibre by the name it has on lists of what to buy.
         *
         * @param name the name of the fibre; with the form in brackets where the price is of one form only, such as
         *     {@code cotton rag (rag)}
         * @param price money per mass as bought, with its water
         * @return this builder
         * @throws Refused if it is of another currency
         */
        public Builder fibre(String name, MoneyRate<Mass> price) {
            fibres.put(key(name, "fibre"), checked(price, name));
            return this;
        }

        /**
         * Sets the price of an additive as it is sold.
         *
         * @param name its name, as recipes have it
         * @param price money per mass of product
         * @return this builder
         * @throws Refused if it is of another currency
         */
        public Builder additive(String name, MoneyRate<Mass> price) {
            additives.put(key(name, "additive"), checked(price, name));
            return this;
        }

        /**
         * Sets the price of an alkali to cook in, pure and dry.
         *
         * @param alkali the alkali
         * @param price money per mass
         * @return this builder
         * @throws Refused if it is of another currency
         */
        public Builder alkali(Alkali alkali, MoneyRate<Mass> price) {
            Objects.requireNonNull(alkali, "alkali");
            alkalis.put(alkali, checked(price, alkali.toString()));
            return this;
        }

        private static String key(String name, String what) {
            return Named.require(Objects.requireNonNull(name, "name"), what, "");
        }

        private MoneyRate<Mass> checked(MoneyRate<Mass> price, String what) {
            Objects.requireNonNull(price, "price");
            same(price, what);
            return price;
        }

        /**
         * Sets the price of the dry size of the bath, gelatine for example.
         *
         * @param given the price of the dry size of the bath
         * @return this builder
         * @throws Refused if it is of another currency
         */
        public Builder size(MoneyRate<Mass> given) {
            Objects.requireNonNull(given, "given");
            same(given, "size");
            size = given;
            return this;
        }

        /**
         * Sets the price of water: what is soaked in, what the stock and the vat take.
         *
         * @param given the price of water
         * @return this builder
         * @throws Refused if it is of another currency
         */
        public Builder water(MoneyRate<Volume> given) {
            Objects.requireNonNull(given, "given");
            same(given, "water");
            water = given;
            return this;
        }

        /**
         * Sets what is paid for water that goes down the drain; as much as comes in, but for what dries off and stays in the paper.
         *
         * @param given what is paid for the drain
         * @return this builder
         * @throws Refused if it is of another currency
         */
        public Builder drain(MoneyRate<Volume> given) {
            Objects.requireNonNull(given, "given");
            same(given, "drain");
            drain = given;
            return this;
        }

        /**
         * Sets the price of current.
         *
         * @param given the price of current
         * @return this builder
         * @throws Refused if it is of another currency
         */
        public Builder energy(MoneyRate<Energy> given) {
            Objects.requireNonNull(given, "given");
            same(given, "energy");
            energy = given;
            return this;
        }

        /**
         * Sets the rate of an hour of hands on the work.
         *
         * @param given the rate of an hour of hands
         * @return this builder
         * @throws Refused if it is of another currency
         */
        public Builder hands(MoneyRate<Time> given) {
            Objects.requireNonNull(given, "given");
            same(given, "hands");
            hands = given;
            return this;
        }

        /**
         * Sets the rate of an hour in which a machine runs and somebody is near: the roll of the beater. Waiting for sheets to drain, dry or cure has no rate.
         *
         * @param given the rate of an hour of a machine
         * @return this builder
         * @throws Refused if it is of another currency
         */
        public Builder machine(MoneyRate<Time> given) {
            Objects.requireNonNull(given, "given");
            same(given, "machine");
            machine = given;
            return this;
        }

        /**
         * Sets what a felt costs and how many pressings it lasts.
         *
         * @param given what a felt costs by use
         * @return this builder
         * @throws Refused if it is of another currency
         */
        public Builder felt(Wear given) {
            Objects.requireNonNull(given, "given");
            same(given.price(), "felt");
            felt = given;
            return this;
        }

        /**
         * Sets what a blotter costs and how many times it is laid before it is done.
         *
         * @param given what a blotter costs by use
         * @return this builder
         * @throws Refused if it is of another currency
         */
        public Builder blotter(Wear given) {
            Objects.requireNonNull(given, "given");
            same(given.price(), "blotter");
            blotter = given;
            return this;
        }

        /**
         * Sets the power the motor of the beater takes under load.
         *
         * @param given above zero
         * @return this builder
         * @throws Refused if it is not above zero, or out of range
         */
        public Builder beaterPower(Quantity<Power> given) {
            beaterPower = Kinds.POWER.checkAboveZero(given, "beater power");
            return this;
        }

        /**
         * Sets the power a fan or heater of the dryer takes.
         *
         * @param given above zero
         * @return this builder
         * @throws Refused if it is not above zero, or out of range
         */
        public Builder dryerPower(Quantity<Power> given) {
            dryerPower = Kinds.POWER.checkAboveZero(given, "dryer power");
            return this;
        }

        /**
         * Sets hours of hands a batch takes besides what the plan counts: setting up, trials, clearing up.
         *
         * @param given above zero
         * @return this builder
         * @throws Refused if it is not above zero, or out of range
         */
        public Builder cleaning(Quantity<Time> given) {
            cleaning = Kinds.TIME.checkAboveZero(given, "cleaning");
            return this;
        }

        /**
         * Adds an overhead.
         *
         * @param given the overhead
         * @return this builder
         * @throws Refused if it is of another currency
         */
        public Builder overhead(Overhead given) {
            Objects.requireNonNull(given, "given");
            given.rate().ifPresent(rate -> same(rate, given.name()));
            given.day().ifPresent(money -> same(money, given.name()));
            overheads.add(given);
            return this;
        }

        /**
         * Adds a line of one's own.
         *
         * @param given the line
         * @return this builder
         * @throws Refused if it is of another currency
         */
        public Builder line(OwnLine given) {
            Objects.requireNonNull(given, "given");
            same(given.money(), given.name());
            lines.add(given);
            return this;
        }

        /**
         * Sets what the carrier asks.
         *
         * @param given the table
         * @return this builder
         * @throws Refused if it is of another currency
         */
        public Builder postage(PostageTable given) {
            Objects.requireNonNull(given, "given");
            same(given.currency(), "postage", given.carrier());
            postage = given;
            return this;
        }

        /**
         * Adds how pieces are posted by that table; without it nothing is posted.
         *
         * @param given the postage
         * @return this builder
         */
        public Builder post(Postage given) {
            posted.add(Objects.requireNonNull(given, "given"));
            return this;
        }

        /**
         * Makes the list.
         *
         * @return the list
         * @throws Refused if pieces are posted and there is no table of postage
         */
        public PriceList build() {
            if (postage == null && !posted.isEmpty()) {
                throw Refused.of(
                        "postage.no-table",
                        "list of prices: pieces are posted (" + posted.get(0)
                                + "), and it has no table of postage. Add the table, or put the postage as a line of your own.",
                        "given",
                        posted.get(0).toString());
            }
            return new PriceList(this);
        }

        @Override
        public String toString() {
            return "prices " + name + " of " + date + " in " + currency.getCurrencyCode()
                    + ", being put together: fibres " + fibres.keySet() + ", additives " + additives.keySet();
        }
    }

    private static String inForm(Fibre fibre, BoughtFibre.Form form) {
        return fibre.name() + " (" + form.words() + ")";
    }

    /** The price of a fibre in a form: that of the form, or that of the fibre. */
    Optional<MoneyRate<Mass>> fibre(Fibre fibre, BoughtFibre.Form form) {
        return Optional.ofNullable(fibres.get(inForm(fibre, form)))
                .or(() -> Optional.ofNullable(fibres.get(fibre.name())));
    }

    /**
     * Begins a list with all that this one has.
     *
     * @return a builder
     */
    public Builder toBuilder() {
        return at(date);
    }

    /**
     * Begins a list of another day with all that this one has.
     *
     * @param day the day its prices are of, within {@link Limits#FIRST_DAY} to {@link Limits#LAST_DAY}
     * @return a builder
     * @throws Refused if the day is out of range
     */
    public Builder at(LocalDate day) {
        Objects.requireNonNull(day, "day");
        Builder builder = new Builder(name, day, currency);
        fibres.forEach(builder::fibre);
        additives.forEach(builder::additive);
        alkalis.forEach(builder::alkali);
        size.ifPresent(builder::size);
        water.ifPresent(builder::water);
        drain.ifPresent(builder::drain);
        energy.ifPresent(builder::energy);
        hands.ifPresent(builder::hands);
        machine.ifPresent(builder::machine);
        felt.ifPresent(builder::felt);
        blotter.ifPresent(builder::blotter);
        beaterPower.ifPresent(builder::beaterPower);
        dryerPower.ifPresent(builder::dryerPower);
        cleaning.ifPresent(builder::cleaning);
        overheads.forEach(builder::overhead);
        lines.forEach(builder::line);
        postage.ifPresent(builder::postage);
        posted.forEach(builder::post);
        return builder;
    }

    /**
     * Returns what it is called.
     *
     * @return the name
     */
    public String name() {
        return name;
    }

    /**
     * Returns the day its prices are of.
     *
     * @return the day
     */
    public LocalDate date() {
        return date;
    }

    /**
     * Returns the currency of all its prices.
     *
     * @return the currency
     */
    public Currency currency() {
        return currency;
    }

    /**
     * Returns the prices of fibre as bought, by name; with the form in brackets where a price is of one form only.
     *
     * @return an unmodifiable map, as given
     */
    public Map<String, MoneyRate<Mass>> fibres() {
        return fibres;
    }

    /**
     * Returns the prices of additives, by name.
     *
     * @return an unmodifiable map, as given
     */
    public Map<String, MoneyRate<Mass>> additives() {
        return additives;
    }

    /**
     * Returns the prices of what raw fibre is cooked in.
     *
     * @return an unmodifiable map, as given
     */
    public Map<Alkali, MoneyRate<Mass>> alkalis() {
        return alkalis;
    }

    /**
     * Returns the price of the dry size of the bath.
     *
     * @return empty where the list has none
     */
    public Optional<MoneyRate<Mass>> size() {
        return size;
    }

    /**
     * Returns the price of water.
     *
     * @return empty where the list has none
     */
    public Optional<MoneyRate<Volume>> water() {
        return water;
    }

    /**
     * Returns what is paid for the drain.
     *
     * @return empty where the list has none
     */
    public Optional<MoneyRate<Volume>> drain() {
        return drain;
    }

    /**
     * Returns the price of current.
     *
     * @return empty where the list has none
     */
    public Optional<MoneyRate<Energy>> energy() {
        return energy;
    }

    /**
     * Returns the rate of an hour of hands.
     *
     * @return empty where the list has none
     */
    public Optional<MoneyRate<Time>> hands() {
        return hands;
    }

    /**
     * Returns the rate of an hour of a machine.
     *
     * @return empty where the list has none
     */
    public Optional<MoneyRate<Time>> machine() {
        return machine;
    }

    /**
     * Returns what a felt costs by use.
     *
     * @return empty where the list has none
     */
    public Optional<Wear> felt() {
        return felt;
    }

    /**
     * Returns what a blotter costs by use.
     *
     * @return empty where the list has none
     */
    public Optional<Wear> blotter() {
        return blotter;
    }

    /**
     * Returns the power the motor of the beater takes under load.
     *
     * @return empty where the list says nothing of it
     */
    public Optional<Amount<Power>> beaterPower() {
        return beaterPower;
    }

    /**
     * Returns the power a fan or heater of the dryer takes.
     *
     * @return empty where the list says nothing of it
     */
    public Optional<Amount<Power>> dryerPower() {
        return dryerPower;
    }

    /**
     * Returns hours of hands a batch takes besides what the plan counts: setting up, trials, clearing up.
     *
     * @return empty where the list says nothing of it
     */
    public Optional<Amount<Time>> cleaning() {
        return cleaning;
    }

    /**
     * Returns the overheads.
     *
     * @return an unmodifiable list
     */
    public List<Overhead> overheads() {
        return overheads;
    }

    /**
     * Returns the lines of one's own.
     *
     * @return an unmodifiable list
     */
    public List<OwnLine> lines() {
        return lines;
    }

    /**
     * Returns what the carrier asks.
     *
     * @return empty where the list has no table of postage
     */
    public Optional<PostageTable> postage() {
        return postage;
    }

    /**
     * Returns how pieces are posted.
     *
     * @return an unmodifiable list; empty where nothing is posted
     */
    public List<Postage> posted() {
        return posted;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof PriceList that
                && name.equals(that.name)
                && date.equals(that.date)
                && currency.equals(that.currency)
                && size.equals(that.size)
                && water.equals(that.water)
                && drain.equals(that.drain)
                && energy.equals(that.energy)
                && hands.equals(that.hands)
                && machine.equals(that.machine)
                && felt.equals(that.felt)
                && blotter.equals(that.blotter)
                && beaterPower.equals(that.beaterPower)
                && dryerPower.equals(that.dryerPower)
                && cleaning.equals(that.cleaning)
                && fibres.equals(that.fibres)
                && additives.equals(that.additives)
                && alkalis.equals(that.alkalis)
                && overheads.equals(that.overheads)
                && lines.equals(that.lines)
                && postage.equals(that.postage)
                && posted.equals(that.posted);
    }

    @Override
    public int hashCode() {
        return Objects.hash(name, date, currency, fibres, additives, hands, lines);
    }

    @Override
    public String toString() {
        return name + ", " + date + ", in " + currency.getCurrencyCode();
    }
}
