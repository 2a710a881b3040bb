package org.papermath.benchmark;

import java.util.List;
import org.papermath.engine.BatchFigure;
import org.papermath.engine.CuttingAndFolding;
import org.papermath.engine.DryingSheets;
import org.papermath.engine.Engine;
import org.papermath.engine.FillingVat;
import org.papermath.engine.FinishedSheet;
import org.papermath.engine.FormingSheets;
import org.papermath.engine.Mailing;
import org.papermath.engine.MakingEnvelopes;
import org.papermath.engine.PieceFigure;
import org.papermath.engine.PieceWork;
import org.papermath.engine.Posts;
import org.papermath.engine.PreparingStock;
import org.papermath.engine.Pressing;
import org.papermath.engine.Rejects;
import org.papermath.engine.Settings;
import org.papermath.engine.SizingSheets;
import org.papermath.evidence.Scope;
import org.papermath.fibre.Fibre;
import org.papermath.order.Order;
import org.papermath.order.Recipe;
import org.papermath.order.Studio;
import org.papermath.press.Felts;
import org.papermath.pulp.AdditiveDose;

/**
 * The forecast of the benchmark order as one would write it by hand for this order alone: two fibres, three additives,
 * three pieces dipped from one vat, pressed, dried on boards and cut, the third an envelope for the first. Plain
 * numbers and arrays, the same sums in the same number as the engine does them, no formula of the library.
 *
 * <p>It changes when the physics does, and not to make anything look faster. {@code YardstickTest} fails where it and the
 * engine do not give the same for every figure.
 */
final class Yardstick {
    /** The assumptions that enter, in the order {@link #forecast} reads them in. */
    static final List<String> ASSUMPTIONS = List.of(
            // Cotton rag, then flax.
            "beating.rate[cotton-rag]",
            "beating.exponent",
            "beating.drainability-unbeaten",
            "beating.drainability-limit[cotton-rag]",
            "fibre.water-retention-unbeaten[cotton-rag]",
            "fibre.drainability-well-beaten[cotton-rag]",
            "fibre.water-retention-well-beaten[cotton-rag]",
            "fibre.water-retention-long-beaten[cotton-rag]",
            "shrinkage.initial[cotton-rag]",
            "shrinkage.limit[cotton-rag]",
            "sorption.monolayer[rag-paper]",
            "sorption.energy[rag-paper]",
            "sorption.bulk[rag-paper]",
            "sheet.density-unbeaten[cotton-rag]",
            "sheet.density-long-beaten[cotton-rag]",
            "vat.retention[cotton-rag]",
            "fibre.moisture-as-bought[cotton-rag]",
            "beating.rate[flax-raw]",
            "beating.exponent[flax-raw]",
            "beating.drainability-unbeaten",
            "beating.drainability-limit",
            "fibre.water-retention-unbeaten[flax-raw]",
            "fibre.drainability-well-beaten[flax-raw]",
            "fibre.water-retention-well-beaten[flax-raw]",
            "fibre.water-retention-long-beaten[flax-raw]",
            "shrinkage.initial[flax-raw]",
            "shrinkage.limit[flax-raw]",
            "sorption.monolayer[linen]",
            "sorption.energy[linen]",
            "sorption.bulk[linen]",
            "sheet.density-unbeaten[flax]",
            "sheet.density-long-beaten[flax]",
            "vat.retention",
            "fibre.moisture-as-bought[flax-raw]",
            // The additives.
            "additive.retention[pigment@with aid]",
            "additive.retention[retention-aid]",
            "additive.retention[calcium-carbonate@with aid]",
            // The stuff.
            "freeness.sr-water-reading",
            "drainage.resistance-exponent",
            "sorption.temperature-slope",
            "sorption.desorption-offset",
            "web.couched-per-retention",
            "order.handling-share",
            "labour.beating-load",
            "labour.additive-load",
            // The vat and the mould.
            "fibre.cell-wall-density",
            "vat.lift-factor",
            "labour.vat-charge",
            "drainage.drainability-limit",
            "drainage.resistance-factor",
            "drainage.wire-resistance",
            "drainage.mat-retention",
            "drainage.end-share",
            "drainage.suction-factor",
            "labour.large-sheet",
            "labour.card-sheet",
            "labour.sheet-time[large]",
            "labour.sheet-time[small]",
            "labour.sheet-time[card]",
            "labour.dip-couch",
            // The press.
            "press.factor",
            "press.exponent",
            "press.reference-pressure",
            "press.time-constant",
            "press.floor",
            "press.rewet",
            "labour.part-time",
            "felt.water-before",
            "felt.density",
            // The dryer.
            "shrinkage.onset",
            "shrinkage.direction-difference",
            "restraint.share[board]",
            "drying.film-still",
            "drying.radiative",
            "drying.lewis",
            "drying.loft-tail",
            "drying.end-margin",
            "labour.dry-load",
            // The dry sheet.
            "sheet.density-exponent",
            "sheet.density-reference-pressure",
            "sheet.density-least-pressure",
            "sheet.density-saturation-pressure",
            "sheet.thinnest",
            "sheet.filler-volume",
            "reject.forming",
            "reject.pressing",
            "reject.drying",
            "reject.cutting",
            "reject.folding[card]",
            "reject.folding[envelope]",
            "labour.sort",
            "labour.trim",
            "labour.fold");

