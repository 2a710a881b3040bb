package org.papermath.shape;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.papermath.quantity.Amounts.mm;
import static org.papermath.quantity.Amounts.percent;

import java.io.ByteArrayOutputStream;
import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.EnumSet;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.zip.DataFormatException;
import java.util.zip.Inflater;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.papermath.drawing.SvgDrawing;
import org.papermath.envelope.Envelope;
import org.papermath.envelope.EnvelopeAllowances;
import org.papermath.envelope.EnvelopeStyle;
import org.papermath.envelope.Line;

/** Drawings printed by a real browser and measured on the printed page. */
@Tag("browser")
class PrintedDrawingTest {
    private static final double POINT = 25.4 / 72;

    @TempDir
    Path folder;

    /** A stroked straight line on the page, in millimetres. */
    private record Stroke(double x1, double y1, double x2, double y2) {
        double length() {
            return Math.hypot(x2 - x1, y2 - y1);
        }
    }

    @Test
    void theBarMeasures100MillimetresOnPaper() throws Exception {
        String svg = SvgDrawing.of("harbour card", Outline.rectangle(mm(61.3), mm(29.7)))
                .svg();
        Path file = Files.writeString(folder.resolve("card.svg"), svg);
        List<Stroke> strokes = print(file);
        assertThat(strokes).anySatisfy(stroke -> {
            assertThat(stroke.length()).isCloseTo(100, within(0.01));
            assertThat(stroke.y1()).isCloseTo(stroke.y2(), within(1e-6));
        });
        assertMeasures(strokes, 61.3);
        assertMeasures(strokes, 29.7);
    }

    @ParameterizedTest
    @EnumSource(EnvelopeStyle.class)
    void blanksMeasureWhatTheyAreOnPaper(EnvelopeStyle style) throws Exception {
        EnvelopeAllowances allowances = EnvelopeAllowances.of(mm(6.35), mm(17), mm(12), percent(45), percent(60));
        Envelope envelope =
                Envelope.forCard(style, mm(170), mm(120), mm(0.45), allowances).ofPaper(mm(0.18));
        List<Stroke> strokes = print(page(SvgDrawing.of(style.words(), envelope).svg()));
        assertMeasures(strokes, 100);
        assertMeasures(strokes, envelope.blank().width().in("mm"));
        assertMeasures(strokes, envelope.blank().height().in("mm"));
        // Dashed lines come out dash by dash; the full ones are measured whole.
        for (Line line : envelope.lines()) {
            if (line.kind() == Line.Kind.CUT) {
                assertMeasures(
                        strokes,
                        Math.hypot(
                                line.to().across().in("mm")
                                        - line.from().across().in("mm"),
                                line.to().along().in("mm") - line.from().along().in("mm")));
            }
        }
    }

    @Test
    void aCuttingLayoutMeasuresWhatItIsOnPaper() throws Exception {
        CutLayout layout =
                CutLayout.best(mm(300), mm(420), mm(95), mm(135), mm(0), mm(0), EnumSet.allOf(CutLayout.Edge.class));
        List<Stroke> strokes = print(page(SvgDrawing.of("cards", layout).svg()));
        assertMeasures(strokes, 100);
        assertMeasures(strokes, 420);
        assertThat(strokes)
                .filteredOn(stroke -> Math.abs(stroke.length() - 135) < 0.01)
                .hasSizeGreaterThanOrEqualTo(18);
    }

    private static void assertMeasures(List<Stroke> strokes, double millimetres) {
        assertThat(strokes)
                .as("a line of " + millimetres + " mm")
                .anyMatch(stroke -> Math.abs(stroke.length() - millimetres) < 0.01);
    }

    /** A page as large as the drawing, so that nothing is cut off. */
    private Path page(String svg) throws IOException {
        String size = svg.replaceAll("(?s).*?<svg[^>]* width=\"([^\"]+)\" height=\"([^\"]+)\".*", "$1 $2");
        String html = "<!DOCTYPE html><style>@page{size:" + size + ";margin:0}body{margin:0}svg{display:block}</style>"
                + svg.substring(svg.indexOf("<svg"));
        return Files.writeString(folder.resolve("page.html"), html);
    }

    private List<Stroke> print(Path file) throws IOException, InterruptedException, DataFormatException {
        Path pdf = folder.resolve("page.pdf");
        Process process = new ProcessBuilder(
                        browser(),
                        "--headless",
                        "--no-sandbox",
                        "--disable-gpu",
                        "--no-pdf-header-footer",
                        "--user-data-dir=" + folder.resolve("profile"),
                        "--print-to-pdf=" + pdf,
                        file.toUri().toString())
                .redirectErrorStream(true)
                .redirectOutput(folder.resolve("log").toFile())
                .start();
        assertThat(process.waitFor(60, TimeUnit.SECONDS))
                .as("the browser came to an end")
                .isTrue();
        assertThat(pdf).as(Files.readString(folder.resolve("log"))).isNotEmptyFile();
        return strokes(Files.readAllBytes(pdf));
    }

