package org.papermath.json;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.tuple;
import static org.junit.jupiter.api.Assertions.assertTimeout;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.List;
import java.util.Locale;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.papermath.format.ReamBasis;
import org.papermath.json.kit.ReadResult;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Amounts;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Unclear;

class DocumentReaderTest {
    private static List<Fault> faults(String text) {
        return faults(text.getBytes(StandardCharsets.UTF_8));
    }

    private static List<Fault> faults(byte[] bytes) {
        DocumentException thrown = catchThrowableOfType(
                DocumentException.class, () -> Bench.reader().read(bytes));
        assertThat(thrown).as("the document is refused").isNotNull();
        return thrown.faults();
    }

    private static Fault fault(String text) {
        List<Fault> all = faults(text);
        assertThat(all).hasSize(1);
        return all.get(0);
    }

    private static Fault changed(String from, String to) {
        assertThat(Bench.GOOD).contains(from);
        return fault(Bench.GOOD.replace(from, to));
    }

    private static Bench.Plan read(UnaryOperator<String> change) {
        return Bench.reader().read(change.apply(Bench.GOOD)).value();
    }

    @Test
    void readsEveryMember() {
        Bench.Plan plan = read(text -> text);

        assertThat(plan.title()).isEqualTo("Morning set-up");
        assertThat(plan.day()).isEqualTo("2026-03-02");
        assertThat(plan.wood()).isEqualTo(Bench.Wood.LIME);
        assertThat(plan.slope()).isEqualTo(0.25);
        assertThat(plan.indoors()).isFalse();
        assertThat(plan.vats()).hasSize(2);
        assertThat(plan.vats().get(0).grammage()).contains(Grammage.gsm(260));
        assertThat(plan.vats().get(1).volume()).isEqualTo(Amounts.usGallons(22.5));
        assertThat(plan.vats().get(1).grammage()).isEmpty();
        assertThat(plan.doses()).containsOnlyKeys("chalk", "size");
        assertThat(plan.load()).contains(Amounts.kilograms(81.5));
        assertThat(plan.shelf().orElseThrow().boards()).containsExactly(Amounts.metres(1.2), Amounts.inches(48));
        assertThat(plan.note()).contains("wax the edge\nand wipe it");
    }

    @Test
    void reportsManyFaultsInOneRunAtTheirPlaces() {
        String text = """
                {
                  "format": "papermath/bench",
                  "version": "1.0",
                  "day": "2026-02-30",
                  "wood": "limme",
                  "slope": 1.5,
                  "indoors": "yes",
                  "slope": 0.5,
                  "vats": [
                    {"name": "a", "volume": "40 gal", "sheets": 2.5, "colour": "red"},
                    {"name": "b", "volume": 40, "sheets": 1e400, "grammage": "260 mm"},
                    {"name": "", "volume": "-3 L", "sheets": 0,
                     "grammage": {"weight": "80 lb", "sheet": ["20 in", "26 in"]}},
                    {"name": "leaky", "volume": "1 L", "sheets": 1}
                  ],
                  "doses": {"chalk": "400 %", "size": {"value": 3, "unit": "kg"}},
                  "load": "0 kg",
                  "shelf": {"name": "s", "boards": ["1,2 m", null]},
                  "favorite": "small vat",
                  "favourite": "smal vat"
                }
                """;

        List<Fault> faults = faults(text);

        assertThat(faults)
                .extracting(Fault::code, Fault::pointer, Fault::line, Fault::column)
                .containsExactly(
                        tuple("member.missing", "", 1, 1),
                        tuple("date.none", "/day", 4, 10),
                        tuple("choice.unknown", "/wood", 5, 11),
                        tuple("number.range", "/slope", 6, 12),
                        tuple("value.type", "/indoors", 7, 14),
                        tuple("member.duplicate", "/slope", 8, 3),
                        tuple("unit.unclear", "/vats/0/volume", 10, 29),
                        tuple("number.not-whole", "/vats/0/sheets", 10, 49),
                        tuple("member.unknown", "/vats/0/colour", 10, 54),
                        tuple("quantity.no-unit", "/vats/1/volume", 11, 29),
                        tuple("number.range", "/vats/1/sheets", 11, 43),
                        tuple("unit.unknown", "/vats/1/grammage", 11, 62),
                        tuple("text.blank", "/vats/2/name", 12, 14),
                        tuple("quantity.range", "/vats/2/volume", 12, 28),
                        tuple("number.range", "/vats/2/sheets", 12, 46),
                        tuple("ream.count-missing", "/vats/2/grammage", 13, 18),
                        tuple("vat.leaky", "/vats/3", 14, 5),
                        tuple("quantity.range", "/doses/chalk", 16, 22),
                        tuple("unit.unknown", "/doses/size/unit", 16, 60),
                        tuple("quantity.not-above-zero", "/load", 17, 11),
                        tuple("quantity.unreadable-number", "/shelf/boards/0", 18, 37),
                        tuple("value.type", "/shelf/boards/1", 18, 46),
                        tuple("member.unknown", "/favorite", 19, 3),
                        tuple("name.unknown", "/favourite", 20, 16));
    }

