package org.papermath.examples;

import static org.assertj.core.api.Assertions.assertThat;
import static org.papermath.quantity.Amounts.celsius;
import static org.papermath.quantity.Amounts.hours;
import static org.papermath.quantity.Amounts.mm;
import static org.papermath.quantity.Amounts.seconds;

import java.awt.image.BufferedImage;
import java.io.InputStream;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.lang.reflect.Modifier;
import java.time.LocalDate;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Currency;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.papermath.colour.Lab;
import org.papermath.colour.Photograph;
import org.papermath.cost.Costing;
import org.papermath.cost.Margin;
import org.papermath.cost.PostageTable;
import org.papermath.cost.PriceList;
import org.papermath.cost.Pricing;
import org.papermath.cost.Quotation;
import org.papermath.evidence.Assumptions;
import org.papermath.json.PapermathDocuments;
import org.papermath.order.Order;
import org.papermath.order.Studio;
import org.papermath.plan.ClassDay;
import org.papermath.plan.EmptyRecord;
import org.papermath.plan.MakingPlan;
import org.papermath.plan.SeveralOrders;
import org.papermath.plan.SwatchRound;
import org.papermath.quantity.Consistency;
import org.papermath.quantity.Grammage;
import org.papermath.record.BatchRecord;
import org.papermath.record.Calibration;
import org.papermath.whatif.Input;
import org.papermath.whatif.Outcome;
import org.papermath.whatif.WhatIf;

/** Whatever is typed at a prompt is answered for a person: no type and number of an object, and no bare list of fields. */
class PrintedValuesTest {
    private static final Pattern OBJECT = Pattern.compile("[\\w$]@[0-9a-f]{3,}");
    private static final Pattern FIELDS = Pattern.compile("\\b[A-Z]\\w*\\[(\\w+=|])|Optional[.\\[]");

    /** Objects of one type that are looked into; more of them have nothing new to offer. */
    private static final int ENOUGH = 4;

    private static List<Class<?>> types;

    private final Deque<Object> open = new ArrayDeque<>();
    private final Map<Class<?>, Integer> seen = new HashMap<>();
    private final Map<String, String> unreadable = new TreeMap<>();

    @BeforeAll
    static void readTypes() throws Exception {
        types = new ArrayList<>(PublicMembersTest.exportedTypes(MakingPlan.class));
        types.addAll(PublicMembersTest.exportedTypes(PapermathDocuments.class));
    }

    @Test
    void whatAPlanLeadsTo() throws Exception {
        open.add(MakingPlan.of(Embed.order(), Embed.studio()));
        walk();
        assertThat(seen.keySet().stream().filter(types::contains)).hasSizeGreaterThan(10);
        assertThat(unreadable).isEmpty();
    }

    @Test
    void whatIsAskedOfAPlan() throws Exception {
        Order order = Embed.order();
        Studio studio = Embed.studio();
        MakingPlan plan = MakingPlan.of(order, studio);
        LocalDate day = LocalDate.of(2027, 1, 11);
        BatchRecord record = record();
        open.add(record);
        EmptyRecord empty = plan.emptyRecord("tide grey", "programme", day);
        open.add(empty);
        open.add(plan.heldAgainst(record, "programme"));
        open.add(plan.changesSince(empty.record()));
        open.add(plan.atTheVat("programme"));
        open.add(plan.leaves(day));
        open.add(Calibration.of(studio.assumptions(), List.of(record), studio.dryers()));
        Order longer = order.toBuilder().due(day).build();
        open.add(MakingPlan.of(longer, studio).comparedWith(plan));
        WhatIf whatIf = WhatIf.settingsHeld(order, studio)
                .vary(Input.roomTemperature(), celsius(15), celsius(20), 2)
                .show(Outcome.dryingTime("programme"));
        open.add(whatIf);
        open.add(whatIf.table());
        open.add(WhatIf.decidedAnew(order, studio)
                .solve(Input.beating("tide grey"), hours(0), hours(10), Outcome.drainTime("programme"), seconds(30)));
        Costing costing = Costing.of(plan, QuoteAnOrder.prices());
        open.add(costing);
        open.add(Pricing.of(costing, Margin.percent(30)));
        open.add(plan.rest().good("programme", 40).plan());
        open.add(SeveralOrders.of(List.of(plan), day));
        open.add(ClassDay.of(studio, order.recipes().get(0))
                .people(8)
                .sheetsEach(2)
                .size(mm(100), mm(150))
                .grammage(Grammage.gsm(120))
                .within(hours(3))
                .plan());
        open.add(SwatchRound.of(order.recipes().get(0), Consistency.percent(1))
                .colour("as it is")
                .weight(Grammage.gsm(120))
                .size(mm(50), mm(50))
                .plan());
        open.add(StudioColours.palette());
        open.add(StudioColours.palette().match(Lab.of(52, 3, 14)));
        open.add(PlanAnOrder.sample());
        open.add(PapermathDocuments.readPlan(PapermathDocuments.writePlan(plan, "one", "1")));
        walk();
        assertThat(unreadable).isEmpty();
    }

