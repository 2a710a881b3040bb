package org.papermath.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.papermath.quantity.Amounts.celsius;
import static org.papermath.quantity.Amounts.grams;
import static org.papermath.quantity.Amounts.hours;
import static org.papermath.quantity.Amounts.litres;
import static org.papermath.quantity.Amounts.mm;
import static org.papermath.quantity.Amounts.shortTons;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.papermath.air.Air;
import org.papermath.drying.Dryer;
import org.papermath.evidence.Notice;
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
import org.papermath.quantity.FibreConcentration;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.RelativeHumidity;
import org.papermath.quantity.Share;
import org.papermath.quantity.VolumeFlow;
import org.papermath.testing.CheckValues;
import org.papermath.vat.Vat;

/** Twelve plans beside what a maker would take for likely. */
class TwelvePlansCheckValuesTest {
    private static final Map<String, MakingPlan> PLANS = plans();

    private static Studio.Builder studio(Dryer dryer) {
        return Studio.of("twelve")
                .beater(Beater.of("beater", litres(45), grams(900)))
                .vat(Vat.of("vat", litres(70)))
                .mould(Mould.of("half imperial", mm(380), mm(560)))
                .mould(Mould.of("octavo", mm(240), mm(310)))
                .press(Press.of("press", shortTons(20), mm(450), mm(600)).part("frame", shortTons(15)))
                .felts(Felts.of(mm(450), mm(620), Grammage.gsm(500), 25))
                .room(Air.of(celsius(20), RelativeHumidity.percent(50)))
                .dryer(dryer);
    }

    private static MakingPlan plan(Recipe recipe, Piece piece, Studio studio) {
        return MakingPlan.withoutBands(
                Order.of("order").recipe(recipe).piece(piece).build(), studio);
    }

    private static Recipe.Builder stuff(Fibre fibre, double hours) {
        return Recipe.of("stuff", Furnish.of(fibre)).beating(hours(hours));
    }

    private static Piece.Builder sheets(int count, double width, double height, double gsm) {
        return Piece.of("sheet", count, "stuff").size(mm(width), mm(height)).grammage(Grammage.gsm(gsm));
    }

    private static Map<String, MakingPlan> plans() {
        Dryer stack = Dryer.fanStack("stack", VolumeFlow.cubicMetresPerHour(1500), 40);
        Dryer boards = Dryer.boards("boards", 24);
        Map<String, Supplier<MakingPlan>> all = new LinkedHashMap<>();
        all.put(
                "abaca-5h",
                () -> plan(
                        stuff(Fibres.ABACA, 5).build(),
                        sheets(60, 210, 297, 40).build(),
                        studio(stack).build()));
        all.put(
                "rag-3h",
                () -> plan(
                        stuff(Fibres.COTTON_RAG, 3)
                                .sizeBath(FibreConcentration.gramsPerLitre(30))
                                .build(),
                        sheets(30, 280, 380, 300).edge(Piece.Edge.DECKLE).build(),
                        studio(Dryer.loft("loft", 3, 60)).build()));
        all.put(
                "kozo",
                () -> plan(
                        stuff(Fibres.KOZO, 0.3)
                                .additive(Additive.of("aid", Additive.Purpose.FORMATION_AID), Dose.percent(0.2))
                                .build(),
                        sheets(50, 300, 420, 30).build(),
                        studio(boards).build()));
        all.put(
                "flax-4h",
                () -> plan(
                        stuff(Fibres.FLAX_RAW, 4).build(),
                        sheets(40, 210, 297, 60).build(),
                        studio(stack).build()));
        all.put(
                "linter-card",
                () -> plan(
                        stuff(Fibres.LINTER_SECOND_CUT, 0.5).build(),
                        sheets(100, 105, 148, 250).build(),
                        studio(Dryer.blotters("blotters", 40)).build()));
        all.put(
                "hemp-5h",
                () -> plan(
                        stuff(Fibres.HEMP_RAW, 5).build(),
                        sheets(40, 210, 297, 90).build(),
                        studio(stack).build()));
        all.put(
                "hardwood-0h",
                () -> plan(
                        stuff(Fibres.HARDWOOD_KRAFT, 0).build(),
                        sheets(60, 210, 297, 120).build(),
                        studio(boards).build()));
        all.put(
                "blend-2h",
                () -> plan(
                        Recipe.of(
                                        "stuff",
                                        Furnish.of(
                                                Share.percent(60),
                                                Fibres.LINTER_FIRST_CUT,
                                                Share.percent(40),
                                                Fibres.ABACA))
                                .beating(hours(2))
                                .additive(Additive.of("chalk", Additive.Purpose.CARBONATE), Dose.percent(5))
                                .build(),
                        sheets(100, 127, 178, 160).edge(Piece.Edge.DECKLE).build(),
                        studio(stack).build()));
        all.put(
                "abaca-1h30",
                () -> plan(
                        stuff(Fibres.ABACA, 1.5).build(),
                        sheets(80, 114, 159, 150).edge(Piece.Edge.DECKLE).build(),
                        studio(stack).build()));
        all.put(
                "linen-6h",
                () -> plan(
                        stuff(Fibres.LINEN_RAG, 6).build(),
                        sheets(40, 210, 297, 100).build(),
                        studio(Dryer.loft("loft", 4, 120)).build()));
        all.put(
                "linter-poured",
                () -> plan(
                        stuff(Fibres.LINTER_SECOND_CUT, 0.5).build(),
                        sheets(20, 127, 178, 200).edge(Piece.Edge.DECKLE).build(),
                        Studio.of("poured")
                                .beater(Beater.of("beater", litres(20), grams(400)))
                                .mould(Mould.of("small", mm(127), mm(178)))
                                .dryer(Dryer.boards("boards", 20))
                                .build()));
        all.put(
                "softwood-0h42",
                () -> plan(
                        stuff(Fibres.SOFTWOOD_KRAFT, 0.7).build(),
                        sheets(40, 210, 297, 80).build(),
                        studio(stack).build()));
        Map<String, MakingPlan> made = new LinkedHashMap<>();
        all.forEach((name, plan) -> made.put(name, plan.get()));
        return made;
    }

