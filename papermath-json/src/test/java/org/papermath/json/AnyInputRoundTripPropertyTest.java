package org.papermath.json;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import javax.measure.Quantity;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.papermath.air.Air;
import org.papermath.drying.Dryer;
import org.papermath.drying.Ventilation;
import org.papermath.envelope.EnvelopeStyle;
import org.papermath.fibre.Fibre;
import org.papermath.fibre.Fibres;
import org.papermath.fibre.Furnish;
import org.papermath.format.Format;
import org.papermath.format.FormatSystem;
import org.papermath.format.Formats;
import org.papermath.mail.MailLimits;
import org.papermath.mould.Deckle;
import org.papermath.mould.Mould;
import org.papermath.order.Order;
import org.papermath.order.Piece;
import org.papermath.order.Recipe;
import org.papermath.order.Studio;
import org.papermath.press.Felts;
import org.papermath.press.Lever;
import org.papermath.press.Press;
import org.papermath.press.RamGauge;
import org.papermath.press.Screw;
import org.papermath.pulp.Additive;
import org.papermath.pulp.Beater;
import org.papermath.pulp.TimedSheet;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Amounts;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Limits;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Share;
import org.papermath.shape.Outline;
import org.papermath.vat.Vat;

/** Whatever the builders take is written and reads back equal; the ends of every bound come up often. */
class AnyInputRoundTripPropertyTest {
    /** Blanks around, signs of many scripts, joiners, halves, controls: what a keyboard or a clipboard gives. */
    private static final String[] NAMES = {
        "plain",
        " blank ",
        "smørrebrød",
        "紙",
        "a \"b\" \\c/",
        "x-own",
        "می\u200Cخواهم",
        "👩\u200D🎨",
        "a\u202Eb",
        "a\u200Bb",
        "half\uD800",
        "bell\u0007",
        "l".repeat(200),
        "l".repeat(201),
        "a@b",
        " ",
        "\u00A0nbsp",
        "e\u0301",
        "\u2028"
    };

    /** Draws one thing after another; a value stands at an end of its bound as often as not. */
    private static final class Draw {
        private final Random random;
        private final boolean strange;

        Draw(long seed, boolean strange) {
            this.random = new Random(seed);
            this.strange = strange;
        }

        boolean maybe() {
            return random.nextBoolean();
        }

        int count(Limits.Count limits) {
            return switch (random.nextInt(4)) {
                case 0 -> limits.least();
                case 1 -> limits.most();
                default -> limits.least() + random.nextInt(Math.min(40, limits.most() - limits.least() + 1));
            };
        }

        <Q extends Quantity<Q>> Amount<Q> amount(Limits.Range<Q> limits) {
            switch (random.nextInt(4)) {
                case 0:
                    return limits.least();
                case 1:
                    return limits.most();
                default:
                    double least = limits.least().si();
                    double si = least > 0
                            ? least * Math.pow(limits.most().si() / least, random.nextDouble())
                            : limits.most().si() * random.nextDouble();
                    List<String> units = limits.kind().codes();
                    return limits.kind().ofSi(si, units.get(random.nextInt(units.size())));
            }
        }

        <T> T of(List<T> all) {
            return all.get(random.nextInt(all.size()));
        }

        String name(String otherwise) {
            return strange && random.nextInt(12) == 0 ? NAMES[random.nextInt(NAMES.length)] : otherwise;
        }

        LocalDate day() {
            return switch (random.nextInt(3)) {
                case 0 -> Limits.FIRST_DAY;
                case 1 -> Limits.LAST_DAY;
                default -> Limits.FIRST_DAY.plusDays(random.nextInt(430_000));
            };
        }

        Air air() {
            Air air = Air.of(amount(Limits.AIR_TEMPERATURE), amount(Limits.AIR_HUMIDITY));
            return maybe() ? air.at(amount(Limits.AIR_PRESSURE)) : air;
        }

        Fibre fibre() {
            return maybe()
                    ? of(Fibres.all())
                    : Fibre.of(
                            name("my-reed"), name("my reed"), of(List.of(Fibre.SourceClass.values())), name("straw"));
        }

