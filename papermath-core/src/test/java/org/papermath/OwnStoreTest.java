package org.papermath;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.papermath.quantity.Amounts.celsius;
import static org.papermath.quantity.Amounts.grams;
import static org.papermath.quantity.Amounts.hours;
import static org.papermath.quantity.Amounts.litres;
import static org.papermath.quantity.Amounts.mm;
import static org.papermath.quantity.Amounts.percent;
import static org.papermath.quantity.Amounts.shortTons;

import com.tngtech.archunit.core.domain.JavaAccess;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.JavaCodeUnit;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.papermath.air.Air;
import org.papermath.drying.DryingModel;
import org.papermath.drying.DryingRoom;
import org.papermath.evidence.Assumption;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Scope;
import org.papermath.fibre.SorptionModel;
import org.papermath.mould.FormingLayout;
import org.papermath.mould.Mould;
import org.papermath.press.Felts;
import org.papermath.press.Lever;
import org.papermath.press.Post;
import org.papermath.press.Press;
import org.papermath.press.Screw;
import org.papermath.pulp.Additive;
import org.papermath.pulp.AdditiveSolution;
import org.papermath.pulp.Beater;
import org.papermath.pulp.BeaterGeometry;
import org.papermath.pulp.BeatingTime;
import org.papermath.pulp.DrainabilityModel;
import org.papermath.pulp.Pulp;
import org.papermath.quantity.CanadianFreeness;
import org.papermath.quantity.Consistency;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;
import org.papermath.quantity.RelativeHumidity;
import org.papermath.quantity.Share;
import org.papermath.quantity.Solids;
import org.papermath.shape.Shrinkage;
import org.papermath.sheet.CouchedSheet;
import org.papermath.sheet.DensityModel;
import org.papermath.sheet.FormedSheet;
import org.papermath.sheet.PressedSheet;
import org.papermath.sheet.SurfaceSize;
import org.papermath.vat.Recharge;
import org.papermath.vat.VatCharge;
import org.papermath.vat.VatCorrection;
import org.papermath.vat.VatReading;
import org.papermath.vat.VatRun;

/** What is given a store asks that store, and only what says so asks the shipped one. */
class OwnStoreTest {
    private static final List<Mould> TWO_MOULDS =
            List.of(Mould.of("large", mm(340), mm(240)), Mould.of("card", mm(140), mm(180)));

    private static final Assumptions SHIPPED = Assumptions.standard();

    /**
     * All that may ask for the shipped table. Each says in its comment that it does and, but for {@link Pulp}, has a
     * door beside it that is given a store. Names may be struck off this list; none may come in.
     */
    private static final Set<String> MAY_ASK = Set.of(
            "drying.DryingModel$Batch.of(PressedSheet, int, SorptionModel, Air)",
            "drying.DryingModel.standard()",
            "drying.DryingRoom.mouldNotices()",
            "fibre.SorptionModel.standard()",
            "fibre.SorptionModel.standard(Furnish)",
            "mould.FormingLayout.best(List, Quantity, Quantity, Shrinkage, Quantity, Quantity, int)",
            "order.Studio$Builder.<init>(String)",
            "press.Lever.of(Quantity, int)",
            "press.Post.notices(Press)",
            "press.Post.of(Felts, int, CouchedSheet)",
            "press.Press.allowed()",
            "press.Press.atRating(Quantity, Quantity)",
            "press.Press.forceFor(Quantity, Quantity)",
            "press.Press.greatestPressure(Quantity)",
            "press.Press.setting(Quantity, Quantity)",
            "press.PressingModel.standard()",
            "press.Screw.steel(Quantity, Quantity)",
            "press.Screw.wooden(Quantity, Quantity)",
            "pulp.AdditiveSolution.shareByMass()",
            "pulp.BeaterGeometry.edgeLoad(Quantity)",
            "pulp.BeaterLoad.notices()",
            "pulp.BeatingModel.standard(Scope)",
            "pulp.BeatingTime.forLoad(Quantity, Quantity, Quantity, Beater)",
            "pulp.Crowding.standard(Scope)",
            "pulp.DrainabilityModel.cautions(Quantity, Quantity)",
            "pulp.DrainabilityModel.standard()",
            "pulp.Pulp$Standard.<clinit>()",
            "pulp.RetentionModel.standard()",
            "pulp.WaterRetentionModel.standard(Scope)",
            "shape.Caliper.notices(Quantity)",
            "sheet.DensityModel.ofFreeness(Quantity)",
            "sheet.DensityModel.standard(Furnish)",
            "sheet.DrySheet.notices(Quantity)",
            "sheet.FormedSheet.couched()",
            "sheet.FormedSheet.of(Quantity, Quantity, Quantity)",
            "sheet.FormedSheet.ofGrammage(Quantity, Quantity, Quantity)",
            "sheet.FormedSheet.toBecome(Quantity, Quantity, Quantity, Shrinkage, SorptionModel)",
            "sheet.HygroexpansionModel.standard()",
            "sheet.ShrinkageModel.standard(Furnish)",
            "sheet.SurfaceSize.alumFor(Quantity)",
            "sheet.SurfaceSize.carriedOver(Quantity, Quantity)",
            "sheet.SurfaceSize.gelatine()",
            "sheet.SurfaceSize.gelatine(Quantity)",
            "sheet.SurfaceSize.notices()",
            "sheet.SurfaceSize.strengthRatio()",
            "vat.DrainageModel.standard()",
            "vat.VatRun.correct(int, VatReading, Quantity, Quantity, int, Quantity, Recharge$Level)",
            "vat.WhiteWater.freshWater(Quantity, Quantity)",
            "vat.WhiteWater.standard()");

