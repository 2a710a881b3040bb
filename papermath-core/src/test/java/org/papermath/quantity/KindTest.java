package org.papermath.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.entry;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import javax.measure.MetricPrefix;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Temperature;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.Test;
import tech.units.indriya.quantity.Quantities;

class KindTest {
    @Test
    void amountsAreMadeFromACodeAUnitAndCoherentSi() {
        assertThat(Kinds.MASS.of(250, "g").si()).isEqualTo(0.25);
        assertThat(Kinds.MASS.of(2, Units.POUND).si()).isEqualTo(0.90718474);
        assertThat(Kinds.MASS.ofSi(0.25)).hasToString("0.25 kg");
        assertThat(Kinds.MASS.ofSi(0.25, "g")).isEqualTo(Amounts.grams(250));
        assertThat(Kinds.LENGTH.of(254, "μm"))
                .isEqualTo(Kinds.LENGTH.of(254, "µm"))
                .isEqualTo(Kinds.LENGTH.of(254, "um"));
        assertThat(Kinds.GRAMMAGE.of(80, "g/m²")).isEqualTo(Grammage.gsm(80)).isEqualTo(Kinds.GRAMMAGE.of(80, "gsm"));
    }

    @Test
    void everyKindHasANameATypeAUnitAndCodesOfItsOwn() {
        Set<String> names = new HashSet<>();
        Set<Class<?>> types = new HashSet<>();
        for (Kind<?> kind : Kinds.all()) {
            assertThat(names.add(kind.name())).as("second kind called %s", kind).isTrue();
            assertThat(types.add(kind.type()))
                    .as("second kind of type %s", kind.type())
                    .isTrue();
            assertThat(kind.codes()).isNotEmpty().doesNotHaveDuplicates();
            assertThat(kind.codes().stream().map(Units::known).anyMatch(symbol -> symbol.unit() == kind.siUnit()))
                    .as("%s knows the code of its SI unit", kind)
                    .isTrue();
            assertThat(kind).hasToString(kind.name());
        }
        assertThat(Kinds.all()).hasSizeGreaterThanOrEqualTo(40);
    }

    @Test
    void noTwoUnitsOfOneKindShareASpelling() {
        for (Kind<?> kind : Kinds.all()) {
            Set<String> seen = new HashSet<>();
            for (Units.Symbol symbol : kind.symbols()) {
                assertThat(seen.add(symbol.code())).as(symbol.code()).isTrue();
                for (String also : symbol.also()) {
                    assertThat(seen.add(also)).as("%s of %s", also, kind).isTrue();
                }
            }
        }
    }

    @Test
    void limitsOfThePerCentsThemselvesAreAccepted() {
        assertThat(Consistency.percent(0).si()).isZero();
        assertThat(Consistency.percent(100).si()).isEqualTo(1);
        assertThat(Moisture.percent(100).si()).isEqualTo(1);
        assertThat(Solids.percent(100).si()).isEqualTo(1);
        assertThat(Share.percent(100).si()).isEqualTo(1);
        assertThat(Dose.percent(50).si()).isEqualTo(0.5);
        assertThat(Dose.gramsPerKilogram(500).si()).isEqualTo(0.5);
        assertThat(LinearShrinkage.percent(60).si()).isEqualTo(0.6);
        assertThat(LinearShrinkage.percent(-20).si()).isEqualTo(-0.2);
        assertThat(AreaShrinkage.percent(84).si()).isEqualTo(0.84);
        assertThat(RelativeHumidity.percent(100).si()).isEqualTo(1);
        assertThat(Grammage.gsm(20_000).si()).isEqualTo(20);
        assertThat(Amounts.celsius(-273.15).si()).isZero();
    }

    @Test
    void doorsTellTheSiValue() {
        assertThat(Kinds.CONSISTENCY.si(Consistency.percent(1.2), "consistency of the vat"))
                .isEqualTo(0.012);
        assertThat(Kinds.LENGTH.siAboveZero(Amounts.mm(210), "width")).isEqualTo(0.21);
        assertThat(Kinds.LENGTH.siWithin(Amounts.mm(210), "width", 0.21, 1)).isEqualTo(0.21);
        assertThat(Kinds.LENGTH.siWithin(Amounts.mm(1000), "width", 0.21, 1)).isEqualTo(1);
        assertThat(Kinds.MASS.check(Amounts.ounces(4), "fibre")).isEqualTo(Amounts.ounces(4));
        Quantity<Mass> foreign = Quantities.getQuantity(500, tech.units.indriya.unit.Units.GRAM);
        assertThat(Kinds.MASS.si(foreign, "fibre")).isEqualTo(0.5);
        assertThat(Kinds.MASS.check(foreign, "fibre").kind()).isSameAs(Kinds.MASS);
    }

    @Test
    void aNegativeMassIsRefused() {
        Refused refused = refused(() -> Amounts.grams(-4.92));
        assertThat(refused)
                .hasMessage("mass: -4.92 g given; it must be from 0 g to 1e10 g. Check the sign and the unit.");
        assertThat(refused.code()).isEqualTo("quantity.range");
        assertThat(refused.arguments())
                .containsExactly(
                        entry("quantity", "mass"),
                        entry("given", "-4.92 g"),
                        entry("least", "0 g"),
                        entry("most", "1e10 g"));
    }

