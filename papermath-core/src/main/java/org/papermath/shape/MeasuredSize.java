package org.papermath.shape;

import java.util.List;
import java.util.Objects;
import java.util.stream.IntStream;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.LinearShrinkage;
import org.papermath.quantity.Refused;

/**
 * The size of pieces as measured on several of them, or forecast: mean and standard deviation of both sides. Immutable.
 */
public final class MeasuredSize {
    private final double width;
    private final double height;
    private final double widthDeviation;
    private final double heightDeviation;

    private MeasuredSize(double width, double height, double widthDeviation, double heightDeviation) {
        this.width = width;
        this.height = height;
        this.widthDeviation = widthDeviation;
        this.heightDeviation = heightDeviation;
    }

    /**
     * Makes a size without scatter.
     *
     * @param width the mean width, above zero
     * @param height the mean height, above zero
     * @return the size
     * @throws Refused if a side is not above zero
     */
    public static MeasuredSize of(Quantity<Length> width, Quantity<Length> height) {
        return new MeasuredSize(
                Kinds.LENGTH.siAboveZero(width, "mean width"), Kinds.LENGTH.siAboveZero(height, "mean height"), 0, 0);
    }

    /**
     * Finds the size from the sides of several pieces.
     *
     * @param sizes width and height of each piece, two pieces or more
     * @return mean and standard deviation (divisor n − 1) of both sides
     * @throws Refused if there are fewer than two pieces
     */
    public static MeasuredSize ofPieces(List<Outline.Point> sizes) {
        Objects.requireNonNull(sizes, "sizes");
        int n = sizes.size();
        if (n < 2) {
            throw Refused.of(
                    "size.pieces",
                    "size: " + n + " pieces given; a scatter takes two or more.",
                    "given",
                    n,
                    "least",
                    2);
        }
        double w = sizes.stream().mapToDouble(p -> p.across().si()).sum() / n;
        double h = sizes.stream().mapToDouble(p -> p.along().si()).sum() / n;
        double dw = Math.sqrt(sizes.stream()
                        .mapToDouble(p -> (p.across().si() - w) * (p.across().si() - w))
                        .sum()
                / (n - 1));
        double dh = Math.sqrt(sizes.stream()
                        .mapToDouble(p -> (p.along().si() - h) * (p.along().si() - h))
                        .sum()
                / (n - 1));
        return new MeasuredSize(w, h, dw, dh);
    }

    /**
     * Finds the size from lists of sides, as a ruler gives them.
     *
     * @param widths the width of each piece, two pieces or more
     * @param heights the height of each piece, in the same order
     * @return mean and standard deviation (divisor n − 1) of both sides
     * @throws Refused if there are fewer than two pieces, or the lists are not of the same length
     */
    public static MeasuredSize ofPieces(List<Amount<Length>> widths, List<Amount<Length>> heights) {
        Objects.requireNonNull(widths, "widths");
        Objects.requireNonNull(heights, "heights");
        if (widths.size() != heights.size()) {
            throw Refused.of(
                    "size.unpaired",
                    "size: " + widths.size() + " widths and " + heights.size()
                            + " heights given; every piece needs one of each.",
                    "widths",
                    widths.size(),
                    "heights",
                    heights.size());
        }
        return ofPieces(IntStream.range(0, widths.size())
                .mapToObj(i -> Outline.Point.of(widths.get(i), heights.get(i)))
                .toList());
    }

    /**
     * Foretells the size of pieces formed in openings of one size, when their shrinkage scatters from sheet to sheet:
     * opening · (1 − shrinkage), and opening · deviation.
     *
     * <p>For cards and sheets, and for the pocket of an envelope that is folded where its deckle says. An envelope that
     * is folded by a template after drying has the size of the template; there shrinkage takes from its seams.
     *
     * @param width the width of the opening, above zero
     * @param height the height of the opening, above zero
     * @param shrinkage the mean shrinkage
     * @param alongDeviation the standard deviation of the shrinkage along, zero or more
     * @param acrossDeviation the standard deviation of the shrinkage across, zero or more
     * @return the size after drying
     * @throws Refused if a side is not above zero, or a deviation is below zero or out of range
     */
    public static MeasuredSize dried(
            Quantity<Length> width,
            Quantity<Length> height,
            Shrinkage shrinkage,
            Quantity<LinearShrinkage> alongDeviation,
            Quantity<LinearShrinkage> acrossDeviation) {
        Objects.requireNonNull(shrinkage, "shrinkage");
        double w = Kinds.LENGTH.siAboveZero(width, "width of the opening");
        double h = Kinds.LENGTH.siAboveZero(height, "height of the opening");
        double along =
                Kinds.LINEAR_SHRINKAGE.siWithin(alongDeviation, "standard deviation of the shrinkage along", 0, 0.6);
        double across =
                Kinds.LINEAR_SHRINKAGE.siWithin(acrossDeviation, "standard deviation of the shrinkage across", 0, 0.6);
        return new MeasuredSize(
                w * (1 - shrinkage.acrossFraction()), h * (1 - shrinkage.alongFraction()), w * across, h * along);
    }

    /**
     * Returns the size with a scatter.
     *
     * @param ofWidth the standard deviation of the width, zero or more
     * @param ofHeight the standard deviation of the height, zero or more
     * @return the size
     * @throws Refused if a deviation is out of range
     */
    public MeasuredSize withDeviation(Quantity<Length> ofWidth, Quantity<Length> ofHeight) {
        return new MeasuredSize(
                width,
                height,
                Kinds.LENGTH.si(ofWidth, "standard deviation of the width"),
                Kinds.LENGTH.si(ofHeight, "standard deviation of the height"));
    }

    /**
     * Returns the mean width.
     *
     * @return the width
     */
    public Amount<Length> width() {
        return Kinds.LENGTH.ofSi(width, "mm");
    }

    /**
     * Returns the mean height.
     *
     * @return the height
     */
    public Amount<Length> height() {
        return Kinds.LENGTH.ofSi(height, "mm");
    }

    /**
     * Returns the standard deviation of the width.
     *
     * @return the deviation
     */
    public Amount<Length> widthDeviation() {
        return Kinds.LENGTH.ofSi(widthDeviation, "mm");
    }

    /**
     * Returns the standard deviation of the height.
     *
     * @return the deviation
     */
    public Amount<Length> heightDeviation() {
        return Kinds.LENGTH.ofSi(heightDeviation, "mm");
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof MeasuredSize that
                && width == that.width
                && height == that.height
                && widthDeviation == that.widthDeviation
                && heightDeviation == that.heightDeviation;
    }

    @Override
    public int hashCode() {
        return Objects.hash(width, height, widthDeviation, heightDeviation);
    }

    @Override
    public String toString() {
        return width() + " × " + height() + ", standard deviation " + widthDeviation() + " and " + heightDeviation();
    }
}
