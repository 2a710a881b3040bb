package org.papermath.vat;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.papermath.testing.CheckValues.relative;

import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.Assume;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Scale;
import org.papermath.pulp.Additive;
import org.papermath.pulp.AdditiveDose;
import org.papermath.pulp.Pulp;
import org.papermath.quantity.Amounts;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;

class VatRunPropertyTest {
    private static VatCharge charge(double litres, double percent, double lift, double retention, double couched) {
        Pulp pulp = Pulp.ofVolume(Amounts.litres(litres), Kinds.CONSISTENCY.of(percent, "%"));
        return VatCharge.of(pulp, Kinds.MASS.ofSi(lift), Kinds.SHARE.of(retention, "1"), Kinds.SOLIDS.of(couched, "1"));
    }

    /**
     * Fibre, water and an additive in three accounts of their own, each sheet taken by hand: the same sheets, and
     * nothing lost.
     */
    @Property(tries = 300, seed = "2026")
    void everySheetAgreesWithThreeAccounts(
            @ForAll @IntRange(min = 1, max = 200) int count,
            @ForAll @Scale(6) @DoubleRange(min = 30, max = 400) double litres,
            @ForAll @Scale(6) @DoubleRange(min = 0.2, max = 1.5) double percent,
            @ForAll @Scale(6) @DoubleRange(min = 0.002, max = 0.02) double part,
            @ForAll @Scale(6) @DoubleRange(min = 0.5, max = 1) double retention,
            @ForAll @Scale(6) @DoubleRange(min = 0.08, max = 0.3) double couched,
            @ForAll @IntRange(min = 1, max = 30) int every,
            @ForAll @Scale(6) @DoubleRange(min = 0.1, max = 2) double added,
            @ForAll @Scale(6) @DoubleRange(min = 0, max = 0.4) double dose,
            @ForAll @Scale(6) @DoubleRange(min = 0, max = 1) double kept) {
        VatCharge charge = charge(litres, percent, part * litres, retention, couched)
                .carrying(
                        AdditiveDose.of(Additive.of("ochre", Additive.Purpose.PIGMENT), Kinds.DOSE.of(dose, "1")),
                        Kinds.SHARE.of(kept, "1"));
        Pulp fresh = Pulp.ofOvenDry(Kinds.MASS.ofSi(added * 0.03)).inWater(Kinds.MASS.ofSi(added * 0.97));
        VatRun run = charge.pull(count, Recharge.every(every, fresh, count));

        double fibre = charge.fibre().si();
        double ochre = dose * fibre;
        double water = charge.stock().si() - fibre - ochre;
        double in = fibre;
        double out = 0;
        double inOchre = ochre;
        double outOchre = 0;
        double inWater = water;
        double outWater = 0;
        for (int i = 0; i < count; i++) {
            if (i > 0 && i % every == 0) {
                fibre += added * 0.03;
                in += added * 0.03;
                ochre += dose * added * 0.03;
                inOchre += dose * added * 0.03;
                // The stock given counts its ochre, as its mass on the scale does.
                water += added * 0.97 - dose * added * 0.03;
                inWater += added * 0.97 - dose * added * 0.03;
            }
            double stock = fibre + water + ochre;
            double sheet = retention * part * litres * fibre / stock;
            double tint = kept * part * litres * ochre / stock;
            assertThat(run.fibre(i + 1).si()).isCloseTo(sheet, relative(sheet, 1e-12 * (i + 2)));
            assertThat(run.additive(0, i + 1).si()).isCloseTo(tint, relative(tint, 1e-11 * (i + 2)));
            fibre -= sheet;
            ochre -= tint;
            out += sheet;
            outOchre += tint;
            double wet = (sheet + tint) / couched - sheet - tint;
            water -= wet;
            outWater += wet;
        }
        double total = run.fibreKilograms().sum();
        assertThat(total).isCloseTo(out, relative(out, 1e-12 * (count + 2)));
        assertThat(total + run.left().ovenDry().si()).isCloseTo(in, relative(in, 1e-12));
        assertThat(outOchre + run.additiveLeft(0).si()).isCloseTo(inOchre, relative(inOchre + 1e-12, 1e-11));
        assertThat(outWater + run.left().water().si()).isCloseTo(inWater, relative(inWater, 1e-12 * (count + 2)));
    }

