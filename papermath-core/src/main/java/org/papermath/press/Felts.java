package org.papermath.press;

import java.util.Objects;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import org.papermath.equation.PieceLayout;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Limits;
import org.papermath.quantity.Refused;

/**
 * The felts of a studio: their size, their dry grammage, their thickness where it was measured, and how many there are.
 * A post of n layers of sheets takes n + 1 of them.
 *
 * @param width one side
 * @param length the other side
 * @param dryGrammage the grammage of the dry felt
 * @param thickness the thickness of a dry felt, if it was measured; it tells how high a post is and how much water a
 *     felt holds
 * @param count how many there are, 2 to 100 000
 */
public record Felts(
        Amount<Length> width,
        Amount<Length> length,
        Amount<Grammage> dryGrammage,
        Optional<Amount<Length>> thickness,
        int count) {
    /**
     * Makes the felts.
     *
     * @param width one side, 5 mm to 10 m
     * @param length the other side, 5 mm to 10 m
     * @param dryGrammage the grammage of the dry felt, 10 g/m² to 10 kg/m²
     * @param thickness the thickness of a dry felt, 0.1 mm to 50 mm, if it was measured
     * @param count how many there are, 2 to 100 000
     * @throws Refused if a value is out of range
     */
    public Felts {
        Objects.requireNonNull(thickness, "thickness");
        width = Limits.FELT_SIDE.check(width, "felt width");
        length = Limits.FELT_SIDE.check(length, "felt length");
        dryGrammage = Limits.FELT_GRAMMAGE.check(dryGrammage, "dry grammage of the felt");
        thickness = thickness.map(one -> Limits.FELT_THICKNESS.check(one, "thickness of the felt"));
        Limits.FELTS.check(count, "felts");
    }

    /**
     * Makes the felts, their thickness unknown.
     *
     * @param width one side, 5 mm to 10 m
     * @param length the other side, 5 mm to 10 m
     * @param dryGrammage the grammage of the dry felt, 10 g/m² to 10 kg/m²
     * @param count how many there are, 2 to 100 000
     * @return the felts
     * @throws Refused if a value is out of range
     */
    public static Felts of(Quantity<Length> width, Quantity<Length> length, Quantity<Grammage> dryGrammage, int count) {
        return new Felts(
                Limits.FELT_SIDE.check(width, "felt width"),
                Limits.FELT_SIDE.check(length, "felt length"),
                Limits.FELT_GRAMMAGE.check(dryGrammage, "dry grammage of the felt"),
                Optional.empty(),
                count);
    }

    /**
     * Returns the felts with a measured thickness.
     *
     * @param dryFelt the thickness of a dry felt under no more than its own weight, 0.1 mm to 50 mm
     * @return the felts
     * @throws Refused if the thickness is out of range
     */
    public Felts thickness(Quantity<Length> dryFelt) {
        return new Felts(
                width,
                length,
                dryGrammage,
                Optional.of(Limits.FELT_THICKNESS.check(dryFelt, "thickness of the felt")),
                count);
    }

    /**
     * Returns how many sheets lie side by side on one felt, in rows, all the same way round.
     *
     * @param sheetWidth one side of a wet sheet, above zero
     * @param sheetHeight the other side, above zero
     * @param gap the gap between two sheets, zero or more
     * @return the sheets; 0 where a sheet is larger than the felt
     * @throws Refused if a value is out of range
     */
    public int sheetsOn(Quantity<Length> sheetWidth, Quantity<Length> sheetHeight, Quantity<Length> gap) {
        double across = Kinds.LENGTH.siAboveZero(sheetWidth, "width of the sheet");
        double along = Kinds.LENGTH.siAboveZero(sheetHeight, "height of the sheet");
        double between = Kinds.LENGTH.si(gap, "gap between sheets");
        return PieceLayout.sideBySide(width.si(), length.si(), across, along, between);
    }

    @Override
    public String toString() {
        return count + " felts " + width + " × " + length
                + thickness.map(one -> " × " + one).orElse("") + ", " + dryGrammage + " dry";
    }
}
