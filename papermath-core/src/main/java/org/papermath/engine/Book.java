package org.papermath.engine;

import java.util.LinkedHashMap;
import java.util.Map;

/** One substance of one batch: what came in and what went out, by account, in kg. */
public final class Book {
    private final Map<Account, Double> in = new LinkedHashMap<>();
    private final Map<Account, Double> out = new LinkedHashMap<>();

    void in(Account account, double mass) {
        in.merge(account, mass, Double::sum);
    }

    void out(Account account, double mass) {
        out.merge(account, mass, Double::sum);
    }

    /** What came in, in the order it did. */
    public Map<Account, Double> in() {
        return in;
    }

    /** What went out, in the order it did. */
    public Map<Account, Double> out() {
        return out;
    }
}
