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

/** A piece as it was worked out. */
record PlannedPiece(Piece piece, String batch, Counts counts, Forming forming, Stage<VatPlan> vatStage,
        Stage<Pour> pourStage, Stage<Estimate<Time>> drainTimeStage, Estimate<Length> matThickness,
        Estimate<Mass> couchedMass, Stage<Posts> postsStage, Stage<Pressing> pressStage, Estimate<Solids> solids,
        Stage<Drying> dryingStage, Stage<Sizing> sizingStage, Finished finished, Stage<EnvelopePlan> envelopeStage,
        Stage<Mailed> mailStage, Estimate<Time> workingHours) implements PiecePlan {
    @Override
    public String toString() {
        return name() + ": " + counts;
    }

    record PlannedCounts(int ordered, int wanted, int perSheet, int sheets, int trials, Estimate<Dimensionless> good)
            implements Counts {
        @Override
        public String toString() {
            return sheets + " sheets for " + wanted + " good pieces";
        }
    }

    record PlannedForming(Optional<Mould> mould, boolean deckleToMake, Opening opening, int perSheet, boolean turned,
            Amount<Mass> fibre, Amount<Mass> solids) implements Forming {
        @Override
        public String toString() {
            return perSheet + " up, opening " + opening;
        }
    }

    record PlannedVat(Amount<Consistency> consistency, Amount<Volume> stock, Amount<Volume> water, Amount<Volume> bail,
            Amount<Mass> lift, int every, List<Recharge> recharges, Amount<Dimensionless> lightest,
            Amount<Dimensionless> heaviest) implements VatPlan {
        @Override
        public String toString() {
            return "lift " + lift + " a sheet; recharge after every " + every + " sheets";
        }
    }

    record PlannedRecharge(int afterSheet, Amount<Volume> stock, Amount<Volume> water, Amount<Volume> bail)
            implements Recharge {
        @Override
        public String toString() {
            return "after sheet " + afterSheet + ": " + stock + " of stock"
                    + (water.si() > 0 ? ", " + water + " of water" : "") + (bail.si() > 0 ? ", bail " + bail : "");
        }
    }

    record PlannedPour(Amount<Volume> stock) implements Pour {
        @Override
        public String toString() {
            return "pour " + stock + " of stock a sheet";
        }
    }

    record PlannedPosts(int sheetsInPost, int posts, int felts, Estimate<Mass> mass, Estimate<Length> height)
            implements Posts {
        @Override
        public String toString() {
            return posts + " posts of " + sheetsInPost + " sheets, " + felts + " felts";
        }
    }

    record PlannedPressing(Press press, Amount<Force> force, Amount<SheetPressure> pressure, Amount<Time> time,
            Press.Part weakest, boolean limited) implements Pressing {
        @Override
        public String toString() {
            return force + " (" + pressure + " on the sheet) for " + time;
        }
    }

    record PlannedDrying(Dryer dryer, int loads, int blotterChanges, Estimate<Time> time, Estimate<Mass> water)
            implements Drying {
        @Override
        public String toString() {
            return dryer.name() + ", " + loads + " times, " + time;
        }
    }

    record PlannedSizing(Amount<Volume> bath, Amount<Mass> drySize, Amount<Volume> taken,
            Estimate<Dimensionless> gained, Stage<Estimate<Time>> dryAgain) implements Sizing {
        @Override
        public String toString() {
            return bath + " of bath with " + drySize + " of dry size";
        }
    }

    record PlannedFinished(Estimate<Length> width, Estimate<Length> height, Amount<Length> foldedWidth,
            Amount<Length> foldedHeight, Estimate<Grammage> grammage, Stage<Estimate<Length>> caliperStage,
            Estimate<Mass> mass, Stage<Estimate<Length>> pileStage, Estimate<LinearShrinkage> shrinkageAlong,
            Estimate<LinearShrinkage> shrinkageAcross, Amount<Dimensionless> load) implements Finished {
        @Override
        public String toString() {
            return width + " × " + height + ", " + grammage;
        }
    }

    record PlannedEnvelope(EnvelopeStyle style, Amount<Length> blankWidth, Amount<Length> blankHeight,
            Amount<Length> insideWidth, Amount<Length> insideHeight, Amount<Length> outsideWidth,
            Amount<Length> outsideHeight, Amount<Length> seam, Estimate<Length> playAlong, Estimate<Length> playAcross,
            Amount<Dimensionless> sharePairsFit) implements EnvelopePlan {
        @Override
        public String toString() {
            return style.words() + ", blank " + blankWidth + " × " + blankHeight;
        }
    }

    record PlannedMailed(String country, Estimate<Mass> mass, Estimate<Length> thickness, MailLimits.Verdict verdict)
            implements Mailed {
        @Override
        public String toString() {
            return country + ": " + verdict;
        }
    }
}
