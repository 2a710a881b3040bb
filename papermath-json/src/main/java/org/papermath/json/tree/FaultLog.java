package org.papermath.json.tree;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.Comparator;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;
import org.papermath.json.DocumentException;
import org.papermath.json.Fault;
import org.papermath.json.FaultCodes;
import org.papermath.quantity.PapermathException;
import org.papermath.quantity.Unclear;

/** The faults of one reading, over a document and those it refers to. */
public final class FaultLog {
    /** More faults than this help nobody. */
    static final int MOST_FAULTS = 200;
    /** The refusals of a word that may only be misspelt, beside those that say so by their code. */
    private static final Set<String> WORDS = Set.of("mail.country", "assumptions.edition");

    private final List<Fault> faults = new ArrayList<>();
    private final List<String> documents = new ArrayList<>();
    /** Every value with a fault in it. */
    private final Set<JsonValue> faulty = Collections.newSetFromMap(new IdentityHashMap<>());

    private final List<Fault> notes = new ArrayList<>();
    private final Predicate<String> shortLists;
    private boolean full;
    private boolean good = true;

    /** Begins a reading of which no list is known to be short. */
    public FaultLog() {
        this(list -> false);
    }

    /**
     * Begins a reading.
     *
     * @param shortLists returns, for the pointer of a list, with * for an item, whether it has at most
     *     {@link JsonTree#MANY} items; more of them are only counted
     */
    public FaultLog(Predicate<String> shortLists) {
        this.shortLists = shortLists;
    }

    boolean isShort(String list) {
        return shortLists.test(list);
    }

    void opened(String document) {
        documents.add(document);
    }

    public boolean isFaulty(JsonValue value) {
        return !good && faulty.contains(value);
    }

    public void mark(@Nullable JsonValue value) {
        good = false;
        for (JsonValue at = value; at != null && faulty.add(at); at = at.parent()) {
            // all values around it are marked by the loop itself
        }
    }

    void add(Fault fault) {
        if (faults.size() < MOST_FAULTS) {
            faults.add(fault);
        } else {
            full = true;
        }
    }

    /** Takes back a fault that only follows from another one; that one has to be here. */
    public void withdraw(Fault fault) {
        if (!full) {
            faults.remove(fault);
        }
    }

    void note(Fault note) {
        notes.add(note);
    }

    public List<Fault> notes() {
        if (notes.isEmpty()) {
            return List.of();
        }
        List<Fault> sorted = new ArrayList<>(notes);
        sorted.sort(Comparator.<Fault>comparingInt(note -> documents.indexOf(note.document()))
                .thenComparingInt(Fault::line)
                .thenComparingInt(Fault::column));
        return sorted;
    }

    boolean isFull() {
        return full;
    }

    public boolean hasFaults() {
        return !faults.isEmpty();
    }

    /** Returns the exception with all faults, document by document, from top to bottom. */
    public DocumentException exception() {
        List<Fault> sorted = new ArrayList<>(faults);
        sorted.sort(Comparator.<Fault>comparingInt(fault -> documents.indexOf(fault.document()))
                .thenComparingInt(Fault::line)
                .thenComparingInt(Fault::column));
        if (full) {
            Fault last = sorted.get(sorted.size() - 1);
            sorted.add(new Fault(
                    last.document(),
                    "",
                    last.line(),
                    last.column(),
                    FaultCodes.MORE,
                    "",
                    List.of(),
                    "",
                    List.of(),
                    Map.of("shown", MOST_FAULTS),
                    "there are more faults than the " + MOST_FAULTS + " shown. Fix these first."));
        }
        return new DocumentException(sorted);
    }

    static Fault of(String document, JsonValue at, PapermathException refusal, Collection<String> codes, String more) {
        Map<String, Object> arguments = refusal.arguments();
        Object found = arguments.containsKey("found") ? arguments.get("found") : arguments.get("given");
        // Of a list or an object it says nothing that it is one.
        boolean plain = at.type() != JsonValue.Type.OBJECT && at.type() != JsonValue.Type.LIST;
        String shown = found != null ? JsonValue.shown(String.valueOf(found)) : plain ? at.found() : "";
        List<String> accepted = new ArrayList<>();
        if (arguments.getOrDefault("accepted", arguments.get("near")) instanceof Collection<?> several) {
            several.forEach(one -> accepted.add(String.valueOf(one)));
        } else if (arguments.containsKey("accepted")) {
            accepted.addAll(
                    codes.isEmpty()
                            ? List.of(String.valueOf(arguments.get("accepted")).split(", "))
                            : codes);
        }
        List<Unclear.Candidate> candidates = refusal instanceof Unclear unclear ? unclear.candidates() : List.of();
        boolean misspelt = refusal.code().endsWith(".unknown") || WORDS.contains(refusal.code());
        String nearest = misspelt ? NearestWord.of(shown, accepted) : "";
        return new Fault(
                document,
                at.pointer(),
                at.line(),
                at.column(),
                refusal.code(),
                shown,
                accepted,
                nearest,
                candidates,
                new LinkedHashMap<>(arguments),
                refusal.getMessage() + more);
    }
}
