package org.papermath.pulp;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Temperature;
import org.papermath.air.Water;
import org.papermath.equation.Freeness;
import org.papermath.evidence.Assumption;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Basis;
import org.papermath.evidence.Estimate;
import org.papermath.evidence.Notice;
import org.papermath.evidence.Reading;
import org.papermath.evidence.Scope;
import org.papermath.evidence.Source;
import org.papermath.evidence.WithNotices;
import org.papermath.numeric.Normal;
import org.papermath.quantity.Amount;
import org.papermath.quantity.CanadianFreeness;
import org.papermath.quantity.Consistency;
import org.papermath.quantity.FiltrationResistance;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;
import org.papermath.quantity.SchopperRiegler;

/**
 * How the two drainage testers convert to each other, and to the resistance of the mat on the mould. Immutable.
 *
 * <p>A value is best kept in the scale it was measured in. The chart between the scales is one of mill practice, good
 * to 3 °SR; the resistance derived from one reading is good to a factor of 1.7. A stopwatch at one's own mould does
 * better than either, and beyond 90 °SR or below 50 mL it is the only way.
 *
 * @source ISO 5267-1 and ISO 5267-2 for the testers; the chart and the instrument constants recalled, not looked up
 */
public final class DrainabilityModel {
    private static final double LEAST_SR = 12;
    private static final double LEAST_CSF = 50;
    private static final double MOST_CSF = 750;

    private final Assumption offset;
    private final Assumption factor;
    private final Assumption exponent;
    private final double water;
    private final double mostNumber;
    private final Freeness.Tester canadian;

    private DrainabilityModel(
            Assumption offset,
            Assumption factor,
            Assumption exponent,
            double water,
            double mostNumber,
            Freeness.Tester canadian) {
        this.offset = offset;
        this.factor = factor;
        this.exponent = exponent;
        this.water = water;
        this.mostNumber = mostNumber;
        this.canadian = canadian;
    }

    /**
     * Builds the model.
     *
     * @param assumptions where the constants are looked up
     * @param scope the fibre, and the tester or the mould where it has values of its own
     * @return the model
     */
    public static DrainabilityModel from(Assumptions assumptions, Scope scope) {
        Objects.requireNonNull(assumptions, "assumptions");
        Objects.requireNonNull(scope, "scope");
        return new DrainabilityModel(
                assumptions.get("freeness.chart-offset", scope),
                assumptions.get("drainage.resistance-factor", scope),
                assumptions.get("drainage.resistance-exponent", scope),
                assumptions.si("freeness.sr-water-reading", scope),
                assumptions.si("drainage.drainability-limit", scope),
                new Freeness.Tester(
                        assumptions.si("freeness.csf-area", scope),
                        assumptions.si("freeness.csf-volume", scope),
                        assumptions.si("freeness.csf-fibre", scope),
                        assumptions.si("freeness.csf-orifice-flow", scope),
                        assumptions.si("freeness.csf-hold-up", scope),
                        assumptions.si("freeness.csf-wire-resistance", scope)));
    }

    /**
     * Builds the model from the shipped table.
     *
     * @return the model
     */
    public static DrainabilityModel standard() {
        return from(Assumptions.standard(), Scope.GENERAL);
    }

    /**
     * Reads the Schopper–Riegler number off the chart for a Canadian freeness.
     *
     * @param freeness the freeness as measured, 50 to 750 mL
     * @return the number with the band of the chart, and a note that it was converted
     * @throws Refused if the freeness is outside the chart
     */
    public WithNotices<Estimate<SchopperRiegler>> schopperRieglerOf(Quantity<CanadianFreeness> freeness) {
        double csf = Kinds.CANADIAN_FREENESS.siWithin(freeness, "Canadian Standard freeness", LEAST_CSF, MOST_CSF);
        Estimate<SchopperRiegler> value = Estimate.of(
                sr(Freeness.schopperRieglerOfCanadian(csf, offset.likelySi())),
                sr(Freeness.schopperRieglerOfCanadian(csf, offset.lowSi())),
                sr(Freeness.schopperRieglerOfCanadian(csf, offset.highSi())),
                List.of(new Estimate.Driver(offset, 1)));
        return WithNotices.of(value, converted(value.likely().toString(), csf(csf).toString()));
    }

