package org.papermath.colour;

import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import org.papermath.quantity.Refused;

/**
 * The colour a paper is to have, and what its doses were told to give. It stays with the recipe: the trial swatches are judged
 * by it, and a repeat is made to it. Immutable.
 */
public final class WantedColour {
    private final Lab lab;
    private final @Nullable Lab told;
    private final double nineInTen;

    private WantedColour(Lab lab, @Nullable Lab told, double nineInTen) {
        this.lab = lab;
        this.told = told;
        this.nineInTen = nineInTen;
    }

    /**
     * Gives a colour that was read or agreed.
     *
     * @param lab the dried sheet
     * @return the colour; nothing is told of what comes out
     */
    public static WantedColour of(Lab lab) {
        return new WantedColour(Objects.requireNonNull(lab, "lab"), null, Double.NaN);
    }

    /**
     * Takes a match for it.
     *
     * @param match doses that were found
     * @return the colour wanted, with what the best of the doses is told to give
     */
    public static WantedColour of(ColourMatch match) {
        Objects.requireNonNull(match, "match");
        PredictedColour best = match.best().colour();
        return of(match.target()).told(best.lab(), best.nineInTen());
    }

    /**
     * Says what the doses are told to give.
     *
     * @param likely the colour told, in the same light
     * @param within ΔE00 from it that nine in ten keep within, 0 to 50
     * @return this with what is told
     * @throws Refused if the lights differ or the difference is out of range
     */
    public WantedColour told(Lab likely, double within) {
        Objects.requireNonNull(likely, "likely");
        return new WantedColour(
                lab, lab.sameLight(likely), ColourRange.check("difference nine in ten keep within", within, 0, 50));
    }

    /**
     * Returns the colour.
     *
     * @return of the dried sheet
     */
    public Lab lab() {
        return lab;
    }

    /**
     * Returns what the doses are told to give.
     *
     * @return the likely colour, if doses were found for it
     */
    public Optional<Lab> told() {
        return Optional.ofNullable(told);
    }

    /**
     * Returns how far from the colour told sheets come out at most, nine times in ten.
     *
     * @return ΔE00, if doses were found
     */
    public OptionalDouble nineInTen() {
        return told == null ? OptionalDouble.empty() : OptionalDouble.of(nineInTen);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof WantedColour that
                && lab.equals(that.lab)
                && Objects.equals(told, that.told)
                && (told == null || nineInTen == that.nineInTen);
    }

    @Override
    public int hashCode() {
        return Objects.hash(lab, told);
    }

    @Override
    public String toString() {
        return lab
                + (told == null
                        ? ""
                        : ", told " + told + " within ΔE00 " + ColourRange.said(nineInTen, 1) + " nine times in ten");
    }
}
