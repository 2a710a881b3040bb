package org.papermath.colour;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.papermath.equation.ColourDifference;
import org.papermath.pulp.AdditiveDose;
import org.papermath.pulp.RetentionModel.Circumstance;
import org.papermath.quantity.Dose;

/** Made-up studios match, make, read, correct and make again: whether what was told holds. */
class StudiosMatchColoursTest {
    private static final int TRIALS = Boolean.getBoolean("papermath.long") ? 2000 : 400;

    /** What came of so many trials. */
    private static final class Outcome {
        private final List<Double> off = new ArrayList<>();
        private final List<Double> corrected = new ArrayList<>();
        private int covered;
        private int coveredAfterTrial;
        private int unreached;
        private double departure;
        private double expected;
        private int mixtures;

        double part(List<Double> of, double share) {
            Collections.sort(of);
            return of.get((int) (share * (of.size() - 1)));
        }
    }

    private static Outcome run(double error, double departure, Wavebands bands, int trials) {
        Random random = new Random(20_261_128);
        Outcome outcome = new Outcome();
        for (int trial = 0; trial < trials; trial++) {
            MadeUpStudio studio = new MadeUpStudio(random, error, departure);
            PigmentedPulp palette = studio.palette(bands, Circumstance.WITH_AID);
            Reflectance target = studio.made(studio.someDoses(), 0.97);
            ColourMatch match = palette.match(target.in(bands));
            outcome.unreached += match.isReached() ? 0 : 1;
            ColourMatch.Proposal best = match.best();
            double making = studio.making();
            double[] given = MadeUpStudio.doses(best.doses());
            Reflectance made = studio.made(given, making);
            double off = made.lab().difference(best.colour().lab());
            outcome.off.add(off);
            outcome.covered += off <= best.colour().nineInTen() ? 1 : 0;
            if (best.doses().size() > 1) {
                outcome.mixtures++;
                outcome.departure += off;
                outcome.expected += best.colour().expectedDifference();
            }
            double[] first = MadeUpStudio.doses(best.beforeTrial());
            ColourMatch.Proposal more = palette.afterTrial(
                            best.beforeTrial(),
                            studio.read(studio.made(first, making)).in(bands))
                    .match(target.in(bands))
                    .best();
            double[] again = MadeUpStudio.doses(more.additions());
            double white = 1 + more.whiteStuff().si();
            for (int p = 0; p < again.length; p++) {
                again[p] = (again[p] + first[p]) / white;
            }
            Lab second = studio.made(again, making).lab();
            outcome.corrected.add(second.difference(target.lab()));
            outcome.coveredAfterTrial +=
                    second.difference(more.colour().lab()) <= more.colour().nineInTen() ? 1 : 0;
        }
        return outcome;
    }

    /** With a retention aid, where mixtures keep to the law. */
    @ParameterizedTest
    @CsvSource({"0.5, 1.5, 1.0", "1.0, 1.7, 1.7"})
    void whereMixturesKeepToTheLaw(double error, double most, double mostAfterTrial) {
        Outcome outcome = run(error, 0, Wavebands.THIRTY_ONE, TRIALS);
        assertThat(outcome.part(outcome.off, 0.95)).isLessThan(most);
        assertThat((double) outcome.covered / TRIALS).isBetween(0.87, 0.93);
        assertThat(outcome.part(outcome.corrected, 0.9)).isLessThan(mostAfterTrial);
        assertThat((double) outcome.coveredAfterTrial / TRIALS).isBetween(0.85, 0.95);
        assertThat(outcome.unreached).isLessThan(TRIALS / 20);
    }

    /** Where they depart from it about as far as 488 published mixtures do: strengths of their own by a third. */
    @Test
    void whereMixturesDepartFromTheLaw() {
        Outcome outcome = run(0.5, 0.42, Wavebands.THIRTY_ONE, 1000);
        assertThat(outcome.departure / outcome.expected).isBetween(0.8, 1.1);
        assertThat((double) outcome.covered / 1000).isBetween(0.87, 0.95);
        assertThat(outcome.part(outcome.corrected, 0.9)).isLessThan(1.5);
        assertThat((double) outcome.coveredAfterTrial / 1000).isBetween(0.85, 0.95);
    }

    /** Three bands, as from a photograph, see less; the band says so. */
    @Test
    void withThreeBands() {
        Outcome outcome = run(0.5, 0.42, Wavebands.THREE, TRIALS / 2);
        assertThat(2.0 * outcome.covered / TRIALS).isBetween(0.87, 0.97);
    }

