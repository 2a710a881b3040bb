package org.papermath.json;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.JavaModifier;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.lang.ArchRule;
import com.tngtech.archunit.library.dependencies.SliceAssignment;
import com.tngtech.archunit.library.dependencies.SliceIdentifier;
import java.lang.module.ModuleDescriptor;
import java.lang.module.ModuleFinder;
import java.net.URISyntaxException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** Which room of the module may use which, and which of them stand open. */
class ArchitectureTest {
    private static final String ROOT = "org.papermath.json";
    private static final String DOORS = "doors";
    private static final String TERMS = "terms";

    /** Each room may use those before it in this list, never those after it. */
    private static final List<String> ORDER = List.of(TERMS, "tree", "kit", "mapping", "schema", DOORS);

    /** What everybody holds and every room speaks of: faults, formats, references. They use nothing of the rooms. */
    private static final List<Class<?>> OF_TERMS = List.of(
            Fault.class,
            FaultCodes.class,
            FaultTable.class,
            DocumentException.class,
            DocumentFormat.class,
            DocumentResolver.class,
            OrderDocument.class,
            Renamed.class,
            WrittenBy.class);

    private static final JavaClasses MODULE = new ClassFileImporter().importPath(home());

    private static Path home() {
        try {
            return Path.of(PapermathDocuments.class
                    .getProtectionDomain()
                    .getCodeSource()
                    .getLocation()
                    .toURI());
        } catch (URISyntaxException e) {
            throw new IllegalStateException(e);
        }
    }

    /** Returns the room of a type: the doors and the terms share a package. */
    private static String room(JavaClass type) {
        if (!type.getPackageName().equals(ROOT)) {
            return type.getPackageName().startsWith(ROOT + ".")
                    ? type.getPackageName().substring(ROOT.length() + 1)
                    : "";
        }
        JavaClass whole = type;
        while (whole.getEnclosingClass().isPresent()) {
            whole = whole.getEnclosingClass().get();
        }
        String name = whole.getName();
        return OF_TERMS.stream().anyMatch(one -> one.getName().equals(name)) ? TERMS : DOORS;
    }

    private static DescribedPredicate<JavaClass> in(List<String> rooms) {
        return DescribedPredicate.describe("stand in " + String.join(", ", rooms), type -> rooms.contains(room(type)));
    }

    private static ArchRule rule(String room) {
        List<String> later = ORDER.subList(ORDER.indexOf(room) + 1, ORDER.size());
        return noClasses().that(in(List.of(room))).should().dependOnClassesThat(in(later));
    }

    @TestFactory
    List<DynamicTest> everyRoomUsesOnlyThoseBeforeIt() {
        return ORDER.stream()
                .map(room -> DynamicTest.dynamicTest(room, () -> rule(room).check(MODULE)))
                .toList();
    }

    @Test
    void theOrderIsOneThatCanBeBroken() {
        assertThatThrownBy(() -> noClasses()
                        .that(in(List.of("mapping")))
                        .should()
                        .dependOnClassesThat(in(List.of("kit")))
                        .check(MODULE))
                .isInstanceOf(AssertionError.class);
        for (String room : ORDER) {
            assertThat(MODULE.stream().filter(type -> room(type).equals(room)).count())
                    .as(room)
                    .isGreaterThan(5);
        }
    }

    @Test
    void noRoomStandsOutsideTheOrder() {
        assertThat(MODULE.stream()
                        .filter(type -> !type.getSimpleName().equals("module-info"))
                        .map(ArchitectureTest::room))
                .isSubsetOf(ORDER);
    }

    /** Whole types, with what is nested in them, as slices of one room. */
    private static SliceAssignment typesOf(String room) {
        return new SliceAssignment() {
            @Override
            public SliceIdentifier getIdentifierOf(JavaClass type) {
                return room(type).equals(room)
                        ? SliceIdentifier.of(type.getName().replaceFirst("\\$.*", ""))
                        : SliceIdentifier.ignore();
            }

            @Override
            public String getDescription() {
                return "types of " + room;
            }
        };
    }

    @Test
    void theRoomsBehindHaveNoCyclesWithin() {
        for (String room : List.of("tree", "mapping", "schema")) {
            slices().assignedFrom(typesOf(room)).should().beFreeOfCycles().check(MODULE);
        }
    }

    @Test
    void onlyTheDoorsAndTheKitStandOpen() {
        ModuleDescriptor module =
                ModuleFinder.of(home()).find(ROOT).orElseThrow().descriptor();
        assertThat(module.exports())
                .allSatisfy(export -> assertThat(export.isQualified()).isFalse());
        assertThat(module.exports().stream().map(ModuleDescriptor.Exports::source))
                .containsExactlyInAnyOrder(ROOT, ROOT + ".kit");
        assertThat(module.opens()).isEmpty();
        assertThat(module.packages()).containsExactlyInAnyOrderElementsOf(new TreeSet<>(packages()));
    }

    private static List<String> packages() {
        List<String> all = new ArrayList<>(List.of(ROOT));
        ORDER.stream()
                .filter(room -> !room.equals(DOORS) && !room.equals(TERMS))
                .forEach(room -> all.add(ROOT + "." + room));
        return all;
    }

    /** What the kit shows has no types that cannot be reached; the one that hands them on is for the module alone. */
    @Test
    void theOpenTypesSpeakOfNothingBehindThem() {
        List<String> behind = List.of("tree", "mapping", "schema");
        List<String> shown = new ArrayList<>();
        MODULE.stream()
                .filter(type -> type.getModifiers().contains(JavaModifier.PUBLIC) && !behind.contains(room(type)))
                .filter(type -> type.getMethods().stream()
                        .filter(one -> one.getModifiers().contains(JavaModifier.PUBLIC))
                        .anyMatch(
                                one -> one.getAllInvolvedRawTypes().stream().anyMatch(it -> behind.contains(room(it)))))
                .forEach(type -> shown.add(type.getSimpleName()));
        assertThat(shown).containsExactly("WholeDocuments");
    }

    @Test
    void theRoomsBehindReachNoFiles() {
        classes()
                .that(in(List.of(TERMS, "tree", "mapping", "schema")))
                .should()
                .onlyDependOnClassesThat()
                .resideOutsideOfPackages("java.nio.file..", "java.net..")
                .check(MODULE);
    }
}
