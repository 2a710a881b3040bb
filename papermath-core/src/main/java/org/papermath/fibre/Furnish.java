package org.papermath.fibre;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Collectors;
import javax.measure.Quantity;
import javax.measure.quantity.Mass;
import org.papermath.evidence.Scope;
import org.papermath.fibre.BoughtFibre.Form;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Share;
import org.papermath.quantity.Units;

/**
 * The fibre of a paper: one fibre, or several with their shares of the oven-dry mass in the beater. The shares add up to
 * one. Each fibre has the form it is bought in, which says whether it is cooked first. Immutable.
 */
public final class Furnish {
    /** Shares typed with a few digits may miss one by this much; they are then scaled to add up exactly. */
    private static final double SLACK = 1e-6;
    /** What the sum of shares may miss by the rounding of numbers alone; they are then left as they were given. */
    private static final double ROUNDING = 1e-12;

    private static final Amount<Share> NONE = Kinds.SHARE.of(0, "%");

    private final Map<Fibre, Amount<Share>> shares;
    /** The same shares in the order they were given. */
    private final Map<Fibre, Amount<Share>> stated;

    /** The forms that are not the usual ones of their fibres. */
    private final Map<Fibre, Form> forms;

    private final Scope scope;

    private Furnish(Map<Fibre, Amount<Share>> shares, Map<Fibre, Amount<Share>> stated, Map<Fibre, Form> forms) {
        this.forms = Map.copyOf(forms);
        this.shares = Collections.unmodifiableMap(shares);
        this.stated = Collections.unmodifiableMap(stated);
        scope = isBlend()
                ? Scope.of(list(shares))
                : shares.keySet().iterator().next().scope();
    }

    /**
     * Makes a furnish of one fibre.
     *
     * @param fibre the fibre
     * @return the furnish
     */
    public static Furnish of(Fibre fibre) {
        Objects.requireNonNull(fibre, "fibre");
        Map<Fibre, Amount<Share>> all = Map.of(fibre, Kinds.SHARE.of(100, "%"));
        return new Furnish(all, all, Map.of());
    }

    /**
     * Makes a furnish of two fibres.
     *
     * @param firstShare the share of the first fibre in the oven-dry mass, above zero
     * @param first the first fibre
     * @param secondShare the share of the second fibre, above zero
     * @param second the second fibre
     * @return the furnish
     * @throws Refused if a share is not above zero, a fibre stands twice or the shares do not add up to 100 %
     */
    public static Furnish of(Quantity<Share> firstShare, Fibre first, Quantity<Share> secondShare, Fibre second) {
        Objects.requireNonNull(firstShare, "firstShare");
        Objects.requireNonNull(first, "first");
        Objects.requireNonNull(secondShare, "secondShare");
        Objects.requireNonNull(second, "second");
        return of(List.of(firstShare, secondShare), List.of(first, second));
    }

    /**
     * Makes a furnish of three fibres.
     *
     * @param firstShare the share of the first fibre in the oven-dry mass, above zero
     * @param first the first fibre
     * @param secondShare the share of the second fibre, above zero
     * @param second the second fibre
     * @param thirdShare the share of the third fibre, above zero
     * @param third the third fibre
     * @return the furnish
     * @throws Refused if a share is not above zero, a fibre stands twice or the shares do not add up to 100 %
     */
    public static Furnish of(
            Quantity<Share> firstShare,
            Fibre first,
            Quantity<Share> secondShare,
            Fibre second,
            Quantity<Share> thirdShare,
            Fibre third) {
        Objects.requireNonNull(firstShare, "firstShare");
        Objects.requireNonNull(first, "first");
        Objects.requireNonNull(secondShare, "secondShare");
        Objects.requireNonNull(second, "second");
        Objects.requireNonNull(thirdShare, "thirdShare");
        Objects.requireNonNull(third, "third");
        return of(List.of(firstShare, secondShare, thirdShare), List.of(first, second, third));
    }

