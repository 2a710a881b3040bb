package org.papermath.plan;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;

import org.papermath.air.Air;
import org.papermath.drying.Dryer;
import org.papermath.equation.Psychrometrics;
import org.papermath.equation.WaterProperties;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Scope;
import org.papermath.fibre.Fibre;
import org.papermath.fibre.Furnish;
import org.papermath.mould.Mould;
import org.papermath.numeric.Rounding;
import org.papermath.order.Order;
import org.papermath.order.Piece;
import org.papermath.order.Recipe;
import org.papermath.order.Studio;
import org.papermath.plan.Job.BatchJob;
import org.papermath.plan.Job.FibreJob;
import org.papermath.plan.Job.PieceJob;
import org.papermath.press.Press;
import org.papermath.pulp.Additive;
import org.papermath.pulp.AdditiveDose;
import org.papermath.pulp.Beater;
import org.papermath.pulp.RetentionModel;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Share;
import org.papermath.quantity.Units;

/** Reads an order and a studio into plain numbers, and looks up every assumption they touch. */
final class JobReader {
    private static final double ZERO_CELSIUS = 273.15;

    private final Order order;
    private final Studio studio;
    private final Slots slots;

    JobReader(Order order, Studio studio) {
        this.order = order;
        this.studio = studio;
        this.slots = new Slots(studio.assumptions());
    }

    Job read() {
        List<Recipe> used = order.recipes().stream()
                .filter(recipe -> order.pieces().stream().anyMatch(piece -> piece.recipe().equals(recipe.name())))
                .toList();
        BatchJob[] batches = new BatchJob[used.size()];
        for (int b = 0; b < batches.length; b++) {
            batches[b] = batch(used.get(b));
        }
        PieceJob[] pieces = new PieceJob[order.pieces().size()];
        for (int p = 0; p < pieces.length; p++) {
            pieces[p] = piece(order.pieces().get(p), p, used);
            requireDensity(order.pieces().get(p), pieces[p], batches[pieces[p].batch]);
        }
        for (int b = 0; b < batches.length; b++) {
            int batch = b;
            batches[b].pieces = IntStream.range(0, pieces.length).filter(p -> pieces[p].batch == batch)
                    .toArray();
        }
        Slots.General general = slots.general(
                studio.vat().map(vat -> Scope.at(vat.name())).orElse(Scope.GENERAL),
                studio.press().map(press -> Scope.at(press.name())).orElse(Scope.GENERAL));
        Job job = new Job(slots, general, batches, pieces);
        equipment(job);
        return job;
    }

    private BatchJob batch(Recipe recipe) {
        BatchJob b = new BatchJob();
        b.name = recipe.name();
        b.beating = recipe.beating().si();
        b.drainability = recipe.drainability().map(Amount::si).orElse(Double.NaN);
        List<Fibre> fibres = recipe.furnish().fibres();
        Map<Fibre, Amount<Share>> shares = recipe.furnish().shares();
        Furnish furnish = recipe.furnish();
        String press = studio.press().map(Press::name).orElse("");
        Scope whole = on(furnish.scope(), beaterName());
        b.shrinkSlope = slots.of("shrinkage.per-water-retention", whole);
        b.shrinkIntercept = slots.of("shrinkage.water-retention-intercept", whole);
        b.shrinkOnset = slots.of("shrinkage.onset", whole);
        b.direction = slots.of("shrinkage.direction-difference", whole);
        b.densityTime = slots.of("sheet.density-beating-time", on(furnish.scope(), press));
        b.fibres = new FibreJob[fibres.size()];
        for (int f = 0; f < b.fibres.length; f++) {
            Fibre fibre = fibres.get(f);
            b.fibres[f] = fibre(furnish, fibre, shares.get(fibre).si(), b);
            b.kinetics &= b.beating == 0 || b.fibres[f].rate != Job.NONE || !Double.isNaN(b.drainability);
        }
        boolean raw = b.beating > 0
                && fibres.stream().anyMatch(fibre -> fibre.sourceClass() == Fibre.SourceClass.BAST);
        List<AdditiveDose> doses = recipe.additives();
        boolean aided = doses.stream().anyMatch(dose -> dose.additive().purpose() == Additive.Purpose.RETENTION_AID);
        b.dose = new double[doses.size()];
        b.active = new double[doses.size()];
        b.additiveRetention = new int[doses.size()];
        b.particle = new boolean[doses.size()];
        for (int a = 0; a < doses.size(); a++) {
            AdditiveDose dose = doses.get(a);
            Additive additive = dose.additive();
            b.dose[a] = dose.dose().si();
            b.active[a] = additive.activeFraction().map(Amount::si).orElse(1.0);
            b.additiveRetention[a] = slots.of("additive.retention", RetentionModel.scope(additive,
                    aided ? RetentionModel.Circumstance.WITH_AID : RetentionModel.Circumstance.PLAIN));
            b.particle[a] = additive.purpose().isParticle();
        }
        double usual = studio.assumptions().si("beater.consistency", raw ? Scope.of("raw-bast") : Scope.GENERAL);
        b.beaterConsistency = recipe.beaterConsistency().map(Amount::si).orElse(usual);
        b.stockConsistency = recipe.stockConsistency().map(Amount::si).orElse(b.beaterConsistency);
        b.vatConsistency = recipe.vatConsistency().map(Amount::si)
                .orElseGet(() -> studio.assumptions().si("vat.consistency", Scope.GENERAL));
        if (studio.vat().isPresent() && b.vatConsistency >= b.stockConsistency) {
            throw Refused.of("recipe.vat-thicker-than-stock",
                    "recipe " + recipe.name() + ": the vat at " + percent(b.vatConsistency)
                    + " is to be charged from stock at "
                            + percent(b.stockConsistency) + "; the stock has to be the thicker of the two.",
                    "recipe", recipe.name(), "vat", b.vatConsistency, "stock", b.stockConsistency);
        }
        if (b.stockConsistency > b.beaterConsistency * 1.000001 && recipe.stockConsistency().isPresent()
                && recipe.beaterConsistency().isEmpty()) {
            b.beaterConsistency = Math.min(b.stockConsistency, usual);
        }
        b.sizeBath = recipe.sizeBath().map(Amount::si).orElse(Double.NaN);
        return b;
    }

