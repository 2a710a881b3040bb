package org.papermath.whatif;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.papermath.quantity.Amounts.grams;
import static org.papermath.quantity.Amounts.hours;
import static org.papermath.quantity.Amounts.kilograms;
import static org.papermath.quantity.Amounts.minutes;
import static org.papermath.quantity.Amounts.mm;
import static org.papermath.quantity.Amounts.percent;
import static org.papermath.quantity.Amounts.seconds;

import java.util.List;
import java.util.Optional;
import java.util.concurrent.ForkJoinPool;
import java.util.stream.IntStream;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Mass;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.papermath.evidence.Assumption;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Estimate;
import org.papermath.evidence.Notice;
import org.papermath.evidence.Scope;
import org.papermath.fibre.Fibres;
import org.papermath.order.Order;
import org.papermath.order.Studio;
import org.papermath.plan.MakingPlan;
import org.papermath.quantity.Consistency;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;
import org.papermath.quantity.RelativeHumidity;
import org.papermath.quantity.SchopperRiegler;
import org.papermath.quantity.Share;
import org.papermath.quantity.SheetPressure;

class WhatIfTest {
    private final Order order = Bench.order();
    private final Studio studio = Bench.studio();

    private static void assertCode(org.assertj.core.api.ThrowableAssert.ThrowingCallable call, String code) {
        assertThatThrownBy(call)
                .isInstanceOfSatisfying(
                        Refused.class, refused -> assertThat(refused.code()).isEqualTo(code));
    }

    @Test
    void aRowIsWhatThePlanOfThatJobSays() {
        Input<Consistency> vat = Input.vatConsistency("grey");
        WhatIfTable table = WhatIf.decidedAnew(order, studio)
                .vary(Input.grammage("programme"), List.of(Grammage.gsm(110), Grammage.gsm(150)))
                .vary(vat, Consistency.percent(0.4), Consistency.percent(0.8), 3)
                .show(
                        Outcome.lift("programme"),
                        Outcome.grammage("programme"),
                        Outcome.fibre("grey"),
                        Outcome.workingHours())
                .table();
        assertThat(table.size()).isEqualTo(6);
        for (int row = 0; row < 6; row++) {
            Job job = vat.applied(
                    Input.grammage("programme")
                            .applied(new Job(order, studio), table.amount(row, Input.grammage("programme"))),
                    table.amount(row, vat));
            MakingPlan plan = MakingPlan.withoutBands(job.order(), job.studio());
            assertThat(table.value(row, Outcome.lift("programme")).orElseThrow().si())
                    .isEqualTo(plan.piece("programme").vat().lift().si());
            assertThat(table.value(row, Outcome.grammage("programme"))
                            .orElseThrow()
                            .si())
                    .isEqualTo(plan.piece("programme")
                            .finished()
                            .grammage()
                            .likely()
                            .si());
            assertThat(table.value(row, Outcome.fibre("grey")).orElseThrow().si())
                    .isEqualTo(plan.batch("grey").fibre().ovenDry().si());
            assertThat(table.value(row, Outcome.workingHours()).orElseThrow().si())
                    .isEqualTo(plan.workingHours().likely().si());
        }
        assertThat(table.amount(4, vat)).isEqualTo(Consistency.percent(0.6));
        // Twice as thick a vat, half the lift.
        assertThat(table.value(0, Outcome.lift("programme")).orElseThrow().si()
                        / table.value(2, Outcome.lift("programme"))
                                .orElseThrow()
                                .si())
                .isCloseTo(2, Offset.offset(0.02));
    }

