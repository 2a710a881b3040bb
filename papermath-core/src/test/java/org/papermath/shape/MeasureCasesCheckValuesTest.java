package org.papermath.shape;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.papermath.quantity.Amounts.cm;
import static org.papermath.quantity.Amounts.grams;
import static org.papermath.quantity.Amounts.inches;
import static org.papermath.quantity.Amounts.kilograms;
import static org.papermath.quantity.Amounts.micrometres;
import static org.papermath.quantity.Amounts.mils;
import static org.papermath.quantity.Amounts.mm;
import static org.papermath.testing.CheckValues.relative;

import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.DoubleSupplier;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.papermath.envelope.EnvelopeFit;
import org.papermath.equation.BeaterArithmetic;
import org.papermath.equation.CaliperLaw;
import org.papermath.equation.EnvelopeBlanks;
import org.papermath.equation.WaterProperties;
import org.papermath.evidence.Notice;
import org.papermath.format.Format;
import org.papermath.format.Formats;
import org.papermath.format.ReamBasis;
import org.papermath.format.Substance;
import org.papermath.mail.MailLimits;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.SheetPressure;
import org.papermath.quantity.Unclear;
import org.papermath.quantity.Units;
import org.papermath.testing.CheckValues;
import org.papermath.testing.CheckValues.Row;

/** Numbered cases of weights, reams, calipers, formats, envelopes and mail, and misprints that are not followed. */
class MeasureCasesCheckValuesTest {
    private static final LocalDate DAY = LocalDate.of(2026, 6, 12);
    private static final Map<String, DoubleSupplier> CASES = cases();
    private static final Map<String, DoubleSupplier> MISPRINTS = misprints();

    static List<Row> rows() {
        return CheckValues.read("measure_cases");
    }

    static List<Row> misprintRows() {
        return CheckValues.read("misprints");
    }

    private static double gsm(double pounds, ReamBasis basis) {
        return basis.pounds(pounds).in("g/m2");
    }

    private static double gsm(double pounds, double width, double length, int count) {
        return gsm(pounds, ReamBasis.of(inches(width), inches(length), count));
    }

    private static double gsmOf1854(String name, double pounds) {
        Format format = Formats.find(name + ", writing, 1854");
        return gsm(pounds, ReamBasis.of(format.width(), format.height(), 480));
    }

