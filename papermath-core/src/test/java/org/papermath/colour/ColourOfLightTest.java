package org.papermath.colour;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import com.github.ajalt.colormath.Color;
import com.github.ajalt.colormath.calculate.DifferenceKt;
import com.github.ajalt.colormath.model.LAB;
import com.github.ajalt.colormath.model.LABColorSpaces;
import com.github.ajalt.colormath.model.RGB;
import com.github.ajalt.colormath.model.XYZ;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.apache.commons.imaging.color.ColorCieLab;
import org.apache.commons.imaging.color.ColorConversions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.papermath.quantity.Refused;
import org.papermath.testing.CheckValues;
import org.papermath.testing.CheckValues.Row;

class ColourOfLightTest {
    private static double[] grey(double value, int count) {
        double[] grey = new double[count];
        Arrays.fill(grey, value);
        return grey;
    }

    static List<Row> published() {
        return CheckValues.read("reflectance_to_colour");
    }

    @ParameterizedTest
    @MethodSource("published")
    void coloursOfPublishedReflectances(Row row) {
        double[] values = Arrays.stream(row.text("values").split(" ", -1))
                .mapToDouble(Double::parseDouble)
                .toArray();
        Reflectance reflectance = Reflectance.of((int) row.number("from"), (int) row.number("step"), values);
        Illuminant light = Illuminant.valueOf(row.text("illuminant"));
        if (row.text("kind").equals("XYZ")) {
            Xyz found = reflectance.xyz(light);
            assertThat(found.x()).isCloseTo(row.number("v1"), within(row.number("tolerance")));
            assertThat(found.y()).isCloseTo(row.number("v2"), within(row.number("tolerance")));
            assertThat(found.z()).isCloseTo(row.number("v3"), within(row.number("tolerance")));
        } else {
            Lab printed = new Lab(row.number("v1"), row.number("v2"), row.number("v3"), light);
            assertThat(reflectance.lab(light).difference(printed)).isLessThan(row.number("tolerance"));
        }
    }

    @ParameterizedTest
    @EnumSource
    void greyIsGreyInEveryLight(Wavebands bands) {
        for (Illuminant light : Illuminant.values()) {
            Lab lab = Reflectance.of(bands, grey(0.5, bands.count())).lab(light);
            assertThat(lab.l()).isCloseTo(76.0693, within(1e-4));
            assertThat(lab.chroma()).isLessThan(1e-9);
            assertThat(Reflectance.of(bands, grey(1, bands.count())).lab(light).l())
                    .isCloseTo(100, within(1e-9));
        }
    }

    /** Fewer bands tell the colour of a smooth reflectance about as well. */
    @ParameterizedTest
    @MethodSource("published")
    void fewerBandsTellTheSameColour(Row row) {
        double[] values = Arrays.stream(row.text("values").split(" ", -1))
                .mapToDouble(Double::parseDouble)
                .toArray();
        Reflectance whole = Reflectance.of((int) row.number("from"), (int) row.number("step"), values);
        Lab seen = whole.lab();
        assertThat(whole.in(Wavebands.SIXTEEN).lab().difference(seen)).isLessThan(0.25);
        assertThat(whole.in(Wavebands.THREE).lab().difference(seen)).isLessThan(1e-6);
    }

    static Stream<Lab> grid() {
        return IntStream.range(0, 7 * 7 * 7)
                .mapToObj(i -> Srgb.of8Bit(i % 7 * 42, i / 7 % 7 * 42, i / 49 * 42)
                        .xyz()
                        .lab());
    }

    @ParameterizedTest
    @MethodSource("grid")
    void conversionsAsTwoOtherLibrariesHaveThem(Lab lab) {
        Xyz xyz = lab.xyz();
        XYZ theirs = LABColorSpaces.INSTANCE
                .getLAB65()
                .invoke(lab.l(), lab.a(), lab.b(), 1)
                .toXYZ();
        assertThat(xyz.x() / 100).isCloseTo(theirs.getX(), within(3e-4));
        assertThat(xyz.y() / 100).isCloseTo(theirs.getY(), within(3e-4));
        assertThat(xyz.z() / 100).isCloseTo(theirs.getZ(), within(3e-4));
        ColorCieLab other = ColorConversions.convertXyzToCieLab(xyz.x(), xyz.y(), xyz.z());
        assertThat(other.l).isCloseTo(lab.l(), within(1e-3));
        assertThat(other.a).isCloseTo(lab.a(), within(1e-2));
        assertThat(other.b).isCloseTo(lab.b(), within(1e-2));
        RGB screen = LABColorSpaces.INSTANCE
                .getLAB65()
                .invoke(lab.l(), lab.a(), lab.b(), 1)
                .toSRGB();
        assertThat(xyz.srgb().red()).isCloseTo(screen.getR(), within(2e-3));
        assertThat(xyz.srgb().green()).isCloseTo(screen.getG(), within(2e-3));
        assertThat(xyz.srgb().blue()).isCloseTo(screen.getB(), within(2e-3));
    }

