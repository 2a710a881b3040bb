/**
 * Documents in JSON: reading with every fault at its line, writing, references between files, and a Jackson module for
 * quantities inside documents of one's own.
 */
module org.papermath.json {
    requires transitive org.papermath.core;
    requires transitive tools.jackson.databind;
    requires static org.jspecify;

    exports org.papermath.json;
    exports org.papermath.json.kit;

    provides tools.jackson.databind.JacksonModule with
            org.papermath.json.PapermathModule;
}
