package org.papermath.whatif;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.papermath.evidence.Notice;
import org.papermath.numeric.Counts;
import org.papermath.order.Order;
import org.papermath.order.Studio;
import org.papermath.quantity.Amount;
import org.papermath.quantity.PapermathException;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Units;

/**
 * What if an input or an assumption of a job were otherwise: a table over some values, or the value that gives a wanted
 * outcome. Immutable.
 *
 * <pre>{@code
 * WhatIfTable table = WhatIf.decidedAnew(order, studio)
 *         .vary(Input.beating("tide grey"), hours(2), hours(4), 3)
 *         .show(Outcome.drainability("tide grey"), Outcome.caliper("programme"))
 *         .table();
 * table.value(2, Outcome.drainability("tide grey")).get().to("SR"); // 50.25 °SR
 * WhatIf.settingsHeld(order, studio)
 *         .solve(Input.beating("tide grey"), hours(1), hours(8), Outcome.drainability("tide grey"), SchopperRiegler.degrees(50))
 *         .one(); // 3.966 h
 * }</pre>
 *
 * <p>There are two doors, because two things are meant by the question. {@link #decidedAnew} asks what the plan would be:
 * what is weighed, lifted and set is chosen again for every value, as by {@link org.papermath.plan.MakingPlan}.
 * {@link #settingsHeld} asks what comes out: the stock is weighed, the vat charged and the press set as the plan of the job
 * says, and the value turns out otherwise.
 *
 * <p>Where only assumptions are varied the job is read once and its forecasts made again; where an input of the order, the
 * recipe or the studio is varied, it is read for each value. Both give the same figures, however many threads there are.
 */
public final class WhatIf {
    private static final MathContext FIFTEEN = new MathContext(15);
    private static final int MOST_INPUTS = 2;
    private static final int MOST_POINTS = 1_000_000;
    /** Counts above an answer that are tried, as what a count takes does not rise evenly. */
    private static final int LOOK_AHEAD = 24;

    private final boolean held;
    private final Job job;
    private final List<Varied> varied;
    private final List<Outcome<?>> shown;
    private final boolean bands;

    /** An input with the values it takes, in coherent SI. */
    record Varied(Input<?> input, double[] values) {}

    private WhatIf(boolean held, Job job, List<Varied> varied, List<Outcome<?>> shown, boolean bands) {
        this.held = held;
        this.job = job;
        this.varied = List.copyOf(varied);
        this.shown = List.copyOf(shown);
        this.bands = bands;
    }

    /**
     * Asks what the plan would be: settings are decided anew for every value.
     *
     * @param order the order
     * @param studio the studio
     * @return the question, with nothing varied yet
     */
    public static WhatIf decidedAnew(Order order, Studio studio) {
        return new WhatIf(false, new Job(order, studio), List.of(), List.of(), false);
    }

    /**
     * Asks what comes out: settings are those of the plan of the job, and held fixed whatever the value.
     *
     * @param order the order
     * @param studio the studio
     * @return the question, with nothing varied yet
     */
    public static WhatIf settingsHeld(Order order, Studio studio) {
        return new WhatIf(true, new Job(order, studio), List.of(), List.of(), false);
    }

    /**
     * Varies an input over some values.
     *
     * @param input the input
     * @param values its values, in the order of the rows
     * @param <Q> what it is measured in
     * @return the question
     * @throws Refused if there is no value, one is none of its kind, or two inputs are varied already
     */
    public <Q extends Quantity<Q>> WhatIf vary(Input<Q> input, List<? extends Quantity<Q>> values) {
        Objects.requireNonNull(input, "input");
        Objects.requireNonNull(values, "values");
        return varying(
                input,
                values.stream()
                        .mapToDouble(one -> input.kind().si(one, input.toString()))
                        .toArray());
    }

