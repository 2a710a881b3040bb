package org.papermath.card;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.Function;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Volume;
import org.papermath.plan.PiecePlan;
import org.papermath.plan.VatPlan;
import org.papermath.plan.WorkStep;
import org.papermath.quantity.Amount;
import org.papermath.vat.Vat;

/** What goes into the vat and when, what a sheet should weigh and do, and what to do if it does not. */
final class VatSection extends CardSection {
    /** What is less than this part of the vat is not worth a pail. */
    private static final double TRIFLE = 0.005;
    /** The part of the largest amount given at a time below which another one only fills up. */
    private static final double SPLASH = 0.05;
    /** How far two measures may lie apart and still be given as one. */
    private static final double ALIKE = 0.02;
    /** What a trial may be off, where sheets of one hand differ by no more. */
    private static final double TOLERANCE = 0.05;

    VatSection(CardWriter card) {
        super(card);
    }

    @Override
    boolean write(int number) {
        boolean isDipped = any(piece -> piece.vatStage().isDone());
        form.section(number, (isDipped ? Label.VAT : Label.POUR).words(), day("form"));
        if (isDipped) {
            dipped();
        }
        each(
                Mark.SET,
                Label.POURED,
                piece -> piece.pourStage()
                        .map(pour -> figures.set(pour.stock(), "qt_us"))
                        .orElse(""));
        run();
        checks(isDipped);
        cautions(WorkStep.DRY_TRIALS, WorkStep.FORM);
        return true;
    }

    /** What is done before the first sheet of each piece and while it is formed. */
    private void dipped() {
        table(
                Mark.SET,
                List.of(
                        new Column(Label.BEFORE, piece -> vat(piece, this::before)),
                        new Column(
                                Label.VAT_AT,
                                piece -> vat(piece, one -> one.consistency().toString())),
                        new Column(Label.DIP, piece -> vat(piece, this::dip)),
                        new Column(
                                Label.RECHARGE,
                                piece -> vat(
                                        piece,
                                        one -> fed(one).isEmpty()
                                                ? "not needed"
                                                : Figures.count(one.every(), "sheet"))),
                        new Column(Label.BAIL, piece -> vat(piece, this::bailed)),
                        new Column(Label.GIVE, piece -> vat(piece, this::fedWith))),
                piece -> piece.vatStage().isDone());
    }

    /** How the run goes on, and what each sheet of it comes to. */
    private void run() {
        each(Mark.MORE, "", piece -> vat(piece, one -> one.bounded() ? one.why() : ""));
        each(Mark.SET, Label.RUN_DOWN, piece -> vat(piece, this::runDown));
        if (anyVat(vat -> !vat.recharges().isEmpty())) {
            form.line(Mark.SET, "stock goes in between two sheets; stir well before the next dip");
        }
        if (anyVat(vat -> vat.recharges().stream().anyMatch(one -> one.bail().si() > 0))) {
            form.line(
                    Mark.SET,
                    plan.studio().vat().map(Vat::isStrained).orElse(true)
                            ? "bail through a strainer: the fibre it holds goes back into the vat"
                            : "what is bailed takes its fibre along; a strainer would keep it");
        }
        for (PiecePlan piece : pieces.all()) {
            VatRunPicture.of(plan, piece)
                    .ifPresent(svg ->
                            form.picture(new Picture(svg, pieces.named(piece) + ": sheets by the vat alone", false)));
        }
    }

    private static String vat(PiecePlan piece, Function<VatPlan, String> said) {
        return piece.vatStage().map(said).orElse("");
    }

    /** What is let out, put in and filled up before the first sheet of a piece. */
    private String before(VatPlan vat) {
        List<String> parts = new ArrayList<>();
        if (vat.letDown().si() > 0) {
            parts.add("out " + figures.set(vat.letDown(), "gal_us") + " into pails");
        }
        double trifle = TRIFLE
                * plan.studio().vat().map(one -> one.workingVolume().si()).orElse(0.0);
        if (vat.pail().si() > trifle) {
            parts.add(figures.set(vat.pail(), "gal_us") + " of the pails");
        }
        parts.add(vat.stock().si() > 0 ? figures.set(vat.stock(), "gal_us") + " stock" : "no stock");
        if (vat.bail().si() > trifle) {
            parts.add("bail " + figures.set(vat.bail(), "gal_us"));
        } else if (vat.water().si() > trifle) {
            parts.add(figures.set(vat.water(), "gal_us") + " water");
        }
        return String.join(", ", parts) + " to the mark";
    }

    private String dip(VatPlan vat) {
        return Written.set((vat.dips() > 1 ? vat.dips() + " × " : "")
                        + Math.round(vat.dipDepth().in("mm")) + " mm") + ", " + figures.set(vat.lift(), "lb");
    }

