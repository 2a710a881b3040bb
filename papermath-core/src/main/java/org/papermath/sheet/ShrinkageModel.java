package org.papermath.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.function.Function;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Length;
import org.jspecify.annotations.Nullable;
import org.papermath.equation.ShrinkageLaw;
import org.papermath.evidence.Assumption;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Bands;
import org.papermath.evidence.Basis;
import org.papermath.evidence.Estimate;
import org.papermath.evidence.Notice;
import org.papermath.evidence.Reading;
import org.papermath.evidence.Scope;
import org.papermath.evidence.Source;
import org.papermath.evidence.WithNotices;
import org.papermath.fibre.Fibre;
import org.papermath.fibre.Furnish;
import org.papermath.notice.StockNotices;
import org.papermath.numeric.Normal;
import org.papermath.pulp.BeatingState;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.LinearShrinkage;
import org.papermath.quantity.MoistureRatio;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Units;
import org.papermath.quantity.WaterRetention;
import org.papermath.shape.Shrinkage;

/**
 * Drying shrinkage by direction, from beating or water retention, under the restraint of a drying path. Immutable.
 *
 * <p>Free: {@code s = s0 + (si - s0)(1 - exp(-t/tau))} after t hours in the studio's beater, or {@code s = A (WRV - B)}
 * kept from 0 to 35 %. Across the mould it is larger than along it by an assumption of its own, half of it added to one
 * side and taken from the other. Under restraint: {@code s sum((1 - r_j)(phi(M_end) - phi(M_start)))},
 * {@code phi = max(0, 1 - M/M_on)}. Linear throughout, never of the area. About ±5 points, ±1.5 after two strips.
 *
 * @source form of the restraint after Htun and de Ruvo 1981; cotton rag from Sindall, The Manufacture of Paper, 1908,
 *     ch. IX
 */
public final class ShrinkageModel {
    /** What one reading of two marks leaves, of shrinkage. */
    private static final double LEFT_BY_MARKS = 0.005;

    private static final List<String> BY_STATE =
            List.of("shrinkage.initial", "shrinkage.limit", "shrinkage.direction-difference");
    private static final String INITIAL = "shrinkage.initial";
    private static final String LIMIT = "shrinkage.limit";
    private static final List<String> BY_RETENTION = List.of(
            "shrinkage.per-water-retention", "shrinkage.water-retention-intercept", "shrinkage.direction-difference");
    private static final double TOO_WET_TO_LET_GO = 0.2;
    private static final double COCKLES = 0.02;
    /** About the stretch at which hand-made paper breaks. */
    private static final double BREAKS = 0.05;

    private final Assumptions assumptions;
    private final Scope scope;
    private final List<Part> parts;

    private record Part(double share, Scope scope) {}

    private ShrinkageModel(Assumptions assumptions, Scope scope, List<Part> parts) {
        this.assumptions = assumptions;
        this.scope = scope;
        this.parts = parts;
    }

    /**
     * Makes the model by the shipped assumptions.
     *
     * @param furnish the fibres
     * @return the model
     */
    public static ShrinkageModel standard(Furnish furnish) {
        Objects.requireNonNull(furnish, "furnish");
        return from(Assumptions.standard(), furnish);
    }

    /**
     * Makes the model of a furnish: where the furnish has a curve of its own, measured, that one; else a blend takes
     * the curves of its fibres by oven-dry mass, with a notice, for blends are known by test only.
     *
     * @param assumptions the store
     * @param furnish the fibres
     * @return the model
     */
    public static ShrinkageModel from(Assumptions assumptions, Furnish furnish) {
        Objects.requireNonNull(assumptions, "assumptions");
        Objects.requireNonNull(furnish, "furnish");
        if (!furnish.isBlend() || assumptions.find(LIMIT, furnish.scope()).isPresent()) {
            return from(assumptions, furnish.scope());
        }
        List<Part> parts = new ArrayList<>();
        furnish.shares().forEach((fibre, share) -> parts.add(new Part(share.si(), fibre.scope())));
        return new ShrinkageModel(assumptions, furnish.scope(), List.copyOf(parts));
    }

    /**
     * Makes the model of a furnish in a beater.
     *
     * @param assumptions the store
     * @param scope the fibre or furnish, perhaps on a beater
     * @return the model
     */
    public static ShrinkageModel from(Assumptions assumptions, Scope scope) {
        Objects.requireNonNull(assumptions, "assumptions");
        Objects.requireNonNull(scope, "scope");
        return new ShrinkageModel(assumptions, scope, List.of(new Part(1, scope)));
    }

