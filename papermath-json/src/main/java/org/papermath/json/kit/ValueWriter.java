package org.papermath.json.kit;

import java.time.LocalDate;
import java.time.LocalTime;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Map;
import java.util.function.BiConsumer;
import java.util.function.Consumer;
import java.util.stream.IntStream;
import javax.measure.Quantity;
import org.jspecify.annotations.Nullable;
import org.papermath.format.ReamBasis;
import org.papermath.json.tree.ForeignMembers;
import org.papermath.json.tree.JsonText;
import org.papermath.json.tree.JsonValue;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Units;

/** The place of a value while a document is written. Write exactly one value to it. */
public final class ValueWriter {
    /** The level of a document that stands on one line. */
    static final int ONE_LINE = -1;

    private static final int LINE = 100;
    /** A line break with the blanks of a level behind it. */
    private static final String[] BREAKS =
            IntStream.range(0, 12).mapToObj(ValueWriter::broken).toArray(String[]::new);
    /** The same with the comma before and the quotation mark behind. */
    private static final String[] QUOTES =
            IntStream.range(0, 12).mapToObj(ValueWriter::quote).toArray(String[]::new);

    private final StringBuilder text;
    private final ForeignMembers kept;
    private final int level;
    private final String pointer;
    private final @Nullable ObjectWriter owner;
    private final String name;
    private boolean written;

    ValueWriter(StringBuilder text, ForeignMembers kept, int level, String pointer) {
        this(text, kept, level, pointer, null, "");
    }

    ValueWriter(
            StringBuilder text,
            ForeignMembers kept,
            int level,
            String pointer,
            @Nullable ObjectWriter owner,
            String name) {
        this.text = text;
        this.kept = kept;
        this.level = level;
        this.pointer = pointer;
        this.owner = owner;
        this.name = name;
    }

    static int deeper(int level) {
        return level == ONE_LINE ? level : level + 1;
    }

    /** Begins a line, or goes on with the only one. */
    static void line(StringBuilder text, int level, boolean first) {
        if (level == ONE_LINE) {
            text.append(first ? "" : ", ");
            return;
        }
        if (!first) {
            text.append(',');
        }
        indent(text, level);
    }

    /** Returns what stands before a name on a line: the break or the comma, and the quotation mark. */
    static String quoteOnLine(int level, boolean first) {
        if (level == ONE_LINE) {
            return first ? "\"" : ", \"";
        }
        String quote = level < QUOTES.length ? QUOTES[level] : quote(level);
        return first ? quote.substring(1) : quote;
    }

    private static void indent(StringBuilder text, int level) {
        text.append(level < BREAKS.length ? BREAKS[level] : broken(level));
    }

    private static String broken(int level) {
        return "\n" + "  ".repeat(level);
    }

    private static String quote(int level) {
        return "," + broken(level) + "\"";
    }

    /** Closes what stands on lines of this level. */
    static void close(StringBuilder text, int level, boolean empty, char closing) {
        if (level != ONE_LINE && !empty) {
            indent(text, level - 1);
        }
        text.append(closing);
    }

    /**
     * Returns whether members of others stood in the object of this place, so that it has to be written as one.
     *
     * @return whether something is kept here
     */
    public boolean keeps() {
        return kept.isIn(pointer);
    }

    private void begin() {
        if (written) {
            throw new IllegalStateException("two values written to one place" + (name.isEmpty() ? "" : ": " + name));
        }
        written = true;
        if (owner != null) {
            owner.begin(name);
        }
    }

    private void end() {
        if (owner != null) {
            owner.written(name);
        }
    }

    private void plain(String digits) {
        begin();
        text.append(digits);
        end();
    }

    /**
     * Writes a text.
     *
     * @param value the text
     */
    public void text(String value) {
        begin();
        JsonText.quote(text, value);
        end();
    }

    /**
     * Writes a whole number.
     *
     * @param value the number
     */
    public void count(long value) {
        plain(Long.toString(value));
    }

    /**
     * Writes a plain number.
     *
     * @param value the number, finite
     * @throws IllegalArgumentException if it is not finite
     */
    public void number(double value) {
        if (!Double.isFinite(value)) {
            throw new IllegalArgumentException("not a finite number: " + value);
        }
        plain(Units.number(value));
    }

    /**
     * Writes a number so that it is seen not to be a count: 3 as 3.0.
     *
     * @param value the number, finite
     */
    public void fractional(double value) {
        plain(Double.toString(value));
    }

    /**
     * Writes {@code true} or {@code false}.
     *
     * @param value the flag
     */
    public void flag(boolean value) {
        plain(Boolean.toString(value));
    }

    /**
     * Writes a time of day in hours and minutes.
     *
     * @param time the time
     */
    public void clock(LocalTime time) {
        text(time.truncatedTo(ChronoUnit.MINUTES).toString());
    }

    /**
     * Writes a day.
     *
     * @param day the day
     */
    public void date(LocalDate day) {
        text(day.toString());
    }

