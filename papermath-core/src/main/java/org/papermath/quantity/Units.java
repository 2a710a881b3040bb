package org.papermath.quantity;

import static tech.units.indriya.unit.Units.CELSIUS;
import static tech.units.indriya.unit.Units.KELVIN;
import static tech.units.indriya.unit.Units.KILOGRAM;
import static tech.units.indriya.unit.Units.METRE;
import static tech.units.indriya.unit.Units.SECOND;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.quantity.Area;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Force;
import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Pressure;
import javax.measure.quantity.Temperature;
import javax.measure.quantity.Time;
import javax.measure.quantity.Volume;
import org.jspecify.annotations.Nullable;
import org.papermath.text.Digits;
import tech.units.indriya.AbstractUnit;
import tech.units.indriya.function.AddConverter;
import tech.units.indriya.function.MultiplyConverter;
import tech.units.indriya.unit.BaseUnit;
import tech.units.indriya.unit.TransformedUnit;
import tech.units.indriya.unit.UnitDimension;

/**
 * The closed table of unit codes, and reading and printing of amounts, the same in every locale.
 *
 * <p>SI units carry UCUM codes ({@code g/m2}, {@code Cel}, {@code um}); customary units carry plain words ({@code lb},
 * {@code tonf_us}, {@code floz_us}). The decimal sign is always a point. A plain "ton", "pint" or "ream" is not in the
 * table: it has more than one meaning.
 *
 * <p>{@link #read} takes this form, which documents have, with the usual words for the codes too, in singular and plural
 * ({@code 4 hours}). {@link Kind#read} takes what people write besides: fractions, feet and inches, other names.
 *
 * @source UCUM 2.1 for the codes of SI units; inch 25.4 mm and pound 0.45359237 kg by the 1959 agreement; US gallon 231
 *     cubic inches, imperial gallon 4.54609 L; hundredweight 100 lb (US) and 112 lb (imperial), recalled, not looked up;
 *     standard gravity 9.80665 m/s² (3rd CGPM, 1901)
 */
public final class Units {
    /** Grams per square metre. */
    public static final Unit<Grammage> GSM;

    /** Millimetre. */
    public static final Unit<Length> MILLIMETRE;

    /** Inch, 25.4 mm. */
    public static final Unit<Length> INCH;

    /** Gram. */
    public static final Unit<Mass> GRAM;

    /** Avoirdupois pound, 0.45359237 kg. */
    public static final Unit<Mass> POUND;

    /** Litre. */
    public static final Unit<Volume> LITRE;

    /** Hour. */
    public static final Unit<Time> HOUR;

    /** Per cent. */
    public static final Unit<Dimensionless> PERCENT;

    private static final Map<String, Symbol> TABLE = new LinkedHashMap<>();
    /** Digits that a double holds whatever they are. */
    private static final int SURE_DIGITS = 15;

    private static final int FEW_PLACES = 9;
    private static final long[] POWERS_OF_TEN = {
        1,
        10,
        100,
        1000,
        10_000,
        100_000,
        1_000_000,
        10_000_000,
        100_000_000,
        1_000_000_000,
        10_000_000_000L,
        100_000_000_000L,
        1_000_000_000_000L,
        10_000_000_000_000L,
        100_000_000_000_000L,
        1_000_000_000_000_000L
    };

    /**
     * One row of the table.
     *
     * @param code the code written in documents
     * @param behind what is written behind a number: a blank and the code, or nothing for a plain number
     * @param label the sign shown to people
     * @param unit the unit
     * @param factor multiplies a value in this unit to give coherent SI
     * @param offset is added after the multiplication; not zero for degrees Celsius and Fahrenheit only
     * @param also other accepted spellings
     */
    record Symbol(
            String code, String behind, String label, Unit<?> unit, double factor, double offset, List<String> also) {}