    /** What a sheet shrinks. */
    public sealed interface Result permits FoundResult {
        /** {@return the likely shrinkage in both directions} */
        Shrinkage shrinkage();

        /** {@return the same along the mould, with its band} */
        Estimate<LinearShrinkage> along();

        /** {@return the same across the mould, with its band} */
        Estimate<LinearShrinkage> across();

        /** {@return what it should not be read without} */
        List<Notice> notices();
    }

    private record FoundResult(
            Shrinkage shrinkage,
            Estimate<LinearShrinkage> along,
            Estimate<LinearShrinkage> across,
            List<Notice> notices)
            implements Result {
        @Override
        public String toString() {
            return "along " + along + "; across " + across;
        }
    }

    /**
     * Returns the free shrinkage of a state of beating.
     *
     * @param beating how far the fibre was beaten
     * @return the shrinkage of a sheet dried free and whole
     * @throws Refused if it is not known of this furnish
     */
    public Result free(BeatingState beating) {
        return result(BY_STATE, store -> byState(store, beating), null, stateNotices(beating));
    }

    /**
     * Returns the free shrinkage of stock of a water retention value.
     *
     * @param retention the water retention value, 0.7 to 4 g/g for a result without notice
     * @return the shrinkage of a sheet dried free and whole
     * @throws Refused if the value is out of range
     */
    public Result freeByRetention(Quantity<WaterRetention> retention) {
        double wrv = Kinds.WATER_RETENTION.si(retention, "water retention value");
        List<Notice> notices = new ArrayList<>(retentionNotices(retention, wrv));
        return result(BY_RETENTION, store -> byRetention(store, wrv), null, notices);
    }

    /**
     * Returns the shrinkage along a drying path of a state of beating.
     *
     * @param beating how far the fibre was beaten
     * @param path how the sheet dries
     * @return the shrinkage
     * @throws Refused as {@link #free}
     */
    public Result along(BeatingState beating, DryingPath path) {
        return onPath(BY_STATE, store -> byState(store, beating), path, stateNotices(beating));
    }

    /**
     * Returns the shrinkage along a drying path of stock of a water retention value.
     *
     * @param retention the water retention value
     * @param path how the sheet dries
     * @return the shrinkage
     * @throws Refused as {@link #freeByRetention}
     */
    public Result alongByRetention(Quantity<WaterRetention> retention, DryingPath path) {
        double wrv = Kinds.WATER_RETENTION.si(retention, "water retention value");
        List<Notice> notices = new ArrayList<>(retentionNotices(retention, wrv));
        return onPath(BY_RETENTION, store -> byRetention(store, wrv), path, notices);
    }

    /**
     * Returns the shrinkage along a drying path when the free one was measured.
     *
     * @param free the free shrinkage of the whole drying, measured
     * @param path how the sheet dries
     * @return the shrinkage, its band that of the restraint alone
     */
    public Result along(Shrinkage free, DryingPath path) {
        double along = free.alongFraction();
        double across = free.acrossFraction();
        return onPath(List.of(), store -> new double[] {along, across}, path, new ArrayList<>());
    }

    /**
     * Returns the whole free shrinkage behind one measured on a strip that dried only to some moisture ratio:
     * {@code s/(1 - M/M_on)}.
     *
     * @param measured what the strip shrank
     * @param end the moisture ratio it dried to
     * @return the free shrinkage
     * @throws Refused if the strip never began to shrink
     */
    public Amount<LinearShrinkage> wholeFree(Quantity<LinearShrinkage> measured, Quantity<MoistureRatio> end) {
        double onset = assumptions.si("shrinkage.onset", scope);
        double ratio = Kinds.MOISTURE_RATIO.siWithin(end, "moisture ratio of the strip", 0, 0.9 * onset);
        return Kinds.LINEAR_SHRINKAGE.ofSi(
                org.papermath.equation.Shrinkage.wholeFree(
                        Kinds.LINEAR_SHRINKAGE.si(measured, "shrinkage of the strip"), onset, ratio),
                "%");
    }

