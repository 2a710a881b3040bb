package org.papermath.colour;

import java.util.List;
import org.papermath.equation.KubelkaMunk;

/**
 * The mixing law on plain numbers: K/S = (K of the pulp + Σ c K of a pigment)/(1 + Σ c s), with c the load of a pigment on the
 * fibre, K its absorption and s its scattering, both over the scattering of the pulp; band by band, under the surface of the
 * sheet.
 *
 * @source Kubelka and Munk 1931, in the form for two constants of Duncan, Proceedings of the Physical Society 52, 1940;
 *     recalled, not looked up
 */
final class Mixing {
    private final double[] pulp;
    private final double[][] absorption;
    private final double[] scattering;
    private final Surface surface;
    private long evaluations;

    Mixing(double[] pulp, List<double[]> absorption, double[] scattering, Surface surface) {
        this.pulp = pulp;
        this.absorption = absorption.toArray(double[][]::new);
        this.scattering = scattering;
        this.surface = surface;
    }

    /** What the face of the sheet sends back before the light is in it, outside and inside. */
    record Surface(double outer, double inner) {
        double under(double measured) {
            return KubelkaMunk.inner(measured, outer, inner);
        }

        double over(double under) {
            return KubelkaMunk.measured(under, outer, inner);
        }

        double slope(double under) {
            double whole = 1 - inner * under;
            return (1 - outer) * (1 - inner) / (whole * whole);
        }

        double ratio(double measured) {
            return KubelkaMunk.ratio(under(measured));
        }
    }

    /** What a mixture sends back, and what a change of each load does to it. */
    record Mixed(double[] values, double[] ratios, double[] slopes, double whole) {}

    int bands() {
        return pulp.length;
    }

    long evaluations() {
        return evaluations;
    }

    Mixed at(double[] loads) {
        evaluations++;
        double whole = 1;
        for (int p = 0; p < loads.length; p++) {
            whole += loads[p] * scattering[p];
        }
        int bands = pulp.length;
        double[] values = new double[bands];
        double[] ratios = new double[bands];
        double[] slopes = new double[bands];
        for (int i = 0; i < bands; i++) {
            double absorbed = pulp[i];
            for (int p = 0; p < loads.length; p++) {
                absorbed += loads[p] * absorption[p][i];
            }
            double ratio = Math.max(0, absorbed / whole);
            double under = KubelkaMunk.reflectance(ratio);
            ratios[i] = ratio;
            values[i] = surface.over(under);
            slopes[i] = (ratio == 0 ? 0 : KubelkaMunk.slope(ratio)) * surface.slope(under);
        }
        return new Mixed(values, ratios, slopes, whole);
    }

    /** What a change of a load does to K/S of a band. */
    double byLoad(Mixed mixed, int pigment, int band) {
        return (absorption[pigment][band] - mixed.ratios[band] * scattering[pigment]) / mixed.whole;
    }

    double absorption(int pigment, int band) {
        return absorption[pigment][band];
    }

    /** L, a, b of a reflectance. */
    static double[] lab(double[] values, double[][] weights, Illuminant light) {
        double[] seen = Reflectance.seen(values, weights);
        return Lab.of(seen[0], seen[1], seen[2], light);
    }

    /** What changes of the bands do to L, a and b: three rows by band. */
    static double[][] labSlopes(double[] values, double[][] weights, Illuminant light) {
        double[] seen = Reflectance.seen(values, weights);
        double[][] rows = new double[3][values.length];
        double[][] byValue = new double[3][];
        for (int k = 0; k < 3; k++) {
            double step = 1e-5 * Math.max(1, seen[k]);
            double[] more = seen.clone();
            double[] less = seen.clone();
            more[k] += step;
            less[k] -= step;
            double[] up = Lab.of(more[0], more[1], more[2], light);
            double[] down = Lab.of(less[0], less[1], less[2], light);
            byValue[k] = new double[] {
                (up[0] - down[0]) / (2 * step), (up[1] - down[1]) / (2 * step), (up[2] - down[2]) / (2 * step),
            };
        }
        for (int i = 0; i < values.length; i++) {
            for (int row = 0; row < 3; row++) {
                rows[row][i] = byValue[0][row] * weights[0][i]
                        + byValue[1][row] * weights[1][i]
                        + byValue[2][row] * weights[2][i];
            }
        }
        return rows;
    }
}
