package org.papermath.pulp;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Time;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Notice;
import org.papermath.evidence.Scope;
import org.papermath.notice.StockNotices;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.LiquorRatio;
import org.papermath.quantity.Refused;

/** One filling of a beater: the pulp in its trough. Immutable. */
public final class BeaterLoad {
    /** A count just above a whole number by rounding alone is that whole number. */
    private static final double COUNT_GUARD = 1e-9;

    private final Beater beater;
    private final Pulp pulp;

    private BeaterLoad(Beater beater, Pulp pulp) {
        this.beater = beater;
        this.pulp = pulp;
    }

    /**
     * Fills the trough of a beater with fibre and water to its working volume.
     *
     * @param beater the beater
     * @param ovenDry the oven-dry fibre, above zero
     * @return the load
     * @throws Refused if the fibre alone takes up more than the trough
     */
    public static BeaterLoad filling(Beater beater, Quantity<Mass> ovenDry) {
        Objects.requireNonNull(beater, "beater");
        return new BeaterLoad(beater, Pulp.ofOvenDry(ovenDry).inStock(beater.trough()));
    }

    /**
     * Puts a pulp into a beater.
     *
     * @param beater the beater
     * @param pulp the pulp, at most what the trough turns
     * @return the load
     * @throws Refused if the pulp is more than the trough turns
     */
    public static BeaterLoad of(Beater beater, Pulp pulp) {
        Objects.requireNonNull(beater, "beater");
        Objects.requireNonNull(pulp, "pulp");
        if (pulp.volume().si() > beater.trough().si() * (1 + COUNT_GUARD)) {
            throw Refused.of(
                    "beater.overfull",
                    "beater load: " + pulp.volume() + " of stock given, but " + beater.name() + " turns "
                            + beater.trough()
                            + ". Beat it in more loads, or thicken it.",
                    "given",
                    pulp.volume().toString(),
                    "most",
                    beater.trough().toString(),
                    "beater",
                    beater.name());
        }
        return new BeaterLoad(beater, pulp);
    }

    /**
     * Counts the loads a job takes.
     *
     * @param total the oven-dry fibre of the job, above zero
     * @param beater the beater
     * @return total over rated load, rounded up
     * @throws Refused if the mass is not above zero, or the job is of more than a million loads
     */
    public static int count(Quantity<Mass> total, Beater beater) {
        Objects.requireNonNull(beater, "beater");
        double fibre = Kinds.MASS.siAboveZero(total, "fibre to beat");
        double loads = Math.max(1, Math.ceil(fibre / beater.ratedLoad().si() - COUNT_GUARD));
        if (loads > 1e6) {
            throw Refused.of(
                    "beater.too-many-loads",
                    "fibre to beat: " + Kinds.MASS.ofSi(fibre, "kg") + " in loads of " + beater.ratedLoad()
                            + " is more than a million loads. Check the unit of the two masses.",
                    "given",
                    Kinds.MASS.ofSi(fibre, "kg").toString(),
                    "load",
                    beater.ratedLoad().toString());
        }
        return (int) loads;
    }

    /**
     * Shares a job out into equal loads, so that they come out alike.
     *
     * @param total the oven-dry fibre of the job, above zero
     * @param beater the beater
     * @return the loads, each filling the trough
     * @throws Refused as {@link #count}
     */
    public static List<BeaterLoad> equal(Quantity<Mass> total, Beater beater) {
        Objects.requireNonNull(beater, "beater");
        int count = count(total, beater);
        double each = Kinds.MASS.si(total, "fibre to beat") / count;
        return Collections.nCopies(count, filling(beater, Kinds.MASS.ofSi(each, "g")));
    }

    /**
     * Adds up the hours a number of loads keeps the beater and its keeper busy.
     *
     * @param loads the number of loads, 1 or more
     * @param charging filling the trough and getting the stock round
     * @param beating beating itself
     * @param cleaning emptying and cleaning
     * @return the time from the first charge to the last cleaning
     * @throws Refused if the number or a time is out of range
     */
    public static Amount<Time> hours(
            int loads, Quantity<Time> charging, Quantity<Time> beating, Quantity<Time> cleaning) {
        if (loads < 1) {
            throw Refused.of(
                    "beater.no-loads", "beater loads: " + loads + " given; must be 1 or more.", "given", loads);
        }
        return Kinds.TIME.ofSi(
                loads
                        * (Kinds.TIME.si(charging, "time to charge")
                                + Kinds.TIME.si(beating, "time to beat")
                                + Kinds.TIME.si(cleaning, "time to clean")),
                "h");
    }

    /**
     * Returns the water to soak oven-dry fibre in before beating.
     *
     * @param ovenDry the oven-dry fibre
     * @param ratio water over oven-dry fibre, as {@code beater.soak-liquor-ratio} of the assumptions
     * @return the volume of water
     * @throws Refused if a value is out of range
     */
    public static Amount<javax.measure.quantity.Volume> soakWater(Quantity<Mass> ovenDry, Quantity<LiquorRatio> ratio) {
        return Kinds.VOLUME.ofSi(
                Kinds.MASS.si(ovenDry, "oven-dry fibre") * Kinds.LIQUOR_RATIO.si(ratio, "liquor ratio"), "L");
    }

    /**
     * Returns the beater.
     *
     * @return the beater
     */
    public Beater beater() {
        return beater;
    }

    /**
     * Returns the pulp in the trough, with its consistency by mass, by litre of stock and by litre of water.
     *
     * @return the pulp
     */
    public Pulp pulp() {
        return pulp;
    }

    /**
     * Returns the oven-dry fibre of the load.
     *
     * @return the mass
     */
    public Amount<Mass> ovenDry() {
        return pulp.ovenDry();
    }

    /**
     * Returns what is unusual in the load, by the limits of the shipped table.
     *
     * @return the notices; empty where there is nothing to say
     */
    public List<Notice> notices() {
        return notices(Assumptions.standard());
    }

    /**
     * Returns what is unusual in the load: thicker than such a beater turns over well, or more than it is rated for.
     *
     * @param assumptions where the limits are looked up, in the scope of the beater
     * @return the notices; empty where there is nothing to say
     */
    public List<Notice> notices(Assumptions assumptions) {
        Scope scope = Scope.at(beater.name());
        List<Notice> notices = new ArrayList<>();
        StockNotices.thick(pulp.consistency(), assumptions::si, scope).ifPresent(notices::add);
        if (pulp.ovenDry().si() > beater.ratedLoad().si() * (1 + COUNT_GUARD)) {
            notices.add(Notice.warning(
                    "beater.above-rated-load",
                    "The load holds " + ovenDry() + " of oven-dry fibre; " + beater.name() + " is rated for "
                            + beater.ratedLoad() + ".",
                    "given",
                    ovenDry().toString(),
                    "limit",
                    beater.ratedLoad().toString(),
                    "beater",
                    beater.name()));
        }
        return List.copyOf(notices);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof BeaterLoad that && beater.equals(that.beater) && pulp.equals(that.pulp);
    }

    @Override
    public int hashCode() {
        return Objects.hash(beater, pulp);
    }

    @Override
    public String toString() {
        return ovenDry() + " oven-dry in " + beater.name() + ", " + pulp.consistency() + " by mass";
    }
}
