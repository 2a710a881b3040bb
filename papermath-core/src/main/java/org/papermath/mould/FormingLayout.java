package org.papermath.mould;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Area;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Length;
import org.jspecify.annotations.Nullable;
import org.papermath.drawing.SvgDrawing;
import org.papermath.equation.PieceLayout;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Scope;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Amounts;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;
import org.papermath.shape.Outline;
import org.papermath.shape.Shrinkage;

/**
 * How pieces are formed on a mould: how many at a time, which way round, and in what opening each. Immutable.
 *
 * <p>Counted by layout in both turns, never by area. The shrinkage belongs to the directions of the mould.
 */
public final class FormingLayout {
    private final @Nullable Mould mould;
    private final int across;
    private final int along;
    private final boolean turned;
    private final double width;
    private final double height;
    private final double strip;

    private FormingLayout(
            @Nullable Mould mould, int across, int along, boolean turned, double width, double height, double strip) {
        this.mould = mould;
        this.across = across;
        this.along = along;
        this.turned = turned;
        this.width = width;
        this.height = height;
        this.strip = strip;
    }

    /**
     * Lays pieces out on an owned mould, with strips in its deckle between them. A deckle that is split already keeps
     * its openings: a piece lies in each or in none.
     *
     * @param mould the mould
     * @param width the finished width of a piece, above zero
     * @param height the finished height of a piece, above zero
     * @param shrinkage the shrinkage from the deckle to the dry sheet, in the directions of the mould
     * @param trim what is cut off each side of a piece in all, both edges together, zero or more
     * @param strip the width of a strip between pieces; not used where the deckle is split already
     * @return the layout with the most pieces; {@link #count()} is 0 if none fits
     * @throws Refused if a side is not above zero
     */
    public static FormingLayout on(
            Mould mould,
            Quantity<Length> width,
            Quantity<Length> height,
            Shrinkage shrinkage,
            Quantity<Length> trim,
            Quantity<Length> strip) {
        Objects.requireNonNull(mould, "mould");
        Objects.requireNonNull(shrinkage, "shrinkage");
        Opening upright = Mould.openingFor(width, height, shrinkage, trim, trim);
        Opening aside = Mould.openingFor(height, width, shrinkage, trim, trim);
        Deckle deckle = mould.deckle();
        if (deckle.count() > 1) {
            Opening own = deckle.opening();
            PieceLayout.Layout one = PieceLayout.best(
                    own.width().si(),
                    own.height().si(),
                    upright.width().si(),
                    upright.height().si(),
                    aside.width().si(),
                    aside.height().si(),
                    0,
                    0);
            boolean fits = one.count() > 0;
            return new FormingLayout(
                    mould,
                    fits ? deckle.across() : 0,
                    fits ? deckle.along() : 0,
                    one.turned(),
                    one.turned() ? aside.width().si() : upright.width().si(),
                    one.turned() ? aside.height().si() : upright.height().si(),
                    deckle.strip().si());
        }
        double gap = Kinds.LENGTH.si(strip, "width of a deckle strip");
        PieceLayout.Layout best = PieceLayout.best(
                deckle.width().si(),
                deckle.height().si(),
                upright.width().si(),
                upright.height().si(),
                aside.width().si(),
                aside.height().si(),
                gap,
                gap);
        return new FormingLayout(
                mould,
                best.across(),
                best.along(),
                best.turned(),
                best.turned() ? aside.width().si() : upright.width().si(),
                best.turned() ? aside.height().si() : upright.height().si(),
                gap);
    }

    /**
     * Takes the best of several owned moulds, with the pace of hands of the shipped table.
     *
     * @param moulds the moulds of the studio
     * @param width the finished width of a piece, above zero
     * @param height the finished height of a piece, above zero
     * @param shrinkage the shrinkage from the deckle to the dry sheet
     * @param trim what is cut off each side of a piece in all
     * @param strip the width of a strip between pieces
     * @param pieces the pieces to form, with those that will be rejected; 1 or more
     * @return the best layout, or that of a mould to be made for one piece if none of them takes a piece
     * @throws Refused if a side is not above zero, or no piece is to be formed
     */
    public static FormingLayout best(
            List<Mould> moulds,
            Quantity<Length> width,
            Quantity<Length> height,
            Shrinkage shrinkage,
            Quantity<Length> trim,
            Quantity<Length> strip,
            int pieces) {
        return best(Assumptions.standard(), moulds, width, height, shrinkage, trim, strip, pieces);
    }

