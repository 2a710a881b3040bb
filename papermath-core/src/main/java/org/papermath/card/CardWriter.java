package org.papermath.card;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Predicate;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Length;
import javax.measure.quantity.Time;
import javax.measure.quantity.Volume;
import org.papermath.evidence.Estimate;
import org.papermath.evidence.Notice;
import org.papermath.fibre.Fibre;
import org.papermath.mould.Mould;
import org.papermath.order.Piece;
import org.papermath.plan.AdditiveToWeigh;
import org.papermath.plan.BatchPlan;
import org.papermath.plan.BeaterLoads;
import org.papermath.plan.BeatingPlan;
import org.papermath.plan.ColourPlan;
import org.papermath.plan.CookingPlan;
import org.papermath.plan.DryingPlan;
import org.papermath.plan.EnvelopePlan;
import org.papermath.plan.FibreToWeigh;
import org.papermath.plan.MakingPlan;
import org.papermath.plan.PiecePlan;
import org.papermath.plan.PressingPlan;
import org.papermath.plan.Schedule;
import org.papermath.plan.Sensitivity;
import org.papermath.plan.ShapedDeckle;
import org.papermath.plan.SharedStuff;
import org.papermath.plan.SoakingPlan;
import org.papermath.plan.Stage;
import org.papermath.plan.StepCaution;
import org.papermath.plan.VatPlan;
import org.papermath.plan.WorkStep;
import org.papermath.press.Press;
import org.papermath.pulp.Additive;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kind;
import org.papermath.quantity.Kinds;
import org.papermath.text.Digits;
import org.papermath.vat.Vat;

/** Writes a {@link MakingCard}, section by section. */
final class CardWriter {
    /** What is less than this part of the whole is not worth a pail. */
    private static final double TRIFLE = 0.005;
    /** The part of the largest amount given at a time below which another one only fills up. */
    private static final double SPLASH = 0.05;
    /** How far two measures may lie apart and still be given as one. */
    private static final double ALIKE = 0.02;
    /** A band whose upper end is more than this many times its lower one does not help: a sheet is timed. */
    private static final double TOO_WIDE = 4;
    /** A band that goes further than this part to either side is told with two digits. */
    private static final double COARSE = 0.1;

    private static final int MOST_PAIRS = 99;
    private static final double LEAST_OUNCES = 0.1;

    private final CardForm form;
    private final MakingPlan plan;
    private final boolean customary;
    private int section;

    CardWriter(MakingPlan plan, CardForm form) {
        this.plan = plan;
        this.form = form;
        this.customary = plan.studio().alsoCustomaryUnits();
    }

    void write() {
        title();
        weigh();
        beat();
        form();
        vat();
        press();
        dry();
        finish();
        comeOut();
        days();
        lookOut();
        foot();
    }

    /** The words in the first column, kept together so that each can be accounted for. */
    private enum Label {
        WEIGH("Weigh and soak"),
        COOK("cook"),
        COOKED("should come to"),
        BEAT("Beat"),
        ADD("Add to each load"),
        ADD_MIXED("Add to the mixed stock"),
        ADD_PART("Add to this part"),
        DIVIDE("take"),
        COLOUR("Judge the colour"),
        STOCK("Stock"),
        FORM("Mould and sheets"),
        VAT("Vat"),
        POUR("Pour"),
        PRESS("Post and press"),
        DRY("Dry"),
        FINISH("Size, cut, fold"),
        COME_OUT("What will come out"),
        DAYS("Days and hours"),
        LOOK_OUT("Look out"),
        MEASURE("Measure first"),
        READY("have ready"),
        SOAK("soak"),
        MOULD("mould"),
        IN_TURN("moulds in turn"),
        OTHER_MOULD("next best mould"),
        OPENING("deckle opening"),
        SHAPED("cut to its drawing"),
        SPLIT("openings"),
        UP("pieces on a sheet"),
        SHEETS("sheets to pull"),
        TRIALS("of them trials"),
        TRIAL("a trial, bone dry"),
        TURN("order at the vat"),
        VAT_AT("vat at"),
        LET_DOWN("first out into pails"),
        PAIL("from the pails first"),
        CHARGE("stock into the vat"),
        WATER("then to the mark"),
        LIFT("lift a sheet"),
        RECHARGE("recharge after every"),
        BAIL("bail first, about"),
        RECHARGE_STOCK("then give, about"),
        RUN_DOWN("run the vat down"),
        DRAIN("drains in"),
        AT_VAT("all of them at the vat"),
        MAT("wet sheet thick"),
        COUCHED("couched sheet weighs"),
        POSTS("posts"),
        FELTS("felts in a post"),
        POST_MASS("a post weighs"),
        POST_HEIGHT("a post is high"),
        LOAD("press load"),
        GAUGE("the gauge shows"),
        PULL("pull at the lever"),
        PRESSURE("on the sheets"),
        HOLD("hold"),
        SOLIDS("solids then"),
        DRYER("in"),
        FILLINGS("fillings"),
        TIME("dry after, a filling"),
        LEFT("left in, a filling"),
        TIGHTEN("draw it tight after"),
        RELEASED("water given off"),
        CHANGES("blotter changes"),
        BATH("size bath to make"),
        DRY_SIZE("dry size in it"),
        DRY_AGAIN("dry again, a filling"),
        DRAW("draw through it"),
        SIZE("finished flat"),
        FOLDED("folded"),
        BLANK("envelope blank"),
        INSIDE("envelope inside"),
        DRIED("inside once dry"),
        GRAMMAGE("grammage"),
        LEVELS("- unknown/making/sheet"),
        INSIDE_TOLERANCE("- as agreed"),
        WIDTH("width"),
        HEIGHT("height"),
        CALIPER("caliper"),
        MASS("weight of one"),
        GOOD("good pieces"),
        ENOUGH("- enough for the order"),
        PILE("all in a pile"),
        PLAY("play; pairs that fit"),
        MAILED("in the mail"),
        KEPT("kept in the vat"),
        PUT_BY("stock put by"),
        POURED("stock a sheet");

        private final String text;

        Label(String text) {
            this.text = text;
        }

        static List<String> words() {
            return Arrays.stream(values()).map(label -> label.text).toList();
        }
    }

