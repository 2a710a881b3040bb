package org.papermath.site;

import static org.papermath.quantity.Amounts.hours;
import static org.papermath.quantity.Amounts.micrometres;
import static org.papermath.quantity.Amounts.mm;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.DoubleStream;
import javax.measure.quantity.Area;
import javax.measure.quantity.Mass;
import org.papermath.air.Air;
import org.papermath.drying.Dryer;
import org.papermath.drying.DryingModel;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Estimate;
import org.papermath.evidence.Reading;
import org.papermath.evidence.Scope;
import org.papermath.fibre.Fibre;
import org.papermath.fibre.Fibres;
import org.papermath.fibre.Furnish;
import org.papermath.fibre.SorptionModel;
import org.papermath.json.OrderDocument;
import org.papermath.json.PapermathDocuments;
import org.papermath.mould.Opening;
import org.papermath.order.Studio;
import org.papermath.plan.AtTheVat;
import org.papermath.plan.Balance;
import org.papermath.plan.BatchPlan;
import org.papermath.plan.DryingPlan;
import org.papermath.plan.MakingPlan;
import org.papermath.plan.PiecePlan;
import org.papermath.plan.VatPlan;
import org.papermath.pulp.BeatingState;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.LinearShrinkage;
import org.papermath.quantity.SchopperRiegler;
import org.papermath.quantity.SheetPressure;
import org.papermath.quantity.Units;
import org.papermath.quantity.VolumeFlow;
import org.papermath.record.BatchRecord;
import org.papermath.record.CalibratingDay;
import org.papermath.record.Calibration;
import org.papermath.shape.Shrinkage;
import org.papermath.sheet.DryingPath;
import org.papermath.sheet.Restraint;
import org.papermath.sheet.ShrinkageModel;
import org.papermath.text.SvgWriter;

/** The pictures of the job, each worked out by the library from the sample order when the page is written. */
final class JobPictures {
    private static final double PERCENT = 100;
    private static final int POINTS = 37;
    /** The label of a fan, in cubic metres an hour. */
    private static final double FAN = 400;

    private final OrderDocument sample;
    private final MakingPlan plan;
    private final PiecePlan piece;

    private JobPictures(OrderDocument sample, MakingPlan plan, String piece) {
        this.sample = sample;
        this.plan = plan;
        this.piece = plan.piece(piece);
    }

    /** Draws the pictures of one piece of the sample; the record is that of its first making. */
    static List<Picture> of(OrderDocument sample, MakingPlan plan, String piece, Path record) throws IOException {
        JobPictures job = new JobPictures(sample, plan, piece);
        return List.of(
                job.vatRun(),
                job.fibre(),
                job.size(),
                job.drying(),
                job.bands(PapermathDocuments.readRecord(record).value()),
                shrinkage());
    }

    /** The saw-tooth of the vat: the mass of every sheet of the piece, falling until the vat is charged again. */
    private Picture vatRun() {
        AtTheVat vat = plan.atTheVat(piece.name());
        List<Amount<Mass>> sheets = vat.sheets();
        double wanted = vat.wanted().in("g");
        VatPlan set = piece.vat();
        List<Integer> after = set.recharges().stream()
                .map(VatPlan.Recharge::afterSheet)
                .filter(sheet -> sheet < sheets.size())
                .toList();
        double[] numbers = new double[sheets.size()];
        double[] masses = new double[sheets.size()];
        List<List<String>> rows = new ArrayList<>();
        for (int i = 0; i < numbers.length; i++) {
            numbers[i] = i + 1;
            masses[i] = sheets.get(i).in("g");
            int sheet = i;
            rows.add(List.of(
                    Integer.toString(i + 1),
                    sheets.get(i).toString(),
                    set.recharges().stream()
                            .filter(one -> one.afterSheet() == sheet)
                            .findFirst()
                            .map(VatPlan.Recharge::toString)
                            .orElse("")));
        }
        double least = DoubleStream.of(masses).min().orElseThrow();
        double most = DoubleStream.of(masses).max().orElseThrow();
        return Charts.of(360, "sheet, as they are pulled", "oven-dry, g")
                .line("each sheet", Charts.Line.MARKED, numbers, masses)
                .line(
                        "after a recharge",
                        Charts.Line.SQUARES,
                        after.stream().mapToDouble(sheet -> sheet + 1.0).toArray(),
                        after.stream().mapToDouble(sheet -> masses[sheet]).toArray())
                .line("wanted", Charts.Line.DASHED, new double[] {1, numbers.length}, new double[] {wanted, wanted})
                .picture(
                        "vat-run",
                        "What each sheet of the " + piece.name() + " weighs, oven-dry",
                        "From sheet to sheet the vat thins and the sheets get lighter; a recharge after every "
                                + set.every() + " sheets brings them back, so the line is a saw. All " + numbers.length
                                + " sheets lie between " + grams(least) + " and " + grams(most) + ", about the "
                                + grams(wanted) + " wanted",
                        List.of("sheet", "oven-dry", "given before it"),
                        rows);
    }