    /** Its CIEDE2000 leaves the published pairs beside greys by up to 1, so the pairs themselves are the check of that. */
    @ParameterizedTest
    @MethodSource("grid")
    void distancesAsAnotherLibraryHasThem(Lab lab) {
        Lab near = Lab.of(Math.min(100, lab.l() + 3), lab.a() - 4, lab.b() + 5);
        Color one = LABColorSpaces.INSTANCE.getLAB65().invoke(lab.l(), lab.a(), lab.b(), 1);
        LAB other = LABColorSpaces.INSTANCE.getLAB65().invoke(near.l(), near.a(), near.b(), 1);
        assertThat(lab.difference1976(near)).isCloseTo(DifferenceKt.differenceCIE76(one, other), within(2e-3));
    }

    /** The matrix from D65 to D50 as pages on colour print it; recalled, not looked up. */
    @Test
    void adaptationAsPrinted() {
        double[][] printed = {
            {1.0478112, 0.0228866, -0.0501270}, {0.0295424, 0.9904844, -0.0170491}, {-0.0092345, 0.0150436, 0.7521316},
        };
        double[][] found = Matrix.adaptation(Illuminant.D65, Illuminant.D50).cells();
        for (int i = 0; i < 3; i++) {
            assertThat(found[i]).containsExactly(printed[i], within(2e-4));
        }
    }

    @ParameterizedTest
    @MethodSource("grid")
    void backAndForth(Lab lab) {
        assertThat(lab.xyz().lab().difference1976(lab)).isLessThan(1e-9);
        assertThat(lab.xyz()
                        .adaptedTo(Illuminant.A)
                        .adaptedTo(Illuminant.D65)
                        .lab()
                        .difference1976(lab))
                .isLessThan(1e-6);
        assertThat(lab.xyz().srgb().xyz().lab().difference1976(lab)).isLessThan(1e-5);
        assertThat(Srgb.parse(lab.xyz().srgb().hex()))
                .isEqualTo(Srgb.parse(lab.xyz().srgb().toString()));
    }

    @Test
    void threeBandsOfAColourAreThatColour() {
        Lab ochre = Lab.of(62, 14, 48);
        assertThat(Reflectance.ofColour(ochre.xyz()).lab().difference(ochre)).isLessThan(1e-9);
        Lab inPrintRoom = new Lab(62, 14, 48, Illuminant.D50);
        assertThat(Reflectance.ofColour(inPrintRoom.xyz()).lab(Illuminant.D50).difference(inPrintRoom))
                .isLessThan(1e-9);
    }

    @Test
    void whatCannotBeIsRefusedInWords() {
        assertThatThrownBy(() -> Reflectance.of(400, 20, grey(0.5, 10)))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("31 values from 400 by 10");
        assertThatThrownBy(() -> Reflectance.of(Wavebands.THREE, 0.2, 0.3, 85))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("write shares, not per cent");
        assertThatThrownBy(() -> Reflectance.of(Wavebands.THREE, 0.2, 0.3))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("2 values for 3 bands");
        assertThatThrownBy(() -> Reflectance.of(Wavebands.THREE, 0.2, 0.3, 0.5).in(Wavebands.SIXTEEN))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("cannot be made");
        assertThatThrownBy(() -> Lab.of(50, 0, 0).difference(new Lab(50, 0, 0, Illuminant.A)))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("one light first");
        assertThatThrownBy(() -> Lab.of(Double.NaN, 0, 0))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("not a number");
        assertThatThrownBy(() -> Lab.of(50, -80, -60).xyz().srgb())
                .isInstanceOf(Refused.class)
                .hasMessageContaining("a screen cannot show");
        assertThatThrownBy(() -> Srgb.parse("ochre"))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("#c8a05a");
        assertThatThrownBy(() -> Reflectance.ofColour(Lab.of(90, -128, 0).xyz()))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("spectrophotometer");
    }
}