    /** Those that ask one of that list; the same holds for them. */
    private static final Set<String> MAY_ASK_THOSE = Set.of(
            "sheet.DrySheet$Weighed.in(Air) asks fibre.SorptionModel.standard()",
            "sheet.DrySheet$Weighed.in(Air, Furnish) asks fibre.SorptionModel.standard(Furnish)");

    private static String name(JavaCodeUnit unit) {
        String home = "org.papermath.";
        return unit.getOwner().getName().replace(home, "") + "." + unit.getName()
                + unit.getRawParameterTypes().stream()
                        .map(type -> type.getName().substring(type.getName().lastIndexOf('.') + 1))
                        .collect(Collectors.joining(", ", "(", ")"));
    }

    @Test
    void onlyWhatSaysSoAsksForTheShippedTable() throws Exception {
        JavaClasses library = new ClassFileImporter()
                .importPath(Path.of(Assumptions.class
                        .getProtectionDomain()
                        .getCodeSource()
                        .getLocation()
                        .toURI()));
        Set<String> ask = new TreeSet<>();
        Set<String> askThose = new TreeSet<>();
        for (JavaAccess<?> access : library.stream()
                .flatMap(type -> type.getAccessesFromSelf().stream())
                .toList()) {
            if (!(access.getTarget().resolveMember().orElse(null) instanceof JavaCodeUnit target)) {
                continue;
            }
            if (target.getOwner().isEquivalentTo(Assumptions.class)
                    && target.getName().equals("standard")) {
                ask.add(name(access.getOrigin()));
            } else if (MAY_ASK.contains(name(target))
                    && !target.isConstructor()
                    && !target.getOwner().isEquivalentTo(Pulp.class)) {
                askThose.add(name(access.getOrigin()) + " asks " + name(target));
            }
        }
        assertThat(ask).isEqualTo(new TreeSet<>(MAY_ASK));
        assertThat(askThose).as("ways round the list").isEqualTo(new TreeSet<>(MAY_ASK_THOSE));
    }

    /** What a door gives by a store, and by the shipped one without being told so. */
    private record Door(
            String name, String id, Scope scope, double own, Function<Assumptions, ?> given, Supplier<?> plain) {}

    private static final Press PRESS = Press.of("big press", shortTons(20), mm(450), mm(600));
    private static final Scope AT_PRESS = Scope.at("big press");
    private static final Scope AT_VAT = Scope.at("long vat");
    private static final Scope AT_BOARDS = Scope.at("boards");
    private static final Felts FELTS = Felts.of(mm(450), mm(620), Grammage.gsm(500), 25);
    private static final CouchedSheet COUCHED =
            FormedSheet.of(grams(10), mm(300), mm(400)).couched(Solids.percent(15));
    private static final CouchedSheet HEAVY =
            FormedSheet.of(grams(220), mm(300), mm(400)).couched(Solids.percent(15));
    private static final Beater BEATER = Beater.of("small beater", litres(45), grams(900));
    private static final Air ROOM = Air.of(celsius(18), RelativeHumidity.percent(58));
    private static final PressedSheet SHEET =
            FormedSheet.of(grams(10), mm(300), mm(400)).couched().pressed(Solids.percent(33));

