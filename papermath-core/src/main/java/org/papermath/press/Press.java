package org.papermath.press;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Area;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Force;
import javax.measure.quantity.Length;
import org.jspecify.annotations.Nullable;
import org.papermath.equation.PressForce;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Notice;
import org.papermath.evidence.Scope;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Limits;
import org.papermath.quantity.Name;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Share;
import org.papermath.quantity.SheetPressure;

/**
 * A press: what each of its parts may bear, the size of its platen and its daylight. Immutable.
 *
 * <p>Nothing is ever suggested above the allowed share of the weakest part.
 */
public final class Press {
    private final String name;
    private final List<Part> parts;
    private final Amount<Length> platenWidth;
    private final Amount<Length> platenLength;
    private final @Nullable Amount<Length> daylight;

    /**
     * A part of the press with the greatest load its maker allows.
     *
     * @param name the part, for example {@code jack}, {@code frame}, {@code boards}, {@code screw}
     * @param rating the greatest load the maker allows
     */
    public record Part(String name, Amount<Force> rating) {
        /**
         * Makes a part.
         *
         * @param name the part, not empty
         * @param rating the greatest load the maker allows, 10 N to 20 000 kN
         * @throws Refused if the name cannot be one or the rating is out of range
         */
        public Part {
            name = Name.check(name, "part of the press");
            if (name.isEmpty()) {
                throw Refused.of("equipment.unnamed", "part of the press: the name is empty; give one.");
            }
            rating = Limits.PRESS_RATING.check(rating, "rating of the ", name);
        }

        @Override
        public String toString() {
            return name + ", " + rating.to("kN");
        }
    }

    /** The greatest force that is suggested, and why. */
    public sealed interface Allowed permits FoundAllowed {
        /** {@return the force} */
        Amount<Force> force();

        /** {@return the part that bears least} */
        Part weakest();

        /** {@return the share of its rating that may be used} */
        Amount<Share> share();
    }

    private record FoundAllowed(Amount<Force> force, Part weakest, Amount<Share> share) implements Allowed {
        @Override
        public String toString() {
            return force.to("kN") + ", " + share.to("%") + " of the rating of the " + weakest.name() + " ("
                    + weakest.rating().to("kN") + ")";
        }
    }

    /** What to set the press to. */
    public sealed interface Setting permits FoundSetting {
        /** {@return the force on the post} */
        Amount<Force> force();

        /** {@return the pressure on the sheet} */
        Amount<SheetPressure> pressure();

        /** {@return the area that carries the force: the smaller of the wet sheets (or felts) and the platen} */
        Amount<Area> loadedArea();

        /** {@return the greatest force that is suggested} */
        Allowed allowed();

        /** {@return what the setting should not be read without} */
        List<Notice> notices();
    }

    private record FoundSetting(
            Amount<Force> force,
            Amount<SheetPressure> pressure,
            Amount<Area> loadedArea,
            Allowed allowed,
            List<Notice> notices)
            implements Setting {
        @Override
        public String toString() {
            return force + " on " + loadedArea + ": " + pressure;
        }
    }

    /** One meaning of a jack's "ton" beside a second figure for the same jack. */
    public sealed interface TonReading permits FoundReading {
        /** {@return the unit code of that ton: {@code tonf_us}, {@code tf} or {@code tonf_uk}} */
        String meaning();

        /** {@return what it makes the rating} */
        Amount<Force> force();

        /** {@return how far that is from the second figure, a share of it; below zero when smaller} */
        Amount<Dimensionless> off();
    }

    private record FoundReading(String meaning, Amount<Force> force, Amount<Dimensionless> off) implements TonReading {
        @Override
        public String toString() {
            return meaning + ", " + force + ", " + off + " off";
        }
    }

