package org.papermath.colour;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.papermath.pulp.AdditiveDose;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Share;

/**
 * Doses for a colour: what comes nearest with one pigment, with two and with more. A colour out of reach is said to be so,
 * with the nearest that can be made. For a batch in the beater after a trial the proposals are what is to be in it in all,
 * never less of a pigment than there is. Made by {@link PigmentedPulp#match}. Immutable.
 */
public final class ColourMatch {
    private static final int MOST_PIGMENTS = 4;
    private static final double[] STARTS = {0.12, 0.5};
    /** White stuff that may be added to a batch, by the fibre in it. */
    private static final double MOST_WHITE = 1;

    private final PigmentedPulp pulp;
    private final Lab target;
    private final double reached;
    private final List<FoundProposal> proposals;
    private final long evaluations;

    /** Doses, the colour they give, and how far it is from the one wanted. */
    public sealed interface Proposal permits FoundProposal {
        /** {@return the doses on oven-dry fibre, those that are in a batch with what is added} */
        List<AdditiveDose> doses();

        /**
         * Returns what to give before the first trial swatch, so that a batch seldom is too strong already.
         *
         * @return {@code colour.first-part} of the doses
         */
        List<AdditiveDose> beforeTrial();

        /** {@return what is still to be added to a batch, on the fibre that is in it; the same as the doses where none is} */
        List<AdditiveDose> additions();

        /** {@return white stuff to be added to a batch that is too strong, by the fibre in it; 0 for none} */
        Amount<Share> whiteStuff();

        /** {@return the colour, and how far off it may come out} */
        PredictedColour colour();

        /** {@return ΔE00 under D65 between the colour told and the one wanted} */
        double difference();

        /** {@return the same under a lamp; empty where bands do not tell it} */
        Optional<Double> differenceUnderLamp();
    }

    private record FoundProposal(
            List<AdditiveDose> doses,
            List<AdditiveDose> beforeTrial,
            List<AdditiveDose> additions,
            Amount<Share> whiteStuff,
            PredictedColour colour,
            double difference,
            double way,
            Optional<Double> differenceUnderLamp)
            implements Proposal {
        @Override
        public String toString() {
            return String.join(", ", doses.stream().map(AdditiveDose::toString).toList()) + ": " + colour
                    + ", off by ΔE00 " + ColourRange.said(difference, 1)
                    + differenceUnderLamp
                            .map(lamp -> ", under a lamp " + ColourRange.said(lamp, 1))
                            .orElse("");
        }
    }

    private ColourMatch(
            PigmentedPulp pulp, Lab target, double reached, List<FoundProposal> proposals, long evaluations) {
        this.pulp = pulp;
        this.target = target;
        this.reached = reached;
        this.proposals = List.copyOf(proposals);
        this.evaluations = evaluations;
    }

    static ColourMatch of(PigmentedPulp pulp, Reflectance target) {
        Reflectance told = target.in(
                target.bands().count() < pulp.pulp().reflectance().bands().count()
                        ? target.bands()
                        : pulp.pulp().reflectance().bands());
        boolean twice = told.bands() != Wavebands.THREE
                && told.bands() == pulp.pulp().reflectance().bands();
        return of(pulp, told.lab(), twice ? told.lab(Illuminant.A) : null);
    }

    static ColourMatch of(PigmentedPulp pulp, Lab target) {
        target.requireLight(Illuminant.D65);
        return of(pulp, target, null);
    }

    private static ColourMatch of(PigmentedPulp pulp, Lab target, @Nullable Lab underLamp) {
        if (pulp.pigments().isEmpty()) {
            throw noPigment();
        }
        return new Looking(pulp, target, underLamp).match();
    }

    static Refused noPigment() {
        return Refused.of("colour.no-pigment", "colour: no pigment is known; make a ladder of swatches of one.");
    }

    /** One search. */
    private static final class Looking {
        private final PigmentedPulp pulp;
        private final Lab target;
        private final @Nullable Lab underLamp;
        private final Mixing mixing;
        private final Wavebands bands;
        private final double reached;
        private final double[] least;
        private final double[] most;

        Looking(PigmentedPulp pulp, Lab target, @Nullable Lab underLamp) {
            this.pulp = pulp;
            this.target = target;
            this.underLamp = underLamp;
            mixing = pulp.mixing();
            bands = pulp.pulp().reflectance().bands();
            reached = pulp.reckoned("colour.just-seen") / 2;
            least = pulp.amounts();
            most = new double[least.length];
            Arrays.setAll(most, p -> Math.max(pulp.pigments().get(p).greatest(), 1.5 * least[p]));
        }