    @Test
    void namesWhatIsMissing() {
        Fault fault = changed("  \"title\": \"Morning set-up\",\n", "");

        assertThat(fault.accepted()).containsExactly("title");
        assertThat(fault.text()).contains("\"title\" is missing");
    }

    @Test
    void namesTheNearestMemberAndTheNearestWord() {
        Fault member = changed("\"title\"", "\"titel\": \"t\", \"title\"");
        assertThat(member.code()).isEqualTo(FaultCodes.UNKNOWN);
        assertThat(member.nearest()).isEqualTo("title");
        assertThat(member.found()).isEqualTo("titel");
        assertThat(member.accepted()).contains("title", "vats", "format");

        Fault word = changed("\"lime\"", "\"Oka\"");
        assertThat(word.nearest()).isEqualTo("oak");
        assertThat(word.accepted()).containsExactly("beech", "lime", "oak");

        Fault name = changed("\"favourite\": \"large vat\"", "\"favourite\": \"lagre-vat\"");
        assertThat(name.nearest()).isEqualTo("large vat");

        Fault far = changed("\"lime\"", "\"polycarbonate\"");
        assertThat(far.nearest()).isEmpty();
    }

    @Test
    void keepsTheCodeCandidatesAndTextOfARefusal() {
        Fault fault = changed("\"40 L\"", "\"40 gal\"");

        assertThat(fault.code()).isEqualTo("unit.unclear");
        assertThat(fault.candidates()).extracting(Unclear.Candidate::meaning).containsExactly("gal_us", "gal_uk");
        assertThat(fault.text()).contains("two different units");
        assertThat(fault.found()).isEqualTo("gal");

        Fault range = changed("\"260 g/m2\"", "\"26000 g/m2\"");
        assertThat(range.code()).isEqualTo("quantity.range");
        assertThat(range.text()).contains("must be above").contains("20000");
        assertThat(range.arguments()).containsKey("most");

        Fault unit = changed("\"260 g/m2\"", "\"260 g/m\"");
        assertThat(unit.accepted()).containsExactlyElementsOf(Kinds.GRAMMAGE.codes());
        assertThat(unit.nearest()).isEqualTo("g/m2");
    }

    @Test
    void namesTheLimitsForThoseWhoWordMessagesThemselves() {
        assertThat(changed("\"sheets\": 25", "\"sheets\": 501").arguments())
                .containsEntry("least", 1)
                .containsEntry("most", 500)
                .containsEntry("found", "501");
        assertThat(faults(Bench.GOOD.replaceAll("(?s)\"vats\": \\[.*?\\],\n  \"doses\"", "\"vats\": [], \"doses\"")))
                .singleElement()
                .satisfies(fault -> {
                    assertThat(fault.code()).isEqualTo("list.length");
                    assertThat(fault.arguments()).containsEntry("least", 1).containsEntry("most", 10);
                });
    }

    @Test
    void readsBothFormsOfAQuantity() {
        Bench.Plan plan = read(text -> text.replace("\"260 g/m2\"", "{\"unit\": \"g/m2\", \"value\": 2.6e2}"));

        assertThat(plan.vats().get(0).grammage()).contains(Grammage.gsm(260));
    }

    @Test
    void refusesTooMuchInsideAQuantity() {
        assertThat(changed("\"260 g/m2\"", "{\"unit\": \"g/m2\", \"value\": 260, \"x-by\": \"scale\"}")
                        .code())
                .isEqualTo("member.unknown");
        assertThat(changed("\"260 g/m2\"", "{\"unit\": \"g/m2\", \"values\": 260, \"value\": 260}")
                        .nearest())
                .isEqualTo("value");
        assertThat(changed("\"260 g/m2\"", "{\"unit\": \"g/m2\", \"value\": \"260\"}")
                        .code())
                .isEqualTo("value.type");
        assertThat(changed("\"260 g/m2\"", "{\"unit\": \"g/m2\", \"value\": 1e400}")
                        .code())
                .isEqualTo("number.unreadable");
    }