    static {
        Unit<Area> squareMetre = METRE.multiply(METRE).asType(Area.class);
        Unit<Volume> cubicMetre = METRE.pow(3).asType(Volume.class);
        Unit<Force> newton = tech.units.indriya.unit.Units.NEWTON;
        Unit<Pressure> pascal = tech.units.indriya.unit.Units.PASCAL;
        double inch = 0.0254;
        double pound = 0.45359237;
        double gravity = 9.80665;
        double gallonUs = 231 * inch * inch * inch;
        double gallonUk = 4.54609e-3;

        base("m", "m", METRE, "metre", "metres", "meter", "meters");
        scaled("km", "km", METRE, 1000, "kilometre", "kilometres", "kilometer", "kilometers");
        scaled("cm", "cm", METRE, 0.01, "centimetre", "centimetres", "centimeter", "centimeters");
        scaled("mm", "mm", METRE, 0.001, "millimetre", "millimetres", "millimeter", "millimeters");
        scaled(
                "um",
                "µm",
                METRE,
                1e-6,
                "µm",
                "μm",
                "micron",
                "microns",
                "micrometre",
                "micrometres",
                "micrometer",
                "micrometers");
        scaled("in", "in", METRE, inch, "inch", "inches");
        scaled("ft", "ft", METRE, 12 * inch, "foot", "feet");
        scaled("yd", "yd", METRE, 36 * inch, "yard", "yards");
        scaled("mil", "mil", METRE, inch / 1000, "mils", "thou");
        scaled("pt_paper", "pt (paper, 0.001 in)", METRE, inch / 1000);
        scaled("pt_type", "pt (type, 1/72 in)", METRE, inch / 72);
        scaled("shaku", "shaku", METRE, 10.0 / 33);
        base("m2", "m²", squareMetre, "m²");
        scaled("cm2", "cm²", squareMetre, 1e-4, "cm²");
        scaled("mm2", "mm²", squareMetre, 1e-6, "mm²");
        scaled("in2", "in²", squareMetre, inch * inch, "in²");
        scaled("ft2", "ft²", squareMetre, 144 * inch * inch, "ft²");
        base("m3", "m³", cubicMetre, "m³");
        scaled("L", "L", cubicMetre, 1e-3, "l", "litre", "litres", "liter", "liters");
        scaled("mL", "mL", cubicMetre, 1e-6, "ml", "millilitre", "millilitres", "milliliter", "milliliters");
        scaled("cm3", "cm³", cubicMetre, 1e-6, "cm³");
        scaled("gal_us", "US gal", cubicMetre, gallonUs);
        scaled("qt_us", "US qt", cubicMetre, gallonUs / 4);
        scaled("pt_us", "US pint", cubicMetre, gallonUs / 8);
        scaled("cup_us", "US cup", cubicMetre, gallonUs / 16);
        scaled("floz_us", "US fl oz", cubicMetre, gallonUs / 128);
        scaled("tbsp_us", "US tbsp", cubicMetre, gallonUs / 256);
        scaled("tsp_us", "US tsp", cubicMetre, gallonUs / 768);
        scaled("gal_uk", "UK gal", cubicMetre, gallonUk);
        scaled("qt_uk", "UK qt", cubicMetre, gallonUk / 4);
        scaled("pt_uk", "UK pint", cubicMetre, gallonUk / 8);
        scaled("floz_uk", "UK fl oz", cubicMetre, gallonUk / 160);
        base("kg", "kg", KILOGRAM, "kilogram", "kilograms", "kilogramme", "kilogrammes", "kilo", "kilos");
        scaled("g", "g", KILOGRAM, 1e-3, "gram", "grams", "gramme", "grammes");
        scaled("mg", "mg", KILOGRAM, 1e-6, "milligram", "milligrams");
        scaled("t", "t", KILOGRAM, 1000, "tonne", "tonnes");
        scaled("lb", "lb", KILOGRAM, pound, "lbs", "pound", "pounds");
        scaled("oz", "oz", KILOGRAM, pound / 16, "ounce", "ounces");
        scaled("cwt_us", "US cwt", KILOGRAM, 100 * pound);
        scaled("cwt_uk", "UK cwt", KILOGRAM, 112 * pound);
        scaled("momme", "momme", KILOGRAM, 3.75e-3);
        base("s", "s", SECOND, "sec", "second", "seconds");
        scaled("min", "min", SECOND, 60, "mins", "minute", "minutes");
        scaled("h", "h", SECOND, 3600, "hr", "hrs", "hour", "hours");
        scaled("d", "d", SECOND, 86400, "day", "days");
        base("K", "K", KELVIN);
        shifted("Cel", "°C", CELSIUS, 1, 273.15, "°C", "℃", "C", "degC", "celsius", "Celsius");
        shifted(
                "degF",
                "°F",
                new TransformedUnit<>(
                        "°F", KELVIN, KELVIN, MultiplyConverter.ofRational(5, 9).concatenate(new AddConverter(459.67))),
                5.0 / 9,
                459.67 * 5 / 9,
                "°F",
                "F",
                "fahrenheit",
                "Fahrenheit");
        base("N", "N", newton, "newton", "newtons");
        scaled("kN", "kN", newton, 1000, "kilonewton", "kilonewtons");
        scaled("kgf", "kgf", newton, gravity);
        scaled("lbf", "lbf", newton, pound * gravity);
        scaled("tonf_us", "short ton-force", newton, 2000 * pound * gravity);
        scaled("tonf_uk", "long ton-force", newton, 2240 * pound * gravity);
        scaled("tf", "metric ton-force", newton, 1000 * gravity);
        base("Pa", "Pa", pascal);
        scaled("kPa", "kPa", pascal, 1000);
        scaled("MPa", "MPa", pascal, 1e6);
        scaled("hPa", "hPa", pascal, 100);
        scaled("bar", "bar", pascal, 1e5);
        scaled("psi", "psi", pascal, pound * gravity / (inch * inch));
        scaled("inHg", "inHg", pascal, 3386.389);
        base("W", "W", tech.units.indriya.unit.Units.WATT, "watt", "watts");
        scaled("kW", "kW", tech.units.indriya.unit.Units.WATT, 1000, "kilowatt", "kilowatts");
        scaled("hp", "hp", tech.units.indriya.unit.Units.WATT, 550 * 12 * inch * pound * gravity);
        base("m/s", "m/s", METRE.divide(SECOND));
        scaled("ft/min", "ft/min", METRE.divide(SECOND), 12 * inch / 60);
        base("1/s", "1/s", AbstractUnit.ONE.divide(SECOND));
        scaled("1/min", "1/min", AbstractUnit.ONE.divide(SECOND), 1.0 / 60);
        scaled("1/h", "1/h", AbstractUnit.ONE.divide(SECOND), 1.0 / 3600);
        base("N.m", "N·m", newton.multiply(METRE));
        scaled("lbf.in", "lbf·in", newton.multiply(METRE), pound * gravity * inch);
        Unit<?> flow = cubicMetre.divide(SECOND);
        base("m3/s", "m³/s", flow);
        scaled("m3/h", "m³/h", flow, 1.0 / 3600, "m³/h");
        scaled("L/min", "L/min", flow, 1e-3 / 60, "lpm");
        scaled("ft3/min", "ft³/min", flow, 1728 * inch * inch * inch / 60, "ft³/min", "cfm", "CFM");
        Unit<?> arealMass = KILOGRAM.divide(squareMetre);
        base("kg/m2", "kg/m²", arealMass, "kg/m²");
        scaled("g/m2", "g/m²", arealMass, 1e-3, "g/m²", "gsm");
        Unit<?> volumic = KILOGRAM.divide(cubicMetre);
        base("kg/m3", "kg/m³", volumic, "kg/m³");
        scaled("g/cm3", "g/cm³", volumic, 1000, "g/cm³");
        scaled("g/L", "g/L", volumic, 1, "g/l");
        scaled("g/mL", "g/mL", volumic, 1000, "g/ml");
        Unit<?> bulk = cubicMetre.divide(KILOGRAM);
        base("m3/kg", "m³/kg", bulk, "m³/kg");
        scaled("cm3/g", "cm³/g", bulk, 1e-3, "cm³/g");
        base("1", "", AbstractUnit.ONE);
        scaled("%", "%", AbstractUnit.ONE, 0.01, "percent", "per cent");
        scaled("g/kg", "g/kg", AbstractUnit.ONE, 1e-3);
        scaled("kg/kg", "kg/kg", AbstractUnit.ONE, 1);
        scaled("g/g", "g/g", AbstractUnit.ONE, 1);
        scaled("L/kg", "L/kg", bulk, 1e-3, "l/kg");
        base("mol/kg", "mol/kg", tech.units.indriya.unit.Units.MOLE.divide(KILOGRAM));
        base("m/kg", "m/kg", METRE.divide(KILOGRAM));
        base("m2/kg", "m²/kg", squareMetre.divide(KILOGRAM), "m²/kg");
        base("1/m", "1/m", AbstractUnit.ONE.divide(METRE));
        base(
                "SR",
                "°SR",
                new BaseUnit<SchopperRiegler>("°SR", "Schopper-Riegler number", UnitDimension.parse('S')),
                "°SR");
        Unit<?> freeness =
                new BaseUnit<CanadianFreeness>("mL CSF", "Canadian Standard freeness", UnitDimension.parse('F'));
        base("mL_CSF", "mL CSF", freeness);
        Unit<?> massFlow = KILOGRAM.divide(SECOND);
        base("kg/s", "kg/s", massFlow);
        scaled("kg/h", "kg/h", massFlow, 1.0 / 3600);
        scaled("g/h", "g/h", massFlow, 1e-3 / 3600);
        Unit<?> flux = arealMass.divide(SECOND);
        base("kg/(m2.s)", "kg/(m²·s)", flux);
        scaled("g/(m2.h)", "g/(m²·h)", flux, 1e-3 / 3600);
        Unit<?> massicEnergy = tech.units.indriya.unit.Units.JOULE.divide(KILOGRAM);
        base("J/kg", "J/kg", massicEnergy);
        scaled("kJ/kg", "kJ/kg", massicEnergy, 1000);
        scaled("kW.h/t", "kWh/t", massicEnergy, 3600);
        base("J", "J", tech.units.indriya.unit.Units.JOULE);
        scaled("MJ", "MJ", tech.units.indriya.unit.Units.JOULE, 1e6);
        scaled("kW.h", "kWh", tech.units.indriya.unit.Units.JOULE, 3.6e6, "kWh");
        base("J/m", "J/m", tech.units.indriya.unit.Units.JOULE.divide(METRE));
        base("Pa.s", "Pa·s", pascal.multiply(SECOND));
        scaled("mPa.s", "mPa·s", pascal.multiply(SECOND), 1e-3);
        Unit<?> conductance =
                tech.units.indriya.unit.Units.WATT.divide(squareMetre).divide(KELVIN);
        base("W/(m2.K)", "W/(m²·K)", conductance);
        base("W/m2", "W/m²", tech.units.indriya.unit.Units.WATT.divide(squareMetre));
        base("1/K", "1/K", AbstractUnit.ONE.divide(KELVIN));
        scaled("mg/m", "mg/m", KILOGRAM.divide(METRE), 1e-6);
        base("kg/m3/Pa^N", "kg/m³ per Pa^N", volumic);

        GSM = typed("g/m2");
        MILLIMETRE = typed("mm");
        INCH = typed("in");
        GRAM = typed("g");
        POUND = typed("lb");
        LITRE = typed("L");
        HOUR = typed("h");
        PERCENT = typed("%");
    }

