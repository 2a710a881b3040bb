package org.papermath.fibre;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Scope;
import org.papermath.fibre.Fibre.SourceClass;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Unclear;

class FibreTest {
    private static final Assumptions TABLE = Assumptions.standard();

    static List<Fibre> fibres() {
        return Fibres.all();
    }

    @Test
    void seventeenFibresWithNamesOfTheirOwn() {
        Set<String> ids = new HashSet<>();
        Set<String> names = new HashSet<>();
        assertThat(Fibres.all()).hasSize(17).allSatisfy(fibre -> {
            assertThat(ids.add(fibre.id())).isTrue();
            assertThat(names.add(fibre.name())).isTrue();
            assertThat(fibre.kin()).doesNotContain(fibre.id());
        });
    }

    /**
     * Which properties have a default, x or -, in the order of {@link FibreProperty}: length, width, coarseness,
     * moisture, regain, yield, own ash; water retention unbeaten, well, long; density unbeaten, long; shrinkage
     * initial, limit; isotherm. A property may only be filled by the fibre's own value or that of its kin. How fast a
     * fibre beats has a value between those of others where it has none of its own.
     */
    @ParameterizedTest
    @CsvSource({
        "linter-second-cut, xxxxx-x xxx xx xx x",
        "linter-first-cut,  xxxxx-x xxx xx xx x",
        "cotton-rag,        xxxxxxx xxx xx xx x",
        "denim,             xxxxxxx xxx xx xx x",
        "abaca,             xxxx-x- xxx xx xx x",
        "flax-raw,          xxxxxxx xxx xx xx x",
        "linen-rag,         xxxxxxx xxx xx xx x",
        "hemp-raw,          xxxxxxx xxx xx xx x",
        "kozo,              xxxx-x- xxx -- xx x",
        "mitsumata,         xxxx-x- xxx -- -- x",
        "gampi,             xxxx-x- xxx -- -- x",
        "sisal,             xxxx-x- xxx xx -- x",
        "jute,              xxxxxx- xxx xx -- x",
        "esparto,           xxxx-xx xxx xx -- x",
        "straw,             xxxx-x- xxx -- -- x",
        "softwood-kraft,    xxxx--- xxx xx xx x",
        "hardwood-kraft,    xxxx--- xxx xx -- x"
    })
    void answersForEveryFibreAndEveryProperty(String id, String expected) {
        Fibre fibre = Fibres.find(id);
        String marks = expected.replace(" ", "");
        List<FibreProperty> properties = Arrays.stream(FibreProperty.values())
                .filter(property -> property != FibreProperty.BEATING_RATE)
                .toList();
        assertThat(marks).hasSize(properties.size());
        assertThat(FibreProperty.BEATING_RATE.of(fibre, TABLE).scope().isGeneral())
                .isFalse();
        for (FibreProperty property : properties) {
            if (marks.charAt(properties.indexOf(property)) == 'x') {
                assertThat(property.find(fibre, TABLE))
                        .as(property + " of " + id)
                        .contains(property.of(fibre, TABLE));
                assertThat(property.of(fibre, TABLE).id()).isEqualTo(property.id());
            } else {
                assertThat(property.find(fibre, TABLE))
                        .as(property + " of " + id)
                        .isEmpty();
                assertThatThrownBy(() -> property.of(fibre, TABLE))
                        .isInstanceOf(Refused.class)
                        .hasMessageContaining(property.words() + " of " + fibre.name() + ": no default: measure. ")
                        .hasMessageEndingWith(property.howToMeasure());
            }
        }
    }

