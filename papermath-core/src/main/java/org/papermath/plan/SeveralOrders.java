package org.papermath.plan;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.papermath.order.Studio;
import org.papermath.quantity.Refused;
import org.papermath.schedule.PlacedTask;
import org.papermath.schedule.Timetable;
import org.papermath.schedule.Workload;

/**
 * Several orders in one studio: their work in one calendar, with one person or several, one beater, one vat, one press.
 * Immutable.
 *
 * <p>The rule: the order that is due first goes first wherever two could be next, and into the vat one order after the
 * other; orders without a date come last. Beating, drying and finishing of one go on beside the forming of another. Fibre is
 * ordered, and stuff beaten, for each order by itself.
 *
 * <pre>{@code
 * MakingPlan spring = MakingPlan.of(order.withDue(LocalDate.of(2027, 4, 2)), studio);
 * SeveralOrders all = SeveralOrders.of(List.of(spring), LocalDate.of(2027, 2, 1));
 * all.orders().get(0).isLate(); // false
 * }</pre>
 */
public final class SeveralOrders {
    private final Timetable timetable;
    private final List<Placed> orders;

    private SeveralOrders(Timetable timetable, List<Placed> orders) {
        this.timetable = timetable;
        this.orders = orders;
    }

    /** When one of the orders is done. */
    public static final class Placed {
        private final MakingPlan plan;
        private final LocalDate start;
        private final LocalDate done;

        private Placed(MakingPlan plan, LocalDate start, LocalDate done) {
            this.plan = plan;
            this.start = start;
            this.done = done;
        }

        /** {@return the plan of the order} */
        public MakingPlan plan() {
            return plan;
        }

        /** {@return the day its first task begins} */
        public LocalDate start() {
            return start;
        }

        /** {@return the day its last task ends} */
        public LocalDate done() {
            return done;
        }

        /** {@return whether it is done after the day it is due; never where it has no date} */
        public boolean isLate() {
            return daysLate() > 0;
        }

        /** {@return the days between the day it is due and the day it is done; zero where it is in time or has no date} */
        public long daysLate() {
            Optional<LocalDate> due = plan.order().due();
            return due.isEmpty() ? 0 : Math.max(0, ChronoUnit.DAYS.between(due.get(), done));
        }

        @Override
        public String toString() {
            return plan.order().name() + ": " + (isLate() ? daysLate() + " days late, " : "") + "from " + start
                    + ", done on " + done
                    + plan.order().due().map(day -> ", due " + day).orElse("");
        }
    }

    /**
     * Places the work of several plans.
     *
     * @param plans the plans, all for the same studio, of orders with different names
     * @param from the day work can begin on
     * @return when each is done
     * @throws Refused if there is no plan, two are of one name or of different studios, or it is not known how long the
     *     sheets of one dry
     */
    public static SeveralOrders of(List<MakingPlan> plans, LocalDate from) {
        Objects.requireNonNull(plans, "plans");
        Objects.requireNonNull(from, "from");
        require(plans);
        List<MakingPlan> inTurn = new ArrayList<>(plans);
        inTurn.sort(Comparator.comparing(plan -> plan.order().due().orElse(LocalDate.MAX)));
        Studio studio = inTurn.get(0).studio();
        List<TasksOfPlan> all = new ArrayList<>();
        List<String> before = List.of();
        for (int i = 0; i < inTurn.size(); i++) {
            MakingPlan plan = inTurn.get(i);
            LocalDateTime due = plan.order().due().map(Schedule::end).orElse(null);
            TasksOfPlan tasks = plan.tasks(plan.order().name() + ": ", inTurn.size() - i, due, before);
            before = tasks.lastFormed();
            all.add(tasks);
        }
        Timetable timetable = Timetable.from(work(studio, all), from.atStartOfDay());
        if (!timetable.undated().isEmpty()) {
            throw Refused.of(
                    "schedule.unknown-duration",
                    timetable.undated().get(0).task().name()
                            + ": it is not known how long the sheets dry, so that no day can be said. Give the studio a"
                            + " dryer, or drier air.",
                    "of",
                    timetable.undated().get(0).task().name());
        }
        List<Placed> placed = new ArrayList<>();
        for (int i = 0; i < inTurn.size(); i++) {
            Set<String> own = all.get(i).steps().keySet();
            List<PlacedTask> tasks = timetable.tasks().stream()
                    .filter(task -> own.contains(task.task().name()))
                    .toList();
            placed.add(new Placed(
                    inTurn.get(i),
                    tasks.stream()
                            .map(task -> task.start().orElseThrow().toLocalDate())
                            .min(LocalDate::compareTo)
                            .orElseThrow(),
                    tasks.stream()
                            .map(task -> Schedule.lastDay(task.finish().orElseThrow()))
                            .max(LocalDate::compareTo)
                            .orElseThrow()));
        }
        return new SeveralOrders(timetable, List.copyOf(placed));
    }

    private static void require(List<MakingPlan> plans) {
        if (plans.isEmpty()) {
            throw Refused.of("schedule.no-order", "several orders: there is none. Give one at least.");
        }
        Set<String> names = new HashSet<>();
        for (MakingPlan plan : plans) {
            if (!names.add(plan.order().name())) {
                throw Refused.of(
                        "schedule.twice",
                        "order \"" + plan.order().name() + "\" is given twice. Give each a name of its own.",
                        "of",
                        "order",
                        "given",
                        plan.order().name());
            }
            if (!plan.studio().equals(plans.get(0).studio())) {
                throw Refused.of(
                        "schedule.other-studio",
                        "order " + plan.order().name() + ": it is planned for "
                                + plan.studio().name()
                                + ", and the first for "
                                + plans.get(0).studio().name() + ", or for another state of it. Plan all for the same"
                                + " studio.",
                        "order",
                        plan.order().name());
            }
        }
    }

    /**
     * The work. Where what is held back would let something wait too long whatever is done, nothing is held back, so that a
     * timetable tells what waits too long; and where even so no timetable could keep a longest wait, there are none.
     */
    static Workload work(Studio studio, List<TasksOfPlan> all) {
        Refused last = null;
        for (TasksOfPlan.Strictness strictness : TasksOfPlan.Strictness.values()) {
            try {
                Workload.Builder work = Workload.in(studio.workingTime());
                TasksOfPlan.resources(studio).forEach(work::resource);
                all.forEach(tasks -> work.tasks(tasks.tasks(strictness)));
                return work.inOrderOfTime().build();
            } catch (Refused refused) {
                if (!refused.code().equals("schedule.wait-too-short")) {
                    throw refused;
                }
                last = refused;
            }
        }
        throw Objects.requireNonNull(last);
    }

    /**
     * Returns when each load, post and filling begins and ends; the names of tasks begin with that of their order.
     *
     * @return the timetable
     */
    public Timetable timetable() {
        return timetable;
    }

    /**
     * Returns when each of the orders is done.
     *
     * @return an unmodifiable list, what is due first first
     */
    public List<Placed> orders() {
        return orders;
    }

    /** Returns how many are in time, and each by itself. */
    @Override
    public String toString() {
        long inTime = orders.stream().filter(one -> !one.isLate()).count();
        return inTime + " of " + orders.size() + " in time: "
                + String.join("; ", orders.stream().map(Placed::toString).toList());
    }
}
