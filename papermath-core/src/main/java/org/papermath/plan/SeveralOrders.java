package org.papermath.plan;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import javax.measure.quantity.Mass;
import org.papermath.order.Studio;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Refused;
import org.papermath.schedule.PlacedTask;
import org.papermath.schedule.Timetable;
import org.papermath.schedule.Workload;

/**
 * Several orders in one studio: their work in one calendar, with one person or several, one beater, one vat, one press.
 * Immutable.
 *
 * <p>The rule of turns: an order with a rank goes before one with a higher number and before all without; orders of one rank, and
 * those without, go by the day they are due, those without a date last; and of what is still alike the one that was given first goes
 * first. The order in turn goes first wherever two could be next, and into the vat one order after the other. Beating, drying and
 * finishing of one go on beside the forming of another. Fibre is ordered for each order by itself.
 *
 * <p>Stuff is beaten for each order by itself, unless {@link Builder#sharingStuff()} asks otherwise. Then orders whose recipes
 * name the same {@linkplain org.papermath.order.Recipe#stuff() stuff} have it soaked, cooked and beaten together, before the first
 * of them is formed: all they want of it is weighed out anew for the whole, in as few loads as the beater allows, and divided by
 * weight in the order of their turns. What the plan of an order doses into each load goes into its part, once. A batch that would
 * be formed of stuff older than {@code stock.keeps} lets is beaten apart, with what comes after it, and {@link Shared} says so.
 *
 * <p>The sharing is one of loads: the plans and their forecasts stay as they were made, each with the loads it has by itself. A
 * fuller load is beaten a little less far in the same time, which no plan here takes into
 * account; where the state of the stuff has to be met closely, plan the pieces as one order.
 *
 * <pre>{@code
 * MakingPlan spring = MakingPlan.of(order.withDue(LocalDate.of(2027, 4, 2)), studio);
 * SeveralOrders all = SeveralOrders.of(List.of(spring), LocalDate.of(2027, 2, 1));
 * all.orders().get(0).isLate(); // false
 * SeveralOrders.from(LocalDate.of(2027, 2, 1)).order(spring, 1).sharingStuff().place();
 * }</pre>
 */
public final class SeveralOrders {
    private final Timetable timetable;
    private final List<Placed> orders;
    private final List<Shared> shared;

    private SeveralOrders(Timetable timetable, List<Placed> orders, List<Shared> shared) {
        this.timetable = timetable;
        this.orders = orders;
        this.shared = shared;
    }

    /** A plan with its rank. */
    private record Ranked(MakingPlan plan, int rank) {
        LocalDate due() {
            return plan.order().due().orElse(LocalDate.MAX);
        }

        String name() {
            return plan.order().name();
        }
    }

    /** Gathers plans and places their work. */
    public static final class Builder {
        private final LocalDate from;
        private final List<Ranked> plans = new ArrayList<>();
        private boolean sharing;

        private Builder(LocalDate from) {
            this.from = from;
        }

        /**
         * Adds an order without a rank: it goes by the day it is due, after all that have one.
         *
         * @param plan its plan
         * @return this builder
         */
        public Builder order(MakingPlan plan) {
            plans.add(new Ranked(Objects.requireNonNull(plan, "plan"), Integer.MAX_VALUE));
            return this;
        }

        /**
         * Adds an order with a rank, which counts more than the day it is due.
         *
         * @param plan its plan
         * @param rank its rank, 1 or more: 1 goes first; several may have the same
         * @return this builder
         * @throws Refused if the rank is below 1
         */
        public Builder order(MakingPlan plan, int rank) {
            Objects.requireNonNull(plan, "plan");
            if (rank < 1) {
                throw Refused.of(
                        "schedule.rank",
                        "order " + plan.order().name() + ": the rank " + rank
                                + " is given; must be 1 or more. 1 goes first.",
                        "order",
                        plan.order().name(),
                        "given",
                        rank);
            }
            plans.add(new Ranked(plan, rank));
            return this;
        }

