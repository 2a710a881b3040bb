package org.papermath.plan;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

import org.papermath.evidence.Assumption;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Notice;
import org.papermath.evidence.Scope;
import org.papermath.fibre.Fibre;
import org.papermath.fibre.Fibres;
import org.papermath.order.Order;
import org.papermath.order.Recipe;
import org.papermath.order.Studio;
import org.papermath.plan.Job.BatchJob;
import org.papermath.plan.Job.PieceJob;
import org.papermath.plan.Settings.BatchSettings;
import org.papermath.plan.Settings.PieceSettings;
import org.papermath.pulp.Additive;
import org.papermath.quantity.Kind;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Units;

/** What a plan should not be read without. */
final class PlanNotices {
    private static final double LIFTING_LIMIT = 23;

    private final Order order;
    private final Studio studio;
    private final Job job;
    private final Settings settings;
    private final Numbers numbers;
    private final MakingPlan plan;
    private final List<Notice> warnings = new ArrayList<>();
    private final List<Notice> notes = new ArrayList<>();

    private PlanNotices(Order order, Studio studio, Job job, Settings settings, Numbers numbers, MakingPlan plan) {
        this.order = order;
        this.studio = studio;
        this.job = job;
        this.settings = settings;
        this.numbers = numbers;
        this.plan = plan;
    }

    static List<Notice> of(Order order, Studio studio, Job job, Settings settings, Numbers numbers, MakingPlan plan) {
        PlanNotices notices = new PlanNotices(order, studio, job, settings, numbers, plan);
        for (int b = 0; b < job.batches.length; b++) {
            notices.batch(b);
        }
        for (int p = 0; p < job.pieces.length; p++) {
            notices.piece(p);
        }
        notices.room();
        notices.basis();
        notices.strangers();
        List<Notice> all = new ArrayList<>(notices.warnings);
        all.addAll(notices.notes);
        return List.copyOf(all);
    }

    /** Notes values of one's own for things that are not here: most often a name is misspelt. */
    private void strangers() {
        if (job.assumptions.containsAll(studio.assumptions().own())) {
            return;
        }
        Set<String> names = names();
        for (Assumption own : studio.assumptions().own()) {
            if (!job.assumptions.contains(own)) {
                own.scope().place().filter(place -> !names.contains(place)).ifPresent(place -> stranger(own, place));
                own.scope().subject().filter(of -> !names.contains(of)).ifPresent(of -> stranger(own, of));
            }
        }
    }

    /** Returns every name a value can be said to hold for. */
    private Set<String> names() {
        Set<String> names = new HashSet<>(Set.of("card", "envelope", "small", "large"));
        studio.beater().ifPresent(one -> names.add(one.name()));
        studio.vat().ifPresent(one -> names.add(one.name()));
        studio.press().ifPresent(one -> names.add(one.name()));
        studio.dryers().forEach(one -> names.add(one.name()));
        studio.onHand().keySet().forEach(fibre -> names.add(fibre.id()));
        Fibres.all().forEach(fibre -> names.add(fibre.id()));
        Assumptions.edition(studio.assumptions().edition()).all()
                .forEach(one -> one.scope().subject().ifPresent(names::add));
        for (Recipe recipe : order.recipes()) {
            names.add(recipe.name());
            recipe.furnish().scope().subject().ifPresent(names::add);
            recipe.furnish().shares().keySet().forEach(fibre -> {
                names.add(fibre.id());
                names.addAll(fibre.kin());
            });
            recipe.additives().forEach(dose -> names.add(dose.additive().name()));
        }
        order.pieces().forEach(piece -> names.add(piece.name()));
        return names;
    }

    private void stranger(Assumption own, String name) {
        note("assumption.stranger", "the value of " + own.key() + " is not used: nothing here is called \"" + name
                + "\". Check the name.", "key", own.key(), "name", name);
    }

    private void warn(String code, String text, Object... arguments) {
        warnings.add(Notice.warning(code, text, arguments));
    }

    private void note(String code, String text, Object... arguments) {
        notes.add(Notice.note(code, text, arguments));
    }

