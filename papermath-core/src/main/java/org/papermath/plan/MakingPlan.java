package org.papermath.plan;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import javax.measure.quantity.Time;
import org.jspecify.annotations.Nullable;
import org.papermath.engine.Accounts;
import org.papermath.engine.BatchFigure;
import org.papermath.engine.CuttingAndFolding;
import org.papermath.engine.DryingSheets;
import org.papermath.engine.Engine;
import org.papermath.engine.Figures;
import org.papermath.engine.FinishedSheet;
import org.papermath.engine.FormingSheets;
import org.papermath.engine.Known;
import org.papermath.engine.PieceFigure;
import org.papermath.engine.PieceWork;
import org.papermath.engine.PreparingStock;
import org.papermath.engine.Pressing;
import org.papermath.engine.Rejects;
import org.papermath.engine.Settings;
import org.papermath.evidence.Assumption;
import org.papermath.evidence.Estimate;
import org.papermath.evidence.Notice;
import org.papermath.order.Order;
import org.papermath.order.Piece;
import org.papermath.order.Recipe;
import org.papermath.order.Studio;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Limits;
import org.papermath.quantity.Refused;
import org.papermath.record.BatchRecord;
import org.papermath.uncertainty.FigureBands;
import org.papermath.uncertainty.FirstOrderBands;
import org.papermath.uncertainty.MonteCarloBands;

/**
 * The plan of a making: everything that follows from an order and a studio. Immutable, and the same for the same input.
 *
 * <pre>{@code
 * MakingPlan plan = MakingPlan.of(order, studio);
 * plan.batch("tide grey").fibre().asBought();        // a setting: what to weigh
 * plan.piece("programme").finished().grammage();     // a forecast, with its band
 * plan.piece("programme").counts().ordered(); // 70
 * }</pre>
 *
 * <p>Settings — what to weigh, cut, set, count — are chosen at the likely values and rounded to the tool. Forecasts —
 * what will come out — have a band, worked out with the settings held fixed: every assumption of the plan is set to its
 * 5 % and its 95 % point in turn, and what that moves is summed in squares.
 *
 * <p>A stage the studio has no equipment for, or the library no default for, is not done and says why; the plan goes
 * on.
 */
public final class MakingPlan {
    private final Order order;
    private final Studio studio;
    private final Engine engine;
    private final Settings settings;
    private final Estimates numbers;

    private final PlainNumbers plain;
    private final Lazy<PlanReading> reading;
    private final Lazy<List<Notice>> notices;
    private final Lazy<List<Sensitivity>> sensitivity;

    private MakingPlan(
            Order order, Studio studio, Engine engine, Settings settings, Estimates numbers, Accounts accounts) {
        this.order = order;
        this.studio = studio;
        this.engine = engine;
        this.settings = settings;
        this.numbers = numbers;
        Asked asked = new Asked(studio.assumptions());
        plain = new PlainNumbers(order, studio, engine, settings, numbers, accounts, asked);
        this.reading = new Lazy<>(() -> new PlanReading(plain));
        this.notices = new Lazy<>(() -> PlanNotices.of(order, studio, engine, settings, numbers, this, asked));
        this.sensitivity = new Lazy<>(this::findSensitivity);
    }

    /**
     * Plans an order in a studio, forecasts with their bands.
     *
     * @param order the order
     * @param studio the studio
     * @return the plan
     * @throws Refused if the order cannot be made at all, such as a vat to be thicker than the stock it is charged from
     */
    public static MakingPlan of(Order order, Studio studio) {
        Objects.requireNonNull(studio, "studio");
        Objects.requireNonNull(order, "order");
        return plan(order, studio, FirstOrderBands::of);
    }

    /**
     * Plans an order in a studio with bands from draws: all assumptions are drawn at once, each in its own shape, and the
     * forecasts made again each time. It takes as long as that many forecasts on as many cores as there are, and tells
     * what the bands of {@link #of} leave out: what bends, and what comes together by chance. Settings, likely values and
     * drivers are those of {@link #of}; each estimate has its {@link Estimate#spread}.
     *
     * @param order the order
     * @param studio the studio
     * @param draws how many draws, within {@link Limits#DRAWS}; some thousands tell a 5 % point within a few per cent
     * @param seed any number; the same one gives the same plan, however many threads there are
     * @return the plan
     * @throws Refused as {@link #of}, if the number of draws is out of range, or too large for so many forecasts
     */
    public static MakingPlan simulated(Order order, Studio studio, int draws, long seed) {
        Objects.requireNonNull(studio, "studio");
        Objects.requireNonNull(order, "order");
        Limits.DRAWS.check(draws, "draws");
        return plan(order, studio, (engine, settings) -> MonteCarloBands.of(engine, settings, draws, seed));
    }

