package org.papermath.plan;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Volume;
import org.papermath.numeric.Rounding;
import org.papermath.order.Recipe;
import org.papermath.pulp.AdditiveDose;
import org.papermath.pulp.Pulp;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Consistency;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Limits;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Share;

/**
 * A round of swatches: so many colours by so many weights, poured from a pail or a blender of the stuff of a recipe. What of
 * the pail goes to each colour, what of each additive on the step of the scale, the least fibre on which that is sure, and how
 * a dose is thinned where the scale is too coarse for it. The approved colour becomes the recipe. Immutable.
 *
 * <pre>{@code
 * Recipe white = Recipe.of("white", Furnish.of(Fibres.COTTON_RAG)).beating(hours(3)).build();
 * Additive ochre = Additive.of("ochre", Additive.Purpose.PIGMENT);
 * SwatchRound round = SwatchRound.of(white, Consistency.percent(1.5))
 *         .colour("pale", AdditiveDose.of(ochre, Dose.percent(0.5)))
 *         .colour("full", AdditiveDose.of(ochre, Dose.percent(3)))
 *         .weight(Grammage.gsm(120)).size(mm(100), mm(150)).each(2).scaleStep(grams(0.1)).plan();
 * round.pots().get(1).doses().get(0); // 1 g of ochre thinned to one part in 10
 * }</pre>
 */
public final class SwatchRound {
    /** Thinned no further than to one part in a thousand. */
    private static final int[] THINNED = {10, 100, 1000};

    private final Recipe base;
    private final List<Pot> pots;
    private final Map<String, List<AdditiveDose>> colours;

    /** One colour: what is stirred in one pot, and poured from it. */
    public sealed interface Pot permits FoundPot {
        /** {@return the colour} */
        String colour();

        /** {@return oven-dry fibre that is coloured together: that of its swatches, or the least that can be dosed} */
        Amount<Mass> fibre();

        /** {@return what of the pail that is} */
        Amount<Volume> stock();

        /** {@return what is poured for each swatch, by its grammage} */
        Map<Amount<Grammage>, Amount<Volume>> pours();

        /** {@return what to weigh of each additive, in the order they are given} */
        List<Dosed> doses();

        /** {@return the least fibre on which every dose comes within what is wanted, weighed as it is sold} */
        Amount<Mass> leastFibre();

        /** {@return what of the pot is left when all is poured, oven-dry fibre} */
        Amount<Mass> left();
    }

    private record FoundPot(
            String colour,
            Amount<Mass> fibre,
            Amount<Volume> stock,
            Map<Amount<Grammage>, Amount<Volume>> pours,
            List<Dosed> doses,
            Amount<Mass> leastFibre,
            Amount<Mass> left)
            implements Pot {
        @Override
        public String toString() {
            List<String> poured = new ArrayList<>();
            pours.forEach((weight, volume) -> poured.add(volume + " a swatch of " + weight));
            return colour + ": " + stock + " of the pail (" + fibre + " oven-dry), "
                    + String.join(", ", doses.stream().map(Object::toString).toList()) + "; pour "
                    + String.join(", ", poured);
        }
    }

    /** One additive on the scale. */
    public sealed interface Dosed permits FoundDosed {
        /** {@return the dose wanted} */
        AdditiveDose dose();

        /** {@return what to weigh, on a step of the scale: the additive as sold, or of it thinned} */
        Amount<Mass> weigh();

        /** {@return into how many parts in all it is thinned with water first; 1 for as it is sold} */
        int thinned();

        /** {@return how far the dose may be off for the step of the scale, as a share of it} */
        Amount<Share> off();
    }

    private record FoundDosed(AdditiveDose dose, Amount<Mass> weigh, int thinned, Amount<Share> off) implements Dosed {
        @Override
        public String toString() {
            return weigh + " of " + dose.additive().name() + (thinned > 1 ? " thinned to one part in " + thinned : "");
        }
    }

    /** What a round is to be. */
    public static final class Builder {
        private final Recipe base;
        private final Amount<Consistency> pail;
        private final Map<String, List<AdditiveDose>> colours = new LinkedHashMap<>();
        private final List<Amount<Grammage>> weights = new ArrayList<>();
        private double area;
        private int each = 1;
        private double step = 1e-4;
        private double sure = 0.05;
        private double retention = 1;

        private Builder(Recipe base, Amount<Consistency> pail) {
            this.base = base;
            this.pail = pail;
        }

