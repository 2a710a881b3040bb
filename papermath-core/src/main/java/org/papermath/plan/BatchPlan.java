package org.papermath.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Time;
import org.papermath.engine.Accounts;
import org.papermath.engine.FillingVat;
import org.papermath.engine.PreparingStock;
import org.papermath.evidence.Estimate;
import org.papermath.order.Recipe;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.LinearShrinkage;
import org.papermath.quantity.SchopperRiegler;
import org.papermath.quantity.Share;
import org.papermath.quantity.WaterRetention;

/**
 * What one recipe comes to for all the pieces made from it: fibre to weigh, beater loads, doses, stock. Settings carry
 * no band; forecasts do.
 */
public final class BatchPlan {
    private record Values(
            Recipe recipe,
            FibreToWeigh fibre,
            Amount<Mass> stuffOnHand,
            Optional<SharedStuff> sharedStuff,
            SoakingPlan soak,
            Stage<BeatingPlan> beatingStage,
            List<AdditiveToWeigh> additives,
            Optional<CookingPlan> cooking,
            StockPlan stock,
            Estimate<Share> beatingState,
            Estimate<SchopperRiegler> drainability,
            Estimate<WaterRetention> waterRetention,
            Estimate<LinearShrinkage> freeShrinkage,
            Estimate<Mass> keptInVat,
            Estimate<Mass> stockPutBy,
            Optional<StockShortage> shortage,
            Estimate<Mass> whiteWaterFibre,
            Estimate<Time> workingHours,
            Amount<Time> rollTime,
            Amount<Time> machineHours,
            List<Balance> balances,
            Optional<ColourPlan> colour) {}

    private final Values values;

    private BatchPlan(Values values) {
        this.values = values;
    }

    static BatchPlan of(PlainNumbers in, int b, Recipe recipe) {
        Estimates numbers = in.estimates();
        PreparingStock.Setting set = in.settings().stock(b);
        List<AdditiveToWeigh> additives = AdditiveToWeigh.of(in, b, recipe);
        return new BatchPlan(new Values(
                recipe,
                FibreToWeigh.of(in, b, recipe, set),
                PlainNumbers.grams(set.fromStuff()),
                SharedStuff.of(in, b, recipe),
                SoakingPlan.of(set),
                BeatingPlan.of(in, b, recipe),
                additives,
                CookingPlan.of(in, b, recipe),
                StockPlan.of(in, b),
                numbers.of(Kinds.SHARE, PreparingStock.BEATING, b),
                numbers.of(Kinds.SCHOPPER_RIEGLER, PreparingStock.DRAINABILITY, b),
                numbers.of(Kinds.WATER_RETENTION, PreparingStock.WATER_RETENTION, b),
                numbers.of(Kinds.LINEAR_SHRINKAGE, PreparingStock.FREE_SHRINKAGE, b),
                numbers.of(Kinds.MASS, FillingVat.VAT_FIBRE, b),
                numbers.stockLeft(b),
                StockShortage.of(in, b),
                numbers.of(Kinds.MASS, FillingVat.WHITE_WATER, b),
                numbers.of(Kinds.TIME, PreparingStock.HOURS, b),
                Kinds.TIME.ofSi(in.engine().stock(b).rollTime(set), "h"),
                Kinds.TIME.ofSi(in.engine().stock(b).rollTime(set) + PreparingStock.boilTime(set), "h"),
                balances(in.accounts(), b, recipe),
                ColourPlan.of(in, b, recipe, additives)));
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

    /** {@return the recipe} */
    public Recipe recipe() {
        return values.recipe;
    }

    /** {@return what to weigh; a part of what is weighed, where the stuff is beaten for several recipes} */
    public FibreToWeigh fibre() {
        return values.fibre;
    }

    /** {@return oven-dry fibre of the stuff on hand that is used; zero where none is} */
    public Amount<Mass> stuffOnHand() {
        return values.stuffOnHand;
    }

    /**
     * Returns the stuff that is beaten for this and other recipes and then divided.
     *
     * @return the stuff and what of it becomes this batch; empty where it is beaten for this batch alone
     */
    public Optional<SharedStuff> sharedStuff() {
        return values.sharedStuff;
    }

    /** {@return how to soak it} */
    public SoakingPlan soak() {
        return values.soak;
    }

    /**
     * {@return the beater loads, or why there are none; of shared stuff, all its loads, at the first of its recipes}
     */
    public Stage<BeatingPlan> beatingStage() {
        return values.beatingStage;
    }

    /** {@return what to add to each load, in order} */
    public List<AdditiveToWeigh> additives() {
        return values.additives;
    }

    /** {@return how the batch comes to its colour; empty where the recipe asks for none} */
    public Optional<ColourPlan> colour() {
        return values.colour;
    }

    /**
     * {@return what is cooked before it is beaten; of shared stuff, all of it, at the first of its recipes; empty where
     * all fibre is bought ready for the beater}
     */
    public Optional<CookingPlan> cooking() {
        return values.cooking;
    }

    /** {@return the stock to make} */
    public StockPlan stock() {
        return values.stock;
    }

    /** {@return how far beating brings the fibre, from not beaten to as far as it goes; all the rest follows from it} */
    public Estimate<Share> beatingState() {
        return values.beatingState;
    }

    /** {@return what the tester should read after beating} */
    public Estimate<SchopperRiegler> drainability() {
        return values.drainability;
    }

    /** {@return the water retention value after beating, which the press has to work against} */
    public Estimate<WaterRetention> waterRetention() {
        return values.waterRetention;
    }

    /** {@return how much a sheet dried without restraint shrinks, along each side} */
    public Estimate<LinearShrinkage> freeShrinkage() {
        return values.freeShrinkage;
    }

    /** {@return oven-dry fibre that stays in the vat at the end; strain it and put it by} */
    public Estimate<Mass> keptInVat() {
        return values.keptInVat;
    }

    /** {@return stock left in the pails at the end; nothing, where there is likely none} */
    public Estimate<Mass> stockPutBy() {
        return values.stockPutBy;
    }

    /** {@return how much the stock may run short, where that is likely enough to act on} */
    public Optional<StockShortage> shortage() {
        return values.shortage;
    }

    /** {@return oven-dry fibre that leaves with bailed white water} */
    public Estimate<Mass> whiteWaterFibre() {
        return values.whiteWaterFibre;
    }

    /** {@return hours of hands at the pots, at the beater, at the scale and at the charging of the vat} */
    public Estimate<Time> workingHours() {
        return values.workingHours;
    }

    /** {@return how long the roll of the beater runs; of shared stuff, its part} */
    public Amount<Time> rollTime() {
        return values.rollTime;
    }

    /** {@return how long the roll of the beater runs and pots boil, with somebody in the room; of shared stuff, its part} */
    public Amount<Time> machineHours() {
        return values.machineHours;
    }

    /** {@return the accounts of fibre, water and each additive, at the likely values} */
    public List<Balance> balances() {
        return values.balances;
    }

    /**
     * Returns the beater loads.
     *
     * @return the content of the stage
     * @throws java.util.NoSuchElementException if the stage was not done; {@link #beatingStage} says why
     */
    public BeatingPlan beating() {
        return beatingStage().get();
    }

    /**
     * Returns the name of the recipe.
     *
     * @return the name
     */
    public String name() {
        return recipe().name();
    }

    @Override
    public String toString() {
        return name() + ": " + values.fibre;
    }
}
