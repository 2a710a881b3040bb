package org.papermath.examples.questions;

import static org.papermath.quantity.Amounts.grams;
import static org.papermath.quantity.Amounts.kilograms;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import javax.measure.quantity.Mass;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Reading;
import org.papermath.evidence.Scope;
import org.papermath.examples.Embed;
import org.papermath.fibre.Fibres;
import org.papermath.order.Order;
import org.papermath.order.Studio;
import org.papermath.plan.FinishedPiece;
import org.papermath.plan.MakingPlan;
import org.papermath.plan.PlanComparison;
import org.papermath.pulp.Additive;
import org.papermath.quantity.Amounts;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Share;
import org.papermath.record.BatchRecord;
import org.papermath.record.Measurement;
import org.papermath.record.PostQuality;
import org.papermath.record.SheetQuality;
import org.papermath.sheet.SheetCounts;
import org.papermath.sheet.Yield;

/** Questions of counts and records: spares, drift, the same paper again. */
public final class RecordQuestions {
    private RecordQuestions() {}

    /** How do I match a batch of months ago? */
    @Question(number = "B13", words = "match batch repeat grammage scatter")
    public static SheetQuality.Comparison b13MatchABatch() {
        return SheetQuality.compare(
                new SheetQuality.Summary<>(Grammage.gsm(158), Grammage.gsm(4), 10),
                new SheetQuality.Summary<>(Grammage.gsm(152), Grammage.gsm(4), 10));
    }

    /** How many extras do I start with? */
    @Question(number = "B36", words = "overs extras yield spare losses")
    public static String b36HowManyExtras() {
        Yield all = Yield.of(Share.percent(92), Share.percent(95), Share.percent(97), Share.percent(94));
        return "start " + SheetCounts.toForm(75, all) + " sheets for 75 good ones: " + all;
    }

    /** The sheets vary: is it the hand or the vat? */
    @Question(number = "B40", words = "drift scatter hand vat weigh series")
    public static SheetQuality<Mass> b40HandOrVat() {
        return SheetQuality.of(
                Kinds.MASS,
                Stream.of(10.9, 10.8, 10.8, 10.6, 10.7, 10.5, 10.4, 10.5, 10.3, 10.2)
                        .map(Amounts::grams)
                        .toList());
    }

    /** The client wants 110, not 70: what changes? */
    @Question(number = "G2", words = "count change more client compare")
    public static PlanComparison g02MoreThanOrdered() {
        Order more = Embed.order().with("programme", piece -> piece.count(110));
        return MakingPlan.of(more, Embed.studio()).comparedWith(MakingPlan.of(Embed.order(), Embed.studio()));
    }

    /** How do I make the same paper as last year? */
    @Question(number = "G4", words = "repeat record batch recipe same")
    public static PlanComparison g04SamePaperAgain() {
        BatchRecord lastYear = BatchRecord.builder("tide grey", LocalDate.of(2025, 11, 3))
                .recipe(Embed.order().recipes().get(0))
                .add(new Measurement.AdditiveWeighed(
                        Additive.of("slate pigment", Additive.Purpose.PIGMENT),
                        Reading.of(grams(20.4), grams(0.1)),
                        Optional.of(Reading.of(grams(1600), grams(1)))))
                .build();
        Order again = Embed.order().withRecipe(lastYear.recipeAsMade());
        return MakingPlan.of(again, Embed.studio()).comparedWith(MakingPlan.of(Embed.order(), Embed.studio()));
    }

    /** The vat went sour after 38 good sheets: how do I make the rest? */
    @Question(number = "G9", words = "broken off sour rest remake")
    public static PlanComparison g09TheRestOfAMaking() {
        MakingPlan plan = MakingPlan.of(Embed.order(), Embed.studio());
        return plan.rest().good("programme", 38).plan().comparedWith(plan);
    }

    /** How many cards come out of the kilo that I have? */
    @Question(number = "G10", words = "most pieces kilo on hand enough")
    public static String g10CardsOfAKilo() {
        Studio kilo = Embed.studio()
                .with(studio -> studio.onHand(Fibres.COTTON_RAG, kilograms(1)).onHand(Fibres.FLAX_RAW, grams(600)));
        return "at most "
                + MakingPlan.mostPieces(
                        Embed.order().withoutPiece("envelope").withoutPiece("programme"), kilo, "seat card")
                + " seat cards";
    }

    /** Can it be there by 12 June? */
    @Question(number = "G11", words = "deadline date start schedule days")
    public static String g11ByTwelfthOfJune() {
        Order due = Embed.order().withDue(LocalDate.of(2027, 6, 12));
        return MakingPlan.of(due, Embed.studio()).schedule().verdict(LocalDate.of(2027, 5, 3));
    }

    /** What share of the sheets will lie within the four per cent that the client allows? */
    @Question(number = "G15", words = "tolerance share inside grammage")
    public static String g15WithinTheClientsTolerance() {
        Studio agreed = Embed.studio()
                .withAssumptions(Assumptions.standard().given("order.weight-tolerance", Scope.GENERAL, 0.04));
        FinishedPiece programme =
                MakingPlan.of(Embed.order(), agreed).piece("programme").finished();
        return programme.insideTolerance().orElseThrow() + " of single pieces, of " + programme.grammage();
    }

    /** Sheets of the new batch run light: is it the place in the post, or the vat? */
    @Question(number = "G21", words = "post place drift vat series lighter")
    public static PostQuality<Mass> g21PostOrVat() {
        return PostQuality.of(
                Kinds.MASS,
                List.of(
                        List.of(grams(10.9), grams(10.8), grams(10.8), grams(10.6), grams(10.7)),
                        List.of(grams(10.5), grams(10.4), grams(10.5), grams(10.3), grams(10.2))));
    }
}
