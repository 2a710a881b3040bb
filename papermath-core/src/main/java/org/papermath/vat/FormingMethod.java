package org.papermath.vat;

import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Area;
import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import org.papermath.equation.VatBalance;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Consistency;
import org.papermath.quantity.FibreConcentration;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Share;

/**
 * How a sheet comes on the mould: one dip, stock poured into a deckle box, or several dips of which a part is cast off
 * again. Immutable.
 *
 * <p>The fibre of a sheet is n (1 − cast off) R c q, with n dips of q each at a consistency c and a retention R.
 */
public final class FormingMethod {
    private static final FormingMethod DIPPED = new FormingMethod(Kind.DIPPED, 1, 0);
    private static final FormingMethod POURED = new FormingMethod(Kind.POURED, 1, 0);

    private final Kind kind;
    private final int dips;
    private final double castOff;

    /** The three ways. */
    public enum Kind {
        /** One dip of the mould. */
        DIPPED,
        /** A measured volume poured into a deckle box over the mould. */
        POURED,
        /** Several dips on one screen, part of each cast off over the far edge. */
        SEVERAL_DIPS
    }

    private FormingMethod(Kind kind, int dips, double castOff) {
        this.kind = kind;
        this.dips = dips;
        this.castOff = castOff;
    }

    /**
     * Returns the method of one dip.
     *
     * @return the method
     */
    public static FormingMethod dipped() {
        return DIPPED;
    }

    /**
     * Returns the method of pouring into a deckle box.
     *
     * @return the method
     */
    public static FormingMethod poured() {
        return POURED;
    }

    /**
     * Returns the method of several dips.
     *
     * @param dips how many, 1 to 100
     * @param castOff the share of each dip that is thrown off again before it has drained, below 100 %
     * @return the method
     * @throws Refused if a value is out of range
     */
    public static FormingMethod severalDips(int dips, Quantity<Share> castOff) {
        if (dips < 1 || dips > 100) {
            throw Refused.of(
                    "forming.dips",
                    "dips of a sheet: " + dips + " given; it must be from 1 to 100.",
                    "given",
                    dips,
                    "least",
                    1,
                    "most",
                    100);
        }
        return new FormingMethod(Kind.SEVERAL_DIPS, dips, Kinds.SHARE.siWithin(castOff, "share cast off", 0, 0.99));
    }

    /**
     * Returns which of the three it is.
     *
     * @return the kind
     */
    public Kind kind() {
        return kind;
    }

    /**
     * Returns the dips of a sheet.
     *
     * @return the number
     */
    public int dips() {
        return dips;
    }

    /**
     * Returns the stock each dip, or the pour, must hold for a sheet.
     *
     * @param sheetFibre the oven-dry fibre of the sheet
     * @param consistency the consistency of the stock, above zero
     * @param retention the share of the fibre on the mould that stays, above zero
     * @return the stock on the mould each time
     * @throws Refused if a value is out of range
     */
    public Amount<Mass> stockEach(
            Quantity<Mass> sheetFibre, Quantity<Consistency> consistency, Quantity<Share> retention) {
        return Kinds.MASS.ofSi(
                Kinds.MASS.si(sheetFibre, "fibre of a sheet")
                        / (kept()
                                * Kinds.SHARE.siAboveZero(retention, "retention of the fibre")
                                * Kinds.CONSISTENCY.siAboveZero(consistency, "consistency")),
                "kg");
    }

    /**
     * Returns the consistency the stock must have for a sheet, with a hand that dips or pours as it does: c = m/(n (1 − cast
     * off) R q).
     *
     * <pre>{@code
     * FormingMethod.dipped().consistencyFor(grams(25), kilograms(4), Share.percent(97)); // 0.6443 %
     * }</pre>
     *
     * @param sheetFibre the oven-dry fibre of the sheet
     * @param stockEach the stock on the mould each time, above zero
     * @param retention the share of the fibre on the mould that stays, above zero
     * @return the consistency
     * @throws Refused if a value is out of range, or the sheet is to have more fibre than there would be of stock
     */
    public Amount<Consistency> consistencyFor(
            Quantity<Mass> sheetFibre, Quantity<Mass> stockEach, Quantity<Share> retention) {
        double fibre = Kinds.MASS.si(sheetFibre, "fibre of a sheet");
        double each = Kinds.MASS.siAboveZero(stockEach, "stock on the mould");
        double share = Kinds.SHARE.siAboveZero(retention, "retention of the fibre");
        double consistency = VatBalance.consistencyForSheet(fibre, share, kept() * each);
        if (!(consistency <= 1)) {
            throw Refused.of(
                    "forming.no-consistency",
                    "fibre of a sheet: " + Kinds.MASS.ofSi(fibre, "g") + " given; of "
                            + Kinds.MASS.ofSi(kept() * each, "g") + " of stock on the mould no more than "
                            + Kinds.MASS.ofSi(kept() * each * share, "g")
                            + " could stay, if it were all fibre. Lift more, or dip more often.",
                    "given",
                    Kinds.MASS.ofSi(fibre, "g").toString(),
                    "most",
                    Kinds.MASS.ofSi(kept() * each * share, "g").toString());
        }
        return Kinds.CONSISTENCY.ofSi(consistency, "%");
    }

