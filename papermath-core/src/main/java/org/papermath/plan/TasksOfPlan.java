package org.papermath.plan;

import java.time.Duration;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.IntStream;
import javax.measure.Quantity;
import javax.measure.quantity.Time;
import org.jspecify.annotations.Nullable;
import org.papermath.drying.Dryer;
import org.papermath.engine.BeaterRun;
import org.papermath.engine.DryingSheets;
import org.papermath.engine.Engine;
import org.papermath.engine.FormingSheets;
import org.papermath.engine.PieceWork;
import org.papermath.engine.Posts;
import org.papermath.engine.PreparingStock;
import org.papermath.engine.Pressing;
import org.papermath.engine.StageHours;
import org.papermath.evidence.Estimate;
import org.papermath.evidence.Scope;
import org.papermath.order.OwnStep;
import org.papermath.order.OwnStep.Stage;
import org.papermath.order.Recipe;
import org.papermath.order.Studio;
import org.papermath.pulp.Additive;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Refused;
import org.papermath.schedule.Phase;
import org.papermath.schedule.Resource;
import org.papermath.schedule.Task;

/**
 * The work of a plan as tasks for a timetable: soaking, each pot, each load of the beater, each post, each filling of a
 * dryer, and what comes after. A task says how long hands, machines and waiting take, what it holds, what it waits for,
 * and how long what came before it may wait.
 */
final class TasksOfPlan {
    static final String PERSON = "person";
    private static final String BEATER = "beater";
    private static final String POT = "pot";
    private static final String VAT = "vat";
    private static final String FELTS = "felts";
    private static final String PRESS = "press";

    /** Loads of the beater, and fillings of a dryer, that may stand ready beside the one in use. */
    private static final int AHEAD = 2;

    /** Loads, posts or fillings in a row that are tasks of their own; of more, several make one task. */
    private static final int MOST_TASKS = 500;

    private static final List<Stage> STAGES = List.of(Stage.values());

    private static int at(Stage stage) {
        return STAGES.indexOf(stage);
    }

    /** What the stages of the work are called in the days. */
    private static final Map<Stage, String> WORDS = new EnumMap<>(Map.ofEntries(
            Map.entry(Stage.FIBRE, "order fibre and have it"),
            Map.entry(Stage.SOAK, "soak"),
            Map.entry(Stage.COOK, "cook and rinse"),
            Map.entry(Stage.BEAT, "beat and dose"),
            Map.entry(Stage.FORM, "form"),
            Map.entry(Stage.DRY, "dry"),
            Map.entry(Stage.SIZE, "size in the bath"),
            Map.entry(Stage.DRY_AGAIN, "dry again"),
            Map.entry(Stage.CURE, "let the size cure"),
            Map.entry(Stage.FINISH, "sort and finish"),
            Map.entry(Stage.CONDITION, "condition under weight"),
            Map.entry(Stage.PACK, "count and pack")));

    /** A step of the days: of one's own, or else a stage of the work. */
    record Step(Stage stage, @Nullable OwnStep own) {
        static Step of(Stage stage) {
            return new Step(stage, null);
        }

        static Step of(OwnStep own) {
            return new Step(own.before().or(own::after).orElseThrow(), own);
        }

        boolean isOwn() {
            return own != null;
        }

        /** Where it stands among the steps. */
        int place() {
            return own == null ? 2 * at(stage) + 1 : 2 * from(own) + 2;
        }
    }

    /** The last stage that is done before a step of one's own begins; -1 where none has to be. */
    private static int from(OwnStep step) {
        return step.after()
                .map(TasksOfPlan::at)
                .orElseGet(() -> at(step.before().orElseThrow()) - 1);
    }

    /** The first stage that waits for a step of one's own; one more than there are where none does. */
    private static int to(OwnStep step) {
        return step.before()
                .map(TasksOfPlan::at)
                .orElseGet(() -> at(step.after().orElseThrow()) + 1);
    }

    /** How far low and high lie from what is likely. */
    private record Spread(double low, double high) {
        static final Spread NONE = new Spread(1, 1);

        static <Q extends Quantity<Q>> Spread of(Estimate<Q> estimate) {
            double likely = estimate.likely().si();
            double low = estimate.low().si() / likely;
            double high = estimate.high().si() / likely;
            return likely > 0 && low > 0 && Double.isFinite(high) && low <= 1 && high >= 1
                    ? new Spread(low, high)
                    : NONE;
        }
    }