    @Test
    void readsAReamWeight() {
        Bench.Plan plan = read(text -> text.replace(
                "\"260 g/m2\"", "{\"weight\": \"80 lb\", \"sheet\": [\"20 in\", \"26 in\"], \"count\": 500}"));

        Amount<Grammage> grammage = plan.vats().get(0).grammage().orElseThrow();
        assertThat(grammage.isWithin(ReamBasis.COVER.pounds(80), 1e-12)).isTrue();
        // 80 lb x 453.59237 g / (500 x 0.508 m x 0.6604 m)
        assertThat(grammage.in("g/m2")).isCloseTo(216.33, org.assertj.core.api.Assertions.within(0.01));
    }

    @Test
    void asksForTheCountOfAReamWithWhatEachWouldGive() {
        Fault fault = changed("\"260 g/m2\"", "{\"weight\": \"80 lb\", \"sheet\": [\"20 in\", \"26 in\"]}");

        assertThat(fault.code()).isEqualTo("ream.count-missing");
        assertThat(fault.candidates())
                .hasSizeGreaterThan(2)
                .anySatisfy(one -> assertThat(one.toString()).contains("500").contains("216.3"))
                .anySatisfy(one -> assertThat(one.toString()).contains("480").contains("225.3"));
    }

    @Test
    void takesAReamOnlyForAGrammage() {
        assertThat(faults(Bench.GOOD.replace("\"40 L\"", "{\"weight\": \"80 lb\", \"sheet\": [], \"count\": 500}")))
                .extracting(Fault::code)
                .containsExactly(
                        "member.missing", "member.missing", "member.unknown", "member.unknown", "member.unknown");
        assertThat(changed(
                                "\"260 g/m2\"",
                                "{\"weight\": \"80 lb\", \"sheet\": [\"20 in\", \"0 in\"]," + " \"count\": 500}")
                        .pointer())
                .isEqualTo("/vats/0/grammage/sheet/1");
    }

    @Test
    void readsTheSameInEveryLocale() {
        Locale before = Locale.getDefault();
        try {
            for (String tag : List.of("de-DE", "fr-FR", "ar-EG", "tr-TR")) {
                Locale.setDefault(Locale.forLanguageTag(tag));
                Document<Bench.Plan> document = Bench.reader().read(Bench.GOOD);
                assertThat(document.value().load()).contains(Amounts.kilograms(81.5));
                assertThat(Bench.write(document)).isEqualTo(Bench.GOOD);
            }
        } finally {
            Locale.setDefault(before);
        }
    }

    @Test
    void checksTheHead() {
        assertThat(read(text -> text.replace("\"1.2\"", "\"1.0\"")).title()).isEqualTo("Morning set-up");

        Fault newer = changed("\"1.2\"", "\"1.3\"");
        assertThat(newer.code()).isEqualTo("version.other");
        assertThat(newer.text()).contains("1.3").contains("1.2");
        assertThat(newer.line()).isEqualTo(3);
        assertThat(changed("\"1.2\"", "\"2.0\"").code()).isEqualTo("version.other");
        assertThat(changed("\"1.2\"", "\"0.9\"").code()).isEqualTo("version.other");
        assertThat(changed("\"1.2\"", "1.2").code()).isEqualTo("value.type");
        assertThat(changed("\"1.2\"", "\"1\"").code()).isEqualTo("version.unreadable");
        assertThat(changed("\"1.2\"", "\"1.٢\"").code()).isEqualTo("version.unreadable");
        assertThat(changed("\"1.2\"", "\"1.99999999999999\"").code()).isEqualTo("version.unreadable");
        Fault other = changed("papermath/bench", "papermath/shelf");
        assertThat(other.code()).isEqualTo("format.other");
        assertThat(other.accepted()).containsExactly("papermath/bench");
        assertThat(faults("{}"))
                .extracting(Fault::code)
                .containsOnly("member.missing")
                .hasSize(6);
        assertThat(fault("[]").code()).isEqualTo("value.type");
    }

