package org.papermath.fibre;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.papermath.fibre.Fibres.ABACA;
import static org.papermath.fibre.Fibres.COTTON_RAG;
import static org.papermath.fibre.Fibres.FLAX_RAW;
import static org.papermath.quantity.Amounts.grams;
import static org.papermath.quantity.Share.percent;

import java.util.Map;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.papermath.evidence.Scope;
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
        assertThat(furnish).isEqualTo(Furnish.of(Map.of(ABACA, percent(40), COTTON_RAG, percent(60))))
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
        assertThatThrownBy(() -> Furnish.of(percent(60), COTTON_RAG, percent(30), ABACA)).isInstanceOf(Refused.class)
                .hasMessage("furnish: the shares 60 % cotton-rag + 30 % abaca add up to 90 %; 100 % is wanted. "
                        + "Correct a share, or give the oven-dry masses instead.");
        assertThatThrownBy(() -> Furnish.of(percent(100), COTTON_RAG, percent(0), ABACA)).isInstanceOf(Refused.class)
                .hasMessageContaining("share of abaca");
        assertThatThrownBy(() -> Furnish.of(percent(50), ABACA, percent(50), ABACA)).isInstanceOf(Refused.class)
                .hasMessageContaining("abaca stands twice");
        assertThatThrownBy(() -> Furnish.of(Map.of())).isInstanceOf(Refused.class)
                .hasMessageContaining("no fibre given");
        Fibre other = Fibre.of("abaca", "my abaca", Fibre.SourceClass.LEAF);
        assertThatThrownBy(() -> Furnish.of(percent(50), ABACA, percent(50), other)).isInstanceOf(Refused.class)
                .hasMessageContaining("two fibres have the id abaca");
    }
}
