package org.papermath.cost;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Mass;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Limits;
import org.papermath.quantity.Name;
import org.papermath.quantity.Refused;

/**
 * How pieces are posted by a {@link PostageTable}: each by itself, or so many in a parcel. Immutable.
 *
 * <pre>{@code
 * Postage.asMailed();                               // letters, each by the service its plan says takes it
 * Postage.each("letter").with("square").only("seat card");
 * Postage.parcels("parcel", 100, grams(350));       // with the mass of box and wrapping
 * }</pre>
 */
public final class Postage {
    /** What is posted at a time. */
    public enum Basis {
        /** A letter as its plan has it mailed. */
        MAILED("as mailed"),
        /** Each piece. */
        PIECE("per piece"),
        /** A parcel of so many pieces; the last one need not be full. */
        PARCEL("per parcel");

        private final String words;

        Basis(String words) {
            this.words = words;
        }

        /**
         * Returns the basis in words.
         *
         * @return for example {@code per parcel}
         */
        public String words() {
            return words;
        }
    }

    private final Basis basis;
    private final Optional<String> service;
    private final int inParcel;
    private final Amount<Mass> wrapping;
    private final List<String> surcharges;
    private final Optional<String> piece;

    private Postage(
            Basis basis,
            Optional<String> service,
            int inParcel,
            Amount<Mass> wrapping,
            List<String> surcharges,
            Optional<String> piece) {
        this.basis = basis;
        this.service = service;
        this.inParcel = inParcel;
        this.wrapping = wrapping;
        this.surcharges = surcharges;
        this.piece = piece;
    }

    private static String named(String service) {
        String name = Name.check(Objects.requireNonNull(service, "service"), "service of the post");
        if (name.isEmpty()) {
            throw Refused.of(
                    "price.unnamed", "service of the post: the name is empty. Say what it is.", "of", "service");
        }
        return name;
    }

    private static Amount<Mass> nothing() {
        return Kinds.MASS.ofSi(0, "g");
    }

    /**
     * Posts letters by the service that takes them by the limits of the country they are mailed in; pieces that are not mailed
     * are left out.
     *
     * @return the postage
     */
    public static Postage asMailed() {
        return new Postage(Basis.MAILED, Optional.empty(), 1, nothing(), List.of(), Optional.empty());
    }

    /**
     * Posts each piece by itself: what is mailed with its envelope and what is in it, another as it is.
     *
     * @param service the service, as the table has it
     * @return the postage
     * @throws Refused if the name is empty
     */
    public static Postage each(String service) {
        return new Postage(Basis.PIECE, Optional.of(named(service)), 1, nothing(), List.of(), Optional.empty());
    }

    /**
     * Posts pieces in parcels; the last one need not be full.
     *
     * @param service the service, as the table has it
     * @param pieces pieces in a parcel, within {@link Limits#PIECES}
     * @param wrapping the mass of box and wrapping, zero or more
     * @return the postage
     * @throws Refused if the name is empty, or a value out of range
     */
    public static Postage parcels(String service, int pieces, Quantity<Mass> wrapping) {
        return new Postage(
                Basis.PARCEL,
                Optional.of(named(service)),
                Limits.PIECES.check(pieces, "pieces in a parcel"),
                Kinds.MASS.check(wrapping, "mass of the wrapping"),
                List.of(),
                Optional.empty());
    }

    /**
     * Returns the postage with a surcharge more.
     *
     * @param surcharge its name, as the table has it
     * @return the postage
     * @throws Refused if the name is empty
     */
    public Postage with(String surcharge) {
        List<String> more = new ArrayList<>(surcharges);
        more.add(named(surcharge));
        return new Postage(basis, service, inParcel, wrapping, List.copyOf(more), piece);
    }

    /**
     * Returns the postage of one piece of an order only.
     *
     * @param name the name of the piece
     * @return the postage
     */
    public Postage only(String name) {
        Objects.requireNonNull(name, "name");
        return new Postage(basis, service, inParcel, wrapping, surcharges, Optional.of(Name.check(name, "piece")));
    }

    /**
     * Returns what is posted at a time.
     *
     * @return the basis
     */
    public Basis basis() {
        return basis;
    }

    /**
     * Returns the service.
     *
     * @return its name; empty where it is the one that takes the letter
     */
    public Optional<String> service() {
        return service;
    }

    /**
     * Returns the pieces in a parcel.
     *
     * @return 1 where each is posted by itself
     */
    public int inParcel() {
        return inParcel;
    }

    /**
     * Returns the mass of box and wrapping.
     *
     * @return zero or more
     */
    public Amount<Mass> wrapping() {
        return wrapping;
    }

    /**
     * Returns the surcharges that come with each.
     *
     * @return an unmodifiable list of names
     */
    public List<String> surcharges() {
        return surcharges;
    }

    /**
     * Returns the one piece it is for.
     *
     * @return the name; empty where it is for all
     */
    public Optional<String> piece() {
        return piece;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Postage that
                && basis == that.basis
                && service.equals(that.service)
                && inParcel == that.inParcel
                && wrapping.equals(that.wrapping)
                && surcharges.equals(that.surcharges)
                && piece.equals(that.piece);
    }

    @Override
    public int hashCode() {
        return Objects.hash(basis, service, inParcel, wrapping, surcharges, piece);
    }

    @Override
    public String toString() {
        return service.orElse("as mailed")
                + (basis == Basis.PARCEL ? ", " + inParcel + " in a parcel" : "")
                + (wrapping.si() > 0 ? ", wrapping of " + wrapping : "")
                + (surcharges.isEmpty() ? "" : ", with " + String.join(", ", surcharges))
                + piece.map(one -> ", " + one + " only").orElse("");
    }
}