    private static String grams(double value) {
        return Units.fourDigits(value) + " g";
    }

    /** Where the fibre of the batch goes, by its accounts. */
    private Picture fibre() {
        BatchPlan batch = plan.batches().get(0);
        Balance fibre = batch.balances().stream()
                .filter(one -> one.substance().equals("fibre"))
                .findFirst()
                .orElseThrow();
        Map<String, Double> bars = new LinkedHashMap<>();
        List<List<String>> rows = new ArrayList<>();
        double all = fibre.totalIn().si();
        double rest = 0;
        for (Map.Entry<String, Amount<Mass>> one : fibre.out().entrySet().stream()
                .sorted(Comparator.comparingDouble(
                        account -> -account.getValue().si()))
                .toList()) {
            double share = PERCENT * one.getValue().si() / all;
            if (share >= 1.5) {
                bars.put(one.getKey() + ", " + one.getValue(), one.getValue().in("g"));
            } else {
                rest += one.getValue().in("g");
            }
            rows.add(List.of(
                    one.getKey(), one.getValue().toString(), Units.fourDigits(Math.rint(share * 10) / 10) + " %"));
        }
        bars.put("all others, " + Kinds.MASS.of(rest, "g"), rest);
        String first = rows.get(0).get(0);
        return Charts.bars(
                "fibre",
                "Where the fibre of " + batch.name() + " goes",
                "Of " + fibre.totalIn() + " weighed, oven-dry, " + rows.get(0).get(1) + " are " + first + ", then "
                        + rows.get(1).get(0) + " with " + rows.get(1).get(1) + " and "
                        + rows.get(2).get(0) + " with "
                        + rows.get(2).get(1) + ". What comes in goes out to a named account; none is called lost",
                "oven-dry fibre, g",
                bars,
                List.of("account", "oven-dry", "of all"),
                rows);
    }

    /** From the wet sheet to the dry one, held and loose, and the pieces on it. */
    private Picture size() {
        Opening opening = piece.forming().opening();
        double width = opening.width().in("mm");
        double height = opening.height().in("mm");
        double across = piece.finished().shrinkageAcross().likely().si();
        double along = piece.finished().shrinkageAlong().likely().si();
        double loose = plan.batch(piece.batch()).freeShrinkage().likely().si();
        double[][] sheets = {
            {width, height}, {width * (1 - across), height * (1 - along)}, {width * (1 - loose), height * (1 - loose)}
        };
        String[] names = {
            "wet, in the deckle: " + opening,
            "dried on " + piece.drying().dryer().name() + ": " + millimetres(sheets[1]),
            "dried loose, had it been: " + millimetres(sheets[2])
        };
        String[] styles = {"wet", "held", "loose"};
        double scale = 0.26;
        double margin = 4;
        double top = margin;
        double foot = top + height * scale + 7;
        String title = "From wet to dry: one sheet of the " + piece.name();
        String description = "The deckle opening of " + opening + " shrinks by "
                + piece.finished().shrinkageAcross()
                + " across and " + piece.finished().shrinkageAlong() + " along as it dries held on "
                + piece.drying().dryer().name() + ". Hung loose the same stuff would lose "
                + plan.batch(piece.batch()).freeShrinkage() + " a side. "
                + piece.counts().perSheet()
                + " pieces are cut from a sheet";
        SvgWriter out = new SvgWriter(2)
                .head(
                        "img",
                        122,
                        foot + 18,
                        title,
                        "text{font-family:sans-serif;font-size:4.3px;fill:#222}rect{fill:none;stroke-width:0.5}"
                                + "rect.ground{fill:#fff}rect.wet{stroke:#222;stroke-width:0.8}"
                                + "rect.held{stroke:#1f5d8c;stroke-dasharray:3 1.5}"
                                + "rect.loose{stroke:#a8430a;stroke-dasharray:0.8 1.2}rect.cut{stroke:#666;stroke-width:0.25}",
                        "");
        out.described(description);
        out.rect("ground", 0, 0, 122, foot + 18, "");
        double middle = 61;
        for (int i = 0; i < sheets.length; i++) {
            double w = sheets[i][0] * scale;
            double h = sheets[i][1] * scale;
            out.rect(styles[i], middle - w / 2, top + (height * scale - h) / 2, w, h, names[i]);
            out.rect(styles[i], margin, foot + 6 * i - 3.2, 8, 3.2, "");
            out.text("", margin + 11, foot + 6 * i, names[i]);
        }
        boolean turned = piece.forming().turned();
        double cutWidth = (turned ? piece.finished().height() : piece.finished().width())
                .likely()
                .in("mm");
        double cutHeight = (turned ? piece.finished().width() : piece.finished().height())
                .likely()
                .in("mm");
        int columns = (int) (sheets[1][0] / cutWidth);
        int lines = (int) (sheets[1][1] / cutHeight);
        if (columns * lines != piece.counts().perSheet()) {
            throw new IllegalStateException("the picture has " + columns * lines + " pieces on a sheet, the plan "
                    + piece.counts().perSheet());
        }
        for (int i = 0; i < columns * lines; i++) {
            out.rect(
                    "cut",
                    middle + scale * cutWidth * (i % columns - columns / 2.0),
                    top + scale * (height / 2 + cutHeight * (Math.floorDiv(i, columns) - lines / 2.0)),
                    scale * cutWidth,
                    scale * cutHeight,
                    "a piece");
        }
        return new Picture("wet-to-dry", title, description, out.end(), List.of(), List.of());
    }