    /**
     * Returns the wet length for a finished one: {@code L = finished/(1 - s)}.
     *
     * @param finished the finished length, above zero
     * @param shrinkage the shrinkage in that direction
     * @return the length of the deckle opening
     * @throws Refused if a value is out of range
     */
    public static Amount<Length> deckleFor(Quantity<Length> finished, Quantity<LinearShrinkage> shrinkage) {
        return Kinds.LENGTH.ofSi(
                org.papermath.equation.Shrinkage.wetLength(
                        Kinds.LENGTH.siAboveZero(finished, "finished length"),
                        Kinds.LINEAR_SHRINKAGE.si(shrinkage, "shrinkage")),
                "mm");
    }

    /**
     * Returns the stretch that would pull a shrunk sheet back to its wet size: {@code e = s/(1 - s)}.
     *
     * @param shrinkage what it shrank
     * @return the stretch over the shrunk length, with a warning above 5 %
     * @throws Refused if the shrinkage is out of range
     * @source Dawe, Paper and Its Uses, 1914, for hand-made paper that broke at 3.9 to 5.6 %
     */
    public static WithNotices<Amount<Dimensionless>> stretchToUndo(Quantity<LinearShrinkage> shrinkage) {
        double stretch =
                org.papermath.equation.Shrinkage.undoingStretch(Kinds.LINEAR_SHRINKAGE.si(shrinkage, "shrinkage"));
        Amount<Dimensionless> amount = Kinds.NUMBER.ofSi(stretch, "%");
        return stretch <= BREAKS
                ? WithNotices.of(amount)
                : WithNotices.of(
                        amount,
                        Notice.warning(
                                "shrinkage.stretch",
                                "Pulling the sheet back takes a stretch of " + amount
                                        + "; hand-made papers broke at 3.9 to 5.6 %."
                                        + " Shrinkage cannot be pulled out again: hold the sheet while it dries.",
                                "stretch",
                                amount.toString(),
                                "limit",
                                "5 %"));
    }

    private Result onPath(
            List<String> ids, Function<Assumptions, double[]> free, DryingPath path, List<Notice> notices) {
        for (int i = 1; i < path.steps().size(); i++) {
            DryingPath.Step before = path.steps().get(i - 1);
            DryingPath.Step here = path.steps().get(i);
            boolean looser = here.restraint().shareSi(assumptions, true)
                            < before.restraint().shareSi(assumptions, true)
                    || here.restraint().shareSi(assumptions, false)
                            < before.restraint().shareSi(assumptions, false);
            if (looser && before.end().si() > TOO_WET_TO_LET_GO) {
                notices.add(Notice.warning(
                        "shrinkage.released-wet",
                        "The sheet is taken out of the " + before.restraint() + " at " + before.end()
                                + " water on dry; above 0.2 g/g it goes on shrinking and cockles.",
                        "restraint",
                        before.restraint().name(),
                        "given",
                        before.end().toString(),
                        "limit",
                        "0.2 g/g"));
            }
        }
        List<String> all = new ArrayList<>(ids);
        all.add("shrinkage.onset");
        return result(all, free, path, notices);
    }

    private Result result(
            List<String> ids, Function<Assumptions, double[]> free, @Nullable DryingPath path, List<Notice> notices) {
        Estimate<LinearShrinkage> along = estimate(ids, free, path, true);
        Estimate<LinearShrinkage> across = estimate(ids, free, path, false);
        double[] likely = free.apply(assumptions);
        if (likely[0] == likely[1]
                && ids.contains("shrinkage.direction-difference")
                && assumptions.get("shrinkage.direction-difference", scope).basis() != Basis.MEASURED_HERE) {
            notices.add(Notice.note(
                    "shrinkage.one-number",
                    "One number stands for both directions, which may differ by 4 points. Measure a sheet both ways.",
                    "shrinkage",
                    Kinds.LINEAR_SHRINKAGE.ofSi(likely[0], "%").toString()));
        }
        double loosest = path == null
                ? 1
                : path.steps().stream()
                        .mapToDouble(step -> step.restraint().shareSi(assumptions, false))
                        .min()
                        .orElse(1);
        if (loosest < 0.5 && Math.max(across.likely().si(), along.likely().si()) > COCKLES) {
            notices.add(Notice.warning(
                    "shrinkage.cockle",
                    "A sheet that shrinks " + across.likely() + " without being held comes out cockled.",
                    "shrinkage",
                    across.likely().toString()));
        }
        Shrinkage both = Shrinkage.across(across.likely()).along(along.likely());
        return new FoundResult(both, along, across, List.copyOf(notices));
    }