    /**
     * Varies an input over a range, in even steps. A count takes the whole numbers nearest to them.
     *
     * @param input the input
     * @param from its first value
     * @param to its last value, above the first
     * @param values how many values, from 2 on
     * @param <Q> what it is measured in
     * @return the question
     * @throws Refused if the range is none, or as the other form
     */
    public <Q extends Quantity<Q>> WhatIf vary(Input<Q> input, Quantity<Q> from, Quantity<Q> to, int values) {
        Objects.requireNonNull(input, "input");
        double first = input.kind().si(from, input + " from");
        double last = input.kind().si(to, input + " to");
        Answer.requireRange(input.toString(), input.amount(first), input.amount(last));
        if (values < 2 || values > MOST_POINTS) {
            throw points(input, values);
        }
        // Even steps in the unit people read, without the last digit of adding up: 0.6, not 0.6000000000000001.
        double low = input.amount(first).value();
        double high = input.amount(last).value();
        double[] all = new double[values];
        for (int i = 0; i < values; i++) {
            double even = i == values - 1
                    ? high
                    : new BigDecimal(low + i * ((high - low) / (values - 1)))
                            .round(FIFTEEN)
                            .doubleValue();
            all[i] = Units.toSi(input.isWhole() ? Math.rint(even) : even, input.unit());
        }
        return varying(input, input.isWhole() ? Arrays.stream(all).distinct().toArray() : all);
    }

    private static Refused points(Input<?> input, double points) {
        return Refused.of(
                "whatif.points",
                input + ": " + Units.number(points) + " values given; a range has two or more, and a table at most "
                        + MOST_POINTS + " rows.",
                "given",
                points,
                "most",
                MOST_POINTS);
    }

    private WhatIf varying(Input<?> input, double[] values) {
        double rows = values.length;
        for (Varied one : varied) {
            rows *= one.values.length;
        }
        if (values.length == 0 || rows > MOST_POINTS) {
            throw points(input, rows);
        }
        if (varied.size() == MOST_INPUTS) {
            throw Refused.of(
                    "whatif.inputs",
                    input + ": two inputs are varied already. A table of three cannot be read; make several tables.",
                    "input",
                    input.toString());
        }
        List<Varied> more = new ArrayList<>(varied);
        more.add(new Varied(input, values));
        return new WhatIf(held, job, more, shown, bands);
    }

    /**
     * Shows outcomes, beside those already shown.
     *
     * @param outcomes what to show
     * @return the question
     */
    public WhatIf show(Outcome<?>... outcomes) {
        Objects.requireNonNull(outcomes, "outcomes");
        List<Outcome<?>> more = new ArrayList<>(shown);
        more.addAll(Arrays.asList(outcomes));
        return new WhatIf(held, job, varied, more, bands);
    }

    /**
     * Has every forecast with its band. Each row then is a job read for itself, and takes as long as a plan with bands.
     *
     * @return the question
     */
    public WhatIf withBands() {
        return new WhatIf(held, job, varied, shown, true);
    }

    /**
     * Works out the table: a row for every value, or for every two of them where two inputs are varied, the last input
     * fastest. A row that is refused stands in it as not known, with its reason.
     *
     * @return the table
     * @throws Refused if nothing is varied or shown, the job itself cannot be made, an outcome is of no piece or recipe of it,
     *     or an input does nothing: an assumption that nobody asks for, or, with settings held, one by which settings are
     *     chosen
     */
    public WhatIfTable table() {
        if (varied.isEmpty() || shown.isEmpty()) {
            throw Refused.of(
                    "whatif.empty",
                    "table: " + (varied.isEmpty() ? "no input is varied" : "no outcome is shown")
                            + ". Say what to vary and what to show.");
        }
        List<Input<?>> inputs = varied.stream().<Input<?>>map(Varied::input).toList();
        Evaluator evaluator = new Evaluator(held, job, inputs, shown, bands);
        int n = varied.size();
        int rows = 1;
        for (int i = 0; i < n; i++) {
            double[] values = varied.get(i).values;
            evaluator.requireTelling(i, values[0], values[values.length - 1]);
            rows *= values.length;
        }
        // What is read anew comes first; within it the moved assumptions go through their values.
        int common = 1;
        for (int i = 0; i < n; i++) {
            common *= evaluator.isMoved(i) ? 1 : varied.get(i).values.length;
        }
        int each = rows / common;
        Evaluator.Point[] points = new Evaluator.Point[rows];
        if (common == 1) {
            Function<double[], Evaluator.Point> at = evaluator.at(values(evaluator, 0, 0, each));
            IntStream.range(0, rows).parallel().forEach(row -> points[row] = at.apply(valuesAt(row)));
        } else {
            IntStream.range(0, common).parallel().forEach(group -> {
                Function<double[], Evaluator.Point> at = evaluator.at(values(evaluator, group, 0, each));
                for (int i = 0; i < each; i++) {
                    double[] values = values(evaluator, group, i, each);
                    points[rowOf(evaluator, group, i)] = at.apply(values);
                }
            });
        }
        return new WhatIfTable(held, job, varied, shown, bands, points);
    }

