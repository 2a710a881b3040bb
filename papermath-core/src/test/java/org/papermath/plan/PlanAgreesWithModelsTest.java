package org.papermath.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.papermath.quantity.Amounts.celsius;
import static org.papermath.quantity.Amounts.grams;
import static org.papermath.quantity.Amounts.hours;
import static org.papermath.quantity.Amounts.kilonewtons;
import static org.papermath.quantity.Amounts.litres;
import static org.papermath.quantity.Amounts.micrometres;
import static org.papermath.quantity.Amounts.mm;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import javax.measure.quantity.Time;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.papermath.air.Air;
import org.papermath.air.Water;
import org.papermath.drying.Dryer;
import org.papermath.drying.DryingModel;
import org.papermath.drying.Ventilation;
import org.papermath.engine.DryingSheets;
import org.papermath.engine.Engine;
import org.papermath.engine.Figures;
import org.papermath.engine.FinishedSheet;
import org.papermath.engine.FormingSheets;
import org.papermath.engine.Posts;
import org.papermath.engine.PreparingStock;
import org.papermath.engine.Pressing;
import org.papermath.engine.Settings;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Reading;
import org.papermath.evidence.Scope;
import org.papermath.fibre.Fibre;
import org.papermath.fibre.Fibres;
import org.papermath.fibre.Furnish;
import org.papermath.fibre.SorptionModel;
import org.papermath.mould.FormingLayout;
import org.papermath.mould.Mould;
import org.papermath.order.Order;
import org.papermath.order.Piece;
import org.papermath.order.Recipe;
import org.papermath.order.Studio;
import org.papermath.press.Felts;
import org.papermath.press.Post;
import org.papermath.press.Press;
import org.papermath.press.PressingModel;
import org.papermath.pulp.Beater;
import org.papermath.pulp.BeatingModel;
import org.papermath.pulp.BeatingState;
import org.papermath.pulp.DrainabilityModel;
import org.papermath.pulp.Pulp;
import org.papermath.pulp.WaterRetentionModel;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Amounts;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.LinearShrinkage;
import org.papermath.quantity.MoistureRatio;
import org.papermath.quantity.Rate;
import org.papermath.quantity.RelativeHumidity;
import org.papermath.quantity.Share;
import org.papermath.quantity.SheetPressure;
import org.papermath.quantity.VolumeFlow;
import org.papermath.quantity.WaterRetention;
import org.papermath.shape.Shrinkage;
import org.papermath.sheet.CouchedSheet;
import org.papermath.sheet.DensityModel;
import org.papermath.sheet.DrySheet;
import org.papermath.sheet.DryingPath;
import org.papermath.sheet.FormedSheet;
import org.papermath.sheet.PressedSheet;
import org.papermath.sheet.Restraint;
import org.papermath.sheet.ShrinkageModel;
import org.papermath.testing.Beaten;
import org.papermath.vat.DrainageModel;
import org.papermath.vat.Recharge;
import org.papermath.vat.Vat;
import org.papermath.vat.VatCharge;

/** The plan works in plain numbers; what it forecasts is what the typed models answer for the same sheet. */
class PlanAgreesWithModelsTest {
    private static final Air ROOM = Air.of(celsius(20), RelativeHumidity.percent(55));
    private static final Press PRESS = Press.of("bench press", kilonewtons(90), mm(400), mm(500));
    private static final Beater BEATER = Beater.of("trough", litres(40), grams(800));
    private static final double SAME = 1e-12;
    private static final Dryer BOARDS = Dryer.boards("boards", 30);
    private static final List<Dryer> DRYERS = List.of(
            Dryer.fanStack("stack", VolumeFlow.cubicMetresPerHour(1500), 30),
            BOARDS,
            Dryer.stack("still stack", 30),
            Dryer.fanStack("layers", VolumeFlow.cubicMetresPerHour(1500), 7).inLayers(mm(500), mm(900)),
            Dryer.loft("loft", 1, 60),
            Dryer.loft("spurs", 4, 60),
            Dryer.blotters("blotters", 20));

    private static Studio.Builder studio(Dryer dryer) {
        return bare(dryer).press(PRESS);
    }

    private static Studio.Builder bare(Dryer dryer) {
        return bare(dryer, Felts.of(mm(380), mm(480), Grammage.gsm(450), 21));
    }

