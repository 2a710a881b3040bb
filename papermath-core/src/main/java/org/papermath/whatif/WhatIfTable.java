package org.papermath.whatif;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Function;
import javax.measure.Quantity;
import org.jspecify.annotations.Nullable;
import org.papermath.evidence.Estimate;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kind;
import org.papermath.quantity.PapermathException;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Units;
import org.papermath.text.Digits;
import org.papermath.text.Wrap;

/**
 * What a job comes to over the values of one or two inputs: as values, as text in columns, and as comma-separated values.
 * Immutable.
 *
 * <pre>{@code
 * WhatIfTable table = WhatIf.decidedAnew(order, studio)
 *         .vary(Input.grammage("seat card"), List.of(Grammage.gsm(200), Grammage.gsm(240)))
 *         .show(Outcome.lift("seat card"), Outcome.mass("seat card"))
 *         .table();
 * table.size(); // 2
 * table.amount(1, Input.grammage("seat card")); // 240 g/m²
 * table.value(1, Outcome.mass("seat card")).get(); // 1.193 g
 * }</pre>
 */
public final class WhatIfTable {
    private static final int MOST_PRINTED = 60;
    private static final int MOST_REASONS = 6;
    private static final int DIGITS = 4;
    private static final int WIDTH = 100;
    private static final String UNKNOWN = "not known";
    /** Between two columns. */
    private static final String GAP = "   ";

    private final boolean held;
    private final Job job;
    private final List<WhatIf.Varied> varied;
    private final List<Outcome<?>> shown;
    private final boolean bands;
    private final Evaluator.Point[] points;

    WhatIfTable(
            boolean held,
            Job job,
            List<WhatIf.Varied> varied,
            List<Outcome<?>> shown,
            boolean bands,
            Evaluator.Point[] points) {
        this.held = held;
        this.job = job;
        this.varied = varied;
        this.shown = shown;
        this.bands = bands;
        this.points = points;
    }

    /**
     * Returns how many rows there are.
     *
     * @return the number
     */
    public int size() {
        return points.length;
    }

    /**
     * Returns the varied inputs, the slowest first.
     *
     * @return an unmodifiable list
     */
    public List<Input<?>> inputs() {
        return varied.stream().<Input<?>>map(WhatIf.Varied::input).toList();
    }

    /**
     * Returns what is shown, in the order of the columns.
     *
     * @return an unmodifiable list
     */
    public List<Outcome<?>> outcomes() {
        return shown;
    }

    /**
     * Returns whether settings were those of the plan of the job, held fixed; decided anew otherwise.
     *
     * @return whether they were held
     */
    public boolean isSettingsHeld() {
        return held;
    }

    /**
     * Returns the value of an input in a row.
     *
     * @param row the row, from 0
     * @param input a varied input
     * @param <Q> what it is measured in
     * @return the amount
     * @throws Refused if there is no such row or input
     */
    public <Q extends Quantity<Q>> Amount<Q> amount(int row, Input<Q> input) {
        Objects.requireNonNull(input, "input");
        requireRow(row);
        for (int i = 0; i < varied.size(); i++) {
            Input<?> one = varied.get(i).input();
            if (one.toString().equals(input.toString()) && one.kind() == (Kind<?>) input.kind()) {
                return input.amount(valueAt(row, i));
            }
        }
        throw column(input.toString());
    }

    /**
     * Returns an outcome in a row.
     *
     * @param row the row, from 0
     * @param outcome a shown outcome
     * @param <R> what it is measured in
     * @return the amount at the likely values; empty where it is not known, and {@link #reason} says why
     * @throws Refused if there is no such row or outcome
     */
    public <R extends Quantity<R>> Optional<Amount<R>> value(int row, Outcome<R> outcome) {
        int at = column(row, outcome);
        double likely = points[row].likely[at];
        return Double.isNaN(likely)
                ? Optional.empty()
                : Optional.of(outcome.kind().ofSi(likely, outcome.unit()));
    }

