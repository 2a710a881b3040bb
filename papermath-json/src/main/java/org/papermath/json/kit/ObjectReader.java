package org.papermath.json.kit;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.papermath.json.Fault;
import org.papermath.json.FaultCodes;
import org.papermath.json.tree.JsonValue;
import org.papermath.json.tree.Source;
import org.papermath.quantity.PapermathException;

/**
 * An object of a document while it is read. Ask for its members by name, then {@link #make} the value.
 *
 * <pre>{@code
 * static ReadResult<Felt> felt(ObjectReader in) {
 *     ReadResult<String> name = in.required("name").text();
 *     ReadResult<Amount<Mass>> mass = in.required("mass").quantity(Kinds.MASS);
 *     ReadResult<Integer> count = in.optional("count").count(1, 1000);
 *     return in.make(() -> new Felt(name.get(), mass.get(), count.orElse(1)));
 * }
 * }</pre>
 *
 * <p>Members nobody asked for are reported by {@code make} with the nearest known name. Members whose names begin with
 * {@code x-} belong to others and are kept.
 */
public final class ObjectReader {
    /** A fault of a member that is not there, and the names of which one would mend it. */
    private record Missed(Fault fault, List<String> names) {}

    private final Source source;
    private final JsonValue place;
    private final boolean readable;
    private String[] asked = new String[24];
    private int askedSoFar;
    /** What stands for every member that is not written. */
    private @Nullable ValueReader absent;

    private List<Missed> missing = List.of();

    private boolean closed;

    private ObjectReader(Source source, JsonValue place, boolean readable) {
        this.source = source;
        this.place = place;
        this.readable = readable;
    }

    static ObjectReader of(Source source, JsonValue object) {
        return new ObjectReader(source, object, true);
    }

    static ObjectReader faulty(Source source, JsonValue place) {
        return new ObjectReader(source, place, false);
    }

    /**
     * Asks for a member that must be there; if it is not, that is a fault at the object.
     *
     * @param name the name of the member
     * @return the value
     */
    public ValueReader required(String name) {
        JsonValue member = member(name);
        if (member != null) {
            return ValueReader.of(source, member);
        }
        if (readable) {
            miss(
                    source.fault(
                            place, FaultCodes.MISSING, "", List.of(name), "", "\"" + name + "\" is missing. Add it."),
                    name);
        }
        return ValueReader.faulty(source, place);
    }

    /**
     * Asks for a member that may be left out.
     *
     * @param name the name of the member
     * @return the value, which may be absent
     */
    public ValueReader optional(String name) {
        JsonValue member = member(name);
        if (member != null) {
            return ValueReader.of(source, member);
        }
        return unasked();
    }

    /**
     * Returns an absent value, for a member that has no place here; it stays unknown if it is written.
     *
     * @return the absent value
     */
    public ValueReader unasked() {
        if (!readable) {
            return ValueReader.faulty(source, place);
        }
        ValueReader nothing = absent;
        if (nothing == null) {
            nothing = ValueReader.absent(source, place);
            absent = nothing;
        }
        return nothing;
    }

    private @Nullable JsonValue member(String name) {
        if (askedSoFar == asked.length) {
            asked = Arrays.copyOf(asked, 2 * askedSoFar);
        }
        asked[askedSoFar++] = name;
        JsonValue member = readable ? place.member(name) : null;
        if (member != null) {
            member.ask();
        }
        return member;
    }

    /**
     * Returns whether a member is written, without asking for it.
     *
     * @param name the name of the member
     * @return whether it is there
     */
    public boolean has(String name) {
        return readable && place.member(name) != null;
    }

