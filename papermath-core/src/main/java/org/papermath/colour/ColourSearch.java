package org.papermath.colour;

import java.util.Arrays;
import org.papermath.equation.ColourDifference;

/**
 * The amounts that bring a mixture nearest to a colour, none less than it must be: steps of Gauss and Newton, damped where
 * they do not help, along axes at the colour that hold for far ways too.
 */
final class ColourSearch {
    private static final int MOST_STEPS = 40;
    private static final double NEAR_ENOUGH = 1e-4;
    private static final double STANDS_STILL = 1e-7;

    private final Mixing mixing;
    private final double[][] target;
    private final double[][][] weights;
    private final Illuminant[] lights;
    private final double[] importance;
    private final double[][][] axesAt;

    /** Amounts by pigment, white stuff by the fibre there was, and how far off is left in the first light, as ΔE00 and along the axes. */
    record Found(double[] amounts, double white, double difference, double way) {}

    /** Target colours, one in each light; the first is the one that counts. */
    ColourSearch(Mixing mixing, double[][] target, double[][][] weights, Illuminant[] lights, double[] importance) {
        this.mixing = mixing;
        this.target = target;
        this.weights = weights;
        this.lights = lights;
        this.importance = importance;
        axesAt = Arrays.stream(target).map(ColourDifference::farAxes).toArray(double[][][]::new);
    }

    /** Looks among some of the pigments, from amounts between least and most; others stay at the least. */
    Found among(int[] pigments, double[] least, double[] most, double mostWhite, double from) {
        int count = pigments.length + (mostWhite > 0 ? 1 : 0);
        double[] low = new double[count];
        double[] high = new double[count];
        for (int v = 0; v < pigments.length; v++) {
            low[v] = least[pigments[v]];
            high[v] = most[pigments[v]];
        }
        if (mostWhite > 0) {
            high[count - 1] = mostWhite;
        }
        double[] at = new double[count];
        for (int v = 0; v < count; v++) {
            at[v] = low[v] + from * (high[v] - low[v]);
        }
        State state = run(new State(pigments, least, at), low, high);
        return new Found(state.amounts, state.white, state.difference(), state.way());
    }

    private State run(State from, double[] low, double[] high) {
        State state = from;
        double damping = 1e-3;
        for (int step = 0; step < MOST_STEPS && state.square > NEAR_ENOUGH * NEAR_ENOUGH; step++) {
            double[] there = state.at.clone();
            double[] move = state.step(low, high, damping);
            double moved = 0;
            for (int v = 0; v < there.length; v++) {
                there[v] = Math.min(high[v], Math.max(low[v], state.at[v] + move[v]));
                moved = Math.max(moved, Math.abs(there[v] - state.at[v]) / (high[v] - low[v]));
            }
            if (moved < STANDS_STILL) {
                break;
            }
            State next = new State(state.pigments, state.least, there);
            if (next.square < state.square) {
                damping = Math.max(1e-9, damping / 8);
                boolean slow = next.square > 0.999999 * state.square && damping < 1e-6;
                state = next;
                if (slow) {
                    break;
                }
            } else {
                damping *= 10;
                if (damping > 1e8) {
                    break;
                }
            }
        }
        return state;
    }

    private final class State {
        private final int[] pigments;
        private final double[] least;
        private final double[] at;
        private final double[] amounts;
        private final double white;
        private final double[] loads;
        private final Mixing.Mixed mixed;
        private final double[][] lab = new double[target.length][];
        private final double[] off = new double[3 * target.length];
        private final double square;

        State(int[] pigments, double[] least, double[] at) {
            this.pigments = pigments;
            this.least = least;
            this.at = at;
            amounts = least.clone();
            for (int v = 0; v < pigments.length; v++) {
                amounts[pigments[v]] = at[v];
            }
            white = at.length > pigments.length ? at[pigments.length] : 0;
            loads = new double[amounts.length];
            Arrays.setAll(loads, p -> amounts[p] / (1 + white));
            mixed = mixing.at(loads);
            double sum = 0;
            for (int light = 0; light < target.length; light++) {
                lab[light] = Mixing.lab(mixed.values(), weights[light], lights[light]);
                double[] along = along(light, minus(lab[light], target[light]));
                for (int k = 0; k < 3; k++) {
                    off[3 * light + k] = importance[light] * along[k];
                    sum += off[3 * light + k] * off[3 * light + k];
                }
            }
            square = sum;
        }

