package org.papermath.examples;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The quotation of the sample order is the one the README shows. */
class QuoteAnOrderTest {
    private static String printed() {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        QuoteAnOrder.print(new PrintStream(out, true, StandardCharsets.UTF_8));
        return out.toString(StandardCharsets.UTF_8).replace(System.lineSeparator(), "\n");
    }

    @Test
    void theReadmeShowsWhatItPrints() {
        List<String> shown = Pages.blocks("README.md", "quotation");
        assertThat(shown).hasSize(1);
        assertThat(printed()).contains(shown.get(0).stripTrailing());
    }

    @Test
    void theListOfTheSampleHasAPriceForAllThePlanNeeds() {
        assertThat(printed())
                .doesNotContain("at least")
                .contains("cotton rag (half-stuff), 1218 g at 14 EUR per kg: 17.05 EUR\n");
        assertThat(printed().lines().filter(line -> line.startsWith("QUOTATION: midwinter concert")))
                .hasSize(1);
    }
}