    /**
     * Reads the Canadian freeness off the chart for a Schopper–Riegler number.
     *
     * @param number the number as measured, 13.5 to 75.5, the ends of the chart
     * @return the freeness with the band of the chart, and a note that it was converted
     * @throws Refused if the number is outside the chart
     */
    public WithNotices<Estimate<CanadianFreeness>> canadianOf(Quantity<SchopperRiegler> number) {
        double value = Kinds.SCHOPPER_RIEGLER.siWithin(
                number,
                "Schopper-Riegler number",
                Freeness.schopperRieglerOfCanadian(MOST_CSF, 0),
                Freeness.schopperRieglerOfCanadian(LEAST_CSF, 0));
        Estimate<CanadianFreeness> estimate = Estimate.of(
                csf(Freeness.canadianOfSchopperRiegler(value, offset.likelySi())),
                csf(Math.max(0, Freeness.canadianOfSchopperRiegler(value, offset.lowSi()))),
                csf(Freeness.canadianOfSchopperRiegler(value, offset.highSi())),
                List.of(new Estimate.Driver(offset, 1)));
        return WithNotices.of(
                estimate, converted(estimate.likely().toString(), sr(value).toString()));
    }

    private static Notice converted(String value, String measured) {
        return Notice.note(
                "drainability.converted",
                value + " was converted from " + measured + " by a chart, not measured. Keep the measured value.",
                "value",
                value,
                "measured",
                measured);
    }

    /**
     * Returns the specific filtration resistance of the mat that answers to a Schopper–Riegler number:
     * α = a [(SR − 4.86)/(100 − SR)]ⁿ, with 4.86 ({@code freeness.sr-water-reading}) what clear water reads.
     *
     * @param number the number, 12 to 90
     * @return the resistance with its band
     * @throws Refused if the number is below 12, or above 90, where the tester no longer separates slow from slower and
     *     a timed sheet is asked for
     * @source worked out from the filtration law and the tester's orifice; within 5 % of that from 15 to 80
     */
    public Estimate<FiltrationResistance> resistance(Quantity<SchopperRiegler> number) {
        Amount<SchopperRiegler> given = Kinds.SCHOPPER_RIEGLER.check(number, "Schopper-Riegler number");
        if (given.si() > mostNumber) {
            throw stopwatch(given.toString(), "above", sr(mostNumber).toString());
        }
        double value = Kinds.SCHOPPER_RIEGLER.siWithin(number, "Schopper-Riegler number", LEAST_SR, mostNumber);
        return Estimate.of(
                alpha(group(value) * factor.likelySi()),
                alpha(group(value) * factor.lowSi()),
                alpha(group(value) * factor.highSi()),
                List.of(new Estimate.Driver(factor, 1)));
    }

    /**
     * Returns the specific filtration resistance of the mat that answers to a Canadian freeness, by the physics of that
     * tester itself and without the chart. For one pulp the two testers need not agree: at 300 mL the resistance
     * derived from a Schopper–Riegler number is about 0.7 of this.
     *
     * @param freeness the freeness, 50 to 750 mL, at 0.30 % and 20 °C
     * @return the resistance, with the band of {@link #resistance}
     * @throws Refused if the freeness is above 750 mL, or below 50 mL, where a timed sheet is asked for
     */
    public Estimate<FiltrationResistance> resistanceOfCanadian(Quantity<CanadianFreeness> freeness) {
        Amount<CanadianFreeness> given = Kinds.CANADIAN_FREENESS.check(freeness, "Canadian Standard freeness");
        if (given.si() < LEAST_CSF) {
            throw stopwatch(given.toString(), "below", csf(LEAST_CSF).toString());
        }
        double value = Kinds.CANADIAN_FREENESS.siWithin(freeness, "Canadian Standard freeness", LEAST_CSF, MOST_CSF);
        Water room = Water.room();
        double likely = Freeness.alphaOfSideVolume(
                value * 1e-6, canadian, room.viscosity().si(), room.density().si());
        return Estimate.of(
                alpha(likely),
                alpha(likely * factor.lowSi() / factor.likelySi()),
                alpha(likely * factor.highSi() / factor.likelySi()),
                List.of(new Estimate.Driver(factor, 1)));
    }

    /**
     * Returns the Schopper–Riegler number that answers to a resistance, for comparing a timed sheet with a table.
     *
     * @param resistance the specific filtration resistance, above zero
     * @return the number
     * @throws Refused if the resistance is not above zero
     */
    public Amount<SchopperRiegler> schopperRieglerOfResistance(Quantity<FiltrationResistance> resistance) {
        double value = Kinds.FILTRATION_RESISTANCE.siAboveZero(resistance, "specific filtration resistance");
        return sr(Freeness.schopperRieglerOfAlpha(value, factor.likelySi(), water, exponent.likelySi()));
    }

