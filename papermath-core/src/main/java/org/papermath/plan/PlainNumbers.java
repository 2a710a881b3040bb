package org.papermath.plan;

import java.util.function.Supplier;
import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Volume;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.papermath.engine.Accounts;
import org.papermath.engine.Engine;
import org.papermath.engine.PieceFigure;
import org.papermath.engine.Settings;
import org.papermath.order.Order;
import org.papermath.order.Studio;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kinds;

/** What an order comes to in a studio, in plain numbers: each part of a plan is read from them. */
record PlainNumbers(
        Order order,
        Studio studio,
        Engine engine,
        Settings settings,
        Estimates estimates,
        Accounts accounts,
        Asked asked) {
    /** The normal distribution of mean 0 and deviation 1. */
    static final NormalDistribution STANDARD = NormalDistribution.of(0, 1);

    /** Normal quantile of the 95 % point: a band of nine in ten is this many standard deviations to each side. */
    static final double NINE_IN_TEN = STANDARD.inverseCumulativeProbability(0.95);

    static Amount<Mass> grams(double si) {
        return Kinds.MASS.ofSi(si, "g");
    }

    static Amount<Mass> kilograms(double si) {
        return Kinds.MASS.ofSi(si, "kg");
    }

    static Amount<Length> mm(double si) {
        return Kinds.LENGTH.ofSi(si, "mm");
    }

    Amount<Volume> litresOfWater(double mass) {
        return Kinds.VOLUME.ofSi(mass / engine.workshop().waterDensity(), "L");
    }

    String recipeName(int batch) {
        return Engine.usedRecipes(order).get(batch).name();
    }

    /** The batch that tells the cooking and the loads: itself, or the first that stuff it shares is beaten for. */
    int beatenAt(int batch) {
        for (int b : engine.beatenWith(batch)) {
            if (settings.stock(b).isBeaten()) {
                return b;
            }
        }
        return batch;
    }

    /** Litres of the stock a piece is made from. */
    Amount<Volume> litresOfStock(double mass, int p) {
        return Kinds.VOLUME.ofSi(mass / settings.stock(engine.piece(p).batch()).stockDensity(), "L");
    }

    <T> Stage<T> known(PieceFigure figure, int p, String code, String reason, Supplier<T> value) {
        return estimates.isKnown(figure, p) ? Stage.done(value.get()) : Stage.notDone(code, reason);
    }
}
