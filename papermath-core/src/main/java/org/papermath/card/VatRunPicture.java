package org.papermath.card;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.papermath.plan.MakingPlan;
import org.papermath.plan.PiecePlan;
import org.papermath.plan.VatPlan;
import org.papermath.text.SvgWriter;

/** What each sheet of a run weighs over its aim, as the vat thins and is fed again. */
final class VatRunPicture {
    private static final double LEFT = 13;
    private static final double TOP = 3;
    private static final double WIDTH = 43;
    private static final double HEIGHT = 24;
    /** The axis reaches this far to both sides; the grey within half of it is what a hand scatters by. */
    private static final double[] REACH = {0.1, 0.2, 0.5, 1};

    private static final double GREY = 0.05;
    /** A run of more sheets is no picture but a grey bar. */
    private static final int MOST = 2000;
    /** Sheets up to which each has a dot. */
    private static final int DOTS = 80;

    private VatRunPicture() {}

    /** {@return the picture; none for a piece that is not dipped from a vat, of one sheet, or of thousands} */
    static Optional<String> of(MakingPlan plan, PiecePlan piece) {
        int sheets = piece.counts().sheets();
        if (!piece.vatStage().isDone() || sheets < 2 || sheets > MOST) {
            return Optional.empty();
        }
        double aim = piece.forming().solids().si();
        double[] off = plan.atTheVat(piece.name()).sheets().stream()
                .mapToDouble(sheet -> sheet.si() / aim - 1)
                .toArray();
        double most = 0;
        for (double one : off) {
            most = Math.max(most, Math.abs(one));
        }
        double reach = REACH[REACH.length - 1];
        for (int i = REACH.length - 1; i >= 0; i--) {
            reach = most <= REACH[i] ? REACH[i] : reach;
        }
        return Optional.of(draw(piece, off, reach));
    }

    private static String draw(PiecePlan piece, double[] off, double reach) {
        VatPlan vat = piece.vat();
        SvgWriter out = new SvgWriter(2)
                .head(
                        "img",
                        LEFT + WIDTH + 2,
                        TOP + HEIGHT + 11,
                        piece.name() + ": each sheet over its aim",
                        "text{font:2.8px sans-serif}text.end{text-anchor:end}text.mid{text-anchor:middle}"
                                + "rect.grey{fill:#e4e4e4}line{stroke:#000;stroke-width:0.12}line.aim{stroke-width:0.3}"
                                + "line.run{stroke-width:0.25}line.trials{stroke-dasharray:1.4 1;stroke-width:0.25}"
                                + "polygon{fill:#000;stroke:#000;stroke-width:0.2}polygon.water{fill:#fff}",
                        "");
        out.described(off.length + " sheets, " + percent(min(off)) + " to " + percent(max(off))
                + " % off the aim; recharged " + vat.recharges().size() + " times");
        double grey = Math.min(1, GREY / reach);
        out.rect("grey", LEFT, y(grey * reach, reach), WIDTH, grey * HEIGHT, "");
        for (double part : new double[] {1, 0.5, -0.5, -1}) {
            out.line("", LEFT, y(part * reach, reach), LEFT + WIDTH, y(part * reach, reach));
            out.text("end", LEFT - 1, y(part * reach, reach) + 1, percent(part * reach) + " %");
        }
        out.line("aim", LEFT, y(0, reach), LEFT + WIDTH, y(0, reach));
        out.text("end", LEFT - 1, y(0, reach) + 1, "aim");
        for (int i = 0; i < off.length; i++) {
            if (i > 0) {
                out.line("run", x(i, off), y(off[i - 1], reach), x(i + 1, off), y(off[i], reach));
            }
            if (off.length <= DOTS) {
                out.dot(x(i + 1, off), y(off[i], reach), 0.45, "#000", "");
            }
        }
        if (piece.counts().trials() > 0 && piece.counts().trials() < off.length) {
            double after = (x(piece.counts().trials(), off) + x(piece.counts().trials() + 1, off)) / 2;
            out.line("trials", after, TOP, after, TOP + HEIGHT);
            out.text("", after + 0.8, TOP + 2.6, "trials before");
        }
        for (VatPlan.Recharge one : vat.recharges()) {
            double at = x(one.afterSheet() + 0.5, off);
            boolean isWater = one.strained().si() > 0;
            out.polygon(
                    isWater ? "water" : "",
                    new double[] {at - 0.8, at + 0.8, at},
                    isWater
                            ? new double[] {TOP + HEIGHT + 1, TOP + HEIGHT + 1, TOP + HEIGHT + 2.4}
                            : new double[] {TOP + HEIGHT + 2.4, TOP + HEIGHT + 2.4, TOP + HEIGHT + 1});
        }
        int step = step(off.length);
        out.text("mid", x(1, off), TOP + HEIGHT + 6, "1");
        for (int sheet = step; sheet <= off.length; sheet += step) {
            if (sheet > step / 2) {
                out.text("mid", x(sheet, off), TOP + HEIGHT + 6, Integer.toString(sheet));
            }
        }
        boolean isRunDown =
                vat.recharges().stream().anyMatch(one -> one.strained().si() > 0);
        out.text("", LEFT, TOP + HEIGHT + 10, "triangle: recharge" + (isRunDown ? ", open: only strain" : ""));
        return out.end();
    }

    private static double x(double sheet, double[] off) {
        return LEFT + 2 + (WIDTH - 4) * (sheet - 1) / Math.max(1, off.length - 1);
    }

    private static double y(double off, double reach) {
        return TOP + HEIGHT / 2 * (1 - off / reach);
    }

    private static int step(int sheets) {
        for (int step : List.of(5, 10, 20, 50, 100, 200, 500)) {
            if (sheets / step <= 6) {
                return step;
            }
        }
        return 1000;
    }

    private static double min(double[] values) {
        return Arrays.stream(values).min().orElse(0);
    }

    private static double max(double[] values) {
        return Arrays.stream(values).max().orElse(0);
    }

    private static String percent(double part) {
        long tenths = Math.round(1000 * part);
        String text = tenths % 10 == 0 ? Long.toString(tenths / 10) : Double.toString(tenths / 10.0);
        return (tenths > 0 ? "+" : "") + text.replace('-', '−');
    }
}
