package org.papermath.quantity;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** What people call the units of the table: full words, plurals, abbreviations with a point, the signs shown to them. */
final class UnitWords {
    /** A unit of the table, and how many of it the word means: a stone is 14 lb. */
    record Meant(Units.Symbol symbol, int times) {}

    /**
     * What people say beside the spellings of the table: each line a code of it or a part of one, or a number and a code; then
     * its names in the singular.
     */
    private static final String NAMES = """
            mm: mm
            cm: cm
            m: m
            in: in, ", inche
            ft: ft, '
            yd: yd
            mil: mil
            pt_paper: paper point
            m2: square metre, square meter, sq m, sqm, m2
            cm2: square centimetre, square centimeter, sq cm, sqcm, cm2
            mm2: square millimetre, square millimeter, sq mm, mm2
            in2: square inch, square inche, sq in, in2
            ft2: square foot, square feet, sq ft, ft2
            m3: cubic metre, cubic meter, cu m, m3
            cm3: cubic centimetre, cubic centimeter, cu cm, cc, ccm, cm3
            ft3: cubic foot, cubic feet, cu ft, ft3
            L: ltr
            kg: kg
            g: gm, g
            mg: milligramme
            t: metric ton, metric tonne
            lb: lb, #
            oz: oz
            14 lb: stone
            2000 lb: short ton
            2240 lb: long ton
            tonf_us: short ton, short ton-force, us ton
            tonf_uk: long ton, long ton-force
            tf: metric ton, metric ton-force, tonne, tonne-force
            h: h
            min: min
            s: s
            d: d
            7 d: week, wk
            Cel: c, degree celsius, degrees celsius, deg c, degree c, degrees c, centigrade, degrees centigrade
            degF: f, degree fahrenheit, degrees fahrenheit, deg f, degree f, degrees f
            K: kelvin
            kgf: kilogram-force, kilogram force, kilopond, kp
            lbf: pound-force, pounds-force, pound force, pounds force, pounds of force
            Pa: pascal
            kPa: kilopascal
            MPa: megapascal
            hPa: hectopascal, millibar, mbar
            psi: psi, lb/in2, lbf/in2
            inHg: inches of mercury, inch of mercury, in hg, inhg, "hg
            hp: horsepower
            kW.h: kilowatt hour, kilowatt-hour, kwh
            MJ: megajoule
            J: joule
            ft/min: fpm
            %: pct
            """;

    private static final Map<String, List<String>> CODES = new HashMap<>();
    private static final Pattern OVER = Pattern.compile("\\s*/\\s*|\\s+per\\s+|^per\\s+|\\s+an?\\s+|^an?\\s+");
    private static final Pattern CUSTOMARY = Pattern.compile(
            "(?:(us|u\\.s\\.?|american|uk|u\\.k\\.?|imperial|imp|british)\\s+)(gal|gallon|qt|quart|pt|pint|floz|fl oz"
                    + "|fluid ounce|cup|tbsp|tablespoon|tsp|teaspoon|cwt|hundredweight)s?");
    private static final Map<String, String> SHORT = Map.of(
            "gallon", "gal",
            "quart", "qt",
            "pint", "pt",
            "fl oz", "floz",
            "fluid ounce", "floz",
            "tablespoon", "tbsp",
            "teaspoon", "tsp",
            "hundredweight", "cwt");

    private static final Pattern SPELT = Pattern.compile("[a-z ]+");

    static {
        for (String code : Units.codes()) {
            for (String name : Units.known(code).also()) {
                // Signs and capitals are read by the table as they are written.
                if (SPELT.matcher(name).matches()) {
                    CODES.computeIfAbsent(name, none -> new ArrayList<>()).add(code);
                }
            }
        }
        for (String line : NAMES.strip().split("\n", -1)) {
            int colon = line.indexOf(": ");
            for (String name : line.substring(colon + 2).split(", ", -1)) {
                CODES.computeIfAbsent(name, none -> new ArrayList<>()).add(line.substring(0, colon));
            }
        }
    }

    private UnitWords() {}

