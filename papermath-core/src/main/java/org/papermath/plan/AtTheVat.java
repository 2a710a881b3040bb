package org.papermath.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Time;
import javax.measure.quantity.Volume;
import org.papermath.engine.FillingVat;
import org.papermath.engine.FormingSheets;
import org.papermath.engine.VatStanding;
import org.papermath.equation.DrainageLaw;
import org.papermath.evidence.Notice;
import org.papermath.evidence.Scope;
import org.papermath.mould.Mould;
import org.papermath.mould.Opening;
import org.papermath.numeric.Roots;
import org.papermath.order.StuffOnHand;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Consistency;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Moisture;
import org.papermath.quantity.Refused;
import org.papermath.text.Digits;

/**
 * The vat in the middle of a run, with the card in hand: as the plan has it after so many sheets, corrected by what is weighed
 * or seen there, and what to give from here on. Made by {@link MakingPlan#atTheVat}. Immutable.
 *
 * <pre>{@code
 * AtTheVat vat = MakingPlan.of(order, studio).atTheVat("programme").after(12).couched(grams(58));
 * vat.found(); // 85.5 %
 * vat.now(); // after sheet 12: bail 7.4 L, give 7.49 L of the pail, give 0.01 L of stock
 * }</pre>
 *
 * <p>What is given follows the rules of the plan: from the pail first, in steps of the jug, the level brought to the mark
 * through the strainer, and run down at the end. Readings correct what is in the vat, not the plan of the next batch; records
 * do that.
 *
 * @source the balance of fibre and water of {@link org.papermath.vat.VatRun}; the weight of a sheet goes as the consistency it
 *     is dipped from
 */
public final class AtTheVat {
    /** A reading that says the vat holds less, or more, than this of what was reckoned is taken for a slip. */
    private static final double LEAST = 0.25;

    private static final double MOST = 4;
    /** Lines of a print. */
    private static final int LINES = 6;

    private final MakingPlan plan;
    private final PlainNumbers in;
    private final int piece;
    private final State state;

    /**
     * How things stand.
     *
     * @param form the sheets still to form
     * @param set the lift, and what the plan gives
     * @param wanted how thick the vat is wanted
     * @param vat the vat
     * @param last what the last sheet should weigh oven-dry, kg; not a number before the first
     * @param done sheets formed
     * @param stock how thick the stock is, over what it was made to be
     * @param found what was found over what was reckoned
     * @param planned whether nothing was found or changed, so that the plan goes on as it is
     */
    private record State(
            FormingSheets.Setting form,
            FillingVat.Setting set,
            double wanted,
            VatStanding vat,
            double last,
            int done,
            double stock,
            double found,
            List<Notice> notices,
            boolean planned) {
        State with(VatStanding other, double ratio, List<Notice> more) {
            List<Notice> all = new ArrayList<>(notices);
            all.addAll(more);
            return new State(
                    form, set, wanted, other, ratio * last, done, stock, found * ratio, List.copyOf(all), false);
        }

        State of(FormingSheets.Setting other, FillingVat.Setting otherSet, double otherWanted) {
            return new State(other, otherSet, otherWanted, vat, last, done, stock, found, notices, false);
        }

        State at(FillingVat.Midway there, FormingSheets.Setting rest, int sheets) {
            return new State(rest, set, wanted, there.vat(), there.last(), sheets, stock, found, notices, false);
        }
    }

    private AtTheVat(MakingPlan plan, PlainNumbers in, int piece, State state) {
        this.plan = plan;
        this.in = in;
        this.piece = piece;
        this.state = state;
    }

