package org.papermath.plan;

import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Time;
import org.papermath.engine.FormingSheets;
import org.papermath.engine.PieceWork;
import org.papermath.engine.Pressing;
import org.papermath.evidence.Estimate;
import org.papermath.order.Piece;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Solids;

/**
 * What one piece of an order comes to: sheets to pull, vat, cues, posts, press, drying, and what will come out.
 * Settings carry no band; forecasts do.
 */
public final class PiecePlan {
    private record Values(
            Piece piece,
            String batch,
            PieceCounts counts,
            FormingPlan forming,
            Stage<VatPlan> vatStage,
            Stage<PourPlan> pourStage,
            Stage<Estimate<Time>> drainTimeStage,
            Estimate<Time> timeAtVat,
            Estimate<Dimensionless> sheetsADay,
            Estimate<Length> matThickness,
            Estimate<Mass> couchedMass,
            Stage<PostsPlan> postsStage,
            Stage<PressingPlan> pressStage,
            Estimate<Solids> solids,
            Stage<DryingPlan> dryingStage,
            Stage<SizingPlan> sizingStage,
            FinishedPiece finished,
            Stage<EnvelopePlan> envelopeStage,
            Stage<MailPlan> mailStage,
            Estimate<Time> workingHours,
            Amount<Time> machineHours) {}

    private final Values values;

    private PiecePlan(Values values) {
        this.values = values;
    }

    static PiecePlan of(PlainNumbers in, int p) {
        Estimates numbers = in.estimates();
        Piece ordered = in.order().pieces().get(p);
        return new PiecePlan(new Values(
                ordered,
                ordered.recipe(),
                PieceCounts.of(in, p),
                FormingPlan.of(in, p),
                VatPlan.of(in, p),
                PourPlan.of(in, p),
                in.known(
                        FormingSheets.DRAIN,
                        p,
                        "drain-time.by-stopwatch",
                        "the stuff is too slow, or its drainability not known: time one sheet with a stopwatch",
                        () -> numbers.of(Kinds.TIME, FormingSheets.DRAIN, p)),
                numbers.of(Kinds.TIME, FormingSheets.AT_VAT, p),
                sheetsADay(in, p),
                numbers.of(Kinds.LENGTH, FormingSheets.MAT, p),
                numbers.of(Kinds.MASS, FormingSheets.COUCHED, p),
                PostsPlan.of(in, p),
                PressingPlan.of(in, p),
                numbers.of(Kinds.SOLIDS, Pressing.SOLIDS, p),
                DryingPlan.of(in, p),
                SizingPlan.of(in, p),
                FinishedPiece.of(in, p, ordered),
                EnvelopePlan.of(in, p, ordered),
                MailPlan.of(in, p, ordered),
                numbers.of(Kinds.TIME, PieceWork.HOURS, p),
                Kinds.TIME.ofSi(in.engine().piece(p).pressTime(in.settings()), "h")));
    }

    /** As many as the working day has room for; the band turned round. */
    private static Estimate<Dimensionless> sheetsADay(PlainNumbers in, int p) {
        Estimate<Time> all = in.estimates().of(Kinds.TIME, FormingSheets.AT_VAT, p);
        double day = in.studio().workingDay().si() * in.settings().sheet(p).sheets();
        return Estimate.of(
                        Kinds.NUMBER.ofSi(day / all.likely().si(), "1"),
                        Kinds.NUMBER.ofSi(day / all.high().si(), "1"),
                        Kinds.NUMBER.ofSi(day / all.low().si(), "1"),
                        all.drivers())
                .open(all.isOpenAbove(), all.isOpenBelow())
                .withMakings(all.fromMakings());
    }

    /** {@return the piece as ordered} */
    public Piece piece() {
        return values.piece;
    }

    /** {@return the name of its batch} */
    public String batch() {
        return values.batch;
    }

    /** {@return how many of what} */
    public PieceCounts counts() {
        return values.counts;
    }

    /** {@return the mould and the sheet} */
    public FormingPlan forming() {
        return values.forming;
    }

    /** {@return how to charge and recharge the vat, or why there is none} */
    public Stage<VatPlan> vatStage() {
        return values.vatStage;
    }

    /** {@return the stock to pour for each sheet in a studio without a vat} */
    public Stage<PourPlan> pourStage() {
        return values.pourStage;
    }

    /** {@return how long a sheet drains on the mould until its sheen is gone} */
    public Stage<Estimate<Time>> drainTimeStage() {
        return values.drainTimeStage;
    }

