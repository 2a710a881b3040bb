package org.papermath.engine;

import java.util.List;
import java.util.Optional;
import java.util.function.DoubleFunction;
import javax.measure.quantity.Length;
import org.jspecify.annotations.Nullable;
import org.papermath.drying.Dryer;
import org.papermath.evidence.Scope;
import org.papermath.order.Piece;
import org.papermath.order.Recipe;
import org.papermath.order.Studio;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;

/** One piece of the order on its way through the stages. */
public final class PieceWork {
    static final StageFigures FIGURES = new StageFigures();

    /** Hours bend where nearly all that moves them is a wait for the moulds. */
    private static final double WAITS = 0.9;

    public static final PieceFigure HOURS = FIGURES.piece("hands-on time", Kinds.TIME, "h", Scale.FACTOR, WAITS);

    /** How often sheets under too small a weight are laid out again for the size they come to. */
    private static final int WEIGHT_PASSES = 4;

    /**
     * The parts of the way of a piece, in their order; the drying rate is read where it is dried. Where nothing moves that a
     * part reads, and no part before it, it comes out the same.
     */
    private static final int FORMED = 0;

    private static final int PRESSED = 1;
    private static final int FINISHED = 2;
    static final int DRIED = 3;
    private static final int DRAINED = 4;
    private static final int TIMED = 5;
    /** How many there are. */
    static final int PARTS = 6;

    private final Piece piece;
    private final int index;
    private final int batch;
    private final Workshop workshop;
    private final PreparingStock stock;
    private final FormingSheets forming;
    private final Pressing pressing;
    private final Posts posts;
    private final DryingSheets drying;
    private final FinishedSheet finished;
    private final SizingSheets sizing;
    private final CuttingAndFolding cutting;
    private final @Nullable MakingEnvelopes envelope;
    private final Rejects rejects;
    /** The piece that goes into this envelope; null for no envelope. */
    private final @Nullable PieceWork held;

    /** What is decided for a piece before its sheets are formed. */
    private record Sheet(
            CuttingAndFolding.Setting size,
            MakingEnvelopes.@Nullable Setting envelope,
            FormingSheets.Setting forming,
            Pressing.@Nullable Setting press) {}

    PieceWork(
            Known known,
            Workshop workshop,
            Studio studio,
            PreparingStock stock,
            Posts posts,
            CoverDrainage cover,
            SizingSheets sizing,
            Piece piece,
            Recipe recipe,
            int index,
            int batch,
            @Nullable PieceWork held) {
        this.held = held;
        this.piece = piece;
        this.index = index;
        this.batch = batch;
        this.workshop = workshop;
        this.stock = stock;
        this.sizing = sizing;
        boolean isEnvelope = piece.envelopeFor().isPresent();
        Scope scope = PieceScope.of(isEnvelope ? "envelope" : "card", piece.name(), piece.recipe());
        @Nullable Dryer dryer = dryer(piece, studio);
        Scope sheet = Scope.of(piece.name(), piece.recipe());
        Scope measured = dryer == null ? sheet : sheet.on(dryer.name());
        forming = new FormingSheets(known, workshop, studio, stock, cover, piece, scope, dryer);
        rejects = new Rejects(
                known, piece, scope, dryer != null, recipe.sizeBath().isPresent());
        pressing = new Pressing(known, workshop, studio, measured, dryer instanceof Dryer.Blotters);
        this.posts = posts;
        drying = new DryingSheets(known, workshop, stock, dryer, measured);
        finished = new FinishedSheet(known, piece, stock.dense(), measured);
        cutting = new CuttingAndFolding(known, piece, forming);
        envelope = isEnvelope ? new MakingEnvelopes(known, piece, piece.style().orElseThrow(), scope) : null;
        requireDensity();
        requireThickness();
    }

    private static @Nullable Dryer dryer(Piece piece, Studio studio) {
        Optional<String> wanted = piece.dryer();
        if (wanted.isPresent()) {
            return studio.dryers().stream()
                    .filter(dryer -> dryer.name().equals(wanted.get()))
                    .findFirst()
                    .orElseThrow(() -> Refused.of(
                            "piece.no-dryer",
                            "piece " + piece.name() + ": the dryer \"" + wanted.get() + "\" is not in the studio, which"
                                    + " has: "
                                    + studio.dryers().stream().map(Dryer::name).toList() + ".",
                            "piece",
                            piece.name(),
                            "dryer",
                            wanted.get(),
                            "member",
                            "dryer"));
        }
        return studio.dryers().isEmpty() ? null : studio.dryers().get(0);
    }

