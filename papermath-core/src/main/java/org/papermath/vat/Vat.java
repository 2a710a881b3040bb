package org.papermath.vat;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Temperature;
import javax.measure.quantity.Volume;
import org.jspecify.annotations.Nullable;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Reading;
import org.papermath.evidence.Scope;
import org.papermath.mould.Mould;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Limits;
import org.papermath.quantity.Name;
import org.papermath.quantity.Refused;

/** A vat: its name, the volume it is worked at, the temperature of the stock in it, its sides inside. Immutable. */
public final class Vat {
    private static final Amount<Temperature> ROOM = Kinds.TEMPERATURE.of(20, "Cel");

    private final String name;
    private final Amount<Volume> volume;
    private final Amount<Temperature> temperature;
    private final @Nullable Amount<Length> width;
    private final @Nullable Amount<Length> length;
    private final boolean strained;
    private final @Nullable Amount<Volume> runDown;

    private Vat(
            String name,
            Amount<Volume> volume,
            Amount<Temperature> temperature,
            @Nullable Amount<Length> width,
            @Nullable Amount<Length> length,
            boolean strained,
            @Nullable Amount<Volume> runDown) {
        this.name = name;
        this.volume = volume;
        this.temperature = temperature;
        this.width = width;
        this.length = length;
        this.strained = strained;
        this.runDown = runDown;
    }

    /**
     * Makes a vat worked at 20 °C.
     *
     * @param name its name, not empty; calibrated values are kept under it
     * @param workingVolume the volume at the mark it is worked at, 0.05 L to 20 m³
     * @return the vat
     * @throws Refused if a value is out of range
     */
    public static Vat of(String name, Quantity<Volume> workingVolume) {
        Objects.requireNonNull(name, "name");
        String called = Name.checkKey(name, "vat");
        if (called.isEmpty()) {
            throw Refused.of("equipment.unnamed", "vat: the name is empty; calibrated values are stored under it.");
        }
        return new Vat(
                called,
                Limits.VAT_VOLUME.check(workingVolume, "working volume of the vat"),
                ROOM,
                null,
                null,
                true,
                null);
    }

    /**
     * Returns the vat worked at another temperature.
     *
     * @param temperature the temperature of the stock, 5 to 60 °C
     * @return the vat
     * @throws Refused if the temperature is out of range
     */
    public Vat at(Quantity<Temperature> temperature) {
        return new Vat(
                name,
                volume,
                Limits.VAT_TEMPERATURE.check(temperature, "vat temperature"),
                width,
                length,
                strained,
                runDown);
    }

    /**
     * Returns the least vat for a mould: its sides are those of the opening with the frame around it and room for the
     * hands, its stock is as deep as given all over.
     *
     * <pre>{@code
     * Vat.around(Mould.of("A4", mm(210), mm(297)), mm(25), mm(75), mm(200)).workingVolume(); // 40.75 L
     * }</pre>
     *
     * <p>What a hand needs beside the frame, and how deep the stock must stand to tip the mould under, is the vatman's to say;
     * 75 mm all around and a good half of the mould's short side are common practice, no source.
     *
     * @param mould the mould
     * @param frame how much mould and deckle reach beyond the opening on each side, zero or more
     * @param room what is to be free between frame and vat on each side, zero or more
     * @param depth depth of the stock, above zero
     * @return the vat, with its sides inside
     * @throws Refused if a value is out of range, or such a vat is
     */
    public static Vat around(Mould mould, Quantity<Length> frame, Quantity<Length> room, Quantity<Length> depth) {
        Objects.requireNonNull(mould, "mould");
        double more = 2 * (Kinds.LENGTH.si(frame, "frame") + Kinds.LENGTH.si(room, "room for the hands"));
        double width = mould.deckle().width().si() + more;
        double length = mould.deckle().height().si() + more;
        double volume = width * length * Kinds.LENGTH.siAboveZero(depth, "depth of the stock");
        return of("vat for " + mould.name(), Kinds.VOLUME.ofSi(volume, "L"))
                .inside(Kinds.LENGTH.ofSi(width, "mm"), Kinds.LENGTH.ofSi(length, "mm"));
    }

    /**
     * Returns the vat with the sides it has inside, at the mark, which decide whether a mould goes in.
     *
     * @param width one side, within {@link Limits#VAT_SIDE}
     * @param length the other side, within {@link Limits#VAT_SIDE}
     * @return the vat
     * @throws Refused if a side is out of range
     */
    public Vat inside(Quantity<Length> width, Quantity<Length> length) {
        return new Vat(
                name,
                volume,
                temperature,
                Limits.VAT_SIDE.check(width, "width of the vat inside"),
                Limits.VAT_SIDE.check(length, "length of the vat inside"),
                strained,
                runDown);
    }

