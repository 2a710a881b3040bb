package org.papermath.quantity;

import javax.measure.quantity.Area;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Force;
import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Power;
import javax.measure.quantity.Pressure;
import javax.measure.quantity.Temperature;
import javax.measure.quantity.Time;
import javax.measure.quantity.Volume;

/**
 * Short factories of everyday amounts, made for static import: {@code mm(148)}, {@code grams(4.92)}, {@code hours(2)}.
 *
 * <pre>{@code
 * mm(148).to("in"); // 5.827 in
 * grams(4.92).add(grams(1)); // 5.92 g
 * hours(2).in("min"); // 120.0
 * }</pre>
 *
 * <p>Every one of them throws {@link Refused} for a value that is not a number or that its kind cannot have, such as a
 * negative mass.
 */
public final class Amounts {
    private Amounts() {}

    /**
     * Makes an amount in millimetres.
     *
     * @param value a finite number
     * @return the amount
     * @throws Refused if the value is not a number or out of range
     */
    public static Amount<Length> mm(double value) {
        return Kinds.LENGTH.of(value, "mm");
    }

    /**
     * Makes an amount in centimetres.
     *
     * @param value a finite number
     * @return the amount
     * @throws Refused if the value is not a number or out of range
     */
    public static Amount<Length> cm(double value) {
        return Kinds.LENGTH.of(value, "cm");
    }

    /**
     * Makes an amount in metres.
     *
     * @param value a finite number
     * @return the amount
     * @throws Refused if the value is not a number or out of range
     */
    public static Amount<Length> metres(double value) {
        return Kinds.LENGTH.of(value, "m");
    }

    /**
     * Makes an amount in micrometres.
     *
     * @param value a finite number
     * @return the amount
     * @throws Refused if the value is not a number or out of range
     */
    public static Amount<Length> micrometres(double value) {
        return Kinds.LENGTH.of(value, "um");
    }

    /**
     * Makes an amount in inches.
     *
     * @param value a finite number
     * @return the amount
     * @throws Refused if the value is not a number or out of range
     */
    public static Amount<Length> inches(double value) {
        return Kinds.LENGTH.of(value, "in");
    }

    /**
     * Makes an amount in feet.
     *
     * @param value a finite number
     * @return the amount
     * @throws Refused if the value is not a number or out of range
     */
    public static Amount<Length> feet(double value) {
        return Kinds.LENGTH.of(value, "ft");
    }

    /**
     * Makes an amount in thousandths of an inch.
     *
     * @param value a finite number
     * @return the amount
     * @throws Refused if the value is not a number or out of range
     */
    public static Amount<Length> mils(double value) {
        return Kinds.LENGTH.of(value, "mil");
    }

    /**
     * Makes an amount in square metres.
     *
     * @param value a finite number
     * @return the amount
     * @throws Refused if the value is not a number or out of range
     */
    public static Amount<Area> squareMetres(double value) {
        return Kinds.AREA.of(value, "m2");
    }

    /**
     * Makes an amount in square inches.
     *
     * @param value a finite number
     * @return the amount
     * @throws Refused if the value is not a number or out of range
     */
    public static Amount<Area> squareInches(double value) {
        return Kinds.AREA.of(value, "in2");
    }

    /**
     * Makes an amount in grams.
     *
     * @param value a finite number
     * @return the amount
     * @throws Refused if the value is not a number or out of range
     */
    public static Amount<Mass> grams(double value) {
        return Kinds.MASS.of(value, "g");
    }

    /**
     * Makes an amount in kilograms.
     *
     * @param value a finite number
     * @return the amount
     * @throws Refused if the value is not a number or out of range
     */
    public static Amount<Mass> kilograms(double value) {
        return Kinds.MASS.of(value, "kg");
    }

    /**
     * Makes an amount in avoirdupois pounds.
     *
     * @param value a finite number
     * @return the amount
     * @throws Refused if the value is not a number or out of range
     */
    public static Amount<Mass> pounds(double value) {
        return Kinds.MASS.of(value, "lb");
    }

    /**
     * Makes an amount in avoirdupois ounces.
     *
     * @param value a finite number
     * @return the amount
     * @throws Refused if the value is not a number or out of range
     */
    public static Amount<Mass> ounces(double value) {
        return Kinds.MASS.of(value, "oz");
    }

    /**
     * Makes an amount in litres.
     *
     * @param value a finite number
     * @return the amount
     * @throws Refused if the value is not a number or out of range
     */
    public static Amount<Volume> litres(double value) {
        return Kinds.VOLUME.of(value, "L");
    }

    /**
     * Makes an amount in millilitres.
     *
     * @param value a finite number
     * @return the amount
     * @throws Refused if the value is not a number or out of range
     */
    public static Amount<Volume> millilitres(double value) {
        return Kinds.VOLUME.of(value, "mL");
    }

