package org.papermath.plan;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.Supplier;

import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Volume;

import org.apache.commons.statistics.distribution.NormalDistribution;
import org.papermath.drying.Dryer;
import org.papermath.engine.Accounts;
import org.papermath.engine.BatchFigure;
import org.papermath.engine.CuttingAndFolding;
import org.papermath.engine.DryingSheets;
import org.papermath.engine.Engine;
import org.papermath.engine.FillingVat;
import org.papermath.engine.FormingSheets;
import org.papermath.engine.MakingEnvelopes;
import org.papermath.engine.PieceFigure;
import org.papermath.engine.PieceWork;
import org.papermath.engine.Posts;
import org.papermath.engine.PreparingStock;
import org.papermath.engine.Pressing;
import org.papermath.engine.Settings;
import org.papermath.engine.SizingSheets;
import org.papermath.engine.Values;
import org.papermath.evidence.Scope;
import org.papermath.fibre.Fibre;
import org.papermath.mould.Opening;
import org.papermath.numeric.Rounding;
import org.papermath.order.Order;
import org.papermath.order.Piece;
import org.papermath.order.Recipe;
import org.papermath.order.Studio;
import org.papermath.press.Felts;
import org.papermath.press.Press;
import org.papermath.pulp.Additive;
import org.papermath.pulp.AdditiveDose;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Units;
import org.papermath.mail.MailLimits;

/** Reads the plain numbers of a plan as amounts, estimates and stages. */
final class PlanReading {
    /** Normal quantile of the 95 % point: a band of nine in ten is this many standard deviations to each side. */
    private static final double NINE_IN_TEN = NormalDistribution.of(0, 1).inverseCumulativeProbability(0.95);

    private static final double DAY = 86_400;

    private final Order order;
    private final Studio studio;
    private final Engine engine;
    private final Values likely;
    private final Settings settings;
    private final Estimates numbers;
    private final Accounts accounts;
    private final List<BatchPlan> batches = new ArrayList<>();
    private final List<PiecePlan> pieces = new ArrayList<>();

    PlanReading(Order order, Studio studio, Engine engine, Settings settings, Estimates numbers, Accounts accounts) {
        this.order = order;
        this.studio = studio;
        this.engine = engine;
        this.likely = engine.likely();
        this.settings = settings;
        this.numbers = numbers;
        this.accounts = accounts;
        List<Recipe> recipes = Engine.usedRecipes(order);
        for (int b = 0; b < engine.batches(); b++) {
            batches.add(batch(b, recipes.get(b)));
        }
        for (int p = 0; p < engine.pieces(); p++) {
            pieces.add(piece(p, order.pieces().get(p)));
        }
    }

    List<BatchPlan> batches() {
        return List.copyOf(batches);
    }

    List<PiecePlan> pieces() {
        return List.copyOf(pieces);
    }

    private Amount<Volume> litresOfWater(double mass) {
        return Kinds.VOLUME.ofSi(mass / engine.workshop().waterDensity(), "L");
    }

    // ------------------------------------------------------------------------------------------------ batches

