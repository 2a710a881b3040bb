package org.papermath.mould;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.papermath.quantity.Amounts.inches;
import static org.papermath.quantity.Amounts.mm;
import static org.papermath.quantity.Amounts.percent;
import static org.papermath.testing.CheckValues.relative;

import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;
import org.junit.jupiter.api.Test;
import org.papermath.envelope.Envelope;
import org.papermath.envelope.EnvelopeAllowances;
import org.papermath.envelope.EnvelopeStyle;
import org.papermath.evidence.Assumptions;
import org.papermath.format.Formats;
import org.papermath.quantity.Refused;
import org.papermath.shape.Outline;
import org.papermath.shape.Shrinkage;

class MouldTest {
    private static final Shrinkage NONE = Shrinkage.NONE;

    @Test
    void openingForAFormat() {
        Opening opening =
                Mould.openingFor(Formats.ISO_A5, Shrinkage.across(percent(6)).along(percent(8)));
        assertThat(opening.width().in("mm")).isCloseTo(148 / 0.94, within(1e-9));
        assertThat(opening.height().in("mm")).isCloseTo(210 / 0.92, within(1e-9));
        assertThat(opening.area().in("mm2")).isCloseTo(148 / 0.94 * 210 / 0.92, within(1e-6));
    }

    /** 120 by 170 mm, 3 mm off each side, shrinkage 3.5 and 5.0 %: 130.6 by 185.3 mm. */
    @Test
    void openingWithTrim() {
        Opening opening = Mould.openingFor(
                mm(120), mm(170), Shrinkage.across(percent(3.5)).along(percent(5.0)), mm(6), mm(6));
        assertThat(opening.width().in("mm")).isCloseTo(130.6, within(0.05));
        assertThat(opening.height().in("mm")).isCloseTo(185.3, within(0.05));
        Opening deckleSides = Mould.openingFor(
                mm(120), mm(170), Shrinkage.across(percent(3.5)).along(percent(5.0)), mm(0), mm(6));
        assertThat(deckleSides.width().in("mm")).isCloseTo(120 / 0.965, within(1e-9));
    }

    /** 120 by 170 mm cards and a 230 mm square, 2.5 % both ways: 123.1 by 174.4 and 235.9 mm. */
    @Test
    void openingsOfAnOrder() {
        Shrinkage restrained = Shrinkage.linear(percent(2.5));
        Opening card = Mould.openingFor(mm(120), mm(170), restrained);
        assertThat(card.width().in("mm")).isCloseTo(123.1, within(0.05));
        assertThat(card.height().in("mm")).isCloseTo(174.4, within(0.05));
        assertThat(Mould.openingFor(mm(230), mm(230), restrained).width().in("mm"))
                .isCloseTo(235.9, within(0.05));
    }

    /**
     * The card is dried under restraint, the envelope in the loft: each opening by its own shrinkage, and the card
     * fits.
     */
    @Test
    void cardAndEnvelopeShrinkDifferently() {
        Shrinkage restrained = Shrinkage.across(percent(1.2)).along(percent(1.1));
        Shrinkage loft = Shrinkage.across(percent(7.6)).along(percent(9.1));
        EnvelopeAllowances allowances = EnvelopeAllowances.of(mm(6.35), mm(17), mm(12), percent(45), percent(60));
        Envelope envelope = Envelope.forCard(EnvelopeStyle.DIAMOND, mm(170), mm(120), mm(0.5), allowances);
        Outline square = Mould.openingFor(envelope.sheet(), loft);
        assertThat(square.width().si() * (1 - 0.076))
                .isCloseTo(envelope.sheet().width().si(), within(1e-12));
        assertThat(square.height().si() * (1 - 0.091))
                .isCloseTo(envelope.sheet().height().si(), within(1e-12));
        // Formed for the wrong shrinkage the square comes out too small for its overlap by far more than the seam.
        double wrong = Mould.openingFor(envelope.sheet(), restrained)
                .shrunkBy(loft)
                .height()
                .in("mm");
        assertThat(envelope.sheet().height().in("mm") - wrong).isGreaterThan(12);
        // A deckle of the shape of the blank, before the same shrinkage, gives the blank.
        Outline formed = Mould.openingFor(envelope.blank(), loft);
        assertThat(formed.shrunkBy(loft).area().si())
                .isCloseTo(
                        envelope.blank().area().si(),
                        relative(envelope.blank().area().si(), 1e-12));
    }

