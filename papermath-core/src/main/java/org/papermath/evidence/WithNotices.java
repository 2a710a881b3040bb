package org.papermath.evidence;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/**
 * A result and what it should not be read without.
 *
 * @param <T> the type of the result
 * @param value the result
 * @param notices what to read beside it; empty where there is nothing to say
 */
public record WithNotices<T>(T value, List<Notice> notices) {
    /**
     * Copies the list.
     *
     * @param value the result
     * @param notices what to read beside it
     */
    public WithNotices {
        notices = List.copyOf(notices);
    }

    /**
     * Makes a result with its notices.
     *
     * @param <T> the type of the result
     * @param value the result
     * @param notices what to read beside it
     * @return the pair
     */
    public static <T> WithNotices<T> of(T value, Notice... notices) {
        Objects.requireNonNull(value, "value");
        Objects.requireNonNull(notices, "notices");
        return new WithNotices<>(value, List.of(notices));
    }

    /**
     * Returns the same result with one notice more.
     *
     * @param notice the notice
     * @return the pair
     */
    public WithNotices<T> and(Notice notice) {
        List<Notice> more = new ArrayList<>(notices);
        more.add(notice);
        return new WithNotices<>(value, more);
    }

    @Override
    public String toString() {
        StringBuilder text = new StringBuilder(String.valueOf(value));
        for (Notice notice : notices) {
            text.append(" (").append(notice).append(')');
        }
        return text.toString();
    }
}
