package org.papermath.evidence;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.EdgeCasesMode;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.Tuple;

/** Stores against the plainest thing that keeps the same promises: one map of all rows, copied at every change. */
class AssumptionsPropertyTest {
    private static final List<String> IDS = List.of("beating.rate", "press.factor", "own.first", "own.second");
    private static final List<String> SUBJECTS = List.of("", "abaca", "linter", "nettle");
    private static final List<String> PLACES = List.of("", "big beater", "vat");

    private static final class Plain {
        private final Map<String, Assumption> table;
        private final Map<String, Assumption> rows;

        Plain(Map<String, Assumption> table, Map<String, Assumption> rows) {
            this.table = table;
            this.rows = rows;
        }

        static Plain of(Collection<Assumption> table) {
            Map<String, Assumption> rows = new LinkedHashMap<>();
            table.forEach(row -> rows.put(row.key(), row));
            return new Plain(rows, rows);
        }

        Plain with(Assumption row) {
            Map<String, Assumption> more = new LinkedHashMap<>(rows);
            more.put(row.key(), row);
            return new Plain(table, more);
        }

        Optional<Assumption> find(String id, Scope scope) {
            return scope.outwards().stream()
                    .map(text -> rows.get(text.isEmpty() ? id : id + "[" + text + "]"))
                    .flatMap(Stream::ofNullable)
                    .findFirst();
        }

        List<Assumption> beyond(Map<String, Assumption> other) {
            return rows.values().stream()
                    .filter(row -> !row.equals(other.get(row.key())))
                    .toList();
        }
    }

    private static Assumption row(String id, Scope scope, double value) {
        return new Assumption(
                id,
                scope,
                "an invented number",
                value,
                value,
                value + 1,
                Shape.NORMAL,
                0,
                100,
                "1",
                Role.PHYSICAL,
                Basis.GIVEN,
                new Source("invented"));
    }

    @Provide
    Arbitrary<List<Assumption>> additions() {
        Arbitrary<Scope> scopes = Combinators.combine(Arbitraries.of(SUBJECTS), Arbitraries.of(PLACES))
                .as(AssumptionsPropertyTest::scope);
        Arbitrary<Assumption> rows = Combinators.combine(
                        Arbitraries.of(IDS), scopes, Arbitraries.integers().between(0, 3))
                .as(AssumptionsPropertyTest::row);
        Arbitrary<Assumption> shipped =
                Arbitraries.of(List.copyOf(Assumptions.standard().all()));
        return Arbitraries.frequencyOf(
                        Tuple.of(4, rows),
                        Tuple.of(1, shipped),
                        Tuple.of(1, shipped.map(row -> row.given(row.scope(), row.low()))))
                .list()
                .ofMaxSize(60);
    }

    private static Scope scope(String subject, String place) {
        Scope scope = subject.isEmpty() ? Scope.GENERAL : Scope.of(subject, "kin");
        return place.isEmpty() ? scope : scope.on(place);
    }

    private static void same(Assumptions store, Plain plain) {
        assertThat(store.all()).containsExactlyElementsOf(plain.rows.values());
        assertThat(store.own()).isEqualTo(plain.beyond(plain.table));
        assertThat(store.ids())
                .containsAll(plain.rows.values().stream().map(Assumption::id).toList());
        for (Assumption row : plain.rows.values()) {
            assertThat(store.find(row.id(), row.scope())).containsSame(plain.rows.get(row.key()));
        }
        for (String id : IDS) {
            assertThat(store.pattern(id))
                    .isEqualTo(plain.rows.values().stream()
                            .filter(row -> row.id().equals(id))
                            .findFirst());
            for (String subject : SUBJECTS) {
                for (String place : PLACES) {
                    Scope scope = scope(subject, place);
                    assertThat(store.find(id, scope)).isEqualTo(plain.find(id, scope));
                }
            }
        }
    }

    @Property(tries = 200, edgeCases = EdgeCasesMode.NONE, seed = "20261127")
    void aStoreAnswersLikeOneMapOfAllRows(@ForAll("additions") List<Assumption> additions) {
        for (boolean shipped : new boolean[] {true, false}) {
            Assumptions store = shipped ? Assumptions.standard() : Assumptions.empty();
            Plain plain = Plain.of(store.all());
            for (Assumption row : additions) {
                store = store.with(row);
                plain = plain.with(row);
            }
            same(store, plain);
            same((shipped ? Assumptions.standard() : Assumptions.empty()).withAll(additions), plain);
        }
    }

    @Property(tries = 100, edgeCases = EdgeCasesMode.NONE, seed = "20261127")
    void storesMadeFromOneAnotherStayAsTheyWere(@ForAll("additions") List<Assumption> additions) {
        List<Assumptions> stores = new ArrayList<>(List.of(Assumptions.standard()));
        List<Plain> plains =
                new ArrayList<>(List.of(Plain.of(Assumptions.standard().all())));
        for (int i = 0; i < additions.size(); i++) {
            int from = i * 7 % stores.size();
            stores.add(stores.get(from).with(additions.get(i)));
            plains.add(plains.get(from).with(additions.get(i)));
        }
        for (int i = 0; i < stores.size(); i += 5) {
            same(stores.get(i), plains.get(i));
        }
    }

    @Property(tries = 200, edgeCases = EdgeCasesMode.NONE, seed = "20261127")
    void whatOneStoreHoldsBeyondAnotherIsFound(
            @ForAll("additions") List<Assumption> common,
            @ForAll("additions") List<Assumption> here,
            @ForAll("additions") List<Assumption> there) {
        Assumptions from = Assumptions.standard().withAll(common);
        Assumptions one = from.withAll(here);
        Assumptions other = from.withAll(there);
        Plain plain = Plain.of(one.all());
        assertThat(one.beyond(other)).isEqualTo(plain.beyond(Plain.of(other.all()).rows));
        assertThat(other.beyond(one)).isEqualTo(Plain.of(other.all()).beyond(plain.rows));
        assertThat(one.beyond(one)).isEmpty();
        assertThat(one.beyond(Assumptions.empty())).containsExactlyElementsOf(one.all());
        assertThat(Assumptions.empty().beyond(one)).isEmpty();
    }
}
