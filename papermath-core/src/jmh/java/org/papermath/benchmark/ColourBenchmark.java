package org.papermath.benchmark;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import org.papermath.colour.ColourMatch;
import org.papermath.colour.Pigment;
import org.papermath.colour.PigmentedPulp;
import org.papermath.colour.PredictedColour;
import org.papermath.colour.PulpColour;
import org.papermath.colour.Reflectance;
import org.papermath.colour.SwatchLadder;
import org.papermath.equation.KubelkaMunk;
import org.papermath.evidence.Assumptions;
import org.papermath.pulp.Additive;
import org.papermath.pulp.AdditiveDose;
import org.papermath.pulp.RetentionModel.Circumstance;
import org.papermath.quantity.Dose;

/**
 * Colour with six invented pigments in 31 bands, beside {@link Yardstick} in the same run: a ladder of four swatches, a
 * prediction with its band, and matches of 1, 10 and 100 colours, whose time has to grow with their number and no faster.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Warmup(iterations = 6, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(2)
public class ColourBenchmark {
    private static final int BANDS = 31;
    private static final List<String> NAMES = List.of("yellow", "red", "violet", "blue", "green", "black");
    private static final double[] CENTRES = {430, 520, 570, 620, 660, 550};
    private static final double[] WIDTHS = {45, 45, 40, 50, 40, 400};
    private static final double[] RUNGS = {0.003, 0.01, 0.03, 0.08};

    private final YardstickJob job = new YardstickJob();
    private final Assumptions assumptions = Assumptions.standard();
    private final PulpColour pulp = PulpColour.of(swatch(new double[NAMES.size()]));
    private final PigmentedPulp palette = palette();
    private final List<Reflectance> targets = targets();
    private final List<AdditiveDose> doses = List.of(
            AdditiveDose.of(palette.pigments().get(0).additive(), Dose.percent(1.5)),
            AdditiveDose.of(palette.pigments().get(1).additive(), Dose.percent(0.7)),
            AdditiveDose.of(palette.pigments().get(5).additive(), Dose.percent(0.4)));

    private int next;

    /** What doses of the pigments send back, by the law. */
    private static Reflectance swatch(double[] doses) {
        double[] values = new double[BANDS];
        for (int band = 0; band < BANDS; band++) {
            double at = 400 + 10 * band;
            double ratio = 0.02 + 0.06 * Math.exp(-(at - 400) / 60);
            for (int p = 0; p < doses.length; p++) {
                double off = (at - CENTRES[p]) / WIDTHS[p];
                ratio += doses[p] * (4 + 120 * Math.exp(-off * off / 2));
            }
            values[band] = KubelkaMunk.reflectance(ratio);
        }
        return Reflectance.of(400, 10, values);
    }

    private SwatchLadder ladder(int pigment) {
        SwatchLadder ladder = SwatchLadder.of(Additive.of(NAMES.get(pigment), Additive.Purpose.PIGMENT), pulp);
        for (double rung : RUNGS) {
            double[] only = new double[NAMES.size()];
            only[pigment] = rung;
            ladder = ladder.swatch(Dose.percent(100 * rung), swatch(only));
        }
        return ladder;
    }

    private PigmentedPulp palette() {
        PigmentedPulp all = PigmentedPulp.of(pulp, assumptions, Circumstance.WITH_AID);
        for (int p = 0; p < NAMES.size(); p++) {
            all = all.with(ladder(p).pigment(assumptions));
        }
        return all;
    }

    /** A hundred colours of one to three pigments, the same in every run. */
    private static List<Reflectance> targets() {
        List<Reflectance> all = new ArrayList<>();
        for (int i = 0; i < 100; i++) {
            double[] some = new double[NAMES.size()];
            for (int k = 0; k <= i % 3; k++) {
                some[(i + 2 * k) % NAMES.size()] += 0.002 + 0.0005 * (i * 7 % 50);
            }
            all.add(swatch(some));
        }
        return all;
    }

    private List<ColourMatch> matches(int count) {
        List<ColourMatch> found = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            found.add(match());
        }
        return found;
    }

    /** Y: the forecast as written by hand, every time at other values. */
    @Benchmark
    public double[] yardstick() {
        next = next + 1 < job.points.size() ? next + 1 : 0;
        return job.yardstick.forecast(job.points.get(next).plain());
    }

    /** The constants of a pigment and their errors, of four swatches. */
    @Benchmark
    public Pigment ladder() {
        next = (next + 1) % NAMES.size();
        return ladder(next).pigment(assumptions);
    }

    /** The colour of three pigments, and how far off it may come out. */
    @Benchmark
    public PredictedColour prediction() {
        return palette.predict(doses);
    }

    /** One colour, every time another. */
    @Benchmark
    public ColourMatch match() {
        next = (next + 1) % targets.size();
        return palette.match(targets.get(next));
    }

    /** Ten colours. */
    @Benchmark
    public List<ColourMatch> tenMatches() {
        return matches(10);
    }

    /** A hundred colours. */
    @Benchmark
    public List<ColourMatch> hundredMatches() {
        return matches(100);
    }
}
