package org.papermath.format;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.papermath.quantity.Amounts.inches;
import static org.papermath.quantity.Amounts.mm;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.papermath.envelope.EnvelopeFit;
import org.papermath.shape.MeasuredSize;
import org.papermath.testing.CheckValues;
import org.papermath.testing.CheckValues.Row;

class FormatsCheckValuesTest {
    static List<Row> iso() {
        return CheckValues.read("iso_sizes");
    }

    static List<Row> untrimmed() {
        return CheckValues.read("ra_sra_sizes");
    }

    static List<Row> tolerances() {
        return CheckValues.read("size_tolerances");
    }

    static List<Row> isoEnvelopes() {
        return CheckValues.read("envelopes_iso");
    }

    static List<Row> northAmerica() {
        return CheckValues.read("envelopes_na");
    }

    static List<Row> fits() {
        return CheckValues.read("envelope_fit");
    }

    static List<Row> sizesOf1854() {
        return CheckValues.read("traditional_sizes_1854");
    }

    private static void assertMillimetres(Format format, double width, double height) {
        assertThat(format.width().in("mm")).isEqualTo(width);
        assertThat(format.height().in("mm")).isEqualTo(height);
    }

    @ParameterizedTest
    @MethodSource("iso")
    void isoSize(Row row) {
        Format format = Formats.find("ISO " + row.text("size"));
        assertMillimetres(format, row.number("width_mm"), row.number("length_mm"));
        assertThat(format.use())
                .isEqualTo(row.text("size").startsWith("C") ? Format.Use.ENVELOPE_OUTSIDE : Format.Use.SHEET);
    }

    @ParameterizedTest
    @MethodSource("untrimmed")
    void untrimmedSize(Row row) {
        assertMillimetres(Formats.find("ISO " + row.text("size")), row.number("width_mm"), row.number("length_mm"));
    }

    @ParameterizedTest
    @MethodSource("tolerances")
    void tolerance(Row row) {
        double side = row.number("dimension_mm");
        assertThat((row.text("kind").equals("trimmed")
                                ? Formats.trimmedTolerance(mm(side))
                                : Formats.untrimmedTolerance(mm(side)))
                        .in("mm"))
                .isEqualTo(row.number("tolerance_mm"));
    }

    @Test
    void aToleranceIncludesItsBoundary() {
        assertThat(Formats.trimmedTolerance(mm(150)).in("mm")).isEqualTo(1.5);
        assertThat(Formats.trimmedTolerance(mm(150.1)).in("mm")).isEqualTo(2);
        assertThat(Formats.trimmedTolerance(mm(600)).in("mm")).isEqualTo(2);
        assertThat(Formats.untrimmedTolerance(mm(600)).in("mm")).isEqualTo(3);
        assertThat(Formats.untrimmedTolerance(mm(1000)).in("mm")).isEqualTo(4);
        assertThat(Formats.untrimmedTolerance(mm(1001)).in("mm")).isEqualTo(5);
    }

    @ParameterizedTest
    @MethodSource("isoEnvelopes")
    void isoEnvelope(Row row) {
        String name = row.text("envelope");
        Format format = Formats.find("ISO " + name + (name.startsWith("B") ? " envelope" : ""));
        assertThat(format.use()).isEqualTo(Format.Use.ENVELOPE_OUTSIDE);
        assertMillimetres(format, row.number("height_mm"), row.number("width_mm"));
    }

    private static String nameOf(String row) {
        return switch (row) {
            case "5 bar" -> "NA 5 bar envelope, 4 1/8 x 5 5/8 in";
            case "No 6 3/4" -> "NA No. 6 3/4 envelope";
            case "7 3/4 monarch" -> "NA No. 7 3/4 envelope";
            case "No 9" -> "NA No. 9 envelope";
            case "No 10" -> "NA No. 10 envelope";
            default -> "NA " + row + " envelope";
        };
    }

    @ParameterizedTest
    @MethodSource("northAmerica")
    void northAmericanEnvelope(Row row) {
        Format format = Formats.find(nameOf(row.text("envelope")));
        assertThat(format.width().in("in")).isEqualTo(row.number("height_in"));
        assertThat(format.height().in("in")).isEqualTo(row.number("width_in"));
        assertThat(format.width().in("mm")).isCloseTo(row.number("height_mm"), within(1e-12));
        assertThat(format.height().in("mm")).isCloseTo(row.number("width_mm"), within(1e-12));
        if (row.has("card_h_in")) {
            assertThat(Formats.all())
                    .filteredOn(f -> f.use() == Format.Use.CARD)
                    .anySatisfy(card -> {
                        assertThat(card.width().in("in")).isEqualTo(row.number("card_h_in"));
                        assertThat(card.height().in("in")).isEqualTo(row.number("card_w_in"));
                    });
        }
    }

