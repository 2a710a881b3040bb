package org.papermath.examples;

import java.io.InputStream;
import java.io.OutputStream;
import java.lang.reflect.Array;
import java.lang.reflect.Constructor;
import java.lang.reflect.Executable;
import java.lang.reflect.Field;
import java.lang.reflect.GenericArrayType;
import java.lang.reflect.Method;
import java.lang.reflect.Modifier;
import java.lang.reflect.ParameterizedType;
import java.lang.reflect.Proxy;
import java.lang.reflect.Type;
import java.lang.reflect.TypeVariable;
import java.lang.reflect.WildcardType;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import javax.measure.Quantity;
import javax.measure.Unit;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kind;
import org.papermath.quantity.Kinds;

/** Something of every type that the public methods of some types take, made with those same methods. */
final class Samples {
    private static final double[] TRIED = {1, 0.5, 0.1, 10, 100, 300, 1000, 1e-3, 1e-6};

    private final List<Class<?>> types;
    private final Map<Class<?>, Object> added = new HashMap<>();
    private final Map<String, Object> made = new HashMap<>();
    private final Set<String> open = new HashSet<>();

    Samples(List<Class<?>> types) {
        this.types = types;
    }

    /** Takes something that the types do not lead to by themselves. */
    void add(Object one) {
        added.put(one.getClass(), one);
    }

    /** Something of a type; nothing where none can be made. */
    Optional<Object> of(Type type) {
        if (type instanceof TypeVariable<?> variable) {
            Type bound = variable.getBounds()[0];
            return bound instanceof ParameterizedType ? of(Quantity.class) : of(bound);
        }
        if (type instanceof WildcardType wildcard) {
            Type[] lower = wildcard.getLowerBounds();
            return of(lower.length > 0 ? lower[0] : wildcard.getUpperBounds()[0]);
        }
        if (type instanceof GenericArrayType array) {
            return of(array.getGenericComponentType()).map(one -> array(raw(array.getGenericComponentType()), one));
        }
        if (added.containsKey(raw(type))) {
            return Optional.of(added.get(raw(type)));
        }
        Object plain = plain(raw(type));
        if (plain != null) {
            return Optional.of(plain);
        }
        String name = type.getTypeName();
        if (made.containsKey(name)) {
            return Optional.of(made.get(name));
        }
        if (!open.add(name)) {
            return Optional.empty();
        }
        Optional<Object> one = make(type);
        open.remove(name);
        one.ifPresent(it -> made.put(name, it));
        return one;
    }

    private static Object array(Class<?> component, Object one) {
        Object array = Array.newInstance(component, 1);
        Array.set(array, 0, one);
        return array;
    }

    private static Object plain(Class<?> type) {
        if (type == boolean.class) {
            return true;
        } else if (type == int.class || type == Integer.class) {
            return 1;
        } else if (type == long.class) {
            return 1L;
        } else if (type == double.class || type == Double.class || type == Number.class) {
            return 1.0;
        } else if (type == byte[].class) {
            return new byte[] {'{', '}'};
        } else if (type == String.class || type == CharSequence.class || type == Object.class) {
            return "one";
        } else if (type == LocalDate.class) {
            return LocalDate.of(2026, 11, 2);
        } else if (type == LocalDateTime.class) {
            return LocalDateTime.of(2026, 11, 2, 9, 0);
        } else if (type == LocalTime.class) {
            return LocalTime.of(9, 0);
        } else if (type == Duration.class) {
            return Duration.ofHours(2);
        } else if (type == Instant.class) {
            return Instant.EPOCH;
        } else if (type == StringBuilder.class) {
            return new StringBuilder();
        } else if (type == InputStream.class) {
            return InputStream.nullInputStream();
        } else if (type == OutputStream.class) {
            return OutputStream.nullOutputStream();
        } else if (type == Path.class) {
            return Path.of("target", "one");
        }
        return type.isEnum() ? type.getEnumConstants()[0] : null;
    }