    private BatchPlan batch(int b, Recipe recipe) {
        PreparingStock stage = engine.stock(b);
        PreparingStock.Setting set = settings.stock(b);
        List<Fibre> fibres = recipe.furnish().fibres();
        List<BatchPlan.FibreLine> lines = new ArrayList<>();
        double asBought = 0;
        for (int f = 0; f < fibres.size(); f++) {
            asBought += set.asBought()[f];
            lines.add(new PlannedBatch.PlannedFibreLine(fibres.get(f), grams(stage.share(f) * set.ovenDry()),
                    grams(set.fromHand()[f]), grams(set.asBought()[f])));
        }
        Stage<BatchPlan.Beating> beating;
        if (studio.beater().isEmpty()) {
            beating = Stage.notDone("no-beater", recipe.beating().si() > 0
                    ? "the studio has no beater: get the stuff beaten as the recipe says, or beat it by hand"
                    : "the studio has no beater, and the recipe wants none");
        } else {
            beating = Stage.done(new PlannedBatch.PlannedBeating(studio.beater().get(), set.loads(), grams(set.loadOvenDry()),
                    Arrays.stream(set.asBought()).mapToObj(mass -> grams(mass / set.loads())).toList(),
                    Kinds.VOLUME.ofSi(set.loadWater(), "L"), Kinds.CONSISTENCY.ofSi(stage.beaterConsistency(), "%"),
                    recipe.beating()));
        }
        List<BatchPlan.AdditiveToWeigh> additives = new ArrayList<>();
        for (int a = 0; a < recipe.additives().size(); a++) {
            AdditiveDose dose = recipe.additives().get(a);
            additives.add(new PlannedBatch.PlannedAdditive(dose.additive(), dose.dose(), grams(set.product()[a]),
                    grams(set.product()[a] * set.loads()), Kinds.TIME.of(5, "min")));
        }
        double dilution = set.stock() / set.loads() - set.loadOvenDry() / stage.beaterConsistency();
        BatchPlan.Stock stock = new PlannedBatch.PlannedStock(Kinds.MASS.ofSi(set.stock(), "kg"),
                Kinds.VOLUME.ofSi(set.stock() / set.stockDensity(), "L"),
                Kinds.CONSISTENCY.ofSi(stage.stockConsistency(), "%"),
                dilution > 1e-3 * set.stock() ? Optional.of(litresOfWater(dilution)) : Optional.empty(),
                numbers.of(Kinds.CONSISTENCY, BatchFigure.STOCK_CONSISTENCY, b));
        List<Balance> balances = new ArrayList<>();
        balances.add(PlannedBalance.of("fibre", accounts.fibre(b)));
        balances.add(PlannedBalance.of("water", accounts.water(b)));
        for (int a = 0; a < recipe.additives().size(); a++) {
            balances.add(PlannedBalance.of(recipe.additives().get(a).additive().name(), accounts.additive(b, a)));
        }
        return new PlannedBatch(recipe,
                new PlannedBatch.PlannedFibre(grams(set.ovenDry()), grams(asBought), List.copyOf(lines)),
                new PlannedBatch.PlannedSoak(Kinds.VOLUME.ofSi(set.soakWater(), "L"), Kinds.TIME.ofSi(set.soakTime(), "h")),
                beating, List.copyOf(additives), stock,
                numbers.of(Kinds.SCHOPPER_RIEGLER, BatchFigure.DRAINABILITY, b),
                numbers.of(Kinds.WATER_RETENTION, BatchFigure.WATER_RETENTION, b),
                numbers.of(Kinds.LINEAR_SHRINKAGE, BatchFigure.FREE_SHRINKAGE, b),
                numbers.of(Kinds.MASS, BatchFigure.VAT_FIBRE, b),
                numbers.stockLeft(b), shortage(b),
                numbers.of(Kinds.MASS, BatchFigure.WHITE_WATER, b),
                numbers.of(Kinds.TIME, BatchFigure.HOURS, b),
                List.copyOf(balances));
    }

    /**
     * Told only where it is likely enough to act on. Some of it never shows: with that much less stock, the vat at the
     * end is only a little thinner than its tolerance allows.
     */
    private Optional<BatchPlan.Shortage> shortage(int b) {
        double left = numbers.likely(BatchFigure.STOCK_LEFT, b);
        double low = numbers.low(BatchFigure.STOCK_LEFT, b);
        double deviation = (left - low) / NINE_IN_TEN;
        if (!(deviation > 0)) {
            return Optional.empty();
        }
        double unseen = likely.of(engine.vat(b).tolerance()) * numbers.likely(BatchFigure.VAT_FIBRE, b)
                / numbers.likely(BatchFigure.STOCK_CONSISTENCY, b);
        double chance = NormalDistribution.of(left + unseen, deviation).cumulativeProbability(0);
        return chance < studio.assumptions().si("stock.shortage-told", Scope.GENERAL) ? Optional.empty()
                : Optional.of(new PlannedBatch.PlannedShortage(Kinds.SHARE.ofSi(chance, "%"), Kinds.MASS.ofSi(-low, "kg")));
    }

    private <T> Stage<T> known(PieceFigure figure, int p, String code, String reason, Supplier<T> value) {
        return numbers.isKnown(figure, p) ? Stage.done(value.get()) : Stage.notDone(code, reason);
    }

    private static Amount<Mass> grams(double si) {
        return Kinds.MASS.ofSi(si, "g");
    }

