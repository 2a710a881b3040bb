package org.papermath.fibre;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import javax.measure.Quantity;
import javax.measure.quantity.Mass;
import org.jspecify.annotations.Nullable;
import org.papermath.evidence.Assumption;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Notice;
import org.papermath.evidence.Reading;
import org.papermath.evidence.Scope;
import org.papermath.numeric.Normal;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Moisture;
import org.papermath.quantity.MoistureRatio;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Share;
import org.papermath.quantity.Solids;

/**
 * Fibre as it is bought: which, in what form, how moist, and how much of it cooking and sorting leave. Immutable.
 *
 * <p>Moisture is on the wet basis: water over the mass as bought. What is not given is taken from the assumptions of
 * the fibre; wet pulp has no default, since it may hold any amount of water.
 *
 * @source Cross and Bevan, A Text-Book of Paper-Making, 1888 (yields); the trade convention of 900 kg of oven-dry fibre
 *     in a tonne of air-dry pulp
 */
public final class BoughtFibre {
    /** Above this, what is sold as dry is wet pulp and must be declared as such. */
    private static final double WETTEST_DRY_FORM = 0.30;

    /** What one oven-dry weighing leaves, of moisture. */
    private static final double LEFT_MOISTURE = 0.003;

    /** What the library knows by a name and what is sold cooked. */
    private static final Set<Fibre> SOLD_COOKED = Set.of(Fibres.JUTE, Fibres.SISAL, Fibres.STRAW);

    /** What one pot leaves, of the yield: the next bale is another. */
    private static final double LEFT_YIELD = 0.02;

    private final Fibre fibre;
    private final Form form;
    private final @Nullable Double moisture;
    private final @Nullable Double fibreYield;

    /** The form in which fibre is bought. */
    public enum Form {
        /** Half-beaten stuff, dried. */
        HALF_STUFF("half-stuff", false),
        /** Sheets of pulp. */
        SHEET("sheets of pulp", false),
        /** Loose fibre or pulp in a bale, ready for the beater. */
        BALE("baled pulp", false),
        /** Cloth, to be sorted and cooked. */
        RAG("rag", true),
        /** Pulp with its water, of stated moisture. */
        WET_PULP("wet pulp", false),
        /** Bark, stem or leaf fibre, dried and to be cooked; of bark the white inner bark alone. */
        RAW("raw fibre", true),
        /** Bark with its outer skin, or stems, fresh from the plant: to be cooked, and full of water. */
        GREEN("green bark or stems", true);

        private final String words;
        private final boolean loses;

        Form(String words, boolean loses) {
            this.words = words;
            this.loses = loses;
        }

        /**
         * Returns whether sorting or cooking takes a part of it before beating.
         *
         * @return true for rag, raw and green fibre
         */
        public boolean losesFibre() {
            return loses;
        }

        /**
         * Returns the form in words.
         *
         * @return for example {@code half-stuff}
         */
        public String words() {
            return words;
        }

        /**
         * Returns a fibre in this form, as it is written on a list.
         *
         * @param fibre the fibre
         * @return its name; with the form where it is not the usual one, or it is rag, which is sold both ways
         */
        public String of(Fibre fibre) {
            boolean plain = this == usual(fibre) && fibre.sourceClass() != Fibre.SourceClass.RAG;
            return plain ? fibre.name() : fibre.name() + " (" + words + ")";
        }

        /**
         * Returns the form a fibre usually has when it is bought: wood, linter, abaca and what the library calls cooked
         * come as pulp, rag as half-stuff, and all other bark, stems, leaves and grass raw.
         *
         * @param fibre the fibre
         * @return the form
         */
        public static Form usual(Fibre fibre) {
            Objects.requireNonNull(fibre, "fibre");
            return switch (fibre.sourceClass()) {
                case SEED_HAIR, WOOD -> SHEET;
                case RAG -> HALF_STUFF;
                case BAST, LEAF, GRASS -> fibre.equals(Fibres.ABACA) ? SHEET : SOLD_COOKED.contains(fibre) ? BALE : RAW;
            };
        }

