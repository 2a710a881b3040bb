package org.papermath.record;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.Comparator;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.apache.commons.statistics.distribution.ChiSquaredDistribution;
import org.apache.commons.statistics.distribution.FDistribution;
import org.apache.commons.statistics.distribution.TDistribution;
import org.papermath.drying.Dryer;
import org.papermath.evidence.Assumption;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Basis;
import org.papermath.evidence.Notice;
import org.papermath.evidence.Role;
import org.papermath.evidence.Scope;
import org.papermath.evidence.Source;
import org.papermath.fibre.Fibre;
import org.papermath.numeric.Normal;
import org.papermath.quantity.PapermathException;
import org.papermath.quantity.Units;

/**
 * What the readings of batches show about the assumptions: a store with values measured here in place of those of the
 * table, and an account of every reading. Immutable.
 *
 * <pre>{@code
 * BatchRecord sheet = BatchRecord.builder("one sheet weighed wet and dry", LocalDate.of(2026, 3, 14))
 *         .vat("tub")
 *         .add(new Measurement.WeighedSheet(
 *                 Reading.of(grams(62), grams(0.5)), Optional.empty(), Reading.of(grams(8.1), grams(0.1)),
 *                 Reading.of(mm(310), mm(1)), Reading.of(mm(240), mm(1))))
 *         .build();
 * Calibration found = Calibration.of(Assumptions.standard(), List.of(sheet), List.of());
 * found.assumptions().amount("web.solids-couched", Scope.at("tub"), Kinds.SOLIDS); // 0.1306
 * }</pre>
 *
 * <p>Each reading goes through the closed form of its model ({@link #table()}), in the scope it holds for: a fibre or a
 * blend in a beater, a vat, a press, a recipe in a dryer. Several readings of one assumption are joined on the scale of
 * its distribution (as it is, as a logarithm, as log odds) by the weights of their errors,
 * {@code x = sum(x_i/s_i²)/sum(1/s_i²)}, {@code s² = 1/sum(1/s_i²)}. Where they lie further apart than chance would
 * bring them once in twenty times ({@code chi² = sum((x_i - x)²/s_i²)}, n − 1 degrees of freedom) the band is widened
 * by {@code B = sqrt(chi²/(n - 1))}; where B is above {@value #MOST_RATIO} they cannot be of one thing and none is
 * taken. Where the records name their lots ({@link BatchRecord#fibreLots()}) and the makings of one lot lie further from
 * those of another than chance would bring them once in a hundred times, a notice says so ({@code calibration.lots-differ}).
 *
 * <p>Only physical assumptions are calibrated, never habits and limits. A reading less sure than what is known without
 * it, by difference and on the scale of the distribution, changes nothing. A value measured before in the same scope
 * is replaced, not joined: give all batches that are to count.
 *
 * @see CalibratingDay
 * @source weighted mean and ratio of Birge, Physical Review 40, 1932, recalled, not looked up
 */
public final class Calibration {
    private static final double CHANCE = 0.05;
    /** Readings that scatter this many times as far as their errors are of different things. */
    private static final double MOST_RATIO = 3;

    /** What moves a value by less than this part of its band does not matter to it. */
    static final double LEAST_LEAN = 0.05;

    private static final int LEAST_FOR_DRIFT = 5;
    private static final double CHANCE_OF_DRIFT = 0.01;
    /** Makings beyond one of each lot, without which nobody can say how far makings of one lot lie apart. */
    private static final int LEAST_WITHIN_LOTS = 3;
    /** Keeps shares off 0 and 1, where odds end. */
    private static final double EDGE = 1e-9;

    private final Assumptions assumptions;
    private final List<Change> changes;
    private final List<Unused> unused;
    private final List<Notice> notices;

    /** An assumption that was changed. */
    public sealed interface Change permits FoundChange {
        /** {@return what was taken without the readings; empty if there was nothing} */
        Optional<Assumption> before();

        /** {@return what is taken now} */
        Assumption after();

        /** {@return the batches it is from, by name and date} */
        List<String> from();
    }