    private Estimate<LinearShrinkage> estimate(
            List<String> ids, Function<Assumptions, double[]> free, @Nullable DryingPath path, boolean along) {
        Function<Assumptions, Amount<LinearShrinkage>> likely = store ->
                Kinds.LINEAR_SHRINKAGE.ofSi(held(store, scope, free.apply(store)[along ? 0 : 1], path, along), "%");
        List<Bands.Use> uses = new ArrayList<>();
        for (Part part : parts) {
            uses.add(new Bands.Use(part.scope(), ids));
        }
        if (path != null) {
            path.steps()
                    .forEach(step ->
                            uses.add(Bands.Use.of(Scope.of(step.restraint().subject()), "restraint.share")));
        }
        return Bands.of(assumptions, uses, likely);
    }

    private static double held(Assumptions store, Scope scope, double free, @Nullable DryingPath path, boolean along) {
        if (path == null) {
            return free;
        }
        int steps = path.steps().size();
        double[] ratios = new double[steps];
        double[] restraints = new double[steps];
        for (int i = 0; i < steps; i++) {
            ratios[i] = path.steps().get(i).end().si();
            restraints[i] = path.steps().get(i).restraint().shareSi(store, along);
        }
        return law(store, scope).held(free, path.start().si(), ratios, restraints);
    }

    private double[] byState(Assumptions store, BeatingState beating) {
        double free = 0;
        for (Part part : parts) {
            free += part.share()
                    * new ShrinkageLaw.Ends(store.si("shrinkage.initial", part.scope()), store.si(LIMIT, part.scope()))
                            .free(beating.of(part.scope()).si());
        }
        return law(store, scope).directions(free);
    }

    private double[] byRetention(Assumptions store, double wrv) {
        return law(store, scope)
                .directions(new ShrinkageLaw.Line(
                                store.si("shrinkage.per-water-retention", scope),
                                store.si("shrinkage.water-retention-intercept", scope))
                        .free(wrv));
    }

    private static ShrinkageLaw law(Assumptions store, Scope scope) {
        return new ShrinkageLaw(store.si("shrinkage.onset", scope), store.si("shrinkage.direction-difference", scope));
    }

    private List<Notice> stateNotices(BeatingState beating) {
        List<Notice> notices = new ArrayList<>();
        if (parts.size() > 1) {
            notices.add(Notice.note(
                    "shrinkage.blend",
                    "The shrinkage of this blend is that of its fibres by mass, which no one has measured; dry two"
                            + " strips."));
        }
        for (Part part : parts) {
            assumptions
                    .find("shrinkage.trial-end", part.scope())
                    .flatMap(end ->
                            StockNotices.beyondTrial(beating.of(part.scope()).si(), end))
                    .ifPresent(notices::add);
        }
        return notices;
    }

    private static List<Notice> retentionNotices(Quantity<WaterRetention> retention, double wrv) {
        return wrv >= 0.7 && wrv <= 4
                ? List.of()
                : List.of(Notice.warning(
                        "shrinkage.retention-range",
                        "The line from water retention holds from 0.7 to 4 g/g; " + retention + " is outside.",
                        "given",
                        retention.toString(),
                        "least",
                        "0.7 g/g",
                        "most",
                        "4 g/g"));
    }

    /**
     * A strip dried free.
     *
     * @param beating how far its fibre was beaten
     * @param shrinkage what it shrank
     */
    public record Strip(BeatingState beating, Amount<LinearShrinkage> shrinkage) {
        /**
         * Makes a strip from its shrinkage.
         *
         * @param beating how far its fibre was beaten
         * @param shrinkage what it shrank
         * @throws Refused if a value is out of range
         */
        public Strip {
            Objects.requireNonNull(beating, "beating");
            shrinkage = Kinds.LINEAR_SHRINKAGE.check(shrinkage, "shrinkage of the strip");
        }

        /**
         * Makes a strip from its shrinkage.
         *
         * @param beating how far its fibre was beaten
         * @param shrinkage what it shrank
         * @return the strip
         * @throws Refused if the shrinkage is out of range
         */
        public static Strip of(BeatingState beating, Quantity<LinearShrinkage> shrinkage) {
            return new Strip(beating, Kinds.LINEAR_SHRINKAGE.check(shrinkage, "shrinkage of the strip"));
        }