    /**
     * Returns the vat bailed with a plain jug. What is bailed to come back to the mark then takes its fibre along;
     * through a strainer, which is taken for granted otherwise, the fibre goes back.
     *
     * @return the vat
     */
    public Vat withoutStrainer() {
        return new Vat(name, volume, temperature, width, length, false, runDown);
    }

    /**
     * Returns the vat run down at the end of a batch: the last sheets get no fresh stock, but water is strained out as the
     * fibre goes, until the level stands at the least the mould can still be dipped from.
     *
     * @param least that level, above zero and below the working volume
     * @return the vat
     * @throws Refused if it is not
     */
    public Vat runDownTo(Quantity<Volume> least) {
        Amount<Volume> level = Limits.VAT_VOLUME.check(least, "level the vat is run down to");
        if (!(level.si() < volume.si())) {
            throw Refused.of(
                    "vat.run-down",
                    name + ": " + level + " given as the level the vat is run down to; it is worked at " + volume
                            + ". Give the least the mould can still be dipped from.",
                    "given",
                    level.toString(),
                    "most",
                    volume.toString(),
                    "member",
                    "runDownTo");
        }
        return new Vat(name, volume, temperature, width, length, strained, level);
    }

    /**
     * Returns the level the vat is run down to at the end of a batch.
     *
     * @return the volume, in the unit it was given in, or empty if it is kept at its mark
     */
    public Optional<Amount<Volume>> runDown() {
        return Optional.ofNullable(runDown);
    }

    /**
     * Returns whether what is bailed is strained and its fibre given back.
     *
     * @return whether there is a strainer
     */
    public boolean isStrained() {
        return strained;
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
     * Returns the volume at the mark it is worked at.
     *
     * @return the volume, in the unit it was given in
     */
    public Amount<Volume> workingVolume() {
        return volume;
    }

    /**
     * Returns the temperature of the stock.
     *
     * @return the temperature, in the unit it was given in
     */
    public Amount<Temperature> temperature() {
        return temperature;
    }

    /**
     * Returns one of its sides inside, if it is known.
     *
     * @return the side, in the unit it was given in
     */
    public Optional<Amount<Length>> width() {
        return Optional.ofNullable(width);
    }

    /**
     * Returns the other of its sides inside, if it is known.
     *
     * @return the side, in the unit it was given in
     */
    public Optional<Amount<Length>> length() {
        return Optional.ofNullable(length);
    }

    /**
     * Calibrates what is lifted with each sheet by sheets weighed out of the oven: the mean of dry over planned.
     *
     * @param assumptions what is taken for the rest, in which the scatter of single sheets is looked up
     * @param scope the vat, {@code Scope.at(name)}
     * @param planned the oven-dry mass of a sheet as it was planned, above zero
     * @param ovenDry the sheets out of the oven, one or more
     * @return the assumptions with {@code vat.lift-factor} in that scope
     * @throws Refused if nothing was weighed or the planned mass is not above zero
     */
    public static Assumptions calibrateLift(
            Assumptions assumptions, Scope scope, Quantity<Mass> planned, List<Reading<Mass>> ovenDry) {
        Objects.requireNonNull(assumptions, "assumptions");
        Objects.requireNonNull(scope, "scope");
        Objects.requireNonNull(ovenDry, "ovenDry");
        double wanted = Kinds.MASS.siAboveZero(planned, "planned oven-dry mass of a sheet");
        double mean = ovenDry.stream()
                .mapToDouble(sheet -> sheet.value().si())
                .average()
                .orElseThrow(() ->
                        Refused.of("vat.nothing-weighed", "sheets out of the oven: none given; weigh one or more."));
        double likely = mean / wanted;
        // Single sheets scatter from hand to hand; the mean of several less.
        double half = assumptions.si("sheet.scatter-grammage", Scope.GENERAL) / Math.sqrt(ovenDry.size());
        return assumptions.measuredFactor("vat.lift-factor", scope, likely, half);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Vat that
                && name.equals(that.name)
                && volume.si() == that.volume.si()
                && temperature.si() == that.temperature.si()
                && width().map(Amount::si).equals(that.width().map(Amount::si))
                && length().map(Amount::si).equals(that.length().map(Amount::si))
                && strained == that.strained
                && runDown().map(Amount::si).equals(that.runDown().map(Amount::si));
    }

    @Override
    public int hashCode() {
        return Objects.hash(
                name,
                volume.si(),
                temperature.si(),
                width().map(Amount::si),
                length().map(Amount::si),
                strained,
                runDown().map(Amount::si));
    }

    @Override
    public String toString() {
        return name + " (vat, " + workingVolume() + ", " + temperature() + ")";
    }
}
