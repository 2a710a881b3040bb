package org.papermath.json;

/**
 * The program that wrote a document, for whoever reads it later.
 *
 * @param program its name
 * @param version its version
 */
public record WrittenBy(String program, String version) {
    @Override
    public String toString() {
        return program + " " + version;
    }
}
