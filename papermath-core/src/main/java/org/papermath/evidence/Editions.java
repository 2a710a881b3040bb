package org.papermath.evidence;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Function;
import org.papermath.quantity.Refused;

/** The tables that are at hand, each by the name of its edition; one is read when it is first asked for. */
final class Editions {
    /** The shipped ones, the newest first: for another edition put its name in front and its table beside the others. */
    static final Editions SHIPPED = new Editions(List.of("2026-11"), Editions::shipped);

    private final List<String> names;
    private final Function<String, InputStream> text;
    private final Map<String, Assumptions> read = new ConcurrentHashMap<>();

    /**
     * Makes a collection of editions.
     *
     * @param names their names, the newest first
     * @param text opens the text of the table of a name
     */
    Editions(List<String> names, Function<String, InputStream> text) {
        this.names = List.copyOf(names);
        this.text = text;
    }

    List<String> names() {
        return names;
    }

    Assumptions newest() {
        return get(names.get(0));
    }

    Assumptions get(String edition) {
        if (!names.contains(edition)) {
            throw Refused.of(
                    "assumptions.edition",
                    "assumptions: edition \"" + edition + "\" is not in this version of the library, which holds: "
                            + String.join(", ", names) + ". Use one of these, or a newer version of the library.",
                    "given",
                    edition,
                    "accepted",
                    names);
        }
        return read.computeIfAbsent(edition, this::load);
    }

    private Assumptions load(String edition) {
        try (InputStream stream = text.apply(edition)) {
            return Assumptions.of(AssumptionsTable.read(edition, stream));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static InputStream shipped(String edition) {
        String name = "assumptions-" + edition + ".csv";
        InputStream stream = Editions.class.getResourceAsStream(name);
        if (stream == null) {
            throw new IllegalStateException("the library is incomplete: " + name + " is missing");
        }
        return stream;
    }
}
