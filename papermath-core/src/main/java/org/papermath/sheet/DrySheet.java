package org.papermath.sheet;

import java.util.List;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import org.papermath.air.Air;
import org.papermath.equation.Moisture;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Notice;
import org.papermath.evidence.Reading;
import org.papermath.evidence.Scope;
import org.papermath.fibre.Furnish;
import org.papermath.fibre.SorptionModel;
import org.papermath.notice.SheetNotices;
import org.papermath.quantity.Amount;
import org.papermath.quantity.ApparentDensity;
import org.papermath.quantity.Bulk;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;

/**
 * A dry sheet in equilibrium with some air. Immutable. What the standards for permanent paper ask of it is in {@link
 * Permanence}.
 */
public final class DrySheet extends Sheet {
    /** What one weighing leaves, of moisture. */
    private static final double LEFT = 0.003;

    private final SorptionModel sorption;

    DrySheet(
            double fibre,
            double additives,
            double minerals,
            double water,
            double width,
            double height,
            double released,
            SorptionModel sorption) {
        super(fibre, additives, minerals, water, width, height, released);
        this.sorption = sorption;
    }

    /** A sheet on the scale, whose air is still to be given. */
    public sealed interface Weighed permits WeighedSheet {
        /** {@return what the scale shows} */
        Amount<Mass> mass();

        /** {@return its width} */
        Amount<Length> width();

        /** {@return its height} */
        Amount<Length> height();

        /**
         * States the air the sheet has lain in; the sheet is taken for finished rag paper, by the shipped assumptions.
         *
         * @param air the air, for some hours
         * @return the sheet
         */
        default DrySheet in(Air air) {
            return in(air, SorptionModel.standard());
        }

        /**
         * States the air the sheet has lain in, and what the sheet is made of, by the shipped assumptions.
         *
         * @param air the air, for some hours
         * @param furnish the fibres
         * @return the sheet
         */
        default DrySheet in(Air air, Furnish furnish) {
            return in(air, SorptionModel.standard(furnish));
        }

        /**
         * States the air the sheet has lain in, and its moisture in air.
         *
         * @param air the air, for some hours
         * @param sorption the moisture in air
         * @return the sheet, its oven-dry mass counted as fibre
         */
        DrySheet in(Air air, SorptionModel sorption);
    }

    private record WeighedSheet(Amount<Mass> mass, Amount<Length> width, Amount<Length> height) implements Weighed {
        @Override
        public DrySheet in(Air air, SorptionModel sorption) {
            double dry = Moisture.ovenDryOfRatio(mass.si(), sorption.ratio(air).si());
            return new DrySheet(dry, 0, 0, mass.si() - dry, width.si(), height.si(), 0, sorption);
        }

        @Override
        public String toString() {
            return mass + ", " + width + " × " + height;
        }
    }

    /**
     * Starts from the scale and the ruler.
     *
     * @param mass what the scale shows, above zero
     * @param width its width, above zero
     * @param height its height, above zero
     * @return the weighed sheet; say its air next
     * @throws Refused if a value is not above zero
     */
    public static Weighed weighed(Quantity<Mass> mass, Quantity<Length> width, Quantity<Length> height) {
        Kinds.MASS.siAboveZero(mass, "mass of the sheet");
        side(width, "width of the sheet");
        side(height, "height of the sheet");
        return new WeighedSheet(
                Kinds.MASS.check(mass, "mass of the sheet"),
                Kinds.LENGTH.check(width, "width of the sheet"),
                Kinds.LENGTH.check(height, "height of the sheet"));
    }

    /**
     * Returns the sheet in the reference atmosphere of 23 °C and 50 % relative humidity.
     *
     * @return the sheet; its size is kept, {@link HygroexpansionModel} gives how that moves
     * @source ISO 187 for the atmosphere
     */
    public DrySheet conditioned() {
        return conditioned(Air.reference());
    }