        ColourMatch match() {
            List<FoundProposal> proposals = new ArrayList<>();
            ColourSearch day = search(false);
            ColourSearch both = search(true);
            int from = pulp.isAfterTrial() ? 0 : 1;
            for (int count = from; count <= Math.min(MOST_PIGMENTS, least.length); count++) {
                ColourSearch search = count > 3 ? both : day;
                ColourSearch.Found best = subsets(least.length, count).stream()
                        .map(some -> looked(search, some))
                        .min(Comparator.comparingDouble(ColourSearch.Found::way))
                        .orElse(null);
                if (best != null) {
                    proposals.add(proposal(best));
                    if (isGoodEnough(proposals.get(proposals.size() - 1))) {
                        break;
                    }
                }
            }
            return new ColourMatch(pulp, target, reached, proposals, mixing.evaluations());
        }

        private ColourSearch.Found looked(ColourSearch search, int[] some) {
            double white = pulp.isAfterTrial() ? MOST_WHITE : 0;
            if (some.length == 0) {
                return search.among(some, least, most, white, 0.05);
            }
            ColourSearch.Found best = search.among(some, least, most, 0, STARTS[0]);
            for (int start = 1; start < STARTS.length && some.length <= 3 && best.difference() > reached; start++) {
                ColourSearch.Found other = search.among(some, least, most, 0, STARTS[start]);
                best = other.way() < best.way() ? other : best;
            }
            if (white > 0 && best.difference() > reached) {
                ColourSearch.Found thinned = search.among(some, least, most, white, 0.05);
                best = thinned.way() < best.way() ? thinned : best;
            }
            return best;
        }

        private boolean isGoodEnough(Proposal proposal) {
            return proposal.difference() <= reached
                    && proposal.differenceUnderLamp().orElse(0.0) <= 2 * reached;
        }

        private ColourSearch search(boolean lamp) {
            boolean two = lamp && underLamp != null;
            double[][] colours = new double[two ? 2 : 1][];
            double[][][] weights = new double[two ? 2 : 1][][];
            colours[0] = target.values();
            weights[0] = StandardObserver.weights(bands, Illuminant.D65);
            if (two && underLamp != null) {
                colours[1] = underLamp.values();
                weights[1] = StandardObserver.weights(bands, Illuminant.A);
            }
            return new ColourSearch(
                    mixing, colours, weights, new Illuminant[] {Illuminant.D65, Illuminant.A}, new double[] {1, 0.5});
        }

        private FoundProposal proposal(ColourSearch.Found found) {
            double[] added = new double[least.length];
            Arrays.setAll(added, p -> found.amounts()[p] - least[p]);
            double[] loads = new double[least.length];
            Arrays.setAll(loads, p -> found.amounts()[p] / (1 + found.white()));
            PredictedColour colour = pulp.predicted(loads, mixing);
            double part = pulp.reckoned("colour.first-part");
            return new FoundProposal(
                    pulp.doses(loads),
                    pulp.doses(Arrays.stream(loads).map(load -> part * load).toArray()),
                    pulp.doses(added),
                    Kinds.SHARE.ofSi(found.white(), "%"),
                    colour,
                    colour.lab().difference(target),
                    found.way(),
                    Optional.ofNullable(underLamp)
                            .map(lamp -> colour.reflectance().lab(Illuminant.A).difference(lamp)));
        }
    }

    private static List<int[]> subsets(int of, int count) {
        List<int[]> subsets = new ArrayList<>();
        if (count == 0) {
            subsets.add(new int[0]);
            return subsets;
        }
        int[] at = new int[count];
        Arrays.setAll(at, i -> i);
        while (true) {
            subsets.add(at.clone());
            int i = count - 1;
            while (i >= 0 && at[i] == of - count + i) {
                i--;
            }
            if (i < 0) {
                return subsets;
            }
            at[i]++;
            for (int j = i + 1; j < count; j++) {
                at[j] = at[j - 1] + 1;
            }
        }
    }

    /**
     * Returns what comes nearest with one pigment, with two, and so on, until the colour is reached.
     *
     * @return at least one proposal, fewest pigments first
     */
    public List<Proposal> proposals() {
        return List.copyOf(proposals);
    }

    /**
     * Returns what to take: the fewest pigments that reach the colour, or what comes nearest.
     *
     * @return a proposal
     */
    public Proposal best() {
        FoundProposal best = proposals.get(0);
        for (FoundProposal proposal : proposals) {
            if (best.difference() <= reached) {
                return best;
            }
            best = proposal.way() < best.way() ? proposal : best;
        }
        return best;
    }

    /**
     * Returns whether the pigments reach the colour.
     *
     * @return false where the nearest is further off than half of what can just be seen ({@code colour.just-seen})
     */
    public boolean isReached() {
        return best().difference() <= reached;
    }

    /**
     * Returns the colour wanted.
     *
     * @return it under D65
     */
    public Lab target() {
        return target;
    }

    long evaluations() {
        return evaluations;
    }

    @Override
    public String toString() {
        return (isReached() ? "" : "out of reach of " + pulp.pigments().size() + " pigments, the nearest is ") + best();
    }
}
