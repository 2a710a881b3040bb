package org.papermath.evidence;

import java.time.LocalDate;
import java.util.Objects;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Temperature;
import org.jspecify.annotations.Nullable;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Limits;
import org.papermath.quantity.Refused;

/**
 * A measurement with its error. Immutable.
 *
 * @param <Q> the quantity type
 */
public final class Reading<Q extends Quantity<Q>> {
    private final Amount<Q> value;
    private final Amount<Q> error;
    private final @Nullable LocalDate date;

    private Reading(Amount<Q> value, Amount<Q> error, @Nullable LocalDate date) {
        this.value = value;
        this.error = error;
        this.date = date;
    }

    /**
     * Makes a reading.
     *
     * @param <Q> the quantity type
     * @param value what the instrument showed
     * @param error the standard error of it, zero or more, for example half a division of the scale; of a temperature
     *     in kelvin, since a width on the scale is not a point on it
     * @return the reading
     * @throws Refused if the error is of another kind or below zero, or the error of a temperature is not in kelvin
     */
    public static <Q extends Quantity<Q>> Reading<Q> of(Amount<Q> value, Amount<Q> error) {
        Objects.requireNonNull(value, "value");
        // Comparing refuses an error of another kind; an error of zero is well, also where the kind itself begins
        // above zero.
        value.compareTo(error);
        if (error.si() < 0) {
            throw Refused.of(
                    "reading.error",
                    "error of the reading: " + error + " given; it must be zero or more.",
                    "given",
                    error.toString());
        }
        if (error.kind().type() == Temperature.class
                && !error.getUnit().equals(error.kind().siUnit())) {
            throw Refused.of(
                    "reading.temperature-error",
                    "error of the reading: " + error + " given; the error of a temperature is given in kelvin.",
                    "given",
                    error.toString(),
                    "accepted",
                    "K");
        }
        return new Reading<>(value, error, null);
    }

    /**
     * Returns the reading with the day it was taken.
     *
     * @param taken the day, of the years 1800 to 2999
     * @return the reading
     * @throws Refused if the day is out of range
     */
    public Reading<Q> on(LocalDate taken) {
        return new Reading<>(value, error, Limits.day(taken, "day of the reading"));
    }

    /**
     * Returns what the instrument showed.
     *
     * @return the value
     */
    public Amount<Q> value() {
        return value;
    }

    /**
     * Returns the standard error of the value.
     *
     * @return the error
     */
    public Amount<Q> error() {
        return error;
    }

    /**
     * Returns the standard error as a part of the value.
     *
     * @return error over value
     */
    public double relativeError() {
        return error.si() / value.si();
    }

    /**
     * Returns the value one standard error further up, to see what the error does.
     *
     * @return value and error together
     * @throws Refused if that is out of the range of the kind
     */
    public Amount<Q> above() {
        return value.kind().ofSi(value.si() + error.si());
    }

    /**
     * Returns the day the reading was taken, if it is known.
     *
     * @return the day
     */
    public Optional<LocalDate> date() {
        return Optional.ofNullable(date);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Reading<?> that
                && value.kind() == that.value.kind()
                && value.equals(that.value)
                && error.equals(that.error)
                && Objects.equals(date, that.date);
    }

    @Override
    public int hashCode() {
        return Objects.hash(value, error, date);
    }

    @Override
    public String toString() {
        return value + " ± " + error + (date == null ? "" : " (" + date + ")");
    }
}
