package org.papermath;

import static org.assertj.core.api.Assertions.assertThat;
import static org.papermath.quantity.Amounts.grams;
import static org.papermath.quantity.Amounts.kilograms;
import static org.papermath.quantity.Amounts.litres;
import static org.papermath.quantity.Amounts.minutes;
import static org.papermath.quantity.Amounts.mm;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Reading;
import org.papermath.pulp.Additive;
import org.papermath.pulp.AdditiveDose;
import org.papermath.pulp.BeatingRecord;
import org.papermath.pulp.Pulp;
import org.papermath.pulp.RollLowering;
import org.papermath.quantity.CanadianFreeness;
import org.papermath.quantity.Consistency;
import org.papermath.quantity.Dose;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Moisture;
import org.papermath.quantity.Solids;
import org.papermath.record.SheetQuality;
import org.papermath.sheet.FormedSheet;
import org.papermath.vat.Vat;
import org.papermath.vat.VatCharge;
import org.papermath.vat.VatReading;

/** What is asked prints as a person says it: what it is, amounts with units, four digits at most. */
class PrintedTest {
    private static BeatingRecord.Point<CanadianFreeness> point(double after, double read) {
        return BeatingRecord.Point.of(
                Reading.of(minutes(after), minutes(1)),
                Reading.of(Kinds.CANADIAN_FREENESS.of(read, "mL_CSF"), Kinds.CANADIAN_FREENESS.of(5, "mL_CSF")));
    }

    /** Freeness of 610, 520, 440 and 375 mL at 30, 60, 90 and 120 min; wanted are 470 mL. */
    @Test
    void aBeatingRecordAnswersInItsOwnUnit() {
        BeatingRecord<CanadianFreeness> record = BeatingRecord.of(
                "cotton",
                Kinds.CANADIAN_FREENESS,
                List.of(point(30, 610), point(60, 520), point(90, 440), point(120, 375)));
        assertThat(record.timeTo(Kinds.CANADIAN_FREENESS.of(470, "mL_CSF"))).hasToString("78.75 min");
        assertThat(record.points().get(0)).hasToString("610 mL CSF ± 5 mL CSF after 30 min ± 1 min");
    }

    @Test
    void whatIsDryOfAWetSheet() {
        assertThat(FormedSheet.ofGrammage(Grammage.gsm(115), mm(300), mm(400)).couched(Solids.percent(15)))
                .hasToString("couched sheet 300 mm × 400 mm, 92 g at 15 % solids; oven-dry 13.8 g, 115 g/m²");
    }

    @Test
    void partsOfPulpAndVat() {
        Pulp pulp = Pulp.ofOvenDry(kilograms(1)).at(Consistency.percent(4));
        assertThat(pulp.takeFibre(grams(250)).toString())
                .startsWith("taken 6.")
                .contains("(250 g oven-dry fibre)")
                .contains("; left ")
                .endsWith("(750 g oven-dry fibre)");
        assertThat(VatCharge.filling(Vat.of("vat", litres(50)), Consistency.percent(0.5), Consistency.percent(2.5))
                        .toString())
                .matches(".* at 2\\.5 % .*, with .* L of water: .* at 0\\.5 % .*");
        assertThat(VatReading.couchedSheet(grams(52), Solids.percent(15))).hasToString("a sheet of 7.8 g oven-dry");
        assertThat(VatReading.vatSample(grams(1000), grams(5))).hasToString("the vat at 0.5 %");
        assertThat(VatReading.whiteWater(grams(1000), grams(0.2))).hasToString("white water at 0.02 %");
        assertThat(VatReading.driedSheet(grams(8), Moisture.percent(0))).hasToString("a sheet of 8 g oven-dry");
    }

    @Test
    void stepsOfTheBeaterRoom() {
        assertThat(RollLowering.Step.of(minutes(15), 0.25)).hasToString("after 15 min 0.25 turns down");
        AdditiveDose first = AdditiveDose.of(Additive.of("ochre", Additive.Purpose.PIGMENT), Dose.percent(2));
        AdditiveDose second = AdditiveDose.of(Additive.of("aid", Additive.Purpose.RETENTION_AID), Dose.percent(0.1));
        List<AdditiveDose.Addition> table = AdditiveDose.timetable(List.of(first, second), Assumptions.standard());
        assertThat(table.get(0)).hasToString("ochre, 2 % on oven-dry fibre, first");
        assertThat(table.get(1).toString()).matches("aid, 0\\.1 % on oven-dry fibre, [0-9.]+ (min|h) after the first");
    }

    @Test
    void anOldBatch() {
        assertThat(new SheetQuality.Summary<>(Grammage.gsm(158), Grammage.gsm(4), 10))
                .hasToString("mean 158 g/m², sd 4 g/m², 10 sheets");
    }
}
