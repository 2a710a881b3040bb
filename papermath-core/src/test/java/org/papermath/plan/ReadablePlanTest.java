package org.papermath.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.lang.reflect.Modifier;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.LongFunction;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.papermath.card.MakingCard;
import org.papermath.evidence.Assumption;
import org.papermath.evidence.Estimate;
import org.papermath.order.Order;
import org.papermath.order.Studio;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;

/**
 * Whatever {@link MakingPlan#of} returns can be read to its last figure: no figure throws, none is below zero that
 * cannot be, no band of what is above zero ends at zero. What refuses, refuses in {@code of}, with a declared code.
 */
class ReadablePlanTest {
    private static final boolean ALL = Boolean.getBoolean("papermath.long");

    /** What {@code of} may refuse an order for that its builders let through. */
    private static final Set<String> DECLARED = Set.of(
            "recipe.vat-thicker-than-stock",
            "recipe.timed-sheet-too-fast",
            "piece.no-density",
            "vat.sheet-wetter-than-vat",
            "piece.too-thin",
            "plan.figure-beyond-nature",
            "plan.too-many-sheets");

    /** Signed by nature. */
    private static final Set<String> SIGNED = Set.of("playAlong", "playAcross", "seam");

    @Test
    void plausiblePlansAreRead() {
        Map<String, Integer> refused = readAll(ALL ? 20_000 : 400, AnyOrder::plausible);
        // A thickness ordered of a fibre whose density nobody knows.
        assertThat(refused.keySet()).isSubsetOf("piece.no-density");
        assertThat(refused.getOrDefault("piece.no-density", 0)).isLessThan(ALL ? 1_500 : 40);
    }

    @Test
    void extremePlansAreReadToo() {
        Map<String, Integer> refused = readAll(ALL ? 2_000 : 400, seed -> AnyOrder.extreme(1_000_000 + seed));
        assertThat(DECLARED).containsAll(refused.keySet());
    }

    private static Map<String, Integer> readAll(int count, LongFunction<AnyOrder.Job> jobs) {
        Map<String, Integer> refused = new TreeMap<>();
        LongStream.range(0, count).parallel().forEach(seed -> {
            AnyOrder.Job job = jobs.apply(seed);
            MakingPlan plan;
            try {
                plan = MakingPlan.of(job.order(), job.studio());
            } catch (Refused e) {
                synchronized (refused) {
                    refused.merge(e.code(), 1, Integer::sum);
                }
                return;
            }
            List<String> faults = new ArrayList<>();
            read(plan, "plan", new TreeSet<>(), faults);
            assertThat(faults).as("seed %d: %s", seed, job.order()).isEmpty();
            assertThat(MakingCard.of(plan).toString()).as("seed %d", seed).doesNotContain("NaN", "Infinity", "null");
            for (BatchPlan batch : plan.batches()) {
                for (Balance balance : batch.balances()) {
                    double in = balance.totalIn().si();
                    assertThat(balance.totalOut().si())
                            .as("seed %d: %s", seed, balance)
                            .isCloseTo(in, within(1e-9 * Math.max(in, 1e-6)));
                }
            }
        });
        return refused;
    }

    /** Calls every getter there is, down to the last figure. */
    private static void read(Object value, String path, Set<String> seen, List<String> faults) {
        if (value instanceof Estimate<?> estimate) {
            estimate(estimate, path, faults);
        } else if (value instanceof Amount<?> amount) {
            if (!Double.isFinite(amount.si())
                    || amount.si() < 0
                            && amount.kind() != (Object) Kinds.TEMPERATURE
                            && SIGNED.stream().noneMatch(path::contains)) {
                faults.add(path + " = " + amount);
            }
        } else if (value instanceof Iterable<?> list) {
            int i = 0;
            for (Object one : list) {
                read(one, path + "[" + i++ + "]", seen, faults);
            }
        } else if (value instanceof Map<?, ?> map) {
            map.forEach((key, one) -> read(one, path + "." + key, seen, faults));
        } else if (value instanceof Optional<?> maybe) {
            maybe.ifPresent(one -> read(one, path, seen, faults));
        } else if (value instanceof Stage<?> stage) {
            stage.optional().ifPresent(one -> read(one, path, seen, faults));
        } else if (value != null
                && value.getClass().getPackageName().equals("org.papermath.plan")
                && !(value instanceof Order)
                && !(value instanceof Studio)
                && !(value instanceof Enum)) {
            getters(value, path, seen, faults);
        }
    }

    private static void getters(Object value, String path, Set<String> seen, List<String> faults) {
        for (Method method : value.getClass().getMethods()) {
            if (method.getParameterCount() > 0
                    || Modifier.isStatic(method.getModifiers())
                    || method.getDeclaringClass() == Object.class
                    || method.getReturnType() == void.class
                    || Assumption.class == method.getReturnType()
                    // Days are drawn and placed anew for these; they have their own tests.
                    || method.getName().matches("chance|chanceOfDate|oneMore|narrowest")
                    // A builder gives itself back; there is nothing to read in it.
                    || method.getReturnType().getSimpleName().equals("Builder")) {
                continue;
            }
            String name = path + "." + method.getName();
            try {
                Object one = method.invoke(value);
                if (method.getDeclaringClass().getPackageName().equals("org.papermath.plan")
                        && !method.getName().matches("hashCode|toString|toBuilder|rest")) {
                    read(one, name, seen, faults);
                }
            } catch (InvocationTargetException e) {
                // A stage that was not done may be asked for and says so.
                if (!(e.getCause() instanceof java.util.NoSuchElementException)
                        && !(e.getCause() instanceof Refused refused
                                && refused.code().equals("schedule.too-far"))) {
                    faults.add(name + " throws " + e.getCause());
                }
            } catch (IllegalAccessException e) {
                throw new AssertionError(e);
            }
        }
    }

    private static void estimate(Estimate<?> estimate, String path, List<String> faults) {
        double low = estimate.low().si();
        double likely = estimate.likely().si();
        double high = estimate.high().si();
        boolean sound = Double.isFinite(low) && Double.isFinite(high) && low <= likely && likely <= high;
        boolean signed = SIGNED.stream().anyMatch(path::contains);
        // Shrinkage can be held back altogether; what is left over can be nothing.
        boolean reachesZero = path.matches(".*(hrink|PutBy|keptInVat|whiteWater|water|dryAgain|addOn).*");
        boolean above = signed || low > 0 || reachesZero && low == 0 || likely == 0 && low == 0;
        if (!sound || !above) {
            faults.add(path + " = " + estimate + " [" + low + ", " + likely + ", " + high + "]");
        }
    }
}
