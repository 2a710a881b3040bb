package org.papermath.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;
import static org.papermath.quantity.Amounts.celsius;
import static org.papermath.quantity.Amounts.hours;
import static org.papermath.quantity.Amounts.kilonewtons;
import static org.papermath.quantity.Amounts.litres;
import static org.papermath.quantity.Amounts.mm;

import java.util.List;
import java.util.Map;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.papermath.air.Air;
import org.papermath.drying.Dryer;
import org.papermath.envelope.Envelope;
import org.papermath.envelope.EnvelopeStyle;
import org.papermath.envelope.Line;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Estimate;
import org.papermath.evidence.Scope;
import org.papermath.fibre.Fibres;
import org.papermath.fibre.Furnish;
import org.papermath.mould.Deckle;
import org.papermath.mould.Mould;
import org.papermath.order.Order;
import org.papermath.order.Piece;
import org.papermath.order.Recipe;
import org.papermath.order.Studio;
import org.papermath.press.Felts;
import org.papermath.press.Press;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;
import org.papermath.quantity.RelativeHumidity;
import org.papermath.quantity.Share;
import org.papermath.shape.Outline;
import org.papermath.shape.Shrinkage;
import org.papermath.vat.Vat;

/** Pieces formed in deckles cut to their outline. */
class ShapedPieceTest {
    /** A tag with its corners cut off at one end: 50 × 90 mm less two triangles of 12 × 12 mm. */
    private static final Outline TAG = Outline.of(at(0, 0), at(50, 0), at(50, 78), at(38, 90), at(12, 90), at(0, 78));

    private static final double TAG_AREA = (50 * 90 - 12 * 12) * 1e-6;

    private static Outline.Point at(double across, double along) {
        return Outline.Point.of(mm(across), mm(along));
    }

    private static Studio.Builder bare() {
        return Studio.of("by the weir")
                .room(Air.of(celsius(20), RelativeHumidity.percent(50)))
                .vat(Vat.of("vat", litres(60)))
                .press(Press.of("press", kilonewtons(80), mm(400), mm(500)))
                .felts(Felts.of(mm(380), mm(480), Grammage.gsm(500), 40))
                .dryer(Dryer.loft("loft", 2, 200))
                .assumptions(Assumptions.standard().given("shrinkage.direction-difference", Scope.GENERAL, 0.015));
    }

    private static Studio with(Mould... moulds) {
        Studio.Builder studio = bare();
        for (Mould mould : moulds) {
            studio.mould(mould);
        }
        return studio.build();
    }

    /** A bench at which a card takes as long as a small sheet, so that only dips count. */
    private static Studio evenly(Mould mould) {
        return bare().assumptions(Assumptions.standard().given("labour.sheet-time", Scope.of("card"), 100))
                .mould(mould)
                .build();
    }

    private static Piece.Builder piece(int count) {
        return Piece.of("tag", count, "rag").grammage(Grammage.gsm(220)).trials(2);
    }

    private static MakingPlan plan(Studio studio, Piece... pieces) {
        Order.Builder order = Order.of("any")
                .recipe(Recipe.of("rag", Furnish.of(Fibres.COTTON_RAG))
                        .beating(hours(3))
                        .build());
        for (Piece piece : pieces) {
            order.piece(piece);
        }
        return MakingPlan.of(order.build(), studio);
    }

    private static ShapedDeckle shaped(PiecePlan piece) {
        return piece.forming().shapedDeckle().orElseThrow();
    }

    @Test
    void aRoundComesBackAsItWasOrdered() {
        for (double diameter : new double[] {25, 80, 210}) {
            PiecePlan piece = plan(
                            with(Mould.of("wide", mm(300), mm(400))),
                            piece(10).formedTo(Outline.round(mm(diameter))).build())
                    .piece("tag");
            assertThat(piece.finished().width().likely().in("mm")).isCloseTo(diameter, within(1e-9 * diameter));
            assertThat(piece.finished().height().likely().in("mm")).isCloseTo(diameter, within(1e-9 * diameter));
            Outline finished = shaped(piece).finished();
            assertThat(finished.area().si()).isCloseTo(Math.PI * diameter * diameter / 4e6, within(1e-7 * diameter));
            assertThat(shaped(piece).outline().width().in("mm")).isGreaterThan(diameter);
        }
    }

