package org.papermath.plan;

import java.util.Optional;
import javax.measure.quantity.Mass;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.papermath.engine.FillingVat;
import org.papermath.engine.PreparingStock;
import org.papermath.evidence.Scope;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Share;

/** Stock that may be missing at the end. */
public final class StockShortage {
    private record Values(Amount<Share> chance, Amount<Mass> upTo) {}

    private final Values values;

    private StockShortage(Values values) {
        this.values = values;
    }

    /**
     * Told only where it is likely enough to act on. Some of it never shows: with that much less stock, the vat at
     * the end is only a little thinner than its tolerance allows.
     */
    static Optional<StockShortage> of(PlainNumbers in, int b) {
        Estimates numbers = in.estimates();
        double left = numbers.likely(FillingVat.STOCK_LEFT, b);
        double low = numbers.low(FillingVat.STOCK_LEFT, b);
        double deviation = (left - low) / PlainNumbers.NINE_IN_TEN;
        if (!(deviation > 0)) {
            return Optional.empty();
        }
        double unseen = in.engine().likely().of(in.engine().vat(b).tolerance())
                * numbers.likely(FillingVat.VAT_FIBRE, b)
                / numbers.likely(PreparingStock.STOCK_CONSISTENCY, b);
        double chance = NormalDistribution.of(left + unseen, deviation).cumulativeProbability(0);
        return chance < in.asked().si("stock.shortage-told", Scope.GENERAL)
                ? Optional.empty()
                : Optional.of(
                        new StockShortage(new Values(Kinds.SHARE.ofSi(chance, "%"), Kinds.MASS.ofSi(-low, "kg"))));
    }

    /** {@return how likely the last sheets come out thinner than the vat's tolerance, or are left out} */
    public Amount<Share> chance() {
        return values.chance;
    }

    /** {@return the stock missing in one making of twenty, or more} */
    public Amount<Mass> upTo() {
        return values.upTo;
    }

    @Override
    public String toString() {
        return "short by up to " + values.upTo + ", in " + values.chance + " of makings";
    }
}
