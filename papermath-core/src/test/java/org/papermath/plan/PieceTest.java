package org.papermath.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.papermath.quantity.Amounts.grams;
import static org.papermath.quantity.Amounts.micrometres;
import static org.papermath.quantity.Amounts.mm;

import java.util.List;
import java.util.function.Consumer;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.papermath.envelope.EnvelopeStyle;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Basis;
import org.papermath.evidence.Scope;
import org.papermath.evidence.Source;
import org.papermath.fibre.Fibres;
import org.papermath.fibre.Furnish;
import org.papermath.order.Order;
import org.papermath.order.Piece;
import org.papermath.order.Recipe;
import org.papermath.order.Studio;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Share;

/** What a piece and an order refuse. */
class PieceTest {
    private static Piece.Builder piece() {
        return Piece.of("card", 10, "plain");
    }

    private static Piece.Builder card() {
        return piece().size(mm(100), mm(150)).grammage(Grammage.gsm(120));
    }

    private static Piece.Builder envelope() {
        return piece().grammage(Grammage.gsm(90)).envelopeFor("invitation", EnvelopeStyle.WALLET);
    }

    private static Refused refused(ThrowingCallable door) {
        Refused refused = catchThrowableOfType(Refused.class, door);
        assertThat(refused).isNotNull();
        return refused;
    }

    private record Door(String what, Consumer<Piece.Builder> taken, List<Consumer<Piece.Builder>> refused) {
        @Override
        public String toString() {
            return what;
        }
    }

    static List<Door> doors() {
        return List.of(
                new Door(
                        "width of piece card",
                        p -> p.size(mm(5), mm(5000)),
                        List.of(p -> p.size(mm(4.9), mm(100)), p -> p.size(mm(5001), mm(100)))),
                new Door(
                        "height of piece card",
                        p -> p.size(mm(5000), mm(5)),
                        List.of(p -> p.size(mm(100), mm(4.9)), p -> p.size(mm(100), mm(5001)))),
                new Door(
                        "grammage of piece card",
                        p -> p.grammage(Grammage.gsm(2)),
                        List.of(p -> p.grammage(Grammage.gsm(1.9)), p -> p.grammage(Grammage.gsm(2001)))),
                new Door(
                        "caliper of piece card",
                        p -> p.caliper(micrometres(10)),
                        List.of(p -> p.caliper(micrometres(9.9)), p -> p.caliper(mm(5.1)))),
                new Door("trim of piece card", p -> p.trim(mm(100)), List.of(p -> p.trim(mm(100.1)))),
                new Door("gap beside piece card", p -> p.gap(mm(100)), List.of(p -> p.gap(mm(100.1)))),
                new Door("clearance of envelope card", p -> p.clearance(mm(100)), List.of(p -> p.clearance(mm(100.1)))),
                new Door(
                        "pieces kept of piece card",
                        p -> p.kept(100_000),
                        List.of(p -> p.kept(-1), p -> p.kept(100_001), p -> p.kept(Integer.MAX_VALUE))),
                new Door(
                        "trial sheets of piece card",
                        p -> p.trials(10_000),
                        List.of(p -> p.trials(-1), p -> p.trials(10_001), p -> p.trials(Integer.MAX_VALUE))),
                new Door("folds of piece card", p -> p.folds(4), List.of(p -> p.folds(-1), p -> p.folds(5))),
                new Door("inserts of piece card", p -> p.inserts(50), List.of(p -> p.inserts(0), p -> p.inserts(51))));
    }

    @ParameterizedTest
    @MethodSource("doors")
    void everyDoorHasBounds(Door door) {
        door.taken().accept(piece());
        for (Consumer<Piece.Builder> bad : door.refused()) {
            Refused refused = refused(() -> bad.accept(piece()));
            assertThat(refused).hasMessageStartingWith(door.what() + ": ");
            assertThat(refused.code()).isIn("count.range", "quantity.range");
            assertThat(refused.arguments()).containsKeys("quantity", "given", "least", "most");
        }
    }

    @Test
    void countOrderedHasBounds() {
        assertThat(Piece.of("card", 100_000, "plain")).isNotNull();
        for (int bad : new int[] {0, -1, 100_001}) {
            assertThat(refused(() -> Piece.of("card", bad, "plain")))
                    .hasMessageStartingWith("number ordered of piece card: " + bad + " given;");
        }
    }

