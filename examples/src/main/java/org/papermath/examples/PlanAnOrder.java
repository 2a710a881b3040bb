package org.papermath.examples;

import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

import org.papermath.json.Document;
import org.papermath.json.DocumentException;
import org.papermath.json.DocumentResolver;
import org.papermath.json.Fault;
import org.papermath.json.FaultCodes;
import org.papermath.json.OrderDocument;
import org.papermath.json.PapermathDocuments;
import org.papermath.plan.MakingPlan;
import org.papermath.quantity.PapermathException;
import org.papermath.quantity.Refused;

/** Reads an order from JSON, plans it and prints the making card, or the plan as a document. */
public final class PlanAnOrder {
    /** What the program exits with when all went well. */
    static final int DONE = 0;
    /** What the program exits with when the order cannot be read or planned. */
    static final int BAD_INPUT = 2;

    private static final String SAMPLE = "midwinter-concert";
    private static final int MANY = 12;

    private PlanAnOrder() {
    }

    /**
     * Plans an order.
     *
     * @param args {@code --json} for the plan as a document; the path of an order, or none for the sample
     */
    public static void main(String[] args) {
        PrintStream out = utf8(FileDescriptor.out);
        PrintStream err = utf8(FileDescriptor.err);
        int status = run(List.of(args), out, err);
        out.flush();
        err.flush();
        if (status != DONE) {
            System.exit(status);
        }
    }

    private static PrintStream utf8(FileDescriptor where) {
        return new PrintStream(new FileOutputStream(where), true, StandardCharsets.UTF_8);
    }

    /**
     * Does what the arguments say.
     *
     * @param args the arguments
     * @param out where the plan goes
     * @param err where faults go
     * @return the exit status
     */
    static int run(List<String> args, PrintStream out, PrintStream err) {
        List<String> paths = new ArrayList<>(args);
        boolean json = paths.remove("--json");
        if (paths.size() > 1 || paths.stream().anyMatch(path -> path.startsWith("--"))) {
            err.println("usage: PlanAnOrder [--json] [order.json]");
            return BAD_INPUT;
        }
        try {
            Document<OrderDocument> read = paths.isEmpty() ? sample()
                    : PapermathDocuments.readOrder(Path.of(paths.get(0)));
            OrderDocument order = read.value();
            MakingPlan plan = MakingPlan.of(order.order(), order.studio());
            out.print(json ? PapermathDocuments.writePlan(plan, "papermath examples", "0.1.0")
                    : plan.card().toString());
            return DONE;
        } catch (DocumentException e) {
            e.faults().forEach(fault -> print(fault, paths.isEmpty() ? SAMPLE : paths.get(0), err));
        } catch (PapermathException e) {
            err.println("The order can be read but not planned: " + e.getMessage());
        } catch (IOException | InvalidPathException e) {
            err.println(paths.isEmpty() ? "The sample cannot be read: " + e.getMessage()
                    : paths.get(0) + ": this file cannot be opened.");
        }
        return BAD_INPUT;
    }

    /** Prints a fault: where it is, what is wrong, and what was found or is accepted if the sentence leaves it out. */
    private static void print(Fault fault, String file, PrintStream err) {
        String document = fault.document().isEmpty() ? file : fault.document();
        err.println(document + ":" + fault.line() + ":" + fault.column() + ": " + fault.text());
        line(err, "at", fault.pointer(), "");
        line(err, "found", fault.found(), fault.text());
        if (!fault.accepted().stream().allMatch(fault.text()::contains)) {
            line(err, "accepted", listed(fault.accepted()), "");
        }
        line(err, "nearest", fault.nearest(), fault.text());
        fault.candidates().forEach(one -> line(err, "it may mean", one.toString(), fault.text()));
    }

    private static void line(PrintStream err, String label, String text, String saidBefore) {
        if (!text.isEmpty() && !saidBefore.contains(text)) {
            err.println("    " + label + ": " + text);
        }
    }

    private static String listed(List<String> accepted) {
        String few = String.join(", ", accepted.subList(0, Math.min(accepted.size(), MANY)));
        return accepted.size() > MANY ? few + " and " + (accepted.size() - MANY) + " more" : few;
    }

    /** Reads the order that is bundled with the examples. */
    static Document<OrderDocument> sample() throws IOException {
        return PapermathDocuments.readOrder(resource("order.json"), SAMPLE + "/order.json", PlanAnOrder::beside);
    }

    private static DocumentResolver.Found beside(String reference) throws IOException {
        return new DocumentResolver.Found(SAMPLE + "/" + reference, resource(reference), PlanAnOrder::beside);
    }

    private static byte[] resource(String name) throws IOException {
        try (InputStream in = PlanAnOrder.class.getResourceAsStream(SAMPLE + "/" + name)) {
            if (in == null) {
                throw Refused.of(FaultCodes.REFERENCE_MISSING, "there is no \"" + name + "\" beside the sample.",
                        "found", name);
            }
            return in.readAllBytes();
        }
    }
}
