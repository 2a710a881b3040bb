package org.papermath.order;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.function.UnaryOperator;
import javax.measure.Quantity;
import javax.measure.quantity.Time;
import org.jspecify.annotations.Nullable;
import org.papermath.colour.ColourMatch;
import org.papermath.colour.WantedColour;
import org.papermath.fibre.Alkali;
import org.papermath.fibre.Fibre;
import org.papermath.fibre.Furnish;
import org.papermath.pulp.Additive;
import org.papermath.pulp.AdditiveDose;
import org.papermath.pulp.TimedSheet;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Consistency;
import org.papermath.quantity.Dose;
import org.papermath.quantity.FibreConcentration;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Limits;
import org.papermath.quantity.Refused;
import org.papermath.quantity.SchopperRiegler;

/**
 * What goes into a paper and what is done to it before the vat: furnish, cooking, beating, additives, size. Immutable.
 *
 * <pre>{@code
 * Recipe oat = Recipe.of("oat", Furnish.of(Share.percent(80), Fibres.LINTER_SECOND_CUT, Share.percent(20), Fibres.ABACA))
 *         .beating(hours(1.5))
 *         .additive(Additive.of("calcium carbonate", Additive.Purpose.CARBONATE), Dose.percent(3))
 *         .build();
 * oat.beating(); // 1.5 h
 * }</pre>
 *
 * <p>A recipe holds no weights: those follow from the order.
 */
public final class Recipe {
    private final String name;
    private final Furnish furnish;
    private final Amount<Time> beating;
    private final Map<Fibre, Amount<Time>> beatingApart;
    private final @Nullable Amount<SchopperRiegler> drainability;
    private final @Nullable TimedSheet timedSheet;
    private final @Nullable Alkali alkali;
    private final @Nullable Amount<Dose> alkaliDose;
    private final List<AdditiveDose> additives;
    private final @Nullable Amount<Consistency> beaterConsistency;
    private final @Nullable Amount<Consistency> stockConsistency;
    private final @Nullable Amount<Consistency> vatConsistency;
    private final @Nullable Amount<FibreConcentration> sizeBath;
    private final @Nullable String stuff;
    private final @Nullable WantedColour colour;

    private Recipe(Builder builder) {
        this.name = builder.name;
        this.furnish = builder.furnish;
        this.beating = builder.beating;
        this.beatingApart = Collections.unmodifiableMap(new LinkedHashMap<>(builder.beatingApart));
        this.drainability = builder.drainability;
        this.timedSheet = builder.timedSheet;
        this.alkali = builder.alkali;
        this.alkaliDose = builder.alkaliDose;
        this.additives = List.copyOf(builder.additives);
        this.beaterConsistency = builder.beaterConsistency;
        this.stockConsistency = builder.stockConsistency;
        this.vatConsistency = builder.vatConsistency;
        this.sizeBath = builder.sizeBath;
        this.stuff = builder.stuff;
        this.colour = builder.colour;
    }

    /**
     * Begins a recipe.
     *
     * @param name its name, not empty; a batch of the plan and measured values go by it
     * @param furnish the fibres, by oven-dry share
     * @return a builder
     * @throws Refused if the name is empty
     */
    public static Builder of(String name, Furnish furnish) {
        Objects.requireNonNull(furnish, "furnish");
        return new Builder(CheckedName.require("recipe", name), furnish);
    }

    /** Gathers a recipe; refuses what is set twice. */
    public static final class Builder {
        private final String name;
        private final SetOnce given;
        private Furnish furnish;
        private final List<AdditiveDose> additives = new ArrayList<>();
        private Amount<Time> beating = Kinds.TIME.of(0, "h");
        private final Map<Fibre, Amount<Time>> beatingApart = new LinkedHashMap<>();
        private @Nullable Amount<SchopperRiegler> drainability;
        private @Nullable TimedSheet timedSheet;
        private @Nullable Alkali alkali;
        private @Nullable Amount<Dose> alkaliDose;
        private @Nullable Amount<Consistency> beaterConsistency;
        private @Nullable Amount<Consistency> stockConsistency;
        private @Nullable Amount<Consistency> vatConsistency;
        private @Nullable Amount<FibreConcentration> sizeBath;
        private @Nullable String stuff;
        private @Nullable WantedColour colour;