    @Test
    void aNumberThatIsNoneIsRefused() {
        for (double none : new double[] {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY}) {
            Refused refused = refused(() -> Amounts.mm(none));
            assertThat(refused.code()).isEqualTo("quantity.not-a-number");
            assertThat(refused.arguments())
                    .containsExactly(entry("quantity", "length"), entry("given", Double.toString(none)));
            assertThat(refused)
                    .hasMessage("length: " + none + " given; must be a finite number. Check where it was calculated.");
        }
        assertThat(refused(() -> Kinds.MASS.ofSi(Double.NaN, "g")).code()).isEqualTo("quantity.not-a-number");
        assertThat(refused(() -> Kinds.LENGTH.of(1e308, "km")).code()).isEqualTo("quantity.not-a-number");
    }

    @Test
    void nothingIsRefusedWhereMoreThanNothingIsWanted() {
        Refused refused = refused(() -> Kinds.LENGTH.siAboveZero(Amounts.mm(0), "width of the sheet"));
        assertThat(refused.code()).isEqualTo("quantity.not-above-zero");
        assertThat(refused.arguments())
                .containsExactly(entry("quantity", "width of the sheet"), entry("given", "0 mm"), entry("limit", "0"));
        assertThat(refused)
                .hasMessage("width of the sheet: 0 mm given; it must be above zero."
                        + " Give what was measured or ordered.");
    }

    @Test
    void limitsOfADoorAreToldInTheUnitGiven() {
        Refused refused = refused(() -> Kinds.LENGTH.siWithin(Amounts.inches(50), "width", 0.0254, 1.016));
        assertThat(refused.code()).isEqualTo("quantity.range");
        assertThat(refused.arguments())
                .containsExactly(
                        entry("quantity", "width"),
                        entry("given", "50 in"),
                        entry("least", "1 in"),
                        entry("most", "40 in"));
        assertThat(refused)
                .hasMessage("width: 50 in given; it must be from 1 in to 40 in."
                        + " Check the unit and the decimal point.");
        assertThat(refused(() -> Kinds.LENGTH.siWithin(Amounts.mm(1), "width", 0.0254, Double.POSITIVE_INFINITY)))
                .hasMessage("width: 1 mm given; it must be 25.4 mm or more. Check the sign and the unit.");
        assertThat(refused(() -> Kinds.NUMBER.siWithin(Kinds.NUMBER.of(2, "1"), "factor", Double.NEGATIVE_INFINITY, 1)))
                .hasMessage("factor: 2 given; it must be at most 1. Check the unit and the decimal point.");
        assertThat(refused(() -> Grammage.gsm(0)))
                .hasMessage("grammage: 0 g/m² given; it must be above 0 g/m² and at most 20000 g/m²."
                        + " Check the sign and the unit.");
    }

    @Test
    void aLimitMissedByLittleIsToldWithAllDigits() {
        assertThat(refused(() -> Dose.percent(50.00001)))
                .hasMessage("dose on oven-dry fibre: 50.00001 % given; it must be from 0 % to 50 %."
                        + " Check the unit and the decimal point.");
        assertThat(refused(() -> Amounts.celsius(-273.1501)))
                .hasMessage("temperature: -273.2 °C given; it must be from -273.15 °C to 1726.85 °C."
                        + " Check the sign and the unit.");
        assertThat(refused(() -> Kinds.LENGTH.siWithin(Amounts.mm(210.001), "width", 0.1, 0.21)))
                .hasMessage("width: 210.001 mm given; it must be from 100 mm to 210 mm."
                        + " Check the unit and the decimal point.");
        assertThat(refused(() -> Amounts.celsius(-273.16)))
                .hasMessage("temperature: -273.2 °C given; it must be from -273.15 °C to 1726.85 °C."
                        + " Check the sign and the unit.");
    }

    @Test
    void aDoseOfThreeHundredPerCentIsRefused() {
        Refused refused = refused(() -> Dose.percent(300));
        assertThat(refused.code()).isEqualTo("quantity.range");
        assertThat(refused.arguments())
                .containsExactly(
                        entry("quantity", "dose on oven-dry fibre"),
                        entry("given", "300 %"),
                        entry("least", "0 %"),
                        entry("most", "50 %"));
        assertThat(refused)
                .hasMessage("dose on oven-dry fibre: 300 % given; it must be from 0 % to 50 %."
                        + " Check the unit and the decimal point.");
    }

    @Test
    void anotherKindIsRefusedThoughTheCompilerWasTalkedRound() {
        Quantity<Consistency> slipped = erased(Moisture.percent(8));
        Refused refused = refused(() -> Kinds.CONSISTENCY.si(slipped, "consistency of the vat"));
        assertThat(refused.code()).isEqualTo("quantity.kind");
        assertThat(refused.arguments())
                .containsExactly(
                        entry("quantity", "consistency of the vat"),
                        entry("given", "8 %"),
                        entry("givenKind", "moisture, wet basis"),
                        entry("wantedKind", "consistency"));
        assertThat(refused)
                .hasMessage("consistency of the vat: 8 % given, which is a moisture, wet basis;"
                        + " a consistency is expected here. Check which is meant, and convert explicitly.");
    }

