package org.papermath.record;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Time;
import org.jspecify.annotations.Nullable;
import org.papermath.colour.WantedColour;
import org.papermath.evidence.Reading;
import org.papermath.fibre.Fibre;
import org.papermath.fibre.Furnish;
import org.papermath.order.Recipe;
import org.papermath.pulp.Additive;
import org.papermath.pulp.AdditiveDose;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Dose;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;

/** Works out the recipe a batch was really made by. */
final class RecipeAsMade {
    /** Sums of what was weighed as planned differ from it by the rounding of a sum, and by no more. */
    private static final double ROUNDING = 1e-12;

    private final BatchRecord record;
    private final Recipe planned;

    private RecipeAsMade(BatchRecord record, Recipe planned) {
        this.record = record;
        this.planned = planned;
    }

    static Recipe of(BatchRecord record) {
        Recipe planned = record.recipeAsPlanned()
                .orElseThrow(() -> Refused.of(
                        "record.no-recipe",
                        record.name() + ": the record names no recipe, so nothing can be made by it again. Add the name"
                                + " of the recipe and its fibres with their shares.",
                        "record",
                        record.name()));
        return new RecipeAsMade(record, planned).recipe();
    }

    private Recipe recipe() {
        Furnish furnish = planned.furnish();
        Map<Fibre, Double> ratios = ratios(furnish);
        double fibre = 0;
        for (Fibre one : furnish.fibres()) {
            fibre += furnish.share(one).si() * ratios.getOrDefault(one, 1.0);
        }
        Recipe.Builder made = Recipe.of(planned.name(), furnish(furnish, ratios, fibre));
        beat(made);
        planned.timedSheet().ifPresent(made::timedSheet);
        planned.drainability().ifPresent(made::drainability);
        if (planned.alkali().isPresent() && planned.alkaliDose().isPresent()) {
            made.cooking(planned.alkali().get(), planned.alkaliDose().get());
        }
        for (AdditiveDose dose : doses(exact(fibre))) {
            made.additive(dose.additive(), dose.dose());
        }
        planned.beaterConsistency().ifPresent(made::beaterConsistency);
        planned.stockConsistency().ifPresent(made::stockConsistency);
        planned.vatConsistency().ifPresent(made::vatConsistency);
        planned.sizeBath().ifPresent(made::sizeBath);
        planned.stuff().ifPresent(made::stuff);
        record.colour().map(WantedColour::of).or(planned::colour).ifPresent(colour -> made.colour(colour));
        return made.build();
    }

    private static double exact(double ratio) {
        return Math.abs(ratio - 1) <= ROUNDING ? 1 : ratio;
    }

    // ------------------------------------------------------------------------------------------------ fibre

    /** What was weighed of each fibre over what was to be. */
    private Map<Fibre, Double> ratios(Furnish furnish) {
        Map<Fibre, Double> ratios = new LinkedHashMap<>();
        for (Fibre fibre : furnish.fibres()) {
            double weighed = record.measurements(Measurement.FibreWeighed.class).stream()
                    .filter(one -> one.fibre().id().equals(fibre.id()))
                    .mapToDouble(one -> one.asBought().value().si())
                    .sum();
            double wanted = mass(BatchRecord.weighing(fibre));
            if (weighed > 0 && wanted > 0) {
                ratios.put(fibre, exact(weighed / wanted));
            }
        }
        return ratios;
    }

    /** A planned mass; not a number where none was planned. */
    private double mass(String figure) {
        Amount<?> amount = record.planned().get(figure);
        return amount != null && amount.kind() == (Object) Kinds.MASS ? amount.si() : Double.NaN;
    }

    private static Furnish furnish(Furnish planned, Map<Fibre, Double> ratios, double all) {
        if (planned.fibres().stream()
                        .map(fibre -> ratios.getOrDefault(fibre, 1.0))
                        .distinct()
                        .count()
                == 1) {
            return planned;
        }
        Map<Fibre, Amount<Mass>> masses = new LinkedHashMap<>();
        for (Fibre fibre : planned.stated().keySet()) {
            masses.put(fibre, Kinds.MASS.ofSi(planned.share(fibre).si() * ratios.getOrDefault(fibre, 1.0) / all, "kg"));
        }
        Furnish made = Furnish.ofMasses(masses);
        for (Fibre fibre : made.fibres()) {
            made = made.bought(fibre, planned.form(fibre));
        }
        return made;
    }

