package org.papermath.quantity;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.File;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.net.URISyntaxException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.spi.ToolProvider;
import javax.measure.Quantity;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The compiler keeps the kinds apart, in the code of whoever uses the library. */
class WrongKindDoesNotCompileTest {
    private static final String FRAME = """
            import javax.measure.Quantity;
            import javax.measure.quantity.*;
            import org.papermath.quantity.*;
            import org.papermath.evidence.*;
            import org.papermath.format.*;
            import java.util.List;
            class Snippet {
                static void consistency(Quantity<Consistency> wanted) { }
                static void moistureRatio(Quantity<MoistureRatio> wanted) { }
                static void dose(Quantity<Dose> wanted) { }
                static void grammage(Quantity<Grammage> wanted) { }
                static void shrinkage(Quantity<LinearShrinkage> along, Quantity<LinearShrinkage> across) { }
                static void onSheet(Quantity<SheetPressure> wanted) { }
                static void freeness(Quantity<CanadianFreeness> wanted) { }
                static void mass(Quantity<Mass> wanted) { }
                void run() {
                    %s
                }
            }
            """;

    @TempDir
    private Path folder;

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "consistency(Consistency.percent(1.2));           | consistency(Moisture.percent(8));",
                "consistency(Consistency.percent(1.2));           | consistency(Amounts.percent(8));",
                "consistency(Consistency.percent(1.2));           | consistency(Solids.percent(8));",
                "moistureRatio(MoistureRatio.gramsPerGram(1.5));  | moistureRatio(Moisture.percent(60));",
                "dose(Dose.percent(3));                           | dose(Share.percent(3));",
                "dose(Dose.percent(3));                           | dose(3.0);",
                "grammage(Grammage.gsm(80));                      | grammage(Amounts.grams(80));",
                "grammage(ReamBasis.COVER.pounds(80));  | grammage(Amounts.pounds(80));",
                "shrinkage(LinearShrinkage.percent(8), LinearShrinkage.percent(6));"
                        + "| shrinkage(LinearShrinkage.percent(8), AreaShrinkage.percent(6));",
                "onSheet(SheetPressure.kilopascals(400));         | onSheet(GaugePressure.bar(4));",
                "onSheet(SheetPressure.kilopascals(400));         | onSheet(Amounts.kilopascals(400));",
                "freeness(CanadianFreeness.millilitres(450));     | freeness(Amounts.millilitres(450));",
                "freeness(CanadianFreeness.millilitres(450));     | freeness(SchopperRiegler.degrees(30));",
                "mass(Amounts.grams(5).add(Amounts.ounces(1)));   | mass(Amounts.grams(5).add(Amounts.litres(1)));",
                "mass(Amounts.grams(5).to(Units.POUND));          | mass(Amounts.grams(5).to(Units.INCH));",
                "boolean b = Amounts.mm(5).isEquivalentTo(Amounts.inches(1));"
                        + "| boolean b = Amounts.mm(5).isEquivalentTo(Amounts.grams(1));",
                "double d = Kinds.MASS.si(Amounts.grams(1), \"fibre\"); | double d = Kinds.MASS.si(Amounts.hours(1),"
                        + " \"fibre\");",
                "Amount<Dose> a = Kinds.DOSE.read(\"3 %\");       | Amount<Dose> a = Kinds.SHARE.read(\"3 %\");",
                "Object o = Reading.of(Amounts.grams(5), Amounts.grams(1)); | Object o = Reading.of(Amounts.grams(5),"
                        + " Amounts.mm(1));",
                "Object o = Estimate.of(Share.percent(2), Share.percent(1), Share.percent(3), List.of());"
                        + "| Estimate<Share> o = Estimate.of(Share.percent(2), Dose.percent(1), Share.percent(3), List.of());",
            })
    void theRightKindCompilesAndTheWrongOneDoesNot(String right, String wrong) throws IOException {
        assertThat(errors(right)).isEmpty();
        // The key of the compiler's message, which is the same in every language: types that do not fit, nothing else.
        assertThat(errors(wrong))
                .containsAnyOf("compiler.err.cant.apply.symbol", "compiler.err.prob.found.req")
                .contains("1 error");
    }

    private String errors(String statement) throws IOException {
        Path source = folder.resolve("Snippet.java");
        Files.writeString(source, FRAME.replace("%s", statement), StandardCharsets.UTF_8);
        ToolProvider compiler = ToolProvider.findFirst("javac").orElseThrow();
        StringWriter told = new StringWriter();
        PrintWriter writer = new PrintWriter(told);
        String classPath = place(Amount.class) + File.pathSeparator + place(Quantity.class);
        int code = compiler.run(
                writer,
                writer,
                "-proc:none",
                "-XDrawDiagnostics",
                "-encoding",
                "UTF-8",
                "-d",
                folder.toString(),
                "-classpath",
                classPath,
                source.toString());
        assertThat(code == 0).as(told.toString()).isEqualTo(told.toString().isEmpty());
        return told.toString();
    }

    private static Path place(Class<?> type) {
        try {
            return Path.of(
                    type.getProtectionDomain().getCodeSource().getLocation().toURI());
        } catch (URISyntaxException e) {
            throw new IllegalStateException(e);
        }
    }
}
