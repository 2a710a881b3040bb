package org.papermath.json;

import static org.assertj.core.api.Assertions.assertThat;

import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.lang.reflect.Modifier;
import java.lang.reflect.RecordComponent;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.papermath.envelope.EnvelopeStyle;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Basis;
import org.papermath.evidence.Reading;
import org.papermath.fibre.Fibre;
import org.papermath.fibre.Fibres;
import org.papermath.fibre.Furnish;
import org.papermath.format.Format;
import org.papermath.format.FormatSystem;
import org.papermath.json.mapping.CommonMembers;
import org.papermath.json.mapping.MeasurementMapping;
import org.papermath.order.Order;
import org.papermath.order.Piece;
import org.papermath.order.Recipe;
import org.papermath.order.Studio;
import org.papermath.pulp.Additive;
import org.papermath.pulp.RetentionModel;
import org.papermath.pulp.WaterRetentionModel;
import org.papermath.quantity.Amounts;
import org.papermath.quantity.Grammage;
import org.papermath.record.BatchRecord;
import org.papermath.record.Measurement;
import org.papermath.shape.Outline;

/** Whatever an order, a recipe, a studio or a record can say has its member: what is new in them is missed here. */
class EveryMemberTest {
    private static final Set<String> NOT_SAID = Set.of("recipeAsMade", "toString", "hashCode", "toBuilder");
    private static final Recipe BARE_RECIPE =
            Recipe.of("bare", Furnish.of(Fibres.ABACA)).build();
    private static final Piece BARE_PIECE = Piece.of("card", 1, "bare")
            .size(Amounts.mm(100), Amounts.mm(100))
            .grammage(Grammage.gsm(100))
            .build();
    private static final BatchRecord BARE_RECORD =
            BatchRecord.builder("bare", LocalDate.of(2027, 1, 1)).build();

    private static Object said(Method accessor, Object by) {
        try {
            Object value = accessor.invoke(by);
            Object held = value instanceof Optional<?> one && one.isPresent() ? one.get() : value;
            return held instanceof Assumptions all ? all.own() : value;
        } catch (IllegalAccessException | InvocationTargetException e) {
            throw new AssertionError(accessor.toString(), e);
        }
    }

    private static boolean isNothing(Object value) {
        return value.equals(Optional.empty())
                || value.equals(OptionalInt.empty())
                || value instanceof Collection<?> all && all.isEmpty()
                || value instanceof Map<?, ?> map && map.isEmpty();
    }

    /** Everything these say is said by one of them in another way than by the bare one, and is said when read again. */
    private static <T> void everythingIsKept(List<T> all, List<T> again, T bare) {
        assertThat(again).hasSameSizeAs(all);
        List<Method> accessors = Arrays.stream(bare.getClass().getDeclaredMethods())
                .filter(one -> Modifier.isPublic(one.getModifiers())
                        && !Modifier.isStatic(one.getModifiers())
                        && !one.isSynthetic()
                        && one.getParameterCount() == 0
                        && !NOT_SAID.contains(one.getName()))
                .toList();
        assertThat(accessors).hasSizeGreaterThan(4);
        for (Method accessor : accessors) {
            assertThat(all)
                    .as("a sample says " + accessor.getName())
                    .anySatisfy(one -> assertThat(said(accessor, one))
                            .isNotEqualTo(said(accessor, bare))
                            .matches(value -> !isNothing(value)));
            for (int i = 0; i < all.size(); i++) {
                assertThat(said(accessor, again.get(i))).as(accessor.getName()).isEqualTo(said(accessor, all.get(i)));
            }
        }
    }

