package org.papermath.pulp;

import java.util.List;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Area;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Volume;
import org.papermath.equation.BeaterArithmetic;
import org.papermath.equation.Moisture;
import org.papermath.equation.WaterProperties;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Notice;
import org.papermath.evidence.Scope;
import org.papermath.evidence.WithNotices;
import org.papermath.quantity.Amount;
import org.papermath.quantity.ApparentDensity;
import org.papermath.quantity.Consistency;
import org.papermath.quantity.FibreConcentration;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Unclear;

/**
 * Pulp or stock: so much oven-dry fibre and so much water. Immutable.
 *
 * <p>There is no pulp of so many litres alone: a volume says nothing about the fibre in it, so every way of making one
 * asks for the consistency, and says which of its readings is meant. By mass it is fibre over fibre and water together
 * (ISO 4119); by volume it is fibre in a litre of stock, or fibre given to a litre of water. The three differ by a few
 * per cent of themselves at the strengths of a beater.
 *
 * <p>Volumes add: V = F/ρ_f + W/ρ_w, with the density of the fibre wall and of water at about 20 °C from the shipped
 * table of assumptions.
 *
 * <pre>{@code
 * Pulp.ofOvenDry(kilograms(1.2)).at(Consistency.percent(3)).dilutedTo(Consistency.percent(0.6)).volume();
 * }</pre>
 */
public final class Pulp {
    private static final double DRY_TOLERANCE = 1e-12;

    private final double fibre;
    private final double water;
    private final double wallDensity;
    private final double waterDensity;

    /** The densities of the shipped table, looked up on first use only. */
    private static final class Standard {
        static final double WALL = Assumptions.standard().si("fibre.cell-wall-density", Scope.GENERAL);
        static final double WATER = Assumptions.standard().si("water.density-in-beater", Scope.GENERAL);
    }

    /** Oven-dry fibre that is still to be put into water. Immutable. */
    public static final class OvenDryFibre {
        private final double fibre;

        private OvenDryFibre(double fibre) {
            this.fibre = fibre;
        }

        /**
         * Puts the fibre at a consistency by mass.
         *
         * @param consistency fibre over fibre and water together, above zero
         * @return the pulp
         * @throws Refused if the consistency is out of range
         */
        public Pulp at(Quantity<Consistency> consistency) {
            double c = Kinds.CONSISTENCY.siAboveZero(consistency, "consistency");
            return Pulp.standard(fibre, BeaterArithmetic.waterForOvenDry(c, fibre));
        }

        /**
         * Puts the fibre at so many grams in a litre of stock.
         *
         * @param strength fibre over the volume of the stock, above zero, less than the fibre wall itself weighs
         * @return the pulp
         * @throws Refused if the strength is out of range
         */
        public Pulp perLitreOfStock(Quantity<FibreConcentration> strength) {
            return inStock(Kinds.VOLUME.ofSi(BeaterArithmetic.stockVolume(
                    fibre, Kinds.FIBRE_CONCENTRATION.siAboveZero(strength, "fibre per litre of stock"))));
        }

        /**
         * Puts the fibre at so many grams to a litre of water.
         *
         * @param strength fibre over the volume of the water given to it, above zero
         * @return the pulp
         * @throws Refused if the strength is out of range
         */
        public Pulp perLitreOfWater(Quantity<FibreConcentration> strength) {
            double perWater = Kinds.FIBRE_CONCENTRATION.siAboveZero(strength, "fibre per litre of water");
            return Pulp.standard(fibre, fibre / perWater * Standard.WATER);
        }

        /**
         * Puts the fibre into a mass of water.
         *
         * @param water the water, all of it
         * @return the pulp
         * @throws Refused if the mass is out of range
         */
        public Pulp inWater(Quantity<Mass> water) {
            return Pulp.standard(fibre, Kinds.MASS.si(water, "water"));
        }

        /**
         * Puts the fibre into a volume of water.
         *
         * @param water the water, all of it
         * @return the pulp
         * @throws Refused if the volume is out of range
         */
        public Pulp inWaterOf(Quantity<Volume> water) {
            return Pulp.standard(fibre, Kinds.VOLUME.si(water, "volume of water") * Standard.WATER);
        }

