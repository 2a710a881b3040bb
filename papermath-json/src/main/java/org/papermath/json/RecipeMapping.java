package org.papermath.json;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

import javax.measure.quantity.Time;

import org.papermath.fibre.Fibre;
import org.papermath.fibre.Furnish;
import org.papermath.order.Recipe;
import org.papermath.pulp.Additive;
import org.papermath.pulp.AdditiveDose;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Consistency;
import org.papermath.quantity.Dose;
import org.papermath.quantity.FibreConcentration;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Limits;
import org.papermath.quantity.Refused;
import org.papermath.quantity.SchopperRiegler;
import org.papermath.quantity.Share;

/** A recipe. */
final class RecipeMapping {
    private static final List<Additive.Purpose> PURPOSES = List.of(Additive.Purpose.values());

    private record Part(Fibre fibre, Amount<Share> share) {
    }

    static final int MOST_FIBRES = 100;

    private RecipeMapping() {
    }

    static Got<Recipe> read(ObjectAt in) {
        return read(in, new Names("recipe"));
    }

    /** Reads a recipe of an order, whose names must differ. */
    static Got<Recipe> read(ObjectAt in, Names names) {
        Got<String> said = Common.name(in);
        Got<String> name = names.add(said);
        Got<Furnish> furnish = furnish(in.required("furnish"));
        Got<Amount<Time>> beating = Common.within(in.optional("beating"), Limits.BEATING, "beating time");
        Got<Amount<SchopperRiegler>> drainability = Common.within(in.optional("drainability"), Limits.DRAINABILITY,
                "drainability");
        Got<List<AdditiveDose>> additives = additives(in.optional("additives"));
        Got<Amount<Consistency>> beater = Common.within(in.optional("beaterConsistency"), Limits.BEATER_CONSISTENCY,
                "beater consistency");
        Got<Amount<Consistency>> stock = Common.within(in.optional("stockConsistency"), Limits.STOCK_CONSISTENCY,
                "stock consistency");
        Got<Amount<Consistency>> vat = Common.within(in.optional("vatConsistency"), Limits.VAT_CONSISTENCY,
                "vat consistency");
        Got<Amount<FibreConcentration>> sizeBath = Common.within(in.optional("sizeBath"), Limits.SIZE_BATH,
                "strength of the size bath");
        return in.make(() -> {
            Recipe.Builder recipe = Recipe.of(name.get(), furnish.get());
            beating.ifGiven(recipe::beating);
            drainability.ifGiven(recipe::drainability);
            additives.orElse(List.of()).forEach(dose -> recipe.additive(dose.additive(), dose.dose()));
            beater.ifGiven(recipe::beaterConsistency);
            stock.ifGiven(recipe::stockConsistency);
            vat.ifGiven(recipe::vatConsistency);
            sizeBath.ifGiven(recipe::sizeBath);
            return recipe.build();
        });
    }

    static void write(ObjectOut out, Recipe recipe) {
        Common.name(out.member("name"), recipe.name());
        furnish(out.member("furnish"), recipe.furnish());
        if (recipe.beating().si() != 0) {
            out.member("beating").quantity(recipe.beating());
        }
        recipe.drainability().ifPresent(number -> out.member("drainability").quantity(number));
        if (!recipe.additives().isEmpty()) {
            out.member("additives").list(Common.atMost(Common.MANY, recipe.additives(), "additives"),
                    (item, dose) -> item.object(members -> additive(members, dose)));
        }
        recipe.beaterConsistency().ifPresent(value -> out.member("beaterConsistency").quantity(value));
        recipe.stockConsistency().ifPresent(value -> out.member("stockConsistency").quantity(value));
        recipe.vatConsistency().ifPresent(value -> out.member("vatConsistency").quantity(value));
        recipe.sizeBath().ifPresent(value -> out.member("sizeBath").quantity(value));
    }

    static Got<Furnish> furnish(ValueAt at) {
        return at.list(1, MOST_FIBRES, one -> one.object(RecipeMapping::part)).map(RecipeMapping::furnish);
    }

    static void furnish(ValueOut out, Furnish furnish) {
        out.list(Common.atMost(MOST_FIBRES, furnish.stated().entrySet(), "fibres"),
                (item, part) -> item.object(members -> {
                    FibreMapping.write(members.member("fibre"), part.getKey());
                    members.member("share").quantity(part.getValue());
                }));
    }

    private static Got<Part> part(ObjectAt in) {
        Got<Fibre> fibre = FibreMapping.read(in.required("fibre"));
        Got<Amount<Share>> share = Common.aboveZero(in.required("share"), Kinds.SHARE, "share of the fibre");
        return in.make(() -> new Part(fibre.get(), share.get()));
    }

    private static Furnish furnish(List<Part> parts) {
        Map<Fibre, Amount<Share>> shares = new LinkedHashMap<>();
        for (Part part : parts) {
            if (shares.put(part.fibre(), part.share()) != null) {
                throw Refused.of("furnish.twice", "furnish: " + part.fibre()
                        + " stands twice. Add its shares together.", "fibre", part.fibre().id());
            }
        }
        double sum = shares.values().stream().mapToDouble(Amount::si).sum();
        try {
            return Furnish.of(shares);
        } catch (Refused e) {
            if (!e.code().equals("furnish.sum")) {
                throw e;
            }
            throw Refused.of(e.code(), "the shares add up to " + Kinds.NUMBER.ofSi(sum, "%")
                    + "; 100 % is wanted. Correct a share.", "sum", sum, "shares",
                    String.valueOf(e.arguments().get("shares")));
        }
    }

    private static Got<List<AdditiveDose>> additives(ValueAt at) {
        Names names = new Names("additive");
        return at.list(0, Common.MANY, one -> one.object(in -> additive(in, names)));
    }

    private static Got<AdditiveDose> additive(ObjectAt in, Names names) {
        Got<String> name = names.add(Common.name(in));
        Got<Additive.Purpose> purpose = in.required("purpose")
                .choice(PURPOSES, Common::word);
        Got<Amount<Dose>> dose = Common.within(in.required("dose"), Limits.DOSE, "dose");
        Got<Amount<Share>> active = Common.aboveZero(in.optional("active"), Kinds.SHARE, "active fraction");
        return in.make(() -> {
            Additive whole = Additive.of(name.get(), purpose.get());
            return AdditiveDose.of(active.optional().map(whole::active).orElse(whole), dose.get());
        });
    }

    private static void additive(ObjectOut out, AdditiveDose dose) {
        Common.name(out.member("name"), dose.additive().name());
        out.member("purpose").text(Common.word(dose.additive().purpose()));
        out.member("dose").quantity(dose.dose());
        dose.additive().activeFraction().ifPresent(active -> out.member("active").quantity(active));
    }
}