    static AtTheVat of(MakingPlan plan, PlainNumbers in, int piece) {
        FillingVat.Setting set = in.settings().vat(piece);
        if (!set.dipped()) {
            throw Refused.of(
                    "vat.not-dipped",
                    "piece " + in.order().pieces().get(piece).name() + ": "
                            + plan.pieces().get(piece).vatStage().reason() + "; there is no vat to correct.",
                    "piece",
                    in.order().pieces().get(piece).name());
        }
        return new AtTheVat(
                plan,
                in,
                piece,
                new State(
                        in.settings().sheet(piece),
                        set,
                        set.vat().consistency(),
                        in.engine().midway(in.settings(), piece, 0).vat(),
                        Double.NaN,
                        0,
                        1,
                        1,
                        List.of(),
                        true));
    }

    private AtTheVat with(State other) {
        return new AtTheVat(plan, in, piece, other);
    }

    // ------------------------------------------------------------------------------------------------ how far

    /**
     * Returns the vat after so many sheets of the piece, with all given that the plan gives until then.
     *
     * @param sheets the sheets pulled, trials with them, 1 or more
     * @return the vat
     * @throws Refused if there are not so many
     */
    public AtTheVat after(int sheets) {
        FormingSheets.Setting all = in.settings().sheet(piece);
        requireSheets(sheets, all.sheets());
        FillingVat.Midway there = in.engine().midway(in.settings(), piece, sheets);
        return with(new State(
                all.of(all.sheets() - sheets),
                in.settings().vat(piece),
                in.settings().vat(piece).vat().consistency(),
                there.vat(),
                there.last(),
                sheets,
                1,
                1,
                List.of(),
                true));
    }

    /**
     * Returns the vat after so many more sheets, with all given that {@link #now()} and {@link #recharges()} give.
     *
     * @param sheets how many more, 1 or more
     * @return the vat
     * @throws Refused if there are not so many left
     */
    public AtTheVat goingOn(int sheets) {
        requireSheets(sheets, state.form.sheets());
        return with(state.at(
                in.engine().formed(in.settings(), piece, rest().setting(), state.vat, state.stock, sheets),
                left(sheets),
                state.done + sheets));
    }

    /**
     * Returns the vat after so many more sheets with nothing given, as when a recharge was forgotten.
     *
     * @param sheets how many more, 1 or more
     * @return the vat
     * @throws Refused if there are not so many left
     */
    public AtTheVat givingNothing(int sheets) {
        requireSheets(sheets, state.form.sheets());
        return with(state.at(pulled(sheets), left(sheets), state.done + sheets));
    }

    /**
     * Returns the vat after a sheet that was dipped twice and put aside: it took as much again and is not counted.
     *
     * @return the vat
     */
    public AtTheVat spoiledSheet() {
        return with(state.at(pulled(1), state.form, state.done));
    }

    private FillingVat.Midway pulled(int sheets) {
        return in.engine().formed(in.settings(), piece, state.set.givingNothing(), state.vat, state.stock, sheets);
    }

    private FormingSheets.Setting left(int sheets) {
        return state.form.of(state.form.sheets() - sheets);
    }

    private void requireSheets(int sheets, int most) {
        if (most == 0) {
            throw Refused.of(
                    "vat.no-sheet-left",
                    "sheet: all sheets of " + in.order().pieces().get(piece).name()
                            + " are pulled. Say with further(…) how many more are wanted.",
                    "piece",
                    in.order().pieces().get(piece).name());
        }
        if (sheets < 1 || sheets > most) {
            throw Refused.of(
                    "vat.no-such-sheet",
                    "sheet: number " + sheets + " given; the run has sheets 1 to " + most + ".",
                    "given",
                    sheets,
                    "most",
                    most);
        }
    }

    // ------------------------------------------------------------------------------------------------ what is read

    /**
     * Corrects by the last sheet, weighed as it is couched. The less sure way: a tenth more water looks like a tenth more
     * sheet.
     *
     * @param wet what the couched sheet weighs, above zero
     * @return the vat as it really stands
     * @throws Refused if no sheet is pulled yet, or the reading is a slip
     */
    public AtTheVat couched(Quantity<Mass> wet) {
        double solids = in.engine()
                .couchedSolids(in.settings(), in.engine().piece(piece).batch());
        return sheet(Kinds.MASS.siAboveZero(wet, "couched sheet") * solids, "couched sheet");
    }

