package org.papermath.fibre;

import javax.measure.Quantity;
import org.papermath.equation.Cooking;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Dose;
import org.papermath.quantity.HydroxideDose;
import org.papermath.quantity.Kinds;

/**
 * What raw fibre and rags are cooked in. A dose of it is pure, dry alkali; what is bought weaker, such as washing soda with
 * its crystal water, is given to {@link Cook#withActive}.
 *
 * @source molar masses recalled, not looked up; use in the trade: Watt, The Art of Paper-Making, 1890
 */
public enum Alkali {
    /** Sodium carbonate, Na2CO3, without crystal water: two hydroxides once its carbonate is used up. */
    SODA_ASH("soda ash", "soda-ash", Cooking.SODIUM_CARBONATE, 2),
    /** Sodium hydroxide, NaOH, called lye in many recipes. */
    CAUSTIC_SODA("caustic soda", "caustic-soda", Cooking.SODIUM_HYDROXIDE, 1),
    /** Calcium hydroxide, Ca(OH)2; most of it lies undissolved in the bath and follows as it is used. */
    SLAKED_LIME("slaked lime", "slaked-lime", Cooking.CALCIUM_HYDROXIDE, 2),
    /** Potassium carbonate, K2CO3, the alkali of wood ash. */
    POTASH("potash", "potash", Cooking.POTASSIUM_CARBONATE, 2);

    private final String words;
    private final String id;
    private final double molarMass;
    private final int hydroxides;

    Alkali(String words, String id, double molarMass, int hydroxides) {
        this.words = words;
        this.id = id;
        this.molarMass = molarMass;
        this.hydroxides = hydroxides;
    }

    /**
     * Returns the id it has as a scope of assumptions.
     *
     * @return for example {@code soda-ash}
     */
    public String id() {
        return id;
    }

    /**
     * Returns the hydroxide a dose can give: dose over molar mass, times the hydroxides a molecule gives.
     *
     * @param onFibre pure alkali over oven-dry fibre
     * @return mol of hydroxide per kg of oven-dry fibre
     * @throws org.papermath.quantity.Refused if the dose is out of range
     */
    public Amount<HydroxideDose> hydroxide(Quantity<Dose> onFibre) {
        double dose = Kinds.DOSE.si(onFibre, words + " on oven-dry fibre");
        return Kinds.HYDROXIDE_DOSE.ofSi(Cooking.hydroxide(dose, molarMass, hydroxides), "mol/kg");
    }

    /**
     * Returns the dose that can give an amount of hydroxide.
     *
     * @param hydroxide hydroxide over oven-dry fibre
     * @return pure alkali over oven-dry fibre
     * @throws org.papermath.quantity.Refused if the hydroxide is out of range, or takes more than 50 % on the fibre
     */
    public Amount<Dose> doseFor(Quantity<HydroxideDose> hydroxide) {
        double moles = Kinds.HYDROXIDE_DOSE.si(hydroxide, "hydroxide on oven-dry fibre");
        return Kinds.DOSE.ofSi(Cooking.doseForHydroxide(moles, molarMass, hydroxides), "%");
    }

    @Override
    public String toString() {
        return words;
    }
}
