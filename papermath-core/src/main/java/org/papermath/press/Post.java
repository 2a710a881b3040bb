package org.papermath.press;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import org.papermath.equation.WetWeb;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Notice;
import org.papermath.evidence.Scope;
import org.papermath.notice.SheetNotices;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Share;

/**
 * A post: felt, sheet, felt, sheet … felt, so that n sheets take n + 1 felts. Immutable.
 *
 * <p>Its mass is that of the wet felts and the couched sheets; its height that of all its layers, before pressing.
 */
public final class Post {
    private static final int EVEN_SHEETS = 20;

    private final Felts felts;
    private final int sheets;
    private final double sheetMass;
    private final double wetFelt;
    private final double feltHeight;
    private final double sheetHeight;

    private Post(Felts felts, int sheets, double sheetMass, double wetFelt, double feltHeight, double sheetHeight) {
        this.felts = felts;
        this.sheets = sheets;
        this.sheetMass = sheetMass;
        this.wetFelt = wetFelt;
        this.feltHeight = feltHeight;
        this.sheetHeight = sheetHeight;
    }

    /**
     * Makes a post with the usual water in the felts and the usual height of a layer, by the shipped assumptions.
     *
     * @param felts the felts of the studio
     * @param sheets the sheets in the post, 1 or more
     * @param couchedSheet the mass of one couched sheet, wet
     * @return the post
     * @throws Refused if there are not n + 1 felts for n sheets, or a value is out of range
     */
    public static Post of(Felts felts, int sheets, Quantity<Mass> couchedSheet) {
        return of(Assumptions.standard(), Scope.GENERAL, felts, sheets, couchedSheet);
    }

    /**
     * Makes a post with the usual water in the felts and the usual height of a layer.
     *
     * @param assumptions where {@code felt.water-before} and {@code press.post-height} are looked up
     * @param scope the press, for example {@code Scope.at(press.name())}
     * @param felts the felts of the studio
     * @param sheets the sheets in the post, 1 or more
     * @param couchedSheet the mass of one couched sheet, wet
     * @return the post
     * @throws Refused if there are not n + 1 felts for n sheets, or a value is out of range
     */
    public static Post of(Assumptions assumptions, Scope scope, Felts felts, int sheets, Quantity<Mass> couchedSheet) {
        Objects.requireNonNull(assumptions, "assumptions");
        Objects.requireNonNull(scope, "scope");
        Objects.requireNonNull(felts, "felts");
        if (sheets < 1) {
            throw Refused.of(
                    "count.below-one",
                    "sheets in the post: " + sheets + " given; must be 1 or more.",
                    "given",
                    sheets,
                    "least",
                    1);
        }
        if (sheets + 1 > felts.count()) {
            throw Refused.of(
                    "post.felts",
                    "post: " + sheets + " sheets take " + (sheets + 1) + " felts and there are " + felts.count()
                            + ". Make posts of at most " + largest(felts) + " sheets.",
                    "sheets",
                    sheets,
                    "needed",
                    sheets + 1,
                    "given",
                    felts.count());
        }
        double area = felts.width().si() * felts.length().si();
        double water = assumptions.si("felt.water-before", scope);
        double layer = assumptions.si("press.post-height", scope);
        return new Post(
                felts,
                sheets,
                Kinds.MASS.si(couchedSheet, "mass of the couched sheet"),
                area * (felts.dryGrammage().si() + water),
                Double.NaN,
                layer);
    }

    /**
     * Returns the greatest number of sheets a set of felts allows in one post.
     *
     * @param felts the felts
     * @return one less than the felts
     */
    public static int largest(Felts felts) {
        Objects.requireNonNull(felts, "felts");
        return felts.count() - 1;
    }

    /**
     * Returns the number of posts for a number of sheets.
     *
     * @param allSheets the sheets to press, 1 or more
     * @param sheetsInPost the sheets in a full post, 1 or more
     * @return the posts, the last one perhaps not full
     * @throws Refused if a number is below one
     */
    public static int posts(int allSheets, int sheetsInPost) {
        if (allSheets < 1 || sheetsInPost < 1) {
            throw Refused.of(
                    "count.below-one",
                    "posts: " + allSheets + " sheets in posts of " + sheetsInPost + " given; must be 1 or more.",
                    "given",
                    Math.min(allSheets, sheetsInPost),
                    "least",
                    1);
        }
        return (allSheets - 1) / sheetsInPost + 1;
    }

