package org.papermath.benchmark;

import static org.papermath.quantity.Amounts.grams;
import static org.papermath.quantity.Amounts.hours;
import static org.papermath.quantity.Amounts.minutes;
import static org.papermath.quantity.Amounts.mm;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import javax.measure.Quantity;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Reading;
import org.papermath.fibre.Fibres;
import org.papermath.fibre.Furnish;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.SchopperRiegler;
import org.papermath.record.BatchRecord;
import org.papermath.record.Calibration;
import org.papermath.record.Measurement;

/**
 * Calibration by as many records as scopes, each of another beater, vat and press with three readings, and by the same
 * records all of one studio: the time has to grow with their number and no faster.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 5, time = 1)
@org.openjdk.jmh.annotations.Measurement(iterations = 5, time = 1)
@Fork(2)
public class CalibrationBenchmark {
    /** The number of records. */
    @Param({"10", "100", "1000", "10000"})
    int scopes;

    private List<BatchRecord> apart = List.of();
    private List<BatchRecord> together = List.of();

    /** Makes the records. */
    @Setup
    public void records() {
        apart = records(scopes, true);
        together = records(scopes, false);
    }

    /** Every record has scopes of its own. */
    @Benchmark
    public Calibration manyScopes() {
        return Calibration.of(Assumptions.standard(), apart, List.of());
    }

    /** All records speak of the same scopes. */
    @Benchmark
    public Calibration oneScope() {
        return Calibration.of(Assumptions.standard(), together, List.of());
    }

    static List<BatchRecord> records(int count, boolean apart) {
        List<BatchRecord> records = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            String of = apart ? " " + i : "";
            double scatter = 1 + 0.01 * (i * 7 % 5 - 2);
            records.add(BatchRecord.builder("batch " + i, LocalDate.of(2026, 3, 14))
                    .recipe("grey" + of, Furnish.of(Fibres.ABACA))
                    .beater("beater" + of)
                    .vat("vat" + of)
                    .press("press" + of)
                    .dryer("boards" + of)
                    .add(
                            new Measurement.NumberRead(read(hours(3)), read(SchopperRiegler.degrees(40 * scatter))),
                            new Measurement.WeighedSheet(
                                    read(grams(80)),
                                    Optional.of(read(grams(34 * scatter))),
                                    read(grams(12)),
                                    read(mm(300)),
                                    read(mm(400))),
                            new Measurement.Pressed(
                                    Optional.empty(), read(Kinds.SHEET_PRESSURE.of(0.4, "MPa")), read(minutes(30))))
                    .build());
        }
        return records;
    }

    private static <Q extends Quantity<Q>> Reading<Q> read(Amount<Q> value) {
        return Reading.of(value, value.kind().ofSi(0.02 * value.si()));
    }
}