    private final PlainNumbers in;
    private final List<BatchPlan> batches;
    private final List<PiecePlan> pieces;
    private final String prefix;
    private final int priority;
    private final @Nullable LocalDateTime due;
    /** What is beaten for other orders too, by the name of the stuff. */
    private final Map<String, SharedLoads> shared;

    private final Duration longest;
    private final Map<String, Task> tasks = new LinkedHashMap<>();
    private final Map<String, Step> steps = new LinkedHashMap<>();
    /** The fillings of each dryer, in the order the sheets are formed in. */
    private final Map<String, List<Filling>> filled = new LinkedHashMap<>();
    /** Loads another order beats for this one. */
    private final List<String> beatenElsewhere = new ArrayList<>();
    /** The loads of each batch. */
    private final Map<Integer, List<String>> beaten = new LinkedHashMap<>();
    /** What was formed last: what comes next into the vat waits for it. */
    private List<String> lastFormed;
    /** What may not wait too long. */
    private final Map<String, List<After>> waits = new LinkedHashMap<>();
    /** What is not begun before something else is done, so that neither stuff nor wet sheets pile up. */
    private final Map<String, List<String>> heldBack = new LinkedHashMap<>();

    /** Whether what is not known how long it dries is left so; else it takes no time. */
    private final boolean unknown;

    /** Names of tasks begin with the prefix, to tell one order from another. */
    TasksOfPlan(
            PlainNumbers in,
            List<BatchPlan> batches,
            List<PiecePlan> pieces,
            String prefix,
            int priority,
            @Nullable LocalDateTime due,
            boolean unknown,
            List<String> before,
            Map<String, SharedLoads> shared) {
        this.shared = Map.copyOf(shared);
        lastFormed = before;
        this.in = in;
        this.batches = batches;
        this.pieces = pieces;
        this.prefix = prefix;
        this.priority = priority;
        this.due = due;
        this.unknown = unknown;
        longest = in.studio().workingTime().longestDay();
        build();
    }

    /** How much is asked of a timetable. */
    enum Strictness {
        /** Nothing is made long before it is needed, nor waits too long. */
        HELD_BACK(true, true, true),
        /** Nothing waits too long. */
        WAITS(false, true, true),
        /** Nothing is made long before it is needed, and what waits too long waits for a step of one's own. */
        HELD_BACK_BUT_FOR_STEPS(true, true, false),
        /** What waits too long waits for a step of one's own. */
        WAITS_BUT_FOR_STEPS(false, true, false),
        /** One after the other. */
        ORDER(false, false, false);

        private final boolean heldBack;
        private final boolean waits;
        private final boolean waitsForSteps;

        Strictness(boolean heldBack, boolean waits, boolean waitsForSteps) {
            this.heldBack = heldBack;
            this.waits = waits;
            this.waitsForSteps = waitsForSteps;
        }
    }

    List<Task> tasks(Strictness strictness) {
        List<Task> all = new ArrayList<>();
        tasks.forEach((name, task) -> {
            Task.Builder built = task.toBuilder();
            for (After one : waits.getOrDefault(name, List.of())) {
                if (strictness.waits && (strictness.waitsForSteps || !isParted(one.task, name))) {
                    built.after(one.task, Duration.ZERO, one.most);
                } else {
                    built.after(one.task);
                }
            }
            if (strictness.heldBack) {
                heldBack.getOrDefault(name, List.of()).stream()
                        .filter(until -> !isHeldOpen(name, until))
                        .forEach(built::after);
            }
            all.add(built.build());
        });
        return all;
    }

    private int stageOf(String task) {
        // What another order beats for this one has no step of its own here.
        return at(steps.getOrDefault(task, Step.of(Stage.BEAT)).stage());
    }

    /** Whether a step of one's own lies between two tasks. */
    private boolean isParted(String before, String after) {
        return in.order().steps().stream()
                .anyMatch(step -> stageOf(before) <= from(step) && stageOf(after) >= to(step));
    }

    /** Whether a step of one's own waits for the one and the other may wait for the step: then the one cannot wait for it. */
    private boolean isHeldOpen(String task, String until) {
        return in.order().steps().stream().anyMatch(step -> stageOf(task) <= from(step) && stageOf(until) > from(step));
    }

    /** What a task waits for, and not too long. */
    private record After(String task, Duration most) {}

    /** What the next order waits for at the vat. */
    List<String> lastFormed() {
        return lastFormed;
    }

    /** The steps there are, as they follow one another. */
    List<Step> inOrder() {
        return steps.values().stream()
                .distinct()
                .sorted(Comparator.comparingInt(Step::place))
                .toList();
    }

    /** The step each task belongs to. */
    Map<String, Step> steps() {
        return steps;
    }