    private String beaterName() {
        return studio.beater().map(Beater::name).orElse("");
    }

    private static Scope on(Scope scope, String place) {
        return place.isEmpty() ? scope : scope.on(place);
    }

    /**
     * What was measured on a blend itself stands in for what is known of its fibres, where all that it takes is there.
     */
    private Scope measured(Furnish furnish, String place, Scope otherwise, String... ids) {
        Scope whole = on(furnish.scope(), place);
        return furnish.isBlend() && Arrays.stream(ids).allMatch(id -> studio.assumptions().find(id, whole).isPresent())
                ? whole : otherwise;
    }

    private FibreJob fibre(Furnish furnish, Fibre fibre, double share, BatchJob batch) {
        String press = studio.press().map(Press::name).orElse("");
        Scope plain = fibre.scope();
        Scope beaten = on(plain, beaterName());
        Scope shrinking = measured(furnish, beaterName(), beaten, "shrinkage.time");
        Scope dense = measured(furnish, press, on(plain, press), "sheet.density-unbeaten");
        Scope sorbing = measured(furnish, "", plain, "sorption.monolayer", "sorption.energy", "sorption.bulk");
        FibreJob f = new FibreJob();
        f.share = share;
        f.onHand = studio.onHand().containsKey(fibre) ? studio.onHand().get(fibre).si() : 0;
        f.moisture = slots.of("fibre.moisture-as-bought", plain);
        boolean kinetics = batch.beating > 0 && Double.isNaN(batch.drainability);
        f.rate = kinetics ? slots.maybe("beating.rate", beaten) : Job.NONE;
        f.exponent = f.rate == Job.NONE ? Job.NONE : slots.of("beating.exponent", beaten);
        f.retentionUnbeaten = slots.of("fibre.water-retention-unbeaten", plain);
        f.retentionWell = slots.of("fibre.water-retention-well-beaten", plain);
        f.retentionLong = slots.maybe("fibre.water-retention-long-beaten", plain);
        f.drainabilityWell = slots.of("fibre.drainability-well-beaten", plain);
        f.drainabilityLong = slots.of("fibre.drainability-long-beaten", plain);
        f.densityUnbeaten = slots.maybe("sheet.density-unbeaten", dense);
        f.densityLong = slots.maybe("sheet.density-long-beaten", dense);
        f.densityLight = slots.maybe("sheet.density-lightly-pressed", dense);
        f.shrinkInitial = slots.maybe("shrinkage.initial", shrinking);
        f.shrinkLimit = slots.maybe("shrinkage.limit", shrinking);
        f.shrinkTime = slots.maybe("shrinkage.time", shrinking);
        if (f.shrinkLimit == Job.NONE || f.shrinkTime == Job.NONE) {
            f.shrinkInitial = Job.NONE;
        }
        f.monolayer = slots.of("sorption.monolayer", sorbing);
        f.energy = slots.of("sorption.energy", sorbing);
        f.bulk = slots.of("sorption.bulk", sorbing);
        f.firstPass = slots.of("vat.retention", studio.vat().map(vat -> plain.on(vat.name())).orElse(plain));
        return f;
    }