    @ParameterizedTest
    @MethodSource("fits")
    void fit(Row row) {
        EnvelopeFit fit = EnvelopeFit.of(
                        MeasuredSize.of(mm(row.number("insert_h_mm")), mm(row.number("insert_w_mm"))), mm(0))
                .into(MeasuredSize.of(mm(row.number("env_h_mm")), mm(row.number("env_w_mm"))));
        assertThat(fit.fits()).isEqualTo(Boolean.parseBoolean(row.text("fits")));
        assertThat(fit.playAcross().in("mm")).isCloseTo(row.number("play_h_mm"), within(1e-9));
        assertThat(fit.playAlong().in("mm")).isCloseTo(row.number("play_w_mm"), within(1e-9));
        List<Format> taking =
                Formats.envelopesTaking(mm(row.number("insert_h_mm")), mm(row.number("insert_w_mm")), mm(0.001));
        boolean found = taking.stream()
                .anyMatch(f -> Math.abs(f.width().in("mm") - row.number("env_h_mm")) < 1e-9
                        && Math.abs(f.height().in("mm") - row.number("env_w_mm")) < 1e-9);
        assertThat(found).isEqualTo(fit.fits());
    }

    @ParameterizedTest
    @MethodSource("sizesOf1854")
    void handMadeWritingSizes(Row row) {
        Format format = Formats.find(row.text("name") + ", writing, 1854");
        assertThat(format.width().in("in")).isEqualTo(row.number("width_in"));
        assertThat(format.height().in("in")).isEqualTo(row.number("length_in"));
        assertThat(format.year()).hasValue(1854);
        assertThat(format.country()).contains("Britain");
        assertThat(format.purpose())
                .hasValueSatisfying(purpose -> assertThat(purpose).contains("writing"));
    }

    @Test
    void frenchTariff() {
        for (Row row : CheckValues.read("tariff_1741")) {
            assertThat(Formats.near(mm(row.number("width_mm")), mm(row.number("length_mm")), mm(0.11)))
                    .as(row.toString())
                    .anyMatch(f -> f.year().orElse(0) == 1741);
        }
    }

    @Test
    void misprintsAreNotFollowed() {
        assertMillimetres(Formats.find("ISO B10"), 31, 44);
        assertMillimetres(Formats.find("ISO A5"), 148, 210);
        assertMillimetres(Formats.find("ISO B4"), 250, 353);
        // Rounding the theoretical sides would give 595, 229.25 and 114.63 mm.
        assertMillimetres(Formats.find("ISO A1"), 594, 841);
        assertMillimetres(Formats.find("ISO C4"), 229, 324);
        assertMillimetres(Formats.find("ISO C6"), 114, 162);
        Format demy = Formats.find("demy, printing, 1901");
        assertThat(demy.area().in("in2")).isCloseTo(393.75, within(1e-9));
        Format medium = Formats.find("medium, British list");
        assertThat(medium.width().in("mm")).isCloseTo(469.9, within(1e-9));
        assertThat(medium.height().in("mm")).isCloseTo(584.2, within(1e-9));
        Format shaku = Formats.SHAKU_2_BY_3;
        assertThat(shaku.width().in("mm")).isCloseTo(606.060606, within(1e-6));
        assertThat(shaku.height().in("mm")).isCloseTo(909.090909, within(1e-6));
        assertThat(Formats.near(mm(636), mm(939), mm(0.5)))
                .extracting(Format::name)
                .containsExactly("2-3 mould, 636 x 939 mm");
        assertThat(inches(22.5).in("in") * 30.5).isEqualTo(686.25);
    }

    /** The media sizes of the Java platform, an independent table. */
    @ParameterizedTest
    @ValueSource(strings = {"ISO A", "ISO B", "ISO C", "JIS B"})
    void agreesWithThePlatform(String series) throws ReflectiveOperationException {
        int first = series.equals("ISO C") ? 3 : 0;
        int last = series.equals("ISO C") ? 6 : 10;
        for (int n = first; n <= last; n++) {
            float[] side = media(series.substring(0, 3), series.substring(4) + n);
            assertMillimetres(Formats.find(series + n), side[0], side[1]);
        }
    }

    @Test
    void otherSizesAgreeWithThePlatform() throws ReflectiveOperationException {
        assertMedia("NA", "LETTER", "NA letter");
        assertMedia("ISO", "DESIGNATED_LONG", "ISO DL");
        assertMedia("NA", "NA_NUMBER_10_ENVELOPE", "NA No. 10 envelope");
        assertMedia("NA", "NA_NUMBER_9_ENVELOPE", "NA No. 9 envelope");
        assertMedia("Other", "PERSONAL_ENVELOPE", "NA No. 6 3/4 envelope");
        assertMedia("Other", "INVOICE", "NA half letter");
        assertMedia("Other", "JAPANESE_POSTCARD", "Japanese postcard");
    }

    private static void assertMedia(String table, String field, String name) throws ReflectiveOperationException {
        float[] side = media(table, field);
        Format format = Formats.find(name);
        // The platform keeps whole micrometres.
        assertThat(format.width().in("mm")).isCloseTo(side[0], within(0.001));
        assertThat(format.height().in("mm")).isCloseTo(side[1], within(0.001));
    }

    /** Looked up by name: the module under test does not read the desktop module. */
    private static float[] media(String table, String field) throws ReflectiveOperationException {
        Class<?> sizes = Class.forName("javax.print.attribute.standard.MediaSize");
        Object size = Class.forName("javax.print.attribute.standard.MediaSize$" + table)
                .getField(field)
                .get(null);
        return (float[]) sizes.getMethod("getSize", int.class).invoke(size, 1000);
    }
}
