package org.papermath.colour;

import static java.util.Objects.requireNonNull;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/**
 * What each band of a reflectance adds to the three tristimulus values. The bands are read between by Sprague's rule, kept as
 * the first and the last are beyond 400 and 700 nm, and summed every 5 nm from 380 to 780 nm.
 *
 * @source colour matching functions: ISO/CIE 11664-1 (2°, 5 nm), daylight components: CIE 15, both read from open copies of
 *     the tables; Sprague's rule and the sum: CIE 167 and CIE 15, recalled, not looked up
 */
final class StandardObserver {
    private static final int FROM = 380;
    private static final int TO = 780;
    private static final int STEP = 5;
    private static final int POINTS = (TO - FROM) / STEP + 1;
    private static final double[][] TABLE = load();
    private static final Map<Wavebands, Map<Illuminant, double[][]>> WEIGHTS = weights();

    private StandardObserver() {}

    /** Three rows, one for each of X, Y and Z, by band. */
    static double[][] weights(Wavebands bands, Illuminant illuminant) {
        return requireNonNull(requireNonNull(WEIGHTS.get(bands)).get(illuminant));
    }

    private static Map<Wavebands, Map<Illuminant, double[][]>> weights() {
        Map<Wavebands, Map<Illuminant, double[][]>> all = new EnumMap<>(Wavebands.class);
        for (Wavebands bands : Wavebands.values()) {
            Map<Illuminant, double[][]> each = new EnumMap<>(Illuminant.class);
            for (Illuminant illuminant : Illuminant.values()) {
                each.put(illuminant, bands == Wavebands.THREE ? primaries(illuminant) : summed(bands, illuminant));
            }
            all.put(bands, each);
        }
        return all;
    }

    /** Of three primaries under D65; in another light the eye is used to it, and what the sheet does there is not known. */
    private static double[][] primaries(Illuminant illuminant) {
        double[][] rows =
                Matrix.adaptation(Illuminant.D65, illuminant).times(Matrix.WIDE).cells();
        for (double[] row : rows) {
            for (int band = 0; band < 3; band++) {
                row[band] *= 100;
            }
        }
        return rows;
    }

    private static double[][] summed(Wavebands bands, Illuminant illuminant) {
        double[] power = power(illuminant);
        double[][] rows = new double[3][bands.count()];
        double[] unit = new double[bands.count()];
        for (int band = 0; band < bands.count(); band++) {
            unit[band] = 1;
            for (int i = 0; i < POINTS; i++) {
                double at = (double) (FROM + STEP * i - 400) / bands.step();
                double share = between(unit, at) * power[i];
                for (int k = 0; k < 3; k++) {
                    rows[k][band] += share * TABLE[i][1 + k];
                }
            }
            unit[band] = 0;
        }
        Xyz white = illuminant.white();
        double[] whole = {white.x(), white.y(), white.z()};
        for (int k = 0; k < 3; k++) {
            double sum = 0;
            for (double weight : rows[k]) {
                sum += weight;
            }
            for (int band = 0; band < bands.count(); band++) {
                rows[k][band] *= whole[k] / sum;
            }
        }
        return rows;
    }

    /** A row of values read between two of them. */
    static double between(double[] values, double at) {
        int last = values.length - 1;
        if (at <= 0) {
            return values[0];
        }
        if (at >= last) {
            return values[last];
        }
        int i = Math.min((int) at, last - 1);
        double x = at - i;
        double a = padded(values, i - 2);
        double b = padded(values, i - 1);
        double c = values[i];
        double d = values[i + 1];
        double e = padded(values, i + 2);
        double f = padded(values, i + 3);
        double a1 = (2 * a - 16 * b + 16 * d - 2 * e) / 24;
        double a2 = (-a + 16 * b - 30 * c + 16 * d - e) / 24;
        double a3 = (-9 * a + 39 * b - 70 * c + 66 * d - 33 * e + 7 * f) / 24;
        double a4 = (13 * a - 64 * b + 126 * c - 124 * d + 61 * e - 12 * f) / 24;
        double a5 = (-5 * a + 25 * b - 50 * c + 50 * d - 25 * e + 5 * f) / 24;
        return ((((a5 * x + a4) * x + a3) * x + a2) * x + a1) * x + c;
    }

    private static double padded(double[] values, int i) {
        int last = values.length - 1;
        if (i >= 0 && i <= last) {
            return values[i];
        }
        int beyond = i < 0 ? -i : i - last;
        int step = i < 0 ? 1 : -1;
        int end = i < 0 ? 0 : last;
        int[] by = beyond == 1
                ? new int[] {508, -540, 488, -367, 144, -24}
                : new int[] {884, -1960, 3033, -2648, 1080, -180};
        double sum = 0;
        for (int k = 0; k < by.length; k++) {
            sum += by[k] * values[end + step * k];
        }
        return sum / 209;
    }

    private static double[] power(Illuminant illuminant) {
        double[] power = new double[POINTS];
        for (int i = 0; i < POINTS; i++) {
            power[i] = switch (illuminant) {
                case A -> filament(TABLE[i][0]);
                case D50 -> daylight(TABLE[i], 5003);
                case D65 -> daylight(TABLE[i], 6504);
            };
        }
        return power;
    }

    private static double filament(double nanometres) {
        double heat = 1.435e7 / 2848;
        return 100 * Math.pow(560 / nanometres, 5) * Math.expm1(heat / 560) / Math.expm1(heat / nanometres);
    }

    private static double daylight(double[] row, double kelvin) {
        double x = -4.6070e9 / (kelvin * kelvin * kelvin) + 2.9678e6 / (kelvin * kelvin) + 99.11 / kelvin + 0.244063;
        double y = -3 * x * x + 2.87 * x - 0.275;
        double whole = 0.0241 + 0.2562 * x - 0.7341 * y;
        double first = Math.rint(1000 * (-1.3515 - 1.7703 * x + 5.9114 * y) / whole) / 1000;
        double second = Math.rint(1000 * (0.0300 - 31.4424 * x + 30.0717 * y) / whole) / 1000;
        return row[4] + first * row[5] + second * row[6];
    }

    private static double[][] load() {
        try (InputStream stream = StandardObserver.class.getResourceAsStream("observer.csv")) {
            if (stream == null) {
                throw new IllegalStateException("the library is incomplete: observer.csv is missing");
            }
            List<String> lines = new String(stream.readAllBytes(), StandardCharsets.UTF_8)
                    .lines()
                    .toList();
            double[][] table = new double[POINTS][];
            for (int i = 0; i < POINTS; i++) {
                String[] cells = lines.get(i + 1).split(",", -1);
                table[i] = new double[cells.length];
                for (int k = 0; k < cells.length; k++) {
                    table[i][k] = Double.parseDouble(cells[k]);
                }
            }
            return table;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
