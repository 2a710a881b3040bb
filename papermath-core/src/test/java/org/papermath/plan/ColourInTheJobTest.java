package org.papermath.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.papermath.quantity.Amounts.hours;

import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.papermath.card.MakingCard;
import org.papermath.colour.ColourMatch;
import org.papermath.colour.Lab;
import org.papermath.colour.PigmentedPulp;
import org.papermath.colour.PulpColour;
import org.papermath.colour.Reflectance;
import org.papermath.colour.SwatchLadder;
import org.papermath.colour.WantedColour;
import org.papermath.colour.Wavebands;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Scope;
import org.papermath.fibre.Fibres;
import org.papermath.fibre.Furnish;
import org.papermath.format.Formats;
import org.papermath.order.Order;
import org.papermath.order.Piece;
import org.papermath.order.Recipe;
import org.papermath.pulp.Additive;
import org.papermath.pulp.RetentionModel.Circumstance;
import org.papermath.quantity.Dose;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Share;
import org.papermath.record.BatchRecord;

/** An order that asks for colours, from ladders of swatches to the card. */
class ColourInTheJobTest {
    private static final PulpColour WHITE = PulpColour.of(Reflectance.of(Wavebands.THREE, 0.80, 0.78, 0.72));
    private static final Additive OCHRE =
            Additive.of("ochre dispersion", Additive.Purpose.PIGMENT).active(Share.percent(40));
    private static final Additive BLUE = Additive.of("blue", Additive.Purpose.PIGMENT);

    private static ColourMatch match(Lab wanted) {
        return PigmentedPulp.of(WHITE, Assumptions.standard(), Circumstance.WITH_AID)
                .with(SwatchLadder.of(OCHRE, WHITE)
                        .swatch(Dose.percent(1), Reflectance.of(Wavebands.THREE, 0.68, 0.56, 0.33))
                        .swatch(Dose.percent(4), Reflectance.of(Wavebands.THREE, 0.56, 0.38, 0.14))
                        .pigment(Assumptions.standard()))
                .with(SwatchLadder.of(BLUE, WHITE)
                        .swatch(Dose.percent(0.5), Reflectance.of(Wavebands.THREE, 0.40, 0.50, 0.62))
                        .swatch(Dose.percent(4), Reflectance.of(Wavebands.THREE, 0.13, 0.22, 0.40))
                        .pigment(Assumptions.standard()))
                .match(wanted);
    }

    private static final ColourMatch STRAW = match(Lab.of(84, 4, 26));
    private static final ColourMatch DUSK = match(Lab.of(52, -6, -14));

    private static Recipe.Builder recipe(String name) {
        return Recipe.of(name, Furnish.of(Fibres.COTTON_RAG))
                .beating(hours(3))
                .additive(Additive.of("retention aid", Additive.Purpose.RETENTION_AID), Dose.percent(0.1));
    }

    private static Order.Builder order(Recipe... recipes) {
        Order.Builder order = Order.of("two colours").due(LocalDate.of(2027, 5, 28));
        for (Recipe recipe : recipes) {
            order.recipe(recipe)
                    .piece(Piece.of(recipe.name() + " card", 40, recipe.name())
                            .size(Formats.ISO_A5)
                            .grammage(Grammage.gsm(200))
                            .build());
        }
        return order;
    }

    private static final MakingPlan PLAN = MakingPlan.of(
            order(
                            recipe("dusk").colour(DUSK).build(),
                            recipe("straw").colour(STRAW).build())
                    .build(),
            Sample.studio());

    @Test
    void dosesFlowIntoLoadsBuyingAndAccounts() {
        BatchPlan straw = PLAN.batch("straw");
        double dose = STRAW.best().doses().stream()
                .filter(one -> one.additive().equals(OCHRE))
                .findFirst()
                .orElseThrow()
                .dose()
                .si();
        AdditiveToWeigh weighed = straw.additives().stream()
                .filter(one -> one.additive().equals(OCHRE))
                .findFirst()
                .orElseThrow();
        int loads = straw.beating().loads();
        // Of the dispersion, two fifths pigment; weighed to a tenth of a gram.
        assertThat(weighed.productEach().si())
                .isCloseTo(dose * straw.fibre().ovenDry().si() / loads / 0.4, within(6e-5));
        assertThat(PLAN.toBuy().stream().map(Object::toString)).anyMatch(line -> line.contains("ochre dispersion"));
        Balance account = straw.balances().stream()
                .filter(one -> one.substance().equals(OCHRE.name()))
                .findFirst()
                .orElseThrow();
        double in = account.in().values().stream().mapToDouble(one -> one.si()).sum();
        double out =
                account.out().values().stream().mapToDouble(one -> one.si()).sum();
        assertThat(in).isPositive().isCloseTo(out, within(1e-9));
        assertThat(account.out().keySet()).anyMatch(name -> name.contains("water"));
    }

