package org.papermath.json.mapping;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.papermath.fibre.Fibres;
import org.papermath.json.kit.WholeDocuments;
import org.papermath.json.tree.JsonValue;
import org.papermath.json.tree.Owner;
import org.papermath.quantity.PapermathException;

/**
 * Where in an order stands what a plan is refused for. The refusal names a piece or a recipe, a member of it, a fibre or a
 * value of the studio's own; the narrowest of these that is written is the place.
 */
final class PlanRefusal {
    private final PieceMapping.Known known;
    private final Owner order;
    private final PapermathException refusal;

    private PlanRefusal(PieceMapping.Known known, Owner order, PapermathException refusal) {
        this.known = known;
        this.order = order;
        this.refusal = refusal;
    }

    /** Reports a refusal at its place. */
    static void tell(PieceMapping.Known known, Owner order, PapermathException refusal) {
        new PlanRefusal(known, order, refusal).tell();
    }

    private void tell() {
        List<Owner> places = places();
        Owner first = places.get(0);
        StringBuilder more = new StringBuilder();
        argument("kin")
                .ifPresent(kin -> more.append(" In a document write \"kin\": [\"")
                        .append(kin)
                        .append("\"] beside its \"id\"."));
        places.stream()
                .skip(1)
                .forEach(other -> more.append(" See also ")
                        .append(other.source().place(other.object()))
                        .append('.'));
        first.source().refuse(first.object(), refusal, List.of(), more.toString());
    }

    /** The narrowest place, and behind it others that have a part in it. */
    private List<Owner> places() {
        List<Owner> found = fibre().map(List::of).orElseGet(this::members);
        if (found.isEmpty()) {
            found = own().map(List::of).orElse(found);
        }
        return found.isEmpty() ? List.of(owner().orElse(order)) : found;
    }

    private Optional<String> argument(String name) {
        return Optional.ofNullable(refusal.arguments().get(name))
                .map(String::valueOf)
                .filter(text -> !text.isEmpty());
    }

    /** The piece, or else the recipe. */
    private Optional<Owner> owner() {
        return argument("piece")
                .flatMap(known.pieces()::place)
                .or(() -> argument("recipe").flatMap(known.recipes()::place))
                .map(WholeDocuments::ownerOf);
    }

    private List<Owner> members() {
        Object named = refusal.arguments().get("member");
        Collection<?> names =
                named instanceof Collection<?> several ? several : named == null ? List.of() : List.of(named);
        List<Owner> found = new ArrayList<>();
        owner().ifPresent(owner -> names.forEach(name -> {
            JsonValue member = owner.object().member(String.valueOf(name));
            if (member != null) {
                found.add(new Owner(owner.source(), member));
            }
        }));
        return found;
    }

    /** The fibre of that id, where it is written: in the recipe, or in the first that has it. */
    private Optional<Owner> fibre() {
        return argument("fibre")
                .flatMap(id -> recipes()
                        .flatMap(recipe -> items(recipe, "furnish")
                                .flatMap(part -> Stream.ofNullable(part.member("fibre")))
                                .filter(fibre -> isCalled(fibre, id))
                                .map(fibre -> new Owner(recipe.source(), fibre)))
                        .findFirst());
    }

    private Stream<Owner> recipes() {
        return argument("recipe")
                .flatMap(known.recipes()::place)
                .map(Stream::of)
                .orElseGet(() -> known.recipes().places().stream())
                .map(WholeDocuments::ownerOf);
    }

    /** The value of the studio's own of that id. */
    private Optional<Owner> own() {
        return argument("id")
                .flatMap(id -> known.studio().places().stream()
                        .map(WholeDocuments::ownerOf)
                        .flatMap(studio -> items(studio, "assumptions")
                                .filter(own -> isText(own.member("id"), id))
                                .map(own -> new Owner(studio.source(), own)))
                        .findFirst());
    }

    private static Stream<JsonValue> items(Owner owner, String list) {
        return Stream.ofNullable(owner.object().member(list)).flatMap(all -> all.items().stream());
    }

    private static boolean isCalled(JsonValue fibre, String id) {
        return fibre.type() == JsonValue.Type.TEXT
                ? Fibres.all().stream()
                        .anyMatch(known ->
                                known.id().equals(id) && (isText(fibre, known.id()) || isText(fibre, known.name())))
                : isText(fibre.member("id"), id);
    }

    private static boolean isText(@Nullable JsonValue value, String text) {
        return value != null
                && value.type() == JsonValue.Type.TEXT
                && value.text().strip().equals(text);
    }
}
