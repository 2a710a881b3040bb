package org.papermath.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.papermath.quantity.Amounts.grams;
import static org.papermath.quantity.Amounts.hours;
import static org.papermath.quantity.Amounts.kilonewtons;
import static org.papermath.quantity.Amounts.litres;
import static org.papermath.quantity.Amounts.mm;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.LongRange;
import org.papermath.card.MakingCard;
import org.papermath.drying.Dryer;
import org.papermath.envelope.EnvelopeStyle;
import org.papermath.fibre.Fibre;
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
import org.papermath.pulp.Beater;
import org.papermath.quantity.Grammage;
import org.papermath.shape.Outline;
import org.papermath.vat.Vat;

/** Whatever convex outline a piece has, it is formed in as much area as dries to it, and every account closes. */
class ShapedPiecePropertyTest {
    /** Corners on an ellipse, in order round it. */
    private static Outline convex(Random random) {
        int corners = 3 + random.nextInt(9);
        double[] angles = random.doubles(corners, 0, 2 * Math.PI).sorted().toArray();
        for (int i = 0; i < corners; i++) {
            angles[i] = 0.3 * angles[i] + 0.7 * 2 * Math.PI * i / corners;
        }
        double wide = 20 + 150 * random.nextDouble();
        double high = 20 + 150 * random.nextDouble();
        List<Outline.Point> points = Arrays.stream(angles)
                .mapToObj(angle -> Outline.Point.of(mm(wide * (1 + Math.cos(angle))), mm(high * (1 + Math.sin(angle)))))
                .toList();
        return Outline.of(new ArrayList<>(points));
    }

    private static Studio studio(Random random) {
        Studio.Builder studio = Studio.of("any");
        if (random.nextInt(3) > 0) {
            studio.beater(Beater.of("beater", litres(30), grams(900)));
        }
        if (random.nextInt(3) > 0) {
            studio.vat(Vat.of("vat", litres(40 + random.nextInt(100))));
        }
        for (int m = 0; m < random.nextInt(3); m++) {
            studio.mould(Mould.of("m" + m, mm(100 + random.nextInt(400)), mm(100 + random.nextInt(400))));
        }
        if (random.nextInt(3) == 0) {
            studio.mould(Mould.of("rounds", Deckle.shaped(Outline.round(mm(60)), 2, 2, mm(8))));
        }
        if (random.nextInt(3) > 0) {
            studio.press(Press.of("press", kilonewtons(20 + random.nextInt(200)), mm(300), mm(400)));
        }
        if (random.nextInt(3) > 0) {
            studio.felts(Felts.of(mm(300), mm(450), Grammage.gsm(500), 30));
        }
        if (random.nextInt(4) > 0) {
            studio.dryer(random.nextBoolean() ? Dryer.loft("d", 2, 100) : Dryer.boards("d", 60));
        }
        return studio.build();
    }

    @Property(tries = 200, seed = "11")
    void outlinesComeBackAndAccountsClose(@ForAll @LongRange(min = 0, max = 1_000_000) long seed) {
        Random random = new Random(seed);
        Outline outline = convex(random);
        Fibre fibre = List.of(Fibres.COTTON_RAG, Fibres.ABACA, Fibres.LINEN_RAG).get(random.nextInt(3));
        MakingPlan plan = MakingPlan.of(
                Order.of("any")
                        .recipe(Recipe.of("r", Furnish.of(fibre))
                                .beating(hours(random.nextInt(6)))
                                .build())
                        .piece(Piece.of("p", 1 + random.nextInt(120), "r")
                                .formedTo(outline)
                                .grammage(Grammage.gsm(60 + random.nextInt(240)))
                                .build())
                        .piece(Piece.of("e", 1 + random.nextInt(60), "r")
                                .envelopeFor("p", EnvelopeStyle.values()[random.nextInt(4)])
                                .edge(Piece.Edge.SHAPED)
                                .grammage(Grammage.gsm(60 + random.nextInt(80)))
                                .build())
                        .build(),
                studio(random));
        for (Balance balance : plan.batches().get(0).balances()) {
            double in = balance.totalIn().si();
            assertThat(balance.totalOut().si()).isCloseTo(in, within(1e-9 * Math.max(in, 1e-6)));
        }
        for (PiecePlan piece : plan.pieces()) {
            FinishedPiece finished = piece.finished();
            ShapedDeckle deckle = piece.forming().shapedDeckle().orElseThrow();
            double dried = (1 - finished.shrinkageAlong().likely().si())
                    * (1 - finished.shrinkageAcross().likely().si());
            double area = deckle.finished().area().si();
            assertThat(deckle.outline().area().si() * dried).isCloseTo(area, within(1e-9 * area));
            assertThat(deckle.area().si())
                    .isCloseTo(
                            deckle.across()
                                    * deckle.along()
                                    * deckle.outline().area().si(),
                            within(1e-9 * area));
            assertThat(piece.forming().perSheet()).isEqualTo(deckle.across() * deckle.along());
            // Opening over all and the area of the openings agree, and lie on the mould.
            assertThat(deckle.area().si())
                    .isLessThanOrEqualTo(piece.forming().opening().area().si() * (1 + 1e-9));
            piece.forming().mould().ifPresent(mould -> {
                double most = Math.max(
                        mould.deckle().width().si(), mould.deckle().height().si());
                double least = Math.min(
                        mould.deckle().width().si(), mould.deckle().height().si());
                assertThat(piece.forming().opening().height().si()).isLessThanOrEqualTo(most * (1 + 1e-9));
                assertThat(piece.forming().opening().width().si()).isLessThanOrEqualTo(least * (1 + 1e-9));
            });
            assertThat(finished.mass().likely().si())
                    .isCloseTo(finished.grammage().likely().si() * area, within(1e-9));
            assertThat(piece.counts().good().likely().si())
                    .isGreaterThanOrEqualTo(piece.counts().wanted() * (1 - 1e-9));
        }
        PiecePlan piece = plan.piece("p");
        if (piece.forming().deckleToMake() && plan.studio().press().isPresent()) {
            assertThat(piece.finished().width().likely().si())
                    .isCloseTo(outline.width().si(), within(1e-6));
            assertThat(piece.finished().height().likely().si())
                    .isCloseTo(outline.height().si(), within(1e-6));
        }
        assertThat(MakingCard.of(plan).toString()).doesNotContain("NaN").doesNotContain("null");
    }
}