    /**
     * Makes a furnish of any number of fibres.
     *
     * @param shares the share of each fibre in the oven-dry mass, above zero
     * @return the furnish
     * @throws Refused if there is no fibre, a share is not above zero or the shares do not add up to 100 %
     */
    public static Furnish of(Map<Fibre, ? extends Quantity<Share>> shares) {
        Objects.requireNonNull(shares, "shares");
        List<Quantity<Share>> each = new ArrayList<>();
        List<Fibre> fibres = new ArrayList<>();
        shares.forEach((fibre, share) -> {
            fibres.add(fibre);
            each.add(share);
        });
        return of(each, fibres);
    }

    /**
     * Makes a furnish from what is weighed together.
     *
     * @param ovenDry the oven-dry mass of each fibre, above zero
     * @return the furnish
     * @throws Refused if there is no fibre or a mass is not above zero
     */
    public static Furnish ofMasses(Map<Fibre, ? extends Quantity<Mass>> ovenDry) {
        Objects.requireNonNull(ovenDry, "ovenDry");
        Map<Fibre, Amount<Mass>> masses = new LinkedHashMap<>();
        double sum = 0;
        for (Map.Entry<Fibre, ? extends Quantity<Mass>> part : ovenDry.entrySet()) {
            String what = "oven-dry mass of " + part.getKey();
            Amount<Mass> mass = Kinds.MASS.checkAboveZero(part.getValue(), what);
            sum += mass.si();
            masses.put(part.getKey(), mass);
        }
        double whole = sum;
        Map<Fibre, Amount<Share>> shares = new LinkedHashMap<>();
        masses.forEach((fibre, mass) -> shares.put(fibre, Kinds.SHARE.ofSi(mass.si() / whole, "%")));
        return sorted(shares);
    }

    private static Furnish of(List<Quantity<Share>> shares, List<Fibre> fibres) {
        Map<Fibre, Amount<Share>> map = new LinkedHashMap<>();
        double sum = 0;
        for (int i = 0; i < fibres.size(); i++) {
            Fibre fibre = fibres.get(i);
            Amount<Share> share = Kinds.SHARE.checkAboveZero(shares.get(i), "share of " + fibre);
            sum += share.si();
            if (map.put(fibre, share) != null) {
                throw Refused.of(
                        "furnish.twice",
                        "furnish: " + fibre + " stands twice. Add its shares together.",
                        "fibre",
                        fibre.id());
            }
        }
        double whole = sum;
        if (!map.isEmpty() && Math.abs(whole - 1) > SLACK) {
            throw Refused.of(
                    "furnish.sum",
                    "furnish: the shares " + list(map) + " add up to " + Units.fourDigits(100 * whole)
                            + " %; must be 100 %. Correct a share, or give the oven-dry masses instead.",
                    "sum",
                    whole,
                    "shares",
                    list(map));
        }
        if (Math.abs(whole - 1) > ROUNDING) {
            map.replaceAll((fibre, share) -> Kinds.SHARE.ofSi(share.si() / whole, "%"));
        }
        return sorted(map);
    }

    private static Furnish sorted(Map<Fibre, Amount<Share>> parts) {
        if (parts.isEmpty()) {
            throw Refused.of("furnish.empty", "furnish: no fibre given; at least one is needed.");
        }
        requireOneFibreAnId(parts);
        Map<Fibre, Amount<Share>> shares = new LinkedHashMap<>();
        parts.entrySet().stream()
                .sorted(Comparator.comparingDouble((Map.Entry<Fibre, Amount<Share>> part) ->
                                -part.getValue().si())
                        .thenComparing(part -> part.getKey().id()))
                .forEach(part -> shares.put(part.getKey(), part.getValue()));
        return new Furnish(shares, parts, Map.of());
    }

    /** Two different fibres under one id would share their measured values. */
    private static void requireOneFibreAnId(Map<Fibre, Amount<Share>> parts) {
        Map<String, Fibre> byId = new LinkedHashMap<>();
        for (Fibre fibre : parts.keySet()) {
            if (byId.put(fibre.id(), fibre) != null) {
                throw Refused.of(
                        "furnish.twice",
                        "furnish: two fibres have the id " + fibre.id() + ". Give one of them another id.",
                        "fibre",
                        fibre.id());
            }
        }
    }

