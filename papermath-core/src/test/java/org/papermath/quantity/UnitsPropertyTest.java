package org.papermath.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.quantity.Temperature;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.CharRange;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Scale;
import net.jqwik.api.constraints.StringLength;

class UnitsPropertyTest {
    /** A code of a kind. */
    record Entry(Kind<?> kind, String code) {}

    @Provide
    Arbitrary<Entry> entries() {
        List<Entry> all = Kinds.all().stream()
                .flatMap(kind -> kind.codes().stream().map(code -> new Entry(kind, code)))
                .toList();
        return Arbitraries.of(all);
    }

    @Property(tries = 3000, seed = "2026")
    void whatIsPrintedIsReadBackToTheSameBits(
            @ForAll("entries") Entry entry,
            @ForAll @Scale(17) @DoubleRange(min = 1, max = 10) double mantissa,
            @ForAll @IntRange(min = -8, max = 4) int exponent) {
        sameBits(entry.kind(), entry.code(), mantissa * Math.pow(10, exponent));
    }

    private static <Q extends Quantity<Q>> void sameBits(Kind<Q> kind, String code, double value) {
        if (!inRange(kind, code, value)) {
            return;
        }
        Amount<Q> amount = kind.of(value, code);
        Amount<Q> again = kind.read(Units.print(amount));
        assertThat(again).isEqualTo(amount);
        assertThat(Double.doubleToLongBits(again.value())).isEqualTo(Double.doubleToLongBits(amount.value()));
        assertThat(Double.doubleToLongBits(again.si())).isEqualTo(Double.doubleToLongBits(amount.si()));
        assertThat(again.kind()).isSameAs(kind);
    }

    @Property(tries = 3000, seed = "2026")
    void amountsMadeFromSiPrintAndReadBackToTheSameSiBits(
            @ForAll("entries") Entry entry, @ForAll @Scale(17) @DoubleRange(min = 1e-6, max = 0.49) double si) {
        Amount<?> amount = entry.kind().ofSi(si, entry.code());
        Amount<?> again = entry.kind().read(Units.print(amount));
        assertThat(Double.doubleToLongBits(again.si())).isEqualTo(Double.doubleToLongBits(amount.si()));
        assertThat(again).isEqualTo(amount);
    }

    @Property(tries = 3000, seed = "2026")
    void throughSiAndBackCostsNoMoreThanTheLastDigits(
            @ForAll("entries") Entry entry,
            @ForAll @Scale(17) @DoubleRange(min = 1, max = 10) double mantissa,
            @ForAll @IntRange(min = -8, max = 4) int exponent) {
        roundTrip(entry.kind(), entry.code(), mantissa * Math.pow(10, exponent));
    }

    private static <Q extends Quantity<Q>> void roundTrip(Kind<Q> kind, String code, double value) {
        if (!inRange(kind, code, value)) {
            return;
        }
        double back = kind.ofSi(kind.of(value, code).si(), code).value();
        if (Temperature.class.equals(kind.type())) {
            assertThat(back).isCloseTo(value, within(2e-12));
        } else {
            assertThat(Math.abs(back - value) / value).isLessThanOrEqualTo(1e-14);
        }
    }

    @Property(tries = 2000, seed = "2026")
    void factorsAgreeWithTheConvertersOfTheUnits(
            @ForAll("entries") Entry entry, @ForAll @Scale(17) @DoubleRange(min = 1e-3, max = 1e3) double value) {
        agrees(entry.kind(), entry.code(), value);
    }

    private static <Q extends Quantity<Q>> void agrees(Kind<Q> kind, String code, double value) {
        Unit<Q> unit = kind.unit(code);
        double ours = kind.toSi(value, unit);
        double theirs = unit.getConverterTo(kind.siUnit()).convert(value);
        assertThat(ours).isCloseTo(theirs, within(Math.abs(theirs) * 1e-14));
        assertThat(Units.toSi(value, code)).isEqualTo(ours);
    }

    @Property(tries = 2000, seed = "2026")
    void aNumberIsPrintedShortAndReadsBack(@ForAll long bits) {
        double value = Double.longBitsToDouble(bits);
        if (!Double.isFinite(value)) {
            return;
        }
        String text = Units.number(value);
        assertThat(Double.parseDouble(text)).isEqualTo(value);
        assertThat(text).matches("-?[0-9]+(\\.[0-9]+)?(e-?[0-9]+)?");
    }

    @Property(tries = 2000, seed = "2026")
    void aDecimalOfTheStudioIsPrintedAsItIsWritten(
            @ForAll @IntRange(min = -999_999_999, max = 999_999_999) int digits,
            @ForAll @IntRange(min = 0, max = 6) int places) {
        java.math.BigDecimal written = java.math.BigDecimal.valueOf(digits, places);
        String plain =
                written.signum() == 0 ? "0" : written.stripTrailingZeros().toPlainString();
        assertThat(Units.number(written.doubleValue())).isEqualTo(plain);
    }

    @Property(tries = 3000, seed = "2026")
    void digitsWithAPointAmongThemAreReadAsTheLanguageReadsThem(
            @ForAll @CharRange(from = '0', to = '9') @StringLength(min = 1, max = 17) String digits,
            @ForAll @IntRange(min = 0, max = 17) int point) {
        String number = point > digits.length() ? digits : digits.substring(0, point) + "." + digits.substring(point);
        assertThat(Kinds.NUMBER.read(number + " %").value()).isEqualTo(Double.parseDouble(number));
        assertThat(Kinds.NUMBER.read(" +" + number + "  % ").value()).isEqualTo(Double.parseDouble(number));
    }

    @Property(tries = 1000, seed = "2026")
    void aConvertedAmountIsEquivalentAndComparesAsEqualWithinRounding(
            @ForAll("entries") Entry entry, @ForAll @Scale(17) @DoubleRange(min = 1e-6, max = 0.49) double si) {
        equivalent(entry.kind(), entry.code(), si);
    }

    private static <Q extends Quantity<Q>> void equivalent(Kind<Q> kind, String code, double si) {
        Amount<Q> amount = kind.ofSi(si);
        assertThat(amount.to(code).isEquivalentTo(amount)).isTrue();
        assertThat(amount.isEquivalentTo(amount.to(code))).isTrue();
        assertThat(amount.to(kind.unit(code))).isEqualTo(amount.to(code));
    }

    private static boolean inRange(Kind<?> kind, String code, double value) {
        try {
            kind.of(value, code);
            return true;
        } catch (Refused refused) {
            assertThat(refused.code()).isEqualTo("quantity.range");
            return false;
        }
    }
}
