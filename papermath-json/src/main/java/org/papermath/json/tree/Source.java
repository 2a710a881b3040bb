package org.papermath.json.tree;

import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.papermath.json.DocumentResolver;
import org.papermath.json.Fault;
import org.papermath.json.FaultCodes;
import org.papermath.json.Renamed;
import org.papermath.quantity.PapermathException;

/**
 * One document while it is read: its name, its kept members, where its references lead, and the faults of the session.
 */
public final class Source {
    private final String name;
    private final FaultLog session;
    private final ForeignMembers kept = new ForeignMembers();
    private final DocumentResolver resolver;
    private final int depth;

    public Source(String name, FaultLog session, DocumentResolver resolver, int depth) {
        this.name = name;
        this.session = session;
        this.resolver = resolver;
        this.depth = depth;
        session.opened(name);
    }

    String name() {
        return name;
    }

    public FaultLog session() {
        return session;
    }

    public ForeignMembers kept() {
        return kept;
    }

    public DocumentResolver resolver() {
        return resolver;
    }

    /** Returns how many references led here. */
    public int depth() {
        return depth;
    }

    /** Returns the nearest word; nobody looks for it once there are too many faults. */
    public String nearest(String found, Collection<String> accepted) {
        return session.isFull() ? "" : NearestWord.of(found, accepted);
    }

    /** Returns the nearest of the members of an object, under another name of the trade too. */
    public String nearestMember(String found, Collection<String> members) {
        return session.isFull() ? "" : NearestWord.ofMembers(found, members);
    }

    public void refuse(JsonValue at, PapermathException refusal, Collection<String> codes) {
        refuse(at, refusal, codes, "");
    }

    /** Reports a refusal with something behind its sentence that only the document knows. */
    public void refuse(JsonValue at, PapermathException refusal, Collection<String> codes, String more) {
        session.mark(at);
        session.add(FaultLog.of(name, at, refusal, codes, more));
    }

    /** Says where a value stands that a fault is about too. */
    public String place(JsonValue at) {
        return at.pointer() + " (" + (name.isEmpty() ? "" : name + ", ") + "line " + at.line() + ", column "
                + at.column() + ")";
    }

    /** Reports a fault at a value, and returns it. */
    public Fault fault(
            JsonValue at,
            String code,
            String found,
            Collection<String> accepted,
            String nearest,
            String text,
            Object... namesAndValues) {
        session.mark(at);
        return fault(at.pointer(), at.line(), at.column(), code, found, accepted, nearest, text, namesAndValues);
    }

    void renamed(JsonValue at, Renamed member) {
        session.note(new Fault(
                name,
                at.pointer(),
                at.nameLine(),
                at.nameColumn(),
                FaultCodes.RENAMED,
                member.old(),
                List.of(member.now()),
                member.now(),
                List.of(),
                Map.of("found", member.old(), "nearest", member.now()),
                "\"" + member.old() + "\" is called \"" + member.now() + "\" now. It was read as that."));
    }

    public void faultAtName(
            JsonValue at,
            String code,
            Collection<String> accepted,
            String nearest,
            String text,
            Object... namesAndValues) {
        session.mark(at);
        fault(
                at.pointer(),
                at.nameLine(),
                at.nameColumn(),
                code,
                JsonValue.shown(at.step()),
                accepted,
                nearest,
                text,
                namesAndValues);
    }

    public Fault fault(
            String pointer,
            int line,
            int column,
            String code,
            String found,
            Collection<String> accepted,
            String nearest,
            String text,
            Object... namesAndValues) {
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
        Fault fault = new Fault(
                name, pointer, line, column, code, found, List.copyOf(accepted), nearest, List.of(), arguments, text);
        session.add(fault);
        return fault;
    }
}
