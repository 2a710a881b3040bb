package org.papermath.shape;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.papermath.quantity.Amounts.inches;
import static org.papermath.quantity.Amounts.mm;

import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import org.papermath.quantity.Refused;
import org.papermath.shape.CutLayout.Edge;

class CutLayoutTest {
    private static final Set<Edge> ALL = EnumSet.allOf(Edge.class);

    /** Cards of 95 by 135 mm from 300 by 420 mm. */
    @Test
    void nineCardsFromAParent() {
        CutLayout layout = CutLayout.best(mm(300), mm(420), mm(95), mm(135), mm(0), mm(0), ALL);
        assertThat(layout.count()).isEqualTo(9);
        assertThat(CutLayout.of(mm(300), mm(420), mm(95), mm(135), mm(0), mm(0), ALL, true)
                        .count())
                .isEqualTo(8);
        assertThat(layout.trim().in("%")).isCloseTo(8.4, within(0.01));
        assertThat(layout.yield().in("%") + layout.trim().in("%")).isCloseTo(100, within(1e-12));
        assertThat(layout.withDeckleEdges(2)).isEqualTo(4);
        assertThat(layout.places().get(0)).hasToString("95 mm × 135 mm at (0 mm, 0 mm), deckle edge left, bottom");
        assertThat(layout.places().get(4)).hasToString("95 mm × 135 mm at (102.5 mm, 142.5 mm)");
        assertThat(layout.withDeckleEdges(1)).isEqualTo(4);
        assertThat(layout.withDeckleEdges(0)).isEqualTo(1);
        assertThat(layout.withDeckleAt(EnumSet.of(Edge.BOTTOM))).isEqualTo(3);
        assertThat(layout.withDeckleAt(EnumSet.of(Edge.BOTTOM, Edge.LEFT))).isEqualTo(1);
        assertThat(layout.parent().area().in("mm2")).isCloseTo(126000, within(1e-6));
        assertThat(layout)
                .hasToString(
                        "9 pieces (3 × 3), trim 8.393 %; 4 with 2 deckle edges, 4 with 1 deckle edge, 1 with no deckle edges");
    }

    /** A sheet of 8 1/2 by 11 in cut in three of 8 1/2 by 3 1/2, the deckle kept on the short ends. */
    @Test
    void aPieceAcrossTheWholeParentKeepsBothEdges() {
        CutLayout layout = CutLayout.best(
                inches(8.5), inches(11), inches(8.5), inches(3.5), mm(0), mm(3), EnumSet.of(Edge.LEFT, Edge.RIGHT));
        assertThat(layout.count()).isEqualTo(3);
        assertThat(layout.withDeckleAt(EnumSet.of(Edge.LEFT, Edge.RIGHT))).isEqualTo(3);
        assertThat(layout.trim().in("%")).isCloseTo(100 * 0.5 / 11, within(1e-9));
        assertThat(layout.withDeckleAt(EnumSet.of(Edge.TOP))).isZero();
    }

    @Test
    void onePieceKeepsOneOfTwoEdges() {
        CutLayout layout = CutLayout.best(mm(200), mm(300), mm(150), mm(280), mm(0), mm(5), ALL);
        assertThat(layout.places())
                .singleElement()
                .satisfies(place -> assertThat(place.deckleEdges()).containsExactlyInAnyOrder(Edge.LEFT, Edge.BOTTOM));
        CutLayout high =
                CutLayout.best(mm(200), mm(300), mm(150), mm(280), mm(0), mm(5), EnumSet.of(Edge.RIGHT, Edge.TOP));
        assertThat(high.places())
                .singleElement()
                .satisfies(place -> assertThat(place.deckleEdges()).containsExactlyInAnyOrder(Edge.RIGHT, Edge.TOP));
        CutLayout none = CutLayout.best(mm(200), mm(300), mm(150), mm(280), mm(0), mm(5), Set.of());
        assertThat(none.withDeckleEdges(0)).isEqualTo(1);
        assertThat(none.places().get(0).across().in("mm")).isCloseTo(25, within(1e-9));
    }

    @Test
    void trimAtEdgesThatAreNotKeptCosts() {
        assertThat(CutLayout.best(mm(300), mm(420), mm(100), mm(140), mm(0), mm(0), ALL)
                        .count())
                .isEqualTo(9);
        assertThat(CutLayout.best(mm(300), mm(420), mm(100), mm(140), mm(0), mm(2), Set.of())
                        .count())
                .isEqualTo(8);
        assertThat(CutLayout.of(mm(300), mm(420), mm(100), mm(140), mm(1), mm(0), ALL, false)
                        .count())
                .isEqualTo(4);
        assertThat(CutLayout.best(mm(50), mm(60), mm(100), mm(140), mm(0), mm(0), ALL)
                        .count())
                .isZero();
        assertThatThrownBy(() -> CutLayout.best(mm(300), mm(420), mm(1), mm(1), mm(0), mm(0), ALL))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("10 000");
    }

    @Property(tries = 300, seed = "2026")
    void piecesLieInTheParentAndApart(
            @ForAll @IntRange(min = 50, max = 600) int pw,
            @ForAll @IntRange(min = 50, max = 600) int ph,
            @ForAll @IntRange(min = 20, max = 300) int w,
            @ForAll @IntRange(min = 20, max = 300) int h,
            @ForAll @IntRange(min = 0, max = 5) int gap,
            @ForAll @IntRange(min = 0, max = 8) int trim,
            @ForAll Set<Edge> kept) {
        CutLayout layout = CutLayout.best(mm(pw), mm(ph), mm(w), mm(h), mm(gap), mm(trim), kept);
        List<CutLayout.Place> places = layout.places();
        assertThat(places).hasSize(layout.count());
        double left = kept.contains(Edge.LEFT) ? 0 : trim;
        double right = pw - (kept.contains(Edge.RIGHT) ? 0 : trim);
        for (int i = 0; i < places.size(); i++) {
            CutLayout.Place a = places.get(i);
            assertThat(a.across().in("mm")).isGreaterThanOrEqualTo(left - 1e-6);
            assertThat(a.across().in("mm") + a.width().in("mm")).isLessThanOrEqualTo(right + 1e-6);
            assertThat(a.along().in("mm") + a.height().in("mm")).isLessThanOrEqualTo(ph + 1e-6);
            for (int j = 0; j < i; j++) {
                CutLayout.Place b = places.get(j);
                boolean apart = Math.abs(a.across().in("mm") - b.across().in("mm"))
                                >= a.width().in("mm") + gap - 1e-6
                        || Math.abs(a.along().in("mm") - b.along().in("mm"))
                                >= a.height().in("mm") + gap - 1e-6;
                assertThat(apart).isTrue();
            }
            assertThat(kept).containsAll(a.deckleEdges());
        }
    }
}
