package org.papermath.colour;

/**
 * One row of the matrix from a camera to tristimulus values: the least squares over known patches, each weighted by how fast
 * lightness goes up with the value there. Closed, by the normal equations of three unknowns.
 */
final class PatchSquares {
    private final double[] row;
    private final double[] leverages;
    private final double told;

    PatchSquares(double[][] seen, double[][] known, int k) {
        double whole = new double[] {
                    Illuminant.D65.white().x(),
                    Illuminant.D65.white().y(),
                    Illuminant.D65.white().z()
                }
                [k];
        double[][] sums = new double[3][3];
        double[] right = new double[3];
        double[] squared = new double[seen.length];
        for (int n = 0; n < seen.length; n++) {
            double weight = Lab.steepness(known[n][k] / whole) / whole;
            squared[n] = weight * weight;
            for (int i = 0; i < 3; i++) {
                right[i] += squared[n] * seen[n][i] * known[n][k];
                for (int j = 0; j < 3; j++) {
                    sums[i][j] += squared[n] * seen[n][i] * seen[n][j];
                }
            }
        }
        Matrix inverse = new Matrix(sums).inverse();
        row = inverse.times(right);
        leverages = new double[seen.length];
        for (int n = 0; n < seen.length; n++) {
            double[] turned = inverse.times(seen[n]);
            leverages[n] = squared[n] * (turned[0] * seen[n][0] + turned[1] * seen[n][1] + turned[2] * seen[n][2]);
        }
        double least = 1;
        for (int i = 0; i < 3; i++) {
            double part = 1 / (inverse.cells()[i][i] * sums[i][i]);
            // Not a number, or below zero from rounding, where nothing is told.
            least = part > 0 ? Math.min(least, part) : 0;
        }
        told = Math.sqrt(least);
    }

    double[] row() {
        return row;
    }

    /** How much of what comes out for each patch it decides itself, 0 to 1. */
    double[] leverages() {
        return leverages;
    }

    /** The least part of what any of the three colours says that the other two do not say. */
    double told() {
        return told;
    }
}
