package org.papermath.equation;

/**
 * What a sheet shrinks in both directions on a way of drying.
 *
 * @param onset moisture ratio below which a sheet shrinks
 * @param difference shrinkage across less that along, dried free
 */
public record ShrinkageLaw(double onset, double difference) {
    /**
     * The free shrinkage of one fibre of which it is known at both ends of beating: {@code s = s_0 + (s_1 - s_0) y}.
     *
     * @param unbeaten s_0, not beaten
     * @param limit s_1, beaten as far as it goes
     */
    public record Ends(double unbeaten, double limit) {
        /** The free shrinkage in a state of beating. */
        public double free(double state) {
            return unbeaten + (limit - unbeaten) * state;
        }
    }

    /**
     * The free shrinkage by the water a stock holds, for fibres without a trial.
     *
     * @param slope per g/g of water retention value
     * @param intercept water retention value of stock that does not shrink, g/g
     */
    public record Line(double slope, double intercept) {
        /** No sheet shrinks more than this along a side, whatever the straight line says. */
        private static final double MOST = 0.35;

        /** The free shrinkage of stock of a water retention value (g/g). */
        public double free(double retention) {
            return Shrinkage.freeByRetention(retention, slope, intercept, 0, MOST);
        }
    }

    /** The two directions about their mean, along and across; neither grows for being the smaller one. */
    public double[] directions(double mean) {
        double half = Shrinkage.halfDifference(mean, difference);
        return new double[] {mean - half, mean + half};
    }

    /** What a sheet shrinks from one moisture ratio through the next ones, held at each step by a restraint. */
    public double held(double free, double start, double[] ratios, double[] restraints) {
        return Shrinkage.alongPath(free, onset, start, ratios, restraints);
    }
}
