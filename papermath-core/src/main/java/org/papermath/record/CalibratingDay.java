package org.papermath.record;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Temperature;
import javax.measure.quantity.Time;
import org.apache.commons.statistics.distribution.ChiSquaredDistribution;
import org.jspecify.annotations.Nullable;
import org.papermath.air.Air;
import org.papermath.air.Water;
import org.papermath.drying.Dryer;
import org.papermath.equation.BeatingLaw;
import org.papermath.equation.CaliperLaw;
import org.papermath.equation.DensityLaw;
import org.papermath.equation.DrainageLaw;
import org.papermath.equation.Shrinkage;
import org.papermath.evidence.Assumption;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Basis;
import org.papermath.evidence.Estimate;
import org.papermath.evidence.Notice;
import org.papermath.evidence.Reading;
import org.papermath.evidence.Role;
import org.papermath.evidence.Scope;
import org.papermath.evidence.Shape;
import org.papermath.evidence.Source;
import org.papermath.fibre.Fibre;
import org.papermath.fibre.Furnish;
import org.papermath.fibre.SorptionModel;
import org.papermath.notice.SheetNotices;
import org.papermath.numeric.Normal;
import org.papermath.quantity.Amount;
import org.papermath.quantity.ApparentDensity;
import org.papermath.quantity.FibreConcentration;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Kind;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.LinearShrinkage;
import org.papermath.quantity.Name;
import org.papermath.quantity.Refused;
import org.papermath.quantity.SchopperRiegler;
import org.papermath.quantity.Share;
import org.papermath.quantity.SheetPressure;
import org.papermath.quantity.Units;
import org.papermath.sheet.Restraint;
import org.papermath.vat.DrainageModel;

/**
 * What one day at the beater says of a fibre: from samples of one load, taken while it is beaten, the course of beating,
 * and what drainability, draining, shrinkage and density make of it in this studio. Immutable.
 *
 * <pre>{@code
 * double[][] book = { // hours, number, free sheet along and across, its thickness, held sheet likewise
 *         {0, 15, 392, 292, 255, 400, 299, 226}, {1, 35, 371, 278, 220, 399, 300, 190},
 *         {2, 50, 356, 266, 199, 399, 299, 172}, {3, 62, 345, 257, 188, 399, 299, 158},
 *         {4, 70, 336, 251, 178, 399, 299, 152}, {5, 77, 330, 245, 173, 398, 299, 147}};
 * CalibratingDay.Builder day = CalibratingDay.of(Fibres.ABACA, "big beater").wet(mm(400), mm(300))
 *         .pressed("big press", SheetPressure.kilopascals(300)).held(Dryer.boards("the boards", 30));
 * Reading<Grammage> heavy = Reading.of(Grammage.gsm(100), Grammage.gsm(1));
 * for (double[] line : book) {
 *     day.add(CalibratingDay.Sample.after(hours(line[0]))
 *             .withNumber(Reading.of(SchopperRiegler.degrees(line[1]), SchopperRiegler.degrees(1)))
 *             .withFree(new CalibratingDay.DriedSheet(Reading.of(mm(line[2]), mm(1)), Reading.of(mm(line[3]), mm(1)),
 *                     Reading.of(micrometres(line[4]), micrometres(8)), heavy))
 *             .withHeld(new CalibratingDay.DriedSheet(Reading.of(mm(line[5]), mm(1)), Reading.of(mm(line[6]), mm(1)),
 *                     Reading.of(micrometres(line[7]), micrometres(8)), heavy)));
 * }
 * CalibratingDay found = day.calibrate(Assumptions.standard());
 * found.drainability(hours(2.5)); // 56.41 °SR, mean 55.62–57.2
 * found.freeShrinkage(hours(2.5)).get(); // 14.28 %, mean 13.4–15.16
 * Scope pressed = Scope.of("abaca").on("big press");
 * found.assumptions().amount("sheet.density-long-beaten", pressed, Kinds.DENSITY); // 869.6 kg/m³
 * }</pre>
 *
 * <p>Everything a fibre does follows from one state of beating, {@code y = 1 - exp(-(k t)^p)}, so all readings are met
 * together: drainability {@code SR_0 + (SR_m - SR_0) y}; the time of a sheet to drain, by the resistance that goes with the
 * drainability; free shrinkage {@code s_0 + (s_1 - s_0) y}, as much of it as there is at the moisture of the air, and of
 * that what the dryer lets through; bulk {@code (1 - y)/rho_0 + y/rho_1}. The squares of the distances from what was read,
 * each over its error, are made least. Of eight readings or more, one that lies far off where all others put it has no say in
 * that and is named in a notice; readings without an error always have theirs. Either tester will do: a stopwatch alone tells the course as well, though less
 * surely what number would be read.
 *
 * <p>What the samples hardly tell, such as where beating would end of a load that was only beaten lightly, is held by what
 * was known before: a value of the store with a band counts as one more reading. The more surely the samples tell it, the
 * less of that is left. The bands of the curves here are those of all values together, for the load of the day. The values
 * are kept with what each goes with ({@link Assumption#leans()}), so that a plan shows the same curves, and wider by what
 * the load of a day may be off those of the studio.
 *
 * <p>The values are kept for the fibre in the beater ({@code beating.rate}, {@code beating.exponent},
 * {@code beating.drainability-unbeaten}, {@code beating.drainability-limit}, {@code shrinkage.initial},
 * {@code shrinkage.limit}), the fibre on the press ({@code sheet.density-unbeaten}, {@code sheet.density-long-beaten}), the
 * fibre ({@code shrinkage.direction-difference}), the vat ({@code drainage.resistance-factor}) and the dryer
 * ({@code restraint.share}). Sheets are taken to begin to dry wetter than they begin to shrink, as they come from any
 * press.
 *
 * @source least squares with what was known as one more reading: Gauss, Theoria combinationis observationum, 1823, recalled,
 *     not looked up
 */