    /**
     * Asks for exactly one of several members; none or more than one is a fault at the object.
     *
     * @param names the names of the members, two or more
     */
    public void exactlyOne(String... names) {
        int found = 0;
        for (String name : names) {
            found += has(name) ? 1 : 0;
        }
        if (readable && found != 1) {
            List<String> written = Arrays.stream(names).filter(this::has).toList();
            String wanted = "one of \"" + String.join("\", \"", names) + "\" is required";
            Fault fault = source.fault(
                    place,
                    FaultCodes.ONE_OF,
                    String.join(", ", written),
                    List.of(names),
                    "",
                    written.isEmpty()
                            ? wanted + "; none is written."
                            : wanted + "; \"" + String.join("\" and \"", written)
                                    + "\" are written. Keep one of them.");
            if (written.isEmpty()) {
                miss(fault, names);
            }
        }
    }

    private void miss(Fault fault, String... names) {
        if (missing.isEmpty()) {
            missing = new ArrayList<>();
        }
        missing.add(new Missed(fault, List.of(names)));
    }

    /**
     * Makes the value of this object, unless something in it has a fault. Reports the members nobody asked for. A
     * refusal thrown while making becomes a fault at the object.
     *
     * @param <T> the type of the value
     * @param maker makes the value; here the values read may be taken out
     * @return the value, or a faulty one
     */
    public <T> ReadResult<T> make(Supplier<? extends T> maker) {
        close();
        ValueReader at = readable ? ValueReader.of(source, place) : ValueReader.faulty(source, place);
        if (!readable || source.session().isFaulty(place)) {
            return ReadResult.faulty(at);
        }
        try {
            return ReadResult.of(at, maker.get());
        } catch (PapermathException e) {
            // A clash knows which member is the one to change.
            JsonValue member = place.member(String.valueOf(e.arguments().get("member")));
            source.refuse(member == null ? place : member, e, List.of());
        } catch (ReadResult.Faulty e) {
            // Reported where it was read; this object is the poorer for it.
            source.session().mark(place);
        }
        return ReadResult.faulty(at);
    }

    /** Reports the members nobody asked for; {@link #make} does it by itself. */
    public void close() {
        if (closed || !readable) {
            return;
        }
        closed = true;
        if (place.isAllAsked()) {
            return;
        }
        for (JsonValue member : place.members()) {
            if (!member.isAsked()) {
                unknown(member);
            }
        }
    }

    /** Reports the members of others too, where there would be no place to write them back to. */
    void closeAgainstOthers() {
        close();
        if (readable) {
            for (JsonValue extra : place.extras().values()) {
                source.faultAtName(
                        extra,
                        FaultCodes.UNKNOWN,
                        known(),
                        "",
                        "\"" + JsonValue.shown(extra.step())
                                + "\" cannot be kept inside a quantity. Put it beside the quantity.");
            }
        }
    }

    private Collection<String> known() {
        return new LinkedHashSet<>(Arrays.asList(asked).subList(0, askedSoFar));
    }

    private void unknown(JsonValue member) {
        Collection<String> known = known();
        String nearest = source.nearestMember(member.step(), known);
        // A member that is only misspelt is not missing too.
        missing.stream()
                .filter(one -> one.names().contains(nearest))
                .forEach(one -> source.session().withdraw(one.fault()));
        String advice = nearest.isEmpty()
                ? " Known here: " + String.join(", ", known) + "."
                : " Did you mean \"" + nearest + "\"?";
        source.faultAtName(
                member,
                FaultCodes.UNKNOWN,
                known,
                nearest,
                "\"" + JsonValue.shown(member.step()) + "\" is not known here." + advice
                        + " A note of your own begins with x-.");
    }

    /**
     * Reports a fault at the object.
     *
     * @param code a stable dotted name
     * @param text the sentence for a person
     */
    public void refuse(String code, String text) {
        if (readable) {
            source.fault(place, code, "", List.of(), "", text);
        }
    }

    /**
     * Returns the names of the members, in the order written; those of others are not among them.
     *
     * @return an unmodifiable collection
     */
    public Collection<String> names() {
        return readable ? place.members().stream().map(JsonValue::step).toList() : List.of();
    }

    @Override
    public String toString() {
        return "object at " + (place.pointer().isEmpty() ? "the top" : place.pointer());
    }
}