        /**
         * Makes a strip from the distance of two marks, wet and dry.
         *
         * @param beating how far its fibre was beaten
         * @param wet the distance of the marks on the wet strip, above zero
         * @param dry the same after drying, above zero
         * @return the strip
         * @throws Refused if a value is out of range
         */
        public static Strip measured(BeatingState beating, Quantity<Length> wet, Quantity<Length> dry) {
            return of(
                    beating,
                    Kinds.LINEAR_SHRINKAGE.ofSi(
                            org.papermath.equation.Shrinkage.ofLengths(
                                    Kinds.LENGTH.siAboveZero(wet, "marks on the wet strip"),
                                    Kinds.LENGTH.siAboveZero(dry, "marks on the dry strip")),
                            "%"));
        }

        @Override
        public String toString() {
            return shrinkage + ", " + beating;
        }
    }

    /** What a calibration by strips found. */
    public sealed interface Calibrated permits FoundLimit {
        /** {@return the store with {@code shrinkage.limit} measured} */
        Assumptions assumptions();

        /** {@return the shrinkage of fibre beaten as far as it goes} */
        Amount<LinearShrinkage> limit();

        /** {@return the root mean square distance of the strips from the line} */
        Amount<LinearShrinkage> rms();

        /** {@return how many strips were used} */
        int used();

        /** {@return strips left out, and why} */
        List<Notice> notices();
    }

    private record FoundLimit(
            Assumptions assumptions,
            Amount<LinearShrinkage> limit,
            Amount<LinearShrinkage> rms,
            int used,
            List<Notice> notices)
            implements Calibrated {
        @Override
        public String toString() {
            return "greatest shrinkage " + limit + " from " + used + " strips, rms " + rms;
        }
    }

    /**
     * Calibrates the shrinkage of fibre beaten as far as it goes by strips dried free: the line through the unbeaten
     * shrinkage of the table with the least squares, {@code s_1 - s_0 = sum(y (s - s_0))/sum(y²)}. Strips beaten beyond
     * the range of the line are left out and noticed. What a strip shrank in air is made whole with {@link #wholeFree}
     * first.
     *
     * @param assumptions the store
     * @param scope the fibre or furnish, perhaps on a beater
     * @param strips the strips, one or more in range that was beaten
     * @return what was found
     * @throws Refused if no strip in range was beaten, they shrink no more than unbeaten fibre, or more than a sheet can
     */
    public static Calibrated calibrate(Assumptions assumptions, Scope scope, List<Strip> strips) {
        Objects.requireNonNull(assumptions, "assumptions");
        Objects.requireNonNull(scope, "scope");
        Objects.requireNonNull(strips, "strips");
        double end = assumptions
                .find("shrinkage.trial-end", scope)
                .map(Assumption::likelySi)
                .orElse(1.0);
        List<Notice> notices = new ArrayList<>();
        double unbeaten = assumptions.si("shrinkage.initial", scope);
        double sum = 0;
        double square = 0;
        double middle = 0;
        int used = 0;
        for (Strip strip : strips) {
            double state = strip.beating().of(scope).si();
            if (state > end) {
                notices.add(Notice.warning(
                        "shrinkage.strip-left-out",
                        "The strip " + strip + " is beyond " + Kinds.SHARE.ofSi(end, "%")
                                + " of the way and outside the model; it was left out.",
                        "given",
                        strip.toString(),
                        "limit",
                        Kinds.SHARE.ofSi(end, "%").toString()));
                continue;
            }
            sum += state * (strip.shrinkage().si() - unbeaten);
            square += state * state;
            middle += strip.shrinkage().si();
            used++;
        }
        if (!(square > 0)) {
            throw Refused.of(
                    "shrinkage.strips",
                    "calibration: none of the " + strips.size()
                            + " strips is of beaten fibre within the range of the line; at least one is needed.",
                    "given",
                    strips.size());
        }
        if (!(sum > 0)) {
            throw Refused.of(
                    "shrinkage.strip-none",
                    "calibration: the strips shrank no more than the unbeaten "
                            + Kinds.LINEAR_SHRINKAGE.ofSi(unbeaten, "%")
                            + "; they show nothing of beating. Dry them free.",
                    "limit",
                    Kinds.LINEAR_SHRINKAGE.ofSi(unbeaten, "%").toString());
        }
        Assumption old = assumptions.get(LIMIT, scope);
        double limit = unbeaten + sum / square;
        if (limit > old.most()) {
            throw Refused.of(
                    "shrinkage.strip-limit",
                    "calibration: carried on to the end of beating the strips would shrink "
                            + Units.fourDigits(100 * limit)
                            + " %, more than the " + Kinds.LINEAR_SHRINKAGE.ofSi(old.most(), "%")
                            + " any sheet does. Check the marks and the beating.",
                    "given",
                    limit,
                    "limit",
                    Kinds.LINEAR_SHRINKAGE.ofSi(old.most(), "%").toString());
        }
        double squares = 0;
        for (Strip strip : strips) {
            double state = strip.beating().of(scope).si();
            if (state <= end) {
                double off = unbeaten
                        + (limit - unbeaten) * state
                        - strip.shrinkage().si();
                squares += off * off;
            }
        }
        double rms = Math.sqrt(squares / used);
        // What strips leave: 1.5 points at the middle of them, or their own scatter where that is more.
        double error = used > 1 ? 1.645 * Math.sqrt(squares / (used - 1) / square) / limit : 0;
        double half = Math.min(0.7, Math.hypot(error, 0.015 / Math.max(middle / used, 0.015)));
        Assumptions with = assumptions.with(old.with(
                scope,
                limit,
                limit * Math.exp(-half),
                Math.min(old.most(), limit * Math.exp(half)),
                Basis.MEASURED_HERE,
                new Source(used + (used == 1 ? " strip" : " strips") + " dried free")));
        return new FoundLimit(
                with,
                Kinds.LINEAR_SHRINKAGE.ofSi(limit, "%"),
                Kinds.LINEAR_SHRINKAGE.ofSi(rms, "%"),
                used,
                List.copyOf(notices));
    }

