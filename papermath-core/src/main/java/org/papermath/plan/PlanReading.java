package org.papermath.plan;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Time;
import javax.measure.quantity.Volume;

import org.apache.commons.statistics.distribution.NormalDistribution;
import org.papermath.drying.Dryer;
import org.papermath.evidence.Estimate;
import org.papermath.evidence.Scope;
import org.papermath.fibre.Fibre;
import org.papermath.mould.Opening;
import org.papermath.numeric.Rounding;
import org.papermath.order.Order;
import org.papermath.order.Piece;
import org.papermath.order.Recipe;
import org.papermath.order.Studio;
import org.papermath.plan.Job.BatchJob;
import org.papermath.plan.Job.PieceJob;
import org.papermath.plan.Settings.BatchSettings;
import org.papermath.plan.Settings.PieceSettings;
import org.papermath.press.Press;
import org.papermath.pulp.Additive;
import org.papermath.pulp.AdditiveDose;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Units;
import org.papermath.shape.MailLimits;

/** Reads the plain numbers of a plan as amounts, estimates and stages. */
final class PlanReading {
    /** Normal quantile of the 95 % point: a band of nine in ten is this many standard deviations to each side. */
    private static final double NINE_IN_TEN = NormalDistribution.of(0, 1).inverseCumulativeProbability(0.95);

    private final Order order;
    private final Studio studio;
    private final Job job;
    private final Settings settings;
    private final Numbers numbers;
    private final Ledger ledger;
    private final List<BatchPlan> batches = new ArrayList<>();
    private final List<PiecePlan> pieces = new ArrayList<>();

    PlanReading(Order order, Studio studio, Job job, Settings settings, Numbers numbers, Ledger ledger) {
        this.order = order;
        this.studio = studio;
        this.job = job;
        this.settings = settings;
        this.numbers = numbers;
        this.ledger = ledger;
        for (int b = 0; b < job.batches.length; b++) {
            batches.add(batch(b));
        }
        for (int p = 0; p < job.pieces.length; p++) {
            pieces.add(piece(p));
        }
    }

    List<BatchPlan> batches() {
        return List.copyOf(batches);
    }

    List<PiecePlan> pieces() {
        return List.copyOf(pieces);
    }

    private Amount<Volume> litresOfWater(double mass) {
        return Kinds.VOLUME.ofSi(mass / job.waterDensity, "L");
    }

    // ------------------------------------------------------------------------------------------------ batches

