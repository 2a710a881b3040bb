package org.papermath.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;
import static org.papermath.quantity.Amounts.celsius;
import static org.papermath.quantity.Amounts.grams;
import static org.papermath.quantity.Amounts.hours;
import static org.papermath.quantity.Amounts.litres;
import static org.papermath.quantity.Amounts.minutes;
import static org.papermath.quantity.Amounts.mm;
import static org.papermath.quantity.Amounts.seconds;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.papermath.air.Air;
import org.papermath.drying.Dryer;
import org.papermath.evidence.Assumption;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Basis;
import org.papermath.evidence.Reading;
import org.papermath.evidence.Role;
import org.papermath.evidence.Scope;
import org.papermath.fibre.Fibre;
import org.papermath.fibre.Fibres;
import org.papermath.fibre.Furnish;
import org.papermath.fibre.SorptionModel;
import org.papermath.pulp.Additive;
import org.papermath.pulp.BeatingState;
import org.papermath.pulp.DrainabilityModel;
import org.papermath.pulp.RetentionModel;
import org.papermath.pulp.WaterRetentionModel;
import org.papermath.quantity.FibreConcentration;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;
import org.papermath.quantity.RelativeHumidity;
import org.papermath.quantity.SchopperRiegler;
import org.papermath.sheet.Restraint;

class CalibrationTest {
    private static final Assumptions TABLE = Assumptions.standard();
    private static final Air ROOM = Air.of(celsius(20), RelativeHumidity.percent(50));
    private static final Dryer STACK = new Dryer.FanStack("the stack", Kinds.VOLUME_FLOW.of(600, "m3/h"), 80);
    private static final Dryer BOARDS = Dryer.boards("the boards", 20);
    private static final Dryer LOFT = new Dryer.Loft("the loft", 1, 60);
    private static final Dryer BLOTTERS = Dryer.blotters("the blotters", 30);
    private static final List<Dryer> DRYERS = List.of(STACK, BOARDS, LOFT, BLOTTERS);

    private static BatchRecord.Builder batch(String name) {
        return BatchRecord.builder(name, LocalDate.of(2026, 3, 14))
                .recipe("tide grey", Furnish.of(Fibres.ABACA))
                .beater("big beater")
                .vat("long vat")
                .press("green press")
                .dryer("the boards");
    }

    private static Calibration of(BatchRecord... records) {
        return Calibration.of(TABLE, List.of(records), DRYERS);
    }

    private static Measurement number(double hours, double number) {
        return new Measurement.NumberRead(
                Reading.of(hours(hours), minutes(2)),
                Reading.of(SchopperRiegler.degrees(number), SchopperRiegler.degrees(1)));
    }

    private static Measurement count(Measurement.Step step, int handled, int rejected) {
        return new Measurement.Count(step, handled, rejected);
    }

    private static Measurement.WeighedSheet sheet(double couched, double pressed, double dry) {
        return new Measurement.WeighedSheet(
                Reading.of(grams(couched), grams(0.5)),
                Optional.of(Reading.of(grams(pressed), grams(0.1))),
                Reading.of(grams(dry), grams(0.02)),
                Reading.of(mm(300), mm(1)),
                Reading.of(mm(400), mm(1)));
    }

    private static Measurement.Pressed pressed() {
        return new Measurement.Pressed(
                Optional.empty(),
                Reading.of(Kinds.SHEET_PRESSURE.of(0.4, "MPa"), Kinds.SHEET_PRESSURE.of(0.02, "MPa")),
                Reading.of(minutes(20), seconds(10)));
    }

    private static Measurement.Finished finished(double mass, double thickness, double dry) {
        return new Measurement.Finished(
                Reading.of(mm(290), mm(0.5)),
                Reading.of(mm(390), mm(0.5)),
                Reading.of(grams(mass), grams(0.01)),
                Optional.of(Reading.of(mm(thickness), mm(0.005))),
                Optional.of(Reading.of(grams(dry), grams(0.01))),
                ROOM);
    }

    private static Measurement.Marks marks(Restraint how, double along, double across) {
        return new Measurement.Marks(
                how,
                Reading.of(mm(200), mm(0.3)),
                Reading.of(mm(along), mm(0.3)),
                Reading.of(mm(200), mm(0.3)),
                Reading.of(mm(across), mm(0.3)));
    }

    /** Half of what nine makings in ten of a share differ by, about its likely value. */
    private static double overMakings(Assumption share) {
        return 1.17 * TABLE.makingOf(share).orElseThrow().likely() * share.likely() * (1 - share.likely());
    }

    private static Assumption found(Calibration calibration, String id, Scope scope) {
        Assumption found = calibration.assumptions().get(id, scope);
        assertThat(found.scope()).as(id).isEqualTo(scope);
        assertThat(found.basis()).as(id).isEqualTo(Basis.MEASURED_HERE);
        return found;
    }

    /** Batches that have no scope in common must not mind one another, however many there are. */
    @Test
    void batchesOfOtherMachinesTellWhatEachTellsAlone() {
        List<BatchRecord> records = new ArrayList<>();
        List<Assumption> alone = new ArrayList<>();
        for (int i = 0; i < 60; i++) {
            BatchRecord record = BatchRecord.builder("batch " + i, LocalDate.of(2026, 3, 14))
                    .recipe("grey " + i, Furnish.of(Fibres.ABACA))
                    .beater("beater " + i)
                    .vat("vat " + i)
                    .press("press " + i)
                    .dryer("the boards")
                    .add(number(3, 35 + i % 7), sheet(80, 33 + 0.2 * (i % 5), 12), pressed())
                    .build();
            records.add(record);
            alone.addAll(of(record).assumptions().own());
        }
        Calibration all = of(records.toArray(BatchRecord[]::new));
        assertThat(all.assumptions().own()).containsExactlyInAnyOrderElementsOf(alone);
        assertThat(all.changes())
                .extracting(Calibration.Change::after)
                .containsExactlyElementsOf(all.assumptions().own());
        assertThat(alone).hasSizeGreaterThan(120);
    }

