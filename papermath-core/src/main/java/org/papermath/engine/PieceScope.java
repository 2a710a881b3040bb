package org.papermath.engine;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.papermath.evidence.Scope;

/** Where the values of a piece are looked up: under its own names first, then under what sort of thing it is. */
final class PieceScope {
    /** The sorts the table knows. A piece that happens to be called so is not one for that. */
    private static final Set<String> SORTS = Set.of("card", "small", "large", "crew", "beginner", "envelope");

    private PieceScope() {}

    /**
     * The scope of a piece.
     *
     * @param sort what sort of thing it is in the table
     * @param names its own names, the nearest first
     */
    static Scope of(String sort, String... names) {
        List<String> all = new ArrayList<>();
        for (String name : names) {
            if (!SORTS.contains(name)) {
                all.add(name);
            }
        }
        all.add(sort);
        return Scope.of(all.toArray(String[]::new));
    }
}
