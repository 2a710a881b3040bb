package org.papermath.format;

import static org.assertj.core.api.Assertions.assertThat;
import static org.papermath.quantity.Amounts.inches;
import static org.papermath.testing.CheckValues.relative;

import java.math.BigDecimal;
import java.math.MathContext;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Scale;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Grammage;

class ReamPropertyTest {
    @Property(tries = 300, seed = "2026")
    void poundsGoToGrammageAndBack(
            @ForAll @Scale(9) @DoubleRange(min = 1, max = 80) double width,
            @ForAll @Scale(9) @DoubleRange(min = 1, max = 120) double length,
            @ForAll @IntRange(min = 1, max = 5000) int count,
            @ForAll @Scale(9) @DoubleRange(min = -9, max = 3) double decade) {
        ReamBasis basis = ReamBasis.of(inches(width), inches(length), count);
        double largest = 20 * width * length * count * 0.0254 * 0.0254 / 0.45359237;
        double pounds = Math.min(Math.pow(10, decade), largest / 2);
        double back = basis.poundsOf(basis.pounds(pounds));
        assertThat(back).isCloseTo(pounds, relative(pounds, 1e-14));
        assertThat(basis.reamMass(basis.pounds(pounds)).in("lb")).isCloseTo(pounds, relative(pounds, 1e-14));
        Amount<Grammage> gsm = basis.pounds(pounds).to("g/m2");
        assertThat(gsm.to(basis.pound()).value()).isCloseTo(pounds, relative(pounds, 1e-14));
    }

    /** Against exact decimal arithmetic. */
    @Property(tries = 300, seed = "2026")
    void factorAgreesWithExactArithmetic(
            @ForAll @IntRange(min = 4, max = 320) int widthQuarters,
            @ForAll @IntRange(min = 4, max = 480) int lengthQuarters,
            @ForAll @IntRange(min = 1, max = 5000) int count) {
        ReamBasis basis = ReamBasis.of(inches(widthQuarters / 4.0), inches(lengthQuarters / 4.0), count);
        BigDecimal area = new BigDecimal(widthQuarters)
                .multiply(new BigDecimal(lengthQuarters))
                .divide(new BigDecimal(16))
                .multiply(new BigDecimal("0.00064516"))
                .multiply(new BigDecimal(count));
        double exact =
                new BigDecimal("453.59237").divide(area, MathContext.DECIMAL128).doubleValue();
        double pounds = exact > 10000 ? 0.01 : 1;
        assertThat(basis.pounds(pounds).in("g/m2")).isCloseTo(pounds * exact, relative(pounds * exact, 4e-15));
    }

    @Property(tries = 200, seed = "2026")
    void equalSubstanceIsEqualGrammage(
            @ForAll @Scale(9) @DoubleRange(min = 5, max = 60) double width,
            @ForAll @Scale(9) @DoubleRange(min = 5, max = 60) double length,
            @ForAll @IntRange(min = 400, max = 600) int count,
            @ForAll @Scale(9) @DoubleRange(min = 1, max = 50) double pounds) {
        ReamBasis other = ReamBasis.of(inches(width), inches(length), count);
        double there = ReamBasis.COVER.equalSubstance(pounds, other);
        double grammage = ReamBasis.COVER.pounds(pounds).si();
        assertThat(other.pounds(there).si()).isCloseTo(grammage, relative(grammage, 1e-14));
        assertThat(other.equalSubstance(there, ReamBasis.COVER)).isCloseTo(pounds, relative(pounds, 1e-14));
    }

    @Property(tries = 200, seed = "2026")
    void mommeAndBack(@ForAll @Scale(9) @DoubleRange(min = 0.01, max = 100) double momme) {
        assertThat(Substance.momme(Substance.ofMomme(momme))).isCloseTo(momme, relative(momme, 1e-14));
    }
}
