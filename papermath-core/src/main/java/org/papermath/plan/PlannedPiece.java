package org.papermath.plan;

import static org.papermath.plan.PlainNumbers.grams;
import static org.papermath.plan.PlainNumbers.mm;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Force;
import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Time;
import javax.measure.quantity.Volume;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.papermath.drying.Dryer;
import org.papermath.engine.CuttingAndFolding;
import org.papermath.engine.DryingSheets;
import org.papermath.engine.FillingVat;
import org.papermath.engine.FormingSheets;
import org.papermath.engine.MakingEnvelopes;
import org.papermath.engine.PieceFigure;
import org.papermath.engine.PieceWork;
import org.papermath.engine.SizingSheets;
import org.papermath.envelope.EnvelopeStyle;
import org.papermath.evidence.Estimate;
import org.papermath.evidence.Scope;
import org.papermath.mail.MailLimits;
import org.papermath.mould.Mould;
import org.papermath.mould.Opening;
import org.papermath.order.Piece;
import org.papermath.press.Felts;
import org.papermath.press.Press;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Consistency;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.LinearShrinkage;
import org.papermath.quantity.SheetPressure;
import org.papermath.quantity.Solids;

/** A piece as it was worked out. */
record PlannedPiece(
        Piece piece,
        String batch,
        Counts counts,
        Forming forming,
        Stage<VatPlan> vatStage,
        Stage<Pour> pourStage,
        Stage<Estimate<Time>> drainTimeStage,
        Estimate<Length> matThickness,
        Estimate<Mass> couchedMass,
        Stage<Posts> postsStage,
        Stage<Pressing> pressStage,
        Estimate<Solids> solids,
        Stage<Drying> dryingStage,
        Stage<Sizing> sizingStage,
        Finished finished,
        Stage<EnvelopePlan> envelopeStage,
        Stage<Mailed> mailStage,
        Estimate<Time> workingHours)
        implements PiecePlan {
    static PiecePlan of(PlainNumbers in, int p) {
        Estimates numbers = in.estimates();
        Piece ordered = in.order().pieces().get(p);
        return new PlannedPiece(
                ordered,
                ordered.recipe(),
                PlannedCounts.of(in, p),
                PlannedForming.of(in, p),
                PlannedVat.of(in, p),
                PlannedPour.of(in, p),
                in.known(
                        PieceFigure.DRAIN,
                        p,
                        "drain-time.by-stopwatch",
                        "the stuff is too slow, or its drainability not known: time one sheet with a stopwatch",
                        () -> numbers.of(Kinds.TIME, PieceFigure.DRAIN, p)),
                numbers.of(Kinds.LENGTH, PieceFigure.MAT, p),
                numbers.of(Kinds.MASS, PieceFigure.COUCHED, p),
                PlannedPosts.of(in, p),
                PlannedPressing.of(in, p),
                numbers.of(Kinds.SOLIDS, PieceFigure.SOLIDS, p),
                PlannedDrying.of(in, p),
                PlannedSizing.of(in, p),
                PlannedFinished.of(in, p, ordered),
                PlannedEnvelope.of(in, p, ordered),
                PlannedMailed.of(in, p, ordered),
                numbers.of(Kinds.TIME, PieceFigure.HOURS, p));
    }

    @Override
    public String toString() {
        return name() + ": " + counts;
    }

    record PlannedCounts(int ordered, int wanted, int perSheet, int sheets, int trials, Estimate<Dimensionless> good)
            implements Counts {
        static Counts of(PlainNumbers in, int p) {
            PieceWork work = in.engine().piece(p);
            FormingSheets.Setting sheet = in.settings().sheet(p);
            return new PlannedCounts(
                    work.ordered(),
                    work.wanted(),
                    sheet.perSheet(),
                    sheet.sheets(),
                    work.trials(),
                    in.estimates().of(Kinds.NUMBER, PieceFigure.GOOD, p));
        }

        @Override
        public String toString() {
            return sheets + " sheets for " + wanted + " good pieces";
        }
    }

    record PlannedForming(
            Optional<Mould> mould,
            boolean deckleToMake,
            Opening opening,
            int perSheet,
            boolean turned,
            Amount<Mass> fibre,
            Amount<Mass> solids)
            implements Forming {
        static Forming of(PlainNumbers in, int p) {
            FormingSheets.Setting sheet = in.settings().sheet(p);
            return new PlannedForming(
                    sheet.mould() < 0
                            ? Optional.empty()
                            : Optional.of(in.studio().moulds().get(sheet.mould())),
                    (in.engine().piece(p).deckleEdge() && !sheet.ownDeckle()) || sheet.mould() < 0,
                    new Opening(mm(sheet.openingWidth()), mm(sheet.openingHeight())),
                    sheet.perSheet(),
                    sheet.turned(),
                    grams(sheet.fibre()),
                    grams(sheet.solids()));
        }

        @Override
        public String toString() {
            return perSheet + " up, opening " + opening;
        }
    }

    record PlannedVat(
            Amount<Consistency> consistency,
            Amount<Volume> stock,
            Amount<Volume> water,
            Amount<Volume> bail,
            Amount<Mass> lift,
            int every,
            List<Recharge> recharges,
            Amount<Dimensionless> lightest,
            Amount<Dimensionless> heaviest)
            implements VatPlan {
        static Stage<VatPlan> of(PlainNumbers in, int p) {
            FillingVat.Setting set = in.settings().vat(p);
            if (in.studio().vat().isEmpty()) {
                return Stage.notDone("vat.none", "the studio has no vat: each sheet is poured");
            }
            if (set.tooWide()) {
                FormingSheets.Setting sheet = in.settings().sheet(p);
                String vat = PlanReading.sides(
                        in.engine().workshop().vatWidth(),
                        in.engine().workshop().vatLength());
                return Stage.notDone(
                        "vat.too-narrow",
                        "a mould with a sheet of "
                                + PlanReading.sides(sheet.openingWidth(), sheet.openingHeight())
                                + " does not go into the vat of " + vat
                                + ": each sheet is poured. The largest sheet it takes"
                                + " is " + vat + ", less the rails of the mould");
            }
            if (!set.dipped()) {
                return Stage.notDone(
                        "vat.lift-above-vat",
                        "one lift takes " + in.litresOfStock(set.wantedLift(), p)
                                + " of stock, the vat holds "
                                + in.studio().vat().get().workingVolume()
                                + ": each sheet is poured. A vat of at least "
                                + Kinds.VOLUME.ofSi(set.leastVatVolume(), "L")
                                + " keeps the sheets even");
            }
            List<Recharge> recharges = new ArrayList<>();
            for (FillingVat.Charge one : set.recharges()) {
                recharges.add(new PlannedRecharge(
                        (recharges.size() + 1) * set.every(),
                        in.litresOfStock(one.stock(), p),
                        in.litresOfWater(one.water()),
                        in.litresOfWater(one.bail())));
            }
            int batch = in.engine().piece(p).batch();
            return Stage.done(new PlannedVat(
                    Kinds.CONSISTENCY.ofSi(in.engine().stock(batch).vatConsistency(), "%"),
                    in.litresOfStock(set.start().stock(), p),
                    in.litresOfWater(set.start().water()),
                    in.litresOfWater(set.start().bail()),
                    Kinds.MASS.ofSi(set.lift(), "kg"),
                    set.every(),
                    List.copyOf(recharges),
                    Kinds.NUMBER.ofSi(in.estimates().likely(PieceFigure.LIGHTEST, p), "%"),
                    Kinds.NUMBER.ofSi(in.estimates().likely(PieceFigure.HEAVIEST, p), "%")));
        }

        @Override
        public String toString() {
            return "lift " + lift + " a sheet; recharge after every " + every + " sheets";
        }
    }

    record PlannedRecharge(int afterSheet, Amount<Volume> stock, Amount<Volume> water, Amount<Volume> bail)
            implements Recharge {
        @Override
        public String toString() {
            return "after sheet " + afterSheet + ": " + stock + " of stock"
                    + (water.si() > 0 ? ", " + water + " of water" : "") + (bail.si() > 0 ? ", bail " + bail : "");
        }
    }

    record PlannedPour(Amount<Volume> stock) implements Pour {
        static Stage<Pour> of(PlainNumbers in, int p) {
            FillingVat.Setting vat = in.settings().vat(p);
            return vat.dipped()
                    ? Stage.notDone("forming.dipped", "the sheets are dipped from the vat")
                    : Stage.done(new PlannedPour(in.litresOfStock(vat.lift(), p)));
        }

        @Override
        public String toString() {
            return "pour " + stock + " of stock a sheet";
        }
    }

    record PlannedPosts(int sheetsInPost, int posts, int felts, Estimate<Mass> mass, Estimate<Length> height)
            implements Posts {
        static Stage<Posts> of(PlainNumbers in, int p) {
            if (in.studio().felts().isEmpty()) {
                return Stage.notDone("felts.none", "the studio has no felts: couch on cloths or boards as you do");
            }
            org.papermath.engine.Posts.Setting set = in.settings().posts(p);
            if (set == null) {
                Felts felts = in.studio().felts().get();
                FormingSheets.Setting sheet = in.settings().sheet(p);
                return Stage.notDone(
                        "felts.too-small",
                        "the wet sheet of "
                                + PlanReading.sides(sheet.openingWidth(), sheet.openingHeight())
                                + " is larger than the felts of "
                                + PlanReading.sides(
                                        felts.width().si(), felts.length().si())
                                + ", which take no sheet larger than they are: couch on larger cloths, or use a smaller mould");
            }
            return Stage.done(new PlannedPosts(
                    set.sheets(),
                    set.posts(),
                    set.sheets() + 1,
                    in.estimates().of(Kinds.MASS, PieceFigure.POST_MASS, p),
                    in.estimates().of(Kinds.LENGTH, PieceFigure.POST_HEIGHT, p)));
        }

        @Override
        public String toString() {
            return posts + " posts of " + sheetsInPost + " sheets, " + felts + " felts";
        }
    }

    record PlannedPressing(
            Press press,
            Amount<Force> force,
            Amount<SheetPressure> pressure,
            Amount<Time> time,
            Press.Part weakest,
            boolean limited)
            implements Pressing {
        static Stage<Pressing> of(PlainNumbers in, int p) {
            org.papermath.engine.Pressing.Setting set = in.settings().press(p);
            if (in.studio().press().isEmpty()) {
                return Stage.notDone(
                        "press.none", "the studio has no press: let the sheets drain, or press them between blotters");
            }
            if (set == null) {
                return Stage.notDone(
                        "press.no-post",
                        "the wet sheet does not lie on the felts, so there is no post to press:"
                                + " let it drain, or press it between blotters");
            }
            Press press = in.studio().press().get();
            return Stage.done(new PlannedPressing(
                    press,
                    Kinds.FORCE.ofSi(set.force(), "kN"),
                    Kinds.SHEET_PRESSURE.ofSi(set.pressure(), "kPa"),
                    Kinds.TIME.ofSi(set.time(), "min"),
                    press.weakestPart(),
                    set.limited()));
        }

        @Override
        public String toString() {
            return force + " (" + pressure + " on the sheet) for " + time;
        }
    }

    record PlannedDrying(Dryer dryer, int loads, int blotterChanges, Estimate<Time> time, Estimate<Mass> water)
            implements Drying {
        static Stage<Drying> of(PlainNumbers in, int p) {
            Dryer dryer = in.engine().piece(p).drying().dryer();
            if (dryer == null) {
                return Stage.notDone("dryer.none", "the studio has no dryer: say how the sheets dry");
            }
            if (!in.estimates().isKnown(PieceFigure.DRYING, p)) {
                return Stage.notDone(
                        "drying.never-saturated",
                        "in the air of this room (" + in.studio().room()
                                + ") the sheets never dry: bring in drier air, or warm it");
            }
            DryingSheets.Setting set = in.settings().drying(p);
            return Stage.done(new PlannedDrying(
                    dryer,
                    set.loads(),
                    set.blotterChanges(),
                    in.estimates().of(Kinds.TIME, PieceFigure.DRYING, p),
                    in.estimates().of(Kinds.MASS, PieceFigure.EVAPORATED, p)));
        }

        @Override
        public String toString() {
            return dryer.name() + ", " + loads + " times, " + time;
        }
    }

    record PlannedSizing(
            Amount<Volume> bath,
            Amount<Mass> drySize,
            Amount<Volume> taken,
            Estimate<Dimensionless> gained,
            Stage<Estimate<Time>> dryAgain)
            implements Sizing {
        static Stage<Sizing> of(PlainNumbers in, int p) {
            if (!in.engine().piece(p).sizing().isDone()) {
                return Stage.notDone("size.none", "the recipe has no size bath");
            }
            SizingSheets.Setting set = in.settings().sizing(p);
            return Stage.done(new PlannedSizing(
                    Kinds.VOLUME.ofSi(set == null ? 0 : set.bath(), "L"),
                    grams(set == null ? 0 : set.drySize()),
                    in.litresOfWater(set == null ? 0 : set.taken()),
                    in.estimates().of(Kinds.NUMBER, PieceFigure.SIZE, p),
                    in.known(
                            PieceFigure.DRYING_AGAIN,
                            p,
                            "drying.not-known",
                            "how the sheets dry is not known",
                            () -> in.estimates().of(Kinds.TIME, PieceFigure.DRYING_AGAIN, p))));
        }

        @Override
        public String toString() {
            return bath + " of bath with " + drySize + " of dry size";
        }
    }

    record PlannedFinished(
            Estimate<Length> width,
            Estimate<Length> height,
            Amount<Length> foldedWidth,
            Amount<Length> foldedHeight,
            Estimate<Grammage> grammage,
            Stage<Estimate<Length>> caliperStage,
            Estimate<Mass> mass,
            Stage<Estimate<Length>> pileStage,
            Estimate<LinearShrinkage> shrinkageAlong,
            Estimate<LinearShrinkage> shrinkageAcross,
            Amount<Dimensionless> load)
            implements Finished {
        private static final String NO_DENSITY =
                "there is no default for the density of one of the fibres: weigh and measure one dry sheet";

        static Finished of(PlainNumbers in, int p, Piece piece) {
            Estimates numbers = in.estimates();
            double scatter = in.asked()
                    .find("sheet.scatter-grammage", Scope.of(piece.name(), piece.recipe()))
                    .map(found -> found.likelySi())
                    .orElse(0.0);
            CuttingAndFolding.Setting size = in.settings().size(p);
            return new PlannedFinished(
                    numbers.of(Kinds.LENGTH, PieceFigure.WIDTH, p),
                    numbers.of(Kinds.LENGTH, PieceFigure.HEIGHT, p),
                    mm(size.foldedWidth()),
                    mm(size.foldedHeight()),
                    numbers.of(Kinds.GRAMMAGE, PieceFigure.GRAMMAGE, p).withScatter(scatter),
                    in.known(
                            PieceFigure.CALIPER,
                            p,
                            "sheet.no-density",
                            NO_DENSITY,
                            () -> numbers.of(Kinds.LENGTH, PieceFigure.CALIPER, p)),
                    numbers.of(Kinds.MASS, PieceFigure.MASS, p).withScatter(scatter),
                    in.known(
                            PieceFigure.PILE,
                            p,
                            "sheet.no-density",
                            NO_DENSITY,
                            () -> numbers.of(Kinds.LENGTH, PieceFigure.PILE, p)),
                    numbers.of(Kinds.LINEAR_SHRINKAGE, PieceFigure.SHRINK_ALONG, p),
                    numbers.of(Kinds.LINEAR_SHRINKAGE, PieceFigure.SHRINK_ACROSS, p),
                    Kinds.NUMBER.ofSi(numbers.likely(PieceFigure.LOAD, p), "%"));
        }

        @Override
        public String toString() {
            return width + " × " + height + ", " + grammage;
        }
    }

    record PlannedEnvelope(
            EnvelopeStyle style,
            Amount<Length> blankWidth,
            Amount<Length> blankHeight,
            Amount<Length> insideWidth,
            Amount<Length> insideHeight,
            Amount<Length> outsideWidth,
            Amount<Length> outsideHeight,
            Amount<Length> seam,
            Estimate<Length> playAlong,
            Estimate<Length> playAcross,
            Amount<Dimensionless> sharePairsFit)
            implements EnvelopePlan {
        static Stage<EnvelopePlan> of(PlainNumbers in, int p, Piece ordered) {
            Estimates numbers = in.estimates();
            MakingEnvelopes.Setting set = in.settings().envelope(p);
            if (set == null) {
                return Stage.notDone("envelope.none", "the piece is no envelope");
            }
            if (!numbers.isKnown(PieceFigure.CLEAR_WIDTH, p)) {
                return Stage.notDone("sheet.no-density", "the thickness of the piece that goes in is not known");
            }
            double spread = in.asked().si("sheet.scatter-size", Scope.of(ordered.name(), ordered.recipe()));
            double deviation = spread / PlainNumbers.NINE_IN_TEN;
            NormalDistribution play = NormalDistribution.of(0, deviation * Math.sqrt(2));
            double fits = play.cumulativeProbability(numbers.likely(PieceFigure.CLEAR_WIDTH, p))
                    * play.cumulativeProbability(numbers.likely(PieceFigure.CLEAR_HEIGHT, p));
            return Stage.done(new PlannedEnvelope(
                    ordered.style().orElseThrow(),
                    mm(set.blankWidth()),
                    mm(set.blankHeight()),
                    mm(set.insideWidth()),
                    mm(set.insideHeight()),
                    mm(set.outsideWidth()),
                    mm(set.outsideHeight()),
                    Estimates.signed(Kinds.LENGTH, set.seam(), "mm"),
                    numbers.play(PieceFigure.CLEAR_WIDTH, p),
                    numbers.play(PieceFigure.CLEAR_HEIGHT, p),
                    Kinds.NUMBER.ofSi(fits, "%")));
        }

        @Override
        public String toString() {
            return style.words() + ", blank " + blankWidth + " × " + blankHeight;
        }
    }

    record PlannedMailed(String country, Estimate<Mass> mass, Estimate<Length> thickness, MailLimits.Verdict verdict)
            implements Mailed {
        static Stage<Mailed> of(PlainNumbers in, int p, Piece ordered) {
            Estimates numbers = in.estimates();
            if (ordered.mailedIn().isEmpty()) {
                return Stage.notDone("mail.none", "the piece is not mailed");
            }
            if (!numbers.isKnown(PieceFigure.MAIL_THICKNESS, p)) {
                return Stage.notDone("sheet.no-density", "the thickness of what is mailed is not known");
            }
            MakingEnvelopes.Setting envelope = in.settings().envelope(p);
            CuttingAndFolding.Setting size = in.settings().size(p);
            double width = envelope == null ? size.foldedWidth() : envelope.outsideWidth();
            double height = envelope == null ? size.foldedHeight() : envelope.outsideHeight();
            MailLimits limits = MailLimits.of(ordered.mailedIn().get());
            MailLimits.Verdict verdict = limits.check(
                    mm(width),
                    mm(height),
                    mm(numbers.likely(PieceFigure.MAIL_THICKNESS, p)),
                    grams(numbers.likely(PieceFigure.MAIL_MASS, p)),
                    in.order().due().orElse(LocalDate.EPOCH));
            return Stage.done(new PlannedMailed(
                    ordered.mailedIn().get(),
                    numbers.of(Kinds.MASS, PieceFigure.MAIL_MASS, p),
                    numbers.of(Kinds.LENGTH, PieceFigure.MAIL_THICKNESS, p),
                    verdict));
        }

        @Override
        public String toString() {
            return country + ": " + verdict;
        }
    }
}