    @Test
    void wetOutlineIsTheFinishedOneBeforeTheTwoShrinkages() {
        PiecePlan piece = plan(
                        with(Mould.of("small", mm(80), mm(120))),
                        piece(10).formedTo(TAG).build())
                .piece("tag");
        FinishedPiece finished = piece.finished();
        Outline wet = Mould.openingFor(
                TAG,
                Shrinkage.across(finished.shrinkageAcross().likely())
                        .along(finished.shrinkageAlong().likely()));
        List<Outline.Point> planned = shaped(piece).outline().corners();
        assertThat(planned).hasSameSizeAs(wet.corners());
        for (int i = 0; i < planned.size(); i++) {
            assertThat(planned.get(i).across().si())
                    .isCloseTo(wet.corners().get(i).across().si(), within(1e-10));
            assertThat(planned.get(i).along().si())
                    .isCloseTo(wet.corners().get(i).along().si(), within(1e-10));
        }
        assertThat(shaped(piece).area().si()).isCloseTo(wet.area().si(), within(1e-12));
        assertThat(finished.shrinkageAcross().likely().si())
                .isNotEqualTo(finished.shrinkageAlong().likely().si());
    }

    @Test
    void fibreDrainAndMassFollowTheAreaOfTheOutline() {
        Studio studio = with(Mould.of("small", mm(60), mm(100)));
        PiecePlan tag = plan(studio, piece(40).formedTo(TAG).build()).piece("tag");
        PiecePlan whole = plan(
                        studio,
                        piece(40).formedTo(Outline.rectangle(mm(50), mm(90))).build())
                .piece("tag");
        double share = TAG_AREA / 4500e-6;
        assertThat(tag.forming().perSheet()).isEqualTo(1);
        assertThat(tag.forming().fibre().si() / whole.forming().fibre().si()).isCloseTo(share, within(1e-9));
        assertThat(tag.forming().solids().si() / whole.forming().solids().si()).isCloseTo(share, within(1e-9));
        assertThat(shaped(tag).area().si() / shaped(whole).area().si()).isCloseTo(share, within(1e-9));
        assertThat(tag.finished().mass().likely().si())
                .isCloseTo(tag.finished().grammage().likely().si() * TAG_AREA, within(1e-9));
        // What lies on the wire is as thick, so it drains as long; vats are charged in steps of the jug.
        assertThat(tag.couchedMass().likely().si()
                        / whole.couchedMass().likely().si())
                .isCloseTo(share, within(0.02));
        assertThat(tag.drainTime().likely().si() / whole.drainTime().likely().si())
                .isCloseTo(1, within(0.05));
        assertThat(tag.matThickness().likely().si()
                        / whole.matThickness().likely().si())
                .isCloseTo(1, within(0.02));
        assertThat(tag.press().pressure().si())
                .isCloseTo(
                        whole.press().pressure().si(),
                        within(0.2 * whole.press().pressure().si()));
    }

    @Test
    void severalLieOnAMouldWithAStripBetween() {
        PiecePlan piece = plan(
                        evenly(Mould.of("wide", mm(300), mm(400))),
                        piece(60).formedTo(TAG).gap(mm(12)).build())
                .piece("tag");
        ShapedDeckle deckle = shaped(piece);
        double across = deckle.outline().width().in("mm");
        double along = deckle.outline().height().in("mm");
        assertThat(deckle.strip().in("mm")).isEqualTo(12);
        assertThat(deckle.across() * deckle.along())
                .isEqualTo(piece.forming().perSheet())
                .isEqualTo(4 * 3);
        assertThat(piece.forming().opening().width().in("mm"))
                .isCloseTo(deckle.across() * across + (deckle.across() - 1) * 12, within(1e-9))
                .isLessThanOrEqualTo(300);
        assertThat(piece.forming().opening().height().in("mm"))
                .isCloseTo(deckle.along() * along + (deckle.along() - 1) * 12, within(1e-9))
                .isLessThanOrEqualTo(400);
        assertThat(deckle.area().si()).isCloseTo(12 * deckle.outline().area().si(), within(1e-12));
        assertThat(piece.finished().width().likely().in("mm")).isCloseTo(50, within(1e-9));
        assertThat(piece.finished().height().likely().in("mm")).isCloseTo(90, within(1e-9));
        assertThat(piece.forming().mould()).isPresent();
        assertThat(piece.forming().deckleToMake()).isTrue();
        assertThat(piece.counts().good().likely().si())
                .isGreaterThanOrEqualTo(piece.counts().wanted() - 1e-6);
    }

