package org.papermath.json;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;

import javax.measure.Quantity;

import org.papermath.fibre.Furnish;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kind;
import org.papermath.quantity.Kinds;
import org.papermath.record.BatchRecord;
import org.papermath.record.Measurement;

/** A record of a batch. What was planned and what was measured are members of their own. */
final class RecordMapping {
    static final DocumentFormat RECORD = new DocumentFormat("record", 1, 0);

    private record Planned(String figure, Amount<?> value) {
    }

    private record Made(Got<String> name, Got<Furnish> furnish) {
    }

    private RecordMapping() {
    }

    static Got<BatchRecord> read(ObjectAt in) {
        Got<String> name = in.required("name").text();
        Got<LocalDate> date = in.required("date").date();
        Got<Made> recipe = in.optional("recipe").object(RecordMapping::recipe);
        Got<String> beater = place(in, "beater");
        Got<String> vat = place(in, "vat");
        Got<String> press = place(in, "press");
        Got<String> dryer = place(in, "dryer");
        Got<String> note = in.optional("note").note();
        Got<List<Planned>> planned = planned(in.optional("planned"));
        Got<List<Measurement>> measured = in.optional("measured").list(one -> one.object(MeasurementMapping::read));
        return in.make(() -> {
            BatchRecord.Builder record = BatchRecord.builder(name.get(), date.get());
            recipe.ifGiven(made -> record.recipe(made.name().get(), made.furnish().get()));
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

    static void write(ObjectOut out, BatchRecord record) {
        Common.text(out.member("name"), record.name());
        out.member("date").date(record.date());
        record.recipe().ifPresent(recipe -> out.member("recipe").object(in -> {
            Common.name(in.member("name"), recipe);
            RecipeMapping.furnish(in.member("furnish"), record.furnish().orElseThrow());
        }));
        record.beater().ifPresent(name -> Common.name(out.member("beater"), name));
        record.vat().ifPresent(name -> Common.name(out.member("vat"), name));
        record.press().ifPresent(name -> Common.name(out.member("press"), name));
        record.dryer().ifPresent(name -> Common.name(out.member("dryer"), name));
        if (!record.note().isEmpty()) {
            Common.note(out.member("note"), record.note());
        }
        if (!record.planned().isEmpty()) {
            out.member("planned").list(Common.atMost(Common.MANY, record.planned().entrySet(), "planned figures"),
                     (item, one) -> item.object(in -> planned(in, one)));
        }
        if (!record.measurements().isEmpty()) {
            out.member("measured").list(record.measurements(),
                    (item, one) -> item.object(in -> MeasurementMapping.write(in, one)));
        }
    }

    private static Got<Made> recipe(ObjectAt in) {
        Got<String> name = Common.name(in);
        Got<Furnish> furnish = RecipeMapping.furnish(in.required("furnish"));
        return in.make(() -> {
            name.get();
            furnish.get();
            return new Made(name, furnish);
        });
    }

    private static Got<String> place(ObjectAt in, String member) {
        return Common.sayable(in.optional(member).text());
    }

    private static Got<List<Planned>> planned(ValueAt at) {
        Names names = new Names("planned figure");
        return at.list(0, Common.MANY, one -> one.object(in -> {
            Got<String> figure = names.add(in.required("figure").text());
            Got<Kind<?>> kind = in.required("kind").choice(Kinds.all(), Kind::name);
            ValueAt value = in.required("value");
            // Without its kind nobody can say which units it may have.
            Got<? extends Amount<?>> amount = kind.isFaulty() || !kind.isGiven() ? Got.faulty(value)
                    : quantity(value, kind.get());
            return in.make(() -> new Planned(figure.get(), amount.get()));
        }));
    }

    private static <Q extends Quantity<Q>> Got<Amount<?>> quantity(ValueAt at, Kind<Q> kind) {
        return at.quantity(kind).map(amount -> amount);
    }

    private static void planned(ObjectOut out, Map.Entry<String, Amount<?>> figure) {
        Common.text(out.member("figure"), figure.getKey());
        out.member("kind").text(figure.getValue().kind().name());
        quantity(out.member("value"), figure.getValue());
    }

    private static <Q extends Quantity<Q>> void quantity(ValueOut out, Amount<Q> amount) {
        out.quantity(amount);
    }
}