    private static String percent(double fraction) {
        return Units.fourDigits(100 * fraction) + " %";
    }

    private PieceJob piece(Piece piece, int index, List<Recipe> used) {
        PieceJob p = new PieceJob();
        Assumptions known = studio.assumptions();
        p.name = piece.name();
        p.index = index;
        for (int b = 0; b < used.size(); b++) {
            if (used.get(b).name().equals(piece.recipe())) {
                p.batch = b;
            }
        }
        boolean envelope = piece.envelopeFor().isPresent();
        Scope scope = Scope.of(piece.name(), piece.recipe(), envelope ? "envelope" : "card");
        p.ordered = piece.count();
        double spare = piece.spare().map(Amount::si).orElseGet(() -> known.si("order.spare-share", scope));
        p.wanted = (int) Rounding.ceil(piece.count() * (1 + spare)) + piece.kept();
        p.trials = piece.trials().orElseGet(() -> (int) Math.rint(known.si("order.trial-sheets", scope)));
        p.width = piece.width().map(Amount::si).orElse(Double.NaN);
        p.height = piece.height().map(Amount::si).orElse(Double.NaN);
        p.grammage = piece.grammage().map(Amount::si).orElse(Double.NaN);
        p.caliper = piece.caliper().map(Amount::si).orElse(Double.NaN);
        piece.sample().ifPresent(sample -> {
            p.sampleMass = sample.mass().si();
            p.sampleArea = sample.width().si() * sample.height().si();
        });
        p.folds = piece.folds();
        p.deckleEdge = piece.edge() == Piece.Edge.DECKLE;
        p.trim = piece.trim().map(Amount::si).orElseGet(() -> known.si("order.trim", scope));
        p.gap = piece.gap().map(Amount::si).orElse(0.0);
        p.inserts = piece.inserts();
        if (envelope) {
            String inside = piece.envelopeFor().orElseThrow();
            for (int i = 0; i < order.pieces().size(); i++) {
                if (order.pieces().get(i).name().equals(inside)) {
                    p.envelopeFor = i;
                }
            }
            p.style = piece.style().orElseThrow();
            p.clearance = piece.clearance().map(Amount::si).orElseGet(() -> known.si("envelope.clearance", scope));
            p.sideFlap = known.si("envelope.side-flap", scope);
            p.flapShare = known.si("envelope.square-flap", scope);
            p.seam = known.si("envelope.seam", scope);
        }
        if (envelope || piece.folds() > 0) {
            p.rejectFolding = slots.of("reject.folding", scope);
        }
        p.rejectForming = slots.of("reject.forming", scope);
        p.rejectPressing = slots.of("reject.pressing", scope);
        p.rejectDrying = slots.of("reject.drying", scope);
        p.rejectSizing = slots.of("reject.sizing", scope);
        p.rejectCutting = slots.of("reject.cutting", scope);
        p.sheetTimeSmall = slots.of("labour.sheet-time", Scope.of(piece.name(), "small"));
        p.sheetTimeLarge = slots.of("labour.sheet-time", Scope.of(piece.name(), "large"));
        Scope measured = Scope.of(piece.name(), piece.recipe());
        Dryer dryer = dryer(piece);
        if (dryer != null) {
            p.capacity = dryer.capacity();
            p.restraint = slots.of("restraint.share", Scope.of(dryer.name(), dryer.restraint()));
            measured = measured.on(dryer.name());
            dryingSlots(p, dryer);
        }
        p.measuredAlong = slots.maybe("shrinkage.measured-along", measured);
        p.measuredAcross = slots.maybe("shrinkage.measured-across", measured);
        p.measuredSolids = slots.maybe("web.solids-pressed", measured);
        p.measuredMoisture = slots.maybe("sheet.moisture-conditioned", measured);
        p.measuredDensity = slots.maybe("sheet.density-measured", measured);
        return p;
    }

    /** What a sheet of a wanted thickness is to weigh cannot be said without its density. */
    private static void requireDensity(Piece piece, PieceJob job, BatchJob batch) {
        boolean known = job.measuredDensity != Job.NONE || Arrays.stream(batch.fibres).allMatch(FibreJob::hasDensity);
        if (!known && piece.caliper().isPresent()) {
            throw Refused.of("piece.no-density", "piece " + piece.name() + ": a thickness of " + piece.caliper().get()
                    + " is ordered, but for the density of one of the fibres of \"" + piece.recipe()
                    + "\" there is no default. Weigh and measure one dry sheet and give its density, or order a"
                    + " grammage.", "piece", piece.name(), "recipe", piece.recipe(), "member", "caliper");
        }
    }

