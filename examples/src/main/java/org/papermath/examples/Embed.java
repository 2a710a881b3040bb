package org.papermath.examples;

import static org.papermath.quantity.Amounts.celsius;
import static org.papermath.quantity.Amounts.grams;
import static org.papermath.quantity.Amounts.hours;
import static org.papermath.quantity.Amounts.litres;
import static org.papermath.quantity.Amounts.mm;
import static org.papermath.quantity.Amounts.shortTons;

import java.io.PrintStream;
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
import org.papermath.plan.MakingPlan;
import org.papermath.plan.PiecePlan;
import org.papermath.press.Felts;
import org.papermath.press.Press;
import org.papermath.pulp.Additive;
import org.papermath.pulp.Beater;
import org.papermath.quantity.Dose;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.RelativeHumidity;
import org.papermath.quantity.Share;
import org.papermath.vat.Vat;

/** How another program builds an order in code and reads the plan. */
public final class Embed {
    private Embed() {}

    /**
     * Plans a small order and prints some of its figures.
     *
     * @param args none
     */
    public static void main(String[] args) {
        print(Output.utf8());
    }

    static void print(PrintStream out) {
        MakingPlan plan = MakingPlan.of(order(), studio());

        // A setting is what to do: an amount, without a band.
        out.println("weigh      " + plan.batch("tide grey").fibre());
        PiecePlan programme = plan.piece("programme");
        out.println("pull       " + programme.counts());
        out.println("vat        " + programme.vat());

        // A forecast is what will come out: an estimate, with a band.
        out.println("grammage   " + programme.finished().grammage());
        out.println("good       " + programme.counts().good());

        // A stage that could not be planned says why.
        out.println("surface    " + programme.sizingStage());

        // What to measure first, and what the plan should not be read without.
        plan.sensitivity().stream().limit(3).forEach(line -> out.println("measure    " + line));
        plan.notices().forEach(notice -> out.println(notice.level() + "  " + notice.code()));
    }

    /** The order this program plans. */
    public static Order order() {
        Recipe grey = Recipe.of(
                        "tide grey",
                        Furnish.of(Share.percent(70), Fibres.COTTON_RAG, Share.percent(30), Fibres.FLAX_RAW))
                .beating(hours(3))
                .additive(Additive.of("slate pigment", Additive.Purpose.PIGMENT), Dose.percent(1.2))
                .additive(Additive.of("retention aid", Additive.Purpose.RETENTION_AID), Dose.percent(0.1))
                .additive(Additive.of("calcium carbonate", Additive.Purpose.CARBONATE), Dose.percent(3))
                .additive(
                        Additive.of("ketene dimer size", Additive.Purpose.INTERNAL_SIZE)
                                .active(Share.percent(12)),
                        Dose.percent(0.3))
                .build();
        return Order.of("midwinter concert")
                .recipe(grey)
                .piece(Piece.of("programme", 70, "tide grey")
                        .size(Formats.ISO_A5)
                        .grammage(Grammage.gsm(130))
                        .folds(1)
                        .build())
                .piece(Piece.of("seat card", 96, "tide grey")
                        .size(mm(55), mm(90))
                        .grammage(Grammage.gsm(240))
                        .build())
                .piece(Piece.of("envelope", 40, "tide grey")
                        .grammage(Grammage.gsm(95))
                        .envelopeFor("programme", EnvelopeStyle.SIDE_SEAM)
                        .mailedIn("United States")
                        .build())
                .due(LocalDate.of(2027, 1, 22))
                .build();
    }

    /** The studio it is made in. */
    public static Studio studio() {
        return Studio.of("a one-room studio")
                .beater(Beater.of("the big beater", litres(45), grams(900)))
                .vat(Vat.of("the oak vat", litres(70)))
                .mould(Mould.of("half imperial", mm(380), mm(560)))
                .mould(Mould.of("octavo", mm(240), mm(310)))
                .press(Press.of("the long press", shortTons(20), mm(450), mm(600))
                        .part("frame", shortTons(15))
                        .daylight(mm(300)))
                .felts(Felts.of(mm(450), mm(620), Grammage.gsm(500), 25))
                .dryer(Dryer.boards("the boards", 24))
                .dryer(Dryer.loft("the loft", 4, 120))
                .room(Air.of(celsius(18), RelativeHumidity.percent(58)))
                .alsoCustomaryUnits()
                .build();
    }
}
