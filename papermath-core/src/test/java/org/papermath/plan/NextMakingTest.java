package org.papermath.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.papermath.quantity.Amounts.mm;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.papermath.drying.Dryer;
import org.papermath.engine.DryingSheets;
import org.papermath.engine.Figure;
import org.papermath.engine.FinishedSheet;
import org.papermath.engine.FormingSheets;
import org.papermath.engine.PieceFigure;
import org.papermath.engine.Rejects;
import org.papermath.evidence.Assumption;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Reading;
import org.papermath.evidence.Role;
import org.papermath.fibre.Fibres;
import org.papermath.fibre.Furnish;
import org.papermath.plan.MeasuredWithErrorsTest.Way;
import org.papermath.record.BatchRecord;
import org.papermath.record.Calibration;
import org.papermath.record.Measurement;
import org.papermath.sheet.Restraint;
import org.papermath.uncertainty.FigureBands;

/**
 * Made-up studios whose makings differ: a constant lies somewhere, each making a little off it, each reading a little off
 * its making. What is calibrated by some makings has to hold the next one nine times in ten, whatever its scatter is; a slip
 * among ten must not spoil it; and ten makings have to leave little that is not known.
 *
 * <p>Only the constant that is read is unknown here, all others are as the table says, so that no band is wide for another
 * reason. {@code -Dpapermath.long=true} tries as many studios as are claimed.
 */
class NextMakingTest {
    private static final Assumptions SHIPPED = Assumptions.standard();
    private static final double FIVE_PERCENT = 1.6448536269514722;
    private static final Furnish ABACA = Furnish.of(Fibres.ABACA);
    private static final int[] MAKINGS = {1, 2, 3, 5, 10};
    private static final int TRIALS = Boolean.getBoolean("papermath.long") ? 2000 : 480;

    /** A way of measuring, the constant it tells, and which reading goes with which constant. */
    private static final class Constant {
        final Way way;
        final Assumptions pinned;
        final Assumption row;
        /** Readings, and the constant each gives, on its scale. */
        final double[] said = new double[GRID];

        final double[] found = new double[GRID];
        /** Standard deviation of what one reading leaves, and of what makings are known to differ by, on that scale. */
        final double reading;

        final double making;
        final double spread;

        private static final int GRID = 61;

        Constant(Way way, String id) {
            this.way = way;
            List<Assumption> given = new ArrayList<>();
            for (Assumption one : SHIPPED.all()) {
                boolean own = one.id().equals(id) || one.id().equals("making." + id);
                if (one.role() == Role.PHYSICAL && one.low() < one.high() && !own) {
                    given.add(one.given(one.scope(), one.likely()));
                }
            }
            pinned = SHIPPED.withAll(given);
            row = exactly(way.value()).own().stream()
                    .filter(one -> one.id().equals(id) && !given.contains(one))
                    .findFirst()
                    .orElseThrow();
            for (int i = 0; i < GRID; i++) {
                said[i] = way.value() * (0.55 + 0.9 * i / (GRID - 1));
                found[i] =
                        row.shape().scaled(exactly(said[i]).get(id, row.scope()).likely());
            }
            Assumption one = Calibration.of(
                            pinned.given("making." + id, row.scope(), 1e-9),
                            List.of(record(0, way.value())),
                            List.of(way.dryer()))
                    .assumptions()
                    .get(id, row.scope());
            reading = (one.shape().scaled(one.high()) - one.shape().scaled(one.low())) / (2 * FIVE_PERCENT);
            Assumption scatter = SHIPPED.makingOf(row).orElseThrow();
            making = scatter.likely() / FIVE_PERCENT;
            spread = Math.log(scatter.high() / scatter.low()) / (2 * FIVE_PERCENT);
        }

        private Assumptions exactly(double value) {
            return Calibration.of(
                            pinned,
                            List.of(way.written()
                                    .as(MeasuredWithErrorsTest.batch(way.furnish(), way.dryer(), "exact"), value, 0)),
                            List.of(way.dryer()))
                    .assumptions();
        }

        /** A making at which something is read. */
        BatchRecord record(int making, double value) {
            return way.written()
                    .as(
                            MeasuredWithErrorsTest.batch(way.furnish(), way.dryer(), "making " + making),
                            value,
                            way.error());
        }

