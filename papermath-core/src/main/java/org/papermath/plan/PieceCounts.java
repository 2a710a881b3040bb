package org.papermath.plan;

import javax.measure.quantity.Dimensionless;
import org.papermath.engine.FormingSheets;
import org.papermath.engine.PieceWork;
import org.papermath.engine.Rejects;
import org.papermath.evidence.Estimate;
import org.papermath.quantity.Kinds;

/** How many of what. */
public final class PieceCounts {
    private record Values(
            int ordered, int wanted, int perSheet, int sheets, int trials, Estimate<Dimensionless> good) {}

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
                in.estimates().of(Kinds.NUMBER, Rejects.GOOD, p)));
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

    /** {@return good pieces that will come out} */
    public Estimate<Dimensionless> good() {
        return values.good;
    }

    @Override
    public String toString() {
        return values.sheets + " sheets for " + values.wanted + " good pieces";
    }
}
