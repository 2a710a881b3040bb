package org.papermath.format;

import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;
import javax.measure.Quantity;
import javax.measure.quantity.Area;
import javax.measure.quantity.Length;
import org.jspecify.annotations.Nullable;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Limits;
import org.papermath.quantity.Name;
import org.papermath.quantity.Refused;
import org.papermath.shape.Outline;

/**
 * A named size: what it is the size of, by which standard, and for an old name in what use, country and year. The width
 * is never more than the height. Immutable.
 *
 * <p>The size of an envelope format is its outside; the inside is smaller and depends on the paper and the seams.
 */
public final class Format {
    private final String name;
    private final FormatSystem system;
    private final Use use;
    private final Amount<Length> width;
    private final Amount<Length> height;
    private final String purpose;
    private final String country;
    private final int year;

    /** What the size is the size of. */
    public enum Use {
        /** A sheet of paper. */
        SHEET,
        /** A card, flat or folded once, that goes into an envelope. */
        CARD,
        /** The outside of a closed envelope. */
        ENVELOPE_OUTSIDE
    }

    private Format(
            String name,
            FormatSystem system,
            Use use,
            Amount<Length> width,
            Amount<Length> height,
            String purpose,
            String country,
            int year) {
        this.name = name;
        this.system = system;
        this.use = use;
        this.width = width;
        this.height = height;
        this.purpose = purpose;
        this.country = country;
        this.year = year;
    }

    /**
     * Makes a format of one's own; the sides may be given in either order.
     *
     * @param name its full name, not blank
     * @param system the standard or custom
     * @param use what it is the size of
     * @param side one side, 1 mm to 10 m
     * @param otherSide the other side, 1 mm to 10 m
     * @return the format, without purpose, country and year
     * @throws Refused if the name cannot be one or a side is out of range
     */
    public static Format of(
            String name, FormatSystem system, Use use, Quantity<Length> side, Quantity<Length> otherSide) {
        Objects.requireNonNull(name, "name");
        Objects.requireNonNull(system, "system");
        Objects.requireNonNull(use, "use");
        return of(name, system, use, side, otherSide, null, null, 0);
    }

    static Format of(
            String name,
            FormatSystem system,
            Use use,
            Quantity<Length> side,
            Quantity<Length> otherSide,
            @Nullable String purpose,
            @Nullable String country,
            int year) {
        String called = Name.check(name, "format");
        if (called.isEmpty()) {
            throw Refused.of("format.unnamed", "format: the name is empty; give one.", "given", name);
        }
        Amount<Length> first = Limits.FORMAT_SIDE.check(side, "side of ", called);
        Amount<Length> second = Limits.FORMAT_SIDE.check(otherSide, "side of ", called);
        double a = first.si();
        double b = second.si();
        return new Format(
                called,
                system,
                use,
                a <= b ? first : second,
                a <= b ? second : first,
                purpose == null ? "" : purpose,
                country == null ? "" : country,
                year);
    }

    /**
     * Returns the full name.
     *
     * @return for example {@code ISO A5}
     */
    public String name() {
        return name;
    }

    /**
     * Returns the standard or custom.
     *
     * @return the system
     */
    public FormatSystem system() {
        return system;
    }

    /**
     * Returns what it is the size of.
     *
     * @return the use
     */
    public Use use() {
        return use;
    }

    /**
     * Returns the shorter side.
     *
     * @return the width
     */
    public Amount<Length> width() {
        return width;
    }

    /**
     * Returns the longer side.
     *
     * @return the height
     */
    public Amount<Length> height() {
        return height;
    }

    /**
     * Returns the area.
     *
     * @return the area
     */
    public Amount<Area> area() {
        return Kinds.AREA.ofSi(width.si() * height.si(), "cm2");
    }

    /**
     * Returns the longer side over the shorter.
     *
     * @return the ratio, 1 or more
     */
    public double aspect() {
        return height.si() / width.si();
    }

    /**
     * Returns what an old size was for, such as writing or printing.
     *
     * @return the purpose, if it is known
     */
    public Optional<String> purpose() {
        return purpose.isEmpty() ? Optional.empty() : Optional.of(purpose);
    }

    /**
     * Returns the country of the custom.
     *
     * @return the country, if the size belongs to one
     */
    public Optional<String> country() {
        return country.isEmpty() ? Optional.empty() : Optional.of(country);
    }

    /**
     * Returns the year of the list an old size stands in.
     *
     * @return the year, if it is known
     */
    public OptionalInt year() {
        return year == 0 ? OptionalInt.empty() : OptionalInt.of(year);
    }

    /**
     * Returns the rectangle, width across and height along.
     *
     * @return the outline
     */
    public Outline outline() {
        return Outline.rectangle(width, height);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Format that
                && name.equals(that.name)
                && system == that.system
                && use == that.use
                && width.si() == that.width.si()
                && height.si() == that.height.si()
                && purpose.equals(that.purpose)
                && country.equals(that.country)
                && year == that.year;
    }

    @Override
    public int hashCode() {
        return Objects.hash(name, system, use, width.si(), height.si());
    }

    /** Returns for example {@code ISO A5, 148 mm × 210 mm}. */
    @Override
    public String toString() {
        return name + ", " + width + " × " + height + (use == Use.ENVELOPE_OUTSIDE ? " outside" : "");
    }
}