    private static String millimetres(double[] sides) {
        return Units.fourDigits(sides[0]) + " mm × " + Units.fourDigits(sides[1]) + " mm";
    }

    /** The water left in a filling of the dryer, hour by hour, until it is dry. */
    private Picture drying() {
        Studio studio = sample.studio();
        Assumptions known = studio.assumptions();
        DryingPlan set = piece.drying();
        Dryer dryer = set.dryer();
        SorptionModel sorption = SorptionModel.from(
                        known, plan.batch(piece.batch()).recipe().furnish())
                .fromWetSide();
        double room = sorption.ratio(studio.room()).si();
        double solids = piece.solids().likely().si();
        double start = (1 - solids) / solids;
        double end = room + known.si("drying.end-margin", Scope.GENERAL);
        int count = set.atOnce();
        Amount<Mass> dry = piece.forming().solids().multiply(count);
        Amount<Area> faces = piece.forming().opening().area().multiply(count);
        double[] left = new double[POINTS];
        DryingModel.Batch[] batches = new DryingModel.Batch[POINTS];
        for (int i = 0; i < POINTS; i++) {
            left[i] = i == POINTS - 1 ? end : start - (start - end) * i / (POINTS - 1);
            batches[i] = DryingModel.Batch.of(
                    dry,
                    faces,
                    Kinds.MOISTURE_RATIO.ofSi(start),
                    Kinds.MOISTURE_RATIO.ofSi(left[i]),
                    Kinds.MOISTURE_RATIO.ofSi(room));
        }
        Dryer stack = new Dryer.FanStack("a stack with a fan", VolumeFlow.cubicMetresPerHour(FAN), dryer.capacity());
        List<Dryer> dryers = new ArrayList<>(List.of(dryer));
        studio.dryers().stream().filter(one -> !one.name().equals(dryer.name())).forEach(dryers::add);
        dryers.add(stack);
        List<Charts.Line> lines = List.of(Charts.Line.FULL, Charts.Line.DASHED, Charts.Line.DOTTED);
        Charts chart = Charts.of(380, "hours", "water, g to a g of dry paper");
        List<double[]> curves = new ArrayList<>();
        double longest = 0;
        for (Dryer one : dryers) {
            DryingModel model = DryingModel.from(known, Scope.at(one.name()));
            double[] time = new double[POINTS];
            for (int i = 1; i < POINTS; i++) {
                time[i] = model.dry(one, batches[i], studio.room()).hours().in("h");
            }
            longest = Math.max(longest, time[POINTS - 1]);
            chart.line(one.name(), lines.get(curves.size() % lines.size()), time, left);
            curves.add(time);
        }
        List<List<String>> rows = new ArrayList<>();
        for (int i = 0; i < POINTS; i += 3) {
            List<String> row = new ArrayList<>(List.of(ratio(left[i])));
            for (double[] time : curves) {
                row.add(Kinds.TIME.of(time[i], "h").toString());
            }
            rows.add(row);
        }
        double planned = set.time().likely().in("h");
        if (Math.abs(curves.get(0)[POINTS - 1] / planned - 1) > 0.03) {
            throw new IllegalStateException(
                    "the picture dries in " + curves.get(0)[POINTS - 1] + " h, the plan in " + planned);
        }
        List<String> head = new ArrayList<>(List.of("water to a gram of dry paper"));
        dryers.forEach(one -> head.add(one.name()));
        return chart.up(0, Math.ceil(start * 2) / 2)
                .across(0, Math.ceil(longest))
                .picture(
                        "drying-curve",
                        "How a filling of the " + piece.name() + " dries",
                        "The sheets come from the press with " + ratio(start)
                                + " of water to a gram of dry paper and are dry at " + ratio(end) + ", in "
                                + dryer.name() + " after " + set.time() + ". Beside it the same sheets in the other"
                                + " dryers of the studio, and in a stack with a fan of "
                                + VolumeFlow.cubicMetresPerHour(FAN)
                                + " by its label, which it has not: there the last of the water goes ever more slowly."
                                + " For boards and a loft the model takes one rate, with the slow end counted in",
                        head,
                        rows);
    }