    @Test
    void everyKindRefusesEveryOther() {
        for (Kind<?> wanted : Kinds.all()) {
            for (Kind<?> given : Kinds.all()) {
                if (given != wanted) {
                    assertThat(refused(() -> door(wanted, given)).code())
                            .as("%s for %s", given, wanted)
                            .isEqualTo("quantity.kind");
                }
            }
        }
    }

    private static <Q extends Quantity<Q>> double door(Kind<Q> wanted, Kind<?> given) {
        Quantity<Q> slipped = erased(given.ofSi(0.5));
        return wanted.si(slipped, "input");
    }

    @Test
    void aForeignQuantityOfAnotherDimensionIsRefused() {
        Quantity<Length> slipped = erased(Quantities.getQuantity(3, tech.units.indriya.unit.Units.KILOGRAM));
        Refused refused = refused(() -> Kinds.LENGTH.si(slipped, "width of the sheet"));
        assertThat(refused.code()).isEqualTo("quantity.dimension");
        assertThat(refused.arguments())
                .containsExactly(
                        entry("quantity", "width of the sheet"),
                        entry("given", "3 kg"),
                        entry("wantedKind", "length"),
                        entry("accepted", "mm, cm, m, um, km, in, ft, yd, mil, pt_paper, pt_type, shaku"));
        assertThat(refused)
                .hasMessage("width of the sheet: 3 kg given, but that unit does not measure length."
                        + " Accepted units: mm, cm, m, um, km, in, ft, yd, mil, pt_paper, pt_type, shaku.");
    }

    @Test
    void freenessDrainageNumberAndPlainNumbersDoNotConvert() {
        Quantity<SchopperRiegler> number = erased(Quantities.getQuantity(30, Kinds.NUMBER.siUnit()));
        assertThat(refused(() -> Kinds.SCHOPPER_RIEGLER.si(number, "drainage number"))
                        .code())
                .isEqualTo("quantity.dimension");
        Quantity<CanadianFreeness> volume =
                erased(Quantities.getQuantity(450, MetricPrefix.MILLI(tech.units.indriya.unit.Units.LITRE)));
        assertThat(refused(() -> Kinds.CANADIAN_FREENESS.si(volume, "freeness")).code())
                .isEqualTo("quantity.dimension");
        assertThat(Kinds.CANADIAN_FREENESS.siUnit().isCompatible(Kinds.SCHOPPER_RIEGLER.siUnit()))
                .isFalse();
        assertThat(Kinds.CANADIAN_FREENESS.siUnit().isCompatible(Kinds.VOLUME.siUnit()))
                .isFalse();
        assertThat(Kinds.CANADIAN_FREENESS.siUnit().isCompatible(Kinds.NUMBER.siUnit()))
                .isFalse();
    }

    @Test
    void aForeignTemperatureDifferenceIsNoPointOnTheScale() {
        Quantity<Temperature> rise =
                Quantities.getQuantity(5, tech.units.indriya.unit.Units.CELSIUS, Quantity.Scale.RELATIVE);
        Refused refused = refused(() -> Kinds.TEMPERATURE.si(rise, "temperature of the room"));
        assertThat(refused.code()).isEqualTo("quantity.temperature-difference");
        assertThat(refused).hasMessageStartingWith("temperature of the room: a difference of 5 ");
        Quantity<Temperature> room = Quantities.getQuantity(21, tech.units.indriya.unit.Units.CELSIUS);
        assertThat(Kinds.TEMPERATURE.si(room, "temperature of the room")).isEqualTo(294.15);
    }

    @Test
    void aForeignQuantityOutOfRangeOrNotFiniteIsRefused() {
        assertThat(refused(() ->
                        Kinds.MASS.si(Quantities.getQuantity(-1, tech.units.indriya.unit.Units.KILOGRAM), "fibre")))
                .hasMessageStartingWith("fibre: -1 kg given; it must be from 0 kg to ");
        assertThat(refused(() -> Kinds.MASS.si(
                                Quantities.getQuantity(
                                        new java.math.BigDecimal("1e400"), tech.units.indriya.unit.Units.KILOGRAM),
                                "fibre"))
                        .code())
                .isEqualTo("quantity.not-a-number");
    }

    @Test
    void argumentsAndListsCannotBeChanged() {
        Refused refused = refused(() -> Dose.percent(300));
        assertThat(refused.arguments()).isUnmodifiable();
        List<String> codes = Kinds.MASS.codes();
        assertThat(codes).isUnmodifiable();
        assertThat(Kinds.all()).isUnmodifiable();
    }

    /** What a raw type or a careless cast does in other people's code. */
    @SuppressWarnings("unchecked")
    private static <Q extends Quantity<Q>> Quantity<Q> erased(Quantity<?> quantity) {
        return (Quantity<Q>) quantity;
    }

    private static Refused refused(ThrowingCallable call) {
        return catchThrowableOfType(Refused.class, call);
    }
}