    /**
     * Returns the oven-dry fibre of a sheet.
     *
     * @param stockEach the stock on the mould each time
     * @param consistency the consistency of the stock
     * @param retention the share of the fibre on the mould that stays
     * @return the mass
     * @throws Refused if a value is out of range
     */
    public Amount<Mass> sheetFibre(
            Quantity<Mass> stockEach, Quantity<Consistency> consistency, Quantity<Share> retention) {
        return Kinds.MASS.ofSi(
                kept()
                        * Kinds.MASS.si(stockEach, "stock on the mould")
                        * Kinds.SHARE.si(retention, "retention of the fibre")
                        * Kinds.CONSISTENCY.si(consistency, "consistency"),
                "g");
    }

    /**
     * Returns the depth of stock over the mould each time for a grammage: H = W/(n (1 − cast off) R c_v).
     *
     * @param grammage the oven-dry grammage of fibre
     * @param perLitre fibre in a litre of stock, above zero
     * @param retention the share of the fibre on the mould that stays, above zero
     * @return the depth
     * @throws Refused if a value is out of range
     */
    public Amount<Length> depthEach(
            Quantity<Grammage> grammage, Quantity<FibreConcentration> perLitre, Quantity<Share> retention) {
        return Kinds.LENGTH.ofSi(
                Kinds.GRAMMAGE.si(grammage, "grammage")
                        / (kept()
                                * Kinds.SHARE.siAboveZero(retention, "retention of the fibre")
                                * Kinds.FIBRE_CONCENTRATION.siAboveZero(perLitre, "fibre per litre of stock")),
                "mm");
    }

    /**
     * Returns the grammage of sheets couched one on another while wet, or of a laminate.
     *
     * @param layers the oven-dry grammage of each, one or more
     * @return the sum
     * @throws Refused if there is none, or a value is out of range
     */
    @SafeVarargs
    public static Amount<Grammage> couchedTogether(Quantity<Grammage>... layers) {
        Objects.requireNonNull(layers, "layers");
        if (layers.length == 0) {
            throw Refused.of("forming.no-layers", "layers: none given; at least one is needed.");
        }
        double sum = 0;
        for (Quantity<Grammage> layer : layers) {
            sum += Kinds.GRAMMAGE.si(layer, "grammage of a layer");
        }
        return Kinds.GRAMMAGE.ofSi(sum, "g/m2");
    }

    /**
     * Returns the grammage a piece of paper gives when it is pulped and poured over a mould: the same as the piece
     * where it is as large, twice that where it is twice as large.
     *
     * @param piece the grammage of the piece
     * @param pieceArea its area
     * @param mould the area of the mould, above zero
     * @return the grammage of the new sheet, nothing lost
     * @throws Refused if a value is out of range
     */
    public static Amount<Grammage> repoured(Quantity<Grammage> piece, Quantity<Area> pieceArea, Quantity<Area> mould) {
        return Kinds.GRAMMAGE.ofSi(
                Kinds.GRAMMAGE.si(piece, "grammage of the piece")
                        * Kinds.AREA.siAboveZero(pieceArea, "area of the piece")
                        / Kinds.AREA.siAboveZero(mould, "area of the mould"),
                "g/m2");
    }

    private double kept() {
        return dips * (1 - castOff);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof FormingMethod that && kind == that.kind && dips == that.dips && castOff == that.castOff;
    }

    @Override
    public int hashCode() {
        return Objects.hash(kind, dips, castOff);
    }

    @Override
    public String toString() {
        return switch (kind) {
            case DIPPED -> "dipped";
            case POURED -> "poured in a deckle box";
            case SEVERAL_DIPS -> dips + " dips, " + Kinds.SHARE.ofSi(castOff, "%") + " of each cast off";
        };
    }
}
