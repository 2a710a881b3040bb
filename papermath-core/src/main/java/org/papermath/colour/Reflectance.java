package org.papermath.colour;

import java.util.Arrays;
import java.util.Objects;
import java.util.function.DoubleUnaryOperator;
import org.papermath.quantity.Refused;

/**
 * What share of the light a sheet sends back, band by band, of so many sheets in a pile that nothing shines through unless
 * said otherwise. Above 0 and at most 1; a brightened paper that sends back more than falls on it in the blue is refused.
 * Immutable.
 *
 * <p>What an eye sees of it is told to the observer of 2° (ISO/CIE 11664-1); see {@link Wavebands} for what the bands are.
 */
public final class Reflectance {
    private final Wavebands bands;
    private final double[] values;

    private Reflectance(Wavebands bands, double[] values) {
        this.bands = bands;
        this.values = values;
    }

    /**
     * Gives a reflectance as a spectrophotometer reads it, at even steps over at least 400 to 700 nm. Steps of 10 nm or
     * finer are kept every 10 nm, others every 20 nm; what lies outside is left out.
     *
     * @param from wavelength of the first value, nm
     * @param step from each to the next, nm: 1, 2, 5, 10 or 20
     * @param values the values, each above 0 and at most 1
     * @return the reflectance
     * @throws Refused if the values do not reach over 400 to 700 nm, do not meet every 10 or 20 nm, or are out of range
     */
    public static Reflectance of(int from, int step, double... values) {
        Objects.requireNonNull(values, "values");
        Wavebands bands = step <= 10 ? Wavebands.THIRTY_ONE : Wavebands.SIXTEEN;
        int to = from + step * (values.length - 1);
        boolean even = step > 0 && bands.step() % step == 0 && Math.floorMod(400 - from, step) == 0;
        if (!even || from > 400 || to < 700) {
            throw Refused.of(
                    "colour.bands",
                    "reflectance: " + values.length + " values from " + from + " nm by " + step
                            + " nm do not tell every 10 or 20 nm from 400 to 700 nm; give, for example, 31 values from"
                            + " 400 by 10.",
                    "count",
                    values.length,
                    "from",
                    from,
                    "step",
                    step);
        }
        double[] kept = new double[bands.count()];
        for (int i = 0; i < kept.length; i++) {
            kept[i] = values[(400 - from) / step + i * bands.step() / step];
        }
        return checked(bands, kept);
    }

    /**
     * Gives a reflectance in the bands named.
     *
     * @param bands which bands
     * @param values a value for each, above 0 and at most 1
     * @return the reflectance
     * @throws Refused if there are more or fewer values than bands, or a value is out of range
     */
    public static Reflectance of(Wavebands bands, double... values) {
        Objects.requireNonNull(bands, "bands");
        Objects.requireNonNull(values, "values");
        if (values.length != bands.count()) {
            throw Refused.of(
                    "colour.band-count",
                    "reflectance: " + values.length + " values for " + bands.count() + " bands.",
                    "given",
                    values.length,
                    "wanted",
                    bands.count());
        }
        return checked(bands, values.clone());
    }

    /**
     * Takes a colour for a reflectance in three bands, where no more is known of it.
     *
     * @param colour as a colorimeter or a photograph gives it
     * @return the reflectance in {@link Wavebands#THREE}
     * @throws Refused if no surface of this kind has such a colour
     */
    public static Reflectance ofColour(Xyz colour) {
        Objects.requireNonNull(colour, "colour");
        Xyz day = colour.adaptedTo(Illuminant.D65);
        double[] light = Matrix.TO_WIDE.times(day.x() / 100, day.y() / 100, day.z() / 100);
        for (double part : light) {
            if (!(part > 0 && part <= 1 + 1e-9)) {
                throw Refused.of(
                        "colour.beyond-bands",
                        "colour: " + colour.lab()
                                + " is too strong or too bright to be told in three bands; read it with"
                                + " a spectrophotometer, or check the reading.",
                        "colour",
                        colour.lab().toString());
            }
        }
        return new Reflectance(Wavebands.THREE, new double[] {
            Math.min(1, light[0]), Math.min(1, light[1]), Math.min(1, light[2]),
        });
    }

