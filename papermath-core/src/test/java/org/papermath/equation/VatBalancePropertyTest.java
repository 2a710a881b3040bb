package org.papermath.equation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.papermath.testing.CheckValues.relative;

import java.util.Arrays;
import java.util.stream.IntStream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Scale;
import org.junit.jupiter.api.Test;
import org.papermath.equation.VatBalance.Contents;
import org.papermath.equation.VatBalance.Recharge;

class VatBalancePropertyTest {
    /**
     * Fibre, water and an additive kept as three separate accounts, sheet by sheet: in = out + left, and the same
     * sheets.
     */
    @Property(seed = "2026")
    void nothingIsLost(
            @ForAll @IntRange(min = 1, max = 400) int count,
            @ForAll @IntRange(min = 0, max = 40) int every,
            @ForAll @Scale(9) @DoubleRange(min = 20, max = 400) double stock,
            @ForAll @Scale(9) @DoubleRange(min = 0.001, max = 0.02) double consistency,
            @ForAll @Scale(9) @DoubleRange(min = 0.001, max = 0.02) double liftedPart,
            @ForAll @Scale(9) @DoubleRange(min = 0.5, max = 1) double retention,
            @ForAll @Scale(9) @DoubleRange(min = 0.08, max = 0.3) double couchSolids,
            @ForAll @Scale(9) @DoubleRange(min = 0, max = 2) double added,
            @ForAll @Scale(9) @DoubleRange(min = 0.01, max = 0.06) double addedConsistency,
            @ForAll @Scale(9) @DoubleRange(min = 0, max = 0.3) double dose,
            @ForAll @Scale(9) @DoubleRange(min = 0, max = 1) double additiveRetention) {
        double lifted = liftedPart * stock;
        double[] sheets = new double[count];
        double[] additive = {dose * consistency * stock};
        double[][] carried = new double[1][count];
        Contents start = new Contents(consistency * stock, stock);
        Recharge recharge = new Recharge(every, added, addedConsistency);
        Contents left = VatBalance.run(
                start,
                lifted,
                retention,
                couchSolids,
                recharge,
                0,
                count,
                sheets,
                additive,
                new double[] {additiveRetention},
                new double[] {dose * addedConsistency},
                carried);

        double fibre = consistency * stock;
        double filler = dose * fibre;
        double water = stock - fibre - filler;
        double fibreIn = fibre;
        double fillerIn = filler;
        double waterIn = water;
        double waterOut = 0;
        for (int i = 0; i < count; i++) {
            if (every > 0 && i > 0 && i % every == 0) {
                double freshFibre = added * addedConsistency;
                double freshFiller = freshFibre * dose;
                double freshWater = added - freshFibre - freshFiller;
                fibre += freshFibre;
                filler += freshFiller;
                water += freshWater;
                fibreIn += freshFibre;
                fillerIn += freshFiller;
                waterIn += freshWater;
            }
            double share = lifted / (fibre + filler + water);
            double sheetFibre = share * fibre * retention;
            double sheetFiller = share * filler * additiveRetention;
            double sheetWater = (sheetFibre + sheetFiller) * (1 - couchSolids) / couchSolids;
            assertThat(sheets[i]).isCloseTo(sheetFibre, relative(sheetFibre, 1e-11));
            assertThat(carried[0][i]).isCloseTo(sheetFiller, relative(sheetFiller, 1e-11));
            fibre -= sheetFibre;
            filler -= sheetFiller;
            water -= sheetWater;
            waterOut += sheetWater;
        }
        double waterLeft = left.stock() - left.fibre() - additive[0];
        assertThat(left.fibre() + Arrays.stream(sheets).sum()).isCloseTo(fibreIn, relative(fibreIn, 1e-12));
        assertThat(additive[0] + Arrays.stream(carried[0]).sum()).isCloseTo(fillerIn, relative(fillerIn, 1e-12));
        assertThat(waterLeft + waterOut).isCloseTo(waterIn, relative(waterIn, 1e-12));
        assertThat(waterLeft).isCloseTo(water, relative(waterIn, 1e-12));
    }

