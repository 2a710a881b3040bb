package org.papermath.cost;

import static org.papermath.quantity.Amounts.celsius;
import static org.papermath.quantity.Amounts.grams;
import static org.papermath.quantity.Amounts.hours;
import static org.papermath.quantity.Amounts.litres;
import static org.papermath.quantity.Amounts.minutes;
import static org.papermath.quantity.Amounts.mm;
import static org.papermath.quantity.Amounts.shortTons;
import static org.papermath.quantity.Amounts.watts;

import java.time.LocalDate;
import java.util.Currency;
import org.papermath.air.Air;
import org.papermath.drying.Dryer;
import org.papermath.fibre.Fibres;
import org.papermath.fibre.Furnish;
import org.papermath.format.Formats;
import org.papermath.mould.Mould;
import org.papermath.order.Order;
import org.papermath.order.Piece;
import org.papermath.order.Recipe;
import org.papermath.order.Studio;
import org.papermath.plan.MakingPlan;
import org.papermath.press.Felts;
import org.papermath.press.Press;
import org.papermath.pulp.Additive;
import org.papermath.pulp.Beater;
import org.papermath.quantity.Dose;
import org.papermath.quantity.FibreConcentration;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.RelativeHumidity;
import org.papermath.quantity.Share;
import org.papermath.vat.Vat;

/** An invented order, studio and list of prices; every price is invented. */
final class CostSample {
    static final Currency EUR = Currency.getInstance("EUR");

    private CostSample() {}

    static Order order(int menus, int cards) {
        Recipe white = Recipe.of(
                        "bone white", Furnish.of(Share.percent(60), Fibres.COTTON_RAG, Share.percent(40), Fibres.ABACA))
                .beating(hours(2.5))
                .additive(Additive.of("carbonate", Additive.Purpose.CARBONATE), Dose.percent(3))
                .build();
        Recipe rust = Recipe.of("rust", Furnish.of(Fibres.COTTON_RAG))
                .beating(hours(2))
                .additive(Additive.of("rust pigment", Additive.Purpose.PIGMENT), Dose.percent(4))
                .additive(Additive.of("carbonate", Additive.Purpose.CARBONATE), Dose.percent(3))
                .sizeBath(FibreConcentration.gramsPerLitre(26))
                .build();
        return Order.of("supper of the guild")
                .recipe(white)
                .recipe(rust)
                .piece(Piece.of("menu", menus, "bone white")
                        .size(Formats.ISO_A5)
                        .grammage(Grammage.gsm(140))
                        .build())
                .piece(Piece.of("place card", cards, "bone white")
                        .size(mm(60), mm(90))
                        .grammage(Grammage.gsm(220))
                        .build())
                .piece(Piece.of("cover", 20, "rust")
                        .size(mm(220), mm(300))
                        .grammage(Grammage.gsm(180))
                        .build())
                .due(LocalDate.of(2027, 4, 9))
                .build();
    }

    static Studio studio() {
        return Studio.of("test studio")
                .mould(Mould.of("folio", mm(320), mm(420)))
                .mould(Mould.of("small", mm(230), mm(300)))
                .room(Air.of(celsius(19), RelativeHumidity.percent(52)))
                .beater(Beater.of("hollander", litres(40), grams(800)))
                .vat(Vat.of("tub", litres(80)))
                .press(Press.of("jack press", shortTons(12), mm(400), mm(500)).part("frame", shortTons(20)))
                .felts(Felts.of(mm(380), mm(480), Grammage.gsm(450), 21))
                .dryer(new Dryer.FanStack("stack", Kinds.VOLUME_FLOW.of(200, "m3/h"), 30))
                .build();
    }

    static MakingPlan plan() {
        return MakingPlan.of(order(60, 40), studio());
    }

    static PriceList.Builder prices() {
        return PriceList.of("spring", LocalDate.of(2027, 1, 4), EUR)
                .fibre(Fibres.COTTON_RAG, MoneyRate.read(Kinds.MASS, "14 EUR per kg"))
                .fibre(Fibres.ABACA, MoneyRate.read(Kinds.MASS, "11.50 EUR per kg"))
                .additive("carbonate", MoneyRate.read(Kinds.MASS, "4.20 EUR per 1 kg pack"))
                .additive("rust pigment", MoneyRate.read(Kinds.MASS, "9.80 EUR per 100 g"))
                .size(MoneyRate.read(Kinds.MASS, "31 EUR per kg"))
                .water(MoneyRate.read(Kinds.VOLUME, "2.10 EUR per m3"))
                .drain(MoneyRate.read(Kinds.VOLUME, "3.05 EUR per m3"))
                .energy(MoneyRate.read(Kinds.ENERGY, "0.314 EUR per kW.h"))
                .beaterPower(watts(750))
                .dryerPower(watts(60))
                .hands(MoneyRate.read(Kinds.TIME, "24 EUR per h"))
                .machine(MoneyRate.read(Kinds.TIME, "3 EUR per h"))
                .cleaning(minutes(90))
                .felt(Wear.of(MoneyRate.read(Kinds.NUMBER, "4.20 EUR per piece"), 400))
                .overhead(Overhead.perMonth("rent", Money.of("620 EUR"), hours(120)))
                .overhead(Overhead.onCost("office", Markup.percent(5)))
                .line(OwnLine.perOrder("proofs", Money.of("25 EUR")))
                .line(OwnLine.perPiece("sleeve", Money.of("0.12 EUR")))
                .line(OwnLine.perParcel("postage", Money.of("7.90 EUR"), 50));
    }

    static Costing costing() {
        return Costing.of(plan(), prices().build());
    }
}
