package org.papermath.evidence;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.Function;
import javax.measure.Quantity;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kind;
import org.papermath.quantity.Refused;

/**
 * The band of a result from the bands of the assumptions behind it, over makings ({@link Assumptions#overMakings}): each is
 * put at its 5 % and its 95 % point in turn, and the shifts of the result are added as squares, up and down apart.
 */
public final class Bands {
    private Bands() {}

    /**
     * Assumptions that may be off, and what they are wanted for.
     *
     * @param scope what they are wanted for
     * @param ids the assumptions
     */
    public record Use(Scope scope, List<String> ids) {
        /**
         * Copies the list.
         *
         * @param scope what they are wanted for
         * @param ids the assumptions
         */
        public Use {
            Objects.requireNonNull(scope, "scope");
            ids = List.copyOf(Objects.requireNonNull(ids, "ids"));
        }

        /**
         * Names assumptions of a scope.
         *
         * @param scope what they are wanted for
         * @param ids the assumptions
         * @return the use
         */
        public static Use of(Scope scope, String... ids) {
            Objects.requireNonNull(scope, "scope");
            Objects.requireNonNull(ids, "ids");
            return new Use(scope, List.of(ids));
        }

        @Override
        public String toString() {
            return ids + scope.toString();
        }
    }

    /**
     * Works out an estimate.
     *
     * <p>Shifts are added as factors where the result is above zero throughout, else as differences. A sum of them may
     * pass the bounds of the kind, such as a length below zero; there the band ends. An assumption the store does not
     * hold for the scope, one without a band and one that is not physical are left alone.
     *
     * @param <Q> the quantity type
     * @param assumptions the store
     * @param scope what the assumptions are wanted for
     * @param ids the assumptions that may be off
     * @param result the result of a store
     * @return the estimate, its drivers the strongest first
     * @throws Refused as {@code result} throws for the likely values
     */
    public static <Q extends Quantity<Q>> Estimate<Q> of(
            Assumptions assumptions, Scope scope, List<String> ids, Function<Assumptions, Amount<Q>> result) {
        Objects.requireNonNull(scope, "scope");
        Objects.requireNonNull(ids, "ids");
        return of(assumptions, List.of(new Use(scope, ids)), result);
    }

    /**
     * Works out an estimate that rests on assumptions of several scopes, such as those of the fibres of a blend. One
     * that is found from two scopes is varied once.
     *
     * @param <Q> the quantity type
     * @param assumptions the store
     * @param uses the assumptions that may be off
     * @param result the result of a store
     * @return the estimate, its drivers the strongest first
     * @throws Refused as {@code result} throws for the likely values
     */
    public static <Q extends Quantity<Q>> Estimate<Q> of(
            Assumptions assumptions, List<Use> uses, Function<Assumptions, Amount<Q>> result) {
        Objects.requireNonNull(assumptions, "assumptions");
        Objects.requireNonNull(uses, "uses");
        Objects.requireNonNull(result, "result");
        Amount<Q> likely = result.apply(assumptions);
        List<Step> steps = steps(assumptions, varied(assumptions, uses));
        int n = steps.size();
        double at = likely.si();
        double[] low = new double[n];
        double[] high = new double[n];
        boolean factors = at > 0;
        for (int i = 0; i < n; i++) {
            low[i] = result.apply(assumptions.withAll(steps.get(i).low())).si();
            high[i] = result.apply(assumptions.withAll(steps.get(i).high())).si();
            factors &= low[i] > 0 && high[i] > 0;
        }
        double down = 0;
        double up = 0;
        double[] widths = new double[n];
        for (int i = 0; i < n; i++) {
            // Both ends may lie on the same side.
            double below = shift(at, Math.min(at, Math.min(low[i], high[i])), factors);
            double above = shift(at, Math.max(at, Math.max(low[i], high[i])), factors);
            down += below * below;
            up += above * above;
            widths[i] = below * below + above * above;
        }
        double all = down + up;
        Map<Assumption, Double> shares = new LinkedHashMap<>();
        for (int i = 0; i < n; i++) {
            if (widths[i] > 0) {
                shares.merge(steps.get(i).row(), widths[i] / all, Double::sum);
            }
        }
        List<Estimate.Driver> drivers = new ArrayList<>(shares.size());
        shares.forEach((row, share) -> drivers.add(new Estimate.Driver(row, share)));
        drivers.sort(Comparator.comparingDouble(Estimate.Driver::share).reversed());
        return Estimate.of(
                likely, moved(likely, -Math.sqrt(down), factors), moved(likely, Math.sqrt(up), factors), drivers);
    }

    private static List<Assumption> varied(Assumptions assumptions, List<Use> uses) {
        Map<String, Assumption> byKey = new LinkedHashMap<>();
        for (Use use : uses) {
            for (String id : use.ids()) {
                assumptions
                        .find(id, use.scope())
                        .filter(one -> one.role() == Role.PHYSICAL
                                && (!one.leans().isEmpty() || isVaried(assumptions.overMakings(one))))
                        .ifPresent(one -> byKey.put(one.key(), one));
            }
        }
        return List.copyOf(byKey.values());
    }

    private static boolean isVaried(Assumption wide) {
        return wide.low() < wide.high();
    }

    /** What is moved at once: an assumption, to its 5 % and its 95 % point, and the measured values that go with it. */
    private record Step(Assumption row, List<Assumption> low, List<Assumption> high) {}

    private static List<Step> steps(Assumptions store, List<Assumption> varied) {
        List<Step> steps = new ArrayList<>(varied.size());
        for (Assumption one : varied) {
            Assumption known = store.byItself(one, varied::contains);
            List<Assumption> low = new ArrayList<>();
            List<Assumption> high = new ArrayList<>();
            for (Assumption other : varied) {
                for (Assumption.Lean lean : other.leans()) {
                    if (store.leanedOn(lean).filter(one::equals).isPresent()) {
                        low.add(moved(other, lean.by(off(one, known.low()))));
                        high.add(moved(other, lean.by(off(one, known.high()))));
                    }
                }
            }
            Assumption wide = low.isEmpty() ? store.overMakings(known) : known;
            low.add(one.given(one.scope(), wide.low()));
            high.add(one.given(one.scope(), wide.high()));
            steps.add(new Step(one, low, high));
            double half = store.makingHalf(one);
            if (low.size() > 1 && half > 0) {
                steps.add(new Step(one, List.of(moved(one, -half)), List.of(moved(one, half))));
            }
        }
        return steps;
    }

    private static double off(Assumption row, double value) {
        return row.shape().scaled(value) - row.shape().scaled(row.likely());
    }

    private static Assumption moved(Assumption row, double by) {
        return row.given(row.scope(), row.at(row.shape().scaled(row.likely()) + by));
    }

    private static double shift(double from, double to, boolean factors) {
        return factors ? Math.log(to / from) : to - from;
    }

    private static <Q extends Quantity<Q>> Amount<Q> moved(Amount<Q> likely, double by, boolean factors) {
        if (by == 0) {
            return likely;
        }
        double si = factors ? likely.si() * Math.exp(by) : likely.si() + by;
        Kind<Q> kind = likely.kind();
        return kind.ofSi(Math.min(kind.highestSi(), Math.max(kind.lowestSi(), si)))
                .to(likely.getUnit());
    }
}