    /**
     * Returns an outcome in a row with its band.
     *
     * @param row the row, from 0
     * @param outcome a shown outcome
     * @param <R> what it is measured in
     * @return the estimate, without drivers; its band is none where bands were not asked for and that of a setting; empty where
     *     it is not known
     * @throws Refused if there is no such row or outcome
     */
    public <R extends Quantity<R>> Optional<Estimate<R>> estimate(int row, Outcome<R> outcome) {
        int at = column(row, outcome);
        Evaluator.Point point = points[row];
        return value(row, outcome)
                .map(likely -> Estimate.of(
                                likely,
                                outcome.kind().ofSi(point.low[at], outcome.unit()),
                                outcome.kind().ofSi(point.high[at], outcome.unit()),
                                List.of())
                        .open(point.isOpenBelow(at), point.isOpenAbove(at)));
    }

    /**
     * Returns why an outcome in a row is not known.
     *
     * @param row the row, from 0
     * @param outcome a shown outcome
     * @return what refused it; empty where it is known
     * @throws Refused if there is no such row or outcome
     */
    public Optional<PapermathException> reason(int row, Outcome<?> outcome) {
        int at = column(row, outcome);
        return reason(row, at);
    }

    private Optional<PapermathException> reason(int row, int at) {
        return Double.isNaN(points[row].likely[at])
                ? Optional.of(Evaluator.reason(points[row].reason, shown.get(at)))
                : Optional.empty();
    }

    private int column(int row, Outcome<?> outcome) {
        Objects.requireNonNull(outcome, "outcome");
        requireRow(row);
        for (int i = 0; i < shown.size(); i++) {
            if (shown.get(i).toString().equals(outcome.toString())
                    && shown.get(i).kind() == (Kind<?>) outcome.kind()) {
                return i;
            }
        }
        throw column(outcome.toString());
    }

    private void requireRow(int row) {
        if (row < 0 || row >= points.length) {
            throw Refused.of(
                    "whatif.no-row",
                    "row: " + row + " given; the table has those from 0 to " + (points.length - 1) + ".",
                    "given",
                    row,
                    "most",
                    points.length - 1);
        }
    }

    private Refused column(String name) {
        List<String> names = new ArrayList<>();
        varied.forEach(one -> names.add(one.input().toString()));
        shown.forEach(one -> names.add(one.toString()));
        return Refused.of(
                "whatif.no-column", "table: it has no column \"" + name + "\"; it has: " + names + ".", "given", name);
    }

    private double valueAt(int row, int input) {
        int rest = row;
        for (int i = varied.size() - 1; i > input; i--) {
            rest /= varied.get(i).values().length;
        }
        double[] values = varied.get(input).values();
        return values[rest % values.length];
    }

    // ------------------------------------------------------------------------------------------------- as text

    /** A column of text: its head in lines, and its cells. */
    private static final class Column {
        final List<String> head;
        final List<String> cells = new ArrayList<>();

        Column(String... head) {
            this.head = List.of(head);
        }

        int width() {
            int width = 0;
            for (String one : head) {
                width = Math.max(width, one.length());
            }
            for (String one : cells) {
                width = Math.max(width, one.length());
            }
            return width;
        }
    }

    /**
     * Returns the table as text in columns, with the unit said once in the head and at most four digits to a number. Of a long
     * table it has the first sixty rows. Where something is not known the reasons stand below.
     *
     * @return the text, lines ended by {@code \n}
     */
    @Override
    public String toString() {
        int rows = Math.min(MOST_PRINTED, points.length);
        List<Column> columns = new ArrayList<>();
        for (int i = 0; i < varied.size(); i++) {
            Input<?> input = varied.get(i).input();
            Column column = new Column(input.words(), of(input.whose()), sign(input.kind(), input.unit()));
            double[] values = new double[rows];
            for (int row = 0; row < rows; row++) {
                values[row] = input.amount(valueAt(row, i)).value();
            }
            column.cells.addAll(aligned(values, places(values)));
            columns.add(column);
        }
        for (int i = 0; i < shown.size(); i++) {
            Outcome<?> outcome = shown.get(i);
            double[] values = values(outcome, i, rows, 0);
            Column column = new Column(outcome.words(), of(outcome.whose()), sign(outcome.kind(), outcome.unit()));
            boolean banded = bands && !outcome.isSetting();
            // The upper ends have the most digits before the point.
            int places = places(banded ? values(outcome, i, rows, 1) : values);
            column.cells.addAll(aligned(values, places));
            columns.add(column);
            if (banded) {
                columns.add(band(i, rows, places));
            }
        }
        StringBuilder out = new StringBuilder();
        out.append(held ? "What comes out of " : "What the plan would be: ")
                .append(job.order().name());
        out.append(held ? ", with the settings of its plan" : ", with settings decided anew")
                .append('\n');
        for (int line = 0; line < columns.get(0).head.size(); line++) {
            int head = line;
            line(columns, column -> column.head.get(head), out);
        }
        int width = 0;
        for (Column column : columns) {
            width += column.width() + GAP.length();
        }
        out.append("-".repeat(Math.max(0, width - GAP.length()))).append('\n');
        for (int row = 0; row < rows; row++) {
            int cell = row;
            line(columns, column -> column.cells.get(cell), out);
        }
        if (rows < points.length) {
            out.append("and ").append(points.length - rows).append(" rows more\n");
        }
        reasons(rows, out);
        return out.toString();
    }

