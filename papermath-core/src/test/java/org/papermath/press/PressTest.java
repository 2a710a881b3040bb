package org.papermath.press;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;
import static org.papermath.quantity.Amounts.grams;
import static org.papermath.quantity.Amounts.inches;
import static org.papermath.quantity.Amounts.kilograms;
import static org.papermath.quantity.Amounts.kilonewtons;
import static org.papermath.quantity.Amounts.metres;
import static org.papermath.quantity.Amounts.mm;

import java.util.List;
import javax.measure.quantity.Angle;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Notice;
import org.papermath.evidence.Scope;
import org.papermath.quantity.Amounts;
import org.papermath.quantity.GaugePressure;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Share;
import org.papermath.quantity.SheetPressure;
import org.papermath.quantity.Solids;
import org.papermath.quantity.Torque;
import org.papermath.quantity.Unclear;
import org.papermath.sheet.CouchedSheet;
import org.papermath.sheet.FormedSheet;
import tech.units.indriya.quantity.Quantities;
import tech.units.indriya.unit.Units;

class PressTest {
    private static final Press PRESS = Press.of("screw-down press", kilonewtons(100), mm(300), mm(400))
            .part("frame", kilonewtons(60))
            .daylight(mm(150));

    private static org.papermath.quantity.Amount<javax.measure.quantity.Area> area(double width, double length) {
        return Kinds.AREA.ofSi(width * length);
    }

    private static CouchedSheet couched(double ovenDry) {
        return FormedSheet.of(grams(ovenDry), mm(250), mm(400)).couched(Solids.percent(15));
    }

    @Test
    void theWeakestPartRules() {
        Press.Allowed allowed = PRESS.allowed();
        assertThat(allowed.weakest().name()).isEqualTo("frame");
        assertThat(allowed.share().in("%")).isCloseTo(80, withinPercentage(1e-9));
        assertThat(allowed.force().in("kN")).isCloseTo(48, withinPercentage(1e-9));
        assertThat(allowed).hasToString("48 kN, 80 % of the rating of the frame (60 kN)");
        assertThat(PRESS.greatestPressure(area(0.3, 0.4)).in("kPa")).isCloseTo(400, withinPercentage(1e-9));
    }

    @Test
    void nothingIsSetAboveWhatItAllows() {
        Press.Setting setting = PRESS.forceFor(SheetPressure.kilopascals(400), area(0.3, 0.4));
        assertThat(setting.force().in("kN")).isCloseTo(48, withinPercentage(1e-9));
        assertThat(setting.notices()).isEmpty();
        assertThatThrownBy(() -> PRESS.setting(kilonewtons(60), area(0.3, 0.4)))
                .isInstanceOfSatisfying(Refused.class, refused -> {
                    assertThat(refused.code()).isEqualTo("press.above-allowed");
                    assertThat(refused.arguments())
                            .containsEntry("part", "frame")
                            .containsEntry("limit", "48 kN");
                })
                .hasMessage("press \"screw-down press\": 60 kN asked for on the post; its weakest part, the frame,"
                        + " allows 48 kN,"
                        + " 80 % of the rating of the frame (60 kN). Press with less or in smaller posts.");
    }

    @Test
    void thePlatenIsTheLargestLoadedArea() {
        assertThat(PRESS.loadedArea(area(0.5, 0.5)).si()).isCloseTo(0.12, withinPercentage(1e-9));
        assertThat(PRESS.loadedArea(area(0.1, 0.2)).si()).isCloseTo(0.02, withinPercentage(1e-9));
    }

    @Test
    void aSmallPostIsPressedHarderAndVeryHardIsRefused() {
        Press.Setting small = PRESS.setting(kilonewtons(48), area(0.148, 0.210));
        assertThat(small.pressure().in("kPa")).isCloseTo(48 / 0.148 / 0.210, withinPercentage(1e-9));
        assertThat(small.notices()).extracting(Notice::code).containsExactly("press.pressure-high", "press.small-post");
        assertThat(small.notices().get(0).text())
                .isEqualTo("The pressure on the sheet is 1.544 MPa; above 1.5 MPa solids and"
                        + " density hardly answer any more and are only carried on from lower pressures.");
        assertThatThrownBy(() -> PRESS.setting(kilonewtons(48), area(0.1, 0.1)))
                .isInstanceOfSatisfying(
                        Refused.class, refused -> assertThat(refused.code()).isEqualTo("press.pressure-limit"))
                .hasMessage("pressure on the sheet: 4800 kPa given; no hand press is known above 4 MPa. Check the"
                        + " area that"
                        + " carries the force and which ton is meant.");
    }

