package org.papermath.evidence;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.entry;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Rate;
import org.papermath.quantity.Refused;

class AssumptionsTest {
    private static final String ID = "beating.rate";
    private static final Scope FULL =
            Scope.of("linter-second-cut", "linter", "cotton").on("big beater");

    private static Assumptions store(String... scopes) {
        Assumptions store = Assumptions.empty();
        double value = 0.1;
        for (String scope : scopes) {
            store = store.with(AssumptionTest.rate(Scope.parse(scope), value));
            value += 0.1;
        }
        return store;
    }

    @Test
    void theNarrowestScopeSpeaksAndSaysSo() {
        List<String> inwards = List.of(
                "",
                "@big beater",
                "cotton",
                "linter",
                "linter-second-cut",
                "cotton@big beater",
                "linter@big beater",
                "linter-second-cut@big beater");
        Assumptions store = Assumptions.empty();
        for (String scope : inwards) {
            store = store.with(AssumptionTest.rate(Scope.parse(scope), 0.5));
            assertThat(store.get(ID, FULL).scope().own()).isEqualTo(scope);
        }
        assertThat(store.all()).hasSize(8);
    }

    @Test
    void aValueForAnotherSubjectOrPlaceIsNotHeard() {
        Assumptions store = store("abaca", "@small beater", "linter@small beater", "linter-second-cut@small beater");
        assertThat(store.find(ID, FULL)).isEmpty();
        assertThat(store.find("beating.other", Scope.of("abaca"))).isEmpty();
        assertThat(store.get(ID, Scope.at("small beater")).scope()).isEqualTo(Scope.at("small beater"));
        assertThat(store.get(ID, Scope.of("abaca").on("loft")).key()).isEqualTo("beating.rate[abaca]");
    }

    @Test
    void aMissingValueIsRefusedRatherThanGuessed() {
        Refused refused =
                catchThrowableOfType(Refused.class, () -> store("abaca").get(ID, FULL));
        assertThat(refused.code()).isEqualTo("assumption.missing");
        assertThat(refused.arguments())
                .containsExactly(entry("id", ID), entry("scope", "[linter-second-cut@big beater]"));
        assertThat(refused)
                .hasMessage("beating.rate[linter-second-cut@big beater]: there is no default for this; it has to be"
                        + " measured. Add a value of your own for this scope.");
        assertThat(catchThrowableOfType(Refused.class, () -> Assumptions.empty().si(ID, FULL))
                        .code())
                .isEqualTo("assumption.missing");
    }

    @Test
    void valuesComeInSiAndAsAmounts() {
        Assumptions store = store("abaca");
        assertThat(store.si(ID, Scope.of("abaca"))).isEqualTo(0.1 / 3600);
        assertThat(store.amount(ID, Scope.of("abaca"), Kinds.RATE)).isEqualTo(Rate.perHour(0.1));
        Refused refused = catchThrowableOfType(Refused.class, () -> store.amount(ID, Scope.of("abaca"), Kinds.MASS));
        assertThat(refused.code()).isEqualTo("unit.unknown");
    }

    @Test
    void aGivenValueHoldsForItsScopeWithoutABand() {
        Assumptions store = store("", "abaca").given(ID, Scope.of("abaca").on("big beater"), 0.9);
        Assumption given = store.get(ID, Scope.of("abaca").on("big beater"));
        assertThat(given).hasToString("beating.rate[abaca@big beater] = 0.9 1/h, given");
        assertThat(store.get(ID, Scope.of("abaca")).basis()).isEqualTo(Basis.RECALLED);
        Assumptions elsewhere = store("abaca").given(ID, Scope.of("flax"), 0.3);
        assertThat(elsewhere.get(ID, Scope.of("flax")).likely()).isEqualTo(0.3);
        assertThat(catchThrowableOfType(Refused.class, () -> store.given("beating.luck", Scope.GENERAL, 1)))
                .hasMessage("assumption: \"beating.luck\" is not an id of the table."
                        + " Look at Assumptions.standard().ids() for the ids.");
        assertThat(catchThrowableOfType(Refused.class, () -> store.given(ID, Scope.GENERAL, 11))
                        .code())
                .isEqualTo("assumption.order");
    }

