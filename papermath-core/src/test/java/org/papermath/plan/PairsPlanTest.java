package org.papermath.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.papermath.quantity.Amounts.hours;
import static org.papermath.quantity.Amounts.litres;
import static org.papermath.quantity.Amounts.mm;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.SplittableRandom;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.papermath.engine.Engine;
import org.papermath.engine.Mailing;
import org.papermath.engine.MakingEnvelopes;
import org.papermath.engine.PieceFigure;
import org.papermath.engine.Settings;
import org.papermath.envelope.EnvelopeStyle;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Estimate;
import org.papermath.evidence.Scope;
import org.papermath.fibre.Fibre;
import org.papermath.fibre.Fibres;
import org.papermath.fibre.Furnish;
import org.papermath.mail.MailLimits;
import org.papermath.mould.Mould;
import org.papermath.order.Order;
import org.papermath.order.Piece;
import org.papermath.order.Recipe;
import org.papermath.order.Studio;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Kinds;
import org.papermath.uncertainty.FigureBands;
import org.papermath.uncertainty.MonteCarloBands;
import org.papermath.vat.Vat;

/** A card and its envelope are two pieces that one shrinkage may move: bands and shares beside draws of the whole path. */
class PairsPlanTest {
    private static final Assumptions KNOWN = Assumptions.standard();
    private static final int DRAWS = 4000;
    private static final int CARD = 0;
    private static final int ENVELOPE = 1;
    private static final int INSERTS = 2;

    /** Nine in ten lie within so many deviations. */
    private static final double NINE_IN_TEN = 1.6448536269514722;

    private static Recipe stuff(String name, Fibre fibre, double beaten) {
        return Recipe.of(name, Furnish.of(fibre)).beating(hours(beaten)).build();
    }

    private static Studio studio() {
        return studio(KNOWN);
    }

    private static Studio studio(Assumptions known) {
        return Studio.of("any")
                .vat(Vat.of("vat", litres(120)))
                .mould(Mould.of("big", mm(640), mm(900)))
                .assumptions(known)
                .build();
    }

    // ---------------------------------------------------------------------------------- both move with one stuff

    private static Order matched(EnvelopeStyle style) {
        return Order.of("matched")
                .recipe(stuff("flax", Fibres.FLAX_RAW, 4))
                .piece(Piece.of("card", 40, "flax")
                        .size(mm(105), mm(148))
                        .grammage(Grammage.gsm(200))
                        .edge(Piece.Edge.DECKLE)
                        .build())
                .piece(Piece.of("envelope", 30, "flax")
                        .grammage(Grammage.gsm(100))
                        .envelopeFor("card", style)
                        .edge(Piece.Edge.SHAPED)
                        .clearance(mm(3))
                        .build())
                .build();
    }

    /**
     * The opening of the card and the panel of the envelope shrink by the same share: the play is a few millimetres, and
     * moves by that share of a few millimetres, while each of the two by itself moves by that share of its length.
     */
    @ParameterizedTest
    @EnumSource(EnvelopeStyle.class)
    void theBandOfAMatchedSetIsTheOneThatOneShrinkageLeavesIt(EnvelopeStyle style) {
        MakingPlan plan = MakingPlan.of(matched(style), studio());
        EnvelopePlan envelope = plan.piece("envelope").envelope();
        FinishedPiece card = plan.piece("card").finished();
        boolean upright = style == EnvelopeStyle.OPEN_END;
        check(
                envelope.playAlong(),
                upright ? card.width() : card.height(),
                envelope.insideWidthDried().orElseThrow());
        check(
                envelope.playAcross(),
                upright ? card.height() : card.width(),
                envelope.insideHeightDried().orElseThrow());
    }

    private static void check(Estimate<?> play, Estimate<?> card, Estimate<?> inside) {
        double apart = Math.hypot(width(card), width(inside));
        assertThat(width(card)).isGreaterThan(1e-3);
        assertThat(width(play)).isPositive().isLessThan(0.2 * apart);
    }

    private static double width(Estimate<?> estimate) {
        return estimate.high().si() - estimate.low().si();
    }

    // -------------------------------------------------------------------------------------- the share of pairs

    static Stream<Arguments> stuffs() {
        return Stream.of(Fibres.COTTON_RAG, Fibres.FLAX_RAW, Fibres.ABACA, Fibres.KOZO)
                .flatMap(fibre -> Stream.of(0.5, 2.0, 4.0, 8.0)
                        .flatMap(clearance -> Stream.of(EnvelopeStyle.SIDE_SEAM, EnvelopeStyle.OPEN_END)
                                .map(style -> Arguments.of(fibre, clearance, style))));
    }

