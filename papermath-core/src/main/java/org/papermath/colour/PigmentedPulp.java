package org.papermath.colour;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import org.papermath.equation.Additives;
import org.papermath.equation.ColourDifference;
import org.papermath.equation.KubelkaMunk;
import org.papermath.evidence.Assumption;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Notice;
import org.papermath.evidence.Scope;
import org.papermath.evidence.Shape;
import org.papermath.numeric.Normal;
import org.papermath.pulp.Additive;
import org.papermath.pulp.AdditiveDose;
import org.papermath.pulp.RetentionModel;
import org.papermath.pulp.RetentionModel.Circumstance;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.LightScattering;
import org.papermath.quantity.Refused;

/**
 * A pulp and the pigments of a studio: which colour doses give, which doses give a colour, and what a trial swatch changes.
 * Only what the sheet keeps colours it, so doses count by what is retained. Immutable.
 *
 * <p>K/S = (K of the pulp + Σ c K)/(1 + Σ c s), c the load of a pigment on the fibre, K and s its constants over the scattering
 * of the pulp. Holds for sheets or piles that nothing shines through; for others see {@link PredictedColour#over}.
 *
 * @source Kubelka and Munk 1931, for mixtures Duncan 1940; how far mixtures depart from it: 488 published mixtures of two
 *     watercolours, reckoned again here
 */
public final class PigmentedPulp {
    /** A factor of a pigment of its own, beside what all have in common, as a logarithm. */
    private static final double OWN_FACTOR = 0.1;
    /** The same where several are together. */
    private static final double OWN_FACTOR_IN_MIXTURES = 0.4;
    /** Deviation over mean of what is known by its length along one line. */
    private static final double HALF_NORMAL = Math.sqrt(Math.PI / 2);
    /** So many mixtures the table counts for. */
    private static final double LIKE_SO_MANY = 2;

    private final PulpColour pulp;
    private final Assumptions assumptions;
    private final Circumstance circumstance;
    private final List<Pigment> pigments;
    private final @Nullable Trial trial;

    /** What a trial swatch of a batch told: a factor for each pigment, what K/S was off besides, and what it was read of. */
    private record Trial(double[] factors, double[] beyond, double[] amounts, Reflectance read) {}

    private PigmentedPulp(
            PulpColour pulp,
            Assumptions assumptions,
            Circumstance circumstance,
            List<Pigment> pigments,
            @Nullable Trial trial) {
        this.pulp = pulp;
        this.assumptions = assumptions;
        this.circumstance = circumstance;
        this.pigments = List.copyOf(pigments);
        this.trial = trial;
    }

    /**
     * Begins with a pulp.
     *
     * @param pulp its colour without pigment
     * @param assumptions where retention, scatter and the departure of mixtures are looked up
     * @param circumstance what helps to keep the pigment in the sheets
     * @return the pulp, without pigments
     */
    public static PigmentedPulp of(PulpColour pulp, Assumptions assumptions, Circumstance circumstance) {
        Objects.requireNonNull(pulp, "pulp");
        Objects.requireNonNull(assumptions, "assumptions");
        Objects.requireNonNull(circumstance, "circumstance");
        return new PigmentedPulp(pulp, assumptions, circumstance, List.of(), null);
    }

    /**
     * Adds a pigment of the studio.
     *
     * @param pigment as its ladder told it
     * @return this with the pigment
     * @throws Refused if one of the name is there, or it was read in other bands than the pulp
     */
    public PigmentedPulp with(Pigment pigment) {
        Objects.requireNonNull(pigment, "pigment");
        if (pigments.stream()
                .anyMatch(one -> one.additive().name().equals(pigment.additive().name()))) {
            throw Refused.of(
                    "colour.pigment-twice",
                    "pigments: " + pigment.additive().name() + " is there twice.",
                    "pigment",
                    pigment.additive().name());
        }
        if (pigment.absorption().length != pulp.reflectance().bands().count()) {
            throw Refused.of(
                    "colour.other-bands",
                    "pigments: " + pigment.additive().name() + " was read in " + pigment.absorption().length
                            + " bands, the pulp in "
                            + pulp.reflectance().bands().count() + "; read both in the same.",
                    "pigment",
                    pigment.additive().name(),
                    "has",
                    pigment.absorption().length,
                    "wanted",
                    pulp.reflectance().bands().count());
        }
        List<Pigment> more = new ArrayList<>(pigments);
        more.add(pigment);
        return new PigmentedPulp(pulp, assumptions, circumstance, more, null);
    }

