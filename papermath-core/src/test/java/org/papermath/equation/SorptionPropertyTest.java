package org.papermath.equation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;
import org.papermath.air.Air;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Reading;
import org.papermath.evidence.Scope;
import org.papermath.fibre.SorptionModel;
import org.papermath.quantity.Amounts;
import org.papermath.quantity.Kinds;

class SorptionPropertyTest {
    private static final SorptionModel COTTON = SorptionModel.from(Assumptions.standard(), Scope.of("cotton"));

    @Property(seed = "2026")
    void gabRisesAndGoesBack(
            @ForAll @Scale(6) @DoubleRange(min = 0, max = 0.95) double activity,
            @ForAll @Scale(6) @DoubleRange(min = 0.03, max = 0.12) double monolayer,
            @ForAll @Scale(6) @DoubleRange(min = 5, max = 35) double c,
            @ForAll @Scale(6) @DoubleRange(min = 0.4, max = 0.85) double k) {
        double ratio = Sorption.gab(activity, monolayer, c, k);
        assertThat(ratio).isNotNegative();
        assertThat(Sorption.gab(activity + 0.01, monolayer, c, k)).isGreaterThan(ratio);
        assertThat(byQuadratic(ratio, monolayer, c, k)).isCloseTo(activity, within(1e-9));
    }

    /** The isotherm is a quadratic in K a; its root is another way to the same answer. */
    private static double byQuadratic(double ratio, double monolayer, double c, double k) {
        if (ratio == 0) {
            return 0;
        }
        // ratio (1 - x)(1 + (c - 1) x) = monolayer c x
        double a = ratio * (1 - c);
        double b = ratio * (c - 2) - monolayer * c;
        double root = Math.sqrt(b * b - 4 * a * ratio);
        return 2 * ratio / (-b + root) / k;
    }

    @Property(seed = "2026")
    void theModelFindsTheAirOfAMoisture(@ForAll @Scale(6) @DoubleRange(min = 0.02, max = 0.98) double activity) {
        double ratio = Sorption.gab(activity, 0.0426, 10.14, 0.7468);
        assertThat(COTTON.humidityFor(Kinds.MOISTURE_RATIO.ofSi(ratio), Amounts.celsius(SorptionLaw.STATED_CELSIUS))
                        .si())
                .isCloseTo(byQuadratic(ratio, 0.0426, 10.14, 0.7468), within(1e-9));
    }

    @Property(seed = "2026")
    void oneWeighingScalesTheMonolayer(
            @ForAll @Scale(6) @DoubleRange(min = 0.1, max = 0.9) double activity,
            @ForAll @Scale(6) @DoubleRange(min = 0.025, max = 0.2) double ratio) {
        Air air = Air.of(Amounts.celsius(SorptionLaw.STATED_CELSIUS), Kinds.RELATIVE_HUMIDITY.ofSi(activity));
        Assumptions own = SorptionModel.calibrate(
                Assumptions.standard(),
                Scope.of("cotton"),
                Reading.of(Kinds.MASS.ofSi(0.05 * (1 + ratio)), Kinds.MASS.ofSi(1e-5)),
                Reading.of(Kinds.MASS.ofSi(0.05), Kinds.MASS.ofSi(1e-5)),
                air);
        double dry = Sorption.gab(activity, own.si("sorption.monolayer", Scope.of("cotton")), 10.14, 0.7468);
        assertThat(Sorption.desorption(dry, 0.01, activity)).isCloseTo(ratio, withinPercentage(1e-9));
        assertThat(SorptionModel.from(own, Scope.of("cotton"))
                        .fromWetSide()
                        .ratio(air)
                        .si())
                .isCloseTo(ratio, withinPercentage(1e-9));
    }

    @Property(seed = "2026")
    void theOtherIsothermsRise(
            @ForAll @Scale(6) @DoubleRange(min = 0.02, max = 0.9) double activity,
            @ForAll @Scale(6) @DoubleRange(min = 10, max = 35) double celsius) {
        assertThat(Sorption.tryding(activity + 0.01, celsius + 273.15))
                .isGreaterThan(Sorption.tryding(activity, celsius + 273.15));
        assertThat(Sorption.hailwoodHorrobin(activity + 0.01, celsius))
                .isGreaterThan(Sorption.hailwoodHorrobin(activity, celsius));
        assertThat(Sorption.tryding(activity, celsius + 274.15))
                .isLessThan(Sorption.tryding(activity, celsius + 273.15));
    }

    @Example
    void dryAirDryFibre() {
        assertThat(Sorption.gab(0, 0.0426, 10.14, 0.7468)).isZero();
        assertThat(Sorption.tryding(0, 293.15)).isZero();
        assertThat(Sorption.hailwoodHorrobin(0, 20)).isZero();
    }
}
