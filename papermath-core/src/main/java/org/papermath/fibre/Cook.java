package org.papermath.fibre;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Volume;
import org.papermath.equation.Cooking;
import org.papermath.evidence.Assumption;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Estimate;
import org.papermath.evidence.Notice;
import org.papermath.evidence.Scope;
import org.papermath.evidence.WithNotices;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Dose;
import org.papermath.quantity.HydroxideDose;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.LiquorRatio;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Share;
import org.papermath.quantity.SolutionStrength;
import org.papermath.quantity.Unclear;

/**
 * One pot of raw fibre or rags cooked in alkali: what to weigh, how strong the bath is, what stuff comes out and the water
 * to rinse it. Immutable.
 *
 * <p>A dose is pure alkali over <em>oven-dry</em> fibre, as everywhere in this library. Recipes weigh fibre dried in the air,
 * which holds about a tenth of water; {@link BoughtFibre#ovenDryRaw} converts one to the other. Which percentage a note
 * means, of the fibre or of the bath, must be known: {@link #whichBase} asks.
 *
 * <p>How long to cook is not given here: it is ended by feel, when a strand comes apart across its length.
 *
 * @source alkali on fibre, bath as alkali over litres: definitions; yields: Cross and Bevan, A Text-Book of Paper-Making,
 *     1888
 */
public final class Cook {
    private final BoughtFibre fibre;
    private final double ovenDry;
    private final Alkali alkali;
    private final double dose;
    private final double liquor;
    private final double active;

    private Cook(BoughtFibre fibre, double ovenDry, Alkali alkali, double dose, double liquor, double active) {
        this.fibre = fibre;
        this.ovenDry = ovenDry;
        this.alkali = alkali;
        this.dose = dose;
        this.liquor = liquor;
        this.active = active;
    }

    /**
     * Describes a cook by its dose on the fibre.
     *
     * @param fibre what is cooked; its form and yield count, its moisture does not
     * @param ovenDry the oven-dry fibre that goes into the pot, above zero
     * @param alkali the alkali
     * @param dose pure alkali over oven-dry fibre, 0 to 50 %
     * @param liquor the water it is cooked in, above zero
     * @return the cook
     * @throws Refused if a value is out of range
     */
    public static Cook of(
            BoughtFibre fibre, Quantity<Mass> ovenDry, Alkali alkali, Quantity<Dose> dose, Quantity<Volume> liquor) {
        Objects.requireNonNull(fibre, "fibre");
        Objects.requireNonNull(alkali, "alkali");
        return new Cook(
                fibre,
                Kinds.MASS.siAboveZero(ovenDry, "oven-dry " + fibre.fibre() + " in the pot"),
                alkali,
                Kinds.DOSE.si(dose, alkali + " on oven-dry fibre"),
                Kinds.VOLUME.siAboveZero(liquor, "cooking liquor"),
                1);
    }

    /**
     * Describes a cook at the usual dose of its alkali: of soda ash or caustic soda for raw fibre, of alkali for rag.
     *
     * @param fibre what is cooked
     * @param ovenDry the oven-dry fibre that goes into the pot, above zero
     * @param alkali the alkali
     * @param liquor the water it is cooked in, above zero
     * @param assumptions where the usual dose is looked up
     * @return the cook
     * @throws Refused if a value is out of range, or that alkali has no usual dose on that fibre
     */
    public static Cook usual(
            BoughtFibre fibre,
            Quantity<Mass> ovenDry,
            Alkali alkali,
            Quantity<Volume> liquor,
            Assumptions assumptions) {
        Objects.requireNonNull(fibre, "fibre");
        Objects.requireNonNull(alkali, "alkali");
        Objects.requireNonNull(assumptions, "assumptions");
        Assumption found = usualDose(fibre.fibre(), fibre.form(), alkali, assumptions)
                .orElseThrow(() -> Refused.of(
                        "cook.no-usual-dose",
                        alkali + " on " + fibre.fibre() + ": there is no usual dose of it; give the dose of a recipe.",
                        "alkali",
                        alkali.id(),
                        "fibre",
                        fibre.fibre().id()));
        return of(fibre, ovenDry, alkali, Kinds.DOSE.ofSi(found.likelySi(), "%"), liquor);
    }

