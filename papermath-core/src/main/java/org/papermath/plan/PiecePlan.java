package org.papermath.plan;

import java.util.List;
import java.util.Optional;

import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Force;
import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Time;
import javax.measure.quantity.Volume;

import org.papermath.drying.Dryer;
import org.papermath.evidence.Estimate;
import org.papermath.mould.Mould;
import org.papermath.mould.Opening;
import org.papermath.order.Piece;
import org.papermath.press.Press;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Consistency;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.LinearShrinkage;
import org.papermath.quantity.SheetPressure;
import org.papermath.quantity.Solids;
import org.papermath.envelope.EnvelopeStyle;
import org.papermath.mail.MailLimits;

/**
 * What one piece of an order comes to: sheets to pull, vat, cues, posts, press, drying, and what will come out.
 * Settings carry no band; forecasts do.
 *
 * @param piece the piece as ordered
 * @param batch the name of its batch
 * @param counts how many of what
 * @param forming the mould and the sheet
 * @param vatStage how to charge and recharge the vat, or why there is none
 * @param pourStage the stock to pour for each sheet in a studio without a vat
 * @param drainTimeStage how long a sheet drains on the mould until its sheen is gone
 * @param matThickness how thick the couched wet sheet is
 * @param couchedMass what a couched sheet weighs; put one on the scale
 * @param postsStage how to lay the posts
 * @param pressStage how to set the press
 * @param solids oven-dry mass over wet mass of a sheet as it goes to dry
 * @param dryingStage how to dry
 * @param sizingStage the size bath, if the recipe has one
 * @param finished what will come out
 * @param envelopeStage the blank and the fit, if this is an envelope
 * @param mailStage what is mailed, if it is
 * @param workingHours hours from forming to folding
 */
