package org.papermath.evidence;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import javax.measure.Quantity;
import javax.measure.quantity.Mass;
import org.junit.jupiter.api.Test;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Amounts;
import org.papermath.quantity.Consistency;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Moisture;
import org.papermath.quantity.Refused;

class EstimateTest {
    private static final Assumption RECALLED = AssumptionTest.rate(Scope.of("abaca"), 0.5);
    private static final Assumption MEASURED =
            RECALLED.with(Scope.of("flax"), 0.5, 0.4, 0.6, Basis.MEASURED_HERE, new Source("a trial"));

    private static Estimate<Grammage> grammage(Estimate.Driver... drivers) {
        return Estimate.of(Grammage.gsm(214), Grammage.gsm(203), Grammage.gsm(226), List.of(drivers));
    }

    @Test
    void itReadsLikeASentence() {
        assertThat(grammage()).hasToString("214 g/m², mean 203–226");
        assertThat(grammage().withScatter(0.08)).hasToString("214 g/m², mean 203–226; single pieces ±8 %");
        assertThat(Estimate.of(Grammage.gsm(214), Grammage.gsm(214), Grammage.gsm(214), List.of()))
                .hasToString("214 g/m²");
        assertThat(new Estimate.Driver(RECALLED, 0.625)).hasToString("beating.rate[abaca] 63 %");
    }

    @Test
    void theBandIsToldInTheUnitOfTheLikelyValue() {
        Estimate<Grammage> mixed = Estimate.of(
                Grammage.gsm(214), Kinds.GRAMMAGE.of(0.203, "kg/m2"), Kinds.GRAMMAGE.of(0.226, "kg/m2"), List.of());
        assertThat(mixed).hasToString("214 g/m², mean 203–226");
        assertThat(mixed.low().getUnit()).isEqualTo(mixed.likely().getUnit());
        assertThat(grammage().withScatter(0.08).in("kg/m2"))
                .hasToString("0.214 kg/m², mean 0.203–0.226; single pieces ±8 %");
        assertThat(Estimate.of(Amounts.celsius(20), Amounts.fahrenheit(68), Amounts.celsius(25), List.of())
                        .in("degF"))
                .hasToString("68 °F, mean 68–77");
    }

    /** 79 cards of 4.05 g: what is not known goes the same way in all of them, what single cards scatter by evens out. */
    @Test
    void severalPiecesTogether() {
        Estimate<Mass> card = Estimate.of(
                        Amounts.grams(4.05),
                        Amounts.grams(3.8),
                        Amounts.grams(4.3),
                        List.of(new Estimate.Driver(RECALLED, 1)))
                .withScatter(0.08)
                .withMakings(0.25);
        Estimate<Mass> all = card.times(79);
        assertThat(all.likely().in("g")).isCloseTo(319.95, within(1e-9));
        assertThat(all.low().in("g")).isCloseTo(300.2, within(1e-9));
        assertThat(all.high().in("g")).isCloseTo(339.7, within(1e-9));
        assertThat(all.scatter()).hasValueSatisfying(s -> assertThat(s).isCloseTo(0.08 / Math.sqrt(79), within(1e-15)));
        assertThat(all.drivers()).isEqualTo(card.drivers());
        assertThat(all.fromMakings()).isEqualTo(0.25);
        assertThat(all).hasToString("320 g, mean 300.2–339.7; lots of 79 ±0.9001 %");
        assertThat(all.in("kg")).hasToString("0.32 kg, mean 0.3002–0.3397; lots of 79 ±0.9001 %");
        assertThat(card.times(1)).isEqualTo(card);
        assertThat(all.times(2).scatter().orElseThrow())
                .isCloseTo(card.times(158).scatter().orElseThrow(), within(1e-15));
        assertThat(card.times(5).open(true, false).isOpenBelow()).isTrue();
        Estimate<Mass> drawn = card.withSpread(Spread.of(Kinds.MASS, "g", new double[] {0.004, 0.0041, 0.0042}));
        assertThat(drawn.times(10).spread().orElseThrow()).hasToString("3 draws, 40.1 g to 41.9 g");
    }

