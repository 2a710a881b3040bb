package org.papermath.colour;

/** Three by three. */
final class Matrix {
    static final Matrix BRADFORD = new Matrix(new double[][] {
        {0.8951, 0.2664, -0.1614}, {-0.7502, 1.7135, 0.0367}, {0.0389, -0.0685, 1.0296},
    });

    /** Linear light of the primaries of IEC 61966-2-1 to tristimulus values over 100, D65. */
    static final Matrix SRGB = primaries(new double[][] {{0.64, 0.33}, {0.30, 0.60}, {0.15, 0.06}});

    /** The other way round. */
    static final Matrix TO_SRGB = SRGB.inverse();

    /** The same of ITU-R BT.2020, wide enough that no pulp falls outside. */
    static final Matrix WIDE = primaries(new double[][] {{0.708, 0.292}, {0.170, 0.797}, {0.131, 0.046}});

    /** The other way round. */
    static final Matrix TO_WIDE = WIDE.inverse();

    private final double[][] cells;

    Matrix(double[][] cells) {
        this.cells = cells;
    }

    private static Matrix primaries(double[][] xy) {
        double[][] cells = new double[3][3];
        for (int i = 0; i < 3; i++) {
            cells[0][i] = xy[i][0] / xy[i][1];
            cells[1][i] = 1;
            cells[2][i] = (1 - xy[i][0] - xy[i][1]) / xy[i][1];
        }
        Xyz white = Illuminant.D65.white();
        double[] each = new Matrix(cells).inverse().times(white.x() / 100, white.y() / 100, white.z() / 100);
        for (double[] row : cells) {
            for (int i = 0; i < 3; i++) {
                row[i] *= each[i];
            }
        }
        return new Matrix(cells);
    }

    double[] times(double... vector) {
        double[] product = new double[3];
        for (int i = 0; i < 3; i++) {
            product[i] = cells[i][0] * vector[0] + cells[i][1] * vector[1] + cells[i][2] * vector[2];
        }
        return product;
    }

    /** From what is seen in one light to what looks the same in another, to an eye used to each. */
    static Matrix adaptation(Illuminant from, Illuminant to) {
        double[] here = cones(from.white());
        double[] there = cones(to.white());
        double[][] scaled = new double[3][3];
        for (int i = 0; i < 3; i++) {
            for (int j = 0; j < 3; j++) {
                scaled[i][j] = BRADFORD.cells[i][j] * there[i] / here[i];
            }
        }
        return BRADFORD.inverse().times(new Matrix(scaled));
    }

    private static double[] cones(Xyz white) {
        return BRADFORD.times(white.x(), white.y(), white.z());
    }

    Matrix times(Matrix other) {
        double[][] product = new double[3][3];
        for (int j = 0; j < 3; j++) {
            double[] column = times(other.cells[0][j], other.cells[1][j], other.cells[2][j]);
            for (int i = 0; i < 3; i++) {
                product[i][j] = column[i];
            }
        }
        return new Matrix(product);
    }

    double[][] cells() {
        return cells;
    }

    Matrix inverse() {
        double[][] m = cells;
        double[][] inverse = new double[3][3];
        double determinant = 0;
        for (int i = 0; i < 3; i++) {
            for (int j = 0; j < 3; j++) {
                int r1 = (j + 1) % 3;
                int r2 = (j + 2) % 3;
                int c1 = (i + 1) % 3;
                int c2 = (i + 2) % 3;
                inverse[i][j] = m[r1][c1] * m[r2][c2] - m[r1][c2] * m[r2][c1];
            }
        }
        for (int i = 0; i < 3; i++) {
            determinant += m[0][i] * inverse[i][0];
        }
        for (double[] row : inverse) {
            for (int j = 0; j < 3; j++) {
                row[j] /= determinant;
            }
        }
        return new Matrix(inverse);
    }

    /** A value that is below zero from rounding alone is zero. */
    static double rounded(double value) {
        return value < 0 && value > -1e-9 ? 0 : value;
    }
}
