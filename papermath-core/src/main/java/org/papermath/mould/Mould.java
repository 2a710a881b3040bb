package org.papermath.mould;

import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import org.papermath.format.Format;
import org.papermath.quantity.Amounts;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Limits;
import org.papermath.quantity.Name;
import org.papermath.quantity.Refused;
import org.papermath.shape.Outline;
import org.papermath.shape.Shrinkage;

/**
 * A mould with the opening its deckle leaves. Immutable.
 */
public final class Mould {
    private final String name;
    private final Deckle deckle;

    private final int count;

    private Mould(String name, Deckle deckle, int count) {
        this.name = name;
        this.deckle = deckle;
        this.count = count;
    }

    /**
     * Makes a mould with a plain deckle.
     *
     * @param name what it is called in the studio, not blank
     * @param width the deckle opening across, 5 mm to 5 m
     * @param height the deckle opening along, 5 mm to 5 m
     * @return the mould
     * @throws Refused if the name cannot be one or a side is out of range
     */
    public static Mould of(String name, Quantity<Length> width, Quantity<Length> height) {
        return of(name, Deckle.of(width, height));
    }

    /**
     * Makes a mould with a deckle.
     *
     * @param name what it is called in the studio, not blank
     * @param deckle its deckle
     * @return the mould
     * @throws Refused if the name is blank
     */
    public static Mould of(String name, Deckle deckle) {
        Objects.requireNonNull(name, "name");
        Objects.requireNonNull(deckle, "deckle");
        String called = Name.check(name, "mould");
        if (called.isEmpty()) {
            throw Refused.of("mould.unnamed", "mould: the name is empty; give one.", "given", name);
        }
        return new Mould(called, deckle, 1);
    }

    /**
     * Returns the deckle opening that gives a format with no trim: finished / (1 − shrinkage), each way.
     *
     * @param finished the format to make, its width across
     * @param shrinkage the shrinkage from the deckle to the finished piece
     * @return the opening
     */
    public static Opening openingFor(Format finished, Shrinkage shrinkage) {
        Objects.requireNonNull(finished, "finished");
        return openingFor(finished.width(), finished.height(), shrinkage);
    }

    /**
     * Returns the deckle opening that gives a piece with no trim.
     *
     * @param width the finished width, above zero
     * @param height the finished height, above zero
     * @param shrinkage the shrinkage from the deckle to the finished piece
     * @return the opening
     * @throws Refused if a side is not above zero
     */
    public static Opening openingFor(Quantity<Length> width, Quantity<Length> height, Shrinkage shrinkage) {
        return openingFor(width, height, shrinkage, Amounts.mm(0), Amounts.mm(0));
    }

    /**
     * Returns the deckle opening that gives a piece of which a margin is cut off: (finished + trim) / (1 − shrinkage).
     *
     * @param width the finished width, above zero
     * @param height the finished height, above zero
     * @param shrinkage the shrinkage from the deckle to the dry sheet
     * @param trimAcross what is cut off the width in all, both sides together; zero where both deckle edges are kept
     * @param trimAlong what is cut off the height in all
     * @return the opening
     * @throws Refused if a side is not above zero
     */
    public static Opening openingFor(
            Quantity<Length> width,
            Quantity<Length> height,
            Shrinkage shrinkage,
            Quantity<Length> trimAcross,
            Quantity<Length> trimAlong) {
        Objects.requireNonNull(shrinkage, "shrinkage");
        double w = Kinds.LENGTH.siAboveZero(width, "finished width") + Kinds.LENGTH.si(trimAcross, "trim across");
        double h = Kinds.LENGTH.siAboveZero(height, "finished height") + Kinds.LENGTH.si(trimAlong, "trim along");
        return new Opening(
                Kinds.LENGTH.ofSi(w / (1 - shrinkage.acrossFraction()), "mm"),
                Kinds.LENGTH.ofSi(h / (1 - shrinkage.alongFraction()), "mm"));
    }

    /**
     * Returns the opening that forms an outline of any shape.
     *
     * @param finished the finished outline
     * @param shrinkage the shrinkage from the deckle to the finished piece
     * @return the outline of the opening
     */
    public static Outline openingFor(Outline finished, Shrinkage shrinkage) {
        Objects.requireNonNull(finished, "finished");
        Objects.requireNonNull(shrinkage, "shrinkage");
        return finished.beforeShrinkage(shrinkage);
    }

    /**
     * Returns the name.
     *
     * @return what it is called in the studio
     */
    public String name() {
        return name;
    }

    /**
     * Returns the deckle.
     *
     * @return the deckle
     */
    public Deckle deckle() {
        return deckle;
    }

    /**
     * Returns the mould with another deckle.
     *
     * @param other the deckle
     * @return the mould
     */
    public Mould with(Deckle other) {
        return new Mould(name, other, count);
    }

    /**
     * Returns the mould as one of several alike that are worked in turn, so that one drains while another is dipped.
     *
     * @param count how many there are, within {@link Limits#MOULDS_IN_TURN}
     * @return the mould
     * @throws Refused if the count is out of range
     */
    public Mould inTurn(int count) {
        Limits.MOULDS_IN_TURN.check(count, "moulds worked in turn");
        return new Mould(name, deckle, count);
    }

    /**
     * Returns how many of them are worked in turn.
     *
     * @return the count; 1 for a single mould
     */
    public int count() {
        return count;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Mould that
                && name.equals(that.name)
                && deckle.equals(that.deckle)
                && count == that.count;
    }

    @Override
    public int hashCode() {
        return Objects.hash(name, deckle, count);
    }

    @Override
    public String toString() {
        return name + ", " + deckle + (count > 1 ? ", " + count + " in turn" : "");
    }
}