        private double[] along(int light, double[] step) {
            double[][] axes = axesAt[light];
            double[] along = new double[3];
            Arrays.setAll(along, k -> axes[k][0] * step[0] + axes[k][1] * step[1] + axes[k][2] * step[2]);
            return along;
        }

        double difference() {
            return ColourDifference.of(target[0], lab[0]);
        }

        double way() {
            return Math.sqrt(off[0] * off[0] + off[1] * off[1] + off[2] * off[2]);
        }

        private double[] minus(double[] one, double[] other) {
            return new double[] {one[0] - other[0], one[1] - other[1], one[2] - other[2]};
        }

        private double[][] slopes() {
            double[][] slopes = new double[at.length][off.length];
            for (int light = 0; light < target.length; light++) {
                double[][] byBand = Mixing.labSlopes(mixed.values(), weights[light], lights[light]);
                for (int v = 0; v < at.length; v++) {
                    double[] step = new double[3];
                    for (int band = 0; band < mixed.values().length; band++) {
                        double change = mixed.slopes()[band] * byVariable(v, band);
                        for (int k = 0; k < 3; k++) {
                            step[k] += byBand[k][band] * change;
                        }
                    }
                    double[] along = along(light, step);
                    for (int k = 0; k < 3; k++) {
                        slopes[v][3 * light + k] = importance[light] * along[k];
                    }
                }
            }
            return slopes;
        }

        private double byVariable(int v, int band) {
            if (v < pigments.length) {
                return mixing.byLoad(mixed, pigments[v], band) / (1 + white);
            }
            double sum = 0;
            for (int p = 0; p < loads.length; p++) {
                sum -= loads[p] / (1 + white) * mixing.byLoad(mixed, p, band);
            }
            return sum;
        }

        double[] step(double[] low, double[] high, double damping) {
            double[][] slopes = slopes();
            int count = at.length;
            double[] down = new double[count];
            boolean[] held = new boolean[count];
            for (int v = 0; v < count; v++) {
                for (int k = 0; k < off.length; k++) {
                    down[v] -= slopes[v][k] * off[k];
                }
                held[v] = (at[v] <= low[v] && down[v] < 0) || (at[v] >= high[v] && down[v] > 0);
            }
            double[][] normal = new double[count][count + 1];
            for (int v = 0; v < count; v++) {
                for (int w = 0; w < count; w++) {
                    for (int k = 0; k < off.length; k++) {
                        normal[v][w] += slopes[v][k] * slopes[w][k];
                    }
                }
                normal[v][v] += damping * normal[v][v] + 1e-12;
                normal[v][count] = down[v];
            }
            for (int v = 0; v < count; v++) {
                if (held[v]) {
                    Arrays.fill(normal[v], 0);
                    for (double[] row : normal) {
                        row[v] = 0;
                    }
                    normal[v][v] = 1;
                }
            }
            return solved(normal);
        }
    }

    private static double[] solved(double[][] rows) {
        int count = rows.length;
        for (int i = 0; i < count; i++) {
            int pivot = i;
            for (int r = i + 1; r < count; r++) {
                if (Math.abs(rows[r][i]) > Math.abs(rows[pivot][i])) {
                    pivot = r;
                }
            }
            double[] swap = rows[i];
            rows[i] = rows[pivot];
            rows[pivot] = swap;
            for (int r = 0; r < count; r++) {
                if (r != i && rows[i][i] != 0) {
                    double factor = rows[r][i] / rows[i][i];
                    for (int k = i; k <= count; k++) {
                        rows[r][k] -= factor * rows[i][k];
                    }
                }
            }
        }
        double[] found = new double[count];
        for (int i = 0; i < count; i++) {
            found[i] = rows[i][i] == 0 ? 0 : rows[i][count] / rows[i][i];
        }
        return found;
    }
}
