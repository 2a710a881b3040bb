package org.papermath.json;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import com.networknt.schema.InputFormat;
import java.lang.reflect.Field;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Consumer;
import java.util.function.IntConsumer;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.papermath.air.Air;
import org.papermath.drying.Dryer;
import org.papermath.drying.Ventilation;
import org.papermath.evidence.Reading;
import org.papermath.fibre.Fibres;
import org.papermath.fibre.Furnish;
import org.papermath.format.Format;
import org.papermath.format.FormatSystem;
import org.papermath.mould.Deckle;
import org.papermath.mould.Mould;
import org.papermath.order.Order;
import org.papermath.order.OwnStep;
import org.papermath.order.Piece;
import org.papermath.order.Recipe;
import org.papermath.order.Studio;
import org.papermath.press.Felts;
import org.papermath.press.Lever;
import org.papermath.press.Press;
import org.papermath.press.RamGauge;
import org.papermath.pulp.Additive;
import org.papermath.pulp.Beater;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Amounts;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Limits;
import org.papermath.quantity.Rate;
import org.papermath.quantity.Refused;
import org.papermath.quantity.RelativeHumidity;
import org.papermath.quantity.Units;
import org.papermath.record.BatchRecord;
import org.papermath.shape.Outline;
import org.papermath.vat.Vat;

/** Every bound at its limit and just beyond: builder, reader and schema draw the line at the same place. */
class EveryBoundTest {
    private static final Amount<Length> SIDE = Amounts.mm(300);

    /** A bound of a count: the field of the table, the document, what stands there, with # for the count. */
    private record Counted(
            String bound, Limits.Count limits, String document, String from, String to, IntConsumer builder) {
        @Override
        public String toString() {
            return bound;
        }
    }

    /** A bound of a quantity. */
    private record Measured<Q extends Quantity<Q>>(
            String bound,
            Limits.Range<Q> limits,
            String document,
            String from,
            String to,
            Consumer<Amount<Q>> builder) {
        void build(String text) {
            builder.accept(limits.kind().read(text));
        }

        @Override
        public String toString() {
            return bound;
        }
    }

    private static Piece.Builder piece() {
        return Piece.of("p", 1, "r");
    }

    private static Recipe.Builder recipe() {
        return Recipe.of("r", Furnish.of(Fibres.ABACA));
    }

    private static Studio.Builder studio() {
        return Studio.of("s");
    }

    static List<Counted> counts() {
        return List.of(
                new Counted(
                        "PIECES", Limits.PIECES, "order", "\"count\": 96", "\"count\": #", n -> Piece.of("p", n, "r")),
                new Counted("KEPT", Limits.KEPT, "order", "\"kept\": 2", "\"kept\": #", n -> piece().kept(n)),
                new Counted(
                        "PEOPLE", Limits.PEOPLE, "studio", "\"people\": 2", "\"people\": #", n -> studio().people(n)),
                new Counted("TRIALS", Limits.TRIALS, "order", "\"trials\": 3", "\"trials\": #", n -> piece().trials(n)),
                new Counted("FOLDS", Limits.FOLDS, "order", "\"folds\": 1", "\"folds\": #", n -> piece().folds(n)),
                new Counted(
                        "INSERTS",
                        Limits.INSERTS,
                        "order",
                        "\"inserts\": 2",
                        "\"inserts\": #",
                        n -> piece().inserts(n)),
                new Counted(
                        "FELTS",
                        Limits.FELTS,
                        "studio",
                        "\"count\": 25",
                        "\"count\": #",
                        n -> Felts.of(SIDE, SIDE, Grammage.gsm(500), n)),
                new Counted(
                        "PRESSINGS",
                        Limits.PRESSINGS,
                        "studio",
                        "\"pressings\": 2",
                        "\"pressings\": #",
                        n -> Press.of("p", Amounts.kilonewtons(9), SIDE, SIDE).pressings(n)),
                new Counted(
                        "AT_THE_LEVER",
                        Limits.AT_THE_LEVER,
                        "studio",
                        "\"people\": 3",
                        "\"people\": #",
                        n -> Lever.of(SIDE, n)),
                new Counted(
                        "DRYER_CAPACITY",
                        Limits.DRYER_CAPACITY,
                        "studio",
                        "\"capacity\": 24",
                        "\"capacity\": #",
                        n -> Dryer.boards("d", n)),
                new Counted(
                        "SPUR",
                        Limits.SPUR,
                        "studio",
                        "\"sheetsInSpur\": 4",
                        "\"sheetsInSpur\": #",
                        n -> Dryer.loft("d", n, 100)),
                new Counted(
                        "DECKLE_SPLIT",
                        Limits.DECKLE_SPLIT,
                        "studio",
                        "\"across\": 1, \"along\": 2, \"strip\": " + "\"12 mm\"",
                        "\"across\": #, \"along\": 2, \"strip\": \"0 mm\"",
                        n -> Deckle.of(SIDE, SIDE).split(n, 2, Amounts.mm(0))),
                new Counted(
                        "DECKLE_SPLIT",
                        Limits.DECKLE_SPLIT,
                        "studio",
                        "\"along\": 2, \"strip\": \"12 mm\"",
                        "\"along\": #, \"strip\": \"0 mm\"",
                        n -> Deckle.of(SIDE, SIDE).split(2, n, Amounts.mm(0))),
                new Counted(
                        "MOULDS_IN_TURN",
                        Limits.MOULDS_IN_TURN,
                        "studio",
                        "\"inTurn\": 2",
                        "\"inTurn\": #",
                        n -> Mould.of("m", SIDE, SIDE).inTurn(n)));
    }

