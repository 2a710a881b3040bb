package org.papermath.equation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Scale;
import org.junit.jupiter.api.Test;

class PieceLayoutTest {
    @Test
    void countsByLayoutAndNotByArea() {
        // Sheets of 8 by 11 in on a shelf of 30 by 60 in: 15 by layout, 14 the other way, 20 by area.
        PieceLayout.Layout best = PieceLayout.best(30, 60, 8, 11, 11, 8, 0, 0);
        assertThat(best).isEqualTo(new PieceLayout.Layout(15, 3, 5, false));
        assertThat(PieceLayout.upright(30, 60, 11, 8, 0, 0).count()).isEqualTo(14);
        // Cards of 95 by 135 mm from 300 by 420 mm: 9, and 8 the other way.
        assertThat(PieceLayout.best(0.3, 0.42, 0.095, 0.135, 0.135, 0.095, 0, 0))
                .isEqualTo(new PieceLayout.Layout(9, 3, 3, false));
        assertThat(PieceLayout.best(0.3, 0.42, 0.135, 0.095, 0.095, 0.135, 0, 0))
                .isEqualTo(new PieceLayout.Layout(9, 3, 3, true));
    }

    @Test
    void roundingNeitherAddsNorTakesAPiece() {
        assertThat(PieceLayout.inRow(0.3, 0.1, 0)).isEqualTo(3);
        assertThat(PieceLayout.inRow(3 * 0.1, 0.1, 0)).isEqualTo(3);
        assertThat(PieceLayout.inRow(0.7, 0.1, 0)).isEqualTo(7);
        assertThat(PieceLayout.inRow(0.2999, 0.1, 0)).isEqualTo(2);
        assertThat(PieceLayout.inRow(0.315, 0.1, 0.0075)).isEqualTo(3);
    }

    @Test
    void nothingFits() {
        assertThat(PieceLayout.best(1, 1, 2, 3, 3, 2, 0, 0)).isEqualTo(new PieceLayout.Layout(0, 0, 0, false));
        assertThat(PieceLayout.best(3, 1, 1, 2, 2, 1, 0, 0)).isEqualTo(new PieceLayout.Layout(1, 1, 1, true));
        assertThat(PieceLayout.inRow(1, 0, 0)).isZero();
        assertThat(PieceLayout.inRow(-1, 1, 0)).isZero();
    }

    @Property(tries = 500, seed = "2026")
    void thePiecesFitAndOneMoreDoesNot(
            @ForAll @Scale(9) @DoubleRange(min = 0.05, max = 2) double face,
            @ForAll @Scale(9) @DoubleRange(min = 0.01, max = 2) double piece,
            @ForAll @Scale(9) @DoubleRange(min = 0, max = 0.05) double gap) {
        int n = PieceLayout.inRow(face, piece, gap);
        assertThat(PieceLayout.extent(n, piece, gap)).isLessThanOrEqualTo(face + 1e-8);
        assertThat(PieceLayout.extent(n + 1, piece, gap)).isGreaterThan(face);
    }

    @Property(tries = 300, seed = "2026")
    void bestIsTheBetterTurn(
            @ForAll @IntRange(min = 10, max = 200) int faceW,
            @ForAll @IntRange(min = 10, max = 200) int faceH,
            @ForAll @IntRange(min = 3, max = 90) int w,
            @ForAll @IntRange(min = 3, max = 90) int h) {
        int upright = (faceW / w) * (faceH / h);
        int turned = (faceW / h) * (faceH / w);
        PieceLayout.Layout best = PieceLayout.best(faceW, faceH, w, h, h, w, 0, 0);
        assertThat(best.count()).isEqualTo(Math.max(upright, turned));
        assertThat(best.across() * best.along()).isEqualTo(best.count());
        assertThat(best.turned()).isEqualTo(turned > upright);
        assertThat((double) best.count() * w * h)
                .isCloseTo(Math.min((double) best.count() * w * h, (double) faceW * faceH), within(1e-9));
    }
}
