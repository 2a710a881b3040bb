package org.papermath.vat;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.papermath.quantity.Amounts.grams;
import static org.papermath.quantity.Amounts.kilograms;
import static org.papermath.quantity.Amounts.litres;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.papermath.pulp.Additive;
import org.papermath.pulp.AdditiveDose;
import org.papermath.pulp.Pulp;
import org.papermath.quantity.Consistency;
import org.papermath.quantity.Dose;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Share;
import org.papermath.quantity.Solids;

/** Consistencies and counts that a vat is solved for. */
class VatInversesTest {
    @Property(tries = 100, seed = "99")
    void theVatAtTheConsistencyGivesTheSheet(
            @ForAll @DoubleRange(min = 1, max = 60) double sheet,
            @ForAll @DoubleRange(min = 1, max = 9) double lift,
            @ForAll @DoubleRange(min = 50, max = 100) double kept) {
        VatCharge vat = VatCharge.of(
                Pulp.ofVolume(litres(80), VatCharge.consistencyFor(grams(sheet), kilograms(lift), Share.percent(kept))),
                kilograms(lift),
                Share.percent(kept),
                Solids.percent(15));
        assertThat(vat.firstSheet().in("g") / sheet - 1).isBetween(-1e-12, 1e-12);
    }

    @Test
    void severalDipsWithSomeCastOffNeedLessEach() {
        FormingMethod three = FormingMethod.severalDips(3, Share.percent(20));
        assertThat(three.consistencyFor(grams(12), kilograms(2), Share.percent(95))
                        .si())
                .isCloseTo(0.012 / (3 * 0.8 * 0.95 * 2), Offset.offset(1e-15));
        assertThat(three.sheetFibre(
                                kilograms(2),
                                three.consistencyFor(grams(12), kilograms(2), Share.percent(95)),
                                Share.percent(95))
                        .in("g"))
                .isCloseTo(12, Offset.offset(1e-12));
    }

    @Test
    void moreFibreThanStockIsRefused() {
        assertThatThrownBy(() -> VatCharge.consistencyFor(kilograms(5), kilograms(4), Share.percent(97)))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("no more than 3880 g could stay");
    }

    @Property(tries = 60, seed = "100")
    void sheetsWithinIsWhatARunShows(
            @ForAll @DoubleRange(min = 20, max = 200) double volume,
            @ForAll @DoubleRange(min = 0.5, max = 6) double lift,
            @ForAll @DoubleRange(min = 1, max = 30) double tolerance,
            @ForAll @IntRange(min = 0, max = 1) int filled) {
        VatCharge plain = VatCharge.of(
                Pulp.ofVolume(litres(volume), Consistency.percent(0.6)),
                kilograms(lift),
                Share.percent(96),
                Solids.percent(14));
        VatCharge vat = filled == 0
                ? plain
                : plain.carrying(
                        AdditiveDose.of(Additive.of("chalk", Additive.Purpose.CARBONATE), Dose.percent(8)),
                        Share.percent(60));
        int count = vat.sheetsWithin(vat.firstSheet(), Share.percent(tolerance));
        if (count > 0) {
            assertThat(vat.pull(count).lastWithin(vat.firstSheet(), Share.percent(tolerance)))
                    .isEqualTo(count);
        }
        try {
            assertThat(vat.pull(count + 1).lastWithin(vat.firstSheet(), Share.percent(tolerance)))
                    .isEqualTo(count);
        } catch (Refused dry) {
            assertThat(dry.code()).isEqualTo("vat.runs-dry");
        }
    }

    @Test
    void aVatRunsOutOfToleranceOrDry() {
        VatCharge vat = VatCharge.of(
                Pulp.ofVolume(litres(60), Consistency.percent(0.6)),
                kilograms(3),
                Share.percent(97),
                Solids.percent(12));
        // Each sheet takes 0.97 × 3/60 = 4.85 % of the fibre: 1, 0.951, 0.905, 0.861 of the first.
        assertThat(vat.sheetsWithin(vat.firstSheet(), Share.percent(10))).isEqualTo(3);
        assertThat(vat.sheetsWithin(vat.firstSheet(), Share.percent(4))).isEqualTo(1);
        assertThat(vat.sheetsWithin(Kinds.MASS.ofSi(2 * vat.firstSheet().si()), Share.percent(10)))
                .isZero();
        // (1 - 0.0485 …)^n falls below a tenth after some 47 sheets; the water couched with them makes it a few more or
        // less.
        assertThat(vat.sheetsWithin(vat.firstSheet(), Share.percent(90))).isBetween(40, 60);
        // Of less and less fibre less and less is taken, and less water with it: it never ends.
        assertThatThrownBy(() -> vat.sheetsWithin(vat.firstSheet(), Share.percent(100)))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("do not bring this vat out of it");
    }
}