    /**
     * Writes a quantity as {@code "260 g/m2"}, the shortest text that reads back to the same bits.
     *
     * @param <Q> the quantity type
     * @param amount the amount
     */
    public <Q extends Quantity<Q>> void quantity(Amount<Q> amount) {
        begin();
        text.append('"');
        Units.print(amount, text);
        text.append('"');
        end();
    }

    /**
     * Writes a figure that was worked out, to twelve digits: 0.2 L, not 0.19999999999999998 L.
     *
     * @param amount the figure
     */
    public void figure(Amount<?> amount) {
        text(JsonText.figure(amount));
    }

    /**
     * Writes the basis of a ream.
     *
     * @param basis the basis
     */
    public void reamBasis(ReamBasis basis) {
        object(out -> {
            if (Reams.isNamed(basis)) {
                out.member("name").text(basis.name());
            }
            out.member("sheet").list(List.of(basis.width(), basis.length()), ValueWriter::quantity);
            out.member("count").count(basis.count());
        });
    }

    /**
     * Writes an object.
     *
     * @param members writes its members
     */
    public void object(Consumer<? super ObjectWriter> members) {
        begin();
        text.append('{');
        ObjectWriter out = new ObjectWriter(text, kept, deeper(level), pointer);
        members.accept(out);
        out.end();
        end();
    }

    /**
     * Writes an object, or the reference it was read from.
     *
     * @param members writes its members
     */
    public void reference(Consumer<? super ObjectWriter> members) {
        String reference = kept.references().get(pointer);
        if (reference == null) {
            object(members);
        } else {
            object(out -> out.member("ref").text(reference));
        }
    }

    /**
     * Writes a list. Short lists of plain values stand on one line.
     *
     * @param <T> the type of the items
     * @param items the items
     * @param item writes one item
     */
    public <T> void list(Iterable<T> items, BiConsumer<? super ValueWriter, ? super T> item) {
        begin();
        text.append('[');
        int inside = deeper(level);
        int start = text.length();
        int number = 0;
        // Plain values are put on one line until they turn out not to fit there.
        boolean oneLine = true;
        for (T one : items) {
            int from = text.length();
            line(text, oneLine ? ONE_LINE : inside, number == 0);
            int at = text.length();
            ValueWriter out = new ValueWriter(text, kept, inside, kept.isEmpty() ? "" : pointer + "/" + number);
            item.accept(out, one);
            if (!out.written) {
                throw new IllegalStateException("nothing written for an item of a list");
            }
            char first = text.charAt(at);
            if (oneLine && level != ONE_LINE && (first == '{' || first == '[' || text.length() - start > LINE)) {
                oneLine = false;
                breakUp(start, from, at, number);
            }
            number++;
        }
        close(text, oneLine ? ONE_LINE : inside, number == 0, ']');
        end();
    }

    /** Puts the plain items from the start on lines of their own, and the last one, which stands from here. */
    private void breakUp(int start, int from, int last, int before) {
        String item = text.substring(last);
        String plain = text.substring(start, from);
        text.setLength(start);
        int at = 0;
        for (int number = 0; number < before; number++) {
            int end = endOfPlain(plain, at);
            line(text, deeper(level), number == 0);
            text.append(plain, at, end);
            at = Math.min(plain.length(), end + 2);
        }
        line(text, deeper(level), before == 0);
        text.append(item);
    }

    /** Finds the end of a plain value: a comma inside quotation marks does not end it. */
    private static int endOfPlain(String plain, int from) {
        boolean quoted = false;
        int at = from;
        for (; at < plain.length(); at++) {
            char c = plain.charAt(at);
            if (c == '\\') {
                at++;
            } else if (c == '"') {
                quoted = !quoted;
            } else if (c == ',' && !quoted) {
                break;
            }
        }
        return at;
    }

    /**
     * Writes a map as an object with free names.
     *
     * @param <T> the type of the values
     * @param map the values by name
     * @param item writes one value
     */
    public <T> void map(Map<String, T> map, BiConsumer<? super ValueWriter, ? super T> item) {
        object(out -> map.forEach((key, value) -> item.accept(out.member(key), value)));
    }

    /** Writes a kept value as it was. */
    void raw(JsonValue value) {
        switch (value.type()) {
            case OBJECT -> {
                begin();
                text.append('{');
                ObjectWriter out = new ObjectWriter(text, kept, deeper(level), "");
                for (JsonValue member : value.members()) {
                    new ValueWriter(text, kept, deeper(level), "", out, member.step()).raw(member);
                }
                out.end();
                end();
            }
            case LIST -> list(value.items(), ValueWriter::raw);
            case TEXT -> text(value.text());
            case NUMBER, FLAG, NULL -> plain(value.text());
        }
    }

    /** Writes a value as it was, with what is kept in it. */
    void figures(JsonValue value) {
        switch (value.type()) {
            case OBJECT ->
                object(out ->
                        value.members().forEach(one -> out.member(one.step()).figures(one)));
            case LIST -> list(value.items(), ValueWriter::figures);
            case TEXT -> text(value.text());
            case NUMBER, FLAG, NULL -> plain(value.text());
        }
    }

    @Override
    public String toString() {
        return (written ? "written value" : "value to write") + (name.isEmpty() ? "" : " of " + name);
    }
}
