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

/** A batch as it was worked out. */
record PlannedBatch(Recipe recipe, FibreToWeigh fibre, Soak soak, Stage<Beating> beatingStage,
        List<AdditiveToWeigh> additives, Stock stock, Estimate<SchopperRiegler> drainability,
        Estimate<WaterRetention> waterRetention, Estimate<LinearShrinkage> freeShrinkage, Estimate<Mass> keptInVat,
        Estimate<Mass> stockPutBy, Optional<Shortage> shortage, Estimate<Mass> whiteWaterFibre,
        Estimate<Time> workingHours, List<Balance> balances) implements BatchPlan {
    @Override
    public String toString() {
        return name() + ": " + fibre;
    }

    record PlannedFibre(Amount<Mass> ovenDry, Amount<Mass> asBought, List<FibreLine> kinds) implements FibreToWeigh {
        @Override
        public String toString() {
            return asBought + " as bought (" + ovenDry + " oven-dry)";
        }
    }

    record PlannedFibreLine(Fibre fibre, Amount<Mass> ovenDry, Amount<Mass> fromHand, Amount<Mass> asBought)
            implements FibreLine {
        @Override
        public String toString() {
            return asBought + " " + fibre.name() + " as bought";
        }
    }

    record PlannedSoak(Amount<Volume> water, Amount<Time> time) implements Soak {
        @Override
        public String toString() {
            return water + " for " + time;
        }
    }

    record PlannedBeating(Beater beater, int loads, Amount<Mass> ovenDryEach, List<Amount<Mass>> kindsEach,
            Amount<Volume> waterEach, Amount<Consistency> consistency, Amount<Time> timeEach) implements Beating {
        @Override
        public String toString() {
            return loads + " loads of " + ovenDryEach + " oven-dry in " + waterEach + ", " + timeEach + " each";
        }
    }

    record PlannedAdditive(Additive additive, Amount<Dose> dose, Amount<Mass> productEach, Amount<Mass> productInAll,
            Amount<Time> waitAfter) implements AdditiveToWeigh {
        @Override
        public String toString() {
            return productEach + " " + additive.name() + " a load";
        }
    }

    record PlannedStock(Amount<Mass> mass, Amount<Volume> volume, Amount<Consistency> consistency,
            Optional<Amount<Volume>> dilutionEach, Estimate<Consistency> realConsistency) implements Stock {
        @Override
        public String toString() {
            return volume + " at " + consistency;
        }
    }

    record PlannedShortage(Amount<Share> chance, Amount<Mass> upTo) implements Shortage {
        @Override
        public String toString() {
            return "short by up to " + upTo + ", in " + chance + " of makings";
        }
    }
}
