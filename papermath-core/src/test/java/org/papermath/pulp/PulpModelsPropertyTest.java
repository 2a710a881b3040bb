package org.papermath.pulp;

import static org.assertj.core.api.Assertions.assertThat;
import static org.papermath.quantity.Amounts.hours;
import static org.papermath.testing.CheckValues.relative;

import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Scale;
import org.papermath.evidence.Assumption;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Reading;
import org.papermath.evidence.Scope;
import org.papermath.fibre.Fibre;
import org.papermath.fibre.Fibres;
import org.papermath.pulp.RetentionModel.Circumstance;
import org.papermath.quantity.Amount;
import org.papermath.quantity.CanadianFreeness;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;
import org.papermath.quantity.SchopperRiegler;

/** Over the whole range of what may be given: an answer or a named refusal, never a number that is none. */
class PulpModelsPropertyTest {
    private static Amount<SchopperRiegler> sr(double value) {
        return Kinds.SCHOPPER_RIEGLER.of(value, "SR");
    }

    @Property(tries = 300, seed = "2026")
    void everyFibreAtEveryBeating(
            @ForAll @IntRange(min = 0, max = 16) int which,
            @ForAll @Scale(6) @DoubleRange(min = 0, max = 100) double number,
            @ForAll @Scale(6) @DoubleRange(min = 0, max = 99) double lower) {
        Fibre fibre = Fibres.all().get(which);
        WaterRetentionModel model = WaterRetentionModel.standard(fibre.scope());
        double value = model.at(sr(number)).value().si();
        assertThat(value).isFinite().isPositive();
        assertThat(model.at(sr(Math.min(lower, number))).value().si()).isLessThanOrEqualTo(value);
        assertThat(Crowding.standard(fibre.scope()).clumpingFrom().si()).isBetween(0.0, 1.0);
        try {
            assertThat(BeatingModel.standard(fibre.scope()).after(hours(number)).si())
                    .isBetween(0.0, 100.0);
        } catch (Refused refused) {
            assertThat(refused.code()).isEqualTo("assumption.missing");
        }
    }

    @Property(tries = 300, seed = "2026")
    void everyDrainabilityTellsAResistanceOrIsRefused(
            @ForAll @Scale(6) @DoubleRange(min = 0, max = 100) double number,
            @ForAll @Scale(6) @DoubleRange(min = 0, max = 1000) double freeness) {
        DrainabilityModel model = DrainabilityModel.standard();
        List<Amount<?>> values = new ArrayList<>();
        for (Runnable asked : List.<Runnable>of(
                () -> values.add(model.resistance(sr(number)).high()),
                () -> values.add(model.resistanceOfCanadian(CanadianFreeness.millilitres(freeness))
                        .low()),
                () -> values.add(model.canadianOf(sr(number)).value().high()),
                () -> values.add(model.schopperRieglerOf(CanadianFreeness.millilitres(freeness))
                        .value()
                        .low()))) {
            try {
                asked.run();
            } catch (Refused refused) {
                assertThat(refused.code()).isIn("quantity.range", "drainability.stopwatch");
                assertThat(refused.getMessage()).doesNotContain("NaN");
            }
        }
        assertThat(values).allSatisfy(value -> assertThat(value.si()).isFinite().isNotNegative());
    }

    @Property(tries = 300, seed = "2026")
    void readingsGiveARateOrAreRefused(
            @ForAll @IntRange(min = 1, max = 5) int count,
            @ForAll @Scale(6) @DoubleRange(min = 0, max = 100) double first,
            @ForAll @Scale(6) @DoubleRange(min = -10, max = 20) double step,
            @ForAll @Scale(6) @DoubleRange(min = 0, max = 10) double error) {
        Scope here = Scope.of("abaca").on("big beater");
        List<BeatingRecord.Point<SchopperRiegler>> readings = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            readings.add(BeatingRecord.Point.of(
                    Reading.of(hours(0.5 + i), hours(0.05)),
                    Reading.of(sr(Math.max(0, Math.min(100, first + step * i))), sr(error))));
        }
        try {
            Assumptions own = BeatingModel.calibrate(Assumptions.standard(), here, readings);
            Assumption rate = own.get("beating.rate", here);
            assertThat(rate.likely()).isFinite().isPositive();
            assertThat(rate.low()).isFinite().isPositive().isLessThan(rate.likely());
            assertThat(rate.high()).isFinite().isGreaterThan(rate.likely());
            assertThat(BeatingModel.from(own, here).after(hours(1)).si()).isBetween(0.0, 100.0);
        } catch (Refused refused) {
            assertThat(refused.code()).startsWith("beating.");
        }
    }

    @Property(tries = 300, seed = "2026")
    void aDoseForAShareGivesThatShare(
            @ForAll @Scale(6) @DoubleRange(min = 0, max = 0.9) double share,
            @ForAll Additive.Purpose purpose,
            @ForAll Circumstance circumstance,
            @ForAll @IntRange(min = 0, max = 16) int which) {
        RetentionModel model = RetentionModel.from(
                Assumptions.standard(), Fibres.all().get(which).scope());
        Additive additive = Additive.of("anything at all", purpose);
        try {
            AdditiveDose dose = model.doseForShare(additive, Kinds.SHARE.of(share, "1"), circumstance);
            assertThat(model.shareOfSheet(dose, circumstance).si()).isCloseTo(share, relative(share + 1e-12, 1e-9));
        } catch (Refused refused) {
            assertThat(refused.code()).isEqualTo("quantity.range");
            assertThat(share).isGreaterThan(0.05);
        }
    }
}
