package org.papermath.card;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.time.format.TextStyle;
import java.util.Arrays;
import java.util.Locale;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Time;
import org.papermath.evidence.Estimate;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kind;
import org.papermath.quantity.Kinds;
import org.papermath.text.Digits;

/** Figures as a card writes them: a setting to the step of its tool, a forecast with no more digits than its band is worth. */
final class Figures {
    /** A band whose upper end is more than this many times its lower one does not help. */
    private static final double TOO_WIDE = 4;
    /** A band that goes further than this part to either side is told with two digits. */
    private static final double COARSE = 0.1;
    /** Work is told to five minutes, as a clock on the wall is read. */
    private static final int CLOCK_STEP = 5;
    /** From so many hours on whole ones do. */
    private static final int LONG = 10;
    /** Below so many minutes minutes do. */
    private static final int SHORT = 100;

    private static final int OUNCES_A_POUND = 16;

    private static final int MOST_PAIRS = 99;
    private static final double LEAST_OUNCES = 0.1;

    private final boolean customary;

    Figures(boolean customary) {
        this.customary = customary;
    }

    static String count(int number, String noun) {
        return number + " " + noun + (number == 1 ? "" : "s");
    }

    /** A setting: as rounded to the tool, with the customary unit in brackets where it is wanted. */
    <Q extends Quantity<Q>> String set(Amount<Q> amount, String customaryCode) {
        return Written.set(shown(amount).toString()) + bracket(amount, customaryCode);
    }

    /** The customary unit in brackets; quarts where there is less than a gallon, nothing below a tenth of an ounce. */
    <Q extends Quantity<Q>> String bracket(Amount<Q> amount, String customaryCode) {
        String code = customaryCode.equals("gal_us") && amount.in("gal_us") < 1 ? "qt_us" : customaryCode;
        if (!customary || code.isEmpty()) {
            return "";
        }
        double value = amount.in(code);
        if (code.equals("oz") && value >= OUNCES_A_POUND) {
            long ounces = Math.round(value);
            return Written.small(" (" + ounces / OUNCES_A_POUND + " lb"
                    + (ounces % OUNCES_A_POUND == 0 ? "" : " " + ounces % OUNCES_A_POUND + " oz") + ")");
        }
        return code.equals("oz") && value < LEAST_OUNCES
                ? ""
                : Written.small(" (" + Digits.three(value) + " " + sign(amount.kind(), code) + ")");
    }

    /** Millilitres below a litre, tenths of a litre from ten litres on, kilograms from ten on. */
    static <Q extends Quantity<Q>> Amount<Q> shown(Amount<Q> amount) {
        if (amount.kind() == (Kind<?>) Kinds.VOLUME && amount.si() > 0 && amount.si() < 1e-3) {
            return amount.to("mL");
        }
        if (amount.kind() == (Kind<?>) Kinds.VOLUME && amount.si() >= 1e-2) {
            return amount.kind().of(Math.rint(10 * amount.in("L")) / 10, "L");
        }
        if (amount.kind() == (Kind<?>) Kinds.MASS && amount.si() >= 10) {
            return amount.to("kg");
        }
        return amount;
    }

    static <Q extends Quantity<Q>> String sign(Kind<Q> kind, String code) {
        return kind.of(1, code).toString().substring(2);
    }

    /** What follows from a setting and is read from no tool that shows more: three digits. */
    <Q extends Quantity<Q>> String about(Amount<Q> amount, String customaryCode) {
        Amount<Q> shown = shown(amount);
        return Digits.three(shown.value()) + unit(shown) + bracket(amount, customaryCode);
    }

    /** A stretch of work as a clock has it, with its band: in minutes, in hours, or in both where it is neither short nor long. */
    String spell(Estimate<Time> time) {
        if (time.isOpenBelow() || time.isOpenAbove()) {
            return band(time);
        }
        double low = time.low().in("min");
        double likely = time.likely().in("min");
        double high = time.high().in("min");
        if (high < SHORT) {
            return whole(Math.round(likely), Math.round(low), Math.round(high)) + " min";
        }
        if (likely >= 60 * LONG) {
            return whole(Math.round(likely / 60), Math.round(low / 60), Math.round(high / 60)) + " h";
        }
        return banded(about(time.likely()), about(time.low()), about(time.high()));
    }

    private static String whole(long likely, long low, long high) {
        return banded(Long.toString(likely), Long.toString(low), Long.toString(high));
    }

    /** What is likely, with the ends of its band behind it where they read otherwise. */
    private static String banded(String likely, String low, String high) {
        return likely + (low.equals(high) ? "" : " (" + low + "–" + high + ")");
    }

    /** A time no finer than anybody can tell it: whole hours from ten on, ten minutes from one hour on. */
    static String about(Amount<Time> time) {
        double minutes = time.in("min");
        double step = minutes >= 60 * LONG ? 60 : minutes >= 60 ? 10 : 1;
        return clock(Kinds.TIME.of(Math.rint(minutes / step) * step, "min"));
    }

    String litres(double litres) {
        return set(Kinds.VOLUME.of(litres < 10 ? Math.rint(100 * litres) / 100 : litres, "L"), "gal_us");
    }

    /** A time as a clock has it. */
    static String clock(Amount<Time> time) {
        long minutes = Math.round(time.in("min"));
        if (minutes < 1) {
            return Digits.three(time.in("s")) + " s";
        }
        String hours = minutes >= 60 ? minutes / 60 + " h" : "";
        return minutes % 60 == 0 ? hours : hours + (hours.isEmpty() ? "" : " ") + minutes % 60 + " min";
    }

