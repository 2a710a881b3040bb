package org.papermath.vat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Volume;
import org.papermath.equation.VatBalance;
import org.papermath.equation.VatLaw;
import org.papermath.evidence.Notice;
import org.papermath.notice.StockNotices;
import org.papermath.pulp.Pulp;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Consistency;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Share;
import org.papermath.quantity.Solids;

/**
 * What is given to the vat between sheets, and after which: the table a vatman works by. Immutable.
 *
 * <p>Fresh stock thinner than a couched sheet brings more water than the sheets carry off, so the level rises; it is
 * let rise, or vat liquor is bailed out, or the stock is drained thicker.
 */
public final class Recharge {
    private static final Recharge NONE = new Recharge(0, 0.5, new VatBalance.Step[0]);

    private final int every;
    private final double freshConsistency;
    private final VatBalance.Step[] steps;

    /** What is done about the level. */
    public enum Level {
        /** It is let rise. */
        RISING,
        /** Vat liquor is bailed out, or water given, so that it stays at the mark. */
        HELD
    }

    /** One line of the table. */
    public sealed interface Line permits FoundLine {
        /** {@return sheets pulled when it is done; 0 for before the first} */
        int afterSheet();

        /** {@return vat liquor taken out first, as litres of water: at 1 % fibre that is 0.3 % more than it fills} */
        Amount<Volume> bailed();

        /** {@return fresh stock given} */
        Amount<Volume> stock();

        /** {@return water given} */
        Amount<Volume> water();
    }

    private record FoundLine(int afterSheet, Amount<Volume> bailed, Amount<Volume> stock, Amount<Volume> water)
            implements Line {
        @Override
        public String toString() {
            StringBuilder text =
                    new StringBuilder(afterSheet == 0 ? "before the first sheet" : "after sheet " + afterSheet);
            append(text, "bail ", bailed, " of vat liquor");
            append(text, "add ", stock, " of stock");
            append(text, "add ", water, " of water");
            return text.toString();
        }

        private static void append(StringBuilder text, String verb, Amount<Volume> volume, String what) {
            if (volume.si() > 0) {
                text.append(text.indexOf(":") < 0 ? ": " : ", ")
                        .append(verb)
                        .append(volume)
                        .append(what);
            }
        }
    }

    /** Stock and bailing that replace what a number of sheets took. */
    public sealed interface Replacement permits FoundReplacement {
        /** {@return the fresh stock to give} */
        Amount<Mass> stock();

        /** {@return the vat liquor to take out; zero where water is needed} */
        Amount<Mass> bailed();

        /** {@return the water to give; zero where liquor is bailed} */
        Amount<Mass> water();
    }

    private record FoundReplacement(Amount<Mass> stock, Amount<Mass> bailed, Amount<Mass> water)
            implements Replacement {
        @Override
        public String toString() {
            return "add " + stock + " of stock"
                    + (bailed.si() > 0
                            ? ", bail " + bailed + " of vat liquor"
                            : water.si() > 0 ? ", add " + water + " of water" : ", bail nothing");
        }
    }

    /** Two stocks mixed. */
    public sealed interface TwoStocks permits FoundStocks {
        /** {@return the part from the richer one} */
        Amount<Mass> richer();

        /** {@return the part from the poorer one} */
        Amount<Mass> poorer();
    }

    private record FoundStocks(Amount<Mass> richer, Amount<Mass> poorer) implements TwoStocks {
        @Override
        public String toString() {
            return "add " + richer + " of the thicker stock and " + poorer + " of the thinner one";
        }
    }

    private Recharge(int every, double freshConsistency, VatBalance.Step... steps) {
        this.every = every;
        this.freshConsistency = freshConsistency;
        this.steps = steps;
    }

    /**
     * Returns no recharge at all.
     *
     * @return an empty table
     */
    public static Recharge none() {
        return NONE;
    }

    /**
     * Gives the same stock after every so many sheets, but not after the last.
     *
     * @param every sheets between two recharges, 1 or more
     * @param stock the fresh stock given each time
     * @param sheets the sheets of the run, 1 or more
     * @return the table
     * @throws Refused if a number is out of range
     */
    public static Recharge every(int every, Pulp stock, int sheets) {
        Objects.requireNonNull(stock, "stock");
        requireCount(every, "sheets between two recharges");
        requireCount(sheets, "sheets");
        List<VatBalance.Step> steps = new ArrayList<>();
        for (long after = every; after < sheets; after += every) {
            steps.add(new VatBalance.Step(
                    (int) after, 0, stock.mass().si(), stock.consistency().si(), 0));
        }
        return new Recharge(every, stock.consistency().si(), steps.toArray(new VatBalance.Step[0]));
    }