        /**
         * Adds a colour.
         *
         * @param name what it is called, each once
         * @param doses its additives, in the order they are given; those of the recipe come before them
         * @return this builder
         * @throws Refused if the name is blank or was given before
         */
        public Builder colour(String name, AdditiveDose... doses) {
            Objects.requireNonNull(name, "name");
            Objects.requireNonNull(doses, "doses");
            if (name.isBlank() || colours.containsKey(name)) {
                throw Refused.of(
                        "swatch.name",
                        "swatches: the colour \"" + name + "\" " + (name.isBlank() ? "has no name" : "is given twice")
                                + ". Name each, and once.",
                        "given",
                        name);
            }
            List<AdditiveDose> all = new ArrayList<>(base.additives());
            all.addAll(List.of(doses));
            colours.put(name, List.copyOf(all));
            return this;
        }

        /**
         * Adds a weight every colour is poured in.
         *
         * @param grammage the grammage
         * @return this builder
         * @throws Refused if it is not above zero
         */
        public Builder weight(Quantity<Grammage> grammage) {
            Kinds.GRAMMAGE.siAboveZero(grammage, "grammage of a swatch");
            weights.add(Kinds.GRAMMAGE.check(grammage, "grammage of a swatch"));
            return this;
        }

        /**
         * Sets the size of a swatch inside its deckle.
         *
         * @param width one side
         * @param height the other
         * @return this builder
         * @throws Refused if a side is out of range
         */
        public Builder size(Quantity<Length> width, Quantity<Length> height) {
            area = Limits.PIECE_SIDE.check(width, "width of a swatch").si()
                    * Limits.PIECE_SIDE.check(height, "height of a swatch").si();
            return this;
        }

        /**
         * Sets how many swatches of each colour and weight there are; 1 without it.
         *
         * @param swatches 1 to 100
         * @return this builder
         * @throws Refused if it is out of range
         */
        public Builder each(int swatches) {
            if (swatches < 1 || swatches > 100) {
                throw Refused.of(
                        "swatch.count",
                        "swatches: " + swatches + " of each given; it must be from 1 to 100.",
                        "given",
                        swatches,
                        "least",
                        1,
                        "most",
                        100);
            }
            each = swatches;
            return this;
        }

        /**
         * Sets the step of the scale for additives; 0.1 g without it.
         *
         * @param grams the step
         * @return this builder
         * @throws Refused if it is out of range
         */
        public Builder scaleStep(Quantity<Mass> grams) {
            step = Limits.SCALE_STEP.check(grams, "step of the fine scale").si();
            return this;
        }

        /**
         * Sets how sure every dose is to be; 5 % without it.
         *
         * @param share how far it may be off, above zero, at most 50 %
         * @return this builder
         * @throws Refused if it is out of range
         */
        public Builder within(Quantity<Share> share) {
            sure = Kinds.SHARE.siWithin(share, "how far a dose may be off", 1e-6, 0.5);
            return this;
        }

        /**
         * Sets what of the fibre stays in a swatch; all of it without it.
         *
         * @param share the share, above zero
         * @return this builder
         * @throws Refused if it is out of range
         */
        public Builder retention(Quantity<Share> share) {
            retention = Kinds.SHARE.siAboveZero(share, "retention of the fibre");
            return this;
        }

        /**
         * Plans the round.
         *
         * @return the round
         * @throws Refused if no colour, weight or size is said
         */
        public SwatchRound plan() {
            if (colours.isEmpty() || weights.isEmpty() || area == 0) {
                throw Refused.of(
                        "swatch.unsaid",
                        "swatches: no " + (colours.isEmpty() ? "colour" : weights.isEmpty() ? "weight" : "size")
                                + " is said. Say at least one colour, one weight and the size.",
                        "missing",
                        colours.isEmpty() ? "colour" : weights.isEmpty() ? "weight" : "size");
            }
            List<Pot> pots = new ArrayList<>();
            colours.forEach((name, doses) -> pots.add(pot(name, doses)));
            return new SwatchRound(base, pots, colours);
        }

        private Pot pot(String name, List<AdditiveDose> doses) {
            double poured = 0;
            Map<Amount<Grammage>, Amount<Volume>> pours = new LinkedHashMap<>();
            double load = 1;
            for (AdditiveDose dose : doses) {
                load += dose.dose().si();
            }
            for (Amount<Grammage> weight : weights) {
                double fibre = weight.si() * area / load / retention;
                poured += each * fibre;
                pours.put(weight, volume(fibre));
            }
            double coarsest = THINNED[THINNED.length - 1];
            double least = 0;
            double feasible = 0;
            for (AdditiveDose dose : doses) {
                double product = dose.product(Kinds.MASS.ofSi(1, "kg")).si();
                least = Math.max(least, step / 2 / sure / product);
                feasible = Math.max(feasible, step / 2 / sure / product / coarsest);
            }
            double fibre = Math.max(poured, feasible);
            List<Dosed> dosed = new ArrayList<>();
            for (AdditiveDose dose : doses) {
                dosed.add(dosed(dose, dose.product(Kinds.MASS.ofSi(fibre, "kg")).si()));
            }
            return new FoundPot(
                    name,
                    PlainNumbers.grams(fibre),
                    volume(fibre),
                    pours,
                    List.copyOf(dosed),
                    PlainNumbers.grams(least),
                    PlainNumbers.grams(fibre - poured));
        }

