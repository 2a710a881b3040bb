package org.papermath.plan;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeMap;
import javax.measure.Quantity;
import javax.measure.quantity.Mass;
import org.papermath.equation.Moisture;
import org.papermath.fibre.Fibre;
import org.papermath.fibre.FibreProperty;
import org.papermath.numeric.Rounding;
import org.papermath.order.Studio;
import org.papermath.order.StuffOnHand;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Name;
import org.papermath.quantity.Refused;

/**
 * What lies on the shelves of a studio over the makings of a season: fibre oven-dry, additives as they are sold, stuff that
 * stands beaten by recipe, broke by recipe. What is bought and made is entered with its day, in any order; what would go below
 * nothing is told with its day, and how much to buy before. Immutable.
 *
 * <pre>{@code
 * MakingPlan plan = MakingPlan.of(order, studio);
 * StockAccount account = StockAccount.opening(studio, LocalDate.of(2026, 12, 1)).made(plan, LocalDate.of(2027, 1, 2));
 * account.shortages().get(0); // calcium carbonate: 48 g short by 2027-01-02
 * }</pre>
 */
public final class StockAccount {
    /** What a shelf may be short of for having been rounded, kg. */
    private static final double ROUNDING = 1e-9;

    private final List<Entry> entries;

    /** What comes on a shelf or goes off it. */
    public sealed interface Entry permits Entered {
        /** {@return the day} */
        LocalDate day();

        /** {@return what it is: a fibre, an additive, the stuff or the broke of a recipe} */
        String what();

        /** {@return how much comes; zero where it goes} */
        Amount<Mass> in();

        /** {@return how much goes; zero where it comes} */
        Amount<Mass> out();

        /** {@return why, in words} */
        String why();
    }

    private record Entered(LocalDate day, String what, double kilograms, String why) implements Entry {
        @Override
        public Amount<Mass> in() {
            return PlainNumbers.grams(Math.max(0, kilograms));
        }

        @Override
        public Amount<Mass> out() {
            return PlainNumbers.grams(Math.max(0, -kilograms));
        }

        @Override
        public String toString() {
            return day + " " + what + ": " + (kilograms < 0 ? "out " + out() : "in " + in()) + ", " + why;
        }
    }

    /** Something that would run short. */
    public sealed interface Shortage permits FoundShortage {
        /** {@return what it is} */
        String what();

        /** {@return the first day on which it is short} */
        LocalDate by();

        /** {@return the most that is missing on any day} */
        Amount<Mass> missing();

        /**
         * Counts the packs to buy.
         *
         * @param pack what is in one, above zero
         * @return how many, whole
         * @throws Refused if the pack is not above zero
         */
        int packs(Quantity<Mass> pack);
    }

    private record FoundShortage(String what, LocalDate by, Amount<Mass> missing) implements Shortage {
        @Override
        public int packs(Quantity<Mass> pack) {
            return (int) Rounding.ceil(missing.si() / Kinds.MASS.siAboveZero(pack, "pack"));
        }

        @Override
        public String toString() {
            return what + ": " + missing + " short by " + by;
        }
    }

    private StockAccount(List<Entry> entries) {
        this.entries = List.copyOf(entries);
    }

    /**
     * Opens an account with what a studio has on hand.
     *
     * @param studio the studio
     * @param day the day
     * @return the account
     */
    public static StockAccount opening(Studio studio, LocalDate day) {
        Objects.requireNonNull(studio, "studio");
        Objects.requireNonNull(day, "day");
        List<Entry> entries = new ArrayList<>();
        studio.onHand().forEach((fibre, mass) -> entries.add(new Entered(day, fibre.name(), mass.si(), "on hand")));
        for (StuffOnHand stuff : studio.stuffOnHand()) {
            entries.add(new Entered(day, stuff(stuff.recipe()), stuff.ovenDry().si(), "on hand"));
        }
        return new StockAccount(entries);
    }

    /**
     * Enters fibre that is bought.
     *
     * @param fibre the fibre
     * @param ovenDry its oven-dry mass, above zero
     * @param day the day it is there
     * @return the account
     * @throws Refused if the mass is not above zero
     */
    public StockAccount bought(Fibre fibre, Quantity<Mass> ovenDry, LocalDate day) {
        Objects.requireNonNull(fibre, "fibre");
        return bought(fibre.name(), ovenDry, day);
    }

