package org.papermath.schedule;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.papermath.quantity.Refused;

/** A workload in numbers: tasks, phases, resources and links by place. Minutes of phases may be others than the likely. */
final class Shop {
    final Workload work;
    final Task[] tasks;
    final Resource[] resources;
    /** The first phase of each task, and behind them how many phases there are. */
    final int[] first;

    final Phase[] phases;
    final int[] taskOf;
    /** Likely minutes of each phase; -1 if not known. */
    final long[] minutes;
    /** What each phase holds: resources and counts in turn. */
    final int[][] held;
    /** What stays held between each phase and the one before it: resources and counts in turn. */
    final int[][] through;
    /** Links into each task, by number of the link. */
    final int[][] in;
    /** Links out of each task. */
    final int[][] out;

    final int[] from;
    final int[] to;
    final long[] least;
    final long[] most;
    final long[] notBefore;
    final long[] due;
    /** Tasks, each after those it waits for; otherwise as given. */
    final int[] order;

    final long longestStretch;

    Shop(Workload work) {
        this.work = work;
        tasks = work.tasks().toArray(Task[]::new);
        resources = work.resources().toArray(Resource[]::new);
        longestStretch = Clock.longestStretch(work.workingTime());
        Map<String, Integer> taskPlaces = new HashMap<>();
        Map<String, Integer> resourcePlaces = new HashMap<>();
        for (int i = 0; i < resources.length; i++) {
            resourcePlaces.put(resources[i].name(), i);
        }
        first = new int[tasks.length + 1];
        for (int i = 0; i < tasks.length; i++) {
            taskPlaces.put(tasks[i].name(), i);
            first[i + 1] = first[i] + tasks[i].phases().size();
        }
        int count = first[tasks.length];
        phases = new Phase[count];
        taskOf = new int[count];
        minutes = new long[count];
        held = new int[count][];
        through = new int[count][];
        notBefore = new long[tasks.length];
        due = new long[tasks.length];
        List<Integer> froms = new ArrayList<>();
        List<Integer> tos = new ArrayList<>();
        List<Task.Link> links = new ArrayList<>();
        for (int i = 0; i < tasks.length; i++) {
            Task task = tasks[i];
            notBefore[i] =
                    task.notBefore().map(m -> Minutes.of(m, "not before")).orElse(-Minutes.NEVER);
            due[i] = task.dueBy().map(m -> Minutes.of(m, "due")).orElse(Minutes.NEVER);
            for (int p = first[i]; p < first[i + 1]; p++) {
                phases[p] = task.phases().get(p - first[i]);
                taskOf[p] = i;
                minutes[p] = phases[p].minutes();
                held[p] = flat(phases[p].held(), resourcePlaces);
                through[p] = p == first[i] ? new int[0] : both(held[p - 1], held[p]);
            }
            for (Task.Link link : task.links()) {
                froms.add(place(taskPlaces, link.after()));
                tos.add(i);
                links.add(link);
            }
        }
        from = froms.stream().mapToInt(Integer::intValue).toArray();
        to = tos.stream().mapToInt(Integer::intValue).toArray();
        least = links.stream().mapToLong(Task.Link::leastMinutes).toArray();
        most = links.stream().mapToLong(Task.Link::mostMinutes).toArray();
        in = byTask(to);
        out = byTask(from);
        order = inOrder();
    }

    private static int place(Map<String, Integer> places, String name) {
        Integer place = places.get(name);
        if (place == null) {
            throw new IllegalStateException("no place of " + name);
        }
        return place;
    }

    private static int[] flat(Map<String, Integer> held, Map<String, Integer> places) {
        int[] flat = new int[2 * held.size()];
        int n = 0;
        for (Map.Entry<String, Integer> one : held.entrySet()) {
            flat[n++] = place(places, one.getKey());
            flat[n++] = one.getValue();
        }
        return flat;
    }

    private static int[] both(int[] before, int[] after) {
        int[] both = new int[before.length];
        int n = 0;
        for (int i = 0; i < before.length; i += 2) {
            for (int j = 0; j < after.length; j += 2) {
                if (before[i] == after[j]) {
                    both[n++] = before[i];
                    both[n++] = Math.min(before[i + 1], after[j + 1]);
                }
            }
        }
        return Arrays.copyOf(both, n);
    }

    private int[][] byTask(int[] ends) {
        int[] counts = new int[tasks.length];
        for (int end : ends) {
            counts[end]++;
        }
        int[][] all = new int[tasks.length][];
        for (int i = 0; i < tasks.length; i++) {
            all[i] = new int[counts[i]];
        }
        for (int link = ends.length - 1; link >= 0; link--) {
            all[ends[link]][--counts[ends[link]]] = link;
        }
        return all;
    }

    private int[] inOrder() {
        int[] waiting = new int[tasks.length];
        for (int end : to) {
            waiting[end]++;
        }
        Deque<Integer> ready = new ArrayDeque<>();
        for (int i = 0; i < tasks.length; i++) {
            if (waiting[i] == 0) {
                ready.add(i);
            }
        }
        int[] found = new int[tasks.length];
        int n = 0;
        while (!ready.isEmpty()) {
            int task = ready.remove();
            found[n++] = task;
            for (int link : out[task]) {
                if (--waiting[to[link]] == 0) {
                    ready.add(to[link]);
                }
            }
        }
        if (n < tasks.length) {
            throw circle(waiting);
        }
        return found;
    }

    /** Names those that wait for one another. */
    private Refused circle(int[] waiting) {
        int at = 0;
        while (waiting[at] == 0) {
            at++;
        }
        List<Integer> walk = new ArrayList<>();
        while (!walk.contains(at)) {
            walk.add(at);
            for (int link : in[at]) {
                if (waiting[from[link]] > 0) {
                    at = from[link];
                    break;
                }
            }
        }
        List<Integer> round = new ArrayList<>(walk.subList(walk.indexOf(at), walk.size()));
        Collections.reverse(round);
        Collections.rotate(round, -round.indexOf(Collections.min(round)));
        List<String> names = round.stream().map(i -> tasks[i].name()).toList();
        return Refused.of(
                "schedule.circle",
                "These tasks wait for one another in a circle, so none of them can begin: " + String.join(", ", names)
                        + ". Take one of the waits out.",
                "tasks",
                names);
    }
}
