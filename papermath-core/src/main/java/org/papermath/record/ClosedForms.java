package org.papermath.record;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Time;
import org.apache.commons.statistics.distribution.BetaDistribution;
import org.apache.commons.statistics.distribution.ChiSquaredDistribution;
import org.papermath.air.Air;
import org.papermath.air.Water;
import org.papermath.drying.Dryer;
import org.papermath.drying.DryingModel;
import org.papermath.equation.BeatingLaw;
import org.papermath.evidence.Assumption;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Basis;
import org.papermath.evidence.Estimate;
import org.papermath.evidence.Notice;
import org.papermath.evidence.Reading;
import org.papermath.evidence.Scope;
import org.papermath.fibre.BoughtFibre;
import org.papermath.fibre.Fibre;
import org.papermath.fibre.Furnish;
import org.papermath.fibre.SorptionModel;
import org.papermath.numeric.Normal;
import org.papermath.press.PressingModel;
import org.papermath.pulp.BeatingModel;
import org.papermath.pulp.BeatingRecord;
import org.papermath.pulp.BeatingState;
import org.papermath.pulp.DrainabilityModel;
import org.papermath.pulp.RetentionModel;
import org.papermath.pulp.WaterRetentionModel;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.LinearShrinkage;
import org.papermath.quantity.MoistureRatio;
import org.papermath.quantity.Refused;
import org.papermath.quantity.SchopperRiegler;
import org.papermath.quantity.Units;
import org.papermath.quantity.WaterRetention;
import org.papermath.shape.Shrinkage;
import org.papermath.sheet.CouchedSheet;
import org.papermath.sheet.DensityModel;
import org.papermath.sheet.DrySheet;
import org.papermath.sheet.HygroexpansionModel;
import org.papermath.sheet.PressedSheet;
import org.papermath.sheet.Restraint;
import org.papermath.sheet.ShrinkageModel;
import org.papermath.vat.DrainageModel;
import org.papermath.vat.Vat;

/** The one table from readings to assumptions; the equations are those of the models. */
final class ClosedForms {
    /** What one timing leaves. */
    private static final double LEFT_TIME = 0.1;

    private static final int FEW = 5;

    private ClosedForms() {}

    /** A reading and the batch it was taken in. */
    record Seen(BatchRecord record, Measurement reading) {
        String name() {
            return record.name() + " (" + record.date() + ")";
        }
    }

    /** Which readings are taken together; empty: not for this form. */
    interface Key {
        Optional<Object> of(Seen seen);
    }

    /** A closed form: the store with what the readings say, as the model's own calibration gives it. */
    interface Form {
        Assumptions apply(Case asked);
    }

    /** What a strip held of water when it was stock, and what it shrank. */
    private record Spun(Amount<WaterRetention> retention, Amount<LinearShrinkage> shrinkage) {
        static final Comparator<Spun> BY_WATER =
                Comparator.comparingDouble(one -> one.retention().si());
    }

    /** A row of the table. */
    record Rule(Calibration.Row row, List<Class<? extends Measurement>> takes, Key key, Form form) {}

    private static final Key EACH = seen -> Optional.of(seen);

    private static final List<Class<? extends Measurement>> READ =
            List.of(Measurement.NumberRead.class, Measurement.FreenessRead.class);

