package org.papermath.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.papermath.quantity.Amounts.hours;
import static org.papermath.quantity.Amounts.litres;
import static org.papermath.quantity.Amounts.mm;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.papermath.envelope.Envelope;
import org.papermath.envelope.EnvelopeAllowances;
import org.papermath.envelope.EnvelopeStyle;
import org.papermath.envelope.Line;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Basis;
import org.papermath.evidence.Scope;
import org.papermath.evidence.Source;
import org.papermath.fibre.Fibres;
import org.papermath.fibre.Furnish;
import org.papermath.mail.MailLimits;
import org.papermath.mould.Mould;
import org.papermath.order.Order;
import org.papermath.order.Piece;
import org.papermath.order.Recipe;
import org.papermath.order.Studio;
import org.papermath.quantity.Grammage;
import org.papermath.vat.Vat;

/**
 * Every style of envelope round every way a card is made: folded or flat, upright or lying, one or several inside, cut
 * with a gap or with the rim kept. What the inside and the blank have to be is worked out here from the fold lines.
 */
class EnvelopePlanTest {
    private static final Assumptions KNOWN = Assumptions.standard();
    private static final double CLEARANCE = 5;

    /** A card and its envelope. */
    record Case(EnvelopeStyle style, int folds, int inserts, boolean upright, Piece.Edge edge, int gap) {}

    static List<Case> cases() {
        List<Case> all = new ArrayList<>();
        for (EnvelopeStyle style : EnvelopeStyle.values()) {
            for (int folds = 0; folds < 3; folds++) {
                for (int inserts = 1; inserts < 4; inserts++) {
                    for (boolean upright : new boolean[] {false, true}) {
                        all.add(new Case(style, folds, inserts, upright, Piece.Edge.DECKLE, 0));
                        all.add(new Case(style, folds, inserts, upright, Piece.Edge.CUT, 0));
                        all.add(new Case(style, folds, inserts, upright, Piece.Edge.CUT, 4));
                    }
                }
            }
        }
        return all;
    }

    private static MakingPlan plan(Case one) {
        double width = one.upright ? 148 : 210;
        double height = one.upright ? 210 : 148;
        Piece.Builder card = Piece.of("card", 40, "rag")
                .size(mm(width), mm(height))
                .grammage(Grammage.gsm(160))
                .folds(one.folds);
        if (one.edge == Piece.Edge.DECKLE) {
            card.edge(Piece.Edge.DECKLE);
        } else if (one.gap > 0) {
            card.gap(mm(one.gap));
        }
        return MakingPlan.withoutBands(
                Order.of("any")
                        .recipe(Recipe.of("rag", Furnish.of(Fibres.COTTON_RAG))
                                .beating(hours(2))
                                .build())
                        .piece(card.build())
                        .piece(Piece.of("envelope", 30, "rag")
                                .grammage(Grammage.gsm(100))
                                .envelopeFor("card", one.style)
                                .inserts(one.inserts)
                                .clearance(mm(CLEARANCE))
                                .mailedIn(MailLimits.countries().get(0))
                                .build())
                        .build(),
                Studio.of("any")
                        .vat(Vat.of("vat", litres(120)))
                        .mould(Mould.of("big", mm(480), mm(640)))
                        .build());
    }

    /** The pocket lies between folds that are its inside and one thickness of paper apart, and the blank is drawn whole. */
    @ParameterizedTest
    @MethodSource("cases")
    void theBlankIsDrawnWithItsFolds(Case one) {
        EnvelopePlan envelope = plan(one).piece("envelope").envelope();
        double paper =
                (envelope.outsideWidth().in("mm") - envelope.insideWidth().in("mm")) / 2;
        assertThat(envelope.blank().width().in("mm"))
                .isCloseTo(envelope.blankWidth().in("mm"), within(1e-6));
        assertThat(envelope.blank().height().in("mm"))
                .isCloseTo(envelope.blankHeight().in("mm"), within(1e-6));
        List<Line> folds = envelope.folds();
        assertThat(folds).hasSize(4);
        assertThat(folds.subList(0, 3)).allMatch(line -> line.kind() == Line.Kind.FOLD);
        assertThat(folds.get(3).kind()).isEqualTo(Line.Kind.SCORE);
        double[] lengths =
                folds.stream().mapToDouble(EnvelopePlanTest::length).sorted().toArray();
        double wide = envelope.insideWidth().in("mm") + paper;
        double high = envelope.insideHeight().in("mm") + paper;
        assertThat(lengths[0]).isCloseTo(Math.min(wide, high), within(1e-6));
        assertThat(lengths[3]).isCloseTo(Math.max(wide, high), within(1e-6));
        assertThat(length(folds.get(3))).isCloseTo(wide, within(1e-6));
        String svg = envelope.drawing().svg();
        assertThat(svg.split("class=\"fold\"", -1)).hasSize(4);
        assertThat(svg.split("class=\"score\"", -1)).hasSize(2);
        assertThat(svg).contains("blank of envelope, " + one.style.words());
    }