    private double limit(String id) {
        return studio.assumptions().si(id, Scope.GENERAL);
    }

    private static String percent(double fraction) {
        return Units.fourDigits(100 * fraction) + " %";
    }

    private void batch(int b) {
        BatchJob batch = job.batches[b];
        BatchSettings set = settings.batches[b];
        Recipe recipe = plan.batches().get(b).recipe();
        String of = "batch " + batch.name + ": ";
        if (recipe.furnish().isBlend()) {
            note("furnish.blend",
                    of + "drainability, shrinkage and density of the blend are means by mass of its fibres; make one"
                    + " test sheet before the run.", "batch", batch.name);
        }
        if (!batch.kinetics) {
            warn("beating.no-rate", of + "there is no default for how fast one of its fibres beats, so it is taken as "
                    + percent(job.likely[job.general.progress])
                    + " of the way to well beaten. Measure the drainability after a known time"
                    + " and say it in the recipe.", "batch", batch.name);
        }
        if (job.hasBeater) {
            double c = batch.beaterConsistency;
            if (c > limit("beater.consistency-limit")) {
                warn("beater.too-thick", of + percent(c) + " in the beater is more than a studio beater turns ("
                        + percent(limit("beater.consistency-limit")) + "). Take less fibre or more water.", "batch",
                        batch.name,
                        "consistency", c);
            } else if (c > limit("beater.consistency-warning")) {
                warn("beater.thick",
                        of + percent(c) + " in the beater may stop turning over if the stock falls back by gravity"
                        + " (above " + percent(limit("beater.consistency-warning")) + ").", "batch", batch.name,
                        "consistency", c);
            }
            double share = set.loadOvenDry / job.ratedLoad;
            if (share < limit("beater.load-range-low")) {
                note("beater.small-load", of + "each load is " + percent(share)
                        + " of what the beater is rated for; a small load"
                        + " beats faster than the hours of the recipe say.", "batch", batch.name, "share", share);
            }
        } else if (batch.beating > 0) {
            note("beater.none",
                    of + "without a beater the plan takes the stuff as beaten elsewhere the way the recipe says.",
                    "batch", batch.name);
        }
        openBands(of, "batch", batch.name, Out.batch(b), Out.BATCH);
        plan.batches().get(b).shortage().ifPresent(one -> note("stock.may-run-short", of + "if the fibre is moister or"
                + " more is lost in handling than usual, the stock runs short by up to " + one.upTo()
                + " (in about " + Units.fourDigits(Math.rint(one.chance().in("%"))) + " of 100 makings): the last"
                + " sheets are then left out or thinner. Weigh out a little more, or measure the moisture of the"
                + " fibre.", "batch", batch.name, "shortBy", one.upTo().si(), "chance", one.chance().si()));
        Assumption oldest = longestBeating(recipe);
        if (oldest != null && batch.beating > oldest.likelySi()) {
            warn("shrinkage.beyond-record", of + "beaten longer than the trial behind the shrinkage of rag ("
                    + oldest.likely()
                    + " h): beyond it the sheet shrinks faster than the model says.", "batch", batch.name);
        }
        boolean aid = recipe.additives().stream()
                .anyMatch(d -> d.additive().purpose() == Additive.Purpose.RETENTION_AID);
        boolean particles = recipe.additives().stream().anyMatch(d -> d.additive().purpose().isParticle());
        if (particles && !aid) {
            note("additive.no-aid",
                    of + "pigment or filler without a retention aid: about half of it stays in the water and"
                    + " colours the vat.", "batch", batch.name);
        }
        for (int a = 0; a < recipe.additives().size(); a++) {
            if (recipe.additives().get(a).additive().purpose() == Additive.Purpose.CARBONATE) {
                double kept = batch.dose[a] * job.likely[batch.additiveRetention[a]];
                if (kept / (1 + kept) < 0.02) {
                    note("carbonate.below-standard", of + "about " + percent(kept / (1 + kept))
                            + " carbonate stays in the sheet;"
                            + " the standards for permanent paper (ISO 9706, ANSI/NISO Z39.48) ask for 2 %.", "batch",
                            batch.name,
                            "kept", kept / (1 + kept));
                }
            }
        }
    }

