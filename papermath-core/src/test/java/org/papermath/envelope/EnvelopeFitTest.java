package org.papermath.envelope;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.papermath.quantity.Amounts.mm;
import static org.papermath.quantity.Amounts.percent;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.papermath.format.Formats;
import org.papermath.quantity.LinearShrinkage;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Share;
import org.papermath.shape.MeasuredSize;
import org.papermath.shape.Outline;
import org.papermath.shape.Shrinkage;

class EnvelopeFitTest {
    private static EnvelopeFit fit(double cardDeviation, double envelopeDeviation, double thicknessDeviation) {
        return EnvelopeFit.of(
                        MeasuredSize.of(mm(127), mm(178)).withDeviation(mm(cardDeviation), mm(cardDeviation)), mm(0.55))
                .into(MeasuredSize.of(mm(133), mm(184)).withDeviation(mm(envelopeDeviation), mm(envelopeDeviation)))
                .withThicknessDeviation(mm(thicknessDeviation));
    }

    private static double difference(Random random, double mean, double deviation, double less, double itsDeviation) {
        return mean + deviation * random.nextGaussian() - less - itsDeviation * random.nextGaussian();
    }

    private static double simulated(
            double cardDeviation, double envelopeDeviation, double thicknessDeviation, int pairs) {
        Random random = new Random(20261125);
        int good = 0;
        for (int i = 0; i < pairs; i++) {
            double thickness = 0.55 + thicknessDeviation * random.nextGaussian();
            double across = difference(random, 133, envelopeDeviation, 127, cardDeviation) - thickness;
            double along = difference(random, 184, envelopeDeviation, 178, cardDeviation) - thickness;
            if (across > 0 && along > 0) {
                good++;
            }
        }
        return (double) good / pairs;
    }

    /** A 5 by 7 in card of 0.55 mm in its envelope, against a seeded simulation. */
    @ParameterizedTest
    @CsvSource({"2, 0, 0", "2, 2, 0", "2, 1, 0.5", "3, 2, 2", "0, 3, 3", "0.5, 0, 4"})
    void shareAgreesWithASimulation(double card, double envelope, double thickness) {
        int pairs = 200_000;
        double share = fit(card, envelope, thickness).share().si();
        double deviation = Math.sqrt(share * (1 - share) / pairs);
        assertThat(share).isCloseTo(simulated(card, envelope, thickness, pairs), within(4 * deviation));
    }

    @Test
    void shareOfTheNormalTail() {
        // Play 5.45 mm each way, standard deviation 2 mm: 0.996785 each way.
        EnvelopeFit fit = fit(2, 0, 0);
        assertThat(fit.playAcross().in("mm")).isCloseTo(5.45, within(1e-9));
        assertThat(fit.shareAcross().si()).isCloseTo(0.996785, within(1e-6));
        assertThat(fit.share().si()).isCloseTo(0.996785 * 0.996785, within(2e-6));
        assertThat(fit.shareAlong().si()).isCloseTo(fit.shareAcross().si(), within(1e-15));
    }

    @Test
    void tooTightLengthwise() {
        // Inside 131 by 181, cards 127.4 (1.1) by 178.1 (1.3) mm, 0.9 mm thick: 0.5 and -0.6 mm beyond two deviations.
        EnvelopeFit fit = EnvelopeFit.of(MeasuredSize.of(mm(127.4), mm(178.1)).withDeviation(mm(1.1), mm(1.3)), mm(0.9))
                .into(MeasuredSize.of(mm(131), mm(181)));
        assertThat(fit.playAcross().in("mm") - 2 * 1.1).isCloseTo(0.5, within(1e-9));
        assertThat(fit.playAlong().in("mm") - 2 * 1.3).isCloseTo(-0.6, within(1e-9));
        assertThat(1 - fit.shareAlong().si()).isCloseTo(0.06, within(0.005));
        assertThat(fit.fits()).isTrue();
        assertThat(fit.notices())
                .singleElement()
                .satisfies(n -> assertThat(n.text()).contains("along"));
        assertThat(fit)
                .hasToString(
                        "tight along: 6.2 % of pairs stick; play 2.7 mm across (0.5 mm two deviations off) and 2 mm along"
                                + " (-0.6 mm two deviations off); 93.14 % of random pairs fit");
        assertThat(EnvelopeFit.of(MeasuredSize.of(mm(127.4), mm(178.1)), mm(0.9))
                        .into(MeasuredSize.of(mm(131), mm(181))))
                .hasToString("fits: play 2.7 mm across and 2 mm along; 100 % of random pairs fit");
        assertThat(fit(4, 0, 0).verdict()).startsWith("tight across and along: 17 % of pairs stick; ");
    }