    /**
     * Works out a table that keeps every sheet within a tolerance: how many sheets may be pulled between two recharges,
     * and how much stock each time brings the vat back to just above the middle, as far as the sheets fall below it
     * until the next. The first line, before the first sheet, brings the vat there from where it stands, with stock or
     * with water.
     *
     * @param charge the vat as it stands
     * @param sheetFibre the oven-dry fibre a sheet should have, above zero
     * @param tolerance the greatest deviation of a sheet, above zero, at most 50 %
     * @param sheets the sheets of the run, 1 to 100 000
     * @param stock the consistency of the fresh stock, above what the vat is kept at
     * @param level what is done about the level
     * @return the table
     * @throws Refused if a value is out of range; if the stock is too thin to bring the vat up; or if a single dip
     *     takes the vat through the whole band, naming the least vat volume with which it would do
     * @source mass balance; a sheet takes R q c of fibre, so the vat thins by the factor 1 − R q/V a sheet
     */
    public static Recharge within(
            VatCharge charge,
            Quantity<Mass> sheetFibre,
            Quantity<Share> tolerance,
            int sheets,
            Quantity<Consistency> stock,
            Level level) {
        requireCount(sheets, "sheets");
        double target = Kinds.MASS.siAboveZero(sheetFibre, "fibre of a sheet");
        double band = Kinds.SHARE.siWithin(tolerance, "tolerance of a sheet", 1e-6, 0.5);
        double fresh = Kinds.CONSISTENCY.siAboveZero(stock, "consistency of the fresh stock");
        double middle = VatBalance.consistencyForSheet(target, charge.retention, charge.lifted);
        if (middle >= 1) {
            throw Refused.of(
                    "vat.sheet-above-lift",
                    "fibre of a sheet: " + Kinds.MASS.ofSi(target, "g") + " asked of a dip of " + charge.lifted()
                            + ", more than any stock can give. Lift more.",
                    "wanted",
                    Kinds.MASS.ofSi(target, "g").toString(),
                    "lifted",
                    charge.lifted().toString());
        }
        VatLaw law = new VatLaw(charge.contents.stock(), charge.retention, charge.lifted);
        int most = law.sheetsInBand(band, sheets);
        if (most < 2 && sheets > 1) {
            double least = law.leastFull(band);
            Amount<Volume> volume = VatCharge.litres(least, thin(middle));
            Notice why = StockNotices.vatTooSmall(
                    Kinds.SHARE.check(tolerance, "tolerance of a sheet"), charge.lifted(), volume);
            throw new Refused(why.code(), why.text(), why.arguments());
        }
        for (int every = Math.min(most, sheets); ; every--) {
            Recharge table = table(charge, middle, every, sheets, fresh, level);
            if (every == 1 || table.keeps(charge, target, band, sheets)) {
                return table;
            }
        }
    }

    private static Recharge table(VatCharge charge, double middle, int every, int sheets, double fresh, Level level) {
        List<VatBalance.Step> steps = new ArrayList<>();
        VatBalance.Contents now = charge.contents;
        int kinds = charge.carried.size();
        double[] additives = new double[kinds];
        double[] retentions = new double[kinds];
        double[] perFibre = new double[kinds];
        VatRun.additives(charge, additives, retentions, perFibre);
        VatLaw law = new VatLaw(now.stock(), charge.retention, charge.lifted);
        for (int done = 0; done < sheets; done += every) {
            int count = Math.min(every, sheets - done);
            double wanted = middle * law.firstOverMean(count);
            VatBalance.Step step = done > 0 && level == Level.HELD
                    ? hold(law, now, wanted, fresh, done)
                    : restore(now, wanted, fresh, done);
            steps.add(step);
            now = VatBalance.after(now, step, additives, perFibre);
            if (done == 0) {
                law = new VatLaw(now.stock(), charge.retention, charge.lifted);
            }
            now = VatBalance.pull(
                    now,
                    charge.lifted,
                    charge.retention,
                    charge.couchSolids,
                    0,
                    count,
                    new double[count],
                    null,
                    additives,
                    retentions,
                    new double[kinds][count]);
            VatRun.requireWet(now, done + count);
        }
        return new Recharge(every, fresh, steps.toArray(new VatBalance.Step[0]));
    }

