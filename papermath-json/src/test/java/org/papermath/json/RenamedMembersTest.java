package org.papermath.json;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.papermath.json.kit.ReadResult;

class RenamedMembersTest {
    private record Shelf(String name, List<Integer> boards) {}

    private static final DocumentFormat SHELF = new DocumentFormat(
            "shelf",
            1,
            2,
            List.of(
                    new Renamed("", "title", "name"), new Renamed("/planks/*", "wide", "width"),
                    new Renamed("", "boards", "planks"), new Renamed("/planks/*", "own", "note")));

    private static final DocumentReader<Shelf> READER = DocumentReader.of(SHELF, in -> {
        ReadResult<String> name = in.required("name").text();
        ReadResult<List<Integer>> planks = in.required("planks")
                .list(one -> one.object(plank -> {
                    ReadResult<Integer> width = plank.required("width").count(1, 1000);
                    return plank.make(width::get);
                }));
        return in.make(() -> new Shelf(name.get(), planks.get()));
    });

    private static String write(Document<Shelf> document) {
        return DocumentWriter.write(SHELF, document, (out, shelf) -> {
            out.member("name").text(shelf.name());
            out.member("planks")
                    .list(
                            shelf.boards(),
                            (item, wide) -> item.object(in -> in.member("width").count(wide)));
        });
    }

    private static final String OLD = """
            {"format": "papermath/shelf", "version": "1.0", "title": "left",
             "x-where": "wall",
             "boards": [{"wide": 30, "x-nails": 4}, {"width": 20}]}
            """;

    @Test
    void oldNamesAreReadNotedAndNeverWritten() {
        Document<Shelf> read = READER.read(OLD);
        assertThat(read.value()).isEqualTo(new Shelf("left", List.of(30, 20)));
        assertThat(read.notes())
                .extracting(Fault::toString)
                .containsExactly(
                        "line 1, column 49, /name: \"title\" is called \"name\" now. It was read as that.",
                        "line 3, column 2, /planks: \"boards\" is called \"planks\" now. It was read as that.",
                        "line 3, column 14, /planks/0/width: \"wide\" is called \"width\" now. It was read as that.");
        assertThat(read.notes()).allMatch(note -> note.code().equals(FaultCodes.RENAMED));
        String written = write(read);
        assertThat(written).doesNotContain("title", "boards", "wide").contains("\"version\": \"1.2\"");
        Document<Shelf> again = READER.read(written);
        assertThat(again.value()).isEqualTo(read.value());
        assertThat(again.keptMembers()).isEqualTo(read.keptMembers()).hasSize(2);
        assertThat(again.notes()).isEmpty();
    }

    @Test
    void bothNamesAtOnceAreTwice() {
        DocumentException twice = catchThrowableOfType(
                DocumentException.class,
                () -> READER.read(OLD.replace("\"title\": \"left\"", "\"title\": \"left\", \"name\": \"right\"")));
        assertThat(twice.faults()).extracting(Fault::code).containsExactly(FaultCodes.DUPLICATE);
    }

    @Test
    void faultsUnderAnOldNameStandWhereTheyAreWritten() {
        DocumentException fault =
                catchThrowableOfType(DocumentException.class, () -> READER.read(OLD.replace("30", "3.5")));
        assertThat(fault.faults())
                .extracting(Fault::toString)
                .containsExactly("line 3, column 22, /planks/0/width: 3.5 is written; must be a whole number.");
    }
}
