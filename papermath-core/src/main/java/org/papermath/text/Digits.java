package org.papermath.text;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/** Numbers for people. */
public final class Digits {
    private Digits() {}

    /** Three significant digits, without trailing zeros. */
    public static String three(double value) {
        return significant(value, 3);
    }

    /** Four significant digits, without trailing zeros. */
    public static String four(double value) {
        return significant(value, 4);
    }

    /** A fraction in per cent, with four significant digits and the sign. */
    public static String percent(double fraction) {
        return four(100 * fraction) + " %";
    }

    /** So many significant digits, without trailing zeros; very large and very small numbers with their power of ten. */
    public static String significant(double value, int digits) {
        if (value == 0) {
            return "0";
        }
        BigDecimal rounded = BigDecimal.valueOf(value)
                .round(new MathContext(digits, RoundingMode.HALF_UP))
                .stripTrailingZeros();
        int exponent = rounded.precision() - rounded.scale() - 1;
        return exponent >= -5 && exponent < 9
                ? rounded.toPlainString()
                : rounded.toString().replace("E+", "e").replace('E', 'e');
    }
}
