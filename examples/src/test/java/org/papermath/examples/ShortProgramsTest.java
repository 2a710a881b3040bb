package org.papermath.examples;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.function.Consumer;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.papermath.colour.ColourDrawing;

/** What the short programs print stands in files, to be read whenever it changes, and what they save is what they print. */
class ShortProgramsTest {
    private static final String FOLDER = "examples/src/test/resources/programs/";

    private static void prints(String name, Consumer<PrintStream> program) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        program.accept(new PrintStream(out, true, StandardCharsets.UTF_8));
        String text = out.toString(StandardCharsets.UTF_8).replace("\r\n", "\n");
        Path file = Pages.file(FOLDER + name + ".txt");
        if (Boolean.getBoolean("answers.write")) {
            Files.writeString(file, text);
        }
        assertThat(text).as("write anew with -Danswers.write=true").isEqualTo(Files.readString(file));
    }

    @Test
    void aLadderBecomesARecipe() throws IOException {
        prints("LadderToRecipe", LadderToRecipe::print);
    }

    @Test
    void anOldSheetIsMatched() throws IOException {
        prints("MatchAnOldSheet", MatchAnOldSheet::print);
    }

    @Test
    void aGreyIsCorrectedTwice() throws IOException {
        prints("WarmGrey", WarmGrey::print);
    }

    @Test
    void weightsOfReams() throws IOException {
        prints("ReamsAndSheets", ReamsAndSheets::print);
    }

    @Test
    void aVatIsCorrectedByASheet() throws IOException {
        prints("CorrectTheVat", CorrectTheVat::print);
    }

    @Test
    void aRecordNarrowsThePlan() throws IOException {
        prints("LearnFromARecord", LearnFromARecord::print);
    }

    @Test
    void aRecordOfOnesOwnNarrowsThePlanToo() throws IOException {
        String sample = "examples/src/main/resources/org/papermath/examples/midwinter-concert/";
        String record = Pages.file(sample + "record.json").toString();
        String order = Pages.file(sample + "order.json").toString();
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        assertThat(learn(List.of(record, order), out, err)).isZero();
        assertThat(out.toString(StandardCharsets.UTF_8))
                .isEqualToNormalizingNewlines(Files.readString(Pages.file(FOLDER + "LearnFromARecord.txt")));
        assertThat(learn(List.of(record), out, err)).isEqualTo(2);
        assertThat(learn(List.of(order, order), out, err)).isEqualTo(2);
        assertThat(learn(List.of("none.json", order), out, err)).isEqualTo(2);
        assertThat(err.toString(StandardCharsets.UTF_8))
                .contains("usage: LearnFromARecord", "papermath/order", "cannot be opened");
    }

    private static int learn(List<String> args, ByteArrayOutputStream out, ByteArrayOutputStream err) {
        return LearnFromARecord.run(
                args,
                new PrintStream(out, true, StandardCharsets.UTF_8),
                new PrintStream(err, true, StandardCharsets.UTF_8));
    }

    @Test
    void theSamePaperAgain() throws IOException {
        prints("MakeItAgain", MakeItAgain::print);
    }

    @Test
    void aTableForASpreadsheet(@TempDir Path folder) throws IOException {
        prints("SweepToCsv", SweepToCsv::print);
        Path file = folder.resolve("beating.csv");
        SweepToCsv.main(new String[] {file.toString()});
        assertThat(file)
                .content(StandardCharsets.UTF_8)
                .isEqualTo(SweepToCsv.table().csv());
    }

    @Test
    void anOrderInCode() throws IOException {
        prints("Embed", Embed::print);
    }

    @Test
    void picturesAreSavedWhereTheyAreAskedFor(@TempDir Path folder) throws IOException {
        for (ColourDrawing picture :
                new ColourDrawing[] {LadderToRecipe.picture(), MatchAnOldSheet.picture(), WarmGrey.picture()}) {
            Path file = folder.resolve("picture.svg");
            Output.save(new String[] {file.toString()}, picture);
            assertThat(file).hasContent(picture.svg());
            Output.save(new String[0], picture);
            Files.delete(file);
        }
        assertThat(folder).isEmptyDirectory();
    }
}
