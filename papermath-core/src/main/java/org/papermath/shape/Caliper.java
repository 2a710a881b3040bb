package org.papermath.shape;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Area;
import javax.measure.quantity.Force;
import javax.measure.quantity.Length;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Notice;
import org.papermath.evidence.Scope;
import org.papermath.notice.SheetNotices;
import org.papermath.quantity.Amount;
import org.papermath.quantity.ApparentDensity;
import org.papermath.quantity.Bulk;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;
import org.papermath.quantity.SheetPressure;

/**
 * The thickness of a sheet with the pressure it was measured under and whether alone or in a pack. Immutable.
 *
 * <p>Paper gives way under the foot: a thickness at 50 kPa is not one at 100 kPa, and a sheet of a pack measures
 * otherwise than a sheet alone. Figures of different make can be put side by side, with a notice that says so.
 *
 * @source single sheet at 50 kPa (TAPPI T 411), at 100 kPa (ISO 534), book bulk at 250 kPa (TAPPI T 500)
 */
public final class Caliper {
    /** 50 kPa, as TAPPI T 411 measures a single sheet. */
    public static final Amount<SheetPressure> FIFTY_KILOPASCALS = SheetPressure.kilopascals(50);
    /** 100 kPa, as ISO 534 measures. */
    public static final Amount<SheetPressure> HUNDRED_KILOPASCALS = SheetPressure.kilopascals(100);
    /** 250 kPa, as TAPPI T 500 measures the bulk of a book. */
    public static final Amount<SheetPressure> BOOK_BULK = SheetPressure.kilopascals(250);

    private final double thickness;
    private final double pressure;
    private final int sheets;

    private Caliper(double thickness, double pressure, int sheets) {
        this.thickness = thickness;
        this.pressure = pressure;
        this.sheets = sheets;
    }

    /**
     * Makes the thickness of a sheet measured alone.
     *
     * @param thickness the thickness, above zero
     * @param pressure the pressure of the foot, zero for a ruler
     * @return the caliper
     * @throws Refused if one of them is out of range
     */
    public static Caliper of(Quantity<Length> thickness, Quantity<SheetPressure> pressure) {
        return ofPack(thickness, 1, pressure);
    }

    /**
     * Makes the thickness of a sheet from a pack: pack over sheets, also called bulking thickness.
     *
     * @param pack the thickness of the pack, above zero
     * @param sheets sheets in it, 1 or more
     * @param pressure the pressure on it, zero for a loose pile
     * @return the caliper
     * @throws Refused if one of them is out of range
     */
    public static Caliper ofPack(Quantity<Length> pack, int sheets, Quantity<SheetPressure> pressure) {
        if (sheets < 1) {
            throw Refused.of(
                    "caliper.sheets", "caliper: " + sheets + " sheets given; a pack has 1 or more.", "given", sheets);
        }
        return new Caliper(
                Kinds.LENGTH.siAboveZero(pack, "thickness") / sheets,
                Kinds.SHEET_PRESSURE.si(pressure, "measuring pressure"),
                sheets);
    }

    /**
     * Returns the thickness of one sheet.
     *
     * @return the thickness
     */
    public Amount<Length> thickness() {
        return Kinds.LENGTH.ofSi(thickness, "um");
    }

    /**
     * Returns the measuring pressure.
     *
     * @return the pressure
     */
    public Amount<SheetPressure> pressure() {
        return Kinds.SHEET_PRESSURE.ofSi(pressure, "kPa");
    }

    /**
     * Returns the sheets measured together.
     *
     * @return 1 for a sheet alone
     */
    public int sheets() {
        return sheets;
    }

    /**
     * Returns the apparent density: grammage over thickness.
     *
     * @param grammage the grammage
     * @return the density at this measuring pressure; {@link #notices} says whether paper has it
     * @throws Refused if the grammage is out of range or the density is above that of solid fibre, 1600 kg/m³
     */
    public Amount<ApparentDensity> density(Quantity<Grammage> grammage) {
        double density = Kinds.GRAMMAGE.si(grammage, "grammage") / thickness;
        SheetNotices.requirePaper(density);
        return Kinds.DENSITY.ofSi(density, "kg/m3");
    }

    /**
     * Returns what is doubtful about a sheet of this thickness, by the shipped limits.
     *
     * @param grammage the grammage
     * @return a warning where its density is one that paper hardly has; else empty
     * @throws Refused as {@link #density}
     */
    public List<Notice> notices(Quantity<Grammage> grammage) {
        return notices(Assumptions.standard(), grammage);
    }

