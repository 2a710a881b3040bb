package org.papermath.engine;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import javax.measure.quantity.Mass;
import org.jspecify.annotations.Nullable;
import org.papermath.equation.Additives;
import org.papermath.equation.Beating;
import org.papermath.equation.BeatingLaw;
import org.papermath.equation.Cooking;
import org.papermath.equation.DensityLaw;
import org.papermath.equation.Freeness;
import org.papermath.equation.Moisture;
import org.papermath.equation.ShrinkageLaw;
import org.papermath.equation.Sorption;
import org.papermath.equation.SorptionLaw;
import org.papermath.equation.WaterProperties;
import org.papermath.evidence.Assumption;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Basis;
import org.papermath.evidence.Scope;
import org.papermath.fibre.Alkali;
import org.papermath.fibre.BoughtFibre.Form;
import org.papermath.fibre.Cook;
import org.papermath.fibre.Fibre;
import org.papermath.fibre.FibreProperty;
import org.papermath.fibre.Furnish;
import org.papermath.numeric.Roots;
import org.papermath.numeric.Rounding;
import org.papermath.order.Recipe;
import org.papermath.order.Studio;
import org.papermath.press.Press;
import org.papermath.pulp.Additive;
import org.papermath.pulp.AdditiveDose;
import org.papermath.pulp.Beater;
import org.papermath.pulp.RetentionModel;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;
import org.papermath.text.Digits;

/** From fibre as it lies to stock: soaking, beater loads, what goes into each, and what the stuff is then. */
public final class PreparingStock {
    static final StageFigures FIGURES = new StageFigures();

    /** What follows from beating bends where stuff at its limit is beaten no further. */
    private static final double STOPS = 0.3;

    /** Stuff from such a share of its limit on may lie at it. */
    private static final double NEAR = 0.7;

    /** Of all pots together, those of other batches of one stuff too; nothing where nothing is cooked. */
    public static final BatchFigure COOKED = FIGURES.batch("stuff after cooking", Kinds.MASS, "g", Scale.ROOT);

    public static final BatchFigure BEATING = FIGURES.batch("state of beating", Kinds.SHARE, "%", Scale.SHARE);
    public static final BatchFigure DRAINABILITY =
            FIGURES.batch("drainability", Kinds.SCHOPPER_RIEGLER, "SR", Scale.SHARE, 100, STOPS);
    public static final BatchFigure WATER_RETENTION =
            FIGURES.batch("water retention value", Kinds.WATER_RETENTION, "g/g", Scale.FACTOR, 1, STOPS);
    public static final BatchFigure FREE_SHRINKAGE =
            FIGURES.batch("free shrinkage", Kinds.LINEAR_SHRINKAGE, "%", Scale.ROOT);
    public static final BatchFigure STOCK_CONSISTENCY =
            FIGURES.batch("consistency of the stock", Kinds.CONSISTENCY, "%", Scale.SHARE);
    public static final BatchFigure HOURS = FIGURES.batch("hands-on time", Kinds.TIME, "h", Scale.ROOT);

    /** The step in which water is measured in, m³. */
    private static final double WATER_STEP = 1e-4;

    /** Below so many steps of the fine scale an additive is weighed to a tenth of a step. */
    private static final double FEW_STEPS = 20;

    /** A dose in the middle of those fibre is beaten with, s: only where a search begins. */
    private static final double USUAL_DOSE = 3 * 3600;

    private final Workshop workshop;
    private final String name;
    /** What is beaten together, and how long. */
    private final int[][] together;

    private final double[] times;
    /** The place in these of what each fibre is beaten with. */
    private final int[] runOf;

    /** The dose of each fibre over that of the fibre beaten longest. */
    private final double[] relativeDose;
    /** As measured, °SR; not a number where it is not. */
    private final double drainability;

    /** A sheet that was timed instead; null where none was. */
    private final @Nullable TimedStuff timed;

    private final boolean hasBeater;
    private final double trough;
    private final double ratedLoad;
    private final double beaterConsistency;
    private final double stockConsistency;
    private final VatConsistency vatConsistency;
    private final FibreLine[] fibres;
    /** What each of them is of the whole. */
    private final double[] shares;

    private final AdditiveLine[] additives;
    /** Oven-dry fibre that stands beaten and dosed, kg. */
    private final double stuffOnHand;

    private final Slot handling;
    private final Slot soakRatio;
    private final Slot soakTime;
    private final Slot wall;
    private final Slot waterReading;
    private final Slot resistanceExponent;
    private final double leastLoad;
    private final double fullLoad;
    private final Slot sorptionSlope;
    private final Slot desorption;
    private final @Nullable Slot couched;
    private final Slot couchedPerRetention;
    private final Slot shrinkSlope;
    private final Slot shrinkIntercept;
    private final Slot shrinkOnset;
    private final Slot direction;
    private final Scope dense;
    private final boolean hasDensity;
    private final Dense density;
    private final @Nullable Slot leastPressure;
    private final Slot beatingLoad;
    private final Slot additiveLoad;
    private final @Nullable Slot colourTrial;
    private final double trials;
    private final double cookLiquor;
    private final double cookTime;
    private final @Nullable Slot cookSolids;
    private final @Nullable Slot cookLabour;

    /** One fibre: its share, and what is known of it. */
    private static final class FibreLine {
        final double share;
        final Fibre kind;
        final Slot moisture;
        /** What cooking leaves; null where all that is bought is beaten. */
        final @Nullable Kettle kettle;
        /** Whether it is known of this fibre how fast it beats. */
        final boolean knowsRate;

        final @Nullable Slot rate;
        final @Nullable Slot exponent;
        final Slot drainabilityUnbeaten;
        final Slot drainabilityLimit;
        final Slot retentionUnbeaten;
        /** The drainability the retention of the unbeaten fibre belongs to. */
        final Slot retentionStart;

        /** The drainability the retention of long-beaten fibre belongs to. */
        final Slot retentionEnd;

        final Slot retentionWell;
        final @Nullable Slot retentionLong;
        final Slot drainabilityWell;
        final @Nullable Slot shrinkInitial;
        final @Nullable Slot shrinkLimit;
        final Slot monolayer;
        final Slot energy;
        final Slot bulk;
        final Slot firstPass;

