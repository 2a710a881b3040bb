package org.papermath.quantity;

import java.util.List;

/**
 * An input with more than one meaning, with its candidates and what each would give: a "ton" that may be short, metric
 * or long, a ream without a count, an "A6" that may be a sheet or an envelope.
 *
 * <p>The library asks back instead of choosing.
 */
public final class Unclear extends PapermathException {
    private static final long serialVersionUID = 1L;

    private final transient List<Candidate> candidates;

    /**
     * One of the meanings.
     *
     * @param meaning how to say it without doubt, for example {@code tonf_us}
     * @param gives what it would give, for a person, for example {@code 8.896 kN}
     */
    public record Candidate(String meaning, String gives) {
        @Override
        public String toString() {
            return meaning + " (" + gives + ")";
        }
    }

    /**
     * Creates the question.
     *
     * @param code a stable dotted name
     * @param question the sentence for a person; the candidates are added to it
     * @param candidates the meanings, at least one
     * @param namesAndValues names and values in turn; an even number of entries
     */
    public Unclear(String code, String question, List<Candidate> candidates, Object... namesAndValues) {
        super(
                code,
                question
                        + candidates.stream()
                                .map(Candidate::toString)
                                .collect(java.util.stream.Collectors.joining("; ", " It may mean: ", ".")),
                Refused.named(namesAndValues));
        this.candidates = List.copyOf(candidates);
    }

    /**
     * Returns the meanings the input may have.
     *
     * @return an unmodifiable list; empty after deserialisation
     */
    public List<Candidate> candidates() {
        return candidates == null ? List.of() : candidates;
    }
}
