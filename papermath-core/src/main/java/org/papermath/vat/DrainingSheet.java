package org.papermath.vat;

import javax.measure.Quantity;
import javax.measure.quantity.Area;
import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Time;
import org.papermath.air.Water;
import org.papermath.equation.DrainageLaw;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Share;

/**
 * Stock draining on a mould, from the lift to the end. Immutable.
 *
 * @see DrainageModel
 */
public final class DrainingSheet {
    private final double depth;
    private final double perVolume;
    private final double alpha;
    private final DrainageLaw law;
    private final double wallDensity;
    private final Water water;

    /** What stands on the mould at a moment. */
    public sealed interface Moment permits FoundMoment {
        /** {@return the time since the lift} */
        Amount<Time> elapsed();

        /** {@return the depth of water that has left} */
        Amount<Length> drained();

        /** {@return what stands above the cover, mat and stock together} */
        Amount<Length> wetThickness();

        /** {@return the share of the fibre that lies in the mat; the rest can still be shaken about} */
        Amount<Share> settled();

        /** {@return what a square metre of it weighs, fibre and water} */
        Amount<Mass> squareMetre();

        /**
         * Returns what weighs on a mould, to lift or to check on the scale.
         *
         * @param mould the area inside the deckle
         * @return fibre and water together, without the mould
         * @throws Refused if the area is out of range
         */
        Amount<Mass> mass(Quantity<Area> mould);
    }

    private record FoundMoment(
            Amount<Time> elapsed,
            Amount<Length> drained,
            Amount<Length> wetThickness,
            Amount<Share> settled,
            Amount<Mass> squareMetre)
            implements Moment {
        @Override
        public Amount<Mass> mass(Quantity<Area> mould) {
            return squareMetre.multiply(Kinds.AREA.si(mould, "area of the mould"));
        }

        @Override
        public String toString() {
            return "after " + elapsed + ": " + drained + " drained, " + wetThickness + " stand, " + settled
                    + " of the fibre settled, " + squareMetre + " a square metre";
        }
    }

    DrainingSheet(double depth, double perVolume, double alpha, DrainageLaw law, double wallDensity, Water water) {
        this.depth = depth;
        this.perVolume = perVolume;
        this.alpha = alpha;
        this.law = law;
        this.wallDensity = wallDensity;
        this.water = water;
    }

    /**
     * Returns the time until the sheen has left the sheet.
     *
     * @return the time from the lift
     */
    public Amount<Time> time() {
        return Kinds.TIME.ofSi(seconds(law.endShare()), "s");
    }

    /**
     * Returns the time until a share of the water has left.
     *
     * @param share the depth that has left over the depth at the start, below 100 %, which is never reached
     * @return the time from the lift
     * @throws Refused if the share is out of range
     */
    public Amount<Time> timeTo(Quantity<Share> share) {
        return Kinds.TIME.ofSi(seconds(Kinds.SHARE.siWithin(share, "share of the water", 0, 0.9999)), "s");
    }

    /**
     * Returns the time left for the shake: until a share of the fibre has settled into the mat and the rest no longer
     * moves.
     *
     * @param elapsed the time since the lift
     * @param settled the share of the fibre in the mat beyond which shaking does harm
     * @return the time left; zero where it has passed
     * @throws Refused if a value is out of range
     */
    public Amount<Time> shakeLeft(Quantity<Time> elapsed, Quantity<Share> settled) {
        double until = seconds(Kinds.SHARE.siWithin(settled, "share of the fibre settled", 0, 0.9999));
        return Kinds.TIME.ofSi(Math.max(0, until - Kinds.TIME.si(elapsed, "time since the lift")), "s");
    }

    /**
     * Returns what stands on the mould after a time.
     *
     * @param elapsed the time since the lift, up to a day
     * @return the depths, the settled share and the mass
     * @throws Refused if the time is out of range
     */
    public Moment after(Quantity<Time> elapsed) {
        double seconds = Kinds.TIME.siWithin(elapsed, "time since the lift", 0, 86400);
        double drained = Math.min(
                depth,
                law.drained(
                        seconds,
                        depth,
                        alpha,
                        perVolume,
                        water.viscosity().si(),
                        water.density().si()));
        double rho = water.density().si();
        double fibre = perVolume * depth;
        // The fibre never leaves; as the last of the stock drains the level is that of the fibre itself.
        double thickness = Math.max(depth - drained, fibre / wallDensity);
        double mass = rho * (thickness - fibre / wallDensity) + fibre;
        return new FoundMoment(
                Kinds.TIME.ofSi(seconds, "s"),
                Kinds.LENGTH.ofSi(depth - thickness, "mm"),
                Kinds.LENGTH.ofSi(thickness, "mm"),
                Kinds.SHARE.ofSi(drained / depth, "%"),
                Kinds.MASS.ofSi(mass, "kg"));
    }

    private double seconds(double share) {
        return law.time(
                share,
                depth,
                alpha,
                perVolume,
                water.viscosity().si(),
                water.density().si());
    }

    @Override
    public String toString() {
        return Kinds.LENGTH.ofSi(depth, "mm") + " of stock at " + Kinds.FIBRE_CONCENTRATION.ofSi(perVolume, "g/L")
                + ", drained in " + time();
    }
}