        /**
         * Makes the fibre up with water to a volume of stock.
         *
         * @param stock the volume of fibre and water together
         * @return the pulp
         * @throws Refused if the volume is smaller than the fibre itself takes up
         */
        public Pulp inStock(Quantity<Volume> stock) {
            double volume = Kinds.VOLUME.siAboveZero(stock, "volume of stock");
            double water = (volume - fibre / Standard.WALL) * Standard.WATER;
            if (water < 0) {
                Amount<Volume> given = Kinds.VOLUME.ofSi(volume, "L");
                Amount<Volume> least = Kinds.VOLUME.ofSi(fibre / Standard.WALL, "L");
                throw Refused.of(
                        "pulp.volume-below-fibre",
                        "volume of stock: " + given + " given for " + Kinds.MASS.ofSi(fibre, "g")
                                + " of oven-dry fibre, which takes"
                                + " up " + least + " without any water. Check the volume and its unit.",
                        "given",
                        given.toString(),
                        "least",
                        least.toString());
            }
            return Pulp.standard(fibre, water);
        }

        @Override
        public String toString() {
            return Kinds.MASS.ofSi(fibre, "g") + " of oven-dry fibre";
        }
    }

    /** Pulp parted in two. */
    public sealed interface Parts permits FoundParts {
        /** {@return the part taken} */
        Pulp taken();

        /** {@return the part left} */
        Pulp left();
    }

    private record FoundParts(Pulp taken, Pulp left) implements Parts {
        @Override
        public String toString() {
            return "taken " + taken + "; left " + left;
        }
    }

    private Pulp(double fibre, double water, double wallDensity, double waterDensity) {
        this.fibre = fibre;
        this.water = water;
        this.wallDensity = wallDensity;
        this.waterDensity = waterDensity;
    }

    private static Pulp standard(double fibre, double water) {
        return new Pulp(fibre, water, Standard.WALL, Standard.WATER);
    }

    private Pulp same(double newFibre, double newWater) {
        return new Pulp(newFibre, Math.max(0, newWater), wallDensity, waterDensity);
    }

    /**
     * Starts from fibre without any water in it. Fibre as bought holds water: reckon that off first.
     *
     * @param fibre the oven-dry fibre, above zero
     * @return the fibre, to be put into water
     * @throws Refused if the mass is not above zero
     */
    public static OvenDryFibre ofOvenDry(Quantity<Mass> fibre) {
        return new OvenDryFibre(Kinds.MASS.siAboveZero(fibre, "oven-dry fibre"));
    }

    /**
     * Makes pulp of a weighed mass.
     *
     * @param wet the mass of fibre and water together, above zero
     * @param consistency fibre over that mass, above zero
     * @return the pulp
     * @throws Refused if a value is out of range
     */
    public static Pulp ofWet(Quantity<Mass> wet, Quantity<Consistency> consistency) {
        double mass = Kinds.MASS.siAboveZero(wet, "wet pulp");
        double c = Kinds.CONSISTENCY.siAboveZero(consistency, "consistency");
        return standard(c * mass, (1 - c) * mass);
    }

    /**
     * Makes pulp of a measured volume whose consistency by mass is known.
     *
     * @param stock the volume, above zero
     * @param consistency fibre over fibre and water together, above zero
     * @return the pulp
     * @throws Refused if a value is out of range
     */
    public static Pulp ofVolume(Quantity<Volume> stock, Quantity<Consistency> consistency) {
        double volume = Kinds.VOLUME.siAboveZero(stock, "volume of stock");
        double c = Kinds.CONSISTENCY.siAboveZero(consistency, "consistency");
        double mass = volume * WaterProperties.stockDensity(c, Standard.WALL, Standard.WATER);
        return standard(c * mass, (1 - c) * mass);
    }