    /**
     * Makes an amount in US gallons.
     *
     * @param value a finite number
     * @return the amount
     * @throws Refused if the value is not a number or out of range
     */
    public static Amount<Volume> usGallons(double value) {
        return Kinds.VOLUME.of(value, "gal_us");
    }

    /**
     * Makes an amount in US fluid ounces.
     *
     * @param value a finite number
     * @return the amount
     * @throws Refused if the value is not a number or out of range
     */
    public static Amount<Volume> usFluidOunces(double value) {
        return Kinds.VOLUME.of(value, "floz_us");
    }

    /**
     * Makes an amount in cubic metres.
     *
     * @param value a finite number
     * @return the amount
     * @throws Refused if the value is not a number or out of range
     */
    public static Amount<Volume> cubicMetres(double value) {
        return Kinds.VOLUME.of(value, "m3");
    }

    /**
     * Makes an amount in hours.
     *
     * @param value a finite number
     * @return the amount
     * @throws Refused if the value is not a number or out of range
     */
    public static Amount<Time> hours(double value) {
        return Kinds.TIME.of(value, "h");
    }

    /**
     * Makes an amount in minutes.
     *
     * @param value a finite number
     * @return the amount
     * @throws Refused if the value is not a number or out of range
     */
    public static Amount<Time> minutes(double value) {
        return Kinds.TIME.of(value, "min");
    }

    /**
     * Makes an amount in seconds.
     *
     * @param value a finite number
     * @return the amount
     * @throws Refused if the value is not a number or out of range
     */
    public static Amount<Time> seconds(double value) {
        return Kinds.TIME.of(value, "s");
    }

    /**
     * Makes an amount in days of 24 hours.
     *
     * @param value a finite number
     * @return the amount
     * @throws Refused if the value is not a number or out of range
     */
    public static Amount<Time> days(double value) {
        return Kinds.TIME.of(value, "d");
    }

    /**
     * Makes an amount in degrees Celsius.
     *
     * @param value a finite number
     * @return the amount
     * @throws Refused if the value is not a number or out of range
     */
    public static Amount<Temperature> celsius(double value) {
        return Kinds.TEMPERATURE.of(value, "Cel");
    }

    /**
     * Makes an amount in degrees Fahrenheit.
     *
     * @param value a finite number
     * @return the amount
     * @throws Refused if the value is not a number or out of range
     */
    public static Amount<Temperature> fahrenheit(double value) {
        return Kinds.TEMPERATURE.of(value, "degF");
    }

    /**
     * Makes an amount in kilopascals of air pressure.
     *
     * @param value a finite number
     * @return the amount
     * @throws Refused if the value is not a number or out of range
     */
    public static Amount<Pressure> kilopascals(double value) {
        return Kinds.AIR_PRESSURE.of(value, "kPa");
    }

    /**
     * Makes an amount in pascals of air pressure.
     *
     * @param value a finite number
     * @return the amount
     * @throws Refused if the value is not a number or out of range
     */
    public static Amount<Pressure> pascals(double value) {
        return Kinds.AIR_PRESSURE.of(value, "Pa");
    }

    /**
     * Makes an amount in kilonewtons.
     *
     * @param value a finite number
     * @return the amount
     * @throws Refused if the value is not a number or out of range
     */
    public static Amount<Force> kilonewtons(double value) {
        return Kinds.FORCE.of(value, "kN");
    }

    /**
     * Makes an amount in short tons of force (2000 lbf).
     *
     * @param value a finite number
     * @return the amount
     * @throws Refused if the value is not a number or out of range
     */
    public static Amount<Force> shortTons(double value) {
        return Kinds.FORCE.of(value, "tonf_us");
    }

    /**
     * Makes an amount in metric tons of force (1000 kgf).
     *
     * @param value a finite number
     * @return the amount
     * @throws Refused if the value is not a number or out of range
     */
    public static Amount<Force> metricTons(double value) {
        return Kinds.FORCE.of(value, "tf");
    }

    /**
     * Makes an amount in long tons of force (2240 lbf).
     *
     * @param value a finite number
     * @return the amount
     * @throws Refused if the value is not a number or out of range
     */
    public static Amount<Force> longTons(double value) {
        return Kinds.FORCE.of(value, "tonf_uk");
    }

    /**
     * Makes an amount in watts.
     *
     * @param value a finite number
     * @return the amount
     * @throws Refused if the value is not a number or out of range
     */
    public static Amount<Power> watts(double value) {
        return Kinds.POWER.of(value, "W");
    }

    /**
     * Makes an amount in per cent of something the receiving method names.
     *
     * @param value a finite number
     * @return the amount
     * @throws Refused if the value is not a number or out of range
     */
    public static Amount<Dimensionless> percent(double value) {
        return Kinds.NUMBER.of(value, "%");
    }
}