public final class CalibratingDay {
    private static final double CHANCE = 0.05;
    /** Readings that scatter this many times as far as their errors do not follow the laws, or are of different things. */
    private static final double MOST_RATIO = 3;
    /** Beyond so many errors a reading cannot be what it is said to be. */
    private static final double ERRORS = 3;

    private static final int FEWEST = 3;
    private final DayFit fit;
    private final Assumptions assumptions;
    private final List<Assumption> found;
    private final List<Notice> notices;
    private final String text;

    /**
     * A sheet of a sample, measured dry.
     *
     * @param along its length along the mould, or the distance of marks along it
     * @param across the same across the mould
     * @param caliper its caliper
     * @param grammage its conditioned grammage
     */
    public record DriedSheet(
            Reading<Length> along, Reading<Length> across, Reading<Length> caliper, Reading<Grammage> grammage) {
        /**
         * Checks that nothing is missing.
         *
         * @param along its length along the mould, or the distance of marks along it
         * @param across the same across the mould
         * @param caliper its caliper
         * @param grammage its conditioned grammage
         */
        public DriedSheet {
            Objects.requireNonNull(along, "along");
            Objects.requireNonNull(across, "across");
            Objects.requireNonNull(caliper, "caliper");
            Objects.requireNonNull(grammage, "grammage");
        }
    }

    /**
     * What was taken from the beater after a time, and what was read of it.
     *
     * @param time the time of beating, zero for stuff not beaten
     * @param number its drainability, if it was read
     * @param drained how long a sheet of it took to drain, if it was timed
     * @param free a sheet of it dried hanging free, if one was
     * @param held a sheet of it dried held, if one was
     */
    public record Sample(
            Amount<Time> time,
            Optional<Reading<SchopperRiegler>> number,
            Optional<Reading<Time>> drained,
            Optional<DriedSheet> free,
            Optional<DriedSheet> held) {
        /**
         * Checks that nothing is missing.
         *
         * @param time the time of beating, zero for stuff not beaten
         * @param number its drainability, if it was read
         * @param drained how long a sheet of it took to drain, if it was timed
         * @param free a sheet of it dried hanging free, if one was
         * @param held a sheet of it dried held, if one was
         * @throws Refused if the time is out of range
         */
        public Sample {
            time = Kinds.TIME.check(time, "time of beating");
            Objects.requireNonNull(number, "number");
            Objects.requireNonNull(drained, "drained");
            Objects.requireNonNull(free, "free");
            Objects.requireNonNull(held, "held");
        }

        /**
         * Takes a sample of which nothing was read yet.
         *
         * @param time the time of beating, zero for stuff not beaten
         * @return the sample
         * @throws Refused if the time is out of range
         */
        public static Sample after(Quantity<Time> time) {
            return new Sample(
                    Kinds.TIME.check(time, "time of beating"),
                    Optional.empty(),
                    Optional.empty(),
                    Optional.empty(),
                    Optional.empty());
        }

        /**
         * Adds its drainability.
         *
         * @param read the Schopper–Riegler number
         * @return the sample with it
         */
        public Sample withNumber(Reading<SchopperRiegler> read) {
            return new Sample(time, Optional.of(read), drained, free, held);
        }

        /**
         * Adds how long a sheet of it took to drain on the mould, by a stopwatch.
         *
         * @param read the time until the sheen has gone
         * @return the sample with it
         */
        public Sample withDrained(Reading<Time> read) {
            return new Sample(time, number, Optional.of(read), free, held);
        }

        /**
         * Adds a sheet of it that was hung up to dry.
         *
         * @param sheet the sheet
         * @return the sample with it
         */
        public Sample withFree(DriedSheet sheet) {
            return new Sample(time, number, drained, Optional.of(sheet), held);
        }

        /**
         * Adds a sheet of it that was held as it dried.
         *
         * @param sheet the sheet
         * @return the sample with it
         */
        public Sample withHeld(DriedSheet sheet) {
            return new Sample(time, number, drained, free, Optional.of(sheet));
        }

        private double seconds() {
            return time.si();
        }
    }

    private CalibratingDay(
            DayFit fit, Assumptions assumptions, List<Assumption> found, List<Notice> notices, String text) {
        this.fit = fit;
        this.assumptions = assumptions;
        this.found = List.copyOf(found);
        this.notices = List.copyOf(notices);
        this.text = text;
    }

