package org.papermath.engine;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.papermath.evidence.Assumptions;
import org.papermath.fibre.BoughtFibre.Form;
import org.papermath.fibre.Fibre;
import org.papermath.fibre.FibreProperty;
import org.papermath.fibre.Fibres;
import org.papermath.order.Recipe;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Unclear;

/** What is said of a fibre of which something is not known: which known fibre could lend it, and where it can be given. */
final class OwnFibre {
    private OwnFibre() {}

    /** The first known fibre of the same class of which a value is known, as one that may be stated as kin. */
    private static Optional<Fibre> like(Fibre fibre, String id, Assumptions store) {
        return Fibres.all().stream()
                .filter(known -> known.sourceClass() == fibre.sourceClass() && !known.equals(fibre))
                .filter(known -> !fibre.kin().contains(known.id()))
                .filter(known -> store.find(id, known.scope()).isPresent())
                .findFirst();
    }

    /** The refusal of a fibre of which a value is missing that nothing can stand in for. */
    static Refused missing(Refused refused, Recipe recipe, Fibre fibre, Assumptions store) {
        if (!refused.code().equals("assumption.missing")) {
            return refused;
        }
        String id = String.valueOf(refused.arguments().get("id"));
        Optional<Fibre> like = like(fibre, id, store);
        return Refused.of(
                "assumption.missing",
                "recipe " + recipe.name() + ": " + fibre + ": there is no default for " + id + ". "
                        + like.map(kin -> "State the fibre it is most like as its kin, such as " + kin.id()
                                        + ", whose values are taken then; or measure")
                                .orElse("Measure")
                        + " it, and give the studio a value for " + id + fibre.scope() + ".",
                "id",
                id,
                "scope",
                fibre.scope().toString(),
                "recipe",
                recipe.name(),
                "fibre",
                fibre.id(),
                "member",
                "furnish",
                "kin",
                like.map(Fibre::id).orElse(""));
    }

    /** The question what has become of a fibre whose yield in cooking is not known. */
    static Unclear noYield(Recipe recipe, Fibre fibre, Form form, Assumptions store) {
        String id = FibreProperty.YIELD.id();
        Optional<Fibre> like = like(fibre, id, store);
        List<Unclear.Candidate> candidates = new ArrayList<>();
        like.ifPresent(kin -> candidates.add(
                new Unclear.Candidate("like a fibre that is known", "state it as its kin, such as " + kin.id())));
        candidates.add(new Unclear.Candidate("cooked by you", "give the studio a value for " + id + form.scope(fibre)));
        candidates.add(new Unclear.Candidate(
                "ready for the beater",
                "state the form it is bought in: " + Form.HALF_STUFF.words() + ", " + Form.SHEET.words() + " or "
                        + Form.BALE.words()));
        return new Unclear(
                "cook.no-yield",
                "recipe " + recipe.name() + ": " + fibre + " as " + form.words()
                        + " has to be cooked, but its yield in cooking is not known. "
                        + FibreProperty.YIELD.howToMeasure(),
                candidates,
                "recipe",
                recipe.name(),
                "fibre",
                fibre.id(),
                "form",
                form.words(),
                "member",
                "furnish",
                "kin",
                like.map(Fibre::id).orElse(""));
    }
}
