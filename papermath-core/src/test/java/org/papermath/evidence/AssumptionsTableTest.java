package org.papermath.evidence;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/** The table of numbers shipped with the library. */
class AssumptionsTableTest {
    @Test
    void everyRowSaysHowItIsKnownAndWhereItIsFrom() {
        assertThat(Assumptions.standard().all()).hasSizeGreaterThan(300).allSatisfy(row -> {
            assertThat(row.source().text()).hasSizeGreaterThan(10);
            assertThat(row.meaning()).hasSizeGreaterThan(10);
            assertThat(row.basis()).isNotIn(Basis.MEASURED_HERE, Basis.GIVEN);
        });
    }
}
