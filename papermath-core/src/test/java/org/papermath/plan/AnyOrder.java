package org.papermath.plan;

import static org.papermath.quantity.Amounts.celsius;
import static org.papermath.quantity.Amounts.grams;
import static org.papermath.quantity.Amounts.hours;
import static org.papermath.quantity.Amounts.kilograms;
import static org.papermath.quantity.Amounts.kilonewtons;
import static org.papermath.quantity.Amounts.litres;
import static org.papermath.quantity.Amounts.micrometres;
import static org.papermath.quantity.Amounts.millilitres;
import static org.papermath.quantity.Amounts.mm;
import static org.papermath.quantity.Amounts.seconds;

import java.time.LocalDate;
import java.util.List;
import java.util.Random;
import org.papermath.air.Air;
import org.papermath.drying.Dryer;
import org.papermath.drying.Ventilation;
import org.papermath.envelope.EnvelopeStyle;
import org.papermath.fibre.Fibre;
import org.papermath.fibre.Fibres;
import org.papermath.fibre.Furnish;
import org.papermath.mail.MailLimits;
import org.papermath.mould.Deckle;
import org.papermath.mould.Mould;
import org.papermath.order.Order;
import org.papermath.order.Piece;
import org.papermath.order.Recipe;
import org.papermath.order.Studio;
import org.papermath.press.Felts;
import org.papermath.press.Press;
import org.papermath.pulp.Additive;
import org.papermath.pulp.Beater;
import org.papermath.pulp.TimedSheet;
import org.papermath.quantity.Consistency;
import org.papermath.quantity.Dose;
import org.papermath.quantity.FibreConcentration;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.RelativeHumidity;
import org.papermath.quantity.SchopperRiegler;
import org.papermath.quantity.Share;
import org.papermath.quantity.VolumeFlow;
import org.papermath.vat.Vat;

/** Orders and studios drawn at random from a seed: plausible ones, and such as only a slip of the pen makes. */
final class AnyOrder {
    private final Random random;
    private final boolean extreme;

    private AnyOrder(long seed, boolean extreme) {
        this.random = new Random(seed);
        this.extreme = extreme;
    }

    /** An order and the studio it is to be made in. */
    record Job(Order order, Studio studio) {}

    static Job plausible(long seed) {
        return new AnyOrder(seed, false).job();
    }

    static Job extreme(long seed) {
        return new AnyOrder(seed, true).job();
    }

    private Job job() {
        Studio studio = studio();
        return new Job(order(studio), studio);
    }

    /** A value on a logarithmic scale; of an extreme order one decade further at either end. */
    private double between(double least, double most) {
        double from = extreme ? least / 10 : least;
        double to = extreme ? most * 10 : most;
        return from * Math.exp(random.nextDouble() * Math.log(to / from));
    }

    private double side(double least, double most) {
        return Math.max(5, Math.min(4000, between(least, most)));
    }

    private boolean chance(int in) {
        return random.nextInt(in) == 0;
    }

    private Furnish furnish() {
        List<Fibre> all = Fibres.all();
        Fibre one = all.get(random.nextInt(all.size()));
        Fibre other = all.get(random.nextInt(all.size()));
        int share = 1 + random.nextInt(99);
        return one.equals(other) || chance(2)
                ? Furnish.of(one)
                : Furnish.of(Share.percent(share), one, Share.percent(100 - share), other);
    }

    private Recipe recipe(String name) {
        Furnish furnish = furnish();
        Recipe.Builder recipe = Recipe.of(name, furnish);
        if (chance(5)) {
            recipe.drainability(SchopperRiegler.degrees(15 + random.nextInt(75)));
        } else if (chance(6)) {
            recipe.timedSheet(TimedSheet.of(
                    seconds(5 + random.nextInt(120)),
                    Grammage.gsm(20 + random.nextInt(200)),
                    Consistency.percent(0.2 + random.nextInt(6) / 10.0)));
        }
        if (chance(4)) {
            recipe.beating(furnish.fibres().get(0), hours(random.nextInt(9)));
        }
        recipe.beating(hours(Math.min(48, Math.max(0, Math.rint(10 * between(0.1, 9)) / 10 - 0.1))));
        if (chance(4)) {
            recipe.vatConsistency(Consistency.percent(Math.max(0.06, Math.min(1.2, between(0.2, 1.1)))));
        }
        if (chance(3)) {
            recipe.additive(
                    Additive.of("pigment", Additive.Purpose.PIGMENT),
                    Dose.percent(Math.max(0.02, Math.min(30, between(0.1, 9)))));
        }
        if (chance(3)) {
            recipe.additive(
                    Additive.of("aid", Additive.Purpose.RETENTION_AID), Dose.percent(0.05 + 0.2 * random.nextDouble()));
        }
        if (chance(3)) {
            recipe.additive(
                    Additive.of("chalk", Additive.Purpose.CARBONATE), Dose.percent(1 + 20 * random.nextDouble()));
        }
        if (chance(4)) {
            recipe.sizeBath(FibreConcentration.gramsPerLitre(20 + random.nextInt(30)));
        }
        return recipe.build();
    }

