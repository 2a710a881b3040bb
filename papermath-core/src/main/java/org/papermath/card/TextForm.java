package org.papermath.card;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.papermath.text.Wrap;

/** A card as lines of text of one width. */
final class TextForm implements CardForm {
    private static final int WIDTH = 100;
    private static final int LABEL = 24;
    private static final int COLUMN = 25;
    private static final int ACROSS = 3;
    private static final int DATE = 12;
    private static final char KEPT = '\u001f';

    private final List<String> lines = new ArrayList<>();

    List<String> lines() {
        return List.copyOf(lines);
    }

    @Override
    public void title(String kind, String order, String whose, String how) {
        lines.add(kind.toUpperCase(Locale.ROOT) + "  " + order);
        lines.add(whose);
        lines.add(how);
    }

    @Override
    public void section(int number, String name) {
        String head = number + " " + name.toUpperCase(Locale.ROOT) + " ";
        lines.add("");
        lines.add(head + "-".repeat(WIDTH - head.length()));
    }

    @Override
    public void row(String label, String text) {
        List<String> parts = kept(text, WIDTH - LABEL);
        for (int i = 0; i < parts.size(); i++) {
            lines.add((pad(i == 0 ? label : "", LABEL) + parts.get(i)).stripTrailing());
        }
    }

    @Override
    public void alike(String label, String cell) {
        lines.add(pad(label, LABEL) + cell);
    }

    /** Pieces side by side, more than three going on below. */
    @Override
    public void cells(String label, List<String> cells) {
        for (int from = 0; from < cells.size(); from += ACROSS) {
            List<List<String>> columns = cells.subList(from, Math.min(from + ACROSS, cells.size())).stream()
                    .map(cell -> kept(cell, COLUMN - 1))
                    .toList();
            int deep = columns.stream().mapToInt(List::size).max().orElse(0);
            for (int i = 0; i < deep; i++) {
                StringBuilder line = new StringBuilder(pad(from == 0 && i == 0 ? label : "", LABEL));
                for (List<String> column : columns) {
                    line.append(pad(i < column.size() ? column.get(i) : "", COLUMN));
                }
                lines.add(line.toString().stripTrailing());
            }
        }
    }

    @Override
    public void line(String mark, String text) {
        List<String> parts = kept(text, WIDTH - 2);
        for (int i = 0; i < parts.size(); i++) {
            lines.add((i == 0 && !mark.isEmpty() ? mark : "  ") + parts.get(i));
        }
    }

    /** In two columns, the second with the later days; in one where a step of one's own has a long name. */
    @Override
    public void days(List<DatedWork> days) {
        if (days.stream().anyMatch(one -> day(one).length() >= WIDTH / 2)) {
            for (DatedWork one : days) {
                List<String> parts = kept(one.what(), WIDTH - DATE);
                for (int i = 0; i < parts.size(); i++) {
                    lines.add(pad(i == 0 ? one.day() : "", DATE) + parts.get(i));
                }
            }
            return;
        }
        int half = (days.size() + 1) / 2;
        for (int i = 0; i < half; i++) {
            lines.add((pad(day(days.get(i)), WIDTH / 2) + (half + i < days.size() ? day(days.get(half + i)) : ""))
                    .stripTrailing());
        }
    }

    private static String day(DatedWork one) {
        return pad(one.day(), DATE) + one.what();
    }

    @Override
    public void foot(String before, String rests) {
        lines.add("");
        lines.add(before);
        lines.add(rests);
    }

    /** Lines of a width in which a number keeps to the word behind it. */
    private static List<String> kept(String text, int width) {
        String whole = text.replaceAll("(\\d\\)?) (?=\\S)", "$1" + KEPT);
        return Wrap.lines(whole, width).stream()
                .map(line -> line.replace(KEPT, ' '))
                .toList();
    }

    private static String pad(String text, int width) {
        return text.length() >= width ? text + " " : text + " ".repeat(width - text.length());
    }
}
