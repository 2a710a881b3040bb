package org.papermath.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Time;
import org.papermath.equation.Additives;
import org.papermath.evidence.Assumption;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Bands;
import org.papermath.evidence.Estimate;
import org.papermath.evidence.Notice;
import org.papermath.evidence.Scope;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Dose;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Share;
import org.papermath.quantity.Units;

/**
 * Surface sizing in a bath: dry sheets are dipped, pressed and dried again. Immutable.
 *
 * <p>Strength is dry size over bath by mass; pick-up is bath taken up over the dry sheet as weighed, after the pressing
 * that follows. Size on paper = pick-up × strength.
 *
 * @param strength dry size over bath
 * @param pickUp bath over dry sheet, above zero
 */
public record SurfaceSize(Amount<Share> strength, Amount<Dimensionless> pickUp) {
    /** Gelatine in old writing papers, dry size over paper. */
    private static final double OLD_LOW = 0.026;

    private static final double OLD_HIGH = 0.058;
    /** The least and the most that the trial of pick-up against beating saw, and its hours of a mill beater, s. */
    private static final double LEAST_SEEN = 0.02;

    private static final double MOST_SEEN = 0.07;
    private static final double TRIAL_FROM = 8 * 3600.0;
    private static final double TRIAL_TO = 35 * 3600.0;
    /** Mean gelatine on paper of the trial behind the strength. */
    private static final double MIDDLE_SEEN = 0.042;

    private static final String STRENGTH = "size.strength-ratio";
    private static final String STRENGTH_SLOPE = "size.strength-slope";

    private static final String UNBEATEN = "size.pick-up-unbeaten";
    private static final String FALL = "size.pick-up-fall";
    private static final String MILL_HOUR = "beating.mill-hour";
    private static final Scope RAG = Scope.of("cotton-rag");

    /**
     * Checks bath and pick-up.
     *
     * @param strength dry size over bath, above zero
     * @param pickUp bath over dry sheet, above zero and at most 5
     * @throws Refused if a value is out of range
     */
    public SurfaceSize {
        Kinds.SHARE.siAboveZero(strength, "strength of the size bath");
        Kinds.NUMBER.siAboveZero(pickUp, "pick-up of the sheet");
        Kinds.NUMBER.siWithin(pickUp, "pick-up of the sheet", 0, 5);
    }

    /**
     * Makes the sizing from bath and pick-up.
     *
     * @param strength dry size over bath, above zero
     * @param pickUp bath over dry sheet, above zero and at most 5
     * @return the sizing
     * @throws Refused if a value is out of range
     */
    public static SurfaceSize of(Quantity<Share> strength, Quantity<Dimensionless> pickUp) {
        return new SurfaceSize(
                Kinds.SHARE.check(strength, "strength of the size bath"),
                Kinds.NUMBER.check(pickUp, "pick-up of the sheet"));
    }

    /**
     * Makes the sizing from one sheet weighed before the bath and out of the press after it:
     * {@code pick-up = (wet - dry)/dry}.
     *
     * @param strength dry size over bath, above zero
     * @param dry the sheet before, above zero
     * @param wet the sheet out of the press, more than before
     * @return the sizing
     * @throws Refused if a value is out of range
     */
    public static SurfaceSize weighed(Quantity<Share> strength, Quantity<Mass> dry, Quantity<Mass> wet) {
        double before = Kinds.MASS.siAboveZero(dry, "sheet before the bath");
        double after = Kinds.MASS.si(wet, "sheet after the bath");
        if (!(after > before)) {
            throw Refused.of(
                    "size.no-pick-up",
                    "size: " + dry + " before and " + wet + " after the bath given; the sheet must come out heavier.",
                    "before",
                    dry.toString(),
                    "after",
                    wet.toString());
        }
        return of(strength, Kinds.NUMBER.ofSi((after - before) / before, "%"));
    }