        FibreLine(Known known, Studio studio, Recipe recipe, Fibre fibre, boolean beats) {
            Furnish furnish = recipe.furnish();
            String beater = studio.beater().map(Beater::name).orElse("");
            Scope plain = fibre.scope();
            Scope beaten = on(plain, beater);
            Scope shrinking = measured(known, furnish, beater, beaten, "shrinkage.limit");
            Scope sorbing =
                    measured(known, furnish, "", plain, "sorption.monolayer", "sorption.energy", "sorption.bulk");
            share = furnish.share(fibre).si();
            kind = fibre;
            Form form = furnish.form(fibre);
            moisture = known.slot(FibreProperty.MOISTURE_AS_BOUGHT.of(fibre, form, known.store()));
            kettle = form.losesFibre() ? new Kettle(known, recipe, fibre, form) : null;
            rate = beats ? known.slot("beating.rate", beaten) : null;
            knowsRate = !known.store().get("beating.rate", beaten).scope().equals(Scope.GENERAL);
            exponent = rate == null ? null : known.slot("beating.exponent", beaten);
            drainabilityUnbeaten = known.slot("beating.drainability-unbeaten", beaten);
            drainabilityLimit = known.slot("beating.drainability-limit", beaten);
            retentionStart = known.slot("beating.drainability-unbeaten", plain);
            retentionEnd = known.slot("beating.drainability-limit", plain);
            retentionUnbeaten = known.slot("fibre.water-retention-unbeaten", plain);
            retentionWell = known.slot("fibre.water-retention-well-beaten", plain);
            retentionLong = known.maybe("fibre.water-retention-long-beaten", plain);
            drainabilityWell = known.slot("fibre.drainability-well-beaten", plain);
            Slot initial = known.maybe("shrinkage.initial", shrinking);
            shrinkLimit = known.maybe("shrinkage.limit", shrinking);
            shrinkInitial = shrinkLimit == null ? null : initial;
            monolayer = known.slot("sorption.monolayer", sorbing);
            energy = known.slot("sorption.energy", sorbing);
            bulk = known.slot("sorption.bulk", sorbing);
            firstPass = known.slot(
                    "vat.retention",
                    studio.vat().map(vat -> plain.on(vat.name())).orElse(plain));
        }
    }

    /** What one fibre is cooked in, and what comes of it. */
    private static final class Kettle {
        final Alkali alkali;
        final double dose;
        private final Slot share;
        private final @Nullable Slot slope;
        private final double knownDose;
        private final double low;
        private final double high;

        Kettle(Known known, Recipe recipe, Fibre fibre, Form form) {
            Assumptions store = known.store();
            Assumption found = FibreProperty.YIELD
                    .find(fibre, form, store)
                    .orElseThrow(() -> OwnFibre.noYield(recipe, fibre, form, store));
            share = known.slot(found);
            alkali = recipe.alkali().orElse(Alkali.SODA_ASH);
            Optional<Assumption> usual = Cook.usualDose(fibre, form, alkali, store);
            // A recipe that names no alkali is cooked in soda ash, of which there is a usual dose on any fibre.
            dose = recipe.alkaliDose().map(Amount::si).orElseGet(() -> known.fixed(usual.orElseThrow()));
            // What a cook of the studio's own has left belongs to the dose it uses.
            boolean leans = alkali == Alkali.CAUSTIC_SODA
                    && form != Form.RAG
                    && recipe.alkaliDose().isPresent()
                    && found.basis() != Basis.MEASURED_HERE;
            slope = leans ? known.slot("cook.yield-slope") : null;
            knownDose = usual.isPresent() && leans ? known.fixed(usual.get()) : dose;
            low = leans ? known.fixed("cook.dose-low", Scope.GENERAL) : 0;
            high = leans ? known.fixed("cook.dose-high", Scope.GENERAL) : 1;
        }

        double leaves(Values v) {
            return slope == null ? v.of(share) : Cooking.yieldAt(v.of(share), v.of(slope), dose, knownDose, low, high);
        }

        boolean isBeyond() {
            return slope != null && (dose < low || dose > high);
        }
    }

    private static FibreLine fibreLine(Known known, Studio studio, Recipe recipe, Fibre fibre, boolean beaten) {
        try {
            return new FibreLine(known, studio, recipe, fibre, beaten);
        } catch (Refused e) {
            throw OwnFibre.missing(e, recipe, fibre, known.store());
        }
    }

    /** What is known of the density of the sheet, of fibres in their states of beating. */
    private interface Dense {
        DensityLaw law(double[] states, Values v);
    }

    private static boolean isBeaten(Known known, Scope scope) {
        return known.store().find("sheet.density-unbeaten", scope).isPresent()
                && known.store().find("sheet.density-long-beaten", scope).isPresent();
    }

    private static boolean hasDensity(Known known, Scope scope) {
        return isBeaten(known, scope)
                || known.store().find("sheet.density-lightly-pressed", scope).isPresent();
    }

    private static Dense dense(Known known, Furnish furnish, List<Scope> scopes) {
        double[] shares = furnish.fibres().stream()
                .mapToDouble(fibre -> furnish.share(fibre).si())
                .toArray();
        if (scopes.size() == 1) {
            FibreDensity one = dense(known, scopes.get(0));
            return (states, v) -> one.law(Beating.mean(shares, states), v);
        }
        FibreDensity[] fibres =
                scopes.stream().map(scope -> dense(known, scope)).toArray(FibreDensity[]::new);
        return (states, v) -> {
            DensityLaw[] laws = new DensityLaw[fibres.length];
            for (int f = 0; f < laws.length; f++) {
                laws[f] = fibres[f].law(states[f], v);
            }
            return new DensityLaw.Blend(shares, laws);
        };
    }

    /** What is known of the density of one fibre, or of a blend that was measured as a whole. */
    private interface FibreDensity {
        DensityLaw law(double state, Values v);
    }

    private static FibreDensity dense(Known known, Scope scope) {
        if (!isBeaten(known, scope)) {
            Slot lightly = known.maybe("sheet.density-lightly-pressed", scope);
            return (state, v) -> lightly == null ? DensityLaw.unknown() : new DensityLaw.LightlyPressed(v.of(lightly));
        }
        Slot unbeaten = known.slot("sheet.density-unbeaten", scope);
        Slot longBeaten = known.slot("sheet.density-long-beaten", scope);
        Slot exponent = known.slot("sheet.density-exponent", scope);
        Slot reference = known.slot("sheet.density-reference-pressure", scope);
        Slot least = known.slot("sheet.density-least-pressure", scope);
        Slot saturation = known.slot("sheet.density-saturation-pressure", scope);
        return (state, v) -> new DensityLaw.Beaten(
                v.of(unbeaten),
                v.of(longBeaten),
                state,
                new DensityLaw.Pressing(v.of(exponent), v.of(reference), v.of(least), v.of(saturation)));
    }

