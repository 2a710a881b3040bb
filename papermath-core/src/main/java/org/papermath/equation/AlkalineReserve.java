package org.papermath.equation;

/** Carbonate in paper and the acid it takes up: two moles of acid for each mole of a carbonate of calcium or magnesium. */
public final class AlkalineReserve {
    /** Molar mass of calcium carbonate, kg/mol. */
    public static final double CALCIUM_CARBONATE = 0.1000869;

    /** Molar mass of magnesium carbonate, kg/mol. */
    public static final double MAGNESIUM_CARBONATE = 0.0843139;

    private AlkalineReserve() {}

    /** Mass of one carbonate that takes up as much acid as a mass of another. */
    public static double equivalent(double mass, double molarMass, double molarMassOfOther) {
        return mass / molarMass * molarMassOfOther;
    }
}