    /** Stock or water that brings the vat to a consistency, wherever the level goes. */
    private static VatBalance.Step restore(VatBalance.Contents now, double wanted, double fresh, int after) {
        if (now.consistency() > wanted) {
            return new VatBalance.Step(after, 0, 0, fresh, now.fibre() / wanted - now.stock());
        }
        requireRicher(fresh, wanted);
        return new VatBalance.Step(after, 0, VatBalance.stockToRestore(now, wanted, fresh), fresh, 0);
    }

    /** Bailing, stock and water that bring the vat to a consistency at its mark. */
    private static VatBalance.Step hold(VatLaw law, VatBalance.Contents now, double wanted, double fresh, int after) {
        requireRicher(fresh, wanted);
        double stock = law.stockFor(now, wanted * law.full(), fresh, 0);
        double over = now.stock() + stock - law.full();
        return new VatBalance.Step(after, Math.max(0, over), stock, fresh, Math.max(0, -over));
    }

    private static void requireRicher(double fresh, double wanted) {
        if (fresh <= wanted) {
            Amount<Consistency> given = Kinds.CONSISTENCY.ofSi(fresh, "%");
            Amount<Consistency> least = Kinds.CONSISTENCY.ofSi(wanted, "%");
            throw Refused.of(
                    "vat.stock-too-thin",
                    "consistency of the fresh stock: " + given + " given, not above the " + least
                            + " the vat is to be kept at; it cannot bring the vat up. Drain the stock thicker.",
                    "given",
                    given.toString(),
                    "least",
                    least.toString());
        }
    }

    private boolean keeps(VatCharge charge, double target, double band, int sheets) {
        VatRun run = VatRun.of(charge, sheets, this);
        return run.fibreKilograms().allMatch(sheet -> Math.abs(sheet - target) <= band * target * (1 + 1e-9));
    }

    /** What sheets took, waiting for the stock that replaces it. */
    public static final class Taken {
        private final double fibre;
        private final double solids;

        private Taken(double fibre, double solids) {
            this.fibre = fibre;
            this.solids = solids;
        }

        /**
         * Says the stock it is replaced from.
         *
         * @param stock the consistency of the fresh stock, above that of the vat
         * @return what waits for the vat
         * @throws Refused if the consistency is out of range
         */
        public FromStock from(Quantity<Consistency> stock) {
            return new FromStock(this, Kinds.CONSISTENCY.siAboveZero(stock, "consistency of the fresh stock"));
        }

        /** Returns the fibre taken and the solids it left at. */
        @Override
        public String toString() {
            return Kinds.MASS.ofSi(fibre, "g") + " of fibre taken at " + Kinds.SOLIDS.ofSi(solids, "%") + " solids";
        }
    }

    /** Fresh stock that replaces what sheets took, waiting for the vat it goes into. */
    public static final class FromStock {
        private final Taken taken;
        private final double fresh;

        private FromStock(Taken taken, double fresh) {
            this.taken = taken;
            this.fresh = fresh;
        }

        /**
         * Reckons what goes into the vat.
         *
         * @param vat the consistency of the vat
         * @return stock to give and liquor to bail, or water to give where the stock is thicker than the couched sheet
         * @throws Refused if the consistency is out of range, or the stock is not thicker than the vat
         */
        public Replacement into(Quantity<Consistency> vat) {
            double there = Kinds.CONSISTENCY.si(vat, "consistency of the vat");
            requireRicher(fresh, there);
            double carried = taken.fibre / taken.solids;
            double bailed = VatBalance.bailedToHold(taken.fibre, carried, fresh, there);
            if (bailed >= 0) {
                return new FoundReplacement(kg(carried + bailed), kg(bailed), kg(0));
            }
            double needed = VatBalance.stockToReplace(taken.fibre, fresh);
            return new FoundReplacement(kg(needed), kg(0), kg(Math.max(0, carried - needed)));
        }

        /** Returns the fibre taken and the stock. */
        @Override
        public String toString() {
            return taken + ", replaced from stock at " + Kinds.CONSISTENCY.ofSi(fresh, "%");
        }
    }

