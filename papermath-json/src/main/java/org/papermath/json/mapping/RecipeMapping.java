package org.papermath.json.mapping;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javax.measure.quantity.Time;
import org.papermath.colour.WantedColour;
import org.papermath.fibre.Alkali;
import org.papermath.fibre.BoughtFibre;
import org.papermath.fibre.Fibre;
import org.papermath.fibre.Furnish;
import org.papermath.json.kit.ObjectReader;
import org.papermath.json.kit.ObjectWriter;
import org.papermath.json.kit.ReadResult;
import org.papermath.json.kit.ValueReader;
import org.papermath.json.kit.ValueWriter;
import org.papermath.order.Recipe;
import org.papermath.pulp.Additive;
import org.papermath.pulp.AdditiveDose;
import org.papermath.pulp.TimedSheet;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Consistency;
import org.papermath.quantity.Dose;
import org.papermath.quantity.FibreConcentration;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Limits;
import org.papermath.quantity.Refused;
import org.papermath.quantity.SchopperRiegler;
import org.papermath.quantity.Share;

/** A recipe. */
public final class RecipeMapping {
    private static final List<Additive.Purpose> PURPOSES = List.of(Additive.Purpose.values());

    private record Part(Fibre fibre, Amount<Share> share, Optional<BoughtFibre.Form> form) {}

    private record Apart(Fibre fibre, Amount<Time> time) {}

    private record Bath(Alkali alkali, Amount<Dose> dose) {}

    static final int MOST_FIBRES = 100;

    private RecipeMapping() {}

    public static ReadResult<Recipe> read(ObjectReader in) {
        return read(in, new Names("recipe"));
    }

    /** Reads a recipe of an order, whose names must differ. */
    public static ReadResult<Recipe> read(ObjectReader in, Names names) {
        ReadResult<String> written = CommonMembers.name(in);
        ReadResult<String> name = names.add(written);
        ReadResult<Furnish> furnish = furnish(in.required("furnish"));
        ReadResult<Amount<Time>> beating = CommonMembers.within(in.optional("beating"), Limits.BEATING, "beating time");
        ReadResult<List<Apart>> apart =
                in.optional("beatenApart").list(0, MOST_FIBRES, one -> one.object(RecipeMapping::apart));
        ReadResult<TimedSheet> timed = in.optional("timedSheet").object(RecipeMapping::timedSheet);
        ReadResult<Amount<SchopperRiegler>> drainability =
                CommonMembers.within(in.optional("drainability"), Limits.DRAINABILITY, "drainability");
        ReadResult<Bath> cooking = in.optional("cooking").object(RecipeMapping::bath);
        ReadResult<List<AdditiveDose>> additives = additives(in.optional("additives"));
        ReadResult<Amount<Consistency>> beater =
                CommonMembers.within(in.optional("beaterConsistency"), Limits.BEATER_CONSISTENCY, "beater consistency");
        ReadResult<Amount<Consistency>> stock =
                CommonMembers.within(in.optional("stockConsistency"), Limits.STOCK_CONSISTENCY, "stock consistency");
        ReadResult<Amount<Consistency>> vat =
                CommonMembers.within(in.optional("vatConsistency"), Limits.VAT_CONSISTENCY, "vat consistency");
        ReadResult<Amount<FibreConcentration>> sizeBath =
                CommonMembers.within(in.optional("sizeBath"), Limits.SIZE_BATH, "strength of the size bath");
        ReadResult<String> stuff = CommonMembers.sayable(in.optional("stuff").text());
        ReadResult<WantedColour> colour = in.optional("colour").object(ColourMapping::wanted);
        return in.make(() -> {
            Recipe.Builder recipe = Recipe.of(name.get(), furnish.get());
            beating.ifGiven(recipe::beating);
            apart.orElse(List.of()).forEach(one -> recipe.beating(one.fibre(), one.time()));
            drainability.ifGiven(recipe::drainability);
            timed.ifGiven(recipe::timedSheet);
            cooking.ifGiven(bath -> recipe.cooking(bath.alkali(), bath.dose()));
            additives.orElse(List.of()).forEach(dose -> recipe.additive(dose.additive(), dose.dose()));
            beater.ifGiven(recipe::beaterConsistency);
            stock.ifGiven(recipe::stockConsistency);
            vat.ifGiven(recipe::vatConsistency);
            sizeBath.ifGiven(recipe::sizeBath);
            stuff.ifGiven(recipe::stuff);
            colour.ifGiven(wanted -> recipe.colour(wanted));
            return recipe.build();
        });
    }

