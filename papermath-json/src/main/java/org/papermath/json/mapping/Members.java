package org.papermath.json.mapping;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;
import org.papermath.json.tree.JsonValue;

/**
 * The members of an object of a plan, in the order of the document: described once for the document, for its schema and
 * for comparisons.
 *
 * @param meaning what the object is
 * @param all the members
 */
public record Members<T>(String meaning, List<Member<T>> all) implements Sort<T> {
    /** A member; it gives nothing where it is left out. Whatever has members of its own has no examples. */
    public record Member<T>(
            String name,
            Sort<?> sort,
            Function<? super T, Optional<JsonValue>> giving,
            String meaning,
            List<Object> examples) {
        public boolean isList() {
            return sort.schema().containsKey("items");
        }

        private Map<String, Object> schema() {
            Map<String, Object> schema = new LinkedHashMap<>();
            schema.put("description", meaning);
            sort.schema().forEach(schema::putIfAbsent);
            if (!examples.isEmpty()) {
                schema.put("examples", examples);
            }
            return schema;
        }
    }

    /** A member that has no words yet: none goes in without them. */
    record Begun<T>(Members<T> before, String name, Sort<?> sort, Function<? super T, Optional<JsonValue>> giving) {
        Members<T> says(String meaning, Object... examples) {
            Member<T> member = new Member<>(name, sort, giving, meaning, List.of(examples));
            return new Members<>(
                    before.meaning,
                    Stream.concat(before.all.stream(), Stream.of(member)).toList());
        }
    }

    static <T> Members<T> of(String meaning) {
        return new Members<>(meaning, List.of());
    }

    /** Begins a member that is always written. */
    <V> Begun<T> has(String name, Sort<V> sort, Function<? super T, ? extends V> get) {
        return new Begun<>(this, name, sort, owner -> Optional.of(sort.form(get.apply(owner))));
    }

    /** Begins a member that is left out where there is nothing. */
    <V> Begun<T> mayHave(String name, Sort<V> sort, Function<? super T, ? extends Optional<? extends V>> get) {
        return new Begun<>(this, name, sort, owner -> get.apply(owner).map(sort::form));
    }

    /** Returns the values of the members that are there. */
    Map<String, JsonValue> values(T owner) {
        Map<String, JsonValue> values = new LinkedHashMap<>();
        all.forEach(one -> one.giving().apply(owner).ifPresent(value -> values.put(one.name(), value)));
        return values;
    }

    @Override
    public JsonValue form(T value) {
        return JsonValue.object(values(value));
    }

    @Override
    public Map<String, Object> schema() {
        Map<String, Object> properties = new LinkedHashMap<>();
        all.forEach(one -> properties.put(one.name(), one.schema()));
        Map<String, Object> schema = new LinkedHashMap<>();
        schema.put("description", meaning);
        schema.put("properties", properties);
        return schema;
    }
}
