package org.papermath.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.entry;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.quantity.Area;
import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Temperature;
import org.junit.jupiter.api.Test;

class AmountTest {
    @Test
    void theFactoriesOfEveryDaySayWhatTheyMean() {
        assertThat(Amounts.mm(1).si()).isEqualTo(1e-3);
        assertThat(Amounts.cm(1).si()).isEqualTo(1e-2);
        assertThat(Amounts.metres(1).si()).isEqualTo(1);
        assertThat(Amounts.micrometres(1).si()).isEqualTo(1e-6);
        assertThat(Amounts.inches(1).si()).isEqualTo(0.0254);
        assertThat(Amounts.feet(1).si()).isCloseTo(0.3048, within(1e-16));
        assertThat(Amounts.mils(1).si()).isCloseTo(25.4e-6, within(1e-20));
        assertThat(Amounts.squareMetres(2).si()).isEqualTo(2);
        assertThat(Amounts.squareInches(1).si()).isCloseTo(6.4516e-4, within(1e-18));
        assertThat(Amounts.grams(1).si()).isEqualTo(1e-3);
        assertThat(Amounts.kilograms(1).si()).isEqualTo(1);
        assertThat(Amounts.pounds(1).si()).isEqualTo(0.45359237);
        assertThat(Amounts.ounces(16).si()).isEqualTo(0.45359237);
        assertThat(Amounts.litres(1).si()).isEqualTo(1e-3);
        assertThat(Amounts.millilitres(1).si()).isEqualTo(1e-6);
        assertThat(Amounts.cubicMetres(1).si()).isEqualTo(1);
        assertThat(Amounts.usGallons(1).si()).isCloseTo(3.785411784e-3, within(1e-17));
        assertThat(Amounts.usFluidOunces(128).si()).isCloseTo(3.785411784e-3, within(1e-17));
        assertThat(Amounts.hours(1).si()).isEqualTo(3600);
        assertThat(Amounts.minutes(1).si()).isEqualTo(60);
        assertThat(Amounts.seconds(1).si()).isEqualTo(1);
        assertThat(Amounts.days(1).si()).isEqualTo(86400);
        assertThat(Amounts.celsius(20).si()).isEqualTo(293.15);
        assertThat(Amounts.fahrenheit(68).si()).isCloseTo(293.15, within(1e-12));
        assertThat(Amounts.pascals(1).si()).isEqualTo(1);
        assertThat(Amounts.kilopascals(101.325).si()).isEqualTo(101325);
        assertThat(Amounts.kilonewtons(1).si()).isEqualTo(1000);
        assertThat(Amounts.shortTons(1).si()).isCloseTo(8896.443230521, within(1e-8));
        assertThat(Amounts.metricTons(1).si()).isCloseTo(9806.65, within(1e-11));
        assertThat(Amounts.longTons(1).si()).isCloseTo(9964.01641818352, within(1e-8));
        assertThat(Amounts.watts(750).si()).isEqualTo(750);
        assertThat(Amounts.percent(8).si()).isEqualTo(0.08);
    }

    @Test
    void anAmountTellsItsNumberInAnyUnitOfItsKind() {
        Amount<Length> width = Amounts.mm(210);
        assertThat(width.value()).isEqualTo(210);
        assertThat(width.getValue()).isEqualTo(210.0);
        assertThat(width.in("cm")).isCloseTo(21, within(1e-14));
        assertThat(width.in(Units.INCH)).isCloseTo(8.26771653543307, within(1e-13));
        assertThat(width.to("mm")).isSameAs(width);
        assertThat(width.to(width.getUnit())).isSameAs(width);
        assertThat(width.to("in").to("mm").isEquivalentTo(width)).isTrue();
        assertThat(width.kind()).isSameAs(Kinds.LENGTH);
        assertThat(width.getScale()).isEqualTo(Quantity.Scale.ABSOLUTE);
    }

    @Test
    void aUnitOfAnotherDimensionIsRefused() {
        @SuppressWarnings("unchecked")
        Unit<Length> kilogram = (Unit<Length>) (Unit<?>) tech.units.indriya.unit.Units.KILOGRAM;
        Refused refused =
                catchThrowableOfType(Refused.class, () -> Amounts.mm(210).to(kilogram));
        assertThat(refused.code()).isEqualTo("unit.dimension");
        assertThat(refused)
                .hasMessage("length: the unit kg does not measure length. Accepted units: mm, cm, m, um, km, in,"
                        + " ft, yd, mil, pt_paper, pt_type, shaku.");
        assertThatThrownBy(() -> Amounts.mm(210).to("g")).isInstanceOf(Refused.class);
    }

