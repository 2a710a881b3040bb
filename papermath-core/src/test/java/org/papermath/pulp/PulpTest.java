package org.papermath.pulp;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.papermath.quantity.Amounts.grams;
import static org.papermath.quantity.Amounts.kilograms;
import static org.papermath.quantity.Amounts.litres;
import static org.papermath.quantity.Amounts.percent;
import static org.papermath.testing.CheckValues.relative;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;
import org.junit.jupiter.api.Test;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Scope;
import org.papermath.quantity.Consistency;
import org.papermath.quantity.FibreConcentration;
import org.papermath.quantity.Moisture;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Unclear;

class PulpTest {
    private static final Pulp BEATEN = Pulp.ofOvenDry(kilograms(1.2)).at(Consistency.percent(3));

    @Test
    void isDilutedAsAskedFor() {
        Pulp vat = BEATEN.dilutedTo(Consistency.percent(0.6));
        assertThat(vat.ovenDry().in("kg")).isCloseTo(1.2, within(1e-12));
        assertThat(vat.mass().in("kg")).isCloseTo(200, within(1e-9));
        // 1.2 kg of fibre at 1500 kg/m3 and 198.8 kg of water at 998.2 kg/m3
        assertThat(vat.volume().in("L")).isCloseTo(0.8 + 198.8 / 0.9982, within(1e-9));
        assertThat(BEATEN.waterBetween(Consistency.percent(0.6)).in("kg")).isCloseTo(160, within(1e-9));
        assertThat(vat.thickenedTo(Consistency.percent(3)).mass().in("kg")).isCloseTo(40, within(1e-9));
        assertThat(vat).hasToString("200 L at 0.6 % (1200 g oven-dry fibre)");
    }

    @Test
    void keepsTheThreeConsistenciesApart() {
        Pulp pulp = Pulp.ofOvenDry(grams(680.389)).inWaterOf(litres(22.71247));
        assertThat(pulp.fibrePerLitreOfWater().in("g/L")).isCloseTo(29.96, within(0.01));
        assertThat(pulp.fibrePerLitreOfStock().in("g/L")).isCloseTo(29.37, within(0.01));
        assertThat(pulp.consistency().in("%")).isCloseTo(2.9136, within(0.0002));
        assertThat(Pulp.ofOvenDry(grams(500))
                        .perLitreOfStock(FibreConcentration.gramsPerLitre(25))
                        .volume()
                        .in("L"))
                .isCloseTo(20, within(1e-9));
        assertThat(Pulp.ofOvenDry(grams(500))
                        .perLitreOfWater(FibreConcentration.gramsPerLitre(25))
                        .volume()
                        .in("L"))
                .isCloseTo(20 + 0.5 / 1.5, within(1e-9));
        assertThat(Pulp.ofVolumePerLitre(litres(20), FibreConcentration.gramsPerLitre(25))
                        .ovenDry()
                        .in("g"))
                .isCloseTo(500, within(1e-9));
    }

    @Test
    void countsAirDryByTheConvention() {
        assertThat(Pulp.ofOvenDry(grams(900))
                        .at(Consistency.percent(2))
                        .airDry()
                        .in("g"))
                .isCloseTo(1000, within(1e-9));
    }

    @Test
    void refusesWhatWaterCannotDo() {
        assertThatThrownBy(() -> BEATEN.dilutedTo(Consistency.percent(5)))
                .isInstanceOf(Refused.class)
                .hasMessage("consistency: 5 % asked of pulp that is at 3 %; water only makes it thinner. Drain it, or"
                        + " mix thicker"
                        + " pulp in.");
        assertThatThrownBy(() -> BEATEN.thickenedTo(Consistency.percent(1)))
                .isInstanceOf(Refused.class)
                .hasMessage("consistency: 1 % asked of pulp that is at 3 %; draining only makes it thicker. Add"
                        + " water.");
        assertThatThrownBy(() -> BEATEN.takeVolume(litres(50)))
                .isInstanceOf(Refused.class)
                .hasMessage("pulp: 50 L asked for, but there is only 39.67 L.");
        assertThatThrownBy(() -> BEATEN.takeFibre(kilograms(2)))
                .isInstanceOf(Refused.class)
                .hasMessage("pulp: 2000 g of fibre asked for, but there is only 1200 g of fibre.");
        assertThatThrownBy(() -> Pulp.ofOvenDry(kilograms(3)).inStock(litres(1)))
                .isInstanceOf(Refused.class)
                .hasMessage("volume of stock: 1 L given for 3000 g of oven-dry fibre, which takes up 2 L without any"
                        + " water. Check the"
                        + " volume and its unit.");
        assertThatThrownBy(() -> Pulp.consistencyOfSample(grams(7), grams(120), Moisture.percent(0)))
                .isInstanceOf(Refused.class)
                .hasMessage("dried sample: 120 g given, more than the 7 g it weighed wet. See whether the two"
                        + " weighings were changed"
                        + " over.");
        assertThatThrownBy(() -> Pulp.ofOvenDry(grams(0)))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("oven-dry fibre: 0 g given; it must be above zero");
    }