    /**
     * Calibrates the shrinkage of a furnish beaten as far as it goes by strips dried free, as the other form does. A
     * blend that has no curve of its own yet begins with the mean by mass of those of its fibres, and keeps the unbeaten
     * end of it.
     *
     * @param assumptions the store
     * @param furnish the fibres of the strips
     * @param beater the name of the beater
     * @param strips the strips, one or more in range that was beaten
     * @return what was found
     * @throws Refused as the other form, or if one of the fibres has no curve
     */
    public static Calibrated calibrate(Assumptions assumptions, Furnish furnish, String beater, List<Strip> strips) {
        Objects.requireNonNull(assumptions, "assumptions");
        Objects.requireNonNull(furnish, "furnish");
        Objects.requireNonNull(beater, "beater");
        Scope scope = beater.isEmpty() ? furnish.scope() : furnish.scope().on(beater);
        Assumptions begun = assumptions;
        if (furnish.isBlend() && assumptions.find(LIMIT, scope).isEmpty()) {
            for (String id : List.of(INITIAL, LIMIT)) {
                double likely = 0;
                double low = 0;
                double high = 0;
                for (Fibre fibre : furnish.fibres()) {
                    double share = furnish.share(fibre).si();
                    Assumption of = assumptions.get(id, fibre.scope());
                    likely += share * of.likely();
                    low += share * of.low();
                    high += share * of.high();
                }
                begun = begun.given(
                        id,
                        scope,
                        likely,
                        low,
                        high,
                        Basis.MEASURED_HERE,
                        new Source("the fibres of the blend by mass"));
            }
        }
        return calibrate(begun, scope, strips);
    }

