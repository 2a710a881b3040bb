package org.papermath.plan;

import org.papermath.equation.Beating;
import org.papermath.equation.Density;
import org.papermath.equation.Drainage;
import org.papermath.equation.Drying;
import org.papermath.equation.EnvelopeBlanks;
import org.papermath.equation.Freeness;
import org.papermath.equation.Moisture;
import org.papermath.equation.PieceLayout;
import org.papermath.equation.PressForce;
import org.papermath.equation.Pressing;
import org.papermath.equation.Shrinkage;
import org.papermath.equation.Sorption;
import org.papermath.equation.VatBalance;
import org.papermath.equation.WaterProperties;
import org.papermath.equation.WetWeb;
import org.papermath.plan.Job.BatchJob;
import org.papermath.plan.Job.PieceJob;
import org.papermath.plan.Settings.BatchSettings;
import org.papermath.plan.Settings.PieceSettings;

/**
 * The path of every piece from weighed fibre to finished card, in plain numbers of coherent SI: settings from values of the
 * assumptions, and forecasts from settings and values. Pure functions; no text, no boxing.
 *
 * <p>A forecast that cannot be made is marked as not a number here, and comes out of the plan as a stage that is not done.
 */
final class Engine {
    /** Keeps 220.0000000001 sheets from becoming 221. */
    private static final double GUARD = 1e-9;

    /** The temperature the sorption sets are stated at, °C. */
    private static final double SORPTION_CELSIUS = 23;

    /** The steps in which a press is set, N. */
    private static final double FORCE_STEP = 500;

    /** The steps in which a lift is told, kg. */
    private static final double LIFT_STEP = 0.01;

    /** Layers of paper an envelope adds to what is in it: front, back and a seam. */
    static final int ENVELOPE_LAYERS = 3;

    /** What is calculated once for a batch from the values of the assumptions. */
    static final class State {
        double drainability;
        double waterRetention;
        double freeShrinkage;
        double density;
        double referenceRatio;
        double roomRatio;
        double retention;
        double load;
        double particleLoad;
        double sizeGain;
        double[] additiveRetention = {};
    }

    private final Job job;
    private final double waterDensity;
    private final double viscosity;

    Engine(Job job) {
        this.job = job;
        this.waterDensity = WaterProperties.density(job.vatCelsius);
        this.viscosity = WaterProperties.viscosity(job.vatCelsius);
    }

    // ------------------------------------------------------------------------------------------------ state of a batch

    State state(BatchJob batch, double[] v) {
        State s = new State();
        double srLimit = v[job.drainabilityLimit];
        double srStart = v[job.drainabilityUnbeaten];
        double sr = 0;
        double wrv = 0;
        double free = 0;
        double specific = 0;
        double reference = 0;
        double room = 0;
        double middle = 0;
        double retention = 0;
        for (int f = 0; f < batch.share.length; f++) {
            double share = batch.share[f];
            double own;
            if (!Double.isNaN(batch.drainability)) {
                own = batch.drainability;
            } else if (batch.rate[f] != Job.NONE) {
                own = Beating.schopperRiegler(batch.beating, srStart, srLimit, v[batch.rate[f]], v[batch.exponent[f]]);
            } else {
                own = batch.beating == 0 ? srStart : srStart + v[job.progress] * (v[batch.drainabilityWell[f]] - srStart);
            }
            sr += share * own;
            double held = waterRetention(batch, f, own, srStart, v);
            wrv += share * held;
            free += share * (batch.shrinkInitial[f] != Job.NONE
                    ? Shrinkage.freeByTime(v[batch.shrinkInitial[f]], v[batch.shrinkLimit[f]], v[batch.shrinkTime[f]],
                            batch.beating)
                    : Shrinkage.freeByRetention(held, v[batch.shrinkSlope], v[batch.shrinkIntercept], 0, 0.35));
            specific += share / density(batch, f, v);
            double m0 = v[batch.monolayer[f]];
            double c = v[batch.energy[f]];
            double k = v[batch.bulk[f]];
            middle += share * Sorption.gab(0.5, m0, c, k);
            reference += share * Sorption.gab(job.referenceHumidity, m0, c, k);
            room += share * Sorption.gab(job.roomHumidity, m0, c, k);
            retention += share * v[batch.firstPass[f]];
        }
        s.drainability = sr;
        s.waterRetention = wrv;
        s.freeShrinkage = free;
        s.density = 1 / specific;
        double slope = v[job.sorptionSlope];
        s.referenceRatio = Sorption.atTemperatureInProportion(reference, middle, slope, job.referenceCelsius, SORPTION_CELSIUS);
        s.roomRatio = Sorption.atTemperatureInProportion(room, middle, slope, job.roomCelsius, SORPTION_CELSIUS);
        s.retention = retention;
        s.additiveRetention = new double[batch.dose.length];
        for (int a = 0; a < batch.dose.length; a++) {
            s.additiveRetention[a] = v[batch.additiveRetention[a]];
            double load = batch.dose[a] * s.additiveRetention[a] / retention;
            s.load += load;
            if (batch.particle[a]) {
                s.particleLoad += load;
            }
        }
        s.sizeGain = Double.isNaN(batch.sizeBath) ? 0 : v[job.sizeTaken] * batch.sizeBath / waterDensity;
        return s;
    }

    private double waterRetention(BatchJob batch, int f, double sr, double srStart, double[] v) {
        boolean longKnown = batch.retentionLong[f] != Job.NONE;
        return Beating.waterRetention(sr, srStart, v[batch.retentionUnbeaten[f]], v[batch.drainabilityWell[f]],
                v[batch.retentionWell[f]], longKnown ? v[batch.drainabilityLong[f]] : Double.NaN,
                longKnown ? v[batch.retentionLong[f]] : Double.NaN);
    }

