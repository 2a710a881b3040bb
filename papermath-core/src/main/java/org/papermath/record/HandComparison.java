package org.papermath.record;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.Set;
import javax.measure.Quantity;
import org.apache.commons.statistics.distribution.FDistribution;
import org.apache.commons.statistics.distribution.TDistribution;
import org.papermath.numeric.Moments;
import org.papermath.numeric.Percentiles;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kind;
import org.papermath.quantity.Name;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Units;

/**
 * The sheets of several hands side by side: do they make the same sheet, which of them differ and by how much, and is one
 * steadier than another? Hands may be moulds, days or posts as well. Immutable.
 *
 * <p>Whether they differ at all: one-way analysis of variance, {@code F = (B/(k - 1))/(W/(n - k))}, B the squares of the
 * means about the mean of all, each for every sheet of its hand, W the squares of the sheets about the mean of their
 * hand. Where the hands do not scatter alike, or it cannot be told, Welch's form of it decides, which does not take them
 * to. Which hands differ: each two by Welch's t, the chances put right for their number by Holm's steps. Whether they
 * scatter alike: the same F of the distances from the median of the hand.
 *
 * @param <Q> what was measured
 * @source analysis of variance, as in any book on statistics; Welch, Biometrika 38, 1951; Holm, Scandinavian Journal of
 *     Statistics 6, 1979; Brown and Forsythe, Journal of the American Statistical Association 69, 1974; all recalled, not
 *     looked up
 */
public final class HandComparison<Q extends Quantity<Q>> {
    private final MeasuredSheets<Q> all;
    private final List<String> names;
    private final List<Moments> hands;
    private final double f;
    private final double chance;
    private final double welchChance;
    private final OptionalDouble scatterChance;
    private final List<Pair<Q>> pairs;

    /**
     * The sheets of one hand.
     *
     * @param <Q> what was measured
     * @param name who made them
     * @param measured what was measured of them, 2 or more
     */
    public record Hand<Q extends Quantity<Q>>(String name, List<? extends Quantity<Q>> measured) {
        /**
         * Checks name and number.
         *
         * @param name who made them
         * @param measured what was measured of them, 2 or more
         * @throws Refused if the name cannot be one, or there are fewer than two sheets
         */
        public Hand {
            name = Name.check(name, "hand");
            Objects.requireNonNull(measured, "measured");
            measured = List.copyOf(measured);
            if (measured.size() < 2) {
                throw Refused.of(
                        "series.hand-short",
                        "hand " + name + ": " + measured.size()
                                + " sheets given; at least 2 are needed to show how they scatter.",
                        "hand",
                        name,
                        "given",
                        measured.size(),
                        "least",
                        2);
            }
        }
    }

    /**
     * Two hands side by side.
     *
     * @param <Q> what was measured
     */
    public sealed interface Pair<Q extends Quantity<Q>> permits FoundPair {
        /** {@return the one hand} */
        String first();

        /** {@return the other} */
        String second();

        /** {@return the mean of the second less that of the first} */
        Amount<Q> difference();

        /** {@return the low end of the band that holds the differences of all pairs at once, 19 times in 20} */
        Amount<Q> low();

        /** {@return the high end of that band} */
        Amount<Q> high();

        /** {@return how often chance alone would bring as much to any of the pairs} */
        double chance();
    }

    private record FoundPair<Q extends Quantity<Q>>(
            String first, String second, Amount<Q> difference, Amount<Q> low, Amount<Q> high, double chance)
            implements Pair<Q> {
        @Override
        public String toString() {
            return second + " less " + first + ": " + difference + ", " + low + " to " + high;
        }
    }

    private HandComparison(MeasuredSheets<Q> all, List<String> names, List<Moments> hands, List<double[]> values) {
        this.all = all;
        this.names = names;
        this.hands = hands;
        int n = all.count();
        int k = hands.size();
        double least = all.leastDeviation() * all.leastDeviation();
        this.f = f(all.moments(), hands, least);
        this.chance = FDistribution.of(k - 1.0, n - k).survivalProbability(f);
        this.welchChance = welch(hands, least);
        this.scatterChance = scatter(values, least);
        this.pairs = pairs(least);
    }

    /** The mean squares between hands over those within, which are never less than rounding makes them. */
    private static double f(Moments all, List<Moments> hands, double least) {
        double between = 0;
        double within = 0;
        for (Moments hand : hands) {
            double off = hand.above(all);
            between += hand.count() * off * off;
            within += hand.squares();
        }
        int k = hands.size();
        int free = all.count() - k;
        double one = Math.max(within / free, least);
        return one > 0 ? between / (k - 1) / one : 0;
    }

