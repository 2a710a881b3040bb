package org.papermath.drying;

import javax.measure.Quantity;

import org.papermath.quantity.Amount;
import org.papermath.quantity.Kinds;
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
     * A restraint stack of blotters and fluted boards with a fan.
     *
     * @param name its name
     * @param freeAirFlow the free-air flow on the label of the fan; a stack gets a part of it only
     * @param capacity sheets that dry at once
     */
    record FanStack(String name, Amount<VolumeFlow> freeAirFlow, int capacity) implements Dryer {
        @Override
        public String restraint() {
            return "stack";
        }

        @Override
        public String toString() {
            return name + " (fan stack, " + freeAirFlow + " on the label, " + capacity + " sheets)";
        }
    }

    /**
     * Boards, glass or walls that the wet sheets are brushed on.
     *
     * @param name its name
     * @param capacity sheets that dry at once
     */
    record Boards(String name, int capacity) implements Dryer {
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
     * @param freeAirFlow the free-air flow on the label of the fan, above zero
     * @param capacity sheets that dry at once, 1 or more
     * @return the dryer
     * @throws Refused if a value is out of range
     */
    static Dryer fanStack(String name, Quantity<VolumeFlow> freeAirFlow, int capacity) {
        Amount<VolumeFlow> flow = Kinds.VOLUME_FLOW.checkAboveZero(freeAirFlow, "free-air flow of the fan");
        return new FanStack(named(name), flow, atLeastOne(capacity, "sheets at once"));
    }

    /**
     * Makes boards.
     *
     * @param name its name, not empty
     * @param capacity sheets that dry at once, 1 or more
     * @return the dryer
     * @throws Refused if a value is out of range
     */
    static Dryer boards(String name, int capacity) {
        return new Boards(named(name), atLeastOne(capacity, "sheets at once"));
    }

    /**
     * Makes a loft.
     *
     * @param name its name, not empty
     * @param sheetsInSpur sheets that hang together, 1 or more
     * @param capacity sheets that dry at once, 1 or more
     * @return the dryer
     * @throws Refused if a value is out of range
     */
    static Dryer loft(String name, int sheetsInSpur, int capacity) {
        return new Loft(named(name), atLeastOne(sheetsInSpur, "sheets in a spur"),
                atLeastOne(capacity, "sheets at once"));
    }

    /**
     * Makes blotters changed by hand.
     *
     * @param name its name, not empty
     * @param capacity sheets that dry at once, 1 or more
     * @return the dryer
     * @throws Refused if a value is out of range
     */
    static Dryer blotters(String name, int capacity) {
        return new Blotters(named(name), atLeastOne(capacity, "sheets at once"));
    }

    private static String named(String name) {
        if (name.isBlank()) {
            throw Refused.of("equipment.unnamed", "dryer: a name is wanted; calibrated values are kept under it.");
        }
        return name;
    }

    private static int atLeastOne(int count, String what) {
        if (count < 1) {
            throw Refused.of("count.below-one", what + ": " + count + " given; 1 or more is wanted.", "given", count,
                    "least", 1);
        }
        return count;
    }
}
