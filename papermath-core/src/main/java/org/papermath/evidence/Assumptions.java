package org.papermath.evidence;

import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Consumer;
import java.util.function.Predicate;
import java.util.stream.Stream;
import javax.measure.Quantity;
import org.jspecify.annotations.Nullable;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kind;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Units;

/**
 * The one store of the numbers the library relies on, found by id and scope from the narrowest outwards. Immutable.
 *
 * <pre>{@code
 * Assumptions known = Assumptions.standard();
 * known.amount("vat.retention", Fibres.ABACA.scope(), Kinds.SHARE); // 0.97
 * Assumptions own = known.given("vat.retention", Fibres.ABACA.scope().on("tub"), 0.95);
 * own.amount("vat.retention", Fibres.ABACA.scope().on("tub"), Kinds.SHARE); // 0.95
 * }</pre>
 *
 * <p>{@link #standard()} is the table shipped with the library. Its {@linkplain #edition() edition} is named by
 * documents, so that a plan can be worked again with the same table years later.
 */
public final class Assumptions {
    /** How the ids begin of what assumptions differ by from one making to the next. */
    static final String MAKING = "making.";

    private final AssumptionsTable table;
    /** The rows laid over the table, by id. */
    private final SharedMap<OfId> over;
    /** How many rows there are: the place of the next one. */
    private final int size;

    /** Whether rows laid over the table say what an assumption differs by from making to making. */
    private final boolean ownMakings;

    /** Hears what is looked up; null where nobody asks. */
    private final @Nullable Consumer<Assumption> heard;

    private final Lists lists = new Lists();

    /** Loads the table on first use only. */
    private static final class Standard {
        static final Assumptions TABLE = Editions.SHIPPED.newest();
    }

    /** The rows of an id that are laid over the table, by the text of their scope; that of the first one is kept. */
    private record OfId(String first, SharedMap<PlacedRow> rows) {}

    /** What is worked out when it is first asked for. Two threads may both do so; it comes out the same. */
    private static final class Lists {
        private volatile @Nullable List<Assumption> all;
        private volatile @Nullable List<Assumption> own;
    }

    private Assumptions(
            AssumptionsTable table,
            SharedMap<OfId> over,
            boolean ownMakings,
            int size,
            @Nullable Consumer<Assumption> heard) {
        this.table = table;
        this.ownMakings = ownMakings;
        this.over = over;
        this.size = size;
        this.heard = heard;
    }

    /** Returns the store of a table. */
    static Assumptions of(AssumptionsTable table) {
        return new Assumptions(table, SharedMap.empty(), false, table.rows().size(), null);
    }

    /** Returns a store that holds nothing yet. */
    static Assumptions empty() {
        return of(new AssumptionsTable("none", List.of()));
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
        Objects.requireNonNull(edition, "edition");
        return Editions.SHIPPED.get(edition);
    }

    /**
     * Returns the editions of the table this version of the library holds, the newest first.
     *
     * @return an unmodifiable list of names
     */
    public static List<String> editions() {
        return Editions.SHIPPED.names();
    }

    /**
     * Returns the name of the edition the table started from.
     *
     * @return for example {@code 2026-11}
     */
    public String edition() {
        return table.edition();
    }

    /**
     * Returns every assumption, in the order of the table, then in the order of addition.
     *
     * @return an unmodifiable collection
     */
    public Collection<Assumption> all() {
        List<Assumption> all = lists.all;
        if (all == null) {
            Assumption[] rows = table.rows().toArray(new Assumption[size]);
            over.forEach(ofId -> ofId.rows().forEach(placed -> rows[placed.place()] = placed.row()));
            all = List.of(rows);
            lists.all = all;
        }
        return all;
    }

    /**
     * Looks an assumption up, from the narrowest scope outwards. The answer's own scope says which scope spoke.
     *
     * @param id the dotted name
     * @param scope what it is wanted for
     * @return the assumption, or empty if no scope has one
     */
    public Optional<Assumption> find(String id, Scope scope) {
        Map<String, PlacedRow> shipped = table.ofId(id);
        OfId own = over.get(id);
        if (own == null && shipped.isEmpty()) {
            return Optional.empty();
        }
        List<String> outwards = scope.outwards();
        for (int i = 0; i < outwards.size(); i++) {
            PlacedRow found = at(outwards.get(i), own, shipped);
            if (found != null) {
                if (heard != null) {
                    heard.accept(found.row());
                }
                return Optional.of(found.row());
            }
        }
        return Optional.empty();
    }

    /**
     * Returns the same store, which tells every assumption that is looked up in it, or in a store made from it.
     *
     * @param listener who is told
     * @return the new store
     */
    public Assumptions heardBy(Consumer<Assumption> listener) {
        Objects.requireNonNull(listener, "listener");
        return new Assumptions(table, over, ownMakings, size, listener);
    }

    private static @Nullable PlacedRow at(String scope, @Nullable OfId own, Map<String, PlacedRow> shipped) {
        PlacedRow found = own == null ? null : own.rows().get(scope);
        return found == null ? shipped.get(scope) : found;
    }

