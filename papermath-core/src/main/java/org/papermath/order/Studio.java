package org.papermath.order;

import java.time.DayOfWeek;
import java.time.Duration;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.function.UnaryOperator;
import javax.measure.Quantity;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Time;
import javax.measure.quantity.Volume;
import org.jspecify.annotations.Nullable;
import org.papermath.air.Air;
import org.papermath.drying.Dryer;
import org.papermath.drying.Ventilation;
import org.papermath.evidence.Assumptions;
import org.papermath.fibre.Fibre;
import org.papermath.mould.Mould;
import org.papermath.press.Felts;
import org.papermath.press.Press;
import org.papermath.pulp.Beater;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Amounts;
import org.papermath.quantity.Limits;
import org.papermath.quantity.Refused;
import org.papermath.quantity.RelativeHumidity;
import org.papermath.schedule.WorkingTime;
import org.papermath.vat.Vat;

/**
 * What a studio has: equipment, the air of its room, stock on hand, the steps of its scale and jug, and what it knows
 * from its own measurements. Immutable.
 *
 * <pre>{@code
 * Studio garden = Studio.of("garden room")
 *         .beater(Beater.of("small beater", litres(18), grams(400)))
 *         .vat(Vat.of("tub", litres(50)))
 *         .mould(Mould.of("quarto", mm(260), mm(330)))
 *         .dryer(Dryer.boards("boards", 12))
 *         .room(Air.of(celsius(19), RelativeHumidity.percent(55)))
 *         .build();
 * garden.press().isPresent(); // false
 * }</pre>
 *
 * <p>Nothing but the name has to be there: a plan leaves out the stages it has no equipment for and says so.
 */
public final class Studio {
    private final String name;
    private final @Nullable Beater beater;
    private final @Nullable Vat vat;
    private final List<Mould> moulds;
    private final @Nullable Press press;
    private final @Nullable Felts felts;
    private final List<Dryer> dryers;
    private final Air room;
    private final @Nullable Ventilation ventilation;
    private final Map<Fibre, Amount<Mass>> onHand;
    private final List<StuffOnHand> stuffOnHand;
    private final Amount<Mass> scaleStep;
    private final Amount<Mass> fineScaleStep;
    private final Amount<Volume> jugStep;
    private final Amount<Time> workingDay;
    private final @Nullable WorkingTime workingTime;
    private final int people;
    private final boolean customaryUnits;
    private final Assumptions assumptions;

    private Studio(Builder b) {
        this.name = b.name;
        this.beater = b.beater;
        this.vat = b.vat;
        this.moulds = List.copyOf(b.moulds);
        this.press = b.press;
        this.felts = b.felts;
        this.dryers = List.copyOf(b.dryers);
        this.room = b.room == null ? Air.of(Amounts.celsius(20), RelativeHumidity.percent(55)) : b.room;
        this.ventilation = b.ventilation;
        this.onHand = java.util.Collections.unmodifiableMap(new LinkedHashMap<>(b.onHand));
        this.stuffOnHand = List.copyOf(b.stuffOnHand);
        this.scaleStep = b.scaleStep;
        this.fineScaleStep = b.fineScaleStep;
        this.jugStep = b.jugStep;
        this.workingDay = b.workingDay;
        this.workingTime = b.workingTime;
        this.people = b.people;
        this.customaryUnits = b.customaryUnits;
        this.assumptions = b.assumptions;
    }

    /**
     * Begins a studio.
     *
     * @param name its name, not empty
     * @return a builder
     * @throws Refused if the name is empty
     */
    public static Builder of(String name) {
        return new Builder(CheckedName.require("studio", name));
    }

