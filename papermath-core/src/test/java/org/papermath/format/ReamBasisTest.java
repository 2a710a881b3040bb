package org.papermath.format;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.entry;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.papermath.quantity.Amounts;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Unclear;
import org.papermath.quantity.Units;

class ReamBasisTest {
    private static double gsm(double pounds, ReamBasis basis) {
        return basis.pounds(pounds).in(Units.GSM);
    }

    @Test
    void poundsOfAReamAreAGrammage() {
        // lb · 453.59237 g / (width · length · count), worked out from the definitions.
        assertThat(gsm(80, ReamBasis.COVER)).isCloseTo(216.3291014274337, within(1e-11));
        assertThat(gsm(60, ReamBasis.TEXT)).isCloseTo(88.80878900705170, within(1e-12));
        assertThat(gsm(20, ReamBasis.BOND)).isCloseTo(75.1946074480, within(1e-9));
        assertThat(gsm(100, ReamBasis.TAG)).isCloseTo(162.7475878794, within(1e-9));
        assertThat(gsm(50, ReamBasis.THOUSAND_SQUARE_FEET)).isCloseTo(244.1213818192, within(1e-9));
    }

    @Test
    void threeThousandSquareFeetAreATagReam() {
        ReamBasis feet = ReamBasis.of(Amounts.feet(3), Amounts.feet(2), 500);
        assertThat(gsm(1, feet)).isCloseTo(gsm(1, ReamBasis.TAG), within(1e-12));
        assertThat(gsm(3, ReamBasis.THOUSAND_SQUARE_FEET) / 3).isCloseTo(3 * gsm(1, ReamBasis.TAG), within(1e-9));
    }

    @Test
    void aReamWeighsItsGrammage() {
        assertThat(ReamBasis.COVER.reamMass(ReamBasis.COVER.pounds(80)).in("lb"))
                .isCloseTo(80, within(1e-12));
        assertThat(ReamBasis.COVER.poundsOf(Grammage.gsm(216.3291014274337))).isCloseTo(80, within(1e-11));
        assertThat(ReamBasis.TEXT.poundsOf(ReamBasis.TEXT.pounds(60))).isCloseTo(60, within(1e-12));
    }

    /** A label of 80 lb, 24 × 36 in, and 130 g/m²: right for 500 sheets, wrong for 480. */
    @Test
    void whetherALabelIsRightIsSaidFirst() {
        ReamBasis.Label label = ReamBasis.TAG.label(80, Grammage.gsm(130));
        assertThat(label.right()).isTrue();
        assertThat(label)
                .hasToString("right: 80 lb (tag, 24 × 36 in, 500 sheets) is 130.2 g/m², the label says 130 g/m²");
        ReamBasis.Label other = ReamBasis.TAG.withCount(480).label(80, Grammage.gsm(130));
        assertThat(other.right()).isFalse();
        assertThat(other.grammage().in(Units.GSM)).isCloseTo(135.6, within(0.05));
        assertThat(other.deviation()).isCloseTo(0.0433, within(1e-4));
        assertThat(other)
                .hasToString("wrong: 80 lb (tag, 24 × 36 in, 480 sheets) is 135.6 g/m², the label says 130 g/m²"
                        + " (+4.325 %)");
    }

    @Test
    void theCountMatters() {
        ReamBasis old = ReamBasis.COVER.withCount(480);
        assertThat(old.count()).isEqualTo(480);
        assertThat(gsm(80, old) / gsm(80, ReamBasis.COVER)).isCloseTo(500.0 / 480, within(1e-12));
        assertThat(old).isNotEqualTo(ReamBasis.COVER).hasToString("lb (cover, 20 × 26 in, 480 sheets)");
        assertThat(old.withCount(500)).isEqualTo(ReamBasis.COVER).hasSameHashCodeAs(ReamBasis.COVER);
    }