    /** The words a card can carry in its first column. */
    static List<String> labels() {
        return Label.words();
    }

    // ------------------------------------------------------------------------------------------------ sections

    private void title() {
        form.title(
                "Making card",
                plan.order().name(),
                "for " + plan.studio().name()
                        + plan.order()
                                .due()
                                .map(day -> ", parcel leaves " + day)
                                .orElse("") + ".",
                "Do what is set. A figure with a band (a–b) is what nine makings in ten will give.");
    }

    private void head(Label label) {
        section++;
        form.section(section, label.text);
    }

    private void weigh() {
        head(Label.WEIGH);
        for (BatchPlan batch : plan.batches()) {
            Optional<SharedStuff> shared = batch.sharedStuff();
            FibreToWeigh fibre = shared.map(SharedStuff::fibre).orElse(batch.fibre());
            List<String> fibres = new ArrayList<>();
            for (FibreToWeigh.Line line : fibre.kinds()) {
                fibres.add(set(line.asBought(), "oz") + " " + line.form().of(line.fibre()) + " as it lies"
                        + (line.form().losesFibre() ? ", to be cooked" : "")
                        + (line.fromHand().si() > 0
                                ? " and " + set(line.fromHand(), "oz") + " (oven-dry) from the shelf"
                                : ""));
            }
            boolean onHand = batch.stuffOnHand().si() > 0;
            if (onHand) {
                row(
                        batch.name(),
                        "stuff on hand with " + set(batch.stuffOnHand(), "lb") + " oven-dry in it: "
                                + "strain or thin it to " + batch.stock().consistency() + ", stir it in");
                if (batch.fibre().ovenDry().si() == 0) {
                    continue;
                }
            }
            if (shared.isPresent() && !shared.get().isBeatenHere()) {
                row(onHand ? "" : batch.name(), "its part of " + shared.get().name() + ", weighed above");
                ready(batch);
                continue;
            }
            shared.ifPresent(stuff -> row(
                    onHand ? "" : batch.name(),
                    stuff.name() + " for " + String.join(", ", stuff.recipes()) + " together:"));
            row(onHand || shared.isPresent() ? "" : batch.name(), String.join("; ", fibres));
            row(
                    "",
                    "= " + set(fibre.ovenDry(), "lb")
                            + " oven-dry"
                            + (batch.cooking().isPresent() ? " in the beater" : "")
                            + ", so that every sheet, the trials and the vat have theirs");
            ready(batch);
            SoakingPlan soak = shared.map(SharedStuff::soak).orElse(batch.soak());
            row(Label.SOAK, set(soak.water(), "gal_us") + " of water, " + clock(soak.time()));
            batch.cooking().ifPresent(this::cook);
        }
        cautions(Label.WEIGH);
    }

    private void ready(BatchPlan batch) {
        if (!batch.additives().isEmpty()) {
            row(
                    Label.READY,
                    String.join(
                            "; ",
                            batch.additives().stream()
                                    .map(additive -> set(additive.productInAll(), "oz") + " "
                                            + additive.additive().name())
                                    .toList()));
        }
    }

    private void cook(CookingPlan cooking) {
        boolean alone = cooking.pots().size() == 1;
        for (CookingPlan.Pot pot : cooking.pots()) {
            row(
                    Label.COOK,
                    pot.fibre().name() + " in " + set(pot.liquor(), "gal_us") + " of water with "
                            + set(pot.pureAlkali(), "oz") + " of " + pot.alkali() + " (" + pot.dose()
                            + " on the dry fibre), about " + clock(cooking.time())
                            + " at the boil, until a strand comes apart; rinse it clear"
                            + (pot.fibre().sourceClass() == Fibre.SourceClass.BAST ? " and pick it over" : ""));
            row(
                    Label.COOKED,
                    (alone ? band(cooking.stuff()) : set(pot.stuff(), "oz")) + " oven-dry, about "
                            + about(pot.wet(), "lb")
                            + " squeezed out: weigh it, dry a handful to know its water, and make up the stock to what"
                            + " there is");
        }
        if (!alone) {
            row("", "out of all pots " + band(cooking.stuff()) + " oven-dry");
        }
    }

    private static boolean isApart(BatchPlan batch) {
        return batch.beatingStage().isDone() && batch.beating().isApart();
    }

    private void beat(BatchPlan batch, BeatingPlan beating) {
        for (BeaterLoads run : beating.runs()) {
            List<String> each = new ArrayList<>();
            for (int f = 0; f < run.fibres().size(); f++) {
                Fibre fibre = run.fibres().get(f);
                each.add(set(run.kindsEach().get(f), "oz") + " "
                        + fibre.name()
                        + (batch.recipe().furnish().form(fibre).losesFibre() ? ", cooked and squeezed out" : ""));
            }
            row(
                    run == beating.runs().get(0)
                            ? batch.sharedStuff().map(SharedStuff::name).orElse(batch.name())
                            : "",
                    count(run.loads(), "load") + (run.loads() == 1 ? ": " : ", each ") + String.join(" + ", each)
                            + "; in "
                            + set(run.waterEach(), "gal_us") + " of water (" + beating.consistency() + "), "
                            + clock(run.timeEach()) + " on "
                            + beating.beater().name());
        }
        if (beating.isApart()) {
            row("", "beaten apart: mix all the loads before anything is added");
        }
    }

