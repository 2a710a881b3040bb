package org.papermath.equation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.papermath.testing.CheckValues.relative;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.papermath.testing.CheckValues;
import org.papermath.testing.CheckValues.Row;

class DrainageCheckValuesTest {
    private static final double RHO = 998.2;
    private static final double MU = 1.002e-3;
    private static final double WIRE = 1e7;

    static List<Row> drainage() {
        return CheckValues.read("drainage");
    }

    static List<Row> permeability() {
        return CheckValues.read("permeability");
    }

    @ParameterizedTest
    @MethodSource("drainage")
    void timeAndBack(Row row) {
        double depth = row.number("H0_mm") / 1000;
        double filtrate = row.number("V_mm") / 1000;
        double fibre = row.number("c_kg_per_m3");
        double alpha = row.number("alpha_m_per_kg");
        double mu = row.number("mu_Pas");
        double expected = row.number("time_s");
        assertThat(Drainage.time(filtrate, depth, alpha, 1, fibre, WIRE, mu, RHO))
                .isCloseTo(expected, relative(expected, 1e-4));
        assertThat(Drainage.alphaOfTime(expected, filtrate, depth, 1, fibre, WIRE, mu, RHO))
                .isCloseTo(alpha, relative(alpha, 1e-4));
        assertThat(Drainage.filtrateAfter(expected, depth, alpha, 1, fibre, WIRE, mu, RHO))
                .isCloseTo(filtrate, relative(filtrate, 1e-4));
    }

    @ParameterizedTest
    @MethodSource("permeability")
    void kozeny(Row row) {
        double surface = row.number("S_w_m2_per_kg");
        double volume = row.number("v_m3_per_kg");
        double solidity = row.number("c_m_kg_per_m3");
        double kozeny = Drainage.kozenyOfPorosity(Drainage.porosity(volume, solidity));
        assertThat(kozeny).isCloseTo(row.number("k_z_DI"), relative(kozeny, 1e-5));
        double fixed = row.number("alpha_k5.55");
        assertThat(Drainage.alpha(5.55, surface, volume, solidity)).isCloseTo(fixed, relative(fixed, 1e-5));
        double varied = row.number("alpha_DI");
        assertThat(Drainage.alpha(kozeny, surface, volume, solidity)).isCloseTo(varied, relative(varied, 1e-5));
        assertThat(Drainage.specificSurfaceOfAlpha(varied, kozeny, volume, solidity))
                .isCloseTo(surface, relative(surface, 1e-5));
        assertThat(1 / (Drainage.permeability(5.55, surface, volume, solidity) * solidity))
                .isCloseTo(fixed, relative(fixed, 1e-5));
    }

    @Test
    void depthOfStock() {
        double depth = Drainage.depth(0.1, 0.97, 5);
        assertThat(depth).isCloseTo(0.0206186, relative(0.0206186, 1e-5));
        assertThat(Drainage.grammageOfDepth(depth, 0.97, 5)).isCloseTo(0.1, relative(0.1, 1e-12));
    }

    @Test
    void oneStopwatchRun() {
        assertThat(Drainage.alphaOfTime(30, 0.018, 0.020, 1, 5, WIRE, MU, RHO))
                .isCloseTo(1.9254e9, relative(1.9254e9, 1e-4));
    }

    @Test
    void porosity() {
        double expected = CheckValues.row("mixture_density", "case", "porosity_sheet_0.60_wall_1.50")
                .number("value");
        assertThat(Drainage.porosity(1 / 1500.0, 600)).isCloseTo(expected, relative(expected, 1e-12));
    }

    @Test
    void kozenyConstantInDenseAndLooseMats() {
        assertThat(Drainage.kozenyOfPorosity(0.70)).isCloseTo(5.5650, relative(5.5650, 1e-4));
        assertThat(Drainage.kozenyOfPorosity(0.90)).isCloseTo(8.5285, relative(8.5285, 1e-4));
    }
}
