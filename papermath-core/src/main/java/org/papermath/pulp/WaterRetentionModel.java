package org.papermath.pulp;

import java.util.Objects;
import java.util.Optional;
import javax.measure.Quantity;
import org.papermath.equation.Beating;
import org.papermath.evidence.Assumption;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Basis;
import org.papermath.evidence.Notice;
import org.papermath.evidence.Reading;
import org.papermath.evidence.Scope;
import org.papermath.evidence.Source;
import org.papermath.evidence.WithNotices;
import org.papermath.numeric.Normal;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;
import org.papermath.quantity.SchopperRiegler;
import org.papermath.quantity.WaterRetention;

/**
 * Water the fibre holds against a centrifuge, predicted from how far it is beaten. Immutable.
 *
 * <p>Straight lines through the values of the fibre unbeaten, well beaten and, where there is one, long beaten, each at
 * its Schopper–Riegler number; beyond the last the last line goes on, with a warning. Below the first the unbeaten
 * value holds. Values are on the basis of 3000 g for 30 minutes; a test at 900 g reads higher and is not taken for one.
 *
 * @source ISO 23714:2014 for the method; the values recalled, not looked up, 25 % either way
 */
public final class WaterRetentionModel {

    private final double[] numbers;
    private final double[] values;

    /** How the water retention value was spun. */
    public enum Spin {
        /** 3000 g for 30 minutes, as ISO 23714 lays down. */
        ISO_23714,
        /** 900 g for 30 minutes; reads higher. */
        AT_900_G
    }

    private WaterRetentionModel(double[] numbers, double[] values) {
        this.numbers = numbers;
        this.values = values;
    }

    /**
     * Builds the model of a fibre.
     *
     * @param assumptions where the constants are looked up
     * @param scope the fibre
     * @return the model
     * @throws Refused if the fibre has no values, or its Schopper–Riegler numbers do not rise from unbeaten to well
     *     beaten
     */
    public static WaterRetentionModel from(Assumptions assumptions, Scope scope) {
        Objects.requireNonNull(assumptions, "assumptions");
        Objects.requireNonNull(scope, "scope");
        double unbeaten = assumptions.si("beating.drainability-unbeaten", scope);
        double well = assumptions.si("fibre.drainability-well-beaten", scope);
        double valueUnbeaten = assumptions.si("fibre.water-retention-unbeaten", scope);
        double valueWell = assumptions.si("fibre.water-retention-well-beaten", scope);
        if (!(well > unbeaten)) {
            throw Refused.of(
                    "water-retention.order",
                    "Schopper-Riegler number of well-beaten fibre" + scope + ": " + sr(well)
                            + " given, not above the unbeaten "
                            + sr(unbeaten) + ".",
                    "well",
                    sr(well).toString(),
                    "unbeaten",
                    sr(unbeaten).toString());
        }
        Optional<Assumption> valueLong = assumptions.find("fibre.water-retention-long-beaten", scope);
        Optional<Assumption> longBeaten = assumptions.find("beating.drainability-limit", scope);
        if (valueLong.isPresent() && longBeaten.isPresent() && longBeaten.get().likelySi() > well) {
            return new WaterRetentionModel(
                    new double[] {unbeaten, well, longBeaten.get().likelySi()},
                    new double[] {valueUnbeaten, valueWell, valueLong.get().likelySi()});
        }
        return new WaterRetentionModel(new double[] {unbeaten, well}, new double[] {valueUnbeaten, valueWell});
    }

    /**
     * Builds the model of a fibre from the shipped table.
     *
     * @param scope the fibre
     * @return the model
     * @throws Refused if the fibre has no values
     */
    public static WaterRetentionModel standard(Scope scope) {
        Objects.requireNonNull(scope, "scope");
        return from(Assumptions.standard(), scope);
    }

    /**
     * Returns the water retention value at a drainability.
     *
     * @param number the Schopper–Riegler number
     * @return the value on the basis of ISO 23714, with a warning beyond the last known point
     * @throws Refused if the number is out of range
     */
    public WithNotices<Amount<WaterRetention>> at(Quantity<SchopperRiegler> number) {
        double x = Kinds.SCHOPPER_RIEGLER.si(number, "Schopper-Riegler number");
        int last = numbers.length - 1;
        double value = Beating.waterRetention(
                x,
                numbers[0],
                values[0],
                numbers[1],
                values[1],
                last > 1 ? numbers[2] : Double.NaN,
                last > 1 ? values[2] : Double.NaN);
        Amount<WaterRetention> amount = Kinds.WATER_RETENTION.ofSi(value, "g/g");
        if (x > numbers[last]) {
            return WithNotices.of(
                    amount,
                    Notice.warning(
                            "water-retention.beyond",
                            "The water retention value at " + sr(x) + " is carried on in a straight line beyond "
                                    + sr(numbers[last])
                                    + ", the most beaten state known of this fibre.",
                            "given",
                            sr(x).toString(),
                            "limit",
                            sr(numbers[last]).toString()));
        }
        return WithNotices.of(amount);
    }

