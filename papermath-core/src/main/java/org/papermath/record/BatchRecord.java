package org.papermath.record;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.papermath.colour.Lab;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Scope;
import org.papermath.fibre.Fibre;
import org.papermath.fibre.Furnish;
import org.papermath.order.Recipe;
import org.papermath.pulp.Additive;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Limits;
import org.papermath.quantity.Name;
import org.papermath.quantity.Refused;

/**
 * What was measured while a batch was made: the base of the next order and of every calibration. Immutable.
 *
 * <p>It holds what was measured and nothing else. What was planned stands apart, in {@link #planned()}.
 *
 * <pre>{@code
 * BatchRecord record = BatchRecord.builder("tide grey, first", LocalDate.of(2026, 3, 14))
 *         .recipe("tide grey", Furnish.of(Fibres.ABACA)).beater("big beater").dryer("the boards")
 *         .add(new Measurement.NumberRead(Reading.of(hours(3), minutes(5)),
 *                 Reading.of(SchopperRiegler.degrees(52), SchopperRiegler.degrees(2))))
 *         .build();
 * }</pre>
 */
public final class BatchRecord {
    private final Builder given;
    private final Map<String, Amount<?>> planned;
    private final List<Measurement> measurements;

    private BatchRecord(Builder given) {
        this.given = given;
        this.planned = Collections.unmodifiableMap(new LinkedHashMap<>(given.planned));
        this.measurements = List.copyOf(given.measurements);
    }

    /**
     * Begins a record.
     *
     * @param name its name, not empty
     * @param date the day of making, of the years 1800 to 2999
     * @return an empty builder
     * @throws Refused if the name cannot be one or the day is out of range
     */
    public static Builder builder(String name, LocalDate date) {
        Objects.requireNonNull(name, "name");
        Objects.requireNonNull(date, "date");
        String called = Name.check(name, "batch record");
        if (called.isEmpty()) {
            throw Refused.of("record.unnamed", "batch record: no name given. Give the batch a name.");
        }
        return new Builder(called, Limits.day(date, "date of the batch record"));
    }

    /** Puts a record together. Each method returns this builder. */
    public static final class Builder {
        private final String name;
        private final LocalDate date;
        private @Nullable Recipe recipe;
        private final Map<Fibre, String> fibreLots = new LinkedHashMap<>();
        private final Map<String, String> additiveLots = new LinkedHashMap<>();
        private @Nullable Assumptions assumptions;
        private @Nullable String beater;
        private @Nullable String vat;
        private @Nullable String press;
        private @Nullable String dryer;
        private @Nullable Lab colour;
        private String note = "";
        private final Map<String, Amount<?>> planned = new LinkedHashMap<>();
        private final List<Measurement> measurements = new ArrayList<>();

        private Builder(String name, LocalDate date) {
            this.name = name;
            this.date = date;
        }

        private Builder(Builder from) {
            this(from.name, from.date);
            recipe = from.recipe;
            fibreLots.putAll(from.fibreLots);
            additiveLots.putAll(from.additiveLots);
            assumptions = from.assumptions;
            beater = from.beater;
            vat = from.vat;
            press = from.press;
            dryer = from.dryer;
            colour = from.colour;
            note = from.note;
            planned.putAll(from.planned);
            measurements.addAll(from.measurements);
        }

        /**
         * Names the recipe and its fibres.
         *
         * @param called the name of the recipe
         * @param of its fibres
         * @return this builder
         * @throws Refused if the name cannot be the name of a scope
         */
        public Builder recipe(String called, Furnish of) {
            Objects.requireNonNull(called, "called");
            Objects.requireNonNull(of, "of");
            recipe = Recipe.of(named(called), of).build();
            return this;
        }

        /**
         * Sets the recipe as it was planned, with its doses and hours: what {@link BatchRecord#recipeAsMade()} begins with.
         *
         * @param asPlanned the recipe
         * @return this builder
         */
        public Builder recipe(Recipe asPlanned) {
            recipe = Objects.requireNonNull(asPlanned, "asPlanned");
            return this;
        }