    private static List<Door> doors() {
        AdditiveSolution paste =
                AdditiveSolution.of(Additive.of("paste", Additive.Purpose.BINDER), grams(100), litres(1));
        BeaterGeometry bars = BeaterGeometry.of(20, 8, mm(150), Kinds.RATE.of(120, "1/min"), mm(300));
        DryingRoom room = DryingRoom.of(Kinds.VOLUME.of(60, "m3"), Air.of(celsius(18), RelativeHumidity.percent(70)));
        SurfaceSize thin = SurfaceSize.of(Share.percent(2), percent(200));
        VatRun run = VatCharge.of(
                        Pulp.ofOvenDry(grams(300)).at(Consistency.percent(0.6)),
                        grams(1700),
                        Share.percent(97),
                        Solids.percent(15))
                .pull(10);
        VatReading weighed = VatReading.couchedSheet(run.couched(5).multiply(1.15), Solids.percent(15));
        return List.of(
                new Door(
                        "AdditiveSolution.shareByMass",
                        "water.density-in-beater",
                        Scope.GENERAL,
                        990,
                        paste::shareByMass,
                        paste::shareByMass),
                new Door(
                        "BeaterGeometry.edgeLoad",
                        "beating.edge-load-cutting",
                        Scope.GENERAL,
                        0.001,
                        store -> bars.edgeLoad(store, Kinds.POWER.of(40, "W")),
                        () -> bars.edgeLoad(Kinds.POWER.of(40, "W"))),
                new Door(
                        "BeatingTime.forLoad",
                        "beater.load-range-low",
                        Scope.at("small beater"),
                        0.1,
                        store -> tried(() -> BeatingTime.forLoad(store, hours(3), grams(900), grams(300), BEATER)),
                        () -> tried(() -> BeatingTime.forLoad(hours(3), grams(900), grams(300), BEATER))),
                new Door(
                        "BeatingTime.forLoad, high",
                        "beater.load-range-high",
                        Scope.at("small beater"),
                        2,
                        store -> tried(() -> BeatingTime.forLoad(store, hours(3), grams(900), grams(1500), BEATER)),
                        () -> tried(() -> BeatingTime.forLoad(hours(3), grams(900), grams(1500), BEATER))),
                new Door(
                        "DrainabilityModel.cautions",
                        "freeness.csf-temperature",
                        Scope.GENERAL,
                        23,
                        store -> DrainabilityModel.cautions(store, Consistency.percent(0.3), celsius(23)),
                        () -> DrainabilityModel.cautions(Consistency.percent(0.3), celsius(23))),
                new Door(
                        "FormedSheet.of",
                        "web.solids-on-mould",
                        AT_VAT,
                        0.05,
                        store -> FormedSheet.of(store, AT_VAT, grams(10), mm(300), mm(400)),
                        () -> FormedSheet.of(grams(10), mm(300), mm(400))),
                new Door(
                        "FormedSheet.ofGrammage",
                        "web.solids-on-mould",
                        AT_VAT,
                        0.05,
                        store -> FormedSheet.ofGrammage(store, AT_VAT, Grammage.gsm(90), mm(300), mm(400)),
                        () -> FormedSheet.ofGrammage(Grammage.gsm(90), mm(300), mm(400))),
                new Door(
                        "FormedSheet.toBecome",
                        "web.solids-on-mould",
                        AT_VAT,
                        0.05,
                        store -> FormedSheet.toBecome(
                                store,
                                AT_VAT,
                                Grammage.gsm(90),
                                mm(300),
                                mm(400),
                                Shrinkage.NONE,
                                SorptionModel.standard()),
                        () -> FormedSheet.toBecome(
                                Grammage.gsm(90), mm(300), mm(400), Shrinkage.NONE, SorptionModel.standard())),
                new Door(
                        "FormedSheet.couched",
                        "web.solids-couched",
                        AT_VAT,
                        0.2,
                        store -> FormedSheet.of(grams(10), mm(300), mm(400)).couched(store, AT_VAT),
                        () -> FormedSheet.of(grams(10), mm(300), mm(400)).couched()),
                new Door(
                        "Post.of, felts",
                        "felt.water-before",
                        AT_PRESS,
                        4,
                        store -> Post.of(store, AT_PRESS, FELTS, 20, COUCHED),
                        () -> Post.of(FELTS, 20, COUCHED)),
                new Door(
                        "Post.of, height",
                        "felt.density",
                        AT_PRESS,
                        300,
                        store -> Post.of(store, AT_PRESS, FELTS, 20, COUCHED),
                        () -> Post.of(FELTS, 20, COUCHED)),
                new Door(
                        "Post.notices",
                        "post.lifting-limit",
                        Scope.GENERAL,
                        200,
                        store -> Post.of(FELTS, 20, HEAVY).notices(PRESS, store),
                        () -> Post.of(FELTS, 20, HEAVY).notices(PRESS)),
                new Door("Press.allowed", "press.allowed-share", AT_PRESS, 0.5, PRESS::allowed, PRESS::allowed),
                new Door(
                        "Press.greatestPressure",
                        "press.allowed-share",
                        AT_PRESS,
                        0.5,
                        store -> PRESS.greatestPressure(store, Kinds.AREA.of(0.1, "m2")),
                        () -> PRESS.greatestPressure(Kinds.AREA.of(0.1, "m2"))),
                new Door(
                        "Press.atRating",
                        "press.allowed-share",
                        AT_PRESS,
                        0.5,
                        store -> PRESS.atRating(store, Share.percent(70), Kinds.AREA.of(0.1, "m2"))
                                .notices(),
                        () -> PRESS.atRating(Share.percent(70), Kinds.AREA.of(0.1, "m2"))
                                .notices()),
                new Door(
                        "Press.forceFor, allowed",
                        "press.allowed-share",
                        AT_PRESS,
                        0.2,
                        store -> tried(() ->
                                PRESS.forceFor(store, Kinds.SHEET_PRESSURE.of(0.6, "MPa"), Kinds.AREA.of(0.1, "m2"))),
                        () -> tried(
                                () -> PRESS.forceFor(Kinds.SHEET_PRESSURE.of(0.6, "MPa"), Kinds.AREA.of(0.1, "m2")))),
                new Door(
                        "Press.setting, limit",
                        "press.pressure-limit",
                        Scope.GENERAL,
                        0.5e6,
                        store -> tried(() -> PRESS.setting(store, Kinds.FORCE.of(60, "kN"), Kinds.AREA.of(0.1, "m2"))),
                        () -> tried(() -> PRESS.setting(Kinds.FORCE.of(60, "kN"), Kinds.AREA.of(0.1, "m2")))),
                new Door(
                        "Lever.of",
                        "press.hand-force",
                        Scope.GENERAL,
                        333,
                        store -> Lever.of(store, mm(900), 2),
                        () -> Lever.of(mm(900), 2)),
                new Door(
                        "Screw.steel",
                        "press.screw-friction",
                        Scope.of("steel"),
                        0.11,
                        store -> Screw.steel(store, mm(12), mm(50)).torqueFor(Kinds.FORCE.of(50, "kN")),
                        () -> Screw.steel(mm(12), mm(50)).torqueFor(Kinds.FORCE.of(50, "kN"))),
                new Door(
                        "Screw.wooden",
                        "press.screw-friction",
                        Scope.of("wood"),
                        0.33,
                        store -> Screw.wooden(store, mm(40), mm(90)).torqueFor(Kinds.FORCE.of(20, "kN")),
                        () -> Screw.wooden(mm(40), mm(90)).torqueFor(Kinds.FORCE.of(20, "kN"))),
                new Door(
                        "FormingLayout.best",
                        "labour.sheet-time",
                        Scope.of("card"),
                        90,
                        store -> FormingLayout.best(
                                        store, TWO_MOULDS, mm(120), mm(160), Shrinkage.NONE, mm(4), mm(10), 20)
                                .mould(),
                        () -> FormingLayout.best(TWO_MOULDS, mm(120), mm(160), Shrinkage.NONE, mm(4), mm(10), 20)
                                .mould()),
                new Door(
                        "DensityModel.ofFreeness",
                        "sheet.density-freeness-half-band",
                        Scope.GENERAL,
                        11,
                        store -> DensityModel.ofFreeness(store, CanadianFreeness.millilitres(300)),
                        () -> DensityModel.ofFreeness(CanadianFreeness.millilitres(300))),
                new Door(
                        "SurfaceSize.gelatine",
                        "size.bath-strength",
                        Scope.GENERAL,
                        44,
                        SurfaceSize::gelatine,
                        SurfaceSize::gelatine),
                new Door(
                        "SurfaceSize.carriedOver",
                        "size.pick-up-fall",
                        Scope.GENERAL,
                        0.0001,
                        store -> SurfaceSize.carriedOver(store, hours(2), hours(6)),
                        () -> SurfaceSize.carriedOver(hours(2), hours(6))),
                new Door(
                        "SurfaceSize.alumFor",
                        "size.alum",
                        Scope.GENERAL,
                        0.07,
                        store -> SurfaceSize.alumFor(store, grams(100)),
                        () -> SurfaceSize.alumFor(grams(100))),
                new Door(
                        "SurfaceSize.strengthRatio",
                        "size.strength-ratio",
                        Scope.GENERAL,
                        1.2,
                        thin::strengthRatio,
                        thin::strengthRatio),
                new Door(
                        "SurfaceSize.notices, bath",
                        "size.bath-taken",
                        Scope.GENERAL,
                        2.5,
                        thin::notices,
                        thin::notices),
                new Door(
                        "SurfaceSize.notices, days",
                        "schedule.size-cure",
                        Scope.GENERAL,
                        33,
                        thin::notices,
                        thin::notices),
                new Door(
                        "DryingModel.Batch.of",
                        "drying.end-margin",
                        AT_BOARDS,
                        0.03,
                        store -> DryingModel.Batch.of(store, AT_BOARDS, SHEET, 10, SorptionModel.standard(), ROOM),
                        () -> DryingModel.Batch.of(SHEET, 10, SorptionModel.standard(), ROOM)),
                new Door(
                        "DryingModel.batch",
                        "drying.end-margin",
                        AT_BOARDS,
                        0.03,
                        store -> DryingModel.from(store, AT_BOARDS).batch(SHEET, 10, SorptionModel.standard(), ROOM),
                        () -> DryingModel.standard().batch(SHEET, 10, SorptionModel.standard(), ROOM)),
                new Door(
                        "DryingRoom.mouldNotices",
                        "room.mould-caution",
                        Scope.GENERAL,
                        0.72,
                        room::mouldNotices,
                        room::mouldNotices),
                new Door(
                        "VatRun.correct",
                        "sheet.scatter-grammage",
                        Scope.of("grey"),
                        0.3,
                        store -> run.correct(
                                store,
                                Scope.of("grey"),
                                5,
                                weighed,
                                grams(10),
                                Share.percent(5),
                                5,
                                Consistency.percent(3),
                                Recharge.Level.RISING),
                        () -> run.correct(
                                5,
                                weighed,
                                grams(10),
                                Share.percent(5),
                                5,
                                Consistency.percent(3),
                                Recharge.Level.RISING)));
    }

