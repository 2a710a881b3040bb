package org.papermath;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.fields;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.JavaModifier;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.lang.ArchCondition;
import com.tngtech.archunit.lang.ArchRule;
import com.tngtech.archunit.lang.ConditionEvents;
import com.tngtech.archunit.lang.SimpleConditionEvent;
import java.lang.module.ModuleDescriptor;
import java.lang.module.ModuleFinder;
import java.net.URISyntaxException;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.ServiceLoader;
import java.util.TimeZone;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.papermath.drying.Dryer;
import org.papermath.quantity.Amount;
import org.papermath.record.Measurement;

/** Which package may use which, and what the library never touches. */
class ArchitectureTest {
    private static final String ROOT = "org.papermath.";

    /** Each package may use those before it in this list, never those after it. */
    private static final List<String> ORDER = List.of(
            "quantity",
            "evidence",
            "notice",
            "schedule",
            "air",
            "fibre",
            "pulp",
            "shape",
            "format",
            "envelope",
            "mail",
            "drawing",
            "mould",
            "sheet",
            "vat",
            "press",
            "drying",
            "colour",
            "order",
            "record",
            "engine",
            "uncertainty",
            "plan",
            "cost",
            "whatif",
            "card");

    /** Packages that are not exported and use nothing of those in order; each may use those before it. */
    private static final List<String> TOOLS = List.of("numeric", "text", "equation");

    /** Packages in order that are not exported. */
    private static final List<String> INSIDE = List.of("notice", "engine", "uncertainty");

    private static final JavaClasses LIBRARY = new ClassFileImporter().importPath(home());

    private static Path home() {
        try {
            return Path.of(Amount.class
                    .getProtectionDomain()
                    .getCodeSource()
                    .getLocation()
                    .toURI());
        } catch (URISyntaxException e) {
            throw new IllegalStateException(e);
        }
    }

    private static ArchRule rule(String name) {
        List<String> later = new ArrayList<>();
        for (String other : ORDER.subList(ORDER.indexOf(name) + 1, ORDER.size())) {
            later.add(ROOT + other + "..");
        }
        return noClasses()
                .that()
                .resideInAPackage(ROOT + name + "..")
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage(later.toArray(String[]::new))
                .allowEmptyShould(true);
    }

    @TestFactory
    List<DynamicTest> everyPackageUsesOnlyThoseBeforeIt() {
        return ORDER.stream()
                .map(name -> DynamicTest.dynamicTest(name, () -> rule(name).check(LIBRARY)))
                .toList();
    }

    @Test
    void theOrderIsOneThatCanBeBroken() {
        JavaClasses backwards =
                new ClassFileImporter().importClasses(org.papermath.evidence.Assumption.class, Amount.class);
        ArchRule turned = noClasses()
                .that()
                .resideInAPackage(ROOT + "evidence..")
                .should()
                .dependOnClassesThat()
                .resideInAPackage(ROOT + "quantity..");
        assertThatThrownBy(() -> turned.check(backwards)).isInstanceOf(AssertionError.class);
        assertThat(LIBRARY.size()).isGreaterThan(60);
    }

    /** What the library finds has a closed constructor, which a record in public cannot have. */
    @Test
    void aRecordInPublicIsWhatSomebodyGives() {
        assertThat(LIBRARY.stream()
                        .filter(type -> type.isRecord() && isOpen(type))
                        .filter(type -> INSIDE.stream().noneMatch(type.getPackageName()::endsWith)
                                && TOOLS.stream().noneMatch(type.getPackageName()::endsWith))
                        .filter(type -> !type.isAssignableTo(Measurement.class) && !type.isAssignableTo(Dryer.class))
                        .map(type -> type.getName().substring(ROOT.length())))
                .containsExactlyInAnyOrder(
                        "cost.PostageTable$Rate",
                        "cost.PostageTable$Surcharge",
                        "evidence.Assumption$Lean",
                        "colour.ColourDrawing$Pair",
                        "colour.Lab",
                        "colour.Srgb",
                        "colour.Xyz",
                        "evidence.Code",
                        "drying.Dryer$Layer",
                        "drying.DryingModel$Batch",
                        "drying.DryingModel$Ready",
                        "drying.Ventilation",
                        "drying.WaterBudget",
                        "evidence.Bands$Use",
                        "evidence.Estimate$Driver",
                        "evidence.WithNotices",
                        "evidence.Source",
                        "mould.Opening",
                        "order.Piece$Sample",
                        "order.StuffOnHand",
                        "press.Felts",
                        "press.Lever",
                        "press.Press$Part",
                        "press.Vacuum",
                        "pulp.AdditiveDose",
                        "pulp.AdditiveSolution",
                        "pulp.BeatingRecord$Point",
                        "pulp.RollLowering",
                        "pulp.RollLowering$Step",
                        "pulp.SpoonMeasure",
                        "pulp.TimedSheet",
                        "quantity.Unclear$Candidate",
                        "record.CalibratingDay$DriedSheet",
                        "record.CalibratingDay$Sample",
                        "record.HandComparison$Hand",
                        "record.SheetQuality$Summary",
                        "schedule.Resource",
                        "shape.Outline$Point",
                        "sheet.Restraint",
                        "sheet.ShrinkageModel$Strip",
                        "sheet.SurfaceSize",
                        "vat.VatReading$OfSheet",
                        "vat.VatReading$OfVat",
                        "vat.VatReading$OfWhiteWater",
                        "whatif.Job");
    }