        /**
         * Has stuff that several orders name alike beaten together for them.
         *
         * @return this builder
         */
        public Builder sharingStuff() {
            sharing = true;
            return this;
        }

        /**
         * Places the work.
         *
         * @return when each order is done
         * @throws Refused if there is no plan, two are of one name or of different studios, it is not known how long the
         *     sheets of one dry, or stuff is to be shared of recipes that differ in furnish, beating or consistency
         */
        public SeveralOrders place() {
            return SeveralOrders.place(plans, from, sharing);
        }

        @Override
        public String toString() {
            return "several orders from " + from + ", being put together: "
                    + plans.stream().map(one -> one.plan().order().name()).toList();
        }
    }

    /**
     * Begins a calendar of several orders.
     *
     * @param day the day work can begin on
     * @return a builder
     */
    public static Builder from(LocalDate day) {
        return new Builder(Objects.requireNonNull(day, "day"));
    }

    /** Stuff that several orders name alike, and the loads they share of it. */
    public static final class Shared {
        private record Values(
                String stuff, List<String> orders, int loads, int loadsApart, Amount<Mass> whole, String reason) {}

        private final Values values;
        private final Map<String, Amount<Mass>> parts;

        private Shared(Values values, Map<String, Amount<Mass>> parts) {
            this.values = values;
            this.parts = parts;
        }

        /** {@return what the stuff is called} */
        public String stuff() {
            return values.stuff;
        }

        /** {@return the orders it is beaten for, in the order they take it; one, where it is beaten apart} */
        public List<String> orders() {
            return values.orders;
        }

        /** {@return whether several orders share its loads} */
        public boolean isShared() {
            return values.orders.size() > 1;
        }

        /** {@return why it is not beaten together with that of the order before; empty where nothing kept it from that} */
        public Optional<String> reason() {
            return Optional.of(values.reason).filter(text -> !text.isEmpty());
        }

        /** {@return the loads of the beater it takes} */
        public int loads() {
            return values.loads;
        }

        /** {@return the loads it would take if each order were beaten for by itself} */
        public int loadsApart() {
            return values.loadsApart;
        }

        /**
         * Returns what an order gets of it.
         *
         * @param order the name of the order
         * @return oven-dry fibre; all parts together are what is beaten
         * @throws Refused if it is not beaten for that order
         */
        public Amount<Mass> part(String order) {
            Amount<Mass> part = parts.get(Objects.requireNonNull(order, "order"));
            if (part == null) {
                throw Refused.of(
                        "schedule.not-shared",
                        values.stuff + ": it is not beaten for order \"" + order + "\", but for " + values.orders + ".",
                        "stuff",
                        values.stuff,
                        "given",
                        order);
            }
            return part;
        }

        /** {@return the oven-dry fibre that is beaten, as it is weighed out} */
        public Amount<Mass> whole() {
            return values.whole;
        }

        @Override
        public String toString() {
            return values.stuff + " for " + String.join(", ", values.orders) + ": " + values.loads
                    + (values.loads == 1 ? " load" : " loads")
                    + (isShared() ? ", " + values.loadsApart + " if each had its own" : "")
                    + (values.reason.isEmpty() ? "" : "; " + values.reason);
        }
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
     * Places the work of several plans, what is due first first.
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
        Builder builder = from(from);
        plans.forEach(builder::order);
        return builder.place();
    }

    private static SeveralOrders place(List<Ranked> given, LocalDate from, boolean sharing) {
        require(given.stream().map(Ranked::plan).toList());
        List<Ranked> inTurn = new ArrayList<>(given);
        inTurn.sort(Comparator.comparingInt(Ranked::rank).thenComparing(Ranked::due));
        List<OrdersOfStuff> stuffs =
                sharing ? OrdersOfStuff.of(inTurn.stream().map(Ranked::plan).toList()) : List.of();
        while (true) {
            Tried tried = tried(inTurn, from, stuffs);
            boolean parted = false;
            for (OrdersOfStuff one : stuffs) {
                parted |= one.part(tried.timetable, tried.byOrder);
            }
            if (!parted) {
                return new SeveralOrders(
                        tried.timetable,
                        placed(inTurn, tried),
                        stuffs.stream().flatMap(one -> one.found().stream()).toList());
            }
        }
    }