    /**
     * Makes pulp of a measured volume of which the grams of fibre in a litre are known.
     *
     * @param stock the volume, above zero
     * @param strength fibre over the volume of the stock, above zero
     * @return the pulp
     * @throws Refused if a value is out of range, or the fibre takes up more than the volume
     */
    public static Pulp ofVolumePerLitre(Quantity<Volume> stock, Quantity<FibreConcentration> strength) {
        double volume = Kinds.VOLUME.siAboveZero(stock, "volume of stock");
        double perVolume = Kinds.FIBRE_CONCENTRATION.siAboveZero(strength, "fibre per litre of stock");
        return new OvenDryFibre(BeaterArithmetic.ovenDryInVolume(perVolume, volume)).inStock(stock);
    }

    /**
     * Reads the consistency of pulp from a sample that was weighed, dried and weighed again.
     *
     * @param wet the sample as it was, above zero
     * @param dried the sample after drying, at most the wet mass
     * @param leftInIt the water left in the dried sample over its mass; zero after an oven at 105 °C, some 5 to 8 %
     *     after a warm room
     * @return the consistency
     * @throws Refused if a value is out of range, or the sample grew heavier
     */
    public static Amount<Consistency> consistencyOfSample(
            Quantity<Mass> wet, Quantity<Mass> dried, Quantity<org.papermath.quantity.Moisture> leftInIt) {
        Amount<Mass> wetAmount = Kinds.MASS.check(wet, "wet sample");
        Amount<Mass> driedAmount = Kinds.MASS.check(dried, "dried sample");
        Kinds.MASS.siAboveZero(wet, "wet sample");
        Kinds.MASS.siAboveZero(dried, "dried sample");
        double w = Kinds.MOISTURE.si(leftInIt, "water left in the dried sample");
        if (driedAmount.si() > wetAmount.si()) {
            throw Refused.of(
                    "pulp.sample-gained",
                    "dried sample: " + driedAmount + " given, more than the " + wetAmount
                            + " it weighed wet. See whether the two"
                            + " weighings were changed over.",
                    "dried",
                    driedAmount.toString(),
                    "wet",
                    wetAmount.toString());
        }
        return Kinds.CONSISTENCY.ofSi(Moisture.ovenDryOfWetBasis(driedAmount.si(), w) / wetAmount.si(), "%");
    }

    /**
     * Returns what to say of litres of pulp whose consistency nobody told: a volume of pulp is no mass of fibre.
     *
     * <pre>{@code
     * throw Pulp.consistencyWanted(litres(0.7));
     * }</pre>
     *
     * @param volume the volume given
     * @return the refusal, to be thrown
     * @throws Refused if the volume is out of range
     */
    public static Refused consistencyWanted(Quantity<Volume> volume) {
        String given = Kinds.VOLUME.check(volume, "volume of pulp").toString();
        return Refused.of(
                "pulp.consistency-wanted",
                "pulp: " + given
                        + " given, which is no mass of fibre. Stir it, dry a weighed sample of 100 g or so, and"
                        + " give its consistency.",
                "given",
                given);
    }

    /**
     * Makes the question to ask back when a pail only says "4 %": by mass, to a litre of water or in a litre of stock.
     *
     * @param label the bare percentage, above zero, less than 100 %
     * @return the question, to be thrown or shown, with the fibre in a litre of stock for each meaning
     * @throws Refused if the percentage is out of range
     */
    public static Unclear whichConsistency(Quantity<Dimensionless> label) {
        double share = Kinds.NUMBER.siWithin(label, "consistency", 1e-6, 0.99);
        Amount<Dimensionless> given = Kinds.NUMBER.ofSi(share, "%");
        OvenDryFibre one = new OvenDryFibre(1);
        String byMass = one.at(Kinds.CONSISTENCY.ofSi(share)).fibrePerLitreOfStock() + " of stock";
        String perWater = one.perLitreOfWater(Kinds.FIBRE_CONCENTRATION.ofSi(share * 1000))
                        .fibrePerLitreOfStock() + " of stock";
        String perStock = Kinds.FIBRE_CONCENTRATION.ofSi(share * 1000, "g/L") + " of stock";
        return new Unclear(
                "pulp.which-consistency",
                "consistency: a bare " + given + " given. State its basis.",
                List.of(
                        new Unclear.Candidate("fibre over fibre and water, by mass", byMass),
                        new Unclear.Candidate("grams to 100 mL of water", perWater),
                        new Unclear.Candidate("grams in 100 mL of stock", perStock)),
                "given",
                given.toString());
    }