    /** A name in lower case and the singular, without points of abbreviation. */
    static String plain(String name) {
        String word = spaced(name);
        return word.length() > 2 && word.endsWith("s") ? word.substring(0, word.length() - 1) : word;
    }

    /** A name without the hyphen it hangs on to its number by: a 12-inch side, a 20-ton jack. */
    static String withoutHyphen(String name) {
        return name.length() > 1 && name.charAt(0) == '-' && Character.isLetter(name.charAt(1))
                ? name.substring(1)
                : name;
    }

    private static String spaced(String name) {
        return name.strip()
                .toLowerCase(Locale.ROOT)
                .replaceAll("\\.(?=\\s|$)", "")
                .replace("^2", "2")
                .replace("^3", "3")
                .replace('²', '2')
                .replace('³', '3')
                .replaceAll("\\s+", " ");
    }

    /** The code a name stands for where a kind is wanted; null if it stands for none, or for several of a unit. */
    static @Nullable String code(Kind<?> kind, String name) {
        Meant meant = meant(kind, name);
        return meant == null || meant.times() != 1 ? null : meant.symbol().code();
    }

    /** What a name stands for where a kind is wanted; null if nothing. */
    static @Nullable Meant meant(Kind<?> kind, String written) {
        String name = withoutHyphen(written);
        Units.Symbol exact = kind.symbolOfText(name);
        if (exact != null) {
            return new Meant(exact, 1);
        }
        for (Units.Symbol symbol : kind.symbols()) {
            if (symbol.label().equals(name)) {
                return new Meant(symbol, 1);
            }
        }
        String word = spaced(name);
        var customary = CUSTOMARY.matcher(word);
        if (customary.matches()) {
            String base = customary.group(2);
            boolean american = customary.group(1).startsWith("us")
                    || customary.group(1).startsWith("u.s")
                    || customary.group(1).equals("american");
            Units.Symbol symbol = kind.symbolOfText(SHORT.getOrDefault(base, base) + (american ? "_us" : "_uk"));
            return symbol == null ? null : new Meant(symbol, 1);
        }
        for (String key : List.of(word, plain(name))) {
            for (String code : CODES.getOrDefault(key, List.of())) {
                Meant meant = known(kind, code);
                if (meant != null && !isMega(name, code)) {
                    return meant;
                }
            }
        }
        String[] parts = OVER.split(word, -1);
        if (parts.length == 2 && !parts[1].isEmpty()) {
            String over = (parts[0].isEmpty() ? "1" : part(parts[0])) + "/" + part(parts[1]);
            Units.Symbol symbol = kind.symbolOfText(over.equals("lb/in2") ? "psi" : over);
            return symbol == null ? null : new Meant(symbol, 1);
        }
        return inOtherCase(kind, name);
    }

    private static String part(String name) {
        for (String key : List.of(name, plain(name))) {
            List<String> codes = CODES.get(key);
            if (codes != null) {
                return codes.get(0);
            }
        }
        return name;
    }

    /** Whether a short sign begins with the M of mega where the unit has the m of milli. */
    private static boolean isMega(String name, String code) {
        return name.length() <= 2 && name.charAt(0) == 'M' && code.charAt(0) == 'm';
    }

    private static @Nullable Meant known(Kind<?> kind, String code) {
        int blank = code.indexOf(' ');
        Units.Symbol symbol = kind.symbolOfText(code.substring(blank + 1));
        return symbol == null ? null : new Meant(symbol, blank < 0 ? 1 : Integer.parseInt(code.substring(0, blank)));
    }

    /**
     * A code in capitals, or in small letters; but a milli is no mega, so the case of an m counts, and a T alone is a tonne to
     * some and a ton to others.
     */
    private static @Nullable Meant inOtherCase(Kind<?> kind, String name) {
        Units.Symbol found = null;
        for (Units.Symbol symbol : kind.symbols()) {
            String code = symbol.code();
            if (code.equalsIgnoreCase(name)
                    && (code.charAt(0) == name.charAt(0) || ("mM".indexOf(code.charAt(0)) < 0 && !code.equals("t")))) {
                if (found != null) {
                    return null;
                }
                found = symbol;
            }
        }
        return found == null ? null : new Meant(found, 1);
    }
}