    private static String ratio(double value) {
        return Units.fourDigits(value) + " g";
    }

    /** What one record does to the bands of a plan. */
    private Picture bands(BatchRecord record) {
        Studio studio = sample.studio();
        Studio known = studio.withAssumptions(Calibration.of(studio.assumptions(), List.of(record), studio.dryers())
                .assumptions());
        PiecePlan after = MakingPlan.of(sample.order(), known).piece(piece.name());
        Map<String, List<Estimate<?>>> figures = new LinkedHashMap<>();
        figures.put(
                "grammage",
                List.of(piece.finished().grammage(), after.finished().grammage()));
        figures.put(
                "caliper", List.of(piece.finished().caliper(), after.finished().caliper()));
        figures.put("couched sheet", List.of(piece.couchedMass(), after.couchedMass()));
        figures.put("solids after pressing", List.of(piece.solids(), after.solids()));
        figures.put("time to dry", List.of(piece.drying().time(), after.drying().time()));
        figures.put("drains in", List.of(piece.drainTime(), after.drainTime()));
        Charts chart = Charts.of(460, "per cent of the figure planned before", "");
        List<List<String>> rows = new ArrayList<>();
        int place = figures.size();
        double most = 0;
        for (Map.Entry<String, List<Estimate<?>>> one : figures.entrySet()) {
            double whole = one.getValue().get(0).likely().si();
            for (int i = 0; i < 2; i++) {
                Estimate<?> band = one.getValue().get(i);
                double[] ends = {
                    PERCENT * band.low().si() / whole,
                    PERCENT * band.likely().si() / whole,
                    PERCENT * band.high().si() / whole
                };
                most = Math.max(most, ends[2]);
                double up = place - 0.1 - 0.3 * i;
                Charts.Line line = i == 0 ? Charts.Line.THICK : Charts.Line.THIN;
                String name = i == 0 ? "before" : "after one making";
                double[] level = {up, up, up};
                if (place == figures.size()) {
                    chart.line(name, line, ends, level);
                } else {
                    chart.unnamed(one.getKey() + i, line, ends, level);
                }
            }
            rows.add(List.of(
                    one.getKey(),
                    one.getValue().get(0).toString(),
                    one.getValue().get(1).toString()));
            place--;
        }
        int up = figures.size();
        for (String name : figures.keySet()) {
            chart.named(most * 0.8, up-- + 0.25, name);
        }
        return chart.across(0, Math.ceil(most / 50) * 50)
                .up(0.3, figures.size() + 0.6)
                .picture(
                        "bands",
                        "Bands of the " + piece.name() + " before and after calibration",
                        "Six forecasts, each as a share of what was planned before anything was measured: the thick bar is"
                                + " the band by the table of assumptions, the thin line with diamonds the band after the"
                                + " one record shown under Record. Where something was weighed or timed, the band closes",
                        List.of("forecast", "before", "after"),
                        rows);
    }

