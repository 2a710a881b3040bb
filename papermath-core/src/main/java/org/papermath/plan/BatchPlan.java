package org.papermath.plan;

import java.util.List;
import java.util.Optional;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Time;
import javax.measure.quantity.Volume;
import org.papermath.evidence.Estimate;
import org.papermath.fibre.Alkali;
import org.papermath.fibre.BoughtFibre;
import org.papermath.fibre.Fibre;
import org.papermath.order.Recipe;
import org.papermath.pulp.Additive;
import org.papermath.pulp.Beater;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Consistency;
import org.papermath.quantity.Dose;
import org.papermath.quantity.LinearShrinkage;
import org.papermath.quantity.SchopperRiegler;
import org.papermath.quantity.Share;
import org.papermath.quantity.WaterRetention;

/**
 * What one recipe comes to for all the pieces made from it: fibre to weigh, beater loads, doses, stock. Settings carry
 * no band; forecasts do.
 */
public sealed interface BatchPlan permits PlannedBatch {
    /** {@return the recipe} */
    Recipe recipe();

    /** {@return what to weigh} */
    FibreToWeigh fibre();

    /** {@return how to soak it} */
    Soak soak();

    /** {@return the beater loads, or why there are none} */
    Stage<Beating> beatingStage();

    /** {@return what to add to each load, in order} */
    List<AdditiveToWeigh> additives();

    /** {@return what is cooked before it is beaten; empty where all fibre is bought ready for the beater} */
    Optional<Cooking> cooking();

    /** {@return the stock to make} */
    Stock stock();

    /** {@return how far beating brings the fibre, from not beaten to as far as it goes; all the rest follows from it} */
    Estimate<Share> beatingState();

    /** {@return what the tester should read after beating} */
    Estimate<SchopperRiegler> drainability();

    /** {@return the water retention value after beating, which the press has to work against} */
    Estimate<WaterRetention> waterRetention();

    /** {@return how much a sheet dried without restraint shrinks, along each side} */
    Estimate<LinearShrinkage> freeShrinkage();

    /** {@return oven-dry fibre that stays in the vat at the end; strain it and put it by} */
    Estimate<Mass> keptInVat();

    /** {@return stock left in the pails at the end; nothing, where there is likely none} */
    Estimate<Mass> stockPutBy();

    /** {@return how much the stock may run short, where that is likely enough to act on} */
    Optional<Shortage> shortage();

    /** {@return oven-dry fibre that leaves with bailed white water} */
    Estimate<Mass> whiteWaterFibre();

    /** {@return hours at the pots, at the beater, at the scale and at the charging of the vat} */
    Estimate<Time> workingHours();

    /** {@return the accounts of fibre, water and each additive, at the likely values} */
    List<Balance> balances();

    /**
     * Returns the beater loads.
     *
     * @return the content of the stage
     * @throws java.util.NoSuchElementException if the stage was not done; {@link #beatingStage} says why
     */
    default Beating beating() {
        return beatingStage().get();
    }

    /**
     * Returns the name of the recipe.
     *
     * @return the name
     */
    default String name() {
        return recipe().name();
    }

    /** Fibre to weigh. */
    sealed interface FibreToWeigh permits PlannedBatch.PlannedFibre {
        /** {@return oven-dry fibre in all, what is on hand with it} */
        Amount<Mass> ovenDry();

        /** {@return what to weigh of bought fibre in all, as it lies there} */
        Amount<Mass> asBought();

        /** {@return each fibre} */
        List<FibreLine> kinds();
    }

    /** One fibre to weigh. */
    sealed interface FibreLine permits PlannedBatch.PlannedFibreLine {
        /** {@return the fibre} */
        Fibre fibre();

        /** {@return the form it is bought in} */
        BoughtFibre.Form form();

        /** {@return oven-dry fibre of this kind in the beater, what is on hand with it} */
        Amount<Mass> ovenDry();