    /**
     * Returns the pigments.
     *
     * @return them as they were added
     */
    public List<Pigment> pigments() {
        return pigments;
    }

    /**
     * Returns the pulp.
     *
     * @return its colour without pigment
     */
    public PulpColour pulp() {
        return pulp;
    }

    Assumptions assumptions() {
        return assumptions;
    }

    double reckoned(String id) {
        return assumptions.si(id, Scope.GENERAL);
    }

    static Mixing.Surface surface(Assumptions assumptions) {
        return new Mixing.Surface(
                assumptions.si("colour.outer-surface", Scope.GENERAL),
                assumptions.si("colour.inner-surface", Scope.GENERAL));
    }

    /** Load on the fibre of the sheet for a dose of 1. */
    static double perDose(Assumptions assumptions, Additive additive, Circumstance circumstance) {
        RetentionModel model = RetentionModel.from(assumptions, Scope.GENERAL);
        return Additives.load(
                1, model.additive(additive, circumstance).si(), model.fibre().si());
    }

    double perDose(Pigment pigment) {
        return perDose(assumptions, pigment.additive(), circumstance);
    }

    Mixing mixing() {
        return mixing(this::onThisPulp);
    }

    private Mixing mixing(ToDoubleFunction<Pigment> onThis) {
        Mixing.Surface surface = surface(assumptions);
        double[] values = pulp.reflectance().values();
        double[] ofPulp = new double[values.length];
        Arrays.setAll(ofPulp, i -> surface.ratio(values[i]) + (trial == null ? 0 : trial.beyond[i]));
        List<double[]> absorption = new ArrayList<>();
        double[] scattering = new double[pigments.size()];
        for (int p = 0; p < pigments.size(); p++) {
            double factor = onThis.applyAsDouble(pigments.get(p)) * (trial == null ? 1 : trial.factors[p]);
            absorption.add(Arrays.stream(pigments.get(p).absorption())
                    .map(k -> k * factor)
                    .toArray());
            scattering[p] = pigments.get(p).scatteringRatio() * factor;
        }
        return new Mixing(ofPulp, absorption, scattering, surface);
    }

    /** A pigment's constants are over the scattering of the pulp of its ladder. */
    private double onThisPulp(Pigment pigment) {
        if (pigment.pulp().scattering().isEmpty() || pulp.scattering().isEmpty()) {
            return 1;
        }
        return pigment.pulp().scattering().get().si() / pulp.scattering().get().si();
    }

    double[] loads(List<AdditiveDose> doses) {
        double[] loads = new double[pigments.size()];
        for (AdditiveDose dose : doses) {
            int index = index(dose.additive());
            loads[index] += dose.dose().si() * perDose(pigments.get(index));
        }
        return loads;
    }

    private int index(Additive additive) {
        for (int p = 0; p < pigments.size(); p++) {
            if (pigments.get(p).additive().name().equals(additive.name())) {
                return p;
            }
        }
        throw Refused.of(
                "colour.pigment-unknown",
                "colour: what " + additive.name()
                        + " does to the pulp is not known; make a ladder of swatches of it. Known: "
                        + String.join(
                                ", ",
                                pigments.stream()
                                        .map(one -> one.additive().name())
                                        .toList()) + ".",
                "pigment",
                additive.name());
    }

    /** Doses of loads, without those that are none. */
    List<AdditiveDose> doses(double[] loads) {
        List<AdditiveDose> doses = new ArrayList<>();
        for (int p = 0; p < loads.length; p++) {
            if (loads[p] > 0) {
                doses.add(AdditiveDose.of(
                        pigments.get(p).additive(), Kinds.DOSE.ofSi(loads[p] / perDose(pigments.get(p)), "%")));
            }
        }
        return doses;
    }

    /**
     * Tells the colour that doses give.
     *
     * @param doses of the pigments, on oven-dry fibre
     * @return the colour of the dried sheets, and how far off it may come out
     * @throws Refused if a pigment is not known
     */
    public PredictedColour predict(AdditiveDose... doses) {
        Objects.requireNonNull(doses, "doses");
        return predict(List.of(doses));
    }

