package org.papermath.cost;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.regex.Pattern;
import org.papermath.quantity.Name;
import org.papermath.quantity.Refused;

/** Decimal numbers that come from text or from amounts. */
final class Decimals {
    /** Digits of an amount that enter a sum of money: a double holds nearly sixteen, and converting units costs the last. */
    static final int DIGITS_OF_AMOUNTS = 12;

    static final MathContext OF_AMOUNTS = new MathContext(DIGITS_OF_AMOUNTS, RoundingMode.HALF_UP);
    static final BigDecimal HUNDRED = BigDecimal.valueOf(100);

    private static final Pattern NUMBER = Pattern.compile("-?[0-9]{1,15}(\\.[0-9]{1,9})?");

    private Decimals() {}

    /** A double as the decimal number it stands for, to twelve digits. */
    static BigDecimal of(double value) {
        return new BigDecimal(value).round(OF_AMOUNTS);
    }

    /** A number as it is written: digits, a decimal point, no separators. */
    static BigDecimal read(String text, String what) {
        if (!NUMBER.matcher(text).matches()) {
            throw Refused.of(
                    "money.number",
                    what + ": \"" + Name.shown(text)
                            + "\" is not a number here. Write at most 15 digits before the decimal"
                            + " point and 9 behind it, without separators, such as 1250.50.",
                    "of",
                    what,
                    "found",
                    Name.shown(text));
        }
        return new BigDecimal(text);
    }

    /** A number without needless noughts behind the point. */
    static String plain(BigDecimal value) {
        BigDecimal bare = value.stripTrailingZeros();
        return (bare.scale() < 0 ? bare.setScale(0) : bare).toPlainString();
    }
}
