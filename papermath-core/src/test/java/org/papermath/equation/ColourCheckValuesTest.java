package org.papermath.equation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.papermath.testing.CheckValues;
import org.papermath.testing.CheckValues.Row;

class ColourCheckValuesTest {
    static List<Row> ciede2000() {
        return CheckValues.read("ciede2000");
    }

    @ParameterizedTest
    @MethodSource("ciede2000")
    void differencesAsPublishedBothWays(Row row) {
        double[] one = {row.number("L1"), row.number("a1"), row.number("b1")};
        double[] other = {row.number("L2"), row.number("a2"), row.number("b2")};
        assertThat(ColourDifference.of(one, other)).isCloseTo(row.number("dE00"), within(1e-4));
        assertThat(ColourDifference.of(other, one)).isCloseTo(row.number("dE00"), within(1e-4));
    }

    @Test
    void allThePublishedPairsAreThere() {
        assertThat(ciede2000()).hasSize(34);
    }

    /** Pairs on which wrong branches of the hue were found, as reported of open code. */
    @ParameterizedTest
    @CsvSource({
        "50, 2.49, -0.001, 50, -2.49, 0.0009, 7.1792",
        "76.3579, -74.6209, 72.3887, 58.4946, 93.7608, -44.7122, 104.3608"
    })
    void theBranchesOfTheHue(double l1, double a1, double b1, double l2, double a2, double b2, double expected) {
        assertThat(ColourDifference.of(new double[] {l1, a1, b1}, new double[] {l2, a2, b2}))
                .isCloseTo(expected, within(1e-4));
    }

    static List<Row> kubelkaMunk() {
        return CheckValues.read("kubelka_munk");
    }

    @ParameterizedTest
    @MethodSource("kubelkaMunk")
    void pigmentedPulpAndSurface(Row row) {
        String name = row.text("case");
        double found;
        if (name.startsWith("blend")) {
            double mean = (KubelkaMunk.ratio(0.85) + KubelkaMunk.ratio(0.30)) / 2;
            found = KubelkaMunk.reflectance(mean);
        } else {
            double input = row.number("input");
            double strength = KubelkaMunk.ratio(0.30) - KubelkaMunk.ratio(0.85);
            found = switch (name) {
                case "KS from R" -> KubelkaMunk.ratio(input);
                case "R pulp .85, 1 % gives .30, dose %" ->
                    KubelkaMunk.reflectance(KubelkaMunk.ratio(0.85) + input * strength);
                case "Saunderson .04 .6" -> KubelkaMunk.measured(input, 0.04, 0.6);
                case "Saunderson inverse .04 .6" -> KubelkaMunk.inner(input, 0.04, 0.6);
                default -> throw new AssertionError(name);
            };
        }
        assertThat(found).isCloseTo(row.number("output"), within(1e-6));
    }

    static List<Row> wet() {
        return CheckValues.read("wet_reflectance");
    }

    @ParameterizedTest
    @MethodSource("wet")
    void wetSheets(Row row) {
        double dry = row.number("dry_R");
        assertThat(WetColour.underFilm(1 - dry)).isCloseTo(row.number("wet_a_unchanged"), within(2e-6));
        assertThat(WetColour.wetInFilm(dry)).isCloseTo(row.number("wet_lekner_dorf"), within(2e-6));
        assertThat(WetColour.wetByScattering(dry, 0.35)).isCloseTo(row.number("wet_km_phi_0.35"), within(2e-6));
        assertThat(WetColour.wetByScattering(dry, 0.3)).isCloseTo(row.number("wet_km_phi_0.3"), within(2e-6));
        assertThat(WetColour.wetByScattering(dry, 0.5)).isCloseTo(row.number("wet_km_phi_0.5"), within(2e-6));
        assertThat(WetColour.dryByScattering(WetColour.wetByScattering(dry, 0.35), 0.35))
                .isCloseTo(dry, within(1e-12));
        assertThat(WetColour.part(WetColour.wetByScattering(dry, 0.35), dry)).isCloseTo(0.35, within(1e-12));
    }

    @Test
    void theSurfaceOfWater() {
        assertThat(WetColour.diffuse(1.333)).isCloseTo(0.066406, within(5e-7));
        assertThat(WetColour.diffuse(1.53)).isCloseTo(0.096164, within(5e-7));
    }

    /** A sheet over black and in a pile gives S and K, and those the sheet again (compare ISO 9416). */
    @ParameterizedTest
    @CsvSource({"0.85, 30, 0.040", "0.85, 15, 0.040", "0.5, 30, 0.08", "0.2, 50, 0.1", "0.05, 10, 0.02"})
    void aThinSheetAndBack(double thick, double scattering, double grammage) {
        double black = KubelkaMunk.over(thick, scattering, grammage, 0);
        assertThat(KubelkaMunk.scattering(black, thick, grammage))
                .isCloseTo(scattering, CheckValues.relative(scattering, 1e-7));
        assertThat(KubelkaMunk.over(thick, scattering, grammage, thick)).isCloseTo(thick, within(1e-12));
        assertThat(KubelkaMunk.over(thick, 1e4, 1, 0.9)).isCloseTo(thick, within(1e-12));
        double twice = KubelkaMunk.over(thick, scattering, 2 * grammage, 0.3);
        double one = KubelkaMunk.over(thick, scattering, grammage, KubelkaMunk.over(thick, scattering, grammage, 0.3));
        assertThat(twice).isCloseTo(one, within(1e-12));
    }

    /** S 30 m²/kg, 40 g/m², pile 0.85: 0.538 over black, and opacity 63 %; S 15: 44 %. */
    @Test
    void anUnsizedThinSheet() {
        assertThat(KubelkaMunk.over(0.85, 30, 0.04, 0)).isCloseTo(0.538, within(5e-4));
        assertThat(KubelkaMunk.over(0.85, 30, 0.04, 0) / 0.85).isCloseTo(0.63, within(5e-3));
        assertThat(KubelkaMunk.over(0.85, 15, 0.04, 0) / 0.85).isCloseTo(0.44, within(5e-3));
    }

    @Test
    void aPerfectWhiteAbsorbsNothing() {
        assertThat(KubelkaMunk.ratio(1)).isZero();
        assertThat(KubelkaMunk.reflectance(0)).isEqualTo(1);
        assertThat(KubelkaMunk.over(1, 30, 0.04, 0)).isCloseTo(1.2 / 2.2, within(1e-12));
    }

    @ParameterizedTest
    @CsvSource({"0.9", "0.5", "0.1", "0.02"})
    void slopesAreThoseOfTheLaws(double reflectance) {
        double ratio = KubelkaMunk.ratio(reflectance);
        double step = 1e-6 * ratio;
        double slope = (KubelkaMunk.reflectance(ratio + step) - KubelkaMunk.reflectance(ratio - step)) / (2 * step);
        assertThat(KubelkaMunk.slope(ratio)).isCloseTo(slope, CheckValues.relative(slope, 1e-6));
        assertThat(KubelkaMunk.ratioSlope(reflectance)).isCloseTo(1 / slope, CheckValues.relative(1 / slope, 1e-6));
    }
}
