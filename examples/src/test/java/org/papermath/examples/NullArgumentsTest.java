package org.papermath.examples;

import static org.assertj.core.api.Assertions.assertThat;
import static org.papermath.quantity.Amounts.grams;
import static org.papermath.quantity.Amounts.hours;
import static org.papermath.quantity.Amounts.mm;

import java.awt.image.BufferedImage;
import java.lang.reflect.AnnotatedElement;
import java.lang.reflect.Array;
import java.lang.reflect.Constructor;
import java.lang.reflect.Executable;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.lang.reflect.Modifier;
import java.lang.reflect.Parameter;
import java.math.BigDecimal;
import java.time.DayOfWeek;
import java.time.Duration;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Currency;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.papermath.colour.ColourReading;
import org.papermath.colour.Lab;
import org.papermath.colour.Photograph;
import org.papermath.cost.Costing;
import org.papermath.cost.Margin;
import org.papermath.cost.Markup;
import org.papermath.cost.Money;
import org.papermath.cost.MoneyRate;
import org.papermath.cost.PriceList;
import org.papermath.cost.Pricing;
import org.papermath.drying.Dryer;
import org.papermath.drying.DryingModel;
import org.papermath.drying.WaterBudget;
import org.papermath.envelope.Line;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Bands;
import org.papermath.evidence.Estimate;
import org.papermath.evidence.Source;
import org.papermath.json.DocumentFormat;
import org.papermath.json.DocumentReader;
import org.papermath.json.DocumentResolver;
import org.papermath.json.OrderDocument;
import org.papermath.json.PapermathDocuments;
import org.papermath.json.Renamed;
import org.papermath.json.kit.ReadResult;
import org.papermath.json.kit.WholeDocuments;
import org.papermath.mould.Opening;
import org.papermath.order.Piece;
import org.papermath.plan.ClassDay;
import org.papermath.plan.MakingPlan;
import org.papermath.press.Felts;
import org.papermath.press.Lever;
import org.papermath.press.Press;
import org.papermath.press.Vacuum;
import org.papermath.pulp.AdditiveDose;
import org.papermath.pulp.AdditiveSolution;
import org.papermath.pulp.BeatingRecord;
import org.papermath.pulp.RetentionModel;
import org.papermath.pulp.RollLowering;
import org.papermath.pulp.SpoonMeasure;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.PapermathException;
import org.papermath.record.CalibratingDay;
import org.papermath.record.HandComparison;
import org.papermath.record.Measurement;
import org.papermath.record.SheetQuality;
import org.papermath.schedule.Phase;
import org.papermath.schedule.Resource;
import org.papermath.schedule.Task;
import org.papermath.schedule.WorkingTime;
import org.papermath.schedule.Workload;
import org.papermath.shape.Outline;
import org.papermath.sheet.DrySheet;
import org.papermath.sheet.DryingPath;
import org.papermath.sheet.Restraint;
import org.papermath.sheet.ShrinkageModel;
import org.papermath.sheet.SurfaceSize;
import org.papermath.vat.VatReading;

/**
 * Static methods, builders and records that take input answer null where none may be, and name the argument: they do
 * not leave it to whatever trips over it later.
 */
class NullArgumentsTest {
    /** A kind names what it checks with the words of its refusals. */
    private static final Pattern QUANTITY = Pattern.compile(".+: null given; .+ is expected here\\.");

