package org.papermath.mould;

import java.util.Objects;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import org.jspecify.annotations.Nullable;
import org.papermath.equation.PieceLayout;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Limits;
import org.papermath.quantity.Refused;
import org.papermath.shape.Outline;

/**
 * The frame that bounds the pulp on a mould: its opening, and the strips that may split it. Immutable.
 */
public final class Deckle {
    private static final Amount<Length> NONE = Kinds.LENGTH.of(0, "mm");

    private final Amount<Length> width;
    private final Amount<Length> height;
    private final int across;
    private final int along;
    private final Amount<Length> strip;
    private final @Nullable Amount<Length> depth;
    private final @Nullable Outline outline;

    private Deckle(
            Amount<Length> width,
            Amount<Length> height,
            int across,
            int along,
            Amount<Length> strip,
            @Nullable Amount<Length> depth,
            @Nullable Outline outline) {
        this.width = width;
        this.height = height;
        this.across = across;
        this.along = along;
        this.strip = strip;
        this.depth = depth;
        this.outline = outline;
    }

    /**
     * Makes a deckle with one opening.
     *
     * @param width the opening across, 5 mm to 5 m
     * @param height the opening along, 5 mm to 5 m
     * @return the deckle
     * @throws Refused if a side is out of range
     */
    public static Deckle of(Quantity<Length> width, Quantity<Length> height) {
        return new Deckle(
                Limits.MOULD_SIDE.check(width, "deckle opening across"),
                Limits.MOULD_SIDE.check(height, "deckle opening along"),
                1,
                1,
                NONE,
                null,
                null);
    }

    /**
     * Makes a deckle whose opening is an outline: a tag, a round, the blank of an envelope.
     *
     * @param opening the outline of the opening, its sides over all 5 mm to 5 m, of at most 1000 corners
     * @return the deckle
     * @throws Refused if a side is out of range or there are more corners
     */
    public static Deckle shaped(Outline opening) {
        return shaped(opening, 1, 1, NONE);
    }

    /**
     * Makes a deckle with several openings of one outline, in rows and columns by their sides over all.
     *
     * @param opening the outline of one opening, its sides over all 5 mm to 5 m, of at most 1000 corners
     * @param across openings in the width, 1 to 100
     * @param along openings in the height, 1 to 100
     * @param strip how far apart they are where they come nearest in a row or a column, zero or more
     * @return the deckle
     * @throws Refused if a side of the opening or of the whole is out of range, there are more corners, or a count is
     *     out of range
     */
    public static Deckle shaped(Outline opening, int across, int along, Quantity<Length> strip) {
        Objects.requireNonNull(opening, "opening");
        Amount<Length> between = Kinds.LENGTH.check(strip, "width of a deckle strip");
        Limits.OUTLINE_CORNERS.check(opening.corners().size(), "corners of the opening of the deckle");
        Limits.DECKLE_SPLIT.check(across, "openings across the deckle");
        Limits.DECKLE_SPLIT.check(along, "openings along the deckle");
        Limits.MOULD_SIDE.check(opening.width(), "deckle opening across");
        Limits.MOULD_SIDE.check(opening.height(), "deckle opening along");
        return new Deckle(
                Limits.MOULD_SIDE.check(whole(opening.width(), across, between), "all deckle openings across"),
                Limits.MOULD_SIDE.check(whole(opening.height(), along, between), "all deckle openings along"),
                across,
                along,
                between,
                null,
                opening);
    }

    private static Amount<Length> whole(Amount<Length> one, int count, Amount<Length> strip) {
        return count == 1 ? one : Kinds.LENGTH.ofSi(PieceLayout.extent(count, one.si(), strip.si()), "mm");
    }