    /**
     * Plans an order in a studio at the likely values only; the forecasts have no bands. Faster than {@link #of} by as
     * many times as the order touches assumptions, for what-if loops.
     *
     * @param order the order
     * @param studio the studio
     * @return the plan
     * @throws Refused as {@link #of}
     */
    public static MakingPlan withoutBands(Order order, Studio studio) {
        Objects.requireNonNull(studio, "studio");
        Objects.requireNonNull(order, "order");
        return plan(order, studio, (engine, settings) -> null);
    }

    /**
     * Counts how many of a piece can be ordered from fibre and stuff on hand, with no fibre bought: spares, pieces kept, trial sheets,
     * rejects, the loads of the beater, what stays in the vat and what the scale rounds up, all with it. The other pieces of
     * the order are made too, and take their part of the fibre.
     *
     * <pre>{@code
     * Studio stocked = studio.with(one -> one.onHand(Fibres.COTTON_RAG, kilograms(2)).onHand(Fibres.FLAX_RAW, kilograms(1)));
     * MakingPlan.mostPieces(order, stocked, "programme"); // 246
     * }</pre>
     *
     * <p>What a count takes rises with it but for the steps of tools, so the answer is found by halving, and two dozen counts
     * above it are tried too.
     *
     * @param order the order; how many it has of the piece does not matter
     * @param studio the studio, with the fibre on hand
     * @param piece the name of the piece
     * @return how many, at most as many as an order may have; 0 where there is not enough for one
     * @throws Refused if there is no such piece, nothing is on hand of a fibre of its recipe, or the order cannot be made
     *     even with one
     */
    public static int mostPieces(Order order, Studio studio, String piece) {
        Objects.requireNonNull(order, "order");
        Objects.requireNonNull(studio, "studio");
        Objects.requireNonNull(piece, "piece");
        return new FibreForPieces(order, studio, piece).most();
    }

    /** How bands are worked out; null for none. */
    private interface Banding {
        @Nullable
        FigureBands of(Engine engine, Settings settings);
    }

    private static MakingPlan plan(Order order, Studio studio, Banding banding) {
        Engine engine = Engine.of(order, studio);
        Settings settings = engine.decide(engine.likely());
        Accounts accounts = engine.accounts();
        Figures likely = engine.forecast(settings, engine.likely(), accounts);
        FigureBands banded = banding.of(engine, settings);
        FigureBands bands = banded == null ? FigureBands.without(likely) : banded;
        Estimates numbers = new Estimates(bands, () -> MonteCarloBands.ofBent(engine, settings, bands));
        bands.require(
                Engine.usedRecipes(order).stream().map(Recipe::name).toList(),
                order.pieces().stream().map(Piece::name).toList());
        return new MakingPlan(order, studio, engine, settings, numbers, accounts);
    }

    /** The forecasts of a piece for whose bands the drivers are reported. */
    private static final List<PieceFigure> HEADLINES = List.of(
            FinishedSheet.GRAMMAGE,
            CuttingAndFolding.WIDTH,
            CuttingAndFolding.HEIGHT,
            FinishedSheet.CALIPER,
            Rejects.GOOD,
            FormingSheets.DRAIN,
            Pressing.SOLIDS,
            DryingSheets.DRYING,
            PieceWork.HOURS);

    /** The forecasts of a batch for whose bands they are. */
    private static final List<BatchFigure> HEADLINES_OF_BATCH = List.of(PreparingStock.DRAINABILITY);

    /** Shares this near each other, relatively, weigh the same. */
    private static final double SAME = 1e-9;

    /** What one assumption does to the headlines. */
    private static final class Weight {
        private double sum;
        private double strongest;
        private String of = "";
    }

    private String usedRecipe(int batch) {
        return Engine.usedRecipes(order).get(batch).name();
    }

