package org.papermath.equation;

/**
 * Alkali for cooking raw fibre and rags: mass on dry fibre, strength of the bath, and what one alkali is worth against
 * another by the hydroxide it can give.
 *
 * <p>Molar masses are recalled, not looked up; the last digit does not matter to a kitchen scale.
 */
public final class Cooking {
    /** Molar mass of sodium carbonate without crystal water, kg/mol. */
    public static final double SODIUM_CARBONATE = 0.10599;
    /** Molar mass of sodium hydroxide, kg/mol. */
    public static final double SODIUM_HYDROXIDE = 0.039997;
    /** Molar mass of calcium hydroxide, kg/mol. */
    public static final double CALCIUM_HYDROXIDE = 0.074093;
    /** Molar mass of potassium carbonate, kg/mol. */
    public static final double POTASSIUM_CARBONATE = 0.138205;

    private Cooking() {}

    /** Hydroxide over oven-dry fibre, mol/kg, of a dose of an alkali that gives n per molecule. */
    public static double hydroxide(double dose, double molarMass, int perMolecule) {
        return dose / molarMass * perMolecule;
    }

    /** Dose of an alkali that gives an amount of hydroxide over oven-dry fibre, mol/kg. */
    public static double doseForHydroxide(double hydroxide, double molarMass, int perMolecule) {
        return hydroxide * molarMass / perMolecule;
    }

    /** Alkali in a volume of bath, kg/m³, of a dose on oven-dry fibre at a liquor ratio, m³/kg. */
    public static double bathStrength(double dose, double liquorRatio) {
        return dose / liquorRatio;
    }

    /** Dose on oven-dry fibre of a bath of known strength, kg/m³, at a liquor ratio, m³/kg. */
    public static double doseOfBath(double strength, double liquorRatio) {
        return strength * liquorRatio;
    }

    /**
     * Yield of a cook with more or less caustic soda than the one a yield is known of: a straight line, {@code Y - b (a -
     * a0)}, over the doses it was measured at. Beyond them the end of the line holds, and no cook leaves more than there
     * was.
     *
     * @param known yield at the known dose
     * @param slope yield lost per dose
     * @param dose alkali over oven-dry fibre
     * @param knownDose the dose of the known yield
     * @param low the least dose of the line
     * @param high the greatest
     * @return the yield, at most 1
     */
    public static double yieldAt(double known, double slope, double dose, double knownDose, double low, double high) {
        return Math.min(1, known - slope * (Math.min(Math.max(dose, low), high) - knownDose));
    }
}