    /** What is lifted and poured, and what the steps of the tools do to it. */
    private void vat(PieceJob piece, PieceSettings set, PiecePlan read, String of) {
        if (job.hasVat && !set.dipped) {
            if (set.tooWide) {
                warn("vat.too-narrow", of + read.vatStage().reason() + ".", "piece", piece.name, "sheet",
                        PlanReading.sides(set.openingWidth, set.openingHeight), "vat",
                        PlanReading.sides(job.vatWidth, job.vatLength));
            } else {
                warn("vat.lift-above-vat", of + read.vatStage().reason() + ".", "piece", piece.name, "leastVolume",
                        set.leastVatVolume);
            }
        } else if (set.leastVatVolume > 0) {
            warn("vat.too-small", of + "one lift takes more out of the vat than the band of ±"
                    + percent(job.likely[job.general.vatTolerance])
                    + " allows, even recharged after every sheet. A vat of at least "
                    + Units.fourDigits(set.leastVatVolume * 1000) + " L, or a thicker vat, keeps the band.", "piece",
                    piece.name, "leastVolume", set.leastVatVolume);
        }
        if (Math.abs(set.stepShift) > limit("tool.step-shift")) {
            String tool = set.jugStep ? "jug" : "scale";
            String step = set.jugStep ? studio.jugStep().toString() : studio.scaleStep().toString();
            String finer = set.jugStep ? Kinds.VOLUME.ofSi(set.finerStep, "mL").toString()
                    : Kinds.MASS.ofSi(set.finerStep, "g").toString();
            warn("tool.step-too-coarse", of + "the step of the " + tool + ", " + step + ", makes the sheet "
                    + percent(Math.abs(set.stepShift)) + (set.stepShift < 0 ? " light" : " heavy") + ". Measure to "
                    + finer + ", or " + (set.dipped && set.jugStep
                            && set.evenConsistency <= job.batches[piece.batch].vatConsistency ? "weigh the stock: "
                                    + Kinds.MASS.ofSi(set.wantedStock, "kg") + " at most"
                                    : "thin the " + (set.jugStep ? "stock" : "vat") + " to "
                                            + percent(set.evenConsistency) + ", where the steps come out even")
                    + ".", "piece", piece.name, "tool",
                    tool, "step", step, "shift", set.stepShift, "finer", finer, "consistency", set.evenConsistency);
        }
    }

    /** Says which forecasts have a band without an end, and what to time or measure. */
    private void openBands(String of, String whose, String name, int from, int count) {
        for (int at = from; at < from + count; at++) {
            Kind<?> kind = Out.kind(job, at);
            if (kind != null && (numbers.isOpenAbove(at) || numbers.isOpenBelow(at))) {
                String words = Out.words(job, at);
                note("forecast.open-band", of + "at one end of what is assumed, the " + words
                        + " cannot be told; its band has no end " + (numbers.isOpenAbove(at)
                        ? numbers.isOpenBelow(at) ? "on either side" : "above" : "below")
                        + ". Measure it on a first sheet.", whose, name, "forecast", words);
            }
        }
    }

    private Assumption longestBeating(Recipe recipe) {
        for (Fibre fibre : recipe.furnish().fibres()) {
            var found = studio.assumptions().find("shrinkage.longest-beating", fibre.scope());
            if (found.isPresent()) {
                return found.get();
            }
        }
        return null;
    }