    /**
     * Returns what is doubtful about a sheet of this thickness.
     *
     * @param assumptions where {@code sheet.density-doubtful-low} and {@code sheet.density-doubtful-high} are looked up
     * @param grammage the grammage
     * @return a warning where its density is one that paper hardly has; else empty
     * @throws Refused as {@link #density}
     */
    public List<Notice> notices(Assumptions assumptions, Quantity<Grammage> grammage) {
        Objects.requireNonNull(assumptions, "assumptions");
        return SheetNotices.doubtful(density(grammage), assumptions::si, Scope.GENERAL).stream()
                .toList();
    }

    /**
     * Returns the bulk: thickness over grammage.
     *
     * @param grammage the grammage
     * @return the specific volume at this measuring pressure
     * @throws Refused as {@link #density}
     */
    public Amount<Bulk> bulk(Quantity<Grammage> grammage) {
        return Kinds.BULK.ofSi(1 / density(grammage).si(), "cm3/g");
    }

    /**
     * Returns the thickness a sheet of another grammage has at the same density.
     *
     * @param grammage the grammage of this sheet
     * @param other the other grammage
     * @return the caliper at the same measuring pressure
     * @throws Refused if a grammage is out of range
     */
    public Caliper atGrammage(Quantity<Grammage> grammage, Quantity<Grammage> other) {
        return new Caliper(
                thickness * Kinds.GRAMMAGE.si(other, "other grammage") / Kinds.GRAMMAGE.si(grammage, "grammage"),
                pressure,
                sheets);
    }

    /**
     * Returns the thickness of a number of sheets.
     *
     * @param number the number of sheets, zero or more
     * @return the thickness of the pack at this measuring pressure
     * @throws Refused if the number is below zero
     */
    public Amount<Length> ofSheets(int number) {
        if (number < 0) {
            throw Refused.of("caliper.sheets", "caliper: " + number + " sheets given.", "given", number);
        }
        return Kinds.LENGTH.ofSi(number * thickness, "mm");
    }

    /**
     * Returns the thickness of a book block: two pages to a leaf.
     *
     * @param pages pages, zero or more; an odd page takes a leaf
     * @return the thickness of the leaves
     * @throws Refused if the number is below zero
     */
    public Amount<Length> ofPages(int pages) {
        if (pages < 0) {
            throw Refused.of("caliper.pages", "caliper: " + pages + " pages given.", "given", pages);
        }
        return ofSheets(pages / 2 + pages % 2);
    }

    /**
     * Returns the pages in an inch of book block: two to a leaf.
     *
     * @return the number of pages, not rounded
     */
    public double pagesPerInch() {
        return 2 * 0.0254 / thickness;
    }

    /**
     * Returns the force on a foot of an area.
     *
     * @param foot the area of the foot
     * @return pressure by area
     * @throws Refused if the area is out of range
     */
    public Amount<Force> footForce(Quantity<Area> foot) {
        return Kinds.FORCE.ofSi(pressure * Kinds.AREA.si(foot, "area of the foot"), "N");
    }

    /**
     * Returns what should be known when this thickness is put beside another.
     *
     * @param other the other thickness
     * @return a warning for another pressure, and one for a pack beside a single sheet
     */
    public List<Notice> besides(Caliper other) {
        List<Notice> notices = new ArrayList<>();
        if (Math.abs(pressure - other.pressure) > 0.05 * Math.max(pressure, other.pressure)) {
            notices.add(Notice.warning(
                    "caliper.pressure",
                    "One thickness was measured at " + pressure() + ", the other at " + other.pressure()
                            + "; paper is thinner under the greater pressure, so they do not compare.",
                    "first",
                    pressure,
                    "second",
                    other.pressure));
        }
        if ((sheets == 1) != (other.sheets == 1)) {
            notices.add(Notice.warning(
                    "caliper.pack",
                    "One thickness is of a sheet alone, the other of a pack; the two measure differently.",
                    "first",
                    sheets,
                    "second",
                    other.sheets));
        }
        return List.copyOf(notices);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Caliper that
                && thickness == that.thickness
                && pressure == that.pressure
                && sheets == that.sheets;
    }

    @Override
    public int hashCode() {
        return Objects.hash(thickness, pressure, sheets);
    }

    @Override
    public String toString() {
        return thickness() + " at " + pressure() + (sheets == 1 ? "" : ", from a pack of " + sheets);
    }
}