        /**
         * Returns where the moisture and the yield of a fibre in this form are kept. The water in wet pulp and in green
         * fibre is not that of the dry fibre, nor is the yield.
         *
         * @param fibre the fibre
         * @return the scope: that of the fibre itself unless it is green, wet, or raw where it usually is not
         */
        public Scope scope(Fibre fibre) {
            Objects.requireNonNull(fibre, "fibre");
            return switch (this) {
                case GREEN -> Scope.of(fibre.id() + "-green", "green");
                case WET_PULP -> Scope.of(fibre.id() + "-wet-pulp");
                case RAW -> usual(fibre) == RAW ? fibre.scope() : besides(fibre, "-raw");
                case RAG, HALF_STUFF, SHEET, BALE -> fibre.scope();
            };
        }

        private static Scope besides(Fibre fibre, String ending) {
            List<String> subjects = new ArrayList<>();
            subjects.add(fibre.id() + ending);
            subjects.add(fibre.id());
            subjects.addAll(fibre.kin());
            return Scope.of(subjects.toArray(String[]::new));
        }
    }

    private BoughtFibre(Fibre fibre, Form form, @Nullable Double moisture, @Nullable Double fibreYield) {
        this.fibre = fibre;
        this.form = form;
        this.moisture = moisture;
        this.fibreYield = fibreYield;
    }

    /**
     * Describes fibre of which nothing was measured.
     *
     * @param fibre the fibre
     * @param form the form it is bought in
     * @return the fibre as bought
     */
    public static BoughtFibre of(Fibre fibre, Form form) {
        Objects.requireNonNull(fibre, "fibre");
        Objects.requireNonNull(form, "form");
        return new BoughtFibre(fibre, form, null, null);
    }

    /**
     * Returns a copy with a known moisture.
     *
     * @param wetBasis water over mass as bought; 0 to 30 %, for wet pulp and green fibre 0 to 99 %
     * @return the copy
     * @throws Refused if the moisture is out of range for the form
     */
    public BoughtFibre withMoisture(Quantity<Moisture> wetBasis) {
        double w = Kinds.MOISTURE.siWithin(wetBasis, "moisture of " + fibre + " as bought", 0, 0.99);
        return moist(w);
    }

    /**
     * Returns a copy with a known moisture on the dry basis, such as a regain.
     *
     * @param dryBasis water over oven-dry mass
     * @return the copy
     * @throws Refused if the moisture is out of range for the form
     */
    public BoughtFibre withMoistureRatio(Quantity<MoistureRatio> dryBasis) {
        double ratio = Kinds.MOISTURE_RATIO.siWithin(dryBasis, "moisture ratio of " + fibre + " as bought", 0, 99);
        return moist(org.papermath.equation.Moisture.wetBasisOfRatio(ratio));
    }

    /**
     * Returns a copy with known solids.
     *
     * @param solids oven-dry mass over mass as bought
     * @return the copy
     * @throws Refused if the moisture that follows is out of range for the form
     */
    public BoughtFibre withSolids(Quantity<Solids> solids) {
        return moist(1 - Kinds.SOLIDS.siWithin(solids, "solids of " + fibre + " as bought", 0.01, 1));
    }

    /**
     * Returns a copy with the moisture of a sample weighed before and after drying in an oven to constant mass.
     *
     * @param asBought the mass of the sample as bought, above zero
     * @param dried its mass after drying, above zero and not more than before
     * @return the copy
     * @throws Refused if the dried mass is the greater, or the moisture is out of range for the form
     */
    public BoughtFibre withSample(Quantity<Mass> asBought, Quantity<Mass> dried) {
        double wet = Kinds.MASS.siAboveZero(asBought, "sample as bought");
        double dry = Kinds.MASS.siAboveZero(dried, "sample dried");
        if (dry > wet) {
            throw Refused.of(
                    "fibre.sample",
                    "sample of " + fibre + ": " + dried + " dried is more than " + asBought
                            + " as bought. Look whether the two were exchanged.",
                    "asBought",
                    asBought.toString(),
                    "dried",
                    dried.toString());
        }
        return withMoisture(Moisture.fraction(org.papermath.equation.Moisture.wetBasisOfSample(wet, dry)));
    }

    /**
     * Returns a copy that is air-dry by the convention of the trade: 10 % water on the wet basis.
     *
     * @return the copy
     */
    public BoughtFibre airDry() {
        return moist(1 - org.papermath.equation.Moisture.AIR_DRY_SOLIDS);
    }

