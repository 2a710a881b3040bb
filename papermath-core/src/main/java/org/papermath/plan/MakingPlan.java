package org.papermath.plan;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

import javax.measure.quantity.Time;

import org.papermath.evidence.Assumption;
import org.papermath.evidence.Estimate;
import org.papermath.evidence.Notice;
import org.papermath.order.Order;
import org.papermath.order.Studio;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;

/**
 * The plan of a making: everything that follows from an order and a studio. Immutable, and the same for the same input.
 *
 * <p>Settings — what to weigh, cut, set, count — are chosen at the likely values and rounded to the tool. Forecasts —
 * what will come out — have a band, worked out with the settings held fixed: every assumption of the plan is set to its
 * 5 % and its 95 % point in turn, and what that moves is summed in squares.
 *
 * <p>A stage the studio has no equipment for, or the library no default for, is not done and says why; the plan goes
 * on.
 */
public final class MakingPlan {
    private final Order order;
    private final Studio studio;
    private final Job job;
    private final Numbers numbers;

    private final Later<PlanReading> reading;
    private final Later<List<Notice>> notices;
    private final Later<List<Sensitivity>> sensitivity;

    private MakingPlan(Order order, Studio studio, Job job, Settings settings, Numbers numbers, Ledger ledger) {
        this.order = order;
        this.studio = studio;
        this.job = job;
        this.numbers = numbers;
        this.reading = new Later<>(() -> new PlanReading(order, studio, job, settings, numbers, ledger));
        this.notices = new Later<>(() -> PlanNotices.of(order, studio, job, settings, numbers, this));
        this.sensitivity = new Later<>(this::findSensitivity);
    }

    /**
     * Plans an order in a studio, forecasts with their bands.
     *
     * @param order the order
     * @param studio the studio
     * @return the plan
     * @throws Refused if the order cannot be made at all, such as a vat to be thicker than the stock it is charged from
     */
    public static MakingPlan of(Order order, Studio studio) {
        return plan(order, studio, true);
    }

    /**
     * Plans an order in a studio at the likely values only; the forecasts have no bands. Faster than {@link #of} by as
     * many times as the order touches assumptions, for what-if loops.
     *
     * @param order the order
     * @param studio the studio
     * @return the plan
     * @throws Refused as {@link #of}
     */
    public static MakingPlan withoutBands(Order order, Studio studio) {
        return plan(order, studio, false);
    }

    private static MakingPlan plan(Order order, Studio studio, boolean bands) {
        Job job = new JobReader(order, studio).read();
        Engine engine = new Engine(job);
        Settings settings = engine.decide(job.likely);
        double[] likely = new double[Out.size(job)];
        Ledger ledger = new Ledger(job);
        engine.forecast(settings, job.likely, likely, ledger);
        Numbers numbers = bands ? Numbers.withBands(job, engine, settings, likely) : Numbers.withoutBands(job, likely);
        return new MakingPlan(order, studio, job, settings, numbers.require(), ledger);
    }