    /**
     * Returns the deckle split into equal openings by strips.
     *
     * @param across openings in the width, 1 to 100
     * @param along openings in the height, 1 to 100
     * @param strip the width of a strip, zero or more
     * @return the split deckle
     * @throws Refused if a count is out of range, the strips leave no opening, or its opening is an outline
     */
    public Deckle split(int across, int along, Quantity<Length> strip) {
        if (outline != null) {
            throw Refused.of(
                    "deckle.shaped",
                    "deckle: a deckle with an opening of an outline is not split; give how many openings it has when it"
                            + " is made.",
                    "across",
                    across,
                    "along",
                    along);
        }
        Amount<Length> between = Kinds.LENGTH.check(strip, "width of a deckle strip");
        double s = between.si();
        Limits.DECKLE_SPLIT.check(across, "openings across the deckle");
        Limits.DECKLE_SPLIT.check(along, "openings along the deckle");
        if (!((across - 1) * s < width.si() && (along - 1) * s < height.si())) {
            throw Refused.of(
                    "deckle.strips",
                    "deckle: the strips of " + between + " leave no opening in " + this + ".",
                    "strip",
                    s,
                    "across",
                    across,
                    "along",
                    along);
        }
        return new Deckle(width, height, across, along, between, depth, null);
    }

    /**
     * Returns the deckle with the depth of stock it holds above the mould. Where none is given, depth limits nothing.
     *
     * @param depth the height of the frame above the wire, within {@link Limits#DECKLE_DEPTH}
     * @return the deckle
     * @throws Refused if the depth is out of range
     */
    public Deckle deep(Quantity<Length> depth) {
        return new Deckle(
                width, height, across, along, strip, Limits.DECKLE_DEPTH.check(depth, "depth of the deckle"), outline);
    }

    /**
     * Returns the depth of stock the frame holds above the mould.
     *
     * @return the depth, in the unit it was given in, or empty if depth limits nothing
     */
    public Optional<Amount<Length>> depth() {
        return Optional.ofNullable(depth);
    }

    /**
     * Returns the width of the whole opening, strips included.
     *
     * @return the width, in the unit it was given in
     */
    public Amount<Length> width() {
        return width;
    }

    /**
     * Returns the height of the whole opening, strips included.
     *
     * @return the height, in the unit it was given in
     */
    public Amount<Length> height() {
        return height;
    }

    /**
     * Returns the number of openings.
     *
     * @return 1 or more
     */
    public int count() {
        return across * along;
    }

    /**
     * Returns the number of openings in the width.
     *
     * @return 1 or more
     */
    public int across() {
        return across;
    }

    /**
     * Returns the number of openings in the height.
     *
     * @return 1 or more
     */
    public int along() {
        return along;
    }

    /**
     * Returns the width of a strip between openings.
     *
     * @return the width, zero if there is none
     */
    public Amount<Length> strip() {
        return strip;
    }

    /**
     * Returns the outline of one of the openings, where that is no rectangle.
     *
     * @return the outline in which a single sheet forms
     */
    public Optional<Outline> outline() {
        return Optional.ofNullable(outline);
    }

    /**
     * Returns one of the openings; of a shaped one its sides over all.
     *
     * @return the opening in which a single sheet forms
     */
    public Opening opening() {
        return new Opening(
                Kinds.LENGTH.ofSi((width.si() - (across - 1) * strip.si()) / across, "mm"),
                Kinds.LENGTH.ofSi((height.si() - (along - 1) * strip.si()) / along, "mm"));
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Deckle that
                && width.si() == that.width.si()
                && height.si() == that.height.si()
                && across == that.across
                && along == that.along
                && strip.si() == that.strip.si()
                && Objects.equals(outline, that.outline)
                && depth().map(Amount::si).equals(that.depth().map(Amount::si));
    }

    @Override
    public int hashCode() {
        return Objects.hash(width.si(), height.si(), across, along, strip.si(), depth().map(Amount::si), outline);
    }

    @Override
    public String toString() {
        String whole = "deckle " + width() + " × " + height() + (depth == null ? "" : ", " + depth + " deep");
        if (outline != null) {
            String openings = count() == 1
                    ? ", one opening of "
                    : ", " + across + " × " + along + " openings " + strip() + " apart of ";
            return whole + openings + outline;
        }
        return count() == 1 ? whole : whole + ", split " + across + " × " + along + " by strips of " + strip();
    }
}
