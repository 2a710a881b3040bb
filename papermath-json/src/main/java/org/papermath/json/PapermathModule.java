package org.papermath.json;

import java.util.List;
import java.util.function.BiConsumer;
import java.util.function.Function;

import javax.measure.Quantity;

import org.jspecify.annotations.Nullable;
import org.papermath.air.Air;
import org.papermath.evidence.Reading;
import org.papermath.fibre.Fibre;
import org.papermath.fibre.Furnish;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kind;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.PapermathException;
import org.papermath.quantity.ReamBasis;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Units;
import org.papermath.shape.Format;

import com.fasterxml.jackson.annotation.JsonFormat;

import tools.jackson.core.JsonGenerator;
import tools.jackson.core.JsonParser;
import tools.jackson.core.JsonToken;
import tools.jackson.core.ObjectReadContext;
import tools.jackson.core.Version;
import tools.jackson.core.json.JsonFactory;
import tools.jackson.databind.BeanDescription;
import tools.jackson.databind.DeserializationConfig;
import tools.jackson.databind.DeserializationContext;
import tools.jackson.databind.JavaType;
import tools.jackson.databind.SerializationConfig;
import tools.jackson.databind.SerializationContext;
import tools.jackson.databind.ValueDeserializer;
import tools.jackson.databind.ValueSerializer;
import tools.jackson.databind.deser.Deserializers;
import tools.jackson.databind.exc.InvalidFormatException;
import tools.jackson.databind.module.SimpleModule;
import tools.jackson.databind.ser.Serializers;

/**
 * Teaches Jackson the quantities of the library, for documents of one's own. Fails at the first fault.
 *
 * <pre>{@code
 * record Swatch(String name, Amount<Grammage> grammage, Amount<Length> side) {
 * }
 *
 * JsonMapper mapper = JsonMapper.builder().addModule(new PapermathModule()).build();
 * String text = mapper.writeValueAsString(new Swatch("tide grey", Grammage.gsm(260), Amounts.mm(105)));
 * out.println(text); // {"name":"tide grey","grammage":"260 g/m2","side":"105 mm"}
 * Swatch swatch = mapper.readValue(text.replace("105 mm", "4.5 in"), Swatch.class);
 * out.println(swatch.side().to("mm")); // 114.3 mm
 * }</pre>
 *
 * <p>An {@code Amount<Q>} or {@code Quantity<Q>} is written as {@code "260 g/m2"} and read from that, from
 * {@code {"value": 260, "unit": "g/m2"}}, and for a grammage from the weight of a ream. The kind is found by the
 * declared type {@code Q}; a plain {@code Pressure} is the pressure of air. A {@code Reading<Q>}, {@code Air},
 * {@code Fibre}, {@code Furnish}, {@code Format} and {@code ReamBasis} are written and read as in the documents of the
 * library. The exception for a bad quantity has the
 * {@link PapermathException} or the {@link DocumentException} as its cause.
 */
public final class PapermathModule extends SimpleModule {
    private static final long serialVersionUID = 1L;
    private static final JsonFactory TOKENS = new JsonFactory();

    /** Creates the module. */
    public PapermathModule() {
        super("papermath", Version.unknownVersion());
        add(ReamBasis.class, ValueAt::reamBasis, ValueOut::reamBasis);
        add(Air.class, at -> at.object(AirMapping::read), (out, air) -> out.object(in -> AirMapping.write(in, air)));
        add(Fibre.class, FibreMapping::read, FibreMapping::write);
        add(Furnish.class, RecipeMapping::furnish, RecipeMapping::furnish);
        add(Format.class, PieceMapping::format, PieceMapping::format);
    }

    private <T> void add(Class<T> type, Function<ValueAt, Got<T>> reading, BiConsumer<ValueOut, T> writing) {
        addSerializer(type, new SmallSerializer<>(writing));
        addDeserializer(type, new SmallDeserializer<>(type, reading));
    }

    @Override
    public void setupModule(SetupContext context) {
        super.setupModule(context);
        context.addSerializers(new QuantitySerializers());
        context.addDeserializers(new QuantityDeserializers());
    }

    private static @Nullable Kind<?> kindOf(JavaType type) {
        JavaType[] parameters = type.findTypeParameters(type.isTypeOrSubTypeOf(Reading.class) ? Reading.class
                : Quantity.class);
        if (parameters.length == 1) {
            for (Kind<?> kind : Kinds.all()) {
                if (kind.type() == parameters[0].getRawClass()) {
                    return kind;
                }
            }
        }
        return null;
    }

    private static final class QuantitySerializers extends Serializers.Base {
        @Override
        public @Nullable ValueSerializer<?> findSerializer(SerializationConfig config, JavaType type,
                BeanDescription.Supplier description, JsonFormat.@Nullable Value format) {
            return type.isTypeOrSubTypeOf(Quantity.class) ? new QuantitySerializer(kindOf(type))
                    : type.isTypeOrSubTypeOf(Reading.class)
                    ? new SmallSerializer<Reading<?>>(PapermathModule::writeReading) : null;
        }
    }

    private static final class QuantityDeserializers extends Deserializers.Base {
        @Override
        public @Nullable ValueDeserializer<?> findBeanDeserializer(JavaType type, DeserializationConfig config,
                BeanDescription.Supplier description) {
            return type.getRawClass() == Reading.class ? readingDeserializer(kindOf(type))
                    : hasDeserializerFor(config, type.getRawClass()) ? new QuantityDeserializer(type, kindOf(type))
                    : null;
        }

        @Override
        public boolean hasDeserializerFor(DeserializationConfig config, Class<?> type) {
            return type == Quantity.class || type == Amount.class || type == Reading.class;
        }
    }

    private static final class QuantitySerializer extends ValueSerializer<Quantity<?>> {
        private final @Nullable Kind<?> kind;

