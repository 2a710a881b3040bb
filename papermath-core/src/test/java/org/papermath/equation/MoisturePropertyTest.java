package org.papermath.equation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.papermath.testing.CheckValues.relative;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;

class MoisturePropertyTest {
    @Property(seed = "2026")
    void allFourWaysAgree(@ForAll @Scale(9) @DoubleRange(min = 0.001, max = 0.99) double w) {
        double ratio = Moisture.ratioOfWetBasis(w);
        double solids = Moisture.solidsOfRatio(ratio);
        assertThat(solids).isCloseTo(1 - w, relative(1 - w, 1e-12));
        assertThat(Moisture.ratioOfSolids(solids)).isCloseTo(ratio, relative(ratio, 1e-12));
        assertThat(Moisture.wetBasisOfRatio(ratio)).isCloseTo(w, relative(w, 1e-12));
        double wet = Moisture.massAtWetBasis(2, w);
        assertThat(wet).isCloseTo(2 * (1 + ratio), relative(wet, 1e-12));
        assertThat(Moisture.wetBasisOfSample(wet, 2)).isCloseTo(w, relative(w, 1e-10));
        assertThat(Moisture.ovenDryOfRatio(wet, ratio)).isCloseTo(2, relative(2, 1e-12));
    }
}
