package org.papermath.benchmark;

import static org.papermath.quantity.Amounts.celsius;
import static org.papermath.quantity.Amounts.grams;
import static org.papermath.quantity.Amounts.hours;
import static org.papermath.quantity.Amounts.litres;
import static org.papermath.quantity.Amounts.mm;
import static org.papermath.quantity.Amounts.shortTons;

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
import org.papermath.air.Air;
import org.papermath.card.MakingCard;
import org.papermath.drying.Dryer;
import org.papermath.envelope.EnvelopeStyle;
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
 * A plan without bands and one with bands, in the same run: the second may cost at most 1.3 times (2k + 1) of the
 * first, for the k assumptions it varies.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Warmup(iterations = 5, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(2)
public class PlanBenchmark {
    private final Order order = order();
    private final Studio studio = studio();

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
                        "grey", Furnish.of(Share.percent(70), Fibres.COTTON_RAG, Share.percent(30), Fibres.FLAX_RAW))
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
