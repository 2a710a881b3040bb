package org.papermath.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.papermath.quantity.Amounts.grams;
import static org.papermath.quantity.Amounts.hours;
import static org.papermath.quantity.Amounts.mm;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.papermath.fibre.Fibres;
import org.papermath.fibre.Furnish;
import org.papermath.order.Order;
import org.papermath.order.Piece;
import org.papermath.order.Recipe;
import org.papermath.pulp.Additive;
import org.papermath.pulp.AdditiveDose;
import org.papermath.quantity.Consistency;
import org.papermath.quantity.Dose;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Share;

class SwatchRoundTest {
    private static final Recipe WHITE = Recipe.of("white", Furnish.of(Fibres.COTTON_RAG))
            .beating(hours(3))
            .additive(Additive.of("chalk", Additive.Purpose.CARBONATE), Dose.percent(4))
            .build();
    private static final Additive OCHRE = Additive.of("ochre", Additive.Purpose.PIGMENT);
    private static final Additive BLUE = Additive.of("blue", Additive.Purpose.PIGMENT);

    private static SwatchRound round(double step) {
        return SwatchRound.of(WHITE, Consistency.percent(1.5))
                .colour("pale", AdditiveDose.of(OCHRE, Dose.percent(0.2)))
                .colour("green", AdditiveDose.of(OCHRE, Dose.percent(1)), AdditiveDose.of(BLUE, Dose.percent(1.5)))
                .weight(Grammage.gsm(90))
                .weight(Grammage.gsm(160))
                .size(mm(100), mm(150))
                .each(3)
                .scaleStep(grams(step))
                .plan();
    }

    /** 15 cm² a hundred times: three swatches each of 1.35 and 2.4 g, of which fibre is what is not chalk and colour. */
    @Test
    void fibreIsThatOfTheSwatches() {
        SwatchRound.Pot pale = round(0.01).pots().get(0);
        double fibre = 3 * (90 + 160) * 0.015 / (1 + 0.04 + 0.002);
        assertThat(pale.fibre().in("g")).isCloseTo(fibre, within(1e-9));
        assertThat(pale.stock().in("L")).isCloseTo(fibre / 0.015 / 1000, within(0.01 * fibre / 15));
        double poured = pale.pours().values().stream()
                .mapToDouble(volume -> 3 * volume.si())
                .sum();
        assertThat(poured).isCloseTo(pale.stock().si(), within(1e-12));
        assertThat(pale.left().si()).isZero();
    }

    @Test
    void aCoarseScaleIsHelpedByThinning() {
        // 0.2 % on 10.8 g is 22 mg: with a step of 0.1 g it is thinned to one part in a hundred and 2.2 g weighed.
        SwatchRound.Dosed ochre = round(0.1).pots().get(0).doses().get(1);
        assertThat(ochre.thinned()).isEqualTo(100);
        assertThat(ochre.weigh().in("g")).isCloseTo(2.2, within(1e-9));
        assertThat(ochre.off().si()).isLessThan(0.05);
        assertThat(ochre).hasToString("2.2 g of ochre thinned to one part in 100");
        // On a scale of a milligram it is weighed as it is sold.
        assertThat(round(0.001).pots().get(0).doses().get(1).thinned()).isEqualTo(1);
        assertThat(round(0.1).pots().get(0).leastFibre().in("g")).isCloseTo(0.05 / 0.05 / 0.002, within(1e-9));
    }

    @Test
    void everyDoseIsOnAStepAndAsSureAsWanted() {
        Random chance = new Random(5);
        for (int i = 0; i < 300; i++) {
            double step = Math.pow(10, -1 - chance.nextInt(3));
            double sure = 0.02 + 0.1 * chance.nextDouble();
            SwatchRound round = SwatchRound.of(WHITE, Consistency.percent(0.5 + 3 * chance.nextDouble()))
                    .colour(
                            "one",
                            AdditiveDose.of(OCHRE, Dose.percent(0.05 + 5 * chance.nextDouble())),
                            AdditiveDose.of(BLUE, Dose.percent(0.05 + chance.nextDouble())))
                    .weight(Grammage.gsm(40 + 200 * chance.nextDouble()))
                    .size(mm(60), mm(60 + 100 * chance.nextDouble()))
                    .scaleStep(grams(step))
                    .within(Share.percent(100 * sure))
                    .plan();
            SwatchRound.Pot pot = round.pots().get(0);
            for (SwatchRound.Dosed dosed : pot.doses()) {
                assertThat(dosed.off().si()).isLessThanOrEqualTo(sure + 1e-9);
                double steps = dosed.weigh().in("g") / step;
                assertThat(steps).isCloseTo(Math.rint(steps), within(1e-6)).isGreaterThanOrEqualTo(1 - 1e-9);
                assertThat(dosed.weigh().si() / dosed.thinned())
                        .isCloseTo(
                                dosed.dose().product(pot.fibre()).si(),
                                within(sure * dosed.dose().product(pot.fibre()).si() * (1 + 1e-9)));
            }
            assertThat(pot.left().si()).isGreaterThanOrEqualTo(0);
        }
    }

    @Test
    void theApprovedColourIsARecipeThatCanBePlanned() {
        Recipe green = round(0.01).approve("green", "sea green");
        assertThat(green.additives())
                .extracting(dose -> dose.additive().name())
                .containsExactly("chalk", "ochre", "blue");
        assertThat(green.beating()).isEqualTo(WHITE.beating());
        MakingPlan plan = MakingPlan.of(
                Order.of("cards")
                        .recipe(green)
                        .piece(Piece.of("card", 20, "sea green")
                                .size(mm(100), mm(150))
                                .grammage(Grammage.gsm(160))
                                .build())
                        .build(),
                Sample.studio());
        assertThat(plan.batch("sea green").additives()).hasSize(3);
        assertThatThrownBy(() -> round(0.01).approve("red", "red"))
                .isInstanceOf(Refused.class)
                .hasMessage("swatches: there is no colour \"red\"; there are: [pale, green].");
    }

    @Test
    void whatIsNotSaidIsAskedFor() {
        assertThatThrownBy(() -> SwatchRound.of(WHITE, Consistency.percent(1)).plan())
                .isInstanceOf(Refused.class)
                .hasMessageContaining("no colour is said");
        assertThatThrownBy(() -> SwatchRound.of(WHITE, Consistency.percent(1))
                        .colour("a")
                        .colour("a"))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("given twice");
        assertThatThrownBy(() -> SwatchRound.of(WHITE, Consistency.percent(1)).each(0))
                .isInstanceOf(Refused.class);
    }
}
