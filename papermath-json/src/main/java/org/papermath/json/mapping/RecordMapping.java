package org.papermath.json.mapping;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import javax.measure.Quantity;
import org.papermath.colour.Lab;
import org.papermath.evidence.Assumption;
import org.papermath.evidence.Assumptions;
import org.papermath.fibre.Fibre;
import org.papermath.fibre.Furnish;
import org.papermath.json.DocumentFormat;
import org.papermath.json.kit.ObjectReader;
import org.papermath.json.kit.ObjectWriter;
import org.papermath.json.kit.ReadResult;
import org.papermath.json.kit.ValueReader;
import org.papermath.json.kit.ValueWriter;
import org.papermath.order.Recipe;
import org.papermath.plan.EmptyRecord;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kind;
import org.papermath.quantity.Kinds;
import org.papermath.record.BatchRecord;
import org.papermath.record.Measurement;

/** A record of a batch. What was planned and what was measured are members of their own. */
public final class RecordMapping {
    public static final DocumentFormat RECORD = new DocumentFormat("record", 1, 0);

    private record Planned(String figure, Amount<?> value) {}

    private record Lot(Optional<Fibre> fibre, Optional<String> additive, String name) {}

    private RecordMapping() {}

    public static ReadResult<BatchRecord> read(ObjectReader in) {
        ReadResult<String> name = in.required("name").text();
        ReadResult<LocalDate> date = in.required("date").date();
        ReadResult<Recipe> recipe = in.optional("recipe").object(RecipeMapping::read);
        ReadResult<List<Optional<Lot>>> lots = lots(in.optional("lots"));
        ReadResult<String> beater = place(in, "beater");
        ReadResult<String> vat = place(in, "vat");
        ReadResult<String> press = place(in, "press");
        ReadResult<String> dryer = place(in, "dryer");
        ReadResult<Lab> colour = in.optional("colour").object(ColourMapping::lab);
        ReadResult<String> note = in.optional("note").note();
        ReadResult<List<Planned>> planned = planned(in.optional("planned"));
        ReadResult<Assumptions> table = in.optional("edition").text().map(Assumptions::edition);
        ValueReader ownAt = in.optional("assumptions");
        ReadResult<List<Assumption>> own = AssumptionMapping.read(
                ownAt, table.isFaulty() ? Assumptions.standard() : table.orElse(Assumptions.standard()));
        ValueReader measuredAt = in.optional("measured");
        ReadResult<List<Optional<Measurement>>> measured = measuredAt.list(RecordMapping::measured);
        return in.make(() -> {
            BatchRecord.Builder record = BatchRecord.builder(name.get(), date.get());
            recipe.ifGiven(record::recipe);
            lots.orElse(List.of()).stream().flatMap(Optional::stream).forEach(lot -> {
                lot.fibre().ifPresent(fibre -> record.lot(fibre, lot.name()));
                lot.additive().ifPresent(additive -> record.additiveLot(additive, lot.name()));
            });
            if (table.isGiven() || own.isGiven()) {
                Assumptions known = table.orElse(Assumptions.standard()).withAll(own.orElse(List.of()));
                ownAt.writtenAs(own.orElse(List.of()), known.own());
                record.assumptions(known);
            }
            beater.ifGiven(record::beater);
            vat.ifGiven(record::vat);
            press.ifGiven(record::press);
            dryer.ifGiven(record::dryer);
            colour.ifGiven(record::colour);
            note.ifGiven(record::note);
            planned.orElse(List.of()).forEach(one -> record.planned(one.figure(), one.value()));
            List<Optional<Measurement>> all = measured.orElse(List.of());
            List<Optional<Measurement>> read =
                    all.stream().filter(Optional::isPresent).toList();
            if (read.size() < all.size()) {
                measuredAt.writtenAs(all, read);
            }
            read.forEach(one -> record.add(one.orElseThrow()));
            return record.build();
        });
    }

    public static void write(ObjectWriter out, BatchRecord record) {
        CommonMembers.text(out.member("name"), record.name());
        out.member("date").date(record.date());
        record.recipeAsPlanned()
                .ifPresent(recipe -> out.member("recipe").object(in -> RecipeMapping.write(in, recipe)));
        lots(out, record);
        record.beater().ifPresent(name -> CommonMembers.name(out.member("beater"), name));
        record.vat().ifPresent(name -> CommonMembers.name(out.member("vat"), name));
        record.press().ifPresent(name -> CommonMembers.name(out.member("press"), name));
        record.dryer().ifPresent(name -> CommonMembers.name(out.member("dryer"), name));
        record.colour().ifPresent(lab -> out.member("colour").object(members -> ColourMapping.lab(members, lab)));
        if (!record.note().isEmpty()) {
            CommonMembers.note(out.member("note"), record.note());
        }
        record.assumptions().ifPresent(known -> {
            out.member("edition").text(known.edition());
            List<Assumption> own = known.own();
            if (!own.isEmpty()) {
                Set<String> ids = AssumptionMapping.ids(known.edition());
                out.member("assumptions")
                        .list(
                                CommonMembers.atMost(CommonMembers.MANY, own, "values of one's own"),
                                (item, one) ->
                                        item.object(in -> AssumptionMapping.write(in, one, ids, known.edition())));
            }
        });
        if (!record.planned().isEmpty()) {
            out.member("planned")
                    .list(
                            CommonMembers.atMost(
                                    CommonMembers.MANY, record.planned().entrySet(), "planned figures"),
                            (item, one) -> item.object(in -> planned(in, one)));
        }
        if (!record.measurements().isEmpty()) {
            out.member("measured")
                    .list(record.measurements(), (item, one) -> item.object(in -> MeasurementMapping.write(in, one)));
        }
    }

