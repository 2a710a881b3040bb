package org.papermath.shape;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.papermath.quantity.Amounts.mm;
import static org.papermath.quantity.Amounts.percent;
import static org.papermath.quantity.Amounts.squareMetres;

import org.junit.jupiter.api.Test;
import org.papermath.quantity.AreaShrinkage;
import org.papermath.quantity.Grammage;
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
        assertThat(Shrinkage.across(percent(6)).along(percent(4)).areaFactor()).isCloseTo(0.9024, within(1e-15));
        assertThat(Shrinkage.across(LinearShrinkage.percent(6)).along(LinearShrinkage.percent(4)))
                .isEqualTo(Shrinkage.across(percent(6)).along(percent(4)));
        assertThat(fifth.shrunk(squareMetres(0.12)).si()).isCloseTo(0.0768, within(1e-15));
        assertThat(Shrinkage.across(percent(6)).along(percent(8)))
                .hasToString("8 % along, 6 % across; grammage × 1.156");
    }

    @Test
    void theMassStaysOnLessArea() {
        Shrinkage shrinkage = Shrinkage.across(percent(6)).along(percent(4));
        assertThat(shrinkage.grammage(Grammage.gsm(115))).hasToString("127.4 g/m²");
        assertThat(shrinkage.grammageFactor()).isCloseTo(1.108, within(5e-4));
        assertThat(shrinkage).hasToString("4 % along, 6 % across; grammage × 1.108");
        assertThat(Shrinkage.NONE.grammage(Grammage.gsm(115)).si()).isEqualTo(0.115);
        // Across is the width: the finished card of 120 by 170 mm, cut 3 mm a side.
        Shrinkage card = Shrinkage.across(percent(3.5)).along(percent(5));
        assertThat(126 / (1 - card.acrossFraction())).isCloseTo(130.6, within(0.05));
        assertThat(176 / (1 - card.alongFraction())).isCloseTo(185.3, within(0.05));
        assertThat(Shrinkage.across(percent(3.5))).hasToString("3.5 % across, along not said yet");
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
        assertThat(Shrinkage.across(percent(8)).along(percent(8)).notices()).isEmpty();
        assertThat(Shrinkage.NONE.notices()).isEmpty();
    }

    @Test
    void aRemarkWithoutSidesOrAreaIsAskedAbout() {
        assertThatThrownBy(() -> Shrinkage.said("three quarters of its size").left(Share.percent(75)))
                .isInstanceOfSatisfying(
                        Unclear.class,
                        unclear -> assertThat(unclear.candidates())
                                .hasSize(2)
                                .extracting(Unclear.Candidate::toString)
                                .containsExactly(
                                        "each side loses 25 % (the area loses 43.75 %)",
                                        "the area loses 25 % (each side loses 13.4 %)"));
    }

    /** 300 by 400 mm that shrank by a fifth: lost and left are told apart by name. */
    @Test
    void byAFifth() {
        assertThatThrownBy(() -> Shrinkage.said("shrank by a fifth").lost(Share.percent(20)))
                .isInstanceOfSatisfying(
                        Unclear.class,
                        unclear -> assertThat(unclear.candidates())
                                .extracting(Unclear.Candidate::toString)
                                .containsExactly(
                                        "each side loses 20 % (the area loses 36 %)",
                                        "the area loses 20 % (each side loses 10.56 %)"));
        assertThatThrownBy(() -> Shrinkage.said("all of it").lost(Share.percent(100)))
                .isInstanceOf(Refused.class);
        assertThat(Shrinkage.said("by a fifth")).hasToString("\"by a fifth\"");
    }

    @Test
    void steps() {
        Shrinkage both = Shrinkage.across(percent(5))
                .along(percent(10))
                .then(Shrinkage.across(percent(0)).along(percent(2)));
        assertThat(both.alongFraction()).isCloseTo(1 - 0.9 * 0.98, within(1e-15));
        assertThat(both.acrossFraction()).isCloseTo(0.05, within(1e-15));
    }

    @Test
    void impossibleOnesAreRefused() {
        assertThatThrownBy(() -> Shrinkage.linear(percent(100))).isInstanceOf(Refused.class);
        assertThatThrownBy(() -> Shrinkage.across(percent(-30)).along(percent(5)))
                .isInstanceOf(Refused.class);
        assertThatThrownBy(() -> Shrinkage.measured(mm(100), mm(100), mm(150), mm(100)))
                .isInstanceOf(Refused.class);
    }
}