    private BoughtFibre moist(double w) {
        if (form != Form.WET_PULP && form != Form.GREEN && w > WETTEST_DRY_FORM) {
            throw Refused.of(
                    "fibre.too-moist",
                    fibre + " as " + form.words() + ": moisture " + Kinds.MOISTURE.ofSi(w, "%")
                            + " given; must be at most 30 %. Call it wet pulp or green fibre if it is that wet.",
                    "fibre",
                    fibre.id(),
                    "moisture",
                    w);
        }
        return new BoughtFibre(fibre, form, w, fibreYield);
    }

    /**
     * Returns a copy with a known yield.
     *
     * @param left oven-dry stuff that reaches the beater over oven-dry fibre bought; above zero
     * @return the copy
     * @throws Refused if the yield is out of range
     */
    public BoughtFibre withYield(Quantity<Share> left) {
        return new BoughtFibre(fibre, form, moisture, Kinds.SHARE.siAboveZero(left, "yield of " + fibre));
    }

    /**
     * Returns the fibre.
     *
     * @return the fibre
     */
    public Fibre fibre() {
        return fibre;
    }

    /**
     * Returns the form it is bought in.
     *
     * @return the form
     */
    public Form form() {
        return form;
    }

    /**
     * Returns the moisture if it was given.
     *
     * @return water over mass as bought
     */
    public Optional<Amount<Moisture>> moisture() {
        return Optional.ofNullable(moisture).map(w -> Kinds.MOISTURE.ofSi(w, "%"));
    }

    /**
     * Returns the yield if it was given.
     *
     * @return oven-dry stuff over oven-dry fibre bought
     */
    public Optional<Amount<Share>> fibreYield() {
        return Optional.ofNullable(fibreYield).map(part -> Kinds.SHARE.ofSi(part, "%"));
    }

    /**
     * Returns the moisture given, or else that assumed for the fibre.
     *
     * @param assumptions where to look
     * @return water over mass as bought
     * @throws Refused for wet pulp of which no moisture was given
     */
    public Amount<Moisture> moisture(Assumptions assumptions) {
        return Kinds.MOISTURE.ofSi(wetBasis(assumptions), "%");
    }

    /**
     * Returns the yield given, or else that assumed: all of it for fibre ready to beat, the yield of the fibre for rag
     * and raw fibre.
     *
     * @param assumptions where to look
     * @return oven-dry stuff over oven-dry fibre bought
     * @throws Refused if none is given and the fibre has no default
     */
    public Amount<Share> fibreYield(Assumptions assumptions) {
        return Kinds.SHARE.ofSi(left(assumptions), "%");
    }

    private double wetBasis(Assumptions assumptions) {
        if (moisture != null) {
            return moisture;
        }
        return FibreProperty.MOISTURE_AS_BOUGHT.of(fibre, form, assumptions).likelySi();
    }

    private double left(Assumptions assumptions) {
        if (fibreYield != null) {
            return fibreYield;
        }
        return form.losesFibre()
                ? FibreProperty.YIELD.of(fibre, form, assumptions).likelySi()
                : 1;
    }

    /**
     * Returns the oven-dry stuff that reaches the beater from a mass as bought.
     *
     * @param asBought the mass on the scale or the invoice
     * @param assumptions for what was not given
     * @return the oven-dry mass, {@code m (1 - w) Y}
     * @throws Refused if the mass is out of range, or something is neither given nor assumed
     */
    public Amount<Mass> ovenDry(Quantity<Mass> asBought, Assumptions assumptions) {
        Amount<Mass> mass = Kinds.MASS.check(asBought, "mass of " + fibre + " as bought");
        double dry = org.papermath.equation.Moisture.ovenDryOfWetBasis(mass.si(), wetBasis(assumptions));
        return like(mass, org.papermath.equation.Moisture.stuff(dry, left(assumptions)));
    }