        private Builder(String name, Furnish furnish) {
            this.name = name;
            this.furnish = furnish;
            this.given = new SetOnce("recipe " + name);
        }

        /**
         * Sets how long the fibre is beaten, on the beater of the studio.
         *
         * @param time the time at the beater, 0 to 48 h
         * @return this builder
         * @throws Refused if the time is out of range or was set before
         */
        public Builder beating(Quantity<Time> time) {
            given.once("beating time");
            beating = Limits.BEATING.check(time, "beating time");
            return this;
        }

        /**
         * Sets the beating time of one fibre of the furnish that is beaten apart from the rest, in loads of its own, and
         * mixed with it afterwards. Additives then go once to the mixed stock.
         *
         * @param fibre a fibre of the furnish
         * @param time the time each of its loads is beaten, within {@link Limits#BEATING}
         * @return this builder
         * @throws Refused if the time is out of range or the fibre was set before
         */
        public Builder beating(Fibre fibre, Quantity<Time> time) {
            Objects.requireNonNull(fibre, "fibre");
            given.once("beating time of " + fibre.id());
            beatingApart.put(fibre, Limits.BEATING.check(time, "beating time of " + fibre.id()));
            return this;
        }

        /**
         * Sets a sheet of the beaten stuff that was timed at the vat, in place of a drainability.
         *
         * @param sheet the timed sheet
         * @return this builder
         * @throws Refused if it was set before
         */
        public Builder timedSheet(TimedSheet sheet) {
            Objects.requireNonNull(sheet, "sheet");
            given.once("timed sheet");
            drainability = given.isSet("drainability") ? drainability : null;
            timedSheet = sheet;
            return this;
        }

        /**
         * Says what the tester read after that beating, where it was measured; it takes the place of the kinetics.
         *
         * @param number the Schopper-Riegler number, 5 to 98
         * @return this builder
         * @throws Refused if the number is out of range or was set before
         */
        public Builder drainability(Quantity<SchopperRiegler> number) {
            given.once("drainability");
            timedSheet = given.isSet("timed sheet") ? timedSheet : null;
            drainability = Limits.DRAINABILITY.check(number, "drainability");
            return this;
        }

        /**
         * Sets what the fibre that is bought raw, green or as rag is cooked in. Where not set, it is soda ash at its
         * usual dose.
         *
         * @param in the alkali
         * @param dose pure alkali over the oven-dry fibre before it is cooked, 0 to 50 %
         * @return this builder
         * @throws Refused if the dose is out of range or was set before
         */
        public Builder cooking(Alkali in, Quantity<Dose> dose) {
            Objects.requireNonNull(in, "in");
            given.once("cooking");
            alkali = in;
            alkaliDose = Limits.DOSE.check(dose, "dose of " + in);
            return this;
        }

        /**
         * Adds an additive, in the order of addition.
         *
         * @param additive the additive
         * @param dose active matter over oven-dry fibre, 0 to 50 %
         * @return this builder
         * @throws Refused if the dose is out of range or the additive was added before
         */
        public Builder additive(Additive additive, Quantity<Dose> dose) {
            Objects.requireNonNull(additive, "additive");
            given.once(
                    additive.name(),
                    additives,
                    AdditiveDose.of(additive, dose),
                    one -> one.additive().name());
            return this;
        }

        /**
         * Sets the consistency in the beater.
         *
         * @param consistency oven-dry fibre over stock, by mass, 0.2 to 6 %
         * @return this builder
         * @throws Refused if it is out of range or was set before
         */
        public Builder beaterConsistency(Quantity<Consistency> consistency) {
            given.once("beater consistency");
            beaterConsistency = Limits.BEATER_CONSISTENCY.check(consistency, "beater consistency");
            return this;
        }