    static final List<Rule> TABLE = List.of(
            rule(
                    "moisture sample",
                    "nothing",
                    "the fibre",
                    "w = 1 − dried/bought",
                    EACH,
                    Case::moistureAsBought,
                    List.of("fibre.moisture-as-bought"),
                    List.of(Measurement.MoistureSample.class)),
            rule(
                    "raw fibre weighed before cooking, its stuff after it",
                    "moisture of the fibre as bought",
                    "the fibre",
                    "Y = stuff/(bought (1 − w))",
                    EACH,
                    Case::fibreYield,
                    List.of("fibre.yield"),
                    List.of(Measurement.Cooked.class)),
            rule(
                    "one pulp read on both testers",
                    "nothing",
                    "everything",
                    "SR less what the chart gives for CSF",
                    EACH,
                    Case::chart,
                    List.of("freeness.chart-offset"),
                    List.of(Measurement.BothTesters.class)),
            rule(
                    "two drainabilities or more, at different times",
                    "furnish and beater",
                    "fibre@beater",
                    "straight line of ln(−ln((SRm − SR)/(SRm − SR0))) over ln t, each weighed by its error",
                    seen -> beaten(seen.record()) > 1 ? Optional.of(seen.record()) : Optional.empty(),
                    Case::beating,
                    List.of("beating.rate", "beating.exponent", "beating.drainability-unbeaten"),
                    READ),
            rule(
                    "one drainability after a beating time",
                    "furnish and beater",
                    "fibre@beater; of a blend each of its fibres",
                    "k = (−ln((SRm − SR)/(SRm − SR0)))^(1/p)/t",
                    seen -> beaten(seen.record()) > 1 ? Optional.empty() : Optional.of(seen.record()),
                    Case::beating,
                    List.of("beating.rate", "beating.drainability-unbeaten"),
                    READ),
            rule(
                    "water retention value with a drainability",
                    "furnish",
                    "furnish",
                    "the point of well-beaten fibre moved to (SR, WRV), that of the most beaten sample",
                    seen -> Optional.of(
                            List.of(seen.record().furnish(), ((Measurement.WaterSpun) seen.reading()).spin())),
                    Case::waterSpun,
                    List.of("fibre.drainability-well-beaten", "fibre.water-retention-well-beaten"),
                    List.of(Measurement.WaterSpun.class)),
            rule(
                    "sheet timed on the mould",
                    "vat and a drainability of the stock",
                    "@vat",
                    "falling head, for the specific resistance; that over what the drainability gives",
                    EACH,
                    Case::draining,
                    List.of("drainage.resistance-factor"),
                    List.of(Measurement.TimedSheet.class)),
            rule(
                    "a litre of dripping water and of the vat dried",
                    "furnish and vat",
                    "fibre@vat; of a blend each of its fibres",
                    "R = 1 − c_w/c_v",
                    EACH,
                    Case::retention,
                    List.of("vat.retention"),
                    List.of(Measurement.WaterDried.class)),
            rule(
                    "jar of white water beside a row of dilutions",
                    "nothing",
                    "the additive",
                    "R = 1 − c V/given",
                    EACH,
                    Case::jar,
                    List.of("additive.retention"),
                    List.of(Measurement.JarCompared.class)),
            rule(
                    "sheet burnt to ash",
                    "furnish and vat",
                    "the additive",
                    "x = (A − a_f)/(k_a − a_f), R = R_1 x/((1 − x) d)",
                    EACH,
                    Case::burnt,
                    List.of("additive.retention"),
                    List.of(Measurement.Burnt.class)),
            rule(
                    "sheet weighed couched and dry",
                    "vat",
                    "@vat",
                    "solids = dry/wet",
                    EACH,
                    Case::couched,
                    List.of("web.solids-couched"),
                    List.of(Measurement.WeighedSheet.class)),
            rule(
                    "sheets weighed dry",
                    "vat and the planned " + BatchRecord.SHEET_SOLIDS,
                    "@vat",
                    "mean of dry/planned",
                    seen -> Optional.ofNullable(seen.record().planned().get(BatchRecord.SHEET_SOLIDS))
                            .map(planned -> seen.record()),
                    Case::lift,
                    List.of("vat.lift-factor"),
                    List.of(Measurement.WeighedSheet.class)),
            rule(
                    "sheet weighed couched, pressed and dry",
                    "furnish, press, how it was pressed, drainability",
                    "@press",
                    "a = M_eq/WRV (p/p0)^b",
                    ClosedForms::pressed,
                    Case::pressing,
                    List.of("press.factor"),
                    List.of(Measurement.WeighedSheet.class)),
            rule(
                    "sheet weighed pressed and dry",
                    "recipe and dryer",
                    "recipe@dryer",
                    "solids = dry/pressed",
                    ClosedForms::pressed,
                    Case::pressedSolids,
                    List.of("web.solids-pressed"),
                    List.of(Measurement.WeighedSheet.class)),
            rule(
                    "finished sheet weighed once more out of the oven",
                    "furnish",
                    "furnish",
                    "monolayer scaled so that the isotherm meets M = mass/dry − 1",
                    ClosedForms::ovened,
                    Case::sorption,
                    List.of("sorption.monolayer"),
                    List.of(Measurement.Finished.class)),
            rule(
                    "finished sheet weighed once more out of the oven",
                    "recipe and dryer",
                    "recipe@dryer",
                    "w = 1 − dry/mass",
                    ClosedForms::ovened,
                    Case::moistureConditioned,
                    List.of("sheet.moisture-conditioned"),
                    List.of(Measurement.Finished.class)),
            rule(
                    "finished sheet with its thickness",
                    "furnish, how it was pressed, beating time",
                    "furnish",
                    "densities scaled by W/t over what pressing and beating give",
                    ClosedForms::measuredThick,
                    Case::density,
                    List.of("sheet.density-unbeaten", "sheet.density-long-beaten", "sheet.density-lightly-pressed"),
                    List.of(Measurement.Finished.class)),
            rule(
                    "finished sheet with its thickness",
                    "recipe, furnish and dryer",
                    "recipe@dryer",
                    "rho = W/t",
                    ClosedForms::measuredThick,
                    Case::densityMeasured,
                    List.of("sheet.density-measured"),
                    List.of(Measurement.Finished.class)),
            rule(
                    "marks on a sheet held as the dryer holds",
                    "recipe and dryer",
                    "recipe@dryer",
                    "s = 1 − dry/wet",
                    EACH,
                    Case::shrinkageMeasured,
                    List.of("shrinkage.measured-along", "shrinkage.measured-across"),
                    List.of(Measurement.Marks.class)),
            rule(
                    "marks on sheets or strips dried free, of beaten stuff",
                    "furnish, beater, beating time or drainability",
                    "furnish@beater",
                    "s = (1 − dry/wet)/(1 − M/M_on) in air; s1 − s0 = sum(y (s − s0))/sum(y²)",
                    seen -> free(seen)
                            .map(marks -> seen.record().furnish().map(Furnish::scope) + "@"
                                    + seen.record().beater()),
                    Case::shrinkageLimit,
                    List.of("shrinkage.limit", "shrinkage.initial"),
                    List.of(Measurement.Marks.class)),
            rule(
                    "marks on sheets or strips dried free, of two water retention values",
                    "furnish, water retention value",
                    "furnish",
                    "s as above; A = (s2 − s1)/(WRV2 − WRV1), B = WRV1 − s1/A, of the least and the most wet",
                    seen -> free(seen)
                            .filter(marks -> !seen.record()
                                    .measurements(Measurement.WaterSpun.class)
                                    .isEmpty())
                            .map(marks -> seen.record().furnish()),
                    Case::shrinkageByRetention,
                    List.of("shrinkage.per-water-retention", "shrinkage.water-retention-intercept"),
                    List.of(Measurement.Marks.class)),
            rule(
                    "marks on a sheet dried free",
                    "furnish",
                    "furnish",
                    "across less along, each over 1 − M/M_on in air",
                    seen -> free(seen).map(marks -> seen),
                    Case::directions,
                    List.of("shrinkage.direction-difference"),
                    List.of(Measurement.Marks.class)),
            rule(
                    "strip measured in two airs",
                    "furnish",
                    "furnish",
                    "both numbers scaled by (L2/L1 − 1)/(M2 − M1) over the forecast",
                    EACH,
                    Case::twoAirs,
                    List.of("hygroexpansion.base", "hygroexpansion.per-shrinkage"),
                    List.of(Measurement.TwoAirs.class)),
            rule(
                    "sheets weighed twice in the dryer",
                    "furnish and the dryer itself",
                    "@dryer",
                    "stack: k = −ln(1 − E/(m_da (Ws − W))) V/A; loft, boards: time over that of wet faces;"
                            + " blotters: ((X − Xe)/(X0 − Xe))^(1/n)",
                    EACH,
                    Case::drying,
                    List.of("drying.stack-conductance", "drying.loft-tail", "drying.blotter-kept"),
                    List.of(Measurement.Dried.class)),
            rule(
                    "rejects counted at a step",
                    "recipe",
                    "recipe; folding: card or envelope",
                    "beta distribution of k + ½ and n − k + ½",
                    seen -> Optional.of(((Measurement.Count) seen.reading()).step() + " "
                            + seen.record().recipe()),
                    Case::rejects,
                    List.of(
                            "reject.forming",
                            "reject.pressing",
                            "reject.drying",
                            "reject.sizing",
                            "reject.cutting",
                            "reject.folding"),
                    List.of(Measurement.Count.class)),
            rule(
                    "time of a step",
                    "nothing; for forming the size of a sheet",
                    "everything; for forming small or large",
                    "time/count",
                    EACH,
                    Case::labour,
                    java.util.Arrays.stream(Measurement.Work.values())
                            .map(Measurement.Work::assumption)
                            .toList(),
                    List.of(Measurement.Hours.class)),
            rule(
                    "five finished sheets or more",
                    "recipe",
                    "recipe",
                    "1.645 sd/mean of mass over area",
                    seen -> seen.record()
                                            .measurements(Measurement.Finished.class)
                                            .size()
                                    >= FEW
                            ? Optional.of(seen.record())
                            : Optional.empty(),
                    Case::scatter,
                    List.of("sheet.scatter-grammage"),
                    List.of(Measurement.Finished.class)));

