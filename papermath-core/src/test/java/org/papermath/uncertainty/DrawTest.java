package org.papermath.uncertainty;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.papermath.engine.Known;
import org.papermath.evidence.Assumption;
import org.papermath.evidence.Assumptions;

/** A draw of an assumption lies below its 5 % point once in twenty times, and above its 95 % point as often. */
class DrawTest {
    @ParameterizedTest
    @ValueSource(
            strings = {
                "drainage.resistance-factor",
                "vat.lift-factor",
                "vat.retention",
                "sorption.temperature-slope",
                "size.pick-up",
                "beating.drainability-limit",
                "labour.sort"
            })
    void theEndsAreFivePerCentPoints(String id) {
        Assumption row = Assumptions.standard().all().stream()
                .filter(one -> one.id().equals(id))
                .findFirst()
                .orElseThrow();
        Draw draw = new Draw(new Known.Drawn(row, null, 0, 0, new int[0], List.of()));
        SplittableRandom random = new SplittableRandom(42);
        double[] drawn = new double[100_000];
        Arrays.setAll(drawn, i -> draw.value(new double[] {draw.next(random)}, random));
        double n = drawn.length;
        double low = Math.min(row.lowSi(), row.highSi());
        double high = Math.max(row.lowSi(), row.highSi());
        assertThat(Arrays.stream(drawn).filter(x -> x < low).count() / n).isCloseTo(0.05, within(0.003));
        assertThat(Arrays.stream(drawn).filter(x -> x > high).count() / n).isCloseTo(0.05, within(0.003));
        assertThat(Arrays.stream(drawn).filter(x -> x < row.likelySi()).count() / n)
                .isCloseTo(0.5, within(0.006));
    }
}
