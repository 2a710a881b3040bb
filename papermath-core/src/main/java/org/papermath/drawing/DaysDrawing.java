package org.papermath.drawing;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.papermath.schedule.Phase;
import org.papermath.schedule.PlacedPhase;
import org.papermath.schedule.PlacedTask;
import org.papermath.schedule.Timetable;
import org.papermath.text.SvgWriter;

/**
 * A timetable as a picture of bars, in SVG text: a line for each task, under the label of its group, over the days from left
 * to right. Immutable.
 *
 * <p>Beside each bar stand its words: the task, and when it begins and ends. How a phase goes on is told by its pattern as well as
 * its grey: full for work by hand, hatched for a machine, an empty frame for waiting; the legend below says so. Days that
 * are not worked are shaded and have a cross at their heads. Each bar has a title that a reader for the blind speaks.
 * What has no date is a line of words without a bar.
 */
public final class DaysDrawing {
    private static final double MARGIN = 6;
    private static final double ROW = 7;
    private static final double HEAD = 18;
    private static final double WORDS = 78;
    /** What a letter takes on the average. */
    private static final double LETTER = 1.6;

    private static final double LEAST_DAY = 9;
    private static final double WIDTH = 180;

    private final String title;
    private final Timetable timetable;

    private DaysDrawing(String title, Timetable timetable) {
        this.title = title;
        this.timetable = timetable;
    }

    /**
     * Draws a timetable.
     *
     * @param title what it shows; may be any text
     * @param timetable the days
     * @return the drawing
     */
    public static DaysDrawing of(String title, Timetable timetable) {
        Objects.requireNonNull(title, "title");
        Objects.requireNonNull(timetable, "timetable");
        return new DaysDrawing(title, timetable);
    }

    /**
     * Writes the drawing.
     *
     * @return an SVG document, the same in every locale
     */
    public String svg() {
        Map<String, List<PlacedTask>> groups = new LinkedHashMap<>();
        timetable
                .tasks()
                .forEach(one -> groups.computeIfAbsent(one.task().group(), key -> new ArrayList<>())
                        .add(one));
        int rows = timetable.tasks().size()
                + (int) groups.keySet().stream().filter(name -> !name.isEmpty()).count();
        LocalDate first = edge(true).map(LocalDateTime::toLocalDate).orElse(LocalDate.EPOCH);
        LocalDate last =
                edge(false).map(end -> end.minusMinutes(1).toLocalDate()).orElse(first);
        last = last.isBefore(first) ? first : last;
        long days = last.toEpochDay() - first.toEpochDay() + 1;
        double day = Math.max(LEAST_DAY, WIDTH / days);
        double left = MARGIN + WORDS;
        double width = left + day * days + MARGIN;
        double foot = MARGIN + HEAD + ROW * rows;
        double height = foot + 14;
        SvgWriter out = new SvgWriter(2)
                .head(
                        "img",
                        width,
                        height,
                        title,
                        "text{font-family:sans-serif;font-size:3px;fill:#222}"
                                + "text.head{font-size:4px}text.group{font-weight:bold}text.day{text-anchor:middle}"
                                + "rect{stroke:#222;stroke-width:0.25}rect.hands{fill:#444}rect.machine{fill:url(#hatch)}"
                                + "rect.waiting{fill:#fff}rect.off{fill:#eee;stroke:none}"
                                + "line{stroke:#aaa;stroke-width:0.15}path{stroke:#444;stroke-width:0.6}",
                        "<defs><pattern id=\"hatch\" width=\"2\" height=\"2\" patternUnits=\"userSpaceOnUse\">"
                                + "<path d=\"M0 2L2 0\"/></pattern></defs>\n");
        out.text("head", MARGIN, MARGIN + 4, title);
        for (long i = 0; i < days; i++) {
            LocalDate date = first.plusDays(i);
            boolean worked = timetable.work().workingTime().isWorked(date);
            double x = left + day * i;
            if (!worked) {
                out.rect("off", x, MARGIN + HEAD - 2, day, ROW * rows + 2, "");
            }
            out.line("", x, MARGIN + HEAD - 2, x, foot);
            String name = date.getDayOfWeek().name();
            out.text(
                    "day",
                    x + day / 2,
                    MARGIN + 10,
                    name.charAt(0) + name.substring(1, 3).toLowerCase(Locale.ROOT));
            out.text(
                    "day",
                    x + day / 2,
                    MARGIN + 14,
                    date.getDayOfMonth() + "." + date.getMonthValue() + "." + (worked ? "" : " ×"));
        }
        out.line("", left + day * days, MARGIN + HEAD - 2, left + day * days, foot);
        double y = MARGIN + HEAD;
        for (Map.Entry<String, List<PlacedTask>> group : groups.entrySet()) {
            if (!group.getKey().isEmpty()) {
                out.text("group", MARGIN, y + 4.5, cut(group.getKey()));
                y += ROW;
            }
            for (PlacedTask task : group.getValue()) {
                out.text("", MARGIN, y + 3, cut(task.task().name()));
                out.text("", MARGIN, y + 6, times(task));
                for (PlacedPhase phase : task.phases()) {
                    if (phase.start().isPresent() && phase.finish().isPresent()) {
                        double from = left + day * place(first, phase.start().get());
                        double to = left + day * place(first, phase.finish().get());
                        out.rect(
                                style(phase.phase().kind()),
                                from,
                                y + 1.5,
                                Math.max(0.3, to - from),
                                4,
                                task.task().name() + ": " + phase + ", "
                                        + phase.phase().kind().words());
                    }
                }
                y += ROW;
            }
        }
        double x = MARGIN;
        for (Phase.Kind kind : Phase.Kind.values()) {
            out.rect(style(kind), x, foot + 5, 8, 4, "");
            out.text("", x + 10, foot + 8, kind.words());
            x += 34;
        }
        out.rect("off", x, foot + 5, 8, 4, "");
        out.text("", x + 10, foot + 8, "× no work");
        return out.end();
    }

    /** The first start or the last finish of what is dated. */
    private Optional<LocalDateTime> edge(boolean start) {
        return timetable.tasks().stream()
                .flatMap(task -> task.phases().stream())
                .flatMap(phase -> (start ? phase.start() : phase.finish()).stream())
                .reduce((a, b) -> a.isBefore(b) == start ? a : b);
    }

    private static double place(LocalDate first, LocalDateTime moment) {
        return moment.toLocalDate().toEpochDay()
                - first.toEpochDay()
                + moment.toLocalTime().toSecondOfDay() / 86_400.0;
    }

    private static String times(PlacedTask task) {
        return task.start().map(DaysDrawing::words).orElse("not known when") + " to "
                + task.finish().map(DaysDrawing::words).orElse("not known when");
    }

    private static String words(LocalDateTime moment) {
        return moment.toLocalDate() + " " + moment.toLocalTime();
    }

    private static String style(Phase.Kind kind) {
        return switch (kind) {
            case HANDS_ON -> "hands";
            case MACHINE -> "machine";
            case WAITING -> "waiting";
        };
    }

    /** What fits beside the bars; the whole name stands in the title of each bar. */
    private static String cut(String name) {
        int most = (int) (WORDS / LETTER);
        return name.codePointCount(0, name.length()) <= most
                ? name
                : name.substring(0, name.offsetByCodePoints(0, most - 1)) + "…";
    }

    /** Returns the title, as {@code days "harbour cards"}; {@link #svg()} gives the document. */
    @Override
    public String toString() {
        return "days \"" + title + "\"";
    }
}
