package org.papermath.json;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.papermath.json.mapping.PlanMapping;
import org.papermath.json.mapping.WrittenPlan;
import org.papermath.json.tree.JsonValue;
import org.papermath.json.tree.ListMatching;
import org.papermath.order.Order;
import org.papermath.order.Studio;
import org.papermath.plan.MakingPlan;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.PapermathException;
import org.papermath.quantity.Units;

/**
 * A plan as it was written: what it was made from, and the figures it gave then. Immutable.
 *
 * <pre>{@code
 * PlanDocument then = PapermathDocuments.readPlan(folder.resolve("plan.json")).value();
 * for (PlanDocument.Moved one : then.moved()) {
 *     out.println(one.pointer() + ": " + one.before() + ", now " + one.after());
 * }
 * }</pre>
 */
public final class PlanDocument {
    /** Another machine may calculate a function to another last digit; figures are written to twelve. */
    private static final double SAME = 1e-9;

    private final WrittenPlan written;

    /**
     * A figure that is not what it was.
     *
     * @param pointer the JSON Pointer of the figure in the document; of a new one, where it would stand now
     * @param before what was written; empty if it was not there
     * @param after what comes out now; empty if it is not there any more
     */
    public record Moved(String pointer, String before, String after) {
        @Override
        public String toString() {
            return pointer + ": " + (before.isEmpty() ? "nothing" : before) + " before, "
                    + (after.isEmpty() ? "nothing" : after) + " now";
        }
    }

    PlanDocument(WrittenPlan written) {
        this.written = written;
    }

    /**
     * Returns the edition of the table of assumptions the figures were made with.
     *
     * @return its name
     */
    public String edition() {
        return written.edition();
    }

    /**
     * Returns the order.
     *
     * @return the order with its recipes
     */
    public Order order() {
        return written.order();
    }

    /**
     * Returns the studio, with its own values.
     *
     * @return the studio
     */
    public Studio studio() {
        return written.studio();
    }

    /**
     * Returns the figures that were written, settings and forecasts, words and texts among them.
     *
     * @return an unmodifiable map by JSON Pointer, in the order of the document
     */
    public Map<String, String> figures() {
        return Collections.unmodifiableMap(flat(written.figures()));
    }

    /**
     * Makes the plan again, from the same order, studio and edition.
     *
     * @return the plan
     */
    public MakingPlan recompute() {
        return MakingPlan.of(order(), studio());
    }

    /**
     * Makes the plan again and says which figures are others now: none, as long as the library calculates as it did.
     *
     * @return an unmodifiable list in the order of the document
     */
    public List<Moved> moved() {
        return moved(recompute());
    }

    /**
     * Returns which figures differ in another plan, for example of the same order with another edition of the
     * assumptions or with values measured since. Numbers are the same if they differ by less than a part in 10⁹.
     *
     * @param now the other plan
     * @return an unmodifiable list in the order of the document, what is new at its end; items of a list are compared
     *     with those of the same name, wherever they stand
     */
    public List<Moved> moved(MakingPlan now) {
        Map<String, JsonValue> figures = PlanMapping.figures(now);
        Map<String, String> after = flat(figures);
        List<Moved> moved = new ArrayList<>();
        written.figures().forEach((name, value) -> {
            String root = JsonValue.pointer("", name);
            JsonValue other = figures.get(name);
            ListMatching moves = other == null ? null : new ListMatching(value, other);
            flat(Map.of(name, value)).forEach((pointer, text) -> {
                String there = moves == null
                        ? ""
                        : moves.of(pointer.substring(root.length()), false)
                                .map(place -> after.remove(root + place))
                                .orElse("");
                if (!isSame(text, there)) {
                    moved.add(new Moved(pointer, text, there));
                }
            });
        });
        after.forEach((pointer, text) -> moved.add(new Moved(pointer, "", text)));
        return List.copyOf(moved);
    }

    WrittenPlan written() {
        return written;
    }

    private static boolean isSame(String before, String after) {
        if (before.equals(after)) {
            return true;
        }
        String[] one = before.split(" ", 2);
        String[] other = after.split(" ", 2);
        if (one.length != other.length || (one.length == 2 && !one[1].equals(other[1]))) {
            return false;
        }
        Optional<Double> first = number(one[0]);
        Optional<Double> second = number(other[0]);
        return first.isPresent()
                && second.isPresent()
                && Math.abs(first.get() - second.get())
                        <= SAME * Math.max(Math.abs(first.get()), Math.abs(second.get()));
    }

    private static Optional<Double> number(String text) {
        try {
            return Optional.of(Units.read(Kinds.NUMBER, text).value());
        } catch (PapermathException e) {
            return Optional.empty();
        }
    }

    private static Map<String, String> flat(Map<String, JsonValue> tree) {
        Map<String, String> all = new LinkedHashMap<>();
        tree.forEach((name, value) -> flat(JsonValue.pointer("", name), value, all));
        return all;
    }

    private static void flat(String pointer, JsonValue value, Map<String, String> all) {
        switch (value.type()) {
            case OBJECT -> value.members().forEach(one -> flat(JsonValue.pointer(pointer, one.step()), one, all));
            case LIST -> {
                int number = 0;
                for (JsonValue item : value.items()) {
                    flat(pointer + "/" + number++, item, all);
                }
            }
            case TEXT, NUMBER, FLAG, NULL -> all.put(pointer, value.text());
        }
    }

    /** Two are equal if they were made from the same and gave the same figures, digit by digit. */
    @Override
    public boolean equals(Object other) {
        return other instanceof PlanDocument that
                && edition().equals(that.edition())
                && order().equals(that.order())
                && studio().equals(that.studio())
                && figures().equals(that.figures());
    }

    @Override
    public int hashCode() {
        return Objects.hash(edition(), order(), studio());
    }

    @Override
    public String toString() {
        return "plan of " + order().name() + ", edition " + edition();
    }
}
