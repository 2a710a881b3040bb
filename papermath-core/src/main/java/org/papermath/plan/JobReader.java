package org.papermath.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;

import javax.measure.quantity.Mass;

import org.papermath.air.Air;
import org.papermath.drying.Dryer;
import org.papermath.equation.Psychrometrics;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Scope;
import org.papermath.fibre.Fibre;
import org.papermath.mould.Mould;
import org.papermath.plan.Job.BatchJob;
import org.papermath.plan.Job.PieceJob;
import org.papermath.plan.Job.Slots;
import org.papermath.press.Press;
import org.papermath.pulp.Additive;
import org.papermath.pulp.AdditiveDose;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Share;
import org.papermath.shape.EnvelopeStyle;

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
                .filter(recipe -> order.pieces().stream().anyMatch(piece -> piece.recipe().equals(recipe.name()))).toList();
        BatchJob[] batches = new BatchJob[used.size()];
        for (int b = 0; b < batches.length; b++) {
            batches[b] = batch(used.get(b));
        }
        PieceJob[] pieces = new PieceJob[order.pieces().size()];
        for (int p = 0; p < pieces.length; p++) {
            pieces[p] = piece(order.pieces().get(p), p, used);
        }
        for (int b = 0; b < batches.length; b++) {
            int batch = b;
            batches[b].pieces = java.util.stream.IntStream.range(0, pieces.length).filter(p -> pieces[p].batch == batch).toArray();
        }
        General general = new General();
        Job job = new Job(slots, batches, pieces);
        general.copyTo(job);
        equipment(job);
        return job;
    }

    private BatchJob batch(Recipe recipe) {
        BatchJob b = new BatchJob();
        b.name = recipe.name();
        List<Fibre> fibres = new ArrayList<>(recipe.furnish().fibres());
        int n = fibres.size();
        Map<Fibre, Amount<Share>> shares = recipe.furnish().shares();
        Map<Fibre, Amount<Mass>> hand = studio.onHand();
        String place = studio.beater().map(beater -> beater.name()).orElse("");
        b.share = new double[n];
        b.onHand = new double[n];
        b.moisture = new int[n];
        b.rate = new int[n];
        b.exponent = new int[n];
        b.retentionUnbeaten = new int[n];
        b.retentionWell = new int[n];
        b.retentionLong = new int[n];
        b.drainabilityWell = new int[n];
        b.drainabilityLong = new int[n];
        b.densityUnbeaten = new int[n];
        b.densityLong = new int[n];
        b.densityLight = new int[n];
        b.shrinkInitial = new int[n];
        b.shrinkLimit = new int[n];
        b.shrinkTime = new int[n];
        b.monolayer = new int[n];
        b.energy = new int[n];
        b.bulk = new int[n];
        b.firstPass = new int[n];
        b.beating = recipe.beating().si();
        b.drainability = recipe.drainability().map(Amount::si).orElse(Double.NaN);
        boolean raw = false;
        // What was measured on the furnish itself stands in for what is known of its fibres.
        Scope whole = on(recipe.furnish().scope(), place);
        Scope pressed = on(recipe.furnish().scope(), studio.press().map(Press::name).orElse(""));
        Assumptions known = studio.assumptions();
        boolean blend = recipe.furnish().isBlend();
        boolean ownShrinkage = blend && known.find("shrinkage.time", whole).isPresent();
        boolean ownDensity = blend && known.find("sheet.density-unbeaten", pressed).isPresent();
        boolean ownSorption = blend && List.of("sorption.monolayer", "sorption.energy", "sorption.bulk").stream()
                .allMatch(id -> known.find(id, recipe.furnish().scope()).isPresent());
        b.shrinkSlope = slots.of("shrinkage.per-water-retention", whole);
        b.shrinkIntercept = slots.of("shrinkage.water-retention-intercept", whole);
        b.shrinkOnset = slots.of("shrinkage.onset", whole);
        b.direction = slots.of("shrinkage.direction-difference", whole);
        b.densityTime = slots.of("sheet.density-beating-time", pressed);
        for (int f = 0; f < n; f++) {
            Fibre fibre = fibres.get(f);
            Scope plain = fibre.scope();
            Scope scope = on(plain, place);
            Scope shrinking = ownShrinkage ? whole : scope;
            Scope dense = ownDensity ? pressed : on(plain, studio.press().map(Press::name).orElse(""));
            Scope sorbing = ownSorption ? recipe.furnish().scope() : plain;
            b.share[f] = shares.get(fibre).si();
            b.onHand[f] = hand.containsKey(fibre) ? hand.get(fibre).si() : 0;
            b.moisture[f] = slots.of("fibre.moisture-as-bought", plain);
            b.rate[f] = b.beating > 0 && Double.isNaN(b.drainability) ? slots.maybe("beating.rate", scope) : Job.NONE;
            b.exponent[f] = b.rate[f] == Job.NONE ? Job.NONE : slots.of("beating.exponent", scope);
            b.kinetics &= b.beating == 0 || b.rate[f] != Job.NONE || !Double.isNaN(b.drainability);
            b.retentionUnbeaten[f] = slots.of("fibre.water-retention-unbeaten", plain);
            b.retentionWell[f] = slots.of("fibre.water-retention-well-beaten", plain);
            b.retentionLong[f] = slots.maybe("fibre.water-retention-long-beaten", plain);
            b.drainabilityWell[f] = slots.of("fibre.drainability-well-beaten", plain);
            b.drainabilityLong[f] = slots.of("fibre.drainability-long-beaten", plain);
            b.densityUnbeaten[f] = slots.maybe("sheet.density-unbeaten", dense);
            b.densityLong[f] = slots.maybe("sheet.density-long-beaten", dense);
            b.densityLight[f] = slots.maybe("sheet.density-lightly-pressed", dense);
            b.shrinkInitial[f] = slots.maybe("shrinkage.initial", shrinking);
            b.shrinkLimit[f] = slots.maybe("shrinkage.limit", shrinking);
            b.shrinkTime[f] = slots.maybe("shrinkage.time", shrinking);
            if (b.shrinkLimit[f] == Job.NONE || b.shrinkTime[f] == Job.NONE) {
                b.shrinkInitial[f] = Job.NONE;
            }
            b.monolayer[f] = slots.of("sorption.monolayer", sorbing);
            b.energy[f] = slots.of("sorption.energy", sorbing);
            b.bulk[f] = slots.of("sorption.bulk", sorbing);
            b.firstPass[f] = slots.of("vat.retention", studio.vat().map(vat -> plain.on(vat.name())).orElse(plain));
            raw |= fibre.sourceClass() == Fibre.SourceClass.BAST && b.beating > 0;
        }
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
            Scope scope = Scope.of(additive.name(), additive.purpose().subject());
            b.additiveRetention[a] = slots.of("additive.retention", aided ? scope.on("with aid") : scope);
            b.particle[a] = additive.purpose().isParticle();
        }
        double usual = studio.assumptions().si("beater.consistency", raw ? Scope.of("raw-bast") : Scope.GENERAL);
        b.beaterConsistency = recipe.beaterConsistency().map(Amount::si).orElse(usual);
        b.stockConsistency = recipe.stockConsistency().map(Amount::si).orElse(b.beaterConsistency);
        b.vatConsistency = recipe.vatConsistency().map(Amount::si)
                .orElseGet(() -> studio.assumptions().si("vat.consistency", Scope.GENERAL));
        if (studio.vat().isPresent() && b.vatConsistency >= b.stockConsistency) {
            throw Refused.of("recipe.vat-thicker-than-stock",
                    "recipe " + recipe.name() + ": the vat at " + percent(b.vatConsistency) + " is to be charged from stock at "
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

    private static String percent(double fraction) {
        return org.papermath.quantity.Units.fourDigits(100 * fraction) + " %";
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
        p.wanted = (int) Engine.ceil(piece.count() * (1 + spare)) + piece.kept();
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
            EnvelopeStyle style = piece.style().orElseThrow();
            p.style = style.ordinal();
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

    private static Scope on(Scope scope, String place) {
        return place.isEmpty() ? scope : scope.on(place);
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

    /** Slots of what holds for the whole job; looked up before the arrays of the job are made. */
    private final class General {
        private final Scope vat = studio.vat().map(tank -> Scope.at(tank.name())).orElse(Scope.GENERAL);
        private final Scope press = studio.press().map(machine -> Scope.at(machine.name())).orElse(Scope.GENERAL);
        private final int handling = slots.of("order.handling-share");
        private final int drainabilityLimit = slots.of("beating.drainability-limit");
        private final int drainabilityUnbeaten = slots.of("beating.drainability-unbeaten");
        private final int progress = slots.of("beating.progress");
        private final int tellingLimit = slots.of("drainage.drainability-limit");
        private final int pouredConsistency = slots.of("vat.poured-consistency");
        private final int largeSheet = slots.of("labour.large-sheet");
        private final int leastDensityPressure = slots.of("sheet.density-least-pressure");
        private final int standInDensity = slots.of("sheet.density-stand-in");
        private final int sizeHeel = slots.of("size.bath-heel");
        private final int sizeTolerance = slots.of("order.size-tolerance");
        private final int waterReading = slots.of("freeness.sr-water-reading");
        private final int resistanceFactor = slots.of("drainage.resistance-factor", vat);
        private final int resistanceExponent = slots.of("drainage.resistance-exponent", vat);
        private final int wireResistance = slots.of("drainage.wire-resistance", vat);
        private final int matRetention = slots.of("drainage.mat-retention", vat);
        private final int endShare = slots.of("drainage.end-share", vat);
        private final int suction = slots.of("drainage.suction-factor", vat);
        private final int couched = slots.of("web.solids-couched", vat);
        private final int wall = slots.of("fibre.cell-wall-density");
        private final int pressFactor = slots.of("press.factor", press);
        private final int pressExponent = slots.of("press.exponent", press);
        private final int pressReference = slots.of("press.reference-pressure", press);
        private final int pressTimeConstant = slots.of("press.time-constant", press);
        private final int pressFloor = slots.of("press.floor", press);
        private final int pressAllowed = slots.of("press.allowed-share", press);
        private final int pressPressure = slots.of("press.pressure", press);
        private final int pressTime = slots.of("labour.press-time", press);
        private final int postHeight = slots.of("press.post-height", press);
        private final int postSheets = slots.of("labour.post-sheets", press);
        private final int feltWater = slots.of("felt.water-before");
        private final int densityExponent = slots.of("sheet.density-exponent", press);
        private final int densitySaturation = slots.of("sheet.density-saturation-pressure", press);
        private final int thinOffset = slots.of("sheet.thin-offset");
        private final int thinDensity = slots.of("sheet.density-lightly-pressed", Scope.of("kozo"));
        private final int sorptionSlope = slots.of("sorption.temperature-slope");
        private final int endMargin = slots.of("drying.end-margin");
        private final int vatTolerance = slots.of("vat.tolerance", vat);
        private final int lift = slots.of("vat.lift-factor", vat);
        private final int soakRatio = slots.of("beater.soak-liquor-ratio");
        private final int soakTime = slots.of("beater.soak-time");
        private final int sizeTaken = slots.of("size.bath-taken");
        private final int blotterSolids = slots.of("web.solids-blotter-exchange");
        private final int beatingLoad = slots.of("labour.beating-load");
        private final int additiveLoad = slots.of("labour.additive-load");
        private final int vatCharge = slots.of("labour.vat-charge");
        private final int partTime = slots.of("labour.part-time");
        private final int dryLoad = slots.of("labour.dry-load");
        private final int sizeTime = slots.of("labour.size");
        private final int sortTime = slots.of("labour.sort");
        private final int trimTime = slots.of("labour.trim");
        private final int foldTime = slots.of("labour.fold");

        private void copyTo(Job job) {
            job.handling = handling;
            job.drainabilityLimit = drainabilityLimit;
            job.drainabilityUnbeaten = drainabilityUnbeaten;
            job.progress = progress;
            job.tellingLimit = tellingLimit;
            job.pouredConsistency = pouredConsistency;
            job.largeSheet = largeSheet;
            job.leastDensityPressure = leastDensityPressure;
            job.standInDensity = standInDensity;
            job.sizeHeel = sizeHeel;
            job.sizeTolerance = sizeTolerance;
            job.waterReading = waterReading;
            job.resistanceFactor = resistanceFactor;
            job.resistanceExponent = resistanceExponent;
            job.wireResistance = wireResistance;
            job.matRetention = matRetention;
            job.endShare = endShare;
            job.suction = suction;
            job.couched = couched;
            job.wall = wall;
            job.pressFactor = pressFactor;
            job.pressExponent = pressExponent;
            job.pressReference = pressReference;
            job.pressTimeConstant = pressTimeConstant;
            job.pressFloor = pressFloor;
            job.pressAllowed = pressAllowed;
            job.pressPressure = pressPressure;
            job.pressTime = pressTime;
            job.postHeight = postHeight;
            job.postSheets = postSheets;
            job.feltWater = feltWater;
            job.densityExponent = densityExponent;
            job.densitySaturation = densitySaturation;
            job.thinOffset = thinOffset;
            job.thinDensity = thinDensity;
            job.sorptionSlope = sorptionSlope;
            job.endMargin = endMargin;
            job.vatTolerance = vatTolerance;
            job.lift = lift;
            job.soakRatio = soakRatio;
            job.soakTime = soakTime;
            job.sizeTaken = sizeTaken;
            job.blotterSolids = blotterSolids;
            job.beatingLoad = beatingLoad;
            job.additiveLoad = additiveLoad;
            job.vatCharge = vatCharge;
            job.partTime = partTime;
            job.dryLoad = dryLoad;
            job.sizeTime = sizeTime;
            job.sortTime = sortTime;
            job.trimTime = trimTime;
            job.foldTime = foldTime;
        }
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
        job.vatCelsius = 20;
        studio.vat().ifPresent(vat -> {
            job.hasVat = true;
            job.vatVolume = vat.workingVolume().si();
            job.vatCelsius = vat.temperature().si() - ZERO_CELSIUS;
        });
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
            job.platenArea = press.platenWidth().si() * press.platenLength().si();
            job.daylight = press.daylight().map(Amount::si).orElse(Double.NaN);
        });
        studio.felts().ifPresent(felts -> {
            job.hasFelts = true;
            job.felts = felts.count();
            job.feltArea = felts.width().si() * felts.length().si();
            job.feltDry = felts.dryGrammage().si();
        });
        Air room = studio.room();
        double pressure = room.pressure().si();
        job.roomCelsius = room.temperature().si() - ZERO_CELSIUS;
        job.roomHumidity = room.humidity().si();
        job.roomRatio = Psychrometrics.humidityRatio(Psychrometrics.vapourPressure(job.roomCelsius, job.roomHumidity), pressure);
        job.roomVolume = Psychrometrics.volume(job.roomCelsius, job.roomRatio, pressure);
        job.roomSaturated = Psychrometrics.saturatedHumidityRatio(
                Psychrometrics.wetBulb(job.roomCelsius, job.roomRatio, pressure), pressure);
        Air reference = order.weighedIn();
        job.referenceCelsius = reference.temperature().si() - ZERO_CELSIUS;
        job.referenceHumidity = reference.humidity().si();
    }
}
