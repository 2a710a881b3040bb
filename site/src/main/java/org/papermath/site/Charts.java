package org.papermath.site;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.font.FontRenderContext;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.apache.batik.svggen.SVGGeneratorContext;
import org.apache.batik.svggen.SVGGraphics2D;
import org.knowm.xchart.AnnotationText;
import org.knowm.xchart.XYChart;
import org.knowm.xchart.XYChartBuilder;
import org.knowm.xchart.XYSeries;
import org.knowm.xchart.internal.chartpart.Chart;
import org.knowm.xchart.style.AxesChartStyler;
import org.knowm.xchart.style.Styler;
import org.knowm.xchart.style.XYStyler;
import org.knowm.xchart.style.markers.Marker;
import org.knowm.xchart.style.markers.SeriesMarkers;
import org.w3c.dom.Document;
import org.w3c.dom.Element;

/**
 * Charts with axes, drawn by XChart and written as SVG by Batik. Lines differ by dashes and marks as well as by colour, so that a
 * print in black says the same; the lettering is large enough for a telephone, where a chart is made narrower.
 */
final class Charts {
    static final int WIDTH = 460;

    private static final String SVG = "http://www.w3.org/2000/svg";
    private static final int LETTERING = 16;
    private static final Font FONT = new Font(Font.SANS_SERIF, Font.PLAIN, LETTERING);
    private static final Color INK = new Color(0x22, 0x22, 0x22);
    private static final Color GRID = new Color(0xd8, 0xd4, 0xca);
    private static final int DECIMALS = 2;
    private static final boolean CAN_LETTER = canLetter();

    /** How a line is drawn. */
    record Line(Color colour, BasicStroke stroke, Marker marker) {
        /** Full, with round marks. */
        static final Line MARKED = new Line(new Color(0x1f, 0x5d, 0x8c), new BasicStroke(1.6f), SeriesMarkers.CIRCLE);

        /** Full, without marks. */
        static final Line FULL = new Line(new Color(0x1f, 0x5d, 0x8c), new BasicStroke(2.4f), SeriesMarkers.NONE);

        /** Long dashes, without marks. */
        static final Line DASHED = new Line(new Color(0xa8, 0x43, 0x0a), dashes(9, 5), SeriesMarkers.NONE);

        /** Dots, without marks. */
        static final Line DOTTED = new Line(new Color(0x44, 0x44, 0x44), dashes(2, 4), SeriesMarkers.NONE);

        /** Thick, with square ends. */
        static final Line THICK = new Line(
                new Color(0x1f, 0x5d, 0x8c),
                new BasicStroke(7f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_MITER),
                SeriesMarkers.NONE);

        /** Thin, with diamonds. */
        static final Line THIN = new Line(new Color(0xa8, 0x43, 0x0a), new BasicStroke(2.4f), SeriesMarkers.DIAMOND);

        /** Square marks without a line. */
        static final Line SQUARES = new Line(new Color(0xa8, 0x43, 0x0a), new BasicStroke(0f), SeriesMarkers.SQUARE);

        /** Triangles without a line. */
        static final Line TRIANGLES = new Line(INK, new BasicStroke(0f), SeriesMarkers.TRIANGLE_UP);

        private static BasicStroke dashes(float on, float off) {
            return new BasicStroke(2.2f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_MITER, 10, new float[] {on, off}, 0);
        }

        private boolean hasLine() {
            return stroke.getLineWidth() > 0;
        }
    }

    private final XYChart chart;

    private Charts(XYChart chart) {
        this.chart = chart;
    }

    /** Begins a chart; the units stand with what the axes show. */
    static Charts of(int height, String across, String up) {
        XYChart chart = new XYChartBuilder()
                .width(WIDTH)
                .height(height)
                .xAxisTitle(across)
                .yAxisTitle(up)
                .build();
        XYStyler style = chart.getStyler();
        lettered(style);
        style.setLegendFont(FONT)
                .setLegendBorderColor(Color.WHITE)
                .setLegendPosition(Styler.LegendPosition.OutsideS)
                .setLegendLayout(Styler.LegendLayout.Vertical)
                .setLegendSeriesLineLength(36)
                .setLegendPadding(4);
        style.setMarkerSize(6);
        return new Charts(chart);
    }

    /** What all charts have alike. */
    private static void lettered(AxesChartStyler style) {
        style.setChartTitleVisible(false)
                .setChartBackgroundColor(Color.WHITE)
                .setChartFontColor(INK)
                .setChartPadding(8)
                .setPlotBackgroundColor(Color.WHITE)
                .setPlotBorderColor(INK);
        style.setAxisTickLabelsFont(FONT);
        style.setAxisTitleFont(FONT);
        style.setAxisTickLabelsColor(INK);
        style.setPlotGridLinesColor(GRID);
        style.setXAxisTickMarkSpacingHint(70);
        style.setYAxisTickMarkSpacingHint(40);
        style.setAntiAlias(true);
    }

    /** Adds a line, or marks. */
    Charts line(String name, Line line, double[] x, double[] y) {
        add(name, line, x, y);
        return this;
    }

    /** Adds a line that the legend does not name. */
    Charts unnamed(String name, Line line, double[] x, double[] y) {
        add(name, line, x, y).setShowInLegend(false);
        return this;
    }

