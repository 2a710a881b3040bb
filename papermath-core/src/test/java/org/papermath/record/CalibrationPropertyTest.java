package org.papermath.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.withinPercentage;
import static org.papermath.quantity.Amounts.celsius;
import static org.papermath.quantity.Amounts.grams;
import static org.papermath.quantity.Amounts.hours;
import static org.papermath.quantity.Amounts.minutes;
import static org.papermath.quantity.Amounts.mm;
import static org.papermath.quantity.Amounts.seconds;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Time;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Scale;
import org.papermath.air.Air;
import org.papermath.air.Water;
import org.papermath.drying.Dryer;
import org.papermath.drying.DryingModel;
import org.papermath.evidence.Assumption;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Reading;
import org.papermath.evidence.Role;
import org.papermath.evidence.Scope;
import org.papermath.fibre.Fibres;
import org.papermath.fibre.Furnish;
import org.papermath.fibre.SorptionModel;
import org.papermath.press.PressingModel;
import org.papermath.pulp.BeatingModel;
import org.papermath.pulp.DrainabilityModel;
import org.papermath.pulp.WaterRetentionModel;
import org.papermath.quantity.Amount;
import org.papermath.quantity.FibreConcentration;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.RelativeHumidity;
import org.papermath.quantity.SchopperRiegler;
import org.papermath.quantity.SheetPressure;
import org.papermath.sheet.CouchedSheet;
import org.papermath.sheet.DensityModel;
import org.papermath.sheet.DryingPath;
import org.papermath.sheet.Restraint;
import org.papermath.sheet.ShrinkageModel;
import org.papermath.testing.Beaten;
import org.papermath.vat.DrainageModel;

/** Readings made from known values give those values back. */
class CalibrationPropertyTest {
    private static final Assumptions TABLE = Assumptions.standard();
    private static final Scope ABACA = Scope.of("abaca");
    private static final Scope BEATER = ABACA.on("big beater");
    private static final Scope VAT = Scope.at("long vat");
    private static final Scope PRESS = Scope.at("green press");
    private static final Dryer.FanStack STACK = new Dryer.FanStack("the stack", Kinds.VOLUME_FLOW.of(600, "m3/h"), 80);
    private static final Air ROOM = Air.of(celsius(23), RelativeHumidity.percent(50));
    private static final Amount<SheetPressure> PRESSURE = Kinds.SHEET_PRESSURE.of(0.4, "MPa");

    private static BatchRecord.Builder batch(String name) {
        return BatchRecord.builder(name, LocalDate.of(2026, 3, 14))
                .recipe("tide grey", Furnish.of(Fibres.ABACA))
                .beater("big beater")
                .vat("long vat")
                .press("green press")
                .dryer("the stack");
    }

    /** A reading with an error of a ten-thousandth. */
    private static <Q extends Quantity<Q>> Reading<Q> near(Amount<Q> value) {
        return Reading.of(value, value.kind().ofSi(Math.max(1e-6, 1e-4 * value.si())));
    }

    private static void comesBack(Calibration calibration, Assumptions truth, String id, Scope scope) {
        Assumption found = calibration.assumptions().get(id, scope);
        assertThat(found.scope()).as(id).isEqualTo(scope);
        assertThat(found.likely()).as(id).isCloseTo(truth.get(id, scope).likely(), withinPercentage(0.01));
        assertThat(found.low()).as(id).isLessThan(found.likely());
        assertThat(found.high()).as(id).isGreaterThan(found.likely());
    }