    private static Map<String, DoubleSupplier> cases() {
        Map<String, DoubleSupplier> of = new LinkedHashMap<>();
        Caliper printed = Caliper.of(micrometres(232), Caliper.HUNDRED_KILOPASCALS);
        Caliper leaf = Caliper.of(micrometres(86), Caliper.BOOK_BULK);
        of.put("C1", () -> gsm(1, 17, 22, 500));
        of.put("C2", () -> gsm(1, 20, 26, 500));
        of.put("C3", () -> gsm(1, 22.5, 28.5, 500));
        of.put("C4", () -> gsm(1, 25.5, 30.5, 500));
        of.put("C5", () -> gsm(1, 24, 36, 500));
        of.put("C6", () -> gsm(1, 25, 38, 500));
        of.put("C7", () -> gsm(1, 22, 30, 500));
        of.put("C8", () -> gsm(1, 22, 30, 480));
        of.put("C9", () -> gsm(1, ReamBasis.THOUSAND_SQUARE_FEET));
        of.put("C10", () -> gsm(20, ReamBasis.BOND));
        of.put("C11", () -> gsm(110, ReamBasis.INDEX));
        of.put("C12", () -> gsm(67, ReamBasis.BRISTOL));
        of.put("C13", () -> gsm(80, ReamBasis.COVER));
        of.put("C14", () -> gsm(100, ReamBasis.TEXT));
        of.put("C15", () -> ReamBasis.TEXT.poundsOf(Grammage.gsm(103.6)));
        of.put("C16", () -> gsm(140, ReamBasis.IMPERIAL));
        of.put("C16b", () -> gsm(140, ReamBasis.IMPERIAL.withCount(480)));
        of.put("C17", () -> gsm(300, ReamBasis.IMPERIAL));
        of.put("C18", () -> gsm(42, ReamBasis.THOUSAND_SQUARE_FEET));
        of.put("C19", () -> ReamBasis.IMPERIAL.withCount(480).equalSubstance(24, ReamBasis.IMPERIAL));
        of.put("C20", () -> ReamBasis.IMPERIAL.withCount(480).equalSubstance(24, ReamBasis.IMPERIAL.withCount(516)));
        of.put("C21", () -> ReamBasis.TAG.withCount(504).equalSubstance(1, ReamBasis.TAG.withCount(516)));
        of.put("C22", () -> ReamBasis.COVER.withCount(18 * 24 + 2 * 20).count());
        of.put("C23", () -> ReamBasis.COVER.withCount(21 * 24 + 24 / 2).count());
        of.put("C24", () -> gsmOf1854("imperial", 72));
        of.put("C25", () -> gsmOf1854("foolscap", 15));
        of.put("C26", () -> {
            Format eagle = Formats.find("Grand-aigle, France, 1741");
            return Substance.ofSheets(kilograms(131 * 0.489506), 500, eagle.width(), eagle.height())
                    .in("g/m2");
        });
        of.put("C27", () -> Substance.ofMomme(1).in("g/m2"));
        of.put("C28", () -> Substance.ofMomme(3, cm(60.6), cm(90.9)).in("g/m2"));
        of.put("C29", () -> Substance.ofMomme(5, cm(64), cm(94)).in("g/m2"));
        of.put(
                "C30",
                () -> Substance.sheetMass(Grammage.gsm(80), Formats.ISO_A4.width(), Formats.ISO_A4.height())
                        .in("g"));
        of.put("C31", () -> Formats.ISO_A5.area().in("mm2"));
        of.put("C32", () -> printed.density(Grammage.gsm(160)).in("g/cm3"));
        of.put("C32b", () -> printed.bulk(Grammage.gsm(160)).in("cm3/g"));
        of.put("C33", () -> leaf.ofPages(840).in("mm"));
        of.put("C33b", () -> leaf.ofPages(840).in("in"));
        of.put("C34", leaf::pagesPerInch);
        of.put("C35", () -> Kinds.LENGTH.of(10, "pt_type").in("um"));
        of.put("C35b", () -> mils(10).in("um"));
        of.put(
                "C36",
                () -> Caliper.of(mm(0.2), Caliper.FIFTY_KILOPASCALS)
                        .footForce(Kinds.AREA.of(200, "mm2"))
                        .in("N"));
        of.put("C37", () -> SheetPressure.psi(7.3).in("kPa"));
        of.put("C38", () -> Formats.NA_A7_ENVELOPE.width().in("mm"));
        of.put(
                "C38b",
                () -> fit(Formats.NA_A7_CARD, Formats.NA_A7_ENVELOPE)
                        .playAcross()
                        .in("mm"));
        of.put(
                "C39",
                () -> -fit(Formats.NA_A6_CARD, Formats.ISO_C6).playAcross().in("mm"));
        of.put("C40", () -> 1000 * Math.sqrt(2) * (0.295 - EnvelopeBlanks.leastSquare(0.140, 0.240)));
        of.put("C55", () -> Formats.NA_A7_ENVELOPE.aspect());
        of.put("C56", () -> {
            MailLimits.Failure failure = MailLimits.of("United States")
                    .check(inches(5.25), inches(7.25), inches(0.26), grams(20), DAY)
                    .failures("letter")
                    .get(0);
            return Kinds.LENGTH.read(failure.allowed()).in("mm");
        });
        of.put("C187", () -> 1000 * new CaliperLaw(0.019e-3).caliper(0.002, 300));
        return of;
    }

    private static EnvelopeFit fit(Format card, Format envelope) {
        return EnvelopeFit.of(MeasuredSize.of(card.width(), card.height()), mm(0))
                .into(MeasuredSize.of(envelope.width(), envelope.height()));
    }

    private static Map<String, DoubleSupplier> misprints() {
        Map<String, DoubleSupplier> of = new LinkedHashMap<>();
        of.put("E1", () -> WaterProperties.densityKell(20));
        of.put("E1b", () -> WaterProperties.densityKell(4));
        of.put("E2", () -> gsm(1, ReamBasis.THOUSAND_SQUARE_FEET));
        of.put("E3", () -> ReamBasis.TEXT.poundsOf(Grammage.gsm(1)));
        of.put("E4", () -> gsm(1, 1, 1, 500));
        of.put("E5", () -> squareInches(ReamBasis.BRISTOL));
        of.put("E5b", () -> gsm(67, ReamBasis.BRISTOL));
        of.put("E6", () -> ReamBasis.TAG.withCount(504).equalSubstance(1, ReamBasis.TAG.withCount(516)));
        of.put("E7", () -> Formats.find("demy, printing, 1901").area().in("in2"));
        of.put("E7b", () -> Outline.rectangle(inches(24), inches(39)).area().in("in2"));
        of.put("E8", () -> Formats.find("medium, British list").width().in("in"));
        of.put("E9", () -> Formats.find("ISO B10").height().in("mm"));
        of.put("E9b", () -> Formats.find("ISO A5").width().in("mm"));
        of.put("E9c", () -> Formats.find("ISO B4").height().in("mm"));
        of.put("E10", () -> Units.toSi(1, "kW.h/t") / Units.toSi(1, "kJ/kg"));
        of.put(
                "E10b",
                () -> BeaterArithmetic.specificEnergy(
                                Units.toSi(1, "hp"), Units.toSi(1, "d"), 2000 * Units.toSi(1, "lb"))
                        / Units.toSi(1, "kW.h/t"));
        of.put("E11", () -> Kinds.LENGTH.of(2.1, "shaku").in("cm"));
        of.put("E11b", () -> Formats.SHAKU_2_BY_3.width().in("cm"));
        of.put("E12", () -> ReamBasis.TEXT.width().in("in"));
        of.put("E12b", () -> ReamBasis.TEXT.length().in("in"));
        return of;
    }

