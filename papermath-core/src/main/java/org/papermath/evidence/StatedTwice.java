package org.papermath.evidence;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.measure.Quantity;
import javax.measure.UnitConverter;
import javax.measure.quantity.Dimensionless;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Amounts;
import org.papermath.quantity.Kind;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Units;

/**
 * Two figures given for one thing, as labels and recipes do: {@code 80 lb (36 kg)}, {@code 12 mil = 293 µm}. The
 * library converts exactly, so it notices when the second figure was rounded too far or slipped.
 *
 * <pre>{@code
 * // The first two are warned of, naming 36.29 kg and 304.8 µm; the third agrees.
 * StatedTwice.compare("bale", pounds(80), kilograms(36));
 * StatedTwice.compare("caliper", mils(12), micrometres(293), StatedTwice.CALIPER);
 * StatedTwice.compare("bale", pounds(80), kilograms(36.3)).isEmpty(); // true
 * }</pre>
 *
 * @source how far two figures may differ: common practice, no source
 */
public final class StatedTwice {
    /** Half a per cent: what a second figure may differ by when it was rounded with care. */
    public static final Amount<Dimensionless> ROUNDED = Amounts.percent(0.5);

    /** One per cent: what two figures for a caliper may differ by, since micrometers read whole mils or 10 µm. */
    public static final Amount<Dimensionless> CALIPER = Amounts.percent(1);

    private StatedTwice() {}

    /**
     * Compares two figures for one thing; more than half a per cent apart they disagree.
     *
     * @param <Q> the quantity type
     * @param what the thing, for the sentence
     * @param first one figure
     * @param second the other figure, in any unit of the same kind
     * @return a warning if they disagree
     * @throws Refused if they are temperatures, or the second is of another kind
     */
    public static <Q extends Quantity<Q>> Optional<Notice> compare(String what, Amount<Q> first, Amount<Q> second) {
        return compare(what, first, second, ROUNDED);
    }

    /**
     * Compares two figures for one thing.
     *
     * @param <Q> the quantity type
     * @param what the thing, for the sentence
     * @param first one figure
     * @param second the other figure, in any unit of the same kind
     * @param most the most they may differ, a part of the larger of them, from 0 to 1
     * @return a warning if they disagree
     * @throws Refused if they are temperatures, whose per cents mean nothing, the second is of another kind, or the
     *     part is out of range
     */
    public static <Q extends Quantity<Q>> Optional<Notice> compare(
            String what, Amount<Q> first, Amount<Q> second, Quantity<Dimensionless> most) {
        Objects.requireNonNull(what, "what");
        Objects.requireNonNull(first, "first");
        double part = Kinds.NUMBER.siWithin(most, "most the figures may differ", 0, 1);
        double a = first.si();
        double b = first.kind().si(second, what);
        if (first.kind().name().equals(Kinds.TEMPERATURE.name())) {
            throw Refused.of(
                    "stated.temperature",
                    what + ": " + first + " and " + second + " cannot be compared by per cent. Give their difference.",
                    "first",
                    first.toString(),
                    "second",
                    second.toString());
        }
        double larger = Math.max(Math.abs(a), Math.abs(b));
        double apart = larger == 0 ? 0 : Math.abs(a - b) / larger;
        if (!(apart > part * (1 + 1e-12))) {
            return Optional.empty();
        }
        Amount<Q> meant = first.to(second.getUnit());
        return Optional.of(Notice.warning(
                "stated.disagree",
                what + ": " + first + " and " + second + " are given for one thing"
                        + (meant.toString().equals(first.toString()) ? "" : ", but " + first + " is " + meant)
                        + "; they differ by " + Kinds.NUMBER.ofSi(apart, "%") + ". Find out which is right.",
                "what",
                what,
                "first",
                first.toString(),
                "second",
                second.toString(),
                "exact",
                meant.toString(),
                "apart",
                apart));
    }
    /**
     * Compares figures printed for one thing by the digits they are printed in: two agree if either is the other, rounded
     * to its last digit. {@code 12 mil} and {@code 305 µm} do, {@code 12 mil} and {@code 293.0 µm} do as well, for 293.0 µm
     * are 12 mil to the mil; {@code 12.0 mil} and {@code 293 µm} do not.
     *
     * <pre>{@code
     * StatedTwice.inPrint("caliper", Kinds.LENGTH, List.of("12 mil", "305 um")); // []
     * StatedTwice.inPrint("caliper", Kinds.LENGTH, List.of("12.0 mil", "293 um", "0.305 mm")).get(0).arguments().get("odd"); // "293 um"
     * }</pre>
     *
     * @param <Q> the quantity type
     * @param what the thing, for the sentence
     * @param kind the kind of the figures
     * @param figures two or more, as {@link Kind#read} takes them
     * @return empty if all agree; else one warning, which names the odd one where all others agree among themselves
     * @throws Refused if there are fewer than two figures, or one cannot be read
     */
    public static <Q extends Quantity<Q>> List<Notice> inPrint(String what, Kind<Q> kind, List<String> figures) {
        Objects.requireNonNull(what, "what");
        Objects.requireNonNull(kind, "kind");
        Objects.requireNonNull(figures, "figures");
        if (figures.size() < 2) {
            throw Refused.of(
                    "stated.once",
                    what + ": " + figures.size() + " figures given; two or more are compared.",
                    "what",
                    what,
                    "given",
                    figures.size());
        }
        List<Printed> all = figures.stream().map(text -> Printed.of(kind, text)).toList();
        List<Printed> odd = new ArrayList<>();
        for (Printed one : all) {
            List<Printed> others = new ArrayList<>(all);
            others.remove(one);
            if (agree(others)) {
                odd.add(one);
            }
        }
        if (agree(all)) {
            return List.of();
        }
        if (all.size() > 2 && odd.size() == 1) {
            Printed one = odd.get(0);
            Printed other = all.get(0).equals(one) ? all.get(1) : all.get(0);
            String meant = kind.ofSi(other.si(), one.code().isEmpty() ? "1" : one.code())
                    .toString();
            return List.of(Notice.warning(
                    "stated.odd",
                    what + ": " + one.text() + " is the odd one of " + String.join(", ", figures)
                            + "; by the others it is " + meant + ".",
                    "what",
                    what,
                    "odd",
                    one.text(),
                    "figures",
                    figures,
                    "by",
                    meant));
        }
        return List.of(Notice.warning(
                "stated.apart",
                what + ": " + String.join(", ", figures) + " are given for one thing and differ by more than their last"
                        + " digits. Find out which is right.",
                "what",
                what,
                "figures",
                figures));
    }

