package org.papermath.engine;

import java.util.LinkedHashMap;
import java.util.Map;

/** One substance of one batch: what came in and what went out, by account, in kg. */
public final class Book {
    private final Side in = new Side();
    private final Side out = new Side();

    /** One side of the book: accounts in the order they were opened in, and what stands on each. */
    private static final class Side {
        private static final int MOST = Account.values().length;

        private final Account[] accounts = new Account[MOST];
        private final double[] mass = new double[MOST];
        private int opened;

        void add(Account account, double more) {
            int at = 0;
            while (at < opened && accounts[at] != account) {
                at++;
            }
            if (at == opened) {
                accounts[opened++] = account;
                mass[at] = more;
            } else {
                mass[at] += more;
            }
        }

        Map<Account, Double> read() {
            Map<Account, Double> all = new LinkedHashMap<>();
            for (int i = 0; i < opened; i++) {
                all.put(accounts[i], mass[i]);
            }
            return all;
        }
    }

    void in(Account account, double mass) {
        in.add(account, mass);
    }

    void out(Account account, double mass) {
        out.add(account, mass);
    }

    /** What came in, in the order it did. */
    public Map<Account, Double> in() {
        return in.read();
    }

    /** What went out, in the order it did. */
    public Map<Account, Double> out() {
        return out.read();
    }
}