    /** The sides of a sheet, the shorter first. */
    static String sides(double one, double other) {
        return Units.fourDigits(1000 * Math.min(one, other)) + " × " + Units.fourDigits(1000 * Math.max(one, other))
                + " mm";
    }

    private static Amount<Length> mm(double si) {
        return Kinds.LENGTH.ofSi(si, "mm");
    }

    // ------------------------------------------------------------------------------------------------ pieces

    private PiecePlan piece(int p, Piece ordered) {
        PieceWork work = engine.piece(p);
        FormingSheets.Setting sheet = settings.sheet(p);
        FillingVat.Setting vat = settings.vat(p);
        PiecePlan.Counts counts = new PlannedPiece.PlannedCounts(work.ordered(), work.wanted(), sheet.perSheet(),
                sheet.sheets(), work.trials(), numbers.of(Kinds.NUMBER, PieceFigure.GOOD, p));
        PiecePlan.Forming forming = new PlannedPiece.PlannedForming(
                sheet.mould() < 0 ? Optional.empty() : Optional.of(studio.moulds().get(sheet.mould())),
                work.deckleEdge() && !sheet.ownDeckle() || sheet.mould() < 0,
                new Opening(mm(sheet.openingWidth()), mm(sheet.openingHeight())), sheet.perSheet(), sheet.turned(),
                grams(sheet.fibre()), grams(sheet.solids()));
        double density = settings.stock(work.batch()).stockDensity();
        return new PlannedPiece(ordered, ordered.recipe(), counts, forming, vat(p, vat, sheet, density),
                vat.dipped() ? Stage.notDone("has-vat", "the sheets are dipped from the vat")
                        : Stage.done(new PlannedPiece.PlannedPour(Kinds.VOLUME.ofSi(vat.lift() / density, "L"))),
                known(PieceFigure.DRAIN, p, "drain-time-by-stopwatch",
                        "the stuff is too slow, or its drainability not known: time one sheet with a stopwatch",
                        () -> numbers.of(Kinds.TIME, PieceFigure.DRAIN, p)),
                numbers.of(Kinds.LENGTH, PieceFigure.MAT, p), numbers.of(Kinds.MASS, PieceFigure.COUCHED, p),
                posts(p, sheet), pressing(p), numbers.of(Kinds.SOLIDS, PieceFigure.SOLIDS, p), drying(p, work),
                sizing(p), finished(p, ordered), envelope(p, ordered), mail(p, ordered),
                numbers.of(Kinds.TIME, PieceFigure.HOURS, p));
    }

    private Stage<PiecePlan.VatPlan> vat(int p, FillingVat.Setting set, FormingSheets.Setting sheet, double density) {
        if (studio.vat().isEmpty()) {
            return Stage.notDone("no-vat", "the studio has no vat: each sheet is poured");
        }
        if (set.tooWide()) {
            String vat = sides(engine.workshop().vatWidth(), engine.workshop().vatLength());
            return Stage.notDone("vat-too-narrow", "a mould with a sheet of "
                    + sides(sheet.openingWidth(), sheet.openingHeight()) + " does not go into the vat of " + vat
                    + ": each sheet is poured. The largest sheet it takes is " + vat
                    + ", less the rails of the mould");
        }
        if (!set.dipped()) {
            return Stage.notDone("vat-too-small", "one lift takes " + Kinds.VOLUME.ofSi(set.wantedLift() / density, "L")
                    + " of stock, the vat holds " + studio.vat().get().workingVolume()
                    + ": each sheet is poured. A vat of at least " + Kinds.VOLUME.ofSi(set.leastVatVolume(), "L")
                    + " keeps the sheets even");
        }
        List<PiecePlan.Recharge> recharges = new ArrayList<>();
        for (FillingVat.Charge one : set.recharges()) {
            recharges.add(new PlannedPiece.PlannedRecharge((recharges.size() + 1) * set.every(),
                    Kinds.VOLUME.ofSi(one.stock() / density, "L"), litresOfWater(one.water()),
                    litresOfWater(one.bail())));
        }
        int batch = engine.piece(p).batch();
        return Stage.done(new PlannedPiece.PlannedVat(Kinds.CONSISTENCY.ofSi(engine.stock(batch).vatConsistency(), "%"),
                Kinds.VOLUME.ofSi(set.start().stock() / density, "L"), litresOfWater(set.start().water()),
                litresOfWater(set.start().bail()), Kinds.MASS.ofSi(set.lift(), "kg"), set.every(),
                List.copyOf(recharges),
                Kinds.NUMBER.ofSi(numbers.likely(PieceFigure.LIGHTEST, p), "%"),
                Kinds.NUMBER.ofSi(numbers.likely(PieceFigure.HEAVIEST, p), "%")));
    }

