package org.papermath.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.papermath.quantity.Amounts.hours;
import static org.papermath.quantity.Amounts.mm;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.papermath.evidence.Notice;
import org.papermath.fibre.Fibres;
import org.papermath.fibre.Furnish;
import org.papermath.order.Order;
import org.papermath.order.Piece;
import org.papermath.order.Recipe;
import org.papermath.pulp.Additive;
import org.papermath.quantity.Dose;
import org.papermath.quantity.Grammage;

/** So much pigment that the sheet is weak is said in the plan. */
class AdditiveLoadTest {
    private static List<Notice> notices(double pigment) {
        Recipe recipe = Recipe.of("blue", Furnish.of(Fibres.COTTON_RAG))
                .beating(hours(2))
                .additive(Additive.of("ultramarine", Additive.Purpose.PIGMENT), Dose.percent(pigment))
                .additive(Additive.of("aid", Additive.Purpose.RETENTION_AID), Dose.percent(0.1))
                .build();
        return MakingPlan.of(
                        Order.of("blue")
                                .recipe(recipe)
                                .piece(Piece.of("sheet", 20, "blue")
                                        .size(mm(210), mm(297))
                                        .grammage(Grammage.gsm(120))
                                        .build())
                                .build(),
                        Sample.studio())
                .notices();
    }

    @Test
    void aSheetWithMorePigmentThanItStaysStrongWithIsWarnedOf() {
        assertThat(notices(2)).extracting(Notice::code).doesNotContain("additive.heavy-load");
        assertThat(notices(45))
                .filteredOn(notice -> notice.code().equals("additive.heavy-load"))
                .singleElement()
                .satisfies(notice -> {
                    assertThat(notice.level()).isEqualTo(Notice.Level.WARNING);
                    assertThat(notice.toString()).contains("batch blue: the sheet carries", "above 30 % it is weak");
                    assertThat(notice.arguments())
                            .containsEntry("batch", "blue")
                            .containsEntry("limit", "30 %");
                });
    }
}