    @Test
    void whatAnEarlierFormFoundGoesWithTheReadingsALaterOneRejects() {
        Scope beater = Scope.of("abaca").on("big beater");
        BatchRecord often = batch("often").add(number(1, 22), number(3, 38)).build();
        assertThat(of(often).assumptions().own())
                .extracting(Assumption::id)
                .contains("beating.rate", "beating.exponent");
        Calibration both = of(often, batch("once").add(number(1, 85)).build());
        assertThat(both.unused())
                .extracting(one -> one.why().code())
                .contains("calibration.readings-of-different-things");
        assertThat(both.assumptions().own())
                .extracting(Assumption::id)
                .doesNotContain("beating.rate")
                .contains("beating.exponent");
        assertThat(both.assumptions().get("beating.rate", beater)).isEqualTo(TABLE.get("beating.rate", beater));
        assertThat(both.changes())
                .extracting(Calibration.Change::after)
                .containsExactlyElementsOf(both.assumptions().own());
    }

    @Test
    void oneDrainabilityTellsTheRateInItsBeater() {
        Calibration calibration = of(batch("first").add(number(3, 52)).build());
        Assumption rate = found(calibration, "beating.rate", Scope.of("abaca").on("big beater"));
        // 14 to 95 SR: ln(81/43)/3 h
        assertThat(rate.likely()).isCloseTo(Math.log(81.0 / 43) / 3, within(1e-9));
        assertThat(rate.source().text()).isEqualTo("measured here: first (2026-03-14)");
        Assumption known = TABLE.get("beating.rate", Scope.of("abaca"));
        assertThat(known.high() / known.low()).isGreaterThan(rate.high() / rate.low());
        assertThat(calibration.unused()).isEmpty();
        assertThat(calibration.changes())
                .singleElement()
                .hasToString("beating.rate[abaca@big beater]: 0.28 (0.14–0.56) → 0.2111 (0.1788–0.2492) 1/h,"
                        + " from first (2026-03-14)");
        assertThat(calibration).hasToString("1 assumption measured, 0 readings unused");
    }

    @Test
    void twoDrainabilitiesTellTheCourseAndAFreenessIsTurnedOver() {
        Calibration calibration = of(
                batch("first").add(number(0, 15), number(2, 38), number(4, 62)).build());
        assertThat(found(calibration, "beating.exponent", Scope.of("abaca").on("big beater"))
                        .likely())
                .isCloseTo(1.385, within(0.001));
        assertThat(found(
                                calibration,
                                "beating.drainability-unbeaten",
                                Scope.of("abaca").on("big beater"))
                        .likely())
                .isEqualTo(15);
        Calibration byFreeness = of(batch("second")
                .add(new Measurement.FreenessRead(
                        Reading.of(hours(3), minutes(2)),
                        Reading.of(
                                Kinds.CANADIAN_FREENESS.of(300, "mL_CSF"), Kinds.CANADIAN_FREENESS.of(10, "mL_CSF"))))
                .build());
        assertThat(found(byFreeness, "beating.rate", Scope.of("abaca").on("big beater"))
                        .likely())
                .isBetween(0.05, 0.3);
    }

    @Test
    void severalBatchesAreJoinedByTheirWeights() {
        Calibration one = of(batch("first").add(number(3, 52)).build());
        Calibration two = of(
                batch("first").add(number(3, 52)).build(),
                batch("second").add(number(3, 54)).build());
        Scope scope = Scope.of("abaca").on("big beater");
        Assumption single = found(one, "beating.rate", scope);
        Assumption both = found(two, "beating.rate", scope);
        Assumption other = found(of(batch("second").add(number(3, 54)).build()), "beating.rate", scope);
        assertThat(both.likely()).isBetween(single.likely(), other.likely());
        assertThat(both.high() / both.low()).isLessThan(single.high() / single.low());
        assertThat(both.source().text()).isEqualTo("measured here: first (2026-03-14); second (2026-03-14)");
        assertThat(two.notices()).isEmpty();
    }

    private static Measurement jar(double gramsInLitre) {
        return new Measurement.JarCompared(
                Additive.of("red ochre", Additive.Purpose.PIGMENT),
                RetentionModel.Circumstance.PLAIN,
                Reading.of(grams(24), grams(0.1)),
                Reading.of(litres(60), litres(0.5)),
                Reading.of(Kinds.SOLUTION_STRENGTH.of(gramsInLitre, "g/L"), Kinds.SOLUTION_STRENGTH.of(0.01, "g/L")));
    }

    /** One making lies from the next: that is learnt, and the mean is sure to it only. */
    @Test
    void makingsThatLieApartTellHowFarTheyDo() {
        Calibration near = of(IntStream.range(0, 8)
                .mapToObj(i ->
                        batch("making " + i).add(number(3, 52 + 0.2 * (i % 2))).build())
                .toArray(BatchRecord[]::new));
        Calibration apart = of(IntStream.range(0, 8)
                .mapToObj(i ->
                        batch("making " + i).add(number(3, 50 + 5 * (i % 2))).build())
                .toArray(BatchRecord[]::new));
        Scope scope = Scope.of("abaca").on("big beater");
        double shipped = TABLE.get("making.beating.rate", scope).likely();
        Assumption small = found(near, "making.beating.rate", scope);
        Assumption large = found(apart, "making.beating.rate", scope);
        assertThat(small.likely()).isLessThan(shipped);
        assertThat(large.likely()).isGreaterThan(shipped);
        assertThat(found(apart, "beating.rate", scope).high()
                        / found(apart, "beating.rate", scope).low())
                .isGreaterThan(found(near, "beating.rate", scope).high()
                        / found(near, "beating.rate", scope).low());
        // Read again with the store it gave, nothing counts twice.
        Calibration again = Calibration.of(
                near.assumptions(),
                IntStream.range(0, 8)
                        .mapToObj(i -> batch("making " + i)
                                .add(number(3, 52 + 0.2 * (i % 2)))
                                .build())
                        .toList(),
                List.of());
        assertThat(found(again, "making.beating.rate", scope)).isEqualTo(small);
    }

