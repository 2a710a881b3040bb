package org.papermath.shape;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.papermath.quantity.Amounts.mm;
import static org.papermath.quantity.Amounts.percent;
import static org.papermath.testing.CheckValues.relative;

import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;
import org.junit.jupiter.api.Test;
import org.papermath.quantity.Refused;

class OutlineTest {
    private static Outline.Point at(double across, double along) {
        return Outline.Point.of(mm(across), mm(along));
    }

    private static final Outline ARROW = Outline.of(at(20, 10), at(60, 40), at(20, 70), at(35, 40));

    @Test
    void anOutlineHasAShapeAndNoPlace() {
        Outline same = Outline.of(at(120, 210), at(160, 240), at(120, 270), at(135, 240));
        assertThat(same.area().in("mm2")).isCloseTo(ARROW.area().in("mm2"), within(1e-9));
        assertThat(ARROW.corners().get(0)).hasToString("(0 mm, 0 mm)");
        Outline otherWay = Outline.of(at(35, 40), at(20, 70), at(60, 40), at(20, 10));
        assertThat(otherWay.area().si()).isCloseTo(ARROW.area().si(), within(1e-18));
        assertThat(ARROW.width().in("mm")).isCloseTo(40, within(1e-12));
        assertThat(ARROW.height().in("mm")).isCloseTo(60, within(1e-12));
        assertThat(ARROW.area().in("mm2")).isCloseTo(60 * 40 / 2.0 - 60 * 15 / 2.0, within(1e-9));
        assertThat(ARROW.isConvex()).isFalse();
        assertThat(ARROW.contains(mm(5), mm(30))).isFalse();
        assertThat(ARROW.contains(mm(20), mm(30))).isTrue();
        assertThat(ARROW.boundingBox().area().in("mm2")).isCloseTo(2400, within(1e-9));
        assertThat(ARROW.perimeter().in("mm")).isCloseTo(2 * 50 + 2 * Math.hypot(15, 30), within(1e-9));
        assertThat(ARROW).hasToString("outline of 4 corners, 40 mm × 60 mm");
    }

    @Test
    void rectangle() {
        Outline card = Outline.rectangle(mm(105), mm(148));
        assertThat(card.area().in("mm2")).isCloseTo(15540, within(1e-9));
        assertThat(card.centroid().across().in("mm")).isCloseTo(52.5, within(1e-12));
        assertThat(card.centroid().along().in("mm")).isCloseTo(74, within(1e-12));
        assertThat(card.isConvex()).isTrue();
        assertThat(card.turned().width()).isEqualTo(mm(148));
        assertThat(card.enlarged(mm(3)).area().in("mm2")).isCloseTo(111 * 154, within(1e-8));
        assertThat(card.reduced(mm(3)).area().in("mm2")).isCloseTo(99 * 142, within(1e-8));
        assertThat(card).isEqualTo(Outline.rectangle(mm(105), mm(148))).isNotEqualTo(card.turned());
    }

    @Test
    void whatIsNoOutlineIsRefused() {
        assertThatThrownBy(() -> Outline.of(at(0, 0), at(1, 1)))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("at least 3");
        assertThatThrownBy(() -> Outline.of(at(0, 0), at(10, 10), at(10, 0), at(0, 10)))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("cross");
        assertThatThrownBy(() -> Outline.of(at(0, 0), at(10, 10), at(20, 20))).isInstanceOf(Refused.class);
        assertThatThrownBy(() -> Outline.rectangle(mm(0), mm(3))).isInstanceOf(Refused.class);
        assertThatThrownBy(() -> Outline.rectangle(mm(10), mm(30)).reduced(mm(5)))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("5 mm inward");
    }

    @Property(tries = 300, seed = "2026")
    void shrinkingAndItsInverse(
            @ForAll @Scale(4) @DoubleRange(min = -20, max = 60) double along,
            @ForAll @Scale(4) @DoubleRange(min = -20, max = 60) double across) {
        Shrinkage shrinkage = Shrinkage.across(percent(across)).along(percent(along));
        Outline formed = ARROW.beforeShrinkage(shrinkage);
        Outline back = formed.shrunkBy(shrinkage);
        for (int i = 0; i < 4; i++) {
            assertThat(back.corners().get(i).across().si())
                    .isCloseTo(ARROW.corners().get(i).across().si(), within(1e-16));
            assertThat(back.corners().get(i).along().si())
                    .isCloseTo(ARROW.corners().get(i).along().si(), within(1e-16));
        }
        double area = ARROW.area().si();
        assertThat(formed.area().si() * shrinkage.areaFactor()).isCloseTo(area, relative(area, 1e-14));
        assertThat(formed.width().si() * (1 - across / 100)).isCloseTo(0.04, relative(0.04, 1e-14));
        assertThat(formed.height().si() * (1 - along / 100)).isCloseTo(0.06, relative(0.06, 1e-14));
    }

    @Test
    void aRoundAndAnOvalHaveTheirSidesAndNearlyTheAreaOfTheCurve() {
        Outline round = Outline.round(mm(80));
        assertThat(round.width().in("mm")).isCloseTo(80, within(1e-12));
        assertThat(round.height().in("mm")).isCloseTo(80, within(1e-12));
        assertThat(round.isConvex()).isTrue();
        assertThat(round.area().in("mm2") / (Math.PI * 1600))
                .isCloseTo(1, within(6e-5))
                .isLessThan(1);
        Outline oval = Outline.oval(mm(60), mm(90));
        assertThat(oval.width().in("mm")).isCloseTo(60, within(1e-12));
        assertThat(oval.height().in("mm")).isCloseTo(90, within(1e-12));
        assertThat(oval.area().in("mm2") / (Math.PI * 30 * 45)).isCloseTo(1, within(6e-5));
        assertThat(Outline.oval(mm(80), mm(80))).isEqualTo(round);
        assertThatThrownBy(() -> Outline.round(mm(0))).isInstanceOf(Refused.class);
    }

    /** To the bit, whatever the numbers, so that documents can write corners and read them. */
    @Test
    void theCornersOfAnOutlineMakeItAgain() {
        for (double width = 7.3; width < 400; width *= 1.37) {
            for (Outline outline : List.of(
                    Outline.round(mm(width)),
                    Outline.oval(mm(width / 3), mm(width)),
                    Outline.rectangle(mm(width), mm(width / 7)).turned())) {
                assertThat(Outline.of(outline.corners())).isEqualTo(outline);
            }
        }
    }
}