public record PiecePlan(Piece piece, String batch, Counts counts, Forming forming, Stage<VatPlan> vatStage,
        Stage<Pour> pourStage,
        Stage<Estimate<Time>> drainTimeStage, Estimate<Length> matThickness, Estimate<Mass> couchedMass,
        Stage<Posts> postsStage,
        Stage<Pressing> pressStage, Estimate<Solids> solids, Stage<Drying> dryingStage, Stage<Sizing> sizingStage,
        Finished finished,
        Stage<EnvelopePlan> envelopeStage, Stage<Mailed> mailStage, Estimate<Time> workingHours) {
    /**
     * How many of what.
     *
     * @param ordered pieces ordered
     * @param wanted good pieces wanted, spares and kept ones with them
     * @param perSheet pieces on a sheet
     * @param sheets sheets to pull, trials with them
     * @param trials trial sheets
     * @param good good pieces that will come out
     */
    public record Counts(int ordered, int wanted, int perSheet, int sheets, int trials, Estimate<Dimensionless> good) {
        @Override
        public String toString() {
            return sheets + " sheets for " + wanted + " good pieces";
        }
    }

    /**
     * The mould and the sheet.
     *
     * @param mould the mould to use, or empty if none is large enough
     * @param deckleToMake whether a deckle of this opening has to be made
     * @param opening the opening of the deckle
     * @param perSheet pieces on a sheet
     * @param turned whether the pieces lie turned on it
     * @param fibre oven-dry fibre of a sheet
     * @param solids oven-dry solids of a sheet: fibre and all that stays with it
     */
    public record Forming(Optional<Mould> mould, boolean deckleToMake, Opening opening, int perSheet, boolean turned,
            Amount<Mass> fibre, Amount<Mass> solids) {
        @Override
        public String toString() {
            return perSheet + " up, opening " + opening;
        }
    }

    /**
     * How to work the vat.
     *
     * @param consistency the mean oven-dry fibre over stock to hold
     * @param stock stock to the vat before the first sheet of this piece
     * @param water water to the vat before the first sheet of this piece
     * @param bail white water to bail before that, if the vat is worked on from another piece
     * @param lift stock to lift for each sheet
     * @param every sheets between two recharges
     * @param recharges each recharge
     * @param lightest the lightest sheet over the mean
     * @param heaviest the heaviest sheet over the mean
     */
    public record VatPlan(Amount<Consistency> consistency, Amount<Volume> stock, Amount<Volume> water,
            Amount<Volume> bail,
            Amount<Mass> lift, int every, List<Recharge> recharges, Amount<Dimensionless> lightest,
            Amount<Dimensionless> heaviest) {
        @Override
        public String toString() {
            return "lift " + lift + " a sheet; recharge after every " + every + " sheets";
        }
    }

    /**
     * One recharge.
     *
     * @param afterSheet the number of the sheet after which it is given
     * @param stock stock to add
     * @param water water to add, to bring the level up
     * @param bail white water to take out through the sieve, to bring the level down
     */
    public record Recharge(int afterSheet, Amount<Volume> stock, Amount<Volume> water, Amount<Volume> bail) {
        @Override
        public String toString() {
            return "after sheet " + afterSheet + ": " + stock + " of stock"
                    + (water.si() > 0 ? ", " + water + " of water" : "") + (bail.si() > 0 ? ", bail " + bail : "");
        }
    }

    /**
     * What to pour for one sheet.
     *
     * @param stock stock for one sheet, into the deckle box
     */
    public record Pour(Amount<Volume> stock) {
        @Override
        public String toString() {
            return "pour " + stock + " of stock a sheet";
        }
    }

    /**
     * How to lay the posts.
     *
     * @param sheetsInPost sheets in a post
     * @param posts how many posts
     * @param felts felts in a post
     * @param mass what a post weighs, wet felts with it
     * @param height how high a post is before pressing
     */
    public record Posts(int sheetsInPost, int posts, int felts, Estimate<Mass> mass, Estimate<Length> height) {
        @Override
        public String toString() {
            return posts + " posts of " + sheetsInPost + " sheets, " + felts + " felts";
        }
    }

    /**
     * How to set the press.
     *
     * @param press the press
     * @param force the load
     * @param pressure the pressure it puts on the sheet
     * @param time how long it is held
     * @param weakest the part that bears least
     * @param limited whether the weakest part held the load down
     */
    public record Pressing(Press press, Amount<Force> force, Amount<SheetPressure> pressure, Amount<Time> time,
            Press.Part weakest, boolean limited) {
        @Override
        public String toString() {
            return force + " (" + pressure + " on the sheet) for " + time;
        }
    }

    /**
     * How to dry.
     *
     * @param dryer the dryer
     * @param loads how often it is filled
     * @param blotterChanges changes of blotters, zero for other dryers
     * @param time how long one filling takes
     * @param water water given off by all the sheets
     */
    public record Drying(Dryer dryer, int loads, int blotterChanges, Estimate<Time> time, Estimate<Mass> water) {
        @Override
        public String toString() {
            return dryer.name() + ", " + loads + " times, " + time;
        }
    }

    /**
     * The size bath.
     *
     * @param bath bath to make
     * @param drySize dry size to weigh for it
     * @param taken bath the sheets take up
     * @param gained dry size over the oven-dry sheet
     * @param dryAgain how long one filling of the dryer takes after sizing, or why it cannot be said
     */
    public record Sizing(Amount<Volume> bath, Amount<Mass> drySize, Amount<Volume> taken,
            Estimate<Dimensionless> gained,
            Stage<Estimate<Time>> dryAgain) {
        @Override
        public String toString() {
            return bath + " of bath with " + drySize + " of dry size";
        }
    }

    /**
     * What will come out.
     *
     * @param width one side of the flat piece
     * @param height the other side
     * @param foldedWidth one side after folding
     * @param foldedHeight the other side after folding
     * @param grammage the grammage in the air of the order
     * @param caliperStage the thickness of one layer, or why it cannot be said
     * @param mass what one piece weighs
     * @param pileStage how high all the pieces are, folded
     * @param shrinkageAlong shrinkage along the long side of the mould
     * @param shrinkageAcross shrinkage across it
     * @param load additives kept, over fibre
     */
    public record Finished(Estimate<Length> width, Estimate<Length> height, Amount<Length> foldedWidth,
            Amount<Length> foldedHeight, Estimate<Grammage> grammage, Stage<Estimate<Length>> caliperStage,
            Estimate<Mass> mass,
            Stage<Estimate<Length>> pileStage, Estimate<LinearShrinkage> shrinkageAlong,
            Estimate<LinearShrinkage> shrinkageAcross,
            Amount<Dimensionless> load) {
        /**
         * Returns the thickness of one layer.
         *
         * @return the caliper
         * @throws java.util.NoSuchElementException if it cannot be said; {@link #caliperStage} says why
         */
        public Estimate<Length> caliper() {
            return caliperStage.get();
        }

        /**
         * Returns how high all the pieces are, folded.
         *
         * @return the height
         * @throws java.util.NoSuchElementException if it cannot be said; {@link #pileStage} says why
         */
        public Estimate<Length> pile() {
            return pileStage.get();
        }

        @Override
        public String toString() {
            return width + " × " + height + ", " + grammage;
        }
    }

    /**
     * An envelope: its blank and how the piece goes in.
     *
     * @param style how it is folded
     * @param blankWidth width of the blank
     * @param blankHeight height of the blank
     * @param insideWidth width inside
     * @param insideHeight height inside
     * @param outsideWidth width outside
     * @param outsideHeight height outside
     * @param seam overlap of the seams
     * @param playAlong inside width less the piece and its thickness; below zero it does not go in
     * @param playAcross inside height less the piece and its thickness; below zero it does not go in
     * @param sharePairsFit of single pieces and envelopes taken at random, the share of pairs that fit
     */
    public record EnvelopePlan(EnvelopeStyle style, Amount<Length> blankWidth, Amount<Length> blankHeight,
            Amount<Length> insideWidth, Amount<Length> insideHeight, Amount<Length> outsideWidth,
            Amount<Length> outsideHeight,
            Amount<Length> seam, Estimate<Length> playAlong, Estimate<Length> playAcross,
            Amount<Dimensionless> sharePairsFit) {
        @Override
        public String toString() {
            return style.words() + ", blank " + blankWidth + " × " + blankHeight;
        }
    }

    /**
     * What is mailed.
     *
     * @param country the country of mailing
     * @param mass its mass
     * @param thickness its thickness
     * @param verdict which service takes it, or which limit fails and by how much, at the likely values
     */
    public record Mailed(String country, Estimate<Mass> mass, Estimate<Length> thickness, MailLimits.Verdict verdict) {
        @Override
        public String toString() {
            return country + ": " + verdict;
        }
    }

    /**
     * Returns how to charge and recharge the vat.
     *
     * @return the content of the stage
     * @throws java.util.NoSuchElementException if the stage was not done; {@link #vatStage} says why
     */
    public VatPlan vat() {
        return vatStage.get();
    }

    /**
     * Returns the stock to pour for each sheet.
     *
     * @return the content of the stage
     * @throws java.util.NoSuchElementException if the stage was not done; {@link #pourStage} says why
     */
    public Pour pour() {
        return pourStage.get();
    }

    /**
     * Returns how long a sheet drains on the mould.
     *
     * @return the content of the stage
     * @throws java.util.NoSuchElementException if the stage was not done; {@link #drainTimeStage} says why
     */
    public Estimate<Time> drainTime() {
        return drainTimeStage.get();
    }

    /**
     * Returns how to lay the posts.
     *
     * @return the content of the stage
     * @throws java.util.NoSuchElementException if the stage was not done; {@link #postsStage} says why
     */
    public Posts posts() {
        return postsStage.get();
    }

    /**
     * Returns how to set the press.
     *
     * @return the content of the stage
     * @throws java.util.NoSuchElementException if the stage was not done; {@link #pressStage} says why
     */
    public Pressing press() {
        return pressStage.get();
    }

    /**
     * Returns how to dry.
     *
     * @return the content of the stage
     * @throws java.util.NoSuchElementException if the stage was not done; {@link #dryingStage} says why
     */
    public Drying drying() {
        return dryingStage.get();
    }

    /**
     * Returns the size bath.
     *
     * @return the content of the stage
     * @throws java.util.NoSuchElementException if the stage was not done; {@link #sizingStage} says why
     */
    public Sizing sizing() {
        return sizingStage.get();
    }

    /**
     * Returns the blank and the fit of an envelope.
     *
     * @return the content of the stage
     * @throws java.util.NoSuchElementException if the stage was not done; {@link #envelopeStage} says why
     */
    public EnvelopePlan envelope() {
        return envelopeStage.get();
    }

    /**
     * Returns what is mailed.
     *
     * @return the content of the stage
     * @throws java.util.NoSuchElementException if the stage was not done; {@link #mailStage} says why
     */
    public Mailed mail() {
        return mailStage.get();
    }

    /**
     * Returns the name of the piece.
     *
     * @return the name
     */
    public String name() {
        return piece.name();
    }

    @Override
    public String toString() {
        return name() + ": " + counts;
    }
}