    @Test
    void aTonMustSayWhich() {
        assertThatThrownBy(() -> Kinds.FORCE.read("12 ton")).isInstanceOf(Unclear.class);
        // A 12-ton jack with a ram of 50 mm and a gauge that ends at 60 MPa: 117.8 kN, a metric 12 tons.
        List<Press.TonReading> readings = Press.tons(12, RamGauge.of(mm(50)).force(GaugePressure.megapascals(60)));
        assertThat(readings).extracting(Press.TonReading::meaning).containsExactly("tf", "tonf_uk", "tonf_us");
        assertThat(readings.get(0)).hasToString("tf, 117.7 kN, -0.1103 % off");
    }

    /** A label of 12 "tons" over a post of 300 by 400 mm. */
    @Test
    void threeReadingsOfABareTon() {
        assertThat(Press.tonsOn(12, area(0.3, 0.4)))
                .extracting(Press.TonPressure::toString)
                .containsExactly(
                        "889.6 kPa by the short ton (106.8 kN)",
                        "980.7 kPa by the metric ton (117.7 kN)",
                        "996.4 kPa by the long ton (119.6 kN)");
        assertThatThrownBy(() -> Press.tonsOn(0, area(0.3, 0.4))).isInstanceOf(Refused.class);
    }

    /** What the rating itself presses with can be asked; it is warned of, not refused and not suggested. */
    @Test
    void thePressureAtTheRating() {
        Press jack = Press.of("jack", Amounts.metricTons(12), mm(300), mm(400));
        assertThat(jack.atRating(Share.percent(100), area(0.3, 0.4)).pressure()).hasToString("980.7 kPa");
        Press framed = jack.part("frame", kilonewtons(100));
        Press.Setting full = framed.atRating(Share.percent(100), area(0.3, 0.4));
        assertThat(full.pressure()).hasToString("833.3 kPa");
        assertThat(full.allowed().force()).hasToString("80 kN");
        assertThat(full.notices()).singleElement().satisfies(notice -> {
            assertThat(notice.code()).isEqualTo("press.above-allowed");
            assertThat(notice.level()).isEqualTo(Notice.Level.WARNING);
            assertThat(notice.text())
                    .isEqualTo(
                            "press \"jack\": 100 kN asked for on the post; its weakest part, the frame, allows 80 kN,"
                                    + " 80 % of the rating of the frame (100 kN). Press with less or in smaller posts.");
        });
        Press.Setting working = framed.atRating(Share.percent(80), area(0.3, 0.4));
        assertThat(working.pressure()).hasToString("666.7 kPa");
        assertThat(working.notices()).isEmpty();
        // On a small post both the force and the pressure are beyond what is suggested.
        assertThat(framed.atRating(Share.percent(100), area(0.1, 0.2)).notices())
                .extracting(Notice::code)
                .containsExactly("press.above-allowed", "press.pressure-limit", "press.small-post");
        assertThatThrownBy(() -> framed.atRating(Share.percent(0), area(0.3, 0.4)))
                .isInstanceOf(Refused.class);
    }

