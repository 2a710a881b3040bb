package org.papermath.evidence;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** A table as it is shipped, which stores of it share and lay their own rows over. Immutable. */
final class AssumptionsTable {
    private final String edition;
    private final List<Assumption> rows;
    /** By id, then by the text of the scope, so that a look-up need not glue the two together. */
    private final Map<String, Map<String, PlacedRow>> byId;

    AssumptionsTable(String edition, List<Assumption> rows) {
        this.edition = edition;
        this.rows = List.copyOf(rows);
        this.byId = new HashMap<>();
        for (int i = 0; i < rows.size(); i++) {
            Assumption row = rows.get(i);
            if (byId.computeIfAbsent(row.id(), id -> new LinkedHashMap<>())
                            .put(row.scope().own(), new PlacedRow(row, i))
                    != null) {
                throw new IllegalStateException("edition " + edition + ": " + row.key() + " stands twice");
            }
        }
        // Most ids have one row; a map of one is asked for several scopes without a hash of any.
        byId.replaceAll((id, places) -> places.size() == 1 ? Map.copyOf(places) : places);
    }

    /** Reads the text of a table. */
    static AssumptionsTable read(String edition, InputStream text) {
        List<Assumption> rows = new ArrayList<>();
        try (BufferedReader reader = new BufferedReader(new InputStreamReader(text, StandardCharsets.UTF_8))) {
            boolean header = true;
            for (String line = reader.readLine(); line != null; line = reader.readLine()) {
                if (line.isBlank() || line.startsWith("#")) {
                    continue;
                }
                if (!header) {
                    rows.add(row(cells(line), edition, line));
                }
                header = false;
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return new AssumptionsTable(edition, rows);
    }

    String edition() {
        return edition;
    }

    List<Assumption> rows() {
        return rows;
    }

    /** Returns the rows of an id by the text of their scope, in the order of the table. */
    Map<String, PlacedRow> ofId(String id) {
        return byId.getOrDefault(id, Map.of());
    }

    /** The bands of all rows over makings, as a store has them that lays no scatter of makings over this table. */
    private volatile @Nullable IdentityHashMap<Assumption, Assumption> overMakings;

    /** Returns a row of this table with its band over makings; nothing for a row of another. */
    @Nullable
    Assumption overMakings(Assumption row) {
        IdentityHashMap<Assumption, Assumption> all = overMakings;
        if (all == null) {
            // Two threads may both work it out; it comes out the same.
            Assumptions bare = Assumptions.of(this);
            all = new IdentityHashMap<>();
            for (Assumption one : rows) {
                all.put(one, one.widened(bare.makingHalf(one)));
            }
            overMakings = all;
        }
        return all.get(row);
    }

    private static Assumption row(List<String> cell, String edition, String line) {
        if (cell.size() != 13) {
            throw new IllegalStateException("edition " + edition + ": a row of " + cell.size() + " cells: " + line);
        }
        return new Assumption(
                // Who looks it up names it by a literal, which then is the same object.
                cell.get(0).intern(),
                Scope.parse(cell.get(1)),
                cell.get(2),
                Double.parseDouble(cell.get(3)),
                Double.parseDouble(cell.get(4)),
                Double.parseDouble(cell.get(5)),
                Shape.valueOf(constant(cell.get(6))),
                bound(cell.get(7), Double.NEGATIVE_INFINITY),
                bound(cell.get(8), Double.POSITIVE_INFINITY),
                cell.get(9),
                Role.valueOf(constant(cell.get(10))),
                Basis.valueOf(constant(cell.get(11))),
                new Source(cell.get(12)));
    }

    private static String constant(String word) {
        return word.toUpperCase(Locale.ROOT).replace('-', '_').replace(' ', '_');
    }

    private static double bound(@Nullable String text, double none) {
        return text == null || text.isEmpty() ? none : Double.parseDouble(text);
    }

    /** Splits a row of a table of the library; a cell with a comma stands in quotation marks. */
    static List<String> cells(String line) {
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
}
