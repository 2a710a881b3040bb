package org.papermath.press;

import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Pressure;
import org.papermath.equation.Psychrometrics;
import org.papermath.quantity.Amount;
import org.papermath.quantity.GaugePressure;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;
import org.papermath.quantity.SheetPressure;

/**
 * Pressing by a vacuum: the air outside presses, so never with more than the local atmosphere.
 *
 * @param drawn what the vacuum gauge shows
 * @param atmosphere the local pressure of the air
 */
public record Vacuum(Amount<GaugePressure> drawn, Amount<Pressure> atmosphere) {
    /**
     * Checks the vacuum against the atmosphere.
     *
     * @param drawn what the vacuum gauge shows
     * @param atmosphere the local pressure of the air
     * @throws Refused as {@link #of(Quantity)}
     */
    public Vacuum {
        Objects.requireNonNull(drawn, "drawn");
        Objects.requireNonNull(atmosphere, "atmosphere");
        requireBelow(drawn, atmosphere);
    }

    /**
     * Makes a vacuum at sea level.
     *
     * @param drawn what the vacuum gauge shows
     * @return the vacuum
     * @throws Refused if it is more than the atmosphere; where the number would be possible in inches of mercury the
     *     message says so
     */
    public static Vacuum of(Quantity<GaugePressure> drawn) {
        return of(drawn, Kinds.AIR_PRESSURE.ofSi(Psychrometrics.STANDARD_PRESSURE, "kPa"));
    }

    /**
     * Makes a vacuum at an altitude, with the standard atmosphere there:
     * {@code p = 101325 (1 - 2.25577e-5 z)^5.2559}.
     *
     * @param drawn what the vacuum gauge shows
     * @param altitude the altitude above the sea, up to 9 km
     * @return the vacuum
     * @throws Refused as {@link #of(Quantity)}
     */
    public static Vacuum atAltitude(Quantity<GaugePressure> drawn, Quantity<Length> altitude) {
        double metres = Kinds.LENGTH.siWithin(altitude, "altitude", 0, 9000);
        return of(drawn, Kinds.AIR_PRESSURE.ofSi(Psychrometrics.pressureAtAltitude(metres), "kPa"));
    }

    /**
     * Makes a vacuum under a known pressure of the air.
     *
     * @param drawn what the vacuum gauge shows
     * @param atmosphere the local pressure of the air, above zero
     * @return the vacuum
     * @throws Refused as {@link #of(Quantity)}
     */
    public static Vacuum of(Quantity<GaugePressure> drawn, Quantity<Pressure> atmosphere) {
        return new Vacuum(
                Kinds.GAUGE_PRESSURE.check(drawn, "vacuum"),
                Kinds.AIR_PRESSURE.check(atmosphere, "pressure of the air"));
    }

    private static void requireBelow(Amount<GaugePressure> shown, Amount<Pressure> air) {
        if (shown.si() > air.si()) {
            Amount<GaugePressure> mercury = Kinds.GAUGE_PRESSURE.of(shown.value(), "inHg");
            boolean likely = mercury.si() <= air.si() && !shown.getUnit().equals(mercury.getUnit());
            String limit = air.to("kPa") + " (" + air.to("psi") + ")";
            String meaning = mercury + " = " + mercury.to("kPa") + " = " + mercury.to("psi");
            throw Refused.of(
                    "vacuum.above-atmosphere",
                    "vacuum: " + shown + " given; no vacuum is more than the air outside, here " + limit + "."
                            + (likely
                                    ? " Inches of mercury were probably meant: " + meaning + "."
                                    : " Check the unit."),
                    "given",
                    shown.toString(),
                    "limit",
                    limit,
                    "likely",
                    likely ? meaning : "");
        }
    }

    /**
     * Returns the pressure on the sheet under a tight cover.
     *
     * @return the pressure
     */
    public Amount<SheetPressure> pressure() {
        return Kinds.SHEET_PRESSURE.ofSi(drawn.si(), "kPa");
    }

    @Override
    public String toString() {
        Amount<SheetPressure> kilopascals = pressure();
        return "vacuum of " + drawn
                + (drawn.toString().equals(kilopascals.toString()) ? "" : " (" + kilopascals + " on the sheet)");
    }
}
