package org.papermath.plan;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.papermath.engine.CuttingAndFolding;
import org.papermath.engine.Engine;
import org.papermath.engine.Figures;
import org.papermath.engine.FinishedSheet;
import org.papermath.engine.FormingSheets;
import org.papermath.engine.PieceFigure;
import org.papermath.engine.PieceWork;
import org.papermath.engine.Settings;
import org.papermath.evidence.Assumption;
import org.papermath.evidence.Assumptions;
import org.papermath.fibre.Fibre;
import org.papermath.order.Order;
import org.papermath.order.Studio;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Units;
import org.papermath.record.BatchRecord;

/**
 * What has changed since a batch was made: lots, the edition of the table, and every value that is known otherwise now, with
 * what it does to the paper. Made by {@link MakingPlan#changesSince(BatchRecord)}.
 *
 * <p>The effect of a change is what it would do to whoever worked by the card of then: the forecast with the settings of then
 * and this one value as it is known now, over the forecast of then. A new plan has other settings, which make up for it.
 * Changes are taken one by one; {@link #together()} has all at once.
 *
 * <pre>{@code
 * MakingPlan plan = MakingPlan.of(order, studio);
 * PiecePlan piece = plan.pieces().get(0);
 * BatchRecord then = plan.emptyRecord(piece.batch(), piece.name(), LocalDate.of(2026, 3, 14)).record();
 * plan.changesSince(then); // Nothing has changed.
 * }</pre>
 */
public final class ChangesSince {
    /** What moves a figure by less than this is not told. */
    private static final double LEAST = 5e-4;

    private static final Map<String, PieceFigure> TOLD = new LinkedHashMap<>();

    static {
        TOLD.put("grammage", FinishedSheet.GRAMMAGE);
        TOLD.put("caliper", FinishedSheet.CALIPER);
        TOLD.put("width", CuttingAndFolding.WIDTH);
        TOLD.put("height", CuttingAndFolding.HEIGHT);
        TOLD.put("time to drain", FormingSheets.DRAIN);
        TOLD.put("hands-on time", PieceWork.HOURS);
    }

    private final List<Change> changes;
    private final List<Effect> together;

    private ChangesSince(List<FoundChange> changes, List<Effect> together) {
        this.changes = List.copyOf(changes);
        this.together = List.copyOf(together);
    }

    /** One thing that is otherwise now. */
    public sealed interface Change permits FoundChange {
        /** {@return what: the key of an assumption, {@code edition}, or {@code lot of} a fibre or an additive} */
        String what();

        /** {@return what it was, in words; empty if nothing was said} */
        Optional<String> before();

        /** {@return what it is, in words; empty if nothing is said} */
        Optional<String> after();

        /** {@return what it does to the figures; none for a lot, of which only its readings tell something} */
        List<Effect> effects();
    }

    record FoundChange(String what, Optional<String> before, Optional<String> after, List<Effect> effects)
            implements Change {
        private double size() {
            return effects.stream()
                    .mapToDouble(one -> Math.abs(one.change()))
                    .max()
                    .orElse(Double.POSITIVE_INFINITY);
        }

        @Override
        public String toString() {
            String head = what + " " + before.orElse("not said") + " → " + after.orElse("not said");
            if (what.startsWith("lot of ")) {
                return head + (effects.isEmpty() ? ": measure it once before the batch" : "");
            }
            String told = words(effects);
            return head + ": " + (told.isEmpty() ? "no figure moves" : told);
        }
    }

    /** What a change does to one figure of one piece. */
    public sealed interface Effect permits FoundEffect {
        /** {@return the name of the piece} */
        String piece();

        /** {@return the figure, such as {@code grammage}} */
        String figure();

        /** {@return the figure with the change over that without, less one} */
        double change();
    }

    record FoundEffect(String piece, String figure, double change) implements Effect {
        @Override
        public String toString() {
            return piece + ": " + figure + " " + PlannedAndMade.percent(change, "more", "less");
        }
    }

    /** For each figure the piece it moves most. */
    private static String words(List<Effect> effects) {
        return TOLD.keySet().stream()
                .flatMap(figure -> effects.stream()
                        .filter(one -> one.figure().equals(figure) && Math.abs(one.change()) >= LEAST)
                        .max(Comparator.comparingDouble(one -> Math.abs(one.change())))
                        .stream())
                .map(one -> one.figure() + " " + PlannedAndMade.percent(one.change(), "more", "less"))
                .collect(Collectors.joining(", "));
    }