    /**
     * Returns the same pulp with the densities of another table of assumptions.
     *
     * @param assumptions where the densities of the fibre wall and of water are looked up
     * @param scope the fibre
     * @return the pulp
     */
    public Pulp under(Assumptions assumptions, Scope scope) {
        return new Pulp(
                fibre,
                water,
                assumptions.si("fibre.cell-wall-density", scope),
                assumptions.si("water.density-in-beater", scope));
    }

    /**
     * Returns the oven-dry fibre in it.
     *
     * @return the mass
     */
    public Amount<Mass> ovenDry() {
        return Kinds.MASS.ofSi(fibre, "g");
    }

    /**
     * Returns the fibre in it as trade reckons air-dry pulp, with 10 % water.
     *
     * @return oven-dry fibre over 0.90
     */
    public Amount<Mass> airDry() {
        return Kinds.MASS.ofSi(Moisture.airDry(fibre), "g");
    }

    /**
     * Returns the water in it.
     *
     * @return the mass
     */
    public Amount<Mass> water() {
        return Kinds.MASS.ofSi(water, "kg");
    }

    /**
     * Returns fibre and water together.
     *
     * @return the mass
     */
    public Amount<Mass> mass() {
        return Kinds.MASS.ofSi(fibre + water, "kg");
    }

    /**
     * Returns the volume it takes up.
     *
     * @return the volume
     */
    public Amount<Volume> volume() {
        return Kinds.VOLUME.ofSi(volumeSi(), "L");
    }

    /**
     * Returns the consistency by mass.
     *
     * @return fibre over fibre and water together
     * @source ISO 4119
     */
    public Amount<Consistency> consistency() {
        return Kinds.CONSISTENCY.ofSi(consistencySi(), "%");
    }

    /**
     * Returns the fibre in a volume of this stock.
     *
     * @return fibre over the volume of the stock
     */
    public Amount<FibreConcentration> fibrePerLitreOfStock() {
        return Kinds.FIBRE_CONCENTRATION.ofSi(fibre / volumeSi(), "g/L");
    }

    /**
     * Returns the fibre to a volume of the water in it, which is how studios mostly write a consistency.
     *
     * @return fibre over the volume of the water
     * @throws Refused if there is less water than fibre, where the figure means nothing
     */
    public Amount<FibreConcentration> fibrePerLitreOfWater() {
        return Kinds.FIBRE_CONCENTRATION.ofSi(fibre * waterDensity / water, "g/L");
    }

    /**
     * Returns the density of the stock.
     *
     * @return mass over volume
     */
    public Amount<ApparentDensity> density() {
        return Kinds.DENSITY.ofSi((fibre + water) / volumeSi(), "kg/m3");
    }

    /**
     * Returns the pulp with water added to a consistency.
     *
     * @param consistency the wanted consistency by mass, above zero, at most what it is now
     * @return the thinner pulp
     * @throws Refused if the pulp is thinner than that already
     */
    public Pulp dilutedTo(Quantity<Consistency> consistency) {
        double c = Kinds.CONSISTENCY.siAboveZero(consistency, "consistency");
        double now = consistencySi();
        if (c > now * (1 + DRY_TOLERANCE)) {
            throw cannotReach(
                    "pulp.already-thinner", c, "water only makes it thinner. Drain it, or mix thicker pulp in");
        }
        return same(fibre, BeaterArithmetic.waterForOvenDry(c, fibre));
    }

    /**
     * Returns the pulp with clear water drained from it to a consistency.
     *
     * @param consistency the wanted consistency by mass, at least what it is now
     * @return the thicker pulp
     * @throws Refused if the pulp is thicker than that already
     */
    public Pulp thickenedTo(Quantity<Consistency> consistency) {
        double c = Kinds.CONSISTENCY.siAboveZero(consistency, "consistency");
        double now = consistencySi();
        if (c < now * (1 - DRY_TOLERANCE)) {
            throw cannotReach("pulp.already-thicker", c, "draining only makes it thicker. Add water");
        }
        return same(fibre, BeaterArithmetic.waterForOvenDry(c, fibre));
    }