    @Test
    void aDeckleHasNoMoreOpeningsThanThereArePieces() {
        PiecePlan piece = plan(
                        with(Mould.of("wide", mm(300), mm(400))),
                        piece(2).spare(Share.percent(0)).formedTo(TAG).build())
                .piece("tag");
        assertThat(piece.forming().perSheet()).isLessThanOrEqualTo(4);
    }

    @Test
    void nothingIsTrimmedAndAccountsClose() {
        MakingPlan plan = plan(
                with(Mould.of("wide", mm(300), mm(400))),
                piece(60).formedTo(TAG).build(),
                Piece.of("envelope", 20, "rag")
                        .grammage(Grammage.gsm(90))
                        .envelopeFor("tag", EnvelopeStyle.SIDE_SEAM)
                        .edge(Piece.Edge.SHAPED)
                        .build());
        for (Balance balance : plan.batches().get(0).balances()) {
            double in = balance.totalIn().si();
            assertThat(balance.totalOut().si()).isCloseTo(in, within(1e-9 * in));
            assertThat(balance.out().entrySet())
                    .filteredOn(out -> out.getKey().contains("trim"))
                    .extracting(Map.Entry::getValue)
                    .allSatisfy(mass -> assertThat(mass.si()).isZero());
        }
    }

    @Test
    void anOutlineLargerThanEveryMouldNeedsAMouldToBeMade() {
        MakingPlan plan = plan(
                with(Mould.of("small", mm(60), mm(80))), piece(10).formedTo(TAG).build());
        assertThat(plan.piece("tag").forming().mould()).isEmpty();
        assertThat(plan.piece("tag").forming().deckleToMake()).isTrue();
        assertThat(plan.notices()).anySatisfy(notice -> {
            assertThat(notice.code()).isEqualTo("mould.none-large-enough");
            assertThat(notice.text()).contains("one opening of 51.4");
        });
        MakingPlan other = plan(
                with(Mould.of("small", mm(60), mm(80)), Mould.of("lying", mm(140), mm(70))),
                piece(10).formedTo(TAG).build());
        assertThat(other.piece("tag").forming().mould().orElseThrow().name()).isEqualTo("lying");
        assertThat(other.notices()).anyMatch(notice -> notice.code().equals("deckle.to-make"));
    }

    @Test
    void anOwnedDeckleOfTheOutlineIsTaken() {
        Mould plain = Mould.of("wide", mm(300), mm(400));
        Piece tags = piece(60).formedTo(TAG).build();
        Outline wet = shaped(plan(with(plain), tags).piece("tag")).outline();
        Mould owned = Mould.of("tags", Deckle.shaped(wet.turned(), 2, 3, mm(9)));
        PiecePlan piece = plan(with(plain, owned), tags).piece("tag");
        assertThat(piece.forming().mould().orElseThrow().name()).isEqualTo("tags");
        assertThat(piece.forming().deckleToMake()).isFalse();
        assertThat(piece.forming().perSheet()).isEqualTo(6);
        assertThat(piece.finished().width().likely().in("mm")).isCloseTo(50, within(0.5));
        assertThat(piece.finished().height().likely().in("mm")).isCloseTo(90, within(0.9));

        Outline otherWay = Outline.of(
                at(0, 0),
                at(wet.width().in("mm"), 0),
                at(wet.width().in("mm"), 60),
                at(10, wet.height().in("mm")),
                at(0, wet.height().in("mm")));
        for (Outline useless :
                List.of(wet.shrunkBy(Shrinkage.linear(Kinds.NUMBER.of(2, "%"))), wet.boundingBox(), otherWay)) {
            PiecePlan made = plan(with(plain, Mould.of("other", Deckle.shaped(useless))), tags)
                    .piece("tag");
            assertThat(made.forming().mould().orElseThrow().name()).isEqualTo("wide");
            assertThat(made.forming().deckleToMake()).isTrue();
        }
    }

    @Test
    void anOwnedDeckleMayBeALittleOff() {
        Piece tags = piece(60).formedTo(TAG).build();
        Outline wet = shaped(
                        plan(with(Mould.of("wide", mm(300), mm(400))), tags).piece("tag"))
                .outline();
        Mould owned = Mould.of("tags", Deckle.shaped(wet.shrunkBy(Shrinkage.linear(Kinds.NUMBER.of(0.4, "%")))));
        PiecePlan piece = plan(with(owned), tags).piece("tag");
        assertThat(piece.forming().deckleToMake()).isFalse();
        assertThat(piece.finished().width().likely().in("mm")).isCloseTo(50 * 0.996, within(1e-6));
        assertThat(shaped(piece).finished().area().si()).isCloseTo(TAG_AREA * 0.996 * 0.996, within(1e-9));
    }