    /** One additive: its dose on the fibre, its active share, and what stays of it. */
    private record AdditiveLine(double dose, double active, Slot retention, boolean particle, boolean thickens) {}

    /**
     * What the stuff is after beating.
     *
     * @param beating how far beating has brought it, the mean by mass of its fibres, from 0 to 1
     * @param drainability °SR
     * @param waterRetention water retention value
     * @param couchedSolids solids of a sheet as it leaves the vat
     * @param freeShrinkage linear, without restraint
     * @param density of the sheet by the pressure on it; of not a number where a fibre has none
     * @param referenceRatio moisture ratio of the fibre in the air of the order
     * @param roomRatio moisture ratio of the fibre in the air of the room
     */
    record State(
            double beating,
            double drainability,
            double waterRetention,
            double couchedSolids,
            double freeShrinkage,
            DensityLaw density,
            double referenceRatio,
            double roomRatio) {}

    /**
     * What a sheet keeps of what is lifted.
     *
     * @param fibre share of the fibre
     * @param additives share of each additive
     * @param load additives that stay in the sheet, over fibre
     * @param particleLoad those of them that are mineral and hold no water
     * @param dissolvedAid formation aid that stays in the water, over the fibre in the stock
     */
    record Kept(double fibre, double[] additives, double load, double particleLoad, double dissolvedAid) {
        /** Minerals over the oven-dry sheet. */
        double fillerShare() {
            return particleLoad / (1 + load);
        }
    }

    /**
     * What to weigh and to make.
     *
     * @param ovenDry oven-dry fibre wanted at the scale, before rounding
     * @param fromHand oven-dry fibre of each kind from what is on hand
     * @param asBought mass to weigh of each kind, as bought
     * @param pots what is cooked before it is beaten
     * @param soakWater water to soak in, m³
     * @param soakTime time to soak
     * @param runs the beater loads
     * @param additions how often additives are weighed out: to each load, or once to what was beaten apart
     * @param product product to weigh of each additive, each time
     * @param stock stock of all loads, before handling losses
     * @param stockDensity its density
     * @param fromStuff oven-dry fibre that stands beaten and dosed already
     * @param part of the stuff that is beaten, what becomes this batch; 1 where it is beaten for this batch alone
     * @param shared fibre, pots and soaking of all that is beaten with it; null where it is beaten alone
     */
    public record Setting(
            double ovenDry,
            double[] fromHand,
            double[] asBought,
            List<Pot> pots,
            double soakWater,
            double soakTime,
            List<BeaterRun> runs,
            int additions,
            double[] product,
            double stock,
            double stockDensity,
            double fromStuff,
            double part,
            @Nullable Setting shared) {
        /** Fibre, pots, soaking and loads of all that is beaten together. */
        public Setting whole() {
            return shared == null ? this : shared;
        }

        /** Oven-dry fibre of the loads that becomes this batch. */
        public double beaten() {
            return part
                    * runs.stream()
                            .mapToDouble(run -> run.loads() * run.ovenDry())
                            .sum();
        }

        /** Whether anything is beaten for it. */
        public boolean isBeaten() {
            return runs.stream().anyMatch(run -> run.loads() > 0);
        }

        /** The loads of the run a fibre is beaten in. */
        public int loads(int fibre) {
            for (BeaterRun run : runs) {
                for (int one : run.fibres()) {
                    if (one == fibre) {
                        return run.loads();
                    }
                }
            }
            throw new IllegalStateException("fibre " + fibre + " is in no run");
        }
    }

    /**
     * One fibre to cook.
     *
     * @param fibre its place in the furnish
     * @param raw oven-dry, before cooking
     * @param alkali pure alkali to weigh
     * @param liquor water to cook in, m³
     * @param time at the boil
     * @param stuff oven-dry, what should come of it
     * @param wet the same, rinsed and squeezed out
     */
    public record Pot(int fibre, double raw, double alkali, double liquor, double time, double stuff, double wet) {
        private Pot part(double part) {
            return new Pot(fibre, part * raw, part * alkali, part * liquor, time, part * stuff, part * wet);
        }
    }

    /**
     * The stock as it really is. What comes out of the pot is weighed, a handful of it dried, and the stock made up to it: a
     * poor cook leaves less stock, not thinner stock.
     *
     * @param stock stock of all loads, before handling losses
     * @param raw oven-dry fibre weighed, before cooking
     * @param stuff oven-dry, what the pots gave
     * @param weighed oven-dry fibre that is beaten
     * @param consistency fibre over stock
     * @param inStock each additive over stock
     * @param handled share of it that reaches the vat
     * @param onHand oven-dry fibre of it that stood beaten already
     * @param dosed each additive that came with that
     */
    record Made(
            double stock,
            double raw,
            double stuff,
            double weighed,
            double consistency,
            double[] inStock,
            double handled,
            double onHand,
            double[] dosed) {
        /** So much of stock, so many times as thick. */
        Made thicker(double ratio) {
            double[] more = Arrays.stream(inStock).map(one -> ratio * one).toArray();
            return new Made(stock, raw, stuff, weighed, ratio * consistency, more, handled, onHand, dosed);
        }
    }

