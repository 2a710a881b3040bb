package org.papermath.vat;

import java.util.List;
import javax.measure.quantity.Dimensionless;
import org.papermath.evidence.Notice;
import org.papermath.quantity.Amount;

/** What was found of the vat. */
record FoundCorrection(Amount<Dimensionless> found, VatCharge stands, Recharge recharge, List<Notice> notices)
        implements VatCorrection {
    FoundCorrection {
        notices = List.copyOf(notices);
    }

    @Override
    public String toString() {
        return found + " of what was calculated; " + recharge.now();
    }
}
