package org.papermath.json.mapping;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.Currency;
import java.util.List;
import java.util.Optional;
import org.papermath.cost.Money;
import org.papermath.cost.Quotation;
import org.papermath.json.DocumentFormat;
import org.papermath.json.kit.ObjectReader;
import org.papermath.json.kit.ObjectWriter;
import org.papermath.json.kit.ReadResult;
import org.papermath.json.kit.ValueReader;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Limits;
import org.papermath.quantity.Share;

/** A quotation. Sums follow from its lines and are not written. */
public final class QuotationMapping {
    public static final DocumentFormat QUOTATION = new DocumentFormat("quotation", 1, 0);

    private record Offered(String piece, int count, Money price, List<String> promised, Optional<Money> seconds) {}

    private record Tax(String name, BigDecimal percent) {}

    private QuotationMapping() {}

    public static ReadResult<Quotation> read(ObjectReader in) {
        ReadResult<String> name = in.required("name").text();
        ReadResult<String> studio = in.required("studio").text();
        ReadResult<LocalDate> date = in.required("date").date();
        ReadResult<LocalDate> until = in.required("holdsUntil").date();
        ReadResult<Currency> currency = in.required("currency").text().map(Money::currency);
        Names names = new Names("piece");
        ReadResult<List<Offered>> lines =
                in.required("lines").list(1, CommonMembers.MANY, one -> one.object(line -> offered(line, names)));
        ReadResult<Money> least = PricesMapping.money(in.optional("leastOrder"));
        ReadResult<Tax> tax = in.optional("tax").object(QuotationMapping::tax);
        ReadResult<BigDecimal> deposit = percent(in.optional("deposit"));
        ReadResult<String> restsOn = in.optional("restsOn").text();
        ReadResult<String> note = in.optional("note").text();
        return in.make(() -> {
            Quotation.Builder quotation =
                    Quotation.of(name.get(), studio.get(), date.get(), until.get(), currency.get());
            for (Offered one : lines.get()) {
                quotation.line(one.piece(), one.count(), one.price(), one.promised());
                one.seconds().ifPresent(money -> quotation.seconds(one.piece(), money));
            }
            least.ifGiven(quotation::leastOrder);
            tax.ifGiven(one -> quotation.tax(one.name(), one.percent()));
            deposit.ifGiven(quotation::deposit);
            restsOn.ifGiven(quotation::restsOn);
            note.ifGiven(quotation::note);
            return quotation.build();
        });
    }

    private static ReadResult<Offered> offered(ObjectReader in, Names names) {
        ReadResult<String> piece = names.add(in.required("piece").text());
        ReadResult<Integer> count = CommonMembers.count(in.required("count"), Limits.PIECES);
        ReadResult<Money> price = PricesMapping.money(in.required("price"));
        ReadResult<List<String>> promised = in.optional("promised").list(0, CommonMembers.MANY, ValueReader::text);
        ReadResult<Money> seconds = PricesMapping.money(in.optional("seconds"));
        return in.make(() ->
                new Offered(piece.get(), count.get(), price.get(), promised.orElse(List.of()), seconds.optional()));
    }

    private static ReadResult<Tax> tax(ObjectReader in) {
        ReadResult<String> name = in.required("name").text();
        ReadResult<BigDecimal> percent = percent(in.required("share"));
        return in.make(() -> new Tax(name.get(), percent.get()));
    }

    private static ReadResult<BigDecimal> percent(ValueReader at) {
        return at.quantity(Kinds.SHARE).map(share -> BigDecimal.valueOf(share.in("%")));
    }

    private static Amount<Share> share(BigDecimal percent) {
        return Share.percent(percent.doubleValue());
    }

    public static void write(ObjectWriter out, Quotation quotation) {
        CommonMembers.text(out.member("name"), quotation.name());
        CommonMembers.text(out.member("studio"), quotation.studio());
        out.member("date").date(quotation.date());
        out.member("holdsUntil").date(quotation.holdsUntil());
        out.member("currency").text(quotation.currency().getCurrencyCode());
        out.member("lines")
                .list(
                        CommonMembers.atMost(CommonMembers.MANY, quotation.lines(), "lines"),
                        (item, one) -> item.object(in -> line(in, one)));
        quotation.leastOrder().ifPresent(one -> out.member("leastOrder").text(one.toString()));
        quotation
                .taxPercent()
                .ifPresent(percent -> out.member("tax").object(in -> {
                    CommonMembers.text(in.member("name"), quotation.taxName());
                    in.member("share").quantity(share(percent));
                }));
        quotation.depositPercent().ifPresent(percent -> out.member("deposit").quantity(share(percent)));
        if (!quotation.restsOn().isEmpty()) {
            CommonMembers.text(out.member("restsOn"), quotation.restsOn());
        }
        if (!quotation.note().isEmpty()) {
            CommonMembers.text(out.member("note"), quotation.note());
        }
    }

    private static void line(ObjectWriter out, Quotation.Line line) {
        CommonMembers.text(out.member("piece"), line.piece());
        out.member("count").count(line.count());
        out.member("price").text(line.price().toString());
        if (!line.promised().isEmpty()) {
            out.member("promised")
                    .list(CommonMembers.atMost(CommonMembers.MANY, line.promised(), "promises"), CommonMembers::text);
        }
        line.seconds().ifPresent(one -> out.member("seconds").text(one.toString()));
    }
}