    private record FoundChange(Optional<Assumption> before, Assumption after, List<String> from) implements Change {
        /** Returns for example {@code press.factor[@big press]: 1.1 (0.9–1.3) → 1.21 (1.12–1.31) 1, from …}. */
        @Override
        public String toString() {
            return after.key() + ": " + before.map(Calibration::band).orElse("nothing") + " → " + band(after)
                    + (after.unit().equals("1") ? "" : " " + after.unit()) + ", from " + String.join("; ", from);
        }
    }

    /** A reading that did not calibrate an assumption. */
    public sealed interface Unused permits FoundUnused {
        /** {@return the batch, by name and date} */
        String record();

        /** {@return the reading} */
        Measurement reading();

        /** {@return the assumptions it might have calibrated; empty if there are none} */
        List<String> ids();

        /** {@return why it did not} */
        Notice why();
    }

    private record FoundUnused(String record, Measurement reading, List<String> ids, Notice why) implements Unused {
        @Override
        public String toString() {
            return record + (ids.isEmpty() ? "" : ", for " + String.join(", ", ids)) + ": " + why.text();
        }
    }

    /** A row of the table of closed forms. */
    public sealed interface Row permits SetRow {
        /** {@return the assumptions it calibrates} */
        List<String> ids();

        /** {@return the reading it takes} */
        String reading();

        /** {@return what the batch has to say besides} */
        String needs();

        /** {@return what the values hold for} */
        String scope();

        /** {@return the closed form, in words or signs} */
        String form();
    }

    record SetRow(List<String> ids, String reading, String needs, String scope, String form) implements Row {}

    /** What the readings of one making say together. */
    private record Within(double mean, double spread, double chi, int free, double ratio) {
        static Within of(List<Point> readings) {
            Assumption pattern = readings.get(0).value();
            double sum = 0;
            double weights = 0;
            for (Point point : readings) {
                double weight = 1 / Run.square(Run.spread(point.value()));
                sum += weight * Run.scaled(point.value().likely(), pattern);
                weights += weight;
            }
            double mean = sum / weights;
            double chi = 0;
            for (Point point : readings) {
                chi += Run.square((Run.scaled(point.value().likely(), pattern) - mean) / Run.spread(point.value()));
            }
            int free = readings.size() - 1;
            return new Within(mean, Math.sqrt(1 / weights), chi, free, free == 0 ? 1 : Math.sqrt(chi / free));
        }

        boolean isMoreThanChance() {
            return free > 0 && ChiSquaredDistribution.of(free).survivalProbability(chi) < CHANCE;
        }

        double error() {
            return isMoreThanChance() ? spread * ratio : spread;
        }
    }

    /** What one use of a closed form gave. */
    private record Point(Assumption value, List<ClosedForms.Seen> seen) {}

    private Calibration(Assumptions assumptions, List<Change> changes, List<Unused> unused, List<Notice> notices) {
        this.assumptions = assumptions;
        this.changes = List.copyOf(changes);
        this.unused = List.copyOf(unused);
        this.notices = List.copyOf(notices);
    }

    /**
     * Calibrates by the readings of batches.
     *
     * @param assumptions what is taken without them
     * @param records the batches that are to count, in any order
     * @param dryers the dryers the batches name, for readings that ask what kind a dryer is
     * @return what was found
     */
    public static Calibration of(Assumptions assumptions, List<BatchRecord> records, List<Dryer> dryers) {
        Objects.requireNonNull(assumptions, "assumptions");
        Objects.requireNonNull(records, "records");
        Objects.requireNonNull(dryers, "dryers");
        return new Run(assumptions, records, dryers).done();
    }

    /**
     * Returns every closed form: what it calibrates, from which reading, and what else it asks for.
     *
     * @return an unmodifiable list, in the order they are used
     */
    public static List<Row> table() {
        return ClosedForms.TABLE.stream().map(ClosedForms.Rule::row).toList();
    }

    /**
     * Returns the store with what was measured.
     *
     * @return the assumptions
     */
    public Assumptions assumptions() {
        return assumptions;
    }

    /**
     * Returns what was changed.
     *
     * @return an unmodifiable list, one entry for each assumption and scope
     */
    public List<Change> changes() {
        return changes;
    }

