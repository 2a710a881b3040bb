package org.papermath.format;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import org.papermath.evidence.StatedTwice;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Amounts;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Unclear;
import org.papermath.quantity.Units;
import tech.units.indriya.function.MultiplyConverter;
import tech.units.indriya.unit.TransformedUnit;

/**
 * What a ream weight is based on: the size of the sheet and how many make the ream.
 *
 * <p>A ream always says its count: reams of 480, 500 and others are in use, and a pound of one is not a pound of
 * another.
 *
 * @source basis sizes as tabled by paper merchants (bond 17 × 22 in, cover 20 × 26 in, text 25 × 38 in …); factors
 *     follow exactly from 1 in = 25.4 mm and 1 lb = 453.59237 g
 */
public final class ReamBasis {
    /** Bond, writing and ledger: 17 × 22 in, 500 sheets. */
    public static final ReamBasis BOND = inches("bond", 17, 22, 500);

    /** Cover: 20 × 26 in, 500 sheets. */
    public static final ReamBasis COVER = inches("cover", 20, 26, 500);

    /** Bristol: 22.5 × 28.5 in, 500 sheets. */
    public static final ReamBasis BRISTOL = inches("bristol", 22.5, 28.5, 500);

    /** Index: 25.5 × 30.5 in, 500 sheets. */
    public static final ReamBasis INDEX = inches("index", 25.5, 30.5, 500);

    /** Tag, news and wrapping: 24 × 36 in, 500 sheets; the same as 3000 square feet. */
    public static final ReamBasis TAG = inches("tag", 24, 36, 500);

    /** Text, book and offset: 25 × 38 in, 500 sheets. */
    public static final ReamBasis TEXT = inches("text", 25, 38, 500);

    /** Imperial art papers: 22 × 30 in, 500 sheets. */
    public static final ReamBasis IMPERIAL = inches("imperial", 22, 30, 500);

    /** Board: 1000 square feet. */
    public static final ReamBasis THOUSAND_SQUARE_FEET = inches("1000 ft²", 12, 12, 1000);

    /** Wrapping and board by area: 3000 square feet; the same as 500 sheets of 24 × 36 in. */
    public static final ReamBasis THREE_THOUSAND_SQUARE_FEET = inches("3000 ft²", 12, 12, 3000);

    private static final double KILOGRAMS_PER_POUND = 0.45359237;

    private final String name;
    private final Amount<Length> width;
    private final Amount<Length> length;
    private final int count;
    private final double area;
    private final String label;
    private final Unit<Grammage> pound;

    private ReamBasis(String name, Amount<Length> width, Amount<Length> length, int count) {
        this.name = name;
        this.width = width;
        this.length = length;
        this.count = count;
        this.area = width.si() * length.si() * count;
        String first = width.getUnit().equals(length.getUnit()) ? Units.fourDigits(width.value()) : width.toString();
        this.label = name.equals(count + " ft²")
                ? "lb (" + name + ")"
                : "lb (" + name + ", " + first + " × " + length + ", " + count + " sheets)";
        Unit<Grammage> si = Kinds.GRAMMAGE.siUnit();
        this.pound = new TransformedUnit<>(label, si, si, MultiplyConverter.of(KILOGRAMS_PER_POUND / area));
    }

    private static ReamBasis inches(String name, double width, double length, int count) {
        return new ReamBasis(name, Amounts.inches(width), Amounts.inches(length), count);
    }

    /**
     * Makes a basis of any size and count.
     *
     * @param width one side of the sheet, above zero
     * @param length the other side, above zero
     * @param count sheets in the ream, 1 or more
     * @return the basis
     * @throws Refused if a side is not above zero or the count is below 1
     */
    public static ReamBasis of(Quantity<Length> width, Quantity<Length> length, int count) {
        Amount<Length> one = Kinds.LENGTH.checkAboveZero(width, "ream sheet width");
        Amount<Length> other = Kinds.LENGTH.checkAboveZero(length, "ream sheet length");
        requireCount(count);
        return new ReamBasis("ream", one, other, count);
    }

