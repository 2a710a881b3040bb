package org.papermath.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.regex.Pattern;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;

class NumberTextPropertyTest {
    private static final Pattern NUMBER =
            Pattern.compile("[+-]?(?:[0-9]+(?:\\.[0-9]*)?|\\.[0-9]+)(?:[eE][+-]?[0-9]+)?");

    /** The fewest significant digits that read back to the same bits, found the slow way. */
    private static BigDecimal shortest(double value) {
        for (int digits = 1; digits <= 17; digits++) {
            BigDecimal rounded = new BigDecimal(value).round(new MathContext(digits, RoundingMode.HALF_EVEN));
            if (rounded.doubleValue() == value) {
                return rounded.stripTrailingZeros();
            }
        }
        throw new AssertionError(value);
    }

    private static void assertShortest(double value) {
        String text = Units.number(value);
        assertThat(Double.parseDouble(text)).isEqualTo(value + 0.0);
        assertThat(new BigDecimal(text)).isEqualByComparingTo(shortest(value));
    }

    @Property(seed = "2026")
    void anyNumberIsPrintedShortest(@ForAll double value) {
        assertShortest(value);
    }

    @Property(seed = "2026")
    void anyDecimalIsPrintedAsItIsSaid(
            @ForAll @IntRange(min = -999_999_999) int digits, @ForAll @IntRange(min = 0, max = 12) int decimals) {
        BigDecimal said = BigDecimal.valueOf(digits, decimals);
        assertShortest(said.doubleValue());
        assertThat(new BigDecimal(Units.number(said.doubleValue()))).isEqualByComparingTo(said);
    }

    @Property(seed = "2026")
    void neighboursOfDecimalsAreNotMistakenForThem(@ForAll @DoubleRange(min = -1e9, max = 1e9) double value) {
        double rounded = Math.rint(value * 1000) / 1000;
        assertShortest(Math.nextUp(rounded));
        assertShortest(Math.nextDown(rounded));
    }

    @Provide
    Arbitrary<String> nearlyNumbers() {
        return Arbitraries.strings().withChars("019.+-eE").ofMinLength(1).ofMaxLength(8);
    }

    @Property(tries = 3000, seed = "2026")
    void readsExactlyTheNumbersOfTheGrammar(@ForAll("nearlyNumbers") String text) {
        if (NUMBER.matcher(text).matches() && Double.isFinite(Double.parseDouble(text))) {
            assertThat(Kinds.NUMBER.read(text).value()).isEqualTo(Double.parseDouble(text) + 0.0);
        } else {
            assertThatThrownBy(() -> Kinds.NUMBER.read(text)).isInstanceOf(Refused.class);
        }
    }
}
