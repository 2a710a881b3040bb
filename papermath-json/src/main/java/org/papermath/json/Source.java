package org.papermath.json;

import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

import org.papermath.quantity.PapermathException;

/**
 * One document while it is read: its name, its kept members, where its references lead, and the faults of the session.
 */
final class Source {
    private final String name;
    private final Session session;
    private final Kept kept = new Kept();
    private final DocumentResolver resolver;
    private final int depth;

    Source(String name, Session session, DocumentResolver resolver, int depth) {
        this.name = name;
        this.session = session;
        this.resolver = resolver;
        this.depth = depth;
        session.opened(name);
    }

    String name() {
        return name;
    }

    Session session() {
        return session;
    }

    Kept kept() {
        return kept;
    }

    DocumentResolver resolver() {
        return resolver;
    }

    /** Returns how many references led here. */
    int depth() {
        return depth;
    }

    /** Returns the nearest word; nobody looks for it once there are too many faults. */
    String nearest(String found, Collection<String> accepted) {
        return session.isFull() ? "" : Nearest.of(found, accepted);
    }

    void refuse(JsonValue at, PapermathException refusal, Collection<String> codes) {
        session.mark(at);
        session.add(Session.of(name, at, refusal, codes));
    }

    void fault(JsonValue at, String code, String found, Collection<String> accepted, String nearest, String text,
            Object... namesAndValues) {
        session.mark(at);
        fault(at.pointer(), at.line(), at.column(), code, found, accepted, nearest, text, namesAndValues);
    }

    void renamed(JsonValue at, Renamed member) {
        session.note(new Fault(name, at.pointer(), at.nameLine(), at.nameColumn(), FaultCodes.RENAMED, member.old(),
                List.of(member.now()), member.now(), List.of(), Map.of("found", member.old(), "nearest", member.now()),
                "\"" + member.old() + "\" is called \"" + member.now() + "\" now. It was read as that."));
    }

    void faultAtName(JsonValue at, String code, Collection<String> accepted, String nearest, String text,
            Object... namesAndValues) {
        session.mark(at);
        fault(at.pointer(), at.nameLine(), at.nameColumn(), code, JsonValue.shown(at.step()), accepted, nearest, text,
                namesAndValues);
    }

    void fault(String pointer, int line, int column, String code, String found, Collection<String> accepted,
            String nearest, String text, Object... namesAndValues) {
        Map<String, Object> arguments = new LinkedHashMap<>();
        if (!found.isEmpty()) {
            arguments.put("found", found);
        }
        if (!accepted.isEmpty()) {
            arguments.put("accepted", List.copyOf(accepted));
        }
        if (!nearest.isEmpty()) {
            arguments.put("nearest", nearest);
        }
        for (int i = 0; i < namesAndValues.length; i += 2) {
            arguments.put(String.valueOf(namesAndValues[i]), namesAndValues[i + 1]);
        }
        session.add(new Fault(name, pointer, line, column, code, found, List.copyOf(accepted), nearest, List.of(),
                arguments, text));
    }
}
