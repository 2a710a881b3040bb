package org.papermath.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.papermath.quantity.Amounts.celsius;
import static org.papermath.quantity.Amounts.grams;
import static org.papermath.quantity.Amounts.hours;
import static org.papermath.quantity.Amounts.kilonewtons;
import static org.papermath.quantity.Amounts.litres;
import static org.papermath.quantity.Amounts.mm;

import java.util.List;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.LongRange;
import org.papermath.air.Air;
import org.papermath.card.MakingCard;
import org.papermath.drying.Dryer;
import org.papermath.envelope.EnvelopeStyle;
import org.papermath.evidence.Estimate;
import org.papermath.fibre.Fibre;
import org.papermath.fibre.Fibres;
import org.papermath.fibre.Furnish;
import org.papermath.mould.Mould;
import org.papermath.order.Order;
import org.papermath.order.Piece;
import org.papermath.order.Recipe;
import org.papermath.order.Studio;
import org.papermath.press.Felts;
import org.papermath.press.Press;
import org.papermath.pulp.Additive;
import org.papermath.pulp.Beater;
import org.papermath.quantity.Dose;
import org.papermath.quantity.FibreConcentration;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.RelativeHumidity;
import org.papermath.quantity.Share;
import org.papermath.quantity.VolumeFlow;
import org.papermath.vat.Vat;

/** Whatever the order and whatever the studio lacks: every account closes and no figure is lost. */
class PlanBalancePropertyTest {
    private static Order order(Random random) {
        Order.Builder order = Order.of("any");
        int recipes = 1 + random.nextInt(2);
        for (int r = 0; r < recipes; r++) {
            List<Fibre> all = Fibres.all();
            Fibre one = all.get(random.nextInt(all.size()));
            Fibre other = all.get(random.nextInt(all.size()));
            int share = 5 + random.nextInt(90);
            Furnish furnish = one.equals(other)
                    ? Furnish.of(one)
                    : Furnish.of(Share.percent(share), one, Share.percent(100 - share), other);
            Recipe.Builder recipe = Recipe.of("r" + r, furnish).beating(hours(random.nextInt(9)));
            if (random.nextBoolean()) {
                recipe.additive(
                        Additive.of("pigment", Additive.Purpose.PIGMENT), Dose.percent(0.1 + 5 * random.nextDouble()));
            }
            if (random.nextBoolean()) {
                recipe.additive(
                        Additive.of("aid", Additive.Purpose.RETENTION_AID),
                        Dose.percent(0.05 + 0.2 * random.nextDouble()));
            }
            if (random.nextBoolean()) {
                recipe.additive(
                        Additive.of("size", Additive.Purpose.INTERNAL_SIZE).active(Share.percent(12)),
                        Dose.percent(0.3));
            }
            if (random.nextInt(3) == 0) {
                recipe.sizeBath(FibreConcentration.gramsPerLitre(20 + random.nextInt(30)));
            }
            order.recipe(recipe.build());
            for (int p = 0; p < 1 + random.nextInt(2); p++) {
                String name = "p" + r + p;
                Piece.Builder piece = Piece.of(name, 1 + random.nextInt(150), "r" + r)
                        .size(mm(40 + random.nextInt(260)), mm(40 + random.nextInt(260)));
                if (random.nextBoolean()) {
                    piece.edge(Piece.Edge.DECKLE);
                } else {
                    piece.trim(mm(random.nextInt(6))).gap(mm(random.nextInt(4)));
                }
                piece.grammage(Grammage.gsm(15 + random.nextInt(300)))
                        .folds(random.nextInt(3))
                        .trials(random.nextInt(8));
                order.piece(piece.build());
                if (random.nextInt(3) == 0) {
                    EnvelopeStyle[] styles = EnvelopeStyle.values();
                    order.piece(Piece.of("e" + r + p, 1 + random.nextInt(60), "r" + r)
                            .grammage(Grammage.gsm(60 + random.nextInt(80)))
                            .envelopeFor(name, styles[random.nextInt(styles.length)])
                            .build());
                }
            }
        }
        return order.build();
    }

