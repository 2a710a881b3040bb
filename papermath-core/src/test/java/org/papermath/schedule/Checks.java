package org.papermath.schedule;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.LocalDateTime;
import java.util.HashSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;

/** What every timetable has to keep, read from its results alone and reckoned minute by minute where that matters. */
public final class Checks {
    private Checks() {}

    public static void check(Timetable timetable) {
        Workload work = timetable.work();
        Map<String, TreeMap<LocalDateTime, Integer>> changes = new TreeMap<>();
        Set<String> told = new HashSet<>();
        timetable.brokenWaits().forEach(wait -> told.add(wait.task() + " after " + wait.after()));
        Set<String> found = new HashSet<>();
        for (PlacedTask placed : timetable.tasks()) {
            Task task = placed.task();
            for (Task.Link link : task.links()) {
                Optional<LocalDateTime> done = timetable.task(link.after()).finish();
                if (placed.start().isPresent() && done.isPresent()) {
                    Duration wait = Duration.between(done.get(), placed.start().get());
                    assertThat(wait).as("%s", placed).isGreaterThanOrEqualTo(link.least());
                    if (link.most().isPresent() && wait.compareTo(link.most().get()) > 0) {
                        found.add(task.name() + " after " + link.after());
                    }
                } else if (done.isEmpty() && timetable.due().isEmpty()) {
                    assertThat(placed.start())
                            .as("%s hangs on %s", task.name(), link.after())
                            .isEmpty();
                }
            }
            task.notBefore()
                    .ifPresent(day -> placed.start()
                            .ifPresent(
                                    start -> assertThat(start).as("%s", placed).isAfterOrEqualTo(day)));
            LocalDateTime before = null;
            Map<String, Integer> heldBefore = Map.of();
            for (PlacedPhase phase : placed.phases()) {
                if (phase.start().isEmpty() || phase.finish().isEmpty()) {
                    break;
                }
                LocalDateTime start = phase.start().get();
                LocalDateTime finish = phase.finish().get();
                goesOn(work.workingTime(), phase.phase(), start, finish);
                if (before != null) {
                    assertThat(start).isAfterOrEqualTo(before);
                    for (Map.Entry<String, Integer> one : phase.phase().held().entrySet()) {
                        int through = Math.min(one.getValue(), heldBefore.getOrDefault(one.getKey(), 0));
                        change(changes, one.getKey(), before, start, through);
                    }
                }
                phase.phase().held().forEach((name, count) -> change(changes, name, start, finish, count));
                before = finish;
                heldBefore = phase.phase().held();
            }
        }
        assertThat(told).isEqualTo(found);
        changes.forEach((name, steps) -> {
            int used = 0;
            for (Map.Entry<LocalDateTime, Integer> step : steps.entrySet()) {
                used += step.getValue();
                assertThat(used)
                        .as("%s held at %s", name, step.getKey())
                        .isBetween(0, work.resource(name).count());
            }
            assertThat(used).isZero();
        });
    }

    private static void change(
            Map<String, TreeMap<LocalDateTime, Integer>> changes,
            String name,
            LocalDateTime from,
            LocalDateTime to,
            int count) {
        TreeMap<LocalDateTime, Integer> steps = changes.computeIfAbsent(name, key -> new TreeMap<>());
        if (count > 0 && from.isBefore(to)) {
            steps.merge(from, count, Integer::sum);
            steps.merge(to, -count, Integer::sum);
        }
    }

    private static void goesOn(WorkingTime time, Phase phase, LocalDateTime start, LocalDateTime finish) {
        long minutes = Minutes.up(phase.likely().orElseThrow());
        long clock = Duration.between(start, finish).toMinutes();
        if (minutes == 0 || (phase.kind() == Phase.Kind.WAITING && !phase.isPausing()) || phase.isUnattended()) {
            assertThat(clock).as("%s", phase).isEqualTo(minutes);
            if (minutes > 0 && phase.isUnattended()) {
                assertThat(time.isWorked(start)).as("%s from %s", phase, start).isTrue();
            }
            return;
        }
        long worked = 0;
        boolean rests = false;
        for (LocalDateTime at = start; at.isBefore(finish); at = at.plusMinutes(1)) {
            boolean works = time.isWorked(at);
            worked += works ? 1 : 0;
            rests |= !works && !at.toLocalDate().equals(start.toLocalDate());
        }
        assertThat(worked).as("%s from %s", phase, start).isEqualTo(minutes);
        assertThat(time.isWorked(start)).isTrue();
        assertThat(time.isWorked(finish.minusMinutes(1))).isTrue();
        if (!phase.isBreakable()) {
            assertThat(rests).as("%s from %s to %s", phase, start, finish).isFalse();
        }
    }
}
