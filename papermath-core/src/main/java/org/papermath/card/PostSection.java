package org.papermath.card;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.Function;
import org.papermath.plan.PiecePlan;
import org.papermath.plan.PostsPlan;
import org.papermath.plan.PressingPlan;
import org.papermath.plan.WorkStep;
import org.papermath.press.Press;

/** Posts, felts and the press. */
final class PostSection extends CardSection {
    PostSection(CardWriter card) {
        super(card);
    }

    @Override
    boolean write(int number) {
        form.otherPlace();
        form.section(number, Label.PRESS.words(), "");
        boolean hasPosts = any(piece -> piece.postsStage().isDone());
        boolean isPressed = any(piece -> piece.pressStage().isDone());
        if (hasPosts || isPressed) {
            table(
                    Mark.SET,
                    List.of(
                            new Column(
                                    Label.POSTS,
                                    piece -> posts(
                                            piece,
                                            one -> Written.set(Integer.toString(one.posts())) + " of up to "
                                                    + one.sheetsInPost())),
                            new Column(
                                    Label.FELTS,
                                    piece -> posts(
                                            piece,
                                            one -> Written.set(Integer.toString(one.felts()))
                                                    + (one.sheetsOnFelt() > 1
                                                            ? ", " + one.sheetsOnFelt() + " sheets on each"
                                                            : ""))),
                            new Column(
                                    Label.GAUGE,
                                    piece -> press(
                                            piece,
                                            one -> one.gauge()
                                                    .map(gauge -> Written.set(figures.about(gauge, "psi")))
                                                    .orElse(""))),
                            new Column(
                                    Label.PULL,
                                    piece -> press(
                                            piece,
                                            one -> one.pull()
                                                    .map(pull -> Written.set(figures.about(pull, "lbf"))
                                                            + (people() > 1 ? " each" : ""))
                                                    .orElse(""))),
                            new Column(
                                    Label.LOAD,
                                    piece -> press(piece, one -> Written.set(figures.about(one.force(), "lbf")))),
                            new Column(
                                    Label.PRESSURE,
                                    piece -> press(piece, one -> figures.about(one.pressure(), "psi")))),
                    piece -> piece.postsStage().isDone() || piece.pressStage().isDone());
        }
        if (hasPosts) {
            form.line(Mark.SET, "felts damp, not dripping, before couching");
        } else {
            reasons(Label.POSTS, PiecePlan::postsStage);
        }
        if (isPressed) {
            each(
                    Mark.SET,
                    Label.HOLD,
                    piece -> press(
                            piece,
                            one -> Written.set(Figures.clock(one.time()))
                                    + (one.times() > 1 ? ", " + one.times() + " times" : "")));
            if (plan.studio().press().map(Press::pressings).orElse(1) > 1) {
                form.line(Mark.SET, "exchange the felts for drier ones between the pressings");
            }
        } else {
            reasons(Label.LOAD, PiecePlan::pressStage);
        }
        List<Across> rows = new ArrayList<>();
        across(rows, Mark.EXPECT, Label.POST_MASS, piece -> posts(piece, one -> figures.band(one.mass())));
        across(rows, Mark.EXPECT, Label.POST_HEIGHT, piece -> posts(piece, one -> figures.band(one.height())));
        across(rows, Mark.CHECK, Label.PRESSED, this::pressed);
        toRead(rows);
        across(rows, Mark.EXPECT, Label.SOLIDS, piece -> figures.band(piece.solids()));
        columns("", rows);
        if (isPressed) {
            form.line(
                    Mark.MORE,
                    "A pressed sheet above its band: press once more as long; set the load again as it falls.");
        }
        pieces.all().stream()
                .filter(piece -> piece.postsStage().isDone())
                .max(Comparator.comparingDouble(
                        (PiecePlan piece) -> piece.posts().height().likely().si()))
                .ifPresent(piece -> LayersPicture.post(piece)
                        .ifPresent(svg -> form.picture(new Picture(
                                svg,
                                "a post of " + pieces.named(piece) + (pieces.areSeveral() ? ", the highest" : "")
                                        + ": felts white, sheets black",
                                false))));
        cautions(WorkStep.LAY_POSTS, WorkStep.PRESS);
        return true;
    }

    private int people() {
        return plan.studio()
                .press()
                .flatMap(Press::lever)
                .map(lever -> lever.people())
                .orElse(1);
    }

    private static String posts(PiecePlan piece, Function<PostsPlan, String> said) {
        return piece.postsStage().map(said).orElse("");
    }

    private static String press(PiecePlan piece, Function<PressingPlan, String> said) {
        return piece.pressStage().map(said).orElse("");
    }

    /** What a sheet weighs once it is as dry as it leaves the post: its solids over their share. */
    private String pressed(PiecePlan piece) {
        double solids = piece.forming().solids().in("g");
        return Figures.between(
                solids / piece.solids().likely().si(),
                solids / piece.solids().high().si(),
                solids / piece.solids().low().si(),
                " g");
    }
}