    /** The figures of the batch, in the order they are filled in. */
    static final List<BatchFigure> BATCH = List.of(
            PreparingStock.COOKED,
            PreparingStock.BEATING,
            PreparingStock.DRAINABILITY,
            PreparingStock.WATER_RETENTION,
            PreparingStock.FREE_SHRINKAGE,
            PreparingStock.STOCK_CONSISTENCY,
            FillingVat.STOCK_LEFT,
            FillingVat.VAT_FIBRE,
            FillingVat.WHITE_WATER,
            PreparingStock.HOURS);

    /** The figures of each piece, after those of the batch, in the order they are filled in. */
    static final List<PieceFigure> PIECE = List.of(
            CuttingAndFolding.WIDTH,
            CuttingAndFolding.HEIGHT,
            FinishedSheet.GRAMMAGE,
            FinishedSheet.CALIPER,
            FinishedSheet.DENSITY,
            CuttingAndFolding.MASS,
            CuttingAndFolding.PILE,
            Rejects.GOOD,
            FormingSheets.MAT,
            FormingSheets.COUCHED,
            FormingSheets.DRAIN,
            FormingSheets.AT_VAT,
            Pressing.SOLIDS,
            DryingSheets.DRYING,
            DryingSheets.DRYING_AGAIN,
            DryingSheets.EVAPORATED,
            FillingVat.LOAD,
            SizingSheets.SIZE,
            DryingSheets.SHRINK_ALONG,
            DryingSheets.SHRINK_ACROSS,
            FillingVat.LIGHTEST,
            FillingVat.HEAVIEST,
            Posts.POST_MASS,
            Posts.POST_HEIGHT,
            MakingEnvelopes.CLEAR_WIDTH,
            MakingEnvelopes.CLEAR_HEIGHT,
            MakingEnvelopes.DRIED_WIDTH,
            MakingEnvelopes.DRIED_HEIGHT,
            Mailing.MAIL_MASS,
            Mailing.MAIL_THICKNESS,
            PieceWork.HOURS);

    private static final int FIBRES = 2;
    private static final int ADDITIVES = 3;
    private static final int PIECES = 3;
    private static final int LEAFLET = 0;
    private static final int ENVELOPE = 2;

    /** The number of figures: the last is the hours of the whole. */
    static final int SIZE = BATCH.size() + PIECES * PIECE.size() + 1;

    private static final double ZERO_CELSIUS = 273.15;
    private static final double GRAVITY = 9.80665;

    // The recipe and its stock.
    private final double beating;
    private final double gain;
    private final double[] share = new double[FIBRES];
    private final double[] fromHand = new double[FIBRES];
    private final double[] asBought = new double[FIBRES];
    private final double[] dose = new double[ADDITIVES];
    private final double[] inStock = new double[ADDITIVES];
    private final boolean[] particle = new boolean[ADDITIVES];
    private final int loads;
    private final double stock;

    // The studio.
    private final double vatVolume;
    private final double waterDensity;
    private final double waterViscosity;
    private final double roomCelsius;
    private final double roomHumidity;
    private final double referenceCelsius;
    private final double referenceHumidity;
    private final double feltArea;
    private final double feltDry;
    private final double densest;

