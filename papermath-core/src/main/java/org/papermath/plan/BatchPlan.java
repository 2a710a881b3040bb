package org.papermath.plan;

import java.util.List;
import java.util.Optional;

import javax.measure.quantity.Mass;
import javax.measure.quantity.Time;
import javax.measure.quantity.Volume;

import org.papermath.evidence.Estimate;
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
 *
 * @param recipe the recipe
 * @param fibre what to weigh
 * @param soak how to soak it
 * @param beatingStage the beater loads, or why there are none
 * @param additives what to add to each load, in order
 * @param stock the stock to make
 * @param drainability what the tester should read after beating
 * @param waterRetention the water retention value after beating, which the press has to work against
 * @param freeShrinkage how much a sheet dried without restraint shrinks, along each side
 * @param keptInVat oven-dry fibre that stays in the vat at the end; strain it and put it by
 * @param stockPutBy stock left in the pails at the end; nothing, where there is likely none
 * @param shortage how much the stock may run short, where that is likely enough to act on
 * @param whiteWaterFibre oven-dry fibre that leaves with bailed white water
 * @param workingHours hours at the beater, at the scale and at the charging of the vat
 * @param balances the accounts of fibre, water and each additive, at the likely values
 */
public record BatchPlan(Recipe recipe, FibreToWeigh fibre, Soak soak, Stage<Beating> beatingStage,
        List<AdditiveToWeigh> additives, Stock stock, Estimate<SchopperRiegler> drainability,
        Estimate<WaterRetention> waterRetention, Estimate<LinearShrinkage> freeShrinkage,
        Estimate<Mass> keptInVat, Estimate<Mass> stockPutBy, Optional<Shortage> shortage,
        Estimate<Mass> whiteWaterFibre,
        Estimate<Time> workingHours,
        List<Balance> balances) {
    /**
     * Fibre to weigh.
     *
     * @param ovenDry oven-dry fibre in all, what is on hand with it
     * @param asBought what to weigh of bought fibre in all, as it lies there
     * @param kinds each fibre
     */
    public record FibreToWeigh(Amount<Mass> ovenDry, Amount<Mass> asBought, List<FibreLine> kinds) {
        @Override
        public String toString() {
            return asBought + " as bought (" + ovenDry + " oven-dry)";
        }
    }

    /**
     * One fibre to weigh.
     *
     * @param fibre the fibre
     * @param ovenDry oven-dry fibre of this kind, what is on hand with it
     * @param fromHand oven-dry fibre taken from what is on hand
     * @param asBought what to weigh of bought fibre, for all loads
     */
    public record FibreLine(Fibre fibre, Amount<Mass> ovenDry, Amount<Mass> fromHand, Amount<Mass> asBought) {
        @Override
        public String toString() {
            return asBought + " " + fibre.name() + " as bought";
        }
    }

    /**
     * How to soak the fibre.
     *
     * @param water the water to soak all of it in
     * @param time how long
     */
    public record Soak(Amount<Volume> water, Amount<Time> time) {
        @Override
        public String toString() {
            return water + " for " + time;
        }
    }

    /**
     * The beater loads.
     *
     * @param beater the beater
     * @param loads how many, all alike
     * @param ovenDryEach oven-dry fibre of each load
     * @param kindsEach bought fibre to weigh for each load, in the order of the furnish
     * @param waterEach water to each load, what the fibre holds taken off
     * @param consistency oven-dry fibre over stock in the beater
     * @param timeEach beating time of each load
     */
    public record Beating(Beater beater, int loads, Amount<Mass> ovenDryEach, List<Amount<Mass>> kindsEach,
            Amount<Volume> waterEach, Amount<Consistency> consistency, Amount<Time> timeEach) {
        @Override
        public String toString() {
            return loads + " loads of " + ovenDryEach + " oven-dry in " + waterEach + ", " + timeEach + " each";
        }
    }

    /**
     * An additive to weigh for one load.
     *
     * @param additive the additive
     * @param dose active matter over oven-dry fibre
     * @param productEach product for one load, rounded to the fine scale
     * @param productInAll product for all loads
     * @param waitAfter how long the beater turns before the next one goes in
     */
    public record AdditiveToWeigh(Additive additive, Amount<Dose> dose, Amount<Mass> productEach,
            Amount<Mass> productInAll,
            Amount<Time> waitAfter) {
        @Override
        public String toString() {
            return productEach + " " + additive.name() + " a load";
        }
    }

    /**
     * The stock to make.
     *
     * @param mass stock of all loads together
     * @param volume the same by volume
     * @param consistency oven-dry fibre over stock
     * @param dilutionEach water to thin each load with after beating, if the stock is kept thinner than it was beaten
     * @param realConsistency what the consistency may really be, with the moisture of the fibre unsure
     */
    public record Stock(Amount<Mass> mass, Amount<Volume> volume, Amount<Consistency> consistency,
            Optional<Amount<Volume>> dilutionEach, Estimate<Consistency> realConsistency) {
        @Override
        public String toString() {
            return volume + " at " + consistency;
        }
    }

    /**
     * Stock that may be missing at the end.
     *
     * @param chance how likely the last sheets come out thinner than the vat's tolerance, or are left out
     * @param upTo the stock missing in one making of twenty, or more
     */
    public record Shortage(Amount<Share> chance, Amount<Mass> upTo) {
        @Override
        public String toString() {
            return "short by up to " + upTo + ", in " + chance + " of makings";
        }
    }

    /**
     * Returns the beater loads.
     *
     * @return the content of the stage
     * @throws java.util.NoSuchElementException if the stage was not done; {@link #beatingStage} says why
     */
    public Beating beating() {
        return beatingStage.get();
    }

    /**
     * Returns the name of the recipe.
     *
     * @return the name
     */
    public String name() {
        return recipe.name();
    }

    @Override
    public String toString() {
        return name() + ": " + fibre;
    }
}