    @Test
    void bandsAreThoseOfThePlan() {
        WhatIfTable table = WhatIf.decidedAnew(order, studio)
                .vary(Input.beating("grey"), List.of(hours(2), hours(5)))
                .show(Outcome.caliper("programme"), Outcome.drainTime("programme"), Outcome.lift("programme"))
                .withBands()
                .table();
        MakingPlan plan = MakingPlan.of(order.withRecipe("grey", one -> one.beating(hours(5))), studio);
        Estimate<?> caliper = plan.piece("programme").finished().caliper();
        assertThat(table.estimate(1, Outcome.caliper("programme"))
                        .orElseThrow()
                        .low()
                        .si())
                .isEqualTo(caliper.low().si());
        assertThat(table.estimate(1, Outcome.caliper("programme"))
                        .orElseThrow()
                        .high()
                        .si())
                .isEqualTo(caliper.high().si());
        Estimate<?> drain = plan.piece("programme").drainTime();
        assertThat(table.estimate(1, Outcome.drainTime("programme"))
                        .orElseThrow()
                        .low()
                        .si())
                .isEqualTo(drain.low().si());
        assertThat(table.estimate(1, Outcome.drainTime("programme"))
                        .orElseThrow()
                        .high()
                        .si())
                .isEqualTo(drain.high().si());
        Estimate<Mass> lift = table.estimate(1, Outcome.lift("programme")).orElseThrow();
        assertThat(lift.low()).isEqualTo(lift.high());
    }

    @Test
    void withSettingsHeldTheVatStaysAsItIsCharged() {
        WhatIf held = WhatIf.settingsHeld(order, studio);
        WhatIfTable table = held.vary(Input.lift(), List.of(percent(90), percent(100), percent(110)))
                .show(Outcome.grammage("programme"), Outcome.lift("programme"))
                .table();
        double plan = MakingPlan.withoutBands(order, studio)
                .piece("programme")
                .finished()
                .grammage()
                .likely()
                .si();
        assertThat(table.value(1, Outcome.grammage("programme")).orElseThrow().si())
                .isEqualTo(plan);
        // A tenth more lifted is not a tenth more in the sheet: the vat falls faster, and is recharged as before.
        double more =
                table.value(2, Outcome.grammage("programme")).orElseThrow().si() / plan;
        assertThat(more).isBetween(1.02, 1.08);
        assertThat(table.value(0, Outcome.lift("programme")).orElseThrow())
                .isEqualTo(table.value(2, Outcome.lift("programme")).orElseThrow());
        // Decided anew, the hand that lifts more is told to lift less, and the sheet is the same within a step of the
        // scale.
        WhatIfTable anew = WhatIf.decidedAnew(order, studio)
                .vary(Input.lift(), List.of(percent(90), percent(110)))
                .show(Outcome.grammage("programme"), Outcome.lift("programme"))
                .table();
        assertThat(anew.value(0, Outcome.grammage("programme")).orElseThrow().si())
                .isCloseTo(
                        anew.value(1, Outcome.grammage("programme"))
                                .orElseThrow()
                                .si(),
                        Offset.offset(0.001));
        assertThat(anew.value(0, Outcome.lift("programme")).orElseThrow().si())
                .isGreaterThan(1.2
                        * anew.value(1, Outcome.lift("programme")).orElseThrow().si());
    }

