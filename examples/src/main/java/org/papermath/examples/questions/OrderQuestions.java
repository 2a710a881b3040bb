package org.papermath.examples.questions;

import static org.papermath.quantity.Amounts.hours;
import static org.papermath.quantity.Amounts.kilograms;

import java.math.RoundingMode;
import java.time.DayOfWeek;
import java.time.Duration;
import java.time.LocalDate;
import java.util.EnumSet;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.papermath.cost.Costing;
import org.papermath.cost.Margin;
import org.papermath.cost.Markup;
import org.papermath.cost.Money;
import org.papermath.cost.MoneyRate;
import org.papermath.cost.Pricing;
import org.papermath.examples.Embed;
import org.papermath.examples.QuoteAnOrder;
import org.papermath.fibre.Fibres;
import org.papermath.fibre.Furnish;
import org.papermath.format.Formats;
import org.papermath.order.Order;
import org.papermath.order.Piece;
import org.papermath.order.Recipe;
import org.papermath.plan.MakingPlan;
import org.papermath.plan.SeveralOrders;
import org.papermath.pulp.Additive;
import org.papermath.quantity.Dose;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Kinds;
import org.papermath.schedule.Phase;
import org.papermath.schedule.Task;
import org.papermath.schedule.Timetable;
import org.papermath.schedule.WorkingTime;
import org.papermath.schedule.Workload;

/** Questions of days, money and several colours at once. */
public final class OrderQuestions {
    private OrderQuestions() {}

    /** What does a sheet cost me? */
    @Question(number = "B34", words = "cost price sheet hours overhead")
    public static String b34WhatASheetCosts() {
        Money made = MoneyRate.read(Kinds.MASS, "18 EUR per kg")
                .costOf(kilograms(2.77))
                .plus(Money.of("9 EUR"))
                .plus(Money.of("1.20 EUR"))
                .plus(MoneyRate.read(Kinds.TIME, "22 EUR per h").costOf(hours(26)));
        Money all = Markup.percent(15).priceOf(made);
        return all.dividedBy(90, RoundingMode.HALF_UP) + " for each of 90 good sheets, " + all + " in all";
    }

    /** When do I have to start, if it is mailed on 12 June? */
    @Question(number = "B35", words = "start date back calendar days deadline")
    public static String b35WhenToStart() {
        Workload steps = Workload.in(WorkingTime.of(Duration.ofHours(24), EnumSet.allOf(DayOfWeek.class)))
                .task(Task.of("have the fibre")
                        .phase(Phase.waiting("delivery", Duration.ofDays(10)))
                        .build())
                .task(Task.of("beat")
                        .phase(Phase.waiting("beat", Duration.ofDays(1)))
                        .after("have the fibre")
                        .build())
                .task(Task.of("form")
                        .phase(Phase.waiting("form", Duration.ofDays(3)))
                        .after("beat")
                        .build())
                .task(Task.of("dry")
                        .phase(Phase.waiting("dry", Duration.ofDays(2)))
                        .after("form")
                        .build())
                .task(Task.of("cure")
                        .phase(Phase.waiting("cure", Duration.ofDays(10)))
                        .after("dry")
                        .build())
                .task(Task.of("print")
                        .phase(Phase.waiting("print", Duration.ofDays(18)))
                        .after("cure")
                        .build())
                .build();
        Timetable back = Timetable.by(steps, LocalDate.of(2026, 6, 12).atStartOfDay());
        return "order the fibre by " + back.start().orElseThrow().toLocalDate() + ", "
                + back.span().orElseThrow().toDays() + " days before it is mailed";
    }

    /** What does this order cost, and what do I charge? */
    @Question(number = "G3", words = "cost charge price margin quotation")
    public static String g03WhatToCharge() {
        Costing costing = Costing.of(MakingPlan.of(Embed.order(), Embed.studio()), QuoteAnOrder.prices());
        return "charge " + Pricing.of(costing, Margin.percent(30)).total() + " for a margin of 30 %; it costs "
                + costing;
    }

    /** Two orders at once: will both be in time? */
    @Question(number = "G6", words = "several orders at once calendar beater press")
    public static String g06SeveralOrdersAtOnce() {
        Order cards = Order.of("place cards")
                .recipe(Embed.order().recipes().get(0))
                .piece(Embed.order().pieces().get(1))
                .due(LocalDate.of(2027, 2, 19))
                .build();
        MakingPlan concert = MakingPlan.of(Embed.order().withDue(LocalDate.of(2027, 2, 12)), Embed.studio());
        return SeveralOrders.of(List.of(concert, MakingPlan.of(cards, Embed.studio())), LocalDate.of(2027, 1, 4))
                .toString();
    }

    /** One white stuff for three colours: how much of it for each? */
    @Question(number = "G13", words = "white stuff colours divide pails share")
    public static String g13OneWhiteStuffThreeColours() {
        Order.Builder order = Order.of("three colours");
        Stream.of("oat", "rust", "slate")
                .forEach(name -> order.recipe(Recipe.of(name, Furnish.of(Fibres.COTTON_RAG))
                                .beating(hours(2))
                                .additive(Additive.of(name + " pigment", Additive.Purpose.PIGMENT), Dose.percent(2))
                                .stuff("white")
                                .build())
                        .piece(Piece.of(name + " card", 20, name)
                                .size(Formats.ISO_A6)
                                .grammage(Grammage.gsm(240))
                                .build()));
        return MakingPlan.of(order.build(), Embed.studio()).batches().stream()
                .map(batch -> batch.sharedStuff().orElseThrow() + " for " + batch.name())
                .collect(Collectors.joining("; "));
    }
}
