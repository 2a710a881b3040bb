package org.papermath.cost;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.papermath.quantity.Name;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Unclear;

/** The arithmetic of markup and margin, on profit over cost. */
final class Profits {
    private static final Pattern TEXT = Pattern.compile("([0-9.]+) ?(?:%|per ?cent|percent)(.*)");

    /** Profit over cost, both of any size: 1 over 4 is a markup of 25 % and a margin of 20 %. */
    record Ratio(BigDecimal profit, BigDecimal cost) {
        BigDecimal price() {
            return profit.add(cost);
        }

        boolean isSame(Ratio other) {
            return profit.multiply(other.cost).compareTo(other.profit.multiply(cost)) == 0;
        }

        /** Rounded, so that equal ratios have the same. */
        int hash() {
            return profit.divide(cost, 9, RoundingMode.HALF_UP)
                    .stripTrailingZeros()
                    .hashCode();
        }
    }

    private Profits() {}

    static Ratio ratio(Profit profit) {
        return profit instanceof Markup markup ? markup.ratio() : ((Margin) profit).ratio();
    }

    static Money price(Money cost, Profit profit, RoundingMode rounding) {
        Ratio ratio = ratio(profit);
        return over(cost, ratio.price(), ratio.cost(), rounding);
    }

    static Money cost(Money price, Profit profit) {
        Ratio ratio = ratio(profit);
        return over(price, ratio.cost(), ratio.price(), RoundingMode.HALF_UP);
    }

    static Money over(Money money, BigDecimal factor, BigDecimal divisor, RoundingMode rounding) {
        BigDecimal exact = money.amount().multiply(factor);
        return Money.of(exact.divide(divisor, money.amount().scale(), rounding), money.currency());
    }

    static Profit read(String text, @Nullable Money cost) {
        String bare = text.strip();
        Matcher parts = TEXT.matcher(bare);
        String of = parts.matches() ? parts.group(2).strip() : "";
        if (!parts.matches()
                || !List.of("", "on cost", "of cost", "of the price", "of price")
                        .contains(of)) {
            throw Refused.of(
                    "price.profit-text",
                    "profit: \"" + Name.shown(bare)
                            + "\" is neither a share on the cost nor one of the price. Write for"
                            + " example \"20 % on cost\" or \"20 % of the price\".",
                    "found",
                    Name.shown(bare));
        }
        BigDecimal percent = Decimals.read(parts.group(1), "profit");
        if (of.isEmpty()) {
            Money example = cost == null ? null : cost;
            String on = Decimals.plain(percent) + " % on cost";
            String off = Decimals.plain(percent) + " % of the price";
            throw new Unclear(
                    "price.which-per-cent",
                    "profit: \"" + Name.shown(bare) + "\" may be a share on the cost or of the price. Say which"
                            + (example == null ? "" : ", at a cost of " + example) + ".",
                    List.of(
                            new Unclear.Candidate(on, gives(Markup.percent(percent), example)),
                            percent.compareTo(Decimals.HUNDRED) < 0
                                    ? new Unclear.Candidate(off, gives(Margin.percent(percent), example))
                                    : new Unclear.Candidate(off, "cannot be: nothing would be left for the cost")),
                    "found",
                    Name.shown(bare));
        }
        return of.endsWith("cost") ? Markup.percent(percent) : Margin.percent(percent);
    }

    private static String gives(Profit profit, @Nullable Money cost) {
        if (cost != null) {
            return "price " + profit.priceOf(cost);
        }
        Ratio ratio = ratio(profit);
        return "price "
                + Decimals.plain(Decimals.HUNDRED.multiply(ratio.price()).divide(ratio.cost(), 2, RoundingMode.HALF_UP))
                + " at a cost of 100";
    }

    /** The refusal of a share of the other thing. */
    static Refused other(Profit read, String wanted) {
        Profit turned = read instanceof Markup ? read.asMargin() : read.asMarkup();
        return Refused.of(
                "price.other-share",
                "\"" + read + "\" is given; a share " + wanted + " is expected here. It is about " + turned + ".",
                "given",
                read.toString(),
                "wanted",
                wanted);
    }

    /** So many per cent: exactly where nine digits behind the point are enough, else to four of them. */
    static String percent(BigDecimal part, BigDecimal whole) {
        BigDecimal hundredfold = part.multiply(Decimals.HUNDRED);
        BigDecimal exact = hundredfold.divide(whole, 9, RoundingMode.HALF_UP);
        boolean whole9 = exact.multiply(whole).compareTo(hundredfold) == 0;
        return Decimals.plain(whole9 ? exact : hundredfold.divide(whole, 4, RoundingMode.HALF_UP)) + " %";
    }
}