        Furnish furnish() {
            Map<Fibre, Amount<Share>> parts = new LinkedHashMap<>();
            double part = maybe() ? 1e-9 : random.nextDouble();
            Fibre first = fibre();
            parts.put(first, Kinds.SHARE.ofSi(part, maybe() ? "%" : "1"));
            parts.put(of(Fibres.all()), Kinds.SHARE.ofSi(1 - part, "%"));
            return parts.size() == 2 && part > 0 ? Furnish.of(parts) : Furnish.of(first);
        }

        Recipe recipe(String called) {
            Furnish furnish = furnish();
            Recipe.Builder recipe = Recipe.of(called, furnish);
            if (maybe()) {
                recipe.beating(amount(Limits.BEATING));
            }
            if (maybe()) {
                recipe.beating(furnish.fibres().get(0), amount(Limits.BEATING));
            }
            if (maybe()) {
                recipe.drainability(amount(Limits.DRAINABILITY));
            } else if (maybe()) {
                recipe.timedSheet(TimedSheet.of(
                        Kinds.TIME.ofSi(0.1 + 3599 * random.nextDouble(), "s"),
                        amount(Limits.PIECE_GRAMMAGE),
                        amount(Limits.VAT_CONSISTENCY)));
            }
            for (int a = 0; a < random.nextInt(3); a++) {
                Additive additive = Additive.of(name("additive " + a), of(List.of(Additive.Purpose.values())));
                recipe.additive(
                        maybe() ? additive.active(Kinds.SHARE.ofSi(1e-6 + random.nextDouble() * 0.9, "%")) : additive,
                        amount(Limits.DOSE));
            }
            if (maybe()) {
                recipe.beaterConsistency(amount(Limits.BEATER_CONSISTENCY));
            }
            if (maybe()) {
                recipe.stockConsistency(amount(Limits.STOCK_CONSISTENCY));
            }
            if (maybe()) {
                recipe.vatConsistency(amount(Limits.VAT_CONSISTENCY));
            }
            if (maybe()) {
                recipe.sizeBath(amount(Limits.SIZE_BATH));
            }
            return recipe.build();
        }

        Dryer dryer(String called) {
            int capacity = count(Limits.DRYER_CAPACITY);
            return switch (random.nextInt(4)) {
                case 0 -> {
                    Dryer.FanStack stack = Dryer.fanStack(called, amount(Limits.FREE_AIR_FLOW), capacity);
                    stack = maybe() ? stack.inLayers(amount(Limits.DRYER_SIDE), amount(Limits.DRYER_SIDE)) : stack;
                    yield maybe() ? stack.under(amount(Limits.STACK_WEIGHT)) : stack;
                }
                case 1 -> Dryer.loft(called, count(Limits.SPUR), capacity);
                case 2 -> {
                    Dryer.Boards boards = Dryer.boards(called, capacity);
                    yield maybe() ? boards.inLayers(amount(Limits.DRYER_SIDE), amount(Limits.DRYER_SIDE)) : boards;
                }
                default -> {
                    Dryer.Blotters blotters = Dryer.blotters(called, capacity);
                    yield maybe() ? blotters.inLayers(amount(Limits.DRYER_SIDE), amount(Limits.DRYER_SIDE)) : blotters;
                }
            };
        }

