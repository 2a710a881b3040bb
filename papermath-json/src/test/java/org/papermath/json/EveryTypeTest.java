package org.papermath.json;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowable;

import java.io.IOException;
import java.lang.module.ModuleFinder;
import java.lang.module.ModuleReader;
import java.lang.module.ModuleReference;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.lang.reflect.Modifier;
import java.net.URISyntaxException;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Stream;
import javax.measure.Quantity;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.papermath.evidence.Estimate;
import org.papermath.evidence.Notice;
import org.papermath.evidence.Reading;
import org.papermath.evidence.Scope;
import org.papermath.plan.AdditiveToWeigh;
import org.papermath.plan.BeaterLoads;
import org.papermath.plan.BeatingPlan;
import org.papermath.plan.CookingPlan;
import org.papermath.plan.DryingPlan;
import org.papermath.plan.EnvelopePlan;
import org.papermath.plan.FibreToWeigh;
import org.papermath.plan.FinishedPiece;
import org.papermath.plan.FormingPlan;
import org.papermath.plan.MailPlan;
import org.papermath.plan.MakingPlan;
import org.papermath.plan.PieceCounts;
import org.papermath.plan.PostsPlan;
import org.papermath.plan.PourPlan;
import org.papermath.plan.PressingPlan;
import org.papermath.plan.ShapedDeckle;
import org.papermath.plan.SizingPlan;
import org.papermath.plan.SoakingPlan;
import org.papermath.plan.Stage;
import org.papermath.plan.StockPlan;
import org.papermath.plan.StockShortage;
import org.papermath.plan.VatPlan;
import org.papermath.quantity.Amount;
import org.papermath.quantity.PapermathException;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.JavaType;
import tools.jackson.databind.json.JsonMapper;

/** No public type of the core is left to the habits of a mapper: each comes back as it was, or is refused. */
class EveryTypeTest {
    /** Classes that the library alone makes, around a record of their own. */
    private static final Set<Class<?>> PARTS_OF_A_PLAN = Set.of(
            AdditiveToWeigh.class,
            BeaterLoads.class,
            BeatingPlan.class,
            CookingPlan.class,
            CookingPlan.Pot.class,
            DryingPlan.class,
            EnvelopePlan.class,
            FibreToWeigh.class,
            FibreToWeigh.Line.class,
            FinishedPiece.class,
            FormingPlan.class,
            MailPlan.class,
            PieceCounts.class,
            PostsPlan.class,
            PourPlan.class,
            PressingPlan.class,
            ShapedDeckle.class,
            SizingPlan.class,
            SoakingPlan.class,
            StockPlan.class,
            StockShortage.class,
            VatPlan.class,
            VatPlan.Recharge.class);

    private static final JsonMapper MAPPER =
            JsonMapper.builder().addModule(new PapermathModule()).build();
    private static final int MOST_OF_A_TYPE = 25;

    private static List<Class<?>> publicTypes() {
        try {
            ModuleReference core = ModuleFinder.of(Path.of(Amount.class
                            .getProtectionDomain()
                            .getCodeSource()
                            .getLocation()
                            .toURI()))
                    .find("org.papermath.core")
                    .orElseThrow();
            Set<String> exported = new TreeSet<>();
            core.descriptor().exports().forEach(one -> exported.add(one.source()));
            List<Class<?>> types = new ArrayList<>();
            try (ModuleReader reader = core.open()) {
                for (String file : reader.list()
                        .filter(one -> one.endsWith(".class"))
                        .sorted()
                        .toList()) {
                    String name =
                            file.substring(0, file.length() - ".class".length()).replace('/', '.');
                    if (name.contains(".")
                            && exported.contains(name.substring(0, name.lastIndexOf('.')))
                            && !name.endsWith("package-info")) {
                        Class<?> type = Class.forName(name);
                        if (isOpen(type)) {
                            types.add(type);
                        }
                    }
                }
            }
            return types;
        } catch (IOException | URISyntaxException | ClassNotFoundException e) {
            throw new IllegalStateException(e);
        }
    }

