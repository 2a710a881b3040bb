package org.papermath.json;

import java.util.Collection;
import java.util.List;
import java.util.Locale;

import javax.measure.Quantity;
import javax.measure.quantity.Length;

import org.papermath.evidence.Scope;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kind;
import org.papermath.quantity.Limits;
import org.papermath.quantity.Name;
import org.papermath.quantity.Refused;

/** What several mappings share. */
final class Common {
    /** More of one thing than this no studio has and no order names; looking for names among more takes long. */
    static final int MANY = 1000;

    private Common() {
    }

    /** Returns the word of a constant: in small letters, with blanks. */
    static String word(Enum<?> constant) {
        return constant.name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }

    /** Reads the name of something for which values can be measured; such a name has to fit into a scope. */
    static Got<String> name(ObjectAt in) {
        return sayable(in.required("name").text());
    }

    /** Refuses a name with a sign that stands for something in the key of a measured value. */
    static Got<String> sayable(Got<String> name) {
        return name.check(text -> {
            if (Scope.hasSign(text)) {
                throw Refused.of("scope.name", "\"" + JsonValue.shown(text) + "\" has one of the signs [ ] @ in it, by"
                        + " which the places of measured values are written. Use a name without them.", "given", text);
            }
        });
    }

    /** Writes a name read by {@link #name}. */
    static void name(ValueOut out, String name) {
        if (Scope.hasSign(name)) {
            throw unreadable("scope.name", name, "it has one of the signs [ ] @ in it. Use a name without them");
        }
        text(out, name);
    }

    /** Writes a name or a short text, without the blanks around it, unless it could not be read again. */
    static void text(ValueOut out, String text) {
        String bare = text.strip();
        if (bare.isEmpty()) {
            throw unreadable(FaultCodes.BLANK, text, "it is empty. Write something");
        }
        out.text(readable(bare, ValueAt.MOST_NAME, false));
    }

    /** Writes a text of several lines, unless it could not be read again. */
    static void note(ValueOut out, String text) {
        out.text(readable(text, JsonTree.MOST_TEXT, true));
    }

    private static String readable(String text, int most, boolean lines) {
        if (text.length() > most) {
            throw unreadable(FaultCodes.LONG_TEXT, text, "it has " + text.length() + " characters; at most " + most
                    + " are read. Shorten it");
        }
        int hidden = Name.hiddenIn(text, lines);
        if (hidden >= 0) {
            throw Refused.of(FaultCodes.CHARACTER, "a document with \"" + JsonValue.shown(text)
                    + "\" could not be read again: " + Name.hidden(text, hidden), "given", text);
        }
        return text;
    }

    /** Returns what is written to a list, unless there is more of it than is read. */
    static <C extends Collection<?>> C atMost(int most, C items, String what) {
        if (items.size() > most) {
            throw Refused.of(FaultCodes.LENGTH, "a document with " + items.size() + " " + what + " could not be read"
                    + " again; at most " + most + " are read.", "given", items.size(), "most", most);
        }
        return items;
    }

    private static Refused unreadable(String code, String text, String why) {
        return Refused.of(code, "a document with \"" + JsonValue.shown(text) + "\" could not be read again: " + why
                + ".", "given", text);
    }

    /** Returns a name for messages, also where the name itself has a fault. */
    static String label(Got<String> name) {
        return name.isFaulty() || !name.isGiven() ? "without a name" : name.get();
    }

    static <Q extends Quantity<Q>> Got<Amount<Q>> aboveZero(ValueAt at, Kind<Q> kind, String what) {
        return at.quantity(kind).check(amount -> kind.siAboveZero(amount, what));
    }

    /** Reads two sides, {@code ["148 mm", "210 mm"]}. */
    static Got<List<Amount<Length>>> sides(ValueAt at, Limits.Range<Length> limits, String what) {
        return at.list(2, 2, side -> within(side, limits, what));
    }

    /** Reads a quantity within limits. */
    static <Q extends Quantity<Q>> Got<Amount<Q>> within(ValueAt at, Limits.Range<Q> limits, String what) {
        return at.quantity(limits.kind()).check(amount -> limits.check(amount, what));
    }

    /** Reads a count within limits. */
    static Got<Integer> count(ValueAt at, Limits.Count limits) {
        return at.count(limits.least(), limits.most());
    }

    static void sides(ValueOut out, Amount<Length> width, Amount<Length> height) {
        out.list(List.of(width, height), ValueOut::quantity);
    }
}
