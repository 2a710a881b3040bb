package org.papermath.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Per cents that say of what they are. */
class PerCentBasisTest {
    private static Kind<?> kind(String name) throws ReflectiveOperationException {
        return (Kind<?>) Kinds.class.getField(name).get(null);
    }

    @ParameterizedTest
    @CsvSource({
        "CONSISTENCY, 4 % w/w, 4 %",
        "CONSISTENCY, 4 % by mass, 4 %",
        "CONSISTENCY, 2.5% m/m, 2.5 %",
        "SOLIDS, 35 % by weight, 35 %",
        "MOISTURE, 65 % wet basis, 65 %",
        "MOISTURE_RATIO, 186 % dry basis, 186 %",
        "DOSE, 9 % on fibre, 9 %",
        "DOSE, 9 % on oven-dry fibre, 9 %",
        "DOSE, 9 % on fiber, 9 %"
    })
    void thatOfTheKindIsReadInDocumentsToo(String name, String text, String meant) throws ReflectiveOperationException {
        Kind<?> kind = kind(name);
        assertThat(Units.print(Units.read(kind, text))).isEqualTo(meant);
        assertThat(Units.print(kind.read(text))).isEqualTo(meant);
    }

    @ParameterizedTest
    @CsvSource({
        "FIBRE_CONCENTRATION, 4 % w/v, 40 g/L",
        "SOLUTION_STRENGTH, 0.5 % m/v, 5 g/L",
        "DOSE, 9 per cent on fibre, 9 %",
        "CONSISTENCY, 4 percent W/W, 4 %"
    })
    void whatIsNoUnitOfDocumentsIsReadByPeoplesDoorAndTheFormIsSaid(String name, String text, String meant)
            throws ReflectiveOperationException {
        Kind<?> kind = kind(name);
        assertThat(Units.print(kind.read(text))).isEqualTo(meant);
        assertThat(refused(() -> Units.read(kind, text))).endsWith("For \"" + text + "\" write \"" + meant + "\".");
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            CONSISTENCY       | 4 % w/v         | is grams in 100 mL; grams in 100 g of the whole are read here. Weigh a litre of it: 40 g over its mass; where a litre weighs about 1 kg, write "4 %".
            SOLUTION_STRENGTH | 4 % w/w         | is grams in 100 g of the whole; grams in 100 mL are read here. Multiply by the mass of a litre; where that is about 1 kg, write "40 g/L".
            MOISTURE          | 186 % dry basis | is grams of water to 100 g oven-dry; grams of water in 100 g with the water are read here. Write "65.03 %".
            MOISTURE_RATIO    | 65 % wet basis  | is grams of water in 100 g with the water; grams of water to 100 g oven-dry are read here. Write "185.7 %".
            DOSE              | 3 % w/v         | is grams in 100 mL; grams to 100 g of oven-dry fibre are read here. Work out the grams to 100 g of oven-dry fibre, and write that.
            CONSISTENCY       | 9 % on fibre    | is grams to 100 g of oven-dry fibre; grams in 100 g of the whole are read here.
            """)
    void thatOfSomethingElseIsRefusedWithWhatToWrite(String name, String text, String said)
            throws ReflectiveOperationException {
        Kind<?> kind = kind(name);
        assertThat(refused(() -> Units.read(kind, text))).startsWith(kind.name() + ": \"" + text + "\" " + said);
        assertThat(refused(() -> kind.read(text))).startsWith(kind.name() + ": \"" + text + "\" " + said);
    }

    private static String refused(org.assertj.core.api.ThrowableAssert.ThrowingCallable reading) {
        Refused refused = catchThrowableOfType(Refused.class, reading);
        assertThat(refused).isNotNull();
        assertThat(refused.code()).isEqualTo("unit.unknown");
        return refused.getMessage();
    }
}