    @Test
    void aSquareTooSmallForItsPocketIsDrawnWithoutFolds() {
        Case one = new Case(EnvelopeStyle.DIAMOND, 0, 1, false, Piece.Edge.CUT, 0);
        MakingPlan plan = plan(one);
        Order small = plan.order().toBuilder()
                .piece(plan.piece("envelope").piece().toBuilder()
                        .size(mm(180), mm(180))
                        .build())
                .build();
        EnvelopePlan envelope =
                MakingPlan.withoutBands(small, plan.studio()).piece("envelope").envelope();
        assertThat(envelope.folds()).isEmpty();
        assertThat(envelope.drawing().svg()).contains("180 mm", "too small for the folds");
    }

    private static double length(Line line) {
        return Math.hypot(
                line.to().across().in("mm") - line.from().across().in("mm"),
                line.to().along().in("mm") - line.from().along().in("mm"));
    }

    @ParameterizedTest
    @MethodSource("cases")
    void cardFitsItsEnvelope(Case one) {
        MakingPlan plan = plan(one);
        PiecePlan card = plan.piece("card");
        EnvelopePlan envelope = plan.piece("envelope").envelope();
        // Half of the long side, then half of what is then the long side.
        double longSide = one.folds == 0 ? 210 : one.folds == 1 ? 148 : 105;
        double shortSide = one.folds == 0 ? 148 : one.folds == 1 ? 105 : 74;
        double caliper = card.finished().caliper().likely().in("mm");
        double filling = one.inserts * Math.pow(2, one.folds) * caliper;
        double insideLong = longSide + filling + CLEARANCE;
        double insideShort = shortSide + filling + CLEARANCE;
        boolean atShortSide = one.style == EnvelopeStyle.OPEN_END;
        assertThat(envelope.insideWidth().in("mm")).isCloseTo(atShortSide ? insideShort : insideLong, within(0.1));
        assertThat(envelope.insideHeight().in("mm")).isCloseTo(atShortSide ? insideLong : insideShort, within(0.1));

        // A card kept with its rim comes out within the tenth of a millimetre the opening is made to.
        assertThat(envelope.playAlong().likely().in("mm")).isCloseTo(CLEARANCE, within(0.15));
        assertThat(envelope.playAcross().likely().in("mm")).isCloseTo(CLEARANCE, within(0.15));
        assertThat(envelope.sharePairsFit().si()).isGreaterThan(0.99);
        assertThat(plan.notices()).noneMatch(notice -> notice.code().equals("envelope.too-small"));
    }

    @ParameterizedTest
    @MethodSource("cases")
    void blankIsWhatItsFoldLinesMakeIt(Case one) {
        MakingPlan plan = plan(one);
        EnvelopePlan envelope = plan.piece("envelope").envelope();
        double paper = plan.piece("envelope").finished().caliper().likely().in("mm");
        Scope scope = Scope.of("envelope", "rag", "envelope");
        double side = 1000 * KNOWN.si("envelope.side-flap", scope);
        double seam = 1000 * KNOWN.si("envelope.seam", scope);
        double front = envelope.insideWidth().in("mm") + paper;
        double tall = envelope.insideHeight().in("mm") + paper;
        double shorter = Math.min(
                envelope.insideWidth().in("mm"), envelope.insideHeight().in("mm"));
        double flap = KNOWN.si("envelope.square-flap", scope) * (shorter + paper);
        double width = switch (one.style) {
            case SIDE_SEAM, WALLET -> side + front + side;
            case DIAMOND -> (front + tall) / Math.sqrt(2) + seam;
            case OPEN_END -> front + front + seam;
        };
        double height = switch (one.style) {
            case SIDE_SEAM, WALLET -> tall + tall + flap;
            case DIAMOND -> width;
            case OPEN_END -> side + tall + flap;
        };
        assertThat(envelope.blankWidth().in("mm")).isCloseTo(width, within(0.1));
        assertThat(envelope.blankHeight().in("mm")).isCloseTo(height, within(0.1));
        assertThat(envelope.outsideWidth().in("mm"))
                .isCloseTo(envelope.insideWidth().in("mm") + 2 * paper, within(0.02));
        assertThat(envelope.outsideHeight().in("mm"))
                .isCloseTo(envelope.insideHeight().in("mm") + 2 * paper, within(0.02));
    }

