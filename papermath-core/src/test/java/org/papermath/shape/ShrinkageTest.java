package org.papermath.shape;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.papermath.quantity.Amounts.mm;
import static org.papermath.quantity.Amounts.percent;
import static org.papermath.quantity.Amounts.squareMetres;

import org.junit.jupiter.api.Test;
import org.papermath.quantity.AreaShrinkage;
import org.papermath.quantity.LinearShrinkage;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Share;
import org.papermath.quantity.Unclear;

class ShrinkageTest {
    @Test
    void sidesAndArea() {
        Shrinkage fifth = Shrinkage.linear(percent(20));
        assertThat(fifth.area().in("%")).isCloseTo(36, within(1e-12));
        assertThat(fifth.areaFactor()).isCloseTo(0.64, within(1e-15));
        Shrinkage byArea = Shrinkage.ofArea(AreaShrinkage.percent(20));
        assertThat(byArea.along().in("%")).isCloseTo(10.5573, within(1e-4));
        assertThat(byArea.area().in("%")).isCloseTo(20, within(1e-12));
        assertThat(Shrinkage.linear(percent(4), percent(6)).areaFactor()).isCloseTo(0.9024, within(1e-15));
        assertThat(Shrinkage.of(LinearShrinkage.percent(4), LinearShrinkage.percent(6)))
                .isEqualTo(Shrinkage.linear(percent(4), percent(6)));
        assertThat(fifth.shrunk(squareMetres(0.12)).si()).isCloseTo(0.0768, within(1e-15));
        assertThat(Shrinkage.linear(percent(8), percent(6))).hasToString("8 % along, 6 % across");
    }

    /** 250 by 350 mm: restrained 247 by 346, in the loft 231 by 318. */
    @Test
    void theSameMouldTwoSizes() {
        Shrinkage restrained = Shrinkage.measured(mm(250), mm(350), mm(247), mm(346));
        assertThat(restrained.across().in("%")).isCloseTo(1.2, within(1e-9));
        assertThat(restrained.along().in("%")).isCloseTo(1.142857, within(1e-6));
        assertThat(restrained.area().in("%")).isCloseTo(2.3, within(0.05));
        Shrinkage loft = Shrinkage.measured(mm(250), mm(350), mm(231), mm(318));
        assertThat(loft.across().in("%")).isCloseTo(7.6, within(1e-9));
        assertThat(loft.along().in("%")).isCloseTo(9.142857, within(1e-6));
        assertThat(loft.area().in("%")).isCloseTo(16.0, within(0.05));
        assertThat(1 / loft.areaFactor()).isCloseTo(1.191, within(5e-4));
    }

    @Test
    void oneNumberForTwoDirectionsIsNoted() {
        assertThat(Shrinkage.linear(percent(8)).notices())
                .singleElement()
                .satisfies(notice -> assertThat(notice.code()).isEqualTo("shrinkage.one-number"));
        assertThat(Shrinkage.linear(percent(8), percent(8)).notices()).isEmpty();
        assertThat(Shrinkage.NONE.notices()).isEmpty();
    }

    @Test
    void aRemarkWithoutSidesOrAreaIsAskedAbout() {
        assertThatThrownBy(() -> Shrinkage.unclear("three quarters of its size", Share.percent(75)))
                .isInstanceOfSatisfying(
                        Unclear.class,
                        unclear -> assertThat(unclear.candidates())
                                .hasSize(2)
                                .extracting(Unclear.Candidate::toString)
                                .containsExactly(
                                        "each side loses 25 % (the area loses 43.75 %)",
                                        "the area loses 25 % (each side loses 13.4 %)"));
    }

    @Test
    void steps() {
        Shrinkage both = Shrinkage.linear(percent(10), percent(5)).then(Shrinkage.linear(percent(2), percent(0)));
        assertThat(both.alongFraction()).isCloseTo(1 - 0.9 * 0.98, within(1e-15));
        assertThat(both.acrossFraction()).isCloseTo(0.05, within(1e-15));
    }

    @Test
    void impossibleOnesAreRefused() {
        assertThatThrownBy(() -> Shrinkage.linear(percent(100))).isInstanceOf(Refused.class);
        assertThatThrownBy(() -> Shrinkage.linear(percent(5), percent(-30))).isInstanceOf(Refused.class);
        assertThatThrownBy(() -> Shrinkage.measured(mm(100), mm(100), mm(150), mm(100)))
                .isInstanceOf(Refused.class);
    }
}
