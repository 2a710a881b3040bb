package org.papermath.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import org.papermath.air.Air;
import org.papermath.equation.Shrinkage;
import org.papermath.evidence.Assumption;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Bands;
import org.papermath.evidence.Basis;
import org.papermath.evidence.Estimate;
import org.papermath.evidence.Notice;
import org.papermath.evidence.Reading;
import org.papermath.evidence.Scope;
import org.papermath.evidence.Source;
import org.papermath.fibre.SorptionModel;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.LinearShrinkage;
import org.papermath.quantity.MoistureRatio;
import org.papermath.quantity.Refused;

/**
 * How a dry sheet grows and shrinks with the humidity of the room. Immutable.
 *
 * <p>Strain is {@code beta (M2 - M1)} with {@code beta = beta_0 + beta_1 s}: the more a sheet shrank in drying, the
 * more it moves. For moistures in room air, 20 to 80 % relative humidity; about ±50 %.
 *
 * @source linear in drying shrinkage as published for laboratory sheets; see {@code hygroexpansion.base}
 */
public final class HygroexpansionModel {
    private static final List<String> IDS = List.of("hygroexpansion.base", "hygroexpansion.per-shrinkage");

    /** The least change of the moisture ratio from which one strip can be calibrated. */
    private static final double LEAST_CHANGE = 0.01;

    private final Assumptions assumptions;
    private final Scope scope;

    /** How a length moves. */
    public sealed interface Movement permits FoundMovement {
        /** {@return what it grows; shorter when {@link #grows} is false} */
        Amount<Length> change();

        /** {@return whether it becomes longer} */
        boolean grows();

        /** {@return the length afterwards} */
        Amount<Length> length();

        /** {@return growth over length as a shrinkage below zero, and shrinkage above zero, with its band} */
        Estimate<LinearShrinkage> strain();

        /** {@return what it should not be read without} */
        List<Notice> notices();
    }

    private record FoundMovement(
            Amount<Length> change,
            boolean grows,
            Amount<Length> length,
            Estimate<LinearShrinkage> strain,
            List<Notice> notices)
            implements Movement {
        @Override
        public String toString() {
            return (grows ? "+" : "-") + change + " to " + length;
        }
    }

    private HygroexpansionModel(Assumptions assumptions, Scope scope) {
        this.assumptions = assumptions;
        this.scope = scope;
    }

    /**
     * Returns the model by the shipped assumptions.
     *
     * @return the model
     */
    public static HygroexpansionModel standard() {
        return from(Assumptions.standard(), Scope.GENERAL);
    }

    /**
     * Makes the model of a furnish.
     *
     * @param assumptions the store
     * @param scope the fibre or furnish
     * @return the model
     * @throws Refused if the store lacks one of its numbers
     */
    public static HygroexpansionModel from(Assumptions assumptions, Scope scope) {
        Objects.requireNonNull(assumptions, "assumptions");
        Objects.requireNonNull(scope, "scope");
        assumptions.get("hygroexpansion.base", scope);
        assumptions.get("hygroexpansion.per-shrinkage", scope);
        return new HygroexpansionModel(assumptions, scope);
    }

    /**
     * Returns how a length moves between two moistures.
     *
     * @param length the length before, above zero
     * @param drying what the sheet shrank in that direction when it was dried
     * @param before the moisture ratio before
     * @param after the moisture ratio after
     * @return the movement
     * @throws Refused if a value is out of range
     */
    public Movement between(
            Quantity<Length> length,
            Quantity<LinearShrinkage> drying,
            Quantity<MoistureRatio> before,
            Quantity<MoistureRatio> after) {
        double first = Kinds.MOISTURE_RATIO.siWithin(before, "moisture ratio before", 0, 0.3);
        double second = Kinds.MOISTURE_RATIO.siWithin(after, "moisture ratio after", 0, 0.3);
        return movement(length, drying, second - first, List.of());
    }

    /**
     * Returns how a length moves from one day to another.
     *
     * @param length the length before, above zero
     * @param drying what the sheet shrank in that direction when it was dried
     * @param sorption its moisture in air
     * @param before the air before
     * @param after the air after
     * @return the movement; the first rise above 80 % relative humidity after drying under restraint is noticed, for it
     *     frees strain and the model then predicts too much
     * @throws Refused if a value is out of range
     */
    public Movement between(
            Quantity<Length> length, Quantity<LinearShrinkage> drying, SorptionModel sorption, Air before, Air after) {
        List<Notice> notices = new ArrayList<>();
        double damp = assumptions.si("hygroexpansion.damp-warning", scope);
        if (after.humidity().si() > damp && before.humidity().si() <= damp) {
            notices.add(Notice.warning(
                    "hygroexpansion.first-damp",
                    "A sheet dried under restraint that meets more than " + Kinds.RELATIVE_HUMIDITY.ofSi(damp, "%")
                            + " relative humidity for the first time lets go of strain dried into it: it grows far"
                            + " less than"
                            + " this, and is smaller for good afterwards.",
                    "given",
                    after.humidity().toString(),
                    "limit",
                    Kinds.RELATIVE_HUMIDITY.ofSi(damp, "%").toString()));
        }
        for (Air air : List.of(before, after)) {
            double humidity = air.humidity().si();
            if (humidity < 0.2 || (humidity > 0.8 && humidity <= damp)) {
                notices.add(Notice.note(
                        "hygroexpansion.range",
                        "Movement is known from 20 to 80 % relative humidity; " + air.humidity() + " is outside.",
                        "given",
                        air.humidity().toString(),
                        "least",
                        "20 %",
                        "most",
                        "80 %"));
            }
        }
        return movement(
                length,
                drying,
                sorption.ratio(after).si() - sorption.ratio(before).si(),
                notices);
    }

