package org.papermath.json.mapping;

import java.util.Collection;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.papermath.json.kit.ReadResult;
import org.papermath.json.tree.JsonValue;
import org.papermath.json.tree.NearestWord;

/** The names given so far in one list: no two may be the same, and others may have to be among them. */
public final class Names {
    private final String what;
    private final String twice;
    private final Map<String, ReadResult<String>> places = new LinkedHashMap<>();
    private final Set<String> names = places.keySet();
    private final Set<String> told = new HashSet<>();
    private boolean complete = true;
    /** The name last found among the others: neighbours often ask for the same. */
    private String found = "";

    /**
     * Begins a list.
     *
     * @param what what is named, for messages, such as {@code piece}
     */
    public Names(String what) {
        this(what, "Set it once, or give one of the two another name.");
    }

    /**
     * Begins a list of things that have their names elsewhere, so that none can be given another one here.
     *
     * @param what what is named, for messages, such as {@code fibre on hand}
     */
    static Names ofOthers(String what) {
        return new Names(what, "Set it once.");
    }

    private Names(String what, String twice) {
        this.what = what;
        this.twice = twice;
    }

    /** Notes that a name could not be read, so that nobody can say what is missing. */
    public void lose() {
        complete = false;
    }

    /** Notes that the whole list may be unreadable: where nothing was taken, nothing is missing. */
    public void loseIfEmpty() {
        complete &= !names.isEmpty();
    }

    /** Takes a name, or refuses one that was taken before. */
    public ReadResult<String> add(ReadResult<String> name) {
        if (name.isFaulty()) {
            complete = false;
            return name;
        }
        if (name.isGiven() && places.putIfAbsent(name.get(), name) != null) {
            // One of the two is called otherwise.
            complete = false;
            return name.refuse(
                    "builder.twice",
                    "the " + what + " \"" + JsonValue.shown(name.get()) + "\" is set twice. " + twice,
                    Set.of());
        }
        return name;
    }

    /** Returns where a name stands, if it is one of these. */
    Optional<ReadResult<String>> place(String name) {
        return Optional.ofNullable(places.get(name));
    }

    /** Returns where the names stand. */
    Collection<ReadResult<String>> places() {
        return places.values();
    }

    /** Refuses a name that is none of these, unless one of these could not be read. */
    public ReadResult<String> require(ReadResult<String> name, String code) {
        if (!complete || name.isFaulty() || !name.isGiven() || name.get().equals(found)) {
            return name;
        }
        if (names.contains(name.get())) {
            found = name.get();
            return name;
        }
        if (!told.add(name.get())) {
            // The same name at another place is the same slip.
            return ReadResult.faulty(name.place());
        }
        String nearest = name.nearest(names);
        return name.refuse(
                code,
                "there is no " + what + " \"" + JsonValue.shown(name.get()) + "\"."
                        + (nearest.isEmpty() ? "" : " Did you mean \"" + nearest + "\"?")
                        + (names.isEmpty() ? " None is named." : " There is: " + NearestWord.listed(names) + "."),
                names);
    }
}