    /** The closed forms invert the models, so nothing but rounding lies between; the tolerance is a ten-thousandth. */
    @Property(tries = 60, seed = "2026")
    void readingsGiveTheValuesBack(
            @ForAll @Scale(4) @DoubleRange(min = 0.15, max = 0.5) double rate,
            @ForAll @Scale(4) @DoubleRange(min = 0.85, max = 1.3) double exponent,
            @ForAll @Scale(4) @DoubleRange(min = 0.95, max = 1.25) double press,
            @ForAll @Scale(4) @DoubleRange(min = 0.96, max = 0.985) double retention,
            @ForAll @Scale(4) @DoubleRange(min = 1.8e9, max = 4.5e9) double resistance,
            @ForAll @Scale(6) @DoubleRange(min = 0.0006, max = 0.0025) double fan) {
        Assumptions truth = TABLE.given("beating.rate", BEATER, rate)
                .given("beating.exponent", BEATER, exponent)
                .given("press.factor", PRESS, press)
                .given("vat.retention", ABACA.on("long vat"), retention)
                .given("drainage.resistance-factor", VAT, resistance)
                .given("drying.stack-conductance", Scope.at(STACK.name()), fan);
        BeatingModel beating = BeatingModel.from(truth, BEATER);
        Amount<SchopperRiegler> number = beating.after(hours(3));
        CouchedSheet couched = CouchedSheet.weighed(grams(80), grams(12), mm(300), mm(400));
        Amount<Mass> pressed = PressingModel.from(truth, PRESS)
                .press(
                        couched,
                        WaterRetentionModel.from(truth, ABACA).at(number).value(),
                        PRESSURE,
                        minutes(30))
                .sheet()
                .mass();
        Amount<FibreConcentration> vat = FibreConcentration.gramsPerLitre(6);
        Amount<Time> drained = DrainageModel.from(truth, VAT)
                .drain(
                        mm(20),
                        vat,
                        DrainabilityModel.from(truth, VAT).resistance(number).likely(),
                        Water.at(celsius(20)))
                .time();
        DryingModel.Result dried = DryingModel.from(truth, Scope.at(STACK.name()))
                .dry(
                        STACK,
                        DryingModel.Batch.of(
                                grams(2000),
                                Kinds.AREA.of(20, "m2"),
                                Kinds.MOISTURE_RATIO.of(2, "g/g"),
                                Kinds.MOISTURE_RATIO.of(0.1, "g/g"),
                                Kinds.MOISTURE_RATIO.of(0.08, "g/g")),
                        ROOM);
        BatchRecord record = batch("made")
                .add(
                        new Measurement.NumberRead(near(hours(1.5)), near(beating.after(hours(1.5)))),
                        new Measurement.NumberRead(near(hours(3)), near(number)),
                        new Measurement.WeighedSheet(
                                near(grams(80)),
                                Optional.of(near(pressed)),
                                near(grams(12)),
                                near(mm(300)),
                                near(mm(400))),
                        new Measurement.Pressed(Optional.empty(), near(PRESSURE), near(minutes(30))),
                        new Measurement.WaterDried(near(vat.multiply(1 - retention)), near(vat)),
                        new Measurement.TimedSheet(near(drained), near(mm(20)), near(vat), celsius(20)),
                        new Measurement.Dried(
                                near(grams(6000)),
                                near(Kinds.MASS.ofSi(6 - dried.rate().si() * 1800, "g")),
                                near(minutes(30)),
                                near(grams(2000)),
                                Kinds.AREA.of(20, "m2"),
                                0,
                                ROOM))
                .build();
        Calibration calibration = Calibration.of(TABLE, List.of(record), List.of(STACK));
        comesBack(calibration, truth, "beating.rate", BEATER);
        comesBack(calibration, truth, "beating.exponent", BEATER);
        comesBack(calibration, truth, "press.factor", PRESS);
        comesBack(calibration, truth, "vat.retention", ABACA.on("long vat"));
        comesBack(calibration, truth, "drainage.resistance-factor", VAT);
        comesBack(calibration, truth, "drying.stack-conductance", Scope.at(STACK.name()));
        bandsAreNarrower(calibration);
    }

    @Property(tries = 60, seed = "2026")
    void sheetsGiveTheValuesBack(
            @ForAll @Scale(4) @DoubleRange(min = 0.066, max = 0.084) double monolayer,
            @ForAll @Scale(4) @DoubleRange(min = 0.9, max = 1.15) double denser,
            @ForAll @Scale(4) @DoubleRange(min = 0.17, max = 0.31) double limit) {
        Assumptions truth = TABLE.given("sorption.monolayer", ABACA, monolayer).given("shrinkage.limit", BEATER, limit);
        for (String id : List.of("sheet.density-unbeaten", "sheet.density-long-beaten")) {
            truth = truth.given(id, ABACA, TABLE.get(id, ABACA).likely() * denser);
        }
        double ratio = SorptionModel.from(truth, Furnish.of(Fibres.ABACA))
                .fromWetSide()
                .ratio(ROOM)
                .si();
        double mass = 0.012 * (1 + ratio);
        Amount<Grammage> grammage = Kinds.GRAMMAGE.ofSi(mass / 0.12, "g/m2");
        double density = DensityModel.from(truth, ABACA)
                .density(PRESSURE, Beaten.hours(Fibres.ABACA, 3))
                .si();
        BatchRecord.Builder sheet = batch("sheet")
                .add(
                        new Measurement.Load(near(Kinds.VOLUME.of(25, "L")), near(hours(3))),
                        new Measurement.Pressed(Optional.empty(), near(PRESSURE), near(minutes(30))),
                        new Measurement.Finished(
                                near(mm(300)),
                                near(mm(400)),
                                near(Kinds.MASS.ofSi(mass, "g")),
                                Optional.of(near(Kinds.LENGTH.ofSi(grammage.si() / density, "mm"))),
                                Optional.of(near(grams(12))),
                                ROOM),
                        free(truth, 3));
        BatchRecord longer = batch("longer")
                .add(new Measurement.Load(near(Kinds.VOLUME.of(25, "L")), near(hours(6))), free(truth, 6))
                .build();
        Calibration calibration = Calibration.of(TABLE, List.of(sheet.build(), longer), List.of(STACK));
        comesBack(calibration, truth, "sorption.monolayer", ABACA);
        comesBack(calibration, truth, "sheet.density-unbeaten", ABACA);
        comesBack(calibration, truth, "sheet.density-long-beaten", ABACA);
        comesBack(calibration, truth, "shrinkage.limit", BEATER);
        assertThat(calibration
                        .assumptions()
                        .si("sheet.density-measured", Scope.of("tide grey").on("the stack")))
                .isCloseTo(density, withinPercentage(0.01));
        bandsAreNarrower(calibration);
    }

