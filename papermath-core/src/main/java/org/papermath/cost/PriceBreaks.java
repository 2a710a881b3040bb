package org.papermath.cost;

import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import org.papermath.order.Order;
import org.papermath.order.Studio;
import org.papermath.plan.MakingPlan;
import org.papermath.quantity.Limits;
import org.papermath.quantity.Refused;

/**
 * What a piece costs at several counts: on average, and for one more. Each count is planned anew, so the steps of loads, posts
 * and packs are in it; at the likely values, without bands. Immutable.
 *
 * <pre>{@code
 * PriceBreaks.of(order, studio, prices, "programme", Margin.percent(30), 25, 50, 100, 200).rows();
 * }</pre>
 *
 * <p>The other pieces of the order stay as they are. The average is the cost that falls to the piece over its count; the marginal
 * cost is what the whole order costs more than at the count before, over the pieces more. Where it is below the average, a
 * larger count is cheaper for each.
 */
public final class PriceBreaks {
    private static final int MOST = 50;

    private final String piece;
    private final List<Row> rows;

    /** One count. */
    public sealed interface Row permits FoundRow {
        /** {@return how many are ordered} */
        int count();

        /** {@return what the piece costs in all} */
        Money cost();

        /** {@return the cost over the count, rounded} */
        Money average();

        /** {@return what one more costs between the count before and this one, rounded; of the first count the average} */
        Money marginal();

        /** {@return the price of one, rounded up to the coin} */
        Money price();
    }

    private record FoundRow(int count, Money cost, Money average, Money marginal, Money price) implements Row {
        @Override
        public String toString() {
            return count + ": " + price + " each; cost " + average + ", one more " + marginal;
        }
    }

    private PriceBreaks(String piece, List<Row> rows) {
        this.piece = piece;
        this.rows = rows;
    }

    /**
     * Costs a piece at several counts.
     *
     * @param order the order
     * @param studio the studio
     * @param prices the list of prices
     * @param piece the name of the piece
     * @param profit a markup or a margin
     * @param counts the counts, 1 to 50 of them, each within {@link Limits#PIECES}
     * @return the table, by rising count
     * @throws Refused if there is no such piece, no count or too many, a count is out of range, or the order cannot be made
     */
    public static PriceBreaks of(
            Order order, Studio studio, PriceList prices, String piece, Profit profit, int... counts) {
        Objects.requireNonNull(order, "order");
        Objects.requireNonNull(studio, "studio");
        Objects.requireNonNull(prices, "prices");
        Objects.requireNonNull(piece, "piece");
        Objects.requireNonNull(profit, "profit");
        Objects.requireNonNull(counts, "counts");
        int[] rising = Arrays.stream(counts).sorted().distinct().toArray();
        if (rising.length < 1 || rising.length > MOST) {
            throw Refused.of(
                    "price.counts",
                    "price breaks: " + rising.length + " counts given; must be from 1 to " + MOST + ".",
                    "given",
                    rising.length,
                    "least",
                    1,
                    "most",
                    MOST);
        }
        List<Row> rows = new ArrayList<>();
        Money before = Money.zero(prices.currency());
        int fewer = 0;
        for (int count : rising) {
            Limits.PIECES.check(count, "pieces");
            Costing costing =
                    Costing.of(MakingPlan.withoutBands(order.with(piece, one -> one.count(count)), studio), prices);
            Money whole = costing.cost().likely();
            Costing.OfPiece costs = costing.piece(piece);
            rows.add(new FoundRow(
                    count,
                    costs.cost().likely(),
                    costs.perPieceSold().likely(),
                    fewer == 0
                            ? costs.perPieceSold().likely()
                            : whole.minus(before).dividedBy(count - fewer, RoundingMode.HALF_UP),
                    Pricing.of(costing, profit).piece(piece).price()));
            before = whole;
            fewer = count;
        }
        return new PriceBreaks(piece, List.copyOf(rows));
    }

    /**
     * Returns the piece.
     *
     * @return its name
     */
    public String piece() {
        return piece;
    }

    /**
     * Returns the rows.
     *
     * @return an unmodifiable list, by rising count
     */
    public List<Row> rows() {
        return rows;
    }

    @Override
    public String toString() {
        return piece + ": " + rows;
    }
}
