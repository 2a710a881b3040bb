package org.papermath.envelope;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import org.papermath.equation.EnvelopeBlanks;
import org.papermath.equation.EnvelopeBlanks.Blank;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Notice;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Moisture;
import org.papermath.quantity.Refused;
import org.papermath.shape.Outline;

/**
 * An envelope for a card: the blank to cut, where to score and fold it, and what it measures when made. Immutable.
 *
 * <p>The inside is the card plus the thickness of the filling plus the clearance, each way: a filling that lies flat
 * takes its thickness again in width and height, because the paper runs round its edges. Folds lie in the middle of the
 * paper, so they stand one thickness of the paper further apart than the inside, and the outside is two thicknesses
 * larger.
 *
 * <pre>{@code
 * Envelope.forCard(EnvelopeStyle.DIAMOND, mm(120), mm(170), mm(0.45), EnvelopeAllowances.from(Assumptions.standard()))
 *         .ofPaper(mm(0.18))
 *         .blank();
 * }</pre>
 *
 * @source side-seam blank W + 2s by 2H − t + f: common practice; least square of a diamond (w + h)/√2 by geometry
 */
public final class Envelope {
    private final EnvelopeStyle style;
    private final double cardWidth;
    private final double cardHeight;
    private final double cardThickness;
    private final int cards;
    private final double inserts;
    private final EnvelopeAllowances allowances;
    private final double paper;
    private final Flap flap;
    private final double flapDepth;
    private final double throat;
    private final double taper;
    private final Blank made;

    /** The form of the flap over side seams. */
    public enum Flap {
        /** Straight, as wide as the envelope. */
        SQUARE,
        /** A triangle. */
        POINTED
    }

    private Envelope(
            EnvelopeStyle style,
            double cardWidth,
            double cardHeight,
            double cardThickness,
            int cards,
            double inserts,
            EnvelopeAllowances allowances,
            double paper,
            Flap flap,
            double flapDepth,
            double throat,
            double taper) {
        this.style = style;
        this.cardWidth = cardWidth;
        this.cardHeight = cardHeight;
        this.cardThickness = cardThickness;
        this.cards = cards;
        this.inserts = inserts;
        this.allowances = allowances;
        this.paper = paper;
        this.flap = flap;
        this.flapDepth = flapDepth;
        this.throat = throat;
        this.taper = taper;
        double filling = cards * cardThickness + inserts;
        double clearance = allowances.clearance().si();
        double share = (flap == Flap.SQUARE ? allowances.squareFlap() : allowances.pointedFlap()).si();
        double depthOf = switch (style) {
            case SIDE_SEAM, DIAMOND -> cardHeight;
            case WALLET, OPEN_END -> Math.min(cardWidth, cardHeight);
        };
        double depth = flapDepth > 0
                ? flapDepth
                : share * EnvelopeBlanks.panel(EnvelopeBlanks.inside(depthOf, filling, clearance), paper);
        double sideFlap = allowances.sideFlap().si();
        double seam = allowances.seam().si();
        this.made = switch (style) {
            case SIDE_SEAM ->
                EnvelopeBlanks.sideSeam(
                        cardWidth,
                        cardHeight,
                        filling,
                        clearance,
                        paper,
                        sideFlap,
                        taper,
                        throat,
                        depth,
                        flap == Flap.SQUARE ? 1 : 0);
            case DIAMOND -> EnvelopeBlanks.diamond(cardWidth, cardHeight, filling, clearance, paper, seam);
            case WALLET ->
                EnvelopeBlanks.wallet(cardWidth, cardHeight, filling, clearance, paper, sideFlap, taper, depth);
            case OPEN_END ->
                EnvelopeBlanks.openEnd(cardWidth, cardHeight, filling, clearance, paper, seam, sideFlap, depth);
        };
        if (style == EnvelopeStyle.SIDE_SEAM && !(made.flapOverlap() > 0)) {
            throw Refused.of(
                    "envelope.flap-short",
                    "envelope: the flap is " + length(depth) + " deep and the throat " + length(throat)
                            + "; the flap has to reach below the throat. Make it deeper or the throat less.",
                    "flap",
                    depth,
                    "throat",
                    throat);
        }
        double panelHeight = made.insideHeight() + paper;
        double panelWidth = made.insideWidth() + paper;
        if (style != EnvelopeStyle.DIAMOND && made.flapOverlap() + throat > panelHeight) {
            throw Refused.of(
                    "envelope.flap-long",
                    "envelope: the flap is " + length(depth)
                            + " deep and reaches past the bottom of the pocket, which is "
                            + length(panelHeight) + " high. Make it less deep.",
                    "flap",
                    depth,
                    "height",
                    panelHeight);
        }
        if (2 * taper > panelHeight
                || throat >= panelHeight
                || ((style == EnvelopeStyle.SIDE_SEAM || style == EnvelopeStyle.WALLET) && 2 * sideFlap > panelWidth)
                || (style == EnvelopeStyle.OPEN_END && (seam > panelWidth || sideFlap > panelHeight))) {
            throw Refused.of(
                    "envelope.flaps-large",
                    "envelope: the flaps, throat or taper are larger than the pocket of " + length(panelWidth) + " × "
                            + length(panelHeight) + " has room for. Make them smaller.",
                    "sideFlap",
                    sideFlap,
                    "taper",
                    taper,
                    "throat",
                    throat,
                    "seam",
                    seam);
        }
    }