    /**
     * Returns the water to add, or to drain, for a consistency.
     *
     * @param consistency the wanted consistency by mass, above zero
     * @return the mass of water between the two; see {@link #dilutedTo} and {@link #thickenedTo} for which way
     * @throws Refused if the consistency is out of range
     */
    public Amount<Mass> waterBetween(Quantity<Consistency> consistency) {
        double c = Kinds.CONSISTENCY.siAboveZero(consistency, "consistency");
        return Kinds.MASS.ofSi(Math.abs(BeaterArithmetic.waterForOvenDry(c, fibre) - water), "kg");
    }

    private Refused cannotReach(String code, double wanted, String advice) {
        Amount<Consistency> aim = Kinds.CONSISTENCY.ofSi(wanted, "%");
        return Refused.of(
                code,
                "consistency: " + aim + " asked of pulp that is at " + consistency() + "; " + advice + ".",
                "wanted",
                aim.toString(),
                "now",
                consistency().toString());
    }

    /**
     * Returns the pulp with more water in it.
     *
     * @param more the water
     * @return the thinner pulp
     * @throws Refused if the mass is out of range
     */
    public Pulp plusWater(Quantity<Mass> more) {
        return same(fibre, water + Kinds.MASS.si(more, "water"));
    }

    /**
     * Mixes two pulps.
     *
     * @param other the other pulp
     * @return both together
     */
    public Pulp mixedWith(Pulp other) {
        return same(fibre + other.fibre, water + other.water);
    }

    /**
     * Takes a volume of well-stirred pulp.
     *
     * @param part the volume, at most what there is
     * @return what is taken and what is left
     * @throws Refused if there is less than that
     */
    public Parts takeVolume(Quantity<Volume> part) {
        double wanted = Kinds.VOLUME.si(part, "pulp taken");
        return take(wanted / volumeSi(), Kinds.VOLUME.ofSi(wanted, "L").toString(), volume().toString());
    }

    /**
     * Takes a mass of well-stirred pulp.
     *
     * @param part the mass of fibre and water together, at most what there is
     * @return what is taken and what is left
     * @throws Refused if there is less than that
     */
    public Parts takeMass(Quantity<Mass> part) {
        double wanted = Kinds.MASS.si(part, "pulp taken");
        return take(wanted / (fibre + water), Kinds.MASS.ofSi(wanted, "kg").toString(), mass().toString());
    }

    /**
     * Takes as much well-stirred pulp as holds a mass of oven-dry fibre.
     *
     * @param part the oven-dry fibre, at most what there is
     * @return what is taken and what is left
     * @throws Refused if there is less than that
     */
    public Parts takeFibre(Quantity<Mass> part) {
        double wanted = Kinds.MASS.si(part, "fibre taken");
        return take(wanted / fibre, Kinds.MASS.ofSi(wanted, "g") + " of fibre", ovenDry() + " of fibre");
    }

    private Parts take(double share, String wanted, String there) {
        if (share > 1 + DRY_TOLERANCE) {
            throw Refused.of(
                    "pulp.not-enough",
                    "pulp: " + wanted + " asked for, but there is only " + there + ".",
                    "wanted",
                    wanted,
                    "there",
                    there);
        }
        double part = Math.min(share, 1);
        return new FoundParts(same(part * fibre, part * water), same((1 - part) * fibre, (1 - part) * water));
    }

    /**
     * Counts the sheets this pulp can make at the most, none of it lost.
     *
     * @param perSheet the oven-dry fibre of a sheet, above zero
     * @param staysInVat the oven-dry fibre that stays in the vat at the end
     * @return whole sheets; zero when less fibre is there than stays in the vat
     * @throws Refused if a mass is out of range
     */
    public int sheetsAtMost(Quantity<Mass> perSheet, Quantity<Mass> staysInVat) {
        double each = Kinds.MASS.siAboveZero(perSheet, "fibre of a sheet");
        double free = fibre - Kinds.MASS.si(staysInVat, "fibre that stays in the vat");
        return (int) Math.min(Integer.MAX_VALUE, Math.max(0, Math.floor(free / each * (1 + 1e-12))));
    }

