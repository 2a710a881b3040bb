package org.papermath.air;

import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Temperature;
import org.papermath.equation.WaterProperties;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Scope;
import org.papermath.quantity.Amount;
import org.papermath.quantity.ApparentDensity;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;
import org.papermath.quantity.SolutionStrength;
import org.papermath.quantity.Viscosity;

/** Water at a temperature: how heavy and how thick it is. Immutable. */
public final class Water {
    private static final double ZERO_CELSIUS = 273.15;

    private final double kelvin;
    /** Viscosity in a mat over that of clear water. */
    private final double thickening;

    private Water(double kelvin, double thickening) {
        this.kelvin = kelvin;
        this.thickening = thickening;
    }

    /**
     * Makes water at a temperature.
     *
     * @param temperature the temperature, 0 to 100 °C
     * @return the water
     * @throws Refused if the temperature is out of range
     */
    public static Water at(Quantity<Temperature> temperature) {
        return new Water(Kinds.TEMPERATURE.siWithin(temperature, "water temperature", 273.15, 373.15), 1);
    }

    /**
     * Returns water at 20 °C, which tables of drainage start from.
     *
     * @return the water
     */
    public static Water room() {
        return new Water(ZERO_CELSIUS + 20, 1);
    }

    /**
     * Returns this water with formation aid in it: μ_a = μ (1 + k c), with c what is dissolved and k the row {@code
     * drainage.aid-thickening}. It is the viscosity the water has while it runs between the fibres of a mat, where the
     * long chains are stretched; in a viscometer so little aid makes almost no difference. Aid that was there before
     * does not count: the concentration is of all of it.
     *
     * @param assumptions where the row is looked up
     * @param perLitre formation aid in a litre, without what the fibre holds, 0 to 1 g/L
     * @return the water
     * @throws Refused if the concentration is out of range
     * @source the first term of the viscosity of dilute polymers; the size of k is common practice, without source
     */
    public Water withFormationAid(Assumptions assumptions, Quantity<SolutionStrength> perLitre) {
        Objects.requireNonNull(assumptions, "assumptions");
        double c = Kinds.SOLUTION_STRENGTH.siWithin(perLitre, "formation aid per litre", 0, 1);
        return new Water(
                kelvin, WaterProperties.thickened(1, assumptions.si("drainage.aid-thickening", Scope.GENERAL), c));
    }

    /**
     * Returns the temperature.
     *
     * @return the temperature
     */
    public Amount<Temperature> temperature() {
        return Kinds.TEMPERATURE.ofSi(kelvin, "Cel");
    }

    /**
     * Returns the density of air-free water at one atmosphere.
     *
     * @return the density
     * @source Tanaka et al., Metrologia 38, 2001, to 40 °C; above it Kell 1975, drawn to meet it there
     */
    public Amount<ApparentDensity> density() {
        return Kinds.DENSITY.ofSi(WaterProperties.density(kelvin - ZERO_CELSIUS), "kg/m3");
    }

    /**
     * Returns the viscosity; at 40 °C it is a third less than at 20 °C, which is why warm vats drain faster. With
     * formation aid it is that of the water running through a mat.
     *
     * @return the dynamic viscosity
     * @source Vogel's form, 2.414·10⁻⁵ Pa·s × 10^(247.8 / (T − 140))
     */
    public Amount<Viscosity> viscosity() {
        return Kinds.VISCOSITY.ofSi(thickening * WaterProperties.viscosity(kelvin - ZERO_CELSIUS), "mPa.s");
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Water that && kelvin == that.kelvin && thickening == that.thickening;
    }

    @Override
    public int hashCode() {
        return Double.hashCode(kelvin) * 31 + Double.hashCode(thickening);
    }

    @Override
    public String toString() {
        return "water at " + temperature() + (thickening > 1 ? " with formation aid" : "");
    }
}
