package org.papermath.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Force;
import javax.measure.quantity.Mass;
import org.papermath.equation.AlkalineReserve;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Dose;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;

/**
 * The published requirements for permanent paper as a checklist that says what was computed and what only a laboratory
 * can tell. It is no certificate. Before the work {@link #carbonateToCharge} gives the dose for the reserve that is asked
 * for; of a sheet made or planned {@link #checklist} goes through the requirements.
 *
 * @source requirements of ISO 9706, ISO 11108 and ANSI/NISO Z39.48-1992 as compared by the Library of Congress
 */
public final class Permanence {
    /** Required calcium carbonate over the oven-dry sheet. */
    private static final double RESERVE = 0.020;

    private static final double LIGHTEST = 0.025;
    private static final double FULL_TEAR_FROM = 0.070;
    private static final double FULL_TEAR = 0.350;
    private static final String LABORATORY = "only a laboratory can tell";

    private Permanence() {}

    /** A published standard for permanent paper. */
    public enum Standard {
        /** The American standard, uncoated paper. */
        ANSI_NISO_Z39_48("ANSI/NISO Z39.48-1992", "1 % or less (kappa number 7)"),
        /** The international standard for permanent paper. */
        ISO_9706("ISO 9706", "kappa number 5 or less"),
        /** The international standard for archival paper: it also asks for folding endurance and the fibre. */
        ISO_11108("ISO 11108", "kappa number 5 or less");

        private final String title;
        private final String lignin;

        Standard(String title, String lignin) {
            this.title = title;
            this.lignin = lignin;
        }

        /**
         * Returns the number of the standard.
         *
         * @return the number as it is cited
         */
        public String title() {
            return title;
        }
    }

    /** What is known of a requirement. */
    public enum Status {
        /** Computed, and met if the sheet is made as computed. */
        COMPUTED_MET,
        /** Computed, and not met. */
        COMPUTED_NOT_MET,
        /** Stated by the maker, not computed. */
        DECLARED,
        /** Only a laboratory can tell. */
        LABORATORY
    }

    /** One line of the checklist. */
    public sealed interface Requirement permits FoundRequirement {
        /** {@return what is asked for} */
        String name();

        /** {@return the requirement} */
        String required();

        /** {@return what is known} */
        String found();

        /** {@return how it is known} */
        Status status();
    }

    private record FoundRequirement(String name, String required, String found, Status status) implements Requirement {
        @Override
        public String toString() {
            return name + ": " + required + "; " + found;
        }
    }

    /**
     * Makes the checklist of a sheet by the most demanding of the standards, that for archival paper.
     *
     * @param sheet the dry sheet
     * @param calciumCarbonate the calcium carbonate retained in it
     * @param declaredFibre the fibre as the maker declares it, for example {@code cotton}; empty if nothing is declared
     * @return the lines, an unmodifiable list
     * @throws Refused if there is more carbonate than additives in the sheet
     */
    public static List<Requirement> checklist(DrySheet sheet, Quantity<Mass> calciumCarbonate, String declaredFibre) {
        return checklist(Standard.ISO_11108, sheet, calciumCarbonate, declaredFibre);
    }

