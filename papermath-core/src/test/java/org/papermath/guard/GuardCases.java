package org.papermath.guard;

import static org.papermath.quantity.Amounts.celsius;
import static org.papermath.quantity.Amounts.cubicMetres;
import static org.papermath.quantity.Amounts.days;
import static org.papermath.quantity.Amounts.grams;
import static org.papermath.quantity.Amounts.hours;
import static org.papermath.quantity.Amounts.kilograms;
import static org.papermath.quantity.Amounts.kilonewtons;
import static org.papermath.quantity.Amounts.litres;
import static org.papermath.quantity.Amounts.micrometres;
import static org.papermath.quantity.Amounts.mm;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.function.Supplier;
import javax.measure.Quantity;
import org.papermath.air.Air;
import org.papermath.colour.Lab;
import org.papermath.colour.WantedColour;
import org.papermath.drying.Dryer;
import org.papermath.drying.Ventilation;
import org.papermath.envelope.EnvelopeStyle;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Basis;
import org.papermath.evidence.Scope;
import org.papermath.evidence.Source;
import org.papermath.fibre.Alkali;
import org.papermath.fibre.BoughtFibre.Form;
import org.papermath.fibre.Fibre;
import org.papermath.fibre.Fibres;
import org.papermath.fibre.Furnish;
import org.papermath.format.Format;
import org.papermath.format.Formats;
import org.papermath.mail.MailLimits;
import org.papermath.mould.Deckle;
import org.papermath.mould.Mould;
import org.papermath.order.Order;
import org.papermath.order.OwnStep;
import org.papermath.order.Piece;
import org.papermath.order.Recipe;
import org.papermath.order.Studio;
import org.papermath.order.StuffOnHand;
import org.papermath.plan.MakingPlan;
import org.papermath.press.Felts;
import org.papermath.press.Lever;
import org.papermath.press.Press;
import org.papermath.press.RamGauge;
import org.papermath.press.Screw;
import org.papermath.pulp.Additive;
import org.papermath.pulp.Beater;
import org.papermath.pulp.Pulp;
import org.papermath.pulp.TimedSheet;
import org.papermath.quantity.Consistency;
import org.papermath.quantity.Dose;
import org.papermath.quantity.FibreConcentration;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Rate;
import org.papermath.quantity.RelativeHumidity;
import org.papermath.quantity.Share;
import org.papermath.quantity.VolumeFlow;
import org.papermath.shape.Outline;
import org.papermath.vat.Vat;

/**
 * The orders and studios the guard plans: seeded ones, in which every choice of a builder is made by the seed, and
 * some written by hand for what a seed seldom meets. All stay well within what a studio may have, so that a new bound
 * of a builder refuses few of them.
 */
final class GuardCases {
    /** A fibre nobody has measured, and like none that somebody has. */
    private static final Fibre IRIS = Fibre.of("iris", "iris leaf", Fibre.SourceClass.LEAF);

    private static final int SEEDS = 400;

    /** The greatest dose of each purpose in the cases, %. */
    private static final Map<Additive.Purpose, Double> GREATEST_DOSE = doses();

    private static final List<Format> FORMATS = List.of(
            Formats.ISO_A5,
            Formats.ISO_A6,
            Formats.ISO_A7,
            Formats.ISO_B6,
            Formats.ISO_DL,
            Formats.NA_A6_CARD,
            Formats.NA_A7_CARD);

    private final Random random;
    private final List<String> recipeNames = new ArrayList<>();
    private final List<Furnish> furnishes = new ArrayList<>();
    private final List<String> dryerNames = new ArrayList<>();

    private GuardCases(long seed) {
        this.random = new Random(0x9E3779B97F4A7C15L * (seed + 1));
    }

    /** Every case by its name: the number of the seed, or a word. Each is planned when it is asked for. */
    static Map<String, Supplier<MakingPlan>> all() {
        Map<String, Supplier<MakingPlan>> cases = new LinkedHashMap<>();
        for (int seed = 0; seed < SEEDS; seed++) {
            long number = seed;
            cases.put(String.valueOf(seed), () -> new GuardCases(number).plan());
        }
        written(cases);
        return Collections.unmodifiableMap(cases);
    }

    // ------------------------------------------------------------------------------------------------ seeded

    private MakingPlan plan() {
        Studio.Builder studio = studio();
        Order order = order();
        studio.assumptions(known());
        return MakingPlan.of(order, studio.build());
    }

    private boolean chance(double share) {
        return random.nextDouble() < share;
    }

    private double between(double low, double high) {
        return low + (high - low) * random.nextDouble();
    }

    /** Whole numbers and tenths, as a person would write them, turn up as often as any other number. */
    private double written(double low, double high) {
        double value = between(low, high);
        return switch (random.nextInt(3)) {
            case 0 -> Math.max(low, Math.rint(value));
            case 1 -> Math.max(low, Math.rint(10 * value) / 10);
            default -> value;
        };
    }

    private int count(int least, int most) {
        return least + random.nextInt(most - least + 1);
    }

