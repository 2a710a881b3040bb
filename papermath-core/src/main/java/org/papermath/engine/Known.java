package org.papermath.engine;

import java.util.ArrayList;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import org.papermath.evidence.Assumption;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Basis;
import org.papermath.evidence.Role;
import org.papermath.evidence.Scope;

/** What is known for a job: gives every assumption a stage asks for a slot, once. */
public final class Known {
    /** About how many assumptions an order asks for. */
    private static final int USUAL = 150;

    private final Assumptions store;
    private final List<Assumption> rows = new ArrayList<>();
    private final IdentityHashMap<Assumption, Slot> slots = new IdentityHashMap<>(USUAL);
    private final Set<Assumption> fixed = Collections.newSetFromMap(new IdentityHashMap<>());

    Known(Assumptions store) {
        this.store = store;
    }

    /** The store the slots are looked up in. */
    Assumptions store() {
        return store;
    }

    /** The slot of an assumption; refused by the store where there is no default. */
    Slot slot(String id, Scope scope) {
        return slot(store.get(id, scope));
    }

    Slot slot(String id) {
        return slot(id, Scope.GENERAL);
    }

    /** The slot of an assumption there may be no default for. */
    @Nullable
    Slot maybe(String id, Scope scope) {
        Optional<Assumption> found = store.find(id, scope);
        return found.isPresent() ? slot(found.get()) : null;
    }

    /** The slot of a value that was measured or given here; null where only the table has one. */
    @Nullable
    Slot own(String id, Scope scope) {
        Optional<Assumption> found =
                store.find(id, scope).filter(one -> one.basis() == Basis.MEASURED_HERE || one.basis() == Basis.GIVEN);
        return found.isPresent() ? slot(found.get()) : null;
    }

    /** A value that was measured or given here, in coherent SI and without a slot; not a number where there is none. */
    double ownFixed(String id, Scope scope) {
        return store.find(id, scope)
                .filter(one -> one.basis() == Basis.MEASURED_HERE || one.basis() == Basis.GIVEN)
                .map(this::fixed)
                .orElse(Double.NaN);
    }

    /** A default that is taken as it is, in coherent SI: it gets no slot. */
    double fixed(String id, Scope scope) {
        return fixed(store.get(id, scope));
    }

    /** The same for an assumption that was found in the store. */
    double fixed(Assumption found) {
        fixed.add(found);
        return found.likelySi();
    }

    /** The slot of an assumption that was found in the store. */
    Slot slot(Assumption assumption) {
        return slots.computeIfAbsent(assumption, one -> {
            rows.add(one);
            return new Slot(rows.size() - 1);
        });
    }

    /** Whether some stage asked for an assumption, with a slot or as it is. */
    public boolean isAsked(Assumption assumption) {
        return slots.containsKey(assumption) || fixed.contains(assumption);
    }

    /** Every assumption that has a slot, in the order of the slots. */
    public List<Assumption> rows() {
        return List.copyOf(rows);
    }

    /** The likely values. */
    Values likely() {
        return new Values(rows.stream().mapToDouble(Assumption::likelySi).toArray());
    }

    /**
     * One assumption that a band varies.
     *
     * @param row what is known of it
     * @param wide the same with what it differs by from one making to the next
     * @param slot its slot
     * @param fromMakings the share of the squared width of the wide band that is from making to making
     */
    public record Varied(Assumption row, Assumption wide, Slot slot, double fromMakings) {
        static Varied of(Assumption row, Assumption wide, Slot slot) {
            double known = width(wide) > 0 ? width(row) / width(wide) : 1;
            return new Varied(row, wide, slot, Math.max(0, 1 - known * known));
        }

        private static double width(Assumption one) {
            return one.shape().scaled(one.high()) - one.shape().scaled(one.low());
        }
    }

    /** What a band varies, by key, so that sums do not depend on the order of the look-ups. */
    List<Varied> varied() {
        SortedMap<String, Varied> byKey = new TreeMap<>();
        for (Assumption one : rows) {
            if (one.role() == Role.PHYSICAL) {
                Assumption wide = store.overMakings(one);
                if (wide.lowSi() < wide.highSi()) {
                    byKey.put(one.key(), Varied.of(one, wide, slot(one)));
                }
            }
        }
        return List.copyOf(byKey.values());
    }

    /** The greatest value an assumption may have, in coherent SI: its 95 % point. */
    double greatest(Slot slot) {
        return rows.get(slot.at).highSi();
    }
}
