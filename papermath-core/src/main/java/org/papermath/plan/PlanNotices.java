package org.papermath.plan;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Time;
import org.jspecify.annotations.Nullable;
import org.papermath.drying.Dryer;
import org.papermath.engine.BatchFigure;
import org.papermath.engine.CuttingAndFolding;
import org.papermath.engine.DryingSheets;
import org.papermath.engine.Engine;
import org.papermath.engine.Figure;
import org.papermath.engine.Figures;
import org.papermath.engine.FillingVat;
import org.papermath.engine.FinishedSheet;
import org.papermath.engine.FormingSheets;
import org.papermath.engine.PieceFigure;
import org.papermath.engine.PieceWork;
import org.papermath.engine.Posts;
import org.papermath.engine.PreparingStock;
import org.papermath.engine.Pressing;
import org.papermath.engine.Settings;
import org.papermath.engine.Slot;
import org.papermath.engine.Values;
import org.papermath.engine.Workshop;
import org.papermath.equation.Psychrometrics;
import org.papermath.equation.Room;
import org.papermath.equation.StackDrying;
import org.papermath.equation.VatBalance;
import org.papermath.evidence.Assumption;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Estimate;
import org.papermath.evidence.Notice;
import org.papermath.evidence.Scope;
import org.papermath.fibre.Fibre;
import org.papermath.fibre.Fibres;
import org.papermath.notice.SheetNotices;
import org.papermath.notice.StockNotices;
import org.papermath.numeric.Rounding;
import org.papermath.order.Order;
import org.papermath.order.Recipe;
import org.papermath.order.Studio;
import org.papermath.order.StuffOnHand;
import org.papermath.press.Felts;
import org.papermath.press.Press;
import org.papermath.pulp.Additive;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.RelativeHumidity;
import org.papermath.quantity.SheetPressure;
import org.papermath.quantity.Units;
import org.papermath.text.Digits;

/** What a plan should not be read without. */
final class PlanNotices {
    /** Loads that gain more than this over a full one are reported. */
    private static final double PART_LOAD = 1.2;

    /** A filling is worth naming where it is so much smaller. */
    private static final double LESS_ENOUGH = 0.8;

    private static final double ZERO_CELSIUS = 273.15;

    /** A note names so many unused values and counts the others; all are among its arguments. */
    private static final int MOST_NAMED = 8;

    private final Order order;
    private final Studio studio;
    private final Engine engine;
    private final Values likely;
    private final Settings settings;
    private final Estimates numbers;
    private final MakingPlan plan;
    private final Asked asked;
    private final List<Notice> warnings = new ArrayList<>();
    private final List<Notice> notes = new ArrayList<>();

    private PlanNotices(
            Order order,
            Studio studio,
            Engine engine,
            Settings settings,
            Estimates numbers,
            MakingPlan plan,
            Asked asked) {
        this.order = order;
        this.studio = studio;
        this.engine = engine;
        this.likely = engine.likely();
        this.settings = settings;
        this.numbers = numbers;
        this.plan = plan;
        this.asked = asked;
    }

    static List<Notice> of(
            Order order,
            Studio studio,
            Engine engine,
            Settings settings,
            Estimates numbers,
            MakingPlan plan,
            Asked asked) {
        PlanNotices notices = new PlanNotices(order, studio, engine, settings, numbers, plan, asked);
        for (int b = 0; b < engine.batches(); b++) {
            notices.batch(b);
        }
        for (int p = 0; p < engine.pieces(); p++) {
            notices.piece(p);
        }
        notices.room();
        notices.schedule();
        notices.ownSteps();
        notices.basis();
        notices.unused();
        List<Notice> all = new ArrayList<>(notices.warnings);
        all.addAll(notices.notes);
        return List.copyOf(all);
    }

    /** Notes values of one's own that nothing asked for: some are for things not here, most often a name misspelt. */
    private void unused() {
        // What the days rest on is asked for when the tasks are made.
        plan.askDays();
        List<Assumption> unused = studio.assumptions().own().stream()
                .filter(own -> !engine.known().isAsked(own) && !asked.has(own))
                .toList();
        if (unused.isEmpty()) {
            return;
        }
        Set<String> names = names();
        List<String> known = new ArrayList<>();
        for (Assumption own : unused) {
            List<String> strange = Stream.of(own.scope().place(), own.scope().subject())
                    .flatMap(Optional::stream)
                    .filter(name -> !names.contains(name))
                    .toList();
            strange.forEach(name -> stranger(own, name));
            if (strange.isEmpty()) {
                known.add(own.key());
            }
        }
        if (!known.isEmpty()) {
            int more = known.size() - MOST_NAMED;
            note(
                    "assumption.unused",
                    "of the values of your own, this order does not use "
                            + String.join(", ", known.subList(0, Math.min(known.size(), MOST_NAMED)))
                            + (more > 0 ? " and " + more + " more" : "") + ".",
                    "keys",
                    List.copyOf(known));
        }
    }

    /** Returns every name a value can hold for. */
    private Set<String> names() {
        Set<String> names = new HashSet<>(Set.of("card", "envelope", "small", "large"));
        studio.beater().ifPresent(one -> names.add(one.name()));
        studio.vat().ifPresent(one -> names.add(one.name()));
        studio.press().ifPresent(one -> names.add(one.name()));
        studio.dryers().forEach(one -> names.add(one.name()));
        studio.onHand().keySet().forEach(fibre -> names.add(fibre.id()));
        Fibres.all().forEach(fibre -> names.add(fibre.id()));
        Assumptions.edition(studio.assumptions().edition())
                .all()
                .forEach(one -> one.scope().subject().ifPresent(names::add));
        for (Recipe recipe : order.recipes()) {
            names.add(recipe.name());
            recipe.furnish().scope().subject().ifPresent(names::add);
            recipe.furnish().shares().keySet().forEach(fibre -> {
                names.add(fibre.id());
                names.addAll(fibre.kin());
                recipe.furnish().form(fibre).scope(fibre).subject().ifPresent(names::add);
            });
            recipe.additives().forEach(dose -> names.add(dose.additive().name()));
        }
        order.pieces().forEach(piece -> names.add(piece.name()));
        return names;
    }