    @Test
    void vacuumNeverAboveTheAtmosphere() {
        assertThat(Vacuum.of(GaugePressure.inchesOfMercury(22)))
                .hasToString("vacuum of 22 inHg (74.5 kPa on the sheet)");
        assertThat(Vacuum.of(Kinds.GAUGE_PRESSURE.of(74.5, "kPa"))).hasToString("vacuum of 74.5 kPa");
        assertThat(Vacuum.of(GaugePressure.inchesOfMercury(25)).pressure().in("Pa"))
                .isCloseTo(84660, withinPercentage(0.01));
        assertThatThrownBy(() -> Vacuum.of(GaugePressure.psi(25)))
                .isInstanceOfSatisfying(Refused.class, refused -> {
                    assertThat(refused.code()).isEqualTo("vacuum.above-atmosphere");
                    assertThat(refused.arguments().get("likely")).asString().startsWith("25 inHg");
                })
                .hasMessage("vacuum: 25 psi given; no vacuum is more than the air outside, here 101.3 kPa (14.7 psi)."
                        + " Inches of mercury were probably meant: 25 inHg = 84.66 kPa = 12.28 psi.");
        assertThatThrownBy(() -> Vacuum.of(GaugePressure.psi(60))).hasMessageEndingWith("Check the unit.");
        assertThatThrownBy(() -> Vacuum.atAltitude(GaugePressure.inchesOfMercury(26), metres(1500)))
                .hasMessageContaining("here 84.56 kPa");
    }

    @Test
    void screwsOfTextbooksAndWorkshops() {
        // A published example: 10 000 lbf, mean diameter 2 in, lead 0.5 in, friction 0.2; the book prints 2840 lbf in.
        Screw book = Screw.of(inches(0.5), inches(2), Share.fraction(0.2));
        assertThat(book.torqueFor(Kinds.FORCE.of(10_000, "lbf")).in("lbf.in"))
                .isCloseTo(2840.99, withinPercentage(1e-3));
        Screw collared = Screw.of(mm(8), mm(30), Share.fraction(0.08)).collar(mm(40));
        assertThat(collared.torqueFor(kilonewtons(6.4)).si()).isCloseTo(26.177, withinPercentage(0.01));
        assertThat(collared.looseningTorque(kilonewtons(6.4)).si()).isCloseTo(9.7744, withinPercentage(0.01));
        assertThat(collared.efficiency().si()).isCloseTo(0.3113, withinPercentage(0.05));
        assertThat(Screw.steel(mm(4), mm(18))
                        .collar(mm(30))
                        .torqueFor(kilonewtons(5))
                        .si())
                .isCloseTo(14.029, withinPercentage(0.01));
        assertThat(book.isSelfLocking()).isTrue();
        assertThat(Screw.of(mm(60), mm(30), Share.fraction(0.05)).isSelfLocking())
                .isFalse();
        assertThat(Screw.of(mm(60), mm(30), Share.fraction(0.05))
                        .looseningTorque(kilonewtons(1))
                        .si())
                .isZero();
    }

    @Test
    void fourMenAtTheBarOfAnOldPress() {
        // Lalande: four men on a lever of ten to twelve feet of 0.32484 m; the wooden screw is assumed.
        Lever lever = Lever.of(metres(3.2484), 4);
        assertThat(lever.torque().si()).isCloseTo(3248.4, withinPercentage(1e-6));
        var force =
                Screw.wooden(metres(0.06), metres(0.20)).collar(metres(0.08)).forceOf(lever.torque());
        assertThat(force.likely().in("kN")).isCloseTo(85.20, withinPercentage(0.01));
        assertThat(force.low().in("kN")).isLessThan(0.75 * 85.2);
        assertThat(force.high().in("kN")).isGreaterThan(1.25 * 85.2);
        assertThat(force.drivers()).singleElement().hasToString("press.screw-friction[wood] 100 %");
    }

    /** Pressed wool of 3.17 mm and 0.81 kg/m² holds about 2 kg/m² when soaked, and half of it in work. */
    @Test
    void postsAreBuiltOfFeltsAndSheets() {
        CouchedSheet sheet = couched(10);
        Felts felts = Felts.of(mm(450), mm(620), Grammage.gsm(810), 25);
        double area = 0.45 * 0.62;
        Post usual = Post.of(felts, 10, sheet);
        assertThat(usual.wetFelt().si()).isCloseTo(area * 0.81 * 2.3, withinPercentage(1e-9));
        Felts measured = felts.thickness(mm(3.17));
        Post post = Post.of(measured, 10, sheet);
        assertThat(post.wetFelt().si() / area - 0.81).isCloseTo(1.02, within(0.01));
        assertThat(post.height().in("mm")).isCloseTo(11 * 3.17 + 10 * 100 * (1 / 1500.0 + 5.6667 / 998), within(0.1));
        assertThat(measured).hasToString("25 felts 450 mm × 620 mm × 3.17 mm, 810 g/m² dry");
        assertThatThrownBy(() -> Post.of(felts.thickness(mm(0.5)), 10, sheet))
                .hasMessage("felts: by their thickness they have 1620 kg/m³, more than the 1310 kg/m³ of wool itself."
                        + " Check the thickness and the grammage of the dry felt.");
        // A felt weighed here counts for more than its thickness.
        Assumptions own = Assumptions.standard().given("felt.water-before", Scope.GENERAL, 1.5);
        assertThat(Post.of(own, Scope.GENERAL, measured, 10, sheet).wetFelt().si())
                .isCloseTo(area * 0.81 * 2.5, withinPercentage(1e-9));
    }