        /**
         * Sets the consistency at which the beaten stock is kept in pails.
         *
         * @param consistency oven-dry fibre over stock, by mass, 0.2 to 20 %
         * @return this builder
         * @throws Refused if it is out of range or was set before
         */
        public Builder stockConsistency(Quantity<Consistency> consistency) {
            given.once("stock consistency");
            stockConsistency = Limits.STOCK_CONSISTENCY.check(consistency, "stock consistency");
            return this;
        }

        /**
         * Sets the consistency in the vat.
         *
         * @param consistency oven-dry fibre over stock, by mass, 0.05 to 3 %
         * @return this builder
         * @throws Refused if it is out of range or was set before
         */
        public Builder vatConsistency(Quantity<Consistency> consistency) {
            given.once("vat consistency");
            vatConsistency = Limits.VAT_CONSISTENCY.check(consistency, "vat consistency");
            return this;
        }

        /**
         * Has the dry sheets sized in a bath.
         *
         * @param strength dry size in a litre of bath, 1 to 200 g/L
         * @return this builder
         * @throws Refused if it is out of range or was set before
         */
        public Builder sizeBath(Quantity<FibreConcentration> strength) {
            given.once("surface size");
            sizeBath = Limits.SIZE_BATH.check(strength, "strength of the size bath");
            return this;
        }

        /**
         * Has the fibre beaten together with that of every other recipe of the order that names the same stuff, for
         * example one white stuff for several colours. What is beaten is then divided by weight, and additives go into
         * each part by itself. All of them have to agree in fibre, cooking, beating and consistency before the vat.
         *
         * @param name what the common stuff is called, not empty
         * @return this builder
         * @throws Refused if the name is empty or was set before
         */
        public Builder stuff(String name) {
            given.once("stuff");
            stuff = CheckedName.require("stuff", name);
            return this;
        }

        /**
         * Says which colour the paper is to have. The doses of its pigments are additives as any other; trial swatches are
         * judged by it.
         *
         * @param wanted the colour
         * @return this builder
         * @throws Refused if it was set before
         */
        public Builder colour(WantedColour wanted) {
            Objects.requireNonNull(wanted, "wanted");
            given.once("colour");
            colour = wanted;
            return this;
        }

        /**
         * Takes over a match: the colour wanted, and the doses of the best proposal as additives, in their order.
         *
         * @param match what was found
         * @return this builder
         * @throws Refused if a colour was set or one of its pigments added before
         */
        public Builder colour(ColourMatch match) {
            Objects.requireNonNull(match, "match");
            colour(WantedColour.of(match));
            match.best().doses().forEach(dose -> additive(dose.additive(), dose.dose()));
            return this;
        }

        /**
         * Ends the recipe.
         *
         * @return the recipe
         * @throws Refused if the additives come to more than the fibre they are added to
         */
        public Recipe build() {
            double sum = 0;
            for (AdditiveDose dose : additives) {
                sum += dose.dose().si();
            }
            if (sum > 1) {
                throw Refused.of(
                        "recipe.doses",
                        "recipe " + name + ": the doses come to " + Math.round(100 * sum)
                                + " % on oven-dry fibre; together they may be at most 100 %. Check the doses.",
                        "recipe",
                        name,
                        "sum",
                        sum,
                        "most",
                        1,
                        "member",
                        "additives");
            }
            for (Fibre fibre : beatingApart.keySet()) {
                if (!furnish.fibres().contains(fibre)) {
                    throw Refused.of(
                            "recipe.beaten-apart",
                            "recipe " + name + ": " + fibre + " is to be beaten apart, but the furnish has only "
                                    + furnish.fibres().stream().map(Fibre::id).toList() + ". Add it to the furnish, or"
                                    + " leave its beating time out.",
                            "recipe",
                            name,
                            "fibre",
                            fibre.id(),
                            "member",
                            "beatenApart");
                }
            }
            if (timedSheet != null && drainability != null) {
                throw Refused.of(
                        "recipe.state-twice",
                        "recipe " + name + ": a drainability of " + drainability + " and a timed sheet (" + timedSheet
                                + ") are both set. Keep the one you trust more.",
                        "recipe",
                        name,
                        "member",
                        "timedSheet");
            }
            return new Recipe(this);
        }

