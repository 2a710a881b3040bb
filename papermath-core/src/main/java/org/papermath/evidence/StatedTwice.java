package org.papermath.evidence;

import java.util.Objects;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Amounts;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;

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
                what + ": " + first + " and " + second + " are given for one thing, but " + first + " is " + meant
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
}