    /** Whoever draws the envelope of the same card and paper cuts the blank that was planned. */
    @ParameterizedTest
    @MethodSource("cases")
    void blankIsThatOfTheEnvelopeThatIsDrawn(Case one) {
        MakingPlan plan = plan(one);
        FinishedPiece card = plan.piece("card").finished();
        PiecePlan made = plan.piece("envelope");
        EnvelopePlan envelope = made.envelope();
        double longSide = one.folds == 0 ? 210 : one.folds == 1 ? 148 : 105;
        double shortSide = one.folds == 0 ? 148 : one.folds == 1 ? 105 : 74;
        Envelope drawn = Envelope.forCard(
                        one.style,
                        mm(longSide),
                        mm(shortSide),
                        mm(Math.pow(2, one.folds) * card.caliper().likely().in("mm")),
                        EnvelopeAllowances.from(KNOWN).withClearance(mm(CLEARANCE)))
                .inserts(one.inserts)
                .ofPaper(mm(made.finished().caliper().likely().in("mm")));
        double root = one.style == EnvelopeStyle.DIAMOND ? Math.sqrt(2) : 1;
        assertThat(envelope.blankWidth().in("mm"))
                .isCloseTo(drawn.blank().width().in("mm") / root, within(0.1));
        assertThat(envelope.blankHeight().in("mm"))
                .isCloseTo(drawn.blank().height().in("mm") / root, within(0.1));
        assertThat(made.finished().mass().likely().si()
                        / made.finished().grammage().likely().si())
                .isCloseTo(drawn.blank().area().si(), within(1e-4));
        assertThat(envelope.seam().in("mm")).isCloseTo(drawn.seamOverlap().in("mm"), within(1e-9));
    }

    @ParameterizedTest
    @MethodSource("cases")
    void mailWeighsAndMeasuresAllThatIsInIt(Case one) {
        MakingPlan plan = plan(one);
        PiecePlan card = plan.piece("card");
        PiecePlan envelope = plan.piece("envelope");
        MailPlan mailed = envelope.mail();
        assertThat(mailed.mass().likely().in("g"))
                .isCloseTo(
                        envelope.finished().mass().likely().in("g")
                                + one.inserts * card.finished().mass().likely().in("g"),
                        within(1e-9));
        double filling = one.inserts
                * Math.pow(2, one.folds)
                * card.finished().caliper().likely().in("mm");
        assertThat(mailed.thickness().likely().in("mm"))
                .isCloseTo(filling + 3 * envelope.finished().caliper().likely().in("mm"), within(1e-9));
    }

    @ParameterizedTest
    @MethodSource("cases")
    void piecesSeveralUpKeepTheirSizeWhereTheSheetIsLargeEnough(Case one) {
        PiecePlan card = plan(one).piece("card");
        double longSide = Math.max(
                card.finished().width().likely().in("mm"),
                card.finished().height().likely().in("mm"));
        double shortSide = Math.min(
                card.finished().width().likely().in("mm"),
                card.finished().height().likely().in("mm"));
        assertThat(longSide).isCloseTo(210, within(0.15));
        assertThat(shortSide).isCloseTo(148, within(0.15));
        assertThat(card.finished().width().likely().in("mm")
                        > card.finished().height().likely().in("mm"))
                .isEqualTo(!one.upright);
        if (one.edge == Piece.Edge.CUT) {
            assertThat(card.forming().perSheet()).isGreaterThan(1);
        }
        assertThat(card.counts().good().likely().si())
                .isGreaterThanOrEqualTo(card.counts().wanted() * 0.9999);
    }

    /** A sheet that shrinks more than was thought gives pieces less than ordered, by what is then left for each. */
    @ParameterizedTest
    @ValueSource(ints = {0, 4})
    void piecesSeveralUpAreShortWhereTheSheetIs(int gap) {
        Mould mould = Mould.of("tight", mm(220), mm(330));
        Order order = Order.of("any")
                .recipe(Recipe.of("rag", Furnish.of(Fibres.COTTON_RAG)).build())
                .piece(Piece.of("card", 40, "rag")
                        .size(mm(100), mm(210))
                        .trim(mm(0))
                        .gap(mm(gap))
                        .grammage(Grammage.gsm(160))
                        .build())
                .build();
        Studio planned = Studio.of("any")
                .mould(mould)
                .assumptions(KNOWN.given("making.shrinkage.measured-along", Scope.GENERAL, 1e-12)
                        .given("making.shrinkage.measured-across", Scope.GENERAL, 1e-12)
                        .given(
                                "shrinkage.measured-along",
                                Scope.of("rag"),
                                0.02,
                                0.001,
                                0.08,
                                Basis.MEASURED_HERE,
                                new Source("a test"))
                        .given(
                                "shrinkage.measured-across",
                                Scope.of("rag"),
                                0.02,
                                0.001,
                                0.08,
                                Basis.MEASURED_HERE,
                                new Source("a test")))
                .build();
        PiecePlan card = MakingPlan.of(order, planned).piece("card");
        assertThat(card.forming().perSheet()).isEqualTo(3);
        // Three times 100 mm and two gaps along 330 mm; 210 mm across 220 mm. At 8 % the sheet is 303.6 × 202.4 mm, and
        // a gap shrinks with it.
        double least = Math.min(100, (330 * 0.92 - 2 * gap * 0.92) / 3);
        assertThat(card.finished().width().low().in("mm")).isCloseTo(least, within(1e-9));
        assertThat(card.finished().height().low().in("mm")).isCloseTo(220 * 0.92, within(1e-9));
        assertThat(card.finished().height().likely().in("mm")).isEqualTo(210);
    }
}
