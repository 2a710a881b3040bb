package org.papermath.sheet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.papermath.quantity.Amounts.celsius;
import static org.papermath.quantity.Amounts.mm;
import static org.papermath.testing.CheckValues.relative;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.papermath.air.Air;
import org.papermath.envelope.Envelope;
import org.papermath.envelope.EnvelopeAllowances;
import org.papermath.envelope.EnvelopeFit;
import org.papermath.envelope.EnvelopeStyle;
import org.papermath.evidence.Assumptions;
import org.papermath.fibre.Fibre;
import org.papermath.fibre.Fibres;
import org.papermath.fibre.Furnish;
import org.papermath.fibre.SorptionModel;
import org.papermath.mould.Mould;
import org.papermath.mould.Opening;
import org.papermath.quantity.Amount;
import org.papermath.quantity.LinearShrinkage;
import org.papermath.quantity.MoistureRatio;
import org.papermath.quantity.RelativeHumidity;
import org.papermath.quantity.Share;
import org.papermath.shape.MeasuredSize;
import org.papermath.shape.Outline;
import org.papermath.shape.Shrinkage;
import org.papermath.testing.Beaten;

/** A card dried under restraint in an envelope hung in the loft: each is formed for its own shrinkage. */
class CardAndEnvelopeTest {
    private static final Air ROOM = Air.of(celsius(20), RelativeHumidity.percent(55));
    private static final Amount<MoistureRatio> PRESSED = MoistureRatio.gramsPerGram(1.6);
    private static final EnvelopeAllowances ALLOWANCES = EnvelopeAllowances.from(Assumptions.standard());
    private static final Envelope ENVELOPE = Envelope.forCard(
                    EnvelopeStyle.DIAMOND, mm(170), mm(120), mm(0.55), ALLOWANCES)
            .ofPaper(mm(0.15));

    private static Shrinkage shrinkage(Fibre fibre, double beaten, Restraint restraint) {
        Furnish furnish = Furnish.of(fibre);
        return ShrinkageModel.standard(furnish)
                .along(
                        Beaten.hours(furnish, beaten),
                        DryingPath.from(PRESSED)
                                .then(restraint, SorptionModel.standard(furnish).ratio(ROOM)))
                .shrinkage();
    }

    /** The pocket where the deckle, not a template, says where to fold. */
    private static MeasuredSize pocket(Shrinkage formedFor, Shrinkage dried) {
        Opening folds = Mould.openingFor(ENVELOPE.insideWidth(), ENVELOPE.insideHeight(), formedFor);
        return MeasuredSize.dried(
                folds.width(), folds.height(), dried, LinearShrinkage.percent(0), LinearShrinkage.percent(0));
    }

    private static EnvelopeFit fit(MeasuredSize card, MeasuredSize pocket) {
        return EnvelopeFit.of(card, mm(0.55)).into(pocket);
    }

    @Test
    void eachIsFormedForItsOwnShrinkage() {
        Shrinkage light = shrinkage(Fibres.LINTER_SECOND_CUT, 1, Restraint.STACK);
        Shrinkage heavy = shrinkage(Fibres.ABACA, 6, Restraint.HUNG);
        assertThat(heavy.acrossFraction()).isGreaterThan(light.acrossFraction() + 0.05);

        Opening cardOpening = Mould.openingFor(mm(170), mm(120), light);
        Outline square = Mould.openingFor(ENVELOPE.sheet(), heavy);
        Outline dried = square.shrunkBy(heavy);
        assertThat(dried.width().si()).isCloseTo(ENVELOPE.sheet().width().si(), relative(0.2, 1e-12));
        assertThat(dried.height().si()).isCloseTo(ENVELOPE.sheet().height().si(), relative(0.2, 1e-12));

        MeasuredSize card = MeasuredSize.dried(
                cardOpening.width(),
                cardOpening.height(),
                light,
                LinearShrinkage.percent(0),
                LinearShrinkage.percent(0));
        EnvelopeFit own = fit(card, pocket(heavy, heavy));
        assertThat(own.fits()).isTrue();
        assertThat(own.playAcross().in("mm")).isCloseTo(ALLOWANCES.clearance().in("mm"), within(1e-9));
        assertThat(own.playAlong().in("mm")).isCloseTo(ALLOWANCES.clearance().in("mm"), within(1e-9));

        // Formed for the shrinkage of the card, the loft-dried pocket is too small for it, by how much is said.
        EnvelopeFit mistaken = fit(card, pocket(light, heavy));
        assertThat(mistaken.fits()).isFalse();
        double across = ENVELOPE.insideWidth().in("mm") * (1 - heavy.acrossFraction()) / (1 - light.acrossFraction());
        assertThat(mistaken.playAcross().in("mm")).isCloseTo(across - 170 - 0.55, within(1e-9));
        assertThat(mistaken.verdict()).startsWith("does not fit: ").contains("mm too wide");
        // Cut from that sheet, the square has lost more than the whole overlap of its seams.
        double lost = ENVELOPE.sheet().width().in("mm")
                - Mould.openingFor(ENVELOPE.sheet(), light)
                        .shrunkBy(heavy)
                        .width()
                        .in("mm");
        assertThat(lost).isGreaterThan(ENVELOPE.seamOverlap().in("mm"));
    }

