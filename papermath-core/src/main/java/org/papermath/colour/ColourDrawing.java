package org.papermath.colour;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import org.papermath.evidence.Assumptions;
import org.papermath.numeric.Polygons;
import org.papermath.text.SvgWriter;
import org.papermath.text.Wrap;

/**
 * Colours as a picture with their words, in SVG text: a ladder of swatches with its fit, colours told beside those that were
 * made, and what the pigments of a studio reach. Immutable.
 *
 * <p>No colour stands alone: beside each stand its L*, a*, b* and ΔE00, and the picture has a description that a reader for the
 * blind speaks. A screen is no colorimeter, and a print of it even less; where it cannot show a colour at all, the nearest is
 * drawn and said to be so.
 */
public final class ColourDrawing {
    private static final double MARGIN = 6;
    private static final double HEAD = 14;
    private static final double LINE_OF_TEXT = 4.2;
    private static final double COLUMN = 24;
    private static final double PATCH = 16;
    private static final double LABELS = 18;
    /** The most a letter of the text takes on the average. */
    private static final double LETTER = 1.6;

    private static final double WIDTH = 180;
    private static final double PLANE = 120;
    private static final int STEPS = 8;
    private static final int GRID = 5;
    private static final String STYLE = "text{font-family:sans-serif;font-size:3px;fill:#222}text.head{font-size:4px}"
            + "text.strong{font-weight:bold;paint-order:stroke;stroke:#fff;stroke-width:0.8}text.middle{text-anchor:middle}"
            + "rect{shape-rendering:crispEdges}line{stroke:#bbb;stroke-width:0.2}line.way{stroke:#222;stroke-width:0.3}"
            + "line.mark{stroke:#222;stroke-width:0.6}circle{stroke:#222;stroke-width:0.15}"
            + "polygon{fill:none;stroke:#222;stroke-width:0.3;stroke-dasharray:2 1}";
    private static final String NEAREST = "◊ a screen cannot show this colour; the nearest it can is drawn.";

    private final String title;
    private final String svg;

    /**
     * A colour that was told and what was made of it.
     *
     * @param name what the sheet is called
     * @param told what was told, or is wanted
     * @param made what was read of the sheet
     */
    public record Pair(String name, Reflectance told, Reflectance made) {
        /**
         * Gives a pair.
         *
         * @param name what the sheet is called
         * @param told what was told, or is wanted
         * @param made what was read of the sheet
         */
        public Pair {
            Objects.requireNonNull(name, "name");
            Objects.requireNonNull(told, "told");
            Objects.requireNonNull(made, "made");
        }
    }

    private ColourDrawing(String title, String svg) {
        this.title = title;
        this.svg = svg;
    }

