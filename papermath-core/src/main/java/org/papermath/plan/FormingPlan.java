package org.papermath.plan;

import static org.papermath.plan.PlainNumbers.grams;
import static org.papermath.plan.PlainNumbers.mm;

import java.util.Optional;
import javax.measure.quantity.Mass;
import org.papermath.engine.FormingSheets;
import org.papermath.mould.Mould;
import org.papermath.mould.Opening;
import org.papermath.quantity.Amount;
import org.papermath.text.Digits;

/** The mould and the sheet. */
public final class FormingPlan {
    private record Values(
            Optional<Mould> mould,
            boolean deckleToMake,
            Opening opening,
            int perSheet,
            int across,
            int along,
            boolean turned,
            Amount<Mass> fibre,
            Amount<Mass> solids,
            Optional<String> otherMould,
            Optional<ShapedDeckle> shapedDeckle) {}

    private final Values values;

    private FormingPlan(Values values) {
        this.values = values;
    }

    static FormingPlan of(PlainNumbers in, int p) {
        FormingSheets.Setting sheet = in.settings().sheet(p);
        return new FormingPlan(new Values(
                sheet.mould() < 0
                        ? Optional.empty()
                        : Optional.of(in.studio().moulds().get(sheet.mould())),
                (in.engine().piece(p).deckleEdge() && !sheet.ownDeckle()) || sheet.mould() < 0,
                new Opening(mm(sheet.openingWidth()), mm(sheet.openingHeight())),
                sheet.perSheet(),
                sheet.rowAcross(),
                sheet.rowAlong(),
                sheet.turned(),
                grams(sheet.fibre()),
                grams(sheet.solids()),
                Optional.ofNullable(sheet.other()).map(other -> other(in, other)),
                ShapedDeckle.of(in, p)));
    }

    private static String other(PlainNumbers in, FormingSheets.Other other) {
        return in.studio().moulds().get(other.mould()).name()
                + (other.openings() == 0
                        ? ""
                        : " with " + other.openings() + (other.openings() == 1 ? " opening" : " openings"))
                + ": "
                + (other.hands() == 0
                        ? "as long at the vat"
                        : Digits.three(Math.abs(other.hands()) / 3600) + " h " + (other.hands() > 0 ? "more" : "less")
                                + " at the vat")
                + ", " + Digits.percent(Math.abs(other.area())) + (other.area() >= 0 ? " more" : " less") + " fibre";
    }

    /** {@return the mould to use, or empty if none is large enough} */
    public Optional<Mould> mould() {
        return values.mould;
    }

    /** {@return the next best mould or number of openings, and what it would take more or less in time of hands and in fibre} */
    public Optional<String> otherMould() {
        return values.otherMould;
    }

    /** {@return whether a deckle of this opening has to be made} */
    public boolean deckleToMake() {
        return values.deckleToMake;
    }

    /** {@return the opening of the deckle; of a shaped or split one all its openings over all} */
    public Opening opening() {
        return values.opening;
    }

    /** {@return pieces on a sheet} */
    public int perSheet() {
        return values.perSheet;
    }

    /** {@return pieces in a row across the mould, whose long side runs along} */
    public int across() {
        return values.across;
    }

    /** {@return pieces in a row along the mould} */
    public int along() {
        return values.along;
    }

    /** {@return whether the pieces lie turned on it} */
    public boolean turned() {
        return values.turned;
    }

    /** {@return oven-dry fibre of a sheet} */
    public Amount<Mass> fibre() {
        return values.fibre;
    }

    /** {@return oven-dry solids of a sheet: fibre and all that stays with it} */
    public Amount<Mass> solids() {
        return values.solids;
    }

    /** {@return its openings, where the piece is formed to its outline, or several of it in a deckle that is split} */
    public Optional<ShapedDeckle> shapedDeckle() {
        return values.shapedDeckle;
    }

    @Override
    public String toString() {
        return values.perSheet + " up, opening " + values.opening;
    }
}
