package org.papermath.card;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import org.papermath.drying.Dryer;
import org.papermath.plan.DryingPlan;
import org.papermath.plan.PiecePlan;
import org.papermath.plan.WorkStep;

/** Where sheets dry, for how long, and how one knows that they are dry. */
final class DrySection extends CardSection {
    private static final int TEN = 10;

    DrySection(CardWriter card) {
        super(card);
    }

    @Override
    boolean write(int number) {
        form.section(number, Label.DRY.words(), "room at " + plan.studio().room());
        if (any(piece -> piece.dryingStage().isDone())) {
            dry();
        } else {
            reasons(Label.DRY, PiecePlan::dryingStage);
        }
        cautions(WorkStep.DRY_UNDER_WEIGHT, WorkStep.DRY_IN_AIR, WorkStep.DRY_ON_BOARDS);
        return true;
    }

    private void dry() {
        table(
                Mark.SET,
                List.of(
                        new Column(
                                Label.DRYER,
                                piece -> dry(
                                        piece, one -> Written.set(one.dryer().name()))),
                        new Column(
                                Label.FILLINGS,
                                piece -> dry(
                                        piece,
                                        one -> one.loads()
                                                + (one.dryer() instanceof Dryer.FanStack
                                                        ? ", "
                                                                + Figures.count(
                                                                        LayersPicture.layers(piece, one), "layer")
                                                        : "")
                                                + (one.inLayer() > 1 ? ", " + one.inLayer() + " in a layer" : ""))),
                        new Column(
                                Label.LEFT,
                                piece -> dry(
                                        piece,
                                        one -> one.left().si()
                                                        > one.time().likely().si()
                                                ? Figures.clock(one.left())
                                                : "")),
                        new Column(
                                Label.TIGHTEN,
                                piece -> dry(
                                        piece,
                                        one -> one.tighten().map(Figures::clock).orElse(""))),
                        new Column(
                                Label.CHANGES,
                                piece -> dry(
                                        piece,
                                        one -> one.blotterChanges() > 0
                                                ? Integer.toString(one.blotterChanges())
                                                : ""))),
                piece -> piece.dryingStage().isDone());
        each(
                Mark.MORE,
                "",
                piece -> piece.dryingStage().isDone()
                        ? ""
                        : "not dried: " + piece.dryingStage().reason());
        List<Across> rows = new ArrayList<>();
        across(rows, Mark.EXPECT, Label.TIME, piece -> dry(piece, one -> figures.spell(one.time())));
        across(rows, Mark.EXPECT, Label.RELEASED, piece -> dry(piece, one -> figures.band(one.water())));
        across(rows, Mark.CHECK, Label.TEN, piece -> dry(piece, one -> ten(piece, one)));
        toRead(rows);
        columns("a filling", rows);
        pieces.all().stream()
                .flatMap(piece -> LayersPicture.stack(piece).stream())
                .findFirst()
                .ifPresent(svg -> form.picture(new Picture(svg, "a layer of the stack", false)));
        form.line(
                Mark.CHECK,
                "dry when two weighings an hour apart agree and no sheet is cool to the cheek. If not: leave them in");
    }

    private static String dry(PiecePlan piece, Function<DryingPlan, String> said) {
        return piece.dryingStage().map(said).orElse("");
    }

    /** What ten sheets weigh as they go in and as they come out: what the room's water leaves on the solids. */
    private String ten(PiecePlan piece, DryingPlan drying) {
        double solids = piece.forming().solids().in("g");
        double wet = solids / piece.solids().likely().si();
        double water = drying.water().likely().in("g") / piece.counts().sheets();
        int sheets = Math.max(1, Math.min(TEN, piece.counts().sheets()));
        double in = sheets * wet;
        double out = sheets * Math.max(solids, wet - water);
        return (sheets == TEN ? "" : sheets + " weigh ") + Figures.two(in) + " to " + Figures.two(out) + " g";
    }
}