    private void stranger(Assumption own, String name) {
        note(
                "assumption.stranger",
                "the value of " + own.key() + " is not used: nothing here is called \"" + name + "\". Check the name.",
                "key",
                own.key(),
                "name",
                name);
    }

    private void warn(String code, String text, Object... arguments) {
        warnings.add(Notice.warning(code, text, arguments));
    }

    private void note(String code, String text, Object... arguments) {
        notes.add(Notice.note(code, text, arguments));
    }

    private void add(Notice notice) {
        (notice.level() == Notice.Level.WARNING ? warnings : notes).add(notice);
    }

    private double limit(String id) {
        return asked.si(id, Scope.GENERAL);
    }

    private void partLoad(int b, int run, Recipe recipe) {
        PreparingStock batch = engine.stock(b);
        PreparingStock.Setting set = settings.stock(b);
        Fibre first = recipe.furnish().fibres().get(set.runs().get(run).fibres()[0]);
        String of = "batch " + recipe.name() + ": " + (set.runs().size() > 1 ? first.name() + ": " : "");
        double share = set.runs().get(run).ovenDry() / batch.fullLoad();
        double gain = batch.gain(set, run);
        if (gain > PART_LOAD) {
            double hours = recipe.beating(first).si() / 3600;
            note(
                    "beater.part-load",
                    of + "each load is " + Digits.percent(share) + " of a full one and is beaten the faster: "
                            + Digits.three(hours) + " h do what " + Digits.three(hours * gain)
                            + " h do in a full beater. If the recipe means a full one, beat "
                            + Digits.three(hours / gain) + " h.",
                    "batch",
                    recipe.name(),
                    "share",
                    share,
                    "hours",
                    hours / gain);
        }
        if (share < limit("beater.load-range-low")) {
            note(
                    "beater.small-load",
                    of + "each load is " + Digits.percent(share)
                            + " of a full one. A smaller load is beaten the faster, which is counted"
                            + " down to " + Digits.percent(limit("beater.load-range-low"))
                            + " and not known below. Read the drainability.",
                    "batch",
                    recipe.name(),
                    "share",
                    share);
        }
    }

    /** Beaten stuff sours. */
    private void oldStuff(int b, String of, String name) {
        if (settings.stock(b).fromStuff() == 0) {
            return;
        }
        Optional<LocalDate> made = studio.stuffOnHand().stream()
                .filter(stuff -> stuff.recipe().equals(name))
                .findFirst()
                .flatMap(StuffOnHand::made);
        if (made.isEmpty() || order.due().isEmpty()) {
            return;
        }
        Optional<LocalDate> formed = plan.schedule().steps().stream()
                .filter(step -> !step.isOwn() && step.name().startsWith("form"))
                .findFirst()
                .flatMap(Schedule.Step::start);
        if (formed.isEmpty()) {
            return;
        }
        long days = ChronoUnit.DAYS.between(made.get(), formed.get());
        double keeps = limit("stock.keeps") / 86_400;
        if (days > keeps) {
            warn(
                    "stuff.old",
                    of + "the stuff on hand was beaten " + made.get() + ", " + days + " days before it is formed; stuff"
                            + " keeps about " + Digits.three(keeps)
                            + " days, cool. What smells or slips between the fingers is not formed: strain it off and"
                            + " beat anew.",
                    "batch",
                    name,
                    "made",
                    made.get().toString(),
                    "days",
                    days,
                    "most",
                    keeps);
        }
    }

    /** Fibre that stays in the vat is fibre beaten for nothing. */
    private void fibreLeft(int b, String of, String name) {
        double left = numbers.bands().likely().of(FillingVat.VAT_FIBRE, b);
        double all = settings.stock(b).beaten() + settings.stock(b).fromStuff();
        if (!(left > limit("vat.left-share") * all)) {
            return;
        }
        double band = likely.of(engine.vat(b).tolerance());
        double lifted = 0;
        for (int p = 0; p < engine.pieces(); p++) {
            FillingVat.Setting set = settings.vat(p);
            if (engine.piece(p).batch() == b && set.dipped()) {
                lifted = Math.max(lifted, set.dips() * set.lift());
            }
        }
        double volume = studio.vat().orElseThrow().workingVolume().si();
        double enough = VatBalance.leastStockForBand(band, 1, lifted)
                / engine.workshop().waterDensity();
        note(
                "vat.fibre-left",
                of + Digits.percent(left / all) + " of the fibre, " + Kinds.MASS.ofSi(left, "g")
                        + ", stays in the vat. "
                        + (enough < LESS_ENOUGH * volume
                                ? "A filling of " + Kinds.VOLUME.ofSi(enough, "L")
                                        + " would do, if the mould goes in; or "
                                : "")
                        + "run the vat down at the end, pour the sheets, or strain it for the next batch.",
                "batch",
                name,
                "share",
                left / all,
                "left",
                left);
    }