    private static Studio studio(Random random) {
        Studio.Builder studio = Studio.of("any")
                .room(Air.of(celsius(12 + random.nextInt(16)), RelativeHumidity.percent(25 + random.nextInt(70))));
        if (random.nextInt(4) > 0) {
            studio.beater(Beater.of("beater", litres(10 + random.nextInt(60)), grams(200 + random.nextInt(1500))));
        }
        if (random.nextInt(4) > 0) {
            studio.vat(Vat.of("vat", litres(40 + random.nextInt(200))));
        }
        if (random.nextInt(4) > 0) {
            studio.mould(Mould.of("a", mm(200 + random.nextInt(300)), mm(200 + random.nextInt(400))));
        }
        if (random.nextInt(3) > 0) {
            studio.press(Press.of("press", kilonewtons(5 + random.nextInt(300)), mm(300), mm(400)));
        }
        if (random.nextInt(3) > 0) {
            studio.felts(Felts.of(mm(400), mm(500), Grammage.gsm(500), 2 + random.nextInt(40)));
        }
        switch (random.nextInt(5)) {
            case 0 -> studio.dryer(Dryer.boards("d", 1 + random.nextInt(50)));
            case 1 -> studio.dryer(Dryer.loft("d", 1 + random.nextInt(6), 100));
            case 2 -> studio.dryer(Dryer.blotters("d", 20));
            case 3 -> studio.dryer(Dryer.fanStack("d", VolumeFlow.cubicMetresPerHour(500 + random.nextInt(3000)), 40));
            default -> {
                // a studio without a dryer
            }
        }
        if (random.nextBoolean()) {
            studio.onHand(Fibres.COTTON_RAG, grams(1 + random.nextInt(600)));
        }
        return studio.build();
    }

    private static void sound(Estimate<?> estimate) {
        assertThat(estimate.low().si())
                .isFinite()
                .isLessThanOrEqualTo(estimate.likely().si());
        assertThat(estimate.high().si())
                .isFinite()
                .isGreaterThanOrEqualTo(estimate.likely().si());
    }

    @Property(tries = 300, seed = "7")
    void accountsCloseAndFiguresAreFinite(@ForAll @LongRange(min = 0, max = 1_000_000) long seed) {
        Random random = new Random(seed);
        MakingPlan plan = MakingPlan.of(order(random), studio(random));
        for (BatchPlan batch : plan.batches()) {
            for (Balance balance : batch.balances()) {
                double in = balance.totalIn().si();
                assertThat(balance.totalOut().si())
                        .as(balance::toString)
                        .isCloseTo(in, within(1e-9 * Math.max(in, 1e-6)));
                balance.in().values().forEach(mass -> assertThat(mass.si()).isFinite());
                balance.out().values().forEach(mass -> assertThat(mass.si()).isFinite());
            }
            sound(batch.keptInVat());
            sound(batch.stockPutBy());
            sound(batch.workingHours());
            sound(batch.drainability());
            sound(batch.waterRetention());
            sound(batch.freeShrinkage());
        }
        for (PiecePlan piece : plan.pieces()) {
            sound(piece.finished().grammage());
            sound(piece.finished().width());
            sound(piece.finished().height());
            sound(piece.finished().mass());
            sound(piece.counts().good());
            sound(piece.matThickness());
            sound(piece.couchedMass());
            sound(piece.solids());
            piece.drainTimeStage().optional().ifPresent(PlanBalancePropertyTest::sound);
            piece.dryingStage().optional().ifPresent(drying -> {
                sound(drying.time());
                sound(drying.water());
            });
            assertThat(piece.counts().good().likely().si())
                    .isGreaterThanOrEqualTo(piece.counts().wanted() * (1 - 1e-9));
        }
        assertThat(MakingCard.of(plan).toString())
                .doesNotContain("NaN")
                .doesNotContain("Infinity")
                .doesNotContain("null");
    }
}
