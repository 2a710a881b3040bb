package org.papermath.shape;

import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Collectors;
import javax.measure.Quantity;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Length;
import org.papermath.equation.PieceLayout;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;

/**
 * How rectangular pieces are cut from a parent sheet, and which of them keep its deckle edges. Immutable.
 *
 * <p>Counted by layout in rows and columns, in both turns, never by area. Where both opposite edges of the parent are
 * kept the outer pieces lie at them and the waste falls between; where one is kept the pieces are packed from it.
 */
public final class CutLayout {
    private final double parentWidth;
    private final double parentHeight;
    private final double pieceWidth;
    private final double pieceHeight;
    private final Set<Edge> kept;
    private final boolean turned;
    private final int across;
    private final int along;
    private final List<Place> places;

    /** An edge of a sheet or piece. */
    public enum Edge {
        /** On the left. */
        LEFT,
        /** On the right. */
        RIGHT,
        /** Below. */
        BOTTOM,
        /** Above. */
        TOP
    }

    /** A piece in the parent. */
    public sealed interface Place permits FoundPlace {
        /** {@return from the left of the parent to the left of the piece} */
        Amount<Length> across();

        /** {@return from the bottom of the parent to the bottom of the piece} */
        Amount<Length> along();

        /** {@return the side across, as the piece lies} */
        Amount<Length> width();

        /** {@return the side along, as the piece lies} */
        Amount<Length> height();

        /** {@return its edges that are a kept deckle edge of the parent} */
        Set<Edge> deckleEdges();
    }

    private record FoundPlace(
            Amount<Length> across,
            Amount<Length> along,
            Amount<Length> width,
            Amount<Length> height,
            Set<Edge> deckleEdges)
            implements Place {
        FoundPlace {
            Set<Edge> copy = EnumSet.noneOf(Edge.class);
            copy.addAll(deckleEdges);
            deckleEdges = Collections.unmodifiableSet(copy);
        }

        /** Returns size, place and deckle edges. */
        @Override
        public String toString() {
            return width + " × " + height + " at (" + across + ", " + along + ")"
                    + (deckleEdges.isEmpty()
                            ? ""
                            : ", deckle edge "
                                    + deckleEdges.stream()
                                            .map(edge -> edge.name().toLowerCase(Locale.ROOT))
                                            .collect(Collectors.joining(", ")));
        }
    }

    private CutLayout(
            double parentWidth,
            double parentHeight,
            double pieceWidth,
            double pieceHeight,
            Set<Edge> kept,
            PieceLayout.Layout layout,
            double gap,
            double edgeTrim) {
        this.parentWidth = parentWidth;
        this.parentHeight = parentHeight;
        this.turned = layout.turned();
        this.pieceWidth = turned ? pieceHeight : pieceWidth;
        this.pieceHeight = turned ? pieceWidth : pieceHeight;
        this.kept = kept;
        this.across = layout.across();
        this.along = layout.along();
        double[] lefts = starts(
                across,
                this.pieceWidth,
                parentWidth,
                gap,
                edgeTrim,
                kept.contains(Edge.LEFT),
                kept.contains(Edge.RIGHT));
        double[] bottoms = starts(
                along,
                this.pieceHeight,
                parentHeight,
                gap,
                edgeTrim,
                kept.contains(Edge.BOTTOM),
                kept.contains(Edge.TOP));
        List<Place> list = new ArrayList<>();
        for (double y : bottoms) {
            for (double x : lefts) {
                Set<Edge> own = EnumSet.noneOf(Edge.class);
                addIf(own, Edge.LEFT, x);
                addIf(own, Edge.RIGHT, parentWidth - x - this.pieceWidth);
                addIf(own, Edge.BOTTOM, y);
                addIf(own, Edge.TOP, parentHeight - y - this.pieceHeight);
                list.add(new FoundPlace(
                        Kinds.LENGTH.ofSi(x, "mm"),
                        Kinds.LENGTH.ofSi(y, "mm"),
                        Kinds.LENGTH.ofSi(this.pieceWidth, "mm"),
                        Kinds.LENGTH.ofSi(this.pieceHeight, "mm"),
                        own));
            }
        }
        this.places = List.copyOf(list);
    }

    private void addIf(Set<Edge> own, Edge edge, double distance) {
        if (kept.contains(edge) && Math.abs(distance) < 1e-9) {
            own.add(edge);
        }
    }