    /**
     * Looks the usual dose of an alkali up: on rag it is one for all, of caustic soda it depends on the fibre.
     *
     * @param fibre what is cooked
     * @param form the form it is bought in
     * @param alkali the alkali
     * @param assumptions where to look
     * @return pure alkali over oven-dry fibre before cooking, or empty if there is no usual one
     */
    public static Optional<Assumption> usualDose(
            Fibre fibre, BoughtFibre.Form form, Alkali alkali, Assumptions assumptions) {
        Objects.requireNonNull(fibre, "fibre");
        Objects.requireNonNull(form, "form");
        Objects.requireNonNull(alkali, "alkali");
        Objects.requireNonNull(assumptions, "assumptions");
        if (form == BoughtFibre.Form.RAG) {
            return assumptions.find("additive.dose", Scope.of("rag-alkali"));
        }
        return alkali == Alkali.CAUSTIC_SODA
                ? assumptions.find("cook.caustic-dose", fibre.scope())
                : assumptions.find("additive.dose", Scope.of(alkali.id()));
    }

    /**
     * Describes a cook by the strength of its bath.
     *
     * @param fibre what is cooked
     * @param ovenDry the oven-dry fibre that goes into the pot, above zero
     * @param alkali the alkali
     * @param strength pure alkali in a volume of bath
     * @param liquor the bath, above zero
     * @return the cook
     * @throws Refused if a value is out of range, or the dose comes out above 50 % of the fibre
     */
    public static Cook ofBath(
            BoughtFibre fibre,
            Quantity<Mass> ovenDry,
            Alkali alkali,
            Quantity<SolutionStrength> strength,
            Quantity<Volume> liquor) {
        Objects.requireNonNull(fibre, "fibre");
        double dry = Kinds.MASS.siAboveZero(ovenDry, "oven-dry " + fibre.fibre() + " in the pot");
        double bath = Kinds.VOLUME.siAboveZero(liquor, "cooking liquor");
        double dose = Cooking.doseOfBath(Kinds.SOLUTION_STRENGTH.si(strength, alkali + " in the bath"), bath / dry);
        return of(fibre, ovenDry, alkali, Kinds.DOSE.ofSi(dose, "%"), liquor);
    }

    /**
     * Describes a cook by what was weighed out.
     *
     * @param fibre what is cooked
     * @param ovenDry the oven-dry fibre that goes into the pot, above zero
     * @param alkali the alkali
     * @param pure the pure alkali weighed out
     * @param liquor the water it is cooked in, above zero
     * @return the cook
     * @throws Refused if a value is out of range, or the dose comes out above 50 % of the fibre
     */
    public static Cook ofWeighed(
            BoughtFibre fibre, Quantity<Mass> ovenDry, Alkali alkali, Quantity<Mass> pure, Quantity<Volume> liquor) {
        Objects.requireNonNull(fibre, "fibre");
        double dry = Kinds.MASS.siAboveZero(ovenDry, "oven-dry " + fibre.fibre() + " in the pot");
        double dose = Kinds.MASS.si(pure, alkali + " weighed out") / dry;
        return of(fibre, ovenDry, alkali, Kinds.DOSE.ofSi(dose, "%"), liquor);
    }

    /**
     * Makes the question to ask back when a recipe says "6 %" of an alkali: on the dry fibre, or of the solution.
     *
     * @param alkali the alkali
     * @param bare the bare percentage, 0 to 100 %
     * @param ovenDry the oven-dry fibre at hand, above zero
     * @param liquor the bath at hand, above zero
     * @return the question, to be thrown or shown, with what each meaning gives to weigh and how strong the other way
     * @throws Refused if a value is out of range
     */
    public static Unclear whichBase(
            Alkali alkali, Quantity<Dimensionless> bare, Quantity<Mass> ovenDry, Quantity<Volume> liquor) {
        Objects.requireNonNull(alkali, "alkali");
        double share = Kinds.NUMBER.siWithin(bare, alkali.toString(), 0, 1);
        double dry = Kinds.MASS.siAboveZero(ovenDry, "oven-dry fibre in the pot");
        double bath = Kinds.VOLUME.siAboveZero(liquor, "cooking liquor");
        double inBath = share * 1000 * bath;
        Amount<Dimensionless> given = Kinds.NUMBER.ofSi(share, "%");
        return new Unclear(
                "cook.which-base",
                alkali + ": a bare " + given + " given. Say of what: of the dry fibre or of the solution.",
                List.of(
                        new Unclear.Candidate(
                                "of the oven-dry fibre",
                                Kinds.MASS.ofSi(share * dry, "g") + ", a bath of "
                                        + Kinds.SOLUTION_STRENGTH.ofSi(share * dry / bath, "g/L")),
                        new Unclear.Candidate(
                                "grams in 100 mL of the bath",
                                Kinds.MASS.ofSi(inBath, "g") + ", " + Kinds.NUMBER.ofSi(inBath / dry, "%")
                                        + " on the oven-dry fibre")),
                "alkali",
                alkali.id(),
                "given",
                given.toString());
    }

