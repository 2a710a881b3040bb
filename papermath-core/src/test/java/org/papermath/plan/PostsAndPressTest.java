package org.papermath.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;
import static org.papermath.quantity.Amounts.grams;
import static org.papermath.quantity.Amounts.hours;
import static org.papermath.quantity.Amounts.kilonewtons;
import static org.papermath.quantity.Amounts.litres;
import static org.papermath.quantity.Amounts.mm;
import static org.papermath.quantity.Amounts.shortTons;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.papermath.card.MakingCard;
import org.papermath.drying.Dryer;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Notice;
import org.papermath.evidence.Scope;
import org.papermath.fibre.Fibre;
import org.papermath.fibre.Fibres;
import org.papermath.fibre.Furnish;
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
import org.papermath.pulp.Beater;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.VolumeFlow;
import org.papermath.text.Digits;
import org.papermath.vat.Vat;
import tech.units.indriya.quantity.Quantities;
import tech.units.indriya.unit.Units;

/** Felts, posts and the press, as a studio lays and sets them. */
class PostsAndPressTest {
    private static final Felts FELTS = Felts.of(mm(450), mm(620), Grammage.gsm(500), 25);
    private static final Press PRESS =
            Press.of("press", shortTons(20), mm(450), mm(600)).part("frame", shortTons(15));
    private static final Dryer BOARDS = Dryer.boards("boards", 24);

    private static Studio.Builder studio(Dryer dryer) {
        return studio(dryer, FELTS);
    }

    private static Studio.Builder studio(Dryer dryer, Felts felts) {
        return Studio.of("felts")
                .beater(Beater.of("beater", litres(45), grams(900)))
                .vat(Vat.of("vat", litres(70)))
                .mould(Mould.of("cards", mm(109), mm(152)))
                .mould(Mould.of("sheets", mm(310), mm(430)))
                .felts(felts)
                .dryer(dryer);
    }

    private static PiecePlan plan(Studio studio, Fibre fibre, int count, double width, double height, double gsm) {
        return whole(studio, fibre, count, width, height, gsm).piece("sheet");
    }

    private static MakingPlan whole(Studio studio, Fibre fibre, int count, double width, double height, double gsm) {
        return MakingPlan.withoutBands(
                Order.of("order")
                        .recipe(Recipe.of("stuff", Furnish.of(fibre))
                                .beating(hours(fibre.equals(Fibres.ABACA) ? 5 : 2))
                                .build())
                        .piece(Piece.of("sheet", count, "stuff")
                                .size(mm(width), mm(height))
                                .grammage(Grammage.gsm(gsm))
                                .edge(Piece.Edge.DECKLE)
                                .build())
                        .build(),
                studio);
    }

    /** Sheets of a postcard do not each take a felt of their own. */
    @Test
    void postcardsLieSideBySide() {
        PiecePlan cards = plan(studio(BOARDS).press(PRESS).build(), Fibres.COTTON_RAG, 100, 105, 148, 200);
        PostsPlan posts = cards.posts();
        assertThat(posts.sheetsOnFelt()).isBetween(8, 12);
        assertThat(posts.felts()).isEqualTo(11);
        assertThat(posts.sheetsInPost()).isEqualTo(10 * posts.sheetsOnFelt());
        assertThat(posts.posts())
                .isEqualTo((cards.counts().sheets() - 1) / posts.sheetsInPost() + 1)
                .isLessThan(3);
        assertThat(String.join(
                        "\n",
                        MakingCard.of(whole(studio(BOARDS).press(PRESS).build(), Fibres.COTTON_RAG, 100, 105, 148, 200))
                                .lines()))
                .contains("11, " + posts.sheetsOnFelt() + " sheets on each");
        // All the sheets of a layer carry the force, and nothing else does.
        PressingPlan press = cards.press();
        double wet = cards.forming().opening().area().si();
        assertThat(press.area().si()).isEqualTo(posts.sheetsOnFelt() * wet);
        assertThat(press.force().si())
                .isEqualTo(press.pressure().si() * press.area().si());
        assertThat(press.pressure().in("MPa")).isBetween(0.39, 0.4);
    }