    @Test
    void oneMakingFarFromTheOthersIsNamedAndHardlyCounted() {
        List<BatchRecord> makings = new ArrayList<>();
        for (int i = 0; i < 9; i++) {
            makings.add(batch("making " + i).add(number(3, 50 + i % 3)).build());
        }
        Scope scope = Scope.of("abaca").on("big beater");
        double without = found(of(makings.toArray(BatchRecord[]::new)), "beating.rate", scope)
                .likely();
        makings.add(batch("slip").add(number(3, 85)).build());
        Calibration with = of(makings.toArray(BatchRecord[]::new));
        assertThat(found(with, "beating.rate", scope).likely()).isCloseTo(without, withinPercentage(1));
        assertThat(with.notices()).singleElement().satisfies(notice -> {
            assertThat(notice.code()).isEqualTo("calibration.making-apart");
            assertThat(notice.text())
                    .startsWith("beating.rate[abaca@big beater]: slip (2026-03-14) says ")
                    .endsWith(", so far from the other makings that it is hardly counted. Look for a slip, or for what"
                            + " was different that day.");
        });
    }

    @Test
    void makingsThatMoveWithTimeAreTold() {
        BatchRecord[] makings = IntStream.range(0, 8)
                .mapToObj(i -> BatchRecord.builder("making " + i, LocalDate.of(2026, 1 + i, 14))
                        .recipe("tide grey", Furnish.of(Fibres.ABACA))
                        .beater("big beater")
                        .add(number(3, 48 + i))
                        .build())
                .toArray(BatchRecord[]::new);
        assertThat(of(makings).notices()).singleElement().satisfies(notice -> {
            assertThat(notice.code()).isEqualTo("calibration.drift");
            assertThat(notice.text())
                    .startsWith(
                            "beating.rate[abaca@big beater]: the 8 makings grow higher with time by more than chance.");
        });
    }

    private static BatchRecord[] ofTwoLots(double apart, int seed) {
        Random random = new Random(seed);
        return IntStream.range(0, 8)
                .mapToObj(i -> batch("making " + i)
                        .lot(Fibres.ABACA, i % 2 == 0 ? "bale 3" : "bale 9")
                        .add(number(3, 50 + random.nextGaussian() + (i % 2) * apart))
                        .build())
                .toArray(BatchRecord[]::new);
    }

    @Test
    void lotsThatDifferAreTold() {
        Calibration found = of(ofTwoLots(7, 1));
        assertThat(found.notices()).anySatisfy(notice -> {
            assertThat(notice.code()).isEqualTo("calibration.lots-differ");
            assertThat(notice.text())
                    .startsWith("beating.rate[abaca@big beater]: the lots differ by more than chance (bale 3 ")
                    .contains(", bale 9 ")
                    .endsWith("Calibrate with the batches of the lot in use alone.");
            assertThat(notice.arguments()).containsEntry("lots", 2);
        });
        assertThat(found.changes()).isNotEmpty();
    }

    @Test
    void lotsThatDoNotDifferAreAveraged() {
        long said = IntStream.range(0, 200)
                .filter(seed -> of(ofTwoLots(0, seed)).notices().stream()
                        .anyMatch(notice -> notice.code().equals("calibration.lots-differ")))
                .count();
        // One in a hundred is chance.
        assertThat(said).isLessThanOrEqualTo(6);
        BatchRecord[] nameless = Arrays.stream(ofTwoLots(7, 1))
                .map(record -> batch(record.name())
                        .add(record.measurements().toArray(Measurement[]::new))
                        .build())
                .toArray(BatchRecord[]::new);
        assertThat(of(nameless).notices()).noneMatch(notice -> notice.code().equals("calibration.lots-differ"));
    }

    @Test
    void readingsThatDisagreeWidenTheBandAndOnesFarApartAreNotTaken() {
        Calibration apart = of(batch("first").add(jar(0.16), jar(0.2)).build());
        assertThat(apart.notices()).anySatisfy(notice -> {
            assertThat(notice.code()).isEqualTo("calibration.readings-disagree");
            assertThat(notice.text())
                    .startsWith("additive.retention[red ochre]: the 2 readings lie ")
                    .endsWith(" times as far apart as their errors allow; the band is widened as much.");
        });
        Calibration far = of(
                batch("first").add(number(3, 40)).build(),
                batch("second").add(number(3, 70)).build());
        assertThat(far.changes()).isEmpty();
        assertThat(far.assumptions().own()).isEmpty();
        assertThat(far.unused()).hasSize(2).allSatisfy(one -> {
            assertThat(one.why().code()).isEqualTo("calibration.readings-of-different-things");
            assertThat(one.toString())
                    .startsWith(
                            one.record() + ", for beating.rate: beating.rate[abaca@big beater]: the 2 readings lie ");
        });
    }