    /**
     * Takes, of several owned moulds, the one on which so many pieces cost hands the least time at the vat; of those
     * within {@code labour.mould-window} of that, the one that takes the least wet area, which is fibre; the first of
     * equals. A large mould with many pieces at a time wins where there are many to make; for a few, a small one does.
     *
     * @param assumptions where the pace of hands is looked up: {@code labour.sheet-time} of cards, small and large sheets
     * @param moulds the moulds of the studio
     * @param width the finished width of a piece, above zero
     * @param height the finished height of a piece, above zero
     * @param shrinkage the shrinkage from the deckle to the dry sheet
     * @param trim what is cut off each side of a piece in all
     * @param strip the width of a strip between pieces
     * @param pieces the pieces to form, with those that will be rejected; 1 or more
     * @return the best layout, or that of a mould to be made for one piece if none of them takes a piece
     * @throws Refused if a side is not above zero, or no piece is to be formed
     */
    public static FormingLayout best(
            Assumptions assumptions,
            List<Mould> moulds,
            Quantity<Length> width,
            Quantity<Length> height,
            Shrinkage shrinkage,
            Quantity<Length> trim,
            Quantity<Length> strip,
            int pieces) {
        Objects.requireNonNull(assumptions, "assumptions");
        Objects.requireNonNull(moulds, "moulds");
        Objects.requireNonNull(shrinkage, "shrinkage");
        if (pieces < 1) {
            throw Refused.of(
                    "layout.pieces",
                    "layout: " + pieces + " pieces to form given; must be 1 or more.",
                    "given",
                    pieces);
        }
        double[] pace = {
            assumptions.si("labour.sheet-time", Scope.of("card")),
            assumptions.si("labour.sheet-time", Scope.of("small")),
            assumptions.si("labour.sheet-time", Scope.of("large"))
        };
        double card = assumptions.si("labour.card-sheet", Scope.GENERAL);
        double large = assumptions.si("labour.large-sheet", Scope.GENERAL);
        List<FormingLayout> layouts = moulds.stream()
                .map(mould -> on(mould, width, height, shrinkage, trim, strip))
                .filter(layout -> layout.count() > 0)
                .toList();
        double[] hands = new double[layouts.size()];
        double[] areas = new double[hands.length];
        for (int m = 0; m < hands.length; m++) {
            Deckle deckle = layouts.get(m).mould().orElseThrow().deckle();
            double face = deckle.width().si() * deckle.height().si();
            double sheets = PieceLayout.sheets(layouts.get(m).count(), pieces, 0);
            hands[m] = sheets * pace[PieceLayout.pace(face, card, large)];
            areas[m] = sheets * face;
        }
        int best = PieceLayout.best(hands, areas, assumptions.si("labour.mould-window", Scope.GENERAL));
        return best < 0 ? toBeMade(width, height, shrinkage, trim, 1, 1, strip) : layouts.get(best);
    }

    /**
     * Gives the layout of a deckle to be made for a number of pieces.
     *
     * @param width the finished width of a piece, above zero
     * @param height the finished height of a piece, above zero
     * @param shrinkage the shrinkage from the deckle to the dry sheet
     * @param trim what is cut off each side of a piece in all
     * @param across pieces in the width, 1 or more
     * @param along pieces in the height, 1 or more
     * @param strip the width of a strip between pieces
     * @return the layout; {@link #deckle()} is the deckle to make
     * @throws Refused if a side is not above zero or a count is below 1
     */
    public static FormingLayout toBeMade(
            Quantity<Length> width,
            Quantity<Length> height,
            Shrinkage shrinkage,
            Quantity<Length> trim,
            int across,
            int along,
            Quantity<Length> strip) {
        Objects.requireNonNull(shrinkage, "shrinkage");
        if (across < 1 || along < 1) {
            throw Refused.of(
                    "layout.counts",
                    "layout: " + across + " × " + along + " pieces given; must be 1 × 1 or more.",
                    "across",
                    across,
                    "along",
                    along);
        }
        Opening opening = Mould.openingFor(width, height, shrinkage, trim, trim);
        return new FormingLayout(
                null,
                across,
                along,
                false,
                opening.width().si(),
                opening.height().si(),
                Kinds.LENGTH.si(strip, "width of a deckle strip"));
    }

    /**
     * Returns the owned mould.
     *
     * @return the mould, or nothing if one has to be made
     */
    public Optional<Mould> mould() {
        return Optional.ofNullable(mould);
    }

    /**
     * Returns the number of pieces at a time.
     *
     * @return 0 if none fits
     */
    public int count() {
        return across * along;
    }

    /**
     * Returns the pieces in the width of the mould.
     *
     * @return 0 if none fits
     */
    public int across() {
        return across;
    }

    /**
     * Returns the pieces in the height of the mould.
     *
     * @return 0 if none fits
     */
    public int along() {
        return along;
    }

    /**
     * Returns whether the width of a piece lies along the height of the mould.
     *
     * @return whether the pieces lie turned
     */
    public boolean turned() {
        return turned;
    }

    /**
     * Returns the opening one piece needs, as it lies on the mould.
     *
     * @return the opening
     */
    public Opening opening() {
        return new Opening(Kinds.LENGTH.ofSi(width, "mm"), Kinds.LENGTH.ofSi(height, "mm"));
    }

    /**
     * Returns the width of a strip between pieces.
     *
     * @return the width
     */
    public Amount<Length> strip() {
        return Kinds.LENGTH.ofSi(strip, "mm");
    }

