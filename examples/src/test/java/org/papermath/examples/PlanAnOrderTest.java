package org.papermath.examples;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.papermath.card.MakingCard;
import org.papermath.json.OrderDocument;
import org.papermath.json.PapermathDocuments;
import org.papermath.order.Order;
import org.papermath.order.Piece;
import org.papermath.plan.MakingPlan;

class PlanAnOrderTest {
    private final ByteArrayOutputStream out = new ByteArrayOutputStream();
    private final ByteArrayOutputStream err = new ByteArrayOutputStream();

    private int run(String... args) {
        return PlanAnOrder.run(
                List.of(args),
                new PrintStream(out, true, StandardCharsets.UTF_8),
                new PrintStream(err, true, StandardCharsets.UTF_8));
    }

    private String printed() {
        return out.toString(StandardCharsets.UTF_8);
    }

    private String complained() {
        return err.toString(StandardCharsets.UTF_8);
    }

    @Test
    void theSampleIsTheOrderBuiltInCode() throws IOException {
        OrderDocument sample = PlanAnOrder.sample().value();
        assertThat(sample.order()).isEqualTo(Embed.order());
        assertThat(sample.studio()).isEqualTo(Embed.studio());
    }

    @Test
    void withoutArgumentsTheSampleIsPlanned() {
        assertThat(run()).isZero();
        assertThat(printed())
                .isEqualTo(MakingCard.of(MakingPlan.of(Embed.order(), Embed.studio()))
                        .toString())
                .contains("midwinter concert");
        assertThat(complained()).isEmpty();
    }

    @Test
    void thePlanCanBeWrittenAsADocument() {
        assertThat(run("--json")).isZero();
        assertThat(printed()).startsWith("{\n  \"format\": \"papermath/plan\"").endsWith("}\n");
    }

    @Test
    void aFileIsPlannedWithTheFilesBesideIt(@TempDir Path folder) throws IOException {
        for (String name : List.of("order.json", "studio.json", "tide-grey.json")) {
            try (var in = PlanAnOrder.class.getResourceAsStream("midwinter-concert/" + name)) {
                Files.copy(in, folder.resolve(name));
            }
        }
        assertThat(run(folder.resolve("order.json").toString())).isZero();
        assertThat(printed()).contains("midwinter concert");
    }

    @Test
    void everyFaultIsPrintedWithItsPlace(@TempDir Path folder) throws IOException {
        String text = PapermathDocuments.writeOrder(PlanAnOrder.sample().inlined())
                .replace("\"130 g/m2\"", "130")
                .replace("\"side seam\"", "\"side sem\"")
                .replace("\"recipe\": \"tide grey\"", "\"recipe\": \"tide gray\"");
        Path file = Files.writeString(folder.resolve("concert.json"), text);
        assertThat(run(file.toString())).isEqualTo(PlanAnOrder.BAD_INPUT);
        assertThat(printed()).isEmpty();
        assertThat(complained())
                .contains(
                        "concert.json:",
                        "Accepted units: g/m2",
                        "Did you mean \"side seam\"?",
                        "Did you mean \"tide grey\"?",
                        "at: /pieces/0/grammage",
                        "\"side sem\" is not");
        // A recipe that nobody has is told at the first of the three pieces that name it.
        assertThat(complained().lines().filter(line -> line.startsWith("concert.json:")))
                .hasSize(3);
    }

    @Test
    void whatTheSentenceLeavesOutStandsBelowIt(@TempDir Path folder) throws IOException {
        String text = PapermathDocuments.writeOrder(PlanAnOrder.sample().inlined())
                .replace("\"ISO A5\"", "\"ISO A55\"")
                .replace("\"130 g/m2\"", "\"130 lb\"");
        Path file = Files.writeString(folder.resolve("concert.json"), text);
        assertThat(run(file.toString())).isEqualTo(PlanAnOrder.BAD_INPUT);
        assertThat(complained())
                .containsPattern("(?m)^concert\\.json:\\d+:\\d+: .*ISO A55")
                .contains("ISO A5", "It may mean: a ream of 500 sheets")
                .containsPattern("(?m)^    at: /pieces/0/size$");
    }

