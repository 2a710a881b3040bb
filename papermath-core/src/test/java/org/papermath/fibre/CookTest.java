package org.papermath.fibre;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.papermath.quantity.Amounts.grams;
import static org.papermath.quantity.Amounts.kilograms;
import static org.papermath.quantity.Amounts.litres;

import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Notice;
import org.papermath.evidence.WithNotices;
import org.papermath.fibre.BoughtFibre.Form;
import org.papermath.quantity.Dose;
import org.papermath.quantity.HydroxideDose;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Moisture;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Share;
import org.papermath.quantity.SolutionStrength;
import org.papermath.quantity.Unclear;

class CookTest {
    private static final Assumptions TABLE = Assumptions.standard();
    private static final Offset<Double> EXACT = Offset.offset(1e-9);
    private static final BoughtFibre BARK = BoughtFibre.of(Fibres.KOZO, Form.RAW);
    private static final BoughtFibre FLAX = BoughtFibre.of(Fibres.FLAX_RAW, Form.RAW);
    private static final Cook SODA = Cook.of(BARK, grams(640), Alkali.SODA_ASH, Dose.percent(15), litres(9));

    @Test
    void oneCookToldByDoseByBathAndByWhatWasWeighed() {
        assertThat(SODA.pureAlkali().in("g")).isCloseTo(96, EXACT);
        assertThat(Cook.ofWeighed(BARK, grams(640), Alkali.SODA_ASH, grams(96), litres(9))
                        .dose()
                        .in("%"))
                .isCloseTo(15, EXACT);
        assertThat(Cook.ofBath(BARK, grams(640), Alkali.SODA_ASH, SODA.bathStrength(), litres(9))
                        .dose()
                        .in("%"))
                .isCloseTo(15, EXACT);
        Cook more = SODA.forFibre(kilograms(1.28));
        assertThat(more.pureAlkali().in("g")).isCloseTo(192, EXACT);
        assertThat(more.liquor().in("L")).isCloseTo(18, EXACT);
        assertThat(more.bathStrength().si()).isCloseTo(SODA.bathStrength().si(), EXACT);
        assertThat(SODA)
                .hasToString(
                        "640 g oven-dry kozo in 9 L (14.06 L/kg) with 96 g of soda ash, 15 % on fibre, 10.67 g/L of bath");
    }

    @Test
    void washingSodaWithItsCrystalWaterTakesMoreOfTheProduct() {
        // Na2CO3 in Na2CO3 + 10 H2O: 105.99 of 286.14.
        Cook crystals = SODA.withActive(Share.fraction(105.99 / 286.14));
        assertThat(crystals.product().in("g")).isCloseTo(96 * 286.14 / 105.99, Offset.offset(1e-6));
        assertThat(crystals.pureAlkali()).isEqualTo(SODA.pureAlkali());
        assertThat(crystals.hydroxide()).isEqualTo(SODA.hydroxide());
    }

    @ParameterizedTest
    @EnumSource(Alkali.class)
    void asMuchHydroxideFromAnotherAlkaliComesBackToTheFirst(Alkali other) {
        WithNotices<Cook> swapped = SODA.withSameHydroxide(other);
        assertThat(swapped.value().hydroxide().si()).isCloseTo(SODA.hydroxide().si(), EXACT);
        assertThat(swapped.value()
                        .withSameHydroxide(Alkali.SODA_ASH)
                        .value()
                        .dose()
                        .in("%"))
                .isCloseTo(15, EXACT);
        assertThat(swapped.notices()).extracting(Notice::code).containsExactly("cook.equivalents");
        assertThat(other.doseFor(other.hydroxide(Dose.percent(7))).in("%")).isCloseTo(7, EXACT);
    }

    @Test
    void fifteenOfSodaAshIsElevenOfCausticSoda() {
        assertThat(SODA.withSameHydroxide(Alkali.CAUSTIC_SODA).value().dose().in("%"))
                .isCloseTo(15 / 105.99 * 2 * 39.997, Offset.offset(1e-6));
        assertThatThrownBy(() -> Alkali.POTASH.doseFor(HydroxideDose.molesPerKilogram(10)))
                .isInstanceOf(Refused.class);
    }

    @Test
    void airDryBarkHoldsLessFibreThanTheScaleShows() {
        BoughtFibre bark = BARK.withMoisture(Moisture.percent(11));
        assertThat(bark.ovenDryRaw(grams(640), TABLE).in("g")).isCloseTo(569.6, EXACT);
        assertThat(bark.withYield(Share.percent(42))
                        .ovenDryRaw(grams(640), TABLE)
                        .in("g"))
                .isCloseTo(569.6, EXACT);
    }

