package org.papermath.cost;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Currency;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeSet;
import javax.measure.Quantity;
import javax.measure.quantity.Mass;
import org.papermath.evidence.Notice;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Limits;
import org.papermath.quantity.Name;
import org.papermath.quantity.Refused;

/**
 * What a carrier asks, as the studio has read it: steps by mass of each service, with surcharges, each with the day it holds from
 * and where it was read. Immutable. The library ships what could be read of a few countries ({@link #ofCountry}); rates change, so
 * a table of your own from the counter is better.
 *
 * <pre>{@code
 * PostageTable table = PostageTable.of("the post", Money.currency("EUR"))
 *         .rate(LocalDate.of(2027, 1, 1), "letter", grams(20), Money.of("1.10 EUR"), "leaflet of the counter")
 *         .rate(LocalDate.of(2027, 1, 1), "letter", grams(50), Money.of("1.40 EUR"), "leaflet of the counter")
 *         .surcharge(LocalDate.of(2027, 1, 1), "letter", "square", Money.of("0.70 EUR"), "leaflet of the counter")
 *         .build();
 * table.price("letter", grams(34), LocalDate.of(2027, 3, 5)); // 1.40 EUR
 * }</pre>
 *
 * <p>A service whose rates change has them all anew from a day on: of its rows those count whose day is the last one not after the
 * day asked for. A step holds up to its mass and with it. Which service takes a piece of its size and thickness is told by
 * {@link org.papermath.mail.MailLimits}; a service here has the name it has there, where letters are to be posted
 * {@linkplain Postage#asMailed as mailed}.
 */
public final class PostageTable {
    /** Rates are taken for old after a year. */
    private static final int OLD_YEARS = 1;

    private final String carrier;
    private final Currency currency;
    private final List<Rate> rates;
    private final List<Surcharge> surcharges;

    /**
     * A step of a service.
     *
     * @param from the day it holds from
     * @param service the service
     * @param upTo the most it holds for, with it
     * @param price zero or more
     * @param source where it was read
     */
    public record Rate(LocalDate from, String service, Amount<Mass> upTo, Money price, String source) {
        /**
         * Makes a step.
         *
         * @param from the day it holds from, within {@link Limits#FIRST_DAY} to {@link Limits#LAST_DAY}
         * @param service the service, not empty
         * @param upTo above zero
         * @param price zero or more
         * @param source where it was read, not empty
         * @throws Refused if a value is out of range, or the service or the source is empty
         */
        public Rate {
            service = named(Objects.requireNonNull(service, "service"), "service of the post");
            from = Limits.day(Objects.requireNonNull(from, "from"), "day of the " + service);
            upTo = Kinds.MASS.checkAboveZero(upTo, "mass of the " + service);
            OwnLine.requireNotBelowZero(Objects.requireNonNull(price, "price"), service);
            source = sourced(source, service);
        }

        @Override
        public String toString() {
            return service + " up to " + upTo + ": " + price + " from " + from + ", " + source;
        }
    }

    /**
     * What is asked besides.
     *
     * @param from the day it holds from
     * @param service the service
     * @param name what it is for
     * @param price zero or more
     * @param source where it was read
     */
    public record Surcharge(LocalDate from, String service, String name, Money price, String source) {
        /**
         * Makes a surcharge.
         *
         * @param from the day it holds from, within {@link Limits#FIRST_DAY} to {@link Limits#LAST_DAY}
         * @param service the service, not empty
         * @param name what it is for, not empty
         * @param price zero or more
         * @param source where it was read, not empty
         * @throws Refused if a value is out of range, or a text is empty
         */
        public Surcharge {
            service = named(Objects.requireNonNull(service, "service"), "service of the post");
            name = named(Objects.requireNonNull(name, "name"), "surcharge of the post");
            from = Limits.day(Objects.requireNonNull(from, "from"), "day of the surcharge " + name);
            OwnLine.requireNotBelowZero(Objects.requireNonNull(price, "price"), name);
            source = sourced(source, name);
        }

        @Override
        public String toString() {
            return service + ", " + name + ": " + price + " from " + from + ", " + source;
        }
    }

