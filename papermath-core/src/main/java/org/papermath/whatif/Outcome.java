package org.papermath.whatif;

import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Force;
import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Time;
import javax.measure.quantity.Volume;
import org.jspecify.annotations.Nullable;
import org.papermath.engine.BatchFigure;
import org.papermath.engine.BeaterRun;
import org.papermath.engine.CuttingAndFolding;
import org.papermath.engine.DryingSheets;
import org.papermath.engine.Figures;
import org.papermath.engine.FillingVat;
import org.papermath.engine.FinishedSheet;
import org.papermath.engine.FormingSheets;
import org.papermath.engine.PieceFigure;
import org.papermath.engine.PieceWork;
import org.papermath.engine.Posts;
import org.papermath.engine.PreparingStock;
import org.papermath.engine.Pressing;
import org.papermath.engine.Rejects;
import org.papermath.engine.Settings;
import org.papermath.quantity.ApparentDensity;
import org.papermath.quantity.Consistency;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Kind;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.SchopperRiegler;
import org.papermath.quantity.Share;
import org.papermath.quantity.SheetPressure;
import org.papermath.quantity.Solids;
import org.papermath.quantity.WaterRetention;

/**
 * What can be asked of a job: a forecast, which has a band, or a setting, which has none. Each is the figure of the same
 * name in {@link org.papermath.plan.MakingPlan}. Immutable.
 *
 * <pre>{@code
 * Outcome.caliper("programme").toString(); // "caliper of programme"
 * Outcome.lift("programme").isSetting(); // true
 * Outcome.mass("seat card").in("oz").unit(); // "oz"
 * }</pre>
 *
 * @param <Q> what it is measured in
 */
public final class Outcome<Q extends Quantity<Q>> {
    private final String words;
    private final String whose;
    private final Kind<Q> kind;
    private final String unit;
    private final From from;

    /** Where it is read. */
    sealed interface From permits OfPiece, OfBatch, OfAll, SetOfPiece, SetOfBatch {}

    /** A forecast of a piece. */
    record OfPiece(PieceFigure figure) implements From {}

    /** A forecast of a batch. */
    record OfBatch(BatchFigure figure) implements From {}

    /** The hours of the whole. */
    record OfAll() implements From {}

    /** A setting of a piece; not a number where there is none, and why that is. */
    record SetOfPiece(Reading reading, String missing) implements From {}

    /** A setting of a batch. */
    record SetOfBatch(Reading reading) implements From {}

    private static final String POURED = "The piece is poured, not dipped from a vat";
    private static final String UNPRESSED = "The sheets go to no press";

    /** Reads a setting of the piece or the batch at a place. */
    interface Reading {
        double of(Settings settings, int place);
    }

    private Outcome(String words, String whose, Kind<Q> kind, String unit, From from) {
        this.words = words;
        this.whose = whose;
        this.kind = kind;
        this.unit = unit;
        this.from = from;
    }

    private static <Q extends Quantity<Q>> Outcome<Q> piece(PieceFigure figure, String piece, Kind<Q> kind) {
        return piece(figure.words(), figure, piece, kind);
    }

    private static <Q extends Quantity<Q>> Outcome<Q> piece(
            String words, PieceFigure figure, String piece, Kind<Q> kind) {
        Objects.requireNonNull(piece, "piece");
        return new Outcome<>(words, piece, kind, figure.unit(), new OfPiece(figure));
    }

    private static <Q extends Quantity<Q>> Outcome<Q> batch(BatchFigure figure, String recipe, Kind<Q> kind) {
        Objects.requireNonNull(recipe, "recipe");
        return new Outcome<>(figure.words(), recipe, kind, figure.unit(), new OfBatch(figure));
    }

    private static <Q extends Quantity<Q>> Outcome<Q> set(
            String words, String piece, Kind<Q> kind, String unit, String missing, Reading reading) {
        Objects.requireNonNull(piece, "piece");
        return new Outcome<>(words, piece, kind, unit, new SetOfPiece(reading, missing));
    }

    private static <Q extends Quantity<Q>> Outcome<Q> setOfBatch(
            String words, String recipe, Kind<Q> kind, String unit, Reading reading) {
        Objects.requireNonNull(recipe, "recipe");
        return new Outcome<>(words, recipe, kind, unit, new SetOfBatch(reading));
    }

