package org.papermath.json.kit;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import javax.measure.quantity.Length;
import org.papermath.format.ReamBasis;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Refused;

/** The bases of reams as documents write them. */
final class Reams {
    static final List<ReamBasis> NAMED = Stream.concat(
                    ReamBasis.grades().stream(), Stream.of(ReamBasis.THREE_THOUSAND_SQUARE_FEET))
            .toList();

    private Reams() {}

    static ReamBasis of(Optional<ReamBasis> named, Amount<Length> width, Amount<Length> length, int count) {
        if (named.isEmpty()) {
            return ReamBasis.of(width, length, count);
        }
        ReamBasis basis = named.get();
        if (!basis.width().isWithin(width, 1e-9) || !basis.length().isWithin(length, 1e-9)) {
            throw Refused.of(
                    "ream.sheet",
                    "ream: " + basis.name() + " is based on a sheet of " + basis.width()
                            + " by " + basis.length() + "; " + width + " by " + length
                            + " is written. Correct the sheet or leave the name out.",
                    "name",
                    basis.name(),
                    "width",
                    width.toString(),
                    "length",
                    length.toString());
        }
        return basis.count() == count ? basis : basis.withCount(count);
    }

    /** Returns whether a basis is one of the named ones, whatever its count. */
    static boolean isNamed(ReamBasis basis) {
        return NAMED.stream().anyMatch(named -> named.withCount(basis.count()).equals(basis));
    }
}