    private Units() {}

    private static void base(String code, String label, Unit<?> unit, String... also) {
        put(symbol(code, label, unit, 1, 0, List.of(also)));
    }

    private static <Q extends Quantity<Q>> void scaled(
            String code, String label, Unit<Q> si, double factor, String... also) {
        put(symbol(
                code,
                label,
                new TransformedUnit<>(label, si, si, MultiplyConverter.of(factor)),
                factor,
                0,
                List.of(also)));
    }

    private static void shifted(
            String code, String label, Unit<Temperature> unit, double factor, double offset, String... also) {
        put(symbol(code, label, unit, factor, offset, List.of(also)));
    }

    private static Symbol symbol(
            String code, String label, Unit<?> unit, double factor, double offset, List<String> also) {
        return new Symbol(code, code.equals("1") ? "" : " " + code, label, unit, factor, offset, also);
    }

    private static void put(Symbol symbol) {
        if (TABLE.put(symbol.code(), symbol) != null) {
            throw new IllegalStateException("unit code twice: " + symbol.code());
        }
    }

    @SuppressWarnings("unchecked")
    private static <Q extends Quantity<Q>> Unit<Q> typed(String code) {
        return (Unit<Q>) known(code).unit();
    }

    static Symbol known(String code) {
        Symbol symbol = TABLE.get(code);
        if (symbol == null) {
            throw new IllegalStateException("no unit code " + code);
        }
        return symbol;
    }