    @Test
    void sumsKeepTheUnitOfTheFirst() {
        assertThat(Amounts.grams(1200).add(Amounts.kilograms(0.5))).isEqualTo(Amounts.grams(1700));
        assertThat(Amounts.kilograms(1).subtract(Amounts.grams(250))).isEqualTo(Amounts.kilograms(0.75));
        assertThat(Amounts.grams(0.1).add(Amounts.grams(0.2)).value()).isEqualTo(0.1 + 0.2);
        assertThat(Amounts.grams(5).negate().value()).isEqualTo(-5);
        assertThat(Amounts.grams(0).negate()).isEqualTo(Amounts.grams(0)).hasToString("0 g");
    }

    @Test
    void multiplesDivideExactlyAndRefuseZero() {
        assertThat(Amounts.grams(49).divide(49)).isEqualTo(Amounts.grams(1));
        assertThat(Amounts.grams(80).multiply(1.5)).isEqualTo(Amounts.grams(120));
        Refused byZero =
                catchThrowableOfType(Refused.class, () -> Amounts.grams(80).divide(0));
        assertThat(byZero.code()).isEqualTo("quantity.divided-by-zero");
        assertThat(byZero.arguments()).containsExactly(entry("quantity", "mass"), entry("given", "80 g"));
        assertThat(byZero).hasMessage("mass: 80 g cannot be divided by 0.");
        assertThatThrownBy(() -> Amounts.grams(80).multiply(Double.NaN)).isInstanceOf(Refused.class);
        assertThatThrownBy(() -> Amounts.grams(80).divide(Amounts.mm(0))).isInstanceOf(Refused.class);
        assertThatThrownBy(() -> Amounts.grams(0).inverse()).isInstanceOf(Refused.class);
    }

    @Test
    void productsCarryTheProductOfTheUnits() {
        Quantity<Area> area = Amounts.metres(2).multiply(Amounts.metres(3)).asType(Area.class);
        assertThat(Kinds.AREA.si(area, "area")).isEqualTo(6);
        Quantity<Area> sheet = Amounts.mm(210).multiply(Amounts.mm(297)).asType(Area.class);
        assertThat(Kinds.AREA.si(sheet, "area")).isCloseTo(0.06237, within(1e-16));
        Quantity<Mass> mass =
                Grammage.gsm(80).multiply(Amounts.squareMetres(0.5)).asType(Mass.class);
        assertThat(Kinds.MASS.si(mass, "mass")).isCloseTo(0.04, within(1e-16));
        Quantity<?> count = Amounts.metres(2).divide(Amounts.cm(50));
        assertThat(count.getValue().doubleValue()).isCloseTo(0.04, within(1e-16));
        Quantity<?> perSecond = Amounts.seconds(4).inverse();
        assertThat(perSecond.getValue().doubleValue()).isEqualTo(0.25);
    }

    @Test
    void aTemperatureStandsInProductsAsKelvins() {
        Quantity<?> product = Amounts.celsius(20).divide(Amounts.seconds(10));
        assertThat(product.getValue().doubleValue()).isCloseTo(29.315, within(1e-13));
        assertThat(product.getUnit()).hasToString("K/s");
        assertThat(Amounts.celsius(20).multiply(2).in("K")).isCloseTo(586.3, within(1e-12));
        assertThat(Amounts.celsius(20).divide(2).in("K")).isCloseTo(146.575, within(1e-12));
    }

    @Test
    void temperaturesAreNotAdded() {
        Refused refused =
                catchThrowableOfType(Refused.class, () -> Amounts.celsius(20).add(Amounts.celsius(5)));
        assertThat(refused.code()).isEqualTo("quantity.temperature-sum");
        assertThat(refused.arguments()).containsExactly(entry("first", "20 °C"), entry("second", "5 °C"));
        assertThat(refused)
                .hasMessage("temperature: 20 °C and 5 °C cannot be added or subtracted; a temperature is a point"
                        + " on a scale. Work with the difference in kelvin yourself.");
        Amount<Temperature> kelvins = Kinds.TEMPERATURE.of(5, "K");
        assertThatThrownBy(() -> Amounts.celsius(20).subtract(kelvins)).isInstanceOf(Refused.class);
    }

