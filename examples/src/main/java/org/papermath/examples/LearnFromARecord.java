package org.papermath.examples;

import java.io.IOException;
import java.io.InputStream;
import java.io.PrintStream;
import java.io.UncheckedIOException;
import java.util.List;
import javax.measure.Quantity;
import org.papermath.evidence.Estimate;
import org.papermath.json.PapermathDocuments;
import org.papermath.order.Studio;
import org.papermath.plan.MakingPlan;
import org.papermath.plan.PiecePlan;
import org.papermath.quantity.Units;
import org.papermath.record.BatchRecord;
import org.papermath.record.Calibration;

/** What the readings of one making say of the assumptions, and what of the next plan they narrow. */
public final class LearnFromARecord {
    private static final String RECORD = "midwinter-concert/record.json";

    private LearnFromARecord() {}

    /**
     * Prints what was learned.
     *
     * @param args none
     */
    public static void main(String[] args) {
        print(Output.utf8());
    }

    static void print(PrintStream out) {
        Studio studio = Embed.studio();
        BatchRecord record = record();
        Calibration learned = Calibration.of(studio.assumptions(), List.of(record), studio.dryers());
        out.println(learned + ":");
        learned.changes().forEach(change -> out.println("  " + change));

        PiecePlan before = MakingPlan.of(Embed.order(), studio).piece("programme");
        PiecePlan after = MakingPlan.of(Embed.order(), studio.withAssumptions(learned.assumptions()))
                .piece("programme");
        out.println("programme, by the table and after this making:");
        narrowed("grammage", before.finished().grammage(), after.finished().grammage(), out);
        narrowed("thickness", before.finished().caliper(), after.finished().caliper(), out);
        narrowed("drains in", before.drainTime(), after.drainTime(), out);
        narrowed("solids pressed", before.solids(), after.solids(), out);
        narrowed("dry after", before.drying().time(), after.drying().time(), out);
    }

    private static <Q extends Quantity<Q>> void narrowed(
            String what, Estimate<Q> before, Estimate<Q> after, PrintStream out) {
        double share = width(after) / width(before);
        out.println("  " + what + ": " + before + "; now " + after + " (" + Units.fourDigits(Math.rint(100 * share))
                + " % of the band)");
    }

    private static <Q extends Quantity<Q>> double width(Estimate<Q> one) {
        return one.high().si() - one.low().si();
    }

    /** The record that stands beside the sample order. */
    static BatchRecord record() {
        try (InputStream in = LearnFromARecord.class.getResourceAsStream(RECORD)) {
            if (in == null) {
                throw new IllegalStateException("the sample is incomplete: " + RECORD + " is missing");
            }
            return PapermathDocuments.readRecord(in.readAllBytes(), RECORD).value();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