    private <T> T one(List<T> list) {
        return list.get(random.nextInt(list.size()));
    }

    private Order order() {
        Order.Builder order = Order.of("order");
        List<Piece> pieces = new ArrayList<>();
        int recipes = count(1, 2);
        for (int r = 0; r < recipes; r++) {
            String name = "recipe " + (r + 1);
            recipeNames.add(name);
            order.recipe(recipe(name));
        }
        int flat = count(1, 3);
        for (int p = 0; p < flat; p++) {
            pieces.add(flat("piece " + (p + 1)));
        }
        if (chance(0.4)) {
            pieces.add(count(0, pieces.size()), envelope("envelope", "piece " + count(1, flat)));
        }
        pieces.forEach(order::piece);
        if (chance(0.6)) {
            order.due(LocalDate.of(count(2014, 2027), count(1, 12), count(1, 28)));
        }
        if (chance(0.2)) {
            order.weighedIn(Air.of(celsius(written(15, 27)), RelativeHumidity.percent(written(35, 65))));
        }
        return order.build();
    }

    private Furnish furnish() {
        List<Fibre> fibres = new ArrayList<>(Fibres.all());
        Collections.shuffle(fibres, random);
        int kinds = chance(0.5) ? 1 : count(2, 3);
        Map<Fibre, Quantity<Share>> shares = new LinkedHashMap<>();
        int left = 100;
        for (int f = 0; f < kinds; f++) {
            int share = f == kinds - 1 ? left : count(5, left - 5 * (kinds - f - 1));
            shares.put(fibres.get(f), Share.percent(share));
            left -= share;
        }
        return Furnish.of(shares);
    }

    private Recipe recipe(String name) {
        Furnish furnish = furnish();
        furnishes.add(furnish);
        Recipe.Builder recipe = Recipe.of(name, furnish);
        if (chance(0.85)) {
            recipe.beating(hours(written(0.2, 10)));
        }
        if (chance(0.15)) {
            recipe.drainability(Kinds.SCHOPPER_RIEGLER.of(written(14, 96), "SR"));
        }
        if (chance(0.25)) {
            recipe.beaterConsistency(Consistency.percent(between(1, 5.9)));
        }
        if (chance(0.2)) {
            recipe.stockConsistency(Consistency.percent(between(1.2, 3)));
        }
        if (chance(0.3)) {
            recipe.vatConsistency(Consistency.percent(between(0.2, 1.3)));
        }
        GREATEST_DOSE.forEach((purpose, most) -> {
            if (chance(0.25)) {
                Additive additive =
                        Additive.of(purpose.name().toLowerCase(Locale.ROOT).replace('_', ' '), purpose);
                recipe.additive(
                        chance(0.3) ? additive.active(Share.percent(written(5, 60))) : additive,
                        Dose.percent(between(most / 50, most)));
            }
        });
        if (chance(0.25)) {
            recipe.sizeBath(FibreConcentration.gramsPerLitre(written(5, 60)));
        }
        return recipe.build();
    }

    private Piece.Builder piece(String name) {
        Piece.Builder piece = Piece.of(name, chance(0.9) ? count(1, 120) : count(121, 300), one(recipeNames));
        if (chance(0.3)) {
            piece.spare(Share.percent(written(0, 30)));
        }
        if (chance(0.2)) {
            piece.kept(count(0, 10));
        }
        if (chance(0.4)) {
            piece.trials(count(0, 10));
        }
        if (chance(0.35)) {
            piece.edge(Piece.Edge.DECKLE);
        } else {
            if (chance(0.5)) {
                piece.trim(mm(written(0, 10)));
            }
            if (chance(0.3)) {
                piece.gap(mm(written(0, 8)));
            }
        }
        if (chance(0.25)) {
            piece.mailedIn(one(MailLimits.countries()));
        }
        if (!dryerNames.isEmpty() && chance(0.3)) {
            piece.dryer(one(dryerNames));
        }
        return piece;
    }

    private Piece flat(String name) {
        Piece.Builder piece = piece(name).folds(count(0, 2));
        if (chance(0.15)) {
            piece.size(one(FORMATS));
        } else if (chance(0.8)) {
            piece.size(mm(written(40, 220)), mm(written(40, 180)));
        } else {
            piece.size(mm(written(100, 420)), mm(written(100, 300)));
        }
        double kind = random.nextDouble();
        if (kind < 0.7) {
            piece.grammage(Grammage.gsm(chance(0.8) ? written(30, 320) : written(4, 30)));
        } else if (kind < 0.85) {
            piece.caliper(mm(between(0.05, 0.7)));
        } else {
            double width = between(50, 150);
            double height = between(50, 150);
            double grammage = between(30, 300);
            piece.sample(Piece.Sample.of(
                    mm(width), mm(height), grams(width * height * 1e-6 * grammage), mm(grammage / between(250, 800))));
        }
        return piece.build();
    }

