package org.papermath.fibre;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.papermath.quantity.Amounts.grams;
import static org.papermath.quantity.Amounts.kilograms;
import static org.papermath.quantity.Amounts.pounds;

import javax.measure.quantity.Mass;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Notice;
import org.papermath.evidence.Reading;
import org.papermath.fibre.BoughtFibre.Form;
import org.papermath.quantity.Moisture;
import org.papermath.quantity.MoistureRatio;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Share;
import org.papermath.quantity.Solids;

class BoughtFibreTest {
    private static final Assumptions TABLE = Assumptions.standard();
    private static final Offset<Double> EXACT = Offset.offset(1e-12);

    @Test
    void takesTheDefaultsOfTheFibreAndSaysSo() {
        BoughtFibre sheets = BoughtFibre.of(Fibres.ABACA, Form.SHEET);
        assertThat(sheets.moisture()).isEmpty();
        assertThat(sheets.moisture(TABLE).in("%")).isCloseTo(9, EXACT);
        assertThat(sheets.fibreYield(TABLE).si()).isEqualTo(1);
        assertThat(sheets.ovenDry(kilograms(2), TABLE).in("kg")).isCloseTo(1.82, EXACT);
        assertThat(sheets.notices(TABLE)).extracting(Notice::code).containsExactly("fibre.moisture-not-measured");
    }

    @Test
    void ragAndRawFibreLoseAPart() {
        BoughtFibre rag = BoughtFibre.of(Fibres.COTTON_RAG, Form.RAG).withMoisture(Moisture.percent(10));
        assertThat(rag.ovenDry(kilograms(10), TABLE).in("kg")).isCloseTo(7.2, EXACT);
        assertThat(rag.notices(TABLE)).extracting(Notice::code).containsExactly("fibre.yield-not-measured");
        assertThat(rag.withYield(Share.percent(95)).notices(TABLE)).isEmpty();
        assertThat(BoughtFibre.of(Fibres.COTTON_RAG, Form.HALF_STUFF)
                        .fibreYield(TABLE)
                        .si())
                .isEqualTo(1);
        Fibre wild = Fibre.of("milkweed", "milkweed bast", Fibre.SourceClass.BAST, "linen");
        BoughtFibre unknown = BoughtFibre.of(wild, Form.RAW);
        assertThatThrownBy(() -> unknown.ovenDry(kilograms(1), TABLE))
                .isInstanceOf(Refused.class)
                .hasMessageStartingWith("yield of milkweed bast: no default: measure.");
        assertThat(unknown.notices(TABLE))
                .extracting(Notice::text)
                .anySatisfy(text -> assertThat(text).contains("there is no default"));
        BoughtFibre bark = BoughtFibre.of(Fibres.KOZO, Form.RAW);
        assertThat(bark.ovenDry(kilograms(1), TABLE).in("kg")).isCloseTo(0.89 * 0.58, EXACT);
        assertThat(bark.withYield(Share.percent(45))
                        .ovenDry(kilograms(1), TABLE)
                        .in("kg"))
                .isCloseTo(0.89 * 0.45, EXACT);
    }

    @Test
    void greenBarkIsMostlyWaterAndSkin() {
        BoughtFibre green = BoughtFibre.of(Fibres.KOZO, Form.GREEN);
        assertThat(green.ovenDry(kilograms(1), TABLE).in("kg")).isCloseTo(0.35 * 0.29, EXACT);
        assertThat(green.withMoisture(Moisture.percent(70))
                        .moisture()
                        .orElseThrow()
                        .in("%"))
                .isCloseTo(70, EXACT);
        assertThatThrownBy(() -> BoughtFibre.of(Fibres.GAMPI, Form.GREEN).fibreYield(TABLE))
                .isInstanceOf(Refused.class)
                .hasMessageStartingWith("yield of gampi as green bark or stems: no default: measure.");
    }

    @Test
    void eachFormKeepsItsOwnValues() {
        Assumptions store = BoughtFibre.calibrateYield(
                BoughtFibre.calibrateMoisture(TABLE, Fibres.KOZO, Form.GREEN, weighed(1000), weighed(400)),
                Fibres.KOZO,
                Form.GREEN,
                weighed(1000),
                weighed(100));
        assertThat(BoughtFibre.of(Fibres.KOZO, Form.GREEN).fibreYield(store).si())
                .isCloseTo(0.25, EXACT);
        assertThat(BoughtFibre.of(Fibres.KOZO, Form.RAW).fibreYield(store).si()).isCloseTo(0.58, EXACT);
        assertThat(BoughtFibre.of(Fibres.KOZO, Form.RAW).moisture(store).si()).isCloseTo(0.11, EXACT);
    }