    private static String words(Stage stage) {
        return Objects.requireNonNull(WORDS.get(stage));
    }

    String words(Step step) {
        OwnStep own = step.own();
        if (own != null) {
            return own.name();
        }
        return step.stage() == Stage.FORM && in.studio().press().isPresent() ? "form and press" : words(step.stage());
    }

    /** What the studio has of everything that is held. */
    static List<Resource> resources(Studio studio) {
        List<Resource> all = new ArrayList<>();
        all.add(Resource.of(PERSON, studio.people()));
        all.add(Resource.of(POT, 1));
        all.add(Resource.of(BEATER, 1));
        all.add(Resource.of(VAT, 1));
        studio.felts().ifPresent(felts -> all.add(Resource.of(FELTS, felts.count())));
        studio.press().ifPresent(press -> all.add(Resource.of(PRESS, 1)));
        for (Dryer dryer : studio.dryers()) {
            all.add(Resource.of(places(dryer), dryer.capacity()));
        }
        return all;
    }

    private static final String PLACES = "places in ";

    private static String places(Dryer dryer) {
        return PLACES + dryer.name();
    }

    /** So much more of something as one would get. */
    static Resource more(Resource one) {
        int count = one.count();
        return Resource.of(
                one.name(),
                one.name().equals(FELTS) ? count + 10 : one.name().startsWith(PLACES) ? 2 * count : count + 1);
    }

    /** What that is called. */
    static String moreWords(Resource one) {
        return one.name().equals(FELTS)
                ? "ten more felts"
                : one.name().startsWith(PLACES) ? "as many " + one.name() + " again" : "another " + one.name();
    }

    // ------------------------------------------------------------------------------------------------ the work

    private void build() {
        List<String> fibre = new ArrayList<>();
        boolean buys =
                batches.stream().anyMatch(batch -> batch.fibre().asBought().si() > 0);
        if (buys) {
            fibre.add(waiting(Stage.FIBRE, "have the fibre", "order it", seconds("schedule.delivery"), List.of()));
        }
        List<String> packed = new ArrayList<>();
        for (int b : ColourPlan.turns(in, Engine.usedRecipes(in.order()))) {
            List<String> stuff = stuff(b, fibre);
            lastFormed = form(b, stuff, lastFormed, packed);
        }
        Task.Builder pack = task("pack", packed, null)
                .phase(hands(
                                "pack",
                                Duration.ofMinutes(
                                        Math.round(seconds("schedule.finish") / 86_400 * longest.toMinutes())),
                                Spread.NONE)
                        .breakable());
        boolean last = in.order().steps().stream().noneMatch(step -> from(step) == at(Stage.PACK));
        if (due != null && last) {
            pack.dueBy(due);
        }
        add(Stage.PACK, pack);
        ownSteps();
    }

    /** Puts the steps of one's own among the stages of the work. */
    private void ownSteps() {
        List<OwnStep> own = in.order().steps();
        if (own.isEmpty()) {
            return;
        }
        Map<OwnStep, String> named = new LinkedHashMap<>();
        for (OwnStep step : own) {
            String name = step.name();
            while (tasks.containsKey(prefix + name) || named.containsValue(prefix + name)) {
                name += ", own step";
            }
            named.put(step, prefix + name);
        }
        Map<String, Task.Builder> waiting = new LinkedHashMap<>();
        tasks.forEach((name, task) -> waiting.put(name, task.toBuilder()));
        named.forEach((step, name) -> {
            Task.Builder task = Task.of(name).priority(priority);
            phases(step).forEach(task::phase);
            waiting.forEach((other, built) -> {
                if (stageOf(other) <= from(step)) {
                    task.after(other);
                }
                if (stageOf(other) >= to(step)) {
                    built.after(name);
                }
            });
            if (from(step) >= at(Stage.BEAT)) {
                beatenElsewhere.forEach(task::after);
            }
            @Nullable String before = null;
            for (OwnStep earlier : own) {
                if (earlier.equals(step)) {
                    break;
                }
                before = from(earlier) == from(step) && to(earlier) == to(step) ? named.get(earlier) : before;
            }
            if (before != null) {
                task.after(before);
            }
            own.stream()
                    .filter(other -> to(other) <= from(step))
                    .map(named::get)
                    .forEach(task::after);
            if (due != null && from(step) == at(Stage.PACK)) {
                task.dueBy(due);
            }
            tasks.put(name, task.build());
        });
        waiting.forEach((name, built) -> tasks.put(name, built.build()));
        named.forEach((step, name) -> steps.put(name, Step.of(step)));
    }

