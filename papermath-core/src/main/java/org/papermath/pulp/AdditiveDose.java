package org.papermath.pulp;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Time;
import javax.measure.quantity.Volume;
import org.papermath.equation.Additives;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Scope;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Dose;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Limits;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Unclear;

/**
 * How much of an additive a recipe takes. It goes with the dry fibre, never with the litres: the same tint on another
 * amount of fibre is the same dose.
 *
 * @param additive the additive
 * @param dose active matter over oven-dry fibre, 0 to 50 %
 */
public record AdditiveDose(Additive additive, Amount<Dose> dose) {
    /**
     * Makes a dose.
     *
     * @param additive the additive
     * @param dose active matter over oven-dry fibre, 0 to 50 %
     * @throws Refused if the dose is out of range
     */
    public AdditiveDose {
        Objects.requireNonNull(additive, "additive");
        dose = Limits.DOSE.check(dose, "dose of ", additive.name());
    }

    /**
     * Makes a dose.
     *
     * @param additive the additive
     * @param dose active matter over oven-dry fibre, 0 to 50 %
     * @return the dose
     * @throws org.papermath.quantity.Refused if the dose is out of range
     */
    public static AdditiveDose of(Additive additive, Quantity<Dose> dose) {
        Objects.requireNonNull(additive, "additive");
        return new AdditiveDose(additive, Limits.DOSE.check(dose, "dose of ", additive.name()));
    }

    /**
     * Reads a dose from what was weighed out once.
     *
     * @param additive the additive
     * @param product the product weighed out
     * @param ovenDry the oven-dry fibre it went to, above zero
     * @return the dose
     * @throws Refused if a value is out of range, or the dose comes out above 50 %
     */
    public static AdditiveDose ofProduct(Additive additive, Quantity<Mass> product, Quantity<Mass> ovenDry) {
        Objects.requireNonNull(additive, "additive");
        double dose = Additives.doseOfProduct(
                Kinds.MASS.si(product, "product of " + additive.name()),
                active(additive),
                Kinds.MASS.siAboveZero(ovenDry, "oven-dry fibre"));
        return new AdditiveDose(additive, Kinds.DOSE.ofSi(dose, "%"));
    }

    /**
     * Returns the product to weigh out for an amount of fibre: m = d · fibre / active fraction.
     *
     * @param ovenDry the oven-dry fibre
     * @return the mass of product
     * @throws Refused if the mass is out of range
     */
    public Amount<Mass> product(Quantity<Mass> ovenDry) {
        return Kinds.MASS.ofSi(
                Additives.productMass(dose.si(), Kinds.MASS.si(ovenDry, "oven-dry fibre"), active(additive)), "g");
    }

    /**
     * Returns the active matter for an amount of fibre.
     *
     * @param ovenDry the oven-dry fibre
     * @return the mass of active matter
     * @throws Refused if the mass is out of range
     */
    public Amount<Mass> activeMatter(Quantity<Mass> ovenDry) {
        return Kinds.MASS.ofSi(dose.si() * Kinds.MASS.si(ovenDry, "oven-dry fibre"), "g");
    }

    /**
     * Returns the product for each load of a job: loads that differ take differing amounts and come out alike.
     *
     * @param loads the loads
     * @return the mass of product for each, in order
     */
    public List<Amount<Mass>> perLoad(List<BeaterLoad> loads) {
        List<Amount<Mass>> masses = new ArrayList<>();
        for (BeaterLoad load : loads) {
            masses.add(product(load.ovenDry()));
        }
        return List.copyOf(masses);
    }

