package org.papermath.evidence;

import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * The values that have no default because they are read off a sheet of one's own. Where a store holds one, a plan takes
 * it in place of what the models would say.
 *
 * <p>Their scope is a piece or a recipe by its name, and where it matters the dryer: {@code tide grey@the boards}.
 */
public final class DirectMeasurements {
    private static final String ORIGIN = "a bound, not a value";
    private static final List<Assumption> ALL = List.of(
            share(
                    "shrinkage.measured-along",
                    "how much shorter the finished sheet is than the opening of the deckle, along"),
            share(
                    "shrinkage.measured-across",
                    "how much narrower the finished sheet is than the opening of the deckle, across"),
            share("web.solids-pressed", "dry matter over all of the pressed sheet, as it leaves the felt"),
            share("sheet.moisture-conditioned", "water over all of the sheet after a day in the room"),
            new Assumption(
                    "sheet.density-measured",
                    Scope.GENERAL,
                    "mass of the finished sheet over its volume",
                    500,
                    500,
                    500,
                    Shape.LOG_NORMAL,
                    20,
                    2500,
                    "kg/m3",
                    Role.PHYSICAL,
                    Basis.GIVEN,
                    new Source(ORIGIN)));

    private DirectMeasurements() {}

    private static Assumption share(String id, String meaning) {
        return new Assumption(
                id,
                Scope.GENERAL,
                meaning,
                0.5,
                0.5,
                0.5,
                Shape.LOGIT,
                0,
                1,
                "1",
                Role.PHYSICAL,
                Basis.GIVEN,
                new Source(ORIGIN));
    }

    /**
     * Returns what can be measured directly. Take the id, the meaning, the unit and the bounds from these; their values
     * stand for nothing. {@link Assumptions#given(String, Scope, double)} puts a value in.
     *
     * @return an unmodifiable list
     */
    public static List<Assumption> all() {
        return ALL;
    }

    /**
     * Finds one by its id.
     *
     * @param id the dotted name
     * @return its meaning, unit and bounds, or empty if the id is none of these
     */
    public static Optional<Assumption> find(String id) {
        Objects.requireNonNull(id, "id");
        return ALL.stream().filter(one -> one.id().equals(id)).findFirst();
    }
}