    private static double welch(List<Moments> hands, double least) {
        int k = hands.size();
        double[] weights = new double[k];
        double sum = 0;
        double mean = 0;
        Moments origin = hands.get(0);
        for (int i = 0; i < k; i++) {
            Moments hand = hands.get(i);
            weights[i] = hand.count() / variance(hand, least);
            sum += weights[i];
            mean += weights[i] * hand.above(origin);
        }
        mean /= sum;
        double between = 0;
        double loss = 0;
        for (int i = 0; i < k; i++) {
            double off = hands.get(i).above(origin) - mean;
            between += weights[i] * off * off / (k - 1);
            double rest = 1 - weights[i] / sum;
            loss += rest * rest / (hands.get(i).count() - 1);
        }
        double squares = (double) k * k - 1;
        double f = between / (1 + 2 * (k - 2) * loss / squares);
        return FDistribution.of(k - 1.0, squares / (3 * loss)).survivalProbability(f);
    }

    private static double variance(Moments hand, double least) {
        return Math.max(hand.squares() / (hand.count() - 1), least);
    }

    /** Two sheets lie equally far from their median and tell no scatter of scatter. */
    private static OptionalDouble scatter(List<double[]> values, double least) {
        List<Moments> hands = new ArrayList<>();
        double[] all = new double[0];
        for (double[] hand : values) {
            if (hand.length < 3) {
                return OptionalDouble.empty();
            }
            double[] sorted = hand.clone();
            Arrays.sort(sorted);
            double[] off = new double[hand.length];
            for (int i = 0; i < off.length; i++) {
                off[i] = Math.abs(hand[i] - Percentiles.at(sorted, 0.5));
            }
            hands.add(Moments.of(off));
            int from = all.length;
            all = Arrays.copyOf(all, from + off.length);
            System.arraycopy(off, 0, all, from, off.length);
        }
        return OptionalDouble.of(FDistribution.of(hands.size() - 1.0, all.length - hands.size())
                .survivalProbability(f(Moments.of(all), hands, least)));
    }

    private List<Pair<Q>> pairs(double least) {
        int k = hands.size();
        int count = k * (k - 1) / 2;
        int[][] of = new int[count][];
        double[] differences = new double[count];
        double[] halves = new double[count];
        double[] chances = new double[count];
        int at = 0;
        for (int i = 0; i < k; i++) {
            for (int j = i + 1; j < k; j++) {
                Moments one = hands.get(i);
                Moments other = hands.get(j);
                double ofOne = variance(one, least) / one.count();
                double ofOther = variance(other, least) / other.count();
                double sum = ofOne + ofOther;
                double free = MeasuredSheets.freedom(ofOne, one.count(), ofOther, other.count());
                of[at] = new int[] {i, j};
                differences[at] = other.above(one);
                chances[at] = MeasuredSheets.chance(differences[at] / Math.sqrt(sum), free);
                halves[at] = TDistribution.of(free).inverseSurvivalProbability(MeasuredSheets.CHANCE / (2 * count))
                        * Math.sqrt(sum);
                at++;
            }
        }
        double[] corrected = holm(chances);
        List<Pair<Q>> found = new ArrayList<>();
        for (int p = 0; p < count; p++) {
            found.add(new FoundPair<>(
                    names.get(of[p][0]),
                    names.get(of[p][1]),
                    all.amount(differences[p]),
                    all.amount(differences[p] - halves[p]),
                    all.amount(differences[p] + halves[p]),
                    corrected[p]));
        }
        return List.copyOf(found);
    }

    /** The least chance by the number of all, the next by one fewer, and so on, none below the one before. */
    private static double[] holm(double[] chances) {
        Integer[] order = new Integer[chances.length];
        Arrays.setAll(order, i -> i);
        Arrays.sort(order, Comparator.comparingDouble(i -> chances[i]));
        double[] corrected = new double[chances.length];
        double before = 0;
        for (int i = 0; i < order.length; i++) {
            before = Math.max(before, Math.min(1, (order.length - i) * chances[order[i]]));
            corrected[order[i]] = before;
        }
        return corrected;
    }

    /**
     * Compares hands.
     *
     * @param <Q> what was measured
     * @param kind the kind of it
     * @param hands the hands, 2 or more, with as many sheets each as there are
     * @return the comparison
     * @throws Refused if there are fewer than two hands, two have one name, a value is not above zero, or the kind is
     *     temperature
     */
    public static <Q extends Quantity<Q>> HandComparison<Q> of(Kind<Q> kind, List<Hand<Q>> hands) {
        Objects.requireNonNull(kind, "kind");
        return of(kind.name(), kind, hands);
    }