    /**
     * Draws a ladder of swatches: what was read of each above, what the constants of the pigment make of its dose below,
     * without a gap between the two.
     *
     * @param title what it shows; may be any text
     * @param pigment as its ladder told it
     * @return the drawing
     */
    public static ColourDrawing ladder(String title, Pigment pigment) {
        Objects.requireNonNull(title, "title");
        Objects.requireNonNull(pigment, "pigment");
        List<SwatchLadder.Rung> rungs = pigment.rungs();
        double width = Math.max(WIDTH, 2 * MARGIN + LABELS + COLUMN * (rungs.size() + 1));
        double top = MARGIN + HEAD;
        double words = top + 2 * PATCH + 5;
        double foot = words + 10 * LINE_OF_TEXT;
        Reflectance bare = pigment.pulp().reflectance();
        boolean all = isShown(bare) && rungs.stream().allMatch(rung -> isShown(rung.read()) && isShown(rung.fitted()));
        StringBuilder described = new StringBuilder("The pulp: " + bare.lab() + ".");
        rungs.forEach(rung -> described
                .append(' ')
                .append(rung)
                .append(" by ")
                .append(rung.fitted().lab())
                .append('.'));
        SvgWriter out = begun(title, width, foot + (all ? 0 : LINE_OF_TEXT) + MARGIN, described + " " + pigment + ".");
        String[] labels = {"", "read", "", "", "", "fitted", "", "", "apart"};
        for (int i = 0; i < labels.length; i++) {
            out.text("", MARGIN, words + i * LINE_OF_TEXT, labels[i]);
        }
        out.text("strong", MARGIN, words, "dose");
        out.text("", MARGIN, top + PATCH / 2, "read");
        out.text("", MARGIN, top + PATCH * 1.5, "fitted");
        double x = MARGIN + LABELS;
        patch(out, x, top, COLUMN - 2, 2 * PATCH, bare, "the pulp");
        out.text("strong", x, words, "pulp");
        values(out, x, words + LINE_OF_TEXT, bare);
        for (SwatchLadder.Rung rung : rungs) {
            x += COLUMN;
            patch(out, x, top, COLUMN - 2, PATCH, rung.read(), rung.dose() + " read");
            patch(out, x, top + PATCH, COLUMN - 2, PATCH, rung.fitted(), rung.dose() + " fitted");
            out.text("strong", x, words, rung.dose().toString());
            values(out, x, words + LINE_OF_TEXT, rung.read());
            values(out, x, words + 5 * LINE_OF_TEXT, rung.fitted());
            out.text("", x, words + 8 * LINE_OF_TEXT, "ΔE00 " + ColourRange.said(rung.difference()));
        }
        out.text("", MARGIN, foot, pigment.toString());
        if (!all) {
            out.text("", MARGIN, foot + LINE_OF_TEXT, NEAREST);
        }
        return new ColourDrawing(title, out.end());
    }

    /**
     * Draws colours that were told beside those that were made, without a gap between the two.
     *
     * @param title what it shows; may be any text
     * @param pairs the sheets, in the order they are drawn in
     * @param assumptions where {@code colour.just-seen} and {@code colour.seen-at-once} are looked up
     * @return the drawing
     */
    public static ColourDrawing toldAndMade(String title, List<Pair> pairs, Assumptions assumptions) {
        Objects.requireNonNull(title, "title");
        Objects.requireNonNull(pairs, "pairs");
        Objects.requireNonNull(assumptions, "assumptions");
        double row = PATCH + 8;
        double words = MARGIN + 2 * COLUMN + 4;
        boolean all = pairs.stream().allMatch(pair -> isShown(pair.told()) && isShown(pair.made()));
        double foot = MARGIN + HEAD + row * pairs.size();
        List<String> apart = pairs.stream()
                .map(pair -> ColourComparison.of(pair.told(), pair.made(), assumptions)
                        .toString())
                .toList();
        List<String> described = new ArrayList<>();
        for (int i = 0; i < pairs.size(); i++) {
            Pair pair = pairs.get(i);
            described.add(pair.name() + ": told " + pair.told().lab() + ", made "
                    + pair.made().lab() + ", " + apart.get(i) + ".");
        }
        SvgWriter out = begun(title, WIDTH, foot + (all ? 0 : LINE_OF_TEXT) + MARGIN, String.join(" ", described));
        double y = MARGIN + HEAD;
        int most = (int) ((WIDTH - MARGIN - words) / LETTER);
        for (int p = 0; p < pairs.size(); p++) {
            Pair pair = pairs.get(p);
            patch(out, MARGIN, y, COLUMN, PATCH, pair.told(), pair.name() + ", told");
            patch(out, MARGIN + COLUMN, y, COLUMN, PATCH, pair.made(), pair.name() + ", made");
            out.text("", MARGIN, y + PATCH + LINE_OF_TEXT - 0.7, "told");
            out.text("", MARGIN + COLUMN, y + PATCH + LINE_OF_TEXT - 0.7, "made");
            List<String> lines = new ArrayList<>();
            lines.add("told " + marked(pair.told()));
            lines.add("made " + marked(pair.made()));
            lines.addAll(Wrap.lines(apart.get(p), most));
            out.text("strong", words, y + 3, pair.name());
            for (int i = 0; i < lines.size(); i++) {
                out.text("", words, y + 3 + (i + 1) * LINE_OF_TEXT, lines.get(i));
            }
            y += row;
        }
        if (!all) {
            out.text("", MARGIN, foot + 2, NEAREST);
        }
        return new ColourDrawing(title, out.end());
    }