    /**
     * Makes the usual gelatine sizing of the shipped table.
     *
     * @return the sizing
     */
    public static SurfaceSize gelatine() {
        return gelatine(Assumptions.standard());
    }

    /**
     * Makes the usual gelatine sizing of a table: its bath, and the pick-up that leaves the usual size on paper. A
     * litre of the bath is taken for a kilogram.
     *
     * @param assumptions where {@code size.bath-strength} and {@code size.pick-up} are looked up
     * @return the sizing
     */
    public static SurfaceSize gelatine(Assumptions assumptions) {
        Objects.requireNonNull(assumptions, "assumptions");
        double strength = assumptions.si("size.bath-strength", Scope.GENERAL) / 1000;
        double onPaper = assumptions.si("size.pick-up", Scope.GENERAL);
        return of(Kinds.SHARE.ofSi(strength, "%"), Kinds.NUMBER.ofSi(onPaper / strength, "%"));
    }

    /** Gelatine sizing as the beating of the stock lets the sheet take it up. */
    public sealed interface Beaten permits FoundBeaten {
        /** {@return bath and pick-up, at the likely values} */
        SurfaceSize sizing();

        /** {@return dry gelatine over the dry sheet, with its band} */
        Estimate<Dose> onPaper();

        /** {@return what it should not be read without} */
        List<Notice> notices();
    }

    private record FoundBeaten(SurfaceSize sizing, Estimate<Dose> onPaper, List<Notice> notices) implements Beaten {
        @Override
        public String toString() {
            return onPaper + " of gelatine on paper";
        }
    }

    /**
     * Makes the gelatine sizing of rag beaten for some time, by the shipped assumptions.
     *
     * @param beating the hours in the studio's beater
     * @return the sizing
     * @throws Refused if the time is out of range
     */
    public static Beaten gelatine(Quantity<Time> beating) {
        return gelatine(Assumptions.standard(), beating);
    }

    /**
     * Makes the gelatine sizing of rag beaten for some time: the longer the stock was beaten, the denser the sheet and
     * the less it takes up, {@code p = p0 - k t} with t in hours of a mill beater, kept from 2 to 7 %, between which it
     * was seen. Known from one trial of 8 to 35 hours; the strength of its bath was not given.
     *
     * @param assumptions the store
     * @param beating the hours in the studio's beater; {@code beating.mill-hour} of rag turns them into mill hours
     * @return the sizing in the usual bath
     * @throws Refused if the time is out of range
     * @source Sindall, The Manufacture of Paper, 1908, ch. IX
     */
    public static Beaten gelatine(Assumptions assumptions, Quantity<Time> beating) {
        Objects.requireNonNull(assumptions, "assumptions");
        double studio = Kinds.TIME.si(beating, "beating time");
        Estimate<Dose> onPaper = Bands.of(
                assumptions,
                List.of(Bands.Use.of(Scope.GENERAL, UNBEATEN, FALL), Bands.Use.of(RAG, MILL_HOUR)),
                store -> Kinds.DOSE.ofSi(pickUpAfter(store, studio), "%"));
        double strength = assumptions.si("size.bath-strength", Scope.GENERAL) / 1000;
        double mill = studio / assumptions.si(MILL_HOUR, RAG);
        List<Notice> notices = new ArrayList<>();
        if (mill < TRIAL_FROM || mill > TRIAL_TO) {
            notices.add(Notice.warning(
                    "size.beyond-trial",
                    "Beaten for " + beating + ", about " + Kinds.TIME.ofSi(mill, "h") + " of a mill beater: the trial"
                            + " behind this ran from 8 to 35 h. Weigh a sheet before and after the bath.",
                    "given",
                    beating.toString(),
                    "least",
                    "8 h",
                    "most",
                    "35 h"));
        }
        notices.add(
                Notice.note(
                        "size.uncalibrated",
                        "From one trial in a mill beater, bath not stated; weigh a sheet before the bath and out of the press."));
        return new FoundBeaten(
                of(
                        Kinds.SHARE.ofSi(strength, "%"),
                        Kinds.NUMBER.ofSi(onPaper.likely().si() / strength, "%")),
                onPaper,
                List.copyOf(notices));
    }

