package org.papermath.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import java.util.List;
import java.util.Set;
import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Temperature;
import org.junit.jupiter.api.Test;
import tech.units.indriya.ComparableQuantity;
import tech.units.indriya.quantity.Quantities;

class AmountEqualityTest {
    private static final List<Number> NUMBERS = List.of(
            0,
            1,
            1.0,
            1.5,
            -3.25,
            0.1,
            1.0 / 3,
            1e-9,
            1e9,
            12345.678,
            new BigDecimal("1.5"),
            new BigDecimal("0.1"),
            7L,
            2.5f);

    @Test
    void equalityIsSymmetricWithQuantitiesOfTheReferenceImplementation() {
        int equal = 0;
        for (Kind<?> kind : Kinds.all()) {
            for (String code : kind.codes()) {
                for (Number number : NUMBERS) {
                    for (String other : kind.codes()) {
                        equal += pair(kind, code, other, number) ? 1 : 0;
                    }
                }
            }
        }
        assertThat(equal).as("pairs that are equal").isGreaterThan(500);
    }

    private static <Q extends Quantity<Q>> boolean pair(Kind<Q> kind, String code, String other, Number number) {
        double value = number.doubleValue();
        Amount<Q> amount;
        try {
            amount = kind.of(value, code);
        } catch (Refused refused) {
            assertThat(refused.code()).isEqualTo("quantity.range");
            return false;
        }
        Quantity<Q> foreign = Quantities.getQuantity(number, kind.unit(other));
        boolean one = amount.equals(foreign);
        assertThat(foreign.equals(amount)).as("%s and %s", amount, foreign).isEqualTo(one);
        if (one) {
            assertThat(foreign.hashCode()).as("hash of %s", amount).isEqualTo(amount.hashCode());
            assertThat(amount.isEquivalentTo(foreign)).isTrue();
        }
        return one;
    }

    @Test
    void equalityLooksAtUnitAndNumber() {
        assertThat(Amounts.mm(210)).isEqualTo(Amounts.mm(210)).hasSameHashCodeAs(Amounts.mm(210));
        assertThat(Amounts.metres(1)).isNotEqualTo(Amounts.cm(100));
        assertThat(Amounts.mm(210)).isNotEqualTo(Amounts.mm(210.1));
        assertThat((Object) Amounts.mm(210)).isNotEqualTo("210 mm").isNotEqualTo(null);
        assertThat(Set.of(Amounts.mm(210), Amounts.cm(21))).hasSize(2);
        Quantity<Length> relative = Quantities.getQuantity(210.5, Units.MILLIMETRE, Quantity.Scale.RELATIVE);
        assertThat(Amounts.mm(210.5).equals(relative)).isFalse();
        assertThat(relative.equals(Amounts.mm(210.5))).isFalse();
    }

    @Test
    void equalAmountsCalculateAlikeHoweverTheyWereMade() {
        for (Kind<?> kind : Kinds.all()) {
            for (String code : kind.codes()) {
                for (double si : new double[] {0.1, 0.3, 1.0 / 3, 0.07, 0.499999999}) {
                    Amount<?> made = kind.ofSi(si, code);
                    Amount<?> again = kind.of(made.value(), code);
                    assertThat(again).isEqualTo(made);
                    assertThat(again.si()).isEqualTo(made.si());
                }
            }
        }
    }

    @Test
    void anAmountAddsAForeignQuantity() {
        Amount<Mass> sum = Amounts.grams(500).add(Quantities.getQuantity(1.5, tech.units.indriya.unit.Units.KILOGRAM));
        assertThat(sum).isEqualTo(Amounts.grams(2000));
        Amount<Mass> rest =
                Amounts.kilograms(2).subtract(Quantities.getQuantity(250, tech.units.indriya.unit.Units.GRAM));
        assertThat(rest.in("g")).isCloseTo(1750, within(1e-9));
    }

    @Test
    void aForeignQuantityAddsAnAmount() {
        ComparableQuantity<Mass> kilogram = Quantities.getQuantity(1.5, tech.units.indriya.unit.Units.KILOGRAM);
        Quantity<Mass> sum = kilogram.add(Amounts.grams(500));
        assertThat(sum.getUnit()).isEqualTo(tech.units.indriya.unit.Units.KILOGRAM);
        assertThat(sum.getValue().doubleValue()).isCloseTo(2, within(1e-12));
        Quantity<Mass> rest = kilogram.subtract(Amounts.pounds(1));
        assertThat(rest.getValue().doubleValue()).isCloseTo(1.04640763, within(1e-12));
        assertThat(kilogram.isGreaterThan(Amounts.pounds(3))).isTrue();
        assertThat(kilogram.compareTo(Amounts.kilograms(2))).isNegative();
        assertThat(kilogram.isEquivalentTo(Amounts.grams(1500))).isTrue();
    }

    @Test
    void conversionsMix() {
        Quantity<Length> foot = Quantities.getQuantity(1.5, Kinds.LENGTH.unit("ft"));
        assertThat(foot.to(Units.INCH).getValue().doubleValue()).isCloseTo(18, within(1e-12));
        assertThat(Kinds.LENGTH.check(foot, "length").in("in")).isCloseTo(18, within(1e-12));
        Unit<Length> kilometre = javax.measure.MetricPrefix.KILO(tech.units.indriya.unit.Units.METRE);
        assertThat(Amounts.metres(1500).to(kilometre).getValue()).isCloseTo(1.5, within(1e-15));
        assertThat(Amounts.metres(1500).to(kilometre).si()).isCloseTo(1500, within(1e-12));
        Quantity<Temperature> warm = Quantities.getQuantity(68.0, Kinds.TEMPERATURE.unit("degF"));
        assertThat(warm.to(tech.units.indriya.unit.Units.CELSIUS).getValue().doubleValue())
                .isCloseTo(20, within(1e-10));
        assertThat(Amounts.fahrenheit(68)
                        .to(tech.units.indriya.unit.Units.CELSIUS)
                        .value())
                .isCloseTo(20, within(1e-12));
    }

    @Test
    void productsMix() {
        Quantity<?> one =
                Grammage.gsm(80).multiply(Quantities.getQuantity(0.5, tech.units.indriya.unit.Units.SQUARE_METRE));
        Quantity<?> two = Quantities.getQuantity(0.5, tech.units.indriya.unit.Units.SQUARE_METRE)
                .multiply(Grammage.gsm(80));
        assertThat(Kinds.MASS.si(one.asType(Mass.class), "mass")).isCloseTo(0.04, within(1e-15));
        assertThat(Kinds.MASS.si(two.asType(Mass.class), "mass")).isCloseTo(0.04, within(1e-15));
        Quantity<?> ratio = Quantities.getQuantity(3.0, tech.units.indriya.unit.Units.KILOGRAM)
                .divide(Amounts.kilograms(4));
        assertThat(ratio.getValue().doubleValue()).isEqualTo(0.75);
        assertThat(Kinds.NUMBER.si(ratio.asType(javax.measure.quantity.Dimensionless.class), "ratio"))
                .isEqualTo(0.75);
    }
}
