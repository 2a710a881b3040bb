package org.papermath.examples;

import static org.papermath.quantity.Amounts.grams;

import java.io.PrintStream;
import org.papermath.plan.AtTheVat;
import org.papermath.plan.MakingPlan;
import org.papermath.plan.PiecePlan;
import org.papermath.plan.VatPlan;

/** The run of a vat as it is planned, and how it goes on after one sheet of it was weighed. */
public final class CorrectTheVat {
    private CorrectTheVat() {}

    /**
     * Prints the run and its correction.
     *
     * @param args none
     */
    public static void main(String[] args) {
        print(Output.utf8());
    }

    static void print(PrintStream out) {
        MakingPlan plan = MakingPlan.of(Embed.order(), Embed.studio());
        PiecePlan programme = plan.piece("programme");
        VatPlan vat = programme.vat();
        out.println("run: " + vat);
        vat.recharges().stream().limit(3).forEach(one -> out.println("  " + one));
        out.println("a sheet couched should weigh " + programme.couchedMass());

        // The twelfth sheet, couched, weighs less than the plan says: the vat is thinner than was reckoned.
        AtTheVat now = plan.atTheVat("programme").after(12).couched(grams(58));
        out.println(now);
        now.notices().forEach(one -> out.println(one));
    }
}