    @Test
    void sheetsWithFourSidesAreNotFormedInShapedDeckles() {
        Mould owned = Mould.of("tags", Deckle.shaped(Outline.round(mm(300))));
        PiecePlan piece =
                plan(with(owned), piece(10).size(mm(100), mm(120)).build()).piece("tag");
        assertThat(piece.forming().mould()).isEmpty();
        assertThat(piece.forming().shapedDeckle()).isEmpty();
    }

    private static MakingPlan enveloped(EnvelopeStyle style, Piece.Edge card, Piece.Edge envelope) {
        return plan(
                with(Mould.of("wide", mm(340), mm(440))),
                Piece.of("card", 30, "rag")
                        .size(mm(105), mm(148))
                        .grammage(Grammage.gsm(240))
                        .edge(card)
                        .build(),
                Piece.of("envelope", 30, "rag")
                        .grammage(Grammage.gsm(100))
                        .envelopeFor("card", style)
                        .edge(envelope)
                        .build());
    }

    private static double width(Estimate<?> estimate) {
        return estimate.high().si() - estimate.low().si();
    }

    @ParameterizedTest
    @EnumSource(EnvelopeStyle.class)
    void theInsideOfAFormedEnvelopeShrinksWithItsSheet(EnvelopeStyle style) {
        MakingPlan same = enveloped(style, Piece.Edge.DECKLE, Piece.Edge.SHAPED);
        EnvelopePlan envelope = same.piece("envelope").envelope();
        Estimate<?> inside = envelope.insideWidthDried().orElseThrow();
        assertThat(inside.likely().si()).isCloseTo(envelope.insideWidth().si(), within(1e-9));
        assertThat(envelope.insideHeightDried().orElseThrow().likely().si())
                .isCloseTo(envelope.insideHeight().si(), within(1e-9));
        // More shrinkage than likely makes it smaller, in the proportion of the sheet.
        FinishedPiece finished = same.piece("envelope").finished();
        double share = finished.width().low().si() / finished.width().likely().si();
        assertThat(inside.low().si() / inside.likely().si()).isCloseTo(share, within(5e-3));
        assertThat(inside.low().si()).isLessThan(inside.likely().si() * 0.999);

        assertThat(enveloped(style, Piece.Edge.DECKLE, Piece.Edge.CUT)
                        .piece("envelope")
                        .envelope()
                        .insideWidthDried())
                .isEmpty();
    }

    @ParameterizedTest
    @EnumSource(EnvelopeStyle.class)
    void cardAndEnvelopeOfOneStuffShrinkTogether(EnvelopeStyle style) {
        MakingPlan together = enveloped(style, Piece.Edge.DECKLE, Piece.Edge.SHAPED);
        MakingPlan cutCard = enveloped(style, Piece.Edge.CUT, Piece.Edge.SHAPED);
        MakingPlan cutEnvelope = enveloped(style, Piece.Edge.DECKLE, Piece.Edge.CUT);
        EnvelopePlan both = together.piece("envelope").envelope();
        // The stuff shrinks both; of an open end the blank lies across the way of its card.
        assertThat(width(both.playAlong()))
                .isLessThan(0.6 * width(cutEnvelope.piece("envelope").envelope().playAlong()))
                .isLessThan(0.6 * width(cutCard.piece("envelope").envelope().playAlong()));
        double clearance = Assumptions.standard().si("envelope.clearance", Scope.of("envelope", "rag", "envelope"));
        assertThat(both.playAlong().low().si()).isPositive();
        assertThat(both.playAcross().low().si()).isPositive();
        assertThat(both.playAlong().likely().si()).isCloseTo(clearance, within(0.3e-3));
        assertThat(both.playAcross().likely().si()).isCloseTo(clearance, within(0.3e-3));
    }