    // -------------------------------------------------------------------------------------------- what comes out

    /**
     * The grammage of the finished sheet, in the reference air of the order.
     *
     * @param piece the name of the piece
     * @return the forecast
     */
    public static Outcome<Grammage> grammage(String piece) {
        return piece(FinishedSheet.GRAMMAGE, piece, Kinds.GRAMMAGE);
    }

    /**
     * The thickness of the finished sheet.
     *
     * @param piece the name of the piece
     * @return the forecast
     */
    public static Outcome<Length> caliper(String piece) {
        return piece(FinishedSheet.CALIPER, piece, Kinds.LENGTH);
    }

    /**
     * The apparent density of the finished sheet.
     *
     * @param piece the name of the piece
     * @return the forecast
     */
    public static Outcome<ApparentDensity> density(String piece) {
        return piece(FinishedSheet.DENSITY, piece, Kinds.DENSITY);
    }

    /**
     * The width of the flat piece.
     *
     * @param piece the name of the piece
     * @return the forecast
     */
    public static Outcome<Length> width(String piece) {
        return piece(CuttingAndFolding.WIDTH, piece, Kinds.LENGTH);
    }

    /**
     * The height of the flat piece.
     *
     * @param piece the name of the piece
     * @return the forecast
     */
    public static Outcome<Length> height(String piece) {
        return piece(CuttingAndFolding.HEIGHT, piece, Kinds.LENGTH);
    }

    /**
     * The mass of a piece.
     *
     * @param piece the name of the piece
     * @return the forecast
     */
    public static Outcome<Mass> mass(String piece) {
        return piece(CuttingAndFolding.MASS, piece, Kinds.MASS);
    }

    /**
     * How many good pieces come out.
     *
     * @param piece the name of the piece
     * @return the forecast
     */
    public static Outcome<Dimensionless> good(String piece) {
        return piece("good pieces", Rejects.GOOD, piece, Kinds.NUMBER);
    }

    /**
     * How long a sheet drains on the mould.
     *
     * @param piece the name of the piece
     * @return the forecast
     */
    public static Outcome<Time> drainTime(String piece) {
        return piece(FormingSheets.DRAIN, piece, Kinds.TIME);
    }

    /**
     * How long hands and moulds are at the vat for all sheets of a piece.
     *
     * @param piece the name of the piece
     * @return the forecast
     */
    public static Outcome<Time> timeAtVat(String piece) {
        return piece(FormingSheets.AT_VAT, piece, Kinds.TIME);
    }

    /**
     * What a couched sheet weighs.
     *
     * @param piece the name of the piece
     * @return the forecast
     */
    public static Outcome<Mass> couchedMass(String piece) {
        return piece("couched sheet", FormingSheets.COUCHED, piece, Kinds.MASS);
    }

    /**
     * The oven-dry mass of the lightest sheet over the mean.
     *
     * @param piece the name of the piece
     * @return the forecast
     */
    public static Outcome<Dimensionless> lightest(String piece) {
        return piece(FillingVat.LIGHTEST, piece, Kinds.NUMBER);
    }

    /**
     * The oven-dry mass of the heaviest sheet over the mean.
     *
     * @param piece the name of the piece
     * @return the forecast
     */
    public static Outcome<Dimensionless> heaviest(String piece) {
        return piece(FillingVat.HEAVIEST, piece, Kinds.NUMBER);
    }

    /**
     * The solids of a sheet as it goes to dry.
     *
     * @param piece the name of the piece
     * @return the forecast
     */
    public static Outcome<Solids> solids(String piece) {
        return piece(Pressing.SOLIDS, piece, Kinds.SOLIDS);
    }

    /**
     * How high a post is.
     *
     * @param piece the name of the piece
     * @return the forecast
     */
    public static Outcome<Length> postHeight(String piece) {
        return piece(Posts.POST_HEIGHT, piece, Kinds.LENGTH);
    }

    /**
     * How long one filling of the dryer dries.
     *
     * @param piece the name of the piece
     * @return the forecast
     */
    public static Outcome<Time> dryingTime(String piece) {
        return piece(DryingSheets.DRYING, piece, Kinds.TIME);
    }

