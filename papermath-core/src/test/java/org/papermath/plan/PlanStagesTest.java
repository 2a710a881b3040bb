package org.papermath.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.papermath.quantity.Amounts.celsius;
import static org.papermath.quantity.Amounts.grams;
import static org.papermath.quantity.Amounts.hours;
import static org.papermath.quantity.Amounts.litres;
import static org.papermath.quantity.Amounts.mm;

import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.papermath.air.Air;
import org.papermath.card.MakingCard;
import org.papermath.drying.Dryer;
import org.papermath.engine.Engine;
import org.papermath.engine.PieceWork;
import org.papermath.engine.Settings;
import org.papermath.envelope.EnvelopeStyle;
import org.papermath.evidence.Notice;
import org.papermath.evidence.Scope;
import org.papermath.fibre.Fibres;
import org.papermath.fibre.Furnish;
import org.papermath.mould.Mould;
import org.papermath.order.Order;
import org.papermath.order.Piece;
import org.papermath.order.Recipe;
import org.papermath.order.Studio;
import org.papermath.press.Felts;
import org.papermath.pulp.Additive;
import org.papermath.quantity.Dose;
import org.papermath.quantity.FibreConcentration;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.RelativeHumidity;
import org.papermath.quantity.VolumeFlow;
import org.papermath.vat.Vat;

/** What single stages of a plan hold to. */
class PlanStagesTest {
    private static final LocalDate DUE = LocalDate.of(2027, 6, 30);

    private static Recipe.Builder plain() {
        return Recipe.of("plain", Furnish.of(Fibres.COTTON_RAG)).beating(hours(3));
    }

    private static Piece.Builder card() {
        return Piece.of("card", 40, "plain").size(mm(120), mm(170)).grammage(Grammage.gsm(150));
    }

    private static Order order(Recipe recipe, Piece... pieces) {
        Order.Builder order = Order.of("stages").recipe(recipe).due(DUE);
        for (Piece piece : pieces) {
            order.piece(piece);
        }
        return order.build();
    }

    private static MakingPlan plan(Recipe.Builder recipe, Piece.Builder... pieces) {
        Piece[] built = new Piece[pieces.length];
        for (int i = 0; i < built.length; i++) {
            built[i] = pieces[i].build();
        }
        return MakingPlan.of(order(recipe.build(), built), Sample.studio());
    }

    private static Notice notice(MakingPlan plan, String code) {
        return plan.notices().stream()
                .filter(one -> one.code().equals(code))
                .findFirst()
                .orElseThrow();
    }

    private static List<String> steps(MakingPlan plan) {
        return plan.schedule().steps().stream().map(Schedule.Step::name).toList();
    }

    @Test
    void whatIsBoughtIsWeighedAndSaysWhatItIsFor() {
        MakingPlan plan = MakingPlan.of(Sample.order(), Sample.studio());
        assertThat(plan.toBuy())
                .extracting(ToBuy::what)
                .containsExactly("cotton rag (half-stuff)", "abaca", "blue pigment", "retention aid", "carbonate");
        assertThat(plan.toBuy()).allSatisfy(one -> assertThat(one.why()).isEqualTo("for fog blue"));
        BatchPlan batch = plan.batch("fog blue");
        for (int f = 0; f < 2; f++) {
            assertThat(plan.toBuy().get(f).mass())
                    .isEqualTo(batch.fibre().kinds().get(f).asBought());
        }
        for (int a = 0; a < 3; a++) {
            assertThat(plan.toBuy().get(2 + a).mass())
                    .isEqualTo(batch.additives().get(a).productInAll());
        }
        assertThat(plan.toBuy().get(0)).hasToString("1065 g cotton rag (half-stuff) (for fog blue)");
    }

