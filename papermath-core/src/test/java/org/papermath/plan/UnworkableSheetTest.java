package org.papermath.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.papermath.quantity.Amounts.hours;
import static org.papermath.quantity.Amounts.mm;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.papermath.evidence.Notice;
import org.papermath.fibre.Fibres;
import org.papermath.fibre.Furnish;
import org.papermath.order.Order;
import org.papermath.order.Piece;
import org.papermath.order.Recipe;
import org.papermath.quantity.Grammage;

/** Sheets that can be reckoned but hardly made: nobody holds a mould for minutes, and thick paper cracks where it is folded. */
class UnworkableSheetTest {
    private static MakingPlan plan(double hours, double gsm, int folds) {
        return MakingPlan.of(
                Order.of("order")
                        .recipe(Recipe.of("recipe", Furnish.of(Fibres.ABACA))
                                .beating(hours(hours))
                                .build())
                        .piece(Piece.of("cover", 20, "recipe")
                                .size(mm(200), mm(280))
                                .grammage(Grammage.gsm(gsm))
                                .folds(folds)
                                .build())
                        .build(),
                Sample.studio());
    }

    private static List<Notice> told(MakingPlan plan, String code) {
        return plan.notices().stream().filter(one -> one.code().equals(code)).toList();
    }

    @Test
    void aSheetThatDrainsForMinutesIsWarnedOf() {
        MakingPlan slow = plan(9, 400, 0);
        assertThat(slow.piece("cover").drainTime().likely().in("s")).isGreaterThan(120);
        assertThat(told(slow, "drain-time.long")).singleElement().satisfies(one -> {
            assertThat(one.level()).isEqualTo(Notice.Level.WARNING);
            assertThat(one.text())
                    .startsWith("piece cover: a sheet drains in "
                            + slow.piece("cover").drainTime().likely() + "; above 120 s");
        });
        MakingPlan quick = plan(1, 80, 0);
        assertThat(quick.piece("cover").drainTime().likely().in("s")).isLessThan(120);
        assertThat(told(quick, "drain-time.long")).isEmpty();
    }

    /** At the second fold the paper lies double. */
    @ParameterizedTest
    @CsvSource({"80,1", "80,2", "250,1", "250,2", "600,1", "600,2", "600,0"})
    void paperTooThickToFoldIsWarnedOf(double gsm, int folds) {
        MakingPlan plan = plan(3, gsm, folds);
        double caliper = plan.piece("cover").finished().caliper().likely().in("mm");
        boolean isThick = folds > 0 && caliper * (folds == 2 ? 2 : 1) > 0.5;
        assertThat(told(plan, "fold.thick"))
                .as("%s mm, %s folds", caliper, folds)
                .hasSize(isThick ? 1 : 0);
    }
}
