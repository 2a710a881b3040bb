package org.papermath.json;

import java.lang.reflect.Modifier;
import java.lang.reflect.RecordComponent;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import javax.measure.Quantity;
import org.jspecify.annotations.Nullable;
import org.papermath.card.MakingCard;
import org.papermath.cost.MoneyRate;
import org.papermath.cost.PriceList;
import org.papermath.cost.Quotation;
import org.papermath.drawing.SvgDrawing;
import org.papermath.envelope.EnvelopeStyle;
import org.papermath.evidence.Assumptions;
import org.papermath.format.FormatSystem;
import org.papermath.json.mapping.CommonMembers;
import org.papermath.mail.MailLimits;
import org.papermath.order.Order;
import org.papermath.order.Piece;
import org.papermath.order.Recipe;
import org.papermath.order.Studio;
import org.papermath.plan.BatchPlan;
import org.papermath.plan.MakingPlan;
import org.papermath.plan.PiecePlan;
import org.papermath.plan.Schedule;
import org.papermath.plan.Stage;
import org.papermath.quantity.Kind;
import org.papermath.quantity.PapermathException;
import org.papermath.record.BatchRecord;

/** Which types the Jackson module answers for, and what it answers for those it neither writes nor reads. */
final class CoreTypes {
    private static final String LIBRARY = "org.papermath.";
    /** Packages beside the core: what stands there is a type of one's own like any other. */
    private static final List<String> BESIDE = List.of("org.papermath.json", "org.papermath.examples");

    private static final String AN_ORDER =
            "Write an order with PapermathDocuments.writeOrder and read it with readOrder";
    private static final String PLAN = "Write the whole plan with PapermathDocuments.writePlan and read it with"
            + " readPlan, or take out its estimates, amounts and stages";

    /** Where the types that have a way of their own go, in place of the general advice. */
    private static final Map<Class<?>, String> DOORS = Map.ofEntries(
            Map.entry(Order.class, AN_ORDER),
            Map.entry(OrderDocument.class, AN_ORDER),
            Map.entry(Piece.class, "A piece belongs to its order. " + AN_ORDER),
            Map.entry(Recipe.class, "Write a recipe with PapermathDocuments.writeRecipe and read it with readRecipe"),
            Map.entry(Studio.class, "Write a studio with PapermathDocuments.writeStudio and read it with readStudio"),
            Map.entry(
                    BatchRecord.class,
                    "Write a record with PapermathDocuments.writeRecord and read it with readRecord"),
            Map.entry(MakingPlan.class, "Write a plan with PapermathDocuments.writePlan and read it with readPlan"),
            Map.entry(PlanDocument.class, "Write a plan with PapermathDocuments.writePlan and read it with readPlan"),
            Map.entry(PiecePlan.class, PLAN),
            Map.entry(BatchPlan.class, PLAN),
            Map.entry(Document.class, "Use the write and the read of its document in PapermathDocuments"),
            Map.entry(
                    Assumptions.class,
                    "Write the values of one's own, own(), which are a list of Assumption, and"
                            + " the edition; or the studio that knows them, with PapermathDocuments.writeStudio"),
            Map.entry(
                    PriceList.class,
                    "Write a list of prices with PapermathDocuments.writePrices and read it with readPrices"),
            Map.entry(
                    Quotation.class,
                    "Write a quotation with PapermathDocuments.writeQuotation and read it with readQuotation"),
            Map.entry(MoneyRate.class, "Write its text, toString(), and read it with MoneyRate.read and its kind"),
            Map.entry(MakingCard.class, "Write its text, toString()"),
            Map.entry(Schedule.class, "Write its steps()"),
            Map.entry(SvgDrawing.class, "Write its text"),
            Map.entry(Kind.class, "Write its name(); Kinds.all() has the kind of a name"));

    /** What is written but cannot be made again from it, with the reason. */
    private static final Map<Class<?>, String> ONLY_WRITTEN = Map.of(
            Stage.class,
                    "Only a plan makes stages. Read \"done\", \"content\", \"code\" and \"reason\" as members of a"
                            + " type of your own, the content for example as Estimate<Mass>",
            MailLimits.Verdict.class,
                    "Only MailLimits gives verdicts. Read \"service\", \"step\", \"failures\" and"
                            + " \"notices\" as members of a type of your own",
            PapermathException.class,
                    "A refusal is thrown, not read. Read \"code\", \"text\" and \"arguments\" as"
                            + " members of a type of your own",
            DocumentException.class, "A fault is found, not read. Read \"faults\" as a list of Fault");

    private CoreTypes() {}

