package org.papermath.json.mapping;

import java.time.LocalDate;
import java.util.Currency;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Energy;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Power;
import javax.measure.quantity.Time;
import javax.measure.quantity.Volume;
import org.papermath.cost.Markup;
import org.papermath.cost.Money;
import org.papermath.cost.MoneyRate;
import org.papermath.cost.Overhead;
import org.papermath.cost.OwnLine;
import org.papermath.cost.Postage;
import org.papermath.cost.PostageTable;
import org.papermath.cost.PriceList;
import org.papermath.cost.Wear;
import org.papermath.fibre.Alkali;
import org.papermath.json.DocumentFormat;
import org.papermath.json.kit.ObjectReader;
import org.papermath.json.kit.ObjectWriter;
import org.papermath.json.kit.ReadResult;
import org.papermath.json.kit.ValueReader;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kind;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Limits;

/** A list of prices. Money and prices are texts, which the library reads and prints. */
public final class PricesMapping {
    public static final DocumentFormat PRICES = new DocumentFormat("prices", 1, 0);

    private record Priced<K>(K what, MoneyRate<Mass> price) {}

    private PricesMapping() {}

    public static ReadResult<PriceList> read(ObjectReader in) {
        ReadResult<String> name = in.required("name").text();
        ReadResult<LocalDate> date = in.required("date").date();
        ReadResult<Currency> currency = in.required("currency").text().map(Money::currency);
        ReadResult<List<Priced<String>>> fibres = priced(in.optional("fibres"), "fibre");
        ReadResult<List<Priced<String>>> additives = priced(in.optional("additives"), "additive");
        ReadResult<List<Priced<Alkali>>> alkalis = alkalis(in.optional("alkalis"));
        ReadResult<MoneyRate<Mass>> size = rate(in.optional("size"), Kinds.MASS);
        ReadResult<MoneyRate<Volume>> water = rate(in.optional("water"), Kinds.VOLUME);
        ReadResult<MoneyRate<Volume>> drain = rate(in.optional("drain"), Kinds.VOLUME);
        ReadResult<MoneyRate<Energy>> energy = rate(in.optional("energy"), Kinds.ENERGY);
        ReadResult<Amount<Power>> beater =
                CommonMembers.aboveZero(in.optional("beaterPower"), Kinds.POWER, "beater power");
        ReadResult<Amount<Power>> dryer =
                CommonMembers.aboveZero(in.optional("dryerPower"), Kinds.POWER, "dryer power");
        ReadResult<MoneyRate<Time>> hands = rate(in.optional("hands"), Kinds.TIME);
        ReadResult<MoneyRate<Time>> machine = rate(in.optional("machine"), Kinds.TIME);
        ReadResult<Amount<Time>> cleaning = CommonMembers.aboveZero(in.optional("cleaning"), Kinds.TIME, "cleaning");
        ReadResult<Wear> felt = in.optional("felt").object(PricesMapping::wear);
        ReadResult<Wear> blotter = in.optional("blotter").object(PricesMapping::wear);
        ReadResult<List<Overhead>> overheads =
                in.optional("overheads").list(0, CommonMembers.MANY, one -> one.object(PricesMapping::overhead));
        ReadResult<List<OwnLine>> lines =
                in.optional("lines").list(0, CommonMembers.MANY, one -> one.object(PricesMapping::line));
        ReadResult<PostageTable> postage = in.optional("postage").object(one -> postage(one, currency));
        ReadResult<List<Postage>> posted =
                in.optional("posted").list(0, CommonMembers.MANY, one -> one.object(PricesMapping::posted));
        return in.make(() -> {
            PriceList.Builder list = PriceList.of(name.get(), date.get(), currency.get());
            fibres.orElse(List.of()).forEach(one -> list.fibre(one.what(), one.price()));
            additives.orElse(List.of()).forEach(one -> list.additive(one.what(), one.price()));
            alkalis.orElse(List.of()).forEach(one -> list.alkali(one.what(), one.price()));
            size.ifGiven(list::size);
            water.ifGiven(list::water);
            drain.ifGiven(list::drain);
            energy.ifGiven(list::energy);
            beater.ifGiven(list::beaterPower);
            dryer.ifGiven(list::dryerPower);
            hands.ifGiven(list::hands);
            machine.ifGiven(list::machine);
            cleaning.ifGiven(list::cleaning);
            felt.ifGiven(list::felt);
            blotter.ifGiven(list::blotter);
            overheads.orElse(List.of()).forEach(list::overhead);
            lines.orElse(List.of()).forEach(list::line);
            postage.ifGiven(list::postage);
            posted.orElse(List.of()).forEach(list::post);
            return list.build();
        });
    }

