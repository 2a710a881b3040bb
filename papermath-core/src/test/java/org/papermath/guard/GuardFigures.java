package org.papermath.guard;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import org.papermath.evidence.Estimate;
import org.papermath.evidence.Notice;
import org.papermath.guard.GuardReadings.Figure;
import org.papermath.guard.GuardReadings.InPlan;
import org.papermath.guard.GuardReadings.Words;
import org.papermath.guard.GuardReadings.Work;
import org.papermath.plan.BatchPlan;
import org.papermath.plan.MakingPlan;
import org.papermath.plan.Stage;
import org.papermath.quantity.PapermathException;

/** Every figure and every word of one case, and their hashes. Figures and words know nothing of each other. */
final class GuardFigures {
    /** The sign that ends the id of a row with the shares of what drives a band. */
    static final String DRIVERS = ".drivers";

    private static final Pattern NUMBER = Pattern.compile("[-−]?\\d+(?:[.,]\\d+)*(?:E-?\\d+)?");
    private static final int HASH_BYTES = 6;

    private final Map<Work, Map<String, double[]>> figures = new EnumMap<>(Work.class);
    private final Map<Words, List<String>> words = new EnumMap<>(Words.class);

    GuardFigures() {
        for (Work work : Work.values()) {
            figures.put(work, new LinkedHashMap<>());
        }
        for (Words kind : Words.values()) {
            words.put(kind, new ArrayList<>());
        }
    }

    static GuardFigures of(MakingPlan plan) {
        GuardFigures all = new GuardFigures();
        all.put(Work.ORDER, "order.planned", 1);
        walk(plan, all::put);
        for (Notice notice : GuardReadings.notices(plan)) {
            all.say(
                    Words.NOTICES,
                    notice.level() + " " + notice.code() + " " + notice.arguments() + " " + notice.text());
        }
        for (Stage<?> stage : GuardReadings.stages(plan)) {
            all.say(Words.STAGES, stage.code() + ": " + stage.reason());
        }
        GuardReadings.card(plan).forEach(line -> all.say(Words.CARD, line));
        GuardReadings.labels(plan).forEach(label -> all.say(Words.LABELS, label));
        return all;
    }

    /** A refused order has one figure, that it is refused, and one text. */
    static GuardFigures of(PapermathException refused) {
        GuardFigures all = new GuardFigures();
        all.put(Work.ORDER, "order.planned", 0);
        all.say(Words.NOTICES, "refused " + refused.code() + " " + refused.arguments() + " " + refused.getMessage());
        return all;
    }

    /** Is shown what each reader gives. */
    interface Visitor {
        void visit(Work work, String id, Object given);
    }

    /** Reads every figure of a plan, in the order of the tables. */
    static void walk(MakingPlan plan, Visitor visitor) {
        visit(GuardReadings.PLAN, "", plan, visitor);
        List<BatchPlan> batches = GuardReadings.batches(plan);
        for (int b = 0; b < batches.size(); b++) {
            visit(GuardReadings.BATCH, "batch[" + b + "].", batches.get(b), visitor);
        }
        List<InPlan> pieces = GuardReadings.pieces(plan);
        for (int p = 0; p < pieces.size(); p++) {
            visit(GuardReadings.PIECE, "piece[" + p + "].", pieces.get(p), visitor);
        }
    }

    private static <S> void visit(List<Figure<S>> table, String of, S from, Visitor visitor) {
        for (Figure<S> figure : table) {
            Object given = figure.reader().apply(from);
            if (given != null) {
                visitor.visit(figure.work(), of + figure.id(), given);
            }
        }
    }

    private void put(Work work, String id, Object given) {
        DoubleStream.Builder numbers = DoubleStream.builder();
        GuardReadings.numbers(given, numbers);
        set(work, id, numbers.build().toArray());
        GuardReadings.estimate(given)
                .ifPresent(estimate -> set(
                        work,
                        id + DRIVERS,
                        estimate.drivers().stream()
                                .mapToDouble(Estimate.Driver::share)
                                .toArray()));
    }

    /** Enters a row as it stands. */
    void set(Work work, String id, double[] row) {
        if (figures.get(work).put(id, row) != null) {
            throw new IllegalStateException("two figures have the id " + id);
        }
    }

    private void say(Words kind, String text) {
        Matcher number = NUMBER.matcher(text);
        while (number.find()) {
            words.get(Words.PRINTED).add(number.group());
        }
        // Without its numbers, and however its lines are broken.
        words.get(kind).add(number.replaceAll("#").strip().replaceAll("\\s+", " "));
    }

    /** The rows of a stage, by id. */
    Map<String, double[]> rows(Work work) {
        return figures.get(work);
    }

    List<String> words(Words kind) {
        return words.get(kind);
    }

    /** How many numbers there are in all. */
    int size() {
        return figures.values().stream()
                .flatMap(rows -> rows.values().stream())
                .mapToInt(row -> row.length)
                .sum();
    }

    String hash(Work work) {
        MessageDigest digest = digest();
        figures.get(work).forEach((id, row) -> {
            digest.update(id.getBytes(StandardCharsets.UTF_8));
            ByteBuffer bytes = ByteBuffer.allocate(8 * row.length + 8);
            bytes.putLong(row.length);
            for (double number : row) {
                bytes.putLong(Double.doubleToLongBits(number));
            }
            digest.update(bytes.array());
        });
        return print(digest);
    }

    String hash(Words kind) {
        MessageDigest digest = digest();
        digest.update(
                String.join(kind == Words.CARD ? " " : "\n", words.get(kind)).getBytes(StandardCharsets.UTF_8));
        return print(digest);
    }

    /** Returns the difference of two rows to the bit, or nothing if there is none. */
    static List<String> differences(String id, double[] before, double[] after) {
        if (before.length != after.length) {
            return List.of(id + ": " + before.length + " numbers before, " + after.length + " after");
        }
        return IntStream.range(0, after.length)
                .filter(i -> Double.doubleToLongBits(before[i]) != Double.doubleToLongBits(after[i]))
                .mapToObj(i -> id + "[" + i + "]: " + before[i] + " → " + after[i] + " ("
                        + String.format(Locale.ROOT, "%+.1e", after[i] / before[i] - 1) + ")")
                .toList();
    }

    static MessageDigest digest() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }

    static String print(MessageDigest digest) {
        return HexFormat.of().formatHex(digest.digest(), 0, HASH_BYTES);
    }
}