    /**
     * Returns the readings that were not used, or not fully, and why.
     *
     * @return an unmodifiable list
     */
    public List<Unused> unused() {
        return unused;
    }

    /**
     * Returns what the values should not be used without: readings that disagree, values far from those expected.
     *
     * @return an unmodifiable list
     */
    public List<Notice> notices() {
        return notices;
    }

    @Override
    public String toString() {
        return changes.size() + (changes.size() == 1 ? " assumption" : " assumptions") + " measured, " + unused.size()
                + (unused.size() == 1 ? " reading" : " readings") + " unused";
    }

    /**
     * How a value goes with another.
     *
     * @param low the value, on its scale, with the other at its 5 % point
     * @param at the value with the other as it stands
     * @param high the value with the other at its 95 % point
     */
    static Assumption.Lean lean(Assumption other, double low, double at, double high) {
        double middle = other.shape().scaled(other.likely());
        double down = middle - other.shape().scaled(other.low());
        double up = other.shape().scaled(other.high()) - middle;
        double below = down > 0 ? (at - low) / down : (high - at) / up;
        return new Assumption.Lean(other.id(), other.scope(), below, up > 0 ? (high - at) / up : below);
    }

    static String band(Assumption one) {
        return Units.fourDigits(one.likely())
                + (one.low() < one.high()
                        ? " (" + Units.fourDigits(one.low()) + "–" + Units.fourDigits(one.high()) + ")"
                        : "");
    }

    /** One pass over the table. */
    private static final class Run {
        private final Assumptions before;
        private final List<Dryer> dryers;
        private final List<ClosedForms.Seen> all = new ArrayList<>();
        private final Map<String, List<Point>> points = new LinkedHashMap<>();
        /** The same as they are joined. */
        private final Map<String, List<Point>> together = new LinkedHashMap<>();

        private final Map<String, Change> changes = new LinkedHashMap<>();
        private final Map<String, List<Assumption.Lean>> leans = new LinkedHashMap<>();
        private final Map<String, List<Unused>> unusedByKey = new LinkedHashMap<>();
        private final List<Unused> unused = new ArrayList<>();
        private final Map<String, List<Notice>> notices = new LinkedHashMap<>();
        private final Set<Measurement> used = Collections.newSetFromMap(new IdentityHashMap<>());
        private Assumptions store;

        Run(Assumptions before, List<BatchRecord> records, List<Dryer> dryers) {
            this.before = before;
            this.store = before;
            this.dryers = List.copyOf(dryers);
            for (BatchRecord record : records) {
                record.measurements().forEach(reading -> all.add(new ClosedForms.Seen(record, reading)));
            }
        }

        Calibration done() {
            ClosedForms.TABLE.forEach(this::apply);
            unusedByKey.values().forEach(unused::addAll);
            unused.forEach(one -> used.add(one.reading()));
            for (ClosedForms.Seen one : all) {
                if (!used.contains(one.reading())) {
                    unused.add(new FoundUnused(
                            one.name(),
                            one.reading(),
                            List.of(),
                            Notice.note(
                                    "calibration.no-closed-form",
                                    "It is kept for the record; by itself, or with the rest of"
                                            + " this batch, it calibrates no assumption.")));
                }
            }
            return new Calibration(
                    store,
                    List.copyOf(changes.values()),
                    unused,
                    notices.values().stream().flatMap(List::stream).toList());
        }