        /**
         * Names the lot a fibre was taken from.
         *
         * @param fibre the fibre
         * @param lot the name of the lot, such as what is written on the bale
         * @return this builder
         * @throws Refused if the name is empty
         */
        public Builder lot(Fibre fibre, String lot) {
            Objects.requireNonNull(fibre, "fibre");
            fibreLots.put(fibre, lotNamed(lot, fibre.id()));
            return this;
        }

        /**
         * Names the lot an additive was taken from.
         *
         * @param additive the additive
         * @param lot the name of the lot, such as what is written on the jar
         * @return this builder
         * @throws Refused if the name is empty
         */
        public Builder lot(Additive additive, String lot) {
            return additiveLot(Objects.requireNonNull(additive, "additive").name(), lot);
        }

        /**
         * Names the lot an additive was taken from.
         *
         * @param additive the name of the additive
         * @param lot the name of the lot, such as what is written on the jar
         * @return this builder
         * @throws Refused if the name is empty
         */
        public Builder additiveLot(String additive, String lot) {
            Objects.requireNonNull(additive, "additive");
            additiveLots.put(additive, lotNamed(lot, additive));
            return this;
        }

        /**
         * Sets what was taken for known when the batch was planned, so that it can be said later what has changed since.
         *
         * @param taken the edition of the table with the values of the studio's own
         * @return this builder
         */
        public Builder assumptions(Assumptions taken) {
            assumptions = Objects.requireNonNull(taken, "taken");
            return this;
        }

        /**
         * Names the beater.
         *
         * @param called its name
         * @return this builder
         * @throws Refused if the name cannot be the name of a scope
         */
        public Builder beater(String called) {
            Objects.requireNonNull(called, "called");
            beater = named(called);
            return this;
        }

        /**
         * Names the vat.
         *
         * @param called its name
         * @return this builder
         * @throws Refused if the name cannot be the name of a scope
         */
        public Builder vat(String called) {
            Objects.requireNonNull(called, "called");
            vat = named(called);
            return this;
        }

        /**
         * Names the press.
         *
         * @param called its name
         * @return this builder
         * @throws Refused if the name cannot be the name of a scope
         */
        public Builder press(String called) {
            Objects.requireNonNull(called, "called");
            press = named(called);
            return this;
        }

        /**
         * Names the dryer.
         *
         * @param called its name
         * @return this builder
         * @throws Refused if the name cannot be the name of a scope
         */
        public Builder dryer(String called) {
            Objects.requireNonNull(called, "called");
            dryer = named(called);
            return this;
        }

        /**
         * Notes the colour that came out; a repeat is made to it.
         *
         * @param dried a dried sheet of the batch, as it was read
         * @return this builder
         */
        public Builder colour(Lab dried) {
            colour = Objects.requireNonNull(dried, "dried");
            return this;
        }

        /**
         * Sets the free note.
         *
         * @param text the note
         * @return this builder
         */
        public Builder note(String text) {
            Objects.requireNonNull(text, "text");
            note = text;
            return this;
        }

        /**
         * Adds a figure of the plan, to stand beside what was measured.
         *
         * @param figure its name, for example {@link BatchRecord#SHEET_SOLIDS}
         * @param value what was planned
         * @return this builder
         */
        public Builder planned(String figure, Amount<?> value) {
            Objects.requireNonNull(figure, "figure");
            Objects.requireNonNull(value, "value");
            planned.put(figure, value);
            return this;
        }

        /**
         * Adds measurements in the order they were made.
         *
         * @param measured the measurements
         * @return this builder
         */
        public Builder add(Measurement... measured) {
            Objects.requireNonNull(measured, "measured");
            measurements.addAll(List.of(measured));
            return this;
        }

        /**
         * Makes the record.
         *
         * @return the record
         */
        public BatchRecord build() {
            return new BatchRecord(new Builder(this));
        }