    private static double pickUpAfter(Assumptions store, double studioSeconds) {
        return Additives.gelatinePickUp(
                studioSeconds / store.si(MILL_HOUR, RAG),
                store.si(UNBEATEN, Scope.GENERAL),
                store.si(FALL, Scope.GENERAL),
                LEAST_SEEN,
                MOST_SEEN);
    }

    /**
     * Returns what a pick-up weighed on stock of one beating should not be used on stock of another without knowing, by
     * the shipped assumptions.
     *
     * @param weighedAfter the beating time of the sheet that was weighed, in the studio's beater
     * @param usedAfter the beating time of the sheets to size
     * @return a warning where the line of {@link #gelatine(Assumptions, Quantity)} differs by more than a tenth
     * @throws Refused if a time is out of range
     */
    public static List<Notice> carriedOver(Quantity<Time> weighedAfter, Quantity<Time> usedAfter) {
        return carriedOver(Assumptions.standard(), weighedAfter, usedAfter);
    }

    /**
     * Returns what a pick-up weighed on stock of one beating should not be used on stock of another without knowing.
     *
     * @param assumptions the store
     * @param weighedAfter the beating time of the sheet that was weighed, in the studio's beater
     * @param usedAfter the beating time of the sheets to size
     * @return a warning where the line of {@link #gelatine(Assumptions, Quantity)} differs by more than a tenth
     * @throws Refused if a time is out of range
     */
    public static List<Notice> carriedOver(
            Assumptions assumptions, Quantity<Time> weighedAfter, Quantity<Time> usedAfter) {
        Objects.requireNonNull(assumptions, "assumptions");
        double first = pickUpAfter(assumptions, Kinds.TIME.si(weighedAfter, "beating time of the weighed sheet"));
        double second = pickUpAfter(assumptions, Kinds.TIME.si(usedAfter, "beating time of the stock"));
        if (Math.abs(second / first - 1) <= 0.1) {
            return List.of();
        }
        return List.of(Notice.warning(
                "size.other-beating",
                "The pick-up was weighed on stock beaten for " + weighedAfter + " and is used for " + usedAfter
                        + ": longer beaten paper takes up less size, in a published trial 6 % after 8 hours of a mill"
                        + " beater and 2 % after 35. Weigh a sheet of this stock.",
                "weighed",
                weighedAfter.toString(),
                "used",
                usedAfter.toString()));
    }

    /**
     * Returns how long sized paper is left before it is used ({@code schedule.size-cure}).
     *
     * @param assumptions the store
     * @return the time with its usual range
     */
    public static Estimate<Time> curing(Assumptions assumptions) {
        Objects.requireNonNull(assumptions, "assumptions");
        Assumption days = assumptions.get("schedule.size-cure", Scope.GENERAL);
        return Estimate.of(
                Kinds.TIME.ofSi(days.likelySi(), "d"),
                Kinds.TIME.ofSi(days.lowSi(), "d"),
                Kinds.TIME.ofSi(days.highSi(), "d"),
                List.of());
    }

    /**
     * Returns the alum that goes into a gelatine bath, by the shipped assumptions. It makes the paper acid.
     *
     * @param dryGelatine the dry gelatine in the bath
     * @return the alum
     * @throws Refused if the mass is out of range
     */
    public static Amount<Mass> alumFor(Quantity<Mass> dryGelatine) {
        return alumFor(Assumptions.standard(), dryGelatine);
    }

