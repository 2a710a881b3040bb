package org.papermath.quantity;

import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.Unit;
import org.jspecify.annotations.Nullable;
import tech.units.indriya.quantity.Quantities;

/**
 * A finite number with a unit and a {@linkplain Kind kind}. Immutable.
 *
 * <p>It is a {@link Quantity} and mixes with those of the reference implementation. Arithmetic runs on {@code double}:
 * one multiplication by the factor of the unit, no exact fractions that grow.
 *
 * <p>{@link #equals} is strict, as in the reference implementation: same unit, same scale, same boxed value; so 1 m and
 * 100 cm are not equal. The kind does not count, or equality would not carry over by way of a quantity that has none.
 * Use {@link #isEquivalentTo} or {@link #isWithin} to compare across units; they refuse another kind.
 *
 * @param <Q> the quantity type
 */
@SuppressWarnings("ComparableType") // as in the units API: amounts compare with the quantities of others
public final class Amount<Q extends Quantity<Q>> implements Quantity<Q>, Comparable<Quantity<Q>> {
    private final double value;
    private final Unit<Q> unit;
    private final Kind<Q> kind;
    /** The row of the table the unit has; null for a unit outside it. */
    private final Units.@Nullable Symbol symbol;

    private final double si;

    Amount(double value, Unit<Q> unit, Kind<Q> kind) {
        this(value, unit, kind.symbolOf(unit), kind);
    }

    Amount(double value, Unit<Q> unit, Units.@Nullable Symbol symbol, Kind<Q> kind) {
        // Adding zero turns a negative zero into zero, which would print and compare oddly.
        this.value = value + 0.0;
        this.unit = unit;
        this.kind = kind;
        this.symbol = symbol;
        // Always worked out from the value, so that equal amounts, and an amount read back from its text, calculate
        // alike.
        this.si = (symbol != null
                        ? this.value * symbol.factor() + symbol.offset()
                        : unit.getConverterTo(kind.siUnit()).convert(this.value))
                + 0.0;
        Kind.requireFinite(this.value, kind.name());
        Kind.requireFinite(si, kind.name());
    }

    /**
     * Returns the kind.
     *
     * @return the kind
     */
    public Kind<Q> kind() {
        return kind;
    }

    Units.@Nullable Symbol symbol() {
        return symbol;
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
        return to(code).value;
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
        return kind.ofSiIn(si, other);
    }

    /**
     * Returns the same amount in the unit of a code.
     *
     * @param code a unit code of the kind
     * @return the amount in that unit
     * @throws Refused if the code is not one of the kind
     */
    public Amount<Q> to(String code) {
        Amount<Q> printed = kind.ofSiUnchecked(si, code);
        return printed.unit == unit ? this : printed;
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
            throw Refused.of(
                    "quantity.temperature-sum",
                    "temperature: " + this + " and " + other
                            + " cannot be added or subtracted; a temperature is a point on a"
                            + " scale. Work with the difference in kelvin yourself.",
                    "first",
                    toString(),
                    "second",
                    other.toString());
        }
        if (unit.equals(other.unit)) {
            return new Amount<>(value + sign * other.value, unit, kind);
        }
        return kind.ofSiIn(si + sign * other.si, unit);
    }

    @Override
    public Quantity<?> divide(Quantity<?> that) {
        return product(factor() / that.getValue().doubleValue(), factorUnit().divide(that.getUnit()), "quotient");
    }

    @Override
    public Amount<Q> divide(Number divisor) {
        double by = divisor.doubleValue();
        Kind.requireFinite(by, "divisor");
        if (by == 0) {
            throw Refused.of(
                    "quantity.divided-by-zero",
                    kind.name() + ": " + this + " cannot be divided by 0.",
                    "quantity",
                    kind.name(),
                    "given",
                    toString());
        }
        return kind == Kinds.TEMPERATURE ? kind.ofSiIn(si / by, unit) : new Amount<>(value / by, unit, kind);
    }

    @Override
    public Quantity<?> multiply(Quantity<?> that) {
        return product(factor() * that.getValue().doubleValue(), factorUnit().multiply(that.getUnit()), "product");
    }

    @Override
    public Amount<Q> multiply(Number factor) {
        return times(factor.doubleValue());
    }

    private Amount<Q> times(double factor) {
        Kind.requireFinite(factor, "factor");
        return kind == Kinds.TEMPERATURE ? kind.ofSiIn(si * factor, unit) : new Amount<>(value * factor, unit, kind);
    }

    /** The number that stands in a product: of a temperature the kelvins, since degrees have their zero elsewhere. */
    private double factor() {
        return kind == Kinds.TEMPERATURE ? si : value;
    }

    private Unit<Q> factorUnit() {
        return kind == Kinds.TEMPERATURE ? kind.siUnit() : unit;
    }

    private static Quantity<?> product(double result, Unit<?> unit, String what) {
        Kind.requireFinite(result, what);
        return Quantities.getQuantity(result, unit);
    }

    @Override
    public Quantity<?> inverse() {
        return product(1 / factor(), factorUnit().inverse(), "inverse");
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

    /**
     * Returns whether this amount and another are the same whatever their units, but for the last digits that a
     * conversion may cost: 1 in is equivalent to 25.4 mm.
     *
     * @param that the other amount, of the same kind
     * @return whether they are the same
     * @throws Refused if the other is of another kind
     */
    @Override
    public boolean isEquivalentTo(Quantity<Q> that) {
        double other = kind.checkKind(that).si;
        // The shift of a temperature scale takes its digits from the size of the shift, however small the sum.
        double size = Math.max(Math.max(Math.abs(si), Math.abs(other)), kind == Kinds.TEMPERATURE ? 273.15 : 0);
        return Math.abs(si - other) <= 4 * Math.ulp(size);
    }

    /**
     * Returns whether this amount and another differ by no more than a tolerance, whatever their units.
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
     * Returns whether this amount and another differ by no more than a share of the other, whatever their units.
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
        return Units.forPeople(value, symbol != null ? symbol.label() : Units.label(unit));
    }
}