    /**
     * Returns the post with felts weighed wet.
     *
     * @param oneFelt the mass of one wet felt, above zero
     * @return the post
     * @throws Refused if the mass is not above zero
     */
    public Post wetFelt(Quantity<Mass> oneFelt) {
        return new Post(
                felts,
                sheets,
                sheetMass,
                Kinds.MASS.siAboveZero(oneFelt, "mass of a wet felt"),
                feltHeight,
                sheetHeight);
    }

    /**
     * Returns the post with measured heights of its layers.
     *
     * @param oneFelt the thickness of a wet felt, above zero
     * @param oneSheet the thickness of a couched sheet, above zero
     * @return the post
     * @throws Refused if a height is not above zero
     */
    public Post layers(Quantity<Length> oneFelt, Quantity<Length> oneSheet) {
        return new Post(
                felts,
                sheets,
                sheetMass,
                wetFelt,
                Kinds.LENGTH.siAboveZero(oneFelt, "thickness of a wet felt"),
                Kinds.LENGTH.siAboveZero(oneSheet, "thickness of a couched sheet"));
    }

    /**
     * Returns the number of sheets.
     *
     * @return the sheets
     */
    public int sheets() {
        return sheets;
    }

    /**
     * Returns the number of felts in it.
     *
     * @return one more than the sheets
     */
    public int felts() {
        return sheets + 1;
    }

    /**
     * Returns the mass of one wet felt.
     *
     * @return the mass
     */
    public Amount<Mass> wetFelt() {
        return Kinds.MASS.ofSi(wetFelt, "g");
    }

    /**
     * Returns the mass of the whole post: felts and sheets, wet.
     *
     * @return the mass
     */
    public Amount<Mass> mass() {
        return Kinds.MASS.ofSi(felts() * wetFelt + sheets * sheetMass, "kg");
    }

    /**
     * Returns the height of the post before pressing.
     *
     * @return the height
     */
    public Amount<Length> height() {
        double height = Double.isNaN(feltHeight)
                ? WetWeb.postHeight(sheets, sheetHeight)
                : felts() * feltHeight + sheets * sheetHeight;
        return Kinds.LENGTH.ofSi(height, "mm");
    }

    /**
     * Returns whether the post goes into the opening of a press.
     *
     * @param press the press
     * @return whether its height is at most the daylight
     * @throws Refused if the daylight of the press was not given
     */
    public boolean fits(Press press) {
        Amount<Length> daylight = press.daylight()
                .orElseThrow(() -> Refused.of(
                        "press.no-daylight",
                        "press \"" + press.name()
                                + "\": its opening was not given. Measure the clear height for a post.",
                        "press",
                        press.name()));
        return height().compareTo(daylight) <= 0;
    }

    /**
     * Returns what this post should not be made without knowing, by the shipped assumptions.
     *
     * @param press the press
     * @return an unmodifiable list
     */
    public List<Notice> notices(Press press) {
        return notices(press, Assumptions.standard());
    }

    /**
     * Returns what this post should not be made without knowing: too high for the press, too heavy for one person, too
     * many sheets to press evenly.
     *
     * @param press the press
     * @param assumptions where {@code post.lifting-limit} is looked up
     * @return an unmodifiable list
     */
    public List<Notice> notices(Press press, Assumptions assumptions) {
        List<Notice> notices = new ArrayList<>();
        press.daylight().ifPresent(daylight -> {
            if (height().compareTo(daylight) > 0) {
                notices.add(Notice.warning(
                        "post.too-high",
                        "The post is " + height() + " high and the opening of the press is " + daylight
                                + ". Make smaller posts.",
                        "height",
                        height().toString(),
                        "daylight",
                        daylight.toString()));
            }
        });
        SheetNotices.heavy(mass(), assumptions::si).ifPresent(notices::add);
        if (sheets > EVEN_SHEETS) {
            notices.add(Notice.note(
                    "post.uneven",
                    "Posts of more than " + EVEN_SHEETS + " sheets press unevenly.",
                    "sheets",
                    sheets,
                    "limit",
                    EVEN_SHEETS));
        }
        return List.copyOf(notices);
    }

    /**
     * Returns how far a post comes down in the press.
     *
     * @param before the height before, above zero
     * @param after the height after, at most that before
     * @return the share of the height that is gone
     * @throws Refused if a height is out of range
     */
    public static Amount<Share> settling(Quantity<Length> before, Quantity<Length> after) {
        double first = Kinds.LENGTH.siAboveZero(before, "height of the post before");
        return Kinds.SHARE.ofSi(1 - Kinds.LENGTH.siWithin(after, "height of the post after", 0, first) / first, "%");
    }

    @Override
    public String toString() {
        return "post of " + sheets + " sheets and " + felts() + " felts, " + mass() + ", " + height() + " high";
    }
}