    private void beat() {
        head(Label.BEAT);
        for (BatchPlan batch : plan.batches()) {
            if (batch.beatingStage().isDone()) {
                beat(batch, batch.beating());
            } else {
                row(batch.name(), batch.beatingStage().reason());
            }
            if (batch.sharedStuff().filter(stuff -> !stuff.isBeatenHere()).isEmpty()) {
                drainability(batch);
            }
            batch.sharedStuff()
                    .filter(stuff -> stuff.part().si() > 0)
                    .ifPresent(stuff -> row(
                            Label.DIVIDE,
                            about(stuff.wet(), "lb") + " of it ("
                                    + Digits.percent(stuff.part().si()) + ") for " + batch.name()
                                    + ", weighed as it comes from the beater"));
            for (int i = 0; i < batch.additives().size(); i++) {
                AdditiveToWeigh additive = batch.additives().get(i);
                row(
                        i > 0 ? "" : add(batch).text,
                        (i + 1) + ". " + set(additive.productEach(), "oz") + " "
                                + additive.additive()
                                + (additive.additive().purpose() == Additive.Purpose.FORMATION_AID
                                        ? ", as a thin solution made the day before"
                                        : "")
                                + (i + 1 < batch.additives().size() ? ", then " + clock(additive.waitAfter()) : ""));
            }
            batch.colour().ifPresent(this::colour);
            row(
                    Label.STOCK,
                    set(batch.stock().volume(), "gal_us") + " at "
                            + batch.stock().consistency()
                            + batch.stock()
                                    .dilutionEach()
                                    .map(water -> ", thinned with " + set(water, "gal_us") + " of water"
                                            + (add(batch) == Label.ADD ? " a load" : " in all"))
                                    .orElse(""));
        }
        cautions(Label.BEAT);
    }

    private boolean isJudgingSaid;

    /** How a batch comes to its colour: what is given first, how it is judged, what then. */
    private void colour(ColourPlan colour) {
        row(
                Label.COLOUR,
                "wanted dry " + colour.wanted().lab()
                        + (colour.pigments().isEmpty() ? "; no pigment is in the recipe" : ""));
        if (!colour.pigments().isEmpty()) {
            row(
                    "",
                    "first "
                            + String.join(
                                    ", ",
                                    colour.pigments().stream()
                                            .map(one -> set(one.first(), "oz") + " "
                                                    + one.additive().name())
                                            .toList())
                            + " a load; keep the rest back");
            if (!isJudgingSaid) {
                isJudgingSaid = true;
                row(
                        "",
                        "strain, wait till the water stands clear, pull a swatch, press it, dry it "
                                + clock(colour.drying()) + " on a warm plate; wet it is darker");
                row("", "judge it by day and under a lamp, then add of the rest what it asks for");
            }
            colour.wanted()
                    .nineInTen()
                    .ifPresent(within -> row("", "told within ΔE00 " + tenths(within) + " nine times in ten"));
        }
        colour.before()
                .ifPresent(before -> row(
                        "",
                        "after " + before + ": wash beater, vat and felts; what is left moves this one by about ΔE00 "
                                + tenths(colour.leftOfBefore())));
    }

    /** A difference of colour, which nobody sees finer than in tenths. */
    private static String tenths(double difference) {
        return BigDecimal.valueOf(difference)
                .setScale(1, RoundingMode.HALF_EVEN)
                .toPlainString();
    }

    private static Label add(BatchPlan batch) {
        return batch.sharedStuff().isPresent() ? Label.ADD_PART : isApart(batch) ? Label.ADD_MIXED : Label.ADD;
    }

    private void drainability(BatchPlan batch) {
        row(
                "",
                batch.recipe().timedSheet().isPresent()
                        ? "as the timed sheet has it, stuff of " + band(batch.drainability())
                        : "the tester should " + (batch.fibre().ovenDry().si() > 0 ? "then " : "") + "read "
                                + band(batch.drainability()));
    }

    private void form() {
        head(Label.FORM);
        pieces("", PiecePlan::name);
        pieces(
                Label.MOULD,
                piece -> piece.forming().mould().map(Mould::name).orElse("to be made")
                        + (piece.forming().deckleToMake()
                                        && piece.forming().mould().isPresent()
                                ? ", own deckle"
                                : ""));
        if (plan.pieces().stream().anyMatch(piece -> inTurn(piece) > 1)) {
            pieces(Label.IN_TURN, piece -> inTurn(piece) > 1 ? Integer.toString(inTurn(piece)) : "-");
        }
        pieces(
                Label.OPENING,
                piece -> size(
                        piece.forming().opening().width(),
                        piece.forming().opening().height()));
        if (customary) {
            pieces(
                    "",
                    piece -> inches(
                            piece.forming().opening().width(),
                            piece.forming().opening().height()));
        }
        openings(Label.SHAPED, true);
        openings(Label.SPLIT, false);
        // The one that was not taken is worth a line where it would save fibre for some more time.
        for (PiecePlan piece : plan.pieces()) {
            piece.forming()
                    .otherMould()
                    .filter(other -> other.contains("less fibre"))
                    .ifPresent(other -> row(Label.OTHER_MOULD, piece.piece().name() + ": " + other));
        }
        pieces(Label.UP, piece -> piece.forming().perSheet() + (piece.forming().turned() ? ", turned" : ""));
        pieces(
                Label.SHEETS,
                piece -> piece.counts().sheets() + " for " + piece.counts().wanted() + " good");
        pieces(Label.TRIALS, piece -> Integer.toString(piece.counts().trials()));
        pieces(
                Label.TRIAL,
                piece -> piece.counts().trials() > 0 ? about(piece.forming().solids(), "oz") : "-");
        cautions(Label.FORM);
    }

    /** The openings of deckles that are shaped, or that are split. */
    private void openings(Label label, boolean shaped) {
        if (plan.pieces().stream().anyMatch(piece -> openings(piece, shaped).isPresent())) {
            pieces(
                    label,
                    piece -> openings(piece, shaped)
                            .map(deckle -> (piece.forming().perSheet() == 1
                                            ? ""
                                            : deckle.across() + " by " + deckle.along() + " of ")
                                    + size(
                                            deckle.outline().width(),
                                            deckle.outline().height()))
                            .orElse("-"));
        }
    }

    private static Optional<ShapedDeckle> openings(PiecePlan piece, boolean shaped) {
        return piece.forming()
                .shapedDeckle()
                .filter(deckle -> shaped == (piece.piece().edge() == Piece.Edge.SHAPED));
    }

    private static int inTurn(PiecePlan piece) {
        return piece.forming().mould().map(Mould::count).orElse(1);
    }

