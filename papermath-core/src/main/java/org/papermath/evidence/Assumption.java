package org.papermath.evidence;

import java.util.List;
import java.util.Objects;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Units;

/**
 * A number the library relies on, with all that is known of it: what it means, how far it may be off, what it holds
 * for and where it comes from. Immutable.
 *
 * <p>{@code low} and {@code high} are the 5 % and 95 % points of what the value may really be; {@code least} and
 * {@code most} are the bounds it cannot pass.
 */
public final class Assumption {
    private final String id;
    private final Scope scope;
    private final String meaning;
    private final double likely;
    private final double low;
    private final double high;
    private final Shape shape;
    private final double least;
    private final double most;
    private final String unit;
    private final Role role;
    private final Basis basis;
    private final Source source;
    private final List<Lean> leans;

    private final String key;

    // Looked up once: a plan with bands asks for them again and again.
    private final double likelySi;
    private final double lowSi;
    private final double highSi;

    /**
     * How a value that was measured here goes with another assumption, which the measurement had to take as it stands or which
     * it tells as well: were that one so much lower or higher, this one would have come out so much lower or higher too, each
     * on the scale of its distribution.
     *
     * @param id the other assumption
     * @param scope what it holds for
     * @param below so much for each that it is lower
     * @param above so much for each that it is higher
     */
    public record Lean(String id, Scope scope, double below, double above) {
        /**
         * Checks the parts.
         *
         * @param id the other assumption, not blank
         * @param scope what it holds for
         * @param below so much for each that it is lower, finite
         * @param above so much for each that it is higher, finite
         * @throws Refused if the id is blank or a slope is not finite
         */
        public Lean {
            Objects.requireNonNull(id, "id");
            Objects.requireNonNull(scope, "scope");
            double slope = Double.isFinite(below) ? above : below;
            if (id.isBlank() || !Double.isFinite(slope)) {
                throw Refused.of(
                        "assumption.lean",
                        "a value that goes with another: \"" + id + "\" with a slope of " + slope
                                + " given; name the other and give a finite slope.",
                        "id",
                        id,
                        "slope",
                        String.valueOf(slope));
            }
        }

        /**
         * Makes one that is as steep below as above.
         *
         * @param id the other assumption, not blank
         * @param scope what it holds for
         * @param slope so much for each, finite
         * @return how a value goes with it
         * @throws Refused as the constructor
         */
        public static Lean of(String id, Scope scope, double slope) {
            return new Lean(id, scope, slope, slope);
        }

        /**
         * Returns by how much the value is higher where the other is.
         *
         * @param off by how much that is, on its scale; negative for lower
         * @return by how much this one is, on its scale
         */
        public double by(double off) {
            return (off < 0 ? below : above) * off;
        }

        @Override
        public String toString() {
            return "goes with " + id + scope + " by " + Units.fourDigits(below)
                    + (below == above ? "" : " below and " + Units.fourDigits(above) + " above");
        }
    }

    /**
     * Creates an assumption.
     *
     * @param id the dotted name, for example {@code beating.rate}
     * @param scope what it holds for
     * @param meaning what it is, in words
     * @param likely the likely value, in {@code unit}
     * @param low the 5 % point, at most the likely value
     * @param high the 95 % point, at least the likely value
     * @param shape the form of its distribution
     * @param least the least possible value
     * @param most the greatest possible value
     * @param unit a code of the table of units
     * @param role what it is for
     * @param basis how it is known
     * @param source where it was found
     * @throws Refused if a number is not finite (the bounds may be infinite), the order least ≤ low ≤ likely ≤ high ≤
     *     most is broken, a log-normal value is not above zero, the band of a logit-normal value reaches 0 or 1, or
     *     the unit is not in the table
     */
    public Assumption(
            String id,
            Scope scope,
            String meaning,
            double likely,
            double low,
            double high,
            Shape shape,
            double least,
            double most,
            String unit,
            Role role,
            Basis basis,
            Source source) {
        this(id, scope, meaning, likely, low, high, shape, least, most, unit, role, basis, source, List.of());
    }