    @Test
    void aSizeIsToldAsItWasGiven() {
        assertThat(ReamBasis.BOND.width()).isEqualTo(Amounts.inches(17));
        assertThat(ReamBasis.BOND.length()).isEqualTo(Amounts.inches(22));
        assertThat(ReamBasis.BOND.name()).isEqualTo("bond");
        ReamBasis metric = ReamBasis.of(Amounts.mm(500), Amounts.mm(700), 250);
        assertThat(metric.width()).isEqualTo(Amounts.mm(500));
        assertThat(metric).hasToString("lb (ream, 500 × 700 mm, 250 sheets)");
        assertThat(metric.withCount(100)).hasToString("lb (ream, 500 × 700 mm, 100 sheets)");
        assertThat(ReamBasis.of(Amounts.mm(500), Amounts.cm(70), 250))
                .hasToString("lb (ream, 500 mm × 70 cm, 250 sheets)");
    }

    @Test
    void aReamWeightIsShownWithItsReam() {
        assertThat(ReamBasis.COVER.pounds(80)).hasToString("80 lb (cover, 20 × 26 in, 500 sheets)");
        assertThat(ReamBasis.THOUSAND_SQUARE_FEET.pounds(42)).hasToString("42 lb (1000 ft²)");
        assertThat(ReamBasis.THREE_THOUSAND_SQUARE_FEET).hasToString("lb (3000 ft²)");
        assertThat(ReamBasis.fitting(80, Grammage.gsm(217), Amounts.percent(0.5))
                        .get(0))
                .hasToString("lb (cover, 20 × 26 in, 500 sheets): 216.3 g/m², -0.3092 %");
        assertThat(ReamBasis.COVER.pound().getSymbol()).isEqualTo("lb (cover, 20 × 26 in, 500 sheets)");
    }

    @Test
    void aReamOfNothingIsRefused() {
        Refused refused =
                catchThrowableOfType(Refused.class, () -> ReamBasis.of(Amounts.inches(0), Amounts.inches(26), 500));
        assertThat(refused)
                .hasMessage(
                        "ream sheet width: 0 in given; it must be above zero." + " Give what was measured or ordered.");
        assertThatThrownBy(() -> ReamBasis.of(Amounts.inches(20), Amounts.inches(0), 500))
                .isInstanceOf(Refused.class);
        Refused count = catchThrowableOfType(Refused.class, () -> ReamBasis.COVER.withCount(0));
        assertThat(count.code()).isEqualTo("ream.count");
        assertThat(count.arguments()).containsExactly(entry("given", 0), entry("least", 1));
        assertThat(count).hasMessage("ream: 0 sheets given; a ream has 1 sheet or more.");
        Refused weight = catchThrowableOfType(Refused.class, () -> ReamBasis.COVER.pounds(-80));
        assertThat(weight)
                .hasMessage("grammage: -80 lb (cover, 20 × 26 in, 500 sheets) given; it must be above 0 g/m² and at"
                        + " most 20000 g/m². Check the sign and the unit.");
    }

    @Test
    void aReamWithoutACountIsAskedBack() {
        Unclear unclear = catchThrowableOfType(
                Unclear.class, () -> ReamBasis.ofUnknownCount(80, Amounts.inches(20), Amounts.inches(26)));
        assertThat(unclear.code()).isEqualTo("ream.count-missing");
        assertThat(unclear.arguments()).containsExactly(entry("pounds", 80.0));
        assertThat(unclear)
                .hasMessage("ream: 80 lb given without the number of sheets in the ream. Say how many. It may mean:"
                        + " a ream of 472 sheets, mill ream (229.2 g/m²); a ream of 480 sheets, short ream (225.3 g/m²);"
                        + " a ream of 500 sheets, long ream (216.3 g/m²); a ream of 504 sheets, stationers' ream"
                        + " (214.6 g/m²); a ream of 516 sheets, printers' ream (209.6 g/m²).");
    }
}
