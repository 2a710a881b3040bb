package org.papermath.plan;

import static org.papermath.plan.PlainNumbers.mm;

import java.util.Optional;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Length;
import org.papermath.engine.MakingEnvelopes;
import org.papermath.engine.PieceFigure;
import org.papermath.envelope.EnvelopeStyle;
import org.papermath.evidence.Estimate;
import org.papermath.evidence.Scope;
import org.papermath.order.Piece;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kinds;

/** An envelope: its blank and how the piece goes in. */
public final class EnvelopePlan {
    private record Values(
            EnvelopeStyle style,
            Amount<Length> blankWidth,
            Amount<Length> blankHeight,
            Amount<Length> insideWidth,
            Amount<Length> insideHeight,
            Amount<Length> outsideWidth,
            Amount<Length> outsideHeight,
            Amount<Length> seam,
            Estimate<Length> playAlong,
            Estimate<Length> playAcross,
            Amount<Dimensionless> sharePairsFit,
            Optional<Estimate<Length>> insideWidthDried,
            Optional<Estimate<Length>> insideHeightDried) {}

    private final Values values;

    private EnvelopePlan(Values values) {
        this.values = values;
    }

    static Stage<EnvelopePlan> of(PlainNumbers in, int p, Piece ordered) {
        Estimates numbers = in.estimates();
        MakingEnvelopes.Setting set = in.settings().envelope(p);
        if (set == null) {
            return Stage.notDone("envelope.none", "the piece is no envelope");
        }
        if (!numbers.isKnown(MakingEnvelopes.CLEAR_WIDTH, p)) {
            return Stage.notDone("sheet.no-density", "the thickness of the piece that goes in is not known");
        }
        double spread = in.asked().si("sheet.scatter-size", Scope.of(ordered.name(), ordered.recipe()));
        double deviation = spread / PlainNumbers.NINE_IN_TEN;
        double fits =
                numbers.both(MakingEnvelopes.CLEAR_WIDTH, MakingEnvelopes.CLEAR_HEIGHT, p, deviation * Math.sqrt(2));
        return Stage.done(new EnvelopePlan(new Values(
                ordered.style().orElseThrow(),
                mm(set.blankWidth()),
                mm(set.blankHeight()),
                mm(set.insideWidth()),
                mm(set.insideHeight()),
                mm(set.outsideWidth()),
                mm(set.outsideHeight()),
                Estimates.signed(Kinds.LENGTH, set.seam(), "mm"),
                numbers.play(MakingEnvelopes.CLEAR_WIDTH, p),
                numbers.play(MakingEnvelopes.CLEAR_HEIGHT, p),
                Kinds.NUMBER.ofSi(fits, "%"),
                dried(numbers, MakingEnvelopes.DRIED_WIDTH, p),
                dried(numbers, MakingEnvelopes.DRIED_HEIGHT, p))));
    }

    private static Optional<Estimate<Length>> dried(Estimates numbers, PieceFigure figure, int p) {
        return numbers.isKnown(figure, p) ? Optional.of(numbers.of(Kinds.LENGTH, figure, p)) : Optional.empty();
    }

    /** {@return how it is folded} */
    public EnvelopeStyle style() {
        return values.style;
    }

    /** {@return width of the blank} */
    public Amount<Length> blankWidth() {
        return values.blankWidth;
    }

    /** {@return height of the blank} */
    public Amount<Length> blankHeight() {
        return values.blankHeight;
    }

    /** {@return width inside, as laid out} */
    public Amount<Length> insideWidth() {
        return values.insideWidth;
    }

    /** {@return height inside, as laid out} */
    public Amount<Length> insideHeight() {
        return values.insideHeight;
    }

    /** {@return width outside} */
    public Amount<Length> outsideWidth() {
        return values.outsideWidth;
    }

    /** {@return height outside} */
    public Amount<Length> outsideHeight() {
        return values.outsideHeight;
    }

    /** {@return overlap of the seams} */
    public Amount<Length> seam() {
        return values.seam;
    }

    /** {@return inside width less the piece and its thickness; below zero it does not go in} */
    public Estimate<Length> playAlong() {
        return values.playAlong;
    }

    /** {@return inside height less the piece and its thickness; below zero it does not go in} */
    public Estimate<Length> playAcross() {
        return values.playAcross;
    }

    /** {@return of single pieces and envelopes taken at random, the share of pairs that fit} */
    public Amount<Dimensionless> sharePairsFit() {
        return values.sharePairsFit;
    }

    /** {@return width inside as it comes out of a blank that is formed to its outline and shrinks with its sheet} */
    public Optional<Estimate<Length>> insideWidthDried() {
        return values.insideWidthDried;
    }

    /** {@return height inside as it comes out of such a blank} */
    public Optional<Estimate<Length>> insideHeightDried() {
        return values.insideHeightDried;
    }

    @Override
    public String toString() {
        return values.style.words() + ", blank " + values.blankWidth + " × " + values.blankHeight;
    }
}
