package org.papermath.fibre;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;
import static org.papermath.quantity.Amounts.celsius;
import static org.papermath.quantity.Amounts.grams;

import javax.measure.quantity.Mass;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.papermath.air.Air;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Basis;
import org.papermath.evidence.Estimate;
import org.papermath.evidence.Notice;
import org.papermath.evidence.Reading;
import org.papermath.evidence.Scope;
import org.papermath.quantity.MoistureRatio;
import org.papermath.quantity.Refused;
import org.papermath.quantity.RelativeHumidity;
import org.papermath.quantity.Share;

class SorptionModelTest {
    private static Air air(double celsius, double percent) {
        return Air.of(celsius(celsius), RelativeHumidity.percent(percent));
    }

    private static SorptionModel of(String subject) {
        return SorptionModel.from(Assumptions.standard(), Scope.of(subject));
    }

    @ParameterizedTest
    @CsvSource({
        "cotton, 5.833, 7.495",
        "cotton-roving, 6.682, 8.586",
        "rag-paper, 6.451, 8.187",
        "abaca-rope, 8.576, 10.732",
        "linen, 6.264, 7.493",
        "kraft, 7.721, 9.644",
        "wool, 12.765, 15.882"
    })
    void tableAtHalfAndAtSixtyFive(String subject, double half, double sixtyFive) {
        assertThat(of(subject).ratio(air(23, 50)).in("%")).isCloseTo(half, within(0.002));
        assertThat(of(subject).ratio(air(23, 65)).in("%")).isCloseTo(sixtyFive, within(0.002));
    }

    /** Regain at 65 % and 20 °C, from a published table: cotton 7 to 8, flax 7, hemp 8, wool 14 to 18 %. */
    @ParameterizedTest
    @CsvSource({"cotton, 7, 8", "linen, 7, 8", "wool, 14, 18"})
    void regainAtSixtyFive(String subject, double low, double high) {
        assertThat(of(subject).ratio(air(20, 65)).in("%")).isBetween(low, high);
    }

    @Test
    void warmthDriesAndTheWetSideHoldsMore() {
        SorptionModel rag = SorptionModel.standard();
        assertThat(rag.ratio(air(33, 50)).in("%"))
                .isCloseTo(rag.ratio(air(23, 50)).in("%") - 0.4, within(1e-9));
        assertThat(rag.fromWetSide().ratio(air(23, 50)).in("%"))
                .isCloseTo(rag.ratio(air(23, 50)).in("%") + 1, within(1e-9));
        assertThat(rag.longBeaten().ratio(air(23, 50)).si())
                .isCloseTo(1.06 * rag.ratio(air(23, 50)).si(), within(1e-12));
        assertThat(rag.moisture(air(23, 50)).in("%")).isCloseTo(6.06, within(0.005));
    }

    @Test
    void aFurnishByOvenDryMass() {
        Furnish blend = Furnish.of(Share.percent(60), Fibres.COTTON_RAG, Share.percent(40), Fibres.ABACA);
        double expected = 0.6 * of("rag-paper").ratio(air(20, 55)).si()
                + 0.4 * of("kraft").ratio(air(20, 55)).si();
        // Each fibre has its own slope with temperature inside the blend's; at 23 °C they add up exactly.
        assertThat(SorptionModel.standard(blend).ratio(air(23, 55)).si())
                .isCloseTo(
                        0.6 * of("rag-paper").ratio(air(23, 55)).si()
                                + 0.4 * of("kraft").ratio(air(23, 55)).si(),
                        within(1e-12));
        assertThat(SorptionModel.standard(blend).ratio(air(20, 55)).si()).isCloseTo(expected, within(2e-4));
        assertThat(SorptionModel.standard(Furnish.of(Fibres.ABACA))
                        .ratio(air(23, 50))
                        .si())
                .isCloseTo(of("kraft").ratio(air(23, 50)).si(), within(1e-15));
    }

    @Test
    void everyFibreOfTheLibraryHasAnIsotherm() {
        for (Fibre fibre : Fibres.all()) {
            assertThat(SorptionModel.standard(Furnish.of(fibre))
                            .ratio(Air.reference())
                            .in("%"))
                    .as(fibre.id())
                    .isBetween(4.0, 10.0);
        }
    }