    static List<Measured<?>> quantities() {
        return List.of(
                new Measured<>(
                        "PIECE_SIDE",
                        Limits.PIECE_SIDE,
                        "order",
                        "[\"300 mm\", \"400 mm\"]",
                        "[\"300 mm\", \"#\"]",
                        q -> piece().size(SIDE, q)),
                new Measured<>(
                        "PIECE_SIDE",
                        Limits.PIECE_SIDE,
                        "order",
                        "[\"300 mm\", \"400 mm\"]",
                        "[\"#\", \"300 mm\"]",
                        q -> piece().size(q, SIDE)),
                new Measured<>(
                        "PIECE_GRAMMAGE", Limits.PIECE_GRAMMAGE, "order", "130 g/m2", "#", q -> piece().grammage(q)),
                new Measured<>("PIECE_CALIPER", Limits.PIECE_CALIPER, "order", "0.4 mm", "#", q -> piece().caliper(q)),
                new Measured<>(
                        "SPARE",
                        Limits.SPARE,
                        "order",
                        "\"spare\": \"12 %\"",
                        "\"spare\": \"#\"",
                        q -> piece().spare(q)),
                new Measured<>(
                        "TRIM", Limits.TRIM, "order", "\"trim\": \"4 mm\"", "\"trim\": \"#\"", q -> piece().trim(q)),
                new Measured<>("GAP", Limits.GAP, "order", "\"gap\": \"3 mm\"", "\"gap\": \"#\"", q -> piece().gap(q)),
                new Measured<>(
                        "CLEARANCE",
                        Limits.CLEARANCE,
                        "order",
                        "\"clearance\": \"6 mm\"",
                        "\"clearance\": \"#\"",
                        q -> piece().clearance(q)),
                new Measured<>(
                        "SAMPLE_SIDE",
                        Limits.SAMPLE_SIDE,
                        "order",
                        "[\"100 mm\", \"100 mm\"]",
                        "[\"100 mm\", \"#\"]",
                        q -> Piece.Sample.of(SIDE, q, Amounts.grams(1), Amounts.mm(0.2))),
                new Measured<>(
                        "SAMPLE_SIDE",
                        Limits.SAMPLE_SIDE,
                        "order",
                        "[\"100 mm\", \"100 mm\"]",
                        "[\"#\", \"100 mm\"]",
                        q -> new Piece.Sample(q, SIDE, Amounts.grams(1), Amounts.mm(0.2))),
                new Measured<>(
                        "SAMPLE_MASS",
                        Limits.SAMPLE_MASS,
                        "order",
                        "1.3 g",
                        "#",
                        q -> new Piece.Sample(SIDE, SIDE, q, Amounts.mm(0.2))),
                new Measured<>(
                        "SAMPLE_CALIPER",
                        Limits.SAMPLE_CALIPER,
                        "order",
                        "0.25 mm",
                        "#",
                        q -> new Piece.Sample(SIDE, SIDE, Amounts.grams(1), q)),
                new Measured<>(
                        "FORMAT_SIDE",
                        Limits.FORMAT_SIDE,
                        "format",
                        "3 m",
                        "#",
                        q -> Format.of("f", FormatSystem.TRADITIONAL, Format.Use.CARD, Amounts.metres(3), q)),
                new Measured<>("BEATING", Limits.BEATING, "recipe", "2.5 h", "#", q -> recipe().beating(q)),
                new Measured<>(
                        "DRAINABILITY", Limits.DRAINABILITY, "recipe", "31 SR", "#", q -> recipe().drainability(q)),
                new Measured<>(
                        "BEATER_CONSISTENCY",
                        Limits.BEATER_CONSISTENCY,
                        "recipe",
                        "1.8 %",
                        "#",
                        q -> recipe().beaterConsistency(q)),
                new Measured<>(
                        "STOCK_CONSISTENCY",
                        Limits.STOCK_CONSISTENCY,
                        "recipe",
                        "1.6 %",
                        "#",
                        q -> recipe().stockConsistency(q)),
                new Measured<>(
                        "VAT_CONSISTENCY",
                        Limits.VAT_CONSISTENCY,
                        "recipe",
                        "\"0.4 %\"",
                        "\"#\"",
                        q -> recipe().vatConsistency(q)),
                new Measured<>("SIZE_BATH", Limits.SIZE_BATH, "recipe", "30 g/L", "#", q -> recipe().sizeBath(q)),
                new Measured<>(
                        "DOSE",
                        Limits.DOSE,
                        "recipe",
                        "\"4 %\"",
                        "\"#\"",
                        q -> recipe().additive(Additive.of("a", Additive.Purpose.FILLER), q)),
                new Measured<>(
                        "TROUGH", Limits.TROUGH, "studio", "45 L", "#", q -> Beater.of("b", q, Amounts.kilograms(1))),
                new Measured<>(
                        "RATED_LOAD",
                        Limits.RATED_LOAD,
                        "studio",
                        "900 g",
                        "#",
                        q -> Beater.of("b", Amounts.litres(40), q)),
                new Measured<>(
                        "VAT_VOLUME",
                        Limits.VAT_VOLUME,
                        "studio",
                        "\"70 L\", \"runDownTo\": \"35 L\"",
                        "\"#\"",
                        q -> Vat.of("v", q)),
                new Measured<>(
                        "VAT_TEMPERATURE",
                        Limits.VAT_TEMPERATURE,
                        "studio",
                        "24 Cel",
                        "#",
                        q -> Vat.of("v", Amounts.litres(40)).at(q)),
                new Measured<>(
                        "DECKLE_DEPTH",
                        Limits.DECKLE_DEPTH,
                        "studio",
                        "\"depth\": \"40 mm\"",
                        "\"depth\": \"#\"",
                        q -> Deckle.of(SIDE, SIDE).deep(q)),
                new Measured<>(
                        "MOULD_SIDE",
                        Limits.MOULD_SIDE,
                        "studio",
                        "[\"380 mm\", \"560 mm\"]",
                        "[\"#\", \"560 mm\"]",
                        q -> Mould.of("m", q, SIDE)),
                new Measured<>(
                        "MOULD_SIDE",
                        Limits.MOULD_SIDE,
                        "studio",
                        "[\"380 mm\", \"560 mm\"]",
                        "[\"380 mm\", \"#\"]",
                        q -> Mould.of("m", SIDE, q)),
                new Measured<>(
                        "VAT_SIDE",
                        Limits.VAT_SIDE,
                        "studio",
                        "[\"500 mm\", \"70 cm\"]",
                        "[\"#\", \"70 cm\"]",
                        q -> Vat.of("v", Amounts.litres(9)).inside(q, SIDE)),
                new Measured<>(
                        "VAT_SIDE",
                        Limits.VAT_SIDE,
                        "studio",
                        "[\"500 mm\", \"70 cm\"]",
                        "[\"500 mm\", \"#\"]",
                        q -> Vat.of("v", Amounts.litres(9)).inside(SIDE, q)),
                new Measured<>(
                        "PLATEN_SIDE",
                        Limits.PLATEN_SIDE,
                        "studio",
                        "[\"450 mm\", \"600 mm\"]",
                        "[\"#\", \"600 mm\"]",
                        q -> Press.of("p", Amounts.kilonewtons(9), q, SIDE)),
                new Measured<>(
                        "PLATEN_SIDE",
                        Limits.PLATEN_SIDE,
                        "studio",
                        "[\"450 mm\", \"600 mm\"]",
                        "[\"450 mm\", \"#\"]",
                        q -> Press.of("p", Amounts.kilonewtons(9), SIDE, q)),
                new Measured<>(
                        "PRESS_RATING",
                        Limits.PRESS_RATING,
                        "studio",
                        "20 tonf_us",
                        "#",
                        q -> Press.of("p", q, SIDE, SIDE)),
                new Measured<>(
                        "PRESS_RATING",
                        Limits.PRESS_RATING,
                        "studio",
                        "15 tonf_us",
                        "#",
                        q -> new Press.Part("frame", q)),
                new Measured<>(
                        "DAYLIGHT",
                        Limits.DAYLIGHT,
                        "studio",
                        "\"daylight\": \"300 mm\"",
                        "\"daylight\": \"#\"",
                        q -> Press.of("p", Amounts.kilonewtons(9), SIDE, SIDE).daylight(q)),
                new Measured<>(
                        "FELT_SIDE",
                        Limits.FELT_SIDE,
                        "studio",
                        "[\"450 mm\", \"620 mm\"]",
                        "[\"#\", \"620 mm\"]",
                        q -> new Felts(q, SIDE, Grammage.gsm(500), Optional.empty(), 9)),
                new Measured<>(
                        "FELT_SIDE",
                        Limits.FELT_SIDE,
                        "studio",
                        "[\"450 mm\", \"620 mm\"]",
                        "[\"450 mm\", \"#\"]",
                        q -> new Felts(SIDE, q, Grammage.gsm(500), Optional.empty(), 9)),
                new Measured<>(
                        "FELT_GRAMMAGE",
                        Limits.FELT_GRAMMAGE,
                        "studio",
                        "500 g/m2",
                        "#",
                        q -> new Felts(SIDE, SIDE, q, Optional.empty(), 9)),
                new Measured<>(
                        "FELT_THICKNESS",
                        Limits.FELT_THICKNESS,
                        "studio",
                        "\"thickness\": \"2 mm\"",
                        "\"thickness\": \"#\"",
                        q -> Felts.of(SIDE, SIDE, Grammage.gsm(500), 9).thickness(q)),
                new Measured<>(
                        "RAM_DIAMETER",
                        Limits.RAM_DIAMETER,
                        "studio",
                        "\"diameter\": \"60 mm\"",
                        "\"diameter\": \"#\"",
                        RamGauge::of),
                new Measured<>(
                        "FREE_AIR_FLOW",
                        Limits.FREE_AIR_FLOW,
                        "studio",
                        "400 m3/h",
                        "#",
                        q -> Dryer.fanStack("d", q, 9)),
                new Measured<>(
                        "DRYER_SIDE",
                        Limits.DRYER_SIDE,
                        "studio",
                        "[\"460 mm\", \"640 mm\"]",
                        "[\"#\", \"640 mm\"]",
                        q -> Dryer.stack("d", 9).inLayers(q, SIDE)),
                new Measured<>(
                        "DRYER_SIDE",
                        Limits.DRYER_SIDE,
                        "studio",
                        "[\"460 mm\", \"640 mm\"]",
                        "[\"460 mm\", \"#\"]",
                        q -> Dryer.stack("d", 9).inLayers(SIDE, q)),
                new Measured<>(
                        "STACK_WEIGHT",
                        Limits.STACK_WEIGHT,
                        "studio",
                        "30 kg",
                        "#",
                        q -> Dryer.stack("d", 9).under(q)),
                new Measured<>(
                        "ROOM_VOLUME",
                        Limits.ROOM_VOLUME,
                        "studio",
                        "60 m3",
                        "#",
                        q -> Ventilation.of(q, Rate.perHour(2))),
                new Measured<>(
                        "AIR_CHANGES",
                        Limits.AIR_CHANGES,
                        "studio",
                        "2 1/h",
                        "#",
                        q -> Ventilation.of(Amounts.cubicMetres(60), q)),
                new Measured<>(
                        "ON_HAND", Limits.ON_HAND, "studio", "400 g", "#", q -> studio().onHand(Fibres.ABACA, q)),
                new Measured<>(
                        "SCALE_STEP", Limits.SCALE_STEP, "studio", "\"5 g\"", "\"#\"", q -> studio().scaleStep(q)),
                new Measured<>(
                        "SCALE_STEP", Limits.SCALE_STEP, "studio", "0.01 g", "#", q -> studio().fineScaleStep(q)),
                new Measured<>("JUG_STEP", Limits.JUG_STEP, "studio", "50 mL", "#", q -> studio().jugStep(q)),
                new Measured<>(
                        "WORKING_DAY", Limits.WORKING_DAY, "studio", "\"7 h\"", "\"#\"", q -> studio().workingDay(q)),
                new Measured<>(
                        "STEP_HANDS",
                        Limits.STEP_HANDS,
                        "order",
                        "1.5 h",
                        "#",
                        q -> OwnStep.of("s")
                                .hands(q)
                                .waits(Amounts.days(1))
                                .after(OwnStep.Stage.PACK)
                                .build()),
                new Measured<>(
                        "STEP_WAITS",
                        Limits.STEP_WAITS,
                        "order",
                        "3 d",
                        "#",
                        q -> OwnStep.of("s")
                                .hands(Amounts.hours(1))
                                .waits(q)
                                .after(OwnStep.Stage.PACK)
                                .build()),
                new Measured<>(
                        "AIR_TEMPERATURE",
                        Limits.AIR_TEMPERATURE,
                        "studio",
                        "18 Cel",
                        "#",
                        q -> Air.of(q, RelativeHumidity.percent(50))),
                new Measured<>(
                        "AIR_HUMIDITY",
                        Limits.AIR_HUMIDITY,
                        "studio",
                        "58 %",
                        "#",
                        q -> Air.of(Amounts.celsius(20), q)),
                new Measured<>(
                        "AIR_PRESSURE",
                        Limits.AIR_PRESSURE,
                        "studio",
                        "98 kPa",
                        "#",
                        q -> Air.reference().at(q)));
    }