    @Test
    void whatCannotBePlannedOrOpenedIsSaidToo(@TempDir Path folder) throws IOException {
        String text = PapermathDocuments.writeOrder(PlanAnOrder.sample().inlined())
                .replace(
                        "\"beating\": \"3 h\",",
                        "\"beating\": \"3 h\", \"stockConsistency\": \"1 %\"," + " \"vatConsistency\": \"2 %\",");
        Path file = Files.writeString(folder.resolve("thick.json"), text);
        assertThat(run(file.toString())).isEqualTo(PlanAnOrder.BAD_INPUT);
        assertThat(complained())
                .containsPattern(
                        "^\\S*thick\\.json:\\d+:\\d+: recipe tide grey: the vat at 2 % is to be charged from stock at 1 %")
                .contains("at: /recipes/0/vatConsistency", "See also /recipes/0/stockConsistency (thick.json, line ");
        String[][] unopened = {
            {folder.resolve("none.json").toString(), "there is no such file."},
            {folder.resolve("none").resolve("order.json").toString(), "there is no such file."},
            {folder.toString(), "this is a folder. Give the order in it, such as "},
            {folder + "/a\0b.json", "this can be no path of a file."}
        };
        for (String[] one : unopened) {
            err.reset();
            assertThat(run(one[0])).as(one[0]).isEqualTo(PlanAnOrder.BAD_INPUT);
            assertThat(complained()).startsWith(one[0] + ": " + one[1]);
        }
    }

    @Test
    void theSampleIsSavedToBeginWith(@TempDir Path folder) throws IOException {
        Path mine = folder.resolve("mine");
        assertThat(run("--sample", mine.toString())).isZero();
        assertThat(printed())
                .contains("order.json, studio.json, tide-grey.json")
                .contains("mine");
        assertThat(run(mine.resolve("order.json").toString())).isZero();
        assertThat(printed()).contains("midwinter concert");

        Files.writeString(mine.resolve("studio.json"), "my own");
        Files.delete(mine.resolve("order.json"));
        assertThat(run("--sample", mine.toString())).isEqualTo(PlanAnOrder.BAD_INPUT);
        assertThat(complained()).contains("there is a studio.json already");
        assertThat(mine.resolve("studio.json")).hasContent("my own");
        assertThat(mine.resolve("order.json")).doesNotExist();

        assertThat(run("--sample")).isEqualTo(PlanAnOrder.BAD_INPUT);
        assertThat(run("--json", "--sample", mine.toString())).isEqualTo(PlanAnOrder.BAD_INPUT);
        assertThat(run("--sample", "\0")).isEqualTo(PlanAnOrder.BAD_INPUT);
        assertThat(complained()).contains("and nothing else", "cannot be saved there");
    }

    @Test
    void drawingsToCutAlongAreSavedInAFolder(@TempDir Path folder) throws IOException {
        Path drawings = folder.resolve("templates");
        assertThat(run("--drawings", drawings.toString())).isZero();
        assertThat(printed()).isEqualTo("""
                        programme-sheet.svg: 2 up on a dry sheet of 239.7 × 309.6 mm, from octavo
                        seat-card-sheet.svg: 10 up on a dry sheet of 239.7 × 309.6 mm, from octavo
                        envelope-sheet.svg: 1 up on a dry sheet of 239.7 × 309.6 mm, from octavo
                        envelope-blank.svg: the blank, 189 × 274.3 mm, with its folds
                        """);
        assertThat(complained()).contains("4 drawings are saved in " + drawings.toAbsolutePath());
        try (var saved = Files.list(drawings)) {
            assertThat(saved).hasSize(4);
        }
        // Two of ISO A5, side by side, as the plan counts them.
        assertThat(Files.readString(drawings.resolve("programme-sheet.svg")))
                .startsWith("<?xml")
                .contains("programme: 2 up", ">210<", ">148<");
        assertThat(Files.readString(drawings.resolve("envelope-blank.svg")))
                .contains("189 mm", "274.3 mm", "class=\"fold\"", "class=\"score\"");
    }

    @Test
    void piecesWithTheirRimAreDrawnInTheDeckleOfTheStudio(@TempDir Path folder) {
        Path order = Pages.file("examples/src/main/resources/org/papermath/examples/estuary-prints/order.json");
        assertThat(run("--drawings", folder.toString(), order.toString())).isZero();
        assertThat(printed())
                .contains(
                        "print-sheet.svg: with its rim, dry 360.4 × 500.6 mm, from the print moulds, opening 365 × 507 mm")
                .hasLineCount(3);
    }