    /** Adds what each assumption does to one forecast, and returns 1; or 0 where it has no band. */
    private static int weigh(FigureBands bands, int at, String of, List<Weight> weights) {
        double sum = 0;
        for (int i = 0; i < weights.size(); i++) {
            sum += bands.move(i, at) * bands.move(i, at);
        }
        if (!(sum > 0)) {
            return 0;
        }
        for (int i = 0; i < weights.size(); i++) {
            // What one making differs from the next no measurement takes away.
            double share = bands.move(i, at)
                    * bands.move(i, at)
                    / sum
                    * (1 - bands.varied().get(i).fromMakings());
            Weight weight = weights.get(i);
            weight.sum += share;
            // Of those that weigh the same the first is named, whatever the last digits are.
            if (share > weight.strongest * (1 + SAME)) {
                weight.strongest = share;
                weight.of = of;
            }
        }
        return 1;
    }

    private List<Sensitivity> findSensitivity() {
        FigureBands bands = numbers.bands();
        List<Known.Varied> varied = bands.varied();
        List<Weight> weights = varied.stream().map(one -> new Weight()).toList();
        int counted = 0;
        for (int b = 0; b < engine.batches(); b++) {
            for (BatchFigure headline : HEADLINES_OF_BATCH) {
                String of = headline.words() + " of " + usedRecipe(b);
                counted += weigh(bands, bands.likely().place(headline, b), of, weights);
            }
        }
        for (int p = 0; p < engine.pieces(); p++) {
            for (PieceFigure headline : HEADLINES) {
                String of = (headline == DryingSheets.DRYING ? "drying time" : headline.words()) + " of "
                        + order.pieces().get(p).name();
                counted += weigh(bands, bands.likely().place(headline, p), of, weights);
            }
        }
        List<Sensitivity> list = new ArrayList<>();
        for (int i = 0; i < varied.size(); i++) {
            Weight weight = weights.get(i);
            if (weight.strongest >= 0.01) {
                Assumption assumption = varied.get(i).row();
                Measurements.One against = Measurements.against(assumption.id());
                list.add(new PlannedSensitivity(
                        assumption,
                        weight.of,
                        weight.strongest,
                        weight.sum / counted,
                        against.words(),
                        Kinds.TIME.of(against.minutes(), "min"),
                        1 - Math.sqrt(Math.max(0, 1 - weight.strongest))));
            }
        }
        list.sort(Comparator.comparingDouble(Sensitivity::weight).reversed());
        return List.copyOf(list);
    }

    /**
     * Returns the order.
     *
     * @return the order
     */
    public Order order() {
        return order;
    }

    /**
     * Returns the studio.
     *
     * @return the studio
     */
    public Studio studio() {
        return studio;
    }

    /**
     * Returns the batches, one for each recipe used.
     *
     * @return an unmodifiable list, in the order of the recipes
     */
    public List<BatchPlan> batches() {
        return reading.get().batches();
    }

    /**
     * Returns the batch of a recipe.
     *
     * @param recipe the name of the recipe
     * @return the batch
     * @throws Refused if no piece of the order uses a recipe of that name
     */
    public BatchPlan batch(String recipe) {
        return batches().stream()
                .filter(batch -> batch.name().equals(recipe))
                .findFirst()
                .orElseThrow(() -> Refused.of(
                        "plan.no-batch",
                        "plan: there is no batch \"" + recipe + "\"; it has: "
                                + batches().stream().map(BatchPlan::name).toList() + ".",
                        "given",
                        recipe));
    }

    /**
     * Returns the pieces.
     *
     * @return an unmodifiable list, in the order of the order
     */
    public List<PiecePlan> pieces() {
        return reading.get().pieces();
    }

    /**
     * Returns a piece.
     *
     * @param name its name
     * @return the piece
     * @throws Refused if the order has no piece of that name
     */
    public PiecePlan piece(String name) {
        return pieces().stream()
                .filter(piece -> piece.name().equals(name))
                .findFirst()
                .orElseThrow(() -> Refused.of(
                        "plan.no-piece",
                        "plan: there is no piece \"" + name + "\"; it has: "
                                + pieces().stream().map(PiecePlan::name).toList() + ".",
                        "given",
                        name));
    }

    /**
     * Returns what the plan should not be read without.
     *
     * @return an unmodifiable list, warnings first
     */
    public List<Notice> notices() {
        return notices.get();
    }

