package org.papermath.sheet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.papermath.air.Air;
import org.papermath.drying.DryingModel;
import org.papermath.drying.DryingStack;
import org.papermath.drying.WaterBudget;
import org.papermath.equation.Moisture;
import org.papermath.evidence.Notice;
import org.papermath.press.Felts;
import org.papermath.press.Post;
import org.papermath.press.Press;
import org.papermath.press.Vacuum;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Amounts;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Solids;
import org.papermath.record.OrderTolerance;
import org.papermath.shape.Shrinkage;
import org.papermath.testing.CheckValues;
import org.papermath.testing.Given;

/** Cases of the trade and of a studio's day, from the press to the finished sheet. */
class FinishingCheckValuesTest {
    static Stream<CheckValues.Row> cases() {
        return Stream.of("trade_sheets", "trade_press", "examples_finishing")
                .flatMap(name -> CheckValues.read(name).stream());
    }

    @ParameterizedTest
    @MethodSource("cases")
    void answers(CheckValues.Row row) {
        Given given = new Given(row.text("given"));
        String expected = row.text("expected");
        String ask = row.text("ask");
        if (expected.contains(".") && Character.isLetter(expected.charAt(0)) && !ask.endsWith("notice")) {
            assertThatThrownBy(() -> answer(ask, given))
                    .isInstanceOfSatisfying(
                            Refused.class, refused -> assertThat(refused.code()).isEqualTo(expected));
            return;
        }
        Object answer = answer(ask, given);
        if (answer instanceof Amount<?> amount) {
            assertThat(amount.in(row.text("unit")))
                    .isCloseTo(row.number("expected"), withinPercentage(row.number("tolerance")));
        } else if (answer instanceof Integer count) {
            assertThat(count).isEqualTo((int) row.number("expected"));
        } else {
            assertThat(answer).isEqualTo(expected);
        }
    }

    private static Object answer(String ask, Given given) {
        return Stream.of(sheet(ask, given), press(ask, given), size(ask, given), drying(ask, given))
                .flatMap(Optional::stream)
                .findFirst()
                .orElseThrow(() -> new AssertionError("nothing answers " + ask));
    }

    /** A sheet of one square metre in the reference atmosphere, of some conditioned grammage. */
    private static DrySheet square(Amount<Grammage> grammage) {
        return DrySheet.weighed(Kinds.MASS.ofSi(grammage.si()), Amounts.metres(1), Amounts.metres(1))
                .in(Air.reference());
    }

    private static Optional<Object> sheet(String ask, Given given) {
        return Optional.ofNullable(
                switch (ask) {
                    case "density" ->
                        square(given.get("grammage", Kinds.GRAMMAGE)).density(given.get("caliper", Kinds.LENGTH));
                    case "bulk" ->
                        square(given.get("grammage", Kinds.GRAMMAGE)).bulk(given.get("caliper", Kinds.LENGTH));
                    case "caliper notice" ->
                        DensityModel.compared(given.get("first", Kinds.LENGTH), given.get("second", Kinds.LENGTH))
                                .stream()
                                .map(Notice::code)
                                .collect(Collectors.joining());
                    case "grammage" ->
                        DrySheet.weighed(
                                        given.get("mass", Kinds.MASS),
                                        given.get("width", Kinds.LENGTH),
                                        given.get("height", Kinds.LENGTH))
                                .in(Air.reference())
                                .grammage();
                    case "mass" ->
                        FormedSheet.ofGrammage(
                                        given.get("grammage", Kinds.GRAMMAGE),
                                        given.get("width", Kinds.LENGTH),
                                        given.get("height", Kinds.LENGTH))
                                .fibre();
                    case "least", "most" -> accepted(ask, given);
                    case "side shrinkage" ->
                        Shrinkage.measured(
                                        given.get("before", Kinds.LENGTH),
                                        given.get("before", Kinds.LENGTH),
                                        given.get("after", Kinds.LENGTH),
                                        given.get("after", Kinds.LENGTH))
                                .along();
                    case "area of sides" -> {
                        Amount<?> lost = given.get("lost", Kinds.LINEAR_SHRINKAGE);
                        yield Shrinkage.across(Kinds.LINEAR_SHRINKAGE.ofSi(lost.si()))
                                .along(Kinds.LINEAR_SHRINKAGE.ofSi(lost.si()))
                                .area();
                    }
                    case "side of area" ->
                        Shrinkage.ofArea(given.get("lost", Kinds.AREA_SHRINKAGE))
                                .along();
                    case "shrunk grammage" ->
                        Kinds.GRAMMAGE.ofSi(given.get("wet", Kinds.GRAMMAGE).si()
                                / Shrinkage.across(given.get("across", Kinds.LINEAR_SHRINKAGE))
                                        .along(given.get("along", Kinds.LINEAR_SHRINKAGE))
                                        .areaFactor());
                    case "oven-dry" ->
                        Kinds.MASS.ofSi(Moisture.ovenDryOfWetBasis(
                                given.get("mass", Kinds.MASS).si(),
                                given.get("moisture", Kinds.MOISTURE).si()));
                    case "reweighed" ->
                        Kinds.MASS.ofSi(Moisture.massAtWetBasis(
                                Moisture.ovenDryOfWetBasis(
                                        given.get("mass", Kinds.MASS).si(),
                                        given.get("moisture", Kinds.MOISTURE).si()),
                                given.get("at", Kinds.MOISTURE).si()));
                    default -> null;
                });
    }

