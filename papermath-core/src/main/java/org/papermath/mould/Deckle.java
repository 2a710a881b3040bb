package org.papermath.mould;

import java.util.Objects;

import javax.measure.Quantity;
import javax.measure.quantity.Length;

import org.papermath.quantity.Amount;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;

/**
 * The frame that bounds the pulp on a mould: its opening, and the strips that may split it. Immutable.
 */
public final class Deckle {
    private final double width;
    private final double height;
    private final int across;
    private final int along;
    private final double strip;

    private Deckle(double width, double height, int across, int along, double strip) {
        this.width = width;
        this.height = height;
        this.across = across;
        this.along = along;
        this.strip = strip;
    }

    /**
     * Makes a deckle with one opening.
     *
     * @param width the opening across, above zero
     * @param height the opening along, above zero
     * @return the deckle
     * @throws Refused if a side is not above zero
     */
    public static Deckle of(Quantity<Length> width, Quantity<Length> height) {
        return new Deckle(Kinds.LENGTH.siAboveZero(width, "deckle opening across"),
                Kinds.LENGTH.siAboveZero(height, "deckle opening along"), 1, 1, 0);
    }

    /**
     * Returns the deckle split into equal openings by strips.
     *
     * @param across openings in the width, 1 or more
     * @param along openings in the height, 1 or more
     * @param strip the width of a strip, zero or more
     * @return the split deckle
     * @throws Refused if a count is below 1 or the strips leave no opening
     */
    public Deckle split(int across, int along, Quantity<Length> strip) {
        double s = Kinds.LENGTH.si(strip, "width of a deckle strip");
        if (across < 1 || along < 1) {
            throw Refused.of("deckle.split", "deckle: split " + across + " × " + along
                    + " given; 1 × 1 or more is wanted.", "across", across, "along", along);
        }
        if (!((across - 1) * s < width && (along - 1) * s < height)) {
            throw Refused.of("deckle.strips",
                    "deckle: the strips of " + Kinds.LENGTH.check(strip, "strip") + " leave no opening in " + this
                    + ".", "strip", s, "across", across, "along", along);
        }
        return new Deckle(width, height, across, along, s);
    }

    /**
     * Returns the width of the whole opening, strips included.
     *
     * @return the width
     */
    public Amount<Length> width() {
        return Kinds.LENGTH.ofSi(width, "mm");
    }

    /**
     * Returns the height of the whole opening, strips included.
     *
     * @return the height
     */
    public Amount<Length> height() {
        return Kinds.LENGTH.ofSi(height, "mm");
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
        return Kinds.LENGTH.ofSi(strip, "mm");
    }

    /**
     * Returns one of the openings.
     *
     * @return the opening in which a single sheet forms
     */
    public Opening opening() {
        return new Opening(Kinds.LENGTH.ofSi((width - (across - 1) * strip) / across, "mm"),
                Kinds.LENGTH.ofSi((height - (along - 1) * strip) / along, "mm"));
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Deckle that && width == that.width && height == that.height && across == that.across
                && along == that.along && strip == that.strip;
    }

    @Override
    public int hashCode() {
        return Objects.hash(width, height, across, along, strip);
    }

    @Override
    public String toString() {
        String whole = "deckle " + width() + " × " + height();
        return count() == 1 ? whole : whole + ", split " + across + " × " + along + " by strips of " + strip();
    }
}
