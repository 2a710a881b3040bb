package org.papermath.testing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class CheckValuesTest {
    private static final String HEAD =
            "# source: a bench\n# known-by: weighed\n# tolerance: rel 1e-3\n# class: identity\n";

    @Test
    void readsQuotedCellsAndNumbers() {
        List<CheckValues.Row> rows = CheckValues.parse("t", HEAD + "case,mass\n\"a, \"\"b\"\"\",1.5e3\n\nplain,\n");
        assertThat(rows).hasSize(2);
        assertThat(rows.get(0).text("case")).isEqualTo("a, \"b\"");
        assertThat(rows.get(0).number("mass")).isEqualTo(1500.0);
        assertThat(rows.get(1).has("mass")).isFalse();
        assertThat(rows.get(1)).hasToString("plain");
    }

    @ParameterizedTest
    @ValueSource(strings = {"source", "known-by", "tolerance", "class"})
    void wantsTheWholeHead(String key) {
        String missing = HEAD.replaceFirst("# " + key + ":[^\n]*\n", "");
        String empty = HEAD.replaceFirst("# " + key + ":[^\n]*\n", "# " + key + ":\n");
        for (String head : List.of(missing, empty)) {
            assertThatThrownBy(() -> CheckValues.parse("t", head + "a\n1\n"))
                    .isInstanceOf(AssertionError.class)
                    .hasMessageContaining(key);
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "a,b\n", "a,b\n1\n", "a,a\n1,2\n", "a,b\n\"1,2\n"})
    void refusesABrokenTable(String body) {
        assertThatThrownBy(() -> CheckValues.parse("t", HEAD + body)).isInstanceOf(AssertionError.class);
    }

    @Test
    void refusesAMissingColumnAndAWordForANumber() {
        CheckValues.Row row = CheckValues.parse("t", HEAD + "a\nword\n").get(0);
        assertThatThrownBy(() -> row.text("b")).isInstanceOf(AssertionError.class);
        assertThatThrownBy(() -> row.number("a")).isInstanceOf(AssertionError.class);
        assertThatThrownBy(() -> CheckValues.read("no_such_table")).isInstanceOf(AssertionError.class);
    }

    @Test
    void tellsWhatARowIsWorth() {
        List<CheckValues.Row> rows = CheckValues.parse("t", HEAD + "# class standard: a | b\ncase\na\nb\nc\n");
        assertThat(rows)
                .extracting(CheckValues.Row::worth)
                .containsExactly(CheckValues.Worth.STANDARD, CheckValues.Worth.STANDARD, CheckValues.Worth.IDENTITY);
        assertThat(CheckValues.parse("t", HEAD + "case,class\na,measured outside\n")
                        .get(0)
                        .worth())
                .isEqualTo(CheckValues.Worth.MEASURED_OUTSIDE);
        for (String wrong : List.of("# class standard: d\ncase\na\n", "# class good: a\ncase\na\n", "a,class\n1,x\n")) {
            assertThatThrownBy(() -> CheckValues.parse("t", HEAD + wrong)).isInstanceOf(AssertionError.class);
        }
    }
}