    @Test
    void aSumOfTwoKindsIsRefused() {
        @SuppressWarnings("unchecked")
        Quantity<Consistency> slipped = (Quantity<Consistency>) (Quantity<?>) Moisture.percent(8);
        assertThatThrownBy(() -> Consistency.percent(1).add(slipped))
                .isInstanceOf(Refused.class)
                .hasMessage("consistency: 8 % given, which is a moisture, wet basis; a consistency is expected here."
                        + " Check which is meant, and convert explicitly.");
        assertThatThrownBy(() -> Consistency.percent(1).compareTo(slipped)).isInstanceOf(Refused.class);
        assertThatThrownBy(() -> Consistency.percent(1).isEquivalentTo(slipped)).isInstanceOf(Refused.class);
        assertThatThrownBy(() -> Consistency.percent(1).isWithin(slipped, 0.1)).isInstanceOf(Refused.class);
    }

    @Test
    void asTypeKeepsTheKind() {
        Amount<Consistency> consistency = Consistency.percent(3);
        assertThat(consistency.asType(Consistency.class)).isSameAs(consistency);
        assertThatThrownBy(() -> consistency.asType(Moisture.class))
                .isInstanceOf(ClassCastException.class)
                .hasMessage("a quantity of kind consistency is not a Moisture");
    }

    @Test
    void orderIsBySizeAcrossUnits() {
        List<Amount<Length>> lengths = new ArrayList<>(List.of(Amounts.inches(1), Amounts.mm(25), Amounts.cm(2.6)));
        lengths.sort(null);
        assertThat(lengths).containsExactly(Amounts.mm(25), Amounts.inches(1), Amounts.cm(2.6));
        assertThat(Amounts.metres(1).compareTo(Amounts.cm(100))).isZero();
        assertThat(Amounts.celsius(0)).isLessThan(Amounts.fahrenheit(33)).isGreaterThan(Amounts.fahrenheit(31));
    }

    @Test
    void equivalenceAndToleranceWorkAcrossUnits() {
        assertThat(Amounts.inches(1).isEquivalentTo(Amounts.mm(25.4))).isTrue();
        assertThat(Amounts.mm(25.4)).isNotEqualTo(Amounts.inches(1));
        assertThat(Amounts.inches(1).isEquivalentTo(Amounts.mm(25.40000001))).isFalse();
        assertThat(Amounts.fahrenheit(32).isEquivalentTo(Amounts.celsius(0))).isTrue();
        assertThat(Amounts.fahrenheit(-40).isEquivalentTo(Amounts.celsius(-40))).isTrue();
        assertThat(Amounts.grams(0).isEquivalentTo(Amounts.kilograms(0))).isTrue();
        assertThat(Amounts.grams(0).isEquivalentTo(Amounts.kilograms(1e-300))).isFalse();
        assertThat(Amounts.mm(210).isWithin(Amounts.cm(20.95), Amounts.mm(0.6))).isTrue();
        assertThat(Amounts.mm(210).isWithin(Amounts.cm(20.95), Amounts.mm(0.4))).isFalse();
        assertThat(Amounts.mm(210).isWithin(Amounts.cm(20.95), 0.003)).isTrue();
        assertThat(Amounts.mm(210).isWithin(Amounts.cm(20.95), 0.002)).isFalse();
    }

    @Test
    void textForPeopleHasFourDigits() {
        assertThat(Grammage.gsm(216.3295)).hasToString("216.3 g/m²");
        assertThat(Amounts.grams(1)).hasToString("1 g");
        assertThat(Amounts.grams(4.92)).hasToString("4.92 g");
        assertThat(Amounts.grams(1685.4)).hasToString("1685 g");
        assertThat(Amounts.grams(123456)).hasToString("123500 g");
        assertThat(Amounts.micrometres(0.00012345)).hasToString("0.0001235 µm");
        assertThat(Kinds.FILTRATION_RESISTANCE.of(2.5e10, "m/kg")).hasToString("2.5e10 m/kg");
        assertThat(Amounts.celsius(-3.5)).hasToString("-3.5 °C");
        assertThat(Consistency.percent(1.0 / 3)).hasToString("0.3333 %");
        assertThat(Kinds.SHARE.of(0.25, "1")).hasToString("0.25");
        assertThat(SchopperRiegler.degrees(45)).hasToString("45 °SR");
        assertThat(CanadianFreeness.millilitres(320)).hasToString("320 mL CSF");
        assertThat(Amounts.shortTons(20)).hasToString("20 short ton-force");
    }

    @Test
    void everyAmountOfEveryUnitHasTextWithoutAProgrammersWord() {
        for (Kind<?> kind : Kinds.all()) {
            for (String code : kind.codes()) {
                assertThat(kind.ofSi(0.5, code).toString()).doesNotContain("@", "Amount", "Unit", "E");
            }
        }
    }
}