    /** Hands, and then the waiting; of working days each is as long as the longest. */
    private List<Phase> phases(OwnStep step) {
        List<Phase> phases = new ArrayList<>();
        if (step.hands().si() > 0) {
            phases.add(hands(
                    step.waits().si() > 0 ? "see to it" : step.name(),
                    time(step.hands().si()),
                    Spread.NONE));
        }
        if (step.waits().si() > 0) {
            double likely = waited(step, step.waits());
            Phase wait = Phase.waiting("wait", time(likely));
            if (step.waitsAtLeast().isPresent()) {
                wait = wait.between(
                        time(waited(step, step.waitsAtLeast().orElseThrow())),
                        time(waited(step, step.waitsAtMost().orElseThrow())));
            }
            phases.add(step.isInWorkingDays() ? wait.pausing() : wait);
        }
        return phases;
    }

    private double waited(OwnStep step, Amount<Time> time) {
        return step.isInWorkingDays() ? time.in("d") * longest.toSeconds() : time.si();
    }

    /** What is formed of shared stuff, the load it is taken from, and how old that may grow. */
    List<Overlong> sharedWaits() {
        List<Overlong> all = new ArrayList<>();
        waits.forEach((name, before) -> before.stream()
                .filter(one -> shared.values().stream()
                        .anyMatch(with -> with.of(in.order().name()).contains(one.task)))
                .forEach(one -> all.add(new Overlong(one.task, name, one.most))));
        return all;
    }

    /** Something that waits longer than it may, because of a step of one's own between. */
    record Overlong(String first, String next, Duration most) {}

    /** What has to wait for a step of one's own in between, and how long it may. */
    List<Overlong> waitsForSteps() {
        List<Overlong> all = new ArrayList<>();
        waits.forEach((name, before) -> before.stream()
                .filter(one -> isParted(one.task, name))
                .forEach(one -> all.add(new Overlong(one.task, name, one.most))));
        return all;
    }

    /** Soaks, cooks and beats for a batch, and for those that share its stuff; returns the tasks its stock waits for. */
    private List<String> stuff(int b, List<String> fibre) {
        PreparingStock stage = in.engine().stock(b);
        PreparingStock.Setting set = in.settings().stock(b);
        String name = batches.get(b).name();
        Spread hands = Spread.of(batches.get(b).workingHours());
        if (!set.isBeaten()) {
            return List.of();
        }
        StageHours hours = stage.handling(set, in.engine().likely());
        List<String> loads = new ArrayList<>();
        int at = in.beatenAt(b);
        SharedLoads with = sharedWith(b);
        if (with != null) {
            if (at == b) {
                if (with.isFirst(in.order().name())) {
                    beat(with.stuff() + ", shared", with.whole(), hours, hands, fibre, 0)
                            .forEach(with::beaten);
                } else {
                    beatenElsewhere.addAll(with.of(in.order().name()));
                }
                beaten.put(b, with.of(in.order().name()));
            }
            loads.addAll(beaten.getOrDefault(at, List.of()));
        } else if (at == b) {
            boolean dosedInBeater =
                    in.engine().beatenWith(b).length == 1 && set.runs().size() == 1 && stage.trials() == 0;
            int all = set.whole().runs().stream().mapToInt(BeaterRun::loads).sum();
            beat(name, set.whole(), hours, hands, fibre, dosedInBeater ? hours.additives() / all : 0)
                    .forEach(loads::addAll);
            beaten.put(b, loads);
            if (dosedInBeater || hours.additives() == 0) {
                return loads;
            }
        } else {
            loads.addAll(beaten.getOrDefault(at, List.of()));
        }
        if (hours.additives() == 0) {
            return loads;
        }
        String dose = "dose " + name;
        // What is shared is dosed once, when its part is there.
        double dosing = with == null ? hours.additives() : hours.additives() / Math.max(1, set.additions());
        Task.Builder task = task(dose, loads, "hands").phase(hands("dose", time(dosing), hands));
        if (stage.trials() > 0) {
            double rounds = stage.trials() * (with == null ? set.additions() : 1);
            task.phase(Phase.waiting("dry the trial swatches", time(rounds * seconds("colour.trial-drying"))));
        }
        add(Stage.BEAT, task);
        return List.of(prefix + dose);
    }

    private @Nullable SharedLoads sharedWith(int b) {
        return batches.get(b).recipe().stuff().map(shared::get).orElse(null);
    }

