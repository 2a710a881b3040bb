package org.papermath.shape;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.papermath.quantity.Amounts.mm;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;
import org.junit.jupiter.api.Test;
import org.papermath.quantity.Refused;

class SquarenessTest {
    /** An Imperial sheet of 559 by 762 mm slipped by 3 mm along its width: the diagonals differ by 3.5 mm. */
    @Test
    void aSheetThatSlipped() {
        assertThat(Squareness.diagonalDifference(mm(559), mm(762), mm(3)).in("mm"))
                .isCloseTo(3.5, within(0.05))
                .isCloseTo(Math.hypot(562, 762) - Math.hypot(556, 762), within(1e-9));
        Squareness squareness = Squareness.ofDiagonals(
                mm(559), mm(Math.hypot(762, 3)), mm(Math.hypot(562, 762)), mm(Math.hypot(556, 762)));
        assertThat(squareness.slipAcross().in("mm")).isCloseTo(3, within(1e-6));
        assertThat(squareness.difference().in("mm")).isCloseTo(3.55, within(0.01));
        assertThat(squareness.isSquareWithin(mm(2.9))).isFalse();
        assertThat(squareness.isSquareWithin(mm(3.1))).isTrue();
        assertThat(squareness.notices()).isEmpty();
    }

    @Test
    void aSquareSheet() {
        Squareness square = Squareness.ofDiagonals(mm(300), mm(400), mm(500), mm(500));
        assertThat(square.slipAcross().in("mm")).isZero();
        assertThat(square.slope().si()).isZero();
        assertThat(square.notices()).isEmpty();
    }

    @Test
    void notAParallelogramOrNotASheet() {
        assertThat(Squareness.ofDiagonals(mm(300), mm(400), mm(510), mm(508)).notices())
                .singleElement()
                .satisfies(notice -> assertThat(notice.code()).isEqualTo("squareness.not-a-parallelogram"));
        assertThatThrownBy(() -> Squareness.ofDiagonals(mm(300), mm(400), mm(701), mm(500)))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("Measure again");
        assertThatThrownBy(() -> Squareness.ofDiagonals(mm(300), mm(400), mm(90), mm(500)))
                .isInstanceOf(Refused.class);
    }

    @Property(tries = 300, seed = "2026")
    void slipComesBack(
            @ForAll @Scale(4) @DoubleRange(min = 100, max = 900) double w,
            @ForAll @Scale(4) @DoubleRange(min = 100, max = 900) double h,
            @ForAll @Scale(4) @DoubleRange(min = 0, max = 30) double slip) {
        Squareness found = Squareness.ofDiagonals(
                mm(w), mm(Math.hypot(h, slip)), mm(Math.hypot(w - slip, h)), mm(Math.hypot(w + slip, h)));
        assertThat(found.slipAcross().in("mm")).isCloseTo(slip, within(1e-7));
    }
}