    private double density(BatchJob batch, int f, double[] v) {
        if (batch.densityUnbeaten[f] != Job.NONE && batch.densityLong[f] != Job.NONE) {
            return Density.ofBeating(v[batch.densityUnbeaten[f]], v[batch.densityLong[f]], batch.beating, v[batch.densityTime]);
        }
        return batch.densityLight[f] != Job.NONE ? v[batch.densityLight[f]] : Double.NaN;
    }

    // ------------------------------------------------------------------------------------------------ state of a piece

    double measured(int slot, double otherwise, double[] v) {
        return slot == Job.NONE ? otherwise : v[slot];
    }

    /** Conditioned mass over oven-dry solids; minerals hold no water, a measured moisture is of the whole sheet. */
    private double conditioned(PieceJob piece, State s, double[] v) {
        if (piece.measuredMoisture != Job.NONE) {
            return 1 + Moisture.ratioOfWetBasis(v[piece.measuredMoisture]);
        }
        return 1 + s.referenceRatio * (1 + s.load - s.particleLoad) / (1 + s.load);
    }

    /** Fills along and across. */
    private void shrinkage(PieceJob piece, State s, double pressedRatio, double endRatio, double[] v, double[] both) {
        double restraint = piece.restraint == Job.NONE ? 0 : v[piece.restraint];
        double onset = v[job.batches[piece.batch].shrinkOnset];
        double start = Math.max(pressedRatio, onset);
        double half = Shrinkage.halfDifference(s.freeShrinkage, v[job.batches[piece.batch].direction]);
        double along = s.freeShrinkage - half;
        double across = s.freeShrinkage + half;
        double step = (Shrinkage.share(endRatio, onset) - Shrinkage.share(start, onset)) * (1 - restraint);
        both[0] = measured(piece.measuredAlong, along * step, v);
        both[1] = measured(piece.measuredAcross, across * step, v);
    }

    private double pressedRatio(PieceJob piece, State s, double grammage, double pressure, double time, double[] v) {
        if (piece.measuredSolids != Job.NONE) {
            return Moisture.ratioOfSolids(v[piece.measuredSolids]);
        }
        double couched = Moisture.ratioOfSolids(v[job.couched]);
        if (pressure > 0) {
            double equilibrium = Pressing.equilibriumRatio(s.waterRetention, pressure, v[job.pressFactor], v[job.pressReference],
                    v[job.pressExponent], v[job.pressFloor]);
            return Pressing.ratioAfter(couched, equilibrium,
                    Pressing.timeConstant(v[job.pressTimeConstant], grammage, s.waterRetention), time);
        }
        return piece.dryerKind == Job.BLOTTERS ? Math.min(couched, Moisture.ratioOfSolids(v[job.blotterSolids])) : couched;
    }

    private double sheetDensity(PieceJob piece, State s, double pressure, double[] v) {
        if (piece.measuredDensity != Job.NONE) {
            return v[piece.measuredDensity];
        }
        return Density.ofPressure(s.density, Math.max(pressure, v[job.leastDensityPressure]), v[job.pressReference],
                v[job.densitySaturation], v[job.densityExponent]);
    }

    /** Where the density of a fibre is not known an envelope still has to be laid out. */
    private double known(double density, double[] v) {
        return Double.isNaN(density) ? v[job.standInDensity] : density;
    }

    private double caliper(double grammage, double density, double[] v) {
        return grammage < 0.010 ? Density.thinSheetCaliper(grammage, v[job.thinOffset], v[job.thinDensity]) : Density.caliper(grammage, density);
    }

    double yieldOfSheets(PieceJob piece, double[] v) {
        double yield = 1 - v[piece.rejectForming];
        if (job.hasPress) {
            yield *= 1 - v[piece.rejectPressing];
        }
        if (piece.dryerKind != Job.NO_DRYER) {
            yield *= 1 - v[piece.rejectDrying];
        }
        if (!Double.isNaN(job.batches[piece.batch].sizeBath)) {
            yield *= 1 - v[piece.rejectSizing];
        }
        return yield;
    }

    double yieldOfPieces(PieceJob piece, double[] v) {
        double yield = piece.deckleEdge ? 1 : 1 - v[piece.rejectCutting];
        return piece.rejectFolding == Job.NONE ? yield : yield * (1 - v[piece.rejectFolding]);
    }

    // ------------------------------------------------------------------------------------------------ settings

    Settings decide(double[] v) {
        Settings settings = new Settings(job.batches.length, job.pieces.length);
        State[] states = new State[job.batches.length];
        for (int b = 0; b < states.length; b++) {
            states[b] = state(job.batches[b], v);
        }
        for (PieceJob piece : job.pieces) {
            if (piece.envelopeFor == Job.NONE) {
                form(piece, settings, states, v);
            }
        }
        for (PieceJob piece : job.pieces) {
            if (piece.envelopeFor != Job.NONE) {
                form(piece, settings, states, v);
            }
        }
        for (int b = 0; b < states.length; b++) {
            furnish(b, settings, states[b], v);
        }
        for (PieceJob piece : job.pieces) {
            finish(piece, settings.pieces[piece.index], states[piece.batch], v);
        }
        return settings;
    }