    /**
     * Corrects by the last sheet, dried quickly on a hot plate or under an iron.
     *
     * @param dried what the dried sheet weighs, above zero
     * @param moisture the water left in it, over the whole; zero straight off the plate
     * @return the vat as it really stands
     * @throws Refused if no sheet is pulled yet, or the reading is a slip
     */
    public AtTheVat dried(Quantity<Mass> dried, Quantity<Moisture> moisture) {
        return sheet(
                Kinds.MASS.siAboveZero(dried, "dried sheet")
                        * (1 - Kinds.MOISTURE.siWithin(moisture, "moisture of the dried sheet", 0, 0.9)),
                "dried sheet");
    }

    private AtTheVat sheet(double solids, String what) {
        if (Double.isNaN(state.last)) {
            throw Refused.of(
                    "vat.no-sheet-yet",
                    what + ": no sheet is pulled yet. Say after which sheet it was weighed.",
                    "quantity",
                    what);
        }
        double ratio = solids / state.last;
        String recipe = in.order().pieces().get(piece).recipe();
        double scatter = in.studio().assumptions().si("sheet.scatter-grammage", Scope.of(recipe));
        List<Notice> notices = Math.abs(ratio - 1) < scatter
                ? List.of(Notice.note(
                        "vat.within-scatter",
                        "The sheet is " + Kinds.NUMBER.ofSi(Math.abs(ratio - 1), "%")
                                + " off the calculated weight; single sheets differ by "
                                + Kinds.NUMBER.ofSi(scatter, "%")
                                + " from hand to hand. Weigh a few before changing the vat.",
                        "off",
                        Kinds.NUMBER.ofSi(Math.abs(ratio - 1), "%").toString(),
                        "scatter",
                        Kinds.NUMBER.ofSi(scatter, "%").toString()))
                : List.of();
        return found(ratio, what, notices);
    }

    /**
     * Corrects by a sample of the stirred vat, weighed and dried; the surest way.
     *
     * @param wet the sample, above zero
     * @param dried what is left of it oven-dry, additives with it
     * @return the vat as it really stands
     * @throws Refused if the sample grew heavier, or the reading is a slip
     */
    public AtTheVat sample(Quantity<Mass> wet, Quantity<Mass> dried) {
        double all = Kinds.MASS.siAboveZero(wet, "sample of the vat");
        double dry = Kinds.MASS.siAboveZero(dried, "dried sample of the vat");
        double solids = state.vat.fibre();
        for (double additive : state.vat.additives()) {
            solids += additive;
        }
        return found(dry / all / (solids / state.vat.mass()), "sample of the vat", List.of());
    }

    /**
     * Corrects by how long a sheet drains, beside one of this run that was right: the same stuff in the same water drains
     * the longer the thicker it is.
     *
     * @param right how long the right one took, above zero
     * @param now how long it takes now, above zero
     * @return the vat as it really stands
     * @throws Refused if it is not known how such stuff drains, or the reading is a slip
     */
    public AtTheVat drains(Quantity<Time> right, Quantity<Time> now) {
        double then = Kinds.TIME.siAboveZero(right, "time of the sheet that was right");
        double time = Kinds.TIME.siAboveZero(now, "time to drain");
        DrainageLaw law = in.engine().drainageLaw(piece);
        double depth = state.set.lift()
                * state.set.dips()
                / state.form.area()
                / in.engine().workshop().waterDensity();
        double strength = state.wanted * in.engine().workshop().waterDensity();
        double viscosity = in.engine().workshop().waterViscosity();
        double density = in.engine().workshop().waterDensity();
        double alpha = law.alpha(then, depth, strength, viscosity, density);
        if (!(alpha > 0)) {
            throw Refused.of(
                    "vat.drains-too-fast",
                    "time of the sheet that was right: " + Kinds.TIME.ofSi(then, "s")
                            + " given, no more than the bare cover takes; it tells nothing of the stuff. Weigh a sheet.",
                    "given",
                    Kinds.TIME.ofSi(then, "s").toString());
        }
        double least = law.time(depth, alpha, LEAST * strength, viscosity, density);
        double most = law.time(depth, alpha, MOST * strength, viscosity, density);
        double ratio = time <= least
                ? 0
                : time >= most
                        ? Double.POSITIVE_INFINITY
                        : Roots.between(
                                LEAST, MOST, x -> law.time(depth, alpha, x * strength, viscosity, density) - time);
        // It is as thick as that over what it should be, wherever it was reckoned to stand.
        return found(ratio * state.wanted / state.vat.consistency(), "time to drain", List.of());
    }

