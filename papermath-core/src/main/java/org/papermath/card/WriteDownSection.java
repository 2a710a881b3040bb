package org.papermath.card;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import org.papermath.plan.EmptyRecord;
import org.papermath.plan.PiecePlan;
import org.papermath.plan.StageOfWork;

/** Lines to write the readings on, in the order a record takes them. */
final class WriteDownSection extends CardSection {
    /** What is read of the stuff, which is the same for all pieces of a batch. */
    private static final Set<StageOfWork> OF_THE_BATCH =
            Set.of(StageOfWork.FIBRE, StageOfWork.ADDITIVES, StageOfWork.BEATING);

    private static final String REJECTS = "Count the rejects of ";

    WriteDownSection(CardWriter card) {
        super(card);
    }

    /** What is read in one way: of which sheets or pieces, and what is written down of each. */
    private record Reading(String what, List<Line> written) {}

    /** What is written down, and in which unit. */
    private record Line(String what, String unit) {
        String head() {
            return what + (unit.isEmpty() ? "" : ", " + unit);
        }

        String alone() {
            return what + " " + CardForm.TO_WRITE + (unit.isEmpty() ? "" : " " + unit);
        }
    }

    @Override
    boolean write(int number) {
        form.otherPlace();
        form.section(number, Label.WRITE.words(), "in the order of the record");
        Map<Reading, Map<String, Integer>> readings = new LinkedHashMap<>();
        Map<String, Set<String>> rejects = new LinkedHashMap<>();
        LocalDate day = plan.schedule().start().orElse(LocalDate.EPOCH);
        for (PiecePlan piece : pieces.all()) {
            for (EmptyRecord.Blank blank :
                    plan.emptyRecord(piece.piece().recipe(), piece.name(), day).blanks()) {
                if (blank.what().startsWith(REJECTS)) {
                    rejects.computeIfAbsent(blank.what().substring(REJECTS.length()), key -> new LinkedHashSet<>())
                            .add(pieces.letter(piece));
                    continue;
                }
                List<Line> written = new ArrayList<>();
                for (EmptyRecord.ToFill line : blank.toFill()) {
                    written.add(new Line(line.what(), line.unit()));
                }
                String what = blank.what().replaceAll("(sheet|finished piece) \\d+\\b", "each $1");
                String of = OF_THE_BATCH.contains(blank.stage())
                        ? plan.batches().size() > 1 ? piece.batch() : ""
                        : pieces.before(piece, "");
                Map<String, Integer> rows =
                        readings.computeIfAbsent(new Reading(what, written), key -> new LinkedHashMap<>());
                if (!OF_THE_BATCH.contains(blank.stage()) || !rows.containsKey(of)) {
                    rows.merge(of, 1, Integer::sum);
                }
            }
        }
        readings.forEach(this::reading);
        rejects(rejects);
        return true;
    }

    private void reading(Reading reading, Map<String, Integer> rows) {
        if (rows.size() == 1 && rows.containsKey("") && rows.get("") == 1) {
            form.line(
                    Mark.CHECK,
                    reading.what() + ": "
                            + String.join(
                                    "; ",
                                    reading.written().stream().map(Line::alone).toList()));
            return;
        }
        form.line(Mark.CHECK, reading.what());
        List<String> heads = Stream.concat(
                        Stream.of(""), reading.written().stream().map(Line::head))
                .toList();
        List<List<String>> table = new ArrayList<>();
        rows.forEach((of, count) -> {
            for (int i = 1; i <= count; i++) {
                List<String> row = new ArrayList<>(List.of(count > 1 ? (of + " " + i).strip() : of));
                reading.written().forEach(one -> row.add(CardForm.TO_WRITE));
                table.add(row);
            }
        });
        form.table(Mark.MORE, heads, table);
    }

    /** The rejects of each step, and how many were handled, of the pieces that go through it. */
    private void rejects(Map<String, Set<String>> steps) {
        if (steps.isEmpty()) {
            return;
        }
        form.line(Mark.CHECK, REJECTS.strip() + " each step: rejected / handled");
        List<String> heads =
                Stream.concat(Stream.of(""), steps.keySet().stream()).toList();
        form.table(
                Mark.MORE,
                heads,
                pieces.all().stream()
                        .map(piece -> Stream.concat(
                                        Stream.of(pieces.before(piece, "")),
                                        steps.values().stream()
                                                .map(of ->
                                                        of.contains(pieces.letter(piece)) ? CardForm.TWO_TO_WRITE : ""))
                                .toList())
                        .toList());
    }
}
