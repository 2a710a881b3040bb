package org.papermath.plan;

import java.util.ArrayList;
import java.util.List;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Volume;
import org.papermath.engine.FillingVat;
import org.papermath.engine.FormingSheets;
import org.papermath.engine.PreparingStock;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Consistency;
import org.papermath.quantity.Kinds;

/** How to work the vat. */
public final class VatPlan {
    private record Values(
            Amount<Consistency> consistency,
            String why,
            boolean bounded,
            int turn,
            int dips,
            Amount<Length> dipDepth,
            Amount<Volume> letDown,
            Amount<Volume> pail,
            Amount<Volume> stock,
            Amount<Volume> water,
            Amount<Volume> bail,
            Amount<Mass> lift,
            int every,
            List<Recharge> recharges,
            Amount<Dimensionless> lightest,
            Amount<Dimensionless> heaviest) {}

    private final Values values;

    private VatPlan(Values values) {
        this.values = values;
    }

    static Stage<VatPlan> of(PlainNumbers in, int p) {
        FillingVat.Setting set = in.settings().vat(p);
        if (in.studio().vat().isEmpty()) {
            return Stage.notDone("vat.none", "the studio has no vat: each sheet is poured");
        }
        if (set.tooWide()) {
            FormingSheets.Setting sheet = in.settings().sheet(p);
            String vat = PlanReading.sides(
                    in.engine().workshop().vatWidth(), in.engine().workshop().vatLength());
            return Stage.notDone(
                    "vat.too-narrow",
                    "a mould with a sheet of "
                            + PlanReading.sides(sheet.openingWidth(), sheet.openingHeight())
                            + " does not go into the vat of " + vat
                            + ": each sheet is poured. The largest sheet it takes"
                            + " is " + vat + ", less the rails of the mould");
        }
        if (!set.dipped() && set.dips() > 1) {
            return Stage.notDone(
                    "vat.deckle-too-shallow",
                    "the deckle holds " + Kinds.LENGTH.ofSi(set.standing(), "mm") + " of stock with what drains"
                            + " meanwhile, and the sheet would take " + set.dips() + " dips: each sheet is poured. A"
                            + " deeper deckle is built up in fewer");
        }
        if (!set.dipped()) {
            return Stage.notDone(
                    "vat.lift-above-vat",
                    "one lift takes " + in.litresOfStock(set.wantedLift(), p)
                            + " of stock, the vat holds "
                            + in.studio().vat().get().workingVolume()
                            + ": each sheet is poured. A vat of at least "
                            + Kinds.VOLUME.ofSi(set.leastVatVolume(), "L")
                            + " keeps the sheets even");
        }
        List<Recharge> recharges = new ArrayList<>();
        for (FillingVat.Charge one : set.recharges()) {
            recharges.add(Recharge.of(in, p, one, (recharges.size() + 1) * set.every()));
        }
        FormingSheets.Setting sheet = in.settings().sheet(p);
        Amount<Length> depth =
                Kinds.LENGTH.ofSi(set.lift() / in.engine().workshop().waterDensity() / sheet.area(), "mm");
        return Stage.done(new VatPlan(new Values(
                Kinds.CONSISTENCY.ofSi(set.vat().consistency(), "%"),
                why(in, p, set),
                set.vat().why().isBound(),
                set.turn() + 1,
                set.dips(),
                depth,
                in.litresOfStock(set.letDown(), p),
                in.litresOfStock(set.start().pail(), p),
                in.litresOfStock(set.start().stock(), p),
                in.litresOfWater(set.start().water()),
                in.litresOfWater(set.start().bail()),
                Kinds.MASS.ofSi(set.lift(), "kg"),
                set.every(),
                List.copyOf(recharges),
                Kinds.NUMBER.ofSi(in.estimates().likely(FillingVat.LIGHTEST, p), "%"),
                Kinds.NUMBER.ofSi(in.estimates().likely(FillingVat.HEAVIEST, p), "%"))));
    }

    private static String why(PlainNumbers in, int p, FillingVat.Setting set) {
        int batch = in.engine().piece(p).batch();
        return switch (set.vat().why()) {
            case RECIPE -> "as the recipe says";
            case HABIT -> "as this studio keeps its vat";
            case DIP -> "so that the dip is about as deep as usual";
            case LEAST -> "thin paper: no vat is made thinner, so the dip is shallow";
            case MOST ->
                "the most that pulp of "
                        + in.estimates()
                                .of(Kinds.SCHOPPER_RIEGLER, PreparingStock.DRAINABILITY, batch)
                                .likely() + " stirs and forms at, so the dip is deep";
            case STOCK -> "the most the stock leaves room for, so the dip is deep";
            case AS_BEFORE -> "as the piece before leaves it";
        };
    }

