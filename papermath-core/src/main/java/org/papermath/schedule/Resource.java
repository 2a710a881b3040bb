package org.papermath.schedule;

import java.util.Objects;
import org.papermath.quantity.Refused;

/**
 * What work needs and there is only so much of: persons, a beater, vats, moulds, felts, the press, places in the dryer.
 *
 * @param name what it is called, unlike any other of the same {@link Workload}
 * @param count how many there are, at least one
 */
public record Resource(String name, int count) {
    /**
     * Checks what is given.
     *
     * @param name what it is called
     * @param count how many there are
     * @throws Refused if the name is empty or cannot be shown, or the count is below one
     */
    public Resource {
        name = Names.check(name, "resource");
        if (count < 1) {
            throw Refused.of(
                    "schedule.count",
                    name + ": " + count + " given; must be 1 or more. Leave it out if there is none.",
                    "of",
                    name,
                    "given",
                    count);
        }
    }

    /**
     * So many of something.
     *
     * @param name what it is called
     * @param count how many there are, at least one
     * @return the resource
     * @throws Refused if the name is empty or cannot be shown, or the count is below one
     */
    public static Resource of(String name, int count) {
        Objects.requireNonNull(name, "name");
        return new Resource(name, count);
    }

    /** Returns the count and the name, as {@code 2 person}. */
    @Override
    public String toString() {
        return count + " " + name;
    }
}