    PreparingStock(Known known, Studio studio, Workshop workshop, Recipe recipe) {
        this.workshop = workshop;
        name = recipe.name();
        drainability = recipe.drainability().map(Amount::si).orElse(Double.NaN);
        stuffOnHand = studio.stuffOnHand().stream()
                .filter(stuff -> stuff.recipe().equals(recipe.name()))
                .mapToDouble(stuff -> stuff.ovenDry().si())
                .sum();
        hasBeater = studio.beater().isPresent();
        trough = studio.beater().map(one -> one.trough().si()).orElse(0.0);
        ratedLoad = studio.beater().map(one -> one.ratedLoad().si()).orElse(Double.POSITIVE_INFINITY);

        Furnish furnish = recipe.furnish();
        Scope whole = on(furnish.scope(), studio.beater().map(Beater::name).orElse(""));
        shrinkSlope = known.slot("shrinkage.per-water-retention", whole);
        shrinkIntercept = known.slot("shrinkage.water-retention-intercept", whole);
        shrinkOnset = known.slot("shrinkage.onset", whole);
        direction = known.slot("shrinkage.direction-difference", whole);
        List<Fibre> kinds = furnish.fibres();
        timed = recipe.timedSheet()
                .map(sheet -> new TimedStuff(known, workshop, sheet))
                .orElse(null);
        runOf = new int[kinds.size()];
        times = runs(recipe, kinds, runOf);
        together = IntStream.range(0, times.length)
                .mapToObj(run -> IntStream.range(0, runOf.length)
                        .filter(f -> runOf[f] == run)
                        .toArray())
                .toArray(int[][]::new);
        double longest = Arrays.stream(times).max().orElse(0);
        relativeDose = Arrays.stream(runOf)
                .mapToDouble(run -> longest > 0 ? times[run] / longest : 1)
                .toArray();
        fibres = kinds.stream()
                .map(fibre -> fibreLine(
                        known,
                        studio,
                        recipe,
                        fibre,
                        isMeasured() ? furnish.isBlend() : recipe.beating(fibre).si() > 0))
                .toArray(FibreLine[]::new);
        shares = Arrays.stream(fibres).mapToDouble(fibre -> fibre.share).toArray();
        String press = studio.press().map(Press::name).orElse("");
        dense = on(furnish.scope(), press);
        List<Scope> densities = !furnish.isBlend() || hasDensity(known, dense)
                ? List.of(dense)
                : kinds.stream().map(fibre -> on(fibre.scope(), press)).toList();
        hasDensity = densities.stream().allMatch(scope -> hasDensity(known, scope));
        density = dense(known, furnish, densities);
        leastPressure = densities.stream()
                .filter(scope -> isBeaten(known, scope))
                .findFirst()
                .map(scope -> known.slot("sheet.density-least-pressure", scope))
                .orElse(null);
        boolean aided = recipe.additives().stream()
                .anyMatch(dose -> dose.additive().purpose() == Additive.Purpose.RETENTION_AID);
        additives = recipe.additives().stream()
                .map(dose -> line(known, dose, aided))
                .toArray(AdditiveLine[]::new);

        boolean rawBast = kinds.stream()
                .anyMatch(fibre -> fibre.sourceClass() == Fibre.SourceClass.BAST
                        && recipe.beating(fibre).si() > 0);
        double usual = known.fixed("beater.consistency", rawBast ? Scope.of("raw-bast") : Scope.GENERAL);
        double inBeater = recipe.beaterConsistency().map(Amount::si).orElse(usual);
        stockConsistency = recipe.stockConsistency().map(Amount::si).orElse(inBeater);
        double inVat = recipe.vatConsistency()
                .map(Amount::si)
                .orElseGet(() -> known.ownFixed("vat.consistency", workshop.vat));
        vatConsistency = new VatConsistency(
                known, workshop.vat, inVat, recipe.vatConsistency().isPresent(), stockConsistency);
        if (workshop.hasVat && inVat >= stockConsistency) {
            throw Refused.of(
                    "recipe.vat-thicker-than-stock",
                    "recipe " + name + ": the vat at " + Digits.percent(inVat)
                            + " is to be charged from stock at " + Digits.percent(stockConsistency)
                            + "; the stock has to be the thicker of the two. Want a thinner vat, or a stock above "
                            + Digits.percent(inVat) + ".",
                    "recipe",
                    name,
                    "vat",
                    inVat,
                    "stock",
                    stockConsistency,
                    "member",
                    List.of("vatConsistency", "stockConsistency", "beaterConsistency"),
                    "id",
                    "vat.consistency");
        }
        boolean thicker = stockConsistency > inBeater * 1.000001
                && recipe.stockConsistency().isPresent()
                && recipe.beaterConsistency().isEmpty();
        beaterConsistency = thicker ? Math.min(stockConsistency, usual) : inBeater;

        handling = known.slot("order.handling-share");
        soakRatio = known.slot("beater.soak-liquor-ratio");
        soakTime = known.slot("beater.soak-time");
        wall = known.slot("fibre.cell-wall-density");
        waterReading = known.slot("freeness.sr-water-reading");
        resistanceExponent = known.slot("drainage.resistance-exponent", workshop.vat);
        leastLoad = known.fixed("beater.load-range-low", Scope.GENERAL);
        fullLoad = Math.min(ratedLoad, usual * trough * workshop.waterDensity);
        sorptionSlope = known.slot("sorption.temperature-slope");
        desorption = known.slot("sorption.desorption-offset");
        couched = known.own("web.solids-couched", workshop.vat);
        couchedPerRetention = known.slot("web.couched-per-retention", workshop.vat);
        beatingLoad = known.slot("labour.beating-load");
        additiveLoad = known.slot("labour.additive-load");
        boolean isColoured = recipe.colour().isPresent()
                && recipe.additives().stream().anyMatch(dose -> dose.additive().purpose() == Additive.Purpose.PIGMENT);
        colourTrial = isColoured ? known.slot("labour.colour-trial") : null;
        trials = isColoured ? known.fixed("colour.trials", Scope.GENERAL) : 0;
        boolean cooks = Arrays.stream(fibres).anyMatch(fibre -> fibre.kettle != null);
        cookLiquor = cooks ? known.fixed("cook.liquor-ratio", Scope.GENERAL) : 0;
        cookTime = cooks ? known.fixed("cook.time", Scope.GENERAL) : 0;
        cookSolids = cooks ? known.slot("cook.solids") : null;
        cookLabour = cooks ? known.slot("labour.cook") : null;
    }

    /** Gives every fibre its run, in the order of the furnish, and returns how long each run is beaten. */
    private static double[] runs(Recipe recipe, List<Fibre> kinds, int[] runOf) {
        List<Double> times = new ArrayList<>();
        int common = -1;
        for (int f = 0; f < runOf.length; f++) {
            if (recipe.beatingApart().containsKey(kinds.get(f)) || common < 0) {
                runOf[f] = times.size();
                times.add(recipe.beating(kinds.get(f)).si());
                common = recipe.beatingApart().containsKey(kinds.get(f)) ? common : runOf[f];
            } else {
                runOf[f] = common;
            }
        }
        return times.stream().mapToDouble(Double::doubleValue).toArray();
    }