    /** Notes a colour that nothing gives, and one that what is left of the batch before spoils. */
    private void colour(Recipe recipe, BatchPlan batch, String of) {
        if (batch.colour().isEmpty()) {
            return;
        }
        ColourPlan colour = batch.colour().get();
        boolean pigment =
                recipe.additives().stream().anyMatch(dose -> dose.additive().purpose() == Additive.Purpose.PIGMENT);
        if (!pigment) {
            warn(
                    "colour.no-dose",
                    of + "a colour is wanted, " + colour.wanted().lab()
                            + ", and no pigment is in the recipe. Match it to the swatches of your pigments.",
                    "batch",
                    recipe.name(),
                    "wanted",
                    colour.wanted().lab().toString());
        }
        double seen = studio.assumptions().si("colour.just-seen", Scope.GENERAL);
        if (colour.leftOfBefore() > seen) {
            warn(
                    "colour.trace",
                    of + "what a wash leaves of " + colour.before().orElse("")
                            + " in beater, vat and felts moves the colour by"
                            + " about ΔE00 " + Digits.three(colour.leftOfBefore())
                            + ", which can be seen. Wash twice, or make the two on other days with felts of their own.",
                    "batch",
                    recipe.name(),
                    "before",
                    colour.before().orElse(""),
                    "difference",
                    colour.leftOfBefore());
        }
    }

    private void batch(int b) {
        PreparingStock batch = engine.stock(b);
        Recipe recipe = plan.batches().get(b).recipe();
        String name = recipe.name();
        String of = "batch " + name + ": ";
        if (recipe.furnish().isBlend()) {
            add(StockNotices.blend(
                            recipe.furnish().toString(),
                            "drainability, shrinkage and density",
                            "Make one test sheet before the run.")
                    .about("batch", name));
        }
        if (!batch.knowsKinetics()) {
            warn(
                    "beating.no-rate",
                    of + "there is no default for how fast one of its fibres beats; a rate between those of other"
                            + " fibres stands in. Measure the drainability after a known time and give it in the"
                            + " recipe.",
                    "batch",
                    name);
        }
        if (batch.cooksBeyond()) {
            warn(
                    "cook.dose-beyond",
                    of + "what cooking leaves was only measured from "
                            + Digits.percent(limit("cook.dose-low")) + " to "
                            + Digits.percent(limit("cook.dose-high"))
                            + " of caustic soda on the fibre; the end of that is taken. Weigh the stuff that comes out.",
                    "batch",
                    name,
                    "low",
                    limit("cook.dose-low"),
                    "high",
                    limit("cook.dose-high"));
        }
        loads(batch, recipe, name);
        if (studio.beater().isPresent()) {
            StockNotices.thick(
                            Kinds.CONSISTENCY.ofSi(batch.beaterConsistency(), "%"),
                            asked::si,
                            Scope.at(studio.beater().get().name()))
                    .ifPresent(one -> add(one.about("batch", name)));
            for (int run = 0;
                    run < settings.stock(b).runs().size()
                            && plan.batches().get(b).beatingStage().isDone();
                    run++) {
                partLoad(b, run, recipe);
            }
        } else if (recipe.isBeaten()) {
            note(
                    "beater.none",
                    of + "without a beater the plan takes the stuff as beaten elsewhere the way the recipe says.",
                    "batch",
                    name);
        }
        fibreLeft(b, of, name);
        oldStuff(b, of, name);
        for (BatchFigure figure : Figures.ofBatches()) {
            openBand(of, "batch", name, figure, numbers.bands().likely().place(figure, b));
        }
        plan.batches()
                .get(b)
                .shortage()
                .ifPresent(one -> note(
                        "stock.may-run-short",
                        of + "if the fibre is moister"
                                + (plan.batches().get(b).cooking().isPresent() ? ", cooking leaves less" : "")
                                + " or more is lost in handling than usual, the stock runs short by up to "
                                + Digits.three(one.upTo().in("kg")) + " kg"
                                + " (in about "
                                + Units.fourDigits(Math.rint(one.chance().in("%"))) + " of 100 makings): the last"
                                + " sheets are then left out or thinner. Weigh out a little more, or measure the moisture of the"
                                + " fibre.",
                        "batch",
                        name,
                        "shortBy",
                        one.upTo().si(),
                        "chance",
                        one.chance().si()));
        Assumption end = trialEnd(recipe);
        if (end != null) {
            StockNotices.beyondTrial(numbers.bands().likely().of(PreparingStock.BEATING, b), end)
                    .ifPresent(one -> add(one.about("batch", name)));
        }
        colour(recipe, plan.batches().get(b), of);
        boolean aid =
                recipe.additives().stream().anyMatch(d -> d.additive().purpose() == Additive.Purpose.RETENTION_AID);
        boolean particles =
                recipe.additives().stream().anyMatch(d -> d.additive().purpose().isParticle());
        if (particles && !aid) {
            note(
                    "additive.no-aid",
                    of + "pigment or filler without a retention aid: about half of it stays in the water and"
                            + " colours the vat.",
                    "batch",
                    name);
        }
        for (int a = 0; a < recipe.additives().size(); a++) {
            if (recipe.additives().get(a).additive().purpose() == Additive.Purpose.CARBONATE) {
                double kept = batch.dose(a) * likely.of(batch.retention(a));
                if (kept / (1 + kept) < 0.02) {
                    note(
                            "carbonate.below-standard",
                            of + "about " + Digits.three(100 * kept / (1 + kept))
                                    + " % carbonate stays in the sheet;"
                                    + " the standards for permanent paper (ISO 9706, ANSI/NISO Z39.48) ask for 2 %.",
                            "batch",
                            name,
                            "kept",
                            kept / (1 + kept));
                }
            }
        }
    }

    /** Warns of pigment and filler that leave a sheet weak. */
    private void loads(PreparingStock batch, Recipe recipe, String name) {
        for (int a = 0; a < recipe.additives().size(); a++) {
            double load = batch.load(a, engine.likely());
            Scope purpose =
                    Scope.of(recipe.additives().get(a).additive().purpose().subject());
            StockNotices.heavyLoad(load, asked.si("additive.load-warning", purpose))
                    .ifPresent(one -> add(one.about("batch", name)));
        }
    }