    @Test
    void whatIsUnsaidIsAskedFor() {
        BatchRecord bare = BatchRecord.builder("bare", LocalDate.of(2026, 3, 14))
                .add(number(3, 52), new Measurement.FibreWeighed(Fibres.ABACA, Reading.of(grams(900), grams(5))))
                .build();
        Calibration calibration = of(bare);
        assertThat(calibration.changes()).isEmpty();
        assertThat(calibration.unused())
                .extracting(Calibration.Unused::toString)
                .containsExactly(
                        "bare (2026-03-14), for beating.rate, beating.drainability-unbeaten: calibration: bare does not state the"
                                + " furnish, which this reading needs.",
                        "bare (2026-03-14): It is kept for the record; by itself, or with the rest of this batch, it"
                                + " calibrates no assumption.");
    }

    /** Fibres beaten together had one dose: the rates of all of them go by the same factor beyond the table. */
    @Test
    void blendTellsTheRatesOfItsFibres() {
        Furnish blend = Furnish.of(Kinds.SHARE.of(60, "%"), Fibres.COTTON_RAG, Kinds.SHARE.of(40, "%"), Fibres.ABACA);
        Calibration calibration =
                of(batch("blend").recipe("oat", blend).add(number(3, 40)).build());
        double factor = 0;
        for (Fibre fibre : blend.fibres()) {
            Assumption rate = found(calibration, "beating.rate", fibre.scope().on("big beater"));
            double by = rate.likely() / TABLE.get("beating.rate", fibre.scope()).likely();
            if (factor > 0) {
                assertThat(by).isCloseTo(factor, within(1e-12));
            }
            factor = by;
        }
        assertThat(BeatingState.after(calibration.assumptions(), blend, "big beater", hours(3))
                        .drainability()
                        .orElseThrow()
                        .si())
                .isCloseTo(40, within(1e-9));
        assertThat(calibration.assumptions().find("beating.rate", blend.scope().on("big beater")))
                .isEqualTo(TABLE.find("beating.rate", Scope.GENERAL));
        assertThat(of(batch("beyond").recipe("oat", blend).add(number(3, 96)).build())
                        .unused())
                .singleElement()
                .satisfies(one -> assertThat(one.why().code()).isEqualTo("beating.unreachable"));
        assertThat(of(batch("before").recipe("oat", blend).add(number(0, 14)).build())
                        .unused())
                .singleElement()
                .satisfies(one -> assertThat(one.why().code()).isEqualTo("beating.no-reading"));
    }

    /** Readings of one load after one time are one point of the course: they tell the rate, and more surely. */
    @Test
    void severalReadingsAfterOneTimeTellTheRate() {
        Calibration one = of(batch("one").add(number(3, 52)).build());
        Calibration three = of(
                batch("three").add(number(3, 51), number(3, 52), number(3, 53)).build());
        Assumption rate = found(three, "beating.rate", Scope.of("abaca").on("big beater"));
        assertThat(rate.likely())
                .isCloseTo(
                        found(one, "beating.rate", Scope.of("abaca").on("big beater"))
                                .likely(),
                        withinPercentage(0.2));
        assertThat(three.changes()).hasSize(1);
    }

    @Test
    void sheetOnItsWayTellsVatAndPress() {
        Calibration calibration = of(batch("first")
                .planned(BatchRecord.SHEET_SOLIDS, grams(12))
                .add(number(3, 52), sheet(80, 34, 12.6), pressed())
                .build());
        assertThat(found(calibration, "web.solids-couched", Scope.at("long vat"))
                        .likely())
                .isCloseTo(12.6 / 80, within(1e-9));
        assertThat(found(
                                calibration,
                                "web.solids-pressed",
                                Scope.of("tide grey").on("the boards"))
                        .likely())
                .isCloseTo(12.6 / 34, within(1e-9));
        found(calibration, "press.factor", Scope.at("green press"));
        assertThat(calibration.unused())
                .extracting(Calibration.Unused::ids)
                .containsExactly(List.of("vat.lift-factor"));
        assertThat(calibration.unused().get(0).why().code()).isEqualTo("calibration.less-sure");
        BatchRecord four = batch("second")
                .planned(BatchRecord.SHEET_SOLIDS, grams(12))
                .add(sheet(80, 34, 12.5), sheet(80, 34, 12.6), sheet(80, 34, 12.7), sheet(80, 34, 12.6))
                .build();
        assertThat(found(of(four), "vat.lift-factor", Scope.at("long vat")).likely())
                .isCloseTo(1.05, within(1e-9));
        assertThat(of(batch("third").add(sheet(80, 34, 12.6), pressed()).build())
                        .unused())
                .anySatisfy(one -> assertThat(one.why().text())
                        .isEqualTo("calibration: third does not state the beating time, which this reading needs."));
    }

    @Test
    void finishedSheetTellsMoistureAndDensity() {
        Calibration calibration = of(batch("first")
                .add(number(3, 52), pressed(), finished(12.4, 0.2, 11.55))
                .build());
        Scope sheet = Scope.of("tide grey").on("the boards");
        assertThat(found(calibration, "sheet.moisture-conditioned", sheet).likely())
                .isCloseTo(1 - 11.55 / 12.4, within(1e-9));
        assertThat(found(calibration, "sheet.density-measured", sheet).likely())
                .isCloseTo(0.0124 / (0.29 * 0.39) / 0.0002, withinPercentage(1));
        found(calibration, "sorption.monolayer", Scope.of("abaca"));
        found(calibration, "sheet.density-unbeaten", Scope.of("abaca"));
        found(calibration, "sheet.density-long-beaten", Scope.of("abaca"));
    }

    @Test
    void sheetsOfARunTellTheirScatter() {
        BatchRecord.Builder run = batch("first");
        for (double mass : new double[] {12.1, 12.4, 12.7, 12.3, 12.5, 12.4}) {
            run.add(finished(mass, 0.2, mass * 0.93));
        }
        Assumption scatter = found(of(run.build()), "sheet.scatter-grammage", Scope.of("tide grey"));
        assertThat(scatter.likely()).isCloseTo(1.645 * 0.2 / 12.4, withinPercentage(1));
        assertThat(scatter.low()).isLessThan(scatter.likely());
    }