    @Test
    void oneToAFeltTakesMorePostsAndHours() {
        Studio wide = studio(BOARDS).press(PRESS).build();
        Studio narrow = studio(BOARDS, Felts.of(mm(150), mm(200), Grammage.gsm(500), 25))
                .press(PRESS)
                .build();
        PiecePlan many = plan(wide, Fibres.COTTON_RAG, 100, 105, 148, 200);
        PiecePlan one = plan(narrow, Fibres.COTTON_RAG, 100, 105, 148, 200);
        assertThat(one.posts().sheetsOnFelt()).isEqualTo(1);
        assertThat(one.posts().posts()).isGreaterThan(5 * many.posts().posts());
        double hold = many.press().time().in("h");
        assertThat(one.workingHours().likely().in("h"))
                .isCloseTo(many.workingHours().likely().in("h"), within(1e-6));
        assertThat(one.machineHours().in("h") - many.machineHours().in("h"))
                .isCloseTo(hold * (one.posts().posts() - many.posts().posts()), within(1e-6));
    }

    /** A press that has the force for some sheets only presses as many well, instead of all badly. */
    @Test
    void noMoreToAFeltThanThePressHasTheForceFor() {
        Press small = Press.of("small", kilonewtons(35), mm(450), mm(600));
        PiecePlan cards = plan(studio(BOARDS).press(small).build(), Fibres.COTTON_RAG, 100, 105, 148, 200);
        assertThat(cards.posts().sheetsOnFelt()).isBetween(2, 5);
        assertThat(cards.press().limited()).isFalse();
        Press weak = Press.of("weak", kilonewtons(2), mm(450), mm(600));
        PiecePlan badly = plan(studio(BOARDS).press(weak).build(), Fibres.COTTON_RAG, 100, 105, 148, 200);
        assertThat(badly.posts().sheetsOnFelt()).isEqualTo(1);
        assertThat(badly.press().limited()).isTrue();
    }

    /** Nor than the platen covers. */
    @Test
    void noMoreToAFeltThanThePlatenCovers() {
        Press narrow = Press.of("narrow", shortTons(20), mm(240), mm(330));
        PiecePlan cards = plan(studio(BOARDS).press(narrow).build(), Fibres.COTTON_RAG, 100, 105, 148, 200);
        assertThat(cards.posts().sheetsOnFelt()).isEqualTo(4);
    }

    /** The wet sheets make a post higher, and so do thick felts. */
    @Test
    void aPostIsAsHighAsItsLayers() {
        Studio studio = studio(BOARDS).press(PRESS).build();
        PostsPlan thin = plan(studio, Fibres.ABACA, 60, 300, 420, 20).posts();
        PostsPlan thick = plan(studio, Fibres.ABACA, 60, 300, 420, 400).posts();
        assertThat(thick.sheetsInPost()).isEqualTo(thin.sheetsInPost()).isEqualTo(10);
        assertThat(thick.height().likely().in("mm") - thin.height().likely().in("mm"))
                .isGreaterThan(20);
        double mat = plan(studio, Fibres.ABACA, 60, 300, 420, 400)
                .matThickness()
                .likely()
                .in("mm");
        assertThat(thick.height().likely().in("mm")).isCloseTo(11 * 2 + 10 * mat, withinPercentage(1e-9));
        Studio soft = studio(BOARDS, FELTS.thickness(mm(3.2))).press(PRESS).build();
        PostsPlan higher = plan(soft, Fibres.ABACA, 60, 300, 420, 20).posts();
        assertThat(higher.height().likely().in("mm") - thin.height().likely().in("mm"))
                .isCloseTo(11 * 1.2, within(0.01));
        // A softer felt of the same wool holds more water.
        assertThat(higher.mass().likely().si())
                .isGreaterThan(thin.mass().likely().si());
    }

    @Test
    void feltsDenserThanWoolAreRefused() {
        Studio studio = studio(BOARDS, FELTS.thickness(mm(0.3))).build();
        assertThatThrownBy(() -> whole(studio, Fibres.COTTON_RAG, 60, 300, 420, 100))
                .hasMessageContaining("more than the 1310 kg/m³ of wool itself");
    }