    private List<Sensitivity> findSensitivity() {
        if (!numbers.hasBands()) {
            return List.of();
        }
        int[] main = {Out.GRAMMAGE, Out.WIDTH, Out.HEIGHT, Out.CALIPER, Out.GOOD, Out.DRYING};
        String[] words = {"grammage", "width", "height", "thickness", "number of good pieces", "drying time"};
        int n = job.varied.length;
        double[] weight = new double[n];
        double[] best = new double[n];
        String[] what = new String[n];
        int counted = 0;
        for (int p = 0; p < job.pieces.length; p++) {
            for (int k = 0; k < main.length; k++) {
                int at = Out.piece(job, p) + main[k];
                double sum = 0;
                for (int i = 0; i < n; i++) {
                    sum += numbers.move(i, at) * numbers.move(i, at);
                }
                if (!(sum > 0)) {
                    continue;
                }
                counted++;
                for (int i = 0; i < n; i++) {
                    double share = numbers.move(i, at) * numbers.move(i, at) / sum;
                    weight[i] += share;
                    if (share > best[i]) {
                        best[i] = share;
                        what[i] = words[k] + " of " + order.pieces().get(p).name();
                    }
                }
            }
        }
        List<Sensitivity> list = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            if (best[i] >= 0.01) {
                Assumption assumption = job.assumptions.get(job.varied[i]);
                list.add(new Sensitivity(assumption, what[i], best[i], weight[i] / counted,
                        Measurements.against(assumption.id())));
            }
        }
        list.sort(Comparator.comparingDouble(Sensitivity::weight).reversed());
        return List.copyOf(list);
    }

    /**
     * Returns the order.
     *
     * @return the order
     */
    public Order order() {
        return order;
    }

    /**
     * Returns the studio.
     *
     * @return the studio
     */
    public Studio studio() {
        return studio;
    }

    /**
     * Returns the batches, one for each recipe used.
     *
     * @return an unmodifiable list, in the order of the recipes
     */
    public List<BatchPlan> batches() {
        return reading.get().batches();
    }

    /**
     * Returns the batch of a recipe.
     *
     * @param recipe the name of the recipe
     * @return the batch
     * @throws Refused if no piece of the order uses a recipe of that name
     */
    public BatchPlan batch(String recipe) {
        return batches().stream().filter(batch -> batch.name().equals(recipe)).findFirst()
                .orElseThrow(() -> Refused.of("plan.no-batch", "plan: there is no batch \"" + recipe + "\"; it has: "
                        + batches().stream().map(BatchPlan::name).toList() + ".", "given", recipe));
    }

    /**
     * Returns the pieces.
     *
     * @return an unmodifiable list, in the order of the order
     */
    public List<PiecePlan> pieces() {
        return reading.get().pieces();
    }

    /**
     * Returns a piece.
     *
     * @param name its name
     * @return the piece
     * @throws Refused if the order has no piece of that name
     */
    public PiecePlan piece(String name) {
        return pieces().stream().filter(piece -> piece.name().equals(name)).findFirst()
                .orElseThrow(() -> Refused.of("plan.no-piece", "plan: there is no piece \"" + name + "\"; it has: "
                        + pieces().stream().map(PiecePlan::name).toList() + ".", "given", name));
    }

    /**
     * Returns what the plan should not be read without.
     *
     * @return an unmodifiable list, warnings first
     */
    public List<Notice> notices() {
        return notices.get();
    }

    /**
     * Returns what widens the forecasts most, with the cheapest measurement against it.
     *
     * @return an unmodifiable list, the strongest first; empty for a plan without bands
     */
    public List<Sensitivity> sensitivity() {
        return sensitivity.get();
    }

    /**
     * Returns every assumption the plan rests on, each with the scope that spoke.
     *
     * @return an unmodifiable list
     */
    public List<Assumption> assumptionsUsed() {
        return job.assumptions;
    }

    /**
     * Returns what has to be bought.
     *
     * @return an unmodifiable list
     */
    public List<ToBuy> toBuy() {
        return reading.get().toBuy();
    }

    /**
     * Returns the days of the work.
     *
     * @return the schedule
     */
    public Schedule schedule() {
        return reading.get().schedule();
    }

    /**
     * Returns the cautions that go with the stages of this plan.
     *
     * @return an unmodifiable list
     */
    public List<Caution> cautions() {
        return reading.get().cautions();
    }

    /**
     * Returns the hours of hand work in all.
     *
     * @return the hours
     */
    public Estimate<Time> workingHours() {
        return numbers.estimate(Kinds.TIME, Out.hours(job), "h");
    }

    /**
     * Returns the plan as a card to pin to the wall.
     *
     * @return the card
     */
    public MakingCard card() {
        return MakingCard.of(this);
    }

    @Override
    public String toString() {
        return "plan of " + order.name() + ": " + pieces().stream().map(PiecePlan::toString).toList();
    }
}