        /** {@return oven-dry fibre taken from what is on hand, in the form it is bought in} */
        Amount<Mass> fromHand();

        /** {@return what to weigh of bought fibre, for all loads} */
        Amount<Mass> asBought();
    }

    /** How to soak the fibre. */
    sealed interface Soak permits PlannedBatch.PlannedSoak {
        /** {@return the water to soak all of it in} */
        Amount<Volume> water();

        /** {@return how long} */
        Amount<Time> time();
    }

    /** What is cooked, and what should come of it. */
    sealed interface Cooking permits PlannedBatch.PlannedCooking {
        /** {@return each fibre that is cooked, in a pot of its own} */
        List<Pot> pots();

        /** {@return how long each is at the boil; it is ended by feel, when a strand comes apart} */
        Amount<Time> time();

        /** {@return oven-dry stuff that should come out of all pots} */
        Estimate<Mass> stuff();
    }

    /** One fibre to cook. */
    sealed interface Pot permits PlannedBatch.PlannedPot {
        /** {@return the fibre} */
        Fibre fibre();

        /** {@return the oven-dry fibre that goes in} */
        Amount<Mass> ovenDry();

        /** {@return what it is cooked in} */
        Alkali alkali();

        /** {@return pure alkali over the oven-dry fibre that goes in} */
        Amount<Dose> dose();

        /** {@return pure alkali to weigh} */
        Amount<Mass> pureAlkali();

        /** {@return the water to cook in} */
        Amount<Volume> liquor();

        /** {@return the oven-dry stuff it is planned to leave} */
        Amount<Mass> stuff();

        /** {@return what that weighs, rinsed and squeezed out by hand} */
        Amount<Mass> wet();
    }

    /** The beater loads. */
    sealed interface Beating permits PlannedBatch.PlannedBeating {
        /** {@return the beater} */
        Beater beater();

        /** {@return how many, all alike} */
        int loads();

        /** {@return oven-dry fibre of each load} */
        Amount<Mass> ovenDryEach();

        /** {@return fibre to weigh for each load, as bought or cooked and squeezed out, in the order of the furnish} */
        List<Amount<Mass>> kindsEach();

        /** {@return water to each load, what the fibre brings with it taken off} */
        Amount<Volume> waterEach();

        /** {@return oven-dry fibre over stock in the beater} */
        Amount<Consistency> consistency();

        /** {@return beating time of each load} */
        Amount<Time> timeEach();
    }

    /** An additive to weigh for one load. */
    sealed interface AdditiveToWeigh permits PlannedBatch.PlannedAdditive {
        /** {@return the additive} */
        Additive additive();

        /** {@return active matter over oven-dry fibre} */
        Amount<Dose> dose();

        /** {@return product for one load, rounded to the fine scale} */
        Amount<Mass> productEach();

        /** {@return product for all loads} */
        Amount<Mass> productInAll();

        /** {@return how long the beater turns before the next one goes in} */
        Amount<Time> waitAfter();
    }

    /** The stock to make. */
    sealed interface Stock permits PlannedBatch.PlannedStock {
        /** {@return stock of all loads together} */
        Amount<Mass> mass();

        /** {@return the same by volume} */
        Amount<Volume> volume();

        /** {@return oven-dry fibre over stock} */
        Amount<Consistency> consistency();

        /** {@return water to thin each load with after beating, if the stock is kept thinner than it was beaten} */
        Optional<Amount<Volume>> dilutionEach();

        /** {@return what the consistency may really be, with the moisture of the fibre unsure} */
        Estimate<Consistency> realConsistency();
    }

    /** Stock that may be missing at the end. */
    sealed interface Shortage permits PlannedBatch.PlannedShortage {
        /** {@return how likely the last sheets come out thinner than the vat's tolerance, or are left out} */
        Amount<Share> chance();

        /** {@return the stock missing in one making of twenty, or more} */
        Amount<Mass> upTo();
    }
}