    static List<Symbol> symbols(String... codes) {
        List<Symbol> list = new ArrayList<>();
        for (String code : codes) {
            list.add(known(code));
        }
        return list;
    }

    static Map<String, Symbol> index(List<Symbol> symbols) {
        Map<String, Symbol> map = new LinkedHashMap<>();
        for (Symbol symbol : symbols) {
            map.put(symbol.code(), symbol);
            for (String also : symbol.also()) {
                map.put(also, symbol);
            }
        }
        return Map.copyOf(map);
    }

    /**
     * Returns every code of the table.
     *
     * @return an unmodifiable list, in the order of the table
     */
    public static List<String> codes() {
        return List.copyOf(TABLE.keySet());
    }

    /**
     * Converts a value in the unit of a code to coherent SI, for rows of a table that name their unit by code.
     *
     * @param value the value
     * @param code a code of the table
     * @return the value in coherent SI
     * @throws Refused if the code is not in the table
     */
    public static double toSi(double value, String code) {
        Symbol symbol = TABLE.get(code);
        if (symbol == null) {
            throw Refused.of(
                    "unit.unknown",
                    "unit: \"" + code + "\" is not in the table of units. Write one of: "
                            + String.join(", ", TABLE.keySet()) + ".",
                    "found",
                    code,
                    "accepted",
                    codes());
        }
        return value * symbol.factor() + symbol.offset();
    }