    private Assumption(
            String id,
            Scope scope,
            String meaning,
            double likely,
            double low,
            double high,
            Shape shape,
            double least,
            double most,
            String unit,
            Role role,
            Basis basis,
            Source source,
            List<Lean> leans) {
        if (id.isBlank() || meaning.isBlank()) {
            throw Refused.of(
                    "assumption.unnamed",
                    "assumption: the id or the meaning is blank; give both.",
                    "id",
                    id,
                    "meaning",
                    meaning);
        }
        if (!(Double.isFinite(likely) && Double.isFinite(low) && Double.isFinite(high))
                || !(least <= low && low <= likely && likely <= high && high <= most)) {
            throw Refused.of(
                    "assumption.order",
                    "assumption " + id + scope + ": " + outOfOrder(likely, low, high, least, most, unit),
                    "id",
                    id,
                    "scope",
                    scope.toString(),
                    "likely",
                    likely,
                    "low",
                    low,
                    "high",
                    high,
                    "least",
                    least,
                    "most",
                    most);
        }
        if (shape == Shape.LOG_NORMAL && low <= 0) {
            throw Refused.of(
                    "assumption.log-normal",
                    "assumption " + id + scope + ": " + shown(low, unit)
                            + " given as its low point; such a value is above zero with its whole band.",
                    "id",
                    id,
                    "low",
                    low);
        }
        likelySi = Units.toSi(likely, unit);
        lowSi = Units.toSi(low, unit);
        highSi = Units.toSi(high, unit);
        if (shape == Shape.LOGIT && low < high && !(lowSi > 0 && highSi < 1)) {
            throw Refused.of(
                    "assumption.logit",
                    "assumption " + id + scope + ": a band from " + shown(low, unit)
                            + " to " + shown(high, unit)
                            + " given; such a share is more than none and less than all with its whole band.",
                    "id",
                    id,
                    "low",
                    low,
                    "high",
                    high);
        }
        this.id = id;
        this.scope = scope;
        this.meaning = meaning;
        this.likely = likely;
        this.low = low;
        this.high = high;
        this.shape = shape;
        this.least = least;
        this.most = most;
        this.unit = unit;
        this.role = role;
        this.basis = basis;
        this.source = source;
        this.leans = leans;
        key = id + scope;
    }

    private static String outOfOrder(double likely, double low, double high, double least, double most, String unit) {
        if (!(Double.isFinite(likely) && Double.isFinite(low) && Double.isFinite(high))
                || Double.isNaN(least)
                || Double.isNaN(most)) {
            return likely + " given with a band from " + low + " to " + high + "; all three must be finite.";
        }
        if (!(low <= likely && likely <= high)) {
            return shown(likely, unit) + " given with a band from " + shown(low, unit) + " to " + shown(high, unit)
                    + "; it must lie in its band. Correct the value or the band.";
        }
        String limits = Double.isInfinite(most)
                ? "at " + shown(least, unit) + " or more"
                : Double.isInfinite(least)
                        ? "at " + shown(most, unit) + " or less"
                        : "from " + shown(least, unit) + " to " + shown(most, unit);
        return (low == high
                        ? shown(likely, unit) + " given; it must be "
                        : "a band from " + shown(low, unit) + " to " + shown(high, unit) + " given; it must lie ")
                + limits
                + ". Check the unit and the decimal point.";
    }

    private static String shown(double value, String unit) {
        String number = Units.number(value);
        return (number.length() > 9 ? Units.fourDigits(value) : number) + (unit.equals("1") ? "" : " " + unit);
    }

    /**
     * Returns a copy with another value, band, scope and origin: what a measurement or a person puts in its place.
     *
     * @param newScope what the new value holds for
     * @param newLikely the likely value, in the same unit
     * @param newLow its 5 % point
     * @param newHigh its 95 % point
     * @param newBasis how it is known
     * @param newSource where it comes from
     * @return the new assumption
     * @throws Refused as the constructor
     */
    public Assumption with(
            Scope newScope, double newLikely, double newLow, double newHigh, Basis newBasis, Source newSource) {
        return new Assumption(
                id, newScope, meaning, newLikely, newLow, newHigh, shape, least, most, unit, role, newBasis, newSource);
    }

    /**
     * Returns a copy that goes with other assumptions. A copy with another value does not.
     *
     * @param others the others
     * @return the new assumption
     */
    public Assumption leaning(List<Lean> others) {
        return new Assumption(
                id,
                scope,
                meaning,
                likely,
                low,
                high,
                shape,
                least,
                most,
                unit,
                role,
                basis,
                source,
                List.copyOf(others));
    }

    /**
     * Returns what the value goes with, where it was measured and the measurement had to take others as they stand. A band of
     * a plan that moves one of them moves this one too.
     *
     * @return an unmodifiable list
     */
    public List<Lean> leans() {
        return leans;
    }