    private static final String FORMAT = Concert.ORDER.replace(
            "\"size\": \"ISO A5\"",
            "\"size\": {\"name\": \"f\","
                    + " \"system\": \"traditional\", \"use\": \"card\", \"sides\": [\"3 m\", \"3 m\"]}");

    private static String with(String document, String from, String to) {
        String text = switch (document) {
            case "recipe" -> Concert.RECIPE;
            case "studio" -> Concert.STUDIO;
            case "format" -> FORMAT;
            default -> Concert.ORDER;
        };
        int at = text.indexOf(from);
        assertThat(at).as(from).isPositive();
        return text.substring(0, at) + to + text.substring(at + from.length());
    }

    private static String format(String document) {
        return document.equals("format") ? "order" : document;
    }

    private static Set<String> codes(String document, String text) {
        Set<String> codes = new TreeSet<>();
        Judged.faults(format(document), text).forEach(fault -> codes.add(fault.code()));
        return codes;
    }

    private static boolean isValid(String document, String text) {
        return Judged.schema(format(document)).validate(text, InputFormat.JSON).isEmpty();
    }

    @ParameterizedTest
    @MethodSource("counts")
    void countsEndAtTheSamePlace(Counted one) {
        for (int good : new int[] {one.limits().least(), one.limits().most()}) {
            String text = with(one.document(), one.from(), one.to().replace("#", Integer.toString(good)));
            assertThatCode(() -> one.builder().accept(good)).doesNotThrowAnyException();
            assertThat(codes(one.document(), text)).as("%d", good).isEmpty();
            assertThat(isValid(one.document(), text)).as("%d", good).isTrue();
        }
        for (int bad :
                new int[] {one.limits().least() - 1, one.limits().most() + 1, Integer.MIN_VALUE, Integer.MAX_VALUE}) {
            String text = with(one.document(), one.from(), one.to().replace("#", Integer.toString(bad)));
            Refused refused =
                    catchThrowableOfType(Refused.class, () -> one.builder().accept(bad));
            assertThat(refused).as("%d", bad).isNotNull();
            assertThat(refused.code()).isEqualTo("count.range");
            assertThat(refused.arguments())
                    .containsEntry("given", bad)
                    .containsEntry("least", one.limits().least())
                    .containsEntry("most", one.limits().most())
                    .containsKey("quantity");
            assertThat(refused).hasMessageContaining(bad + " given; must be a whole number from " + one.limits());
            assertThat(codes(one.document(), text)).as("%d", bad).containsExactly(FaultCodes.RANGE);
            assertThat(isValid(one.document(), text)).as("%d", bad).isFalse();
        }
    }

