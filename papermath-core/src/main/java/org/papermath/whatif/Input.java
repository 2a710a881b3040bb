package org.papermath.whatif;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.function.BiFunction;
import java.util.function.Function;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Temperature;
import javax.measure.quantity.Time;
import org.jspecify.annotations.Nullable;
import org.papermath.air.Air;
import org.papermath.evidence.Scope;
import org.papermath.fibre.Fibre;
import org.papermath.order.Recipe;
import org.papermath.press.Press;
import org.papermath.pulp.AdditiveDose;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Consistency;
import org.papermath.quantity.Dose;
import org.papermath.quantity.FibreConcentration;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Kind;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;
import org.papermath.quantity.RelativeHumidity;
import org.papermath.quantity.SchopperRiegler;
import org.papermath.quantity.Share;
import org.papermath.quantity.SheetPressure;
import org.papermath.vat.Vat;

/**
 * Something a job is made from that can be varied: an input of the order, the recipe or the studio, or an assumption.
 * Immutable.
 *
 * <pre>{@code
 * var beating = Input.beating("tide grey");
 * beating.toString(); // "beating of tide grey"
 * var gap = Input.of("gap", "programme", Kinds.LENGTH, "mm",
 *         (job, width) -> job.withPiece("programme", piece -> piece.gap(width)));
 * gap.in("in").unit(); // "in"
 * }</pre>
 *
 * <p>An assumption with a place among the values of a job is moved there and the job is read once; for everything else the
 * order or the studio is made anew and read for each value. The figures are the same to the last digit.
 *
 * @param <Q> what it is measured in
 */
public final class Input<Q extends Quantity<Q>> {
    private final String words;
    private final String whose;
    private final Kind<Q> kind;
    private final String unit;
    private final boolean whole;
    private final BiFunction<Job, Amount<Q>, Job> change;
    private final @Nullable Named assumption;

    /** An assumption by its id, and where a job looks it up. */
    record Named(String id, Function<Job, Scope> scope) {}

    private Input(
            String words,
            String whose,
            Kind<Q> kind,
            String unit,
            boolean whole,
            BiFunction<Job, Amount<Q>, Job> change,
            @Nullable Named assumption) {
        this.words = words;
        this.whose = whose;
        this.kind = kind;
        this.unit = unit;
        this.whole = whole;
        this.change = change;
        this.assumption = assumption;
    }

    /**
     * Names an input of one's own.
     *
     * @param words what it is called, for the heads of tables
     * @param whose the piece, recipe or fibre it is of; empty for none
     * @param kind what it is measured in
     * @param unit the code of the unit it is told in
     * @param change makes the job with the input at an amount; it may refuse, and must give the same for the same
     * @param <Q> what it is measured in
     * @return the input
     * @throws Refused if the unit is none of the kind
     */
    public static <Q extends Quantity<Q>> Input<Q> of(
            String words, String whose, Kind<Q> kind, String unit, BiFunction<Job, Amount<Q>, Job> change) {
        Objects.requireNonNull(words, "words");
        Objects.requireNonNull(whose, "whose");
        Objects.requireNonNull(kind, "kind");
        Objects.requireNonNull(unit, "unit");
        Objects.requireNonNull(change, "change");
        kind.unit(unit);
        return new Input<>(words, whose, kind, unit, false, change, null);
    }

    /**
     * Names an assumption, as if its value were given for a scope.
     *
     * @param kind what it is measured in
     * @param id its dotted name
     * @param scope what it is given for
     * @param unit the code of the unit it is told in
     * @param <Q> what it is measured in
     * @return the input
     * @throws Refused if the unit is none of the kind
     */
    public static <Q extends Quantity<Q>> Input<Q> assumption(Kind<Q> kind, String id, Scope scope, String unit) {
        Objects.requireNonNull(kind, "kind");
        Objects.requireNonNull(id, "id");
        Objects.requireNonNull(scope, "scope");
        Objects.requireNonNull(unit, "unit");
        return named(id, scope.isGeneral() ? "" : scope.toString(), kind, unit, id, job -> scope);
    }

    private static <Q extends Quantity<Q>> Input<Q> named(
            String words, String whose, Kind<Q> kind, String unit, String id, Function<Job, Scope> scope) {
        kind.unit(unit);
        return new Input<>(
                words,
                whose,
                kind,
                unit,
                false,
                (job, amount) -> new Job(
                        job.order(),
                        job.studio()
                                .withAssumptions(job.studio()
                                        .assumptions()
                                        .given(
                                                id,
                                                scope.apply(job),
                                                amount.in(job.studio()
                                                        .assumptions()
                                                        .unitOf(id))))),
                new Named(id, scope));
    }

    private static <Q extends Quantity<Q>> Input<Q> ready(
            String words, String whose, Kind<Q> kind, String unit, BiFunction<Job, Amount<Q>, Job> change) {
        return new Input<>(words, whose, kind, unit, false, change, null);
    }