    /** The work of all, placed. */
    private record Tried(Timetable timetable, Map<String, TasksOfPlan> byOrder) {
        Tried {
            byOrder = Collections.unmodifiableMap(new LinkedHashMap<>(byOrder));
        }
    }

    private static Tried tried(List<Ranked> inTurn, LocalDate from, List<OrdersOfStuff> stuffs) {
        Map<String, TasksOfPlan> byOrder = new LinkedHashMap<>();
        List<Map<String, Map<String, SharedLoads>>> loads =
                stuffs.stream().map(OrdersOfStuff::loads).toList();
        List<String> before = List.of();
        for (int i = 0; i < inTurn.size(); i++) {
            MakingPlan plan = inTurn.get(i).plan();
            String name = plan.order().name();
            Map<String, SharedLoads> shared = new LinkedHashMap<>();
            loads.forEach(one -> shared.putAll(one.getOrDefault(name, Map.of())));
            LocalDateTime due = plan.order().due().map(Schedule::end).orElse(null);
            TasksOfPlan tasks = plan.tasks(name + ": ", inTurn.size() - i, due, before, shared);
            before = tasks.lastFormed();
            byOrder.put(name, tasks);
        }
        Studio studio = inTurn.get(0).plan().studio();
        Timetable timetable = Timetable.from(work(studio, List.copyOf(byOrder.values())), from.atStartOfDay());
        if (!timetable.undated().isEmpty()) {
            throw Refused.of(
                    "schedule.unknown-duration",
                    timetable.undated().get(0).task().name()
                            + ": it is not known how long the sheets dry, so that no day can be said. Give the studio a"
                            + " dryer, or drier air.",
                    "of",
                    timetable.undated().get(0).task().name());
        }
        return new Tried(timetable, byOrder);
    }

    private static List<Placed> placed(List<Ranked> inTurn, Tried tried) {
        List<Placed> placed = new ArrayList<>();
        for (Ranked one : inTurn) {
            Set<String> own = Objects.requireNonNull(tried.byOrder.get(one.name()))
                    .steps()
                    .keySet();
            List<PlacedTask> tasks = tried.timetable.tasks().stream()
                    .filter(task -> own.contains(task.task().name()))
                    .toList();
            placed.add(new Placed(
                    one.plan(),
                    tasks.stream()
                            .map(task -> task.start().orElseThrow().toLocalDate())
                            .min(LocalDate::compareTo)
                            .orElseThrow(),
                    tasks.stream()
                            .map(task -> Schedule.lastDay(task.finish().orElseThrow()))
                            .max(LocalDate::compareTo)
                            .orElseThrow()));
        }
        return List.copyOf(placed);
    }

    static Shared shared(
            String stuff,
            List<String> orders,
            int loads,
            int apart,
            Amount<Mass> whole,
            String reason,
            Map<String, Amount<Mass>> parts) {
        return new Shared(new Shared.Values(stuff, orders, loads, apart, whole, reason), new LinkedHashMap<>(parts));
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
     * @return an unmodifiable list, in the order of their turns
     */
    public List<Placed> orders() {
        return orders;
    }

    /**
     * Returns the stuff that orders name alike, if it is to be shared: what is beaten together, and what is not and why.
     *
     * @return an unmodifiable list, empty if nothing is to be shared
     */
    public List<Shared> shared() {
        return shared;
    }

    /** Returns how many are in time, and each by itself. */
    @Override
    public String toString() {
        long inTime = orders.stream().filter(one -> !one.isLate()).count();
        return inTime + " of " + orders.size() + " in time: "
                + String.join("; ", orders.stream().map(Placed::toString).toList())
                + (shared.isEmpty()
                        ? ""
                        : "; "
                                + String.join(
                                        "; ",
                                        shared.stream().map(Shared::toString).toList()));
    }
}
