package org.papermath.json.schema;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.papermath.json.DocumentFormat;
import org.papermath.quantity.Kind;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Limits;

/** The words schemas are made of. */
final class SchemaWords {
    /** What a reference to a definition begins with. */
    static final String REF = "#/$defs/";
    /** What is stripped from the ends of a text; written out, since the engines of schemas differ on {@code \s}. */
    private static final String BLANK =
            "[\\u0009-\\u000D\\u001C-\\u0020\\u1680\\u2000-\\u2006\\u2008-\\u200A\\u2028\\u2029\\u205F\\u3000]*";

    private static final String INK = "[^" + BLANK.substring(1, BLANK.length() - 1);
    private static final String NUMBER = "[+-]?([0-9]+(\\.[0-9]*)?|\\.[0-9]+)([eE][+-]?[0-9]+)?";

    private SchemaWords() {}

    /** Returns what a {@linkplain #ref reference} to one of the plain things leads to: a text, a day, a quantity. */
    static Object definition(String name) {
        return switch (name) {
            case "text" -> plain("A text with something in it.", Map.of("type", "string", "pattern", INK));
            case "note" -> plain("A text of any number of lines.", Map.of("type", "string"));
            case "day" -> day();
            default ->
                Kinds.all().stream()
                        .filter(kind -> slug(kind.name()).equals(name))
                        .findFirst()
                        .map(SchemaWords::kind)
                        .orElseGet(() -> reading(name));
        };
    }

    private static Object reading(String name) {
        Kind<?> of = Kinds.all().stream()
                .filter(kind -> name.equals(slug("reading of " + kind.name())))
                .findFirst()
                .orElseThrow(() -> new IllegalStateException("no definition of " + name));
        Map<String, Object> schema = new LinkedHashMap<>();
        schema.put("title", "reading of " + of.name());
        String unit = of.codes().get(0);
        schema.putAll(SchemaObject.object()
                .meaning("What an instrument showed, with how far off it may be.")
                .required(
                        "read",
                        anyOf(quantity(of), blank()),
                        "What it showed. Blank in a form, where it is no reading.",
                        "2 " + unit)
                .required(
                        "error",
                        quantity(of),
                        "Its standard error, such as half a division of the scale.",
                        "0.1 " + unit)
                .optional(
                        "planned",
                        quantity(of),
                        "What is planned, beside a blank to fill in. It is not kept.",
                        OmittedMembers.then("nothing is planned"),
                        "3 " + unit)
                .optional(
                        "on",
                        ref("day"),
                        "The day it was read.",
                        OmittedMembers.then("the day of the record"),
                        "2027-01-05")
                .schema());
        return schema;
    }

    private static Object day() {
        // The length keeps out a line break at the end, before which some engines find the end too.
        return plain(
                "A day of the calendar, from " + Limits.FIRST_DAY + " to " + Limits.LAST_DAY + ": year, month and day.",
                Map.of(
                        "type",
                        "string",
                        "maxLength",
                        10,
                        "pattern",
                        "^" + years() + "-(0[1-9]|1[0-2])-(0[1-9]|[12][0-9]|3[01])$"));
    }

    /** Whole centuries: the days begin with one and end with one. */
    private static String years() {
        List<String> centuries = IntStream.rangeClosed(
                        Limits.FIRST_DAY.getYear() / 100, Limits.LAST_DAY.getYear() / 100)
                .mapToObj(Integer::toString)
                .toList();
        return "(" + String.join("|", centuries) + ")[0-9]{2}";
    }

    private static Object plain(String description, Map<String, Object> schema) {
        return SchemaObject.described(schema, description, Optional.empty());
    }