    @ParameterizedTest
    @MethodSource("fibres")
    void beatingHoldsMoreWaterAndFibreIsLongerThanWide(Fibre fibre) {
        double unbeaten =
                FibreProperty.WATER_RETENTION_UNBEATEN.of(fibre, TABLE).likelySi();
        double beaten =
                FibreProperty.WATER_RETENTION_WELL_BEATEN.of(fibre, TABLE).likelySi();
        assertThat(beaten).isGreaterThan(unbeaten);
        FibreProperty.WATER_RETENTION_LONG_BEATEN
                .find(fibre, TABLE)
                .ifPresent(longer -> assertThat(longer.likelySi()).isGreaterThan(beaten));
        assertThat(FibreProperty.LENGTH.of(fibre, TABLE).likelySi())
                .isGreaterThan(10 * FibreProperty.WIDTH.of(fibre, TABLE).likelySi());
        assertThat(TABLE.si("fibre.drainability-well-beaten", fibre.scope()))
                .isGreaterThan(TABLE.si("beating.drainability-unbeaten", fibre.scope()))
                .isLessThan(TABLE.si("beating.drainability-limit", fibre.scope()));
    }

    /** A fibre cannot weigh more per length than a solid rod of cell wall as wide as the fibre. */
    @ParameterizedTest
    @MethodSource("fibres")
    void coarsenessFitsInsideTheFibre(Fibre fibre) {
        double width = FibreProperty.WIDTH.of(fibre, TABLE).likelySi();
        double solid = TABLE.si("fibre.cell-wall-density", fibre.scope()) * Math.PI / 4 * width * width;
        assertThat(FibreProperty.COARSENESS.of(fibre, TABLE).likelySi()).isLessThan(solid);
    }

    @ParameterizedTest
    @CsvSource({
        "abaca, abaca",
        "Raw Flax, flax-raw",
        "' Cotton linter, second cut ', linter-second-cut",
        "KOZO, kozo",
        "softwood_kraft, softwood-kraft"
    })
    void findsByIdAndName(String text, String id) {
        assertThat(Fibres.find(text).id()).isEqualTo(id);
    }

    @ParameterizedTest
    @ValueSource(strings = {"linter", "cotton", "kraft", "rag", "raw"})
    void asksBackWhereSeveralGoByTheWord(String word) {
        assertThatThrownBy(() -> Fibres.find(word)).isInstanceOf(Unclear.class);
    }

    @ParameterizedTest
    @CsvSource({"abacca, abaca", "hemp, hemp-raw", "gampy, gampi", "jut, jute"})
    void namesTheNearestAndTakesNone(String text, String nearest) {
        assertThatThrownBy(() -> Fibres.find(text))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("The nearest is " + nearest + " (");
    }

    @Test
    void aFibreOfOnesOwnHasNoNumbersButTheGeneralOnes() {
        Fibre milkweed = Fibre.of("milkweed", "milkweed floss", SourceClass.SEED_HAIR);
        assertThat(milkweed.scope()).isEqualTo(Scope.of("milkweed"));
        assertThat(milkweed.sourceClass()).isEqualTo(SourceClass.SEED_HAIR);
        assertThat(FibreProperty.MOISTURE_AS_BOUGHT.of(milkweed, TABLE).scope().isGeneral())
                .isTrue();
        assertThat(FibreProperty.BEATING_RATE.of(milkweed, TABLE).scope().isGeneral())
                .isTrue();
        Fibre cousin = Fibre.of("milkweed", "milkweed floss", SourceClass.SEED_HAIR, "linter");
        assertThat(FibreProperty.BEATING_RATE.of(cousin, TABLE).scope()).isEqualTo(Scope.of("linter"));
        assertThat(cousin).isNotEqualTo(milkweed).hasToString("milkweed floss");
    }

    @Test
    void aFibreWantsNames() {
        assertThatThrownBy(() -> Fibre.of("x", " ", SourceClass.BAST)).isInstanceOf(Refused.class);
        assertThatThrownBy(() -> Fibre.of("a@b", "x", SourceClass.BAST)).isInstanceOf(Refused.class);
        assertThatThrownBy(() -> Fibre.of("", "x", SourceClass.BAST)).isInstanceOf(Refused.class);
        assertThatThrownBy(() -> Fibres.find(" ")).isInstanceOf(Refused.class);
    }
}