    /** Size, opening, sheets to pull, oven-dry solids of a sheet, press setting. */
    private void form(PieceJob piece, Settings settings, State[] states, double[] v) {
        PieceSettings set = settings.pieces[piece.index];
        State s = states[piece.batch];
        double density = sheetDensity(piece, s, job.hasPress ? v[job.pressPressure] : 0, v);
        double target = target(piece, s, density, v);
        if (piece.envelopeFor == Job.NONE) {
            set.width = piece.width;
            set.height = piece.height;
        } else {
            envelope(piece, settings, states, target / known(density, v), v);
        }
        fold(piece, set);

        double endRatio = s.roomRatio + v[job.endMargin];
        double[] shrink = new double[2];
        // Only sheets taken out of the press below the onset of shrinkage would shrink less, so the couched ratio will do here.
        shrinkage(piece, s, Moisture.ratioOfSolids(v[job.couched]), endRatio, v, shrink);
        double pieceYield = yieldOfSheets(piece, v) * yieldOfPieces(piece, v);
        opening(piece, set, shrink, pieceYield, v[job.sizeTolerance]);

        double areaFactor = (1 - shrink[0]) * (1 - shrink[1]);
        double wet = set.openingWidth * set.openingHeight;
        set.solids = target / conditioned(piece, s, v) / (1 + s.sizeGain) * wet * areaFactor;
        set.fibre = set.solids / (1 + s.load);
        set.sheets = (int) ceil(piece.wanted / (set.up * pieceYield)) + piece.trials;

        if (job.hasPress) {
            double loaded = PressForce.loadedArea(wet, job.platenArea);
            double allowed = v[job.pressAllowed] * job.weakest;
            double wish = PressForce.force(v[job.pressPressure], loaded);
            set.pressLimited = wish > allowed * (1 + GUARD);
            double force = Math.min(wish, allowed);
            double stepped = Math.floor(force / FORCE_STEP + GUARD) * FORCE_STEP;
            set.force = stepped > 0 ? stepped : force;
            set.pressure = PressForce.pressure(set.force, loaded);
            set.pressTime = v[job.pressTime];
        }
    }

    private double target(PieceJob piece, State s, double density, double[] v) {
        if (!Double.isNaN(piece.grammage)) {
            return piece.grammage;
        }
        if (!Double.isNaN(piece.caliper)) {
            return piece.caliper * density;
        }
        // A sample is weighed in the air of the studio: back to oven-dry, then to the air of the order.
        double solids = piece.sampleMass / (1 + s.roomRatio) / piece.sampleArea;
        return solids * conditioned(piece, s, v);
    }

    private static void fold(PieceJob piece, PieceSettings set) {
        double w = set.width;
        double h = set.height;
        for (int i = 0; i < piece.folds; i++) {
            if (w >= h) {
                w /= 2;
            } else {
                h /= 2;
            }
        }
        set.foldedWidth = w;
        set.foldedHeight = h;
    }

    private void envelope(PieceJob piece, Settings settings, State[] states, double paper, double[] v) {
        PieceJob held = job.pieces[piece.envelopeFor];
        PieceSettings inside = settings.pieces[piece.envelopeFor];
        State heldState = states[held.batch];
        double heldDensity = sheetDensity(held, heldState, inside.pressure, v);
        double heldCaliper = target(held, heldState, heldDensity, v) / known(heldDensity, v);
        PieceSettings set = settings.pieces[piece.index];
        double filling = heldCaliper * (1 << held.folds) * piece.inserts;
        double long0 = Math.max(inside.foldedWidth, inside.foldedHeight);
        double short0 = Math.min(inside.foldedWidth, inside.foldedHeight);
        EnvelopeBlanks.Blank blank = switch (piece.style) {
            case 0 -> EnvelopeBlanks.sideSeam(long0, short0, filling, piece.clearance, paper, piece.sideFlap, 0, 0,
                    piece.flapShare * (short0 + filling + piece.clearance), 1);
            case 1 -> EnvelopeBlanks.diamond(long0, short0, filling, piece.clearance, paper, piece.seam);
            case 2 -> EnvelopeBlanks.wallet(long0, short0, filling, piece.clearance, paper, piece.sideFlap, 0,
                    piece.flapShare * (short0 + filling + piece.clearance));
            default -> EnvelopeBlanks.openEnd(long0, short0, filling, piece.clearance, paper, piece.seam, piece.seam,
                    piece.flapShare * (short0 + filling + piece.clearance));
        };
        set.filling = filling;
        set.envelopeInsideWidth = blank.insideWidth();
        set.envelopeInsideHeight = blank.insideHeight();
        set.envelopeOutsideWidth = blank.outsideWidth();
        set.envelopeOutsideHeight = blank.outsideHeight();
        set.envelopeSeam = blank.seam();
        set.width = blank.width();
        set.height = blank.height();
        set.blankAreaShare = blank.area() / (blank.width() * blank.height());
        if (!Double.isNaN(piece.width)) {
            set.envelopeSeam = EnvelopeBlanks.diamondSeam(Math.min(piece.width, piece.height),
                    EnvelopeBlanks.panel(blank.insideWidth(), paper), EnvelopeBlanks.panel(blank.insideHeight(), paper));
            set.width = piece.width;
            set.height = piece.height;
            set.blankAreaShare = 1;
        }
    }