    private static Object tried(Supplier<?> door) {
        try {
            return door.get();
        } catch (Refused refused) {
            return refused.code() + ": " + refused.getMessage();
        }
    }

    private static String shown(Object result) {
        return result instanceof VatCorrection correction
                ? correction.found() + " " + correction.notices()
                : result instanceof Post post ? post.mass() + " " + post.height() : String.valueOf(result);
    }

    @TestFactory
    List<DynamicTest> whatIsGivenAStoreAsksThatStore() {
        return doors().stream()
                .map(door -> DynamicTest.dynamicTest(door.name() + " by " + door.id(), () -> {
                    Assumption row = SHIPPED.get(door.id(), door.scope());
                    Assumptions own = SHIPPED.with(row.given(door.scope(), door.own()));
                    Object shipped = door.plain().get();
                    assertThat(shown(door.given().apply(SHIPPED))).isEqualTo(shown(shipped));
                    assertThat(shown(door.given().apply(own))).isNotEqualTo(shown(shipped));
                }))
                .toList();
    }

    @Test
    void aTimeIsRefusedByTheRangeOfOnesOwnBeater() {
        Assumptions narrow = SHIPPED.given("beater.load-range-low", Scope.at("small beater"), 0.9);
        assertThatThrownBy(() -> BeatingTime.forLoad(narrow, hours(3), grams(900), grams(700), BEATER))
                .hasMessageContaining("between loads of 810 g");
        assertThat(BeatingTime.forLoad(
                                narrow, hours(3), grams(900), grams(700), Beater.of("other", litres(45), grams(900)))
                        .in("h"))
                .isCloseTo(3 * 700.0 / 900, within(1e-12));
    }
}
