package org.papermath.json;

import com.fasterxml.jackson.annotation.JsonFormat;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiConsumer;
import java.util.function.Function;
import javax.measure.Quantity;
import org.jspecify.annotations.Nullable;
import org.papermath.air.Air;
import org.papermath.cost.Margin;
import org.papermath.cost.Markup;
import org.papermath.cost.Money;
import org.papermath.drying.Dryer;
import org.papermath.evidence.Assumption;
import org.papermath.evidence.Estimate;
import org.papermath.evidence.Notice;
import org.papermath.evidence.Reading;
import org.papermath.evidence.Scope;
import org.papermath.fibre.Fibre;
import org.papermath.fibre.Furnish;
import org.papermath.format.Format;
import org.papermath.format.ReamBasis;
import org.papermath.json.kit.ObjectReader;
import org.papermath.json.kit.ObjectWriter;
import org.papermath.json.kit.ReadResult;
import org.papermath.json.kit.ValueReader;
import org.papermath.json.kit.ValueWriter;
import org.papermath.json.kit.WholeDocuments;
import org.papermath.json.mapping.AirMapping;
import org.papermath.json.mapping.EquipmentMapping;
import org.papermath.json.mapping.EvidenceMapping;
import org.papermath.json.mapping.FibreMapping;
import org.papermath.json.mapping.MeasurementMapping;
import org.papermath.json.mapping.Names;
import org.papermath.json.mapping.PieceMapping;
import org.papermath.json.mapping.ReadingMapping;
import org.papermath.json.mapping.RecipeMapping;
import org.papermath.json.tree.FaultLog;
import org.papermath.json.tree.JsonTree;
import org.papermath.json.tree.JsonValue;
import org.papermath.json.tree.NearestWord;
import org.papermath.json.tree.Source;
import org.papermath.mail.MailLimits;
import org.papermath.mould.Mould;
import org.papermath.plan.Stage;
import org.papermath.press.Felts;
import org.papermath.press.Press;
import org.papermath.pulp.Additive;
import org.papermath.pulp.Beater;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kind;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.PapermathException;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Units;
import org.papermath.record.Measurement;
import org.papermath.shape.Outline;
import org.papermath.vat.Vat;
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
import tools.jackson.databind.KeyDeserializer;
import tools.jackson.databind.SerializationConfig;
import tools.jackson.databind.SerializationContext;
import tools.jackson.databind.ValueDeserializer;
import tools.jackson.databind.ValueSerializer;
import tools.jackson.databind.deser.Deserializers;
import tools.jackson.databind.exc.InvalidDefinitionException;
import tools.jackson.databind.exc.InvalidFormatException;
import tools.jackson.databind.module.SimpleModule;
import tools.jackson.databind.ser.Serializers;

