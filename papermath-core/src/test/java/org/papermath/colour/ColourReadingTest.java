package org.papermath.colour;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Scope;
import org.papermath.quantity.Refused;

class ColourReadingTest {
    private static final Assumptions SHIPPED = Assumptions.standard();
    private static final Lab FIRST = Lab.of(71.2, 9.8, 31.0);
    private static final Lab SECOND = Lab.of(71.6, 9.5, 30.6);
    private static final Lab THIRD = Lab.of(71.0, 9.9, 31.3);

    @Test
    void theMeanIsThatOfTheTristimulusValues() {
        ColourReading reading = ColourReading.of(SHIPPED, FIRST, SECOND, THIRD);
        double y = (FIRST.xyz().y() + SECOND.xyz().y() + THIRD.xyz().y()) / 3;
        assertThat(reading.xyz().y()).isCloseTo(y, within(1e-12));
        assertThat(reading.readings()).containsExactly(FIRST, SECOND, THIRD);
        assertThat(reading.side()).isEmpty();
        double squares = 0;
        for (int i = 0; i < 3; i++) {
            double off = reading.readings().get(i).difference(reading.lab());
            assertThat(reading.differences().get(i)).isCloseTo(off, within(1e-9));
            squares += off * off;
        }
        assertThat(reading.scatter()).isCloseTo(Math.sqrt(squares / 2), within(1e-9));
        assertThat(reading.uncertainty()).isCloseTo(reading.scatter() / Math.sqrt(3), within(1e-12));
        assertThat(reading.reflectance().lab().difference(reading.lab())).isLessThan(1e-6);
        assertThat(reading)
                .hasToString("L* 71.27 a* 9.73 b* 30.96 (D65, 2°), mean of 3 readings with a scatter of ΔE00 0.29");
    }

    @Test
    void readingsThatDoNotRepeatAreRefusedWithWhatToDo() {
        Lab stray = Lab.of(75, 8, 28);
        assertThatThrownBy(() -> ColourReading.of(SHIPPED, FIRST, SECOND, stray, THIRD))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("4 readings of one sheet scatter by ΔE00 ")
                .hasMessageContaining("number 3, L* 75 a* 8 b* 28 (D65, 2°), lies farthest off")
                .hasMessageContaining("same angle")
                .hasMessageContaining("same light")
                .hasMessageContaining("more readings")
                .satisfies(thrown ->
                        assertThat(((Refused) thrown).arguments().get("most")).isEqualTo(1.0));
        Assumptions mottled = Assumptions.standard().given("colour.repeatability", Scope.GENERAL, 4);
        assertThat(ColourReading.of(mottled, List.of(FIRST, SECOND, stray, THIRD))
                        .scatter())
                .isBetween(1.0, 4.0);
    }

    @Test
    void oneReadingAndTwoLightsAreRefused() {
        assertThatThrownBy(() -> ColourReading.of(SHIPPED, FIRST))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("at least 2 are needed to see whether they repeat");
        assertThatThrownBy(() -> ColourReading.of(SHIPPED, FIRST, new Lab(71, 9.8, 31, Illuminant.D50)))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("one light first");
    }

    @Test
    void bothSidesAreKept() {
        ColourReading felt = ColourReading.of(SHIPPED, FIRST, SECOND, THIRD).on(ColourReading.Side.FELT);
        ColourReading mould = ColourReading.of(SHIPPED, Lab.of(73.4, 8.9, 27.8), Lab.of(73.1, 9.1, 28.2))
                .on(ColourReading.Side.MOULD);
        TwoSidedColour sheet = TwoSidedColour.of(felt, mould);
        assertThat(sheet.feltSide()).isSameAs(felt);
        assertThat(sheet.mouldSide()).isSameAs(mould);
        assertThat(sheet.difference()).isEqualTo(mould.lab().difference(felt.lab()));
        assertThat(sheet.uncertainty()).isCloseTo(Math.hypot(felt.uncertainty(), mould.uncertainty()), within(1e-12));
        assertThat(sheet.difference()).isCloseTo(1.97, within(0.005));
        assertThat(sheet.isTold()).isTrue();
        assertThat(sheet.toString())
                .contains("mould side: L* ")
                .contains("felt side: L* ")
                .endsWith(" apart");
        TwoSidedColour alike =
                TwoSidedColour.of(felt, ColourReading.of(SHIPPED, SECOND, FIRST).on(ColourReading.Side.MOULD));
        assertThat(alike.isTold()).isFalse();
        assertThat(alike.toString()).endsWith("no more than the readings scatter");
    }

    @Test
    void sidesNotToldOrNotInOneLightAreRefused() {
        ColourReading felt = ColourReading.of(SHIPPED, FIRST, SECOND).on(ColourReading.Side.FELT);
        assertThatThrownBy(() -> TwoSidedColour.of(felt, felt))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("felt side and felt side given");
        assertThatThrownBy(() -> TwoSidedColour.of(ColourReading.of(SHIPPED, FIRST, SECOND), felt))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("a side not named and felt side given");
        ColourReading lamp = ColourReading.of(
                        SHIPPED, new Lab(71, 9.8, 31, Illuminant.A), new Lab(71.2, 9.8, 31, Illuminant.A))
                .on(ColourReading.Side.MOULD);
        assertThatThrownBy(() -> TwoSidedColour.of(felt, lamp))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("one light first");
    }

    /** The order of the readings says nothing, and readings that agree scatter by nothing. */
    @Property(tries = 200, seed = "2026")
    void orderSaysNothing(
            @ForAll @Size(min = 2, max = 8) List<@DoubleRange(min = -0.4, max = 0.4) Double> off,
            @ForAll @DoubleRange(min = 25, max = 90) double lightness,
            @ForAll @DoubleRange(min = -15, max = 30) double a) {
        List<Lab> readings = new ArrayList<>();
        off.forEach(one -> readings.add(Lab.of(lightness + one, a - one / 3, 10 + one / 2)));
        ColourReading reading = ColourReading.of(SHIPPED, readings);
        List<Lab> turned = new ArrayList<>(readings);
        Collections.reverse(turned);
        ColourReading again = ColourReading.of(SHIPPED, turned);
        assertThat(again.lab().difference(reading.lab())).isLessThan(1e-9);
        assertThat(again.scatter()).isCloseTo(reading.scatter(), within(1e-9));
        ColourReading same = ColourReading.of(SHIPPED, readings.get(0), readings.get(0));
        assertThat(same.lab().difference(readings.get(0))).isLessThan(1e-9);
        assertThat(same.scatter()).isLessThan(1e-6);
    }
}