        QuantitySerializer(@Nullable Kind<?> kind) {
            this.kind = kind;
        }

        @Override
        public void serialize(Quantity<?> value, JsonGenerator out, SerializationContext context) {
            try {
                out.writeString(Units.print(amount(value)));
            } catch (PapermathException e) {
                context.reportBadDefinition(value.getClass(), String.valueOf(e.getMessage()), e);
            }
        }

        private Amount<?> amount(Quantity<?> value) {
            if (kind != null) {
                return check(kind, value);
            }
            if (value instanceof Amount<?> amount) {
                return amount;
            }
            throw Refused.of("quantity.kind-unknown", "quantity: " + value
                    + " does not say its kind. Declare the member with its quantity type, such as Quantity<Grammage>,"
                    + " or give an Amount.", "given", String.valueOf(value));
        }

        @SuppressWarnings("unchecked")
        private static <Q extends Quantity<Q>> Amount<?> check(Kind<Q> kind, Quantity<?> value) {
            return kind.check((Quantity<Q>) value, kind.name());
        }
    }

    private static final class QuantityDeserializer extends ValueDeserializer<Amount<?>> {
        private final JavaType type;
        private final @Nullable Kind<?> kind;

        QuantityDeserializer(JavaType type, @Nullable Kind<?> kind) {
            this.type = type;
            this.kind = kind;
        }

        @Override
        public Amount<?> deserialize(JsonParser parser, DeserializationContext context) {
            Kind<?> known = kind;
            if (known == null) {
                return context.reportBadDefinition(type,
                        "the kind of quantity is not known; declare the type with one, such as Amount<Grammage>");
            }
            if (parser.currentToken() == JsonToken.VALUE_STRING) {
                String text = parser.getString();
                try {
                    Amount<?> amount = known.read(text);
                    // A text too long, or a number too small to be held, is a fault here too.
                    return text.length() > ValueAt.MOST_QUANTITY || amount.value() == 0
                            ? readHere(parser, type.getRawClass(), at -> quantity(at, known)) : amount;
                } catch (PapermathException e) {
                    throw InvalidFormatException.from(parser, String.valueOf(e.getMessage()), text, type.getRawClass())
                            .withCause(e);
                }
            }
            return readHere(parser, type.getRawClass(), at -> quantity(at, known));
        }

        private static <Q extends Quantity<Q>> Got<Amount<?>> quantity(ValueAt at, Kind<Q> kind) {
            return at.quantity(kind).map(amount -> amount);
        }
    }

    private static void writeReading(ValueOut out, Reading<?> reading) {
        ReadingMapping.write(out, reading);
    }

    private static ValueDeserializer<?> readingDeserializer(@Nullable Kind<?> kind) {
        return new SmallDeserializer<Reading<?>>(Reading.class, at -> {
            if (kind == null) {
                throw Refused.of("quantity.kind-unknown",
                        "the kind of the reading is not known; declare the type with one, such as Reading<Mass>");
            }
            return reading(at, kind);
        });
    }

    private static <Q extends Quantity<Q>> Got<Reading<?>> reading(ValueAt at, Kind<Q> kind) {
        return ReadingMapping.read(at, kind).map(reading -> reading);
    }

    /** Writes a value as documents do. */
    private static final class SmallSerializer<T> extends ValueSerializer<T> {
        private final BiConsumer<ValueOut, T> writing;

        SmallSerializer(BiConsumer<ValueOut, T> writing) {
            this.writing = writing;
        }

        @Override
        public void serialize(T value, JsonGenerator out, SerializationContext context) {
            StringBuilder text = new StringBuilder();
            try {
                writing.accept(new ValueOut(text, new Kept(), ValueOut.ONE_LINE, ""), value);
            } catch (PapermathException e) {
                context.reportBadDefinition(value.getClass(), String.valueOf(e.getMessage()), e);
            }
            try (JsonParser parser = TOKENS.createParser(ObjectReadContext.empty(), text.toString())) {
                parser.nextToken();
                out.copyCurrentStructure(parser);
            }
        }
    }

    /** Reads a value as documents do; what others wrote in it could not be kept, so it is refused. */
    private static final class SmallDeserializer<T> extends ValueDeserializer<T> {
        private final Class<?> type;
        private final Function<ValueAt, Got<T>> reading;

        SmallDeserializer(Class<?> type, Function<ValueAt, Got<T>> reading) {
            this.type = type;
            this.reading = reading;
        }

        @Override
        public T deserialize(JsonParser parser, DeserializationContext context) {
            return readHere(parser, type, reading);
        }
    }

    /** Reads the value the parser stands at by the rules of whole documents. */
    private static <T> T readHere(JsonParser parser, Class<?> type, Function<ValueAt, Got<T>> reading) {
        Session session = new Session();
        Source source = new Source("", session, reference -> {
            throw new IllegalStateException("a quantity has no references");
        }, 0);
        Got<T> got = JsonTree.readCurrent(parser, source).map(value -> {
            ValueAt at = ValueAt.of(source, value);
            Got<T> one = at.guarded(reading, at);
            source.kept().asJson().keySet().forEach(pointer -> at.refuse(FaultCodes.UNKNOWN, "\"" + pointer.substring(1)
                    + "\" cannot be kept here. Put it beside the value.", List.of()));
            return session.hasFaults() ? Got.<T>faulty(at) : one;
        }).orElse(null);
        if (got == null || got.isFaulty()) {
            DocumentException faults = session.exception();
            String text = faults.faults().stream().map(Fault::text).reduce((one, other) -> one + " " + other)
                    .orElse("");
            throw InvalidFormatException.from(parser, text, parser.currentToken(), type).withCause(faults);
        }
        return got.get();
    }
}
