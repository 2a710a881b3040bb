package org.papermath.evidence;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.papermath.quantity.Refused;

class AssumptionTest {
    private static final Source TRIAL = new Source("a trial of three beater loads");

    static Assumption rate(Scope scope, double likely) {
        return new Assumption(
                "beating.rate",
                scope,
                "rate constant of beating",
                likely,
                likely / 2,
                likely * 2,
                Shape.LOG_NORMAL,
                0,
                10,
                "1/h",
                Role.PHYSICAL,
                Basis.RECALLED,
                TRIAL);
    }

    private static Assumption number(
            double likely, double low, double high, Shape shape, double least, double most, String unit) {
        return new Assumption(
                "a.number",
                Scope.GENERAL,
                "a number",
                likely,
                low,
                high,
                shape,
                least,
                most,
                unit,
                Role.PHYSICAL,
                Basis.RECALLED,
                TRIAL);
    }

    @Test
    void anAssumptionTellsAllThatIsKnownOfIt() {
        Assumption rate = rate(Scope.of("abaca").on("big beater"), 0.5);
        assertThat(rate.id()).isEqualTo("beating.rate");
        assertThat(rate.key()).isEqualTo("beating.rate[abaca@big beater]");
        assertThat(rate.scope()).isEqualTo(Scope.of("abaca").on("big beater"));
        assertThat(rate.meaning()).isEqualTo("rate constant of beating");
        assertThat(rate.likely()).isEqualTo(0.5);
        assertThat(rate.low()).isEqualTo(0.25);
        assertThat(rate.high()).isEqualTo(1);
        assertThat(rate.least()).isZero();
        assertThat(rate.most()).isEqualTo(10);
        assertThat(rate.likelySi()).isCloseTo(0.5 / 3600, within(1e-18));
        assertThat(rate.lowSi()).isCloseTo(0.25 / 3600, within(1e-18));
        assertThat(rate.highSi()).isCloseTo(1.0 / 3600, within(1e-18));
        assertThat(rate.shape()).isEqualTo(Shape.LOG_NORMAL);
        assertThat(rate.unit()).isEqualTo("1/h");
        assertThat(rate.role()).isEqualTo(Role.PHYSICAL);
        assertThat(rate.basis()).isEqualTo(Basis.RECALLED);
        assertThat(rate.source()).isEqualTo(TRIAL).hasToString("a trial of three beater loads");
        assertThat(rate).hasToString("beating.rate[abaca@big beater] = 0.5 (0.25–1) 1/h, recalled");
        assertThat(number(0.5, 0.5, 0.5, Shape.NORMAL, 0, 1, "1")).hasToString("a.number = 0.5, recalled");
    }

    @Test
    void aMeasuredValueKeepsMeaningUnitAndBounds() {
        Assumption rate = rate(Scope.GENERAL, 0.5);
        Assumption measured = rate.with(Scope.of("abaca"), 0.6, 0.55, 0.65, Basis.MEASURED_HERE, TRIAL);
        assertThat(measured.key()).isEqualTo("beating.rate[abaca]");
        assertThat(measured.meaning()).isEqualTo(rate.meaning());
        assertThat(measured.most()).isEqualTo(rate.most());
        assertThat(measured.basis()).isEqualTo(Basis.MEASURED_HERE);
        Assumption given = rate.given(Scope.of("abaca"), 0.7);
        assertThat(given).hasToString("beating.rate[abaca] = 0.7 1/h, given");
        assertThat(given.low()).isEqualTo(0.7);
        assertThat(given.high()).isEqualTo(0.7);
    }