    @Test
    void stuffAndRinseWaterFollowTheYield() {
        Cook flax = Cook.of(FLAX, kilograms(1), Alkali.SODA_ASH, Dose.percent(20), litres(15));
        assertThat(flax.stuff(TABLE).in("g")).isCloseTo(800, EXACT);
        assertThat(flax.rinseWater(TABLE).likely().in("L")).isCloseTo(0.8 * 150, EXACT);
        assertThat(flax.rinseWater(TABLE).low().in("L")).isCloseTo(0.8 * 50, EXACT);
        assertThat(flax.rinseWater(TABLE).high().in("L")).isCloseTo(0.8 * 300, EXACT);
        assertThat(SODA.stuff(TABLE).in("g")).isCloseTo(0.58 * SODA.ovenDry().in("g"), EXACT);
        Cook own = Cook.of(BARK.withYield(Share.percent(42)), grams(640), Alkali.SODA_ASH, Dose.percent(15), litres(9));
        assertThat(own.stuff(TABLE).in("g")).isCloseTo(268.8, EXACT);
    }

    @Test
    void theUsualDoseStandsInTheTableOrIsAskedFor() {
        assertThat(Cook.usual(FLAX, kilograms(1), Alkali.SODA_ASH, litres(15), TABLE)
                        .dose()
                        .in("%"))
                .isCloseTo(20, EXACT);
        assertThat(Cook.usual(FLAX, kilograms(1), Alkali.CAUSTIC_SODA, litres(15), TABLE)
                        .dose()
                        .in("%"))
                .isCloseTo(15, EXACT);
        BoughtFibre rag = BoughtFibre.of(Fibres.COTTON_RAG, Form.RAG);
        assertThat(Cook.usual(rag, kilograms(1), Alkali.CAUSTIC_SODA, litres(15), TABLE)
                        .dose()
                        .in("%"))
                .isCloseTo(5, EXACT);
        assertThatThrownBy(() -> Cook.usual(FLAX, kilograms(1), Alkali.SLAKED_LIME, litres(15), TABLE))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("there is no usual dose of it");
    }

    @Test
    void aBarePercentageIsAskedBackWithWhatEachMeaningGives() {
        Unclear question = Cook.whichBase(Alkali.SODA_ASH, Kinds.NUMBER.of(6, "%"), grams(500), litres(8));
        assertThat(question.candidates())
                .extracting(Unclear.Candidate::gives)
                .containsExactly("30 g, a bath of 3.75 g/L", "480 g, 96 % on the oven-dry fibre");
    }

    @Test
    void cautionsComeWithEveryCook() {
        assertThat(SODA.notices(TABLE))
                .extracting(Notice::code)
                .containsExactly("cook.alkali-into-water", "cook.no-aluminium", "cook.spent-liquor");
        assertThat(SODA.notices(TABLE))
                .extracting(Notice::text)
                .last()
                .asString()
                .contains("Ask the local works", "below pH 5", "from pH 9.5", "above 40 °C", "40 CFR 403.5(b)");
        Cook lime = Cook.ofBath(BARK, grams(300), Alkali.SLAKED_LIME, SolutionStrength.gramsPerLitre(5), litres(5));
        assertThat(lime.notices(TABLE)).extracting(Notice::code).contains("cook.lime-undissolved");
        Cook sheets = Cook.of(
                BoughtFibre.of(Fibres.ABACA, Form.SHEET), grams(300), Alkali.SODA_ASH, Dose.percent(5), litres(5));
        assertThat(sheets.notices(TABLE)).extracting(Notice::code).contains("cook.ready-to-beat");
    }

    @Test
    void whatCannotBeIsRefused() {
        assertThatThrownBy(() -> Cook.of(BARK, grams(0), Alkali.SODA_ASH, Dose.percent(15), litres(9)))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("oven-dry kozo in the pot");
        assertThatThrownBy(() -> Cook.of(BARK, grams(640), Alkali.SODA_ASH, Dose.percent(15), litres(0)))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("cooking liquor");
        assertThatThrownBy(() ->
                        Cook.ofBath(BARK, grams(100), Alkali.SODA_ASH, SolutionStrength.gramsPerLitre(100), litres(1)))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("100 %");
        assertThatThrownBy(() -> BARK.asBoughtForSheets(0, grams(5), grams(0), TABLE))
                .isInstanceOf(Refused.class);
    }
}
