package org.papermath.equation;

/**
 * How dense a dry sheet is, of fibre in a state of beating, by the last pressure on it. The models and the plans both
 * answer by it, so what a calibration inverts is what a plan applies.
 *
 * <p>Densities in kg/m3, pressures in Pa.
 */
public sealed interface DensityLaw {
    /** The law of pulp of unknown density. */
    static DensityLaw unknown() {
        return new LightlyPressed(Double.NaN);
    }

    /** The density; not a number where it is not known. Not yet held below that of the densest sheet. */
    double uncapped(double pressure);

    /** The density, at most that of the densest sheet. */
    default double density(double pressure, double densest) {
        return Math.min(densest, uncapped(pressure));
    }

    /** Whether beating and pressing move the density at all. */
    boolean answersToPressing();

    /**
     * How density answers to pressing: {@code (min(max(p, p_least), p_sat)/p0)^k}.
     *
     * @param exponent k
     * @param reference p0, the pressure the densities belong to
     * @param least the least pressure the law was made for; below it nothing is known
     * @param saturation p_sat, above which more pressing adds nothing
     */
    record Pressing(double exponent, double reference, double least, double saturation) {
        /** Whether another is the same in every number; the equals of a record costs more than the law. */
        private boolean isAs(Pressing other) {
            return exponent == other.exponent
                    && reference == other.reference
                    && least == other.least
                    && saturation == other.saturation;
        }

        /** Density over that at the reference pressure. */
        public double factor(double pressure) {
            return Density.ofPressure(1, Math.max(pressure, least), reference, saturation, exponent);
        }
    }

    /**
     * A fibre or furnish of which the density is known at both ends of beating, pressed at the reference pressure. On
     * the way from one to the other it is the volume of a mass that falls in a straight line with the state:
     * {@code 1/rho = (1 - y)/rho_0 + y/rho_1}.
     *
     * @param unbeaten rho_0, not beaten
     * @param longBeaten rho_1, beaten as far as it goes
     * @param state y, of the fibre in question
     * @param pressing how it answers to pressing
     */
    record Beaten(double unbeaten, double longBeaten, double state, Pressing pressing) implements DensityLaw {
        @Override
        public double uncapped(double pressure) {
            return atFactor(pressing.factor(pressure));
        }

        private double atFactor(double factor) {
            return factor / ((1 - state) / unbeaten + state / longBeaten);
        }

        @Override
        public boolean answersToPressing() {
            return true;
        }

        /**
         * The law that gives a measured density. Both densities grow in proportion; where that took the long-beaten one
         * above a bound it stands at the bound and the unbeaten one takes the rest.
         *
         * @param density as measured
         * @param pressure the last pressure on the sheet
         * @param most what no density of the table may pass
         * @return the law; its unbeaten density is not between zero and the bound where no law gives the measured one
         */
        public Beaten measured(double density, double pressure, double most) {
            double scale = density / uncapped(pressure);
            double longest = longBeaten * scale;
            if (longest <= most) {
                return new Beaten(unbeaten * scale, longest, state, pressing);
            }
            double bulk = (pressing.factor(pressure) / density - state / most) / (1 - state);
            return new Beaten(1 / bulk, most, state, pressing);
        }
    }

    /**
     * A fibre of which only the density of sheets is known that were pressed lightly, as is usual for it. That states no
     * pressure, so neither pressing nor beating enters.
     *
     * @param usual the density
     */
    record LightlyPressed(double usual) implements DensityLaw {
        @Override
        public double uncapped(double pressure) {
            return usual;
        }

        @Override
        public boolean answersToPressing() {
            return false;
        }
    }

    /** A blend: the volumes of its fibres add up, each at the density it comes to by itself. */
    final class Blend implements DensityLaw {
        private final double[] shares;
        private final DensityLaw[] fibres;

        /**
         * Makes the law of a blend.
         *
         * @param shares of each fibre in the oven-dry mass
         * @param fibres the law of each
         */
        public Blend(double[] shares, DensityLaw[] fibres) {
            this.shares = shares.clone();
            this.fibres = fibres.clone();
        }

        @Override
        public double uncapped(double pressure) {
            double bulk = 0;
            // Fibres mostly answer to pressing alike, and a power costs more than all the rest.
            Pressing pressing = null;
            double factor = Double.NaN;
            for (int i = 0; i < fibres.length; i++) {
                if (fibres[i] instanceof Beaten beaten) {
                    if (pressing == null || !beaten.pressing.isAs(pressing)) {
                        pressing = beaten.pressing;
                        factor = pressing.factor(pressure);
                    }
                    bulk += shares[i] / beaten.atFactor(factor);
                } else {
                    bulk += shares[i] / fibres[i].uncapped(pressure);
                }
            }
            return 1 / bulk;
        }

        @Override
        public boolean answersToPressing() {
            for (DensityLaw fibre : fibres) {
                if (fibre.answersToPressing()) {
                    return true;
                }
            }
            return false;
        }
    }
}
