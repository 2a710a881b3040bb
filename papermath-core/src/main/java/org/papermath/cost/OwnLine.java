package org.papermath.cost;

import java.util.Objects;
import java.util.Optional;
import org.papermath.quantity.Limits;
import org.papermath.quantity.Name;
import org.papermath.quantity.Refused;

/**
 * A line of one's own on a list of prices: what the plan cannot know, such as packing, postage, printing by others, or the
 * making ready of a batch. Immutable.
 *
 * <pre>{@code
 * OwnLine.perPiece("sleeve", Money.of("0.12 EUR"));
 * OwnLine.perParcel("postage", Money.of("7.90 EUR"), 50).only("programme");
 * OwnLine.perOrder("proofs", Money.of("25 EUR"));
 * }</pre>
 */
public final class OwnLine {
    /** What it comes with. */
    public enum Basis {
        /** Once in an order: fixed, shared among the pieces by their number. */
        ORDER("per order"),
        /** Once in each batch: fixed, shared among its pieces by the fibre in them. */
        BATCH("per batch"),
        /** With each piece that is sold. */
        PIECE("per piece"),
        /** With each parcel of so many pieces; the last one need not be full. */
        PARCEL("per parcel"),
        /** With each sheet that is formed, trial sheets too. */
        SHEET("per sheet formed");

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

    private final String name;
    private final Basis basis;
    private final Money money;
    private final int inParcel;
    private final Optional<String> piece;

    private OwnLine(String name, Basis basis, Money money, int inParcel, Optional<String> piece) {
        this.name = name;
        this.basis = basis;
        this.money = money;
        this.inParcel = inParcel;
        this.piece = piece;
    }

    private static OwnLine of(String name, Basis basis, Money money, int inParcel) {
        String called = Named.require(Objects.requireNonNull(name, "name"), "own line", "Say what it is for.");
        return new OwnLine(
                called,
                basis,
                requireNotBelowZero(Objects.requireNonNull(money, "money"), called),
                inParcel,
                Optional.empty());
    }

    static Money requireNotBelowZero(Money money, String what) {
        if (money.sign() < 0) {
            throw Refused.of(
                    "price.below-zero", what + ": " + money + " given; must be 0 or more.", "given", money.toString());
        }
        return money;
    }

    /**
     * Makes a line that comes once in an order.
     *
     * @param name what it is for
     * @param money zero or more
     * @return the line
     * @throws Refused if the name is empty, or the money below zero
     */
    public static OwnLine perOrder(String name, Money money) {
        return of(name, Basis.ORDER, money, 1);
    }

    /**
     * Makes a line that comes once in each batch.
     *
     * @param name what it is for
     * @param money zero or more
     * @return the line
     * @throws Refused if the name is empty, or the money below zero
     */
    public static OwnLine perBatch(String name, Money money) {
        return of(name, Basis.BATCH, money, 1);
    }

    /**
     * Makes a line that comes with each piece sold.
     *
     * @param name what it is for
     * @param money zero or more
     * @return the line
     * @throws Refused if the name is empty, or the money below zero
     */
    public static OwnLine perPiece(String name, Money money) {
        return of(name, Basis.PIECE, money, 1);
    }

    /**
     * Makes a line that comes with each parcel, such as postage.
     *
     * @param name what it is for
     * @param money zero or more
     * @param pieces pieces in a parcel, within {@link Limits#PIECES}
     * @return the line
     * @throws Refused if the name is empty, the money below zero, or the count out of range
     */
    public static OwnLine perParcel(String name, Money money, int pieces) {
        return of(name, Basis.PARCEL, money, Limits.PIECES.check(pieces, "pieces in a parcel"));
    }

    /**
     * Makes a line that comes with each sheet formed.
     *
     * @param name what it is for
     * @param money zero or more
     * @return the line
     * @throws Refused if the name is empty, or the money below zero
     */
    public static OwnLine perSheet(String name, Money money) {
        return of(name, Basis.SHEET, money, 1);
    }

    /**
     * Returns the line for one piece of an order only.
     *
     * @param name the name of the piece
     * @return the line
     * @throws Refused if it comes once in an order or a batch, whose pieces share it
     */
    public OwnLine only(String name) {
        Objects.requireNonNull(name, "name");
        if (basis == Basis.ORDER || basis == Basis.BATCH) {
            throw Refused.of(
                    "price.only",
                    this.name + ": it comes once " + basis.words().substring(4) + ", so it cannot be of " + name
                            + " only. Say it per piece, per parcel or per sheet.",
                    "given",
                    name);
        }
        return new OwnLine(this.name, basis, money, inParcel, Optional.of(Name.check(name, "piece")));
    }

    /**
     * Returns what it is for.
     *
     * @return the name
     */
    public String name() {
        return name;
    }

    /**
     * Returns what it comes with.
     *
     * @return the basis
     */
    public Basis basis() {
        return basis;
    }

    /**
     * Returns the money each time.
     *
     * @return zero or more
     */
    public Money money() {
        return money;
    }

    /**
     * Returns the pieces in a parcel.
     *
     * @return 1 where it goes by another basis
     */
    public int inParcel() {
        return inParcel;
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
        return other instanceof OwnLine that
                && name.equals(that.name)
                && basis == that.basis
                && money.equals(that.money)
                && inParcel == that.inParcel
                && piece.equals(that.piece);
    }

    @Override
    public int hashCode() {
        return Objects.hash(name, basis, money, inParcel, piece);
    }

    @Override
    public String toString() {
        return name + ": " + money + " " + basis.words() + (basis == Basis.PARCEL ? " of " + inParcel : "")
                + piece.map(one -> ", " + one + " only").orElse("");
    }
}