    /**
     * Tells the colour that doses give.
     *
     * @param doses of the pigments, on oven-dry fibre
     * @return the colour of the dried sheets, and how far off it may come out
     * @throws Refused if a pigment is not known
     */
    public PredictedColour predict(List<AdditiveDose> doses) {
        Objects.requireNonNull(doses, "doses");
        return predicted(loads(doses), mixing());
    }

    PredictedColour predicted(double[] loads, Mixing mixing) {
        Mixing.Mixed mixed = mixing.at(loads);
        Wavebands bands = pulp.reflectance().bands();
        Reflectance told = Reflectance.unchecked(bands, mixed.values());
        Spread spread = new Spread(mixing, mixed, loads, told);
        return new PredictedColour(told, spread.error(), spread.causes(), notices(loads, bands), scattering(mixed));
    }

    private @Nullable Amount<LightScattering> scattering(Mixing.Mixed mixed) {
        return pulp.scattering()
                .map(known -> Kinds.LIGHT_SCATTERING.ofSi(known.si() * mixed.whole(), "m2/kg"))
                .orElse(null);
    }

    private List<Notice> notices(double[] loads, Wavebands bands) {
        List<Notice> notices = new ArrayList<>();
        int used = 0;
        for (int p = 0; p < loads.length; p++) {
            if (loads[p] > 0) {
                used++;
            }
            if (loads[p] > pigments.get(p).greatest() * (1 + 1e-9)) {
                notices.add(Notice.warning(
                        "colour.beyond-ladder",
                        "The dose of " + pigments.get(p).additive().name() + " is above that of its strongest swatch, "
                                + pigments.get(p).strongest() + "; make a swatch of it before you rely on the colour.",
                        "pigment",
                        pigments.get(p).additive().name(),
                        "strongest",
                        pigments.get(p).strongest().toString()));
            }
        }
        if (bands == Wavebands.THREE && used > 0) {
            notices.add(Notice.note(
                    "colour.metamerism-unseen",
                    "Three bands do not tell whether the colour matches in another light; hold the swatch beside the"
                            + " target by day and under a lamp."));
        }
        return notices;
    }

    /**
     * How far in the mean a mixture leaves the law, by how far its pigments lie apart; never more than the second of them does
     * at all.
     */
    private double departure(Mixing mixing, double[] loads) {
        double[] all = lab(mixing, loads);
        List<double[]> alone = new ArrayList<>();
        double strongest = 0;
        double second = 0;
        for (int p = 0; p < loads.length; p++) {
            if (loads[p] > 0) {
                double[] only = new double[loads.length];
                only[p] = loads[p];
                alone.add(lab(mixing, only));
                double[] without = loads.clone();
                without[p] = 0;
                double does = ColourDifference.of(lab(mixing, without), all);
                second = Math.max(second, Math.min(strongest, does));
                strongest = Math.max(strongest, does);
            }
        }
        if (alone.size() < 2) {
            return 0;
        }
        double apart = 0;
        for (double[] one : alone) {
            for (double[] other : alone) {
                apart = Math.max(apart, ColourDifference.of(one, other));
            }
        }
        return departure(apart, second);
    }

    /** By how far what is mixed lies apart, and how much of the colour the second of it makes. */
    private double departure(double apart, double second) {
        double mean = reckoned("colour.mixture-departure") + reckoned("colour.mixture-departure-by-distance") * apart;
        if (pulp.reflectance().bands() == Wavebands.THREE) {
            mean += reckoned("colour.three-bands");
        }
        return mean == 0 ? 0 : mean * second / Math.hypot(mean, second);
    }

    /**
     * How far in the mean pigments leave what their ladders told on a pulp that is not that of the ladders: as far as mixtures of
     * what lies as far apart as the pulps do; never more than the other colour and the other scattering of the pulp do, nor more
     * than the pigments do.
     */
    private double departureByPulp(Mixing mixing, double[] loads) {
        List<PulpColour> others = IntStream.range(0, loads.length)
                .filter(p -> loads[p] > 0)
                .mapToObj(p -> pigments.get(p).pulp())
                .filter(other -> !other.equals(pulp))
                .toList();
        if (others.isEmpty()) {
            return 0;
        }
        Lab here = pulp.reflectance().lab();
        double apart = others.stream()
                .mapToDouble(other -> here.difference(other.reflectance().lab()))
                .max()
                .orElseThrow();
        double[] pigmented = lab(mixing, loads);
        double shifted = ColourDifference.of(pigmented, lab(mixing(pigment -> 1), loads));
        double does = ColourDifference.of(lab(mixing, new double[loads.length]), pigmented);
        return departure(apart, Math.min(Math.hypot(apart, shifted), does));
    }