/**
 * Teaches Jackson 3 the quantities of the library, for documents of one's own. Fails at the first fault.
 *
 * <pre>{@code
 * record Swatch(String name, Amount<Grammage> grammage, Amount<Length> side) {
 * }
 *
 * JsonMapper mapper = JsonMapper.builder().findAndAddModules().build();
 * String text = mapper.writeValueAsString(new Swatch("tide grey", Grammage.gsm(260), Amounts.mm(105)));
 * out.println(text); // {"name":"tide grey","grammage":"260 g/m2","side":"105 mm"}
 * Swatch swatch = mapper.readValue(text.replace("105 mm", "4.5 in"), Swatch.class);
 * out.println(swatch.side().to("mm")); // 114.3 mm
 * }</pre>
 *
 * <p>An {@code Amount<Q>} or {@code Quantity<Q>} is written as {@code "260 g/m2"} and read from that, from
 * {@code {"value": 260, "unit": "g/m2"}}, and for a grammage from the weight of a ream. The kind is found by the
 * declared type {@code Q}; a plain {@code Pressure} is the pressure of air. A {@code Reading<Q>}, {@code Air},
 * {@code Fibre}, {@code Furnish}, {@code Format}, {@code ReamBasis}, a {@code Measurement}, an {@code Additive} and the
 * equipment of a studio are written and read as in the documents of the library, and so are the words of its enums.
 *
 * <p>Of what a plan or a model says, an {@code Estimate<Q>} is written with {@code likely}, {@code low}, {@code high},
 * {@code scatter} and {@code drivers}, a {@code Notice} with {@code level}, {@code code}, {@code text} and
 * {@code arguments}, and both are read again, as are an {@code Assumption}, a {@code Scope} and an {@code Outline}. A
 * {@code Stage} is written as {@code {"done": true, "content": ...}} or
 * {@code {"done": false, "code": "press.none", "reason": ...}}, and a {@link PapermathException} with {@code code},
 * {@code text} and {@code arguments}; these are not read. The records of the library, all of them things one can say, are
 * written and read by their components, none of which may be left out. What the library finds, such as a
 * {@code PostsPlan}, a {@code ToBuy} or a {@code PressingModel.Result}, is written by its members and not read:
 * only the library makes it.
 *
 * <p>Every other type of the library is refused, on writing and on reading, with a sentence that names the way to go:
 * an {@code Order} for instance has {@link PapermathDocuments#writeOrder}. The exception for a bad quantity, or for a
 * type that is refused, has the {@link PapermathException} or the {@link DocumentException} as its cause. To write one
 * of these types in a way of your own, add a module with it after this one.
 *
 * <p>This is a module for Jackson 3 ({@code tools.jackson}), which {@code JsonMapper.builder().findAndAddModules()}
 * finds; a mapper of Jackson 2 cannot take it.
 */
public final class PapermathModule extends SimpleModule {
    /** The version of the library. */
    static final Version VERSION = new Version(0, 1, 0, "SNAPSHOT", "org.papermath", "papermath-json");

    private static final long serialVersionUID = 1L;
    private static final JsonFactory TOKENS = new JsonFactory();
    private static final String NOT_WRITTEN = "jackson.not-written";
    private static final String NOT_READ = "jackson.not-read";

    /** What is written as in documents, by its type or one it implements. */
    private static final Map<Class<?>, Small<?>> SMALL = new LinkedHashMap<>();

    static {
        add(ReamBasis.class, ValueReader::reamBasis, ValueWriter::reamBasis);
        members(Air.class, AirMapping::read, AirMapping::write);
        add(Fibre.class, FibreMapping::read, FibreMapping::write);
        add(Furnish.class, RecipeMapping::furnish, RecipeMapping::furnish);
        add(Format.class, PieceMapping::format, PieceMapping::format);
        members(Beater.class, EquipmentMapping::beater, EquipmentMapping::beater);
        members(Vat.class, EquipmentMapping::vat, EquipmentMapping::vat);
        members(Mould.class, in -> EquipmentMapping.mould(in, new Names("mould")), EquipmentMapping::mould);
        members(Press.class, EquipmentMapping::press, EquipmentMapping::press);
        members(Felts.class, EquipmentMapping::felts, EquipmentMapping::felts);
        members(Dryer.class, in -> EquipmentMapping.dryer(in, new Names("dryer")), EquipmentMapping::dryer);
        members(Additive.class, MeasurementMapping::additive, MeasurementMapping::additive);
        members(Measurement.class, MeasurementMapping::read, MeasurementMapping::write);
        members(Assumption.class, EvidenceMapping::assumption, EvidenceMapping::assumption);
        members(Scope.class, EvidenceMapping::scope, EvidenceMapping::scope);
        members(Notice.class, EvidenceMapping::notice, EvidenceMapping::notice);
        members(Outline.class, EvidenceMapping::outline, EvidenceMapping::outline);
        text(Money.class, Money::of);
        text(Markup.class, Markup::read);
        text(Margin.class, Margin::read);
    }

