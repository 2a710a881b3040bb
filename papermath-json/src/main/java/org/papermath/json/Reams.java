package org.papermath.json;

import java.util.List;
import java.util.Optional;

import javax.measure.quantity.Length;

import org.papermath.quantity.Amount;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.ReamBasis;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Units;

/** The bases of reams as documents write them. */
final class Reams {
    static final List<ReamBasis> NAMED = List.of(ReamBasis.BOND, ReamBasis.COVER, ReamBasis.BRISTOL, ReamBasis.INDEX,
            ReamBasis.TAG, ReamBasis.TEXT, ReamBasis.IMPERIAL, ReamBasis.THOUSAND_SQUARE_FEET);

    private Reams() {
    }

    static ReamBasis of(Optional<ReamBasis> named, Amount<Length> width, Amount<Length> length, int count) {
        if (named.isEmpty()) {
            return ReamBasis.of(width, length, count);
        }
        ReamBasis basis = named.get();
        if (!basis.width().isWithin(width, 1e-9) || !basis.length().isWithin(length, 1e-9)) {
            throw Refused.of("ream.sheet", "ream: " + basis.name() + " is reckoned on a sheet of " + basis.width()
                    + " by " + basis.length() + "; " + width + " by " + length
                    + " is written. Mend the sheet or leave the name out.",
                    "name", basis.name(), "width", width.toString(), "length", length.toString());
        }
        return basis.count() == count ? basis : basis.withCount(count);
    }

    /** Tells whether a basis is one of the named ones, whatever its count. */
    static boolean isNamed(ReamBasis basis) {
        return NAMED.stream().anyMatch(named -> named.withCount(basis.count()).equals(basis));
    }

    /** Returns the shortest text of a side that reads back to the same bits. */
    static String side(Amount<Length> side) {
        String best = Units.print(Kinds.LENGTH.ofSi(side.si()));
        for (String code : List.of("in", "mm", "cm")) {
            String text = Units.print(side.to(code));
            if (text.length() <= best.length() && Kinds.LENGTH.read(text).si() == side.si()) {
                best = text;
            }
        }
        return best;
    }
}