    /** The opening: one's own rim for a deckle edge, the best of the moulds for cut edges, or one to be made. */
    private void opening(PieceJob piece, PieceSettings set, double[] shrink, double pieceYield, double tolerance) {
        double trim = piece.deckleEdge ? 0 : piece.trim;
        double wide = set.width + 2 * trim;
        double high = set.height + 2 * trim;
        // Along is the long side of the mould; a piece lies with its long side along, or turned.
        double longSide = Math.max(wide, high);
        double shortSide = Math.min(wide, high);
        double needAlong = Shrinkage.wetLength(longSide, shrink[0]);
        double needAcross = Shrinkage.wetLength(shortSide, shrink[1]);
        set.up = 1;
        set.rowAlong = 1;
        set.rowAcross = 1;
        set.turned = false;
        set.mould = Job.NONE;
        double best = Double.POSITIVE_INFINITY;
        for (int m = 0; m < job.mouldWidth.length; m++) {
            double along = Math.max(job.mouldWidth[m], job.mouldHeight[m]);
            double across = Math.min(job.mouldWidth[m], job.mouldHeight[m]);
            PieceLayout.Layout layout = PieceLayout.best(across, along, needAcross, needAlong,
                    Shrinkage.wetLength(longSide, shrink[1]), Shrinkage.wetLength(shortSide, shrink[0]), piece.gap, piece.gap);
            if (layout.count() == 0 && !(piece.deckleEdge && isNear(along, needAlong, tolerance)
                    && isNear(across, needAcross, tolerance))) {
                continue;
            }
            // The mould that takes the least wet area for all the sheets, trials with them; of several, the first.
            int up = piece.deckleEdge ? 1 : layout.count();
            double area = along * across * (piece.deckleEdge ? 1 : ceil(piece.wanted / (up * pieceYield)) + piece.trials);
            boolean fits = piece.deckleEdge && isNear(along, needAlong, tolerance) && isNear(across, needAcross, tolerance);
            if (fits && !set.ownDeckle || area < best * (1 - GUARD) && fits == set.ownDeckle) {
                best = area;
                set.mould = m;
                set.ownDeckle = fits;
                if (!piece.deckleEdge || fits) {
                    set.up = up;
                    set.rowAcross = piece.deckleEdge ? 1 : layout.across();
                    set.rowAlong = piece.deckleEdge ? 1 : layout.along();
                    set.turned = !piece.deckleEdge && layout.turned();
                    set.openingHeight = along;
                    set.openingWidth = across;
                }
            }
        }
        if (piece.deckleEdge && !set.ownDeckle || set.mould == Job.NONE) {
            set.openingHeight = roundTo(needAlong, 1e-4);
            set.openingWidth = roundTo(needAcross, 1e-4);
        }
    }

    private static boolean isNear(double owned, double needed, double tolerance) {
        return Math.abs(owned - needed) <= tolerance * needed;
    }

    /** Fibre, loads, doses, stock, vat charge, lifts and recharges of a batch. */
    private void furnish(int index, Settings settings, State s, double[] v) {
        BatchJob batch = job.batches[index];
        BatchSettings set = settings.batches[index];
        double c = batch.stockConsistency;
        set.stockDensity = WaterProperties.stockDensity(c, v[job.wall], waterDensity);
        double used = job.hasVat ? planVat(batch, set, settings, s, c, v) : planPours(batch, set, settings, s, c);
        set.ovenDry = used * c / v[job.handling];

        double capacity = job.hasBeater ? Math.min(job.ratedLoad,
                batch.beaterConsistency * job.trough * WaterProperties.stockDensity(batch.beaterConsistency, v[job.wall],
                        waterDensity)) : Double.POSITIVE_INFINITY;
        set.loads = Math.max(1, (int) ceil(set.ovenDry / capacity));
        int n = batch.share.length;
        set.fromHand = new double[n];
        set.asBought = new double[n];
        double weighed = 0;
        double bought = 0;
        for (int f = 0; f < n; f++) {
            double need = batch.share[f] * set.ovenDry;
            set.fromHand[f] = Math.min(batch.onHand[f], need);
            double rest = Moisture.massAtWetBasis(need - set.fromHand[f], v[batch.moisture[f]]);
            // Weighed load by load, each rounded up to the scale.
            set.asBought[f] = set.loads * ceilTo(rest / set.loads, job.scale);
            weighed += set.fromHand[f] + Moisture.ovenDryOfWetBasis(set.asBought[f], v[batch.moisture[f]]);
            bought += set.fromHand[f] + set.asBought[f];
        }
        set.loadOvenDry = weighed / set.loads;
        set.loadWater = Math.max(0, roundTo((weighed / batch.beaterConsistency - bought) / set.loads / waterDensity, 1e-4));
        set.soakWater = roundTo(v[job.soakRatio] * weighed, 1e-4);
        set.product = new double[batch.dose.length];
        double additives = 0;
        for (int a = 0; a < batch.dose.length; a++) {
            double product = batch.dose[a] * set.loadOvenDry / batch.active[a];
            double step = product < 20 * job.fineScale ? job.fineScale / 10 : job.fineScale;
            set.product[a] = Math.max(step, roundTo(product, step));
            additives += set.product[a] * set.loads;
        }
        // The water that makes up the stock is measured in, so its mass is a setting; what the fibre really holds is not.
        set.stock = Math.max(weighed / c, bought + additives);
    }

    /** What the vat holds while a run goes on. */
    private final class Tank {
        private final double full;
        private final State state;
        private final double consistency;
        private final double[] inStock;
        private final double[] additive;
        private double fibre;
        private double mass;
        private double used;
        private double white;

        Tank(double full, State state, double consistency, double[] inStock) {
            this.full = full;
            this.state = state;
            this.consistency = consistency;
            this.inStock = inStock;
            this.additive = new double[inStock.length];
        }

        /** Stock to add so that the vat, back at its mark, holds so much fibre; in steps of the jug. */
        double stockFor(double wantFibre, double stockDensity) {
            double lost = mass > 0 ? (1 - state.retention) * fibre / mass : 0;
            double stock = Math.max(0, (wantFibre - fibre + lost * (mass - full)) / (consistency - lost));
            return roundTo(stock / stockDensity, job.jug) * stockDensity;
        }