    private static Studio.Builder bare(Dryer dryer, Felts felts) {
        return Studio.of("bench")
                .mould(Mould.of("folio", mm(300), mm(400)))
                .room(ROOM)
                .beater(BEATER)
                .vat(Vat.of("tub", litres(80)))
                .felts(felts)
                .dryer(dryer);
    }

    private static Order order(Furnish furnish, double hours, double grammage) {
        return Order.of("one piece")
                .recipe(Recipe.of("plain", furnish).beating(hours(hours)).build())
                .piece(Piece.of("sheet", 20, "plain")
                        .size(mm(200), mm(280))
                        .grammage(Grammage.gsm(grammage))
                        .build())
                .build();
    }

    static Stream<Arguments> cases() {
        return Fibres.all().stream().flatMap(fibre -> DRYERS.stream().map(dryer -> Arguments.of(fibre, dryer)));
    }

    @ParameterizedTest
    @MethodSource("cases")
    void oneFibre(Fibre fibre, Dryer dryer) {
        agrees(Furnish.of(fibre), dryer, studio(dryer).build(), 3);
        agrees(Furnish.of(fibre), dryer, bare(dryer).build(), 3);
    }

    /** Pressed three times in a press wide enough for four sheets to a felt, whose thickness was measured. */
    @ParameterizedTest
    @MethodSource("cases")
    void fourToAFelt(Fibre fibre, Dryer dryer) {
        Press wide = Press.of("wide press", kilonewtons(400), mm(700), mm(900)).pressings(3);
        Felts felts = Felts.of(mm(650), mm(850), Grammage.gsm(600), 21).thickness(mm(2.1));
        Studio studio = bare(dryer, felts).press(wide).build();
        agrees(Furnish.of(fibre), dryer, studio, 3);
        Engine engine = Engine.of(order(Furnish.of(fibre), 3, 160), studio);
        assertThat(engine.decide(engine.likely()).posts(0).onFelt()).isEqualTo(4);
    }

    static Stream<Furnish> blends() {
        return Stream.of(
                Furnish.of(Share.percent(70), Fibres.COTTON_RAG, Share.percent(30), Fibres.ABACA),
                Furnish.of(Share.percent(50), Fibres.KOZO, Share.percent(50), Fibres.ABACA),
                Furnish.of(Share.percent(20), Fibres.KOZO, Share.percent(80), Fibres.ESPARTO),
                Furnish.of(Share.percent(60), Fibres.SOFTWOOD_KRAFT, Share.percent(40), Fibres.FLAX_RAW));
    }

    @ParameterizedTest
    @MethodSource("blends")
    void blend(Furnish furnish) {
        for (Dryer dryer : DRYERS) {
            agrees(furnish, dryer, studio(dryer).build(), 2.5);
            agrees(furnish, dryer, bare(dryer).build(), 2.5);
        }
    }

