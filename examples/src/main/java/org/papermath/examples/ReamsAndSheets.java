package org.papermath.examples;

import static org.papermath.quantity.Amounts.inches;
import static org.papermath.quantity.Amounts.percent;
import static org.papermath.quantity.Units.GSM;

import java.io.PrintStream;
import org.papermath.format.Formats;
import org.papermath.format.Ream;
import org.papermath.format.ReamBasis;
import org.papermath.format.Substance;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Unclear;

/** Weights of reams and of sheets: what a label says, what it leaves open, and what a sheet of one's own weighs. */
public final class ReamsAndSheets {
    private ReamsAndSheets() {}

    /**
     * Prints some weights.
     *
     * @param args none
     */
    public static void main(String[] args) {
        print(Output.utf8());
    }

    static void print(PrintStream out) {
        // A pound is the weight of a ream, and every grade has its own: 80 lb of two grades are not alike.
        out.println("80 lb cover is " + ReamBasis.COVER.pounds(80).to(GSM) + ", 80 lb text "
                + ReamBasis.TEXT.pounds(80).to(GSM));
        out.println("130 g/m² is " + Math.round(ReamBasis.TEXT.poundsOf(Grammage.gsm(130))) + " lb text, "
                + Math.round(ReamBasis.COVER.poundsOf(Grammage.gsm(130))) + " lb cover");

        // A label that names no grade: which of them explain a sheet that was weighed?
        out.println(
                "80 lb on the label, 120 g/m² on the scale: " + ReamBasis.fitting(80, Grammage.gsm(120), percent(3)));

        // A ream without its count is asked back, with what each count would give.
        try {
            ReamBasis.ofUnknownCount(80, inches(20), inches(26));
        } catch (Unclear asked) {
            out.println(asked.getMessage());
        }

        // What one sheet of one's own weighs, and a mill ream of them.
        var sheet = Substance.sheetMass(Grammage.gsm(130), Formats.ISO_A5.width(), Formats.ISO_A5.height());
        out.println("a sheet of ISO A5 at 130 g/m² weighs " + sheet + ", 500 of them " + sheet.multiply(500));
        out.println("1270 sheets are " + Ream.of(500).words(1270));
    }
}
