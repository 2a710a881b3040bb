package org.papermath.outside;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.papermath.evidence.Assumptions;
import org.papermath.testing.CheckValues;
import org.papermath.testing.CheckValues.Row;
import org.papermath.testing.CheckValues.Worth;

/**
 * Published figures beside what the shipped table makes of the same case. How far the two lie apart stands in the table
 * of figures, and may only shrink: {@code -Dfigures.write=true} writes errors that shrank and those of new rows,
 * where model and error are left empty; {@code -Dfigures.write=all} also those that grew, for a change that says why.
 * Either writes the bands, and whether the published value lies inside, as they are now.
 */
class OutsideFiguresCheckValuesTest {
    /** How much of a recorded error may be gone before it has to be written anew; errors are rounded up to 3 digits. */
    private static final double SHRUNK = 0.97;

    /** What stands for a band where there is none. */
    private static final String NONE = "-";

    /** What stands behind an end that could not be worked out any farther. */
    private static final String OR_LESS = " or less";

    private static final String OR_MORE = " or more";

    /** What rounding to 4 digits may take. */
    private static final double ROUNDED = 5e-4;

    static List<Row> figures() {
        return CheckValues.read(OutsideFigures.TABLE);
    }

    private static double error(Row row) {
        return OutsideFigures.error(row, Assumptions.standard());
    }

    @ParameterizedTest
    @MethodSource("figures")
    void theErrorIsTheOneRecorded(Row row) {
        double error = error(row);
        double recorded = row.number("error");
        assertThat(error)
                .as("%s: the library moved away from the published figure", row)
                .isLessThanOrEqualTo(recorded * (1 + OutsideFigures.DIGITS));
        assertThat(error).as("%s: record the smaller error", row).isGreaterThanOrEqualTo(SHRUNK * recorded - 1e-9);
    }

    @ParameterizedTest
    @MethodSource("figures")
    void theBandIsTheOneRecorded(Row row) {
        assertThat(List.of(row.text("low"), row.text("high"), row.text("inside")))
                .as("%s: record the band, -Dfigures.write=true", row)
                .isEqualTo(band(row));
    }

    @Test
    void aBandHoldsTheFigureOfTheLibrary() {
        List<Row> banded =
                figures().stream().filter(row -> !row.text("low").equals(NONE)).toList();
        assertThat(banded).hasSizeGreaterThan(90).allSatisfy(row -> {
            double low = Double.parseDouble(row.text("low").replace(OR_LESS, ""));
            double high = Double.parseDouble(row.text("high").replace(OR_MORE, ""));
            assertThat(low).isLessThan(high);
            assertThat(OutsideFigures.model(row, Assumptions.standard()))
                    .isBetween(low * (1 - ROUNDED), high * (1 + ROUNDED));
        });
    }

    /** Both ends of a band, and whether the published value itself lies inside, whatever its own doubt. */
    private static List<String> band(Row row) {
        return OutsideFigures.band(row, Assumptions.standard())
                .map(band -> List.of(
                        rounded(band.low(), 4, RoundingMode.HALF_EVEN) + (band.openBelow() ? OR_LESS : ""),
                        rounded(band.high(), 4, RoundingMode.HALF_EVEN) + (band.openAbove() ? OR_MORE : ""),
                        band.holds(row.number("published")) ? "yes" : "no"))
                .orElse(List.of(NONE, NONE, NONE));
    }

    @Test
    void everyFigureIsOfOthersAndSaysWhetherADefaultWasMadeFromIt() {
        assertThat(figures()).hasSizeGreaterThan(90).allSatisfy(row -> {
            assertThat(row.worth()).isIn(Worth.MEASURED_OUTSIDE, Worth.STANDARD);
            assertThat(row.text("sample")).isIn("outside", "fitted");
            assertThat(row.number("within")).isPositive();
            assertThat(row.text("source")).hasSizeGreaterThan(10);
        });
        assertThat(figures()).extracting(Row::toString).doesNotHaveDuplicates();
    }

    @AfterAll
    static void write() throws IOException {
        String how = System.getProperty("figures.write", "");
        if (!how.equals("true") && !how.equals("all")) {
            return;
        }
        CheckValues.rewrite(OutsideFigures.TABLE, row -> written(row, how));
    }

    private static String written(Row row, String how) {
        boolean keep = !how.equals("all") && row.has("error") && error(row) > row.number("error");
        String model = keep
                ? row.text("model")
                : rounded(OutsideFigures.model(row, Assumptions.standard()), 4, RoundingMode.HALF_EVEN);
        String error = keep ? row.text("error") : rounded(error(row) * (1 - OutsideFigures.DIGITS), 3, RoundingMode.UP);
        return String.join(
                ",",
                row.text("case"),
                row.text("class"),
                row.text("sample"),
                row.text("published"),
                row.text("within"),
                row.text("unit"),
                model,
                error,
                String.join(",", band(row)),
                quoted(row.text("source")));
    }

    private static String rounded(double value, int digits, RoundingMode mode) {
        return new BigDecimal(value)
                .round(new MathContext(digits, mode))
                .stripTrailingZeros()
                .toPlainString();
    }

    private static String quoted(String text) {
        return text.contains(",") ? '"' + text + '"' : text;
    }
}