    /**
     * Hours of hand work on a piece, from forming to folding.
     *
     * @param piece the name of the piece
     * @return the forecast
     */
    public static Outcome<Time> workingHours(String piece) {
        return piece(PieceWork.HOURS, piece, Kinds.TIME);
    }

    /**
     * What the tester would read of the beaten stuff.
     *
     * @param recipe the name of the recipe
     * @return the forecast
     */
    public static Outcome<SchopperRiegler> drainability(String recipe) {
        return batch(PreparingStock.DRAINABILITY, recipe, Kinds.SCHOPPER_RIEGLER);
    }

    /**
     * How far the fibre is beaten, of as far as it goes.
     *
     * @param recipe the name of the recipe
     * @return the forecast
     */
    public static Outcome<Share> stateOfBeating(String recipe) {
        return batch(PreparingStock.BEATING, recipe, Kinds.SHARE);
    }

    /**
     * The water retention value of the beaten stuff.
     *
     * @param recipe the name of the recipe
     * @return the forecast
     */
    public static Outcome<WaterRetention> waterRetention(String recipe) {
        return batch(PreparingStock.WATER_RETENTION, recipe, Kinds.WATER_RETENTION);
    }

    /**
     * Hours of hand work on the whole job.
     *
     * @return the forecast
     */
    public static Outcome<Time> workingHours() {
        return new Outcome<>("hands-on time", "", Kinds.TIME, "h", new OfAll());
    }

    // -------------------------------------------------------------------------------------------- what to set

    /**
     * How many sheets are pulled for a piece, trials with them.
     *
     * @param piece the name of the piece
     * @return the setting
     */
    public static Outcome<Dimensionless> sheets(String piece) {
        return set(
                "sheets to pull",
                piece,
                Kinds.NUMBER,
                "1",
                "",
                (settings, p) -> settings.sheet(p).sheets());
    }

    /**
     * The stock lifted with each dip, in the steps of the scale; not known of a piece that is poured.
     *
     * @param piece the name of the piece
     * @return the setting
     */
    public static Outcome<Mass> lift(String piece) {
        return set("lift", piece, Kinds.MASS, "kg", POURED, (settings, p) -> {
            FillingVat.Setting vat = settings.vat(p);
            return vat.dipped() ? vat.lift() : Double.NaN;
        });
    }

    /**
     * How thick the vat is for a piece; not known of one that is poured.
     *
     * @param piece the name of the piece
     * @return the setting
     */
    public static Outcome<Consistency> vatConsistency(String piece) {
        return set("vat consistency", piece, Kinds.CONSISTENCY, "%", POURED, (settings, p) -> {
            FillingVat.Setting vat = settings.vat(p);
            return vat.dipped() ? vat.vat().consistency() : Double.NaN;
        });
    }

    /**
     * How many sheets are pulled between two recharges; not known of a piece that is poured.
     *
     * @param piece the name of the piece
     * @return the setting
     */
    public static Outcome<Dimensionless> sheetsBetweenRecharges(String piece) {
        return set("sheets between recharges", piece, Kinds.NUMBER, "1", POURED, (settings, p) -> {
            FillingVat.Setting vat = settings.vat(p);
            return vat.dipped() ? vat.every() : Double.NaN;
        });
    }

    /**
     * The force the press is set to; not known without a press.
     *
     * @param piece the name of the piece
     * @return the setting
     */
    public static Outcome<Force> pressForce(String piece) {
        return set("force of the press", piece, Kinds.FORCE, "kN", UNPRESSED, (settings, p) -> {
            Pressing.@Nullable Setting press = settings.press(p);
            return press == null ? Double.NaN : press.force();
        });
    }

    /**
     * The pressure on the sheets in the press; not known without one.
     *
     * @param piece the name of the piece
     * @return the setting
     */
    public static Outcome<SheetPressure> pressure(String piece) {
        return set("pressure", piece, Kinds.SHEET_PRESSURE, "kPa", UNPRESSED, (settings, p) -> {
            Pressing.@Nullable Setting press = settings.press(p);
            return press == null ? Double.NaN : press.pressure();
        });
    }

    /**
     * How many fillings of the dryer a piece takes.
     *
     * @param piece the name of the piece
     * @return the setting
     */
    public static Outcome<Dimensionless> dryerLoads(String piece) {
        return set(
                "fillings of the dryer",
                piece,
                Kinds.NUMBER,
                "1",
                "",
                (settings, p) -> settings.drying(p).loads());
    }