    private Stage<PiecePlan.Posts> posts(int p, FormingSheets.Setting sheet) {
        if (studio.felts().isEmpty()) {
            return Stage.notDone("no-felts", "the studio has no felts: couch on cloths or boards as you do");
        }
        Posts.Setting set = settings.posts(p);
        if (set == null) {
            Felts felts = studio.felts().get();
            return Stage.notDone("felts-too-small", "the wet sheet of "
                    + sides(sheet.openingWidth(), sheet.openingHeight()) + " is larger than the felts of "
                    + sides(felts.width().si(), felts.length().si())
                    + ", which take no sheet larger than they are: couch on larger cloths, or use a smaller mould");
        }
        return Stage.done(new PlannedPiece.PlannedPosts(set.sheets(), set.posts(), set.sheets() + 1,
                numbers.of(Kinds.MASS, PieceFigure.POST_MASS, p),
                numbers.of(Kinds.LENGTH, PieceFigure.POST_HEIGHT, p)));
    }

    private Stage<PiecePlan.Pressing> pressing(int p) {
        Pressing.Setting set = settings.press(p);
        if (studio.press().isEmpty()) {
            return Stage.notDone("no-press",
                    "the studio has no press: let the sheets drain, or press them between blotters");
        }
        if (set == null) {
            return Stage.notDone("no-post", "the wet sheet does not lie on the felts, so there is no post to press: let"
                    + " it drain, or press it between blotters");
        }
        Press press = studio.press().get();
        return Stage.done(new PlannedPiece.PlannedPressing(press, Kinds.FORCE.ofSi(set.force(), "kN"),
                Kinds.SHEET_PRESSURE.ofSi(set.pressure(), "kPa"), Kinds.TIME.ofSi(set.time(), "min"),
                press.weakestPart(), set.limited()));
    }

    private Stage<PiecePlan.Drying> drying(int p, PieceWork work) {
        Dryer dryer = work.drying().dryer();
        if (dryer == null) {
            return Stage.notDone("no-dryer", "the studio has no dryer: say how the sheets dry");
        }
        if (!numbers.isKnown(PieceFigure.DRYING, p)) {
            return Stage.notDone("never-dries", "in the air of this room (" + studio.room()
                    + ") the sheets never dry: bring in drier air, or warm it");
        }
        DryingSheets.Setting set = settings.drying(p);
        return Stage.done(new PlannedPiece.PlannedDrying(dryer, set.loads(), set.blotterChanges(),
                numbers.of(Kinds.TIME, PieceFigure.DRYING, p), numbers.of(Kinds.MASS, PieceFigure.EVAPORATED, p)));
    }

    private Stage<PiecePlan.Sizing> sizing(int p) {
        if (!engine.piece(p).sizing().isDone()) {
            return Stage.notDone("no-size", "the recipe has no size bath");
        }
        SizingSheets.Setting set = settings.sizing(p);
        return Stage.done(new PlannedPiece.PlannedSizing(Kinds.VOLUME.ofSi(set == null ? 0 : set.bath(), "L"),
                grams(set == null ? 0 : set.drySize()), litresOfWater(set == null ? 0 : set.taken()),
                numbers.of(Kinds.NUMBER, PieceFigure.SIZE, p),
                known(PieceFigure.DRYING_AGAIN, p, "no-drying", "how the sheets dry is not known",
                        () -> numbers.of(Kinds.TIME, PieceFigure.DRYING_AGAIN, p))));
    }