    @Test
    void splitDeckle() {
        Deckle deckle = Deckle.of(mm(300), mm(420)).split(2, 3, mm(10));
        assertThat(deckle.count()).isEqualTo(6);
        assertThat(deckle.opening().width().in("mm")).isCloseTo(145, within(1e-9));
        assertThat(deckle.opening().height().in("mm")).isCloseTo(400 / 3.0, within(1e-9));
        assertThat(deckle).hasToString("deckle 300 mm × 420 mm, split 2 × 3 by strips of 10 mm");
        assertThatThrownBy(() -> Deckle.of(mm(30), mm(42)).split(4, 1, mm(10))).isInstanceOf(Refused.class);
        assertThatThrownBy(() -> Deckle.of(mm(30), mm(42)).split(0, 1, mm(1))).isInstanceOf(Refused.class);
    }

    @Test
    void piecesUpOnAnOwnedMould() {
        Mould mould = Mould.of("harbour", inches(12), inches(18));
        FormingLayout layout = FormingLayout.on(
                mould, mm(105), mm(148), Shrinkage.across(percent(3)).along(percent(5)), mm(0), mm(12));
        // 304.8 by 457.2 mm; pieces of 108.2 by 155.8 upright: 2 by 2; turned 152.6 by 110.5: 1 by 3.
        assertThat(layout.count()).isEqualTo(4);
        assertThat(layout.turned()).isFalse();
        assertThat(layout.opening().width().in("mm")).isCloseTo(105 / 0.97, within(1e-9));
        assertThat(layout.opening().height().in("mm")).isCloseTo(148 / 0.95, within(1e-9));
        assertThat(layout.deckle().width().in("mm")).isCloseTo(2 * 105 / 0.97 + 12, within(1e-9));
        assertThat(layout.deckle().opening().height().si())
                .isCloseTo(layout.opening().height().si(), within(1e-12));
        assertThat(layout.used().in("%")).isCloseTo(100 * 4 * 105 / 0.97 * 148 / 0.95 / (304.8 * 457.2), within(1e-9));
        assertThat(layout.settlingArea().in("mm2")).isCloseTo((304.8 - 12) * (457.2 - 12), within(1e-6));
        assertThat(layout.mould()).contains(mould);
        String svg = layout.drawing("cards").svg();
        assertThat(svg).contains("304.8 mm").contains(">4<");
        assertThat(svg.split("<polygon ", -1)).hasSize(1 + 1 + 4);
        // Opening, strip, opening: 108.2, 12, 108.2 mm, and 155.8, 12, 155.8 mm.
        assertThat(svg.split(">108.2<", -1)).hasSize(3);
        assertThat(svg.split(">155.8<", -1)).hasSize(3);
        assertThat(svg.split(">12<", -1)).hasSize(3);
    }

    /** A turned piece swaps its sides, but the shrinkage stays with the mould. */
    @Test
    void shrinkageStaysWithTheMould() {
        Mould mould = Mould.of("long", mm(320), mm(118));
        FormingLayout layout = FormingLayout.on(
                mould, mm(105), mm(148), Shrinkage.across(percent(2)).along(percent(10)), mm(0), mm(5));
        assertThat(layout.turned()).isTrue();
        assertThat(layout.count()).isEqualTo(2);
        assertThat(layout.opening().width().in("mm")).isCloseTo(148 / 0.98, within(1e-9));
        assertThat(layout.opening().height().in("mm")).isCloseTo(105 / 0.90, within(1e-9));
    }