    /** A sheet that drains so slowly that nobody holds the mould for it. */
    private void slow(PiecePlan read, String of) {
        Amount<Time> most = Kinds.TIME.ofSi(limit("mould.drain-warning"), "s");
        read.drainTimeStage()
                .optional()
                .map(Estimate::likely)
                .filter(time -> time.si() > most.si())
                .ifPresent(time -> warn(
                        "drain-time.long",
                        of + "a sheet drains in " + time + "; above " + most
                                + " the mould is hard to hold and fibres sink together. Beat less, warm the vat, or build"
                                + " the sheet up of two dips.",
                        "piece",
                        read.name(),
                        "given",
                        time.toString(),
                        "limit",
                        most.toString()));
    }

    /** Paper so thick where it is folded that it cracks: at the second fold it lies double. */
    private void fold(PiecePlan read, String of) {
        int folds = read.piece().folds();
        if (folds == 0) {
            return;
        }
        Amount<Length> most = Kinds.LENGTH.ofSi(limit("fold.thickness-warning"), "mm");
        read.finished()
                .caliperStage()
                .optional()
                .map(caliper -> Kinds.LENGTH.ofSi(caliper.likely().si() * (1 << (folds - 1)), "mm"))
                .filter(thick -> thick.si() > most.si())
                .ifPresent(thick -> warn(
                        "fold.thick",
                        of + "at its last fold " + thick + " of paper is folded; above " + most
                                + " it cracks on the outside. Score it first, or make it thinner.",
                        "piece",
                        read.name(),
                        "given",
                        thick.toString(),
                        "limit",
                        most.toString()));
    }

    /** What is lifted and poured, and what the steps of the tools do to it. */
    private void vat(int p, PiecePlan read, String of) {
        FillingVat.Setting set = settings.vat(p);
        String name = read.name();
        if (studio.vat().isPresent() && set.tooWide()) {
            FormingSheets.Setting sheet = settings.sheet(p);
            warn(
                    "vat.too-narrow",
                    of + read.vatStage().reason() + ".",
                    "piece",
                    name,
                    "sheet",
                    PlanReading.sides(sheet.openingWidth(), sheet.openingHeight()),
                    "vat",
                    PlanReading.sides(
                            engine.workshop().vatWidth(), engine.workshop().vatLength()));
        } else if (studio.vat().isPresent() && !set.dipped() && set.dips() > 1) {
            warn("vat.deckle-too-shallow", of + read.vatStage().reason() + ".", "piece", name, "dips", set.dips());
        } else if (studio.vat().isPresent() && !set.dipped()) {
            warn(
                    "vat.lift-above-vat",
                    of + read.vatStage().reason() + ".",
                    "piece",
                    name,
                    "given",
                    Kinds.VOLUME
                            .ofSi(
                                    set.wantedLift()
                                            / settings.stock(engine.piece(p).batch())
                                                    .stockDensity(),
                                    "L")
                            .toString(),
                    "most",
                    studio.vat().get().workingVolume().toString(),
                    "least",
                    Kinds.VOLUME.ofSi(set.leastVatVolume(), "L").toString());
        } else if (set.leastVatVolume() > 0) {
            double tolerance = likely.of(engine.vat(engine.piece(p).batch()).tolerance());
            add(StockNotices.vatTooSmall(
                            Kinds.SHARE.ofSi(tolerance, "%"),
                            Kinds.MASS.ofSi(set.lift(), "kg"),
                            Kinds.VOLUME.ofSi(set.leastVatVolume(), "L"))
                    .about("piece", name));
        }
        if (set.dipped()) {
            dip(of, name, p, set);
        }
        waiting(of, name, p);
        FillingVat.Step steps = set.step();
        if (Math.abs(steps.shift()) > limit("tool.step-shift")) {
            String tool = steps.ofJug() ? "jug" : "scale";
            String step = steps.ofJug()
                    ? studio.jugStep().toString()
                    : studio.scaleStep().toString();
            String finer = steps.ofJug()
                    ? Kinds.VOLUME.ofSi(steps.finer(), "mL").toString()
                    : Kinds.MASS.ofSi(steps.finer(), "g").toString();
            boolean weigh = set.dipped()
                    && steps.ofJug()
                    && steps.evenConsistency() <= set.vat().consistency();
            String other = weigh
                    ? "weigh the stock: " + Kinds.MASS.ofSi(set.wantedStock(), "kg") + " at most"
                    : "thin the " + (steps.ofJug() ? "stock" : "vat") + " to " + Digits.percent(steps.evenConsistency())
                            + ", where the steps come out even";
            warn(
                    "tool.step-too-coarse",
                    of + "the step of the " + tool + ", " + step + ", makes the sheet "
                            + Digits.percent(Math.abs(steps.shift())) + (steps.shift() < 0 ? " light" : " heavy")
                            + ". Measure to "
                            + finer + ", or " + other + ".",
                    "piece",
                    name,
                    "tool",
                    tool,
                    "step",
                    step,
                    "shift",
                    steps.shift(),
                    "finer",
                    finer,
                    "consistency",
                    steps.evenConsistency());
        }
    }

    /** Where hands wait for the mould to drain, and what one more mould would save. */
    private void waiting(String of, String name, int p) {
        FormingSheets forming = engine.piece(p).forming();
        FormingSheets.Setting sheet = settings.sheet(p);
        double hands = forming.handTime(sheet.area(), likely);
        double busy = numbers.bands().likely().of(FormingSheets.AT_VAT, p) / sheet.sheets();
        if (busy <= hands * (1 + Rounding.GUARD)) {
            return;
        }
        int moulds = forming.inTurn(sheet);
        double then = Math.max(hands, busy * moulds / (moulds + 1));
        double saved = (busy - then) * sheet.sheets();
        // Ways that take hands about the same time are alike here as they are where a mould is taken.
        if (busy - then < limit("labour.mould-window") * busy) {
            return;
        }
        note(
                "vat.mould-waits",
                of + "a sheet keeps the vat waiting " + Digits.three(busy) + " s, hands need " + Digits.three(hands)
                        + " s for it. " + (moulds > 1 ? "One more mould" : "A second mould")
                        + " of the same size, worked in turn, saves " + Digits.three(saved / 3600) + " h of "
                        + Digits.three(busy * sheet.sheets() / 3600) + " h.",
                "piece",
                name,
                "busy",
                busy,
                "hands",
                hands,
                "saved",
                saved);
    }

