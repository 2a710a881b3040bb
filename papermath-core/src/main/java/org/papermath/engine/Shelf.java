package org.papermath.engine;

import java.util.LinkedHashMap;
import java.util.Map;
import javax.measure.quantity.Mass;
import org.papermath.fibre.Fibre;
import org.papermath.quantity.Amount;

/** Oven-dry fibre on hand, kg: what one batch takes is not there for the next. */
final class Shelf {
    private final Map<Fibre, Double> left = new LinkedHashMap<>();

    Shelf(Map<Fibre, Amount<Mass>> onHand) {
        onHand.forEach((fibre, mass) -> left.put(fibre, mass.si()));
    }

    /** Takes what is wanted of a fibre, or what there is, and returns it. */
    double take(Fibre fibre, double wanted) {
        double there = left.getOrDefault(fibre, 0.0);
        double taken = Math.min(there, wanted);
        if (taken > 0) {
            left.put(fibre, there - taken);
        }
        return taken;
    }
}
