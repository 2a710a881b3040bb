package org.papermath.plan;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import javax.measure.quantity.Mass;
import org.papermath.engine.Account;
import org.papermath.engine.Book;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kinds;

/** An account as it was drawn up. */
record PlannedBalance(String substance, Map<String, Amount<Mass>> in, Map<String, Amount<Mass>> out)
        implements Balance {
    static Balance of(String substance, Book book) {
        return new PlannedBalance(substance, amounts(book.in()), amounts(book.out()));
    }

    private static Map<String, Amount<Mass>> amounts(Map<Account, Double> masses) {
        Map<String, Amount<Mass>> map = new LinkedHashMap<>();
        masses.forEach((account, mass) -> map.put(account.words(), Estimates.signed(Kinds.MASS, mass, "g")));
        return Collections.unmodifiableMap(map);
    }

    @Override
    public Amount<Mass> totalIn() {
        return sum(in);
    }

    @Override
    public Amount<Mass> totalOut() {
        return sum(out);
    }

    private static Amount<Mass> sum(Map<String, Amount<Mass>> accounts) {
        return Estimates.signed(
                Kinds.MASS, accounts.values().stream().mapToDouble(Amount::si).sum(), "g");
    }

    @Override
    public String toString() {
        return substance + ": in " + totalIn() + "; out " + out;
    }
}
