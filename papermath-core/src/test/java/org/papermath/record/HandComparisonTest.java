package org.papermath.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.papermath.quantity.Amounts.grams;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Mass;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Amounts;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;
import org.papermath.record.HandComparison.Hand;
import org.papermath.testing.CheckValues;

class HandComparisonTest {
    private static Hand<Mass> hand(String name, double... weights) {
        return new Hand<>(name, Arrays.stream(weights).mapToObj(Amounts::grams).toList());
    }

    private static HandComparison<Dimensionless> set(String name) {
        Map<String, List<Amount<Dimensionless>>> hands = new LinkedHashMap<>();
        for (CheckValues.Row row : CheckValues.read("anova_sets")) {
            if (row.text("set").equals(name)) {
                hands.computeIfAbsent(row.text("hand"), key -> new ArrayList<>())
                        .add(Kinds.NUMBER.of(row.number("value"), "1"));
            }
        }
        return HandComparison.of(
                Kinds.NUMBER,
                hands.entrySet().stream()
                        .map(one -> new Hand<Dimensionless>(one.getKey(), one.getValue()))
                        .toList());
    }

    @Test
    void certifiedSets() {
        HandComparison<Dimensionless> silver = set("AtmWtAg");
        assertThat(silver.f()).isCloseTo(15.9467335677930, CheckValues.relative(15.95, 1e-8));
        assertThat(silver.within().si()).isCloseTo(1.51048314446410E-05, CheckValues.relative(1.5e-5, 1e-8));
        assertThat(silver.isReal()).isTrue();
        HandComparison<Dimensionless> silicon = set("SiRstv");
        assertThat(silicon.f()).isCloseTo(1.18046237440255, CheckValues.relative(1.18, 1e-9));
        assertThat(silicon.within().si()).isCloseTo(0.104076068334656, CheckValues.relative(0.1, 1e-12));
        assertThat(silicon.isReal()).isFalse();
    }

    /**
     * The sets SmLs01 to SmLs09 of the reference, made by their rule: nine treatments with means of 0.4, 0.3, 0.5, 0.3 …,
     * in each a first value at the mean and pairs of 0.1 below and above, with ever more digits before the point. The
     * certified F is the number of replicates. A double rounds the hard ones before any arithmetic; of the numbers so
     * rounded the exact F is met.
     */
    @ParameterizedTest
    @CsvSource({
        "1, 21, 1e-12",
        "1, 201, 1e-12",
        "1, 2001, 1e-11",
        "1000000, 21, 1e-8",
        "1000000, 201, 1e-8",
        "1000000, 2001, 1e-8",
        "1000000000000, 21, 1e-2",
        "1000000000000, 201, 1e-2",
        "1000000000000, 2001, 1e-2"
    })
    void certifiedSetsWithManyDigitsInCommon(String whole, int replicates, double tolerance) {
        int[] tenths = {4, 3, 5, 3, 5, 3, 5, 3, 5};
        List<Hand<Dimensionless>> hands = new ArrayList<>();
        List<double[]> values = new ArrayList<>();
        for (int h = 0; h < tenths.length; h++) {
            double[] own = new double[replicates];
            for (int i = 0; i < replicates; i++) {
                int tenth = tenths[h] + (i == 0 ? 0 : i % 2 == 1 ? -1 : 1);
                own[i] = Double.parseDouble(whole + "." + tenth);
            }
            values.add(own);
            hands.add(new Hand<>(
                    String.valueOf(h + 1),
                    Arrays.stream(own)
                            .mapToObj(one -> Kinds.NUMBER.of(one, "1"))
                            .toList()));
        }
        double f = HandComparison.of(Kinds.NUMBER, hands).f();
        assertThat(f).isCloseTo(replicates, CheckValues.relative(replicates, tolerance));
        double exact = exactF(values);
        assertThat(f).isCloseTo(exact, CheckValues.relative(exact, 1e-11));
    }

    private static double exactF(List<double[]> hands) {
        MathContext digits = new MathContext(60);
        BigDecimal sum = BigDecimal.ZERO;
        int n = 0;
        List<BigDecimal> means = new ArrayList<>();
        BigDecimal within = BigDecimal.ZERO;
        for (double[] hand : hands) {
            BigDecimal own = BigDecimal.ZERO;
            for (double value : hand) {
                own = own.add(new BigDecimal(value));
            }
            sum = sum.add(own);
            n += hand.length;
            BigDecimal mean = own.divide(BigDecimal.valueOf(hand.length), digits);
            means.add(mean);
            for (double value : hand) {
                within = within.add(new BigDecimal(value).subtract(mean).pow(2), digits);
            }
        }
        BigDecimal all = sum.divide(BigDecimal.valueOf(n), digits);
        BigDecimal between = BigDecimal.ZERO;
        for (int h = 0; h < hands.size(); h++) {
            between = between.add(
                    means.get(h).subtract(all).pow(2).multiply(BigDecimal.valueOf(hands.get(h).length)), digits);
        }
        int k = hands.size();
        return between.multiply(BigDecimal.valueOf(n - k))
                .divide(within.multiply(BigDecimal.valueOf(k - 1)), digits)
                .doubleValue();
    }