    /**
     * Makes the checklist of a sheet.
     *
     * @param standard whose requirements
     * @param sheet the dry sheet
     * @param calciumCarbonate the calcium carbonate retained in it; {@link #asCalciumCarbonate} for that of magnesium
     * @param declaredFibre the fibre as the maker declares it, for example {@code cotton}; empty if nothing is declared
     * @return the lines, an unmodifiable list
     * @throws Refused if there is more carbonate than additives in the sheet
     */
    public static List<Requirement> checklist(
            Standard standard, DrySheet sheet, Quantity<Mass> calciumCarbonate, String declaredFibre) {
        Objects.requireNonNull(sheet, "sheet");
        double carbonate = Kinds.MASS.si(calciumCarbonate, "calcium carbonate in the sheet");
        if (carbonate > sheet.additives().si() * (1 + 1e-12)) {
            throw Refused.of(
                    "permanence.carbonate",
                    "calcium carbonate: " + calciumCarbonate + " given, but the sheet holds " + sheet.additives()
                            + " of additives altogether. Give what is retained in one sheet.",
                    "given",
                    calciumCarbonate.toString(),
                    "limit",
                    sheet.additives().toString());
        }
        double reserve = carbonate / sheet.ovenDry().si();
        List<Requirement> lines = new ArrayList<>();
        // A hair of tolerance, so that a dose worked out for exactly the limit passes.
        lines.add(new FoundRequirement(
                "alkaline reserve",
                "20 g of calcium carbonate in a kilogram of oven-dry sheet or more",
                "computed " + Kinds.DOSE.ofSi(Math.min(reserve, 0.5), "g/kg")
                        + " from the carbonate stated to be retained",
                reserve >= RESERVE * (1 - 1e-9) ? Status.COMPUTED_MET : Status.COMPUTED_NOT_MET));
        lines.add(laboratory("pH of a cold extract", "7.5 to 10"));
        boolean declared = !declaredFibre.isBlank();
        lines.add(new FoundRequirement(
                "lignin",
                standard.lignin,
                declared ? "fibre declared as " + declaredFibre + "; a laboratory settles it" : LABORATORY,
                declared ? Status.DECLARED : Status.LABORATORY));
        lines.add(tear(standard, sheet.conditioned().grammage()));
        if (standard == Standard.ISO_11108) {
            lines.add(laboratory("folding endurance", "2.18 (logarithm of about 151 double folds) or more"));
            lines.add(new FoundRequirement(
                    "fibre",
                    "mainly cotton, linen or hemp, or fully bleached pulp, and declared",
                    declared
                            ? "declared as " + declaredFibre
                            : "not declared; a laboratory can identify it by microscope",
                    declared ? Status.DECLARED : Status.LABORATORY));
        }
        return List.copyOf(lines);
    }

    private static Requirement tear(Standard standard, Amount<Grammage> conditioned) {
        if (standard == Standard.ANSI_NISO_Z39_48) {
            return laboratory("tear index, the weaker direction", "5.25 mN·m²/g or more");
        }
        return laboratory(
                "tear strength, both directions",
                conditioned.si() < LIGHTEST
                        ? "stated from 25 g/m² only"
                        : tearRequired(conditioned).to("N") + " or more");
    }

    private static Requirement laboratory(String name, String required) {
        return new FoundRequirement(name, required, LABORATORY, Status.LABORATORY);
    }

    /**
     * Returns the tear strength asked for: 350 mN from 70 g/m², {@code 6 w - 70} mN with w in g/m² from 25 to 70 g/m².
     *
     * @param conditioned the conditioned grammage, 25 g/m² or more
     * @return the force
     * @throws Refused if the grammage is below 25 g/m²
     */
    public static Amount<Force> tearRequired(Quantity<Grammage> conditioned) {
        double w = Kinds.GRAMMAGE.siWithin(conditioned, "grammage for the tear requirement", LIGHTEST, 20);
        return Kinds.FORCE.ofSi(w >= FULL_TEAR_FROM ? FULL_TEAR : 6 * w - 0.070, "N");
    }

    /**
     * Returns the calcium carbonate to charge per oven-dry fibre for the reserve asked for:
     * {@code (r/(1 - r))/retention}.
     *
     * @param retention the share of the carbonate that stays in the sheet, above zero
     * @return the dose on oven-dry fibre
     * @throws Refused if the retention is not above zero, or so low that more than half the fibre's mass would be
     *     charged
     */
    public static Amount<Dose> carbonateToCharge(Quantity<org.papermath.quantity.Share> retention) {
        double kept = Kinds.SHARE.siAboveZero(retention, "retention of calcium carbonate");
        return Kinds.DOSE.ofSi(RESERVE / (1 - RESERVE) / kept, "g/kg");
    }

    /**
     * Returns the calcium carbonate that takes up as much acid as some magnesium carbonate.
     *
     * @param magnesiumCarbonate the magnesium carbonate
     * @return the calcium carbonate for it
     * @throws Refused if the mass is out of range
     */
    public static Amount<Mass> asCalciumCarbonate(Quantity<Mass> magnesiumCarbonate) {
        return Kinds.MASS.ofSi(
                AlkalineReserve.equivalent(
                        Kinds.MASS.si(magnesiumCarbonate, "magnesium carbonate"),
                        AlkalineReserve.MAGNESIUM_CARBONATE,
                        AlkalineReserve.CALCIUM_CARBONATE),
                "g");
    }
}