    private static Rule rule(
            String reading,
            String needs,
            String scope,
            String form,
            Key key,
            Form way,
            List<String> ids,
            List<Class<? extends Measurement>> takes) {
        return new Rule(new Calibration.SetRow(ids, reading, needs, scope, form), takes, key, way);
    }

    private static long beaten(BatchRecord record) {
        return record.measurements(Measurement.NumberRead.class).stream()
                        .filter(one -> one.beating().value().si() > 0)
                        .count()
                + record.measurements(Measurement.FreenessRead.class).stream()
                        .filter(one -> one.beating().value().si() > 0)
                        .count();
    }

    private static Optional<Object> pressed(Seen seen) {
        return ((Measurement.WeighedSheet) seen.reading()).pressed().map(mass -> seen);
    }

    private static Optional<Object> ovened(Seen seen) {
        return ((Measurement.Finished) seen.reading()).ovenDry().map(mass -> seen);
    }

    private static Optional<Object> measuredThick(Seen seen) {
        return ((Measurement.Finished) seen.reading()).caliper().map(caliper -> seen);
    }

    private static Optional<Measurement.Marks> free(Seen seen) {
        return Optional.of((Measurement.Marks) seen.reading())
                .filter(marks -> marks.restraint().equals(Restraint.HUNG));
    }

    /** Readings taken together, with the store as it stands and what else their batch says. */
    static final class Case {
        private final Assumptions store;
        private final Assumptions taken;
        private final List<Seen> seen;
        private final List<Dryer> dryers;
        private final BatchRecord record;
        private final List<Measurement> companions = new ArrayList<>();
        private final List<Notice> notices = new ArrayList<>();

        /**
         * What is read, and what is known.
         *
         * @param store what is known, or tried in its place
         * @param taken what is known, and was when the making was planned
         */
        Case(Assumptions store, Assumptions taken, List<Seen> seen, List<Dryer> dryers) {
            this.store = store;
            this.taken = taken;
            this.seen = seen;
            this.dryers = dryers;
            this.record = seen.get(0).record();
        }

        List<Measurement> companions() {
            return companions;
        }

        List<Notice> notices() {
            return notices;
        }

        Assumptions moistureAsBought() {
            Measurement.MoistureSample sample = one(Measurement.MoistureSample.class);
            return BoughtFibre.calibrateMoisture(
                    store, sample.fibre(), sample.form(), sample.asBought(), sample.dried());
        }

        Assumptions fibreYield() {
            Measurement.Cooked cooked = one(Measurement.Cooked.class);
            return BoughtFibre.calibrateYield(store, cooked.fibre(), cooked.form(), cooked.asBought(), cooked.stuff());
        }

