package org.papermath.cost;

import org.papermath.quantity.Name;
import org.papermath.quantity.Refused;

/** Names in prices and offers, none of which is empty. */
final class Named {
    private Named() {}

    /** Checks a name of something; the advice follows where it is empty, and may be empty itself. */
    static String require(String name, String what, String advice) {
        String called = Name.check(name, what);
        if (called.isEmpty()) {
            throw Refused.of(
                    "price.unnamed",
                    what + ": the name is empty." + (advice.isEmpty() ? "" : " " + advice),
                    "of",
                    what);
        }
        return called;
    }
}