    /**
     * Begins a day.
     *
     * @param fibre the fibre, alone in the beater
     * @param beater the name of the beater
     * @return a builder without samples
     * @throws Refused if the name cannot be one
     */
    public static Builder of(Fibre fibre, String beater) {
        Objects.requireNonNull(fibre, "fibre");
        Objects.requireNonNull(beater, "beater");
        return new Builder(fibre, Name.check(beater, "beater"));
    }

    /**
     * Returns the store with what the day found.
     *
     * @return the assumptions
     */
    public Assumptions assumptions() {
        return assumptions;
    }

    /**
     * Returns what the day found, each with its band and what it was read from.
     *
     * @return an unmodifiable list
     */
    public List<Assumption> found() {
        return found;
    }

    /**
     * Returns what the values should not be used without.
     *
     * @return an unmodifiable list
     */
    public List<Notice> notices() {
        return notices;
    }

    /**
     * Returns the drainability after a time of beating, with the band the day leaves of the curve.
     *
     * @param time the time of beating
     * @return the Schopper–Riegler number
     * @throws Refused if the time is out of range
     */
    public Estimate<SchopperRiegler> drainability(Quantity<Time> time) {
        double t = Kinds.TIME.si(time, "time of beating");
        return sum(Kinds.SCHOPPER_RIEGLER, "SR", (day, values) -> day.number(values, t), 100);
    }

    /**
     * Returns how long a sheet drains, of the depth and strength of stock that were timed.
     *
     * @param time the time of beating
     * @return the time until the sheen has gone; empty if no sheet was timed
     * @throws Refused if the time is out of range
     */
    public Optional<Estimate<Time>> drained(Quantity<Time> time) {
        double t = Kinds.TIME.si(time, "time of beating");
        return fit.finds(DayFit.RESISTANCE)
                ? Optional.of(factor(Kinds.TIME, "s", (day, values) -> day.drained(values, t)))
                : Optional.empty();
    }

    /**
     * Returns what a sheet shrinks that is dried free and whole, as the mean of both directions.
     *
     * @param time the time of beating
     * @return the shrinkage; empty if no sheet was dried free
     * @throws Refused if the time is out of range
     */
    public Optional<Estimate<LinearShrinkage>> freeShrinkage(Quantity<Time> time) {
        double t = Kinds.TIME.si(time, "time of beating");
        return fit.finds(DayFit.SHRINK_LIMIT)
                ? Optional.of(sum(Kinds.LINEAR_SHRINKAGE, "%", (day, values) -> day.shrinkage(values, t), 1))
                : Optional.empty();
    }

    /**
     * Returns the density of a sheet dried held, pressed as those of the day were.
     *
     * @param time the time of beating
     * @return the density; empty if no sheet was dried held
     * @throws Refused if the time is out of range
     */
    public Optional<Estimate<ApparentDensity>> density(Quantity<Time> time) {
        double t = Kinds.TIME.si(time, "time of beating");
        return fit.finds(DayFit.DENSITY_BEATEN)
                ? Optional.of(factor(Kinds.DENSITY, "kg/m3", (day, values) -> day.density(values, t)))
                : Optional.empty();
    }

    private <Q extends Quantity<Q>> Estimate<Q> sum(Kind<Q> kind, String unit, DayFit.Curve curve, double most) {
        double likely = fit.at(curve);
        double half = Normal.FIVE_PERCENT_POINT * fit.error(curve);
        return Estimate.of(
                kind.ofSi(likely, unit),
                kind.ofSi(Math.min(likely, Math.max(0, likely - half)), unit),
                kind.ofSi(Math.max(likely, Math.min(most, likely + half)), unit),
                List.of());
    }

    private <Q extends Quantity<Q>> Estimate<Q> factor(Kind<Q> kind, String unit, DayFit.Curve curve) {
        double likely = fit.at(curve);
        double half = Math.exp(Normal.FIVE_PERCENT_POINT * fit.error((day, values) -> Math.log(curve.at(day, values))));
        return Estimate.of(
                kind.ofSi(likely, unit), kind.ofSi(likely / half, unit), kind.ofSi(likely * half, unit), List.of());
    }

    @Override
    public String toString() {
        return text;
    }

    /** Puts a day together. Each method returns this builder. */
    public static final class Builder {
        private final Fibre fibre;
        private final String beater;
        private final List<Sample> samples = new ArrayList<>();
        private Amount<Share> filled = Kinds.SHARE.of(100, "%");
        private String vat = "";
        private @Nullable Amount<Length> depth;
        private @Nullable Amount<FibreConcentration> stock;
        private @Nullable Water water;
        private @Nullable Amount<Length> wetAlong;
        private @Nullable Amount<Length> wetAcross;
        private String press = "";
        private @Nullable Amount<SheetPressure> pressure;
        private @Nullable Dryer dryer;
        private Air air = Air.reference();

        private Builder(Fibre fibre, String beater) {
            this.fibre = fibre;
            this.beater = beater;
        }

