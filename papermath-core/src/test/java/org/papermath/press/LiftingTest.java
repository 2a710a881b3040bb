package org.papermath.press;

import static org.assertj.core.api.Assertions.assertThat;
import static org.papermath.quantity.Amounts.kilograms;

import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.papermath.evidence.Assumptions;
import org.papermath.quantity.Kinds;

class LiftingTest {
    private static final Assumptions STORE = Assumptions.standard();

    @Example
    void loadsAsWeighed() {
        assertThat(Lifting.of(STORE, "post", kilograms(11.2)))
                .hasToString(
                        "one person: post of 11.2 kg; one person lifts 23 kg at best, two together 31 kg; less far from the"
                                + " body, twisted or often. Local codes come first.");
        assertThat(Lifting.of(STORE, "post", kilograms(23)).people()).isEqualTo(1);
        assertThat(Lifting.of(STORE, "pail", Kinds.MASS.read("51 lb")).people()).isEqualTo(2);
        assertThat(Lifting.of(STORE, "post", kilograms(50))).asString().startsWith("a trolley, or 3 parts: ");
    }

    @Property(tries = 500, seed = "2026")
    void noPartIsMoreThanOneLifts(@ForAll @DoubleRange(min = 0.1, max = 500) double mass) {
        int parts = Lifting.of(STORE, "post", kilograms(mass)).parts();
        assertThat(Lifting.of(STORE, "part", kilograms(mass / parts)).people()).isEqualTo(1);
        if (parts > 1) {
            assertThat(Lifting.of(STORE, "part", kilograms(mass / (parts - 1))).people())
                    .isNotEqualTo(1);
        }
    }
}
