package org.papermath.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import javax.measure.Quantity;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** What people write, row by row. */
class WrittenAmountTest {
    record Row(String text, Kind<?> kind, String gives) {}

    static List<Row> rows() throws IOException {
        try (InputStream in = WrittenAmountTest.class.getResourceAsStream("/written/amounts.csv")) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8)
                    .lines()
                    .filter(line -> !line.startsWith("# "))
                    .map(line -> line.split("\\|", -1))
                    .map(cells -> new Row(cells[0], kind(cells[1]), cells[2]))
                    .toList();
        }
    }

    private static Kind<?> kind(String name) {
        return Kinds.all().stream()
                .filter(kind -> kind.name().equals(name))
                .findFirst()
                .orElseThrow(() -> new IllegalStateException(name));
    }

    @TestFactory
    List<DynamicTest> everyRowGivesWhatItSays() throws IOException {
        return rows().stream()
                .map(row -> DynamicTest.dynamicTest(row.text() + " as " + row.kind(), () -> check(row)))
                .toList();
    }

    @Test
    void thereAreEnoughRowsAndNoneTwice() throws IOException {
        assertThat(rows()).hasSizeGreaterThan(200).doesNotHaveDuplicates();
    }

    private static void check(Row row) {
        if (row.gives().startsWith("!")) {
            Refused refused =
                    catchThrowableOfType(Refused.class, () -> row.kind().read(row.text()));
            assertThat(refused).as(row.text()).isNotNull();
            assertThat(refused.code())
                    .as(refused.getMessage())
                    .isEqualTo(row.gives().substring(1));
            return;
        }
        if (row.gives().startsWith("?")) {
            Unclear unclear =
                    catchThrowableOfType(Unclear.class, () -> row.kind().read(row.text()));
            assertThat(unclear).as(row.text()).isNotNull();
            assertThat(unclear.candidates().stream().map(Unclear.Candidate::meaning))
                    .containsExactly(row.gives().substring(1).split(";", -1));
            return;
        }
        Amount<?> amount = row.kind().read(row.text());
        assertThat(Units.print(amount)).isEqualTo(row.gives());
        inADocument(row.kind(), row.text(), amount);
    }

    /** A document takes the same, or says how to write it. */
    private static <Q extends Quantity<Q>> void inADocument(Kind<Q> kind, String text, Amount<?> amount) {
        try {
            assertThat(Units.read(kind, text)).isEqualTo(amount);
        } catch (PapermathException refused) {
            assertThat(refused.getMessage()).contains("write \"" + Units.print(amount) + "\"");
        }
    }

    /** Every meaning that is asked back of an amount is itself read without a question. */
    @TestFactory
    List<DynamicTest> everyMeaningIsReadWithoutAQuestion() throws IOException {
        return rows().stream()
                .filter(row -> row.gives().startsWith("?") && row.kind() != Kinds.GRAMMAGE)
                .map(row -> DynamicTest.dynamicTest(row.text(), () -> {
                    for (String meaning : row.gives().substring(1).split(";", -1)) {
                        assertThat(row.kind().read(meaning)).isNotNull();
                    }
                }))
                .toList();
    }
}