    @Test
    void aPartFirstThenJudgedThenTheRest() {
        ColourPlan colour = PLAN.batch("straw").colour().orElseThrow();
        assertThat(colour.wanted()).isEqualTo(WantedColour.of(STRAW));
        for (ColourPlan.Pigment one : colour.pigments()) {
            AdditiveToWeigh whole = PLAN.batch("straw").additives().stream()
                    .filter(additive -> additive.additive().equals(one.additive()))
                    .findFirst()
                    .orElseThrow();
            assertThat(one.first().si() + one.keptBack().si())
                    .isCloseTo(whole.productEach().si(), within(1e-12));
            assertThat(one.first().si())
                    .isBetween(
                            0.6 * whole.productEach().si(),
                            0.9 * whole.productEach().si());
        }
        assertThat(colour.trials()).isEqualTo(2);
    }

    @Test
    void lightBeforeDark() {
        assertThat(PLAN.batch("straw").colour().orElseThrow().before()).isEmpty();
        ColourPlan dusk = PLAN.batch("dusk").colour().orElseThrow();
        assertThat(dusk.before()).contains("straw");
        assertThat(dusk.leftOfBefore()).isBetween(0.0, 0.5);
        assertThat(PLAN.notices()).noneMatch(notice -> notice.code().equals("colour.trace"));
        List<String> steps = PLAN.schedule().timetable().tasks().stream()
                .map(task -> task.task().name())
                .filter(name -> name.startsWith("dose "))
                .toList();
        assertThat(steps).containsExactlyInAnyOrder("dose straw", "dose dusk");
    }

    /** Where the dark stuff is beaten first for both, what is left of it is seen, and said. */
    @Test
    void whatIsLeftOfADarkBatchIsSaid() {
        Recipe dusk =
                recipe("dusk").stuff("white").colour(match(Lab.of(42, 0, 0))).build();
        Recipe straw = recipe("straw").stuff("white").colour(STRAW).build();
        MakingPlan plan = MakingPlan.of(
                order(dusk, straw).build(),
                Sample.studio()
                        .with(studio -> studio.assumptions(
                                Assumptions.standard().given("colour.carried-over", Scope.GENERAL, 0.05))));
        assertThat(plan.notices())
                .filteredOn(notice -> notice.code().equals("colour.trace"))
                .singleElement()
                .satisfies(notice -> assertThat(notice.text()).contains("dusk", "can be seen"));
    }

    @Test
    void hoursAndDaysHoldTheTrials() {
        MakingPlan plain = MakingPlan.of(
                order(recipe("dusk").build(), recipe("straw").build()).build(), Sample.studio());
        double loads = PLAN.batch("straw").beating().loads()
                + PLAN.batch("dusk").beating().loads();
        double more = PLAN.workingHours().likely().si()
                - plain.workingHours().likely().si();
        // Two trials of 10 min for each load.
        assertThat(more).isCloseTo(loads * 2 * 600, within(120.0));
    }

    @Test
    void theCardSaysHowToComeToTheColour() {
        String card = MakingCard.of(PLAN).toString();
        assertThat(card)
                .contains("Judge the colour", "wanted dry L* 84 a* 4 b* 26 (D65, 2°)")
                .contains("keep the rest back")
                .contains("15 min on a warm plate; wet it is darker")
                .contains("then add of the rest what it asks for")
                .contains("after straw: wash beater, vat and felts");
        assertThat(card.lines()).allMatch(line -> line.length() <= 80);
    }

    /** What came out is what a repeat is made to; without a reading, what was wanted. */
    @Test
    void aRepeatIsMadeToTheColourThatCameOut() {
        BatchRecord.Builder record = BatchRecord.builder("straw, first", LocalDate.of(2027, 5, 20))
                .recipe(PLAN.batch("straw").recipe());
        assertThat(record.build().recipeAsMade().colour()).contains(WantedColour.of(STRAW));
        Lab cameOut = Lab.of(83.1, 4.4, 24.8);
        assertThat(record.colour(cameOut).build().recipeAsMade().colour()).contains(WantedColour.of(cameOut));
        assertThat(record.build().toBuilder().build().colour()).contains(cameOut);
    }

    @Test
    void aColourWithoutPigmentIsSaid() {
        MakingPlan plan = MakingPlan.of(
                order(recipe("dusk")
                                .colour(WantedColour.of(Lab.of(52, -6, -14)))
                                .build())
                        .build(),
                Sample.studio());
        assertThat(plan.notices())
                .filteredOn(notice -> notice.code().equals("colour.no-dose"))
                .singleElement()
                .satisfies(notice -> assertThat(notice.text()).contains("L* 52", "swatches of your pigments"));
        assertThat(MakingCard.of(plan).toString().replaceAll("\\s+", " ")).contains("no pigment is in the recipe");
    }
}
