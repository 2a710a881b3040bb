package org.papermath.evidence;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.papermath.quantity.Amounts.celsius;
import static org.papermath.quantity.Amounts.grams;
import static org.papermath.quantity.Amounts.inches;
import static org.papermath.quantity.Amounts.kilograms;
import static org.papermath.quantity.Amounts.micrometres;
import static org.papermath.quantity.Amounts.mils;
import static org.papermath.quantity.Amounts.mm;
import static org.papermath.quantity.Amounts.ounces;
import static org.papermath.quantity.Amounts.percent;
import static org.papermath.quantity.Amounts.pounds;

import org.junit.jupiter.api.Test;
import org.papermath.format.ReamBasis;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Refused;

class StatedTwiceTest {
    @Test
    void aPoundIsNotSoManyWholeGrams() {
        assertThat(StatedTwice.compare("bale", pounds(80), kilograms(36))).hasValueSatisfying(notice -> {
            assertThat(notice)
                    .hasToString("warning: bale: 80 lb and 36 kg are given for one thing, but 80 lb is"
                            + " 36.29 kg; they differ by 0.792 %. Find out which is right.");
            assertThat((double) notice.arguments().get("apart")).isCloseTo(1 - 36 / 36.2873896, within(1e-9));
        });
        assertThat(StatedTwice.compare("bale", pounds(80), kilograms(36.3))).isEmpty();
        assertThat(StatedTwice.compare("pound", pounds(1), grams(450))).isPresent();
        assertThat(StatedTwice.compare("pound", pounds(1), grams(454))).isEmpty();
        assertThat(StatedTwice.compare("ounce", ounces(1), grams(30))).isPresent();
        assertThat(StatedTwice.compare("nothing", grams(0), ounces(0))).isEmpty();
        assertThat(StatedTwice.compare("nothing", grams(0), ounces(1))).isPresent();
    }

    @Test
    void milsAndMicrometres() {
        assertThat(StatedTwice.compare("caliper", mils(12), micrometres(293), StatedTwice.CALIPER))
                .hasValueSatisfying(notice -> assertThat(notice.text()).contains("12 mil is 304.8 µm", "3.871 %"));
        assertThat(StatedTwice.compare("caliper", mils(12), micrometres(302), StatedTwice.CALIPER))
                .isEmpty();
        assertThat(StatedTwice.compare("caliper", mils(12), micrometres(302))).isPresent();
    }

    @Test
    void aLabelWithPoundsAndGrams() {
        assertThat(StatedTwice.compare("label", ReamBasis.TAG.pounds(80), Grammage.gsm(130)))
                .isEmpty();
        assertThat(StatedTwice.compare("label", ReamBasis.TAG.withCount(480).pounds(80), Grammage.gsm(130)))
                .hasValueSatisfying(notice -> assertThat(notice.text()).contains("480 sheets) is 135.6 g/m²"));
    }

    @Test
    void theLimitItselfIsAllowed() {
        assertThat(StatedTwice.compare("side", mm(200), mm(199))).isEmpty();
        assertThat(StatedTwice.compare("side", mm(199), mm(200))).isEmpty();
        assertThat(StatedTwice.compare("side", mm(200), mm(198.99))).isPresent();
        assertThat(StatedTwice.compare("side", inches(1), mm(25.4), percent(0))).isEmpty();
    }

    @Test
    void whatCannotBeCompared() {
        assertThatThrownBy(() -> StatedTwice.compare("bath", celsius(40), celsius(41)))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("40 °C and 41 °C");
        assertThatThrownBy(() -> StatedTwice.compare("side", mm(1), mm(2), percent(101)))
                .isInstanceOf(Refused.class);
    }
}