    private BatchPlan batch(int b) {
        BatchJob batch = job.batches[b];
        BatchSettings set = settings.batches[b];
        Recipe recipe = order.recipes().stream().filter(r -> r.name().equals(batch.name)).findFirst().orElseThrow();
        int at = Out.batch(b);

        List<Fibre> fibres = recipe.furnish().fibres();
        List<BatchPlan.FibreLine> lines = new ArrayList<>();
        double asBought = 0;
        for (int f = 0; f < fibres.size(); f++) {
            asBought += set.asBought[f];
            lines.add(new BatchPlan.FibreLine(fibres.get(f), grams(batch.fibres[f].share * set.ovenDry),
                    grams(set.fromHand[f]),
                    grams(set.asBought[f])));
        }
        Stage<BatchPlan.Beating> beating;
        if (studio.beater().isEmpty()) {
            beating = Stage.notDone("no-beater", batch.beating > 0
                    ? "the studio has no beater: get the stuff beaten as the recipe says, or beat it by hand"
                    : "the studio has no beater, and the recipe wants none");
        } else {
            beating = Stage.done(new BatchPlan.Beating(studio.beater().get(), set.loads, grams(set.loadOvenDry),
                    java.util.Arrays.stream(set.asBought).mapToObj(mass -> grams(mass / set.loads)).toList(),
                    Kinds.VOLUME.ofSi(set.loadWater, "L"), Kinds.CONSISTENCY.ofSi(batch.beaterConsistency, "%"),
                    recipe.beating()));
        }
        List<BatchPlan.AdditiveToWeigh> additives = new ArrayList<>();
        for (int a = 0; a < recipe.additives().size(); a++) {
            AdditiveDose dose = recipe.additives().get(a);
            additives.add(new BatchPlan.AdditiveToWeigh(dose.additive(), dose.dose(), grams(set.product[a]),
                    grams(set.product[a] * set.loads), Kinds.TIME.of(5, "min")));
        }
        double dilution = set.stock / set.loads - set.loadOvenDry / batch.beaterConsistency;
        BatchPlan.Stock stock = new BatchPlan.Stock(Kinds.MASS.ofSi(set.stock, "kg"),
                Kinds.VOLUME.ofSi(set.stock / set.stockDensity, "L"),
                Kinds.CONSISTENCY.ofSi(batch.stockConsistency, "%"),
                dilution > 1e-3 * set.stock ? Optional.of(litresOfWater(dilution)) : Optional.empty(),
                numbers.estimate(Kinds.CONSISTENCY, at + Out.STOCK_CONSISTENCY, "%"));
        List<Balance> balances = new ArrayList<>();
        balances.add(Balance.of("fibre", ledger.fibre[b]));
        balances.add(Balance.of("water", ledger.water[b]));
        for (int a = 0; a < recipe.additives().size(); a++) {
            balances.add(Balance.of(recipe.additives().get(a).additive().name(), ledger.additives[b][a]));
        }
        return new BatchPlan(recipe,
                new BatchPlan.FibreToWeigh(grams(set.ovenDry), grams(asBought), List.copyOf(lines)),
                new BatchPlan.Soak(Kinds.VOLUME.ofSi(set.soakWater, "L"),
                Kinds.TIME.ofSi(job.likely[job.general.soakTime], "h")),
                beating, List.copyOf(additives), stock,
                numbers.estimate(Kinds.SCHOPPER_RIEGLER, at + Out.DRAINABILITY, "SR"),
                numbers.estimate(Kinds.WATER_RETENTION, at + Out.WATER_RETENTION, "g/g"),
                numbers.estimate(Kinds.LINEAR_SHRINKAGE, at + Out.FREE_SHRINKAGE, "%"),
                numbers.estimate(Kinds.MASS, at + Out.VAT_FIBRE, "g"),
                numbers.surplus(Kinds.MASS, at + Out.STOCK_LEFT, "kg"), shortage(b),
                numbers.estimate(Kinds.MASS, at + Out.WHITE_WATER, "g"),
                numbers.estimate(Kinds.TIME, at + Out.BATCH_HOURS, "h"),
                List.copyOf(balances));
    }

    /**
     * Told only where it is likely enough to act on. Some of it never shows: with that much less stock, the vat at the
     * end is only a little thinner than its tolerance allows.
     */
    private Optional<BatchPlan.Shortage> shortage(int b) {
        int at = Out.batch(b);
        double left = numbers.likely(at + Out.STOCK_LEFT);
        double deviation = (left - numbers.low(at + Out.STOCK_LEFT)) / NINE_IN_TEN;
        if (!(deviation > 0)) {
            return Optional.empty();
        }
        double unseen = job.likely[job.general.vatTolerance] * numbers.likely(at + Out.VAT_FIBRE)
                / numbers.likely(at + Out.STOCK_CONSISTENCY);
        double chance = NormalDistribution.of(left + unseen, deviation).cumulativeProbability(0);
        return chance < studio.assumptions().si("stock.shortage-told", Scope.GENERAL) ? Optional.empty()
                : Optional.of(new BatchPlan.Shortage(Kinds.SHARE.ofSi(chance, "%"),
                        Kinds.MASS.ofSi(-numbers.low(at + Out.STOCK_LEFT), "kg")));
    }