    /** Every assumption of the plan, moved in its slot or read anew, to the last bit. */
    @Test
    void anAssumptionMovedInItsPlaceGivesWhatAJobReadWithItGives() {
        Outcome<?>[] shown = {
            Outcome.grammage("programme"), Outcome.caliper("seat card"), Outcome.drainTime("envelope"),
                    Outcome.good("programme"),
            Outcome.dryingTime("seat card"), Outcome.solids("programme"), Outcome.drainability("grey"),
                    Outcome.workingHours(),
            Outcome.lift("programme"), Outcome.fibre("grey"), Outcome.pressForce("seat card"),
                    Outcome.width("programme")
        };
        int compared = 0;
        for (Assumption row : MakingPlan.withoutBands(order, studio).assumptionsUsed()) {
            double[] values = {row.low(), row.high()};
            for (boolean held : new boolean[] {false, true}) {
                Input<Dimensionless> any = number(row, held);
                WhatIf asked = held ? WhatIf.settingsHeld(order, studio) : WhatIf.decidedAnew(order, studio);
                if (row.low() == row.high() || any == null) {
                    continue;
                }
                WhatIfTable fast;
                try {
                    fast = asked.vary(any, List.of(Kinds.NUMBER.ofSi(values[0]), Kinds.NUMBER.ofSi(values[1])))
                            .show(shown)
                            .table();
                } catch (Refused moves) {
                    assertThat(moves.code()).isEqualTo("whatif.moves-nothing");
                    continue;
                }
                WhatIfTable slow = asked.vary(
                                Input.of("same", "", Kinds.NUMBER, "1", any::applied),
                                List.of(Kinds.NUMBER.ofSi(values[0]), Kinds.NUMBER.ofSi(values[1])))
                        .show(shown)
                        .table();
                for (int r = 0; r < 2; r++) {
                    for (Outcome<?> outcome : shown) {
                        assertThat(si(fast, r, outcome))
                                .as("%s %s %s", row.key(), held, outcome)
                                .isEqualTo(si(slow, r, outcome));
                        compared++;
                    }
                }
            }
        }
        assertThat(compared).isGreaterThan(300);
    }

    /** An assumption that is told as a plain number, which most are not; null for the others. */
    private static Input<Dimensionless> number(Assumption row, boolean held) {
        if (!List.of("1", "%").contains(row.unit())) {
            return null;
        }
        String[] parts = row.scope().subject().isEmpty()
                ? new String[0]
                : new String[] {row.scope().subject().get()};
        Scope scope = parts.length == 0 ? Scope.GENERAL : Scope.of(parts);
        scope = row.scope().place().isEmpty()
                ? scope
                : scope.on(row.scope().place().get());
        return scope.equals(row.scope()) ? Input.assumption(Kinds.NUMBER, row.id(), row.scope(), "1") : null;
    }

    private static Optional<Double> si(WhatIfTable table, int row, Outcome<?> outcome) {
        return table.value(row, outcome).map(one -> one.si());
    }

    @Test
    void theTableIsTheSameWhateverTheThreads() throws Exception {
        String here = big().csv();
        for (int threads : new int[] {1, 3}) {
            ForkJoinPool pool = new ForkJoinPool(threads);
            try {
                assertThat(pool.submit(() -> big().csv()).get()).isEqualTo(here);
            } finally {
                pool.shutdown();
            }
        }
    }

    private WhatIfTable big() {
        return WhatIf.decidedAnew(order, studio)
                .vary(Input.beating("grey"), hours(0), hours(8), 9)
                .vary(Input.lift(), percent(80), percent(120), 11)
                .show(Outcome.grammage("programme"), Outcome.lift("programme"), Outcome.dryingTime("envelope"))
                .table();
    }

    /** Two inputs of which only one is read anew: the rows stand in the order of the inputs, whichever that is. */
    @Test
    void rowsStandInTheOrderOfTheInputs() {
        Outcome<?>[] shown = {Outcome.grammage("programme"), Outcome.drainability("grey")};
        WhatIf asked = WhatIf.settingsHeld(order, studio);
        WhatIfTable one = asked.vary(Input.beating("grey"), hours(1), hours(4), 4)
                .vary(Input.lift(), percent(80), percent(120), 3)
                .show(shown)
                .table();
        WhatIfTable other = asked.vary(Input.lift(), percent(80), percent(120), 3)
                .vary(Input.beating("grey"), hours(1), hours(4), 4)
                .show(shown)
                .table();
        for (int beating = 0; beating < 4; beating++) {
            for (int lift = 0; lift < 3; lift++) {
                int first = beating * 3 + lift;
                int second = lift * 4 + beating;
                assertThat(one.amount(first, Input.lift())).isEqualTo(other.amount(second, Input.lift()));
                assertThat(one.amount(first, Input.beating("grey"))).isEqualTo(hours(1 + beating));
                for (Outcome<?> outcome : shown) {
                    assertThat(si(one, first, outcome)).isEqualTo(si(other, second, outcome));
                }
            }
        }
    }