    /**
     * Draws what the pigments of a studio reach, seen from above: green to red from left to right, blue to yellow upward. How
     * light the colours are is not seen in it.
     *
     * @param title what it shows; may be any text
     * @param palette the pulp and its pigments, one at least
     * @return the drawing
     * @throws org.papermath.quantity.Refused if there is no pigment
     */
    public static ColourDrawing reach(String title, PigmentedPulp palette) {
        Objects.requireNonNull(title, "title");
        Objects.requireNonNull(palette, "palette");
        return Reach.of(palette).drawn(title, null);
    }

    /**
     * Draws the same with the colour of a match marked by a cross; the words say what was found.
     *
     * @param title what it shows; may be any text
     * @param palette the pulp and its pigments, one at least
     * @param match a match by them
     * @return the drawing
     * @throws org.papermath.quantity.Refused if there is no pigment
     */
    public static ColourDrawing reach(String title, PigmentedPulp palette, ColourMatch match) {
        Objects.requireNonNull(title, "title");
        Objects.requireNonNull(palette, "palette");
        return Reach.of(palette).drawn(title, Objects.requireNonNull(match, "match"));
    }

    /** What one pigment gives from none to the most that was tried, and what pairs of them give. */
    private record Reach(PigmentedPulp palette, List<List<Reflectance>> alone, List<Reflectance> pairs) {
        static Reach of(PigmentedPulp palette) {
            if (palette.pigments().isEmpty()) {
                throw ColourMatch.noPigment();
            }
            Mixing mixing = palette.mixing();
            Wavebands bands = palette.pulp().reflectance().bands();
            int count = palette.pigments().size();
            List<List<Reflectance>> alone = new ArrayList<>();
            List<Reflectance> pairs = new ArrayList<>();
            for (int p = 0; p < count; p++) {
                List<Reflectance> line = new ArrayList<>();
                for (int step = 0; step <= STEPS; step++) {
                    double[] loads = new double[count];
                    loads[p] = part(palette, p, step, STEPS);
                    line.add(Reflectance.unchecked(bands, mixing.at(loads).values()));
                }
                alone.add(line);
                for (int other = 0; other < p; other++) {
                    for (int cell = 0; cell < GRID * GRID; cell++) {
                        double[] loads = new double[count];
                        loads[p] = part(palette, p, 1 + cell / GRID, GRID);
                        loads[other] = part(palette, other, 1 + cell % GRID, GRID);
                        pairs.add(Reflectance.unchecked(bands, mixing.at(loads).values()));
                    }
                }
            }
            return new Reach(palette, alone, pairs);
        }

        /** Steps that grow as the eye has it: the first of a pigment does most. */
        private static double part(PigmentedPulp palette, int pigment, int step, int steps) {
            double share = (double) step / steps;
            return share * share * palette.pigments().get(pigment).greatest();
        }