    /** A sheet that takes more than one dip, and a mould too heavy to hold level. */
    private void dip(String of, String name, int p, FillingVat.Setting set) {
        VatPlan vat = plan.pieces().get(p).vat();
        if (set.dips() > 1) {
            double needed = set.dips() * vat.dipDepth().si();
            double thicker = set.vat().consistency() * needed / set.standing();
            double most = engine.vat(engine.piece(p).batch())
                    .mostConsistency(numbers.bands()
                            .likely()
                            .of(PreparingStock.DRAINABILITY, engine.piece(p).batch()));
            warn(
                    "vat.several-dips",
                    of + "the deckle holds " + Kinds.LENGTH.ofSi(set.standing(), "mm") + " of stock with what drains"
                            + " meanwhile, the sheet takes " + Kinds.LENGTH.ofSi(needed, "mm")
                            + ": it is built up of " + set.dips() + " dips. One dip would take "
                            + (thicker <= most
                                    ? "a vat at " + Digits.percent(thicker) + " (set it in the recipe), or "
                                    : "")
                            + "a deckle that deep; or pour the sheet.",
                    "piece",
                    name,
                    "dips",
                    set.dips(),
                    "given",
                    set.standing(),
                    "needed",
                    needed);
        }
        if (set.lift() > limit("vat.lift-alone")) {
            note(
                    "vat.heavy-lift",
                    of + "each dip lifts " + vat.lift() + " of stock besides the mould; above "
                            + Kinds.MASS.ofSi(limit("vat.lift-alone"), "kg")
                            + " two people lift. A smaller mould or a thicker vat is lighter.",
                    "piece",
                    name,
                    "lift",
                    set.lift());
        }
    }

    /** Reports which forecasts have a band without an end, and what to time or measure. */
    private void openBand(String of, String whose, String name, Figure figure, int at) {
        boolean above = numbers.bands().isOpenAbove(at);
        boolean below = numbers.bands().isOpenBelow(at);
        if (figure.kind() != null && (above || below)) {
            note(
                    "forecast.open-band",
                    of + "at one end of an assumption, the " + figure.words()
                            + " cannot be calculated; its band has no end "
                            + (above ? below ? "on either side" : "above" : "below")
                            + ". Measure it on a first sheet.",
                    whose,
                    name,
                    "forecast",
                    figure.words());
        }
    }

    private @Nullable Assumption trialEnd(Recipe recipe) {
        for (Fibre fibre : recipe.furnish().fibres()) {
            var found = asked.find("shrinkage.trial-end", fibre.scope());
            if (found.isPresent()) {
                return found.get();
            }
        }
        return null;
    }

