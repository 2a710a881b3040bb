package org.papermath.evidence;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Random;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

class SharedMapTest {
    /** Texts of like hash: "Aa" and "BB" have the same, and so has every word made of them alike. */
    private static String likeHash(int which) {
        StringBuilder text = new StringBuilder();
        for (int bit = 0; bit < 3; bit++) {
            text.append((which >> bit & 1) == 0 ? "Aa" : "BB");
        }
        return text.toString();
    }

    private static List<Integer> values(SharedMap<Integer> map) {
        List<Integer> values = new ArrayList<>();
        map.forEach(values::add);
        values.sort(null);
        return values;
    }

    @Test
    void keysOfTheSameHashAreToldApart() {
        SharedMap<Integer> map = SharedMap.empty();
        for (int i = 0; i < 8; i++) {
            assertThat(likeHash(i)).hasSameHashCodeAs(likeHash(0));
            map = map.with(likeHash(i), i);
        }
        SharedMap<Integer> before = map;
        map = map.with(likeHash(3), 30).with(likeHash(0), 40);
        for (int i = 0; i < 8; i++) {
            assertThat(map.get(likeHash(i))).isEqualTo(i == 3 ? 30 : i == 0 ? 40 : i);
            assertThat(before.get(likeHash(i))).isEqualTo(i);
        }
        assertThat(map.get("AaAaCC")).isNull();
        assertThat(values(map)).containsExactly(1, 2, 4, 5, 6, 7, 30, 40);
        Map<Integer, Integer> differing = new TreeMap<>();
        SharedMap.differing(
                map, before, (one, other) -> differing.put(Objects.requireNonNull(one), Objects.requireNonNull(other)));
        assertThat(differing).isEqualTo(Map.of(30, 3, 40, 0));
    }

    @Test
    void itAnswersLikeAMutableMap() {
        Random random = new Random(20261);
        Map<String, Integer> plain = new HashMap<>();
        SharedMap<Integer> map = SharedMap.empty();
        assertThat(map.get("nothing")).isNull();
        for (int i = 0; i < 20_000; i++) {
            String key = random.nextInt(10) == 0 ? likeHash(random.nextInt(8)) : "key " + random.nextInt(8_000);
            plain.put(key, i);
            map = map.with(key, i);
        }
        for (int i = 0; i < 8_000; i++) {
            assertThat(map.get("key " + i)).isEqualTo(plain.get("key " + i));
        }
        assertThat(values(map)).isEqualTo(plain.values().stream().sorted().toList());
    }

    @Test
    void onlyWhatDiffersIsPassedOn() {
        SharedMap<Integer> base = SharedMap.empty();
        for (int i = 0; i < 1_000; i++) {
            base = base.with("key " + i, i);
        }
        SharedMap<Integer> changed = base.with("key 500", -500).with("new", -1);
        List<String> pairs = new ArrayList<>();
        SharedMap.differing(changed, base, (one, other) -> pairs.add(one + "/" + other));
        assertThat(pairs).containsExactlyInAnyOrder("-500/500", "-1/null");
        pairs.clear();
        SharedMap.differing(base, changed, (one, other) -> pairs.add(one + "/" + other));
        assertThat(pairs).containsExactlyInAnyOrder("500/-500", "null/-1");
        pairs.clear();
        SharedMap.differing(
                SharedMap.<Integer>empty(),
                SharedMap.<Integer>empty().with("one", 1),
                (one, other) -> pairs.add(one + "/" + other));
        assertThat(pairs).containsExactly("null/1");
    }
}
