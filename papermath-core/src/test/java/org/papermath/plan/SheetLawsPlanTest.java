package org.papermath.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.papermath.quantity.Amounts.celsius;
import static org.papermath.quantity.Amounts.grams;
import static org.papermath.quantity.Amounts.hours;
import static org.papermath.quantity.Amounts.kilonewtons;
import static org.papermath.quantity.Amounts.litres;
import static org.papermath.quantity.Amounts.micrometres;
import static org.papermath.quantity.Amounts.mm;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.papermath.air.Air;
import org.papermath.drying.Dryer;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Scope;
import org.papermath.fibre.Fibre;
import org.papermath.fibre.Fibres;
import org.papermath.fibre.Furnish;
import org.papermath.mould.Mould;
import org.papermath.order.Order;
import org.papermath.order.Piece;
import org.papermath.order.Recipe;
import org.papermath.order.Studio;
import org.papermath.press.Felts;
import org.papermath.press.Press;
import org.papermath.pulp.Additive;
import org.papermath.pulp.Beater;
import org.papermath.quantity.Dose;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.RelativeHumidity;
import org.papermath.vat.Vat;

/** What filler, thinness, the wet side and beating do to the sheet of a plan. */
class SheetLawsPlanTest {
    private static final Assumptions TABLE = Assumptions.standard();

    private static MakingPlan plan(Recipe recipe, Piece piece, Dryer dryer) {
        return MakingPlan.of(
                Order.of("order").recipe(recipe).piece(piece).build(),
                Studio.of("bench")
                        .beater(Beater.of("trough", litres(45), grams(900)))
                        .vat(Vat.of("tub", litres(70)))
                        .mould(Mould.of("folio", mm(380), mm(560)))
                        .press(Press.of("press", kilonewtons(150), mm(450), mm(620)))
                        .felts(Felts.of(mm(450), mm(620), Grammage.gsm(500), 25))
                        .dryer(dryer)
                        .room(Air.of(celsius(20), RelativeHumidity.percent(50)))
                        .build());
    }

    private static Piece sheet(double gsm) {
        return Piece.of("sheet", 60, "stuff")
                .size(mm(210), mm(297))
                .grammage(Grammage.gsm(gsm))
                .build();
    }

    private static Recipe filled(double dose) {
        Recipe.Builder recipe =
                Recipe.of("stuff", Furnish.of(Fibres.COTTON_RAG)).beating(hours(3));
        return (dose > 0
                        ? recipe.additive(Additive.of("aid", Additive.Purpose.RETENTION_AID), Dose.percent(0.1))
                                .additive(Additive.of("chalk", Additive.Purpose.CARBONATE), Dose.percent(dose))
                        : recipe)
                .build();
    }

    private static double caliper(MakingPlan plan) {
        return plan.piece("sheet").finished().caliper().likely().si();
    }

    /** Filler takes less room than fibre and does not shrink. */
    @Test
    void fillerThinsTheSheetAndHoldsItsSize() {
        MakingPlan plain = plan(filled(0), sheet(160), Dryer.loft("loft", 1, 60));
        MakingPlan chalked = plan(filled(45), sheet(160), Dryer.loft("loft", 1, 60));
        double share = chalked.piece("sheet").finished().load().si();
        assertThat(share / (1 + share)).isBetween(0.2, 0.35);
        assertThat(caliper(chalked) / caliper(plain)).isBetween(0.8, 0.92);
        assertThat(chalked.piece("sheet").finished().shrinkageAlong().likely().si()
                        / plain.piece("sheet")
                                .finished()
                                .shrinkageAlong()
                                .likely()
                                .si())
                .isBetween(0.6, 0.88);
        // A twentieth of carbonate does not change a card that one could measure.
        assertThat(caliper(plan(filled(5), sheet(160), Dryer.loft("loft", 1, 60))) / caliper(plain))
                .isBetween(0.96, 1.0);
    }

