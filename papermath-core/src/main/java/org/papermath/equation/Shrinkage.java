package org.papermath.equation;

/** Drying shrinkage, what restraint does to it, and later movement with humidity. Shrinkages are fractions. */
public final class Shrinkage {
    private Shrinkage() {}

    /** Free linear shrinkage from the water retention value (g/g): {@code A (WRV - B)}, kept within two limits. */
    public static double freeByRetention(
            double retention, double slope, double intercept, double lowest, double highest) {
        return Math.min(highest, Math.max(lowest, slope * (retention - intercept)));
    }

    /** Slope A of {@link #freeByRetention} through two measured points. */
    public static double retentionSlope(
            double firstRetention, double firstShrinkage, double secondRetention, double secondShrinkage) {
        return (secondShrinkage - firstShrinkage) / (secondRetention - firstRetention);
    }

    /** Intercept B (g/g) of {@link #freeByRetention} through one measured point with the slope known. */
    public static double retentionIntercept(double retention, double shrinkage, double slope) {
        return retention - shrinkage / slope;
    }

    /** Share of the free shrinkage that has happened at a moisture ratio: {@code max(0, 1 - M/M_on)}. */
    public static double share(double ratio, double onset) {
        return Math.max(0, 1 - ratio / onset);
    }

    /** Shrinkage of one drying step between two moisture ratios under a restraint from 0 (free) to 1 (held). */
    public static double step(double free, double onset, double ratioFrom, double ratioTo, double restraint) {
        return free * ((share(ratioTo, onset) - share(ratioFrom, onset)) * (1 - restraint));
    }

    /**
     * Shrinkage along a drying path: the sum of {@link #step} from the starting moisture ratio through each next one,
     * under the restraint of each step; both arrays have one entry a step (after Htun and de Ruvo 1981).
     */
    public static double alongPath(double free, double onset, double start, double[] ratios, double[] restraints) {
        double sum = 0;
        double from = start;
        for (int i = 0; i < ratios.length; i++) {
            sum += step(free, onset, from, ratios[i], restraints[i]);
            from = ratios[i];
        }
        return sum;
    }

    /** The whole free shrinkage behind one measured down to a moisture ratio only, such as that of room air. */
    public static double wholeFree(double measured, double onset, double ratio) {
        return measured / share(ratio, onset);
    }

    /**
     * Half the difference of the two directions about their mean, held so that neither grows for being the smaller one.
     */
    public static double halfDifference(double mean, double difference) {
        return Math.max(-mean, Math.min(mean, difference / 2));
    }

    /** Linear shrinkage between a wet and a dry length. */
    public static double ofLengths(double wet, double dry) {
        return 1 - dry / wet;
    }

    /** Dry length of a wet one. */
    public static double dryLength(double wet, double shrinkage) {
        return wet * (1 - shrinkage);
    }

    /** Wet length, such as a mould's, for a wanted dry one. */
    public static double wetLength(double dry, double shrinkage) {
        return dry / (1 - shrinkage);
    }

    /** Stretch that would undo a shrinkage: {@code s/(1 - s)}. */
    public static double undoingStretch(double shrinkage) {
        return shrinkage / (1 - shrinkage);
    }

    /** Oven-dry grammage on the mould (kg/m2) for a wanted grammage of the dry sheet at a moisture ratio. */
    public static double formedGrammage(double dry, double ratio, double along, double across) {
        return dry * (1 - along) * (1 - across) / (1 + ratio);
    }

    /**
     * Hygroexpansion coefficient (strain per change of moisture ratio) of a sheet that shrank on drying:
     * {@code beta_0 + beta_1 s}, with beta_1 per unit of linear shrinkage (1.2 where a table says 0.012 per per cent).
     */
    public static double hygroexpansionCoefficient(double shrinkage, double unshrunk, double perShrinkage) {
        return unshrunk + perShrinkage * shrinkage;
    }

    /** Strain of a dry sheet over a change of moisture ratio; positive is growth. */
    public static double hygroexpansion(double coefficient, double ratioChange) {
        return coefficient * ratioChange;
    }
}
