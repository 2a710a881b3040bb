package org.papermath.engine;

import org.papermath.equation.Drainage;
import org.papermath.equation.DrainageLaw;
import org.papermath.equation.Freeness;
import org.papermath.equation.WaterProperties;
import org.papermath.pulp.TimedSheet;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;

/** What a sheet of the beaten stuff, timed at the vat, says about its drainability. */
final class TimedStuff {
    private final Workshop workshop;
    private final double time;
    private final double grammage;
    private final double consistency;
    private final Slot waterReading;
    private final Slot factor;
    private final Slot exponent;
    private final Slot wireResistance;
    private final Slot matRetention;
    private final Slot endShare;
    private final Slot suction;
    private final Slot wall;

    TimedStuff(Known known, Workshop workshop, TimedSheet sheet) {
        this.workshop = workshop;
        time = sheet.time().si();
        grammage = sheet.fibre().si();
        consistency = sheet.consistency().si();
        waterReading = known.slot("freeness.sr-water-reading");
        factor = known.slot("drainage.resistance-factor", workshop.vat);
        exponent = known.slot("drainage.resistance-exponent", workshop.vat);
        wireResistance = known.slot("drainage.wire-resistance", workshop.vat);
        matRetention = known.slot("drainage.mat-retention", workshop.vat);
        endShare = known.slot("drainage.end-share", workshop.vat);
        suction = known.slot("drainage.suction-factor", workshop.vat);
        wall = known.slot("fibre.cell-wall-density");
    }

    /** The drainability, °SR; that of bare water where the sheet drained as fast as the cover lets it. */
    double number(double retention, Values v) {
        double alpha = alpha(retention, v);
        return alpha > 0
                ? Freeness.schopperRieglerOfAlpha(alpha, v.of(factor), v.of(waterReading), v.of(exponent))
                : v.of(waterReading);
    }

    private double alpha(double retention, Values v) {
        double perVolume = consistency * WaterProperties.stockDensity(consistency, v.of(wall), workshop.waterDensity);
        return law(v).alpha(
                        time,
                        Drainage.depth(grammage, retention, perVolume),
                        perVolume,
                        workshop.waterViscosity,
                        workshop.waterDensity);
    }

    private DrainageLaw law(Values v) {
        return new DrainageLaw(v.of(endShare), v.of(matRetention), v.of(wireResistance), v.of(suction));
    }

    /** A sheet that drains faster than the bare cover was not read right. */
    void requireSlower(String recipe, double retention, Values v) {
        double perVolume = consistency * WaterProperties.stockDensity(consistency, v.of(wall), workshop.waterDensity);
        if (!(alpha(retention, v) > 0)) {
            double cover = law(v).time(
                            Drainage.depth(grammage, retention, perVolume),
                            0,
                            perVolume,
                            workshop.waterViscosity,
                            workshop.waterDensity);
            throw Refused.of(
                    "recipe.timed-sheet-too-fast",
                    "recipe " + recipe + ": a sheet drains in " + Kinds.TIME.ofSi(time, "s")
                            + ", but the bare cover alone takes " + Kinds.TIME.ofSi(cover, "s")
                            + " for that much stock. Check the time, the grammage and the consistency.",
                    "recipe",
                    recipe,
                    "given",
                    Kinds.TIME.ofSi(time, "s").toString(),
                    "least",
                    Kinds.TIME.ofSi(cover, "s").toString(),
                    "member",
                    "timedSheet");
        }
    }
}