    /** What a sheet of a wanted thickness is to weigh cannot be calculated without its density. */
    private void requireDensity() {
        Optional<? extends Amount<?>> ordered = piece.caliper();
        if (ordered.isPresent() && !finished.hasMeasuredDensity() && !stock.hasDensity()) {
            throw Refused.of(
                    "piece.no-density",
                    "piece " + piece.name() + ": a thickness of " + ordered.get()
                            + " is ordered, but for the density of one of the fibres of \"" + piece.recipe()
                            + "\" there is no default. Weigh and measure one dry sheet and give its density, or order a"
                            + " grammage.",
                    "piece",
                    piece.name(),
                    "recipe",
                    piece.recipe(),
                    "member",
                    "caliper");
        }
    }

    /** No sheet is thinner than the single fibres it is made of. */
    private void requireThickness() {
        piece.caliper().filter(caliper -> finished.isTooThin(caliper.si())).ifPresent(caliper -> {
            Amount<Length> least = Kinds.LENGTH.ofSi(finished.thinnest(), "um");
            throw Refused.of(
                    "piece.too-thin",
                    "piece " + piece.name() + ": a thickness of " + caliper + " is ordered; single fibres make a sheet"
                            + " thicker than " + least + ". Order a grammage, or measure such a sheet and give its"
                            + " density.",
                    "piece",
                    piece.name(),
                    "given",
                    caliper.toString(),
                    "least",
                    least.toString(),
                    "member",
                    "caliper");
        });
    }

    boolean isEnvelope() {
        return envelope != null;
    }

    String name() {
        return piece.name();
    }

    /** The place of the piece in the order. */
    public int index() {
        return index;
    }

    /** The place of its batch. */
    public int batch() {
        return batch;
    }

    /** Pieces ordered. */
    public int ordered() {
        return piece.count();
    }

    /** Pieces to make, spare and kept ones with them. */
    public int wanted() {
        return forming.wanted();
    }

    /** Trial sheets. */
    public int trials() {
        return forming.trials();
    }

    /** Whether its edge is that of the deckle. */
    public boolean deckleEdge() {
        return forming.deckleEdge();
    }

    /** The blank of this envelope as it is cut; null for no envelope. */
    public MakingEnvelopes.@Nullable Blank blank(Settings settings) {
        MakingEnvelopes.Setting set = settings.envelope(index);
        return envelope == null || set == null ? null : envelope.blank(set);
    }

    /** The place of what goes into this envelope; -1 for no envelope. */
    public int held() {
        return held == null ? -1 : held.index;
    }

    /** The mould. */
    public FormingSheets forming() {
        return forming;
    }

    /** The press. */
    public Pressing pressing() {
        return pressing;
    }

    /** The width and height of pieces that are cut: they follow from how the sheet shrinks, and from nothing else. */
    List<Follows> follows(Settings settings, Figures places) {
        FormingSheets.Setting sheet = settings.sheet(index);
        CuttingAndFolding.Setting size = settings.size(index);
        if (!cutting.isCut(sheet)) {
            return List.of();
        }
        boolean isWidthAlong = CuttingAndFolding.isWidthAlong(size, sheet);
        int along = places.place(DryingSheets.SHRINK_ALONG, index);
        int across = places.place(DryingSheets.SHRINK_ACROSS, index);
        DoubleFunction<double[]> cut = shrink -> cutting.finished(size, sheet, new double[] {shrink, shrink});
        return List.of(
                new Follows(
                        places.place(CuttingAndFolding.WIDTH, index),
                        isWidthAlong ? along : across,
                        shrink -> cut.apply(shrink)[0]),
                new Follows(
                        places.place(CuttingAndFolding.HEIGHT, index),
                        isWidthAlong ? across : along,
                        shrink -> cut.apply(shrink)[1]));
    }

    /** Whether a weight may hold the sheets or let them slip, and a figure follows from that. */
    boolean maySlip(Settings settings, Figure figure) {
        return (figure == DryingSheets.SHRINK_ALONG || figure == DryingSheets.SHRINK_ACROSS)
                && drying.maySlip(
                        settings.drying(index).layerArea(settings.sheet(index).area()));
    }

    /** The dryer. */
    public DryingSheets drying() {
        return drying;
    }

    /** The dry sheet. */
    public FinishedSheet finished() {
        return finished;
    }

    /** The size bath. */
    public SizingSheets sizing() {
        return sizing;
    }