    private static boolean isOpen(JavaClass type) {
        return type.getModifiers().contains(JavaModifier.PUBLIC)
                && type.getEnclosingClass().map(ArchitectureTest::isOpen).orElse(true);
    }

    @Test
    void noPackageStandsOutsideTheOrder() {
        assertThat(LIBRARY.stream()
                        .filter(type -> !type.getSimpleName().equals("module-info"))
                        .map(type -> type.getPackageName())
                        .distinct())
                .allSatisfy(name -> assertThat(TOOLS.contains(name.substring(ROOT.length()))
                                || ORDER.contains(name.substring(ROOT.length())))
                        .as(name)
                        .isTrue());
    }

    @Test
    void toolsAndEquationsUseNothingOfTheLibrary() {
        List<String> allowed = new ArrayList<>(
                List.of("java.lang..", "java.math..", "java.util..", "org.apache.commons.numbers..", "org.jspecify.."));
        for (String name : TOOLS) {
            allowed.add(ROOT + name + "..");
            classes()
                    .that()
                    .resideInAPackage(ROOT + name + "..")
                    .should()
                    .onlyDependOnClassesThat()
                    .resideInAnyPackage(allowed.toArray(String[]::new))
                    .check(LIBRARY);
        }
    }

    @Test
    void toolsAndEquationsAreNotExported() {
        ModuleDescriptor descriptor =
                ModuleFinder.of(home()).find("org.papermath.core").orElseThrow().descriptor();
        assertThat(descriptor.exports()).allSatisfy(export -> {
            assertThat(export.isQualified()).as(export.source()).isFalse();
            assertThat(ORDER).contains(export.source().substring(ROOT.length()));
        });
        assertThat(descriptor.packages())
                .containsAll(TOOLS.stream().map(name -> ROOT + name).toList());
        assertThat(descriptor.opens()).isEmpty();
        assertThat(descriptor.uses()).isEmpty();
        assertThat(descriptor.provides()).isEmpty();
        assertThat(descriptor.exports().stream().map(export -> export.source().substring(ROOT.length())))
                .doesNotContainAnyElementsOf(INSIDE);
        for (String name : ORDER.stream().filter(name -> !INSIDE.contains(name)).toList()) {
            Optional<JavaClass> open = LIBRARY.stream()
                    .filter(type -> type.getPackageName().equals(ROOT + name)
                            && type.getModifiers().contains(JavaModifier.PUBLIC))
                    .findAny();
            assertThat(descriptor.exports().stream()
                            .anyMatch(export -> export.source().equals(ROOT + name)))
                    .as("%s is exported if it has a public type", name)
                    .isEqualTo(open.isPresent());
        }
    }

    @Test
    void onlyTheUnitsAndSmallNumericsAreRequired() {
        ModuleDescriptor descriptor =
                ModuleFinder.of(home()).find("org.papermath.core").orElseThrow().descriptor();
        assertThat(descriptor.requires().stream()
                        .filter(require -> !require.modifiers().contains(ModuleDescriptor.Requires.Modifier.STATIC))
                        .map(ModuleDescriptor.Requires::name))
                .isSubsetOf(
                        "java.base",
                        "java.measure",
                        "tech.units.indriya",
                        "org.apache.commons.numbers.rootfinder",
                        "org.apache.commons.statistics.distribution");
    }

    @Test
    void publicTypesCannotBeExtendedByOthers() {
        classes()
                .that()
                .arePublic()
                .and()
                .resideOutsideOfPackage(ROOT + "equation..")
                .should(beClosed())
                .check(LIBRARY);
    }

    private static ArchCondition<JavaClass> beClosed() {
        return new ArchCondition<>("be final, a record, an enum, an interface or sealed") {
            @Override
            public void check(JavaClass type, ConditionEvents events) {
                boolean closed = type.isInterface()
                        || type.isEnum()
                        || type.getModifiers().contains(JavaModifier.FINAL)
                        || type.reflect().isSealed();
                events.add(new SimpleConditionEvent(type, closed, type.getName() + " can be extended"));
            }
        };
    }

    @Test
    void resultsOfThePlanAreNoRecordsToTheirUsers() {
        noClasses()
                .that()
                .resideInAnyPackage(ROOT + "plan..", ROOT + "card..")
                .and()
                .arePublic()
                .should()
                .beRecords()
                .because("a public record cannot hide its constructor, and one more component breaks its callers")
                .check(LIBRARY);
        classes()
                .that()
                .resideInAPackage(ROOT + "plan..")
                .and()
                .arePublic()
                .and()
                .areInterfaces()
                .should(beSealed())
                .check(LIBRARY);
    }

