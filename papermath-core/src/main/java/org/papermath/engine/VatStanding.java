package org.papermath.engine;

import java.util.Arrays;

/**
 * A vat as it stands at a time, kg: what is in it, and in the pail it was let down into.
 *
 * @param fibre oven-dry fibre in the vat
 * @param mass what is in the vat in all
 * @param additives each additive in the vat
 * @param pailFibre oven-dry fibre in the pail
 * @param pail what is in the pail in all
 * @param pailAdditives each additive in the pail
 * @param used stock that has gone into the vat so far
 */
public record VatStanding(
        double fibre,
        double mass,
        double[] additives,
        double pailFibre,
        double pail,
        double[] pailAdditives,
        double used) {
    /** Oven-dry fibre over what is in the vat. */
    public double consistency() {
        return fibre / mass;
    }

    /** The same level, with so many times the fibre and the additives. */
    public VatStanding thicker(double ratio) {
        return new VatStanding(ratio * fibre, mass, times(ratio), pailFibre, pail, pailAdditives, used);
    }

    /** The same pulp, at another level. */
    public VatStanding holding(double kilograms) {
        double ratio = kilograms / mass;
        return new VatStanding(ratio * fibre, kilograms, times(ratio), pailFibre, pail, pailAdditives, used);
    }

    private double[] times(double ratio) {
        return Arrays.stream(additives).map(one -> ratio * one).toArray();
    }
}