    private Order order(Studio studio) {
        Order.Builder order = Order.of("any order");
        if (chance(6)) {
            order.asListed();
        }
        if (!chance(4)) {
            order.due(LocalDate.of(2027, 1 + random.nextInt(12), 1 + random.nextInt(28)));
        }
        int recipes = 1 + random.nextInt(2);
        for (int r = 0; r < recipes; r++) {
            order.recipe(recipe("r" + r));
            for (int p = 0; p < 1 + random.nextInt(2); p++) {
                String name = "p" + r + p;
                order.piece(piece(name, "r" + r, studio));
                if (chance(3)) {
                    EnvelopeStyle[] styles = EnvelopeStyle.values();
                    Piece.Builder envelope = Piece.of("e" + r + p, 1 + random.nextInt(60), "r" + r)
                            .grammage(Grammage.gsm(60 + random.nextInt(80)))
                            .envelopeFor(name, styles[random.nextInt(styles.length)]);
                    if (chance(2)) {
                        envelope.mailedIn(MailLimits.countries()
                                .get(random.nextInt(MailLimits.countries().size())));
                    }
                    order.piece(envelope.build());
                }
            }
        }
        return order.build();
    }

    private Piece piece(String name, String recipe, Studio studio) {
        Piece.Builder piece =
                Piece.of(name, 1 + random.nextInt(200), recipe).size(mm(side(40, 700)), mm(side(40, 700)));
        if (chance(2)) {
            piece.edge(Piece.Edge.DECKLE);
        } else {
            piece.trim(mm(random.nextInt(6))).gap(mm(random.nextInt(4)));
        }
        switch (random.nextInt(8)) {
            case 0 -> piece.caliper(micrometres(Math.max(11, Math.min(4999, between(40, 600)))));
            case 1 -> {
                double mass = between(0.3, 5);
                // No thinner than a sheet of that weight can be.
                double thinnest = mass / (0.1 * 0.15) / 1.5;
                piece.sample(Piece.Sample.of(
                        mm(100), mm(150), grams(mass), micrometres(Math.max(thinnest, between(40, 600)))));
            }
            default -> piece.grammage(Grammage.gsm(Math.max(2, Math.min(1900, between(12, 500)))));
        }
        piece.folds(random.nextInt(3)).trials(random.nextInt(8)).kept(random.nextInt(3));
        if (!studio.dryers().isEmpty() && chance(2)) {
            piece.dryer(
                    studio.dryers().get(random.nextInt(studio.dryers().size())).name());
        }
        return piece.build();
    }

    private Studio studio() {
        Studio.Builder studio = Studio.of("any studio")
                .room(Air.of(celsius(8 + random.nextInt(25)), RelativeHumidity.percent(20 + random.nextInt(80))));
        if (!chance(4)) {
            studio.beater(Beater.of("beater", litres(between(10, 60)), grams(between(200, 1500))));
        }
        if (!chance(4)) {
            Vat vat = Vat.of("vat", litres(between(4, 400)));
            vat = chance(4) ? vat.withoutStrainer() : vat;
            studio.vat(
                    chance(3)
                            ? vat.runDownTo(litres(vat.workingVolume().in("L") * (0.2 + 0.7 * random.nextDouble())))
                            : vat);
        }
        for (int m = 0; m < random.nextInt(4); m++) {
            Deckle deckle = Deckle.of(mm(side(80, 800)), mm(side(80, 800)));
            studio.mould(Mould.of("m" + m, chance(2) ? deckle.deep(mm(5 + random.nextInt(60))) : deckle)
                    .inTurn(1 + random.nextInt(3)));
        }
        if (!chance(3)) {
            studio.press(Press.of("press", kilonewtons(between(5, 300)), mm(300), mm(400))
                    .pressings(1 + random.nextInt(3)));
        }
        if (!chance(3)) {
            studio.felts(Felts.of(
                    mm(200 + random.nextInt(500)),
                    mm(300 + random.nextInt(500)),
                    Grammage.gsm(500),
                    2 + random.nextInt(60)));
        }
        switch (random.nextInt(6)) {
            case 0 -> {
                Dryer.Boards boards = Dryer.boards("d", 1 + random.nextInt(50));
                studio.dryer(
                        chance(3)
                                ? boards.inLayers(mm(150 + random.nextInt(750)), mm(200 + random.nextInt(1000)))
                                : boards);
            }
            case 1 -> studio.dryer(Dryer.loft("d", 1 + random.nextInt(6), 100));
            case 2 -> studio.dryer(Dryer.blotters("d", 20));
            case 3 -> {
                Dryer.FanStack stack = chance(4)
                        ? Dryer.stack("d", 40)
                        : Dryer.fanStack("d", VolumeFlow.cubicMetresPerHour(between(100, 3000)), 40);
                stack = chance(3) ? stack.under(kilograms(between(1, 200))) : stack;
                studio.dryer(
                        chance(3)
                                ? stack.inLayers(mm(150 + random.nextInt(750)), mm(200 + random.nextInt(1000)))
                                : stack);
            }
            case 4 -> studio.dryer(Dryer.boards("d", 10)).dryer(Dryer.loft("l", 2, 60));
            default -> {
                // a studio without a dryer
            }
        }
        if (chance(4)) {
            studio.ventilation(Ventilation.of(
                    Kinds.VOLUME.ofSi(between(15, 200), "m3"), Kinds.RATE.ofSi(between(0.3, 8) / 3600, "1/h")));
        }
        if (chance(2)) {
            studio.onHand(Fibres.COTTON_RAG, grams(1 + random.nextInt(600)));
        }
        if (chance(2)) {
            double[] steps = {0.1, 1, 5, 10, 50};
            studio.scaleStep(grams(steps[random.nextInt(extreme ? 5 : 3)]));
            double[] jugs = {1, 5, 10, 50, 100, 500, 1000, 10_000};
            studio.jugStep(millilitres(jugs[random.nextInt(extreme ? 8 : 6)]));
        }
        return studio.build();
    }
}
