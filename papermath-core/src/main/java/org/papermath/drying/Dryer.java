package org.papermath.drying;

import java.util.Objects;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Mass;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Limits;
import org.papermath.quantity.Name;
import org.papermath.quantity.Refused;
import org.papermath.quantity.VolumeFlow;

/** A way of drying, with what belongs to the machine itself; how it dries and how it restrains are assumptions. */
public sealed interface Dryer {
    /**
     * Returns the name.
     *
     * @return the name; calibrated values are kept under it
     */
    String name();

    /**
     * Returns the subject under which the table of assumptions keeps its restraint.
     *
     * @return {@code stack}, {@code board}, {@code blotters}, {@code spur} or {@code hung}
     */
    String restraint();

    /**
     * Returns how many sheets dry at once.
     *
     * @return the number of sheets
     */
    int capacity();

    /**
     * A restraint stack of blotters and fluted boards, with a fan or without.
     *
     * @param name its name
     * @param freeAirFlow the free-air flow on the label of the fan, 0 without one; a stack gets a part of it only
     * @param capacity sheets that dry at once
     * @param weight what lies on it, or what its straps pull, as a mass
     */
    record FanStack(String name, Amount<VolumeFlow> freeAirFlow, int capacity, Optional<Amount<Mass>> weight)
            implements Dryer {
        /**
         * Makes the dryer.
         *
         * @param name its name, not empty
         * @param freeAirFlow the free-air flow on the label of the fan, 0 without one, at most 1 000 000 m³/h
         * @param capacity sheets that dry at once, 1 to 100 000
         * @param weight what lies on it, or what its straps pull, as a mass, 100 g to 10 t; without it the stack is
         *     taken to hold its sheets
         * @throws Refused if the name cannot be one or a value is out of range
         */
        public FanStack {
            name = named(name);
            freeAirFlow = Limits.FREE_AIR_FLOW.check(freeAirFlow, "free-air flow of the fan");
            Limits.DRYER_CAPACITY.check(capacity, "sheets at once");
            Objects.requireNonNull(weight, "weight");
            weight = weight.map(one -> Limits.STACK_WEIGHT.check(one, "weight on the stack"));
        }

        /**
         * Makes the dryer with no weight given.
         *
         * @param name its name, not empty
         * @param freeAirFlow the free-air flow on the label of the fan, 0 without one, at most 1 000 000 m³/h
         * @param capacity sheets that dry at once, 1 to 100 000
         * @throws Refused if the name cannot be one or a value is out of range
         */
        public FanStack(String name, Amount<VolumeFlow> freeAirFlow, int capacity) {
            this(name, freeAirFlow, capacity, Optional.empty());
        }

        /**
         * Tells whether a fan blows through it.
         *
         * @return whether there is one
         */
        public boolean hasFan() {
            return freeAirFlow.si() > 0;
        }

        /**
         * Returns the same stack under a weight, or with straps that pull as much.
         *
         * @param mass the mass, 100 g to 10 t
         * @return the dryer
         * @throws Refused if it is out of range
         */
        public FanStack under(Quantity<Mass> mass) {
            return new FanStack(
                    name, freeAirFlow, capacity, Optional.of(Limits.STACK_WEIGHT.check(mass, "weight on the stack")));
        }

        @Override
        public String restraint() {
            return "stack";
        }

        @Override
        public String toString() {
            return name + " (" + (hasFan() ? "fan stack, " + freeAirFlow + " on the label" : "stack without a fan")
                    + ", " + capacity + " sheets"
                    + weight.map(one -> ", under " + one).orElse("") + ")";
        }
    }

    /**
     * Boards, glass or walls that the wet sheets are brushed on.
     *
     * @param name its name
     * @param capacity sheets that dry at once
     */
    record Boards(String name, int capacity) implements Dryer {
        /**
         * Makes the dryer.
         *
         * @param name its name, not empty
         * @param capacity sheets that dry at once, 1 to 100 000
         * @throws Refused if the name cannot be one or a value is out of range
         */
        public Boards {
            name = named(name);
            Limits.DRYER_CAPACITY.check(capacity, "sheets at once");
        }

        @Override
        public String restraint() {
            return "board";
        }

