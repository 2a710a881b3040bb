package org.papermath.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.papermath.quantity.Amounts.inches;
import static org.papermath.testing.CheckValues.relative;

import java.io.InputStream;
import java.math.BigDecimal;
import java.math.MathContext;
import org.fhir.ucum.Component;
import org.fhir.ucum.Decimal;
import org.fhir.ucum.DefinedUnit;
import org.fhir.ucum.ExpressionParser;
import org.fhir.ucum.Factor;
import org.fhir.ucum.Operator;
import org.fhir.ucum.Symbol;
import org.fhir.ucum.Term;
import org.fhir.ucum.UcumEssenceService;
import org.fhir.ucum.UcumException;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.papermath.format.ReamBasis;

/** Factors against an independent unit library with its own table of definitions. */
class UnitsAgainstUcumTest {
    private static UcumEssenceService ucum;

    @BeforeAll
    static void load() throws Exception {
        try (InputStream table = UcumEssenceService.class.getResourceAsStream("/ucum-essence.xml")) {
            ucum = new UcumEssenceService(table);
        }
    }

    /**
     * The library's own conversion keeps the significant digits of a definition, 12 inches being 0.305 m, and cuts them
     * off on the way. So its table and its reading of expressions are taken, and multiplied out without loss.
     */
    private static BigDecimal convert(String from, String to) throws UcumException {
        return inBaseUnits(from).divide(inBaseUnits(to), MathContext.DECIMAL128);
    }

    private static BigDecimal inBaseUnits(String expression) throws UcumException {
        return value(new ExpressionParser(ucum.getModel()).parse(expression));
    }

    private static BigDecimal value(Component component) throws UcumException {
        if (component instanceof Factor factor) {
            return BigDecimal.valueOf(factor.getValue());
        }
        if (component instanceof Symbol symbol) {
            BigDecimal one = symbol.getUnit() instanceof DefinedUnit defined
                    ? number(defined.getValue().getValue())
                            .multiply(inBaseUnits(defined.getValue().getUnit()))
                    : BigDecimal.ONE;
            if (symbol.hasPrefix()) {
                one = one.multiply(number(symbol.getPrefix().getValue()));
            }
            BigDecimal power = one.pow(Math.abs(symbol.getExponent()));
            return symbol.getExponent() < 0 ? BigDecimal.ONE.divide(power, MathContext.DECIMAL128) : power;
        }
        Term term = (Term) component;
        BigDecimal first = term.hasComp() ? value(term.getComp()) : BigDecimal.ONE;
        if (!term.hasTerm()) {
            return first;
        }
        BigDecimal rest = value(term.getTerm());
        return term.getOp() == Operator.DIVISION ? first.divide(rest, MathContext.DECIMAL128) : first.multiply(rest);
    }

    private static BigDecimal number(Decimal decimal) {
        return new BigDecimal(decimal.asDecimal());
    }

    @ParameterizedTest
    @CsvSource({
        "km, km, m",
        "cm, cm, m",
        "mm, mm, m",
        "um, um, m",
        "in, [in_i], m",
        "ft, [ft_i], m",
        "yd, [yd_i], m",
        "mil, [mil_i], m",
        "pt_paper, [mil_i], m",
        "cm2, cm2, m2",
        "mm2, mm2, m2",
        "in2, [sin_i], m2",
        "ft2, [sft_i], m2",
        "L, L, m3",
        "mL, mL, m3",
        "cm3, cm3, m3",
        "gal_us, [gal_us], m3",
        "qt_us, [qt_us], m3",
        "pt_us, [pt_us], m3",
        "cup_us, [cup_us], m3",
        "floz_us, [foz_us], m3",
        "tbsp_us, [tbs_us], m3",
        "tsp_us, [tsp_us], m3",
        "gal_uk, [gal_br], m3",
        "qt_uk, [qt_br], m3",
        "pt_uk, [pt_br], m3",
        "floz_uk, [foz_br], m3",
        "g, g, kg",
        "mg, mg, kg",
        "t, t, kg",
        "lb, [lb_av], kg",
        "oz, [oz_av], kg",
        "cwt_us, [scwt_av], kg",
        "cwt_uk, [lcwt_av], kg",
        "min, min, s",
        "h, h, s",
        "d, d, s",
        "kN, kN, N",
        "kgf, kgf, N",
        "lbf, [lbf_av], N",
        "kPa, kPa, Pa",
        "MPa, MPa, Pa",
        "hPa, hPa, Pa",
        "bar, bar, Pa",
        "psi, [psi], Pa",
        "kW, kW, W",
        "hp, [HP], W",
        "g/m2, g/m2, kg/m2",
        "ft/min, [ft_i]/min, m/s",
        "m3/h, m3/h, m3/s",
        "L/min, L/min, m3/s",
        "ft3/min, [cft_i]/min, m3/s",
        "g/cm3, g/cm3, kg/m3",
        "g/L, g/L, kg/m3",
        "cm3/g, cm3/g, m3/kg",
        "kg/h, kg/h, kg/s",
        "lbf.in, [lbf_av].[in_i], N.m"
    })
    void factor(String code, String from, String si) throws Exception {
        double expected = convert(from, si).doubleValue();
        assertThat(Units.toSi(1, code)).isCloseTo(expected, relative(expected, 1e-14));
    }

    /** The column of mercury, which the table works out from a rounded metre of it. */
    @Test
    void inchOfMercury() throws Exception {
        double expected = convert("[in_i'Hg]", "Pa").doubleValue();
        assertThat(Units.toSi(1, "inHg")).isCloseTo(expected, relative(expected, 5e-6));
    }

    @ParameterizedTest
    @CsvSource({
        "17, 22, 500",
        "20, 26, 500",
        "22.5, 28.5, 500",
        "25.5, 30.5, 500",
        "24, 36, 500",
        "25, 38, 500",
        "22, 30, 472",
        "22, 30, 480",
        "22, 30, 504",
        "22, 30, 516",
        "12, 12, 1000",
        "12, 12, 3000",
        "17.5, 22.5, 480"
    })
    void poundOfAReam(double width, double length, int count) throws Exception {
        BigDecimal area = new BigDecimal(width).multiply(new BigDecimal(length)).multiply(new BigDecimal(count));
        BigDecimal inch = convert("[in_i]", "m");
        BigDecimal pound = convert("[lb_av]", "g");
        assertThat(pound).isEqualByComparingTo("453.59237");
        assertThat(inch).isEqualByComparingTo("0.0254");
        double expected = pound.divide(area.multiply(inch).multiply(inch), MathContext.DECIMAL64)
                .doubleValue();
        assertThat(ReamBasis.of(inches(width), inches(length), count).pounds(1).in("g/m2"))
                .isCloseTo(expected, relative(expected, 4e-15));
    }
}