    private static double drain(double aidPercent, Assumptions store) {
        Recipe.Builder recipe = Recipe.of("stuff", Furnish.of(Fibres.KOZO)).beating(hours(0.3));
        if (aidPercent > 0) {
            recipe.additive(Additive.of("aid", Additive.Purpose.FORMATION_AID), Dose.percent(aidPercent));
        }
        Studio studio = Studio.of("bench")
                .beater(Beater.of("trough", litres(45), grams(900)))
                .vat(Vat.of("tub", litres(70)))
                .mould(Mould.of("folio", mm(380), mm(560)))
                .dryer(Dryer.boards("boards", 24))
                .assumptions(store)
                .build();
        Order order = Order.of("order").recipe(recipe.build()).piece(sheet(30)).build();
        return MakingPlan.withoutBands(order, studio)
                .piece("sheet")
                .drainTime()
                .likely()
                .si();
    }

    /** Formation aid makes the water slow in the mat, twice as much of it by twice as much. */
    @Test
    void formationAidSlowsTheDraining() {
        double clear = drain(0, TABLE);
        double some = drain(0.2, TABLE);
        assertThat(some / clear).isBetween(1.5, 5.0);
        assertThat((drain(0.4, TABLE) - clear) / (some - clear)).isCloseTo(2, within(0.01));
        // A studio that timed a sheet with aid and one without is believed.
        Assumptions own = TABLE.given("drainage.aid-thickening", Scope.GENERAL, 400);
        assertThat((drain(0.2, own) - clear) / (some - clear)).isCloseTo(2, within(1e-5));
    }

    /** Linter lets go of its water, long-beaten abaca holds it. */
    @ParameterizedTest
    @CsvSource({"linter-second-cut, 0.5, 0.17, 0.25", "cotton-rag, 2, 0.13, 0.18", "abaca, 5, 0.065, 0.1"})
    void couchedSolidsFollowFromTheStuff(String id, double hours, double low, double high) {
        Fibre fibre = Fibres.find(id);
        MakingPlan plan = plan(
                Recipe.of("stuff", Furnish.of(fibre)).beating(hours(hours)).build(),
                sheet(80),
                Dryer.boards("boards", 24));
        PiecePlan piece = plan.piece("sheet");
        double solids =
                piece.forming().solids().si() / piece.couchedMass().likely().si();
        assertThat(solids).isBetween(low, high);
        // Whoever weighed a couched sheet at this vat is believed.
        assertThat(1
                        / TABLE.given("web.solids-couched", Scope.at("tub"), 0.2)
                                .si("web.solids-couched", Scope.at("tub")))
                .isCloseTo(5, within(1e-9));
    }

    @ParameterizedTest
    @ValueSource(doubles = {30, 60, 150, 400})
    void aThicknessOrderedIsTheThicknessForecast(double thickness) {
        for (Fibre fibre : new Fibre[] {Fibres.KOZO, Fibres.ABACA, Fibres.COTTON_RAG}) {
            MakingPlan plan = plan(
                    Recipe.of("stuff", Furnish.of(fibre)).beating(hours(2)).build(),
                    Piece.of("sheet", 60, "stuff")
                            .size(mm(210), mm(297))
                            .caliper(micrometres(thickness))
                            .build(),
                    Dryer.boards("boards", 24));
            assertThat(plan.piece("sheet").finished().caliper().likely().in("um"))
                    .as(fibre.name())
                    .isCloseTo(thickness, within(0.03 * thickness));
        }
    }

    /** Sheets come to the air wet, and hold up to a gram in a hundred more than from the dry side. */
    @Test
    void sheetsHoldWhatTheWetSideLeaves() {
        Assumptions dry = TABLE.given("sorption.desorption-offset", Scope.GENERAL, 1e-9);
        Studio.Builder studio = Studio.of("bench").mould(Mould.of("folio", mm(380), mm(560)));
        Recipe recipe =
                Recipe.of("stuff", Furnish.of(Fibres.ABACA)).beating(hours(2)).build();
        Order order = Order.of("order").recipe(recipe).piece(sheet(100)).build();
        Studio bench = studio.build();
        double fromWet =
                MakingPlan.of(order, bench).piece("sheet").forming().solids().si();
        double fromDry = MakingPlan.of(order, bench.withAssumptions(dry))
                .piece("sheet")
                .forming()
                .solids()
                .si();
        assertThat(fromDry / fromWet).isBetween(1.003, 1.0093);
    }
}
