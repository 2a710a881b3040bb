package org.papermath.engine;

import org.jspecify.annotations.Nullable;
import org.papermath.quantity.Kind;
import org.papermath.quantity.Kinds;

/** A forecast of a piece: what it is called, what it is read as, in which unit, and how its band adds up. */
public enum PieceFigure implements Figure {
    GRAMMAGE("grammage", Kinds.GRAMMAGE, "g/m2", Scale.FACTOR),
    WIDTH("width", Kinds.LENGTH, "mm", Scale.FACTOR),
    HEIGHT("height", Kinds.LENGTH, "mm", Scale.FACTOR),
    CALIPER("caliper", Kinds.LENGTH, "um", Scale.FACTOR, true),
    DENSITY("density", null, "kg/m3", Scale.FACTOR, true),
    MASS("mass", Kinds.MASS, "g", Scale.FACTOR),
    PILE("height of the pile", Kinds.LENGTH, "mm", Scale.FACTOR, true),
    GOOD("number of good pieces", Kinds.NUMBER, "1", Scale.FACTOR),
    MAT("thickness of the wet sheet", Kinds.LENGTH, "mm", Scale.FACTOR),
    COUCHED("mass of the couched sheet", Kinds.MASS, "g", Scale.FACTOR),
    DRAIN("time to drain", Kinds.TIME, "s", Scale.FACTOR, true),
    SOLIDS("solids after pressing", Kinds.SOLIDS, "%", Scale.SHARE),
    DRYING("time to dry", Kinds.TIME, "h", Scale.FACTOR, true),
    DRYING_AGAIN("time to dry after sizing", Kinds.TIME, "h", Scale.ROOT, true),
    EVAPORATED("water to dry out", Kinds.MASS, "kg", Scale.ROOT),
    LOAD("share of filler", Kinds.NUMBER, "%", Scale.ROOT),
    SIZE("size taken up", Kinds.NUMBER, "%", Scale.ROOT),
    SHRINK_ALONG("shrinkage along", Kinds.LINEAR_SHRINKAGE, "%", Scale.ROOT),
    SHRINK_ACROSS("shrinkage across", Kinds.LINEAR_SHRINKAGE, "%", Scale.ROOT),
    LIGHTEST("lightest sheet", Kinds.NUMBER, "%", Scale.FACTOR),
    HEAVIEST("heaviest sheet", Kinds.NUMBER, "%", Scale.FACTOR),
    POST_MASS("mass of the post", Kinds.MASS, "kg", Scale.FACTOR, true),
    POST_HEIGHT("height of the post", Kinds.LENGTH, "mm", Scale.FACTOR),
    /** Below zero where what goes in is too large, so it is read by itself. */
    CLEAR_WIDTH("play along", null, "mm", Scale.DIFFERENCE, true),
    CLEAR_HEIGHT("play across", null, "mm", Scale.DIFFERENCE, true),
    MAIL_MASS("mass of what is mailed", Kinds.MASS, "g", Scale.FACTOR),
    MAIL_THICKNESS("thickness of what is mailed", Kinds.LENGTH, "mm", Scale.FACTOR, true),
    HOURS("hours of work", Kinds.TIME, "h", Scale.ROOT);

    private final String words;

    @SuppressWarnings("ImmutableEnumChecker") // a kind never changes
    private final @Nullable Kind<?> kind;

    private final String unit;
    private final Scale scale;
    private final boolean mayBeUnknown;

    PieceFigure(String words, @Nullable Kind<?> kind, String unit, Scale scale) {
        this(words, kind, unit, scale, false);
    }

    PieceFigure(String words, @Nullable Kind<?> kind, String unit, Scale scale, boolean mayBeUnknown) {
        this.words = words;
        this.kind = kind;
        this.unit = unit;
        this.scale = scale;
        this.mayBeUnknown = mayBeUnknown;
    }

    @Override
    public String words() {
        return words;
    }

    @Override
    public @Nullable Kind<?> kind() {
        return kind;
    }

    @Override
    public String unit() {
        return unit;
    }

    @Override
    public Scale scale() {
        return scale;
    }

    @Override
    public double most() {
        return 1;
    }

    @Override
    public boolean mayBeUnknown() {
        return mayBeUnknown;
    }
}
