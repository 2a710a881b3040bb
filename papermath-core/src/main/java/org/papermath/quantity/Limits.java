package org.papermath.quantity;

import java.time.LocalDate;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Force;
import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Pressure;
import javax.measure.quantity.Temperature;
import javax.measure.quantity.Time;
import javax.measure.quantity.Volume;

/**
 * The least and the most of everything an order, a recipe, a studio or a record says. Builders, the reader of documents
 * and their schemas take them from here, so that what the one takes the other takes too.
 *
 * <p>They are wide: from a basin on a kitchen table to a small mill. A value outside is a slip of the pen or a wrong
 * unit.
 */
public final class Limits {
    /** Pieces of one kind that are ordered. */
    public static final Count PIECES = new SetCount(1, 100_000);

    /** People who work at the same time. */
    public static final Count PEOPLE = new SetCount(1, 50);

    /** Pieces of one kind the studio keeps for itself. */
    public static final Count KEPT = new SetCount(0, 100_000);

    /** Trial sheets pulled for one piece: a few boxes of paper. */
    public static final Count TRIALS = new SetCount(0, 10_000);

    /** Folds in half; a fifth would stack 32 layers. */
    public static final Count FOLDS = new SetCount(0, 4);

    /** Pieces that go into one envelope. */
    public static final Count INSERTS = new SetCount(1, 50);

    /** Pieces of all kinds in an order, with those kept, the spare ones and the trial sheets. */
    public static final Count IN_ORDER = new SetCount(1, 200_000);

    /** Sheets that are pulled for an order, when those that are lost on the way are counted in. */
    public static final Count PULLED = new SetCount(0, 1_000_000);

    /** Felts; one sheet already takes two. */
    public static final Count FELTS = new SetCount(2, 100_000);

    /** How often a post is pressed, its felts exchanged in between. */
    public static final Count PRESSINGS = new SetCount(1, 3);

    /** People at the lever of a press. */
    public static final Count AT_THE_LEVER = new SetCount(1, 20);

    /** Sheets a dryer takes at once. */
    public static final Count DRYER_CAPACITY = new SetCount(1, 100_000);

    /** Sheets that hang together; the inner ones of a thick spur never dry. */
    public static final Count SPUR = new SetCount(1, 100);

    /** Openings a deckle is split into, each way. */
    public static final Count DECKLE_SPLIT = new SetCount(1, 100);

    /** Corners of an outline that is formed: a round has 360. */
    public static final Count OUTLINE_CORNERS = new SetCount(3, 1000);

    /** Moulds that are alike and worked in turn. */
    public static final Count MOULDS_IN_TURN = new SetCount(1, 20);

    /** Steps of one's own in an order. */
    public static final Count STEPS = new SetCount(0, 100);

    /** Columns of a histogram. */
    public static final Count HISTOGRAM = new SetCount(1, 100);

    /** Draws of a simulation. */
    public static final Count DRAWS = new SetCount(100, 1_000_000);

    /** A side of a finished piece: from a stamp to a wall hanging. */
    public static final Range<Length> PIECE_SIDE = range(Kinds.LENGTH, 5, "mm", 5, "m");

    /** The grammage of a piece: from tissue to board. */
    public static final Range<Grammage> PIECE_GRAMMAGE = range(Kinds.GRAMMAGE, 2, "g/m2", 2000, "g/m2");

    /** The thickness of a piece. */
    public static final Range<Length> PIECE_CALIPER = range(Kinds.LENGTH, 10, "um", 5, "mm");

    /** The spare pieces, a share of those ordered. */
    public static final Range<Share> SPARE = range(Kinds.SHARE, 0, "%", 100, "%");

    /** What is trimmed off an edge. */
    public static final Range<Length> TRIM = range(Kinds.LENGTH, 0, "mm", 100, "mm");

    /** How far pieces lie apart on a mould. */
    public static final Range<Length> GAP = range(Kinds.LENGTH, 0, "mm", 100, "mm");

