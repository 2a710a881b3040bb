package org.papermath.json.mapping;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import org.papermath.air.Air;
import org.papermath.json.DocumentFormat;
import org.papermath.json.FaultCodes;
import org.papermath.json.OrderDocument;
import org.papermath.json.kit.ObjectReader;
import org.papermath.json.kit.ObjectWriter;
import org.papermath.json.kit.ReadResult;
import org.papermath.json.kit.ValueReader;
import org.papermath.json.kit.ValueWriter;
import org.papermath.json.kit.WholeDocuments;
import org.papermath.json.tree.JsonValue;
import org.papermath.order.Order;
import org.papermath.order.OwnStep;
import org.papermath.order.Piece;
import org.papermath.order.Recipe;
import org.papermath.order.Studio;
import org.papermath.plan.MakingPlan;
import org.papermath.quantity.Limits;

/** An order, with its recipes and its studio. */
public final class OrderMapping {
    public static final DocumentFormat ORDER = new DocumentFormat("order", 1, 0);
    public static final DocumentFormat RECIPE = new DocumentFormat("recipe", 1, 0);
    public static final DocumentFormat STUDIO = new DocumentFormat("studio", 1, 0);

    private OrderMapping() {}

    public static ReadResult<OrderDocument> read(ObjectReader in) {
        return read(in, known());
    }

    /** Reads an order and plans it; what the planner refuses is told at its place in the document. */
    public static ReadResult<MakingPlan> planned(ObjectReader in) {
        PieceMapping.Known known = known();
        return WholeDocuments.make(
                read(in, known),
                read -> MakingPlan.of(read.order(), read.studio()),
                (order, refusal) -> PlanRefusal.tell(known, order, refusal));
    }

    private static ReadResult<OrderDocument> read(ObjectReader in, PieceMapping.Known known) {
        ReadResult<List<Recipe>> recipes = recipes(in, known);
        ReadResult<Studio> studio = studio(in.required("studio"), known.dryers(), known.studio());
        ReadResult<Order> order = order(in, recipes, known);
        return in.make(() -> new OrderDocument(order.get(), studio.get()));
    }

    static PieceMapping.Known known() {
        return new PieceMapping.Known(
                new Names("recipe"),
                new Names("piece"),
                new Names("dryer"),
                new Names("studio"),
                new HashSet<>(),
                new ArrayList<>());
    }

    static ReadResult<List<Recipe>> recipes(ObjectReader in, PieceMapping.Known known) {
        ReadResult<List<Recipe>> recipes =
                in.required("recipes").list(1, CommonMembers.MANY, one -> recipe(one, known.recipes()));
        if (recipes.isFaulty()) {
            known.recipes().loseIfEmpty();
        }
        if (WholeDocuments.isCut(in.optional("recipes"))) {
            known.recipes().lose();
        }
        return recipes;
    }

    /** Reads what else an order says, when its recipes and its studio are read. */
    static ReadResult<Order> order(ObjectReader in, ReadResult<List<Recipe>> recipes, PieceMapping.Known known) {
        ReadResult<String> name = CommonMembers.name(in);
        ReadResult<LocalDate> due = in.optional("due").date();
        ReadResult<Air> weighedIn = in.optional("weighedIn").object(AirMapping::read);
        ReadResult<Boolean> asListed = in.optional("asListed").flag();
        ReadResult<List<OwnStep>> steps =
                in.optional("steps").list(0, Limits.STEPS.most(), one -> one.object(OwnStepMapping::read));
        ReadResult<List<Piece>> pieces = in.required("pieces")
                .list(1, CommonMembers.MANY, one -> one.object(piece -> PieceMapping.read(piece, known)));
        if (WholeDocuments.isCut(in.optional("pieces"))) {
            known.pieces().lose();
        }
        known.insides().forEach(inside -> requirePiece(inside, known));
        return in.make(() -> {
            Order.Builder order = Order.of(name.get());
            due.ifGiven(order::due);
            weighedIn.ifGiven(order::weighedIn);
            if (asListed.orElse(false)) {
                order.asListed();
            }
            recipes.get().forEach(order::recipe);
            pieces.get().forEach(order::piece);
            steps.orElse(List.of()).forEach(order::step);
            return order.build();
        });
    }