    /** Gathers a studio; refuses what is set twice. */
    public static final class Builder {
        private final String name;
        private final SetOnce given;
        private final List<Mould> moulds = new ArrayList<>();
        private final List<Dryer> dryers = new ArrayList<>();
        private final Map<Fibre, Amount<Mass>> onHand = new LinkedHashMap<>();
        private final List<StuffOnHand> stuffOnHand = new ArrayList<>();
        private @Nullable Beater beater;
        private @Nullable Vat vat;
        private @Nullable Press press;
        private @Nullable Felts felts;
        private @Nullable Air room;
        private @Nullable Ventilation ventilation;
        private Amount<Mass> scaleStep = Amounts.grams(1);
        private Amount<Mass> fineScaleStep = Amounts.grams(0.1);
        private Amount<Volume> jugStep = Amounts.millilitres(10);
        private Amount<Time> workingDay = Amounts.hours(6);
        private @Nullable WorkingTime workingTime;
        private int people = 1;
        private boolean customaryUnits;
        private Assumptions assumptions = Assumptions.standard();

        private Builder(String name) {
            this.name = name;
            this.given = new SetOnce("studio " + name);
        }

        /**
         * Sets the beater.
         *
         * @param machine the beater
         * @return this builder
         * @throws Refused if one was set before
         */
        public Builder beater(Beater machine) {
            Objects.requireNonNull(machine, "machine");
            given.once("the beater");
            beater = machine;
            return this;
        }

        /**
         * Sets the vat. A studio without one pours its sheets, one measured pour at a time, into a deckle box.
         *
         * @param tank the vat
         * @return this builder
         * @throws Refused if one was set before
         */
        public Builder vat(Vat tank) {
            Objects.requireNonNull(tank, "tank");
            given.once("the vat");
            vat = tank;
            return this;
        }

        /**
         * Adds a mould.
         *
         * @param mould the mould with its deckle
         * @return this builder
         * @throws Refused if one of that name was added before
         */
        public Builder mould(Mould mould) {
            Objects.requireNonNull(mould, "mould");
            given.once("the mould " + mould.name(), moulds, mould, Mould::name);
            return this;
        }

        /**
         * Sets the press.
         *
         * @param machine the press
         * @return this builder
         * @throws Refused if one was set before
         */
        public Builder press(Press machine) {
            Objects.requireNonNull(machine, "machine");
            given.once("the press");
            press = machine;
            return this;
        }

        /**
         * Sets the felts.
         *
         * @param set the felts
         * @return this builder
         * @throws Refused if they were set before
         */
        public Builder felts(Felts set) {
            Objects.requireNonNull(set, "set");
            given.once("the felts");
            felts = set;
            return this;
        }

        /**
         * Adds a dryer; the first one is used unless a piece names another.
         *
         * @param dryer the dryer
         * @return this builder
         * @throws Refused if one of that name was added before
         */
        public Builder dryer(Dryer dryer) {
            Objects.requireNonNull(dryer, "dryer");
            given.once("the dryer " + dryer.name(), dryers, dryer, Dryer::name);
            return this;
        }

        /**
         * Sets the air of the room; 20 °C and 55 % without it.
         *
         * @param air the air
         * @return this builder
         * @throws Refused if it was set before
         */
        public Builder room(Air air) {
            Objects.requireNonNull(air, "air");
            given.once("the air of the room");
            room = air;
            return this;
        }

        /**
         * Sets how much air passes through the room; without it the air of the room is taken to stay as it is, however
         * much dries in it.
         *
         * @param through the ventilation
         * @return this builder
         * @throws Refused if it was set before
         */
        public Builder ventilation(Ventilation through) {
            Objects.requireNonNull(through, "through");
            given.once("the ventilation of the room");
            ventilation = through;
            return this;
        }

        /**
         * Adds fibre on hand, in the form the recipe has it bought in, to be used before any is bought.
         *
         * @param fibre the fibre
         * @param ovenDry its oven-dry mass, 1 mg to 100 t
         * @return this builder
         * @throws Refused if the mass is out of range or the fibre was added before
         */
        public Builder onHand(Fibre fibre, Quantity<Mass> ovenDry) {
            Objects.requireNonNull(fibre, "fibre");
            given.once(fibre.name() + " on hand");
            onHand.put(fibre, Limits.ON_HAND.check(ovenDry, "on hand of ", fibre.name()));
            return this;
        }

