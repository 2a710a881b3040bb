package org.papermath.plan;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.papermath.drying.Dryer;
import org.papermath.evidence.Assumption;
import org.papermath.evidence.Estimate;
import org.papermath.mail.MailLimits;
import org.papermath.mould.Mould;
import org.papermath.order.OwnStep;
import org.papermath.order.Piece;
import org.papermath.quantity.Amount;
import org.papermath.text.Digits;

/**
 * What differs between two plans, in the order of the work: what was asked otherwise, what is to be done otherwise, and what
 * comes out otherwise. Made by {@link MakingPlan#comparedWith}.
 *
 * <pre>{@code
 * MakingPlan before = MakingPlan.of(order, studio);
 * MakingPlan after = MakingPlan.of(order.with("programme", piece -> piece.count(110)), studio);
 * after.comparedWith(before).asked(); // [programme: ordered 110, 40 more]
 * }</pre>
 *
 * <p>A forecast that moves inside its band of before is said to: the making may come out so without any change.
 */
public final class PlanComparison {
    /** The lines a print shows at most of what is to be done and of what comes out. */
    private static final int LINES = 5;

    /** A band that is narrower or wider by this part, for what it is a band of, is told. */
    private static final double BAND = 0.1;

    /** A forecast that moves by less than this part of its band does not. */
    private static final double LEAST = 0.05;

    private final List<Change> asked;
    private final List<Change> done;
    private final List<Change> out;

    /** One thing that differs. */
    public sealed interface Change permits FoundChange {
        /** {@return the pieces, recipes or the whole it is of; blank for the order as a whole} */
        String of();

        /** {@return what it is, such as {@code sheets to pull}} */
        String what();

        /** {@return what it was; empty if there was none} */
        Optional<String> before();

        /** {@return what it is now; empty if there is none any more} */
        Optional<String> after();

        /** {@return the difference in words, such as {@code 20 more}; empty where there is none to say} */
        Optional<String> difference();

        /** {@return of a forecast, whether it lies in its band of before; false for all else} */
        boolean insideBand();
    }

    private record FoundChange(
            String of,
            String what,
            Optional<String> before,
            Optional<String> after,
            Optional<String> difference,
            boolean insideBand,
            double size)
            implements Change {
        FoundChange of(String all) {
            return new FoundChange(all, what, before, after, difference, insideBand, size);
        }

        @Override
        public String toString() {
            String now = after.map(
                            words -> words + difference.map(by -> ", " + by).orElse(""))
                    .orElse("none");
            String was = difference.isPresent()
                    ? ""
                    : before.map(words -> ", was " + words).orElse(", new");
            return (of.isEmpty() ? "" : of + ": ") + what + " " + now + was
                    + (insideBand ? " (inside the band of before)" : "");
        }
    }

    private PlanComparison(List<Change> asked, List<Change> done, List<Change> out) {
        this.asked = List.copyOf(asked);
        this.done = List.copyOf(done);
        this.out = List.copyOf(out);
    }

    static PlanComparison of(MakingPlan before, MakingPlan after) {
        Found asked = new Found();
        Found done = new Found();
        Found out = new Found();
        asked.days("", "due", before.order().due(), after.order().due());
        for (String name : both(before.order().steps(), after.order().steps(), OwnStep::name)) {
            asked.words(
                    "",
                    "step",
                    of(before.order().steps(), OwnStep::name, name).map(OwnStep::toString),
                    of(after.order().steps(), OwnStep::name, name).map(OwnStep::toString));
        }
        known(asked, before, after);
        for (String name : both(before.batches(), after.batches(), BatchPlan::name)) {
            batch(
                    name,
                    of(before.batches(), BatchPlan::name, name),
                    of(after.batches(), BatchPlan::name, name),
                    done,
                    out);
        }
        for (String name : both(before.pieces(), after.pieces(), PiecePlan::name)) {
            Optional<PiecePlan> a = of(before.pieces(), PiecePlan::name, name);
            Optional<PiecePlan> b = of(after.pieces(), PiecePlan::name, name);
            asked(name, a.map(PiecePlan::piece), b.map(PiecePlan::piece), asked);
            if (a.isPresent() && b.isPresent()) {
                toDo(name, a, b, done);
                comesOut(name, a, b, out);
            }
        }
        done.days("", "begin on", before.schedule().start(), after.schedule().start());
        if (!before.schedule().days().equals(after.schedule().days())) {
            done.words(
                    "",
                    "in all",
                    Optional.of(before.schedule().inDays()),
                    Optional.of(after.schedule().inDays()));
        }
        out.forecast(
                "", "hands on", Optional.of(before.workingHours()), Optional.of(after.workingHours()), "more", "less");
        return new PlanComparison(asked.told(), done.told(), out.told());
    }