        private void apply(ClosedForms.Rule rule) {
            Map<Object, List<ClosedForms.Seen>> groups = new LinkedHashMap<>();
            for (ClosedForms.Seen one : all) {
                if (rule.takes().stream().anyMatch(sort -> sort.isInstance(one.reading()))) {
                    rule.key()
                            .of(one)
                            .ifPresent(key -> groups.computeIfAbsent(key, k -> new ArrayList<>())
                                    .add(one));
                }
            }
            Set<String> moved = new LinkedHashSet<>();
            for (List<ClosedForms.Seen> group : groups.values()) {
                Set<Assumption> heard = Collections.newSetFromMap(new IdentityHashMap<>());
                Assumptions listening = store.heardBy(heard::add);
                ClosedForms.Case asked = new ClosedForms.Case(listening, store, group, dryers);
                try {
                    List<Assumption> found = rule.form().apply(asked).beyond(listening).stream()
                            .filter(one -> rule.row().ids().contains(one.id()) && one.role() == Role.PHYSICAL)
                            .toList();
                    Set<String> told = found.stream().map(Assumption::id).collect(Collectors.toSet());
                    for (Assumption one : found) {
                        points.computeIfAbsent(one.key(), key -> new ArrayList<>())
                                .add(new Point(one, group));
                        moved.add(one.key());
                        if (!leans.containsKey(one.key())) {
                            leans.put(one.key(), leans(rule, group, one, told, heard));
                        }
                    }
                    group.forEach(seen -> used.add(seen.reading()));
                    used.addAll(asked.companions());
                    notices.computeIfAbsent(rule.row().reading(), reading -> new ArrayList<>())
                            .addAll(asked.notices());
                } catch (PapermathException refusal) {
                    group.forEach(seen -> unused.add(new FoundUnused(
                            seen.name(), seen.reading(), rule.row().ids(), notice(refusal))));
                }
            }
            // What goes with others of the same readings after those.
            moved.stream()
                    .sorted(Comparator.comparingInt(key -> Objects.requireNonNull(points.get(key))
                            .get(0)
                            .value()
                            .leans()
                            .size()))
                    .forEach(this::join);
            // Once for all that is joined; what was rejected again goes with its readings.
            store = before.withAll(changes.values().stream().map(Change::after).toList());
        }

        /**
         * What a value goes with: others told by the same readings, and the assumptions its closed form had to take as they
         * stand, moved one by one.
         */
        private List<Assumption.Lean> leans(
                ClosedForms.Rule rule,
                List<ClosedForms.Seen> group,
                Assumption found,
                Set<String> told,
                Set<Assumption> heard) {
            List<Assumption.Lean> list = new ArrayList<>(found.leans());
            for (Assumption other : heard) {
                boolean varied = other.role() == Role.PHYSICAL && other.low() < other.high();
                if (varied && !told.contains(other.id())) {
                    double low = withOther(rule, group, found, other, other.low());
                    double high = withOther(rule, group, found, other, other.high());
                    if (Math.abs(high - low) > LEAST_LEAN * 2 * Normal.FIVE_PERCENT_POINT * spread(found)) {
                        list.add(lean(other, low, scaled(found.likely(), found), high));
                    }
                }
            }
            list.sort(Comparator.comparing(Assumption.Lean::id)
                    .thenComparing(lean -> lean.scope().toString()));
            return list;
        }

        /** What a closed form gives with another assumption at another value, on its scale; not a number where it has none. */
        private double withOther(
                ClosedForms.Rule rule, List<ClosedForms.Seen> group, Assumption found, Assumption other, double value) {
            Assumptions there =
                    store.with(other.with(other.scope(), value, value, value, other.basis(), other.source()));
            try {
                return rule.form().apply(new ClosedForms.Case(there, store, group, dryers)).beyond(there).stream()
                        .filter(one -> one.key().equals(found.key()))
                        .mapToDouble(one -> scaled(one.likely(), one))
                        .findFirst()
                        .orElse(Double.NaN);
            } catch (PapermathException refused) {
                return Double.NaN;
            }
        }

        private static Notice notice(PapermathException refusal) {
            List<Object> named = new ArrayList<>();
            refusal.arguments().forEach((name, value) -> {
                named.add(name);
                named.add(value);
            });
            return Notice.note(refusal.code(), Objects.requireNonNull(refusal.getMessage()), named.toArray());
        }