    @ParameterizedTest
    @CsvSource({"2, 0, 0", "2, 2, 0", "2, 1, 0.5", "0, 0, 0.7", "0, 1, 1", "1.5, 0.5, 3"})
    void theClearanceForAShareGivesThatShare(double card, double envelope, double thickness) {
        for (double wanted : new double[] {0.5, 0.9, 0.99, 0.999}) {
            double clearance = fit(card, envelope, thickness)
                    .clearanceFor(Share.percent(100 * wanted))
                    .in("mm");
            EnvelopeFit roomy = EnvelopeFit.of(
                            MeasuredSize.of(mm(127), mm(178)).withDeviation(mm(card), mm(card)), mm(0.55))
                    .into(MeasuredSize.of(mm(127.55 + clearance), mm(178.55 + clearance))
                            .withDeviation(mm(envelope), mm(envelope)))
                    .withThicknessDeviation(mm(thickness));
            assertThat(roomy.share().si()).isCloseTo(wanted, within(1e-9));
        }
    }

    @Test
    void clearanceFor99PerCentOfCardsOf2MillimetreScatter() {
        // Both ways at once: each way the root of 0.99, 2.5747 standard deviations.
        assertThat(fit(2, 0, 0).clearanceFor(Share.percent(99)).in("mm")).isCloseTo(2 * 2.57467, within(1e-3));
        assertThat(fit(0, 0, 0).clearanceFor(Share.percent(99)).in("mm")).isZero();
        assertThatThrownBy(() -> fit(2, 0, 0).clearanceFor(Share.percent(100))).isInstanceOf(Refused.class);
    }

    @Test
    void withoutScatterAPairFitsOrNot() {
        assertThat(fit(0, 0, 0).share().si()).isEqualTo(1);
        EnvelopeFit equal =
                EnvelopeFit.of(MeasuredSize.of(mm(100), mm(150)), mm(0)).into(MeasuredSize.of(mm(100), mm(160)));
        assertThat(equal.fits()).isFalse();
        assertThat(equal.share().si()).isZero();
        assertThat(equal.verdict()).contains("no play").contains("wide");
    }

    @Test
    void scatterOfOneDirectionOnly() {
        EnvelopeFit fit = EnvelopeFit.of(MeasuredSize.of(mm(100), mm(150)).withDeviation(mm(0), mm(1)), mm(0))
                .into(MeasuredSize.of(mm(102), mm(152)))
                .withThicknessDeviation(mm(1));
        // Thickness alone decides across; along both. Against a direct sum over the thickness.
        double sum = 0;
        int n = 400_000;
        for (int i = 0; i < n; i++) {
            double z = -8 + (10.0 * (i + 0.5)) / n;
            double density = Math.exp(-z * z / 2) / Math.sqrt(2 * Math.PI);
            sum += density
                    * org.apache.commons.statistics.distribution.NormalDistribution.of(0, 1)
                            .cumulativeProbability(2 - z)
                    * 10.0
                    / n;
        }
        assertThat(fit.share().si()).isCloseTo(sum, within(1e-9));
    }

    @Test
    void isoCardInNorthAmericanEnvelope() {
        String loose = EnvelopeFit.verdict(Formats.ISO_A6, Formats.NA_A6_ENVELOPE, mm(0), mm(12.7));
        assertThat(loose)
                .contains("fits")
                .contains("15.65 mm across")
                .contains("17.1 mm along")
                .endsWith("loose");
    }