    @Test
    void aRefusedRowStandsInTheTableWithItsReason() {
        WhatIfTable table = WhatIf.decidedAnew(order, studio)
                .vary(Input.grammage("programme"), Grammage.gsm(150), Grammage.gsm(3150), 4)
                .show(Outcome.grammage("programme"), Outcome.lift("programme"))
                .table();
        assertThat(table.value(0, Outcome.grammage("programme"))).isPresent();
        assertThat(table.reason(0, Outcome.grammage("programme"))).isEmpty();
        assertThat(table.value(2, Outcome.grammage("programme"))).isEmpty();
        assertThat(table.estimate(2, Outcome.grammage("programme"))).isEmpty();
        assertThat(table.reason(2, Outcome.grammage("programme")).orElseThrow())
                .hasMessageContaining("2150 g/m² given; it must be from 2 g/m² to 2000 g/m²");
        assertThat(table.toString()).contains("not known", "(1 row more)");
        assertThat(table.csv()).contains("2150,,,").doesNotContain("NaN");
        // A piece too heavy for the vat is poured, and has a grammage but no lift.
        WhatIfTable poured = WhatIf.decidedAnew(order, studio)
                .vary(Input.grammage("programme"), List.of(Grammage.gsm(1900)))
                .vary(Input.vatConsistency("grey"), List.of(Consistency.percent(0.2)))
                .show(Outcome.grammage("programme"), Outcome.lift("programme"))
                .table();
        assertThat(poured.value(0, Outcome.grammage("programme"))).isPresent();
        assertThat(poured.reason(0, Outcome.lift("programme")).orElseThrow())
                .hasMessageContaining("poured, not dipped");
    }

    @Test
    void anAssumptionBeyondItsBoundsIsARefusedRow() {
        WhatIfTable table = WhatIf.settingsHeld(order, studio)
                .vary(Input.lift(), List.of(percent(90), percent(0)))
                .show(Outcome.grammage("programme"))
                .table();
        assertThat(table.value(0, Outcome.grammage("programme"))).isPresent();
        assertThat(table.reason(1, Outcome.grammage("programme")).orElseThrow().getMessage())
                .contains("vat.lift-factor");
    }

    @Test
    void theTextHasUnitsOnceAndFourDigits() {
        WhatIfTable table = WhatIf.decidedAnew(order, studio)
                .vary(Input.beating("grey"), hours(2), hours(4), 3)
                .show(Outcome.drainability("grey"), Outcome.caliper("programme"), Outcome.sheets("programme"))
                .table();
        assertThat(table.toString()).isEqualTo("""
                        What the plan would be: midwinter concert, with settings decided anew
                        beating   drainability        caliper   sheets to pull
                        of grey        of grey   of programme     of programme
                              h            °SR             µm
                        ------------------------------------------------------
                              2          33.70          240.2               53
                              3          42.50          229.9               53
                              4          50.25          221.1               53
                        """);
        assertThat(table.csv().lines().findFirst().orElseThrow())
                .isEqualTo("beating of grey [h],drainability of grey [SR],caliper of programme [um],"
                        + "sheets to pull of programme,not known because");
        assertThat(table.csv().lines())
                .hasSize(4)
                .allSatisfy(line -> assertThat(line.split(",", -1)).hasSize(5));
        String banded = WhatIf.decidedAnew(order, studio)
                .vary(Input.beating("grey"), List.of(hours(3)))
                .show(Outcome.grammage("programme").in("kg/m2"), Outcome.drainTime("programme"))
                .withBands()
                .table()
                .toString();
        assertThat(banded).contains("band", "kg/m²", "0.1305", " to ");
    }

