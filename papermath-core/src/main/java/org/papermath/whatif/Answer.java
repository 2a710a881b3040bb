package org.papermath.whatif;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.function.DoubleFunction;
import java.util.function.DoubleUnaryOperator;
import java.util.function.Function;
import java.util.stream.Collectors;
import javax.measure.Quantity;
import org.jspecify.annotations.Nullable;
import org.papermath.evidence.Notice;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kind;
import org.papermath.quantity.PapermathException;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Units;

/**
 * Which amounts of an input give a wanted outcome: none, one or several. Each was put in again and gives the want within
 * 1e-9 of it. Where the want is out of reach, or is leapt over because a tool has steps, it says what the range gives instead.
 * Immutable.
 *
 * <pre>{@code
 * FormingMethod dip = FormingMethod.dipped();
 * var thick = Answer.of(Consistency.percent(0.3), Consistency.percent(1),
 *         at -> dip.sheetFibre(kilograms(4), at, Share.percent(97)), grams(25));
 * thick.one().to("%"); // 0.6443 %
 * }</pre>
 *
 * <p>The range is looked through at 201 places, and narrowed down wherever the want lies between two of them or the outcome
 * turns back near it. Two answers closer together than that may be told as none.
 *
 * @param <Q> what the input is measured in
 * @param <R> what the outcome is measured in
 */
public final class Answer<Q extends Quantity<Q>, R extends Quantity<R>> {
    private static final int MOST_TOLD = 5;

    private final List<Amount<Q>> found;
    private final List<Jump<Q, R>> jumps;
    private final @Nullable Amount<R> least;
    private final @Nullable Amount<R> most;
    private final List<Notice> notices;
    private final String text;

    /**
     * A place at which an outcome goes at once from one amount to another, past the wanted one.
     *
     * @param <Q> what the input is measured in
     * @param <R> what the outcome is measured in
     */
    public sealed interface Jump<Q extends Quantity<Q>, R extends Quantity<R>> permits FoundJump {
        /** {@return where it is} */
        Amount<Q> at();

        /** {@return the outcome just below it} */
        Amount<R> before();

        /** {@return the outcome from there on} */
        Amount<R> after();
    }

    private record FoundJump<Q extends Quantity<Q>, R extends Quantity<R>>(
            Amount<Q> at, Amount<R> before, Amount<R> after) implements Jump<Q, R> {
        @Override
        public String toString() {
            return "at " + at + " from " + before + " to " + after;
        }
    }

    Answer(
            List<Amount<Q>> found,
            List<Jump<Q, R>> jumps,
            @Nullable Amount<R> least,
            @Nullable Amount<R> most,
            List<Notice> notices,
            String text) {
        this.found = List.copyOf(found);
        this.jumps = List.copyOf(jumps);
        this.least = least;
        this.most = most;
        this.notices = List.copyOf(notices);
        this.text = text;
    }

    /**
     * Looks for the amount at which a model gives a wanted one.
     *
     * @param from where to begin
     * @param to where to end, above that
     * @param model what the model gives at an amount; it may refuse, has to give the same for the same and may be asked on
     *     several threads
     * @param want what it is to give
     * @param <Q> what the input is measured in
     * @param <R> what the model gives
     * @return the answer
     * @throws Refused if the range is none
     */
    public static <Q extends Quantity<Q>, R extends Quantity<R>> Answer<Q, R> of(
            Amount<Q> from, Amount<Q> to, Function<Amount<Q>, ? extends Quantity<R>> model, Amount<R> want) {
        Objects.requireNonNull(from, "from");
        Objects.requireNonNull(to, "to");
        Objects.requireNonNull(model, "model");
        Objects.requireNonNull(want, "want");
        Kind<Q> kind = from.kind();
        Kind<R> given = want.kind();
        String unit = unit(from);
        return search(
                kind.name(),
                kind,
                unit,
                kind.si(from, "beginning of the range"),
                kind.si(to, "end of the range"),
                "the " + given.name(),
                given,
                unit(want),
                x -> {
                    try {
                        return given.si(model.apply(kind.ofSi(x, unit)), "the " + given.name());
                    } catch (PapermathException unknown) {
                        return Double.NaN;
                    }
                },
                x -> {
                    try {
                        Objects.requireNonNull(model.apply(kind.ofSi(x, unit)), "what the model gives");
                        return Optional.empty();
                    } catch (PapermathException unknown) {
                        return Optional.of(unknown);
                    }
                },
                want.si());
    }