    public static void write(ObjectWriter out, PriceList list) {
        CommonMembers.text(out.member("name"), list.name());
        out.member("date").date(list.date());
        out.member("currency").text(list.currency().getCurrencyCode());
        priced(out, "fibres", "fibre", list.fibres());
        priced(out, "additives", "additive", list.additives());
        if (!list.alkalis().isEmpty()) {
            out.member("alkalis")
                    .list(
                            list.alkalis().entrySet(),
                            (item, one) -> item.object(in -> {
                                in.member("alkali").text(CommonMembers.word(one.getKey()));
                                in.member("price").text(one.getValue().toString());
                            }));
        }
        rate(out, "size", list.size());
        rate(out, "water", list.water());
        rate(out, "drain", list.drain());
        rate(out, "energy", list.energy());
        list.beaterPower().ifPresent(one -> out.member("beaterPower").quantity(one));
        list.dryerPower().ifPresent(one -> out.member("dryerPower").quantity(one));
        rate(out, "hands", list.hands());
        rate(out, "machine", list.machine());
        list.cleaning().ifPresent(one -> out.member("cleaning").quantity(one));
        list.felt().ifPresent(one -> out.member("felt").object(in -> wear(in, one)));
        list.blotter().ifPresent(one -> out.member("blotter").object(in -> wear(in, one)));
        if (!list.overheads().isEmpty()) {
            out.member("overheads")
                    .list(
                            CommonMembers.atMost(CommonMembers.MANY, list.overheads(), "overheads"),
                            (item, one) -> item.object(in -> overhead(in, one)));
        }
        if (!list.lines().isEmpty()) {
            out.member("lines")
                    .list(
                            CommonMembers.atMost(CommonMembers.MANY, list.lines(), "lines"),
                            (item, one) -> item.object(in -> line(in, one)));
        }
        list.postage().ifPresent(one -> out.member("postage").object(in -> postage(in, one)));
        if (!list.posted().isEmpty()) {
            out.member("posted")
                    .list(
                            CommonMembers.atMost(CommonMembers.MANY, list.posted(), "posted"),
                            (item, one) -> item.object(in -> posted(in, one)));
        }
    }

    private static ReadResult<PostageTable> postage(ObjectReader in, ReadResult<Currency> currency) {
        ReadResult<String> carrier = in.required("carrier").text();
        ReadResult<List<PostageTable.Rate>> rates =
                in.required("rates").list(1, CommonMembers.MANY, one -> one.object(PricesMapping::postageRate));
        ReadResult<List<PostageTable.Surcharge>> surcharges =
                in.optional("surcharges").list(0, CommonMembers.MANY, one -> one.object(PricesMapping::surcharge));
        return in.make(() -> {
            PostageTable.Builder table = PostageTable.of(carrier.get(), currency.get());
            rates.get().forEach(table::rate);
            surcharges.orElse(List.of()).forEach(table::surcharge);
            return table.build();
        });
    }

    private static void postage(ObjectWriter out, PostageTable table) {
        CommonMembers.text(out.member("carrier"), table.carrier());
        out.member("rates")
                .list(
                        CommonMembers.atMost(CommonMembers.MANY, table.rates(), "rates"),
                        (item, one) -> item.object(in -> {
                            in.member("from").date(one.from());
                            CommonMembers.text(in.member("service"), one.service());
                            in.member("upTo").quantity(one.upTo());
                            in.member("price").text(one.price().toString());
                            CommonMembers.text(in.member("source"), one.source());
                        }));
        if (!table.surcharges().isEmpty()) {
            out.member("surcharges")
                    .list(
                            CommonMembers.atMost(CommonMembers.MANY, table.surcharges(), "surcharges"),
                            (item, one) -> item.object(in -> {
                                in.member("from").date(one.from());
                                CommonMembers.text(in.member("service"), one.service());
                                CommonMembers.text(in.member("name"), one.name());
                                in.member("price").text(one.price().toString());
                                CommonMembers.text(in.member("source"), one.source());
                            }));
        }
    }

