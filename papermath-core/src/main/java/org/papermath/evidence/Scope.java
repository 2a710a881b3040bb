package org.papermath.evidence;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.papermath.quantity.Name;
import org.papermath.quantity.Refused;

/**
 * What a value holds for: a fibre, on a machine; a fibre anywhere; a machine; or everything.
 *
 * <p>A value is looked up from the narrowest scope outwards: {@code [abaca@big beater]}, then {@code [abaca]}, then
 * {@code [@big beater]}, then the general value. A subject may have kin, such as a second-cut linter that is a linter;
 * the kin is asked right after the subject itself.
 */
public final class Scope {
    /** The scope of everything. */
    public static final Scope GENERAL = new Scope(List.of(), "");

    private final List<String> subjects;
    private final String place;
    private final List<String> outwards;

    private Scope(List<String> subjects, String place) {
        this.subjects = subjects;
        this.place = place;
        this.outwards = List.of(outwards(subjects, place));
    }

    /**
     * Makes the scope of a subject.
     *
     * @param subject the subject, for example the id of a fibre, followed by its kin from near to far
     * @return the scope
     * @throws Refused if a name is empty or holds one of {@code [ ] @}
     */
    public static Scope of(String... subject) {
        Objects.requireNonNull(subject, "subject");
        List<String> names = new ArrayList<>();
        for (String name : subject) {
            if (!names.contains(requireName(name))) {
                names.add(name);
            }
        }
        return new Scope(List.copyOf(names), "");
    }

    /**
     * Makes the scope of a place alone.
     *
     * @param place the name of a machine, a vat, a dryer
     * @return the scope
     * @throws Refused if the name is empty or holds one of {@code [ ] @}
     */
    public static Scope at(String place) {
        Objects.requireNonNull(place, "place");
        return GENERAL.on(place);
    }

    /**
     * Narrows this scope to a place.
     *
     * @param where the name of a machine, a vat, a dryer
     * @return the narrower scope
     * @throws Refused if the name is empty or holds one of {@code [ ] @}
     */
    public Scope on(String where) {
        return new Scope(subjects, requireName(where));
    }

    /**
     * Returns whether a text has one of the signs that stand for scopes, and so cannot be a name in one.
     *
     * @param text the text
     * @return whether one of {@code [ ] @} is in it
     */
    public static boolean hasSign(String text) {
        return Name.hasSign(text);
    }

    private static String requireName(String name) {
        if (name.isBlank() || hasSign(name)) {
            throw Refused.of(
                    "scope.name",
                    "scope: \"" + Name.shown(name)
                            + "\" cannot be the name of a scope. Use a name that is not empty and has none of [ ] @.",
                    "given",
                    name);
        }
        return name;
    }

    /** Reads the text between the brackets; used by the table of defaults. */
    static Scope parse(String text) {
        if (text.isEmpty()) {
            return GENERAL;
        }
        int at = text.indexOf('@');
        if (at < 0) {
            return of(text);
        }
        return at == 0 ? at(text.substring(1)) : of(text.substring(0, at)).on(text.substring(at + 1));
    }

    /** Returns the texts of the scopes to ask, from the narrowest outwards; the last is the general one. */
    List<String> outwards() {
        return outwards;
    }

    private static String[] outwards(List<String> subjects, String place) {
        int n = subjects.size();
        boolean somewhere = !place.isEmpty();
        String[] texts = new String[somewhere ? 2 * n + 2 : n + 1];
        for (int i = 0; i < n; i++) {
            String subject = subjects.get(i);
            if (somewhere) {
                texts[i] = subject + "@" + place;
            }
            texts[somewhere ? n + i : i] = subject;
        }
        if (somewhere) {
            texts[2 * n] = "@" + place;
        }
        texts[texts.length - 1] = "";
        return texts;
    }

    /** Returns the text of this scope itself, without kin: the narrowest place a value can stand at. */
    String own() {
        return (subjects.isEmpty() ? "" : subjects.get(0)) + (place.isEmpty() ? "" : "@" + place);
    }

    /**
     * Returns the subject itself, without its kin.
     *
     * @return the subject, or empty for the scope of a place alone and the general one
     */
    public Optional<String> subject() {
        return subjects.isEmpty() ? Optional.empty() : Optional.of(subjects.get(0));
    }

    /**
     * Returns the place.
     *
     * @return the place, or empty for a scope that holds everywhere
     */
    public Optional<String> place() {
        return place.isEmpty() ? Optional.empty() : Optional.of(place);
    }

    /**
     * Returns whether this is the scope of everything.
     *
     * @return true for {@link #GENERAL}
     */
    public boolean isGeneral() {
        return subjects.isEmpty() && place.isEmpty();
    }

    /** Compares what a value stands at; kin does not count, it only says where else to look. */
    @Override
    public boolean equals(Object other) {
        return other instanceof Scope that && own().equals(that.own());
    }

    @Override
    public int hashCode() {
        return Objects.hash(own());
    }

    /** Returns the text in brackets, for example {@code [abaca@big beater]}; empty for the general scope. */
    @Override
    public String toString() {
        return isGeneral() ? "" : "[" + own() + "]";
    }
}