        /**
         * Says how full the beater was. Smaller loads are beaten faster, and the values are those of a full one.
         *
         * @param share the fibre over that of a full load, above zero; a full one if nothing is said
         * @return this builder
         * @throws Refused if it is out of range
         */
        public Builder filled(Quantity<Share> share) {
            Kinds.SHARE.siAboveZero(share, "fibre over that of a full load");
            filled = Kinds.SHARE.check(share, "fibre over that of a full load");
            return this;
        }

        /**
         * Says how sheets were timed: all of them of the same depth of the same stock.
         *
         * @param called the name of the vat
         * @param deep the depth of stock at the start
         * @param perLitre oven-dry fibre in a litre of that stock
         * @param temperature the temperature of the vat
         * @return this builder
         * @throws Refused if a value is out of range
         */
        public Builder timed(
                String called,
                Quantity<Length> deep,
                Quantity<FibreConcentration> perLitre,
                Quantity<Temperature> temperature) {
            Objects.requireNonNull(called, "called");
            vat = Name.check(called, "vat");
            depth = Kinds.LENGTH.check(deep, "depth of stock");
            stock = Kinds.FIBRE_CONCENTRATION.check(perLitre, "fibre per litre of stock");
            water = Water.at(temperature);
            return this;
        }

        /**
         * Says how large all sheets were when wet: what the deckle gave, or how far apart marks were set.
         *
         * @param along along the mould
         * @param across across the mould
         * @return this builder
         * @throws Refused if a length is not above zero
         */
        public Builder wet(Quantity<Length> along, Quantity<Length> across) {
            Kinds.LENGTH.siAboveZero(along, "wet length along");
            Kinds.LENGTH.siAboveZero(across, "wet length across");
            wetAlong = Kinds.LENGTH.check(along, "wet length along");
            wetAcross = Kinds.LENGTH.check(across, "wet length across");
            return this;
        }

        /**
         * Says how all sheets were pressed.
         *
         * @param called the name of the press
         * @param last the last pressure on the sheets
         * @return this builder
         * @throws Refused if the pressure is not above zero
         */
        public Builder pressed(String called, Quantity<SheetPressure> last) {
            Objects.requireNonNull(called, "called");
            press = Name.check(called, "press");
            Kinds.SHEET_PRESSURE.siAboveZero(last, "pressure on the sheet");
            pressure = Kinds.SHEET_PRESSURE.check(last, "pressure on the sheet");
            return this;
        }

        /**
         * Says what held the sheets that were not hung up.
         *
         * @param on the dryer
         * @return this builder
         */
        public Builder held(Dryer on) {
            dryer = Objects.requireNonNull(on, "on");
            return this;
        }

        /**
         * Says in what air the sheets lay when they were measured.
         *
         * @param of the air; 23 °C and 50 % relative humidity if nothing is said
         * @return this builder
         */
        public Builder measuredIn(Air of) {
            air = Objects.requireNonNull(of, "of");
            return this;
        }

        /**
         * Adds samples.
         *
         * @param more the samples, in any order
         * @return this builder
         */
        public Builder add(Sample... more) {
            Objects.requireNonNull(more, "more");
            samples.addAll(List.of(more));
            return this;
        }

        /**
         * Works the day out.
         *
         * @param known what is taken without it; a store that holds a day already counts its readings too
         * @return what was found
         * @throws Refused if the samples are too few, something they need is not said, or they contradict each other
         */
        public CalibratingDay calibrate(Assumptions known) {
            Objects.requireNonNull(known, "known");
            return new Working(this, known).done();
        }

        @Override
        public String toString() {
            return samples.size() + " samples of " + fibre + " in " + beater;
        }
    }

    /** One working out of a day. */
    private static final class Working {
        private final Builder day;
        private final Assumptions known;
        private final List<Sample> samples;
        private final List<Notice> notices = new ArrayList<>();
        private final Scope inBeater;
        private final Scope inVat;
        private final Scope onPress;
        private final DayFit fit;

        Working(Builder day, Assumptions known) {
            this.day = day;
            this.known = known;
            samples = day.samples.stream()
                    .sorted(Comparator.comparingDouble(Sample::seconds))
                    .toList();
            inBeater = on(day.fibre.scope(), day.beater);
            inVat = day.vat.isEmpty() ? Scope.GENERAL : Scope.at(day.vat);
            onPress = on(day.fibre.scope(), day.press);
            check();
            fit = new DayFit(known, conditions(known));
            ask();
        }

        private static Scope on(Scope scope, String place) {
            return place.isEmpty() ? scope : scope.on(place);
        }

        private boolean has(Function<Sample, Optional<?>> what) {
            return samples.stream().anyMatch(sample -> what.apply(sample).isPresent());
        }

        // ------------------------------------------------------------------------------------ before