    /** Every value of a law, given for all and for the place it is looked up at. */
    static Stream<Arguments> ownValues() {
        Scope press = Scope.at(PRESS.name());
        return Stream.of(
                Arguments.of("sheet.density-reference-pressure", Scope.GENERAL, 0.2),
                Arguments.of("sheet.density-reference-pressure", Scope.of("kozo"), 0.2),
                Arguments.of("sheet.density-exponent", Scope.GENERAL, 0.15),
                Arguments.of("sheet.density-exponent", Scope.of("abaca"), 0.14),
                Arguments.of("sheet.density-exponent", press, 0.13),
                Arguments.of("sheet.density-saturation-pressure", Scope.of("abaca"), 120000),
                Arguments.of("sheet.density-least-pressure", Scope.GENERAL, 700),
                Arguments.of("sheet.density-most", Scope.GENERAL, 400),
                Arguments.of("sheet.thinnest", Scope.GENERAL, 0.05),
                Arguments.of("web.couched-per-retention", Scope.at("tub"), 5),
                Arguments.of("sorption.desorption-offset", Scope.GENERAL, 0.02),
                Arguments.of("sheet.density-unbeaten", Scope.of("kozo"), 280),
                Arguments.of("sheet.density-lightly-pressed", Scope.of("kozo").on(PRESS.name()), 350),
                Arguments.of("press.reference-pressure", Scope.GENERAL, 350000),
                Arguments.of("press.exponent", press, 0.25),
                Arguments.of("press.factor", press, 1.3),
                Arguments.of("press.time-constant", Scope.GENERAL, 80),
                Arguments.of("press.floor", press, 0.9),
                Arguments.of("press.rewet", press, 0.01),
                Arguments.of("beating.drainability-unbeaten", Scope.GENERAL, 15.5),
                Arguments.of("beating.drainability-unbeaten", Scope.of("abaca").on(BEATER.name()), 20),
                Arguments.of("beating.drainability-unbeaten", Scope.of("abaca"), 18),
                Arguments.of("beating.drainability-limit", Scope.of("abaca"), 90),
                Arguments.of("beating.drainability-limit", Scope.at(BEATER.name()), 92),
                Arguments.of("shrinkage.onset", Scope.of("abaca"), 0.9),
                Arguments.of("shrinkage.direction-difference", Scope.GENERAL, 0.03),
                Arguments.of("restraint.share", Scope.of(BOARDS.restraint()), 0.8),
                Arguments.of("sorption.temperature-slope", Scope.GENERAL, -0.0008),
                Arguments.of("drying.end-margin", Scope.GENERAL, 0.03),
                Arguments.of("drying.critical-ratio", Scope.at("stack"), 0.8),
                Arguments.of("drying.stack-conductance", Scope.at("stack"), 0.002),
                Arguments.of("drying.stack-still", Scope.at("still stack"), 0.45),
                Arguments.of("drying.delivered-share", Scope.GENERAL, 0.3),
                Arguments.of("drying.film-still", Scope.at("loft"), 8),
                Arguments.of("drying.radiative", Scope.GENERAL, 5),
                Arguments.of("drying.loft-view", Scope.at("loft"), 0.7),
                Arguments.of("drying.lewis", Scope.GENERAL, 0.9),
                Arguments.of("drying.loft-tail", Scope.at("boards"), 1.9),
                Arguments.of("drying.blotter-kept", Scope.at("blotters"), 0.6),
                Arguments.of("drying.blotter-capacity", Scope.at("blotters"), 0.7),
                Arguments.of("drying.blotter-hours", Scope.at("blotters"), 6));
    }

    @ParameterizedTest
    @MethodSource("ownValues")
    void ownValue(String id, Scope scope, double value) {
        Assumptions own = Assumptions.standard().given(id, scope, value);
        for (Furnish furnish : List.of(
                Furnish.of(Fibres.KOZO),
                Furnish.of(Fibres.ABACA),
                Furnish.of(Share.percent(40), Fibres.KOZO, Share.percent(60), Fibres.ABACA))) {
            for (Dryer dryer : DRYERS) {
                agrees(furnish, dryer, studio(dryer).assumptions(own).build(), 3);
            }
        }
    }

    /** So thin that single fibres set the thickness, and as light a press as there is. */
    @Test
    void thinSheetAndWeakPress() {
        for (double grammage : new double[] {6, 9.5, 14}) {
            agrees(Furnish.of(Fibres.KOZO), BOARDS, studio(BOARDS).build(), 1, grammage);
        }
        Press weak = Press.of(PRESS.name(), kilonewtons(5), mm(400), mm(500));
        agrees(Furnish.of(Fibres.ABACA), BOARDS, bare(BOARDS).press(weak).build(), 3);
    }

    @Test
    void dryingInAVentilatedRoom() {
        Ventilation draughty = Ventilation.of(Amounts.cubicMetres(60), Rate.perHour(1.5));
        for (Dryer dryer : DRYERS) {
            agrees(
                    Furnish.of(Fibres.ABACA),
                    dryer,
                    studio(dryer).ventilation(draughty).build(),
                    3);
        }
    }