    private static Amount<?> accepted(String ask, Given given) {
        Amount<org.papermath.quantity.Share> tolerance = given.get("tolerance", Kinds.SHARE);
        String ordered = given.text("ordered");
        OrderTolerance<?> limits = ordered.endsWith("m2")
                ? OrderTolerance.around(Kinds.GRAMMAGE.read(ordered), tolerance)
                : ordered.endsWith("mm")
                        ? OrderTolerance.around(Kinds.LENGTH.read(ordered), tolerance)
                        : OrderTolerance.around(Kinds.MASS.read(ordered), tolerance);
        return ask.equals("least") ? limits.least() : limits.most();
    }

    private static Optional<Object> press(String ask, Given given) {
        return Optional.ofNullable(
                switch (ask) {
                    case "pressure" ->
                        strong(given)
                                .setting(given.get("force", Kinds.FORCE), area(given))
                                .pressure();
                    case "force" ->
                        strong(given)
                                .forceFor(given.get("pressure", Kinds.SHEET_PRESSURE), area(given))
                                .force();
                    case "vacuum" ->
                        Vacuum.of(given.get("drawn", Kinds.GAUGE_PRESSURE)).pressure();
                    case "vacuum at" ->
                        Vacuum.atAltitude(given.get("drawn", Kinds.GAUGE_PRESSURE), given.get("altitude", Kinds.LENGTH))
                                .pressure();
                    case "settling" ->
                        Post.settling(given.get("before", Kinds.LENGTH), given.get("after", Kinds.LENGTH));
                    case "posts" -> Post.posts(given.count("sheets"), given.count("inPost"));
                    case "largest post" ->
                        Post.largest(
                                Felts.of(Amounts.mm(300), Amounts.mm(400), Grammage.gsm(500), given.count("felts")));
                    default -> null;
                });
    }

    /** A press whose weakest part allows any of the forces, so that only the pressure is asked. */
    private static Press strong(Given given) {
        return Press.of(
                "press of the case",
                Amounts.kilonewtons(1e4),
                given.get("width", Kinds.LENGTH),
                given.get("length", Kinds.LENGTH));
    }

    private static Amount<javax.measure.quantity.Area> area(Given given) {
        return Kinds.AREA.ofSi(given.get("width", Kinds.LENGTH).si()
                * given.get("length", Kinds.LENGTH).si());
    }

    private static Optional<Object> size(String ask, Given given) {
        return Optional.ofNullable(
                switch (ask) {
                    case "pick-up" -> weighed(given).pickUp();
                    case "size on paper" -> weighed(given).onPaper();
                    case "pick-up for" ->
                        SurfaceSize.of(given.get("strength", Kinds.SHARE), Amounts.percent(100))
                                .pickUpFor(given.get("wanted", Kinds.DOSE));
                    case "bath" -> bath(given).prepared();
                    case "bath size" -> bath(given).drySize();
                    default -> null;
                });
    }

    private static SurfaceSize weighed(Given given) {
        return SurfaceSize.weighed(
                given.get("strength", Kinds.SHARE), given.get("dry", Kinds.MASS), given.get("wet", Kinds.MASS));
    }