        private void check() {
            long times = samples.stream()
                    .filter(sample ->
                            sample.number().isPresent() || sample.drained().isPresent())
                    .mapToDouble(Sample::seconds)
                    .distinct()
                    .count();
            if (times < FEWEST) {
                throw Refused.of(
                        "calibrating-day.too-few",
                        "calibrating day: a drainability or a time to drain after " + times
                                + (times == 1 ? " time" : " times") + " of beating given; " + FEWEST
                                + " or more are wanted, better six. Take samples from before beating to the longest you"
                                + " beat.",
                        "given",
                        times,
                        "wanted",
                        FEWEST);
            }
            if (has(Sample::drained)) {
                require(
                        day.depth,
                        "how sheets were timed: the vat, the depth and strength of stock and its temperature");
            }
            if (has(Sample::free) || has(Sample::held)) {
                require(day.wetAlong, "how large the sheets were when wet");
            }
            if (has(Sample::held)) {
                require(day.pressure, "how the sheets were pressed");
                require(day.dryer, "what held the sheets that were not hung up");
            }
            rises("drainability", Sample::number);
            rises("time to drain", Sample::drained);
            for (Sample sample : samples) {
                sample.free().ifPresent(sheet -> hasNotGrown(sample, sheet));
                sample.held().ifPresent(sheet -> hasNotGrown(sample, sheet));
                if (sample.free().isPresent() && sample.held().isPresent()) {
                    isHeldBack(sample, sample.free().get(), sample.held().get());
                }
            }
        }

        private static void require(@Nullable Object said, String what) {
            if (said == null) {
                throw Refused.of(
                        "calibrating-day.unsaid",
                        "calibrating day: it is not said " + what + ", which its readings need. Add it.",
                        "needs",
                        what);
            }
        }

        private <Q extends Quantity<Q>> void rises(String what, Function<Sample, Optional<Reading<Q>>> of) {
            List<Sample> read = samples.stream()
                    .filter(sample -> of.apply(sample).isPresent())
                    .toList();
            if (read.size() < 2) {
                return;
            }
            Sample first = read.get(0);
            Sample last = read.get(read.size() - 1);
            Reading<Q> before = of.apply(first).orElseThrow();
            Reading<Q> after = of.apply(last).orElseThrow();
            if (!(after.value().si() > before.value().si())) {
                throw Refused.of(
                        "calibrating-day.no-rise",
                        what + ": " + before.value() + " after " + first.time() + " and " + after.value() + " after "
                                + last.time() + " given; it rises with beating. See whether samples were changed over,"
                                + " or are of Canadian freeness, which falls.",
                        "quantity",
                        what,
                        "first",
                        before.value().toString(),
                        "last",
                        after.value().toString());
            }
        }

        private void hasNotGrown(Sample sample, DriedSheet sheet) {
            hasNotGrown(sample, "along", sheet.along(), Objects.requireNonNull(day.wetAlong));
            hasNotGrown(sample, "across", sheet.across(), Objects.requireNonNull(day.wetAcross));
        }

        private static void hasNotGrown(Sample sample, String side, Reading<Length> dry, Amount<Length> wet) {
            if (dry.value().si() > wet.si() + ERRORS * dry.error().si()) {
                throw Refused.of(
                        "calibrating-day.grew",
                        "sheet after " + sample.time() + " of beating: " + dry + " " + side + " when dry given, "
                                + wet
                                + " when wet; a sheet does not grow as it dries. See whether along and across were"
                                + " changed over.",
                        "time",
                        sample.time().toString(),
                        "dry",
                        dry.value().toString(),
                        "wet",
                        wet.toString());
            }
        }

        private void isHeldBack(Sample sample, DriedSheet free, DriedSheet held) {
            double freely = free.along().value().si() + free.across().value().si();
            double heldBack = held.along().value().si() + held.across().value().si();
            double error = Math.hypot(
                    Math.hypot(free.along().error().si(), free.across().error().si()),
                    Math.hypot(held.along().error().si(), held.across().error().si()));
            if (freely > heldBack + ERRORS * error && freely > heldBack * (1 + 1e-9)) {
                throw Refused.of(
                        "calibrating-day.free-larger",
                        "sheets after " + sample.time() + " of beating: the one dried free measures "
                                + free.along().value() + " by " + free.across().value() + ", the one dried held "
                                + held.along().value() + " by " + held.across().value()
                                + "; what is held shrinks less. See whether the two were changed over.",
                        "time",
                        sample.time().toString(),
                        "free",
                        free.along().value().toString(),
                        "held",
                        held.along().value().toString());
            }
        }