    /**
     * Returns a copy whose alkali is bought weaker than pure, with crystal water, damp or dissolved.
     *
     * @param part pure alkali over product, above zero
     * @return the copy
     * @throws Refused if the part is out of range
     */
    public Cook withActive(Quantity<Share> part) {
        return new Cook(
                fibre, ovenDry, alkali, dose, liquor, Kinds.SHARE.siAboveZero(part, "pure alkali in " + alkali));
    }

    /**
     * Returns the cook with another alkali, pure, that can give as much hydroxide.
     *
     * @param other the other alkali
     * @return the copy, with a warning that the two do not cook alike
     * @throws Refused if it takes more than 50 % of the fibre
     */
    public WithNotices<Cook> withSameHydroxide(Alkali other) {
        return WithNotices.of(
                new Cook(fibre, ovenDry, other, other.doseFor(hydroxide()).si(), liquor, 1),
                Notice.warning(
                        "cook.equivalents",
                        hydroxide() + " of hydroxide from " + other + " instead of " + alkali
                                + " is as much, not as strong:"
                                + " caustic soda acts at once, soda ash and potash milder, slaked lime slowly. Try a"
                                + " handful first.",
                        "hydroxide",
                        hydroxide().toString(),
                        "from",
                        alkali.id(),
                        "to",
                        other.id()));
    }

    /**
     * Returns the cook of another amount of fibre: the same dose in a bath as strong.
     *
     * @param otherOvenDry the oven-dry fibre, above zero
     * @return the copy, with its liquor in proportion
     * @throws Refused if the mass is out of range
     */
    public Cook forFibre(Quantity<Mass> otherOvenDry) {
        double dry = Kinds.MASS.siAboveZero(otherOvenDry, "oven-dry " + fibre.fibre() + " in the pot");
        double bath = Kinds.VOLUME.ofSi(liquor / ovenDry * dry, "L").si();
        return new Cook(fibre, dry, alkali, dose, bath, active);
    }

    /**
     * Returns what is cooked.
     *
     * @return the fibre as bought
     */
    public BoughtFibre fibre() {
        return fibre;
    }

    /**
     * Returns the oven-dry fibre in the pot before it loses its part.
     *
     * @return the mass
     */
    public Amount<Mass> ovenDry() {
        return Kinds.MASS.ofSi(ovenDry, "g");
    }

    /**
     * Returns the alkali.
     *
     * @return the alkali
     */
    public Alkali alkali() {
        return alkali;
    }

    /**
     * Returns the dose.
     *
     * @return pure alkali over oven-dry fibre
     */
    public Amount<Dose> dose() {
        return Kinds.DOSE.ofSi(dose, "%");
    }

    /**
     * Returns the pure alkali in the pot.
     *
     * @return the mass, {@code d m}
     */
    public Amount<Mass> pureAlkali() {
        return Kinds.MASS.ofSi(dose * ovenDry, "g");
    }

    /**
     * Returns what to weigh of the alkali as it is bought.
     *
     * @return the mass, {@code d m / part}
     */
    public Amount<Mass> product() {
        return Kinds.MASS.ofSi(dose * ovenDry / active, "g");
    }

    /**
     * Returns the hydroxide the alkali can give.
     *
     * @return mol of hydroxide per kg of oven-dry fibre
     */
    public Amount<HydroxideDose> hydroxide() {
        return alkali.hydroxide(dose());
    }

    /**
     * Returns the cooking liquor.
     *
     * @return the volume
     */
    public Amount<Volume> liquor() {
        return Kinds.VOLUME.ofSi(liquor, "L");
    }

    /**
     * Returns the liquor ratio.
     *
     * @return liquor over oven-dry fibre
     */
    public Amount<LiquorRatio> liquorRatio() {
        return Kinds.LIQUOR_RATIO.ofSi(liquor / ovenDry, "L/kg");
    }

    /**
     * Returns the strength of the bath: 10 g/L is what recipes call 1 % by weight and volume.
     *
     * @return pure alkali in a volume of bath, {@code d / (liquor ratio)}
     */
    public Amount<SolutionStrength> bathStrength() {
        return Kinds.SOLUTION_STRENGTH.ofSi(Cooking.bathStrength(dose, liquor / ovenDry), "g/L");
    }