    /** Returns whether the module answers for a type, so that nothing is left to the habits of a mapper. */
    static boolean isOurs(Class<?> type) {
        String name = type.getPackageName();
        return (!type.isArray() && name.startsWith(LIBRARY) && BESIDE.stream().noneMatch(name::startsWith))
                || type == OrderDocument.class
                || type == PlanDocument.class
                || type == Document.class
                || type == DocumentException.class;
    }

    /** Returns whether a record may be written by its components: nothing else could be meant by the same members. */
    static boolean isPlainRecord(Class<?> type) {
        return type.isRecord() && isOurs(type) && !DOORS.containsKey(type) && type.getInterfaces().length == 0;
    }

    /**
     * Returns whether the library alone makes the values of a type, from a record that nobody else sees: an interface
     * of such a record, or a class around it. It is written by what it has of the components of that record, and not
     * read.
     */
    static boolean isResult(Class<?> type) {
        return recordBehind(type) != null && !DOORS.containsKey(type);
    }

    /** Returns the names of what a result is written by, in order. */
    static List<String> members(Class<?> result) {
        Class<?> behind = recordBehind(result);
        return behind == null
                ? List.of()
                : Arrays.stream(behind.getRecordComponents())
                        .map(RecordComponent::getName)
                        .toList();
    }

    private static @Nullable Class<?> recordBehind(Class<?> type) {
        if (!isOurs(type)) {
            return null;
        }
        Class<?>[] behind = type.isInterface() ? type.getPermittedSubclasses() : recordsWithin(type);
        return behind != null && behind.length == 1 && isHiddenRecord(behind[0]) ? behind[0] : null;
    }

    private static Class<?>[] recordsWithin(Class<?> type) {
        return Arrays.stream(type.getDeclaredClasses())
                .filter(inner -> isHiddenRecord(inner) && inner.getInterfaces().length == 0)
                .filter(inner -> Arrays.stream(inner.getRecordComponents()).allMatch(part -> hasPublic(type, part)))
                .toArray(Class<?>[]::new);
    }

    private static boolean hasPublic(Class<?> type, RecordComponent part) {
        return Arrays.stream(type.getMethods())
                .anyMatch(method -> method.getName().equals(part.getName())
                        && method.getParameterCount() == 0
                        && method.getReturnType() == part.getType());
    }

    private static boolean isHiddenRecord(Class<?> type) {
        return type.isRecord() && !Modifier.isPublic(type.getModifiers());
    }

    /** Returns the type that a value of a type is known by outside the library: the interface of a hidden record. */
    static Class<?> known(Class<?> type) {
        return isHiddenRecord(type) && isOurs(type) && type.getInterfaces().length == 1
                ? type.getInterfaces()[0]
                : type;
    }

    /** Returns the word of a constant, as documents have it. */
    static String word(Enum<?> constant) {
        return constant instanceof FormatSystem system
                ? system.words()
                : constant instanceof EnvelopeStyle style ? style.words() : CommonMembers.word(constant);
    }

    static String notWritten(Class<?> type) {
        return "the Jackson module does not write " + name(type) + ". " + door(type) + ".";
    }

    static String notRead(Class<?> type) {
        String why = isResult(type)
                ? "Only the library makes one. Read its members as members of a type of your own,"
                        + " such as a record with an Amount<Mass> and an Estimate<Length>"
                : ONLY_WRITTEN.entrySet().stream()
                        .filter(one -> one.getKey().isAssignableFrom(type))
                        .findFirst()
                        .map(Map.Entry::getValue)
                        .orElse(null);
        return "the Jackson module does not read " + name(type) + ". " + (why == null ? door(type) : why) + ".";
    }

    static String noName(Class<?> type) {
        return "the type " + name(type)
                + " cannot be the name of a member of a JSON object. Use a name or an id as the key"
                + " of the map and put this into the value, or write a list.";
    }

    private static String door(Class<?> type) {
        String own = DOORS.get(type);
        if (own != null) {
            return own;
        }
        if (Quantity.class.isAssignableFrom(type)) {
            return "This is a type of quantity, not a quantity: declare an Amount<" + name(type) + ">";
        }
        if (type.getSimpleName().equals("Builder")) {
            return "Build it first. " + door(type.getEnclosingClass());
        }
        if (type.getSimpleName().endsWith("Model")) {
            return "A model is made of assumptions: write the Assumption values it was made from and make it again"
                    + " with from(...), or write the Estimate it gives";
        }
        return "Take out the amounts, estimates, notices and names you need, and write them as members of a type of"
                + " your own, such as a record with an Amount<Mass> and an Estimate<Length>";
    }

    /** Returns the name of a type as it stands in code: that of a part with the type around it. */
    private static String name(Class<?> type) {
        Class<?> around = type.getEnclosingClass();
        return around == null ? type.getSimpleName() : name(around) + "." + type.getSimpleName();
    }
}