    private Piece envelope(String name, String inside) {
        EnvelopeStyle style = one(List.of(EnvelopeStyle.values()));
        Piece.Builder piece =
                piece(name).grammage(Grammage.gsm(written(40, 140))).envelopeFor(inside, style);
        if (style == EnvelopeStyle.DIAMOND && chance(0.4)) {
            double side = written(120, 420);
            piece.size(mm(side), mm(side));
        }
        if (chance(0.4)) {
            piece.inserts(count(1, 4));
        }
        if (chance(0.5)) {
            piece.clearance(mm(written(0, 12)));
        }
        return piece.build();
    }

    private Studio.Builder studio() {
        Studio.Builder studio = Studio.of("studio");
        if (chance(0.9)) {
            studio.room(Air.of(
                    celsius(written(10, 30)),
                    RelativeHumidity.percent(chance(0.7) ? written(25, 62) : chance(0.9) ? written(62, 97) : 100)));
        }
        int moulds = chance(0.15) ? 0 : count(1, 3);
        for (int m = 0; m < moulds; m++) {
            studio.mould(Mould.of("mould " + (m + 1), mm(written(150, 520)), mm(written(180, 700))));
        }
        if (chance(0.75)) {
            studio.beater(Beater.of("beater", litres(written(10, 90)), grams(written(200, 2500))));
        }
        if (chance(0.75)) {
            Vat vat = Vat.of("vat", litres(written(20, 250)));
            studio.vat(chance(0.3) ? vat.at(celsius(written(8, 30))) : vat);
        }
        if (chance(0.75)) {
            Press press =
                    Press.of("press", kilonewtons(written(10, 400)), mm(written(300, 600)), mm(written(400, 800)));
            if (chance(0.3)) {
                press = press.part("frame", kilonewtons(written(10, 300)));
            }
            studio.press(chance(0.3) ? press.daylight(mm(written(15, 400))) : press);
        }
        if (chance(0.7)) {
            studio.felts(Felts.of(
                    mm(written(300, 700)), mm(written(400, 900)), Grammage.gsm(written(250, 900)), count(2, 60)));
        }
        int dryers = count(0, 2);
        for (int d = 0; d < dryers; d++) {
            dryerNames.add("dryer " + (d + 1));
            studio.dryer(dryer("dryer " + (d + 1)));
        }
        if (chance(0.3)) {
            studio.onHand(one(Fibres.all()), grams(written(1, 3000)));
        }
        if (chance(0.2)) {
            studio.scaleStep(grams(one(List.of(1.0, 5.0, 10.0))));
        }
        if (chance(0.2)) {
            studio.fineScaleStep(grams(one(List.of(0.01, 0.1, 1.0))));
        }
        if (chance(0.2)) {
            studio.jugStep(litres(one(List.of(0.1, 0.25, 1.0))));
        }
        if (chance(0.3)) {
            studio.workingDay(hours(written(3, 10)));
        }
        if (chance(0.2)) {
            studio.alsoCustomaryUnits();
        }
        return studio;
    }

    private Dryer dryer(String name) {
        int capacity = count(1, 200);
        return switch (random.nextInt(4)) {
            case 0 -> Dryer.boards(name, capacity);
            case 1 -> Dryer.loft(name, count(1, 6), capacity);
            case 2 -> Dryer.blotters(name, capacity);
            default -> Dryer.fanStack(name, VolumeFlow.cubicMetresPerHour(written(200, 4000)), capacity);
        };
    }

    /** Values of the studio's own: of its equipment, measured on its sheets, or under a name that is not here. */
    private Assumptions known() {
        Assumptions known = Assumptions.standard();
        if (chance(0.5)) {
            return known;
        }
        String recipe = one(recipeNames);
        Furnish furnish = one(furnishes);
        String dryer = dryerNames.isEmpty() ? "shelf" : one(dryerNames);
        Scope sheet = Scope.of(recipe).on(dryer);
        known = given(known, 0.25, "press.factor", one(List.of(Scope.GENERAL, Scope.at("press"))), 0.95, 1.25);
        known = given(known, 0.2, "press.pressure", Scope.at("press"), 0.1, 3);
        known = given(known, 0.2, "labour.post-sheets", Scope.at("press"), 4, 40);
        known = given(known, 0.2, "vat.tolerance", Scope.at("vat"), 0.02, 0.2);
        known = given(known, 0.2, "vat.lift-factor", Scope.at("vat"), 0.9, 1.1);
        known = given(known, 0.2, "web.solids-couched", Scope.GENERAL, 0.08, 0.2);
        known = given(known, 0.15, "order.handling-share", Scope.GENERAL, 0.85, 0.99);
        known = given(known, 0.15, "beating.rate", Scope.of("kozo").on("beater"), 0.05, 0.6);
        known = given(known, 0.15, "sheet.density-unbeaten", one(Fibres.all()).scope(), 250, 700);
        known = given(known, 0.2, "sheet.density-unbeaten", furnish.scope().on("press"), 250, 700);
        if (chance(0.2)) {
            known = given(known, 1, "shrinkage.initial", furnish.scope().on("beater"), 0.005, 0.04);
            known = given(known, 1, "shrinkage.limit", furnish.scope().on("beater"), 0.05, 0.3);
            known = given(known, 1, "shrinkage.limit", furnish.scope().on("beater"), 0.05, 0.3);
        }
        if (chance(0.2)) {
            known = given(known, 1, "sorption.monolayer", furnish.scope(), 0.04, 0.08);
            known = given(known, 1, "sorption.energy", furnish.scope(), 7, 25);
            known = given(known, 1, "sorption.bulk", furnish.scope(), 0.6, 0.78);
        }
        known = given(known, 0.2, "sheet.density-measured", sheet, 120, 1350);
        known = given(known, 0.2, "shrinkage.measured-along", sheet, 0, 0.06);
        known = given(known, 0.2, "shrinkage.measured-across", sheet, 0, 0.08);
        known = given(known, 0.2, "web.solids-pressed", sheet, 0.2, 0.5);
        known = given(known, 0.2, "sheet.moisture-conditioned", sheet, 0.04, 0.09);
        known = given(known, 0.1, "restraint.share", Scope.at("nobody's stack"), 0.2, 0.8);
        return given(known, 0.1, "reject.forming", Scope.of("nobody's recipe"), 0.01, 0.1);
    }