    private static String list(Map<Fibre, Amount<Share>> shares) {
        return shares.entrySet().stream()
                .map(part -> Units.fourDigits(100 * part.getValue().si()) + " % "
                        + part.getKey().id())
                .collect(Collectors.joining(" + "));
    }

    /**
     * Returns the fibres, the largest share first.
     *
     * @return an unmodifiable list
     */
    public List<Fibre> fibres() {
        return List.copyOf(shares.keySet());
    }

    /**
     * Returns the shares of the oven-dry mass, the largest first.
     *
     * @return an unmodifiable map
     */
    public Map<Fibre, Amount<Share>> shares() {
        return shares;
    }

    /**
     * Returns the shares of the oven-dry mass in the order they were given, in which they are written down.
     *
     * @return an unmodifiable map
     */
    public Map<Fibre, Amount<Share>> stated() {
        return stated;
    }

    /**
     * Returns the share of one fibre.
     *
     * @param fibre the fibre
     * @return its share of the oven-dry mass; zero if the furnish has none of it
     */
    public Amount<Share> share(Fibre fibre) {
        return shares.getOrDefault(fibre, NONE);
    }

    /**
     * Sets the form in which a fibre is bought. The shares stay those of the stuff in the beater, whatever cooking
     * takes of what was bought.
     *
     * <pre>{@code
     * Furnish.of(Fibres.FLAX_RAW).bought(Fibres.FLAX_RAW, BoughtFibre.Form.HALF_STUFF);
     * }</pre>
     *
     * @param fibre one of its fibres
     * @param form the form it is bought in
     * @return a copy that says so
     * @throws Refused if it has no such fibre
     */
    public Furnish bought(Fibre fibre, Form form) {
        Objects.requireNonNull(fibre, "fibre");
        Objects.requireNonNull(form, "form");
        if (!shares.containsKey(fibre)) {
            throw Refused.of(
                    "furnish.not-in-it",
                    "furnish: " + fibre + " is not one of its fibres, which are " + list(shares)
                            + ". State the form of one of these.",
                    "fibre",
                    fibre.id());
        }
        Map<Fibre, Form> changed = new HashMap<>(forms);
        changed.remove(fibre);
        if (form != Form.usual(fibre)) {
            changed.put(fibre, form);
        }
        return new Furnish(shares, stated, changed);
    }

    /**
     * Returns the form a fibre is bought in.
     *
     * @param fibre the fibre
     * @return the form that was given, or else the {@linkplain Form#usual usual} one
     */
    public Form form(Fibre fibre) {
        Form given = forms.get(fibre);
        return given == null ? Form.usual(fibre) : given;
    }

    /**
     * Divides an oven-dry mass among the fibres.
     *
     * @param ovenDry the oven-dry mass of all fibre
     * @return the oven-dry mass of each, the largest first; an unmodifiable map
     * @throws Refused if the mass is out of range
     */
    public Map<Fibre, Amount<Mass>> masses(Quantity<Mass> ovenDry) {
        Amount<Mass> whole = Kinds.MASS.check(ovenDry, "oven-dry mass");
        Map<Fibre, Amount<Mass>> map = new LinkedHashMap<>();
        shares.forEach((fibre, share) -> map.put(fibre, whole.multiply(share.si())));
        return Collections.unmodifiableMap(map);
    }

    /**
     * Returns whether there is more than one fibre.
     *
     * @return whether it is a blend
     */
    public boolean isBlend() {
        return shares.size() > 1;
    }

    /**
     * Returns the scope that values measured on this furnish are kept under.
     *
     * @return the scope of the fibre; a blend has one of its own, without kin, since a blend is not its largest part
     */
    public Scope scope() {
        return scope;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Furnish that && plain().equals(that.plain()) && forms.equals(that.forms);
    }

    @Override
    public int hashCode() {
        return plain().hashCode();
    }

    private Map<Fibre, Double> plain() {
        Map<Fibre, Double> plain = new HashMap<>();
        shares.forEach((fibre, share) -> plain.put(fibre, share.si()));
        return plain;
    }

    /** Returns for example {@code 60 % cotton-rag + 40 % abaca}. */
    @Override
    public String toString() {
        return list(shares);
    }
}