    /** The values of a row. */
    private double[] valuesAt(int row) {
        double[] values = new double[varied.size()];
        int rest = row;
        for (int i = values.length - 1; i >= 0; i--) {
            double[] all = varied.get(i).values;
            values[i] = all[rest % all.length];
            rest /= all.length;
        }
        return values;
    }

    /** The row of what is read for the group-th time and moved for the i-th. */
    private int rowOf(Evaluator evaluator, int group, int i) {
        int readRest = group;
        int movedRest = i;
        int[] index = new int[varied.size()];
        for (int k = index.length - 1; k >= 0; k--) {
            int length = varied.get(k).values.length;
            if (evaluator.isMoved(k)) {
                index[k] = movedRest % length;
                movedRest /= length;
            } else {
                index[k] = readRest % length;
                readRest /= length;
            }
        }
        int row = 0;
        for (int k = 0; k < index.length; k++) {
            row = row * varied.get(k).values.length + index[k];
        }
        return row;
    }

    private double[] values(Evaluator evaluator, int group, int i, int each) {
        return valuesAt(each == 1 ? group : rowOf(evaluator, group, i));
    }

    /**
     * Looks through a range of an input for every value that gives a wanted outcome.
     *
     * @param input the input
     * @param from where to begin
     * @param to where to end, above that
     * @param outcome what is wanted of
     * @param want how much of it
     * @param <Q> what the input is measured in
     * @param <R> what the outcome is measured in
     * @return the answer: the value, or several, or why there is none
     * @throws Refused if the range is none, the input is a count, or as {@link #table}
     */
    public <Q extends Quantity<Q>, R extends Quantity<R>> Answer<Q, R> solve(
            Input<Q> input, Quantity<Q> from, Quantity<Q> to, Outcome<R> outcome, Quantity<R> want) {
        Objects.requireNonNull(input, "input");
        Objects.requireNonNull(outcome, "outcome");
        double wanted = outcome.kind().si(want, outcome.toString());
        double first = input.kind().si(from, input + " from");
        double last = input.kind().si(to, input + " to");
        Answer.requireRange(input.toString(), input.amount(first), input.amount(last));
        if (input.isWhole()) {
            throw Refused.of(
                    "whatif.count",
                    input + ": only whole numbers make sense of it, and hardly one gives exactly what is wanted. Ask"
                            + " mostThatFits for the largest that still keeps within a limit.",
                    "input",
                    input.toString());
        }
        Evaluator evaluator = new Evaluator(held, job, List.of(input), List.of(outcome), false);
        evaluator.requireTelling(0, first, last);
        Function<double[], Evaluator.Point> at = at(evaluator, first);
        return Answer.search(
                input.toString(),
                input.kind(),
                input.unit(),
                first,
                last,
                outcome.toString(),
                outcome.kind(),
                outcome.unit(),
                x -> at.apply(new double[] {x}).likely[0],
                x -> reason(at.apply(new double[] {x}), outcome),
                wanted);
    }