    /**
     * The oven-dry fibre a recipe takes, what is on hand with it.
     *
     * @param recipe the name of the recipe
     * @return the setting
     */
    public static Outcome<Mass> fibre(String recipe) {
        return setOfBatch(
                "fibre, oven-dry",
                recipe,
                Kinds.MASS,
                "g",
                (settings, b) -> settings.stock(b).ovenDry());
    }

    /**
     * The fibre to buy for a recipe, all kinds together, beyond what is on hand.
     *
     * @param recipe the name of the recipe
     * @return the setting
     */
    public static Outcome<Mass> fibreToBuy(String recipe) {
        return setOfBatch("fibre to buy", recipe, Kinds.MASS, "g", (settings, b) -> {
            double all = 0;
            for (double one : settings.stock(b).asBought()) {
                all += one;
            }
            return all;
        });
    }

    /**
     * The beaten stock a recipe takes.
     *
     * @param recipe the name of the recipe
     * @return the setting
     */
    public static Outcome<Volume> stock(String recipe) {
        return setOfBatch("stock", recipe, Kinds.VOLUME, "L", (settings, b) -> {
            PreparingStock.Setting stock = settings.stock(b);
            return stock.stock() / stock.stockDensity();
        });
    }

    /**
     * How many loads of the beater a recipe takes.
     *
     * @param recipe the name of the recipe
     * @return the setting
     */
    public static Outcome<Dimensionless> beaterLoads(String recipe) {
        return setOfBatch("loads of the beater", recipe, Kinds.NUMBER, "1", (settings, b) -> {
            int all = 0;
            for (BeaterRun run : settings.stock(b).runs()) {
                all += run.loads();
            }
            return all;
        });
    }

    // -------------------------------------------------------------------------------------------- what it is

    /**
     * Returns the same, told in another unit.
     *
     * @param code the code of a unit of its kind
     * @return the outcome
     * @throws org.papermath.quantity.Refused if the unit is none of the kind
     */
    public Outcome<Q> in(String code) {
        kind.unit(code);
        return new Outcome<>(words, whose, kind, code, from);
    }

    /**
     * Returns what it is called.
     *
     * @return the words
     */
    public String words() {
        return words;
    }

    /**
     * Returns what it is of.
     *
     * @return the name of a piece or a recipe; empty for the whole job
     */
    public String whose() {
        return whose;
    }

    /**
     * Returns what it is measured in.
     *
     * @return the kind
     */
    public Kind<Q> kind() {
        return kind;
    }

    /**
     * Returns the unit it is told in.
     *
     * @return the code
     */
    public String unit() {
        return unit;
    }

    /**
     * Returns whether it is decided and has no band; a forecast otherwise.
     *
     * @return whether it is a setting
     */
    public boolean isSetting() {
        return from instanceof SetOfPiece || from instanceof SetOfBatch;
    }

    /** Why it may not be known. */
    String missing() {
        if (from instanceof SetOfPiece one && !one.missing.isEmpty()) {
            return one.missing;
        }
        return kind == (Kind<?>) Kinds.TIME
                ? "It may be without end, or the stage is not done"
                : "The stage is not done, or a value it needs is not known";
    }

    /** Whether it is of a batch rather than of a piece. */
    boolean isOfBatch() {
        return from instanceof OfBatch || from instanceof SetOfBatch;
    }

    boolean isOfPiece() {
        return from instanceof OfPiece || from instanceof SetOfPiece;
    }

    /** Where it stands among the figures; -1 for a setting. */
    int at(Figures figures, int place) {
        if (from instanceof OfPiece one) {
            return figures.place(one.figure, place);
        } else if (from instanceof OfBatch one) {
            return figures.place(one.figure, place);
        }
        return from instanceof OfAll ? figures.hoursPlace() : -1;
    }

    /** The setting of the piece or the batch at a place. */
    double of(Settings settings, int place) {
        return from instanceof SetOfPiece one
                ? one.reading.of(settings, place)
                : from instanceof SetOfBatch other ? other.reading.of(settings, place) : Double.NaN;
    }

    @Override
    public String toString() {
        return whose.isEmpty() ? words : words + " of " + whose;
    }
}