    private @Nullable PlacedRow at(Assumption row) {
        return at(row.scope().own(), over.get(row.id()), table.ofId(row.id()));
    }

    /**
     * Returns the first row of an id, whatever it holds for. It gives the meaning, the unit, the bounds and the shape,
     * which all rows of an id have in common; its value may be of no use elsewhere.
     *
     * @param id the dotted name
     * @return the first row in the order of {@link #all()}, or empty if the store has none of that id
     */
    public Optional<Assumption> pattern(String id) {
        Map<String, PlacedRow> shipped = table.ofId(id);
        OfId own = over.get(id);
        if (shipped.isEmpty()) {
            return Optional.ofNullable(own)
                    .map(rows -> at(rows.first(), rows, shipped))
                    .map(PlacedRow::row);
        }
        return Optional.ofNullable(at(shipped.keySet().iterator().next(), own, shipped))
                .map(PlacedRow::row);
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
        return find(id, scope)
                .orElseThrow(() -> Refused.of(
                        "assumption.missing",
                        id + scope + ": there is no default for this; it has to be measured. Add a value of your own"
                                + " for this scope.",
                        "id",
                        id,
                        "scope",
                        scope.toString()));
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
        String id = assumption.id();
        String scope = assumption.scope().own();
        OfId own = over.get(id);
        PlacedRow old = at(scope, own, table.ofId(id));
        PlacedRow placed = new PlacedRow(assumption, old == null ? size : old.place());
        OfId more = own == null
                ? new OfId(scope, SharedMap.<PlacedRow>empty().with(scope, placed))
                : new OfId(own.first(), own.rows().with(scope, placed));
        return new Assumptions(
                table, over.with(id, more), ownMakings || id.startsWith(MAKING), old == null ? size + 1 : size, heard);
    }

    /**
     * Returns a store that also holds assumptions, as if they were added one after the other.
     *
     * @param assumptions the assumptions to add, in this order
     * @return the new store
     */
    public Assumptions withAll(Iterable<Assumption> assumptions) {
        Assumptions store = this;
        for (Assumption one : assumptions) {
            store = store.with(one);
        }
        return store;
    }

    /**
     * Returns what this store holds beyond, or instead of, another. That costs time for what differs, not for all that
     * is held, where one of the two was made from the other.
     *
     * @param other the other store
     * @return an unmodifiable list of the rows the other does not hold or holds otherwise, in the order of
     *     {@link #all()}
     */
    public List<Assumption> beyond(Assumptions other) {
        if (table != other.table) {
            return all().stream().filter(row -> !other.holds(row)).toList();
        }
        SortedMap<Integer, Assumption> found = new TreeMap<>();
        SharedMap.differing(
                over,
                other.over,
                (mine, others) -> SharedMap.differing(rows(mine), rows(others), (row, there) -> {
                    PlacedRow here = row != null || there == null ? row : at(there.row());
                    if (here != null && !other.holds(here.row())) {
                        found.put(here.place(), here.row());
                    }
                }));
        return List.copyOf(found.values());
    }

    private static SharedMap<PlacedRow> rows(@Nullable OfId ofId) {
        return ofId == null ? SharedMap.empty() : ofId.rows();
    }