    @Test
    void batchesOfOneStudioAreBoughtForTogether() {
        Recipe white = Recipe.of("white", Furnish.of(Fibres.COTTON_RAG))
                .beating(hours(2))
                .build();
        Recipe cream = Recipe.of("cream", Furnish.of(Fibres.COTTON_RAG))
                .beating(hours(4))
                .build();
        Order order = Order.of("two")
                .recipe(white)
                .recipe(cream)
                .piece(Piece.of("a", 20, "white")
                        .size(mm(100), mm(150))
                        .grammage(Grammage.gsm(120))
                        .build())
                .piece(Piece.of("b", 30, "cream")
                        .size(mm(100), mm(150))
                        .grammage(Grammage.gsm(120))
                        .build())
                .build();
        MakingPlan plan = MakingPlan.of(order, Sample.studio());
        assertThat(plan.batches()).extracting(BatchPlan::name).containsExactly("white", "cream");
        assertThat(plan.toBuy()).hasSize(1);
        assertThat(plan.toBuy().get(0).why()).isEqualTo("for white and cream");
        assertThat(plan.toBuy().get(0).mass().si())
                .isCloseTo(
                        plan.batch("white").fibre().asBought().si()
                                + plan.batch("cream").fibre().asBought().si(),
                        within(1e-12));
        assertThat(plan.batch("cream").drainability().likely().si())
                .isGreaterThan(plan.batch("white").drainability().likely().si());
        // Each batch is planned by itself: the other one does not change it.
        Order alone = Order.of("one").recipe(white).piece(order.pieces().get(0)).build();
        assertThat(MakingPlan.of(alone, Sample.studio()).batch("white").fibre().ovenDry())
                .isEqualTo(plan.batch("white").fibre().ovenDry());
    }

    @Test
    void fibreOnHandIsTakenFirst() {
        Order order = order(plain().build(), card().build());
        FibreToWeigh all = MakingPlan.of(order, Sample.studio()).batch("plain").fibre();
        Studio some = Sample.bare()
                .vat(Vat.of("tub", litres(80)))
                .onHand(Fibres.COTTON_RAG, grams(100))
                .build();
        Studio none = Sample.bare().vat(Vat.of("tub", litres(80))).build();
        FibreToWeigh with = MakingPlan.of(order, some).batch("plain").fibre();
        FibreToWeigh without = MakingPlan.of(order, none).batch("plain").fibre();
        assertThat(with.ovenDry()).isEqualTo(without.ovenDry());
        assertThat(with.kinds().get(0).fromHand().in("g")).isEqualTo(100);
        double moisture = Sample.studio().assumptions().si("fibre.moisture-as-bought", Fibres.COTTON_RAG.scope());
        assertThat(without.asBought().in("g") - with.asBought().in("g")).isCloseTo(100 / (1 - moisture), within(1.0));
        Studio plenty = Sample.bare()
                .vat(Vat.of("tub", litres(80)))
                .onHand(Fibres.COTTON_RAG, grams(9000))
                .build();
        MakingPlan enough = MakingPlan.of(order, plenty);
        assertThat(enough.batch("plain").fibre().asBought().si()).isZero();
        assertThat(enough.toBuy()).isEmpty();
        assertThat(all.kinds().get(0).fromHand().si()).isZero();
    }

    @Test
    void stepsFollowEachOtherToTheDay() {
        MakingPlan plan = plan(plain(), card());
        List<Schedule.Step> steps = plan.schedule().steps();
        assertThat(steps(plan))
                .containsExactly(
                        "order fibre and have it",
                        "soak",
                        "beat and dose",
                        "form and press",
                        "dry",
                        "sort and finish",
                        "condition under weight",
                        "count and pack");
        LocalDate day = plan.schedule().start().orElseThrow();
        for (Schedule.Step step : steps) {
            LocalDate start = step.start().orElseThrow();
            assertThat(start).isAfterOrEqualTo(day);
            assertThat(step.end()).contains(start.plusDays(step.days().orElseThrow() - 1));
            day = start;
        }
        LocalDate end = steps.get(steps.size() - 1).end().orElseThrow();
        // No later beginning would do; a weekend may lie before the day it is due.
        assertThat(end).isBetween(DUE.minusDays(3), DUE);
        assertThat(steps.get(0))
                .hasToString("order fibre and have it, 11 days, from "
                        + plan.schedule().start().get());
    }

