package org.papermath.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.papermath.air.Air;
import org.papermath.fibre.Fibre;
import org.papermath.fibre.Fibres;
import org.papermath.fibre.Furnish;
import org.papermath.mould.Deckle;
import org.papermath.press.Press;
import org.papermath.pulp.Additive;
import org.papermath.pulp.Beater;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Share;
import org.papermath.quantity.Units;
import org.papermath.vat.Vat;

/** What a studio says of its equipment is told again as it was said: 12 gal_us are not 45.42 L. */
class GivenUnitsTest {
    static Stream<Arguments> said() {
        Beater beater = Beater.of("tub", Kinds.VOLUME.read("12 gal_us"), Kinds.MASS.read("2.2 lb"));
        Vat vat = Vat.of("vat", Kinds.VOLUME.read("18.5 gal_uk")).at(Kinds.TEMPERATURE.read("64 degF"));
        Deckle deckle = Deckle.of(Kinds.LENGTH.read("11.3 in"), Kinds.LENGTH.read("1.1 ft"))
                .split(2, 1, Kinds.LENGTH.read("0.3 in"));
        Press press = Press.of(
                        "press",
                        Kinds.FORCE.read("20 tonf_us"),
                        Kinds.LENGTH.read("17.7 in"),
                        Kinds.LENGTH.read("2.3 ft"))
                .daylight(Kinds.LENGTH.read("19.1 in"));
        Air air = Air.of(Kinds.TEMPERATURE.read("71.3 degF"), Kinds.RELATIVE_HUMIDITY.read("0.58"))
                .at(Kinds.AIR_PRESSURE.read("14.1 psi"));
        Additive milk = Additive.of("milk", Additive.Purpose.CARBONATE).active(Kinds.SHARE.read("0.29"));
        return Stream.of(
                Arguments.of(beater.trough(), "12 gal_us"),
                Arguments.of(beater.ratedLoad(), "2.2 lb"),
                Arguments.of(vat.workingVolume(), "18.5 gal_uk"),
                Arguments.of(vat.temperature(), "64 degF"),
                Arguments.of(deckle.width(), "11.3 in"),
                Arguments.of(deckle.height(), "1.1 ft"),
                Arguments.of(deckle.strip(), "0.3 in"),
                Arguments.of(press.platenWidth(), "17.7 in"),
                Arguments.of(press.platenLength(), "2.3 ft"),
                Arguments.of(press.daylight().orElseThrow(), "19.1 in"),
                Arguments.of(air.temperature(), "71.3 degF"),
                Arguments.of(air.humidity(), "0.58"),
                Arguments.of(air.pressure(), "14.1 psi"),
                Arguments.of(milk.activeFraction().orElseThrow(), "0.29"));
    }

    @ParameterizedTest
    @MethodSource("said")
    void equipmentTellsWhatWasSaidOfIt(Amount<?> told, String said) {
        assertThat(Units.print(told)).isEqualTo(said);
    }

    @Test
    void theSameEquipmentInOtherUnitsIsTheSame() {
        assertThat(Beater.of("tub", Kinds.VOLUME.read("45 L"), Kinds.MASS.read("1 kg")))
                .isEqualTo(Beater.of("tub", Kinds.VOLUME.read("45000 mL"), Kinds.MASS.read("1000 g")))
                .hasSameHashCodeAs(Beater.of("tub", Kinds.VOLUME.read("45 L"), Kinds.MASS.read("1000 g")));
        assertThat(Deckle.of(Kinds.LENGTH.read("0.5 m"), Kinds.LENGTH.read("1 m")))
                .isEqualTo(Deckle.of(Kinds.LENGTH.read("500 mm"), Kinds.LENGTH.read("1000 mm")));
    }

    @Test
    void sharesThatAddUpStayAsTheyWereSaid() {
        Map<Fibre, Amount<Share>> shares = new LinkedHashMap<>();
        shares.put(Fibres.ABACA, Kinds.SHARE.read("29 %"));
        shares.put(Fibres.KOZO, Kinds.SHARE.read("0.57"));
        shares.put(Fibres.COTTON_RAG, Kinds.SHARE.read("14 %"));
        assertThat(Furnish.of(shares).shares().values()).map(Units::print).containsExactly("0.57", "29 %", "14 %");
    }

    @Test
    void sharesThatNearlyAddUpAreScaled() {
        Map<Fibre, Amount<Share>> shares = new LinkedHashMap<>();
        shares.put(Fibres.ABACA, Kinds.SHARE.read("33.33333 %"));
        shares.put(Fibres.KOZO, Kinds.SHARE.read("33.33333 %"));
        shares.put(Fibres.COTTON_RAG, Kinds.SHARE.read("33.33333 %"));
        assertThat(Furnish.of(shares).share(Fibres.KOZO).si()).isCloseTo(1.0 / 3, within(1e-16));
    }
}
