package org.papermath.schedule;

import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Time;
import org.papermath.quantity.Amount;
import org.papermath.quantity.AmountRange;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Rate;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Units;

/**
 * How fast things are made, by one hand or several, from a least to a most. Least goes with least all through: at the
 * least pace the fewest come out and the work takes the longest.
 *
 * <pre>{@code
 * Pace page = Pace.each(AmountRange.read(Kinds.TIME, "5-6 min"));
 * page.made(Amounts.hours(4)); // 40 to 48
 * page.hands(2).reach(100, Amounts.hours(4)).meets(); // false
 * }</pre>
 *
 * <p>Rests, breakage and learning are not in it: count what came out of a whole day where you can.
 */
public final class Pace {
    private static final double HOUR = 3600;
    /** A count that falls short of a whole one by no more than rounding is that whole one. */
    private static final double ROUNDING = 1e-9;

    private static final int MOST_HANDS = 10_000;

    private final double least;
    private final double most;

    private Pace(double least, double most) {
        this.least = least;
        this.most = most;
    }

    /**
     * Makes a pace.
     *
     * @param rate things in a time, above zero
     * @return the pace
     * @throws Refused if the least is not above zero
     */
    public static Pace of(AmountRange<Rate> rate) {
        Objects.requireNonNull(rate, "rate");
        return new Pace(Kinds.RATE.siAboveZero(rate.least(), "pace"), Kinds.RATE.siAboveZero(rate.most(), "pace"));
    }

    /**
     * Makes a pace from the time one thing takes.
     *
     * @param time the time of one, above zero
     * @return the pace: the longest time gives the least
     * @throws Refused if the least time is not above zero
     */
    public static Pace each(AmountRange<Time> time) {
        Objects.requireNonNull(time, "time");
        return new Pace(
                1 / Kinds.TIME.siAboveZero(time.most(), "time of one"),
                1 / Kinds.TIME.siAboveZero(time.least(), "time of one"));
    }

    /**
     * Makes a pace from what was counted.
     *
     * @param things how many were made, 1 or more
     * @param in the time they took, above zero
     * @return the pace
     * @throws Refused if nothing was made, or in no time
     */
    public static Pace counted(int things, Quantity<Time> in) {
        double pace = atLeastOne(things, "pace") / Kinds.TIME.siAboveZero(in, "time they took");
        return new Pace(pace, pace);
    }

    /**
     * Returns the pace of several hands that are all as fast.
     *
     * @param hands how many, 1 or more
     * @return their pace together
     * @throws Refused if there are none, or more than 10 000
     */
    public Pace hands(int hands) {
        atLeastOne(hands, "hands");
        if (hands > MOST_HANDS) {
            throw tooMany(hands);
        }
        return new Pace(least * hands, most * hands);
    }

    /**
     * Returns the pace of these hands and others beside them.
     *
     * @param others the pace of the others
     * @return both together, least with least and most with most
     */
    public Pace and(Pace others) {
        Objects.requireNonNull(others, "others");
        return new Pace(least + others.least, most + others.most);
    }

    /**
     * Returns the pace of lots, such as posts of so many sheets.
     *
     * @param things things in a lot, 1 or more
     * @param besides the time a lot takes beside the making of its things, such as pressing; zero or more
     * @return lots in a time
     * @throws Refused if a lot holds nothing or the time is below zero
     */
    public Pace lots(int things, Quantity<Time> besides) {
        double making = atLeastOne(things, "things in a lot");
        double more = Kinds.TIME.si(besides, "time beside the making");
        return new Pace(1 / (making / least + more), 1 / (making / most + more));
    }

    /** {@return things in an hour} */
    public AmountRange<Rate> rate() {
        return AmountRange.of(Kinds.RATE.ofSi(least, "1/h"), Kinds.RATE.ofSi(most, "1/h"));
    }

    /** How many are made in a time. */
    public sealed interface Made permits FoundCount {
        /** {@return the whole things made at the least pace} */
        int least();

        /** {@return the whole things made at the most} */
        int most();
    }