    private static void known(Found asked, MakingPlan before, MakingPlan after) {
        Map<String, Assumption> was = new LinkedHashMap<>();
        before.assumptionsUsed().forEach(row -> was.put(row.key(), row));
        List<String> other = after.assumptionsUsed().stream()
                .filter(row -> !Optional.ofNullable(was.get(row.key())).equals(Optional.of(row)))
                .map(Assumption::key)
                .toList();
        if (!other.isEmpty()) {
            asked.add(new FoundChange(
                    "",
                    "values taken otherwise:",
                    Optional.empty(),
                    Optional.of(String.join(", ", other.subList(0, Math.min(3, other.size())))
                            + (other.size() > 3 ? " and " + (other.size() - 3) + " more" : "")),
                    Optional.of("of " + after.assumptionsUsed().size()),
                    false,
                    1));
        }
    }

    private static void asked(String of, Optional<Piece> a, Optional<Piece> b, Found asked) {
        if (a.isEmpty() || b.isEmpty()) {
            asked.words(
                    of,
                    "ordered",
                    a.map(Piece::count).map(String::valueOf),
                    b.map(Piece::count).map(String::valueOf));
            return;
        }
        asked.count(of, "ordered", a.map(Piece::count), b.map(Piece::count));
        asked.amount(
                of, "weight asked for", a.flatMap(Piece::grammage), b.flatMap(Piece::grammage), "heavier", "lighter");
        asked.amount(
                of, "thickness asked for", a.flatMap(Piece::caliper), b.flatMap(Piece::caliper), "thicker", "thinner");
    }

    private static void batch(String of, Optional<BatchPlan> a, Optional<BatchPlan> b, Found done, Found out) {
        done.amount(
                of,
                "fibre, oven-dry",
                a.map(batch -> batch.fibre().ovenDry()),
                b.map(batch -> batch.fibre().ovenDry()),
                "more",
                "less");
        List<FibreToWeigh.Line> before = a.map(batch -> batch.fibre().kinds()).orElse(List.of());
        List<FibreToWeigh.Line> after = b.map(batch -> batch.fibre().kinds()).orElse(List.of());
        Function<FibreToWeigh.Line, String> fibre = line -> line.fibre().toString();
        for (String kind : both(before, after, fibre)) {
            done.amount(
                    of,
                    "weigh of " + kind,
                    of(before, fibre, kind).map(FibreToWeigh.Line::asBought),
                    of(after, fibre, kind).map(FibreToWeigh.Line::asBought),
                    "more",
                    "less");
        }
        done.count(
                of,
                "beater loads",
                a.flatMap(batch -> batch.beatingStage().optional()).map(BeatingPlan::loads),
                b.flatMap(batch -> batch.beatingStage().optional()).map(BeatingPlan::loads));
        done.amount(
                of,
                "roll down",
                a.flatMap(batch -> batch.beatingStage().optional()).map(BeatingPlan::rollTime),
                b.flatMap(batch -> batch.beatingStage().optional()).map(BeatingPlan::rollTime),
                "longer",
                "shorter");
        List<AdditiveToWeigh> given = a.map(BatchPlan::additives).orElse(List.of());
        List<AdditiveToWeigh> give = b.map(BatchPlan::additives).orElse(List.of());
        Function<AdditiveToWeigh, String> additive = line -> line.additive().name();
        for (String name : both(given, give, additive)) {
            done.amount(
                    of,
                    "weigh of " + name,
                    of(given, additive, name).map(AdditiveToWeigh::productInAll),
                    of(give, additive, name).map(AdditiveToWeigh::productInAll),
                    "more",
                    "less");
        }
        done.amount(
                of,
                "stock to make",
                a.map(batch -> batch.stock().volume()),
                b.map(batch -> batch.stock().volume()),
                "more",
                "less");
        out.forecast(
                of, "drainability", a.map(BatchPlan::drainability), b.map(BatchPlan::drainability), "higher", "lower");
        out.forecast(
                of, "fibre kept in the vat", a.map(BatchPlan::keptInVat), b.map(BatchPlan::keptInVat), "more", "less");
    }

