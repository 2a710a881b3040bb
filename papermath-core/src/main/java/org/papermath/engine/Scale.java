package org.papermath.engine;

/**
 * How the shifts of a forecast add up to a band. What cannot be below zero must not get a band that is, so most shifts
 * are not added as differences.
 */
public enum Scale {
    /** Above zero, and off by factors: times, masses, thicknesses. */
    FACTOR {
        @Override
        public double of(double x, double most) {
            return Math.log(x);
        }

        @Override
        public double back(double scaled, double most) {
            return Math.exp(scaled);
        }
    },
    /** Between nothing and all of something: solids, a consistency, a reading of a tester that ends at 100. */
    SHARE {
        @Override
        public double of(double x, double most) {
            return Math.log(x / (most - x));
        }

        @Override
        public double back(double scaled, double most) {
            return most / (1 + Math.exp(-scaled));
        }
    },
    /** Zero or more, and zero can be reached: a shrinkage, what is left over. */
    ROOT {
        @Override
        public double of(double x, double most) {
            return Math.sqrt(x);
        }

        @Override
        public double back(double scaled, double most) {
            return scaled <= 0 ? 0 : scaled * scaled;
        }
    },
    /** Of either sign: a play, a surplus. */
    DIFFERENCE {
        @Override
        public double of(double x, double most) {
            return x;
        }

        @Override
        public double back(double scaled, double most) {
            return scaled;
        }
    };

    /** The result on the scale; not finite where it cannot be calculated there. */
    public abstract double of(double x, double most);

    public abstract double back(double scaled, double most);
}