        Assumptions chart() {
            Measurement.BothTesters read = one(Measurement.BothTesters.class);
            return DrainabilityModel.calibrateChart(store, Scope.GENERAL, read.number(), read.freeness());
        }

        /** Only one point can be moved, so the most beaten sample is taken and the others kept for the record. */
        Assumptions waterSpun() {
            Measurement.WaterSpun most = seen.stream()
                    .map(one -> (Measurement.WaterSpun) one.reading())
                    .max(Comparator.comparingDouble(one -> one.number().value().si()))
                    .orElseThrow();
            List<Measurement.WaterSpun> same = seen.stream()
                    .map(one -> (Measurement.WaterSpun) one.reading())
                    .filter(one ->
                            one.number().value().si() == most.number().value().si())
                    .toList();
            double value = same.stream()
                    .mapToDouble(one -> one.value().value().si())
                    .average()
                    .orElseThrow();
            double error = Math.sqrt(same.stream()
                            .mapToDouble(one -> one.value().error().si())
                            .map(one -> one * one)
                            .sum())
                    / same.size();
            Assumptions found = WaterRetentionModel.calibrate(
                    store,
                    furnish().scope(),
                    most.number(),
                    Reading.of(Kinds.WATER_RETENTION.ofSi(value, "g/g"), Kinds.WATER_RETENTION.ofSi(error, "g/g")),
                    most.spin());
            String id = "fibre.water-retention-well-beaten";
            Assumption after = found.get(id, furnish().scope());
            Optional<Assumption> known = store.find(id, furnish().scope());
            if (known.isPresent()
                    && known.get().basis() != Basis.GIVEN
                    && known.get().low() < known.get().high()
                    && after.high() / after.low()
                            > known.get().high() / known.get().low()) {
                // The number must not move without its value.
                throw Refused.of(
                        "calibration.less-sure",
                        id + ": the readings leave " + Calibration.band(after) + ", less sure than the "
                                + Calibration.band(known.get())
                                + " known without them; that is kept. Measure more surely.",
                        "assumption",
                        id,
                        "found",
                        Calibration.band(after),
                        "known",
                        Calibration.band(known.get()));
            }
            if (same.size() < seen.size()) {
                notices.add(Notice.note(
                        "calibration.most-beaten",
                        "Water retention of " + furnish() + ": of " + seen.size()
                                + " samples the most beaten, at "
                                + most.number().value()
                                + ", gives the point of well-beaten fibre; the less beaten give shrinkage only.",
                        "samples",
                        seen.size(),
                        "number",
                        most.number().value().toString()));
            }
            return found;
        }

        Assumptions beating() {
            List<BeatingRecord.Point<SchopperRiegler>> points = new ArrayList<>();
            for (Seen one : seen) {
                if (one.reading() instanceof Measurement.NumberRead read) {
                    points.add(BeatingRecord.Point.of(worked(one.record(), read.beating()), read.number()));
                } else if (one.reading() instanceof Measurement.FreenessRead read) {
                    points.add(BeatingRecord.Point.of(worked(one.record(), read.beating()), number(read)));
                }
            }
            return BeatingModel.calibrate(store, furnish(), beater(), points);
        }

        Assumptions draining() {
            Measurement.TimedSheet timed = one(Measurement.TimedSheet.class);
            return DrainageModel.calibrate(
                    store,
                    Scope.at(vat()),
                    timed.time(),
                    timed.depth(),
                    timed.stock(),
                    drainability(),
                    Water.at(timed.water()));
        }

        Assumptions retention() {
            Measurement.WaterDried dried = one(Measurement.WaterDried.class);
            return RetentionModel.calibrateByWater(store, furnish(), vat(), dried.dripping(), dried.vat());
        }

        Assumptions jar() {
            Measurement.JarCompared jar = one(Measurement.JarCompared.class);
            return RetentionModel.calibrateByJar(
                    store, jar.additive(), jar.circumstance(), jar.given(), jar.vat(), jar.jar());
        }

        Assumptions burnt() {
            Measurement.Burnt burnt = one(Measurement.Burnt.class);
            return RetentionModel.calibrateByAsh(
                    withRetention(furnish().scope().on(vat())),
                    furnish().scope().on(vat()),
                    burnt.additive(),
                    burnt.circumstance(),
                    burnt.dose(),
                    burnt.sheetAsh(),
                    burnt.fibreAsh(),
                    burnt.residue());
        }

        /** The store, with what a blend keeps as the mean by mass of what its fibres keep. */
        private Assumptions withRetention(Scope scope) {
            if (!furnish().isBlend()) {
                return store;
            }
            double likely = 0;
            double low = 0;
            double high = 0;
            for (Fibre fibre : furnish().fibres()) {
                double share = furnish().share(fibre).si();
                Assumption of = store.get("vat.retention", fibre.scope().on(vat()));
                likely += share * of.likelySi();
                low += share * of.lowSi();
                high += share * of.highSi();
            }
            return store.measured("vat.retention", scope, likely, low, high);
        }

        Assumptions couched() {
            Measurement.WeighedSheet sheet = one(Measurement.WeighedSheet.class);
            return CouchedSheet.calibrate(store, Scope.at(vat()), sheet.couched(), sheet.ovenDry());
        }

