package org.papermath.card;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import org.papermath.text.Wrap;

/** A card as pages of lines, none wider than 80 characters: nine points on A4 or Letter. */
final class TextForm implements CardForm {
    static final int WIDTH = 80;
    /** Lines of a page, at nine points on ten. */
    static final int PAGE = 69;

    /** Lines of a section that a page has room for below its head. */
    private static final int FULL = PAGE - 4;

    private static final int SIGN = 4;
    private static final int LABEL = 26;
    private static final int COLUMN = 18;
    private static final int ACROSS = 3;
    private static final int GAP = 2;
    /** No column of a table is made narrower than this. */
    private static final int NARROW = 8;
    /** A name of up to so many letters is not broken. */
    private static final int NAME = 18;

    /** A table with a cell of more lines is written as sentences. */
    private static final int DEEP = 3;

    private static final String RULE = "__________";
    private static final char KEPT = '\u001f';

    private final List<List<String>> blocks = new ArrayList<>();
    private final List<Integer> places = new ArrayList<>();
    private List<String> block = new ArrayList<>();
    private String order = "";
    private String leaves = "";
    private boolean isMoved;

    TextForm() {
        blocks.add(block);
    }

    /** The lines, with a page head where a page begins; sections are not broken that find room on one. */
    List<String> lines() {
        breakLong();
        List<Integer> starts = new ArrayList<>();
        int used = blocks.get(0).size();
        for (int i = 1; i < blocks.size(); i++) {
            int size = blocks.get(i).size();
            if (places.contains(i) || (used + size > PAGE && used > 2 && size < PAGE)) {
                starts.add(i);
                used = 2;
            }
            used += size;
        }
        int pages = starts.size() + 1;
        List<String> lines = new ArrayList<>();
        for (int i = 0; i < blocks.size(); i++) {
            int start = starts.indexOf(i);
            if (start >= 0) {
                lines.add("");
                lines.addAll(apart(order + ", page " + (start + 2) + " of " + pages, leaves));
                lines.add("=".repeat(WIDTH));
            }
            List<String> some = blocks.get(i);
            lines.addAll(start >= 0 && !some.isEmpty() && some.get(0).isEmpty() ? some.subList(1, some.size()) : some);
        }
        return List.copyOf(lines);
    }

    /** Breaks a section that is longer than a page, before a line that begins something. */
    private void breakLong() {
        for (int i = 0; i < blocks.size(); i++) {
            List<String> whole = blocks.get(i);
            if (whole.size() <= FULL) {
                continue;
            }
            int at = FULL;
            while (at > FULL / 2 && whole.get(at).startsWith("    ")) {
                at--;
            }
            blocks.set(i, List.copyOf(whole.subList(0, at)));
            blocks.add(i + 1, List.copyOf(whole.subList(at, whole.size())));
            int next = i;
            places.replaceAll(place -> place > next ? place + 1 : place);
        }
    }

    /** Two texts at the ends of a line; of two lines if they do not fit. */
    private static List<String> apart(String left, String right) {
        if (right.isEmpty() || left.length() + right.length() + GAP > WIDTH) {
            List<String> lines = new ArrayList<>(Wrap.lines(left, WIDTH));
            lines.addAll(Wrap.lines(right, WIDTH));
            return lines;
        }
        return List.of(left + " ".repeat(WIDTH - left.length() - right.length()) + right);
    }

    @Override
    public void title(String kind, String name, String whose, String parcel, String key) {
        order = name;
        leaves = parcel;
        block.addAll(apart(kind.toUpperCase(Locale.ROOT) + "  " + name, parcel));
        block.addAll(Wrap.lines(whose, WIDTH));
        block.add("=".repeat(WIDTH));
        block.addAll(key.length() <= WIDTH ? List.of(key) : Wrap.lines(key, WIDTH));
    }

    @Override
    public void section(int number, String name, String aside) {
        block = new ArrayList<>();
        blocks.add(block);
        if (isMoved) {
            places.add(blocks.size() - 1);
            isMoved = false;
        }
        String head = (number > 0 ? number + "  " : "") + name.toUpperCase(Locale.ROOT) + " ";
        String end = aside.isEmpty() ? "" : " " + Written.plain(aside);
        block.add("");
        if (head.length() + end.length() + GAP > WIDTH) {
            block.add(head + "-".repeat(WIDTH - head.length()));
            block.addAll(Wrap.lines(end, WIDTH));
        } else {
            block.add(head + "-".repeat(WIDTH - head.length() - end.length()) + end);
        }
    }

    @Override
    public void otherPlace() {
        isMoved = true;
    }

    @Override
    public void line(Mark mark, String text) {
        List<String> parts = kept(text, WIDTH - SIGN);
        for (int i = 0; i < parts.size(); i++) {
            block.add(pad(i == 0 ? mark.sign() : "", SIGN) + parts.get(i));
        }
    }