    /** Records that people make themselves; the others are results. */
    private static final Set<Class<?>> INPUT = Set.of(
            Bands.Use.class,
            Estimate.Driver.class,
            Source.class,
            Opening.class,
            Piece.Sample.class,
            Felts.class,
            Lever.class,
            Vacuum.class,
            AdditiveDose.class,
            AdditiveDose.Addition.class,
            AdditiveSolution.class,
            RetentionModel.MakeUp.class,
            RollLowering.class,
            RollLowering.Step.class,
            SpoonMeasure.class,
            Line.class,
            Outline.Point.class,
            DrySheet.Weighed.class,
            DryingPath.Step.class,
            Restraint.class,
            ShrinkageModel.Strip.class,
            CalibratingDay.DriedSheet.class,
            CalibratingDay.Sample.class,
            SurfaceSize.class,
            WaterBudget.class,
            WaterBudget.Step.class,
            DocumentFormat.class,
            Renamed.class,
            DocumentResolver.Found.class,
            Dryer.FanStack.class,
            Dryer.Boards.class,
            Dryer.Loft.class,
            Dryer.Blotters.class,
            DryingModel.Batch.class,
            Press.Part.class,
            BeatingRecord.Point.class,
            VatReading.OfSheet.class,
            VatReading.OfVat.class,
            VatReading.OfWhiteWater.class,
            HandComparison.Hand.class,
            Resource.class,
            OrderDocument.class);

    private static List<Class<?>> types;
    private static Samples samples;

    @BeforeAll
    static void readTypes() throws Exception {
        types = new ArrayList<>(PublicMembersTest.exportedTypes(MakingPlan.class));
        types.addAll(PublicMembersTest.exportedTypes(PapermathDocuments.class));
        // It takes types that are not exported: nobody outside the module can call it.
        types.remove(WholeDocuments.class);
        samples = new Samples(types);
        samples.add(Embed.order());
        samples.add(MakingPlan.withoutBands(Embed.order(), Embed.studio()));
        samples.add(Embed.studio().felts().orElseThrow());
        samples.add(Embed.studio().press().orElseThrow());
        samples.add(working());
        Currency euro = Currency.getInstance("EUR");
        samples.add(euro);
        samples.add(BigDecimal.ONE);
        samples.add(Money.zero(euro));
        samples.add(Markup.percent(20));
        samples.add(Margin.percent(20));
        samples.add(MoneyRate.each(Money.zero(euro)));
        PriceList prices = PriceList.of("one", LocalDate.of(2026, 11, 2), euro).build();
        samples.add(prices);
        Costing costing = Costing.of(MakingPlan.withoutBands(Embed.order(), Embed.studio()), prices);
        samples.add(costing);
        samples.add(Pricing.of(costing, Markup.percent(20)));
        samples.add(ClassDay.of(Embed.studio(), Embed.order().recipes().get(0))
                .people(1)
                .sheetsEach(1)
                .size(mm(100), mm(150))
                .grammage(Grammage.gsm(120))
                .within(hours(3))
                .plan());
        DocumentReader.of(new DocumentFormat("one", 1, 0), document -> {
                    samples.add(document.unasked());
                    return ReadResult.of(document.unasked(), "one");
                })
                .read("{\"format\": \"papermath/one\", \"version\": \"1.0\"}");
        samples.add(new SheetQuality.Summary<>(grams(4), grams(0.1), 10));
        samples.add(SheetQuality.of(Kinds.MASS, List.of(grams(4), grams(4.1), grams(4))));
        samples.add(new HandComparison.Hand<>("one", List.of(grams(4), grams(4.1))));
        BufferedImage picture = new BufferedImage(20, 20, BufferedImage.TYPE_INT_RGB);
        samples.add(picture);
        samples.add(Photograph.of(picture).calibration(Assumptions.standard()));
        samples.add(ColourReading.of(Assumptions.standard(), Lab.of(70, 10, 30), Lab.of(70, 10, 30)));
        samples.add(StudioColours.palette().pigments().get(0));
        samples.add(StudioColours.palette().match(Lab.of(70, 10, 30)));
    }

    private static Workload working() {
        Phase phase = Phase.handsOn("one", Duration.ofHours(1));
        samples.add(phase);
        samples.add(Task.of("one").phase(phase).build());
        WorkingTime time = WorkingTime.of(Duration.ofHours(6), EnumSet.allOf(DayOfWeek.class));
        samples.add(time);
        return Workload.in(time).task(Task.of("one").phase(phase).build()).build();
    }

