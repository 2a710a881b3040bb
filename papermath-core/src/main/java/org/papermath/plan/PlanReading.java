package org.papermath.plan;

import java.util.ArrayList;
import java.util.List;
import org.papermath.engine.Engine;
import org.papermath.order.Recipe;
import org.papermath.quantity.Units;

/** The plan read out of its plain numbers: its batches, its pieces, and what comes of them together. */
final class PlanReading {
    private final PlainNumbers in;
    private final List<BatchPlan> batches = new ArrayList<>();
    private final List<PiecePlan> pieces = new ArrayList<>();

    PlanReading(PlainNumbers in) {
        this.in = in;
        List<Recipe> recipes = Engine.usedRecipes(in.order());
        for (int b = 0; b < in.engine().batches(); b++) {
            batches.add(PlannedBatch.of(in, b, recipes.get(b)));
        }
        for (int p = 0; p < in.engine().pieces(); p++) {
            pieces.add(PlannedPiece.of(in, p));
        }
    }

    List<BatchPlan> batches() {
        return List.copyOf(batches);
    }

    List<PiecePlan> pieces() {
        return List.copyOf(pieces);
    }

    /** The sides of a sheet, the shorter first. */
    static String sides(double one, double other) {
        return Units.fourDigits(1000 * Math.min(one, other)) + " × " + Units.fourDigits(1000 * Math.max(one, other))
                + " mm";
    }

    List<ToBuy> toBuy() {
        return PlannedToBuy.of(batches);
    }

    Schedule schedule() {
        return Schedule.of(in, batches, pieces);
    }

    List<StepCaution> cautions() {
        return new PlanCautions(in.studio(), in.engine(), in.settings(), batches, pieces).all();
    }
}