    private void piece(int p) {
        PieceJob piece = job.pieces[p];
        PieceSettings set = settings.pieces[p];
        int at = Out.piece(job, p);
        PiecePlan read = plan.pieces().get(p);
        String of = "piece " + piece.name + ": ";
        openBands(of, "piece", piece.name, at, Out.PIECE);
        vat(piece, set, read, of);
        if (read.forming().deckleToMake()) {
            note(set.mould == Job.NONE ? "mould.none-large-enough" : "deckle.to-make", of + (set.mould == Job.NONE
                    ? "no mould of the studio is large enough; a mould and deckle of " : "a deckle of ")
                    + read.forming().opening() + " has to be made or adapted.", "piece", piece.name);
        }
        if (!job.hasPress) {
            note("press.none",
                    of + "without a press its density is taken at the least pressure the model was made for ("
                    + Units.fourDigits(job.likely[job.general.leastDensityPressure] / 1000)
                    + " kPa, at-model-limit); expect a bulkier sheet.",
                    "piece", piece.name);
        }
        if (set.pressLimited) {
            warn("press.limited", of + "the " + read.press().weakest().name() + " holds the press to "
                    + read.press().force() + ", " + percent(job.likely[job.general.pressAllowed])
                    + " of its rating; the sheet gets "
                    + read.press().pressure() + " instead of "
                    + Units.fourDigits(job.likely[job.general.pressPressure] / 1000)
                    + " kPa.", "piece", piece.name, "part", read.press().weakest().name());
        }
        if (job.hasPress && set.pressure > limit("press.pressure-warning")) {
            warn("press.high", of + Units.fourDigits(set.pressure / 1e6)
                    + " MPa on the sheet is beyond what the model of solids"
                    + " was made for.", "piece", piece.name);
        }
        if (job.hasFelts && !set.felted) {
            warn("felts.too-small", of + read.postsStage().reason() + ".", "piece", piece.name, "sheet",
                    PlanReading.sides(set.openingWidth, set.openingHeight), "felts",
                    PlanReading.sides(job.feltWidth, job.feltLength));
        }
        if (!set.covered) {
            warn("press.platen-too-small", of + "the wet sheet of "
                    + PlanReading.sides(set.openingWidth, set.openingHeight) + " is larger than the platen of "
                    + PlanReading.sides(job.platenWidth, job.platenLength) + ": what lies outside it is not pressed."
                    + " Lay stiff boards of the size of the sheet above and below the post, or press no sheet larger"
                    + " than the platen.", "piece", piece.name, "sheet",
                    PlanReading.sides(set.openingWidth, set.openingHeight), "platen",
                    PlanReading.sides(job.platenWidth, job.platenLength));
        }
        if (job.hasPress && !set.felted) {
            note("felts.none", of + "a press without felts: the solids after pressing are those of a felted sheet.",
                    "piece",
                    piece.name);
        }
        double grammage = numbers.likely(at + Out.GRAMMAGE);
        if (grammage < 0.020) {
            note("sheet.thin", of + "below 20 g/m² thickness is no longer in proportion to grammage.", "piece",
                    piece.name);
        }
        double density = numbers.likely(at + Out.DENSITY);
        if (density < 150 || density > 1200) {
            warn("sheet.density", of + "a density of " + Units.fourDigits(density)
                    + " kg/m³ is unusual for paper; check the"
                    + " thickness, the unit and the recipe.", "piece", piece.name);
        }
        if (Double.isNaN(density)) {
            note("sheet.no-density",
                    of + "the density of one of its fibres has no default; weigh and measure one dry sheet."
                    + (piece.envelopeFor == Job.NONE ? "" : " The envelope is laid out with "
                            + Units.fourDigits(job.likely[job.general.standInDensity]) + " kg/m³."), "piece",
                            piece.name);
        }
        if (!read.drainTimeStage().isDone()) {
            note("drain-time.by-stopwatch", of + read.drainTimeStage().reason() + ".", "piece", piece.name);
        }
        if (numbers.isKnown(at + Out.POST_MASS) && numbers.likely(at + Out.POST_MASS) > LIFTING_LIMIT) {
            warn("post.heavy", of + "a post weighs about " + Units.fourDigits(numbers.likely(at + Out.POST_MASS))
                    + " kg, more than one person should lift (23 kg): two people, a trolley, or smaller posts.",
                    "piece", piece.name);
        }
        if (read.dryingStage().code().equals("never-dries")) {
            warn("drying.never", of + read.dryingStage().reason() + ".", "piece", piece.name);
        }
        if (read.envelopeStage().isDone()) {
            envelope(piece, read, of);
        }
        if (read.mailStage().isDone() && read.mail().verdict().service().isEmpty()) {
            warn("mail.refused", of + read.mail().verdict() + ".", "piece", piece.name);
        }
        read.mailStage().optional().ifPresent(mail -> mail.verdict().notices().forEach(notes::add));
        if (read.piece().sample().isPresent() && numbers.isKnown(at + Out.CALIPER)) {
            double wanted = read.piece().sample().get().thickness().si();
            double differs = numbers.likely(at + Out.CALIPER) / wanted - 1;
            if (Math.abs(differs) > 0.1) {
                note("sample.thickness", of + "at the weight of the sample the sheet comes out "
                        + percent(Math.abs(differs))
                        + (differs > 0 ? " thicker" : " thinner")
                        + " than the sample; press or beat otherwise to match it.",
                        "piece", piece.name, "differs", differs);
            }
        }
        if (!piece.deckleEdge && set.mould != Job.NONE) {
            double lost = Math.max(set.width, set.height) - Math.max(numbers.low(at + Out.WIDTH),
                    numbers.low(at + Out.HEIGHT));
            if (lost > 0.001) {
                note("sheet.may-be-short", of + "if it shrinks more than likely, the sheet comes out up to "
                        + Units.fourDigits(lost * 1000) + " mm too short for its trim. Measure one dry sheet first.",
                        "piece",
                        piece.name);
            }
        }
    }