    /** Where the pieces of a row begin. */
    private static double[] starts(
            int n, double piece, double parent, double gap, double edgeTrim, boolean low, boolean high) {
        double from = low ? 0 : edgeTrim;
        double to = parent - (high ? 0 : edgeTrim);
        double[] starts = new double[n];
        if (low && high && n > 1) {
            double between = (to - from - n * piece) / (n - 1);
            for (int i = 0; i < n; i++) {
                starts[i] = i == n - 1 ? Math.max(0, parent - piece) : from + i * (piece + between);
            }
            return starts;
        }
        double taken = PieceLayout.extent(n, piece, gap);
        double first = low ? from : high ? to - taken : from + (to - from - taken) / 2;
        for (int i = 0; i < n; i++) {
            starts[i] = Math.max(0, first + i * (piece + gap));
        }
        return starts;
    }

    /**
     * Lays pieces out in the better of the two turns.
     *
     * @param parentWidth the width of the parent sheet, above zero
     * @param parentHeight the height of the parent sheet, above zero
     * @param pieceWidth one side of a piece, above zero
     * @param pieceHeight the other side of a piece, above zero
     * @param gap what a cut or tear between two pieces takes, zero or more
     * @param edgeTrim what is cut off at an edge that is not kept, zero or more
     * @param kept the deckle edges of the parent to keep
     * @return the layout; {@link #count()} is 0 if no piece fits
     * @throws Refused if a side is not above zero, or there are more than 10 000 pieces
     */
    public static CutLayout best(
            Quantity<Length> parentWidth,
            Quantity<Length> parentHeight,
            Quantity<Length> pieceWidth,
            Quantity<Length> pieceHeight,
            Quantity<Length> gap,
            Quantity<Length> edgeTrim,
            Set<Edge> kept) {
        Objects.requireNonNull(kept, "kept");
        CutLayout upright = of(parentWidth, parentHeight, pieceWidth, pieceHeight, gap, edgeTrim, kept, false);
        CutLayout turned = of(parentWidth, parentHeight, pieceWidth, pieceHeight, gap, edgeTrim, kept, true);
        return turned.count() > upright.count() ? turned : upright;
    }

    /**
     * Lays pieces out in one turn.
     *
     * @param parentWidth the width of the parent sheet, above zero
     * @param parentHeight the height of the parent sheet, above zero
     * @param pieceWidth one side of a piece, above zero
     * @param pieceHeight the other side of a piece, above zero
     * @param gap what a cut or tear between two pieces takes, zero or more
     * @param edgeTrim what is cut off at an edge that is not kept, zero or more
     * @param kept the deckle edges of the parent to keep
     * @param turned whether the width of a piece lies along the height of the parent
     * @return the layout; {@link #count()} is 0 if no piece fits
     * @throws Refused as {@link #best}
     */
    public static CutLayout of(
            Quantity<Length> parentWidth,
            Quantity<Length> parentHeight,
            Quantity<Length> pieceWidth,
            Quantity<Length> pieceHeight,
            Quantity<Length> gap,
            Quantity<Length> edgeTrim,
            Set<Edge> kept,
            boolean turned) {
        Objects.requireNonNull(kept, "kept");
        double pw = Kinds.LENGTH.siAboveZero(parentWidth, "width of the parent sheet");
        double ph = Kinds.LENGTH.siAboveZero(parentHeight, "height of the parent sheet");
        double w = Kinds.LENGTH.siAboveZero(pieceWidth, "width of a piece");
        double h = Kinds.LENGTH.siAboveZero(pieceHeight, "height of a piece");
        double between = Kinds.LENGTH.si(gap, "gap between pieces");
        double trim = Kinds.LENGTH.si(edgeTrim, "trim at an edge");
        Set<Edge> edges = EnumSet.noneOf(Edge.class);
        edges.addAll(kept);
        double faceW = pw - trim * ((edges.contains(Edge.LEFT) ? 0 : 1) + (edges.contains(Edge.RIGHT) ? 0 : 1));
        double faceH = ph - trim * ((edges.contains(Edge.BOTTOM) ? 0 : 1) + (edges.contains(Edge.TOP) ? 0 : 1));
        PieceLayout.Layout plain = PieceLayout.upright(faceW, faceH, turned ? h : w, turned ? w : h, between, between);
        if (plain.count() > 10_000) {
            throw Refused.of(
                    "cut.many",
                    "cutting layout: " + plain.count()
                            + " pieces from one sheet; at most 10 000 are laid out."
                            + " Check the unit of the piece.",
                    "count",
                    plain.count(),
                    "most",
                    10_000);
        }
        return new CutLayout(
                pw,
                ph,
                w,
                h,
                edges,
                new PieceLayout.Layout(plain.count(), plain.across(), plain.along(), turned),
                between,
                trim);
    }

