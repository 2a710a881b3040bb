package org.papermath.json;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.papermath.quantity.Unclear;

/**
 * Something wrong in a document, with its place. Immutable.
 *
 * @param document the name of the document, as its reference says it; empty if it has none
 * @param pointer the JSON Pointer (RFC 6901) of the value at fault; empty for the whole document
 * @param line the line, from 1
 * @param column the column, from 1, in UTF-16 characters as editors count them
 * @param code a stable dotted name: one of {@link FaultCodes}, or the code of the refusal behind it
 * @param found what stands there, shortened; empty if nothing does
 * @param accepted what could stand there, if it can be listed
 * @param nearest the accepted word that looks most like what was found; empty if none does
 * @param candidates the meanings of an input that has more than one, with what each would give
 * @param arguments the values in the sentence, by name
 * @param text the sentence for a person, without the place
 */
public record Fault(
        String document,
        String pointer,
        int line,
        int column,
        String code,
        String found,
        List<String> accepted,
        String nearest,
        List<Unclear.Candidate> candidates,
        Map<String, Object> arguments,
        String text) {
    /**
     * Copies the collections.
     *
     * @param document the name of the document
     * @param pointer the JSON Pointer of the value
     * @param line the line, from 1
     * @param column the column, from 1
     * @param code a stable dotted name
     * @param found what stands there
     * @param accepted what could stand there
     * @param nearest the accepted word that looks most like what was found
     * @param candidates the meanings of an input that has more than one
     * @param arguments the values in the sentence, by name
     * @param text the sentence for a person
     */
    public Fault {
        accepted = List.copyOf(accepted);
        candidates = List.copyOf(candidates);
        arguments = Collections.unmodifiableMap(new LinkedHashMap<>(arguments));
    }

    /** Returns the place and the sentence, for example {@code line 4, column 14, /pieces/0/count: …}. */
    @Override
    public String toString() {
        return (document.isEmpty() ? "" : document + ", ") + "line " + line + ", column " + column
                + (pointer.isEmpty() ? "" : ", " + pointer) + ": " + text;
    }
}