        ColourDrawing drawn(String title, @Nullable ColourMatch match) {
            List<Reflectance> all = new ArrayList<>(pairs);
            alone.forEach(all::addAll);
            double[] a = all.stream().mapToDouble(one -> one.lab().a()).toArray();
            double[] b = all.stream().mapToDouble(one -> one.lab().b()).toArray();
            Plane plane = Plane.around(a, b, match);
            List<String> words = words(all, match);
            double foot = MARGIN + HEAD + PLANE + 10;
            SvgWriter out = begun(title, WIDTH, foot + LINE_OF_TEXT * words.size() + MARGIN, String.join(" ", words));
            plane.axes(out);
            int[] hull = Polygons.hull(a, b);
            double[] hullX = new double[hull.length];
            double[] hullY = new double[hull.length];
            for (int i = 0; i < hull.length; i++) {
                hullX[i] = plane.x(a[hull[i]]);
                hullY[i] = plane.y(b[hull[i]]);
            }
            out.polygon("", hullX, hullY);
            for (Reflectance one : pairs) {
                plane.dot(out, 0.7, one, "two pigments: " + marked(one));
            }
            List<Label> labels = new ArrayList<>();
            for (int p = 0; p < alone.size(); p++) {
                String name = palette.pigments().get(p).additive().name();
                List<Reflectance> line = alone.get(p);
                for (int i = 1; i < line.size(); i++) {
                    plane.line(out, line.get(i - 1).lab(), line.get(i).lab());
                }
                for (int i = 1; i < line.size(); i++) {
                    plane.dot(out, 1.2, line.get(i), name + ": " + marked(line.get(i)));
                }
                Lab end = line.get(line.size() - 1).lab();
                labels.add(new Label(plane.x(end.a()) + 2.5, plane.y(end.b()) + 1, name));
            }
            Lab bare = palette.pulp().reflectance().lab();
            labels.add(new Label(plane.x(bare.a()) + 2.5, plane.y(bare.b()) + 1, "pulp"));
            plane.dot(out, 1.2, palette.pulp().reflectance(), "the pulp: " + bare);
            if (match != null) {
                plane.cross(out, match.target());
                labels.add(new Label(
                        plane.x(match.target().a()) + 3.5,
                        plane.y(match.target().b()) - 1,
                        "× wanted"));
            }
            Label.apart(labels).forEach(one -> out.text("strong", one.x, one.y, one.text));
            for (int i = 0; i < words.size(); i++) {
                out.text("", MARGIN, foot + i * LINE_OF_TEXT, words.get(i));
            }
            return new ColourDrawing(title, out.end());
        }

        private List<String> words(List<Reflectance> all, @Nullable ColourMatch match) {
            List<String> words = new ArrayList<>();
            words.add("pulp: " + marked(palette.pulp().reflectance()));
            for (int p = 0; p < alone.size(); p++) {
                Pigment pigment = palette.pigments().get(p);
                words.add(pigment.additive().name() + ", line to " + pigment.strongest() + " on fibre: "
                        + marked(alone.get(p).get(STEPS)));
            }
            int most = (int) ((WIDTH - 2 * MARGIN) / LETTER);
            if (match != null) {
                words.addAll(Wrap.lines("× wanted: " + match.target() + "; " + match, most));
            }
            words.addAll(Wrap.lines(
                    (pairs.isEmpty() ? "" : "Small dots are mixtures of two. ")
                            + "The broken line is drawn round all dots; near its straight sides and in its corners not every"
                            + " colour can be made, and how light one is does not show here: the match says.",
                    most));
            long beyond = all.stream().filter(one -> !isShown(one)).count();
            if (beyond > 0) {
                words.add(beyond + " of " + all.size()
                        + " dots are of colours a screen cannot show; the nearest it can is drawn (◊).");
            }
            return words;
        }
    }

    /** A word at a place of the plane. */
    private record Label(double x, double y, String text) {
        /** Moves labels down that would lie over another. */
        static List<Label> apart(List<Label> labels) {
            List<Label> placed = new ArrayList<>();
            List<Label> down = new ArrayList<>(labels);
            down.sort(Comparator.comparingDouble(Label::y));
            for (Label label : down) {
                Label at = label;
                for (int turn = 0; turn < labels.size(); turn++) {
                    for (Label other : placed) {
                        boolean over = at.x < other.x + 2 * other.text.length()
                                && other.x < at.x + 2 * at.text.length()
                                && Math.abs(at.y - other.y) < 3.4;
                        at = over ? new Label(at.x, other.y + 3.5, at.text) : at;
                    }
                }
                placed.add(at);
            }
            return placed;
        }
    }

    /** The plane of a and b on the page. */
    private record Plane(double lowA, double highB, double perUnit, double spanA, double spanB) {
        static Plane around(double[] a, double[] b, @Nullable ColourMatch match) {
            double lowA = match == null ? 0 : Math.min(0, match.target().a());
            double highA = match == null ? 0 : Math.max(0, match.target().a());
            double lowB = match == null ? 0 : Math.min(0, match.target().b());
            double highB = match == null ? 0 : Math.max(0, match.target().b());
            for (int i = 0; i < a.length; i++) {
                lowA = Math.min(lowA, a[i]);
                highA = Math.max(highA, a[i]);
                lowB = Math.min(lowB, b[i]);
                highB = Math.max(highB, b[i]);
            }
            lowA = tens(lowA - 3);
            lowB = tens(lowB - 3);
            double spanA = -tens(-highA - 3) - lowA;
            double spanB = -tens(-highB - 3) - lowB;
            double perUnit = Math.min(PLANE / spanB, (WIDTH - 2 * MARGIN - 30) / spanA);
            return new Plane(lowA, lowB + spanB, perUnit, spanA, spanB);
        }

