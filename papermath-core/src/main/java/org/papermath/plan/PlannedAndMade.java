package org.papermath.plan;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import org.papermath.quantity.Amount;
import org.papermath.text.Digits;

/**
 * What was planned against what was made of it, stage by stage in the order of the work, and the stage that explains what
 * came out otherwise. Made by {@link MakingPlan#heldAgainst}.
 *
 * <pre>{@code
 * MakingPlan plan = MakingPlan.of(order, studio);
 * PiecePlan piece = plan.pieces().get(0);
 * BatchRecord made = plan.emptyRecord(piece.batch(), piece.name(), LocalDate.of(2026, 3, 14)).record().toBuilder()
 *         .add(new Measurement.VatStood(Reading.of(Consistency.percent(0.4), Consistency.percent(0.01))))
 *         .add(new Measurement.Finished(
 *                 Reading.of(mm(148), mm(0.5)), Reading.of(mm(210), mm(0.5)), Reading.of(grams(3.3), grams(0.01)),
 *                 Optional.empty(), Optional.empty(), studio.room()))
 *         .build();
 * PlannedAndMade found = plan.heldAgainst(made, piece.name());
 * found.verdict();
 * }</pre>
 *
 * <p>A stage explains a difference as far as its reading, put into the forecast of the plan in place of what was planned
 * there, takes the difference away: {@code e = ln(E_k/E_(k-1))}, E the forecast of the end with the readings of the first k
 * stages put in. What a stage has from those before it is theirs: a vat that stands thin because little fibre was weighed is
 * the scale's. Settings stay as planned. What no reading explains is said to be unexplained.
 *
 * <p>Masses of finished sheets are taken as they were weighed; in an air much damper or drier than that of the order they
 * differ from the plan by the water in them.
 */
public final class PlannedAndMade {
    /** The outcome {@value}: mass over area of what was finished. */
    public static final String GRAMMAGE = "grammage";

    /** The outcome {@value}: width times height of what was finished. */
    public static final String SIZE = "size";

    /** The outcome {@value}. */
    public static final String CALIPER = "caliper";

    /** The outcome {@value}: of a filling of the dryer. */
    public static final String DRYING = "time to dry";

    /** The outcome {@value}. */
    public static final String GOOD = "good pieces";

    /** The outcome {@value}: of the piece, with the times that were read put in for those planned. */
    public static final String HOURS = "hands-on time";

    private static final int LINES = 10;

    /** A setting that is met so closely was done as told. */
    private static final double AS_TOLD = 0.01;

    private final String of;
    private final List<Line> lines;
    private final List<Outcome> outcomes;

    PlannedAndMade(String of, List<FoundLine> lines, List<FoundOutcome> outcomes) {
        this.of = of;
        this.lines = List.copyOf(lines);
        this.outcomes = List.copyOf(outcomes);
    }

    /** One figure, as planned and as made. */
    public sealed interface Line permits FoundLine {
        /** {@return the stage it belongs to} */
        StageOfWork stage();

        /** {@return what was measured, such as {@code sheet as couched}} */
        String what();

        /** {@return what was planned} */
        Amount<?> planned();

        /** {@return the lower end of the band of the plan; the planned value where it was a setting} */
        Amount<?> low();

        /** {@return the upper end of the band of the plan; the planned value where it was a setting} */
        Amount<?> high();

        /** {@return what was made, the mean of the readings} */
        Amount<?> made();

        /** {@return the standard deviation of the readings; the error of a single one} */
        double scatter();

        /** {@return how many readings} */
        int readings();

        /** {@return made over planned, less one: below zero where less was made} */
        double difference();

        /** {@return whether what was made, give or take twice its standard error, lies in the band of the plan, or of a setting within 1 %} */
        boolean insideBand();
    }

    record FoundLine(
            StageOfWork stage,
            String what,
            Amount<?> planned,
            Amount<?> low,
            Amount<?> high,
            Amount<?> made,
            double scatter,
            int readings)
            implements Line {
        @Override
        public double difference() {
            return made.si() / planned.si() - 1;
        }

        /** Standard error of the mean. */
        private double error() {
            return scatter / Math.sqrt(readings);
        }

        @Override
        public boolean insideBand() {
            boolean setting = low.si() == high.si();
            double slack = Math.max(2 * error(), (setting ? AS_TOLD : 1e-9) * Math.abs(planned.si()));
            return made.si() >= low.si() - slack && made.si() <= high.si() + slack;
        }

        /** Returns for example {@code sheet as couched: planned 60.75 g (50.1–71.2), made 52.1 ± 0.8 g, 14.2 % less}. */
        @Override
        public String toString() {
            double unit = made.si() == 0 ? 1 : Math.abs(made.value() / made.si());
            String text = planned.toString();
            int space = text.indexOf(' ');
            String sign = space < 0 ? "" : text.substring(space);
            return what + ": planned " + Digits.three(planned.value())
                    + (low.si() < high.si()
                            ? " (" + Digits.three(low.value()) + "–" + Digits.three(high.value()) + ")"
                            : "")
                    + sign + ", made " + Digits.three(made.value())
                    + (scatter > 0 ? " ± " + Digits.significant(scatter * unit, 2) : "") + sign + ", "
                    + percent(difference(), "more", "less")
                    + (insideBand() ? "" : low.si() < high.si() ? ", outside the band" : ", not as told");
        }
    }