        Studio studio() {
            Studio.Builder studio = Studio.of(name("s")).room(air());
            if (maybe()) {
                studio.ventilation(new Ventilation(amount(Limits.ROOM_VOLUME), amount(Limits.AIR_CHANGES)));
            }
            if (maybe()) {
                studio.beater(Beater.of(name("beater"), amount(Limits.TROUGH), amount(Limits.RATED_LOAD)));
            }
            if (maybe()) {
                studio.vat(Vat.of(name("vat"), amount(Limits.VAT_VOLUME)).at(amount(Limits.VAT_TEMPERATURE)));
            }
            if (maybe()) {
                Deckle deckle = Deckle.of(amount(Limits.MOULD_SIDE), amount(Limits.MOULD_SIDE));
                if (random.nextInt(4) == 0) {
                    studio.mould(Mould.of("cut to an outline", Deckle.shaped(outline())));
                }
                studio.mould(Mould.of(
                        name("mould"),
                        maybe()
                                ? deckle.split(
                                        count(Limits.DECKLE_SPLIT),
                                        count(Limits.DECKLE_SPLIT),
                                        Amounts.mm(random.nextInt(3)))
                                : deckle));
            }
            if (maybe()) {
                Press press = Press.of(
                        name("press"),
                        amount(Limits.PRESS_RATING),
                        amount(Limits.PLATEN_SIDE),
                        amount(Limits.PLATEN_SIDE));
                press = maybe() ? press.part(name("frame"), amount(Limits.PRESS_RATING)) : press;
                press = press.pressings(count(Limits.PRESSINGS));
                if (maybe()) {
                    RamGauge ram = RamGauge.of(Amounts.mm(200 + random.nextInt(800)));
                    press = press.ram(maybe() ? ram.takingUp(Amounts.kilonewtons(1 + random.nextInt(9))) : ram);
                }
                if (maybe()) {
                    Screw screw = maybe()
                            ? Screw.wooden(Amounts.mm(20), Amounts.mm(90))
                            : Screw.of(Amounts.mm(8), Amounts.inches(2), Share.percent(1 + random.nextInt(30)));
                    press = press.screw(
                            maybe() ? screw.collar(Amounts.mm(60)) : screw,
                            Lever.of(Amounts.metres(1.5), count(Limits.AT_THE_LEVER)));
                }
                studio.press(maybe() ? press.daylight(amount(Limits.DAYLIGHT)) : press);
            }
            if (maybe()) {
                Felts felts = Felts.of(
                        amount(Limits.FELT_SIDE),
                        amount(Limits.FELT_SIDE),
                        amount(Limits.FELT_GRAMMAGE),
                        count(Limits.FELTS));
                studio.felts(maybe() ? felts.thickness(amount(Limits.FELT_THICKNESS)) : felts);
            }
            studio.dryer(dryer("the dryer"));
            if (maybe()) {
                studio.onHand(fibre(), amount(Limits.ON_HAND));
            }
            if (maybe()) {
                studio.scaleStep(amount(Limits.SCALE_STEP))
                        .fineScaleStep(amount(Limits.SCALE_STEP))
                        .jugStep(amount(Limits.JUG_STEP))
                        .workingDay(amount(Limits.WORKING_DAY));
            }
            return maybe() ? studio.alsoCustomaryUnits().build() : studio.build();
        }

        /** A round, an oval, or corners of any numbers. */
        private Outline outline() {
            switch (random.nextInt(3)) {
                case 0 -> {
                    return Outline.round(amount(Limits.PIECE_SIDE));
                }
                case 1 -> {
                    return Outline.oval(amount(Limits.PIECE_SIDE), amount(Limits.PIECE_SIDE));
                }
                default -> {
                    double wide = 10 + 400 * random.nextDouble();
                    double high = 10 + 400 * random.nextDouble();
                    return Outline.of(
                            Outline.Point.of(Amounts.mm(0), Amounts.mm(high * random.nextDouble())),
                            Outline.Point.of(Amounts.mm(wide), Amounts.mm(0)),
                            Outline.Point.of(Amounts.mm(wide * random.nextDouble()), Amounts.mm(high)));
                }
            }
        }

        Piece piece(String called, String recipe) {
            Piece.Builder piece = Piece.of(called, count(Limits.PIECES), recipe);
            boolean shaped = random.nextInt(4) == 0;
            switch (shaped ? 3 : random.nextInt(3)) {
                case 3 -> piece.formedTo(outline());
                case 0 -> piece.size(of(List.of(Formats.ISO_A4, Formats.ISO_A5)));
                case 1 ->
                    piece.size(Format.of(
                            name("bookplate"),
                            of(List.of(FormatSystem.values())),
                            of(List.of(Format.Use.values())),
                            amount(Limits.FORMAT_SIDE),
                            amount(Limits.FORMAT_SIDE)));
                default -> piece.size(amount(Limits.PIECE_SIDE), amount(Limits.PIECE_SIDE));
            }
            how(piece);
            if (maybe()) {
                piece.folds(count(Limits.FOLDS));
            }
            if (shaped) {
                piece.gap(amount(Limits.GAP));
            } else if (maybe()) {
                piece.trim(amount(Limits.TRIM)).gap(amount(Limits.GAP));
            } else {
                piece.edge(Piece.Edge.DECKLE);
            }
            if (maybe()) {
                piece.dryer("the dryer");
            }
            return piece.build();
        }