    private double[] lab(Mixing mixing, double[] of) {
        return Mixing.lab(
                mixing.at(of).values(),
                StandardObserver.weights(pulp.reflectance().bands(), Illuminant.D65),
                Illuminant.D65);
    }

    /**
     * Learns from mixtures of two or more pigments that were made and read how far they depart from the law here. The table
     * counts as two mixtures beside them.
     *
     * @param made doses and the reading of the dried sheet, one entry for each mixture
     * @return this with the departure of mixtures as it was found
     * @throws Refused if an entry is not of two pigments, one is not known, or a reading has fewer bands than that of the pulp
     */
    public PigmentedPulp learned(Map<List<AdditiveDose>, Reflectance> made) {
        Objects.requireNonNull(made, "made");
        Mixing mixing = mixing();
        double error = reckoned("colour.reading-error");
        double square = LIKE_SO_MANY;
        for (Map.Entry<List<AdditiveDose>, Reflectance> one : made.entrySet()) {
            double[] loads = loads(one.getKey());
            double expected = departure(mixing, loads) * HALF_NORMAL;
            if (expected == 0) {
                throw Refused.of(
                        "colour.no-mixture",
                        "mixture: " + one.getKey() + " is not of two pigments; only mixtures tell how far they depart.",
                        "given",
                        one.getKey().toString());
            }
            double[] told = lab(mixing, loads);
            double off = ColourDifference.of(
                    told, one.getValue().in(pulp.reflectance().bands()).lab().values());
            square += Math.max(0, off * off - error * error) / (expected * expected);
        }
        double factor = Math.sqrt(square / (LIKE_SO_MANY + made.size()));
        Assumptions here = assumptions;
        for (String id :
                List.of("colour.mixture-departure", "colour.mixture-departure-by-distance", "colour.three-bands")) {
            here = here.given(id, Scope.GENERAL, factor * reckoned(id));
        }
        return new PigmentedPulp(pulp, here, circumstance, pigments, trial);
    }

    private Assumption rowOf(Pigment pigment, Circumstance how) {
        return assumptions.get("additive.retention", RetentionModel.scope(pigment.additive(), how));
    }

    /** How far what the sheets keep of a pigment moves from making to making: a standard deviation, as a part of it. */
    private double makingError(Pigment pigment) {
        Assumption row = rowOf(pigment, circumstance);
        return assumptions.makingHalf(row) / Normal.FIVE_PERCENT_POINT * (1 - row.likelySi());
    }

    /** What may move a colour. */
    private final class Spread {
        private final Mixing mixing;
        private final Mixing.Mixed mixed;
        private final double[] loads;
        private final double[][] slopes;
        private final double[] lab;
        private final ColourError whole;
        private final List<PredictedColour.Cause> causes = new ArrayList<>();

        Spread(Mixing mixing, Mixing.Mixed mixed, double[] loads, Reflectance told) {
            this.mixing = mixing;
            this.mixed = mixed;
            this.loads = loads;
            double[][] weights = StandardObserver.weights(told.bands(), Illuminant.D65);
            lab = Mixing.lab(mixed.values(), weights, Illuminant.D65);
            slopes = Mixing.labSlopes(mixed.values(), weights, Illuminant.D65);
            whole = new ColourError(lab);
            if (trial == null) {
                readings();
                retention();
                mixtures(1);
            } else {
                double added = added(trial);
                trialReading(trial);
                ownFactors(trial);
                mixtures(added);
            }
        }

        ColourError error() {
            return whole;
        }

        List<PredictedColour.Cause> causes() {
            return causes.stream()
                    .sorted(Comparator.comparingDouble(PredictedColour.Cause::difference)
                            .reversed())
                    .toList();
        }

        private void because(String what, List<double[]> steps, double loose) {
            ColourError alone = new ColourError(lab);
            for (double[] step : steps) {
                whole.step(step);
                alone.step(step);
            }
            whole.loose(loose);
            alone.loose(loose);
            double difference = Math.sqrt(alone.meanSquare());
            if (difference > 0) {
                causes.add(new PredictedColour.FoundCause(what, difference));
            }
        }