    private Optional<Object> make(Type type) {
        Class<?> raw = raw(type);
        if (raw == Kind.class) {
            return Optional.of(kind(argument(type, 0)));
        } else if (raw == Amount.class || raw == Quantity.class || Quantity.class.isAssignableFrom(raw)) {
            return amount(kind(argument(type, 0)));
        } else if (raw == Unit.class) {
            return Optional.of(kind(argument(type, 0)).siUnit());
        } else if (raw == Optional.class) {
            return of(argument(type, 0)).map(Optional::of);
        } else if (raw == Map.class) {
            return of(argument(type, 0)).flatMap(key -> of(argument(type, 1)).map(value -> Map.of(key, value)));
        } else if (raw == Set.class) {
            return of(argument(type, 0)).map(Set::of);
        } else if (raw.isAssignableFrom(List.class)) {
            return of(argument(type, 0)).map(List::of);
        } else if (raw.isArray()) {
            return of(raw.getComponentType()).map(one -> array(raw.getComponentType(), one));
        }
        Optional<Object> offered = offered(raw);
        if (offered.isEmpty() && raw.isInterface() && !raw.isSealed()) {
            return Optional.of(Proxy.newProxyInstance(
                    Samples.class.getClassLoader(), new Class<?>[] {raw}, (self, method, arguments) -> null));
        }
        return offered;
    }

    /** A constant, or what a static method or the last method of a builder gives. */
    private Optional<Object> offered(Class<?> wanted) {
        for (Class<?> type : types) {
            for (Field field : type.getDeclaredFields()) {
                if (Modifier.isPublic(field.getModifiers())
                        && Modifier.isStatic(field.getModifiers())
                        && wanted.isAssignableFrom(field.getType())) {
                    try {
                        return Optional.of(field.get(null));
                    } catch (ReflectiveOperationException refused) {
                        throw new AssertionError(refused);
                    }
                }
            }
        }
        for (boolean wholly : new boolean[] {true, false}) {
            for (Class<?> type : types) {
                for (Executable door : doors(type, wholly)) {
                    if (wanted.isAssignableFrom(given(door))) {
                        Optional<Object> one = called(door);
                        if (one.isPresent()) {
                            return one;
                        }
                    }
                }
            }
        }
        return Optional.empty();
    }

    /** What makes something of its own: static methods and the last of a builder; or else records and all the rest. */
    private static List<Executable> doors(Class<?> type, boolean wholly) {
        List<Executable> doors = new ArrayList<>();
        for (Method method : type.getDeclaredMethods()) {
            boolean whole =
                    Modifier.isStatic(method.getModifiers()) || method.getName().equals("build");
            if (Modifier.isPublic(method.getModifiers()) && whole == wholly) {
                doors.add(method);
            }
        }
        if (!wholly) {
            doors.addAll(List.of(type.getConstructors()));
        }
        doors.sort(Comparator.comparing(Executable::toGenericString));
        return doors;
    }

    private static Class<?> given(Executable door) {
        return door instanceof Method method ? method.getReturnType() : door.getDeclaringClass();
    }

    private Optional<Object> called(Executable door) {
        Object on = null;
        if (door instanceof Method && !Modifier.isStatic(door.getModifiers())) {
            on = of(door.getDeclaringClass()).orElse(null);
            if (on == null) {
                return Optional.empty();
            }
        }
        List<Object> arguments = new ArrayList<>();
        for (Type parameter : door.getGenericParameterTypes()) {
            Optional<Object> argument = of(parameter);
            if (argument.isEmpty()) {
                return Optional.empty();
            }
            arguments.add(argument.get());
        }
        try {
            return Optional.ofNullable(
                    door instanceof Constructor<?> constructor
                            ? constructor.newInstance(arguments.toArray())
                            : ((Method) door).invoke(on, arguments.toArray()));
        } catch (ReflectiveOperationException | IllegalArgumentException refused) {
            return Optional.empty();
        }
    }

    private static <Q extends Quantity<Q>> Optional<Object> amount(Kind<Q> kind) {
        for (double si : TRIED) {
            if (kind.holds(si)) {
                return Optional.of(kind.ofSi(si));
            }
        }
        return Optional.empty();
    }

    private static Kind<?> kind(Type quantity) {
        for (Field field : Kinds.class.getDeclaredFields()) {
            if (field.getGenericType() instanceof ParameterizedType kind
                    && kind.getRawType() == Kind.class
                    && kind.getActualTypeArguments()[0].equals(quantity)) {
                try {
                    return (Kind<?>) field.get(null);
                } catch (ReflectiveOperationException refused) {
                    throw new AssertionError(refused);
                }
            }
        }
        return Kinds.LENGTH;
    }

    private static Type argument(Type type, int at) {
        return type instanceof ParameterizedType generic ? generic.getActualTypeArguments()[at] : Object.class;
    }

    private static Class<?> raw(Type type) {
        if (type instanceof ParameterizedType generic) {
            return (Class<?>) generic.getRawType();
        }
        if (type instanceof TypeVariable<?> variable) {
            return raw(variable.getBounds()[0]);
        }
        return (Class<?>) type;
    }
}
