package org.papermath.engine;

import org.jspecify.annotations.Nullable;
import org.papermath.equation.WetWeb;
import org.papermath.numeric.Rounding;
import org.papermath.order.Studio;
import org.papermath.press.Felts;
import org.papermath.press.Press;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kinds;

/** Sheets and felts in posts: how many to a post, what it weighs, how high it is. */
public final class Posts {
    static final StageFigures FIGURES = new StageFigures();

    public static final PieceFigure POST_MASS =
            FIGURES.pieceIfKnown("mass of the post", Kinds.MASS, "kg", Scale.FACTOR);
    public static final PieceFigure POST_HEIGHT = FIGURES.piece("height of the post", Kinds.LENGTH, "mm", Scale.FACTOR);

    private final Workshop workshop;
    private final int felts;
    private final double feltDry;
    private final double daylight;
    private final Slot usual;
    private final Slot heightEach;
    private final Slot feltWater;

    /**
     * The posts.
     *
     * @param sheets sheets in a post
     * @param posts how many posts
     */
    public record Setting(int sheets, int posts) {}

    Posts(Known known, Workshop workshop, Studio studio) {
        this.workshop = workshop;
        felts = studio.felts().map(Felts::count).orElse(0);
        feltDry = studio.felts().map(one -> one.dryGrammage().si()).orElse(0.0);
        daylight = studio.press().flatMap(Press::daylight).map(Amount::si).orElse(Double.NaN);
        usual = known.slot("labour.post-sheets", workshop.press);
        heightEach = known.slot("press.post-height", workshop.press);
        feltWater = known.slot("felt.water-before");
    }

    /** Decides the posts; none where there are no felts, or none a sheet lies on. */
    @Nullable
    Setting decide(FormingSheets.Setting sheet, Values v) {
        if (!workshop.hasFelts || !workshop.isFelted(sheet.openingWidth(), sheet.openingHeight())) {
            return null;
        }
        int post = Math.min(felts - 1, (int) v.of(usual));
        if (!Double.isNaN(daylight)) {
            post = Math.min(post, Math.max(1, (int) Math.floor(daylight / v.of(heightEach) + Rounding.GUARD)));
        }
        int sheets = Math.max(1, Math.min(post, sheet.sheets()));
        return new Setting(sheets, (int) Rounding.ceil((double) sheet.sheets() / sheets));
    }

    /** What a post is before it is pressed. */
    void forecast(Passage on) {
        Setting set = on.settings.posts(on.piece);
        on.set(POST_MASS, mass(set, on.run.solids(), on.state.couchedSolids(), on.v));
        on.set(POST_HEIGHT, height(set, on.v));
    }

    /** Mass of a post, kg; not a number without felts. */
    double mass(@Nullable Setting set, double solids, double couchedSolids, Values v) {
        return set == null
                ? Double.NaN
                : (set.sheets + 1) * workshop.feltWidth * workshop.feltLength * (feltDry + v.of(feltWater))
                        + set.sheets * solids / couchedSolids;
    }

    /** Height of a post, m. */
    double height(@Nullable Setting set, Values v) {
        return WetWeb.postHeight(set == null ? 0 : set.sheets, v.of(heightEach));
    }
}
