package org.papermath.card;

import java.util.Optional;
import org.papermath.drying.Dryer;
import org.papermath.plan.DryingPlan;
import org.papermath.plan.PiecePlan;
import org.papermath.plan.PostsPlan;
import org.papermath.text.SvgWriter;

/** What lies on what: a post of felts and wet sheets at true height, and a layer of a drying stack. */
final class LayersPicture {
    private static final double WIDE = 46;
    private static final double BOARD = 4;
    /** A post higher than this is drawn half as high. */
    private static final double MOST = 60;

    private static final String STYLE = "text{font:2.8px sans-serif}rect{stroke:#000;stroke-width:0.2;fill:#fff}"
            + "rect.sheet{fill:#000}rect.board{fill:url(#hatch)}rect.blotter{fill:#ddd}";
    private static final String HATCH =
            "<defs><pattern id=\"hatch\" width=\"2\" height=\"2\" patternUnits=\"userSpaceOnUse\">"
                    + "<path d=\"M0 2L2 0\" stroke=\"#000\" stroke-width=\"0.3\"/></pattern></defs>\n";

    private LayersPicture() {}

    /** {@return the post of a piece: felts white, sheets black, boards hatched} */
    static Optional<String> post(PiecePlan piece) {
        return piece.postsStage().optional().filter(posts -> posts.felts() > 1).map(LayersPicture::post);
    }

    private static String post(PostsPlan posts) {
        double true1 = posts.height().likely().in("mm");
        int scale = true1 > MOST ? (int) Math.ceil(true1 / MOST) : 1;
        double high = true1 / scale;
        int layers = posts.felts() - 1;
        double felt = high / (posts.felts() + 0.35 * layers);
        double sheet = 0.35 * felt;
        SvgWriter out = new SvgWriter(2).head("img", WIDE + 2, high + 2 * BOARD + 8, "a post", STYLE, HATCH);
        out.described(posts.felts() + " felts and " + posts.sheetsOnFelt() + " sheets on each, " + Math.round(true1)
                + " mm high between boards");
        double y = 1;
        out.rect("board", 1, y, WIDE, BOARD, "");
        y += BOARD;
        for (int i = 0; i < posts.felts(); i++) {
            out.rect("", 3, y, WIDE - 4, felt, "");
            y += felt;
            if (i < layers) {
                int side = Math.min(4, posts.sheetsOnFelt());
                double each = (WIDE - 8) / side;
                for (int s = 0; s < side; s++) {
                    out.rect("sheet", 5 + s * each, y, each - 1, sheet, "");
                }
                y += sheet;
            }
        }
        out.rect("board", 1, y, WIDE, BOARD, "");
        out.text("", 1, y + BOARD + 4, scale == 1 ? "true height" : "1 : " + scale);
        return out.end();
    }

    /** {@return a layer of the stack a piece dries in, not to scale; none for another dryer} */
    static Optional<String> stack(PiecePlan piece) {
        return piece.dryingStage()
                .optional()
                .filter(drying -> drying.dryer() instanceof Dryer.FanStack)
                .map(LayersPicture::stack);
    }

    /** {@return how many layers a filling has} */
    static int layers(PiecePlan piece, DryingPlan drying) {
        int sheets = Math.min(piece.counts().sheets(), drying.atOnce());
        return Math.max(1, (sheets + drying.inLayer() - 1) / Math.max(1, drying.inLayer()));
    }

    private static String stack(DryingPlan drying) {
        SvgWriter out = new SvgWriter(2).head("img", WIDE + 24, 30, "a layer of the stack", STYLE, HATCH);
        out.described("a layer: board, blotter, " + drying.inLayer() + " sheets, blotter; a board on top of the last");
        double y = 1;
        out.rect("board", 1, y, WIDE, BOARD, "");
        out.text("", WIDE + 2, y + 3, "board");
        y += BOARD;
        out.rect("blotter", 2, y, WIDE - 2, 3, "");
        out.text("", WIDE + 2, y + 2.6, "blotter");
        y += 3;
        int side = Math.min(6, drying.inLayer());
        double each = (WIDE - 6) / side;
        for (int s = 0; s < side; s++) {
            out.rect("sheet", 4 + s * each, y, each - 1, 1, "");
        }
        out.text("", WIDE + 2, y + 2.4, drying.inLayer() == 1 ? "a sheet" : drying.inLayer() + " sheets");
        y += 1;
        out.rect("blotter", 2, y, WIDE - 2, 3, "");
        out.text("", WIDE + 2, y + 3.8, "blotter");
        y += 3;
        out.rect("board", 1, y, WIDE, BOARD, "");
        out.text("", 1, y + BOARD + 5, "not to scale; layer on layer, then strap them");
        return out.end();
    }
}
