package org.papermath.json;

import java.io.IOException;
import java.util.Objects;

/**
 * Finds the documents a document refers to. Given by the caller: the reader opens nothing by itself.
 *
 * @see FolderResolver
 */
@FunctionalInterface
public interface DocumentResolver {
    /**
     * A document that was found.
     *
     * @param name the name for messages
     * @param bytes the text in UTF-8; not to be changed afterwards
     * @param next finds the documents this one refers to
     */
    record Found(String name, byte[] bytes, DocumentResolver next) {
        /**
         * Checks that nothing is missing.
         *
         * @param name the name for messages
         * @param bytes the text in UTF-8; not to be changed afterwards
         * @param next finds the documents this one refers to
         */
        public Found {
            Objects.requireNonNull(name, "name");
            Objects.requireNonNull(bytes, "bytes");
            Objects.requireNonNull(next, "next");
        }
    }

    /**
     * Finds a document.
     *
     * @param reference what stands in the document, such as {@code studio.json}
     * @return the document
     * @throws org.papermath.quantity.Refused if the reference is not to be followed; it becomes a fault at its place
     * @throws IOException if the document cannot be read; that becomes a fault too
     */
    Found find(String reference) throws IOException;
}