    /**
     * Begins an envelope for one card, of paper without thickness, with a square flap and no throat.
     *
     * @param style how it is made
     * @param width the side of the card along the mouth, above zero; a wallet and an open end turn the card as they
     *     need it
     * @param height the other side of the card, above zero
     * @param thickness the thickness of the card, folded as it goes in, zero or more
     * @param allowances clearance, seams and flaps
     * @return the envelope
     * @throws Refused if a side is not above zero, or the flaps are larger than the pocket
     */
    public static Envelope forCard(
            EnvelopeStyle style,
            Quantity<Length> width,
            Quantity<Length> height,
            Quantity<Length> thickness,
            EnvelopeAllowances allowances) {
        Objects.requireNonNull(style, "style");
        Objects.requireNonNull(allowances, "allowances");
        return new Envelope(
                style,
                Kinds.LENGTH.siAboveZero(width, "card width"),
                Kinds.LENGTH.siAboveZero(height, "card height"),
                Kinds.LENGTH.si(thickness, "card thickness"),
                1,
                0,
                allowances,
                0,
                Flap.SQUARE,
                0,
                0,
                0);
    }

    /**
     * Begins an envelope for one card with the allowances of a store of assumptions.
     *
     * @param style how it is made
     * @param width the side of the card along the mouth, above zero
     * @param height the other side of the card, above zero
     * @param thickness the thickness of the card, zero or more
     * @param assumptions the store
     * @return the envelope
     * @throws Refused as {@link #forCard(EnvelopeStyle, Quantity, Quantity, Quantity, EnvelopeAllowances)}, or if the
     *     store lacks an allowance
     */
    public static Envelope forCard(
            EnvelopeStyle style,
            Quantity<Length> width,
            Quantity<Length> height,
            Quantity<Length> thickness,
            Assumptions assumptions) {
        return forCard(style, width, height, thickness, EnvelopeAllowances.from(assumptions));
    }

    /**
     * Returns the envelope for several cards of the same thickness.
     *
     * @param number cards in it, 1 or more
     * @return the envelope
     * @throws Refused if the number is below 1
     */
    public Envelope inserts(int number) {
        if (number < 1) {
            throw Refused.of(
                    "envelope.inserts", "envelope: " + number + " cards given; it holds 1 or more.", "given", number);
        }
        return new Envelope(
                style,
                cardWidth,
                cardHeight,
                cardThickness,
                number,
                inserts,
                allowances,
                paper,
                flap,
                flapDepth,
                throat,
                taper);
    }

    /**
     * Returns the envelope with room for other things beside the cards.
     *
     * @param thickness the thickness of them all together, zero or more
     * @return the envelope
     * @throws Refused if the thickness is out of range
     */
    public Envelope alsoHolding(Quantity<Length> thickness) {
        return new Envelope(
                style,
                cardWidth,
                cardHeight,
                cardThickness,
                cards,
                Kinds.LENGTH.si(thickness, "thickness of inserts"),
                allowances,
                paper,
                flap,
                flapDepth,
                throat,
                taper);
    }

    /**
     * Returns the envelope of a paper.
     *
     * @param thickness the thickness of the envelope paper, zero or more
     * @return the envelope
     * @throws Refused if the thickness is out of range
     */
    public Envelope ofPaper(Quantity<Length> thickness) {
        return new Envelope(
                style,
                cardWidth,
                cardHeight,
                cardThickness,
                cards,
                inserts,
                allowances,
                Kinds.LENGTH.si(thickness, "thickness of the envelope paper"),
                flap,
                flapDepth,
                throat,
                taper);
    }

