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
import org.papermath.evidence.Scope;
import org.papermath.fibre.Furnish;
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
        private @Nullable String recipe;
        private @Nullable Furnish furnish;
        private @Nullable String beater;
        private @Nullable String vat;
        private @Nullable String press;
        private @Nullable String dryer;
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
            furnish = from.furnish;
            beater = from.beater;
            vat = from.vat;
            press = from.press;
            dryer = from.dryer;
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
            recipe = named(called);
            furnish = of;
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

        private static String named(String text) {
            return Scope.at(text).place().orElseThrow();
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
        return Optional.ofNullable(given.recipe);
    }

    /**
     * Returns the fibres.
     *
     * @return the fibres, if they are known
     */
    public Optional<Furnish> furnish() {
        return Optional.ofNullable(given.furnish);
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
                && recipe().equals(that.recipe())
                && furnish().equals(that.furnish())
                && beater().equals(that.beater())
                && vat().equals(that.vat())
                && press().equals(that.press())
                && dryer().equals(that.dryer())
                && note().equals(that.note())
                && planned.equals(that.planned)
                && measurements.equals(that.measurements);
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