    @Property(seed = "2026")
    void evenRechargesAndStepsAgree(
            @ForAll @IntRange(min = 0, max = 200) int count,
            @ForAll @IntRange(min = 0, max = 30) int every,
            @ForAll @Scale(9) @DoubleRange(min = 0.1, max = 3) double lifted,
            @ForAll @Scale(9) @DoubleRange(min = 0, max = 1) double added) {
        Contents start = new Contents(0.5, 90);
        Recharge recharge = new Recharge(every, added, 0.03);
        VatBalance.Step[] steps = IntStream.range(1, count)
                .filter(sheet -> every > 0 && sheet % every == 0)
                .mapToObj(sheet -> new VatBalance.Step(sheet, 0, added, 0.03, 0))
                .toArray(VatBalance.Step[]::new);
        double[] even = new double[count];
        double[] stepped = new double[count];
        double[] none = {};
        Contents left = run(start, lifted, 0.96, 0.14, recharge, even);
        Contents same = VatBalance.run(
                start, lifted, 0.96, 0.14, steps, stepped, new double[count], none, none, none, new double[0][]);
        assertThat(even).isEqualTo(stepped);
        assertThat(left).isEqualTo(same);
    }

    @Property(seed = "2026")
    void restoringBringsTheConsistencyBack(
            @ForAll @Scale(9) @DoubleRange(min = 0.002, max = 0.01) double wanted,
            @ForAll @Scale(9) @DoubleRange(min = 0.3, max = 1) double part,
            @ForAll @Scale(9) @DoubleRange(min = 0.02, max = 0.06) double fresh) {
        Contents now = new Contents(wanted * part * 60, 60);
        double added = VatBalance.stockToRestore(now, wanted, fresh);
        assertThat(added).isGreaterThanOrEqualTo(-1e-12);
        double back = (now.fibre() + added * fresh) / (now.stock() + added);
        assertThat(back).isCloseTo(wanted, relative(wanted, 1e-12));
    }

    /** A run of fibre alone. */
    private static Contents run(
            Contents start, double lifted, double retention, double couchSolids, Recharge recharge, double[] sheets) {
        double[] none = {};
        return VatBalance.run(
                start,
                lifted,
                retention,
                couchSolids,
                recharge,
                0,
                sheets.length,
                sheets,
                none,
                none,
                none,
                new double[0][]);
    }

    @Test
    void noRechargeAfterTheLastSheet() {
        Contents start = new Contents(0.4, 80);
        double[] four = new double[4];
        double[] eight = new double[8];
        Recharge recharge = new Recharge(4, 1, 0.03);
        Contents afterFour = run(start, 2, 0.97, 0.15, recharge, four);
        assertThat(afterFour).isEqualTo(run(start, 2, 0.97, 0.15, Recharge.NONE, four));
        Contents refilled = new Contents(afterFour.fibre() + 0.03, afterFour.stock() + 1);
        Contents afterEight = run(start, 2, 0.97, 0.15, recharge, eight);
        assertThat(afterEight).isEqualTo(run(refilled, 2, 0.97, 0.15, recharge, four));
    }

    @Test
    void liftMassAndConsistencyComeBack() {
        double sheet = VatBalance.sheetMass(0.97, 0.005, 2);
        assertThat(sheet).isCloseTo(0.0097, relative(0.0097, 1e-12));
        assertThat(VatBalance.liftedOfSheet(sheet, 0.97, 0.005)).isCloseTo(2, relative(2, 1e-12));
        assertThat(VatBalance.consistencyForSheet(sheet, 0.97, 2)).isCloseTo(0.005, relative(0.005, 1e-12));
        double crowd = VatBalance.crowdingNumber(0.004, 3e-3, 0.2e-6);
        assertThat(VatBalance.consistencyForCrowding(crowd, 3e-3, 0.2e-6)).isCloseTo(0.004, relative(0.004, 1e-12));
    }
}
