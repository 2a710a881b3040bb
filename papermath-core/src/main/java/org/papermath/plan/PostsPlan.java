package org.papermath.plan;

import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import org.papermath.engine.FormingSheets;
import org.papermath.engine.Posts;
import org.papermath.evidence.Estimate;
import org.papermath.press.Felts;
import org.papermath.quantity.Kinds;

/** How to lay the posts. */
public final class PostsPlan {
    private record Values(
            int sheetsInPost, int sheetsOnFelt, int posts, int felts, Estimate<Mass> mass, Estimate<Length> height) {}

    private final Values values;

    private PostsPlan(Values values) {
        this.values = values;
    }

    static Stage<PostsPlan> of(PlainNumbers in, int p) {
        if (in.studio().felts().isEmpty()) {
            return Stage.notDone("felts.none", "the studio has no felts: couch on cloths or boards as you do");
        }
        org.papermath.engine.Posts.Setting set = in.settings().posts(p);
        if (set == null) {
            Felts felts = in.studio().felts().get();
            FormingSheets.Setting sheet = in.settings().sheet(p);
            return Stage.notDone(
                    "felts.too-small",
                    "the wet sheet of "
                            + PlanReading.sides(sheet.openingWidth(), sheet.openingHeight())
                            + " is larger than the felts of "
                            + PlanReading.sides(
                                    felts.width().si(), felts.length().si())
                            + ", which take no sheet larger than they are: couch on larger cloths, or use a smaller mould");
        }
        return Stage.done(new PostsPlan(new Values(
                set.sheets(),
                set.onFelt(),
                set.posts(),
                set.layers() + 1,
                in.estimates().of(Kinds.MASS, Posts.POST_MASS, p),
                in.estimates().of(Kinds.LENGTH, Posts.POST_HEIGHT, p))));
    }

    /** {@return sheets in a post} */
    public int sheetsInPost() {
        return values.sheetsInPost;
    }

    /** {@return sheets side by side on one felt} */
    public int sheetsOnFelt() {
        return values.sheetsOnFelt;
    }

    /** {@return how many posts} */
    public int posts() {
        return values.posts;
    }

    /** {@return felts in a post} */
    public int felts() {
        return values.felts;
    }

    /** {@return what a post weighs, wet felts with it} */
    public Estimate<Mass> mass() {
        return values.mass;
    }

    /** {@return how high a post is before pressing} */
    public Estimate<Length> height() {
        return values.height;
    }

    @Override
    public String toString() {
        return values.posts + " posts of " + values.sheetsInPost + " sheets, " + values.felts + " felts";
    }
}
