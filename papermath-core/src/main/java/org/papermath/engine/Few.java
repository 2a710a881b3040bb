package org.papermath.engine;

import java.util.List;
import org.papermath.quantity.Limits;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Units;

/** As many sheets as can be planned: they are gone through one by one. */
final class Few {
    /** More dips than this are not told apart. */
    static final int MOST_DIPS = 1000;

    private Few() {}

    /** Checks the sheets to pull; where nearly all are lost there may be more than can be counted. */
    static int sheets(double given, String piece) {
        if (!(given <= Limits.PULLED.most())) {
            String counted = Double.isFinite(given) ? Units.number(given) : "more than can be counted";
            throw Refused.of(
                    "plan.too-many-sheets",
                    "sheets to pull up to piece " + piece + ": " + counted
                            + " needed; at most " + Limits.PULLED.most()
                            + " are possible. Check the counts, the spare share"
                            + " and the rejects the studio knows.",
                    "quantity",
                    "sheets to pull",
                    "piece",
                    piece,
                    "given",
                    counted,
                    "most",
                    Limits.PULLED.most(),
                    "member",
                    List.of("spare", "count"));
        }
        return (int) given;
    }
}