    private record FoundCount(int least, int most) implements Made {
        @Override
        public String toString() {
            return least == most ? String.valueOf(least) : least + " to " + most;
        }
    }

    /**
     * Returns how many are made in a time, begun ones left out.
     *
     * @param time the time worked
     * @return the least and the most
     * @throws Refused if the time is out of range or more than 2 000 000 000 are made in it
     */
    public Made made(Quantity<Time> time) {
        double seconds = Kinds.TIME.si(time, "time worked");
        return new FoundCount(whole(least * seconds), whole(most * seconds));
    }

    private static int whole(double count) {
        double whole = Math.floor(count * (1 + ROUNDING));
        if (whole > 2e9) {
            throw Refused.of(
                    "pace.too-many",
                    "pace: " + Units.fourDigits(count) + " things; more than 2 000 000 000 are not counted.",
                    "count",
                    count);
        }
        return (int) whole;
    }

    /**
     * Returns how long a number of things takes.
     *
     * @param things how many, 1 or more
     * @return the time, the least at the most pace
     * @throws Refused if there are none
     */
    public AmountRange<Time> time(int things) {
        double many = atLeastOne(things, "things");
        return AmountRange.of(Kinds.TIME.ofSi(many / most, "h"), Kinds.TIME.ofSi(many / least, "h"));
    }

    /** Whether a number is reached in a time, and what would reach it for sure. */
    public sealed interface Reach permits FoundReach {
        /** {@return whether it is reached at the least pace} */
        boolean meets();

        /** {@return whether it is reached at the most pace, if not at the least} */
        boolean mayMeet();

        /** {@return what is made in the time} */
        Made made();

        /** {@return the times these hands would have to be taken, all as fast, at the least pace; 1 if it is met} */
        int times();

        /** {@return the time it takes at the least pace} */
        Amount<Time> time();

        /** {@return the pace that just reaches it} */
        Amount<Rate> pace();
    }

    private record FoundReach(int things, Made made, int times, Amount<Time> time, Amount<Rate> pace) implements Reach {
        @Override
        public boolean meets() {
            return made.least() >= things;
        }

        @Override
        public boolean mayMeet() {
            return !meets() && made.most() >= things;
        }

        @Override
        public String toString() {
            String verdict = meets() ? "yes: " : mayMeet() ? "perhaps: " : "no: ";
            return verdict + made + " of " + things
                    + (meets()
                            ? ""
                            : "; for all take " + times + " times the hands, " + time + ", or a pace of "
                                    + Units.fourDigits(pace.in("1/h")) + " an hour");
        }
    }

    /**
     * Checks a number wanted in a time.
     *
     * @param things how many are wanted, 1 or more
     * @param time the time there is, above zero
     * @return whether they are reached, and what would reach them
     * @throws Refused if nothing is wanted, or in no time
     */
    public Reach reach(int things, Quantity<Time> time) {
        double many = atLeastOne(things, "things wanted");
        double seconds = Kinds.TIME.siAboveZero(time, "time there is");
        return new FoundReach(
                things,
                made(time),
                Math.max(1, (int) Math.min(2e9, Math.ceil(many / (least * seconds) * (1 - ROUNDING)))),
                Kinds.TIME.ofSi(many / least, "h"),
                Kinds.RATE.ofSi(many / seconds, "1/h"));
    }

    private static int atLeastOne(int count, String what) {
        if (count < 1) {
            throw Refused.of(
                    "pace.count", what + ": " + count + " given; must be 1 or more.", "given", count, "least", 1);
        }
        return count;
    }

    private static Refused tooMany(int hands) {
        return Refused.of(
                "pace.hands",
                "hands: " + hands + " given; no more than " + MOST_HANDS + " are reckoned with.",
                "given",
                hands,
                "most",
                MOST_HANDS);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Pace that && least == that.least && most == that.most;
    }

    @Override
    public int hashCode() {
        return Objects.hash(least, most);
    }

    @Override
    public String toString() {
        String from = Units.fourDigits(least * HOUR);
        String to = Units.fourDigits(most * HOUR);
        return (from.equals(to) ? from : from + " to " + to) + " an hour";
    }
}