    /** A measurement; empty where the form was not filled in. */
    private static ReadResult<Optional<Measurement>> measured(ValueReader at) {
        return at.isUnfilled(ReadingMapping.READ)
                ? ReadResult.of(at, Optional.empty())
                : at.object(MeasurementMapping::read).map(Optional::of);
    }

    private static ReadResult<List<Optional<Lot>>> lots(ValueReader at) {
        Names names = Names.ofOthers("lot of");
        return at.list(
                0,
                CommonMembers.MANY,
                one -> one.isBlank("lot")
                        ? ReadResult.of(one, Optional.empty())
                        : one.object(in -> lot(in, names)).map(Optional::of));
    }

    private static ReadResult<Lot> lot(ObjectReader in, Names names) {
        in.exactlyOne("fibre", "additive");
        ReadResult<Fibre> fibre = FibreMapping.read(in.optional("fibre"));
        ReadResult<String> additive = names.add(in.optional("additive").text());
        ReadResult<String> name = in.required("lot").text();
        return in.make(() -> new Lot(fibre.optional(), additive.optional(), name.get()));
    }

    private static void lots(ObjectWriter out, BatchRecord record) {
        List<Lot> lots = new ArrayList<>();
        record.fibreLots().forEach((fibre, lot) -> lots.add(new Lot(Optional.of(fibre), Optional.empty(), lot)));
        record.additiveLots().forEach((name, lot) -> lots.add(new Lot(Optional.empty(), Optional.of(name), lot)));
        if (!lots.isEmpty()) {
            out.member("lots")
                    .list(
                            CommonMembers.atMost(CommonMembers.MANY, lots, "lots"),
                            (item, one) -> item.object(in -> {
                                one.fibre().ifPresent(fibre -> FibreMapping.write(in.member("fibre"), fibre));
                                one.additive().ifPresent(name -> CommonMembers.text(in.member("additive"), name));
                                CommonMembers.text(in.member("lot"), one.name());
                            }));
        }
    }

    private static final Pattern READ = Pattern.compile("(?m)^( *)\"read\": (\".*\"),$");
    private static final Pattern COUNT =
            Pattern.compile("(?m)^( *\"(?:handled|rejected|sheets|good|count)\": )[0-9]+(,?)$");
    private static final Pattern LOT = Pattern.compile("(?m)^( *\"lot\": )\".*\"(,?)$");

    /** The record with the patterns of its measurements, every lot of which is to be named. */
    public static BatchRecord patterns(EmptyRecord empty) {
        BatchRecord.Builder record = empty.record().toBuilder();
        for (Fibre fibre : empty.record().furnish().map(Furnish::fibres).orElse(List.of())) {
            record.lot(fibre, "to be named");
        }
        empty.record()
                .recipeAsPlanned()
                .ifPresent(recipe -> recipe.additives().forEach(dose -> record.lot(dose.additive(), "to be named")));
        empty.blanks().forEach(blank -> record.add(blank.asPlanned()));
        return record.build();
    }

    /** Empties the patterns: what was to be read is blank, and what is planned stands beside the blank. */
    public static String emptied(String text) {
        String read = READ.matcher(text).replaceAll("$1\"read\": \"\",\n$1\"planned\": $2,");
        return LOT.matcher(COUNT.matcher(read).replaceAll("$1\"\"$2")).replaceAll("$1\"\"$2");
    }

    private static ReadResult<String> place(ObjectReader in, String member) {
        return CommonMembers.sayable(in.optional(member).text());
    }

    private static ReadResult<List<Planned>> planned(ValueReader at) {
        Names names = Names.ofOthers("planned figure");
        return at.list(
                0,
                CommonMembers.MANY,
                one -> one.object(in -> {
                    ReadResult<String> figure = names.add(in.required("figure").text());
                    ReadResult<Kind<?>> kind = in.required("kind").choice(Kinds.all(), Kind::name);
                    ValueReader value = in.required("value");
                    // Without its kind nobody can say which units it may have.
                    ReadResult<? extends Amount<?>> amount =
                            kind.isFaulty() || !kind.isGiven() ? ReadResult.faulty(value) : quantity(value, kind.get());
                    return in.make(() -> new Planned(figure.get(), amount.get()));
                }));
    }

    private static <Q extends Quantity<Q>> ReadResult<Amount<?>> quantity(ValueReader at, Kind<Q> kind) {
        return at.quantity(kind).map(amount -> amount);
    }

    private static void planned(ObjectWriter out, Map.Entry<String, Amount<?>> figure) {
        CommonMembers.text(out.member("figure"), figure.getKey());
        out.member("kind").text(figure.getValue().kind().name());
        quantity(out.member("value"), figure.getValue());
    }

    private static <Q extends Quantity<Q>> void quantity(ValueWriter out, Amount<Q> amount) {
        out.quantity(amount);
    }
}