    @Test
    void marksTellOnlyWhatDriedTheSameWay() {
        Calibration calibration =
                of(batch("first").add(marks(Restraint.BOARD, 197, 196)).build());
        Scope scope = Scope.of("tide grey").on("the boards");
        assertThat(found(calibration, "shrinkage.measured-along", scope).likely())
                .isCloseTo(0.015, within(1e-9));
        assertThat(found(calibration, "shrinkage.measured-across", scope).likely())
                .isCloseTo(0.02, within(1e-9));
        Calibration hung = of(batch("second")
                .add(
                        marks(Restraint.HUNG, 184, 181),
                        new Measurement.Load(Reading.of(litres(25), litres(1)), Reading.of(hours(3), minutes(5))))
                .build());
        assertThat(found(hung, "shrinkage.direction-difference", Scope.of("abaca"))
                        .likely())
                .isCloseTo(0.015 / shareInAir(), within(1e-9));
        assertThat(hung.unused())
                .extracting(one -> one.why().text())
                .contains(
                        "marks: dried under the restraint \"hung\"; the dryer the boards holds as \"board\", so they say"
                                + " nothing about its sheets.");
    }

    @Test
    void dryersTellTheirConstants() {
        Measurement.Dried wet = new Measurement.Dried(
                Reading.of(grams(3000), grams(5)),
                Reading.of(grams(2600), grams(5)),
                Reading.of(hours(2), minutes(1)),
                Reading.of(grams(1000), grams(5)),
                Kinds.AREA.of(10, "m2"),
                2,
                ROOM);
        double room = SorptionModel.from(TABLE, Furnish.of(Fibres.ABACA))
                .fromWetSide()
                .ratio(ROOM)
                .si();
        found(
                of(batch("first").dryer("the stack").add(wet).build()),
                "drying.stack-conductance",
                Scope.at("the stack"));
        assertThat(found(
                                of(batch("second")
                                        .dryer("the blotters")
                                        .add(wet)
                                        .build()),
                                "drying.blotter-kept",
                                Scope.at("the blotters"))
                        .likely())
                .isCloseTo(1 - (1 - Math.sqrt((1.6 - room) / (2 - room))) / (1 - room), within(1e-9));
        Measurement.Dried late = new Measurement.Dried(
                Reading.of(grams(1500), grams(5)),
                Reading.of(grams(1300), grams(5)),
                Reading.of(hours(2), minutes(1)),
                Reading.of(grams(1000), grams(5)),
                Kinds.AREA.of(10, "m2"),
                0,
                ROOM);
        assertThat(of(batch("third").dryer("the stack").add(late).build()).unused())
                .singleElement()
                .satisfies(one -> assertThat(one.why().code()).isEqualTo("calibration.no-longer-wet"));
        assertThat(of(batch("fourth").dryer("a shelf").add(wet).build()).unused())
                .singleElement()
                .satisfies(one -> assertThat(one.why().text())
                        .isEqualTo("calibration: the dryer \"a shelf\" of fourth"
                                + " is not among those given: [the stack, the boards, the loft, the blotters]."));
    }

    @Test
    void countsTellTheShareOfRejects() {
        Calibration calibration = of(
                batch("first").add(count(Measurement.Step.FORMING, 120, 6)).build(),
                batch("second").add(count(Measurement.Step.FORMING, 120, 6)).build());
        Assumption forming = found(calibration, "reject.forming", Scope.of("tide grey"));
        assertThat(forming.likely()).isCloseTo(12.5 / 241, within(1e-12));
        // 5 % and 95 % points of a beta distribution of 12.5 and 228.5, 0.032 and 0.078; and what makings differ by
        assertThat(forming.low()).isBetween(0.028, 0.032);
        assertThat(forming.high()).isBetween(0.078, 0.087);
        Assumption none = found(
                of(batch("third").add(count(Measurement.Step.PRESSING, 200, 0)).build()),
                "reject.pressing",
                Scope.of("tide grey"));
        assertThat(none.likely()).isBetween(0.001, 0.004);
        found(
                of(batch("fourth")
                        .add(count(Measurement.Step.FOLDING_ENVELOPES, 300, 9))
                        .build()),
                "reject.folding",
                Scope.of("envelope"));
        assertThat(of(batch("fifth").add(count(Measurement.Step.FORMING, 5, 0)).build())
                        .unused())
                .singleElement()
                .satisfies(one -> assertThat(one.why().code()).isEqualTo("calibration.less-sure"));
        assertThatThrownBy(() -> count(Measurement.Step.FOLDING_CARDS, 3, 4))
                .isInstanceOf(Refused.class)
                .hasMessage("folding cards: 4 rejected of 3 given; count 1 or more, and no more rejects than that.");
    }

    private static BatchRecord forming(String name, int rejected) {
        return batch(name).add(count(Measurement.Step.FORMING, 200, rejected)).build();
    }

    @Test
    void countsThatScatterTooFarWidenTheBand() {
        Calibration even = of(forming("a", 18), forming("b", 18), forming("c", 18), forming("d", 18));
        Calibration uneven = of(forming("a", 10), forming("b", 26), forming("c", 14), forming("d", 22));
        Assumption sure = found(even, "reject.forming", Scope.of("tide grey"));
        Assumption unsure = found(uneven, "reject.forming", Scope.of("tide grey"));
        assertThat(unsure.high() - unsure.low()).isGreaterThan(1.5 * (sure.high() - sure.low()));
        assertThat(even.notices()).isEmpty();
        assertThat(uneven.notices())
                .singleElement()
                .satisfies(notice -> assertThat(notice.text())
                        .isEqualTo(
                                "Rejects in forming of 4 counts scatter 1.804 times as far as one share would let them; the band is"
                                        + " widened as much."));
    }

