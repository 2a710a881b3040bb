package org.papermath.whatif;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.papermath.quantity.Amounts.grams;
import static org.papermath.quantity.Amounts.kilograms;
import static org.papermath.quantity.Amounts.mm;

import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.papermath.evidence.Notice;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Consistency;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Share;
import org.papermath.vat.FormingMethod;

class AnswerTest {
    private static Amount<Mass> kilos(double x) {
        return Kinds.MASS.ofSi(x, "kg");
    }

    @Test
    void aHandAtAVatIsSolvedForTheConsistency() {
        FormingMethod dip = FormingMethod.dipped();
        Answer<Consistency, Mass> answer = Answer.of(
                Consistency.percent(0.3),
                Consistency.percent(1),
                at -> dip.sheetFibre(kilograms(4), at, Share.percent(97)),
                grams(25));
        // 25 g of 4 kg at 97 %: 0.025/(0.97 × 4)
        assertThat(answer.one().si()).isCloseTo(0.025 / (0.97 * 4), Offset.offset(1e-14));
        assertThat(answer.notices()).isEmpty();
        assertThat(answer).hasToString("the mass is 25 g with consistency 0.6443 %");
    }

    @Test
    void aWantOutOfReachSaysWhatTheRangeGivesAndNoEndOfIt() {
        FormingMethod dip = FormingMethod.dipped();
        Answer<Consistency, Mass> answer = Answer.of(
                Consistency.percent(0.3),
                Consistency.percent(1),
                at -> dip.sheetFibre(kilograms(4), at, Share.percent(97)),
                grams(55));
        assertThat(answer.found()).isEmpty();
        assertThat(answer).hasToString("from 0.3 % to 1 % the mass goes from 11.64 g to 38.8 g; 55 g is not reached");
        assertThat(answer.least().orElseThrow().si()).isCloseTo(0.01164, Offset.offset(1e-12));
        assertThat(answer.most().orElseThrow().si()).isCloseTo(0.0388, Offset.offset(1e-12));
        assertThat(answer.notices()).extracting(Notice::code).containsExactly("whatif.not-reached");
        assertThatThrownBy(answer::one)
                .isInstanceOfSatisfying(
                        Refused.class, refused -> assertThat(refused.code()).isEqualTo("whatif.no-answer"))
                .hasMessageContaining("55 g is not reached");
    }

    @Test
    void severalAnswersAreTold() {
        // A parabola through 4 at 1 m and at 3 m.
        Answer<Length, Mass> answer =
                Answer.of(mm(0), mm(5000), at -> kilos(3 + Math.pow(at.si() - 2, 2)), kilograms(4));
        assertThat(answer.found()).hasSize(2);
        assertThat(answer.found().get(0).si()).isCloseTo(1, Offset.offset(1e-12));
        assertThat(answer.found().get(1).si()).isCloseTo(3, Offset.offset(1e-12));
        assertThat(answer.notices()).extracting(Notice::code).containsExactly("whatif.several");
        assertThat(answer).hasToString("the mass is 4 kg with length 1000 mm and 3000 mm");
        assertThatThrownBy(answer::one)
                .isInstanceOfSatisfying(
                        Refused.class, refused -> assertThat(refused.code()).isEqualTo("whatif.several-answers"));
    }

    @Test
    void anAnswerBetweenThePointsIsFoundWhereTheOutcomeOnlyDipsToIt() {
        // Two answers 2 mm apart, between points 25 mm apart, and one that touches.
        Answer<Length, Mass> two =
                Answer.of(mm(0), mm(5000), at -> kilos(4 + (at.si() - 2.0121) * (at.si() - 2.0141)), kilograms(4));
        assertThat(two.found()).hasSize(2);
        assertThat(two.found().get(0).si()).isCloseTo(2.0121, Offset.offset(1e-9));
        Answer<Length, Mass> touching =
                Answer.of(mm(0), mm(5000), at -> kilos(4 + Math.pow(at.si() - 2.0131, 2)), kilograms(4));
        assertThat(touching.one().si()).isCloseTo(2.0131, Offset.offset(1e-4));
        // One that stays above by a millionth does not.
        Answer<Length, Mass> above =
                Answer.of(mm(0), mm(5000), at -> kilos(4.000004 + Math.pow(at.si() - 2.0131, 2)), kilograms(4));
        assertThat(above.found()).isEmpty();
        assertThat(above.least().orElseThrow().si()).isCloseTo(4.000004, Offset.offset(1e-9));
    }

    @Test
    void aLeapOverTheWantIsNoAnswer() {
        Answer<Length, Mass> answer =
                Answer.of(mm(0), mm(5000), at -> kilos(at.si() < 2.3 ? at.si() : at.si() + 1), kilograms(2.5));
        assertThat(answer.found()).isEmpty();
        assertThat(answer.jumps()).hasSize(1);
        assertThat(answer.jumps().get(0).at().si()).isCloseTo(2.3, Offset.offset(1e-12));
        assertThat(answer.jumps().get(0).before().si()).isCloseTo(2.3, Offset.offset(1e-12));
        assertThat(answer.jumps().get(0).after().si()).isCloseTo(3.3, Offset.offset(1e-12));
        assertThat(answer.notices()).extracting(Notice::code).containsExactly("whatif.jumps");
        assertThat(answer.toString())
                .isEqualTo(
                        "the mass goes at once, at 2300 mm from 2.3 kg to 3.3 kg; 2.5 kg lies between, and is not given"
                                + " exactly");
    }

    @Test
    void whereTheOutcomeStaysAtTheWantThatIsOneAnswer() {
        Answer<Length, Mass> answer =
                Answer.of(mm(0), mm(5000), at -> kilos(Math.floor(2 * at.si()) / 2), kilograms(2.5));
        assertThat(answer.one().si()).isBetween(2.5, 3.0);
    }

    @Test
    void aPartThatIsNotKnownIsToldAndTheRestIsSolved() {
        Answer<Length, Mass> answer = Answer.of(
                mm(0),
                mm(5000),
                at -> {
                    if (at.si() > 4) {
                        throw Refused.of("mould.small", "no mould is that large.");
                    }
                    return kilos(at.si());
                },
                kilograms(2.5));
        assertThat(answer.one().si()).isCloseTo(2.5, Offset.offset(1e-12));
        assertThat(answer.notices()).extracting(Notice::code).containsExactly("whatif.unknown-part");
        assertThat(answer.notices().get(0).text()).contains("no mould is that large");
        Answer<Length, Mass> never = Answer.of(
                mm(0),
                mm(5000),
                at -> {
                    throw Refused.of("mould.small", "no mould is that large.");
                },
                kilograms(2.5));
        assertThat(never).hasToString("from 0 mm to 5000 mm the mass is not known anywhere");
        assertThat(never.least()).isEmpty();
    }

    @Test
    void aRangeThatEndsWhereItBeginsIsRefused() {
        assertThatThrownBy(() -> Answer.of(mm(5), mm(5), at -> grams(1), grams(1)))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("has to end above where it begins");
    }
}