    /**
     * Returns the sheet after it has come to equilibrium with some air.
     *
     * @param air the air
     * @return the sheet; its size is kept, {@link HygroexpansionModel} gives how that moves
     */
    public DrySheet conditioned(Air air) {
        double left = sorbing() * sorption.ratio(air).si();
        return new DrySheet(fibre, additives, minerals, left, width, height, Math.max(0, water - left), sorption);
    }

    /**
     * Returns the moisture of the sheet in air.
     *
     * @return the model
     */
    public SorptionModel sorption() {
        return sorption;
    }

    /**
     * Returns the caliper at an apparent density: {@code t = W/rho}; {@link DensityModel} predicts the density.
     *
     * @param density the apparent density
     * @return the caliper
     * @throws Refused if the density is out of range
     */
    public Amount<Length> caliper(Quantity<ApparentDensity> density) {
        return Kinds.LENGTH.ofSi(grammage().si() / Kinds.DENSITY.si(density, "apparent density"), "mm");
    }

    /**
     * Returns the apparent density at a measured caliper: {@code rho = W/t}.
     *
     * @param caliper the caliper, above zero; say the pressure of the micrometer with it
     * @return the apparent density
     * @throws Refused if the caliper is not above zero, or the density is above that of solid fibre, 1600 kg/m³
     */
    public Amount<ApparentDensity> density(Quantity<Length> caliper) {
        double density = grammage().si() / Kinds.LENGTH.siAboveZero(caliper, "caliper");
        SheetNotices.requirePaper(density);
        return Kinds.DENSITY.ofSi(density, "kg/m3");
    }

    /**
     * Returns what is doubtful about the sheet at a measured caliper, by the shipped limits.
     *
     * @param caliper the caliper, above zero
     * @return a warning where its density is one that paper hardly has; else empty
     * @throws Refused as {@link #density}
     */
    public List<Notice> notices(Quantity<Length> caliper) {
        return notices(Assumptions.standard(), caliper);
    }

    /**
     * Returns what is doubtful about the sheet at a measured caliper.
     *
     * @param assumptions where {@code sheet.density-doubtful-low} and {@code sheet.density-doubtful-high} are looked up
     * @param caliper the caliper, above zero
     * @return a warning where its density is one that paper hardly has; else empty
     * @throws Refused as {@link #density}
     */
    public List<Notice> notices(Assumptions assumptions, Quantity<Length> caliper) {
        Objects.requireNonNull(assumptions, "assumptions");
        return SheetNotices.doubtful(density(caliper), assumptions::si, Scope.GENERAL).stream()
                .toList();
    }

    /**
     * Returns the bulk at a measured caliper: {@code t/W}.
     *
     * @param caliper the caliper, above zero
     * @return the bulk
     * @throws Refused if the caliper is not above zero
     */
    public Amount<Bulk> bulk(Quantity<Length> caliper) {
        return Kinds.BULK.ofSi(1 / density(caliper).si(), "cm3/g");
    }

    /**
     * Calibrates the moisture of finished sheets by one weighed once more out of the oven: {@code 1 - dry/mass}.
     *
     * @param assumptions the store
     * @param scope the recipe and the dryer
     * @param conditioned the mass after a day in the room
     * @param ovenDry the mass out of the oven
     * @return the store with {@code sheet.moisture-conditioned} measured in that scope
     * @throws Refused if the sheet became heavier
     */
    public static Assumptions calibrate(
            Assumptions assumptions, Scope scope, Reading<Mass> conditioned, Reading<Mass> ovenDry) {
        Objects.requireNonNull(conditioned, "conditioned");
        return dryMatter(assumptions, "sheet.moisture-conditioned", scope, conditioned, ovenDry, LEFT, true);
    }

    @Override
    public String toString() {
        return "dry sheet " + width() + " × " + height() + ", " + mass() + ", " + solids() + " solids, " + grammage();
    }
}