    private static String of(String whose) {
        return whose.isEmpty() ? "" : "of " + whose;
    }

    private static void line(List<Column> columns, Function<Column, String> text, StringBuilder out) {
        StringBuilder line = new StringBuilder();
        for (Column column : columns) {
            String cell = text.apply(column);
            line.append(" ".repeat(column.width() - cell.length())).append(cell).append(GAP);
        }
        out.append(line.toString().stripTrailing()).append('\n');
    }

    private Column band(int at, int rows, int places) {
        Column column =
                new Column("", "band", sign(shown.get(at).kind(), shown.get(at).unit()));
        double[] lows = values(shown.get(at), at, rows, -1);
        double[] highs = values(shown.get(at), at, rows, 1);
        for (int row = 0; row < rows; row++) {
            Evaluator.Point point = points[row];
            column.cells.add(
                    Double.isNaN(point.likely[at])
                            ? ""
                            : (point.isOpenBelow(at) ? "below" : cell(lows[row], places)) + " to "
                                    + (point.isOpenAbove(at) ? "beyond" : cell(highs[row], places)));
        }
        return column;
    }

    /** The likely values, the lower or the upper ends, in the unit of the column. */
    private double[] values(Outcome<?> outcome, int at, int rows, int end) {
        double[] values = new double[rows];
        for (int row = 0; row < rows; row++) {
            Evaluator.Point point = points[row];
            values[row] = Double.isNaN(point.likely[at])
                    ? Double.NaN
                    : inUnit(outcome, end < 0 ? point.low[at] : end > 0 ? point.high[at] : point.likely[at]);
        }
        return values;
    }

    private static <R extends Quantity<R>> double inUnit(Outcome<R> outcome, double si) {
        return outcome.kind().ofSi(si, outcome.unit()).value();
    }

    private static <Q extends Quantity<Q>> String sign(Kind<Q> kind, String code) {
        String symbol = kind.unit(code).getSymbol();
        String sign = symbol != null ? symbol : kind.unit(code).toString();
        return sign.equals("one") ? "" : sign;
    }

    private static List<String> aligned(double[] values, int places) {
        return Arrays.stream(values)
                .mapToObj(value -> Double.isNaN(value) ? UNKNOWN : cell(value, places))
                .toList();
    }

    /** The decimals of a column, so that its largest number has four digits; -1 where its numbers lie too far apart. */
    private static int places(double[] values) {
        double most = 0;
        double least = Double.POSITIVE_INFINITY;
        for (double value : values) {
            if (!Double.isNaN(value) && value != 0) {
                most = Math.max(most, Math.abs(value));
                least = Math.min(least, Math.abs(value));
            }
        }
        if (most == 0) {
            return 0;
        }
        if (most > 100 * least || most >= 1e9 || most < 1e-4) {
            return -1;
        }
        int before = (int) Math.floor(Math.log10(most)) + 1;
        int places = Math.max(0, DIGITS - before);
        // Decimals that are nought in every row tell nothing.
        while (places > 0 && allEnd(values, places)) {
            places--;
        }
        return places;
    }

    private static boolean allEnd(double[] values, int places) {
        for (double value : values) {
            if (!Double.isNaN(value)
                    && BigDecimal.valueOf(value)
                                    .setScale(places, RoundingMode.HALF_UP)
                                    .stripTrailingZeros()
                                    .scale()
                            >= places) {
                return false;
            }
        }
        return true;
    }