    @Test
    void noticesAtTheEdges() {
        assertThat(SorptionModel.standard().notices(air(20, 95)))
                .extracting(Notice::code)
                .containsExactly("sorption.humidity-range", "sorption.direction");
        assertThat(SorptionModel.standard().fromWetSide().notices(air(20, 50))).isEmpty();
        assertThat(SorptionModel.standard().notices(air(20, 50)).get(0).text())
                .isEqualTo("Paper that comes from the wet side holds up to 1 % of its dry mass more than this.");
        assertThatThrownBy(() -> SorptionModel.standard().humidityFor(MoistureRatio.gramsPerGram(0.5), celsius(20)))
                .isInstanceOfSatisfying(Refused.class, r -> assertThat(r.code()).isEqualTo("sorption.out-of-reach"));
    }

    @Test
    void theBandHoldsTheLoop() {
        var band = SorptionModel.standard().estimate(air(23, 50));
        assertThat(band.high().si() - band.likely().si()).isGreaterThanOrEqualTo(0.01);
        assertThat(band.low().si()).isLessThan(band.likely().si());
    }

    @Test
    void oneOvenDryWeighingCalibrates() {
        Scope scope = Scope.of("my rag", "rag-paper");
        Assumptions own = SorptionModel.calibrate(
                Assumptions.standard(),
                scope,
                Reading.of(grams(107.4), grams(0.01)),
                Reading.of(grams(100), grams(0.01)),
                air(21, 52));
        assertThat(own.get("sorption.monolayer", scope).basis()).isEqualTo(Basis.MEASURED_HERE);
        assertThat(SorptionModel.from(own, scope)
                        .fromWetSide()
                        .ratio(air(21, 52))
                        .si())
                .isCloseTo(0.074, withinPercentage(1e-9));
        assertThat(own.get("sorption.monolayer", Scope.of("rag-paper")).basis()).isNotEqualTo(Basis.MEASURED_HERE);
        assertThatThrownBy(() -> SorptionModel.calibrate(
                        own,
                        scope,
                        Reading.of(grams(99), grams(0.01)),
                        Reading.of(grams(100), grams(0.01)),
                        air(21, 52)))
                .hasMessage("moisture: 99 g in air and 100 g oven-dry given; the oven-dry mass must be the smaller."
                        + " Weigh the"
                        + " dried sample at once, before it takes up water.");
    }

    @Property(seed = "2026")
    void humidityAndMoistureAreInverseAndRise(
            @ForAll @DoubleRange(min = 5, max = 90) double percent,
            @ForAll @DoubleRange(min = 5, max = 40) double celsius) {
        SorptionModel rag = SorptionModel.standard();
        assertThat(rag.humidityFor(rag.ratio(air(celsius, percent)), celsius(celsius))
                        .in("%"))
                .isCloseTo(percent, within(1e-9));
        assertThat(rag.ratio(air(celsius, percent + 1)).si())
                .isGreaterThan(rag.ratio(air(celsius, percent)).si());
    }

    @Test
    void whatWasWeighedInOneAirIsForecastInAnother() {
        Air damp = Air.of(celsius(23), RelativeHumidity.percent(65));
        SorptionModel paper = SorptionModel.standard();
        Estimate<Mass> dry = paper.massIn(grams(12.4), damp, Air.reference());
        double by =
                (1 + paper.ratio(Air.reference()).si()) / (1 + paper.ratio(damp).si());
        assertThat(dry.likely().in("g")).isCloseTo(12.4 * by, within(1e-9));
        assertThat(dry.low().si()).isLessThan(dry.likely().si());
        assertThat(dry.high().si()).isGreaterThan(dry.likely().si());
        // Most of what is uncertain of the moisture cancels.
        Estimate<MoistureRatio> moisture = paper.estimate(Air.reference());
        assertThat(dry.high().in("g") - dry.low().in("g"))
                .isLessThan(12.4 * (moisture.high().si() - moisture.low().si()));
        assertThat(paper.massIn(grams(12.4), damp, damp).likely().in("g")).isCloseTo(12.4, within(1e-12));
    }
}
