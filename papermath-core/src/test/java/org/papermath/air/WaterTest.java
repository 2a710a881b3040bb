package org.papermath.air;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.papermath.quantity.Amounts.celsius;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;
import org.junit.jupiter.api.Test;
import org.papermath.evidence.Assumptions;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;

class WaterTest {
    @Test
    void isAsHeavyAndAsThickAsTablesSay() {
        assertThat(Water.room().density().in("kg/m3")).isCloseTo(998.2, within(0.01));
        assertThat(Water.room().viscosity().in("mPa.s")).isCloseTo(1.002, within(0.001));
        assertThat(Water.at(celsius(40)).viscosity().in("mPa.s")).isCloseTo(0.653, within(0.003));
        assertThat(Water.at(celsius(60)).density().in("kg/m3")).isCloseTo(983.2, within(0.05));
        assertThat(Water.at(celsius(20))).isEqualTo(Water.room()).hasToString("water at 20 °C");
    }

    @Test
    void refusesIce() {
        assertThatThrownBy(() -> Water.at(celsius(-1)))
                .isInstanceOf(Refused.class)
                .hasMessage("water temperature: -1 °C given; it must be from 0 °C to 100 °C. Check the sign and the"
                        + " unit.");
    }

    @Property(tries = 200, seed = "2026")
    void warmerIsThinner(
            @ForAll @Scale(6) @DoubleRange(min = 0, max = 99) double temperature,
            @ForAll @Scale(6) @DoubleRange(min = 0.01, max = 1) double more) {
        assertThat(Water.at(celsius(temperature + more)).viscosity().si())
                .isLessThan(Water.at(celsius(temperature)).viscosity().si());
    }

    @Test
    void formationAidSlowsTheWaterOfAMat() {
        Water clear = Water.room();
        Water thick = clear.withFormationAid(Assumptions.standard(), Kinds.SOLUTION_STRENGTH.ofSi(0.02, "g/L"));
        assertThat(thick.viscosity().si() / clear.viscosity().si()).isCloseTo(5, within(1e-12));
        assertThat(thick.density()).isEqualTo(clear.density());
        assertThat(thick).isNotEqualTo(clear).hasToString("water at 20 °C with formation aid");
        // The concentration given is of all the aid that is in it.
        assertThat(thick.withFormationAid(Assumptions.standard(), Kinds.SOLUTION_STRENGTH.ofSi(0, "g/L")))
                .isEqualTo(clear)
                .hasSameHashCodeAs(clear);
        assertThatThrownBy(() -> clear.withFormationAid(Assumptions.standard(), Kinds.SOLUTION_STRENGTH.ofSi(2, "g/L")))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("formation aid per litre");
    }
}