    @Test
    void namesAreWanted() {
        assertThat(refused(() -> Piece.of(" ", 1, "plain")).code()).isEqualTo("name.empty");
        assertThat(refused(() -> Piece.of("card", 1, "")).code()).isEqualTo("name.empty");
        assertThat(refused(() -> piece().dryer("")).code()).isEqualTo("name.empty");
        assertThat(refused(() -> piece().envelopeFor("", EnvelopeStyle.WALLET)).code())
                .isEqualTo("name.empty");
        assertThat(refused(() -> Piece.of("a[b", 1, "plain")).code()).isEqualTo("name.sign");
        assertThat(refused(() -> Order.of(" ")).code()).isEqualTo("name.empty");
        assertThat(refused(() -> Order.of("a\nb")).code()).isEqualTo("text.character");
        assertThat(refused(() -> Studio.of("")).code()).isEqualTo("name.empty");
        assertThat(refused(() -> Recipe.of("", Furnish.of(Fibres.ABACA))).code())
                .isEqualTo("name.empty");
        assertThat(Piece.of(" card ", 1, " plain ")
                        .size(mm(50), mm(50))
                        .grammage(Grammage.gsm(90))
                        .build())
                .isEqualTo(Piece.of("card", 1, "plain")
                        .size(mm(50), mm(50))
                        .grammage(Grammage.gsm(90))
                        .build());
    }

    @Test
    void nothingIsSaidTwice() {
        for (Consumer<Piece.Builder> again : List.<Consumer<Piece.Builder>>of(
                p -> p.size(mm(50), mm(60)),
                p -> p.grammage(Grammage.gsm(90)),
                p -> p.caliper(mm(0.2)),
                p -> p.sample(Piece.Sample.of(mm(100), mm(100), grams(1), mm(0.2))))) {
            assertThat(refused(() -> again.accept(card())).code()).isEqualTo("builder.twice");
        }
        for (Consumer<Piece.Builder> twice : List.<Consumer<Piece.Builder>>of(
                p -> p.spare(Share.percent(5)),
                p -> p.trim(mm(3)),
                p -> p.gap(mm(3)),
                p -> p.clearance(mm(3)),
                p -> p.mailedIn("United States"),
                p -> p.envelopeFor("x", EnvelopeStyle.WALLET),
                p -> p.caliper(mm(0.2)),
                p -> p.sample(Piece.Sample.of(mm(100), mm(100), grams(1), mm(0.2))))) {
            Piece.Builder once = piece();
            twice.accept(once);
            assertThat(refused(() -> twice.accept(once)).code()).isEqualTo("builder.twice");
        }
    }

    @Test
    void whatClashesIsRefusedAtTheEnd() {
        assertThat(refused(() -> piece().grammage(Grammage.gsm(90)).build()).code())
                .isEqualTo("piece.no-size");
        assertThat(refused(() -> piece().size(mm(90), mm(90)).build()).code()).isEqualTo("piece.no-target");
        assertThat(refused(() -> envelope().size(mm(90), mm(90)).build()).arguments())
                .containsEntry("member", "size");
        assertThat(refused(() -> envelope().folds(1).build()).arguments()).containsEntry("member", "folds");
        assertThat(refused(() -> card().edge(Piece.Edge.DECKLE).trim(mm(1)).build())
                        .arguments())
                .containsEntry("member", "trim");
        assertThat(card().edge(Piece.Edge.DECKLE).trim(mm(0)).build().edge()).isEqualTo(Piece.Edge.DECKLE);
        assertThat(piece().grammage(Grammage.gsm(90))
                        .size(mm(90), mm(90))
                        .envelopeFor("x", EnvelopeStyle.DIAMOND)
                        .build()
                        .width())
                .isPresent();
    }

    @Test
    void whatWasSaidIsThere() {
        Piece said = card().spare(Share.percent(7))
                .kept(3)
                .trials(4)
                .folds(2)
                .trim(mm(5))
                .gap(mm(6))
                .dryer("loft")
                .mailedIn("United States")
                .build();
        assertThat(said.spare()).contains(Share.percent(7));
        assertThat(said.kept()).isEqualTo(3);
        assertThat(said.trials()).hasValue(4);
        assertThat(said.folds()).isEqualTo(2);
        assertThat(said.trim()).contains(mm(5));
        assertThat(said.gap()).contains(mm(6));
        assertThat(said.dryer()).contains("loft");
        assertThat(said.mailedIn()).contains("United States");
        assertThat(card().build().trials()).isEmpty();
        assertThat(envelope().inserts(2).clearance(mm(4)).build().clearance()).contains(mm(4));
    }