    /**
     * Reads an amount as documents write it: a number with a decimal point, a space, a unit code of the kind or one of its
     * {@linkplain Kind#spellings() spellings}; for a plain number kind the code may be left out. {@link Kind#read} reads more.
     *
     * @param <Q> the quantity type
     * @param kind the kind wanted
     * @param text the text, for example {@code 260 g/m2}
     * @return the amount
     * @throws Refused if the number or the unit cannot be read, or the amount is out of the range of the kind
     * @throws Unclear if the unit has more than one meaning, such as a plain "ton"
     */
    public static <Q extends Quantity<Q>> Amount<Q> read(Kind<Q> kind, CharSequence text) {
        Objects.requireNonNull(kind, "kind");
        Objects.requireNonNull(text, "text");
        Amount<Q> usual = readUsual(kind, text.toString());
        if (usual != null) {
            return usual;
        }
        String whole = text.toString().strip();
        try {
            return readAny(kind, whole);
        } catch (Refused refused) {
            throw withTheForm(kind, whole, refused);
        }
    }

    /** Says how to write what a person would have understood. */
    private static Refused withTheForm(Kind<?> kind, String whole, Refused refused) {
        Amount<?> meant;
        try {
            meant = PerCentBasis.read(kind, whole);
        } catch (Refused ofSomethingElse) {
            return ofSomethingElse;
        }
        try {
            meant = meant == null ? WrittenAmount.read(kind, whole) : meant;
        } catch (PapermathException notThatEither) {
            return refused;
        }
        return meant == null
                ? refused
                : new Refused(
                        refused.code(),
                        refused.getMessage() + " For \"" + whole + "\" write \"" + print(meant) + "\".",
                        refused.arguments());
    }