    @Test
    void aSplitDeckleKeepsItsOpenings() {
        Mould mould = Mould.of("pair", Deckle.of(mm(330), mm(220)).split(2, 1, mm(10)));
        FormingLayout fits = FormingLayout.on(mould, mm(148), mm(210), Shrinkage.linear(percent(2)), mm(0), mm(3));
        assertThat(fits.count()).isEqualTo(2);
        assertThat(fits.strip().in("mm")).isCloseTo(10, within(1e-9));
        assertThat(fits.settlingArea().in("mm2")).isCloseTo(320 * 220, within(1e-6));
        FormingLayout turned = FormingLayout.on(mould, mm(210), mm(148), Shrinkage.linear(percent(2)), mm(0), mm(3));
        assertThat(turned.count()).isEqualTo(2);
        assertThat(turned.turned()).isTrue();
        // Two small cards would go into one opening by area; a split deckle forms one sheet in each.
        assertThat(FormingLayout.on(mould, mm(70), mm(100), NONE, mm(0), mm(3)).count())
                .isEqualTo(2);
        assertThat(FormingLayout.on(mould, mm(170), mm(230), NONE, mm(0), mm(3)).count())
                .isZero();
        assertThat(fits.drawing("pair").svg()).contains("<polygon");
    }

    @Test
    void theBestOfSeveralMouldsOrOneToBeMade() {
        Mould small = Mould.of("small", mm(160), mm(220));
        Mould large = Mould.of("large", mm(340), mm(240));
        Mould huge = Mould.of("huge", mm(400), mm(260));
        FormingLayout best = FormingLayout.best(List.of(huge, large, small), mm(148), mm(210), NONE, mm(4), mm(10), 20);
        // Ten sheets of two cost hands half of what twenty of one do; the smaller of the two that take two saves fibre.
        assertThat(best.mould()).contains(large);
        // Cards are quick: twenty of them from a small mould are sooner made than ten pairs from a large one.
        Mould card = Mould.of("card", mm(140), mm(180));
        assertThat(FormingLayout.best(List.of(large, card), mm(120), mm(160), NONE, mm(4), mm(10), 20)
                        .mould())
                .contains(card);
        Mould narrow = Mould.of("narrow", mm(190), mm(240));
        FormingLayout many =
                FormingLayout.best(List.of(huge, large, narrow), mm(148), mm(210), NONE, mm(4), mm(10), 20);
        assertThat(many.count()).isEqualTo(2);
        assertThat(many.mould()).contains(large);
        // A single one does not need the mould for two.
        assertThat(FormingLayout.best(List.of(huge, large, narrow), mm(148), mm(210), NONE, mm(4), mm(10), 1)
                        .mould())
                .contains(narrow);
        assertThatThrownBy(() -> FormingLayout.best(List.of(small), mm(148), mm(210), NONE, mm(4), mm(10), 0))
                .isInstanceOf(Refused.class)
                .hasMessage("layout: 0 pieces to form given; must be 1 or more.");
        FormingLayout none =
                FormingLayout.best(List.of(small), mm(300), mm(420), Shrinkage.linear(percent(4)), mm(0), mm(10), 5);
        assertThat(none.mould()).isEmpty();
        assertThat(none.count()).isEqualTo(1);
        assertThat(none.deckle().width().in("mm")).isCloseTo(300 / 0.96, within(1e-9));
        FormingLayout three = FormingLayout.toBeMade(mm(100), mm(140), NONE, mm(0), 3, 1, mm(8));
        assertThat(three.deckle().width().in("mm")).isCloseTo(316, within(1e-9));
        assertThat(three.deckle().count()).isEqualTo(3);
        assertThat(three)
                .hasToString("3 at a time on a deckle to be made (3 × 1), each in an opening of 100 mm ×" + " 140 mm");
        FormingLayout nothing = FormingLayout.on(small, mm(300), mm(420), NONE, mm(0), mm(0));
        assertThat(nothing.count()).isZero();
        assertThatThrownBy(nothing::deckle).isInstanceOf(Refused.class).hasMessageContaining("does not fit");
    }