    private static void toDo(String of, Optional<PiecePlan> a, Optional<PiecePlan> b, Found done) {
        done.words(of, "mould", a.map(PlanComparison::mould), b.map(PlanComparison::mould));
        done.words(
                of,
                "opening",
                a.map(piece -> piece.forming().opening().toString()),
                b.map(piece -> piece.forming().opening().toString()));
        done.count(
                of,
                "pieces on a sheet",
                a.map(piece -> piece.counts().perSheet()),
                b.map(piece -> piece.counts().perSheet()));
        done.count(
                of,
                "sheets to pull",
                a.map(piece -> piece.counts().sheets()),
                b.map(piece -> piece.counts().sheets()));
        Optional<VatPlan> wasVat = a.flatMap(piece -> piece.vatStage().optional());
        Optional<VatPlan> vat = b.flatMap(piece -> piece.vatStage().optional());
        done.amount(
                of, "vat at", wasVat.map(VatPlan::consistency), vat.map(VatPlan::consistency), "thicker", "thinner");
        done.amount(of, "lift a sheet", wasVat.map(VatPlan::lift), vat.map(VatPlan::lift), "more", "less");
        done.count(of, "recharge after every", wasVat.map(VatPlan::every), vat.map(VatPlan::every));
        done.amount(
                of,
                "pour a sheet",
                a.flatMap(piece -> piece.pourStage().optional()).map(PourPlan::stock),
                b.flatMap(piece -> piece.pourStage().optional()).map(PourPlan::stock),
                "more",
                "less");
        Optional<PostsPlan> had = a.flatMap(piece -> piece.postsStage().optional());
        Optional<PostsPlan> posts = b.flatMap(piece -> piece.postsStage().optional());
        done.count(of, "posts", had.map(PostsPlan::posts), posts.map(PostsPlan::posts));
        done.count(of, "felts in a post", had.map(PostsPlan::felts), posts.map(PostsPlan::felts));
        Optional<PressingPlan> pressed = a.flatMap(piece -> piece.pressStage().optional());
        Optional<PressingPlan> press = b.flatMap(piece -> piece.pressStage().optional());
        done.amount(of, "press load", pressed.map(PressingPlan::force), press.map(PressingPlan::force), "more", "less");
        done.amount(
                of,
                "hold the press",
                pressed.map(PressingPlan::time),
                press.map(PressingPlan::time),
                "longer",
                "shorter");
        Optional<DryingPlan> dried = a.flatMap(piece -> piece.dryingStage().optional());
        Optional<DryingPlan> dry = b.flatMap(piece -> piece.dryingStage().optional());
        done.words(
                of,
                "dry in",
                dried.map(DryingPlan::dryer).map(Dryer::name),
                dry.map(DryingPlan::dryer).map(Dryer::name));
        done.count(of, "fillings of the dryer", dried.map(DryingPlan::loads), dry.map(DryingPlan::loads));
    }

    private static String mould(PiecePlan piece) {
        return piece.forming().mould().map(Mould::name).orElse("to be made");
    }

    private static void comesOut(String of, Optional<PiecePlan> a, Optional<PiecePlan> b, Found out) {
        out.forecast(
                of,
                "good pieces",
                a.map(piece -> piece.counts().good()),
                b.map(piece -> piece.counts().good()),
                "more",
                "fewer");
        out.forecast(
                of,
                "drains in",
                a.flatMap(piece -> piece.drainTimeStage().optional()),
                b.flatMap(piece -> piece.drainTimeStage().optional()),
                "longer",
                "shorter");
        out.forecast(of, "at the vat", a.map(PiecePlan::timeAtVat), b.map(PiecePlan::timeAtVat), "longer", "shorter");
        out.forecast(
                of, "solids after pressing", a.map(PiecePlan::solids), b.map(PiecePlan::solids), "drier", "wetter");
        out.forecast(
                of,
                "dry after, a filling",
                a.flatMap(piece -> piece.dryingStage().optional()).map(DryingPlan::time),
                b.flatMap(piece -> piece.dryingStage().optional()).map(DryingPlan::time),
                "longer",
                "shorter");
        out.forecast(
                of,
                "grammage",
                a.map(p -> p.finished().grammage()),
                b.map(p -> p.finished().grammage()),
                "heavier",
                "lighter");
        out.forecast(
                of,
                "width",
                a.map(p -> p.finished().width()),
                b.map(p -> p.finished().width()),
                "wider",
                "narrower");
        out.forecast(
                of,
                "height",
                a.map(p -> p.finished().height()),
                b.map(p -> p.finished().height()),
                "longer",
                "shorter");
        out.forecast(
                of,
                "thickness",
                a.flatMap(p -> p.finished().caliperStage().optional()),
                b.flatMap(p -> p.finished().caliperStage().optional()),
                "thicker",
                "thinner");
        out.forecast(
                of,
                "weight of one",
                a.map(p -> p.finished().mass()),
                b.map(p -> p.finished().mass()),
                "heavier",
                "lighter");
        out.amount(
                of,
                "pairs that fit",
                a.flatMap(p -> p.envelopeStage().optional()).map(EnvelopePlan::sharePairsFit),
                b.flatMap(p -> p.envelopeStage().optional()).map(EnvelopePlan::sharePairsFit),
                "more",
                "fewer");
        out.words(
                of,
                "in the mail",
                a.flatMap(p -> p.mailStage().optional()).map(PlanComparison::mailed),
                b.flatMap(p -> p.mailStage().optional()).map(PlanComparison::mailed));
    }

