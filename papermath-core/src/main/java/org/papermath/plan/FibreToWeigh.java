package org.papermath.plan;

import static org.papermath.plan.PlainNumbers.grams;

import java.util.ArrayList;
import java.util.List;
import javax.measure.quantity.Mass;
import org.papermath.engine.PreparingStock;
import org.papermath.fibre.BoughtFibre;
import org.papermath.fibre.Fibre;
import org.papermath.order.Recipe;
import org.papermath.quantity.Amount;

/** Fibre to weigh. */
public final class FibreToWeigh {
    private record Values(Amount<Mass> ovenDry, Amount<Mass> asBought, List<Line> kinds) {}

    private final Values values;

    private FibreToWeigh(Values values) {
        this.values = values;
    }

    static FibreToWeigh of(PlainNumbers in, int b, Recipe recipe, PreparingStock.Setting set) {
        List<Fibre> fibres = recipe.furnish().fibres();
        List<Line> lines = new ArrayList<>();
        double asBought = 0;
        for (int f = 0; f < fibres.size(); f++) {
            asBought += set.asBought()[f];
            lines.add(new Line(new Line.Weighed(
                    fibres.get(f),
                    recipe.furnish().form(fibres.get(f)),
                    grams(in.engine().stock(b).share(f) * set.ovenDry()),
                    grams(set.fromHand()[f]),
                    grams(set.asBought()[f]))));
        }
        return new FibreToWeigh(new Values(grams(set.ovenDry()), grams(asBought), List.copyOf(lines)));
    }

    /** {@return oven-dry fibre in all, what is on hand with it} */
    public Amount<Mass> ovenDry() {
        return values.ovenDry;
    }

    /** {@return what to weigh of bought fibre in all, as it lies there} */
    public Amount<Mass> asBought() {
        return values.asBought;
    }

    /** {@return each fibre} */
    public List<Line> kinds() {
        return values.kinds;
    }

    @Override
    public String toString() {
        return values.asBought + " as bought (" + values.ovenDry + " oven-dry)";
    }

    /** One fibre to weigh. */
    public static final class Line {
        private record Weighed(
                Fibre fibre,
                BoughtFibre.Form form,
                Amount<Mass> ovenDry,
                Amount<Mass> fromHand,
                Amount<Mass> asBought) {}

        private final Weighed weighed;

        private Line(Weighed weighed) {
            this.weighed = weighed;
        }

        /** {@return the fibre} */
        public Fibre fibre() {
            return weighed.fibre;
        }

        /** {@return the form it is bought in} */
        public BoughtFibre.Form form() {
            return weighed.form;
        }

        /** {@return oven-dry fibre of this kind in the beater, what is on hand with it} */
        public Amount<Mass> ovenDry() {
            return weighed.ovenDry;
        }

        /** {@return oven-dry fibre taken from what is on hand, in the form it is bought in} */
        public Amount<Mass> fromHand() {
            return weighed.fromHand;
        }

        /** {@return what to weigh of bought fibre, for all loads} */
        public Amount<Mass> asBought() {
            return weighed.asBought;
        }

        @Override
        public String toString() {
            return weighed.asBought + " " + weighed.fibre.name() + " as bought";
        }
    }
}