    /**
     * Returns what widens the forecasts most, with the cheapest measurement against it.
     *
     * @return an unmodifiable list, the strongest first; empty for a plan without bands
     */
    public List<Sensitivity> sensitivity() {
        return sensitivity.get();
    }

    /**
     * Returns every assumption the plan rests on, each with the scope that spoke.
     *
     * @return an unmodifiable list
     */
    public List<Assumption> assumptionsUsed() {
        return engine.known().rows();
    }

    /**
     * Returns what has to be bought.
     *
     * @return an unmodifiable list
     */
    public List<ToBuy> toBuy() {
        return reading.get().toBuy();
    }

    /**
     * Returns the days of the work.
     *
     * @return the schedule
     */
    public Schedule schedule() {
        return reading.get().schedule();
    }

    /** The work as one of several orders. */
    TasksOfPlan tasks(
            String prefix,
            int priority,
            @Nullable LocalDateTime due,
            List<String> before,
            Map<String, SharedLoads> shared) {
        return reading.get().tasks(prefix, priority, due, before, shared);
    }

    /** The plan in plain numbers. */
    PlainNumbers plain() {
        return plain;
    }

    /** Asks for the values the days rest on, without placing anything. */
    void askDays() {
        reading.get().askDays();
    }

    /**
     * Returns the cautions that go with the steps of this plan, each once, with the figure of the plan where there is
     * one. Local codes and licensed practice come first.
     *
     * @return an unmodifiable list, in the order of the work
     */
    public List<StepCaution> cautions() {
        return reading.get().cautions();
    }

    /**
     * Returns the hours of hands in all stages of the work. What a machine does by itself is none of them; nor are
     * {@linkplain #ownStepHours() steps of one's own}.
     *
     * @return the hours
     */
    public Estimate<Time> workingHours() {
        return numbers.hours();
    }

    /**
     * Returns the hours of hands on the steps of one's own, as the order states them. They are none of
     * {@link #workingHours()}, and have no band.
     *
     * @return the hours, zero where the order has no such step
     */
    public Amount<Time> ownStepHours() {
        return Kinds.TIME.ofSi(
                order.steps().stream().mapToDouble(step -> step.hands().si()).sum(), "h");
    }

    /**
     * Returns how long the roll of the beater runs, pots boil and the press holds posts, all of it together. Somebody is
     * in the room, and has the hands free.
     *
     * @return the time
     */
    public Amount<Time> machineHours() {
        double all = 0;
        for (BatchPlan batch : batches()) {
            all += batch.machineHours().si();
        }
        for (PiecePlan piece : pieces()) {
            all += piece.machineHours().si();
        }
        return Kinds.TIME.ofSi(all, "h");
    }

    /**
     * Returns the vat as the plan has it before the first sheet of a piece, to be corrected by what is weighed and seen there.
     *
     * @param piece the name of the piece
     * @return the vat
     * @throws Refused if there is no such piece, or it is not dipped from a vat
     */
    public AtTheVat atTheVat(String piece) {
        int place = pieces().indexOf(piece(piece));
        return AtTheVat.of(this, plain, place);
    }

    /**
     * Begins to plan the rest of a making that was broken off or changed: what stands good, and what stuff there is, is taken
     * off what is ordered and beaten.
     *
     * @return a builder
     */
    public RestOfMaking.Builder rest() {
        return new RestOfMaking.Builder(order, studio);
    }

    /**
     * Returns what the making leaves: stuff, broke, fibre, pieces; and the studio as it then stands, for the next plan.
     *
     * @param day the day the stuff is beaten, from which it ages
     * @return what is left, at the likely values
     */
    public LeftOver leaves(LocalDate day) {
        return LeftOver.of(plain, this, Objects.requireNonNull(day, "day"));
    }

    /**
     * Returns what differs from another plan, in the words of the work and the largest first.
     *
     * @param before the other plan, of the order or the studio as they were
     * @return what was asked, is to be done and comes out otherwise
     */
    public PlanComparison comparedWith(MakingPlan before) {
        return PlanComparison.of(Objects.requireNonNull(before, "before"), this);
    }

    /**
     * Holds what was measured of a batch against the plan of it, and finds the stage that explains what came out otherwise.
     *
     * @param record the readings, of a recipe of this plan of which there is one piece
     * @return planned and made, stage by stage
     * @throws Refused if the record names no recipe, or one that this plan has not, or one with several pieces
     */
    public PlannedAndMade heldAgainst(BatchRecord record) {
        return heldAgainst(record, onlyPiece(recipeOf(record)));
    }

