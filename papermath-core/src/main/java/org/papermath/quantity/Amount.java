package org.papermath.quantity;

import java.util.Objects;

import javax.measure.Quantity;
import javax.measure.Unit;

import tech.units.indriya.quantity.Quantities;

/**
 * A finite number with a unit and a {@linkplain Kind kind}. Immutable.
 *
 * <p>It is a {@link Quantity} and mixes with those of the reference implementation. Arithmetic runs on {@code double}:
 * one multiplication by the factor of the unit, no exact fractions that grow.
 *
 * <p>{@link #equals} is strict, as in the reference implementation: same unit, same scale, same boxed value; so 1 m and
 * 100 cm are not equal. Use {@link #isEquivalentTo} or {@link #isWithin} to compare across units.
 *
 * @param <Q> the quantity type
 */
public final class Amount<Q extends Quantity<Q>> implements Quantity<Q>, Comparable<Quantity<Q>> {
    private final double value;
    private final Unit<Q> unit;
    private final Kind<Q> kind;
    private final double si;

    Amount(double value, Unit<Q> unit, Kind<Q> kind, double si) {
        // Adding zero turns a negative zero into zero, which would print and compare oddly.
        this.value = value + 0.0;
        this.unit = unit;
        this.kind = kind;
        this.si = si + 0.0;
        if (!Double.isFinite(si)) {
            Kind.requireFinite(si, kind.name());
        }
    }

    /**
     * Returns the kind.
     *
     * @return the kind
     */
    public Kind<Q> kind() {
        return kind;
    }

    /**
     * Returns the number in the unit of this amount.
     *
     * @return a finite number
     */
    public double value() {
        return value;
    }

    /**
     * Returns the number in another unit.
     *
     * @param other a unit of the same dimension
     * @return a finite number
     * @throws Refused if the unit does not measure this kind
     */
    public double in(Unit<Q> other) {
        return to(other).value;
    }

    /**
     * Returns the number in the unit of a code.
     *
     * @param code a unit code of the kind
     * @return a finite number
     * @throws Refused if the code is not one of the kind
     */
    public double in(String code) {
        return kind.ofSiUnchecked(si, code).value;
    }

    /**
     * Returns the number in the coherent SI unit of the kind.
     *
     * @return a finite number
     */
    public double si() {
        return si;
    }

    @Override
    public Double getValue() {
        return value;
    }

    @Override
    public Unit<Q> getUnit() {
        return unit;
    }

    @Override
    public Scale getScale() {
        return Scale.ABSOLUTE;
    }

    @Override
    public Amount<Q> to(Unit<Q> other) {
        if (other == unit || other.equals(unit)) {
            return this;
        }
        Units.Symbol symbol = kind.symbolOf(other);
        if (symbol != null) {
            @SuppressWarnings("unchecked")
            Unit<Q> known = (Unit<Q>) symbol.unit();
            return new Amount<>((si - symbol.offset()) / symbol.factor(), known, kind, si);
        }
        kind.toSi(1, other); // refuses a unit of another dimension
        return new Amount<>(kind.siUnit().getConverterTo(other).convert(si), other, kind, si);
    }

    /**
     * Returns the same amount in the unit of a code.
     *
     * @param code a unit code of the kind
     * @return the amount in that unit
     * @throws Refused if the code is not one of the kind
     */
    public Amount<Q> to(String code) {
        return kind.ofSiUnchecked(si, code);
    }

    @Override
    public Amount<Q> add(Quantity<Q> that) {
        return plus(that, 1);
    }

    @Override
    public Amount<Q> subtract(Quantity<Q> that) {
        return plus(that, -1);
    }