    // The pieces.
    private final int[] sheets = new int[PIECES];
    private final int[] perSheet = new int[PIECES];
    private final int[] rowAcross = new int[PIECES];
    private final int[] rowAlong = new int[PIECES];
    private final boolean[] turned = new boolean[PIECES];
    private final double[] across = new double[PIECES];
    private final double[] along = new double[PIECES];
    private final double[] width = new double[PIECES];
    private final double[] height = new double[PIECES];
    private final double[] gap = new double[PIECES];
    private final int[] wanted = new int[PIECES];
    private final int[] trials = new int[PIECES];
    private final int[] folds = new int[PIECES];
    private final int[] moulds = new int[PIECES];
    private final int[] inTurn = new int[PIECES];
    private final double[] vatConsistency = new double[PIECES];
    private final double[] letDown = new double[PIECES];
    private final int[] every = new int[PIECES];
    private final double[] lift = new double[PIECES];
    private final double[][] strained = new double[PIECES][];
    private final double[][] fromPail = new double[PIECES][];
    private final double[][] fresh = new double[PIECES][];
    private final boolean[][] level = new boolean[PIECES][];
    private final double[] pressure = new double[PIECES];
    private final double[] hold = new double[PIECES];
    private final int[] post = new int[PIECES];
    private final int[] onFelt = new int[PIECES];
    private final int[] posts = new int[PIECES];
    private final int[] fillings = new int[PIECES];
    private final double areaShare;
    private final double insideWidth;
    private final double insideHeight;
    private final int inserts;

    /** Takes the numbers of the benchmark order out of it, and the settings as they were decided. */
    Yardstick(Order order, Studio studio, Engine engine, Settings settings) {
        Recipe recipe = order.recipes().get(0);
        beating = recipe.beating().si();
        gain = engine.stock(0).gain(settings.stock(0), 0);
        loads = settings.stock(0).additions();
        stock = settings.stock(0).stock();
        List<Fibre> fibres = recipe.furnish().fibres();
        for (int f = 0; f < FIBRES; f++) {
            share[f] = recipe.furnish().share(fibres.get(f)).si();
            fromHand[f] = settings.stock(0).fromHand()[f];
            asBought[f] = settings.stock(0).asBought()[f];
        }
        for (int a = 0; a < ADDITIVES; a++) {
            AdditiveDose one = recipe.additives().get(a);
            dose[a] = one.dose().si();
            particle[a] = one.additive().purpose().isParticle();
            inStock[a] = settings.stock(0).product()[a] * loads / stock;
        }

        vatVolume = studio.vat().orElseThrow().workingVolume().si();
        double vatCelsius = studio.vat().orElseThrow().temperature().si() - ZERO_CELSIUS;
        waterDensity = engine.workshop().waterDensity();
        waterViscosity = 2.414e-5 * Math.pow(10, 247.8 / (vatCelsius + ZERO_CELSIUS - 140));
        roomCelsius = studio.room().temperature().si() - ZERO_CELSIUS;
        roomHumidity = studio.room().humidity().si();
        referenceCelsius = order.weighedIn().temperature().si() - ZERO_CELSIUS;
        referenceHumidity = order.weighedIn().humidity().si();
        Felts felts = studio.felts().orElseThrow();
        feltArea = felts.width().si() * felts.length().si();
        feltDry = felts.dryGrammage().si();
        densest = studio.assumptions().si("sheet.density-most", Scope.GENERAL);

        for (int p = 0; p < PIECES; p++) {
            sheets[p] = settings.sheet(p).sheets();
            perSheet[p] = settings.sheet(p).perSheet();
            rowAcross[p] = settings.sheet(p).rowAcross();
            rowAlong[p] = settings.sheet(p).rowAlong();
            turned[p] = settings.sheet(p).turned();
            across[p] = settings.sheet(p).openingWidth();
            along[p] = settings.sheet(p).openingHeight();
            width[p] = settings.size(p).width();
            height[p] = settings.size(p).height();
            gap[p] = order.pieces().get(p).gap().map(one -> one.si()).orElse(0.0);
            folds[p] = order.pieces().get(p).folds();
            wanted[p] = engine.piece(p).wanted();
            trials[p] = engine.piece(p).trials();
            moulds[p] = studio.moulds().get(settings.sheet(p).mould()).count();
            FillingVat.Setting dipping = settings.vat(p);
            inTurn[dipping.turn()] = p;
            vatConsistency[p] = dipping.vat().consistency();
            letDown[p] = dipping.letDown();
            every[p] = dipping.every();
            lift[p] = dipping.dips() * dipping.lift();
            int charges = dipping.recharges().length + 1;
            strained[p] = new double[charges];
            fromPail[p] = new double[charges];
            fresh[p] = new double[charges];
            level[p] = new boolean[charges];
            for (int e = 0; e < charges; e++) {
                FillingVat.Charge charge = e == 0 ? dipping.start() : dipping.recharges()[e - 1];
                strained[p][e] = charge.strained();
                fromPail[p][e] = charge.pail();
                fresh[p][e] = charge.stock();
                level[p][e] = charge.level();
            }
            pressure[p] = settings.press(p).pressure();
            hold[p] = settings.press(p).time();
            post[p] = settings.posts(p).sheets();
            onFelt[p] = settings.posts(p).onFelt();
            posts[p] = settings.posts(p).posts();
            fillings[p] = settings.drying(p).loads();
        }
        areaShare = settings.envelope(ENVELOPE).areaShare();
        insideWidth = settings.envelope(ENVELOPE).insideWidth();
        insideHeight = settings.envelope(ENVELOPE).insideHeight();
        inserts = order.pieces().get(ENVELOPE).inserts();
    }