    /** Soaks, cooks and beats; returns the loads, run by run. */
    private List<List<String>> beat(
            String name,
            PreparingStock.Setting whole,
            StageHours hours,
            Spread hands,
            List<String> fibre,
            double dosingOfLoad) {
        String soak = waiting(Stage.SOAK, "soak " + name, "put to soak", whole.soakTime(), fibre);
        List<String> ready = new ArrayList<>(List.of(soak));
        for (int pot = 0; pot < whole.pots().size(); pot++) {
            String of = numbered("cook " + name, pot, whole.pots().size());
            add(
                    Stage.COOK,
                    task(of, List.of(soak), "hands")
                            .phase(hands("fill the pot", time(hours.pot() / 2), hands)
                                    .holding(POT, 1))
                            .phase(machine("boil", time(whole.pots().get(pot).time()))
                                    .holding(POT, 1))
                            .phase(hands("rinse", time(hours.pot() / 2), hands).holding(POT, 1)));
            ready.add(prefix + of);
        }
        int all = whole.runs().stream().mapToInt(BeaterRun::loads).sum();
        int load = 0;
        List<List<String>> runs = new ArrayList<>();
        for (BeaterRun run : whole.runs()) {
            List<String> loads = new ArrayList<>();
            runs.add(loads);
            int inOne = (run.loads() + MOST_TASKS - 1) / MOST_TASKS;
            for (int i = 0; i < run.loads(); i += inOne) {
                int count = Math.min(inOne, run.loads() - i);
                String of = numbered("beat " + name, load, all);
                load += count;
                Task.Builder one = task(of, ready, "hands")
                        .phase(hands("load the beater", time(count * hours.load() / 2), hands)
                                .holding(BEATER, 1));
                if (in.studio().beater().isPresent() && run.time() > 0) {
                    one.phase(machine("beat", time(count * run.time())).holding(BEATER, 1));
                }
                add(
                        Stage.BEAT,
                        one.phase(hands("empty the beater", time(count * (hours.load() / 2 + dosingOfLoad)), hands)
                                .holding(BEATER, 1)));
                loads.add(prefix + of);
            }
        }
        return runs;
    }

    /** Forms and dries the pieces of a batch; returns what the next batch waits for at the vat. */
    private List<String> form(int b, List<String> stuff, List<String> before, List<String> packed) {
        Duration keeps = time(seconds("stock.keeps"));
        int[] ofBatch = IntStream.range(0, pieces.size())
                .filter(p -> in.engine().piece(p).batch() == b)
                .boxed()
                .sorted((one, other) -> Integer.compare(
                        in.settings().vat(one).turn(), in.settings().vat(other).turn()))
                .mapToInt(Integer::intValue)
                .toArray();
        int posts = 0;
        for (int p : ofBatch) {
            posts += chunks(p);
        }
        Spread hands = Spread.of(batches.get(b).workingHours());
        List<String> vat = before;
        double charging =
                in.engine().vat(b).charging(in.settings(), ofBatch, in.engine().likely());
        if (charging > 0) {
            String of = "charge the vat with " + batches.get(b).name();
            Task.Builder one = task(of, before, "hands")
                    .phase(hands("charge the vat", time(charging), hands).holding(VAT, 1));
            // The vat is filled from the first of the loads; the others may follow while it is worked.
            stuff.stream().limit(loadsFor(1, posts, stuff.size())).forEach(load -> after(prefix + of, load, keeps));
            add(Stage.FORM, one);
            vat = List.of(prefix + of);
        }
        int done = 0;
        for (int p : ofBatch) {
            vat = formPiece(p, vat, stuff, keeps, done, posts, packed);
            done += chunks(p);
        }
        return vat;
    }

    /** How many of the loads are needed for the first so many posts, and a filling of the vat beside them. */
    private static int loadsFor(int post, int posts, int loads) {
        return Math.min(loads, 1 + (int) Math.ceil((double) post * loads / posts));
    }

    private int chunks(int p) {
        Posts.Setting post = in.settings().posts(p);
        int all = post == null ? Math.max(1, in.settings().drying(p).loads()) : post.posts();
        int inOne = (all + MOST_TASKS - 1) / MOST_TASKS;
        return (all + inOne - 1) / inOne;
    }

