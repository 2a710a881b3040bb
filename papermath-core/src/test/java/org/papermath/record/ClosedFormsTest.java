package org.papermath.record;

import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.JavaMethod;
import com.tngtech.archunit.core.domain.JavaModifier;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** No model is calibrated by hand only: each of its calibrations is in the table. */
class ClosedFormsTest {
    private static final List<String> MODELS = List.of("fibre", "pulp", "vat", "press", "sheet", "drying");
    private static final JavaClasses LIBRARY = new ClassFileImporter()
            .withImportOption(new ImportOption.DoNotIncludeTests())
            .importPackages("org.papermath");

    private static List<JavaMethod> calibrations() {
        List<JavaMethod> found = new ArrayList<>();
        for (JavaClass one : LIBRARY) {
            if (MODELS.stream().anyMatch(name -> one.getPackageName().equals("org.papermath." + name))) {
                one.getMethods().stream()
                        .filter(method -> method.getName().startsWith("calibrate")
                                && method.getModifiers().contains(JavaModifier.PUBLIC))
                        .forEach(found::add);
            }
        }
        return found;
    }

    private static boolean isCalledBy(JavaMethod method, String caller) {
        return method.getCallsOfSelf().stream()
                .anyMatch(call -> call.getOriginOwner().getName().startsWith(caller));
    }

    private static Stream<JavaMethod> calibrationsIn(JavaMethod method) {
        return method.getMethodCallsFromSelf().stream()
                .flatMap(call -> call.getTarget().resolveMember().stream())
                .filter(target -> target.getName().startsWith("calibrate"));
    }

    /** Those that the caller does not come to, nor hand on to one that it calls. */
    private static List<String> notCalledBy(String caller) {
        List<JavaMethod> all = calibrations();
        Set<JavaMethod> reached = new HashSet<>();
        all.stream().filter(method -> isCalledBy(method, caller)).forEach(reached::add);
        while (reached.addAll(
                reached.stream().flatMap(ClosedFormsTest::calibrationsIn).collect(Collectors.toSet()))) {
            // Until no more are found.
        }
        return all.stream()
                .filter(method ->
                        !reached.contains(method) && calibrationsIn(method).noneMatch(reached::contains))
                .map(JavaMethod::getFullName)
                .toList();
    }

    @Test
    void everyCalibrationOfAModelIsInTheTable() {
        assertThat(notCalledBy(ClosedForms.class.getName())).isEmpty();
    }

    /** The search itself finds what is missing. */
    @Test
    void calibrationThatNobodyCallsIsFound() {
        assertThat(notCalledBy("org.papermath.quantity."))
                .hasSameSizeAs(calibrations())
                .hasSizeGreaterThan(15)
                .anySatisfy(name -> assertThat(name).contains("RetentionModel.calibrate("))
                .anySatisfy(name -> assertThat(name).contains("DrainabilityModel.calibrateChart("));
    }

    @Test
    void everyMeasurementIsTakenByARowOrIsSaidToBeForTheRecordOnly() {
        List<Class<?>> taken = new ArrayList<>();
        ClosedForms.TABLE.forEach(rule -> taken.addAll(rule.takes()));
        // These stand beside other readings.
        taken.addAll(List.of(
                Measurement.Load.class,
                Measurement.Pressed.class,
                Measurement.VatFilled.class,
                Measurement.FibreWeighed.class));
        // These repeat a batch and are held against its plan.
        taken.addAll(List.of(
                Measurement.AdditiveWeighed.class,
                Measurement.Beaten.class,
                Measurement.VatStood.class,
                Measurement.Formed.class));
        assertThat(taken).contains(Measurement.class.getPermittedSubclasses());
    }
}