    /**
     * Returns the envelope with a form of flap; only side seams have a choice.
     *
     * @param form the form
     * @return the envelope
     * @throws Refused if the style has no choice of flap and it is not square
     */
    public Envelope withFlap(Flap form) {
        if (form == Flap.POINTED && style != EnvelopeStyle.SIDE_SEAM) {
            throw Refused.of(
                    "envelope.flap-form",
                    "envelope: a pointed flap is chosen for side seams only; the flap of this style, " + style.words()
                            + ", follows from its cut.",
                    "style",
                    style.words());
        }
        return new Envelope(
                style,
                cardWidth,
                cardHeight,
                cardThickness,
                cards,
                inserts,
                allowances,
                paper,
                form,
                flapDepth,
                throat,
                taper);
    }

    /**
     * Returns the envelope with a depth of flap in place of a part of its height; a diamond has none to choose.
     *
     * @param depth the depth, above zero
     * @return the envelope
     * @throws Refused if the depth is not above zero, or the style is a diamond
     */
    public Envelope withFlapDepth(Quantity<Length> depth) {
        requireNotDiamond("depth of flap");
        return new Envelope(
                style,
                cardWidth,
                cardHeight,
                cardThickness,
                cards,
                inserts,
                allowances,
                paper,
                flap,
                Kinds.LENGTH.siAboveZero(depth, "flap depth"),
                throat,
                taper);
    }

    /**
     * Returns the envelope with a throat: how far the back stays below the mouth. For side seams.
     *
     * @param depth the depth, zero or more
     * @return the envelope
     * @throws Refused if the flap does not reach below it, or the style is another
     */
    public Envelope withThroat(Quantity<Length> depth) {
        if (style != EnvelopeStyle.SIDE_SEAM) {
            throw Refused.of(
                    "envelope.throat",
                    "envelope: a throat is cut into the back of side seams only, not of this style, " + style.words()
                            + ".",
                    "style",
                    style.words());
        }
        return new Envelope(
                style,
                cardWidth,
                cardHeight,
                cardThickness,
                cards,
                inserts,
                allowances,
                paper,
                flap,
                flapDepth,
                Kinds.LENGTH.si(depth, "throat"),
                taper);
    }

    /**
     * Returns the envelope with side flaps that narrow toward their free edge. For side seams and wallets.
     *
     * @param length by how much at each end, zero or more
     * @return the envelope
     * @throws Refused if the length is out of range or the style has no side flaps
     */
    public Envelope withTaper(Quantity<Length> length) {
        if (style != EnvelopeStyle.SIDE_SEAM && style != EnvelopeStyle.WALLET) {
            throw Refused.of(
                    "envelope.taper",
                    "envelope: this style, " + style.words() + ", has no side flaps to taper.",
                    "style",
                    style.words());
        }
        return new Envelope(
                style,
                cardWidth,
                cardHeight,
                cardThickness,
                cards,
                inserts,
                allowances,
                paper,
                flap,
                flapDepth,
                throat,
                Kinds.LENGTH.si(length, "taper"));
    }

    private void requireNotDiamond(String what) {
        if (style == EnvelopeStyle.DIAMOND) {
            throw Refused.of(
                    "envelope.diamond",
                    "envelope: the " + what + " of a diamond follows from its square.",
                    "style",
                    style.words());
        }
    }

    private static Amount<Length> length(double metres) {
        return Kinds.LENGTH.ofSi(metres, "mm");
    }

    /**
     * Returns how it is made.
     *
     * @return the style
     */
    public EnvelopeStyle style() {
        return style;
    }

    /**
     * Returns the clearance, seams and flaps it was given.
     *
     * @return the allowances
     */
    public EnvelopeAllowances allowances() {
        return allowances;
    }

    /**
     * Returns the width of the pocket inside, along the mouth.
     *
     * @return card, thickness of the filling and clearance
     */
    public Amount<Length> insideWidth() {
        return length(made.insideWidth());
    }

    /**
     * Returns the height of the pocket inside, from the mouth down.
     *
     * @return card, thickness of the filling and clearance
     */
    public Amount<Length> insideHeight() {
        return length(made.insideHeight());
    }

