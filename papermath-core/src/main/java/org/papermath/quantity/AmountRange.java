package org.papermath.quantity;

import java.util.Objects;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.measure.Quantity;

/**
 * From a least to a most amount of one kind. The two never cross: no range is made, and none comes out of the
 * operations here, whose least is above its most.
 *
 * <pre>{@code
 * AmountRange.read(Kinds.TIME, "5-6 min"); // 5 min to 6 min
 * AmountRange.read(Kinds.TIME, "5 to 6 min").overlap(AmountRange.read(Kinds.TIME, "330 s to 8 min")); // Optional[330 s to 6 min]
 * }</pre>
 *
 * @param <Q> the quantity type
 */
public final class AmountRange<Q extends Quantity<Q>> {
    private static final Pattern TEXT =
            Pattern.compile("(.*?\\d[^\\d]*?)(?:\\s+to\\s+|\\s*(?<![eE])[-–—]\\s*)([-.\\d½¼¾].*)");

    private final Amount<Q> least;
    private final Amount<Q> most;

    private AmountRange(Amount<Q> least, Amount<Q> most) {
        this.least = least;
        this.most = most;
    }

    /**
     * Makes a range.
     *
     * @param <Q> the quantity type
     * @param least the least
     * @param most the most, of the same kind, not less
     * @return the range
     * @throws Refused if the least is above the most, or the two are of different kinds
     */
    public static <Q extends Quantity<Q>> AmountRange<Q> of(Amount<Q> least, Amount<Q> most) {
        Objects.requireNonNull(least, "least");
        Objects.requireNonNull(most, "most");
        if (least.si() > least.kind().si(most, "most")) {
            throw Refused.of(
                    "range.crossed",
                    least.kind().name() + ": from " + least + " to " + most
                            + " given; the least comes first and is not above the most. Check the order and the units.",
                    "quantity",
                    least.kind().name(),
                    "least",
                    least.toString(),
                    "most",
                    most.toString());
        }
        return new AmountRange<>(least, most);
    }

    /**
     * Makes a range of one amount.
     *
     * @param <Q> the quantity type
     * @param amount the amount
     * @return the range from it to itself
     */
    public static <Q extends Quantity<Q>> AmountRange<Q> of(Amount<Q> amount) {
        Objects.requireNonNull(amount, "amount");
        return new AmountRange<>(amount, amount);
    }

    /**
     * Reads a range as people write it: {@code 5-6 min}, {@code 5 to 6 min}, {@code 330 s to 6 min}, or one amount. Each of
     * the two is read as {@link Kind#read} does; the first takes its unit from the second if it has none.
     *
     * @param <Q> the quantity type
     * @param kind the kind wanted
     * @param text the text
     * @return the range
     * @throws Refused if it cannot be read or its ends cross
     * @throws Unclear as {@link Kind#read}
     */
    public static <Q extends Quantity<Q>> AmountRange<Q> read(Kind<Q> kind, CharSequence text) {
        Objects.requireNonNull(kind, "kind");
        Objects.requireNonNull(text, "text");
        String whole = text.toString().strip();
        Matcher two = TEXT.matcher(whole);
        if (!two.matches() || whole.matches("\\d+\\s*-\\s*\\d+\\s*/.*")) {
            return of(kind.read(whole));
        }
        String first = two.group(1).strip();
        String unit = two.group(2).replaceFirst("^[\\d.½¼¾]+(?:[eE][+-]?\\d+)?(?:\\s+\\d+/\\d+)?", "");
        boolean bare = Character.isDigit(first.charAt(first.length() - 1)) && !unit.isBlank();
        return of(kind.read(bare ? first + unit : first), kind.read(two.group(2)));
    }

    /** {@return the least} */
    public Amount<Q> least() {
        return least;
    }

    /** {@return the most} */
    public Amount<Q> most() {
        return most;
    }

    /**
     * Returns whether an amount lies in the range, its ends with it.
     *
     * @param amount an amount of the same kind
     * @return whether it does
     * @throws Refused if the amount is of another kind
     */
    public boolean contains(Quantity<Q> amount) {
        double si = least.kind().si(amount, least.kind().name());
        return least.si() <= si && si <= most.si();
    }

    /**
     * Returns whether all of this range is below all of another.
     *
     * @param other the other, of the same kind
     * @return whether its most is below the other's least
     * @throws Refused if the other is of another kind
     */
    public boolean isBelow(AmountRange<Q> other) {
        Objects.requireNonNull(other, "other");
        return most.si() < most.kind().si(other.least, most.kind().name());
    }

    /**
     * Returns what two ranges have in common.
     *
     * @param other the other, of the same kind
     * @return their common part, a single amount where they only touch; empty if one is below the other
     * @throws Refused if the other is of another kind
     */
    public Optional<AmountRange<Q>> overlap(AmountRange<Q> other) {
        if (isBelow(other) || other.isBelow(this)) {
            return Optional.empty();
        }
        return Optional.of(new AmountRange<>(
                least.si() >= other.least.si() ? least : other.least,
                most.si() <= other.most.si() ? most : other.most));
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof AmountRange<?> that && least.equals(that.least) && most.equals(that.most);
    }

    @Override
    public int hashCode() {
        return Objects.hash(least, most);
    }

    @Override
    public String toString() {
        return least.equals(most) ? least.toString() : least + " to " + most;
    }
}