    @ParameterizedTest
    @MethodSource("quantities")
    void quantitiesEndAtTheSamePlace(Measured<?> one) {
        for (Amount<?> good : List.of(one.limits().least(), one.limits().most())) {
            String said = text(good, 0);
            String text = with(one.document(), one.from(), one.to().replace("#", said));
            assertThatCode(() -> one.build(said)).doesNotThrowAnyException();
            // A format of one's own is refused as a piece where it is larger than any piece.
            assertThat(codes(one.document(), text))
                    .as(said)
                    .isSubsetOf(one.document().equals("format") ? Set.of("quantity.range", "piece.clash") : Set.of());
            assertThat(isValid(one.document(), text)).as(said).isTrue();
        }
        for (String bad :
                List.of(text(one.limits().least(), -1), text(one.limits().most(), 1))) {
            String text = with(one.document(), one.from(), one.to().replace("#", bad));
            Refused refused = catchThrowableOfType(Refused.class, () -> one.build(bad));
            assertThat(refused).as(bad).isNotNull();
            assertThat(refused.code()).isIn("quantity.range", "quantity.not-above-zero");
            assertThat(codes(one.document(), text)).as(bad).containsExactly(refused.code());
        }
        assertThat(PapermathSchemas.text(format(one.document())))
                .as("the schema says it")
                .contains(one.limits().toString());
    }

