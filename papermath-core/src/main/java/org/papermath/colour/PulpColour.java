package org.papermath.colour;

import java.util.Objects;
import java.util.Optional;
import javax.measure.Quantity;
import org.jspecify.annotations.Nullable;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.LightScattering;
import org.papermath.quantity.Refused;

/**
 * The colour of a pulp without pigment: a dried sheet of it, over so many more of the same that nothing shines through.
 * Immutable.
 */
public final class PulpColour {
    private final Reflectance reflectance;
    private final @Nullable Amount<LightScattering> scattering;

    private PulpColour(Reflectance reflectance, @Nullable Amount<LightScattering> scattering) {
        this.reflectance = reflectance;
        this.scattering = scattering;
    }

    /**
     * Gives the colour of a pulp.
     *
     * @param dried reflectance of a pile of its dried sheets
     * @return the colour
     */
    public static PulpColour of(Reflectance dried) {
        return new PulpColour(Objects.requireNonNull(dried, "dried"), null);
    }

    /**
     * Says how much the sheet scatters, for sheets so thin that what lies under them is seen.
     *
     * @param coefficient light scattering coefficient, as ISO 9416 has it
     * @return this with the coefficient
     * @throws Refused if it is out of range
     */
    public PulpColour scattering(Quantity<LightScattering> coefficient) {
        return new PulpColour(
                reflectance, Kinds.LIGHT_SCATTERING.check(coefficient, "light scattering coefficient of the pulp"));
    }

    /**
     * Reads how much the sheet scatters from one sheet over black.
     *
     * @param overBlack its reflectance over a black that sends nothing back
     * @param grammage of that sheet, oven-dry
     * @return this with the coefficient, the mean of the bands
     * @throws Refused if the sheet over black is not darker than the pile in every band
     * @source ISO 9416
     */
    public PulpColour measuredOverBlack(Reflectance overBlack, Quantity<Grammage> grammage) {
        Objects.requireNonNull(overBlack, "overBlack");
        double weight = Kinds.GRAMMAGE.siAboveZero(grammage, "grammage of the sheet over black");
        return scattering(Kinds.LIGHT_SCATTERING.ofSi(ThinSheet.scattering(reflectance, overBlack, weight), "m2/kg"));
    }

    /**
     * Returns the reflectance of the dried pile.
     *
     * @return the reflectance
     */
    public Reflectance reflectance() {
        return reflectance;
    }

    /**
     * Returns how much the sheet scatters.
     *
     * @return the coefficient, if it was given or measured
     */
    public Optional<Amount<LightScattering>> scattering() {
        return Optional.ofNullable(scattering);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof PulpColour that
                && that.reflectance.equals(reflectance)
                && Objects.equals(that.scattering, scattering);
    }

    @Override
    public int hashCode() {
        return Objects.hash(reflectance, scattering);
    }

    @Override
    public String toString() {
        return reflectance + (scattering == null ? "" : ", scattering " + scattering);
    }
}
