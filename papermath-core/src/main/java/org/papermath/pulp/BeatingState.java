package org.papermath.pulp;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Time;
import org.papermath.equation.Beating;
import org.papermath.equation.BeatingLaw;
import org.papermath.equation.Freeness;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Scope;
import org.papermath.fibre.Fibre;
import org.papermath.fibre.Furnish;
import org.papermath.numeric.Roots;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;
import org.papermath.quantity.SchopperRiegler;
import org.papermath.quantity.Share;

/**
 * How far beating has brought each fibre of a furnish, from 0, not beaten, to 1, beaten as far as it goes. Immutable.
 *
 * <pre>{@code
 * Furnish abaca = Furnish.of(Fibres.ABACA);
 * BeatingState timed = BeatingState.after(Assumptions.standard(), abaca, "", hours(3));
 * BeatingState read = BeatingState.measured(Assumptions.standard(), abaca, "", SchopperRiegler.degrees(60));
 * timed.of(Fibres.ABACA).in("%") > read.of(Fibres.ABACA).in("%"); // true
 * }</pre>
 *
 * <p>Drainability, water held, shrinkage and density all follow from it, so a drainability measured stands in for
 * hours in any beater. After a time in a beater near its rated load it is {@code y = 1 - exp(-(k t)^p)}; behind a
 * drainability it is {@code y = (SR - SR_0)/(SR_m - SR_0)}. Fibres beaten together had one dose, and each its own rate.
 *
 * @source common practice; the form is chosen here. That density and shrinkage of one rag go together through beating
 *     is read from Sindall, The Manufacture of Paper, 1908, ch. IX
 */
public final class BeatingState {
    private static final BeatingState UNBEATEN = new BeatingState(List.of(), 0, Double.NaN);
    /** Where the search for a dose begins, s. */
    private static final double USUAL_DOSE = 3 * 3600;

    private final List<Part> parts;
    private final double mean;
    /** Of the whole, °SR; not a number where it is not known. */
    private final double drainability;

    private record Part(Scope scope, double share, double state) {}

    private BeatingState(List<Part> parts, double mean, double drainability) {
        this.parts = parts;
        this.mean = mean;
        this.drainability = drainability;
    }

    /**
     * Returns the state of fibre that was not beaten.
     *
     * @return the state 0
     */
    public static BeatingState unbeaten() {
        return UNBEATEN;
    }

    /**
     * Returns one state for every fibre.
     *
     * @param state the state, from 0 to 1
     * @return the state
     * @throws org.papermath.quantity.Refused if it is not from 0 to 1
     */
    public static BeatingState at(Quantity<Share> state) {
        return new BeatingState(List.of(), Kinds.SHARE.si(state, "state of beating"), Double.NaN);
    }

    /**
     * Returns the state after a time in a beater near its rated load.
     *
     * @param assumptions where rate, exponent, unbeaten and greatest drainability of each fibre are looked up
     * @param furnish the fibres, beaten together
     * @param beater the name of the beater; empty for none in particular
     * @param time the beating time, zero or more
     * @return the state
     * @throws org.papermath.quantity.Refused if the time is out of range
     */
    public static BeatingState after(Assumptions assumptions, Furnish furnish, String beater, Quantity<Time> time) {
        requireAll(assumptions, furnish, beater);
        double seconds = Kinds.TIME.si(time, "beating time");
        Laws laws = new Laws(assumptions, furnish, beater);
        double[] states = laws.states(seconds);
        return laws.in(states, laws.mixed(states));
    }

