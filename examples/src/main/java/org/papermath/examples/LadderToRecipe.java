package org.papermath.examples;

import static org.papermath.quantity.Amounts.hours;

import java.io.IOException;
import java.io.PrintStream;
import org.papermath.colour.ColourDrawing;
import org.papermath.colour.ColourMatch;
import org.papermath.colour.Lab;
import org.papermath.colour.Pigment;
import org.papermath.fibre.Fibres;
import org.papermath.fibre.Furnish;
import org.papermath.format.Formats;
import org.papermath.order.Order;
import org.papermath.order.Piece;
import org.papermath.order.Recipe;
import org.papermath.plan.MakingPlan;
import org.papermath.pulp.Additive;
import org.papermath.pulp.AdditiveDose;
import org.papermath.quantity.Dose;
import org.papermath.quantity.Grammage;

/** From ladders of swatches to the grams of each pigment for a batch of the studio, a dispersion among them. */
public final class LadderToRecipe {
    private LadderToRecipe() {}

    /**
     * Prints the pigments, the match and what to weigh.
     *
     * @param args the path of a file for the picture of a ladder, if one is wanted
     * @throws IOException if it cannot be saved
     */
    public static void main(String[] args) throws IOException {
        print(Output.utf8());
        Output.save(args, picture());
    }

    static void print(PrintStream out) {
        StudioColours.palette().pigments().forEach(out::println);
        ColourMatch match = StudioColours.palette().match(Lab.of(52, 3, 14));
        ColourMatch.Proposal sand = match.best();
        out.println("wanted " + match.target() + ", told " + sand.colour());
        out.println("most of that is " + sand.colour().causes().get(0));

        Recipe.Builder recipe = Recipe.of("sand", Furnish.of(Fibres.COTTON_RAG)).beating(hours(3));
        for (AdditiveDose dose : sand.doses()) {
            recipe.additive(dose.additive(), dose.dose());
        }
        recipe.additive(Additive.of("retention aid", Additive.Purpose.RETENTION_AID), Dose.percent(0.1));
        Order order = Order.of("sand cards")
                .recipe(recipe.build())
                .piece(Piece.of("card", 60, "sand")
                        .size(Formats.ISO_A6)
                        .grammage(Grammage.gsm(240))
                        .build())
                .build();
        MakingPlan plan = MakingPlan.of(order, Embed.studio());
        out.println("for " + plan.batch("sand").fibre().ovenDry() + " of oven-dry fibre, loads: "
                + plan.batch("sand").beating().loads());
        plan.batch("sand").additives().forEach(out::println);
    }

    static ColourDrawing picture() {
        Pigment ochre = StudioColours.palette().pigments().get(0);
        return ColourDrawing.ladder("Yellow ochre on white rag", ochre);
    }
}
