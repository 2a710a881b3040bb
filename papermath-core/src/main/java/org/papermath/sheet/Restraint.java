package org.papermath.sheet;

import java.util.List;
import java.util.Objects;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Scope;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Share;

/**
 * What holds a sheet while it dries: the share of the free shrinkage it keeps back is an assumption
 * ({@code restraint.share}) under its subject.
 *
 * @param name the name in words
 * @param subject the subject in the table of assumptions; where none is known the share is 0 across the held direction
 * @param heldAlong whether it holds along the mould
 * @param heldAcross whether it holds across the mould
 */
public record Restraint(String name, String subject, boolean heldAlong, boolean heldAcross) {
    /**
     * Checks that nothing is missing.
     *
     * @param name the name in words
     * @param subject the subject in the table of assumptions; where none is known the share is 0 across the held
     *     direction
     * @param heldAlong whether it holds along the mould
     * @param heldAcross whether it holds across the mould
     */
    public Restraint {
        Objects.requireNonNull(name, "name");
        Objects.requireNonNull(subject, "subject");
    }

    /** A stack of blotters and fluted boards under weight, with a fan or without. */
    public static final Restraint STACK = new Restraint("stack", "stack", true, true);

    /** Boards, glass, walls or the mould the wet sheet is brushed or left on. */
    public static final Restraint BOARD = new Restraint("board", "board", true, true);

    /** Dried on the mould itself, which holds like a board. */
    public static final Restraint MOULD = new Restraint("on the mould", "board", true, true);

    /** Blotters changed by hand under boards. */
    public static final Restraint BLOTTERS = new Restraint("blotters", "blotters", true, true);

    /** Spurs of several sheets hung together. */
    public static final Restraint SPUR = new Restraint("spur", "spur", true, true);

    /** Loose on a felt or fabric. */
    public static final Restraint FELT = new Restraint("loose on felt", "felt", true, true);

    /** Hung singly, or on a net or line. */
    public static final Restraint HUNG = new Restraint("hung", "hung", true, true);

    /** Laid over a straight wire of an armature: held along the wire, free across it. */
    public static final Restraint WIRE = new Restraint("wire", "wire", true, false);

    private static final List<Restraint> ALL = List.of(STACK, BOARD, MOULD, BLOTTERS, SPUR, FELT, HUNG, WIRE);

    /**
     * Finds a restraint by its name or subject.
     *
     * @param text for example {@code stack}, or what a dryer says
     * @return the restraint
     * @throws Refused if there is none of that name
     */
    public static Restraint of(String text) {
        return ALL.stream()
                .filter(one -> one.name.equals(text) || one.subject.equals(text))
                .findFirst()
                .orElseThrow(() -> Refused.of(
                        "restraint.unknown",
                        "restraint: \"" + text + "\" is not known. Known are: "
                                + String.join(
                                        ", ", ALL.stream().map(Restraint::name).toList()) + ".",
                        "given",
                        text,
                        "accepted",
                        ALL.stream().map(Restraint::name).toList()));
    }

    /**
     * Returns every restraint.
     *
     * @return an unmodifiable list
     */
    public static List<Restraint> all() {
        return ALL;
    }

    /**
     * Returns the share of the free shrinkage it keeps back in the direction it holds; a wire keeps back the whole.
     *
     * @param assumptions the store
     * @return the share
     * @throws Refused if the store does not hold it
     */
    public Amount<Share> share(Assumptions assumptions) {
        return Kinds.SHARE.ofSi(shareSi(assumptions, true), "%");
    }

    double shareSi(Assumptions assumptions, boolean along) {
        if (along ? !heldAlong : !heldAcross) {
            return 0;
        }
        // A wire is stiff against paper: it holds all, by definition rather than by measurement.
        return subject.equals(WIRE.subject) ? 1 : assumptions.si("restraint.share", Scope.of(subject));
    }

    @Override
    public String toString() {
        return name;
    }
}
