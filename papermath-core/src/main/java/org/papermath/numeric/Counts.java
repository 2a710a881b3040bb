package org.papermath.numeric;

import java.util.HashMap;
import java.util.Map;
import java.util.function.IntPredicate;

/** The largest count that fits, where what a count takes rises with it but for small steps. */
public final class Counts {
    private final IntPredicate fits;
    private final Map<Integer, Boolean> known = new HashMap<>();

    /** Asks each count once. */
    public Counts(IntPredicate fits) {
        this.fits = fits;
    }

    private boolean fits(int count) {
        return known.computeIfAbsent(count, fits::test);
    }

    /**
     * The largest count that fits, found by doubling and halving; some above it are tried too, as long as one of them fits.
     * One less than the first where not even that fits.
     */
    public int most(int from, int to, int lookAhead) {
        if (!fits(from)) {
            return from - 1;
        }
        int low = from;
        // Doubling first: large counts take long to work out.
        int high = from;
        while (high < to && fits(high)) {
            low = high;
            high = (int) Math.min(to, Math.max(high + 1L, 2L * high));
        }
        if (fits(high)) {
            return high;
        }
        while (high - low > 1) {
            int middle = low + (high - low) / 2;
            if (fits(middle)) {
                low = middle;
            } else {
                high = middle;
            }
        }
        for (int ahead = low + 1; ahead <= Math.min((long) to, (long) low + lookAhead); ahead++) {
            if (fits(ahead)) {
                low = ahead;
            }
        }
        return low;
    }
}
