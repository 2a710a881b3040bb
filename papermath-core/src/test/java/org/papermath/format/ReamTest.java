package org.papermath.format;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.papermath.quantity.Amounts.inches;
import static org.papermath.quantity.Amounts.mm;

import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Unclear;

class ReamTest {
    @Property(tries = 2000, seed = "2026")
    void whatIsSaidIsReadBack(@ForAll Ream ream, @ForAll @IntRange(min = 0, max = 2_000_000) int sheets) {
        assertThat(ream.sheets(ream.words(sheets))).isEqualTo(sheets);
    }

    @Example
    void theCountsOfTheTrade() {
        assertThat(Ream.MILL.sheets()).isEqualTo(18 * Ream.MILL.quire() + Ream.MILL.outsides());
        assertThat(Ream.SHORT.sheets()).isEqualTo(20 * Ream.SHORT.quire());
        assertThat(Ream.LONG.sheets()).isEqualTo(20 * Ream.LONG.quire());
        assertThat(Ream.STATIONERS.sheets()).isEqualTo(21 * Ream.STATIONERS.quire());
        assertThat(2 * Ream.PRINTERS.sheets()).isEqualTo(43 * Ream.PRINTERS.quire());
        assertThat(Ream.SHORT.sheets("a bundle")).isEqualTo(960);
        assertThat(Ream.SHORT.sheets("1 bale")).isEqualTo(4800);
        assertThat(Ream.PRINTERS.sheets("1 bundle")).isEqualTo(1032);
        assertThat(Ream.SHORT.sheets("3 reams")).isEqualTo(1440);
        assertThat(Ream.LONG.sheets("2 Reams, 3 quires and 5 sheets")).isEqualTo(1080);
        assertThat(Ream.LONG.sheets("37")).isEqualTo(37);
        assertThat(Ream.of(500)).isSameAs(Ream.LONG);
    }

    @Example
    void whatHangsOnTheReamIsAskedBack() {
        Unclear ream = catchThrowableOfType(Unclear.class, () -> Ream.sheetsOfAny("a ream"));
        assertThat(ream.candidates())
                .extracting(Unclear.Candidate::toString)
                .containsExactly(
                        "mill ream of 472 (472 sheets)",
                        "short ream of 480 (480 sheets)",
                        "long ream of 500 (500 sheets)",
                        "stationers' ream of 504 (504 sheets)",
                        "printers' ream of 516 (516 sheets)");
        assertThat(Ream.sheetsOfAny("40 sheets")).isEqualTo(40);
        assertThat(catchThrowableOfType(Unclear.class, () -> Ream.sheetsOfAny("1 bale"))
                        .candidates())
                .hasSize(3);
        assertThat(catchThrowableOfType(Unclear.class, () -> Ream.of(496)).candidates())
                .hasSize(5);
        assertThat(catchThrowableOfType(Unclear.class, () -> ReamBasis.ofUnknownCount(60, inches(19), inches(25)))
                        .candidates())
                .extracting(Unclear.Candidate::meaning)
                .contains("a ream of 472 sheets, mill ream")
                .hasSize(5);
    }

    @Example
    void whatIsNoCountIsRefused() {
        for (String text : new String[] {
            "", "some", "3 quires 2 reams", "2 reams 2 reams", "2.5 reams", "-1 ream", "999999999 bales"
        }) {
            assertThat(catchThrowableOfType(Refused.class, () -> Ream.LONG.sheets(text))
                            .code())
                    .as(text)
                    .isEqualTo("ream.unreadable");
        }
        assertThat(catchThrowableOfType(Refused.class, () -> Ream.MILL.sheets("1 bundle"))
                        .code())
                .isEqualTo("ream.no-bundle");
        assertThat(catchThrowableOfType(Refused.class, () -> Ream.MILL.words(-1))
                        .code())
                .isEqualTo("ream.below-zero");
    }

    @Property(tries = 1000, seed = "2026")
    void leavesFillTheSheet(
            @ForAll Fold fold,
            @ForAll @DoubleRange(min = 50, max = 2000) double width,
            @ForAll @DoubleRange(min = 50, max = 2000) double height,
            @ForAll @IntRange(min = 1, max = 5000) int pages) {
        var leaf = fold.leaf(mm(width), mm(height));
        assertThat(leaf.get(0).si()).isLessThanOrEqualTo(leaf.get(1).si());
        assertThat(leaf.get(0).value() * leaf.get(1).value() * fold.leaves())
                .isCloseTo(width * height, org.assertj.core.data.Percentage.withPercentage(1e-10));
        int sheets = fold.sheetsFor(pages);
        assertThat(sheets * fold.pages()).isGreaterThanOrEqualTo(pages);
        assertThat((sheets - 1) * fold.pages()).isLessThan(pages);
    }

    @Example
    void quartoOfImperial() {
        assertThat(Fold.QUARTO).hasToString("quarto: 4 leaves, 8 pages");
        assertThat(Fold.BROADSIDE).hasToString("broadside: 1 leaf, 2 pages");
        assertThat(Fold.QUARTO.leaf(inches(30), inches(22))).containsExactly(inches(11), inches(15));
        assertThat(catchThrowableOfType(Refused.class, () -> Fold.FOLIO.sheetsFor(0))
                        .code())
                .isEqualTo("fold.pages");
    }
}
