package org.papermath.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.papermath.quantity.Amounts.hours;
import static org.papermath.quantity.Amounts.mm;

import org.junit.jupiter.api.Test;
import org.papermath.evidence.Scope;
import org.papermath.fibre.Fibres;
import org.papermath.fibre.Furnish;
import org.papermath.order.Recipe;
import org.papermath.order.Studio;
import org.papermath.press.Felts;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Refused;

/** The pace of beginners is that of one account, five to six minutes a page (a forum of papermakers, not checked elsewhere). */
class ClassDayTest {
    private static final Recipe RECIPE = Recipe.of("class stuff", Furnish.of(Fibres.COTTON_RAG))
            .beating(hours(1))
            .build();

    private static ClassDay day(Studio studio, int people, int each, double hours, int moulds) {
        return ClassDay.of(studio, RECIPE)
                .people(people)
                .sheetsEach(each)
                .size(mm(200), mm(270))
                .grammage(Grammage.gsm(120))
                .within(hours(hours))
                .moulds(moulds)
                .plan();
    }

    @Test
    void withoutAPressItIsTheMouldsAlone() {
        Studio bare = Sample.bare().vat(Sample.studio().vat().orElseThrow()).build();
        ClassDay day = day(bare, 8, 4, 5, 4);
        int rounds = (day.sheets() + 3) / 4;
        assertThat(day.pressed().likely().si()).isCloseTo(rounds * 330, within(1e-6));
        assertThat(day.formed()).isEqualTo(day.pressed());
        assertThat(day.pressTurns()).isZero();
        assertThat(day.narrowPlace()).isEqualTo("the moulds");
        assertThat(day.mouldGivesAnHour().likely().si()).isCloseTo(3600.0 / 330, within(1e-9));
        assertThat(day.perMouldAnHour().si()).isCloseTo(day.sheets() / 4.0 / 5, within(1e-9));
    }

    /** Twelve felts make one post of ten or so: while it is pressed nothing is couched. */
    @Test
    void oneSetOfFeltsWaitsForThePress() {
        Studio one = Sample.studio().with(studio -> studio.felts(Felts.of(mm(380), mm(480), Grammage.gsm(450), 11)));
        Studio many = Sample.studio().with(studio -> studio.felts(Felts.of(mm(380), mm(480), Grammage.gsm(450), 66)));
        ClassDay waits = day(one, 10, 4, 4, 6);
        ClassDay flows = day(many, 10, 4, 4, 6);
        double press = waits.plan().pieces().get(0).press().time().si();
        int posts = waits.pressTurns();
        assertThat(posts).isGreaterThan(1).isEqualTo(flows.pressTurns());
        assertThat(waits.pressed().likely().si() - flows.pressed().likely().si())
                .isCloseTo((posts - 1) * press, within(press));
        assertThat(waits.narrowPlace()).isIn("the felts", "the moulds");
        assertThat(waits.oneMoreSaves().si()).isPositive();
    }

    @Test
    void moreMouldsAreNeverLaterAndMorePeopleNeverSooner() {
        double before = Double.POSITIVE_INFINITY;
        for (int moulds = 1; moulds <= 12; moulds++) {
            double now =
                    day(Sample.studio(), 12, 4, 4, moulds).pressed().likely().si();
            assertThat(now).isLessThanOrEqualTo(before + 1e-9);
            before = now;
        }
        assertThat(day(Sample.studio(), 16, 4, 4, 4).pressed().likely().si())
                .isGreaterThan(
                        day(Sample.studio(), 8, 4, 4, 4).pressed().likely().si());
    }

    @Test
    void whatIsNotDryGoesHomeWet() {
        ClassDay day = day(Sample.studio(), 6, 3, 3, 3);
        assertThat(day.wetSheets()).isEqualTo(18);
        double dry = day.plan().pieces().get(0).forming().solids().si();
        assertThat(day.wetSheet().si()).isGreaterThan(1.8 * dry).isLessThan(6 * dry);
        assertThat(day.handout())
                .startsWith("At the vat: 6 people, 3 sheets each")
                .contains("home wet, about ")
                .contains("Keep from the beater");
    }

    @Test
    void theVerdictComesFirst() {
        assertThat(day(Sample.studio(), 4, 2, 4, 4).toString())
                .matches("4 people, \\d+ sheets to form on 4 moulds: it fits, .*");
        ClassDay much = day(Sample.studio(), 30, 6, 2, 2);
        assertThat(much.fits()).isFalse();
        assertThat(much.toString()).contains(": it does not fit, ").contains("one more saves ");
    }

    @Test
    void aSlowStuffSetsThePaceNotTheHands() {
        Recipe slow = Recipe.of("long beaten", Furnish.of(Fibres.FLAX_RAW))
                .beating(hours(9))
                .build();
        ClassDay day = ClassDay.of(
                        Sample.studio()
                                .withAssumptions(Sample.studio()
                                        .assumptions()
                                        .given("labour.sheet-time", Scope.of("beginner"), 20)),
                        slow)
                .people(4)
                .sheetsEach(2)
                .size(mm(200), mm(270))
                .grammage(Grammage.gsm(120))
                .within(hours(4))
                .plan();
        assertThat(day.moulds()).isEqualTo(1);
        double drain = day.plan().pieces().get(0).drainTime().likely().si();
        assertThat(day.mouldGivesAnHour().likely().si()).isCloseTo(3600 / (drain + 20), within(1e-6));
    }

    @Test
    void whatIsNotSaidIsAskedFor() {
        assertThatThrownBy(() -> ClassDay.of(Sample.studio(), RECIPE).people(4).plan())
                .isInstanceOf(Refused.class)
                .hasMessage(
                        "class: sheetsEach, size, grammage, within not said. Say how many people, how many sheets each,"
                                + " of what size and weight, within what time.");
        assertThatThrownBy(() -> ClassDay.of(Sample.studio(), RECIPE).people(0))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("from 1 to 200");
    }
}