    /** Forms, presses, dries and finishes a piece, post after post; returns what the next piece waits for at the vat. */
    private List<String> formPiece(
            int p, List<String> vat, List<String> stuff, Duration keeps, int done, int posts, List<String> packed) {
        PieceWork work = in.engine().piece(p);
        PiecePlan piece = pieces.get(p);
        String name = piece.name();
        FormingSheets.Setting sheet = in.settings().sheet(p);
        Posts.Setting post = in.settings().posts(p);
        Pressing.Setting press = in.settings().press(p);
        Duration wet = time(seconds("schedule.wet-sheets"));
        Spread hand = Spread.of(piece.workingHours());
        Spread pace = Spread.of(piece.timeAtVat());
        PieceWork.Hours hours = work.hours(
                in.settings(),
                in.estimates().likely(FormingSheets.AT_VAT, p),
                in.engine().likely());
        int chunks = chunks(p);
        int postsInOne = post == null ? 1 : (post.posts() + chunks - 1) / chunks;
        int each = post == null ? (sheet.sheets() + chunks - 1) / chunks : postsInOne * post.sheets();
        int atOnce = feltsFor(post) == 0
                ? chunks
                : Math.max(1, in.studio().felts().orElseThrow().count() / feltsFor(post));
        // Loads that others share are beaten as those need them.
        boolean alone = in.engine().beatenWith(work.batch()).length == 1 && sharedWith(work.batch()) == null;
        List<String> before = vat;
        List<Post> formed = new ArrayList<>();
        for (int i = 0; i < chunks && (long) i * each < sheet.sheets(); i++) {
            double part = Math.min(each, sheet.sheets() - i * each) / (double) sheet.sheets();
            String which = numbered("post", i, chunks) + " of " + name;
            String form = post == null ? numbered("form " + name, i, chunks) : "form " + which;
            Task.Builder one = task(form, before, "hands");
            int needed = loadsFor(done + i + 1, posts, stuff.size());
            stuff.stream()
                    .skip(Math.max(0, needed - 1L))
                    .limit(needed == 0 ? 0 : 1)
                    .forEach(load -> after(prefix + form, load, keeps));
            SharedLoads with = sharedWith(work.batch());
            if (with != null && !stuff.isEmpty()) {
                // Dosed or not, it is as old as the first load it is taken from.
                after(prefix + form, with.of(in.order().name()).get(0), keeps);
            }
            if (i >= atOnce) {
                one.after(formed.get(i - atOnce).done);
            }
            one.phase(felts(hands("form", time(part * hours.form()), pace).holding(VAT, 1), post));
            add(Stage.FORM, one);
            before = List.of(prefix + form);
            String last = form;
            if (press != null || part * hours.press() > 0) {
                last = "press " + which;
                Task.Builder pressed = task(last, List.of(), "hands");
                after(prefix + last, prefix + form, wet);
                if (press != null) {
                    pressed.phase(felts(
                            machine("press", time(postsInOne * press.time())).holding(PRESS, 1), post));
                }
                if (part * hours.press() > 0) {
                    pressed.phase(felts(
                            hands(press == null ? "part" : "press again and part", time(part * hours.press()), hand),
                            post));
                }
                add(Stage.FORM, pressed);
            }
            formed.add(new Post(
                    prefix + form,
                    prefix + last,
                    part * sheet.sheets() * in.settings().drying(p).each(),
                    part * hours.form()));
            // A load well ahead of the vat is not beaten before there is work for it.
            int ahead = needed + AHEAD;
            if (alone && ahead < stuff.size() && loadsFor(done + i + 2, posts, stuff.size()) > needed) {
                holdBack(stuff.get(ahead), prefix + form);
            }
        }
        finish(p, dry(p, formed, hours, hand), hours, hand, packed);
        return before;
    }

    private void holdBack(String task, String until) {
        heldBack.computeIfAbsent(task, key -> new ArrayList<>()).add(until);
    }

    /** Felts in a post; none where sheets lie on none. */
    private int feltsFor(Posts.@Nullable Setting post) {
        return post == null || in.studio().felts().isEmpty() ? 0 : post.layers() + 1;
    }

    private Phase felts(Phase phase, Posts.@Nullable Setting post) {
        int count = feltsFor(post);
        return count == 0 ? phase : phase.holding(FELTS, count);
    }

    /** Sheets that are laid to dry together, in so many fillings one after the other, and the posts that give them. */
    private record Lot(List<Post> posts, double items, int rounds) {
        Lot {
            posts = List.copyOf(posts);
        }
    }

    /** Sheets that are formed and pressed together: the task that begins and the one that ends with them. */
    private record Post(String forming, String done, double items, double time) {}