    @Test
    void asksWhichPerCentIsMeant() {
        assertThat(Pulp.whichConsistency(percent(4)).candidates()).hasSize(3);
        assertThat(Pulp.whichConsistency(percent(4)))
                .hasMessage("consistency: a bare 4 % given. State its basis."
                        + " It may mean: fibre over fibre and water, by mass (40.47 g/L of stock); grams to 100 mL of water"
                        + " (38.96 g/L of"
                        + " stock); grams in 100 mL of stock (40 g/L of stock).");
    }

    @Test
    void takesDensitiesFromOtherAssumptions() {
        Assumptions own = Assumptions.standard().given("water.density-in-beater", Scope.GENERAL, 992);
        assertThat(BEATEN.under(own, Scope.GENERAL).volume().si())
                .isGreaterThan(BEATEN.volume().si());
        assertThat(BEATEN.under(Assumptions.standard(), Scope.GENERAL))
                .isEqualTo(BEATEN)
                .hasSameHashCodeAs(BEATEN);
    }

    @Property(tries = 300, seed = "2026")
    void nothingIsLostInTakingAndMixing(
            @ForAll @Scale(6) @DoubleRange(min = 0.001, max = 50) double fibre,
            @ForAll @Scale(6) @DoubleRange(min = 0.05, max = 40) double percent,
            @ForAll @Scale(6) @DoubleRange(min = 0, max = 1) double part) {
        Pulp pulp = Pulp.ofOvenDry(kilograms(fibre)).at(Consistency.percent(percent));
        Pulp.Parts parts = pulp.takeVolume(litres(pulp.volume().in("L") * part));
        Pulp together = parts.taken().mixedWith(parts.left());
        assertThat(together.ovenDry().si()).isCloseTo(fibre, relative(fibre, 1e-12));
        assertThat(together.mass().si())
                .isCloseTo(pulp.mass().si(), relative(pulp.mass().si(), 1e-12));
        assertThat(pulp.consistency().in("%")).isCloseTo(percent, relative(percent, 1e-12));
        assertThat(pulp.takeMass(pulp.mass().multiply(part)).taken().ovenDry().si())
                .isCloseTo(part * fibre, relative(fibre, 1e-12));
        assertThat(Pulp.ofVolume(pulp.volume(), pulp.consistency()).ovenDry().si())
                .isCloseTo(fibre, relative(fibre, 1e-12));
        assertThat(Pulp.ofOvenDry(kilograms(fibre))
                        .perLitreOfWater(pulp.fibrePerLitreOfWater())
                        .consistency()
                        .in("%"))
                .isCloseTo(percent, relative(percent, 1e-12));
    }

    @Test
    void litresOfPulpAloneAreNoFibre() {
        assertThat(Pulp.consistencyWanted(litres(0.71)))
                .hasMessage(
                        "pulp: 0.71 L given, which is no mass of fibre. Stir it, dry a weighed sample of 100 g or so, and"
                                + " give its consistency.");
    }

    @Test
    void aBarePerCentOfMoistureIsAskedBack() {
        Unclear question = Moisture.whichBasis(percent(65));
        assertThat(question.candidates())
                .extracting(Unclear.Candidate::gives)
                .containsExactly(
                        "35 % solids, 1.857 g/g of the dry weight", "60.61 % solids, 39.39 % of the wet weight");
        assertThatThrownBy(() -> Moisture.whichBasis(percent(186))).isInstanceOf(Refused.class);
    }
}
