package org.papermath.plan;

import java.util.NoSuchElementException;
import java.util.Optional;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * A stage of the making that was planned, or was not done and says why. Immutable.
 *
 * @param <T> what the stage holds
 */
public final class Stage<T> {
    private final @Nullable T value;
    private final String code;
    private final String reason;

    private Stage(@Nullable T value, String code, String reason) {
        this.value = value;
        this.code = code;
        this.reason = reason;
    }

    static <T> Stage<T> done(T value) {
        return new Stage<>(value, "", "");
    }

    static <T> Stage<T> notDone(String code, String reason) {
        return new Stage<>(null, code, reason);
    }

    /**
     * Returns whether the stage was planned.
     *
     * @return whether {@link #get} has something to give
     */
    public boolean isDone() {
        return value != null;
    }

    /**
     * Returns what was planned.
     *
     * @return the content of the stage
     * @throws NoSuchElementException if it was not done; the message says why
     */
    public T get() {
        if (value == null) {
            throw new NoSuchElementException("not done: " + reason);
        }
        return value;
    }

    /**
     * Returns what was planned, if it was.
     *
     * @return the content of the stage
     */
    public Optional<T> optional() {
        return Optional.ofNullable(value);
    }

    /**
     * Returns one thing of what was planned, if it was.
     *
     * @param <R> the type of that thing
     * @param what picks the thing
     * @return the thing
     */
    public <R> Optional<R> map(Function<? super T, ? extends R> what) {
        return optional().map(what);
    }

    /**
     * Returns a stable name of the reason.
     *
     * @return for example {@code press.none}, one of {@link org.papermath.evidence.Codes}; empty if the stage was
     *     planned
     */
    public String code() {
        return code;
    }

    /**
     * Returns why the stage was not done.
     *
     * @return a sentence; empty if the stage was planned
     */
    public String reason() {
        return reason;
    }

    @Override
    public String toString() {
        return value == null ? "not done: " + reason : value.toString();
    }
}
