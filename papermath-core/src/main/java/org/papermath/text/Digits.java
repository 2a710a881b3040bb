package org.papermath.text;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/** Numbers for people. */
public final class Digits {
    private Digits() {}

    /** Three digits, without trailing zeros. */
    public static String three(double value) {
        if (value == 0) {
            return "0";
        }
        return new BigDecimal(value)
                .round(new MathContext(3, RoundingMode.HALF_UP))
                .stripTrailingZeros()
                .toPlainString();
    }
}
