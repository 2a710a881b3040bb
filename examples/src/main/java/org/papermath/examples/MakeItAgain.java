package org.papermath.examples;

import static org.papermath.quantity.Amounts.celsius;
import static org.papermath.quantity.Amounts.hours;
import static org.papermath.quantity.Amounts.minutes;

import java.io.PrintStream;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.papermath.air.Air;
import org.papermath.evidence.Reading;
import org.papermath.json.Document;
import org.papermath.json.PapermathDocuments;
import org.papermath.order.Order;
import org.papermath.order.Recipe;
import org.papermath.order.Studio;
import org.papermath.plan.MakingPlan;
import org.papermath.quantity.RelativeHumidity;
import org.papermath.record.BatchRecord;
import org.papermath.record.Calibration;
import org.papermath.record.Measurement;

/** The same paper again: a record is kept of a making, and a later one starts from what was done, not from what was planned. */
public final class MakeItAgain {
    private MakeItAgain() {}

    /**
     * Prints how the second making begins.
     *
     * @param args none
     */
    public static void main(String[] args) {
        print(Output.utf8());
    }

    static void print(PrintStream out) {
        // The empty record of a plan knows what was taken for known; beaten a little longer than the recipe says.
        MakingPlan first = MakingPlan.of(Embed.order(), Embed.studio());
        BatchRecord made = first.emptyRecord("tide grey", "programme", LocalDate.of(2027, 1, 5)).record().toBuilder()
                .add(new Measurement.Beaten(Optional.empty(), Reading.of(hours(3.25), minutes(5))))
                .build();
        String kept = PapermathDocuments.writeRecord(Document.of(made));

        // A year later: the record is read, the room is damper, and the studio has measured since.
        BatchRecord then = PapermathDocuments.readRecord(kept).value();
        Recipe recipe = then.recipeAsMade();
        out.println("planned: " + Embed.order().recipes().get(0));
        out.println("made:    " + recipe);
        Order again = Order.of("midwinter concert, second year")
                .recipe(recipe)
                .piece(Embed.order().pieces().get(0))
                .build();
        Studio studio = Embed.studio();
        Calibration learned = Calibration.of(studio.assumptions(), List.of(LearnFromARecord.record()), studio.dryers());
        Studio now = studio.withAssumptions(learned.assumptions()).toBuilder()
                .room(Air.of(celsius(16), RelativeHumidity.percent(70)))
                .build();
        MakingPlan second = MakingPlan.of(again, now);
        out.println("weigh:   " + second.batch("tide grey").fibre());
        out.println("other than the first time:");
        second.comparedWith(first).comesOut().stream().limit(4).forEach(change -> out.println("  " + change));
        out.println("known otherwise since:");
        second.changesSince(then).changes().stream().limit(4).forEach(change -> out.println("  " + change));
    }
}
