package org.papermath.engine;

import org.jspecify.annotations.Nullable;
import org.papermath.quantity.Kind;
import org.papermath.quantity.Kinds;

/** A forecast of a batch: what it is called, what it is read as, in which unit, and how its band adds up. */
public enum BatchFigure implements Figure {
    /** Of all pots together; nothing where nothing is cooked. */
    COOKED("stuff after cooking", Kinds.MASS, "g", Scale.ROOT),
    BEATING("state of beating", Kinds.SHARE, "%", Scale.SHARE),
    DRAINABILITY("drainability", Kinds.SCHOPPER_RIEGLER, "SR", Scale.SHARE),
    WATER_RETENTION("water retention value", Kinds.WATER_RETENTION, "g/g", Scale.FACTOR),
    FREE_SHRINKAGE("free shrinkage", Kinds.LINEAR_SHRINKAGE, "%", Scale.ROOT),
    STOCK_CONSISTENCY("consistency of the stock", Kinds.CONSISTENCY, "%", Scale.SHARE),
    /** Below zero where the stock runs short, so it is read by itself. */
    STOCK_LEFT("stock put by", null, "kg", Scale.DIFFERENCE),
    VAT_FIBRE("fibre kept in the vat", Kinds.MASS, "g", Scale.ROOT),
    WHITE_WATER("fibre in the white water", Kinds.MASS, "g", Scale.ROOT),
    HOURS("hours of work", Kinds.TIME, "h", Scale.ROOT);

    private final String words;

    @SuppressWarnings("ImmutableEnumChecker") // a kind never changes
    private final @Nullable Kind<?> kind;

    private final String unit;
    private final Scale scale;

    BatchFigure(String words, @Nullable Kind<?> kind, String unit, Scale scale) {
        this.words = words;
        this.kind = kind;
        this.unit = unit;
        this.scale = scale;
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
        return this == DRAINABILITY ? 100 : 1;
    }

    @Override
    public boolean mayBeUnknown() {
        return false;
    }
}