    /**
     * Returns the value at a place on the scale of the distribution, kept inside the bounds.
     *
     * @param scaled the place, as {@link Shape#scaled} gives it
     * @return the value, in {@link #unit()}
     */
    public double at(double scaled) {
        return Math.min(most, Math.max(least, shape.plain(scaled)));
    }

    /**
     * Returns a copy with a wider band: what it may be off besides, either way, added as squares on the scale of the
     * distribution. Where the likely value has no place on that scale, the band stays.
     *
     * @param half half of the band of what is added, on that scale, 0 or more
     * @return the assumption, its likely value and what it goes with the same
     */
    public Assumption widened(double half) {
        double middle = shape.scaled(likely);
        if (half == 0 || !Double.isFinite(middle)) {
            return this;
        }
        return with(
                        scope,
                        likely,
                        at(middle - Math.hypot(middle - shape.scaled(low), half)),
                        at(middle + Math.hypot(shape.scaled(high) - middle, half)),
                        basis,
                        source)
                .leaning(leans);
    }

    /**
     * Returns a copy with a value that is simply given, without a band.
     *
     * @param newScope what the new value holds for
     * @param value the value, in the same unit
     * @return the new assumption
     * @throws Refused as the constructor
     */
    public Assumption given(Scope newScope, double value) {
        return with(newScope, value, value, value, Basis.GIVEN, new Source("given by the user"));
    }

    /**
     * Returns the dotted name.
     *
     * @return for example {@code beating.rate}
     */
    public String id() {
        return id;
    }

    /**
     * Returns what the value holds for.
     *
     * @return the scope
     */
    public Scope scope() {
        return scope;
    }

    /**
     * Returns what the value is, in words.
     *
     * @return the meaning
     */
    public String meaning() {
        return meaning;
    }

    /**
     * Returns the likely value.
     *
     * @return the value in {@link #unit()}
     */
    public double likely() {
        return likely;
    }

    /**
     * Returns the 5 % point.
     *
     * @return the value in {@link #unit()}
     */
    public double low() {
        return low;
    }

    /**
     * Returns the 95 % point.
     *
     * @return the value in {@link #unit()}
     */
    public double high() {
        return high;
    }

    /**
     * Returns the form of the distribution.
     *
     * @return the shape
     */
    public Shape shape() {
        return shape;
    }

    /**
     * Returns the least possible value.
     *
     * @return the value in {@link #unit()}, or negative infinity
     */
    public double least() {
        return least;
    }

    /**
     * Returns the greatest possible value.
     *
     * @return the value in {@link #unit()}, or positive infinity
     */
    public double most() {
        return most;
    }

    /**
     * Returns the unit code.
     *
     * @return a code of the table of units
     */
    public String unit() {
        return unit;
    }

    /**
     * Returns what the assumption is for.
     *
     * @return the role
     */
    public Role role() {
        return role;
    }

    /**
     * Returns how the value is known.
     *
     * @return the basis
     */
    public Basis basis() {
        return basis;
    }

    /**
     * Returns where the value was found.
     *
     * @return the source
     */
    public Source source() {
        return source;
    }

    /**
     * Returns the likely value in coherent SI.
     *
     * @return the value
     */
    public double likelySi() {
        return likelySi;
    }

    /**
     * Returns the 5 % point in coherent SI.
     *
     * @return the value
     */
    public double lowSi() {
        return lowSi;
    }

    /**
     * Returns the 95 % point in coherent SI.
     *
     * @return the value
     */
    public double highSi() {
        return highSi;
    }

    /**
     * Returns the id with its scope, for example {@code beating.rate[abaca]}.
     *
     * @return the key
     */
    public String key() {
        return key;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Assumption that
                && id.equals(that.id)
                && scope.equals(that.scope)
                && Double.compare(likely, that.likely) == 0
                && Double.compare(low, that.low) == 0
                && Double.compare(high, that.high) == 0
                && Double.compare(least, that.least) == 0
                && Double.compare(most, that.most) == 0
                && shape == that.shape
                && unit.equals(that.unit)
                && role == that.role
                && basis == that.basis
                && source.equals(that.source)
                && leans.equals(that.leans)
                && meaning.equals(that.meaning);
    }

    @Override
    public int hashCode() {
        return Objects.hash(id, scope, likely, low, high, unit);
    }

    @Override
    public String toString() {
        String sign = unit.equals("1") ? "" : " " + unit;
        String band = low == high ? "" : " (" + Units.fourDigits(low) + "–" + Units.fourDigits(high) + ")";
        return key() + " = " + Units.fourDigits(likely) + band + sign + ", " + basis.word();
    }
}
