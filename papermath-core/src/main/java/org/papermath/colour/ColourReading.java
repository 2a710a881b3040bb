package org.papermath.colour;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Scope;
import org.papermath.quantity.Refused;

/**
 * The colour of one sheet, read several times by a colorimeter or in several photographs: the mean of the readings, taken in
 * tristimulus values, and how far they scatter about it. Five readings spread over the sheet are usual. Readings that do not
 * repeat are refused, for their mean says little. Immutable.
 *
 * <pre>{@code
 * ColourReading ochre = ColourReading.of(
 *         Assumptions.standard(), Lab.of(71.2, 9.8, 31.0), Lab.of(71.6, 9.5, 30.6), Lab.of(71.0, 9.9, 31.3));
 * ochre; // L* 71.27 a* 9.73 b* 30.96 (D65, 2°), mean of 3 readings with a scatter of ΔE00 0.29
 * ochre.reflectance().bands(); // THREE
 * }</pre>
 *
 * <p>The two sides of a sheet are two readings, kept apart with {@link #on}; {@link TwoSidedColour} tells how they differ.
 *
 * @source scatter as the standard deviation of single readings, with ΔE00 (ISO/CIE 11664-6) from their mean for the distance;
 *     averaging over positions and angles as in photographs of colour cards is common practice, no source
 */
public final class ColourReading {
    private static final int LEAST = 2;

    private final List<Lab> readings;
    private final Xyz mean;
    private final double[] off;
    private final double scatter;
    private final @Nullable Side side;

    /** Which side of a sheet is read. */
    public enum Side {
        /** The side that lay on the mould when the sheet was formed. */
        MOULD,
        /** The side that lay on the felt when it was couched. */
        FELT;

        @Override
        public String toString() {
            return name().toLowerCase(Locale.ROOT) + " side";
        }
    }

    private ColourReading(List<Lab> readings, Xyz mean, double[] off, double scatter, @Nullable Side side) {
        this.readings = readings;
        this.mean = mean;
        this.off = off;
        this.scatter = scatter;
        this.side = side;
    }

    /**
     * Takes readings together.
     *
     * @param assumptions where {@code colour.repeatability} is looked up
     * @param readings two or more of one sheet, all in one light; five are usual
     * @return their mean and scatter
     * @throws Refused if there are fewer than two, if they are told in different lights, or if they scatter more than
     *     {@code colour.repeatability}
     */
    public static ColourReading of(Assumptions assumptions, Lab... readings) {
        Objects.requireNonNull(assumptions, "assumptions");
        Objects.requireNonNull(readings, "readings");
        return of(assumptions, Arrays.asList(readings));
    }

    /**
     * Takes readings together. A studio whose sheets are mottled on purpose gives a wider limit of its own.
     *
     * @param assumptions where {@code colour.repeatability} is looked up
     * @param readings two or more of one sheet, all in one light; five are usual
     * @return their mean and scatter
     * @throws Refused if there are fewer than two, if they are told in different lights, or if they scatter more than
     *     {@code colour.repeatability}
     */
    public static ColourReading of(Assumptions assumptions, List<Lab> readings) {
        Objects.requireNonNull(assumptions, "assumptions");
        Objects.requireNonNull(readings, "readings");
        List<Lab> kept = List.copyOf(readings);
        if (kept.size() < LEAST) {
            throw Refused.of(
                    "colour.readings",
                    "colour: " + kept.size() + " readings of a sheet given; at least " + LEAST
                            + " are needed to see whether they repeat. Read five places of it.",
                    "given",
                    kept.size(),
                    "least",
                    LEAST);
        }
        Xyz mean = mean(kept);
        double[] off = new double[kept.size()];
        double squares = 0;
        int farthest = 0;
        for (int i = 0; i < off.length; i++) {
            off[i] = mean.lab().difference(kept.get(i));
            squares += off[i] * off[i];
            farthest = off[i] > off[farthest] ? i : farthest;
        }
        double scatter = Math.sqrt(squares / (off.length - 1));
        double most = assumptions.si("colour.repeatability", Scope.GENERAL);
        if (scatter > most) {
            throw Refused.of(
                    "colour.repeatability",
                    "colour: " + off.length + " readings of one sheet scatter by ΔE00 " + ColourRange.said(scatter)
                            + ", more than " + ColourRange.said(most) + "; number " + (farthest + 1) + ", "
                            + kept.get(farthest) + ", lies farthest off. Read it again at the same angle, in the same"
                            + " light and over the same pile of sheets, and take more readings.",
                    "scatter",
                    scatter,
                    "most",
                    most,
                    "farthest",
                    farthest + 1);
        }
        return new ColourReading(kept, mean, off, scatter, null);
    }

    private static Xyz mean(List<Lab> readings) {
        double x = 0;
        double y = 0;
        double z = 0;
        for (Lab reading : readings) {
            Xyz one = reading.xyz();
            x += one.x() / readings.size();
            y += one.y() / readings.size();
            z += one.z() / readings.size();
        }
        return new Xyz(x, y, z, readings.get(0).illuminant());
    }

    /**
     * Says which side of the sheet was read.
     *
     * @param read the side
     * @return the same reading, of that side
     */
    public ColourReading on(Side read) {
        return new ColourReading(readings, mean, off, scatter, Objects.requireNonNull(read, "read"));
    }

    /**
     * Returns the side that was read.
     *
     * @return the side, if it was said
     */
    public Optional<Side> side() {
        return Optional.ofNullable(side);
    }

    /**
     * Returns what was read.
     *
     * @return an unmodifiable list, in the order given
     */
    public List<Lab> readings() {
        return readings;
    }

    /**
     * Returns the mean.
     *
     * @return the mean of the tristimulus values, in the light of the readings
     */
    public Xyz xyz() {
        return mean;
    }

    /**
     * Returns the mean.
     *
     * @return the mean of the tristimulus values as L*, a*, b*
     */
    public Lab lab() {
        return mean.lab();
    }

    /**
     * Returns the mean for a reflectance, where no more is known of it.
     *
     * @return in {@link Wavebands#THREE}
     * @throws Refused if no surface of this kind has such a colour
     */
    public Reflectance reflectance() {
        return Reflectance.ofColour(mean);
    }

    /**
     * Returns how far each reading lies from the mean.
     *
     * @return an unmodifiable list of ΔE00, in the order of the readings
     */
    public List<Double> differences() {
        return Arrays.stream(off).boxed().toList();
    }

    /**
     * Returns how far a single reading lies from the mean, as a standard deviation.
     *
     * @return ΔE00, the root of the sum of its squares over one less than the readings
     */
    public double scatter() {
        return scatter;
    }

    /**
     * Returns how far the mean of as many readings would lie off another time.
     *
     * @return ΔE00, the scatter over the root of the number of readings
     */
    public double uncertainty() {
        return scatter / Math.sqrt(off.length);
    }

    @Override
    public String toString() {
        return (side == null ? "" : side + ": ") + lab() + ", mean of " + off.length
                + " readings with a scatter of ΔE00 " + ColourRange.said(scatter);
    }
}
