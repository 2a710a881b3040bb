package org.papermath.examples;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.lang.module.ModuleDescriptor;
import java.lang.module.ModuleFinder;
import java.lang.module.ModuleReader;
import java.lang.module.ModuleReference;
import java.lang.reflect.Constructor;
import java.lang.reflect.Executable;
import java.lang.reflect.Field;
import java.lang.reflect.GenericDeclaration;
import java.lang.reflect.Method;
import java.lang.reflect.Modifier;
import java.lang.reflect.Type;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.papermath.json.PapermathDocuments;
import org.papermath.plan.MakingPlan;

/**
 * What the published modules offer is what their lists say, one line for each public or protected member of an exported
 * package, so that nothing is added, changed or taken away unseen. {@code -Dapi.write=true} writes the lists anew.
 */
class PublicMembersTest {
    private static final Pattern PACKAGE = Pattern.compile("\\b(?:[a-z]\\w*\\.)+(?=[A-Z])");

    /** What every object has, whether it is written there or not. */
    private static final Set<String> EVERY = Set.of("equals", "hashCode", "toString");

    private record Published(String module, Class<?> one) {
        @Override
        public String toString() {
            return module;
        }
    }

    static Stream<Published> modules() {
        return Stream.of(
                new Published("papermath-core", MakingPlan.class),
                new Published("papermath-json", PapermathDocuments.class));
    }

    @ParameterizedTest
    @MethodSource("modules")
    void areThoseOfTheList(Published published) throws Exception {
        TreeSet<String> found = new TreeSet<>();
        for (Class<?> type : exportedTypes(published.one())) {
            found.addAll(members(type));
        }
        Path list = Pages.file(published.module() + "/src/test/resources/api/public-members.txt");
        if (Boolean.getBoolean("api.write")) {
            Files.createDirectories(list.getParent());
            Files.writeString(list, String.join("\n", found) + "\n");
        }
        List<String> listed = Files.readAllLines(list);
        List<String> changes = new ArrayList<>();
        listed.stream().filter(line -> !found.contains(line)).forEach(line -> changes.add("- " + line));
        found.stream().filter(line -> !listed.contains(line)).forEach(line -> changes.add("+ " + line));
        assertThat(changes)
                .as("added (+) and gone (-); -Dapi.write=true takes them into the list")
                .isEmpty();
        assertThat(listed).as("the order of the list").containsExactlyElementsOf(found);
    }

    /** The public and protected types of the exported packages of the module a class is from, by name. */
    static List<Class<?>> exportedTypes(Class<?> one) throws IOException, URISyntaxException, ClassNotFoundException {
        Path home =
                Path.of(one.getProtectionDomain().getCodeSource().getLocation().toURI());
        ModuleReference module = ModuleFinder.of(home).findAll().iterator().next();
        List<String> exported = module.descriptor().exports().stream()
                .map(ModuleDescriptor.Exports::source)
                .toList();
        List<String> names;
        try (ModuleReader reader = module.open();
                Stream<String> files = reader.list()) {
            names = files.filter(file -> file.endsWith(".class") && file.contains("/"))
                    .map(file ->
                            file.substring(0, file.length() - ".class".length()).replace('/', '.'))
                    .filter(name -> exported.contains(name.substring(0, name.lastIndexOf('.'))))
                    .sorted()
                    .toList();
        }
        List<Class<?>> types = new ArrayList<>();
        for (String name : names) {
            Class<?> type = Class.forName(name, false, one.getClassLoader());
            if (isOffered(type) && !type.isSynthetic() && !name.endsWith("package-info")) {
                types.add(type);
            }
        }
        return types;
    }

    private static boolean isOffered(Class<?> type) {
        if (type.isAnonymousClass() || type.isLocalClass() || !isOffered(type.getModifiers())) {
            return false;
        }
        return type.getDeclaringClass() == null || isOffered(type.getDeclaringClass());
    }

    private static boolean isOffered(int modifiers) {
        return Modifier.isPublic(modifiers) || Modifier.isProtected(modifiers);
    }

