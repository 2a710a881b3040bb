package org.papermath.card;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.papermath.plan.MakingPlan;
import org.papermath.plan.PiecePlan;
import org.papermath.plan.Schedule;
import org.papermath.plan.Stage;
import org.papermath.plan.StepCaution;
import org.papermath.plan.VatPlan;
import org.papermath.plan.WorkStep;
import org.papermath.schedule.Day;

/** A section of a card: a stage of the work. */
abstract class CardSection {
    /** A unit at the end of a figure. */
    private static final Pattern UNIT = Pattern.compile(" (?:g|kg|mm|µm|s|h|min|%|g/m²)$");

    private final CardWriter card;
    final MakingPlan plan;
    final Lettered pieces;
    final Figures figures;
    final CardForm form;

    CardSection(CardWriter card) {
        this.card = card;
        this.plan = card.plan();
        this.pieces = card.pieces();
        this.figures = card.figures();
        this.form = card.form();
    }

    /**
     * Writes the section.
     *
     * @param number the number its head has if it is one of the work
     * @return whether it took the number
     */
    abstract boolean write(int number);

    final void row(Mark mark, Label label, String text) {
        form.row(mark, label.words(), text);
    }

    /** A line for pieces that are alike in it, with their letters in front; none for those it says nothing of. */
    final void each(Mark mark, String label, Function<PiecePlan, String> said) {
        Map<String, List<PiecePlan>> groups = pieces.alike(said);
        groups.forEach((text, some) -> {
            String letters = pieces.letters(some);
            form.line(mark, (letters.isEmpty() ? "" : letters + "  ") + (label.isEmpty() ? "" : label + " ") + text);
        });
    }

    final void each(Mark mark, Label label, Function<PiecePlan, String> said) {
        each(mark, label.words(), said);
    }

    /** A row with a cell for each piece; none where all cells are empty. A unit that is the same in all stands in the label. */
    final void across(List<Across> rows, Mark mark, String label, Function<PiecePlan, String> said) {
        List<String> cells = pieces.all().stream().map(said).toList();
        List<String> full = cells.stream().filter(cell -> !cell.isEmpty()).toList();
        if (full.isEmpty()) {
            return;
        }
        Matcher unit = UNIT.matcher(full.get(0));
        if (pieces.areSeveral() && unit.find() && full.stream().allMatch(cell -> isOnly(cell, unit.group()))) {
            int less = unit.group().length();
            rows.add(new Across(
                    mark,
                    label + "," + unit.group(),
                    cells.stream()
                            .map(cell -> cell.isEmpty() ? cell : cell.substring(0, cell.length() - less))
                            .toList()));
        } else {
            rows.add(new Across(mark, label, cells));
        }
    }

    /** Whether a cell is figures and that unit. */
    private static boolean isOnly(String cell, String unit) {
        return cell.endsWith(unit)
                && cell.length() > unit.length()
                && cell.substring(0, cell.length() - unit.length()).chars().noneMatch(Character::isLetter);
    }

    /** A row to write what is read on. */
    final void toRead(List<Across> rows) {
        rows.add(new Across(
                Mark.MORE,
                Label.READS.words(),
                pieces.all().stream().map(piece -> CardForm.TO_WRITE).toList()));
    }

    final void across(List<Across> rows, Mark mark, Label label, Function<PiecePlan, String> said) {
        across(rows, mark, label.words(), said);
    }

    /** Rows under the heads of the pieces; a piece that is alone has them as sentences. */
    final void columns(String head, List<Across> rows) {
        if (!pieces.areSeveral()) {
            rows.forEach(row -> form.row(row.mark(), row.label(), row.cells().get(0)));
        } else if (!rows.isEmpty()) {
            form.columns(head, pieces.all().stream().map(pieces::head).toList(), rows);
        }
    }

    /**
     * A table with a row for each piece for which the stage is done. What is equal for all of them is said once, in a line of its
     * own; what says nothing not at all.
     */
    final void table(Mark mark, List<Column> columns, Predicate<PiecePlan> isDone) {
        List<PiecePlan> done = pieces.all().stream().filter(isDone).toList();
        List<Column> told = new ArrayList<>();
        List<Column> equal = new ArrayList<>();
        for (Column column : columns) {
            List<String> cells = done.stream().map(column.cell()).distinct().toList();
            if (!cells.equals(List.of(""))) {
                (cells.size() > 1 ? told : equal).add(column);
            }
        }
        String letters = done.size() == pieces.all().size() ? "" : pieces.letters(done) + "  ";
        if (told.size() == 1) {
            Column column = told.get(0);
            each(
                    mark,
                    column.label(),
                    piece -> isDone.test(piece) ? column.cell().apply(piece) : "");
        } else if (!told.isEmpty()) {
            List<String> heads = new ArrayList<>(List.of(""));
            told.forEach(column -> heads.add(column.label().words()));
            form.table(
                    mark,
                    heads,
                    done.stream()
                            .map(piece -> Stream.concat(
                                            Stream.of(pieces.letter(piece)),
                                            told.stream()
                                                    .map(column -> column.cell().apply(piece)))
                                    .toList())
                            .toList());
        }
        equal.forEach(column -> form.line(
                mark, letters + column.label().words() + " " + column.cell().apply(done.get(0))));
    }

    /** A column of a table of pieces. */
    record Column(Label label, Function<PiecePlan, String> cell) {}

    /** Why a stage of no piece is done: once where it is the same for all, else piece by piece. */
    final void reasons(Label label, Function<PiecePlan, Stage<?>> stage) {
        each(Mark.MORE, label.words() + ":", piece -> stage.apply(piece).reason());
    }

    /** Whether it is so of the vat of any piece that is dipped from one. */
    final boolean anyVat(Predicate<VatPlan> is) {
        return any(piece -> piece.vatStage().optional().filter(is).isPresent());
    }

    final boolean any(Predicate<PiecePlan> is) {
        return plan.pieces().stream().anyMatch(is);
    }

    /** The cautions of some steps of the work. */
    final void cautions(WorkStep... steps) {
        for (StepCaution caution : plan.cautions()) {
            for (WorkStep step : steps) {
                if (caution.step() == step) {
                    form.line(Mark.CAUTION, caution.text());
                }
            }
        }
    }

    /** {@return the day the first step of the days begins whose name begins so; empty text where that is not known} */
    final String day(String step) {
        return start(step).map(Figures::day).orElse("");
    }

    /** {@return the days by the hour; none where they are not dated, or go on for so long that nobody would write them} */
    final List<Day> calendar() {
        return card.calendar();
    }

    final Optional<LocalDate> start(String step) {
        return plan.schedule().steps().stream()
                .filter(one -> one.name().startsWith(step))
                .findFirst()
                .flatMap(Schedule.Step::start);
    }
}