        private void join(String key) {
            List<Point> readings = Objects.requireNonNull(points.get(key)).stream()
                    .map(this::atWhatOthersAre)
                    .toList();
            together.put(key, readings);
            Assumption pattern = readings.get(0).value();
            Set<String> from = new LinkedHashSet<>();
            readings.forEach(point -> point.seen().forEach(seen -> from.add(seen.name())));
            List<Notice> heard = new ArrayList<>();
            notices.put(key, heard);
            unusedByKey.remove(key);
            changes.remove(Assumptions.makingKey(pattern));
            Optional<Assumption> making = before.makingOf(pattern).map(this::unlearnt);
            Map<Set<BatchRecord>, List<Point>> byMaking = byMaking(readings, making.isPresent());
            Makings.Said[] said = new Makings.Said[byMaking.size()];
            int at = 0;
            for (Map.Entry<Set<BatchRecord>, List<Point>> one : byMaking.entrySet()) {
                Within within = Within.of(one.getValue());
                if (within.ratio > MOST_RATIO) {
                    reject(key, readings, ofDifferentThings(key, one.getValue().size(), within.ratio));
                    return;
                }
                if (within.isMoreThanChance()) {
                    heard.add(Notice.warning(
                            "calibration.readings-disagree",
                            key + ": the " + one.getValue().size() + " readings lie "
                                    + Units.fourDigits(within.ratio)
                                    + " times as far apart as their errors allow; the band is widened as much.",
                            "assumption",
                            key,
                            "readings",
                            one.getValue().size(),
                            "ratio",
                            within.ratio));
                }
                said[at++] = new Makings.Said(
                        within.mean, within.error(), Math.max(1, one.getKey().size()));
            }
            double mean = said[0].value();
            double spread = said[0].error();
            double readError = 1
                    / Math.sqrt(Arrays.stream(said)
                            .mapToDouble(one -> 1 / square(one.error()))
                            .sum());
            if (making.isPresent()) {
                Makings makings = Makings.of(said, prior(making.get()));
                int slips = slips(key, byMaking, makings, heard);
                double ratio = apart(said, makings, making.get());
                if (ratio > MOST_RATIO || slips * 3 > said.length) {
                    reject(key, readings, ofDifferentThings(key, readings.size(), ratio));
                    return;
                }
                mean = makings.mean();
                spread = makings.error();
                drift(key, byMaking, said, makings, heard);
                lots(key, pattern, byMaking, said, makings, heard);
                learn(pattern, making.get(), makings, said.length, from);
            }
            Source source = new Source("measured here: " + String.join("; ", from));
            Assumption after = readings.size() == 1 && making.isEmpty()
                    ? pattern.with(
                            pattern.scope(),
                            pattern.likely(),
                            pattern.low(),
                            pattern.high(),
                            Basis.MEASURED_HERE,
                            source)
                    : of(pattern, readings.size() == 1 ? pattern.likely() : pattern.at(mean), mean, spread, source);
            Optional<Assumption> old = before.find(pattern.id(), pattern.scope());
            if (old.isPresent()
                    && old.get().low() < old.get().high()
                    && old.get().basis() != Basis.GIVEN) {
                Assumption known = old.get();
                // A small share may be surer by difference and yet less sure by odds; that is no loss. Nor does a
                // reading
                // say less for what the next making may differ by.
                Assumption read = readings.size() == 1 ? pattern : of(pattern, after.likely(), mean, readError, source);
                if (spread(read) > spread(known) * (1 + 1e-9)
                        && read.high() - read.low() > (known.high() - known.low()) * (1 + 1e-9)) {
                    reject(
                            key,
                            readings,
                            Notice.note(
                                    "calibration.less-sure",
                                    key + ": the readings leave " + band(read) + ", less sure than the " + band(known)
                                            + " known without them; that is kept. Measure more surely, or more often.",
                                    "assumption",
                                    key,
                                    "found",
                                    band(read),
                                    "known",
                                    band(known)));
                    return;
                }
                if (after.likely() < known.low() || after.likely() > known.high()) {
                    heard.add(Notice.note(
                            "calibration.unexpected",
                            key + ": measured as " + Units.fourDigits(after.likely()) + ", outside the " + band(known)
                                    + " taken until now. Look at the readings once more.",
                            "assumption",
                            key,
                            "found",
                            after.likely(),
                            "known",
                            band(known)));
                }
            }
            Assumption leaning = after.leaning(leans.getOrDefault(key, List.of()).stream()
                    .map(this::onWhatIsKept)
                    .toList());
            changes.put(key, new FoundChange(old, leaning, List.copyOf(from)));
        }

