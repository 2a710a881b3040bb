package org.papermath.format;

import javax.measure.Quantity;
import javax.measure.quantity.Area;
import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Moisture;
import org.papermath.quantity.Refused;

/**
 * From weighed and measured sheets to grammage and back, and the Japanese weight names.
 *
 * <p>A weight name in momme is the mass of one sheet of 2 × 3 shaku, whatever the size of the sheet sold: 1 momme is
 * 6.80625 g/m².
 *
 * @source grammage: ISO 536; 1 momme = 3.75 g, 1 shaku = 10/33 m (Japanese measures law of 1891)
 */
public final class Substance {
    /** Grams in a momme over square metres in 2 × 3 shaku: 3.75 · 33² / 600. */
    private static final double GSM_OF_MOMME = 6.80625;

    private Substance() {}

    /**
     * Returns the grammage of sheets weighed together.
     *
     * @param mass their mass, above zero
     * @param sheets how many, 1 or more
     * @param width the width of one, above zero
     * @param height the height of one, above zero
     * @return the grammage, at the moisture they had
     * @throws Refused if a value is out of range
     */
    public static Amount<Grammage> ofSheets(
            Quantity<Mass> mass, int sheets, Quantity<Length> width, Quantity<Length> height) {
        if (sheets < 1) {
            throw Refused.of(
                    "substance.sheets",
                    "sheets weighed: " + sheets + " given; must be 1 or more.",
                    "given",
                    sheets,
                    "least",
                    1);
        }
        double area = Kinds.LENGTH.siAboveZero(width, "sheet width") * Kinds.LENGTH.siAboveZero(height, "sheet height");
        return Kinds.GRAMMAGE.ofSi(Kinds.MASS.siAboveZero(mass, "mass of the sheets") / (sheets * area), "g/m2");
    }

    /**
     * Returns the grammage of a weighed piece of any outline.
     *
     * @param mass its mass, above zero
     * @param area its area, above zero
     * @return the grammage, at the moisture it had
     * @throws Refused if a value is out of range
     */
    public static Amount<Grammage> ofPiece(Quantity<Mass> mass, Quantity<Area> area) {
        return Kinds.GRAMMAGE.ofSi(
                Kinds.MASS.siAboveZero(mass, "mass of the piece") / Kinds.AREA.siAboveZero(area, "area"), "g/m2");
    }

    /**
     * Returns the mass of one sheet.
     *
     * @param grammage the grammage
     * @param width the width, above zero
     * @param height the height, above zero
     * @return the mass, at the moisture of the grammage
     * @throws Refused if a value is out of range
     */
    public static Amount<Mass> sheetMass(Quantity<Grammage> grammage, Quantity<Length> width, Quantity<Length> height) {
        return Kinds.MASS.ofSi(
                Kinds.GRAMMAGE.si(grammage, "grammage")
                        * Kinds.LENGTH.siAboveZero(width, "sheet width")
                        * Kinds.LENGTH.siAboveZero(height, "sheet height"),
                "g");
    }

    /**
     * Returns the grammage the same sheet has at another moisture, its size taken as unchanged.
     *
     * @param grammage the grammage as found
     * @param found the moisture it was found at, below 100 %
     * @param reference the moisture wanted, such as that in the reference atmosphere, below 100 %
     * @return the grammage: found · (1 − found moisture)/(1 − reference moisture)
     * @throws Refused if a value is out of range
     */
    public static Amount<Grammage> atMoisture(
            Quantity<Grammage> grammage, Quantity<Moisture> found, Quantity<Moisture> reference) {
        double dry = 1 - Kinds.MOISTURE.siWithin(found, "moisture found", 0, 0.99);
        double wanted = 1 - Kinds.MOISTURE.siWithin(reference, "reference moisture", 0, 0.99);
        return Kinds.GRAMMAGE.ofSi(Kinds.GRAMMAGE.si(grammage, "grammage") * dry / wanted, "g/m2");
    }

    /**
     * Returns the grammage of a weight name in momme, the sheet of 2 × 3 shaku meant.
     *
     * @param momme the weight name, above zero
     * @return the grammage
     * @throws Refused if the value is not a number or out of range
     */
    public static Amount<Grammage> ofMomme(double momme) {
        return Grammage.gsm(momme * GSM_OF_MOMME);
    }

    /**
     * Returns the grammage of a weight name in momme where one sheet of another mould weighs that.
     *
     * @param momme the mass of one sheet in momme, above zero
     * @param width the width of the sheet of the mould, above zero
     * @param height its height, above zero
     * @return the grammage
     * @throws Refused if a value is out of range
     */
    public static Amount<Grammage> ofMomme(double momme, Quantity<Length> width, Quantity<Length> height) {
        return ofSheets(Kinds.MASS.of(momme, "momme"), 1, width, height);
    }

    /**
     * Returns the weight name of a grammage: momme of a sheet of 2 × 3 shaku.
     *
     * @param grammage the grammage
     * @return momme, not rounded
     * @throws Refused if the grammage is out of range
     */
    public static double momme(Quantity<Grammage> grammage) {
        return Kinds.GRAMMAGE.check(grammage, "grammage").in("g/m2") / GSM_OF_MOMME;
    }
}
