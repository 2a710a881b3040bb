package org.papermath.evidence;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Length;
import org.junit.jupiter.api.Test;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Share;

/** Bands of small functions whose shifts can be told by hand. */
class BandsTest {
    private static final double TINY = 1e-12;
    private static final Assumptions STORE = Assumptions.empty()
            .with(row("a", Scope.GENERAL, 2, 1, 8, Role.PHYSICAL))
            .with(row("b", Scope.GENERAL, 3, 2.7, 3.6, Role.PHYSICAL))
            .with(row("c", Scope.GENERAL, 5, 4, 6, Role.PHYSICAL))
            .with(row("sure", Scope.GENERAL, 7, 7, 7, Role.PHYSICAL))
            .with(row("habit", Scope.GENERAL, 9, 8, 10, Role.HABIT))
            .with(row("limit", Scope.GENERAL, 9, 8, 10, Role.LIMIT));

    private static Assumption row(String id, Scope scope, double likely, double low, double high, Role role) {
        return new Assumption(
                id,
                scope,
                "an invented number",
                likely,
                low,
                high,
                Shape.NORMAL,
                -100,
                100,
                "1",
                role,
                Basis.COMMON_PRACTICE,
                new Source("invented"));
    }

    private static double at(Assumptions store, String id) {
        return store.si(id, Scope.GENERAL);
    }

    private static Function<Assumptions, Amount<Dimensionless>> number(ToDoubleFunction<Assumptions> value) {
        return store -> Kinds.NUMBER.ofSi(value.applyAsDouble(store), "1");
    }

    private static Estimate<Dimensionless> band(ToDoubleFunction<Assumptions> value, String... ids) {
        return Bands.of(STORE, Scope.GENERAL, List.of(ids), number(value));
    }

    private static void check(Estimate<Dimensionless> band, double likely, double low, double high) {
        assertThat(band.likely().si()).isEqualTo(likely);
        assertThat(band.low().si()).isCloseTo(low, within(TINY));
        assertThat(band.high().si()).isCloseTo(high, within(TINY));
    }

    @Test
    void theBandOfOneAssumptionReachesItsOwnEnds() {
        check(band(store -> at(store, "a"), "a"), 2, 1, 8);
        check(band(store -> 10 - at(store, "a"), "a"), 8, 2, 9);
    }

    @Test
    void shiftsAboveZeroAreAddedAsFactors() {
        // Down by 1/2 and 0.9, up by 4 and 1.2; the logarithms go in squares.
        double down = Math.hypot(Math.log(2), Math.log(1 / 0.9));
        double up = Math.hypot(Math.log(4), Math.log(1.2));
        check(band(store -> at(store, "a") * at(store, "b"), "a", "b"), 6, 6 * Math.exp(-down), 6 * Math.exp(up));
    }

    @Test
    void shiftsThatReachZeroOrBelowAreAddedAsDifferences() {
        // The likely value is above zero, but at the low end of a the result is not.
        check(
                band(store -> at(store, "a") + at(store, "b") - 4, "a", "b"),
                1,
                1 - Math.hypot(1, 0.3),
                1 + Math.hypot(6, 0.6));
        // At the high end of a it is not.
        check(
                band(store -> 4 - at(store, "a") + at(store, "b"), "a", "b"),
                5,
                5 - Math.hypot(6, 0.3),
                5 + Math.hypot(1, 0.6));
        // Exactly zero at an end has no logarithm either.
        check(band(store -> at(store, "a") - 1, "a"), 1, 0, 7);
        check(band(store -> 8 - at(store, "a"), "a"), 6, 0, 7);
        check(
                band(store -> (at(store, "a") - 1) * at(store, "b"), "a", "b"),
                3,
                3 - Math.hypot(3, 0.3),
                3 + Math.hypot(18, 0.6));
        check(
                band(store -> (8 - at(store, "a")) * at(store, "b") / 3, "a", "b"),
                6,
                6 - Math.hypot(6, 0.6),
                6 + Math.hypot(1, 1.2));
    }

    @Test
    void aLikelyValueOfZeroOrBelowIsWidenedByDifferences() {
        check(band(store -> at(store, "a") + at(store, "b") - 5, "a", "b"), 0, -Math.hypot(1, 0.3), Math.hypot(6, 0.6));
        check(band(store -> -at(store, "b"), "b"), -3, -3.6, -2.7);
        // Zero at the likely value and above it at both ends: everything is up.
        check(band(store -> Math.abs(at(store, "a") - 2), "a"), 0, 0, 6);
    }

    @Test
    void anAssumptionWhoseEndsLieOnOneSideWidensThatSideOnly() {
        check(band(store -> 10 + (at(store, "a") - 2) * (at(store, "a") - 2), "a"), 10, 10, 46);
        check(band(store -> 50 - (at(store, "a") - 2) * (at(store, "a") - 2), "a"), 50, 14, 50);
    }