    private boolean holds(Assumption row) {
        PlacedRow there = at(row);
        return there != null && there.row().equals(row);
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
    public Assumptions given(
            String id, Scope scope, double value, double low, double high, Basis basis, Source source) {
        return with(pattern(id, scope).with(scope, value, low, high, basis, source));
    }

    /**
     * Returns a store in which a value that was measured here stands for a scope, in coherent SI.
     *
     * @param id the dotted name of an assumption the store knows, or of one of {@link DirectMeasurements}
     * @param scope what the value holds for
     * @param value the likely value
     * @param low its 5 % point
     * @param high its 95 % point
     * @return the new store
     * @throws Refused if the id is not known, or the numbers are out of order or out of bounds
     */
    public Assumptions measured(String id, Scope scope, double value, double low, double high) {
        double unit = Units.toSi(1, unitOf(id));
        return given(
                id, scope, value / unit, low / unit, high / unit, Basis.MEASURED_HERE, new Source("measured here"));
    }

    /**
     * Returns a store in which a share that was measured here stands for a scope, with its band by difference, kept
     * off 0 and 1.
     *
     * @param id the dotted name of an assumption the store knows, or of one of {@link DirectMeasurements}
     * @param scope what the value holds for
     * @param share the share found, a fraction
     * @param half from the share to its 5 % and its 95 % point
     * @return the new store
     * @throws Refused if the id is not known, or the numbers are out of bounds
     */
    public Assumptions measuredShare(String id, Scope scope, double share, double half) {
        double likely = Math.min(1 - 1e-4, Math.max(1e-4, share));
        return measured(
                id,
                scope,
                likely,
                Math.max(likely / 10, likely - half),
                Math.min(1 - (1 - likely) / 10, likely + half));
    }

    /**
     * Returns a store in which a value above zero that was measured here stands for a scope, with its band as a factor.
     *
     * @param id the dotted name of an assumption the store knows, or of one of {@link DirectMeasurements}
     * @param scope what the value holds for
     * @param value the value found, in coherent SI
     * @param half what the 95 % point is above the value, as a part of it
     * @return the new store
     * @throws Refused if the id is not known, or the numbers are out of bounds
     */
    public Assumptions measuredFactor(String id, Scope scope, double value, double half) {
        return measured(id, scope, value, value / (1 + half), value * (1 + half));
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
        return Stream.concat(all().stream(), DirectMeasurements.all().stream())
                .map(Assumption::id)
                .distinct()
                .toList();
    }

    /**
     * Returns an assumption with its band over makings: what is not known of it, and what it differs by from one making
     * to the next ({@code making.} and its id, at its scope), added as squares on the scale of its distribution. An
     * assumption that is no property of nature or the studio, one that is simply given, and one of which no difference
     * between makings is known come back as they are.
     *
     * @param row an assumption of this store
     * @return the assumption, its likely value the same
     */
    public Assumption overMakings(Assumption row) {
        Assumption shipped = ownMakings || heard != null ? null : table.overMakings(row);
        return shipped == null ? row.widened(makingHalf(row)) : shipped;
    }

    /**
     * Finds what a measured value goes with.
     *
     * @param lean what it says of that
     * @return the other assumption; empty where this store does not hold it for that very scope
     */
    public Optional<Assumption> leanedOn(Assumption.Lean lean) {
        Objects.requireNonNull(lean, "lean");
        return find(lean.id(), lean.scope()).filter(other -> other.scope().equals(lean.scope()));
    }

    /**
     * Returns an assumption with the band it has by itself: its own, and what comes from the values it goes with, which is
     * wider where those are not varied beside it.
     *
     * @param row an assumption of this store
     * @param beside which of those it goes with are varied beside it, with what goes with them
     * @return the assumption, its band wider by the rest
     */
    public Assumption byItself(Assumption row, Predicate<Assumption> beside) {
        Objects.requireNonNull(beside, "beside");
        double square = 0;
        for (Assumption.Lean lean : row.leans()) {
            Optional<Assumption> other = leanedOn(lean).filter(beside.negate());
            if (other.isPresent()) {
                Assumption on = other.get();
                double middle = on.shape().scaled(on.likely());
                double half = (lean.by(on.shape().scaled(on.high()) - middle)
                                - lean.by(on.shape().scaled(on.low()) - middle))
                        / 2;
                square += half * half;
            }
        }
        return row.widened(Math.sqrt(square));
    }

    /**
     * Returns how far nine makings in ten of an assumption lie at most from the mean of the studio, on the scale of its
     * distribution.
     *
     * @param row an assumption of this store
     * @return half of that band; 0 where nothing is known of it, for an assumption that is no property of nature or the
     *     studio, and for one that is simply given
     */
    public double makingHalf(Assumption row) {
        Objects.requireNonNull(row, "row");
        return row.role() != Role.PHYSICAL || (row.basis() == Basis.GIVEN && row.low() == row.high())
                ? 0
                : makingOf(row).map(Assumption::likely).orElse(0.0);
    }

    /**
     * Finds how far an assumption differs from one making to the next: nine makings in ten lie so far at most from the mean
     * of the studio, on the scale of the distribution of the assumption.
     *
     * @param row an assumption of this store
     * @return the assumption with the id {@code making.} and its id; empty where nothing is known of it
     */
    public Optional<Assumption> makingOf(Assumption row) {
        Objects.requireNonNull(row, "row");
        return find(MAKING + row.id(), row.scope());
    }

    /**
     * Returns the key under which a store keeps what an assumption differs by from one making to the next, where it was
     * measured.
     *
     * @param row the assumption
     * @return the key
     */
    public static String makingKey(Assumption row) {
        Objects.requireNonNull(row, "row");
        return MAKING + row.key();
    }

    private Assumption pattern(String id, Scope scope) {
        return find(id, scope)
                .or(() -> pattern(id))
                .or(() -> DirectMeasurements.find(id))
                .orElseThrow(() -> Refused.of(
                        "assumption.unknown",
                        "assumption: \"" + id
                                + "\" is not an id of the table. Look at Assumptions.standard().ids() for the ids.",
                        "id",
                        id));
    }

    /**
     * Returns what this store holds beyond, or instead of, the table shipped with the library.
     *
     * @return an unmodifiable list: first what replaces rows of the table, in its order, then the rest in order of
     *     addition
     */
    public List<Assumption> own() {
        List<Assumption> own = lists.own;
        if (own == null) {
            own = beyond(of(table));
            lists.own = own;
        }
        return own;
    }

    @Override
    public String toString() {
        int own = own().size();
        return "assumptions of edition " + edition() + ", " + size + " values"
                + (own == 0 ? "" : ", " + own + " of your own");
    }
}