    private Press(
            String name,
            List<Part> parts,
            Amount<Length> platenWidth,
            Amount<Length> platenLength,
            @Nullable Amount<Length> daylight) {
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
     * @param jack the rating of the jack or the screw, 10 N to 20 000 kN; a "ton" must say which
     * @param platenWidth one side of the platen, 5 mm to 10 m
     * @param platenLength the other side, 5 mm to 10 m
     * @return the press
     * @throws Refused if a value is out of range
     */
    public static Press of(
            String name, Quantity<Force> jack, Quantity<Length> platenWidth, Quantity<Length> platenLength) {
        Objects.requireNonNull(name, "name");
        String called = Name.checkKey(name, "press");
        if (called.isEmpty()) {
            throw Refused.of("equipment.unnamed", "press: the name is empty; calibrated values are stored under it.");
        }
        return new Press(
                called,
                List.of(new Part("jack", Limits.PRESS_RATING.check(jack, "rating of the jack"))),
                Limits.PLATEN_SIDE.check(platenWidth, "platen width"),
                Limits.PLATEN_SIDE.check(platenLength, "platen length"),
                null);
    }

    /**
     * Compares the meanings of a "ton" with a second figure for the same jack, such as its greatest gauge pressure on
     * its ram. It is for the person to choose; the library never does.
     *
     * @param tons the number on the label, above zero
     * @param second the rating by another way, above zero
     * @return short, metric and long ton, the nearest first
     * @throws Refused if a value is not above zero
     */
    public static List<TonReading> tons(double tons, Quantity<Force> second) {
        double other = Kinds.FORCE.siAboveZero(second, "second figure of the jack");
        List<TonReading> readings = new ArrayList<>();
        for (String code : List.of("tonf_us", "tf", "tonf_uk")) {
            double force = Kinds.FORCE.siAboveZero(Kinds.FORCE.of(tons, code), "tons on the label");
            readings.add(
                    new FoundReading(code, Kinds.FORCE.ofSi(force, "kN"), Kinds.NUMBER.ofSi(force / other - 1, "%")));
        }
        readings.sort(
                Comparator.comparingDouble(reading -> Math.abs(reading.off().si())));
        return List.copyOf(readings);
    }

    /**
     * Returns the press with the rating of a further part, or another rating of one it has.
     *
     * @param part the part, for example {@code frame} or {@code boards}
     * @param rating the greatest load its maker allows, 10 N to 20 000 kN
     * @return the press
     * @throws Refused if the name cannot be one or the rating is out of range
     */
    public Press part(String part, Quantity<Force> rating) {
        Part rated = new Part(part, Limits.PRESS_RATING.check(rating, "rating of the ", Name.shown(part)));
        List<Part> more = new ArrayList<>(parts);
        more.replaceAll(old -> old.name().equals(rated.name()) ? rated : old);
        if (!more.contains(rated)) {
            more.add(rated);
        }
        return new Press(name, List.copyOf(more), platenWidth, platenLength, daylight);
    }

    /**
     * Returns the press with its daylight, the clear height for a post.
     *
     * @param height the daylight, 1 mm to 10 m
     * @return the press
     * @throws Refused if the height is out of range
     */
    public Press daylight(Quantity<Length> height) {
        return new Press(
                name, parts, platenWidth, platenLength, Limits.DAYLIGHT.check(height, "daylight of the press"));
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
        return parts.stream()
                .min(Comparator.comparingDouble(part -> part.rating().si()))
                .orElseThrow();
    }

    /**
     * Returns the greatest force that is suggested, by the shipped assumptions.
     *
     * @return the force, the weakest part and the share of its rating
     */
    public Allowed allowed() {
        return allowed(Assumptions.standard());
    }

    /**
     * Returns the greatest force that is suggested: a share ({@code press.allowed-share}) of the rating of the weakest
     * part.
     *
     * @param assumptions where the share is looked up
     * @return the force, the weakest part and the share of its rating
     * @throws Refused if the store does not hold the share
     */
    public Allowed allowed(Assumptions assumptions) {
        Part weakest = weakestPart();
        double share = assumptions.si("press.allowed-share", Scope.at(name));
        return new FoundAllowed(
                Kinds.FORCE.ofSi(PressForce.allowedForce(share, weakest.rating().si()), "kN"),
                weakest,
                Kinds.SHARE.ofSi(share, "%"));
    }

    /**
     * Returns the area that carries the force: the smaller of the wet sheets (or felts) and the platen.
     *
     * @param sheets the area of the wet sheets of one layer, above zero
     * @return the area
     * @throws Refused if the area is not above zero
     */
    public Amount<Area> loadedArea(Quantity<Area> sheets) {
        return Kinds.AREA.ofSi(
                PressForce.loadedArea(Kinds.AREA.siAboveZero(sheets, "area of the sheets"), platen()), "m2");
    }

    /**
     * Returns the greatest pressure this press is suggested for on a sheet area, by the shipped assumptions.
     *
     * @param sheets the area of the wet sheets of one layer, above zero
     * @return the pressure on the sheet at the allowed force
     * @throws Refused if the area is not above zero
     */
    public Amount<SheetPressure> greatestPressure(Quantity<Area> sheets) {
        return greatestPressure(Assumptions.standard(), sheets);
    }

    /**
     * Returns the greatest pressure this press is suggested for on a sheet area.
     *
     * @param assumptions where {@code press.allowed-share} of this press is looked up
     * @param sheets the area of the wet sheets of one layer, above zero
     * @return the pressure on the sheet at the allowed force
     * @throws Refused if the area is not above zero
     */
    public Amount<SheetPressure> greatestPressure(Assumptions assumptions, Quantity<Area> sheets) {
        return Kinds.SHEET_PRESSURE.ofSi(
                PressForce.pressure(
                        allowed(assumptions).force().si(), loadedArea(sheets).si()),
                "kPa");
    }

    /**
     * Returns the setting for a pressure on the sheet, by the shipped assumptions.
     *
     * @param pressure the pressure wanted on the sheet
     * @param sheets the area of the wet sheets of one layer, above zero
     * @return the setting
     * @throws Refused as {@link #forceFor(Assumptions, Quantity, Quantity)}
     */
    public Setting forceFor(Quantity<SheetPressure> pressure, Quantity<Area> sheets) {
        return forceFor(Assumptions.standard(), pressure, sheets);
    }

    /**
     * Returns the setting for a pressure on the sheet: {@code F = p A}. A small post needs the same pressure, so a
     * smaller force.
     *
     * @param assumptions where the share of the weakest part, of this press, and the limits of pressure are looked up
     * @param pressure the pressure wanted on the sheet
     * @param sheets the area of the wet sheets of one layer, above zero
     * @return the setting
     * @throws Refused if a value is out of range, the force is above the allowed one, or the pressure is above the
     *     limit for hand presses ({@code press.pressure-limit})
     */
    public Setting forceFor(Assumptions assumptions, Quantity<SheetPressure> pressure, Quantity<Area> sheets) {
        double p = Kinds.SHEET_PRESSURE.si(pressure, "pressure on the sheet");
        return setting(assumptions, PressForce.force(p, loadedArea(sheets).si()), loadedArea(sheets));
    }

    /**
     * Returns the setting at a force, by the shipped assumptions.
     *
     * @param force the force on the post
     * @param sheets the area of the wet sheets of one layer, above zero
     * @return the setting
     * @throws Refused as {@link #forceFor(Assumptions, Quantity, Quantity)}
     */
    public Setting setting(Quantity<Force> force, Quantity<Area> sheets) {
        return setting(Assumptions.standard(), force, sheets);
    }

    /**
     * Returns the setting at a force: {@code p = F/A}.
     *
     * @param assumptions where the share of the weakest part, of this press, and the limits of pressure are looked up
     * @param force the force on the post
     * @param sheets the area of the wet sheets of one layer, above zero
     * @return the setting
     * @throws Refused as {@link #forceFor(Assumptions, Quantity, Quantity)}
     */
    public Setting setting(Assumptions assumptions, Quantity<Force> force, Quantity<Area> sheets) {
        return setting(assumptions, Kinds.FORCE.si(force, "force on the post"), loadedArea(sheets));
    }

    private double platen() {
        return platenWidth.si() * platenLength.si();
    }

    private Setting setting(Assumptions assumptions, double newtons, Amount<Area> area) {
        Amount<Force> force = Kinds.FORCE.ofSi(newtons, "kN");
        Allowed allowed = allowed(assumptions);
        // A hair of tolerance, so that the allowed pressure itself is not refused by rounding.
        if (newtons > allowed.force().si() * (1 + 1e-12)) {
            throw Refused.of(
                    "press.above-allowed",
                    "press \"" + name + "\": " + force + " asked for on the post; its weakest part, the "
                            + allowed.weakest().name() + ", allows " + allowed
                            + ". Press with less or in smaller posts.",
                    "press",
                    name,
                    "given",
                    force.toString(),
                    "limit",
                    allowed.force().toString(),
                    "part",
                    allowed.weakest().name());
        }
        Amount<SheetPressure> pressure = Kinds.SHEET_PRESSURE.ofSi(PressForce.pressure(newtons, area.si()), "kPa");
        List<Notice> notices = new ArrayList<>(PressingModel.pressureNotices(pressure, assumptions));
        if (area.si() < 0.5 * platen()) {
            notices.add(Notice.note(
                    "press.small-post",
                    "The sheets cover " + Kinds.SHARE.ofSi(area.si() / platen(), "%")
                            + " of the platen: the same force presses harder on less paper. Hold the pressure, not"
                            + " the force,"
                            + " and lay the post in the middle.",
                    "area",
                    area.toString()));
        }
        return new FoundSetting(force, pressure, area, allowed, List.copyOf(notices));
    }

    /**
     * Returns one side of the platen.
     *
     * @return the width
     */
    public Amount<Length> platenWidth() {
        return platenWidth;
    }

    /**
     * Returns the other side of the platen.
     *
     * @return the length
     */
    public Amount<Length> platenLength() {
        return platenLength;
    }

    /**
     * Returns the clear height for a post, if it was given.
     *
     * @return the daylight
     */
    public Optional<Amount<Length>> daylight() {
        return Optional.ofNullable(daylight);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Press that
                && name.equals(that.name)
                && parts.equals(that.parts)
                && platenWidth.si() == that.platenWidth.si()
                && platenLength.si() == that.platenLength.si()
                && daylight().map(Amount::si).equals(that.daylight().map(Amount::si));
    }

    @Override
    public int hashCode() {
        return Objects.hash(name, parts, platenWidth.si(), platenLength.si());
    }

    @Override
    public String toString() {
        return name + " (press, "
                + parts.stream()
                        .map(Part::toString)
                        .reduce((a, b) -> a + "; " + b)
                        .orElse("") + ")";
    }
}