    @ParameterizedTest
    @EnumSource(EnvelopeStyle.class)
    void theOutlineFormedIsTheBlank(EnvelopeStyle style) {
        MakingPlan plan = enveloped(style, Piece.Edge.DECKLE, Piece.Edge.SHAPED);
        PiecePlan piece = plan.piece("envelope");
        EnvelopePlan envelope = piece.envelope();
        FinishedPiece card = plan.piece("card").finished();
        double paper =
                (envelope.outsideWidth().in("mm") - envelope.insideWidth().in("mm")) / 2;
        Envelope blank = Envelope.forCard(
                        style, mm(148), mm(105), card.caliper().likely(), Assumptions.standard())
                .ofPaper(mm(paper));
        ShapedDeckle deckle = shaped(piece);
        assertThat(deckle.finished().area().si()).isCloseTo(blank.blank().area().si(), within(1e-6));
        assertThat(piece.finished().mass().likely().si())
                .isCloseTo(
                        piece.finished().grammage().likely().si()
                                * deckle.finished().area().si(),
                        within(1e-12));
        assertThat(deckle.folds()).hasSize(4);
        assertThat(deckle.folds().get(3).kind()).isEqualTo(Line.Kind.SCORE);
        List<Double> lengths =
                deckle.folds().stream().map(ShapedPieceTest::length).sorted().toList();
        List<Double> drawn = blank.scoreLines().stream()
                .map(ShapedPieceTest::length)
                .sorted()
                .toList();
        for (int i = 0; i < 4; i++) {
            assertThat(lengths.get(i)).isCloseTo(drawn.get(i), within(2e-4));
        }
        for (Line fold : deckle.folds()) {
            assertThat(deckle.finished()
                                    .contains(fold.from().across(), fold.from().along())
                            || nearEdge(deckle.finished(), fold.from()))
                    .isTrue();
        }
    }

    private static boolean nearEdge(Outline outline, Outline.Point point) {
        return outline.enlarged(mm(0.001))
                .contains(mm(point.across().in("mm") + 0.001), mm(point.along().in("mm") + 0.001));
    }

    private static double length(Line line) {
        return Math.hypot(
                line.to().across().si() - line.from().across().si(),
                line.to().along().si() - line.from().along().si());
    }

    @Test
    void anEnvelopeTakesADeckleThatIsKept() {
        Piece card = Piece.of("card", 30, "rag")
                .size(mm(105), mm(148))
                .grammage(Grammage.gsm(240))
                .edge(Piece.Edge.DECKLE)
                .build();
        Piece wallet = Piece.of("envelope", 30, "rag")
                .grammage(Grammage.gsm(100))
                .envelopeFor("card", EnvelopeStyle.WALLET)
                .edge(Piece.Edge.SHAPED)
                .build();
        // So narrow that the blank lies along it, as it will lie in the deckle that is kept.
        Mould narrow = Mould.of("narrow", mm(230), mm(440));
        PiecePlan made = plan(with(narrow), card, wallet).piece("envelope");
        Outline small = shaped(made).outline().shrunkBy(Shrinkage.linear(Kinds.NUMBER.of(0.3, "%")));
        PiecePlan piece = plan(with(narrow, Mould.of("blanks", Deckle.shaped(small))), card, wallet)
                .piece("envelope");
        assertThat(made.forming().deckleToMake()).isTrue();
        assertThat(piece.forming().mould().orElseThrow().name()).isEqualTo("blanks");
        assertThat(piece.forming().deckleToMake()).isFalse();
        // The deckle is a little small, and so is what comes out of it: panels in proportion, the paper as thick.
        EnvelopePlan envelope = piece.envelope();
        double paper = (envelope.outsideWidth().si() - envelope.insideWidth().si()) / 2;
        double panel = envelope.insideWidth().si() + paper;
        assertThat(envelope.insideWidthDried().orElseThrow().likely().si())
                .isCloseTo(panel * 0.997 - paper, within(1e-9));
        assertThat(envelope.playAlong().likely().si())
                .isCloseTo(made.envelope().playAlong().likely().si() - 0.003 * panel, within(1e-5));
    }

    /** Twelve tags of one dip are twelve to part from the felts, to hang and to sort. */
    @Test
    void handsCountPiecesOnceTheyAreOffTheMould() {
        Piece tags = piece(60).formedTo(TAG).gap(mm(12)).build();
        PiecePlan several =
                plan(evenly(Mould.of("wide", mm(300), mm(400))), tags).piece("tag");
        PiecePlan single =
                plan(evenly(Mould.of("small", mm(60), mm(100))), tags).piece("tag");
        assertThat(several.forming().perSheet()).isEqualTo(12);
        assertThat(single.forming().perSheet()).isEqualTo(1);
        double away = several.workingHours().likely().si()
                - several.timeAtVat().likely().si();
        double awaySingle = single.workingHours().likely().si()
                - single.timeAtVat().likely().si();
        assertThat(several.counts().sheets() * 12)
                .isGreaterThanOrEqualTo(single.counts().sheets());
        assertThat(away).isGreaterThan(0.8 * awaySingle);
        assertThat(several.timeAtVat().likely().si())
                .isLessThan(single.timeAtVat().likely().si());
    }