    /**
     * Compares hands by something that has a name of its own.
     *
     * @param <Q> what was measured
     * @param what what it is called: {@code thickness}, {@code width} …
     * @param kind the kind of it
     * @param hands the hands, as {@link #of(Kind, List)}
     * @return the comparison
     * @throws Refused as {@link #of(Kind, List)}
     */
    public static <Q extends Quantity<Q>> HandComparison<Q> of(String what, Kind<Q> kind, List<Hand<Q>> hands) {
        Objects.requireNonNull(what, "what");
        Objects.requireNonNull(kind, "kind");
        Objects.requireNonNull(hands, "hands");
        if (hands.size() < 2) {
            throw Refused.of(
                    "series.hands",
                    "hands: " + hands.size() + " given; at least 2 are needed to compare.",
                    "given",
                    hands.size(),
                    "least",
                    2);
        }
        Set<String> seen = new HashSet<>();
        List<Quantity<Q>> sheets = new ArrayList<>();
        for (Hand<Q> hand : hands) {
            if (!seen.add(hand.name())) {
                throw Refused.of(
                        "series.hand-twice",
                        "hand " + hand.name() + ": given twice. Put the sheets of a hand together, or name the hands"
                                + " apart.",
                        "hand",
                        hand.name());
            }
            sheets.addAll(hand.measured());
        }
        MeasuredSheets<Q> all = MeasuredSheets.of(what, kind, sheets);
        List<String> names = hands.stream().map(Hand::name).toList();
        List<double[]> values = new ArrayList<>();
        int at = 0;
        for (Hand<Q> hand : hands) {
            double[] own = new double[hand.measured().size()];
            for (int i = 0; i < own.length; i++) {
                own[i] = all.value(at++);
            }
            values.add(own);
        }
        return new HandComparison<>(all, names, values.stream().map(Moments::of).toList(), List.copyOf(values));
    }

    /** {@return the squares between hands over those within, each by its degrees of freedom} */
    public double f() {
        return f;
    }

    /** {@return how often chance alone would bring such an F to hands that make the same sheet and scatter alike} */
    public double chance() {
        return chance;
    }

    /** {@return how often chance alone would bring such means to hands that need not scatter alike} */
    public double welchChance() {
        return welchChance;
    }

    /** {@return how often chance alone would bring such scatters to hands that scatter alike; nothing where one has only two sheets} */
    public OptionalDouble scatterChance() {
        return scatterChance;
    }

    /** {@return the standard deviation within a hand, of all hands together} */
    public Amount<Q> within() {
        double squares = hands.stream().mapToDouble(Moments::squares).sum();
        return all.amount(Math.sqrt(squares / (all.count() - hands.size())));
    }

    /** {@return the hands two by two, each with those behind it} */
    public List<Pair<Q>> pairs() {
        return pairs;
    }

    /**
     * Returns whether the hands make different sheets: by the F of hands that scatter alike, where they do, and by Welch's
     * where they do not or it cannot be told.
     *
     * @return whether chance would bring such means less than once in twenty times
     */
    public boolean isReal() {
        boolean alike = scatterChance.isPresent() && !scattersApart();
        return (alike ? chance : welchChance) < MeasuredSheets.CHANCE;
    }

    /**
     * Returns whether some hands scatter more than others.
     *
     * @return whether chance would bring such scatters less than once in twenty times
     */
    public boolean scattersApart() {
        return scatterChance.orElse(1) < MeasuredSheets.CHANCE;
    }

    /** Returns whether and which hands differ, then who is steadier, then the figures. */
    @Override
    public String toString() {
        List<String> parts = new ArrayList<>();
        if (!isReal()) {
            parts.add("no difference of the hands more than chance (F = " + Units.fourDigits(f) + ")");
        } else {
            List<String> told = pairs.stream()
                    .filter(pair -> pair.chance() < MeasuredSheets.CHANCE)
                    .map(this::told)
                    .toList();
            parts.add("the hands differ (F = " + Units.fourDigits(f) + "): "
                    + (told.isEmpty()
                            ? "but no two of them for certain, measure more sheets of each"
                            : String.join("; ", told)));
        }
        if (scattersApart()) {
            int steady = 0;
            int loose = 0;
            for (int i = 0; i < hands.size(); i++) {
                steady = hands.get(i).deviation() < hands.get(steady).deviation() ? i : steady;
                loose = hands.get(i).deviation() > hands.get(loose).deviation() ? i : loose;
            }
            parts.add(names.get(steady) + " is steadiest and " + names.get(loose) + " scatters most, more than chance");
        }
        for (int i = 0; i < hands.size(); i++) {
            parts.add(names.get(i) + " mean " + all.amount(hands.get(i).mean()) + ", sd "
                    + all.amount(hands.get(i).deviation()) + ", " + hands.get(i).count() + " sheets");
        }
        return String.join("; ", parts);
    }

    private String told(Pair<Q> pair) {
        double difference = pair.difference().si();
        int sign = difference < 0 ? -1 : 1;
        Amount<Q> low = difference < 0 ? pair.high() : pair.low();
        Amount<Q> high = difference < 0 ? pair.low() : pair.high();
        return pair.second() + " makes " + all.words().word(difference) + " sheets than " + pair.first() + " by "
                + pair.difference().multiply(sign) + " (" + low.multiply(sign) + " to " + high.multiply(sign) + ")";
    }
}
