package org.papermath.plan;

import static org.papermath.plan.PlainNumbers.mm;

import java.util.Optional;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.papermath.engine.CuttingAndFolding;
import org.papermath.engine.DryingSheets;
import org.papermath.engine.FillingVat;
import org.papermath.engine.FinishedSheet;
import org.papermath.evidence.Estimate;
import org.papermath.evidence.Scope;
import org.papermath.order.Piece;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.LinearShrinkage;
import org.papermath.quantity.Share;

/** What will come out. */
public final class FinishedPiece {
    private static final String NO_DENSITY =
            "there is no default for the density of one of the fibres: weigh and measure one dry sheet";

    private record Values(
            Estimate<Length> width,
            Estimate<Length> height,
            Amount<Length> foldedWidth,
            Amount<Length> foldedHeight,
            Estimate<Grammage> grammage,
            Stage<Estimate<Length>> caliperStage,
            Estimate<Mass> mass,
            Stage<Estimate<Length>> pileStage,
            Estimate<LinearShrinkage> shrinkageAlong,
            Estimate<LinearShrinkage> shrinkageAcross,
            Amount<Dimensionless> load,
            Optional<Amount<Share>> insideTolerance) {}

    private final Values values;

    private FinishedPiece(Values values) {
        this.values = values;
    }

    static FinishedPiece of(PlainNumbers in, int p, Piece piece) {
        Estimates numbers = in.estimates();
        double scatter = in.asked()
                .find("sheet.scatter-grammage", Scope.of(piece.name(), piece.recipe()))
                .map(found -> found.likelySi())
                .orElse(0.0);
        CuttingAndFolding.Setting size = in.settings().size(p);
        return new FinishedPiece(new Values(
                numbers.of(Kinds.LENGTH, CuttingAndFolding.WIDTH, p),
                numbers.of(Kinds.LENGTH, CuttingAndFolding.HEIGHT, p),
                mm(size.foldedWidth()),
                mm(size.foldedHeight()),
                numbers.of(Kinds.GRAMMAGE, FinishedSheet.GRAMMAGE, p).withScatter(scatter),
                in.known(
                        FinishedSheet.CALIPER,
                        p,
                        "sheet.no-density",
                        NO_DENSITY,
                        () -> numbers.of(Kinds.LENGTH, FinishedSheet.CALIPER, p)),
                numbers.of(Kinds.MASS, CuttingAndFolding.MASS, p).withScatter(scatter),
                in.known(
                        CuttingAndFolding.PILE,
                        p,
                        "sheet.no-density",
                        NO_DENSITY,
                        () -> numbers.of(Kinds.LENGTH, CuttingAndFolding.PILE, p)),
                numbers.of(Kinds.LINEAR_SHRINKAGE, DryingSheets.SHRINK_ALONG, p),
                numbers.of(Kinds.LINEAR_SHRINKAGE, DryingSheets.SHRINK_ACROSS, p),
                Kinds.NUMBER.ofSi(numbers.likely(FillingVat.LOAD, p), "%"),
                inside(in, p, piece, scatter)));
    }

    /**
     * The share of single pieces inside the tolerance of the weight: the mean of a making and the scatter about it together,
     * as factors.
     */
    private static Optional<Amount<Share>> inside(PlainNumbers in, int p, Piece piece, double scatter) {
        double tolerance = in.asked().si("order.weight-tolerance", Scope.of(piece.name(), piece.recipe()));
        return piece.grammage().map(ordered -> {
            Estimate<Grammage> mean = in.estimates().of(Kinds.GRAMMAGE, FinishedSheet.GRAMMAGE, p);
            double off = Math.log(mean.likely().si() / ordered.si());
            double deviation = Math.hypot(Math.log(mean.high().si() / mean.low().si()) / 2, Math.log1p(scatter))
                    / PlainNumbers.NINE_IN_TEN;
            if (deviation == 0) {
                return Kinds.SHARE.ofSi(Math.abs(off) <= Math.log1p(tolerance) ? 1 : 0, "%");
            }
            NormalDistribution pieces = NormalDistribution.of(off, deviation);
            return Kinds.SHARE.ofSi(pieces.probability(Math.log1p(-tolerance), Math.log1p(tolerance)), "%");
        });
    }

    /** {@return one side of the flat piece} */
    public Estimate<Length> width() {
        return values.width;
    }

    /** {@return the other side} */
    public Estimate<Length> height() {
        return values.height;
    }

    /** {@return one side after folding} */
    public Amount<Length> foldedWidth() {
        return values.foldedWidth;
    }

    /** {@return the other side after folding} */
    public Amount<Length> foldedHeight() {
        return values.foldedHeight;
    }

    /** {@return the grammage in the air of the order} */
    public Estimate<Grammage> grammage() {
        return values.grammage;
    }

    /** {@return the thickness of one layer, or why it is not known} */
    public Stage<Estimate<Length>> caliperStage() {
        return values.caliperStage;
    }

    /** {@return what one piece weighs} */
    public Estimate<Mass> mass() {
        return values.mass;
    }

    /** {@return how high all the pieces are, folded} */
    public Stage<Estimate<Length>> pileStage() {
        return values.pileStage;
    }

    /** {@return shrinkage along the long side of the mould} */
    public Estimate<LinearShrinkage> shrinkageAlong() {
        return values.shrinkageAlong;
    }

    /** {@return shrinkage across it} */
    public Estimate<LinearShrinkage> shrinkageAcross() {
        return values.shrinkageAcross;
    }

    /** {@return additives kept, over fibre} */
    public Amount<Dimensionless> load() {
        return values.load;
    }

    /**
     * Returns the thickness of one layer.
     *
     * @return the caliper
     * @throws java.util.NoSuchElementException if it is not known; {@link #caliperStage} says why
     */
    public Estimate<Length> caliper() {
        return caliperStage().get();
    }

    /**
     * Returns how high all the pieces are, folded.
     *
     * @return the height
     * @throws java.util.NoSuchElementException if it is not known; {@link #pileStage} says why
     */
    public Estimate<Length> pile() {
        return pileStage().get();
    }

    /**
     * {@return of single pieces the share whose grammage is inside what is agreed ({@code order.weight-tolerance} either way),
     * over what is not known, what makings differ by and what pieces differ by; empty where no grammage was ordered}
     */
    public Optional<Amount<Share>> insideTolerance() {
        return values.insideTolerance;
    }

    @Override
    public String toString() {
        return values.width + " × " + values.height + ", " + values.grammage;
    }
}