    /**
     * More dips at the pace of a card take hands less time than fewer at that of a small sheet, as among plain moulds; but
     * not where a single mould drains longer than that.
     */
    @Test
    void openingsAreAsManyAsSaveHands() {
        Mould wide = Mould.of("wide", mm(300), mm(400));
        Piece tags = piece(60).formedTo(TAG).gap(mm(12)).build();
        FormingPlan forming = plan(with(wide.inTurn(3)), tags).piece("tag").forming();
        assertThat(forming.perSheet()).isEqualTo(6);
        assertThat(forming.shapedDeckle().orElseThrow().area().si()).isLessThan(0.03);
        assertThat(forming.otherMould().orElseThrow())
                .matches("wide with 12 openings: [0-9.]+ h more at the vat, [0-9.]+ % (more|less) fibre");
        PiecePlan waits = plan(with(wide), tags).piece("tag");
        assertThat(waits.drainTime().likely().in("s")).isGreaterThan(40);
        assertThat(waits.forming().perSheet()).isEqualTo(12);
        assertThat(waits.forming().otherMould().orElseThrow()).startsWith("wide with 6 openings: ");
        assertThat(plan(evenly(wide.inTurn(3)), tags).piece("tag").forming().perSheet())
                .isEqualTo(12);
    }

    /** Of deckles that are kept the one with more openings saves dips, unless so many make a slower sheet. */
    @Test
    void keptDecklesAreChosenByHands() {
        Outline wet = shaped(plan(
                                with(Mould.of("plain", mm(300), mm(400))),
                                piece(60).formedTo(TAG).build())
                        .piece("tag"))
                .outline();
        Mould pair = Mould.of("pair", Deckle.shaped(wet, 2, 1, mm(10))).inTurn(3);
        Mould six = Mould.of("six", Deckle.shaped(wet, 3, 2, mm(10))).inTurn(3);
        Mould nine = Mould.of("nine", Deckle.shaped(wet, 3, 3, mm(10))).inTurn(3);
        FormingPlan forming = plan(
                        with(pair, nine, six), piece(60).formedTo(TAG).build())
                .piece("tag")
                .forming();
        assertThat(forming.mould().orElseThrow().name()).isEqualTo("six");
        assertThat(forming.otherMould().orElseThrow())
                .matches("nine with 9 openings: [0-9.]+ h more at the vat, [0-9.]+ % (more|less) fibre");
        Studio even = bare().assumptions(Assumptions.standard().given("labour.sheet-time", Scope.of("card"), 100))
                .mould(pair)
                .mould(six)
                .mould(nine)
                .build();
        assertThat(plan(even, piece(60).formedTo(TAG).build())
                        .piece("tag")
                        .forming()
                        .mould()
                        .orElseThrow()
                        .name())
                .isEqualTo("nine");
    }

    @Test
    void whatClashesIsRefused() {
        assertThat(refused(() -> piece(1).formedTo(TAG).edge(Piece.Edge.CUT).build()))
                .contains("edge");
        assertThat(refused(() -> piece(1).formedTo(TAG).trim(mm(2)).build())).contains("trim");
        assertThat(refused(() ->
                        piece(1).size(mm(50), mm(90)).edge(Piece.Edge.SHAPED).build()))
                .contains("edge");
        assertThat(refused(() -> piece(1).formedTo(TAG)
                        .envelopeFor("card", EnvelopeStyle.DIAMOND)
                        .build()))
                .contains("outline");
        assertThat(catchThrowableOfType(
                                Refused.class, () -> piece(1).formedTo(TAG).size(mm(50), mm(90)))
                        .code())
                .isEqualTo("builder.twice");
        assertThat(catchThrowableOfType(Refused.class, () -> piece(1).formedTo(Outline.round(mm(4))))
                        .code())
                .isEqualTo("quantity.range");
        assertThat(piece(1).formedTo(TAG).build().toBuilder()
                        .size(mm(50), mm(90))
                        .build())
                .isEqualTo(piece(1).size(mm(50), mm(90)).build());
        assertThat(piece(1).formedTo(TAG).build().toBuilder().count(1).build())
                .isEqualTo(piece(1).formedTo(TAG).build());
    }

    private static String refused(ThrowingCallable making) {
        Refused refused = catchThrowableOfType(Refused.class, making);
        assertThat(refused.code()).isEqualTo("piece.clash");
        return String.valueOf(refused.arguments().get("member"));
    }
}
