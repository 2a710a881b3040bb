package org.papermath.plan;

import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/**
 * A value worked out when it is first asked for. Two threads may both work it out; since it always comes out the same,
 * either copy will do.
 */
final class Lazy<T> {
    private final Supplier<T> source;
    private volatile @Nullable T value;

    Lazy(Supplier<T> source) {
        this.source = source;
    }

    T get() {
        T found = value;
        if (found == null) {
            found = source.get();
            value = found;
        }
        return found;
    }
}