    @Test
    void impossibleOnesAreRefused() {
        assertThatThrownBy(() -> Mould.of(" ", mm(1), mm(1))).isInstanceOf(Refused.class);
        assertThatThrownBy(() -> Mould.of("x", mm(0), mm(1))).isInstanceOf(Refused.class);
        assertThatThrownBy(() -> Mould.openingFor(mm(0), mm(1), NONE)).isInstanceOf(Refused.class);
        assertThatThrownBy(() -> FormingLayout.toBeMade(mm(1), mm(1), NONE, mm(0), 0, 1, mm(0)))
                .isInstanceOf(Refused.class);
    }

    @Property(tries = 300, seed = "2026")
    void whatIsFormedShrinksToWhatIsWanted(
            @ForAll @Scale(3) @DoubleRange(min = 20, max = 800) double w,
            @ForAll @Scale(3) @DoubleRange(min = 20, max = 800) double h,
            @ForAll @Scale(4) @DoubleRange(min = -5, max = 30) double along,
            @ForAll @Scale(4) @DoubleRange(min = -5, max = 30) double across) {
        Shrinkage shrinkage = Shrinkage.across(percent(across)).along(percent(along));
        Opening opening = Mould.openingFor(mm(w), mm(h), shrinkage);
        Outline dry = opening.outline().shrunkBy(shrinkage);
        assertThat(dry.width().in("mm")).isCloseTo(w, relative(w, 1e-14));
        assertThat(dry.height().in("mm")).isCloseTo(h, relative(h, 1e-14));
        Mould made = Mould.of("made", opening.width(), opening.height());
        assertThat(FormingLayout.on(made, mm(w), mm(h), shrinkage, mm(0), mm(5)).count())
                .isEqualTo(1);
    }

    @Test
    void aDeckleHasOpeningsOfAnOutline() {
        Outline round = Outline.round(mm(80));
        Deckle one = Deckle.shaped(round);
        assertThat(one.count()).isEqualTo(1);
        assertThat(one.outline()).contains(round);
        assertThat(one.width().in("mm")).isCloseTo(80, within(1e-9));
        assertThat(one.toString()).contains("one opening of outline of 360 corners");
        Deckle six = Deckle.shaped(round, 2, 3, mm(10)).deep(mm(20));
        assertThat(six.count()).isEqualTo(6);
        assertThat(six.width().in("mm")).isCloseTo(170, within(1e-9));
        assertThat(six.height().in("mm")).isCloseTo(260, within(1e-9));
        assertThat(six.opening().width().in("mm")).isCloseTo(80, within(1e-9));
        assertThat(six.opening().height().in("mm")).isCloseTo(80, within(1e-9));
        assertThat(six.outline()).contains(round);
        assertThat(six)
                .isEqualTo(Deckle.shaped(Outline.round(mm(80)), 2, 3, mm(10)).deep(mm(20)))
                .isNotEqualTo(Deckle.of(mm(170), mm(260)).split(2, 3, mm(10)).deep(mm(20)));
        assertThat(Deckle.of(mm(170), mm(260)).outline()).isEmpty();
        assertThatThrownBy(() -> one.split(2, 1, mm(3)))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("is not split");
        assertThatThrownBy(() -> Deckle.shaped(Outline.round(mm(900)), 6, 1, mm(0)))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("all deckle openings across");
    }

    /** A deckle for the blanks of an envelope: what dries in it is the blank. */
    @Test
    void aDeckleForEnvelopesIsMadeFromStyleAndSize() {
        Shrinkage shrinkage = Shrinkage.across(percent(3)).along(percent(4));
        Envelope envelope = Envelope.forCard(
                EnvelopeStyle.WALLET, mm(148), mm(105), mm(0.4), EnvelopeAllowances.from(Assumptions.standard()));
        Deckle deckle = Deckle.shaped(Mould.openingFor(envelope.blank(), shrinkage));
        Outline dried = deckle.outline().orElseThrow().shrunkBy(shrinkage);
        assertThat(dried.area().si()).isCloseTo(envelope.blank().area().si(), within(1e-12));
        assertThat(deckle.height().in("mm")).isCloseTo(envelope.blank().height().in("mm") / 0.96, within(1e-9));
        assertThat(deckle.width().in("mm")).isCloseTo(envelope.blank().width().in("mm") / 0.97, within(1e-9));
    }
}