    static <Q extends Quantity<Q>> String size(Amount<Q> width, Amount<Q> height) {
        return half(width.in("mm")) + " × " + half(height.in("mm")) + " mm";
    }

    /** The sides as an inch rule has them, in brackets, where customary units are wanted. */
    <Q extends Quantity<Q>> String inches(Amount<Q> width, Amount<Q> height) {
        return customary
                ? Written.small(" (" + sixteenths(width.in("in")) + " × " + sixteenths(height.in("in")) + " in)")
                : "";
    }

    /** To half a millimetre, as a rule is read. */
    static String half(double millimetres) {
        return new BigDecimal(Math.rint(2 * millimetres) / 2)
                .setScale(1, RoundingMode.HALF_UP)
                .stripTrailingZeros()
                .toPlainString();
    }

    /** Inches and sixteenths, as a rule is read. */
    static String sixteenths(double inches) {
        long all = Math.round(16 * inches);
        long part = all % 16;
        int parts = 16;
        while (part > 0 && part % 2 == 0) {
            part /= 2;
            parts /= 2;
        }
        String whole = all >= 16 || part == 0 ? Long.toString(all / 16) : "";
        return part == 0 ? whole : whole + (whole.isEmpty() ? "" : " ") + part + "/" + parts;
    }

    /** A share of pairs that is all of them but for a far tail is not called all. */
    static String fits(double percent) {
        return percent > MOST_PAIRS ? "over " + MOST_PAIRS + " %" : Digits.three(percent) + " %";
    }

    /** Whole pieces, of which a part is none. */
    static String whole(Estimate<Dimensionless> good) {
        return whole(
                (long) Math.floor(good.likely().si()),
                (long) Math.floor(good.low().si()),
                (long) Math.floor(good.high().si()));
    }

    /** {@return whether a band is no help: nobody can tell within a factor of four} */
    static <Q extends Quantity<Q>> boolean isTooWide(Estimate<Q> estimate) {
        return !estimate.isOpenBelow()
                && !estimate.isOpenAbove()
                && estimate.high().si() > TOO_WIDE * estimate.low().si();
    }

    /** What a check should read: the band; its ends alone where that is no help. */
    <Q extends Quantity<Q>> String aim(Estimate<Q> estimate) {
        String unit = unit(estimate.likely());
        return isTooWide(estimate)
                ? two(estimate.low().value()) + "–" + two(estimate.high().value()) + unit
                : band(estimate);
    }

    /** A likely value between two others, with digits as a band has them. */
    static String between(double likely, double low, double high, String unit) {
        int digits = high - low > 2 * COARSE * Math.abs(likely) ? 2 : 3;
        return banded(
                        Digits.significant(likely, digits),
                        Digits.significant(low, digits),
                        Digits.significant(high, digits))
                + unit;
    }

    private static <Q extends Quantity<Q>> String unit(Amount<Q> amount) {
        String text = amount.toString();
        return text.indexOf(' ') < 0 ? "" : text.substring(text.indexOf(' '));
    }

    /** A day of the week, day and month, as a calendar on the wall has it. */
    static String day(LocalDate date) {
        return date.getDayOfWeek().getDisplayName(TextStyle.SHORT, Locale.ENGLISH) + " " + date.getDayOfMonth() + " "
                + date.getMonth().getDisplayName(TextStyle.SHORT, Locale.ENGLISH);
    }

    /** The same in full, with the year. */
    static String wholeDay(LocalDate date) {
        return date.getDayOfWeek().getDisplayName(TextStyle.FULL, Locale.ENGLISH) + " " + date.getDayOfMonth() + " "
                + date.getMonth().getDisplayName(TextStyle.FULL, Locale.ENGLISH) + " " + date.getYear();
    }

    /** Work as a clock on the wall has it, to five minutes and no less. */
    static String work(Amount<Time> time) {
        long minutes = Math.max(1, Math.round(time.in("min") / CLOCK_STEP)) * CLOCK_STEP;
        return time.si() > 0 ? clock(Kinds.TIME.of((double) minutes, "min")) : "";
    }

    /** A sum of estimates' likely values and the like: with two digits, as forecasts are added. */
    static String grams(double kilograms) {
        return kilograms < 1 ? Digits.significant(1000 * kilograms, 2) + " g" : Digits.three(kilograms) + " kg";
    }

    static String two(double value) {
        return Digits.significant(value, 2);
    }

    static String range(double[] values) {
        String low = Digits.three(Arrays.stream(values).min().orElse(0));
        String high = Digits.three(Arrays.stream(values).max().orElse(0));
        return low.equals(high) ? low : low + "–" + high;
    }

    /** A forecast: likely value and band, with as many digits as the band is worth. */
    <Q extends Quantity<Q>> String band(Estimate<Q> estimate) {
        double likely = estimate.likely().value();
        String unit = unit(estimate.likely());
        if (!estimate.isOpenBelow() && !estimate.isOpenAbove()) {
            return between(likely, estimate.low().value(), estimate.high().value(), unit);
        }
        return two(likely)
                + (!estimate.isOpenAbove()
                        ? " (" + two(estimate.high().value()) + " or less)"
                        : !estimate.isOpenBelow() ? " (" + two(estimate.low().value()) + " or more)" : "")
                + unit;
    }
}