    /**
     * Returns the oven-dry fibre in a mass as bought, before cooking and sorting take their part: what alkali is weighed on.
     *
     * @param asBought the mass on the scale or the invoice
     * @param assumptions for what was not given
     * @return the oven-dry mass, {@code m (1 - w)}
     * @throws Refused if the mass is out of range, or no moisture is given or assumed
     */
    public Amount<Mass> ovenDryRaw(Quantity<Mass> asBought, Assumptions assumptions) {
        Amount<Mass> mass = Kinds.MASS.check(asBought, "mass of " + fibre + " as bought");
        return like(mass, org.papermath.equation.Moisture.ovenDryOfWetBasis(mass.si(), wetBasis(assumptions)));
    }

    /**
     * Returns what a mass as bought is charged as by the air-dry convention: oven-dry fibre over 0.9.
     *
     * @param asBought the mass on the scale
     * @param assumptions for a moisture that was not given
     * @return the air-dry mass, {@code m (1 - w) / 0.9}
     * @throws Refused if the mass is out of range, or no moisture is given or assumed
     */
    public Amount<Mass> airDryMass(Quantity<Mass> asBought, Assumptions assumptions) {
        Amount<Mass> raw = ovenDryRaw(asBought, assumptions);
        return like(raw, org.papermath.equation.Moisture.airDry(raw.si()));
    }

    /**
     * Returns the mass to buy for a number of sheets and what stays behind in the vat.
     *
     * @param sheets the sheets to pull, 1 or more
     * @param each oven-dry fibre of one
     * @param heel oven-dry fibre that stays in vat and pails; zero if there is none
     * @param assumptions for what was not given
     * @return the mass as bought, {@code (n m + heel) / Y / (1 - w)}
     * @throws Refused if a value is out of range, or something is neither given nor assumed
     */
    public Amount<Mass> asBoughtForSheets(
            int sheets, Quantity<Mass> each, Quantity<Mass> heel, Assumptions assumptions) {
        if (sheets < 1) {
            throw Refused.of("fibre.no-sheets", "sheets: " + sheets + " given; must be 1 or more.", "given", sheets);
        }
        double stuff = sheets * Kinds.MASS.siAboveZero(each, "oven-dry fibre of a sheet")
                + Kinds.MASS.si(heel, "fibre that stays in the vat");
        return asBought(Kinds.MASS.ofSi(stuff, "g"), assumptions);
    }

    /**
     * Returns the mass to buy for an oven-dry mass of stuff in the beater.
     *
     * @param ovenDry the oven-dry mass wanted
     * @param assumptions for what was not given
     * @return the mass as bought, {@code m / Y / (1 - w)}
     * @throws Refused if the mass is out of range, or something is neither given nor assumed
     */
    public Amount<Mass> asBought(Quantity<Mass> ovenDry, Assumptions assumptions) {
        Amount<Mass> mass = Kinds.MASS.check(ovenDry, "oven-dry mass of " + fibre);
        double raw = org.papermath.equation.Moisture.rawForStuff(mass.si(), left(assumptions));
        return like(mass, org.papermath.equation.Moisture.massAtWetBasis(raw, wetBasis(assumptions)));
    }

    /** Told in the unit of the question. */
    private static Amount<Mass> like(Amount<Mass> question, double si) {
        return Kinds.MASS.ofSi(si).to(question.getUnit());
    }

    /**
     * Returns what the masses should not be read without.
     *
     * @param assumptions where what is not given is looked up
     * @return an unmodifiable list, empty if all was measured and is usual
     */
    public List<Notice> notices(Assumptions assumptions) {
        List<Notice> notices = new ArrayList<>();
        if (moisture == null && form != Form.WET_PULP) {
            notices.add(Notice.warning(
                    "fibre.moisture-not-measured",
                    "moisture of " + fibre + " was not measured; " + moisture(assumptions)
                            + " is assumed. Weigh a sample before"
                            + " and after drying.",
                    "fibre",
                    fibre.id(),
                    "assumed",
                    moisture(assumptions).toString()));
        } else if (moisture != null
                && form != Form.WET_PULP
                && form != Form.GREEN
                && moisture > assumptions.si("fibre.moisture-warning", fibre.scope())) {
            notices.add(Notice.warning(
                    "fibre.damp",
                    fibre + " holds " + Kinds.MOISTURE.ofSi(moisture, "%")
                            + " water; air-dry fibre holds at most about 16 %."
                            + " It loses weight in a warm room.",
                    "fibre",
                    fibre.id(),
                    "moisture",
                    moisture));
        }
        if (fibreYield == null && form.losesFibre()) {
            notices.add(Notice.warning(
                    "fibre.yield-not-measured",
                    "yield of " + fibre + " as " + form.words() + " was not measured; "
                            + FibreProperty.YIELD
                                    .find(fibre, form, assumptions)
                                    .map(found -> Kinds.SHARE.ofSi(found.likelySi(), "%") + " is assumed.")
                                    .orElse("there is no default for it."),
                    "fibre",
                    fibre.id()));
        }
        return List.copyOf(notices);
    }

