package org.papermath.examples;

import java.io.BufferedReader;
import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.PrintStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.List;
import java.util.Queue;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.papermath.json.DocumentException;
import org.papermath.json.FolderResolver;
import org.papermath.json.OrderDocument;
import org.papermath.json.PapermathDocuments;
import org.papermath.plan.MakingPlan;
import org.papermath.quantity.PapermathException;

/**
 * Plans many orders: a whole order document on every line in (JSON Lines, UTF-8), a whole plan document on every line out, in
 * the same order. It goes line by line on all cores and holds only what is being planned, so it can stand in any pipe. A line
 * that cannot be planned is told on the error stream with its number, and the rest goes on; the exit status says so.
 */
public final class PlanManyOrders {
    static final int DONE = 0;
    static final int SOME_BAD = 1;
    static final int BAD_INPUT = 2;

    /** Orders that wait for each core. */
    private static final int AHEAD = 4;

    private static final long EVERY = 100;
    private static final String USAGE = """
            usage: PlanManyOrders [folder] < orders.jsonl > plans.jsonl
              Documents that orders refer to are looked for in the folder, by default where it is started.""";

    /** What came of a line. */
    private record Answer(long line, @Nullable String plan, String fault) {}

    private PlanManyOrders() {}

    /**
     * Plans what comes in.
     *
     * @param args the folder of documents that orders refer to, or none for where it is started
     */
    public static void main(String[] args) {
        PrintStream out = new PrintStream(new FileOutputStream(FileDescriptor.out), false, StandardCharsets.UTF_8);
        PrintStream err = Output.errors();
        int status =
                run(List.of(args), System.in, out, err, Runtime.getRuntime().availableProcessors());
        out.flush();
        if (status != DONE) {
            System.exit(status);
        }
    }

    /**
     * Plans what comes in.
     *
     * @param args the arguments
     * @param in orders, line by line
     * @param out where the plans go
     * @param err where faults and progress go
     * @param cores how many orders are planned at a time
     * @return the exit status
     */
    static int run(List<String> args, InputStream in, PrintStream out, PrintStream err, int cores) {
        if (args.size() > 1 || (args.size() == 1 && args.get(0).startsWith("-"))) {
            err.println(USAGE);
            return BAD_INPUT;
        }
        FolderResolver folder;
        try {
            folder = FolderResolver.of(Path.of(args.isEmpty() ? "" : args.get(0)));
        } catch (InvalidPathException | IOException e) {
            err.println(args.get(0) + ": this folder cannot be opened.");
            return BAD_INPUT;
        }
        ExecutorService planners = Executors.newFixedThreadPool(cores);
        try (BufferedReader lines = new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8))) {
            return filter(lines, folder, planners, AHEAD * cores, out, err);
        } catch (IOException | UncheckedIOException e) {
            err.println("The orders cannot be read on: " + e.getMessage());
            return BAD_INPUT;
        } finally {
            planners.shutdownNow();
        }
    }

    private static int filter(
            BufferedReader lines,
            FolderResolver folder,
            ExecutorService planners,
            int most,
            PrintStream out,
            PrintStream err)
            throws IOException {
        Queue<Future<Answer>> planned = new ArrayDeque<>();
        long number = 0;
        long bad = 0;
        long done = 0;
        String line = lines.readLine();
        while (line != null || !planned.isEmpty()) {
            if (line != null && planned.size() < most) {
                number++;
                if (!line.isBlank()) {
                    planned.add(planners.submit(planning(number, line, folder)));
                }
                line = lines.readLine();
                continue;
            }
            Answer answer = taken(planned.remove());
            if (answer.plan() == null) {
                bad++;
                err.println("line " + answer.line() + ": " + answer.fault());
            } else {
                out.print(answer.plan() + "\n");
                done++;
                if (done % EVERY == 0) {
                    err.println(done + " planned");
                }
            }
            if (out.checkError()) {
                return BAD_INPUT;
            }
        }
        err.println(done + " planned" + (bad == 0 ? "" : ", " + bad + " not"));
        return bad == 0 ? DONE : SOME_BAD;
    }

    private static Callable<Answer> planning(long number, String line, FolderResolver folder) {
        return () -> {
            try {
                OrderDocument order = PapermathDocuments.readOrder(line, folder).value();
                MakingPlan plan = MakingPlan.of(order.order(), order.studio());
                // A document breaks its lines between its values, never within.
                String text = PapermathDocuments.writePlan(plan, "papermath examples", "0.1.0")
                        .lines()
                        .map(String::strip)
                        .collect(Collectors.joining(" "));
                return new Answer(number, text, "");
            } catch (DocumentException e) {
                return new Answer(
                        number, null, e.faults().stream().map(Object::toString).collect(Collectors.joining("; ")));
            } catch (PapermathException e) {
                return new Answer(number, null, e.getMessage());
            }
        };
    }

    private static Answer taken(Future<Answer> answer) {
        try {
            return answer.get();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("interrupted", e);
        } catch (ExecutionException e) {
            throw new IllegalStateException(e.getCause());
        }
    }
}
