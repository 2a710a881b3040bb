package org.papermath.plan;

import static org.papermath.plan.PlainNumbers.grams;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Time;
import javax.measure.quantity.Volume;
import org.papermath.engine.PreparingStock;
import org.papermath.evidence.Estimate;
import org.papermath.fibre.Alkali;
import org.papermath.fibre.Fibre;
import org.papermath.order.Recipe;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Dose;
import org.papermath.quantity.Kinds;

/** What is cooked, and what should come of it. */
public final class CookingPlan {
    private record Values(List<Pot> pots, Amount<Time> time, Estimate<Mass> stuff) {}

    private final Values values;

    private CookingPlan(Values values) {
        this.values = values;
    }

    static Optional<CookingPlan> of(PlainNumbers in, int b, Recipe recipe) {
        PreparingStock.Setting set = in.settings().stock(b).whole();
        if (set.pots().isEmpty() || in.beatenAt(b) != b) {
            return Optional.empty();
        }
        PreparingStock stage = in.engine().stock(b);
        List<Pot> pots = new ArrayList<>();
        for (PreparingStock.Pot pot : set.pots()) {
            pots.add(new Pot(new Pot.Filled(
                    recipe.furnish().fibres().get(pot.fibre()),
                    grams(pot.raw()),
                    stage.alkali(pot.fibre()).orElseThrow(),
                    Kinds.DOSE.ofSi(stage.alkaliDose(pot.fibre()), "%"),
                    grams(pot.alkali()),
                    Kinds.VOLUME.ofSi(pot.liquor(), "L"),
                    grams(pot.stuff()),
                    grams(pot.wet()))));
        }
        return Optional.of(new CookingPlan(new Values(
                List.copyOf(pots),
                Kinds.TIME.ofSi(set.pots().get(0).time(), "h"),
                in.estimates().of(Kinds.MASS, PreparingStock.COOKED, b))));
    }

    /** {@return each fibre that is cooked, in a pot of its own} */
    public List<Pot> pots() {
        return values.pots;
    }

    /** {@return how long each is at the boil; it is ended by feel, when a strand comes apart} */
    public Amount<Time> time() {
        return values.time;
    }

    /** {@return oven-dry stuff that should come out of all pots} */
    public Estimate<Mass> stuff() {
        return values.stuff;
    }

    @Override
    public String toString() {
        return values.pots.stream().map(Pot::toString).collect(Collectors.joining("; ")) + ", " + values.time
                + " at the boil";
    }

    /** One fibre to cook. */
    public static final class Pot {
        private record Filled(
                Fibre fibre,
                Amount<Mass> ovenDry,
                Alkali alkali,
                Amount<Dose> dose,
                Amount<Mass> pureAlkali,
                Amount<Volume> liquor,
                Amount<Mass> stuff,
                Amount<Mass> wet) {}

        private final Filled filled;

        private Pot(Filled filled) {
            this.filled = filled;
        }

        /** {@return the fibre} */
        public Fibre fibre() {
            return filled.fibre;
        }

        /** {@return the oven-dry fibre that goes in} */
        public Amount<Mass> ovenDry() {
            return filled.ovenDry;
        }

        /** {@return what it is cooked in} */
        public Alkali alkali() {
            return filled.alkali;
        }

        /** {@return pure alkali over the oven-dry fibre that goes in} */
        public Amount<Dose> dose() {
            return filled.dose;
        }

        /** {@return pure alkali to weigh} */
        public Amount<Mass> pureAlkali() {
            return filled.pureAlkali;
        }

        /** {@return the water to cook in} */
        public Amount<Volume> liquor() {
            return filled.liquor;
        }

        /** {@return the oven-dry stuff it is planned to leave} */
        public Amount<Mass> stuff() {
            return filled.stuff;
        }

        /** {@return what that weighs, rinsed and squeezed out by hand} */
        public Amount<Mass> wet() {
            return filled.wet;
        }

        @Override
        public String toString() {
            return filled.ovenDry + " oven-dry " + filled.fibre.name() + " in " + filled.liquor + " with "
                    + filled.pureAlkali + " of " + filled.alkali;
        }
    }
}