    private static String cell(double value, int places) {
        return places < 0
                ? Digits.four(value)
                : BigDecimal.valueOf(value)
                        .setScale(places, RoundingMode.HALF_UP)
                        .toPlainString();
    }

    private void reasons(int rows, StringBuilder out) {
        Map<String, Integer> reasons = new LinkedHashMap<>();
        Map<String, String> first = new LinkedHashMap<>();
        for (int row = 0; row < rows; row++) {
            String last = "";
            for (int i = 0; i < shown.size(); i++) {
                Optional<PapermathException> reason = reason(row, i);
                String message = reason.map(PapermathException::getMessage).orElse("");
                if (reason.isPresent() && !message.equals(last)) {
                    last = message;
                    String key = reason.get().code() + (points[row].reason == null ? i : "");
                    reasons.merge(key, 1, Integer::sum);
                    String place = place(row);
                    String text = last;
                    first.computeIfAbsent(key, one -> "With " + place + ": " + text);
                }
            }
        }
        int told = 0;
        for (Map.Entry<String, String> one : first.entrySet()) {
            if (told++ == MOST_REASONS) {
                break;
            }
            int more = reasons.getOrDefault(one.getKey(), 1) - 1;
            String reason = one.getValue() + (more > 0 ? " (" + more + (more == 1 ? " row" : " rows") + " more)" : "");
            Wrap.lines(reason, WIDTH).forEach(line -> out.append(line).append('\n'));
        }
    }

    private String place(int row) {
        List<String> all = new ArrayList<>();
        for (int i = 0; i < varied.size(); i++) {
            Input<?> input = varied.get(i).input();
            all.add(input + " " + input.amount(valueAt(row, i)));
        }
        return String.join(", ", all);
    }

    /**
     * Returns the table as comma-separated values: a line of heads with the code of the unit in brackets, then a line for
     * each row, numbers in full with a decimal point. With bands there are two columns more for each forecast; an open end is
     * left empty, as is what is not known. The last column has the reason for that.
     *
     * @return the text, lines ended by {@code \r\n}
     */
    public String csv() {
        StringBuilder out = new StringBuilder();
        List<String> head = new ArrayList<>();
        for (WhatIf.Varied one : varied) {
            head.add(head(one.input().toString(), one.input().unit()));
        }
        for (Outcome<?> outcome : shown) {
            head.add(head(outcome.toString(), outcome.unit()));
            if (bands && !outcome.isSetting()) {
                head.add(head(outcome + ", 5 % point", outcome.unit()));
                head.add(head(outcome + ", 95 % point", outcome.unit()));
            }
        }
        head.add("not known because");
        write(head, out);
        for (int row = 0; row < points.length; row++) {
            write(cells(row), out);
        }
        return out.toString();
    }

    private List<String> cells(int row) {
        Evaluator.Point point = points[row];
        List<String> cells = new ArrayList<>();
        for (int i = 0; i < varied.size(); i++) {
            cells.add(Units.number(varied.get(i).input().amount(valueAt(row, i)).value()));
        }
        String why = "";
        for (int i = 0; i < shown.size(); i++) {
            Outcome<?> outcome = shown.get(i);
            boolean known = !Double.isNaN(point.likely[i]);
            cells.add(known ? Units.number(inUnit(outcome, point.likely[i])) : "");
            if (bands && !outcome.isSetting()) {
                cells.add(known && !point.isOpenBelow(i) ? Units.number(inUnit(outcome, point.low[i])) : "");
                cells.add(known && !point.isOpenAbove(i) ? Units.number(inUnit(outcome, point.high[i])) : "");
            }
            @Nullable
            String reason = reason(row, i).map(PapermathException::getMessage).orElse(null);
            if (reason != null && !why.contains(reason)) {
                why = why.isEmpty() ? reason : why + " " + reason;
            }
        }
        cells.add(why);
        return cells;
    }

    private static String head(String words, String unit) {
        return unit.equals("1") ? words : words + " [" + unit + "]";
    }

    private static void write(List<String> cells, StringBuilder out) {
        for (int i = 0; i < cells.size(); i++) {
            String cell = cells.get(i);
            boolean quoted = cell.contains(",") || cell.contains("\"") || cell.contains("\n");
            out.append(i == 0 ? "" : ",").append(quoted ? "\"" + cell.replace("\"", "\"\"") + "\"" : cell);
        }
        out.append("\r\n");
    }
}