    private static SurfaceSize.Bath bath(Given given) {
        return SurfaceSize.of(given.get("strength", Kinds.SHARE), given.get("pickUp", Kinds.NUMBER))
                .bath(given.count("sheets"), given.get("dry", Kinds.MASS), given.get("kept", Kinds.MASS));
    }

    private static Optional<Object> drying(String ask, Given given) {
        return Optional.ofNullable(
                switch (ask) {
                    case "ratio" ->
                        CouchedSheet.weighed(
                                        Amounts.kilograms(1),
                                        Kinds.MASS.ofSi(1
                                                - given.get("moisture", Kinds.MOISTURE)
                                                        .si()),
                                        Amounts.metres(1),
                                        Amounts.metres(1))
                                .ratio();
                    case "blotters" -> layers(given).blotters();
                    case "boards" -> layers(given).boards();
                    case "layers" -> layers(given).layers();
                    case "flat" -> SheetCounts.toForm(given.count("wanted"), Yield.of(given.get("share", Kinds.SHARE)));
                    case "drying water" ->
                        DryingModel.Batch.of(
                                        given.get("dry", Kinds.MASS),
                                        Amounts.squareMetres(1),
                                        ratio(given, "from"),
                                        ratio(given, "to"),
                                        ratio(given, "to"))
                                .water();
                    case "weighed rate" ->
                        DryingModel.isDry(
                                        given.get("first", Kinds.MASS),
                                        given.get("second", Kinds.MASS),
                                        given.get("between", Kinds.TIME))
                                .lost();
                    case "weighed time" ->
                        DryingModel.isDry(
                                        given.get("first", Kinds.MASS),
                                        given.get("second", Kinds.MASS),
                                        given.get("between", Kinds.TIME),
                                        given.get("left", Kinds.MASS))
                                .leastTime()
                                .orElseThrow();
                    case "water per paper" -> budget(given).perPaper();
                    case "drained" -> drained(given).solids();
                    case "drained share" -> drained(given).ofPaper();
                    default -> null;
                });
    }

    private static Amount<org.papermath.quantity.MoistureRatio> ratio(Given given, String name) {
        return Kinds.MOISTURE_RATIO.ofSi(
                Moisture.ratioOfWetBasis(given.get(name, Kinds.MOISTURE).si()));
    }

    private static DryingStack layers(Given given) {
        return DryingStack.of(given.count("sheets"))
                .inLayer(given.count("inLayer"))
                .blottersEachSide(given.count("eachSide"));
    }

    private static WaterBudget budget(Given given) {
        return WaterBudget.of(given.get("used", Kinds.VOLUME), given.get("paper", Kinds.MASS));
    }

    private static WaterBudget.Drained drained(Given given) {
        return budget(given)
                .drained(given.get("whiteWater", Kinds.VOLUME), given.get("consistency", Kinds.CONSISTENCY));
    }

    /** A post of 25 sheets in a press with 230 mm of daylight: what a studio would lay and lift. */
    @org.junit.jupiter.api.Test
    void postOfTwentyFive() {
        CouchedSheet sheet = FormedSheet.of(Amounts.grams(21), Amounts.mm(300), Amounts.mm(420))
                .couched(Solids.percent(15));
        assertThat(sheet.mass().in("g")).isCloseTo(140, withinPercentage(0.1));
        Felts felts = Felts.of(Amounts.mm(350), Amounts.mm(470), Grammage.gsm(600), 26);
        Post post = Post.of(felts, 25, sheet)
                .wetFelt(Amounts.grams(0.350 * 0.470 * 600 * 3))
                .layers(Amounts.mm(6), Amounts.mm(1.5));
        assertThat(post.felts()).isEqualTo(26);
        assertThat(post.wetFelt().in("g")).isCloseTo(296, withinPercentage(0.1));
        assertThat(post.mass().in("kg")).isCloseTo(11.2, withinPercentage(0.5));
        assertThat(post.height().in("mm")).isCloseTo(193.5, withinPercentage(0.01));
        Press press = Press.of("post press", Amounts.kilonewtons(60), Amounts.mm(400), Amounts.mm(500))
                .daylight(Amounts.mm(230));
        assertThat(post.fits(press)).isTrue();
        assertThat(post.notices(press)).extracting(Notice::code).containsExactly("post.uneven");
    }
}
