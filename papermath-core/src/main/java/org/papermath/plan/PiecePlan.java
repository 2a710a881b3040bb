package org.papermath.plan;

import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Time;
import org.papermath.evidence.Estimate;
import org.papermath.order.Piece;
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
    PieceCounts counts();

    /** {@return the mould and the sheet} */
    FormingPlan forming();

    /** {@return how to charge and recharge the vat, or why there is none} */
    Stage<VatPlan> vatStage();

    /** {@return the stock to pour for each sheet in a studio without a vat} */
    Stage<PourPlan> pourStage();

    /** {@return how long a sheet drains on the mould until its sheen is gone} */
    Stage<Estimate<Time>> drainTimeStage();

    /** {@return how thick the couched wet sheet is} */
    Estimate<Length> matThickness();

    /** {@return what a couched sheet weighs; put one on the scale} */
    Estimate<Mass> couchedMass();

    /** {@return how to lay the posts} */
    Stage<PostsPlan> postsStage();

    /** {@return how to set the press} */
    Stage<PressingPlan> pressStage();

    /** {@return oven-dry mass over wet mass of a sheet as it goes to dry} */
    Estimate<Solids> solids();

    /** {@return how to dry} */
    Stage<DryingPlan> dryingStage();

    /** {@return the size bath, if the recipe has one} */
    Stage<SizingPlan> sizingStage();

    /** {@return what will come out} */
    FinishedPiece finished();

    /** {@return the blank and the fit, if this is an envelope} */
    Stage<EnvelopePlan> envelopeStage();

    /** {@return what is mailed, if it is} */
    Stage<MailPlan> mailStage();

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
    default PourPlan pour() {
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
    default PostsPlan posts() {
        return postsStage().get();
    }

    /**
     * Returns how to set the press.
     *
     * @return the content of the stage
     * @throws java.util.NoSuchElementException if the stage was not done; {@link #pressStage} says why
     */
    default PressingPlan press() {
        return pressStage().get();
    }

    /**
     * Returns how to dry.
     *
     * @return the content of the stage
     * @throws java.util.NoSuchElementException if the stage was not done; {@link #dryingStage} says why
     */
    default DryingPlan drying() {
        return dryingStage().get();
    }

    /**
     * Returns the size bath.
     *
     * @return the content of the stage
     * @throws java.util.NoSuchElementException if the stage was not done; {@link #sizingStage} says why
     */
    default SizingPlan sizing() {
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
    default MailPlan mail() {
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
}
