package org.papermath.card;

import java.time.Duration;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.papermath.plan.BatchPlan;
import org.papermath.plan.PiecePlan;
import org.papermath.plan.Schedule;
import org.papermath.plan.WorkStep;
import org.papermath.quantity.Kinds;
import org.papermath.schedule.Day;
import org.papermath.schedule.Phase;
import org.papermath.text.Digits;

/** What is done on which day, by hand and by itself. */
final class DaysSection extends CardSection {
    /** Work of fewer minutes is not worth a word of its own on a day that has others. */
    private static final long TRIFLE = 3;

    /** A name that begins or ends as another does is looked for before that. */
    private final List<PiecePlan> longestFirst;

    DaysSection(CardWriter card) {
        super(card);
        longestFirst = pieces.all().stream()
                .sorted(Comparator.comparingInt((PiecePlan one) -> -one.name().length()))
                .toList();
    }

    @Override
    boolean write(int number) {
        form.section(0, Label.DAYS.words(), "");
        Schedule schedule = plan.schedule();
        boolean isDated = !calendar().isEmpty();
        if (!isDated) {
            form.table(
                    Mark.MORE,
                    List.of("", ""),
                    schedule.steps().stream()
                            .map(step -> List.of(step.name(), step.inDays()))
                            .toList());
        } else {
            form.table(
                    Mark.SET,
                    List.of("", "", Label.BY_HAND.words(), Label.BY_ITSELF.words()),
                    calendar().stream().map(this::day).toList());
            for (Schedule.Step step : schedule.steps()) {
                if (step.start().isEmpty()) {
                    form.line(Mark.NOTE, "not known when: " + step.name() + ", " + step.inDays());
                } else if (step.isOwn()) {
                    form.line(
                            Mark.SET,
                            step.start().map(Figures::day).orElse("") + "  " + step.name() + ", " + step.inDays());
                }
            }
        }
        form.line(Mark.EXPECT, "In all: " + schedule.inDays() + ".");
        form.line(
                Mark.EXPECT,
                "Hands on: about " + figures.spell(plan.workingHours()) + " in all"
                        + (plan.machineHours().si() > 0
                                ? "; beater, pots and press run " + Figures.about(plan.machineHours()) + " besides."
                                : ".")
                        + (plan.ownStepHours().si() > 0
                                ? " Steps of your own: "
                                        + Digits.three(plan.ownStepHours().in("h")) + " h of hands more."
                                : ""));
        cautions(WorkStep.CONDITION, WorkStep.PACK);
        if (isDated) {
            DayBars bars = new DayBars();
            calendar()
                    .forEach(day -> bars.add(
                            Figures.day(day.date()),
                            schedule.handsOn(day).in("h"),
                            machine(day).toMinutes() / 60.0,
                            !day.tonight().isEmpty()));
            form.picture(new Picture(bars.svg(), "The hours of each day", false));
        }
        return false;
    }

    private static Duration machine(Day day) {
        return day.entries().stream()
                .filter(entry -> entry.phase().kind() == Phase.Kind.MACHINE)
                .map(entry -> Duration.between(entry.from(), entry.to()))
                .reduce(Duration.ZERO, Duration::plus);
    }

    private List<String> day(Day day) {
        Map<String, Set<String>> work = new LinkedHashMap<>();
        Duration machine = machine(day);
        day.entries().stream()
                .filter(entry -> entry.phase().kind() == Phase.Kind.HANDS_ON && !isTrifle(entry))
                .forEach(entry -> add(work, entry));
        if (work.isEmpty()) {
            day.entries().forEach(entry -> add(work, entry));
        }
        List<String> words = new ArrayList<>();
        work.forEach((what, of) -> words.add(what + (of.isEmpty() ? "" : " " + String.join(", ", of))));
        List<String> alone = new ArrayList<>();
        if (machine.compareTo(Duration.ZERO) > 0) {
            alone.add(Figures.about(Kinds.TIME.of((double) machine.toMinutes(), "min")));
        }
        day.tonight().stream()
                .map(entry -> entry.to().toLocalDate())
                .max(Comparator.naturalOrder())
                .ifPresent(to -> alone.add(to.equals(day.date().plusDays(1)) ? "night" : "to " + shortDay(to)));
        return List.of(
                Figures.day(day.date()),
                String.join("; ", words),
                Figures.work(plan.schedule().handsOn(day)),
                String.join(", ", alone));
    }

    /** Whether a moment's work says nothing; but what waits for it to be ordered, or put somewhere, begins with it. */
    private static boolean isTrifle(Day.Entry entry) {
        return Duration.between(entry.from(), entry.to()).toMinutes() <= TRIFLE
                && !entry.phase().name().startsWith("put")
                && !entry.phase().name().startsWith("order");
    }

    private static String shortDay(LocalDate day) {
        String whole = Figures.day(day);
        return whole.substring(whole.indexOf(' ') + 1);
    }

    /** The work of an entry, with the letter of its piece; what is done in several goes is said once. */
    private void add(Map<String, Set<String>> work, Day.Entry entry) {
        String task = entry.task().name().replaceAll(" \\d+/\\d+", "");
        String phase = entry.phase().name();
        for (PiecePlan piece : longestFirst) {
            if ((task + " ").contains(" " + piece.name() + " ")) {
                String verb = (task + " ")
                        .replace(" " + piece.name() + " ", " ")
                        .strip()
                        .replaceAll(" (post|posts) of$", "");
                String what = verb.equals("dry") || verb.equals("cure") || verb.equals("condition") ? phase : verb;
                Set<String> of = work.computeIfAbsent(what, key -> new LinkedHashSet<>());
                if (pieces.areSeveral()) {
                    of.add(pieces.letter(piece));
                }
                return;
            }
        }
        String what = entry.task().name();
        if (plan.batches().size() == 1) {
            BatchPlan batch = plan.batches().get(0);
            what = what.replace(" with " + batch.name(), "").replace(" " + batch.name(), "");
        }
        work.computeIfAbsent(
                what.startsWith("have the fibre") ? "order the fibre" : what, key -> new LinkedHashSet<>());
    }
}
