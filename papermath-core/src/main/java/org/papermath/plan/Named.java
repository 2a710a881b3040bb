package org.papermath.plan;

import org.papermath.quantity.Refused;

/** The two questions every builder of this package asks: is there a name, and was it said before. */
final class Named {
    private Named() {
    }

    static String require(String what, String name) {
        if (name.isBlank()) {
            throw Refused.of("name.empty", what + ": a name is wanted; the plan speaks of it by its name.", "of", what);
        }
        if (name.indexOf('[') >= 0 || name.indexOf(']') >= 0 || name.indexOf('@') >= 0) {
            throw Refused.of("name.sign", what + ": \"" + name
                    + "\" has one of [ ] @, which stand for scopes. Use another name.",
                    "of", what, "given", name);
        }
        return name;
    }

    static void once(boolean saidBefore, String of, String what) {
        if (saidBefore) {
            throw Refused.of("builder.twice", of + ": " + what + " is said twice. Say it once.", "of", of, "what",
                    what);
        }
    }
}