    @Test
    void numbersOutOfOrderAreRefused() {
        Refused refused = catchThrowableOfType(Refused.class, () -> number(5, 6, 7, Shape.NORMAL, 0, 10, "%"));
        assertThat(refused.code()).isEqualTo("assumption.order");
        assertThat(refused)
                .hasMessage("assumption a.number: 5 % given with a band from 6 % to 7 %; it must lie in its"
                        + " band. Correct the value or the band.");
        assertThat(catchThrowableOfType(Refused.class, () -> number(50, 50, 50, Shape.NORMAL, 0, 10, "%")))
                .hasMessage("assumption a.number: 50 % given; it must be from 0 % to 10 %. Check the unit and the"
                        + " decimal point.");
        assertThat(catchThrowableOfType(
                        Refused.class, () -> number(5, -1, 6, Shape.NORMAL, 0, Double.POSITIVE_INFINITY, "%")))
                .hasMessage("assumption a.number: a band from -1 % to 6 % given; it must"
                        + " lie at 0 % or more. Check the unit and the decimal point.");
        assertThat(refused.arguments())
                .containsEntry("id", "a.number")
                .containsEntry("likely", 5.0)
                .containsEntry("most", 10.0);
        assertThatThrownBy(() -> number(5, 4, 4.5, Shape.NORMAL, 0, 10, "%")).isInstanceOf(Refused.class);
        assertThatThrownBy(() -> number(5, 4, 11, Shape.NORMAL, 0, 10, "%")).isInstanceOf(Refused.class);
        assertThatThrownBy(() -> number(5, -1, 6, Shape.NORMAL, 0, 10, "%")).isInstanceOf(Refused.class);
        assertThatThrownBy(() -> number(Double.NaN, 4, 6, Shape.NORMAL, 0, 10, "%"))
                .isInstanceOf(Refused.class);
        assertThatThrownBy(() -> number(5, 4, 6, Shape.NORMAL, Double.NaN, 10, "%"))
                .isInstanceOf(Refused.class);
        assertThatThrownBy(() -> number(5, 4, Double.POSITIVE_INFINITY, Shape.NORMAL, 0, Double.POSITIVE_INFINITY, "%"))
                .isInstanceOf(Refused.class);
        assertThat(number(5, 4, 6, Shape.NORMAL, Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY, "%")
                        .likelySi())
                .isEqualTo(0.05);
    }

    @Test
    void aShapeThatCannotHoldItsBandIsRefused() {
        Refused log = catchThrowableOfType(Refused.class, () -> number(1, 0, 2, Shape.LOG_NORMAL, 0, 10, "1"));
        assertThat(log.code()).isEqualTo("assumption.log-normal");
        assertThat(log)
                .hasMessage("assumption a.number: 0 given as its low point; such a value is above zero with its whole"
                        + " band.");
        Refused logit = catchThrowableOfType(Refused.class, () -> number(90, 80, 100, Shape.LOGIT, 0, 100, "%"));
        assertThat(logit.code()).isEqualTo("assumption.logit");
        assertThat(logit)
                .hasMessage("assumption a.number: a band from 80 % to 100 % given; such a share is more than none and"
                        + " less than all with its whole band.");
        assertThat(number(90, 80, 99, Shape.LOGIT, 0, 100, "%").highSi()).isEqualTo(0.99);
        assertThat(number(100, 100, 100, Shape.LOGIT, 0, 100, "%").likelySi()).isEqualTo(1);
    }

    @Test
    void whatHasNoNameUnitOrSourceIsRefused() {
        assertThat(catchThrowableOfType(
                                Refused.class,
                                () -> new Assumption(
                                        " ",
                                        Scope.GENERAL,
                                        "x",
                                        1,
                                        1,
                                        1,
                                        Shape.NORMAL,
                                        0,
                                        2,
                                        "1",
                                        Role.HABIT,
                                        Basis.GIVEN,
                                        TRIAL))
                        .code())
                .isEqualTo("assumption.unnamed");
        assertThat(catchThrowableOfType(Refused.class, () -> number(1, 1, 1, Shape.NORMAL, 0, 2, "furlong"))
                        .code())
                .isEqualTo("unit.unknown");
        Refused blank = catchThrowableOfType(Refused.class, () -> new Source(" "));
        assertThat(blank.code()).isEqualTo("source.blank");
        assertThat(blank)
                .hasMessage("source: no text given. Name the published work, or state how the value came about.");
    }

    @Test
    void equalityIsOfAllItsParts() {
        Assumption rate = rate(Scope.of("abaca"), 0.5);
        assertThat(rate).isEqualTo(rate(Scope.of("abaca"), 0.5)).hasSameHashCodeAs(rate(Scope.of("abaca"), 0.5));
        assertThat(rate).isNotEqualTo(rate(Scope.of("abaca"), 0.51)).isNotEqualTo(rate(Scope.of("flax"), 0.5));
        assertThat(rate.with(rate.scope(), 0.5, 0.25, 1, Basis.GIVEN, TRIAL)).isNotEqualTo(rate);
        assertThat(rate.with(rate.scope(), 0.5, 0.25, 1, Basis.RECALLED, new Source("elsewhere")))
                .isNotEqualTo(rate);
    }

    @Test
    void theWordOfABasis() {
        assertThat(Basis.COMMON_PRACTICE.word()).isEqualTo("common practice");
        assertThat(Basis.MEASURED_HERE.word()).isEqualTo("measured here");
        assertThat(Basis.ANCHORED.word()).isEqualTo("anchored");
        for (Basis basis : Basis.values()) {
            assertThat(basis.isUncalibrated())
                    .as(basis.word())
                    .isEqualTo(basis == Basis.ANCHORED || basis == Basis.COMMON_PRACTICE || basis == Basis.RECALLED);
        }
    }
}