    private static double squareInches(ReamBasis basis) {
        return basis.width().in("in") * basis.length().in("in");
    }

    @ParameterizedTest
    @MethodSource("rows")
    void numberedCase(Row row) {
        double expected = row.number("expected");
        double found = CASES.get(row.text("id")).getAsDouble();
        assertThat(found).as(row.text("case")).isCloseTo(expected, relative(expected, row.number("part")));
        if (row.has("printed")) {
            assertThat(found)
                    .as(row.text("case"))
                    .isCloseTo(row.number("printed"), within(row.number("printed-within") + 1e-12));
        }
    }

    @ParameterizedTest
    @MethodSource("misprintRows")
    void aMisprintIsNotFollowed(Row row) {
        double found = MISPRINTS.get(row.text("id")).getAsDouble();
        double right = row.number("right");
        double wrong = row.number("wrong");
        assertThat(found)
                .as(row.text("what"))
                .isCloseTo(right, relative(right, row.number("part")))
                .isNotCloseTo(wrong, relative(wrong, row.number("apart")));
    }

    @Test
    void everyCaseHasARow() {
        assertThat(rows()).extracting(row -> row.text("id")).containsExactlyInAnyOrderElementsOf(CASES.keySet());
        assertThat(misprintRows())
                .extracting(row -> row.text("id"))
                .containsExactlyInAnyOrderElementsOf(MISPRINTS.keySet());
    }

    /** Without country, count, system or use a name is asked about, and every candidate can be given as it stands. */
    @Test
    void aBareNameIsAskedAbout() {
        asks(() -> Kinds.MASS.read("3 ton"), "6000 lb", "3 t", "6720 lb");
        asks(() -> Kinds.FORCE.read("12 tons"), "12 tonf_us", "12 tf", "12 tonf_uk");
        asks(
                () -> Kinds.GRAMMAGE.read("80 lb"),
                "a ream of 500 sheets 20 x 26 in (cover)",
                "a ream of 500 sheets 25 x 38 in (text)",
                "a ream of 500 sheets 17 x 22 in (bond)");
        asks(
                () -> ReamBasis.ofUnknownCount(60, inches(19), inches(25)),
                "a ream of 472 sheets, mill ream",
                "a ream of 480 sheets, short ream",
                "a ream of 500 sheets, long ream",
                "a ream of 504 sheets, stationers' ream",
                "a ream of 516 sheets, printers' ream");
        asks(() -> Formats.find("A6"), "ISO A6", "NA A6 envelope", "NA A6 card");
        asks(() -> Formats.find("B5"), "ISO B5", "JIS B5", "ISO B5 envelope");
        asks(() -> Formats.find("demy"), "demy, writing, 1854", "demy, printing, 1901", "demy, British list");
    }

    private static void asks(org.assertj.core.api.ThrowableAssert.ThrowingCallable question, String... meanings) {
        assertThatThrownBy(question)
                .isInstanceOfSatisfying(
                        Unclear.class,
                        unclear -> assertThat(unclear.candidates())
                                .extracting(Unclear.Candidate::meaning)
                                .containsExactlyInAnyOrder(meanings));
    }

    /** Pounds of 480 and of 500 sheets are two units, each named in full, and add up as what they weigh. */
    @Test
    void reamsOfTwoCountsAreNotMixedInSilence() {
        ReamBasis old = ReamBasis.IMPERIAL.withCount(480);
        assertThat(old.pounds(72))
                .isNotEqualTo(ReamBasis.IMPERIAL.pounds(72))
                .hasToString("72 lb (imperial, 22 × 30 in, 480 sheets)");
        double sum = old.pounds(72).add(ReamBasis.IMPERIAL.pounds(72)).in("g/m2");
        assertThat(sum).isCloseTo(72 * (2.219285289 + 2.130513878), relative(sum, 1e-9));
        assertThat(ReamBasis.IMPERIAL.pounds(75).isEquivalentTo(old.pounds(72))).isTrue();
    }

    @Test
    void squareAndThickMail() {
        MailLimits.Verdict square = MailLimits.of("United States").check(inches(6), inches(6), mm(1), grams(20), DAY);
        assertThat(square.service()).contains("letter");
        assertThat(square.notices())
                .filteredOn(notice -> notice.code().equals("mail.aspect"))
                .singleElement()
                .extracting(Notice::text)
                .asString()
                .contains("non-machinable");
        MailLimits.Verdict thick = MailLimits.of("United Kingdom").check(mm(114), mm(162), mm(5.1), grams(20), DAY);
        assertThat(thick.failures("letter"))
                .singleElement()
                .hasToString("letter: thickness 5.1 mm is 0.1 mm over the limit of 5 mm");
        assertThat(thick.service()).contains("large letter");
    }
}
