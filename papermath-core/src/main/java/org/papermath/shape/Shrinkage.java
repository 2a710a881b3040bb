package org.papermath.shape;

import java.util.List;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Area;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Length;
import org.papermath.evidence.Notice;
import org.papermath.quantity.Amount;
import org.papermath.quantity.AreaShrinkage;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.LinearShrinkage;
import org.papermath.quantity.Share;
import org.papermath.quantity.Unclear;
import org.papermath.text.Digits;

/**
 * The part of its size a sheet loses from the deckle to the dry piece, by direction. Immutable.
 *
 * <p>Along is the direction of the height of the sheet on the mould, across the direction of its width. The directions
 * belong to the mould: a piece that lies turned on it swaps its sides, not the shrinkage. Below zero is growth.
 */
public final class Shrinkage {
    /** No shrinkage. */
    public static final Shrinkage NONE = new Shrinkage(0, 0, false);

    private final double along;
    private final double across;
    private final boolean oneNumber;

    private Shrinkage(double along, double across, boolean oneNumber) {
        this.along = along;
        this.across = across;
        this.oneNumber = oneNumber;
    }

    /**
     * Makes a shrinkage of the sides from two fractions or per cents.
     *
     * @param along the part of the height lost, −20 % to 60 %
     * @param across the part of the width lost, −20 % to 60 %
     * @return the shrinkage
     * @throws org.papermath.quantity.Refused if one is out of range
     */
    public static Shrinkage linear(Quantity<Dimensionless> along, Quantity<Dimensionless> across) {
        return new Shrinkage(side(along, "shrinkage along"), side(across, "shrinkage across"), false);
    }

    /**
     * Makes a shrinkage that takes the same part of both sides; {@link #notices()} then says that one number stands for
     * two.
     *
     * @param both the part of each side lost, −20 % to 60 %
     * @return the shrinkage
     * @throws org.papermath.quantity.Refused if it is out of range
     */
    public static Shrinkage linear(Quantity<Dimensionless> both) {
        double fraction = side(both, "shrinkage");
        return new Shrinkage(fraction, fraction, true);
    }

    /**
     * Makes a shrinkage of the sides from two amounts of that kind.
     *
     * @param along the part of the height lost
     * @param across the part of the width lost
     * @return the shrinkage
     * @throws org.papermath.quantity.Refused if one is out of range or of another kind
     */
    public static Shrinkage of(Quantity<LinearShrinkage> along, Quantity<LinearShrinkage> across) {
        return new Shrinkage(
                Kinds.LINEAR_SHRINKAGE.si(along, "shrinkage along"),
                Kinds.LINEAR_SHRINKAGE.si(across, "shrinkage across"),
                false);
    }

    /**
     * Makes a shrinkage from the area lost, taken evenly from both sides: 1 − √(1 − a) of each.
     *
     * @param area the part of the area lost
     * @return the shrinkage
     * @throws org.papermath.quantity.Refused if it is out of range or of another kind
     */
    public static Shrinkage ofArea(Quantity<AreaShrinkage> area) {
        double lost = Kinds.AREA_SHRINKAGE.si(area, "area shrinkage");
        double fraction = 1 - Math.sqrt(1 - lost);
        Kinds.LINEAR_SHRINKAGE.ofSi(fraction, "%");
        return new Shrinkage(fraction, fraction, true);
    }

    /**
     * Finds a shrinkage from a sheet measured before and after.
     *
     * @param widthBefore the width at first, above zero
     * @param heightBefore the height at first, above zero
     * @param widthAfter the width at last, above zero
     * @param heightAfter the height at last, above zero
     * @return the shrinkage
     * @throws org.papermath.quantity.Refused if a side is not above zero or the change is out of range
     */
    public static Shrinkage measured(
            Quantity<Length> widthBefore,
            Quantity<Length> heightBefore,
            Quantity<Length> widthAfter,
            Quantity<Length> heightAfter) {
        double across = 1
                - Kinds.LENGTH.siAboveZero(widthAfter, "width after")
                        / Kinds.LENGTH.siAboveZero(widthBefore, "width before");
        double along = 1
                - Kinds.LENGTH.siAboveZero(heightAfter, "height after")
                        / Kinds.LENGTH.siAboveZero(heightBefore, "height before");
        return of(Kinds.LINEAR_SHRINKAGE.ofSi(along, "%"), Kinds.LINEAR_SHRINKAGE.ofSi(across, "%"));
    }

