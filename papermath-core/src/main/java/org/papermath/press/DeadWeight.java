package org.papermath.press;

import javax.measure.Quantity;
import javax.measure.quantity.Area;
import javax.measure.quantity.Mass;
import org.papermath.equation.PressForce;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;
import org.papermath.quantity.SheetPressure;

/** Pressing by weights laid on the sheets: {@code p = m g/A}, with standard gravity. */
public final class DeadWeight {
    private DeadWeight() {}

    /**
     * Returns the pressure of a weight.
     *
     * @param mass the mass laid on
     * @param area the area of the sheets, above zero
     * @return the pressure on the sheet
     * @throws Refused if a value is out of range
     */
    public static Amount<SheetPressure> pressure(Quantity<Mass> mass, Quantity<Area> area) {
        return Kinds.SHEET_PRESSURE.ofSi(
                PressForce.pressure(
                        PressForce.weightForce(Kinds.MASS.si(mass, "mass of the weight")),
                        Kinds.AREA.siAboveZero(area, "area of the sheets")),
                "kPa");
    }

    /**
     * Returns the weight for a pressure.
     *
     * @param pressure the pressure on the sheet
     * @param area the area of the sheets, above zero
     * @return the mass to lay on
     * @throws Refused if a value is out of range
     */
    public static Amount<Mass> massFor(Quantity<SheetPressure> pressure, Quantity<Area> area) {
        double force = PressForce.force(
                Kinds.SHEET_PRESSURE.si(pressure, "pressure on the sheet"),
                Kinds.AREA.siAboveZero(area, "area of the sheets"));
        return Kinds.MASS.ofSi(force / PressForce.STANDARD_GRAVITY, "kg");
    }
}
