package org.papermath.drying;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.papermath.quantity.Amounts.kilograms;
import static org.papermath.quantity.Amounts.mm;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.IntFunction;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;
import org.papermath.quantity.VolumeFlow;

/** Every way to make a dryer, and what each refuses. */
class DryerTest {
    static List<Function<String, Dryer>> named() {
        return List.of(
                name -> Dryer.fanStack(name, VolumeFlow.cubicMetresPerHour(400), 9),
                name -> Dryer.boards(name, 9),
                name -> Dryer.loft(name, 4, 9),
                name -> Dryer.blotters(name, 9),
                name -> new Dryer.FanStack(name, VolumeFlow.cubicMetresPerHour(400), 9),
                name -> new Dryer.Boards(name, 9, Optional.empty()),
                name -> new Dryer.Loft(name, 4, 9),
                name -> new Dryer.Blotters(name, 9, Optional.empty()));
    }

    static List<IntFunction<Dryer>> holding() {
        return List.of(
                count -> Dryer.fanStack("d", VolumeFlow.cubicMetresPerHour(400), count),
                count -> Dryer.boards("d", count),
                count -> Dryer.loft("d", 4, count),
                count -> Dryer.blotters("d", count),
                count -> new Dryer.FanStack("d", VolumeFlow.cubicMetresPerHour(400), count),
                count -> new Dryer.Boards("d", count, Optional.empty()),
                count -> new Dryer.Loft("d", 4, count),
                count -> new Dryer.Blotters("d", count, Optional.empty()));
    }

    @ParameterizedTest
    @MethodSource("named")
    void nameIsWantedAndCanBeShown(Function<String, Dryer> make) {
        assertThat(make.apply(" by the window ").name()).isEqualTo("by the window");
        assertThat(catchThrowableOfType(Refused.class, () -> make.apply(" ")).code())
                .isEqualTo("equipment.unnamed");
        assertThat(catchThrowableOfType(Refused.class, () -> make.apply("a\u202Eb"))
                        .code())
                .isEqualTo("text.character");
        assertThat(catchThrowableOfType(Refused.class, () -> make.apply("l".repeat(201)))
                        .code())
                .isEqualTo("text.long");
        assertThat(catchThrowableOfType(Refused.class, () -> make.apply("a@b")).code())
                .isEqualTo("scope.name");
    }

    @ParameterizedTest
    @MethodSource("holding")
    void capacityHasBounds(IntFunction<Dryer> make) {
        assertThat(make.apply(1).capacity()).isEqualTo(1);
        assertThat(make.apply(100_000).capacity()).isEqualTo(100_000);
        for (int bad : new int[] {0, -1, 100_001, Integer.MAX_VALUE}) {
            assertThat(catchThrowableOfType(Refused.class, () -> make.apply(bad)))
                    .hasMessage("sheets at once: " + bad + " given; must be a whole number from 1 to 100000."
                            + " Check the count.");
        }
    }

    @Test
    void spurHasBounds() {
        assertThat(((Dryer.Loft) Dryer.loft("d", 100, 9)).sheetsInSpur()).isEqualTo(100);
        assertThat(Dryer.loft("d", 1, 9).restraint()).isEqualTo("hung");
        assertThat(Dryer.loft("d", 2, 9).restraint()).isEqualTo("spur");
        for (int bad : new int[] {0, 101}) {
            assertThat(catchThrowableOfType(Refused.class, () -> Dryer.loft("d", bad, 9)))
                    .hasMessageStartingWith(
                            "sheets in a spur: " + bad + " given; must be a whole number from 1 to 100");
            assertThat(catchThrowableOfType(Refused.class, () -> new Dryer.Loft("d", bad, 9))
                            .code())
                    .isEqualTo("count.range");
        }
    }

    @Test
    void flowHasBounds() {
        for (double bad : new double[] {1_000_001, 1e7}) {
            assertThat(catchThrowableOfType(
                            Refused.class, () -> Dryer.fanStack("d", Kinds.VOLUME_FLOW.of(bad, "m3/h"), 9)))
                    .hasMessageStartingWith("free-air flow of the fan: ");
            assertThat(catchThrowableOfType(
                            Refused.class, () -> new Dryer.FanStack("d", Kinds.VOLUME_FLOW.of(bad, "m3/h"), 9)))
                    .hasMessageStartingWith("free-air flow of the fan: ");
        }
        Dryer.FanStack stack = Dryer.fanStack("d", Kinds.VOLUME_FLOW.of(1, "m3/h"), 9);
        assertThat(stack.freeAirFlow().in("m3/h")).isEqualTo(1);
        assertThat(stack.hasFan()).isTrue();
        assertThat(stack).hasToString("d (fan stack, 1 m³/h on the label, 9 sheets)");
        assertThat(Dryer.stack("d", 9).hasFan()).isFalse();
        assertThat(Dryer.stack("d", 9)).isEqualTo(Dryer.fanStack("d", Kinds.VOLUME_FLOW.of(0, "m3/h"), 9));
    }

    @Test
    void weightHasBoundsAndIsSaidAfterwards() {
        Dryer.FanStack stack = Dryer.stack("d", 9);
        assertThat(stack.weight()).isEmpty();
        assertThat(stack.under(Kinds.MASS.of(20, "kg")))
                .hasToString("d (stack without a fan, 9 sheets, under 20 kg)")
                .isNotEqualTo(stack);
        for (double bad : new double[] {0, 0.09, 10_001}) {
            assertThat(catchThrowableOfType(Refused.class, () -> stack.under(Kinds.MASS.of(bad, "kg"))))
                    .hasMessageStartingWith("weight on the stack: ");
        }
    }

    @Test
    void sheetsLieSideBySideInALayer() {
        Dryer.FanStack stack = Dryer.stack("d", 9).inLayers(mm(460), mm(640));
        Dryer.Layer layer = stack.layer().orElseThrow();
        // 4 × 4 of 105 × 148 mm with 10 mm between them take 450 × 622 mm.
        assertThat(layer.sheets(mm(105), mm(148), mm(10))).isEqualTo(16);
        assertThat(layer.sheets(mm(148), mm(105), mm(10))).isEqualTo(16);
        assertThat(layer.sheets(mm(460), mm(640), mm(10))).isEqualTo(1);
        assertThat(layer.sheets(mm(470), mm(640), mm(10))).isZero();
        assertThat(stack).hasToString("d (stack without a fan, 9 layers of 460 mm × 640 mm)");
        assertThat(stack.under(kilograms(20)).layer()).isEqualTo(stack.layer());
        assertThat(Dryer.boards("d", 9).inLayers(mm(460), mm(640)))
                .hasToString("d (boards, 9 layers of 460 mm × 640 mm)");
        assertThat(Dryer.blotters("d", 9).inLayers(mm(460), mm(640)).layer()).contains(layer);
        assertThat(Dryer.loft("d", 4, 9).layer()).isEmpty();
        assertThatExceptionOfType(Refused.class)
                .isThrownBy(() -> Dryer.boards("d", 9).inLayers(mm(460), mm(4)))
                .withMessageStartingWith(
                        "length of a layer of the dryer: 4 mm given; it must be from 5 mm to 10000 mm.");
    }
}