    /** A batch with a course of its own and one with a single reading that does not fit it at all. */
    @Test
    void laterReadingThatDoesNotFitTakesTheEarlierOnesBack() {
        Calibration calibration = of(
                batch("course").add(number(2, 38), number(4, 62)).build(),
                batch("single").add(number(3, 90)).build());
        assertThat(calibration.changes())
                .extracting(change -> change.after().id())
                .containsExactly("beating.exponent");
        assertThat(calibration.assumptions().own()).hasSize(1);
        assertThat(calibration.unused()).hasSize(3);
    }

    @Test
    void hoursTellTheTimeOfAPiece() {
        BatchRecord record = batch("first")
                .add(
                        sheet(80, 34, 12.6),
                        new Measurement.Hours(Measurement.Work.FORMING, Reading.of(hours(4), minutes(10)), 120),
                        new Measurement.Hours(Measurement.Work.SORTING, Reading.of(minutes(50), minutes(2)), 120))
                .build();
        Calibration calibration = of(record);
        assertThat(found(calibration, "labour.sheet-time", Scope.of("small")).likely())
                .isCloseTo(120, within(1e-9));
        assertThat(found(calibration, "labour.sort", Scope.GENERAL).likely()).isCloseTo(25, within(1e-9));
    }

    @Test
    void waterSamplesAndTheTimedSheetTellTheVat() {
        Calibration calibration = of(batch("first")
                .add(
                        number(3, 52),
                        new Measurement.WaterDried(
                                Reading.of(
                                        FibreConcentration.gramsPerLitre(0.12), FibreConcentration.gramsPerLitre(0.01)),
                                Reading.of(FibreConcentration.gramsPerLitre(6), FibreConcentration.gramsPerLitre(0.1))),
                        new Measurement.TimedSheet(
                                Reading.of(seconds(40), seconds(2)),
                                Reading.of(mm(20), mm(1)),
                                Reading.of(FibreConcentration.gramsPerLitre(6), FibreConcentration.gramsPerLitre(0.1)),
                                celsius(20)),
                        new Measurement.MoistureSample(
                                Fibres.ABACA, Reading.of(grams(20), grams(0.01)), Reading.of(grams(18.3), grams(0.01))))
                .build());
        assertThat(found(calibration, "vat.retention", Scope.of("abaca").on("long vat"))
                        .likely())
                .isCloseTo(0.98, within(1e-9));
        found(calibration, "drainage.resistance-factor", Scope.at("long vat"));
        assertThat(found(calibration, "fibre.moisture-as-bought", Scope.of("abaca"))
                        .likely())
                .isCloseTo(0.085, within(1e-9));
        assertThat(calibration.unused()).isEmpty();
    }

    @Test
    void everyReadingOfAModelWithSeveralWaysIsAskedAfter() {
        BatchRecord twice = batch("first")
                .add(
                        number(3, 52),
                        sheet(80, 34, 12.6),
                        pressed(),
                        new Measurement.Pressed(
                                Optional.empty(),
                                Reading.of(Kinds.SHEET_PRESSURE.of(0.2, "MPa"), Kinds.SHEET_PRESSURE.of(0.02, "MPa")),
                                Reading.of(minutes(20), seconds(10))))
                .build();
        assertThat(of(twice).unused())
                .anySatisfy(one -> assertThat(one.why().text())
                        .isEqualTo(
                                "calibration: first states how the sheets were pressed in 2 ways; which of them this reading belongs to"
                                        + " is not stated. Keep a record for each."));
    }

    @Test
    void unexpectedValueIsNoticed() {
        assertThat(of(batch("first").add(number(1, 80)).build()).notices())
                .singleElement()
                .satisfies(notice -> {
                    assertThat(notice.code()).isEqualTo("calibration.unexpected");
                    assertThat(notice.text())
                            .isEqualTo("beating.rate[abaca@big beater]: measured as 1.686, outside the"
                                    + " 0.28 (0.14–0.56) taken until now. Look at the readings once more.");
                });
    }

    @Test
    void cookedFibreTellsItsYield() {
        BatchRecord record = batch("first")
                .add(
                        new Measurement.MoistureSample(
                                Fibres.ABACA, Reading.of(grams(20), grams(0.01)), Reading.of(grams(18), grams(0.01))),
                        new Measurement.Cooked(
                                Fibres.ABACA, Reading.of(grams(2000), grams(5)), Reading.of(grams(1170), grams(20))))
                .build();
        Calibration calibration = of(record);
        // 1170 of the 1800 g that 2000 g hold at 10 % water
        Assumption yield = found(calibration, "fibre.yield", Scope.of("abaca"));
        assertThat(yield.likely()).isCloseTo(0.65, within(1e-9));
        // 1.645 · 20/1800 by the scale, 0.02 by the next bale, 0.003 by the moisture; and what makings differ by
        assertThat(yield.high() - yield.low())
                .isCloseTo(2 * Math.hypot(Math.hypot(1.645 * 20 / 1800, 0.02), overMakings(yield)), within(0.003));
        assertThat(calibration.unused()).isEmpty();
        assertThat(of(batch("second")
                                .add(new Measurement.Cooked(
                                        Fibres.ABACA,
                                        Reading.of(grams(1000), grams(5)),
                                        Reading.of(grams(990), grams(5))))
                                .build())
                        .unused())
                .singleElement()
                .satisfies(one -> assertThat(one.why().text()).startsWith("stuff of abaca after cooking: 990 g"));
    }