    /**
     * Asks for the count of a ream that was named without one.
     *
     * @param pounds the weight on the label, in pounds
     * @param width one side of the sheet
     * @param length the other side
     * @return never; always throws
     * @throws Unclear always, with what each usual count would give
     */
    public static ReamBasis ofUnknownCount(double pounds, Quantity<Length> width, Quantity<Length> length) {
        List<Unclear.Candidate> candidates = Arrays.stream(Ream.values())
                .map(ream -> new Unclear.Candidate(
                        "a ream of " + ream.sheets() + " sheets, " + ream.words(),
                        of(width, length, ream.sheets())
                                .pounds(pounds)
                                .to(Units.GSM)
                                .toString()))
                .toList();
        throw new Unclear(
                "ream.count-missing",
                "ream: " + Units.fourDigits(pounds)
                        + " lb given without the number of sheets in the ream. Say how many.",
                candidates,
                "pounds",
                pounds);
    }

    /**
     * Returns the same sheet size with another count.
     *
     * @param sheets sheets in the ream, 1 or more
     * @return the basis
     * @throws Refused if the count is below 1
     */
    public ReamBasis withCount(int sheets) {
        requireCount(sheets);
        return new ReamBasis(name, width, length, sheets);
    }

    private static void requireCount(int count) {
        if (count < 1) {
            throw Refused.of(
                    "ream.count",
                    "ream: " + count + " sheets given; a ream has 1 sheet or more.",
                    "given",
                    count,
                    "least",
                    1);
        }
    }

    /**
     * Returns the name.
     *
     * @return the grade, or {@code ream} for a basis of one's own
     */
    public String name() {
        return name;
    }

    /**
     * Returns one side of the sheet.
     *
     * @return the width
     */
    public Amount<Length> width() {
        return width;
    }

    /**
     * Returns the other side of the sheet.
     *
     * @return the length
     */
    public Amount<Length> length() {
        return length;
    }

    /**
     * Returns the number of sheets.
     *
     * @return the count
     */
    public int count() {
        return count;
    }

    /**
     * Returns the pound of this ream as a unit of grammage.
     *
     * @return the unit
     */
    public Unit<Grammage> pound() {
        return pound;
    }

    /**
     * Returns the grammage of a ream weight: g/m² = lb · 453.59237 / (width · length · count).
     *
     * @param pounds the weight of the ream in pounds, above 0
     * @return the grammage, in pounds of this ream
     * @throws Refused if the value is not a number or out of range
     */
    public Amount<Grammage> pounds(double pounds) {
        return Kinds.GRAMMAGE.of(pounds, pound);
    }

    /**
     * Returns the weight of a ream of a grammage: mass = grammage · width · length · count.
     *
     * @param grammage the grammage
     * @return the mass of the ream
     * @throws Refused if the grammage is out of range
     */
    public Amount<Mass> reamMass(Quantity<Grammage> grammage) {
        return Kinds.MASS.ofSi(Kinds.GRAMMAGE.si(grammage, "grammage") * area, "lb");
    }

    /**
     * Returns the weight of a ream of a grammage in pounds.
     *
     * @param grammage the grammage
     * @return pounds of this ream
     * @throws Refused if the grammage is out of range
     */
    public double poundsOf(Quantity<Grammage> grammage) {
        return Kinds.GRAMMAGE.si(grammage, "grammage") * area / KILOGRAMS_PER_POUND;
    }

    /**
     * Returns the weight of another ream of the same substance.
     *
     * @param pounds the weight of this ream in pounds, above zero
     * @param other the other ream
     * @return its weight in pounds: in proportion to sheet area and count
     * @throws Refused if the weight is not a number or not above zero
     */
    public double equalSubstance(double pounds, ReamBasis other) {
        Kinds.MASS.siAboveZero(Kinds.MASS.of(pounds, "lb"), "ream weight");
        return pounds * (other.area / area);
    }

    /**
     * Returns the grades the library knows.
     *
     * @return an unmodifiable list; 3000 square feet are not in it, being the same as {@link #TAG}
     */
    public static List<ReamBasis> grades() {
        return List.of(BOND, COVER, BRISTOL, INDEX, TAG, TEXT, IMPERIAL, THOUSAND_SQUARE_FEET);
    }

    /** A ream that would explain the weight on a label. */
    public sealed interface Match permits FoundMatch {
        /** {@return the ream} */
        ReamBasis basis();

        /** {@return what the label then means} */
        Amount<Grammage> grammage();

        /** {@return that grammage over the one found, less 1} */
        double deviation();
    }