    private void piece(int p) {
        PieceWork work = engine.piece(p);
        FormingSheets.Setting sheet = settings.sheet(p);
        PiecePlan read = plan.pieces().get(p);
        String name = read.name();
        String of = "piece " + name + ": ";
        for (PieceFigure figure : Figures.ofPieces()) {
            openBand(of, "piece", name, figure, numbers.bands().likely().place(figure, p));
        }
        vat(p, read, of);
        slow(read, of);
        fold(read, of);
        if (read.forming().deckleToMake()) {
            note(
                    sheet.mould() < 0 ? "mould.none-large-enough" : "deckle.to-make",
                    of
                            + (sheet.mould() < 0
                                    ? "no mould of the studio is large enough; a mould and deckle of "
                                    : "a deckle of ")
                            + read.forming()
                                    .shapedDeckle()
                                    .map(
                                            shaped -> shaped
                                                    + (sheet.perSheet() == 1
                                                            ? ""
                                                            : ", together "
                                                                    + read.forming()
                                                                            .opening() + ",")
                                                    + " has to be made; cut it along its drawing, which takes the shrinkage in.")
                                    .orElseGet(() -> read.forming().opening() + " has to be made or adapted."),
                    "piece",
                    name);
        }
        Pressing.Setting press = settings.press(p);
        Slot least = work.finished().hasMeasuredDensity()
                ? null
                : engine.stock(work.batch()).leastPressure();
        if (press == null && least != null) {
            note(
                    "press.none",
                    of + (studio.press().isPresent() ? "unpressed," : "without a press")
                            + " its density is taken at the least pressure the model was made for ("
                            + Units.fourDigits(likely.of(least) / 1000)
                            + " kPa, at-model-limit); expect a bulkier sheet.",
                    "piece",
                    name);
        } else if (press != null && least != null && press.pressure() < likely.of(least)) {
            warn(
                    "density.pressure-low",
                    of + "pressed at " + read.press().pressure() + ": below "
                            + Units.fourDigits(likely.of(least) / 1000)
                            + " kPa the density is taken as of that pressure"
                            + " (at-model-limit); expect a bulkier sheet.",
                    "piece",
                    name,
                    "given",
                    read.press().pressure().toString(),
                    "limit",
                    Kinds.SHEET_PRESSURE.ofSi(likely.of(least), "kPa").toString());
        }
        if (press != null && press.limited()) {
            String part = press.byPull()
                    ? "pull at the lever"
                    : PlanReading.part(read.press().press(), read.press().weakest());
            warn(
                    "press.limited",
                    of + "the " + part + " holds the press to "
                            + read.press().force()
                            + (press.byPull()
                                    ? ""
                                    : ", "
                                            + Digits.percent(
                                                    likely.of(work.pressing().allowed())) + " of its rating")
                            + "; the sheet gets "
                            + read.press().pressure() + " instead of "
                            + Units.fourDigits(likely.of(work.pressing().wish()) / 1000)
                            + " kPa.",
                    "piece",
                    name,
                    "part",
                    part);
        }
        if (press != null) {
            SheetNotices.pressure(Kinds.SHEET_PRESSURE.ofSi(press.pressure(), "kPa"), asked::si)
                    .ifPresent(one -> add(one.about("piece", name)));
        }
        String wet = PlanReading.sides(sheet.openingWidth(), sheet.openingHeight());
        boolean felted = settings.posts(p) != null;
        if (studio.felts().isPresent() && !felted) {
            Felts felts = studio.felts().get();
            warn(
                    "felts.too-small",
                    of + read.postsStage().reason() + ".",
                    "piece",
                    name,
                    "sheet",
                    wet,
                    "felts",
                    PlanReading.sides(felts.width().si(), felts.length().si()));
        }
        if (studio.press().isPresent() && !engine.workshop().isCovered(sheet.openingWidth(), sheet.openingHeight())) {
            Press owned = studio.press().orElseThrow();
            String platen = PlanReading.sides(
                    owned.platenWidth().si(), owned.platenLength().si());
            warn(
                    "press.platen-too-small",
                    of + "the wet sheet of " + wet + " is larger than the platen of " + platen
                            + ": what lies outside it is not pressed. Lay stiff boards of the size of the sheet above and below"
                            + " the post, or press no sheet larger than the platen.",
                    "piece",
                    name,
                    "sheet",
                    wet,
                    "platen",
                    platen);
        }
        if (press != null && studio.felts().isEmpty()) {
            note(
                    "felts.none",
                    of + "a press without felts: the solids after pressing are those of a felted sheet.",
                    "piece",
                    name);
        }
        double grammage = numbers.likely(FinishedSheet.GRAMMAGE, p);
        if (SheetNotices.isThin(grammage, asked::si)) {
            add(SheetNotices.thin(Kinds.GRAMMAGE.ofSi(grammage, "g/m2"), asked::si)
                    .about("piece", name));
        }
        double density = numbers.likely(FinishedSheet.DENSITY, p);
        if (!Double.isNaN(density)) {
            Scope dense = engine.stock(work.batch()).dense();
            SheetNotices.doubtful(Kinds.DENSITY.ofSi(density, "kg/m3"), asked::si, dense)
                    .ifPresent(one -> add(one.about("piece", name)));
        }
        if (Double.isNaN(density)) {
            note(
                    "sheet.no-density",
                    of + "the density of one of its fibres has no default; weigh and measure one dry sheet."
                            + (work.held() < 0
                                    ? ""
                                    : " The envelope is laid out with "
                                            + Units.fourDigits(
                                                    likely.of(work.finished().standIn())) + " kg/m³."),
                    "piece",
                    name);
        }
        if (!read.drainTimeStage().isDone()) {
            note("drain-time.by-stopwatch", of + read.drainTimeStage().reason() + ".", "piece", name);
        }
        if (felted) {
            studio.press()
                    .flatMap(Press::daylight)
                    .flatMap(daylight ->
                            SheetNotices.high(Kinds.LENGTH.ofSi(numbers.likely(Posts.POST_HEIGHT, p), "mm"), daylight))
                    .ifPresent(one -> add(one.about("piece", name)));
        }
        if (numbers.isKnown(Posts.POST_MASS, p)) {
            SheetNotices.heavy(Kinds.MASS.ofSi(numbers.likely(Posts.POST_MASS, p), "kg"), asked::si)
                    .ifPresent(one -> add(one.about("piece", name)));
        }
        if (read.dryingStage().code().equals("drying.never-saturated")) {
            add(SheetNotices.saturated(studio.room().humidity()).about("piece", name));
        }
        drying(p, read, of);
        if (read.envelopeStage().isDone()) {
            envelope(read, of);
        }
        if (read.mailStage().isDone() && read.mail().verdict().service().isEmpty()) {
            warn("mail.refused", of + read.mail().verdict() + ".", "piece", name);
        }
        read.mailStage().optional().ifPresent(mail -> mail.verdict().notices().forEach(notes::add));
        read.piece().sample().ifPresent(one -> {
            double ofSample = one.mass().si()
                    / one.width().si()
                    / one.height().si()
                    / one.caliper().si();
            SheetNotices.doubtful(Kinds.DENSITY.ofSi(ofSample, "kg/m3"), asked::si, Scope.GENERAL)
                    .ifPresent(doubtful -> warn(
                            "sample.density",
                            of + "the sample by its weight, sides and caliper: " + doubtful.text(),
                            "piece",
                            name,
                            "density",
                            Kinds.DENSITY.ofSi(ofSample, "kg/m3").toString()));
        });
        if (read.piece().sample().isPresent() && numbers.isKnown(FinishedSheet.CALIPER, p)) {
            double wanted = read.piece().sample().get().caliper().si();
            double differs = numbers.likely(FinishedSheet.CALIPER, p) / wanted - 1;
            if (Math.abs(differs) > 0.1) {
                note(
                        "sample.thickness",
                        of + "at the weight of the sample the sheet comes out "
                                + Digits.percent(Math.abs(differs))
                                + (differs > 0 ? " thicker" : " thinner")
                                + " than the sample; press or beat otherwise to match it.",
                        "piece",
                        name,
                        "differs",
                        differs);
            }
        }
        if (!work.deckleEdge() && sheet.mould() >= 0) {
            double lost = Math.max(settings.size(p).width(), settings.size(p).height())
                    - Math.max(numbers.low(CuttingAndFolding.WIDTH, p), numbers.low(CuttingAndFolding.HEIGHT, p));
            if (lost > 0.001) {
                note(
                        "sheet.may-be-short",
                        of + "if it shrinks more than likely, the sheet comes out up to "
                                + Units.fourDigits(lost * 1000)
                                + " mm too short for its trim. Measure one dry sheet first.",
                        "piece",
                        name);
            }
        }
    }

