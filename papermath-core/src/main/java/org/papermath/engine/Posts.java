package org.papermath.engine;

import org.jspecify.annotations.Nullable;
import org.papermath.equation.WetWeb;
import org.papermath.notice.SheetNotices;
import org.papermath.numeric.Rounding;
import org.papermath.order.Studio;
import org.papermath.press.Felts;
import org.papermath.press.Press;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kinds;

/** Sheets and felts in posts: how many to a felt and to a post, what it weighs, how high it is. */
public final class Posts {
    static final StageFigures FIGURES = new StageFigures();

    public static final PieceFigure POST_MASS =
            FIGURES.pieceIfKnown("mass of the post", Kinds.MASS, "kg", Scale.FACTOR);
    public static final PieceFigure POST_HEIGHT = FIGURES.piece("height of the post", Kinds.LENGTH, "mm", Scale.FACTOR);

    private final Workshop workshop;
    private final int felts;
    private final double feltDry;
    /** Thickness of a felt; not a number where it was not measured. */
    private final double feltThick;

    private final double daylight;
    private final @Nullable Slot usual;
    private final @Nullable Slot gap;
    private final @Nullable Slot feltDensity;
    /** Water over dry mass; null where the thickness tells it. */
    private final @Nullable Slot feltWater;

    private final @Nullable Slot holdFactor;
    private final @Nullable Slot wallDensity;
    private final @Nullable Slot dampShare;

    /**
     * The posts.
     *
     * @param sheets sheets in a post
     * @param onFelt sheets on one felt
     * @param posts how many posts
     */
    public record Setting(int sheets, int onFelt, int posts) {
        /** Layers of sheets in a post; it has one felt more. */
        public int layers() {
            return (sheets - 1) / onFelt + 1;
        }
    }

    Posts(Known known, Workshop workshop, Studio studio) {
        this.workshop = workshop;
        felts = studio.felts().map(Felts::count).orElse(0);
        feltDry = studio.felts().map(one -> one.dryGrammage().si()).orElse(0.0);
        feltThick = studio.felts().flatMap(Felts::thickness).map(Amount::si).orElse(Double.NaN);
        daylight = studio.press().flatMap(Press::daylight).map(Amount::si).orElse(Double.NaN);
        boolean any = workshop.hasFelts;
        boolean thick = !Double.isNaN(feltThick);
        usual = any ? known.slot("labour.post-sheets", workshop.press) : null;
        gap = any ? known.slot("felt.gap") : null;
        feltDensity = any && !thick ? known.slot("felt.density", workshop.press) : null;
        Slot weighed = any ? known.own("felt.water-before", workshop.press) : null;
        feltWater = any && !thick ? known.slot("felt.water-before", workshop.press) : weighed;
        boolean told = any && feltWater == null;
        holdFactor = told ? known.slot("felt.hold-factor", workshop.press) : null;
        wallDensity = told ? known.slot("felt.wall-density", workshop.press) : null;
        dampShare = told ? known.slot("felt.damp-share", workshop.press) : null;
        if (wallDensity != null) {
            SheetNotices.requireFelt(feltDry / feltThick, known.likely().of(wallDensity));
        }
    }

    /**
     * Decides the posts; none where there are no felts, or none a sheet lies on.
     *
     * @param press what the press is set to; null where the sheets are not pressed
     * @param mat thickness of a couched sheet, m
     */
    @Nullable
    Setting decide(FormingSheets.Setting sheet, Pressing.@Nullable Setting press, double mat, Values v) {
        if (usual == null || gap == null || !workshop.isFelted(sheet.openingWidth(), sheet.openingHeight())) {
            return null;
        }
        int layers = Math.min(felts - 1, (int) v.of(usual));
        if (!Double.isNaN(daylight)) {
            double high = WetWeb.layersWithin(daylight, feltThickness(v), mat);
            layers = Math.min(layers, Math.max(1, (int) Math.floor(high + Rounding.GUARD)));
        }
        int onFelt = press != null
                ? press.onFelt()
                : Math.min(sheet.sheets(), workshop.onFelt(sheet.openingWidth(), sheet.openingHeight(), v.of(gap)));
        int sheets = (int) Math.max(1, Math.min((long) layers * onFelt, sheet.sheets()));
        return new Setting(sheets, onFelt, (int) Rounding.ceil((double) sheet.sheets() / sheets));
    }

    /** What a post is before it is pressed. */
    void forecast(Passage on) {
        Setting set = on.settings.posts(on.piece);
        on.set(POST_MASS, mass(set, on.run.solids(), on.state.couchedSolids(), on.v));
        on.set(POST_HEIGHT, height(set, on.of(FormingSheets.MAT), on.v));
    }

    /** Mass of a post, kg; not a number without felts. */
    double mass(@Nullable Setting set, double solids, double couchedSolids, Values v) {
        return set == null
                ? Double.NaN
                : (set.layers() + 1) * workshop.feltWidth * workshop.feltLength * feltDry * (1 + feltWater(v))
                        + set.sheets * solids / couchedSolids;
    }

    /** Height of a post, m. */
    double height(@Nullable Setting set, double mat, Values v) {
        return set == null ? 0 : WetWeb.postHeight(set.layers(), feltThickness(v), mat);
    }

    private double feltThickness(Values v) {
        return feltDensity == null ? feltThick : WetWeb.feltThickness(feltDry, v.of(feltDensity));
    }

    /** Water in a working felt over its dry mass. */
    private double feltWater(Values v) {
        if (holdFactor == null || wallDensity == null || dampShare == null) {
            return feltWater == null ? 0 : v.of(feltWater);
        }
        return v.of(dampShare) * WetWeb.soakedFelt(v.of(holdFactor), feltDry / feltThick, v.of(wallDensity));
    }
}
