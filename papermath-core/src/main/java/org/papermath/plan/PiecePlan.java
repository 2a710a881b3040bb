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
import org.papermath.envelope.EnvelopeStyle;
import org.papermath.evidence.Estimate;
import org.papermath.mail.MailLimits;
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

/**
 * What one piece of an order comes to: sheets to pull, vat, cues, posts, press, drying, and what will come out.
 * Settings carry no band; forecasts do.
 */
public sealed interface PiecePlan permits PlannedPiece {
    /** {@return the piece as ordered} */
    Piece piece();

    /** {@return the name of its batch} */
    String batch();

    /** {@return how many of what} */
    Counts counts();

    /** {@return the mould and the sheet} */
    Forming forming();

    /** {@return how to charge and recharge the vat, or why there is none} */
    Stage<VatPlan> vatStage();

    /** {@return the stock to pour for each sheet in a studio without a vat} */
    Stage<Pour> pourStage();

    /** {@return how long a sheet drains on the mould until its sheen is gone} */
    Stage<Estimate<Time>> drainTimeStage();

    /** {@return how thick the couched wet sheet is} */
    Estimate<Length> matThickness();

    /** {@return what a couched sheet weighs; put one on the scale} */
    Estimate<Mass> couchedMass();

    /** {@return how to lay the posts} */
    Stage<Posts> postsStage();

    /** {@return how to set the press} */
    Stage<Pressing> pressStage();

    /** {@return oven-dry mass over wet mass of a sheet as it goes to dry} */
    Estimate<Solids> solids();

    /** {@return how to dry} */
    Stage<Drying> dryingStage();

    /** {@return the size bath, if the recipe has one} */
    Stage<Sizing> sizingStage();

    /** {@return what will come out} */
    Finished finished();

    /** {@return the blank and the fit, if this is an envelope} */
    Stage<EnvelopePlan> envelopeStage();

    /** {@return what is mailed, if it is} */
    Stage<Mailed> mailStage();

    /** {@return hours from forming to folding} */
    Estimate<Time> workingHours();

    /**
     * Returns how to charge and recharge the vat.
     *
     * @return the content of the stage
     * @throws java.util.NoSuchElementException if the stage was not done; {@link #vatStage} says why
     */
    default VatPlan vat() {
        return vatStage().get();
    }

    /**
     * Returns the stock to pour for each sheet.
     *
     * @return the content of the stage
     * @throws java.util.NoSuchElementException if the stage was not done; {@link #pourStage} says why
     */
    default Pour pour() {
        return pourStage().get();
    }

    /**
     * Returns how long a sheet drains on the mould.
     *
     * @return the content of the stage
     * @throws java.util.NoSuchElementException if the stage was not done; {@link #drainTimeStage} says why
     */
    default Estimate<Time> drainTime() {
        return drainTimeStage().get();
    }

    /**
     * Returns how to lay the posts.
     *
     * @return the content of the stage
     * @throws java.util.NoSuchElementException if the stage was not done; {@link #postsStage} says why
     */
    default Posts posts() {
        return postsStage().get();
    }

    /**
     * Returns how to set the press.
     *
     * @return the content of the stage
     * @throws java.util.NoSuchElementException if the stage was not done; {@link #pressStage} says why
     */
    default Pressing press() {
        return pressStage().get();
    }

    /**
     * Returns how to dry.
     *
     * @return the content of the stage
     * @throws java.util.NoSuchElementException if the stage was not done; {@link #dryingStage} says why
     */
    default Drying drying() {
        return dryingStage().get();
    }

    /**
     * Returns the size bath.
     *
     * @return the content of the stage
     * @throws java.util.NoSuchElementException if the stage was not done; {@link #sizingStage} says why
     */
    default Sizing sizing() {
        return sizingStage().get();
    }

    /**
     * Returns the blank and the fit of an envelope.
     *
     * @return the content of the stage
     * @throws java.util.NoSuchElementException if the stage was not done; {@link #envelopeStage} says why
     */
    default EnvelopePlan envelope() {
        return envelopeStage().get();
    }

