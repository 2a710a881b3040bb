package org.papermath.format;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.papermath.quantity.Amounts.inches;
import static org.papermath.quantity.Amounts.kilograms;
import static org.papermath.quantity.Amounts.mm;
import static org.papermath.quantity.Amounts.percent;
import static org.papermath.testing.CheckValues.relative;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Amounts;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Moisture;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Unclear;
import org.papermath.testing.CheckValues;
import org.papermath.testing.CheckValues.Row;

class ReamCheckValuesTest {
    private static final Map<String, ReamBasis> NAMED = Map.of(
            "bond",
            ReamBasis.BOND,
            "cover",
            ReamBasis.COVER,
            "bristol",
            ReamBasis.BRISTOL,
            "index",
            ReamBasis.INDEX,
            "tag",
            ReamBasis.TAG,
            "book",
            ReamBasis.TEXT,
            "imperial",
            ReamBasis.IMPERIAL,
            "news-480",
            ReamBasis.TAG.withCount(480),
            "imperial-480",
            ReamBasis.IMPERIAL.withCount(480),
            "imperial-516",
            ReamBasis.IMPERIAL.withCount(516));

    static List<Row> factors() {
        return CheckValues.read("basis_weight_factors");
    }

    static List<Row> pairs() {
        return CheckValues.read("basis_weight_pairs");
    }

    static List<Row> changes() {
        return CheckValues.read("ream_weight_change");
    }

    static List<Row> substances() {
        return CheckValues.read("equal_substance");
    }

    static List<Row> sizesOf1854() {
        return CheckValues.read("traditional_sizes_1854");
    }

    static List<Row> tariff() {
        return CheckValues.read("tariff_1741");
    }

    static List<Row> japan() {
        return CheckValues.read("japan");
    }

    private static ReamBasis basis(Row row) {
        return ReamBasis.of(
                inches(row.number("width_in")), inches(row.number("length_in")), (int) row.number("sheets"));
    }

    private static double gsm(Amount<Grammage> grammage) {
        return grammage.in("g/m2");
    }

    @ParameterizedTest
    @MethodSource("factors")
    void factorOfAPound(Row row) {
        ReamBasis basis = basis(row);
        double expected = row.number("factor_g_per_m2_per_lb");
        double back = row.number("factor_lb_per_g_per_m2");
        assertThat(gsm(basis.pounds(1))).isCloseTo(expected, relative(expected, 1e-9));
        assertThat(basis.poundsOf(Grammage.gsm(1))).isCloseTo(back, relative(back, 1e-9));
        if (row.has("printed_g_per_m2_per_lb")) {
            assertThat(gsm(basis.pounds(1))).isCloseTo(row.number("printed_g_per_m2_per_lb"), within(0.0005));
        }
        ReamBasis named = NAMED.get(row.text("grade"));
        if (named != null) {
            assertThat(gsm(named.pounds(1))).isCloseTo(expected, relative(expected, 1e-9));
            assertThat(named.count()).isEqualTo((int) row.number("sheets"));
            assertThat(named.width().in("in")).isCloseTo(row.number("width_in"), within(1e-12));
            assertThat(named.length().in("in")).isCloseTo(row.number("length_in"), within(1e-12));
        }
    }

    @ParameterizedTest
    @MethodSource("pairs")
    void pairOfTheCharts(Row row) {
        double exact = row.number("exact_g_per_m2");
        double found = gsm(basis(row).pounds(row.number("lb")));
        assertThat(found).isCloseTo(exact, relative(exact, 1e-6));
        if (row.has("chart_g_per_m2")) {
            assertThat(found).isCloseTo(row.number("chart_g_per_m2"), relative(exact, 0.025));
        }
    }

    @ParameterizedTest
    @MethodSource("changes")
    void weightOfAnotherCount(Row row) {
        String[] counts = row.text("change").split("->");
        ReamBasis from = ReamBasis.IMPERIAL.withCount(Integer.parseInt(counts[0]));
        ReamBasis to = ReamBasis.IMPERIAL.withCount(Integer.parseInt(counts[1]));
        double ratio = from.equalSubstance(1, to);
        String[] fraction = row.text("fraction").substring(1).split("/");
        double sign = row.text("fraction").startsWith("-") ? -1 : 1;
        assertThat(ratio).isCloseTo(row.number("ratio"), relative(ratio, 1e-11));
        assertThat(ratio)
                .isCloseTo(
                        1 + sign * Double.parseDouble(fraction[0]) / Double.parseDouble(fraction[1]),
                        relative(ratio, 1e-14));
        if (row.has("printed")) {
            assertThat(ratio).isCloseTo(row.number("printed"), within(0.003));
        }
    }