    /**
     * Holds what was measured of one piece of a batch against the plan of it.
     *
     * @param record the readings
     * @param piece the name of the piece that was formed
     * @return planned and made, stage by stage
     * @throws Refused if there is no such piece, or it is not of the recipe of the record
     */
    public PlannedAndMade heldAgainst(BatchRecord record, String piece) {
        String recipe = recipeOf(record);
        PiecePlan planned = piece(Objects.requireNonNull(piece, "piece"));
        requireOf(recipe, planned);
        return new HoldingAgainst(record, engine, settings, numbers, batch(recipe), pieces().indexOf(planned)).found();
    }

    /**
     * Returns an empty record of a batch, to fill in while it is made.
     *
     * @param recipe the name of the recipe, of which there is one piece
     * @param day the day of making
     * @return what is to be read, in the order of the work, with what is planned beside it
     * @throws Refused if there is no such batch, or it has several pieces
     */
    public EmptyRecord emptyRecord(String recipe, LocalDate day) {
        return emptyRecord(
                recipe,
                onlyPiece(batch(Objects.requireNonNull(recipe, "recipe")).name()),
                day);
    }

    /**
     * Returns an empty record of one piece of a batch, to fill in while it is made.
     *
     * @param recipe the name of the recipe
     * @param piece the name of the piece that is formed
     * @param day the day of making
     * @return what is to be read, in the order of the work, with what is planned beside it
     * @throws Refused if there is no such batch or piece, or the piece is not of the recipe
     */
    public EmptyRecord emptyRecord(String recipe, String piece, LocalDate day) {
        BatchPlan batch = batch(Objects.requireNonNull(recipe, "recipe"));
        PiecePlan planned = piece(Objects.requireNonNull(piece, "piece"));
        requireOf(batch.name(), planned);
        return EmptyRecord.of(this, batch, planned, Objects.requireNonNull(day, "day"));
    }

    /**
     * Says what has changed since a batch was made that this plan makes again: each value that is known otherwise now, with
     * what it does to the paper.
     *
     * @param record the record of then, which holds what was taken for known
     * @return the changes
     * @throws Refused if the record does not hold what was taken for known
     */
    public ChangesSince changesSince(BatchRecord record) {
        return ChangesSince.of(Objects.requireNonNull(record, "record"), null, order, studio);
    }

    /**
     * Says what has changed since a batch was made that this plan makes again, lots of fibre and additives too.
     *
     * @param record the record of then, which holds what was taken for known
     * @param today a record of today, for the lots it names
     * @return the changes
     * @throws Refused if the record of then does not hold what was taken for known
     */
    public ChangesSince changesSince(BatchRecord record, BatchRecord today) {
        return ChangesSince.of(
                Objects.requireNonNull(record, "record"), Objects.requireNonNull(today, "today"), order, studio);
    }

    private String recipeOf(BatchRecord record) {
        Objects.requireNonNull(record, "record");
        String recipe = record.recipe()
                .orElseThrow(() -> Refused.of(
                        "record.no-recipe",
                        record.name() + ": the record names no recipe, so it is not known which batch it is of. Add the"
                                + " name of the recipe and its fibres with their shares.",
                        "record",
                        record.name()));
        return batch(recipe).name();
    }

    private String onlyPiece(String recipe) {
        List<String> names = pieces().stream()
                .filter(piece -> piece.batch().equals(recipe))
                .map(PiecePlan::name)
                .toList();
        if (names.size() > 1) {
            throw Refused.of(
                    "record.which-piece",
                    "recipe " + recipe + ": several pieces are made of it: " + names
                            + ". Say which of them was formed.",
                    "recipe",
                    recipe,
                    "pieces",
                    names.toString());
        }
        return names.get(0);
    }

    private static void requireOf(String recipe, PiecePlan piece) {
        if (!piece.batch().equals(recipe)) {
            throw Refused.of(
                    "record.other-recipe",
                    "piece " + piece.name() + ": it is made of " + piece.batch() + ", not of " + recipe + ".",
                    "piece",
                    piece.name(),
                    "recipe",
                    recipe);
        }
    }

    @Override
    public String toString() {
        return "plan of " + order.name() + ": "
                + pieces().stream().map(PiecePlan::toString).toList();
    }
}