    // ------------------------------------------------------------------------------------------------- of a piece

    /**
     * The number ordered of a piece: whole numbers.
     *
     * @param piece the name of the piece
     * @return the input
     */
    public static Input<Dimensionless> count(String piece) {
        Objects.requireNonNull(piece, "piece");
        return new Input<>(
                "number ordered",
                piece,
                Kinds.NUMBER,
                "1",
                true,
                (job, count) -> job.withPiece(piece, one -> one.count(whole(count))),
                null);
    }

    private static int whole(Amount<Dimensionless> count) {
        double given = count.si();
        if (given != Math.rint(given) || Math.abs(given) > Integer.MAX_VALUE) {
            throw Refused.of(
                    "whatif.not-whole",
                    "number ordered: " + count + " given; it has to be a whole number.",
                    "given",
                    given);
        }
        return (int) given;
    }

    /**
     * The grammage ordered of a piece, in the reference air of the order.
     *
     * @param piece the name of the piece
     * @return the input
     */
    public static Input<Grammage> grammage(String piece) {
        Objects.requireNonNull(piece, "piece");
        return ready(
                "grammage ordered",
                piece,
                Kinds.GRAMMAGE,
                "g/m2",
                (job, wanted) -> job.withPiece(piece, one -> one.grammage(wanted)));
    }

    /**
     * The thickness ordered of a piece.
     *
     * @param piece the name of the piece
     * @return the input
     */
    public static Input<Length> caliper(String piece) {
        Objects.requireNonNull(piece, "piece");
        return ready(
                "thickness ordered",
                piece,
                Kinds.LENGTH,
                "um",
                (job, wanted) -> job.withPiece(piece, one -> one.caliper(wanted)));
    }

    /**
     * The share of pieces made beyond those ordered.
     *
     * @param piece the name of the piece
     * @return the input
     */
    public static Input<Share> spare(String piece) {
        Objects.requireNonNull(piece, "piece");
        return ready(
                "spare pieces", piece, Kinds.SHARE, "%", (job, share) -> job.withPiece(piece, one -> one.spare(share)));
    }

    // ------------------------------------------------------------------------------------------------- of a recipe

    /**
     * How long the fibre of a recipe is beaten; what is beaten apart keeps its own time.
     *
     * @param recipe the name of the recipe
     * @return the input
     */
    public static Input<Time> beating(String recipe) {
        Objects.requireNonNull(recipe, "recipe");
        return ready(
                "beating", recipe, Kinds.TIME, "h", (job, time) -> job.withRecipe(recipe, one -> one.beating(time)));
    }

    /**
     * What the tester read of the beaten stuff of a recipe.
     *
     * @param recipe the name of the recipe
     * @return the input
     */
    public static Input<SchopperRiegler> drainability(String recipe) {
        Objects.requireNonNull(recipe, "recipe");
        return ready(
                "drainability read",
                recipe,
                Kinds.SCHOPPER_RIEGLER,
                "SR",
                (job, number) -> job.withRecipe(recipe, one -> one.drainability(number)));
    }

    /**
     * How thick the vat of a recipe is made.
     *
     * @param recipe the name of the recipe
     * @return the input
     */
    public static Input<Consistency> vatConsistency(String recipe) {
        Objects.requireNonNull(recipe, "recipe");
        return ready(
                "vat consistency",
                recipe,
                Kinds.CONSISTENCY,
                "%",
                (job, consistency) -> job.withRecipe(recipe, one -> one.vatConsistency(consistency)));
    }

    /**
     * How thick the beaten stock of a recipe is kept.
     *
     * @param recipe the name of the recipe
     * @return the input
     */
    public static Input<Consistency> stockConsistency(String recipe) {
        Objects.requireNonNull(recipe, "recipe");
        return ready(
                "stock consistency",
                recipe,
                Kinds.CONSISTENCY,
                "%",
                (job, consistency) -> job.withRecipe(recipe, one -> one.stockConsistency(consistency)));
    }

    /**
     * The dose of an additive that a recipe has.
     *
     * @param recipe the name of the recipe
     * @param additive the name of the additive
     * @return the input; refused, value for value, where the recipe does not have it
     */
    public static Input<Dose> dose(String recipe, String additive) {
        Objects.requireNonNull(recipe, "recipe");
        Objects.requireNonNull(additive, "additive");
        return ready(
                "dose of " + additive,
                recipe,
                Kinds.DOSE,
                "%",
                (job, dose) -> job.withRecipe(
                        recipe, one -> one.additive(found(job, recipe, additive).additive(), dose)));
    }