    private <T> Stage<T> known(int at, String code, String reason, java.util.function.Supplier<T> value) {
        return numbers.isKnown(at) ? Stage.done(value.get()) : Stage.notDone(code, reason);
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

    private PiecePlan piece(int p) {
        PieceJob piece = job.pieces[p];
        PieceSettings set = settings.pieces[p];
        BatchJob batch = job.batches[piece.batch];
        BatchSettings batchSet = settings.batches[piece.batch];
        Piece ordered = order.pieces().get(p);
        int at = Out.piece(job, p);

        PiecePlan.Counts counts = new PiecePlan.Counts(piece.ordered, piece.wanted, set.up, set.sheets, piece.trials,
                numbers.estimate(Kinds.NUMBER, at + Out.GOOD, "1"));
        PiecePlan.Forming forming = new PiecePlan.Forming(
                set.mould == Job.NONE ? Optional.empty() : Optional.of(studio.moulds().get(set.mould)),
                piece.deckleEdge && !set.ownDeckle || set.mould == Job.NONE,
                new Opening(mm(set.openingWidth), mm(set.openingHeight)), set.up,
                set.turned, grams(set.fibre), grams(set.solids));

        Stage<PiecePlan.VatPlan> vat;
        Stage<PiecePlan.Pour> pour;
        if (set.dipped) {
            double density = batchSet.stockDensity;
            List<PiecePlan.Recharge> recharges = new ArrayList<>();
            for (int e = 0; e < set.rechargeStock.length; e++) {
                recharges.add(new PiecePlan.Recharge((e + 1) * set.every,
                        Kinds.VOLUME.ofSi(set.rechargeStock[e] / density, "L"), litresOfWater(set.rechargeWater[e]),
                        litresOfWater(set.rechargeBail[e])));
            }
            vat = Stage.done(new PiecePlan.VatPlan(Kinds.CONSISTENCY.ofSi(batch.vatConsistency, "%"),
                    Kinds.VOLUME.ofSi(set.startStock / density, "L"), litresOfWater(set.startWater),
                    litresOfWater(set.startBail), Kinds.MASS.ofSi(set.lift, "kg"), set.every, List.copyOf(recharges),
                    Kinds.NUMBER.ofSi(numbers.likely(at + Out.LIGHTEST), "%"),
                    Kinds.NUMBER.ofSi(numbers.likely(at + Out.HEAVIEST), "%")));
            pour = Stage.notDone("has-vat", "the sheets are dipped from the vat");
        } else {
            vat = !job.hasVat ? Stage.notDone("no-vat", "the studio has no vat: each sheet is poured")
                    : set.tooWide ? Stage.notDone("vat-too-narrow", "a mould with a sheet of "
                            + sides(set.openingWidth, set.openingHeight) + " does not go into the vat of "
                            + sides(job.vatWidth, job.vatLength) + ": each sheet is poured. The largest sheet it"
                            + " takes is " + sides(job.vatWidth, job.vatLength) + ", less the rails of the mould")
                    : Stage.notDone("vat-too-small", "one lift takes "
                            + Kinds.VOLUME.ofSi(set.wantedLift / batchSet.stockDensity, "L") + " of stock, the vat holds "
                            + studio.vat().orElseThrow().workingVolume() + ": each sheet is poured. A vat of at least "
                            + Kinds.VOLUME.ofSi(set.leastVatVolume, "L") + " keeps the sheets even");
            pour = Stage.done(new PiecePlan.Pour(Kinds.VOLUME.ofSi(set.lift / batchSet.stockDensity, "L")));
        }
        return new PiecePlan(ordered, batch.name, counts, forming, vat, pour, drainTime(at),
                numbers.estimate(Kinds.LENGTH, at + Out.MAT, "mm"), numbers.estimate(Kinds.MASS, at + Out.COUCHED, "g"),
                posts(set, at), pressing(set), numbers.estimate(Kinds.SOLIDS, at + Out.SOLIDS, "%"),
                drying(ordered, set, at),
                sizing(batch, set, at), finished(ordered, set, at), envelope(piece, set, ordered, at),
                mail(piece, set, ordered, at),
                numbers.estimate(Kinds.TIME, at + Out.HOURS, "h"));
    }

    private Stage<Estimate<Time>> drainTime(int at) {
        return known(at + Out.DRAIN, "drain-time-by-stopwatch",
                "the stuff is too slow, or its drainability not known: time one sheet with a stopwatch",
                () -> numbers.estimate(Kinds.TIME, at + Out.DRAIN, "s"));
    }

    private Stage<PiecePlan.Posts> posts(PieceSettings set, int at) {
        if (!job.hasFelts) {
            return Stage.notDone("no-felts", "the studio has no felts: couch on cloths or boards as you do");
        }
        if (!set.felted) {
            return Stage.notDone("felts-too-small", "the wet sheet of " + sides(set.openingWidth, set.openingHeight)
                    + " is larger than the felts of " + sides(job.feltWidth, job.feltLength)
                    + ", which take no sheet larger than they are: couch on larger cloths, or use a smaller mould");
        }
        return Stage.done(new PiecePlan.Posts(set.sheetsInPost, set.posts, set.sheetsInPost + 1,
                numbers.estimate(Kinds.MASS, at + Out.POST_MASS, "kg"),
                numbers.estimate(Kinds.LENGTH, at + Out.POST_HEIGHT, "mm")));
    }

    private Stage<PiecePlan.Pressing> pressing(PieceSettings set) {
        if (studio.press().isEmpty()) {
            return Stage.notDone("no-press",
                    "the studio has no press: let the sheets drain, or press them between blotters");
        }
        Press press = studio.press().get();
        return Stage.done(new PiecePlan.Pressing(press, Kinds.FORCE.ofSi(set.force, "kN"),
                Kinds.SHEET_PRESSURE.ofSi(set.pressure, "kPa"), Kinds.TIME.ofSi(set.pressTime, "min"),
                press.weakestPart(),
                set.pressLimited));
    }

    private Optional<Dryer> dryer(Piece piece) {
        return piece.dryer().flatMap(name -> studio.dryers().stream().filter(dryer -> dryer.name().equals(name))
                .findFirst())
                .or(() -> studio.dryers().stream().findFirst());
    }

    private Stage<PiecePlan.Drying> drying(Piece piece, PieceSettings set, int at) {
        Optional<Dryer> dryer = dryer(piece);
        if (dryer.isEmpty()) {
            return Stage.notDone("no-dryer", "the studio has no dryer: say how the sheets dry");
        }
        if (!numbers.isKnown(at + Out.DRYING)) {
            return Stage.notDone("never-dries", "in the air of this room (" + studio.room()
                    + ") the sheets never dry: bring in"
                    + " drier air, or warm it");
        }
        return Stage.done(new PiecePlan.Drying(dryer.get(), set.dryerLoads, set.blotterChanges,
                numbers.estimate(Kinds.TIME, at + Out.DRYING, "h"),
                numbers.estimate(Kinds.MASS, at + Out.EVAPORATED, "kg")));
    }

    private Stage<PiecePlan.Sizing> sizing(BatchJob batch, PieceSettings set, int at) {
        if (Double.isNaN(batch.sizeBath)) {
            return Stage.notDone("no-size", "the recipe has no size bath");
        }
        return Stage.done(new PiecePlan.Sizing(Kinds.VOLUME.ofSi(set.sizeBath, "L"), grams(set.drySize),
                litresOfWater(set.sizeTaken), numbers.estimate(Kinds.NUMBER, at + Out.SIZE, "%"),
                known(at + Out.DRYING_AGAIN, "no-drying", "how the sheets dry is not known",
                        () -> numbers.estimate(Kinds.TIME, at + Out.DRYING_AGAIN, "h"))));
    }

    private PiecePlan.Finished finished(Piece piece, PieceSettings set, int at) {
        double scatter = studio.assumptions().find("sheet.scatter-grammage", Scope.of(piece.name(), piece.recipe()))
                .map(found -> found.likelySi()).orElse(0.0);
        String noDensity = "there is no default for the density of one of the fibres: weigh and measure one dry sheet";
        return new PiecePlan.Finished(numbers.estimate(Kinds.LENGTH, at + Out.WIDTH, "mm"),
                numbers.estimate(Kinds.LENGTH, at + Out.HEIGHT, "mm"), mm(set.foldedWidth), mm(set.foldedHeight),
                numbers.estimate(Kinds.GRAMMAGE, at + Out.GRAMMAGE, "g/m2").withScatter(scatter),
                known(at + Out.CALIPER, "no-density", noDensity,
                () -> numbers.estimate(Kinds.LENGTH, at + Out.CALIPER, "um")),
                numbers.estimate(Kinds.MASS, at + Out.MASS, "g").withScatter(scatter),
                known(at + Out.PILE, "no-density", noDensity,
                () -> numbers.estimate(Kinds.LENGTH, at + Out.PILE, "mm")),
                numbers.estimate(Kinds.LINEAR_SHRINKAGE, at + Out.SHRINK_ALONG, "%"),
                numbers.estimate(Kinds.LINEAR_SHRINKAGE, at + Out.SHRINK_ACROSS, "%"),
                Kinds.NUMBER.ofSi(numbers.likely(at + Out.LOAD), "%"));
    }

    private Stage<PiecePlan.EnvelopePlan> envelope(PieceJob piece, PieceSettings set, Piece ordered, int at) {
        if (piece.envelopeFor == Job.NONE) {
            return Stage.notDone("no-envelope", "the piece is no envelope");
        }
        if (!numbers.isKnown(at + Out.CLEAR_WIDTH)) {
            return Stage.notDone("no-density", "the thickness of the piece that goes in is not known");
        }
        double spread = studio.assumptions().si("sheet.scatter-size", Scope.of(ordered.name(), ordered.recipe()));
        double deviation = spread / NINE_IN_TEN;
        NormalDistribution play = NormalDistribution.of(0, deviation * Math.sqrt(2));
        double fits = play.cumulativeProbability(numbers.likely(at + Out.CLEAR_WIDTH))
                * play.cumulativeProbability(numbers.likely(at + Out.CLEAR_HEIGHT));
        return Stage.done(new PiecePlan.EnvelopePlan(ordered.style().orElseThrow(), mm(set.width), mm(set.height),
                mm(set.envelopeInsideWidth), mm(set.envelopeInsideHeight), mm(set.envelopeOutsideWidth),
                mm(set.envelopeOutsideHeight), Numbers.signed(Kinds.LENGTH, set.envelopeSeam, "mm"),
                numbers.signedEstimate(Kinds.LENGTH, at + Out.CLEAR_WIDTH, "mm"),
                numbers.signedEstimate(Kinds.LENGTH, at + Out.CLEAR_HEIGHT, "mm"), Kinds.NUMBER.ofSi(fits, "%")));
    }

    private Stage<PiecePlan.Mailed> mail(PieceJob piece, PieceSettings set, Piece ordered, int at) {
        if (ordered.mail().isEmpty()) {
            return Stage.notDone("not-mailed", "the piece is not mailed");
        }
        if (!numbers.isKnown(at + Out.MAIL_THICKNESS)) {
            return Stage.notDone("no-density", "the thickness of what is mailed is not known");
        }
        boolean envelope = piece.envelopeFor != Job.NONE;
        double w = envelope ? set.envelopeOutsideWidth : set.foldedWidth;
        double h = envelope ? set.envelopeOutsideHeight : set.foldedHeight;
        MailLimits limits = MailLimits.of(ordered.mail().get());
        MailLimits.Verdict verdict = limits.check(mm(w), mm(h), mm(numbers.likely(at + Out.MAIL_THICKNESS)),
                grams(numbers.likely(at + Out.MAIL_MASS)), order.due().orElse(LocalDate.EPOCH));
        return Stage.done(new PiecePlan.Mailed(ordered.mail().get(),
                numbers.estimate(Kinds.MASS, at + Out.MAIL_MASS, "g"),
                numbers.estimate(Kinds.LENGTH, at + Out.MAIL_THICKNESS, "mm"), verdict));
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
        fibres.forEach((name, mass) -> list.add(new ToBuy(name, grams(mass),
                "for " + String.join(" and ", uses.get(name)))));
        additives.forEach((name, mass) -> list.add(new ToBuy(name, grams(mass),
                "for " + String.join(" and ", uses.get(name)))));
        return List.copyOf(list);
    }

    Schedule schedule() {
        double day = studio.workingDay().si();
        double beat = 0;
        for (BatchPlan batch : batches) {
            beat += batch.workingHours().likely().si();
        }
        double work = 0;
        double dry = 0;
        boolean dries = true;
        for (PiecePlan piece : pieces) {
            work += piece.workingHours().likely().si();
            if (piece.dryingStage().isDone()) {
                double again = piece.sizingStage().map(sizing -> sizing.dryAgain().map(time -> time.likely().si())
                        .orElse(0.0)).orElse(0.0);
                dry += (piece.drying().time().likely().si() + again) * piece.drying().loads();
            } else {
                dries = false;
            }
        }
        boolean sized = order.recipes().stream().anyMatch(recipe -> recipe.sizeBath().isPresent()
                || recipe.additives().stream()
                .anyMatch(dose -> dose.additive().purpose() == Additive.Purpose.INTERNAL_SIZE));
        List<String> names = new ArrayList<>();
        List<Integer> days = new ArrayList<>();
        step(names, days, "order fibre and have it", days("schedule.delivery"));
        step(names, days, "soak", (int) Math.max(1, Rounding.ceil(job.likely[job.general.soakTime] / 86400)));
        step(names, days, "beat and dose", wholeDays(beat, day));
        step(names, days, "form, press, sort and finish", wholeDays(work, day));
        if (dries) {
            step(names, days, "dry", wholeDays(dry, 86400));
        }
        if (sized) {
            step(names, days, "let the size cure", days("schedule.size-cure"));
        }
        step(names, days, "condition under weight", days("schedule.condition"));
        step(names, days, "count and pack", days("schedule.finish"));
        return Schedule.backwards(names, days, order.due().orElse(null));
    }

    private static void step(List<String> names, List<Integer> days, String name, int count) {
        names.add(name);
        days.add(count);
    }

    private int days(String id) {
        return (int) Math.max(1, Rounding.ceil(studio.assumptions().si(id, Scope.GENERAL) / 86400));
    }

    private static int wholeDays(double time, double day) {
        return (int) Math.max(1, Rounding.ceil(time / day));
    }

    List<Caution> cautions() {
        Set<Caution> set = EnumSet.of(Caution.WET_ELECTRICITY, Caution.LIFTING, Caution.MOULD, Caution.DRAIN);
        if (job.hasBeater) {
            set.add(Caution.BEATER_ROLL);
            set.add(Caution.NOISE);
        }
        if (job.hasPress) {
            set.add(Caution.PRESS);
        }
        for (BatchPlan batch : batches) {
            for (BatchPlan.AdditiveToWeigh additive : batch.additives()) {
                set.add(Caution.SAFETY_SHEETS);
                if (additive.additive().purpose().isParticle()) {
                    set.add(Caution.DRY_POWDER);
                }
            }
            if (batch.recipe().sizeBath().isPresent()) {
                set.add(Caution.SIZE_BATH);
            }
        }
        return List.copyOf(set);
    }
}