    private static boolean isOpen(Class<?> type) {
        Class<?> around = type.getEnclosingClass();
        return Modifier.isPublic(type.getModifiers()) && !type.isAnonymousClass() && (around == null || isOpen(around));
    }

    @TestFactory
    List<DynamicTest> eachIsAnsweredFor() {
        List<Class<?>> types = publicTypes();
        assertThat(types).hasSizeGreaterThan(250);
        return types.stream()
                .map(type -> DynamicTest.dynamicTest(type.getName(), () -> {
                    boolean plain = type.isRecord() && CoreTypes.isPlainRecord(type);
                    boolean result = CoreTypes.isResult(type);
                    assertThat(result)
                            .isEqualTo(PARTS_OF_A_PLAN.contains(type)
                                    || (type.isSealed()
                                            && Stream.of(type.getPermittedSubclasses())
                                                    .noneMatch(EveryTypeTest::isOpen)));
                    assertThat(MAPPER._serializationContext()
                                    .findValueSerializer(type)
                                    .getClass()
                                    .getName())
                            .matches(
                                    plain && !isSmall(type) || result
                                            ? "tools\\.jackson\\..*BeanSerializer"
                                            : "org\\.papermath\\..*");
                    if (type != Scope.class && !(plain && allOptional(type))) {
                        Throwable refused = catchThrowable(() -> MAPPER.readValue("{}", type));
                        assertThat(refused).as(type.getName()).isInstanceOf(JacksonException.class);
                        assertThat(
                                        plain && refused.getCause() == null
                                                ? ((JacksonException) refused).getOriginalMessage()
                                                : "")
                                .matches("|Missing required creator property .*");
                        if (!plain) {
                            assertThat(refused.getCause())
                                    .as(type + ": " + refused)
                                    .isInstanceOfAny(PapermathException.class, DocumentException.class);
                        }
                        if (result) {
                            assertThat(refused)
                                    .hasMessageContaining("the Jackson module does not read ")
                                    .hasMessageContaining(
                                            type.getSimpleName() + ". Only the library makes one. Read its members as"
                                                    + " members of a type of your own");
                        }
                    }
                }))
                .toList();
    }

    private static boolean isSmall(Class<?> type) {
        return type == org.papermath.press.Felts.class;
    }

    private static boolean allOptional(Class<?> record) {
        for (var component : record.getRecordComponents()) {
            if (component.getType() != Optional.class) {
                return false;
            }
        }
        return true;
    }

    /** Walks from what can be reached without arguments, and from a plan, over every public method without one. */
    private static Map<Class<?>, List<Object>> values() {
        Deque<Object> open = new ArrayDeque<>();
        OrderDocument concert = Concert.read().value();
        open.add(MakingPlan.of(concert.order(), concert.studio()));
        open.add(PapermathDocuments.readRecord(Batch.RECORD).value());
        for (Class<?> type : publicTypes()) {
            for (Method method : type.getMethods()) {
                if (Modifier.isStatic(method.getModifiers()) && method.getParameterCount() == 0) {
                    follow(method, null, open);
                }
            }
            for (var field : type.getFields()) {
                try {
                    open.add(field.get(null));
                } catch (IllegalAccessException e) {
                    throw new IllegalStateException(e);
                }
            }
        }
        Map<Class<?>, List<Object>> seen = new HashMap<>();
        while (!open.isEmpty()) {
            Object value = open.poll();
            if (value instanceof Optional<?> optional) {
                optional.ifPresent(open::add);
            } else if (value instanceof Map<?, ?> map) {
                map.forEach((key, one) -> {
                    open.add(key);
                    open.add(one);
                });
            } else if (value instanceof Collection<?> several) {
                several.stream().limit(MOST_OF_A_TYPE).forEach(open::add);
            } else if (value instanceof Object[] several) {
                open.addAll(List.of(several));
            } else if (CoreTypes.isOurs(value.getClass())) {
                Class<?> of = CoreTypes.known(value.getClass());
                List<Object> known = seen.computeIfAbsent(of, type -> new ArrayList<>());
                if (known.size() < MOST_OF_A_TYPE && !known.contains(value)) {
                    known.add(value);
                    for (Method method : of.getMethods()) {
                        if (!Modifier.isStatic(method.getModifiers())
                                && method.getParameterCount() == 0
                                && CoreTypes.isOurs(method.getDeclaringClass())
                                && isOpen(method.getDeclaringClass())) {
                            follow(method, value, open);
                        }
                    }
                }
            }
        }
        return seen;
    }

