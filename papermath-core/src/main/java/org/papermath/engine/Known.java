package org.papermath.engine;

import java.util.ArrayList;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import org.papermath.evidence.Assumption;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Basis;
import org.papermath.evidence.Role;
import org.papermath.evidence.Scope;
import org.papermath.quantity.Units;

/** What is known for a job: gives every assumption a stage asks for a slot, once. */
public final class Known {
    /** Sorts what makings differ by behind what is not known of the same. */
    private static final String MAKINGS = " from making to making";

    /** About how many assumptions an order asks for. */
    private static final int USUAL = 150;

    private final Assumptions store;
    private final List<Assumption> rows = new ArrayList<>();
    private final IdentityHashMap<Assumption, Slot> slots = new IdentityHashMap<>(USUAL);
    private final Set<Assumption> fixed = Collections.newSetFromMap(new IdentityHashMap<>());

    Known(Assumptions store) {
        this.store = store;
    }

    /** The store the slots are looked up in. */
    Assumptions store() {
        return store;
    }

    /** The slot of an assumption; refused by the store where there is no default. */
    Slot slot(String id, Scope scope) {
        return slot(store.get(id, scope));
    }

    Slot slot(String id) {
        return slot(id, Scope.GENERAL);
    }

    /** The slot of an assumption there may be no default for. */
    @Nullable
    Slot maybe(String id, Scope scope) {
        Optional<Assumption> found = store.find(id, scope);
        return found.isPresent() ? slot(found.get()) : null;
    }

    /** The slot of a value that was measured or given here; null where only the table has one. */
    @Nullable
    Slot own(String id, Scope scope) {
        Optional<Assumption> found =
                store.find(id, scope).filter(one -> one.basis() == Basis.MEASURED_HERE || one.basis() == Basis.GIVEN);
        return found.isPresent() ? slot(found.get()) : null;
    }

    /** A value that was measured or given here, in coherent SI and without a slot; not a number where there is none. */
    double ownFixed(String id, Scope scope) {
        return store.find(id, scope)
                .filter(one -> one.basis() == Basis.MEASURED_HERE || one.basis() == Basis.GIVEN)
                .map(this::fixed)
                .orElse(Double.NaN);
    }

    /** A default that is taken as it is, in coherent SI: it gets no slot. */
    double fixed(String id, Scope scope) {
        return fixed(store.get(id, scope));
    }

    /** The same for an assumption that was found in the store. */
    double fixed(Assumption found) {
        fixed.add(found);
        return found.likelySi();
    }

    /** The slot of an assumption that was found in the store. */
    Slot slot(Assumption assumption) {
        return slots.computeIfAbsent(assumption, one -> {
            rows.add(one);
            return new Slot(rows.size() - 1);
        });
    }

    /** Whether some stage asked for an assumption, with a slot or as it is. */
    public boolean isAsked(Assumption assumption) {
        return slots.containsKey(assumption) || fixed.contains(assumption);
    }

    /** The slot of an assumption that enters by it alone; null where no stage asked, or one took it as it is. */
    public @Nullable Slot onlySlot(Assumption assumption) {
        return fixed.contains(assumption) ? null : slots.get(assumption);
    }

    /** The slot of an assumption of the job. */
    public Slot slotOf(Assumption row) {
        Slot slot = slots.get(row);
        if (slot == null) {
            throw new IllegalStateException("no stage asked for " + row.key());
        }
        return slot;
    }

    /** Every assumption that has a slot, in the order of the slots. */
    public List<Assumption> rows() {
        return List.copyOf(rows);
    }

    /** The likely values. */
    Values likely() {
        return new Values(rows.stream().mapToDouble(Assumption::likelySi).toArray());
    }

    /**
     * What a band varies together.
     *
     * @param row the assumption it is for
     * @param slots its slot, and after it those of measured values that go with it
     * @param lows their values, in coherent SI, where it is at its 5 % point
     * @param highs the same at its 95 % point
     * @param fromMakings the share of the squared width that is from making to making
     */
    public record Varied(Assumption row, Slot[] slots, double[] lows, double[] highs, double fromMakings) {
        static Varied of(Assumption row, Assumption wide, Slot slot) {
            double known = width(wide) > 0 ? width(row) / width(wide) : 1;
            return new Varied(
                    row,
                    new Slot[] {slot},
                    new double[] {wide.lowSi()},
                    new double[] {wide.highSi()},
                    Math.max(0, 1 - known * known));
        }

        private static double width(Assumption one) {
            return one.shape().scaled(one.high()) - one.shape().scaled(one.low());
        }
    }

    /** A measured value that goes with another. */
    private record Leaning(Assumption row, Assumption.Lean lean) {
        /** Its value, in coherent SI, where the other lies off its likely value by so much on its scale. */
        double at(double off) {
            return si(row, row.shape().scaled(row.likely()) + lean.by(off));
        }
    }