        private DayFit.Conditions conditions(Assumptions known) {
            Water water = day.water == null ? Water.room() : day.water;
            double moisture = SorptionModel.from(known, Furnish.of(day.fibre))
                    .fromWetSide()
                    .ratio(day.air)
                    .si();
            return new DayFit.Conditions(
                    BeatingLaw.gain(day.filled.si(), 1, known.si("beater.load-range-low", Scope.GENERAL)),
                    new DrainageLaw(
                            known.si("drainage.end-share", inVat),
                            known.si("drainage.mat-retention", inVat),
                            known.si("drainage.wire-resistance", inVat),
                            known.si("drainage.suction-factor", inVat)),
                    day.depth == null ? Double.NaN : day.depth.si(),
                    day.stock == null ? Double.NaN : day.stock.si(),
                    water.viscosity().si(),
                    water.density().si(),
                    known.si("freeness.sr-water-reading", inVat),
                    known.si("drainage.resistance-exponent", inVat),
                    day.wetAlong == null ? Double.NaN : day.wetAlong.si(),
                    day.wetAcross == null ? Double.NaN : day.wetAcross.si(),
                    Shrinkage.share(moisture, known.si("shrinkage.onset", inBeater)),
                    known.si("restraint.share", Scope.of(Restraint.HUNG.subject())),
                    day.pressure == null ? Double.NaN : day.pressure.si(),
                    new DensityLaw.Pressing(
                            known.si("sheet.density-exponent", onPress),
                            known.si("sheet.density-reference-pressure", onPress),
                            known.si("sheet.density-least-pressure", onPress),
                            known.si("sheet.density-saturation-pressure", onPress)),
                    new CaliperLaw(known.si("sheet.thinnest", Scope.GENERAL)));
        }

        // ------------------------------------------------------------------------------------ what is found

        private void ask() {
            fit.find(DayFit.UNBEATEN, inBeater, 14);
            fit.find(DayFit.LIMIT, inBeater, 90);
            fit.find(DayFit.RATE, inBeater, 0.2 / 3600);
            fit.find(DayFit.EXPONENT, inBeater, 1);
            if (has(Sample::drained)) {
                fit.find(DayFit.RESISTANCE, inVat, 3e9);
            }
            if (has(Sample::free) || has(Sample::held)) {
                fit.find(DayFit.DIRECTIONS, day.fibre.scope(), 0);
                double least = 1;
                double most = 0;
                for (Sample sample : samples) {
                    if (sample.free().isPresent()) {
                        DriedSheet sheet = sample.free().get();
                        double shrunk = 1
                                - sheet.along().value().si()
                                        / Objects.requireNonNull(day.wetAlong).si();
                        least = Math.min(least, shrunk);
                        most = Math.max(most, shrunk);
                    }
                }
                fit.find(DayFit.SHRINK_INITIAL, inBeater, Math.max(0, Math.min(least, most)));
                fit.find(DayFit.SHRINK_LIMIT, inBeater, Math.max(0.01, most));
            }
            if (has(Sample::held)) {
                Dryer dryer = Objects.requireNonNull(day.dryer);
                fit.find(DayFit.HELD, Scope.of(dryer.name(), dryer.restraint()), 0.9);
                double dense = samples.stream()
                        .flatMap(sample -> sample.held().stream())
                        .mapToDouble(sheet -> dense(sheet))
                        .average()
                        .orElseThrow();
                fit.find(DayFit.DENSITY_UNBEATEN, onPress, dense);
                fit.find(DayFit.DENSITY_BEATEN, onPress, dense);
            }
            for (Sample sample : samples) {
                double time = sample.seconds();
                sample.number()
                        .ifPresent(read -> fit.readNumber(
                                time, read.value().si(), read.error().si()));
                sample.drained().ifPresent(read -> {
                    // Refuses what is quicker than the bare cover.
                    DrainageModel.from(known, inVat)
                            .resistance(
                                    read,
                                    Objects.requireNonNull(day.depth),
                                    Objects.requireNonNull(day.stock),
                                    Objects.requireNonNull(day.water));
                    fit.readDrained(time, read.value().si(), read.error().si());
                });
                sample.free().ifPresent(sheet -> {
                    fit.readFree(
                            time,
                            true,
                            sheet.along().value().si(),
                            sheet.along().error().si());
                    fit.readFree(
                            time,
                            false,
                            sheet.across().value().si(),
                            sheet.across().error().si());
                });
                sample.held().ifPresent(sheet -> {
                    fit.readHeld(
                            time,
                            true,
                            sheet.along().value().si(),
                            sheet.along().error().si());
                    fit.readHeld(
                            time,
                            false,
                            sheet.across().value().si(),
                            sheet.across().error().si());
                    fit.readCaliper(
                            time,
                            sheet.grammage().value().si(),
                            sheet.caliper().value().si(),
                            sheet.caliper().value().si()
                                    * Math.hypot(
                                            sheet.caliper().relativeError(),
                                            sheet.grammage().relativeError()));
                });
            }
        }

        /** The density of a sheet by scale and micrometer. */
        private double dense(DriedSheet sheet) {
            double w = Kinds.GRAMMAGE.siWithin(
                    sheet.grammage().value(),
                    "grammage of the measured sheet",
                    known.si("sheet.grammage-thin", Scope.GENERAL),
                    2);
            double thick = Kinds.LENGTH.siAboveZero(sheet.caliper().value(), "caliper of the measured sheet");
            double solid = new CaliperLaw(known.si("sheet.thinnest", Scope.GENERAL)).solid(thick);
            double density = w / (Double.isNaN(solid) ? thick : solid);
            double least = known.si("sheet.density-doubtful-low", onPress) / 2;
            double most = known.si("sheet.density-most", onPress);
            SheetNotices.requireDensity(density, Double.isNaN(solid), least, most);
            return density;
        }