    private static String unit(Amount<?> amount) {
        String printed = Units.print(amount);
        int blank = printed.indexOf(' ');
        return blank < 0 ? "1" : printed.substring(blank + 1);
    }

    static <Q extends Quantity<Q>, R extends Quantity<R>> Answer<Q, R> search(
            String input,
            Kind<Q> kind,
            String unit,
            double from,
            double to,
            String outcome,
            Kind<R> given,
            String givenUnit,
            DoubleUnaryOperator function,
            DoubleFunction<Optional<PapermathException>> reason,
            double want) {
        requireRange(input, kind.ofSi(from, unit), kind.ofSi(to, unit));
        Scan scan = new Scan(from, to, function, want);
        Amount<R> wanted = given.ofSi(want, givenUnit);
        List<Amount<Q>> found = scan.roots.stream().map(x -> kind.ofSi(x, unit)).toList();
        List<Jump<Q, R>> jumps = new ArrayList<>();
        for (Scan.Leap leap : scan.leaps) {
            jumps.add(new FoundJump<>(
                    kind.ofSi(leap.at(), unit),
                    given.ofSi(leap.before(), givenUnit),
                    given.ofSi(leap.after(), givenUnit)));
        }
        boolean known = scan.least <= scan.most;
        Amount<R> least = known ? given.ofSi(scan.least, givenUnit) : null;
        Amount<R> most = known ? given.ofSi(scan.most, givenUnit) : null;
        List<Notice> notices = new ArrayList<>();
        String range = "from " + kind.ofSi(from, unit) + " to " + kind.ofSi(to, unit);
        StringBuilder text = new StringBuilder();
        if (!found.isEmpty()) {
            text.append(outcome)
                    .append(" is ")
                    .append(wanted)
                    .append(" with ")
                    .append(input)
                    .append(' ');
            text.append(told(found.stream().map(Amount::toString).toList(), " and "));
            if (found.size() > 1) {
                String several = "There are several answers: "
                        + told(found.stream().map(Amount::toString).toList(), ", ") + ". Each gives the want.";
                notices.add(Notice.note("whatif.several", several, "count", found.size()));
            }
        } else if (!jumps.isEmpty()) {
            String steps = told(jumps.stream().map(Object::toString).toList(), ", ");
            text.append(outcome)
                    .append(" goes at once, ")
                    .append(steps)
                    .append("; ")
                    .append(wanted)
                    .append(" lies between, and is not given exactly");
            notices.add(Notice.warning(
                    "whatif.jumps",
                    sentence(text.toString())
                            + " Something is rounded to the step of a tool, or decided otherwise from there on.",
                    "want",
                    wanted.toString(),
                    "at",
                    jumps.get(0).at().toString(),
                    "before",
                    jumps.get(0).before().toString(),
                    "after",
                    jumps.get(0).after().toString()));
        } else if (known) {
            Amount<R> first = given.ofSi(scan.first, givenUnit);
            Amount<R> last = given.ofSi(scan.last, givenUnit);
            boolean ends =
                    Math.min(scan.first, scan.last) == scan.least && Math.max(scan.first, scan.last) == scan.most;
            text.append("from ")
                    .append(kind.ofSi(scan.firstAt, unit))
                    .append(" to ")
                    .append(kind.ofSi(scan.lastAt, unit))
                    .append(' ')
                    .append(outcome);
            if (scan.least == scan.most) {
                text.append(" stays at ").append(first);
            } else if (ends) {
                text.append(" goes from ").append(first).append(" to ").append(last);
            } else {
                text.append(" lies between ").append(least).append(" and ").append(most);
            }
            text.append("; ").append(wanted).append(" is not reached");
            notices.add(Notice.warning(
                    "whatif.not-reached",
                    sentence(text.toString()),
                    "want",
                    wanted.toString(),
                    "least",
                    String.valueOf(least),
                    "most",
                    String.valueOf(most)));
        } else {
            text.append(range).append(' ').append(outcome).append(" is not known anywhere");
        }
        if (!Double.isNaN(scan.unknownAt)) {
            Optional<PapermathException> why = reason.apply(scan.unknownAt);
            String unknown = outcome + " is not known with " + input + " " + kind.ofSi(scan.unknownAt, unit)
                    + ", and perhaps elsewhere in the range"
                    + why.map(one -> ": " + one.getMessage()).orElse(".");
            notices.add(
                    Notice.warning("whatif.unknown-part", sentence(unknown), "at", kind.ofSi(scan.unknownAt, unit)));
        }
        return new Answer<>(found, jumps, least, most, notices, text.toString());
    }

