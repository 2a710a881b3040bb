package org.papermath.equation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;
import org.papermath.quantity.Amount;
import org.papermath.quantity.AreaShrinkage;
import org.papermath.quantity.LinearShrinkage;

class ShrinkagePropertyTest {
    @Property(seed = "2026")
    void fullRestraintKeepsTheSize(
            @ForAll @Scale(6) @DoubleRange(min = 0, max = 0.35) double free,
            @ForAll @Scale(6) @DoubleRange(min = 0.5, max = 1) double onset,
            @ForAll @Scale(6) @DoubleRange(min = 0.1, max = 6) double start) {
        double held = Shrinkage.alongPath(free, onset, start, new double[] {0.05, 0.02}, new double[] {1, 1});
        assertThat(held).isZero();
        assertThat(Shrinkage.wetLength(0.3, held)).isEqualTo(0.3);
    }

    @Property(seed = "2026")
    void aPathIsTheSumOfItsPartsWhereverItIsCut(
            @ForAll @Scale(6) @DoubleRange(min = 0, max = 0.35) double free,
            @ForAll @Scale(6) @DoubleRange(min = 0, max = 1) double restraint,
            @ForAll @Scale(6) @DoubleRange(min = 0.1, max = 4) double cut) {
        double whole = Shrinkage.step(free, 0.8, 4, 0.07, restraint);
        double parts = Shrinkage.alongPath(free, 0.8, 4, new double[] {cut, 0.07}, new double[] {restraint, restraint});
        assertThat(parts).isCloseTo(whole, within(1e-12)).isBetween(-1e-12, free);
        double unrestrained = Shrinkage.step(free, 0.8, 4, 0.065, 0);
        assertThat(unrestrained).isCloseTo(0.91875 * free, within(1e-12));
        assertThat(Shrinkage.wholeFree(unrestrained, 0.8, 0.065)).isCloseTo(free, within(1e-12));
    }

    @Property(seed = "2026")
    void lengthsAreasAndGrammagesGoThereAndBack(
            @ForAll @Scale(6) @DoubleRange(min = 0, max = 0.4) double along,
            @ForAll @Scale(6) @DoubleRange(min = 0, max = 0.4) double across) {
        Amount<AreaShrinkage> lost = org.papermath.shape.Shrinkage.across(LinearShrinkage.fraction(across))
                .along(LinearShrinkage.fraction(along))
                .area();
        org.papermath.shape.Shrinkage even = org.papermath.shape.Shrinkage.ofArea(lost);
        assertThat(even.along().si())
                .isBetween(Math.min(along, across) - 1e-12, Math.max(along, across) + 1e-12)
                .isEqualTo(even.across().si());
        assertThat(even.area().si()).isCloseTo(lost.si(), within(1e-12));
        assertThat(Shrinkage.dryLength(Shrinkage.wetLength(0.21, along), along)).isCloseTo(0.21, within(1e-12));
        assertThat(Shrinkage.dryLength(1, along) * (1 + Shrinkage.undoingStretch(along)))
                .isCloseTo(1, within(1e-12));
        // No fibre is lost: grammage times area stays.
        assertThat(Shrinkage.formedGrammage(0.12, 0.07, along, across))
                .isCloseTo(0.12 / 1.07 * (1 - lost.si()), within(1e-12));
    }

    @Example
    void theEnds() {
        assertThat(Shrinkage.freeByRetention(0.5, 0.065, 0.65, 0, 0.35)).isZero();
        assertThat(Shrinkage.freeByRetention(9, 0.065, 0.65, 0, 0.35)).isEqualTo(0.35);
        assertThat(Shrinkage.share(2, 0.8)).isZero();
        assertThat(Shrinkage.share(0, 0.8)).isEqualTo(1);
    }
}
