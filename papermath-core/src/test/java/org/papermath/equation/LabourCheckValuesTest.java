package org.papermath.equation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.papermath.testing.CheckValues.relative;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.papermath.testing.CheckValues;
import org.papermath.testing.CheckValues.Row;

class LabourCheckValuesTest {
    static List<Row> labour() {
        return CheckValues.read("labour");
    }

    @ParameterizedTest
    @MethodSource("labour")
    void paceAndPosts(Row row) {
        double post = Labour.postTime(130, 20, 900, 0);
        Map<String, Double> found = new LinkedHashMap<>();
        found.put("4500 in 13 h", Labour.pace(13 * 3600, 4500));
        found.put("130 x 20 s + 15 min", post / 60);
        found.put("posts in 8 h", (double) Labour.postsIn(8 * 3600, post));
        double expected = row.number("value");
        assertThat(found).containsKey(row.text("case"));
        assertThat(found.get(row.text("case"))).isCloseTo(expected, relative(expected, 1e-6));
    }

    @Test
    void paceGivesBackTheDay() {
        double pace = CheckValues.row("labour", "case", "4500 in 13 h").number("value");
        assertThat(Labour.sheetsIn(13 * 3600, pace)).isEqualTo(4500);
    }

    @Test
    void aRunOfPosts() {
        assertThat(Labour.posts(25, 10)).isEqualTo(3);
        assertThat(Labour.posts(20, 10)).isEqualTo(2);
        assertThat(Labour.posts(0, 10)).isZero();
        double whole = Labour.runTime(25, 10, 120, 900, 6);
        double byPost = 2 * Labour.postTime(10, 120, 900, 6) + Labour.postTime(5, 120, 900, 6);
        assertThat(whole).isCloseTo(byPost, relative(byPost, 1e-12));
        assertThat(Labour.overallPerSheet(10, 120, 900, 6)).isCloseTo(216, relative(216, 1e-12));
    }

    @Test
    void aWholeCountSurvivesRounding() {
        assertThat(Labour.postsIn(0.3, 0.1)).isEqualTo(3);
        assertThat(Labour.postsIn(0.29, 0.1)).isEqualTo(2);
    }
}
