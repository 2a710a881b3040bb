package org.papermath.examples;

import java.io.IOException;
import java.io.PrintStream;
import org.papermath.colour.ColourComparison;
import org.papermath.colour.ColourDrawing;
import org.papermath.colour.ColourMatch;
import org.papermath.colour.ColourReading;
import org.papermath.colour.Lab;
import org.papermath.colour.PigmentedPulp;
import org.papermath.colour.Reflectance;
import org.papermath.colour.Wavebands;
import org.papermath.evidence.Assumptions;

/** An old sheet is read and matched: by a colorimeter, which tells the colour by day, and by bands, which tell it by lamp too. */
public final class MatchAnOldSheet {
    private static final Assumptions TABLE = Assumptions.standard();

    private MatchAnOldSheet() {}

    /**
     * Prints both matches, and what an eye would see of them.
     *
     * @param args the path of a file for the picture of what the pigments reach, if one is wanted
     * @throws IOException if it cannot be saved
     */
    public static void main(String[] args) throws IOException {
        print(Output.utf8());
        Output.save(args, picture());
    }

    static void print(PrintStream out) {
        PigmentedPulp palette = StudioColours.palette();
        ColourReading old = byColorimeter();
        out.println("by colorimeter: " + old);
        print(out, palette.match(old.reflectance()), old.reflectance());
        out.println("by bands: " + byBands());
        print(out, palette.match(byBands()), byBands());
    }

    private static void print(PrintStream out, ColourMatch match, Reflectance old) {
        match.proposals().forEach(one -> out.println("  " + one));
        ColourMatch.Proposal best = match.best();
        if (best.differenceUnderLamp().isEmpty()) {
            out.println("  three bands do not tell it under a lamp: hold a swatch beside the sheet there");
        }
        out.println("  beside the old sheet: "
                + ColourComparison.of(old, best.colour().reflectance(), TABLE));
    }

    /** Three places of the sheet. */
    private static ColourReading byColorimeter() {
        return ColourReading.of(TABLE, Lab.of(74.1, 3.6, 19.8), Lab.of(74.5, 3.4, 19.5), Lab.of(73.9, 3.7, 20.2));
    }

    /** The same sheet every 20 nm; it is of a dye that the studio does not have. */
    private static Reflectance byBands() {
        return Reflectance.of(
                Wavebands.SIXTEEN,
                0.363,
                0.293,
                0.267,
                0.303,
                0.385,
                0.422,
                0.395,
                0.403,
                0.474,
                0.566,
                0.578,
                0.527,
                0.501,
                0.530,
                0.602,
                0.676);
    }

    static ColourDrawing picture() {
        PigmentedPulp palette = StudioColours.palette();
        return ColourDrawing.reach("What four pigments reach", palette, palette.match(byBands()));
    }
}
