package org.papermath.vat;

import java.util.List;
import javax.measure.quantity.Dimensionless;
import org.papermath.evidence.Notice;
import org.papermath.quantity.Amount;

/** What a reading at the vat says, and what to do. */
public sealed interface VatCorrection permits FoundCorrection {
    /** {@return what was found over what was calculated} */
    Amount<Dimensionless> found();

    /** {@return the vat as it really stands} */
    VatCharge stands();

    /** {@return what to give now (its line before the first sheet) and after which sheets from here on} */
    Recharge recharge();

    /** {@return what to read beside it} */
    List<Notice> notices();
}
