package org.papermath.cost;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.Objects;
import java.util.function.Function;
import org.papermath.evidence.Notice;
import org.papermath.plan.MakingPlan;
import org.papermath.quantity.Refused;

/**
 * What a plan costs by a list of prices: line by line, fixed apart from what goes with the sheets, for the whole and for each
 * piece. Immutable.
 *
 * <pre>{@code
 * PriceList prices = PriceList.of("winter 2026", LocalDate.of(2026, 11, 1), Money.currency("EUR"))
 *         .fibre(Fibres.COTTON_RAG, MoneyRate.read(Kinds.MASS, "14 EUR per kg"))
 *         .hands(MoneyRate.read(Kinds.TIME, "24 EUR per h"))
 *         .build();
 * Costing costing = Costing.of(MakingPlan.of(order, studio), prices);
 * costing.cost();                              // the whole, with its band
 * costing.lines().get(0);                      // what it is, how much of it, what it costs
 * costing.piece("programme").perGoodPiece();   // with the band of hours and of good pieces
 * costing.gaps();                              // what the plan needs and the list has no price of
 * }</pre>
 *
 * <p><b>Lines.</b> Each line is rounded to the smallest unit once and shared among the pieces to the coin
 * ({@link Money#allocate}): materials, current and hours of a batch by the fibre in the sheets of each piece, hours and wear of
 * a piece to that piece, what comes once in an order by the number of pieces ordered. So the lines come to the whole, and the
 * pieces do. Fibre and stuff from the shelf are priced as if bought; packs are counted for the whole order.
 *
 * <p><b>Fixed and variable.</b> Fixed is what one sheet more would not change: trial sheets, what stays in the vat and the
 * pails, lines per order and per batch, the hours of cleaning. Of a material it is the part of its balance that goes there, of
 * hours, current and wear of a batch the same part of its fibre, of those of a piece its trial sheets over all its sheets. The
 * rest is variable and goes in proportion; the steps of loads and packs are smoothed by it. {@link PriceBreaks} plans each count
 * anew and has them.
 *
 * <p><b>Bands.</b> Settings have no band, so only hours of hands, the overhead that goes with them, current of the dryer and the
 * count of good pieces have one. First order: the hours of the whole are one band of the plan, in which hours that lean on the
 * same assumption move together; hours of hands and what goes by them are moved as one, and so is the current of all dryers.
 * Hours, drying and good pieces are then taken as independent and added as squares, of a cost for each good piece as
 * logarithms. Rates and prices are taken as certain.
 */
public final class Costing {
    /** What a line is of. */
    public enum Group {
        /** Fibre as bought. */
        FIBRE("fibre"),
        /** Additives, and what raw fibre is cooked in. */
        ADDITIVES("additives"),
        /** Dry size of the bath. */
        SIZE("size"),
        /** Water and drain. */
        WATER("water"),
        /** Current of beater and dryer. */
        ENERGY("current"),
        /** Hours of hands and of machines. */
        HOURS("hours"),
        /** Felts and blotters by wear. */
        WEAR("wear"),
        /** What the carrier asks, by a table of postage. */
        POSTAGE("postage"),
        /** Lines of one's own. */
        OWN("own lines"),
        /** Overheads. */
        OVERHEAD("overhead");

        private final String words;

        Group(String words) {
            this.words = words;
        }

        /**
         * Returns the group in words.
         *
         * @return for example {@code hours}
         */
        public String words() {
            return words;
        }
    }

    /** One line. */
    public sealed interface Line permits Costs.FoundLine {
        /** {@return what it is of} */
        Group group();

        /** {@return what it is, for example {@code cotton rag (half-stuff)}} */
        String what();

        /** {@return how much of it and at what price, in words} */
        String amount();

        /** {@return what it costs; fixed and variable together} */
        Money cost();

        /** {@return the part that one sheet more would not change} */
        Money fixed();

        /** {@return the part that goes with the sheets or the pieces} */
        Money variable();
    }

    /** Something the plan needs and the list has no price of. */
    public sealed interface Gap permits Costs.FoundGap {
        /** {@return what has no price} */
        String what();

        /** {@return how much of it the plan needs, and what to add to the list} */
        String needs();
    }

    /** Money that is not certain: the likely sum, and where it lies in nine makings of ten. */
    public sealed interface Band permits Costs.FoundBand {
        /** {@return the likely sum} */
        Money likely();

        /** {@return the 5 % point} */
        Money low();

        /** {@return the 95 % point} */
        Money high();
    }

    /** What one piece of the order costs. */
    public sealed interface OfPiece permits Costs.FoundPiece {
        /** {@return the name of the piece} */
        String name();

        /** {@return all of it, its part of what is shared too} */
        Band cost();

        /** {@return the fixed part} */
        Band fixed();

        /** {@return the part that goes with the sheets or the pieces} */
        Band variable();

        /** {@return sheets formed, trial sheets with them} */
        int sheets();