    private static AdditiveLine line(Known known, AdditiveDose dose, boolean aided) {
        Additive additive = dose.additive();
        return new AdditiveLine(
                dose.dose().si(),
                additive.activeFraction().map(Amount::si).orElse(1.0),
                known.slot(
                        "additive.retention",
                        RetentionModel.scope(
                                additive,
                                aided ? RetentionModel.Circumstance.WITH_AID : RetentionModel.Circumstance.PLAIN)),
                additive.purpose().isParticle(),
                additive.purpose() == Additive.Purpose.FORMATION_AID);
    }

    private static Scope on(Scope scope, String place) {
        return place.isEmpty() ? scope : scope.on(place);
    }

    /**
     * What was measured on a blend itself stands in for what is known of its fibres, where all that it takes is there.
     */
    private static Scope measured(Known known, Furnish furnish, String place, Scope otherwise, String... ids) {
        Scope whole = on(furnish.scope(), place);
        return furnish.isBlend()
                        && Arrays.stream(ids)
                                .allMatch(id -> known.store().find(id, whole).isPresent())
                ? whole
                : otherwise;
    }

    String name() {
        return name;
    }

    int additives() {
        return additives.length;
    }

    /** How thick the vat may be. */
    VatConsistency vatConsistency() {
        return vatConsistency;
    }

    /** Consistency the stock is kept at. */
    public double stockConsistency() {
        return stockConsistency;
    }

    Slot shrinkOnset() {
        return shrinkOnset;
    }

    Slot direction() {
        return direction;
    }

    boolean hasDensity() {
        return hasDensity;
    }

    /** Where what is known of the density of the sheet is kept. */
    public Scope dense() {
        return dense;
    }

    /** The least pressure the law of density was made for; null where pressing does not enter. */
    public @Nullable Slot leastPressure() {
        return leastPressure;
    }

    /** Oven-dry fibre over stock in the beater. */
    public double beaterConsistency() {
        return beaterConsistency;
    }

    /** The part of a fibre in the furnish. */
    public double share(int fibre) {
        return fibres[fibre].share;
    }

    /** What a fibre is cooked in; empty where all that is bought is beaten. */
    public Optional<Alkali> alkali(int fibre) {
        return Optional.ofNullable(fibres[fibre].kettle).map(kettle -> kettle.alkali);
    }

    /** Pure alkali over the oven-dry fibre before cooking; 0 where it is not cooked. */
    public double alkaliDose(int fibre) {
        Kettle kettle = fibres[fibre].kettle;
        return kettle == null ? 0 : kettle.dose;
    }

    /** Whether the loss by alkali was never measured at the dose of the recipe. */
    public boolean cooksBeyond() {
        return Arrays.stream(fibres).anyMatch(fibre -> fibre.kettle != null && fibre.kettle.isBeyond());
    }

    /** Whether it is known how fast every fibre beats, or beating does not matter. */
    public boolean knowsKinetics() {
        return isMeasured()
                || IntStream.range(0, fibres.length).allMatch(f -> times[runOf[f]] == 0 || fibres[f].knowsRate);
    }

    /** A full load of such fibre, kg: what the beater is rated for, or as much as usually goes into its trough. */
    public double fullLoad() {
        return fullLoad;
    }

    /** What is beaten apart from the rest; 1 where all fibres are beaten together. */
    int runs() {
        return times.length;
    }

    /** What the fibre of a load gains over a full one, for each run; 1 for none. */
    double[] gains(Setting set) {
        double[] gains = new double[times.length];
        for (int run = 0; run < gains.length; run++) {
            gains[run] = gain(set, run);
        }
        return gains;
    }

    /** What the fibre of a load of one run gains over a full one; 1 for none. */
    public double gain(Setting set, int run) {
        return hasBeater && times[run] > 0 && !isMeasured() && set.runs.get(run).loads() > 0
                ? BeatingLaw.gain(set.runs.get(run).ovenDry(), fullLoad, leastLoad)
                : 1;
    }

    /** Whether a reading, not the hours in a beater, gives the state of the stuff. */
    private boolean isMeasured() {
        return timed != null || !Double.isNaN(drainability);
    }

    /**
     * Whether a sheet was timed of stuff that may lie at the limit of its beating, and a figure follows from where it lies.
     * A single fibre drains as it was timed wherever that is, a blend no slower than at its limit.
     */
    boolean isNearLimit(Figure figure, double drainability, Values v) {
        boolean follows = figure == BEATING || figure == WATER_RETENTION;
        boolean followsInBlend = figure == DRAINABILITY
                || figure == FormingSheets.DRAIN
                || figure == FormingSheets.AT_VAT
                || figure == PieceWork.HOURS;
        return timed != null
                && (follows || (followsInBlend && fibres.length > 1))
                && drainability >= NEAR * mixedOf(limits(), v);
    }

    /** The drainability by tester or stopwatch, °SR; not a number where neither was read. */
    private double measured(Values v) {
        return timed == null ? drainability : timed.number(retention(v), v);
    }

    /** Refuses a reading that cannot be. */
    void require(Values v) {
        if (timed != null) {
            timed.requireSlower(name, retention(v), v);
        }
    }

    private double retention(Values v) {
        double retention = 0;
        for (FibreLine fibre : fibres) {
            retention += fibre.share * v.of(fibre.firstPass);
        }
        return retention;
    }

    boolean hasFormationAid() {
        return Arrays.stream(additives).anyMatch(one -> one.thickens);
    }

    /** Active matter of an additive over fibre, and the share of it that stays in a sheet. */
    public double dose(int additive) {
        return additives[additive].dose;
    }

    /** The share of an additive that stays in a sheet. */
    public Slot retention(int additive) {
        return additives[additive].retention;
    }

    // ------------------------------------------------------------------------------------------------ the stuff