    /** Returns the name as it can stand in a reference. */
    private static String slug(String name) {
        return name.toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]+", "-");
    }

    static Map<String, Object> ref(String name) {
        return Map.of("$ref", REF + slug(name));
    }

    static Object text() {
        return ref("text");
    }

    static Object quantity(Kind<?> kind) {
        return ref(kind.name());
    }

    static Object reading(Kind<?> kind) {
        return ref("reading of " + kind.name());
    }

    static Object flag() {
        return Map.of("type", "boolean");
    }

    /** A text with nothing in it: a blank that was not filled in. */
    static Object blank() {
        return Map.of("type", "string", "pattern", "^" + BLANK + "$");
    }

    /** A time of day. */
    static Object clock() {
        return Map.of("type", "string", "pattern", "^(([01][0-9]|2[0-3]):[0-5][0-9]|24:00)$");
    }

    static Object number(double least, double most) {
        Map<String, Object> schema = new LinkedHashMap<>();
        schema.put("type", "number");
        schema.put("minimum", least);
        schema.put("maximum", most);
        return schema;
    }

    static Object count(long least, long most) {
        Map<String, Object> schema = new LinkedHashMap<>();
        schema.put("type", "integer");
        schema.put("minimum", least);
        schema.put("maximum", most);
        return schema;
    }

    static Object count(Limits.Count limits) {
        return count(limits.least(), limits.most());
    }

    static Object list(int least, int most, Object item) {
        Map<String, Object> schema = new LinkedHashMap<>();
        schema.put("type", "array");
        schema.put("items", item);
        if (least > 0) {
            schema.put("minItems", least);
        }
        if (most < Integer.MAX_VALUE) {
            schema.put("maxItems", most);
        }
        return schema;
    }

    static Object sides() {
        return list(2, 2, quantity(Kinds.LENGTH));
    }

    static <T> Object words(List<T> values, Function<? super T, String> word) {
        return Map.of("enum", values.stream().map(word).collect(Collectors.<Object>toList()));
    }

    static Map<String, Object> anyOf(Object... schemas) {
        return Map.of("anyOf", List.of(schemas));
    }

    /** A text whose ends are stripped before it is compared. */
    static Object oneOf(List<String> texts) {
        return Map.of("type", "string", "pattern", "^" + BLANK + choice(texts) + BLANK + "$");
    }

    static Object version(DocumentFormat format) {
        return oneOf(IntStream.rangeClosed(0, format.minor())
                .mapToObj(minor -> format.major() + "." + minor)
                .toList());
    }

    static SchemaObject writtenBy() {
        return SchemaObject.object()
                .required("program", text(), "Its name.", "studio notebook")
                .required("version", text(), "Its version.", "2.1");
    }

    static Object referenceOr(Object inline) {
        return anyOf(
                SchemaObject.object()
                        .meaning("A reference to a document in another file.")
                        .required(
                                "ref",
                                text(),
                                "The file it stands in, from the folder of this"
                                        + " document on. It cannot lead out of that folder.",
                                "tide-grey.json"),
                inline);
    }

    /** An object whose members follow from one word. */
    static Map<String, Object> byWord(String member, String meaning, Map<String, SchemaObject> schemas) {
        List<Object> cases = new ArrayList<>();
        schemas.forEach((word, schema) -> {
            Map<String, Object> one = new LinkedHashMap<>();
            one.put("if", Map.of("properties", Map.of(member, Map.of("const", word))));
            one.put("then", schema.saying(member));
            cases.add(one);
        });
        Map<String, Object> schema = new LinkedHashMap<>();
        schema.put("type", "object");
        schema.put("required", List.of(member));
        List<String> words = List.copyOf(schemas.keySet());
        schema.put(
                "properties",
                Map.of(member, SchemaObject.described(Map.of("enum", words), meaning, Optional.empty(), words.get(0))));
        schema.put("allOf", cases);
        return schema;
    }

    private static Object kind(Kind<?> kind) {
        List<Object> forms = new ArrayList<>();
        Map<String, Object> text = new LinkedHashMap<>();
        text.put("type", "string");
        text.put("maxLength", 100);
        text.put("pattern", pattern(kind));
        forms.add(text);
        String unit = kind.codes().get(0);
        forms.add(SchemaObject.closed()
                .required("value", Map.of("type", "number"), "The number.", 1)
                .required("unit", oneOf(kind.spellings()), "Its unit.", unit));
        if (kind == (Kind<?>) Kinds.GRAMMAGE) {
            forms.add(ream());
        }
        Map<String, Object> schema = new LinkedHashMap<>();
        schema.put("title", kind.name());
        schema.put("description", "A number and its unit, one of: " + String.join(", ", kind.codes()) + ".");
        schema.put("anyOf", forms);
        return schema;
    }

    private static SchemaObject ream() {
        return SchemaObject.closed()
                .meaning("A grammage given as the weight of a ream.")
                .required("weight", quantity(Kinds.MASS), "What the ream weighs.", "80 lb")
                .required("sheet", sides(), "The two sides of the sheets it is based on.", List.of("20 in", "26 in"))
                .optional(
                        "count",
                        count(1, 100_000),
                        "How many sheets are in it.",
                        OmittedMembers.then(
                                "the document is not read, and the fault lists what the usual counts would give"),
                        500);
    }

    /** A unit that begins with a digit needs a blank before it, or the digit belongs to the number. */
    private static String pattern(Kind<?> kind) {
        List<String> plain = new ArrayList<>();
        List<String> digit = new ArrayList<>();
        for (String code : kind.spellings()) {
            (Character.isDigit(code.charAt(0)) ? digit : plain).add(code);
        }
        String some = BLANK.substring(0, BLANK.length() - 1) + "+";
        Set<String> units = new LinkedHashSet<>();
        if (!plain.isEmpty()) {
            units.add(BLANK + choice(plain));
        }
        if (!digit.isEmpty()) {
            units.add(some + choice(digit));
        }
        String unit = "(" + String.join("|", units) + ")" + (kind.spellings().contains("1") ? "?" : "");
        return "^" + BLANK + NUMBER + unit + BLANK + "$";
    }

    private static String choice(List<String> texts) {
        return texts.stream().map(SchemaWords::quoted).collect(Collectors.joining("|", "(", ")"));
    }

    /** Quotes a text for a pattern by the rules of ECMA-262, which knows no {@code \Q}. */
    private static String quoted(String text) {
        StringBuilder quoted = new StringBuilder();
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            if ("\\^$.|?*+()[]{}/".indexOf(c) >= 0) {
                quoted.append('\\');
            }
            quoted.append(c);
        }
        return quoted.toString();
    }
}
