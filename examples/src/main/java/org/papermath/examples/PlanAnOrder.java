package org.papermath.examples;

import java.io.IOException;
import java.io.InputStream;
import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.papermath.card.MakingCard;
import org.papermath.drawing.DaysDrawing;
import org.papermath.json.Document;
import org.papermath.json.DocumentException;
import org.papermath.json.DocumentFiles;
import org.papermath.json.DocumentResolver;
import org.papermath.json.Fault;
import org.papermath.json.FaultCodes;
import org.papermath.json.OrderDocument;
import org.papermath.json.PapermathDocuments;
import org.papermath.plan.MakingPlan;
import org.papermath.quantity.PapermathException;
import org.papermath.quantity.Refused;

/** Reads an order from JSON, plans it and prints or saves the making card, or the plan as a document. */
public final class PlanAnOrder {
    /** What the program exits with when all went well. */
    static final int DONE = 0;
    /** What the program exits with when the order cannot be read or planned, or the plan cannot be saved. */
    static final int BAD_INPUT = 2;

    private static final String SAMPLE = "midwinter-concert";
    private static final String SAMPLE_ORDER = SAMPLE + "/order.json";
    private static final List<String> DOCUMENTS = List.of("order.json", "studio.json", "tide-grey.json");
    private static final int MANY = 12;
    private static final String USAGE = """
            usage: PlanAnOrder [--json | --page | --days | --calendar | --picture | --drawings DIR] [--out FILE] [order.json]
                   PlanAnOrder --sample DIR
              --json      gives the plan as a document, in place of the making card
              --page      gives the card as a page to print, in HTML, with lines to write readings on
              --days      gives what to do day by day, and what to start for the night
              --calendar  gives the days as a calendar file, for programs that read iCalendar
              --picture   gives the days as a picture of bars, in SVG, for a browser
              --drawings DIR
                          saves drawings in a folder, in SVG at true scale: how each piece lies on its sheet, the
                          deckles to make and the blanks of envelopes; says what they are
              --sample DIR
                          saves the documents of the sample in a folder, to be changed into your own
              --out FILE  saves it in a file, in place of printing it
              Without an order the sample is planned. A path with a blank stands in quotation marks; behind
              Maven's exec.args in single ones: "-Dexec.args=--out 'my plan.txt' 'my order.json'\"""";

    /** What is given. */
    private enum Form {
        CARD("The making card"),
        JSON("The plan"),
        PAGE("The page"),
        DAYS("What to do day by day"),
        CALENDAR("The calendar"),
        PICTURE("The picture of the days"),
        DRAWINGS("The list of drawings");

        private final String words;

        Form(String words) {
            this.words = words;
        }

        static @Nullable Form of(String option) {
            return switch (option) {
                case "--json" -> JSON;
                case "--page" -> PAGE;
                case "--days" -> DAYS;
                case "--calendar" -> CALENDAR;
                case "--picture" -> PICTURE;
                case "--drawings" -> DRAWINGS;
                default -> null;
            };
        }
    }

    /**
     * What is to be done: the file of the order and the one to save in are empty for the sample and for printing, the folder
     * without drawings.
     */
    private record Task(Form form, String order, String saveIn, String folder) {}

    private PlanAnOrder() {}

    /**
     * Plans an order.
     *
     * @param args {@code --json} for the plan as a document, {@code --page} for the card to print, {@code --days}, {@code --calendar} or
     *     {@code --picture} for its days; {@code --drawings} with the path of a folder for templates to cut along; {@code --sample} with that of one to begin in; {@code --out} with the path of a file to save it in; the path of an order, or none
     *     for the sample
     */
    public static void main(String[] args) {
        PrintStream out = Output.utf8();
        PrintStream err = Output.errors();
        int status = run(List.of(args), out, err, Instant.now());
        out.flush();
        err.flush();
        if (status != DONE) {
            System.exit(status);
        }
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
        return run(args, out, err, null);
    }

