package org.papermath.equation;

import org.apache.commons.numbers.rootfinder.BrentSolver;

/**
 * Stock on the mould: the depth to lift, the time it takes to drain, and the resistance of the mat.
 *
 * <p>Depths in m, fibre per volume in kg/m³, specific resistance alpha in m/kg, resistance of the wire in 1/m,
 * viscosity in Pa·s, density in kg/m³. The mat grows by the fibre of the filtrate that it retains; the head is what
 * stands above the mat, and it falls as filtrate leaves (Darcy's law, integrated).
 */
public final class Drainage {
    private static final double G = 9.80665;

    /* At this u the depth left is lost in the rounding of the whole. */
    private static final double DRAINED = 40;

    private Drainage() {}

    /** Depth of stock for an oven-dry grammage (kg/m²), given first-pass retention. */
    public static double depth(double grammage, double retention, double fibrePerVolume) {
        return grammage / (retention * fibrePerVolume);
    }

    /** Oven-dry grammage (kg/m²) a depth of stock gives. */
    public static double grammageOfDepth(double depth, double retention, double fibrePerVolume) {
        return depth * retention * fibrePerVolume;
    }

    /** Time (s) until a depth of filtrate has left a stock of the given first depth; never ends at the full depth. */
    public static double time(
            double filtrate,
            double depth,
            double alpha,
            double matRetention,
            double fibrePerVolume,
            double wireResistance,
            double viscosity,
            double density) {
        if (filtrate >= depth) {
            return Double.POSITIVE_INFINITY;
        }
        double u = -Math.log1p(-filtrate / depth);
        double mat = alpha * matRetention * fibrePerVolume * depth * matTerm(u);
        return viscosity / (density * G) * (mat + wireResistance * u);
    }

    /** Specific resistance from one timed drainage. */
    public static double alphaOfTime(
            double time,
            double filtrate,
            double depth,
            double matRetention,
            double fibrePerVolume,
            double wireResistance,
            double viscosity,
            double density) {
        double u = -Math.log1p(-filtrate / depth);
        return (time * density * G / viscosity - wireResistance * u)
                / (matRetention * fibrePerVolume * depth * matTerm(u));
    }

    /** Depth of filtrate (m) that has left after a time. */
    public static double filtrateAfter(
            double time,
            double depth,
            double alpha,
            double matRetention,
            double fibrePerVolume,
            double wireResistance,
            double viscosity,
            double density) {
        if (!(time > 0)) {
            return 0;
        }
        // In u = -ln(1 - filtrate / depth) each of the two resistances alone bounds the answer from above.
        double full = time * density * G / viscosity;
        double mat = alpha * matRetention * fibrePerVolume * depth;
        double high = Math.min(full / wireResistance, full / mat + 1) * (1 + 1e-12);
        if (!(high < DRAINED)) {
            high = DRAINED;
            if (mat * matTerm(high) + wireResistance * high <= full) {
                return depth;
            }
        }
        double u =
                new BrentSolver(1e-15, 1e-300, 0).findRoot(y -> mat * matTerm(y) + wireResistance * y - full, 0, high);
        return -Math.expm1(-u) * depth;
    }

    /** Pores in a mat: what fibre of a swollen specific volume (m³/kg) leaves free at a solidity. */
    public static double porosity(double specificVolume, double solidity) {
        return 1 - specificVolume * solidity;
    }

    /** Kozeny's constant of a loose mat after Davies: 3.5 e³ (1 − e)^−½ [1 + 57 (1 − e)³]. */
    public static double kozenyOfPorosity(double porosity) {
        double solid = 1 - porosity;
        return 3.5 * porosity * porosity * porosity / Math.sqrt(solid) * (1 + 57 * solid * solid * solid);
    }

    /** Permeability (m²) of a mat after Kozeny: e³ / (k S² c²), with S in m²/kg. */
    public static double permeability(double kozeny, double specificSurface, double specificVolume, double solidity) {
        double e = porosity(specificVolume, solidity);
        double surface = specificSurface * solidity;
        return e * e * e / (kozeny * surface * surface);
    }

    /** Specific resistance (m/kg) of a mat after Kozeny: k S² c / e³. */
    public static double alpha(double kozeny, double specificSurface, double specificVolume, double solidity) {
        double e = porosity(specificVolume, solidity);
        return kozeny * specificSurface * specificSurface * solidity / (e * e * e);
    }

    /** Specific surface (m²/kg) from the specific resistance of a mat. */
    public static double specificSurfaceOfAlpha(double alpha, double kozeny, double specificVolume, double solidity) {
        double e = porosity(specificVolume, solidity);
        return Math.sqrt(alpha * e * e * e / (kozeny * solidity));
    }

    /** u + e^−u − 1, which is −ln(1 − x) − x for u = −ln(1 − x); by its series where the sum would lose digits. */
    private static double matTerm(double u) {
        if (u < 0.5) {
            double sum = 1;
            for (int n = 16; n >= 3; n--) {
                sum = 1 - u / n * sum;
            }
            return u * u / 2 * sum;
        }
        return u + Math.expm1(-u);
    }
}
