package org.papermath.json;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Slips that people make when they write by hand: the message says the form to write. */
class SlipsTest {
    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
            ["380 mm", "560 mm"] | "380 x 560 mm"           | Write ["380 mm", "560 mm"].
            ["380 mm", "560 mm"] | "15in × 22in"            | Write ["15 in", "22 in"].
            ["380 mm", "560 mm"] | {"a": 1}                 | Put [ ] round it.
            ["380 mm", "560 mm"] | ["5 1/2 in", "560 mm"]   | For "5 1/2 in" write "5.5 in".
            "inTurn": 2          | "inTurn": "2"            | Take the quotation marks away.
            """)
    void theFormToWriteIsSaid(String good, String slip, String form) {
        assertThat(Concert.STUDIO).contains(good);
        DocumentException told = catchThrowableOfType(
                DocumentException.class, () -> PapermathDocuments.readStudio(Concert.STUDIO.replace(good, slip)));
        assertThat(told.faults()).anySatisfy(fault -> assertThat(fault.text()).endsWith(form));
    }

    @ParameterizedTest
    @CsvSource({"70 %, 70, For per cent write \"70 %\".", "70 %, 7000, Check the unit and the decimal point."})
    void aBareNumberWhereAShareIsWanted(String good, String slip, String form) {
        DocumentException told = catchThrowableOfType(
                DocumentException.class,
                () -> PapermathDocuments.readRecipe(Concert.TIMED.replace("\"" + good + "\"", "\"" + slip + "\"")));
        assertThat(told.faults()).anySatisfy(fault -> assertThat(fault.text()).endsWith(form));
    }
}