        Assumptions lift() {
            Amount<?> planned = record.planned().get(BatchRecord.SHEET_SOLIDS);
            if (planned == null || planned.kind() != Kinds.MASS || !(planned.si() > 0)) {
                throw Refused.of(
                        "calibration.planned-mass",
                        "planned " + BatchRecord.SHEET_SOLIDS + ": " + planned + " given; must be a mass above zero.",
                        "given",
                        String.valueOf(planned));
            }
            List<Reading<Mass>> sheets = seen.stream()
                    .map(one -> ((Measurement.WeighedSheet) one.reading()).ovenDry())
                    .toList();
            return Vat.calibrateLift(
                    store, Scope.at(vat()), Kinds.MASS.ofSi(planned.si() * keptBeyondPlan(), "g"), sheets);
        }

        /**
         * What a sheet keeps over what it was planned to keep. The plan took the likely retention; were another one true, a
         * sheet would have been planned as much heavier, and the dip would lift as much less.
         */
        private double keptBeyondPlan() {
            Optional<Furnish> made = record.furnish();
            if (made.isEmpty()) {
                return 1;
            }
            double kept = 0;
            double planned = 0;
            for (Fibre fibre : made.get().fibres()) {
                double part = made.get().share(fibre).si();
                Scope scope = fibre.scope().on(vat());
                kept += part * store.si("vat.retention", scope);
                planned += part * taken.si("vat.retention", scope);
            }
            return kept / planned;
        }

        Assumptions pressing() {
            Measurement.WeighedSheet sheet = one(Measurement.WeighedSheet.class);
            Measurement.Pressed way = companion(Measurement.Pressed.class, "how the sheets were pressed");
            CouchedSheet couched = CouchedSheet.weighed(
                    sheet.couched().value(),
                    sheet.ovenDry().value(),
                    sheet.width().value(),
                    sheet.height().value());
            // An error of the oven-dry mass moves the moisture ratio as much as one of the pressed mass does.
            Reading<Mass> mass = sheet.pressed().orElseThrow();
            double error = Math.hypot(
                    mass.error().si(),
                    sheet.ovenDry().error().si()
                            * mass.value().si()
                            / sheet.ovenDry().value().si());
            return PressingModel.calibrate(
                    store,
                    Scope.at(press()),
                    couched,
                    Reading.of(mass.value(), Kinds.MASS.ofSi(error, "g")),
                    waterRetention(),
                    way.pressure().value(),
                    way.hold().value());
        }

        Assumptions pressedSolids() {
            Measurement.WeighedSheet sheet = one(Measurement.WeighedSheet.class);
            return PressedSheet.calibrate(store, recipeDryer(), sheet.pressed().orElseThrow(), sheet.ovenDry());
        }

        Assumptions sorption() {
            Measurement.Finished sheet = one(Measurement.Finished.class);
            return SorptionModel.calibrate(
                    store, furnish().scope(), sheet.mass(), sheet.ovenDry().orElseThrow(), sheet.air());
        }

        Assumptions moistureConditioned() {
            Measurement.Finished sheet = one(Measurement.Finished.class);
            return DrySheet.calibrate(
                    store, recipeDryer(), sheet.mass(), sheet.ovenDry().orElseThrow());
        }

        Assumptions density() {
            Measurement.Finished sheet = one(Measurement.Finished.class);
            Measurement.Pressed way = companion(Measurement.Pressed.class, "how the sheets were pressed");
            return DensityModel.calibrate(
                    store,
                    furnish(),
                    grammage(sheet),
                    sheet.caliper().orElseThrow(),
                    way.pressure().value(),
                    beaten());
        }

        Assumptions densityMeasured() {
            Measurement.Finished sheet = one(Measurement.Finished.class);
            return DensityModel.calibrateMeasured(
                    store, recipeDryer(), grammage(sheet), sheet.caliper().orElseThrow());
        }

        Assumptions shrinkageMeasured() {
            Measurement.Marks marks = one(Measurement.Marks.class);
            Scope scope = recipeDryer();
            Dryer dryer = dryer();
            if (!dryer.restraint().equals(marks.restraint().subject())) {
                throw Refused.of(
                        "calibration.other-restraint",
                        "marks: dried under the restraint \"" + marks.restraint() + "\"; the dryer " + dryer.name()
                                + " holds as \"" + dryer.restraint() + "\", so they say nothing about its sheets.",
                        "given",
                        marks.restraint().name(),
                        "dryer",
                        dryer.restraint());
            }
            return ShrinkageModel.calibrateMeasured(
                    store, scope, marks.wetAlong(), marks.dryAlong(), marks.wetAcross(), marks.dryAcross());
        }

        Assumptions shrinkageLimit() {
            List<ShrinkageModel.Strip> strips = new ArrayList<>();
            for (Seen one : seen) {
                Case single = new Case(store, taken, List.of(one), dryers);
                Shrinkage both = single.whole((Measurement.Marks) one.reading());
                strips.add(ShrinkageModel.Strip.of(
                        single.beaten(),
                        Kinds.LINEAR_SHRINKAGE.ofSi((both.alongFraction() + both.acrossFraction()) / 2, "%")));
                companions.addAll(single.companions);
            }
            ShrinkageModel.Calibrated fit = ShrinkageModel.calibrate(store, furnish(), beater(), strips);
            notices.addAll(fit.notices());
            return fit.assumptions();
        }

