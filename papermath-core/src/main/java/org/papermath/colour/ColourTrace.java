package org.papermath.colour;

import java.util.Objects;
import javax.measure.Quantity;
import org.papermath.equation.KubelkaMunk;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Scope;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Share;

/**
 * Coloured stuff in other stuff: what a blend of two looks like, and what is left of one batch in the next.
 *
 * <p>K/S of the blend is the mean of the two by mass, as if both scattered alike; of pulps that lie far apart that is off by
 * ΔE00 6 in the mean.
 *
 * @source Kubelka and Munk 1931; the error: 87 blends of dyed fibre, Textile Research Journal 2025,
 *     doi 10.1177/00405175251397599 (its summary)
 */
public final class ColourTrace {
    private ColourTrace() {}

    /**
     * Tells a blend of two pulps.
     *
     * @param one the first, dried
     * @param other the other, dried
     * @param share of the other in the blend, by oven-dry mass
     * @return what the dried blend sends back
     * @throws org.papermath.quantity.Refused if the share is out of range or the other has fewer bands
     */
    public static Reflectance blend(Reflectance one, Reflectance other, Quantity<Share> share) {
        Objects.requireNonNull(one, "one");
        Objects.requireNonNull(other, "other");
        double part = Kinds.SHARE.si(share, "share of the other pulp");
        Reflectance mixed = other.in(one.bands());
        double[] values = new double[one.values().length];
        for (int i = 0; i < values.length; i++) {
            values[i] = KubelkaMunk.reflectance(
                    (1 - part) * KubelkaMunk.ratio(one.value(i)) + part * KubelkaMunk.ratio(mixed.value(i)));
        }
        return Reflectance.unchecked(one.bands(), values);
    }

    /**
     * Tells how far what is left of one batch after a wash moves the next.
     *
     * @param before the batch before, dried
     * @param next the next as it would be in clean gear, dried
     * @param assumptions where {@code colour.carried-over} is looked up
     * @return ΔE00 between the next batch with what is left and without
     */
    public static double left(Reflectance before, Reflectance next, Assumptions assumptions) {
        Objects.requireNonNull(before, "before");
        Objects.requireNonNull(next, "next");
        Objects.requireNonNull(assumptions, "assumptions");
        Wavebands bands = before.bands().count() < next.bands().count() ? before.bands() : next.bands();
        Reflectance clean = next.in(bands);
        double part = assumptions.si("colour.carried-over", Scope.GENERAL);
        return blend(clean, before.in(bands), Kinds.SHARE.ofSi(part, "%")).lab().difference(clean.lab());
    }
}
