package org.papermath.quantity;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.MathContext;
import java.util.List;
import javax.measure.Quantity;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Scale;
import net.jqwik.api.constraints.StringLength;

class WrittenAmountPropertyTest {
    record Entry(Kind<?> kind, String code) {}

    @Provide
    Arbitrary<Entry> entries() {
        List<Entry> all = Kinds.all().stream()
                .flatMap(kind -> kind.codes().stream().map(code -> new Entry(kind, code)))
                .toList();
        return Arbitraries.of(all);
    }

    /** The double beside which the exact fraction lies nearest, by comparing both neighbours without rounding. */
    private static void nearest(double value, BigInteger over, BigInteger under) {
        BigDecimal exact = new BigDecimal(value);
        BigDecimal off = distance(exact, over, under);
        assertThat(off).isLessThanOrEqualTo(distance(new BigDecimal(Math.nextUp(value)), over, under));
        assertThat(off).isLessThanOrEqualTo(distance(new BigDecimal(Math.nextDown(value)), over, under));
    }

    /** |value - over / under|, times under. */
    private static BigDecimal distance(BigDecimal value, BigInteger over, BigInteger under) {
        return value.multiply(new BigDecimal(under))
                .subtract(new BigDecimal(over))
                .abs();
    }

    @Property(tries = 3000, seed = "2026")
    void fractionsAreExactUntilTheLastStep(
            @ForAll @IntRange(min = 1, max = 9999) int whole,
            @ForAll @IntRange(min = 1, max = 9999) int over,
            @ForAll @IntRange(min = 2, max = 9999) int under) {
        int proper = over % under;
        BigInteger all = BigInteger.valueOf((long) whole * under + proper);
        double read =
                Kinds.LENGTH.read(whole + " " + proper + "/" + under + " mm").value();
        nearest(read, all, BigInteger.valueOf(under));
        assertThat(Kinds.LENGTH.read(whole + "-" + proper + "/" + under + " mm").value())
                .isEqualTo(read);
    }

    @Property(tries = 2000, seed = "2026")
    void partsOfAMeasureAddUpExactly(
            @ForAll @IntRange(min = 0, max = 5000) int feet,
            @ForAll @IntRange(min = 0, max = 11) int inches,
            @ForAll @IntRange(min = 0, max = 63) int parts) {
        double read =
                Kinds.LENGTH.read(feet + "' " + inches + " " + parts + "/64\"").value();
        assertThat(read).isEqualTo(12.0 * feet + inches + parts / 64.0);
        assertThat(Kinds.MASS.read(feet + " lb " + inches + " oz").value()).isEqualTo(16.0 * feet + inches);
    }

    /** To the digits that are shown; a label is read as the code is. */
    @Property(tries = 3000, seed = "2026")
    void whatIsShownToPeopleIsReadBack(
            @ForAll("entries") Entry entry,
            @ForAll @Scale(17) @DoubleRange(min = 1, max = 10) double mantissa,
            @ForAll @IntRange(min = -8, max = 4) int exponent) {
        shown(entry.kind(), entry.code(), mantissa * Math.pow(10, exponent));
    }

    private static <Q extends Quantity<Q>> void shown(Kind<Q> kind, String code, double value) {
        double four = new BigDecimal(value).round(new MathContext(4)).doubleValue();
        if (!kind.holds(kind.toSi(four, kind.unit(code))) || !kind.holds(kind.toSi(value, kind.unit(code)))) {
            return;
        }
        Amount<Q> amount = kind.of(value, code);
        assertThat(kind.read(amount.toString())).hasToString(amount.toString());
    }

    @Property(tries = 3000, seed = "2026")
    void whatADocumentTakesIsReadTheSame(
            @ForAll("entries") Entry entry, @ForAll @Scale(17) @DoubleRange(min = 1e-6, max = 0.49) double si) {
        Amount<?> amount = entry.kind().ofSi(si, entry.code());
        String text = Units.print(amount);
        assertThat(entry.kind().read("  " + text)).isEqualTo(amount);
        assertThat(Units.read(entry.kind(), "  " + text)).isEqualTo(amount);
    }

    /** Whatever is typed, there is an amount or an answer for a person. */
    @Property(tries = 5000, seed = "2026")
    void anyTextIsReadRefusedOrAskedBack(
            @ForAll("kinds") Kind<?> kind, @ForAll("texts") @StringLength(max = 20) String text) {
        try {
            assertThat(kind.read(text).value()).isFinite();
        } catch (PapermathException answer) {
            assertThat(answer.code()).isNotBlank();
            assertThat(answer.getMessage()).startsWith(kind.name());
        }
    }

    @Provide
    Arbitrary<Kind<?>> kinds() {
        return Arbitraries.of(Kinds.all());
    }

    @Provide
    Arbitrary<String> texts() {
        return Arbitraries.strings()
                .withChars("0123456789 ./-,'\"½¼⅔ftinlbozhmsandperg%e+")
                .ofMaxLength(20);
    }
}
