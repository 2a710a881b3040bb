package org.papermath.json;

import java.util.List;

/** A document that cannot be read, with all its faults. The message lists them line by line. */
public final class DocumentException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    /** The faults; not carried over by serialisation, the message is. */
    private final transient List<Fault> faults;

    /**
     * Creates the exception.
     *
     * @param faults the faults, in the order of the document; at least one
     */
    public DocumentException(List<Fault> faults) {
        super(message(faults));
        this.faults = List.copyOf(faults);
    }

    private static String message(List<Fault> faults) {
        StringBuilder text = new StringBuilder(faults.size() == 1 ? "1 fault" : faults.size() + " faults");
        for (Fault fault : faults) {
            text.append("\n  ").append(fault);
        }
        return text.toString();
    }

    /**
     * Returns the faults, those of the document itself first, each document from top to bottom.
     *
     * @return an unmodifiable list; empty after deserialisation
     */
    public List<Fault> faults() {
        return faults == null ? List.of() : faults;
    }
}