    /**
     * Returns the Schopper–Riegler number that goes with a freeness that was read, by the chart, with the error that
     * chart and reading bring.
     *
     * @param freeness the freeness with its error
     * @return the number
     * @throws Refused if the freeness is out of range
     */
    public Reading<SchopperRiegler> schopperRieglerOf(Reading<CanadianFreeness> freeness) {
        Estimate<SchopperRiegler> chart = schopperRieglerOf(freeness.value()).value();
        double ofChart = (chart.high().si() - chart.low().si()) / (2 * Normal.FIVE_PERCENT_POINT);
        double ofReading = freeness.error().si() == 0
                ? 0
                : chart.likely().si()
                        - schopperRieglerOf(inwards(freeness, 400))
                                .value()
                                .likely()
                                .si();
        return Reading.of(chart.likely(), Kinds.SCHOPPER_RIEGLER.ofSi(Math.hypot(ofChart, ofReading), "SR"));
    }

    /**
     * Returns by what part of itself the resistance moves when the number is read one standard error off.
     *
     * @param number the number with its error
     * @return the change over the resistance, a fraction
     * @throws Refused if the number is out of range
     */
    public double errorOfResistance(Reading<SchopperRiegler> number) {
        return number.error().si() == 0
                ? 0
                : resistance(inwards(number, 50)).likely().si()
                                / resistance(number.value()).likely().si()
                        - 1;
    }

    /** A step of the error towards the middle, so that the neighbour is still on the scale. */
    private static <Q extends Quantity<Q>> Amount<Q> inwards(Reading<Q> reading, double middle) {
        double value = reading.value().si();
        return reading.value().kind().ofSi(value + Math.copySign(reading.error().si(), middle - value));
    }

    /**
     * Returns what one timed sheet shows about pulp whose Schopper–Riegler number was read too: the factor of the
     * resistance for this fibre and mould.
     *
     * @param assumptions what is taken for the rest
     * @param scope the fibre and the mould it holds for
     * @param number the number of the pulp, 12 to 90
     * @param resistance the resistance of the timed sheet, with its error
     * @return the assumptions with {@code drainage.resistance-factor} in that scope
     * @throws Refused if a value is out of range
     */
    public static Assumptions calibrate(
            Assumptions assumptions,
            Scope scope,
            Quantity<SchopperRiegler> number,
            Reading<FiltrationResistance> resistance) {
        Objects.requireNonNull(assumptions, "assumptions");
        Objects.requireNonNull(scope, "scope");
        DrainabilityModel model = from(assumptions, scope);
        double value = Kinds.SCHOPPER_RIEGLER.siWithin(number, "Schopper-Riegler number", LEAST_SR, model.mostNumber);
        double alpha = Kinds.FILTRATION_RESISTANCE.siAboveZero(resistance.value(), "specific filtration resistance");
        double likely = alpha / model.group(value);
        // A depth read by eye is good to about a fifth, whatever the watch says.
        double spread = Math.exp(Math.max(
                Math.log1p(assumptions.si("drainage.stopwatch-surest", scope)),
                Normal.FIVE_PERCENT_POINT * resistance.error().si() / alpha));
        return assumptions.with(model.factor.with(
                scope,
                likely,
                likely / spread,
                likely * spread,
                Basis.MEASURED_HERE,
                new Source("measured here, a timed sheet at " + sr(value))));
    }

    /**
     * Returns what one pulp read on both testers shows about the chart between them: how far one's own tester stands
     * above it.
     *
     * @param assumptions what is taken for the rest
     * @param scope the tester, and the fibre if it is to hold for that alone
     * @param number the Schopper–Riegler number with its error
     * @param freeness the Canadian freeness of the same pulp with its error, 50 to 750 mL
     * @return the assumptions with {@code freeness.chart-offset} in that scope
     * @throws Refused if a value is out of range
     */
    public static Assumptions calibrateChart(
            Assumptions assumptions, Scope scope, Reading<SchopperRiegler> number, Reading<CanadianFreeness> freeness) {
        Objects.requireNonNull(freeness, "freeness");
        double csf =
                Kinds.CANADIAN_FREENESS.siWithin(freeness.value(), "Canadian Standard freeness", LEAST_CSF, MOST_CSF);
        double sr = Kinds.SCHOPPER_RIEGLER.si(number.value(), "Schopper-Riegler number");
        double chart = Freeness.schopperRieglerOfCanadian(csf, 0);
        double error = freeness.error().si();
        double byFreeness = (Freeness.schopperRieglerOfCanadian(Math.max(0, csf - error), 0)
                        - Freeness.schopperRieglerOfCanadian(csf + error, 0))
                / 2;
        double half = Normal.FIVE_PERCENT_POINT * Math.hypot(number.error().si(), byFreeness);
        double likely = sr - chart;
        return assumptions.with(assumptions
                .get("freeness.chart-offset", scope)
                .with(
                        scope,
                        likely,
                        likely - half,
                        likely + half,
                        Basis.MEASURED_HERE,
                        new Source("measured here, one pulp on both testers")));
    }

