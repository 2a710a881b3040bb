package org.papermath.colour;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.papermath.equation.WetColour;
import org.papermath.evidence.Assumption;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Scope;
import org.papermath.testing.CheckValues;
import org.papermath.testing.CheckValues.Row;

/**
 * Soils that others judged dry and moist: the only published pairs at hand of something that darkens as it gets wet. Their greys are
 * told dry from moist as those of pulp would be.
 */
class MoistSoilsCheckValuesTest {
    private static final String TABLE = "moist_soils";
    private static final WetToDry PULP = WetToDry.from(Assumptions.standard());

    /**
     * Luminous reflectance of a Munsell value, over that of value 10.
     *
     * @source Newhall, Nickerson and Judd, Journal of the Optical Society of America 33, 1943; recalled, held by 19.77 % for
     *     value 5 of the printed tables
     */
    private static double reflectance(double value) {
        double v = value;
        double percent = v * (1.2219 + v * (-0.23111 + v * (0.23951 + v * (-0.021009 + v * 0.0008404))));
        return percent / 102.57;
    }

    private static Reflectance grey(double value) {
        double r = reflectance(value);
        return Reflectance.of(Wavebands.THREE, r, r, r);
    }

    private static double byScattering(Row row) {
        return PULP.dry(grey(row.number("moist")))
                .lab()
                .difference(grey(row.number("dry")).lab());
    }

    private static double byFilm(Row row) {
        double dry = WetColour.dryInFilm(reflectance(row.number("moist")));
        return Reflectance.of(Wavebands.THREE, dry, dry, dry)
                .lab()
                .difference(grey(row.number("dry")).lab());
    }

    private static double band(Row row) {
        return PULP.dry(grey(row.number("moist"))).nineInTen();
    }

    static List<Row> rows() {
        return CheckValues.read(TABLE);
    }

    @AfterAll
    static void rewrite() throws IOException {
        CheckValues.rewriteIfAsked(
                TABLE,
                row -> String.join(",", row.text("horizon"), row.text("dry"), row.text("moist"))
                        + String.format(
                                Locale.ROOT,
                                ",%.2f,%.2f,%.2f,%s",
                                byScattering(row),
                                byFilm(row),
                                band(row),
                                byScattering(row) <= band(row) ? "yes" : "no"));
    }

    @Test
    void theLightnessIsThatOfTheCharts() {
        assertThat(100 * 1.0257 * reflectance(5)).isCloseTo(19.77, within(0.01));
    }

    @ParameterizedTest
    @MethodSource("rows")
    void theDryGreyIsOffByWhatIsWritten(Row row) {
        assertThat(byScattering(row)).isCloseTo(row.number("scattering"), within(0.02));
        assertThat(byFilm(row)).isCloseTo(row.number("film"), within(0.02));
        assertThat(band(row)).isCloseTo(row.number("band"), within(0.02));
        assertThat(row.text("inside")).isEqualTo(byScattering(row) <= band(row) ? "yes" : "no");
    }

    /** What the pairs say of the part, each of them alone, against the band of the table. */
    @Test
    void moistSoilScattersAsMuchLessAsTheTableHasItOfPaper() {
        Assumption row = Assumptions.standard().get("colour.wet-scattering", Scope.GENERAL);
        assertThat(rows())
                .allSatisfy(one -> assertThat(
                                WetColour.part(reflectance(one.number("moist")), reflectance(one.number("dry"))))
                        .isBetween(row.lowSi(), row.highSi()));
    }

    @Test
    void theBandHolds() {
        long inside =
                rows().stream().filter(row -> byScattering(row) <= band(row)).count();
        // Of 27, nine in ten by chance are 21 and more.
        assertThat(inside).isGreaterThanOrEqualTo(21);
    }
}