    /**
     * Enters an additive that is bought, as it is sold.
     *
     * @param additive its name, as the recipes have it
     * @param product the mass of it, above zero
     * @param day the day it is there
     * @return the account
     * @throws Refused if the name cannot be one or the mass is not above zero
     */
    public StockAccount bought(String additive, Quantity<Mass> product, LocalDate day) {
        Objects.requireNonNull(additive, "additive");
        Objects.requireNonNull(day, "day");
        String what = Name.check(additive, "additive");
        return with(List.of(new Entered(day, what, Kinds.MASS.siAboveZero(product, what), "bought")));
    }

    /**
     * Enters a making: what its plan takes from the shelves, and what it leaves.
     *
     * @param plan the plan
     * @param day the day of the making
     * @return the account
     */
    public StockAccount made(MakingPlan plan, LocalDate day) {
        Objects.requireNonNull(plan, "plan");
        Objects.requireNonNull(day, "day");
        String why = plan.order().name();
        List<Entry> more = new ArrayList<>();
        LeftOver left = plan.leaves(day);
        for (BatchPlan batch : plan.batches()) {
            for (FibreToWeigh.Line line : batch.fibre().kinds()) {
                double moisture = FibreProperty.MOISTURE_AS_BOUGHT
                        .of(line.fibre(), line.form(), plan.studio().assumptions())
                        .likelySi();
                out(
                        more,
                        day,
                        line.fibre().name(),
                        line.fromHand().si()
                                + Moisture.ovenDryOfWetBasis(line.asBought().si(), moisture),
                        why);
            }
            for (AdditiveToWeigh additive : batch.additives()) {
                out(
                        more,
                        day,
                        additive.additive().name(),
                        additive.productInAll().si(),
                        why);
            }
            out(more, day, stuff(batch.name()), batch.stuffOnHand().si(), why);
            double kept = left.stuff().stream()
                    .filter(one -> one.recipe().equals(batch.name()))
                    .mapToDouble(one -> one.ovenDry().si())
                    .sum();
            double before = plan.studio().stuffOnHand().stream()
                    .filter(one -> one.recipe().equals(batch.name()))
                    .mapToDouble(one -> one.ovenDry().si())
                    .sum();
            into(
                    more,
                    day,
                    stuff(batch.name()),
                    kept - (before - batch.stuffOnHand().si()),
                    why);
            Amount<Mass> broke = left.broke().get(batch.name());
            into(more, day, "broke of " + batch.name(), broke == null ? 0 : broke.si(), why);
        }
        return with(more);
    }

    private static String stuff(String recipe) {
        return "stuff of " + recipe;
    }

    private static void out(List<Entry> more, LocalDate day, String what, double kilograms, String why) {
        if (kilograms > 0) {
            more.add(new Entered(day, what, -kilograms, why));
        }
    }

    private static void into(List<Entry> more, LocalDate day, String what, double kilograms, String why) {
        if (kilograms > 0) {
            more.add(new Entered(day, what, kilograms, why));
        }
    }

    /**
     * Enters broke of a recipe that is slushed up to stuff of the same.
     *
     * @param recipe the name of the recipe
     * @param ovenDry how much of it, above zero
     * @param day the day
     * @return the account
     * @throws Refused if the mass is not above zero
     */
    public StockAccount slushed(String recipe, Quantity<Mass> ovenDry, LocalDate day) {
        Objects.requireNonNull(recipe, "recipe");
        Objects.requireNonNull(day, "day");
        double mass = Kinds.MASS.siAboveZero(ovenDry, "broke");
        return with(List.of(
                new Entered(day, "broke of " + recipe, -mass, "slushed up"),
                new Entered(day, stuff(recipe), mass, "slushed up")));
    }

    /**
     * Enters what is thrown away or given out.
     *
     * @param what what it is, as {@link #entries} names it
     * @param mass how much, above zero
     * @param day the day
     * @param why in words
     * @return the account
     * @throws Refused if nothing of that name was ever entered, or the mass is not above zero
     */
    public StockAccount gone(String what, Quantity<Mass> mass, LocalDate day, String why) {
        Objects.requireNonNull(what, "what");
        Objects.requireNonNull(day, "day");
        Objects.requireNonNull(why, "why");
        if (entries.stream().noneMatch(one -> one.what().equals(what))) {
            throw Refused.of(
                    "stock.no-such",
                    "stock: nothing was ever entered of \"" + what + "\"; there are: "
                            + entries.stream().map(Entry::what).distinct().toList() + ".",
                    "given",
                    what);
        }
        return with(List.of(new Entered(day, what, -Kinds.MASS.siAboveZero(mass, what), why)));
    }