    @Test
    void sizingOfEitherKindAddsItsDays() {
        Schedule plain = plan(plain(), card()).schedule();
        MakingPlan inPulp =
                plan(plain().additive(Additive.of("size", Additive.Purpose.INTERNAL_SIZE), Dose.percent(1)), card());
        MakingPlan inBath = plan(plain().sizeBath(FibreConcentration.gramsPerLitre(26)), card());
        int cure = (int) Math.ceil(Sample.studio().assumptions().si("schedule.size-cure", Scope.GENERAL) / 86_400);
        assertThat(steps(inPulp)).contains("let the size cure").containsSubsequence("dry", "let the size cure");
        assertThat(steps(inBath)).contains("let the size cure");
        Schedule.Step left = inPulp.schedule().steps().stream()
                .filter(step -> step.name().equals("let the size cure"))
                .findFirst()
                .orElseThrow();
        assertThat(left.days().orElseThrow()).isEqualTo(cure + 1);
        // It cures while it is finished and lies under weight.
        assertThat(inPulp.schedule().days().orElseThrow())
                .isGreaterThan(plain.leastDays())
                .isLessThan(plain.leastDays() + cure);
        assertThat(inBath.schedule().start().orElseThrow())
                .isBefore(plain.start().orElseThrow());
    }

    @Test
    void sizeBathComesAfterDryingAndDriesAgain() {
        MakingPlan plan = plan(plain().sizeBath(FibreConcentration.gramsPerLitre(26)), card());
        assertThat(steps(plan))
                .containsExactly(
                        "order fibre and have it",
                        "soak",
                        "beat and dose",
                        "form and press",
                        "dry",
                        "size in the bath",
                        "dry again",
                        "let the size cure",
                        "sort and finish",
                        "condition under weight",
                        "count and pack");
        assertThat(plan.schedule().days()).hasValue(plan.schedule().leastDays());
    }

    @Test
    void hoursOfAPieceAreThoseOfItsRooms() {
        Order order = Sample.order();
        Engine engine = Engine.of(order, Sample.studio());
        Settings settings = engine.decide(engine.likely());
        MakingPlan plan = MakingPlan.withoutBands(order, Sample.studio());
        for (int p = 0; p < engine.pieces(); p++) {
            PieceWork.Hours hours = engine.piece(p)
                    .hours(settings, plan.pieces().get(p).timeAtVat().likely().si(), engine.likely());
            assertThat(hours.wet() + hours.size() + hours.finish())
                    .isCloseTo(plan.pieces().get(p).workingHours().likely().si(), within(1e-6));
            assertThat(hours.finish()).isPositive();
        }
    }

    @Test
    void dryingNobodyKnowsKeepsItsStepAndDatesOnlyWhatComesAfterIt() {
        Order order = order(plain().build(), card().build());
        MakingPlan known = MakingPlan.of(
                order, Sample.bare().dryer(Dryer.boards("boards", 30)).build());
        MakingPlan plan = MakingPlan.of(order, Sample.bare().build());
        Schedule schedule = plan.schedule();
        assertThat(steps(plan)).isEqualTo(steps(known));
        int dry = steps(plan).indexOf("dry");
        assertThat(schedule.steps().get(dry)).hasToString("dry, days not known");
        assertThat(schedule.days()).isEmpty();
        assertThat(schedule.start()).isEmpty();
        for (int i = 0; i < schedule.steps().size(); i++) {
            Schedule.Step step = schedule.steps().get(i);
            assertThat(step.days().isPresent()).isEqualTo(i != dry);
            assertThat(step.start().isPresent()).isEqualTo(i > dry);
            assertThat(step.end().isPresent()).isEqualTo(i >= dry);
        }
        assertThat(schedule).hasToString("at least " + schedule.leastDays() + " days, and the drying");
        Notice notice = notice(plan, "schedule.no-drying");
        assertThat(notice.level()).isEqualTo(Notice.Level.WARNING);
        assertThat(notice.text())
                .contains("how long card dries")
                .contains(schedule.toString())
                .contains("no date")
                .contains("Give the studio its dryer");
        MakingPlan three = MakingPlan.of(Sample.order(), Sample.bare().build());
        assertThat(notice(three, "schedule.no-drying").text()).contains("how long leaflet, place card and cover dry,");
        assertThat(notice.arguments()).containsEntry("leastDays", schedule.leastDays());
        assertThat(String.join(" ", MakingCard.of(plan).lines()).replaceAll(" +", " "))
                .contains("- not known when: dry, days not known")
                .contains("In all: " + schedule + ".");
        assertThat(known.notices()).extracting(Notice::code).doesNotContain("schedule.no-drying");
    }

