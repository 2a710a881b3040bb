package org.papermath.vat;

import static org.assertj.core.api.Assertions.assertThat;
import static org.papermath.testing.CheckValues.relative;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;
import org.hipparchus.ode.ODEState;
import org.hipparchus.ode.OrdinaryDifferentialEquation;
import org.hipparchus.ode.nonstiff.DormandPrince853Integrator;
import org.papermath.air.Water;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Scope;
import org.papermath.pulp.DrainabilityModel;
import org.papermath.quantity.Amounts;
import org.papermath.quantity.FibreConcentration;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Share;

/** Draining as a caller asks for it, against an integration by another hand, and the way it must go. */
class DrainageModelPropertyTest {
    private static final DrainageModel MODEL = DrainageModel.standard();
    private static final double G = 9.80665;
    private static final double WIRE = Assumptions.standard().si("drainage.wire-resistance", Scope.GENERAL);

    private static DrainingSheet sheet(double millimetres, double perLitre, double alpha, double celsius) {
        return MODEL.drain(
                Amounts.mm(millimetres),
                FibreConcentration.gramsPerLitre(perLitre),
                Kinds.FILTRATION_RESISTANCE.of(alpha, "m/kg"),
                Water.at(Amounts.celsius(celsius)));
    }

    private static double integrated(double depth, double perLitre, double alpha, Water water, double filtrate) {
        double mu = water.viscosity().si();
        double rho = water.density().si();
        OrdinaryDifferentialEquation darcy = new OrdinaryDifferentialEquation() {
            @Override
            public int getDimension() {
                return 1;
            }

            @Override
            public double[] computeDerivatives(double v, double[] time) {
                return new double[] {mu * (alpha * perLitre * v + WIRE) / (rho * G * (depth - v))};
            }
        };
        return new DormandPrince853Integrator(1e-14, filtrate, 1e-15, 1e-12)
                .integrate(darcy, new ODEState(0, new double[] {0}), filtrate)
                .getPrimaryState()[0];
    }

    @Property(tries = 200, seed = "2026")
    void theTimeIsTheIntegralOfDarcysLaw(
            @ForAll @Scale(6) @DoubleRange(min = 5, max = 200) double millimetres,
            @ForAll @Scale(6) @DoubleRange(min = 1, max = 15) double perLitre,
            @ForAll @Scale(6) @DoubleRange(min = 8, max = 11) double logAlpha,
            @ForAll @Scale(6) @DoubleRange(min = 5, max = 60) double celsius,
            @ForAll @Scale(6) @DoubleRange(min = 0.05, max = 0.98) double share) {
        double alpha = Math.pow(10, logAlpha);
        DrainingSheet sheet = sheet(millimetres, perLitre, alpha, celsius);
        double depth = millimetres / 1000;
        Water water = Water.at(Amounts.celsius(celsius));
        double whole = integrated(depth, perLitre, alpha, water, 0.9 * depth);
        assertThat(sheet.time().si()).isCloseTo(whole, relative(whole, 1e-8));
        double part = integrated(depth, perLitre, alpha, water, share * depth);
        assertThat(sheet.timeTo(Share.fraction(share)).si()).isCloseTo(part, relative(part, 1e-8));
        assertThat(sheet.after(Kinds.TIME.ofSi(part)).drained().si())
                .isCloseTo(share * depth, relative(share * depth, 1e-7));
    }

    @Property(tries = 300, seed = "2026")
    void hotterIsFasterAndSlowerThickerOrDeeperIsLonger(
            @ForAll @Scale(6) @DoubleRange(min = 5, max = 190) double millimetres,
            @ForAll @Scale(6) @DoubleRange(min = 1, max = 14) double perLitre,
            @ForAll @Scale(6) @DoubleRange(min = 8, max = 11) double logAlpha,
            @ForAll @Scale(6) @DoubleRange(min = 5, max = 58) double celsius,
            @ForAll @Scale(6) @DoubleRange(min = 1.001, max = 1.05) double more) {
        double alpha = Math.pow(10, logAlpha);
        double time = sheet(millimetres, perLitre, alpha, celsius).time().si();
        assertThat(sheet(millimetres, perLitre, alpha, celsius + more).time().si())
                .isLessThan(time);
        assertThat(sheet(millimetres, perLitre, alpha * more, celsius).time().si())
                .isGreaterThan(time);
        assertThat(sheet(millimetres, perLitre * more, alpha, celsius).time().si())
                .isGreaterThan(time);
        assertThat(sheet(millimetres * more, perLitre, alpha, celsius).time().si())
                .isGreaterThan(time);
    }

    @Property(tries = 200, seed = "2026")
    void slowerPulpByTheTesterDrainsLonger(
            @ForAll @Scale(6) @DoubleRange(min = 12, max = 89) double number,
            @ForAll @Scale(6) @DoubleRange(min = 50, max = 740) double freeness,
            @ForAll @Scale(6) @DoubleRange(min = 0.1, max = 1) double more) {
        DrainabilityModel model = DrainabilityModel.standard();
        double slow = model.resistance(Kinds.SCHOPPER_RIEGLER.of(number, "SR"))
                .likely()
                .si();
        double slower = model.resistance(Kinds.SCHOPPER_RIEGLER.of(number + more, "SR"))
                .likely()
                .si();
        assertThat(sheet(20, 5, slower, 20).time().si())
                .isGreaterThan(sheet(20, 5, slow, 20).time().si());
        double free = model.resistanceOfCanadian(Kinds.CANADIAN_FREENESS.of(freeness + more, "mL_CSF"))
                .likely()
                .si();
        double lessFree = model.resistanceOfCanadian(Kinds.CANADIAN_FREENESS.of(freeness, "mL_CSF"))
                .likely()
                .si();
        assertThat(sheet(20, 5, lessFree, 20).time().si())
                .isGreaterThan(sheet(20, 5, free, 20).time().si());
    }
}
