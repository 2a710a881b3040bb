package org.papermath.quantity;

import java.util.List;
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
            throw zeroDivisor();
        }
        return kind == Kinds.TEMPERATURE ? kind.ofSiIn(si / by, unit) : new Amount<>(value / by, unit, kind);
    }

    private Refused zeroDivisor() {
        return Refused.of(
                "quantity.divided-by-zero",
                kind.name() + ": " + this + " cannot be divided by 0.",
                "quantity",
                kind.name(),
                "given",
                toString());
    }

    @Override
    public Quantity<?> multiply(Quantity<?> that) {
        return product(factor() * that.getValue().doubleValue(), factorUnit().multiply(that.getUnit()), "product");
    }

    @Override
    public Amount<Q> multiply(Number factor) {
        return scaled(factor.doubleValue());
    }

    private Amount<Q> scaled(double factor) {
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

    /**
     * Returns this amount over another as an amount of the kind it is: force over area a pressure, mass over area a
     * grammage, fibre over stock a consistency. Of two alike it is a {@link Kinds#SHARE} or, where it may be more than
     * one, a {@link Kinds#NUMBER}. The kind has to be named, since a gram a litre may be fibre per volume, the strength of
     * a solution or a density.
     *
     * <pre>{@code
     * kilonewtons(60).over(squareMetres(0.12), Kinds.SHEET_PRESSURE); // 500 kPa
     * grams(62.5).over(squareMetres(0.3034), Kinds.GRAMMAGE); // 206 g/m²
     * grams(7.3).over(grams(120), Kinds.CONSISTENCY); // 6.083 %
     * }</pre>
     *
     * @param <R> the quantity type of the quotient
     * @param divisor an amount, or any other quantity; not zero
     * @param into the kind the quotient is
     * @return the quotient, in the usual unit of its kind
     * @throws Refused if the quotient has not the dimension of that kind or is out of its range, if the divisor is zero, or
     *     if one of them is a temperature
     */
    public <R extends Quantity<R>> Amount<R> over(Quantity<?> divisor, Kind<R> into) {
        return combined(divisor, true, into);
    }

    /**
     * Returns this amount times another as an amount of the kind it is: length times length an area, area times grammage a
     * mass, a mass times a share a mass.
     *
     * <pre>{@code
     * mm(300).times(mm(420), Kinds.AREA); // 0.126 m²
     * squareMetres(0.126).times(Grammage.gsm(180), Kinds.MASS); // 22.68 g
     * grams(650).times(Share.percent(65), Kinds.MASS); // 422.5 g
     * }</pre>
     *
     * @param <R> the quantity type of the product
     * @param factor an amount, or any other quantity
     * @param into the kind the product is
     * @return the product, in the usual unit of its kind
     * @throws Refused if the product has not the dimension of that kind or is out of its range, or if one of them is a
     *     temperature
     */
    public <R extends Quantity<R>> Amount<R> times(Quantity<?> factor, Kind<R> into) {
        return combined(factor, false, into);
    }

    private <R extends Quantity<R>> Amount<R> combined(Quantity<?> other, boolean over, Kind<R> into) {
        Objects.requireNonNull(other, over ? "divisor" : "factor");
        Objects.requireNonNull(into, "into");
        Unit<?> its = other instanceof Amount<?> amount
                ? amount.kind.siUnit()
                : other.getUnit().getSystemUnit();
        if (kind == Kinds.TEMPERATURE || its.isCompatible(Kinds.TEMPERATURE.siUnit())) {
            throw Refused.of(
                    "quantity.temperature-product",
                    "temperature: " + this + (over ? " over " : " times ") + people(other)
                            + " is asked for; a temperature is a point on a scale and is in no quotient or product. Work"
                            + " with the kelvins yourself.",
                    "first",
                    toString(),
                    "second",
                    people(other));
        }
        Unit<?> made = over ? kind.siUnit().divide(its) : kind.siUnit().multiply(its);
        if (!made.isCompatible(into.siUnit())) {
            throw otherKind(other, over, into, made);
        }
        double second = siOf(other);
        if (over && second == 0) {
            throw zeroDivisor();
        }
        return into.ofSi(over ? si / second : si * second, into.codes().get(0));
    }

    private static double siOf(Quantity<?> quantity) {
        if (quantity instanceof Amount<?> amount) {
            return amount.si;
        }
        return inSystemUnits(quantity);
    }

    private static <T extends Quantity<T>> double inSystemUnits(Quantity<T> quantity) {
        double value = quantity.getValue().doubleValue();
        Kind.requireFinite(value, "quantity");
        return quantity.getUnit()
                .getConverterTo(quantity.getUnit().getSystemUnit())
                .convert(value);
    }

    private static String people(Quantity<?> quantity) {
        return quantity instanceof Amount<?>
                ? quantity.toString()
                : Units.forPeople(quantity.getValue().doubleValue(), Units.label(quantity.getUnit()));
    }

    private Refused otherKind(Quantity<?> other, boolean over, Kind<?> into, Unit<?> made) {
        List<String> names = Kinds.all().stream()
                .filter(known -> made.isCompatible(known.siUnit()))
                .map(Kind::name)
                .toList();
        String what = this + (over ? " over " : " times ") + people(other);
        return Refused.of(
                "quantity.other-kind",
                into.name() + ": " + what + " is not " + Kind.article(into.name()) + ". "
                        + (names.isEmpty()
                                ? "No kind has its unit, " + made + ". Check the two amounts."
                                : "It can be: " + String.join(", ", names) + ". Name what is meant, or check the two"
                                        + " amounts."),
                "given",
                what,
                "wantedKind",
                into.name(),
                "kinds",
                String.join(", ", names));
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
        return scaled(-1);
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
