package org.papermath.examples;

import java.io.IOException;
import java.io.InputStream;
import java.io.PrintStream;
import java.io.UncheckedIOException;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import javax.measure.Quantity;
import org.papermath.evidence.Estimate;
import org.papermath.json.DocumentException;
import org.papermath.json.OrderDocument;
import org.papermath.json.PapermathDocuments;
import org.papermath.order.Order;
import org.papermath.order.Studio;
import org.papermath.plan.DryingPlan;
import org.papermath.plan.MakingPlan;
import org.papermath.plan.PiecePlan;
import org.papermath.quantity.PapermathException;
import org.papermath.quantity.Units;
import org.papermath.record.BatchRecord;
import org.papermath.record.Calibration;

/** What the readings of one making say of the assumptions, and what of the next plan they narrow. */
public final class LearnFromARecord {
    private static final int DONE = 0;
    private static final int BAD_INPUT = 2;
    private static final String RECORD = "midwinter-concert/record.json";

    private LearnFromARecord() {}

    /**
     * Prints what was learned.
     *
     * @param args the path of a record and that of an order with its studio; none for the sample
     */
    public static void main(String[] args) {
        int status = run(List.of(args), Output.utf8(), Output.errors());
        if (status != DONE) {
            System.exit(status);
        }
    }

    static int run(List<String> args, PrintStream out, PrintStream err) {
        if (args.isEmpty()) {
            print(out);
            return DONE;
        }
        if (args.size() != 2) {
            err.println("usage: LearnFromARecord [record.json order.json]");
            return BAD_INPUT;
        }
        try {
            BatchRecord record =
                    PapermathDocuments.readRecord(Path.of(args.get(0))).value();
            OrderDocument read =
                    PapermathDocuments.readOrder(Path.of(args.get(1))).value();
            print(read.order(), read.studio(), record, out);
            return DONE;
        } catch (DocumentException e) {
            e.faults().forEach(err::println);
        } catch (PapermathException e) {
            err.println(e.getMessage());
        } catch (IOException | InvalidPathException e) {
            err.println("This file cannot be opened: " + e.getMessage());
        }
        return BAD_INPUT;
    }

    static void print(PrintStream out) {
        print(Embed.order(), Embed.studio(), record(), out);
    }

    private static void print(Order order, Studio studio, BatchRecord record, PrintStream out) {
        Calibration learned = Calibration.of(studio.assumptions(), List.of(record), studio.dryers());
        out.println(learned + ":");
        learned.changes().forEach(change -> out.println("  " + change));

        MakingPlan before = MakingPlan.of(order, studio);
        MakingPlan after = MakingPlan.of(order, studio.withAssumptions(learned.assumptions()));
        String batch = record.recipe().orElse("");
        before.pieces().stream()
                .filter(one -> one.batch().equals(batch))
                .findFirst()
                .ifPresentOrElse(
                        piece -> {
                            out.println(piece.name() + ", by what was known and after this making:");
                            narrowed(piece, after.piece(piece.name()), out);
                        },
                        () -> out.println("No piece of this order is of the recipe of the record."));
    }

    private static void narrowed(PiecePlan before, PiecePlan after, PrintStream out) {
        narrowed("grammage", before.finished().grammage(), after.finished().grammage(), out);
        narrowed(
                "thickness",
                before.finished().caliperStage().optional(),
                after.finished().caliperStage().optional(),
                out);
        narrowed(
                "drains in",
                before.drainTimeStage().optional(),
                after.drainTimeStage().optional(),
                out);
        narrowed("solids pressed", before.solids(), after.solids(), out);
        narrowed(
                "dry after",
                before.dryingStage().map(DryingPlan::time),
                after.dryingStage().map(DryingPlan::time),
                out);
    }

    /** The same of what is planned both times. */
    private static <Q extends Quantity<Q>> void narrowed(
            String what, Optional<Estimate<Q>> before, Optional<Estimate<Q>> after, PrintStream out) {
        before.ifPresent(one -> after.ifPresent(other -> narrowed(what, one, other, out)));
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