        /**
         * A value that was found together with others, where those are as all makings have them, not as its own readings alone
         * do.
         */
        private Point atWhatOthersAre(Point point) {
            Assumption value = point.value();
            double by = 0;
            for (Assumption.Lean lean : value.leans()) {
                Assumption kept = kept(lean).orElse(null);
                for (Point other : together.getOrDefault(lean.id() + lean.scope(), List.of())) {
                    if (other.seen() == point.seen() && kept != null) {
                        by += lean.by(scaled(kept.likely(), kept)
                                - scaled(other.value().likely(), other.value()));
                    }
                }
            }
            if (by == 0) {
                return point;
            }
            double likely = value.at(scaled(value.likely(), value) + by);
            return new Point(
                    value.with(
                                    value.scope(),
                                    likely,
                                    Math.min(likely, value.at(scaled(value.low(), value) + by)),
                                    Math.max(likely, value.at(scaled(value.high(), value) + by)),
                                    value.basis(),
                                    value.source())
                            .leaning(value.leans()),
                    point.seen());
        }

        /** What stands in the end for an assumption a value goes with. */
        private Optional<Assumption> kept(Assumption.Lean lean) {
            Change change = changes.get(lean.id() + lean.scope());
            return change == null ? before.find(lean.id(), lean.scope()) : Optional.of(change.after());
        }

        private Assumption.Lean onWhatIsKept(Assumption.Lean lean) {
            return kept(lean)
                    .map(row -> new Assumption.Lean(row.id(), row.scope(), lean.below(), lean.above()))
                    .orElse(lean);
        }

        private static Assumption of(Assumption pattern, double likely, double mean, double error, Source source) {
            return pattern.with(
                    pattern.scope(),
                    likely,
                    Math.min(likely, pattern.at(mean - Normal.FIVE_PERCENT_POINT * error)),
                    Math.max(likely, pattern.at(mean + Normal.FIVE_PERCENT_POINT * error)),
                    Basis.MEASURED_HERE,
                    source);
        }

        /** The readings by the makings they are from; all together where nothing is known of how makings differ. */
        private static Map<Set<BatchRecord>, List<Point>> byMaking(List<Point> readings, boolean apart) {
            Map<Set<BatchRecord>, List<Point>> groups = new LinkedHashMap<>();
            for (Point point : readings) {
                Set<BatchRecord> makings = Collections.newSetFromMap(new IdentityHashMap<>());
                if (apart) {
                    point.seen().forEach(seen -> makings.add(seen.record()));
                }
                groups.computeIfAbsent(makings, one -> new ArrayList<>()).add(point);
            }
            return groups;
        }

        /** What was known before any making was recorded here, so that no making counts twice. */
        private Assumption unlearnt(Assumption making) {
            return making.basis() == Basis.MEASURED_HERE ? before.get(making.id(), Scope.GENERAL) : making;
        }

        private static Makings.Prior prior(Assumption making) {
            double unit = 1 / Normal.FIVE_PERCENT_POINT;
            return new Makings.Prior(making.likely() * unit, making.low() * unit, making.high() * unit);
        }

        private static Notice ofDifferentThings(String key, int readings, double ratio) {
            return Notice.warning(
                    "calibration.readings-of-different-things",
                    key + ": the " + readings + " readings lie " + Units.fourDigits(ratio)
                            + " times as far apart as their errors allow; they cannot be of one thing, and none is"
                            + " taken. Look for a slip, or for what differed between the batches.",
                    "assumption",
                    key,
                    "readings",
                    readings,
                    "ratio",
                    ratio);
        }

        /** How many makings lie so far off the others that they are taken for slips; each is named. */
        private static int slips(
                String key, Map<Set<BatchRecord>, List<Point>> byMaking, Makings makings, List<Notice> heard) {
            int slips = 0;
            int at = 0;
            for (List<Point> points : byMaking.values()) {
                if (makings.sound(at++) < 0.5) {
                    slips++;
                    String record = points.get(0).seen().get(0).name();
                    double found = points.get(0).value().likely();
                    heard.add(Notice.warning(
                            "calibration.making-apart",
                            key + ": " + record + " says " + Units.fourDigits(found)
                                    + ", so far from the other makings that it is hardly counted. Look for a slip, or"
                                    + " for what was different that day.",
                            "assumption",
                            key,
                            "record",
                            record,
                            "found",
                            found));
                }
            }
            return slips;
        }

