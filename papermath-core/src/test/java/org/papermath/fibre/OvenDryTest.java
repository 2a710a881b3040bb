package org.papermath.fibre;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.papermath.quantity.Amounts.grams;
import static org.papermath.quantity.Amounts.pounds;

import org.junit.jupiter.api.Test;
import org.papermath.quantity.Moisture;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Solids;

class OvenDryTest {
    /** A sheet weighed at 65 % relative humidity, on weight at 50 %. */
    @Test
    void oneMassAtAnotherMoisture() {
        OvenDry sheet = OvenDry.of(grams(12.4), Moisture.percent(8.9));
        assertThat(sheet).hasToString("11.3 g oven-dry");
        assertThat(sheet.mass().in("g")).isCloseTo(11.2964, within(1e-4));
        assertThat(sheet.at(Moisture.percent(6.9))).hasToString("12.13 g");
        assertThat(sheet.at(Moisture.percent(8.9)).in("g")).isCloseTo(12.4, within(1e-12));
    }

    /** Five pounds air-dry, by the convention of 10 % and at a measured 7 %. */
    @Test
    void airDryPounds() {
        assertThat(OvenDry.of(pounds(5), Moisture.percent(10)).mass()).hasToString("4.5 lb");
        assertThat(OvenDry.of(pounds(5), Moisture.percent(7)).mass()).hasToString("4.65 lb");
        assertThat(OvenDry.of(pounds(5), Moisture.percent(10)).mass().in("g")).isCloseTo(2041, within(0.5));
    }

    @Test
    void waterToTakeOut() {
        OvenDry sheets = OvenDry.of(grams(10.5).multiply(40));
        assertThat(sheets.waterOut(Moisture.percent(64), Moisture.percent(7))).hasToString("715.1 g");
        assertThat(sheets.water(Moisture.percent(64)).in("g")).isCloseTo(420 * 0.64 / 0.36, within(1e-9));
        assertThat(sheets.at(Moisture.ofSolids(Solids.percent(36))).in("g")).isCloseTo(420 / 0.36, within(1e-9));
        assertThat(sheets.waterOut(Moisture.percent(7), Moisture.percent(7)).si())
                .isZero();
    }

    @Test
    void refusals() {
        OvenDry sheets = OvenDry.of(grams(420));
        assertThatThrownBy(() -> sheets.waterOut(Moisture.percent(7), Moisture.percent(64)))
                .isInstanceOf(Refused.class)
                .hasMessage(
                        "moisture at last: 64 % given, more than the 7 % at first; no water comes out. Give the wetter"
                                + " state first.");
        assertThatThrownBy(() -> sheets.at(Moisture.percent(100))).isInstanceOf(Refused.class);
        assertThatThrownBy(() -> OvenDry.of(grams(12), Moisture.percent(100))).isInstanceOf(Refused.class);
        assertThatThrownBy(() -> OvenDry.of(grams(0))).isInstanceOf(Refused.class);
    }
}
