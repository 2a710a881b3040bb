package org.papermath.shape;

import java.util.ArrayList;
import java.util.List;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Length;
import org.papermath.evidence.Notice;
import org.papermath.numeric.Polygons;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;

/**
 * How far a four-sided sheet is out of square, from its two sides and its two diagonals. Immutable.
 *
 * <p>The sheet is taken as a parallelogram: with sides w and h whose corners are off by an angle a,
 * d₁² − d₂² = 4·w·h·sin a and d₁² + d₂² = 2(w² + h²). The second says whether it is one.
 *
 * @source law of cosines
 */
public final class Squareness {
    private final double width;
    private final double height;
    private final double first;
    private final double second;

    private Squareness(double width, double height, double first, double second) {
        this.width = width;
        this.height = height;
        this.first = first;
        this.second = second;
    }

    /**
     * Judges a sheet by its diagonals.
     *
     * @param width the width, above zero
     * @param height the height, above zero
     * @param diagonal one diagonal, above zero
     * @param otherDiagonal the other diagonal, above zero
     * @return the squareness
     * @throws Refused if a length is not above zero, or a diagonal cannot belong to such sides
     */
    public static Squareness ofDiagonals(
            Quantity<Length> width,
            Quantity<Length> height,
            Quantity<Length> diagonal,
            Quantity<Length> otherDiagonal) {
        double w = Kinds.LENGTH.siAboveZero(width, "width");
        double h = Kinds.LENGTH.siAboveZero(height, "height");
        double a = Kinds.LENGTH.siAboveZero(diagonal, "diagonal");
        double b = Kinds.LENGTH.siAboveZero(otherDiagonal, "other diagonal");
        if (Math.max(a, b) > w + h || Math.min(a, b) < Math.abs(w - h) || Math.abs(a * a - b * b) > 4 * w * h) {
            throw Refused.of(
                    "squareness.diagonals",
                    "diagonals: " + Kinds.LENGTH.check(diagonal, "diagonal") + " and "
                            + Kinds.LENGTH.check(otherDiagonal, "other diagonal") + " cannot belong to a sheet of "
                            + Kinds.LENGTH.check(width, "width") + " × " + Kinds.LENGTH.check(height, "height")
                            + ". Measure again from corner to corner.",
                    "width",
                    w,
                    "height",
                    h,
                    "first",
                    a,
                    "second",
                    b);
        }
        return new Squareness(w, h, a, b);
    }

    /**
     * Foretells the difference of the diagonals of a sheet whose upper edge has slipped along its width.
     *
     * @param width the width, above zero
     * @param height the height, measured square to the width, above zero
     * @param slip how far the upper edge has slipped, zero or more
     * @return the longer diagonal less the shorter
     * @throws Refused if a length is out of range
     */
    public static Amount<Length> diagonalDifference(
            Quantity<Length> width, Quantity<Length> height, Quantity<Length> slip) {
        double w = Kinds.LENGTH.siAboveZero(width, "width");
        double h = Kinds.LENGTH.siAboveZero(height, "height");
        double t = Kinds.LENGTH.si(slip, "slip");
        // The difference of two near square roots, without the loss of digits.
        double sum = Math.hypot(w + t, h) + Math.hypot(w - t, h);
        return Kinds.LENGTH.ofSi(4 * w * t / sum, "mm");
    }

    /**
     * Returns the longer diagonal less the shorter.
     *
     * @return the difference
     */
    public Amount<Length> difference() {
        return Kinds.LENGTH.ofSi(Math.abs(first - second), "mm");
    }

    private double sine() {
        return Math.abs(Math.sin(Polygons.slipAngle(width, height, first, second)));
    }

    /**
     * Returns how far the upper edge has slipped along the width.
     *
     * @return the slip
     */
    public Amount<Length> slipAcross() {
        return Kinds.LENGTH.ofSi(height * sine(), "mm");
    }

    /**
     * Returns how far the right edge has slipped along the height.
     *
     * @return the slip
     */
    public Amount<Length> slipAlong() {
        return Kinds.LENGTH.ofSi(width * sine(), "mm");
    }

    /**
     * Returns the slip over the length it goes with: how much the corners are off.
     *
     * @return the sine of the angle by which the corners are not square
     */
    public Amount<Dimensionless> slope() {
        return Kinds.NUMBER.ofSi(sine(), "%");
    }

    /**
     * Returns whether the sheet is square within a slip over its longer side.
     *
     * @param most the most slip, zero or more
     * @return whether it is square
     * @throws Refused if the slip is out of range
     */
    public boolean isSquareWithin(Quantity<Length> most) {
        return Math.max(width, height) * sine() <= Kinds.LENGTH.si(most, "most slip");
    }

    /**
     * Returns what should be known beside the figures.
     *
     * @return a warning if the four lengths do not belong to a parallelogram within half a per cent
     */
    public List<Notice> notices() {
        List<Notice> notices = new ArrayList<>();
        double should = 2 * (width * width + height * height);
        double off = (first * first + second * second) / should - 1;
        if (Math.abs(off) > 0.01) {
            notices.add(Notice.warning(
                    "squareness.not-a-parallelogram",
                    "The diagonals are " + Kinds.NUMBER.ofSi(Math.abs(off) / 2, "%")
                            + (off > 0 ? " longer" : " shorter")
                            + " than the sides allow if opposite sides are equal: measure all four sides.",
                    "excess",
                    off / 2));
        }
        return List.copyOf(notices);
    }

    @Override
    public String toString() {
        return "out of square by " + slipAcross() + " across, " + slipAlong() + " along";
    }
}