    @Test
    void oneDryingNobodyKnowsLeavesTheWholeUnknown() {
        Studio damp = Studio.of("damp")
                .mould(Mould.of("folio", mm(320), mm(420)))
                .room(Air.of(celsius(19), RelativeHumidity.percent(100)))
                .dryer(Dryer.blotters("blotters", 30))
                .dryer(Dryer.loft("loft", 4, 100))
                .build();
        Piece.Builder other = Piece.of("other", 20, "plain")
                .size(mm(100), mm(150))
                .grammage(Grammage.gsm(120))
                .dryer("loft");
        MakingPlan plan = MakingPlan.of(
                order(plain().sizeBath(FibreConcentration.gramsPerLitre(26)).build(), card().build(), other.build()),
                damp);
        assertThat(plan.piece("card").dryingStage().isDone()).isTrue();
        assertThat(plan.piece("other").dryingStage().code()).isEqualTo("drying.never-saturated");
        assertThat(plan.schedule().steps())
                .filteredOn(step -> step.days().isEmpty())
                .extracting(Schedule.Step::name)
                .containsExactly("dry", "dry again");
        assertThat(notice(plan, "schedule.no-drying").text())
                .contains("how long other dries")
                .contains("Bring in drier air");
    }

    @Test
    void surfaceSizeIsMadeTakenUpAndDriedAgain() {
        MakingPlan plan = plan(plain().sizeBath(FibreConcentration.gramsPerLitre(26)), card());
        PiecePlan piece = plan.piece("card");
        SizingPlan sizing = piece.sizing();
        double taken = Sample.studio().assumptions().si("size.bath-taken", Scope.GENERAL);
        double heel = Sample.studio().assumptions().si("size.bath-heel", Scope.GENERAL);
        double solids = piece.counts().sheets() * piece.forming().solids().si();
        assertThat(sizing.taken().in("L")).isCloseTo(solids * taken, within(0.01 * solids));
        assertThat(sizing.bath().in("L"))
                .isBetween(sizing.taken().in("L") + 1000 * heel, sizing.taken().in("L") + 1000 * heel + 0.1);
        assertThat(sizing.drySize().in("g"))
                .isBetween(26 * sizing.bath().in("L"), 26 * sizing.bath().in("L") + 1);
        assertThat(sizing.gained().likely().si()).isCloseTo(taken * 0.026, within(1e-4));
        assertThat(sizing.dryAgain().get().likely().si()).isPositive();
        assertThat(piece.finished().grammage().likely().in("g/m2")).isCloseTo(150, within(2.5));
        PiecePlan unsized = plan(plain(), card()).piece("card");
        assertThat(unsized.sizingStage().code()).isEqualTo("size.none");
        // The size is part of the weight, so the sheet itself is formed lighter by as much.
        double lighter = piece.forming().solids().si()
                / piece.forming().opening().width().si()
                / piece.forming().opening().height().si()
                * unsized.forming().opening().width().si()
                * unsized.forming().opening().height().si()
                / unsized.forming().solids().si();
        assertThat(lighter).isCloseTo(1 / (1 + sizing.gained().likely().si()), within(1e-3));
        assertThat(piece.counts().sheets())
                .isGreaterThanOrEqualTo(unsized.counts().sheets());
    }

