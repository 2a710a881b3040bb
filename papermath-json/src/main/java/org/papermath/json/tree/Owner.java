package org.papermath.json.tree;

/**
 * An object of a document, found again when something is refused later that was made of it.
 *
 * @param source where faults go
 * @param object the object
 */
public record Owner(Source source, JsonValue object) {}