    @Test
    void jarOfWhiteWaterTellsWhatThePigmentLeavesInIt() {
        Additive ochre = Additive.of("red ochre", Additive.Purpose.PIGMENT);
        Calibration calibration = of(batch("first")
                .add(new Measurement.JarCompared(
                        ochre,
                        RetentionModel.Circumstance.PLAIN,
                        Reading.of(grams(24), grams(0.1)),
                        Reading.of(litres(60), litres(0.5)),
                        Reading.of(Kinds.SOLUTION_STRENGTH.of(0.16, "g/L"), Kinds.SOLUTION_STRENGTH.of(0.01, "g/L"))))
                .build());
        // 0.16 g/L in 60 L are 9.6 of the 24 g
        Assumption kept = found(calibration, "additive.retention", Scope.of("red ochre", "pigment"));
        assertThat(kept.likely()).isCloseTo(0.6, within(1e-9));
        assertThat(kept.high() - kept.low())
                .isCloseTo(2 * Math.hypot(Math.hypot(1.645 * 0.01 * 60 / 24, 0.02), overMakings(kept)), within(0.003));
        assertThat(RetentionModel.from(calibration.assumptions(), Scope.of("abaca"))
                        .additive(ochre, RetentionModel.Circumstance.PLAIN)
                        .si())
                .isCloseTo(0.6, within(1e-9));
        assertThat(calibration.unused()).isEmpty();
    }

    private static Measurement burnt(double dose, double ash) {
        return new Measurement.Burnt(
                Additive.of("china clay", Additive.Purpose.FILLER),
                RetentionModel.Circumstance.WITH_AID,
                Reading.of(Kinds.DOSE.of(dose, "%"), Kinds.DOSE.of(0.1, "%")),
                Reading.of(Kinds.SHARE.of(ash, "%"), Kinds.SHARE.of(0.1, "%")),
                Reading.of(Kinds.SHARE.of(0.5, "%"), Kinds.SHARE.of(0.05, "%")),
                Kinds.SHARE.of(86, "%"));
    }

    @Test
    void ashTellsWhatTheSheetKeepsOfTheFiller() {
        Calibration calibration = of(batch("first").add(burnt(10, 7)).build());
        double share = (0.07 - 0.005) / (0.86 - 0.005);
        double fibre = TABLE.si("vat.retention", Scope.of("abaca").on("long vat"));
        Assumption kept = found(
                calibration,
                "additive.retention",
                Scope.of("china clay", "clay").on("with aid"));
        assertThat(kept.likely())
                .isCloseTo(share / (1 - share) / 0.1 * fibre, within(1e-9))
                .isBetween(0.75, 0.85);
        assertThat(kept.high() - kept.low()).isBetween(0.04, 0.15);
        assertThat(calibration.unused()).isEmpty();
        assertThat(of(batch("second").add(burnt(5, 7)).build()).unused())
                .singleElement()
                .satisfies(one -> assertThat(one.why().code()).isEqualTo("additive.more-than-given"));
    }

    private static Measurement spun(double number, double value, WaterRetentionModel.Spin spin) {
        return new Measurement.WaterSpun(
                Reading.of(SchopperRiegler.degrees(number), SchopperRiegler.degrees(0.5)),
                Reading.of(Kinds.WATER_RETENTION.of(value, "g/g"), Kinds.WATER_RETENTION.of(0.02, "g/g")),
                spin);
    }

    @Test
    void spunSampleMovesThePointOfWellBeatenFibre() {
        WaterRetentionModel.Spin spin = WaterRetentionModel.Spin.ISO_23714;
        Calibration calibration = of(
                batch("first").add(spun(45, 1.7, spin)).build(),
                batch("second")
                        .add(spun(54, 2.0, spin), spun(54, 2.1, spin), spun(60, 3, WaterRetentionModel.Spin.AT_900_G))
                        .build());
        assertThat(found(calibration, "fibre.drainability-well-beaten", Scope.of("abaca"))
                        .likely())
                .isEqualTo(54);
        Assumption value = found(calibration, "fibre.water-retention-well-beaten", Scope.of("abaca"));
        assertThat(value.likely()).isCloseTo(2.05, within(1e-9));
        // 0.02 of the two values, over √2, and half a degree along the line of 0.95 in 40
        double error = Math.hypot(0.02 / Math.sqrt(2), 0.5 * 0.9 / 40);
        assertThat(Math.log(value.high() / value.likely()))
                .isCloseTo(1.645 * Math.max(0.02, error / 2.05), within(0.001));
        assertThat(calibration.notices())
                .singleElement()
                .satisfies(notice -> assertThat(notice.text())
                        .isEqualTo(
                                "Water retention of 100 % abaca: of 3 samples the most beaten, at 54 °SR, gives the point of"
                                        + " well-beaten fibre; the less beaten give shrinkage only."));
        assertThat(calibration.unused())
                .singleElement()
                .satisfies(one -> assertThat(one.why().code()).isEqualTo("water-retention.spin-refused"));
        Calibration unsure = of(batch("third")
                .add(new Measurement.WaterSpun(
                        Reading.of(SchopperRiegler.degrees(54), SchopperRiegler.degrees(1)),
                        Reading.of(Kinds.WATER_RETENTION.of(2, "g/g"), Kinds.WATER_RETENTION.of(0.5, "g/g")),
                        spin))
                .build());
        assertThat(unsure.changes()).isEmpty();
        assertThat(unsure.unused())
                .singleElement()
                .satisfies(one -> assertThat(one.why().code()).isEqualTo("calibration.less-sure"));
    }