        @Override
        public String toString() {
            return "recipe " + name + ", being put together: " + furnish + ", beaten " + beating
                    + (additives.isEmpty() ? "" : ", with " + additives);
        }
    }

    /**
     * Returns the name.
     *
     * @return the name
     */
    public String name() {
        return name;
    }

    /**
     * Returns the fibres.
     *
     * @return the furnish
     */
    public Furnish furnish() {
        return furnish;
    }

    /**
     * Returns how long the fibre is beaten.
     *
     * @return the time at the beater
     */
    public Amount<Time> beating() {
        return beating;
    }

    /**
     * Returns the fibres that are beaten apart, with their beating times.
     *
     * @return an unmodifiable map in the order they were set in; empty where all are beaten together
     */
    public Map<Fibre, Amount<Time>> beatingApart() {
        return beatingApart;
    }

    /**
     * Returns how long a fibre of the furnish is beaten.
     *
     * @param fibre the fibre
     * @return its own time where it is beaten apart, else that of the rest
     */
    public Amount<Time> beating(Fibre fibre) {
        Objects.requireNonNull(fibre, "fibre");
        return beatingApart.getOrDefault(fibre, beating);
    }

    /**
     * Returns whether any fibre is beaten.
     *
     * @return whether a beating time is above zero
     */
    public boolean isBeaten() {
        return furnish.fibres().stream().anyMatch(fibre -> beating(fibre).si() > 0);
    }

    /**
     * Returns the sheet that was timed at the vat.
     *
     * @return the sheet, or empty if the state follows from the time or a drainability
     */
    public Optional<TimedSheet> timedSheet() {
        return Optional.ofNullable(timedSheet);
    }

    /**
     * Returns what the tester read after that beating, where it was measured.
     *
     * @return the Schopper-Riegler number
     */
    public Optional<Amount<SchopperRiegler>> drainability() {
        return Optional.ofNullable(drainability);
    }

    /**
     * Returns what raw fibre is cooked in, where the recipe says it.
     *
     * @return the alkali
     */
    public Optional<Alkali> alkali() {
        return Optional.ofNullable(alkali);
    }

    /**
     * Returns the dose of the alkali, where the recipe says it.
     *
     * @return pure alkali over the oven-dry fibre before it is cooked
     */
    public Optional<Amount<Dose>> alkaliDose() {
        return Optional.ofNullable(alkaliDose);
    }

    /**
     * Returns the additives in the order of addition.
     *
     * @return an unmodifiable list
     */
    public List<AdditiveDose> additives() {
        return additives;
    }

    /**
     * Returns the consistency in the beater, where the recipe says it.
     *
     * @return oven-dry fibre over stock, by mass
     */
    public Optional<Amount<Consistency>> beaterConsistency() {
        return Optional.ofNullable(beaterConsistency);
    }

    /**
     * Returns the consistency of the beaten stock in its pails, where the recipe says it.
     *
     * @return oven-dry fibre over stock, by mass
     */
    public Optional<Amount<Consistency>> stockConsistency() {
        return Optional.ofNullable(stockConsistency);
    }

    /**
     * Returns the consistency in the vat, where the recipe says it.
     *
     * @return oven-dry fibre over stock, by mass
     */
    public Optional<Amount<Consistency>> vatConsistency() {
        return Optional.ofNullable(vatConsistency);
    }

    /**
     * Returns the strength of the size bath, where the sheets are sized.
     *
     * @return dry size in a volume of bath
     */
    public Optional<Amount<FibreConcentration>> sizeBath() {
        return Optional.ofNullable(sizeBath);
    }

    /**
     * Returns the stuff the recipe has in common with others of the order, where it has.
     *
     * @return what that stuff is called
     */
    public Optional<String> stuff() {
        return Optional.ofNullable(stuff);
    }