    /**
     * Returns the parent sheet.
     *
     * @return its rectangle
     */
    public Outline parent() {
        return Outline.rectangle(Kinds.LENGTH.ofSi(parentWidth, "mm"), Kinds.LENGTH.ofSi(parentHeight, "mm"));
    }

    /**
     * Returns the parent sheets a number of pieces takes.
     *
     * @param pieces the pieces wanted, 1 or more
     * @return pieces over {@link #count()}, rounded up
     * @throws Refused if the number is below one, or no piece fits the parent
     */
    public int parentsFor(int pieces) {
        if (pieces < 1 || count() < 1) {
            throw Refused.of(
                    "cut.no-pieces",
                    "pieces: " + pieces + " asked for and " + count() + " cut from a parent; each must be 1 or more.",
                    "given",
                    pieces,
                    "perParent",
                    count());
        }
        return (pieces - 1) / count() + 1;
    }

    /**
     * Returns the number of pieces.
     *
     * @return 0 if none fits
     */
    public int count() {
        return across * along;
    }

    /**
     * Returns the pieces in the width of the parent.
     *
     * @return 0 if none fits
     */
    public int across() {
        return across;
    }

    /**
     * Returns the pieces in the height of the parent.
     *
     * @return 0 if none fits
     */
    public int along() {
        return along;
    }

    /**
     * Returns whether the width of a piece lies along the height of the parent.
     *
     * @return whether the pieces lie turned
     */
    public boolean turned() {
        return turned;
    }

    /**
     * Returns the places of the pieces, row by row from below.
     *
     * @return an unmodifiable list
     */
    public List<Place> places() {
        return places;
    }

    /**
     * Returns how many pieces have a number of deckle edges.
     *
     * @param edges the number of deckle edges, 0 to 4
     * @return the count of pieces
     */
    public int withDeckleEdges(int edges) {
        return (int) places.stream()
                .filter(place -> place.deckleEdges().size() == edges)
                .count();
    }

    /**
     * Returns how many pieces have all of certain deckle edges.
     *
     * @param edges the edges, as the pieces lie in the parent
     * @return the count of pieces
     */
    public int withDeckleAt(Set<Edge> edges) {
        return (int) places.stream()
                .filter(place -> place.deckleEdges().containsAll(edges))
                .count();
    }

    /**
     * Returns the part of the parent that becomes pieces.
     *
     * @return a fraction, from 0 to 1
     */
    @SuppressWarnings("NamedLikeContextualKeyword") // the word of the trade
    public Amount<Dimensionless> yield() {
        return Kinds.NUMBER.ofSi(yieldFraction(), "%");
    }

    /**
     * Returns the part of the parent that is cut away.
     *
     * @return a fraction, from 0 to 1
     */
    public Amount<Dimensionless> trim() {
        return Kinds.NUMBER.ofSi(1 - yieldFraction(), "%");
    }

    private double yieldFraction() {
        return count() * pieceWidth * pieceHeight / (parentWidth * parentHeight);
    }

    /** Tells how many pieces have how many deckle edges, where the parent has any. */
    private String edges() {
        StringBuilder text = new StringBuilder();
        if (withDeckleEdges(0) < count()) {
            for (int edges = 4; edges >= 0; edges--) {
                int pieces = withDeckleEdges(edges);
                if (pieces > 0) {
                    text.append(text.isEmpty() ? "; " : ", ")
                            .append(pieces)
                            .append(" with ")
                            .append(edges == 0 ? "no" : edges)
                            .append(edges == 1 ? " deckle edge" : " deckle edges");
                }
            }
        }
        return text.toString();
    }

    @Override
    public String toString() {
        return count() + " pieces (" + across + " × " + along + (turned ? ", turned" : "") + "), trim " + trim()
                + edges();
    }
}
