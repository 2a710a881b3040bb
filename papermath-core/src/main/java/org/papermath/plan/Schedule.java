package org.papermath.plan;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import org.papermath.engine.DryingSheets;
import org.papermath.engine.FormingSheets;
import org.papermath.engine.PieceWork;
import org.papermath.evidence.Scope;
import org.papermath.numeric.Rounding;
import org.papermath.pulp.Additive;

/**
 * The days of the work, counted backwards from the date of the order. Immutable.
 *
 * <p>Drying, curing and conditioning always have their step; working time is rounded up to whole working days. Where
 * it is not known how long the sheets dry, that step has no number of days: what comes after it is dated, what comes
 * before is not.
 */
public final class Schedule {
    private static final double DAY = 86_400;

    private final List<Step> steps;

    /** One step. */
    public sealed interface Step permits PlannedStep {
        /** {@return the step} */
        String name();

        /** {@return calendar days it takes, if they are known} */
        OptionalInt days();

        /** {@return the day it begins, if the order has a date and the days from here on are known} */
        Optional<LocalDate> start();

        /** {@return the days in words, for example {@code 2 days}, or that they are not known} */
        String inDays();
    }

    /** A step that was counted. */
    record PlannedStep(String name, OptionalInt days, Optional<LocalDate> start) implements Step {
        @Override
        public String inDays() {
            return days.isPresent() ? count(days.getAsInt()) : "days not known";
        }

        @Override
        public String toString() {
            return name + ", " + inDays() + start.map(day -> ", from " + day).orElse("");
        }
    }

    private Schedule(List<Step> steps) {
        this.steps = List.copyOf(steps);
    }

    /** Adds up the work of the pieces and the batches, and counts back from the date of the order. */
    static Schedule of(PlainNumbers in, List<BatchPlan> batches, List<PiecePlan> pieces) {
        double day = in.studio().workingDay().si();
        double cook = 0;
        double beat = 0;
        for (int b = 0; b < batches.size(); b++) {
            BatchPlan batch = batches.get(b);
            double atPots = in.engine()
                    .stock(b)
                    .cookingHours(in.settings().stock(b), in.engine().likely());
            beat += batch.workingHours().likely().si()
                    - atPots
                    + in.engine().stock(b).rollTime(in.settings().stock(b));
            // Hot alkali is not left alone.
            cook += atPots
                    + batch.cooking()
                            .map(cooking ->
                                    cooking.pots().size() * cooking.time().si())
                            .orElse(0.0);
        }
        double wet = 0;
        double size = 0;
        double finish = 0;
        double dry = 0;
        double again = 0;
        boolean bath = false;
        for (int p = 0; p < in.engine().pieces(); p++) {
            DryingSheets dryer = in.engine().piece(p).drying();
            PieceWork.Hours of = in.engine()
                    .piece(p)
                    .hours(
                            in.settings(),
                            in.estimates().likely(FormingSheets.AT_VAT, p),
                            in.engine().likely());
            wet += of.wet() + in.engine().piece(p).pressTime(in.settings());
            size += of.size();
            finish += of.finish();
            PiecePlan piece = pieces.get(p);
            // What is not known makes the sum unknown as well.
            dry += piece.dryingStage()
                    .map(drying -> drying.left().si() * drying.loads())
                    .orElse(Double.NaN);
            if (piece.sizingStage().isDone()) {
                bath = true;
                again += in.settings().drying(p).loads()
                        * piece.sizing()
                                .dryAgain()
                                .map(time -> dryer.stay(
                                        time.likely().si(), in.engine().likely()))
                                .orElse(Double.NaN);
            }
        }
        boolean sized = in.order().recipes().stream()
                .anyMatch(recipe -> recipe.sizeBath().isPresent()
                        || recipe.additives().stream()
                                .anyMatch(dose -> dose.additive().purpose() == Additive.Purpose.INTERNAL_SIZE));
        List<String> names = new ArrayList<>();
        List<OptionalInt> days = new ArrayList<>();
        boolean beats = IntStream.range(0, batches.size())
                .anyMatch(b -> in.settings().stock(b).isBeaten());
        if (beats) {
            step(names, days, "order fibre and have it", days(in.asked(), "schedule.delivery"));
            step(names, days, "soak", wholeDays(batches.get(0).soak().time().si(), DAY));
        }
        if (cook > 0) {
            step(names, days, "cook and rinse", wholeDays(cook, day));
        }
        if (beats) {
            step(names, days, "beat and dose", wholeDays(beat, day));
        }
        boolean presses = pieces.stream().anyMatch(piece -> piece.pressStage().isDone());
        step(names, days, presses ? "form and press" : "form", wholeDays(wet, day));
        step(names, days, "dry", wholeDays(dry, DAY));
        if (bath) {
            step(names, days, "size in the bath", wholeDays(size, day));
            step(names, days, "dry again", wholeDays(again, DAY));
        }
        if (sized) {
            step(names, days, "let the size cure", days(in.asked(), "schedule.size-cure"));
        }
        step(names, days, "sort and finish", wholeDays(finish, day));
        step(names, days, "condition under weight", days(in.asked(), "schedule.condition"));
        step(names, days, "count and pack", days(in.asked(), "schedule.finish"));
        return backwards(names, days, in.order().due().orElse(null));
    }