    private static ReadResult<PostageTable.Rate> postageRate(ObjectReader in) {
        ReadResult<LocalDate> from = in.required("from").date();
        ReadResult<String> service = in.required("service").text();
        ReadResult<Amount<Mass>> upTo = CommonMembers.aboveZero(in.required("upTo"), Kinds.MASS, "mass of a step");
        ReadResult<Money> price = money(in.required("price"));
        ReadResult<String> source = in.required("source").text();
        return in.make(() -> new PostageTable.Rate(from.get(), service.get(), upTo.get(), price.get(), source.get()));
    }

    private static ReadResult<PostageTable.Surcharge> surcharge(ObjectReader in) {
        ReadResult<LocalDate> from = in.required("from").date();
        ReadResult<String> service = in.required("service").text();
        ReadResult<String> name = in.required("name").text();
        ReadResult<Money> price = money(in.required("price"));
        ReadResult<String> source = in.required("source").text();
        return in.make(
                () -> new PostageTable.Surcharge(from.get(), service.get(), name.get(), price.get(), source.get()));
    }

    private static ReadResult<Postage> posted(ObjectReader in) {
        ReadResult<Postage.Basis> basis =
                in.required("per").choice(List.of(Postage.Basis.values()), CommonMembers::word);
        boolean known = !basis.isFaulty() && basis.isGiven();
        boolean mailed = known && basis.get() == Postage.Basis.MAILED;
        boolean parcel = known && basis.get() == Postage.Basis.PARCEL;
        ReadResult<String> service =
                (!known ? in.optional("service") : mailed ? in.unasked() : in.required("service")).text();
        ReadResult<Integer> pieces = CommonMembers.count(
                !known ? in.optional("pieces") : parcel ? in.required("pieces") : in.unasked(), Limits.PIECES);
        ReadResult<Amount<Mass>> wrapping = CommonMembers.aboveZero(
                known && !parcel ? in.unasked() : in.optional("wrapping"), Kinds.MASS, "mass of the wrapping");
        ReadResult<List<String>> surcharges = in.optional("surcharges").list(0, CommonMembers.MANY, ValueReader::text);
        ReadResult<String> only = in.optional("only").text();
        return in.make(() -> {
            Postage posted = switch (basis.get()) {
                case MAILED -> Postage.asMailed();
                case PIECE -> Postage.each(service.get());
                case PARCEL -> Postage.parcels(service.get(), pieces.get(), wrapping.orElse(Kinds.MASS.ofSi(0, "g")));
            };
            for (String name : surcharges.orElse(List.of())) {
                posted = posted.with(name);
            }
            return only.isGiven() ? posted.only(only.get()) : posted;
        });
    }

    private static void posted(ObjectWriter out, Postage posted) {
        out.member("per").text(CommonMembers.word(posted.basis()));
        posted.service().ifPresent(one -> CommonMembers.text(out.member("service"), one));
        if (posted.basis() == Postage.Basis.PARCEL) {
            out.member("pieces").count(posted.inParcel());
        }
        if (posted.wrapping().si() > 0) {
            out.member("wrapping").quantity(posted.wrapping());
        }
        if (!posted.surcharges().isEmpty()) {
            out.member("surcharges")
                    .list(
                            CommonMembers.atMost(CommonMembers.MANY, posted.surcharges(), "surcharges"),
                            CommonMembers::text);
        }
        posted.piece().ifPresent(one -> CommonMembers.text(out.member("only"), one));
    }

    static ReadResult<Money> money(ValueReader at) {
        return at.text().map(Money::of);
    }

    private static <Q extends Quantity<Q>> ReadResult<MoneyRate<Q>> rate(ValueReader at, Kind<Q> kind) {
        return at.text().map(text -> MoneyRate.read(kind, text));
    }

    private static void rate(ObjectWriter out, String member, Optional<? extends MoneyRate<?>> rate) {
        rate.ifPresent(one -> out.member(member).text(one.toString()));
    }

    private static ReadResult<List<Priced<String>>> priced(ValueReader at, String what) {
        Names names = Names.ofOthers(what);
        return at.list(
                0,
                CommonMembers.MANY,
                one -> one.object(in -> {
                    ReadResult<String> name = names.add(in.required(what).text());
                    ReadResult<MoneyRate<Mass>> price = rate(in.required("price"), Kinds.MASS);
                    return in.make(() -> new Priced<>(name.get(), price.get()));
                }));
    }