    /** How much longer an envelope is inside than what goes in. */
    public static final Range<Length> CLEARANCE = range(Kinds.LENGTH, 0, "mm", 100, "mm");

    /** A side of a sheet to be matched. */
    public static final Range<Length> SAMPLE_SIDE = range(Kinds.LENGTH, 1, "mm", 5, "m");

    /** The mass of a sheet to be matched. */
    public static final Range<Mass> SAMPLE_MASS = range(Kinds.MASS, 0.1, "mg", 100, "kg");

    /** The thickness of a sheet to be matched. */
    public static final Range<Length> SAMPLE_CALIPER = range(Kinds.LENGTH, 1, "um", 50, "mm");

    /** A side of a format. */
    public static final Range<Length> FORMAT_SIDE = range(Kinds.LENGTH, 1, "mm", 10, "m");

    /** How long fibre is beaten. */
    public static final Range<Time> BEATING = range(Kinds.TIME, 0, "h", 48, "h");

    /** What a tester reads of beaten stuff. */
    public static final Range<SchopperRiegler> DRAINABILITY = range(Kinds.SCHOPPER_RIEGLER, 5, "SR", 98, "SR");

    /** The consistency in the beater. */
    public static final Range<Consistency> BEATER_CONSISTENCY = range(Kinds.CONSISTENCY, 0.2, "%", 6, "%");

    /** The consistency of stock in pails. */
    public static final Range<Consistency> STOCK_CONSISTENCY = range(Kinds.CONSISTENCY, 0.2, "%", 20, "%");

    /** The consistency in the vat. */
    public static final Range<Consistency> VAT_CONSISTENCY = range(Kinds.CONSISTENCY, 0.05, "%", 3, "%");

    /** Dry size in the bath. */
    public static final Range<FibreConcentration> SIZE_BATH = range(Kinds.FIBRE_CONCENTRATION, 1, "g/L", 200, "g/L");

    /** The dose of an additive. */
    public static final Range<Dose> DOSE = range(Kinds.DOSE, 0, "%", 50, "%");

    /** The trough of a beater: from a kitchen blender to a mill engine. */
    public static final Range<Volume> TROUGH = range(Kinds.VOLUME, 0.1, "L", 20, "m3");

    /** The fibre a beater is built for. */
    public static final Range<Mass> RATED_LOAD = range(Kinds.MASS, 0.1, "g", 2, "t");

    /** The working volume of a vat: from a cup to a mill vat. */
    public static final Range<Volume> VAT_VOLUME = range(Kinds.VOLUME, 0.05, "L", 20, "m3");

    /** Inside sides of a vat. */
    public static final Range<Length> VAT_SIDE = range(Kinds.LENGTH, 5, "mm", 10, "m");

    /** The temperature of the stock in a vat. */
    public static final Range<Temperature> VAT_TEMPERATURE = range(Kinds.TEMPERATURE, 5, "Cel", 60, "Cel");

    /** A side of the opening of a deckle. */
    public static final Range<Length> MOULD_SIDE = range(Kinds.LENGTH, 5, "mm", 5, "m");

    /** The depth of stock a deckle holds above its mould. */
    public static final Range<Length> DECKLE_DEPTH = range(Kinds.LENGTH, 1, "mm", 300, "mm");

    /** A side of a platen. */
    public static final Range<Length> PLATEN_SIDE = range(Kinds.LENGTH, 5, "mm", 10, "m");

    /** What a part of a press may bear: from a clamp or a pile of books to a mill press. */
    public static final Range<Force> PRESS_RATING = range(Kinds.FORCE, 10, "N", 20_000, "kN");

    /** The daylight of a press. */
    public static final Range<Length> DAYLIGHT = range(Kinds.LENGTH, 1, "mm", 10, "m");

    /** A side of a felt. */
    public static final Range<Length> FELT_SIDE = range(Kinds.LENGTH, 5, "mm", 10, "m");

    /** The grammage of a dry felt: from a cloth to thick wool. */
    public static final Range<Grammage> FELT_GRAMMAGE = range(Kinds.GRAMMAGE, 10, "g/m2", 10, "kg/m2");