    @Test
    void onePulpOnBothTestersMovesTheChart() {
        Measurement both = new Measurement.BothTesters(
                Reading.of(SchopperRiegler.degrees(40), SchopperRiegler.degrees(1)),
                Reading.of(Kinds.CANADIAN_FREENESS.of(300, "mL_CSF"), Kinds.CANADIAN_FREENESS.of(5, "mL_CSF")));
        Calibration calibration = of(batch("first").add(both).build());
        double chart = DrainabilityModel.standard()
                .schopperRieglerOf(Kinds.CANADIAN_FREENESS.of(300, "mL_CSF"))
                .value()
                .likely()
                .si();
        Assumption offset = found(calibration, "freeness.chart-offset", Scope.GENERAL);
        assertThat(offset.likely()).isCloseTo(40 - chart, within(1e-6));
        assertThat(offset.high() - offset.low()).isBetween(3.29, 4.5);
        // A freeness read in the same batch is turned over with the chart so moved.
        Measurement read = new Measurement.FreenessRead(
                Reading.of(hours(3), minutes(2)),
                Reading.of(Kinds.CANADIAN_FREENESS.of(300, "mL_CSF"), Kinds.CANADIAN_FREENESS.of(5, "mL_CSF")));
        assertThat(found(
                                of(batch("second").add(read, both).build()),
                                "beating.rate",
                                Scope.of("abaca").on("big beater"))
                        .likely())
                .isCloseTo(Math.log(81.0 / 55) / 3, within(1e-6));
    }

    /** What abaca has shrunk in the air paper is stated in, of what it shrinks to its last water. */
    private static double shareInAir() {
        double left = SorptionModel.from(TABLE, Furnish.of(Fibres.ABACA))
                .fromWetSide()
                .ratio(Air.reference())
                .si();
        return 1 - left / TABLE.si("shrinkage.onset", Scope.of("abaca"));
    }

    @Test
    void stripsOfTwoWaterRetentionValuesTellTheLine() {
        WaterRetentionModel.Spin spin = WaterRetentionModel.Spin.ISO_23714;
        BatchRecord dry = batch("first")
                .add(spun(20, 1.2, spin), marks(Restraint.HUNG, 194, 194))
                .build();
        BatchRecord wet = batch("second")
                .add(spun(54, 2.2, spin), marks(Restraint.HUNG, 180, 180))
                .build();
        Calibration calibration = of(dry, wet);
        // 3 % at 1.2, 10 % at 2.2, in air
        assertThat(found(calibration, "shrinkage.per-water-retention", Scope.of("abaca"))
                        .likely())
                .isCloseTo(0.07 / shareInAir(), within(1e-9));
        assertThat(found(calibration, "shrinkage.water-retention-intercept", Scope.of("abaca"))
                        .likely())
                .isCloseTo(1.2 - 0.03 / 0.07, within(1e-9));
        assertThat(of(dry).unused())
                .anySatisfy(
                        one -> assertThat(one.why().text())
                                .isEqualTo(
                                        "calibration: first does"
                                                + " not state dried free of a second water retention value, which this reading needs."));
        assertThat(of(
                                dry,
                                batch("third")
                                        .add(
                                                spun(54, 2.2, WaterRetentionModel.Spin.AT_900_G),
                                                marks(Restraint.HUNG, 180, 180))
                                        .build())
                        .changes())
                .extracting(change -> change.after().id())
                .doesNotContain("shrinkage.per-water-retention");
    }

    @Test
    void stripInTwoAirsTellsHowFarPaperMoves() {
        Air damp = Air.of(celsius(20), RelativeHumidity.percent(75));
        Calibration calibration = of(batch("first")
                .add(new Measurement.TwoAirs(
                        Kinds.LINEAR_SHRINKAGE.of(5, "%"),
                        Reading.of(mm(400), mm(0.05)),
                        ROOM,
                        Reading.of(mm(402), mm(0.05)),
                        damp))
                .build());
        SorptionModel sorption = SorptionModel.from(TABLE, Furnish.of(Fibres.ABACA));
        double measured =
                0.005 / (sorption.ratio(damp).si() - sorption.ratio(ROOM).si());
        Assumption base = found(calibration, "hygroexpansion.base", Scope.of("abaca"));
        Assumption slope = found(calibration, "hygroexpansion.per-shrinkage", Scope.of("abaca"));
        assertThat(base.likely() + 0.05 * slope.likely()).isCloseTo(measured, within(1e-9));
        assertThat(base.likely() / slope.likely()).isCloseTo(0.05 / 1.2, within(1e-9));
        assertThat(calibration.unused()).isEmpty();
    }

    @Test
    void everyRowOfTheTableTellsPhysicalAssumptionsOnly() {
        assertThat(Calibration.table()).hasSize(ClosedForms.TABLE.size()).allSatisfy(row -> {
            assertThat(row.ids()).isNotEmpty().allSatisfy(id -> {
                Optional<Assumption> any = TABLE.all().stream()
                        .filter(one -> one.id().equals(id))
                        .findFirst()
                        .or(() -> org.papermath.evidence.DirectMeasurements.find(id));
                assertThat(any)
                        .as(id)
                        .hasValueSatisfying(one -> assertThat(one.role()).isEqualTo(Role.PHYSICAL));
            });
            assertThat(row.reading()).isNotBlank();
            assertThat(row.needs()).isNotBlank();
            assertThat(row.scope()).isNotBlank();
            assertThat(row.form()).isNotBlank();
        });
        assertThat(Calibration.table())
                .flatExtracting(Calibration.Row::ids)
                .containsAll(org.papermath.evidence.DirectMeasurements.all().stream()
                        .map(Assumption::id)
                        .toList());
    }

    @Test
    void withoutReadingsNothingChanges() {
        Calibration calibration = of();
        assertThat(calibration.assumptions()).isSameAs(TABLE);
        assertThat(calibration.changes()).isEmpty();
        assertThat(calibration.unused()).isEmpty();
    }
}
