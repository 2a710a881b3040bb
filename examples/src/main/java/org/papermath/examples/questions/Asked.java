package org.papermath.examples.questions;

import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.util.List;

/**
 * A question with the lines that answer it.
 *
 * @param number its number, for example {@code B12}
 * @param theme the class it stands in, for example {@code PressQuestions}
 * @param asks what is asked
 * @param words further words of the trade it is found by
 * @param lines the body of the method, as it is written
 * @param method the method
 */
public record Asked(String number, String theme, String asks, String words, List<String> lines, Method method) {
    /** Copies the list. */
    public Asked {
        lines = List.copyOf(lines);
    }

    /** {@return the answer} */
    public String answer() {
        try {
            return String.valueOf(method.invoke(null));
        } catch (IllegalAccessException | InvocationTargetException e) {
            throw new IllegalStateException(number + " cannot be answered", e);
        }
    }

    @Override
    public String toString() {
        return number + " " + asks;
    }
}
