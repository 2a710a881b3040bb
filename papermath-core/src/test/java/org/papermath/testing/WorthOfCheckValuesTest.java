package org.papermath.testing;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.papermath.testing.CheckValues.Worth;

/** What all rows of check values are worth together. */
class WorthOfCheckValuesTest {
    private static Map<Worth, Integer> counts() throws IOException {
        List<String> names;
        try (Stream<Path> files = Files.list(Path.of("src", "test", "resources", "checkvalues"))) {
            names = files.map(file -> file.getFileName().toString())
                    .filter(name -> name.endsWith(".csv"))
                    .map(name -> name.substring(0, name.length() - ".csv".length()))
                    .sorted()
                    .toList();
        }
        Map<Worth, Integer> counts = new EnumMap<>(Worth.class);
        for (String name : names) {
            for (CheckValues.Row row : CheckValues.read(name)) {
                counts.merge(row.worth(), 1, Integer::sum);
            }
        }
        return counts;
    }

    @Test
    void aThirdAtLeastWasMeasuredOrLaidDownByOthers() throws IOException {
        Map<Worth, Integer> counts = counts();
        int all = counts.values().stream().mapToInt(Integer::intValue).sum();
        assertThat(counts).containsOnlyKeys(Worth.values());
        assertThat(all).isGreaterThan(1300);
        assertThat(counts.get(Worth.MEASURED_OUTSIDE) + counts.get(Worth.STANDARD))
                .as("of %s rows: %s", all, counts)
                .isGreaterThanOrEqualTo(all / 3);
        assertThat(counts.get(Worth.MEASURED_OUTSIDE)).as("%s", counts).isGreaterThanOrEqualTo(120);
    }
}