    private Movement movement(
            Quantity<Length> length, Quantity<LinearShrinkage> drying, double change, List<Notice> notices) {
        double metres = Kinds.LENGTH.siAboveZero(length, "length");
        double s = Kinds.LINEAR_SHRINKAGE.si(drying, "drying shrinkage");
        Estimate<LinearShrinkage> strain = Bands.of(
                assumptions,
                scope,
                IDS,
                store -> Kinds.LINEAR_SHRINKAGE.ofSi(
                        -Shrinkage.hygroexpansion(
                                Shrinkage.hygroexpansionCoefficient(
                                        Math.max(0, s),
                                        store.si("hygroexpansion.base", scope),
                                        store.si("hygroexpansion.per-shrinkage", scope)),
                                change),
                        "%"));
        double growth = -strain.likely().si() * metres;
        return new FoundMovement(
                Kinds.LENGTH.ofSi(Math.abs(growth), "mm"),
                growth > 0,
                Kinds.LENGTH.ofSi(metres + growth, "mm"),
                strain,
                List.copyOf(notices));
    }

    /**
     * Calibrates the movement of a furnish by one strip measured in two airs: both numbers are scaled by what it moved
     * over the forecast. About ±10 %.
     *
     * @param assumptions the store
     * @param scope the fibre or furnish
     * @param before the length in the first air
     * @param after the length in the second air
     * @param drying what the strip shrank in that direction when it was dried
     * @param sorption its moisture in air
     * @param first the first air
     * @param second the second air, damper or drier
     * @return the store with {@code hygroexpansion.base} and {@code hygroexpansion.per-shrinkage} measured
     * @throws Refused if the two airs hardly differ in the moisture they give, the strip moved the wrong way or not at
     *     all, or it moved less than the lengths can show
     */
    public static Assumptions calibrate(
            Assumptions assumptions,
            Scope scope,
            Reading<Length> before,
            Reading<Length> after,
            Quantity<LinearShrinkage> drying,
            SorptionModel sorption,
            Air first,
            Air second) {
        Objects.requireNonNull(sorption, "sorption");
        Objects.requireNonNull(first, "first");
        Objects.requireNonNull(second, "second");
        double change = sorption.ratio(second).si() - sorption.ratio(first).si();
        if (Math.abs(change) < LEAST_CHANGE) {
            throw Refused.of(
                    "hygroexpansion.calibration-air",
                    "movement: air of " + first + " and of " + second + " given; they change the moisture of the strip"
                            + " by less than 1 % of its dry mass. Take airs further apart.",
                    "first",
                    first.toString(),
                    "second",
                    second.toString());
        }
        double length = Kinds.LENGTH.siAboveZero(before.value(), "length in the first air");
        double measured =
                (Kinds.LENGTH.siAboveZero(after.value(), "length in the second air") - length) / length / change;
        double error = Math.hypot(before.error().si(), after.error().si()) / length / Math.abs(change);
        if (!(measured > 2 * error)) {
            throw Refused.of(
                    "hygroexpansion.calibration-strip",
                    "movement: from " + before.value() + " to " + after.value() + " given; paper grows in damper air,"
                            + " and by more than twice the error of the two lengths for this to show. Take a longer strip.",
                    "before",
                    before.value().toString(),
                    "after",
                    after.value().toString());
        }
        Assumption base = assumptions.get("hygroexpansion.base", scope);
        Assumption slope = assumptions.get("hygroexpansion.per-shrinkage", scope);
        double forecast = Shrinkage.hygroexpansionCoefficient(
                Math.max(0, Kinds.LINEAR_SHRINKAGE.si(drying, "drying shrinkage")), base.likelySi(), slope.likelySi());
        double scale = measured / forecast;
        // What one strip leaves: a tenth, beside the errors of the two lengths.
        double half = Math.hypot(1.645 * error / measured, 0.1);
        Source source = new Source("one strip measured in air of " + first + " and of " + second);
        Assumptions with = assumptions;
        for (Assumption old : List.of(base, slope)) {
            double likely = old.likely() * scale;
            with = with.with(
                    old.with(scope, likely, likely / (1 + half), likely * (1 + half), Basis.MEASURED_HERE, source));
        }
        return with;
    }

    @Override
    public String toString() {
        return "movement with humidity" + scope;
    }
}