    /** How a type is read and written. */
    private record Small<T>(
            Class<T> type, Function<ValueReader, ReadResult<T>> reading, BiConsumer<ValueWriter, T> writing) {
        ValueSerializer<T> serializer() {
            return new SmallSerializer<>(writing);
        }

        /** Reads one of this type that is declared as the type itself or as one of those that implement it. */
        ValueDeserializer<?> deserializer(Class<?> declared) {
            return new SmallDeserializer<>(
                    declared,
                    at -> reading.apply(at).check(value -> {
                        if (!declared.isInstance(value)) {
                            throw Refused.of(
                                    "jackson.other-type",
                                    declared.getSimpleName() + " is expected here; "
                                            + value.getClass().getSimpleName() + " is written. Declare the member as "
                                            + type.getSimpleName() + " to take any of them.",
                                    "found",
                                    value.getClass().getSimpleName(),
                                    "accepted",
                                    declared.getSimpleName());
                        }
                    }));
        }
    }

    private static <T> void add(
            Class<T> type, Function<ValueReader, ReadResult<T>> reading, BiConsumer<ValueWriter, T> writing) {
        SMALL.put(type, new Small<>(type, reading, writing));
    }

    /** What has a text that it is read from again. */
    private static <T> void text(Class<T> type, Function<String, T> reading) {
        add(type, at -> at.text().map(reading), (out, value) -> out.text(value.toString()));
    }

    private static <T> void members(
            Class<T> type, Function<ObjectReader, ReadResult<T>> reading, BiConsumer<ObjectWriter, T> writing) {
        add(type, at -> at.object(reading), (out, value) -> out.object(in -> writing.accept(in, value)));
    }

    private static Optional<Small<?>> small(Class<?> type) {
        return SMALL.values().stream()
                .<Small<?>>map(small -> small)
                .filter(small -> small.type().isAssignableFrom(type))
                .findFirst();
    }

    /** Creates the module. */
    public PapermathModule() {
        super("papermath", VERSION);
    }

    @Override
    public void setupModule(SetupContext context) {
        super.setupModule(context);
        context.addSerializers(new CoreSerializers());
        context.addDeserializers(new CoreDeserializers());
        context.addKeySerializers(new NameSerializers());
        context.addKeyDeserializers((type, config, description) -> nameDeserializer(type.getRawClass()));
        context.insertAnnotationIntrospector(new CoreRecords());
    }

    private static @Nullable Kind<?> kindOf(JavaType type) {
        JavaType[] parameters =
                type.findTypeParameters(type.isTypeOrSubTypeOf(Quantity.class) ? Quantity.class : type.getRawClass());
        if (parameters.length == 1) {
            for (Kind<?> kind : Kinds.all()) {
                if (kind.type() == parameters[0].getRawClass()) {
                    return kind;
                }
            }
        }
        return null;
    }

    private static final class CoreSerializers extends Serializers.Base {
        @Override
        public @Nullable ValueSerializer<?> findSerializer(
                SerializationConfig config,
                JavaType type,
                BeanDescription.Supplier description,
                JsonFormat.@Nullable Value format) {
            return serializer(type);
        }

        @Override
        public @Nullable ValueSerializer<?> findEnumSerializer(
                SerializationConfig config,
                JavaType type,
                BeanDescription.Supplier description,
                JsonFormat.@Nullable Value format) {
            return serializer(type);
        }
    }

    private static @Nullable ValueSerializer<?> serializer(JavaType type) {
        Class<?> raw = type.getRawClass();
        if (Quantity.class.isAssignableFrom(raw)) {
            return new QuantitySerializer(kindOf(type));
        }
        if (!CoreTypes.isOurs(raw)) {
            return null;
        }
        if (raw == Reading.class) {
            return new SmallSerializer<Reading<?>>(PapermathModule::writeReading);
        }
        if (raw == Estimate.class) {
            return new SmallSerializer<Estimate<?>>(EvidenceMapping::estimate);
        }
        if (raw == Stage.class) {
            return new StageSerializer();
        }
        if (raw == MailLimits.Verdict.class) {
            return new SmallSerializer<MailLimits.Verdict>(
                    (out, verdict) -> out.object(in -> EvidenceMapping.verdict(in, verdict)));
        }
        if (PapermathException.class.isAssignableFrom(raw)) {
            return new SmallSerializer<PapermathException>(
                    (out, refusal) -> out.object(in -> EvidenceMapping.refusal(in, refusal)));
        }
        if (raw == DocumentException.class) {
            return new FaultsSerializer();
        }
        if (Enum.class.isAssignableFrom(raw)) {
            return new SmallSerializer<Enum<?>>((out, constant) -> out.text(CoreTypes.word(constant)));
        }
        Class<?> known = CoreTypes.known(raw);
        if (known != raw && CoreTypes.isResult(known)) {
            return new ResultSerializer(known);
        }
        return small(raw)
                .<ValueSerializer<?>>map(Small::serializer)
                .orElseGet(() ->
                        CoreTypes.isPlainRecord(raw) || CoreTypes.isResult(raw) ? null : new RefusingSerializer(known));
    }

