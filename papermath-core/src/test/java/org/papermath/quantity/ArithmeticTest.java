package org.papermath.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.papermath.quantity.Amounts.celsius;
import static org.papermath.quantity.Amounts.cubicMetres;
import static org.papermath.quantity.Amounts.grams;
import static org.papermath.quantity.Amounts.hours;
import static org.papermath.quantity.Amounts.kilograms;
import static org.papermath.quantity.Amounts.kilonewtons;
import static org.papermath.quantity.Amounts.litres;
import static org.papermath.quantity.Amounts.micrometres;
import static org.papermath.quantity.Amounts.mm;
import static org.papermath.quantity.Amounts.pounds;
import static org.papermath.quantity.Amounts.shortTons;
import static org.papermath.quantity.Amounts.squareMetres;

import javax.measure.Quantity;
import javax.measure.quantity.Area;
import org.junit.jupiter.api.Test;
import tech.units.indriya.quantity.Quantities;
import tech.units.indriya.unit.Units;

/** Amounts divided and multiplied into the kind a person means, with the figures of common questions. */
class ArithmeticTest {
    @Test
    void forceOverAreaIsAPressure() {
        Amount<Area> post = mm(300).times(mm(400), Kinds.AREA);
        assertThat(post).hasToString("0.12 m²");
        assertThat(kilonewtons(60).over(post, Kinds.SHEET_PRESSURE)).hasToString("500 kPa");
        assertThat(kilonewtons(60).over(mm(148).times(mm(210), Kinds.AREA), Kinds.SHEET_PRESSURE))
                .hasToString("1931 kPa");
        assertThat(shortTons(12).over(post, Kinds.SHEET_PRESSURE).in("kPa")).isCloseTo(889.6, within(0.05));
        assertThat(SheetPressure.kilopascals(500).times(mm(148).times(mm(210), Kinds.AREA), Kinds.FORCE))
                .hasToString("15.54 kN");
    }

    @Test
    void massAreaAndGrammage() {
        Amount<Area> ten = mm(148).times(mm(205), Kinds.AREA).multiply(10);
        assertThat(grams(62.5).over(ten, Kinds.GRAMMAGE)).hasToString("206 g/m²");
        assertThat(squareMetres(0.126).times(Grammage.gsm(180), Kinds.MASS)).hasToString("22.68 g");
        assertThat(Grammage.gsm(180).times(squareMetres(0.126), Kinds.MASS)).hasToString("22.68 g");
        assertThat(grams(22.68).over(Grammage.gsm(180), Kinds.AREA)).hasToString("0.126 m²");
        assertThat(squareMetres(0.12).over(mm(400), Kinds.LENGTH)).hasToString("300 mm");
    }

    @Test
    void densityBulkAndCaliper() {
        Amount<Grammage> found = Grammage.gsm(206);
        assertThat(found.over(micrometres(340), Kinds.DENSITY)).hasToString("605.9 kg/m³");
        assertThat(micrometres(340).over(found, Kinds.BULK)).hasToString("1.65 cm³/g");
        assertThat(found.times(Kinds.BULK.of(1.65, "cm3/g"), Kinds.LENGTH)).hasToString("0.3399 mm");
        assertThat(grams(30.6)
                        .over(Kinds.VOLUME.of(10, "tsp_us"), Kinds.DENSITY)
                        .in("g/mL"))
                .isCloseTo(0.62, within(0.001));
        assertThat(litres(9).over(grams(640), Kinds.LIQUOR_RATIO)).hasToString("14.06 L/kg");
        assertThat(cubicMetres(0.62).over(kilograms(3.1), Kinds.LIQUOR_RATIO)).hasToString("200 L/kg");
    }

    @Test
    void sharesAndRatios() {
        assertThat(grams(7.3).over(grams(120), Kinds.CONSISTENCY)).hasToString("6.083 %");
        assertThat(grams(864).times(Kinds.SHARE.of(65, "%"), Kinds.MASS)).hasToString("561.6 g");
        assertThat(kilograms(14.2).times(Consistency.percent(6.08), Kinds.MASS)).hasToString("863.4 g");
        assertThat(grams(20.7).over(grams(24), Kinds.SHARE)).hasToString("86.25 %");
        assertThat(pounds(5).over(kilograms(1), Kinds.NUMBER)).hasToString("2.268");
        assertThat(grams(3).over(litres(2.5), Kinds.SOLUTION_STRENGTH)).hasToString("1.2 g/L");
        assertThat(cubicMetres(3000).over(hours(2), Kinds.VOLUME_FLOW)).hasToString("1500 m³/h");
    }

    @Test
    void quantitiesOfOthersTakePart() {
        Quantity<Area> other = Quantities.getQuantity(1200, Units.SQUARE_METRE.divide(10_000));
        assertThat(kilonewtons(60).over(other, Kinds.SHEET_PRESSURE).in("kPa")).isCloseTo(500, within(1e-9));
    }

    @Test
    void otherKindsAreRefusedInASentence() {
        assertThatThrownBy(() -> grams(12).over(litres(2), Kinds.GRAMMAGE))
                .isInstanceOf(Refused.class)
                .hasMessage("grammage: 12 g over 2 L is not a grammage. It can be: fibre per volume, solution strength,"
                        + " density. Name what is meant, or check the two amounts.");
        assertThatThrownBy(() -> grams(12).times(litres(2), Kinds.MASS))
                .isInstanceOf(Refused.class)
                .hasMessageStartingWith("mass: 12 g times 2 L is not a mass. No kind has its unit, ")
                .hasMessageEndingWith(". Check the two amounts.");
        assertThatThrownBy(() -> kilonewtons(60).over(squareMetres(0), Kinds.SHEET_PRESSURE))
                .isInstanceOf(Refused.class)
                .hasMessage("force: 60 kN cannot be divided by 0.");
        assertThatThrownBy(() -> grams(12).over(grams(5), Kinds.SHARE))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("240 % given");
        assertThatThrownBy(() -> celsius(20).times(Kinds.SHARE.of(50, "%"), Kinds.TEMPERATURE))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("a point on a scale");
    }

    @Test
    void threeWaysToSayWater() {
        assertThat(MoistureRatio.ofMoisture(Moisture.percent(64))).hasToString("1.778 g/g");
        assertThat(MoistureRatio.ofSolids(Solids.percent(36))).hasToString("1.778 g/g");
        assertThat(Moisture.ofRatio(MoistureRatio.gramsPerGram(16 / 9.0))).hasToString("64 %");
        assertThat(Moisture.ofSolids(Solids.percent(36))).hasToString("64 %");
        assertThat(Solids.ofMoisture(Moisture.percent(64))).hasToString("36 %");
        assertThat(Solids.ofRatio(MoistureRatio.gramsPerGram(16 / 9.0))).hasToString("36 %");
        assertThatThrownBy(() -> MoistureRatio.ofMoisture(Moisture.percent(100)))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("nothing would be dry");
        assertThatThrownBy(() -> Solids.ofMoisture(Moisture.percent(100))).isInstanceOf(Refused.class);
    }
}
