package org.papermath.equation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class PressForceTest {
    @Test
    void ramGivesUpWhatPlatenAndSpringsTake() {
        double free = PressForce.ramForce(5e6, 0.05, 0);
        assertThat(PressForce.ramForce(5e6, 0.05, 400)).isCloseTo(free - 400, within(1e-9));
        assertThat(PressForce.ramGauge(free - 400, 0.05, 400)).isCloseTo(5e6, within(1e-6));
    }

    @Test
    void theSmallerOfSheetAndPlatenIsLoaded() {
        assertThat(PressForce.loadedArea(0.2, 0.3)).isEqualTo(0.2);
        assertThat(PressForce.loadedArea(0.3, 0.2)).isEqualTo(0.2);
    }

    @Test
    void aJammedThreadAsksForEndlessTorqueAndGivesNoForce() {
        assertThat(PressForce.screwRaisingTorque(100, 0.1, 0.02, 0.9, 0, 0, 0)).isEqualTo(Double.POSITIVE_INFINITY);
        assertThat(PressForce.screwForce(100, 0.1, 0.02, 0.9, 0, 0, 0)).isZero();
    }

    @Test
    void aSteepSlipperyScrewRunsBack() {
        assertThat(PressForce.isSelfLocking(0.02, 0.02, 0.05, 0)).isFalse();
        assertThat(PressForce.screwLoweringTorque(100, 0.02, 0.02, 0.05, 0, 0, 0))
                .isNegative();
    }

    @Test
    void aVeeThreadNeedsMoreTorqueBothWays() {
        double angle = Math.toRadians(14.5);
        assertThat(PressForce.screwRaisingTorque(1000, 0.004, 0.02, 0.1, angle, 0, 0))
                .isGreaterThan(PressForce.screwRaisingTorque(1000, 0.004, 0.02, 0.1, 0, 0, 0));
        assertThat(PressForce.screwLoweringTorque(1000, 0.004, 0.02, 0.1, angle, 0, 0))
                .isGreaterThan(PressForce.screwLoweringTorque(1000, 0.004, 0.02, 0.1, 0, 0, 0));
        // An angle of 60 degrees doubles the friction.
        assertThat(PressForce.screwRaisingTorque(1000, 0.004, 0.02, 0.1, Math.PI / 3, 0, 0))
                .isCloseTo(PressForce.screwRaisingTorque(1000, 0.004, 0.02, 0.2, 0, 0, 0), within(1e-9));
    }

    @Test
    void theWeakestPartSetsTheLimit() {
        assertThat(PressForce.allowedForce(0.8, 50e3, 40e3, 90e3)).isCloseTo(32e3, within(1e-9));
        assertThat(PressForce.allowedForce(0.8)).isEqualTo(Double.POSITIVE_INFINITY);
    }
}