    static void requireRange(String input, Amount<?> from, Amount<?> to) {
        if (!(from.si() < to.si())) {
            throw Refused.of(
                    "whatif.range",
                    input + ": a range from " + from + " to " + to + " is given; it has to end above where it begins.",
                    "from",
                    from.toString(),
                    "to",
                    to.toString());
        }
    }

    private static String told(List<String> all, String last) {
        List<String> some = all.subList(0, Math.min(MOST_TOLD, all.size()));
        if (all.size() > MOST_TOLD) {
            return String.join(", ", some) + " and " + (all.size() - MOST_TOLD) + " more";
        }
        return some.size() < 2
                ? some.get(0)
                : some.subList(0, some.size() - 1).stream().collect(Collectors.joining(", "))
                        + last
                        + some.get(some.size() - 1);
    }

    private static String sentence(String text) {
        String begun = Character.toUpperCase(text.charAt(0)) + text.substring(1);
        return begun.endsWith(".") ? begun : begun + ".";
    }

    /**
     * Returns every amount that gives the want.
     *
     * @return an unmodifiable list, the least first; empty where there is none
     */
    public List<Amount<Q>> found() {
        return found;
    }

    /**
     * Returns whether any amount gives the want.
     *
     * @return whether there is one
     */
    public boolean isReached() {
        return !found.isEmpty();
    }

    /**
     * Returns the one amount that gives the want.
     *
     * @return the amount
     * @throws Refused if there is none, or are several; it says what the range gives
     */
    public Amount<Q> one() {
        if (found.isEmpty()) {
            throw Refused.of("whatif.no-answer", sentence(text), "count", 0);
        }
        if (found.size() > 1) {
            throw Refused.of(
                    "whatif.several-answers",
                    sentence(text) + " Take one of them from found().",
                    "count",
                    found.size());
        }
        return found.get(0);
    }

    /**
     * Returns where the outcome leaps over the want.
     *
     * @return an unmodifiable list; empty where it does not
     */
    public List<Jump<Q, R>> jumps() {
        return jumps;
    }

    /**
     * Returns the least the outcome came to in the range.
     *
     * @return the amount; empty where nothing is known
     */
    public Optional<Amount<R>> least() {
        return Optional.ofNullable(least);
    }

    /**
     * Returns the most the outcome came to in the range.
     *
     * @return the amount; empty where nothing is known
     */
    public Optional<Amount<R>> most() {
        return Optional.ofNullable(most);
    }

    /**
     * Returns what the answer should not be read without: that there are several, that the want is not reached or leapt over,
     * that part of the range is not known.
     *
     * @return an unmodifiable list
     */
    public List<Notice> notices() {
        return notices;
    }

    @Override
    public String toString() {
        return text;
    }
}