        /** What is read where the constant lies there. */
        double saidAt(double scaled) {
            boolean rising = found[GRID - 1] > found[0];
            int i = 0;
            while (i < GRID - 2 && (rising ? found[i + 1] < scaled : found[i + 1] > scaled)) {
                i++;
            }
            return said[i] + (said[i + 1] - said[i]) * (scaled - found[i]) / (found[i + 1] - found[i]);
        }

        double middle() {
            return row.shape().scaled(row.likely());
        }

        Figure figure() {
            return way.figure().orElseThrow();
        }

        /** What the plan forecasts where the constant lies there. */
        double outcome(double scaled) {
            return way.forecast()
                    .applyAsDouble(
                            pinned.given(row.id(), row.scope(), row.shape().plain(scaled)));
        }

        Calibration calibrated(List<BatchRecord> records) {
            return Calibration.of(pinned, records, List.of(way.dryer()));
        }

        boolean holds(Calibration calibration, double outcome) {
            FigureBands bands = MeasuredWithErrorsTest.bands(calibration.assumptions(), way);
            int at = bands.likely().place((PieceFigure) figure(), 0);
            return bands.low(at) <= outcome && outcome <= bands.high(at);
        }

        @Override
        public String toString() {
            return way.name();
        }
    }

    static List<Constant> constants() {
        return List.of(
                new Constant(MeasuredWithErrorsTest.density(ABACA), "sheet.density-measured"),
                new Constant(MeasuredWithErrorsTest.pressedSolids(ABACA), "web.solids-pressed"),
                new Constant(MeasuredWithErrorsTest.pressed(ABACA), "press.factor"),
                new Constant(MeasuredWithErrorsTest.drain(ABACA), "drainage.resistance-factor"),
                new Constant(MeasuredWithErrorsTest.marks(ABACA), "shrinkage.measured-along"),
                new Constant(MeasuredWithErrorsTest.stack(ABACA), "drying.stack-conductance"));
    }

    private static double covered(boolean slips) {
        List<Constant> constants = constants();
        int held = 0;
        for (int trial = 0; trial < TRIALS; trial++) {
            SplittableRandom random = new SplittableRandom(4242 + 7919L * trial);
            Constant one = constants.get(trial % constants.size());
            int makings = slips ? 10 : MAKINGS[trial / constants.size() % MAKINGS.length];
            double mean = one.middle() + 0.5 * one.making * random.nextGaussian();
            double scatter = one.making * Math.exp(one.spread * random.nextGaussian());
            List<BatchRecord> records = new ArrayList<>();
            int slip = slips ? random.nextInt(makings) : -1;
            for (int i = 0; i < makings; i++) {
                double off = scatter * random.nextGaussian() + one.reading * random.nextGaussian();
                if (i == slip) {
                    off += (random.nextBoolean() ? 8 : -8) * Math.hypot(scatter, one.reading);
                }
                records.add(one.record(i, Math.max(0.1 * one.way.value(), one.saidAt(mean + off))));
            }
            Calibration calibration = one.calibrated(records);
            held += one.holds(calibration, one.outcome(mean + scatter * random.nextGaussian())) ? 1 : 0;
        }
        return (double) held / TRIALS;
    }

    @Test
    void nineInTenOfTheNextMakingsAreHeld() {
        assertThat(covered(false)).isBetween(0.87, 0.93);
    }

    @Test
    void oneSlipAmongTenDoesNotSpoilIt() {
        assertThat(covered(true)).isBetween(0.85, 0.97);
    }

    /** Marks on sheets that dry hung, where they shrink freely. */
    private static Way hung() {
        return new Way(
                "marks on hung sheets",
                ABACA,
                Dryer.loft("loft", 1, 60),
                "measured",
                known -> 0,
                Optional.empty(),
                0.06,
                0.002,
                1,
                false,
                (batch, said, error) -> batch.add(new Measurement.Marks(
                                Restraint.HUNG,
                                Reading.of(mm(200), mm(0.2)),
                                Reading.of(mm(200 * (1 - said)), mm(200 * error)),
                                Reading.of(mm(200), mm(0.2)),
                                Reading.of(mm(200 * (1 - said)), mm(200 * error))))
                        .build());
    }

