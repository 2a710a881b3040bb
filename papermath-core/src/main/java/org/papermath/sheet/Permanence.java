package org.papermath.sheet;

import java.util.ArrayList;
import java.util.List;

import javax.measure.Quantity;
import javax.measure.quantity.Force;
import javax.measure.quantity.Mass;

import org.papermath.quantity.Amount;
import org.papermath.quantity.Dose;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;

/**
 * The published requirements for permanent paper as a checklist that says what was computed and what only a laboratory
 * can tell. It is no certificate.
 *
 * @source requirements of ISO 9706, ISO 11108 and ANSI/NISO Z39.48-1992 as compared by the Library of Congress
 */
public final class Permanence {
    /** Required calcium carbonate over the oven-dry sheet. */
    private static final double RESERVE = 0.020;
    private static final double LIGHTEST = 0.025;
    private static final double FULL_TEAR_FROM = 0.070;
    private static final double FULL_TEAR = 0.350;

    private Permanence() {
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

    /**
     * One line of the checklist.
     *
     * @param name what is asked for
     * @param required the requirement
     * @param found what is known
     * @param status how it is known
     */
    public record Requirement(String name, String required, String found, Status status) {
        @Override
        public String toString() {
            return name + ": " + required + "; " + found;
        }
    }

    /**
     * Makes the checklist of a sheet.
     *
     * @param sheet the dry sheet
     * @param calciumCarbonate the calcium carbonate retained in it
     * @param declaredFibre the fibre as the maker declares it, for example {@code cotton}; empty if nothing is declared
     * @return the lines, an unmodifiable list
     * @throws Refused if there is more carbonate than additives in the sheet
     */
    public static List<Requirement> checklist(DrySheet sheet, Quantity<Mass> calciumCarbonate, String declaredFibre) {
        double carbonate = Kinds.MASS.si(calciumCarbonate, "calcium carbonate in the sheet");
        if (carbonate > sheet.additives().si() * (1 + 1e-12)) {
            throw Refused.of("permanence.carbonate",
                    "calcium carbonate: " + calciumCarbonate + " given, but the sheet holds " + sheet.additives()
                            + " of additives altogether. Give what is retained in one sheet.",
                    "given", calciumCarbonate.toString(), "limit", sheet.additives().toString());
        }
        double reserve = carbonate / sheet.ovenDry().si();
        List<Requirement> lines = new ArrayList<>();
        // A hair of tolerance, so that a dose worked out for exactly the limit passes.
        lines.add(new Requirement("alkaline reserve",
                "20 g of calcium carbonate in a kilogram of oven-dry sheet or more",
                "computed " + Kinds.DOSE.ofSi(Math.min(reserve, 0.5), "g/kg") + " from what is said to be retained",
                reserve >= RESERVE * (1 - 1e-9) ? Status.COMPUTED_MET : Status.COMPUTED_NOT_MET));
        lines.add(new Requirement("pH of a cold extract", "7.5 to 10", "only a laboratory can tell",
                Status.LABORATORY));
        lines.add(new Requirement("lignin", "kappa number 5 or less",
                declaredFibre.isBlank() ? "only a laboratory can tell"
                        : "fibre declared as " + declaredFibre + "; a laboratory settles it",
                declaredFibre.isBlank() ? Status.LABORATORY : Status.DECLARED));
        double grammage = sheet.conditioned().grammage().si();
        lines.add(new Requirement("tear strength, both directions",
                grammage < LIGHTEST ? "stated from 25 g/m² only" : tearRequired(sheet.conditioned().grammage()).to("N")
                + " or more",
                "only a laboratory can tell", Status.LABORATORY));
        lines.add(new Requirement("folding endurance, archival paper only",
                "2.18 (logarithm of about 151 double folds) or more",
                "only a laboratory can tell", Status.LABORATORY));
        return List.copyOf(lines);
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
}