        /**
         * Adds stock and brings the level back to the mark with water, or by bailing through the sieve, which keeps back what the
         * mould keeps back. Returns the water added, below zero where water was bailed.
         */
        double recharge(double stock, Ledger ledger, int batch) {
            fibre += stock * consistency;
            for (int a = 0; a < additive.length; a++) {
                additive[a] += stock * inStock[a];
            }
            mass += stock;
            used += stock;
            double over = mass - full;
            double bail = Math.max(0, over);
            double share = bail / mass;
            double fibreOut = fibre * share * (1 - state.retention);
            double solidsOut = fibreOut;
            fibre -= fibreOut;
            white += fibreOut;
            for (int a = 0; a < additive.length; a++) {
                double gone = additive[a] * share * (1 - state.additiveRetention[a]);
                additive[a] -= gone;
                solidsOut += gone;
                if (ledger != null) {
                    ledger.bailedAdditive(batch, a, gone);
                }
            }
            if (ledger != null) {
                ledger.charge(batch, Math.max(0, -over), bail, fibreOut, solidsOut);
            }
            mass = full;
            return -over;
        }

        /** Pulls some sheets; the masses go to the arrays from the place given. */
        void pull(int count, double lifted, double couched, double[] sheets, double[][] carried, int from) {
            double[] some = new double[count];
            double[][] someCarried = new double[additive.length][count];
            VatBalance.Contents after = VatBalance.run(new VatBalance.Contents(fibre, mass), lifted, state.retention, couched,
                    VatBalance.Recharge.NONE, some, additive, state.additiveRetention, new double[additive.length], someCarried);
            fibre = after.fibre();
            mass = after.stock();
            System.arraycopy(some, 0, sheets, from, count);
            for (int a = 0; a < additive.length; a++) {
                System.arraycopy(someCarried[a], 0, carried[a], from, count);
            }
        }
    }

    /** Plans the run at the vat and returns the stock it takes. */
    private double planVat(BatchJob batch, BatchSettings set, Settings settings, State s, double c, double[] v) {
        double full = job.vatVolume * WaterProperties.stockDensity(batch.vatConsistency, v[job.wall], waterDensity);
        double[] inStock = new double[batch.dose.length];
        for (int a = 0; a < inStock.length; a++) {
            inStock[a] = c * batch.dose[a];
        }
        Tank tank = new Tank(full, s, c, inStock);
        for (int p : batch.pieces) {
            PieceSettings ps = settings.pieces[p];
            double lifted = roundTo(VatBalance.liftedOfSheet(ps.fibre, s.retention, batch.vatConsistency) / v[job.lift], LIFT_STEP);
            ps.lift = Math.max(LIFT_STEP, lifted);
            double actual = ps.lift * v[job.lift];
            double part = s.retention * actual / full;
            double inBand = VatBalance.sheetsInBand(v[job.vatTolerance], full, s.retention, actual);
            if (inBand < 1) {
                set.vatTooSmall = true;
                set.leastVatVolume = Math.max(set.leastVatVolume, job.vatVolume / inBand);
            }
            ps.every = (int) Math.max(1, Math.floor(inBand + GUARD));
            // The mean of a run of sheets that thin out by the same factor each is to be the target.
            double thinned = 1 - Math.pow(Math.max(0, 1 - part), ps.every);
            double wantFibre = batch.vatConsistency * full * part * ps.every / thinned;
            ps.startStock = tank.stockFor(wantFibre, set.stockDensity);
            level(tank.recharge(ps.startStock, null, 0), ps, -1);

            int events = Math.max(0, (ps.sheets - 1) / ps.every);
            ps.rechargeStock = new double[events];
            ps.rechargeWater = new double[events];
            ps.rechargeBail = new double[events];
            double[] sheets = new double[ps.sheets];
            double[][] carried = new double[inStock.length][ps.sheets];
            for (int e = 0; e <= events; e++) {
                int from = e * ps.every;
                tank.pull(Math.min(ps.every, ps.sheets - from), actual, v[job.couched], sheets, carried, from);
                if (e < events) {
                    ps.rechargeStock[e] = tank.stockFor(wantFibre, set.stockDensity);
                    level(tank.recharge(ps.rechargeStock[e], null, 0), ps, e);
                }
            }
        }
        return tank.used;
    }

    /** Writes down about how much water brings the level to the mark; the mark itself is the setting. */
    private void level(double water, PieceSettings ps, int event) {
        double step = Math.max(job.jug, 1e-4) * waterDensity;
        double add = roundTo(Math.max(0, water), step);
        double bail = roundTo(Math.max(0, -water), step);
        if (event < 0) {
            ps.startWater = add;
            ps.startBail = bail;
        } else {
            ps.rechargeWater[event] = add;
            ps.rechargeBail[event] = bail;
        }
    }

    /** Without a vat each sheet is poured by itself; what the wire does not hold runs away. */
    private double planPours(BatchJob batch, BatchSettings set, Settings settings, State s, double c) {
        double used = 0;
        for (int p : batch.pieces) {
            PieceSettings ps = settings.pieces[p];
            ps.lift = Math.max(job.jug, roundTo(ps.fibre / s.retention / c / set.stockDensity, job.jug)) * set.stockDensity;
            used += ps.lift * ps.sheets;
        }
        return used;
    }