    private AtTheVat found(double ratio, String what, List<Notice> notices) {
        if (!(ratio > LEAST && ratio < MOST)) {
            throw Refused.of(
                    "vat.reading-doubtful",
                    what + ": it says the vat holds " + Digits.three(100 * ratio)
                            + " % of what was reckoned. Look for a slip in the unit, the tare or the number of the sheet;"
                            + " if it is so, strain the vat and fill it anew.",
                    "quantity",
                    what,
                    "ratio",
                    ratio);
        }
        return with(state.with(state.vat.thicker(ratio), ratio, notices));
    }

    /**
     * Corrects by the level: it stands so much below the mark, of pulp as thick as was reckoned.
     *
     * @param litres how much is missing, 0 or more
     * @return the vat as it really stands
     * @throws Refused if more is missing than the vat holds
     */
    public AtTheVat standsBelowTheMark(Quantity<Volume> litres) {
        return level(-Kinds.VOLUME.si(litres, "what the vat stands below the mark"));
    }

    /**
     * Corrects by the level: it stands so much above the mark, of pulp as thick as was reckoned.
     *
     * @param litres how much is over it, 0 or more
     * @return the vat as it really stands
     */
    public AtTheVat standsAboveTheMark(Quantity<Volume> litres) {
        return level(Kinds.VOLUME.si(litres, "what the vat stands above the mark"));
    }

    private AtTheVat level(double litres) {
        double full = in.engine().fullVat(in.settings(), piece);
        double mass = full + litres * in.engine().workshop().waterDensity();
        if (!(mass > 0)) {
            throw Refused.of(
                    "vat.below-empty",
                    "what the vat stands below the mark: " + Kinds.VOLUME.ofSi(-litres, "L") + " given; it holds "
                            + in.litresOfWater(full) + " there.",
                    "given",
                    Kinds.VOLUME.ofSi(-litres, "L").toString());
        }
        return with(state.with(state.vat.holding(mass), 1, List.of()));
    }

    // ------------------------------------------------------------------------------------------------ what changes

    /**
     * Goes on with stock of another consistency than it was made to be.
     *
     * @param real the consistency, above that of the vat
     * @return the vat
     * @throws Refused if it is no thicker than the vat is wanted
     */
    public AtTheVat stock(Quantity<Consistency> real) {
        double c = Kinds.CONSISTENCY.siAboveZero(real, "consistency of the stock");
        double made = in.engine().stock(in.engine().piece(piece).batch()).stockConsistency();
        if (c <= state.wanted) {
            throw Refused.of(
                    "vat.stock-too-thin",
                    "consistency of the stock: " + Kinds.CONSISTENCY.ofSi(c, "%") + " given, thinner than the "
                            + Kinds.CONSISTENCY.ofSi(state.wanted, "%")
                            + " needed in the vat. Drain the stock first.",
                    "given",
                    Kinds.CONSISTENCY.ofSi(c, "%").toString(),
                    "least",
                    Kinds.CONSISTENCY.ofSi(state.wanted, "%").toString());
        }
        return with(new State(
                state.form,
                state.set,
                state.wanted,
                state.vat,
                state.last,
                state.done,
                c / made,
                state.found,
                state.notices,
                false));
    }