        /**
         * Adds stuff on hand, beaten and dosed as a recipe has it, to be used before any is beaten: strained or thinned to the
         * stock of the recipe.
         *
         * @param stuff the stuff; only one of a recipe
         * @return this builder
         * @throws Refused if the recipe has stuff on hand already
         */
        public Builder stuffOnHand(StuffOnHand stuff) {
            Objects.requireNonNull(stuff, "stuff");
            given.once("stuff of " + stuff.recipe() + " on hand", stuffOnHand, stuff, StuffOnHand::recipe);
            return this;
        }

        /**
         * Sets all that is on hand anew, whatever the builder began with.
         *
         * @param fibre oven-dry fibre by kind
         * @param stuff stuff that stands beaten, one of a recipe
         * @return this builder
         * @throws Refused if a mass is out of range or a recipe stands twice
         */
        public Builder holding(Map<Fibre, Amount<Mass>> fibre, List<StuffOnHand> stuff) {
            Objects.requireNonNull(fibre, "fibre");
            Objects.requireNonNull(stuff, "stuff");
            onHand.clear();
            stuffOnHand.clear();
            fibre.forEach(this::onHand);
            stuff.forEach(this::stuffOnHand);
            return this;
        }

        /**
         * Sets the step of the scale for fibre; 1 g without it.
         *
         * @param step the step, 1 mg to 1 kg
         * @return this builder
         * @throws Refused if it is out of range
         */
        public Builder scaleStep(Quantity<Mass> step) {
            scaleStep = Limits.SCALE_STEP.check(step, "step of the scale");
            return this;
        }

        /**
         * Sets the step of the scale for additives; 0.1 g without it.
         *
         * @param step the step, 1 mg to 1 kg
         * @return this builder
         * @throws Refused if it is out of range
         */
        public Builder fineScaleStep(Quantity<Mass> step) {
            fineScaleStep = Limits.SCALE_STEP.check(step, "step of the fine scale");
            return this;
        }

        /**
         * Sets the step of the measuring jug; 10 mL without it.
         *
         * @param step the step, 0.1 mL to 10 L
         * @return this builder
         * @throws Refused if it is out of range
         */
        public Builder jugStep(Quantity<Volume> step) {
            jugStep = Limits.JUG_STEP.check(step, "step of the jug");
            return this;
        }

        /**
         * Sets the working hours of a day; 6 h without it.
         *
         * @param hours the hours, 0.5 to 24 h
         * @return this builder
         * @throws Refused if they are out of range
         */
        public Builder workingDay(Quantity<Time> hours) {
            workingDay = Limits.WORKING_DAY.check(hours, "working day");
            workingTime = null;
            return this;
        }

        /**
         * Sets the hours of each day of the week and the days off, in place of so many hours from Monday to Friday. A
         * working day is then as long as the longest day of the week.
         *
         * @param time when people work, days off with it; the longest day within {@link Limits#WORKING_DAY}
         * @return this builder
         * @throws Refused if the longest day is out of range
         */
        public Builder workingTime(WorkingTime time) {
            Objects.requireNonNull(time, "time");
            workingDay = Limits.WORKING_DAY.check(
                    Amounts.hours(time.longestDay().toMinutes() / 60.0), "longest working day");
            workingTime = time;
            return this;
        }

        /**
         * Sets how many people work at the same time. The pace of one at the vat stays what it is.
         *
         * @param count the people, 1 to 50; 1 where it is not set
         * @return this builder
         * @throws Refused if the count is out of range
         */
        public Builder people(int count) {
            people = Limits.PEOPLE.check(count, "people");
            return this;
        }

