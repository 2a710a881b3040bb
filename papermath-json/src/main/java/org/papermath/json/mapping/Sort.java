package org.papermath.json.mapping;

import java.util.Map;
import java.util.function.Function;
import org.papermath.json.tree.JsonValue;

/** What a value of a plan is: how a document gives it, and how the schema describes it. */
public interface Sort<V> {
    JsonValue form(V value);

    Map<String, Object> schema();

    static <V> Sort<V> of(Map<String, Object> schema, Function<? super V, JsonValue> form) {
        return new Single<>(schema, form);
    }

    /** A value that has no members. */
    record Single<V>(Map<String, Object> schema, Function<? super V, JsonValue> giving) implements Sort<V> {
        @Override
        public JsonValue form(V value) {
            return giving.apply(value);
        }
    }
}