    /**
     * Goes on for another number of sheets than the plan has left.
     *
     * @param sheets the sheets still to pull, 1 to 100 000
     * @return the vat
     * @throws Refused if the number is out of range
     */
    public AtTheVat further(int sheets) {
        requireSheets(sheets, 100_000);
        return with(state.of(state.form.of(sheets), state.set, state.wanted));
    }

    /**
     * Goes on with sheets of the same weight for their area on another mould, one to the mould.
     *
     * @param mould the mould
     * @param sheets the sheets to pull on it, 1 to 100 000
     * @return the vat
     * @throws Refused if the number is out of range, or the vat cannot give such a sheet
     */
    public AtTheVat on(Mould mould, int sheets) {
        Objects.requireNonNull(mould, "mould");
        requireSheets(sheets, 100_000);
        if (mould.deckle().outline().isPresent() || mould.deckle().count() > 1) {
            throw Refused.of(
                    "vat.mould-not-plain",
                    "mould " + mould.name()
                            + ": its deckle has a shape or several openings. Plan such pieces in an order;"
                            + " here one sheet with four sides is formed to a mould.",
                    "mould",
                    mould.name());
        }
        Opening opening = mould.deckle().opening();
        FormingSheets.Setting other =
                state.form.on(opening.width().si(), opening.height().si(), sheets);
        FillingVat.Setting set = in.engine()
                .goOn(in.settings(), piece, other, state.wanted, state.vat, state.stock)
                .setting();
        if (!set.dipped()) {
            throw Refused.of(
                    "vat.lift-above-vat",
                    "stock lifted: a sheet on " + mould + " takes more than the "
                            + PlainNumbers.kilograms(state.vat.mass())
                            + " of this vat can give. Pour it, or thicken the vat so that less is lifted.",
                    "given",
                    mould.toString(),
                    "most",
                    PlainNumbers.kilograms(state.vat.mass()).toString());
        }
        return with(new State(
                other,
                set,
                state.wanted,
                state.vat,
                Double.NaN,
                state.done,
                state.stock,
                state.found,
                state.notices,
                false));
    }

    /**
     * Goes on with another lift for the same sheets: the vat is brought to the consistency that wants it.
     *
     * @param lift what is lifted for each dip, above zero
     * @return the vat
     * @throws Refused if it is out of range, or wants a vat as thick as the stock
     */
    public AtTheVat lifting(Quantity<Mass> lift) {
        requireSheets(1, state.form.sheets());
        double kilograms = Kinds.MASS.siAboveZero(lift, "stock lifted");
        double wanted = state.wanted * state.set.lift() / kilograms;
        double stock = state.stock
                * in.engine().stock(in.engine().piece(piece).batch()).stockConsistency();
        if (!(wanted < stock)) {
            Amount<Mass> least = Kinds.MASS.ofSi(state.wanted * state.set.lift() / stock, "kg");
            throw Refused.of(
                    "vat.lift-too-light",
                    "stock lifted: " + Kinds.MASS.ofSi(kilograms, "kg") + " given; such a sheet takes more than "
                            + least + " even of undiluted stock. Lift more.",
                    "given",
                    Kinds.MASS.ofSi(kilograms, "kg").toString(),
                    "least",
                    least.toString());
        }
        FillingVat.Setting set = in.engine()
                .goOn(in.settings(), piece, state.form, wanted, state.vat, state.stock)
                .setting();
        return with(new State(
                state.form,
                set,
                wanted,
                state.vat,
                Double.NaN,
                state.done,
                state.stock,
                state.found,
                state.notices,
                false));
    }

