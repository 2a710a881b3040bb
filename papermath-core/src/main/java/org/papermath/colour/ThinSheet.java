package org.papermath.colour;

import org.papermath.equation.KubelkaMunk;
import org.papermath.quantity.Refused;

/** A sheet so thin that what lies under it is seen. */
final class ThinSheet {
    private ThinSheet() {}

    static Reflectance over(Reflectance thick, double scattering, double grammage, Reflectance backing) {
        Reflectance under = backing.in(thick.bands());
        double[] seen = new double[thick.values().length];
        for (int i = 0; i < seen.length; i++) {
            seen[i] = KubelkaMunk.over(thick.value(i), scattering, grammage, under.value(i));
        }
        return Reflectance.unchecked(thick.bands(), seen);
    }

    /** Luminance over black by that over the pile, as ISO 2471 has opacity. */
    static double opacity(Reflectance thick, double scattering, double grammage) {
        double[] black = new double[thick.values().length];
        for (int i = 0; i < black.length; i++) {
            black[i] = KubelkaMunk.over(thick.value(i), scattering, grammage, 0);
        }
        double[][] weights = StandardObserver.weights(thick.bands(), Illuminant.D65);
        return Reflectance.seen(black, weights)[1] / Reflectance.seen(thick.values(), weights)[1];
    }

    static double scattering(Reflectance thick, Reflectance overBlack, double grammage) {
        double sum = 0;
        Reflectance black = overBlack.in(thick.bands());
        for (int i = 0; i < thick.values().length; i++) {
            if (!(black.value(i) < thick.value(i)) || thick.value(i) == 1) {
                throw Refused.of(
                        "colour.over-black",
                        "sheet over black: it sends back " + ColourRange.said(black.value(i), 4) + " and the pile "
                                + ColourRange.said(thick.value(i), 4)
                                + "; it must send back less. Read both again, the sheet over something really black.",
                        "black",
                        black.value(i),
                        "pile",
                        thick.value(i));
            }
            sum += KubelkaMunk.scattering(black.value(i), thick.value(i), grammage);
        }
        return sum / thick.values().length;
    }
}