    private void vat() {
        boolean poured =
                plan.pieces().stream().noneMatch(piece -> piece.vatStage().isDone());
        head(poured ? Label.POUR : Label.VAT);
        if (poured) {
            pieces(
                    Label.POURED,
                    piece -> piece.pourStage()
                            .map(pour -> set(pour.stock(), "qt_us"))
                            .orElse("-"));
        } else {
            List<VatPlan> vats = plan.pieces().stream()
                    .flatMap(piece -> piece.vatStage().optional().stream())
                    .toList();
            if (vats.stream().anyMatch(vat -> vat.turn() > 1)) {
                pieces(
                        Label.TURN,
                        piece -> piece.vatStage()
                                .map(vat -> Integer.toString(vat.turn()))
                                .orElse("-"));
            }
            pieces(
                    Label.VAT_AT,
                    piece -> piece.vatStage()
                            .map(vat -> vat.consistency() + ", dip " + (vat.dips() > 1 ? vat.dips() + " × " : "")
                                    + Digits.three(vat.dipDepth().in("mm")) + " mm")
                            .orElse("-"));
            for (PiecePlan piece : plan.pieces()) {
                piece.vatStage()
                        .optional()
                        .filter(VatPlan::bounded)
                        .ifPresent(vat -> row("", piece.piece().name() + ": " + vat.why()));
            }
            if (vats.stream().anyMatch(vat -> vat.letDown().si() > 0)) {
                pieces(
                        Label.LET_DOWN,
                        piece -> piece.vatStage()
                                .map(vat -> vat.letDown().si() > 0 ? set(vat.letDown(), "gal_us") : "-")
                                .orElse("-"));
                pieces(Label.PAIL, piece -> piece.vatStage().map(this::fromPail).orElse("-"));
            }
            pieces(
                    Label.CHARGE,
                    piece -> piece.vatStage()
                            .map(vat -> vat.stock().si() > 0 ? set(vat.stock(), "gal_us") : "none")
                            .orElse("-"));
            pieces(Label.WATER, piece -> piece.vatStage().map(this::toTheMark).orElse("-"));
            pieces(
                    Label.LIFT,
                    piece -> piece.vatStage().map(vat -> set(vat.lift(), "lb")).orElse("-"));
            pieces(
                    Label.RECHARGE,
                    piece -> piece.vatStage()
                            .map(vat -> fed(vat).isEmpty() ? "not needed" : count(vat.every(), "sheet"))
                            .orElse("-"));
            pieces(Label.BAIL, piece -> piece.vatStage().map(this::bailed).orElse("-"));
            pieces(
                    Label.RECHARGE_STOCK,
                    piece -> piece.vatStage().map(this::fedWith).orElse("-"));
            for (PiecePlan piece : plan.pieces()) {
                piece.vatStage()
                        .optional()
                        .ifPresent(vat -> runDown(piece.piece().name(), vat));
            }
            if (vats.stream().anyMatch(vat -> !vat.recharges().isEmpty())) {
                row("", "stock goes in between two sheets; stir well before the next dip");
            }
            if (vats.stream()
                    .flatMap(vat -> vat.recharges().stream())
                    .anyMatch(one -> one.bail().si() > 0)) {
                row(
                        "",
                        plan.studio().vat().map(Vat::isStrained).orElse(true)
                                ? "bail through a strainer: the fibre it holds goes back into the vat"
                                : "what is bailed takes its fibre along; a strainer would keep it");
            }
        }
        pieces(Label.DRAIN, piece -> piece.drainTimeStage().map(this::drains).orElse("by stopwatch"));
        pieces(Label.AT_VAT, piece -> spell(piece.timeAtVat()));
        pieces(Label.MAT, piece -> band(piece.matThickness()));
        pieces(Label.COUCHED, piece -> band(piece.couchedMass()));
        cautions(Label.VAT);
    }

    /** From where on no stock is given, and how far the vat goes down. */
    private void runDown(String name, VatPlan vat) {
        List<VatPlan.Recharge> strained = vat.recharges().stream()
                .filter(recharge -> recharge.strained().si() > 0)
                .toList();
        if (!strained.isEmpty()) {
            double all = strained.stream()
                    .mapToDouble(recharge -> recharge.strained().in("L"))
                    .sum();
            row(
                    Label.RUN_DOWN,
                    name + ": after sheet " + strained.get(0).afterSheet()
                            + " no more stock; strain water out instead, about "
                            + litres(all / strained.size())
                            + (strained.size() > 1
                                    ? " after every " + count(vat.every(), "sheet") + ", " + litres(all) + " in all"
                                    : ""));
        }
    }

    private String fromPail(VatPlan vat) {
        double all = vat.pail().in("L")
                + vat.recharges().stream()
                        .mapToDouble(recharge -> recharge.pail().in("L"))
                        .sum();
        return all
                        > TRIFLE
                                * plan.studio()
                                        .vat()
                                        .map(Vat::workingVolume)
                                        .map(one -> one.in("L"))
                                        .orElse(0.0)
                ? litres(all) + " in all"
                : "-";
    }

    /** What brings the level to the mark once the stock is in: water, or bailing. */
    private String toTheMark(VatPlan vat) {
        return vat.bail().si() > 0
                ? "bail " + set(vat.bail(), "gal_us")
                : vat.water().si() > 0 ? set(vat.water(), "gal_us") + " of water" : "nothing";
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
        return fed.isEmpty() ? "-" : mean > 0 ? litres(mean) : "nothing";
    }

    /** What is given a time: what was let down as long as there is some of it, then stock. */
    private String fedWith(VatPlan vat) {
        double[] pail = above(vat, VatPlan.Recharge::pail);
        double[] stock = above(vat, VatPlan.Recharge::stock);
        String ofPail = pail.length == 0 ? "" : measures(pail, "of the pails");
        String ofStock = stock.length == 0 ? "" : measures(stock, "of stock");
        return ofPail.isEmpty() && ofStock.isEmpty()
                ? "-"
                : ofPail + (ofPail.isEmpty() || ofStock.isEmpty() ? "" : ", then ") + ofStock;
    }