        Assumptions shrinkageByRetention() {
            List<Spun> strips = new ArrayList<>();
            for (Seen one : seen) {
                Case single = new Case(store, taken, List.of(one), dryers);
                Measurement.WaterSpun spun = single.companion(Measurement.WaterSpun.class, "the water retention value");
                if (spun.spin() != WaterRetentionModel.Spin.ISO_23714) {
                    throw needs("a water retention value spun by ISO 23714");
                }
                Shrinkage both = single.whole((Measurement.Marks) one.reading());
                strips.add(new Spun(
                        spun.value().value(),
                        Kinds.LINEAR_SHRINKAGE.ofSi((both.alongFraction() + both.acrossFraction()) / 2, "%")));
                companions.addAll(single.companions);
            }
            Spun first = strips.stream().min(Spun.BY_WATER).orElseThrow();
            Spun second = strips.stream().max(Spun.BY_WATER).orElseThrow();
            if (!(second.retention().si() > first.retention().si())) {
                throw needs("dried free of a second water retention value");
            }
            return ShrinkageModel.calibrateByRetention(
                    store,
                    furnish().scope(),
                    first.retention(),
                    first.shrinkage(),
                    second.retention(),
                    second.shrinkage());
        }

        Assumptions twoAirs() {
            Measurement.TwoAirs strip = one(Measurement.TwoAirs.class);
            return HygroexpansionModel.calibrate(
                    store,
                    furnish().scope(),
                    strip.first(),
                    strip.second(),
                    strip.shrunk(),
                    SorptionModel.from(store, furnish()),
                    strip.firstAir(),
                    strip.secondAir());
        }

        Assumptions directions() {
            Shrinkage both = whole(one(Measurement.Marks.class));
            return ShrinkageModel.calibrateDirections(store, furnish().scope(), both);
        }

        /**
         * What a sheet dried free would shrink to its last water: marks are measured in air, where some is left. The air
         * is that in which the batch was weighed, or the one paper is stated in.
         */
        private Shrinkage whole(Measurement.Marks marks) {
            ShrinkageModel model = ShrinkageModel.from(store, furnish().scope());
            List<Air> airs = record.measurements(Measurement.Finished.class).stream()
                    .map(Measurement.Finished::air)
                    .distinct()
                    .toList();
            Amount<MoistureRatio> left = SorptionModel.from(store, furnish())
                    .fromWetSide()
                    .ratio(airs.size() == 1 ? airs.get(0) : Air.reference());
            return Shrinkage.across(model.wholeFree(side(marks.wetAcross(), marks.dryAcross()), left))
                    .along(model.wholeFree(side(marks.wetAlong(), marks.dryAlong()), left));
        }

        private static Amount<LinearShrinkage> side(Reading<Length> wet, Reading<Length> dry) {
            double before = Kinds.LENGTH.siAboveZero(wet.value(), "marks on the wet sheet");
            return Kinds.LINEAR_SHRINKAGE.ofSi(
                    1 - Kinds.LENGTH.siWithin(dry.value(), "marks on the dry sheet", 0, before) / before, "%");
        }

        Assumptions drying() {
            Measurement.Dried dried = one(Measurement.Dried.class);
            Dryer dryer = dryer();
            double dry = Kinds.MASS.siAboveZero(dried.ovenDry().value(), "oven-dry mass of the sheets");
            double start = Kinds.MASS.siWithin(dried.before().value(), "mass of the sheets before", dry, 1e7) / dry - 1;
            double end = Kinds.MASS.siWithin(
                                    dried.after().value(),
                                    "mass of the sheets after",
                                    dry,
                                    dried.before().value().si())
                            / dry
                    - 1;
            if (dryer instanceof Dryer.FanStack stack) {
                return DryingModel.calibrateByWeighings(
                        store,
                        stack,
                        dried.before(),
                        dried.after(),
                        dried.ovenDry().value(),
                        dried.time().value(),
                        dried.faces(),
                        dried.air());
            }
            if (dryer instanceof Dryer.Blotters blotters) {
                return DryingModel.calibrate(
                        store,
                        blotters,
                        Kinds.MOISTURE_RATIO.ofSi(start, "g/g"),
                        Kinds.MOISTURE_RATIO.ofSi(end, "g/g"),
                        roomRatio(dried),
                        dried.changes());
            }
            DryingModel.Batch batch = DryingModel.Batch.of(
                    dried.ovenDry().value(),
                    dried.faces(),
                    Kinds.MOISTURE_RATIO.ofSi(start, "g/g"),
                    Kinds.MOISTURE_RATIO.ofSi(end, "g/g"),
                    roomRatio(dried));
            return DryingModel.calibrate(store, dryer, batch, dried.time(), dried.air());
        }

        private Amount<MoistureRatio> roomRatio(Measurement.Dried dried) {
            return SorptionModel.from(store, furnish()).fromWetSide().ratio(dried.air());
        }

