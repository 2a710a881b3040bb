package org.papermath.pulp;

import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Time;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Consistency;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Limits;
import org.papermath.quantity.Refused;

/**
 * A sheet of beaten stuff timed with a stopwatch at the vat, before colour, filler or formation aid go in: the reading a
 * studio without a drainability tester can take.
 *
 * @param time from lifting the mould until the sheen has gone, 0.1 s to 1 h
 * @param fibre the oven-dry fibre of the sheet on the area of the wire
 * @param consistency the consistency of the vat it was lifted from
 */
public record TimedSheet(Amount<Time> time, Amount<Grammage> fibre, Amount<Consistency> consistency) {
    private static final double SHORTEST = 0.1;
    private static final double LONGEST = 3600;

    /**
     * Checks the parts.
     *
     * @param time from lifting the mould until the sheen has gone, 0.1 s to 1 h
     * @param fibre the oven-dry fibre of the sheet on the area of the wire, within {@link Limits#PIECE_GRAMMAGE}
     * @param consistency the consistency of the vat, within {@link Limits#VAT_CONSISTENCY}
     * @throws Refused if a value is out of range
     */
    public TimedSheet {
        Objects.requireNonNull(time, "time");
        Objects.requireNonNull(fibre, "fibre");
        Objects.requireNonNull(consistency, "consistency");
        Kinds.TIME.siWithin(time, "drain time of the timed sheet", SHORTEST, LONGEST);
        Limits.PIECE_GRAMMAGE.check(fibre, "oven-dry fibre of the timed sheet");
        Limits.VAT_CONSISTENCY.check(consistency, "consistency of the vat of the timed sheet");
    }

    /**
     * Makes a timed sheet.
     *
     * @param time from lifting the mould until the sheen has gone, 0.1 s to 1 h
     * @param fibre the oven-dry fibre of the sheet on the area of the wire
     * @param consistency the consistency of the vat it was lifted from
     * @return the timed sheet
     * @throws Refused if a value is out of range
     */
    public static TimedSheet of(Quantity<Time> time, Quantity<Grammage> fibre, Quantity<Consistency> consistency) {
        return new TimedSheet(
                Kinds.TIME.check(time, "drain time of the timed sheet"),
                Kinds.GRAMMAGE.check(fibre, "oven-dry fibre of the timed sheet"),
                Kinds.CONSISTENCY.check(consistency, "consistency of the vat of the timed sheet"));
    }

    @Override
    public String toString() {
        return time + " for " + fibre + " from " + consistency;
    }
}
