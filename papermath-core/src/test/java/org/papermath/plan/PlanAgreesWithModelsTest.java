package org.papermath.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.withinPercentage;
import static org.papermath.quantity.Amounts.celsius;
import static org.papermath.quantity.Amounts.grams;
import static org.papermath.quantity.Amounts.hours;
import static org.papermath.quantity.Amounts.kilonewtons;
import static org.papermath.quantity.Amounts.litres;
import static org.papermath.quantity.Amounts.micrometres;
import static org.papermath.quantity.Amounts.mm;

import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.papermath.air.Air;
import org.papermath.drying.Dryer;
import org.papermath.drying.DryingModel;
import org.papermath.engine.BatchFigure;
import org.papermath.engine.Engine;
import org.papermath.engine.Figures;
import org.papermath.engine.FormingSheets;
import org.papermath.engine.PieceFigure;
import org.papermath.engine.Pressing;
import org.papermath.engine.Settings;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Reading;
import org.papermath.evidence.Scope;
import org.papermath.fibre.Fibre;
import org.papermath.fibre.Fibres;
import org.papermath.fibre.Furnish;
import org.papermath.fibre.SorptionModel;
import org.papermath.mould.Mould;
import org.papermath.order.Order;
import org.papermath.order.Piece;
import org.papermath.order.Recipe;
import org.papermath.order.Studio;
import org.papermath.press.Felts;
import org.papermath.press.Press;
import org.papermath.press.PressingModel;
import org.papermath.pulp.Beater;
import org.papermath.pulp.BeatingModel;
import org.papermath.pulp.WaterRetentionModel;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Amounts;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.LinearShrinkage;
import org.papermath.quantity.MoistureRatio;
import org.papermath.quantity.RelativeHumidity;
import org.papermath.quantity.Share;
import org.papermath.quantity.VolumeFlow;
import org.papermath.quantity.WaterRetention;
import org.papermath.sheet.CouchedSheet;
import org.papermath.sheet.DensityModel;
import org.papermath.sheet.DrySheet;
import org.papermath.sheet.DryingPath;
import org.papermath.sheet.FormedSheet;
import org.papermath.sheet.PressedSheet;
import org.papermath.sheet.Restraint;
import org.papermath.sheet.ShrinkageModel;
import org.papermath.shape.Shrinkage;
import org.papermath.vat.Vat;

/** The plan works in plain numbers; what it forecasts is what the typed models answer for the same sheet. */
class PlanAgreesWithModelsTest {
    private static final Air ROOM = Air.of(celsius(20), RelativeHumidity.percent(55));
    private static final Press PRESS = Press.of("bench press", kilonewtons(90), mm(400), mm(500));
    private static final Beater BEATER = Beater.of("trough", litres(40), grams(800));
    private static final double SAME = 1e-7;

    private static Studio.Builder studio(Dryer dryer) {
        return Studio.of("bench").mould(Mould.of("folio", mm(300), mm(400))).room(ROOM).beater(BEATER)
                .vat(Vat.of("tub", litres(80))).press(PRESS)
                .felts(Felts.of(mm(380), mm(480), Grammage.gsm(450), 21)).dryer(dryer);
    }

    private static Order order(Furnish furnish, double hours) {
        return Order.of("one piece").recipe(Recipe.of("plain", furnish).beating(hours(hours)).build())
                .piece(Piece.of("sheet", 20, "plain").size(mm(200), mm(280)).grammage(Grammage.gsm(160)).build())
                .build();
    }

    static Stream<Arguments> cases() {
        List<Dryer> dryers = List.of(Dryer.fanStack("stack", VolumeFlow.cubicMetresPerHour(1500), 30),
                Dryer.boards("boards", 30), Dryer.loft("loft", 1, 60), Dryer.loft("spurs", 4, 60),
                Dryer.blotters("blotters", 20));
        return Stream.of(Fibres.COTTON_RAG, Fibres.ABACA, Fibres.FLAX_RAW)
                .flatMap(fibre -> dryers.stream().map(dryer -> Arguments.of(fibre, dryer)));
    }

    @ParameterizedTest
    @MethodSource("cases")
    void oneFibre(Fibre fibre, Dryer dryer) {
        agrees(Furnish.of(fibre), dryer, studio(dryer).build(), 3);
    }