    /**
     * Calibrates the moisture of a fibre as bought by a sample dried in the oven: {@code w = 1 - dried/bought}.
     *
     * @param assumptions the store
     * @param fibre the fibre
     * @param form the form it was bought in
     * @param asBought the mass of the sample as bought
     * @param dried its mass out of the oven
     * @return the store with {@code fibre.moisture-as-bought} measured for the fibre in that form
     * @throws Refused if the sample became heavier
     */
    public static Assumptions calibrateMoisture(
            Assumptions assumptions, Fibre fibre, Form form, Reading<Mass> asBought, Reading<Mass> dried) {
        Objects.requireNonNull(assumptions, "assumptions");
        Objects.requireNonNull(fibre, "fibre");
        Objects.requireNonNull(form, "form");
        Objects.requireNonNull(asBought, "asBought");
        double all = Kinds.MASS.siAboveZero(asBought.value(), "mass before drying");
        double rest = Kinds.MASS.siWithin(dried.value(), "mass after drying", 0, all);
        double half = Math.hypot(
                Normal.halfBandOfRatio(
                        rest, dried.error().si(), all, asBought.error().si()),
                LEFT_MOISTURE);
        return assumptions.measuredShare("fibre.moisture-as-bought", form.scope(fibre), 1 - rest / all, half);
    }

    /**
     * Calibrates the yield of a fibre by one pot, weighed raw and as stuff: {@code Y = stuff/(bought (1 - w))}.
     *
     * @param assumptions the store, in which the moisture as bought is looked up
     * @param fibre the fibre
     * @param form the form it was bought in
     * @param asBought the raw fibre as bought
     * @param stuff the oven-dry stuff after cooking
     * @return the store with {@code fibre.yield} measured for the fibre in that form
     * @throws Refused if there is more stuff than there was dry fibre, or the moisture has no default
     */
    public static Assumptions calibrateYield(
            Assumptions assumptions, Fibre fibre, Form form, Reading<Mass> asBought, Reading<Mass> stuff) {
        Objects.requireNonNull(assumptions, "assumptions");
        Objects.requireNonNull(fibre, "fibre");
        Objects.requireNonNull(form, "form");
        Objects.requireNonNull(asBought, "asBought");
        Assumption water = FibreProperty.MOISTURE_AS_BOUGHT.of(fibre, form, assumptions);
        double dry = Kinds.MASS.siAboveZero(asBought.value(), "mass of " + fibre + " before cooking")
                * (1 - water.likelySi());
        double found = Kinds.MASS.siWithin(stuff.value(), "stuff of " + fibre + " after cooking", 0, dry) / dry;
        double half = Math.hypot(
                found * (water.highSi() - water.lowSi()) / 2 / (1 - water.likelySi()),
                Normal.FIVE_PERCENT_POINT
                        * Math.hypot(
                                stuff.error().si(),
                                found
                                        * (1 - water.likelySi())
                                        * asBought.error().si())
                        / dry);
        return assumptions.measuredShare("fibre.yield", form.scope(fibre), found, Math.hypot(half, LEFT_YIELD));
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof BoughtFibre that
                && fibre.equals(that.fibre)
                && form == that.form
                && Objects.equals(moisture, that.moisture)
                && Objects.equals(fibreYield, that.fibreYield);
    }

    @Override
    public int hashCode() {
        return Objects.hash(fibre, form, moisture, fibreYield);
    }

    @Override
    public String toString() {
        return fibre + " as " + form.words()
                + moisture().map(w -> ", " + w + " moisture").orElse("")
                + fibreYield().map(part -> ", yield " + part).orElse("");
    }
}