    @Test
    void everyDryerHasItsOwnTime() {
        Order order = order(plain().build(), card().build());
        Studio.Builder tub = Sample.bare().vat(Vat.of("tub", litres(80)));
        DryingPlan stack = MakingPlan.of(
                        order,
                        Sample.bare()
                                .vat(Vat.of("tub", litres(80)))
                                .dryer(Dryer.fanStack("d", VolumeFlow.cubicMetresPerHour(2000), 40))
                                .build())
                .piece("card")
                .drying();
        DryingPlan slow = MakingPlan.of(
                        order,
                        Sample.bare()
                                .vat(Vat.of("tub", litres(80)))
                                .dryer(Dryer.fanStack("d", VolumeFlow.cubicMetresPerHour(1000), 40))
                                .build())
                .piece("card")
                .drying();
        // Half the air is a little damper; sheet and blotter hold the water back as before.
        assertThat(slow.time().likely().si() / stack.time().likely().si()).isBetween(1.001, 1.2);
        assertThat(stack.blotterChanges()).isZero();
        DryingPlan loft = MakingPlan.of(
                        order, tub.dryer(Dryer.loft("d", 1, 100)).build())
                .piece("card")
                .drying();
        DryingPlan spurs = MakingPlan.of(
                        order,
                        Sample.bare()
                                .vat(Vat.of("tub", litres(80)))
                                .dryer(Dryer.loft("d", 4, 100))
                                .build())
                .piece("card")
                .drying();
        // Four in a spur hold each other while they shrink, so they are not formed quite alike.
        double four = 4 * loft.time().likely().si();
        assertThat(spurs.time().likely().si()).isCloseTo(four, within(0.05 * four));
        PiecePlan ten = MakingPlan.of(
                        order,
                        Sample.bare()
                                .vat(Vat.of("tub", litres(80)))
                                .dryer(Dryer.blotters("d", 10))
                                .build())
                .piece("card");
        assertThat(ten.drying().blotterChanges()).isPositive();
        assertThat(ten.drying().loads()).isEqualTo((ten.counts().sheets() + 9) / 10);
    }

    @Test
    void foldingHalvesTheLongerSideAndDoublesThePile() {
        PiecePlan flat = plan(plain(), card()).piece("card");
        PiecePlan folded = plan(plain(), card().folds(2)).piece("card");
        assertThat(flat.finished().foldedWidth().in("mm")).isEqualTo(120);
        assertThat(folded.finished().foldedHeight().in("mm")).isEqualTo(85);
        assertThat(folded.finished().foldedWidth().in("mm")).isEqualTo(60);
        assertThat(folded.finished().pile().likely().si())
                .isCloseTo(
                        4
                                * folded.counts().wanted()
                                * folded.finished().caliper().likely().si(),
                        within(1e-9));
        assertThat(flat.finished().pile().likely().si())
                .isCloseTo(
                        flat.counts().wanted()
                                * flat.finished().caliper().likely().si(),
                        within(1e-9));
        assertThat(folded.finished().mass().likely().in("g"))
                .isCloseTo(flat.finished().mass().likely().in("g"), within(0.1));
    }

    @Test
    void whatNoServiceTakesIsRefusedByTheMail() {
        MakingPlan plan = plan(
                plain(),
                Piece.of("card", 10, "plain")
                        .size(mm(280), mm(360))
                        .grammage(Grammage.gsm(150))
                        .mailedIn("Germany"));
        Notice refused = notice(plan, "mail.refused");
        assertThat(plan.piece("card").mail().verdict().service()).isEmpty();
        assertThat(refused.level()).isEqualTo(Notice.Level.WARNING);
        assertThat(refused.text()).startsWith("piece card: ").contains("360 mm is 7 mm over the limit of 353 mm");
        assertThat(refused.arguments()).containsEntry("piece", "card");
    }

    @Test
    void tightEnvelopeIsSaid() {
        Piece.Builder inside =
                Piece.of("note", 20, "plain").size(mm(90), mm(130)).grammage(Grammage.gsm(120));
        MakingPlan tight = plan(
                plain(),
                inside,
                Piece.of("cover", 20, "plain")
                        .grammage(Grammage.gsm(90))
                        .envelopeFor("note", EnvelopeStyle.SIDE_SEAM)
                        .clearance(mm(0.5)));
        EnvelopePlan envelope = tight.piece("cover").envelope();
        assertThat(envelope.sharePairsFit().si()).isLessThan(0.99);
        assertThat(notice(tight, "envelope.tight").text())
                .isEqualTo("piece cover: with the usual spread of hand-made " + "sizes only " + envelope.sharePairsFit()
                        + " of random pairs fit; give it more clearance.");
        MakingPlan roomy = plan(
                plain(),
                inside,
                Piece.of("cover", 20, "plain")
                        .grammage(Grammage.gsm(90))
                        .envelopeFor("note", EnvelopeStyle.SIDE_SEAM)
                        .clearance(mm(12)));
        assertThat(roomy.notices()).extracting(Notice::code).doesNotContain("envelope.tight", "envelope.too-small");
    }

