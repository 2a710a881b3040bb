package org.papermath.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.papermath.quantity.Amounts.celsius;
import static org.papermath.quantity.Amounts.grams;
import static org.papermath.quantity.Amounts.hours;
import static org.papermath.quantity.Amounts.litres;
import static org.papermath.quantity.Amounts.mm;
import static org.papermath.quantity.Amounts.shortTons;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.papermath.air.Air;
import org.papermath.drying.Dryer;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Scope;
import org.papermath.fibre.Fibres;
import org.papermath.fibre.Furnish;
import org.papermath.mould.Mould;
import org.papermath.order.Order;
import org.papermath.order.Piece;
import org.papermath.order.Recipe;
import org.papermath.order.Studio;
import org.papermath.press.Felts;
import org.papermath.press.Press;
import org.papermath.pulp.Beater;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.RelativeHumidity;
import org.papermath.testing.CheckValues;
import org.papermath.testing.CheckValues.Row;
import org.papermath.vat.Vat;

/** Hours planned with the shipped values beside what makers, mills and teams report. */
class HoursOfMakingCheckValuesTest {
    private static final int POST_OF_A_CREW = 150;
    private static final double DIGITS = 0.02;

    static List<Row> records() {
        return CheckValues.read("hours_of_making");
    }

    /** A studio and an order like those of the record. */
    private static MakingPlan plan(Row row) {
        double width = row.number("width");
        double height = row.number("height");
        boolean crew = row.text("pace").equals("crew");
        Assumptions known = Assumptions.standard();
        if (crew) {
            double pace = known.si("labour.sheet-time", Scope.of("crew"));
            for (String sort : List.of("card", "small", "large")) {
                known = known.given("labour.sheet-time", Scope.of(sort), pace);
            }
            known = known.given("labour.post-sheets", Scope.GENERAL, POST_OF_A_CREW);
        }
        Studio.Builder studio = Studio.of("as recorded")
                .mould(Mould.of("of the size", mm(1.1 * width), mm(1.1 * height))
                        .inTurn(crew ? 2 : 1))
                .vat(Vat.of("vat", litres(300)))
                .press(Press.of("press", shortTons(crew ? 100 : 30), mm(1.2 * width), mm(1.2 * height)))
                .felts(Felts.of(mm(1.15 * width), mm(1.15 * height), Grammage.gsm(500), crew ? 2 * POST_OF_A_CREW : 40))
                .room(Air.of(celsius(20), RelativeHumidity.percent(50)))
                .dryer(Dryer.loft("loft", crew ? 5 : 1, 5000))
                .assumptions(known);
        Recipe.Builder stuff = Recipe.of("stuff", Furnish.of(Fibres.COTTON_RAG));
        if (row.text("beater").equals("yes")) {
            studio.beater(Beater.of("beater", litres(crew ? 1500 : 45), grams(crew ? 60_000 : 900)));
            stuff.beating(hours(3));
        }
        return MakingPlan.withoutBands(
                Order.of("as recorded")
                        .recipe(stuff.build())
                        .piece(Piece.of("sheet", (int) row.number("sheets"), "stuff")
                                .size(mm(width), mm(height))
                                .grammage(Grammage.gsm(row.number("grammage")))
                                .edge(Piece.Edge.DECKLE)
                                .build())
                        .build(),
                studio.build());
    }

    /** The library's hours over those of the record. */
    private static double ratio(Row row) {
        MakingPlan plan = plan(row);
        double recorded = row.number("people") * row.number("hours");
        if (row.text("of").equals("vat")) {
            PiecePlan piece = plan.pieces().get(0);
            double each = piece.timeAtVat().likely().in("h") / piece.counts().sheets();
            return each * row.number("sheets") / recorded;
        }
        return plan.workingHours().likely().in("h") / recorded;
    }

    @ParameterizedTest
    @MethodSource("records")
    void hoursLieWithinAFactorOfTwo(Row row) {
        double ratio = ratio(row);
        assertThat(ratio).as("%s", row).isCloseTo(row.number("ratio"), within(DIGITS));
        boolean inside = ratio >= 0.5 && ratio <= 2;
        assertThat(row.text("outcome")).as("%s: %s", row, ratio).isEqualTo(inside ? "inside" : "outside the factor");
        assertThat(row.has("reason")).as("%s: what lies outside says why", row).isEqualTo(!inside);
    }

    @Test
    void recordsThatSetNoPaceLieInsideToo() {
        List<Row> outside = records().stream()
                .filter(row -> row.text("sample").equals("outside"))
                .toList();
        assertThat(outside).hasSizeGreaterThanOrEqualTo(5);
        assertThat(outside.stream().filter(row -> row.text("outcome").equals("inside")))
                .hasSizeGreaterThanOrEqualTo(3);
    }
}
