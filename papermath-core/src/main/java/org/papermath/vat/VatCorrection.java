package org.papermath.vat;

import java.util.List;
import javax.measure.quantity.Dimensionless;
import org.papermath.evidence.Notice;
import org.papermath.quantity.Amount;

/**
 * What a reading at the vat says, and what to do.
 *
 * @param found what was found over what was reckoned
 * @param stands the vat as it really stands
 * @param recharge what to give now (its line before the first sheet) and after which sheets from here on
 * @param notices what to read beside it
 */
public record VatCorrection(Amount<Dimensionless> found, VatCharge stands, Recharge recharge, List<Notice> notices) {
    /**
     * Copies the list.
     *
     * @param found what was found over what was reckoned
     * @param stands the vat as it really stands
     * @param recharge what to give now and later
     * @param notices what to read beside it
     */
    public VatCorrection {
        notices = List.copyOf(notices);
    }

    @Override
    public String toString() {
        return found + " of what was reckoned; " + recharge.now();
    }
}