    /** The least or the most, or a little beyond it, as it is typed. */
    private static String text(Amount<?> amount, int beyond) {
        StringBuilder exact = new StringBuilder();
        Units.print(amount, exact);
        double value = amount.value();
        double other = value + beyond * Math.max(1e-9, 1e-9 * Math.abs(value));
        String unit = exact.substring(exact.indexOf(" "));
        return beyond == 0 ? exact.toString() : Units.number(other) + unit;
    }

    @Test
    void noBoundOfTheTableIsForgotten() {
        Set<String> tried = new TreeSet<>(Set.of(
                "STEPS", "IN_ORDER", "OUTLINE_CORNERS", "PULLED", "FIRST_DAY", "LAST_DAY", "DRAWS", "HISTOGRAM"));
        counts().forEach(one -> tried.add(one.bound()));
        quantities().forEach(one -> tried.add(one.bound()));
        Set<String> all = new TreeSet<>();
        for (Field field : Limits.class.getFields()) {
            all.add(field.getName());
        }
        assertThat(tried).isEqualTo(all);
    }

    @Test
    void anOutlineHasSoManyCornersAndNoMore() {
        for (int corners : new int[] {3, 1000}) {
            assertThat(codes("studio", withCorners(corners))).isEmpty();
            assertThat(isValid("studio", withCorners(corners))).isTrue();
        }
        for (int corners : new int[] {2, 1001}) {
            assertThat(codes("studio", withCorners(corners))).containsExactly(FaultCodes.LENGTH);
            assertThat(isValid("studio", withCorners(corners))).isFalse();
        }
        List<Outline.Point> many = new ArrayList<>(Outline.round(Amounts.mm(90)).corners());
        List<Outline.Point> most = new ArrayList<>();
        for (int i = 0; i <= 1000; i++) {
            double angle = 2 * Math.PI * i / 1001;
            most.add(Outline.Point.of(Amounts.mm(50 + 50 * Math.cos(angle)), Amounts.mm(50 + 50 * Math.sin(angle))));
        }
        assertThat(many).hasSize(Outline.ROUND_CORNERS);
        for (ThrowingCallable tooMany : List.<ThrowingCallable>of(
                () -> Deckle.shaped(Outline.of(most)), () -> piece().formedTo(Outline.of(most)))) {
            assertThat(catchThrowableOfType(Refused.class, tooMany).code()).isEqualTo("count.range");
        }
    }