    /** From where on no stock is given, and how far the vat goes down. */
    private String runDown(VatPlan vat) {
        List<VatPlan.Recharge> strained = vat.recharges().stream()
                .filter(recharge -> recharge.strained().si() > 0)
                .toList();
        if (strained.isEmpty()) {
            return "";
        }
        double all = strained.stream()
                .mapToDouble(recharge -> recharge.strained().in("L"))
                .sum();
        return "after sheet " + strained.get(0).afterSheet() + ": no more stock; strain water out instead, about "
                + figures.litres(all / strained.size())
                + (strained.size() > 1
                        ? " after every " + Figures.count(vat.every(), "sheet") + ", " + figures.litres(all) + " in all"
                        : "");
    }

    /** The times something is given; where the vat is run down water is strained out instead. */
    private static List<VatPlan.Recharge> fed(VatPlan vat) {
        return vat.recharges().stream()
                .filter(recharge -> recharge.strained().si() == 0)
                .toList();
    }

    private String bailed(VatPlan vat) {
        List<VatPlan.Recharge> fed = fed(vat);
        double mean = fed.stream()
                .mapToDouble(recharge -> recharge.bail().in("L"))
                .average()
                .orElse(0);
        return fed.isEmpty() ? "" : mean > 0 ? figures.litres(mean) : "nothing";
    }

    /** What is given a time: what was let down as long as there is some of it, then stock. */
    private String fedWith(VatPlan vat) {
        double[] pail = above(vat, VatPlan.Recharge::pail);
        double[] stock = above(vat, VatPlan.Recharge::stock);
        String ofPail = pail.length == 0 ? "" : measures(pail, "of the pails");
        String ofStock = stock.length == 0 ? "" : measures(stock, "stock");
        return ofPail + (ofPail.isEmpty() || ofStock.isEmpty() ? "" : ", then ") + ofStock;
    }

    /** One measure for all times, with another for the last where that is another; or from which to which it is. */
    private String measures(double[] values, String of) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        double usual = sorted[sorted.length / 2];
        int last = values.length - 1;
        boolean even = Arrays.stream(values, 0, last).allMatch(one -> Math.abs(one - usual) <= ALIKE * usual);
        return !even
                ? Written.set(Figures.range(values) + " L") + " " + of
                : figures.litres(usual) + " " + of
                        + (Math.abs(values[last] - usual) <= ALIKE * usual
                                ? ""
                                : ", the last time " + figures.litres(values[last]));
    }

    /** What is given of one pail or the other; a last splash of it that only fills up is not told. */
    private static double[] above(VatPlan vat, Function<VatPlan.Recharge, Amount<Volume>> what) {
        double[] all = fed(vat).stream()
                .mapToDouble(recharge -> what.apply(recharge).in("L"))
                .toArray();
        double most = Arrays.stream(all).max().orElse(0);
        return Arrays.stream(all).filter(volume -> volume > SPLASH * most).toArray();
    }

    /** What trials are pulled for, and what to do if they read otherwise. */
    private void checks(boolean isDipped) {
        List<Across> rows = new ArrayList<>();
        boolean hasTrials = any(piece -> piece.counts().trials() > 0);
        if (hasTrials) {
            across(rows, Mark.CHECK, Label.TRIAL, piece -> piece.counts().trials() > 0 ? trial(piece) : "");
            toRead(rows);
        }
        across(rows, Mark.CHECK, Label.COUCHED, piece -> figures.aim(piece.couchedMass()));
        toRead(rows);
        across(
                rows,
                Mark.CHECK,
                Label.DRAIN,
                piece -> piece.drainTimeStage().map(figures::aim).orElse("by stopwatch"));
        toRead(rows);
        across(
                rows,
                Mark.EXPECT,
                Label.EVEN,
                piece -> vat(
                        piece,
                        one -> Math.round(one.lightest().in("%")) + "–"
                                + Math.round(one.heaviest().in("%")) + " %"));
        across(rows, Mark.EXPECT, Label.MAT, piece -> figures.band(piece.matThickness()));
        across(rows, Mark.EXPECT, Label.AT_VAT, piece -> figures.spell(piece.timeAtVat()));
        columns(hasTrials ? "the trials" : "the first sheets", rows);
        if (hasTrials && isDipped) {
            form.line(
                    Mark.MORE,
                    "A trial outside its aim: dip by so much deeper or less as it is off (new dip = dip × aim / reading),"
                            + " and pull two more.");
        }
        form.line(
                Mark.MORE,
                "Couched: the mean of the good trials is the aim from then on. Weigh one in ten; off by 5 %:"
                        + (isDipped ? " recharge now." : " stir, and pour the next by it."));
        if (any(piece -> piece.drainTimeStage().map(Figures::isTooWide).orElse(false))) {
            form.line(
                    Mark.MORE,
                    "Draining: the forecast is too wide to aim at; time the first and hold to it. Slower by a quarter:"
                            + " the stock has become colder or wetter-beaten; warm the vat.");
        }
    }

    private String trial(PiecePlan piece) {
        Amount<Mass> aim = piece.forming().solids();
        return figures.about(aim, "") + " ±" + Figures.two(TOLERANCE * aim.value());
    }
}
