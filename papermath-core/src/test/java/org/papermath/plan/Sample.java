package org.papermath.plan;

import static org.papermath.quantity.Amounts.celsius;
import static org.papermath.quantity.Amounts.grams;
import static org.papermath.quantity.Amounts.hours;
import static org.papermath.quantity.Amounts.litres;
import static org.papermath.quantity.Amounts.mm;
import static org.papermath.quantity.Amounts.shortTons;

import java.time.LocalDate;
import org.papermath.air.Air;
import org.papermath.drying.Dryer;
import org.papermath.envelope.EnvelopeStyle;
import org.papermath.fibre.Fibres;
import org.papermath.fibre.Furnish;
import org.papermath.format.Formats;
import org.papermath.mould.Mould;
import org.papermath.order.Order;
import org.papermath.order.Piece;
import org.papermath.order.Recipe;
import org.papermath.order.Studio;
import org.papermath.press.Felts;
import org.papermath.press.Press;
import org.papermath.pulp.Additive;
import org.papermath.pulp.Beater;
import org.papermath.quantity.Dose;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.RelativeHumidity;
import org.papermath.quantity.Share;
import org.papermath.vat.Vat;

/** An invented order and studio for the tests of the plan. */
final class Sample {
    private Sample() {}

    static Recipe.Builder recipe() {
        return Recipe.of("fog blue", Furnish.of(Share.percent(60), Fibres.COTTON_RAG, Share.percent(40), Fibres.ABACA))
                .beating(hours(2.5))
                .additive(Additive.of("blue pigment", Additive.Purpose.PIGMENT), Dose.percent(2))
                .additive(Additive.of("retention aid", Additive.Purpose.RETENTION_AID), Dose.percent(0.1))
                .additive(Additive.of("carbonate", Additive.Purpose.CARBONATE), Dose.percent(3));
    }

    static Order order() {
        return Order.of("reading evening")
                .recipe(recipe().build())
                .piece(Piece.of("leaflet", 60, "fog blue")
                        .size(Formats.ISO_A5)
                        .grammage(Grammage.gsm(120))
                        .folds(1)
                        .build())
                .piece(Piece.of("place card", 40, "fog blue")
                        .size(mm(60), mm(90))
                        .grammage(Grammage.gsm(220))
                        .build())
                .piece(Piece.of("cover", 30, "fog blue")
                        .grammage(Grammage.gsm(90))
                        .envelopeFor("leaflet", EnvelopeStyle.SIDE_SEAM)
                        .mailedIn("Germany")
                        .build())
                .due(LocalDate.of(2027, 3, 5))
                .build();
    }

    static Studio.Builder bare() {
        return Studio.of("test studio")
                .mould(Mould.of("folio", mm(320), mm(420)))
                .mould(Mould.of("small", mm(230), mm(300)))
                .room(Air.of(celsius(19), RelativeHumidity.percent(52)));
    }

    static Studio studio() {
        return bare().beater(Beater.of("hollander", litres(40), grams(800)))
                .vat(Vat.of("tub", litres(80)))
                .press(Press.of("jack press", shortTons(12), mm(400), mm(500)).part("frame", shortTons(20)))
                .felts(Felts.of(mm(380), mm(480), Grammage.gsm(450), 21))
                .dryer(Dryer.boards("boards", 30))
                .dryer(Dryer.loft("loft", 4, 100))
                .build();
    }
}
