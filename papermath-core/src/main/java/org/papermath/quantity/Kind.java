package org.papermath.quantity;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.Unit;
import org.jspecify.annotations.Nullable;
import org.papermath.text.Digits;

/**
 * A kind of quantity: its name, its coherent SI unit, the unit codes it accepts and the range it can have at all.
 *
 * <p>Consistency, moisture, dose and shrinkage are all per cents; the kind is what keeps them apart at run time, since
 * type parameters are erased. The kinds are the constants of {@link Kinds}.
 *
 * @param <Q> the quantity type
 */
public final class Kind<Q extends Quantity<Q>> {
    private final String name;
    private final Class<Q> type;
    private final Unit<Q> siUnit;
    private final double low;
    private final boolean lowOpen;
    private final double high;
    private final List<Units.Symbol> symbols;
    /** The same for going through them, which is done for every amount. */
    private final Units.Symbol[] rows;

    private final Map<String, Units.Symbol> byText;

    Kind(
            String name,
            Class<Q> type,
            Unit<Q> siUnit,
            double low,
            boolean lowOpen,
            double high,
            List<Units.Symbol> symbols) {
        this.name = name;
        this.type = type;
        this.siUnit = siUnit;
        this.low = low;
        this.lowOpen = lowOpen;
        this.high = high;
        this.symbols = List.copyOf(symbols);
        this.rows = symbols.toArray(Units.Symbol[]::new);
        this.byText = Units.index(symbols);
    }

    /**
     * Returns the name in words, for example {@code grammage}.
     *
     * @return the name
     */
    public String name() {
        return name;
    }

    /**
     * Returns the quantity type.
     *
     * @return the type
     */
    public Class<Q> type() {
        return type;
    }

    /**
     * Returns the coherent SI unit in which the library calculates this kind.
     *
     * @return the unit
     */
    public Unit<Q> siUnit() {
        return siUnit;
    }

    /**
     * Returns the least value the kind can have, in coherent SI.
     *
     * @return the value, or negative infinity
     */
    public double lowestSi() {
        return low;
    }

    /**
     * Returns the greatest value the kind can have, in coherent SI.
     *
     * @return the value, or positive infinity
     */
    public double highestSi() {
        return high;
    }

    /**
     * Returns whether a value can be one of this kind.
     *
     * @param si the value in coherent SI
     * @return whether it is finite and in range
     */
    public boolean holds(double si) {
        return Double.isFinite(si) && (lowOpen ? si > low : si >= low) && si <= high;
    }

    /**
     * Returns the unit codes this kind accepts, the usual one first.
     *
     * @return an unmodifiable list of codes
     */
    public List<String> codes() {
        return symbols.stream().map(Units.Symbol::code).toList();
    }

    /**
     * Returns every text that is read as a unit of this kind: its codes, and the other spellings that are accepted but
     * never written, such as {@code g/m²} beside {@code g/m2}.
     *
     * @return an unmodifiable list, the codes in their order, each with its spellings behind it
     */
    public List<String> spellings() {
        List<String> all = new ArrayList<>();
        for (Units.Symbol symbol : symbols) {
            all.add(symbol.code());
            all.addAll(symbol.also());
        }
        return List.copyOf(all);
    }

    /**
     * Makes an amount.
     *
     * @param value a finite number
     * @param unit a unit of this kind's dimension
     * @return the amount
     * @throws Refused if the value is not a number, the unit does not measure this kind, or the amount is outside the
     *     range this kind can have
     */
    public Amount<Q> of(double value, Unit<Q> unit) {
        Amount<Q> amount = unchecked(value, unit);
        requireInRange(amount.si(), amount, name);
        return amount;
    }

    /**
     * Makes an amount from a unit code.
     *
     * @param value a finite number
     * @param code one of {@link #codes()} or its accepted spellings
     * @return the amount
     * @throws Refused if the code is not one of this kind, or as {@link #of(double, Unit)}
     */
    public Amount<Q> of(double value, String code) {
        return of(value, symbol(code));
    }

    Amount<Q> of(double value, Units.Symbol symbol) {
        Amount<Q> amount = in(value, symbol);
        requireInRange(amount.si(), amount, name);
        return amount;
    }

    /**
     * Makes an amount from a value in coherent SI.
     *
     * @param si a finite number in {@link #siUnit()}
     * @return the amount, in {@link #siUnit()}
     * @throws Refused if the value is not a number or outside the range this kind can have
     */
    public Amount<Q> ofSi(double si) {
        return of(si, siUnit);
    }

