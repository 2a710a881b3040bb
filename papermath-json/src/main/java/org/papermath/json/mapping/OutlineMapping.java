package org.papermath.json.mapping;

import java.util.Comparator;
import java.util.List;
import java.util.function.Function;
import javax.measure.quantity.Length;
import org.papermath.json.kit.ObjectReader;
import org.papermath.json.kit.ObjectWriter;
import org.papermath.json.kit.ReadResult;
import org.papermath.json.kit.ValueReader;
import org.papermath.json.kit.ValueWriter;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Limits;
import org.papermath.shape.Outline;

/** An outline that is formed: a round, an oval, or corners in order. */
final class OutlineMapping {
    private OutlineMapping() {}

    static ReadResult<Outline> read(ValueReader at, Limits.Range<Length> sides, String what) {
        return at.object(in -> read(in, sides, what));
    }

    private static ReadResult<Outline> read(ObjectReader in, Limits.Range<Length> sides, String what) {
        in.exactlyOne("round", "oval", "corners");
        ReadResult<Amount<Length>> round = CommonMembers.within(in.optional("round"), sides, "diameter of " + what);
        ReadResult<List<Amount<Length>>> oval = CommonMembers.sides(in.optional("oval"), sides, "side of " + what);
        ReadResult<List<Outline.Point>> corners = in.optional("corners")
                .list(
                        Limits.OUTLINE_CORNERS.least(),
                        Limits.OUTLINE_CORNERS.most(),
                        corner -> corner.object(EvidenceMapping::corner));
        return in.make(() -> round.isGiven()
                ? Outline.round(round.get())
                : oval.isGiven() ? Outline.oval(oval.get().get(0), oval.get().get(1)) : Outline.of(corners.get()));
    }

    static void write(ValueWriter out, Outline outline) {
        out.object(in -> write(in, outline));
    }

    private static void write(ObjectWriter out, Outline outline) {
        Amount<Length> width = most(outline, Outline.Point::across);
        Amount<Length> height = most(outline, Outline.Point::along);
        if (Outline.round(width).equals(outline)) {
            out.member("round").quantity(width);
        } else if (Outline.oval(width, height).equals(outline)) {
            CommonMembers.sides(out.member("oval"), width, height);
        } else {
            EvidenceMapping.outline(out, outline);
        }
    }

    /** A side over all, to the bit, which reckoned back from its place it may not be. */
    private static Amount<Length> most(Outline outline, Function<Outline.Point, Amount<Length>> place) {
        return outline.corners().stream()
                .map(place)
                .max(Comparator.comparingDouble(Amount::si))
                .orElseThrow();
    }
}
