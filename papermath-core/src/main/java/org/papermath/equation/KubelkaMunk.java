package org.papermath.equation;

/**
 * Light in a layer that absorbs and scatters it: K is absorbed and S scattered of what goes through a unit of the layer, R is
 * the share sent back, each at one wavelength or in one band of them.
 *
 * @source Kubelka and Munk, Zeitschrift für technische Physik 12, 1931; the layer over a backing: Kubelka, Journal of the
 *     Optical Society of America 38, 1948; the surface: Saunderson, the same 32, 1942; recalled, not looked up
 */
public final class KubelkaMunk {
    private KubelkaMunk() {}

    /** K/S of a layer so thick that nothing shines through, from its reflectance: (1 − R)²/2R. */
    public static double ratio(double reflectance) {
        double dark = 1 - reflectance;
        return dark * dark / (2 * reflectance);
    }

    /** Reflectance of such a layer, from its K/S: 1 + r − √(r² + 2r), written so that dark layers keep their digits. */
    public static double reflectance(double ratio) {
        return 1 / (1 + ratio + Math.sqrt(ratio * ratio + 2 * ratio));
    }

    /** What a change of K/S does to such a reflectance, by the change. */
    public static double slope(double ratio) {
        double root = Math.sqrt(ratio * ratio + 2 * ratio);
        return -reflectance(ratio) / root;
    }

    /** What a change of such a reflectance does to K/S, by the change. */
    public static double ratioSlope(double reflectance) {
        return (reflectance * reflectance - 1) / (2 * reflectance * reflectance);
    }

    /**
     * Reflectance of a layer over a backing.
     *
     * @param thick reflectance of so much of it that nothing shines through
     * @param scattering m²/kg
     * @param grammage kg/m²
     * @param backing reflectance of what lies under it
     */
    public static double over(double thick, double scattering, double grammage, double backing) {
        double a = (1 / thick + thick) / 2;
        double b = (1 / thick - thick) / 2;
        double depth = b * scattering * grammage;
        if (depth == 0) {
            double path = scattering * grammage;
            return b == 0 ? (backing + path * (1 - backing)) / (1 + path * (1 - backing)) : backing;
        }
        double cotangent = 1 / Math.tanh(depth);
        return (1 - backing * (a - b * cotangent)) / (a - backing + b * cotangent);
    }

    /** S of a layer from its reflectance over black, that of a thick pile, and its grammage: m²/kg. */
    public static double scattering(double overBlack, double thick, double grammage) {
        double inverse = 1 / thick;
        return Math.log((1 - overBlack * thick) * thick / (thick - overBlack)) / ((inverse - thick) * grammage);
    }

    /** What the surface makes of the reflectance under it: k1 is sent back outside, k2 inside. */
    public static double measured(double inner, double k1, double k2) {
        return k1 + (1 - k1) * (1 - k2) * inner / (1 - k2 * inner);
    }

    /** The reflectance under a surface, from that which is measured. */
    public static double inner(double measured, double k1, double k2) {
        return (measured - k1) / (1 - k1 - k2 * (1 - measured));
    }
}
