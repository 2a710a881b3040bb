package org.papermath.card;

import java.util.ArrayList;
import java.util.List;
import org.papermath.evidence.Notice;
import org.papermath.plan.Sensitivity;

/** What is doubtful about the plan, and what to measure to narrow it. */
final class LookOutSection extends CardSection {
    private static final int MOST = 3;

    LookOutSection(CardWriter card) {
        super(card);
    }

    @Override
    boolean write(int number) {
        if (!plan.notices().isEmpty()) {
            form.section(0, Label.LOOK_OUT.words(), "");
            // Warnings first.
            for (Notice.Level level : List.of(Notice.Level.WARNING, Notice.Level.NOTE)) {
                for (Notice notice : plan.notices()) {
                    if (notice.level() == level) {
                        form.line(level == Notice.Level.WARNING ? Mark.CAUTION : Mark.NOTE, notice.text());
                    }
                }
            }
        }
        List<Sensitivity> first = plan.sensitivity();
        if (!first.isEmpty()) {
            form.section(0, Label.MEASURE.words(), "");
            List<String> named = new ArrayList<>();
            for (Sensitivity one : first) {
                if (named.size() < MOST && !named.contains(one.measurement())) {
                    named.add(one.measurement());
                    form.line(
                            Mark.NOTE,
                            one.measurement() + ": " + Math.round(100 * one.share()) + " % of the band of the "
                                    + one.widens() + " comes from not knowing it.");
                }
            }
        }
        return false;
    }
}