    /**
     * What beating makes of the fibre. The state each fibre is in says how it drains, what water it holds, how it
     * shrinks and how dense it lies. In a blend it is the surfaces that add up for drainage, the volumes for density,
     * and the masses for the rest.
     *
     * @param gains what the loads of each run gain over full ones
     */
    State state(Values v, double[] gains) {
        double read = measured(v);
        double[] states = states(v, read, gains);
        double[] numbers = new double[fibres.length];
        double waterRetention = 0;
        double freeShrinkage = 0;
        double middle = 0;
        double reference = 0;
        double room = 0;
        for (int f = 0; f < fibres.length; f++) {
            FibreLine fibre = fibres[f];
            double share = fibre.share;
            numbers[f] = number(fibre, states[f], read, v);
            double held = waterRetention(fibre, numbers[f], v);
            waterRetention += share * held;
            freeShrinkage += share * freeShrinkage(fibre, states[f], held, v);
            SorptionLaw sorption = new SorptionLaw(v.of(fibre.monolayer), v.of(fibre.energy), v.of(fibre.bulk));
            middle += share * sorption.ratio(SorptionLaw.MIDDLE);
            reference += share * sorption.ratio(workshop.referenceHumidity);
            room += share * sorption.ratio(workshop.roomHumidity);
        }
        double slope = v.of(sorptionSlope);
        return new State(
                Beating.mean(shares, states),
                mixed(numbers, v),
                waterRetention,
                couched == null ? Moisture.solidsOfRatio(v.of(couchedPerRetention) * waterRetention) : v.of(couched),
                freeShrinkage,
                density.law(states, v),
                fromWetSide(
                        SorptionLaw.at(workshop.referenceCelsius, reference, middle, slope),
                        workshop.referenceHumidity,
                        v),
                fromWetSide(SorptionLaw.at(workshop.roomCelsius, room, middle, slope), workshop.roomHumidity, v));
    }

    /** Sheets come to the air wet, so they hold a little more than sheets that come to it dry. */
    private double fromWetSide(double ratio, double humidity, Values v) {
        return Sorption.desorption(ratio, v.of(desorption), humidity);
    }

    /** The state of every fibre: by the hours in the beater, or by the drainability of the whole. */
    private double[] states(Values v, double read, double[] gains) {
        if (Double.isNaN(read)) {
            double[] states = new double[fibres.length];
            for (int f = 0; f < states.length; f++) {
                states[f] = after(fibres[f], times[runOf[f]] * gains[runOf[f]], v);
            }
            return states;
        }
        if (fibres.length == 1) {
            return new double[] {law(fibres[0], v).stateOf(read)};
        }
        // Beaten together they all had the same dose, beaten apart doses that are as their times: those which give the
        // whole the drainability it was measured to have.
        double[] unbeaten = new double[fibres.length];
        double[] limit = limits();
        if (read <= mixedOf(unbeaten, v)) {
            return unbeaten;
        }
        if (read >= mixedOf(limit, v)) {
            return limit;
        }
        double fraction = Roots.between(0, 1, x -> mixedOf(after(dose(x), v), v) - read);
        return after(dose(fraction), v);
    }

    /** The states beating ends at. */
    private double[] limits() {
        return Arrays.stream(relativeDose).map(dose -> dose > 0 ? 1 : 0).toArray();
    }

    /** A dose for every number from 0 to 1, none for 0 and without end for 1. */
    private static double dose(double fraction) {
        return fraction == 1 ? Double.POSITIVE_INFINITY : USUAL_DOSE * fraction / (1 - fraction);
    }

    private double[] after(double dose, Values v) {
        double[] states = new double[fibres.length];
        for (int f = 0; f < states.length; f++) {
            states[f] = relativeDose[f] > 0 ? after(fibres[f], dose * relativeDose[f], v) : 0;
        }
        return states;
    }

    private static double after(FibreLine fibre, double dose, Values v) {
        return dose == 0 ? 0 : law(fibre, v).state(dose);
    }

    private double mixedOf(double[] states, Values v) {
        double[] numbers = new double[fibres.length];
        for (int f = 0; f < fibres.length; f++) {
            numbers[f] = law(fibres[f], v).drainability(states[f]);
        }
        return mixed(numbers, v);
    }

    /** It is the surface of fibres that slows water down, and surfaces add up. */
    private double mixed(double[] numbers, Values v) {
        if (numbers.length == 1) {
            return numbers[0];
        }
        double water = v.of(waterReading);
        for (int f = 0; f < numbers.length; f++) {
            numbers[f] = Math.max(numbers[f], water);
        }
        return Freeness.mixed(shares, numbers, water, v.of(resistanceExponent));
    }

    private static BeatingLaw law(FibreLine fibre, Values v) {
        return new BeatingLaw(
                v.of(fibre.drainabilityUnbeaten),
                v.of(fibre.drainabilityLimit),
                fibre.rate == null ? 0 : v.of(fibre.rate),
                fibre.exponent == null ? 1 : v.of(fibre.exponent));
    }

    /** The drainability of a fibre; as measured where it is the only one. */
    private double number(FibreLine fibre, double state, double read, Values v) {
        return Double.isNaN(read) || fibres.length > 1 ? law(fibre, v).drainability(state) : read;
    }

    private double waterRetention(FibreLine fibre, double sr, Values v) {
        Slot longBeaten = fibre.retentionLong;
        return Beating.waterRetention(
                sr,
                v.of(fibre.retentionStart),
                v.of(fibre.retentionUnbeaten),
                v.of(fibre.drainabilityWell),
                v.of(fibre.retentionWell),
                longBeaten == null ? Double.NaN : v.of(fibre.retentionEnd),
                longBeaten == null ? Double.NaN : v.of(longBeaten));
    }

    /** By both ends of beating where they are known for the fibre, else by the water it holds. */
    private double freeShrinkage(FibreLine fibre, double state, double held, Values v) {
        if (fibre.shrinkInitial != null && fibre.shrinkLimit != null) {
            return new ShrinkageLaw.Ends(v.of(fibre.shrinkInitial), v.of(fibre.shrinkLimit)).free(state);
        }
        return new ShrinkageLaw.Line(v.of(shrinkSlope), v.of(shrinkIntercept)).free(held);
    }

    /** An additive is dosed on the fibre weighed, and kept in the sheet on the fibre kept. */
    Kept kept(Values v) {
        double retention = retention(v);
        double[] stays = new double[additives.length];
        double load = 0;
        double particleLoad = 0;
        double dissolvedAid = 0;
        for (int a = 0; a < additives.length; a++) {
            stays[a] = v.of(additives[a].retention);
            double kept = additives[a].dose * stays[a] / retention;
            load += kept;
            if (additives[a].particle) {
                particleLoad += kept;
            }
            if (additives[a].thickens) {
                dissolvedAid += additives[a].dose * (1 - stays[a]);
            }
        }
        return new Kept(retention, stays, load, particleLoad, dissolvedAid);
    }

