package org.papermath.examples;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.papermath.evidence.Code;
import org.papermath.evidence.Codes;
import org.papermath.json.FaultCodes;

/** The tables of codes against the calls in the sources that raise them: the same codes, uses and names of values. */
class RaisedCodesTest {
    /** Notices of a model that it also refuses by, where the sources hand code, text and values on. */
    private static final Set<String> NOTICES_REFUSED_BY = Set.of(
            "vat.too-small",
            "drying.never-saturated",
            "drying.never-equilibrium",
            "drying.never-room-full",
            "press.above-allowed",
            "press.pressure-limit");

    /** Calls that hand on what was raised elsewhere, or read it from a document. */
    private static final List<String> HANDED_ON = List.of(
            "drying/DryingModel.java: new Refused(why.code()",
            "press/Press.java: new Refused(why.code()",
            "press/PressingModel.java: new Refused(why.code()",
            "record/Calibration.java: Notice.note(refusal.code()",
            "quantity/Units.java: new Refused(refused.code()",
            "vat/Recharge.java: new Refused(why.code()",
            "json/RecordLines.java: new Fault(fault.document()",
            "kit/ObjectReader.java: source.refuse(",
            "kit/ReadResult.java: place.refuse(",
            "kit/ValueReader.java: source.refuse(",
            "kit/WholeDocuments.java: place.refuse(",
            "mapping/EvidenceMapping.java: Notice.note(code.get()",
            "mapping/EvidenceMapping.java: Notice.warning(code.get()",
            "mapping/FibreMapping.java: Refused.of(e.code()",
            "mapping/RecipeMapping.java: Refused.of(e.code()",
            "tree/FaultLog.java: new Fault(document, at.pointer()");

    /** What every fault of a document may have. */
    private static final Set<String> OF_ANY_FAULT = Set.of("found", "accepted", "nearest");

    /** The texts that a model and a plan share; the plan says of which piece or batch. */
    private static final String SHARED = "notice/";

    private static RaisedCodes raised(String module) throws IOException {
        return RaisedCodes.of(List.of(Pages.file(module + "/src/main/java")));
    }

    /** What the sources say of one code. */
    private static final class Seen {
        private final Set<Code.Use> uses = EnumSet.noneOf(Code.Use.class);
        private final Set<List<String>> names = new LinkedHashSet<>();
        private final Set<String> places = new TreeSet<>();
        private boolean shared;

        private void add(RaisedCodes.Site site) {
            uses.add(site.use());
            places.add(site.place());
            if (site.use() != Code.Use.STAGE) {
                names.add(site.arguments());
            }
            shared |= site.place().startsWith(SHARED);
        }

        private List<String> always() {
            List<String> always = new ArrayList<>(names.stream().findFirst().orElse(List.of()));
            names.forEach(always::retainAll);
            return always;
        }

        private Set<String> sometimes() {
            Set<String> all = new TreeSet<>();
            names.forEach(all::addAll);
            always().forEach(all::remove);
            return all;
        }
    }

    private static Set<String> without(Set<String> all, Set<String> others) {
        Set<String> left = new TreeSet<>(all);
        left.removeAll(others);
        return left;
    }

    private static Map<String, Seen> seen(RaisedCodes raised) {
        Map<String, Seen> seen = new TreeMap<>();
        raised.sites()
                .forEach(site ->
                        seen.computeIfAbsent(site.code(), code -> new Seen()).add(site));
        return seen;
    }

    @Test
    void theTableOfTheLibraryIsWhatItsSourcesRaise() throws IOException {
        Map<String, Seen> seen = seen(raised("papermath-core"));
        Set<String> table = new TreeSet<>();
        Codes.all().forEach(code -> table.add(code.name()));
        assertThat(without(seen.keySet(), table)).as("raised, and in no table").isEmpty();
        assertThat(without(table, seen.keySet()))
                .as("in the table, and not raised")
                .isEmpty();
        for (Code code : Codes.all()) {
            Seen one = seen.get(code.name());
            String where = code.name() + " in " + one.places;
            Set<Code.Use> uses = EnumSet.copyOf(one.uses);
            if (NOTICES_REFUSED_BY.contains(code.name())) {
                assertThat(uses).as(where).contains(Code.Use.NOTICE).doesNotContain(Code.Use.REFUSAL);
                uses.add(Code.Use.REFUSAL);
            }
            assertThat(code.uses()).as(where).isEqualTo(uses);
            assertThat(code.arguments()).as(where).containsExactlyElementsOf(one.always());
            Set<String> sometimes = new TreeSet<>(code.sometimes());
            if (one.shared) {
                sometimes.removeAll(Set.of("piece", "batch"));
            }
            assertThat(sometimes).as(where).isEqualTo(one.sometimes());
        }
    }