    @Test
    void whatWasMeasuredOnDryerPressFibreAndBlendCountsInThePlanToo() {
        Dryer dryer = Dryer.fanStack("weighed stack", VolumeFlow.cubicMetresPerHour(1500), 30);
        Dryer loft = Dryer.loft("timed loft", 3, 60);
        Furnish blend = Furnish.of(Share.percent(60), Fibres.COTTON_RAG, Share.percent(40), Fibres.ABACA);
        Assumptions own = Assumptions.standard();
        own = DryingModel.calibrate(
                own, (Dryer.FanStack) dryer, Reading.of(grams(900), grams(5)), hours(4), Amounts.squareMetres(4), ROOM);
        own = DryingModel.calibrate(
                own,
                loft,
                DryingModel.Batch.of(
                        grams(500),
                        Amounts.squareMetres(4),
                        MoistureRatio.gramsPerGram(1.8),
                        MoistureRatio.gramsPerGram(0.09),
                        MoistureRatio.gramsPerGram(0.07)),
                Reading.of(hours(14), hours(0.5)),
                ROOM);
        CouchedSheet sheet =
                FormedSheet.ofGrammage(Grammage.gsm(140), mm(300), mm(400)).couched();
        own = PressingModel.calibrate(
                own,
                PRESS,
                sheet,
                Reading.of(Kinds.MASS.ofSi(2.4 * sheet.ovenDry().si()), grams(0.2)),
                WaterRetention.gramsPerGram(1.3),
                Kinds.SHEET_PRESSURE.of(0.5, "MPa"),
                Amounts.minutes(15));
        own = DensityModel.calibrate(
                own,
                Scope.of("abaca").on(PRESS.name()),
                Reading.of(Grammage.gsm(150), Grammage.gsm(1)),
                Reading.of(micrometres(210), micrometres(2)),
                Kinds.SHEET_PRESSURE.of(0.5, "MPa"),
                Beaten.hours(Fibres.ABACA, 3));
        own = SorptionModel.calibrate(
                own,
                Fibres.ABACA.scope(),
                Reading.of(grams(10.9), grams(0.01)),
                Reading.of(grams(10), grams(0.01)),
                ROOM);
        own = ShrinkageModel.calibrateDirections(
                own,
                Scope.of("abaca"),
                Shrinkage.across(LinearShrinkage.percent(11)).along(LinearShrinkage.percent(9)));
        for (Dryer one : List.of(dryer, loft)) {
            agrees(Furnish.of(Fibres.ABACA), one, studio(one).assumptions(own).build(), 3);
        }
        Assumptions mixed = own;
        for (String id : List.of(
                "shrinkage.initial", "shrinkage.limit", "sorption.monolayer", "sorption.energy", "sorption.bulk")) {
            mixed = mixed.with(own.get(id, Fibres.ABACA.scope())
                    .given(
                            blend.scope(),
                            1.1 * own.get(id, Fibres.COTTON_RAG.scope()).likely()));
        }
        mixed = mixed.with(
                own.get("shrinkage.direction-difference", blend.scope()).given(blend.scope(), 0.015));
        agrees(blend, loft, studio(loft).assumptions(mixed).build(), 3);
        agrees(blend, loft, studio(loft).assumptions(own).build(), 3);
    }

    private static void agrees(Furnish furnish, Dryer dryer, Studio studio, double hours) {
        agrees(furnish, dryer, studio, hours, 160);
    }