    /**
     * Returns the area on which pulp settles in all pieces together.
     *
     * @return the area
     */
    public Amount<Area> formedArea() {
        return Kinds.AREA.ofSi(count() * width * height, "cm2");
    }

    /**
     * Returns the area on which pulp settles with only the strips in the deckle: the whole opening of the mould less
     * its strips. It is more than {@link #formedArea()} where the openings are larger than the pieces need.
     *
     * @return the area; of a deckle to be made, that of the pieces
     * @throws Refused if no piece fits
     */
    public Amount<Area> settlingArea() {
        Deckle face = mould == null || count() == 0 ? deckle() : mould.deckle();
        return Kinds.AREA.ofSi(
                (face.width().si() - (across - 1) * strip) * (face.height().si() - (along - 1) * strip), "cm2");
    }

    /**
     * Returns the part of the deckle opening in which pieces form.
     *
     * @return a fraction, from 0 to 1
     */
    public Amount<Dimensionless> used() {
        return Amounts.percent(100 * usedShare());
    }

    private double usedShare() {
        if (mould == null) {
            return 1;
        }
        return count()
                * width
                * height
                / (mould.deckle().width().si() * mould.deckle().height().si());
    }

    /**
     * Returns the deckle that forms this layout: the least opening with its strips.
     *
     * @return the deckle
     * @throws Refused if no piece fits
     */
    public Deckle deckle() {
        if (count() == 0) {
            throw Refused.of(
                    "layout.none",
                    "layout: a piece needs an opening of " + opening() + " and does not fit on " + mould + ".",
                    "opening",
                    opening().toString());
        }
        return Deckle.of(
                        Kinds.LENGTH.ofSi(PieceLayout.extent(across, width, strip), "mm"),
                        Kinds.LENGTH.ofSi(PieceLayout.extent(along, height, strip), "mm"))
                .split(across, along, strip());
    }

    /**
     * The places of the pieces on the mould, lower left corner by lower left corner, centred in its opening.
     *
     * @return row by row from below, metres
     */
    private List<double[]> places() {
        List<double[]> places = new ArrayList<>();
        boolean split = mould != null && mould.deckle().count() > 1;
        double stepX = width + strip;
        double stepY = height + strip;
        double left = 0;
        double below = 0;
        if (mould != null && split) {
            Opening own = mould.deckle().opening();
            stepX = own.width().si() + strip;
            stepY = own.height().si() + strip;
            left = (own.width().si() - width) / 2;
            below = (own.height().si() - height) / 2;
        } else if (mould != null) {
            left = (mould.deckle().width().si() - PieceLayout.extent(across, width, strip)) / 2;
            below = (mould.deckle().height().si() - PieceLayout.extent(along, height, strip)) / 2;
        }
        for (int j = 0; j < along; j++) {
            for (int i = 0; i < across; i++) {
                // Rounding may set a piece that fills the opening a hair outside.
                places.add(new double[] {Math.max(0, left) + i * stepX, Math.max(0, below) + j * stepY});
            }
        }
        return List.copyOf(places);
    }

    /**
     * Draws the layout at true scale: the deckle opening and an opening for each piece.
     *
     * @param title what it shows
     * @return the drawing
     * @throws Refused if no piece fits
     */
    public SvgDrawing drawing(String title) {
        Deckle face = mould == null ? deckle() : mould.deckle();
        SvgDrawing drawing = SvgDrawing.titled(title).withSheet(Outline.rectangle(face.width(), face.height()));
        int number = 0;
        List<Amount<Length>> acrossMarks = new ArrayList<>(List.of(Kinds.LENGTH.ofSi(0, "mm"), face.width()));
        List<Amount<Length>> alongMarks = new ArrayList<>(List.of(Kinds.LENGTH.ofSi(0, "mm"), face.height()));
        for (double[] place : places()) {
            number++;
            acrossMarks.add(Kinds.LENGTH.ofSi(place[0], "mm"));
            acrossMarks.add(Kinds.LENGTH.ofSi(place[0] + width, "mm"));
            alongMarks.add(Kinds.LENGTH.ofSi(place[1], "mm"));
            alongMarks.add(Kinds.LENGTH.ofSi(place[1] + height, "mm"));
            drawing = drawing.withOutline(
                            opening().outline(), Kinds.LENGTH.ofSi(place[0], "mm"), Kinds.LENGTH.ofSi(place[1], "mm"))
                    .withText(
                            Kinds.LENGTH.ofSi(place[0] + width / 2, "mm"),
                            Kinds.LENGTH.ofSi(place[1] + height / 2, "mm"),
                            number + (turned ? " turned" : ""));
        }
        return drawing.withPartsAcross(acrossMarks).withPartsAlong(alongMarks);
    }

    @Override
    public String toString() {
        String where = mould == null ? "a deckle to be made" : mould.name();
        return count() + " at a time on " + where + " (" + across + " × " + along + (turned ? ", turned" : "")
                + "), each in an opening of " + opening();
    }
}