    private static Order cut(Fibre fibre, double clearance, EnvelopeStyle style) {
        return Order.of("cut")
                .recipe(stuff("of card", fibre, 3))
                .recipe(stuff("of envelope", fibre == Fibres.ABACA ? Fibres.COTTON_RAG : Fibres.ABACA, 2))
                .piece(Piece.of("card", 40, "of card")
                        .size(mm(105), mm(148))
                        .grammage(Grammage.gsm(200))
                        .edge(Piece.Edge.DECKLE)
                        .build())
                .piece(Piece.of("envelope", 30, "of envelope")
                        .grammage(Grammage.gsm(100))
                        .envelopeFor("card", style)
                        .inserts(INSERTS)
                        .clearance(mm(clearance))
                        .build())
                .build();
    }

    /** What a piece came to in each draw of all assumptions, the figures of one draw at the same place. */
    private static double[][] drawn(Order order, PieceFigure... figures) {
        Engine engine = Engine.of(order, studio());
        Settings settings = engine.decide(engine.likely());
        FigureBands bands = MonteCarloBands.of(engine, settings, DRAWS, 17);
        return Arrays.stream(figures)
                .map(figure -> bands.draws(bands.likely().place(figure, ENVELOPE)))
                .toArray(double[][]::new);
    }

    private static double own(String id) {
        return KNOWN.si(id, Scope.of("envelope")) / NINE_IN_TEN;
    }

    @ParameterizedTest
    @MethodSource("stuffs")
    void theShareOfPairsThatFitIsTheOneOfManyDraws(Fibre fibre, double clearance, EnvelopeStyle style) {
        Order order = cut(fibre, clearance, style);
        double[][] plays = drawn(order, MakingEnvelopes.CLEAR_WIDTH, MakingEnvelopes.CLEAR_HEIGHT);
        SplittableRandom random = new SplittableRandom(5);
        double own = own("sheet.scatter-size");
        int each = 10;
        long fit = 0;
        for (int i = 0; i < DRAWS; i++) {
            for (int k = 0; k < each; k++) {
                // The card differs from its like, and the envelope from its like, in width and height each by itself.
                double along = plays[0][i] + own * (random.nextGaussian() - random.nextGaussian());
                double across = plays[1][i] + own * (random.nextGaussian() - random.nextGaussian());
                fit += along > 0 && across > 0 ? 1 : 0;
            }
        }
        double share = (double) fit / (DRAWS * each);
        // The plan has three hundred draws of its own, which leave three hundredths at worst.
        assertThat(MakingPlan.of(order, studio())
                        .piece("envelope")
                        .envelope()
                        .sharePairsFit()
                        .si())
                .isCloseTo(share, within(0.045));
    }

    // ------------------------------------------------------------------------------------------- the mail

    /** Letters near a step of the mass: how many go as the likely one does, over draws and what single sheets differ by. */
    @ParameterizedTest
    @CsvSource({"3, 280", "3, 300", "3, 320", "3, 340", "4, 220", "4, 240", "4, 260"})
    void theLettersThatGoAsTheLikelyOneAreThoseOfDraws(int inserts, double gsm) {
        Order order = Order.of("letters")
                .recipe(stuff("rag", Fibres.COTTON_RAG, 2))
                .piece(Piece.of("card", 60, "rag")
                        .size(mm(105), mm(148))
                        .grammage(Grammage.gsm(gsm))
                        .build())
                .piece(Piece.of("envelope", 20, "rag")
                        .grammage(Grammage.gsm(110))
                        .envelopeFor("card", EnvelopeStyle.SIDE_SEAM)
                        .inserts(inserts)
                        .mailedIn("Germany")
                        .build())
                .build();
        MailPlan mail = MakingPlan.of(order, studio()).piece("envelope").mail();
        EnvelopePlan envelope = MakingPlan.of(order, studio()).piece("envelope").envelope();
        double[][] drawn = drawn(order, Mailing.MAIL_MASS, Mailing.MAIL_THICKNESS);
        MailLimits limits = MailLimits.of("Germany");
        SplittableRandom random = new SplittableRandom(3);
        double own = Math.log1p(mail.mass().scatter().orElseThrow()) / NINE_IN_TEN;
        int alike = 0;
        for (int i = 0; i < DRAWS; i++) {
            MailLimits.Verdict there = limits.check(
                    envelope.outsideWidth(),
                    envelope.outsideHeight(),
                    Kinds.LENGTH.ofSi(drawn[1][i]),
                    Kinds.MASS.ofSi(drawn[0][i] * Math.exp(own * random.nextGaussian())),
                    LocalDate.EPOCH);
            alike += there.service().equals(mail.verdict().service())
                            && there.step().equals(mail.verdict().step())
                    ? 1
                    : 0;
        }
        // A step splits what is likely from what is above it; the middle of the draws lies a little above the likely
        // value.
        assertThat(mail.sameVerdict().si()).isCloseTo((double) alike / DRAWS, within(0.07));
    }
}