    private static void step(List<String> names, List<OptionalInt> days, String name, OptionalInt count) {
        names.add(name);
        days.add(count);
    }

    private static OptionalInt days(Asked asked, String id) {
        return wholeDays(asked.si(id, Scope.GENERAL), DAY);
    }

    /** Rounds up to whole days, at least one; an unknown time has none. */
    private static OptionalInt wholeDays(double time, double day) {
        return Double.isNaN(time) ? OptionalInt.empty() : OptionalInt.of((int) Math.max(1, Rounding.ceil(time / day)));
    }

    /** Counts backwards; the steps come in the order of the work. */
    private static Schedule backwards(List<String> names, List<OptionalInt> days, @Nullable LocalDate due) {
        List<Step> steps = new ArrayList<>();
        LocalDate end = due;
        for (int i = names.size() - 1; i >= 0; i--) {
            OptionalInt count = days.get(i);
            LocalDate start = end == null || count.isEmpty() ? null : end.minusDays(count.getAsInt());
            steps.add(new PlannedStep(names.get(i), count, Optional.ofNullable(start)));
            end = start;
        }
        Collections.reverse(steps);
        return new Schedule(steps);
    }

    /**
     * Returns the steps in the order of the work.
     *
     * @return an unmodifiable list
     */
    public List<Step> steps() {
        return steps;
    }

    /**
     * Returns the calendar days from the first step to the parcel, if those of every step are known.
     *
     * @return the days; empty if it is not known how long the sheets dry, see {@link #leastDays()}
     */
    public OptionalInt days() {
        return steps.stream().allMatch(step -> step.days().isPresent())
                ? OptionalInt.of(leastDays())
                : OptionalInt.empty();
    }

    /**
     * Returns the calendar days of the steps whose days are known. Where {@link #days()} is empty, the drying comes on
     * top of them.
     *
     * @return the days
     */
    public int leastDays() {
        return steps.stream().mapToInt(step -> step.days().orElse(0)).sum();
    }

    /**
     * Returns the day by which the work has to begin, if the order has a date and the days of every step are known.
     *
     * @return the day
     */
    public Optional<LocalDate> start() {
        return steps.isEmpty() ? Optional.empty() : steps.get(0).start();
    }

    /**
     * Returns the days of all steps in words.
     *
     * @return for example {@code 33 days}, or how many there are at least
     */
    public String inDays() {
        return days().isPresent() ? count(leastDays()) : "at least " + count(leastDays()) + ", and the drying";
    }

    @Override
    public String toString() {
        return inDays() + start().map(day -> ", from " + day).orElse("");
    }

    private static String count(int days) {
        return days + (days == 1 ? " day" : " days");
    }
}
