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
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.LinearShrinkage;
import org.papermath.quantity.Share;
import org.papermath.quantity.Unclear;
import org.papermath.quantity.Units;
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

    /** A shrinkage across that waits for the one along. */
    public static final class Across {
        private final double across;

        private Across(double across) {
            this.across = across;
        }

        /**
         * Makes the shrinkage.
         *
         * @param lost the part of the height lost, −20 % to 60 %
         * @return the shrinkage
         * @throws org.papermath.quantity.Refused if it is out of range
         */
        public Shrinkage along(Quantity<Dimensionless> lost) {
            return new Shrinkage(side(lost, "shrinkage along"), across, false);
        }

        /**
         * Makes the shrinkage.
         *
         * @param lost the part of the height lost
         * @return the shrinkage
         * @throws org.papermath.quantity.Refused if it is of another kind
         */
        public Shrinkage along(Amount<LinearShrinkage> lost) {
            return new Shrinkage(Kinds.LINEAR_SHRINKAGE.si(lost, "shrinkage along"), across, false);
        }

        /** Returns the shrinkage across, and that the one along is to be said. */
        @Override
        public String toString() {
            return Digits.percent(across) + " across, along not said yet";
        }
    }

    /**
     * Begins a shrinkage of the sides, each with its name: {@code Shrinkage.across(percent(3.5)).along(percent(5))}.
     *
     * @param lost the part of the width lost, −20 % to 60 %
     * @return what waits for the part of the height lost
     * @throws org.papermath.quantity.Refused if it is out of range
     */
    public static Across across(Quantity<Dimensionless> lost) {
        return new Across(side(lost, "shrinkage across"));
    }

    /**
     * Begins a shrinkage of the sides from an amount of that kind.
     *
     * @param lost the part of the width lost
     * @return what waits for the part of the height lost
     * @throws org.papermath.quantity.Refused if it is of another kind
     */
    public static Across across(Amount<LinearShrinkage> lost) {
        return new Across(Kinds.LINEAR_SHRINKAGE.si(lost, "shrinkage across"));
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
        return across(Kinds.LINEAR_SHRINKAGE.ofSi(across, "%")).along(Kinds.LINEAR_SHRINKAGE.ofSi(along, "%"));
    }

    /** A remark on shrinkage that says neither sides nor area, and waits for how much. */
    public static final class Said {
        private final String remark;

        private Said(String remark) {
            this.remark = remark;
        }

        /**
         * Asks which is meant of a part that was lost, as in "by a fifth".
         *
         * @param part the part lost, below 100 %
         * @return never; always throws
         * @throws Unclear always, with both readings
         */
        public Shrinkage lost(Quantity<Share> part) {
            double share = Kinds.SHARE.si(part, "part lost");
            return left(Kinds.SHARE.ofSi(1 - share, "%"));
        }

        /**
         * Asks which is meant of a part that is left, as in "to three quarters of its size".
         *
         * @param part the part left, above zero
         * @return never; always throws
         * @throws Unclear always, with both readings
         */
        public Shrinkage left(Quantity<Share> part) {
            double share = Kinds.SHARE.siAboveZero(part, "part left");
            throw whichMeant(remark, share);
        }

        /** Returns the remark in quotation marks. */
        @Override
        public String toString() {
            return "\"" + remark + "\"";
        }
    }

    /**
     * Begins a question whether a remark means the sides or the area:
     * {@code Shrinkage.said("shrank by a fifth").lost(Share.percent(20))}.
     *
     * @param remark what was remarked
     * @return what waits for the part lost or left, and then asks
     */
    public static Said said(String remark) {
        return new Said(Objects.requireNonNull(remark, "remark"));
    }

    private static Unclear whichMeant(String remark, double part) {
        double bySide = 1 - part;
        double areaOfSides = 1 - part * part;
        double sidesOfArea = 1 - Math.sqrt(part);
        return new Unclear(
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
     * Returns a grammage after the shrinkage: the mass is the same on less area,
     * {@code g/((1 - along)(1 - across))}.
     *
     * <pre>{@code
     * Shrinkage.across(percent(6)).along(percent(4)).grammage(Grammage.gsm(115)); // 127.4 g/m²
     * }</pre>
     *
     * @param before the grammage on the size before
     * @return the grammage on the size after
     * @throws org.papermath.quantity.Refused if the grammage before or after is out of range
     */
    public Amount<Grammage> grammage(Quantity<Grammage> before) {
        Amount<Grammage> given = Kinds.GRAMMAGE.check(before, "grammage");
        return Kinds.GRAMMAGE.ofSi(given.si() / areaFactor()).to(given.getUnit());
    }

    /**
     * Returns what the grammage is multiplied by: 1/((1 − along)(1 − across)).
     *
     * @return a factor above zero
     */
    public double grammageFactor() {
        return 1 / areaFactor();
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

    /** Returns for example {@code 4 % along, 6 % across; grammage × 1.108}. */
    @Override
    public String toString() {
        return Digits.percent(along) + " along, " + Digits.percent(across) + " across; grammage × "
                + Units.fourDigits(grammageFactor());
    }
}
