package org.papermath.json;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;

import org.papermath.air.Air;
import org.papermath.order.Order;
import org.papermath.order.Piece;
import org.papermath.order.Recipe;
import org.papermath.order.Studio;

/** An order, with its recipes and its studio. */
final class OrderMapping {
    static final DocumentFormat ORDER = new DocumentFormat("order", 1, 0);
    static final DocumentFormat RECIPE = new DocumentFormat("recipe", 1, 0);
    static final DocumentFormat STUDIO = new DocumentFormat("studio", 1, 0);

    private OrderMapping() {
    }

    static Got<OrderDocument> read(ObjectAt in) {
        PieceMapping.Known known = known();
        Got<List<Recipe>> recipes = recipes(in, known);
        Got<Studio> studio = studio(in.required("studio"), known.dryers());
        Got<Order> order = order(in, recipes, known);
        return in.make(() -> new OrderDocument(order.get(), studio.get()));
    }

    static PieceMapping.Known known() {
        return new PieceMapping.Known(new Names("recipe"), new Names("piece"), new Names("dryer"), new HashSet<>(),
                new ArrayList<>());
    }

    static Got<List<Recipe>> recipes(ObjectAt in, PieceMapping.Known known) {
        Got<List<Recipe>> recipes = in.required("recipes").list(1, Common.MANY, one -> recipe(one, known.recipes()));
        if (recipes.isFaulty()) {
            known.recipes().loseIfEmpty();
        }
        if (in.optional("recipes").isCut()) {
            known.recipes().lose();
        }
        return recipes;
    }

    /** Reads what else an order says, when its recipes and its studio are read. */
    static Got<Order> order(ObjectAt in, Got<List<Recipe>> recipes, PieceMapping.Known known) {
        Got<String> name = Common.name(in);
        Got<LocalDate> due = in.optional("due").date();
        Got<Air> weighedIn = in.optional("weighedIn").object(AirMapping::read);
        Got<List<Piece>> pieces = in.required("pieces")
                .list(1, Common.MANY, one -> one.object(piece -> PieceMapping.read(piece, known)));
        if (in.optional("pieces").isCut()) {
            known.pieces().lose();
        }
        known.insides().forEach(inside -> requirePiece(inside, known));
        return in.make(() -> {
            Order.Builder order = Order.of(name.get());
            due.ifGiven(order::due);
            weighedIn.ifGiven(order::weighedIn);
            recipes.get().forEach(order::recipe);
            pieces.get().forEach(order::piece);
            return order.build();
        });
    }

    static void write(ObjectOut out, OrderDocument document) {
        head(out, document.order());
        out.member("studio").reference(in -> StudioMapping.write(in, document.studio()));
        pieces(out, document.order());
    }

    /** Writes an order without its studio, which a plan holds beside it. */
    static void writeOrder(ObjectOut out, Order order) {
        head(out, order);
        pieces(out, order);
    }

    private static void head(ObjectOut out, Order order) {
        Common.name(out.member("name"), order.name());
        order.due().ifPresent(day -> out.member("due").date(day));
        ValueOut weighedIn = out.member("weighedIn");
        if (!order.weighedIn().equals(Air.reference()) || weighedIn.keeps()) {
            weighedIn.object(in -> AirMapping.write(in, order.weighedIn()));
        }
        out.member("recipes").list(Common.atMost(Common.MANY, order.recipes(), "recipes"),
                (item, one) -> item.reference(in -> RecipeMapping.write(in, one)));
    }

    private static void pieces(ObjectOut out, Order order) {
        out.member("pieces").list(Common.atMost(Common.MANY, order.pieces(), "pieces"),
                (item, one) -> item.object(in -> PieceMapping.write(in, one)));
    }

    private static Got<Recipe> recipe(ValueAt at, Names names) {
        if (isNoObject(at)) {
            names.lose();
            return Got.faulty(at);
        }
        boolean[] named = new boolean[1];
        Got<Recipe> recipe = at.reference(RECIPE, in -> {
            named[0] = true;
            return RecipeMapping.read(in, names);
        });
        if (!named[0]) {
            names.lose();
        }
        return recipe;
    }

    /** Reports a text that is most likely meant as a reference. */
    private static boolean isNoObject(ValueAt at) {
        if (at.isText()) {
            at.refuse(FaultCodes.TYPE, "an object is wanted here; a text is written. What stands in another document is"
                    + " written {\"ref\": \"name-of-the-file.json\"}.", List.of("an object"));
        }
        return at.isText();
    }

    static Got<Studio> studio(ValueAt at, Names dryers) {
        if (isNoObject(at)) {
            dryers.lose();
            return Got.faulty(at);
        }
        boolean[] read = new boolean[1];
        Got<Studio> studio = at.reference(STUDIO, in -> {
            read[0] = true;
            return StudioMapping.read(in, dryers);
        });
        if (!read[0]) {
            dryers.lose();
        }
        return studio;
    }

    private static void requirePiece(Got<String> inside, PieceMapping.Known known) {
        Got<String> held = known.pieces().require(inside, "order.no-piece");
        if (!held.isFaulty() && held.isGiven() && known.envelopes().contains(held.get())) {
            held.refuse("order.envelope-in-envelope", "\"" + JsonValue.shown(held.get()) + "\" is an envelope itself;"
                    + " an envelope for an envelope is not planned. Give the outer one a size of its own.", List.of());
        }
    }
}