    /** What stays of an additive, over the fibre of the sheet. */
    public double load(int additive, Values v) {
        return Additives.load(additives[additive].dose, v.of(additives[additive].retention), retention(v));
    }

    // ------------------------------------------------------------------------------------------------ what to do

    double stockDensity(Values v) {
        return WaterProperties.stockDensity(stockConsistency, v.of(wall), workshop.waterDensity);
    }

    /** Each additive over stock, as planned. */
    double[] wantedInStock() {
        return Arrays.stream(additives)
                .mapToDouble(one -> stockConsistency * one.dose)
                .toArray();
    }

    /** Oven-dry fibre that the vat and the pours take, before handling losses. */
    private double needed(Values v, double used) {
        return used * stockConsistency / v.of(handling);
    }

    /** Oven-dry fibre to beat for them; none where as much stands beaten. */
    double toBeat(Values v, double used) {
        double all = needed(v, used);
        // What the scale cannot weigh is not beaten for.
        return stuffOnHand > 0 && all - stuffOnHand < workshop.scale ? 0 : all - Math.min(stuffOnHand, all);
    }

    /**
     * Fibre, pots, soaking and loads for stuff that is beaten together, so many of each run at least.
     *
     * @param ovenDry oven-dry fibre wanted, for all that is made of it
     */
    Beaten beat(Values v, double ovenDry, int[] leastLoads, Shelf shelf) {
        boolean enough = ovenDry == 0;
        double capacity = hasBeater
                ? Math.min(
                        ratedLoad,
                        beaterConsistency
                                * trough
                                * WaterProperties.stockDensity(beaterConsistency, v.of(wall), workshop.waterDensity))
                : Double.POSITIVE_INFINITY;
        int n = fibres.length;
        double[] fromHand = new double[n];
        double[] asBought = new double[n];
        List<Pot> pots = new ArrayList<>();
        List<BeaterRun> runs = new ArrayList<>();
        double soaked = 0;
        double weighed = 0;
        double brought = 0;
        for (int run = 0; run < times.length; run++) {
            double part = times.length == 1 ? ovenDry : partOf(run) * ovenDry;
            int loads = enough ? 0 : Math.max(Math.max(1, leastLoads[run]), (int) Rounding.ceil(part / capacity));
            double weighedHere = 0;
            double broughtHere = 0;
            for (int f : enough ? new int[0] : together[run]) {
                FibreLine fibre = fibres[f];
                double left = left(fibre, v);
                double need = fibre.share * ovenDry / left;
                fromHand[f] = shelf.take(fibre.kind, need);
                double rest = Moisture.massAtWetBasis(need - fromHand[f], v.of(fibre.moisture));
                // Weighed load by load, or pot by pot, each rounded up to the scale.
                int weighings = fibre.kettle == null ? loads : 1;
                asBought[f] = weighings * Rounding.ceilTo(rest / weighings, workshop.scale);
                double raw = raw(fibre, fromHand[f], asBought[f], v);
                soaked += raw;
                weighedHere += raw * left;
                if (fibre.kettle == null || cookSolids == null) {
                    broughtHere += fromHand[f] + asBought[f];
                } else {
                    Pot pot = pot(f, fibre.kettle, raw, raw * left, v.of(cookSolids));
                    pots.add(pot);
                    broughtHere += pot.wet;
                }
            }
            double water = enough
                    ? 0
                    : Math.max(
                            0,
                            Rounding.roundTo(
                                    (weighedHere / beaterConsistency - broughtHere) / loads / workshop.waterDensity,
                                    WATER_STEP));
            runs.add(new BeaterRun(together[run], times[run], loads, enough ? 0 : weighedHere / loads, water));
            weighed += weighedHere;
            brought += broughtHere;
        }
        return new Beaten(
                ovenDry,
                fromHand,
                asBought,
                List.copyOf(pots),
                Rounding.roundTo(v.of(soakRatio) * soaked, WATER_STEP),
                List.copyOf(runs),
                weighed,
                brought);
    }

    /**
     * Doses and stock for the stock that the vat and the pours take.
     *
     * @param beaten all that is beaten together
     * @param alone whether it is beaten for this batch alone; else each part is dosed once, after it is divided
     */
    Setting decide(Values v, double used, double stockDensity, Beaten beaten, boolean alone) {
        double c = stockConsistency;
        double ovenDry = toBeat(v, used);
        boolean enough = ovenDry == 0;
        double fromStuff = Math.min(stuffOnHand, needed(v, used));
        double part = alone || enough ? 1 : ovenDry / beaten.ovenDry;
        Beaten own = alone ? beaten : beaten.part(enough ? 0 : part);
        int additions = alone && times.length == 1 && !enough ? own.runs.get(0).loads() : 1;
        double[] product = new double[additives.length];
        double dosed = 0;
        for (int a = 0; a < product.length && !enough; a++) {
            double wanted = additives[a].dose * (own.weighed / additions) / additives[a].active;
            double step = wanted < FEW_STEPS * workshop.fineScale ? workshop.fineScale / 10 : workshop.fineScale;
            product[a] = Math.max(step, Rounding.roundTo(wanted, step));
            dosed += product[a] * additions;
        }
        // The water that makes up the stock is measured in, so its mass is a setting; what the fibre really holds is
        // not.
        double stock = Math.max(own.weighed / c, own.brought + dosed) + fromStuff / c;
        return new Setting(
                ovenDry,
                own.fromHand,
                own.asBought,
                own.pots,
                own.soakWater,
                v.of(soakTime),
                own.runs,
                additions,
                product,
                stock,
                stockDensity,
                fromStuff,
                part,
                alone ? null : whole(beaten, stockDensity, v));
    }

    /**
     * Fibre, pots, soaking and loads for more of the same stuff: what several orders take of it together.
     *
     * @param ovenDry oven-dry fibre wanted, for all of them
     * @param onHand what is on hand, for all of them
     */
    public Setting beatenTogether(Values v, double ovenDry, Map<Fibre, Amount<Mass>> onHand) {
        return whole(beat(v, ovenDry, new int[times.length], new Shelf(onHand)), stockDensity(v), v);
    }

