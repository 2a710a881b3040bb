package org.papermath.plan;

import javax.measure.quantity.Volume;
import org.papermath.engine.FillingVat;
import org.papermath.quantity.Amount;

/** What to pour for one sheet. */
public final class PourPlan {
    private record Values(Amount<Volume> stock) {}

    private final Values values;

    private PourPlan(Values values) {
        this.values = values;
    }

    static Stage<PourPlan> of(PlainNumbers in, int p) {
        FillingVat.Setting vat = in.settings().vat(p);
        return vat.dipped()
                ? Stage.notDone("forming.dipped", "the sheets are dipped from the vat")
                : Stage.done(new PourPlan(new Values(in.litresOfStock(vat.lift(), p))));
    }

    /** {@return stock for one sheet, into the deckle box} */
    public Amount<Volume> stock() {
        return values.stock;
    }

    @Override
    public String toString() {
        return "pour " + values.stock + " of stock a sheet";
    }
}