    private static Reading<Mass> weighed(double grams) {
        return Reading.of(grams(grams), grams(0.1));
    }

    @Test
    void aDriedSampleTellsTheMoisture() {
        BoughtFibre bale = BoughtFibre.of(Fibres.FLAX_RAW, Form.BALE).withSample(grams(20), grams(18.4));
        assertThat(bale.moisture().orElseThrow().in("%")).isCloseTo(8, EXACT);
        assertThat(bale.notices(TABLE)).isEmpty();
        assertThatThrownBy(() -> bale.withSample(grams(18.4), grams(20)))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("exchanged");
    }

    @Test
    void airDryIsTenPerCentOnTheWetBasis() {
        BoughtFibre pulp = BoughtFibre.of(Fibres.SOFTWOOD_KRAFT, Form.BALE).airDry();
        assertThat(pulp.ovenDry(kilograms(1000), TABLE).in("kg")).isCloseTo(900, Offset.offset(1e-9));
        assertThat(pulp.asBought(kilograms(4.6), TABLE).in("kg")).isCloseTo(4.6 / 0.9, EXACT);
    }

    @Test
    void wetPulpMustSayHowWetItIs() {
        BoughtFibre pail = BoughtFibre.of(Fibres.COTTON_RAG, Form.WET_PULP);
        assertThatThrownBy(() -> pail.ovenDry(kilograms(5), TABLE))
                .isInstanceOf(Refused.class)
                .hasMessageStartingWith("moisture as bought of cotton rag as wet pulp: no default: measure.");
        assertThat(pail.withSolids(Solids.percent(20))
                        .ovenDry(kilograms(5), TABLE)
                        .in("g"))
                .isCloseTo(1000, Offset.offset(1e-9));
        assertThat(pail.withMoistureRatio(MoistureRatio.gramsPerGram(4))
                        .moisture()
                        .orElseThrow()
                        .si())
                .isCloseTo(0.8, EXACT);
        assertThatThrownBy(() -> BoughtFibre.of(Fibres.COTTON_RAG, Form.SHEET).withMoisture(Moisture.percent(31)))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("Call it wet pulp");
        assertThatThrownBy(() -> pail.withMoisture(Moisture.percent(99.5))).isInstanceOf(Refused.class);
        assertThatThrownBy(() -> pail.withYield(Share.percent(0))).isInstanceOf(Refused.class);
    }

    @Test
    void dampFibreIsNoticed() {
        BoughtFibre damp = BoughtFibre.of(Fibres.LINEN_RAG, Form.HALF_STUFF).withMoisture(Moisture.percent(17));
        assertThat(damp.notices(TABLE)).extracting(Notice::code).containsExactly("fibre.damp");
        assertThat(damp.withMoisture(Moisture.percent(16)).notices(TABLE)).isEmpty();
        assertThat(damp)
                .hasToString("linen rag as half-stuff, 17 % moisture")
                .isEqualTo(BoughtFibre.of(Fibres.LINEN_RAG, Form.HALF_STUFF).withMoisture(Moisture.percent(17)));
    }

    @Test
    void answersInTheUnitOfTheQuestion() {
        BoughtFibre sheets =
                BoughtFibre.of(Fibres.LINTER_SECOND_CUT, Form.SHEET).withMoisture(Moisture.percent(7));
        assertThat(sheets.ovenDry(pounds(2), TABLE)).hasToString("1.86 lb");
    }

    @Test
    void regainAndTheAirDryConvention() {
        BoughtFibre cotton =
                BoughtFibre.of(Fibres.COTTON_RAG, Form.BALE).withMoistureRatio(MoistureRatio.gramsPerGram(0.085));
        assertThat(cotton.ovenDry(pounds(1), TABLE).in("g")).isCloseTo(418.0575, Offset.offset(5e-4));
        BoughtFibre sheets = BoughtFibre.of(Fibres.SOFTWOOD_KRAFT, Form.SHEET).withMoisture(Moisture.percent(8));
        assertThat(sheets.airDryMass(kilograms(5), TABLE).in("kg")).isCloseTo(5.111111, Offset.offset(1e-6));
    }
}
