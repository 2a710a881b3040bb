package org.papermath.card;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.papermath.fibre.Fibre;
import org.papermath.plan.AdditiveToWeigh;
import org.papermath.plan.BatchPlan;
import org.papermath.plan.CookingPlan;
import org.papermath.plan.FibreToWeigh;
import org.papermath.plan.SharedStuff;
import org.papermath.plan.SoakingPlan;
import org.papermath.plan.WorkStep;

/** Fibre to weigh, soak and cook. */
final class FibreSection extends CardSection {
    FibreSection(CardWriter card) {
        super(card);
    }

    @Override
    boolean write(int number) {
        form.section(number, Label.WEIGH.words(), day("soak"));
        for (BatchPlan batch : plan.batches()) {
            batch(batch);
        }
        cautions(WorkStep.WEIGH, WorkStep.SOAK, WorkStep.COOK);
        return true;
    }

    private void batch(BatchPlan batch) {
        Optional<SharedStuff> shared = batch.sharedStuff();
        FibreToWeigh fibre = shared.map(SharedStuff::fibre).orElse(batch.fibre());
        List<String> fibres = new ArrayList<>();
        for (FibreToWeigh.Line line : fibre.kinds()) {
            fibres.add(figures.set(line.asBought(), "oz") + " " + line.form().of(line.fibre()) + " as it lies"
                    + (line.form().losesFibre() ? ", to be cooked" : "")
                    + (line.fromHand().si() > 0
                            ? " and " + figures.set(line.fromHand(), "oz") + " (oven-dry) from the shelf"
                            : ""));
        }
        boolean onHand = batch.stuffOnHand().si() > 0;
        if (onHand) {
            form.row(
                    Mark.SET,
                    batch.name(),
                    "stuff on hand with " + figures.set(batch.stuffOnHand(), "lb") + " oven-dry in it: "
                            + "strain or thin it to " + batch.stock().consistency() + ", stir it in");
            if (batch.fibre().ovenDry().si() == 0) {
                return;
            }
        }
        if (shared.isPresent() && !shared.get().isBeatenHere()) {
            form.row(
                    Mark.SET,
                    onHand ? "" : batch.name(),
                    "its part of " + shared.get().name() + ", weighed above");
            ready(batch);
            return;
        }
        shared.ifPresent(stuff -> form.row(
                Mark.MORE,
                onHand ? "" : batch.name(),
                stuff.name() + " for " + String.join(", ", stuff.recipes()) + " together:"));
        form.row(Mark.SET, onHand || shared.isPresent() ? "" : batch.name(), String.join("; ", fibres));
        form.line(
                Mark.EXPECT,
                "= " + figures.about(fibre.ovenDry(), "lb") + " oven-dry"
                        + (batch.cooking().isPresent() ? " in the beater" : "")
                        + ", so that every sheet, the trials and the vat have theirs");
        ready(batch);
        SoakingPlan soak = shared.map(SharedStuff::soak).orElse(batch.soak());
        form.line(
                Mark.SET,
                "soak in " + figures.set(soak.water(), "gal_us") + " of water, " + Figures.clock(soak.time()));
        batch.cooking().ifPresent(this::cook);
    }

    private void ready(BatchPlan batch) {
        if (!batch.additives().isEmpty()) {
            List<String> all = new ArrayList<>();
            for (AdditiveToWeigh additive : batch.additives()) {
                all.add(figures.set(additive.productInAll(), "oz") + " "
                        + additive.additive().name());
            }
            row(Mark.SET, Label.READY, String.join("; ", all));
        }
    }

    private void cook(CookingPlan cooking) {
        boolean alone = cooking.pots().size() == 1;
        for (CookingPlan.Pot pot : cooking.pots()) {
            form.line(
                    Mark.SET,
                    "cook " + pot.fibre().name() + " in " + figures.set(pot.liquor(), "gal_us") + " of water with "
                            + figures.set(pot.pureAlkali(), "oz") + " of " + pot.alkali() + " (" + pot.dose()
                            + " on the dry fibre), about " + Figures.clock(cooking.time()) + " at the boil");
            form.line(Mark.CHECK, "a strand comes apart when pulled. If not: boil on, and try it every half hour");
            form.line(
                    Mark.SET,
                    "rinse it clear" + (pot.fibre().sourceClass() == Fibre.SourceClass.BAST ? " and pick it over" : "")
                            + "; squeeze it out and weigh it; dry a handful to know its water");
            row(
                    Mark.EXPECT,
                    Label.COOKED,
                    (alone ? figures.band(cooking.stuff()) : figures.about(pot.stuff(), "oz")) + " oven-dry, about "
                            + figures.about(pot.wet(), "lb")
                            + " squeezed out; make up the stock to what there is");
        }
        if (!alone) {
            form.line(Mark.EXPECT, "out of all pots " + figures.band(cooking.stuff()) + " oven-dry");
        }
    }
}