    /** Posts, dryer loads, blotter changes and the size bath, once the sheets are known. */
    private void finish(PieceJob piece, PieceSettings set, State s, double[] v) {
        if (job.hasFelts) {
            int post = Math.min(job.felts - 1, (int) v[job.postSheets]);
            if (!Double.isNaN(job.daylight)) {
                post = Math.min(post, Math.max(1, (int) Math.floor(job.daylight / v[job.postHeight] + GUARD)));
            }
            set.sheetsInPost = Math.max(1, Math.min(post, set.sheets));
            set.posts = (int) ceil((double) set.sheets / set.sheetsInPost);
        }
        if (piece.dryerKind != Job.NO_DRYER) {
            set.dryerLoads = (int) ceil((double) set.sheets / piece.capacity);
        }
        if (piece.dryerKind == Job.BLOTTERS) {
            double ratio = pressedRatio(piece, s, set.solids / (set.openingWidth * set.openingHeight), set.pressure,
                    set.pressTime, v);
            double changes = Drying.blotterChanges(ratio, s.roomRatio + v[job.endMargin], 1 - v[piece.blotterKept]);
            set.blotterChanges = Double.isInfinite(changes) ? Integer.MAX_VALUE : (int) ceil(changes);
        }
        if (s.sizeGain > 0) {
            set.sizeTaken = set.sheets * set.solids * v[job.sizeTaken];
            set.sizeBath = ceilTo(set.sizeTaken / waterDensity + v[job.sizeHeel], 1e-4);
            set.drySize = ceilTo(set.sizeBath * job.batches[piece.batch].sizeBath, job.scale);
        }
    }

    // ------------------------------------------------------------------------------------------------ forecasts

    void forecast(Settings settings, double[] v, double[] out, Ledger ledger) {
        for (int b = 0; b < job.batches.length; b++) {
            State s = state(job.batches[b], v);
            batchForecast(b, settings, s, v, out, ledger);
        }
        double hours = 0;
        for (int b = 0; b < job.batches.length; b++) {
            hours += out[Out.batch(b) + Out.BATCH_HOURS];
        }
        for (PieceJob piece : job.pieces) {
            together(piece, settings, out);
            hours += out[Out.piece(job, piece.index) + Out.HOURS];
        }
        out[Out.hours(job)] = hours;
    }

    private void batchForecast(int index, Settings settings, State s, double[] v, double[] out, Ledger ledger) {
        BatchJob batch = job.batches[index];
        BatchSettings set = settings.batches[index];
        int at = Out.batch(index);
        double weighed = 0;
        for (int f = 0; f < batch.share.length; f++) {
            weighed += set.fromHand[f] + Moisture.ovenDryOfWetBasis(set.asBought[f], v[batch.moisture[f]]);
        }
        double c = weighed / set.stock;
        int n = batch.dose.length;
        double[] inStock = new double[n];
        for (int a = 0; a < n; a++) {
            inStock[a] = set.product[a] * set.loads * batch.active[a] / set.stock;
        }
        double handled = v[job.handling];
        out[at + Out.DRAINABILITY] = s.drainability;
        out[at + Out.WATER_RETENTION] = s.waterRetention;
        out[at + Out.FREE_SHRINKAGE] = s.freeShrinkage;
        out[at + Out.STOCK_CONSISTENCY] = c;
        out[at + Out.FIBRE_WEIGHED] = weighed;
        out[at + Out.HANDLING] = (1 - handled) * weighed;
        if (ledger != null) {
            ledger.open(index, weighed, set.stock, inStock, handled);
        }

        double full = job.vatVolume * WaterProperties.stockDensity(batch.vatConsistency, v[job.wall], waterDensity);
        Tank tank = new Tank(full, s, c, inStock);
        double couched = v[job.couched];
        for (int p : batch.pieces) {
            PieceJob piece = job.pieces[p];
            PieceSettings ps = settings.pieces[p];
            double[] sheets = new double[ps.sheets];
            double[][] carried = new double[n][ps.sheets];
            if (job.hasVat) {
                double lifted = ps.lift * v[job.lift];
                for (int e = 0; e <= ps.rechargeStock.length; e++) {
                    int from = e * ps.every;
                    tank.recharge(e == 0 ? ps.startStock : ps.rechargeStock[e - 1], ledger, index);
                    tank.pull(Math.min(ps.every, ps.sheets - from), lifted, couched, sheets, carried, from);
                }
            } else {
                double poured = ps.lift;
                for (int i = 0; i < ps.sheets; i++) {
                    sheets[i] = poured * c * s.retention;
                    double solidsOut = poured * c * (1 - s.retention);
                    tank.white += solidsOut;
                    double solids = sheets[i];
                    for (int a = 0; a < n; a++) {
                        carried[a][i] = poured * inStock[a] * s.additiveRetention[a];
                        double gone = poured * inStock[a] - carried[a][i];
                        solids += carried[a][i];
                        if (ledger != null) {
                            ledger.bailedAdditive(index, a, gone);
                        }
                        solidsOut += gone;
                    }
                    if (ledger != null) {
                        // The clear water of the box comes and goes; only the water of the stock is on account.
                        ledger.charge(index, 0, poured - solids / couched, poured * c * (1 - s.retention), solidsOut);
                    }
                }
                tank.used += poured * ps.sheets;
            }
            pieceForecast(piece, ps, s, sheets, carried, v, out, ledger);
        }
        out[at + Out.BATCH_HOURS] = batchHours(index, settings, v);
        out[at + Out.STOCK_LEFT] = set.stock * handled - tank.used;
        out[at + Out.VAT_FIBRE] = tank.fibre;
        out[at + Out.VAT_STOCK] = tank.mass;
        out[at + Out.WHITE_WATER] = tank.white;
        if (ledger != null) {
            ledger.close(index, tank.fibre, tank.mass, tank.additive, set.stock * handled - tank.used, c, inStock);
        }
    }