        CalibratingDay done() {
            fit.solve();
            if (scatters()) {
                for (DayFit.Left one : fit.leaveOut(MOST_RATIO)) {
                    notices.add(Notice.warning(
                            "calibrating-day.left-out",
                            "The " + one.what() + " lies " + Units.fourDigits(one.errors())
                                    + " of its errors from where all other readings put it. It was left out, and the values"
                                    + " are found from the other " + fit.count() + ". Look for a slip in it.",
                            "reading",
                            one.what(),
                            "errors",
                            one.errors(),
                            "readings",
                            fit.count()));
                }
            }
            if (fit.ratio() > MOST_RATIO) {
                throw Refused.of(
                        "calibrating-day.contradiction",
                        "calibrating day: the " + fit.count() + " readings lie " + Units.fourDigits(fit.ratio())
                                + " times as far from any course of beating as their errors allow, furthest the "
                                + fit.worst() + ". Look for a slip there, or whether all samples are of one load.",
                        "readings",
                        fit.count(),
                        "ratio",
                        fit.ratio(),
                        "worst",
                        fit.worst());
            }
            if (!fit.isSettled()) {
                throw Refused.of(
                        "calibrating-day.untold",
                        "calibrating day: the " + fit.count() + " readings do not tell the "
                                + fit.ids().size()
                                + " values asked of them, " + String.join(", ", fit.ids())
                                + ", and too little is known of them without. Take samples after more times, from before"
                                + " beating to where it ends.",
                        "readings",
                        fit.count(),
                        "values",
                        fit.ids().size());
            }
            if (!(fit.value(DayFit.LIMIT) > fit.value(DayFit.UNBEATEN))) {
                throw Refused.of(
                        "beating.limit-below-start",
                        "limit of beating: " + Units.fourDigits(fit.value(DayFit.LIMIT)) + " °SR found, not above the"
                                + " unbeaten " + Units.fourDigits(fit.value(DayFit.UNBEATEN))
                                + " °SR. Take samples further apart.",
                        "limit",
                        Units.fourDigits(fit.value(DayFit.LIMIT)),
                        "start",
                        Units.fourDigits(fit.value(DayFit.UNBEATEN)));
            }
            if (scatters()) {
                fit.widen(fit.ratio());
                notices.add(Notice.warning(
                        "calibrating-day.scatter",
                        "The " + fit.count() + " readings lie " + Units.fourDigits(fit.ratio())
                                + " times as far from the course of beating as their errors allow, furthest the "
                                + fit.worst() + "; the bands are widened as much.",
                        "readings",
                        fit.count(),
                        "ratio",
                        fit.ratio(),
                        "worst",
                        fit.worst()));
            }
            fit.atBound()
                    .forEach(id -> notices.add(Notice.note(
                            "calibrating-day.at-bound",
                            id + ": the readings by themselves would take it beyond " + Units.fourDigits(fit.value(id))
                                    + ", which it cannot pass; it stands there.",
                            "assumption",
                            id,
                            "bound",
                            fit.value(id))));
            bulk();
            List<Assumption> rows = rows();
            return new CalibratingDay(
                    fit,
                    known.withAll(rows),
                    rows,
                    notices,
                    samples.size() + " samples of " + day.fibre + (day.beater.isEmpty() ? "" : " in " + day.beater)
                            + ", " + rows.size() + " values found");
        }

        /** Whether chance would hardly let the readings lie as far from the course as they do. */
        private boolean scatters() {
            return fit.degrees() > 0
                    && ChiSquaredDistribution.of(fit.degrees()).survivalProbability(fit.chi()) < CHANCE;
        }

        /** Nothing in the table holds what drying free does to bulk, so it is told and left there. */
        private void bulk() {
            double sum = 0;
            int count = 0;
            for (Sample sample : samples) {
                if (sample.free().isPresent() && sample.held().isPresent()) {
                    DriedSheet free = sample.free().get();
                    DriedSheet held = sample.held().get();
                    sum += Math.log(free.caliper().value().si()
                            / held.caliper().value().si()
                            * held.grammage().value().si()
                            / free.grammage().value().si());
                    count++;
                }
            }
            if (count > 0) {
                double ratio = Math.exp(sum / count);
                notices.add(Notice.note(
                        "calibrating-day.free-bulk",
                        "Sheets dried free came out " + Units.fourDigits(ratio)
                                + " times as bulky as those dried held. The densities found are of sheets dried held; keep"
                                + " the number for sheets that are not.",
                        "ratio",
                        ratio));
            }
        }