    Rejects rejects() {
        return rejects;
    }

    // ------------------------------------------------------------------------------------------------ what to do

    /** Size, opening, sheets to pull, oven-dry solids of a sheet, press. Envelopes come after what goes into them. */
    void decide(Settings settings, PreparingStock.State[] states, PreparingStock.Kept[] kepts, Values v) {
        boolean pressed = workshop.hasPress;
        Sheet sheet = sheet(settings, states, kepts, pressed, pressed, v);
        if (pressed && !isPressed(sheet)) {
            // Unpressed paper is bulkier, and an envelope of it takes a larger blank. That may be too large for a mould
            // whose sheets lie on no felt, and lie on the felts in a deckle to be made.
            sheet = sheet(settings, states, kepts, false, false, v);
            if (isPressed(sheet)) {
                sheet = sheet(settings, states, kepts, true, false, v);
            }
        }
        settings.set(index, sheet.size, sheet.envelope, sheet.forming, sheet.press);
    }

    private boolean isPressed(Sheet sheet) {
        return workshop.isPressed(sheet.forming.openingWidth(), sheet.forming.openingHeight());
    }

    /**
     * Decides what is to be formed.
     *
     * @param pressed whether it goes to the press
     * @param dense whether an envelope is laid out for paper that was pressed
     */
    private Sheet sheet(
            Settings settings,
            PreparingStock.State[] states,
            PreparingStock.Kept[] kepts,
            boolean pressed,
            boolean dense,
            Values v) {
        PreparingStock.State state = states[batch];
        PreparingStock.Kept kept = kepts[batch];
        double target = target(state, kept, pressed, v);
        MakingEnvelopes.Setting enveloped = null;
        double width;
        double height;
        FormedShape shape = forming.outline();
        if (envelope == null || held == null) {
            width = piece.width().map(Amount::si).orElse(Double.NaN);
            height = piece.height().map(Amount::si).orElse(Double.NaN);
        } else {
            PreparingStock.State heldState = states[held.batch];
            double heldDensity = held.finished.density(
                    heldState, kepts[held.batch].fillerShare(), Pressing.pressure(settings.press(held.index)), v);
            double heldCaliper = held.finished.target(heldState, kepts[held.batch], heldDensity, v)
                    / held.finished.known(heldDensity, v);
            enveloped = envelope.decide(
                    settings.size(held.index),
                    held.cutting.layers(),
                    heldCaliper,
                    target(state, kept, dense, v) / finished.known(density(state, kept, dense, v), v));
            width = enveloped.blankWidth();
            height = enveloped.blankHeight();
            shape = forming.isShaped() ? envelope.shape(enveloped) : null;
        }
        double dryGrammage =
                target / finished.conditioned(state, kept.load(), kept.particleLoad(), v) / (1 + sizing.gain(v));
        // How far a weight holds sheets depends on their size, and that on how far they shrink.
        double layer = Double.NaN;
        FormingSheets.Setting sheet;
        int pass = 0;
        do {
            sheet = forming.decide(
                    width, height, shape, shrink(state, kept, layer, v), dryGrammage, state, kept, rejects, pressed, v);
            layer = drying.layerArea(sheet, v);
        } while (drying.isLight(layer, v) && pass++ < WEIGHT_PASSES);
        return new Sheet(cutting.decide(width, height), enveloped, sheet, pressed ? pressing.decide(sheet, v) : null);
    }

    private double[] shrink(PreparingStock.State state, PreparingStock.Kept kept, double area, Values v) {
        // Only sheets taken out of the press below the onset of shrinkage would shrink less, so the couched ratio will
        // do here.
        return drying.shrinkage(
                state, kept.fillerShare(), FormingSheets.couchedRatio(state), drying.endRatio(state, v), area, v);
    }

    private double density(PreparingStock.State state, PreparingStock.Kept kept, boolean pressed, Values v) {
        return finished.density(state, kept.fillerShare(), pressed ? v.of(pressing.wish()) : 0, v);
    }

    private double target(PreparingStock.State state, PreparingStock.Kept kept, boolean pressed, Values v) {
        return finished.target(state, kept, density(state, kept, pressed, v), v);
    }