    /** Fewer sheets go under a low press the thicker they are; where not even one does, the plan says so. */
    @Test
    void daylightIsThatOfTheRealPost() {
        Studio low = studio(BOARDS).press(PRESS.daylight(mm(25))).build();
        PostsPlan thin = plan(low, Fibres.COTTON_RAG, 60, 300, 420, 20).posts();
        PostsPlan thick = plan(low, Fibres.COTTON_RAG, 60, 300, 420, 400).posts();
        assertThat(thin.sheetsInPost()).isEqualTo(10);
        assertThat(thick.sheetsInPost()).isBetween(4, 6);
        assertThat(thick.height().likely().in("mm")).isLessThan(25);
        MakingPlan never =
                whole(studio(BOARDS).press(PRESS.daylight(mm(5))).build(), Fibres.COTTON_RAG, 60, 300, 420, 400);
        assertThat(never.notices()).extracting(Notice::code).contains("post.too-high");
        assertThat(whole(low, Fibres.COTTON_RAG, 60, 300, 420, 400).notices())
                .extracting(Notice::code)
                .doesNotContain("post.too-high");
    }

    static Stream<Arguments> everyFibreAndDryer() {
        List<Dryer> dryers = List.of(
                Dryer.fanStack("stack", VolumeFlow.cubicMetresPerHour(1500), 40),
                BOARDS,
                Dryer.loft("loft", 3, 60),
                Dryer.blotters("blotters", 40));
        return Fibres.all().stream().flatMap(fibre -> dryers.stream().map(dryer -> Arguments.of(fibre, dryer)));
    }

    /** Whatever press a studio has, its sheets go to the dryer no wetter than without one; pressed again, drier yet. */
    @ParameterizedTest
    @MethodSource("everyFibreAndDryer")
    void pressingOnlyHelps(Fibre fibre, Dryer dryer) {
        double without = solids(studio(dryer).build(), fibre);
        for (double force : new double[] {0.02, 2, 60, 180}) {
            Press press = Press.of("press", kilonewtons(force), mm(450), mm(600));
            double once = solids(studio(dryer).press(press).build(), fibre);
            double twice = solids(studio(dryer).press(press.pressings(2)).build(), fibre);
            double thrice = solids(studio(dryer).press(press.pressings(3)).build(), fibre);
            assertThat(once).as(force + " kN").isGreaterThanOrEqualTo(without * (1 - 1e-12));
            assertThat(twice).as(force + " kN").isGreaterThanOrEqualTo(once * (1 - 1e-12));
            assertThat(thrice).as(force + " kN").isGreaterThanOrEqualTo(twice * (1 - 1e-12));
        }
    }

    private static double solids(Studio studio, Fibre fibre) {
        return plan(studio, fibre, 20, 300, 420, 100).solids().likely().si();
    }

    /** A second pressing leaves about 0.88 of the water, and takes its time with every post. */
    @Test
    void aSecondPressing() {
        Assumptions dry = Assumptions.standard().given("press.rewet", Scope.GENERAL, 1e-9);
        Studio once = studio(BOARDS).press(PRESS).assumptions(dry).build();
        Studio twice = studio(BOARDS).press(PRESS.pressings(2)).assumptions(dry).build();
        PiecePlan first = plan(once, Fibres.COTTON_RAG, 60, 300, 420, 100);
        PiecePlan second = plan(twice, Fibres.COTTON_RAG, 60, 300, 420, 100);
        double left = 1 / second.solids().likely().si() - 1;
        assertThat(left / (1 / first.solids().likely().si() - 1)).isCloseTo(0.88, within(1e-4));
        assertThat(second.workingHours().likely().in("min")
                        - first.workingHours().likely().in("min"))
                .isCloseTo(30 * first.posts().posts(), within(1e-6));
        assertThat(second.press().times()).isEqualTo(2);
        assertThat(String.join(
                        "\n",
                        MakingCard.of(whole(twice, Fibres.COTTON_RAG, 60, 300, 420, 100))
                                .lines()))
                .contains("15 min, 2 times", "exchange the felts for drier ones between the pressings");
    }