    public static void write(ObjectWriter out, OrderDocument document) {
        head(out, document.order());
        out.member("studio").reference(in -> StudioMapping.write(in, document.studio()));
        pieces(out, document.order());
    }

    /** Writes an order without its studio, which a plan holds beside it. */
    static void writeOrder(ObjectWriter out, Order order) {
        head(out, order);
        pieces(out, order);
    }

    private static void head(ObjectWriter out, Order order) {
        CommonMembers.name(out.member("name"), order.name());
        order.due().ifPresent(day -> out.member("due").date(day));
        ValueWriter weighedIn = out.member("weighedIn");
        if (!order.weighedIn().equals(Air.reference()) || weighedIn.keeps()) {
            weighedIn.object(in -> AirMapping.write(in, order.weighedIn()));
        }
        ValueWriter asListed = out.member("asListed");
        if (order.isAsListed() || asListed.keeps()) {
            asListed.flag(order.isAsListed());
        }
        out.member("recipes")
                .list(
                        CommonMembers.atMost(CommonMembers.MANY, order.recipes(), "recipes"),
                        (item, one) -> item.reference(in -> RecipeMapping.write(in, one)));
    }

    private static void pieces(ObjectWriter out, Order order) {
        out.member("pieces")
                .list(
                        CommonMembers.atMost(CommonMembers.MANY, order.pieces(), "pieces"),
                        (item, one) -> item.object(in -> PieceMapping.write(in, one)));
        ValueWriter steps = out.member("steps");
        if (!order.steps().isEmpty() || steps.keeps()) {
            steps.list(order.steps(), (item, one) -> item.object(in -> OwnStepMapping.write(in, one)));
        }
    }

    private static ReadResult<Recipe> recipe(ValueReader at, Names names) {
        if (isNoObject(at)) {
            names.lose();
            return ReadResult.faulty(at);
        }
        boolean[] named = new boolean[1];
        ReadResult<Recipe> recipe = at.reference(RECIPE, in -> {
            named[0] = true;
            return RecipeMapping.read(in, names);
        });
        if (!named[0]) {
            names.lose();
        }
        return recipe;
    }

    /** Reports a text that is most likely meant as a reference. */
    private static boolean isNoObject(ValueReader at) {
        if (at.isText()) {
            at.refuse(
                    FaultCodes.TYPE,
                    "an object is expected here; a text is written. What stands in another document is"
                            + " written {\"ref\": \"name-of-the-file.json\"}.",
                    List.of("an object"));
        }
        return at.isText();
    }

    static ReadResult<Studio> studio(ValueReader at, Names dryers, Names studios) {
        if (isNoObject(at)) {
            dryers.lose();
            return ReadResult.faulty(at);
        }
        boolean[] read = new boolean[1];
        ReadResult<Studio> studio = at.reference(STUDIO, in -> {
            read[0] = true;
            return StudioMapping.read(in, dryers, studios);
        });
        if (!read[0]) {
            dryers.lose();
        }
        return studio;
    }

    private static void requirePiece(ReadResult<String> inside, PieceMapping.Known known) {
        ReadResult<String> held = known.pieces().require(inside, "order.no-piece");
        if (!held.isFaulty() && held.isGiven() && known.envelopes().contains(held.get())) {
            held.refuse(
                    "order.envelope-in-envelope",
                    "\"" + JsonValue.shown(held.get()) + "\" is an envelope itself;"
                            + " an envelope for an envelope is not planned. Give the outer one a size of its own.",
                    List.of());
        }
    }
}