    @Test
    void drawingsOfPiecesThatAreCalledAlmostAlikeAreKeptApart() {
        Piece card = Embed.order().pieces().get(1);
        Order.Builder order = Order.of("cards").recipe(Embed.order().recipes().get(0));
        for (String name : List.of("Card", "card!", "…", "лист")) {
            order.piece(Piece.of(name, 10, card.recipe())
                    .size(card.width().orElseThrow(), card.height().orElseThrow())
                    .grammage(card.grammage().orElseThrow())
                    .build());
        }
        assertThat(OrderDrawings.of(MakingPlan.withoutBands(order.build(), Embed.studio())))
                .extracting(OrderDrawings.Drawn::file)
                .containsExactly("card-sheet.svg", "card2-sheet.svg", "piece-sheet.svg", "лист-sheet.svg");
    }

    @Test
    void drawingsThatCannotBeSavedAreSaid(@TempDir Path folder) throws IOException {
        Path file = Files.writeString(folder.resolve("taken"), "one");
        String[][] told = {
            {file.toString(), "this is a file"},
            {folder.resolve("none").resolve("templates").toString(), "there is no folder"},
            {"\0", "cannot be saved"},
        };
        for (String[] one : told) {
            assertThat(run("--drawings", one[0])).isEqualTo(PlanAnOrder.BAD_INPUT);
            assertThat(complained()).contains(one[1]);
        }
        assertThat(run("--drawings")).isEqualTo(PlanAnOrder.BAD_INPUT);
        assertThat(complained()).contains("the name of a folder must follow");
        assertThat(printed()).isEmpty();
        try (var left = Files.list(folder)) {
            assertThat(left).containsExactly(file);
        }
    }

    @Test
    void theCardOrThePlanIsSavedInAFile(@TempDir Path folder) throws IOException {
        Path card = folder.resolve("card of the concert.txt");
        assertThat(run("--out", card.toString())).isZero();
        assertThat(Files.readString(card))
                .isEqualTo(MakingCard.of(MakingPlan.of(Embed.order(), Embed.studio()))
                        .toString());
        assertThat(complained()).isEqualToIgnoringNewLines("The making card is saved in " + card + ".");

        Path plan = Files.writeString(folder.resolve("plan.json"), "an old one");
        err.reset();
        assertThat(run("--json", "--out", plan.toString())).isZero();
        assertThat(PapermathDocuments.readPlan(plan).value().moved()).isEmpty();
        assertThat(Files.readString(plan)).startsWith("{").endsWith("}\n");
        assertThat(complained()).isEqualToIgnoringNewLines("The plan is saved in " + plan + ".");
        assertThat(printed()).isEmpty();
        assertThat(folder).isDirectoryContaining(file -> file.equals(card)).isDirectoryNotContaining("glob:**.part");
    }

    @Test
    void whatCannotBeSavedIsSaid(@TempDir Path folder) throws IOException {
        Path order = Files.writeString(
                folder.resolve("order.json"),
                PapermathDocuments.writeOrder(PlanAnOrder.sample().inlined()));
        String[][] cases = {
            {folder.toString(), "this is a folder"},
            {folder.resolve("none").resolve("plan.json").toString(), "there is no folder"},
            {order.resolve("plan.json").toString(), "there is no folder"},
            {order.toString(), "this is the order itself"},
            {folder.resolve("n".repeat(400)).toString(), "cannot be written"},
            {folder + "/a\0b", "cannot be written"}
        };
        for (String[] one : cases) {
            err.reset();
            assertThat(run("--out", one[0], order.toString())).as(one[0]).isEqualTo(PlanAnOrder.BAD_INPUT);
            assertThat(complained()).startsWith(one[0] + ": ").contains(one[1], "Nothing was saved.");
        }
        assertThat(printed()).isEmpty();
        try (var files = Files.list(folder)) {
            assertThat(files).containsExactly(order);
        }
        assertThat(run(order.toString())).isZero();
    }

    @Test
    void anOrderWithFaultsLeavesTheOldFile(@TempDir Path folder) throws IOException {
        Path order = Files.writeString(folder.resolve("order.json"), "{}");
        Path plan = Files.writeString(folder.resolve("plan.json"), "an old one");
        assertThat(run(order.toString(), "--out", plan.toString())).isEqualTo(PlanAnOrder.BAD_INPUT);
        assertThat(Files.readString(plan)).isEqualTo("an old one");
    }