    @Test
    void aLongTableIsCutInTextOnly() {
        WhatIfTable table = WhatIf.settingsHeld(order, studio)
                .vary(Input.lift(), percent(80), percent(120), 5000)
                .show(Outcome.grammage("programme"))
                .table();
        assertThat(table.toString().lines().count()).isLessThan(70);
        assertThat(table.toString()).contains("and 4940 rows more");
        assertThat(table.csv().lines()).hasSize(5001);
        double before = 0;
        for (int row = 0; row < table.size(); row++) {
            double now = table.value(row, Outcome.grammage("programme"))
                    .orElseThrow()
                    .si();
            assertThat(now).isGreaterThan(before);
            before = now;
        }
    }

    @Test
    void solvesWhatMakersAsk() {
        WhatIf held = WhatIf.settingsHeld(order, studio);
        WhatIf anew = WhatIf.decidedAnew(order, studio);
        assertThat(held.solve(Input.lift(), percent(70), percent(130), Outcome.grammage("programme"), Grammage.gsm(135))
                        .one()
                        .si())
                .isCloseTo(1.103, Offset.offset(0.05));
        assertThat(held.solve(
                        Input.lift(), percent(70), percent(130), Outcome.grammage("programme"), Grammage.gsm(240)))
                .hasToString(
                        "from 70 % to 130 % grammage of programme goes from 113.1 g/m² to 138.2 g/m²; 240 g/m² is not"
                                + " reached");
        assertThat(anew.solve(Input.beating("grey"), hours(0), hours(10), Outcome.drainTime("programme"), seconds(30))
                        .one()
                        .in("h"))
                .isCloseTo(2.647, Offset.offset(0.001));
        assertThat(anew.solve(
                                Input.roomHumidity(),
                                RelativeHumidity.percent(30),
                                RelativeHumidity.percent(85),
                                Outcome.dryingTime("seat card"),
                                hours(20))
                        .one()
                        .in("%"))
                .isCloseTo(71.74, Offset.offset(0.01));
        // A press is set in steps of 500 N.
        Answer<SheetPressure, SheetPressure> stepped = anew.solve(
                Input.pressure(),
                SheetPressure.kilopascals(100),
                SheetPressure.kilopascals(1000),
                Outcome.pressure("programme"),
                SheetPressure.kilopascals(500));
        assertThat(stepped.found()).isEmpty();
        assertThat(stepped.jumps()).hasSize(1);
        assertThat(stepped.jumps().get(0).after().in("kPa")
                        - stepped.jumps().get(0).before().in("kPa"))
                .isBetween(1.0, 6.0);
        assertThat(stepped.notices()).extracting(Notice::code).containsExactly("whatif.jumps");
    }

    @Test
    void countsAreSolvedInWholeNumbers() {
        Studio stocked =
                studio.with(one -> one.onHand(Fibres.COTTON_RAG, kilograms(2)).onHand(Fibres.FLAX_RAW, kilograms(1)));
        WhatIf asked = WhatIf.decidedAnew(order, stocked);
        Answer<Dimensionless, Mass> most =
                asked.mostThatFits(Input.count("programme"), 1, 1000, Outcome.fibreToBuy("grey"), grams(0));
        int count = (int) most.one().si();
        assertThat(count).isEqualTo(MakingPlan.mostPieces(order, stocked, "programme"));
        for (int more = 0; more <= 30; more++) {
            int tried = count + more;
            MakingPlan plan = MakingPlan.withoutBands(order.with("programme", one -> one.count(tried)), stocked);
            assertThat(plan.batch("grey").fibre().asBought().si() == 0)
                    .as("%d", tried)
                    .isEqualTo(more == 0);
        }
        assertThat(most.toString())
                .startsWith(count + " (number ordered of programme): fibre to buy of grey is 0 g; with one more");
        Answer<Dimensionless, ?> none =
                asked.mostThatFits(Input.count("programme"), 1, 10, Outcome.timeAtVat("programme"), minutes(1));
        assertThat(none.isReached()).isFalse();
        assertThat(none.toString()).startsWith("not even 1: time at the vat of programme would be");
        Answer<Dimensionless, ?> all =
                asked.mostThatFits(Input.count("programme"), 1, 10, Outcome.timeAtVat("programme"), hours(6));
        assertThat(all.one().si()).isEqualTo(10);
        assertThat(all.notices()).extracting(Notice::code).containsExactly("whatif.all-fit");
        assertCode(
                () -> asked.solve(
                        Input.count("programme"),
                        Kinds.NUMBER.ofSi(1),
                        Kinds.NUMBER.ofSi(9),
                        Outcome.fibre("grey"),
                        grams(900)),
                "whatif.count");
        assertCode(() -> asked.mostThatFits(Input.lift(), 1, 2, Outcome.fibre("grey"), grams(900)), "whatif.no-count");
    }

