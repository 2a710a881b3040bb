package org.papermath.numeric;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class RootsTest {
    @Test
    void findsARootRisingOrFallingOrAtAnEnd() {
        assertThat(Roots.between(0, 2, x -> x * x - 2)).isCloseTo(Math.sqrt(2), within(1e-13));
        assertThat(Roots.between(0, 2, x -> 2 - x * x)).isCloseTo(Math.sqrt(2), within(1e-13));
        assertThat(Roots.between(0, 2, x -> x)).isZero();
        assertThat(Roots.between(0, 2, x -> x - 2)).isEqualTo(2);
    }

    @Test
    void saysWhenThereIsNone() {
        assertThatThrownBy(() -> Roots.between(0, 2, x -> x + 1))
                .isInstanceOf(ArithmeticException.class)
                .hasMessage("no root between 0.0 and 2.0: values 1.0 and 3.0");
    }

    @Test
    void comesToAnEndWithoutANumber() {
        assertThatThrownBy(() -> Roots.between(0, 2, x -> x == 0 ? -1 : x == 2 ? 1 : Double.NaN))
                .isInstanceOf(ArithmeticException.class);
        int[] calls = {0};
        assertThatThrownBy(() -> Roots.between(-1e300, 1e300, x -> {
                    calls[0]++;
                    return calls[0] % 2 == 1 ? -calls[0] : 1e300 / calls[0];
                }))
                .isInstanceOf(ArithmeticException.class);
        assertThat(calls[0]).isLessThan(1000);
    }
}
