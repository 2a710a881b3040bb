package org.papermath.json;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.papermath.evidence.Assumption;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.DirectMeasurements;

/**
 * Slips that people make when they write by hand: one slip gives one fault, at the place of what was written, and the
 * message says the form to write.
 */
class SlipsTest {
    private static final Map<String, String> DOCUMENTS = Map.of(
            "order.json", Concert.ORDER,
            "papers/reed.json", Concert.RECIPE,
            "studio.json", Concert.STUDIO);

    /** The only fault of an order in one of whose documents something is written otherwise. */
    private static Fault only(String... goodAndSlip) {
        Map<String, String> documents = new LinkedHashMap<>(DOCUMENTS);
        for (int i = 0; i < goodAndSlip.length; i += 2) {
            String good = goodAndSlip[i];
            String slip = goodAndSlip[i + 1];
            assertThat(documents.values())
                    .filteredOn(text -> text.contains(good))
                    .hasSize(1);
            documents.replaceAll((name, text) -> text.replace(good, slip));
        }
        DocumentException told = catchThrowableOfType(
                DocumentException.class,
                () -> PapermathDocuments.planOrder(
                        documents.get("order.json").getBytes(StandardCharsets.UTF_8),
                        "order.json",
                        Concert.files(documents)));
        assertThat(told).as("%s is refused", goodAndSlip[1]).isNotNull();
        assertThat(told.faults()).hasSize(1);
        Fault fault = told.faults().get(0);
        String line = documents.get(fault.document()).split("\n", -1)[fault.line() - 1];
        assertThat(fault.column()).isBetween(1, line.length());
        return fault;
    }

    private static String place(Fault fault) {
        return fault.document() + fault.pointer();
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
            ["380 mm", "560 mm"]        | "380 x 560 mm"              | studio.json/moulds/0/opening   | Write ["380 mm", "560 mm"].
            ["380 mm", "560 mm"]        | "15in × 22in"               | studio.json/moulds/0/opening   | Write ["15 in", "22 in"].
            ["380 mm", "560 mm"]        | "15 x 22 1/2 in"            | studio.json/moulds/0/opening   | Write ["15 in", "22.5 in"].
            ["380 mm", "560 mm"]        | "A2"                        | studio.json/moulds/0/opening   | Write two sides in brackets, such as ["210 mm", "297 mm"].
            ["380 mm", "560 mm"]        | {"a": 1}                    | studio.json/moulds/0/opening   | Put [ ] round it.
            "380 mm"                    | "15 1/2 in"                 | studio.json/moulds/0/opening/0 | For "15 1/2 in" write "15.5 in".
            "inTurn": 2                 | "inTurn": "2"               | studio.json/moulds/0/inTurn    | Take the quotation marks away.
            "count": 96                 | "count": "96"               | order.json/pieces/1/count      | Take the quotation marks away.
            ["55 mm", "90 mm"]          | "105 x 148 mm"              | order.json/pieces/1/size       | "105 x 148 mm" is no name of a format, but two sides. Write ["105 mm", "148 mm"].
            ["55 mm", "90 mm"]          | "105x148"                   | order.json/pieces/1/size       | Write ["105 mm", "148 mm"] if millimetres are meant.
            ["55 mm", "90 mm"]          | "4 1/8 by 5 1/2 in"         | order.json/pieces/1/size       | Write ["4.125 in", "5.5 in"].
            "humidity": "58 %"          | "humidity": "58"            | studio.json/room/humidity      | For per cent write "58 %".
            "share": "60 %"             | "share": "60"               | papers/reed.json/furnish/0/share | For per cent write "60 %".
            "share": "60 %"             | "share": "50 %"             | papers/reed.json/furnish       | the shares add up to 90 %; must be 100 %. Correct a share.
            """)
    void theFormToWriteIsSaid(String good, String slip, String place, String form) {
        Fault fault = only(good, slip);
        assertThat(place(fault)).isEqualTo(place);
        assertThat(fault.text()).endsWith(form);
        if (fault.found().equals("a list") || fault.found().equals("an object")) {
            assertThat(fault.text()).as("what was found is no noise").contains(fault.found());
        }
    }

    /** What is nearly right says what is meant: a force for a mass, a fibre of two cuts, a name that nobody has. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
            "jack": "20 tonf_us"        | "jack": "20 t"              | studio.json/press/jack         | "t" measures mass. The force of its weight is "tf".
            "jack": "20 tonf_us"        | "jack": "9000 kg"           | studio.json/press/jack         | The force of its weight is "kgf".
            "fibre": "cotton rag", "share": "60 %" | "fibre": "cotton linter", "share": "60 %" | papers/reed.json/furnish/0/fibre | It may be linter-second-cut or linter-first-cut or cotton-rag.
            "recipe": "reed", "size"    | "recipe": "read", "size"    | order.json/pieces/0/recipe     | there is no recipe "read". Did you mean "reed"?
            """)
    void whatIsMeantIsNamed(String good, String slip, String place, String said) {
        Fault fault = only(good, slip);
        assertThat(place(fault)).isEqualTo(place);
        assertThat(fault.text()).contains(said);
    }