    /**
     * Returns the alum that goes into a gelatine bath ({@code size.alum}). It makes the paper acid.
     *
     * @param assumptions where the share is looked up
     * @param dryGelatine the dry gelatine in the bath
     * @return the alum
     * @throws Refused if the mass is out of range
     */
    public static Amount<Mass> alumFor(Assumptions assumptions, Quantity<Mass> dryGelatine) {
        Objects.requireNonNull(assumptions, "assumptions");
        return Kinds.MASS.ofSi(
                Kinds.MASS.si(dryGelatine, "dry gelatine") * assumptions.si("size.alum", Scope.GENERAL), "g");
    }

    /**
     * Returns the dry size on the paper, over the dry sheet.
     *
     * @return the dose
     */
    public Amount<Dose> onPaper() {
        return Kinds.DOSE.ofSi(strength.si() * pickUp.si(), "%");
    }

    /**
     * Returns how much stronger gelatine makes the sheet, by the shipped assumptions.
     *
     * @return strength of the sized over that of the unsized sheet
     */
    public Estimate<Dimensionless> strengthRatio() {
        return strengthRatio(Assumptions.standard());
    }

    /**
     * Returns how much stronger gelatine makes the sheet: s = s_m + k (g − 4.2 %) with g the gelatine on paper, and
     * never below 1. Seen on rag that took up 2 to 6.2 %; as {@code 1.6} it held for 5.2 % alone. The long-beaten sheets
     * of that trial were those that took up little, so beating may have its share in it.
     *
     * @param assumptions where {@code size.strength-ratio} and {@code size.strength-slope} are looked up
     * @return strength of the sized over that of the unsized sheet
     * @source Sindall, The Manufacture of Paper, 1908, ch. IX, six pairs of breaking loads
     */
    public Estimate<Dimensionless> strengthRatio(Assumptions assumptions) {
        Objects.requireNonNull(assumptions, "assumptions");
        double there = onPaper().si();
        return Bands.of(
                assumptions,
                List.of(Bands.Use.of(Scope.GENERAL, STRENGTH, STRENGTH_SLOPE)),
                store -> Kinds.NUMBER.ofSi(
                        Additives.gelatineStrength(
                                there,
                                MIDDLE_SEEN,
                                store.si(STRENGTH, Scope.GENERAL),
                                store.si(STRENGTH_SLOPE, Scope.GENERAL)),
                        "1"));
    }

    /**
     * Returns the pick-up that would leave a wanted amount of size.
     *
     * @param wanted dry size over dry sheet, above zero
     * @return bath over dry sheet
     * @throws Refused if the value is out of range
     */
    public Amount<Dimensionless> pickUpFor(Quantity<Dose> wanted) {
        return Kinds.NUMBER.ofSi(Kinds.DOSE.siAboveZero(wanted, "size on paper") / strength.si(), "%");
    }

    /** A bath for a batch. */
    public sealed interface Bath permits FoundBath {
        /** {@return the bath to prepare} */
        Amount<Mass> prepared();

        /** {@return the dry size in it} */
        Amount<Mass> drySize();

        /** {@return the bath the sheets take up} */
        Amount<Mass> taken();

        /** {@return what must stay in the tub; it is left over at the end} */
        Amount<Mass> kept();
    }

    private record FoundBath(Amount<Mass> prepared, Amount<Mass> drySize, Amount<Mass> taken, Amount<Mass> kept)
            implements Bath {
        @Override
        public String toString() {
            return prepared + " of bath with " + drySize + " of size, of which " + kept + " stays in the tub";
        }
    }

    /**
     * Returns the bath to prepare and what stays in the tub.
     *
     * @param sheets the sheets, 1 or more
     * @param drySheet the mass of one dry sheet, above zero
     * @param kept what the tub must hold at the end so that the last sheet can be dipped
     * @return the bath
     * @throws Refused if a value is out of range
     */
    public Bath bath(int sheets, Quantity<Mass> drySheet, Quantity<Mass> kept) {
        if (sheets < 1) {
            throw Refused.of(
                    "count.below-one",
                    "sheets to size: " + sheets + " given; must be 1 or more.",
                    "given",
                    sheets,
                    "least",
                    1);
        }
        double taken = sheets * Kinds.MASS.siAboveZero(drySheet, "mass of the dry sheet") * pickUp.si();
        double heel = Kinds.MASS.si(kept, "bath kept in the tub");
        return new FoundBath(
                Kinds.MASS.ofSi(taken + heel, "kg"),
                Kinds.MASS.ofSi((taken + heel) * strength.si(), "g"),
                Kinds.MASS.ofSi(taken, "kg"),
                Kinds.MASS.ofSi(heel, "kg"));
    }

