package org.papermath.numeric;

import static java.lang.Math.PI;
import static java.lang.Math.cos;
import static java.lang.Math.exp;
import static java.lang.Math.pow;
import static java.lang.Math.sin;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.papermath.testing.CheckValues;

/**
 * All certified sets of nonlinear regression, from both starts each. Scales are what the starts are, so the first starts are
 * sometimes a hundred scales away.
 */
class LeastSquaresCheckValuesTest {
    private static final String TABLE = "nist_nonlinear";
    /** Squares of 1e-25 of readings of one: what double arithmetic makes of each is a tenth of a per cent of its residual. */
    private static final Set<String> WITHOUT_RESIDUALS = Set.of("Lanczos1");
    /** Starts from which the search does not come to an end, and says so. */
    private static final Set<String> NOT_FOUND = Set.of("MGH10 from the first start");

    private interface Model {
        double at(double[] b, double x, double second);
    }

    private static final Model LANCZOS =
            (b, x, z) -> b[0] * exp(-b[1] * x) + b[2] * exp(-b[3] * x) + b[4] * exp(-b[5] * x);
    private static final Model GAUSS = (b, x, z) -> b[0] * exp(-b[1] * x)
            + b[2] * exp(-(x - b[3]) * (x - b[3]) / (b[4] * b[4]))
            + b[5] * exp(-(x - b[6]) * (x - b[6]) / (b[7] * b[7]));
    private static final Model CHWIRUT = (b, x, z) -> exp(-b[0] * x) / (b[1] + b[2] * x);
    private static final Model CUBIC =
            (b, x, z) -> (b[0] + x * (b[1] + x * (b[2] + x * b[3]))) / (1 + x * (b[4] + x * (b[5] + x * b[6])));
    private static final Model SATURATING = (b, x, z) -> b[0] * -Math.expm1(-b[1] * x);

    private static final Map<String, Model> MODELS = Map.ofEntries(
            Map.entry("Misra1a", SATURATING),
            Map.entry("Misra1b", (b, x, z) -> b[0] * (1 - pow(1 + b[1] * x / 2, -2))),
            Map.entry("Misra1c", (b, x, z) -> b[0] * (1 - pow(1 + 2 * b[1] * x, -0.5))),
            Map.entry("Misra1d", (b, x, z) -> b[0] * b[1] * x / (1 + b[1] * x)),
            Map.entry("Chwirut1", CHWIRUT),
            Map.entry("Chwirut2", CHWIRUT),
            Map.entry("Lanczos1", LANCZOS),
            Map.entry("Lanczos2", LANCZOS),
            Map.entry("Lanczos3", LANCZOS),
            Map.entry("Gauss1", GAUSS),
            Map.entry("Gauss2", GAUSS),
            Map.entry("Gauss3", GAUSS),
            Map.entry("DanWood", (b, x, z) -> b[0] * pow(x, b[1])),
            Map.entry("Kirby2", (b, x, z) -> (b[0] + x * (b[1] + x * b[2])) / (1 + x * (b[3] + x * b[4]))),
            Map.entry("Hahn1", CUBIC),
            Map.entry("Thurber", CUBIC),
            Map.entry("Nelson", (b, x, z) -> b[0] - b[1] * x * exp(-b[2] * z)),
            Map.entry("MGH09", (b, x, z) -> b[0] * (x * x + x * b[1]) / (x * x + x * b[2] + b[3])),
            Map.entry("MGH10", (b, x, z) -> b[0] * exp(b[1] / (x + b[2]))),
            Map.entry("MGH17", (b, x, z) -> b[0] + b[1] * exp(-x * b[3]) + b[2] * exp(-x * b[4])),
            Map.entry("Roszman1", (b, x, z) -> b[0] - b[1] * x - Math.atan(b[2] / (x - b[3])) / PI),
            Map.entry(
                    "ENSO",
                    (b, x, z) -> b[0]
                            + b[1] * cos(2 * PI * x / 12)
                            + b[2] * sin(2 * PI * x / 12)
                            + b[4] * cos(2 * PI * x / b[3])
                            + b[5] * sin(2 * PI * x / b[3])
                            + b[7] * cos(2 * PI * x / b[6])
                            + b[8] * sin(2 * PI * x / b[6])),
            Map.entry("Rat42", (b, x, z) -> b[0] / (1 + exp(b[1] - b[2] * x))),
            Map.entry("Rat43", (b, x, z) -> b[0] / pow(1 + exp(b[1] - b[2] * x), 1 / b[3])),
            Map.entry("BoxBOD", SATURATING),
            Map.entry("Eckerle4", (b, x, z) -> b[0] / b[1] * exp(-(x - b[2]) * (x - b[2]) / (2 * b[1] * b[1]))),
            Map.entry("Bennett5", (b, x, z) -> b[0] * pow(b[1] + x, -1 / b[2])));

