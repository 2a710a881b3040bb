package org.papermath.notice;

import java.util.Optional;
import java.util.function.ToDoubleBiFunction;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Volume;
import org.papermath.evidence.Assumption;
import org.papermath.evidence.Notice;
import org.papermath.evidence.Scope;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Consistency;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Share;
import org.papermath.text.Digits;

/** What is unusual in the stock, from the fibres to the vat. */
public final class StockNotices {
    private StockNotices() {}

    /**
     * Warns of stock too thick for a beater to turn over.
     *
     * @param consistency how thick it is by mass
     * @param limits looks up a limit by id and scope
     * @param beater whose limits they are
     */
    public static Optional<Notice> thick(
            Amount<Consistency> consistency, ToDoubleBiFunction<String, Scope> limits, Scope beater) {
        double limit = limits.applyAsDouble("beater.consistency-limit", beater);
        if (consistency.si() > limit) {
            return Optional.of(Notice.warning(
                    "beater.consistency-limit",
                    "The load stands at " + consistency + " by mass; above " + Kinds.CONSISTENCY.ofSi(limit, "%")
                            + " no studio beater turns its stock over. Beat it in more loads, or give more water.",
                    "given",
                    consistency.toString(),
                    "limit",
                    Kinds.CONSISTENCY.ofSi(limit, "%").toString()));
        }
        double warning = limits.applyAsDouble("beater.consistency-warning", beater);
        if (consistency.si() > warning) {
            return Optional.of(Notice.warning(
                    "beater.consistency-warning",
                    "The load stands at " + consistency + " by mass; above " + Kinds.CONSISTENCY.ofSi(warning, "%")
                            + " a beater with gravity return may stop turning over. Give less fibre or more water.",
                    "given",
                    consistency.toString(),
                    "limit",
                    Kinds.CONSISTENCY.ofSi(warning, "%").toString()));
        }
        return Optional.empty();
    }

    /**
     * Warns of a sheet with so much of an additive that it is weak.
     *
     * @param load the additive over the fibre of the sheet
     * @param limit above which it is doubted
     * @return the warning, if it is above
     */
    public static Optional<Notice> heavyLoad(double load, double limit) {
        if (load <= limit) {
            return Optional.empty();
        }
        String carried = Kinds.NUMBER.ofSi(load, "%").toString();
        String most = Kinds.NUMBER.ofSi(limit, "%").toString();
        return Optional.of(Notice.warning(
                "additive.heavy-load",
                "The sheet carries " + carried + " of its fibre in additive; above " + most
                        + " it is weak and dusts. Give less, or try one sheet first.",
                "load",
                carried,
                "limit",
                most));
    }

    /**
     * Notes that a blend has no value of its own.
     *
     * @param furnish the blend
     * @param what the property or properties
     * @param advice how to learn the value
     */
    public static Notice blend(String furnish, String what, String advice) {
        return Notice.note(
                "furnish.blend",
                "Of the blend " + furnish + " itself no figure is known for " + what + ": the mean of its fibres by"
                        + " mass is used, and blends need not follow it. " + advice,
                "furnish",
                furnish,
                "property",
                what);
    }

    /**
     * Warns of beating beyond the trial that the shrinkage of a fibre is known from.
     *
     * @param state how far the fibre was beaten, from 0 to 1
     * @param end how far it was in the trial
     */
    public static Optional<Notice> beyondTrial(double state, Assumption end) {
        if (state <= end.likelySi()) {
            return Optional.empty();
        }
        return Optional.of(Notice.warning(
                "shrinkage.beyond-trial",
                "Beaten " + Digits.percent(state) + " of the way: its shrinkage is known from a trial of "
                        + Digits.percent(end.likelySi())
                        + ", and beyond that it grows faster than the model says. Dry a strip and measure it.",
                "given",
                Digits.percent(state),
                "limit",
                Digits.percent(end.likelySi())));
    }

    /**
     * Warns of a vat of which one lift takes more than the sheets may differ.
     *
     * @param tolerance how far a sheet may be off
     * @param lifted the stock that is lifted with one sheet
     * @param least the least vat that would do
     */
    public static Notice vatTooSmall(Amount<Share> tolerance, Amount<Mass> lifted, Amount<Volume> least) {
        String band = tolerance.to("%").toString();
        return Notice.warning(
                "vat.too-small",
                "One lift of " + lifted + " takes more out of the vat than the ±" + band
                        + " a sheet may differ by, even if it is recharged after every sheet. Take a vat of at least "
                        + least + ", or a thicker one of which less is lifted.",
                "tolerance",
                band,
                "lifted",
                lifted.toString(),
                "least",
                least.toString());
    }
}