    @Override
    public void table(Mark mark, List<String> heads, List<List<String>> rows) {
        List<List<String>> all = new ArrayList<>();
        all.add(heads);
        rows.forEach(row -> all.add(row.stream().map(TextForm::plain).toList()));
        int[] widths = widths(all, WIDTH - SIGN);
        if (deepest(all, widths) > DEEP) {
            for (List<String> row : all.subList(1, all.size())) {
                List<String> parts = new ArrayList<>();
                for (int c = 1; c < heads.size(); c++) {
                    if (!row.get(c).isEmpty()) {
                        parts.add(heads.get(c) + " " + row.get(c));
                    }
                }
                line(mark, (row.get(0) + "  " + String.join("; ", parts)).strip());
            }
            return;
        }
        for (int r = 0; r < all.size(); r++) {
            cells(r == 0 ? "" : mark.sign(), all.get(r), widths);
        }
    }

    private static int deepest(List<List<String>> rows, int[] widths) {
        int deep = 0;
        for (List<String> row : rows.subList(1, rows.size())) {
            for (int c = 0; c < widths.length; c++) {
                deep = Math.max(deep, kept(row.get(c), widths[c]).size());
            }
        }
        return deep;
    }

    private void cells(String sign, List<String> cells, int[] widths) {
        List<List<String>> wrapped = new ArrayList<>();
        for (int c = 0; c < cells.size(); c++) {
            wrapped.add(kept(cells.get(c), widths[c]));
        }
        int deep = wrapped.stream().mapToInt(List::size).max().orElse(0);
        for (int i = 0; i < deep; i++) {
            StringBuilder line = new StringBuilder(pad(i == 0 ? sign : "", SIGN));
            for (int c = 0; c < wrapped.size(); c++) {
                List<String> cell = wrapped.get(c);
                line.append(pad(i < cell.size() ? cell.get(i) : "", widths[c] + GAP));
            }
            block.add(line.toString().stripTrailing());
        }
    }

    /** As wide as what stands in each column; the widest give way where that is too much. */
    private static int[] widths(List<List<String>> rows, int room) {
        int[] widths = new int[rows.get(0).size()];
        int[] words = new int[widths.length];
        for (List<String> row : rows) {
            for (int c = 0; c < widths.length; c++) {
                String cell = row.get(c);
                widths[c] = Math.max(widths[c], cell.length());
                words[c] = Math.max(
                        words[c],
                        Arrays.stream(cell.split(" ", -1))
                                .mapToInt(String::length)
                                .max()
                                .orElse(0));
            }
        }
        words[0] = Math.max(words[0], Math.min(widths[0], NAME));
        int all = Arrays.stream(widths).sum() + GAP * (widths.length - 1);
        while (all > room) {
            int widest = -1;
            for (int c = 0; c < widths.length; c++) {
                if (widths[c] > Math.max(NARROW, words[c]) && (widest < 0 || widths[c] > widths[widest])) {
                    widest = c;
                }
            }
            if (widest < 0) {
                for (int c = 0; c < widths.length; c++) {
                    widest = widest < 0 || widths[c] > widths[widest] ? c : widest;
                }
            }
            widths[widest]--;
            all--;
        }
        return widths;
    }

    @Override
    public void columns(String head, List<String> names, List<Across> rows) {
        int[] widths = new int[1 + Math.min(ACROSS, names.size())];
        Arrays.fill(widths, COLUMN - GAP);
        widths[0] = LABEL - SIGN;
        for (int from = 0; from < names.size(); from += ACROSS) {
            int to = Math.min(from + ACROSS, names.size());
            cells("", joined(from == 0 ? head : "", names.subList(from, to)), widths);
            for (Across row : rows) {
                cells(row.mark().sign(), joined(row.label(), row.cells().subList(from, to)), widths);
            }
        }
    }

    private static List<String> joined(String first, List<String> rest) {
        List<String> all = new ArrayList<>(Collections.singletonList(first));
        rest.forEach(one -> all.add(Written.plain(one)));
        return all;
    }

    @Override
    public void picture(Picture picture) {
        // A text has no pictures; what they show stands in its figures.
    }

    @Override
    public void foot(String before, String rests) {
        block.add("");
        block.addAll(Wrap.lines(before, WIDTH));
        block.addAll(Wrap.lines(rests, WIDTH));
    }

    /** A text with rules where something is written down. */
    private static String plain(String text) {
        return Written.plain(text).replace(TWO_TO_WRITE, "____/____").replace(TO_WRITE, RULE);
    }

    /** Lines of a width in which a number keeps to the word behind it; a word that is longer is broken. */
    private static List<String> kept(String text, int width) {
        String whole = plain(text).replaceAll("(\\d\\)?) (?=\\S)", "$1" + KEPT);
        List<String> lines = new ArrayList<>();
        for (String line : Wrap.lines(whole, width)) {
            String rest = line;
            if (rest.length() > width && rest.indexOf(KEPT) >= 0) {
                for (String part : Wrap.lines(rest.replace(KEPT, ' '), width)) {
                    lines.add(part);
                }
                continue;
            }
            while (rest.length() > width) {
                lines.add(rest.substring(0, width));
                rest = rest.substring(width);
            }
            lines.add(rest.replace(KEPT, ' '));
        }
        return lines;
    }

    private static String pad(String text, int width) {
        return text.length() >= width ? text : text + " ".repeat(width - text.length());
    }
}
