package org.papermath.format;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import org.jspecify.annotations.Nullable;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Notice;
import org.papermath.evidence.Scope;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Amounts;
import org.papermath.quantity.ApparentDensity;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;
import org.papermath.shape.Caliper;

/**
 * What a sheet is that was measured and weighed: paper or card, its grammage, its density, the formats of its size.
 *
 * <pre>{@code
 * WeighedSheet sheet = WeighedSheet.of(mm(210), mm(297), grams(5.6)).thick(Caliper.of(micrometres(120), SheetPressure.kilopascals(100)));
 * sheet.verdict(Assumptions.standard()); // "paper of 89.79 g/m², 120 µm, 748.2 kg/m³: ISO A4"
 * }</pre>
 */
public final class WeighedSheet {
    private static final Amount<Length> NEAR = Amounts.mm(2);

    private final Amount<Length> width;
    private final Amount<Length> height;
    private final Amount<Grammage> grammage;
    private final @Nullable Caliper caliper;

    private WeighedSheet(
            Amount<Length> width, Amount<Length> height, Amount<Grammage> grammage, @Nullable Caliper caliper) {
        this.width = width;
        this.height = height;
        this.grammage = grammage;
        this.caliper = caliper;
    }

    /**
     * Makes a sheet from what ruler and scale say.
     *
     * @param width one side, above zero
     * @param height the other side, above zero
     * @param mass the mass of one sheet, above zero
     * @return the sheet
     * @throws Refused if a value is out of range
     */
    public static WeighedSheet of(Quantity<Length> width, Quantity<Length> height, Quantity<Mass> mass) {
        return new WeighedSheet(
                Kinds.LENGTH.checkAboveZero(width, "sheet width"),
                Kinds.LENGTH.checkAboveZero(height, "sheet height"),
                Substance.ofSheets(mass, 1, width, height),
                null);
    }

    /**
     * Returns the same sheet with its thickness.
     *
     * @param thickness the thickness
     * @return the sheet
     * @throws Refused if the sheet is then denser than solid fibre, 1600 kg/m³
     */
    public WeighedSheet thick(Caliper thickness) {
        Objects.requireNonNull(thickness, "thickness");
        thickness.density(grammage);
        return new WeighedSheet(width, height, grammage, thickness);
    }

    /** {@return the grammage, at the moisture the sheet had} */
    public Amount<Grammage> grammage() {
        return grammage;
    }

    /** {@return the apparent density; empty without a thickness} */
    public Optional<Amount<ApparentDensity>> density() {
        return Optional.ofNullable(caliper).map(thickness -> thickness.density(grammage));
    }

    /** {@return the formats whose sides are within 2 mm, the nearest first} */
    public List<Format> formats() {
        return Formats.near(width, height, NEAR);
    }

    /**
     * Returns what is doubtful about it.
     *
     * @param assumptions where the densities paper hardly has are looked up
     * @return a warning where its density is one of them; else empty
     */
    public List<Notice> notices(Assumptions assumptions) {
        Objects.requireNonNull(assumptions, "assumptions");
        return caliper == null ? List.of() : caliper.notices(assumptions, grammage);
    }

    /**
     * Says what it is, the verdict first.
     *
     * @param assumptions where the grammage at which card begins is looked up, and the densities paper hardly has
     * @return for example {@code paper of 89.79 g/m², 120 µm, 748.2 kg/m³: ISO A4}
     */
    public String verdict(Assumptions assumptions) {
        boolean card = grammage.si() >= assumptions.si("sheet.grammage-card", Scope.GENERAL);
        List<String> figures = new ArrayList<>();
        figures.add(grammage.toString());
        if (caliper != null) {
            figures.add(caliper.thickness().toString());
            figures.add(caliper.density(grammage).toString());
        }
        String names = formats().stream().map(Format::name).collect(Collectors.joining(" or "));
        return (notices(assumptions).isEmpty() ? "" : "doubtful, measure again: ")
                + (card ? "card of " : "paper of ")
                + String.join(", ", figures)
                + ": "
                + (names.isEmpty() ? width + " × " + height + ", no named format" : names);
    }

    @Override
    public String toString() {
        return width + " × " + height + ", " + grammage + (caliper == null ? "" : ", " + caliper.thickness());
    }
}