    /** The thickness of a dry felt: from a cloth to a thick pad. */
    public static final Range<Length> FELT_THICKNESS = range(Kinds.LENGTH, 0.1, "mm", 50, "mm");

    /** The diameter of a ram: from that of a small jack to that of a mill press. */
    public static final Range<Length> RAM_DIAMETER = range(Kinds.LENGTH, 15, "mm", 1, "m");

    /** The air a fan moves: from one out of a computer to that of a hall. */
    public static final Range<VolumeFlow> FREE_AIR_FLOW = range(Kinds.VOLUME_FLOW, 0, "m3/h", 1e6, "m3/h");

    /** A side of a blotter or of a board that sheets dry on: from a swatch to a wall. */
    public static final Range<Length> DRYER_SIDE = range(Kinds.LENGTH, 5, "mm", 10, "m");

    /** What lies on a stack, or the pull of its straps: from a book to a press full of iron. */
    public static final Range<Mass> STACK_WEIGHT = range(Kinds.MASS, 100, "g", 10, "t");

    /** The room the work dries in: from a closet to a mill loft. */
    public static final Range<Volume> ROOM_VOLUME = range(Kinds.VOLUME, 1, "m3", 1e5, "m3");

    /** How often the air of a room is exchanged: from a closed cellar to a drying cabinet. */
    public static final Range<Rate> AIR_CHANGES = range(Kinds.RATE, 0.01, "1/h", 1000, "1/h");

    /** Fibre in store. */
    public static final Range<Mass> ON_HAND = range(Kinds.MASS, 1, "mg", 100, "t");

    /** The step of a scale. */
    public static final Range<Mass> SCALE_STEP = range(Kinds.MASS, 1, "mg", 1, "kg");

    /** The step of a jug. */
    public static final Range<Volume> JUG_STEP = range(Kinds.VOLUME, 0.1, "mL", 10, "L");

    /** The working hours of a day. */
    public static final Range<Time> WORKING_DAY = range(Kinds.TIME, 0.5, "h", 24, "h");

    /** Hands on a step of one's own: up to half a year of working days. */
    public static final Range<Time> STEP_HANDS = range(Kinds.TIME, 0, "h", 1000, "h");

    /** The waiting of a step of one's own: up to two years. */
    public static final Range<Time> STEP_WAITS = range(Kinds.TIME, 0, "d", 730, "d");

    /** The temperature of air. */
    public static final Range<Temperature> AIR_TEMPERATURE = range(Kinds.TEMPERATURE, 0, "Cel", 60, "Cel");

    /** The relative humidity of air. */
    public static final Range<RelativeHumidity> AIR_HUMIDITY = range(Kinds.RELATIVE_HUMIDITY, 1, "%", 100, "%");

    /** The pressure of the atmosphere: from the highest towns to a deep mine. */
    public static final Range<Pressure> AIR_PRESSURE = range(Kinds.AIR_PRESSURE, 50, "kPa", 110, "kPa");

    /** The first day a document or an order may name: the oldest sheets that can be compared have their records. */
    public static final LocalDate FIRST_DAY = LocalDate.of(1800, 1, 1);

    /** The last day a document or an order may name. */
    public static final LocalDate LAST_DAY = LocalDate.of(2999, 12, 31);

    private Limits() {}

    private static <Q extends Quantity<Q>> Range<Q> range(
            Kind<Q> kind, double least, String in, double most, String alsoIn) {
        return new SetRange<>(kind, kind.of(least, in), kind.of(most, alsoIn));
    }

    /**
     * Checks a day.
     *
     * @param day the day
     * @param what what it is the day of, for the message
     * @return the day
     * @throws Refused if it is before {@link #FIRST_DAY} or after {@link #LAST_DAY}
     */
    public static LocalDate day(LocalDate day, String what) {
        Objects.requireNonNull(day, "day");
        Objects.requireNonNull(what, "what");
        if (day.isBefore(FIRST_DAY) || day.isAfter(LAST_DAY)) {
            throw Refused.of(
                    "date.range",
                    what + ": " + day + " given; must be a day from " + FIRST_DAY + " to " + LAST_DAY
                            + ". Check the year.",
                    "quantity",
                    what,
                    "given",
                    day.toString(),
                    "least",
                    FIRST_DAY.toString(),
                    "most",
                    LAST_DAY.toString());
        }
        return day;
    }