    @Test
    void eachDriverHasItsShareOfTheSquaredWidthTheStrongestFirst() {
        Estimate<Dimensionless> band = band(store -> at(store, "b") * at(store, "a") * at(store, "c"), "b", "a", "c");
        double a = square(Math.log(2)) + square(Math.log(4));
        double b = square(Math.log(0.9)) + square(Math.log(1.2));
        double c = square(Math.log(0.8)) + square(Math.log(1.2));
        assertThat(band.drivers())
                .extracting(driver -> driver.assumption().id())
                .containsExactly("a", "c", "b");
        assertThat(band.drivers())
                .extracting(Estimate.Driver::share)
                .usingElementComparator((x, y) -> Math.abs(x - y) < TINY ? 0 : Double.compare(x, y))
                .containsExactly(a / (a + b + c), c / (a + b + c), b / (a + b + c));
        assertThat(band.drivers().stream().mapToDouble(Estimate.Driver::share).sum())
                .isCloseTo(1, within(TINY));
        assertThat(band.drivers().get(0).assumption()).isSameAs(STORE.get("a", Scope.GENERAL));
    }

    @Test
    void driversOfEqualShareKeepTheOrderTheyWereNamedIn() {
        Assumptions twins = STORE.with(row("d", Scope.GENERAL, 2, 1, 8, Role.PHYSICAL));
        assertThat(Bands.of(twins, Scope.GENERAL, List.of("d", "a"), number(store -> at(store, "a") + at(store, "d")))
                        .drivers())
                .extracting(driver -> driver.assumption().id())
                .containsExactly("d", "a");
        assertThat(Bands.of(twins, Scope.GENERAL, List.of("a", "d"), number(store -> at(store, "a") + at(store, "d")))
                        .drivers())
                .extracting(driver -> driver.assumption().id())
                .containsExactly("a", "d");
    }

    @Test
    void anAssumptionThatMovesNothingIsNoDriver() {
        Estimate<Dimensionless> band = band(store -> at(store, "a"), "b", "a", "c");
        assertThat(band.drivers())
                .extracting(driver -> driver.assumption().id())
                .containsExactly("a");
        assertThat(band.drivers().get(0).share()).isEqualTo(1);
        Estimate<Dimensionless> still = band(store -> 4, "a", "b");
        assertThat(still.drivers()).isEmpty();
        assertThat(still.low()).isEqualTo(still.likely()).isEqualTo(still.high());
    }

    @Test
    void onlyPhysicalAssumptionsWithABandThatTheStoreHoldsAreVaried() {
        Estimate<Dimensionless> band = band(
                store -> at(store, "sure") + at(store, "habit") + at(store, "limit") + at(store, "a"),
                "sure",
                "habit",
                "limit",
                "unheard",
                "a");
        assertThat(band.drivers())
                .extracting(driver -> driver.assumption().id())
                .containsExactly("a");
        int[] asked = {0};
        band(
                store -> {
                    asked[0]++;
                    return 1;
                },
                "sure",
                "habit",
                "limit",
                "unheard",
                "a",
                "b");
        assertThat(asked[0])
                .as("once at the likely values and twice for each of two")
                .isEqualTo(5);
    }

    @Test
    void whatIsFoundFromTwoScopesIsVariedOnceAndWhereItStands() {
        Scope narrow = Scope.of("rag").on("big beater");
        Assumptions store = STORE.with(row("a", Scope.of("rag"), 4, 2, 6, Role.PHYSICAL));
        Estimate<Dimensionless> band = Bands.of(
                store,
                List.of(Bands.Use.of(narrow, "a", "b"), Bands.Use.of(Scope.of("rag"), "b", "a")),
                number(one -> one.si("a", narrow) + one.si("b", narrow)));
        assertThat(band.drivers())
                .extracting(driver -> driver.assumption().key())
                .containsExactlyInAnyOrder("a[rag]", "b");
        double down = Math.hypot(Math.log(5.0 / 7), Math.log(6.7 / 7));
        double up = Math.hypot(Math.log(9.0 / 7), Math.log(7.6 / 7));
        check(band, 7, 7 * Math.exp(-down), 7 * Math.exp(up));
    }

    @Test
    void theBandIsToldInTheUnitOfTheLikelyValue() {
        assertThat(Bands.of(STORE, Scope.GENERAL, List.of("a"), store -> Kinds.LENGTH.ofSi(at(store, "a"), "mm")))
                .hasToString("2000 mm, mean 1000–8000");
    }

    @Test
    void aBandEndsAtTheBoundsOfItsKind() {
        // The two falls of 1 m and 0.3 m add up to more than the 1 m there is.
        Estimate<Length> length = Bands.of(
                STORE,
                Scope.GENERAL,
                List.of("a", "b"),
                store -> Kinds.LENGTH.ofSi(Math.max(0, at(store, "a") - 1 + (at(store, "b") - 3)), "m"));
        assertThat(length.low().si()).isZero();
        assertThat(length.high().si()).isCloseTo(1 + Math.hypot(6, 0.6), within(TINY));
        Estimate<Share> share = Bands.of(
                STORE,
                Scope.GENERAL,
                List.of("a", "c"),
                store -> Kinds.SHARE.ofSi(Math.min(1, at(store, "a") * at(store, "c") / 12), "%"));
        assertThat(share.high().in("%")).isEqualTo(100);
    }

    @Test
    void theStoreItselfIsLeftAsItWas() {
        List<Assumption> before = List.copyOf(STORE.all());
        band(store -> at(store, "a"), "a", "b");
        assertThat(STORE.all()).containsExactlyElementsOf(before);
    }

    @Test
    void whatTheLikelyValuesRefuseIsRefused() {
        assertThat(catchThrowableOfType(Refused.class, () -> band(store -> at(store, "unheard"), "a"))
                        .code())
                .isEqualTo("assumption.missing");
    }

    private static double square(double value) {
        return value * value;
    }
}
