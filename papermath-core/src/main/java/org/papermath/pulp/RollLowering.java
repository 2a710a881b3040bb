package org.papermath.pulp;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Time;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Units;

/**
 * How the roll was let down over one load, as it was written in the beater book: at which time it stood how many turns of
 * the handwheel below where it started. Immutable.
 *
 * <p>It is a record of practice to beat the next load alike, not a model: no answer of the library follows from it, since
 * what a turn does to the stock depends on the machine and on how sharp its bars are.
 *
 * @param steps the settings in order of time
 */
public record RollLowering(List<Step> steps) {
    /**
     * One setting of the roll.
     *
     * @param time the time since the load went round
     * @param turns turns below the first setting; above it they are negative
     */
    public record Step(Amount<Time> time, double turns) {
        /**
         * Notes a setting.
         *
         * @param time the time since the load went round
         * @param turns turns below the first setting; -100 to 100
         * @throws Refused if a value is out of range
         */
        public Step {
            Kinds.TIME.check(time, "time of the setting");
            if (!(Math.abs(turns) <= 100)) {
                throw Refused.of(
                        "beater.roll-turns",
                        "turns of the roll: " + turns
                                + " given; must be from -100 to 100, counted from the first setting.",
                        "given",
                        String.valueOf(turns),
                        "least",
                        -100,
                        "most",
                        100);
            }
        }

        /**
         * Notes a setting.
         *
         * @param time the time since the load went round
         * @param turns turns below the first setting; -100 to 100
         * @return the setting
         * @throws Refused if a value is out of range
         */
        public static Step of(Quantity<Time> time, double turns) {
            return new Step(Kinds.TIME.check(time, "time of the setting"), turns);
        }

        @Override
        public String toString() {
            return "after " + time + " " + Units.fourDigits(turns) + " turns down";
        }
    }

    /**
     * Writes down a series.
     *
     * @param steps one setting or more, each later than the one before
     * @throws Refused if there is none, or two are not in order
     */
    public RollLowering {
        Objects.requireNonNull(steps, "steps");
        steps = List.copyOf(steps);
        if (steps.isEmpty()) {
            throw Refused.of("beater.roll-empty", "settings of the roll: none given; at least one is needed.");
        }
        for (int i = 1; i < steps.size(); i++) {
            if (steps.get(i).time().si() <= steps.get(i - 1).time().si()) {
                throw Refused.of(
                        "beater.roll-order",
                        "settings of the roll: one at " + steps.get(i).time() + " follows one at "
                                + steps.get(i - 1).time() + "; give them in order of time, one for each time.",
                        "time",
                        steps.get(i).time().toString(),
                        "before",
                        steps.get(i - 1).time().toString());
            }
        }
    }

    /**
     * Writes down a series.
     *
     * @param steps one setting or more, each later than the one before
     * @return the series
     * @throws Refused if there is none, or two are not in order
     */
    public static RollLowering of(Step... steps) {
        Objects.requireNonNull(steps, "steps");
        return new RollLowering(List.of(steps));
    }

    /**
     * Writes down the habit of letting the roll down by equal steps at equal times, the first after one of them.
     *
     * @param interval the time between two steps, above zero
     * @param turns turns at each step
     * @param until the end of beating; a step that falls on it still counts
     * @return the series, starting with no turns at the beginning
     * @throws Refused if a value is out of range, or there would be more than a thousand steps
     */
    public static RollLowering every(Quantity<Time> interval, double turns, Quantity<Time> until) {
        double step = Kinds.TIME.siAboveZero(interval, "time between two steps");
        double count = Math.floor(Kinds.TIME.si(until, "beating time") / step * (1 + 1e-12));
        if (count > 1000) {
            throw Refused.of(
                    "beater.roll-steps",
                    "steps of the roll: " + count + " come out; must be at most 1000. Check the unit of the two times.",
                    "given",
                    count,
                    "most",
                    1000);
        }
        List<Step> steps = new ArrayList<>();
        for (int i = 0; i <= count; i++) {
            steps.add(new Step(Kinds.TIME.ofSi(i * step, "min"), i * turns));
        }
        return new RollLowering(steps);
    }

    /**
     * Returns where the roll stood at a time.
     *
     * @param time the time since the load went round, not before the first setting
     * @return the turns of the last setting at or before it
     * @throws Refused if it lies before the first setting
     */
    public double turnsAt(Quantity<Time> time) {
        double t = Kinds.TIME.si(time, "time of beating");
        if (t < steps.get(0).time().si()) {
            throw Refused.of(
                    "beater.roll-before-first",
                    "time of beating: " + Kinds.TIME.ofSi(t, "min") + " given, before the first setting at "
                            + steps.get(0).time() + ".",
                    "given",
                    Kinds.TIME.ofSi(t, "min").toString(),
                    "first",
                    steps.get(0).time().toString());
        }
        double turns = 0;
        for (Step step : steps) {
            if (step.time().si() <= t) {
                turns = step.turns();
            }
        }
        return turns;
    }

    /**
     * Returns how often the roll was moved after its first setting.
     *
     * @return the number of moves
     */
    public int moves() {
        return steps.size() - 1;
    }

    @Override
    public String toString() {
        StringBuilder text = new StringBuilder("roll:");
        for (Step step : steps) {
            text.append(' ')
                    .append(step.time())
                    .append(' ')
                    .append(Kinds.NUMBER.ofSi(step.turns()))
                    .append(';');
        }
        text.setCharAt(text.length() - 1, '.');
        return text.toString();
    }
}