    @Test
    void smallSheetsLieSideBySide() {
        Felts felts = Felts.of(mm(450), mm(620), Grammage.gsm(500), 25);
        assertThat(felts.sheetsOn(mm(107), mm(151), mm(10))).isEqualTo(10);
        assertThat(felts.sheetsOn(mm(107), mm(151), mm(0))).isEqualTo(16);
        assertThat(felts.sheetsOn(mm(440), mm(610), mm(10))).isEqualTo(1);
        assertThat(felts.sheetsOn(mm(610), mm(440), mm(10))).isEqualTo(1);
        assertThat(felts.sheetsOn(mm(630), mm(440), mm(10))).isZero();
        CouchedSheet card = FormedSheet.of(grams(4), mm(107), mm(151)).couched(Solids.percent(15));
        Post post = Post.of(Assumptions.standard(), Scope.GENERAL, felts, 95, 10, card);
        assertThat(post.felts()).isEqualTo(11);
        assertThat(post.onFelt()).isEqualTo(10);
        assertThat(post.mass().si())
                .isCloseTo(11 * post.wetFelt().si() + 95 * card.mass().si(), withinPercentage(1e-9));
        assertThatThrownBy(() -> Post.of(Assumptions.standard(), Scope.GENERAL, felts, 241, 10, card))
                .hasMessage("post: 241 sheets take 26 felts and there are 25. Make posts of at most 240 sheets.");
    }

    @Test
    void jammedThreadAndBadAngle() {
        assertThatThrownBy(
                        () -> Screw.of(metres(10), mm(20), Share.fraction(0.5)).torqueFor(kilonewtons(1)))
                .hasMessage("screw: with a friction of 0.5 its thread jams; no torque presses with it. Check lead and"
                        + " mean"
                        + " diameter.");
        assertThatThrownBy(() -> Screw.steel(mm(4), mm(18)).thread(Quantities.getQuantity(2, Units.RADIAN)))
                .isInstanceOf(Refused.class);
        assertThat(Screw.steel(mm(4), mm(18))
                        .thread(Quantities.<Angle>getQuantity(0.2531, Units.RADIAN))
                        .torqueFor(kilonewtons(1))
                        .si())
                .isGreaterThan(
                        Screw.steel(mm(4), mm(18)).torqueFor(kilonewtons(1)).si());
    }

    @Test
    void ramWeightsAndGauge() {
        RamGauge ram = RamGauge.of(mm(60));
        assertThat(PRESS.ram(ram).ram()).contains(ram);
        assertThatThrownBy(() -> Press.of("mill press", kilonewtons(20_000), mm(900), mm(900))
                        .ram(RamGauge.of(mm(15))))
                .isInstanceOfSatisfying(
                        Refused.class, refused -> assertThat(refused.code()).isEqualTo("quantity.range"));
        assertThat(ram.force(GaugePressure.megapascals(10)).si()).isCloseTo(28274.3, withinPercentage(1e-3));
        assertThat(ram.takingUp(kilonewtons(1))
                        .force(GaugePressure.megapascals(10))
                        .si())
                .isCloseTo(27274.3, withinPercentage(1e-3));
        assertThat(ram.takingUp(kilonewtons(1))
                        .force(GaugePressure.megapascals(0.1))
                        .si())
                .isZero();
        assertThat(ram.takingUp(kilonewtons(1))
                        .gaugeFor(kilonewtons(27.2743339))
                        .in("MPa"))
                .isCloseTo(10, withinPercentage(1e-6));
        assertThat(DeadWeight.pressure(kilograms(18.927), area(0.2159, 0.2794)).si())
                .isCloseTo(3077.0, withinPercentage(0.01));
        assertThat(DeadWeight.massFor(Kinds.SHEET_PRESSURE.ofSi(3077), area(0.2159, 0.2794))
                        .in("kg"))
                .isCloseTo(18.927, withinPercentage(0.01));
    }