    private static void agrees(Furnish furnish, Dryer dryer, Studio studio, double hours, double grammage) {
        Order order = order(furnish, hours, grammage);
        Assumptions known = studio.assumptions();
        Engine engine = Engine.of(order, studio);
        Settings settings = engine.decide(engine.likely());
        Figures out = engine.forecast(settings, engine.likely());
        FormingSheets.Setting formed = settings.sheet(0);
        Pressing.Setting set = settings.press(0);
        String press = studio.press().map(Press::name).orElse("");

        // A smaller load passes the roll more often.
        double load =
                settings.stock(0).runs().get(0).ovenDry() / engine.stock(0).fullLoad();
        Amount<Time> time = hours(hours / Math.max(0.5, Math.min(1, load)));
        BeatingState state = BeatingState.after(known, furnish, BEATER.name(), time);
        close(
                out.of(PreparingStock.DRAINABILITY, 0),
                state.drainability().orElseThrow().si());
        double retention = 0;
        double beaten = 0;
        for (var part : furnish.shares().entrySet()) {
            Scope fibre = part.getKey().scope();
            retention += part.getValue().si()
                    * WaterRetentionModel.from(known, fibre)
                            .at(BeatingModel.from(known, fibre.on(BEATER.name()))
                                    .after(time))
                            .value()
                            .si();
            beaten += part.getValue().si() * state.of(part.getKey()).si();
        }
        close(out.of(PreparingStock.BEATING, 0), beaten);
        close(out.of(PreparingStock.WATER_RETENTION, 0), retention);

        CouchedSheet couched = FormedSheet.of(
                        Kinds.MASS.ofSi(out.of(FormingSheets.COUCHED, 0)
                                / (1 + known.si("web.couched-per-retention", Scope.at("tub")) * retention)),
                        Kinds.LENGTH.ofSi(formed.openingWidth()),
                        Kinds.LENGTH.ofSi(formed.openingHeight()))
                .couched(known, Scope.at("tub"), Kinds.WATER_RETENTION.ofSi(retention));
        close(out.of(FormingSheets.COUCHED, 0), couched.mass().si());
        PressingModel pressing = PressingModel.from(known, press.isEmpty() ? Scope.GENERAL : Scope.at(press));
        PressedSheet pressed = set != null
                ? pressing.press(
                                couched,
                                Kinds.WATER_RETENTION.ofSi(retention),
                                Kinds.SHEET_PRESSURE.ofSi(set.pressure()),
                                Kinds.TIME.ofSi(set.time()))
                        .sheet()
                : couched.unpressed();
        for (int again = 2; set != null && again <= set.times(); again++) {
            pressed = pressing.pressAgain(
                            pressed,
                            again,
                            Kinds.WATER_RETENTION.ofSi(retention),
                            Kinds.SHEET_PRESSURE.ofSi(set.pressure()),
                            Kinds.TIME.ofSi(set.time()))
                    .sheet();
        }
        if (dryer instanceof Dryer.Blotters) {
            pressed = pressing.betweenBlotters(pressed, Kinds.WATER_RETENTION.ofSi(retention));
        }
        close(out.of(Pressing.SOLIDS, 0), pressed.solids().si());
        Posts.Setting posts = settings.posts(0);
        if (posts != null) {
            Post post = Post.of(
                    known,
                    press.isEmpty() ? Scope.GENERAL : Scope.at(press),
                    studio.felts().orElseThrow(),
                    posts.sheets(),
                    posts.onFelt(),
                    couched);
            close(out.of(Posts.POST_MASS, 0), post.mass().si());
            // The water of the tub has the density of its temperature.
            assertThat(out.of(Posts.POST_HEIGHT, 0))
                    .isCloseTo(post.height().si(), within(1e-3 * post.height().si()));
        }

        SorptionModel sorption = SorptionModel.from(known, furnish).fromWetSide();
        Amount<MoistureRatio> room = sorption.ratio(ROOM);
        Amount<MoistureRatio> end = Kinds.MOISTURE_RATIO.ofSi(room.si() + known.si("drying.end-margin", Scope.GENERAL));
        DryingPath path = DryingPath.from(pressed).then(Restraint.of(dryer.restraint()), end);
        Shrinkage shrinks = shrinkage(known, furnish, state, retention, path)
                .orElseGet(() -> Shrinkage.across(Kinds.LINEAR_SHRINKAGE.ofSi(out.of(DryingSheets.SHRINK_ACROSS, 0)))
                        .along(Kinds.LINEAR_SHRINKAGE.ofSi(out.of(DryingSheets.SHRINK_ALONG, 0))));
        close(out.of(DryingSheets.SHRINK_ALONG, 0), shrinks.alongFraction());
        close(out.of(DryingSheets.SHRINK_ACROSS, 0), shrinks.acrossFraction());

        DrySheet weighed = pressed.dried(shrinks, sorption, ROOM).conditioned(order.weighedIn());
        close(out.of(FinishedSheet.GRAMMAGE, 0), weighed.grammage().si());
        if (hasDensity(known, furnish, press)) {
            Amount<SheetPressure> last = Kinds.SHEET_PRESSURE.ofSi(set == null ? 1 : set.pressure());
            DensityModel.Result caliper =
                    DensityModel.from(known, furnish, press).of(weighed.grammage(), last, state);
            close(out.of(FinishedSheet.CALIPER, 0), caliper.caliper().likely().si());
            close(out.of(FinishedSheet.DENSITY, 0), caliper.density().likely().si());
        } else {
            assertThat(out.of(FinishedSheet.CALIPER, 0)).isNaN();
        }

        DryingModel drying = DryingModel.from(known, Scope.at(dryer.name()));
        int inLayer = dryer.layer()
                .map(layer -> layer.sheets(
                        Kinds.LENGTH.ofSi(formed.openingWidth()),
                        Kinds.LENGTH.ofSi(formed.openingHeight()),
                        known.amount("drying.gap", Scope.GENERAL, Kinds.LENGTH)))
                .orElse(1);
        int filling = Math.min(formed.sheets(), dryer.capacity() * inLayer);
        DryingModel.Batch batch = DryingModel.Batch.of(
                Kinds.MASS.ofSi(filling * pressed.ovenDry().si()),
                Kinds.AREA.ofSi(filling * pressed.area().si()),
                pressed.ratio(),
                end,
                room);
        close(
                out.of(DryingSheets.DRYING, 0),
                studio.ventilation()
                        .map(through -> drying.dry(dryer, batch, ROOM, through))
                        .orElseGet(() -> drying.dry(dryer, batch, ROOM))
                        .hours()
                        .si());
    }

