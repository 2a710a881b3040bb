package org.papermath.order;

import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Time;
import org.jspecify.annotations.Nullable;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Amounts;
import org.papermath.quantity.Limits;
import org.papermath.quantity.Refused;

/**
 * A step of one's own in the days of an order: printing elsewhere, a proof to be approved, the way to the customer. It takes
 * hands, or waiting, or both, hands first. Immutable.
 *
 * <p>Its place is said by the stages of the work it comes after and before. After a stage alone, it begins when the whole order
 * is through that stage, and all that comes later waits for it. Before a stage alone, it begins when all that comes earlier is
 * done, and that stage waits for it. After one and before another, it begins when the one is done and the other waits for it;
 * what lies between goes on beside it. Steps of one place follow one another as they stand in the order.
 *
 * <pre>{@code
 * OwnStep proof = OwnStep.of("have the proof approved").waits(days(4)).between(days(2), days(10))
 *         .after(OwnStep.Stage.FIBRE).before(OwnStep.Stage.FORM).build(); // have the proof approved: waits 4 d (2 d to 10 d), after fibre and before form
 * OwnStep print = OwnStep.of("print elsewhere").hands(hours(1)).waits(days(5)).inWorkingDays()
 *         .after(OwnStep.Stage.CONDITION).build();
 * }</pre>
 */
public final class OwnStep {
    /** The stages of the work in its days, in their order. An order that has not one of them goes past it. */
    public enum Stage {
        /** Ordering the fibre and having it. */
        FIBRE,
        /** Soaking. */
        SOAK,
        /** Cooking raw fibre and rinsing it. */
        COOK,
        /** Beating, and dosing what is added. */
        BEAT,
        /** Forming and pressing. */
        FORM,
        /** Drying. */
        DRY,
        /** Sizing in the bath. */
        SIZE,
        /** Drying the sized sheets. */
        DRY_AGAIN,
        /** Letting the size cure. */
        CURE,
        /** Sorting and finishing. */
        FINISH,
        /** Conditioning under weight. */
        CONDITION,
        /** Counting and packing. */
        PACK;

        /**
         * Returns the stage in words, as a document says it.
         *
         * @return for example {@code dry again}
         */
        public String words() {
            return name().toLowerCase(Locale.ROOT).replace('_', ' ');
        }
    }

    private final String name;
    private final Amount<Time> hands;
    private final Amount<Time> waits;
    private final @Nullable Amount<Time> low;
    private final @Nullable Amount<Time> high;
    private final boolean inWorkingDays;
    private final @Nullable Stage after;
    private final @Nullable Stage before;

    private OwnStep(Builder b) {
        name = b.name;
        hands = b.hands;
        waits = b.waits;
        low = b.low;
        high = b.high;
        inWorkingDays = b.inWorkingDays;
        after = b.after;
        before = b.before;
    }

    /**
     * Begins a step.
     *
     * @param name what is done, not empty
     * @return a builder
     * @throws Refused if the name is empty or cannot be shown
     */
    public static Builder of(String name) {
        Objects.requireNonNull(name, "name");
        return new Builder(CheckedName.require("step", name));
    }

    /** Gathers a step. */
    public static final class Builder {
        private final String name;
        private final SetOnce given;
        private Amount<Time> hands = Amounts.hours(0);
        private Amount<Time> waits = Amounts.days(0);
        private @Nullable Amount<Time> low;
        private @Nullable Amount<Time> high;
        private boolean inWorkingDays;
        private @Nullable Stage after;
        private @Nullable Stage before;

        private Builder(String name) {
            this.name = name;
            given = new SetOnce("step " + name);
        }

        /**
         * Sets how long hands are on it, in working time; none without it.
         *
         * @param time the time, within {@link Limits#STEP_HANDS}
         * @return this builder
         * @throws Refused if it is out of range or was set before
         */
        public Builder hands(Quantity<Time> time) {
            Objects.requireNonNull(time, "time");
            given.once("the time of hands");
            hands = Limits.STEP_HANDS.check(time, "hands on ", name);
            return this;
        }

        /**
         * Sets how long is waited after that, likely; day and night, if it is not told {@linkplain #inWorkingDays() in working
         * days}. None without it.
         *
         * @param time the time, within {@link Limits#STEP_WAITS}
         * @return this builder
         * @throws Refused if it is out of range or was set before
         */
        public Builder waits(Quantity<Time> time) {
            Objects.requireNonNull(time, "time");
            given.once("the waiting");
            waits = Limits.STEP_WAITS.check(time, "waiting of ", name);
            return this;
        }

        /**
         * Sets the band of the waiting, from which the chance of a date is drawn. Without it the waiting is certain.
         *
         * @param shortest it takes as long or longer in 19 of 20 cases; above zero
         * @param longest it takes no longer in 19 of 20 cases, within {@link Limits#STEP_WAITS}
         * @return this builder
         * @throws Refused if one is out of range, or a band was set before
         */
        public Builder between(Quantity<Time> shortest, Quantity<Time> longest) {
            Objects.requireNonNull(shortest, "shortest");
            Objects.requireNonNull(longest, "longest");
            given.once("the band of the waiting");
            low = Limits.STEP_WAITS.check(shortest, "shortest waiting of ", name);
            high = Limits.STEP_WAITS.check(longest, "longest waiting of ", name);
            return this;
        }