    @Property(seed = "2026")
    void forceAndTorqueAreInverse(
            @ForAll @DoubleRange(min = 0.1, max = 300) double kilonewtons,
            @ForAll @DoubleRange(min = 2, max = 20) double lead) {
        Screw screw = Screw.steel(mm(lead), mm(40)).collar(mm(50));
        var torque = screw.torqueFor(kilonewtons(kilonewtons));
        assertThat(screw.forceOf(torque).likely().in("kN")).isCloseTo(kilonewtons, withinPercentage(1e-9));
        assertThat(screw.forceOf(Torque.newtonMetres(torque.si())).low().si()).isLessThan(kilonewtons * 1000);
    }

    /** 25 sheets of 21 g, felts of 296 g and 6 mm wet, sheets of 1.5 mm, under a daylight of 230 mm and one of 190 mm. */
    @Test
    void whetherAPostGoesInIsSaidFirst() {
        CouchedSheet sheet = FormedSheet.of(grams(21), mm(300), mm(420)).couched(Solids.percent(15));
        Post post = Post.of(Felts.of(mm(350), mm(470), Grammage.gsm(600), 26), 25, sheet)
                .wetFelt(grams(296))
                .layers(mm(6), mm(1.5));
        Press press = Press.of("press", kilonewtons(100), mm(400), mm(500));
        assertThat(post.verdict(press.daylight(mm(230))))
                .isEqualTo("fits: 193.5 mm high in a daylight of 230 mm; post of 25 sheets and 26 felts, 11.2 kg");
        assertThat(post.verdict(press.daylight(mm(190))))
                .isEqualTo(
                        "does not fit: 193.5 mm high in a daylight of 190 mm; post of 25 sheets and 26 felts, 11.2 kg");
        assertThatThrownBy(() -> post.verdict(press)).isInstanceOf(Refused.class);
    }

    @Test
    void postsAskForFeltsRoomAndHands() {
        Felts felts = Felts.of(mm(350), mm(470), Grammage.gsm(600), 60);
        Post post = Post.of(felts, 50, couched(75));
        assertThat(post.notices(PRESS))
                .extracting(Notice::code)
                .containsExactly("post.too-high", "post.heavy", "post.uneven");
        assertThat(post.height().in("mm"))
                .isCloseTo(51 * 2.4 + 50 * 750 * (1 / 1500.0 + 5.6667 / 998), withinPercentage(0.2));
        List<Notice> high =
                Post.of(felts, 59, couched(7.5)).layers(mm(4), mm(1)).notices(PRESS);
        assertThat(high.get(0).text())
                .isEqualTo("The post is 299 mm high and the opening of the press is 150 mm. Make smaller" + " posts.");
        assertThat(post.notices(PRESS).get(1).text())
                .matches("A post weighs [0-9.]+ kg, more than the 23 kg \\(51 lb\\) one"
                        + " person should lift at best and the 31 kg two should lift together\\. Lay it on a trolley or in"
                        + " the press, or make smaller posts\\.");
        assertThat(Post.of(felts, 50, couched(40)).notices(PRESS).get(1).text())
                .matches("A post weighs [0-9.]+ kg, more than the 23 kg \\(51 lb\\) one"
                        + " person should lift at best\\. Take two people, a trolley or smaller posts\\.");
        assertThatThrownBy(() -> Post.of(felts, 60, couched(7.5)))
                .hasMessage("post: 60 sheets take 61 felts and there are 60. Make posts of at most 59 sheets.");
        assertThatThrownBy(() -> post.fits(Press.of("open press", kilonewtons(10), mm(300), mm(400))))
                .hasMessage("press \"open press\": its opening was not given. Measure the clear height for a post.");
    }
}