    /** One measure for all times, with another for the last where that is another; or from which to which it is. */
    private String measures(double[] values, String of) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        double usual = sorted[sorted.length / 2];
        int last = values.length - 1;
        boolean even = Arrays.stream(values, 0, last).allMatch(one -> Math.abs(one - usual) <= ALIKE * usual);
        return !even
                ? range(values) + " L " + of
                : litres(usual) + " " + of
                        + (Math.abs(values[last] - usual) <= ALIKE * usual
                                ? ""
                                : ", the last time " + litres(values[last]));
    }

    /** What is given of one pail or the other; a last splash of it that only fills up is not told. */
    private static double[] above(VatPlan vat, Function<VatPlan.Recharge, Amount<Volume>> what) {
        double[] all = fed(vat).stream()
                .mapToDouble(recharge -> what.apply(recharge).in("L"))
                .toArray();
        double most = Arrays.stream(all).max().orElse(0);
        return Arrays.stream(all).filter(volume -> volume > SPLASH * most).toArray();
    }

    private void press() {
        head(Label.PRESS);
        if (plan.pieces().stream().anyMatch(piece -> piece.postsStage().isDone())) {
            pieces(
                    Label.POSTS,
                    piece -> piece.postsStage()
                            .map(posts -> count(posts.posts(), "post") + " of up to " + posts.sheetsInPost())
                            .orElse("-"));
            pieces(
                    Label.FELTS,
                    piece -> piece.postsStage()
                            .map(posts -> posts.felts()
                                    + (posts.sheetsOnFelt() > 1 ? ", " + posts.sheetsOnFelt() + " sheets on each" : ""))
                            .orElse("-"));
            pieces(
                    Label.POST_MASS,
                    piece -> piece.postsStage().map(posts -> band(posts.mass())).orElse("-"));
            pieces(
                    Label.POST_HEIGHT,
                    piece -> piece.postsStage()
                            .map(posts -> band(posts.height()))
                            .orElse("-"));
            row("", "felts damp, not dripping, before couching");
        } else {
            reasons(Label.POSTS, PiecePlan::postsStage);
        }
        if (plan.pieces().stream().anyMatch(piece -> piece.pressStage().isDone())) {
            pieces(
                    Label.LOAD,
                    piece -> piece.pressStage()
                            .map(press -> about(press.force(), "lbf"))
                            .orElse("-"));
            if (plan.studio().press().flatMap(Press::ram).isPresent()) {
                pieces(
                        Label.GAUGE,
                        piece -> piece.pressStage()
                                .optional()
                                .flatMap(PressingPlan::gauge)
                                .map(gauge -> about(gauge, "psi"))
                                .orElse("-"));
            }
            plan.studio()
                    .press()
                    .flatMap(Press::lever)
                    .ifPresent(lever -> pieces(
                            Label.PULL,
                            piece -> piece.pressStage()
                                    .optional()
                                    .flatMap(PressingPlan::pull)
                                    .map(pull -> about(pull, "lbf") + (lever.people() > 1 ? " each" : ""))
                                    .orElse("-")));
            pieces(
                    Label.PRESSURE,
                    piece -> piece.pressStage()
                            .map(press -> about(press.pressure(), "psi"))
                            .orElse("-"));
            pieces(
                    Label.HOLD,
                    piece -> piece.pressStage()
                            .map(press ->
                                    clock(press.time()) + (press.times() > 1 ? ", " + press.times() + " times" : ""))
                            .orElse("-"));
            if (plan.studio().press().map(Press::pressings).orElse(1) > 1) {
                row("", "exchange the felts for drier ones between the pressings");
            }
        } else {
            reasons(Label.LOAD, PiecePlan::pressStage);
        }
        pieces(Label.SOLIDS, piece -> band(piece.solids()));
        cautions(Label.PRESS);
    }

    private void dry() {
        head(Label.DRY);
        if (plan.pieces().stream().noneMatch(piece -> piece.dryingStage().isDone())) {
            row("", plan.pieces().get(0).dryingStage().reason());
            cautions(Label.DRY);
            return;
        }
        pieces(
                Label.DRYER,
                piece ->
                        piece.dryingStage().map(drying -> drying.dryer().name()).orElse("not done"));
        pieces(
                Label.FILLINGS,
                piece -> piece.dryingStage()
                        .map(drying ->
                                drying.loads() + (drying.inLayer() > 1 ? ", " + drying.inLayer() + " in a layer" : ""))
                        .orElse("-"));
        pieces(
                Label.TIME,
                piece -> piece.dryingStage().map(drying -> spell(drying.time())).orElse("-"));
        if (dries(drying -> drying.left().si() > drying.time().likely().si())) {
            pieces(
                    Label.LEFT,
                    piece -> piece.dryingStage()
                            .map(drying -> clock(drying.left()))
                            .orElse("-"));
        }
        if (dries(drying -> drying.tighten().isPresent())) {
            pieces(
                    Label.TIGHTEN,
                    piece -> piece.dryingStage()
                            .map(drying ->
                                    drying.tighten().map(time -> clock(time)).orElse("-"))
                            .orElse("-"));
        }
        if (dries(drying -> drying.blotterChanges() > 0)) {
            pieces(
                    Label.CHANGES,
                    piece -> piece.dryingStage()
                            .map(drying -> Integer.toString(drying.blotterChanges()))
                            .orElse("-"));
        }
        pieces(
                Label.RELEASED,
                piece -> piece.dryingStage().map(drying -> band(drying.water())).orElse("-"));
        cautions(Label.DRY);
    }

    private boolean dries(Predicate<DryingPlan> how) {
        return plan.pieces().stream()
                .flatMap(piece -> piece.dryingStage().optional().stream())
                .anyMatch(how);
    }

    private void finish() {
        head(Label.FINISH);
        if (plan.pieces().stream().anyMatch(piece -> piece.sizingStage().isDone())) {
            pieces(
                    Label.BATH,
                    piece -> piece.sizingStage()
                            .map(sizing -> set(sizing.bath(), "qt_us"))
                            .orElse("-"));
            pieces(
                    Label.DRY_SIZE,
                    piece -> piece.sizingStage()
                            .map(sizing -> set(sizing.drySize(), "oz"))
                            .orElse("-"));
            row(Label.DRAW, "every dry sheet; let it drip or press it lightly, and hang it again");
            pieces(
                    Label.DRY_AGAIN,
                    piece -> piece.sizingStage()
                            .map(sizing -> sizing.dryAgain().map(this::spell).orElse("not known"))
                            .orElse("-"));
        }
        pieces(
                Label.SIZE,
                piece -> size(
                                piece.envelopeStage()
                                        .map(EnvelopePlan::blankWidth)
                                        .orElseGet(() -> piece.piece()
                                                .width()
                                                .orElse(piece.finished().width().likely())),
                                piece.envelopeStage()
                                        .map(EnvelopePlan::blankHeight)
                                        .orElseGet(() -> piece.piece()
                                                .height()
                                                .orElse(piece.finished()
                                                        .height()
                                                        .likely())))
                        + (piece.piece().edge() == Piece.Edge.CUT ? ", cut" : ", rim kept"));
        if (plan.pieces().stream().anyMatch(piece -> piece.piece().folds() > 0)) {
            pieces(
                    Label.FOLDED,
                    piece -> piece.piece().folds() == 0
                            ? "-"
                            : size(
                                    piece.finished().foldedWidth(),
                                    piece.finished().foldedHeight()));
        }
        if (plan.pieces().stream().anyMatch(piece -> piece.envelopeStage().isDone())) {
            pieces(
                    Label.BLANK,
                    piece -> piece.envelopeStage()
                            .map(envelope -> envelope.style().words() + ", "
                                    + Digits.three(envelope.seam().in("mm")) + " mm seam")
                            .orElse("-"));
            pieces(
                    Label.INSIDE,
                    piece -> piece.envelopeStage()
                            .map(envelope -> size(envelope.insideWidth(), envelope.insideHeight()))
                            .orElse("-"));
            dried(Label.DRIED.text, EnvelopePlan::insideWidthDried);
            dried("", EnvelopePlan::insideHeightDried);
        }
        cautions(Label.FINISH);
    }

    /** A side inside an envelope that shrinks with its sheet, where there is one. */
    private void dried(String label, Function<EnvelopePlan, Optional<Estimate<Length>>> side) {
        if (plan.pieces().stream()
                .flatMap(piece -> piece.envelopeStage().optional().stream())
                .anyMatch(envelope -> side.apply(envelope).isPresent())) {
            pieces(
                    label,
                    piece -> piece.envelopeStage()
                            .optional()
                            .flatMap(side)
                            .map(inside -> band(inside))
                            .orElse("-"));
        }
    }

    /** What a band is made of, and what single sheets differ by besides. */
    private static <Q extends Quantity<Q>> String levels(Estimate<Q> estimate) {
        String parts = estimate.fromMakings() > 0 && !estimate.isOpenBelow() && !estimate.isOpenAbove()
                ? half(estimate, estimate.unknown()) + " / " + half(estimate, estimate.makings())
                : "- / -";
        String sheets = estimate.scatter()
                .filter(scatter -> scatter > 0)
                .map(scatter -> two(100 * scatter))
                .orElse("-");
        return parts.equals("- / -") && sheets.equals("-") ? "" : "±" + parts + " / " + sheets + " %";
    }

    private static <Q extends Quantity<Q>> String half(Estimate<Q> whole, Estimate.Part<Q> part) {
        return two(50 * (part.high().si() - part.low().si()) / whole.likely().si());
    }

    private void comeOut() {
        head(Label.COME_OUT);
        pieces("", PiecePlan::name);
        pieces(Label.GRAMMAGE, piece -> band(piece.finished().grammage()));
        pieces(Label.LEVELS, piece -> levels(piece.finished().grammage()));
        pieces(
                Label.INSIDE_TOLERANCE,
                piece -> piece.finished()
                        .insideTolerance()
                        .map(share -> fits(share.in("%")) + " of sheets")
                        .orElse(""));
        pieces(Label.WIDTH, piece -> band(piece.finished().width()));
        pieces(Label.HEIGHT, piece -> band(piece.finished().height()));
        pieces(
                Label.CALIPER,
                piece -> piece.finished()
                        .caliperStage()
                        .map(caliper -> band(caliper.in("mm")))
                        .orElse("not known"));
        pieces(Label.MASS, piece -> band(piece.finished().mass()));
        pieces(Label.GOOD, piece -> whole(piece.counts().good()));
        pieces(
                Label.ENOUGH,
                piece -> piece.counts()
                        .chanceOfEnough()
                        .map(chance -> "in " + fits(chance.in("%")))
                        .orElse("-"));
        pieces(Label.PILE, piece -> piece.finished().pileStage().map(this::band).orElse("-"));
        if (plan.pieces().stream().anyMatch(piece -> piece.envelopeStage().isDone())) {
            pieces(
                    Label.PLAY,
                    piece -> piece.envelopeStage()
                            .map(envelope -> two(envelope.playAlong().likely().in("mm")) + " × "
                                    + two(envelope.playAcross().likely().in("mm")) + " mm, "
                                    + fits(envelope.sharePairsFit().in("%")))
                            .orElse("-"));
        }
        if (plan.pieces().stream().anyMatch(piece -> piece.mailStage().isDone())) {
            pieces(
                    Label.MAILED,
                    piece -> piece.mailStage()
                            .map(mail -> two(mail.mass().likely().in("g")) + " g, "
                                    + two(mail.thickness().likely().in("mm")) + " mm")
                            .orElse("-"));
            for (PiecePlan piece : plan.pieces()) {
                piece.mailStage()
                        .optional()
                        .ifPresent(mail -> row(
                                "",
                                piece.name() + ": "
                                        + mail.verdict()
                                                .service()
                                                .map(service -> "goes as " + service + " in " + mail.country()
                                                        + (mail.verdict().step().isPresent()
                                                                ? ", mass step "
                                                                        + mail.verdict()
                                                                                .step()
                                                                                .getAsInt()
                                                                : ""))
                                                .map(goes -> goes + " ("
                                                        + fits(mail.sameVerdict()
                                                                .in("%")) + ")")
                                                .orElse("no service in " + mail.country() + " takes it")));
            }
        }
        for (BatchPlan batch : plan.batches()) {
            if (batch.keptInVat().likely().si() > 0) {
                row(Label.KEPT, batch.name() + ": " + band(batch.keptInVat()) + " of fibre; strain it and put it by");
            }
            row(
                    Label.PUT_BY,
                    batch.name() + ": " + putBy(batch)
                            + batch.shortage()
                                    .map(one -> "; it may also run short by up to "
                                            + Digits.three(one.upTo().in("kg")) + " kg")
                                    .orElse(""));
        }
        cautions(Label.COME_OUT);
    }

    private String putBy(BatchPlan batch) {
        double trifle = TRIFLE * batch.stock().mass().si();
        if (batch.stockPutBy().likely().si() >= trifle) {
            return band(batch.stockPutBy());
        }
        double most = batch.stockPutBy().high().si();
        return "nothing is planned to be left" + (most < trifle ? "" : ", up to " + two(most) + " kg may be");
    }

    private void days() {
        head(Label.DAYS);
        List<Schedule.Step> steps = plan.schedule().steps();
        form.days(steps.stream()
                .map(step -> new DatedWork(date(step), step.name() + ", " + step.inDays()))
                .toList());
        wrap("", "In all: " + plan.schedule().inDays() + ".");
        wrap(
                "",
                "Hands on: about " + band(plan.workingHours()) + " in all"
                        + (plan.machineHours().si() > 0
                                ? "; beater, pots and press run "
                                        + Digits.three(plan.machineHours().in("h")) + " h besides."
                                : ".")
                        + (plan.ownStepHours().si() > 0
                                ? " Steps of your own: "
                                        + Digits.three(plan.ownStepHours().in("h")) + " h of hands more."
                                : ""));
        cautions(Label.DAYS);
    }

    private static String date(Schedule.Step step) {
        return step.start().map(LocalDate::toString).orElse("-");
    }

    private void lookOut() {
        if (!plan.notices().isEmpty()) {
            head(Label.LOOK_OUT);
            // Warnings first.
            for (Notice.Level level : List.of(Notice.Level.WARNING, Notice.Level.NOTE)) {
                for (Notice notice : plan.notices()) {
                    if (notice.level() == level) {
                        wrap(level == Notice.Level.WARNING ? "! " : "- ", notice.text());
                    }
                }
            }
        }
        List<Sensitivity> first = plan.sensitivity();
        if (!first.isEmpty()) {
            head(Label.MEASURE);
            List<String> named = new ArrayList<>();
            for (Sensitivity one : first) {
                if (named.size() < 3 && !named.contains(one.measurement())) {
                    named.add(one.measurement());
                    wrap(
                            "- ",
                            one.measurement() + ": " + Math.round(100 * one.share()) + " % of the band of the "
                                    + one.widens() + " comes from not knowing it.");
                }
            }
        }
    }

    /** Writes the cautions of the steps of a section. */
    private void cautions(Label section) {
        for (StepCaution caution : plan.cautions()) {
            if (section(caution.step()) == section) {
                wrap("! ", caution.text());
            }
        }
    }

    /** The section a step is printed in; that of the vat is also that of pouring. */
    private static Label section(WorkStep step) {
        return switch (step) {
            case COUNT, WEIGH, SOAK, COOK -> Label.WEIGH;
            case BEAT, DOSE, WET_POWDER -> Label.BEAT;
            case DRY_TRIALS -> Label.FORM;
            case FORM -> Label.VAT;
            case LAY_POSTS, PRESS -> Label.PRESS;
            case DRY_UNDER_WEIGHT, DRY_IN_AIR, DRY_ON_BOARDS -> Label.DRY;
            case SIZE, SORT, TRIM, FOLD -> Label.FINISH;
            case CLEAR_UP -> Label.COME_OUT;
            case CONDITION, PACK -> Label.DAYS;
        };
    }

    private void foot() {
        long weak = plan.assumptionsUsed().stream()
                .filter(a -> a.basis().isUncalibrated())
                .count();
        form.foot(
                "Local codes and licensed practice come before this card.",
                "papermath, assumptions of edition "
                        + plan.studio().assumptions().edition() + ", "
                        + plan.studio().assumptions().own().size() + " of the studio's own; " + weak + " of "
                        + plan.assumptionsUsed().size() + " values uncalibrated.");
    }

    // ------------------------------------------------------------------------------------------------ lines

    private void row(Label label, String text) {
        row(label.text, text);
    }

    private void row(String label, String text) {
        form.row(label, text);
    }

    private void pieces(Label label, Function<PiecePlan, String> cell) {
        pieces(label.text, cell);
    }

    /** Why a stage of no piece is done: once where it is the same for all, else piece by piece. */
    private void reasons(Label label, Function<PiecePlan, Stage<?>> stage) {
        boolean same = plan.pieces().stream()
                        .map(piece -> stage.apply(piece).reason())
                        .distinct()
                        .count()
                == 1;
        for (PiecePlan piece : same ? plan.pieces().subList(0, 1) : plan.pieces()) {
            row(
                    piece == plan.pieces().get(0) ? label.text : "",
                    (same ? "" : piece.name() + ": ") + stage.apply(piece).reason());
        }
    }

    /** Pieces side by side, more than three going on below; what is alike for all of them once. */
    private void pieces(String label, Function<PiecePlan, String> of) {
        List<String> cells = plan.pieces().stream().map(of).toList();
        if (cells.size() > 1 && cells.stream().distinct().count() == 1) {
            if (!cells.get(0).isEmpty()) {
                form.alike(label, cells.get(0) + (cells.get(0).equals("-") ? "" : "  (all)"));
            }
        } else if (!cells.stream().allMatch(String::isEmpty)) {
            form.cells(label, cells);
        }
    }

    private void wrap(String bullet, String text) {
        form.line(bullet, text);
    }

    // ------------------------------------------------------------------------------------------------ figures

    private static String count(int number, String noun) {
        return number + " " + noun + (number == 1 ? "" : "s");
    }

    /** A setting: as rounded to the tool, with the customary unit in brackets where it is wanted. */
    private <Q extends Quantity<Q>> String set(Amount<Q> amount, String customaryCode) {
        return shown(amount) + bracket(amount, customaryCode);
    }

    /** The customary unit in brackets; quarts where there is less than a gallon, nothing below a tenth of an ounce. */
    private <Q extends Quantity<Q>> String bracket(Amount<Q> amount, String customaryCode) {
        String code = customaryCode.equals("gal_us") && amount.in("gal_us") < 1 ? "qt_us" : customaryCode;
        double value = amount.in(code);
        return customary && !(code.equals("oz") && value < LEAST_OUNCES)
                ? " (" + Digits.three(value) + " " + sign(amount.kind(), code) + ")"
                : "";
    }

    /** Millilitres below a litre, tenths of a litre from ten litres on, kilograms from ten on. */
    private static <Q extends Quantity<Q>> Amount<Q> shown(Amount<Q> amount) {
        if (amount.kind() == (Kind<?>) Kinds.VOLUME && amount.si() > 0 && amount.si() < 1e-3) {
            return amount.to("mL");
        }
        if (amount.kind() == (Kind<?>) Kinds.VOLUME && amount.si() >= 1e-2) {
            return amount.kind().of(Math.rint(10 * amount.in("L")) / 10, "L");
        }
        if (amount.kind() == (Kind<?>) Kinds.MASS && amount.si() >= 10) {
            return amount.to("kg");
        }
        return amount;
    }

    private static <Q extends Quantity<Q>> String sign(Kind<Q> kind, String code) {
        return kind.of(1, code).toString().substring(2);
    }

    /** What follows from a setting and is read from no tool that shows more: three digits. */
    private <Q extends Quantity<Q>> String about(Amount<Q> amount, String customaryCode) {
        Amount<Q> shown = shown(amount);
        String unit = shown.toString().substring(shown.toString().indexOf(' '));
        return Digits.three(shown.value()) + unit + bracket(amount, customaryCode);
    }

    /** A stretch of work, in minutes where it is less than an hour. */
    private String spell(Estimate<Time> time) {
        String unit = time.likely().in("h") < 1 ? "min" : "h";
        int digits =
                time.high().si() - time.low().si() > 2 * COARSE * time.likely().si() ? 2 : 3;
        String low = Digits.significant(time.low().in(unit), digits);
        String high = Digits.significant(time.high().in(unit), digits);
        return time.isOpenBelow() || time.isOpenAbove()
                ? band(time)
                : Digits.significant(time.likely().in(unit), digits)
                        + (low.equals(high) ? "" : " (" + low + "–" + high + ")")
                        + " " + unit;
    }

    private String litres(double litres) {
        return set(Kinds.VOLUME.of(litres < 10 ? Math.rint(100 * litres) / 100 : litres, "L"), "gal_us");
    }

    /** A time as a clock has it. */
    private static String clock(Amount<Time> time) {
        long minutes = Math.round(time.in("min"));
        if (minutes < 1) {
            return Digits.three(time.in("s")) + " s";
        }
        String hours = minutes >= 60 ? minutes / 60 + " h" : "";
        return minutes % 60 == 0 ? hours : hours + (hours.isEmpty() ? "" : " ") + minutes % 60 + " min";
    }

    private static <Q extends Quantity<Q>> String size(Amount<Q> width, Amount<Q> height) {
        return half(width.in("mm")) + " × " + half(height.in("mm")) + " mm";
    }

    private static <Q extends Quantity<Q>> String inches(Amount<Q> width, Amount<Q> height) {
        return "(" + sixteenths(width.in("in")) + " × " + sixteenths(height.in("in")) + " in)";
    }

    /** To half a millimetre, as a rule is read. */
    private static String half(double millimetres) {
        return new BigDecimal(Math.rint(2 * millimetres) / 2)
                .setScale(1, RoundingMode.HALF_UP)
                .stripTrailingZeros()
                .toPlainString();
    }

    /** Inches and sixteenths, as a rule is read. */
    private static String sixteenths(double inches) {
        long all = Math.round(16 * inches);
        long part = all % 16;
        int parts = 16;
        while (part > 0 && part % 2 == 0) {
            part /= 2;
            parts /= 2;
        }
        String whole = all >= 16 || part == 0 ? Long.toString(all / 16) : "";
        return part == 0 ? whole : whole + (whole.isEmpty() ? "" : " ") + part + "/" + parts;
    }

    /** A share of pairs that is all of them but for a far tail is not called all. */
    private static String fits(double percent) {
        return percent > MOST_PAIRS ? "over " + MOST_PAIRS + " %" : Digits.three(percent) + " %";
    }

    /** Whole pieces, of which a part is none. */
    private static String whole(Estimate<Dimensionless> good) {
        long low = (long) Math.floor(good.low().si());
        long high = (long) Math.floor(good.high().si());
        return (long) Math.floor(good.likely().si()) + (low == high ? "" : " (" + low + "–" + high + ")");
    }

    /** How long a sheet drains; where nobody can tell, from when to when, and a sheet is timed. */
    private String drains(Estimate<Time> time) {
        boolean tells = time.isOpenBelow()
                || time.isOpenAbove()
                || time.high().si() <= TOO_WIDE * time.low().si();
        return tells
                ? band(time)
                : two(time.low().value()) + "–" + two(time.high().value()) + " "
                        + time.likely()
                                .toString()
                                .substring(time.likely().toString().indexOf(' ') + 1)
                        + ": time the first";
    }

    private static String two(double value) {
        return Digits.significant(value, 2);
    }

    private static String range(double[] values) {
        double low = Arrays.stream(values).min().orElse(0);
        double high = Arrays.stream(values).max().orElse(0);
        return Digits.three(low).equals(Digits.three(high))
                ? Digits.three(low)
                : Digits.three(low) + "–" + Digits.three(high);
    }

    /** A forecast: likely value and band, with as many digits as the band is worth. */
    private <Q extends Quantity<Q>> String band(Estimate<Q> estimate) {
        Amount<Q> likely = estimate.likely();
        String text = likely.toString();
        String unit = text.indexOf(' ') < 0 ? "" : text.substring(text.indexOf(' '));
        double least = estimate.low().value();
        double most = estimate.high().value();
        boolean open = estimate.isOpenBelow() || estimate.isOpenAbove();
        int digits = open || most - least > 2 * COARSE * Math.abs(likely.value()) ? 2 : 3;
        String low = Digits.significant(least, digits);
        String high = Digits.significant(most, digits);
        String middle = Digits.significant(likely.value(), digits);
        if (open) {
            return middle
                    + (!estimate.isOpenAbove()
                            ? " (" + high + " or less)"
                            : !estimate.isOpenBelow() ? " (" + low + " or more)" : "")
                    + unit;
        }
        return middle + (low.equals(high) ? "" : " (" + low + "–" + high + ")") + unit;
    }
}