    /**
     * What is laid to dry at once: as many posts as a filling takes, and as are formed in a day. A post that is more than a
     * filling is several lots.
     */
    private List<Lot> lots(List<Post> posts, int atOnce) {
        List<Lot> lots = new ArrayList<>();
        List<Post> open = new ArrayList<>();
        double items = 0;
        double time = 0;
        for (Post post : posts) {
            boolean full = items + post.items > atOnce || time + post.time > longest.toSeconds();
            if (full && !open.isEmpty()) {
                lots.add(new Lot(open, items, 1));
                open.clear();
                items = 0;
                time = 0;
            }
            if (post.items > atOnce) {
                int rounds = (int) Math.ceil(post.items / atOnce * posts.size() / MOST_TASKS);
                double inOne = (double) rounds * atOnce;
                for (double left = post.items; left > 0; left -= inOne) {
                    double now = Math.min(left, inOne);
                    lots.add(new Lot(List.of(post), now, (int) Math.ceil(now / atOnce - 1e-9)));
                }
            } else {
                open.add(post);
                items += post.items;
                time += post.time;
            }
        }
        if (!open.isEmpty()) {
            lots.add(new Lot(open, items, 1));
        }
        return lots;
    }

    private List<Post> dry(int p, List<Post> formed, PieceWork.Hours hours, Spread hand) {
        PiecePlan piece = pieces.get(p);
        DryingPlan plan = piece.dryingStage().optional().orElse(null);
        double time = plan == null ? Double.NaN : plan.left().si();
        Spread spread = plan == null ? Spread.NONE : Spread.of(plan.time());
        return laid(Stage.DRY, "dry " + piece.name(), p, formed, hours.dry(), hand, time, spread, true);
    }

    /** Lays sheets to dry, lot by lot, and takes them out. */
    private List<Post> laid(
            Stage step,
            String what,
            int p,
            List<Post> formed,
            double handling,
            Spread hand,
            double time,
            Spread spread,
            boolean wet) {
        DryingSheets.Setting set = in.settings().drying(p);
        Dryer dryer = in.engine().piece(p).drying().dryer();
        List<Lot> lots = lots(formed, dryer == null ? Integer.MAX_VALUE : Math.max(1, set.atOnce()));
        double all = lots.stream().mapToDouble(Lot::items).sum();
        Duration mostWet = time(seconds("schedule.wet-sheets"));
        List<Post> dried = new ArrayList<>();
        for (int i = 0; i < lots.size(); i++) {
            Lot lot = lots.get(i);
            String of = numbered(what, i, lots.size());
            Task.Builder one = task(of, List.of(), "dry");
            for (Post post : lot.posts) {
                if (wet) {
                    after(prefix + of, post.done, mostWet);
                } else {
                    one.after(post.done);
                }
            }
            int places = dryer == null
                    ? 0
                    : Math.max(1, Math.min(dryer.capacity(), (int) Math.ceil(lot.items / set.inLayer() - 1e-9)));
            Duration load = time(handling * lot.items / all / 2);
            one.phase(places(hands("lay to dry", load, hand), dryer, places));
            one.phase(places(waiting(words(step), lot.rounds * time, spread), dryer, places));
            one.phase(places(hands("take out", load, hand), dryer, places));
            add(step, one);
            dried.add(new Post(prefix + of, prefix + of, lot.items, 0));
            if (wet && dryer != null) {
                holdBack(lot, dryer, prefix + of);
            }
        }
        return dried;
    }

    /** Sheets are not formed long before there is a place for them. */
    private void holdBack(Lot lot, Dryer dryer, String drying) {
        List<Filling> earlier = filled.computeIfAbsent(dryer.name(), key -> new ArrayList<>());
        double places = 0;
        int at = earlier.size();
        // What fills the dryer twice over has to be dry first.
        while (at > 0 && places < AHEAD * dryer.capacity()) {
            places += earlier.get(--at).items;
        }
        if (places >= AHEAD * dryer.capacity()) {
            for (Post post : lot.posts) {
                if (!earlier.get(at).posts.contains(post)) {
                    holdBack(post.forming, earlier.get(at).drying);
                }
            }
        }
        earlier.add(new Filling(lot.posts, drying, lot.items));
    }

    /** A lot in a dryer. */
    private record Filling(List<Post> posts, String drying, double items) {
        Filling {
            posts = List.copyOf(posts);
        }
    }

    private Phase waiting(String what, double time, Spread spread) {
        if (Double.isNaN(time)) {
            return unknown ? Phase.waiting(what) : Phase.waiting(what, Duration.ZERO);
        }
        return banded(Phase.waiting(what, time(time)), time(time), spread);
    }

    private static Phase places(Phase phase, @Nullable Dryer dryer, int places) {
        return dryer == null ? phase : phase.holding(places(dryer), places);
    }