    private static void priced(ObjectWriter out, String list, String what, Map<String, MoneyRate<Mass>> prices) {
        if (!prices.isEmpty()) {
            out.member(list)
                    .list(
                            CommonMembers.atMost(CommonMembers.MANY, prices.entrySet(), list),
                            (item, one) -> item.object(in -> {
                                CommonMembers.text(in.member(what), one.getKey());
                                in.member("price").text(one.getValue().toString());
                            }));
        }
    }

    private static ReadResult<List<Priced<Alkali>>> alkalis(ValueReader at) {
        Names names = Names.ofOthers("alkali");
        return at.list(
                0,
                CommonMembers.MANY,
                one -> one.object(in -> {
                    ReadResult<Alkali> alkali =
                            in.required("alkali").choice(List.of(Alkali.values()), CommonMembers::word);
                    names.add(alkali.map(CommonMembers::word));
                    ReadResult<MoneyRate<Mass>> price = rate(in.required("price"), Kinds.MASS);
                    return in.make(() -> new Priced<>(alkali.get(), price.get()));
                }));
    }

    private static ReadResult<Wear> wear(ObjectReader in) {
        ReadResult<MoneyRate<Dimensionless>> price = rate(in.required("price"), Kinds.NUMBER);
        ReadResult<Integer> uses = in.required("uses").count(1, Wear.MOST_USES);
        return in.make(() -> Wear.of(price.get(), uses.get()));
    }

    private static void wear(ObjectWriter out, Wear wear) {
        out.member("price").text(wear.price().toString());
        out.member("uses").count(wear.uses());
    }

    private static ReadResult<Overhead> overhead(ObjectReader in) {
        in.exactlyOne("perHour", "perDay", "onCost");
        ReadResult<String> name = in.required("name").text();
        ReadResult<MoneyRate<Time>> hour = rate(in.optional("perHour"), Kinds.TIME);
        ReadResult<Money> day = money(in.optional("perDay"));
        ReadResult<Markup> share = in.optional("onCost").text().map(Markup::read);
        return in.make(() -> hour.isGiven()
                ? Overhead.perHour(name.get(), hour.get())
                : day.isGiven() ? Overhead.perDay(name.get(), day.get()) : Overhead.onCost(name.get(), share.get()));
    }

    private static void overhead(ObjectWriter out, Overhead overhead) {
        CommonMembers.text(out.member("name"), overhead.name());
        rate(out, "perHour", overhead.rate());
        overhead.day().ifPresent(one -> out.member("perDay").text(one.toString()));
        overhead.share().ifPresent(one -> out.member("onCost").text(one.toString()));
    }

    private static ReadResult<OwnLine> line(ObjectReader in) {
        ReadResult<String> name = in.required("name").text();
        ReadResult<OwnLine.Basis> basis =
                in.required("per").choice(List.of(OwnLine.Basis.values()), CommonMembers::word);
        ReadResult<Money> money = money(in.required("money"));
        boolean known = !basis.isFaulty() && basis.isGiven();
        boolean parcel = known && basis.get() == OwnLine.Basis.PARCEL;
        boolean shared = known && (basis.get() == OwnLine.Basis.ORDER || basis.get() == OwnLine.Basis.BATCH);
        ReadResult<Integer> pieces = CommonMembers.count(
                !known ? in.optional("pieces") : parcel ? in.required("pieces") : in.unasked(), Limits.PIECES);
        ReadResult<String> only = (shared ? in.unasked() : in.optional("only")).text();
        return in.make(() -> {
            OwnLine line = switch (basis.get()) {
                case ORDER -> OwnLine.perOrder(name.get(), money.get());
                case BATCH -> OwnLine.perBatch(name.get(), money.get());
                case PIECE -> OwnLine.perPiece(name.get(), money.get());
                case PARCEL -> OwnLine.perParcel(name.get(), money.get(), pieces.get());
                case SHEET -> OwnLine.perSheet(name.get(), money.get());
            };
            return only.optional().map(line::only).orElse(line);
        });
    }

    private static void line(ObjectWriter out, OwnLine line) {
        CommonMembers.text(out.member("name"), line.name());
        out.member("per").text(CommonMembers.word(line.basis()));
        out.member("money").text(line.money().toString());
        if (line.basis() == OwnLine.Basis.PARCEL) {
            out.member("pieces").count(line.inParcel());
        }
        line.piece().ifPresent(one -> CommonMembers.text(out.member("only"), one));
    }
}