    /**
     * Takes a measured value in hand.
     *
     * @param value the value
     * @param spin how it was spun
     * @return the value, with a warning when it was not spun at 3000 g
     * @throws Refused if the value is out of range
     */
    public static WithNotices<Amount<WaterRetention>> measured(Quantity<WaterRetention> value, Spin spin) {
        Objects.requireNonNull(spin, "spin");
        Amount<WaterRetention> amount = Kinds.WATER_RETENTION.check(value, "water retention value");
        if (spin == Spin.AT_900_G) {
            return WithNotices.of(
                    amount,
                    Notice.warning(
                            "water-retention.spin",
                            "The water retention value of " + amount
                                    + " was spun at 900 g, which leaves more water than the 3000 g of ISO"
                                    + " 23714. Pressing calculated from it comes out too wet.",
                            "given",
                            amount.toString()));
        }
        return WithNotices.of(amount);
    }

    /**
     * Returns what a measured value of well-beaten fibre says, at a number that was read too: along the line from the
     * unbeaten fibre, an error of the number is one of the value.
     *
     * @param assumptions what is taken for the rest
     * @param scope the fibre it holds for
     * @param number the Schopper–Riegler number of the sample, with its error
     * @param value the water retention value of it
     * @param spin how it was spun
     * @return the assumptions with the well-beaten point moved to this one, in that scope
     * @throws Refused as {@link #calibrate(Assumptions, Scope, Quantity, Reading, Spin)}
     */
    public static Assumptions calibrate(
            Assumptions assumptions,
            Scope scope,
            Reading<SchopperRiegler> number,
            Reading<WaterRetention> value,
            Spin spin) {
        Objects.requireNonNull(assumptions, "assumptions");
        Objects.requireNonNull(scope, "scope");
        Objects.requireNonNull(number, "number");
        Objects.requireNonNull(value, "value");
        Optional<Assumption> unbeaten = assumptions.find("fibre.water-retention-unbeaten", scope);
        double steps = number.value().si() - assumptions.si("beating.drainability-unbeaten", scope);
        double byNumber = unbeaten.filter(least -> steps > 0)
                .map(least -> (value.value().si() - least.likelySi()) / steps)
                .map(rise -> rise * number.error().si())
                .orElse(0.0);
        return calibrate(
                assumptions,
                scope,
                number.value(),
                Reading.of(
                        value.value(),
                        Kinds.WATER_RETENTION.ofSi(Math.hypot(value.error().si(), byNumber), "g/g")),
                spin);
    }

    /**
     * Returns what a measured value of well-beaten fibre says.
     *
     * @param assumptions what is taken for the rest
     * @param scope the fibre it holds for
     * @param number the Schopper–Riegler number of the sample
     * @param value the water retention value of it
     * @param spin how it was spun
     * @return the assumptions with the well-beaten point moved to this one, in that scope
     * @throws Refused if it was spun at 900 g, or the number is not above the unbeaten one
     */
    public static Assumptions calibrate(
            Assumptions assumptions,
            Scope scope,
            Quantity<SchopperRiegler> number,
            Reading<WaterRetention> value,
            Spin spin) {
        Objects.requireNonNull(value, "value");
        if (spin == Spin.AT_900_G) {
            throw Refused.of(
                    "water-retention.spin-refused",
                    "water retention value: " + value.value()
                            + " spun at 900 g given; the models stand on 3000 g for 30 minutes"
                            + " (ISO 23714) and there is no factor between the two. Have it spun again.",
                    "given",
                    value.value().toString());
        }
        double x = Kinds.SCHOPPER_RIEGLER.si(number, "Schopper-Riegler number");
        double likely = Kinds.WATER_RETENTION.siAboveZero(value.value(), "water retention value");
        double spread = Math.exp(Normal.FIVE_PERCENT_POINT
                * Math.max(
                        assumptions.si("fibre.water-retention-surest", scope),
                        value.error().si() / likely));
        Source source = new Source("measured here, at " + sr(x));
        Assumptions result = assumptions
                .with(assumptions
                        .get("fibre.drainability-well-beaten", scope)
                        .with(scope, x, x, x, Basis.MEASURED_HERE, source))
                .with(pattern(assumptions, scope)
                        .with(scope, likely, likely / spread, likely * spread, Basis.MEASURED_HERE, source));
        from(result, scope); // refuses a number that is not above the unbeaten one
        return result;
    }

    private static Assumption pattern(Assumptions assumptions, Scope scope) {
        String id = "fibre.water-retention-well-beaten";
        return assumptions.find(id, scope).or(() -> assumptions.pattern(id)).orElseThrow();
    }

    private static Amount<SchopperRiegler> sr(double value) {
        return Kinds.SCHOPPER_RIEGLER.ofSi(value, "SR");
    }

    @Override
    public String toString() {
        return "water retention from " + Kinds.WATER_RETENTION.ofSi(values[0], "g/g") + " at " + sr(numbers[0]) + " to "
                + Kinds.WATER_RETENTION.ofSi(values[values.length - 1], "g/g") + " at "
                + sr(numbers[numbers.length - 1]);
    }
}
