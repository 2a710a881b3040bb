package org.papermath.plan;

import java.time.Duration;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import javax.measure.quantity.Mass;
import org.papermath.engine.BeaterRun;
import org.papermath.engine.PreparingStock;
import org.papermath.order.OwnStep;
import org.papermath.order.Recipe;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;
import org.papermath.schedule.PlacedTask;
import org.papermath.schedule.Timetable;
import org.papermath.text.Digits;

/** The orders that name one stuff, in the order of their turns, in groups each of which is beaten together. */
final class OrdersOfStuff {
    private final String stuff;
    private final List<Group> groups = new ArrayList<>();

    private OrdersOfStuff(String stuff) {
        this.stuff = stuff;
    }

    /** An order with the batch it has the stuff beaten at. */
    private record Member(MakingPlan plan, int batch) {
        String name() {
            return plan.order().name();
        }

        Recipe recipe() {
            return plan.batches().get(batch).recipe();
        }

        PreparingStock.Setting whole() {
            return plan.plain().settings().stock(batch).whole();
        }

        int loads() {
            return loadsOf(whole());
        }

        /** Whether a step of one's own has to be done before it is beaten. */
        boolean waitsForStep() {
            return plan.order().steps().stream()
                    .anyMatch(step -> step.before()
                            .map(stage -> stage.compareTo(OwnStep.Stage.BEAT) <= 0)
                            .orElseGet(() -> step.after().orElseThrow().compareTo(OwnStep.Stage.BEAT) < 0));
        }
    }

    private static int loadsOf(PreparingStock.Setting whole) {
        return whole.runs().stream().mapToInt(BeaterRun::loads).sum();
    }

    /** Orders that are beaten together, and why they are not with those before. */
    private record Group(List<Member> members, String reason) {
        Group {
            members = List.copyOf(members);
        }

        PreparingStock.Setting whole() {
            Member first = members.get(0);
            if (members.size() == 1) {
                return first.whole();
            }
            double ovenDry =
                    members.stream().mapToDouble(one -> one.whole().ovenDry()).sum();
            PlainNumbers in = first.plan.plain();
            return in.engine()
                    .stock(first.batch)
                    .beatenTogether(in.engine().likely(), ovenDry, in.studio().onHand());
        }

        Map<String, Double> wanted() {
            Map<String, Double> wanted = new LinkedHashMap<>();
            members.forEach(one -> wanted.put(one.name(), one.whole().ovenDry()));
            return wanted;
        }
    }

    /** Finds the stuff that several of the plans have beaten. */
    static List<OrdersOfStuff> of(List<MakingPlan> inTurn) {
        Map<String, List<Member>> members = new LinkedHashMap<>();
        for (MakingPlan plan : inTurn) {
            PlainNumbers in = plan.plain();
            for (int b = 0; b < plan.batches().size(); b++) {
                int batch = b;
                if (in.settings().stock(b).isBeaten() && in.beatenAt(b) == b) {
                    plan.batches()
                            .get(b)
                            .recipe()
                            .stuff()
                            .ifPresent(stuff -> members.computeIfAbsent(stuff, key -> new ArrayList<>())
                                    .add(new Member(plan, batch)));
                }
            }
        }
        List<OrdersOfStuff> all = new ArrayList<>();
        members.forEach((stuff, named) -> {
            if (named.size() > 1) {
                OrdersOfStuff one = new OrdersOfStuff(stuff);
                named.forEach(member -> requireSame(stuff, named.get(0), member));
                one.group(named);
                all.add(one);
            }
        });
        return all;
    }

    private static void requireSame(String stuff, Member first, Member member) {
        String differs = first.recipe().differsAsStuff(member.recipe());
        if (!differs.isEmpty()) {
            throw Refused.of(
                    "schedule.stuff-differs",
                    "order " + member.name() + ", recipe " + member.recipe().name()
                            + ": it is to be beaten together with "
                            + first.recipe().name() + " of order " + first.name()
                            + ", as " + stuff + ", but its " + differs
                            + " is another. Give both the same, call the stuff of one otherwise, or do not share.",
                    "order",
                    member.name(),
                    "recipe",
                    member.recipe().name(),
                    "other",
                    first.name(),
                    "stuff",
                    stuff);
        }
    }

    /** All together, but for those that have something to wait for before they are beaten. */
    private void group(List<Member> named) {
        List<Member> together = new ArrayList<>();
        List<Group> apart = new ArrayList<>();
        for (Member member : named) {
            if (member.waitsForStep()) {
                apart.add(new Group(
                        List.of(member),
                        "order " + member.name() + " has a step of its own to be done before it is beaten"));
            } else {
                together.add(member);
            }
        }
        if (!together.isEmpty()) {
            groups.add(new Group(together, ""));
        }
        groups.addAll(apart);
    }

    /** What each order shares, by its name and that of the stuff; loads that are not tasks yet. */
    Map<String, Map<String, SharedLoads>> loads() {
        Map<String, Map<String, SharedLoads>> all = new LinkedHashMap<>();
        for (Group group : groups) {
            if (group.members.size() > 1) {
                SharedLoads loads = new SharedLoads(stuff, group.whole(), group.wanted());
                group.members.forEach(one -> all.put(one.name(), Map.of(stuff, loads)));
            }
        }
        return all;
    }

    /** Parts the first group of which something would be formed too old; returns whether there was one. */
    boolean part(Timetable timetable, Map<String, TasksOfPlan> byOrder) {
        for (int g = 0; g < groups.size(); g++) {
            Group group = groups.get(g);
            for (int m = 0; m < group.members.size() && group.members.size() > 1; m++) {
                String reason = tooOld(group.members.get(m), timetable, byOrder);
                if (!reason.isEmpty()) {
                    int at = Math.max(1, m);
                    groups.set(g, new Group(group.members.subList(0, at), group.reason));
                    groups.add(g + 1, new Group(group.members.subList(at, group.members.size()), reason));
                    return true;
                }
            }
        }
        return false;
    }

    private String tooOld(Member member, Timetable timetable, Map<String, TasksOfPlan> byOrder) {
        for (TasksOfPlan.Overlong one :
                Objects.requireNonNull(byOrder.get(member.name())).sharedWaits()) {
            PlacedTask load = timetable.task(one.first());
            LocalDateTime formed = timetable.task(one.next()).start().orElseThrow();
            Duration age = Duration.between(load.finish().orElseThrow(), formed);
            if (age.compareTo(one.most()) > 0) {
                return one.next() + " would come " + Digits.three(age.toMinutes() / 1440.0)
                        + " days after it is beaten, and" + " it keeps "
                        + Digits.three(one.most().toMinutes() / 1440.0);
            }
        }
        return "";
    }

    /** What is beaten together, and what is not. */
    List<SeveralOrders.Shared> found() {
        List<SeveralOrders.Shared> all = new ArrayList<>();
        for (Group group : groups) {
            PreparingStock.Setting whole = group.whole();
            SharedLoads loads = new SharedLoads(stuff, whole, group.wanted());
            Map<String, Amount<Mass>> parts = new LinkedHashMap<>();
            group.members.forEach(one ->
                    parts.put(one.name(), Kinds.MASS.ofSi(loads.part(one.name()) * whole.beaten(), "g")));
            all.add(SeveralOrders.shared(
                    stuff,
                    group.members.stream().map(Member::name).toList(),
                    loadsOf(whole),
                    group.members.stream().mapToInt(Member::loads).sum(),
                    Kinds.MASS.ofSi(whole.beaten(), "g"),
                    group.reason,
                    parts));
        }
        return all;
    }
}
