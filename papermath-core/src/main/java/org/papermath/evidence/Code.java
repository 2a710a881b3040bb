package org.papermath.evidence;

import java.util.Collections;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.papermath.quantity.Refused;

/**
 * A code of what the library reports: what it means, how it is used, and the names of the values that come with it. A
 * program that words the texts itself finds here what it has to have words for.
 *
 * <p>A code keeps its meaning; new codes and new arguments may come.
 *
 * @param name a stable dotted name, such as {@code post.heavy}
 * @param uses how it is used; mostly in one way, in several where one matter can stop one thing and only be reported
 *     another
 * @param arguments the names of the values that always come with it, in the order in which a text would say them
 * @param sometimes the names of the values that come with it only at times
 * @param meaning one sentence on what has happened
 */
public record Code(String name, Set<Use> uses, List<String> arguments, List<String> sometimes, String meaning) {
    private static final Pattern NAME = Pattern.compile("[a-z0-9-]+\\.[a-z0-9-]+");

    /** How a code is used. */
    public enum Use {
        /** An input that cannot be: the code of a {@link Refused}. */
        REFUSAL("refusal"),
        /** An input with several meanings: the code of an {@link org.papermath.quantity.Unclear}. */
        QUESTION("question"),
        /** Something a result should not be read without: the code of a {@link Notice}. */
        NOTICE("notice"),
        /** Why a stage of the work has no result: the code of a stage that is not done. It has no arguments. */
        STAGE("stage not done"),
        /** What is wrong with a document before it says anything to the library. */
        FAULT("fault of a document");

        private final String words;

        Use(String words) {
            this.words = words;
        }

        /**
         * Returns the use in words.
         *
         * @return a few words, such as {@code stage not done}
         */
        public String words() {
            return words;
        }
    }

    /**
     * Checks and copies the parts.
     *
     * @param name a stable dotted name
     * @param uses how it is used, at least one
     * @param arguments the names of the values that always come with it
     * @param sometimes the names of the values that come with it at times
     * @param meaning one sentence
     * @throws IllegalArgumentException if the name is no dotted name, there is no use or no meaning, or a name of an
     *     argument stands twice
     */
    public Code {
        if (!NAME.matcher(name).matches()) {
            throw new IllegalArgumentException("the name of a code is two words with a dot between them: " + name);
        }
        if (uses.isEmpty() || meaning.isBlank()) {
            throw new IllegalArgumentException(name + ": no use or a blank meaning; give both");
        }
        uses = Collections.unmodifiableSet(EnumSet.copyOf(uses));
        arguments = List.copyOf(arguments);
        sometimes = List.copyOf(sometimes);
        long different =
                Stream.concat(arguments.stream(), sometimes.stream()).distinct().count();
        if (different != arguments.size() + sometimes.size()) {
            throw new IllegalArgumentException(name + ": an argument stands twice");
        }
    }

    /**
     * Returns the first part of the name: the matter the code belongs to.
     *
     * @return for example {@code post}
     */
    public String room() {
        return name.substring(0, name.indexOf('.'));
    }

    @Override
    public String toString() {
        return name + ": " + meaning;
    }
}
