package org.papermath.vat;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.papermath.quantity.Amounts.grams;
import static org.papermath.quantity.Amounts.kilograms;
import static org.papermath.quantity.Amounts.litres;
import static org.papermath.quantity.Amounts.squareMetres;
import static org.papermath.testing.CheckValues.relative;

import javax.measure.quantity.Dimensionless;
import org.junit.jupiter.api.Test;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Estimate;
import org.papermath.evidence.Scope;
import org.papermath.pulp.Additive;
import org.papermath.pulp.AdditiveDose;
import org.papermath.pulp.Pulp;
import org.papermath.quantity.Consistency;
import org.papermath.quantity.Dose;
import org.papermath.quantity.FibreConcentration;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Moisture;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Share;
import org.papermath.quantity.Solids;
import org.papermath.testing.CheckValues;

class VatTest {
    private static final VatCharge CHARGE = VatCharge.of(
            Pulp.ofWet(kilograms(80), Consistency.percent(0.5)), kilograms(2), Share.percent(97), Solids.percent(15));

    @Test
    void aRunAgreesWithTheTable() {
        VatRun run = CHARGE.pull(51);
        for (CheckValues.Row row : CheckValues.read("vat_balance")) {
            int sheet = (int) row.number("sheet");
            assertThat(run.fibre(sheet).in("g"))
                    .isCloseTo(row.number("sheet_od_g"), relative(row.number("sheet_od_g"), 1e-5));
            assertThat(run.consistency(sheet + 1).si())
                    .isCloseTo(row.number("c_after"), relative(row.number("c_after"), 1e-5));
            assertThat(CHARGE.pull(sheet).left().mass().in("kg")).isCloseTo(row.number("vat_kg"), within(1e-4));
        }
        assertThat(run.couched(1).in("g")).isCloseTo(9.7 / 0.15, within(1e-9));
        assertThat(run.grammage(1, squareMetres(0.1)).in("g/m2")).isCloseTo(97, within(1e-9));
        assertThat(run.change(10).in("%")).isCloseTo(-19.344, within(1e-3));
        assertThat(run.lastWithin(grams(9.7), Share.percent(5))).isEqualTo(3);
        assertThat(run.lastWithin(grams(20), Share.percent(5))).isZero();
        assertThat(run.levelRise().si()).isZero();
        assertThat(run.levelFall().in("L")).isCloseTo(1.92, within(0.005));
        assertThat(run.fibreKilograms().sum())
                .isCloseTo(0.4 - run.left().ovenDry().si(), within(1e-12));
    }

    @Test
    void refusesWhatAVatCannotGive() {
        assertThatThrownBy(() -> CHARGE.lifting(kilograms(90)))
                .isInstanceOf(Refused.class)
                .hasMessage("stock lifted: 90 kg a dip,"
                        + " but the vat holds only 80 kg. Fill it, or thicken it so that less is lifted.");
        assertThatThrownBy(() -> CHARGE.pull(0))
                .isInstanceOf(Refused.class)
                .hasMessage("sheets: 0 given; it must be from 1 to 100 000.");
        assertThatThrownBy(() -> CHARGE.pull(3).fibre(4))
                .isInstanceOf(Refused.class)
                .hasMessage("sheet: number 4 given; the run has sheets 1 to 3.");
        assertThatThrownBy(() -> CHARGE.pull(3).additive(0, 1))
                .isInstanceOf(Refused.class)
                .hasMessage("additive: number 0 given; the vat carries 0, counted from 0.");
        assertThatThrownBy(() -> VatCharge.of(
                                Pulp.ofWet(kilograms(10), Consistency.percent(10)),
                                kilograms(8),
                                Share.percent(100),
                                Solids.percent(10))
                        .pull(5))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("the vat runs dry at sheet");
        assertThatThrownBy(() -> VatCharge.of(
                        Pulp.ofWet(kilograms(10), Consistency.percent(20)),
                        kilograms(1),
                        Share.percent(100),
                        Solids.percent(10)))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("A sheet drains; check the two figures.");
    }