    @Test
    void keepsTheMembersOfOthers() {
        Document<Bench.Plan> document = Bench.reader()
                .read(Bench.GOOD
                        .replace("\"title\"", "\"x-by\": {\"x-in\": [1, 2.50, null]}, \"title\"")
                        .replace("\"sheets\": 60", "\"x-mark\": \"\\u00e9\", \"sheets\": 60"));

        assertThat(document.keptMembers())
                .containsExactly(
                        org.assertj.core.api.Assertions.entry("/x-by", "{\"x-in\": [1, 2.50, null]}"),
                        org.assertj.core.api.Assertions.entry("/vats/1/x-mark", "\"é\""));
    }

    static Stream<Arguments> brokenTexts() {
        return Stream.of(
                Arguments.of("{ \"a\": 1, }", 11, "comma"),
                Arguments.of("{ \"a\": NaN }", 8, "finite"),
                Arguments.of("{ \"a\": -Infinity }", 8, "finite"),
                Arguments.of("{ \"a\": +1 }", 8, "number is written"),
                Arguments.of("{ \"a\": .5 }", 8, "number is written"),
                Arguments.of("{ \"a\": 01 }", 8, "number is written"),
                Arguments.of("{ \"a\": 1.}", 8, "number is written"),
                Arguments.of("{ \"a\": -}", 8, "number is written"),
                Arguments.of("{ 'a': 1 }", 3, "quotation"),
                Arguments.of("{ // no", 3, "Comments"),
                Arguments.of("{ a: 1 }", 3, "quotation"),
                Arguments.of("{ \"a\" 1 }", 7, "colon"),
                Arguments.of("{ \"a\": 1 \"b\": 2 }", 10, "comma"),
                Arguments.of("{ \"a\": [1, 2}", 13, "opened last"),
                Arguments.of("{ \"a\": }", 8, "value is missing"),
                Arguments.of("{ \"a\": [,] }", 9, "value is missing"),
                Arguments.of("{ \"a\": tru }", 8, "true, false"),
                Arguments.of("{ \"a\": \"\\q\" }", 9, "backslash"),
                Arguments.of("{ \"a\": [1, 2", 13, "too early"),
                Arguments.of("{ \"a\": \"b", 10, "too early"),
                Arguments.of("{ \"a\": \"b\t\" }", 10, "line break"));
    }

    @ParameterizedTest
    @MethodSource("brokenTexts")
    void saysWhereTheGrammarBreaks(String text, int column, String advice) {
        Fault fault = fault("\r\n" + text);

        assertThat(fault.code()).isEqualTo("document.syntax");
        assertThat(fault.line()).isEqualTo(2);
        assertThat(fault.column()).isEqualTo(column);
        assertThat(fault.text()).contains(advice);
    }

    @Test
    void refusesWhatIsNoDocument() {
        assertThat(fault("").code()).isEqualTo("document.empty");
        assertThat(fault(" \n ").code()).isEqualTo("document.empty");
        assertThat(fault("\uFEFF").code()).isEqualTo("document.empty");
        assertThat(fault("null").code()).isEqualTo("value.type");
        assertThat(fault("12").code()).isEqualTo("value.type");
        Fault trailing = fault(Bench.GOOD + "\n{}");
        assertThat(trailing.code()).isEqualTo("document.trailing");
        assertThat(trailing.line()).isEqualTo(Bench.GOOD.lines().count() + 2);
        assertThat(trailing.column()).isEqualTo(1);
    }

    @Test
    void takesAByteOrderMarkAndCountsFromBehindIt() {
        assertThat(read(text -> "\uFEFF" + text).title()).isEqualTo("Morning set-up");
        assertThat(fault("\uFEFF[]").column()).isEqualTo(1);
        assertThat(faults("\uFEFF[\"\u7D19\"]  x"))
                .filteredOn(fault -> fault.code().equals("document.trailing"))
                .extracting(Fault::column)
                .containsExactly(8);
        Fault second = fault("\uFEFF\uFEFF" + Bench.GOOD);
        assertThat(second.code()).isEqualTo("document.syntax");
        assertThat(second.column()).isEqualTo(1);
    }

    @ParameterizedTest
    @ValueSource(strings = {"UTF-16BE", "UTF-16LE", "UTF-32BE", "UTF-32LE"})
    void readsNoOtherEncodingThatOnlyLooksLikeUtf8(String encoding) {
        byte[] bytes = Bench.GOOD.getBytes(Charset.forName(encoding));
        assertThat(faults(bytes)).extracting(Fault::code).containsExactly("document.syntax");
    }