    /**
     * Begins to reckon what replaces the fibre and the stock that a number of sheets took, so that level and consistency
     * are as before: {@code Recharge.replacing(grams(69.6), Solids.percent(15)).from(stock).into(vat)}.
     *
     * @param fibreTaken the oven-dry fibre the sheets took, above zero
     * @param couchedAt the solids they left with
     * @return what waits for the stock and the vat
     * @throws Refused if a value is out of range
     * @source two balances, of stock and of fibre
     */
    public static Taken replacing(Quantity<Mass> fibreTaken, Quantity<Solids> couchedAt) {
        return new Taken(
                Kinds.MASS.siAboveZero(fibreTaken, "fibre taken"),
                Kinds.SOLIDS.si(couchedAt, "solids of the couched sheet"));
    }

    /**
     * Mixes two stocks so that together they bring both the fibre and the mass that sheets carried off, and level and
     * consistency hold at once.
     *
     * @param fibreTaken the oven-dry fibre the sheets took, above zero
     * @param couchedAt the solids they left with, between the two consistencies
     * @param richer the consistency of the thicker stock
     * @param poorer the consistency of the thinner stock, which may be clear water
     * @return how much of each
     * @throws Refused if the couched solids do not lie between the two
     */
    public static TwoStocks mixing(
            Quantity<Mass> fibreTaken,
            Quantity<Solids> couchedAt,
            Quantity<Consistency> richer,
            Quantity<Consistency> poorer) {
        double taken = Kinds.MASS.siAboveZero(fibreTaken, "fibre taken");
        double solids = Kinds.SOLIDS.si(couchedAt, "solids of the couched sheet");
        double rich = Kinds.CONSISTENCY.si(richer, "consistency of the thicker stock");
        double poor = Kinds.CONSISTENCY.si(poorer, "consistency of the thinner stock");
        if (!(poor < rich) || solids < poor || solids > rich) {
            throw Refused.of(
                    "vat.mixture-out-of-reach",
                    "stocks: " + Kinds.CONSISTENCY.ofSi(rich, "%") + " and " + Kinds.CONSISTENCY.ofSi(poor, "%")
                            + " given; the sheets leave at " + Kinds.SOLIDS.ofSi(solids, "%")
                            + ", which must lie between the two. Drain one thicker, or bail.",
                    "richer",
                    Kinds.CONSISTENCY.ofSi(rich, "%").toString(),
                    "poorer",
                    Kinds.CONSISTENCY.ofSi(poor, "%").toString(),
                    "wanted",
                    Kinds.SOLIDS.ofSi(solids, "%").toString());
        }
        double carried = taken / solids;
        double part = VatBalance.richerPart(solids, rich, poor);
        return new FoundStocks(kg(carried * part), kg(carried * (1 - part)));
    }

    private static Amount<Mass> kg(double mass) {
        return Kinds.MASS.ofSi(mass, "kg");
    }

    /**
     * Returns the sheets between two recharges.
     *
     * @return the number; 0 for no recharge
     */
    public int every() {
        return every;
    }

    /**
     * Returns the table.
     *
     * @return the lines in order; lines that ask for nothing are left out
     */
    public List<Line> lines() {
        return Arrays.stream(steps)
                .filter(step -> step.stock() + step.water() + step.bailed() > 0)
                .map(this::line)
                .toList();
    }

    /**
     * Returns what is to be done before the first sheet, or now.
     *
     * @return the line of it, all zero where nothing is to be done
     */
    public Line now() {
        return steps.length > 0 && steps[0].after() == 0
                ? line(steps[0])
                : line(new VatBalance.Step(0, 0, 0, freshConsistency, 0));
    }

    private Line line(VatBalance.Step step) {
        Pulp like = thin(step.consistency());
        Pulp water = thin(1e-9);
        return new FoundLine(
                step.after(),
                VatCharge.litres(step.bailed(), water),
                VatCharge.litres(step.stock(), like),
                VatCharge.litres(step.water(), water));
    }

    /** A gram of fibre at a consistency, for its density. */
    private static Pulp thin(double consistency) {
        return Pulp.ofOvenDry(Kinds.MASS.ofSi(1e-3)).at(Kinds.CONSISTENCY.ofSi(Math.max(1e-9, consistency)));
    }

    VatBalance.Step[] steps() {
        return steps;
    }

    @Override
    public String toString() {
        return steps.length == 0 ? "no recharge" : lines().size() + " recharges, every " + every + " sheets";
    }

    static void requireCount(int count, String what) {
        if (count < 1 || count > 100_000) {
            throw Refused.of(
                    "vat.count",
                    what + ": " + count + " given; it must be from 1 to 100 000.",
                    "quantity",
                    what,
                    "given",
                    count,
                    "least",
                    1,
                    "most",
                    100_000);
        }
    }
}
