package org.papermath.json;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.junit.jupiter.api.Assertions.assertTimeout;

import java.time.Duration;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.papermath.quantity.Unclear;

class DocumentFaultsTest {
    private static List<Fault> order(String order, String recipe, String studio) {
        DocumentResolver files = Concert.files(Map.of("papers/reed.json", recipe, "studio.json", studio));
        DocumentException thrown =
                catchThrowableOfType(DocumentException.class, () -> PapermathDocuments.readOrder(order, files));
        assertThat(thrown).as("the document is refused").isNotNull();
        return thrown.faults();
    }

    private static String changed(String text, String from, String to) {
        assertThat(text).contains(from);
        return text.replace(from, to);
    }

    private static Fault only(List<Fault> faults) {
        assertThat(faults).hasSize(1);
        return faults.get(0);
    }

    private static Fault inOrder(String from, String to) {
        return only(order(changed(Concert.ORDER, from, to), Concert.RECIPE, Concert.STUDIO));
    }

    private static Fault inRecipe(String from, String to) {
        return only(order(Concert.ORDER, changed(Concert.RECIPE, from, to), Concert.STUDIO));
    }

    private static Fault inStudio(String from, String to) {
        return only(order(Concert.ORDER, Concert.RECIPE, changed(Concert.STUDIO, from, to)));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            "ISO A5"            | "ISO A55"         | /pieces/0/size         | format.unknown
            "ISO A5"            | "A6"              | /pieces/0/size         | format.unclear
            "130 g/m2"          | "130 lb"          | /pieces/0/grammage     | grammage.ream-unclear
            "130 g/m2"          | "1 g/m2"          | /pieces/0/grammage     | quantity.range
            "130 g/m2"          | 130               | /pieces/0/grammage     | quantity.no-unit
            "12 %"              | "120 %"           | /pieces/0/spare        | quantity.range
            "kept": 2           | "kept": -2        | /pieces/0/kept         | number.range
            "folds": 1          | "folds": 5        | /pieces/0/folds        | number.range
            "count": 70         | "count": 0        | /pieces/0/count        | number.range
            "4 mm"              | "400 mm"          | /pieces/0/trim         | quantity.range
            "3 mm"              | "1 m"             | /pieces/0/gap          | quantity.range
            "55 mm"             | "1 mm"            | /pieces/1/size/0       | quantity.range
            "0.4 mm"            | "0.4 m"           | /pieces/1/caliper      | quantity.range
            "deckle"            | "torn"            | /pieces/1/edge         | choice.unknown
            "6 mm"              | "6 m"             | /pieces/2/clearance    | quantity.range
            "inserts": 2        | "inserts": 51     | /pieces/2/inserts      | number.range
            "side seam"         | "side seem"       | /pieces/2/style        | choice.unknown
            "United States"     | "Atlantis"        | /pieces/2/mailedIn     | mail.country
            "1.3 g"             | "0 g"             | /pieces/3/sample/mass  | quantity.not-above-zero
            "65 %"              | "0.1 %"           | /weighedIn/humidity    | quantity.range
            2027-04-09          | 2027-04-31        | /due                   | date.none
            papers/reed.json    | papers/rush.json  | /recipes/0/ref         | reference.unreadable
            """)
    void aFaultInAnOrderStandsAtItsMember(String from, String to, String pointer, String code) {
        Fault fault = inOrder(from, to);
        assertThat(fault.document()).isEmpty();
        assertThat(List.of(fault.pointer(), fault.code())).containsExactly(pointer, code);
        assertThat(fault.text()).isNotBlank();
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            "cotton rag"      | "coton rag"       | /furnish/0/fibre               | fibre.unknown
            "cotton rag"      | "linter"          | /furnish/0/fibre               | fibre.unclear
            "60 %"            | "70 %"            | /furnish                       | furnish.sum
            "grass"           | "reed"            | /furnish/1/fibre/class         | choice.unknown
            "2.5 h"           | "250 h"           | /beating                       | quantity.range
            "31 SR"           | "99 SR"           | /drainability                  | quantity.range
            "filler"          | "filling"         | /additives/0/purpose           | choice.unknown
            "ochre"           | "china clay"      | /additives/1/name              | builder.twice
            "ochre"           | "ochre@home"      | /additives/1/name              | scope.name
            "4 %"             | "55 %"            | /additives/0/dose              | quantity.range
            "12 %"            | "0 %"             | /additives/4/active            | quantity.not-above-zero
            "1.8 %"           | "18 %"            | /beaterConsistency             | quantity.range
            "1.6 %"           | "26 %"            | /stockConsistency              | quantity.range
            "0.4 %"           | "4 %"             | /vatConsistency                | quantity.range
            "30 g/L"          | "300 g/L"         | /sizeBath                      | quantity.range
            "sizeBath"        | "sizebath"        | /sizebath                      | member.unknown
            """)
    void aFaultInARecipeStandsAtItsMemberThere(String from, String to, String pointer, String code) {
        Fault fault = inRecipe(from, to);
        assertThat(fault.document()).isEqualTo("papers/reed.json");
        assertThat(List.of(fault.pointer(), fault.code())).containsExactly(pointer, code);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            "45 L"              | "0 L"              | /beater/trough            | quantity.not-above-zero
            "24 Cel"            | "94 Cel"           | /vat/temperature          | quantity.range
            "name": "pair"      | "name": "half"     | /moulds/1/name            | builder.twice
            "12 mm"             | "400 mm"           | /moulds/1                 | deckle.strips
            "20 tonf_us"        | "20 ton"           | /press/jack               | unit.unclear
            "frame"             | "jack"             | /press/parts/0/name       | builder.twice
            "count": 25         | "count": 1         | /felts/count              | number.range
            "blotters", "name"  | "blotter", "name"  | /dryers/3/kind            | choice.unknown
            "name": "box"       | "name": "loft"     | /dryers/2/name            | builder.twice
            "capacity": 24      | "capacity": 0      | /dryers/0/capacity        | number.range
            "sheetsInSpur": 4   | "freeAirFlow": "1 m3/h" | /dryers/1            | member.missing
            "58 %"              | "580 %"            | /room/humidity            | quantity.range
            "98 kPa"            | "9 kPa"            | /room/pressure            | quantity.range
            "abaca"             | "Cotton Rag"       | /onHand/1/fibre           | builder.twice
            "5 g"               | "5 kg"             | /scaleStep                | quantity.range
            "0.01 g"            | "2 kg"             | /fineScaleStep            | quantity.range
            "50 mL"             | "50 L"             | /jugStep                  | quantity.range
            "7 h"               | "25 h"             | /workingDay               | quantity.range
            "2026-11"           | "1999-01"          | /edition                  | assumptions.edition
            "beating.rate"      | "beating.rat"      | /assumptions/0/id         | assumption.unknown
            "0.12 1/h"          | "0.12 kg"          | /assumptions/0/value      | assumption.unit
            "0.12 1/h"          | 0.2                | /assumptions/0            | assumption.order
            "unit": "1/h"       | "unit": "1/s"      | /assumptions/0/unit       | assumption.unit
            "measured here"     | "measured"         | /assumptions/0/basis      | choice.unknown
            0.38                | 38                 | /assumptions/2            | assumption.order
            """)
    void aFaultInAStudioStandsAtItsMemberThere(String from, String to, String pointer, String code) {
        List<Fault> faults = order(Concert.ORDER, Concert.RECIPE, changed(Concert.STUDIO, from, to));
        assertThat(faults).anySatisfy(fault -> {
            assertThat(fault.document()).isEqualTo("studio.json");
            assertThat(List.of(fault.pointer(), fault.code())).containsExactly(pointer, code);
        });
    }

    @Test
    void namesThatAreNotThereAreFaultsWhereTheyAreSaid() {
        List<Fault> faults = order(
                Concert.ORDER
                        .replace("\"count\": 96, \"recipe\": \"reed\"", "\"count\": 96, \"recipe\": \"read\"")
                        .replace("\"envelopeFor\": \"programme\"", "\"envelopeFor\": \"program\"")
                        .replace("\"dryer\": \"loft\"", "\"dryer\": \"lofts\""),
                Concert.RECIPE,
                Concert.STUDIO);
        assertThat(faults)
                .extracting(Fault::pointer)
                .containsExactly("/pieces/0/dryer", "/pieces/1/recipe", "/pieces/2/envelopeFor");
        assertThat(faults)
                .extracting(Fault::code)
                .containsExactly("piece.no-dryer", "order.no-recipe", "order.no-piece");
        assertThat(faults).extracting(Fault::nearest).containsExactly("loft", "reed", "programme");
        assertThat(faults.get(2).accepted()).containsExactly("programme", "seat card", "envelope", "poster");
    }

    @Test
    void anOutlineStandsInPlaceOfASizeAndOfAnOpening() {
        String round = "\"outline\": {\"round\": \"70 mm\"}";
        String size = "\"size\": [\"300 mm\", \"400 mm\"]";
        String opening = "\"opening\": [\"380 mm\", \"560 mm\"]";
        assertThat(saidOfOrder(size, round)).isEmpty();
        assertThat(saidOfOrder(size, size + ", " + round)).containsExactly("/pieces/3 member.one-of");
        assertThat(saidOfOrder(size, "\"outline\": {}")).containsExactly("/pieces/3/outline member.one-of");
        assertThat(saidOfOrder(size, "\"outline\": {\"round\": \"70 mm\", \"oval\": [\"70 mm\", \"50 mm\"]}"))
                .containsExactly("/pieces/3/outline member.one-of");
        assertThat(saidOfOrder(size, "\"outline\": {\"round\": \"3 mm\"}"))
                .containsExactly("/pieces/3/outline/round quantity.range");
        assertThat(saidOfOrder(size, round + ", \"edge\": \"shaped\"")).isEmpty();
        assertThat(saidOfOrder(size, round + ", \"edge\": \"cut\"")).containsExactly("/pieces/3/edge piece.clash");
        assertThat(saidOfOrder(size, size + ", \"edge\": \"shaped\"")).containsExactly("/pieces/3/edge piece.clash");
        assertThat(saidOfOrder("\"style\": \"side seam\"", "\"style\": \"side seam\", \"edge\": \"shaped\""))
                .isEmpty();
        assertThat(saidOfOrder("\"style\": \"side seam\"", "\"style\": \"side seam\", " + round))
                .containsExactly("/pieces/2/outline piece.clash");
        assertThat(saidOfStudio(opening, round)).isEmpty();
        assertThat(saidOfStudio(opening, opening + ", " + round)).containsExactly("/moulds/0 member.one-of");
    }

    private static List<String> saidOfOrder(String from, String to) {
        assertThat(Concert.ORDER).contains(from);
        return said(Judged.faults("order", Concert.ORDER.replace(from, to)));
    }

    private static List<String> saidOfStudio(String from, String to) {
        assertThat(Concert.STUDIO).contains(from);
        return said(Judged.faults("studio", Concert.STUDIO.replace(from, to)));
    }

    private static List<String> said(List<Fault> faults) {
        return faults.stream()
                .map(fault -> fault.pointer() + " " + fault.code())
                .toList();
    }

    @Test
    void aRecipeThatCannotBeReadIsNotMissedByThePieces() {
        Fault fault = inRecipe("\"name\": \"reed\"", "\"name\": 7");
        assertThat(fault.pointer()).isEqualTo("/name");
        Fault second = inStudio("\"press\": {", "\"press\": 3, \"x-old\": {");
        assertThat(second.pointer()).isEqualTo("/press");
    }

    @Test
    void clashesStandAtTheMemberToChange() {
        Fault size =
                inOrder("\"envelopeFor\": \"programme\",", "\"size\": \"ISO C6\", \"envelopeFor\": \"programme\",");
        assertThat(List.of(size.pointer(), size.code())).containsExactly("/pieces/2/size", "piece.clash");
        assertThat(size.text()).contains("takes its size from that piece");
        Fault folds = inOrder("\"inserts\": 2", "\"folds\": 1");
        assertThat(List.of(folds.pointer(), folds.code())).containsExactly("/pieces/2/folds", "piece.clash");
        Fault trim = inOrder("\"edge\": \"deckle\"", "\"edge\": \"deckle\", \"trim\": \"2 mm\"");
        assertThat(List.of(trim.pointer(), trim.code())).containsExactly("/pieces/1/trim", "piece.clash");
        Fault style = inOrder("\"edge\": \"deckle\"", "\"style\": \"wallet\"");
        assertThat(List.of(style.pointer(), style.code())).containsExactly("/pieces/1/style", "piece.clash");
    }

    @Test
    void anEnvelopeNeedsAStyleAndSomethingThatIsNoEnvelope() {
        Fault style = inOrder("\"style\": \"side seam\", ", "");
        assertThat(List.of(style.pointer(), style.code())).containsExactly("/pieces/2", FaultCodes.MISSING);
        Fault nested = inOrder("\"envelopeFor\": \"programme\"", "\"envelopeFor\": \"envelope\"");
        assertThat(List.of(nested.pointer(), nested.code()))
                .containsExactly("/pieces/2/envelopeFor", "order.envelope-in-envelope");
    }

    @Test
    void exactlyOneTargetIsWanted() {
        assertThat(inOrder("\"caliper\": \"0.4 mm\",", "").code()).isEqualTo(FaultCodes.ONE_OF);
        Fault both = inOrder("\"caliper\": \"0.4 mm\",", "\"caliper\": \"0.4 mm\", \"grammage\": \"200 g/m2\",");
        assertThat(both.pointer()).isEqualTo("/pieces/1");
        assertThat(both.found()).isEqualTo("grammage, caliper");
    }

    @Test
    void aDryerHasOnlyTheMembersOfItsKind() {
        Fault fault = inStudio("\"capacity\": 24", "\"capacity\": 24, \"sheetsInSpur\": 2");
        assertThat(List.of(fault.pointer(), fault.code()))
                .containsExactly("/dryers/0/sheetsInSpur", FaultCodes.UNKNOWN);
    }

    @Test
    void anAssumptionHasOneSubjectAndAWholeBand() {
        Fault subject = inStudio("\"fibre\": \"cotton rag\"", "\"fibre\": \"cotton rag\", \"subject\": \"reed\"");
        assertThat(List.of(subject.pointer(), subject.code())).containsExactly("/assumptions/0", FaultCodes.ONE_OF);
        Fault band = inStudio("\"low\": 0.1, ", "");
        assertThat(List.of(band.pointer(), band.code())).containsExactly("/assumptions/0", FaultCodes.MISSING);
    }

    @Test
    void whatIsUnclearKeepsItsCandidates() {
        Fault fault = inRecipe("\"cotton rag\"", "\"linter\"");
        assertThat(fault.candidates())
                .extracting(Unclear.Candidate::meaning)
                .contains("linter-second-cut", "linter-first-cut");
        assertThat(inRecipe("\"cotton rag\"", "\"coton rag\"").accepted()).contains("cotton-rag");
    }

    @Test
    void aMisspeltWordHasANearestOne() {
        assertThat(inOrder("\"United States\"", "\"united state\"").nearest()).isEqualTo("United States");
        assertThat(inStudio("2026-11", "2026-1").nearest()).isEqualTo("2026-11");
        assertThat(inOrder("\"ISO A5\"", "\"ISO A55\"").accepted()).contains("ISO A5");
        assertThat(inOrder("\"ISO A5\"", "\"ISO A55\"").nearest()).isEqualTo("ISO A5");
    }

    @Test
    void manyNamesAndManyFaultsStayQuick() {
        StringBuilder recipes = new StringBuilder();
        StringBuilder pieces = new StringBuilder();
        for (int i = 0; i < 1000; i++) {
            String name = "a name that is as long as names are looked at, number " + (1000 + i);
            recipes.append(i == 0 ? "" : ",")
                    .append("{\"name\": \"")
                    .append(name)
                    .append("\", \"furnish\": [{\"fibre\": \"abaca\", \"share\": \"100 %\"}]}");
            pieces.append(i == 0 ? "" : ",")
                    .append("{\"name\": \"")
                    .append(name)
                    .append("\", \"count\": 1, \"recipe\": \"")
                    .append(name.replace("looked", "look"))
                    .append("\", \"size\": \"ISO A5\", \"grammage\": \"100 g/m2\"}");
        }
        String text = "{\"format\": \"papermath/order\", \"version\": \"1.0\", \"name\": \"many\", \"recipes\": ["
                + recipes + "], \"studio\": {\"name\": \"s\"}, \"pieces\": [" + pieces + "]}";
        DocumentException thrown = assertTimeout(
                Duration.ofMinutes(2),
                () -> catchThrowableOfType(DocumentException.class, () -> PapermathDocuments.readOrder(text)));
        assertThat(thrown.faults()).hasSize(201).last().extracting(Fault::code).isEqualTo(FaultCodes.MORE);
        assertThat(thrown.faults().get(0).text()).contains("number 1000\"?", "and 980 more");
    }

    @Test
    void theSentencesSayWhatToDo() {
        assertThat(inOrder("\"side seam\"", "\"side seem\"").text())
                .isEqualTo("\"side seem\" is not one of the words"
                        + " for this. Did you mean \"side seam\"? Accepted: side seam, diamond, wallet, open end.");
        assertThat(inOrder("\"dryer\": \"loft\"", "\"dryer\": \"lofts\"").text())
                .isEqualTo(
                        "there is no dryer \"lofts\". Did you mean \"loft\"? There is: boards, loft, box, blotters.");
        assertThat(inRecipe("ochre", "china clay").text())
                .isEqualTo(
                        "the additive \"china clay\" is set twice. Set it once, or give one of the two another name.");
        assertThat(inStudio("beating.rate", "beating.rat").text())
                .startsWith(
                        "there is no assumption \"beating.rat\" in edition 2026-11. Did you mean \"beating.rate\"?");
        assertThat(inStudio("\"unit\": \"1/h\"", "\"unit\": \"1/s\"").text())
                .isEqualTo("the values of this assumption"
                        + " are in 1/h; 1/s is written. Write the unit with the value instead, such as \"1 1/s\".");
        assertThat(inStudio("\"low\": 0.1, ", "").text())
                .isEqualTo("\"low\" and \"high\" belong together. Write both or neither.");
    }

    @Test
    void aFaultHasALineAndAColumn() {
        Fault fault = inOrder("\"folds\": 1", "\"folds\": 9");
        String line = Concert.ORDER
                .replace("\"folds\": 1", "\"folds\": 9")
                .lines()
                .toList()
                .get(fault.line() - 1);
        assertThat(line.substring(fault.column() - 1)).startsWith("9");
    }

    @Test
    void allFaultsOfAllDocumentsAreReportedAtOnce() {
        List<Fault> faults = order(
                Concert.ORDER.replace("ISO A5", "ISO A55").replace("\"count\": 96", "\"count\": 0"),
                Concert.RECIPE.replace("2.5 h", "2.5 lb").replace("31 SR", "31"),
                Concert.STUDIO.replace("45 L", "45").replace("boards\", \"capacity\": 24", "boards\""));
        assertThat(faults)
                .extracting(Fault::document)
                .containsExactly("", "", "papers/reed.json", "papers/reed.json", "studio.json", "studio.json");
    }

    @Test
    void aSumOfDosesAboveTheFibreStandsAtTheAdditives() {
        Fault fault = only(order(
                Concert.ORDER,
                Concert.RECIPE.replace("\"4 %\"", "\"50 %\"").replace("\"3 %\"", "\"50 %\""),
                Concert.STUDIO));
        assertThat(List.of(fault.pointer(), fault.code())).containsExactly("/additives", "recipe.doses");
    }
}