    private static String mailed(MailPlan mail) {
        MailLimits.Verdict verdict = mail.verdict();
        return verdict.service()
                .map(service -> service
                        + (verdict.step().isPresent()
                                ? ", mass step " + verdict.step().getAsInt()
                                : ""))
                .orElse("nothing takes it");
    }

    private static <T> List<String> both(List<T> before, List<T> after, Function<T, String> name) {
        Map<String, Boolean> names = new LinkedHashMap<>();
        after.forEach(one -> names.put(name.apply(one), true));
        before.forEach(one -> names.put(name.apply(one), true));
        return List.copyOf(names.keySet());
    }

    private static <T> Optional<T> of(List<T> list, Function<T, String> name, String wanted) {
        return list.stream().filter(one -> name.apply(one).equals(wanted)).findFirst();
    }

    /** Collects changes. */
    private static final class Found {
        private final List<FoundChange> list = new ArrayList<>();

        void add(FoundChange change) {
            list.add(change);
        }

        void words(String of, String what, Optional<String> a, Optional<String> b) {
            if (!a.equals(b)) {
                list.add(new FoundChange(of, what, a, b, Optional.empty(), false, 1));
            }
        }

        void count(String of, String what, Optional<Integer> a, Optional<Integer> b) {
            if (!a.equals(b)) {
                Optional<String> by = a.isPresent() && b.isPresent()
                        ? Optional.of(Math.abs(b.get() - a.get()) + (b.get() > a.get() ? " more" : " fewer"))
                        : Optional.empty();
                double size = a.isPresent() && b.isPresent() ? Math.abs(Math.log((double) b.get() / a.get())) : 1;
                list.add(new FoundChange(of, what, a.map(String::valueOf), b.map(String::valueOf), by, false, size));
            }
        }

        void days(String of, String what, Optional<LocalDate> a, Optional<LocalDate> b) {
            if (!a.equals(b)) {
                Optional<String> by = Optional.empty();
                if (a.isPresent() && b.isPresent()) {
                    long days = Math.abs(ChronoUnit.DAYS.between(a.get(), b.get()));
                    by = Optional.of(
                            days + (days == 1 ? " day " : " days ") + (b.get().isAfter(a.get()) ? "later" : "earlier"));
                }
                list.add(new FoundChange(
                        of, what, a.map(LocalDate::toString), b.map(LocalDate::toString), by, false, 1));
            }
        }

        <A extends Amount<?>> void amount(
                String of, String what, Optional<A> a, Optional<A> b, String more, String less) {
            if (!a.map(Object::toString).equals(b.map(Object::toString))) {
                list.add(new FoundChange(
                        of,
                        what,
                        a.map(Object::toString),
                        b.map(Object::toString),
                        by(a, b, more, less),
                        false,
                        size(a, b)));
            }
        }

        <E extends Estimate<?>> void forecast(
                String of, String what, Optional<E> a, Optional<E> b, String more, String less) {
            Optional<Amount<?>> was = a.map(Estimate::likely);
            Optional<Amount<?>> is = b.map(Estimate::likely);
            boolean moved = !was.map(Object::toString).equals(is.map(Object::toString));
            double narrower = 1;
            double size = size(was, is);
            if (a.isPresent() && b.isPresent()) {
                double width = width(a.get());
                double move = Math.abs(is.orElseThrow().si() - was.orElseThrow().si());
                moved &= move > LEAST * width;
                narrower = width(b.get()) / width * was.get().si() / is.get().si();
                size = width > 0 ? move / width : size;
            }
            boolean banded = Math.abs(narrower - 1) > BAND;
            if (!moved && !banded) {
                return;
            }
            Optional<String> by = by(was, is, more, less);
            if (banded) {
                String band = "its band " + Digits.significant(narrower, 2) + " times as wide";
                by = Optional.of(moved ? by.map(words -> words + ", " + band).orElse(band) : band);
            }
            boolean inside = moved && a.isPresent() && b.isPresent() && isInside(a.get(), b.get());
            list.add(new FoundChange(of, what, a.map(Found::text), b.map(Found::text), by, inside, size));
        }