    @Test
    void theTableOfTheDocumentsIsWhatTheirSourcesRaise() throws IOException {
        Map<String, Seen> seen = seen(raised("papermath-json"));
        Map<String, Code> table = new LinkedHashMap<>();
        FaultCodes.ofModule()
                .forEach(code -> assertThat(table.put(code.name(), code)).isNull());
        assertThat(without(table.keySet(), seen.keySet()))
                .as("in the table, and not raised")
                .isEmpty();
        for (Map.Entry<String, Seen> entry : seen.entrySet()) {
            String name = entry.getKey();
            Seen one = entry.getValue();
            Set<String> raised = new TreeSet<>(one.sometimes());
            raised.addAll(one.always());
            raised.removeAll(OF_ANY_FAULT);
            Optional<Code> ofLibrary = Codes.find(name);
            if (ofLibrary.isPresent()) {
                assertThat(table)
                        .as("codes of the library are none of the documents")
                        .doesNotContainKey(name);
                Set<String> known = new TreeSet<>(ofLibrary.get().arguments());
                known.addAll(ofLibrary.get().sometimes());
                assertThat(known).as(name).containsAll(raised);
                continue;
            }
            Code code = Optional.ofNullable(table.get(name))
                    .orElseThrow(() -> new AssertionError(name + " is in no table"));
            Set<Code.Use> uses = EnumSet.copyOf(one.uses);
            if (FaultCodes.meanings().containsKey(name)) {
                // What is refused while a document is read is one of its faults.
                uses.add(Code.Use.FAULT);
            }
            assertThat(code.uses()).as(name).isEqualTo(uses);
            Set<String> known = new TreeSet<>(code.arguments());
            known.addAll(code.sometimes());
            known.removeAll(OF_ANY_FAULT);
            if (name.equals(FaultCodes.MORE)) {
                // Made at once with all its values, outside of the sources' usual way.
                assertThat(known).containsExactly("shown");
                continue;
            }
            assertThat(known).as(name).isEqualTo(raised);
        }
    }

    @Test
    void nothingIsRaisedThatCannotBeRead() throws IOException {
        Set<String> unread = new TreeSet<>(raised("papermath-core").unread());
        unread.addAll(raised("papermath-json").unread());
        assertThat(unread).allMatch(call -> HANDED_ON.stream().anyMatch(call::startsWith));
        assertThat(HANDED_ON).allMatch(known -> unread.stream().anyMatch(call -> call.startsWith(known)));
    }

    @Test
    void codesAreFollowedThroughConstantsConditionsAndMethods(@TempDir Path folder) throws IOException {
        Files.writeString(folder.resolve("Tub.java"), """
                class Tub {
                    static final String LEAKS = "tub.leaks";
                    private static final String BY = "litres";
                    void fill(int litres, String name) {
                        if (litres < 0) {
                            throw Refused.of(LEAKS, "text", BY, litres, "tub", name);
                        }
                        String code = litres > 9 ? "tub.full" : "tub.low";
                        Notice.note(code, "text " + "tub.none");
                        warn("tub.hot", "text", "kelvin", 300);
                        refuse(switch (litres) { case 1 -> "tub.one"; default -> { yield "tub.many"; } }, "hoops");
                        Stage.notDone(Tub.LEAKS, "reason");
                        throw new Unclear("tub.which", "text", List.of(), "tub", name);
                    }
                    private void warn(String code, String text, Object... values) {
                        Notice.warning(code, text, values);
                    }
                    static Refused refuse(String code, String what) {
                        return Refused.of(code, "text", what, 1, "least", 2);
                    }
                    void read(String code) {
                        Notice.note(code.trim(), "text");
                    }
                }
                class Notice {
                    // Notice.note("tub.remark", "text")
                    String text = "Refused.of(\\"tub.text\\", 1)";
                }
                """);
        RaisedCodes raised = RaisedCodes.of(List.of(folder));
        assertThat(raised.sites())
                .extracting(site -> site.code() + " " + site.use() + " " + site.arguments())
                .containsExactlyInAnyOrder(
                        "tub.leaks REFUSAL [litres, tub]",
                        "tub.full NOTICE []",
                        "tub.low NOTICE []",
                        "tub.hot NOTICE [kelvin]",
                        "tub.one REFUSAL [hoops, least]",
                        "tub.many REFUSAL [hoops, least]",
                        "tub.leaks STAGE []",
                        "tub.which QUESTION [tub]");
        assertThat(raised.unread()).singleElement().asString().contains("Notice.note(code.trim()");
    }
}
