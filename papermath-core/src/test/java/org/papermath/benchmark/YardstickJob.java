package org.papermath.benchmark;

import static org.papermath.quantity.Amounts.celsius;
import static org.papermath.quantity.Amounts.grams;
import static org.papermath.quantity.Amounts.hours;
import static org.papermath.quantity.Amounts.litres;
import static org.papermath.quantity.Amounts.mm;
import static org.papermath.quantity.Amounts.shortTons;

import java.util.ArrayList;
import java.util.List;
import org.papermath.air.Air;
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
import org.papermath.mould.Deckle;
import org.papermath.mould.Mould;
import org.papermath.order.Order;
import org.papermath.order.Piece;
import org.papermath.order.Recipe;
import org.papermath.order.Studio;
import org.papermath.press.Felts;
import org.papermath.press.Press;
import org.papermath.pulp.Additive;
import org.papermath.pulp.Beater;
import org.papermath.quantity.Dose;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.RelativeHumidity;
import org.papermath.quantity.Share;
import org.papermath.vat.Vat;

/** The one order that {@link Yardstick} is written for, read by the engine, and the values both are worked out at. */
final class YardstickJob {
    /** How far they may be apart, of the figure: each adds up in an order of its own. */
    private static final double SAME = 1e-9;

    final Order order = order();
    final Studio studio = studio();
    final Engine engine = Engine.of(order, studio);
    final Settings settings = engine.decide(engine.likely());
    final Yardstick yardstick = new Yardstick(order, studio, engine, settings);

    /** The likely values, and those of a band: one assumption at a time at either end. */
    final List<Point> points = new ArrayList<>();

    /**
     * Values of the assumptions.
     *
     * @param name what is not likely in them
     * @param values as the engine has them
     * @param plain as the yardstick has them
     */
    record Point(String name, Values values, double[] plain) {}

    YardstickJob() {
        double[] likely = new double[Yardstick.ASSUMPTIONS.size()];
        for (Assumption row : engine.known().rows()) {
            put(likely, row, row.likelySi());
        }
        points.add(new Point("the likely values", engine.likely(), likely));
        for (Known.Varied one : engine.varied()) {
            for (double end : new double[] {one.lows()[0], one.highs()[0]}) {
                double[] plain = likely.clone();
                put(plain, one.row(), end);
                points.add(
                        new Point(one.row().key() + " = " + end, engine.likely().with(one.slots()[0], end), plain));
            }
        }
    }

    /** Where yardstick and engine do not give the same, in words. */
    List<String> differences() {
        List<String> found = new ArrayList<>();
        for (Point point : points) {
            Figures figures = engine.forecast(settings, point.values);
            double[] plain = yardstick.forecast(point.plain);
            int at = 0;
            for (BatchFigure figure : Yardstick.BATCH) {
                compare(plain[at++], figures.of(figure, 0), figure + " at " + point.name, found);
            }
            for (int p = 0; p < engine.pieces(); p++) {
                for (PieceFigure figure : Yardstick.PIECE) {
                    String of = figure + " of piece " + p + " at " + point.name;
                    compare(plain[at++], figures.of(figure, p), of, found);
                }
            }
            compare(plain[at], figures.hours(), "hours of all at " + point.name, found);
        }
        return found;
    }

    private static void compare(double plain, double engine, String figure, List<String> found) {
        boolean same = Double.compare(plain, engine) == 0 || Math.abs(plain - engine) <= SAME * Math.abs(engine);
        if (!same) {
            found.add(figure + ": " + plain + " by hand, " + engine + " of the engine");
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
                .piece(Piece.of("tag", 96, "grey")
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
                .vat(Vat.of("vat", litres(70)).runDownTo(litres(45)))
                .mould(Mould.of("large", mm(380), mm(560)))
                .mould(Mould.of("small", Deckle.of(mm(240), mm(310)).deep(mm(12)))
                        .inTurn(2))
                .press(Press.of("press", shortTons(20), mm(450), mm(600)))
                .felts(Felts.of(mm(450), mm(620), Grammage.gsm(500), 25))
                .dryer(Dryer.boards("boards", 24))
                .room(Air.of(celsius(18), RelativeHumidity.percent(58)))
                .build();
    }
}