    private static Reflectance checked(Wavebands bands, double[] values) {
        for (double value : values) {
            if (!(value > 0 && value <= 1)) {
                throw Refused.of(
                        "colour.reflectance",
                        "reflectance: " + (Double.isFinite(value) ? ColourRange.said(value, 4) : "not a number")
                                + " is not above 0 and at most 1; write shares, not per cent, and read without the"
                                + " ultraviolet if the paper is brightened.",
                        "given",
                        value);
            }
        }
        return new Reflectance(bands, values);
    }

    /** Values that a law made, which are shares already. */
    static Reflectance unchecked(Wavebands bands, double[] values) {
        return new Reflectance(bands, values);
    }

    Reflectance each(DoubleUnaryOperator law) {
        double[] changed = new double[values.length];
        Arrays.setAll(changed, i -> law.applyAsDouble(values[i]));
        return new Reflectance(bands, changed);
    }

    double[] values() {
        return values;
    }

    /**
     * Returns the bands.
     *
     * @return which they are
     */
    public Wavebands bands() {
        return bands;
    }

    /**
     * Returns the value of a band.
     *
     * @param band from 0 for the shortest wavelength; of three bands 0 is red, 1 green, 2 blue
     * @return the share sent back
     * @throws IndexOutOfBoundsException if there is no such band
     */
    public double value(int band) {
        return values[band];
    }

    /**
     * Returns this in fewer bands.
     *
     * @param fewer which bands; no more than it has
     * @return the reflectance in those
     * @throws Refused if more bands are asked for than were read
     */
    public Reflectance in(Wavebands fewer) {
        Objects.requireNonNull(fewer, "fewer");
        if (fewer == bands) {
            return this;
        }
        if (fewer.count() > bands.count()) {
            throw Refused.of(
                    "colour.more-bands",
                    "reflectance: told in " + bands.count() + " bands; " + fewer.count()
                            + " cannot be made of them. Read it again, or use " + bands.count() + " throughout.",
                    "has",
                    bands.count(),
                    "wanted",
                    fewer.count());
        }
        if (fewer == Wavebands.THREE) {
            return ofColour(xyz(Illuminant.D65));
        }
        double[] every = new double[fewer.count()];
        Arrays.setAll(every, i -> values[2 * i]);
        return new Reflectance(fewer, every);
    }

    /**
     * Returns what an eye sees of it in a light.
     *
     * @param illuminant the light
     * @return tristimulus values; of three bands in a light other than D65 what an eye used to that light would see, not what
     *     the sheet does there
     */
    public Xyz xyz(Illuminant illuminant) {
        double[] seen = seen(values, StandardObserver.weights(bands, Objects.requireNonNull(illuminant, "illuminant")));
        return new Xyz(Matrix.rounded(seen[0]), seen[1], Matrix.rounded(seen[2]), illuminant);
    }

    static double[] seen(double[] values, double[][] weights) {
        double[] seen = new double[3];
        for (int k = 0; k < 3; k++) {
            double sum = 0;
            for (int i = 0; i < values.length; i++) {
                sum += weights[k][i] * values[i];
            }
            seen[k] = sum;
        }
        return seen;
    }

    /**
     * Returns what an eye sees of it under D65.
     *
     * @return L*, a*, b*
     */
    public Lab lab() {
        return lab(Illuminant.D65);
    }

    /**
     * Returns what an eye sees of it in a light.
     *
     * @param illuminant the light
     * @return L*, a*, b*
     */
    public Lab lab(Illuminant illuminant) {
        return xyz(illuminant).lab();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Reflectance that && that.bands == bands && Arrays.equals(that.values, values);
    }

    @Override
    public int hashCode() {
        return 31 * bands.hashCode() + Arrays.hashCode(values);
    }

    @Override
    public String toString() {
        return bands.count() + " bands, " + lab();
    }
}
