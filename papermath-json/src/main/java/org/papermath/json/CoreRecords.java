package org.papermath.json;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonSetter;
import com.fasterxml.jackson.annotation.Nulls;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import tools.jackson.core.Version;
import tools.jackson.databind.PropertyName;
import tools.jackson.databind.cfg.MapperConfig;
import tools.jackson.databind.introspect.Annotated;
import tools.jackson.databind.introspect.AnnotatedClass;
import tools.jackson.databind.introspect.AnnotatedMember;
import tools.jackson.databind.introspect.AnnotatedMethod;
import tools.jackson.databind.introspect.AnnotatedParameter;
import tools.jackson.databind.introspect.NopAnnotationIntrospector;

/**
 * Holds mappers to the components of the records of the library: nothing beside them is written, and none may be left
 * out or be null when one is read. A result of a plan, an interface before a record, is written by the same components.
 */
final class CoreRecords extends NopAnnotationIntrospector {
    private static final long serialVersionUID = 1L;

    @Override
    public boolean hasIgnoreMarker(MapperConfig<?> config, AnnotatedMember member) {
        if (member instanceof AnnotatedMethod method && CoreTypes.isResult(method.getDeclaringClass())) {
            return !isMember(method);
        }
        // What a record states about itself by isReal() or the like is worked out of its components.
        return member instanceof AnnotatedMethod method
                && CoreTypes.isPlainRecord(method.getDeclaringClass())
                && (startsWith(method.getName(), "is") || startsWith(method.getName(), "get"));
    }

    @Override
    public @Nullable PropertyName findNameForSerialization(MapperConfig<?> config, Annotated member) {
        return member instanceof AnnotatedMethod method && isMember(method) ? PropertyName.USE_DEFAULT : null;
    }

    @Override
    public String @Nullable [] findSerializationPropertyOrder(MapperConfig<?> config, AnnotatedClass type) {
        List<String> members = CoreTypes.isResult(type.getRawType()) ? CoreTypes.members(type.getRawType()) : List.of();
        return members.isEmpty() ? null : members.toArray(String[]::new);
    }

    /** What a result has nothing of is left out. */
    @Override
    public JsonInclude.Value findPropertyInclusion(MapperConfig<?> config, Annotated member) {
        return member instanceof AnnotatedMethod method && isMember(method) && method.getRawType() == Optional.class
                ? JsonInclude.Value.construct(JsonInclude.Include.NON_ABSENT, JsonInclude.Include.ALWAYS)
                : JsonInclude.Value.empty();
    }

    private static boolean isMember(AnnotatedMethod method) {
        return method.getParameterCount() == 0
                && CoreTypes.isResult(method.getDeclaringClass())
                && CoreTypes.members(method.getDeclaringClass()).contains(method.getName());
    }

    private static boolean startsWith(String name, String prefix) {
        return name.startsWith(prefix)
                && name.length() > prefix.length()
                && Character.isUpperCase(name.charAt(prefix.length()));
    }

    @Override
    public @Nullable Boolean hasRequiredMarker(MapperConfig<?> config, AnnotatedMember member) {
        return isComponent(member) ? Boolean.TRUE : null;
    }

    @Override
    public JsonSetter.Value findSetterInfo(MapperConfig<?> config, Annotated member) {
        return isComponent(member) ? JsonSetter.Value.forValueNulls(Nulls.FAIL, Nulls.FAIL) : JsonSetter.Value.empty();
    }

    private static boolean isComponent(Annotated member) {
        return member instanceof AnnotatedParameter parameter
                && CoreTypes.isPlainRecord(parameter.getDeclaringClass())
                && parameter.getRawType() != Optional.class;
    }

    @Override
    public Version version() {
        return PapermathModule.VERSION;
    }
}