    /** A calibrating day of readings made up for this page. */
    private static CalibratingDay day(Fibre fibre, double[][] book) {
        CalibratingDay.Builder day = CalibratingDay.of(fibre, "the big beater")
                .wet(mm(400), mm(300))
                .pressed("the long press", SheetPressure.kilopascals(400));
        Reading<Grammage> weight = Reading.of(Grammage.gsm(100), Grammage.gsm(1));
        for (double[] line : book) {
            day.add(CalibratingDay.Sample.after(hours(line[0]))
                    .withNumber(Reading.of(SchopperRiegler.degrees(line[1]), SchopperRiegler.degrees(1)))
                    .withFree(new CalibratingDay.DriedSheet(
                            Reading.of(mm(line[2]), mm(1)),
                            Reading.of(mm(line[3]), mm(1)),
                            Reading.of(micrometres(line[4]), micrometres(6)),
                            weight)));
        }
        return day.calibrate(Assumptions.standard());
    }

    /** Shrinkage against beating: by the table, and by a trial with its points. */
    private static Picture shrinkage() {
        // hours, °SR, free sheet along and across in mm, its thickness in µm: made up for this page.
        double[][] book = {
            {0, 14, 390, 291, 205}, {1, 20, 386, 287, 196}, {2, 28, 380, 284, 187},
            {3, 35, 377, 280, 180}, {4, 43, 371, 277, 173}, {6, 55, 365, 271, 163}
        };
        Fibre fibre = Fibres.COTTON_RAG;
        CalibratingDay day = day(fibre, book);
        double[] time = new double[POINTS];
        double[] standard = new double[POINTS];
        double[] tried = new double[POINTS];
        double[] low = new double[POINTS];
        double[] high = new double[POINTS];
        for (int i = 0; i < POINTS; i++) {
            time[i] = 8.0 * i / (POINTS - 1);
            standard[i] = hung(Assumptions.standard(), fibre, time[i]);
            tried[i] = hung(day.assumptions(), fibre, time[i]);
            // What is left in the air is the same part of the whole at every point of the band.
            Estimate<LinearShrinkage> whole = day.freeShrinkage(hours(time[i])).orElseThrow();
            low[i] = tried[i] * whole.low().si() / whole.likely().si();
            high[i] = tried[i] * whole.high().si() / whole.likely().si();
        }
        double[] at = new double[book.length];
        double[] read = new double[book.length];
        List<List<String>> rows = new ArrayList<>();
        for (int i = 0; i < book.length; i++) {
            at[i] = book[i][0];
            read[i] = PERCENT * ((1 - book[i][2] / 400) + (1 - book[i][3] / 300)) / 2;
            rows.add(List.of(
                    hours(at[i]).toString(),
                    Units.fourDigits(read[i]) + " %",
                    Units.fourDigits(hung(day.assumptions(), fibre, at[i])) + " %",
                    Units.fourDigits(hung(Assumptions.standard(), fibre, at[i])) + " %"));
        }
        return Charts.of(400, "hours in the beater", "shrinkage a side, %")
                .line("sheets of the trial", Charts.Line.TRIANGLES, at, read)
                .line("after the trial", Charts.Line.FULL, time, tried)
                .line("its band", Charts.Line.DOTTED, time, low)
                .unnamed("its band, above", Charts.Line.DOTTED, time, high)
                .line("by the table", Charts.Line.DASHED, time, standard)
                .picture(
                        "shrinkage",
                        "How much " + fibre.name() + " shrinks, hung free, the longer it is beaten",
                        "Shrinkage rises fast at first and ever more slowly. The dashes are what the table knows of the"
                                + " fibre; the full line goes through six sheets of a trial in one's own beater, with its"
                                + " band beside it. The readings of the trial were made up for this page",
                        List.of("beaten", "read, mean of both sides", "after the trial", "by the table"),
                        rows);
    }

    /** What a sheet shrinks hung up in the air it is measured in, mean of both sides, in per cent. */
    private static double hung(Assumptions store, Fibre fibre, double hours) {
        Shrinkage both = ShrinkageModel.from(store, fibre.scope().on("the big beater"))
                .along(
                        BeatingState.after(store, Furnish.of(fibre), "the big beater", hours(hours)),
                        DryingPath.from(Kinds.MOISTURE_RATIO.ofSi(1.5))
                                .then(
                                        Restraint.HUNG,
                                        SorptionModel.from(store, Furnish.of(fibre))
                                                .fromWetSide()
                                                .ratio(Air.reference())))
                .shrinkage();
        return PERCENT * (both.alongFraction() + both.acrossFraction()) / 2;
    }
}