        private void how(Piece.Builder piece) {
            switch (random.nextInt(3)) {
                case 0 -> piece.grammage(amount(Limits.PIECE_GRAMMAGE));
                case 1 -> piece.caliper(amount(Limits.PIECE_CALIPER));
                default ->
                    piece.sample(Piece.Sample.of(
                            amount(Limits.SAMPLE_SIDE),
                            amount(Limits.SAMPLE_SIDE),
                            amount(Limits.SAMPLE_MASS),
                            amount(Limits.SAMPLE_CALIPER)));
            }
            if (maybe()) {
                piece.spare(amount(Limits.SPARE));
            }
            if (maybe()) {
                piece.kept(count(Limits.KEPT));
            }
            if (maybe()) {
                piece.trials(count(Limits.TRIALS));
            }
        }

        Piece envelope(String inside, String recipe) {
            Piece.Builder piece = Piece.of(name("envelope"), count(Limits.PIECES), recipe)
                    .envelopeFor(inside, of(List.of(EnvelopeStyle.values())))
                    .inserts(count(Limits.INSERTS))
                    .clearance(amount(Limits.CLEARANCE))
                    .mailedIn(of(MailLimits.countries()));
            how(piece);
            return piece.build();
        }

        Order order() {
            Order.Builder order = Order.of(name("o")).due(day());
            if (maybe()) {
                order.weighedIn(air());
            }
            Recipe recipe = recipe(name("r"));
            Piece piece = piece(name("p"), recipe.name());
            order.recipe(recipe).piece(piece);
            return maybe() ? order.piece(envelope(piece.name(), recipe.name())).build() : order.build();
        }
    }

    private static int judge(long from, int tries, boolean strange) {
        int taken = 0;
        for (long seed = from; seed < from + tries; seed++) {
            Order order;
            Studio studio;
            try {
                Draw draw = new Draw(seed, strange);
                order = draw.order();
                studio = draw.studio();
            } catch (Refused e) {
                assertThat(e.getMessage()).isNotBlank().hasSizeLessThanOrEqualTo(2000);
                continue;
            }
            taken++;
            String written = PapermathDocuments.writeOrder(Document.of(new OrderDocument(order, studio)));
            OrderDocument read = PapermathDocuments.readOrder(written).value();
            assertThat(read).as("seed %d", seed).isEqualTo(new OrderDocument(order, studio));
            assertThat(PapermathDocuments.writeOrder(Document.of(read)))
                    .as("seed %d", seed)
                    .isEqualTo(written);
            Recipe recipe = order.recipes().get(0);
            assertThat(PapermathDocuments.readRecipe(PapermathDocuments.writeRecipe(Document.of(recipe)))
                            .value())
                    .as("seed %d", seed)
                    .isEqualTo(recipe);
            assertThat(PapermathDocuments.readStudio(PapermathDocuments.writeStudio(Document.of(studio)))
                            .value())
                    .as("seed %d", seed)
                    .isEqualTo(studio);
        }
        return taken;
    }

    @Property(tries = 20, seed = "20270122")
    void whatBuildersTakeIsReadBack(@ForAll int seed) {
        assertThat(judge(100L * seed, 60, false)).as("taken by the builders").isGreaterThan(5);
    }

    @Property(tries = 20, seed = "20270123")
    void namesOfAllSortsAreTakenAndReadBackOrRefused(@ForAll int seed) {
        judge(100L * seed, 60, true);
    }

    @Property(tries = 1, seed = "1")
    void everyNameIsTakenOrRefused() {
        List<String> taken = new ArrayList<>();
        for (String name : NAMES) {
            try {
                Studio studio = Studio.of(name).build();
                taken.add(name);
                assertThat(PapermathDocuments.readStudio(PapermathDocuments.writeStudio(Document.of(studio)))
                                .value())
                        .isEqualTo(studio);
            } catch (Refused e) {
                assertThat(e.code()).isIn("text.character", "text.long", "name.sign", "name.empty");
            }
        }
        assertThat(taken)
                .containsExactly(
                        "plain",
                        " blank ",
                        "smørrebrød",
                        "紙",
                        "a \"b\" \\c/",
                        "x-own",
                        "می\u200Cخواهم",
                        "👩\u200D🎨",
                        "l".repeat(200),
                        "\u00A0nbsp",
                        "e\u0301");
    }
}
