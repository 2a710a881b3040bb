package org.papermath.plan;

import static org.papermath.plan.PlainNumbers.mm;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Length;
import org.papermath.air.Air;
import org.papermath.drawing.SvgDrawing;
import org.papermath.engine.CuttingAndFolding;
import org.papermath.engine.DryingSheets;
import org.papermath.engine.Engine;
import org.papermath.engine.MakingEnvelopes;
import org.papermath.engine.PieceFigure;
import org.papermath.envelope.EnvelopeStyle;
import org.papermath.envelope.Line;
import org.papermath.equation.Shrinkage;
import org.papermath.evidence.Estimate;
import org.papermath.evidence.Scope;
import org.papermath.fibre.SorptionModel;
import org.papermath.order.Piece;
import org.papermath.order.Recipe;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;
import org.papermath.shape.Outline;

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
            Optional<Amount<Length>> dampGrowthAlong,
            Optional<Amount<Length>> dampGrowthAcross,
            Optional<Amount<Dimensionless>> sharePairsFitDamp,
            Optional<Estimate<Length>> insideWidthDried,
            Optional<Estimate<Length>> insideHeightDried) {}

    private final Values values;
    private final String piece;
    private final Outline blank;
    private final List<Line> folds;

    private EnvelopePlan(Values values, String piece, MakingEnvelopes.Blank blank) {
        this.values = values;
        this.piece = piece;
        this.blank = ShapedDeckle.outline(blank.corners());
        folds = lieOnBlank(blank) ? ShapedDeckle.folds(blank.folds()) : List.of();
    }

    static Stage<EnvelopePlan> of(PlainNumbers in, int p, Piece ordered) {
        Estimates numbers = in.estimates();
        MakingEnvelopes.Setting set = in.settings().envelope(p);
        MakingEnvelopes.Blank blank = in.engine().piece(p).blank(in.settings());
        if (set == null || blank == null) {
            return Stage.notDone("envelope.none", "the piece is no envelope");
        }
        if (!numbers.isKnown(MakingEnvelopes.CLEAR_WIDTH, p)) {
            return Stage.notDone("sheet.no-density", "the thickness of the piece that goes in is not known");
        }
        double spread = in.asked().si("sheet.scatter-size", Scope.of(ordered.name(), ordered.recipe()));
        double deviation = spread / PlainNumbers.NINE_IN_TEN * Math.sqrt(2);
        double fits = numbers.both(MakingEnvelopes.CLEAR_WIDTH, MakingEnvelopes.CLEAR_HEIGHT, p, deviation, 0, 0);
        Optional<double[]> grown = grown(in, p, set);
        Optional<Amount<Dimensionless>> damp = grown.map(by -> Kinds.NUMBER.ofSi(
                numbers.both(MakingEnvelopes.CLEAR_WIDTH, MakingEnvelopes.CLEAR_HEIGHT, p, deviation, by[0], by[1]),
                "%"));
        return Stage.done(new EnvelopePlan(
                new Values(
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
                        grown.map(by -> mm(by[0])),
                        grown.map(by -> mm(by[1])),
                        damp,
                        dried(numbers, MakingEnvelopes.DRIED_WIDTH, p),
                        dried(numbers, MakingEnvelopes.DRIED_HEIGHT, p)),
                ordered.name(),
                blank));
    }

    /** Whether the folds lie on the blank: on a square that is ordered too small for its pocket they do not. */
    private static boolean lieOnBlank(MakingEnvelopes.Blank blank) {
        return Arrays.stream(blank.folds()).flatMapToDouble(Arrays::stream).allMatch(place -> place >= 0);
    }

    /**
     * How much what goes in grows along the width and the height of the pocket, if it comes out of damp air into an envelope
     * that does not: {@code beta (M_damp - M_room)} of each side, by the direction that shrank most; empty where
     * nothing is known of how the paper takes up water.
     */
    private static Optional<double[]> grown(PlainNumbers in, int p, MakingEnvelopes.Setting set) {
        int held = in.engine().piece(p).held();
        Recipe recipe =
                Engine.usedRecipes(in.order()).get(in.engine().piece(held).batch());
        Scope scope = Scope.of(in.order().pieces().get(held).name(), recipe.name());
        SorptionModel sorption;
        try {
            sorption = SorptionModel.from(in.studio().assumptions(), recipe.furnish());
        } catch (Refused unknown) {
            return Optional.empty();
        }
        Air room = in.order().weighedIn();
        Air damp = Air.of(
                room.temperature(),
                Kinds.RELATIVE_HUMIDITY.ofSi(
                        Math.max(room.humidity().si(), in.asked().si("envelope.damp-humidity", scope)), "%"));
        double shrank = Math.max(
                0,
                Math.max(
                        in.estimates().likely(DryingSheets.SHRINK_ALONG, held),
                        in.estimates().likely(DryingSheets.SHRINK_ACROSS, held)));
        double strain = Shrinkage.hygroexpansion(
                Shrinkage.hygroexpansionCoefficient(
                        shrank,
                        in.asked().si("hygroexpansion.base", scope),
                        in.asked().si("hygroexpansion.per-shrinkage", scope)),
                sorption.ratio(damp).si() - sorption.ratio(room).si());
        CuttingAndFolding.Setting size = in.settings().size(held);
        double longSide = strain * Math.max(size.foldedWidth(), size.foldedHeight());
        double shortSide = strain * Math.min(size.foldedWidth(), size.foldedHeight());
        boolean upright = set.insideHeight() > set.insideWidth();
        return Optional.of(new double[] {upright ? shortSide : longSide, upright ? longSide : shortSide});
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

    /**
     * {@return by how much what goes in becomes longer along the width of the pocket, if it comes out of damp air
     * ({@code envelope.damp-humidity}) into an envelope that does not; the play is so much less then. Empty where the
     * moisture of the paper in air is not known}
     */
    public Optional<Amount<Length>> dampGrowthAlong() {
        return values.dampGrowthAlong;
    }

    /** {@return the same along the height of the pocket} */
    public Optional<Amount<Length>> dampGrowthAcross() {
        return values.dampGrowthAcross;
    }

    /** {@return the share of pairs that fit while what goes in is damp and its envelope is not} */
    public Optional<Amount<Dimensionless>> sharePairsFitDamp() {
        return values.sharePairsFitDamp;
    }

    /** {@return width inside as it comes out of a blank that is formed to its outline and shrinks with its sheet} */
    public Optional<Estimate<Length>> insideWidthDried() {
        return values.insideWidthDried;
    }

    /** {@return height inside as it comes out of such a blank} */
    public Optional<Estimate<Length>> insideHeightDried() {
        return values.insideHeightDried;
    }

    /** {@return the outline of the blank as laid out, its flap at the top} */
    public Outline blank() {
        return blank;
    }

    /** {@return the folds on the blank, and the score of its flap last; none on a square ordered too small for its pocket} */
    public List<Line> folds() {
        return folds;
    }

    /**
     * Draws the blank at true scale, with its folds and the score of its flap. Print it at 100 % and cut along it.
     *
     * @return the drawing
     */
    public SvgDrawing drawing() {
        SvgDrawing drawing = SvgDrawing.of(
                "blank of " + piece + ", " + values.style.words() + ", inside " + values.insideWidth + " × "
                        + values.insideHeight,
                blank);
        for (Line fold : folds) {
            drawing = drawing.withLine(fold);
        }
        return drawing.withRemark(
                folds.isEmpty()
                        ? "full: cut; too small for the folds of its pocket"
                        : "full: cut; dashed: fold; dotted: score, fold last to close");
    }

    @Override
    public String toString() {
        return values.style.words() + ", blank " + values.blankWidth + " × " + values.blankHeight;
    }
}