    @Test
    void isFilledFromStockAndWater() {
        VatCharge.Mix mix =
                VatCharge.filling(Vat.of("blue vat", litres(60)), Consistency.percent(0.5), Consistency.percent(2.5));
        assertThat(mix.together().volume().in("L")).isCloseTo(60, within(1e-9));
        assertThat(mix.stock().ovenDry().si())
                .isCloseTo(mix.together().ovenDry().si(), within(1e-12));
        assertThat(mix.stock().volume().in("L") + mix.water().in("L")).isCloseTo(60, within(0.1));
        assertThatThrownBy(() -> VatCharge.filling(
                        Vat.of("blue vat", litres(60)), Consistency.percent(0.5), Consistency.percent(0.4)))
                .isInstanceOf(Refused.class)
                .hasMessage("consistency of the stock: 0.4 % given, thinner"
                        + " than the 0.5 % needed in the vat. Drain the stock first.");
        VatCharge abaca = VatCharge.from(Assumptions.standard(), Scope.of("abaca"), mix.together(), kilograms(1));
        assertThat(abaca.firstSheet().in("g")).isCloseTo(1000 * 0.005 * 0.97, within(1e-9));
        assertThat(VatCharge.forSheet(mix.together(), grams(6), Share.percent(97), Solids.percent(15))
                        .firstSheet()
                        .in("g"))
                .isCloseTo(6, within(1e-9));
    }

    /** Ten sheets that leave with 69.6 g of fibre at 15 %: from a bucket at 2.4 %, and from stock drained to 15 %. */
    @Test
    void whatTenSheetsTookIsReplaced() {
        Recharge.Taken taken = Recharge.replacing(grams(69.6), Solids.percent(15));
        assertThat(taken.from(Consistency.percent(2.4)).into(Consistency.percent(0.5)))
                .hasToString("add 3.541 kg of stock, bail 3.077 kg of vat liquor");
        assertThat(taken.from(Consistency.percent(15)).into(Consistency.percent(0.5)))
                .hasToString("add 0.464 kg of stock, bail nothing");
        assertThat(taken.from(Consistency.percent(20)).into(Consistency.percent(0.5)))
                .hasToString("add 0.348 kg of stock, add 0.116 kg of water");
        assertThat(taken).hasToString("69.6 g of fibre taken at 15 % solids");
        assertThat(Recharge.mixing(grams(69.6), Solids.percent(15), Consistency.percent(20), Consistency.percent(0.5)))
                .hasToString("add 0.345 kg of the thicker stock and 0.119 kg of the thinner one");
        assertThatThrownBy(() -> taken.from(Consistency.percent(0.5)).into(Consistency.percent(2.4)))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("cannot bring the vat up");
    }

    @Test
    void aToleranceGivesATable() {
        Recharge table = Recharge.within(
                CHARGE, grams(9.7), Share.percent(5), 20, Consistency.percent(3), Recharge.Level.RISING);
        assertThat(table.every()).isEqualTo(5);
        assertThat(table.lines()).hasSize(4);
        assertThat(table.lines().get(0).afterSheet()).isZero();
        assertThat(table.lines().get(1)).hasToString("after sheet 5: add 1.871 L of stock");
        VatRun run = CHARGE.pull(20, table);
        assertThat(run.lastWithin(grams(9.7), Share.percent(5))).isEqualTo(20);
        assertThat(run.levelRise().in("L")).isGreaterThan(3);
        Recharge held =
                Recharge.within(CHARGE, grams(9.7), Share.percent(5), 20, Consistency.percent(3), Recharge.Level.HELD);
        assertThat(held.lines().get(1).bailed().in("L")).isGreaterThan(1);
        assertThat(CHARGE.pull(20, held).lastWithin(grams(9.7), Share.percent(5)))
                .isEqualTo(20);
    }

    @Test
    void aVatTooSmallIsToldHowLargeItMustBe() {
        VatCharge small = VatCharge.of(
                Pulp.ofWet(kilograms(15), Consistency.percent(0.5)),
                kilograms(2),
                Share.percent(97),
                Solids.percent(15));
        assertThatThrownBy(() -> Recharge.within(
                        small, grams(9.7), Share.percent(5), 20, Consistency.percent(3), Recharge.Level.RISING))
                .isInstanceOf(Refused.class)
                .hasMessage(
                        "One lift of 2 kg takes more out of the vat than the ±5 % a sheet may differ by, even if it is"
                                + " recharged after every sheet. Take a vat of at least 20.37 L, or a thicker one of which less is"
                                + " lifted.");
        assertThatThrownBy(() -> Recharge.within(
                        CHARGE, grams(9.7), Share.percent(5), 20, Consistency.percent(0.4), Recharge.Level.RISING))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("it cannot bring the vat up. Drain the stock" + " thicker.");
    }