    @Test
    void ofOrdersPiecesRecipesAndStudios() {
        OrderDocument read = Concert.read().value();
        OrderDocument concert = new OrderDocument(
                read.order().toBuilder()
                        .piece(Piece.of(
                                        "badge",
                                        12,
                                        read.order().recipes().get(0).name())
                                .formedTo(Outline.round(Amounts.mm(70)))
                                .grammage(Grammage.gsm(180))
                                .build())
                        .build(),
                read.studio());
        OrderDocument again = PapermathDocuments.readOrder(PapermathDocuments.writeOrder(Document.of(concert)))
                .value();
        Order bare = Order.of("bare").recipe(BARE_RECIPE).piece(BARE_PIECE).build();
        everythingIsKept(List.of(concert.order()), List.of(again.order()), bare);
        everythingIsKept(concert.order().pieces(), again.order().pieces(), BARE_PIECE);
        List<Recipe> recipes = List.of(
                concert.order().recipes().get(0),
                PapermathDocuments.readRecipe(Concert.TIMED).value());
        List<Recipe> recipesAgain = List.of(
                again.order().recipes().get(0),
                PapermathDocuments.readRecipe(PapermathDocuments.writeRecipe(Document.of(recipes.get(1))))
                        .value());
        everythingIsKept(recipes, recipesAgain, BARE_RECIPE);
        everythingIsKept(
                List.of(concert.studio()),
                List.of(again.studio()),
                Studio.of("bare").build());
    }

    @Test
    void ofRecords() {
        BatchRecord record = PapermathDocuments.readRecord(Batch.RECORD).value();
        BatchRecord again = PapermathDocuments.readRecord(PapermathDocuments.writeRecord(Document.of(record)))
                .value();
        everythingIsKept(List.of(record), List.of(again), BARE_RECORD);
    }

    @Test
    void ofMeasurementsAndWhatTheyMayLeaveOut() throws ReflectiveOperationException {
        List<Measurement> all =
                PapermathDocuments.readRecord(Batch.RECORD).value().measurements();
        List<String> words = new ArrayList<>();
        for (Class<?> sort : Measurement.class.getPermittedSubclasses()) {
            List<Measurement> some = all.stream().filter(sort::isInstance).toList();
            assertThat(some).as(sort.getSimpleName()).isNotEmpty();
            for (RecordComponent component : sort.getRecordComponents()) {
                if (component.getType() == Optional.class) {
                    assertThat(some)
                            .as(component.toString())
                            .anyMatch(one -> !isNothing(said(component.getAccessor(), one)));
                }
            }
            words.add(sort.getSimpleName());
        }
        assertThat(MeasurementMapping.words()).hasSameSizeAs(words).doesNotHaveDuplicates();
        assertThat(all)
                .filteredOn(Measurement.MoistureSample.class::isInstance)
                .first()
                .extracting(one -> ((Measurement.MoistureSample) one).dried())
                .extracting(Reading::date)
                .isNotEqualTo(Optional.empty());
        assertThat(all)
                .filteredOn(Measurement.JarCompared.class::isInstance)
                .first()
                .extracting(one -> ((Measurement.JarCompared) one).additive().activeFraction())
                .isNotEqualTo(Optional.empty());
    }

    @Test
    void everyWordMeansOneThing() {
        assertThat(words(EnvelopeStyle.values(), EnvelopeStyle::words)).doesNotHaveDuplicates();
        assertThat(words(FormatSystem.values(), FormatSystem::words)).doesNotHaveDuplicates();
        assertThat(words(Basis.values(), Basis::word)).doesNotHaveDuplicates();
        assertThat(words(Measurement.Step.values(), Measurement.Step::word)).doesNotHaveDuplicates();
        assertThat(words(Measurement.Work.values(), Measurement.Work::word)).doesNotHaveDuplicates();
        for (Enum<?>[] all : List.of(
                Piece.Edge.values(),
                Format.Use.values(),
                Additive.Purpose.values(),
                Fibre.SourceClass.values(),
                RetentionModel.Circumstance.values(),
                WaterRetentionModel.Spin.values())) {
            assertThat(words(all, CommonMembers::word))
                    .doesNotHaveDuplicates()
                    .allMatch(word -> word.matches("[a-z0-9 ]+"));
        }
    }

    private static <T> List<String> words(T[] all, Function<? super T, String> word) {
        return Stream.of(all).map(word).map(String::valueOf).toList();
    }
}