    /** Wherever a table is given no sheet leaves the band; where none is, the least vat named in the refusal does. */
    @Property(tries = 300, seed = "2026")
    void rechargesKeepTheBand(
            @ForAll @IntRange(min = 2, max = 150) int count,
            @ForAll @Scale(6) @DoubleRange(min = 10, max = 300) double litres,
            @ForAll @Scale(6) @DoubleRange(min = 0.2, max = 1.2) double percent,
            @ForAll @Scale(6) @DoubleRange(min = 0.3, max = 3) double lift,
            @ForAll @Scale(6) @DoubleRange(min = 0.8, max = 1) double retention,
            @ForAll @Scale(6) @DoubleRange(min = 0.02, max = 0.15) double tolerance,
            @ForAll @Scale(6) @DoubleRange(min = 1.8, max = 12) double stock,
            @ForAll @Scale(6) @DoubleRange(min = 0.9, max = 1.1) double off,
            @ForAll Recharge.Level level) {
        VatCharge charge = charge(litres, percent, lift, retention, 0.15);
        double target = charge.firstSheet().si() * off;
        Recharge table;
        try {
            table = Recharge.within(
                    charge,
                    Kinds.MASS.ofSi(target),
                    Kinds.SHARE.of(tolerance, "1"),
                    count,
                    Kinds.CONSISTENCY.of(stock, "%"),
                    level);
        } catch (Refused refused) {
            assertThat(refused.code()).isEqualTo("vat.too-small");
            double least = Kinds.VOLUME
                            .read(((String) refused.arguments().get("least")).replace("m³", "m3"))
                            .si()
                    * 1000;
            Recharge enough = Recharge.within(
                    charge(least * 1.01, percent, lift, retention, 0.15),
                    Kinds.MASS.ofSi(target),
                    Kinds.SHARE.of(tolerance, "1"),
                    count,
                    Kinds.CONSISTENCY.of(stock, "%"),
                    level);
            assertThat(enough.every()).isGreaterThanOrEqualTo(1);
            assertThat(litres).isLessThan(least * 1.01);
            return;
        }
        VatRun run = charge.pull(count, table);
        run.fibreKilograms().forEach(sheet -> assertThat(sheet).isCloseTo(target, relative(target, tolerance)));
        if (level == Recharge.Level.HELD) {
            double start = charge.stock().si()
                    + table.now().stock().si() * 1000
                    + table.now().water().si() * 1000;
            assertThat(run.left().mass().si()).isLessThan(start * 1.03);
        }
    }

    /** A vat a tenth too thin or too thick, told by one weighed sheet, gives sheets in the band again. */
    @Property(tries = 300, seed = "2026")
    void oneReadingBringsARunBack(
            @ForAll @IntRange(min = 1, max = 12) int after,
            @ForAll @IntRange(min = 1, max = 60) int further,
            @ForAll @Scale(6) @DoubleRange(min = 45, max = 200) double litres,
            @ForAll @Scale(6) @DoubleRange(min = 0.4, max = 0.8) double percent,
            @ForAll @Scale(6) @DoubleRange(min = 0.5, max = 2) double lift,
            @ForAll boolean thin,
            @ForAll boolean bySheet) {
        double disturbed = percent * (thin ? 0.9 : 1.1);
        VatCharge reckoned = charge(litres, percent, lift, 0.97, 0.15);
        VatCharge real = charge(litres, disturbed, lift, 0.97, 0.15);
        double target = reckoned.firstSheet().si();
        VatRun plan = reckoned.pull(after + further);
        VatRun truth = real.pull(after);
        VatReading reading = bySheet
                ? VatReading.driedSheet(truth.fibre(after), Kinds.MOISTURE.of(0, "%"))
                : VatReading.vatSample(
                        Amounts.kilograms(1),
                        Kinds.MASS.ofSi(truth.left().consistency().si()));
        VatCorrection correction = plan.correct(
                after,
                reading,
                Kinds.MASS.ofSi(target),
                Kinds.SHARE.of(5, "%"),
                further,
                Kinds.CONSISTENCY.of(2.5, "%"),
                Recharge.Level.RISING);
        assertThat(correction.found().in("%")).isCloseTo(thin ? 90 : 110, within(0.5));
        assertThat(correction.stands().consistency().si())
                .isCloseTo(
                        truth.left().consistency().si(),
                        relative(truth.left().consistency().si(), 3e-4));

        VatCharge now =
                VatCharge.of(truth.left(), Kinds.MASS.ofSi(lift), Kinds.SHARE.of(97, "%"), Kinds.SOLIDS.of(15, "%"));
        VatRun mended = now.pull(further, correction.recharge());
        mended.fibreKilograms().forEach(sheet -> assertThat(sheet).isCloseTo(target, relative(target, 0.05)));
    }