    private PostageTable(Builder builder) {
        carrier = builder.carrier;
        currency = builder.currency;
        rates = List.copyOf(builder.rates);
        surcharges = List.copyOf(builder.surcharges);
    }

    private static String named(String given, String what) {
        return Named.require(given, what, "Say what it is.");
    }

    private static String sourced(String given, String of) {
        String source = Name.check(Objects.requireNonNull(given, "source"), "source of the " + of);
        if (source.isEmpty()) {
            throw Refused.of(
                    "postage.no-source",
                    "postage, " + of
                            + ": it is not said where it was read. Say it, such as \"leaflet of the counter, January"
                            + " 2027\", so that it can be looked up again.",
                    "of",
                    of);
        }
        return source;
    }

    /**
     * Begins a table.
     *
     * @param carrier who carries, not empty
     * @param currency the currency of all its prices
     * @return a builder
     * @throws Refused if the name is empty, or the currency has no smallest unit
     */
    public static Builder of(String carrier, Currency currency) {
        Objects.requireNonNull(carrier, "carrier");
        Objects.requireNonNull(currency, "currency");
        return new Builder(named(carrier, "carrier"), Money.zero(currency).currency());
    }

    /**
     * Returns the countries the library ships rates of.
     *
     * @return an unmodifiable list of names, as among the {@linkplain org.papermath.mail.MailLimits limits of the mail}
     */
    public static List<String> countries() {
        return List.copyOf(ShippedPostage.TABLES.keySet());
    }

    /**
     * Returns the rates the library ships for a country. Not every service of its post is there; {@link #age} tells where they may no
     * longer hold.
     *
     * @param country one of {@link #countries()}, whatever the case of the letters
     * @return the rates
     * @throws Refused if the library ships none for it
     */
    public static PostageTable ofCountry(String country) {
        Objects.requireNonNull(country, "country");
        return ShippedPostage.TABLES.entrySet().stream()
                .filter(entry -> entry.getKey().equalsIgnoreCase(country.strip()))
                .map(Map.Entry::getValue)
                .findFirst()
                .orElseThrow(() -> Refused.of(
                        "postage.country",
                        "postage: no rates for \"" + country + "\". There are rates for "
                                + String.join(", ", countries())
                                + ". Use one of these, or make a table of what the counter asks.",
                        "given",
                        country,
                        "accepted",
                        countries()));
    }

    /** Builds a table of postage. */
    public static final class Builder {
        private final String carrier;
        private final Currency currency;
        private final List<Rate> rates = new ArrayList<>();
        private final List<Surcharge> surcharges = new ArrayList<>();

        private Builder(String carrier, Currency currency) {
            this.carrier = carrier;
            this.currency = currency;
        }

        /**
         * Adds a step of a service.
         *
         * @param from the day it holds from
         * @param service the service
         * @param upTo the most it holds for, with it, above zero
         * @param price zero or more
         * @param source where it was read
         * @return this builder
         * @throws Refused if a value is out of range or of another currency, a text empty, or the step there already
         */
        public Builder rate(LocalDate from, String service, Quantity<Mass> upTo, Money price, String source) {
            return rate(new Rate(from, service, Kinds.MASS.check(upTo, "mass of a letter"), price, source));
        }

        /**
         * Adds a step of a service.
         *
         * @param given the step
         * @return this builder
         * @throws Refused if it is of another currency, or there already
         */
        public Builder rate(Rate given) {
            Objects.requireNonNull(given, "given");
            same(given.price(), given.service());
            for (Rate one : rates) {
                if (one.from().equals(given.from())
                        && one.service().equals(given.service())
                        && one.upTo().si() == given.upTo().si()) {
                    throw twice(given.service() + " up to " + given.upTo() + " from " + given.from());
                }
            }
            rates.add(given);
            return this;
        }

        /**
         * Adds a surcharge.
         *
         * @param from the day it holds from
         * @param service the service
         * @param name what it is for
         * @param price zero or more
         * @param source where it was read
         * @return this builder
         * @throws Refused if a value is out of range or of another currency, a text empty, or it is there already
         */
        public Builder surcharge(LocalDate from, String service, String name, Money price, String source) {
            return surcharge(new Surcharge(from, service, name, price, source));
        }

