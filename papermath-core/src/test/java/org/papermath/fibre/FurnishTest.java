package org.papermath.fibre;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.papermath.fibre.Fibres.ABACA;
import static org.papermath.fibre.Fibres.COTTON_RAG;
import static org.papermath.fibre.Fibres.FLAX_RAW;
import static org.papermath.quantity.Amounts.grams;
import static org.papermath.quantity.Share.percent;
import static org.papermath.testing.CheckValues.relative;

import java.util.Map;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.papermath.evidence.Assumption;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Scope;
import org.papermath.evidence.WithNotices;
import org.papermath.quantity.Refused;

class FurnishTest {
    @Test
    void oneFibreKeepsItsScope() {
        Furnish furnish = Furnish.of(ABACA);
        assertThat(furnish.isBlend()).isFalse();
        assertThat(furnish.scope()).isEqualTo(ABACA.scope());
        assertThat(furnish.share(ABACA).in("%")).isEqualTo(100);
        assertThat(furnish.share(FLAX_RAW).si()).isZero();
    }

    @Test
    void aBlendHasAScopeOfItsOwnWhateverTheOrder() {
        Furnish furnish = Furnish.of(percent(40), ABACA, percent(60), COTTON_RAG);
        assertThat(furnish).hasToString("60 % cotton-rag + 40 % abaca");
        assertThat(furnish.fibres()).containsExactly(COTTON_RAG, ABACA);
        assertThat(furnish.scope()).isEqualTo(Scope.of("60 % cotton-rag + 40 % abaca"));
        assertThat(furnish).isEqualTo(Furnish.of(percent(60), COTTON_RAG, percent(40), ABACA));
        assertThat(furnish)
                .isEqualTo(Furnish.of(Map.of(ABACA, percent(40), COTTON_RAG, percent(60))))
                .hasSameHashCodeAs(Furnish.of(percent(60), COTTON_RAG, percent(40), ABACA));
        assertThat(furnish).isNotEqualTo(Furnish.of(percent(59), COTTON_RAG, percent(41), ABACA));
    }

    @Test
    void dividesAMass() {
        Furnish furnish = Furnish.of(percent(50), COTTON_RAG, percent(30), ABACA, percent(20), FLAX_RAW);
        assertThat(furnish.masses(grams(900)).get(ABACA).in("g")).isCloseTo(270, Offset.offset(1e-9));
        assertThat(furnish.masses(grams(900))).hasSize(3);
    }

    @Test
    void takesWhatIsWeighedTogether() {
        Furnish furnish = Furnish.ofMasses(Map.of(ABACA, grams(100), COTTON_RAG, grams(200)));
        assertThat(furnish.share(COTTON_RAG).si()).isCloseTo(2.0 / 3, Offset.offset(1e-12));
        assertThat(furnish).hasToString("66.67 % cotton-rag + 33.33 % abaca");
    }

    @Test
    void refusesSharesThatDoNotAddUp() {
        assertThatThrownBy(() -> Furnish.of(percent(60), COTTON_RAG, percent(30), ABACA))
                .isInstanceOf(Refused.class)
                .hasMessage("furnish: the shares 60 % cotton-rag + 30 % abaca add up to 90 %; must be 100 %. "
                        + "Correct a share, or give the oven-dry masses instead.");
        assertThatThrownBy(() -> Furnish.of(percent(100), COTTON_RAG, percent(0), ABACA))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("share of abaca");
        assertThatThrownBy(() -> Furnish.of(percent(50), ABACA, percent(50), ABACA))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("abaca stands twice");
        assertThatThrownBy(() -> Furnish.of(Map.of()))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("no fibre given");
        Fibre other = Fibre.of("abaca", "my abaca", Fibre.SourceClass.LEAF);
        assertThatThrownBy(() -> Furnish.of(percent(50), ABACA, percent(50), other))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("two fibres have the id abaca");
    }

    @Test
    void someOfABlendIsAMeanByMassAndSomeMustBeTested() {
        Assumptions table = Assumptions.standard();
        Furnish blend = Furnish.of(percent(75), ABACA, percent(25), COTTON_RAG);
        for (FibreProperty property : FibreProperty.values()) {
            if (property.mixing() == FibreProperty.Mixing.OF_EACH) {
                assertThatThrownBy(() -> property.of(blend, table))
                        .isInstanceOf(Refused.class)
                        .hasMessageContaining("as it is bought");
                continue;
            }
            if (property.find(ABACA, table).isEmpty()
                    || property.find(COTTON_RAG, table).isEmpty()) {
                assertThatThrownBy(() -> property.of(blend, table))
                        .isInstanceOf(Refused.class)
                        .hasMessageContaining("no default: measure");
                continue;
            }
            WithNotices<Assumption> mean = property.of(blend, table);
            assertThat(mean.value().likely())
                    .as(property.words())
                    .isCloseTo(
                            0.75 * property.of(ABACA, table).likely()
                                    + 0.25 * property.of(COTTON_RAG, table).likely(),
                            relative(mean.value().likely(), 1e-12));
            assertThat(mean.notices())
                    .as(property.words())
                    .hasSize(property.mixing() == FibreProperty.Mixing.TEST ? 1 : 0);
        }
        assertThat(FibreProperty.SHRINKAGE_LIMIT
                        .of(blend, table)
                        .notices()
                        .get(0)
                        .text())
                .contains("Make a sheet of the blend and test it");
        Assumptions own = table.given("shrinkage.limit", blend.scope(), 0.07);
        assertThat(FibreProperty.SHRINKAGE_LIMIT.of(blend, own).value().likely())
                .isEqualTo(0.07);
        assertThat(FibreProperty.SHRINKAGE_LIMIT.of(blend, own).notices()).isEmpty();
        assertThat(FibreProperty.LENGTH.of(Furnish.of(ABACA), table).value())
                .isEqualTo(FibreProperty.LENGTH.of(ABACA, table));
    }
}