    @Test
    void aStoreIsNotChangedByAdding() {
        Assumptions one = store("abaca");
        Assumptions two = one.given(ID, Scope.of("abaca"), 0.9);
        assertThat(one.get(ID, Scope.of("abaca")).likely()).isEqualTo(0.1);
        assertThat(two.get(ID, Scope.of("abaca")).likely()).isEqualTo(0.9);
        assertThat(two.all()).hasSize(1).isUnmodifiable();
        assertThat(one.own()).isUnmodifiable();
    }

    @Test
    void whatIsOfYourOwnIsToldApart() {
        Assumptions standard = Assumptions.standard();
        assertThat(standard.own()).isEmpty();
        assertThat(standard)
                .hasToString("assumptions of edition 2026-11, " + standard.all().size() + " values");
        Assumption first = standard.all().iterator().next();
        assertThat(standard.with(first).own()).as("a row put back as it was").isEmpty();
        Assumption mine = AssumptionTest.rate(Scope.of("nettle").on("stamper"), 0.2);
        Assumptions own = standard.with(mine).given(first.id(), first.scope(), first.low());
        assertThat(own.own()).containsExactly(first.given(first.scope(), first.low()), mine);
        assertThat(own.edition()).isEqualTo(standard.edition());
        assertThat(own)
                .hasToString(
                        "assumptions of edition 2026-11, " + (standard.all().size() + 1) + " values, 2 of your own");
    }

    @Test
    void theShippedTableIsFoundByItsEdition() {
        assertThat(Assumptions.editions()).containsExactly("2026-11").isUnmodifiable();
        assertThat(Assumptions.edition("2026-11")).isSameAs(Assumptions.standard());
        Refused refused = catchThrowableOfType(Refused.class, () -> Assumptions.edition("1799-01"));
        assertThat(refused.code()).isEqualTo("assumptions.edition");
        assertThat(refused.arguments())
                .containsExactly(entry("given", "1799-01"), entry("accepted", List.of("2026-11")));
        assertThat(refused)
                .hasMessage("assumptions: edition \"1799-01\" is not in this version of the library, which holds:"
                        + " 2026-11. Use one of these, or a newer version of the library.");
        assertThat(Assumptions.standard().all())
                .allSatisfy(row -> assertThat(Assumptions.standard().get(row.id(), row.scope()))
                        .isSameAs(row));
    }

    @Test
    void scopesAreWrittenInBrackets() {
        assertThat(Scope.GENERAL).hasToString("");
        assertThat(Scope.GENERAL.isGeneral()).isTrue();
        assertThat(Scope.of()).isEqualTo(Scope.GENERAL);
        assertThat(Scope.of("abaca")).hasToString("[abaca]");
        assertThat(Scope.at("big beater")).hasToString("[@big beater]");
        assertThat(FULL).hasToString("[linter-second-cut@big beater]");
        assertThat(FULL.isGeneral()).isFalse();
        assertThat(FULL.outwards())
                .containsExactly(
                        "linter-second-cut@big beater",
                        "linter@big beater",
                        "cotton@big beater",
                        "linter-second-cut",
                        "linter",
                        "cotton",
                        "@big beater",
                        "");
        assertThat(Scope.of("abaca", "abaca").outwards()).containsExactly("abaca", "");
        assertThat(Scope.of("linter", "cotton")).isEqualTo(Scope.of("linter")).hasSameHashCodeAs(Scope.of("linter"));
        assertThat(Scope.parse("abaca@loft")).isEqualTo(Scope.of("abaca").on("loft"));
        assertThat(Scope.parse("@loft")).isEqualTo(Scope.at("loft")).isNotEqualTo(Scope.of("loft"));
        assertThat(Scope.parse("")).isEqualTo(Scope.GENERAL);
    }

    @ParameterizedTest
    @ValueSource(strings = {"", " ", "a[b", "a]b", "a@b"})
    void aNameThatWouldMuddleAScopeIsRefused(String name) {
        Refused refused = catchThrowableOfType(Refused.class, () -> Scope.of(name));
        assertThat(refused.code()).isEqualTo("scope.name");
        assertThat(refused)
                .hasMessage("scope: \"" + name
                        + "\" cannot be the name of a scope. Use a name that is not empty and"
                        + " has none of [ ] @.");
        assertThat(catchThrowableOfType(Refused.class, () -> Scope.at(name)).code())
                .isEqualTo("scope.name");
    }
}
