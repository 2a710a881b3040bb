package org.papermath.engine;

import org.jspecify.annotations.Nullable;

/** One value, in coherent SI, for each assumption of a job; immutable but for a copy that somebody holds alone. */
public final class Values {
    private final double[] values;
    /** Marks what is read; null where nobody asks. */
    private final boolean @Nullable [] read;

    Values(double[] values) {
        this(values, null);
    }

    private Values(double[] values, boolean @Nullable [] read) {
        this.values = values;
        this.read = read;
    }

    /** The value of an assumption. */
    public double of(Slot slot) {
        if (read != null) {
            read[slot.at] = true;
        }
        return values[slot.at];
    }

    /** The same values with one of them changed. */
    public Values with(Slot slot, double value) {
        double[] copy = values.clone();
        copy[slot.at] = value;
        return new Values(copy);
    }

    /** The same values with several of them changed. */
    public Values with(Slot[] slots, double[] changed) {
        return copy().shift(slots, changed);
    }

    /** The same values by themselves, to be shifted and set back. */
    Values copy() {
        return new Values(values.clone());
    }

    /** These very values with several of them changed; only for who holds a copy. */
    Values shift(Slot[] slots, double[] changed) {
        for (int i = 0; i < slots.length; i++) {
            values[slots[i].at] = changed[i];
        }
        return this;
    }

    /** Sets some of them back. */
    void back(Slot[] slots, Values to) {
        for (Slot slot : slots) {
            values[slot.at] = to.values[slot.at];
        }
    }

    /** The same values, which mark what is read of them from now on. */
    Values marking(boolean[] marks) {
        return new Values(values, marks);
    }

    int size() {
        return values.length;
    }
}