        @Override
        public String toString() {
            return name + " (boards, " + capacity + " sheets)";
        }
    }

    /**
     * A loft with lines or nets: sheets hang singly or in spurs.
     *
     * @param name its name
     * @param sheetsInSpur sheets that hang together, 1 for single sheets
     * @param capacity sheets that dry at once
     */
    record Loft(String name, int sheetsInSpur, int capacity) implements Dryer {
        /**
         * Makes the dryer.
         *
         * @param name its name, not empty
         * @param sheetsInSpur sheets that hang together, 1 to 100
         * @param capacity sheets that dry at once, 1 to 100 000
         * @throws Refused if the name cannot be one or a value is out of range
         */
        public Loft {
            name = named(name);
            Limits.SPUR.check(sheetsInSpur, "sheets in a spur");
            Limits.DRYER_CAPACITY.check(capacity, "sheets at once");
        }

        @Override
        public String restraint() {
            return sheetsInSpur > 1 ? "spur" : "hung";
        }

        @Override
        public String toString() {
            return name + " (loft, spurs of " + sheetsInSpur + ", " + capacity + " sheets)";
        }
    }

    /**
     * Blotters changed by hand under boards.
     *
     * @param name its name
     * @param capacity sheets that dry at once
     */
    record Blotters(String name, int capacity) implements Dryer {
        /**
         * Makes the dryer.
         *
         * @param name its name, not empty
         * @param capacity sheets that dry at once, 1 to 100 000
         * @throws Refused if the name cannot be one or a value is out of range
         */
        public Blotters {
            name = named(name);
            Limits.DRYER_CAPACITY.check(capacity, "sheets at once");
        }

        @Override
        public String restraint() {
            return "blotters";
        }

        @Override
        public String toString() {
            return name + " (blotters, " + capacity + " sheets)";
        }
    }

    /**
     * Makes a fan stack.
     *
     * @param name its name, not empty
     * @param freeAirFlow the free-air flow on the label of the fan, 0 without one, at most 1 000 000 m³/h
     * @param capacity sheets that dry at once, 1 to 100 000
     * @return the dryer; {@link FanStack#under} puts a weight on it
     * @throws Refused if a value is out of range
     */
    static FanStack fanStack(String name, Quantity<VolumeFlow> freeAirFlow, int capacity) {
        return new FanStack(name, Limits.FREE_AIR_FLOW.check(freeAirFlow, "free-air flow of the fan"), capacity);
    }

    /**
     * Makes a stack of blotters and fluted boards without a fan.
     *
     * @param name its name, not empty
     * @param capacity sheets that dry at once, 1 to 100 000
     * @return the dryer; {@link FanStack#under} puts a weight on it
     * @throws Refused if a value is out of range
     */
    static FanStack stack(String name, int capacity) {
        return fanStack(name, VolumeFlow.cubicMetresPerHour(0), capacity);
    }

    /**
     * Makes boards.
     *
     * @param name its name, not empty
     * @param capacity sheets that dry at once, 1 to 100 000
     * @return the dryer
     * @throws Refused if a value is out of range
     */
    static Dryer boards(String name, int capacity) {
        return new Boards(name, capacity);
    }

    /**
     * Makes a loft.
     *
     * @param name its name, not empty
     * @param sheetsInSpur sheets that hang together, 1 to 100
     * @param capacity sheets that dry at once, 1 to 100 000
     * @return the dryer
     * @throws Refused if a value is out of range
     */
    static Dryer loft(String name, int sheetsInSpur, int capacity) {
        return new Loft(name, sheetsInSpur, capacity);
    }

    /**
     * Makes blotters changed by hand.
     *
     * @param name its name, not empty
     * @param capacity sheets that dry at once, 1 to 100 000
     * @return the dryer
     * @throws Refused if a value is out of range
     */
    static Dryer blotters(String name, int capacity) {
        return new Blotters(name, capacity);
    }

    private static String named(String name) {
        String called = Name.checkKey(name, "dryer");
        if (called.isEmpty()) {
            throw Refused.of("equipment.unnamed", "dryer: the name is empty; calibrated values are stored under it.");
        }
        return called;
    }
}