    private static final class CoreDeserializers extends Deserializers.Base {
        @Override
        public @Nullable ValueDeserializer<?> findEnumDeserializer(
                JavaType type, DeserializationConfig config, BeanDescription.Supplier description) {
            return deserializer(type);
        }

        @Override
        public @Nullable ValueDeserializer<?> findBeanDeserializer(
                JavaType type, DeserializationConfig config, BeanDescription.Supplier description) {
            return deserializer(type);
        }

        @Override
        public boolean hasDeserializerFor(DeserializationConfig config, Class<?> type) {
            return type == Quantity.class || (CoreTypes.isOurs(type) && !CoreTypes.isPlainRecord(type));
        }
    }

    private static @Nullable ValueDeserializer<?> deserializer(JavaType type) {
        Class<?> raw = type.getRawClass();
        if (raw == Quantity.class || raw == Amount.class) {
            return new QuantityDeserializer(type, kindOf(type));
        }
        if (!CoreTypes.isOurs(raw)) {
            return null;
        }
        if (raw == Reading.class) {
            return readingDeserializer(kindOf(type));
        }
        if (raw == Estimate.class) {
            return estimateDeserializer(kindOf(type));
        }
        if (raw.isEnum()) {
            List<Enum<?>> constants = constants(raw);
            return new SmallDeserializer<Enum<?>>(raw, at -> at.choice(constants, CoreTypes::word));
        }
        return small(raw)
                .<ValueDeserializer<?>>map(small -> small.deserializer(raw))
                .orElseGet(() -> CoreTypes.isPlainRecord(raw) ? null : new RefusingDeserializer(type));
    }

    private static List<Enum<?>> constants(Class<?> type) {
        List<Enum<?>> constants = new ArrayList<>();
        for (Object constant : type.getEnumConstants()) {
            constants.add((Enum<?>) constant);
        }
        return constants;
    }

    /** Writes enums as names of members, and refuses the other types: a text for people would lose digits. */
    private static final class NameSerializers extends Serializers.Base {
        @Override
        public @Nullable ValueSerializer<?> findSerializer(
                SerializationConfig config,
                JavaType type,
                BeanDescription.Supplier description,
                JsonFormat.@Nullable Value format) {
            Class<?> raw = type.getRawClass();
            return !Quantity.class.isAssignableFrom(raw) && !CoreTypes.isOurs(raw) ? null : new NameSerializer(raw);
        }

        @Override
        public @Nullable ValueSerializer<?> findEnumSerializer(
                SerializationConfig config,
                JavaType type,
                BeanDescription.Supplier description,
                JsonFormat.@Nullable Value format) {
            return findSerializer(config, type, description, format);
        }
    }

    private static final class NameSerializer extends ValueSerializer<Object> {
        private final Class<?> type;

        NameSerializer(Class<?> type) {
            this.type = type;
        }

        @Override
        public void serialize(Object value, JsonGenerator out, SerializationContext context) {
            if (value instanceof Enum<?> constant) {
                out.writeName(CoreTypes.word(constant));
            } else {
                refuse(type, CoreTypes.noName(type), NOT_WRITTEN, context);
            }
        }
    }