        private static double tens(double value) {
            return 10 * Math.floor(value / 10);
        }

        double x(double a) {
            return MARGIN + 8 + (a - lowA) * perUnit;
        }

        double y(double b) {
            return MARGIN + HEAD + (highB - b) * perUnit;
        }

        void axes(SvgWriter out) {
            double right = x(lowA + spanA);
            double base = y(highB - spanB);
            int step = Math.max(spanA, spanB) > 60 ? 20 : 10;
            for (double a = step * Math.ceil(lowA / step); a <= lowA + spanA; a += step) {
                out.line("", x(a), MARGIN + HEAD, x(a), base);
                out.text("middle", x(a), base + 4, ColourRange.said(a));
            }
            for (double b = step * Math.ceil((highB - spanB) / step); b <= highB; b += step) {
                out.line("", x(lowA), y(b), right, y(b));
                out.text("", MARGIN, y(b) + 1, ColourRange.said(b));
            }
            out.line("way", x(0), MARGIN + HEAD, x(0), base);
            out.line("way", x(lowA), y(0), right, y(0));
            out.text("strong", right + 2, y(0) + 1, "a* red");
            out.text("strong", x(0) + 1, MARGIN + HEAD - 1, "b* yellow");
        }

        void dot(SvgWriter out, double radius, Reflectance colour, String words) {
            out.dot(x(colour.lab().a()), y(colour.lab().b()), radius, hex(colour), words);
        }

        void line(SvgWriter out, Lab from, Lab to) {
            out.line("way", x(from.a()), y(from.b()), x(to.a()), y(to.b()));
        }

        void cross(SvgWriter out, Lab at) {
            double x = x(at.a());
            double y = y(at.b());
            out.line("mark", x - 2.5, y - 2.5, x + 2.5, y + 2.5);
            out.line("mark", x - 2.5, y + 2.5, x + 2.5, y - 2.5);
        }
    }

    private static SvgWriter begun(String title, double width, double height, String described) {
        SvgWriter out = new SvgWriter(2).head("img", width, height, title, STYLE, "");
        out.described(described);
        out.text("head", MARGIN, MARGIN + 4, title);
        return out;
    }

    private static void patch(
            SvgWriter out, double x, double y, double width, double height, Reflectance colour, String words) {
        out.patch(x, y, width, height, hex(colour), words + ": " + marked(colour));
    }

    private static void values(SvgWriter out, double x, double y, Reflectance colour) {
        Lab lab = colour.lab();
        out.text("", x, y, "L* " + ColourRange.said(lab.l(), 1) + (isShown(colour) ? "" : " ◊"));
        out.text("", x, y + LINE_OF_TEXT, "a* " + ColourRange.said(lab.a(), 1));
        out.text("", x, y + 2 * LINE_OF_TEXT, "b* " + ColourRange.said(lab.b(), 1));
    }

    private static String marked(Reflectance colour) {
        return colour.lab() + (isShown(colour) ? "" : " ◊");
    }

    private static boolean isShown(Reflectance colour) {
        return Srgb.isShown(colour.xyz(Illuminant.D65));
    }

    private static String hex(Reflectance colour) {
        return Srgb.shown(colour.xyz(Illuminant.D65)).hex();
    }

    /**
     * Writes the drawing.
     *
     * @return an SVG document, the same in every locale
     */
    public String svg() {
        return svg;
    }

    /** Returns the title, as {@code colours "ochre"}; {@link #svg()} gives the document. */
    @Override
    public String toString() {
        return "colours \"" + title + "\"";
    }
}
