package org.papermath.order;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Function;
import org.papermath.quantity.Refused;

/** What a builder was given itself, apart from what it began with: given twice is refused, begun with is replaced. */
final class SetOnce {
    private final String of;
    private final Set<String> given = new HashSet<>();

    SetOnce(String of) {
        this.of = of;
    }

    void once(String what) {
        if (!given.add(what)) {
            throw Refused.of("builder.twice", of + ": " + what + " is set twice. Set it once.", "of", of, "what", what);
        }
    }

    boolean isSet(String what) {
        return given.contains(what);
    }

    /** Puts a thing in the place of the one of its name that the builder began with, else at the end. */
    <T> void once(String what, List<T> list, T thing, Function<T, String> name) {
        once(what);
        for (int i = 0; i < list.size(); i++) {
            if (name.apply(list.get(i)).equals(name.apply(thing))) {
                list.set(i, thing);
                return;
            }
        }
        list.add(thing);
    }
}