    static ChangesSince of(BatchRecord record, @Nullable BatchRecord today, Order order, Studio studio) {
        Assumptions then = record.assumptions()
                .orElseThrow(() -> Refused.of(
                        "record.no-assumptions",
                        record.name() + ": the record does not hold what was taken for known when it was planned. Begin"
                                + " records with an empty one of the plan, or add the assumptions of then.",
                        "record",
                        record.name()));
        Assumptions now = studio.assumptions();
        Engine engine = Engine.of(order, studio.withAssumptions(then));
        Settings settings = engine.decide(engine.likely());
        Figures base = engine.forecast(settings, engine.likely());
        Engine engineNow = Engine.of(order, studio);
        List<FoundChange> changes = new ArrayList<>();
        if (!then.edition().equals(now.edition())) {
            changes.add(new FoundChange(
                    "edition",
                    Optional.of(then.edition()),
                    Optional.of(now.edition()),
                    effects(
                            order,
                            settings,
                            base,
                            studio,
                            then,
                            Assumptions.edition(now.edition()).withAll(then.own()))));
        }
        for (Assumption one : moved(then, now)) {
            Assumption before = then.find(one.id(), one.scope()).orElse(null);
            if (isAsked(engine, then, one) || isAsked(engineNow, now, one)) {
                changes.add(new FoundChange(
                        one.key(),
                        Optional.ofNullable(before).map(row -> Units.fourDigits(row.likely())),
                        Optional.of(Units.fourDigits(one.likely()) + (one.unit().equals("1") ? "" : " " + one.unit())),
                        effects(order, settings, base, studio, then, then.with(one))));
            }
        }
        changes.sort(Comparator.comparingDouble((FoundChange one) -> -one.size()));
        if (today != null) {
            changes.addAll(0, lots(record, today, changes));
        }
        return new ChangesSince(changes, effects(order, settings, base, studio, then, now));
    }

    /** Whether the job reads the row that is found where a value stands. */
    private static boolean isAsked(Engine engine, Assumptions store, Assumption at) {
        return store.find(at.id(), at.scope())
                .map(row -> engine.known().isAsked(row))
                .orElse(false);
    }

    /** Each value that is known otherwise, as it is known now, in the scope it was or is known in. */
    private static List<Assumption> moved(Assumptions then, Assumptions now) {
        Map<String, Assumption> moved = new LinkedHashMap<>();
        for (Assumptions store : List.of(then, now)) {
            for (Assumption one : store.all()) {
                Optional<Assumption> before = then.find(one.id(), one.scope());
                Optional<Assumption> after = now.find(one.id(), one.scope());
                boolean same = before.map(Assumption::likelySi).equals(after.map(Assumption::likelySi));
                if (!same && after.isPresent()) {
                    Assumption row = after.get();
                    moved.put(
                            one.key(),
                            row.with(one.scope(), row.likely(), row.low(), row.high(), row.basis(), row.source()));
                }
            }
        }
        return List.copyOf(moved.values());
    }

    private static List<Effect> effects(
            Order order, Settings settings, Figures base, Studio studio, Assumptions then, Assumptions other) {
        if (then == other) {
            return List.of();
        }
        Engine engine = Engine.of(order, studio.withAssumptions(other));
        Figures figures = engine.forecast(settings, engine.likely());
        List<Effect> effects = new ArrayList<>();
        for (int p = 0; p < engine.pieces(); p++) {
            int piece = p;
            TOLD.forEach((name, figure) -> {
                double change = figures.of(figure, piece) / base.of(figure, piece) - 1;
                if (Double.isFinite(change)) {
                    effects.add(new FoundEffect(order.pieces().get(piece).name(), name, change));
                }
            });
        }
        return List.copyOf(effects);
    }

    private static List<FoundChange> lots(BatchRecord then, BatchRecord today, List<FoundChange> known) {
        List<FoundChange> lots = new ArrayList<>();
        Map<String, Optional<String>> before = lots(then);
        Map<String, Optional<String>> after = lots(today);
        before.keySet().forEach(name -> after.putIfAbsent(name, Optional.empty()));
        after.forEach((name, lot) -> {
            Optional<String> was = before.getOrDefault(name, Optional.empty());
            if (!was.equals(lot)) {
                // What was measured since of the fibre tells what the lot does.
                List<Effect> effects = known.stream()
                        .filter(one -> one.what().contains("[" + name))
                        .findFirst()
                        .map(FoundChange::effects)
                        .orElse(List.of());
                lots.add(new FoundChange("lot of " + name, was, lot, effects));
            }
        });
        return lots;
    }

    private static Map<String, Optional<String>> lots(BatchRecord record) {
        Map<String, Optional<String>> lots = new LinkedHashMap<>();
        for (Map.Entry<Fibre, String> one : record.fibreLots().entrySet()) {
            lots.put(one.getKey().id(), Optional.of(one.getValue()));
        }
        record.additiveLots().forEach((name, lot) -> lots.put(name, Optional.of(lot)));
        return lots;
    }

    /**
     * Returns what has changed.
     *
     * @return an unmodifiable list, lots first and then what moves the paper most; empty if nothing has changed
     */
    public List<Change> changes() {
        return changes;
    }

    /**
     * Returns what all changes do at once to whoever works by the card of then.
     *
     * @return an unmodifiable list
     */
    public List<Effect> together() {
        return together;
    }

    /**
     * Returns one change.
     *
     * @param what the key of an assumption, {@code edition}, or {@code lot of} a fibre or an additive
     * @return the change; empty if it has not changed
     */
    public Optional<Change> change(String what) {
        Objects.requireNonNull(what, "what");
        return changes.stream().filter(one -> one.what().equals(what)).findFirst();
    }

    @Override
    public String toString() {
        if (changes.isEmpty()) {
            return "Nothing has changed.";
        }
        String told = words(together);
        return (told.isEmpty() ? "No figure moves." : "By the card of then: " + told + ".")
                + changes.stream().map(one -> "\n  " + one).collect(Collectors.joining());
    }
}