        /** {@return pieces sold: as many as are ordered} */
        int sold();

        /** {@return of the variable part, what goes into the pieces sold, packing and postage with it} */
        Money inSold();

        /** {@return of the variable part, what goes into good pieces over those ordered} */
        Money inSpares();

        /** {@return of the variable part, what the rejects cost: pieces that were formed and came out bad} */
        Money inRejects();

        /** {@return the cost over the sheets formed, rounded} */
        Money perSheetFormed();

        /** {@return the cost over the good pieces that will come out; in its band that of both} */
        Band perGoodPiece();

        /** {@return the cost over the pieces sold} */
        Band perPieceSold();

        /** {@return the variable part over the pieces sold, rounded: what one piece more costs, steps smoothed} */
        Money variablePerPiece();
    }

    private final MakingPlan plan;
    private final PriceList prices;
    private final Costs costs;

    private Costing(MakingPlan plan, PriceList prices, Costs costs) {
        this.plan = plan;
        this.prices = prices;
        this.costs = costs;
    }

    /**
     * Costs a plan.
     *
     * @param plan the plan
     * @param prices the list of prices
     * @return what it costs
     * @throws Refused if a line of one's own or a postage is for a piece the order has not, the table of postage has no service
     *     or step for what is posted, or a sum is more than money can hold
     */
    public static Costing of(MakingPlan plan, PriceList prices) {
        Objects.requireNonNull(plan, "plan");
        Objects.requireNonNull(prices, "prices");
        return new Costing(plan, prices, new Costs(plan, prices, true));
    }

    /** Costs a plan whose sheets others form: no hours of hands on its pieces. */
    static Costing withoutPieceHours(MakingPlan plan, PriceList prices) {
        return new Costing(plan, prices, new Costs(plan, prices, false));
    }

    /**
     * Returns the plan.
     *
     * @return the plan
     */
    public MakingPlan plan() {
        return plan;
    }

    /**
     * Returns the list of prices.
     *
     * @return the list
     */
    public PriceList prices() {
        return prices;
    }

    /**
     * Returns the lines, in the order of the groups.
     *
     * @return an unmodifiable list; they come to {@link #cost}
     */
    public List<Line> lines() {
        return costs.lines();
    }

    /**
     * Returns what the lines of a group come to.
     *
     * @param group the group
     * @return the sum, zero where there is none
     */
    public Money of(Group group) {
        Objects.requireNonNull(group, "group");
        return sum(line -> line.group() == group ? line.cost() : Money.zero(prices.currency()));
    }

    private Money sum(Function<Line, Money> part) {
        return lines().stream().map(part).reduce(Money.zero(prices.currency()), Money::plus);
    }

    /**
     * Returns what the whole costs; at least, where {@link #isAtLeast}.
     *
     * @return the sum of the lines, with its band
     */
    public Band cost() {
        return costs.cost();
    }

    /**
     * Returns the fixed part of the whole.
     *
     * @return with its band
     */
    public Band fixed() {
        return costs.fixed();
    }

    /**
     * Returns the part of the whole that goes with sheets and pieces.
     *
     * @return with its band
     */
    public Band variable() {
        return costs.variable();
    }

    /**
     * Returns what the rejects cost, over all pieces.
     *
     * @return the sum
     */
    public Money rejects() {
        return pieces().stream().map(OfPiece::inRejects).reduce(Money.zero(prices.currency()), Money::plus);
    }

    /**
     * Returns what the plan needs and the list has no price of.
     *
     * @return an unmodifiable list; empty where the cost is whole
     */
    public List<Gap> gaps() {
        return costs.gaps();
    }

    /**
     * Returns what should be known of the prices: postage that is more than a year old.
     *
     * @return an unmodifiable list
     */
    public List<Notice> notices() {
        return costs.notices();
    }

    /**
     * Returns whether something has no price, so that the cost is at least what it says.
     *
     * @return whether there are gaps
     */
    public boolean isAtLeast() {
        return !gaps().isEmpty();
    }

    /**
     * Returns the pieces.
     *
     * @return an unmodifiable list, in the order of the order; they come to {@link #cost}
     */
    public List<OfPiece> pieces() {
        return costs.pieces();
    }

    /**
     * Returns one piece.
     *
     * @param name its name
     * @return what it costs
     * @throws Refused if the order has no piece of that name
     */
    public OfPiece piece(String name) {
        Objects.requireNonNull(name, "name");
        return pieces().get(plan.pieces().indexOf(plan.piece(name)));
    }

    /** Rounded to the smallest unit, halves up. */
    static Money coin(double amount, Money like) {
        return Money.rounded(new BigDecimal(amount), like.currency(), RoundingMode.HALF_UP);
    }

    @Override
    public String toString() {
        return plan.order().name() + ": " + (isAtLeast() ? "at least " : "") + cost() + ", by " + prices;
    }
}