    /**
     * Asks whether a remark such as "three quarters of its size" means the sides or the area.
     *
     * @param remark what was remarked
     * @param left the part that is left, above zero
     * @return never; always throws
     * @throws Unclear always, with both readings
     */
    public static Shrinkage unclear(String remark, Quantity<Share> left) {
        double part = Kinds.SHARE.siAboveZero(left, "part left");
        double bySide = 1 - part;
        double areaOfSides = 1 - part * part;
        double sidesOfArea = 1 - Math.sqrt(part);
        throw new Unclear(
                "shrinkage.sides-or-area",
                "shrinkage: \"" + remark + "\" does not say whether each side or the area is meant.",
                List.of(
                        new Unclear.Candidate(
                                "each side loses " + Digits.percent(bySide),
                                "the area loses " + Digits.percent(areaOfSides)),
                        new Unclear.Candidate(
                                "the area loses " + Digits.percent(bySide),
                                "each side loses " + Digits.percent(sidesOfArea))),
                "found",
                remark,
                "left",
                part);
    }

    private static double side(Quantity<Dimensionless> fraction, String what) {
        return Kinds.LINEAR_SHRINKAGE.si(Kinds.LINEAR_SHRINKAGE.ofSi(Kinds.NUMBER.si(fraction, what), "%"), what);
    }

    /**
     * Returns the part of the height lost.
     *
     * @return the shrinkage along
     */
    public Amount<LinearShrinkage> along() {
        return Kinds.LINEAR_SHRINKAGE.ofSi(along, "%");
    }

    /**
     * Returns the part of the width lost.
     *
     * @return the shrinkage across
     */
    public Amount<LinearShrinkage> across() {
        return Kinds.LINEAR_SHRINKAGE.ofSi(across, "%");
    }

    /**
     * Returns the part of the height lost.
     *
     * @return a fraction
     */
    public double alongFraction() {
        return along;
    }

    /**
     * Returns the part of the width lost.
     *
     * @return a fraction
     */
    public double acrossFraction() {
        return across;
    }

    /**
     * Returns the part of the area left: (1 − along)(1 − across).
     *
     * @return a fraction above zero
     */
    public double areaFactor() {
        return (1 - along) * (1 - across);
    }

    /**
     * Returns the part of the area lost: 1 − (1 − along)(1 − across).
     *
     * @return the area shrinkage
     */
    public Amount<AreaShrinkage> area() {
        return Kinds.AREA_SHRINKAGE.ofSi(along + across - along * across, "%");
    }

    /**
     * Returns an area after the shrinkage.
     *
     * @param before the area before
     * @return the area after
     * @throws org.papermath.quantity.Refused if the area is out of range
     */
    public Amount<Area> shrunk(Quantity<Area> before) {
        return Kinds.AREA.ofSi(Kinds.AREA.si(before, "area") * areaFactor());
    }

    /**
     * Returns the shrinkage of two steps after each other.
     *
     * @param next the step after this one
     * @return the whole
     * @throws org.papermath.quantity.Refused if the whole is out of range
     */
    public Shrinkage then(Shrinkage next) {
        double wholeAlong = along + next.along - along * next.along;
        double wholeAcross = across + next.across - across * next.across;
        Kinds.LINEAR_SHRINKAGE.ofSi(wholeAlong, "%");
        Kinds.LINEAR_SHRINKAGE.ofSi(wholeAcross, "%");
        return new Shrinkage(wholeAlong, wholeAcross, oneNumber && next.oneNumber);
    }

    /**
     * Returns what should be known beside the figure.
     *
     * @return a notice if one number stands for two directions, else nothing
     */
    public List<Notice> notices() {
        if (oneNumber && along != 0) {
            return List.of(Notice.note(
                    "shrinkage.one-number",
                    "One shrinkage, " + Digits.percent(along)
                            + ", stands for both directions; measured sheets usually differ between"
                            + " them.",
                    "shrinkage",
                    along));
        }
        return List.of();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Shrinkage that && along == that.along && across == that.across;
    }

    @Override
    public int hashCode() {
        return Objects.hash(along, across);
    }

    @Override
    public String toString() {
        return Digits.percent(along) + " along, " + Digits.percent(across) + " across";
    }
}