    /**
     * Returns the colour the paper is to have.
     *
     * @return the colour, where the recipe says it
     */
    public Optional<WantedColour> colour() {
        return Optional.ofNullable(colour);
    }

    /**
     * Returns a builder that begins with all this recipe says; what it is given then replaces that.
     *
     * @return a builder
     */
    public Builder toBuilder() {
        Builder b = new Builder(name, furnish);
        b.additives.addAll(additives);
        b.beating = beating;
        b.beatingApart.putAll(beatingApart);
        b.drainability = drainability;
        b.timedSheet = timedSheet;
        b.alkali = alkali;
        b.alkaliDose = alkaliDose;
        b.beaterConsistency = beaterConsistency;
        b.stockConsistency = stockConsistency;
        b.vatConsistency = vatConsistency;
        b.sizeBath = sizeBath;
        b.stuff = stuff;
        b.colour = colour;
        return b;
    }

    /**
     * Returns the same recipe from other fibres.
     *
     * @param other the furnish
     * @return the recipe
     */
    public Recipe withFurnish(Furnish other) {
        Builder b = toBuilder();
        b.furnish = other;
        return b.build();
    }

    /**
     * Returns the same recipe beaten for another time.
     *
     * @param time the beating time of a load
     * @return the recipe
     * @throws Refused if it is out of range
     */
    public Recipe withBeating(Quantity<Time> time) {
        return toBuilder().beating(time).build();
    }

    /**
     * Returns the same recipe, otherwise in something.
     *
     * @param change what is said anew, for example {@code one -> one.beating(hours(4))}
     * @return the recipe
     * @throws Refused as the builder
     */
    public Recipe with(UnaryOperator<Builder> change) {
        return Objects.requireNonNull(change, "change").apply(toBuilder()).build();
    }

    /**
     * Names what keeps another recipe from being beaten together with this.
     *
     * @param that the other
     * @return the first of furnish, beating time, drainability, cooking and consistency they differ in; empty text where they agree
     */
    public String differsAsStuff(Recipe that) {
        Objects.requireNonNull(that, "that");
        if (!furnish.equals(that.furnish)) {
            return "furnish";
        }
        if (!beating.equals(that.beating) || !beatingApart.equals(that.beatingApart)) {
            return "beating time";
        }
        if (!Objects.equals(drainability, that.drainability) || !Objects.equals(timedSheet, that.timedSheet)) {
            return "drainability";
        }
        if (alkali != that.alkali || !Objects.equals(alkaliDose, that.alkaliDose)) {
            return "cooking";
        }
        return Objects.equals(beaterConsistency, that.beaterConsistency)
                        && Objects.equals(stockConsistency, that.stockConsistency)
                ? ""
                : "consistency";
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Recipe that
                && name.equals(that.name)
                && furnish.equals(that.furnish)
                && beating.equals(that.beating)
                && beatingApart.equals(that.beatingApart)
                && Objects.equals(drainability, that.drainability)
                && Objects.equals(timedSheet, that.timedSheet)
                && alkali == that.alkali
                && Objects.equals(alkaliDose, that.alkaliDose)
                && additives.equals(that.additives)
                && Objects.equals(beaterConsistency, that.beaterConsistency)
                && Objects.equals(stockConsistency, that.stockConsistency)
                && Objects.equals(vatConsistency, that.vatConsistency)
                && Objects.equals(sizeBath, that.sizeBath)
                && Objects.equals(stuff, that.stuff)
                && Objects.equals(colour, that.colour);
    }

    @Override
    public int hashCode() {
        return Objects.hash(name, furnish, beating, additives);
    }

    @Override
    public String toString() {
        StringBuilder text = new StringBuilder(name + ": " + furnish + ", beaten " + beating);
        beatingApart.forEach((fibre, time) ->
                text.append(", ").append(fibre.id()).append(" apart ").append(time));
        return text.toString();
    }
}
