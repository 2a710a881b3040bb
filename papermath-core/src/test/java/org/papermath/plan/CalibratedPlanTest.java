package org.papermath.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.withinPercentage;
import static org.papermath.quantity.Amounts.grams;
import static org.papermath.quantity.Amounts.hours;
import static org.papermath.quantity.Amounts.litres;
import static org.papermath.quantity.Amounts.minutes;
import static org.papermath.quantity.Amounts.mm;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.papermath.evidence.Assumption;
import org.papermath.evidence.Reading;
import org.papermath.evidence.Scope;
import org.papermath.fibre.Fibres;
import org.papermath.fibre.Furnish;
import org.papermath.order.Order;
import org.papermath.order.Piece;
import org.papermath.order.Recipe;
import org.papermath.order.Studio;
import org.papermath.pulp.Additive;
import org.papermath.pulp.RetentionModel;
import org.papermath.quantity.Dose;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Kinds;
import org.papermath.record.BatchRecord;
import org.papermath.record.Calibration;
import org.papermath.record.Measurement;
import org.papermath.sheet.Restraint;

/** A batch made by a plan, weighed and measured, makes the next plan surer. */
class CalibratedPlanTest {
    private static final Studio STUDIO = Sample.studio();
    private static final BatchRecord RECORD = BatchRecord.builder("first fog", LocalDate.of(2026, 5, 2))
            .recipe("fog blue", Sample.recipe().build().furnish())
            .beater("hollander")
            .vat("tub")
            .press("jack press")
            .dryer("boards")
            .add(
                    new Measurement.WeighedSheet(
                            Reading.of(grams(70), grams(0.5)),
                            Optional.of(Reading.of(grams(31), grams(0.1))),
                            Reading.of(grams(11), grams(0.02)),
                            Reading.of(mm(320), mm(1)),
                            Reading.of(mm(420), mm(1))),
                    new Measurement.Marks(
                            Restraint.BOARD,
                            Reading.of(mm(200), mm(0.3)),
                            Reading.of(mm(198), mm(0.3)),
                            Reading.of(mm(200), mm(0.3)),
                            Reading.of(mm(197), mm(0.3))),
                    new Measurement.Count(Measurement.Step.FORMING, 150, 6),
                    new Measurement.Hours(Measurement.Work.SORTING, Reading.of(hours(1), minutes(2)), 150))
            .build();

    @Test
    void planTakesUpWhatWasMeasured() {
        Calibration calibration = Calibration.of(STUDIO.assumptions(), List.of(RECORD), STUDIO.dryers());
        MakingPlan before = MakingPlan.of(Sample.order(), STUDIO);
        MakingPlan after = MakingPlan.of(Sample.order(), STUDIO.withAssumptions(calibration.assumptions()));
        List<String> used =
                after.assumptionsUsed().stream().map(Assumption::key).toList();
        assertThat(calibration.changes())
                .extracting(change -> change.after().key())
                .containsExactlyInAnyOrder(
                        "web.solids-couched[@tub]", "web.solids-pressed[fog blue@boards]",
                        "shrinkage.measured-along[fog blue@boards]", "shrinkage.measured-across[fog blue@boards]",
                        "reject.forming[fog blue]", "labour.sort")
                .allSatisfy(key -> assertThat(used).contains(key));
        // Rejects counted, the good pieces are surer.
        String piece = Sample.order().pieces().get(0).name();
        assertThat(after.piece(piece).counts().good().high().si()
                        / after.piece(piece).counts().good().low().si())
                .isLessThan(before.piece(piece).counts().good().high().si()
                        / before.piece(piece).counts().good().low().si());
        assertThat(calibration
                        .assumptions()
                        .si("web.solids-pressed", Scope.of("fog blue").on("boards")))
                .isCloseTo(Kinds.SOLIDS.of(100 * 11 / 31.0, "%").si(), withinPercentage(1e-6));
    }

    @Test
    void planFindsWhatAJarToldOfAnAdditiveWithACapital() {
        Additive blue = Additive.of("Smalt Blue", Additive.Purpose.PIGMENT);
        BatchRecord record = BatchRecord.builder("second fog", LocalDate.of(2026, 5, 9))
                .add(new Measurement.JarCompared(
                        blue,
                        RetentionModel.Circumstance.PLAIN,
                        Reading.of(grams(20), grams(0.1)),
                        Reading.of(litres(80), litres(1)),
                        Reading.of(Kinds.SOLUTION_STRENGTH.of(0.1, "g/L"), Kinds.SOLUTION_STRENGTH.of(0.01, "g/L"))))
                .build();
        Studio knowing = STUDIO.withAssumptions(
                Calibration.of(STUDIO.assumptions(), List.of(record), List.of()).assumptions());
        Order order = Order.of("reading evening")
                .recipe(Recipe.of("fog blue", Furnish.of(Fibres.ABACA))
                        .beating(hours(2.5))
                        .additive(blue, Dose.percent(2))
                        .build())
                .piece(Piece.of("place card", 40, "fog blue")
                        .size(mm(60), mm(90))
                        .grammage(Grammage.gsm(220))
                        .build())
                .build();
        assertThat(MakingPlan.of(order, knowing).assumptionsUsed())
                .filteredOn(one -> one.id().equals("additive.retention"))
                .singleElement()
                .satisfies(one -> {
                    assertThat(one.key()).isEqualTo("additive.retention[smalt blue]");
                    assertThat(one.likely()).isEqualTo(0.6);
                });
    }
}