    @Test
    void aTintStaysInTheWater() {
        VatCharge tinted = CHARGE.carrying(
                AdditiveDose.of(Additive.of("ochre", Additive.Purpose.PIGMENT), Dose.percent(5)), Share.percent(45));
        VatRun run = tinted.pull(40);
        assertThat(run.additive(0, 1).in("g")).isCloseTo(2000 * 20.0 / 80020 * 0.45, within(1e-9));
        assertThat(run.additiveLeft(0).in("g")).isGreaterThan(10);
        // the fibre goes faster than the colour, so the sheets grow darker
        assertThat(run.additive(0, 40).si() / run.fibre(40).si())
                .isGreaterThan(run.additive(0, 1).si() / run.fibre(1).si() * 1.3);
        assertThat(run.solids(1).in("g"))
                .isCloseTo(run.fibre(1).in("g") + run.additive(0, 1).in("g"), within(1e-12));
        assertThat(tinted.carried()).hasSize(1);
    }

    @Test
    void oneReadingCorrectsARun() {
        VatRun run = CHARGE.pull(20);
        VatCorrection thin = run.correct(
                3,
                VatReading.driedSheet(run.fibre(3).multiply(0.88), Moisture.percent(0)),
                grams(9.7),
                Share.percent(5),
                10,
                Consistency.percent(3),
                Recharge.Level.RISING);
        assertThat(thin.found().in("%")).isCloseTo(88, within(1e-9));
        assertThat(thin.recharge().now().stock().in("L")).isGreaterThan(3);
        assertThat(thin.recharge().now().water().si()).isZero();
        assertThat(thin.notices()).isEmpty();
        VatCorrection close = run.correct(
                3,
                VatReading.couchedSheet(run.couched(3).multiply(1.03), Solids.percent(15)),
                grams(9.7),
                Share.percent(5),
                10,
                Consistency.percent(3),
                Recharge.Level.RISING);
        assertThat(close.notices().get(0).text())
                .isEqualTo("The sheet is 3 % off the calculated weight; single sheets differ by 8 % from"
                        + " hand to hand. Weigh a few before changing the vat.");
        VatCorrection thick = run.correct(
                1,
                VatReading.vatSample(kilograms(1), grams(5.6)),
                grams(9.7),
                Share.percent(5),
                10,
                Consistency.percent(3),
                Recharge.Level.RISING);
        assertThat(thick.recharge().now().water().in("L")).isGreaterThan(5);
        assertThat(thick.toString()).contains("before the first sheet: add").contains("of water");
        double vat = run.consistency(4).in("%");
        VatCorrection leaky = run.correct(
                3,
                VatReading.whiteWater(kilograms(1), grams(vat * 10 * 0.1)),
                grams(9.7),
                Share.percent(5),
                10,
                Consistency.percent(3),
                Recharge.Level.RISING);
        assertThat(leaky.stands().pull(10, leaky.recharge()).lastWithin(grams(9.7), Share.percent(5)))
                .isEqualTo(10);
        assertThatThrownBy(() -> run.correct(
                        3,
                        VatReading.whiteWater(kilograms(1), grams(6)),
                        grams(9.7),
                        Share.percent(5),
                        10,
                        Consistency.percent(3),
                        Recharge.Level.RISING))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("not thinner than the vat at");
    }

    @Test
    void aSheetIsDippedPouredOrBuiltUp() {
        assertThat(FormingMethod.dipped()
                        .stockEach(grams(9.7), Consistency.percent(0.5), Share.percent(97))
                        .in("kg"))
                .isCloseTo(2, within(1e-9));
        FormingMethod built = FormingMethod.severalDips(4, Share.percent(30));
        assertThat(built.sheetFibre(kilograms(1), Consistency.percent(0.3), Share.percent(100))
                        .in("g"))
                .isCloseTo(8.4, within(1e-9));
        assertThat(built.stockEach(grams(8.4), Consistency.percent(0.3), Share.percent(100))
                        .in("kg"))
                .isCloseTo(1, within(1e-9));
        assertThat(built.depthEach(Grammage.gsm(30), FibreConcentration.gramsPerLitre(3), Share.percent(100))
                        .in("mm"))
                .isCloseTo(10 / 2.8, within(1e-9));
        assertThat(built).hasToString("4 dips, 30 % of each cast off");
        assertThat(FormingMethod.poured().kind()).isEqualTo(FormingMethod.Kind.POURED);
        assertThat(FormingMethod.couchedTogether(Grammage.gsm(90), Grammage.gsm(60))
                        .in("g/m2"))
                .isCloseTo(150, within(1e-9));
        assertThatThrownBy(() -> FormingMethod.severalDips(0, Share.percent(10)))
                .isInstanceOf(Refused.class)
                .hasMessage("dips of a sheet: 0 given; it must be from 1 to 100.");
        assertThatThrownBy(FormingMethod::couchedTogether)
                .isInstanceOf(Refused.class)
                .hasMessage("layers: none given; at least one is needed.");
    }

