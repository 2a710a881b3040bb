package org.papermath.json.mapping;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import javax.measure.Quantity;
import org.papermath.fibre.Furnish;
import org.papermath.json.DocumentFormat;
import org.papermath.json.kit.ObjectReader;
import org.papermath.json.kit.ObjectWriter;
import org.papermath.json.kit.ReadResult;
import org.papermath.json.kit.ValueReader;
import org.papermath.json.kit.ValueWriter;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kind;
import org.papermath.quantity.Kinds;
import org.papermath.record.BatchRecord;
import org.papermath.record.Measurement;

/** A record of a batch. What was planned and what was measured are members of their own. */
public final class RecordMapping {
    public static final DocumentFormat RECORD = new DocumentFormat("record", 1, 0);

    private record Planned(String figure, Amount<?> value) {}

    private record Made(ReadResult<String> name, ReadResult<Furnish> furnish) {}

    private RecordMapping() {}

    public static ReadResult<BatchRecord> read(ObjectReader in) {
        ReadResult<String> name = in.required("name").text();
        ReadResult<LocalDate> date = in.required("date").date();
        ReadResult<Made> recipe = in.optional("recipe").object(RecordMapping::recipe);
        ReadResult<String> beater = place(in, "beater");
        ReadResult<String> vat = place(in, "vat");
        ReadResult<String> press = place(in, "press");
        ReadResult<String> dryer = place(in, "dryer");
        ReadResult<String> note = in.optional("note").note();
        ReadResult<List<Planned>> planned = planned(in.optional("planned"));
        ReadResult<List<Measurement>> measured =
                in.optional("measured").list(one -> one.object(MeasurementMapping::read));
        return in.make(() -> {
            BatchRecord.Builder record = BatchRecord.builder(name.get(), date.get());
            recipe.ifGiven(
                    made -> record.recipe(made.name().get(), made.furnish().get()));
            beater.ifGiven(record::beater);
            vat.ifGiven(record::vat);
            press.ifGiven(record::press);
            dryer.ifGiven(record::dryer);
            note.ifGiven(record::note);
            planned.orElse(List.of()).forEach(one -> record.planned(one.figure(), one.value()));
            measured.orElse(List.of()).forEach(record::add);
            return record.build();
        });
    }

    public static void write(ObjectWriter out, BatchRecord record) {
        CommonMembers.text(out.member("name"), record.name());
        out.member("date").date(record.date());
        record.recipe()
                .ifPresent(recipe -> out.member("recipe").object(in -> {
                    CommonMembers.name(in.member("name"), recipe);
                    RecipeMapping.furnish(in.member("furnish"), record.furnish().orElseThrow());
                }));
        record.beater().ifPresent(name -> CommonMembers.name(out.member("beater"), name));
        record.vat().ifPresent(name -> CommonMembers.name(out.member("vat"), name));
        record.press().ifPresent(name -> CommonMembers.name(out.member("press"), name));
        record.dryer().ifPresent(name -> CommonMembers.name(out.member("dryer"), name));
        if (!record.note().isEmpty()) {
            CommonMembers.note(out.member("note"), record.note());
        }
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

    private static ReadResult<Made> recipe(ObjectReader in) {
        ReadResult<String> name = CommonMembers.name(in);
        ReadResult<Furnish> furnish = RecipeMapping.furnish(in.required("furnish"));
        return in.make(() -> {
            name.get();
            furnish.get();
            return new Made(name, furnish);
        });
    }

    private static ReadResult<String> place(ObjectReader in, String member) {
        return CommonMembers.sayable(in.optional(member).text());
    }

    private static ReadResult<List<Planned>> planned(ValueReader at) {
        Names names = new Names("planned figure");
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