    /** The same, and says if the date of the order cannot be met when it is begun now. */
    static int run(List<String> args, PrintStream out, PrintStream err, @Nullable Instant now) {
        if (args.contains("--sample")) {
            return startingPoint(args, out, err);
        }
        Task task = task(args, err);
        if (task == null) {
            err.println(USAGE);
            return BAD_INPUT;
        }
        String path = task.order();
        String text;
        try {
            MakingPlan plan = path.isEmpty()
                    ? PapermathDocuments.planOrder(resource("order.json"), SAMPLE_ORDER, PlanAnOrder::beside)
                    : PapermathDocuments.planOrder(Path.of(path));
            if (task.form() == Form.DRAWINGS) {
                List<OrderDrawings.Drawn> drawings = OrderDrawings.of(plan);
                if (!drawn(drawings, task.folder(), err)) {
                    return BAD_INPUT;
                }
                text = drawings.stream().map(one -> one + "\n").collect(Collectors.joining());
            } else {
                text = text(task.form(), plan, now == null ? Instant.EPOCH : now);
            }
            if (now != null) {
                warn(plan, now.atZone(ZoneId.systemDefault()).toLocalDate(), err);
            }
        } catch (DocumentException e) {
            e.faults().forEach(fault -> print(fault, path.isEmpty() ? SAMPLE : path, err));
            return BAD_INPUT;
        } catch (PapermathException e) {
            err.println("The order can be read but not planned: " + e.getMessage());
            return BAD_INPUT;
        } catch (IOException | InvalidPathException e) {
            err.println(path.isEmpty() ? "The sample cannot be read: " + e.getMessage() : path + ": " + why(path, e));
            return BAD_INPUT;
        }
        if (task.saveIn().isEmpty()) {
            out.print(text);
            return DONE;
        }
        return save(task, text, err);
    }

    /** Saves the documents of the sample where nothing of the name stands yet. */
    private static int startingPoint(List<String> args, PrintStream out, PrintStream err) {
        if (args.size() != 2 || !args.get(0).equals("--sample") || !names(args, 1)) {
            err.println("--sample: the name of a folder must follow, and nothing else, such as --sample my-order.");
            err.println(USAGE);
            return BAD_INPUT;
        }
        String name = args.get(1);
        try {
            Path folder = Path.of(name).toAbsolutePath();
            for (String document : DOCUMENTS) {
                if (Files.exists(folder.resolve(document))) {
                    err.println(
                            name + ": there is a " + document + " already. Name another folder. Nothing was saved.");
                    return BAD_INPUT;
                }
            }
            Files.createDirectories(folder);
            for (String document : DOCUMENTS) {
                Files.write(folder.resolve(document), resource(document));
            }
            out.println("The sample is saved in " + folder + ": " + String.join(", ", DOCUMENTS)
                    + ". Change them into your own, and plan the order.json.");
            return DONE;
        } catch (IOException | InvalidPathException e) {
            err.println(
                    name + ": the sample cannot be saved there. Is the folder open to you, and the name a good one?");
            return BAD_INPUT;
        }
    }

    /** Says why a file cannot be opened. */
    private static String why(String path, Exception e) {
        if (e instanceof InvalidPathException) {
            return "this can be no path of a file. Check its characters.";
        }
        Path file = Path.of(path);
        if (Files.isDirectory(file)) {
            return "this is a folder. Give the order in it, such as " + file.resolve("order.json") + ".";
        }
        if (Files.notExists(file)) {
            return "there is no such file. Check the name; it is looked for as " + file.toAbsolutePath() + ".";
        }
        return Files.isReadable(file)
                ? "this file cannot be opened."
                : "this file may not be read by you. Change its permissions, or ask whoever owns it.";
    }

    private static String text(Form form, MakingPlan plan, Instant now) {
        return switch (form) {
            case CARD -> MakingCard.of(plan).toString();
            case JSON -> PapermathDocuments.writePlan(plan, "papermath examples", "0.1.0");
            case PAGE -> MakingCard.of(plan).page();
            case DAYS -> plan.schedule().timetable().text();
            case PICTURE ->
                DaysDrawing.of("Days of " + plan.order().name(), plan.schedule().timetable())
                        .svg();
            // The list of drawings is made with them.
            case DRAWINGS -> "";
            case CALENDAR -> plan.schedule().timetable().calendar(plan.order().name(), now);
        };
    }

    /** Saves the drawings; says where they are, or why they are not. */
    private static boolean drawn(List<OrderDrawings.Drawn> drawings, String name, PrintStream err) {
        String nothing = " Nothing was saved.";
        try {
            Path folder = Path.of(name).toAbsolutePath();
            Path above = folder.getParent();
            if (Files.exists(folder) && !Files.isDirectory(folder)) {
                err.println(name + ": this is a file. Name a folder for the drawings." + nothing);
            } else if (!Files.exists(folder) && (above == null || !Files.isDirectory(above))) {
                err.println(name + ": there is no folder " + above + ". Make it first, or name another." + nothing);
            } else {
                Files.createDirectories(folder);
                OrderDrawings.save(drawings, folder);
                err.println(drawings.size() + (drawings.size() == 1 ? " drawing is" : " drawings are") + " saved in "
                        + folder + ". Print them at 100 %.");
                return true;
            }
        } catch (IOException | InvalidPathException e) {
            err.println(
                    name + ": the drawings cannot be saved there. Is the folder open to you, and the name a good one?"
                            + nothing);
        }
        return false;
    }

