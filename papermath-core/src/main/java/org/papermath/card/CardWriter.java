package org.papermath.card;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.papermath.plan.MakingPlan;
import org.papermath.quantity.Refused;
import org.papermath.schedule.Day;

/** Writes a {@link MakingCard}, section by section in the order of the work. */
final class CardWriter {
    private final MakingPlan plan;
    private final Lettered pieces;
    private final Figures figures;
    private final CardForm form;
    private @Nullable List<Day> calendar;

    CardWriter(MakingPlan plan, CardForm form) {
        this.plan = plan;
        this.pieces = new Lettered(plan);
        this.figures = new Figures(plan.studio().alsoCustomaryUnits());
        this.form = form;
    }

    MakingPlan plan() {
        return plan;
    }

    Lettered pieces() {
        return pieces;
    }

    Figures figures() {
        return figures;
    }

    CardForm form() {
        return form;
    }

    /** The days by the hour, worked out once; none where they are not dated, or go on for longer than anybody would write. */
    List<Day> calendar() {
        List<Day> days = calendar;
        if (days == null) {
            try {
                days = plan.schedule().calendar();
            } catch (Refused tooLong) {
                days = List.of();
            }
            calendar = days;
        }
        return days;
    }

    void write() {
        form.title(
                "Making card",
                plan.order().name(),
                "for " + plan.studio().name(),
                plan.order()
                        .due()
                        .map(day -> "parcel leaves " + Figures.wholeDay(day))
                        .orElse(""),
                "[ ] set it   ~ expect it; nine in ten between (a–b)   ? check it   ! take care");
        int number = 0;
        for (CardSection section : List.of(
                new PiecesSection(this),
                new DaysSection(this),
                new SetUpSection(this),
                new LookOutSection(this),
                new FibreSection(this),
                new BeatSection(this),
                new VatSection(this),
                new PostSection(this),
                new DrySection(this),
                new FinishSection(this),
                new ComeOutSection(this),
                new AccountSection(this),
                new WriteDownSection(this))) {
            if (section.write(number + 1)) {
                number++;
            }
        }
        long weak = plan.assumptionsUsed().stream()
                .filter(a -> a.basis().isUncalibrated())
                .count();
        form.foot(
                "Local codes and licensed practice come before this card.",
                "papermath, assumptions of edition "
                        + plan.studio().assumptions().edition() + ", "
                        + plan.studio().assumptions().own().size() + " of the studio's own; " + weak + " of "
                        + plan.assumptionsUsed().size() + " values uncalibrated.");
    }
}