    /**
     * Goes on with a depth of dip.
     *
     * @param depth of stock on the mould for each dip, above zero
     * @return the vat
     * @throws Refused as {@link #lifting}
     */
    public AtTheVat dipping(Quantity<Length> depth) {
        double metres = Kinds.LENGTH.siAboveZero(depth, "depth of the dip");
        return lifting(Kinds.MASS.ofSi(
                metres * state.form.area() * in.engine().workshop().waterDensity(), "kg"));
    }

    // ------------------------------------------------------------------------------------------------ what it says

    private FillingVat.Rest rest() {
        return state.form.sheets() == 0
                ? new FillingVat.Rest(state.set.givingNothing(), new double[0], state.vat)
                : in.engine().goOn(in.settings(), piece, state.form, state.wanted, state.vat, state.stock);
    }

    /** {@return the sheets of the piece that are pulled} */
    public int done() {
        return state.done;
    }

    /** {@return the sheets still to pull} */
    public int left() {
        return state.form.sheets();
    }

    /** {@return what the readings found over what was reckoned; 100 % without one} */
    public Amount<Dimensionless> found() {
        return Kinds.NUMBER.ofSi(state.found, "%");
    }

    /** {@return the consistency the vat stands at} */
    public Amount<Consistency> consistency() {
        return Kinds.CONSISTENCY.ofSi(state.vat.consistency(), "%");
    }

    /** {@return how far the vat stands above its mark; zero where it does not} */
    public Amount<Volume> aboveTheMark() {
        return in.litresOfWater(Math.max(0, overTheMark()));
    }

    /** {@return how far the vat stands below its mark; zero where it does not} */
    public Amount<Volume> belowTheMark() {
        return in.litresOfWater(Math.max(0, -overTheMark()));
    }

    private double overTheMark() {
        return state.vat.mass() - in.engine().fullVat(in.settings(), piece);
    }

    /** {@return what the last sheet weighs oven-dry, as the vat stands; empty before the first} */
    public Optional<Amount<Mass>> lastSheet() {
        return Double.isNaN(state.last) ? Optional.empty() : Optional.of(PlainNumbers.grams(state.last));
    }

    /** {@return what the next sheets weigh oven-dry with what is given, each} */
    public List<Amount<Mass>> sheets() {
        List<Amount<Mass>> sheets = new ArrayList<>();
        if (state.planned) {
            for (int i = 1; i <= in.settings().sheet(piece).sheets() - state.done; i++) {
                sheets.add(PlainNumbers.grams(
                        in.engine().midway(in.settings(), piece, state.done + i).last()));
            }
        } else {
            for (double one : rest().sheets()) {
                sheets.add(PlainNumbers.grams(one));
            }
        }
        return List.copyOf(sheets);
    }

    /** {@return what a sheet should weigh oven-dry} */
    public Amount<Mass> wanted() {
        return PlainNumbers.grams(state.form.solids());
    }

    /** {@return the stuff in the vat and in the pail it was let down into, as it stands} */
    public Optional<StuffOnHand> inTheVat() {
        return stuff(
                state.vat.fibre() + state.vat.pailFibre(),
                (state.vat.fibre() + state.vat.pailFibre()) / (state.vat.mass() + state.vat.pail()));
    }

    /** {@return the stock that was made and has not gone into the vat yet} */
    public Optional<StuffOnHand> inThePails() {
        int batch = in.engine().piece(piece).batch();
        double c = state.stock * in.engine().stock(batch).stockConsistency();
        return stuff((in.engine().stockMade(in.settings(), batch) - state.vat.used()) * c, c);
    }

    private Optional<StuffOnHand> stuff(double fibre, double consistency) {
        return fibre > 1e-6
                ? Optional.of(new StuffOnHand(
                        in.order().pieces().get(piece).recipe(),
                        PlainNumbers.grams(fibre),
                        Kinds.CONSISTENCY.ofSi(consistency, "%"),
                        Optional.empty()))
                : Optional.empty();
    }

