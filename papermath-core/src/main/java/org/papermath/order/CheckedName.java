package org.papermath.order;

import org.papermath.evidence.Scope;
import org.papermath.quantity.Name;
import org.papermath.quantity.Refused;

/** Checks the names the builders of this package are given. */
final class CheckedName {
    private CheckedName() {}

    static String require(String what, String name) {
        return require(what, "", name);
    }

    /** Checks a name that belongs to a thing of another name; the two are put together only for a refusal. */
    static String require(String what, String whose, String name) {
        String called = Name.check(name, what + whose);
        if (called.isEmpty()) {
            throw Refused.of(
                    "name.empty",
                    what + whose + ": the name is empty; the plan refers to it by name.",
                    "of",
                    what + whose);
        }
        if (Scope.hasSign(called)) {
            throw Refused.of(
                    "name.sign",
                    what + whose + ": \"" + Name.shown(called)
                            + "\" has one of [ ] @, which stand for scopes. Use another name.",
                    "of",
                    what + whose,
                    "given",
                    called);
        }
        return called;
    }
}