    @Test
    void onlyWhatAddsUpIsMultipliedByAnExactCount() {
        assertThatThrownBy(() -> grammage().times(79))
                .isInstanceOf(Refused.class)
                .hasMessage(
                        "grammage: 214 g/m² times 79 pieces is asked for, but grammage does not grow with their number."
                                + " Multiply a mass, a length, an area, a volume or a time.");
        Estimate<Mass> card = Estimate.of(Amounts.grams(4), Amounts.grams(4), Amounts.grams(4), List.of());
        assertThatThrownBy(() -> card.times(0))
                .isInstanceOf(Refused.class)
                .hasMessage("pieces: 0 given; must be 1 or more.");
    }

    @Test
    void aLikelyValueOutsideItsBandIsRefused() {
        Refused refused = catchThrowableOfType(
                Refused.class, () -> Estimate.of(Grammage.gsm(300), Grammage.gsm(203), Grammage.gsm(226), List.of()));
        assertThat(refused.code()).isEqualTo("estimate.order");
        assertThat(refused).hasMessage("estimate: likely 300 g/m² is not inside its band 203 g/m² to 226 g/m².");
        assertThatThrownBy(() -> Estimate.of(Grammage.gsm(200), Grammage.gsm(203), Grammage.gsm(226), List.of()))
                .isInstanceOf(Refused.class);
    }

    @Test
    @SuppressWarnings("unchecked")
    void aBandOfAnotherKindIsRefused() {
        Amount<Consistency> slipped = (Amount<Consistency>) (Quantity<?>) Moisture.percent(1);
        assertThat(catchThrowableOfType(
                                Refused.class,
                                () -> Estimate.of(Consistency.percent(2), slipped, Consistency.percent(3), List.of()))
                        .code())
                .isEqualTo("quantity.kind");
    }

    @Test
    void scatterIsAFigureOfItsOwn() {
        assertThat(grammage().scatter()).isEmpty();
        assertThat(grammage().withScatter(0.08).scatter()).contains(0.08);
        assertThat(grammage().withScatter(0.08).high()).isEqualTo(Grammage.gsm(226));
        for (double bad : new double[] {-0.1, Double.NaN, Double.POSITIVE_INFINITY}) {
            assertThat(catchThrowableOfType(Refused.class, () -> grammage().withScatter(bad))
                            .code())
                    .isEqualTo("estimate.scatter");
        }
    }

    @Test
    void itIsUncalibratedWhereNothingBehindItWasMeasured() {
        Estimate.Driver guess = new Estimate.Driver(RECALLED, 0.6);
        Estimate.Driver trial = new Estimate.Driver(MEASURED, 0.4);
        assertThat(grammage().isUncalibrated()).isFalse();
        assertThat(grammage(guess).isUncalibrated()).isTrue();
        assertThat(grammage(guess, trial).isUncalibrated()).isFalse();
        assertThat(grammage(guess, trial).drivers())
                .containsExactly(guess, trial)
                .isUnmodifiable();
    }

    @Test
    void equalityIsOfAllItsParts() {
        assertThat(grammage()).isEqualTo(grammage()).hasSameHashCodeAs(grammage());
        assertThat(grammage().withScatter(0.08))
                .isNotEqualTo(grammage())
                .isNotEqualTo(grammage().withScatter(0.09));
        assertThat(grammage(new Estimate.Driver(RECALLED, 1))).isNotEqualTo(grammage());
        assertThat((Object)
                        Estimate.of(Consistency.percent(2), Consistency.percent(2), Consistency.percent(2), List.of()))
                .isNotEqualTo(Estimate.of(Moisture.percent(2), Moisture.percent(2), Moisture.percent(2), List.of()));
    }
}