    /** The forecast at values of the assumptions, which are in the order of {@link #ASSUMPTIONS}. */
    double[] forecast(double[] v) {
        double[] out = new double[SIZE];
        int next = 0;
        int at = 0;

        // ---------------------------------------------------------------------------------------- beaten stuff
        double[] state = new double[FIBRES];
        double[] number = new double[FIBRES];
        double[] unbeatenDensity = new double[FIBRES];
        double[] longBeatenDensity = new double[FIBRES];
        double beaten = 0;
        double waterRetention = 0;
        double freeShrinkage = 0;
        double middle = 0;
        double reference = 0;
        double room = 0;
        double retention = 0;
        double weighed = 0;
        for (int f = 0; f < FIBRES; f++) {
            double rate = v[next++];
            double exponent = v[next++];
            double unbeaten = v[next++];
            double limit = v[next++];
            double retentionUnbeaten = v[next++];
            double well = v[next++];
            double retentionWell = v[next++];
            double retentionLong = v[next++];
            double shrinkUnbeaten = v[next++];
            double shrinkLimit = v[next++];
            double monolayer = v[next++];
            double energy = v[next++];
            double bulk = v[next++];
            unbeatenDensity[f] = v[next++];
            longBeatenDensity[f] = v[next++];
            retention += share[f] * v[next++];
            weighed += fromHand[f] + asBought[f] * (1 - v[next++]);

            double s = -Math.expm1(-Math.pow(rate * beating * gain, exponent));
            double sr = unbeaten + (limit - unbeaten) * s;
            double held;
            if (sr <= unbeaten) {
                held = retentionUnbeaten;
            } else if (sr > well && limit > well) {
                held = retentionWell + (retentionLong - retentionWell) * (sr - well) / (limit - well);
            } else if (well > unbeaten) {
                held = retentionUnbeaten + (retentionWell - retentionUnbeaten) * (sr - unbeaten) / (well - unbeaten);
            } else {
                held = retentionWell;
            }
            state[f] = s;
            number[f] = sr;
            beaten += share[f] * s;
            waterRetention += share[f] * Math.max(0, held);
            freeShrinkage += share[f] * (shrinkUnbeaten + (shrinkLimit - shrinkUnbeaten) * s);
            double k = bulk * 0.5;
            middle += share[f] * (monolayer * energy * k / ((1 - k) * (1 - k + energy * k)));
            k = bulk * referenceHumidity;
            reference += share[f] * (monolayer * energy * k / ((1 - k) * (1 - k + energy * k)));
            k = bulk * roomHumidity;
            room += share[f] * (monolayer * energy * k / ((1 - k) * (1 - k + energy * k)));
        }

        double[] kept = new double[ADDITIVES];
        double wantedLoad = 0;
        double wantedParticles = 0;
        for (int a = 0; a < ADDITIVES; a++) {
            kept[a] = v[next++];
            double one = dose[a] * kept[a] / retention;
            wantedLoad += one;
            if (particle[a]) {
                wantedParticles += one;
            }
        }

        double waterReading = v[next++];
        double resistanceExponent = v[next++];
        double slope = v[next++];
        double fromWet = v[next++];
        double couched = 1 / (1 + v[next++] * waterRetention);
        double handling = v[next++];
        double beatingLoad = v[next++];
        double additiveLoad = v[next++];
        double surface = 0;
        for (int f = 0; f < FIBRES; f++) {
            double sr = Math.max(number[f], waterReading);
            surface += share[f] * Math.sqrt(Math.pow((sr - waterReading) / (100 - sr), resistanceExponent));
        }
        double drainability = 100 - (100 - waterReading) / (1 + Math.pow(surface * surface, 1 / resistanceExponent));
        double referenceRatio = reference + slope * reference / middle * (referenceCelsius - 23);
        referenceRatio += fromWet * 4 * referenceHumidity * (1 - referenceHumidity);
        double roomRatio = room + slope * room / middle * (roomCelsius - 23);
        roomRatio += fromWet * 4 * roomHumidity * (1 - roomHumidity);

        // ---------------------------------------------------------------------------------------- the rest of the
        // values
        double wall = v[next++];
        double liftFactor = v[next++];
        double vatCharge = v[next++];
        double tellingLimit = v[next++];
        double resistanceFactor = v[next++];
        double wireResistance = v[next++];
        double matRetention = v[next++];
        double endShare = v[next++];
        double suction = v[next++];
        double largeSheet = v[next++];
        double cardSheet = v[next++];
        double sheetTimeLarge = v[next++];
        double sheetTimeSmall = v[next++];
        double sheetTimeCard = v[next++];
        double dipAndCouch = v[next++];
        double pressFactor = v[next++];
        double pressExponent = v[next++];
        double pressReference = v[next++];
        double pressTime = v[next++];
        double pressFloor = v[next++];
        double pressRewet = v[next++];
        double partTime = v[next++];
        double feltWater = v[next++];
        double feltDensity = v[next++];
        double onset = v[next++];
        double difference = v[next++];
        double restraint = v[next++];
        double film = v[next++];
        double radiation = v[next++];
        double lewis = v[next++];
        double tail = v[next++];
        double endMargin = v[next++];
        double dryLoad = v[next++];
        double densityExponent = v[next++];
        double densityReference = v[next++];
        double densityLeast = v[next++];
        double densitySaturation = v[next++];
        double thinnest = v[next++];
        double fillerVolume = v[next++];
        double rejectForming = v[next++];
        double rejectPressing = v[next++];
        double rejectDrying = v[next++];
        double rejectCutting = v[next++];
        double rejectFoldingCard = v[next++];
        double rejectFoldingEnvelope = v[next++];
        double sort = v[next++];
        double trim = v[next++];
        double fold = v[next++];

        // ---------------------------------------------------------------------------------------- the vat
        double consistency = weighed / stock;
        double[] fibreOf = new double[PIECES];
        double[] solidsOf = new double[PIECES];
        double[] lightest = new double[PIECES];
        double[] heaviest = new double[PIECES];
        Tank vat = new Tank();
        double used = 0;
        for (int p : inTurn) {
            double c = vatConsistency[p];
            double full = vatVolume / (c / wall + (1 - c) / waterDensity);
            double lifted = lift[p] * liftFactor;
            double held = retention * lifted;
            double fibres = 0;
            double all = 0;
            double least = Double.POSITIVE_INFINITY;
            double most = 0;
            int done = 0;
            if (letDown[p] > 0) {
                // Some goes into the pail as it is, and water comes in its place.
                double part = letDown[p] / vat.mass;
                vat.pail += letDown[p];
                vat.pailFibre += vat.fibre * part;
                vat.fibre -= vat.fibre * part;
                for (int a = 0; a < ADDITIVES; a++) {
                    vat.pailAdditive[a] += vat.additive[a] * part;
                    vat.additive[a] -= vat.additive[a] * part;
                }
                vat.mass = full;
            }
            for (int e = 0; e < fresh[p].length; e++) {
                // Run down, it is only water that leaves.
                if (strained[p][e] > 0) {
                    vat.bail(strained[p][e], retention, kept);
                    vat.mass -= strained[p][e];
                }
                // The pail before any stock; what stands above the mark is bailed in any case.
                double part = vat.pail > 0 ? Math.min(1, fromPail[p][e] / vat.pail) : 0;
                double back = part * vat.pail;
                double above = Math.max(0, vat.mass + back - full);
                vat.bail(above, retention, kept);
                vat.fibre += part * vat.pailFibre;
                vat.pailFibre -= part * vat.pailFibre;
                for (int a = 0; a < ADDITIVES; a++) {
                    vat.additive[a] += part * vat.pailAdditive[a];
                    vat.pailAdditive[a] -= part * vat.pailAdditive[a];
                }
                vat.mass += back - above;
                vat.pail -= back;
                // Bailing through the sieve, before the stock where there is something to bail.
                double added = fresh[p][e];
                double over = level[p][e] ? Math.max(0, vat.mass + added - full) : 0;
                boolean first = level[p][e] && over < vat.mass;
                if (first) {
                    vat.bail(over, retention, kept);
                }
                vat.fibre += added * consistency;
                for (int a = 0; a < ADDITIVES; a++) {
                    vat.additive[a] += added * inStock[a];
                }
                vat.mass += added;
                if (!first) {
                    vat.bail(over, retention, kept);
                }
                if (level[p][e]) {
                    vat.mass = full;
                }
                used += added;
                // The sheets up to the next recharge.
                int end = Math.min(sheets[p], done + every[p]);
                double fibre = vat.fibre;
                double mass = lifted < vat.mass ? vat.mass : Double.NaN;
                for (; done < end; done++) {
                    double sheet = held * fibre / mass;
                    double one = sheet;
                    for (int a = 0; a < ADDITIVES; a++) {
                        double taken = kept[a] * lifted * vat.additive[a] / mass;
                        vat.additive[a] -= taken;
                        one += taken;
                    }
                    fibre -= sheet;
                    mass -= one / couched;
                    fibres += sheet;
                    all += one;
                    least = Math.min(least, one);
                    most = Math.max(most, one);
                }
                vat.fibre = fibre;
                vat.mass = mass > 0 ? mass : Double.NaN;
            }
            fibreOf[p] = fibres / sheets[p];
            solidsOf[p] = all / sheets[p];
            lightest[p] = least;
            heaviest[p] = most;
        }
        double left = stock * handling - used;
        if (left < 1e-12 * used && left > -1e-9 * used) {
            left = 0;
        }
        double hours = loads * beatingLoad + loads * additiveLoad + vatCharge;
        double allHours = hours;

        out[at++] = 0; // both fibres are bought ready to beat
        out[at++] = beaten;
        out[at++] = drainability;
        out[at++] = waterRetention;
        out[at++] = freeShrinkage;
        out[at++] = consistency;
        out[at++] = left;
        out[at++] = vat.fibre + vat.pailFibre;
        out[at++] = vat.white;
        out[at++] = hours;

        // ---------------------------------------------------------------------------------------- the pieces
        double leafletWidth = 0;
        double leafletHeight = 0;
        double leafletCaliper = 0;
        double leafletMass = 0;
        for (int p = 0; p < PIECES; p++) {
            double solids = solidsOf[p];
            double load = solids / fibreOf[p] - 1;
            double particles = wantedLoad > 0 ? load * wantedParticles / wantedLoad : 0;
            double wet = across[p] * along[p];
            double formed = solids / wet;

            // Pressed.
            double couchedRatio = (1 - couched) / couched;
            double equilibrium = Math.max(
                    pressFloor, pressFactor * waterRetention * Math.pow(pressure[p] / pressReference, -pressExponent));
            double thick = formed / 0.1;
            double slow = waterRetention / 1.5;
            double loaded = couchedRatio <= equilibrium || hold[p] <= 0
                    ? couchedRatio
                    : equilibrium
                            + (couchedRatio - equilibrium)
                                    * Math.exp(-hold[p] / (pressTime * (thick * thick * slow * slow)));
            double ratio = Math.min(couchedRatio, loaded + pressRewet / formed);

            // Shrunk.
            double end = roomRatio + endMargin;
            double filler = particles / (1 + load);
            double free = freeShrinkage * (1 - filler);
            double half = Math.max(-free, Math.min(free, difference / 2));
            double begun = Math.max(0, 1 - ratio / onset);
            double ended = Math.max(0, 1 - end / onset);
            double shrinkAlong = (free - half) * ((ended - begun) * (1 - restraint));
            double shrinkAcross = (free + half) * ((ended - begun) * (1 - restraint));
            double dryArea = wet * (1 - shrinkAlong) * (1 - shrinkAcross);

            // Dry.
            double moist = 1 + referenceRatio * (1 + load - particles) / (1 + load);
            double grammage = solids * moist / dryArea;
            double bulk = 0;
            for (int f = 0; f < FIBRES; f++) {
                double pressed = Math.pow(
                        Math.min(Math.max(pressure[p], densityLeast), densitySaturation) / densityReference,
                        densityExponent);
                bulk += share[f] / (pressed / ((1 - state[f]) / unbeatenDensity[f] + state[f] / longBeatenDensity[f]));
            }
            double unfilled = Math.min(densest, 1 / bulk);
            double byMass = grammage * ((1 - filler) / unfilled + filler * fillerVolume);
            double caliper = byMass + (thinnest > 0 ? thinnest * Math.exp(-byMass / thinnest) : 0);
            double apparent = grammage / caliper;

            // Cut.
            double dryAlong = along[p] * (1 - shrinkAlong);
            double dryAcross = across[p] * (1 - shrinkAcross);
            double roomAlong = (dryAlong - (rowAlong[p] - 1) * gap[p] * (1 - shrinkAlong)) / rowAlong[p];
            double roomAcross = (dryAcross - (rowAcross[p] - 1) * gap[p] * (1 - shrinkAcross)) / rowAcross[p];
            double longSide = Math.min(Math.max(width[p], height[p]), turned[p] ? roomAcross : roomAlong);
            double shortSide = Math.min(Math.min(width[p], height[p]), turned[p] ? roomAlong : roomAcross);
            double finishedWidth = width[p] >= height[p] ? longSide : shortSide;
            double finishedHeight = width[p] >= height[p] ? shortSide : longSide;
            double area = longSide * shortSide;
            double pieceMass = grammage * (area * (p == ENVELOPE ? areaShare : 1));
            double goodSheets = (1 - rejectForming) * (1 - rejectPressing) * (1 - rejectDrying);
            double goodPieces = 1 - rejectCutting;
            if (folds[p] > 0) {
                goodPieces *= 1 - rejectFoldingCard;
            } else if (p == ENVELOPE) {
                goodPieces *= 1 - rejectFoldingEnvelope;
            }

            // Drained: beyond what a tester reads as at that, or slower.
            double c = vatConsistency[p];
            double perVolume = c * (1 / (c / wall + (1 - c) / waterDensity));
            double depth = fibreOf[p] / wet / (retention * perVolume);
            double above = Math.max(Math.min(drainability, tellingLimit), waterReading);
            double alpha = resistanceFactor * Math.pow((above - waterReading) / (100 - above), resistanceExponent);
            alpha *= 1 + wantedParticles;
            double drain = suction
                    * drained(endShare * depth, depth, alpha * matRetention * perVolume * depth, wireResistance);
            double hands = wet > largeSheet ? sheetTimeLarge : wet > cardSheet ? sheetTimeSmall : sheetTimeCard;
            double atVat = Math.max(hands, (drain + dipAndCouch) / moulds[p]) * sheets[p];

            // Dried.
            double flux = flux(film, radiation, lewis);
            double drying;
            if (end <= roomRatio && ratio > end) {
                drying = Double.POSITIVE_INFINITY;
            } else if (ratio <= end) {
                drying = 0;
            } else {
                drying = flux <= 0 ? Double.POSITIVE_INFINITY : formed * (ratio - end) * tail / flux;
            }

            hours = atVat
                    + sheets[p] * partTime
                    + fillings[p] * dryLoad
                    + sheets[p] * sort
                    + sheets[p] * perSheet[p] * trim
                    + (p == ENVELOPE ? wanted[p] * fold : 0);
            allHours += hours;

            out[at++] = finishedWidth;
            out[at++] = finishedHeight;
            out[at++] = grammage;
            out[at++] = caliper;
            out[at++] = apparent;
            out[at++] = pieceMass;
            out[at++] = caliper * (p == ENVELOPE ? 3 : 1 << folds[p]) * wanted[p];
            out[at++] = (sheets[p] - trials[p]) * perSheet[p] * goodSheets * goodPieces;
            double mat = formed * (1 / wall + couchedRatio / waterDensity);
            out[at++] = mat;
            out[at++] = solids / couched;
            out[at++] = drainability <= tellingLimit ? drain : Double.NaN;
            out[at++] = atVat;
            out[at++] = 1 / (1 + ratio);
            out[at++] = drying;
            out[at++] = 0;
            out[at++] = Math.max(0, sheets[p] * solids * (ratio - end));
            out[at++] = load;
            out[at++] = 0;
            out[at++] = shrinkAlong;
            out[at++] = shrinkAcross;
            out[at++] = lightest[p] / solids;
            out[at++] = heaviest[p] / solids;
            double layers = Math.ceil((double) post[p] / onFelt[p]);
            double felt = feltDry / feltDensity;
            out[at++] = (layers + 1) * feltArea * feltDry * (1 + feltWater) + post[p] * solids / couched;
            out[at++] = layers * (felt + mat) + felt;
            if (p == LEAFLET) {
                leafletWidth = finishedWidth;
                leafletHeight = finishedHeight;
                leafletCaliper = caliper;
                leafletMass = pieceMass;
            }
            if (p == ENVELOPE) {
                double w = leafletWidth;
                double h = leafletHeight;
                for (int i = 0; i < folds[LEAFLET]; i++) {
                    if (w >= h) {
                        w /= 2;
                    } else {
                        h /= 2;
                    }
                }
                double filling = leafletCaliper * (1 << folds[LEAFLET]) * inserts;
                boolean upright = insideHeight > insideWidth;
                out[at++] = insideWidth - (upright ? Math.min(w, h) : Math.max(w, h)) - filling;
                out[at++] = insideHeight - (upright ? Math.max(w, h) : Math.min(w, h)) - filling;
                // The blank is cut.
                out[at++] = Double.NaN;
                out[at++] = Double.NaN;
                out[at++] = pieceMass + inserts * leafletMass;
                out[at++] = filling + 3 * caliper;
            } else {
                out[at++] = Double.NaN;
                out[at++] = Double.NaN;
                out[at++] = Double.NaN;
                out[at++] = Double.NaN;
                out[at++] = pieceMass;
                out[at++] = caliper * (1 << folds[p]);
            }
            out[at++] = hours;
        }
        out[at] = allHours;
        return out;
    }

