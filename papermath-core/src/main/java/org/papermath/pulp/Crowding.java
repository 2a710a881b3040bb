package org.papermath.pulp;

import java.util.List;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Length;
import org.papermath.equation.VatBalance;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Notice;
import org.papermath.evidence.Scope;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Consistency;
import org.papermath.quantity.Kinds;

/**
 * How crowded fibres are in a stock, and so whether they clump: N = 5 C L²/w, with C in per cent, L in mm and w in
 * mg/m. Immutable.
 *
 * @source Kerekes and Schell 1992, as quoted in Keller, Paper Drying, ch. 7
 */
public final class Crowding {
    private final double length;
    private final double coarseness;
    private final double free;
    private final double clumps;

    private Crowding(double length, double coarseness, double free, double clumps) {
        this.length = length;
        this.coarseness = coarseness;
        this.free = free;
        this.clumps = clumps;
    }

    /**
     * Builds it for a fibre.
     *
     * @param assumptions where length, coarseness and limits are looked up
     * @param scope the fibre
     * @return the model
     * @throws org.papermath.quantity.Refused if the fibre has no length or coarseness
     */
    public static Crowding from(Assumptions assumptions, Scope scope) {
        Objects.requireNonNull(assumptions, "assumptions");
        Objects.requireNonNull(scope, "scope");
        return new Crowding(
                assumptions.si("fibre.length", scope),
                assumptions.si("fibre.coarseness", scope),
                assumptions.si("vat.crowding-free", scope),
                assumptions.si("vat.crowding-clumps", scope));
    }

    /**
     * Builds it for a fibre from the shipped table.
     *
     * @param scope the fibre
     * @return the model
     * @throws org.papermath.quantity.Refused if the fibre has no length or coarseness
     */
    public static Crowding standard(Scope scope) {
        Objects.requireNonNull(scope, "scope");
        return from(Assumptions.standard(), scope);
    }

    /**
     * Returns the same with another fibre length, as after cutting in the beater; the number goes with its square.
     *
     * @param newLength the mean length, above zero
     * @return the model
     * @throws org.papermath.quantity.Refused if the length is not above zero
     */
    public Crowding withLength(Quantity<Length> newLength) {
        return new Crowding(Kinds.LENGTH.siAboveZero(newLength, "fibre length"), coarseness, free, clumps);
    }

    /**
     * Returns the crowding number of a stock.
     *
     * @param consistency the consistency by mass
     * @return the number
     * @throws org.papermath.quantity.Refused if the consistency is out of range
     */
    public Amount<Dimensionless> number(Quantity<Consistency> consistency) {
        return Kinds.NUMBER.ofSi(
                VatBalance.crowdingNumber(Kinds.CONSISTENCY.si(consistency, "consistency"), length, coarseness), "1");
    }

    /**
     * Returns the consistency above which the fibres form clumps.
     *
     * @return the consistency at the clumping limit, at most 100 %
     */
    public Amount<Consistency> clumpingFrom() {
        return Kinds.CONSISTENCY.ofSi(Math.min(1, VatBalance.consistencyForCrowding(clumps, length, coarseness)), "%");
    }

    /**
     * States whether the stock forms clumps, or moves freely.
     *
     * @param consistency the consistency by mass
     * @return a warning where fibres clump; empty below
     * @throws org.papermath.quantity.Refused if the consistency is out of range
     */
    public List<Notice> notices(Quantity<Consistency> consistency) {
        Amount<Dimensionless> number = number(consistency);
        if (number.si() > clumps) {
            return List.of(Notice.warning(
                    "vat.clumps",
                    "The crowding number is " + number + "; above about " + Kinds.NUMBER.ofSi(clumps, "1")
                            + " fibres form clumps. Thin the vat to " + clumpingFrom()
                            + ", cut the fibre in the beater, or use a formation aid.",
                    "number",
                    number.toString(),
                    "limit",
                    Kinds.NUMBER.ofSi(clumps, "1").toString(),
                    "consistency",
                    clumpingFrom().toString()));
        }
        return List.of();
    }

    /**
     * Returns whether fibres move freely of each other.
     *
     * @param consistency the consistency by mass
     * @return whether the number is below the limit of free movement
     * @throws org.papermath.quantity.Refused if the consistency is out of range
     */
    public boolean isFree(Quantity<Consistency> consistency) {
        return number(consistency).si() < free;
    }

    @Override
    public String toString() {
        return "crowding of fibre " + Kinds.LENGTH.ofSi(length, "mm") + " long";
    }
}