    @Test
    void areNamed() throws Exception {
        Set<String> silent = new TreeSet<>();
        int named = 0;
        int refused = 0;
        for (Executable door : doors()) {
            for (int at = 0; at < door.getParameterCount(); at++) {
                Parameter parameter = door.getParameters()[at];
                if (parameter.getType().isPrimitive() || isNullable(parameter.getAnnotatedType())) {
                    continue;
                }
                String answer = answer(door, at);
                if (answer.equals("named")) {
                    named++;
                } else if (answer.equals("refused")) {
                    refused++;
                } else {
                    silent.add(name(door) + " " + parameter.getName() + ": " + answer);
                }
            }
        }
        // Were most of them refused for another reason, nothing would be known about null.
        assertThat(named).isGreaterThan(5 * refused);
        assertThat(silent).as("arguments that are null and not named").isEmpty();
    }

    private static List<Executable> doors() {
        List<Executable> doors = new ArrayList<>();
        for (Class<?> type : types) {
            for (Method method : type.getDeclaredMethods()) {
                boolean builds = Modifier.isStatic(method.getModifiers())
                        || type.getSimpleName().equals("Builder");
                if (Modifier.isPublic(method.getModifiers())
                        && builds
                        && !method.isSynthetic()
                        && !method.getName().equals("equals")
                        && !(type.isEnum() && method.getName().equals("valueOf"))) {
                    doors.add(method);
                }
            }
            if (INPUT.contains(type) || (type.isRecord() && Measurement.class.isAssignableFrom(type))) {
                doors.addAll(List.of(type.getConstructors()));
            }
        }
        return doors;
    }

    private static boolean isNullable(AnnotatedElement element) {
        return element.isAnnotationPresent(Nullable.class);
    }

    /** What a door says to null in one place, and to a sample in every other. */
    private static String answer(Executable door, int at) throws ReflectiveOperationException {
        Object[] arguments = new Object[door.getParameterCount()];
        for (int i = 0; i < arguments.length; i++) {
            if (i != at && i == arguments.length - 1 && door.isVarArgs()) {
                arguments[i] = Array.newInstance(door.getParameterTypes()[i].getComponentType(), 0);
            } else if (i != at) {
                Optional<Object> sample = samples.of(door.getGenericParameterTypes()[i]);
                if (sample.isEmpty()) {
                    return "no sample of " + door.getGenericParameterTypes()[i];
                }
                arguments[i] = sample.get();
            }
        }
        try {
            if (door instanceof Constructor<?> constructor) {
                constructor.newInstance(arguments);
            } else {
                Method method = (Method) door;
                Object on = Modifier.isStatic(method.getModifiers())
                        ? null
                        : samples.of(method.getDeclaringClass()).orElse(null);
                if (on == null && !Modifier.isStatic(method.getModifiers())) {
                    return "no sample of " + method.getDeclaringClass();
                }
                method.invoke(on, arguments);
            }
            return "silent";
        } catch (InvocationTargetException e) {
            if (e.getCause() instanceof PapermathException) {
                return "refused";
            }
            String message = String.valueOf(e.getCause().getMessage());
            boolean named = e.getCause() instanceof NullPointerException
                    && !message.startsWith("Cannot ")
                    && (letters(message).contains(letters(door.getParameters()[at].getName()))
                            || QUANTITY.matcher(message).matches());
            return named ? "named" : e.getCause().getClass().getSimpleName() + " " + message;
        }
    }

    private static String letters(String text) {
        return text.toLowerCase(Locale.ROOT).replaceAll("[^a-z]", "");
    }

    private static String name(Executable door) {
        String called = door instanceof Constructor<?> ? "new" : door.getName();
        return door.getDeclaringClass().getCanonicalName() + "." + called
                + Arrays.stream(door.getParameterTypes())
                        .map(Class::getSimpleName)
                        .collect(Collectors.joining(", ", "(", ")"));
    }
}