    private PiecePlan.Finished finished(int p, Piece piece) {
        double scatter = studio.assumptions().find("sheet.scatter-grammage", Scope.of(piece.name(), piece.recipe()))
                .map(found -> found.likelySi()).orElse(0.0);
        String noDensity = "there is no default for the density of one of the fibres: weigh and measure one dry sheet";
        CuttingAndFolding.Setting size = settings.size(p);
        return new PlannedPiece.PlannedFinished(numbers.of(Kinds.LENGTH, PieceFigure.WIDTH, p),
                numbers.of(Kinds.LENGTH, PieceFigure.HEIGHT, p), mm(size.foldedWidth()), mm(size.foldedHeight()),
                numbers.of(Kinds.GRAMMAGE, PieceFigure.GRAMMAGE, p).withScatter(scatter),
                known(PieceFigure.CALIPER, p, "no-density", noDensity,
                        () -> numbers.of(Kinds.LENGTH, PieceFigure.CALIPER, p)),
                numbers.of(Kinds.MASS, PieceFigure.MASS, p).withScatter(scatter),
                known(PieceFigure.PILE, p, "no-density", noDensity,
                        () -> numbers.of(Kinds.LENGTH, PieceFigure.PILE, p)),
                numbers.of(Kinds.LINEAR_SHRINKAGE, PieceFigure.SHRINK_ALONG, p),
                numbers.of(Kinds.LINEAR_SHRINKAGE, PieceFigure.SHRINK_ACROSS, p),
                Kinds.NUMBER.ofSi(numbers.likely(PieceFigure.LOAD, p), "%"));
    }

    private Stage<PiecePlan.EnvelopePlan> envelope(int p, Piece ordered) {
        MakingEnvelopes.Setting set = settings.envelope(p);
        if (set == null) {
            return Stage.notDone("no-envelope", "the piece is no envelope");
        }
        if (!numbers.isKnown(PieceFigure.CLEAR_WIDTH, p)) {
            return Stage.notDone("no-density", "the thickness of the piece that goes in is not known");
        }
        double spread = studio.assumptions().si("sheet.scatter-size", Scope.of(ordered.name(), ordered.recipe()));
        double deviation = spread / NINE_IN_TEN;
        NormalDistribution play = NormalDistribution.of(0, deviation * Math.sqrt(2));
        double fits = play.cumulativeProbability(numbers.likely(PieceFigure.CLEAR_WIDTH, p))
                * play.cumulativeProbability(numbers.likely(PieceFigure.CLEAR_HEIGHT, p));
        return Stage.done(new PlannedPiece.PlannedEnvelope(ordered.style().orElseThrow(), mm(set.blankWidth()),
                mm(set.blankHeight()), mm(set.insideWidth()), mm(set.insideHeight()), mm(set.outsideWidth()),
                mm(set.outsideHeight()), Estimates.signed(Kinds.LENGTH, set.seam(), "mm"),
                numbers.play(PieceFigure.CLEAR_WIDTH, p), numbers.play(PieceFigure.CLEAR_HEIGHT, p),
                Kinds.NUMBER.ofSi(fits, "%")));
    }

    private Stage<PiecePlan.Mailed> mail(int p, Piece ordered) {
        if (ordered.mail().isEmpty()) {
            return Stage.notDone("not-mailed", "the piece is not mailed");
        }
        if (!numbers.isKnown(PieceFigure.MAIL_THICKNESS, p)) {
            return Stage.notDone("no-density", "the thickness of what is mailed is not known");
        }
        MakingEnvelopes.Setting envelope = settings.envelope(p);
        double width = envelope == null ? settings.size(p).foldedWidth() : envelope.outsideWidth();
        double height = envelope == null ? settings.size(p).foldedHeight() : envelope.outsideHeight();
        MailLimits limits = MailLimits.of(ordered.mail().get());
        MailLimits.Verdict verdict = limits.check(mm(width), mm(height),
                mm(numbers.likely(PieceFigure.MAIL_THICKNESS, p)), grams(numbers.likely(PieceFigure.MAIL_MASS, p)),
                order.due().orElse(LocalDate.EPOCH));
        return Stage.done(new PlannedPiece.PlannedMailed(ordered.mail().get(),
                numbers.of(Kinds.MASS, PieceFigure.MAIL_MASS, p),
                numbers.of(Kinds.LENGTH, PieceFigure.MAIL_THICKNESS, p), verdict));
    }

    // ------------------------------------------------------------------------------------------------ the whole