    /**
     * Makes an amount from a value in coherent SI, in the unit of a code.
     *
     * @param si a finite number in {@link #siUnit()}
     * @param code one of {@link #codes()}
     * @return the amount, in the unit of the code
     * @throws Refused as {@link #of(double, String)}
     */
    public Amount<Q> ofSi(double si, String code) {
        requireFinite(si, name);
        Amount<Q> amount = ofSiUnchecked(si, code);
        requireInRange(si, amount, name);
        return amount;
    }

    /**
     * Reads an amount as people write it: {@code 260 g/m2} and every other text that {@link Units#read} takes; words and
     * plurals ({@code 3 pounds}, {@code 90 minutes}, {@code grams per square metre}); fractions ({@code 5 1/2 in},
     * {@code 13¼"}); and parts of one measure together ({@code 5 ft 6 in}, {@code 2 lb 3 oz}, {@code 1 h 30 min}), which
     * come in the smallest of their units. The decimal sign is a point whatever the locale. Fractions are exact until the
     * last step, which rounds to the nearest number.
     *
     * <pre>{@code
     * Kinds.LENGTH.read("13 1/4 in"); // 13.25 in
     * Kinds.MASS.read("2 lb 3 oz"); // 35 oz
     * Kinds.VOLUME_FLOW.read("400 cfm"); // 400 ft³/min
     * }</pre>
     *
     * @param text the text
     * @return the amount
     * @throws Refused if the number or the unit cannot be read, with what was found and what is accepted, or the amount is
     *     out of the range of the kind
     * @throws Unclear if it has more than one meaning: a plain ton, pint or hundredweight, {@code 51/2 in},
     *     {@code 1,200 g}
     */
    public Amount<Q> read(CharSequence text) {
        Objects.requireNonNull(text, "text");
        String written = text.toString();
        Amount<Q> usual = Units.readUsual(this, written);
        if (usual != null) {
            return usual;
        }
        Amount<Q> amount = WrittenAmount.read(this, written);
        return amount != null ? amount : Units.readAny(this, written.strip());
    }

    /**
     * Returns the unit of a code.
     *
     * @param code one of {@link #codes()} or its accepted spellings
     * @return the unit
     * @throws Refused if the code is not one of this kind
     */
    @SuppressWarnings("unchecked")
    public Unit<Q> unit(String code) {
        return (Unit<Q>) symbol(code).unit();
    }

    /**
     * Checks a quantity at a door and returns it as an amount of this kind.
     *
     * @param quantity an amount of this kind, or any other quantity of its dimension
     * @param what the name of the input, for the message
     * @return the amount
     * @throws Refused if the quantity is of another kind or dimension, not a number, or out of range
     */
    public Amount<Q> check(Quantity<Q> quantity, String what) {
        Amount<Q> amount = amount(quantity, what);
        requireInRange(amount.si(), amount, what);
        return amount;
    }

    /**
     * Checks a quantity at a door and returns its value in coherent SI.
     *
     * @param quantity an amount of this kind, or any other quantity of its dimension
     * @param what the name of the input, for the message
     * @return the value in {@link #siUnit()}
     * @throws Refused if the quantity is of another kind or dimension, not a number, or out of range
     */
    public double si(Quantity<Q> quantity, String what) {
        return check(quantity, what).si();
    }

    /**
     * Checks a quantity that must be above zero, and returns its value in coherent SI.
     *
     * @param quantity an amount of this kind, or any other quantity of its dimension
     * @param what the name of the input, for the message
     * @return the value in {@link #siUnit()}, above zero
     * @throws Refused as {@link #si(Quantity, String)}, and if the value is not above zero
     */
    public double siAboveZero(Quantity<Q> quantity, String what) {
        return checkAboveZero(quantity, what).si();
    }

    /**
     * Checks a quantity that must be above zero, and returns it as an amount of this kind.
     *
     * @param quantity an amount of this kind, or any other quantity of its dimension
     * @param what the name of the input, for the message
     * @return the amount, above zero
     * @throws Refused as {@link #siAboveZero(Quantity, String)}
     */
    public Amount<Q> checkAboveZero(Quantity<Q> quantity, String what) {
        Amount<Q> amount = check(quantity, what);
        if (!(amount.si() > 0)) {
            throw Refused.of(
                    "quantity.not-above-zero",
                    what + ": " + amount + " given; it must be above zero. Give what was measured or ordered.",
                    "quantity",
                    what,
                    "given",
                    amount.toString(),
                    "limit",
                    "0");
        }
        return amount;
    }

    /**
     * Checks a quantity at a door with limits of its own, and returns its value in coherent SI.
     *
     * @param quantity an amount of this kind, or any other quantity of its dimension
     * @param what the name of the input, for the message
     * @param least the least accepted value, in {@link #siUnit()}
     * @param most the greatest accepted value, in {@link #siUnit()}
     * @return the value in {@link #siUnit()}
     * @throws Refused as {@link #si(Quantity, String)}, and if the value is outside the limits
     */
    public double siWithin(Quantity<Q> quantity, String what, double least, double most) {
        return checkWithin(quantity, what, least, most).si();
    }

