package org.papermath.vat;

import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;
import org.papermath.testing.CheckValues;
import org.papermath.testing.StudioCases;

/** Figures that makers and magazines printed, and questions of a studio, answered from their inputs. */
class StudioCheckValuesTest {
    @TestFactory
    Stream<DynamicTest> printedFigures() {
        return cases("trade_fibre_to_sheets", "trade_beater_and_vat", "trade_alkali_colour_size", "trade_cooking");
    }

    @TestFactory
    Stream<DynamicTest> examples() {
        return cases("examples_vat_and_pulp", "examples_additives", "examples_beater");
    }

    private static Stream<DynamicTest> cases(String... tables) {
        return Stream.of(tables)
                .flatMap(table -> CheckValues.read(table).stream()
                        .map(row ->
                                DynamicTest.dynamicTest(row + " " + row.text("asked"), () -> StudioCases.check(row))));
    }
}
