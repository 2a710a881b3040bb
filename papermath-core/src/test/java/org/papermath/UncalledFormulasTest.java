package org.papermath;

import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaMethod;
import com.tngtech.archunit.core.domain.JavaModifier;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import java.net.URISyntaxException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.papermath.quantity.Amount;

/** A formula that only tests call is taken out, or it goes on being tested and trusted while the library uses another. */
class UncalledFormulasTest {
    private static final List<String> PACKAGES =
            List.of("org.papermath.equation", "org.papermath.numeric", "org.papermath.text");

    private static final String MAT = "resistance of a mat from the surface and the packing of its fibres";
    private static final String HOURS = "hours and pace of a run of posts";
    private static final String ISOTHERM = "an isotherm that holds at other temperatures too";

    /** Formulas kept for work under way, and what that work wants of them. The list may only become shorter. */
    private static final Map<String, String> KEPT = Map.ofEntries(
            Map.entry("Beating.exponentFrom", "shape of a beating curve from two readings"),
            Map.entry("Drainage.alpha", MAT),
            Map.entry("Drainage.kozenyOfPorosity", MAT),
            Map.entry("Drainage.permeability", MAT),
            Map.entry("Drainage.specificSurfaceOfAlpha", MAT),
            Map.entry("Drainage.grammageOfDepth", "the sheet that a depth of stock gives"),
            Map.entry("Freeness.sideVolume", "what a tester would read"),
            Map.entry("Labour.overallPerSheet", HOURS),
            Map.entry("Labour.pace", HOURS),
            Map.entry("Labour.postsIn", HOURS),
            Map.entry("Labour.runTime", HOURS),
            Map.entry("Labour.sheetsIn", HOURS),
            Map.entry("Sorption.hailwoodHorrobin", ISOTHERM),
            Map.entry("Sorption.tryding", ISOTHERM));

    private static Stream<JavaMethod> formulas() throws URISyntaxException {
        Path home = Path.of(
                Amount.class.getProtectionDomain().getCodeSource().getLocation().toURI());
        return new ClassFileImporter()
                .importPath(home).stream()
                        .filter(type -> PACKAGES.contains(type.getPackageName()))
                        .flatMap(type -> type.getMethods().stream())
                        .filter(method -> method.getModifiers().contains(JavaModifier.PUBLIC)
                                && method.getModifiers().contains(JavaModifier.STATIC)
                                && !isOfEveryEnum(method));
    }

    private static boolean isOfEveryEnum(JavaMethod method) {
        return method.getOwner().isEnum() && List.of("values", "valueOf").contains(method.getName());
    }

    private static boolean isCalled(JavaMethod method) {
        return method.getAccessesToSelf().stream()
                .anyMatch(access -> !access.getOrigin().equals(method));
    }

    private static String name(JavaMethod method) {
        JavaClass owner = method.getOwner();
        return owner.getName().substring(owner.getPackageName().length() + 1) + "." + method.getName();
    }

    @Test
    void everyFormulaIsCalledByTheLibrary() throws URISyntaxException {
        assertThat(formulas()).hasSizeGreaterThan(150);
        assertThat(formulas().filter(method -> !isCalled(method)).map(UncalledFormulasTest::name))
                .as("formulas nobody calls: take out a new one, and take off the list one that is called or gone")
                .containsExactlyInAnyOrderElementsOf(KEPT.keySet());
    }
}