    /**
     * Returns the stuff left after cooking and washing.
     *
     * @param assumptions where the yield is looked up if none was given with the fibre
     * @return the oven-dry mass
     * @throws Refused if the yield is neither given nor assumed
     */
    public Amount<Mass> stuff(Assumptions assumptions) {
        return Kinds.MASS.ofSi(
                org.papermath.equation.Moisture.stuff(
                        ovenDry, fibre.fibreYield(assumptions).si()),
                "g");
    }

    /**
     * Returns the water to rinse the cooked fibre until it runs clear and is no longer slippery.
     *
     * @param assumptions where {@code water.rinse} and the yield are looked up
     * @return the volume, in proportion to the stuff
     * @throws Refused if the yield is neither given nor assumed
     */
    public Estimate<Volume> rinseWater(Assumptions assumptions) {
        double stuff = stuff(assumptions).si();
        Assumption rinse = assumptions.get("water.rinse", fibre.fibre().scope());
        return Estimate.of(
                Kinds.VOLUME.ofSi(stuff * rinse.likelySi(), "L"),
                Kinds.VOLUME.ofSi(stuff * rinse.lowSi(), "L"),
                Kinds.VOLUME.ofSi(stuff * rinse.highSi(), "L"),
                List.of(new Estimate.Driver(rinse, 1)));
    }

    /**
     * Returns what to know before lighting the fire: cautions first, then what is unusual in this cook.
     *
     * <p>Rules quoted are of the United States; what the local works and local codes say goes first.
     *
     * @param assumptions where limits and the yield are looked up
     * @return an unmodifiable list, never empty
     */
    public List<Notice> notices(Assumptions assumptions) {
        List<Notice> notices = new ArrayList<>();
        notices.add(Notice.warning(
                "cook.alkali-into-water",
                alkali + " goes into cold water, never water onto it: it heats. Goggles and gloves, and air"
                        + " (Hand Papermaking Newsletter 36, 1996; eye wash 29 CFR 1910.151(c), recalled).",
                "alkali",
                alkali.id()));
        notices.add(Notice.warning(
                "cook.no-aluminium",
                "Cook in stainless steel or sound enamel, never in aluminium: alkali dissolves it and sets hydrogen free"
                        + " (Hand Papermaking Newsletter 24, 1993)."));
        double low = assumptions.si("drain.ph-low", Scope.GENERAL);
        double high = assumptions.si("drain.ph-high", Scope.GENERAL);
        Amount<?> hottest = assumptions.amount("drain.temperature-high", Scope.GENERAL, Kinds.TEMPERATURE);
        notices.add(Notice.warning(
                "cook.spent-liquor",
                "The spent liquor is very alkaline. Ask the local works before it goes down a drain; strained, cooled and"
                        + " diluted, nothing below pH " + Kinds.NUMBER.ofSi(low)
                        + ", and many towns set an upper limit, from pH "
                        + Kinds.NUMBER.ofSi(high) + "; nothing that brings the works above " + hottest
                        + " (40 CFR 403.5(b)).",
                "leastPh",
                low,
                "mostPh",
                high,
                "temperature",
                hottest.toString()));
        if (!fibre.form().losesFibre()) {
            notices.add(Notice.warning(
                    "cook.ready-to-beat",
                    fibre + " is sold ready to beat. Unless a yield was given, all of it is taken to be left.",
                    "fibre",
                    fibre.fibre().id()));
        }
        double dissolved = assumptions.si("cook.lime-dissolved", Scope.GENERAL);
        if (alkali == Alkali.SLAKED_LIME && bathStrength().si() > dissolved) {
            notices.add(Notice.note(
                    "cook.lime-undissolved",
                    "Of " + bathStrength() + " of slaked lime only about "
                            + Kinds.SOLUTION_STRENGTH.ofSi(dissolved, "g/L")
                            + " dissolves at once; the rest lies in the bath and follows. Stir it up.",
                    "given",
                    bathStrength().toString(),
                    "dissolved",
                    dissolved));
        }
        return List.copyOf(notices);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Cook that
                && fibre.equals(that.fibre)
                && ovenDry == that.ovenDry
                && alkali == that.alkali
                && dose == that.dose
                && liquor == that.liquor
                && active == that.active;
    }

    @Override
    public int hashCode() {
        return Objects.hash(fibre, ovenDry, alkali, dose, liquor, active);
    }

    @Override
    public String toString() {
        return ovenDry() + " oven-dry " + fibre.fibre() + " in " + liquor() + " (" + liquorRatio() + ") with "
                + pureAlkali() + " of " + alkali + ", " + dose() + " on fibre, " + bathStrength() + " of bath";
    }
}
