package org.papermath.press;

import javax.measure.Quantity;
import javax.measure.quantity.Length;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Limits;
import org.papermath.quantity.Refused;

/**
 * The felts of a studio: their size, their dry grammage and how many there are. A post of n sheets takes n + 1 of them.
 *
 * @param width one side
 * @param length the other side
 * @param dryGrammage the grammage of the dry felt
 * @param count how many there are, 2 to 100 000
 */
public record Felts(Amount<Length> width, Amount<Length> length, Amount<Grammage> dryGrammage, int count) {
    /**
     * Makes the felts.
     *
     * @param width one side, 5 mm to 10 m
     * @param length the other side, 5 mm to 10 m
     * @param dryGrammage the grammage of the dry felt, 10 g/m² to 10 kg/m²
     * @param count how many there are, 2 to 100 000
     * @throws Refused if a value is out of range
     */
    public Felts {
        width = Limits.FELT_SIDE.check(width, "felt width");
        length = Limits.FELT_SIDE.check(length, "felt length");
        dryGrammage = Limits.FELT_GRAMMAGE.check(dryGrammage, "dry grammage of the felt");
        Limits.FELTS.check(count, "felts");
    }

    /**
     * Makes the felts.
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
                count);
    }

    @Override
    public String toString() {
        return count + " felts " + width + " × " + length + ", " + dryGrammage + " dry";
    }
}