    private static double si(Assumption row, double scaled) {
        return Units.toSi(row.at(scaled), row.unit());
    }

    /** What a band varies, by key, so that sums do not depend on the order of the look-ups. */
    List<Varied> varied() {
        SortedMap<String, Varied> byKey = new TreeMap<>();
        IdentityHashMap<Assumption, List<Leaning>> leaning = leaning();
        for (Assumption one : rows) {
            if (one.role() == Role.PHYSICAL) {
                Assumption known = withAbsent(one);
                List<Leaning> with = leaning.get(one);
                if (with == null) {
                    byKey.put(one.key(), Varied.of(known, store.overMakings(known), slot(one)));
                } else {
                    byKey.put(one.key(), together(known, slot(one), with));
                    byKey.put(one.key() + MAKINGS, makings(one));
                }
            }
        }
        byKey.values().removeIf(one -> one.lows[0] == one.highs[0]);
        return List.copyOf(byKey.values());
    }

    /** The measured values of this job that go with each assumption of it that is not known. */
    private IdentityHashMap<Assumption, List<Leaning>> leaning() {
        IdentityHashMap<Assumption, List<Leaning>> found = new IdentityHashMap<>();
        for (Assumption one : rows) {
            for (Assumption.Lean lean : one.leans()) {
                other(lean)
                        .ifPresent(other -> found.computeIfAbsent(other, row -> new ArrayList<>())
                                .add(new Leaning(one, lean)));
            }
        }
        return found;
    }

    /** The assumption of this job a value goes with; empty where the job does not ask for it. */
    private Optional<Assumption> other(Assumption.Lean lean) {
        return store.leanedOn(lean).filter(slots::containsKey);
    }

    /** The band of a measured value with what it goes with and the job does not ask for. */
    private Assumption withAbsent(Assumption one) {
        return store.byItself(one, slots::containsKey);
    }

    /** What is not known of an assumption, with the measured values that go with it. */
    private Varied together(Assumption one, Slot own, List<Leaning> with) {
        int n = with.size() + 1;
        Slot[] moved = new Slot[n];
        double[] lows = new double[n];
        double[] highs = new double[n];
        double middle = one.shape().scaled(one.likely());
        moved[0] = own;
        lows[0] = one.lowSi();
        highs[0] = one.highSi();
        for (int i = 1; i < n; i++) {
            Leaning leaning = with.get(i - 1);
            moved[i] = slot(leaning.row);
            lows[i] = leaning.at(one.shape().scaled(one.low()) - middle);
            highs[i] = leaning.at(one.shape().scaled(one.high()) - middle);
        }
        return new Varied(one, moved, lows, highs, 0);
    }

    /** What an assumption differs by from one making to the next: nothing that was measured goes with that. */
    private Varied makings(Assumption one) {
        double half = store.makingHalf(one);
        double middle = one.shape().scaled(one.likely());
        return new Varied(
                one,
                new Slot[] {slot(one)},
                new double[] {half == 0 ? one.likelySi() : si(one, middle - half)},
                new double[] {half == 0 ? one.likelySi() : si(one, middle + half)},
                1);
    }

    /**
     * What draws vary.
     *
     * @param row what is known of it, with what it goes with that the job does not ask for
     * @param slot its slot
     * @param place its place among what is drawn
     * @param making what makings differ by, on the scale of its distribution: nine in ten lie within it either way
     * @param with the places, in the list of what is drawn, of what it goes with
     * @param leans how
     */
    public record Drawn(Assumption row, Slot slot, int place, double making, int[] with, List<Assumption.Lean> leans) {}

    /** What draws vary, in the order of {@link #varied()}. */
    List<Drawn> drawn() {
        SortedMap<String, Assumption> byKey = new TreeMap<>();
        for (Assumption one : rows) {
            if (one.role() == Role.PHYSICAL) {
                byKey.put(one.key(), one);
            }
        }
        List<Assumption> order = List.copyOf(byKey.values());
        List<Drawn> drawn = new ArrayList<>();
        for (Assumption one : order) {
            List<Assumption.Lean> leans =
                    one.leans().stream().filter(lean -> other(lean).isPresent()).toList();
            drawn.add(new Drawn(
                    withAbsent(one),
                    slot(one),
                    drawn.size(),
                    store.makingHalf(one),
                    leans.stream()
                            .mapToInt(lean -> order.indexOf(other(lean).orElseThrow()))
                            .toArray(),
                    leans));
        }
        return drawn;
    }

    /** The greatest value an assumption may have, in coherent SI: its 95 % point. */
    double greatest(Slot slot) {
        return rows.get(slot.at).highSi();
    }
}