    /**
     * Reads what nearly every amount in a document looks like: digits, perhaps a point among them, one blank and a code
     * of the kind. Null for any other text.
     */
    static <Q extends Quantity<Q>> @Nullable Amount<Q> readUsual(Kind<Q> kind, String text) {
        long digits = 0;
        int places = 0;
        boolean point = false;
        int end = 0;
        for (; end < text.length(); end++) {
            char c = text.charAt(end);
            if (c >= '0' && c <= '9') {
                digits = 10 * digits + (c - '0');
                places += point ? 1 : 0;
            } else if (c == '.' && !point) {
                point = true;
            } else {
                break;
            }
        }
        if (end == 0 || end > SURE_DIGITS || (end == 1 && point) || end == text.length() || text.charAt(end) != ' ') {
            return null;
        }
        Symbol symbol = kind.symbolBehind(text, end + 1);
        // Digits and a power of ten that are both exact: one division rounds as the slow way does.
        return symbol == null ? null : kind.of(places == 0 ? digits : (double) digits / POWERS_OF_TEN[places], symbol);
    }

    static <Q extends Quantity<Q>> Amount<Q> readAny(Kind<Q> kind, String whole) {
        int end = 0;
        while (end < whole.length() && isNumberPart(whole, end)) {
            end++;
        }
        String number = whole.substring(0, end);
        String code = whole.substring(end).strip();
        if (!isNumber(number)) {
            throw Refused.of(
                    "quantity.unreadable-number",
                    kind.name() + ": \"" + whole
                            + "\" does not begin with a number. Write a number with a decimal point and no"
                            + " separators, a space and a unit, such as \"" + example(kind) + "\".",
                    "quantity",
                    kind.name(),
                    "found",
                    whole,
                    "accepted",
                    kind.accepted());
        }
        if (!code.isEmpty()
                && (",'".indexOf(code.charAt(0)) >= 0 || Character.isDigit(code.charAt(0)))
                && !(code.equals("1") || code.startsWith("1/"))) {
            throw Refused.of(
                    "quantity.unreadable-number",
                    kind.name() + ": \"" + whole + "\" has more after its number than a unit: \"" + code
                            + "\". Write a decimal point and no"
                            + " separators, such as \"" + example(kind) + "\".",
                    "quantity",
                    kind.name(),
                    "found",
                    whole,
                    "accepted",
                    kind.accepted());
        }
        if (code.isEmpty() && !kind.accepts("1")) {
            throw Refused.of(
                    "quantity.no-unit",
                    kind.name() + ": \"" + whole + "\" has no unit. Add one of: " + kind.accepted() + ".",
                    "quantity",
                    kind.name(),
                    "found",
                    whole,
                    "accepted",
                    kind.accepted());
        }
        double value = Double.parseDouble(number);
        if (Double.isInfinite(value)) {
            throw Refused.of(
                    "quantity.unreadable-number",
                    kind.name() + ": \"" + whole
                            + "\" has a number that is too large to reckon with. Check its exponent.",
                    "quantity",
                    kind.name(),
                    "found",
                    whole,
                    "accepted",
                    kind.accepted());
        }
        return kind.of(value, code.isEmpty() ? "1" : code);
    }