    /** What a jack is set to is what its gauge shows. */
    @Test
    void theCardSaysWhatTheGaugeShows() {
        Studio studio = studio(BOARDS).press(PRESS.ram(RamGauge.of(mm(60)))).build();
        MakingPlan plan = whole(studio, Fibres.COTTON_RAG, 60, 300, 420, 100);
        PressingPlan press = plan.piece("sheet").press();
        assertThat(press.gauge().orElseThrow().si())
                .isCloseTo(press.force().si() / (Math.PI * 0.03 * 0.03), withinPercentage(1e-9));
        String card = String.join("\n", MakingCard.of(plan).lines());
        assertThat(card)
                .contains(
                        "gauge shows", Digits.three(press.gauge().orElseThrow().in("MPa")) + " MPa", "on the sheets")
                .contains("felts damp, not dripping, before couching");
        assertThat(String.join(
                        "\n",
                        MakingCard.of(whole(studio(BOARDS).press(PRESS).build(), Fibres.COTTON_RAG, 60, 300, 420, 100))
                                .lines()))
                .doesNotContain("gauge shows");
    }

    /** A screw presses as hard as people pull at its lever, and the card says how hard that is. */
    @Test
    void aScrewIsSetByThePullAtItsLever() {
        Screw screw = Screw.steel(mm(10), mm(50)).collar(mm(60));
        Press one = PRESS.screw(screw, Lever.of(mm(1000), 1));
        MakingPlan weak = whole(studio(BOARDS).press(one).build(), Fibres.COTTON_RAG, 60, 300, 420, 100);
        PressingPlan press = weak.piece("sheet").press();
        double most = 250 / screw.torqueFor(kilonewtons(1)).si();
        assertThat(press.limited()).isTrue();
        assertThat(press.force().in("kN")).isBetween(most - 0.5, most);
        assertThat(press.pull().orElseThrow().in("N")).isBetween(230.0, 250.0);
        assertThat(weak.notices())
                .filteredOn(notice -> notice.code().equals("press.limited"))
                .singleElement()
                .extracting(Notice::text)
                .asString()
                .contains("the pull at the lever holds the press to " + press.force() + "; the sheet gets");
        Press many = PRESS.screw(screw, Lever.of(mm(2000), 4));
        MakingPlan strong = whole(studio(BOARDS).press(many).build(), Fibres.COTTON_RAG, 60, 300, 420, 100);
        PressingPlan held = strong.piece("sheet").press();
        assertThat(held.limited()).isFalse();
        assertThat(held.pull().orElseThrow().si() * 4 * 2)
                .isCloseTo(screw.torqueFor(held.force()).si(), withinPercentage(1e-9));
        assertThat(String.join(" ", MakingCard.of(strong).lines()).replaceAll(" +", " "))
                .contains(
                        "pull at the lever",
                        Digits.three(held.pull().orElseThrow().in("N")) + " N each",
                        "what the frame as weakest part allows");
        assertThat(many.byHands().orElseThrow().si())
                .isCloseTo(
                        screw.forceOf(Lever.of(mm(2000), 4).torque()).likely().si(), withinPercentage(1e-9));
        assertThatThrownBy(() ->
                        PRESS.screw(screw.thread(Quantities.getQuantity(0.2531, Units.RADIAN)), Lever.of(mm(1000), 1)))
                .hasMessageContaining("the thread of its screw is not square");
    }

    @Test
    void aPostForMoreThanTwo() {
        Felts heavy = Felts.of(mm(450), mm(620), Grammage.gsm(3000), 41);
        Studio studio = studio(BOARDS, heavy).press(PRESS).build();
        assertThat(whole(studio, Fibres.COTTON_RAG, 60, 300, 420, 300).notices())
                .filteredOn(notice -> notice.code().equals("post.heavy"))
                .singleElement()
                .extracting(Notice::text)
                .asString()
                .contains("Take two people, a trolley or smaller posts.");
        Assumptions twenty = Assumptions.standard().given("labour.post-sheets", Scope.GENERAL, 20);
        assertThat(whole(
                                studio(BOARDS, heavy)
                                        .press(PRESS)
                                        .assumptions(twenty)
                                        .build(),
                                Fibres.COTTON_RAG,
                                60,
                                300,
                                420,
                                300)
                        .notices())
                .filteredOn(notice -> notice.code().equals("post.heavy"))
                .singleElement()
                .extracting(Notice::text)
                .asString()
                .contains("two should lift together");
    }
}