    /** A mould whose opening has so many corners, on a circle. */
    private static String withCorners(int corners) {
        StringBuilder text = new StringBuilder("\"outline\": {\"corners\": [");
        for (int i = 0; i < corners; i++) {
            double angle = 2 * Math.PI * i / corners;
            text.append(i == 0 ? "" : ", ")
                    .append("{\"across\": \"")
                    .append(Units.number(50 + 50 * Math.cos(angle)))
                    .append(" mm\", \"along\": \"")
                    .append(Units.number(50 + 50 * Math.sin(angle)))
                    .append(" mm\"}");
        }
        return with(
                "studio",
                "\"opening\": [\"380 mm\", \"560 mm\"]",
                text.append("]}").toString());
    }

    @Test
    void daysEndAtTheSamePlace() {
        for (LocalDate good : List.of(Limits.FIRST_DAY, Limits.LAST_DAY)) {
            assertThatCode(() -> Order.of("o").due(good)).doesNotThrowAnyException();
            assertThatCode(() -> BatchRecord.builder("r", good)).doesNotThrowAnyException();
            String text = with("order", "2027-04-09", good.toString());
            assertThat(codes("order", text)).isEmpty();
            assertThat(isValid("order", text)).isTrue();
        }
        for (LocalDate bad : List.of(
                Limits.FIRST_DAY.minusDays(1),
                Limits.LAST_DAY.plusDays(1),
                LocalDate.of(-1, 1, 1),
                LocalDate.MIN,
                LocalDate.MAX)) {
            for (Refused refused : List.of(
                    catchThrowableOfType(Refused.class, () -> Order.of("o").due(bad)),
                    catchThrowableOfType(Refused.class, () -> BatchRecord.builder("r", bad)),
                    catchThrowableOfType(
                            Refused.class, () -> Reading.of(SIDE, Amounts.mm(1)).on(bad)))) {
                assertThat(refused.code()).isEqualTo("date.range");
                assertThat(refused).hasMessageContaining(bad + " given; must be a day from 1800-01-01 to 2999-12-31");
            }
            String text = with("order", "2027-04-09", bad.toString());
            assertThat(codes("order", text))
                    .containsAnyOf("date.range", FaultCodes.DATE)
                    .hasSize(1);
            assertThat(isValid("order", text)).isFalse();
        }
    }