    @Test
    void inputsOfTheOrderAndTheStudioAreTakenUp() {
        Job job = new Job(order, studio);
        assertThat(Input.count("programme")
                        .applied(job, Kinds.NUMBER.ofSi(80))
                        .order()
                        .pieces()
                        .get(0)
                        .count())
                .isEqualTo(80);
        assertCode(() -> Input.count("programme").applied(job, Kinds.NUMBER.ofSi(80.5)), "whatif.not-whole");
        assertThat(Input.spare("programme")
                        .applied(job, Share.percent(7))
                        .order()
                        .pieces()
                        .get(0)
                        .spare())
                .contains(Share.percent(7));
        assertThat(Input.caliper("programme")
                        .applied(job, mm(0.3))
                        .order()
                        .pieces()
                        .get(0)
                        .caliper())
                .contains(mm(0.3));
        assertThat(Input.drainability("grey")
                        .applied(job, SchopperRiegler.degrees(40))
                        .order()
                        .recipes()
                        .get(0)
                        .drainability())
                .contains(SchopperRiegler.degrees(40));
        assertThat(Input.stockConsistency("grey")
                        .applied(job, Consistency.percent(2))
                        .order()
                        .recipes()
                        .get(0)
                        .stockConsistency())
                .contains(Consistency.percent(2));
        assertThat(Input.dose("grey", "slate pigment")
                        .applied(job, org.papermath.quantity.Dose.percent(2))
                        .order()
                        .recipes()
                        .get(0)
                        .additives()
                        .get(0)
                        .dose())
                .isEqualTo(org.papermath.quantity.Dose.percent(2));
        assertCode(
                () -> Input.dose("grey", "glitter").applied(job, org.papermath.quantity.Dose.percent(2)),
                "whatif.no-additive");
        assertThat(Input.roomTemperature()
                        .applied(job, Kinds.TEMPERATURE.of(25, "Cel"))
                        .studio()
                        .room()
                        .temperature()
                        .in("Cel"))
                .isCloseTo(25, Offset.offset(1e-9));
        assertThat(Input.onHand(Fibres.ABACA).applied(job, grams(700)).studio().onHand())
                .containsEntry(Fibres.ABACA, grams(700));
        assertThat(Input.dipDepth()
                        .applied(job, mm(25))
                        .studio()
                        .assumptions()
                        .si("vat.dip-depth", Scope.at("the oak vat")))
                .isCloseTo(0.025, Offset.offset(1e-15));
        assertThat(Input.lift()
                        .in("1")
                        .applied(job, percent(90))
                        .studio()
                        .assumptions()
                        .own())
                .hasSize(1);
    }

    @Test
    void aDeeperDipIsAThinnerVat() {
        WhatIfTable table = WhatIf.decidedAnew(order, studio)
                .vary(Input.dipDepth(), mm(20), mm(40), 3)
                .show(Outcome.vatConsistency("seat card"), Outcome.lift("seat card"))
                .table();
        double before = 1;
        for (int row = 0; row < 3; row++) {
            double now = table.value(row, Outcome.vatConsistency("seat card"))
                    .orElseThrow()
                    .si();
            assertThat(now).isLessThan(before);
            before = now;
        }
    }