    /** {@return how long hands and moulds are at the vat for all its sheets: the longer of the two for each sheet} */
    public Estimate<Time> timeAtVat() {
        return values.timeAtVat;
    }

    /** {@return sheets a working day at the vat gives, with nothing else done in it} */
    public Estimate<Dimensionless> sheetsADay() {
        return values.sheetsADay;
    }

    /** {@return how thick the couched wet sheet is} */
    public Estimate<Length> matThickness() {
        return values.matThickness;
    }

    /** {@return what a couched sheet weighs; put one on the scale} */
    public Estimate<Mass> couchedMass() {
        return values.couchedMass;
    }

    /** {@return how to lay the posts} */
    public Stage<PostsPlan> postsStage() {
        return values.postsStage;
    }

    /** {@return how to set the press} */
    public Stage<PressingPlan> pressStage() {
        return values.pressStage;
    }

    /** {@return oven-dry mass over wet mass of a sheet as it goes to dry} */
    public Estimate<Solids> solids() {
        return values.solids;
    }

    /** {@return how to dry} */
    public Stage<DryingPlan> dryingStage() {
        return values.dryingStage;
    }

    /** {@return the size bath, if the recipe has one} */
    public Stage<SizingPlan> sizingStage() {
        return values.sizingStage;
    }

    /** {@return what will come out} */
    public FinishedPiece finished() {
        return values.finished;
    }

    /** {@return the blank and the fit, if this is an envelope} */
    public Stage<EnvelopePlan> envelopeStage() {
        return values.envelopeStage;
    }

    /** {@return what is mailed, if it is} */
    public Stage<MailPlan> mailStage() {
        return values.mailStage;
    }

    /** {@return hours of hands from forming to folding} */
    public Estimate<Time> workingHours() {
        return values.workingHours;
    }

    /** {@return how long the press holds the posts, all of them, for the first time} */
    public Amount<Time> machineHours() {
        return values.machineHours;
    }

    /**
     * Returns how to charge and recharge the vat.
     *
     * @return the content of the stage
     * @throws java.util.NoSuchElementException if the stage was not done; {@link #vatStage} says why
     */
    public VatPlan vat() {
        return vatStage().get();
    }

    /**
     * Returns the stock to pour for each sheet.
     *
     * @return the content of the stage
     * @throws java.util.NoSuchElementException if the stage was not done; {@link #pourStage} says why
     */
    public PourPlan pour() {
        return pourStage().get();
    }

    /**
     * Returns how long a sheet drains on the mould.
     *
     * @return the content of the stage
     * @throws java.util.NoSuchElementException if the stage was not done; {@link #drainTimeStage} says why
     */
    public Estimate<Time> drainTime() {
        return drainTimeStage().get();
    }

    /**
     * Returns how to lay the posts.
     *
     * @return the content of the stage
     * @throws java.util.NoSuchElementException if the stage was not done; {@link #postsStage} says why
     */
    public PostsPlan posts() {
        return postsStage().get();
    }

    /**
     * Returns how to set the press.
     *
     * @return the content of the stage
     * @throws java.util.NoSuchElementException if the stage was not done; {@link #pressStage} says why
     */
    public PressingPlan press() {
        return pressStage().get();
    }

    /**
     * Returns how to dry.
     *
     * @return the content of the stage
     * @throws java.util.NoSuchElementException if the stage was not done; {@link #dryingStage} says why
     */
    public DryingPlan drying() {
        return dryingStage().get();
    }

    /**
     * Returns the size bath.
     *
     * @return the content of the stage
     * @throws java.util.NoSuchElementException if the stage was not done; {@link #sizingStage} says why
     */
    public SizingPlan sizing() {
        return sizingStage().get();
    }

    /**
     * Returns the blank and the fit of an envelope.
     *
     * @return the content of the stage
     * @throws java.util.NoSuchElementException if the stage was not done; {@link #envelopeStage} says why
     */
    public EnvelopePlan envelope() {
        return envelopeStage().get();
    }

    /**
     * Returns what is mailed.
     *
     * @return the content of the stage
     * @throws java.util.NoSuchElementException if the stage was not done; {@link #mailStage} says why
     */
    public MailPlan mail() {
        return mailStage().get();
    }

    /**
     * Returns the name of the piece.
     *
     * @return the name
     */
    public String name() {
        return piece().name();
    }

    @Override
    public String toString() {
        return name() + ": " + values.counts;
    }
}