    private static @Nullable KeyDeserializer nameDeserializer(Class<?> type) {
        if (!Quantity.class.isAssignableFrom(type) && !CoreTypes.isOurs(type)) {
            return null;
        }
        List<Enum<?>> constants = type.isEnum() ? constants(type) : List.of();
        return new KeyDeserializer() {
            @Override
            public Object deserializeKey(String name, DeserializationContext context) {
                for (Enum<?> constant : constants) {
                    if (CoreTypes.word(constant).equals(name)) {
                        return constant;
                    }
                }
                String words = NearestWord.listed(
                        constants.stream().map(CoreTypes::word).toList());
                Refused refusal = Refused.of(
                        NOT_READ,
                        type.isEnum()
                                ? "\"" + JsonValue.shown(name) + "\" is not one of the words for this. Accepted: "
                                        + words + "."
                                : CoreTypes.noName(type),
                        "found",
                        name);
                throw context.weirdKeyException(type, name, String.valueOf(refusal.getMessage()))
                        .withCause(refusal);
            }
        };
    }

    /** Refuses a type that is not written, in place of an empty object. */
    private static final class RefusingSerializer extends ValueSerializer<Object> {
        private final Class<?> type;

        RefusingSerializer(Class<?> type) {
            this.type = type;
        }

        @Override
        public void serialize(Object value, JsonGenerator out, SerializationContext context) {
            refuse(type, CoreTypes.notWritten(type), NOT_WRITTEN, context);
        }
    }

    private static void refuse(Class<?> type, String text, String code, SerializationContext context) {
        context.reportBadDefinition(type, text, Refused.of(code, text, "type", type.getName()));
    }

    /** Refuses a type that is not read, in place of a value without its parts. */
    private static final class RefusingDeserializer extends ValueDeserializer<Object> {
        private final JavaType type;

        RefusingDeserializer(JavaType type) {
            this.type = type;
        }

        @Override
        public Object deserialize(JsonParser parser, DeserializationContext context) {
            Class<?> known = CoreTypes.known(type.getRawClass());
            String text = CoreTypes.notRead(known);
            throw InvalidDefinitionException.from(parser, text, type)
                    .withCause(Refused.of(NOT_READ, text, "type", known.getName()));
        }
    }

    /** Writes a result by the interface it is known by, since a mapper cannot reach into the record behind it. */
    private static final class ResultSerializer extends ValueSerializer<Object> {
        private final Class<?> known;

        ResultSerializer(Class<?> known) {
            this.known = known;
        }

        @Override
        public void serialize(Object result, JsonGenerator out, SerializationContext context) {
            context.findValueSerializer(known).serialize(result, out, context);
        }
    }

    private static final class StageSerializer extends ValueSerializer<Stage<?>> {
        @Override
        public void serialize(Stage<?> stage, JsonGenerator out, SerializationContext context) {
            out.writeStartObject(stage);
            out.writeBooleanProperty("done", stage.isDone());
            if (stage.isDone()) {
                out.writeName("content");
                context.writeValue(out, stage.get());
            } else {
                out.writeStringProperty("code", stage.code());
                out.writeStringProperty("reason", stage.reason());
            }
            out.writeEndObject();
        }
    }

    private static final class FaultsSerializer extends ValueSerializer<DocumentException> {
        @Override
        public void serialize(DocumentException faults, JsonGenerator out, SerializationContext context) {
            out.writeStartObject(faults);
            out.writeName("faults");
            context.writeValue(out, faults.faults());
            out.writeEndObject();
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
            throw Refused.of(
                    "quantity.kind-unknown",
                    "quantity: " + value
                            + " does not state its kind. Declare the member with its quantity type, such as Quantity<Grammage>,"
                            + " or give an Amount.",
                    "given",
                    String.valueOf(value));
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
                String text = "the kind of quantity is not known; declare the type with one, such as Amount<Grammage>";
                throw InvalidDefinitionException.from(parser, text, type)
                        .withCause(Refused.of("quantity.kind-unknown", text));
            }
            if (parser.currentToken() == JsonToken.VALUE_STRING) {
                String text = parser.getString();
                try {
                    Amount<?> amount = Units.read(known, text);
                    // A text too long, or a number too small to be held, is a fault here too.
                    return text.length() > JsonTree.MOST_QUANTITY || amount.value() == 0
                            ? readHere(parser, type.getRawClass(), at -> quantity(at, known))
                            : amount;
                } catch (PapermathException e) {
                    throw InvalidFormatException.from(parser, String.valueOf(e.getMessage()), text, type.getRawClass())
                            .withCause(e);
                }
            }
            return readHere(parser, type.getRawClass(), at -> quantity(at, known));
        }