    private XYSeries add(String name, Line line, double[] x, double[] y) {
        // Dashes begin anew at each point, so a dashed line has few of them.
        XYSeries series = line.equals(Line.DASHED)
                ? chart.addSeries(name, everyFourth(x), everyFourth(y))
                : chart.addSeries(name, x, y);
        series.setMarker(line.marker);
        series.setMarkerColor(line.colour);
        series.setLineColor(line.colour);
        series.setLineStyle(line.stroke);
        if (!line.hasLine()) {
            series.setXYSeriesRenderStyle(XYSeries.XYSeriesRenderStyle.Scatter);
        }
        return series;
    }

    private static double[] everyFourth(double[] all) {
        return IntStream.range(0, all.length)
                .filter(i -> i % 4 == 0 || i == all.length - 1)
                .mapToDouble(i -> all[i])
                .toArray();
    }

    /** Sets the ends of the axis up. */
    Charts up(double least, double most) {
        chart.getStyler().setYAxisMin(least).setYAxisMax(most);
        return this;
    }

    /** Sets the ends of the axis across. */
    Charts across(double least, double most) {
        chart.getStyler().setXAxisMin(least).setXAxisMax(most);
        return this;
    }

    /** Writes words into the chart at a place of it, in place of numbers on the axis up. */
    Charts named(double across, double up, String words) {
        chart.getStyler().setYAxisTicksVisible(false);
        chart.getStyler().setAnnotationTextFont(FONT).setAnnotationTextFontColor(INK);
        chart.addAnnotation(new AnnotationText(words, across, up, false));
        return this;
    }

    /** Writes the chart. */
    Picture picture(String name, String title, String description, List<String> head, List<List<String>> rows) {
        return new Picture(name, title, description, svg(chart, title, description), head, rows);
    }

    /** Bars from left to right, the first on top; the figures stand in the table. */
    static Picture bars(
            String name,
            String title,
            String description,
            String across,
            Map<String, Double> bars,
            List<String> head,
            List<List<String>> rows) {
        double most =
                bars.values().stream().mapToDouble(Double::doubleValue).max().orElseThrow();
        Charts chart = of(90 + 46 * bars.size(), across, "");
        int place = bars.size();
        for (Map.Entry<String, Double> bar : bars.entrySet()) {
            chart.unnamed(bar.getKey(), Line.THICK, new double[] {0, bar.getValue()}, new double[] {place, place})
                    .named(0.55 * most, place + 0.42, bar.getKey());
            place--;
        }
        return chart.across(0, most).up(0.6, bars.size() + 0.8).picture(name, title, description, head, rows);
    }

    private static String svg(Chart<?, ?> chart, String title, String description) {
        if (!CAN_LETTER) {
            return withoutLetters(chart.getWidth(), chart.getHeight(), title, description);
        }
        Document document;
        try {
            DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
            factory.setNamespaceAware(true);
            document = factory.newDocumentBuilder().getDOMImplementation().createDocument(SVG, "svg", null);
        } catch (ParserConfigurationException e) {
            throw new IllegalStateException(e);
        }
        SVGGeneratorContext context = SVGGeneratorContext.createDefault(document);
        context.setPrecision(DECIMALS);
        context.setComment(null);
        SVGGraphics2D graphics = new SVGGraphics2D(context, false);
        chart.paint(graphics, chart.getWidth(), chart.getHeight());
        Element root = graphics.getRoot();
        root.setAttribute("role", "img");
        root.setAttribute("width", Integer.toString(chart.getWidth()));
        root.setAttribute("height", Integer.toString(chart.getHeight()));
        root.setAttribute("viewBox", "0 0 " + chart.getWidth() + " " + chart.getHeight());
        Element desc = document.createElementNS(SVG, "desc");
        desc.setTextContent(description);
        root.insertBefore(desc, root.getFirstChild());
        Element heading = document.createElementNS(SVG, "title");
        heading.setTextContent(title);
        root.insertBefore(heading, desc);
        StringWriter out = new StringWriter();
        try {
            graphics.stream(root, out, true, false);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return out.toString().replaceFirst("(?s)<!DOCTYPE.*?>\\s*", "").replaceAll("\\s+>", ">");
    }

    /** Whether there is a font to letter with: a slim machine has none, or no library that finds it, and tells so by an error. */
    private static boolean canLetter() {
        try {
            FONT.createGlyphVector(new FontRenderContext(null, true, true), "0").getOutline();
            return true;
        } catch (LinkageError | InternalError | RuntimeException e) {
            return false;
        } catch (Error e) {
            if (e.getClass() == Error.class) {
                // "No physical fonts found" comes as a plain one.
                return false;
            }
            throw e;
        }
    }

    /** A frame that says where the figures are, so that the pages can be made without a font too. */
    private static String withoutLetters(int width, int height, String title, String description) {
        return "<svg xmlns=\"" + SVG + "\" role=\"img\" width=\"" + width + "\" height=\"" + height
                + "\" viewBox=\"0 0 "
                + width + " " + height + "\">\n<title>" + Html.escape(title) + "</title>\n<desc>"
                + Html.escape(description) + "</desc>\n<rect x=\"1\" y=\"1\" width=\"" + (width - 2) + "\" height=\""
                + (height - 2) + "\" fill=\"#fff\" stroke=\"#222\"/>\n<text x=\"12\" y=\"32\" font-size=\"" + LETTERING
                + "\" font-family=\"sans-serif\" fill=\"#222\">Made without a font: see the numbers below.</text>\n</svg>\n";
    }
}