    /** The same pulp for both is no way out: restraint alone makes the difference. */
    @Test
    void theSamePulpDriedInTwoWays() {
        for (Fibre fibre : new Fibre[] {Fibres.ABACA, Fibres.COTTON_RAG}) {
            Shrinkage held = shrinkage(fibre, 4, Restraint.STACK);
            Shrinkage hung = shrinkage(fibre, 4, Restraint.HUNG);
            assertThat(hung.areaFactor()).isLessThan(held.areaFactor());
            Outline one = Mould.openingFor(ENVELOPE.blank(), held);
            Outline other = Mould.openingFor(ENVELOPE.blank(), hung);
            assertThat(other.area().si()).isGreaterThan(one.area().si());
            double blank = ENVELOPE.blank().area().si();
            assertThat(other.shrunkBy(hung).area().si()).isCloseTo(blank, relative(blank, 1e-12));
        }
    }

    /** Sheet by sheet, the loft scatters more than the stack: the share that fits, against a seeded simulation. */
    @Test
    void theScatterOfBothShrinkagesGivesTheShareThatFits() {
        Shrinkage light = shrinkage(Fibres.LINTER_SECOND_CUT, 1, Restraint.STACK);
        Shrinkage heavy = shrinkage(Fibres.ABACA, 6, Restraint.HUNG);
        Opening cardOpening = Mould.openingFor(mm(170), mm(120), light);
        Opening folds = Mould.openingFor(ENVELOPE.insideWidth(), ENVELOPE.insideHeight(), heavy);
        MeasuredSize card = MeasuredSize.dried(
                cardOpening.width(),
                cardOpening.height(),
                light,
                LinearShrinkage.percent(0.3),
                LinearShrinkage.percent(0.3));
        MeasuredSize pocket = MeasuredSize.dried(
                folds.width(), folds.height(), heavy, LinearShrinkage.percent(1.5), LinearShrinkage.percent(1.5));
        EnvelopeFit fit = fit(card, pocket);
        double share = fit.share().si();
        assertThat(share).isBetween(0.9, 0.999);

        Random random = new Random(1126);
        int pairs = 200_000;
        int good = 0;
        for (int i = 0; i < pairs; i++) {
            double cw = cardOpening.width().in("mm") * (1 - light.acrossFraction() - 0.003 * random.nextGaussian());
            double ch = cardOpening.height().in("mm") * (1 - light.alongFraction() - 0.003 * random.nextGaussian());
            double pw = folds.width().in("mm") * (1 - heavy.acrossFraction() - 0.015 * random.nextGaussian());
            double ph = folds.height().in("mm") * (1 - heavy.alongFraction() - 0.015 * random.nextGaussian());
            good += pw - cw - 0.55 > 0 && ph - ch - 0.55 > 0 ? 1 : 0;
        }
        assertThat(share).isCloseTo((double) good / pairs, within(4 * Math.sqrt(share * (1 - share) / pairs)));
        assertThat(fit.clearanceFor(Share.percent(99)).si())
                .isGreaterThan(ALLOWANCES.clearance().si());
    }
}
