package org.papermath.evidence;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import org.junit.jupiter.api.Test;
import org.papermath.quantity.Refused;

class DirectMeasurementsTest {
    private static final Scope SCOPE = Scope.of("reed").on("the boards");

    @Test
    void theTableHasNoDefaultForThem() {
        assertThat(DirectMeasurements.all())
                .extracting(Assumption::id)
                .containsExactly(
                        "shrinkage.measured-along",
                        "shrinkage.measured-across",
                        "web.solids-pressed",
                        "sheet.moisture-conditioned",
                        "sheet.density-measured");
        for (Assumption one : DirectMeasurements.all()) {
            assertThat(Assumptions.standard().find(one.id(), Scope.GENERAL)).isEmpty();
            assertThat(DirectMeasurements.find(one.id())).contains(one);
        }
        assertThat(DirectMeasurements.find("beating.rate")).isEmpty();
    }

    @Test
    void valuesCanBeGivenForThem() {
        Assumptions store = Assumptions.standard().given("web.solids-pressed", SCOPE, 0.4);
        assertThat(store.si("web.solids-pressed", SCOPE)).isEqualTo(0.4);
        assertThat(store.own()).hasSize(1);
        assertThat(store.unitOf("sheet.density-measured")).isEqualTo("kg/m3");
        assertThat(catchThrowableOfType(Refused.class, () -> store.given("web.solids-pressed", SCOPE, 1.1))
                        .code())
                .isEqualTo("assumption.order");
    }

    @Test
    void valuesCanHaveABandAnOriginAndABasis() {
        Assumption given = Assumptions.standard()
                .given("sheet.density-measured", SCOPE, 520, 500, 545, Basis.MEASURED_HERE, new Source("three sheets"))
                .get("sheet.density-measured", SCOPE);
        assertThat(given.low()).isEqualTo(500);
        assertThat(given.high()).isEqualTo(545);
        assertThat(given.basis()).isEqualTo(Basis.MEASURED_HERE);
        assertThat(given.source().text()).isEqualTo("three sheets");
        assertThat(catchThrowableOfType(
                                Refused.class,
                                () -> Assumptions.standard()
                                        .given(
                                                "sheet.density",
                                                SCOPE,
                                                520,
                                                500,
                                                545,
                                                Basis.GIVEN,
                                                new Source("a guess")))
                        .code())
                .isEqualTo("assumption.unknown");
    }

    @Test
    void theIdsAreThoseOfTheTableAndThese() {
        assertThat(Assumptions.standard().ids())
                .contains("beating.rate", "web.solids-pressed")
                .doesNotHaveDuplicates();
        assertThat(Assumptions.standard().unitOf("beating.rate")).isEqualTo("1/h");
    }

    @Test
    void meaningUnitAndBoundsHoldForEveryScopeOfAnId() {
        for (Assumption one : Assumptions.standard().all()) {
            Assumption other = Assumptions.standard().all().stream()
                    .filter(row -> row.id().equals(one.id()))
                    .findFirst()
                    .orElseThrow();
            assertThat(other.given(one.scope(), one.likely()))
                    .as(one.key())
                    .isEqualTo(one.given(one.scope(), one.likely()));
            assertThat(Assumptions.standard().unitOf(one.id())).as(one.key()).isEqualTo(one.unit());
        }
    }

    @Test
    void aScopeTellsItsParts() {
        assertThat(SCOPE.subject()).contains("reed");
        assertThat(SCOPE.place()).contains("the boards");
        assertThat(Scope.of("denim", "cotton-rag").subject()).contains("denim");
        assertThat(Scope.GENERAL.subject()).isEmpty();
        assertThat(Scope.GENERAL.place()).isEmpty();
    }
}