    /**
     * Returns the width of the closed envelope outside.
     *
     * @return the inside and two thicknesses of the paper
     */
    public Amount<Length> outsideWidth() {
        return length(made.outsideWidth());
    }

    /**
     * Returns the height of the closed envelope outside.
     *
     * @return the inside and two thicknesses of the paper
     */
    public Amount<Length> outsideHeight() {
        return length(made.outsideHeight());
    }

    /**
     * Returns the overlap of the glued seams.
     *
     * @return the width of the side flaps, or the overlap of the diagonal or middle seam
     */
    public Amount<Length> seamOverlap() {
        return length(made.seam());
    }

    /**
     * Returns how far the closed flap reaches over the back.
     *
     * @return the depth of the flap less the throat; for a diamond, across the diagonal seam
     */
    public Amount<Length> flapOverlap() {
        return length(made.flapOverlap());
    }

    /**
     * Returns the layers of envelope paper at a seam.
     *
     * @return three: the front and the two that are glued
     */
    public int layersAtSeam() {
        return made.layersAtSeam();
    }

    /**
     * Returns the thickness of what goes in.
     *
     * @return cards and inserts
     */
    public Amount<Length> filling() {
        return length(cards * cardThickness + inserts);
    }

    /**
     * Returns the thickness of the filled envelope at a seam: filling and three layers. Where the closed flap lies on a
     * seam there is one layer more.
     *
     * @return the thickness
     */
    public Amount<Length> filledThickness() {
        return length(cards * cardThickness + inserts + made.layersAtSeam() * paper);
    }

    /**
     * Returns the blank: what is cut. Its area is that of {@link Outline#area()}.
     *
     * @return the outline, the flap upward
     */
    public Outline blank() {
        double w = made.insideWidth() + paper;
        double h = made.insideHeight() + paper;
        return switch (style) {
            case SIDE_SEAM, WALLET ->
                outline(EnvelopeBlanks.sideSeamCorners(
                        w, h, made.seam(), taper, throat, made.flapOverlap() + throat, flap == Flap.POINTED));
            case DIAMOND -> {
                double half = made.width() / Math.sqrt(2);
                yield outline(new double[][] {{half, 2 * half, half, 0}, {0, half, 2 * half, half}});
            }
            case OPEN_END ->
                outline(EnvelopeBlanks.openEndCorners(
                        w, h, made.seam(), allowances.sideFlap().si(), made.flapOverlap()));
        };
    }

    private static Outline outline(double[][] corners) {
        // A taper that uses up the free edge of a side flap leaves two corners in one place.
        List<Outline.Point> kept = new ArrayList<>();
        double[] x = corners[0];
        double[] y = corners[1];
        for (int i = 0; i < x.length; i++) {
            if (i == 0 || x[i] != x[i - 1] || y[i] != y[i - 1]) {
                kept.add(Outline.Point.of(Kinds.LENGTH.ofSi(x[i]), Kinds.LENGTH.ofSi(y[i])));
            }
        }
        return Outline.of(kept);
    }

    /** The folds, and the score of the flap last. */
    private static List<Line> folds(double[][] lines) {
        List<Line> folds = new ArrayList<>();
        for (int i = 0; i < lines.length; i++) {
            double[] at = lines[i];
            folds.add(DrawnLine.ofMetres(
                    at[0], at[1], at[2], at[3], i == lines.length - 1 ? Line.Kind.SCORE : Line.Kind.FOLD));
        }
        return List.copyOf(folds);
    }