    private void pieceForecast(PieceJob piece, PieceSettings ps, State s, double[] sheets, double[][] carried, double[] v,
            double[] out, Ledger ledger) {
        int at = Out.piece(job, piece.index);
        int n = sheets.length;
        double fibre = 0;
        double solids = 0;
        double lightest = Double.POSITIVE_INFINITY;
        double heaviest = 0;
        for (int i = 0; i < n; i++) {
            double one = sheets[i];
            for (double[] additive : carried) {
                one += additive[i];
            }
            fibre += sheets[i];
            solids += one;
            lightest = Math.min(lightest, one);
            heaviest = Math.max(heaviest, one);
        }
        fibre /= n;
        solids /= n;
        double load = solids / fibre - 1;
        double particles = s.load > 0 ? load * s.particleLoad / s.load : 0;
        double wet = ps.openingWidth * ps.openingHeight;
        double formed = solids / wet;
        double couchedRatio = Moisture.ratioOfSolids(v[job.couched]);
        double pressed = pressedRatio(piece, s, formed, ps.pressure, ps.pressTime, v);
        double equilibrium = s.roomRatio;
        double end = equilibrium + v[job.endMargin];
        double[] shrink = new double[2];
        shrinkage(piece, s, pressed, end, v, shrink);
        double dryArea = wet * (1 - shrink[0]) * (1 - shrink[1]);

        double moist = piece.measuredMoisture != Job.NONE ? 1 + Moisture.ratioOfWetBasis(v[piece.measuredMoisture])
                : 1 + s.referenceRatio * (1 + load - particles) / (1 + load);
        double grammage = solids * (1 + s.sizeGain) * moist / dryArea;
        double density = sheetDensity(piece, s, ps.pressure, v);
        double caliper = Double.isNaN(density) ? Double.NaN : caliper(grammage, density, v);

        double width = ps.width;
        double height = ps.height;
        double longSide = Math.max(width, height);
        double shortSide = Math.min(width, height);
        double dryAlong = Shrinkage.dryLength(ps.openingHeight, shrink[0]);
        double dryAcross = Shrinkage.dryLength(ps.openingWidth, shrink[1]);
        double finishedLong;
        double finishedShort;
        if (piece.deckleEdge) {
            finishedLong = dryAlong;
            finishedShort = dryAcross;
        } else {
            // Cut to size: as ordered, unless the sheet has shrunk below it.
            double roomAlong = (dryAlong - (ps.rowAlong - 1) * piece.gap * (1 - shrink[0])) / ps.rowAlong;
            double roomAcross = (dryAcross - (ps.rowAcross - 1) * piece.gap * (1 - shrink[1])) / ps.rowAcross;
            finishedLong = Math.min(longSide, ps.turned ? roomAcross : roomAlong);
            finishedShort = Math.min(shortSide, ps.turned ? roomAlong : roomAcross);
        }
        out[at + Out.WIDTH] = width >= height ? finishedLong : finishedShort;
        out[at + Out.HEIGHT] = width >= height ? finishedShort : finishedLong;
        double area = finishedLong * finishedShort * ps.blankAreaShare;
        out[at + Out.GRAMMAGE] = grammage;
        out[at + Out.CALIPER] = caliper;
        out[at + Out.DENSITY] = density;
        out[at + Out.MASS] = grammage * area;
        out[at + Out.PILE] = caliper * (piece.envelopeFor == Job.NONE ? 1 << piece.folds : ENVELOPE_LAYERS) * piece.wanted;
        int run = n - piece.trials;
        double sheetYield = yieldOfSheets(piece, v);
        double pieceYield = yieldOfPieces(piece, v);
        out[at + Out.GOOD] = run * (double) ps.up * sheetYield * pieceYield;
        double couched = v[job.couched];
        out[at + Out.MAT] = WetWeb.thickness(formed, couchedRatio, v[job.wall], waterDensity);
        out[at + Out.COUCHED] = solids / couched;
        out[at + Out.DRAIN] = drainTime(piece, s, fibre / wet, v);
        out[at + Out.SOLIDS] = Moisture.solidsOfRatio(pressed);
        out[at + Out.PRESSED_RATIO] = pressed;
        out[at + Out.FINAL_RATIO] = end;
        double perLoad = Math.min(n, piece.dryerKind == Job.NO_DRYER ? n : piece.capacity);
        // Most of the water leaves before the sheet shrinks, so the first drying is that of the size it was formed in.
        out[at + Out.DRYING] = dryingTime(piece, ps, perLoad * solids, formed, pressed, end, equilibrium, v);
        out[at + Out.DRYING_AGAIN] = s.sizeGain == 0 ? 0
                : dryingTime(piece, ps, perLoad * solids, solids / dryArea, equilibrium + v[job.sizeTaken] - s.sizeGain, end,
                        equilibrium, v);
        out[at + Out.EVAPORATED] = evaporated(piece, n * solids, pressed, end, moist);
        out[at + Out.LOAD] = load;
        out[at + Out.SIZE] = s.sizeGain;
        out[at + Out.SHRINK_ALONG] = shrink[0];
        out[at + Out.SHRINK_ACROSS] = shrink[1];
        out[at + Out.LIGHTEST] = lightest / solids;
        out[at + Out.HEAVIEST] = heaviest / solids;
        out[at + Out.SHEET_FIBRE] = fibre;
        out[at + Out.POST_MASS] = job.hasFelts
                ? (ps.sheetsInPost + 1) * job.feltArea * (job.feltDry + v[job.feltWater]) + ps.sheetsInPost * solids / couched
                : Double.NaN;
        out[at + Out.POST_HEIGHT] = WetWeb.postHeight(ps.sheetsInPost, v[job.postHeight]);
        out[at + Out.HOURS] = hours(piece, ps, wet, v);
        if (ledger != null) {
            ledger.piece(job, piece, ps, sheets, carried, finishedLong * finishedShort * ps.up / dryArea, couchedRatio, pressed,
                    end, v, this);
        }
    }

    /** A measured moisture of the finished sheet is taken as what it is dried to. */
    private double evaporated(PieceJob piece, double solids, double pressed, double end, double moist) {
        double last = piece.measuredMoisture == Job.NONE ? end : moist - 1;
        return Math.max(0, WetWeb.waterOut(solids, pressed, last));
    }