        /**
         * Adds a surcharge.
         *
         * @param given the surcharge
         * @return this builder
         * @throws Refused if it is of another currency, or there already
         */
        public Builder surcharge(Surcharge given) {
            Objects.requireNonNull(given, "given");
            same(given.price(), given.name());
            for (Surcharge one : surcharges) {
                if (one.from().equals(given.from())
                        && one.service().equals(given.service())
                        && one.name().equals(given.name())) {
                    throw twice(given.service() + ", " + given.name() + " from " + given.from());
                }
            }
            surcharges.add(given);
            return this;
        }

        private static Refused twice(String what) {
            return Refused.of(
                    "postage.twice",
                    "postage: " + what + " is given twice. Give each step once, or another day it holds from.",
                    "given",
                    what);
        }

        private void same(Money money, String what) {
            if (!money.currency().equals(currency)) {
                throw Refused.of(
                        "price.other-currency",
                        what + ": " + money + " is of another currency than the table, " + currency.getCurrencyCode()
                                + ". Change it first, at a rate of your own.",
                        "of",
                        what,
                        "given",
                        money.toString(),
                        "currency",
                        currency.getCurrencyCode());
            }
        }

        /**
         * Makes the table.
         *
         * @return the table
         * @throws Refused if it has no step
         */
        public PostageTable build() {
            if (rates.isEmpty()) {
                throw Refused.of(
                        "postage.empty",
                        "postage of " + carrier + ": there is no rate in it. Add a step of a service at least.",
                        "of",
                        carrier);
            }
            return new PostageTable(this);
        }

        @Override
        public String toString() {
            return "postage of " + carrier + " in " + currency.getCurrencyCode() + ", being put together: "
                    + rates.size() + (rates.size() == 1 ? " step" : " steps");
        }
    }

    /**
     * Returns what a letter or parcel costs.
     *
     * @param service the service
     * @param mass what it weighs, above zero
     * @param day the day it is posted
     * @return the price
     * @throws Refused if there is no such service, none of its rows holds yet, or it weighs more than the last step
     */
    public Money price(String service, Quantity<Mass> mass, LocalDate day) {
        return price(service, mass, day, List.of());
    }

    /**
     * Returns what a letter or parcel costs, with surcharges.
     *
     * @param service the service
     * @param mass what it weighs, above zero
     * @param day the day it is posted
     * @param names the surcharges that come with it
     * @return the price, all together
     * @throws Refused if there is no such service or surcharge, none of its rows holds yet, or it weighs more than the last step
     */
    public Money price(String service, Quantity<Mass> mass, LocalDate day, List<String> names) {
        Amount<Mass> weighs = Kinds.MASS.checkAboveZero(mass, "mass of the " + service);
        Objects.requireNonNull(names, "names");
        List<Rate> steps = steps(service, day);
        Money price = steps.stream()
                .filter(step -> weighs.si() <= step.upTo().si() * (1 + 1e-12))
                .findFirst()
                .map(Rate::price)
                .orElseThrow(() -> tooHeavy(service, weighs, steps));
        for (String name : names) {
            price = price.plus(surcharge(service, name, day));
        }
        return price;
    }

    private Refused tooHeavy(String service, Amount<Mass> weighs, List<Rate> steps) {
        Amount<Mass> most = steps.get(steps.size() - 1).upTo();
        return Refused.of(
                "postage.too-heavy",
                "postage, " + service + ": " + weighs + " given; the last step of " + carrier + " ends at " + most
                        + ". Put fewer pieces together, take another of its services (" + String.join(", ", services())
                        + "), or add the step.",
                "of",
                service,
                "given",
                weighs,
                "most",
                most);
    }