    private static List<String> members(Class<?> type) {
        List<String> lines = new ArrayList<>();
        String name = type.getCanonicalName();
        lines.add(name + ": " + head(type) + above(type));
        for (Field field : type.getDeclaredFields()) {
            if (isOffered(field.getModifiers()) && !field.isSynthetic()) {
                lines.add(name + "." + field.getName() + ": " + modifiers(field.getModifiers())
                        + shown(field.getGenericType()));
            }
        }
        for (Constructor<?> constructor : type.getDeclaredConstructors()) {
            if (isOffered(constructor.getModifiers()) && !constructor.isSynthetic()) {
                lines.add(name + ".new" + parameters(constructor) + ": "
                        + modifiers(constructor.getModifiers()).strip() + thrown(constructor));
            }
        }
        // What a class has from one that is not offered itself counts as its own.
        for (Class<?> from = type; from != null && (from == type || !isOffered(from)); from = from.getSuperclass()) {
            for (Method method : from.getDeclaredMethods()) {
                if (isOffered(method.getModifiers()) && !method.isSynthetic() && !isOfEvery(type, method)) {
                    lines.add(name + "." + method.getName() + parameters(method) + ": "
                            + modifiers(method.getModifiers()) + (method.isDefault() ? "default " : "")
                            + typeParameters(method) + shown(method.getGenericReturnType()) + thrown(method));
                }
            }
        }
        return lines;
    }

    private static boolean isOfEvery(Class<?> type, Method method) {
        return EVERY.contains(method.getName())
                || type.isEnum()
                        && (method.getName().equals("values")
                                || method.getName().equals("valueOf"));
    }

    /** Written out here, for not every JDK says of a type that it is sealed. */
    private static String head(Class<?> type) {
        String sort =
                type.isInterface() ? "interface " : type.isRecord() ? "record " : type.isEnum() ? "enum " : "class ";
        int shown = type.getModifiers() & ~(type.isInterface() ? Modifier.ABSTRACT : 0);
        return modifiers(shown)
                + (type.isSealed() ? "sealed " : "")
                + sort
                + type.getSimpleName()
                + typeParameters(type).strip();
    }

    private static String above(Class<?> type) {
        List<Type> above = new ArrayList<>();
        if (type.getSuperclass() != null
                && !type.isRecord()
                && !type.isEnum()
                && type.getSuperclass() != Object.class) {
            above.add(type.getGenericSuperclass());
        }
        above.addAll(Arrays.asList(type.getGenericInterfaces()));
        return above.isEmpty()
                ? ""
                : " of " + above.stream().map(PublicMembersTest::shown).sorted().collect(Collectors.joining(", "));
    }

    private static String modifiers(int modifiers) {
        int shown = modifiers
                & (Modifier.PUBLIC | Modifier.PROTECTED | Modifier.STATIC | Modifier.FINAL | Modifier.ABSTRACT);
        return Modifier.toString(shown) + " ";
    }

    private static String parameters(Executable member) {
        String all = Arrays.stream(member.getGenericParameterTypes())
                .map(PublicMembersTest::shown)
                .collect(Collectors.joining(", ", "(", ")"));
        return member.isVarArgs() ? all.replaceFirst("\\[]\\)$", "...)") : all;
    }

    private static String typeParameters(GenericDeclaration member) {
        return member.getTypeParameters().length == 0
                ? ""
                : Arrays.stream(member.getTypeParameters())
                        .map(one -> one.getName()
                                + Arrays.stream(one.getBounds())
                                        .filter(bound -> bound != Object.class)
                                        .map(PublicMembersTest::shown)
                                        .collect(Collectors.joining(" & ", " extends ", ""))
                                        .replaceFirst(" extends $", ""))
                        .collect(Collectors.joining(", ", "<", "> "));
    }

    private static String thrown(Executable member) {
        return member.getGenericExceptionTypes().length == 0
                ? ""
                : Arrays.stream(member.getGenericExceptionTypes())
                        .map(PublicMembersTest::shown)
                        .sorted()
                        .collect(Collectors.joining(", ", " throws ", ""));
    }

    private static String shown(Type type) {
        return PACKAGE.matcher(type.getTypeName()).replaceAll("").replace('$', '.');
    }
}
