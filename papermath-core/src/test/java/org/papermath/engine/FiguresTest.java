package org.papermath.engine;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.papermath.quantity.Kinds;

/** What the stages declare has a place each, and the whole array is places of them. */
class FiguresTest {
    private static final int BATCHES = 2;
    private static final int PIECES = 3;

    @Test
    void everyFigureHasItsOwnPlace() {
        Figures figures = new Figures(BATCHES, PIECES);
        List<Integer> places = new ArrayList<>();
        for (int b = 0; b < BATCHES; b++) {
            for (BatchFigure figure : Figures.ofBatches()) {
                int place = figures.place(figure, b);
                places.add(place);
                assertThat(figures.figure(place)).isSameAs(figure);
                assertThat(figures.batchAt(place)).isEqualTo(b);
                assertThat(figures.pieceAt(place)).isEqualTo(-1);
            }
        }
        for (int p = 0; p < PIECES; p++) {
            for (PieceFigure figure : Figures.ofPieces()) {
                int place = figures.place(figure, p);
                places.add(place);
                assertThat(figures.figure(place)).isSameAs(figure);
                assertThat(figures.pieceAt(place)).isEqualTo(p);
                assertThat(figures.batchAt(place)).isEqualTo(-1);
            }
        }
        places.add(figures.hoursPlace());
        assertThat(figures.figure(figures.hoursPlace())).isNull();
        assertThat(places).doesNotHaveDuplicates().hasSize(figures.size());
    }

    @Test
    void noTwoFiguresAreCalledTheSame() {
        assertThat(Figures.ofBatches()).extracting(Figure::words).doesNotHaveDuplicates();
        assertThat(Figures.ofPieces()).extracting(Figure::words).doesNotHaveDuplicates();
    }

    @Test
    void aFigureOfAStageNobodyKnowsHasNoPlace() {
        Figures figures = new Figures(BATCHES, PIECES);
        StageFigures unknown = new StageFigures();
        PieceFigure figure = unknown.piece("length of the deckle string", Kinds.LENGTH, "mm", Scale.FACTOR);
        assertThatThrownBy(() -> figures.set(figure, PIECES - 1, 1)).isInstanceOf(IndexOutOfBoundsException.class);
    }
}