    @Test
    void anOrderHasSoManyPiecesInAllAndNoMore() {
        String full = "\"count\": 100000, \"spare\": \"50 %\", \"kept\": 40000, \"trials\": #, \"recipe\": \"reed\"";
        // The programme with 12 % spare, those kept and its trials; the seat cards; the envelopes.
        int others = 79 + 2 + 3 + 96 + 40;
        String from = "\"count\": 5, \"recipe\": \"reed\"";
        assertThat(codes("order", with("order", from, full.replace("#", Integer.toString(10_000 - others)))))
                .isEmpty();
        List<Fault> faults =
                Judged.faults("order", with("order", from, full.replace("#", Integer.toString(10_000 - others + 1))));
        assertThat(faults).extracting(Fault::code).containsExactly("order.too-many-pieces");
        assertThat(faults).extracting(Fault::pointer).containsExactly("/pieces");
        assertThat(faults.get(0).text()).contains("200001 given", "at most 200000 are possible");
        assertThat(FaultCodes.seenByTheReaderOnly()).contains("order.too-many-pieces");
    }

    @Test
    void twoBillionKeptAreAFaultOfTheDocument() {
        assertThat(codes("order", with("order", "\"kept\": 2", "\"kept\": 2147483647")))
                .containsExactly(FaultCodes.RANGE);
    }