        private static <Q extends Quantity<Q>> ReadResult<Amount<?>> quantity(ValueReader at, Kind<Q> kind) {
            return at.quantity(kind).map(amount -> amount);
        }
    }

    private static void writeReading(ValueWriter out, Reading<?> reading) {
        ReadingMapping.write(out, reading);
    }

    private static ValueDeserializer<?> readingDeserializer(@Nullable Kind<?> kind) {
        return new SmallDeserializer<Reading<?>>(Reading.class, at -> {
            if (kind == null) {
                throw Refused.of(
                        "quantity.kind-unknown",
                        "the kind of the reading is not known; declare the type with one, such as Reading<Mass>");
            }
            return reading(at, kind);
        });
    }

    private static ValueDeserializer<?> estimateDeserializer(@Nullable Kind<?> kind) {
        return new SmallDeserializer<Estimate<?>>(Estimate.class, at -> {
            if (kind == null) {
                throw Refused.of(
                        "quantity.kind-unknown",
                        "the kind of the estimate is not known; declare the type with one, such as Estimate<Mass>");
            }
            return at.object(in -> EvidenceMapping.estimate(in, kind));
        });
    }

    private static <Q extends Quantity<Q>> ReadResult<Reading<?>> reading(ValueReader at, Kind<Q> kind) {
        return ReadingMapping.read(at, kind).map(reading -> reading);
    }

    /** Writes a value as documents do. */
    private static final class SmallSerializer<T> extends ValueSerializer<T> {
        private final BiConsumer<ValueWriter, T> writing;

        SmallSerializer(BiConsumer<ValueWriter, T> writing) {
            this.writing = writing;
        }

        @Override
        public void serialize(T value, JsonGenerator out, SerializationContext context) {
            StringBuilder text = new StringBuilder();
            try {
                writing.accept(WholeDocuments.writer(text), value);
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
        private final Function<ValueReader, ReadResult<T>> reading;

        SmallDeserializer(Class<?> type, Function<ValueReader, ReadResult<T>> reading) {
            this.type = type;
            this.reading = reading;
        }

        @Override
        public T deserialize(JsonParser parser, DeserializationContext context) {
            return readHere(parser, type, reading);
        }
    }

    /** Reads the value the parser stands at by the rules of whole documents. */
    private static <T> T readHere(JsonParser parser, Class<?> type, Function<ValueReader, ReadResult<T>> reading) {
        FaultLog session = new FaultLog();
        Source source = new Source(
                "",
                session,
                reference -> {
                    throw new IllegalStateException("a quantity has no references");
                },
                0);
        ReadResult<T> got = JsonTree.readCurrent(parser, source)
                .map(value -> {
                    ValueReader at = WholeDocuments.reader(source, value);
                    ReadResult<T> one = WholeDocuments.read(at, reading);
                    source.kept()
                            .asJson()
                            .keySet()
                            .forEach(pointer -> at.refuse(
                                    FaultCodes.UNKNOWN,
                                    "\"" + pointer.substring(1) + "\" cannot be kept here. Put it beside the value.",
                                    List.of()));
                    return session.hasFaults() ? ReadResult.<T>faulty(at) : one;
                })
                .orElse(null);
        if (got == null || got.isFaulty()) {
            DocumentException faults = session.exception();
            String text = faults.faults().stream()
                    .map(Fault::text)
                    .reduce((one, other) -> one + " " + other)
                    .orElse("");
            throw InvalidFormatException.from(parser, text, parser.currentToken(), type)
                    .withCause(faults);
        }
        return got.get();
    }
}