    private void finish(int p, List<Post> dried, PieceWork.Hours hours, Spread hand, List<String> packed) {
        PiecePlan piece = pieces.get(p);
        String name = piece.name();
        List<Post> dry = dried;
        if (piece.sizingStage().isDone()) {
            var again = piece.sizing().dryAgain();
            double time = again.map(one -> in.engine()
                            .piece(p)
                            .drying()
                            .stay(one.likely().si(), in.engine().likely()))
                    .orElse(Double.NaN);
            List<Post> sized = each(Stage.SIZE, "size " + name, dried, hours.size(), hand);
            dry = laid(
                    Stage.DRY_AGAIN,
                    "dry " + name + " again",
                    p,
                    sized,
                    0,
                    hand,
                    time,
                    again.map(Spread::of).orElse(Spread.NONE),
                    false);
        }
        List<Post> sorted = each(Stage.FINISH, "sort and finish " + name, dry, hours.finish(), hand);
        Recipe recipe = batches.get(in.engine().piece(p).batch()).recipe();
        if (recipe.sizeBath().isPresent()
                || recipe.additives().stream()
                        .anyMatch(dose -> dose.additive().purpose() == Additive.Purpose.INTERNAL_SIZE)) {
            packed.add(waiting(Stage.CURE, "cure " + name, "lay by", seconds("schedule.size-cure"), done(dry)));
        }
        packed.add(waiting(
                Stage.CONDITION, "condition " + name, "put under weight", seconds("schedule.condition"), done(sorted)));
    }

    private static List<String> done(List<Post> posts) {
        return posts.stream().map(Post::done).toList();
    }

    /** Hands on each lot when it is dry. */
    private List<Post> each(Stage step, String what, List<Post> dried, double time, Spread hand) {
        double all = dried.stream().mapToDouble(Post::items).sum();
        List<Post> after = new ArrayList<>();
        for (int i = 0; i < dried.size(); i++) {
            Post lot = dried.get(i);
            String of = numbered(what, i, dried.size());
            add(
                    step,
                    task(of, List.of(lot.done), "hands").phase(hands(words(step), time(time * lot.items / all), hand)));
            after.add(new Post(prefix + of, prefix + of, lot.items, 0));
        }
        return after;
    }

    // ------------------------------------------------------------------------------------------------ small things

    private Task.Builder task(String name, List<String> after, @Nullable String together) {
        Task.Builder task = Task.of(prefix + name).priority(priority);
        if (together != null) {
            task.together(together);
        }
        after.forEach(task::after);
        return task;
    }

    private void after(String task, String other, Duration most) {
        waits.computeIfAbsent(task, key -> new ArrayList<>()).add(new After(other, most));
    }

    private void add(Stage step, Task.Builder task) {
        Task built = task.build();
        if (tasks.put(built.name(), built) != null) {
            throw Refused.of(
                    "schedule.twice",
                    "order " + in.order().name() + ": two tasks would be called \"" + built.name()
                            + "\". Give recipes and pieces names that differ by more than a number.",
                    "of",
                    "task",
                    "given",
                    built.name());
        }
        steps.put(built.name(), Step.of(step));
    }

    /** Waiting that somebody begins in working time. */
    private String waiting(Stage step, String name, String begin, double seconds, List<String> after) {
        add(
                step,
                task(name, after, null)
                        .phase(Phase.handsOn(begin, Duration.ofMinutes(1)))
                        .phase(Phase.waiting(words(step), time(seconds))));
        return prefix + name;
    }

    /** Hands hold a person; what is longer than a day rests overnight. */
    private Phase hands(String name, Duration time, Spread spread) {
        Phase phase = banded(Phase.handsOn(name, time), time, spread).holding(PERSON, 1);
        return time.compareTo(longest) > 0 ? phase.breakable() : phase;
    }

    private Phase machine(String name, Duration time) {
        Phase phase = Phase.machine(name, time);
        return time.compareTo(longest) > 0 ? phase.breakable() : phase;
    }

    private static Phase banded(Phase phase, Duration time, Spread spread) {
        Duration low = scaled(time, spread.low);
        return low.isZero() ? phase : phase.between(low, scaled(time, spread.high));
    }

    private static Duration scaled(Duration time, double by) {
        return Duration.ofSeconds(Math.round(time.toSeconds() * by));
    }

    private static Duration time(double seconds) {
        return Duration.ofMinutes((long) Math.ceil(seconds / 60 - 1e-6));
    }

    private double seconds(String id) {
        return in.asked().si(id, Scope.GENERAL);
    }

    private static String numbered(String name, int i, int all) {
        return all == 1 ? name : name + " " + (i + 1) + "/" + all;
    }
}
