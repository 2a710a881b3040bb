package org.papermath.engine;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.papermath.equation.PieceLayout;
import org.papermath.equation.Shrinkage;
import org.papermath.mould.Deckle;
import org.papermath.mould.Mould;
import org.papermath.mould.Opening;
import org.papermath.numeric.Rounding;
import org.papermath.shape.Outline;

/**
 * Deckles with openings for several pieces of one dip: of a piece that is formed to its outline, one the studio has or
 * one to be made for a mould of it with as many openings as lie side by side on it; of a sheet with four sides and deckle
 * edges, one that is split.
 */
final class ShapedDeckles {
    private final Workshop workshop;
    private final Owned[] moulds;

    /**
     * A mould as it is worked, its long side along.
     *
     * @param across its short side, m
     * @param along its long side, m
     * @param shape the outline of the openings of its deckle, as they lie on the mould; null where they have four sides
     * @param openingAcross one opening of its deckle across, m
     * @param openingAlong one opening of its deckle along, m
     * @param rowAcross openings in a row across
     * @param rowAlong openings in a row along
     * @param strip how far apart they are, m
     */
    private record Owned(
            double across,
            double along,
            @Nullable FormedShape shape,
            double openingAcross,
            double openingAlong,
            int rowAcross,
            int rowAlong,
            double strip) {}

    /**
     * A piece as it has to be formed, its long side along, or turned across.
     *
     * @param across across, upright, m
     * @param along along, upright, m
     * @param turnedAcross across, turned, m
     * @param turnedAlong along, turned, m
     */
    record Wet(double across, double along, double turnedAcross, double turnedAlong) {}

    ShapedDeckles(Workshop workshop, List<Mould> moulds) {
        this.workshop = workshop;
        this.moulds = moulds.stream().map(mould -> owned(mould.deckle())).toArray(Owned[]::new);
    }

    private static Owned owned(Deckle deckle) {
        double width = deckle.width().si();
        double height = deckle.height().si();
        boolean lies = width > height;
        double across = Math.min(width, height);
        double along = Math.max(width, height);
        Opening opening = deckle.opening();
        return new Owned(
                across,
                along,
                deckle.outline()
                        .map(outline -> shape(lies ? outline.turned() : outline))
                        .orElse(null),
                (lies ? opening.height() : opening.width()).si(),
                (lies ? opening.width() : opening.height()).si(),
                lies ? deckle.along() : deckle.across(),
                lies ? deckle.across() : deckle.along(),
                deckle.strip().si());
    }

    /** The shape of an outline. */
    static FormedShape shape(Outline outline) {
        return FormedShape.of(
                outline.corners().stream().mapToDouble(at -> at.across().si()).toArray(),
                outline.corners().stream().mapToDouble(at -> at.along().si()).toArray());
    }

    /** Whether the deckle of a mould has openings of an outline; sheets with four sides are not formed in them. */
    boolean isShaped(int mould) {
        return moulds[mould].shape != null;
    }

    /** A piece with its shrinkage taken in. */
    static Wet wet(double longSide, double shortSide, double[] shrink) {
        return new Wet(
                Shrinkage.wetLength(shortSide, shrink[1]),
                Shrinkage.wetLength(longSide, shrink[0]),
                Shrinkage.wetLength(longSide, shrink[1]),
                Shrinkage.wetLength(shortSide, shrink[0]));
    }

    /**
     * The deckles that would do: those the studio has, or where it has none, those to be made for a mould of it, with as
     * many openings as each pace of the work allows. Empty where none finds room.
     *
     * @param wet the piece with its shrinkage taken in
     * @param shape its outline
     * @param pieces how many have to be formed
     * @param strip how far apart the openings of a deckle to be made are, m
     * @param tolerance how far an opening the studio has may be off, over what is needed
     * @param paces wet areas beyond which a sheet is slower to form, m², rising
     */
    List<FormingSheets.Layout> choices(
            Wet wet, FormedShape shape, double pieces, double strip, double tolerance, double[] paces) {
        List<FormingSheets.Layout> owned = new ArrayList<>();
        List<FormingSheets.Layout> made = new ArrayList<>();
        for (int m = 0; m < moulds.length; m++) {
            if (moulds[m].shape == null) {
                onPlain(m, wet, shape, pieces, strip, paces, made);
            } else {
                FormingSheets.Layout layout = inOwned(m, wet, shape, tolerance);
                if (layout != null) {
                    owned.add(layout);
                }
            }
        }
        return owned.isEmpty() ? made : owned;
    }