    private double drainTime(PieceJob piece, State s, double fibreGrammage, double[] v) {
        double sr = s.drainability;
        if (!(sr <= v[job.tellingLimit])) {
            return Double.NaN;
        }
        BatchJob batch = job.batches[piece.batch];
        double c = job.hasVat ? batch.vatConsistency : Math.min(batch.stockConsistency, v[job.pouredConsistency]);
        double perVolume = c * WaterProperties.stockDensity(c, v[job.wall], waterDensity);
        double depth = Drainage.depth(fibreGrammage, s.retention, perVolume);
        double alpha = Freeness.alphaOfSchopperRiegler(Math.max(sr, v[job.waterReading]), v[job.resistanceFactor], v[job.waterReading],
                v[job.resistanceExponent]);
        return v[job.suction] * Drainage.time(v[job.endShare] * depth, depth, alpha, v[job.matRetention], perVolume,
                v[job.wireResistance], viscosity, waterDensity);
    }

    private double dryingTime(PieceJob piece, PieceSettings ps, double load, double grammage, double from, double end,
            double equilibrium, double[] v) {
        double margin = end - equilibrium;
        return switch (piece.dryerKind) {
            case Job.FAN_STACK -> {
                double air = Drying.dryAirFlow(piece.freeAir * v[piece.deliveredShare], job.roomVolume);
                double rate = Drying.stackEvaporation(v[piece.fanEfficiency], air, job.roomSaturated, job.roomRatio);
                yield Drying.twoPeriodTime(load, rate, from, v[piece.criticalRatio], equilibrium, equilibrium + margin);
            }
            case Job.LOFT -> Drying.hungTime(grammage, from, end, piece.spur, 2, flux(piece, v), v[piece.loftTail]);
            case Job.BOARDS -> Drying.hungTime(grammage, from, end, 1, 1, flux(piece, v), v[piece.loftTail]);
            case Job.BLOTTERS -> ps.blotterChanges == Integer.MAX_VALUE ? Double.POSITIVE_INFINITY
                    : ps.blotterChanges * v[piece.blotterHours];
            default -> Double.NaN;
        };
    }

    private double flux(PieceJob piece, double[] v) {
        return Drying.surfaceFlux(job.roomCelsius, job.roomHumidity, v[piece.filmStill], v[piece.radiative], v[piece.lewis], 0);
    }

    private double hours(PieceJob piece, PieceSettings ps, double wet, double[] v) {
        BatchJob batch = job.batches[piece.batch];
        double form = v[wet > v[job.largeSheet] ? piece.sheetTimeLarge : piece.sheetTimeSmall] * ps.sheets;
        double press = job.hasPress ? ps.posts * (ps.pressTime) + ps.sheets * v[job.partTime] : 0;
        double dry = ps.dryerLoads * v[job.dryLoad];
        double size = Double.isNaN(batch.sizeBath) ? 0 : ps.sheets * v[job.sizeTime];
        double sort = ps.sheets * v[job.sortTime];
        double trim = piece.deckleEdge ? 0 : (double) ps.sheets * ps.up * v[job.trimTime];
        double fold = piece.envelopeFor != Job.NONE ? piece.wanted * v[job.foldTime] : 0;
        return form + press + dry + size + sort + trim + fold;
    }

    private double batchHours(int index, Settings settings, double[] v) {
        BatchJob batch = job.batches[index];
        int loads = settings.batches[index].loads;
        double beat = job.hasBeater ? loads * (batch.beating + v[job.beatingLoad]) : 0;
        double add = batch.dose.length == 0 ? 0 : loads * v[job.additiveLoad];
        return beat + add + (job.hasVat ? v[job.vatCharge] : 0);
    }

    /** What needs two pieces: the card in its envelope, and both in the mail. */
    private void together(PieceJob piece, Settings settings, double[] out) {
        int at = Out.piece(job, piece.index);
        if (piece.envelopeFor == Job.NONE) {
            out[at + Out.CLEAR_WIDTH] = Double.NaN;
            out[at + Out.CLEAR_HEIGHT] = Double.NaN;
            out[at + Out.MAIL_MASS] = out[at + Out.MASS];
            out[at + Out.MAIL_THICKNESS] = out[at + Out.CALIPER] * (1 << piece.folds);
            return;
        }
        PieceSettings ps = settings.pieces[piece.index];
        PieceJob held = job.pieces[piece.envelopeFor];
        int in = Out.piece(job, held.index);
        double w = out[in + Out.WIDTH];
        double h = out[in + Out.HEIGHT];
        for (int i = 0; i < held.folds; i++) {
            if (w >= h) {
                w /= 2;
            } else {
                h /= 2;
            }
        }
        double filling = out[in + Out.CALIPER] * (1 << held.folds) * piece.inserts;
        out[at + Out.CLEAR_WIDTH] = ps.envelopeInsideWidth - Math.max(w, h) - filling;
        out[at + Out.CLEAR_HEIGHT] = ps.envelopeInsideHeight - Math.min(w, h) - filling;
        out[at + Out.MAIL_MASS] = out[at + Out.MASS] + piece.inserts * out[in + Out.MASS];
        out[at + Out.MAIL_THICKNESS] = filling + ENVELOPE_LAYERS * out[at + Out.CALIPER];
    }

    // ------------------------------------------------------------------------------------------------ rounding

    static double ceil(double x) {
        return Math.ceil(x - GUARD * Math.max(1, Math.abs(x)));
    }

    static double ceilTo(double x, double step) {
        return x <= 0 ? 0 : ceil(x / step) * step;
    }

    static double roundTo(double x, double step) {
        return Math.rint(x / step) * step;
    }
}
