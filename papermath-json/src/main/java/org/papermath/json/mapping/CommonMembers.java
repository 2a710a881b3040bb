package org.papermath.json.mapping;

import java.util.Collection;
import java.util.List;
import java.util.Locale;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import org.papermath.evidence.Scope;
import org.papermath.json.FaultCodes;
import org.papermath.json.kit.ObjectReader;
import org.papermath.json.kit.ReadResult;
import org.papermath.json.kit.ValueReader;
import org.papermath.json.kit.ValueWriter;
import org.papermath.json.tree.JsonTree;
import org.papermath.json.tree.JsonValue;
import org.papermath.json.tree.ReadableText;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kind;
import org.papermath.quantity.Limits;
import org.papermath.quantity.Refused;

/** What several mappings share. */
public final class CommonMembers {
    /** More of one thing than this no studio has and no order names; looking for names among more takes long. */
    public static final int MANY = JsonTree.MANY;

    private CommonMembers() {}

    /** Returns the word of a constant: in small letters, with blanks. */
    public static String word(Enum<?> constant) {
        return constant.name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }

    /** Reads the name of something for which values can be measured; such a name has to fit into a scope. */
    static ReadResult<String> name(ObjectReader in) {
        return sayable(in.required("name").text());
    }

    /** Refuses a name with a sign that stands for something in the key of a measured value. */
    public static ReadResult<String> sayable(ReadResult<String> name) {
        return name.check(text -> {
            if (Scope.hasSign(text)) {
                throw Refused.of(
                        "scope.name",
                        "\"" + JsonValue.shown(text) + "\" has one of the signs [ ] @ in it, by"
                                + " which the places of measured values are written. Use a name without them.",
                        "given",
                        text);
            }
        });
    }

    /** Writes a name read by {@link #name}. */
    static void name(ValueWriter out, String name) {
        if (Scope.hasSign(name)) {
            throw ReadableText.unreadable(
                    "scope.name", name, "it has one of the signs [ ] @ in it. Use a name without them");
        }
        text(out, name);
    }

    /** Writes a name or a short text, without the blanks around it, unless it could not be read again. */
    public static void text(ValueWriter out, String text) {
        out.text(ReadableText.name(text));
    }

    /** Writes a text of several lines, unless it could not be read again. */
    public static void note(ValueWriter out, String text) {
        out.text(ReadableText.note(text));
    }

    /** Returns what is written to a list, unless there is more of it than is read. */
    public static <C extends Collection<?>> C atMost(int most, C items, String what) {
        if (items.size() > most) {
            throw Refused.of(
                    FaultCodes.LENGTH,
                    "a document with " + items.size() + " " + what + " could not be read" + " again; at most " + most
                            + " are read.",
                    "given",
                    items.size(),
                    "most",
                    most);
        }
        return items;
    }

    /** Returns a name for messages, also where the name itself has a fault. */
    public static String label(ReadResult<String> name) {
        return name.isFaulty() || !name.isGiven() ? "without a name" : name.get();
    }

    public static <Q extends Quantity<Q>> ReadResult<Amount<Q>> aboveZero(ValueReader at, Kind<Q> kind, String what) {
        return at.quantity(kind).check(amount -> kind.siAboveZero(amount, what));
    }

    /** Reads two sides, {@code ["148 mm", "210 mm"]}. */
    static ReadResult<List<Amount<Length>>> sides(ValueReader at, Limits.Range<Length> limits, String what) {
        return at.list(
                2, 2, side -> within(side, limits, what), "two sides in brackets, such as [\"210 mm\", \"297 mm\"]");
    }

    /** Reads a quantity within limits. */
    public static <Q extends Quantity<Q>> ReadResult<Amount<Q>> within(
            ValueReader at, Limits.Range<Q> limits, String what) {
        return at.quantity(limits.kind()).check(amount -> limits.check(amount, what));
    }

    /** Reads a count within limits. */
    public static ReadResult<Integer> count(ValueReader at, Limits.Count limits) {
        return at.count(limits.least(), limits.most());
    }

    static void sides(ValueWriter out, Amount<Length> width, Amount<Length> height) {
        out.list(List.of(width, height), ValueWriter::quantity);
    }
}
