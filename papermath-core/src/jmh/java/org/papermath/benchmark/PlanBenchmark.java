package org.papermath.benchmark;

import static org.papermath.quantity.Amounts.celsius;
import static org.papermath.quantity.Amounts.grams;
import static org.papermath.quantity.Amounts.hours;
import static org.papermath.quantity.Amounts.litres;
import static org.papermath.quantity.Amounts.mm;
import static org.papermath.quantity.Amounts.shortTons;

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
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import org.papermath.air.Air;
import org.papermath.card.MakingCard;
import org.papermath.drying.Dryer;
import org.papermath.engine.BatchFigure;
import org.papermath.engine.Engine;
import org.papermath.engine.Figures;
import org.papermath.engine.Known;
import org.papermath.engine.PieceFigure;
import org.papermath.engine.Settings;
import org.papermath.engine.Values;
import org.papermath.envelope.EnvelopeStyle;
import org.papermath.evidence.Assumption;
import org.papermath.fibre.BoughtFibre;
import org.papermath.fibre.Fibres;
import org.papermath.fibre.Furnish;
import org.papermath.format.Formats;
import org.papermath.mould.Mould;
import org.papermath.order.Order;
import org.papermath.order.Piece;
import org.papermath.order.Recipe;
import org.papermath.order.Studio;
import org.papermath.plan.MakingPlan;
import org.papermath.press.Felts;
import org.papermath.press.Press;
import org.papermath.pulp.Additive;
import org.papermath.pulp.Beater;
import org.papermath.quantity.Dose;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.RelativeHumidity;
import org.papermath.quantity.Share;
import org.papermath.vat.Vat;

