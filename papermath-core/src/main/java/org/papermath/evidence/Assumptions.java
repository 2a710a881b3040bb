package org.papermath.evidence;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

import javax.measure.Quantity;

import org.jspecify.annotations.Nullable;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kind;
import org.papermath.quantity.Refused;

/**
 * The one store of the numbers the library relies on, found by id and scope from the narrowest outwards. Immutable.
 *
 * <p>{@link #standard()} is the table shipped with the library. Its {@linkplain #edition() edition} is named by
 * documents, so that a plan can be worked again with the same table years later.
 */
public final class Assumptions {
    private static final String EDITION = "2026-11";

    private final String edition;
    private final Map<String, Assumption> table;
    private final Map<String, Assumption> byKey;
    private final List<Assumption> own;
    /**
     * By id, then by the text of the scope: a look-up asks several scopes and should not glue texts together for each.
     */
    private final Map<String, Map<String, Assumption>> byId;

    /** Loads the table on first use only. */
    private static final class Standard {
        static final Assumptions TABLE = load(EDITION);
    }

    private Assumptions(String edition, Map<String, Assumption> table, Map<String, Assumption> byKey) {
        this.edition = edition;
        this.table = table;
        this.byKey = byKey;
        this.own = byKey == table ? List.of() : beyond(table, byKey);
        this.byId = new HashMap<>();
        for (Assumption assumption : byKey.values()) {
            byId.computeIfAbsent(assumption.id(), id -> new HashMap<>()).put(assumption.scope().own(), assumption);
        }
    }

    /** Returns a store that holds nothing yet. */
    static Assumptions empty() {
        return new Assumptions("none", Map.of(), Map.of());
    }

    /**
     * Returns the table shipped with the library, in its newest edition.
     *
     * @return the assumptions
     */
    public static Assumptions standard() {
        return Standard.TABLE;
    }

    /**
     * Returns the table shipped with the library, in a named edition.
     *
     * @param edition the name of an edition, for example {@code 2026-11}
     * @return the assumptions
     * @throws Refused if the library does not hold that edition
     */
    public static Assumptions edition(String edition) {
        if (!editions().contains(edition)) {
            throw Refused.of("assumptions.edition",
                    "assumptions: edition \"" + edition + "\" is not in this version of the library, which holds: "
                            + String.join(", ", editions()) + ". Use one of these, or a newer version of the library.",
                    "given", edition, "accepted", editions());
        }
        return standard();
    }

    /**
     * Returns the editions of the table this version of the library holds, the newest first.
     *
     * @return an unmodifiable list of names
     */
    public static List<String> editions() {
        return List.of(EDITION);
    }

    /**
     * Returns the name of the edition the table started from.
     *
     * @return for example {@code 2026-11}
     */
    public String edition() {
        return edition;
    }

    /**
     * Returns every assumption, in the order of the table, then in the order of addition.
     *
     * @return an unmodifiable collection
     */
    public Collection<Assumption> all() {
        return byKey.values();
    }

    /**
     * Looks an assumption up, from the narrowest scope outwards. The answer's own scope says which scope spoke.
     *
     * @param id the dotted name
     * @param scope what it is wanted for
     * @return the assumption, or empty if no scope has one
     */
    public Optional<Assumption> find(String id, Scope scope) {
        Map<String, Assumption> scopes = byId.get(id);
        if (scopes == null) {
            return Optional.empty();
        }
        for (String text : scope.outwards()) {
            Assumption found = scopes.get(text);
            if (found != null) {
                return Optional.of(found);
            }
        }
        return Optional.empty();
    }

    /**
     * Looks an assumption up, from the narrowest scope outwards, and insists on it.
     *
     * @param id the dotted name
     * @param scope what it is wanted for
     * @return the assumption
     * @throws Refused if no scope has one: there is no default, it has to be measured
     */
    public Assumption get(String id, Scope scope) {
        return find(id, scope).orElseThrow(() -> Refused.of("assumption.missing",
                id + scope + ": there is no default for this; it has to be measured. Add a value of your own"
                        + " for this scope.",
                "id", id, "scope", scope.toString()));
    }

    /**
     * Looks the likely value up, in coherent SI.
     *
     * @param id the dotted name
     * @param scope what it is wanted for
     * @return the likely value in coherent SI
     * @throws Refused as {@link #get}
     */
    public double si(String id, Scope scope) {
        return get(id, scope).likelySi();
    }

    /**
     * Looks the likely value up, as an amount of a kind.
     *
     * @param <Q> the quantity type
     * @param id the dotted name
     * @param scope what it is wanted for
     * @param kind the kind
     * @return the likely value
     * @throws Refused as {@link #get}, or if the value is not one of that kind
     */
    public <Q extends Quantity<Q>> Amount<Q> amount(String id, Scope scope, Kind<Q> kind) {
        Assumption found = get(id, scope);
        return kind.of(found.likely(), found.unit());
    }

    /**
     * Returns a store that also holds an assumption; it takes the place of one with the same id and scope.
     *
     * @param assumption the assumption to add
     * @return the new store
     */
    public Assumptions with(Assumption assumption) {
        Map<String, Assumption> map = new LinkedHashMap<>(byKey);
        map.put(key(assumption.id(), assumption.scope().own()), assumption);
        return new Assumptions(edition, table, Collections.unmodifiableMap(map));
    }