    private Assumptions given(Assumptions known, double chance, String id, Scope scope, double low, double high) {
        if (!chance(chance)) {
            return known;
        }
        double value = between(low, high);
        return chance(0.5)
                ? known.given(id, scope, value)
                : known.given(
                        id,
                        scope,
                        value,
                        value - 0.1 * (value - low),
                        value + 0.1 * (high - value),
                        Basis.MEASURED_HERE,
                        new Source("the guard's own"));
    }

    private static Map<Additive.Purpose, Double> doses() {
        Map<Additive.Purpose, Double> doses = new LinkedHashMap<>();
        doses.put(Additive.Purpose.FILLER, 8.0);
        doses.put(Additive.Purpose.PIGMENT, 5.0);
        doses.put(Additive.Purpose.RETENTION_AID, 0.3);
        doses.put(Additive.Purpose.CARBONATE, 8.0);
        doses.put(Additive.Purpose.INTERNAL_SIZE, 1.0);
        doses.put(Additive.Purpose.FORMATION_AID, 0.5);
        doses.put(Additive.Purpose.BINDER, 1.5);
        return doses;
    }

    // ------------------------------------------------------------------------------------------------ by hand

    private static void written(Map<String, Supplier<MakingPlan>> cases) {
        cases.put(
                "bare",
                () -> MakingPlan.of(
                        order(Furnish.of(Fibres.COTTON_RAG), cards().build()),
                        Studio.of("bare").build()));
        cases.put(
                "full",
                () -> MakingPlan.of(
                        order(
                                Furnish.of(Fibres.COTTON_RAG),
                                cards().build(),
                                Piece.of("sleeve", 40, "recipe")
                                        .grammage(Grammage.gsm(90))
                                        .envelopeFor("cards", EnvelopeStyle.WALLET)
                                        .mailedIn("Germany")
                                        .build()),
                        full().build()));
        for (Dryer dryer : List.of(
                Dryer.boards("boards", 30),
                Dryer.fanStack("stack", VolumeFlow.cubicMetresPerHour(1500), 40),
                Dryer.loft("loft", 3, 60),
                Dryer.blotters("blotters", 40))) {
            cases.put(
                    "saturated-" + dryer.name(),
                    () -> MakingPlan.of(
                            order(Furnish.of(Fibres.COTTON_RAG), cards().build()),
                            Studio.of("saturated")
                                    .dryer(dryer)
                                    .room(Air.of(celsius(18), RelativeHumidity.percent(100)))
                                    .build()));
        }
        Piece rims = cards().edge(Piece.Edge.DECKLE).build();
        Dryer.FanStack stack = Dryer.stack("stack", 12);
        Ventilation aired = Ventilation.of(cubicMetres(40), Rate.perHour(0.3));
        cases.put(
                "light-stack",
                () -> MakingPlan.of(
                        order(Furnish.of(Fibres.ABACA), rims),
                        dries(stack.under(grams(500))).build()));
        cases.put(
                "firm-stack",
                () -> MakingPlan.of(
                        order(Furnish.of(Fibres.ABACA), rims),
                        dries(stack.under(kilograms(60))).build()));
        for (Dryer dryer : List.of(stack, Dryer.loft("loft", 1, 100), Dryer.blotters("blotters", 20))) {
            cases.put(
                    "aired-" + dryer.name(),
                    () -> MakingPlan.of(
                            order(Furnish.of(Fibres.COTTON_RAG), cards().build()),
                            dries(dryer).ventilation(aired).build()));
        }
        for (Dryer dryer : List.of(
                stack.under(kilograms(10)).inLayers(mm(500), mm(700)),
                Dryer.boards("boards", 4).inLayers(mm(600), mm(800)),
                Dryer.blotters("blotters", 3).inLayers(mm(400), mm(100)))) {
            cases.put(
                    "layers-" + dryer.name(),
                    () -> MakingPlan.of(
                            order(Furnish.of(Fibres.ABACA), rims),
                            dries(dryer).ventilation(aired).build()));
        }
        cases.put(
                "great-filling",
                () -> MakingPlan.of(
                        order(
                                Furnish.of(Fibres.COTTON_RAG),
                                Piece.of("cards", 400, "recipe")
                                        .size(mm(210), mm(297))
                                        .grammage(Grammage.gsm(200))
                                        .build()),
                        dries(Dryer.loft("loft", 1, 1000)).build()));
        cases.put(
                "long-letter",
                () -> MakingPlan.of(
                        order(
                                Furnish.of(Fibres.COTTON_RAG),
                                Piece.of("cards", 40, "recipe")
                                        .size(mm(95), mm(260))
                                        .grammage(Grammage.gsm(200))
                                        .mailedIn("United States")
                                        .build()),
                        full().build()));
        cases.put(
                "small-square",
                () -> MakingPlan.of(
                        order(
                                Furnish.of(Fibres.ABACA),
                                cards().build(),
                                Piece.of("sleeve", 40, "recipe")
                                        .grammage(Grammage.gsm(90))
                                        .size(mm(180), mm(180))
                                        .envelopeFor("cards", EnvelopeStyle.DIAMOND)
                                        .build()),
                        full().build()));
        Piece rounds = Piece.of("cards", 60, "recipe")
                .formedTo(Outline.round(mm(70)))
                .grammage(Grammage.gsm(220))
                .build();
        cases.put(
                "rounds",
                () -> MakingPlan.of(
                        order(
                                Furnish.of(Fibres.ABACA),
                                rounds,
                                Piece.of("sleeve", 40, "recipe")
                                        .grammage(Grammage.gsm(90))
                                        .edge(Piece.Edge.SHAPED)
                                        .envelopeFor("cards", EnvelopeStyle.SIDE_SEAM)
                                        .mailedIn("Germany")
                                        .build()),
                        full().build()));
        cases.put(
                "rounds-of-a-kept-deckle",
                () -> MakingPlan.of(
                        order(Furnish.of(Fibres.COTTON_RAG), rounds),
                        full().mould(Mould.of("rounds", Deckle.shaped(Outline.round(mm(73)), 3, 2, mm(8))))
                                .assumptions(Assumptions.standard().given("order.size-tolerance", Scope.GENERAL, 0.05))
                                .build()));
        cases.put(
                "cards-of-a-split-deckle",
                () -> MakingPlan.of(
                        order(
                                Furnish.of(Fibres.COTTON_RAG),
                                cards().edge(Piece.Edge.DECKLE).build()),
                        full().mould(Mould.of(
                                        "pair", Deckle.of(mm(152), mm(226)).split(1, 2, mm(12))))
                                .assumptions(Assumptions.standard().given("order.size-tolerance", Scope.GENERAL, 0.05))
                                .build()));
        cases.put(
                "open-end-to-shape",
                () -> MakingPlan.of(
                        order(
                                Furnish.of(Fibres.COTTON_RAG),
                                cards().edge(Piece.Edge.DECKLE).build(),
                                Piece.of("sleeve", 12, "recipe")
                                        .grammage(Grammage.gsm(90))
                                        .edge(Piece.Edge.SHAPED)
                                        .gap(mm(14))
                                        .envelopeFor("cards", EnvelopeStyle.OPEN_END)
                                        .build()),
                        full().build()));
        cases.put(
                "heavy-posts",
                () -> MakingPlan.of(
                        order(Furnish.of(Fibres.COTTON_RAG), cards().build()),
                        Studio.of("heavy")
                                .press(Press.of("press", kilonewtons(300), mm(900), mm(1200)))
                                .felts(Felts.of(mm(900), mm(1200), Grammage.gsm(900), 60))
                                .assumptions(Assumptions.standard().given("labour.post-sheets", Scope.at("press"), 40))
                                .build()));
        cases.put(
                "low-press",
                () -> MakingPlan.of(
                        order(Furnish.of(Fibres.COTTON_RAG), cards().build()),
                        Studio.of("low")
                                .press(Press.of("press", kilonewtons(300), mm(300), mm(400))
                                        .daylight(mm(2)))
                                .felts(Felts.of(mm(300), mm(400), Grammage.gsm(500), 12))
                                .build()));
        cases.put(
                "screw-press",
                () -> MakingPlan.of(
                        order(Furnish.of(Fibres.COTTON_RAG), cards().build()),
                        Studio.of("screw")
                                .press(Press.of("press", kilonewtons(300), mm(400), mm(500))
                                        .pressings(3)
                                        .ram(RamGauge.of(mm(60)))
                                        .screw(Screw.steel(mm(10), mm(50)), Lever.of(mm(1500), 2)))
                                .felts(Felts.of(mm(400), mm(500), Grammage.gsm(600), 24)
                                        .thickness(mm(2.5)))
                                .dryer(Dryer.blotters("blotters", 40))
                                .build()));
        cases.put(
                "small-vat",
                () -> MakingPlan.of(
                        order(
                                Furnish.of(Fibres.COTTON_RAG),
                                cards().build(),
                                Piece.of("broadside", 8, "recipe")
                                        .size(mm(500), mm(700))
                                        .grammage(Grammage.gsm(180))
                                        .build()),
                        Studio.of("small").vat(Vat.of("vat", litres(5))).build()));
        cases.put(
                "shallow-deckle",
                () -> MakingPlan.of(
                        order(
                                Furnish.of(Fibres.ABACA),
                                Piece.of("sheets", 30, "recipe")
                                        .size(mm(280), mm(380))
                                        .grammage(Grammage.gsm(250))
                                        .build(),
                                Piece.of("tissue", 30, "recipe")
                                        .size(mm(280), mm(380))
                                        .grammage(Grammage.gsm(30))
                                        .build()),
                        Studio.of("shallow")
                                .beater(Beater.of("beater", litres(40), grams(800)))
                                .vat(Vat.of("vat", litres(70)).withoutStrainer())
                                .mould(Mould.of(
                                                "deep",
                                                Deckle.of(mm(400), mm(520)).deep(mm(8)))
                                        .inTurn(2))
                                .build()));
        cases.put(
                "flat-deckle",
                () -> MakingPlan.of(
                        order(
                                Furnish.of(Fibres.ABACA),
                                Piece.of("boards", 10, "recipe")
                                        .size(mm(280), mm(380))
                                        .grammage(Grammage.gsm(600))
                                        .build()),
                        Studio.of("flat")
                                .vat(Vat.of("vat", litres(70)))
                                .mould(Mould.of(
                                        "flat", Deckle.of(mm(400), mm(520)).deep(mm(4))))
                                .build()));
        cases.put(
                "run-down",
                () -> MakingPlan.of(
                        order(Furnish.of(Fibres.COTTON_RAG), cards().build()),
                        Studio.of("run-down")
                                .vat(Vat.of("vat", litres(60)).runDownTo(litres(25)))
                                .mould(Mould.of("folio", mm(320), mm(420)))
                                .build()));
        cases.put(
                "great-mould",
                () -> MakingPlan.of(
                        order(
                                Furnish.of(Fibres.COTTON_RAG),
                                Piece.of("posters", 12, "recipe")
                                        .size(mm(600), mm(900))
                                        .grammage(Grammage.gsm(200))
                                        .build()),
                        Studio.of("great")
                                .vat(Vat.of("vat", litres(300)))
                                .mould(Mould.of("great", mm(640), mm(940)))
                                .build()));
        cases.put(
                "narrow-vat",
                () -> MakingPlan.of(
                        order(Furnish.of(Fibres.COTTON_RAG), cards().build()),
                        Studio.of("narrow")
                                .mould(Mould.of("folio", mm(320), mm(420)))
                                .vat(Vat.of("vat", litres(80)).inside(mm(300), mm(900)))
                                .build()));
        cases.put(
                "couched-too-wet",
                () -> MakingPlan.of(
                        order(Furnish.of(Fibres.COTTON_RAG), cards().build()),
                        full().assumptions(Assumptions.standard().given("web.solids-couched", Scope.at("vat"), 0.004))
                                .build()));
        cases.put(
                "too-many-sheets",
                () -> MakingPlan.of(
                        order(Furnish.of(Fibres.COTTON_RAG), cards().build()),
                        full().assumptions(Assumptions.standard().given("reject.forming", Scope.of("cards"), 0.9999999))
                                .build()));
        cases.put(
                "weak-press",
                () -> MakingPlan.of(
                        order(Furnish.of(Fibres.COTTON_RAG), cards().build()),
                        Studio.of("weak")
                                .press(Press.of("press", kilonewtons(0.6), mm(400), mm(500)))
                                .build()));
        cases.put(
                "may-be-short",
                () -> MakingPlan.of(
                        order(
                                Furnish.of(Fibres.ABACA),
                                Piece.of("cards", 40, "recipe")
                                        .size(mm(256), mm(337))
                                        .grammage(Grammage.gsm(120))
                                        .build()),
                        Studio.of("loft")
                                .mould(Mould.of("folio", mm(320), mm(420)))
                                .beater(Beater.of("beater", litres(40), grams(800)))
                                .vat(Vat.of("vat", litres(80)))
                                .dryer(Dryer.loft("loft", 1, 60))
                                .room(Air.of(celsius(20), RelativeHumidity.percent(50)))
                                .build()));
        Fibre stranger = Fibre.of("stranger", "stranger bast", Fibre.SourceClass.BAST, "linen");
        cases.put(
                "nobody-cooked-it", () -> MakingPlan.of(order(Furnish.of(stranger), cards().build()), full().build()));
        cases.put(
                "green-bark",
                () -> MakingPlan.of(
                        order(Furnish.of(Fibres.KOZO).bought(Fibres.KOZO, Form.GREEN), cards().build()),
                        full().onHand(Fibres.KOZO, grams(300)).build()));
        cases.put(
                "strong-lye",
                () -> MakingPlan.of(
                        Order.of("strong lye")
                                .recipe(Recipe.of(
                                                "recipe",
                                                Furnish.of(
                                                        Share.percent(60),
                                                        Fibres.ESPARTO,
                                                        Share.percent(40),
                                                        Fibres.ABACA))
                                        .cooking(Alkali.CAUSTIC_SODA, Dose.percent(30))
                                        .build())
                                .piece(cards().build())
                                .build(),
                        full().build()));
        cases.put(
                "fibre-without-a-rate",
                () -> MakingPlan.of(
                        Order.of("order")
                                .recipe(Recipe.of("recipe", Furnish.of(stranger).bought(stranger, Form.HALF_STUFF))
                                        .beating(hours(1))
                                        .build())
                                .piece(cards().build())
                                .build(),
                        full().assumptions(Assumptions.standard()
                                        .given("fibre.water-retention-unbeaten", stranger.scope(), 1)
                                        .given("fibre.water-retention-well-beaten", stranger.scope(), 1.6))
                                .build()));
        for (double grams : new double[] {150, 5000}) {
            cases.put(
                    "stuff-on-hand-" + (int) grams,
                    () -> MakingPlan.of(
                            Order.of("order")
                                    .recipe(Recipe.of("recipe", Furnish.of(Fibres.ABACA))
                                            .beating(hours(3))
                                            .additive(Additive.of("blue", Additive.Purpose.PIGMENT), Dose.percent(2))
                                            .build())
                                    .piece(cards().build())
                                    .due(LocalDate.of(2027, 4, 2))
                                    .build(),
                            full().stuffOnHand(StuffOnHand.of(
                                                    "recipe",
                                                    Pulp.ofOvenDry(grams(grams)).at(Consistency.percent(0.6)))
                                            .made(LocalDate.of(2027, 2, 1)))
                                    .build()));
        }
        cases.put("white-for-three-colours", () -> {
            Order.Builder order = Order.of("order").due(LocalDate.of(2027, 4, 2));
            for (String colour : new String[] {"oat", "rust", "slate"}) {
                order.recipe(Recipe.of(
                                        colour,
                                        Furnish.of(
                                                        Share.percent(70),
                                                        Fibres.COTTON_RAG,
                                                        Share.percent(30),
                                                        Fibres.FLAX_RAW)
                                                .bought(Fibres.FLAX_RAW, Form.RAW))
                                .beating(hours(2))
                                .additive(Additive.of(colour, Additive.Purpose.PIGMENT), Dose.percent(2))
                                .stuff("white")
                                .build())
                        .piece(Piece.of(colour + " card", 20, colour)
                                .size(Formats.ISO_A6)
                                .grammage(Grammage.gsm(240))
                                .build());
            }
            return MakingPlan.of(order.build(), full().build());
        });
        cases.put(
                "a-step-of-its-own",
                () -> MakingPlan.of(
                        order(Furnish.of(Fibres.COTTON_RAG), cards().build())
                                .withStep(OwnStep.of("show the stuff")
                                        .hands(hours(1))
                                        .waits(days(30))
                                        .after(OwnStep.Stage.BEAT)
                                        .build()),
                        full().build()));
        cases.put("colours-light-to-dark", () -> {
            Order.Builder order = Order.of("two colours");
            for (String colour : List.of("soot", "straw")) {
                Recipe.Builder recipe = Recipe.of(colour, Furnish.of(Fibres.COTTON_RAG))
                        .beating(hours(2))
                        .stuff("white")
                        .colour(WantedColour.of(colour.equals("soot") ? Lab.of(22, 0, 0) : Lab.of(84, 4, 26)));
                if (colour.equals("soot")) {
                    recipe.additive(Additive.of(colour, Additive.Purpose.PIGMENT), Dose.percent(6));
                }
                order.recipe(recipe.build())
                        .piece(Piece.of(colour + " card", 20, colour)
                                .size(Formats.ISO_A6)
                                .grammage(Grammage.gsm(240))
                                .build());
            }
            return MakingPlan.of(order.build(), full().build());
        });
        cases.put("kozo", () -> MakingPlan.of(order(Furnish.of(Fibres.KOZO), cards().build()), full().build()));
        cases.put(
                "without-bands",
                () -> MakingPlan.withoutBands(order(Furnish.of(Fibres.ABACA), cards().build()), full().build()));
        cases.put(
                "vat-thicker-than-stock",
                () -> MakingPlan.of(
                        Order.of("order")
                                .recipe(Recipe.of("recipe", Furnish.of(Fibres.ABACA))
                                        .stockConsistency(Consistency.percent(1))
                                        .vatConsistency(Consistency.percent(1.2))
                                        .build())
                                .piece(cards().build())
                                .build(),
                        full().build()));
        cases.put("sample-like-a-tissue", () -> likeSample(0.14));
        cases.put("timed-at-the-vat", () -> timed(24));
        cases.put("timed-too-fast", () -> timed(0.1));
        cases.put(
                "beaten-apart",
                () -> MakingPlan.of(
                        Order.of("order")
                                .recipe(Recipe.of(
                                                "recipe",
                                                Furnish.of(
                                                        Share.percent(50),
                                                        Fibres.COTTON_RAG,
                                                        Share.percent(30),
                                                        Fibres.ABACA,
                                                        Share.percent(20),
                                                        Fibres.FLAX_RAW))
                                        .beating(hours(1.5))
                                        .beating(Fibres.ABACA, hours(5))
                                        .stockConsistency(Consistency.percent(1))
                                        .additive(Additive.of("aid", Additive.Purpose.FORMATION_AID), Dose.percent(0.2))
                                        .build())
                                .piece(cards().build())
                                .build(),
                        full().build()));
        cases.put(
                "thinner-than-fibres",
                () -> MakingPlan.of(
                        order(
                                Furnish.of(Fibres.KOZO),
                                Piece.of("cards", 40, "recipe")
                                        .size(mm(100), mm(150))
                                        .caliper(micrometres(15))
                                        .build()),
                        full().build()));
        cases.put(
                "no-such-dryer",
                () -> MakingPlan.of(
                        order(Furnish.of(Fibres.ABACA), cards().dryer("oven").build()), full().build()));
        cases.put(
                "nothing-known-of-the-fibre",
                () -> MakingPlan.of(
                        order(Furnish.of(IRIS).bought(IRIS, Form.HALF_STUFF), cards().build()), full().build()));
        cases.put(
                "slow-to-drain-and-folded-thick",
                () -> MakingPlan.of(
                        Order.of("order")
                                .recipe(Recipe.of("recipe", Furnish.of(Fibres.ABACA))
                                        .beating(hours(9))
                                        .build())
                                .piece(Piece.of("cover", 20, "recipe")
                                        .size(mm(200), mm(280))
                                        .grammage(Grammage.gsm(400))
                                        .folds(2)
                                        .build())
                                .build(),
                        full().build()));
        cases.put(
                "nearly-half-pigment",
                () -> MakingPlan.of(
                        Order.of("order")
                                .recipe(Recipe.of("recipe", Furnish.of(Fibres.COTTON_RAG))
                                        .additive(Additive.of("ochre", Additive.Purpose.PIGMENT), Dose.percent(45))
                                        .additive(Additive.of("aid", Additive.Purpose.RETENTION_AID), Dose.percent(0.1))
                                        .build())
                                .piece(cards().build())
                                .build(),
                        full().build()));
        cases.put(
                "thick-of-no-density",
                () -> MakingPlan.of(
                        order(
                                Furnish.of(Fibres.GAMPI),
                                Piece.of("cards", 40, "recipe")
                                        .size(mm(100), mm(150))
                                        .caliper(mm(0.2))
                                        .build()),
                        full().build()));
    }