    /**
     * Checks a quantity at a door with limits of its own, and returns it as an amount of this kind.
     *
     * @param quantity an amount of this kind, or any other quantity of its dimension
     * @param what the name of the input, for the message
     * @param least the least accepted value, in {@link #siUnit()}
     * @param most the greatest accepted value, in {@link #siUnit()}
     * @return the amount
     * @throws Refused as {@link #siWithin(Quantity, String, double, double)}
     */
    public Amount<Q> checkWithin(Quantity<Q> quantity, String what, double least, double most) {
        Amount<Q> amount = check(quantity, what);
        if (amount.si() < least || amount.si() > most) {
            throw outOfRange(amount, what, least, false, most);
        }
        return amount;
    }

    Amount<Q> ofSiUnchecked(double si, String code) {
        Units.Symbol symbol = symbol(code);
        return in((si - symbol.offset()) / symbol.factor(), symbol);
    }

    /** Makes an amount in the unit of a row of the table, which is one of this kind. */
    @SuppressWarnings("unchecked")
    private Amount<Q> in(double value, Units.Symbol symbol) {
        return new Amount<>(value, (Unit<Q>) symbol.unit(), symbol, this);
    }

    Amount<Q> ofSiIn(double si, Unit<Q> unit) {
        Units.Symbol symbol = symbolOf(unit);
        if (symbol != null) {
            return in((si - symbol.offset()) / symbol.factor(), symbol);
        }
        if (!siUnit.isCompatible(unit)) {
            throw Refused.of(
                    "unit.dimension",
                    name + ": the unit " + unit + " does not measure " + name + ". Accepted units: " + accepted() + ".",
                    "quantity",
                    name,
                    "unit",
                    unit.toString(),
                    "accepted",
                    accepted());
        }
        return new Amount<>(siUnit.getConverterTo(unit).convert(si), unit, this);
    }

    Amount<Q> checkKind(Quantity<Q> quantity) {
        return amount(quantity, name);
    }

    Amount<Q> unchecked(double value, Unit<Q> unit) {
        return unchecked(value, unit, name);
    }

    private Amount<Q> unchecked(double value, Unit<Q> unit, String what) {
        requireFinite(value, what);
        Units.Symbol symbol = symbolOf(unit);
        if (symbol == null && !siUnit.isCompatible(unit)) {
            String given = Units.fourDigits(value) + " " + unit;
            throw Refused.of(
                    "quantity.dimension",
                    what + ": " + given + " given, but that unit does not measure " + name + ". Accepted units: "
                            + accepted() + ".",
                    "quantity",
                    what,
                    "given",
                    given,
                    "wantedKind",
                    name,
                    "accepted",
                    accepted());
        }
        return new Amount<>(value, unit, symbol, this);
    }

    /** Converts to coherent SI; a unit of the table by its factor, any other by its converter. */
    double toSi(double value, Unit<Q> unit) {
        Units.Symbol symbol = symbolOf(unit);
        return symbol != null
                ? value * symbol.factor() + symbol.offset()
                : unit.getConverterTo(siUnit).convert(value);
    }

    Units.@Nullable Symbol symbolOf(Unit<?> unit) {
        for (Units.Symbol symbol : rows) {
            if (symbol.unit() == unit) {
                return symbol;
            }
        }
        for (Units.Symbol symbol : symbols) {
            if (symbol.unit().equals(unit)) {
                return symbol;
            }
        }
        return null;
    }

    List<Units.Symbol> symbols() {
        return symbols;
    }

    String accepted() {
        return String.join(", ", codes());
    }

    private Units.Symbol symbol(String code) {
        Units.Symbol symbol = byText.get(code);
        if (symbol == null) {
            throw Units.unknown(this, code);
        }
        return symbol;
    }

    /** Returns the row whose code is the rest of a text. */
    Units.@Nullable Symbol symbolBehind(String text, int from) {
        for (Units.Symbol symbol : rows) {
            if (symbol.code().length() == text.length() - from && text.startsWith(symbol.code(), from)) {
                return symbol;
            }
        }
        return null;
    }

    Units.@Nullable Symbol symbolOfText(String text) {
        return byText.get(text);
    }

    boolean accepts(String code) {
        return byText.containsKey(code);
    }

