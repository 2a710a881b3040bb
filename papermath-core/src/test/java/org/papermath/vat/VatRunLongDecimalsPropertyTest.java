package org.papermath.vat;

import static org.assertj.core.api.Assertions.assertThat;
import static org.papermath.testing.CheckValues.relative;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.HashMap;
import java.util.Map;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Scale;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Scope;
import org.papermath.pulp.Additive;
import org.papermath.pulp.AdditiveDose;
import org.papermath.pulp.Pulp;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;

/** A run against mass accounts kept sheet by sheet in forty decimal digits. */
class VatRunLongDecimalsPropertyTest {
    private static final MathContext DIGITS = new MathContext(40);

    private static BigDecimal of(double value) {
        return new BigDecimal(value);
    }

    private static BigDecimal times(BigDecimal... factors) {
        BigDecimal product = BigDecimal.ONE;
        for (BigDecimal factor : factors) {
            product = product.multiply(factor, DIGITS);
        }
        return product;
    }

    private static void same(double found, BigDecimal expected) {
        double value = expected.doubleValue();
        assertThat(found).isCloseTo(value, relative(value, 1e-12));
    }

    @Property(tries = 150, seed = "2026")
    void everySheetAndEveryAccountToTwelveDigits(
            @ForAll @IntRange(min = 1, max = 120) int count,
            @ForAll @Scale(6) @DoubleRange(min = 30, max = 400) double kilograms,
            @ForAll @Scale(6) @DoubleRange(min = 0.2, max = 1.5) double percent,
            @ForAll @Scale(6) @DoubleRange(min = 0.002, max = 0.02) double part,
            @ForAll @Scale(6) @DoubleRange(min = 0.5, max = 1) double retention,
            @ForAll @Scale(6) @DoubleRange(min = 0.08, max = 0.3) double couched,
            @ForAll @IntRange(min = 1, max = 30) int every,
            @ForAll @Scale(6) @DoubleRange(min = 0.1, max = 2) double added,
            @ForAll @Scale(6) @DoubleRange(min = 0.001, max = 0.4) double dose,
            @ForAll @Scale(6) @DoubleRange(min = 0.001, max = 1) double kept) {
        Pulp pulp = Pulp.ofWet(Kinds.MASS.ofSi(kilograms), Kinds.CONSISTENCY.of(percent, "%"));
        VatCharge charge = VatCharge.of(
                        pulp,
                        Kinds.MASS.ofSi(part * kilograms),
                        Kinds.SHARE.of(retention, "1"),
                        Kinds.SOLIDS.of(couched, "1"))
                .carrying(
                        AdditiveDose.of(Additive.of("ochre", Additive.Purpose.PIGMENT), Kinds.DOSE.of(dose, "1")),
                        Kinds.SHARE.of(kept, "1"));
        Pulp fresh = Pulp.ofOvenDry(Kinds.MASS.ofSi(added * 0.03)).inWater(Kinds.MASS.ofSi(added * 0.97));
        VatRun run = charge.pull(count, Recharge.every(every, fresh, count));

        BigDecimal lift = of(charge.lifted().si());
        BigDecimal fibre = of(charge.fibre().si());
        BigDecimal ochre = times(of(dose), fibre);
        BigDecimal water = of(charge.stock().si()).subtract(fibre).subtract(ochre);
        BigDecimal freshFibre = of(fresh.ovenDry().si());
        BigDecimal freshOchre = times(of(dose), freshFibre);
        BigDecimal freshWater = of(fresh.mass().si()).subtract(freshFibre).subtract(freshOchre);
        for (int i = 1; i <= count; i++) {
            if (i > 1 && (i - 1) % every == 0) {
                fibre = fibre.add(freshFibre);
                ochre = ochre.add(freshOchre);
                water = water.add(freshWater);
            }
            BigDecimal stock = fibre.add(water).add(ochre);
            BigDecimal share = lift.divide(stock, DIGITS);
            BigDecimal sheet = times(of(retention), share, fibre);
            BigDecimal tint = times(of(kept), share, ochre);
            same(run.fibre(i).si(), sheet);
            same(run.additive(0, i).si(), tint);
            BigDecimal solids = sheet.add(tint);
            water = water.subtract(solids.divide(of(couched), DIGITS).subtract(solids));
            fibre = fibre.subtract(sheet);
            ochre = ochre.subtract(tint);
        }
        same(run.left().ovenDry().si(), fibre);
        same(run.additiveLeft(0).si(), ochre);
        same(run.left().water().si(), water);
    }

    /** The table of a tolerance is followed as a vatman would, from its printed lines alone. */
    @Property(tries = 150, seed = "2026")
    void followingTheTableByHandGivesTheSameSheets(
            @ForAll @IntRange(min = 2, max = 100) int count,
            @ForAll @Scale(6) @DoubleRange(min = 30, max = 300) double kilograms,
            @ForAll @Scale(6) @DoubleRange(min = 0.2, max = 1.2) double percent,
            @ForAll @Scale(6) @DoubleRange(min = 0.3, max = 2) double lifted,
            @ForAll @Scale(6) @DoubleRange(min = 0.03, max = 0.15) double tolerance,
            @ForAll @Scale(6) @DoubleRange(min = 1.8, max = 12) double stock,
            @ForAll Recharge.Level level) {
        Pulp pulp = Pulp.ofWet(Kinds.MASS.ofSi(kilograms), Kinds.CONSISTENCY.of(percent, "%"));
        VatCharge charge =
                VatCharge.of(pulp, Kinds.MASS.ofSi(lifted), Kinds.SHARE.of(0.97, "1"), Kinds.SOLIDS.of(0.15, "1"));
        Recharge table;
        try {
            table = Recharge.within(
                    charge,
                    charge.firstSheet(),
                    Kinds.SHARE.of(tolerance, "1"),
                    count,
                    Kinds.CONSISTENCY.of(stock, "%"),
                    level);
        } catch (Refused refused) {
            assertThat(refused.code()).isEqualTo("vat.too-small");
            return;
        }
        VatRun run = charge.pull(count, table);
        Map<Integer, Recharge.Line> lines = new HashMap<>();
        table.lines().forEach(line -> lines.put(line.afterSheet(), line));
        lines.put(0, table.now());
        double fibre = charge.fibre().si();
        double mass = charge.stock().si();
        Pulp given = Pulp.ofWet(Kinds.MASS.ofSi(1), Kinds.CONSISTENCY.of(stock, "%"));
        double perLitre = 1 / given.volume().si();
        double waterDensity = Assumptions.standard().si("water.density-in-beater", Scope.GENERAL);
        double target = charge.firstSheet().si();
        for (int i = 1; i <= count; i++) {
            Recharge.Line line = lines.get(i - 1);
            if (line != null) {
                double bailed = line.bailed().si() * waterDensity;
                fibre -= bailed * fibre / mass;
                mass -= bailed;
                fibre += line.stock().si() * perLitre * stock / 100;
                mass += line.stock().si() * perLitre + line.water().si() * waterDensity;
            }
            double sheet = 0.97 * lifted * fibre / mass;
            assertThat(run.fibre(i).si()).isCloseTo(sheet, relative(sheet, 1e-9));
            assertThat(sheet).isCloseTo(target, relative(target, tolerance));
            fibre -= sheet;
            mass -= sheet / 0.15;
        }
    }
}
