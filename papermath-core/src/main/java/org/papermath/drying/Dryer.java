package org.papermath.drying;

import java.util.Objects;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import org.papermath.equation.PieceLayout;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kinds;
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
     * Returns how many sheets dry at once, one in a layer; where the size of a layer is given, how many layers.
     *
     * @return the number of sheets, or of layers
     */
    int capacity();

    /**
     * Returns the size of a layer: of the blotters of a stack, or of a board.
     *
     * @return the size; empty where it is not given, and for a loft, when a layer holds one sheet
     */
    Optional<Layer> layer();

    /**
     * The size of a layer of a dryer, on which small sheets lie side by side.
     *
     * @param width one side
     * @param length the other side
     */
    record Layer(Amount<Length> width, Amount<Length> length) {
        /**
         * Makes the size.
         *
         * @param width one side, 5 mm to 10 m
         * @param length the other side, 5 mm to 10 m
         * @throws Refused if a side is out of range
         */
        public Layer {
            width = Limits.DRYER_SIDE.check(width, "width of a layer of the dryer");
            length = Limits.DRYER_SIDE.check(length, "length of a layer of the dryer");
        }

        static Layer of(Quantity<Length> width, Quantity<Length> length) {
            return new Layer(
                    Limits.DRYER_SIDE.check(width, "width of a layer of the dryer"),
                    Limits.DRYER_SIDE.check(length, "length of a layer of the dryer"));
        }

        /**
         * Returns how many sheets lie side by side, in rows, all the same way round.
         *
         * @param sheetWidth one side of a wet sheet, above zero
         * @param sheetHeight the other side, above zero
         * @param gap the gap between two sheets, zero or more
         * @return the sheets; 0 where a sheet is larger than the layer
         * @throws Refused if a value is out of range
         */
        public int sheets(Quantity<Length> sheetWidth, Quantity<Length> sheetHeight, Quantity<Length> gap) {
            double across = Kinds.LENGTH.siAboveZero(sheetWidth, "width of the sheet");
            double along = Kinds.LENGTH.siAboveZero(sheetHeight, "height of the sheet");
            double between = Kinds.LENGTH.si(gap, "gap between sheets");
            return PieceLayout.sideBySide(width.si(), length.si(), across, along, between);
        }

        @Override
        public String toString() {
            return width + " × " + length;
        }
    }

    /**
     * A restraint stack of blotters and fluted boards, with a fan or without.
     *
     * @param name its name
     * @param freeAirFlow the free-air flow on the label of the fan, 0 without one; a stack gets a part of it only
     * @param capacity sheets that dry at once, or layers where their size is given
     * @param weight what lies on it, or what its straps pull, as a mass
     * @param layer the size of its blotters
     */
    record FanStack(
            String name,
            Amount<VolumeFlow> freeAirFlow,
            int capacity,
            Optional<Amount<Mass>> weight,
            Optional<Layer> layer)
            implements Dryer {
        /**
         * Makes the dryer.
         *
         * @param name its name, not empty
         * @param freeAirFlow the free-air flow on the label of the fan, 0 without one, at most 1 000 000 m³/h
         * @param capacity sheets that dry at once, 1 to 100 000
         * @param weight what lies on it, or what its straps pull, as a mass, 100 g to 10 t; without it the stack is
         *     taken to hold its sheets
         * @param layer the size of its blotters; without it a layer holds one sheet
         * @throws Refused if the name cannot be one or a value is out of range
         */
        public FanStack {
            name = named(name);
            freeAirFlow = Limits.FREE_AIR_FLOW.check(freeAirFlow, "free-air flow of the fan");
            Limits.DRYER_CAPACITY.check(capacity, "sheets at once");
            Objects.requireNonNull(weight, "weight");
            weight = weight.map(one -> Limits.STACK_WEIGHT.check(one, "weight on the stack"));
            Objects.requireNonNull(layer, "layer");
        }

        /**
         * Makes the dryer with no weight and no size of a layer given.
         *
         * @param name its name, not empty
         * @param freeAirFlow the free-air flow on the label of the fan, 0 without one, at most 1 000 000 m³/h
         * @param capacity sheets that dry at once, 1 to 100 000
         * @throws Refused if the name cannot be one or a value is out of range
         */
        public FanStack(String name, Amount<VolumeFlow> freeAirFlow, int capacity) {
            this(name, freeAirFlow, capacity, Optional.empty(), Optional.empty());
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
                    name,
                    freeAirFlow,
                    capacity,
                    Optional.of(Limits.STACK_WEIGHT.check(mass, "weight on the stack")),
                    layer);
        }

        /**
         * Returns the same stack with blotters of a size; its capacity then counts layers, and small sheets lie side by
         * side.
         *
         * @param width one side of a blotter, 5 mm to 10 m
         * @param length the other side, 5 mm to 10 m
         * @return the dryer
         * @throws Refused if a side is out of range
         */
        public FanStack inLayers(Quantity<Length> width, Quantity<Length> length) {
            return new FanStack(name, freeAirFlow, capacity, weight, Optional.of(Layer.of(width, length)));
        }

        @Override
        public String restraint() {
            return "stack";
        }

        @Override
        public String toString() {
            return name + " (" + (hasFan() ? "fan stack, " + freeAirFlow + " on the label" : "stack without a fan")
                    + ", " + takes(capacity, layer)
                    + weight.map(one -> ", under " + one).orElse("") + ")";
        }
    }

    /**
     * Boards, glass or walls that the wet sheets are brushed on.
     *
     * @param name its name
     * @param capacity sheets that dry at once, or layers where their size is given
     * @param layer the size of a board
     */
    record Boards(String name, int capacity, Optional<Layer> layer) implements Dryer {
        /**
         * Makes the dryer.
         *
         * @param name its name, not empty
         * @param capacity sheets that dry at once, 1 to 100 000
         * @param layer the size of a board; without it a board holds one sheet
         * @throws Refused if the name cannot be one or a value is out of range
         */
        public Boards {
            name = named(name);
            Limits.DRYER_CAPACITY.check(capacity, "sheets at once");
            Objects.requireNonNull(layer, "layer");
        }

        /**
         * Returns the same dryer with boards of a size; its capacity then counts them, and small sheets lie side by
         * side.
         *
         * @param width one side of a board, 5 mm to 10 m
         * @param length the other side, 5 mm to 10 m
         * @return the dryer
         * @throws Refused if a side is out of range
         */
        public Boards inLayers(Quantity<Length> width, Quantity<Length> length) {
            return new Boards(name, capacity, Optional.of(Layer.of(width, length)));
        }

        @Override
        public String restraint() {
            return "board";
        }

        @Override
        public String toString() {
            return name + " (boards, " + takes(capacity, layer) + ")";
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

        /** Returns nothing: sheets hang on lines. */
        @Override
        public Optional<Layer> layer() {
            return Optional.empty();
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
     * @param capacity sheets that dry at once, or layers where their size is given
     * @param layer the size of a blotter
     */
    record Blotters(String name, int capacity, Optional<Layer> layer) implements Dryer {
        /**
         * Makes the dryer.
         *
         * @param name its name, not empty
         * @param capacity sheets that dry at once, 1 to 100 000
         * @param layer the size of a blotter; without it a layer holds one sheet
         * @throws Refused if the name cannot be one or a value is out of range
         */
        public Blotters {
            name = named(name);
            Limits.DRYER_CAPACITY.check(capacity, "sheets at once");
            Objects.requireNonNull(layer, "layer");
        }

        /**
         * Returns the same dryer with blotters of a size; its capacity then counts them, and small sheets lie side by
         * side.
         *
         * @param width one side of a blotter, 5 mm to 10 m
         * @param length the other side, 5 mm to 10 m
         * @return the dryer
         * @throws Refused if a side is out of range
         */
        public Blotters inLayers(Quantity<Length> width, Quantity<Length> length) {
            return new Blotters(name, capacity, Optional.of(Layer.of(width, length)));
        }

        @Override
        public String restraint() {
            return "blotters";
        }

        @Override
        public String toString() {
            return name + " (blotters, " + takes(capacity, layer) + ")";
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
     * @return the dryer; {@link Boards#inLayers} says how large a board is
     * @throws Refused if a value is out of range
     */
    static Boards boards(String name, int capacity) {
        return new Boards(name, capacity, Optional.empty());
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
     * @return the dryer; {@link Blotters#inLayers} says how large a blotter is
     * @throws Refused if a value is out of range
     */
    static Blotters blotters(String name, int capacity) {
        return new Blotters(name, capacity, Optional.empty());
    }

    private static String takes(int capacity, Optional<Layer> layer) {
        return capacity + layer.map(one -> " layers of " + one).orElse(" sheets");
    }

    private static String named(String name) {
        String called = Name.checkKey(name, "dryer");
        if (called.isEmpty()) {
            throw Refused.of("equipment.unnamed", "dryer: the name is empty; calibrated values are stored under it.");
        }
        return called;
    }
}
