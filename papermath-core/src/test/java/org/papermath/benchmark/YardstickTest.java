package org.papermath.benchmark;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.papermath.engine.Figures;
import org.papermath.engine.FillingVat;
import org.papermath.evidence.Assumption;

/** The forecast of one order that was written by hand, beside the engine's at the values a band is made of. */
class YardstickTest {
    private final YardstickJob job = new YardstickJob();

    @Test
    void everyFigureIsTheSameAtEveryPoint() {
        assertThat(job.points).hasSizeGreaterThan(150);
        assertThat(job.differences()).isEmpty();
    }

    @Test
    void noFigureIsLeftOut() {
        assertThat(Yardstick.BATCH).containsExactlyInAnyOrderElementsOf(Figures.ofBatches());
        assertThat(Yardstick.PIECE).containsExactlyInAnyOrderElementsOf(Figures.ofPieces());
        assertThat(job.engine.figures().size()).isEqualTo(Yardstick.SIZE);
    }

    @Test
    void everyAssumptionIsOneTheEngineReads() {
        assertThat(job.engine.known().rows().stream().map(Assumption::key)).containsAll(Yardstick.ASSUMPTIONS);
    }

    /** Of an order in which nothing happens at the vat it would say little. */
    @Test
    void theOrderGivesTheVatSomethingToDo() {
        List<FillingVat.Setting> dipping = IntStream.range(0, job.engine.pieces())
                .mapToObj(job.settings::vat)
                .toList();
        List<FillingVat.Charge> charges = dipping.stream()
                .flatMap(one -> Stream.concat(Stream.of(one.start()), Stream.of(one.recharges())))
                .toList();
        assertThat(dipping).allMatch(FillingVat.Setting::dipped);
        assertThat(dipping.get(0).turn()).as("not formed as listed").isPositive();
        assertThat(dipping).anyMatch(one -> one.dips() > 1).anyMatch(one -> one.letDown() > 0);
        assertThat(charges)
                .anyMatch(one -> one.pail() > 0)
                .anyMatch(one -> one.strained() > 0)
                .anyMatch(one -> one.stock() > 0 && one.level())
                .anyMatch(one -> one.stock() > 0 && !one.level());
    }
}