    /**
     * Calibrates the line from water retention by two strips: {@code A = ds/dWRV}, {@code B = WRV1 - s1/A}.
     *
     * @param assumptions the store
     * @param scope the fibre or furnish
     * @param firstRetention the water retention value of the first
     * @param first what the first shrank
     * @param secondRetention the water retention value of the second
     * @param second what the second shrank
     * @return the store with both numbers of the line measured
     * @throws Refused if the second is not larger in both, or a value is out of range
     */
    public static Assumptions calibrateByRetention(
            Assumptions assumptions,
            Scope scope,
            Quantity<WaterRetention> firstRetention,
            Quantity<LinearShrinkage> first,
            Quantity<WaterRetention> secondRetention,
            Quantity<LinearShrinkage> second) {
        double w1 = Kinds.WATER_RETENTION.si(firstRetention, "water retention value of the first strip");
        double w2 = Kinds.WATER_RETENTION.si(secondRetention, "water retention value of the second strip");
        double s1 = Kinds.LINEAR_SHRINKAGE.si(first, "shrinkage of the first strip");
        double s2 = Kinds.LINEAR_SHRINKAGE.si(second, "shrinkage of the second strip");
        if (!(w2 > w1 && s2 > s1)) {
            throw Refused.of(
                    "shrinkage.strips-order",
                    "calibration: " + first + " at " + firstRetention + " and " + second + " at " + secondRetention
                            + " given; the second strip must hold more water and shrink more.",
                    "first",
                    first.toString(),
                    "second",
                    second.toString());
        }
        double slope = org.papermath.equation.Shrinkage.retentionSlope(w1, s1, w2, s2);
        double intercept = org.papermath.equation.Shrinkage.retentionIntercept(w1, s1, slope);
        Source source = new Source("two strips dried free");
        Assumption a = assumptions.get("shrinkage.per-water-retention", scope);
        Assumption b = assumptions.get("shrinkage.water-retention-intercept", scope);
        // What two strips leave: 1.5 points between them for the slope.
        double half = Math.min(0.5, 0.015 / (s2 - s1));
        return assumptions
                .with(a.with(scope, slope, slope / (1 + half), slope * (1 + half), Basis.MEASURED_HERE, source))
                .with(b.with(scope, intercept, intercept, intercept, Basis.MEASURED_HERE, source));
    }

    /**
     * Calibrates the difference of the two directions by one sheet measured both ways.
     *
     * @param assumptions the store
     * @param scope the fibre or furnish, perhaps on a mould
     * @param measured what the sheet shrank, dried free
     * @return the store with {@code shrinkage.direction-difference} measured
     * @throws Refused if the difference is beyond what the table allows
     */
    public static Assumptions calibrateDirections(Assumptions assumptions, Scope scope, Shrinkage measured) {
        Objects.requireNonNull(assumptions, "assumptions");
        Objects.requireNonNull(scope, "scope");
        Objects.requireNonNull(measured, "measured");
        Assumption old = assumptions.get("shrinkage.direction-difference", scope);
        double difference = measured.acrossFraction() - measured.alongFraction();
        return assumptions.with(old.with(
                scope,
                difference,
                difference - 0.005,
                difference + 0.005,
                Basis.MEASURED_HERE,
                new Source("one sheet measured both ways")));
    }

    /**
     * Takes the shrinkage of finished sheets from two marks each way on one that was held as the dryer holds:
     * {@code s = 1 - dry/wet}.
     *
     * @param assumptions the store
     * @param scope the recipe and the dryer
     * @param wetAlong the marks along on the wet sheet, above zero
     * @param dryAlong the same after drying
     * @param wetAcross the marks across on the wet sheet, above zero
     * @param dryAcross the same after drying
     * @return the store with {@code shrinkage.measured-along} and {@code shrinkage.measured-across} in that scope
     * @throws Refused if the marks moved apart or a value is out of range
     */
    public static Assumptions calibrateMeasured(
            Assumptions assumptions,
            Scope scope,
            Reading<Length> wetAlong,
            Reading<Length> dryAlong,
            Reading<Length> wetAcross,
            Reading<Length> dryAcross) {
        Objects.requireNonNull(assumptions, "assumptions");
        Objects.requireNonNull(scope, "scope");
        Objects.requireNonNull(wetAlong, "wetAlong");
        Objects.requireNonNull(dryAlong, "dryAlong");
        Objects.requireNonNull(wetAcross, "wetAcross");
        Objects.requireNonNull(dryAcross, "dryAcross");
        Assumptions along = shrunk(assumptions, "shrinkage.measured-along", scope, wetAlong, dryAlong);
        return shrunk(along, "shrinkage.measured-across", scope, wetAcross, dryAcross);
    }

    private static Assumptions shrunk(
            Assumptions into, String id, Scope scope, Reading<Length> wet, Reading<Length> dry) {
        double before = Kinds.LENGTH.siAboveZero(wet.value(), "marks on the wet sheet");
        double after = Kinds.LENGTH.siWithin(dry.value(), "marks on the dry sheet", 0, before);
        double half = Math.hypot(
                Normal.halfBandOfRatio(
                        after, dry.error().si(), before, wet.error().si()),
                LEFT_BY_MARKS);
        return into.measuredShare(id, scope, 1 - after / before, half);
    }

    @Override
    public String toString() {
        return "shrinkage" + scope;
    }
}