    private static Function<double[], Evaluator.Point> at(Evaluator evaluator, double first) {
        return evaluator.isMoved(0)
                ? evaluator.at(new double[] {first})
                : values -> evaluator.at(values).apply(values);
    }

    private static Optional<PapermathException> reason(Evaluator.Point point, Outcome<?> outcome) {
        return Double.isNaN(point.likely[0]) ? Optional.of(Evaluator.reason(point.reason, outcome)) : Optional.empty();
    }

    /**
     * Looks for the largest count with which an outcome still keeps within a limit: cards out of the fibre on hand, cards in a
     * day. What a count takes rises with it but for the steps of tools, so the answer is found by halving, and two dozen counts
     * above it are tried too.
     *
     * @param count a count
     * @param from the least count
     * @param to the largest count asked for, above that
     * @param outcome what is limited; it has to rise with the count
     * @param limit its limit, itself within
     * @param <R> what the outcome is measured in
     * @return the answer; nothing found where not even the least count keeps within the limit
     * @throws Refused if the input is no count, the range is none, or as {@link #table}
     */
    public <R extends Quantity<R>> Answer<Dimensionless, R> mostThatFits(
            Input<Dimensionless> count, int from, int to, Outcome<R> outcome, Quantity<R> limit) {
        Objects.requireNonNull(count, "count");
        Objects.requireNonNull(outcome, "outcome");
        double most = outcome.kind().si(limit, outcome.toString());
        Answer.requireRange(count.toString(), count.amount(from), count.amount(to));
        if (!count.isWhole()) {
            throw Refused.of(
                    "whatif.no-count",
                    count + ": it is no count. Ask solve for the value that gives the limit.",
                    "input",
                    count.toString());
        }
        Evaluator evaluator = new Evaluator(held, job, List.of(count), List.of(outcome), false);
        evaluator.requireTelling(0, from, to);
        Function<double[], Evaluator.Point> at = at(evaluator, from);
        IntToDoubleFunction of = n -> at.apply(new double[] {n}).likely[0];
        int best = new Counts(n -> of.applyAsDouble(n) <= most).most(from, to, LOOK_AHEAD);
        List<Amount<Dimensionless>> found = new ArrayList<>();
        List<Notice> notices = new ArrayList<>();
        String text;
        if (best < from) {
            double first = of.applyAsDouble(from);
            Optional<PapermathException> why = reason(at.apply(new double[] {from}), outcome);
            text = why.isPresent()
                    ? "not even " + from + ": " + why.get().getMessage()
                    : "not even " + from + ": " + outcome + " would be " + told(outcome, first) + ", above "
                            + told(outcome, most);
            notices.add(Notice.warning(
                    "whatif.none-fits", Character.toUpperCase(text.charAt(0)) + text.substring(1), "least", from));
        } else {
            found.add(count.amount(best));
            double next = best < to ? of.applyAsDouble(best + 1) : Double.NaN;
            text = best + " (" + count + "): " + outcome + " is " + told(outcome, of.applyAsDouble(best))
                    + (best == to
                            ? ", and more may still keep within "
                            : Double.isNaN(next)
                                    ? "; with one more it is not known, against "
                                    : "; with one more it would be " + told(outcome, next) + ", above ")
                    + told(outcome, most);
            if (best == to) {
                notices.add(Notice.note(
                        "whatif.all-fit", "The largest count asked for still fits: " + to + ".", "most", to));
            }
        }
        double least = best < from ? of.applyAsDouble(from) : of.applyAsDouble(best);
        Amount<R> reached = Double.isNaN(least) ? null : outcome.kind().ofSi(least, outcome.unit());
        return new Answer<>(found, List.of(), reached, reached, notices, text);
    }

    private static <R extends Quantity<R>> String told(Outcome<R> outcome, double si) {
        return outcome.kind().ofSi(si, outcome.unit()).toString();
    }

    @Override
    public String toString() {
        return (held ? "what comes out of " : "what the plan would be of ")
                + job.order().name() + ", with other "
                + varied.stream().map(one -> one.input().toString()).toList();
    }
}
