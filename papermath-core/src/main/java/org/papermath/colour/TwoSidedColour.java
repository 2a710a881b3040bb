package org.papermath.colour;

import java.util.Objects;
import org.papermath.quantity.Refused;

/**
 * The colour of both sides of a sheet, kept apart: pigment is washed out of the side that lies on the mould while the water
 * drains, and settles towards one of them. Immutable.
 *
 * <pre>{@code
 * Assumptions table = Assumptions.standard();
 * ColourReading felt = ColourReading.of(table, Lab.of(71.2, 9.8, 31), Lab.of(71.6, 9.5, 30.6), Lab.of(71, 9.9, 31.3));
 * ColourReading mould = ColourReading.of(table, Lab.of(73.4, 8.9, 27.8), Lab.of(73.1, 9.1, 28.2));
 * TwoSidedColour sheet = TwoSidedColour.of(felt.on(ColourReading.Side.FELT), mould.on(ColourReading.Side.MOULD));
 * Math.round(100 * sheet.difference()) / 100.0; // 1.97
 * sheet.isTold(); // true
 * }</pre>
 */
public final class TwoSidedColour {
    private static final double CLEARLY = 2;

    private final ColourReading mould;
    private final ColourReading felt;

    private TwoSidedColour(ColourReading mould, ColourReading felt) {
        this.mould = mould;
        this.felt = felt;
    }

    /**
     * Puts both sides of a sheet together.
     *
     * @param one a side
     * @param other the other side, in the same light
     * @return both
     * @throws Refused if it was not said which side is which, if both are the same, or if they are told in different lights
     */
    public static TwoSidedColour of(ColourReading one, ColourReading other) {
        Objects.requireNonNull(one, "one");
        Objects.requireNonNull(other, "other");
        if (one.side().isEmpty() || other.side().isEmpty() || one.side().equals(other.side())) {
            throw Refused.of(
                    "colour.sides",
                    "colour of both sides: " + said(one) + " and " + said(other)
                            + " given; say of each reading which side it is, one MOULD and one FELT.",
                    "one",
                    said(one),
                    "other",
                    said(other));
        }
        boolean turned = one.side().get() == ColourReading.Side.FELT;
        ColourReading mould = turned ? other : one;
        ColourReading felt = turned ? one : other;
        mould.lab().sameLight(felt.lab());
        return new TwoSidedColour(mould, felt);
    }

    private static String said(ColourReading reading) {
        return reading.side().map(ColourReading.Side::toString).orElse("a side not named");
    }

    /**
     * Returns the side that lay on the mould.
     *
     * @return its reading
     */
    public ColourReading mouldSide() {
        return mould;
    }

    /**
     * Returns the side that lay on the felt.
     *
     * @return its reading
     */
    public ColourReading feltSide() {
        return felt;
    }

    /**
     * Returns how far the sides lie apart.
     *
     * @return ΔE00 of their means
     */
    public double difference() {
        return mould.lab().difference(felt.lab());
    }

    /**
     * Returns how far off that difference may be for the scatter of the readings.
     *
     * @return ΔE00, as a standard deviation
     */
    public double uncertainty() {
        return Math.hypot(mould.uncertainty(), felt.uncertainty());
    }

    /**
     * Returns whether the readings tell the sides apart.
     *
     * @return true if the difference is more than twice its uncertainty
     */
    public boolean isTold() {
        return difference() > CLEARLY * uncertainty();
    }

    @Override
    public String toString() {
        return mould + "; " + felt + "; ΔE00 " + ColourRange.said(difference()) + " apart"
                + (isTold() ? "" : ", no more than the readings scatter");
    }
}