    /** The openings of a deckle to be made that lie on a mould: all there is room for, and all that keep a pace. */
    private void onPlain(
            int mould,
            Wet wet,
            FormedShape shape,
            double pieces,
            double strip,
            double[] paces,
            List<FormingSheets.Layout> made) {
        Owned face = moulds[mould];
        PieceLayout.Layout rows = null;
        // What lies on the felts and under the platen goes before what the mould takes.
        double feltAcross = workshop.hasFelts ? Math.min(workshop.feltWidth, workshop.feltLength) : face.across;
        double feltAlong = workshop.hasFelts ? Math.max(workshop.feltWidth, workshop.feltLength) : face.along;
        double platenAcross = workshop.hasPress ? Math.min(workshop.platenWidth, workshop.platenLength) : face.across;
        double platenAlong = workshop.hasPress ? Math.max(workshop.platenWidth, workshop.platenLength) : face.along;
        double[][] faces = {
            {
                Math.min(face.across, Math.min(feltAcross, platenAcross)),
                Math.min(face.along, Math.min(feltAlong, platenAlong))
            },
            {Math.min(face.across, feltAcross), Math.min(face.along, feltAlong)},
            {face.across, face.along}
        };
        for (double[] room : faces) {
            if (rows == null || rows.count() == 0) {
                rows = PieceLayout.best(
                        room[0], room[1], wet.across, wet.along, wet.turnedAcross, wet.turnedAlong, strip, strip);
            }
        }
        if (rows == null || rows.count() == 0) {
            return;
        }
        // No more openings than pieces.
        int across = (int) Math.min(rows.across(), Rounding.ceil(pieces));
        int along = (int) Math.min(rows.along(), Rounding.ceil(pieces / across));
        made.add(toMake(mould, across, along, rows.turned(), wet, shape, strip));
        double one = shape.share() * (rows.turned() ? wet.turnedAcross * wet.turnedAlong : wet.across * wet.along);
        for (double pace : paces) {
            double most = Math.floor(pace / one + Rounding.GUARD);
            if (most >= 1 && most < (double) across * along) {
                made.add(within(most, mould, across, along, rows.turned(), wet, shape, strip));
            }
        }
    }

    /** As many of the openings of a deckle in full rows as there are to be at most. */
    private static FormingSheets.Layout within(
            double most, int mould, int across, int along, boolean turned, Wet wet, FormedShape shape, double strip) {
        int bestAcross = 1;
        int bestAlong = 1;
        for (int a = 1; a <= across && a <= most; a++) {
            int b = (int) Math.min(along, Math.floor(most / a));
            if (a * b > bestAcross * bestAlong) {
                bestAcross = a;
                bestAlong = b;
            }
        }
        return toMake(mould, bestAcross, bestAlong, turned, wet, shape, strip);
    }

    /** A deckle to be made for a mould, or with a mould of its own where that is below zero. */
    static FormingSheets.Layout toMake(
            int mould, int across, int along, boolean turned, Wet wet, FormedShape shape, double strip) {
        return new FormingSheets.Layout(
                mould,
                false,
                across * along,
                across,
                along,
                turned,
                PieceLayout.extent(across, turned ? wet.turnedAcross : wet.across, strip),
                PieceLayout.extent(along, turned ? wet.turnedAlong : wet.along, strip),
                null,
                shape,
                strip);
    }

    /** Whether the deckle of a mould is split into several openings with four sides. */
    boolean isSplit(int mould) {
        Owned one = moulds[mould];
        return one.shape == null && one.rowAcross * one.rowAlong > 1;
    }

    /** The openings of a deckle that is split, if they are what a piece with four sides needs; null if not. */
    FormingSheets.@Nullable Layout inSplit(int mould, Wet wet, double tolerance) {
        return inOpenings(mould, wet, FormedShape.RECTANGLE, tolerance);
    }

    /** The openings of a deckle of an outline, if they are what the piece needs; null if not. */
    private FormingSheets.@Nullable Layout inOwned(int mould, Wet wet, FormedShape shape, double tolerance) {
        FormedShape owned = moulds[mould].shape;
        return owned == null || !owned.isNear(shape, tolerance) ? null : inOpenings(mould, wet, owned, tolerance);
    }

    /** The openings of a deckle the studio has, if they have the size the piece needs; null if not. */
    private FormingSheets.@Nullable Layout inOpenings(int mould, Wet wet, FormedShape owned, double tolerance) {
        Owned one = moulds[mould];
        boolean upright =
                isNear(one.openingAcross, wet.across, tolerance) && isNear(one.openingAlong, wet.along, tolerance);
        boolean turned = isNear(one.openingAcross, wet.turnedAcross, tolerance)
                && isNear(one.openingAlong, wet.turnedAlong, tolerance);
        return upright || turned
                ? new FormingSheets.Layout(
                        mould,
                        true,
                        one.rowAcross * one.rowAlong,
                        one.rowAcross,
                        one.rowAlong,
                        !upright,
                        one.across,
                        one.along,
                        null,
                        owned,
                        one.strip)
                : null;
    }

    private static boolean isNear(double owned, double needed, double tolerance) {
        return Math.abs(owned - needed) <= tolerance * needed;
    }
}