    static List<CheckValues.Row> rows() {
        return CheckValues.read("twelve_plans");
    }

    private static double value(MakingPlan plan, String figure) {
        BatchPlan batch = plan.batch("stuff");
        FinishedPiece sheet = plan.piece("sheet").finished();
        return switch (figure) {
            case "drainability" -> batch.drainability().likely().in("SR");
            case "water retention" -> batch.waterRetention().likely().in("g/g");
            case "free shrinkage" -> batch.freeShrinkage().likely().si();
            case "density" ->
                sheet.grammage().likely().si() / sheet.caliper().likely().si();
            case "drying" -> plan.piece("sheet").drying().time().likely().in("h");
            case "caliper" -> sheet.caliper().likely().in("um");
            case "vat" -> sheetOf(plan).vat().consistency().in("%");
            case "dips" -> sheetOf(plan).vat().dips();
            case "drain" ->
                sheetOf(plan)
                        .drainTimeStage()
                        .map(time -> time.likely().in("s"))
                        .orElse(Double.NaN);
            case "wet sheet" -> sheetOf(plan).matThickness().likely().in("mm");
            case "couched over dry" ->
                sheetOf(plan).couchedMass().likely().si()
                        / sheetOf(plan).forming().solids().si();
            case "post height" -> sheetOf(plan).posts().height().likely().in("mm");
            case "post mass" -> sheetOf(plan).posts().mass().likely().in("kg");
            case "solids" -> sheetOf(plan).solids().likely().in("%");
            case "as bought over oven-dry" ->
                batch.fibre().asBought().si() / batch.fibre().ovenDry().si();
            default -> throw new AssertionError(figure);
        };
    }

    private static PiecePlan sheetOf(MakingPlan plan) {
        return plan.piece("sheet");
    }

    @ParameterizedTest
    @MethodSource("rows")
    void isLikelyOrSaysWhyNot(CheckValues.Row row) {
        double value = value(PLANS.get(row.text("plan")), row.text("figure"));
        boolean inside = value >= row.number("low") && value <= row.number("high");
        assertThat(inside)
                .as(row.text("plan") + " " + row.text("figure") + " " + value)
                .isEqualTo(row.text("word").isEmpty());
    }

    @Test
    void everyPlanIsLookedAtAndTheOneOutsideSaysSo() {
        assertThat(rows().stream().map(row -> row.text("plan")).distinct()).containsExactlyElementsOf(PLANS.keySet());
        assertThat(rows().stream().filter(row -> !row.text("word").isEmpty())).hasSizeLessThan(9);
        assertThat(PLANS.get("hemp-5h").notices()).extracting(Notice::code).contains("beater.part-load");
    }
}
