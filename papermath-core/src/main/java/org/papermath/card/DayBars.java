package org.papermath.card;

import java.util.ArrayList;
import java.util.List;
import org.papermath.text.SvgWriter;

/** The hours of each day as bars: by hand, in a machine, and what goes on by itself. */
final class DayBars {
    private static final double NAME = 19;
    private static final double ROW = 4.2;
    private static final double HOUR = 3.4;
    /** Hours a day is drawn with at most. */
    private static final double MOST = 18;

    private static final double ARROW = 8;
    /** The words below the bars, mm. */
    private static final double LEGEND = 92;
    /** More days than this stand in two columns. */
    private static final int ONE_COLUMN = 5;

    /** A day: its name, hours by hand, hours of machines, and whether something goes on overnight. */
    private record Row(String name, double hands, double machine, boolean isOvernight) {}

    private final List<Row> rows = new ArrayList<>();

    void add(String name, double hands, double machine, boolean isOvernight) {
        rows.add(new Row(name, hands, machine, isOvernight));
    }

    String svg() {
        double longest = rows.stream()
                .mapToDouble(row -> Math.min(MOST, row.hands + row.machine))
                .max()
                .orElse(0);
        double width = NAME + HOUR * longest + ARROW + 4;
        int deep = rows.size() > ONE_COLUMN ? (rows.size() + 1) / 2 : rows.size();
        SvgWriter out = new SvgWriter(2)
                .head(
                        "img",
                        Math.max(LEGEND, rows.size() > deep ? 2 * width : width),
                        ROW * deep + 6,
                        "hours of each day",
                        "text{font:2.8px sans-serif}rect{stroke:#000;stroke-width:0.25}rect.hands{fill:#000}"
                                + "rect.machine{fill:url(#hatch)}line{stroke:#000;stroke-width:0.3;stroke-dasharray:1.2 0.8}"
                                + "polygon{fill:#000}",
                        "<defs><pattern id=\"hatch\" width=\"2\" height=\"2\" patternUnits=\"userSpaceOnUse\">"
                                + "<path d=\"M0 2L2 0\" stroke=\"#000\" stroke-width=\"0.3\"/></pattern></defs>\n");
        StringBuilder words = new StringBuilder();
        rows.forEach(row -> words.append(words.length() == 0 ? "" : "; ")
                .append(row.name)
                .append(' ')
                .append(Math.round(row.hands * 10) / 10.0)
                .append(" h by hand"));
        out.described(words.toString());
        for (int i = 0; i < rows.size(); i++) {
            Row row = rows.get(i);
            double left = i < deep ? 0 : width;
            double y = 1 + ROW * (i % deep);
            double hands = HOUR * Math.min(MOST, row.hands);
            double machine = HOUR * Math.min(MOST - Math.min(MOST, row.hands), row.machine);
            out.text("", left, y + 2.5, row.name);
            if (hands > 0) {
                out.rect("hands", left + NAME, y, hands, 2.6, "");
            }
            if (machine > 0) {
                out.rect("machine", left + NAME + hands, y, machine, 2.6, "");
            }
            if (row.isOvernight) {
                double from = left + NAME + hands + machine + 0.6;
                out.line("", from, y + 1.3, from + ARROW - 2, y + 1.3);
                out.polygon("", new double[] {from + ARROW - 2, from + ARROW, from + ARROW - 2}, new double[] {
                    y + 0.5, y + 1.3, y + 2.1
                });
            }
        }
        out.text(
                "", 0, 1 + ROW * deep + 3, "full: by hand; hatched: beater, pot or press; arrow: by itself, overnight");
        return out.end();
    }
}
