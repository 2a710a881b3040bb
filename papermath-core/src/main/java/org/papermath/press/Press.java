package org.papermath.press;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

import javax.measure.Quantity;
import javax.measure.quantity.Force;
import javax.measure.quantity.Length;

import org.papermath.quantity.Amount;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;

/**
 * A press: what each of its parts may bear, the size of its platen and its daylight. Immutable.
 *
 * <p>Nothing is ever suggested above the allowed share of the weakest part.
 */
public final class Press {
    private final String name;
    private final List<Part> parts;
    private final double platenWidth;
    private final double platenLength;
    private final double daylight;

    /**
     * A part of the press with the greatest load its maker allows.
     *
     * @param name the part, for example {@code jack}, {@code frame}, {@code boards}, {@code screw}
     * @param rating the greatest load the maker allows
     */
    public record Part(String name, Amount<Force> rating) {
        @Override
        public String toString() {
            return name + ", " + rating.to("kN");
        }
    }

    private Press(String name, List<Part> parts, double platenWidth, double platenLength, double daylight) {
        this.name = name;
        this.parts = parts;
        this.platenWidth = platenWidth;
        this.platenLength = platenLength;
        this.daylight = daylight;
    }

    /**
     * Makes a press with one rated part, usually its jack; add the others with {@link #part}.
     *
     * @param name its name, not empty; calibrated values are kept under it
     * @param jack the rating of the jack or the screw, above zero; a "ton" must say which
     * @param platenWidth one side of the platen, above zero
     * @param platenLength the other side, above zero
     * @return the press
     * @throws Refused if a value is out of range
     */
    public static Press of(String name, Quantity<Force> jack, Quantity<Length> platenWidth, Quantity<Length> platenLength) {
        if (name.isBlank()) {
            throw Refused.of("equipment.unnamed", "press: a name is wanted; calibrated values are kept under it.");
        }
        Kinds.FORCE.siAboveZero(jack, "rating of the jack");
        return new Press(name, List.of(new Part("jack", Kinds.FORCE.check(jack, "rating of the jack"))),
                Kinds.LENGTH.siAboveZero(platenWidth, "platen width"), Kinds.LENGTH.siAboveZero(platenLength, "platen length"),
                Double.NaN);
    }

    /**
     * Returns the press with the rating of a further part.
     *
     * @param part the part, for example {@code frame} or {@code boards}
     * @param rating the greatest load its maker allows, above zero
     * @return the press
     * @throws Refused if the rating is not above zero
     */
    public Press part(String part, Quantity<Force> rating) {
        Kinds.FORCE.siAboveZero(rating, "rating of the " + part);
        List<Part> more = new ArrayList<>(parts);
        more.removeIf(old -> old.name().equals(part));
        more.add(new Part(part, Kinds.FORCE.check(rating, "rating of the " + part)));
        return new Press(name, List.copyOf(more), platenWidth, platenLength, daylight);
    }

    /**
     * Returns the press with its daylight, the clear height for a post.
     *
     * @param height the daylight, above zero
     * @return the press
     * @throws Refused if the height is not above zero
     */
    public Press daylight(Quantity<Length> height) {
        return new Press(name, parts, platenWidth, platenLength, Kinds.LENGTH.siAboveZero(height, "daylight of the press"));
    }

    /**
     * Returns the name.
     *
     * @return the name
     */
    public String name() {
        return name;
    }

    /**
     * Returns the rated parts.
     *
     * @return an unmodifiable list, the jack first
     */
    public List<Part> parts() {
        return parts;
    }

    /**
     * Returns the part that bears least.
     *
     * @return the part
     */
    public Part weakestPart() {
        return parts.stream().min(Comparator.comparingDouble(part -> part.rating().si())).orElseThrow();
    }

    /**
     * Returns one side of the platen.
     *
     * @return the width
     */
    public Amount<Length> platenWidth() {
        return Kinds.LENGTH.ofSi(platenWidth, "mm");
    }

    /**
     * Returns the other side of the platen.
     *
     * @return the length
     */
    public Amount<Length> platenLength() {
        return Kinds.LENGTH.ofSi(platenLength, "mm");
    }

    /**
     * Returns the clear height for a post, if it was given.
     *
     * @return the daylight
     */
    public Optional<Amount<Length>> daylight() {
        return Double.isNaN(daylight) ? Optional.empty() : Optional.of(Kinds.LENGTH.ofSi(daylight, "mm"));
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Press that && name.equals(that.name) && parts.equals(that.parts)
                && platenWidth == that.platenWidth && platenLength == that.platenLength
                && Double.compare(daylight, that.daylight) == 0;
    }

    @Override
    public int hashCode() {
        return Objects.hash(name, parts, platenWidth, platenLength);
    }

    @Override
    public String toString() {
        return name + " (press, " + parts.stream().map(Part::toString).reduce((a, b) -> a + "; " + b).orElse("") + ")";
    }
}
