package org.papermath.air;

import javax.measure.Quantity;
import javax.measure.quantity.Temperature;
import org.papermath.equation.WaterProperties;
import org.papermath.quantity.Amount;
import org.papermath.quantity.ApparentDensity;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Viscosity;

/** Water at a temperature: how heavy and how thick it is. Immutable. */
public final class Water {
    private static final double ZERO_CELSIUS = 273.15;

    private final double kelvin;

    private Water(double kelvin) {
        this.kelvin = kelvin;
    }

    /**
     * Makes water at a temperature.
     *
     * @param temperature the temperature, 0 to 100 °C
     * @return the water
     * @throws Refused if the temperature is out of range
     */
    public static Water at(Quantity<Temperature> temperature) {
        return new Water(Kinds.TEMPERATURE.siWithin(temperature, "water temperature", 273.15, 373.15));
    }

    /**
     * Returns water at 20 °C, which tables of drainage start from.
     *
     * @return the water
     */
    public static Water room() {
        return new Water(ZERO_CELSIUS + 20);
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
     * Returns the viscosity; at 40 °C it is a third less than at 20 °C, which is why warm vats drain faster.
     *
     * @return the dynamic viscosity
     * @source Vogel's form, 2.414·10⁻⁵ Pa·s × 10^(247.8 / (T − 140))
     */
    public Amount<Viscosity> viscosity() {
        return Kinds.VISCOSITY.ofSi(WaterProperties.viscosity(kelvin - ZERO_CELSIUS), "mPa.s");
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Water that && kelvin == that.kelvin;
    }

    @Override
    public int hashCode() {
        return Double.hashCode(kelvin);
    }

    @Override
    public String toString() {
        return "water at " + temperature();
    }
}