    /** What is beaten together, before it is divided. */
    private Setting whole(Beaten beaten, double stockDensity, Values v) {
        return new Setting(
                beaten.ovenDry,
                beaten.fromHand,
                beaten.asBought,
                beaten.pots,
                beaten.soakWater,
                v.of(soakTime),
                beaten.runs,
                1,
                new double[0],
                Math.max(beaten.weighed / stockConsistency, beaten.brought),
                stockDensity,
                0,
                1,
                null);
    }

    /**
     * Stuff that is beaten together.
     *
     * @param ovenDry oven-dry fibre wanted, before rounding
     * @param fromHand oven-dry fibre of each kind from what is on hand
     * @param asBought mass to weigh of each kind, as bought
     * @param pots what is cooked before
     * @param soakWater water to soak in, m³
     * @param runs the loads
     * @param weighed oven-dry fibre of all loads
     * @param brought what comes to them with its own water
     */
    record Beaten(
            double ovenDry,
            double[] fromHand,
            double[] asBought,
            List<Pot> pots,
            double soakWater,
            List<BeaterRun> runs,
            double weighed,
            double brought) {
        /** A part of it; the loads stay what they are. */
        Beaten part(double part) {
            return new Beaten(
                    part * ovenDry,
                    times(part, fromHand),
                    times(part, asBought),
                    part == 0
                            ? List.of()
                            : pots.stream().map(pot -> pot.part(part)).toList(),
                    part * soakWater,
                    part == 0 ? runs.stream().map(BeaterRun::without).toList() : runs,
                    part * weighed,
                    part * brought);
        }

        private static double[] times(double part, double[] all) {
            return Arrays.stream(all).map(one -> part * one).toArray();
        }
    }

    private double partOf(int run) {
        double part = 0;
        for (int f : together[run]) {
            part += fibres[f].share;
        }
        return part;
    }

    // ------------------------------------------------------------------------------------------------ what comes of it

    private Pot pot(int f, Kettle kettle, double raw, double stuff, double solids) {
        double step = workshop.fineScale;
        return new Pot(
                f,
                raw,
                Rounding.roundTo(kettle.dose * raw, step),
                Rounding.roundTo(cookLiquor * raw, WATER_STEP),
                cookTime,
                stuff,
                stuff / solids);
    }

    /** Oven-dry fibre, before it is cooked. */
    private static double raw(FibreLine fibre, double fromHand, double asBought, Values v) {
        return fromHand + Moisture.ovenDryOfWetBasis(asBought, v.of(fibre.moisture));
    }

    /** The share of it that is beaten. */
    private static double left(FibreLine fibre, Values v) {
        return fibre.kettle == null ? 1 : fibre.kettle.leaves(v);
    }

    Made made(Setting set, Values v) {
        double raw = 0;
        double weighed = 0;
        for (int f = 0; f < fibres.length; f++) {
            double each = raw(fibres[f], set.fromHand[f], set.asBought[f], v);
            raw += each;
            weighed += each * left(fibres[f], v);
        }
        double stuff = 0;
        double stock = set.stock;
        for (Pot pot : set.pots) {
            FibreLine fibre = fibres[pot.fibre];
            double came = raw(fibre, set.fromHand[pot.fibre], set.asBought[pot.fibre], v) * left(fibre, v);
            stuff += came;
            stock += (came - pot.stuff) / stockConsistency;
        }
        double[] inStock = new double[additives.length];
        double[] dosed = new double[additives.length];
        for (int a = 0; a < inStock.length; a++) {
            dosed[a] = additives[a].dose * set.fromStuff;
            inStock[a] = (set.product[a] * set.additions * additives[a].active + dosed[a]) / stock;
        }
        return new Made(
                stock,
                raw,
                stuff,
                weighed,
                (weighed + set.fromStuff) / stock,
                inStock,
                v.of(handling),
                set.fromStuff,
                dosed);
    }

    /** What the stuff is. */
    static void forecast(int batch, State state, Figures out) {
        out.set(BEATING, batch, state.beating);
        out.set(DRAINABILITY, batch, state.drainability);
        out.set(WATER_RETENTION, batch, state.waterRetention);
        out.set(FREE_SHRINKAGE, batch, state.freeShrinkage);
    }

    /** What came out of the pots, and what the stock is. */
    static void forecast(int batch, Setting set, Made made, Figures out) {
        out.set(COOKED, batch, made.stuff / set.part);
        out.set(STOCK_CONSISTENCY, batch, made.consistency);
    }

    /** Hours at the pots, their boiling apart. */
    public double cookingHours(Setting set, Values v) {
        return cookLabour == null ? 0 : set.part * set.pots.size() * v.of(cookLabour);
    }

    /** How long the roll of the beater runs by itself, s. */
    public double rollTime(Setting set) {
        double time = 0;
        for (BeaterRun run : set.runs) {
            time += hasBeater ? run.loads() * run.time() : 0;
        }
        return set.part * time;
    }

    /** How long pots boil, one after the other, s. */
    public static double boilTime(Setting set) {
        double time = 0;
        for (Pot pot : set.whole().pots) {
            time += pot.time();
        }
        return set.part * time;
    }

    /** Trial swatches of each addition, for a colour that is to be met; 0 where none is. */
    public double trials() {
        return trials;
    }

    /** Hands on one pot, on one load, and at all the additives and their trials. */
    public StageHours handling(Setting set, Values v) {
        double judging = colourTrial == null ? 0 : trials * v.of(colourTrial);
        return new StageHours(
                cookLabour == null ? 0 : v.of(cookLabour),
                hasBeater ? v.of(beatingLoad) : 0,
                additives.length == 0 || !set.isBeaten() ? 0 : set.additions * (v.of(additiveLoad) + judging));
    }

    /** Hands at the pots, at the beater, at the scale and at the charging of the vat. */
    void forecastHours(int batch, Setting set, double charging, Values v, Figures out) {
        StageHours each = handling(set, v);
        double beat = 0;
        for (BeaterRun run : set.runs) {
            beat += set.part * run.loads() * each.load();
        }
        out.set(HOURS, batch, cookingHours(set, v) + beat + each.additives() + charging);
    }
}
