package org.papermath.colour;

import java.math.BigDecimal;
import java.math.RoundingMode;
import org.papermath.quantity.Refused;

/** Plain numbers of colour: what they may be, and how they are said. */
final class ColourRange {
    private ColourRange() {}

    static double check(String what, double value, double low, double high) {
        if (!(value >= low && value <= high)) {
            throw Refused.of(
                    "colour.out-of-range",
                    what + ": " + (Double.isFinite(value) ? said(value) : "not a number") + " is not from " + said(low)
                            + " to " + said(high) + ".",
                    "what",
                    what,
                    "given",
                    value,
                    "low",
                    low,
                    "high",
                    high);
        }
        return value;
    }

    static String said(double value) {
        return said(value, 2);
    }

    static String said(double value, int places) {
        BigDecimal rounded = BigDecimal.valueOf(value)
                .setScale(places, RoundingMode.HALF_EVEN)
                .stripTrailingZeros();
        return rounded.signum() == 0 ? "0" : rounded.toPlainString();
    }
}
