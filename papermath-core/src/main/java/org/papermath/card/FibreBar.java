package org.papermath.card;

import java.util.Map;
import org.papermath.text.Digits;
import org.papermath.text.SvgWriter;

/** One bar in parts: where the fibre goes. Its fills are told apart without colour, and each has its words. */
final class FibreBar {
    private static final double WIDTH = 180;
    private static final double HEIGHT = 7;
    private static final double LINE = 4.2;
    private static final int COLUMNS = 3;
    private static final String[] FILLS = {"full", "white", "hatch", "dots", "light", "cross", "grid", "white"};

    private FibreBar() {}

    static String svg(Map<String, Double> parts) {
        double whole = parts.values().stream().mapToDouble(Double::doubleValue).sum();
        int rows = (parts.size() + COLUMNS - 1) / COLUMNS;
        SvgWriter out = new SvgWriter(2)
                .head(
                        "img",
                        WIDTH + 2,
                        HEIGHT + 4 + LINE * rows,
                        "where the fibre goes",
                        "text{font:2.8px sans-serif}rect{stroke:#000;stroke-width:0.25;fill:#fff}rect.full{fill:#000}"
                                + "rect.light{fill:#ccc}rect.hatch{fill:url(#hatch)}rect.dots{fill:url(#dots)}"
                                + "rect.cross{fill:url(#cross)}rect.grid{fill:url(#grid)}",
                        "<defs>" + pattern("hatch", "M0 2L2 0") + pattern("cross", "M0 2L2 0M0 0L2 2")
                                + pattern("grid", "M0 1H2M1 0V2")
                                + "<pattern id=\"dots\" width=\"1.6\" height=\"1.6\" patternUnits=\"userSpaceOnUse\">"
                                + "<circle cx=\"0.8\" cy=\"0.8\" r=\"0.35\"/></pattern></defs>\n");
        StringBuilder words = new StringBuilder();
        parts.forEach((name, mass) -> words.append(words.length() == 0 ? "" : ", ")
                .append(name)
                .append(' ')
                .append(Digits.significant(100 * mass / whole, 2))
                .append(" %"));
        out.described(words.toString());
        double x = 1;
        int i = 0;
        for (Map.Entry<String, Double> part : parts.entrySet()) {
            double wide = WIDTH * part.getValue() / whole;
            String fill = FILLS[Math.min(i, FILLS.length - 1)];
            out.rect(fill, x, 1, wide, HEIGHT, part.getKey());
            double left = 1 + WIDTH / COLUMNS * (i % COLUMNS);
            double top = HEIGHT + 3 + LINE * Math.floorDiv(i, COLUMNS);
            out.rect(fill, left, top, 4, 2.6, "");
            out.text(
                    "",
                    left + 5.5,
                    top + 2.3,
                    part.getKey() + ", " + Digits.significant(100 * part.getValue() / whole, 2) + " %");
            x += wide;
            i++;
        }
        return out.end();
    }

    private static String pattern(String name, String path) {
        return "<pattern id=\"" + name + "\" width=\"2\" height=\"2\" patternUnits=\"userSpaceOnUse\"><path d=\"" + path
                + "\" stroke=\"#000\" stroke-width=\"0.3\" fill=\"none\"/></pattern>";
    }
}