    /** Dipped or poured, in cold water and in warm. */
    @ParameterizedTest
    @ValueSource(doubles = {8, 20, 38, 45})
    void drains(double celsius) {
        Dryer boards = BOARDS;
        for (Assumptions known : List.of(
                Assumptions.standard(),
                Assumptions.standard().given("drainage.suction-factor", Scope.at("tub"), 0.8))) {
            Studio studio = Studio.of("bench")
                    .mould(Mould.of("folio", mm(300), mm(400)))
                    .room(ROOM)
                    .beater(BEATER)
                    .vat(Vat.of("tub", litres(80)).at(celsius(celsius)))
                    .dryer(boards)
                    .assumptions(known)
                    .build();
            Engine engine = Engine.of(order(Furnish.of(Fibres.ABACA), 2, 160), studio);
            Settings settings = engine.decide(engine.likely());
            Figures out = engine.forecast(settings, engine.likely());
            assertThat(settings.vat(0).dipped()).isTrue();
            Water water = Water.at(celsius(celsius));
            double c = settings.vat(0).vat().consistency();
            double perVolume = c
                    / (c / known.si("fibre.cell-wall-density", Scope.GENERAL)
                            + (1 - c) / water.density().si());
            double fibre = out.of(FormingSheets.COUCHED, 0)
                    / (1
                            + known.si("web.couched-per-retention", Scope.at("tub"))
                                    * out.of(PreparingStock.WATER_RETENTION, 0))
                    / (settings.sheet(0).openingWidth() * settings.sheet(0).openingHeight());
            var depth = DrainageModel.depth(
                    Kinds.GRAMMAGE.ofSi(fibre),
                    known.amount("vat.retention", Fibres.ABACA.scope().on("tub"), Kinds.SHARE),
                    Kinds.FIBRE_CONCENTRATION.ofSi(perVolume));
            var resistance = DrainabilityModel.from(known, Scope.at("tub"))
                    .resistance(Kinds.SCHOPPER_RIEGLER.ofSi(out.of(PreparingStock.DRAINABILITY, 0)))
                    .likely();
            close(
                    out.of(FormingSheets.DRAIN, 0),
                    DrainageModel.from(known, Scope.at("tub"))
                            .drain(depth, Kinds.FIBRE_CONCENTRATION.ofSi(perVolume), resistance, water)
                            .time()
                            .si());
        }
    }

    /** Exact tools, one cycle: the vat of the plan and the typed table give the same sheets, and as many of them. */
    @ParameterizedTest
    @ValueSource(doubles = {0.02, 0.05, 0.12})
    void oneCycleOfTheVat(double tolerance) {
        Assumptions known = Assumptions.standard()
                .given("vat.tolerance", Scope.GENERAL, tolerance)
                .given("vat.lift-factor", Scope.GENERAL, 1.02)
                .given("vat.retention", Scope.GENERAL, 0.96);
        Studio studio = studio(BOARDS)
                .scaleStep(grams(0.001))
                .jugStep(litres(0.0001))
                .assumptions(known)
                .build();
        Engine engine = Engine.of(order(Furnish.of(Fibres.KOZO), 1, 60), studio);
        Settings settings = engine.decide(engine.likely());
        int sheets = settings.sheet(0).sheets();
        double c = settings.vat(0).vat().consistency();
        double lift = settings.vat(0).lift() * 1.02;
        VatCharge charge = VatCharge.of(
                Pulp.ofVolume(litres(80), Kinds.CONSISTENCY.ofSi(c)),
                Kinds.MASS.ofSi(lift),
                Share.percent(96),
                Kinds.SOLIDS.ofSi(1
                        / (1
                                + known.si("web.couched-per-retention", Scope.at("tub"))
                                        * engine.forecast(settings, engine.likely())
                                                .of(PreparingStock.WATER_RETENTION, 0))));
        Recharge table = Recharge.within(
                charge,
                Kinds.MASS.ofSi(0.96 * lift * c),
                Kinds.SHARE.ofSi(tolerance),
                sheets,
                Kinds.CONSISTENCY.ofSi(engine.stock(0).stockConsistency()),
                Recharge.Level.HELD);
        assertThat(table.every()).isLessThan(sheets);
        assertThat(settings.vat(0).every()).isEqualTo(table.every());
    }