    private static Measurement free(Assumptions truth, double hours) {
        double left = 1
                - ShrinkageModel.from(truth, BEATER)
                        .along(
                                Beaten.hours(Fibres.ABACA, hours),
                                DryingPath.from(Kinds.MOISTURE_RATIO.of(1.5, "g/g"))
                                        .then(
                                                Restraint.HUNG,
                                                SorptionModel.from(truth, Furnish.of(Fibres.ABACA))
                                                        .fromWetSide()
                                                        .ratio(ROOM)))
                        .shrinkage()
                        .alongFraction();
        return new Measurement.Marks(
                Restraint.HUNG, near(mm(200)), near(mm(200 * left)), near(mm(200)), near(mm(200 * left)));
    }

    /** Any mix of readings, good or bad, changes physical values only, narrows their bands, and is accounted for. */
    @Property(tries = 60, seed = "2026")
    void everyReadingIsAccountedFor(
            @ForAll @IntRange(min = 1, max = 4) int batches,
            @ForAll @Scale(4) @DoubleRange(min = 1, max = 95) double number,
            @ForAll @Scale(4) @DoubleRange(min = 0, max = 30) double step,
            @ForAll @Scale(4) @DoubleRange(min = 1, max = 90) double dry,
            @ForAll @IntRange(min = 0, max = 40) int rejected,
            @ForAll @Scale(4) @DoubleRange(min = 0.1, max = 500) double time) {
        List<BatchRecord> records = new ArrayList<>();
        for (int i = 0; i < batches; i++) {
            records.add(batch("batch " + i)
                    .add(
                            new Measurement.NumberRead(
                                    near(hours(2)), near(SchopperRiegler.degrees(Math.min(100, number + i * step)))),
                            new Measurement.WeighedSheet(
                                    near(grams(80)),
                                    Optional.of(near(grams(35))),
                                    near(grams(dry)),
                                    near(mm(300)),
                                    near(mm(400))),
                            new Measurement.Pressed(Optional.empty(), near(PRESSURE), near(minutes(30))),
                            new Measurement.TimedSheet(
                                    near(seconds(time)),
                                    near(mm(20)),
                                    near(FibreConcentration.gramsPerLitre(6)),
                                    celsius(20)),
                            new Measurement.Count(Measurement.Step.FORMING, 40, (rejected + 7 * i) % 41),
                            new Measurement.FibreWeighed(Fibres.ABACA, near(grams(900))))
                    .build());
        }
        Calibration calibration = Calibration.of(TABLE, records, List.of(STACK));
        bandsAreNarrower(calibration);
        List<String> used = calibration.changes().stream()
                .flatMap(change -> change.from().stream())
                .toList();
        for (BatchRecord record : records) {
            String name = record.name() + " (" + record.date() + ")";
            for (Measurement reading : record.measurements(Measurement.FibreWeighed.class)) {
                assertThat(calibration.unused())
                        .anySatisfy(one -> assertThat(one.reading()).isSameAs(reading));
            }
            assertThat(used.contains(name)
                            || calibration.unused().stream()
                                            .filter(one -> one.record().equals(name))
                                            .count()
                                    > 3)
                    .isTrue();
        }
        assertThat(Calibration.of(TABLE, records, List.of(STACK)).assumptions().own())
                .isEqualTo(calibration.assumptions().own());
    }

    private static void bandsAreNarrower(Calibration calibration) {
        assertThat(calibration.assumptions().own()).hasSameSizeAs(calibration.changes());
        for (Calibration.Change change : calibration.changes()) {
            Assumption after = change.after();
            assertThat(after.role()).isEqualTo(Role.PHYSICAL);
            if (after.id().startsWith("making.")) {
                assertThat(change.from()).as(change.toString()).hasSizeGreaterThan(1);
                continue;
            }
            double makings = calibration
                    .assumptions()
                    .makingOf(after)
                    .map(one -> 2.6 * one.high())
                    .orElse(0.0);
            change.before()
                    .ifPresent(before -> assertThat(width(after) <= Math.hypot(width(before), makings) * (1 + 1e-9)
                                    || after.high() - after.low() <= (before.high() - before.low()) * (1 + 1e-9)
                                    || after.high() / after.low() <= before.high() / before.low() * (1 + 1e-9)
                                    || logit(after.high()) - logit(after.low())
                                            <= logit(before.high()) - logit(before.low()))
                            .as(change.toString())
                            .isTrue());
        }
    }

    private static double width(Assumption one) {
        return one.shape().scaled(one.high()) - one.shape().scaled(one.low());
    }

    private static double logit(double share) {
        return Math.log(share / (1 - share));
    }
}