    private static void follow(Method method, Object on, Deque<Object> open) {
        try {
            Object found = method.invoke(on);
            if (found != null) {
                open.add(found);
            }
        } catch (InvocationTargetException e) {
            // A stage that was not done has nothing to give.
            assertThat(e.getCause()).isInstanceOf(RuntimeException.class);
        } catch (IllegalAccessException e) {
            throw new IllegalStateException(e);
        }
    }

    private static JavaType typeOf(Object value) {
        Amount<?> amount = value instanceof Amount<?> one
                ? one
                : value instanceof Estimate<?> one
                        ? one.likely()
                        : value instanceof Reading<?> one ? one.value() : null;
        Class<?> type = value instanceof Enum<?> constant ? constant.getDeclaringClass() : value.getClass();
        return amount == null
                ? MAPPER.constructType(type)
                : MAPPER.getTypeFactory()
                        .constructParametricType(type, amount.kind().type());
    }

    @Test
    void whatIsWrittenIsReadAgainAndNothingIsWrittenEmpty() {
        Map<String, Integer> written = new TreeMap<>();
        Map<String, Integer> refused = new TreeMap<>();
        for (Map.Entry<Class<?>, List<Object>> of : values().entrySet()) {
            for (Object value : of.getValue()) {
                String name = of.getKey().getName();
                String text;
                try {
                    text = MAPPER.writeValueAsString(value);
                } catch (JacksonException e) {
                    assertThat(e.getCause()).as(name).isInstanceOf(PapermathException.class);
                    assertThat(e.getOriginalMessage()).as(name).contains("the Jackson module does not write ");
                    refused.merge(name, 1, Integer::sum);
                    continue;
                }
                if (!value.equals(Scope.GENERAL)) {
                    assertThat(text)
                            .as(name)
                            .isNotEqualTo("{}")
                            .doesNotContain("{}")
                            .doesNotContain("null");
                }
                written.merge(name, 1, Integer::sum);
                if (value.getClass().getTypeParameters().length > 0
                        && !(value instanceof Quantity)
                        && !(value instanceof Estimate)
                        && !(value instanceof Reading)) {
                    continue;
                }
                if (text.contains("\"done\":") || text.contains("\"failures\":") || CoreTypes.isResult(of.getKey())) {
                    assertThat(catchThrowable(() -> MAPPER.readValue(text, typeOf(value))))
                            .as(name)
                            .hasMessageContaining("as members of a type of your own");
                    continue;
                }
                Object read = MAPPER.readValue(text, typeOf(value));
                assertThat(MAPPER.writeValueAsString(read)).as(name).isEqualTo(text);
                if (value instanceof Notice notice) {
                    // A long that an int can hold comes back as an Integer.
                    assertThat(((Notice) read).arguments())
                            .as(name)
                            .hasToString(notice.arguments().toString());
                } else if (hasEquals(value.getClass())) {
                    assertThat(read).as(name).isEqualTo(value);
                }
            }
        }
        assertThat(written.keySet())
                .contains(
                        Stage.class.getName(),
                        Estimate.class.getName(),
                        "org.papermath.plan.ToBuy",
                        "org.papermath.record.Calibration$Row",
                        "org.papermath.plan.VatPlan$Recharge",
                        "org.papermath.evidence.Notice",
                        "org.papermath.evidence.Basis");
        assertThat(written).hasSizeGreaterThan(60);
        assertThat(refused.keySet())
                .contains("org.papermath.order.Order", "org.papermath.press.PressingModel")
                .doesNotContainAnyElementsOf(written.keySet());
    }

    private static boolean hasEquals(Class<?> type) {
        try {
            return type.getMethod("equals", Object.class).getDeclaringClass() != Object.class;
        } catch (NoSuchMethodException e) {
            throw new IllegalStateException(e);
        }
    }
}
