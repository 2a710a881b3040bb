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
        double[] before = new double[count];
        Contents left = VatBalance.run(
                start,
                lifted,
                retention,
                couchSolids,
                steps(count, every, added, addedConsistency),
                sheets,
                before,
                additive,
                new double[] {additiveRetention},
                new double[] {dose},
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
            assertThat(before[i]).isCloseTo(share * fibre / lifted, relative(share * fibre / lifted, 1e-11));
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

    /** Fresh stock after every so many sheets, but not after the last of them. */
    private static VatBalance.Step[] steps(int count, int every, double stock, double consistency) {
        return IntStream.range(1, count)
                .filter(sheet -> every > 0 && sheet % every == 0)
                .mapToObj(sheet -> new VatBalance.Step(sheet, 0, stock, consistency, 0))
                .toArray(VatBalance.Step[]::new);
    }

    /** A run of fibre alone. */
    private static Contents run(Contents start, VatBalance.Step[] steps, double[] sheets) {
        double[] none = {};
        return VatBalance.run(
                start, 2, 0.97, 0.15, steps, sheets, new double[sheets.length], none, none, none, new double[0][]);
    }

    @Test
    void aRunGoesOnFromWhatTheOneBeforeHasLeft() {
        Contents start = new Contents(0.4, 80);
        double[] four = new double[4];
        double[] eight = new double[8];
        Contents afterFour = run(start, new VatBalance.Step[0], four);
        // A step after the last sheet is not taken.
        assertThat(run(start, steps(5, 4, 1, 0.03), four)).isEqualTo(afterFour);
        Contents refilled = new Contents(afterFour.fibre() + 0.03, afterFour.stock() + 1);
        Contents afterEight = run(start, steps(8, 4, 1, 0.03), eight);
        assertThat(eight).startsWith(four);
        assertThat(run(refilled, new VatBalance.Step[0], four)).isEqualTo(afterEight);
        assertThat(eight).endsWith(four);
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