    @Test
    void passesOverNoSignThatIsNotThere() {
        assertThat(fault(Bench.GOOD.replace("Morning", "Mor\0ning")).code()).isEqualTo("document.syntax");
        assertThat(read(text -> text.replace("Morning", "Mor\uFFFDning")).title())
                .isEqualTo("Mor\uFFFDning set-up");
    }

    @Test
    void refusesBytesThatAreNotUtf8() {
        byte[] good = Bench.GOOD.replace("Morning", "M\u00e9rning").getBytes(StandardCharsets.UTF_8);
        assertThat(Bench.reader().read(good).value().title()).isEqualTo("M\u00e9rning set-up");

        Fault latin = faults(Bench.GOOD.replace("Morning", "M\u00e9rning").getBytes(StandardCharsets.ISO_8859_1))
                .get(0);
        assertThat(latin.code()).isEqualTo("document.encoding");
        assertThat(latin.line()).isEqualTo(4);
        assertThat(latin.column()).isEqualTo(14);
        assertThat(latin.text()).contains("byte e9");
        assertThat(faults(Bench.GOOD.getBytes(StandardCharsets.UTF_16)).get(0).text())
                .contains("UTF-16");
        assertThat(faults(new byte[] {(byte) 0xED, (byte) 0xA0, (byte) 0x80})
                        .get(0)
                        .code())
                .isEqualTo("document.encoding");
        assertThat(faults(new byte[] {'"', (byte) 0xC3}).get(0).code()).isEqualTo("document.encoding");
        assertThat(faults(new byte[] {'{', (byte) 0xC0, (byte) 0xAF, '}'})
                        .get(0)
                        .code())
                .isEqualTo("document.encoding");
    }

    @Test
    void refusesHalvesOfCharactersAndControlCharacters() {
        assertThat(changed("Morning", "\\ud83d").code()).isEqualTo("text.character");
        assertThat(changed("Morning", "\\ude00\\ud83d").code()).isEqualTo("text.character");
        assertThat(read(text -> text.replace("Morning", "\\ud83d\\ude00")).title())
                .startsWith("\uD83D\uDE00");
        assertThat(changed("Morning", "\\u001b[31m").code()).isEqualTo("text.character");
        assertThat(changed("wax the edge", "\\u0000").code()).isEqualTo("text.character");
        assertThat(changed("\"81.5 kg\"", "\"81.5 kg\\u0007\"").text()).doesNotContain("\u0007");
        assertThat(changed("\"title\"", "\"x-\\ud83d\": 1, \"title\"").code()).isEqualTo("text.character");
    }

    @Test
    void holdsItsLimits() {
        assertThat(fault("[".repeat(100_000)).code()).isEqualTo("document.depth");
        assertThat(fault("{\"a\":".repeat(100_000)).code()).isEqualTo("document.depth");
        assertThat(faults(Bench.GOOD.replace(
                        "\"title\"", "\"x-deep\": " + "[".repeat(63) + "]".repeat(63) + ", \"titel\"")))
                .extracting(Fault::code)
                .doesNotContain("document.depth");
        assertThat(fault("{\"a\": \"" + "b".repeat(200_000) + "\"}").code()).isEqualTo("document.limit");
        assertThat(fault("{\"" + "b".repeat(2000) + "\": 1}").code()).isEqualTo("document.limit");
        assertThat(fault("{\"a\": " + "9".repeat(50_000) + "}").code()).isEqualTo("document.limit");
        assertThat(changed("0.25", "0." + "1".repeat(200)).code()).isEqualTo("number.unreadable");
        assertThat(changed("0.25", "1e400").code()).isEqualTo("number.unreadable");
        assertThat(changed("0.25", "1e-400").code()).isEqualTo("number.unreadable");
        assertThat(changed("\"sheets\": 25", "\"sheets\": 1e999999999").code()).isEqualTo("number.range");
        assertThat(changed("\"sheets\": 25", "\"sheets\": 1e99999999999").code())
                .isEqualTo("number.unreadable");
        assertThat(changed("\"sheets\": 25", "\"sheets\": 1e-999999999").code()).isEqualTo("number.not-whole");
        assertThat(changed("\"81.5 kg\"", "\"1e400 kg\"").code()).isEqualTo("number.unreadable");
        assertThat(changed("\"81.5 kg\"", "\"1e-400 kg\"").code()).isEqualTo("number.unreadable");
        assertThat(read(text -> text.replace("\"40 L\"", "\"+0.0e5 m3\""))
                        .vats()
                        .get(0)
                        .volume()
                        .si())
                .isZero();
        assertThat(changed("\"81.5 kg\"", "\"NaN kg\"").code()).isEqualTo("quantity.unreadable-number");
        assertThat(changed("\"81.5 kg\"", "\"" + "1".repeat(5000) + " kg\"").code())
                .isEqualTo("text.long");
        assertThat(changed("Morning", "m".repeat(300)).code()).isEqualTo("text.long");
        byte[] large = " ".repeat(DocumentReader.MOST_BYTES + 1).getBytes(StandardCharsets.UTF_8);
        assertThat(faults(large)).extracting(Fault::code).containsExactly("document.size");
    }