    @ParameterizedTest
    @MethodSource("substances")
    void weightOfAnotherSize(Row row) {
        ReamBasis demy = ReamBasis.of(inches(17.5), inches(22.5), 480);
        ReamBasis other = ReamBasis.of(inches(1), inches(row.number("sheet_in2")), 480);
        double pounds = demy.equalSubstance(10, other);
        assertThat(pounds).isCloseTo(row.number("exact_lb"), within(1e-5));
        assertThat(pounds).isCloseTo(row.number("printed_lb"), within(0.6));
    }

    @ParameterizedTest
    @MethodSource("sizesOf1854")
    void handMadeWritingPapers(Row row) {
        ReamBasis basis = ReamBasis.of(inches(row.number("width_in")), inches(row.number("length_in")), 480);
        double expected = row.number("grammage_g_per_m2");
        assertThat(gsm(basis.pounds(row.number("ream_lb_480")))).isCloseTo(expected, relative(expected, 1e-6));
    }

    @ParameterizedTest
    @MethodSource("tariff")
    void tariffOf1741(Row row) {
        double livre = 0.489506;
        double width = row.number("width_pouce") * 27.07;
        double length = row.number("length_pouce") * 27.07;
        assertThat(width).isCloseTo(row.number("width_mm"), within(0.06));
        assertThat(length).isCloseTo(row.number("length_mm"), within(0.06));
        assertThat(gsm(Substance.ofSheets(kilograms(row.number("ream_min_livre") * livre), 500, mm(width), mm(length))))
                .isCloseTo(row.number("min_g_per_m2"), within(0.3));
        assertThat(gsm(Substance.ofSheets(kilograms(row.number("ream_max_livre") * livre), 500, mm(width), mm(length))))
                .isCloseTo(row.number("max_g_per_m2"), within(0.3));
    }

    @ParameterizedTest
    @MethodSource("japan")
    void weightNamesOfJapan(Row row) {
        double expected = row.number("grammage_g_per_m2");
        Amount<javax.measure.quantity.Length> width = Amounts.metres(row.number("width_m"));
        Amount<javax.measure.quantity.Length> length = Amounts.metres(row.number("length_m"));
        double mass = row.has("sheet_mass_g") ? row.number("sheet_mass_g") : expected;
        assertThat(gsm(Substance.ofSheets(Amounts.grams(mass), 1, width, length)))
                .isCloseTo(expected, relative(expected, 1e-6));
        assertThat(gsm(Substance.ofMomme(mass / 3.75, width, length))).isCloseTo(expected, relative(expected, 1e-6));
    }

    @Test
    void oneMommeIsExactlyOnTwoByThreeShaku() {
        assertThat(gsm(Substance.ofMomme(1))).isEqualTo(6.80625);
        assertThat(gsm(Substance.ofMomme(1, Kinds.LENGTH.of(2, "shaku"), Kinds.LENGTH.of(3, "shaku"))))
                .isCloseTo(6.80625, relative(6.80625, 1e-14));
        assertThat(Substance.momme(Substance.ofMomme(3))).isCloseTo(3, within(1e-14));
        // A mino-ban of 3 momme paper.
        assertThat(Substance.sheetMass(Substance.ofMomme(3), mm(273), mm(394)).in("g"))
                .isCloseTo(2.1963, within(1e-4));
    }

    @Test
    void namedCounts() {
        assertThat(CheckValues.read("reams"))
                .extracting(row -> (int) row.number("count_sheets"))
                .contains(472, 480, 500, 504, 516);
        assertThat(18 * 24 + 2 * 20)
                .isEqualTo((int) CheckValues.row("reams", "name", "hand-made mill ream good or retree")
                        .number("count_sheets"));
        double perSheet = gsm(ReamBasis.IMPERIAL.withCount(472).pounds(72)) * 472;
        for (int count : new int[] {480, 500, 504, 516, 960, 4800}) {
            assertThat(gsm(ReamBasis.IMPERIAL.withCount(count).pounds(72)) * count)
                    .isCloseTo(perSheet, relative(perSheet, 1e-14));
        }
    }

    @Test
    void areaBases() {
        assertThat(gsm(ReamBasis.THOUSAND_SQUARE_FEET.pounds(1))).isCloseTo(4.882427636, within(1e-9));
        assertThat(gsm(ReamBasis.THOUSAND_SQUARE_FEET.pounds(42))).isCloseTo(205.062, within(5e-4));
        double tag = gsm(ReamBasis.TAG.pounds(1));
        assertThat(gsm(ReamBasis.THREE_THOUSAND_SQUARE_FEET.pounds(1))).isCloseTo(tag, relative(tag, 1e-14));
    }