    /**
     * Returns what is mailed.
     *
     * @return the content of the stage
     * @throws java.util.NoSuchElementException if the stage was not done; {@link #mailStage} says why
     */
    default Mailed mail() {
        return mailStage().get();
    }

    /**
     * Returns the name of the piece.
     *
     * @return the name
     */
    default String name() {
        return piece().name();
    }

    /** How many of what. */
    sealed interface Counts permits PlannedPiece.PlannedCounts {
        /** {@return pieces ordered} */
        int ordered();

        /** {@return good pieces wanted, spares and kept ones with them} */
        int wanted();

        /** {@return pieces on a sheet} */
        int perSheet();

        /** {@return sheets to pull, trials with them} */
        int sheets();

        /** {@return trial sheets} */
        int trials();

        /** {@return good pieces that will come out} */
        Estimate<Dimensionless> good();
    }

    /** The mould and the sheet. */
    sealed interface Forming permits PlannedPiece.PlannedForming {
        /** {@return the mould to use, or empty if none is large enough} */
        Optional<Mould> mould();

        /** {@return whether a deckle of this opening has to be made} */
        boolean deckleToMake();

        /** {@return the opening of the deckle} */
        Opening opening();

        /** {@return pieces on a sheet} */
        int perSheet();

        /** {@return whether the pieces lie turned on it} */
        boolean turned();

        /** {@return oven-dry fibre of a sheet} */
        Amount<Mass> fibre();

        /** {@return oven-dry solids of a sheet: fibre and all that stays with it} */
        Amount<Mass> solids();
    }

    /** How to work the vat. */
    sealed interface VatPlan permits PlannedPiece.PlannedVat {
        /** {@return the mean oven-dry fibre over stock to hold} */
        Amount<Consistency> consistency();

        /** {@return stock to the vat before the first sheet of this piece} */
        Amount<Volume> stock();

        /** {@return water to the vat before the first sheet of this piece} */
        Amount<Volume> water();

        /** {@return white water to bail before that, if the vat is worked on from another piece} */
        Amount<Volume> bail();

        /** {@return stock to lift for each sheet} */
        Amount<Mass> lift();

        /** {@return sheets between two recharges} */
        int every();

        /** {@return each recharge} */
        List<Recharge> recharges();

        /** {@return the lightest sheet over the mean} */
        Amount<Dimensionless> lightest();

        /** {@return the heaviest sheet over the mean} */
        Amount<Dimensionless> heaviest();
    }

    /** One recharge. */
    sealed interface Recharge permits PlannedPiece.PlannedRecharge {
        /** {@return the number of the sheet after which it is given} */
        int afterSheet();

        /** {@return stock to add} */
        Amount<Volume> stock();

        /** {@return water to add, to bring the level up} */
        Amount<Volume> water();

        /** {@return white water to take out through the sieve, to bring the level down} */
        Amount<Volume> bail();
    }

    /** What to pour for one sheet. */
    sealed interface Pour permits PlannedPiece.PlannedPour {
        /** {@return stock for one sheet, into the deckle box} */
        Amount<Volume> stock();
    }

    /** How to lay the posts. */
    sealed interface Posts permits PlannedPiece.PlannedPosts {
        /** {@return sheets in a post} */
        int sheetsInPost();

        /** {@return how many posts} */
        int posts();

        /** {@return felts in a post} */
        int felts();

        /** {@return what a post weighs, wet felts with it} */
        Estimate<Mass> mass();

        /** {@return how high a post is before pressing} */
        Estimate<Length> height();
    }

    /** How to set the press. */
    sealed interface Pressing permits PlannedPiece.PlannedPressing {
        /** {@return the press} */
        Press press();

        /** {@return the load} */
        Amount<Force> force();

        /** {@return the pressure it puts on the sheet} */
        Amount<SheetPressure> pressure();

        /** {@return how long it is held} */
        Amount<Time> time();

        /** {@return the part that bears least} */
        Press.Part weakest();

        /** {@return whether the weakest part held the load down} */
        boolean limited();
    }