    /** {@return the mean oven-dry fibre over stock to hold} */
    public Amount<Consistency> consistency() {
        return values.consistency;
    }

    /** {@return why the vat is made so thick, in words} */
    public String why() {
        return values.why;
    }

    /** {@return whether a bound made it so, and the dip is not as deep as usual} */
    public boolean bounded() {
        return values.bounded;
    }

    /** {@return the place among the pieces of its recipe in which it is formed, from 1} */
    public int turn() {
        return values.turn;
    }

    /** {@return dips a sheet is built up of} */
    public int dips() {
        return values.dips;
    }

    /** {@return depth of stock on the mould for each dip} */
    public Amount<Length> dipDepth() {
        return values.dipDepth;
    }

    /** {@return what is taken out into a pail before the first sheet, to let the vat down for thinner paper; or zero} */
    public Amount<Volume> letDown() {
        return values.letDown;
    }

    /** {@return what is given back from the pail before the first sheet} */
    public Amount<Volume> pail() {
        return values.pail;
    }

    /** {@return stock to the vat before the first sheet of this piece} */
    public Amount<Volume> stock() {
        return values.stock;
    }

    /** {@return water to the vat before the first sheet of this piece} */
    public Amount<Volume> water() {
        return values.water;
    }

    /** {@return white water to bail before that, if the vat is worked on from another piece} */
    public Amount<Volume> bail() {
        return values.bail;
    }

    /** {@return stock to lift for each dip} */
    public Amount<Mass> lift() {
        return values.lift;
    }

    /** {@return sheets between two recharges} */
    public int every() {
        return values.every;
    }

    /** {@return each recharge} */
    public List<Recharge> recharges() {
        return values.recharges;
    }

    /** {@return the lightest sheet over the mean} */
    public Amount<Dimensionless> lightest() {
        return values.lightest;
    }

    /** {@return the heaviest sheet over the mean} */
    public Amount<Dimensionless> heaviest() {
        return values.heaviest;
    }

    @Override
    public String toString() {
        return "lift " + values.lift + (values.dips > 1 ? ", " + values.dips + " times" : "")
                + " a sheet; recharge after every " + values.every + " sheets";
    }

    /** One recharge. */
    public static final class Recharge {
        private record Given(
                int afterSheet,
                Amount<Volume> strained,
                Amount<Volume> pail,
                Amount<Volume> stock,
                Amount<Volume> water,
                Amount<Volume> bail) {}

        private final Given given;

        private Recharge(Given given) {
            this.given = given;
        }

        static Recharge of(PlainNumbers in, int p, FillingVat.Charge one, int afterSheet) {
            return new Recharge(new Given(
                    afterSheet,
                    in.litresOfWater(one.strained()),
                    in.litresOfStock(one.pail(), p),
                    in.litresOfStock(one.stock(), p),
                    in.litresOfWater(one.water()),
                    in.litresOfWater(one.bail())));
        }

        /** {@return the number of the sheet after which it is given} */
        public int afterSheet() {
            return given.afterSheet;
        }

        /** {@return water to strain out before anything is given, where the vat is run down} */
        public Amount<Volume> strained() {
            return given.strained;
        }

        /** {@return what to give of the pail the vat was let down into, before any stock} */
        public Amount<Volume> pail() {
            return given.pail;
        }

        /** {@return stock to add} */
        public Amount<Volume> stock() {
            return given.stock;
        }

        /** {@return water to add, to bring the level up} */
        public Amount<Volume> water() {
            return given.water;
        }

        /** {@return white water to take out through the sieve, to bring the level down} */
        public Amount<Volume> bail() {
            return given.bail;
        }

        @Override
        public String toString() {
            StringBuilder text = new StringBuilder();
            append(text, "strain out ", given.strained, " of water");
            append(text, "bail ", given.bail, "");
            append(text, "give ", given.pail, " of the pail");
            append(text, "give ", given.stock, " of stock");
            append(text, "give ", given.water, " of water");
            return (given.afterSheet == 0 ? "before the first sheet: " : "after sheet " + given.afterSheet + ": ")
                    + (text.isEmpty() ? "nothing" : text);
        }

        private static void append(StringBuilder text, String verb, Amount<Volume> volume, String of) {
            if (volume.si() > 0) {
                text.append(text.isEmpty() ? "" : ", ")
                        .append(verb)
                        .append(volume)
                        .append(of);
            }
        }
    }
}