    private void envelope(PieceJob piece, PiecePlan read, String of) {
        PiecePlan.EnvelopePlan envelope = read.envelope();
        if (envelope.playAlong().likely().si() < 0 || envelope.playAcross().likely().si() < 0) {
            warn("envelope.too-small", of + "what goes in is larger than the inside (play "
                    + envelope.playAlong().likely() + " × "
                    + envelope.playAcross().likely() + ").", "piece", piece.name);
        } else if (envelope.sharePairsFit().si() < 0.99) {
            warn("envelope.tight", of + "with the usual spread of hand-made sizes only " + envelope.sharePairsFit()
                    + " of random pairs fit; give it more clearance.", "piece", piece.name);
        }
        if (envelope.seam().si() < 0.005) {
            warn("envelope.seam", of + "the flaps overlap by " + envelope.seam()
                    + " only; the square has to be larger.", "piece",
                    piece.name);
        }
    }

    private void room() {
        double rh = job.roomHumidity;
        if (rh >= limit("room.mould-stop")) {
            warn("room.mould",
                    "room: at " + percent(rh) + " relative humidity mould grows within days; dry the air before sheets"
                    + " hang in it.", "humidity", rh);
        } else if (rh >= limit("room.mould-caution")) {
            warn("room.mould", "room: at " + percent(rh) + " relative humidity mould may grow; keep it below "
                    + percent(limit("room.mould-caution")) + ".", "humidity", rh);
        } else if (rh >= limit("room.mould-note")) {
            note("room.mould", "room: from " + percent(limit("room.mould-note"))
                    + " relative humidity on, watch for mould.",
                    "humidity", rh);
        }
        if (studio.beater().isEmpty() && studio.vat().isEmpty() && studio.press().isEmpty()
                && studio.dryers().isEmpty()) {
            note("studio.bare", "studio: nothing but its name is known; most stages are not done.");
        }
        if (order.due().isEmpty()) {
            note("order.no-date", "order: it has no date, so the days are counted but not dated.");
        }
    }

    private void basis() {
        long weak = plan.assumptionsUsed().stream().filter(a -> a.basis().isUncalibrated()).count();
        if (weak > 0) {
            note("plan.uncalibrated", weak + " of the " + plan.assumptionsUsed().size()
                    + " values behind this plan are common"
                    + " practice or recalled, not measured here; the bands say how far that may carry.",
                    "uncalibrated", weak,
                    "all", plan.assumptionsUsed().size());
        }
    }
}