        /**
         * Counts the waiting in working days of the studio, because those waited for keep the same hours: a day is as much working
         * time as its longest day has, and nights and days off are left out. The waiting is then told in days.
         *
         * @return this builder
         */
        public Builder inWorkingDays() {
            inWorkingDays = true;
            return this;
        }

        /**
         * Sets the stage that is done before it begins.
         *
         * @param stage the stage
         * @return this builder
         * @throws Refused if it was set before
         */
        public Builder after(Stage stage) {
            Objects.requireNonNull(stage, "stage");
            given.once("the stage it comes after");
            after = stage;
            return this;
        }

        /**
         * Sets the stage that waits for it.
         *
         * @param stage the stage
         * @return this builder
         * @throws Refused if it was set before
         */
        public Builder before(Stage stage) {
            Objects.requireNonNull(stage, "stage");
            given.once("the stage it comes before");
            before = stage;
            return this;
        }

        /**
         * Ends the step.
         *
         * @return the step
         * @throws Refused if it takes no time, has no place or one that ends before it begins, the likely waiting is outside its
         *     band, or a waiting in working days is told in another unit
         */
        public OwnStep build() {
            if (hands.si() == 0 && waits.si() == 0) {
                throw Refused.of(
                        "step.no-time",
                        "step " + name + ": it takes no time. Say how long hands are on it, or how long it waits.",
                        "step",
                        name);
            }
            if (after == null && before == null) {
                throw Refused.of(
                        "step.no-place",
                        "step " + name + ": it has no place in the work. Say after or before which stage it comes.",
                        "step",
                        name);
            }
            if (after != null && before != null && after.compareTo(before) >= 0) {
                throw Refused.of(
                        "step.place",
                        "step " + name + ": it is to come after " + after.words() + " and before " + before.words()
                                + ", which does not come later. Name a later stage, or leave one of them out.",
                        "step",
                        name,
                        "after",
                        after.words(),
                        "before",
                        before.words());
            }
            if (low != null && high != null) {
                requireBand(low, high);
            }
            if (inWorkingDays) {
                requireDays(waits);
                requireDays(low);
                requireDays(high);
            }
            return new OwnStep(this);
        }

        private void requireBand(Amount<Time> lowEnd, Amount<Time> highEnd) {
            if (!(lowEnd.si() > 0 && lowEnd.si() <= waits.si() && waits.si() <= highEnd.si())) {
                throw Refused.of(
                        "step.band",
                        "step " + name + ": it waits " + waits + ", between " + lowEnd + " and " + highEnd
                                + "; the low end must be above 0, and likely and high not below it. Give them in rising"
                                + " order.",
                        "step",
                        name,
                        "low",
                        lowEnd.toString(),
                        "likely",
                        waits.toString(),
                        "high",
                        highEnd.toString());
            }
        }

        private void requireDays(@Nullable Amount<Time> time) {
            if (time != null && !time.getUnit().equals(Amounts.days(1).getUnit())) {
                throw Refused.of(
                        "step.working-days",
                        "step " + name + ": " + time
                                + " given of a waiting in working days, which differ in hours. Give it in days, as"
                                + " 3 d, or count the waiting day and night.",
                        "step",
                        name,
                        "given",
                        time.toString());
            }
        }

        @Override
        public String toString() {
            return "step " + name + ", being put together: hands " + hands + ", waits " + waits;
        }
    }

    /** {@return what is done} */
    public String name() {
        return name;
    }

    /** {@return how long hands are on it, zero or more} */
    public Amount<Time> hands() {
        return hands;
    }

    /** {@return how long is waited after that, likely; zero or more} */
    public Amount<Time> waits() {
        return waits;
    }

    /** {@return what the waiting takes in 19 of 20 cases at least, if it has a band} */
    public Optional<Amount<Time>> waitsAtLeast() {
        return Optional.ofNullable(low);
    }

    /** {@return what the waiting takes in 19 of 20 cases at most, if it has a band} */
    public Optional<Amount<Time>> waitsAtMost() {
        return Optional.ofNullable(high);
    }

    /** {@return whether the waiting is counted in working days of the studio} */
    public boolean isInWorkingDays() {
        return inWorkingDays;
    }

    /** {@return the stage that is done before it begins, if one was named} */
    public Optional<Stage> after() {
        return Optional.ofNullable(after);
    }

    /** {@return the stage that waits for it, if one was named} */
    public Optional<Stage> before() {
        return Optional.ofNullable(before);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof OwnStep that
                && name.equals(that.name)
                && hands.equals(that.hands)
                && waits.equals(that.waits)
                && Objects.equals(low, that.low)
                && Objects.equals(high, that.high)
                && inWorkingDays == that.inWorkingDays
                && after == that.after
                && before == that.before;
    }

    @Override
    public int hashCode() {
        return Objects.hash(name, hands, waits, after, before);
    }

    /** Returns name, times and place, as {@code print elsewhere: 1 h of hands, waits 5 d (3 d to 11 d), after condition}. */
    @Override
    public String toString() {
        return name + ":" + (hands.si() > 0 ? " " + hands + " of hands," : "")
                + (waits.si() > 0
                        ? " waits " + waits + (low == null ? "" : " (" + low + " to " + high + ")")
                                + (inWorkingDays ? " of working days" : "") + ","
                        : "")
                + (after == null ? "" : " after " + after.words())
                + (before == null ? "" : (after == null ? " before " : " and before ") + before.words());
    }
}