    @Test
    void finesGather() {
        WhiteWater water = WhiteWater.of(Share.percent(99.5), Share.percent(50));
        assertThat(water.steadyFines(Share.percent(10)).in("%")).isCloseTo(18.107, within(1e-3));
        assertThat(water.sheetsToSettle(kilograms(80), kilograms(2)).value().si())
                .isCloseTo(80, within(1e-9));
        assertThat(water.sheetsToSettle(kilograms(80), kilograms(2))
                        .notices()
                        .get(0)
                        .text())
                .startsWith("The first 80 sheets");
        assertThat(water.sheetsTo(Share.percent(95)).si()).isCloseTo(4.322, within(1e-3));
        assertThat(WhiteWater.of(Share.percent(99), Share.percent(35))
                        .sheetsTo(Share.percent(95))
                        .si())
                .isCloseTo(6.954, within(1e-3));
        assertThat(WhiteWater.of(Share.percent(99), Share.percent(100))
                        .sheetsTo(Share.percent(95))
                        .si())
                .isZero();
        assertThat(WhiteWater.consistency(Consistency.percent(0.5), Share.percent(96))
                        .in("%"))
                .isCloseTo(0.02, within(1e-12));
        assertThat(WhiteWater.lost(litres(300), FibreConcentration.gramsPerLitre(0.2))
                        .in("g"))
                .isCloseTo(60, within(1e-9));
        assertThat(WhiteWater.freshWater(litres(620), kilograms(3.1)).value().in("L/kg"))
                .isCloseTo(200, within(1e-9));
        assertThat(WhiteWater.freshWater(litres(620), kilograms(3.1)).notices()).isEmpty();
        WhiteWater helped = WhiteWater.from(Assumptions.standard(), Scope.GENERAL.on("with aid"));
        assertThat(helped.steadyFines(Share.percent(10)).si())
                .isLessThan(WhiteWater.standard().steadyFines(Share.percent(10)).si());
    }

    @Test
    void aVatThatRisesIsTold() {
        VatCharge charge = VatCharge.of(
                Pulp.ofVolume(litres(60), Consistency.percent(0.6)),
                kilograms(1.2),
                Share.percent(97),
                Solids.percent(15));
        Recharge table = Recharge.within(
                charge, charge.firstSheet(), Share.percent(5), 60, Consistency.percent(2.5), Recharge.Level.RISING);
        VatRun run = charge.pull(60, table);
        assertThat(run.notices(Vat.of("tub", litres(90))))
                .extracting(notice -> notice.code())
                .containsExactly("vat.rises");
        assertThat(run.notices(Vat.of("tub", litres(62))))
                .extracting(notice -> notice.code())
                .containsExactly("vat.above-mark");
        assertThat(run.notices(Vat.of("tub", litres(62))).get(0).text())
                .contains("thinner than the sheets that leave at 15 %", "above the 62 L of tub");
        assertThat(charge.pull(20).notices(Vat.of("tub", litres(62)))).isEmpty();
    }

    /** The plain law 1 - k/V gives -12.6 % after five sheets; water goes with the sheets, so it is a little less. */
    @Test
    void theDriftHasTheBandOfWhatIsAssumed() {
        Pulp pulp = Pulp.ofVolume(litres(45), Consistency.percent(0.6));
        VatRun run = VatCharge.from(Assumptions.standard(), Scope.GENERAL, pulp, kilograms(1.2))
                .pull(11);
        Estimate<Dimensionless> sixth = run.forecastChange(6);
        assertThat(sixth.likely().si()).isEqualTo(run.change(6).si());
        assertThat(sixth.low().si()).isLessThan(sixth.likely().si()).isGreaterThan(-0.126);
        assertThat(sixth.high().si()).isGreaterThan(sixth.likely().si());
        assertThat(run.forecastChange(1).high().si()).isZero();
        VatRun settled = VatCharge.of(pulp, kilograms(1.2), Share.percent(100), Solids.percent(100))
                .pull(11);
        assertThat(settled.forecastChange(6).low().si())
                .isEqualTo(settled.change(6).si());
        assertThat(settled.forecastChange(6).likely().in("%")).isCloseTo(-12.6, within(0.03));
    }
}