    /** What the drying time rests on, as measured on this dryer where it was. */
    private void dryingSlots(PieceJob p, Dryer dryer) {
        Scope scope = Scope.at(dryer.name());
        if (dryer instanceof Dryer.FanStack stack) {
            p.dryerKind = Job.FAN_STACK;
            p.freeAir = stack.freeAirFlow().si();
            p.fanEfficiency = slots.of("drying.fan-efficiency", scope);
            p.deliveredShare = slots.of("drying.delivered-share", scope);
            p.criticalRatio = slots.of("drying.critical-ratio", scope);
        } else if (dryer instanceof Dryer.Blotters) {
            p.dryerKind = Job.BLOTTERS;
            p.blotterKept = slots.of("drying.blotter-kept", scope);
            p.blotterHours = slots.of("drying.blotter-hours", scope);
        } else {
            p.dryerKind = Job.BOARDS;
            if (dryer instanceof Dryer.Loft loft) {
                p.dryerKind = Job.LOFT;
                p.spur = loft.sheetsInSpur();
            }
            p.filmStill = slots.of("drying.film-still", scope);
            p.radiative = slots.of("drying.radiative", scope);
            p.lewis = slots.of("drying.lewis", scope);
            p.loftTail = slots.of("drying.loft-tail", scope);
        }
    }

    private Dryer dryer(Piece piece) {
        if (piece.dryer().isPresent()) {
            String wanted = piece.dryer().get();
            return studio.dryers().stream().filter(dryer -> dryer.name().equals(wanted)).findFirst()
                    .orElseThrow(() -> Refused.of("piece.no-dryer",
                            "piece " + piece.name() + ": the dryer \"" + wanted + "\" is not in the studio, which has: "
                                    + studio.dryers().stream().map(Dryer::name).toList() + ".",
                            "piece", piece.name(), "dryer", wanted));
        }
        return studio.dryers().isEmpty() ? null : studio.dryers().get(0);
    }

    private void equipment(Job job) {
        job.scale = studio.scaleStep().si();
        job.fineScale = studio.fineScaleStep().si();
        job.jug = studio.jugStep().si();
        studio.beater().ifPresent(beater -> {
            job.hasBeater = true;
            job.trough = beater.trough().si();
            job.ratedLoad = beater.ratedLoad().si();
        });
        // Without a vat the stuff is poured from water of the usual room.
        job.vatCelsius = 20;
        studio.vat().ifPresent(vat -> {
            job.hasVat = true;
            job.vatVolume = vat.workingVolume().si();
            job.vatWidth = vat.width().map(Amount::si).orElse(Double.NaN);
            job.vatLength = vat.length().map(Amount::si).orElse(Double.NaN);
            job.vatCelsius = vat.temperature().si() - ZERO_CELSIUS;
        });
        job.waterDensity = WaterProperties.density(job.vatCelsius);
        job.waterViscosity = WaterProperties.viscosity(job.vatCelsius);
        int n = studio.moulds().size();
        job.mouldWidth = new double[n];
        job.mouldHeight = new double[n];
        for (int m = 0; m < n; m++) {
            Mould mould = studio.moulds().get(m);
            job.mouldWidth[m] = mould.deckle().opening().width().si();
            job.mouldHeight[m] = mould.deckle().opening().height().si();
        }
        studio.press().ifPresent(press -> {
            job.hasPress = true;
            job.weakest = press.weakestPart().rating().si();
            job.platenWidth = press.platenWidth().si();
            job.platenLength = press.platenLength().si();
            job.daylight = press.daylight().map(Amount::si).orElse(Double.NaN);
        });
        studio.felts().ifPresent(felts -> {
            job.hasFelts = true;
            job.felts = felts.count();
            job.feltWidth = felts.width().si();
            job.feltLength = felts.length().si();
            job.feltDry = felts.dryGrammage().si();
        });
        Air room = studio.room();
        double pressure = room.pressure().si();
        job.roomCelsius = room.temperature().si() - ZERO_CELSIUS;
        job.roomHumidity = room.humidity().si();
        job.roomRatio = Psychrometrics.humidityRatio(
                Psychrometrics.vapourPressure(job.roomCelsius, job.roomHumidity), pressure);
        job.roomVolume = Psychrometrics.volume(job.roomCelsius, job.roomRatio, pressure);
        job.roomSaturated = Psychrometrics.saturatedHumidityRatio(
                Psychrometrics.wetBulb(job.roomCelsius, job.roomRatio, pressure), pressure);
        Air reference = order.weighedIn();
        job.referenceCelsius = reference.temperature().si() - ZERO_CELSIUS;
        job.referenceHumidity = reference.humidity().si();
    }
}