    /**
     * Returns the lines on the blank, measured from its lower left corner: folds, the score of the flap, and the
     * notches cut out of the corners of a diamond.
     *
     * @return an unmodifiable list; every fold is scored first
     */
    public List<Line> lines() {
        double w = made.insideWidth() + paper;
        double h = made.insideHeight() + paper;
        return switch (style) {
            case SIDE_SEAM, WALLET -> folds(EnvelopeBlanks.sideSeamFolds(w, h, made.seam(), throat));
            case DIAMOND -> {
                double middle = made.width() / Math.sqrt(2);
                double left = middle - w / 2;
                double right = middle + w / 2;
                double below = middle - h / 2;
                double above = middle + h / 2;
                double ear = middle - w / 2 - h / 2;
                yield List.of(
                        DrawnLine.ofMetres(left, below, left, above, Line.Kind.FOLD),
                        DrawnLine.ofMetres(right, below, right, above, Line.Kind.FOLD),
                        DrawnLine.ofMetres(left, below, right, below, Line.Kind.FOLD),
                        DrawnLine.ofMetres(left, above, right, above, Line.Kind.SCORE),
                        DrawnLine.ofMetres(left, below, left - ear, below, Line.Kind.CUT),
                        DrawnLine.ofMetres(left, below, left, below - ear, Line.Kind.CUT),
                        DrawnLine.ofMetres(right, below, right + ear, below, Line.Kind.CUT),
                        DrawnLine.ofMetres(right, below, right, below - ear, Line.Kind.CUT),
                        DrawnLine.ofMetres(left, above, left - ear, above, Line.Kind.CUT),
                        DrawnLine.ofMetres(left, above, left, above + ear, Line.Kind.CUT),
                        DrawnLine.ofMetres(right, above, right + ear, above, Line.Kind.CUT),
                        DrawnLine.ofMetres(right, above, right, above + ear, Line.Kind.CUT));
            }
            case OPEN_END ->
                folds(EnvelopeBlanks.openEndFolds(
                        w, h, made.seam(), allowances.sideFlap().si()));
        };
    }

    /**
     * Returns the lines along which the blank is folded when the envelope is made.
     *
     * @return an unmodifiable list
     */
    public List<Line> foldLines() {
        return lines().stream().filter(line -> line.kind() == Line.Kind.FOLD).toList();
    }

    /**
     * Returns every line that is scored: the folds and the line of the flap.
     *
     * @return an unmodifiable list
     */
    public List<Line> scoreLines() {
        return lines().stream().filter(line -> line.kind() != Line.Kind.CUT).toList();
    }

    /**
     * Returns the sheet the blank is cut from: the square of a diamond, else the bounding box of the blank.
     *
     * @return the rectangle that has to be formed where no deckle of the shape of the blank is used
     */
    public Outline sheet() {
        return Outline.rectangle(length(made.width()), length(made.height()));
    }

    /**
     * Returns the mass of the blank.
     *
     * @param grammage the grammage of the paper
     * @return the mass, at the moisture of that grammage
     * @throws Refused if the grammage is out of range
     */
    public Amount<Mass> mass(Quantity<Grammage> grammage) {
        return Kinds.MASS.ofSi(made.area() * Kinds.GRAMMAGE.si(grammage, "grammage"), "g");
    }

    /**
     * Returns the oven-dry solids a sheet takes: fibre and whatever additives stay in it.
     *
     * @param grammage the grammage of the paper
     * @param moisture the moisture of the paper at that grammage
     * @return oven-dry solids of {@link #sheet()}
     * @throws Refused if one of them is out of range
     */
    public Amount<Mass> ovenDrySolids(Quantity<Grammage> grammage, Quantity<Moisture> moisture) {
        return Kinds.MASS.ofSi(
                made.width()
                        * made.height()
                        * Kinds.GRAMMAGE.si(grammage, "grammage")
                        * (1 - Kinds.MOISTURE.si(moisture, "moisture of the paper")),
                "g");
    }

    /**
     * Returns what should be known beside the figures.
     *
     * @return a warning where there is no clearance, and a note where the tips of a diamond reach past the pocket
     */
    public List<Notice> notices() {
        List<Notice> notices = new ArrayList<>();
        if (allowances.clearance().si() == 0) {
            notices.add(Notice.warning(
                    "envelope.no-clearance",
                    "The envelope is no larger inside than its filling; a card a little too large will not go in."));
        }
        if (style == EnvelopeStyle.DIAMOND) {
            // A corner folded over reaches half the diagonal less half the pocket; more than the pocket sticks out.
            double shorter = Math.min(made.insideWidth(), made.insideHeight()) + paper;
            double past = made.width() / Math.sqrt(2) - 1.5 * shorter;
            if (past > 1e-9) {
                notices.add(Notice.note(
                        "envelope.long-tips",
                        "The pocket is long for a diamond: the tips of its two long corners reach " + length(past)
                                + " past it when folded. Cut them off.",
                        "past",
                        past));
            }
        }
        return List.copyOf(notices);
    }

    @Override
    public String toString() {
        return style.words() + " envelope, inside " + insideWidth() + " × " + insideHeight() + ", outside "
                + outsideWidth()
                + " × " + outsideHeight();
    }
}
