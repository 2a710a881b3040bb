package org.papermath.equation;

import org.apache.commons.numbers.rootfinder.BrentSolver;

/**
 * What the two drainage testers read, how one converts to the other, and the specific resistance behind them.
 *
 * <p>SR is the Schopper–Riegler value in degrees, CSF the Canadian Standard freeness as read, in millilitres at the
 * side orifice; specific resistance alpha in m/kg.
 */
public final class Freeness {
    private static final double G = 9.80665;

    /* The conversion chart, as recalled from mill practice; no standard gives one. */
    private static final double[] CHART_CSF = {50, 100, 150, 200, 250, 300, 350, 400, 450, 500, 550, 600, 650, 700, 750
    };
    private static final double[] CHART_SR = {75.5, 66, 58.5, 52, 46.5, 41.5, 37.5, 33.5, 30, 27, 24, 21, 18.5, 16, 13.5
    };

    private static final double LOG_ALPHA_LOW = Math.log(1e-3);
    private static final double LOG_ALPHA_HIGH = Math.log(1e30);

    private Freeness() {}

    /**
     * A drainage tester: a vessel over a wire and a funnel with a calibrated bottom orifice; what arrives faster than
     * the bottom takes leaves by the side.
     *
     * @param area wire area, m²
     * @param volume stock filled in, m³
     * @param fibrePerVolume fibre in that stock, kg/m³
     * @param bottomFlow flow of the bottom orifice, m³/s
     * @param holdUp volume that stays under the side outlet, m³
     * @param wireResistance resistance of the wire, 1/m
     */
    public record Tester(
            double area,
            double volume,
            double fibrePerVolume,
            double bottomFlow,
            double holdUp,
            double wireResistance) {}

    /** SR read off the chart for a CSF, plus an offset in SR; the end pieces are carried on beyond 50 and 750 mL. */
    public static double schopperRieglerOfCanadian(double csf, double offset) {
        return along(csf, CHART_CSF, CHART_SR) + offset;
    }

    /** CSF read off the chart for an SR measured on a scale that stands an offset above the chart. */
    public static double canadianOfSchopperRiegler(double sr, double offset) {
        return along(sr - offset, CHART_SR, CHART_CSF);
    }

    /**
     * Volume (m³) a tester gives at the side for a specific resistance, viscosity (Pa·s) and water density (kg/m³).
     * Side flow stops when the flow through the mat has fallen to that of the bottom; not less than nothing.
     */
    public static double sideVolume(double alpha, Tester tester, double viscosity, double density) {
        return Math.max(0, sideBalance(alpha, tester, viscosity, density));
    }

    /** Filtrate depth (m) at which the flow through the mat equals that of the bottom orifice; 0 if never above it. */
    public static double filtrateDepthAtBalance(double alpha, Tester tester, double viscosity, double density) {
        // Darcy's law at the filtrate depth v is linear in v, so the balance needs no search:
        // A rho g (H - v) = Q mu (alpha c v + R_m).
        double drive = tester.area * density * G;
        double drag = tester.bottomFlow * viscosity;
        double depth = tester.volume / tester.area;
        double v = (drive * depth - drag * tester.wireResistance) / (drive + drag * alpha * tester.fibrePerVolume);
        return Math.max(0, v);
    }

    /**
     * Specific resistance that gives a tester a side volume: 0 for as much as clear water gives or more, infinite for
     * what no resistance can give.
     */
    public static double alphaOfSideVolume(double sideVolume, Tester tester, double viscosity, double density) {
        if (sideBalance(0, tester, viscosity, density) <= sideVolume) {
            return 0;
        }
        double low = LOG_ALPHA_LOW;
        if (sideBalance(Math.exp(low), tester, viscosity, density) <= sideVolume) {
            return 0;
        }
        if (sideBalance(Math.exp(LOG_ALPHA_HIGH), tester, viscosity, density) >= sideVolume) {
            return Double.POSITIVE_INFINITY;
        }
        return Math.exp(new BrentSolver(1e-14, 1e-14, 0)
                .findRoot(x -> sideBalance(Math.exp(x), tester, viscosity, density) - sideVolume, low, LOG_ALPHA_HIGH));
    }

    /** Specific resistance by the closed fit alpha = a [(SR − SR_w) / (100 − SR)]^n, SR_w what clear water reads. */
    public static double alphaOfSchopperRiegler(double sr, double factor, double waterReading, double exponent) {
        return factor * Math.pow((sr - waterReading) / (100 - sr), exponent);
    }

    /** SR by the same closed fit. */
    public static double schopperRieglerOfAlpha(double alpha, double factor, double waterReading, double exponent) {
        double x = Math.pow(alpha / factor, 1 / exponent);
        return 100 - (100 - waterReading) / (1 + x);
    }

    /**
     * SR of a mixture: it is the surface of the fibres that adds up, and the specific resistance goes with its square.
     *
     * @param shares of the parts by mass
     * @param numbers SR of the parts
     */
    public static double mixed(double[] shares, double[] numbers, double waterReading, double exponent) {
        double surface = 0;
        for (int i = 0; i < shares.length; i++) {
            surface += shares[i] * Math.sqrt(alphaOfSchopperRiegler(numbers[i], 1, waterReading, exponent));
        }
        return schopperRieglerOfAlpha(surface * surface, 1, waterReading, exponent);
    }

    private static double sideBalance(double alpha, Tester tester, double viscosity, double density) {
        double depth = tester.volume / tester.area;
        double v = filtrateDepthAtBalance(alpha, tester, viscosity, density);
        double time =
                Drainage.time(v, depth, alpha, 1, tester.fibrePerVolume, tester.wireResistance, viscosity, density);
        return tester.area * v - tester.bottomFlow * time - tester.holdUp;
    }

    /** Straight pieces between points; the xs rise or fall throughout. */
    private static double along(double x, double[] xs, double[] ys) {
        boolean rising = xs[xs.length - 1] > xs[0];
        int i = 1;
        while (i < xs.length - 1 && (rising ? x > xs[i] : x < xs[i])) {
            i++;
        }
        double part = (x - xs[i - 1]) / (xs[i] - xs[i - 1]);
        return ys[i - 1] + part * (ys[i] - ys[i - 1]);
    }
}
