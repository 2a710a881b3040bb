package org.papermath.equation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.papermath.testing.CheckValues.relative;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;
import org.hipparchus.ode.ODEState;
import org.hipparchus.ode.OrdinaryDifferentialEquation;
import org.hipparchus.ode.nonstiff.DormandPrince853Integrator;

class DrainagePropertyTest {
    private static final double G = 9.80665;

    /** The closed form against a numerical integration of Darcy's law, dt/dV = mu (alpha R c V + R_m) / (rho g h). */
    @Property(tries = 200, seed = "2026")
    void closedFormIsTheIntegral(
            @ForAll @Scale(9) @DoubleRange(min = 0.005, max = 0.2) double depth,
            @ForAll @Scale(9) @DoubleRange(min = 0.01, max = 0.98) double part,
            @ForAll @Scale(9) @DoubleRange(min = 7.5, max = 11) double logAlpha,
            @ForAll @Scale(9) @DoubleRange(min = 0.9, max = 1) double matRetention,
            @ForAll @Scale(9) @DoubleRange(min = 1, max = 15) double fibre,
            @ForAll @Scale(9) @DoubleRange(min = 0, max = 2e7) double wire,
            @ForAll @Scale(9) @DoubleRange(min = 0.5e-3, max = 1.6e-3) double mu,
            @ForAll @Scale(9) @DoubleRange(min = 985, max = 1003) double rho) {
        double alpha = Math.pow(10, logAlpha);
        OrdinaryDifferentialEquation darcy = new OrdinaryDifferentialEquation() {
            @Override
            public int getDimension() {
                return 1;
            }

            @Override
            public double[] computeDerivatives(double v, double[] time) {
                double resistance = alpha * matRetention * fibre * v + wire;
                return new double[] {mu * resistance / (rho * G * (depth - v))};
            }
        };
        double filtrate = part * depth;
        double integrated = new DormandPrince853Integrator(1e-14, filtrate, 1e-15, 1e-12)
                .integrate(darcy, new ODEState(0, new double[] {0}), filtrate)
                .getPrimaryState()[0];
        double closed = Drainage.time(filtrate, depth, alpha, matRetention, fibre, wire, mu, rho);
        assertThat(closed).isCloseTo(integrated, relative(integrated, 1e-8));
    }

    @Property(seed = "2026")
    void timeResistanceAndFiltrateComeBack(
            @ForAll @Scale(9) @DoubleRange(min = 0.002, max = 0.3) double depth,
            @ForAll @Scale(9) @DoubleRange(min = 1e-6, max = 0.999) double part,
            @ForAll @Scale(9) @DoubleRange(min = 7, max = 12) double logAlpha,
            @ForAll @Scale(9) @DoubleRange(min = 0.5, max = 20) double fibre,
            @ForAll @Scale(9) @DoubleRange(min = 0, max = 1e8) double wire) {
        double alpha = Math.pow(10, logAlpha);
        double filtrate = part * depth;
        double time = Drainage.time(filtrate, depth, alpha, 1, fibre, wire, 1e-3, 998);
        double found = Drainage.filtrateAfter(time, depth, alpha, 1, fibre, wire, 1e-3, 998);
        assertThat(found).isCloseTo(filtrate, relative(filtrate, 1e-9));
        double withoutWire = Drainage.time(filtrate, depth, alpha, 1, fibre, 0, 1e-3, 998);
        assertThat(Drainage.alphaOfTime(withoutWire, filtrate, depth, 1, fibre, 0, 1e-3, 998))
                .isCloseTo(alpha, relative(alpha, 1e-10));
        assertThat(time).isGreaterThanOrEqualTo(withoutWire);
        assertThat(Drainage.time(filtrate * 0.9, depth, alpha, 1, fibre, wire, 1e-3, 998))
                .isLessThan(time);
    }

    @Property(seed = "2026")
    void filtrateNeverPassesTheDepth(
            @ForAll @Scale(9) @DoubleRange(min = -1, max = 1e9) double time,
            @ForAll @Scale(9) @DoubleRange(min = 0, max = 1e12) double alpha,
            @ForAll @Scale(9) @DoubleRange(min = 0, max = 1e9) double wire) {
        assertThat(Drainage.filtrateAfter(time, 0.03, alpha, 1, 5, wire, 1e-3, 998))
                .isBetween(0.0, 0.03);
        assertThat(Drainage.time(0.03, 0.03, alpha, 1, 5, wire, 1e-3, 998)).isInfinite();
    }
}
