package org.papermath.equation;

/**
 * Water left in a sheet after pressing: on the way from the water it came with to {@code max(floor, a WRV (p/p0)^-b)},
 * with a time constant that goes with the squares of grammage and water retention. When the load is taken off, the
 * sheet takes back a little from what it lies on, the same on every area. A pressing never leaves more than came in.
 *
 * @param factor a
 * @param exponent b
 * @param reference p0, Pa
 * @param floor moisture ratio that no press goes below
 * @param time time constant at the grammage and the water retention it is stated at, s
 * @param rewet water taken back when the load is taken off, kg/m2
 */
public record PressingLaw(double factor, double exponent, double reference, double floor, double time, double rewet) {
    /** Moisture ratio long under load, from water retention value (g/g) and pressure (Pa). */
    public double equilibrium(double retention, double pressure) {
        return Pressing.equilibriumRatio(retention, pressure, factor, reference, exponent, floor);
    }

    /** Time constant (s) of a sheet of an oven-dry grammage (kg/m2). */
    public double timeConstant(double grammage, double retention) {
        return Pressing.timeConstant(time, grammage, retention);
    }

    /** Moisture ratio after a hold (s), out of the press, from the one before. */
    public double ratioAfter(double before, double retention, double pressure, double grammage, double hold) {
        return released(
                before,
                grammage,
                Pressing.ratioAfter(before, equilibrium(retention, pressure), timeConstant(grammage, retention), hold));
    }

    /** Moisture ratio of a sheet that stays under load until no more water goes, from the one before. */
    public double ratioAtRest(double before, double retention, double pressure, double grammage) {
        return released(before, grammage, equilibrium(retention, pressure));
    }

    private double released(double before, double grammage, double loaded) {
        return Math.min(before, Pressing.rewetted(loaded, rewet, grammage));
    }

    /** The law of a further pressing, with felts exchanged: it comes to rest at a share of the water of this one. */
    public PressingLaw again(double share) {
        return new PressingLaw(factor * share, exponent, reference, floor, time, rewet);
    }

    /** Time (s) until a sheet comes down to a moisture ratio; infinite where this pressure never brings it there. */
    public double timeTo(double wanted, double before, double retention, double pressure, double grammage) {
        return before <= wanted
                ? 0
                : Pressing.timeToRatio(
                        before,
                        equilibrium(retention, pressure),
                        timeConstant(grammage, retention),
                        Pressing.rewetted(wanted, -rewet, grammage));
    }

    /** The factor a behind an equilibrium; inverse of {@link #equilibrium} above the floor. */
    public double factorOf(double equilibrium, double retention, double pressure) {
        return Pressing.factorOfWeighing(equilibrium, retention, pressure, reference, exponent);
    }

    /** The equilibrium behind the moisture ratios before and after one hold; inverse of {@link #ratioAfter}. */
    public double equilibriumOf(double before, double after, double retention, double grammage, double hold) {
        return Pressing.equilibriumOfWeighing(
                before, Pressing.rewetted(after, -rewet, grammage), timeConstant(grammage, retention), hold);
    }
}