        /** A step of L, a, b for a change of K/S by band. */
        private double[] step(ToDoubleFunction<Integer> change) {
            double[] step = new double[3];
            for (int band = 0; band < mixing.bands(); band++) {
                double off = mixed.slopes()[band] * change.applyAsDouble(band);
                for (int k = 0; k < 3; k++) {
                    step[k] += slopes[k][band] * off;
                }
            }
            return step;
        }

        private double byWrong(int p, Pigment.Wrong wrong, int band) {
            return loads[p]
                    * onThisPulp(pigments.get(p))
                    * (wrong.absorption()[band] - mixed.ratios()[band] * wrong.scattering())
                    / mixed.whole();
        }

        private void readings() {
            Mixing.Surface surface = surface(assumptions);
            double[][] ways = ReadingNoise.of(pulp.reflectance(), reckoned("colour.reading-error"));
            List<double[]> ofPulp = new ArrayList<>();
            for (int way = 0; way < ways.length; way++) {
                int at = way;
                ofPulp.add(step(band -> {
                    double reading = pulp.reflectance().value(band);
                    double off = KubelkaMunk.ratioSlope(surface.under(reading)) * ways[at][band] / mixed.whole();
                    for (int p = 0; p < loads.length; p++) {
                        if (pigments.get(p).pulp().equals(pulp)) {
                            off += byWrong(p, pigments.get(p).wrongWithPulp().get(at), band);
                        }
                    }
                    return off;
                }));
            }
            because("the reading of the pulp", ofPulp, 0);
            for (int p = 0; p < loads.length; p++) {
                if (loads[p] > 0) {
                    int at = p;
                    List<Pigment.Wrong> all = new ArrayList<>(pigments.get(p).wrong());
                    if (!pigments.get(p).pulp().equals(pulp)) {
                        all.addAll(pigments.get(p).wrongWithPulp());
                    }
                    because(
                            "the ladder of " + pigments.get(p).additive().name(),
                            all.stream()
                                    .map(wrong -> step(band -> byWrong(at, wrong, band)))
                                    .toList(),
                            pigments.get(p).lackOfFit());
                }
            }
        }

        /** What the sheets keep, in the making of the ladder and in this one; by the table where the two are not alike. */
        private void retention() {
            double[] relative = new double[loads.length];
            boolean unlike = false;
            for (int p = 0; p < loads.length; p++) {
                Pigment pigment = pigments.get(p);
                double making = makingError(pigment);
                double square = 2 * making * making;
                if (pigment.circumstance() != circumstance) {
                    unlike = true;
                    square += square(relativeBand(rowOf(pigment, circumstance)))
                            + square(relativeBand(rowOf(pigment, pigment.circumstance())));
                }
                relative[p] = Math.sqrt(square);
            }
            double[] step = step(band -> {
                double off = 0;
                for (int p = 0; p < loads.length; p++) {
                    off += loads[p] * relative[p] * mixing.byLoad(mixed, p, band);
                }
                return off;
            });
            because(unlike ? "what the sheets keep of the pigment" : "making to making", List.of(step), 0);
        }

        private double relativeBand(Assumption row) {
            double ends = Shape.LOGIT.scaled(row.highSi()) - Shape.LOGIT.scaled(row.lowSi());
            return ends / (2 * Normal.FIVE_PERCENT_POINT) * (1 - row.likelySi());
        }

        private static double square(double value) {
            return value * value;
        }

        private void mixtures(double share) {
            double mean = departure(mixing, loads);
            because("mixtures depart from the law", List.of(), share * mean * HALF_NORMAL);
            double byPulp = departureByPulp(mixing, loads);
            because("another pulp than that of the ladder", List.of(), share * byPulp * HALF_NORMAL);
        }

        /** What was added since the trial, as a part of what is there. */
        private double added(Trial told) {
            double more = 0;
            double all = 0;
            for (int p = 0; p < loads.length; p++) {
                more += Math.abs(loads[p] - told.amounts[p]) * strength(p);
                all += Math.max(loads[p], told.amounts[p]) * strength(p);
            }
            return all == 0 ? 0 : Math.min(1, more / all);
        }

        private double strength(int p) {
            double sum = 0;
            for (int band = 0; band < mixing.bands(); band++) {
                sum += mixing.absorption(p, band);
            }
            return sum;
        }

        private void trialReading(Trial told) {
            Mixing.Surface surface = surface(assumptions);
            List<double[]> steps = new ArrayList<>();
            for (double[] way : ReadingNoise.of(told.read, reckoned("colour.reading-error"))) {
                steps.add(step(band -> KubelkaMunk.ratioSlope(surface.under(told.read.value(band))) * way[band]));
            }
            because("the reading of the trial", steps, 0);
        }

