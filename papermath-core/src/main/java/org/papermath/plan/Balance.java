package org.papermath.plan;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;

import javax.measure.quantity.Mass;

import org.papermath.engine.Account;
import org.papermath.engine.Book;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kinds;

/**
 * The accounts of one substance of a batch: all that comes in goes out to a named account. Immutable.
 *
 * @param substance what is counted, for example {@code fibre} or the name of an additive
 * @param in what comes in, by account
 * @param out what goes out, by account; {@code stock put by} is below zero where the stock would run short
 */
public record Balance(String substance, Map<String, Amount<Mass>> in, Map<String, Amount<Mass>> out) {
    static Balance of(String substance, Book book) {
        return new Balance(substance, amounts(book.in()), amounts(book.out()));
    }

    private static Map<String, Amount<Mass>> amounts(Map<Account, Double> masses) {
        Map<String, Amount<Mass>> map = new LinkedHashMap<>();
        masses.forEach((account, mass) -> map.put(account.words(), Estimates.signed(Kinds.MASS, mass, "g")));
        return Collections.unmodifiableMap(map);
    }

    /**
     * Returns all that came in.
     *
     * @return the sum
     */
    public Amount<Mass> totalIn() {
        return sum(in);
    }

    /**
     * Returns all that went out.
     *
     * @return the sum; equal to {@link #totalIn} but for rounding
     */
    public Amount<Mass> totalOut() {
        return sum(out);
    }

    private static Amount<Mass> sum(Map<String, Amount<Mass>> accounts) {
        return Estimates.signed(Kinds.MASS, accounts.values().stream().mapToDouble(Amount::si).sum(), "g");
    }

    @Override
    public String toString() {
        return substance + ": in " + totalIn() + "; out " + out;
    }
}