    /** What was read of one set: y, x and where there is one the second x. */
    private static Map<String, List<double[]>> readings() {
        Map<String, List<double[]>> sets = new LinkedHashMap<>();
        try (InputStream in = LeastSquaresCheckValuesTest.class.getResourceAsStream("/nist/readings.csv")) {
            new String(Objects.requireNonNull(in).readAllBytes(), StandardCharsets.UTF_8)
                    .lines()
                    .filter(line -> !line.startsWith("#") && !line.startsWith("set,"))
                    .map(line -> line.split(",", -1))
                    .forEach(cells -> sets.computeIfAbsent(cells[0], set -> new ArrayList<>())
                            .add(new double[] {
                                Double.parseDouble(cells[1]),
                                Double.parseDouble(cells[2]),
                                cells[3].isEmpty() ? 0 : Double.parseDouble(cells[3])
                            }));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return sets;
    }

    private static LeastSquares.Residuals distances(String set, List<double[]> readings) {
        Model model = Objects.requireNonNull(MODELS.get(set), set);
        boolean logarithm = set.equals("Nelson");
        return at -> readings.stream()
                .mapToDouble(read -> model.at(at, read[1], read[2]) - (logarithm ? Math.log(read[0]) : read[0]))
                .toArray();
    }

    private static double[] column(List<CheckValues.Row> rows, String name) {
        return rows.stream().mapToDouble(row -> row.number(name)).toArray();
    }

    private static LeastSquares from(double[] start, LeastSquares.Residuals distances) {
        double[] scales = start.clone();
        for (int i = 0; i < scales.length; i++) {
            scales[i] = Math.abs(scales[i]);
        }
        return LeastSquares.of(start, scales, distances);
    }

    static Stream<Arguments> starts() {
        return CheckValues.read(TABLE).stream()
                .map(row -> row.text("set"))
                .distinct()
                .flatMap(set -> Stream.of(Arguments.of(set, "first"), Arguments.of(set, "second")));
    }

    @ParameterizedTest(name = "{0} from the {1} start")
    @MethodSource("starts")
    void certifiedValuesAreMet(String set, String start) {
        List<CheckValues.Row> rows = CheckValues.read(TABLE).stream()
                .filter(row -> row.text("set").equals(set))
                .toList();
        List<CheckValues.Row> parameters = rows.subList(0, rows.size() - 1);
        double squares = rows.get(rows.size() - 1).number("certified");
        List<double[]> readings = Objects.requireNonNull(readings().get(set), set);
        LeastSquares fit = from(column(parameters, start + " start"), distances(set, readings));
        boolean found = !NOT_FOUND.contains(set + " from the " + start + " start");
        assertThat(fit.isConverged()).isEqualTo(found);
        if (!found) {
            return;
        }
        boolean without = WITHOUT_RESIDUALS.contains(set);
        assertThat(fit.squares()).isCloseTo(squares, CheckValues.relative(squares, without ? 0.01 : 1e-9));
        double variance = fit.squares() / (readings.size() - parameters.size());
        for (int i = 0; i < parameters.size(); i++) {
            CheckValues.Row row = parameters.get(i);
            double certified = row.number("certified");
            assertThat(fit.parameters()[i])
                    .as(row.text("name"))
                    .isCloseTo(certified, CheckValues.relative(certified, 1e-7));
            double deviation = row.number("deviation");
            assertThat(Math.sqrt(fit.covariance(i, i) * variance))
                    .as("deviation of " + row.text("name"))
                    .isCloseTo(deviation, CheckValues.relative(deviation, without ? 0.01 : 1e-6));
        }
    }

    @Test
    void readingsAreCopiedWithoutASlip() {
        Map<String, List<double[]>> sets = readings();
        assertThat(sets).hasSize(27).containsOnlyKeys(MODELS.keySet());
        for (CheckValues.Row row : CheckValues.read(TABLE)) {
            String set = row.text("set");
            if (row.text("name").equals("squares") && !WITHOUT_RESIDUALS.contains(set)) {
                double[] certified = CheckValues.read(TABLE).stream()
                        .filter(one ->
                                one.text("set").equals(set) && !one.text("name").equals("squares"))
                        .mapToDouble(one -> one.number("certified"))
                        .toArray();
                double[] off = distances(set, Objects.requireNonNull(sets.get(set), set))
                        .at(certified);
                double squares = row.number("certified");
                assertThat(LeastSquares.sum(off)).as(set).isCloseTo(squares, CheckValues.relative(squares, 1e-9));
            }
        }
    }

    /** Where the first step goes too far, the rate becomes so large that it does nothing any more: flat, but no least. */
    @Test
    void flatGroundIsNoEnd() {
        List<double[]> readings = Objects.requireNonNull(readings().get("BoxBOD"));
        LeastSquares fit = LeastSquares.of(new double[] {170, 800}, new double[] {1, 1}, distances("BoxBOD", readings));
        assertThat(fit.parameters()[0]).isCloseTo(172.5, within(1e-6));
        assertThat(fit.squares()).isCloseTo(9771.5, within(1e-6));
        assertThat(fit.isConverged()).isFalse();
    }
}
