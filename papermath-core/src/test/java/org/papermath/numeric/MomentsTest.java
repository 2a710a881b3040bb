package org.papermath.numeric;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.papermath.testing.CheckValues;

class MomentsTest {
    /** A first value, then pairs one below and one above: the sets NumAcc of the reference, exact by construction. */
    private static Moments pairs(double first, double below, double above) {
        double[] values = new double[1001];
        values[0] = first;
        for (int i = 1; i < values.length; i += 2) {
            values[i] = below;
            values[i + 1] = above;
        }
        return Moments.of(values);
    }

    @Test
    void speedOfLight() {
        Moments moments = Moments.of(CheckValues.read("univariate_michelson").stream()
                .mapToDouble(row -> row.number("value"))
                .toArray());
        assertThat(moments.count()).isEqualTo(100);
        assertThat(moments.mean()).isCloseTo(299.8524, CheckValues.relative(299.8524, 1e-14));
        assertThat(moments.deviation()).isCloseTo(0.0790105478190518, CheckValues.relative(0.079, 1e-12));
    }

    @Test
    void leadingDigitsInCommonTakeNothingAwayButTheirOwnRounding() {
        Moments three = Moments.of(10000001, 10000003, 10000002);
        assertThat(three.mean()).isEqualTo(10000002);
        assertThat(three.deviation()).isEqualTo(1);
        assertThat(pairs(1.2, 1.1, 1.3).mean()).isCloseTo(1.2, within(1e-15));
        assertThat(pairs(1.2, 1.1, 1.3).deviation()).isCloseTo(0.1, within(1e-14));
        assertThat(pairs(1000000.2, 1000000.1, 1000000.3).deviation()).isCloseTo(0.1, within(1e-9));
        assertThat(pairs(10000000.2, 10000000.1, 10000000.3).mean()).isCloseTo(10000000.2, within(2e-9));
        assertThat(pairs(10000000.2, 10000000.1, 10000000.3).deviation()).isCloseTo(0.1, within(1e-8));
    }

    @Test
    void oneValueHasNoDeviation() {
        assertThat(Moments.of(7.5).mean()).isEqualTo(7.5);
        assertThat(Moments.of(7.5).deviation()).isZero();
    }

    @Test
    void meansThatDifferByLessThanTheirLastDigits() {
        Moments one = Moments.of(1e15, 1e15 + 1, 1e15 + 1, 1e15 + 1);
        Moments other = Moments.of(1e15 + 1, 1e15, 1e15, 1e15);
        assertThat(one.above(other)).isEqualTo(0.5);
        assertThat(other.above(one)).isEqualTo(-0.5);
    }
}