    /** A member that is misspelt, or called otherwise in the trade, is not told to be missing too. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
            "grammage": "130 g/m2"      | "gramage": "130 g/m2"       | order.json/pieces/0/gramage    | grammage
            "grammage": "130 g/m2"      | "gsm": "130 g/m2"           | order.json/pieces/0/gsm        | grammage
            "grammage": "130 g/m2"      | "weight": "130 g/m2"        | order.json/pieces/0/weight     | grammage
            "grammage": "130 g/m2"      | "basis weight": "130 g/m2"  | order.json/pieces/0/basis weight | grammage
            "caliper": "0.4 mm"         | "thickness": "0.4 mm"       | order.json/pieces/1/thickness  | caliper
            "count": 96                 | "qty": 96                   | order.json/pieces/1/qty        | count
            "count": 96                 | "quantity": 96              | order.json/pieces/1/quantity   | count
            "due"                       | "deadline"                  | order.json/deadline            | due
            "furnish"                   | "fibres"                    | papers/reed.json/fibres        | furnish
            "volume": "70 L"            | "capacity": "70 L"          | studio.json/vat/capacity       | volume
            "temperature": "18 Cel"     | "temp": "18 Cel"            | studio.json/room/temp          | temperature
            "opening": ["380 mm"        | "size": ["380 mm"           | studio.json/moulds/0/size      | opening
            """)
    void theMemberMeantIsNamed(String good, String slip, String place, String member) {
        Fault fault = only(good, slip);
        assertThat(place(fault)).isEqualTo(place);
        assertThat(fault.code()).isEqualTo(FaultCodes.UNKNOWN);
        assertThat(fault.nearest()).isEqualTo(member);
        assertThat(fault.text()).contains("Did you mean \"" + member + "\"?");
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
            "name": "envelope"          | "name": "programme"         | order.json/pieces/2/name
            "name": "programme"         | "name": "seat card"         | order.json/pieces/1/name
            "name": "loft"              | "name": "boards"            | studio.json/dryers/1/name
            """)
    void aNameGivenTwiceIsToldOnce(String good, String slip, String place) {
        Fault fault = only(good, slip);
        assertThat(place(fault)).isEqualTo(place);
        assertThat(fault.text()).contains("is set twice").endsWith("Set it once, or give one of the two another name.");
    }

    @ParameterizedTest
    @CsvSource({
        "order.spare-shar, Did you mean \"order.spare-share\"?",
        "press.hold, 'Those of press, the most alike first: press.floor,'",
        "shrinkage.limt, Did you mean \"shrinkage.limit\"?"
    })
    void anUnknownAssumptionNamesThoseOfItsFamily(String id, String said) {
        Fault fault = only("order.spare-share", id);
        assertThat(place(fault)).isEqualTo("studio.json/assumptions/1/id");
        assertThat(fault.text()).contains(said);
        String family = id.substring(0, id.indexOf('.') + 1);
        assertThat(fault.accepted())
                .allMatch(known -> known.startsWith(family))
                .hasSize((int) Assumptions.standard().ids().stream()
                                .filter(known -> known.startsWith(family))
                                .count()
                        + measuredOf(family));
    }

    /** Values measured in a studio that the table has no row of. */
    private static int measuredOf(String family) {
        return (int) DirectMeasurements.all().stream()
                .map(Assumption::id)
                .distinct()
                .filter(id ->
                        id.startsWith(family) && !Assumptions.standard().ids().contains(id))
                .count();
    }

    /** What only the planner finds out is told at the place of what it comes from. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
            "stockConsistency": "1.6 %" | "stockConsistency": "0.4 %" | papers/reed.json/vatConsistency | recipe.vat-thicker-than-stock | Want a thinner vat, or a stock above 0.4 %. See also /stockConsistency (papers/reed.json, line
            "vatConsistency": "0.4 %"   | "vatConsistency": "1.7 %"   | papers/reed.json/vatConsistency | recipe.vat-thicker-than-stock | the vat at 1.7 % is to be charged from stock at 1.6 %
            `, "kin": ["straw", "kraft"]` | ``                         | papers/reed.json/furnish/1/fibre | cook.no-yield | In a document write "kin": ["esparto"] beside its "id".
            "60 %", "form": "rag"       | "60 %", "form": "wet pulp"  | papers/reed.json/furnish/0/fibre | fibre.no-default | moisture as bought of cotton rag as wet pulp: no default: measure.
            """)
    void whatThePlannerRefusesIsToldAtItsPlace(String good, String slip, String place, String code, String said) {
        Fault fault = only(good, slip == null ? "" : slip);
        assertThat(place(fault)).isEqualTo(place);
        assertThat(fault.code()).isEqualTo(code);
        assertThat(fault.text()).contains(said);
    }

    @Test
    void aThicknessNoSheetHasStandsAtThePiece() {
        Fault fault =
                only("\"caliper\": \"0.4 mm\"", "\"caliper\": \"12 um\"", "\"reed\", \"value\"", "\"rush\", \"value\"");
        assertThat(place(fault)).isEqualTo("order.json/pieces/1/caliper");
        assertThat(fault.text()).contains("a thickness of 12 µm is ordered", "order a grammage");
    }

    @Test
    void aValueOfTheStudiosOwnStandsInTheStudio() {
        Fault fault = only(
                "\"vatConsistency\": \"0.4 %\",",
                "",
                "\"stockConsistency\": \"1.6 %\",",
                "",
                "\"beaterConsistency\": \"1.8 %\",",
                "",
                "{\"id\": \"order.spare-share\", \"value\": \"8 %\"}",
                "{\"id\": \"vat.consistency\", \"value\": \"5 %\"}");
        assertThat(place(fault)).isEqualTo("studio.json/assumptions/1");
        assertThat(fault.text()).contains("the vat at 5 %");
    }

    @Test
    void aBareNumberAbovePerCentIsNoPerCent() {
        assertThat(only("\"share\": \"60 %\"", "\"share\": \"6000\"").text())
                .endsWith("Check the unit and the decimal point.");
    }
}