    @Test
    void whatWasMeasuredOnDryerPressFibreAndBlendCountsInThePlanToo() {
        Dryer dryer = Dryer.fanStack("weighed stack", VolumeFlow.cubicMetresPerHour(1500), 30);
        Dryer loft = Dryer.loft("timed loft", 3, 60);
        Furnish blend = Furnish.of(Share.percent(60), Fibres.COTTON_RAG, Share.percent(40), Fibres.ABACA);
        Assumptions own = Assumptions.standard();
        own = DryingModel.calibrate(own, (Dryer.FanStack) dryer, Reading.of(grams(900), grams(5)), hours(4), ROOM);
        own = DryingModel.calibrate(own, loft, DryingModel.Batch.of(grams(500), Amounts.squareMetres(4),
                MoistureRatio.gramsPerGram(1.8), MoistureRatio.gramsPerGram(0.09), MoistureRatio.gramsPerGram(0.07)),
                Reading.of(hours(14), hours(0.5)), ROOM);
        CouchedSheet sheet = FormedSheet.ofGrammage(Grammage.gsm(140), mm(300), mm(400)).couched();
        own = PressingModel.calibrate(own, PRESS, sheet, Reading.of(Kinds.MASS.ofSi(2.4 * sheet.ovenDry().si()),
                grams(0.2)),
                WaterRetention.gramsPerGram(1.3), Kinds.SHEET_PRESSURE.of(0.5, "MPa"), Amounts.minutes(15));
        own = DensityModel.calibrate(own, Scope.of("abaca").on(PRESS.name()),
                Reading.of(Grammage.gsm(150), Grammage.gsm(1)), Reading.of(micrometres(210), micrometres(2)),
                Kinds.SHEET_PRESSURE.of(0.5, "MPa"), hours(3));
        own = SorptionModel.calibrate(own, Scope.of("abaca"), Reading.of(grams(10.9), grams(0.01)),
                Reading.of(grams(10), grams(0.01)), ROOM);
        own = ShrinkageModel.calibrateDirections(own, Scope.of("abaca"),
                Shrinkage.of(LinearShrinkage.percent(9), LinearShrinkage.percent(11)));
        for (Dryer one : List.of(dryer, loft)) {
            agrees(Furnish.of(Fibres.ABACA), one, studio(one).assumptions(own).build(), 3);
        }
        Assumptions mixed = own;
        for (String id : List.of("shrinkage.initial", "shrinkage.limit", "shrinkage.time", "sorption.monolayer",
                "sorption.energy", "sorption.bulk")) {
            mixed = mixed.with(own.get(id, Fibres.ABACA.scope()).given(blend.scope(),
                    1.1 * own.get(id, Fibres.COTTON_RAG.scope()).likely()));
        }
        mixed = mixed.with(own.get("shrinkage.direction-difference", blend.scope()).given(blend.scope(), 0.015));
        agrees(blend, loft, studio(loft).assumptions(mixed).build(), 3);
        agrees(blend, loft, studio(loft).assumptions(own).build(), 3);
    }

    private static void agrees(Furnish furnish, Dryer dryer, Studio studio, double hours) {
        Order order = order(furnish, hours);
        Assumptions known = studio.assumptions();
        Engine engine = Engine.of(order, studio);
        Settings settings = engine.decide(engine.likely());
        Figures out = engine.forecast(settings, engine.likely());
        FormingSheets.Setting formed = settings.sheet(0);
        Pressing.Setting set = Objects.requireNonNull(settings.press(0));

        double number = 0;
        double retention = 0;
        for (var part : furnish.shares().entrySet()) {
            var sr = BeatingModel.from(known, part.getKey().scope().on(BEATER.name())).after(hours(hours));
            number += part.getValue().si() * sr.si();
            retention += part.getValue().si()
                    * WaterRetentionModel.from(known, part.getKey().scope()).at(sr).value().si();
        }
        close(out.of(BatchFigure.DRAINABILITY, 0), number);
        close(out.of(BatchFigure.WATER_RETENTION, 0), retention);

        CouchedSheet couched = FormedSheet.of(Kinds.MASS.ofSi(out.of(PieceFigure.COUCHED, 0) * known.si("web.solids-couched", Scope.GENERAL)),
                Kinds.LENGTH.ofSi(formed.openingWidth()), Kinds.LENGTH.ofSi(formed.openingHeight())).couched();
        close(out.of(PieceFigure.COUCHED, 0), couched.mass().si());
        PressedSheet pressed = PressingModel.from(known, Scope.at(PRESS.name())).press(couched,
                Kinds.WATER_RETENTION.ofSi(retention), Kinds.SHEET_PRESSURE.ofSi(set.pressure()),
                Kinds.TIME.ofSi(set.time())).sheet();
        close(out.of(PieceFigure.SOLIDS, 0), pressed.solids().si());

        SorptionModel sorption = SorptionModel.from(known, furnish);
        Amount<MoistureRatio> room = sorption.ratio(ROOM);
        Amount<MoistureRatio> end = Kinds.MOISTURE_RATIO.ofSi(room.si() + known.si("drying.end-margin", Scope.GENERAL));
        ShrinkageModel.Result shrinks = ShrinkageModel.from(known, furnish).along(hours(hours),
                DryingPath.from(pressed).then(Restraint.of(dryer.restraint()), end));
        close(out.of(PieceFigure.SHRINK_ALONG, 0), shrinks.along().likely().si());
        close(out.of(PieceFigure.SHRINK_ACROSS, 0), shrinks.across().likely().si());

        DrySheet dry = pressed.dried(shrinks.shrinkage(), sorption, ROOM);
        DrySheet weighed = dry.conditioned(order.weighedIn());
        close(out.of(PieceFigure.GRAMMAGE, 0), weighed.grammage().si());
        DensityModel.Result caliper = DensityModel.from(known, furnish, PRESS.name()).of(weighed.grammage(),
                Kinds.SHEET_PRESSURE.ofSi(set.pressure()), hours(hours));
        close(out.of(PieceFigure.CALIPER, 0), caliper.caliper().likely().si());
        close(out.of(PieceFigure.DENSITY, 0), caliper.density().likely().si());

        DryingModel drying = DryingModel.from(known, Scope.at(dryer.name()));
        int load = Math.min(formed.sheets(), dryer.capacity());
        DryingModel.Batch batch = DryingModel.Batch.of(Kinds.MASS.ofSi(load * pressed.ovenDry().si()),
                Kinds.AREA.ofSi(load * pressed.area().si()), pressed.ratio(), end, room);
        close(out.of(PieceFigure.DRYING, 0), drying.dry(dryer, batch, ROOM).hours().si());
    }

    private static void close(double planned, double modelled) {
        assertThat(planned).isCloseTo(modelled, withinPercentage(SAME));
    }
}
