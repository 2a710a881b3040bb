package org.papermath.colour;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import javax.measure.Quantity;
import org.jspecify.annotations.Nullable;
import org.papermath.evidence.Notice;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.LightScattering;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Share;

/**
 * A colour that is told before it is made, and how far off the sheet may come out. Made by {@link PigmentedPulp}.
 * Immutable.
 */
public final class PredictedColour {
    private final Reflectance reflectance;
    private final double expected;
    private final double within;
    private final List<Cause> causes;
    private final List<Notice> notices;
    private final @Nullable Amount<LightScattering> scattering;

    /** Part of how far off a colour may come out. */
    public sealed interface Cause permits FoundCause {
        /** {@return in words} */
        String what();

        /** {@return how far it alone moves the colour: the root of the mean square of ΔE00} */
        double difference();
    }

    record FoundCause(String what, double difference) implements Cause {
        @Override
        public String toString() {
            return what + " ΔE00 " + ColourRange.said(difference, 1);
        }
    }

    PredictedColour(
            Reflectance reflectance,
            ColourError error,
            List<Cause> causes,
            List<Notice> notices,
            @Nullable Amount<LightScattering> scattering) {
        this.reflectance = reflectance;
        this.expected = error.mean();
        this.within = error.within(0.9);
        this.causes = List.copyOf(causes);
        this.notices = List.copyOf(notices);
        this.scattering = scattering;
    }

    /**
     * Returns what the dried sheet sends back, over so many more of the same that nothing shines through.
     *
     * @return the likely reflectance
     */
    public Reflectance reflectance() {
        return reflectance;
    }

    /**
     * Returns the colour under D65.
     *
     * @return L*, a*, b* to the observer of 2°
     */
    public Lab lab() {
        return reflectance.lab();
    }

    /**
     * Returns how far off the colour is expected to come out.
     *
     * @return mean ΔE00 between what is made and what is told
     */
    public double expectedDifference() {
        return expected;
    }

    /**
     * Returns how far off the colour comes out at most, nine times in ten.
     *
     * @return ΔE00
     */
    public double nineInTen() {
        return within;
    }

    /**
     * Returns why it may come out otherwise.
     *
     * @return the causes, the largest first
     */
    public List<Cause> causes() {
        return causes;
    }

    /**
     * Returns what is to be kept in mind.
     *
     * @return notices
     */
    public List<Notice> notices() {
        return notices;
    }

    /**
     * Returns the colour of one sheet over something else.
     *
     * @param grammage of the sheet, oven-dry
     * @param backing what lies under it
     * @return what the two send back together; empty where it is not known what the pulp scatters
     * @throws Refused if the grammage is out of range or the backing has fewer bands
     * @source Kubelka, Journal of the Optical Society of America 38, 1948; recalled, not looked up
     */
    public Optional<Reflectance> over(Quantity<Grammage> grammage, Reflectance backing) {
        Objects.requireNonNull(backing, "backing");
        double weight = Kinds.GRAMMAGE.siAboveZero(grammage, "grammage of the sheet");
        return Optional.ofNullable(scattering).map(known -> ThinSheet.over(reflectance, known.si(), weight, backing));
    }

    /**
     * Returns how little shines through one sheet.
     *
     * @param grammage of the sheet, oven-dry
     * @return its luminance over black by that over a pile, as ISO 2471 has it; empty where it is not known what the pulp
     *     scatters
     * @throws Refused if the grammage is out of range
     */
    public Optional<Amount<Share>> opacity(Quantity<Grammage> grammage) {
        double weight = Kinds.GRAMMAGE.siAboveZero(grammage, "grammage of the sheet");
        return Optional.ofNullable(scattering)
                .map(known -> Kinds.SHARE.ofSi(Math.min(1, ThinSheet.opacity(reflectance, known.si(), weight)), "%"));
    }

    @Override
    public String toString() {
        return lab() + ", within ΔE00 " + ColourRange.said(within, 1) + " nine times in ten";
    }
}