        /**
         * Counts of several batches are added up. Where they scatter more than one share would let them, both counts
         * are made smaller by the ratio, which widens the band.
         *
         * @source beta distribution with the prior of Jeffreys, recalled, not looked up
         */
        Assumptions rejects() {
            Measurement.Step step = ((Measurement.Count) seen.get(0).reading()).step();
            double handled = 0;
            double rejected = 0;
            for (Seen one : seen) {
                handled += ((Measurement.Count) one.reading()).handled();
                rejected += ((Measurement.Count) one.reading()).rejected();
            }
            double share = rejected / handled;
            double chi = 0;
            for (Seen one : seen) {
                Measurement.Count count = (Measurement.Count) one.reading();
                double off = count.rejected() - share * count.handled();
                chi += share > 0 && share < 1 ? off * off / (count.handled() * share * (1 - share)) : 0;
            }
            int free = seen.size() - 1;
            double over = 1;
            if (free > 0 && ChiSquaredDistribution.of(free).survivalProbability(chi) < 0.05) {
                over = chi / free;
                notices.add(Notice.warning(
                        "calibration.counts-disagree",
                        "Rejects in " + step.word() + " of " + seen.size() + " counts scatter "
                                + Units.fourDigits(Math.sqrt(over))
                                + " times as far as one share would let them; the band is widened as much.",
                        "step",
                        step.word(),
                        "counts",
                        seen.size(),
                        "ratio",
                        Math.sqrt(over)));
            }
            double bad = rejected / over + 0.5;
            double good = (handled - rejected) / over + 0.5;
            BetaDistribution beta = BetaDistribution.of(bad, good);
            boolean fold = step == Measurement.Step.FOLDING_CARDS || step == Measurement.Step.FOLDING_ENVELOPES;
            Scope scope = step == Measurement.Step.FOLDING_CARDS
                    ? Scope.of("card")
                    : step == Measurement.Step.FOLDING_ENVELOPES ? Scope.of("envelope") : Scope.of(recipe());
            return store.measured(
                    "reject." + (fold ? "folding" : step.word()),
                    scope,
                    bad / (bad + good),
                    Math.max(1e-9, beta.inverseCumulativeProbability(0.05)),
                    Math.min(1 - 1e-9, beta.inverseCumulativeProbability(0.95)));
        }

        Assumptions labour() {
            Measurement.Hours hours = one(Measurement.Hours.class);
            Scope scope = Scope.GENERAL;
            if (hours.work() == Measurement.Work.FORMING) {
                scope = Scope.of(sheetArea() > store.si("labour.large-sheet", Scope.GENERAL) ? "large" : "small");
            }
            return store.measuredFactor(
                    hours.work().assumption(),
                    scope,
                    hours.time().value().si() / hours.count(),
                    Math.hypot(Normal.FIVE_PERCENT_POINT * hours.time().relativeError(), LEFT_TIME));
        }

        private double sheetArea() {
            Optional<Double> couched = record.measurements(Measurement.WeighedSheet.class).stream()
                    .map(sheet ->
                            sheet.width().value().si() * sheet.height().value().si())
                    .findFirst();
            return couched.or(() -> record.measurements(Measurement.Finished.class).stream()
                            .map(sheet -> sheet.width().value().si()
                                    * sheet.height().value().si())
                            .findFirst())
                    .orElseThrow(() -> needs("the size of a sheet"));
        }

        Assumptions scatter() {
            List<Amount<Grammage>> weights = new ArrayList<>();
            for (Seen one : seen) {
                Measurement.Finished sheet = (Measurement.Finished) one.reading();
                weights.add(Kinds.GRAMMAGE.ofSi(
                        sheet.mass().value().si()
                                / (Kinds.LENGTH.siAboveZero(sheet.width().value(), "width of a sheet")
                                        * Kinds.LENGTH.siAboveZero(
                                                sheet.height().value(), "height of a sheet")),
                        "g/m2"));
            }
            SheetQuality<Grammage> series = SheetQuality.of(Kinds.GRAMMAGE, weights);
            double likely = Normal.FIVE_PERCENT_POINT * series.deviationSi() / series.meanSi();
            int free = seen.size() - 1;
            ChiSquaredDistribution chi = ChiSquaredDistribution.of(free);
            if (!(likely > 0)) {
                throw Refused.of(
                        "calibration.no-scatter",
                        "finished sheets: all of the same weight; the scale is too coarse to show their scatter.");
            }
            return store.measured(
                    "sheet.scatter-grammage",
                    Scope.of(recipe()),
                    likely,
                    likely * Math.sqrt(free / chi.inverseCumulativeProbability(0.95)),
                    likely * Math.sqrt(free / chi.inverseCumulativeProbability(0.05)));
        }

        private Reading<Grammage> grammage(Measurement.Finished sheet) {
            Amount<Grammage> conditioned = DrySheet.weighed(
                            sheet.mass().value(),
                            sheet.width().value(),
                            sheet.height().value())
                    .in(sheet.air(), SorptionModel.from(store, furnish()).fromWetSide())
                    .conditioned()
                    .grammage();
            double error = Math.hypot(
                    sheet.mass().relativeError(),
                    Math.hypot(sheet.width().relativeError(), sheet.height().relativeError()));
            return Reading.of(conditioned, Kinds.GRAMMAGE.ofSi(Math.max(1e-9, error * conditioned.si()), "g/m2"));
        }

        /** The drainability of the stock as made: as last read, or else as the beating time gives it. */
        private Reading<SchopperRiegler> drainability() {
            Optional<Measurement.NumberRead> read = record.measurements(Measurement.NumberRead.class).stream()
                    .max(Comparator.comparingDouble(one -> one.beating().value().si()));
            Optional<Measurement.FreenessRead> freeness = record.measurements(Measurement.FreenessRead.class).stream()
                    .max(Comparator.comparingDouble(one -> one.beating().value().si()));
            double first = read.map(one -> one.beating().value().si()).orElse(-1.0);
            double second = freeness.map(one -> one.beating().value().si()).orElse(-1.0);
            if (first >= 0 && first >= second) {
                return read.orElseThrow().number();
            }
            if (second >= 0) {
                return number(freeness.orElseThrow());
            }
            Amount<Time> time = worked(record, beatingTime());
            Amount<SchopperRiegler> number = BeatingState.after(store, furnish(), beater(), time)
                    .drainability()
                    .orElseThrow();
            double error = 0;
            for (Fibre fibre : furnish().fibres()) {
                double share = furnish().share(fibre).si();
                Estimate<SchopperRiegler> one =
                        BeatingModel.from(store, fibre.scope().on(beater())).forecast(time);
                error += share * (one.high().si() - one.low().si()) / (2 * Normal.FIVE_PERCENT_POINT);
            }
            return Reading.of(number, Kinds.SCHOPPER_RIEGLER.ofSi(error, "SR"));
        }

