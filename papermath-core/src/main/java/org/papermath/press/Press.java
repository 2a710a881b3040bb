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
 * <p>Nothing is ever suggested above the allowed share of the weakest part; {@link #atRating} only says what a
 * greater share would press with, and warns.
 */
public final class Press {
    /** What a bare "ton" of force may be, the lightest first. */
    private static final List<String> TONS = List.of("tonf_us", "tf", "tonf_uk");

    private static final List<String> TON_WORDS = List.of("short ton", "metric ton", "long ton");

    private final String name;
    private final List<Part> parts;
    private final Amount<Length> platenWidth;
    private final Amount<Length> platenLength;
    private final @Nullable Amount<Length> daylight;
    private final int pressings;
    private final @Nullable RamGauge ram;
    private final @Nullable Screw screw;
    private final @Nullable Lever lever;

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

    /** What one meaning of a jack's "ton" presses a sheet with. */
    public sealed interface TonPressure permits FoundTonPressure {
        /** {@return the unit code of that ton: {@code tonf_us}, {@code tf} or {@code tonf_uk}} */
        String meaning();

        /** {@return what it makes the rating} */
        Amount<Force> force();

        /** {@return the pressure of the whole rating on the area} */
        Amount<SheetPressure> pressure();
    }

    private record FoundTonPressure(String meaning, Amount<Force> force, Amount<SheetPressure> pressure)
            implements TonPressure {
        @Override
        public String toString() {
            return pressure + " by the " + TON_WORDS.get(TONS.indexOf(meaning)) + " (" + force + ")";
        }
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
            @Nullable Amount<Length> daylight,
            int pressings,
            @Nullable RamGauge ram,
            @Nullable Screw screw,
            @Nullable Lever lever) {
        this.name = name;
        this.parts = parts;
        this.platenWidth = platenWidth;
        this.platenLength = platenLength;
        this.daylight = daylight;
        this.pressings = pressings;
        this.ram = ram;
        this.screw = screw;
        this.lever = lever;
        // What no gauge and no lever can be set to is refused here, at the most the press bears.
        Amount<Force> most = weakestPart().rating();
        if (ram != null) {
            ram.gaugeFor(most);
        }
        if (screw != null && lever != null) {
            lever.pullFor(screw.torqueFor(most));
            screw.forceOf(lever.torque());
        }
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
                null,
                1,
                null,
                null,
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
        for (String code : TONS) {
            double force = onLabel(tons, code);
            readings.add(
                    new FoundReading(code, Kinds.FORCE.ofSi(force, "kN"), Kinds.NUMBER.ofSi(force / other - 1, "%")));
        }
        readings.sort(
                Comparator.comparingDouble(reading -> Math.abs(reading.off().si())));
        return List.copyOf(readings);
    }

    private static double onLabel(double tons, String code) {
        return Kinds.FORCE.siAboveZero(Kinds.FORCE.of(tons, code), "tons on the label");
    }

    /**
     * Returns the pressure of a jack rated in bare "tons" on an area, by each meaning of the ton: the whole rating over the
     * area, whatever the frame bears. It is for the person to choose; the library never does.
     *
     * @param tons the number on the label, above zero
     * @param sheets the area that carries the force, above zero
     * @return short, metric and long ton
     * @throws Refused if a value is out of range
     */
    public static List<TonPressure> tonsOn(double tons, Quantity<Area> sheets) {
        double area = Kinds.AREA.siAboveZero(sheets, "area of the sheets");
        List<TonPressure> readings = new ArrayList<>();
        for (String code : TONS) {
            double force = onLabel(tons, code);
            readings.add(new FoundTonPressure(
                    code,
                    Kinds.FORCE.ofSi(force, "kN"),
                    Kinds.SHEET_PRESSURE.ofSi(PressForce.pressure(force, area), "kPa")));
        }
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
        return new Press(name, List.copyOf(more), platenWidth, platenLength, daylight, pressings, ram, screw, lever);
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
                name,
                parts,
                platenWidth,
                platenLength,
                Limits.DAYLIGHT.check(height, "daylight of the press"),
                pressings,
                ram,
                screw,
                lever);
    }

    /**
     * Returns the press with the number of times a post is pressed in it, its felts exchanged for drier ones each time.
     *
     * @param times 1 to 3; 1 unless given
     * @return the press
     * @throws Refused if the number is out of range
     */
    public Press pressings(int times) {
        return new Press(
                name,
                parts,
                platenWidth,
                platenLength,
                daylight,
                Limits.PRESSINGS.check(times, "pressings of a post"),
                ram,
                screw,
                lever);
    }

    /**
     * Returns the press with the ram its gauge belongs to, so that the force can be set as the gauge reads.
     *
     * @param gauge the ram and its gauge
     * @return the press
     * @throws Refused if no gauge shows what the weakest part bears on so small a ram
     */
    public Press ram(RamGauge gauge) {
        return new Press(
                name,
                parts,
                platenWidth,
                platenLength,
                daylight,
                pressings,
                Objects.requireNonNull(gauge, "gauge"),
                screw,
                lever);
    }

    /**
     * Returns the press with its screw and the lever on it. It presses no harder than the people at the lever pull.
     *
     * @param thread the screw, with a square thread; for another, give the friction over the cosine of half the angle
     *     between its flanks
     * @param bar the lever and who pulls it
     * @return the press
     * @throws Refused if the thread is not square, or jams
     */
    public Press screw(Screw thread, Lever bar) {
        Objects.requireNonNull(thread, "thread");
        Objects.requireNonNull(bar, "bar");
        if (!thread.isSquare()) {
            throw Refused.of(
                    "press.screw-thread",
                    "press \"" + name + "\": the thread of its screw is not square. Give a square one with the friction"
                            + " over the cosine of half the angle between the flanks.",
                    "press",
                    name);
        }
        return new Press(name, parts, platenWidth, platenLength, daylight, pressings, ram, thread, bar);
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

    /**
     * Returns what a share of the rating of the weakest part presses with, by the shipped assumptions.
     *
     * @param ofRating the working share, above zero; 100 % for the rating itself
     * @param sheets the area of the wet sheets of one layer, above zero
     * @return the setting
     * @throws Refused as {@link #atRating(Assumptions, Quantity, Quantity)}
     */
    public Setting atRating(Quantity<Share> ofRating, Quantity<Area> sheets) {
        return atRating(Assumptions.standard(), ofRating, sheets);
    }

    /**
     * Returns what a share of the rating of the weakest part presses with: {@code p = s F/A}. It is a reading and no
     * suggestion: a force above the allowed one, or a pressure above that of hand presses, is warned of and not refused.
     *
     * @param assumptions where the share that is suggested, of this press, and the limits of pressure are looked up
     * @param ofRating the working share, above zero
     * @param sheets the area of the wet sheets of one layer, above zero
     * @return the setting
     * @throws Refused if a value is out of range
     */
    public Setting atRating(Assumptions assumptions, Quantity<Share> ofRating, Quantity<Area> sheets) {
        Objects.requireNonNull(assumptions, "assumptions");
        double share = Kinds.SHARE.siAboveZero(ofRating, "share of the rating");
        double newtons = PressForce.allowedForce(share, weakestPart().rating().si());
        Amount<Area> area = loadedArea(sheets);
        Allowed allowed = allowed(assumptions);
        List<Notice> notices = new ArrayList<>();
        if (isAbove(newtons, allowed)) {
            notices.add(aboveAllowed(newtons, allowed));
        }
        Amount<SheetPressure> pressure = pressure(newtons, area);
        notices.addAll(PressingModel.pressureWarnings(pressure, assumptions));
        notices.addAll(smallPost(area));
        return new FoundSetting(Kinds.FORCE.ofSi(newtons, "kN"), pressure, area, allowed, List.copyOf(notices));
    }

    private static Amount<SheetPressure> pressure(double newtons, Amount<Area> area) {
        return Kinds.SHEET_PRESSURE.ofSi(PressForce.pressure(newtons, area.si()), "kPa");
    }

    /** A hair of tolerance, so that the allowed pressure itself is not taken for more by rounding. */
    private static boolean isAbove(double newtons, Allowed allowed) {
        return newtons > allowed.force().si() * (1 + 1e-12);
    }

    private Notice aboveAllowed(double newtons, Allowed allowed) {
        Amount<Force> force = Kinds.FORCE.ofSi(newtons, "kN");
        return Notice.warning(
                "press.above-allowed",
                "press \"" + name + "\": " + force + " asked for on the post; its weakest part, the "
                        + allowed.weakest().name() + ", allows " + allowed + ". Press with less or in smaller posts.",
                "press",
                name,
                "given",
                force.toString(),
                "limit",
                allowed.force().toString(),
                "part",
                allowed.weakest().name());
    }

    private List<Notice> smallPost(Amount<Area> area) {
        if (area.si() >= 0.5 * platen()) {
            return List.of();
        }
        return List.of(Notice.note(
                "press.small-post",
                "The sheets cover " + Kinds.SHARE.ofSi(area.si() / platen(), "%")
                        + " of the platen: the same force presses harder on less paper. Hold the pressure, not"
                        + " the force,"
                        + " and lay the post in the middle.",
                "area",
                area.toString()));
    }

    private double platen() {
        return platenWidth.si() * platenLength.si();
    }

    private Setting setting(Assumptions assumptions, double newtons, Amount<Area> area) {
        Amount<Force> force = Kinds.FORCE.ofSi(newtons, "kN");
        Allowed allowed = allowed(assumptions);
        if (isAbove(newtons, allowed)) {
            Notice why = aboveAllowed(newtons, allowed);
            throw new Refused(why.code(), why.text(), why.arguments());
        }
        Amount<SheetPressure> pressure = pressure(newtons, area);
        List<Notice> notices = new ArrayList<>(PressingModel.pressureNotices(pressure, assumptions));
        notices.addAll(smallPost(area));
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

    /**
     * Returns how often a post is pressed.
     *
     * @return 1 to 3
     */
    public int pressings() {
        return pressings;
    }

    /**
     * Returns the ram with its gauge, if it was given.
     *
     * @return the ram
     */
    public Optional<RamGauge> ram() {
        return Optional.ofNullable(ram);
    }

    /**
     * Returns the screw, if it was given.
     *
     * @return the screw
     */
    public Optional<Screw> screw() {
        return Optional.ofNullable(screw);
    }

    /**
     * Returns the lever on the screw, if it was given.
     *
     * @return the lever
     */
    public Optional<Lever> lever() {
        return Optional.ofNullable(lever);
    }

    /**
     * Returns what the people at the lever press with, at the likely friction of the screw.
     *
     * @return the force; empty without a screw
     */
    public Optional<Amount<Force>> byHands() {
        return screw().flatMap(thread ->
                lever().map(bar -> thread.forceOf(bar.torque()).likely()));
    }

    /**
     * Returns what each at the lever pulls for a force on the post.
     *
     * @param force the force on the post
     * @return the pull of each; empty without a screw
     * @throws Refused if the force is out of range, or the screw jams
     */
    public Optional<Amount<Force>> pullFor(Quantity<Force> force) {
        return screw().flatMap(thread -> lever().map(bar -> bar.pullFor(thread.torqueFor(force))));
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Press that
                && name.equals(that.name)
                && parts.equals(that.parts)
                && platenWidth.si() == that.platenWidth.si()
                && platenLength.si() == that.platenLength.si()
                && daylight().map(Amount::si).equals(that.daylight().map(Amount::si))
                && pressings == that.pressings
                && ram().equals(that.ram())
                && screw().equals(that.screw())
                && lever().equals(that.lever());
    }

    @Override
    public int hashCode() {
        return Objects.hash(name, parts, platenWidth.si(), platenLength.si(), pressings);
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