        /** How many times as far the sound makings lie apart as the most they are known to differ by. */
        private static double apart(Makings.Said[] said, Makings makings, Assumption making) {
            double tau = making.high() / Normal.FIVE_PERCENT_POINT;
            double chi = 0;
            int free = -1;
            for (int i = 0; i < said.length; i++) {
                if (makings.sound(i) >= 0.5) {
                    chi += square(said[i].value() - makings.mean()) / said[i].variance(tau);
                    free++;
                }
            }
            return free < 1 ? 0 : Math.sqrt(chi / free);
        }

        /** Says where the makings move with time by more than chance, rather than scatter about one mean. */
        private static void drift(
                String key,
                Map<Set<BatchRecord>, List<Point>> byMaking,
                Makings.Said[] said,
                Makings makings,
                List<Notice> heard) {
            if (said.length < LEAST_FOR_DRIFT) {
                return;
            }
            double[] days = byMaking.keySet().stream()
                    .mapToDouble(records -> records.stream()
                            .mapToLong(record -> record.date().toEpochDay())
                            .average()
                            .orElse(0))
                    .toArray();
            double weights = 0;
            double middle = 0;
            double mean = 0;
            double[] weight = new double[said.length];
            for (int i = 0; i < said.length; i++) {
                weight[i] = makings.sound(i) / said[i].variance(makings.scatter());
                weights += weight[i];
                middle += weight[i] * days[i];
                mean += weight[i] * said[i].value();
            }
            middle /= weights;
            mean /= weights;
            double xx = 0;
            double xy = 0;
            for (int i = 0; i < said.length; i++) {
                xx += weight[i] * square(days[i] - middle);
                xy += weight[i] * (days[i] - middle) * (said[i].value() - mean);
            }
            double rest = 0;
            for (int i = 0; i < said.length; i++) {
                rest += weight[i] * square(said[i].value() - mean - xy / xx * (days[i] - middle));
            }
            double t = xy / xx / Math.sqrt(rest / (said.length - 2) / xx);
            if (xx > 0 && 2 * TDistribution.of(said.length - 2).survivalProbability(Math.abs(t)) < CHANCE_OF_DRIFT) {
                heard.add(Notice.warning(
                        "calibration.drift",
                        key + ": the " + said.length + " makings grow " + (t > 0 ? "higher" : "lower")
                                + " with time by more than chance. Look for what changed, such as the lot, the roll or"
                                + " the season, and leave out the makings before it.",
                        "assumption",
                        key,
                        "makings",
                        said.length,
                        "rising",
                        t > 0));
            }
        }

        /**
         * Says where the makings of one lot lie further from those of another than makings of one lot lie apart: one-way
         * analysis of variance, each making weighed by its error and the scatter of makings.
         */
        private static void lots(
                String key,
                Assumption pattern,
                Map<Set<BatchRecord>, List<Point>> byMaking,
                Makings.Said[] said,
                Makings makings,
                List<Notice> heard) {
            Map<String, Lot> lots = new LinkedHashMap<>();
            int count = 0;
            int at = 0;
            for (Set<BatchRecord> records : byMaking.keySet()) {
                Optional<String> lot = lotOf(records, pattern);
                int i = at++;
                if (lot.isPresent() && makings.sound(i) >= 0.5) {
                    lots.computeIfAbsent(lot.get(), name -> new Lot())
                            .add(said[i].value(), 1 / said[i].variance(makings.scatter()));
                    count++;
                }
            }
            int free = count - lots.size();
            if (lots.size() < 2 || free < LEAST_WITHIN_LOTS) {
                return;
            }
            Lot all = new Lot();
            double within = 0;
            for (Lot lot : lots.values()) {
                within += lot.apart();
                all.addAll(lot);
            }
            double between = all.apart() - within;
            int groups = lots.size() - 1;
            double ratio = between / groups / (within / free);
            if (!(ratio > 0) || FDistribution.of(groups, free).survivalProbability(ratio) >= CHANCE_OF_DRIFT) {
                return;
            }
            List<String> told = new ArrayList<>();
            double least = Double.POSITIVE_INFINITY;
            double most = Double.NEGATIVE_INFINITY;
            for (Map.Entry<String, Lot> one : lots.entrySet()) {
                double mean = pattern.at(one.getValue().mean());
                least = Math.min(least, mean);
                most = Math.max(most, mean);
                told.add(one.getKey() + " " + Units.fourDigits(mean));
            }
            heard.add(Notice.warning(
                    "calibration.lots-differ",
                    key + ": the lots differ by more than chance (" + String.join(", ", told)
                            + "); the value taken lies between them. Calibrate with the batches of the lot in use alone.",
                    "assumption",
                    key,
                    "lots",
                    lots.size(),
                    "apart",
                    most - least));
        }

