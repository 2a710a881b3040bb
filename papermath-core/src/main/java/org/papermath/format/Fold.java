package org.papermath.format;

import java.util.List;
import java.util.Locale;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;

/**
 * How a sheet is folded into the leaves of a book: in half again and again, each time across the longer side.
 *
 * <pre>{@code
 * Fold.OCTAVO.pages(); // 16
 * Fold.QUARTO.leaf(inches(22), inches(30)); // [11 in, 15 in]
 * Fold.OCTAVO.sheetsFor(100); // 7
 * }</pre>
 *
 * @source names and counts of leaves: common practice of the book trade, no source
 */
public enum Fold {
    /** Not folded: one leaf. */
    BROADSIDE(0),
    /** Folded once: two leaves. */
    FOLIO(1),
    /** Folded twice: four leaves. */
    QUARTO(2),
    /** Folded three times: eight leaves. */
    OCTAVO(3),
    /** Folded four times: sixteen leaves. */
    SEXTODECIMO(4);

    private final int times;

    Fold(int times) {
        this.times = times;
    }

    /** {@return how many times the sheet is folded} */
    public int times() {
        return times;
    }

    /** {@return the leaves of one sheet} */
    public int leaves() {
        return 1 << times;
    }

    /** {@return the pages of one sheet, two to a leaf} */
    public int pages() {
        return 2 * leaves();
    }

    /**
     * Returns the size of a leaf, untrimmed.
     *
     * @param width one side of the sheet, above zero
     * @param height the other side, above zero
     * @return both sides of the leaf, the shorter first, in the units of the sheet's sides
     * @throws Refused if a side is not above zero
     */
    public List<Amount<Length>> leaf(Quantity<Length> width, Quantity<Length> height) {
        Amount<Length> one = Kinds.LENGTH.checkAboveZero(width, "sheet width");
        Amount<Length> other = Kinds.LENGTH.checkAboveZero(height, "sheet height");
        boolean turned = one.si() > other.si();
        Amount<Length> shorter = turned ? other : one;
        Amount<Length> longer = turned ? one : other;
        for (int done = 0; done < times; done++) {
            Amount<Length> half = longer.divide(2);
            boolean stillLonger = half.si() > shorter.si();
            longer = stillLonger ? half : shorter;
            shorter = stillLonger ? shorter : half;
        }
        return List.of(shorter, longer);
    }

    /**
     * Returns how many sheets a number of pages takes.
     *
     * @param pages the pages, 1 or more
     * @return the sheets, the last of them perhaps not full
     * @throws Refused if there are no pages
     */
    public int sheetsFor(int pages) {
        if (pages < 1) {
            throw Refused.of("fold.pages", "pages: " + pages + " given; a book has 1 or more.", "given", pages);
        }
        return (pages - 1) / pages() + 1;
    }

    /** {@return its name, with what one sheet gives} */
    @Override
    public String toString() {
        return name().toLowerCase(Locale.ROOT) + ": " + leaves() + (leaves() == 1 ? " leaf, " : " leaves, ") + pages()
                + " pages";
    }
}