    private StockAccount with(Collection<Entry> more) {
        List<Entry> all = new ArrayList<>(entries);
        all.addAll(more);
        return new StockAccount(all);
    }

    /**
     * Returns all entries by their days; of one day what comes first.
     *
     * @return an unmodifiable list
     */
    public List<Entry> entries() {
        return entries.stream()
                .sorted(Comparator.comparing(Entry::day).thenComparing(one -> kilograms(one) < 0))
                .toList();
    }

    private static double kilograms(Entry one) {
        return ((Entered) one).kilograms();
    }

    /**
     * Returns what lies there at the end of a day; what would be below nothing is not there.
     *
     * @param day the day
     * @return by name, in alphabetical order
     */
    public Map<String, Amount<Mass>> on(LocalDate day) {
        Objects.requireNonNull(day, "day");
        Map<String, Double> sums = new TreeMap<>();
        entries().stream()
                .filter(one -> !one.day().isAfter(day))
                .forEach(one -> sums.merge(one.what(), kilograms(one), Double::sum));
        Map<String, Amount<Mass>> there = new LinkedHashMap<>();
        sums.forEach((what, kilograms) -> {
            if (kilograms > ROUNDING) {
                there.put(what, PlainNumbers.grams(kilograms));
            }
        });
        return there;
    }

    /**
     * Returns the studio with the fibre and the stuff that lies there at the end of a day, to plan with.
     *
     * @param studio the studio
     * @param day the day
     * @param recipes the plan whose recipes and fibres are meant
     * @return the studio
     */
    public Studio studio(Studio studio, LocalDate day, MakingPlan recipes) {
        Objects.requireNonNull(studio, "studio");
        Objects.requireNonNull(recipes, "recipes");
        Map<String, Amount<Mass>> there = on(day);
        Map<Fibre, Amount<Mass>> fibre = new LinkedHashMap<>();
        List<StuffOnHand> stuff = new ArrayList<>();
        for (BatchPlan batch : recipes.batches()) {
            for (Fibre kind : batch.recipe().furnish().fibres()) {
                Optional.ofNullable(there.get(kind.name())).ifPresent(mass -> fibre.put(kind, mass));
            }
            Optional.ofNullable(there.get(stuff(batch.name())))
                    .ifPresent(mass -> stuff.add(new StuffOnHand(
                            batch.name(), mass, batch.stock().consistency(), lastMade(batch.name(), day))));
        }
        return studio.toBuilder().holding(fibre, stuff).build();
    }

    /** The day the stuff that lies there was last made, so that what is older is told to be no younger than that. */
    private Optional<LocalDate> lastMade(String recipe, LocalDate day) {
        return entries().stream()
                .filter(one -> one.what().equals(stuff(recipe))
                        && kilograms(one) > 0
                        && !one.day().isAfter(day))
                .map(Entry::day)
                .reduce((first, second) -> second);
    }

    /**
     * Returns what would go below nothing, and by when it has to be there.
     *
     * @return an unmodifiable list, the soonest first
     */
    public List<Shortage> shortages() {
        Map<String, Double> sums = new LinkedHashMap<>();
        Map<String, LocalDate> first = new LinkedHashMap<>();
        Map<String, Double> most = new LinkedHashMap<>();
        for (Entry one : entries()) {
            double sum = sums.merge(one.what(), kilograms(one), Double::sum);
            if (sum < -ROUNDING) {
                first.putIfAbsent(one.what(), one.day());
                most.merge(one.what(), -sum, Math::max);
            }
        }
        List<Shortage> list = new ArrayList<>();
        first.forEach((what, day) ->
                list.add(new FoundShortage(what, day, PlainNumbers.grams(Objects.requireNonNull(most.get(what))))));
        list.sort(Comparator.comparing(Shortage::by).thenComparing(Shortage::what));
        return List.copyOf(list);
    }

    /** Returns what is short first, then what lies there in the end. */
    @Override
    public String toString() {
        List<Shortage> shortages = shortages();
        String there = entries.isEmpty()
                ? "nothing"
                : on(entries().get(entries.size() - 1).day()).toString();
        return (shortages.isEmpty() ? "" : "short: " + shortages + "; ") + "there in the end: " + there;
    }
}
