package org.papermath.sheet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.papermath.quantity.Amounts.grams;
import static org.papermath.quantity.Amounts.hours;
import static org.papermath.quantity.Amounts.micrometres;
import static org.papermath.quantity.Amounts.mm;

import org.junit.jupiter.api.Test;
import org.papermath.air.Air;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Notice;
import org.papermath.evidence.Scope;
import org.papermath.fibre.Fibres;
import org.papermath.fibre.Furnish;
import org.papermath.mould.Mould;
import org.papermath.order.Order;
import org.papermath.order.Piece;
import org.papermath.order.Recipe;
import org.papermath.order.Studio;
import org.papermath.plan.MakingPlan;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.PapermathException;
import org.papermath.quantity.Refused;
import org.papermath.shape.Caliper;

/** Sheets of a density that is in no paper are refused, and those of one that paper hardly has are doubted. */
class OutsideNatureTest {
    private static final Caliper TENTH = Caliper.of(micrometres(100), Caliper.FIFTY_KILOPASCALS);

    private static String code(Runnable what) {
        try {
            what.run();
        } catch (PapermathException e) {
            return e.code();
        }
        return "taken";
    }

    @Test
    void caliperRefusesWhatIsDenserThanFibre() {
        assertThat(TENTH.density(Grammage.gsm(160))).hasToString("1600 kg/m³");
        assertThat(code(() -> TENTH.density(Grammage.gsm(160.1)))).isEqualTo("density.beyond-fibre");
        assertThat(code(() -> TENTH.bulk(Grammage.gsm(170)))).isEqualTo("density.beyond-fibre");
        assertThatThrownBy(() -> TENTH.density(Grammage.gsm(170)))
                .isInstanceOf(Refused.class)
                .hasMessage(
                        "density of the sheet: 1700 kg/m³, more than the 1600 kg/m³ of fibre without any air. Check mil"
                                + " against micrometre, the weight and the sides.");
    }

    @Test
    void caliperDoubtsWhatPaperHardlyHas() {
        assertThat(TENTH.notices(Grammage.gsm(15))).isEmpty();
        assertThat(TENTH.notices(Grammage.gsm(130))).isEmpty();
        assertThat(TENTH.notices(Grammage.gsm(14.9))).extracting(Notice::code).containsExactly("density.doubtful");
        assertThat(TENTH.notices(Grammage.gsm(131))).extracting(Notice::level).containsExactly(Notice.Level.WARNING);
        Assumptions own = Assumptions.standard().given("sheet.density-doubtful-low", Scope.GENERAL, 80);
        assertThat(TENTH.notices(own, Grammage.gsm(9))).isEmpty();
    }

    @Test
    void drySheetDoesTheSame() {
        DrySheet sheet = DrySheet.weighed(grams(1.7), mm(100), mm(100)).in(Air.reference());
        assertThat(code(() -> sheet.density(micrometres(100)))).isEqualTo("density.beyond-fibre");
        assertThat(code(() -> sheet.bulk(micrometres(100)))).isEqualTo("density.beyond-fibre");
        assertThat(sheet.notices(micrometres(2000))).extracting(Notice::code).containsExactly("density.doubtful");
        assertThat(sheet.notices(micrometres(300))).isEmpty();
        Assumptions own = Assumptions.standard().given("sheet.density-doubtful-low", Scope.GENERAL, 80);
        assertThat(sheet.notices(own, micrometres(2000))).isEmpty();
    }

    private static MakingPlan likeSample(Amount<javax.measure.quantity.Mass> mass) {
        Recipe rag = Recipe.of("rag", Furnish.of(Fibres.COTTON_RAG))
                .beating(hours(2))
                .build();
        Order order = Order.of("like a sample")
                .recipe(rag)
                .piece(Piece.of("card", 20, "rag")
                        .size(mm(105), mm(148))
                        .sample(Piece.Sample.of(mm(100), mm(100), mass, mm(0.1)))
                        .build())
                .build();
        return MakingPlan.of(
                order,
                Studio.of("table").mould(Mould.of("frame", mm(240), mm(330))).build());
    }

    @Test
    void aPlanRefusesOrDoubtsTheSample() {
        assertThat(code(() -> likeSample(grams(1.7)))).isEqualTo("density.beyond-fibre");
        assertThat(likeSample(grams(0.6)).notices()).extracting(Notice::code).doesNotContain("sample.density");
        assertThat(likeSample(grams(0.14)).notices())
                .filteredOn(notice -> notice.code().equals("sample.density"))
                .singleElement()
                .satisfies(notice -> {
                    assertThat(notice.level()).isEqualTo(Notice.Level.WARNING);
                    assertThat(notice.text())
                            .contains("the sample by its weight, sides and caliper: An apparent density of 140 kg/m³");
                });
    }
}
