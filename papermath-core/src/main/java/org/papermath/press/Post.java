package org.papermath.press;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import org.papermath.equation.WetWeb;
import org.papermath.evidence.Assumption;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Basis;
import org.papermath.evidence.Notice;
import org.papermath.evidence.Scope;
import org.papermath.notice.SheetNotices;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Share;
import org.papermath.sheet.CouchedSheet;

/**
 * A post: felt, sheets, felt, sheets … felt, so that n layers of sheets take n + 1 felts. Immutable.
 *
 * <p>Its mass is that of the wet felts and the couched sheets; its height that of all its layers, before pressing. The
 * thickness of a felt is that measured, or its grammage over the usual density. Its water is that measured here; else,
 * of a felt of known thickness, a share ({@code felt.damp-share}) of what it holds when soaked,
 * {@code k (1/rho - 1/rho_f)} of its dry mass with densities in g/cm³; else the usual one.
 */
public final class Post {
    private static final int EVEN_SHEETS = 20;

    private final Felts felts;
    private final int sheets;
    private final int onFelt;
    private final double sheetMass;
    private final double wetFelt;
    private final double feltHeight;
    private final double sheetHeight;

    private Post(
            Felts felts,
            int sheets,
            int onFelt,
            double sheetMass,
            double wetFelt,
            double feltHeight,
            double sheetHeight) {
        this.felts = felts;
        this.sheets = sheets;
        this.onFelt = onFelt;
        this.sheetMass = sheetMass;
        this.wetFelt = wetFelt;
        this.feltHeight = feltHeight;
        this.sheetHeight = sheetHeight;
    }

    /**
     * Makes a post with one sheet on each felt, by the shipped assumptions.
     *
     * @param felts the felts of the studio
     * @param sheets the sheets in the post, 1 or more
     * @param sheet one couched sheet
     * @return the post
     * @throws Refused if there are not n + 1 felts for n sheets, or a value is out of range
     */
    public static Post of(Felts felts, int sheets, CouchedSheet sheet) {
        return of(Assumptions.standard(), Scope.GENERAL, felts, sheets, sheet);
    }

    /**
     * Makes a post with one sheet on each felt.
     *
     * @param assumptions where the water in the felts and the densities of felt, fibre wall and water are looked up
     * @param scope the press, for example {@code Scope.at(press.name())}
     * @param felts the felts of the studio
     * @param sheets the sheets in the post, 1 or more
     * @param sheet one couched sheet
     * @return the post
     * @throws Refused if there are not n + 1 felts for n sheets, or a value is out of range
     */
    public static Post of(Assumptions assumptions, Scope scope, Felts felts, int sheets, CouchedSheet sheet) {
        return of(assumptions, scope, felts, sheets, 1, sheet);
    }

    /**
     * Makes a post with several sheets side by side on each felt.
     *
     * @param assumptions where the water in the felts and the densities of felt, fibre wall and water are looked up
     * @param scope the press, for example {@code Scope.at(press.name())}
     * @param felts the felts of the studio
     * @param sheets the sheets in the post, 1 or more
     * @param onFelt the sheets on one felt, 1 or more; {@link Felts#sheetsOn} says how many lie on it
     * @param sheet one couched sheet
     * @return the post
     * @throws Refused if there is not one felt more than layers of sheets, the felts are denser than wool, or a value is
     *     out of range
     */
    public static Post of(
            Assumptions assumptions, Scope scope, Felts felts, int sheets, int onFelt, CouchedSheet sheet) {
        Objects.requireNonNull(assumptions, "assumptions");
        Objects.requireNonNull(scope, "scope");
        Objects.requireNonNull(felts, "felts");
        Objects.requireNonNull(sheet, "sheet");
        requireOneOrMore(sheets, "sheets in the post");
        requireOneOrMore(onFelt, "sheets on a felt");
        int needed = layers(sheets, onFelt) + 1;
        if (needed > felts.count()) {
            throw Refused.of(
                    "post.felts",
                    "post: " + sheets + " sheets take " + needed + " felts and there are " + felts.count()
                            + ". Make posts of at most " + (long) largest(felts) * onFelt + " sheets.",
                    "sheets",
                    sheets,
                    "needed",
                    needed,
                    "given",
                    felts.count());
        }
        double dry = felts.dryGrammage().si();
        double area = felts.width().si() * felts.length().si();
        return new Post(
                felts,
                sheets,
                onFelt,
                sheet.mass().si(),
                area * dry * (1 + feltWater(assumptions, scope, felts)),
                felts.thickness()
                        .map(Amount::si)
                        .orElseGet(() -> WetWeb.feltThickness(dry, assumptions.si("felt.density", scope))),
                WetWeb.thickness(
                        sheet.ovenDryGrammage().si(),
                        sheet.ratio().si(),
                        assumptions.si("fibre.cell-wall-density", scope),
                        assumptions.si("water.density-in-beater", scope)));
    }

