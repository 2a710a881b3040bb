package org.papermath.drying;

import java.util.Objects;
import org.papermath.quantity.Limits;
import org.papermath.quantity.Refused;

/**
 * What a restraint stack takes: layers of sheets, blotters on each side of a layer, a board between any two layers and
 * one at either end. Immutable.
 *
 * <pre>{@code
 * DryingStack.of(24).inLayer(3).blottersEachSide(2); // 8 layers, 32 blotters, 9 boards
 * DryingStack.of(24).inLayer(3).blottersEachSide(2).loads(5); // 2
 * }</pre>
 */
public final class DryingStack {
    private static final int MOST_BLOTTERS = 50;

    private final int sheets;
    private final int inLayer;
    private final int eachSide;

    private DryingStack(int sheets, int inLayer, int eachSide) {
        this.sheets = sheets;
        this.inLayer = inLayer;
        this.eachSide = eachSide;
    }

    /**
     * Makes the stack of some sheets, one in a layer and without blotters unless more is said.
     *
     * @param sheets the sheets to dry, 1 or more, within {@link Limits#PULLED}
     * @return the stack
     * @throws Refused if the number is out of range
     */
    public static DryingStack of(int sheets) {
        return new DryingStack(oneOrMore(Limits.PULLED.check(sheets, "sheets to dry"), "sheets to dry"), 1, 0);
    }

    /**
     * Returns the stack with sheets side by side.
     *
     * @param sheetsSideBySide the sheets in a layer, within {@link Limits#DRYER_CAPACITY}; 1 unless given
     * @return the stack
     * @throws Refused if the number is out of range
     */
    public DryingStack inLayer(int sheetsSideBySide) {
        return new DryingStack(sheets, Limits.DRYER_CAPACITY.check(sheetsSideBySide, "sheets in a layer"), eachSide);
    }

    /**
     * Returns the stack with blotters.
     *
     * @param blotters the blotters on each side of a layer, 0 to 50; none unless given
     * @return the stack
     * @throws Refused if the number is out of range
     */
    public DryingStack blottersEachSide(int blotters) {
        if (blotters < 0 || blotters > MOST_BLOTTERS) {
            throw Refused.of(
                    "count.range",
                    "blotters on each side: " + blotters + " given; must be from 0 to " + MOST_BLOTTERS + ".",
                    "quantity",
                    "blotters on each side",
                    "given",
                    blotters,
                    "least",
                    0,
                    "most",
                    MOST_BLOTTERS);
        }
        return new DryingStack(sheets, inLayer, blotters);
    }

    private static int oneOrMore(int given, String what) {
        if (given < 1) {
            throw Refused.of(
                    "count.below-one", what + ": " + given + " given; must be 1 or more.", "given", given, "least", 1);
        }
        return given;
    }

    /**
     * Returns the layers of sheets.
     *
     * @return sheets over those in a layer, rounded up
     */
    public int layers() {
        return (sheets - 1) / inLayer + 1;
    }

    /**
     * Returns the blotters.
     *
     * @return twice those on a side, for every layer
     */
    public int blotters() {
        return layers() * 2 * eachSide;
    }

    /**
     * Returns the boards.
     *
     * @return one more than layers
     */
    public int boards() {
        return layers() + 1;
    }

    /**
     * Returns the loads it dries in where only so many layers dry at once.
     *
     * @param layersAtOnce the layers of a load, 1 or more
     * @return the loads, the last one perhaps not full
     * @throws Refused if the number is below 1
     */
    public int loads(int layersAtOnce) {
        return (layers() - 1) / oneOrMore(layersAtOnce, "layers at once") + 1;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof DryingStack that
                && sheets == that.sheets
                && inLayer == that.inLayer
                && eachSide == that.eachSide;
    }

    @Override
    public int hashCode() {
        return Objects.hash(sheets, inLayer, eachSide);
    }

    @Override
    public String toString() {
        return layers() + " layers, " + blotters() + " blotters, " + boards() + " boards";
    }
}