        private List<Assumption> rows() {
            Map<String, DayFit.Told> told = fit.told(this::besides);
            Map<String, List<Assumption.Lean>> onConditions = onConditions();
            Source source = new Source("measured here, a calibrating day: " + samples.size() + " samples to "
                    + samples.get(samples.size() - 1).time() + ", " + fit.count() + " readings");
            List<Assumption> rows = new ArrayList<>();
            for (String id : fit.ids()) {
                Scope scope = fit.scope(id);
                Assumption pattern = pattern(id);
                DayFit.Told of = Objects.requireNonNull(told.get(id));
                double unit = Units.toSi(1, pattern.unit());
                double likely = fit.value(id) / unit;
                double half = Normal.FIVE_PERCENT_POINT * of.error();
                double low;
                double high;
                if (fit.isFactor(id)) {
                    low = likely * Math.exp(-half);
                    high = likely * Math.exp(half);
                } else if (pattern.shape() == Shape.LOG_NORMAL) {
                    double part = half / fit.value(id);
                    low = likely * Math.exp(-part);
                    high = likely * Math.exp(part);
                } else {
                    low = likely - half / unit;
                    high = likely + half / unit;
                }
                List<Assumption.Lean> leans = new ArrayList<>();
                of.slopes()
                        .forEach((other, slope) -> leans.add(
                                Assumption.Lean.of(other, fit.scope(other), slope * onShape(id) / onShape(other))));
                leans.addAll(onConditions.getOrDefault(id, List.of()));
                Assumption row = pattern.with(
                                scope,
                                likely,
                                Math.min(likely, Math.max(pattern.least(), low)),
                                Math.max(likely, Math.min(pattern.most(), high)),
                                Basis.MEASURED_HERE,
                                source)
                        .leaning(leans.stream()
                                .filter(lean -> Double.isFinite(lean.below()) && Double.isFinite(lean.above()))
                                .toList());
                rows.add(row);
                known.find(id, scope)
                        .filter(before -> before.low() < before.high())
                        .filter(before -> row.likely() < before.low() || row.likely() > before.high())
                        .ifPresent(before -> notices.add(Notice.note(
                                "calibration.unexpected",
                                row.key() + ": measured as " + Units.fourDigits(row.likely()) + ", outside the "
                                        + Calibration.band(before)
                                        + " taken until now. Look at the readings once more.",
                                "assumption",
                                row.key(),
                                "found",
                                row.likely(),
                                "known",
                                Calibration.band(before))));
            }
            return List.copyOf(rows);
        }

        private Assumption pattern(String id) {
            return known.find(id, fit.scope(id)).or(() -> known.pattern(id)).orElseThrow();
        }

        /** How fast a value moves on the scale of its distribution, by that of the search. */
        private double onShape(String id) {
            Assumption pattern = pattern(id);
            double unit = Units.toSi(1, pattern.unit());
            double value = fit.value(id);
            double step = 1e-5 * value;
            double move = fit.isFactor(id) ? Math.log((value + step) / (value - step)) : 2 * step;
            return (pattern.shape().scaled((value + step) / unit)
                            - pattern.shape().scaled((value - step) / unit))
                    / move;
        }

        /**
         * What no reading of the day makes surer, on the scale of the search: by how much the day's making is off those of the
         * studio, and what the eye sees of a depth.
         */
        private double besides(String id) {
            Assumption pattern = pattern(id);
            double making = known.makingHalf(pattern.with(
                            fit.scope(id),
                            pattern.likely(),
                            pattern.low(),
                            pattern.high(),
                            Basis.MEASURED_HERE,
                            pattern.source()))
                    / Normal.FIVE_PERCENT_POINT
                    / onShape(id);
            double surest = id.equals(DayFit.RESISTANCE)
                    ? Math.log1p(known.si("drainage.stopwatch-surest", Scope.GENERAL)) / Normal.FIVE_PERCENT_POINT
                    : 0;
            double error = fit.error(id);
            return Double.isFinite(making)
                    ? Math.sqrt(making * making + Math.max(0, surest * surest - error * error))
                    : 0;
        }

        /** What each value goes with of what the laws had to take as it stands. */
        private Map<String, List<Assumption.Lean>> onConditions() {
            Set<Assumption> heard = Collections.newSetFromMap(new IdentityHashMap<>());
            conditions(known.heardBy(heard::add));
            Map<String, List<Assumption.Lean>> leans = new HashMap<>();
            heard.stream()
                    .filter(other -> other.role() == Role.PHYSICAL && other.low() < other.high())
                    .sorted(Comparator.comparing(Assumption::key))
                    .forEach(other -> {
                        DayFit low = under(other, other.low());
                        DayFit high = under(other, other.high());
                        fit.unsure(low, high);
                        for (String id : fit.ids()) {
                            Assumption pattern = pattern(id);
                            double below = onShape(pattern, low, id);
                            double above = onShape(pattern, high, id);
                            double told = 2 * Normal.FIVE_PERCENT_POINT * fit.error(id) * onShape(id);
                            if (Math.abs(above - below) > Calibration.LEAST_LEAN * told) {
                                leans.computeIfAbsent(id, one -> new ArrayList<>())
                                        .add(Calibration.lean(other, below, onShape(pattern, fit, id), above));
                            }
                        }
                    });
            return leans;
        }

        private DayFit under(Assumption other, double value) {
            return fit.under(conditions(known.with(other.given(other.scope(), value))));
        }

        private double onShape(Assumption pattern, DayFit there, String id) {
            return pattern.shape().scaled(there.value(id) / Units.toSi(1, pattern.unit()));
        }
    }
}
