package org.papermath.press;

import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Mass;
import org.papermath.evidence.Assumptions;
import org.papermath.notice.SheetNotices;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;

/**
 * Who lifts a load as it was weighed: a post, a pail, a stack of boards. Guidance for a good posture, a firm hold and few
 * lifts; it is less far from the body, twisted, wet-handed or often. Local codes come first.
 *
 * <pre>{@code
 * Lifting.of(Assumptions.standard(), "post", Amounts.kilograms(27)); // two together or a trolley: post of 27 kg; one person lifts 23 kg at best, two together 31 kg; less far from the body, twisted or often. Local codes come first.
 * }</pre>
 *
 * @source NIOSH publication 94-110 for one person; two together: recalled, not looked up
 */
public final class Lifting {
    private final String what;
    private final Amount<Mass> mass;
    private final Amount<Mass> one;
    private final Amount<Mass> two;

    private Lifting(String what, Amount<Mass> mass, Amount<Mass> one, Amount<Mass> two) {
        this.what = what;
        this.mass = mass;
        this.one = one;
        this.two = two;
    }

    /**
     * Judges a load.
     *
     * @param assumptions where {@code post.lifting-limit} and {@code post.lifting-team} are looked up
     * @param what what is lifted, for the sentence
     * @param mass its mass as weighed, above zero
     * @return who lifts it
     * @throws Refused if the mass is not above zero
     */
    public static Lifting of(Assumptions assumptions, String what, Quantity<Mass> mass) {
        Objects.requireNonNull(assumptions, "assumptions");
        Objects.requireNonNull(what, "what");
        Amount<Mass> load = Kinds.MASS.checkAboveZero(mass, what);
        return new Lifting(what, load, SheetNotices.alone(assumptions::si), SheetNotices.together(assumptions::si));
    }

    /** {@return how many people lift it: 1, 2, or 0 where it is for a trolley only} */
    public int people() {
        return mass.si() <= one.si() ? 1 : mass.si() <= two.si() ? 2 : 0;
    }

    /** {@return into how many parts it has to be taken for one person} */
    public int parts() {
        return (int) Math.min(Integer.MAX_VALUE, Math.ceil(mass.si() / one.si() * (1 - 1e-12)));
    }

    @Override
    public String toString() {
        String verdict = switch (people()) {
            case 1 -> "one person: ";
            case 2 -> "two together or a trolley: ";
            default -> "a trolley, or " + parts() + " parts: ";
        };
        return verdict + what + " of " + mass + "; one person lifts " + one + " at best, two together " + two
                + "; less far from the body, twisted or often. Local codes come first.";
    }
}
