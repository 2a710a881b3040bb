package org.papermath.plan;

import static org.papermath.plan.PlainNumbers.grams;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Time;
import javax.measure.quantity.Volume;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.papermath.engine.Accounts;
import org.papermath.engine.FillingVat;
import org.papermath.engine.PreparingStock;
import org.papermath.evidence.Assumption;
import org.papermath.evidence.Estimate;
import org.papermath.evidence.Scope;
import org.papermath.fibre.Alkali;
import org.papermath.fibre.BoughtFibre;
import org.papermath.fibre.Fibre;
import org.papermath.numeric.Rounding;
import org.papermath.order.Recipe;
import org.papermath.pulp.Additive;
import org.papermath.pulp.AdditiveDose;
import org.papermath.pulp.Beater;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Consistency;
import org.papermath.quantity.Dose;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.LinearShrinkage;
import org.papermath.quantity.SchopperRiegler;
import org.papermath.quantity.Share;
import org.papermath.quantity.WaterRetention;

/** A batch as it was worked out. */
record PlannedBatch(
        Recipe recipe,
        FibreToWeigh fibre,
        Soak soak,
        Stage<Beating> beatingStage,
        List<AdditiveToWeigh> additives,
        Optional<Cooking> cooking,
        Stock stock,
        Estimate<Share> beatingState,
        Estimate<SchopperRiegler> drainability,
        Estimate<WaterRetention> waterRetention,
        Estimate<LinearShrinkage> freeShrinkage,
        Estimate<Mass> keptInVat,
        Estimate<Mass> stockPutBy,
        Optional<Shortage> shortage,
        Estimate<Mass> whiteWaterFibre,
        Estimate<Time> workingHours,
        List<Balance> balances)
        implements BatchPlan {
    static BatchPlan of(PlainNumbers in, int b, Recipe recipe) {
        Estimates numbers = in.estimates();
        return new PlannedBatch(
                recipe,
                PlannedFibre.of(in, b, recipe),
                PlannedSoak.of(in, b),
                PlannedBeating.of(in, b, recipe),
                PlannedAdditive.of(in, b, recipe),
                PlannedCooking.of(in, b, recipe),
                PlannedStock.of(in, b),
                numbers.of(Kinds.SHARE, PreparingStock.BEATING, b),
                numbers.of(Kinds.SCHOPPER_RIEGLER, PreparingStock.DRAINABILITY, b),
                numbers.of(Kinds.WATER_RETENTION, PreparingStock.WATER_RETENTION, b),
                numbers.of(Kinds.LINEAR_SHRINKAGE, PreparingStock.FREE_SHRINKAGE, b),
                numbers.of(Kinds.MASS, FillingVat.VAT_FIBRE, b),
                numbers.stockLeft(b),
                PlannedShortage.of(in, b),
                numbers.of(Kinds.MASS, FillingVat.WHITE_WATER, b),
                numbers.of(Kinds.TIME, PreparingStock.HOURS, b),
                balances(in.accounts(), b, recipe));
    }

    private static List<Balance> balances(Accounts accounts, int b, Recipe recipe) {
        List<Balance> balances = new ArrayList<>();
        balances.add(PlannedBalance.of("fibre", accounts.fibre(b)));
        balances.add(PlannedBalance.of("water", accounts.water(b)));
        for (int a = 0; a < recipe.additives().size(); a++) {
            balances.add(PlannedBalance.of(recipe.additives().get(a).additive().name(), accounts.additive(b, a)));
        }
        return List.copyOf(balances);
    }

    @Override
    public String toString() {
        return name() + ": " + fibre;
    }

    record PlannedFibre(Amount<Mass> ovenDry, Amount<Mass> asBought, List<FibreLine> kinds) implements FibreToWeigh {
        static FibreToWeigh of(PlainNumbers in, int b, Recipe recipe) {
            PreparingStock.Setting set = in.settings().stock(b);
            List<Fibre> fibres = recipe.furnish().fibres();
            List<FibreLine> lines = new ArrayList<>();
            double asBought = 0;
            for (int f = 0; f < fibres.size(); f++) {
                asBought += set.asBought()[f];
                lines.add(new PlannedFibreLine(
                        fibres.get(f),
                        recipe.furnish().form(fibres.get(f)),
                        grams(in.engine().stock(b).share(f) * set.ovenDry()),
                        grams(set.fromHand()[f]),
                        grams(set.asBought()[f])));
            }
            return new PlannedFibre(grams(set.ovenDry()), grams(asBought), List.copyOf(lines));
        }

        @Override
        public String toString() {
            return asBought + " as bought (" + ovenDry + " oven-dry)";
        }
    }

    record PlannedFibreLine(
            Fibre fibre, BoughtFibre.Form form, Amount<Mass> ovenDry, Amount<Mass> fromHand, Amount<Mass> asBought)
            implements FibreLine {
        @Override
        public String toString() {
            return asBought + " " + fibre.name() + " as bought";
        }
    }

    record PlannedSoak(Amount<Volume> water, Amount<Time> time) implements Soak {
        static Soak of(PlainNumbers in, int b) {
            PreparingStock.Setting set = in.settings().stock(b);
            return new PlannedSoak(Kinds.VOLUME.ofSi(set.soakWater(), "L"), Kinds.TIME.ofSi(set.soakTime(), "h"));
        }

        @Override
        public String toString() {
            return water + " for " + time;
        }
    }

    record PlannedCooking(List<Pot> pots, Amount<Time> time, Estimate<Mass> stuff) implements Cooking {
        static Optional<Cooking> of(PlainNumbers in, int b, Recipe recipe) {
            PreparingStock.Setting set = in.settings().stock(b);
            if (set.pots().isEmpty()) {
                return Optional.empty();
            }
            PreparingStock stage = in.engine().stock(b);
            List<Pot> pots = new ArrayList<>();
            for (PreparingStock.Pot pot : set.pots()) {
                pots.add(new PlannedPot(
                        recipe.furnish().fibres().get(pot.fibre()),
                        grams(pot.raw()),
                        stage.alkali(pot.fibre()).orElseThrow(),
                        Kinds.DOSE.ofSi(stage.alkaliDose(pot.fibre()), "%"),
                        grams(pot.alkali()),
                        Kinds.VOLUME.ofSi(pot.liquor(), "L"),
                        grams(pot.stuff()),
                        grams(pot.wet())));
            }
            return Optional.of(new PlannedCooking(
                    List.copyOf(pots),
                    Kinds.TIME.ofSi(set.pots().get(0).time(), "h"),
                    in.estimates().of(Kinds.MASS, PreparingStock.COOKED, b)));
        }

        @Override
        public String toString() {
            return pots.stream().map(Pot::toString).collect(Collectors.joining("; ")) + ", " + time + " at the boil";
        }
    }

    record PlannedPot(
            Fibre fibre,
            Amount<Mass> ovenDry,
            Alkali alkali,
            Amount<Dose> dose,
            Amount<Mass> pureAlkali,
            Amount<Volume> liquor,
            Amount<Mass> stuff,
            Amount<Mass> wet)
            implements Pot {
        @Override
        public String toString() {
            return ovenDry + " oven-dry " + fibre.name() + " in " + liquor + " with " + pureAlkali + " of " + alkali;
        }
    }

    record PlannedBeating(
            Beater beater,
            int loads,
            Amount<Mass> ovenDryEach,
            List<Amount<Mass>> kindsEach,
            Amount<Volume> waterEach,
            Amount<Consistency> consistency,
            Amount<Time> timeEach)
            implements Beating {
        static Stage<Beating> of(PlainNumbers in, int b, Recipe recipe) {
            if (in.studio().beater().isEmpty()) {
                return Stage.notDone(
                        "beater.none",
                        recipe.beating().si() > 0
                                ? "the studio has no beater: get the stuff beaten as the recipe says, or beat it by hand"
                                : "the studio has no beater, and the recipe wants none");
            }
            PreparingStock.Setting set = in.settings().stock(b);
            return Stage.done(new PlannedBeating(
                    in.studio().beater().get(),
                    set.loads(),
                    grams(set.loadOvenDry()),
                    shared(set, in.engine().workshop().fibreScale()),
                    Kinds.VOLUME.ofSi(set.loadWater(), "L"),
                    Kinds.CONSISTENCY.ofSi(in.engine().stock(b).beaterConsistency(), "%"),
                    recipe.beating()));
        }

        @Override
        public String toString() {
            return loads + " loads of " + ovenDryEach + " oven-dry in " + waterEach + ", " + timeEach + " each";
        }
    }

    /** What comes out of a pot is wet, and is shared out among the loads as it lies. */
    private static List<Amount<Mass>> shared(PreparingStock.Setting set, double scale) {
        double[] each = set.asBought().clone();
        for (PreparingStock.Pot pot : set.pots()) {
            each[pot.fibre()] = Rounding.roundTo(pot.wet() / set.loads(), scale) * set.loads();
        }
        return Arrays.stream(each).mapToObj(mass -> grams(mass / set.loads())).toList();
    }

    record PlannedAdditive(
            Additive additive,
            Amount<Dose> dose,
            Amount<Mass> productEach,
            Amount<Mass> productInAll,
            Amount<Time> waitAfter)
            implements AdditiveToWeigh {
        static List<AdditiveToWeigh> of(PlainNumbers in, int b, Recipe recipe) {
            PreparingStock.Setting set = in.settings().stock(b);
            List<AdditiveToWeigh> additives = new ArrayList<>();
            for (int a = 0; a < recipe.additives().size(); a++) {
                AdditiveDose dose = recipe.additives().get(a);
                additives.add(new PlannedAdditive(
                        dose.additive(),
                        dose.dose(),
                        grams(set.product()[a]),
                        grams(set.product()[a] * set.loads()),
                        waitAfter(dose.additive(), in.asked())));
            }
            return List.copyOf(additives);
        }

        private static Amount<Time> waitAfter(Additive additive, Asked asked) {
            Assumption wait =
                    asked.get("additive.wait", Scope.of(additive.purpose().subject()));
            return Kinds.TIME.of(wait.likely(), wait.unit());
        }

        @Override
        public String toString() {
            return productEach + " " + additive.name() + " a load";
        }
    }

    record PlannedStock(
            Amount<Mass> mass,
            Amount<Volume> volume,
            Amount<Consistency> consistency,
            Optional<Amount<Volume>> dilutionEach,
            Estimate<Consistency> realConsistency)
            implements Stock {
        static Stock of(PlainNumbers in, int b) {
            PreparingStock stage = in.engine().stock(b);
            PreparingStock.Setting set = in.settings().stock(b);
            double dilution = set.stock() / set.loads() - set.loadOvenDry() / stage.beaterConsistency();
            return new PlannedStock(
                    Kinds.MASS.ofSi(set.stock(), "kg"),
                    Kinds.VOLUME.ofSi(set.stock() / set.stockDensity(), "L"),
                    Kinds.CONSISTENCY.ofSi(stage.stockConsistency(), "%"),
                    dilution > 1e-3 * set.stock() ? Optional.of(in.litresOfWater(dilution)) : Optional.empty(),
                    in.estimates().of(Kinds.CONSISTENCY, PreparingStock.STOCK_CONSISTENCY, b));
        }

        @Override
        public String toString() {
            return volume + " at " + consistency;
        }
    }

    record PlannedShortage(Amount<Share> chance, Amount<Mass> upTo) implements Shortage {
        /**
         * Told only where it is likely enough to act on. Some of it never shows: with that much less stock, the vat at
         * the end is only a little thinner than its tolerance allows.
         */
        static Optional<Shortage> of(PlainNumbers in, int b) {
            Estimates numbers = in.estimates();
            double left = numbers.likely(FillingVat.STOCK_LEFT, b);
            double low = numbers.low(FillingVat.STOCK_LEFT, b);
            double deviation = (left - low) / PlainNumbers.NINE_IN_TEN;
            if (!(deviation > 0)) {
                return Optional.empty();
            }
            double unseen = in.engine().likely().of(in.engine().vat(b).tolerance())
                    * numbers.likely(FillingVat.VAT_FIBRE, b)
                    / numbers.likely(PreparingStock.STOCK_CONSISTENCY, b);
            double chance = NormalDistribution.of(left + unseen, deviation).cumulativeProbability(0);
            return chance < in.asked().si("stock.shortage-told", Scope.GENERAL)
                    ? Optional.empty()
                    : Optional.of(new PlannedShortage(Kinds.SHARE.ofSi(chance, "%"), Kinds.MASS.ofSi(-low, "kg")));
        }

        @Override
        public String toString() {
            return "short by up to " + upTo + ", in " + chance + " of makings";
        }
    }
}
