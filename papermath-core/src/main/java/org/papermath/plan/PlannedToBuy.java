package org.papermath.plan;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import javax.measure.quantity.Mass;
import org.papermath.quantity.Amount;

/** What was found to buy. */
record PlannedToBuy(String what, Amount<Mass> mass, String why) implements ToBuy {
    static List<ToBuy> of(List<BatchPlan> batches) {
        List<ToBuy> list = new ArrayList<>();
        Map<String, Double> fibres = new LinkedHashMap<>();
        Map<String, Double> additives = new LinkedHashMap<>();
        Map<String, Set<String>> uses = new LinkedHashMap<>();
        for (BatchPlan batch : batches) {
            for (FibreToWeigh.Line line : batch.fibre().kinds()) {
                if (line.asBought().si() > 0) {
                    fibres.merge(what(line), line.asBought().si(), Double::sum);
                    uses.computeIfAbsent(what(line), k -> new LinkedHashSet<>()).add(batch.name());
                }
            }
            for (CookingPlan.Pot pot : batch.cooking().map(CookingPlan::pots).orElse(List.of())) {
                String alkali = pot.alkali() + " (to cook in)";
                additives.merge(alkali, pot.pureAlkali().si(), Double::sum);
                uses.computeIfAbsent(alkali, k -> new LinkedHashSet<>()).add(batch.name());
            }
            for (AdditiveToWeigh additive : batch.additives()) {
                additives.merge(
                        additive.additive().name(), additive.productInAll().si(), Double::sum);
                uses.computeIfAbsent(additive.additive().name(), k -> new LinkedHashSet<>())
                        .add(batch.name());
            }
        }
        for (Map<String, Double> kind : List.of(fibres, additives)) {
            kind.forEach((name, mass) -> list.add(
                    new PlannedToBuy(name, PlainNumbers.grams(mass), "for " + String.join(" and ", uses.get(name)))));
        }
        return List.copyOf(list);
    }

    /** The fibre, with its form where it goes by several. */
    private static String what(FibreToWeigh.Line line) {
        return line.form().of(line.fibre());
    }

    @Override
    public String toString() {
        return mass + " " + what + " (" + why + ")";
    }
}