    @Test
    void sampleIsCheckedInItsConstructorToo() {
        assertThat(refused(() -> new Piece.Sample(mm(0), mm(1), grams(1), mm(1))))
                .hasMessageStartingWith("sample w");
        assertThat(refused(() -> new Piece.Sample(mm(1), mm(5001), grams(1), mm(1))))
                .hasMessageStartingWith("sample h");
        assertThat(refused(() -> new Piece.Sample(mm(1), mm(1), grams(0), mm(1))))
                .hasMessageStartingWith("sample m");
        assertThat(refused(() -> new Piece.Sample(mm(1), mm(1), grams(1), mm(51))))
                .hasMessageStartingWith("sample c");
    }

    private static Order.Builder order(Piece... pieces) {
        Order.Builder order = Order.of("o")
                .recipe(Recipe.of("plain", Furnish.of(Fibres.COTTON_RAG)).build());
        for (Piece one : pieces) {
            order.piece(one);
        }
        return order;
    }

    private static Piece many(String name, int count, int kept, int trials) {
        return Piece.of(name, count, "plain")
                .size(mm(100), mm(150))
                .grammage(Grammage.gsm(120))
                .spare(Share.percent(10))
                .kept(kept)
                .trials(trials)
                .build();
    }

    @Test
    void anOrderHasOnlySoManyPieces() {
        assertThat(order(many("a", 80_000, 12_000, 10_000), many("b", 80_000, 2_000, 0))
                        .build()
                        .pieces())
                .hasSize(2);
        Refused refused = refused(order(many("a", 80_000, 12_000, 10_000), many("b", 80_000, 2_000, 1))::build);
        assertThat(refused.code()).isEqualTo("order.too-many-pieces");
        assertThat(refused)
                .hasMessage("pieces and trial sheets of order o: 200001 given, with those kept and spare;"
                        + " at most 200000 are possible. Check the counts, or make several orders of it.");
        assertThat(refused.arguments()).containsEntry("member", "pieces").containsEntry("most", 200_000);
    }

    private static Studio knowing(String id, double value) {
        Assumptions all = Assumptions.standard();
        return Studio.of("s")
                .assumptions(all.with(all.all().stream()
                        .filter(one -> one.id().equals(id))
                        .findFirst()
                        .orElseThrow()
                        .with(Scope.GENERAL, value, value, value, Basis.GIVEN, new Source("a test"))))
                .build();
    }

    @Test
    void aPlanHasOnlySoManySheets() {
        Order order = order(card().build()).build();
        Refused refused = refused(() -> MakingPlan.of(order, knowing("reject.forming", 0.99999)));
        assertThat(refused.code()).isEqualTo("plan.too-many-sheets");
        assertThat(refused).hasMessageContaining("at most 1000000 are possible");
        assertThat(MakingPlan.of(order, knowing("order.spare-share", 0.9999))
                        .piece("card")
                        .counts()
                        .wanted())
                .isEqualTo(20);
        // Each piece alone would do; together they are too many.
        Order two = order(many("a", 30_000, 0, 0), many("b", 30_000, 0, 0)).build();
        assertThat(refused(() -> MakingPlan.withoutBands(two, knowing("reject.forming", 0.95))))
                .hasMessageStartingWith("sheets to pull up to piece b: ");
    }

    @Test
    void longNamesAreCutInMessages() {
        MakingPlan plan = MakingPlan.withoutBands(
                order(card().build()).build(), Studio.of("s").build());
        assertThat(refused(() -> plan.piece("n".repeat(100_000))).getMessage().length())
                .isLessThan(300);
        assertThat(refused(() -> mm(1).to("n".repeat(100_000))).getMessage().length())
                .isLessThan(2001);
        assertThat(refused(() -> Piece.of("n".repeat(100_000), 1, "plain")))
                .hasMessage("piece: the text has 100000" + " characters; at most 200 fit here. Shorten it.");
        assertThat(refused(() -> Kinds.LENGTH.read("1 " + "n".repeat(100_000)))
                        .getMessage()
                        .length())
                .isLessThan(2001);
    }
}