    /**
     * Returns the state behind a drainability that was measured: of one fibre by its two ends; of a blend that in which
     * the fibres, beaten together, drain as the blend does. A number outside what beating gives is taken as of the
     * nearer end.
     *
     * @param assumptions where rate, exponent, unbeaten and greatest drainability of each fibre are looked up
     * @param furnish the fibres
     * @param beater the name of the beater; empty for none in particular
     * @param number the Schopper–Riegler number of the furnish
     * @return the state
     * @throws org.papermath.quantity.Refused if the number is out of range
     */
    public static BeatingState measured(
            Assumptions assumptions, Furnish furnish, String beater, Quantity<SchopperRiegler> number) {
        requireAll(assumptions, furnish, beater);
        double sr = Kinds.SCHOPPER_RIEGLER.si(number, "Schopper-Riegler number");
        Laws laws = new Laws(assumptions, furnish, beater);
        if (laws.laws.size() == 1) {
            return laws.in(new double[] {laws.laws.get(0).stateOf(sr)}, sr);
        }
        if (sr <= laws.mixed(laws.states(0))) {
            return laws.in(laws.states(0), sr);
        }
        if (sr >= laws.mixed(laws.states(Double.POSITIVE_INFINITY))) {
            return laws.in(laws.states(Double.POSITIVE_INFINITY), sr);
        }
        double fraction = Roots.between(0, 1, x -> laws.mixed(laws.states(dose(x))) - sr);
        return laws.in(laws.states(dose(fraction)), sr);
    }

    /** The time of beating, s, that gives a furnish a drainability; not finite for one that beating does not give. */
    static double timeTo(Assumptions assumptions, Furnish furnish, String beater, double sr) {
        Laws laws = new Laws(assumptions, furnish, beater);
        if (!(sr > laws.mixed(laws.states(0)) && sr < laws.mixed(laws.states(Double.POSITIVE_INFINITY)))) {
            return Double.NaN;
        }
        return dose(Roots.between(0, 1, x -> laws.mixed(laws.states(dose(x))) - sr));
    }

    /**
     * Returns how long a furnish has to be beaten in a beater to come to a drainability.
     *
     * <pre>{@code
     * Furnish rag = Furnish.of(Fibres.COTTON_RAG);
     * BeatingState.timeTo(Assumptions.standard(), rag, "", SchopperRiegler.degrees(40)); // 3.472 h
     * }</pre>
     *
     * @param assumptions where the rates are looked up
     * @param furnish the fibres, beaten together
     * @param beater the name of the beater; empty for none in particular
     * @param wanted the Schopper–Riegler number of the whole
     * @return the time
     * @throws Refused if beating does not give that number, with what it does give, or nothing is known of a fibre
     */
    public static Amount<Time> timeTo(
            Assumptions assumptions, Furnish furnish, String beater, Quantity<SchopperRiegler> wanted) {
        requireAll(assumptions, furnish, beater);
        double number = Kinds.SCHOPPER_RIEGLER.si(wanted, "drainability wanted");
        double seconds = timeTo(assumptions, furnish, beater, number);
        if (!Double.isFinite(seconds)) {
            double start = mixed(assumptions, furnish, beater, 0);
            double end = mixed(assumptions, furnish, beater, Double.POSITIVE_INFINITY);
            if (number == start) {
                return Kinds.TIME.ofSi(0, "h");
            }
            throw Refused.of(
                    "beating.unreachable",
                    "Schopper-Riegler number: " + Kinds.SCHOPPER_RIEGLER.ofSi(number, "SR")
                            + " given; beating goes from "
                            + Kinds.SCHOPPER_RIEGLER.ofSi(start, "SR") + " unbeaten towards "
                            + Kinds.SCHOPPER_RIEGLER.ofSi(end, "SR")
                            + " and does not get there. Check the reading, or read your own unbeaten pulp.",
                    "given",
                    Kinds.SCHOPPER_RIEGLER.ofSi(number, "SR").toString(),
                    "least",
                    Kinds.SCHOPPER_RIEGLER.ofSi(start, "SR").toString(),
                    "most",
                    Kinds.SCHOPPER_RIEGLER.ofSi(end, "SR").toString());
        }
        return Kinds.TIME.ofSi(seconds, "h");
    }

    /** The drainability of a furnish after a time of beating, s. */
    static double mixed(Assumptions assumptions, Furnish furnish, String beater, double time) {
        Laws laws = new Laws(assumptions, furnish, beater);
        return laws.mixed(laws.states(time));
    }

