package org.papermath.pulp;

import java.util.Objects;
import java.util.Optional;
import javax.measure.Quantity;
import org.jspecify.annotations.Nullable;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Name;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Share;

/**
 * Something added to the pulp: its name, what it is for, and how much of the product is active matter. Immutable.
 *
 * <p>The purpose decides the usual place in the order of addition: pigment and filler first, then the agent that fixes
 * them, then carbonate, size and formation aid.
 */
public final class Additive {
    private final String name;
    private final Purpose purpose;
    private final @Nullable Amount<Share> active;

    /** What an additive is for, in the usual order of addition. */
    public enum Purpose {
        /** Mineral filler such as china clay. */
        FILLER("clay"),
        /** Colour in particles. */
        PIGMENT("pigment"),
        /** Fixes particles to the fibre. */
        RETENTION_AID("retention-aid"),
        /** Calcium carbonate as alkaline reserve; how much of it the standards ask for is in {@code Permanence}. */
        CARBONATE("calcium-carbonate"),
        /** Sizing in the pulp. */
        INTERNAL_SIZE("ketene-dimer-size"),
        /** Slows the drainage so that long fibre lies evenly. */
        FORMATION_AID("formation-aid"),
        /** Cellulose ethers and other binders. */
        BINDER("methylcellulose");

        private final String subject;

        Purpose(String subject) {
            this.subject = subject;
        }

        /**
         * Returns the name under which the table of assumptions keeps the retention of this purpose.
         *
         * @return the subject of the scope
         */
        public String subject() {
            return subject;
        }

        /**
         * Returns whether it stays as solid matter in the sheet, and so counts in its weight.
         *
         * @return false only for what goes in by traces
         */
        public boolean isParticle() {
            return this == FILLER || this == PIGMENT || this == CARBONATE;
        }
    }

    private Additive(String name, Purpose purpose, @Nullable Amount<Share> active) {
        this.name = name;
        this.purpose = purpose;
        this.active = active;
    }

    /**
     * Makes an additive whose product is all active matter, such as a dry powder.
     *
     * @param name its name, not empty
     * @param purpose what it is for
     * @return the additive
     * @throws Refused if the name is empty
     */
    public static Additive of(String name, Purpose purpose) {
        Objects.requireNonNull(name, "name");
        Objects.requireNonNull(purpose, "purpose");
        String called = Name.checkKey(name, "additive");
        if (called.isEmpty()) {
            throw Refused.of("additive.unnamed", "additive: the name is empty; give one.");
        }
        return new Additive(called, purpose, null);
    }

    /**
     * Returns the additive as a product with a stated active fraction, such as an emulsion.
     *
     * @param fraction active matter over product, above zero, at most 100 %
     * @return the additive
     * @throws Refused if the fraction is out of range
     */
    public Additive active(Quantity<Share> fraction) {
        Amount<Share> part = Kinds.SHARE.checkAboveZero(fraction, "active fraction of " + name);
        return new Additive(name, purpose, part.si() == 1 ? null : part);
    }

    /**
     * Returns the name.
     *
     * @return the name
     */
    public String name() {
        return name;
    }

    /**
     * Returns what it is for.
     *
     * @return the purpose
     */
    public Purpose purpose() {
        return purpose;
    }

    /**
     * Returns active matter over product, where the product is not all active.
     *
     * @return the fraction, or empty for a product that is all active matter
     */
    public Optional<Amount<Share>> activeFraction() {
        return Optional.ofNullable(active);
    }

    private double activeSi() {
        return active == null ? 1 : active.si();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Additive that
                && name.equals(that.name)
                && purpose == that.purpose
                && activeSi() == that.activeSi();
    }

    @Override
    public int hashCode() {
        return Objects.hash(name, purpose, activeSi());
    }

    @Override
    public String toString() {
        return activeFraction()
                .map(fraction -> name + " (" + fraction + " active)")
                .orElse(name);
    }
}