    /** The least and the most of a count. */
    public sealed interface Count permits SetCount {
        /** {@return the least accepted} */
        int least();

        /** {@return the most accepted} */
        int most();

        /**
         * Checks a count.
         *
         * @param given the count
         * @param what what is counted, for the message
         * @return the count
         * @throws Refused if it is outside the limits
         */
        int check(int given, String what);

        /**
         * Checks a count of something that belongs to a thing with a name; the two are put together only for a refusal.
         *
         * @param given the count
         * @param what what is counted, for the message, up to the name
         * @param whose the name
         * @return the count
         * @throws Refused if it is outside the limits
         */
        int check(int given, String what, String whose);
    }

    private record SetCount(int least, int most) implements Count {
        @Override
        public int check(int given, String what) {
            return check(given, what, "");
        }

        @Override
        public int check(int given, String what, String whose) {
            if (given < least || given > most) {
                throw Refused.of(
                        "count.range",
                        what + whose + ": " + given + " given; must be a whole number from " + this
                                + ". Check the count.",
                        "quantity",
                        what + whose,
                        "given",
                        given,
                        "least",
                        least,
                        "most",
                        most);
            }
            return given;
        }

        /** Returns the limits in words, such as {@code 1 to 50}. */
        @Override
        public String toString() {
            return least + " to " + most;
        }
    }

    /**
     * The least and the most of a quantity.
     *
     * @param <Q> the quantity type
     */
    public sealed interface Range<Q extends Quantity<Q>> permits SetRange {
        /** {@return its kind} */
        Kind<Q> kind();

        /** {@return the least accepted} */
        Amount<Q> least();

        /** {@return the most accepted} */
        Amount<Q> most();

        /**
         * Checks a quantity.
         *
         * @param given the quantity
         * @param what what it is, for the message
         * @return the quantity as an amount of the kind
         * @throws Refused if it is of another kind or outside the limits
         */
        Amount<Q> check(Quantity<Q> given, String what);

        /**
         * Checks a quantity of a thing with a name; the two are put together only for a refusal.
         *
         * @param given the quantity
         * @param what what it is, for the message, up to the name
         * @param whose the name of the thing
         * @return the quantity as an amount of the kind
         * @throws Refused if it is of another kind or outside the limits
         */
        Amount<Q> check(Quantity<Q> given, String what, String whose);
    }

    private record SetRange<Q extends Quantity<Q>>(Kind<Q> kind, Amount<Q> least, Amount<Q> most) implements Range<Q> {
        @Override
        public Amount<Q> check(Quantity<Q> given, String what) {
            return check(given, what, "");
        }

        @Override
        public Amount<Q> check(Quantity<Q> given, String what, String whose) {
            if (given instanceof Amount<Q> amount && amount.kind() == kind && holds(amount)) {
                return amount;
            }
            String named = what + whose;
            if (least.si() > 0 && kind != (Kind<?>) Kinds.TEMPERATURE) {
                kind.checkAboveZero(given, named);
            }
            return kind.checkWithin(given, named, least.si(), most.si());
        }

        private boolean holds(Amount<Q> amount) {
            return amount.si() >= least.si() && amount.si() <= most.si();
        }

        /** Returns the limits in words with their units as they are typed, such as {@code 5 mm to 5 m}. */
        @Override
        public String toString() {
            String unit = code(most);
            return Units.number(least.value()) + (code(least).equals(unit) ? "" : " " + code(least)) + " to "
                    + Units.number(most.value()) + " " + unit;
        }

        private static String code(Amount<?> amount) {
            Units.Symbol symbol = amount.symbol();
            return symbol == null ? amount.getUnit().toString() : symbol.code();
        }
    }
}
