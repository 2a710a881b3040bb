package org.papermath.json.tree;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * Where the parts of a document stand after it was edited. Items of a list are found again first by all they say, then
 * by what they call themselves, last by standing between the same neighbours.
 */
public final class ListMatching {
    /** What an item calls itself, where it does. */
    private static final List<String> OWN = List.of(
            "name", "id", "fibre", "subject", "at", "figure", "what", "key", "widens", "code", "recipe", "substance");
    /** Among more items of one name nobody looks for the most alike; they are taken in their order. */
    private static final int MANY = 200;

    private static final int GONE = -1;

    private final JsonValue before;
    private final JsonValue now;
    private final IdentityHashMap<JsonValue, Lists> lists = new IdentityHashMap<>();

    /** The new numbers of the items of a list: of those known again, and of all that may be meant. */
    private record Lists(int[] known, int[] all) {}

    /**
     * Compares a document as it would have been written before with what is written now, both without what is kept.
     */
    public ListMatching(JsonValue before, JsonValue now) {
        this.before = before;
        this.now = now;
    }

    /**
     * Finds a part again.
     *
     * @param pointer where it stood
     * @param known whether an item under a new name is another one
     * @return where it stands; nothing if it is gone
     */
    public Optional<String> of(String pointer, boolean known) {
        JsonValue from = before;
        JsonValue to = now;
        String place = "";
        String[] steps = pointer.split("/", -1);
        for (int i = 1; i < steps.length; i++) {
            String step = steps[i].replace("~1", "/").replace("~0", "~");
            if (from != null && from.type() == JsonValue.Type.LIST) {
                int item = item(from, to, Integer.parseInt(step), known);
                if (item == GONE) {
                    return Optional.empty();
                }
                from = from.items().get(Integer.parseInt(step));
                to = Objects.requireNonNull(to).items().get(item);
                step = Integer.toString(item);
            } else {
                JsonValue was = from == null ? null : from.member(step);
                JsonValue is = to == null ? null : to.member(step);
                if (was != null && is == null) {
                    return Optional.empty();
                }
                // What is written neither before nor now is the usual thing, and written for what is kept in it.
                from = was;
                to = is;
            }
            place = JsonValue.pointer(place, step);
        }
        return Optional.of(place);
    }

    private int item(JsonValue from, @Nullable JsonValue to, int number, boolean known) {
        if (to == null
                || to.type() != JsonValue.Type.LIST
                || number >= from.items().size()) {
            return GONE;
        }
        Lists both = lists.get(from);
        if (both == null) {
            both = compare(from.items(), to.items());
            lists.put(from, both);
        }
        return known ? both.known()[number] : both.all()[number];
    }

    private static Lists compare(List<JsonValue> from, List<JsonValue> to) {
        int[] moved = new int[from.size()];
        Arrays.fill(moved, GONE);
        if (from.stream().allMatch(item -> item.type() != JsonValue.Type.OBJECT)) {
            // Plain values mean what their places mean.
            Arrays.setAll(moved, i -> i < to.size() ? i : GONE);
            return new Lists(moved, moved);
        }
        boolean[] taken = new boolean[to.size()];
        for (Function<JsonValue, String> means :
                List.<Function<JsonValue, String>>of(JsonValue::compact, ListMatching::key)) {
            int[] free = new int[to.size()];
            for (int i = 0; i < free.length; i++) {
                free[i] = taken[i] ? i : GONE;
            }
            match(groups(from, moved, means), groups(to, free, means), moved, taken, from, to);
        }
        int[] all = moved.clone();
        renamed(all, taken);
        for (int i = 0; i < all.length && i < taken.length; i++) {
            if (all[i] == GONE && !taken[i] && key(from.get(i)).isEmpty()) {
                all[i] = i;
                taken[i] = true;
            }
        }
        return new Lists(moved, all);
    }

    /** Pairs what has the same text, the most alike first. */
    private static void match(
            Map<String, List<Integer>> from,
            Map<String, List<Integer>> to,
            int[] moved,
            boolean[] taken,
            List<JsonValue> before,
            List<JsonValue> now) {
        from.forEach((text, numbers) -> {
            List<Integer> left = new ArrayList<>(to.getOrDefault(text, List.of()));
            boolean many = numbers.size() > MANY || left.size() > MANY;
            for (int number : numbers) {
                Integer best = null;
                int most = -1;
                for (Integer one : many && !left.isEmpty() ? left.subList(0, 1) : left) {
                    int alike = alike(before.get(number), now.get(one));
                    if (alike > most) {
                        most = alike;
                        best = one;
                    }
                }
                if (best != null) {
                    left.remove(best);
                    moved[number] = best;
                    taken[best] = true;
                }
            }
        });
    }

    private static int alike(JsonValue one, JsonValue other) {
        int count = 0;
        for (JsonValue member : one.members()) {
            JsonValue twin = other.member(member.step());
            if (twin != null && member.compact().equals(twin.compact())) {
                count++;
            }
        }
        return count;
    }

    /** Pairs items between the same two neighbours, if there are as many now as before. */
    private static void renamed(int[] moved, boolean[] taken) {
        for (int from = 0; from < moved.length; from++) {
            if (moved[from] != GONE) {
                continue;
            }
            int end = from;
            while (end < moved.length && moved[end] == GONE) {
                end++;
            }
            int first = from == 0 ? 0 : moved[from - 1] + 1;
            int last = end == moved.length ? taken.length : moved[end];
            boolean free = last - first == end - from;
            for (int i = first; free && i < last; i++) {
                free = !taken[i];
            }
            if (free) {
                for (int i = first; i < last; i++) {
                    moved[from + i - first] = i;
                    taken[i] = true;
                }
            }
            from = end;
        }
    }

    /** Gathers the numbers of the items without a twin yet by a text; items without one are left out. */
    private static Map<String, List<Integer>> groups(
            List<JsonValue> items, int[] moved, Function<JsonValue, String> text) {
        Map<String, List<Integer>> groups = new LinkedHashMap<>();
        for (int i = 0; i < moved.length; i++) {
            String its = moved[i] == GONE ? text.apply(items.get(i)) : "";
            if (!its.isEmpty()) {
                groups.computeIfAbsent(its, any -> new ArrayList<>()).add(i);
            }
        }
        return groups;
    }

    private static String key(JsonValue item) {
        StringBuilder key = new StringBuilder();
        for (String name : OWN) {
            JsonValue member = item.member(name);
            if (member != null) {
                key.append(name).append(member.compact()).append('\n');
            }
        }
        return key.toString();
    }
}