    /** What is in the vat and in the pail beside it. */
    private static final class Tank {
        double fibre;
        double mass;
        double pail;
        double pailFibre;
        double white;
        final double[] additive = new double[ADDITIVES];
        final double[] pailAdditive = new double[ADDITIVES];

        /** What of the solids goes with so much liquor through the sieve. */
        void bail(double taken, double retention, double[] kept) {
            if (taken > 0) {
                double part = taken / mass;
                double gone = fibre * part * (1 - retention);
                fibre -= gone;
                white += gone;
                for (int a = 0; a < ADDITIVES; a++) {
                    additive[a] -= additive[a] * part * (1 - kept[a]);
                }
            }
        }
    }

    /** Time for so much of the depth to run through mat and wire. */
    private double drained(double filtrate, double depth, double mat, double wire) {
        if (filtrate >= depth) {
            return Double.POSITIVE_INFINITY;
        }
        double u = -Math.log1p(-filtrate / depth);
        double term = u + Math.expm1(-u);
        if (u < 0.5) {
            double sum = 1;
            for (int n = 16; n >= 3; n--) {
                sum = 1 - u / n * sum;
            }
            term = u * u / 2 * sum;
        }
        return waterViscosity / (waterDensity * GRAVITY) * (mat * term + wire * u);
    }