        private static String lotNamed(String lot, String of) {
            Objects.requireNonNull(lot, "lot");
            String called = Name.check(lot, "lot of " + of);
            if (called.isEmpty()) {
                throw Refused.of(
                        "record.lot-unnamed",
                        "lot of " + of
                                + ": the name is empty. Write what stands on the bale or the jar, or leave it out.",
                        "of",
                        of);
            }
            return called;
        }

        private static String named(String text) {
            return Scope.at(text).place().orElseThrow();
        }

        @Override
        public String toString() {
            return "record of " + name + ", " + date + ", being put together: " + measurements.size()
                    + (measurements.size() == 1 ? " measurement" : " measurements");
        }
    }

    /** The planned figure of the oven-dry mass of one sheet, fibre and additives: {@value}. */
    public static final String SHEET_SOLIDS = "sheet.oven-dry";

    /**
     * Returns the record's values in a builder, to add to them.
     *
     * @return a builder; this record does not change
     */
    public Builder toBuilder() {
        return new Builder(given);
    }

    /**
     * Returns the name.
     *
     * @return the name
     */
    public String name() {
        return given.name;
    }

    /**
     * Returns the day of making.
     *
     * @return the day
     */
    public LocalDate date() {
        return given.date;
    }

    /**
     * Returns the name of the recipe.
     *
     * @return the name, if it is known
     */
    public Optional<String> recipe() {
        return Optional.ofNullable(given.recipe).map(Recipe::name);
    }

    /**
     * Returns the fibres.
     *
     * @return the fibres, if they are known
     */
    public Optional<Furnish> furnish() {
        return Optional.ofNullable(given.recipe).map(Recipe::furnish);
    }

    /**
     * Returns the recipe as it was planned. Where only its name and its fibres were given it says no more.
     *
     * @return the recipe, if one is known
     */
    public Optional<Recipe> recipeAsPlanned() {
        return Optional.ofNullable(given.recipe);
    }

    /**
     * Returns the recipe that makes the same paper again: the shares of the fibres as weighed, the doses as weighed on the
     * fibre used, the hours as beaten, and all else as planned. What was weighed as planned stays as planned to the bit.
     *
     * <p>A dose is {@code d = d_p (m/m_p)/(f/f_p)}, m the product weighed, f the fibre weighed, p as planned. Where none was
     * planned it is the active matter of the product over the fibre it went on ({@link Measurement.AdditiveWeighed#fibre()}).
     * An additive that was planned and not weighed keeps its planned dose. What the vat stood at is a reading and no setting:
     * it does not come in.
     *
     * <pre>{@code
     * Additive blue = Additive.of("slate blue", Additive.Purpose.PIGMENT);
     * BatchRecord made = BatchRecord.builder("harbour, first", LocalDate.of(2026, 3, 14))
     *         .recipe("harbour", Furnish.of(Fibres.ABACA))
     *         .add(new Measurement.Beaten(Optional.empty(), Reading.of(hours(3), minutes(5))))
     *         .add(new Measurement.AdditiveWeighed(blue, Reading.of(grams(10), grams(0.1)),
     *                 Optional.of(Reading.of(grams(500), grams(5)))))
     *         .build();
     * Order again = Order.of("more of it").recipe(made.recipeAsMade())
     *         .piece(Piece.of("card", 30, "harbour").size(mm(100), mm(150)).grammage(Grammage.gsm(200)).build())
     *         .build();
     * made.recipeAsMade().additives(); // [slate blue, 2 % on oven-dry fibre]
     * }</pre>
     *
     * @return the recipe
     * @throws Refused if no recipe is named, a dose is neither planned nor can be worked out, or the doses come to more than
     *     the fibre
     */
    public Recipe recipeAsMade() {
        return RecipeAsMade.of(this);
    }

    /**
     * Returns the lots of the fibres.
     *
     * @return an unmodifiable map, in the order given
     */
    public Map<Fibre, String> fibreLots() {
        return Collections.unmodifiableMap(given.fibreLots);
    }

