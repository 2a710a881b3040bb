package org.papermath.json;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.papermath.format.ReamBasis;
import org.papermath.json.kit.ObjectWriter;
import org.papermath.json.kit.ReadResult;
import org.papermath.json.kit.ValueWriter;
import org.papermath.quantity.Amounts;

class DocumentWriterTest {
    private static final DocumentFormat FORMAT = new DocumentFormat("odd", 1, 0);

    private static String written(java.util.function.Consumer<ObjectWriter> members) {
        return DocumentWriter.write(FORMAT, Document.of(""), (out, value) -> members.accept(out));
    }

    @Test
    void writesWhatItRead() {
        assertThat(Bench.write(Bench.reader().read(Bench.GOOD))).isEqualTo(Bench.GOOD);
    }

    @Test
    void writesTheMembersOfOthersWhereTheyStood() {
        String text = Bench.GOOD
                .replace(
                        "  \"format\"", "  \"x-first\": [\n    {\n      \"x-a\": 1\n    },\n    []\n  ],\n  \"format\"")
                .replace(
                        "      \"sheets\": 60",
                        "      \"x-mark\": \"é\",\n      \"x-mark2\": 2.50,\n      \"sheets\": 60")
                .replace("  \"load\"", "  \"x-before-load\": null,\n  \"load\"")
                .replace("\"large vat\"\n}", "\"large vat\",\n  \"x-last\": {}\n}");
        Document<Bench.Plan> document = Bench.reader().read(text);

        assertThat(document.keptMembers()).hasSize(5);
        assertThat(Bench.write(document)).isEqualTo(text);
        assertThat(Bench.write(document.with(document.value()))).isEqualTo(text);
        assertThat(Bench.write(Document.of(document.value()))).isEqualTo(Bench.GOOD);
    }

    @Test
    void keepsAMemberWhoseNeighbourIsGone() {
        Document<Bench.Plan> document =
                Bench.reader().read(Bench.GOOD.replace("\"favourite\"", "\"x-why\": \"calm\", \"favourite\""));
        Bench.Plan old = document.value();
        Bench.Plan plain = new Bench.Plan(
                old.title(),
                old.day(),
                old.wood(),
                old.slope(),
                old.indoors(),
                old.vats(),
                old.doses(),
                old.load(),
                old.shelf(),
                java.util.Optional.empty(),
                java.util.Optional.empty());

        assertThat(Bench.write(document.with(plain))).endsWith("  },\n  \"x-why\": \"calm\"\n}\n");
    }

    @Test
    void writesReferencesAsReferencesAndInFullOnRequest() {
        byte[] shelf = "{\"format\": \"papermath/shelf\", \"version\": \"1.0\", \"name\": \"s\", \"boards\": []}"
                .getBytes(java.nio.charset.StandardCharsets.UTF_8);
        String text = Bench.GOOD.replaceAll(
                "(?s)\"shelf\": \\{.*?\\}", "\"shelf\": {\n    \"x-why\": 1,\n    \"ref\": \"s.json\"\n  }");
        Document<Bench.Plan> document = Bench.reader()
                .following(reference -> new DocumentResolver.Found(reference, shelf, again -> {
                    throw new IllegalStateException(again);
                }))
                .read(text);

        assertThat(document.references()).containsExactly(org.assertj.core.api.Assertions.entry("/shelf", "s.json"));
        assertThat(document.value().shelf()).contains(new Bench.Shelf("s", List.of()));
        assertThat(Bench.write(document)).isEqualTo(text);
        assertThat(Bench.write(document.inlined()))
                .contains("\"name\": \"s\"")
                .contains("\"boards\": []")
                .doesNotContain("\"ref\"")
                .contains("x-why");
    }

    @Test
    void escapesWhatMustBe() {
        assertThat(written(out -> out.member("a\"b").text("\\ \u0001 \u2028 \uD83D\uDE00 \t")))
                .contains("\"a\\\"b\": \"\\\\ \\u0001 \\u2028 \uD83D\uDE00 \\t\"");
        assertThatThrownBy(() -> written(out -> out.member("a").text("\uD83D")))
                .isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void writesNumbersThatReadBack() {
        assertThat(written(out -> out.member("a").list(List.of(0.1, -0.0, 1e300, 5e-324, 12.0), ValueWriter::number)))
                .contains("\"a\": [0.1, 0, 1e300, 5e-324, 12]");
        assertThatThrownBy(() -> written(out -> out.member("a").number(Double.NaN)))
                .isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void writesLongListsOnLinesOfTheirOwn() {
        assertThat(written(out ->
                        out.member("a").list(IntStream.range(0, 60).boxed().toList(), (o, i) -> o.count(i))))
                .contains("\"a\": [\n    0,\n    1,\n")
                .contains("    59\n  ]\n}");
    }

    @Test
    void refusesAMappingThatWritesTwiceOrNothing() {
        assertThatThrownBy(() -> written(out -> {
                    out.member("a").count(1);
                    out.member("a").count(2);
                }))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> written(out -> {
                    ValueWriter a = out.member("a");
                    a.count(1);
                    a.count(2);
                }))
                .isInstanceOf(IllegalStateException.class);
        assertThatThrownBy(() -> written(out -> out.member("x-a").count(1)))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> written(out -> out.member("a").list(List.of(1), (o, i) -> {})))
                .isInstanceOf(IllegalStateException.class);
    }

    @Test
    void writesAndReadsTheBasisOfAReam() {
        for (ReamBasis basis : List.of(
                ReamBasis.COVER,
                ReamBasis.TEXT.withCount(480),
                ReamBasis.THOUSAND_SQUARE_FEET,
                ReamBasis.of(Amounts.mm(700), Amounts.mm(1000), 250),
                ReamBasis.of(Amounts.mm(333.3), Amounts.inches(7.1), 3))) {
            String text = DocumentWriter.write(
                    FORMAT, Document.of(basis), (out, b) -> out.member("basis").reamBasis(b));
            DocumentReader<ReamBasis> reader = DocumentReader.of(FORMAT, in -> {
                ReadResult<ReamBasis> got = in.required("basis").reamBasis();
                return in.make(got::get);
            });
            assertThat(reader.read(text).value()).isEqualTo(basis);
        }
        assertThat(DocumentWriter.write(
                        FORMAT,
                        Document.of(ReamBasis.COVER),
                        (out, b) -> out.member("basis").reamBasis(b)))
                .contains("\"sheet\": [\"20 in\", \"26 in\"]")
                .contains("\"name\": \"cover\"");
    }
}