    /**
     * Returns a store in which a value is simply given for a scope, without a band.
     *
     * @param id the dotted name of an assumption the store knows, or of one of {@link DirectMeasurements}
     * @param scope what the value holds for
     * @param value the value, in the unit of that assumption
     * @return the new store
     * @throws Refused if the id is not known, or the value is out of its bounds
     */
    public Assumptions given(String id, Scope scope, double value) {
        return with(pattern(id, scope).given(scope, value));
    }

    /**
     * Returns a store in which a value with a band stands for a scope.
     *
     * @param id the dotted name of an assumption the store knows, or of one of {@link DirectMeasurements}
     * @param scope what the value holds for
     * @param value the likely value, in the unit of that assumption
     * @param low its 5 % point
     * @param high its 95 % point
     * @param basis how it is known
     * @param source where it comes from
     * @return the new store
     * @throws Refused if the id is not known, or the numbers are out of order or out of bounds
     */
    public Assumptions given(String id, Scope scope, double value, double low, double high, Basis basis,
            Source source) {
        return with(pattern(id, scope).with(scope, value, low, high, basis, source));
    }

    /**
     * Returns the unit in which the values of an id are given, the same for every scope.
     *
     * @param id the dotted name of an assumption the store knows, or of one of {@link DirectMeasurements}
     * @return a code of the table of units
     * @throws Refused if the id is not known
     */
    public String unitOf(String id) {
        return pattern(id, Scope.GENERAL).unit();
    }

    /**
     * Returns the ids for which values can be given: those of the store and those of {@link DirectMeasurements}.
     *
     * @return an unmodifiable list without repetition
     */
    public List<String> ids() {
        return Stream.concat(all().stream(), DirectMeasurements.all().stream()).map(Assumption::id).distinct().toList();
    }

    private Assumption pattern(String id, Scope scope) {
        return find(id, scope).or(() -> all().stream().filter(a -> a.id().equals(id)).findFirst())
                .or(() -> DirectMeasurements.find(id))
                .orElseThrow(() -> Refused.of("assumption.unknown",
                        "assumption: \"" + id
                                + "\" is not an id of the table. Look at Assumptions.standard().ids() for the ids.",
                        "id", id));
    }

    private static String key(String id, String scope) {
        return scope.isEmpty() ? id : id + "[" + scope + "]";
    }

    /**
     * Returns what this store holds beyond, or instead of, the table shipped with the library.
     *
     * @return an unmodifiable list: first what replaces rows of the table, in its order, then the rest in order of
     *     addition
     */
    public List<Assumption> own() {
        return own;
    }

    private static List<Assumption> beyond(Map<String, Assumption> table, Map<String, Assumption> byKey) {
        List<Assumption> own = new ArrayList<>();
        byKey.forEach((key, row) -> {
            Assumption shipped = table.get(key);
            if (row != shipped && !row.equals(shipped)) {
                own.add(row);
            }
        });
        return List.copyOf(own);
    }

    private static Assumptions load(String edition) {
        Map<String, Assumption> map = new LinkedHashMap<>();
        String name = "assumptions-" + edition + ".csv";
        try (InputStream stream = Assumptions.class.getResourceAsStream(name)) {
            if (stream == null) {
                throw new IllegalStateException("the library is incomplete: " + name + " is missing");
            }
            BufferedReader reader = new BufferedReader(new InputStreamReader(stream, StandardCharsets.UTF_8));
            boolean header = true;
            for (String line = reader.readLine(); line != null; line = reader.readLine()) {
                if (line.isBlank() || line.startsWith("#")) {
                    continue;
                }
                if (header) {
                    header = false;
                    continue;
                }
                Assumption row = row(cells(line), name, line);
                if (map.put(key(row.id(), row.scope().own()), row) != null) {
                    throw new IllegalStateException(name + ": " + row.key() + " stands twice");
                }
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        Map<String, Assumption> table = Collections.unmodifiableMap(map);
        return new Assumptions(edition, table, table);
    }

    private static Assumption row(List<String> cell, String name, String line) {
        if (cell.size() != 13) {
            throw new IllegalStateException(name + ": a row of " + cell.size() + " cells: " + line);
        }
        return new Assumption(cell.get(0), Scope.parse(cell.get(1)), cell.get(2), Double.parseDouble(cell.get(3)),
                Double.parseDouble(cell.get(4)), Double.parseDouble(cell.get(5)),
                Shape.valueOf(constant(cell.get(6))),
                bound(cell.get(7), Double.NEGATIVE_INFINITY), bound(cell.get(8), Double.POSITIVE_INFINITY), cell.get(9),
                Role.valueOf(constant(cell.get(10))), Basis.valueOf(constant(cell.get(11))), new Source(cell.get(12)));
    }

    private static String constant(String word) {
        return word.toUpperCase(Locale.ROOT).replace('-', '_').replace(' ', '_');
    }

    private static double bound(@Nullable String text, double none) {
        return text == null || text.isEmpty() ? none : Double.parseDouble(text);
    }

    /** Splits a row of the library's own table; a cell with a comma stands in quotation marks. */
    private static List<String> cells(String line) {
        List<String> cells = new ArrayList<>();
        StringBuilder cell = new StringBuilder();
        boolean quoted = false;
        for (int i = 0; i < line.length(); i++) {
            char c = line.charAt(i);
            if (c == '"') {
                quoted = !quoted;
            } else if (c == ',' && !quoted) {
                cells.add(cell.toString());
                cell.setLength(0);
            } else {
                cell.append(c);
            }
        }
        cells.add(cell.toString());
        return cells;
    }

    @Override
    public String toString() {
        int own = own().size();
        return "assumptions of edition " + edition + ", " + byKey.size() + " values"
                + (own == 0 ? "" : ", " + own + " of your own");
    }
}