    @Test
    void moreItemsThanAreReadAreOnlyCounted() {
        String many = "[" + "{\"a\": [1, {\"b\": 2}]},".repeat(60_000) + "1]";
        String text = """
                {"format": "papermath/order", "version": "1.0", "name": "o",
                 "pieces": %s, "studio": {"name": "s"},
                 "recipes": [{"name": "r", "furnish": [{"fibre": "abaca", "share": "90 %%"}]}]}
                """.formatted(many);
        List<Fault> faults = Judged.faults("order", text);
        assertThat(faults).anySatisfy(fault -> {
            assertThat(fault.code()).isEqualTo(FaultCodes.LENGTH);
            assertThat(fault.pointer()).isEqualTo("/pieces");
            assertThat(fault.text()).isEqualTo("the list has 60001 items; must have 1 to 1000.");
        });
        // What stands behind the list is still told, at its place.
        assertThat(faults).anySatisfy(fault -> assertThat(fault.code()).isEqualTo("furnish.sum"));
        String behind = text.replace("\"pieces\": " + many, "\"onHand\": 1")
                .replace("{\"name\": \"s\"}", "{\"name\": \"s\", \"moulds\": " + many + ", \"vat\": 7}");
        assertThat(Judged.faults("order", behind))
                .filteredOn(fault -> fault.pointer().equals("/studio/vat"))
                .singleElement()
                .satisfies(fault -> {
                    assertThat(fault.line()).isEqualTo(2);
                    assertThat(behind.lines().toList().get(1).substring(fault.column() - 1))
                            .startsWith("7}");
                });
    }

    @Test
    void whatIsOfOthersMayBeLong() {
        String text = with("order", "\"x-colour\": \"grey\"", "\"x-colour\": [" + "1, ".repeat(3000) + "2]");
        Document<OrderDocument> read = PapermathDocuments.readOrder(text, Concert.FILES);
        assertThat(read.keptMembers().get("/pieces/1/x-colour"))
                .endsWith("1, 2]")
                .hasSizeGreaterThan(9000);
    }

    @Test
    void envelopesOfAnOrderCutShortAreNotBlamedForWhatWasNotRead() {
        StringBuilder pieces = new StringBuilder();
        String piece = "{\"name\": \"p%d\", \"count\": 1, \"recipe\": \"r\", \"size\": \"ISO A5\","
                + " \"grammage\": \"90 g/m2\"},";
        pieces.append("{\"name\": \"e\", \"count\": 1, \"recipe\": \"r\", \"grammage\": \"90 g/m2\","
                + " \"envelopeFor\": \"p1400\", \"style\": \"side seam\"},");
        for (int i = 0; i < 1500; i++) {
            pieces.append(piece.formatted(i));
        }
        pieces.setLength(pieces.length() - 1);
        assertThat(codes("order", """
                {"format": "papermath/order", "version": "1.0", "name": "o", "pieces": [%s], "studio": {"name": "s"},
                 "recipes": [{"name": "r", "furnish": [{"fibre": "abaca", "share": "100 %%"}]}]}
                """.formatted(pieces))).containsExactly(FaultCodes.LENGTH);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "a\u202Eb",
                "a\u200Bb",
                "a\u2028b",
                "\uFEFFa",
                "a\u2066b",
                "a\u00ADb",
                "a\u0007b",
                "a\uD800",
                "\uDC00a",
                "a\u200Db"
            })
    void codeAndDocumentsRefuseTheSameSignsOfANameByTheSameWords(String name) {
        Refused refused = catchThrowableOfType(Refused.class, () -> Studio.of(name));
        assertThat(refused.code()).isEqualTo(FaultCodes.CHARACTER);
        StringBuilder escaped = new StringBuilder();
        name.chars().forEach(c -> escaped.append(String.format(Locale.ROOT, "\\u%04x", c)));
        List<Fault> faults = Judged.faults("studio", with("studio", "the boat house", escaped.toString()));
        assertThat(faults).extracting(Fault::code).containsExactly(FaultCodes.CHARACTER);
        if (name.chars().noneMatch(c -> Character.isSurrogate((char) c))) {
            assertThat(refused).hasMessage("studio: " + faults.get(0).text());
        }
    }

    @Test
    void kindsOfTheTableAreTheirOwn() {
        assertThat(Limits.SPARE.kind()).isSameAs(Kinds.SHARE);
        assertThat(Limits.PIECE_SIDE).hasToString("5 mm to 5 m");
        assertThat(Limits.PIECE_GRAMMAGE).hasToString("2 to 2000 g/m2");
        assertThat(Limits.INSERTS).hasToString("1 to 50");
    }
}
