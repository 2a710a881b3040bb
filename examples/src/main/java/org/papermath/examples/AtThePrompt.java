package org.papermath.examples;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.math.MathContext;
import java.nio.charset.StandardCharsets;
import java.util.Collection;
import java.util.List;
import java.util.stream.DoubleStream;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import org.papermath.order.Order;
import org.papermath.order.Recipe;
import org.papermath.plan.MakingPlan;
import org.papermath.plan.PiecePlan;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kind;
import org.papermath.quantity.Kinds;
import org.papermath.whatif.Input;
import org.papermath.whatif.Outcome;
import org.papermath.whatif.WhatIf;
import org.papermath.whatif.WhatIfTable;

/**
 * What JShell has at hand besides the library: the usual questions that begin with "what if", each a table around what a plan
 * has now, lists shown one to a line, and a tour. The start-up file imports them by name.
 */
public final class AtThePrompt {
    private static final String TOUR = "tour.txt";
    private static final MathContext THREE = new MathContext(3);

    private AtThePrompt() {}

    /**
     * What if the fibre were beaten less, or more?
     *
     * @param plan the plan
     * @param piece the name of a piece; the fibre of its recipe is beaten otherwise
     * @return drainability, time to drain and thickness from half to double the hours
     */
    public static WhatIfTable whatIfBeaten(MakingPlan plan, String piece) {
        Recipe recipe = recipe(plan, piece);
        return anew(plan)
                .vary(Input.beating(recipe.name()), around(Kinds.TIME, recipe.beating(), "h", 0.5, 2))
                .show(Outcome.drainability(recipe.name()), Outcome.drainTime(piece), Outcome.caliper(piece))
                .table();
    }

    /**
     * What if more, or fewer, were ordered?
     *
     * @param plan the plan
     * @param piece the name of a piece
     * @return sheets, fibre to buy and hours by hand for half to double the count
     */
    public static WhatIfTable whatIfOrdered(MakingPlan plan, String piece) {
        int count = plan.piece(piece).counts().ordered();
        List<Amount<Dimensionless>> counts = DoubleStream.of(0.5, 0.75, 1, 1.25, 1.5, 2)
                .map(share -> Math.max(1, Math.rint(count * share)))
                .distinct()
                .mapToObj(one -> Kinds.NUMBER.of(one, "1"))
                .toList();
        return anew(plan)
                .vary(Input.count(piece), counts)
                .show(
                        Outcome.sheets(piece),
                        Outcome.fibreToBuy(recipe(plan, piece).name()),
                        Outcome.workingHours())
                .table();
    }

    /**
     * What if the vat were kept thinner, or thicker?
     *
     * @param plan the plan
     * @param piece the name of a piece that is formed at a vat
     * @return lift, time to drain, sheets between charges and the lightest sheet from two thirds to half as much again
     */
    public static WhatIfTable whatIfVatStood(MakingPlan plan, String piece) {
        return anew(plan)
                .vary(
                        Input.vatConsistency(recipe(plan, piece).name()),
                        around(Kinds.CONSISTENCY, plan.piece(piece).vat().consistency(), "%", 2.0 / 3, 1.5))
                .show(
                        Outcome.lift(piece),
                        Outcome.drainTime(piece),
                        Outcome.sheetsBetweenRecharges(piece),
                        Outcome.lightest(piece))
                .table();
    }

    /**
     * What if it were pressed less?
     *
     * @param plan the plan
     * @param piece the name of a piece that is pressed
     * @return solids, time to dry and thickness from half the pressure on the sheet up to it
     */
    public static WhatIfTable whatIfPressed(MakingPlan plan, String piece) {
        return anew(plan)
                .vary(
                        Input.pressure(),
                        around(Kinds.SHEET_PRESSURE, plan.piece(piece).press().pressure(), "kPa", 0.5, 1))
                .show(Outcome.solids(piece), Outcome.dryingTime(piece), Outcome.caliper(piece))
                .table();
    }

    /**
     * What if the air of the room were drier, or damper, and nothing else were changed?
     *
     * @param plan the plan
     * @param piece the name of a piece
     * @return time to dry from 40 to 80 % relative humidity
     */
    public static WhatIfTable whatIfRoomDamp(MakingPlan plan, String piece) {
        return WhatIf.settingsHeld(plan.order(), plan.studio())
                .vary(
                        Input.roomHumidity(),
                        DoubleStream.of(40, 50, 60, 70, 80)
                                .mapToObj(one -> Kinds.RELATIVE_HUMIDITY.of(one, "%"))
                                .toList())
                .show(Outcome.dryingTime(piece))
                .table();
    }

    /** Things that print one to a line. */
    public static final class Each {
        private final List<String> lines;

        private Each(List<String> lines) {
            this.lines = lines;
        }

        @Override
        public String toString() {
            return String.join("\n", lines);
        }
    }

    /**
     * Shows a list one to a line, such as {@code each(plan.notices())}.
     *
     * @param all the list
     * @return what prints so
     */
    public static Each each(Collection<?> all) {
        return new Each(all.stream().map(String::valueOf).toList());
    }

    /** A walk through the library, line by line with what JShell answers; the build types each of them. */
    public static void tour() {
        System.out.print(tourText());
    }

    static String tourText() {
        try (InputStream in = AtThePrompt.class.getResourceAsStream(TOUR)) {
            if (in == null) {
                throw new IllegalStateException(TOUR + " is not beside its class");
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static WhatIf anew(MakingPlan plan) {
        return WhatIf.decidedAnew(plan.order(), plan.studio());
    }

    private static Recipe recipe(MakingPlan plan, String piece) {
        PiecePlan planned = plan.piece(piece);
        Order order = plan.order();
        return order.recipes().stream()
                .filter(one -> one.name().equals(planned.piece().recipe()))
                .findFirst()
                .orElseThrow();
    }

    /** Five values from one share of an amount to another, in even steps, with the amount itself in it where it lies between. */
    private static <Q extends Quantity<Q>> List<Amount<Q>> around(
            Kind<Q> kind, Amount<Q> now, String unit, double least, double most) {
        double value = now.in(unit);
        return DoubleStream.of(least, (1 + least) / 2, 1, (1 + most) / 2, most)
                .distinct()
                .mapToObj(share ->
                        kind.of(new BigDecimal(value * share).round(THREE).doubleValue(), unit))
                .toList();
    }
}