    public static void write(ObjectWriter out, Recipe recipe) {
        CommonMembers.name(out.member("name"), recipe.name());
        furnish(out.member("furnish"), recipe.furnish());
        if (recipe.beating().si() != 0) {
            out.member("beating").quantity(recipe.beating());
        }
        if (!recipe.beatingApart().isEmpty()) {
            out.member("beatenApart")
                    .list(
                            CommonMembers.atMost(
                                    MOST_FIBRES, recipe.beatingApart().entrySet(), "fibres beaten apart"),
                            (item, one) -> item.object(members -> {
                                FibreMapping.write(members.member("fibre"), one.getKey());
                                members.member("time").quantity(one.getValue());
                            }));
        }
        recipe.timedSheet().ifPresent(sheet -> out.member("timedSheet").object(members -> timedSheet(members, sheet)));
        recipe.drainability().ifPresent(number -> out.member("drainability").quantity(number));
        if (recipe.alkali().isPresent() && recipe.alkaliDose().isPresent()) {
            out.member("cooking").object(members -> {
                members.member("alkali").text(CommonMembers.word(recipe.alkali().get()));
                members.member("dose").quantity(recipe.alkaliDose().get());
            });
        }
        if (!recipe.additives().isEmpty()) {
            out.member("additives")
                    .list(
                            CommonMembers.atMost(CommonMembers.MANY, recipe.additives(), "additives"),
                            (item, dose) -> item.object(members -> additive(members, dose)));
        }
        recipe.beaterConsistency()
                .ifPresent(value -> out.member("beaterConsistency").quantity(value));
        recipe.stockConsistency()
                .ifPresent(value -> out.member("stockConsistency").quantity(value));
        recipe.vatConsistency().ifPresent(value -> out.member("vatConsistency").quantity(value));
        recipe.sizeBath().ifPresent(value -> out.member("sizeBath").quantity(value));
        recipe.stuff().ifPresent(name -> CommonMembers.name(out.member("stuff"), name));
        recipe.colour()
                .ifPresent(wanted -> out.member("colour").object(members -> ColourMapping.write(members, wanted)));
    }

    public static ReadResult<Furnish> furnish(ValueReader at) {
        return at.list(1, MOST_FIBRES, one -> one.object(RecipeMapping::part)).map(RecipeMapping::furnish);
    }

    public static void furnish(ValueWriter out, Furnish furnish) {
        out.list(
                CommonMembers.atMost(MOST_FIBRES, furnish.stated().entrySet(), "fibres"),
                (item, part) -> item.object(members -> {
                    FibreMapping.write(members.member("fibre"), part.getKey());
                    members.member("share").quantity(part.getValue());
                    FibreMapping.form(members, part.getKey(), furnish.form(part.getKey()));
                }));
    }

    private static ReadResult<Part> part(ObjectReader in) {
        ReadResult<Fibre> fibre = FibreMapping.read(in.required("fibre"));
        ReadResult<Amount<Share>> share =
                CommonMembers.aboveZero(in.required("share"), Kinds.SHARE, "share of the fibre");
        ReadResult<BoughtFibre.Form> form = FibreMapping.form(in);
        return in.make(() -> new Part(fibre.get(), share.get(), form.optional()));
    }