    /**
     * Compares the figures of each row of a list or a table, as {@link #inPrint(String, Kind, List)} does.
     *
     * @param <Q> the quantity type
     * @param kind the kind of the figures
     * @param rows the figures of each row, by its name
     * @return the warnings, in the order of the rows
     * @throws Refused as {@link #inPrint(String, Kind, List)}
     */
    public static <Q extends Quantity<Q>> List<Notice> inPrint(Kind<Q> kind, Map<String, List<String>> rows) {
        Objects.requireNonNull(kind, "kind");
        Objects.requireNonNull(rows, "rows");
        List<Notice> notices = new ArrayList<>();
        rows.forEach((name, figures) -> notices.addAll(inPrint(name, kind, figures)));
        return List.copyOf(notices);
    }

    private static boolean agree(List<Printed> all) {
        for (int i = 0; i < all.size(); i++) {
            for (int j = 0; j < i; j++) {
                Printed a = all.get(i);
                Printed b = all.get(j);
                double most = Math.max(a.half(), b.half());
                if (Math.abs(a.si() - b.si()) > most + 1e-12 * Math.abs(a.si())) {
                    return false;
                }
            }
        }
        return true;
    }

    /** A figure with half of its last digit, in coherent SI. */
    private record Printed(String text, String code, double si, double half) {
        private static final Pattern POINT = Pattern.compile("\\d*\\.(\\d*)(?:[eE]([+-]?\\d+))?");
        private static final Pattern BAR = Pattern.compile("\\d\\s*[/\u2044]\\s*(\\d+)");
        private static final int FINEST_BAR = 64;

        static <Q extends Quantity<Q>> Printed of(Kind<Q> kind, String text) {
            Amount<Q> amount = kind.read(text);
            double half = lastDigit(text, amount.value()) / 2;
            UnitConverter toSi = amount.getUnit().getConverterTo(kind.siUnit());
            double size = Math.abs(toSi.convert(amount.value() + half) - toSi.convert(amount.value()));
            return new Printed(text.strip(), Units.print(amount).replaceFirst("^\\S+ ?", ""), amount.si(), size);
        }

        /** What one step of the last digit is, in the unit; of a fraction a step of its parts. */
        private static double lastDigit(String text, double value) {
            Matcher point = POINT.matcher(text);
            if (point.find()) {
                int shift = point.group(2) == null ? 0 : Integer.parseInt(point.group(2));
                return Math.pow(10, shift - point.group(1).length());
            }
            Matcher bar = BAR.matcher(text);
            if (bar.find()) {
                return 1.0 / Integer.parseInt(bar.group(1));
            }
            for (int parts = 1; parts <= FINEST_BAR; parts++) {
                if (Math.abs(value * parts - Math.rint(value * parts)) < 1e-9) {
                    return 1.0 / parts;
                }
            }
            return 1;
        }
    }
}