    /** Digits with or without a point, a sign before, an exponent after; by hand, since documents are full of them. */
    private static boolean isNumber(String text) {
        int at = !text.isEmpty() && (text.charAt(0) == '+' || text.charAt(0) == '-') ? 1 : 0;
        int whole = digitsFrom(text, at);
        int end = at + whole;
        int fraction = 0;
        if (end < text.length() && text.charAt(end) == '.') {
            fraction = digitsFrom(text, end + 1);
            end += 1 + fraction;
        }
        if (whole + fraction > 0 && end < text.length() && (text.charAt(end) == 'e' || text.charAt(end) == 'E')) {
            boolean signed = end + 1 < text.length() && (text.charAt(end + 1) == '+' || text.charAt(end + 1) == '-');
            int from = end + (signed ? 2 : 1);
            int exponent = digitsFrom(text, from);
            return exponent > 0 && from + exponent == text.length();
        }
        return whole + fraction > 0 && end == text.length();
    }

    private static int digitsFrom(String text, int from) {
        int end = from;
        while (end < text.length() && text.charAt(end) >= '0' && text.charAt(end) <= '9') {
            end++;
        }
        return end - from;
    }

    /**
     * A character of the number: an e belongs to it only where an exponent follows, or "4 ebony" would be swallowed.
     */
    private static boolean isNumberPart(String text, int at) {
        char c = text.charAt(at);
        if ((c >= '0' && c <= '9') || c == '.') {
            return true;
        }
        if (c == '+' || c == '-') {
            return at == 0 || text.charAt(at - 1) == 'e' || text.charAt(at - 1) == 'E';
        }
        if ((c == 'e' || c == 'E') && at > 0 && at + 1 < text.length()) {
            char next = text.charAt(at + 1);
            boolean signed =
                    (next == '+' || next == '-') && at + 2 < text.length() && Character.isDigit(text.charAt(at + 2));
            return signed || (next >= '0' && next <= '9');
        }
        return false;
    }

    private static String example(Kind<?> kind) {
        return kind.codes().get(0).equals("1") ? "12.5" : "12.5 " + kind.codes().get(0);
    }

    /** Units of mass by which presses are called, and the units of force that are meant. */
    private static final Map<String, String> WEIGHTS = Map.of("t", "tf", "kg", "kgf", "lb", "lbf");

    static PapermathException unknown(Kind<?> kind, String code) {
        String plain = code.strip();
        PapermathException question = DoubtfulUnit.question(kind, UnitWords.withoutHyphen(plain));
        if (question != null) {
            return question;
        }
        List<String> others = Kind.kindsThatKnow(plain);
        String weight = kind == (Kind<?>) Kinds.FORCE ? WEIGHTS.get(plain) : null;
        String nearest = weight != null ? weight : nearest(kind, plain);
        String hint = !others.isEmpty()
                ? " \"" + plain + "\" measures " + String.join(" or ", others.subList(0, Math.min(3, others.size())))
                        + "." + (weight == null ? "" : " The force of its weight is \"" + weight + "\".")
                : nearest != null ? " Did you mean \"" + nearest + "\"?" : "";
        return Refused.of(
                "unit.unknown",
                kind.name() + ": \"" + plain + "\" is not a unit of " + kind.name() + "." + hint + " Accepted units: "
                        + kind.accepted() + ".",
                "quantity",
                kind.name(),
                "found",
                plain,
                "accepted",
                kind.accepted());
    }

    private static @Nullable String nearest(Kind<?> kind, String code) {
        String meant = UnitWords.code(kind, code);
        if (meant != null) {
            return meant;
        }
        return kind.symbols().stream()
                .map(Symbol::code)
                .filter(known -> known.equalsIgnoreCase(code)
                        || (!code.isEmpty() && known.startsWith(code))
                        || (known.length() > 1 && code.startsWith(known)))
                .filter(known -> !known.equals("1"))
                .min(Comparator.comparingInt(String::length))
                .orElse(null);
    }