    // ------------------------------------------------------------------------------------------------ beating

    private void beat(Recipe.Builder made) {
        Map<Fibre, Amount<Time>> apart = new LinkedHashMap<>(planned.beatingApart());
        @Nullable Amount<Time> together = null;
        for (Measurement.Beaten one : record.measurements(Measurement.Beaten.class)) {
            Amount<Time> time = one.time().value();
            Optional<Fibre> of = one.fibre();
            if (of.isPresent()) {
                apart.put(of.get(), time);
            } else {
                together = time;
            }
        }
        if (together == null) {
            together = planned.beating();
            List<Measurement.Load> loads = record.measurements(Measurement.Load.class);
            if (together.si() == 0 && !loads.isEmpty() && apart.isEmpty()) {
                together = loads.get(loads.size() - 1).time().value();
            }
        }
        // What was planned to be unbeaten and was left so is not said at all.
        if (together.si() > 0) {
            made.beating(together);
        }
        apart.forEach(made::beating);
    }

    // ------------------------------------------------------------------------------------------------ additives

    private List<AdditiveDose> doses(double fibre) {
        Map<String, List<Measurement.AdditiveWeighed>> weighed = new LinkedHashMap<>();
        for (Measurement.AdditiveWeighed one : record.measurements(Measurement.AdditiveWeighed.class)) {
            weighed.computeIfAbsent(one.additive().name(), name -> new ArrayList<>())
                    .add(one);
        }
        Map<String, AdditiveDose> doses = new LinkedHashMap<>();
        for (AdditiveDose one : planned.additives()) {
            doses.put(one.additive().name(), one);
        }
        weighed.forEach((name, portions) -> doses.put(name, dose(doses.get(name), portions, fibre)));
        List<String> told = AdditiveDose.inOrder(planned.additives()).stream()
                .map(one -> one.additive().name())
                .toList();
        if (told.equals(List.copyOf(weighed.keySet()))) {
            return List.copyOf(doses.values());
        }
        List<AdditiveDose> asGiven = new ArrayList<>();
        weighed.keySet().forEach(name -> asGiven.add(doses.remove(name)));
        asGiven.addAll(doses.values());
        return asGiven;
    }

    private AdditiveDose dose(
            @Nullable AdditiveDose wanted, List<Measurement.AdditiveWeighed> portions, double fibreRatio) {
        Additive additive = wanted == null ? portions.get(0).additive() : wanted.additive();
        double product =
                portions.stream().mapToDouble(one -> one.product().value().si()).sum();
        if (portions.stream().allMatch(one -> one.fibre().isPresent())) {
            double on = portions.stream()
                    .flatMap(one -> one.fibre().stream())
                    .map(Reading::value)
                    .mapToDouble(Amount::si)
                    .sum();
            return AdditiveDose.ofProduct(additive, Kinds.MASS.ofSi(product, "g"), Kinds.MASS.ofSi(on, "g"));
        }
        double toWeigh = mass(BatchRecord.weighing(additive));
        if (wanted == null || !(toWeigh > 0)) {
            throw Refused.of(
                    "record.dose-unknown",
                    record.name() + ": " + Kinds.MASS.ofSi(product, "g") + " of " + additive.name()
                            + " were weighed, but not on how much fibre. Add the oven-dry fibre it went on to the"
                            + " reading.",
                    "record",
                    record.name(),
                    "additive",
                    additive.name());
        }
        double ratio = exact(exact(product / toWeigh) / fibreRatio);
        Amount<Dose> dose = wanted.dose();
        return ratio == 1 ? wanted : AdditiveDose.of(additive, Kinds.DOSE.ofSi(dose.si() * ratio, "%"));
    }
}
