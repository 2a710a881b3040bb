package org.papermath.press;

import javax.measure.Quantity;
import javax.measure.quantity.Length;

import org.papermath.quantity.Amount;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;

/**
 * The felts of a studio: their size, their dry grammage and how many there are. A post of n sheets takes n + 1 of them.
 *
 * @param width one side
 * @param length the other side
 * @param dryGrammage the grammage of the dry felt
 * @param count how many there are, 2 or more
 */
public record Felts(Amount<Length> width, Amount<Length> length, Amount<Grammage> dryGrammage, int count) {
    /**
     * Makes the felts.
     *
     * @param width one side, above zero
     * @param length the other side, above zero
     * @param dryGrammage the grammage of the dry felt, above zero
     * @param count how many there are, 2 or more
     * @return the felts
     * @throws Refused if a value is out of range
     */
    public static Felts of(Quantity<Length> width, Quantity<Length> length, Quantity<Grammage> dryGrammage, int count) {
        Kinds.LENGTH.siAboveZero(width, "felt width");
        Kinds.LENGTH.siAboveZero(length, "felt length");
        if (count < 2) {
            throw Refused.of("felts.count", "felts: " + count + " given; one sheet already takes 2 felts.",
                    "given", count, "least", 2);
        }
        return new Felts(Kinds.LENGTH.check(width, "felt width"), Kinds.LENGTH.check(length, "felt length"),
                Kinds.GRAMMAGE.check(dryGrammage, "dry grammage of the felt"), count);
    }

    @Override
    public String toString() {
        return count + " felts " + width + " × " + length + ", " + dryGrammage + " dry";
    }
}