    @Test
    void aQuestionWithoutSenseIsRefused() {
        WhatIf anew = WhatIf.decidedAnew(order, studio);
        assertCode(() -> anew.show(Outcome.workingHours()).table(), "whatif.empty");
        assertCode(() -> anew.vary(Input.lift(), List.of(percent(90))).table(), "whatif.empty");
        assertCode(() -> anew.vary(Input.lift(), List.of()), "whatif.points");
        assertCode(() -> anew.vary(Input.lift(), percent(90), percent(110), 1), "whatif.points");
        assertCode(() -> anew.vary(Input.lift(), percent(90), percent(110), 2_000_000), "whatif.points");
        assertCode(() -> anew.vary(Input.lift(), percent(110), percent(90), 5), "whatif.range");
        assertCode(
                () -> anew.vary(Input.lift(), List.of(percent(90)))
                        .vary(Input.beating("grey"), List.of(hours(1)))
                        .vary(Input.pressure(), List.of(SheetPressure.kilopascals(100))),
                "whatif.inputs");
        assertCode(
                () -> anew.vary(Input.lift(), List.of(percent(90)))
                        .show(Outcome.grammage("poster"))
                        .table(),
                "whatif.no-outcome");
        // Of a fibre that the order has not.
        assertCode(
                () -> anew.vary(
                                Input.assumption(Kinds.SHARE, "vat.retention", Scope.of("straw"), "%"),
                                List.of(Share.percent(90)))
                        .show(Outcome.workingHours())
                        .table(),
                "whatif.not-asked");
        // What settings are chosen by moves nothing while they are held.
        assertCode(
                () -> WhatIf.settingsHeld(order, studio)
                        .vary(Input.vatConsistency("grey"), Consistency.percent(0.4), Consistency.percent(0.8), 3)
                        .show(Outcome.grammage("programme"))
                        .table(),
                "whatif.moves-nothing");
        WhatIfTable table = anew.vary(Input.lift(), List.of(percent(90)))
                .show(Outcome.workingHours())
                .table();
        assertCode(() -> table.value(1, Outcome.workingHours()), "whatif.no-row");
        assertCode(() -> table.value(0, Outcome.grammage("programme")), "whatif.no-column");
        assertCode(() -> table.amount(0, Input.pressure()), "whatif.no-column");
    }

    @Test
    void settingsOfOtherWorkAreNotHeld() {
        WhatIfTable table = WhatIf.settingsHeld(order, studio)
                .vary(
                        Input.of(
                                "without the envelope",
                                "",
                                Kinds.NUMBER,
                                "1",
                                (job, yes) -> yes.si() == 0
                                        ? job.withRecipe("grey", one -> one.beating(hours(4)))
                                        : new Job(job.order().withoutPiece("envelope"), job.studio())),
                        List.of(Kinds.NUMBER.ofSi(0), Kinds.NUMBER.ofSi(1)))
                .show(Outcome.grammage("programme"))
                .table();
        assertThat(table.value(0, Outcome.grammage("programme"))).isPresent();
        assertThat(table.reason(1, Outcome.grammage("programme")).orElseThrow().code())
                .isEqualTo("whatif.other-work");
    }

    @Test
    void aMillionIsTheMostAndAHundredThousandAreNoTrouble() {
        WhatIfTable table = WhatIf.settingsHeld(order, studio)
                .vary(Input.lift(), percent(80), percent(120), 100_000)
                .show(Outcome.grammage("programme"), Outcome.caliper("programme"))
                .table();
        assertThat(IntStream.range(0, table.size())
                        .filter(row ->
                                table.value(row, Outcome.grammage("programme")).isPresent())
                        .count())
                .isEqualTo(100_000);
    }

    @Test
    void theStoreOfAssumptionsIsNotChanged() {
        Assumptions before = studio.assumptions();
        big();
        assertThat(studio.assumptions()).isSameAs(before);
        assertThat(before.own()).isEmpty();
    }
}