    private record FoundMatch(ReamBasis basis, Amount<Grammage> grammage, double deviation) implements Match {
        @Override
        public String toString() {
            return basis + ": " + grammage + ", " + (deviation > 0 ? "+" : "") + Units.fourDigits(100 * deviation)
                    + " %";
        }
    }

    /** Whether a label's pounds and its grammage agree. */
    public sealed interface Label permits FoundLabel {
        /** {@return whether they do, but for rounding} */
        boolean right();

        /** {@return what the pounds are} */
        Amount<Grammage> grammage();

        /** {@return what the pounds are over what the label says, less 1} */
        double deviation();
    }

    private record FoundLabel(ReamBasis basis, double pounds, Amount<Grammage> said, boolean right) implements Label {
        @Override
        public Amount<Grammage> grammage() {
            return basis.pounds(pounds).to("g/m2");
        }

        @Override
        public double deviation() {
            return grammage().si() / said.si() - 1;
        }

        @Override
        public String toString() {
            return (right ? "right: " : "wrong: ") + Units.fourDigits(pounds) + " " + basis + " is " + grammage()
                    + ", the label says " + said
                    + (right ? "" : " (" + (deviation() > 0 ? "+" : "") + Units.fourDigits(100 * deviation()) + " %)");
        }
    }

    /**
     * Tells whether the pounds on a label and the grammage beside them are right: no more than half a per cent apart, as
     * {@link StatedTwice#ROUNDED} says.
     *
     * <pre>{@code
     * ReamBasis.TAG.label(80, Grammage.gsm(130)).right(); // true
     * }</pre>
     *
     * @param pounds the weight on the label, in pounds of this ream
     * @param said the grammage on the label
     * @return the verdict, with what the pounds are
     * @throws Refused if a value is out of range
     */
    public Label label(double pounds, Quantity<Grammage> said) {
        Amount<Grammage> there = Kinds.GRAMMAGE.check(said, "grammage on the label");
        return new FoundLabel(
                this,
                pounds,
                there,
                StatedTwice.compare("label", pounds(pounds), there).isEmpty());
    }

    /**
     * Finds the reams that explain a labelled weight of a paper that was weighed and measured: every grade in the
     * counts of {@link Ream}, and 1000 square feet.
     *
     * @param pounds the weight on the label
     * @param found the grammage found
     * @param tolerance the most the two may differ, a fraction, zero or more
     * @return the matches, the nearest first; empty if none is near enough
     * @throws Refused if a value is out of range
     */
    public static List<Match> fitting(double pounds, Quantity<Grammage> found, Quantity<Dimensionless> tolerance) {
        List<ReamBasis> bases = new ArrayList<>();
        for (ReamBasis grade : grades()) {
            if (grade.equals(THOUSAND_SQUARE_FEET)) {
                bases.add(grade);
                continue;
            }
            for (Ream ream : Ream.values()) {
                bases.add(ream.sheets() == grade.count ? grade : grade.withCount(ream.sheets()));
            }
        }
        return fitting(pounds, found, tolerance, bases);
    }

    /**
     * Finds, among given reams, those that explain a labelled weight.
     *
     * @param pounds the weight on the label
     * @param found the grammage found
     * @param tolerance the most the two may differ, a fraction, zero or more
     * @param among the reams that come into question
     * @return the matches, the nearest first; empty if none is near enough
     * @throws Refused if a value is out of range
     */
    public static List<Match> fitting(
            double pounds, Quantity<Grammage> found, Quantity<Dimensionless> tolerance, List<ReamBasis> among) {
        Objects.requireNonNull(among, "among");
        double measured = Kinds.GRAMMAGE.si(found, "grammage found");
        double within = Kinds.NUMBER.siWithin(tolerance, "tolerance", 0, 1);
        List<Match> matches = new ArrayList<>();
        for (ReamBasis basis : among) {
            Amount<Grammage> grammage = basis.pounds(pounds);
            double deviation = grammage.si() / measured - 1;
            if (Math.abs(deviation) <= within) {
                matches.add(new FoundMatch(basis, grammage.to("g/m2"), deviation));
            }
        }
        matches.sort(Comparator.comparingDouble(match -> Math.abs(match.deviation())));
        return List.copyOf(matches);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof ReamBasis that
                && width.equals(that.width)
                && length.equals(that.length)
                && count == that.count
                && name.equals(that.name);
    }

    @Override
    public int hashCode() {
        return Objects.hash(name, width, length, count);
    }

    @Override
    public String toString() {
        return label;
    }
}