    @Test
    void postTooHeavyToLiftIsSaidAndALightOneIsNot() {
        Order order = order(plain().build(), card().build());
        Studio heavy = Sample.bare()
                .vat(Vat.of("tub", litres(80)))
                .felts(Felts.of(mm(900), mm(1200), Grammage.gsm(5000), 41))
                .build();
        MakingPlan plan = MakingPlan.of(order, heavy);
        assertThat(notice(plan, "post.heavy").text()).contains("more than the 23 kg (51 lb) one person should lift");
        assertThat(plan.piece("card").posts().mass().likely().in("kg")).isGreaterThan(23);
        Studio light = Sample.bare()
                .vat(Vat.of("tub", litres(80)))
                .felts(Felts.of(mm(250), mm(350), Grammage.gsm(450), 11))
                .build();
        MakingPlan easy = MakingPlan.of(order, light);
        assertThat(easy.piece("card").posts().mass().likely().in("kg")).isLessThan(23);
        assertThat(easy.notices()).extracting(Notice::code).doesNotContain("post.heavy");
    }

    @Test
    void sensitivitySaysWhatItWidensAndWhatToMeasure() {
        MakingPlan plan = MakingPlan.of(Sample.order(), Sample.studio());
        for (Sensitivity one : plan.sensitivity()) {
            assertThat(one.share()).isBetween(0.01, 1.0);
            assertThat(one.weight()).isBetween(0.0, 1.0);
            assertThat(one.widens())
                    .matches(
                            "(grammage|width|height|caliper|number of good pieces|drying time|time to drain|solids after"
                                    + " pressing|hands-on time|drainability) of (leaflet|place card|cover|fog blue)");
            assertThat(one.minutes().in("min")).isBetween(2.0, 60.0);
            assertThat(one.takesAway()).isCloseTo(1 - Math.sqrt(1 - one.share()), within(1e-9));
            assertThat(one.measurement())
                    .isEqualTo(Measurements.against(one.assumption().id()).words())
                    .isNotEqualTo("look for a better source");
            assertThat(one.toString())
                    .startsWith(one.assumption().key() + ": ")
                    .contains(" % of the band of the ")
                    .endsWith("; " + one.measurement());
        }
        assertThat(plan.sensitivity().stream().mapToDouble(Sensitivity::weight).sum())
                .isBetween(0.8, 1 + 1e-9);
    }

    @Test
    void measuredValuesTakeThePlaceOfTheModels() {
        Studio known = Sample.studio()
                .withAssumptions(Sample.studio()
                        .assumptions()
                        .given("shrinkage.measured-along", Scope.of("plain"), 0.04)
                        .given("shrinkage.measured-across", Scope.of("plain"), 0.05)
                        .given("web.solids-pressed", Scope.of("plain"), 0.41)
                        .given("sheet.moisture-conditioned", Scope.of("plain"), 0.06)
                        .given("sheet.density-measured", Scope.of("card"), 520));
        PiecePlan piece =
                MakingPlan.of(order(plain().build(), card().build()), known).piece("card");
        assertThat(piece.finished().shrinkageAlong().likely().si()).isEqualTo(0.04);
        assertThat(piece.finished().shrinkageAcross().high().si()).isEqualTo(0.05);
        assertThat(piece.solids().likely().si()).isCloseTo(0.41, within(1e-12));
        double grammage = piece.finished().grammage().likely().si();
        assertThat(piece.finished().caliper().likely().si()).isCloseTo(grammage / 520, within(1e-12));
        // Moisture is of the whole sheet: what is not water is the oven-dry sheet.
        double dryArea = piece.forming().opening().width().si()
                * piece.forming().opening().height().si()
                * 0.96
                * 0.95;
        assertThat(grammage * dryArea * 0.94)
                .isCloseTo(
                        piece.forming().solids().si(),
                        within(0.02 * piece.forming().solids().si()));
    }
}