    /** What came out in the end, and why it is not what was planned. */
    public sealed interface Outcome permits FoundOutcome {
        /** {@return which, one of the constants of {@link PlannedAndMade}} */
        String what();

        /** {@return made over planned, less one} */
        double difference();

        /** {@return whether it lies in the band of the plan} */
        boolean insideBand();

        /** {@return whether the difference is more than twice what the readings leave open} */
        boolean isMoreThanChance();

        /** {@return the stage that takes most of the difference away; empty where none takes a third of it} */
        Optional<StageOfWork> stage();

        /** {@return the share of the difference that stage takes away; more than 1 where others work against it} */
        double explained();

        /** {@return what every stage with a reading does to it, as a factor less one, in the order of the work} */
        List<Effect> effects();
    }

    /** What one stage does to an outcome. */
    public sealed interface Effect permits FoundEffect {
        /** {@return the stage} */
        StageOfWork stage();

        /** {@return the outcome with the readings of the stage over that without them, less one} */
        double change();
    }

    record FoundEffect(StageOfWork stage, double change) implements Effect {
        @Override
        public String toString() {
            return stage.words() + " " + percent(change, "more", "less");
        }
    }

    record FoundOutcome(
            String what,
            double difference,
            boolean insideBand,
            boolean isMoreThanChance,
            Optional<StageOfWork> stage,
            double explained,
            List<Effect> effects,
            double bands)
            implements Outcome {
        @Override
        public String toString() {
            String head = what + " "
                    + (percent(difference, "more", "less") + " than planned, ").replace("same than", "same as")
                    + (insideBand ? "inside its band" : "outside its band");
            if (!isMoreThanChance) {
                return head + "; no more than the readings leave open";
            }
            return stage.map(one -> head + ": " + one.words() + ", which takes away "
                            + Digits.significant(100 * Math.min(1, explained), 2) + " % of it")
                    .orElse(head + ": no reading explains it");
        }
    }

    static String percent(double difference, String more, String less) {
        return Math.abs(difference) < 5e-4
                ? "the same"
                : String.format(Locale.ROOT, "%.1f %% %s", 100 * Math.abs(difference), difference > 0 ? more : less);
    }

    /**
     * Returns every figure that was both planned and read.
     *
     * @return an unmodifiable list, in the order of the work
     */
    public List<Line> lines() {
        return lines;
    }

    /**
     * Returns what came out in the end, with its explanation.
     *
     * @return an unmodifiable list, the furthest off first, measured by the width of its band; only what was read
     */
    public List<Outcome> outcomes() {
        return outcomes;
    }

    /**
     * Returns one outcome.
     *
     * @param what which, one of the constants of this class
     * @return the outcome; empty if it was not read
     */
    public Optional<Outcome> outcome(String what) {
        Objects.requireNonNull(what, "what");
        return outcomes.stream().filter(one -> one.what().equals(what)).findFirst();
    }

    /**
     * Returns the outcome that is furthest off, measured by the width of its band, and more than chance, with its
     * explanation.
     *
     * @return the first of the outcomes in words, or that all came as planned
     */
    public String verdict() {
        return outcomes.stream()
                .filter(Outcome::isMoreThanChance)
                .findFirst()
                .map(Object::toString)
                .orElse(
                        outcomes.isEmpty()
                                ? "nothing was read of what came out in the end"
                                : "all came as planned, as far as the readings tell");
    }

    /** Returns the verdict and the stages in ten lines; the lists have all of them. */
    @Override
    public String toString() {
        StringBuilder text = new StringBuilder(of + ": " + verdict());
        int room = LINES - 1;
        for (Outcome one : outcomes) {
            if (room > 3 && !one.toString().equals(verdict())) {
                text.append("\n  ").append(one);
                room--;
            }
        }
        List<Line> worst = lines.stream()
                .sorted(Comparator.comparingDouble((Line one) -> -Math.abs(one.difference())))
                .limit(room)
                .toList();
        lines.stream()
                .filter(worst::contains)
                .forEach(one -> text.append("\n  ").append(one));
        return text.toString();
    }
}
