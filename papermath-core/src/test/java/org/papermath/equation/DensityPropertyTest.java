package org.papermath.equation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.withinPercentage;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;

class DensityPropertyTest {
    @Property(seed = "2026")
    void constantAboveTheSaturationPressureAndRisingBelow(
            @ForAll @Scale(6) @DoubleRange(min = 200, max = 1200) double reference,
            @ForAll @Scale(6) @DoubleRange(min = 1.0e6, max = 10e6) double above,
            @ForAll @Scale(6) @DoubleRange(min = 0.05e6, max = 0.9e6) double below,
            @ForAll @Scale(6) @DoubleRange(min = 0.01, max = 0.3) double exponent) {
        double highest = Density.ofPressure(reference, 1e6, 0.4e6, 1e6, exponent);
        assertThat(Density.ofPressure(reference, above, 0.4e6, 1e6, exponent)).isEqualTo(highest);
        double at = Density.ofPressure(reference, below, 0.4e6, 1e6, exponent);
        assertThat(at).isLessThan(highest).isPositive();
        assertThat(Density.ofPressure(reference, below * 1.1, 0.4e6, 1e6, exponent))
                .isGreaterThan(at);
    }

    @Property(seed = "2026")
    void beatingStaysBetweenItsEnds(
            @ForAll @Scale(6) @DoubleRange(min = 300, max = 600) double unbeaten,
            @ForAll @Scale(6) @DoubleRange(min = 1, max = 3) double gain,
            @ForAll @Scale(6) @DoubleRange(min = 0, max = 0.99) double state) {
        double beaten = unbeaten * gain;
        DensityLaw.Pressing pressing = new DensityLaw.Pressing(0.1, 4e5, 5e4, 1e6);
        double density = new DensityLaw.Beaten(unbeaten, beaten, state, pressing).uncapped(4e5);
        assertThat(density).isBetween(unbeaten * (1 - 1e-12), beaten * (1 + 1e-12));
        assertThat(new DensityLaw.Beaten(unbeaten, beaten, state + 0.01, pressing).uncapped(4e5))
                .isGreaterThanOrEqualTo(density * (1 - 1e-12));
    }

    @Property(seed = "2026")
    void caliperAndDensityAndBack(
            @ForAll @Scale(6) @DoubleRange(min = 0.001, max = 1) double grammage,
            @ForAll @Scale(6) @DoubleRange(min = 150, max = 1400) double density) {
        double caliper = Density.caliper(grammage, density);
        assertThat(Density.of(grammage, caliper)).isCloseTo(density, withinPercentage(1e-10));
        // One smooth law: never thinner for being heavier, and one grammage for every thickness it can have.
        CaliperLaw law = new CaliperLaw(0.019e-3);
        double thick = law.caliper(grammage, density);
        assertThat(thick).isGreaterThanOrEqualTo(caliper).isGreaterThan(0.019e-3);
        assertThat(law.caliper(grammage * 1.01, density)).isGreaterThanOrEqualTo(thick);
        if (caliper > 0.004e-3) {
            assertThat(law.solid(thick)).isCloseTo(caliper, withinPercentage(1e-6));
        }
    }
}
