package org.papermath.json;

import java.math.BigDecimal;
import java.math.MathContext;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.BiConsumer;
import java.util.function.Consumer;

import javax.measure.Quantity;

import org.jspecify.annotations.Nullable;
import org.papermath.quantity.Amount;
import org.papermath.quantity.ReamBasis;
import org.papermath.quantity.Units;

/** The place of a value while a document is written. Write exactly one value to it. */
public final class ValueOut {
    private static final int LINE = 100;
    private static final int FIGURES = 12;
    private static final String BLANKS = " ".repeat(32);

    private final StringBuilder text;
    private final Kept kept;
    private final int level;
    private final String pointer;
    private final @Nullable ObjectOut owner;
    private final String name;
    private boolean written;

    ValueOut(StringBuilder text, Kept kept, int level, String pointer) {
        this(text, kept, level, pointer, null, "");
    }

    ValueOut(StringBuilder text, Kept kept, int level, String pointer, @Nullable ObjectOut owner, String name) {
        this.text = text;
        this.kept = kept;
        this.level = level;
        this.pointer = pointer;
        this.owner = owner;
        this.name = name;
    }

    static void indent(StringBuilder text, int level) {
        for (int left = 2 * level; left > 0; left -= BLANKS.length()) {
            text.append(BLANKS, 0, Math.min(left, BLANKS.length()));
        }
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
        Json.quote(text, value);
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
     * Writes {@code true} or {@code false}.
     *
     * @param value the flag
     */
    public void flag(boolean value) {
        plain(Boolean.toString(value));
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
        text(Units.print(amount));
    }

    /** Writes a figure that was worked out, to {@value #FIGURES} digits: 0.2 L, not 0.19999999999999998 L. */
    void figure(Amount<?> amount) {
        String[] parts = Units.print(amount).split(" ", 2);
        String number = Units.number(new BigDecimal(parts[0]).round(new MathContext(FIGURES)).doubleValue());
        text(parts.length == 1 ? number : number + " " + parts[1]);
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
            out.member("sheet").list(List.of(basis.width(), basis.length()), ValueOut::quantity);
            out.member("count").count(basis.count());
        });
    }

    /**
     * Writes an object.
     *
     * @param members writes its members
     */
    public void object(Consumer<? super ObjectOut> members) {
        begin();
        text.append('{');
        ObjectOut out = new ObjectOut(text, kept, level + 1, pointer);
        members.accept(out);
        out.end();
        close('{', '}');
        end();
    }

    private void close(char opened, char closing) {
        if (text.charAt(text.length() - 1) != opened) {
            text.append('\n');
            indent(text, level);
        }
        text.append(closing);
    }

    /**
     * Writes an object, or the reference it was read from.
     *
     * @param members writes its members
     */
    public void reference(Consumer<? super ObjectOut> members) {
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
    public <T> void list(Iterable<T> items, BiConsumer<? super ValueOut, ? super T> item) {
        begin();
        text.append('[');
        int start = text.length();
        List<String> plain = new ArrayList<>();
        int number = 0;
        for (T one : items) {
            text.append(number == 0 ? "\n" : ",\n");
            indent(text, level + 1);
            int from = text.length();
            ValueOut out = new ValueOut(text, kept, level + 1, kept.isEmpty() ? "" : pointer + "/" + number);
            item.accept(out, one);
            if (!out.written) {
                throw new IllegalStateException("nothing written for an item of a list");
            }
            char first = text.charAt(from);
            if (first != '{' && first != '[') {
                plain.add(text.substring(from));
            }
            number++;
        }
        String line = String.join(", ", plain);
        if (number > 0 && plain.size() == number && line.length() <= LINE) {
            text.setLength(start);
            text.append(line).append(']');
        } else {
            close('[', ']');
        }
        end();
    }

    /**
     * Writes a map as an object with free names.
     *
     * @param <T> the type of the values
     * @param map the values by name
     * @param item writes one value
     */
    public <T> void map(Map<String, T> map, BiConsumer<? super ValueOut, ? super T> item) {
        object(out -> map.forEach((key, value) -> item.accept(out.member(key), value)));
    }

    /** Writes a kept value as it was. */
    void raw(JsonValue value) {
        switch (value.type()) {
            case OBJECT -> {
                begin();
                text.append('{');
                ObjectOut out = new ObjectOut(text, kept, level + 1, "");
                for (JsonValue member : value.members()) {
                    new ValueOut(text, kept, level + 1, "", out, member.step()).raw(member);
                }
                close('{', '}');
                end();
            }
            case LIST -> list(value.items(), ValueOut::raw);
            case TEXT -> text(value.text());
            case NUMBER, FLAG, NULL -> plain(value.text());
        }
    }

    @Override
    public String toString() {
        return (written ? "written value" : "value to write") + (name.isEmpty() ? "" : " of " + name);
    }
}
