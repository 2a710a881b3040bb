package org.papermath.sheet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.papermath.quantity.Amounts.hours;
import static org.papermath.quantity.Amounts.micrometres;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Scope;
import org.papermath.fibre.Fibres;
import org.papermath.fibre.Furnish;
import org.papermath.pulp.BeatingState;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;
import org.papermath.quantity.SchopperRiegler;
import org.papermath.quantity.Share;
import org.papermath.quantity.SheetPressure;

/** What is solved for a thickness gives that thickness. */
class DensityInversesTest {
    private static final Furnish RAG = Furnish.of(Fibres.COTTON_RAG);
    private static final Furnish BLEND =
            Furnish.of(Share.percent(60), Fibres.COTTON_RAG, Share.percent(40), Fibres.FLAX_RAW);
    private static final Amount<Grammage> GSM_150 = Grammage.gsm(150);

    private static double thickness(DensityModel model, Amount<SheetPressure> pressure, BeatingState state) {
        return model.of(GSM_150, pressure, state).caliper().likely().si();
    }

    @Property(tries = 60, seed = "815")
    void pressureFor(
            @ForAll @DoubleRange(min = 51, max = 990) double kilopascals,
            @ForAll @DoubleRange(min = 0, max = 1) double state) {
        for (Furnish furnish : new Furnish[] {RAG, BLEND}) {
            DensityModel model = DensityModel.standard(furnish);
            BeatingState beaten = BeatingState.at(Share.fraction(state));
            Amount<SheetPressure> pressure = SheetPressure.kilopascals(kilopascals);
            double t = thickness(model, pressure, beaten);
            Amount<SheetPressure> found = model.pressureFor(Kinds.LENGTH.ofSi(t), GSM_150, beaten);
            assertThat(thickness(model, found, beaten) / t - 1).isBetween(-1e-9, 1e-9);
            assertThat(found.si() / pressure.si() - 1).isBetween(-1e-6, 1e-6);
        }
    }

    @Property(tries = 60, seed = "816")
    void beatingFor(
            @ForAll @DoubleRange(min = 60, max = 900) double kilopascals,
            @ForAll @DoubleRange(min = 0.02, max = 14) double time) {
        for (Furnish furnish : new Furnish[] {RAG, BLEND}) {
            DensityModel model = DensityModel.standard(furnish);
            Amount<SheetPressure> pressure = SheetPressure.kilopascals(kilopascals);
            BeatingState beaten = BeatingState.after(Assumptions.standard(), furnish, "", hours(time));
            Amount<javax.measure.quantity.Length> t = Kinds.LENGTH.ofSi(thickness(model, pressure, beaten));
            assertThat(thickness(model, pressure, BeatingState.at(model.beatingFor(t, GSM_150, pressure))) / t.si() - 1)
                    .isBetween(-1e-9, 1e-9);
            assertThat(model.beatingTimeFor(furnish, "", t, GSM_150, pressure).in("h") / time - 1)
                    .isBetween(-1e-6, 1e-6);
        }
    }

    @Test
    void theClosedFormOfOneFibreAgrees() {
        // rho = (p/p0)^k/((1-y)/rho0 + y/rho1), and at 150 g/m2 single fibres add nothing to speak of but what t0 says.
        Assumptions table = Assumptions.standard();
        Scope rag = Fibres.COTTON_RAG.scope();
        double bulk = 0.5 / table.si("sheet.density-unbeaten", rag) + 0.5 / table.si("sheet.density-long-beaten", rag);
        Amount<SheetPressure> found =
                DensityModel.standard(RAG).pressureFor(micrometres(270), GSM_150, BeatingState.at(Share.percent(50)));
        double t0 = table.si("sheet.thinnest", Scope.GENERAL);
        double solid = 270e-6;
        for (int i = 0; i < 100; i++) {
            solid = 270e-6 - t0 * Math.exp(-solid / t0);
        }
        double p = table.si("sheet.density-reference-pressure", rag)
                * Math.pow(0.150 / solid * bulk, 1 / table.si("sheet.density-exponent", rag));
        assertThat(found.si()).isCloseTo(p, Offset.offset(1e-6 * p));
    }

    @Test
    void whatIsOutOfReachSaysWhatThereIs() {
        DensityModel model = DensityModel.standard(RAG);
        assertThatThrownBy(() -> model.pressureFor(micrometres(150), GSM_150, BeatingState.at(Share.percent(50))))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("pressed at 50 kPa")
                .hasMessageContaining("334.7 µm thick")
                .hasMessageContaining("248.1 µm");
        assertThatThrownBy(() -> model.beatingFor(micrometres(500), GSM_150, SheetPressure.kilopascals(400)))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("beaten to 0 %");
        assertThatThrownBy(
                        () -> model.beatingTimeFor(RAG, "", micrometres(100), GSM_150, SheetPressure.kilopascals(400)))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("beaten for 48 h");
        // Kozo is known lightly pressed only: pressing does not move it.
        DensityModel kozo = DensityModel.standard(Furnish.of(Fibres.KOZO));
        assertThatThrownBy(() -> kozo.pressureFor(micrometres(500), GSM_150, BeatingState.unbeaten()))
                .isInstanceOf(Refused.class);
    }

    @Test
    void timeToADrainability() {
        Assumptions table = Assumptions.standard();
        for (Furnish furnish : new Furnish[] {RAG, BLEND}) {
            Amount<javax.measure.quantity.Time> time =
                    BeatingState.timeTo(table, furnish, "", SchopperRiegler.degrees(40));
            assertThat(BeatingState.after(table, furnish, "", time)
                            .drainability()
                            .orElseThrow()
                            .si())
                    .isCloseTo(40, Offset.offset(1e-8));
        }
        assertThatThrownBy(() -> BeatingState.timeTo(table, RAG, "", SchopperRiegler.degrees(97)))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("does not get there");
        assertThatThrownBy(() -> BeatingState.timeTo(table, RAG, "", SchopperRiegler.degrees(5)))
                .isInstanceOf(Refused.class);
    }
}