    private static BatchRecord record() throws Exception {
        try (InputStream in = PlanAnOrder.class.getResourceAsStream("midwinter-concert/record.json")) {
            return PapermathDocuments.readRecord(in.readAllBytes(), "record.json")
                    .value();
        }
    }

    @Test
    void whatIsBeingBuilt() {
        Currency euro = Currency.getInstance("EUR");
        LocalDate day = LocalDate.of(2026, 11, 2);
        Samples samples = new Samples(types);
        samples.add(Embed.order());
        samples.add(Embed.studio());
        samples.add(MakingPlan.withoutBands(Embed.order(), Embed.studio()));
        // What the types do not lead to by themselves.
        samples.add(PriceList.of("one", day, euro));
        samples.add(PostageTable.of("one", euro));
        samples.add(Quotation.of("one", "one", day, day, euro));
        samples.add(Photograph.of(new BufferedImage(20, 20, BufferedImage.TYPE_INT_RGB))
                .calibration(Assumptions.standard()));
        Set<String> builders = new TreeSet<>();
        for (Class<?> type : types) {
            if (type.getSimpleName().equals("Builder")) {
                say(samples.of(type).orElseThrow(() -> new AssertionError("no sample of " + type)));
                builders.add(type.getName());
            }
        }
        assertThat(builders).hasSizeGreaterThan(15);
        assertThat(unreadable).isEmpty();
    }

    @Test
    void aBuilderSaysWhatItHasSoFar() {
        assertThat(Embed.order().toBuilder())
                .hasToString("order midwinter concert, being put together: 3 pieces [programme, seat card, envelope],"
                        + " recipes [tide grey], due 2027-01-22");
        assertThat(Embed.studio())
                .hasToString("studio a one-room studio: the big beater, the oak vat, half imperial, octavo,"
                        + " the long press, the boards, the loft");
    }

    private void walk() throws IllegalAccessException {
        while (!open.isEmpty()) {
            Object one = open.remove();
            if (one instanceof Optional<?> it) {
                it.ifPresent(open::add);
            } else if (one instanceof Collection<?> all) {
                open.addAll(all);
            } else if (one instanceof Map<?, ?> map) {
                open.addAll(map.keySet());
                open.addAll(map.values());
            } else if (one.getClass().getName().startsWith("org.papermath.")
                    && seen.merge(one.getClass(), 1, Integer::sum) <= ENOUGH) {
                look(one);
            }
        }
    }

    private void look(Object one) throws IllegalAccessException {
        say(one);
        for (Method method : offered(one.getClass())) {
            try {
                Object next = method.invoke(one);
                if (next != null) {
                    open.add(next);
                }
            } catch (InvocationTargetException refused) {
                // A stage that is not done, or a value that is not there, says so in words of its own.
                assertThat(refused.getCause()).as(method.toString()).isInstanceOf(RuntimeException.class);
            }
        }
    }

    private void say(Object one) {
        String said = String.valueOf(one);
        if (OBJECT.matcher(said).find() || FIELDS.matcher(said).find()) {
            unreadable.putIfAbsent(one.getClass().getName(), said);
        }
    }

    private static List<Method> offered(Class<?> type) {
        List<Method> offered = new ArrayList<>();
        for (Class<?> of : types) {
            if (of.isAssignableFrom(type)) {
                for (Method method : of.getDeclaredMethods()) {
                    if (Modifier.isPublic(method.getModifiers())
                            && !Modifier.isStatic(method.getModifiers())
                            && !method.isSynthetic()
                            && method.getParameterCount() == 0
                            && !method.getName().equals("hashCode")) {
                        offered.add(method);
                    }
                }
            }
        }
        return offered;
    }
}