        private void ownFactors(Trial told) {
            List<double[]> steps = new ArrayList<>();
            for (int p = 0; p < loads.length; p++) {
                int at = p;
                double more = loads[p] - told.amounts[p];
                if (more != 0) {
                    steps.add(step(band -> more * OWN_FACTOR * mixing.byLoad(mixed, at, band)));
                }
            }
            because("the strength of what was added", steps, 0);
        }
    }

    /**
     * Looks for doses that give a colour.
     *
     * @param target what the dried sheets are to look like; of a reflectance in as many bands it is told besides how far the
     *     match falls apart under a lamp
     * @return what comes nearest, with one pigment, two and more
     * @throws Refused if there is no pigment
     */
    public ColourMatch match(Reflectance target) {
        return ColourMatch.of(this, Objects.requireNonNull(target, "target"));
    }

    /**
     * Looks for doses that give a colour.
     *
     * @param target what the dried sheets are to look like under D65
     * @return what comes nearest, with one pigment, two and more
     * @throws Refused if there is no pigment, or the colour is told in another light
     */
    public ColourMatch match(Lab target) {
        return ColourMatch.of(this, Objects.requireNonNull(target, "target"));
    }

    /**
     * Takes a trial swatch of a batch for what it tells: each pigment is stronger or weaker by a factor, as far as the trial
     * asks for it, and what is left over goes with every prediction. From here on doses are of this batch.
     *
     * @param given the doses that are in the beater
     * @param dried what the dried swatch of it sends back
     * @return this as the batch has it
     * @throws Refused if a pigment is not known, none was given, or the reading has fewer bands than that of the pulp
     */
    public PigmentedPulp afterTrial(List<AdditiveDose> given, Reflectance dried) {
        Objects.requireNonNull(given, "given");
        Objects.requireNonNull(dried, "dried");
        PigmentedPulp before = new PigmentedPulp(pulp, assumptions, circumstance, pigments, null);
        double[] amounts = before.loads(given);
        if (Arrays.stream(amounts).allMatch(one -> one == 0)) {
            throw Refused.of(
                    "colour.trial-bare", "trial: no pigment was given; a trial needs one to tell anything of it.");
        }
        long used = Arrays.stream(amounts).filter(one -> one > 0).count();
        Reflectance read = dried.in(pulp.reflectance().bands());
        TrialFit fit = TrialFit.of(before, amounts, read, used > 1 ? OWN_FACTOR_IN_MIXTURES : OWN_FACTOR);
        return new PigmentedPulp(
                pulp, assumptions, circumstance, pigments, new Trial(fit.factors(), fit.beyond(), amounts, read));
    }

    boolean isAfterTrial() {
        return trial != null;
    }

    /** What is in the beater, or nothing. */
    double[] amounts() {
        return trial == null ? new double[pigments.size()] : trial.amounts.clone();
    }

    /** How far all pigments together may be off in this making, as a logarithm. */
    double commonError() {
        double most = 0.03;
        for (Pigment pigment : pigments) {
            most = Math.max(most, pigment.circumstance() == circumstance ? 2 * makingError(pigment) : 0.3);
        }
        return most;
    }

    /**
     * Scales doses to sheets that keep more or less of the pigment, so that the sheets are coloured alike.
     *
     * @param doses as they were given before
     * @param before what helped to keep the pigment then
     * @return the doses for this pulp
     * @throws Refused if a dose comes out above 50 %
     */
    public List<AdditiveDose> rescaled(List<AdditiveDose> doses, Circumstance before) {
        Objects.requireNonNull(doses, "doses");
        Objects.requireNonNull(before, "before");
        return doses.stream()
                .map(one -> AdditiveDose.of(
                        one.additive(),
                        Kinds.DOSE.ofSi(
                                one.dose().si()
                                        * perDose(assumptions, one.additive(), before)
                                        / perDose(assumptions, one.additive(), circumstance),
                                "%")))
                .toList();
    }

    @Override
    public String toString() {
        return pulp + " with "
                + (pigments.isEmpty()
                        ? "no pigment"
                        : String.join(
                                ", ",
                                pigments.stream()
                                        .map(one -> one.additive().name())
                                        .toList()));
    }
}