    private static void warn(MakingPlan plan, LocalDate today, PrintStream err) {
        if (plan.order().due().isPresent()) {
            LocalDate due = plan.order().due().get();
            String verdict = plan.schedule().verdict(today);
            if (due.isBefore(today)) {
                err.println("The order is due on " + due + ", which is past: today is " + today + ". Correct \"due\".");
            } else if (verdict.startsWith("not known")) {
                err.println("Whether the order can be done by " + due + " is " + verdict);
            } else if (!verdict.startsWith("can be done")) {
                err.println("The order " + verdict + ".");
            }
        }
    }

    /** Reads the arguments; says what is wrong with them and returns nothing if they cannot be followed. */
    private static @Nullable Task task(List<String> args, PrintStream err) {
        Form form = Form.CARD;
        String order = "";
        String saveIn = "";
        String folder = "";
        for (int i = 0; i < args.size(); i++) {
            String arg = args.get(i);
            Form asked = Form.of(arg);
            if (asked != null) {
                if (form != Form.CARD && form != asked) {
                    err.println(arg
                            + ": only one of --json, --page, --days, --calendar, --picture and --drawings can be given"
                            + " at a time.");
                    return null;
                }
                form = asked;
                if (asked == Form.DRAWINGS) {
                    if (!names(args, i + 1)) {
                        err.println("--drawings: the name of a folder must follow, such as --drawings templates.");
                        return null;
                    }
                    folder = args.get(++i);
                }
            } else if (arg.equals("--out")) {
                if (!names(args, i + 1)) {
                    err.println("--out: the name of a file must follow, such as --out plan.json.");
                    return null;
                }
                if (!saveIn.isEmpty()) {
                    err.println("--out is set twice. Set it once.");
                    return null;
                }
                saveIn = args.get(++i);
            } else if (arg.startsWith("-")) {
                err.println(arg + ": there is no such option.");
                return null;
            } else if (arg.isBlank()) {
                err.println("The path of the order is empty. Write one, or leave it out for the sample.");
                return null;
            } else if (!order.isEmpty()) {
                err.println("Two orders are given, " + order + " and " + arg + "; one is planned at a time. Is it one"
                        + " path with a blank in it?");
                return null;
            } else {
                order = arg;
            }
        }
        return new Task(form, order, saveIn, folder);
    }

    /** Whether an argument can be the name of a file or a folder. */
    private static boolean names(List<String> args, int at) {
        return at < args.size() && !args.get(at).isBlank() && !args.get(at).startsWith("-");
    }

    /** Saves the text so that the file is whole or as it was. */
    private static int save(Task task, String text, PrintStream err) {
        String name = task.saveIn();
        String nothing = " Nothing was saved.";
        try {
            Path file = Path.of(name).toAbsolutePath();
            Path folder = file.getParent();
            if (Files.isDirectory(file)) {
                err.println(name + ": this is a folder. Give the name of a file in it." + nothing);
            } else if (folder == null || !Files.isDirectory(folder)) {
                err.println(name + ": there is no folder " + folder + ". Make it first, or name another." + nothing);
            } else if (!task.order().isEmpty() && Files.exists(file) && Files.isSameFile(file, Path.of(task.order()))) {
                err.println(name + ": this is the order itself. Give another name." + nothing);
            } else {
                DocumentFiles.save(file, text);
                err.println(task.form().words + " is saved in " + file + ".");
                return DONE;
            }
        } catch (IOException | InvalidPathException e) {
            err.println(name + ": this file cannot be written. Is the folder open to you, and the name a good one?"
                    + nothing);
        }
        return BAD_INPUT;
    }

    /** Prints a fault: where it is, what is wrong, and what was found or is accepted if the sentence leaves it out. */
    private static void print(Fault fault, String file, PrintStream err) {
        String document = fault.document().isEmpty() ? file : fault.document();
        err.println(document + ":" + fault.line() + ":" + fault.column() + ": " + fault.text());
        line(err, "at", fault.pointer(), "");
        line(err, "found", fault.found(), fault.text());
        // What is nearest, or a list in the sentence, says more than the beginning of a long one.
        boolean said = !fault.nearest().isEmpty() || fault.accepted().stream().anyMatch(fault.text()::contains);
        if (!said) {
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
        return PapermathDocuments.readOrder(resource("order.json"), SAMPLE_ORDER, PlanAnOrder::beside);
    }

    private static DocumentResolver.Found beside(String reference) throws IOException {
        return new DocumentResolver.Found(SAMPLE + "/" + reference, resource(reference), PlanAnOrder::beside);
    }

    private static byte[] resource(String name) throws IOException {
        try (InputStream in = PlanAnOrder.class.getResourceAsStream(SAMPLE + "/" + name)) {
            if (in == null) {
                throw Refused.of(
                        FaultCodes.REFERENCE_MISSING, "there is no \"" + name + "\" beside the sample.", "found", name);
            }
            return in.readAllBytes();
        }
    }
}