    /** How to dry. */
    sealed interface Drying permits PlannedPiece.PlannedDrying {
        /** {@return the dryer} */
        Dryer dryer();

        /** {@return how often it is filled} */
        int loads();

        /** {@return changes of blotters, zero for other dryers} */
        int blotterChanges();

        /** {@return how long one filling takes} */
        Estimate<Time> time();

        /** {@return water given off by all the sheets} */
        Estimate<Mass> water();
    }

    /** The size bath. */
    sealed interface Sizing permits PlannedPiece.PlannedSizing {
        /** {@return bath to make} */
        Amount<Volume> bath();

        /** {@return dry size to weigh for it} */
        Amount<Mass> drySize();

        /** {@return bath the sheets take up} */
        Amount<Volume> taken();

        /** {@return dry size over the oven-dry sheet} */
        Estimate<Dimensionless> gained();

        /** {@return how long one filling of the dryer takes after sizing, or why it cannot be said} */
        Stage<Estimate<Time>> dryAgain();
    }

    /** What will come out. */
    sealed interface Finished permits PlannedPiece.PlannedFinished {
        /** {@return one side of the flat piece} */
        Estimate<Length> width();

        /** {@return the other side} */
        Estimate<Length> height();

        /** {@return one side after folding} */
        Amount<Length> foldedWidth();

        /** {@return the other side after folding} */
        Amount<Length> foldedHeight();

        /** {@return the grammage in the air of the order} */
        Estimate<Grammage> grammage();

        /** {@return the thickness of one layer, or why it cannot be said} */
        Stage<Estimate<Length>> caliperStage();

        /** {@return what one piece weighs} */
        Estimate<Mass> mass();

        /** {@return how high all the pieces are, folded} */
        Stage<Estimate<Length>> pileStage();

        /** {@return shrinkage along the long side of the mould} */
        Estimate<LinearShrinkage> shrinkageAlong();

        /** {@return shrinkage across it} */
        Estimate<LinearShrinkage> shrinkageAcross();

        /** {@return additives kept, over fibre} */
        Amount<Dimensionless> load();

        /**
         * Returns the thickness of one layer.
         *
         * @return the caliper
         * @throws java.util.NoSuchElementException if it cannot be said; {@link #caliperStage} says why
         */
        default Estimate<Length> caliper() {
            return caliperStage().get();
        }

        /**
         * Returns how high all the pieces are, folded.
         *
         * @return the height
         * @throws java.util.NoSuchElementException if it cannot be said; {@link #pileStage} says why
         */
        default Estimate<Length> pile() {
            return pileStage().get();
        }
    }

    /** An envelope: its blank and how the piece goes in. */
    sealed interface EnvelopePlan permits PlannedPiece.PlannedEnvelope {
        /** {@return how it is folded} */
        EnvelopeStyle style();

        /** {@return width of the blank} */
        Amount<Length> blankWidth();

        /** {@return height of the blank} */
        Amount<Length> blankHeight();

        /** {@return width inside} */
        Amount<Length> insideWidth();

        /** {@return height inside} */
        Amount<Length> insideHeight();

        /** {@return width outside} */
        Amount<Length> outsideWidth();

        /** {@return height outside} */
        Amount<Length> outsideHeight();

        /** {@return overlap of the seams} */
        Amount<Length> seam();

        /** {@return inside width less the piece and its thickness; below zero it does not go in} */
        Estimate<Length> playAlong();

        /** {@return inside height less the piece and its thickness; below zero it does not go in} */
        Estimate<Length> playAcross();

        /** {@return of single pieces and envelopes taken at random, the share of pairs that fit} */
        Amount<Dimensionless> sharePairsFit();
    }

    /** What is mailed. */
    sealed interface Mailed permits PlannedPiece.PlannedMailed {
        /** {@return the country of mailing} */
        String country();

        /** {@return its mass} */
        Estimate<Mass> mass();

        /** {@return its thickness} */
        Estimate<Length> thickness();

        /** {@return which service takes it, or which limit fails and by how much, at the likely values} */
        MailLimits.Verdict verdict();
    }
}
