package org.papermath.schedule;

import org.papermath.quantity.Name;
import org.papermath.quantity.Refused;

/** Names of what is scheduled. */
final class Names {
    private Names() {}

    static String check(String name, String what) {
        String called = Name.check(name, what);
        if (called.isEmpty()) {
            throw Refused.of(
                    "name.empty", what + ": the name is empty; the timetable refers to it by name.", "of", what);
        }
        return called;
    }
}