    private static Furnish furnish(List<Part> parts) {
        Map<Fibre, Amount<Share>> shares = new LinkedHashMap<>();
        for (Part part : parts) {
            if (shares.put(part.fibre(), part.share()) != null) {
                throw Refused.of(
                        "furnish.twice",
                        "furnish: " + part.fibre() + " stands twice. Add its shares together.",
                        "fibre",
                        part.fibre().id());
            }
        }
        double sum = shares.values().stream().mapToDouble(Amount::si).sum();
        try {
            Furnish furnish = Furnish.of(shares);
            for (Part part : parts) {
                furnish = part.form().isPresent()
                        ? furnish.bought(part.fibre(), part.form().get())
                        : furnish;
            }
            return furnish;
        } catch (Refused e) {
            if (!e.code().equals("furnish.sum")) {
                throw e;
            }
            throw Refused.of(
                    e.code(),
                    "the shares add up to " + Kinds.NUMBER.ofSi(sum, "%") + "; must be 100 %. Correct a share.",
                    "sum",
                    sum,
                    "shares",
                    String.valueOf(e.arguments().get("shares")));
        }
    }

    private static ReadResult<Apart> apart(ObjectReader in) {
        ReadResult<Fibre> fibre = FibreMapping.read(in.required("fibre"));
        ReadResult<Amount<Time>> time = CommonMembers.within(in.required("time"), Limits.BEATING, "beating time");
        return in.make(() -> new Apart(fibre.get(), time.get()));
    }

    private static ReadResult<TimedSheet> timedSheet(ObjectReader in) {
        ReadResult<Amount<Time>> time = CommonMembers.aboveZero(in.required("time"), Kinds.TIME, "drain time");
        ReadResult<Amount<Grammage>> fibre =
                CommonMembers.within(in.required("fibre"), Limits.PIECE_GRAMMAGE, "oven-dry fibre of the sheet");
        ReadResult<Amount<Consistency>> vat =
                CommonMembers.within(in.required("consistency"), Limits.VAT_CONSISTENCY, "vat consistency");
        return in.make(() -> TimedSheet.of(time.get(), fibre.get(), vat.get()));
    }

    private static void timedSheet(ObjectWriter out, TimedSheet sheet) {
        out.member("time").quantity(sheet.time());
        out.member("fibre").quantity(sheet.fibre());
        out.member("consistency").quantity(sheet.consistency());
    }

    private static ReadResult<Bath> bath(ObjectReader in) {
        ReadResult<Alkali> alkali = in.required("alkali").choice(List.of(Alkali.values()), CommonMembers::word);
        ReadResult<Amount<Dose>> dose = CommonMembers.within(in.required("dose"), Limits.DOSE, "dose");
        return in.make(() -> new Bath(alkali.get(), dose.get()));
    }

    private static ReadResult<List<AdditiveDose>> additives(ValueReader at) {
        Names names = new Names("additive");
        return at.list(0, CommonMembers.MANY, one -> one.object(in -> additive(in, names)));
    }

    private static ReadResult<AdditiveDose> additive(ObjectReader in, Names names) {
        ReadResult<String> name = names.add(CommonMembers.name(in));
        ReadResult<Additive.Purpose> purpose = in.required("purpose").choice(PURPOSES, CommonMembers::word);
        ReadResult<Amount<Dose>> dose = CommonMembers.within(in.required("dose"), Limits.DOSE, "dose");
        ReadResult<Amount<Share>> active =
                CommonMembers.aboveZero(in.optional("active"), Kinds.SHARE, "active fraction");
        return in.make(() -> {
            Additive whole = Additive.of(name.get(), purpose.get());
            return AdditiveDose.of(active.optional().map(whole::active).orElse(whole), dose.get());
        });
    }

    private static void additive(ObjectWriter out, AdditiveDose dose) {
        CommonMembers.name(out.member("name"), dose.additive().name());
        out.member("purpose").text(CommonMembers.word(dose.additive().purpose()));
        out.member("dose").quantity(dose.dose());
        dose.additive()
                .activeFraction()
                .ifPresent(active -> out.member("active").quantity(active));
    }
}