        /** How far the fibre was beaten: by its drainability where that was read, else by the time. */
        private BeatingState beaten() {
            boolean read = !record.measurements(Measurement.NumberRead.class).isEmpty()
                    || !record.measurements(Measurement.FreenessRead.class).isEmpty();
            String where = record.beater().orElse("");
            return read
                    ? BeatingState.measured(
                            store, furnish(), where, drainability().value())
                    : BeatingState.after(store, furnish(), where, worked(record, beatingTime()));
        }

        /** The time a full load would take for what smaller loads get in a time. */
        private Amount<Time> worked(BatchRecord batch, Amount<Time> time) {
            double filled = batch.measurements(Measurement.Load.class).stream()
                    .mapToDouble(load -> load.filled().si())
                    .average()
                    .orElse(1);
            double gain = BeatingLaw.gain(filled, 1, store.si("beater.load-range-low", Scope.GENERAL));
            return Kinds.TIME.ofSi(time.si() * gain, "h");
        }

        private Reading<Time> worked(BatchRecord batch, Reading<Time> time) {
            return Reading.of(worked(batch, time.value()), worked(batch, time.error()));
        }

        private Reading<SchopperRiegler> number(Measurement.FreenessRead read) {
            return DrainabilityModel.from(store, Scope.GENERAL).schopperRieglerOf(read.freeness());
        }

        private Amount<WaterRetention> waterRetention() {
            Reading<SchopperRiegler> number = drainability();
            Furnish of = furnish();
            if (store.find("fibre.water-retention-well-beaten", of.scope()).isPresent()) {
                return WaterRetentionModel.from(store, of.scope())
                        .at(number.value())
                        .value();
            }
            double value = 0;
            for (Fibre fibre : of.fibres()) {
                value += of.share(fibre).si()
                        * WaterRetentionModel.from(store, fibre.scope())
                                .at(number.value())
                                .value()
                                .si();
            }
            return Kinds.WATER_RETENTION.ofSi(value, "g/g");
        }

        private Amount<Time> beatingTime() {
            List<Measurement.Load> loads = record.measurements(Measurement.Load.class);
            if (!loads.isEmpty()) {
                companions.addAll(loads);
                return Kinds.TIME.ofSi(
                        loads.stream()
                                .mapToDouble(load -> load.time().value().si())
                                .average()
                                .orElseThrow(),
                        "h");
            }
            List<Double> read = new ArrayList<>();
            record.measurements(Measurement.NumberRead.class)
                    .forEach(one -> read.add(one.beating().value().si()));
            record.measurements(Measurement.FreenessRead.class)
                    .forEach(one -> read.add(one.beating().value().si()));
            return Kinds.TIME.ofSi(
                    read.stream().max(Comparator.naturalOrder()).orElseThrow(() -> needs("the beating time")), "h");
        }

        private <M extends Measurement> M one(Class<M> sort) {
            return sort.cast(seen.get(0).reading());
        }

        private <M extends Measurement> M companion(Class<M> sort, String what) {
            List<M> found = record.measurements(sort);
            if (found.isEmpty()) {
                throw needs(what);
            }
            if (found.stream().distinct().count() > 1) {
                throw Refused.of(
                        "calibration.which",
                        "calibration: " + record.name() + " states " + what + " in " + found.size()
                                + " ways; which of them this reading belongs to is not stated. Keep a record for each.",
                        "record",
                        record.name(),
                        "readings",
                        found.size());
            }
            companions.addAll(found);
            return found.get(0);
        }

        private Refused needs(String what) {
            return Refused.of(
                    "calibration.needs",
                    "calibration: " + record.name() + " does not state " + what + ", which this reading needs.",
                    "record",
                    record.name(),
                    "needs",
                    what);
        }

        private Furnish furnish() {
            return record.furnish().orElseThrow(() -> needs("the furnish"));
        }

        private String recipe() {
            return record.recipe().orElseThrow(() -> needs("the recipe"));
        }

        private String beater() {
            return record.beater().orElseThrow(() -> needs("the beater"));
        }

        private String vat() {
            return record.vat().orElseThrow(() -> needs("the vat"));
        }

        private String press() {
            return record.press().orElseThrow(() -> needs("the press"));
        }

        private Scope recipeDryer() {
            return Scope.of(recipe()).on(record.dryer().orElseThrow(() -> needs("the dryer")));
        }

        private Dryer dryer() {
            String name = record.dryer().orElseThrow(() -> needs("the dryer"));
            return dryers.stream()
                    .filter(one -> one.name().equals(name))
                    .findFirst()
                    .orElseThrow(() -> Refused.of(
                            "calibration.unknown-dryer",
                            "calibration: the dryer \"" + name + "\" of " + record.name()
                                    + " is not among those given: "
                                    + dryers.stream().map(Dryer::name).toList() + ".",
                            "record",
                            record.name(),
                            "dryer",
                            name,
                            "accepted",
                            dryers.stream().map(Dryer::name).toList()));
        }
    }
}