        /** The lot of the fibre a value is of, or of all fibres where it is of none alone; empty where it is not named. */
        private static Optional<String> lotOf(Set<BatchRecord> records, Assumption pattern) {
            Set<String> names = new LinkedHashSet<>();
            for (BatchRecord record : records) {
                Map<Fibre, String> lots = record.fibreLots();
                Optional<String> own = lots.keySet().stream()
                        .filter(fibre ->
                                fibre.scope().subject().equals(pattern.scope().subject()))
                        .map(lots::get)
                        .findFirst();
                boolean all = !lots.isEmpty()
                        && record.furnish()
                                .map(furnish -> lots.keySet().containsAll(furnish.fibres()))
                                .orElse(false);
                if (own.isPresent()) {
                    names.add(own.get());
                } else if (all) {
                    names.add(lots.values().stream().sorted().collect(Collectors.joining(" + ")));
                } else {
                    return Optional.empty();
                }
            }
            return names.size() == 1 ? Optional.of(names.iterator().next()) : Optional.empty();
        }

        /** Weighted sums over the makings of a lot. */
        private static final class Lot {
            private double weights;
            private double sum;
            private double squares;

            void add(double value, double weight) {
                weights += weight;
                sum += weight * value;
                squares += weight * value * value;
            }

            void addAll(Lot other) {
                weights += other.weights;
                sum += other.sum;
                squares += other.squares;
            }

            double mean() {
                return sum / weights;
            }

            /** Weighted squares about the mean. */
            double apart() {
                return Math.max(0, squares - sum * sum / weights);
            }
        }

        /** Takes in what several makings say of how far one lies from the next. */
        private void learn(Assumption pattern, Assumption prior, Makings makings, int count, Set<String> from) {
            if (count < 2) {
                return;
            }
            double unit = Normal.FIVE_PERCENT_POINT;
            Assumption after = prior.with(
                    pattern.scope(),
                    makings.scatter() * unit,
                    makings.scatterLow() * unit,
                    makings.scatterHigh() * unit,
                    Basis.MEASURED_HERE,
                    new Source("measured here: " + String.join("; ", from)));
            changes.put(
                    Assumptions.makingKey(pattern),
                    new FoundChange(before.makingOf(pattern), after, List.copyOf(from)));
        }

        private void reject(String key, List<Point> readings, Notice why) {
            List<Unused> list = new ArrayList<>();
            for (Point point : readings) {
                point.seen()
                        .forEach(seen -> list.add(new FoundUnused(
                                seen.name(),
                                seen.reading(),
                                List.of(point.value().id()),
                                why)));
            }
            unusedByKey.put(key, list);
            changes.remove(key);
            changes.remove(Assumptions.makingKey(readings.get(0).value()));
        }

        private static double spread(Assumption one) {
            double width = scaled(one.high(), one) - scaled(one.low(), one);
            return Math.max(
                    width / (2 * Normal.FIVE_PERCENT_POINT), 1e-9 * Math.max(1, Math.abs(scaled(one.likely(), one))));
        }

        private static double scaled(double value, Assumption of) {
            return of.shape()
                    .scaled(
                            switch (of.shape()) {
                                case NORMAL -> value;
                                case LOG_NORMAL -> Math.max(value, EDGE);
                                case LOGIT -> Math.min(1 - EDGE, Math.max(EDGE, value));
                            });
        }

        private static double square(double value) {
            return value * value;
        }
    }
}