    /** The steps of a service that hold on a day, rising. */
    private List<Rate> steps(String service, LocalDate day) {
        Objects.requireNonNull(service, "service");
        Objects.requireNonNull(day, "day");
        List<Rate> all =
                rates.stream().filter(one -> one.service().equals(service)).toList();
        if (all.isEmpty()) {
            throw Refused.of(
                    "postage.service",
                    "postage: " + carrier + " has no service \"" + service + "\" in the table; it has "
                            + String.join(", ", services()) + ". Take one of these, or add its steps.",
                    "given",
                    service,
                    "accepted",
                    services());
        }
        LocalDate last = all.stream()
                .map(Rate::from)
                .filter(from -> !from.isAfter(day))
                .max(Comparator.naturalOrder())
                .orElseThrow(() -> notYet(
                        service,
                        day,
                        all.stream()
                                .map(Rate::from)
                                .min(Comparator.naturalOrder())
                                .orElse(day)));
        return all.stream()
                .filter(one -> one.from().equals(last))
                .sorted(Comparator.comparingDouble(one -> one.upTo().si()))
                .toList();
    }

    private static Refused notYet(String of, LocalDate day, LocalDate first) {
        return Refused.of(
                "postage.not-yet",
                "postage, " + of + ": posted on " + day + ", and its first rates hold from " + first
                        + ". Add those that held on that day.",
                "of",
                of,
                "day",
                day.toString(),
                "from",
                first.toString());
    }

    private Money surcharge(String service, String name, LocalDate day) {
        List<Surcharge> all = surcharges.stream()
                .filter(one -> one.service().equals(service) && one.name().equals(name))
                .toList();
        if (all.isEmpty()) {
            List<String> known = surcharges.stream()
                    .filter(one -> one.service().equals(service))
                    .map(Surcharge::name)
                    .distinct()
                    .toList();
            throw Refused.of(
                    "postage.surcharge",
                    "postage, " + service + ": there is no surcharge \"" + name + "\" in the table"
                            + (known.isEmpty() ? "" : "; there is " + String.join(", ", known))
                            + ". Take one that is there, or add it.",
                    "of",
                    service,
                    "given",
                    name,
                    "accepted",
                    known);
        }
        return all.stream()
                .filter(one -> !one.from().isAfter(day))
                .max(Comparator.comparing(Surcharge::from))
                .map(Surcharge::price)
                .orElseThrow(() -> notYet(name, day, all.get(0).from()));
    }

    /**
     * Returns what should be known when a service is used on a day: that its rates are more than a year old, and may have changed.
     *
     * @param service the service
     * @param day the day it is posted
     * @return a warning, or nothing
     * @throws Refused if there is no such service, or none of its rows holds yet
     */
    public Optional<Notice> age(String service, LocalDate day) {
        LocalDate from = steps(service, day).get(0).from();
        if (!from.plusYears(OLD_YEARS).isBefore(day)) {
            return Optional.empty();
        }
        return Optional.of(Notice.warning(
                "postage.old",
                "The postage of " + service + " is of " + from + ", more than a year before " + day + ". Ask " + carrier
                        + " whether it still holds.",
                "service",
                service,
                "from",
                from.toString(),
                "day",
                day.toString()));
    }

    /**
     * Returns who carries.
     *
     * @return the name
     */
    public String carrier() {
        return carrier;
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
     * Returns the services.
     *
     * @return an unmodifiable list of names, sorted
     */
    public List<String> services() {
        return List.copyOf(new TreeSet<>(rates.stream().map(Rate::service).toList()));
    }

    /**
     * Returns the steps.
     *
     * @return an unmodifiable list, as given
     */
    public List<Rate> rates() {
        return rates;
    }

    /**
     * Returns the surcharges.
     *
     * @return an unmodifiable list, as given
     */
    public List<Surcharge> surcharges() {
        return surcharges;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof PostageTable that
                && carrier.equals(that.carrier)
                && currency.equals(that.currency)
                && rates.equals(that.rates)
                && surcharges.equals(that.surcharges);
    }

    @Override
    public int hashCode() {
        return Objects.hash(carrier, currency, rates, surcharges);
    }

    @Override
    public String toString() {
        return "postage of " + carrier + ", in " + currency.getCurrencyCode() + ": " + String.join(", ", services());
    }
}