    /** Figures a maker reads, and the ways that tell what they rest on. */
    static Stream<Arguments> figures() {
        Way stack = MeasuredWithErrorsTest.stack(ABACA);
        List<Way> wet = List.of(
                MeasuredWithErrorsTest.lift(ABACA),
                MeasuredWithErrorsTest.asBought(ABACA, Fibres.ABACA),
                MeasuredWithErrorsTest.drainability(ABACA),
                MeasuredWithErrorsTest.drain(ABACA),
                MeasuredWithErrorsTest.couched(ABACA),
                MeasuredWithErrorsTest.pressed(ABACA));
        List<Way> dry = List.of(
                MeasuredWithErrorsTest.density(ABACA),
                MeasuredWithErrorsTest.marks(ABACA),
                MeasuredWithErrorsTest.moisture(ABACA));
        List<Way> boards = Stream.concat(wet.stream(), dry.stream()).toList();
        List<Way> stacked = Stream.concat(wet.stream(), Stream.of(stack)).toList();
        return Stream.of(
                Arguments.of(FinishedSheet.GRAMMAGE, boards),
                Arguments.of(DryingSheets.SHRINK_ALONG, List.of(hung())),
                Arguments.of(FinishedSheet.CALIPER, boards),
                Arguments.of(FormingSheets.DRAIN, boards),
                Arguments.of(DryingSheets.DRYING, stacked),
                Arguments.of(Rejects.GOOD, boards));
    }

    /** What is not known narrows to a third at least; what makings differ by stays. */
    @ParameterizedTest
    @MethodSource("figures")
    void tenMakingsLeaveAThirdOfWhatIsNotKnown(PieceFigure figure, List<Way> ways) {
        SplittableRandom random = new SplittableRandom(12);
        Dryer dryer = ways.get(ways.size() - 1).dryer();
        List<BatchRecord> records = new ArrayList<>();
        for (int i = 0; i < 10; i++) {
            for (Way way : ways) {
                // A making lies off by as much as a reading does; several sheets of each are weighed dry.
                double off = way.error() * random.nextGaussian();
                int readings = way.name().equals("sheets out of the oven") ? 8 : 1;
                BatchRecord.Builder batch = MeasuredWithErrorsTest.batch(way.furnish(), way.dryer(), "making " + i);
                for (int reading = 1; reading < readings; reading++) {
                    way.written().as(batch, said(way, off, random), way.error());
                }
                records.add(way.written().as(batch, said(way, off, random), way.error()));
            }
            records.add(MeasuredWithErrorsTest.batch(ABACA, dryer, "making " + i)
                    .add(
                            new Measurement.Count(Measurement.Step.FORMING, 100, 5 + random.nextInt(5)),
                            new Measurement.Count(Measurement.Step.PRESSING, 92, 1 + random.nextInt(3)),
                            new Measurement.Count(Measurement.Step.DRYING, 90, 1 + random.nextInt(3)),
                            new Measurement.Count(Measurement.Step.CUTTING, 88, random.nextInt(3)))
                    .build());
        }
        Way plan = new Way(
                "plan",
                ABACA,
                dryer,
                "measured",
                known -> 0,
                Optional.of(figure),
                1,
                1,
                1,
                false,
                (batch, said, error) -> batch.build());
        FigureBands before = MeasuredWithErrorsTest.bands(SHIPPED, plan);
        FigureBands after = MeasuredWithErrorsTest.bands(
                Calibration.of(SHIPPED, records, List.of(dryer)).assumptions(), plan);
        int at = before.likely().place(figure, 0);
        boolean factors = before.low(at) > 0;
        assertThat(unknown(after, at, factors)).as(figure.toString()).isLessThan(unknown(before, at, factors) / 3);
        assertThat(after.fromMakings(at)).isGreaterThan(before.fromMakings(at));
    }

    private static double said(Way way, double off, SplittableRandom random) {
        double reading = off + way.error() * random.nextGaussian();
        return way.value() + Math.max(-2 * way.error(), Math.min(2 * way.error(), reading));
    }

    private static double unknown(FigureBands bands, int at, boolean factors) {
        double width = factors ? Math.log(bands.high(at) / bands.low(at)) : bands.high(at) - bands.low(at);
        return width * Math.sqrt(1 - bands.fromMakings(at));
    }
}