    @SuppressWarnings("unchecked")
    private Amount<Q> amount(Quantity<Q> quantity, String what) {
        // Erased generics let a quantity of any kind through; look at what it really is.
        Quantity<?> seen = quantity;
        if (seen == null) {
            throw new NullPointerException(what + ": null given; " + article(name) + " is expected here.");
        }
        if (seen instanceof Amount<?> amount) {
            if (amount.kind() != this) {
                throw Refused.of(
                        "quantity.kind",
                        what + ": " + amount + " given, which is "
                                + article(amount.kind().name()) + "; "
                                + article(name)
                                + " is expected here. Check which is meant, and convert explicitly.",
                        "quantity",
                        what,
                        "given",
                        amount.toString(),
                        "givenKind",
                        amount.kind().name(),
                        "wantedKind",
                        name);
            }
            return (Amount<Q>) amount;
        }
        double value = quantity.getValue().doubleValue();
        if (this == (Kind<?>) Kinds.TEMPERATURE && quantity.getScale() == Quantity.Scale.RELATIVE) {
            String given = Units.fourDigits(value) + " " + quantity.getUnit();
            throw Refused.of(
                    "quantity.temperature-difference",
                    what + ": a difference of " + given + " given, but a point on the scale is expected here.",
                    "quantity",
                    what,
                    "given",
                    given);
        }
        return unchecked(value, quantity.getUnit(), what);
    }

    private void requireInRange(double si, Amount<Q> amount, String what) {
        if (si < low || si > high || (lowOpen && si <= low)) {
            throw outOfRange(amount, what, low, lowOpen, high);
        }
    }

    private Refused outOfRange(Amount<Q> amount, String what, double least, boolean open, double most) {
        boolean below = amount.si() < least || (open && amount.si() <= least);
        double broken = below ? least : most;
        double shown = toSi(Double.parseDouble(Units.fourDigits(amount.value())), amount.getUnit());
        // Where four digits hide the difference that matters, all are shown.
        boolean inFull = below ? shown >= broken && !(open && shown == broken) : shown <= broken;
        String given = inFull ? Units.inFull(amount.value(), labelOf(amount)) : amount.toString();
        String lower = limit(least, amount, inFull);
        String upper = limit(most, amount, inFull);
        String rule;
        if (Double.isInfinite(most)) {
            rule = open ? "above " + lower : lower + " or more";
        } else if (Double.isInfinite(least)) {
            rule = "at most " + upper;
        } else {
            rule = (open ? "above " + lower + " and at most " : "from " + lower + " to ") + upper;
        }
        String advice = below
                ? "Check the sign and the unit."
                : least >= 0 && isPerCentMeant(amount, most)
                        ? "For per cent write \"" + given + " %\"."
                        : "Check the unit and the decimal point.";
        return Refused.of(
                "quantity.range",
                what + ": " + given + " given; it must be " + rule + ". " + advice,
                "quantity",
                what,
                "given",
                given,
                "least",
                lower,
                "most",
                upper);
    }

    /** A bare number above one where a share is wanted: people mean per cent. */
    private boolean isPerCentMeant(Amount<Q> amount, double most) {
        return most <= 1
                && labelOf(amount).isEmpty()
                && amount.si() > 1
                && amount.si() / 100 <= most
                && symbols.stream().anyMatch(one -> one.label().equals("%"));
    }

    private String labelOf(Amount<Q> amount) {
        Units.Symbol symbol = amount.symbol();
        return symbol != null ? symbol.label() : Units.label(amount.getUnit());
    }

    private String limit(double si, Amount<Q> like, boolean inFull) {
        if (Double.isInfinite(si)) {
            return si > 0 ? "no limit" : "no least";
        }
        Units.Symbol symbol = like.symbol();
        if (symbol == null) {
            symbol = symbols.get(0);
        }
        double value = (si - symbol.offset()) / symbol.factor();
        String number = inFull ? Units.number(value) : Digits.significant(value, 6);
        return symbol.label().isEmpty() ? number : number + " " + symbol.label();
    }

    static void requireFinite(double value, String what) {
        if (!Double.isFinite(value)) {
            throw Refused.of(
                    "quantity.not-a-number",
                    what + ": " + value + " given; must be a finite number. Check where it was calculated.",
                    "quantity",
                    what,
                    "given",
                    String.valueOf(value));
        }
    }

    static String article(String noun) {
        return ("aeiou".indexOf(noun.toLowerCase(Locale.ROOT).charAt(0)) >= 0 ? "an " : "a ") + noun;
    }

    /** Returns the names of the kinds that know a code; for the message after a wrong unit. */
    static List<String> kindsThatKnow(String code) {
        List<String> names = new ArrayList<>();
        for (Kind<?> kind : Kinds.all()) {
            if (kind.byText.containsKey(code)) {
                names.add(kind.name());
            }
        }
        return names;
    }

    @Override
    public String toString() {
        return name;
    }
}