    /**
     * Returns the grammage sheets would have that took all of this pulp, for looking back on a day's work of which
     * nobody wrote down what stayed in the vat.
     *
     * @param sheets the sheets counted, 1 or more
     * @param each the area of one, above zero
     * @param assumptions where {@code sheet.grammage-card} is looked up
     * @return oven-dry fibre over area, with the question how much was left; with a warning where it comes out as card
     * @throws Refused if a value is out of range
     */
    public WithNotices<Amount<Grammage>> sharedOut(int sheets, Quantity<Area> each, Assumptions assumptions) {
        Amount<Grammage> most = sharedOut(sheets, each, Kinds.MASS.ofSi(0));
        WithNotices<Amount<Grammage>> noted = WithNotices.of(
                most,
                Notice.note(
                        "pulp.heel-not-told",
                        most + " would have been in each of " + sheets + " sheets had they taken all " + ovenDry()
                                + " of fibre. What stayed in vat and pails? Give it to know better.",
                        "grammage",
                        most.toString(),
                        "sheets",
                        sheets));
        double card = assumptions.si("sheet.grammage-card", Scope.GENERAL);
        return most.si() < card
                ? noted
                : noted.and(Notice.warning(
                        "pulp.card-not-paper",
                        most + " is card, not writing paper. Unless card was made, pulp was left in the vat.",
                        "grammage",
                        most.toString(),
                        "limit",
                        Kinds.GRAMMAGE.ofSi(card, "g/m2").toString()));
    }

    /**
     * Returns the grammage of sheets that took all of this pulp but what stayed in the vat.
     *
     * @param sheets the sheets counted, 1 or more
     * @param each the area of one, above zero
     * @param staysInVat oven-dry fibre left over, at most all of it
     * @return oven-dry fibre over area
     * @throws Refused if a value is out of range
     */
    public Amount<Grammage> sharedOut(int sheets, Quantity<Area> each, Quantity<Mass> staysInVat) {
        if (sheets < 1) {
            throw Refused.of("pulp.no-sheets", "sheets: " + sheets + " given; must be 1 or more.", "given", sheets);
        }
        double left = Kinds.MASS.siWithin(staysInVat, "fibre that stays in the vat", 0, fibre);
        return Kinds.GRAMMAGE.ofSi((fibre - left) / sheets / Kinds.AREA.siAboveZero(each, "area of a sheet"), "g/m2");
    }

    /**
     * Holds a portion of pulp against the sheet that is stated to come of it.
     *
     * @param sheetFibre the oven-dry fibre of the sheet, above zero
     * @return a warning with the volume that is missing or too much where the two differ by more than 2 %; else empty
     * @throws Refused if the mass is not above zero
     */
    public List<Notice> against(Quantity<Mass> sheetFibre) {
        double sheet = Kinds.MASS.siAboveZero(sheetFibre, "fibre of the sheet");
        if (Math.abs(fibre - sheet) <= 0.02 * sheet) {
            return List.of();
        }
        Amount<Mass> wanted = Kinds.MASS.ofSi(sheet, "g");
        Amount<Volume> needed = Kinds.VOLUME.ofSi(volumeSi() * sheet / fibre, "mL");
        Amount<Volume> given = volume().to("mL");
        return List.of(Notice.warning(
                "pulp.portion-and-sheet",
                given + " of this pulp hold " + ovenDry() + " of fibre, not the " + wanted
                        + " of the sheet; that takes " + needed
                        + ". See to the portion or the dilution.",
                "portion",
                given.toString(),
                "holds",
                ovenDry().toString(),
                "sheet",
                wanted.toString(),
                "needed",
                needed.toString()));
    }

    private double consistencySi() {
        return BeaterArithmetic.consistency(fibre, water);
    }

    private double volumeSi() {
        return fibre / wallDensity + water / waterDensity;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Pulp that
                && fibre == that.fibre
                && water == that.water
                && wallDensity == that.wallDensity
                && waterDensity == that.waterDensity;
    }

    @Override
    public int hashCode() {
        return Objects.hash(fibre, water, wallDensity, waterDensity);
    }

    @Override
    public String toString() {
        return volume() + " at " + consistency() + " (" + ovenDry() + " oven-dry fibre)";
    }
}