        /**
         * Has US customary units printed in brackets beside the metric ones.
         *
         * @return this builder
         */
        public Builder alsoCustomaryUnits() {
            customaryUnits = true;
            return this;
        }

        /**
         * Sets what the studio knows: the table of assumptions with its own values in it.
         *
         * @param known the assumptions
         * @return this builder
         */
        public Builder assumptions(Assumptions known) {
            Objects.requireNonNull(known, "known");
            assumptions = known;
            return this;
        }

        /**
         * Ends the studio.
         *
         * @return the studio
         */
        public Studio build() {
            return new Studio(this);
        }

        @Override
        public String toString() {
            return "studio " + name + ", being put together: " + equipment(beater, vat, moulds, press, dryers);
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
     * Returns the beater, if there is one.
     *
     * @return the beater
     */
    public Optional<Beater> beater() {
        return Optional.ofNullable(beater);
    }

    /**
     * Returns the vat, if there is one.
     *
     * @return the vat
     */
    public Optional<Vat> vat() {
        return Optional.ofNullable(vat);
    }

    /**
     * Returns the moulds.
     *
     * @return an unmodifiable list
     */
    public List<Mould> moulds() {
        return moulds;
    }

    /**
     * Returns the press, if there is one.
     *
     * @return the press
     */
    public Optional<Press> press() {
        return Optional.ofNullable(press);
    }

    /**
     * Returns the felts, if there are any.
     *
     * @return the felts
     */
    public Optional<Felts> felts() {
        return Optional.ofNullable(felts);
    }

    /**
     * Returns the dryers, the usual one first.
     *
     * @return an unmodifiable list
     */
    public List<Dryer> dryers() {
        return dryers;
    }

    /**
     * Returns the air of the room.
     *
     * @return the air
     */
    public Air room() {
        return room;
    }

    /**
     * Returns how much air passes through the room, if it is known.
     *
     * @return the ventilation
     */
    public Optional<Ventilation> ventilation() {
        return Optional.ofNullable(ventilation);
    }

    /**
     * Returns the fibre on hand, by oven-dry mass, in the form it is bought in.
     *
     * @return an unmodifiable map
     */
    public Map<Fibre, Amount<Mass>> onHand() {
        return onHand;
    }

    /**
     * Returns the stuff that stands beaten and dosed.
     *
     * @return an unmodifiable list, one for a recipe at most
     */
    public List<StuffOnHand> stuffOnHand() {
        return stuffOnHand;
    }

    /**
     * Returns the step of the scale for fibre.
     *
     * @return the step
     */
    public Amount<Mass> scaleStep() {
        return scaleStep;
    }

    /**
     * Returns the step of the scale for additives.
     *
     * @return the step
     */
    public Amount<Mass> fineScaleStep() {
        return fineScaleStep;
    }

    /**
     * Returns the step of the measuring jug.
     *
     * @return the step
     */
    public Amount<Volume> jugStep() {
        return jugStep;
    }

    /**
     * Returns the working hours of a day.
     *
     * @return the hours
     */
    public Amount<Time> workingDay() {
        return workingDay;
    }

    /**
     * Returns when people work.
     *
     * @return the hours of the week and the days off; where none were given, the working day from Monday to Friday
     */
    public WorkingTime workingTime() {
        return workingTime == null
                ? WorkingTime.of(
                        Duration.ofMinutes(Math.max(1, Math.round(workingDay.si() / 60))),
                        EnumSet.range(DayOfWeek.MONDAY, DayOfWeek.FRIDAY))
                : workingTime;
    }

    /**
     * Returns the hours of the week and the days off, where they were given.
     *
     * @return when people work
     */
    public Optional<WorkingTime> givenWorkingTime() {
        return Optional.ofNullable(workingTime);
    }

    /**
     * Returns how many people work at the same time.
     *
     * @return the people
     */
    public int people() {
        return people;
    }

    /**
     * Returns whether US customary units are printed beside the metric ones.
     *
     * @return whether they are
     */
    public boolean alsoCustomaryUnits() {
        return customaryUnits;
    }

    /**
     * Returns what the studio knows.
     *
     * @return the assumptions
     */
    public Assumptions assumptions() {
        return assumptions;
    }

    /**
     * Returns a builder that begins with all this studio has; what it is given then replaces that.
     *
     * @return a builder
     */
    public Builder toBuilder() {
        Builder b = new Builder(name);
        b.beater = beater;
        b.vat = vat;
        b.moulds.addAll(moulds);
        b.press = press;
        b.felts = felts;
        b.dryers.addAll(dryers);
        b.room = room;
        b.ventilation = ventilation;
        b.onHand.putAll(onHand);
        b.stuffOnHand.addAll(stuffOnHand);
        b.scaleStep = scaleStep;
        b.fineScaleStep = fineScaleStep;
        b.jugStep = jugStep;
        b.workingDay = workingDay;
        b.workingTime = workingTime;
        b.people = people;
        b.customaryUnits = customaryUnits;
        b.assumptions = assumptions;
        return b;
    }

    /**
     * Returns the same studio with other assumptions, such as those its records give.
     *
     * @param known the assumptions
     * @return the studio
     */
    public Studio withAssumptions(Assumptions known) {
        return toBuilder().assumptions(known).build();
    }

    /**
     * Returns the same studio with the air of its room on another day.
     *
     * @param air the air
     * @return the studio
     */
    public Studio withRoom(Air air) {
        return toBuilder().room(air).build();
    }

    /**
     * Returns the same studio, otherwise in something.
     *
     * @param change what is said anew, for example {@code one -> one.felts(more)}
     * @return the studio
     * @throws Refused as the builder
     */
    public Studio with(UnaryOperator<Builder> change) {
        return Objects.requireNonNull(change, "change").apply(toBuilder()).build();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Studio that
                && name.equals(that.name)
                && Objects.equals(beater, that.beater)
                && Objects.equals(vat, that.vat)
                && moulds.equals(that.moulds)
                && Objects.equals(press, that.press)
                && Objects.equals(felts, that.felts)
                && dryers.equals(that.dryers)
                && room.equals(that.room)
                && Objects.equals(ventilation, that.ventilation)
                && onHand.equals(that.onHand)
                && stuffOnHand.equals(that.stuffOnHand)
                && scaleStep.equals(that.scaleStep)
                && fineScaleStep.equals(that.fineScaleStep)
                && jugStep.equals(that.jugStep)
                && workingDay.equals(that.workingDay)
                && Objects.equals(workingTime, that.workingTime)
                && people == that.people
                && customaryUnits == that.customaryUnits
                && assumptions.edition().equals(that.assumptions.edition())
                && assumptions.own().equals(that.assumptions.own());
    }

    @Override
    public int hashCode() {
        return Objects.hash(name, beater, vat, moulds, press, felts, dryers, room, ventilation, onHand);
    }

    @Override
    public String toString() {
        return "studio " + name + ": " + equipment(beater, vat, moulds, press, dryers);
    }

    /** What there is to work with, by name. */
    private static String equipment(
            @Nullable Beater beater, @Nullable Vat vat, List<Mould> moulds, @Nullable Press press, List<Dryer> dryers) {
        StringBuilder text = new StringBuilder(beater == null ? "no beater" : beater.name());
        text.append(", ").append(vat == null ? "no vat" : vat.name());
        text.append(", ")
                .append(
                        moulds.isEmpty()
                                ? "no mould"
                                : String.join(
                                        ", ", moulds.stream().map(Mould::name).toList()));
        text.append(", ").append(press == null ? "no press" : press.name());
        dryers.forEach(dryer -> text.append(", ").append(dryer.name()));
        return text.toString();
    }
}