    /** F, chance and the median form of Levene's test as published; pairs and Welch's form by SciPy 1.17.1. */
    @Test
    void plants() {
        HandComparison<Dimensionless> plants = set("plants");
        assertThat(plants.f()).isCloseTo(4.846087862380136, within(1e-12));
        assertThat(plants.chance()).isCloseTo(0.015909958325622912, within(1e-12));
        assertThat(plants.welchChance()).isCloseTo(0.017392821490169935, within(1e-12));
        assertThat(plants.scatterChance().orElseThrow()).isCloseTo(0.34122662412547355, within(1e-12));
        assertThat(plants.pairs())
                .extracting(HandComparison.Pair::chance)
                .satisfiesExactly(
                        one -> assertThat(one).isCloseTo(0.2503825085875489, within(1e-10)),
                        two -> assertThat(two).isCloseTo(2 * 0.04789925560196889, within(1e-10)),
                        three -> assertThat(three).isCloseTo(3 * 0.009298404717269842, within(1e-10)));
        HandComparison.Pair<Dimensionless> last = plants.pairs().get(2);
        assertThat(last.difference().si()).isCloseTo(0.865, within(1e-12));
        assertThat(last.low().si()).isCloseTo(0.08477506854866557, within(1e-9));
        assertThat(last.high().si()).isCloseTo(1.6452249314513354, within(1e-9));
        assertThat(plants)
                .hasToString("the hands differ (F = 4.846): trt2 makes higher sheets than trt1 by 0.865 (0.08478 to"
                        + " 1.645); ctrl mean 5.032, sd 0.5831, 10 sheets; trt1 mean 4.661, sd 0.7937, 10 sheets; trt2"
                        + " mean 5.526, sd 0.4426, 10 sheets");
    }

    /** Unequal numbers and unequal scatter; figures by SciPy 1.17.1. */
    @Test
    void handsThatScatterUnlike() {
        HandComparison<Mass> hands = HandComparison.of(
                Kinds.MASS,
                List.of(
                        hand("Ann", 10.2, 10.4, 10.1, 10.3, 10.6),
                        hand("Ben", 10.9, 11.3, 10.2, 11.8),
                        hand("Cy", 10.0, 10.1, 9.9, 10.2, 10.1, 10.0)));
        assertThat(hands.f()).isCloseTo(9.369357914812452, within(1e-9));
        assertThat(hands.chance()).isCloseTo(0.0035397546103223165, within(1e-10));
        assertThat(hands.welchChance()).isCloseTo(0.03215262244533966, within(1e-10));
        assertThat(hands.scatterChance().orElseThrow()).isCloseTo(0.014451376447090053, within(1e-10));
        assertThat(hands.scattersApart()).isTrue();
        assertThat(hands.isReal()).isTrue();
        assertThat(hands.toString())
                .contains("; Cy is steadiest and Ben scatters most, more than chance; Ann mean 10.32 g, sd 0.1924 g, 5"
                        + " sheets;");
    }

    @Test
    void handsThatMakeTheSameSheet() {
        HandComparison<Mass> hands =
                HandComparison.of(Kinds.MASS, List.of(hand("Ann", 10.2, 10.4, 10.1), hand("Ben", 10.3, 10.3, 10.2)));
        assertThat(hands.isReal()).isFalse();
        assertThat(hands.toString()).startsWith("no difference of the hands more than chance (F = 0.");
        HandComparison<Mass> alike =
                HandComparison.of(Kinds.MASS, List.of(hand("Ann", 10, 10, 10), hand("Ben", 10, 10, 10)));
        assertThat(alike.f()).isZero();
        assertThat(alike.chance()).isEqualTo(1);
        assertThat(alike.scatterChance().orElseThrow()).isEqualTo(1);
        assertThat(alike.pairs().get(0).chance()).isEqualTo(1);
    }

    @Test
    void handsWithoutScatter() {
        HandComparison<Mass> steps =
                HandComparison.of(Kinds.MASS, List.of(hand("Ann", 10, 10, 10), hand("Ben", 11, 11, 11)));
        // A scale of whole grams: 3 x 0.5 / (1/12).
        assertThat(steps.f()).isCloseTo(18, within(1e-9));
        HandComparison<Mass> apart =
                HandComparison.of(Kinds.MASS, List.of(hand("Ann", 10, 10), hand("Ben", 12.5, 12.5)));
        assertThat(apart.f()).isFinite().isGreaterThan(1000);
        assertThat(apart.scatterChance()).isEmpty();
        assertThat(apart.isReal()).isTrue();
        assertThat(apart.toString())
                .startsWith(
                        "the hands differ (F = 7500): Ben makes heavier sheets than Ann by 2.5 g (2.376 g to 2.624 g)");
        assertThat(HandComparison.of(Kinds.MASS, List.of(hand("Ben", 12.5, 12.5), hand("Ann", 10, 10)))
                        .toString())
                .startsWith(
                        "the hands differ (F = 7500): Ann makes lighter sheets than Ben by 2.5 g (2.376 g to 2.624 g)");
    }

    @Test
    void refusals() {
        assertThatThrownBy(() -> hand("Ann", 10))
                .isInstanceOf(Refused.class)
                .hasMessage("hand Ann: 1 sheets given; at least 2 are needed to show how they scatter.");
        assertThatThrownBy(() -> HandComparison.of(Kinds.MASS, List.of(hand("Ann", 10, 11))))
                .isInstanceOf(Refused.class)
                .hasMessage("hands: 1 given; at least 2 are needed to compare.");
        assertThatThrownBy(() -> HandComparison.of(Kinds.MASS, List.of(hand("Ann", 10, 11), hand("Ann", 10, 12))))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("given twice");
        assertThatThrownBy(() -> HandComparison.of(
                        Kinds.MASS, List.of(hand("Ann", 10, 11), new Hand<>("Ben", List.of(grams(0), grams(1))))))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("mass of a sheet");
    }
}