/**
 * A plan and the parts it is made of beside {@link Yardstick}, the same forecast written by hand for this one order, in
 * the same run. With Y for the time of the yardstick: a forecast may take 2.5 Y, a bare plan 13 Y, a plan with bands
 * 110 Y.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Warmup(iterations = 5, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(2)
public class PlanBenchmark {
    /** How far yardstick and engine may be apart, of the figure. */
    private static final double SAME = 1e-9;

    private final Order order = order();
    private final Studio studio = studio();
    private final Engine engine = Engine.of(order, studio);
    private final Settings settings = engine.decide(engine.likely());
    private final Yardstick yardstick = new Yardstick(order, studio, engine, settings);

    /** The likely values, and those of a band: one assumption at a time at either end. */
    private final List<Values> points = new ArrayList<>();

    /** The same for the yardstick. */
    private final List<double[]> plainPoints = new ArrayList<>();

    private int next;

    /** Makes the points, and refuses to go on where yardstick and engine do not tell the same at one of them. */
    @Setup
    public void points() {
        double[] likely = new double[Yardstick.ASSUMPTIONS.size()];
        for (Assumption row : engine.known().rows()) {
            put(likely, row, row.likelySi());
        }
        points.add(engine.likely());
        plainPoints.add(likely);
        for (Known.Varied one : engine.varied()) {
            for (double end : new double[] {one.row().lowSi(), one.row().highSi()}) {
                points.add(engine.likely().with(one.slot(), end));
                double[] plain = likely.clone();
                put(plain, one.row(), end);
                plainPoints.add(plain);
            }
        }
        for (int i = 0; i < points.size(); i++) {
            requireSame(yardstick.forecast(plainPoints.get(i)), engine.forecast(settings, points.get(i)), i);
        }
    }

    /** An assumption may enter more than once, as that of two fibres does. */
    private static void put(double[] plain, Assumption row, double value) {
        for (int i = 0; i < plain.length; i++) {
            if (Yardstick.ASSUMPTIONS.get(i).equals(row.key())) {
                plain[i] = value;
            }
        }
    }

    private static void requireSame(double[] plain, Figures figures, int point) {
        if (figures.size() != plain.length) {
            throw new IllegalStateException("the yardstick has " + plain.length + " figures of " + figures.size());
        }
        int at = 0;
        for (BatchFigure figure : Yardstick.BATCH) {
            requireSame(plain[at++], figures.of(figure, 0), figure + " at point " + point);
        }
        for (int p = 0; at < plain.length - 1; p++) {
            for (PieceFigure figure : Yardstick.PIECE) {
                requireSame(plain[at++], figures.of(figure, p), figure + " of piece " + p + " at point " + point);
            }
        }
        requireSame(plain[at], figures.hours(), "hours at point " + point);
    }

    private static void requireSame(double plain, double engine, String figure) {
        boolean same = Double.compare(plain, engine) == 0 || Math.abs(plain - engine) <= SAME * Math.abs(engine);
        if (!same) {
            throw new IllegalStateException(
                    "yardstick and engine are apart in " + figure + ": " + plain + ", " + engine);
        }
    }

    private int point() {
        next = next + 1 < points.size() ? next + 1 : 0;
        return next;
    }

    /** Y: the forecast as written by hand, every time at other values. */
    @Benchmark
    public double[] yardstick() {
        return yardstick.forecast(plainPoints.get(point()));
    }

    /** The forecast of the engine at the same values, of a job that was read once. */
    @Benchmark
    public Figures forecast() {
        return engine.forecast(settings, points.get(point()));
    }

    /** Reads the job. */
    @Benchmark
    public Engine read() {
        return Engine.of(order, studio);
    }

    /** Decides what to do. */
    @Benchmark
    public Settings decide() {
        return engine.decide(engine.likely());
    }

    /** Plans at the likely values only. */
    @Benchmark
    public MakingPlan bare() {
        return MakingPlan.withoutBands(order, studio);
    }

    /** Plans with bands. */
    @Benchmark
    public MakingPlan withBands() {
        return MakingPlan.of(order, studio);
    }

    /** Plans with bands and reads every notice and the card. */
    @Benchmark
    public String withBandsAndCard() {
        return MakingCard.of(MakingPlan.of(order, studio)).toString();
    }

    private static Order order() {
        Recipe recipe = Recipe.of(
                        "grey",
                        Furnish.of(Share.percent(70), Fibres.COTTON_RAG, Share.percent(30), Fibres.FLAX_RAW)
                                .bought(Fibres.FLAX_RAW, BoughtFibre.Form.HALF_STUFF))
                .beating(hours(3))
                .additive(Additive.of("pigment", Additive.Purpose.PIGMENT), Dose.percent(1.2))
                .additive(Additive.of("aid", Additive.Purpose.RETENTION_AID), Dose.percent(0.1))
                .additive(Additive.of("carbonate", Additive.Purpose.CARBONATE), Dose.percent(3))
                .build();
        return Order.of("benchmark")
                .recipe(recipe)
                .piece(Piece.of("leaflet", 70, "grey")
                        .size(Formats.ISO_A5)
                        .grammage(Grammage.gsm(130))
                        .folds(1)
                        .build())
                .piece(Piece.of("card", 96, "grey")
                        .size(mm(55), mm(90))
                        .grammage(Grammage.gsm(240))
                        .build())
                .piece(Piece.of("envelope", 40, "grey")
                        .grammage(Grammage.gsm(95))
                        .envelopeFor("leaflet", EnvelopeStyle.SIDE_SEAM)
                        .build())
                .build();
    }

    private static Studio studio() {
        return Studio.of("benchmark")
                .beater(Beater.of("beater", litres(45), grams(900)))
                .vat(Vat.of("vat", litres(70)))
                .mould(Mould.of("large", mm(380), mm(560)))
                .mould(Mould.of("small", mm(240), mm(310)))
                .press(Press.of("press", shortTons(20), mm(450), mm(600)))
                .felts(Felts.of(mm(450), mm(620), Grammage.gsm(500), 25))
                .dryer(Dryer.boards("boards", 24))
                .room(Air.of(celsius(18), RelativeHumidity.percent(58)))
                .build();
    }
}