    /** {@return what is taken out into a pail now, to thin a vat that is too thick; or zero} */
    public Amount<Volume> takeOut() {
        return state.planned
                ? Kinds.VOLUME.ofSi(0, "L")
                : in.litresOfStock(rest().setting().letDown(), piece);
    }

    /** {@return what to give now, before the next sheet} */
    public VatPlan.Recharge now() {
        if (state.planned) {
            return plan.pieces().get(piece).vat().recharges().stream()
                    .filter(one -> one.afterSheet() == state.done)
                    .findFirst()
                    .orElseGet(() -> VatPlan.Recharge.of(in, piece, FillingVat.Charge.NONE, state.done));
        }
        return VatPlan.Recharge.of(in, piece, rest().setting().start(), state.done);
    }

    /** {@return what to give between the sheets still to pull} */
    public List<VatPlan.Recharge> recharges() {
        if (state.planned) {
            return plan.pieces().get(piece).vat().recharges().stream()
                    .filter(one -> one.afterSheet() > state.done)
                    .toList();
        }
        FillingVat.Setting set = rest().setting();
        List<VatPlan.Recharge> list = new ArrayList<>();
        for (FillingVat.Charge one : set.recharges()) {
            list.add(VatPlan.Recharge.of(in, piece, one, state.done + (list.size() + 1) * set.every()));
        }
        return List.copyOf(list);
    }

    /** {@return what to read beside it: a reading no surer than a hand, stock that runs short} */
    public List<Notice> notices() {
        List<Notice> all = new ArrayList<>(state.notices);
        double made =
                in.engine().stockMade(in.settings(), in.engine().piece(piece).batch());
        double needed = state.planned ? 0 : rest().vat().used() + later();
        if (needed > made * (1 + 1e-9)) {
            all.add(Notice.warning(
                    "vat.stock-runs-short",
                    "This takes " + in.litresOfStock(needed - made, piece)
                            + " more stock than there is. The last sheets are left out or thinner, or more is beaten.",
                    "short",
                    in.litresOfStock(needed - made, piece).toString()));
        }
        return List.copyOf(all);
    }

    /** Stock that what is formed after this piece takes by the plan, kg. */
    private double later() {
        double sum = 0;
        int batch = in.engine().piece(piece).batch();
        for (int other = 0; other < in.engine().pieces(); other++) {
            FillingVat.Setting set = in.settings().vat(other);
            if (in.engine().piece(other).batch() != batch || other == piece) {
                continue;
            }
            if (!set.dipped()) {
                sum += set.lift() * in.settings().sheet(other).sheets();
            } else if (set.turn() > in.settings().vat(piece).turn()) {
                sum += set.start().stock();
                for (FillingVat.Charge one : set.recharges()) {
                    sum += one.stock();
                }
            }
        }
        return sum;
    }

    /** Returns what was found first, then what to give now and from here on. */
    @Override
    public String toString() {
        StringBuilder text = new StringBuilder(in.order().pieces().get(piece).name());
        text.append(state.done == 0 ? ", before the first sheet" : ", after sheet " + state.done);
        text.append(": ");
        if (state.found != 1) {
            text.append("it holds ").append(found()).append(" of what was reckoned; ");
        }
        text.append("the vat stands at ").append(consistency());
        text.append(" for ").append(Kinds.CONSISTENCY.ofSi(state.wanted, "%")).append(".\n");
        if (takeOut().si() > 0) {
            text.append("  now: take ").append(takeOut()).append(" out into a pail, then water to the mark\n");
        }
        text.append("  now: ").append(now()).append('\n');
        List<VatPlan.Recharge> then = recharges();
        then.stream().limit(LINES).forEach(one -> text.append("  ").append(one).append('\n'));
        if (then.size() > LINES) {
            text.append("  and so on, ").append(then.size()).append(" times in all\n");
        }
        notices().forEach(one -> text.append("  ").append(one.text()).append('\n'));
        return text.toString().stripTrailing();
    }
}