    @Property(tries = 200, seed = "2026")
    void thickerStockGivesHeavierSheets(
            @ForAll @Scale(6) @DoubleRange(min = 0.05, max = 2) double percent,
            @ForAll @Scale(6) @DoubleRange(min = 1.001, max = 2) double more) {
        assertThat(charge(60, percent * more, 1, 0.97, 0.15).firstSheet().si())
                .isGreaterThan(charge(60, percent, 1, 0.97, 0.15).firstSheet().si());
    }

    /** Two stocks mixed, or stock given and liquor bailed, leave fibre and level as they were. */
    @Property(tries = 300, seed = "2026")
    void replacingHoldsFibreAndLevel(
            @ForAll @Scale(6) @DoubleRange(min = 0.01, max = 1) double taken,
            @ForAll @Scale(6) @DoubleRange(min = 0.08, max = 0.3) double couched,
            @ForAll @Scale(6) @DoubleRange(min = 0.012, max = 0.5) double stock,
            @ForAll @Scale(6) @DoubleRange(min = 0.002, max = 0.01) double vat) {
        Recharge.Replacement done = Recharge.replacing(Kinds.MASS.ofSi(taken), Kinds.SOLIDS.of(couched, "1"))
                .from(Kinds.CONSISTENCY.of(stock, "1"))
                .into(Kinds.CONSISTENCY.of(vat, "1"));
        double carried = taken / couched;
        assertThat(done.stock().si() + done.water().si() - done.bailed().si())
                .isCloseTo(carried, relative(carried + done.stock().si(), 1e-12));
        assertThat(done.stock().si() * stock - done.bailed().si() * vat).isCloseTo(taken, relative(taken, 1e-9));
        if (stock > couched) {
            Recharge.TwoStocks mixed = Recharge.mixing(
                    Kinds.MASS.ofSi(taken),
                    Kinds.SOLIDS.of(couched, "1"),
                    Kinds.CONSISTENCY.of(stock, "1"),
                    Kinds.CONSISTENCY.of(vat, "1"));
            assertThat(mixed.richer().si() + mixed.poorer().si()).isCloseTo(carried, relative(carried, 1e-12));
            assertThat(mixed.richer().si() * stock + mixed.poorer().si() * vat)
                    .isCloseTo(taken, relative(taken, 1e-11));
        } else {
            Assume.that(stock < couched);
            assertThatThrownBy(() -> Recharge.mixing(
                            Kinds.MASS.ofSi(taken),
                            Kinds.SOLIDS.of(couched, "1"),
                            Kinds.CONSISTENCY.of(stock, "1"),
                            Kinds.CONSISTENCY.of(vat, "1")))
                    .isInstanceOf(Refused.class)
                    .hasMessageContaining("which must lie between the two");
        }
    }

    /** The whole range of what a caller may give: an answer or a named refusal, and never a number that is none. */
    @Property(tries = 300, seed = "2026")
    void answersOrRefuses(
            @ForAll @IntRange(min = 1, max = 300) int count,
            @ForAll @Scale(6) @DoubleRange(min = 0.5, max = 1000) double litres,
            @ForAll @Scale(6) @DoubleRange(min = 0.01, max = 100) double percent,
            @ForAll @Scale(6) @DoubleRange(min = 0.001, max = 50) double lift,
            @ForAll @Scale(6) @DoubleRange(min = 0.001, max = 1) double retention,
            @ForAll @Scale(6) @DoubleRange(min = 0.001, max = 1) double couched,
            @ForAll @Scale(6) @DoubleRange(min = 0.01, max = 0.5) double tolerance,
            @ForAll @Scale(6) @DoubleRange(min = 0.01, max = 100) double stock,
            @ForAll Recharge.Level level) {
        List<Double> numbers = new ArrayList<>();
        try {
            VatCharge charge = charge(litres, percent, lift, retention, couched);
            VatRun plain = charge.pull(count);
            numbers.add(plain.levelFall().si());
            plain.fibreKilograms().forEach(numbers::add);
            Recharge table = Recharge.within(
                    charge,
                    charge.firstSheet(),
                    Kinds.SHARE.of(tolerance, "1"),
                    count,
                    Kinds.CONSISTENCY.of(stock, "%"),
                    level);
            VatRun run = charge.pull(count, table);
            run.fibreKilograms().forEach(numbers::add);
            numbers.add(run.left().volume().si());
        } catch (Refused refused) {
            assertThat(refused.code()).isNotEqualTo("quantity.not-a-number");
            assertThat(refused.getMessage()).doesNotContain("NaN").doesNotContain("Infinity");
        }
        assertThat(numbers).allSatisfy(number -> assertThat(number).isFinite().isGreaterThanOrEqualTo(0));
    }
}