        private static double width(Estimate<?> one) {
            return one.high().si() - one.low().si();
        }

        private static boolean isInside(Estimate<?> a, Estimate<?> b) {
            return a.low().si() < a.high().si()
                    && b.likely().si() >= a.low().si()
                    && b.likely().si() <= a.high().si();
        }

        private static String text(Estimate<?> one) {
            return Digits.three(one.likely().value())
                    + (one.low().si() < one.high().si()
                            ? " (" + Digits.three(one.low().value()) + "–"
                                    + Digits.three(one.high().value()) + ")"
                            : "")
                    + unit(one.likely());
        }

        private static String unit(Amount<?> one) {
            String text = one.toString();
            int space = text.indexOf(' ');
            return space < 0 ? "" : text.substring(space);
        }

        private static <A extends Amount<?>> Optional<String> by(
                Optional<A> a, Optional<A> b, String more, String less) {
            if (a.isEmpty() || b.isEmpty()) {
                return Optional.empty();
            }
            Amount<?> was = a.get();
            Amount<?> is = b.get();
            Amount<?> like = is.si() == 0 ? was : is;
            double difference = Math.abs(is.si() - was.si()) * Math.abs(like.value() / like.si());
            return Optional.of(Digits.three(difference) + unit(is) + " " + (is.si() > was.si() ? more : less));
        }

        private static <A extends Amount<?>> double size(Optional<A> a, Optional<A> b) {
            if (a.isEmpty() || b.isEmpty()) {
                return 1;
            }
            double ratio = Math.abs(Math.log(b.get().si() / a.get().si()));
            return Double.isFinite(ratio) ? ratio : 1;
        }

        /** The changes, with what is the same for several told once. */
        List<Change> told() {
            Map<List<Object>, List<FoundChange>> alike = new LinkedHashMap<>();
            for (FoundChange one : list) {
                alike.computeIfAbsent(
                                List.of(one.what, one.before, one.after, one.insideBand), key -> new ArrayList<>())
                        .add(one);
            }
            List<Change> told = new ArrayList<>();
            alike.values()
                    .forEach(same -> told.add(same.get(0)
                            .of(String.join(
                                    ", ", same.stream().map(FoundChange::of).toList()))));
            return told;
        }
    }

    /**
     * Returns what was asked otherwise: counts, weights, the day, values of the studio.
     *
     * @return an unmodifiable list
     */
    public List<Change> asked() {
        return asked;
    }

    /**
     * Returns what is to be done otherwise: settings, which have no band.
     *
     * @return an unmodifiable list, in the order of the work
     */
    public List<Change> toDo() {
        return done;
    }

    /**
     * Returns what comes out otherwise: forecasts.
     *
     * @return an unmodifiable list, in the order of the work
     */
    public List<Change> comesOut() {
        return out;
    }

    /**
     * Returns whether nothing differs that a card would show.
     *
     * @return whether the lists are empty
     */
    public boolean isSame() {
        return asked.isEmpty() && done.isEmpty() && out.isEmpty();
    }

    /** Returns the largest changes in ten lines or so; the lists have all of them. */
    @Override
    public String toString() {
        if (isSame()) {
            return "Nothing differs.";
        }
        StringBuilder text = new StringBuilder();
        append(text, "Asked otherwise", asked);
        append(text, "Do otherwise", done);
        append(text, "Comes out otherwise", out);
        return text.toString().stripTrailing();
    }

    private static void append(StringBuilder text, String head, List<Change> changes) {
        if (changes.isEmpty()) {
            return;
        }
        List<Change> largest = changes.stream()
                .sorted(Comparator.comparingDouble((Change one) -> -((FoundChange) one).size()))
                .limit(changes.size() > LINES ? LINES - 1 : LINES)
                .toList();
        text.append(head).append('\n');
        changes.stream()
                .filter(largest::contains)
                .forEach(one -> text.append("  ").append(one).append('\n'));
        if (largest.size() < changes.size()) {
            text.append("  and ").append(changes.size() - largest.size()).append(" smaller changes\n");
        }
    }
}