    List<ToBuy> toBuy() {
        List<ToBuy> list = new ArrayList<>();
        Map<String, Double> fibres = new java.util.LinkedHashMap<>();
        Map<String, Double> additives = new java.util.LinkedHashMap<>();
        Map<String, Set<String>> uses = new java.util.LinkedHashMap<>();
        for (BatchPlan batch : batches) {
            for (BatchPlan.FibreLine line : batch.fibre().kinds()) {
                if (line.asBought().si() > 0) {
                    fibres.merge(line.fibre().name(), line.asBought().si(), Double::sum);
                    uses.computeIfAbsent(line.fibre().name(), k -> new java.util.LinkedHashSet<>()).add(batch.name());
                }
            }
            for (BatchPlan.AdditiveToWeigh additive : batch.additives()) {
                additives.merge(additive.additive().name(), additive.productInAll().si(), Double::sum);
                uses.computeIfAbsent(additive.additive().name(), k -> new java.util.LinkedHashSet<>())
                        .add(batch.name());
            }
        }
        fibres.forEach((name, mass) -> list.add(new PlannedToBuy(name, grams(mass),
                "for " + String.join(" and ", uses.get(name)))));
        additives.forEach((name, mass) -> list.add(new PlannedToBuy(name, grams(mass),
                "for " + String.join(" and ", uses.get(name)))));
        return List.copyOf(list);
    }

    Schedule schedule() {
        double day = studio.workingDay().si();
        double beat = 0;
        for (BatchPlan batch : batches) {
            beat += batch.workingHours().likely().si();
        }
        double wet = 0;
        double size = 0;
        double finish = 0;
        double dry = 0;
        double again = 0;
        boolean bath = false;
        for (int p = 0; p < engine.pieces(); p++) {
            PieceWork.Hours of = engine.piece(p).hours(settings, likely);
            wet += of.wet();
            size += of.size();
            finish += of.finish();
            PiecePlan piece = pieces.get(p);
            // What nobody knows makes the sum unknown as well.
            dry += piece.dryingStage().map(drying -> drying.time().likely().si() * drying.loads()).orElse(Double.NaN);
            if (piece.sizingStage().isDone()) {
                bath = true;
                again += settings.drying(p).loads() * piece.sizing().dryAgain().map(time -> time.likely().si()).orElse(Double.NaN);
            }
        }
        boolean sized = order.recipes().stream().anyMatch(recipe -> recipe.sizeBath().isPresent()
                || recipe.additives().stream()
                .anyMatch(dose -> dose.additive().purpose() == Additive.Purpose.INTERNAL_SIZE));
        List<String> names = new ArrayList<>();
        List<OptionalInt> days = new ArrayList<>();
        step(names, days, "order fibre and have it", days("schedule.delivery"));
        step(names, days, "soak", wholeDays(batches.get(0).soak().time().si(), DAY));
        step(names, days, "beat and dose", wholeDays(beat, day));
        boolean presses = pieces.stream().anyMatch(piece -> piece.pressStage().isDone());
        step(names, days, presses ? "form and press" : "form", wholeDays(wet, day));
        step(names, days, "dry", wholeDays(dry, DAY));
        if (bath) {
            step(names, days, "size in the bath", wholeDays(size, day));
            step(names, days, "dry again", wholeDays(again, DAY));
        }
        if (sized) {
            step(names, days, "let the size cure", days("schedule.size-cure"));
        }
        step(names, days, "sort and finish", wholeDays(finish, day));
        step(names, days, "condition under weight", days("schedule.condition"));
        step(names, days, "count and pack", days("schedule.finish"));
        return Schedule.backwards(names, days, order.due().orElse(null));
    }

    private static void step(List<String> names, List<OptionalInt> days, String name, OptionalInt count) {
        names.add(name);
        days.add(count);
    }

    private OptionalInt days(String id) {
        return wholeDays(studio.assumptions().si(id, Scope.GENERAL), DAY);
    }

    /** Rounds up to whole days, at least one; a time that nobody knows has none. */
    private static OptionalInt wholeDays(double time, double day) {
        return Double.isNaN(time) ? OptionalInt.empty()
                : OptionalInt.of((int) Math.max(1, Rounding.ceil(time / day)));
    }

    List<StepCaution> cautions() {
        return new PlanCautions(studio, engine, settings, batches, pieces).all();
    }
}
