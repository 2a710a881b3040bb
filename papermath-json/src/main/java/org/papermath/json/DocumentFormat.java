package org.papermath.json;

import java.util.List;
import java.util.Objects;
import java.util.regex.Pattern;

/**
 * The head of a sort of document: {@code "format": "papermath/recipe", "version": "1.0"}.
 *
 * @param name the name after {@code papermath/}, in small letters
 * @param major the version that separates what cannot read each other, 1 or more
 * @param minor the version within, 0 or more: a reader takes its own and any lower one
 * @param renamed the members that had other names in earlier versions of the same major
 */
public record DocumentFormat(String name, int major, int minor, List<Renamed> renamed) {
    private static final Pattern NAME = Pattern.compile("[a-z]+");

    /**
     * Checks the parts.
     *
     * @param name the name after {@code papermath/}
     * @param major the greater version
     * @param minor the lesser version
     * @param renamed the members that had other names
     */
    public DocumentFormat {
        Objects.requireNonNull(name, "name");
        Objects.requireNonNull(renamed, "renamed");
        renamed = List.copyOf(renamed);
        if (!NAME.matcher(name).matches() || major < 1 || minor < 0) {
            throw new IllegalArgumentException("not a format: " + name + " " + major + "." + minor);
        }
    }

    /**
     * Describes a format without renamed members.
     *
     * @param name the name after {@code papermath/}
     * @param major the greater version
     * @param minor the lesser version
     */
    public DocumentFormat(String name, int major, int minor) {
        this(name, major, minor, List.of());
    }

    /**
     * Returns the word in the head.
     *
     * @return for example {@code papermath/recipe}
     */
    public String word() {
        return "papermath/" + name;
    }

    /**
     * Returns the version in the head.
     *
     * @return for example {@code 1.0}
     */
    public String version() {
        return major + "." + minor;
    }
}