    private static MakingPlan timed(double seconds) {
        return MakingPlan.of(
                Order.of("order")
                        .recipe(Recipe.of("recipe", Furnish.of(Fibres.ABACA))
                                .timedSheet(TimedSheet.of(
                                        Kinds.TIME.of(seconds, "s"), Grammage.gsm(90), Consistency.percent(0.5)))
                                .build())
                        .piece(cards().build())
                        .build(),
                full().build());
    }

    /** Cards like a sample of 100 by 100 mm, 0.1 mm thick, that weighs some grams. */
    private static MakingPlan likeSample(double mass) {
        Piece card = Piece.of("cards", 40, "recipe")
                .size(mm(100), mm(150))
                .sample(Piece.Sample.of(mm(100), mm(100), grams(mass), mm(0.1)))
                .build();
        return MakingPlan.of(order(Furnish.of(Fibres.COTTON_RAG), card), full().build());
    }

    private static Piece.Builder cards() {
        return Piece.of("cards", 40, "recipe").size(mm(100), mm(150)).grammage(Grammage.gsm(200));
    }

    private static Order order(Furnish furnish, Piece... pieces) {
        Order.Builder order = Order.of("order")
                .recipe(Recipe.of("recipe", furnish).beating(hours(3)).build());
        for (Piece piece : pieces) {
            order.piece(piece);
        }
        return order.build();
    }

    private static Studio.Builder dries(Dryer dryer) {
        return Studio.of("dries")
                .mould(Mould.of("folio", mm(320), mm(420)))
                .beater(Beater.of("beater", litres(40), grams(800)))
                .vat(Vat.of("vat", litres(80)))
                .dryer(dryer)
                .room(Air.of(celsius(20), RelativeHumidity.percent(50)));
    }

    private static Studio.Builder full() {
        return Studio.of("full")
                .mould(Mould.of("folio", mm(320), mm(420)))
                .beater(Beater.of("beater", litres(40), grams(800)))
                .vat(Vat.of("vat", litres(80)))
                .press(Press.of("press", kilonewtons(90), mm(400), mm(500)))
                .felts(Felts.of(mm(440), mm(540), Grammage.gsm(450), 21))
                .dryer(Dryer.boards("boards", 30))
                .room(Air.of(celsius(20), RelativeHumidity.percent(50)));
    }
}
