package org.papermath.examples;

import java.io.IOException;
import java.io.PrintStream;
import java.util.ArrayList;
import java.util.List;
import org.papermath.colour.ColourComparison;
import org.papermath.colour.ColourDrawing;
import org.papermath.colour.ColourMatch;
import org.papermath.colour.Lab;
import org.papermath.colour.PigmentedPulp;
import org.papermath.colour.Reflectance;
import org.papermath.colour.Wavebands;
import org.papermath.evidence.Assumptions;
import org.papermath.pulp.AdditiveDose;
import org.papermath.quantity.Amounts;

/** A warm grey of three pigments for a load of 800 g, corrected after two trial swatches by additions only. */
public final class WarmGrey {
    private static final Lab WANTED = Lab.of(58, 2, 8);

    private WarmGrey() {}

    /**
     * Prints what to give, what the trials say, and what to add.
     *
     * @param args the path of a file for the picture of the trials, if one is wanted
     * @throws IOException if it cannot be saved
     */
    public static void main(String[] args) throws IOException {
        print(Output.utf8());
        Output.save(args, picture());
    }

    static void print(PrintStream out) {
        PigmentedPulp palette = StudioColours.palette("yellow ochre", "red oxide", "bone black");
        List<AdditiveDose> given = palette.match(WANTED).best().beforeTrial();
        say(out, "give first", given);
        for (Reflectance trial : List.of(firstTrial(), secondTrial())) {
            out.println("trial: " + ColourComparison.of(WANTED, trial.lab(), Assumptions.standard()));
            ColourMatch.Proposal next =
                    palette.afterTrial(given, trial).match(WANTED).best();
            say(out, "add", next.additions());
            out.println("it should then be " + next.colour());
            given = together(given, next.additions());
        }
        out.println("made: " + ColourComparison.of(WANTED, made().lab(), Assumptions.standard()));
    }

    private static void say(PrintStream out, String what, List<AdditiveDose> doses) {
        for (AdditiveDose dose : doses) {
            out.println(what + " " + dose.product(Amounts.grams(800)) + " of "
                    + dose.additive().name());
        }
    }

    /** What is in the beater once more is added. */
    private static List<AdditiveDose> together(List<AdditiveDose> there, List<AdditiveDose> added) {
        List<AdditiveDose> all = new ArrayList<>(added);
        all.addAll(there);
        return all;
    }

    private static Reflectance firstTrial() {
        return Reflectance.of(
                Wavebands.SIXTEEN,
                0.261,
                0.262,
                0.266,
                0.273,
                0.283,
                0.293,
                0.305,
                0.318,
                0.330,
                0.341,
                0.349,
                0.354,
                0.356,
                0.357,
                0.358,
                0.358);
    }

    private static Reflectance secondTrial() {
        return Reflectance.of(
                Wavebands.SIXTEEN,
                0.219,
                0.218,
                0.221,
                0.226,
                0.234,
                0.243,
                0.252,
                0.263,
                0.274,
                0.286,
                0.297,
                0.303,
                0.306,
                0.308,
                0.310,
                0.312);
    }

    /** The sheets that came of it. */
    private static Reflectance made() {
        return Reflectance.of(
                Wavebands.SIXTEEN,
                0.209,
                0.207,
                0.208,
                0.213,
                0.219,
                0.227,
                0.237,
                0.247,
                0.258,
                0.269,
                0.279,
                0.284,
                0.288,
                0.290,
                0.293,
                0.296);
    }

    static ColourDrawing picture() {
        Reflectance wanted = Reflectance.ofColour(WANTED.xyz());
        return ColourDrawing.toldAndMade(
                "A warm grey on its way",
                List.of(
                        new ColourDrawing.Pair("first trial", wanted, firstTrial()),
                        new ColourDrawing.Pair("second trial", wanted, secondTrial()),
                        new ColourDrawing.Pair("the sheets", wanted, made())),
                Assumptions.standard());
    }
}