        private Dosed dosed(AdditiveDose dose, double product) {
            int thinned = 1;
            for (int next = 0; next < THINNED.length && step / 2 > sure * product * thinned * (1 + 1e-9); next++) {
                thinned = THINNED[next];
            }
            double weigh = Math.max(step, Rounding.roundTo(product * thinned, step));
            return new FoundDosed(
                    dose,
                    PlainNumbers.grams(weigh),
                    thinned,
                    Kinds.SHARE.ofSi(Math.min(1, Math.abs(weigh / (product * thinned) - 1)), "%"));
        }

        private Amount<Volume> volume(double fibre) {
            return Pulp.ofOvenDry(Kinds.MASS.ofSi(fibre, "g")).at(pail).volume();
        }

        @Override
        public String toString() {
            return "swatches of " + base.name() + ", being put together: colours " + colours.keySet() + ", weights "
                    + weights;
        }
    }

    private SwatchRound(Recipe base, List<Pot> pots, Map<String, List<AdditiveDose>> colours) {
        this.base = base;
        this.pots = List.copyOf(pots);
        this.colours = Map.copyOf(colours);
    }

    /**
     * Begins a round from a pail.
     *
     * @param base the recipe of the stuff, undyed
     * @param pail how thick the stuff stands in the pail or the blender, above zero
     * @return a builder
     * @throws Refused if the consistency is not above zero
     */
    public static Builder of(Recipe base, Quantity<Consistency> pail) {
        Objects.requireNonNull(base, "base");
        Kinds.CONSISTENCY.siAboveZero(pail, "consistency of the pail");
        return new Builder(base, Kinds.CONSISTENCY.check(pail, "consistency of the pail"));
    }

    /** {@return one pot for each colour} */
    public List<Pot> pots() {
        return pots;
    }

    /** {@return what of the pail all colours take} */
    public Amount<Volume> stock() {
        return Kinds.VOLUME.ofSi(
                pots.stream().mapToDouble(pot -> pot.stock().si()).sum(), "L");
    }

    /** {@return the fibre of all colours, oven-dry} */
    public Amount<Mass> fibre() {
        return PlainNumbers.grams(
                pots.stream().mapToDouble(pot -> pot.fibre().si()).sum());
    }

    /**
     * Takes the colour that was approved into a recipe.
     *
     * @param colour its name
     * @param recipe what the recipe is to be called
     * @return the recipe: that of the pail with the doses of the colour
     * @throws Refused if there is no such colour, or the recipe cannot be called so
     */
    public Recipe approve(String colour, String recipe) {
        Objects.requireNonNull(colour, "colour");
        Objects.requireNonNull(recipe, "recipe");
        List<AdditiveDose> doses = colours.get(colour);
        if (doses == null) {
            throw Refused.of(
                    "swatch.no-colour",
                    "swatches: there is no colour \"" + colour + "\"; there are: "
                            + pots.stream().map(Pot::colour).toList() + ".",
                    "given",
                    colour);
        }
        Recipe.Builder approved = Recipe.of(recipe, base.furnish());
        if (base.isBeaten()) {
            approved.beating(base.beating());
            base.beatingApart().forEach(approved::beating);
        }
        base.drainability().ifPresent(approved::drainability);
        base.timedSheet().ifPresent(approved::timedSheet);
        base.beaterConsistency().ifPresent(approved::beaterConsistency);
        base.stockConsistency().ifPresent(approved::stockConsistency);
        base.vatConsistency().ifPresent(approved::vatConsistency);
        base.sizeBath().ifPresent(approved::sizeBath);
        base.alkali().ifPresent(in -> base.alkaliDose().ifPresent(dose -> approved.cooking(in, dose)));
        doses.forEach(dose -> approved.additive(dose.additive(), dose.dose()));
        return approved.build();
    }

    /** Returns a line for each pot. */
    @Override
    public String toString() {
        return stock() + " of the pail, " + fibre() + " oven-dry\n"
                + String.join("\n", pots.stream().map(Object::toString).toList());
    }
}
