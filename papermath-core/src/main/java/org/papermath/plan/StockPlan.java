package org.papermath.plan;

import java.util.Optional;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Volume;
import org.papermath.engine.PreparingStock;
import org.papermath.evidence.Estimate;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Consistency;
import org.papermath.quantity.Kinds;

/** The stock to make. */
public final class StockPlan {
    private record Values(
            Amount<Mass> mass,
            Amount<Volume> volume,
            Amount<Consistency> consistency,
            Optional<Amount<Volume>> dilutionEach,
            Estimate<Consistency> realConsistency) {}

    private final Values values;

    private StockPlan(Values values) {
        this.values = values;
    }

    static StockPlan of(PlainNumbers in, int b) {
        PreparingStock stage = in.engine().stock(b);
        PreparingStock.Setting set = in.settings().stock(b);
        double beaten = set.beaten() / set.additions();
        double fresh = set.stock() - set.fromStuff() / stage.stockConsistency();
        double dilution = set.isBeaten() ? fresh / set.additions() - beaten / stage.beaterConsistency() : 0;
        return new StockPlan(new Values(
                Kinds.MASS.ofSi(set.stock(), "kg"),
                Kinds.VOLUME.ofSi(set.stock() / set.stockDensity(), "L"),
                Kinds.CONSISTENCY.ofSi(stage.stockConsistency(), "%"),
                dilution > 1e-3 * set.stock() ? Optional.of(in.litresOfWater(dilution)) : Optional.empty(),
                in.estimates().of(Kinds.CONSISTENCY, PreparingStock.STOCK_CONSISTENCY, b)));
    }

    /** {@return stock of all loads together} */
    public Amount<Mass> mass() {
        return values.mass;
    }

    /** {@return the same by volume} */
    public Amount<Volume> volume() {
        return values.volume;
    }

    /** {@return oven-dry fibre over stock} */
    public Amount<Consistency> consistency() {
        return values.consistency;
    }

    /** {@return water to thin each load with after beating, or the whole of what was beaten apart, if the stock is kept
     * thinner than it was beaten} */
    public Optional<Amount<Volume>> dilutionEach() {
        return values.dilutionEach;
    }

    /** {@return what the consistency may really be, with the moisture of the fibre unsure} */
    public Estimate<Consistency> realConsistency() {
        return values.realConsistency;
    }

    @Override
    public String toString() {
        return values.volume + " at " + values.consistency;
    }
}