    /**
     * Returns what to bear in mind about a Canadian freeness that was not read at 20 °C and 0.30 %, by the shipped
     * tolerances.
     *
     * @param stock the consistency of the sample
     * @param temperature its temperature
     * @return the notices; empty at 0.30 % and 20 °C
     * @throws Refused if a value is out of range
     */
    public static List<Notice> cautions(Quantity<Consistency> stock, Quantity<Temperature> temperature) {
        return cautions(Assumptions.standard(), stock, temperature);
    }

    /**
     * Returns what to bear in mind about a Canadian freeness that was not read at 20 °C and 0.30 %. The correction
     * tables of the standard are for groundwood; chemical pulps need much larger ones, so none is applied.
     *
     * @param assumptions where {@code freeness.csf-consistency} and {@code freeness.csf-temperature} are looked up
     * @param stock the consistency of the sample
     * @param temperature its temperature
     * @return the notices; empty at 0.30 % and 20 °C
     * @throws Refused if a value is out of range
     * @source TAPPI T 227 on its corrections
     */
    public static List<Notice> cautions(
            Assumptions assumptions, Quantity<Consistency> stock, Quantity<Temperature> temperature) {
        Objects.requireNonNull(assumptions, "assumptions");
        Assumption c0 = assumptions.get("freeness.csf-consistency", Scope.GENERAL);
        Assumption t0 = assumptions.get("freeness.csf-temperature", Scope.GENERAL);
        Amount<Consistency> c =
                Kinds.CONSISTENCY.check(stock, "consistency of the sample").to("%");
        Amount<Temperature> t = Kinds.TEMPERATURE
                .check(temperature, "temperature of the sample")
                .to("Cel");
        List<Notice> notices = new ArrayList<>();
        if (c.si() < c0.lowSi() || c.si() > c0.highSi()) {
            notices.add(Notice.warning(
                    "freeness.consistency",
                    "The freeness was read at " + c
                            + " instead of 0.30 %; thinner stock reads higher. No correction is made: dilute"
                            + " and read again.",
                    "given",
                    c.toString(),
                    "wanted",
                    "0.30 %"));
        }
        if (t.si() < t0.lowSi() || t.si() > t0.highSi()) {
            notices.add(Notice.warning(
                    "freeness.temperature",
                    "The freeness was read at " + t
                            + " instead of 20 °C; warmer water reads higher. No correction is made: bring"
                            + " the sample to 20 °C and read again.",
                    "given",
                    t.toString(),
                    "wanted",
                    "20 °C"));
        }
        return List.copyOf(notices);
    }

    private double group(double value) {
        return Freeness.alphaOfSchopperRiegler(value, 1, water, exponent.likelySi());
    }

    private static Refused stopwatch(String given, String side, String limit) {
        return Refused.of(
                "drainability.stopwatch",
                "drainage of pulp at " + given
                        + ": the tester does not show how slowly such pulp drains; its scale is good for"
                        + " nothing " + side + " " + limit + ". Time one sheet on your own mould and give that time.",
                "given",
                given,
                "limit",
                limit);
    }

    private static Amount<SchopperRiegler> sr(double value) {
        return Kinds.SCHOPPER_RIEGLER.ofSi(value, "SR");
    }

    private static Amount<CanadianFreeness> csf(double value) {
        return Kinds.CANADIAN_FREENESS.ofSi(value, "mL_CSF");
    }

    private static Amount<FiltrationResistance> alpha(double value) {
        return Kinds.FILTRATION_RESISTANCE.ofSi(value, "m/kg");
    }

    @Override
    public String toString() {
        return "drainability, resistance factor " + alpha(factor.likelySi());
    }
}
