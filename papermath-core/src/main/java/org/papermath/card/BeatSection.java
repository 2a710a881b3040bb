package org.papermath.card;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import javax.measure.quantity.Mass;
import org.papermath.fibre.Fibre;
import org.papermath.plan.AdditiveToWeigh;
import org.papermath.plan.BatchPlan;
import org.papermath.plan.BeaterLoads;
import org.papermath.plan.BeatingPlan;
import org.papermath.plan.ColourPlan;
import org.papermath.plan.SharedStuff;
import org.papermath.plan.WorkStep;
import org.papermath.pulp.Additive;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kinds;
import org.papermath.text.Digits;

/** Loads of the beater, what is added to them and in which order, and the stock that comes of it. */
final class BeatSection extends CardSection {
    /** A thin solution of this part is weighed out where the dose itself is too small for the scale. */
    private static final double THIN = 0.01;

    private boolean isJudgingSaid;

    BeatSection(CardWriter card) {
        super(card);
    }

    @Override
    boolean write(int number) {
        form.section(number, Label.BEAT.words(), day("beat and dose"));
        for (BatchPlan batch : plan.batches()) {
            batch(batch);
        }
        cautions(WorkStep.BEAT, WorkStep.DOSE, WorkStep.WET_POWDER);
        return true;
    }

    private void batch(BatchPlan batch) {
        if (batch.beatingStage().isDone()) {
            beat(batch, batch.beating());
        } else {
            form.row(Mark.MORE, batch.name(), batch.beatingStage().reason());
        }
        if (batch.sharedStuff().filter(stuff -> !stuff.isBeatenHere()).isEmpty()) {
            drainability(batch);
        }
        batch.sharedStuff()
                .filter(stuff -> stuff.part().si() > 0)
                .ifPresent(stuff -> row(
                        Mark.SET,
                        Label.DIVIDE,
                        figures.about(stuff.wet(), "lb") + " of it ("
                                + Digits.percent(stuff.part().si()) + ") for " + batch.name()
                                + ", weighed as it comes from the beater"));
        for (int i = 0; i < batch.additives().size(); i++) {
            AdditiveToWeigh additive = batch.additives().get(i);
            if (i == 0) {
                form.line(Mark.MORE, add(batch).words() + ":");
            }
            form.line(
                    Mark.SET,
                    (i + 1) + ". " + figures.set(additive.productEach(), "oz") + thin(additive) + " "
                            + additive.additive()
                            + (additive.additive().purpose() == Additive.Purpose.FORMATION_AID
                                    ? ", as a thin solution made the day before"
                                    : "")
                            + (i + 1 < batch.additives().size()
                                    ? ", then " + Figures.clock(additive.waitAfter())
                                    : ""));
        }
        batch.colour().ifPresent(this::colour);
        row(
                Mark.EXPECT,
                Label.STOCK,
                figures.set(batch.stock().volume(), "gal_us") + " at "
                        + batch.stock().consistency()
                        + batch.stock()
                                .dilutionEach()
                                .map(water -> ", thinned with " + figures.set(water, "gal_us") + " of water"
                                        + (add(batch) == Label.ADD ? " a load" : " in all"))
                                .orElse(""));
    }

    /** Less than the kitchen scale shows goes in as a thin solution. */
    private String thin(AdditiveToWeigh additive) {
        Amount<Mass> dose = additive.productEach();
        return dose.si() > 0 && dose.si() < plan.studio().scaleStep().si()
                ? " (as " + figures.about(Kinds.MASS.ofSi(dose.si() / THIN, "g"), "oz") + " of a 1 % solution)"
                : "";
    }

    private void beat(BatchPlan batch, BeatingPlan beating) {
        for (BeaterLoads run : beating.runs()) {
            List<String> each = new ArrayList<>();
            for (int f = 0; f < run.fibres().size(); f++) {
                Fibre fibre = run.fibres().get(f);
                each.add(figures.set(run.kindsEach().get(f), "oz") + " "
                        + fibre.name()
                        + (batch.recipe().furnish().form(fibre).losesFibre() ? ", cooked and squeezed out" : ""));
            }
            form.row(
                    Mark.SET,
                    run == beating.runs().get(0)
                            ? batch.sharedStuff().map(SharedStuff::name).orElse(batch.name())
                            : "",
                    Figures.count(run.loads(), "load") + (run.loads() == 1 ? ": " : ", each ")
                            + String.join(" + ", each)
                            + "; in "
                            + figures.set(run.waterEach(), "gal_us") + " of water (" + beating.consistency() + "), "
                            + Figures.clock(run.timeEach()) + " on "
                            + beating.beater().name());
        }
        if (beating.isApart()) {
            form.line(Mark.SET, "beaten apart: mix all the loads before anything is added");
        }
    }

    private void drainability(BatchPlan batch) {
        boolean isTimed = batch.recipe().timedSheet().isPresent();
        form.line(
                isTimed ? Mark.EXPECT : Mark.CHECK,
                isTimed
                        ? "as the timed sheet has it, stuff of " + figures.band(batch.drainability())
                        : "the tester should " + (batch.fibre().ovenDry().si() > 0 ? "then " : "") + "read "
                                + figures.aim(batch.drainability())
                                + (batch.beatingStage().isDone()
                                        ? ". Below: beat on and read again; above: the next load shorter"
                                        : ""));
    }

    /** How a batch comes to its colour: what is given first, how it is judged, what then. */
    private void colour(ColourPlan colour) {
        row(
                Mark.CHECK,
                Label.COLOUR,
                "wanted dry " + colour.wanted().lab()
                        + (colour.pigments().isEmpty() ? "; no pigment is in the recipe" : ""));
        if (!colour.pigments().isEmpty()) {
            form.line(
                    Mark.SET,
                    "first "
                            + String.join(
                                    ", ",
                                    colour.pigments().stream()
                                            .map(one -> figures.set(one.first(), "oz") + " "
                                                    + one.additive().name())
                                            .toList())
                            + " a load; keep the rest back");
            if (!isJudgingSaid) {
                isJudgingSaid = true;
                form.line(
                        Mark.SET,
                        "strain, wait till the water stands clear, pull a swatch, press it, dry it "
                                + Figures.clock(colour.drying()) + " on a warm plate; wet it is darker");
                form.line(Mark.SET, "judge it by day and under a lamp, then add of the rest what it asks for");
            }
            colour.wanted()
                    .nineInTen()
                    .ifPresent(within ->
                            form.line(Mark.EXPECT, "told within ΔE00 " + tenths(within) + " nine times in ten"));
        }
        colour.before()
                .ifPresent(before -> form.line(
                        Mark.SET,
                        "after " + before + ": wash beater, vat and felts; what is left moves this one by about ΔE00 "
                                + tenths(colour.leftOfBefore())));
    }

    /** A difference of colour, which nobody sees finer than in tenths. */
    private static String tenths(double difference) {
        return BigDecimal.valueOf(difference)
                .setScale(1, RoundingMode.HALF_EVEN)
                .toPlainString();
    }

    private static Label add(BatchPlan batch) {
        boolean isApart = batch.beatingStage().isDone() && batch.beating().isApart();
        return batch.sharedStuff().isPresent() ? Label.ADD_PART : isApart ? Label.ADD_MIXED : Label.ADD;
    }
}