    private static AdditiveDose found(Job job, String recipe, String additive) {
        Optional<AdditiveDose> found = job.order().recipes().stream()
                .filter(one -> one.name().equals(recipe))
                .map(Recipe::additives)
                .flatMap(List::stream)
                .filter(one -> one.additive().name().equals(additive))
                .findFirst();
        return found.orElseThrow(() -> Refused.of(
                "whatif.no-additive",
                "recipe " + recipe + ": there is no additive \"" + additive + "\" in it. Add it with some dose first.",
                "recipe",
                recipe,
                "given",
                additive));
    }

    /**
     * The strength of the size bath of a recipe.
     *
     * @param recipe the name of the recipe
     * @return the input
     */
    public static Input<FibreConcentration> sizeBath(String recipe) {
        Objects.requireNonNull(recipe, "recipe");
        return ready(
                "size bath",
                recipe,
                Kinds.FIBRE_CONCENTRATION,
                "g/L",
                (job, strength) -> job.withRecipe(recipe, one -> one.sizeBath(strength)));
    }

    // ------------------------------------------------------------------------------------------------- of the studio

    /**
     * The pressure on the sheets that posts are pressed at, as far as the press has the force for it
     * ({@code press.pressure}).
     *
     * @return the input
     */
    public static Input<SheetPressure> pressure() {
        return named(
                "pressure wished",
                "",
                Kinds.SHEET_PRESSURE,
                "kPa",
                "press.pressure",
                job -> job.studio().press().map(Press::name).map(Scope::at).orElse(Scope.GENERAL));
    }

    /**
     * The depth of stock that a plan has its sheets dipped from, where the recipe does not say how thick the vat is made
     * ({@code vat.dip-depth}).
     *
     * @return the input
     */
    public static Input<Length> dipDepth() {
        return named("depth of the dip", "", Kinds.LENGTH, "mm", "vat.dip-depth", Input::vat);
    }

    /**
     * What a hand really lifts over what the plan has it lift ({@code vat.lift-factor}): the dip, with the vat as it is
     * charged.
     *
     * @return the input
     */
    public static Input<Dimensionless> lift() {
        return named("lift over the plan's", "", Kinds.NUMBER, "%", "vat.lift-factor", Input::vat);
    }

    private static Scope vat(Job job) {
        return job.studio().vat().map(Vat::name).map(Scope::at).orElse(Scope.GENERAL);
    }

    /**
     * The fibre on hand, oven-dry, in the form the recipe has it bought in.
     *
     * @param fibre the fibre
     * @return the input
     */
    public static Input<Mass> onHand(Fibre fibre) {
        Objects.requireNonNull(fibre, "fibre");
        return ready(
                "on hand, oven-dry",
                fibre.name(),
                Kinds.MASS,
                "g",
                (job, mass) -> job.withStudio(one -> one.onHand(fibre, mass)));
    }

    /**
     * The temperature of the room.
     *
     * @return the input
     */
    public static Input<Temperature> roomTemperature() {
        return ready(
                "room",
                "",
                Kinds.TEMPERATURE,
                "Cel",
                (job, celsius) -> job.withStudio(
                        one -> one.room(Air.of(celsius, job.studio().room().humidity())
                                .at(job.studio().room().pressure()))));
    }

    /**
     * The relative humidity of the room.
     *
     * @return the input
     */
    public static Input<RelativeHumidity> roomHumidity() {
        return ready(
                "air of the room",
                "",
                Kinds.RELATIVE_HUMIDITY,
                "%",
                (job, humidity) -> job.withStudio(
                        one -> one.room(Air.of(job.studio().room().temperature(), humidity)
                                .at(job.studio().room().pressure()))));
    }

    // ------------------------------------------------------------------------------------------------- what it is

    /**
     * Returns the same input, told in another unit.
     *
     * @param code the code of a unit of its kind
     * @return the input
     * @throws Refused if the unit is none of the kind
     */
    public Input<Q> in(String code) {
        kind.unit(code);
        return new Input<>(words, whose, kind, code, whole, change, assumption);
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
     * @return the name of a piece, a recipe or a fibre, or a scope; empty for none
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
     * Returns whether only whole numbers make sense.
     *
     * @return whether it is a count
     */
    public boolean isWhole() {
        return whole;
    }

    /**
     * Returns a job with this input at an amount.
     *
     * @param job the job
     * @param amount the amount
     * @return the job
     * @throws Refused if it cannot have that amount
     */
    public Job applied(Job job, Quantity<Q> amount) {
        Objects.requireNonNull(job, "job");
        return change.apply(job, kind.check(amount, toString()));
    }

    Job applied(Job job, double si) {
        return change.apply(job, amount(si));
    }

    Amount<Q> amount(double si) {
        return kind.ofSi(si, unit);
    }

    @Nullable
    Named assumption() {
        return assumption;
    }

    @Override
    public String toString() {
        return whose.isEmpty() ? words : words + " of " + whose;
    }
}