    /**
     * Sizes a dry sheet: it takes up bath over its mass as weighed, of which the dry size stays and the water is dried
     * off again.
     *
     * @param sheet the dry sheet
     * @return the sheet out of the second press, to be dried like a pressed sheet
     */
    public PressedSheet size(DrySheet sheet) {
        double bath = sheet.mass().si() * pickUp.si();
        double dry = bath * strength.si();
        return new PressedSheet(
                sheet.fibre,
                sheet.additives + dry,
                sheet.minerals,
                sheet.water + (bath - dry),
                sheet.width,
                sheet.height,
                0);
    }

    /**
     * Returns what sizing should not be planned without, by the shipped assumptions.
     *
     * @return an unmodifiable list
     */
    public List<Notice> notices() {
        return notices(Assumptions.standard());
    }

    /**
     * Returns what sizing should not be planned without: how the size on paper compares with old writing papers, and
     * that size has to cure.
     *
     * @param assumptions where {@code size.bath-taken} and {@code schedule.size-cure} are looked up
     * @return an unmodifiable list
     * @source National Bureau of Standards tests of 1943, as quoted, for 2.6 to 5.8 % gelatine in old writing papers
     */
    public List<Notice> notices(Assumptions assumptions) {
        List<Notice> notices = new ArrayList<>();
        double there = onPaper().si();
        if (there < OLD_LOW || there > OLD_HIGH) {
            notices.add(Notice.note(
                    "size.unusual",
                    "The paper would hold " + onPaper() + " of size; old writing papers hold 2.6 to 5.8 % gelatine.",
                    "given",
                    onPaper().toString(),
                    "least",
                    "2.6 %",
                    "most",
                    "5.8 %"));
        }
        double most = assumptions.get("size.bath-taken", Scope.GENERAL).highSi();
        if (pickUp.si() > most) {
            notices.add(Notice.warning(
                    "size.bath-weak",
                    "The sheet would have to take up " + pickUp + " of its mass of this bath; about "
                            + Kinds.NUMBER.ofSi(most, "%") + " is the most. For " + onPaper()
                            + " on paper the bath needs "
                            + Kinds.SHARE.ofSi(Math.min(1, there / most), "%") + " of dry size or more.",
                    "pickUp",
                    pickUp.toString(),
                    "most",
                    Kinds.NUMBER.ofSi(most, "%").toString(),
                    "strength",
                    Kinds.SHARE.ofSi(Math.min(1, there / most), "%").toString()));
        }
        notices.add(Notice.note(
                "size.curing",
                "Size hardens after drying, and no published figure says how long; " + curing(assumptions)
                        + " is common practice. Test with ink before the batch is used, and plan the days from your"
                        + " own records.",
                "days",
                curing(assumptions).likely().toString()));
        return List.copyOf(notices);
    }

    /**
     * Returns for example {@code within 2.6–5.8 % of old writing papers: 3.524 % on paper; bath of 4 %, pick-up 88.1 %}.
     */
    @Override
    public String toString() {
        double there = onPaper().si();
        String verdict = there < OLD_LOW ? "below the " : there > OLD_HIGH ? "above the " : "within ";
        return verdict + Units.fourDigits(100 * OLD_LOW) + "–" + Units.fourDigits(100 * OLD_HIGH)
                + " % of old writing papers: " + onPaper() + " on paper; bath of " + strength + ", pick-up " + pickUp;
    }
}
