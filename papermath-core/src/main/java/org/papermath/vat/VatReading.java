package org.papermath.vat;

import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Mass;
import org.papermath.pulp.Pulp;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Consistency;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Moisture;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Solids;

/** Something weighed while sheets are pulled, that shows how the vat really stands. */
public sealed interface VatReading {
    /**
     * The dry matter of one sheet, fibre and additives.
     *
     * @param solids its oven-dry mass
     */
    record OfSheet(Amount<Mass> solids) implements VatReading {
        /**
         * Checks that nothing is missing.
         *
         * @param solids its oven-dry mass
         */
        public OfSheet {
            Objects.requireNonNull(solids, "solids");
        }

        @Override
        public String toString() {
            return "a sheet of " + solids + " oven-dry";
        }
    }

    /**
     * The consistency of the stirred vat.
     *
     * @param consistency fibre over stock
     */
    record OfVat(Amount<Consistency> consistency) implements VatReading {
        /**
         * Checks that nothing is missing.
         *
         * @param consistency fibre over stock
         */
        public OfVat {
            Objects.requireNonNull(consistency, "consistency");
        }

        @Override
        public String toString() {
            return "the vat at " + consistency;
        }
    }

    /**
     * The consistency of what drains off the mould.
     *
     * @param consistency fibre over white water
     */
    record OfWhiteWater(Amount<Consistency> consistency) implements VatReading {
        /**
         * Checks that nothing is missing.
         *
         * @param consistency fibre over white water
         */
        public OfWhiteWater {
            Objects.requireNonNull(consistency, "consistency");
        }

        @Override
        public String toString() {
            return "white water at " + consistency;
        }
    }

    /**
     * Weighs a couched sheet wet. The less sure way: a tenth more water looks like a tenth more sheet.
     *
     * @param wet the mass of the wet sheet, above zero
     * @param solids its solids
     * @return the reading
     * @throws Refused if a value is out of range
     */
    static VatReading couchedSheet(Quantity<Mass> wet, Quantity<Solids> solids) {
        return new OfSheet(Kinds.MASS.ofSi(
                Kinds.MASS.siAboveZero(wet, "couched sheet") * Kinds.SOLIDS.si(solids, "solids of the couched sheet"),
                "g"));
    }

    /**
     * Weighs a trial sheet dried quickly, on a hot plate or under an iron.
     *
     * @param dried the mass of the dried sheet, above zero
     * @param moisture the water left in it, over the whole; zero straight off the plate
     * @return the reading
     * @throws Refused if a value is out of range
     */
    static VatReading driedSheet(Quantity<Mass> dried, Quantity<Moisture> moisture) {
        return new OfSheet(Kinds.MASS.ofSi(
                Kinds.MASS.siAboveZero(dried, "dried sheet")
                        * (1 - Kinds.MOISTURE.siWithin(moisture, "moisture of the dried sheet", 0, 0.9)),
                "g"));
    }

    /**
     * Weighs and dries a sample of the stirred vat.
     *
     * @param sample the wet sample, above zero
     * @param dried what is left of it, oven-dry
     * @return the reading
     * @throws Refused if a value is out of range, or the sample grew heavier
     */
    static VatReading vatSample(Quantity<Mass> sample, Quantity<Mass> dried) {
        return new OfVat(Pulp.consistencyOfSample(sample, dried, Kinds.MOISTURE.ofSi(0)));
    }

    /**
     * Weighs and dries a sample, mostly a litre, of what drains off the mould.
     *
     * @param sample the wet sample, above zero
     * @param dried what is left of it, oven-dry
     * @return the reading
     * @throws Refused if a value is out of range, or the sample grew heavier
     */
    static VatReading whiteWater(Quantity<Mass> sample, Quantity<Mass> dried) {
        return new OfWhiteWater(Pulp.consistencyOfSample(sample, dried, Kinds.MOISTURE.ofSi(0)));
    }
}
