package org.papermath.json;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.tuple;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.papermath.json.kit.ObjectReader;
import org.papermath.json.kit.ReadResult;

class FolderResolverTest {
    private static final String SHELF = """
            {"format": "papermath/shelf", "version": "1.0",
             "name": "by the door",
             "boards": ["1 m"]}
            """;

    @TempDir
    Path place;

    private Path folder;

    @BeforeEach
    void makeFiles() throws IOException {
        folder = Files.createDirectories(place.resolve("bench"));
        Files.createDirectories(folder.resolve("parts"));
        Files.writeString(place.resolve("outside.json"), SHELF);
        Files.writeString(folder.resolve("shelf.json"), SHELF);
        Files.writeString(folder.resolve("parts/shelf.json"), SHELF);
    }

    private Path bench(String reference) throws IOException {
        return Files.writeString(
                folder.resolve("bench.json"),
                Bench.GOOD.replaceAll(
                        "(?s)\"shelf\": \\{.*?\\}",
                        "\"shelf\": {\"ref\": \"" + reference.replace("\\", "\\\\\\\\") + "\"}"));
    }

    private Fault fault(String reference) throws IOException {
        Path file = bench(reference);
        DocumentException thrown = catchThrowableOfType(
                DocumentException.class, () -> Bench.reader().read(file));
        assertThat(thrown).as("refused: " + reference).isNotNull();
        assertThat(thrown.faults()).hasSize(1);
        return thrown.faults().get(0);
    }

    @ParameterizedTest
    @CsvSource({"shelf.json", "./shelf.json", "parts/shelf.json", "parts/../shelf.json"})
    void followsAReferenceInsideTheFolder(String reference) throws IOException {
        Document<Bench.Plan> document = Bench.reader().read(bench(reference));

        assertThat(document.value().shelf().orElseThrow().name()).isEqualTo("by the door");
        assertThat(document.references()).containsEntry("/shelf", reference);
    }

    @ParameterizedTest
    @CsvSource({
        "../outside.json, reference.outside",
        "parts/../../outside.json, reference.outside",
        "/etc/hostname, reference.form",
        "..\\outside.json, reference.form",
        "C:/outside.json, reference.form",
        "file:shelf.json, reference.form",
        "\\\\server\\share, reference.form",
        "nothing.json, reference.missing",
        "shelf.json/more, reference.unreadable",
        "parts, reference.unreadable",
        "., reference.unreadable",
    })
    void refusesAnyOther(String reference, String code) throws IOException {
        Fault fault = fault(reference);

        assertThat(fault.code()).isEqualTo(code);
        assertThat(fault.pointer()).isEqualTo("/shelf/ref");
        assertThat(fault.line()).isEqualTo(27);
        assertThat(fault.text()).doesNotContain(place.toString());
    }

    @Test
    void refusesLinksThatLeadOut() throws IOException {
        Files.createSymbolicLink(folder.resolve("link.json"), place.resolve("outside.json"));
        Files.createSymbolicLink(folder.resolve("up"), place);
        Files.createSymbolicLink(folder.resolve("in.json"), folder.resolve("shelf.json"));

        assertThat(fault("link.json").code()).isEqualTo("reference.outside");
        assertThat(fault("up/outside.json").code()).isEqualTo("reference.outside");
        assertThat(Bench.reader().read(bench("in.json")).value().shelf()).isPresent();
    }

    @Test
    void reportsTheFaultsOfTheOtherDocumentUnderItsName() throws IOException {
        Files.writeString(
                folder.resolve("parts/shelf.json"), SHELF.replace("1 m", "1 kg").replace("\"name\"", "\"nome\""));
        Path file = bench("parts/shelf.json");
        Files.writeString(file, Files.readString(file).replace("lime", "plum"));

        DocumentException thrown = catchThrowableOfType(
                DocumentException.class, () -> Bench.reader().read(file));

        assertThat(thrown.faults())
                .extracting(Fault::document, Fault::code, Fault::line, Fault::column)
                .containsExactly(
                        tuple("bench.json", "choice.unknown", 6, 11),
                        tuple("parts/shelf.json", "member.unknown", 2, 2),
                        tuple("parts/shelf.json", "unit.unknown", 3, 13));
    }

    @Test
    void checksTheHeadOfTheOtherDocument() throws IOException {
        Files.writeString(folder.resolve("shelf.json"), SHELF.replace("papermath/shelf", "papermath/bench"));
        assertThat(fault("shelf.json").code()).isEqualTo("format.other");
        Files.writeString(folder.resolve("shelf.json"), "[1");
        assertThat(fault("shelf.json").code()).isEqualTo("document.syntax");
    }

    @Test
    void readsNothingElseBesideAReference() throws IOException {
        Path file = bench("shelf.json");
        Files.writeString(file, Files.readString(file).replace("\"shelf.json\"", "\"shelf.json\", \"name\": \"n\""));

        assertThat(catchThrowableOfType(
                                DocumentException.class, () -> Bench.reader().read(file))
                        .faults())
                .extracting(Fault::code)
                .containsExactly("member.unknown");
    }

    @Test
    void opensNothingWithoutAResolver() throws IOException {
        String text = Files.readString(bench("shelf.json"));

        assertThat(catchThrowableOfType(
                                DocumentException.class, () -> Bench.reader().read(text))
                        .faults())
                .extracting(Fault::code)
                .containsExactly("reference.not-followed");
    }

    @Test
    void stopsWhereReferencesLeadInCircles() throws IOException {
        DocumentFormat ring = new DocumentFormat("ring", 1, 0);
        Path file = folder.resolve("ring.json");
        Files.writeString(
                file,
                "{\"format\": \"papermath/ring\", \"version\": \"1.0\"," + " \"next\": {\"ref\": \"ring.json\"}}");

        DocumentException thrown = catchThrowableOfType(
                DocumentException.class,
                () -> DocumentReader.of(ring, in -> ring(ring, in)).read(file));

        assertThat(thrown.faults()).extracting(Fault::code).containsExactly("reference.depth");
    }

    private static ReadResult<String> ring(DocumentFormat format, ObjectReader in) {
        ReadResult<String> next = in.optional("next").reference(format, inner -> ring(format, inner));
        return in.make(() -> next.orElse("end"));
    }

    @Test
    void wantsAFolder() {
        assertThatThrownBy(() -> FolderResolver.of(folder.resolve("shelf.json")))
                .isInstanceOf(NoSuchFileException.class);
        assertThatThrownBy(() -> FolderResolver.of(place.resolve("no"))).isInstanceOf(NoSuchFileException.class);
    }
}
