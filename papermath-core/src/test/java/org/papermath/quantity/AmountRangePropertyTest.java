package org.papermath.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.util.Optional;
import javax.measure.quantity.Length;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;

class AmountRangePropertyTest {
    private static AmountRange<Length> range(double a, double b) {
        return AmountRange.of(Amounts.mm(Math.min(a, b)), Amounts.mm(Math.max(a, b)));
    }

    @Property(tries = 2000, seed = "2026")
    void rangesNeverCross(
            @ForAll @DoubleRange(min = 0, max = 1000) double a,
            @ForAll @DoubleRange(min = 0, max = 1000) double b,
            @ForAll @DoubleRange(min = 0, max = 1000) double c,
            @ForAll @DoubleRange(min = 0, max = 1000) double d,
            @ForAll @DoubleRange(min = 0, max = 1000) double probe) {
        AmountRange<Length> one = range(a, b);
        AmountRange<Length> other = range(c, d);
        Optional<AmountRange<Length>> common = one.overlap(other);
        assertThat(other.overlap(one)).isEqualTo(common);
        common.ifPresent(both -> {
            assertThat(both.least().si()).isLessThanOrEqualTo(both.most().si());
            assertThat(one.contains(both.least()) && one.contains(both.most())).isTrue();
            assertThat(other.contains(both.least()) && other.contains(both.most()))
                    .isTrue();
        });
        boolean inBoth = one.contains(Amounts.mm(probe)) && other.contains(Amounts.mm(probe));
        assertThat(common.map(both -> both.contains(Amounts.mm(probe))).orElse(false))
                .isEqualTo(inBoth);
        assertThat(common.isEmpty()).isEqualTo(one.isBelow(other) || other.isBelow(one));
        if (a != b) {
            assertThatThrownBy(() -> AmountRange.of(Amounts.mm(Math.max(a, b)), Amounts.mm(Math.min(a, b))))
                    .isInstanceOf(Refused.class);
        }
    }

    @Property(tries = 1000, seed = "2026")
    void whatIsShownIsReadBack(
            @ForAll @DoubleRange(min = 0, max = 1000) double a, @ForAll @DoubleRange(min = 0, max = 1000) double b) {
        AmountRange<Length> one = range(a, b);
        assertThat(AmountRange.read(Kinds.LENGTH, one.toString())).hasToString(one.toString());
    }

    @Example
    void rangesAreReadAsPeopleWriteThem() {
        AmountRange<Length> five = AmountRange.of(Amounts.inches(5), Amounts.inches(6.5));
        for (String text : new String[] {"5-6.5 in", "5 to 6½ in", "5–6 1/2 in", "5 in to 6.5 in", "5 in - 6½\""}) {
            assertThat(AmountRange.read(Kinds.LENGTH, text)).as(text).isEqualTo(five);
        }
        assertThat(AmountRange.read(Kinds.LENGTH, "5-1/2 in")).isEqualTo(AmountRange.of(Amounts.inches(5.5)));
        assertThat(AmountRange.read(Kinds.RATE, "40-60 per hour")).hasToString("40 1/h to 60 1/h");
        assertThat(AmountRange.read(Kinds.TEMPERATURE, "-5 Cel to 5 Cel")).hasToString("-5 °C to 5 °C");
        assertThat(catchThrowableOfType(Refused.class, () -> AmountRange.read(Kinds.TIME, "6-5 min"))
                        .code())
                .isEqualTo("range.crossed");
        assertThat(catchThrowableOfType(Unclear.class, () -> AmountRange.read(Kinds.VOLUME, "1-2 qt"))
                        .code())
                .isEqualTo("unit.unclear");
    }
}