    /** What the weight on a stack holds, what rims do, and what becomes of the room. */
    private void drying(int p, PiecePlan read, String of) {
        PieceWork work = engine.piece(p);
        DryingSheets drying = work.drying();
        FormingSheets.Setting sheet = settings.sheet(p);
        if (!drying.isLaid(sheet)) {
            Dryer dryer = Objects.requireNonNull(drying.dryer());
            String wet = PlanReading.sides(sheet.openingWidth(), sheet.openingHeight());
            String layer = dryer.layer().orElseThrow().toString();
            warn(
                    "dryer.layer-too-small",
                    of + "the wet sheet of " + wet + " is larger than a layer of " + dryer.name() + ", " + layer
                            + ": what hangs over dries by itself, free. Take larger blotters or boards, or a smaller"
                            + " mould; the plan reckons with one sheet to a layer.",
                    "piece",
                    read.name(),
                    "sheet",
                    wet,
                    "layer",
                    layer);
        }
        double area = settings.drying(p).layerArea(sheet.area());
        if (drying.isLight(area, likely)) {
            Amount<SheetPressure> given = Kinds.SHEET_PRESSURE.ofSi(drying.pressure(area), "Pa");
            Amount<SheetPressure> least = Kinds.SHEET_PRESSURE.ofSi(drying.leastPressure(likely), "Pa");
            Amount<Mass> enough = Kinds.MASS.ofSi(drying.leastWeight(area, likely), "kg");
            warn(
                    "drying.weight-low",
                    of + "the weight on the stack presses the sheets with " + given + "; below " + least
                            + " they slip while they dry and shrink more, which is counted (common practice). Put "
                            + enough + " on it.",
                    "piece",
                    read.name(),
                    "given",
                    given.toString(),
                    "least",
                    least.toString(),
                    "weight",
                    enough.toString());
        }
        if (work.deckleEdge() && drying.holdsFlat()) {
            double free = numbers.bands().likely().of(PreparingStock.FREE_SHRINKAGE, work.batch());
            double limit = limit("shrinkage.wavy-rim");
            if (free > limit) {
                note(
                        "drying.wavy-rim",
                        of + "dried free, such sheets shrink " + Digits.percent(free) + "; from "
                                + Digits.percent(limit)
                                + " on the thin deckle rim stays wavy however the sheet is held (common practice). Trim"
                                + " it, or keep it as a mark of the stuff.",
                        "piece",
                        read.name(),
                        "shrinkage",
                        free,
                        "limit",
                        limit);
            }
        }
        if (read.dryingStage().isDone() && drying.intoRoom()) {
            if (studio.ventilation().isPresent()) {
                damp(p, read, of);
            } else {
                filling(p, read, of);
            }
        }
    }

    private void filling(int p, PiecePlan read, String of) {
        DryingSheets.Setting set = settings.drying(p);
        int inOne = set.atOnce();
        double water = numbers.likely(DryingSheets.EVAPORATED, p)
                * inOne
                / (settings.sheet(p).sheets() * set.each());
        double limit = limit("room.filling-water");
        if (water > limit) {
            Amount<Mass> given = Kinds.MASS.ofSi(water, "kg");
            note(
                    "drying.room-water",
                    of + "a filling of " + inOne + " sheets gives off " + given + " of water; more than about "
                            + Kinds.MASS.ofSi(limit, "kg")
                            + " makes a studio damp and the sheets dry slower than is counted (common practice)."
                            + " Ventilate, dry fewer sheets at a time, or give the ventilation of the room.",
                    "piece",
                    read.name(),
                    "sheets",
                    inOne,
                    "water",
                    given.toString(),
                    "limit",
                    limit);
        }
    }

    /** Says how damp the room gets while a filling is wet, and what would keep it below the level of mould. */
    private void damp(int p, PiecePlan read, String of) {
        Workshop shop = engine.workshop();
        StackDrying.Inlet in = shop.roomAir();
        double celsius = studio.room().temperature().si() - ZERO_CELSIUS;
        double pressure = studio.room().pressure().si();
        double limit = limit("room.mould-caution");
        double rise =
                Psychrometrics.humidityRatio(Psychrometrics.vapourPressure(celsius, limit), pressure) - in.ratio();
        DryingSheets drying = engine.piece(p).drying();
        DryingSheets.Setting set = settings.drying(p);
        double free = drying.evaporation(set.atOnce() * (settings.sheet(p).area() / set.each()), likely);
        double given = Room.evaporation(free, shop.ventilation(), shop.roomSaturated(), in.ratio());
        if (rise <= 0 || given <= rise * shop.ventilation()) {
            return;
        }
        double humidity = Psychrometrics.relativeHumidity(celsius, in.ratio() + given / shop.ventilation(), pressure);
        // What is given off, slowed by the room, raises it just so far.
        double perFlow = 1 / (1 / rise - 1 / (shop.roomSaturated() - in.ratio()));
        double changes = free / perFlow / shop.roomMass() * 3600;
        int fewer = fewer(p, perFlow * shop.ventilation());
        Amount<RelativeHumidity> reached = Kinds.RELATIVE_HUMIDITY.ofSi(humidity, "%");
        warn(
                "drying.room-damp",
                of + "while a filling of " + set.atOnce() + " sheets is wet, the room comes to "
                        + Digits.three(reached.in("%")) + " %"
                        + " relative humidity, and the sheets dry slower, which is counted. "
                        + Digits.three(changes) + " air changes an hour"
                        + (fewer > 0 ? ", or fillings of " + fewer + (fewer == 1 ? " sheet," : " sheets,") : "")
                        + " keep it below " + Digits.percent(limit) + ".",
                "piece",
                read.name(),
                "humidity",
                reached.toString(),
                "limit",
                limit,
                "airChanges",
                changes,
                "sheets",
                fewer);
    }

