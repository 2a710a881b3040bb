package org.papermath.plan;

import static org.papermath.plan.PlainNumbers.grams;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Time;
import org.jspecify.annotations.Nullable;
import org.papermath.colour.ColourTrace;
import org.papermath.colour.Reflectance;
import org.papermath.colour.WantedColour;
import org.papermath.engine.Engine;
import org.papermath.evidence.Scope;
import org.papermath.numeric.Rounding;
import org.papermath.order.Recipe;
import org.papermath.pulp.Additive;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kinds;

/**
 * How a batch comes to its colour: a part of each pigment first, then a trial swatch, dried and judged, then the rest as the
 * swatch asks for it; and what the batch before leaves in it.
 */
public final class ColourPlan {
    private final WantedColour wanted;
    private final List<Pigment> pigments;
    private final int trials;
    private final Amount<Time> drying;
    private final @Nullable String before;
    private final double left;

    /** A pigment of it on the scale. */
    public sealed interface Pigment permits FoundPigment {
        /** {@return what is weighed} */
        Additive additive();

        /** {@return product for each load before the first trial swatch} */
        Amount<Mass> first();

        /** {@return product of the dose that is kept back for each load until the swatch is judged} */
        Amount<Mass> keptBack();
    }

    private record FoundPigment(Additive additive, Amount<Mass> first, Amount<Mass> keptBack) implements Pigment {
        @Override
        public String toString() {
            return additive.name() + ": " + first + " first, " + keptBack + " kept back";
        }
    }

    private ColourPlan(
            WantedColour wanted,
            List<Pigment> pigments,
            int trials,
            Amount<Time> drying,
            @Nullable String before,
            double left) {
        this.wanted = wanted;
        this.pigments = List.copyOf(pigments);
        this.trials = trials;
        this.drying = drying;
        this.before = before;
        this.left = left;
    }

    static Optional<ColourPlan> of(PlainNumbers in, int b, Recipe recipe, List<AdditiveToWeigh> additives) {
        if (recipe.colour().isEmpty()) {
            return Optional.empty();
        }
        double part = in.asked().get("colour.first-part", Scope.GENERAL).likelySi();
        double step = in.studio().fineScaleStep().si();
        List<Pigment> pigments = new ArrayList<>();
        for (AdditiveToWeigh one : additives) {
            if (one.additive().purpose() == Additive.Purpose.PIGMENT) {
                double all = one.productEach().si();
                double first = Math.min(all, Rounding.roundTo(part * all, step));
                pigments.add(new FoundPigment(one.additive(), grams(first), grams(all - first)));
            }
        }
        WantedColour wanted = recipe.colour().get();
        List<Recipe> recipes = Engine.usedRecipes(in.order());
        List<Integer> turns = turns(in, recipes);
        int turn = turns.indexOf(b);
        String before = null;
        double left = 0;
        if (turn > 0) {
            Recipe earlier = recipes.get(turns.get(turn - 1));
            if (earlier.colour().isPresent()) {
                before = earlier.name();
                left = ColourTrace.left(
                        bands(earlier.colour().get()),
                        bands(wanted),
                        in.studio().assumptions());
            }
        }
        return Optional.of(new ColourPlan(
                wanted,
                pigments,
                (int) Math.round(in.asked().get("colour.trials", Scope.GENERAL).likelySi()),
                Kinds.TIME.ofSi(
                        in.asked().get("colour.trial-drying", Scope.GENERAL).likelySi(), "min"),
                before,
                left));
    }

    private static Reflectance bands(WantedColour colour) {
        return Reflectance.ofColour(colour.lab().xyz());
    }

    /**
     * The batches as they are made: those without colour first, then from light to dark; as they stand where nothing is
     * coloured, or where stuff is beaten for several at the first of them and that is not the lightest.
     */
    static List<Integer> turns(PlainNumbers in, List<Recipe> recipes) {
        List<Integer> asTheyStand = IntStream.range(0, recipes.size()).boxed().toList();
        List<Integer> lightFirst = asTheyStand.stream()
                .sorted(Comparator.comparingDouble((Integer b) ->
                        recipes.get(b).colour().map(one -> -one.lab().l()).orElse(-200.0)))
                .toList();
        boolean beatenBefore =
                asTheyStand.stream().allMatch(b -> lightFirst.indexOf(in.beatenAt(b)) <= lightFirst.indexOf(b));
        return beatenBefore ? lightFirst : asTheyStand;
    }

    /** {@return the colour of the dried sheets} */
    public WantedColour wanted() {
        return wanted;
    }

    /** {@return the pigments, as they are added; none where the recipe has none} */
    public List<Pigment> pigments() {
        return pigments;
    }

    /** {@return how many trial swatches are reckoned with, for each load that is coloured} */
    public int trials() {
        return trials;
    }

    /** {@return how long a swatch dries before it is judged; wet it is darker} */
    public Amount<Time> drying() {
        return drying;
    }

    /** {@return the coloured batch that is made just before this one, the lighter first; empty for the first} */
    public Optional<String> before() {
        return Optional.ofNullable(before);
    }

    /** {@return by how much, as ΔE00, what is left of the batch before after a wash moves this one; 0 for the first} */
    public double leftOfBefore() {
        return left;
    }

    @Override
    public String toString() {
        return wanted + "; "
                + (pigments.isEmpty()
                        ? "no pigment"
                        : String.join(
                                ", ", pigments.stream().map(Object::toString).toList()));
    }
}
