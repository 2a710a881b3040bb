package org.papermath.engine;

import org.papermath.equation.DrainageLaw;
import org.papermath.equation.Freeness;
import org.papermath.equation.WaterProperties;

/** How stock drains through the cover of a mould: the law with its assumptions, and the tester's scale of resistance. */
final class CoverDrainage {
    private final Workshop workshop;
    private final Slot waterReading;
    private final Slot factor;
    private final Slot exponent;
    private final Slot wireResistance;
    private final Slot matRetention;
    private final Slot endShare;
    private final Slot suction;
    private final Slot wall;

    CoverDrainage(Known known, Workshop workshop) {
        this.workshop = workshop;
        waterReading = known.slot("freeness.sr-water-reading");
        factor = known.slot("drainage.resistance-factor", workshop.vat);
        exponent = known.slot("drainage.resistance-exponent", workshop.vat);
        wireResistance = known.slot("drainage.wire-resistance", workshop.vat);
        matRetention = known.slot("drainage.mat-retention", workshop.vat);
        endShare = known.slot("drainage.end-share", workshop.vat);
        suction = known.slot("drainage.suction-factor", workshop.vat);
        wall = known.slot("fibre.cell-wall-density");
    }

    DrainageLaw law(Values v) {
        return new DrainageLaw(v.of(endShare), v.of(matRetention), v.of(wireResistance), v.of(suction));
    }

    /** Fibre in the stock, kg/m³. */
    double perVolume(double consistency, Values v) {
        return consistency * WaterProperties.stockDensity(consistency, v.of(wall), workshop.waterDensity);
    }

    /** Specific filtration resistance of a mat, m/kg, by the number of its stock, °SR. */
    double alpha(double number, Values v) {
        return Freeness.alphaOfSchopperRiegler(
                Math.max(number, v.of(waterReading)), v.of(factor), v.of(waterReading), v.of(exponent));
    }

    /** The number of stock, °SR, by the resistance of its mat; that of bare water where the mat resists nothing. */
    double number(double alpha, Values v) {
        return alpha > 0
                ? Freeness.schopperRieglerOfAlpha(alpha, v.of(factor), v.of(waterReading), v.of(exponent))
                : v.of(waterReading);
    }
}