    @Test
    void readsWholeNumbersHoweverTheyAreWritten() {
        assertThat(read(text -> text.replace("\"sheets\": 25", "\"sheets\": 2.50e1"))
                        .vats()
                        .get(0)
                        .sheets())
                .isEqualTo(25);
        assertThat(changed("\"sheets\": 25", "\"sheets\": 25.0000000000000000000000001")
                        .code())
                .isEqualTo("number.not-whole");
    }

    @Test
    void stopsListingAtSomePoint() {
        List<Fault> faults = faults("{" + "\"a\": 1, ".repeat(5000) + "\"a\": 1}");

        assertThat(faults).hasSize(201);
        assertThat(faults.get(200).code()).isEqualTo("document.more-faults");
    }

    @Test
    void staysQuickOnLargeDocumentsMadeToHurt() {
        StringBuilder text = new StringBuilder("{");
        for (int i = 0; i < 180_000; i++) {
            text.append("\"x-").append(i).append("\": 1, \"tittle").append(i).append("\": 1, ");
        }
        String hostile = text.append("\"x\": 1}").toString();

        List<Fault> faults = assertTimeout(Duration.ofMinutes(2), () -> faults(hostile));

        assertThat(faults).hasSize(201);
    }

    @Test
    void listsAllFaultsInTheMessage() {
        DocumentException thrown = catchThrowableOfType(
                DocumentException.class,
                () -> Bench.reader()
                        .read(
                                Bench.GOOD
                                        .replace("lime", "plum")
                                        .replace("0.25", "7")
                                        .getBytes(StandardCharsets.UTF_8),
                                "bench.json"));

        assertThat(thrown.getMessage().lines()).hasSize(3);
        assertThat(thrown.getMessage())
                .startsWith("2 faults\n  bench.json, line 6, column 11, /wood: ")
                .contains("\n  bench.json, line 7, column 12, /slope: 7 is written; it must be from 0 to 1.");
    }

    @Test
    void asksForExactlyOneOfSeveralMembers() {
        DocumentFormat format = new DocumentFormat("either", 1, 0);
        DocumentReader<String> reader = DocumentReader.of(format, in -> {
            in.exactlyOne("a", "b");
            ReadResult<String> a = in.optional("a").text();
            ReadResult<String> b = in.optional("b").text();
            return in.make(() -> a.isGiven() ? a.get() : b.get());
        });
        String head = "{\"format\": \"papermath/either\", \"version\": \"1.0\"";

        assertThat(reader.read(head + ", \"b\": \"two\"}").value()).isEqualTo("two");
        assertThat(catchThrowableOfType(DocumentException.class, () -> reader.read(head + "}"))
                        .faults()
                        .get(0)
                        .text())
                .contains("none is written");
        assertThat(catchThrowableOfType(
                                DocumentException.class, () -> reader.read(head + ", \"a\": \"1\", \"b\": \"2\"}"))
                        .faults()
                        .get(0)
                        .found())
                .isEqualTo("a, b");
    }

    @Test
    void pointsWithEscapes() {
        assertThat(changed("\"chalk\": \"4 %\"", "\"a/b~c\": \"4 kg\"").pointer())
                .isEqualTo("/doses/a~1b~0c");
    }

    @Test
    void publishesTheCodesASchemaCannotSee() {
        assertThat(FaultCodes.seenByTheReaderOnly())
                .doesNotHaveDuplicates()
                .contains("member.duplicate", "reference.outside")
                .doesNotContain("member.missing", "value.type");
    }
}