    private static ArchCondition<JavaClass> beSealed() {
        return new ArchCondition<>("be sealed, so that an accessor can be added") {
            @Override
            public void check(JavaClass type, ConditionEvents events) {
                events.add(new SimpleConditionEvent(type, type.reflect().isSealed(), type.getName() + " is open"));
            }
        };
    }

    @Test
    void publicTypesSayWhatTheyAre() {
        classes()
                .that()
                .arePublic()
                .and()
                .resideOutsideOfPackages(hidden())
                .should(declareToString())
                .check(LIBRARY);
    }

    private static String[] hidden() {
        return Stream.concat(TOOLS.stream(), INSIDE.stream())
                .map(name -> ROOT + name + "..")
                .toArray(String[]::new);
    }

    private static ArchCondition<JavaClass> declareToString() {
        return new ArchCondition<>("have a toString for people, if there are objects of them") {
            @Override
            public void check(JavaClass type, ConditionEvents events) {
                boolean noObjects = type.isInterface()
                        || type.isEnum()
                        || type.isAssignableTo(Throwable.class)
                        || type.getMethods().stream()
                                .allMatch(m -> m.getModifiers().contains(JavaModifier.STATIC));
                boolean says = type.getMethods().stream()
                        .anyMatch(m -> m.getName().equals("toString")
                                && m.getRawParameterTypes().isEmpty());
                events.add(new SimpleConditionEvent(type, noObjects || says, type.getName() + " has no toString"));
            }
        };
    }

    @Test
    void fieldsAreFinal() {
        fields().that().areStatic().should().beFinal().check(LIBRARY);
        fields().that()
                .areDeclaredInClassesThat(DescribedPredicate.describe(
                        "are public and no builders",
                        type -> type.getModifiers().contains(JavaModifier.PUBLIC)
                                && !type.getSimpleName().equals("Builder")))
                .should()
                .beFinal()
                .check(LIBRARY);
    }

    @Test
    void nothingIsLoggedOrPrinted() {
        noClasses()
                .should()
                .accessField(System.class, "out")
                .orShould()
                .accessField(System.class, "err")
                .orShould()
                .accessField(System.class, "in")
                .orShould()
                .dependOnClassesThat()
                .resideInAnyPackage("java.util.logging..")
                .orShould()
                .callMethod(Throwable.class, "printStackTrace")
                .check(LIBRARY);
    }

    @Test
    void noDefaultLocaleIsRead() {
        noClasses()
                .should()
                .callMethod(Locale.class, "getDefault")
                .orShould()
                .callMethod(Locale.class, "getDefault", Locale.Category.class)
                .orShould()
                .callMethod(String.class, "format", String.class, Object[].class)
                .orShould()
                .callMethod(String.class, "formatted", Object[].class)
                .orShould()
                .callMethod(String.class, "toLowerCase")
                .orShould()
                .callMethod(String.class, "toUpperCase")
                .orShould()
                .dependOnClassesThat()
                .resideInAPackage("java.text..")
                .orShould()
                .dependOnClassesThat()
                .areAssignableTo(java.util.Scanner.class)
                .check(LIBRARY);
    }

    @Test
    void noClockOrTimeZoneIsRead() {
        noClasses()
                .should()
                .callMethod(System.class, "currentTimeMillis")
                .orShould()
                .callMethod(System.class, "nanoTime")
                .orShould()
                .callMethod(LocalDate.class, "now")
                .orShould()
                .callMethod(LocalDateTime.class, "now")
                .orShould()
                .callMethod(LocalTime.class, "now")
                .orShould()
                .callMethod(ZonedDateTime.class, "now")
                .orShould()
                .callMethod(Instant.class, "now")
                .orShould()
                .callMethod(ZoneId.class, "systemDefault")
                .orShould()
                .callMethod(TimeZone.class, "getDefault")
                .orShould()
                .dependOnClassesThat()
                .areAssignableTo(Clock.class)
                .orShould()
                .dependOnClassesThat()
                .areAssignableTo(java.util.Date.class)
                .check(LIBRARY);
    }

    @Test
    void noFilesNetworkReflectionOrUnseededChance() {
        noClasses()
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage(
                        "java.nio.file..", "java.net..", "java.lang.reflect..", "java.security..", "java.util.prefs..")
                .orShould()
                .dependOnClassesThat()
                .areAssignableTo(java.io.File.class)
                .orShould()
                .dependOnClassesThat()
                .areAssignableTo(ServiceLoader.class)
                .orShould()
                .callMethod(Math.class, "random")
                .orShould()
                .callConstructor(java.util.Random.class)
                .orShould()
                .callMethod(System.class, "getenv", String.class)
                .orShould()
                .callMethod(System.class, "getProperty", String.class)
                .check(LIBRARY);
    }
}
