package org.papermath.evidence;

import java.time.LocalDate;
import java.util.Optional;

import javax.measure.Quantity;

import org.jspecify.annotations.Nullable;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kind;

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
     * @param value what the instrument said
     * @param error the standard error of it, zero or more, for example half a division of the scale
     * @return the reading
     * @throws org.papermath.quantity.Refused if the error is of another kind or below zero
     */
    public static <Q extends Quantity<Q>> Reading<Q> of(Amount<Q> value, Amount<Q> error) {
        Kind<Q> kind = value.kind();
        kind.siWithin(error, "error of the reading", 0, Double.POSITIVE_INFINITY);
        return new Reading<>(value, error, null);
    }

    /**
     * Returns the reading with the day it was taken.
     *
     * @param taken the day
     * @return the reading
     */
    public Reading<Q> on(LocalDate taken) {
        return new Reading<>(value, error, taken);
    }

    /**
     * Returns what the instrument said.
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
     * Returns the day the reading was taken, if it is known.
     *
     * @return the day
     */
    public Optional<LocalDate> date() {
        return Optional.ofNullable(date);
    }

    @Override
    public String toString() {
        return value + " ± " + error + (date == null ? "" : " (" + date + ")");
    }
}