    private static String browser() {
        String named = System.getProperty("papermath.browser", "");
        if (!named.isEmpty()) {
            return named;
        }
        for (String place : System.getenv("PATH").split(File.pathSeparator)) {
            for (String name : List.of("chromium", "chromium-browser", "google-chrome")) {
                Path file = Path.of(place, name);
                if (Files.isExecutable(file)) {
                    return file.toString();
                }
            }
        }
        throw new AssertionError("no Chromium on the path; name one with -Dpapermath.browser=...");
    }

    /** Reads the straight strokes of the content streams of a printed file. */
    private static List<Stroke> strokes(byte[] pdf) throws DataFormatException {
        String text = new String(pdf, StandardCharsets.ISO_8859_1);
        List<Stroke> strokes = new ArrayList<>();
        for (int at = text.indexOf("stream"); at >= 0; at = text.indexOf("stream", at + 6)) {
            if (text.startsWith("endstream", Math.max(0, at - 3))) {
                continue;
            }
            int from = at + 6;
            from += text.startsWith("\r\n", from) ? 2 : 1;
            int to = text.indexOf("endstream", from);
            String dictionary = text.substring(Math.max(0, text.lastIndexOf(" obj", at)), at);
            if (to > from && dictionary.contains("FlateDecode")) {
                String content = inflate(pdf, from, to);
                if (content.contains(" cm\n")) {
                    read(content, strokes);
                }
            }
        }
        return strokes;
    }

    private static String inflate(byte[] pdf, int from, int to) throws DataFormatException {
        Inflater inflater = new Inflater();
        inflater.setInput(pdf, from, to - from);
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        byte[] buffer = new byte[8192];
        while (!inflater.finished()) {
            int n = inflater.inflate(buffer);
            if (n == 0 && (inflater.needsInput() || inflater.needsDictionary())) {
                break;
            }
            out.write(buffer, 0, n);
        }
        inflater.end();
        return out.toString(StandardCharsets.ISO_8859_1);
    }

    private static void read(String content, List<Stroke> strokes) {
        Deque<double[]> saved = new ArrayDeque<>();
        double[] matrix = {1, 0, 0, 1, 0, 0};
        List<double[]> path = new ArrayList<>();
        List<Stroke> open = new ArrayList<>();
        List<Double> numbers = new ArrayList<>();
        for (String token : content.split("\\s+")) {
            if (token.matches("[-+]?[0-9]*\\.?[0-9]+|[-+]?[0-9]+\\.")) {
                numbers.add(Double.parseDouble(token));
                continue;
            }
            int n = numbers.size();
            switch (token) {
                case "q" -> saved.push(matrix);
                case "Q" -> matrix = saved.pop();
                case "cm" -> matrix = product(numbers.subList(n - 6, n), matrix);
                case "m" -> {
                    path.clear();
                    path.add(place(numbers.get(n - 2), numbers.get(n - 1), matrix));
                }
                case "l" -> {
                    double[] next = place(numbers.get(n - 2), numbers.get(n - 1), matrix);
                    open.add(stroke(path.get(path.size() - 1), next));
                    path.add(next);
                }
                case "h" -> open.add(stroke(path.get(path.size() - 1), path.get(0)));
                case "S" -> {
                    strokes.addAll(open);
                    open.clear();
                }
                case "n", "f" -> open.clear();
                default -> {
                    // text, colour and the like
                }
            }
            numbers.clear();
        }
    }

    private static double[] product(List<Double> m, double[] o) {
        return new double[] {
            m.get(0) * o[0] + m.get(1) * o[2],
            m.get(0) * o[1] + m.get(1) * o[3],
            m.get(2) * o[0] + m.get(3) * o[2],
            m.get(2) * o[1] + m.get(3) * o[3],
            m.get(4) * o[0] + m.get(5) * o[2] + o[4],
            m.get(4) * o[1] + m.get(5) * o[3] + o[5]
        };
    }

    private static double[] place(double x, double y, double[] m) {
        return new double[] {x * m[0] + y * m[2] + m[4], x * m[1] + y * m[3] + m[5]};
    }

    private static Stroke stroke(double[] from, double[] to) {
        return new Stroke(POINT * from[0], POINT * from[1], POINT * to[0], POINT * to[1]);
    }
}