    /** Posts, dryer loads, blotter changes and the size bath, once the sheets are known. */
    void decideHandling(Settings settings, PreparingStock.State state, Values v) {
        FormingSheets.Setting sheet = settings.sheet(index);
        double pressed = pressing.ratioAfter(
                settings.press(index), FormingSheets.couchedRatio(state), state, sheet.solids() / sheet.area(), v);
        settings.set(
                index,
                posts.decide(
                        sheet,
                        settings.press(index),
                        forming.mat(sheet.solids() / sheet.area(), FormingSheets.couchedRatio(state), v),
                        v),
                drying.decide(sheet, pressed, state, v),
                sizing.decide(sheet, sizing.gain(v), v));
    }

    // ------------------------------------------------------------------------------------------------ what comes of it

    /** How fast its dryer takes water: it costs as much as all the rest of the piece, and few assumptions move it. */
    double dryingRate(Values v) {
        return drying.rate(v);
    }

    /** What comes of the sheets of the piece: size, grammage, thickness, mass, count and times. */
    void forecast(Passage on, @Nullable Accounts accounts) {
        for (int part = 0; part < PARTS; part++) {
            forecast(part, on);
        }
        if (accounts != null) {
            int perSheet = on.sheet().perSheet();
            accounts.piece(
                    batch,
                    this,
                    on.settings.press(index) != null,
                    perSheet,
                    on.run,
                    cutting.usedShare(on, perSheet),
                    on.couchedRatio,
                    on.pressedRatio,
                    finished.bookedRatio(on.endRatio, on.v),
                    on.v);
        }
    }

    /** One part of it. */
    void forecast(int part, Passage on) {
        switch (part) {
            case FORMED -> {
                FillingVat.forecast(on);
                forming.forecast(on);
            }
            case PRESSED -> {
                posts.forecast(on);
                pressing.forecast(on);
            }
            case FINISHED -> {
                sizing.forecast(on);
                drying.forecastShrinkage(on);
                finished.forecast(on);
            }
            case DRIED -> {
                drying.forecast(on);
                cutting.forecast(on);
            }
            case DRAINED -> forming.forecastDraining(on);
            case TIMED -> {
                rejects.forecast(on, forming.trials());
                forming.forecastTime(on);
                on.set(
                        HOURS,
                        hours(on.settings, on.of(FormingSheets.AT_VAT), on.v).all());
            }
            default -> throw new IllegalArgumentException("part " + part);
        }
    }

    /** Hands on the piece by the step they are on, s. */
    public record Hours(double form, double press, double dry, double size, double sort, double trim, double fold) {
        double all() {
            return form + press + dry + size + sort + trim + fold;
        }

        /** What is done with wet sheets, up to laying them to dry. */
        public double wet() {
            return form + press + dry;
        }

        /** What is done with dry sheets, but for the size bath. */
        public double finish() {
            return sort + trim + fold;
        }
    }

    /** How long the press holds its posts, s. */
    public double pressTime(Settings settings) {
        Posts.Setting post = settings.posts(index);
        return Pressing.held(settings.press(index), post == null ? 0 : post.posts());
    }

    /**
     * The hours of hands on the piece.
     *
     * @param atVat time at the vat, s
     */
    public Hours hours(Settings settings, double atVat, Values v) {
        FormingSheets.Setting sheet = settings.sheet(index);
        Posts.Setting post = settings.posts(index);
        return new Hours(
                atVat,
                pressing.hours(settings.press(index), post == null ? 0 : post.posts(), sheet.apart(), v),
                drying.hours(settings.drying(index), sheet.apart(), v),
                sizing.hours(sheet.apart(), v),
                cutting.sorting(sheet.apart(), v),
                cutting.trimming(sheet, v),
                cutting.folding(forming.wanted(), v));
    }

    /** What needs two pieces: the card in its envelope, and both in the mail. */
    void together(Settings settings, Figures out) {
        MakingEnvelopes.Setting enveloped = settings.envelope(index);
        if (envelope == null || held == null || enveloped == null) {
            MakingEnvelopes.forecastNone(index, out);
            Mailing.forecastAlone(index, cutting.layers(), out);
            return;
        }
        double[] inside = envelope.inside(
                enveloped,
                forming.isShaped(),
                out.of(CuttingAndFolding.WIDTH, index),
                out.of(CuttingAndFolding.HEIGHT, index));
        double[] folded = held.cutting.folded(
                out.of(CuttingAndFolding.WIDTH, held.index), out.of(CuttingAndFolding.HEIGHT, held.index));
        double filling = envelope.filling(out.of(FinishedSheet.CALIPER, held.index), held.cutting.layers());
        MakingEnvelopes.forecast(index, inside, forming.isShaped(), folded, filling, out);
        Mailing.forecast(index, envelope.inserts(), held.index, filling, out);
    }
}