    @Test
    void northAmericanCardInIsoEnvelope() {
        String tight = EnvelopeFit.verdict(Formats.NA_A6_CARD, Formats.ISO_C6, mm(1), mm(12.7));
        assertThat(tight)
                .contains("does not fit: 0.3 mm too wide")
                .contains("by the outside size already")
                .contains("inside, 1 mm smaller each way")
                .contains("1.3 mm too wide");
        assertThat(EnvelopeFit.verdict(Formats.ISO_B6, Formats.find("ISO B6 envelope"), mm(0), mm(12.7)))
                .contains("no play");
        assertThat(EnvelopeFit.verdict(
                        Formats.find("NA A2 card, 4 1/4 x 5 1/2 in"), Formats.NA_A2_ENVELOPE, mm(4), mm(12.7)))
                .contains("but not by the inside")
                .contains("0.825 mm too wide");
        assertThatThrownBy(() -> EnvelopeFit.verdict(Formats.ISO_A6, Formats.ISO_A5, mm(0), mm(12)))
                .isInstanceOf(Refused.class);
    }

    @Test
    void meanAndScatterOfMeasuredPieces() {
        MeasuredSize size = MeasuredSize.ofPieces(List.of(
                Outline.Point.of(mm(100), mm(150)),
                Outline.Point.of(mm(102), mm(153)),
                Outline.Point.of(mm(104), mm(150))));
        assertThat(size.width().in("mm")).isCloseTo(102, within(1e-12));
        assertThat(size.widthDeviation().in("mm")).isCloseTo(2, within(1e-12));
        assertThat(size.heightDeviation().in("mm")).isCloseTo(Math.sqrt(3), within(1e-12));
        assertThatThrownBy(() -> MeasuredSize.ofPieces(List.of(Outline.Point.of(mm(1), mm(1)))))
                .isInstanceOf(Refused.class);
    }

    @Test
    void sizesFromTwoLists() {
        MeasuredSize size =
                MeasuredSize.ofPieces(List.of(mm(100), mm(102), mm(104)), List.of(mm(150), mm(153), mm(150)));
        assertThat(size.widthDeviation().in("mm")).isCloseTo(2, within(1e-12));
        assertThat(size.heightDeviation().in("mm")).isCloseTo(Math.sqrt(3), within(1e-12));
        assertThatThrownBy(() -> MeasuredSize.ofPieces(List.of(mm(100), mm(102)), List.of(mm(150))))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("2 widths and 1 heights");
    }

    /** 130 by 190 mm openings that lose 4 and 2 %, half a point either way from sheet to sheet. */
    @Test
    void sizesOfSheetsWhoseShrinkageScatters() {
        MeasuredSize size = MeasuredSize.dried(
                mm(130),
                mm(190),
                Shrinkage.across(percent(4)).along(percent(2)),
                LinearShrinkage.percent(0.5),
                LinearShrinkage.percent(0.4));
        assertThat(size.width().in("mm")).isCloseTo(124.8, within(1e-9));
        assertThat(size.height().in("mm")).isCloseTo(186.2, within(1e-9));
        assertThat(size.widthDeviation().in("mm")).isCloseTo(0.52, within(1e-9));
        assertThat(size.heightDeviation().in("mm")).isCloseTo(0.95, within(1e-9));
        assertThatThrownBy(() -> MeasuredSize.dried(
                        mm(130), mm(190), Shrinkage.NONE, LinearShrinkage.percent(-1), LinearShrinkage.percent(1)))
                .isInstanceOf(Refused.class);
    }

    @Test
    void looseOrNot() {
        assertThat(fit(0, 0, 0).isLoose(mm(5.45))).isFalse();
        assertThat(fit(0, 0, 0).isLoose(mm(5.4))).isTrue();
        assertThat(fit(2, 0, 0))
                .asString()
                .startsWith("fits: play 5.45 mm across")
                .contains("99.36 %");
    }
}