    /**
     * Returns the lots of the additives.
     *
     * @return an unmodifiable map by name of the additive, in the order given
     */
    public Map<String, String> additiveLots() {
        return Collections.unmodifiableMap(given.additiveLots);
    }

    /**
     * Returns what was taken for known when the batch was planned.
     *
     * @return the assumptions, if they were kept
     */
    public Optional<Assumptions> assumptions() {
        return Optional.ofNullable(given.assumptions);
    }

    /**
     * Returns the name of the planned figure of the fibre to weigh, as bought and in all.
     *
     * @param fibre the fibre
     * @return for example {@code fibre.as-bought cotton-rag}
     */
    public static String weighing(Fibre fibre) {
        return "fibre.as-bought " + Objects.requireNonNull(fibre, "fibre").id();
    }

    /**
     * Returns the name of the planned figure of the product to weigh of an additive, in all.
     *
     * @param additive the additive
     * @return for example {@code additive.product slate blue}
     */
    public static String weighing(Additive additive) {
        return "additive.product "
                + Objects.requireNonNull(additive, "additive").name();
    }

    /**
     * Returns the name of the beater.
     *
     * @return the name, if it is known
     */
    public Optional<String> beater() {
        return Optional.ofNullable(given.beater);
    }

    /**
     * Returns the name of the vat.
     *
     * @return the name, if it is known
     */
    public Optional<String> vat() {
        return Optional.ofNullable(given.vat);
    }

    /**
     * Returns the name of the press.
     *
     * @return the name, if it is known
     */
    public Optional<String> press() {
        return Optional.ofNullable(given.press);
    }

    /**
     * Returns the name of the dryer.
     *
     * @return the name, if it is known
     */
    public Optional<String> dryer() {
        return Optional.ofNullable(given.dryer);
    }

    /**
     * Returns the colour that came out.
     *
     * @return a dried sheet of the batch, if it was read
     */
    public Optional<Lab> colour() {
        return Optional.ofNullable(given.colour);
    }

    /**
     * Returns the free note.
     *
     * @return the note, perhaps empty
     */
    public String note() {
        return given.note;
    }

    /**
     * Returns the figures of the plan, to compare with what was measured.
     *
     * @return an unmodifiable map by name, in the order given
     */
    public Map<String, Amount<?>> planned() {
        return planned;
    }

    /**
     * Returns what was measured.
     *
     * @return an unmodifiable list in the order given
     */
    public List<Measurement> measurements() {
        return measurements;
    }

    /**
     * Returns what was measured of one sort.
     *
     * @param <M> the sort
     * @param sort the type of it
     * @return an unmodifiable list in the order given, empty if none was measured
     */
    public <M extends Measurement> List<M> measurements(Class<M> sort) {
        return measurements.stream().filter(sort::isInstance).map(sort::cast).toList();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof BatchRecord that
                && name().equals(that.name())
                && date().equals(that.date())
                && recipeAsPlanned().equals(that.recipeAsPlanned())
                && given.fibreLots.equals(that.given.fibreLots)
                && given.additiveLots.equals(that.given.additiveLots)
                && sameAssumptions(that)
                && beater().equals(that.beater())
                && vat().equals(that.vat())
                && press().equals(that.press())
                && dryer().equals(that.dryer())
                && colour().equals(that.colour())
                && note().equals(that.note())
                && planned.equals(that.planned)
                && measurements.equals(that.measurements);
    }

    /** Stores are told apart by what they say. */
    private boolean sameAssumptions(BatchRecord that) {
        Assumptions one = given.assumptions;
        Assumptions other = that.given.assumptions;
        if (one == null || other == null) {
            return one == null && other == null;
        }
        return one.edition().equals(other.edition()) && one.own().equals(other.own());
    }

    @Override
    public int hashCode() {
        return Objects.hash(name(), date(), measurements);
    }

    /** Returns for example {@code tide grey, first (2026-03-14), 12 measurements}. */
    @Override
    public String toString() {
        int n = measurements.size();
        return name() + " (" + date() + "), " + n + (n == 1 ? " measurement" : " measurements");
    }
}