    /** What evaporates from a wet surface that is as warm as it makes itself in the air of the room. */
    private double flux(double film, double radiation, double lewis) {
        double transfer = film / (1.2 * 1006) * Math.pow(lewis, -2.0 / 3);
        double air = vapour(roomHumidity * saturation(roomCelsius), roomCelsius);
        double heat = film + radiation;
        // Interpolation by three points where it closes in, halving where it does not (Brent, 1973).
        double a = -100;
        double b = roomCelsius;
        double fa = balance(a, heat, transfer, air);
        double fb = balance(b, heat, transfer, air);
        double c = a;
        double fc = fa;
        double step = b - a;
        double last = step;
        while (true) {
            if (Math.abs(fc) < Math.abs(fb)) {
                a = b;
                b = c;
                c = a;
                fa = fb;
                fb = fc;
                fc = fa;
            }
            double close = 2 * 1e-14 * Math.abs(b) + 1e-14;
            double middle = (c - b) / 2;
            if (Math.abs(middle) <= close || fb == 0) {
                break;
            }
            boolean halve = Math.abs(last) < close || Math.abs(fa) <= Math.abs(fb);
            if (!halve) {
                double s = fb / fa;
                double p;
                double q;
                if (a == c) {
                    p = 2 * middle * s;
                    q = 1 - s;
                } else {
                    double t = fa / fc;
                    double r = fb / fc;
                    p = s * (2 * middle * t * (t - r) - (b - a) * (r - 1));
                    q = (t - 1) * (r - 1) * (s - 1);
                }
                if (p > 0) {
                    q = -q;
                } else {
                    p = -p;
                }
                halve = p >= 1.5 * middle * q - Math.abs(close * q) || p >= Math.abs(last * q / 2);
                last = step;
                step = p / q;
            }
            if (halve) {
                step = middle;
                last = step;
            }
            a = b;
            fa = fb;
            b += Math.abs(step) > close ? step : Math.copySign(close, middle);
            fb = balance(b, heat, transfer, air);
            if (fb > 0 == fc > 0) {
                c = a;
                fc = fa;
                step = b - a;
                last = step;
            }
        }
        double flux = transfer * (vapour(saturation(b), b) - air);
        return flux < 1e-12 ? 0 : flux;
    }

    /** Heat that comes to a wet surface less what evaporation takes from it. */
    private double balance(double celsius, double heat, double transfer, double air) {
        return heat * (roomCelsius - celsius)
                - transfer * (vapour(saturation(celsius), celsius) - air) * ((2501 - 2.361 * celsius) * 1e3);
    }

    private static double vapour(double pressure, double celsius) {
        return pressure / (461.5 * (celsius + ZERO_CELSIUS));
    }

    private static double saturation(double celsius) {
        double t = celsius + ZERO_CELSIUS;
        if (celsius < 0) {
            return Math.exp(-5.6745359e3 / t
                    + 6.3925247
                    + t * (-9.677843e-3 + t * (6.2215701e-7 + t * (2.0747825e-9 + t * -9.484024e-13)))
                    + 4.1635019 * Math.log(t));
        }
        return Math.exp(-5.8002206e3 / t
                + 1.3914993
                + t * (-4.8640239e-2 + t * (4.1764768e-5 + t * -1.4452093e-8))
                + 6.5459673 * Math.log(t));
    }
}