    /**
     * Prints an amount as the shortest text that reads back to the same bits, for example {@code 260 g/m2}.
     *
     * @param amount the amount
     * @return the text
     */
    public static String print(Amount<?> amount) {
        Objects.requireNonNull(amount, "amount");
        StringBuilder out = new StringBuilder();
        print(amount, out);
        return out.toString();
    }

    /**
     * Prints an amount behind a text, as {@link #print(Amount)} does.
     *
     * @param amount the amount
     * @param out the text that goes on with it
     */
    public static void print(Amount<?> amount, StringBuilder out) {
        Objects.requireNonNull(amount, "amount");
        Objects.requireNonNull(out, "out");
        Symbol symbol = amount.symbol();
        if (symbol == null) {
            // A unit outside the table, such as a pound of a ream, is written in the first unit of its kind.
            print(amount.to(amount.kind().codes().get(0)), out);
            return;
        }
        number(amount.value(), out);
        out.append(symbol.behind());
    }

    /**
     * Prints a number as the shortest decimal text that reads back to the same bits.
     *
     * @param value a finite number
     * @return the text, with a decimal point and no separators
     */
    public static String number(double value) {
        StringBuilder out = new StringBuilder();
        number(value, out);
        return out.toString();
    }

    private static void number(double value, StringBuilder out) {
        if (value == Math.rint(value) && Math.abs(value) < 1e15) {
            out.append((long) value);
            return;
        }
        // Most numbers of the studio have a few decimals: a whole number over a power of ten is rounded as its text
        // would be.
        for (int places = 1; places <= FEW_PLACES && Math.abs(value) >= 1e-3; places++) {
            long whole = Math.round(value * POWERS_OF_TEN[places]);
            if (Math.abs(whole) >= POWERS_OF_TEN[SURE_DIGITS]) {
                break;
            }
            if ((double) whole / POWERS_OF_TEN[places] == value) {
                decimal(whole, places, out);
                return;
            }
        }
        out.append(shortest(value));
    }

    private static void decimal(long digits, int places, StringBuilder out) {
        long size = Math.abs(digits);
        long fraction = size % POWERS_OF_TEN[places];
        if (digits < 0) {
            out.append('-');
        }
        out.append(size / POWERS_OF_TEN[places]).append('.');
        for (int place = places - 1; place > 0 && fraction < POWERS_OF_TEN[place]; place--) {
            out.append('0');
        }
        out.append(fraction);
    }

    private static String shortest(double value) {
        BigDecimal exact = new BigDecimal(value);
        BigDecimal shortest = exact;
        // Rounding to fifteen digits finds again any shorter decimal, but where the digits of the number itself run
        // out.
        for (int digits = Math.abs(value) < Double.MIN_NORMAL ? 1 : 15; digits <= 17; digits++) {
            BigDecimal rounded = exact.round(new MathContext(digits, RoundingMode.HALF_EVEN));
            if (rounded.doubleValue() == value) {
                shortest = rounded;
                break;
            }
        }
        BigDecimal stripped = shortest.stripTrailingZeros();
        int exponent = stripped.precision() - stripped.scale() - 1;
        if (exponent >= -7 && exponent < 15) {
            return stripped.toPlainString();
        }
        String digits = stripped.unscaledValue().abs().toString();
        String mantissa = digits.length() == 1 ? digits : digits.charAt(0) + "." + digits.substring(1);
        return (stripped.signum() < 0 ? "-" : "") + mantissa + "e" + exponent;
    }

    /**
     * Prints a number with four significant digits, for people.
     *
     * @param value a finite number
     * @return the text, with a decimal point and no separators
     */
    public static String fourDigits(double value) {
        return Digits.four(value);
    }

    static String forPeople(double value, String label) {
        return label.isEmpty() ? fourDigits(value) : fourDigits(value) + " " + label;
    }

    static String inFull(double value, String label) {
        return label.isEmpty() ? number(value) : number(value) + " " + label;
    }

    static String label(Unit<?> unit) {
        return unit.getSymbol() != null ? unit.getSymbol() : unit.toString();
    }
}