    /** A ladder made with an aid and sheets made without: what they keep is not known, and the band says so. */
    @Test
    void withoutAnAid() {
        Random random = new Random(7);
        int covered = 0;
        int trials = 300;
        double band = 0;
        for (int trial = 0; trial < trials; trial++) {
            MadeUpStudio studio = new MadeUpStudio(random, 0.5, 0);
            PigmentedPulp palette = studio.palette(Wavebands.THIRTY_ONE, Circumstance.PLAIN);
            double[] doses = studio.someDoses();
            List<AdditiveDose> given = new ArrayList<>();
            for (int p = 0; p < doses.length; p++) {
                if (doses[p] > 0) {
                    given.add(AdditiveDose.of(MadeUpStudio.additive(p), Dose.percent(100 * doses[p])));
                }
            }
            double odds = Math.log(0.45 / 0.55) + 0.38 * random.nextGaussian();
            double keptPlain = 1 / (1 + Math.exp(-odds));
            double oddsWithAid = Math.log(0.95 / 0.05) + 0.5 * random.nextGaussian();
            double keptWithAid = 1 / (1 + Math.exp(-oddsWithAid));
            Reflectance made = studio.made(doses, keptPlain / keptWithAid);
            PredictedColour told = palette.predict(given);
            band += told.nineInTen() / trials;
            covered += made.lab().difference(told.lab()) <= told.nineInTen() ? 1 : 0;
        }
        assertThat((double) covered / trials).isBetween(0.85, 0.95);
        assertThat(band).isGreaterThan(3);
    }

    /** What no pigments can give is said to be out of reach, and no doses come nearer than those that are told. */
    @Test
    void targetsOutsideAreSaidToBeOutside() {
        Random random = new Random(11);
        MadeUpStudio studio = new MadeUpStudio(random, 0.5, 0);
        PigmentedPulp palette = studio.palette(Wavebands.THIRTY_ONE, Circumstance.WITH_AID);
        List<PredictedColour> anyhow = new ArrayList<>();
        for (int i = 0; i < 4000; i++) {
            List<AdditiveDose> doses = new ArrayList<>();
            for (Pigment pigment : palette.pigments()) {
                if (random.nextBoolean()) {
                    double part = Math.pow(random.nextDouble(), 2);
                    doses.add(AdditiveDose.of(
                            pigment.additive(),
                            Dose.percent(100 * part * pigment.strongest().si())));
                }
            }
            anyhow.add(palette.predict(doses));
        }
        for (int i = 0; i < 200; i++) {
            double hue = 2 * Math.PI * i / 200;
            Lab target = Lab.of(20 + random.nextInt(70), 105 * Math.cos(hue), 105 * Math.sin(hue));
            ColourMatch match = palette.match(target);
            assertThat(match.isReached()).isFalse();
            assertThat(match).asString().startsWith("out of reach of 6 pigments, the nearest is ");
            double nearest = anyhow.stream()
                    .mapToDouble(one -> way(target, one.lab()))
                    .min()
                    .orElseThrow();
            assertThat(way(target, match.best().colour().lab())).isLessThan(1.005 * nearest);
        }
    }

    private static double way(Lab from, Lab to) {
        double sum = 0;
        for (double[] axis : ColourDifference.farAxes(from.values())) {
            sum += Math.pow(
                    axis[0] * (to.l() - from.l()) + axis[1] * (to.a() - from.a()) + axis[2] * (to.b() - from.b()), 2);
        }
        return Math.sqrt(sum);
    }

    @Test
    void aMatchOverSixPigmentsIsFewEvaluations() {
        Random random = new Random(3);
        MadeUpStudio studio = new MadeUpStudio(random, 0.5, 0);
        PigmentedPulp palette = studio.palette(Wavebands.THIRTY_ONE, Circumstance.WITH_AID);
        long most = 0;
        for (int i = 0; i < 200; i++) {
            Reflectance target = i % 4 == 0
                    ? Reflectance.of(Wavebands.THIRTY_ONE, unlike(random))
                    : studio.made(studio.someDoses(), 1);
            most = Math.max(most, palette.match(target).evaluations());
        }
        assertThat(most).isBetween(50L, 3000L);
    }

    private static double[] unlike(Random random) {
        double[] values = new double[31];
        for (int i = 0; i < values.length; i++) {
            values[i] = 0.05 + 0.9 * random.nextDouble();
        }
        return values;
    }

    /** Forty mixtures that keep to the law narrow the band of the next. */
    @Test
    void mixturesThatWereReadNarrowTheBand() {
        Random random = new Random(5);
        MadeUpStudio studio = new MadeUpStudio(random, 0.5, 1e-9);
        PigmentedPulp palette = studio.palette(Wavebands.THIRTY_ONE, Circumstance.WITH_AID);
        Map<List<AdditiveDose>, Reflectance> made = new LinkedHashMap<>();
        AdditiveDose ochre = AdditiveDose.of(MadeUpStudio.additive(0), Dose.percent(1));
        for (int i = 1; i <= 40; i++) {
            AdditiveDose blue = AdditiveDose.of(MadeUpStudio.additive(2), Dose.percent(0.05 * i));
            double[] doses = MadeUpStudio.doses(List.of(ochre, blue));
            made.put(List.of(ochre, blue), studio.read(studio.made(doses, 1)));
        }
        AdditiveDose blue = AdditiveDose.of(MadeUpStudio.additive(2), Dose.percent(1.3));
        double before = palette.predict(ochre, blue).nineInTen();
        double after = palette.learned(made).predict(ochre, blue).nineInTen();
        assertThat(after).isLessThan(before / 2);
        assertThat(palette.learned(Map.of()).predict(ochre, blue).nineInTen()).isCloseTo(before, within(1e-9));
    }
}