    /** Figures that stand misprinted in published tables never come out. */
    @Test
    void misprintsAreNotFollowed() {
        assertThat(gsm(ReamBasis.THOUSAND_SQUARE_FEET.pounds(1))).isNotCloseTo(4.831, within(0.05));
        assertThat(ReamBasis.TEXT.poundsOf(Grammage.gsm(1)))
                .isNotCloseTo(0.675, within(0.0005))
                .isCloseTo(0.67560881, within(1e-8));
        ReamBasis squareInch = ReamBasis.of(inches(1), inches(1), 500);
        assertThat(gsm(squareInch.pounds(1)))
                .isCloseTo(1406.139159, within(1e-6))
                .isNotCloseTo(1406.5, within(0.3));
        assertThat(ReamBasis.BRISTOL.width().in("in")
                        * ReamBasis.BRISTOL.length().in("in"))
                .isCloseTo(641.25, within(1e-9));
        assertThat(ReamBasis.TAG.withCount(504).equalSubstance(1, ReamBasis.TAG.withCount(516)))
                .isCloseTo(43.0 / 42, within(1e-14))
                .isNotCloseTo(1.022, within(0.001));
        assertThat(ReamBasis.TEXT.width().in("in")).isEqualTo(25);
        assertThat(ReamBasis.TEXT.length().in("in")).isEqualTo(38);
    }

    @Test
    void constantsOfTheCounts() {
        Map.of(480, 1464.728291, 500, 1406.139159, 516, 1362.537945, 1000, 703.069580)
                .forEach((count, expected) -> assertThat(
                                gsm(ReamBasis.of(inches(1), inches(1), count).pounds(1)))
                        .isCloseTo(expected, within(1e-6)));
    }

    @Test
    void whichReamFits() {
        List<ReamBasis.Match> matches = ReamBasis.fitting(80, Grammage.gsm(217), percent(1));
        assertThat(matches).isNotEmpty();
        assertThat(matches.get(0).basis()).isEqualTo(ReamBasis.COVER);
        assertThat(matches.get(0).deviation()).isCloseTo(216.3291 / 217 - 1, within(1e-6));
        assertThat(matches).extracting(match -> Math.abs(match.deviation())).isSorted();
        // 140 lb imperial called 300 g/m2 means 500 sheets, not 480.
        assertThat(ReamBasis.fitting(140, Grammage.gsm(300), percent(1)))
                .extracting(ReamBasis.Match::basis)
                .contains(ReamBasis.IMPERIAL)
                .doesNotContain(ReamBasis.IMPERIAL.withCount(480));
        assertThat(ReamBasis.fitting(80, Grammage.gsm(5), percent(1))).isEmpty();
        assertThat(ReamBasis.fitting(
                        60,
                        Grammage.gsm(177.6),
                        percent(0.1),
                        List.of(ReamBasis.of(inches(19), inches(25), 480), ReamBasis.of(inches(19), inches(25), 500))))
                .singleElement()
                .satisfies(match -> assertThat(match.basis().count()).isEqualTo(500));
    }

    @Test
    void weighedSheets() {
        // Ten sheets of 148 by 205 mm that weigh 62.5 g.
        assertThat(gsm(Substance.ofSheets(Amounts.grams(62.5), 10, mm(148), mm(205))))
                .isCloseTo(205.998682, within(1e-6));
        assertThat(gsm(Substance.ofPiece(Amounts.grams(4.5), Amounts.squareMetres(0.03))))
                .isCloseTo(150, within(1e-12));
        // 12.4 g at 8.9 % moisture is 12.134 g at 6.9 %.
        assertThat(gsm(Substance.atMoisture(Grammage.gsm(12.4), Moisture.percent(8.9), Moisture.percent(6.9))))
                .isCloseTo(12.1336, within(1e-4));
        assertThatThrownBy(() -> Substance.ofSheets(Amounts.grams(5), 0, mm(10), mm(10)))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("1 or more");
        assertThatThrownBy(() -> Substance.ofMomme(Double.NaN)).isInstanceOf(Refused.class);
    }

    @Test
    void aReamWithoutCountIsAskedAbout() {
        assertThatThrownBy(() -> ReamBasis.ofUnknownCount(60, inches(19), inches(25)))
                .isInstanceOfSatisfying(
                        Unclear.class,
                        unclear -> assertThat(unclear.candidates())
                                .hasSize(5)
                                .extracting(Unclear.Candidate::gives)
                                .contains("185 g/m²", "177.6 g/m²"));
    }
}
