package org.papermath.engine;

import org.papermath.equation.Drainage;
import org.papermath.pulp.TimedSheet;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;

/** What a sheet of the beaten stuff, timed at the vat, says about its drainability. */
final class TimedStuff {
    private final Workshop workshop;
    private final double time;
    private final double grammage;
    private final double consistency;
    private final CoverDrainage cover;

    TimedStuff(Known known, Workshop workshop, TimedSheet sheet) {
        this.workshop = workshop;
        time = sheet.time().si();
        grammage = sheet.fibre().si();
        consistency = sheet.consistency().si();
        cover = new CoverDrainage(known, workshop);
    }

    /** The drainability, °SR; that of bare water where the sheet drained as fast as the cover lets it. */
    double number(double retention, Values v) {
        return cover.number(alpha(retention, v), v);
    }

    private double alpha(double retention, Values v) {
        double perVolume = cover.perVolume(consistency, v);
        return cover.law(v)
                .alpha(
                        time,
                        Drainage.depth(grammage, retention, perVolume),
                        perVolume,
                        workshop.waterViscosity,
                        workshop.waterDensity);
    }

    /** A sheet that drains faster than the bare cover was not read right. */
    void requireSlower(String recipe, double retention, Values v) {
        if (!(alpha(retention, v) > 0)) {
            double perVolume = cover.perVolume(consistency, v);
            double least = cover.law(v)
                    .time(
                            Drainage.depth(grammage, retention, perVolume),
                            0,
                            perVolume,
                            workshop.waterViscosity,
                            workshop.waterDensity);
            throw Refused.of(
                    "recipe.timed-sheet-too-fast",
                    "recipe " + recipe + ": a sheet drains in " + Kinds.TIME.ofSi(time, "s")
                            + ", but the bare cover alone takes " + Kinds.TIME.ofSi(least, "s")
                            + " for that much stock. Check the time, the grammage and the consistency.",
                    "recipe",
                    recipe,
                    "given",
                    Kinds.TIME.ofSi(time, "s").toString(),
                    "least",
                    Kinds.TIME.ofSi(least, "s").toString(),
                    "member",
                    "timedSheet");
        }
    }
}