    /** The most sheets of a filling that give off no more water (kg/s) than this. */
    private int fewer(int p, double most) {
        DryingSheets drying = engine.piece(p).drying();
        DryingSheets.Setting set = settings.drying(p);
        double area = settings.sheet(p).area() / set.each();
        int enough = 0;
        int tooMany = set.atOnce();
        while (tooMany - enough > 1) {
            int half = (enough + tooMany) / 2;
            if (drying.evaporation(half * area, likely) < most) {
                enough = half;
            } else {
                tooMany = half;
            }
        }
        return enough;
    }

    private void envelope(PiecePlan read, String of) {
        String name = read.name();
        EnvelopePlan envelope = read.envelope();
        if (envelope.playAlong().likely().si() < 0
                || envelope.playAcross().likely().si() < 0) {
            warn(
                    "envelope.too-small",
                    of + "what goes in is larger than the inside (play "
                            + envelope.playAlong().likely() + " × "
                            + envelope.playAcross().likely() + ").",
                    "piece",
                    name);
        } else if (envelope.sharePairsFit().si() < 0.99) {
            warn(
                    "envelope.tight",
                    of + "with the usual spread of hand-made sizes only " + envelope.sharePairsFit()
                            + " of random pairs fit; give it more clearance.",
                    "piece",
                    name);
        } else {
            envelope.sharePairsFitDamp()
                    .filter(share -> share.si() < 0.99)
                    .ifPresent(share -> note(
                            "envelope.tight-when-damp",
                            of + "out of damp air what goes in is up to "
                                    + envelope.dampGrowthAlong().orElseThrow() + " × "
                                    + envelope.dampGrowthAcross().orElseThrow() + " larger, and " + share
                                    + " of random pairs fit. Condition it before it goes in, or give more clearance.",
                            "piece",
                            name,
                            "share",
                            share.si()));
        }
        if (envelope.seam().si() < 0.005) {
            warn(
                    "envelope.seam",
                    of + "the flaps overlap by " + envelope.seam() + " only; the square has to be larger.",
                    "piece",
                    name);
        }
    }

    private void room() {
        SheetNotices.mould(studio.room().humidity(), asked::si).ifPresent(this::add);
        if (studio.beater().isEmpty()
                && studio.vat().isEmpty()
                && studio.press().isEmpty()
                && studio.dryers().isEmpty()) {
            note("studio.bare", "studio: nothing but its name is known; most stages are not done.");
        }
        if (order.due().isEmpty()) {
            note("order.no-date", "order: it has no date, so the days are counted but not dated.");
        }
    }

    /** Reports what waits longer than it may for a step of one's own. */
    private void ownSteps() {
        if (order.steps().isEmpty()) {
            return;
        }
        List<Schedule.WaitsForStep> all = plan.schedule().waitsForSteps();
        if (!all.isEmpty()) {
            Schedule.WaitsForStep one = all.get(0);
            double days = one.waits().toMinutes() / 1440.0;
            double most = one.most().toMinutes() / 1440.0;
            warn(
                    "schedule.waits-for-step",
                    "schedule: after " + one.first() + " it is " + Digits.three(days) + " days to " + one.next()
                            + ", with a step of your own between; " + Digits.three(most)
                            + " days is the most it keeps. Put the step after a stage that can wait, or let it go on"
                            + " beside the work with both after and before.",
                    "first",
                    one.first(),
                    "next",
                    one.next(),
                    "days",
                    days,
                    "most",
                    most);
        }
    }

    /** Reports what the days leave out where the drying time is not known. */
    private void schedule() {
        List<PiecePlan> unknown = plan.pieces().stream()
                .filter(piece -> !piece.dryingStage().isDone()
                        || piece.sizingStage()
                                .map(sizing -> !sizing.dryAgain().isDone())
                                .orElse(false))
                .toList();
        if (unknown.isEmpty()) {
            return;
        }
        Schedule schedule = plan.schedule();
        List<String> names = unknown.stream().map(PiecePlan::name).toList();
        boolean dryer =
                unknown.stream().allMatch(piece -> piece.dryingStage().code().equals("dryer.none"));
        warn(
                "schedule.no-drying",
                "schedule: it is not known how long " + listed(names)
                        + (names.size() == 1 ? " dries" : " dry") + ", so the work takes " + schedule.inDays()
                        + "; what comes before drying has no date. "
                        + (dryer ? "Give the studio its dryer" : "Bring in drier air, or warm it")
                        + ", or time the drying of one sheet and begin that much earlier.",
                "pieces",
                names,
                "leastDays",
                schedule.leastDays());
    }

    private static String listed(List<String> names) {
        int last = names.size() - 1;
        return last == 0 ? names.get(0) : String.join(", ", names.subList(0, last)) + " and " + names.get(last);
    }

    private void basis() {
        long weak = plan.assumptionsUsed().stream()
                .filter(a -> a.basis().isUncalibrated())
                .count();
        if (weak > 0) {
            note(
                    "plan.uncalibrated",
                    weak + " of the " + plan.assumptionsUsed().size()
                            + " values behind this plan are common"
                            + " practice, recalled or tied to one observation, not measured here; the bands show how far that may"
                            + " carry.",
                    "uncalibrated",
                    weak,
                    "all",
                    plan.assumptionsUsed().size());
        }
    }
}