    static Stream<Arguments> runs() {
        return Stream.of(1, 2, 3, 5, 8, 40)
                .flatMap(count -> Stream.of(
                        Arguments.of(count, 148, 210), Arguments.of(count, 70, 100), Arguments.of(count, 210, 297)));
    }

    /** The mould of a plan is the one the layout takes for as many pieces. */
    @ParameterizedTest
    @MethodSource("runs")
    void mould(int count, int width, int height) {
        Assumptions known = Assumptions.standard();
        for (String step : List.of("forming", "pressing", "drying", "sizing", "cutting")) {
            known = known.given("reject." + step, Scope.GENERAL, 0);
        }
        List<Mould> moulds = List.of(
                Mould.of("folio", mm(300), mm(400)),
                Mould.of("small", mm(162), mm(224)),
                Mould.of("long", mm(180), mm(460)),
                Mould.of("large", mm(480), mm(640)));
        Studio.Builder builder = Studio.of("moulds").assumptions(known);
        moulds.forEach(builder::mould);
        MakingPlan plan = MakingPlan.withoutBands(
                Order.of("some")
                        .recipe(Recipe.of("plain", Furnish.of(Fibres.COTTON_RAG))
                                .beating(hours(2))
                                .build())
                        .piece(Piece.of("piece", count, "plain")
                                .size(mm(width), mm(height))
                                .grammage(Grammage.gsm(120))
                                .spare(Share.percent(0))
                                .trials(0)
                                .trim(mm(3))
                                .build())
                        .build(),
                builder.build());
        PiecePlan piece = plan.piece("piece");
        FormingLayout layout = FormingLayout.best(
                moulds,
                mm(width),
                mm(height),
                Shrinkage.across(piece.finished().shrinkageAcross().likely())
                        .along(piece.finished().shrinkageAlong().likely()),
                mm(6),
                mm(0),
                count);
        assertThat(piece.forming().mould().map(Mould::name))
                .isEqualTo(layout.mould().map(Mould::name));
        assertThat(piece.counts().perSheet()).isEqualTo(layout.count());
    }

    /** By a trial where every fibre has one, by the water it holds for a single fibre without; a mixed blend neither. */
    private static Optional<Shrinkage> shrinkage(
            Assumptions known, Furnish furnish, BeatingState state, double retention, DryingPath path) {
        ShrinkageModel model = ShrinkageModel.from(known, furnish);
        boolean whole = known.find("shrinkage.limit", furnish.scope()).isPresent();
        long tried = furnish.fibres().stream()
                .filter(fibre -> known.find("shrinkage.limit", fibre.scope()).isPresent())
                .count();
        if (whole || tried == furnish.fibres().size()) {
            return Optional.of(model.along(state, path).shrinkage());
        }
        return tried > 0 || furnish.isBlend()
                ? Optional.empty()
                : Optional.of(model.alongByRetention(Kinds.WATER_RETENTION.ofSi(retention), path)
                        .shrinkage());
    }

    private static boolean hasDensity(Assumptions known, Furnish furnish, String press) {
        return furnish.fibres().stream().allMatch(fibre -> {
            Scope scope = press.isEmpty() ? fibre.scope() : fibre.scope().on(press);
            return known.find("sheet.density-unbeaten", scope).isPresent()
                            && known.find("sheet.density-long-beaten", scope).isPresent()
                    || known.find("sheet.density-lightly-pressed", scope).isPresent();
        });
    }

    private static void close(double planned, double modelled) {
        assertThat(planned).isCloseTo(modelled, within(SAME * Math.max(Math.abs(modelled), 1e-9)));
    }
}
