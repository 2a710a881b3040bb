package org.papermath.plan;

import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import org.papermath.evidence.Assumption;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Scope;

/** What a studio knows, and which of it the reading of a plan has asked for beside the engine. */
final class Asked {
    private final Assumptions store;
    private final Set<Assumption> rows = ConcurrentHashMap.newKeySet();

    Asked(Assumptions store) {
        this.store = store;
    }

    Optional<Assumption> find(String id, Scope scope) {
        Optional<Assumption> found = store.find(id, scope);
        found.ifPresent(rows::add);
        return found;
    }

    Assumption get(String id, Scope scope) {
        Assumption found = store.get(id, scope);
        rows.add(found);
        return found;
    }

    double si(String id, Scope scope) {
        return get(id, scope).likelySi();
    }

    boolean has(Assumption row) {
        return rows.contains(row);
    }
}
