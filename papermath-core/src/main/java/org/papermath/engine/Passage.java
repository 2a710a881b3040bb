package org.papermath.engine;

/**
 * One piece passing through the stages in one forecast: what is given, and what a stage finds for those after it, in
 * coherent SI. What no stage has found yet is not a number, or is empty.
 */
final class Passage {
    private static final double[] NOT_YET = {};

    final Settings settings;
    final int piece;
    PreparingStock.State state;
    PreparingStock.Kept kept;
    FillingVat.Sheets run;

    /** How fast its dryer takes water: it costs as much as all the rest of the piece, and few assumptions move it. */
    double dryingRate;

    Values v;
    private final Figures out;

    /** Additives over fibre. */
    double load = Double.NaN;

    /** Filler over fibre. */
    double particles = Double.NaN;

    /** Moisture ratio of a sheet as it leaves the mould. */
    double couchedRatio = Double.NaN;

    /** Moisture ratio of a sheet as it goes to the dryer. */
    double pressedRatio = Double.NaN;

    /** Dry size taken up, over oven-dry solids. */
    double gain = Double.NaN;

    /** Size solution taken up, over oven-dry solids. */
    double taken = Double.NaN;

    /** Moisture ratio the sheets are dried to. */
    double endRatio = Double.NaN;

    /** Shrinkage along and across. */
    double[] shrink = NOT_YET;

    /** Area of the dry sheet. */
    double dryArea = Double.NaN;

    /** The last moisture ratio that counts for the water dried out. */
    double lastRatio = Double.NaN;

    /** Area of a finished piece. */
    double area = Double.NaN;

    /** How long a sheet drains; at least that where the tester no longer tells. */
    double drains = Double.NaN;

    Passage(
            Settings settings,
            int piece,
            PreparingStock.State state,
            PreparingStock.Kept kept,
            FillingVat.Sheets run,
            double dryingRate,
            Values v,
            Figures out) {
        this.settings = settings;
        this.piece = piece;
        this.state = state;
        this.kept = kept;
        this.run = run;
        this.dryingRate = dryingRate;
        this.v = v;
        this.out = out;
    }

    /** Goes another way again: at other values, with all that was found on it, for the parts of it that are gone again. */
    void again(
            Passage other,
            PreparingStock.State with,
            PreparingStock.Kept keeps,
            FillingVat.Sheets sheets,
            double rate,
            Values values) {
        state = with;
        kept = keeps;
        run = sheets;
        dryingRate = rate;
        v = values;
        load = other.load;
        particles = other.particles;
        couchedRatio = other.couchedRatio;
        pressedRatio = other.pressedRatio;
        gain = other.gain;
        taken = other.taken;
        endRatio = other.endRatio;
        shrink = other.shrink;
        dryArea = other.dryArea;
        lastRatio = other.lastRatio;
        area = other.area;
        drains = other.drains;
    }

    /** Puts down a forecast of the piece. */
    void set(PieceFigure figure, double x) {
        out.set(figure, piece, x);
    }

    /** A forecast of the piece that a stage before has put down. */
    double of(PieceFigure figure) {
        return out.of(figure, piece);
    }

    FormingSheets.Setting sheet() {
        return settings.sheet(piece);
    }

    /** Sheets formed. */
    int sheets() {
        return run.sheets().length;
    }

    /** Filler over oven-dry solids. */
    double fillerShare() {
        return particles / (1 + load);
    }

    /** Oven-dry solids of a sheet, on the area it is formed in. */
    double formed() {
        return run.solids() / sheet().area();
    }
}
