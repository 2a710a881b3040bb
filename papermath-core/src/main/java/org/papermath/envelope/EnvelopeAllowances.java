package org.papermath.envelope;

import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Length;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Scope;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kinds;

/**
 * What an envelope is given beyond its card: clearance, seams and flaps. Immutable.
 */
public final class EnvelopeAllowances {
    private final double clearance;
    private final double sideFlap;
    private final double seam;
    private final double squareFlap;
    private final double pointedFlap;

    private EnvelopeAllowances(double clearance, double sideFlap, double seam, double squareFlap, double pointedFlap) {
        this.clearance = clearance;
        this.sideFlap = sideFlap;
        this.seam = seam;
        this.squareFlap = squareFlap;
        this.pointedFlap = pointedFlap;
    }

    /**
     * Makes allowances.
     *
     * @param clearance inside less card and filling, each way in all, zero or more
     * @param sideFlap the width of the side flaps of side seams and of the bottom flap of an open end, above zero
     * @param seam the overlap of diagonal seams and of the middle seam of an open end, above zero
     * @param squareFlap the depth of a square flap as a part of the height of the pocket, above 0 and at most 1
     * @param pointedFlap the depth of a pointed flap as a part of the height of the pocket, above 0 and at most 1
     * @return the allowances
     * @throws org.papermath.quantity.Refused if one of them is out of range
     */
    public static EnvelopeAllowances of(
            Quantity<Length> clearance,
            Quantity<Length> sideFlap,
            Quantity<Length> seam,
            Quantity<Dimensionless> squareFlap,
            Quantity<Dimensionless> pointedFlap) {
        return new EnvelopeAllowances(
                Kinds.LENGTH.si(clearance, "clearance"),
                Kinds.LENGTH.siAboveZero(sideFlap, "side flap"),
                Kinds.LENGTH.siAboveZero(seam, "seam"),
                part(squareFlap, "square flap"),
                part(pointedFlap, "pointed flap"));
    }

    private static double part(Quantity<Dimensionless> flap, String what) {
        Kinds.NUMBER.siAboveZero(flap, what);
        return Kinds.NUMBER.siWithin(flap, what, 0, 1);
    }

    /**
     * Takes the allowances a store of assumptions holds for everything.
     *
     * @param assumptions the store, with {@code envelope.clearance}, {@code envelope.side-flap}, {@code envelope.seam},
     *     {@code envelope.square-flap} and {@code envelope.pointed-flap}
     * @return the allowances
     * @throws org.papermath.quantity.Refused if one is missing
     */
    public static EnvelopeAllowances from(Assumptions assumptions) {
        Objects.requireNonNull(assumptions, "assumptions");
        return of(
                Kinds.LENGTH.ofSi(assumptions.si("envelope.clearance", Scope.GENERAL), "mm"),
                Kinds.LENGTH.ofSi(assumptions.si("envelope.side-flap", Scope.GENERAL), "mm"),
                Kinds.LENGTH.ofSi(assumptions.si("envelope.seam", Scope.GENERAL), "mm"),
                Kinds.NUMBER.ofSi(assumptions.si("envelope.square-flap", Scope.GENERAL)),
                Kinds.NUMBER.ofSi(assumptions.si("envelope.pointed-flap", Scope.GENERAL)));
    }

    /**
     * Returns the allowances with another clearance.
     *
     * @param other inside less card and filling, each way in all, zero or more
     * @return the allowances
     * @throws org.papermath.quantity.Refused if it is out of range
     */
    public EnvelopeAllowances withClearance(Quantity<Length> other) {
        return new EnvelopeAllowances(Kinds.LENGTH.si(other, "clearance"), sideFlap, seam, squareFlap, pointedFlap);
    }

    /**
     * Returns the allowances with another seam.
     *
     * @param other the overlap of diagonal seams and of the middle seam of an open end, above zero
     * @return the allowances
     * @throws org.papermath.quantity.Refused if it is out of range
     */
    public EnvelopeAllowances withSeam(Quantity<Length> other) {
        return new EnvelopeAllowances(
                clearance, sideFlap, Kinds.LENGTH.siAboveZero(other, "seam"), squareFlap, pointedFlap);
    }

    /**
     * Returns the clearance.
     *
     * @return inside less card and filling, each way in all
     */
    public Amount<Length> clearance() {
        return Kinds.LENGTH.ofSi(clearance, "mm");
    }

    /**
     * Returns the width of the side flaps.
     *
     * @return the width; also of the bottom flap of an open end
     */
    public Amount<Length> sideFlap() {
        return Kinds.LENGTH.ofSi(sideFlap, "mm");
    }

    /**
     * Returns the overlap of diagonal seams and of the middle seam of an open end.
     *
     * @return the overlap
     */
    public Amount<Length> seam() {
        return Kinds.LENGTH.ofSi(seam, "mm");
    }

    /**
     * Returns the depth of a square flap.
     *
     * @return a part of the height of the pocket
     */
    public Amount<Dimensionless> squareFlap() {
        return Kinds.NUMBER.ofSi(squareFlap);
    }

    /**
     * Returns the depth of a pointed flap.
     *
     * @return a part of the height of the pocket
     */
    public Amount<Dimensionless> pointedFlap() {
        return Kinds.NUMBER.ofSi(pointedFlap);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof EnvelopeAllowances that
                && clearance == that.clearance
                && sideFlap == that.sideFlap
                && seam == that.seam
                && squareFlap == that.squareFlap
                && pointedFlap == that.pointedFlap;
    }

    @Override
    public int hashCode() {
        return Objects.hash(clearance, sideFlap, seam, squareFlap, pointedFlap);
    }

    @Override
    public String toString() {
        return "clearance " + clearance() + ", side flap " + sideFlap() + ", seam " + seam();
    }
}
