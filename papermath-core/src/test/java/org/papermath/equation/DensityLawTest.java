package org.papermath.equation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class DensityLawTest {
    private static final DensityLaw.Pressing PRESSING = new DensityLaw.Pressing(0.1, 4e5, 5e4, 1e6);
    private static final DensityLaw.Beaten ABACA = beaten(0.4);
    private static final DensityLaw KOZO = new DensityLaw.LightlyPressed(300);

    private static DensityLaw.Beaten beaten(double state) {
        return new DensityLaw.Beaten(465, 900, state, PRESSING);
    }

    @Test
    void standsAtTheTableWhenPressedAtItsPressure() {
        assertThat(beaten(0).uncapped(4e5)).isCloseTo(465, within(1e-9));
        assertThat(beaten(1).uncapped(4e5)).isCloseTo(900, within(1e-9));
    }

    @Test
    void answersToNoPressureOutsideItsRange() {
        assertThat(ABACA.uncapped(1)).isEqualTo(ABACA.uncapped(5e4)).isLessThan(ABACA.uncapped(6e4));
        assertThat(ABACA.uncapped(4e6)).isEqualTo(ABACA.uncapped(1e6)).isGreaterThan(ABACA.uncapped(9e5));
    }

    @Test
    void lightlyPressedDensityIsNotPressedAgain() {
        assertThat(KOZO.uncapped(1)).isEqualTo(300).isEqualTo(KOZO.uncapped(1e6));
        assertThat(KOZO.answersToPressing()).isFalse();
    }

    @Test
    void volumesOfABlendAddUpAtThePressedDensities() {
        DensityLaw blend = new DensityLaw.Blend(new double[] {0.25, 0.75}, new DensityLaw[] {KOZO, ABACA});
        assertThat(1 / blend.uncapped(1e5)).isCloseTo(0.25 / 300 + 0.75 / ABACA.uncapped(1e5), within(1e-15));
        assertThat(blend.answersToPressing()).isTrue();
        assertThat(new DensityLaw.Blend(new double[] {0.5, 0.5}, new DensityLaw[] {KOZO, KOZO}).answersToPressing())
                .isFalse();
    }

    @Test
    void densityNobodyKnowsIsNoNumber() {
        assertThat(new DensityLaw.Blend(new double[] {0.5, 0.5}, new DensityLaw[] {KOZO, DensityLaw.unknown()})
                        .density(1e5, 1500))
                .isNaN();
    }

    @Test
    void noSheetIsDenserThanTheDensest() {
        DensityLaw dense = new DensityLaw.Beaten(1300, 1490, 0.98, PRESSING);
        assertThat(dense.uncapped(1e6)).isGreaterThan(1500);
        assertThat(dense.density(1e6, 1500)).isEqualTo(1500);
    }

    @Test
    void measuredLawMeetsWhatWasMeasured() {
        for (double measured : new double[] {200, 500, 900, 1200}) {
            for (double state : new double[] {0, 0.3, 0.9}) {
                DensityLaw.Beaten law = beaten(state).measured(measured, 2e5, 1500);
                assertThat(law.uncapped(2e5)).as(measured + " at " + state).isCloseTo(measured, within(1e-9));
                assertThat(law.longBeaten()).isLessThanOrEqualTo(1500);
            }
        }
        assertThat(beaten(0.99).measured(1490, 1e5, 1500).unbeaten())
                .as("beyond the fibre wall")
                .isNegative();
    }
}