    private Amount<Q> plus(Quantity<Q> that, int sign) {
        Amount<Q> other = kind.checkKind(that);
        if (kind == Kinds.TEMPERATURE) {
            throw Refused.of("quantity.temperature-sum",
                    "temperature: " + this + " and " + other + " cannot be added or subtracted; a temperature is a point on a"
                            + " scale. Work with the difference in kelvin yourself.",
                    "first", toString(), "second", other.toString());
        }
        double sum = si + sign * other.si;
        if (unit.equals(other.unit)) {
            return new Amount<>(value + sign * other.value, unit, kind, sum);
        }
        return kind.ofSiIn(sum, unit);
    }

    @Override
    public Quantity<?> divide(Quantity<?> that) {
        return Quantities.getQuantity(value / that.getValue().doubleValue(), unit.divide(that.getUnit()));
    }

    @Override
    public Amount<Q> divide(Number divisor) {
        return times(1 / divisor.doubleValue());
    }

    @Override
    public Quantity<?> multiply(Quantity<?> that) {
        return Quantities.getQuantity(value * that.getValue().doubleValue(), unit.multiply(that.getUnit()));
    }

    @Override
    public Amount<Q> multiply(Number factor) {
        return times(factor.doubleValue());
    }

    private Amount<Q> times(double factor) {
        Kind.requireFinite(factor, "factor");
        if (kind == Kinds.TEMPERATURE) {
            return kind.ofSiIn(si * factor, unit);
        }
        return new Amount<>(value * factor, unit, kind, si * factor);
    }

    @Override
    public Quantity<?> inverse() {
        return Quantities.getQuantity(1 / value, unit.inverse());
    }

    @Override
    public Amount<Q> negate() {
        return times(-1);
    }

    @Override
    @SuppressWarnings("unchecked")
    public <T extends Quantity<T>> Quantity<T> asType(Class<T> type) {
        if (type == kind.type()) {
            return (Quantity<T>) this;
        }
        throw new ClassCastException("a quantity of kind " + kind.name() + " is not a " + type.getSimpleName());
    }

    @Override
    public boolean isEquivalentTo(Quantity<Q> that) {
        Amount<Q> other = kind.checkKind(that);
        return Double.compare(si, other.si) == 0;
    }

    /**
     * Tells whether this amount and another differ by no more than a tolerance, whatever their units.
     *
     * @param that the other amount, of the same kind
     * @param tolerance the greatest difference, of the same kind, zero or more
     * @return whether they agree
     * @throws Refused if one of them is of another kind
     */
    public boolean isWithin(Quantity<Q> that, Quantity<Q> tolerance) {
        return Math.abs(si - kind.checkKind(that).si) <= Math.abs(kind.checkKind(tolerance).si);
    }

    /**
     * Tells whether this amount and another differ by no more than a share of the other, whatever their units.
     *
     * @param that the other amount, of the same kind
     * @param relative the greatest difference as a fraction of the other, for example {@code 0.01}
     * @return whether they agree
     * @throws Refused if the other is of another kind
     */
    public boolean isWithin(Quantity<Q> that, double relative) {
        double other = kind.checkKind(that).si;
        return Math.abs(si - other) <= Math.abs(relative * other);
    }

    /** Compares by size, across units; not consistent with {@link #equals}, as in the reference implementation. */
    @Override
    public int compareTo(Quantity<Q> that) {
        return Double.compare(si, kind.checkKind(that).si);
    }

    @Override
    public boolean equals(Object other) {
        if (this == other) {
            return true;
        }
        return other instanceof Quantity<?> that
                && Objects.equals(unit, that.getUnit())
                && Objects.equals(getScale(), that.getScale())
                && Objects.equals(getValue(), that.getValue());
    }

    @Override
    public int hashCode() {
        return Objects.hash(unit, getScale(), getValue());
    }

    /**
     * Returns four significant digits and the unit, for people. Use {@link Units#print} for text that reads back to the
     * same bits.
     */
    @Override
    public String toString() {
        Units.Symbol symbol = kind.symbolOf(unit);
        return Units.forPeople(value, symbol != null ? symbol.label() : Units.label(unit));
    }
}