    private static void requireOneOrMore(int given, String what) {
        if (given < 1) {
            throw Refused.of(
                    "count.below-one", what + ": " + given + " given; must be 1 or more.", "given", given, "least", 1);
        }
    }

    private static int layers(int sheets, int onFelt) {
        return (sheets - 1) / onFelt + 1;
    }

    /** Water in a working felt over its dry mass. */
    static double feltWater(Assumptions assumptions, Scope scope, Felts felts) {
        Assumption usual = assumptions.get("felt.water-before", scope);
        if (felts.thickness().isEmpty() || usual.basis() == Basis.MEASURED_HERE || usual.basis() == Basis.GIVEN) {
            return usual.likelySi();
        }
        double density = felts.dryGrammage().si() / felts.thickness().get().si();
        double wool = assumptions.si("felt.wall-density", scope);
        SheetNotices.requireFelt(density, wool);
        return assumptions.si("felt.damp-share", scope)
                * WetWeb.soakedFelt(assumptions.si("felt.hold-factor", scope), density, wool);
    }

    /**
     * Returns the greatest number of sheets a set of felts allows in one post, with one sheet on each felt.
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
                onFelt,
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
                onFelt,
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
     * Returns the sheets on one felt.
     *
     * @return the sheets, 1 or more
     */
    public int onFelt() {
        return onFelt;
    }

    /**
     * Returns the number of felts in it.
     *
     * @return one more than the layers of sheets
     */
    public int felts() {
        return layers(sheets, onFelt) + 1;
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
        return Kinds.LENGTH.ofSi(WetWeb.postHeight(layers(sheets, onFelt), feltHeight, sheetHeight), "mm");
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
     * Returns the verdict on this post in a press, and what it weighs.
     *
     * @param press the press
     * @return for example {@code fits: 193.5 mm high in a daylight of 230 mm; post of 25 sheets and 26 felts, 11.2 kg}
     * @throws Refused if the daylight of the press was not given
     */
    public String verdict(Press press) {
        boolean goesIn = fits(press);
        return (goesIn ? "fits: " : "does not fit: ") + height() + " high in a daylight of "
                + press.daylight().orElseThrow() + "; " + what() + ", " + mass();
    }

    private String what() {
        return "post of " + sheets + " sheets" + (onFelt > 1 ? ", " + onFelt + " to a felt," : "") + " and " + felts()
                + " felts";
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
     * Returns what this post should not be made without knowing: too high for the press, too heavy for one person or
     * for two, too many layers to press evenly.
     *
     * @param press the press
     * @param assumptions where {@code post.lifting-limit} and {@code post.lifting-team} are looked up
     * @return an unmodifiable list
     */
    public List<Notice> notices(Press press, Assumptions assumptions) {
        List<Notice> notices = new ArrayList<>();
        press.daylight()
                .flatMap(daylight -> SheetNotices.high(height(), daylight))
                .ifPresent(notices::add);
        SheetNotices.heavy(mass(), assumptions::si).ifPresent(notices::add);
        int layers = layers(sheets, onFelt);
        if (layers > EVEN_SHEETS) {
            notices.add(Notice.note(
                    "post.uneven",
                    "Posts of more than " + EVEN_SHEETS + " felts with sheets press unevenly.",
                    "sheets",
                    layers,
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
        return what() + ", " + mass() + ", " + height() + " high";
    }
}