    /**
     * Returns the volume of a stock solution to measure for an amount of fibre.
     *
     * @param ovenDry the oven-dry fibre
     * @param solution the stock solution of this additive
     * @return the volume
     * @throws Refused if the solution is of another additive, or the mass is out of range
     */
    public Amount<Volume> solution(Quantity<Mass> ovenDry, AdditiveSolution solution) {
        if (!solution.additive().name().equals(additive.name())) {
            throw Refused.of(
                    "additive.other-solution",
                    "solution: one of " + solution.additive().name() + " given for a dose of " + additive.name() + ".",
                    "given",
                    solution.additive().name(),
                    "wanted",
                    additive.name());
        }
        return Kinds.VOLUME.ofSi(
                Additives.solutionVolume(
                        dose.si(),
                        Kinds.MASS.si(ovenDry, "oven-dry fibre"),
                        solution.strength().si()),
                "mL");
    }

    /**
     * Puts doses in the usual order of addition: filler and colour first, then what fixes them, then carbonate, size
     * and formation aid.
     *
     * @param doses the doses of a recipe
     * @return the same in order; equals keep theirs
     */
    public static List<AdditiveDose> inOrder(List<AdditiveDose> doses) {
        Objects.requireNonNull(doses, "doses");
        return doses.stream()
                .sorted(Comparator.comparing(
                        (AdditiveDose dose) -> dose.additive().purpose()))
                .toList();
    }

    /** When an additive goes in. */
    public sealed interface Addition permits FoundAddition {
        /** {@return the time after the first addition} */
        Amount<Time> at();

        /** {@return the dose} */
        AdditiveDose dose();
    }

    private record FoundAddition(Amount<Time> at, AdditiveDose dose) implements Addition {
        @Override
        public String toString() {
            return dose + (at.si() > 0 ? ", " + at + " after the first" : ", first");
        }
    }

    /**
     * Sets out doses in the usual order with a wait between them, so that each has spread through the stock before the
     * next.
     *
     * @param doses the doses of a recipe
     * @param assumptions where {@code additive.wait} is looked up, for the additive that was given before
     * @return what goes in when, counted from the first addition; empty for no doses
     */
    public static List<Addition> timetable(List<AdditiveDose> doses, Assumptions assumptions) {
        Objects.requireNonNull(doses, "doses");
        Objects.requireNonNull(assumptions, "assumptions");
        List<Addition> table = new ArrayList<>();
        double at = 0;
        for (AdditiveDose dose : inOrder(doses)) {
            table.add(new FoundAddition(Kinds.TIME.ofSi(at, "min"), dose));
            at += assumptions.si(
                    "additive.wait", Scope.of(dose.additive().purpose().subject()));
        }
        return List.copyOf(table);
    }

    /**
     * Makes the question to ask back when a recipe says "9 %" of something beside a bath: on the dry fibre, or of the
     * solution.
     *
     * @param what the name of the stuff
     * @param bare the bare percentage
     * @param ovenDry the oven-dry fibre at hand
     * @param bath the volume of the bath at hand
     * @return the question, to be thrown or shown, with the mass each meaning gives
     * @throws Refused if a value is out of range
     */
    public static Unclear whichBase(
            String what, Quantity<Dimensionless> bare, Quantity<Mass> ovenDry, Quantity<Volume> bath) {
        Objects.requireNonNull(what, "what");
        double share = Kinds.NUMBER.siWithin(bare, what, 0, 1);
        Amount<Dimensionless> given = Kinds.NUMBER.ofSi(share, "%");
        Amount<Mass> onFibre = Kinds.MASS.ofSi(share * Kinds.MASS.si(ovenDry, "oven-dry fibre"), "g");
        Amount<Mass> inBath = Kinds.MASS.ofSi(share * 1000 * Kinds.VOLUME.si(bath, "bath"), "g");
        return new Unclear(
                "additive.which-base",
                what + ": a bare " + given + " given. Say of what: a percentage alone is no dose.",
                List.of(
                        new Unclear.Candidate("of the oven-dry fibre", onFibre.toString()),
                        new Unclear.Candidate("grams in 100 mL of the bath", inBath.toString())),
                "what",
                what,
                "given",
                given.toString());
    }

    private static double active(Additive additive) {
        return additive.activeFraction().map(Amount::si).orElse(1.0);
    }

    @Override
    public String toString() {
        return additive + ", " + dose + " on oven-dry fibre";
    }
}
