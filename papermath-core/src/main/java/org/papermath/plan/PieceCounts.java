package org.papermath.plan;

import java.util.List;
import java.util.Optional;
import javax.measure.quantity.Dimensionless;
import org.papermath.engine.FormingSheets;
import org.papermath.engine.PieceWork;
import org.papermath.engine.Rejects;
import org.papermath.evidence.Estimate;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Share;
import org.papermath.sheet.SheetCounts;

/** How many of what. */
public final class PieceCounts {
    private record Values(int ordered, int wanted, int perSheet, int sheets, int trials, Estimate<Dimensionless> good) {
        int formed() {
            return (sheets - trials) * perSheet;
        }
    }

    private final Values values;

    private PieceCounts(Values values) {
        this.values = values;
    }

    static PieceCounts of(PlainNumbers in, int p) {
        PieceWork work = in.engine().piece(p);
        FormingSheets.Setting sheet = in.settings().sheet(p);
        return new PieceCounts(new Values(
                work.ordered(),
                work.wanted(),
                sheet.perSheet(),
                sheet.sheets(),
                work.trials(),
                byChance(
                        in.estimates().of(Kinds.NUMBER, Rejects.GOOD, p),
                        (sheet.sheets() - work.trials()) * (double) sheet.perSheet())));
    }

    /** Adds what chance does to a count whose share of good ones is known: {@code sqrt(n p (1 - p))}. */
    private static Estimate<Dimensionless> byChance(Estimate<Dimensionless> good, double formed) {
        double share = good.likely().si() / formed;
        return share > 0 && share < 1
                ? good.withScatter(PlainNumbers.NINE_IN_TEN * Math.sqrt((1 - share) / (share * formed)))
                : good;
    }

    /** {@return pieces ordered} */
    public int ordered() {
        return values.ordered;
    }

    /** {@return good pieces wanted, spares and kept ones with them} */
    public int wanted() {
        return values.wanted;
    }

    /** {@return pieces on a sheet} */
    public int perSheet() {
        return values.perSheet;
    }

    /** {@return sheets to pull, trials with them} */
    public int sheets() {
        return values.sheets;
    }

    /** {@return trial sheets} */
    public int trials() {
        return values.trials;
    }

    /**
     * {@return good pieces that will come out; the band is that of the share that is good, and the scatter what chance does
     * to the count besides}
     */
    public Estimate<Dimensionless> good() {
        return values.good;
    }

    /**
     * Returns how likely as many good pieces as ordered come out: over what is not known of the rejects, what makings differ
     * by, and chance.
     *
     * @return the chance; empty where the band of the rejects is as wide as if nothing were known
     */
    public Optional<Amount<Share>> chanceOfEnough() {
        double formed = values.formed();
        Estimate<Share> share = Estimate.of(
                share(values.good.likely(), formed),
                share(values.good.low(), formed),
                share(values.good.high(), formed),
                List.of());
        try {
            return Optional.of(SheetCounts.chance(values.ordered, values.formed(), share));
        } catch (Refused unknown) {
            return Optional.empty();
        }
    }

    private static Amount<Share> share(Amount<Dimensionless> good, double formed) {
        return Kinds.SHARE.ofSi(Math.min(1, good.si() / formed), "%");
    }

    @Override
    public String toString() {
        return values.sheets + " sheets for " + values.wanted + " good pieces";
    }
}