    @Test
    void argumentsThatCannotBeFollowedAreRefusedWithTheUsage() {
        String[][] cases = {
            {"--what: there is no such option.", "--what"},
            {"-json: there is no such option.", "-json"},
            {"--out: the name of a file must follow", "--out"},
            {"--out: the name of a file must follow", "--out", "--json"},
            {"--out is set twice", "--out", "a", "--out", "b"},
            {"The path of the order is empty", ""},
            {"Two orders are given, my and order.json", "my", "order.json"}
        };
        for (String[] one : cases) {
            err.reset();
            assertThat(run(List.of(one).subList(1, one.length).toArray(String[]::new)))
                    .as(one[0])
                    .isEqualTo(PlanAnOrder.BAD_INPUT);
            assertThat(complained())
                    .startsWith(one[0])
                    .contains(
                            "usage: PlanAnOrder [--json | --page | --days | --calendar | --picture | --drawings DIR] [--out FILE] [order.json]",
                            "-Dexec.args=--out 'my plan.txt' 'my order.json'");
        }
        assertThat(printed()).isEmpty();
    }

    /** Maven would put the end of a colour behind what the program prints, and a redirected plan were no JSON. */
    @Test
    void mavenIsToldToAddNothingToThePlan() throws IOException {
        assertThat(Files.readString(Pages.file(".mvn/jvm.config")).split("\\s+"))
                .contains("-Djansi.noreset=true");
    }

    @Test
    void daysAndCalendarAreGivenToo() {
        ByteArrayOutputStream days = new ByteArrayOutputStream();
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        java.time.Instant early = java.time.Instant.parse("2026-11-02T12:00:00Z");
        assertThat(PlanAnOrder.run(List.of("--days"), stream(days), stream(err), early))
                .isZero();
        assertThat(days.toString(StandardCharsets.UTF_8)).contains("beat tide grey 1/3", "Start for the night:");
        ByteArrayOutputStream calendar = new ByteArrayOutputStream();
        assertThat(PlanAnOrder.run(List.of("--calendar"), stream(calendar), stream(err), early))
                .isZero();
        assertThat(calendar.toString(StandardCharsets.UTF_8))
                .startsWith("BEGIN:VCALENDAR\r\n")
                .contains("DTSTAMP:20261102T120000Z")
                .endsWith("END:VCALENDAR\r\n");
        ByteArrayOutputStream page = new ByteArrayOutputStream();
        assertThat(PlanAnOrder.run(List.of("--page"), stream(page), stream(err), early))
                .isZero();
        assertThat(page.toString(StandardCharsets.UTF_8))
                .startsWith("<!DOCTYPE html>")
                .contains("<h1>midwinter concert", "Write down");
        ByteArrayOutputStream picture = new ByteArrayOutputStream();
        assertThat(PlanAnOrder.run(List.of("--picture"), stream(picture), stream(err), early))
                .isZero();
        assertThat(picture.toString(StandardCharsets.UTF_8))
                .startsWith("<?xml")
                .contains("<title>Days of ", "beat tide grey 1/3")
                .endsWith("</svg>\n");
        assertThat(err.toString(StandardCharsets.UTF_8)).isEmpty();
        assertThat(PlanAnOrder.run(List.of("--days", "--json"), stream(calendar), stream(err), early))
                .isEqualTo(PlanAnOrder.BAD_INPUT);
        assertThat(err.toString(StandardCharsets.UTF_8))
                .contains("only one of --json, --page, --days, --calendar, --picture and --drawings");
    }

    @Test
    void aDateThatCannotBeMetIsSaid() {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        java.time.Instant late = java.time.Instant.parse("2027-01-18T12:00:00Z");
        assertThat(PlanAnOrder.run(List.of(), stream(out), stream(err), late)).isZero();
        assertThat(err.toString(StandardCharsets.UTF_8))
                .startsWith("The order cannot be done by 2027-01-22: begun on 2027-01-18 it is done on 2027-02");
    }

    private static PrintStream stream(ByteArrayOutputStream to) {
        return new PrintStream(to, true, StandardCharsets.UTF_8);
    }
}
