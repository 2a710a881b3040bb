package org.papermath.cost;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.papermath.cost.CostSample.EUR;
import static org.papermath.quantity.Amounts.days;
import static org.papermath.quantity.Amounts.hours;
import static org.papermath.quantity.Amounts.kilograms;
import static org.papermath.quantity.Amounts.mm;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.junit.jupiter.api.Test;
import org.papermath.fibre.Fibres;
import org.papermath.order.Order;
import org.papermath.order.OwnStep;
import org.papermath.order.Studio;
import org.papermath.plan.BatchPlan;
import org.papermath.plan.ClassDay;
import org.papermath.plan.MakingPlan;
import org.papermath.plan.PiecePlan;
import org.papermath.plan.ToBuy;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;

class CostingTest {
    private static final Costing COSTING = CostSample.costing();

    private static Money sum(List<Money> parts) {
        return parts.stream().reduce(Money.zero(EUR), Money::plus);
    }

    private static <T> Money sum(List<T> of, Function<T, Money> part) {
        return sum(of.stream().map(part).toList());
    }

    private static Costing.Line line(Costing costing, String what) {
        return costing.lines().stream()
                .filter(one -> one.what().equals(what))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void linesAndPiecesComeToTheWhole() {
        Money whole = COSTING.cost().likely();
        assertThat(COSTING.gaps()).isEmpty();
        assertThat(sum(COSTING.lines(), Costing.Line::cost)).isEqualTo(whole);
        assertThat(sum(List.of(Costing.Group.values()), COSTING::of)).isEqualTo(whole);
        assertThat(COSTING.fixed().likely().plus(COSTING.variable().likely())).isEqualTo(whole);
        assertThat(sum(COSTING.pieces(), piece -> piece.cost().likely())).isEqualTo(whole);
        assertThat(sum(COSTING.pieces(), piece -> piece.fixed().likely()))
                .isEqualTo(COSTING.fixed().likely());
        for (Costing.OfPiece piece : COSTING.pieces()) {
            assertThat(piece.fixed()
                            .likely()
                            .plus(piece.inSold())
                            .plus(piece.inSpares())
                            .plus(piece.inRejects()))
                    .isEqualTo(piece.cost().likely());
        }
        for (Costing.Line line : COSTING.lines()) {
            assertThat(line.fixed().plus(line.variable())).as(line.what()).isEqualTo(line.cost());
            assertThat(line.fixed().sign()).as(line.what()).isNotNegative();
            assertThat(line.variable().sign()).as(line.what()).isNotNegative();
        }
        assertThat(COSTING.rejects()).isEqualTo(sum(COSTING.pieces(), Costing.OfPiece::inRejects));
        assertThat(COSTING.rejects().sign()).isPositive();
    }

    @Test
    void handsOnStepsOfOnesOwnAreALineOfTheirOwn() {
        Order order = CostSample.order(60, 40)
                .withStep(OwnStep.of("print elsewhere")
                        .hands(hours(3))
                        .waits(days(6))
                        .after(OwnStep.Stage.CONDITION)
                        .build());
        Costing without = Costing.of(MakingPlan.of(CostSample.order(60, 40), CostSample.studio()), COSTING.prices());
        Costing with = Costing.of(MakingPlan.of(order, CostSample.studio()), COSTING.prices());
        Costing.Line line = line(with, "hands on steps of your own");
        assertThat(line.cost()).isEqualTo(COSTING.prices().hands().orElseThrow().costOf(hours(3)));
        assertThat(line.fixed()).isEqualTo(line.cost());
        assertThat(without.lines()).extracting(Costing.Line::what).doesNotContain("hands on steps of your own");
        assertThat(sum(with.pieces(), piece -> piece.cost().likely()))
                .isEqualTo(with.cost().likely());
        assertThat(with.cost().likely().minus(without.cost().likely())).isGreaterThanOrEqualTo(line.cost());
    }

    /** Each line is worked out again by hand from what the plan says. */
    @Test
    void linesAreWhatThePlanSaysTimesThePrice() {
        MakingPlan plan = COSTING.plan();
        for (ToBuy buy : plan.toBuy()) {
            Optional<MoneyRate<javax.measure.quantity.Mass>> price = Optional.ofNullable(
                            COSTING.prices().fibres().get(buy.what().replaceAll(" \\(.*", "")))
                    .or(() -> Optional.ofNullable(COSTING.prices().additives().get(buy.what())));
            assertThat(line(COSTING, buy.what()).cost())
                    .as(buy.what())
                    .isEqualTo(price.orElseThrow().costOf(buy.mass()));
        }
        double roll = plan.batches().stream()
                .mapToDouble(batch -> batch.beating().rollTime().in("h"))
                .sum();
        assertThat(line(COSTING, "hours of the beater").cost()).isEqualTo(Costing.coin(3 * roll, Money.zero(EUR)));
        assertThat(line(COSTING, "current of the beater").cost())
                .isEqualTo(Costing.coin(0.75 * roll * 0.314, Money.zero(EUR)));
        double hands = plan.workingHours().likely().in("h");
        Money forHands = line(COSTING, "hands on the batches")
                .cost()
                .plus(line(COSTING, "hands on the pieces").cost());
        assertThat(forHands.amount().doubleValue()).isCloseTo(24 * hands, org.assertj.core.api.Assertions.within(0.01));
        double withCleaning = hands + 1.5 * plan.batches().size();
        assertThat(line(COSTING, "rent").cost().amount().doubleValue())
                .isCloseTo(620 * withCleaning / 120, org.assertj.core.api.Assertions.within(0.01));
        Money before = COSTING.cost().likely().minus(line(COSTING, "office").cost());
        assertThat(line(COSTING, "office").cost())
                .isEqualTo(Markup.percent(5).priceOf(before).minus(before));
        assertThat(line(COSTING, "postage").cost())
                .isEqualTo(Money.of("7.90 EUR").times(2 + 1 + 1));
        assertThat(line(COSTING, "sleeve").cost())
                .isEqualTo(Money.of("0.12 EUR").times(60 + 40 + 20));
        assertThat(line(COSTING, "proofs").fixed()).isEqualTo(Money.of("25 EUR"));
        double bath = plan.piece("cover").sizing().drySize().in("kg");
        assertThat(line(COSTING, "dry size for the bath").cost()).isEqualTo(Costing.coin(31 * bath, Money.zero(EUR)));
        int pressings = plan.pieces().stream()
                .mapToInt(piece -> piece.posts().posts()
                        * piece.posts().felts()
                        * piece.press().times())
                .sum();
        assertThat(line(COSTING, "felts").cost()).isEqualTo(Costing.coin(pressings * 4.2 / 400, Money.zero(EUR)));
    }

    /** No water is paid for that does not come in, nor let down that did not come. */
    @Test
    void waterGoesDownTheDrainOrDriesOff() {
        double in = 0;
        for (BatchPlan batch : COSTING.plan().batches()) {
            in += batch.balances().stream()
                    .filter(one -> one.substance().equals("water"))
                    .mapToDouble(one -> one.totalIn().in("kg"))
                    .sum();
        }
        double litres = litres("water");
        assertThat(litres).isCloseTo(in, org.assertj.core.api.Assertions.within(0.005 * in));
        assertThat(litres("drain")).isLessThan(litres).isGreaterThan(0.5 * litres);
    }

    private static double litres(String what) {
        return Kinds.VOLUME
                .read(line(COSTING, what).amount().replaceAll(" at .*", ""))
                .in("L");
    }

    @Test
    void whatHasNoPriceIsTold() {
        PriceList bare = PriceList.of("bare", LocalDate.of(2027, 1, 4), EUR)
                .fibre(Fibres.COTTON_RAG, MoneyRate.read(Kinds.MASS, "14 EUR per kg"))
                .build();
        Costing costing = Costing.of(CostSample.plan(), bare);
        assertThat(costing.isAtLeast()).isTrue();
        assertThat(costing).hasToString(costing.toString()).asString().startsWith("supper of the guild: at least ");
        assertThat(costing.gaps())
                .extracting(Costing.Gap::what)
                .contains(
                        "abaca",
                        "carbonate",
                        "rust pigment",
                        "dry size for the bath",
                        "water",
                        "drain",
                        "current of the beater",
                        "current of the dryer",
                        "hands on the batches",
                        "hands on the pieces",
                        "hours of the beater",
                        "felts");
        assertThat(costing.cost().likely()).isLessThan(COSTING.cost().likely());
        assertThatThrownBy(() -> Quotation.from(Pricing.of(costing, Markup.percent(20)), LocalDate.of(2027, 1, 5), 30))
                .isInstanceOfSatisfying(
                        Refused.class, refused -> assertThat(refused.code()).isEqualTo("quotation.gaps"));
        assertThatThrownBy(() -> Costing.of(
                        CostSample.plan(),
                        CostSample.prices()
                                .line(OwnLine.perPiece("ribbon", Money.of("1 EUR"))
                                        .only("menus"))
                                .build()))
                .isInstanceOfSatisfying(
                        Refused.class, refused -> assertThat(refused.code()).isEqualTo("price.no-piece"));
        assertThatThrownBy(() -> CostSample.prices().water(MoneyRate.read(Kinds.VOLUME, "2 GBP per m3")))
                .isInstanceOfSatisfying(
                        Refused.class, refused -> assertThat(refused.code()).isEqualTo("price.other-currency"));
    }

    /** Fibre that lies on the shelf was paid for once. */
    @Test
    void fibreOnHandCostsAsMuch() {
        Studio stocked = CostSample.studio().with(one -> one.onHand(Fibres.COTTON_RAG, kilograms(0.5)));
        Costing costing = Costing.of(
                MakingPlan.of(CostSample.order(60, 40), stocked),
                CostSample.prices().build());
        Money all = COSTING.of(Costing.Group.FIBRE);
        assertThat(costing.of(Costing.Group.FIBRE).minus(all).amount().abs().doubleValue())
                .as("but for the steps of the scale")
                .isLessThan(0.10);
    }

    @Test
    void bandsHoldTheLikelyAndGoWithTheHours() {
        Costing.Band whole = COSTING.cost();
        assertThat(whole.low()).isLessThan(whole.likely());
        assertThat(whole.high()).isGreaterThan(whole.likely());
        double up = COSTING.plan().workingHours().high().in("h")
                - COSTING.plan().workingHours().likely().in("h");
        double rate = (24 + 620.0 / 120) * 1.05;
        assertThat(whole.high().minus(whole.likely()).amount().doubleValue())
                .as("hours of hands, and a little current of the dryer besides")
                .isBetween(up * rate, 1.001 * up * rate + 1);
        Costing.OfPiece menu = COSTING.piece("menu");
        assertThat(menu.perGoodPiece().low()).isLessThan(menu.perGoodPiece().likely());
        PiecePlan piece = COSTING.plan().piece("menu");
        double good = piece.counts().good().likely().si();
        assertThat(menu.perGoodPiece().likely())
                .isEqualTo(Costing.coin(menu.cost().likely().amount().doubleValue() / good, Money.zero(EUR)));
        double relative = menu.cost().high().amount().doubleValue()
                / menu.cost().likely().amount().doubleValue();
        assertThat(menu.perGoodPiece().high().amount().doubleValue()
                        / menu.perGoodPiece().likely().amount().doubleValue())
                .as("the count of good pieces widens it")
                .isGreaterThan(relative);
        Costing plain = Costing.of(
                MakingPlan.withoutBands(CostSample.order(60, 40), CostSample.studio()),
                CostSample.prices().build());
        assertThat(plain.cost().low()).isEqualTo(plain.cost().high()).isEqualTo(whole.likely());
    }

    @Test
    void pricesAreRoundedUpOnceAndTheRoundingIsShown() {
        Pricing bare = Pricing.of(COSTING, Margin.percent(30));
        Pricing.Priced menu = bare.piece("menu");
        Money exact = Margin.percent(30).priceOf(COSTING.piece("menu").cost().likely());
        assertThat(menu.sum()).isGreaterThanOrEqualTo(exact);
        assertThat(menu.sum().minus(exact)).isLessThanOrEqualTo(Money.of("0.60 EUR"));
        assertThat(menu.rounding().sign()).isZero();
        assertThat(menu.trade()).isEqualTo(menu.price());
        Pricing points = bare.at(PricePoint.every(Money.of("0.50 EUR")));
        assertThat(points.piece("menu").price().minus(points.piece("menu").rounding()))
                .isEqualTo(menu.workedOut());
        Pricing agent = points.throughAgent(Margin.percent(40));
        assertThat(agent.piece("menu").trade())
                .as("what comes to the studio is no less than without an agent")
                .isGreaterThanOrEqualTo(menu.price().minus(Money.of("0.01 EUR")));
        assertThat(agent.left()).isGreaterThan(Money.zero(EUR));
        assertThat(points.leastOrder(Money.of("5000 EUR")).total()).isEqualTo(Money.of("5000 EUR"));
        assertThat(points.total()).isEqualTo(sum(points.pieces(), Pricing.Priced::sum));
        assertThatThrownBy(() -> bare.leastOrder(Money.of("5 GBP"))).isInstanceOf(Refused.class);
    }

    @Test
    void breakEvenCoversTheCostsAndOneLessDoesNot() {
        Pricing pricing = Pricing.of(COSTING, Margin.percent(30));
        Costing.OfPiece menu = COSTING.piece("menu");
        int even = pricing.breakEven("menu").orElseThrow();
        Money price = pricing.piece("menu").price();
        assertThat(price.minus(menu.variablePerPiece()).times(even))
                .isGreaterThanOrEqualTo(menu.fixed().likely());
        assertThat(price.minus(menu.variablePerPiece()).times(even - 1))
                .isLessThan(menu.fixed().likely());
        assertThat(pricing.leastBatch("menu", price).orElseThrow()).isBetween(even, 61);
        assertThat(pricing.leastBatch("menu", Money.of("0.01 EUR"))).isEmpty();
        assertThat(Pricing.breakEven(Money.of("310 EUR"), Money.of("12.50 EUR"), Money.of("6.20 EUR")))
                .isEqualTo(50);
        assertThatThrownBy(() -> Pricing.breakEven(Money.of("310 EUR"), Money.of("6.20 EUR"), Money.of("6.20 EUR")))
                .isInstanceOf(Refused.class);
    }

    @Test
    void priceBreaksArePlannedAnew() {
        Order order = CostSample.order(60, 40);
        PriceBreaks breaks = PriceBreaks.of(
                order, CostSample.studio(), CostSample.prices().build(), "menu", Margin.percent(30), 120, 20, 60);
        assertThat(breaks.rows()).extracting(PriceBreaks.Row::count).containsExactly(20, 60, 120);
        assertThat(breaks.rows().get(1).cost())
                .isEqualTo(COSTING.piece("menu").cost().likely());
        assertThat(breaks.rows().get(2).average())
                .isLessThan(breaks.rows().get(0).average());
        for (PriceBreaks.Row row : breaks.rows().subList(1, 3)) {
            assertThat(row.marginal()).isLessThan(row.average());
        }
        assertThatThrownBy(() -> PriceBreaks.of(
                        order, CostSample.studio(), CostSample.prices().build(), "menu", Margin.percent(30)))
                .isInstanceOf(Refused.class);
    }

    @Test
    void aSeatPaysForStuffAndForWhoeverLeads() {
        ClassDay day = ClassDay.of(
                        CostSample.studio(), CostSample.order(1, 1).recipes().get(0))
                .people(8)
                .sheetsEach(3)
                .size(mm(148), mm(210))
                .grammage(Grammage.gsm(120))
                .within(hours(3))
                .plan();
        PriceList prices = CostSample.prices().build();
        SeatPrice seat = SeatPrice.of(day, prices, hours(5), Margin.percent(25));
        assertThat(seat.teaching()).isEqualTo(Markup.percent(5).priceOf(Money.of("145.83 EUR")));
        assertThat(seat.cost()).isEqualTo(seat.costing().cost().likely().plus(seat.teaching()));
        assertThat(seat.costing().lines()).extracting(Costing.Line::what).doesNotContain("hands on the pieces");
        assertThat(seat.price().times(8))
                .isGreaterThanOrEqualTo(Margin.percent(25).priceOf(seat.cost()));
        assertThat(seat.people()).isEqualTo(day.people()).isEqualTo(8);
        assertThat(day.sheetsEach()).isEqualTo(3);
        PriceList none = PriceList.of("none", LocalDate.of(2027, 1, 1), EUR).build();
        assertThatThrownBy(() -> SeatPrice.of(day, none, hours(5), Margin.percent(25)))
                .isInstanceOf(Refused.class);
    }

    @Test
    void aListIsBuiltAgainAsItWas() {
        PriceList list = CostSample.prices().build();
        assertThat(list.toBuilder().build()).isEqualTo(list).hasSameHashCodeAs(list);
        assertThat(list.at(LocalDate.of(2027, 6, 1)).build())
                .isNotEqualTo(list)
                .hasToString("spring, 2027-06-01, in EUR");
    }
}
