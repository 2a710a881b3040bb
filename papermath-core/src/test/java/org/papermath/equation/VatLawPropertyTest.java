package org.papermath.equation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.papermath.testing.CheckValues.relative;

import java.util.Arrays;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;
import org.papermath.equation.VatBalance.Contents;

class VatLawPropertyTest {
    /** Sheets pulled one by one, each a part of what is left, against the closed forms. */
    @Property(seed = "2027")
    void theMostSheetsOfABandAreWithinItAndOneMoreIsNot(
            @ForAll @Scale(9) @DoubleRange(min = 20, max = 400) double full,
            @ForAll @Scale(9) @DoubleRange(min = 0.001, max = 0.2) double part,
            @ForAll @Scale(9) @DoubleRange(min = 0.5, max = 1) double retention,
            @ForAll @Scale(9) @DoubleRange(min = 0.005, max = 0.3) double band) {
        VatLaw law = new VatLaw(full, retention, part * full);
        int count = law.sheetsInBand(band, 10_000);
        assertThat(widest(law, count)).isLessThanOrEqualTo(count == 1 ? 1e-12 : band + 2e-9);
        assertThat(widest(law, count + 1)).isGreaterThan(band - 2e-9);
        // One dip too many for the vat: exactly where a second sheet leaves the band.
        assertThat(count == 1).isEqualTo(full < law.leastFull(band) * (1 - 1e-9));
    }

    /** The greatest distance of a sheet from the mean of so many, as a fraction of the mean. */
    private static double widest(VatLaw law, int count) {
        double[] sheets = new double[count];
        double fibre = 1;
        for (int i = 0; i < count; i++) {
            sheets[i] = law.retention() * law.lifted() / law.full() * fibre;
            fibre -= sheets[i];
        }
        double mean = Arrays.stream(sheets).average().orElseThrow();
        assertThat(law.firstOverMean(count)).isCloseTo(sheets[0] / mean, relative(1, 1e-9));
        return Math.max(sheets[0] / mean - 1, 1 - sheets[count - 1] / mean);
    }

    /** Bail, give the stock, fill to the mark: the vat holds what was wanted. */
    @Property(seed = "2027")
    void theStockGivesTheFibreWantedAtTheMark(
            @ForAll @Scale(9) @DoubleRange(min = 0.3, max = 1) double level,
            @ForAll @Scale(9) @DoubleRange(min = 0.5, max = 1) double thinned,
            @ForAll @Scale(9) @DoubleRange(min = 0.01, max = 0.2) double fresh,
            @ForAll @Scale(9) @DoubleRange(min = 0, max = 1) double kept) {
        double full = 80;
        double wanted = 0.005 * full;
        VatLaw law = new VatLaw(full, 0.97, 2);
        Contents now = new Contents(0.005 * thinned * level * full, level * full);
        double stock = law.stockFor(now, wanted, fresh, kept);
        double bailed = Math.max(0, now.stock() + stock - full);
        double fibre = now.fibre() - bailed * now.consistency() * (1 - kept) + stock * fresh;
        assertThat(fibre).isCloseTo(wanted, relative(wanted, 1e-12));
    }
}