    private static void requireAll(Assumptions assumptions, Furnish furnish, String beater) {
        Objects.requireNonNull(assumptions, "assumptions");
        Objects.requireNonNull(furnish, "furnish");
        Objects.requireNonNull(beater, "beater");
    }

    /** A dose for every number from 0 to 1, none for 0 and without end for 1. */
    private static double dose(double fraction) {
        return fraction == 1 ? Double.POSITIVE_INFINITY : USUAL_DOSE * fraction / (1 - fraction);
    }

    /** The fibres of a furnish, and how each answers to beating. */
    private static final class Laws {
        private final List<Scope> scopes = new ArrayList<>();
        private final List<BeatingLaw> laws = new ArrayList<>();
        private final double[] shares;
        private final double water;
        private final double exponent;

        Laws(Assumptions assumptions, Furnish furnish, String beater) {
            for (Fibre fibre : furnish.fibres()) {
                Scope scope = beater.isEmpty() ? fibre.scope() : fibre.scope().on(beater);
                scopes.add(fibre.scope());
                laws.add(new BeatingLaw(
                        assumptions.si("beating.drainability-unbeaten", scope),
                        assumptions.si("beating.drainability-limit", scope),
                        assumptions.si("beating.rate", scope),
                        assumptions.si("beating.exponent", scope)));
            }
            shares = furnish.fibres().stream()
                    .mapToDouble(fibre -> furnish.share(fibre).si())
                    .toArray();
            water = assumptions.si("freeness.sr-water-reading", Scope.GENERAL);
            exponent = assumptions.si("drainage.resistance-exponent", Scope.GENERAL);
        }

        double[] states(double dose) {
            return laws.stream()
                    .mapToDouble(law -> dose == 0 ? 0 : law.state(dose))
                    .toArray();
        }

        BeatingState in(double[] states, double drainability) {
            List<Part> parts = new ArrayList<>();
            for (int f = 0; f < states.length; f++) {
                parts.add(new Part(scopes.get(f), shares[f], states[f]));
            }
            return new BeatingState(List.copyOf(parts), Beating.mean(shares, states), drainability);
        }

        double mixed(double[] states) {
            if (states.length == 1) {
                return laws.get(0).drainability(states[0]);
            }
            double[] numbers = new double[shares.length];
            for (int f = 0; f < numbers.length; f++) {
                numbers[f] = Math.max(water, laws.get(f).drainability(states[f]));
            }
            return Freeness.mixed(shares, numbers, water, exponent);
        }
    }

    /**
     * Returns the state of a fibre.
     *
     * @param fibre the fibre
     * @return the state, from 0 to 1; that of the whole for a fibre the furnish does not have
     */
    public Amount<Share> of(Fibre fibre) {
        return Kinds.SHARE.ofSi(si(fibre.scope()), "%");
    }

    /**
     * Returns the state of what is looked up in a scope: of a fibre if it is one of the furnish, else the mean by mass
     * of its fibres.
     *
     * @param scope a fibre or a furnish, perhaps on a machine
     * @return the state, from 0 to 1
     */
    public Amount<Share> of(Scope scope) {
        return Kinds.SHARE.ofSi(si(scope), "%");
    }

    /**
     * Returns the drainability of the whole. In a blend it is the surfaces of the fibres that add up, and the root of
     * the filtration resistance goes with the surface.
     *
     * @return the Schopper–Riegler number, if the state was made for a furnish
     */
    public Optional<Amount<SchopperRiegler>> drainability() {
        return Double.isNaN(drainability)
                ? Optional.empty()
                : Optional.of(Kinds.SCHOPPER_RIEGLER.ofSi(drainability, "SR"));
    }

    private double si(Scope scope) {
        for (Part part : parts) {
            if (part.scope().subject().equals(scope.subject())) {
                return part.state();
            }
        }
        return mean;
    }

    @Override
    public String toString() {
        return "beaten " + Kinds.SHARE.ofSi(mean, "%") + " of the way";
    }
}
