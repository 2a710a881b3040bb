package org.papermath.notice;

import java.util.Optional;
import java.util.function.ToDoubleBiFunction;
import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import org.papermath.evidence.Notice;
import org.papermath.evidence.Scope;
import org.papermath.quantity.Amount;
import org.papermath.quantity.ApparentDensity;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;
import org.papermath.quantity.RelativeHumidity;
import org.papermath.quantity.SheetPressure;
import org.papermath.quantity.Units;

/** What is unusual in the sheets, from the press to the dry room. {@code limits} looks up a limit by id and scope. */
public final class SheetNotices {
    /** Where the limits of dampness are from, for people. */
    private static final String MOULD_GUIDANCE = "Canadian Conservation Institute";

    /** Density of the wall of fibres, kg/m³, rounded up: cellulose crystals have about 1590 (recalled, not looked up). */
    private static final double SOLID_FIBRE = 1600;

    /** What a quotient may be off by its last digits, so that a sheet just at a limit is not beyond it. */
    private static final double ROUNDING = 1e-12;

    private SheetNotices() {}

    /** Warns of a pressure at which solids and density no longer answer. */
    public static Optional<Notice> pressure(Amount<SheetPressure> pressure, ToDoubleBiFunction<String, Scope> limits) {
        double warning = limits.applyAsDouble("press.pressure-warning", Scope.GENERAL);
        if (pressure.si() <= warning) {
            return Optional.empty();
        }
        String limit = Kinds.SHEET_PRESSURE.ofSi(warning, "MPa").toString();
        return Optional.of(Notice.warning(
                "press.pressure-high",
                "The pressure on the sheet is " + pressure.to("MPa") + "; above " + limit
                        + " solids and density hardly answer any more and are only carried on from lower pressures.",
                "given",
                pressure.toString(),
                "limit",
                limit));
    }

    /** Refuses felts denser (kg/m³) than the wool they are of. */
    public static void requireFelt(double density, double wool) {
        if (density >= wool) {
            String given = Kinds.DENSITY.ofSi(density, "kg/m3").toString();
            String most = Kinds.DENSITY.ofSi(wool, "kg/m3").toString();
            throw Refused.of(
                    "felts.too-dense",
                    "felts: by their thickness they have " + given + ", more than the " + most
                            + " of wool itself. Check the thickness and the grammage of the dry felt.",
                    "given",
                    given,
                    "most",
                    most);
        }
    }

    /**
     * Refuses a measured sheet that is not paper.
     *
     * @param density density of the sheet, kg/m³
     * @param asThinAsFibres whether the sheet is no thicker than single fibres, so that its density says nothing
     * @param least lowest density a sheet without fillers can have, kg/m³
     * @param most greatest density a sheet without fillers can have, kg/m³
     */
    public static void requireDensity(double density, boolean asThinAsFibres, double least, double most) {
        if (asThinAsFibres || density < least || density > most) {
            throw Refused.of(
                    "density.calibration",
                    "density of the measured sheet: " + Kinds.DENSITY.ofSi(Math.min(density, 25000), "kg/m3")
                            + "; a sheet without fillers lies from " + Units.fourDigits(least) + " to "
                            + Units.fourDigits(most) + " kg/m³. Check mil against micrometre.",
                    "given",
                    density,
                    "least",
                    Units.fourDigits(least) + " kg/m³",
                    "most",
                    Units.fourDigits(most) + " kg/m³");
        }
    }

    /** Warns of a post that does not go under a press. */
    public static Optional<Notice> high(Amount<Length> post, Amount<Length> daylight) {
        if (post.si() <= daylight.si()) {
            return Optional.empty();
        }
        return Optional.of(Notice.warning(
                "post.too-high",
                "The post is " + post + " high and the opening of the press is " + daylight + ". Make smaller posts.",
                "height",
                post.toString(),
                "daylight",
                daylight.toString()));
    }

    /** What one person lifts at best. */
    public static Amount<Mass> alone(ToDoubleBiFunction<String, Scope> limits) {
        return Kinds.MASS.ofSi(limits.applyAsDouble("post.lifting-limit", Scope.GENERAL), "kg");
    }

    /** What two lift together at best, to the kilogram. */
    public static Amount<Mass> together(ToDoubleBiFunction<String, Scope> limits) {
        double team = limits.applyAsDouble("post.lifting-team", Scope.GENERAL);
        return Kinds.MASS.ofSi(Math.rint(2 * alone(limits).si() * team), "kg");
    }

    /** Warns of a post too heavy for one person, or for two. */
    public static Optional<Notice> heavy(Amount<Mass> post, ToDoubleBiFunction<String, Scope> limits) {
        Amount<Mass> limit = alone(limits);
        if (post.si() <= limit.si()) {
            return Optional.empty();
        }
        Amount<Mass> two = together(limits);
        return Optional.of(Notice.warning(
                "post.heavy",
                "A post weighs " + post + ", more than the " + limit + " ("
                        + Units.fourDigits(Math.rint(limit.in("lb")))
                        + " lb) one person should lift at best"
                        + (post.si() <= two.si()
                                ? ". Take two people, a trolley or smaller posts."
                                : " and the " + two
                                        + " two should lift together. Lay it on a trolley or in the press, or make"
                                        + " smaller posts."),
                "mass",
                post.toString(),
                "limit",
                limit.toString(),
                "guidance",
                "NIOSH 94-110"));
    }

    /** Returns whether a sheet is so thin that its thickness no longer goes with its grammage. */
    public static boolean isThin(double grammage, ToDoubleBiFunction<String, Scope> limits) {
        return grammage < limits.applyAsDouble("sheet.grammage-thin", Scope.GENERAL);
    }

    /** Notes a thin sheet. */
    public static Notice thin(Amount<Grammage> grammage, ToDoubleBiFunction<String, Scope> limits) {
        Amount<Grammage> limit =
                Kinds.GRAMMAGE.ofSi(limits.applyAsDouble("sheet.grammage-thin", Scope.GENERAL), "g/m2");
        return Notice.note(
                "sheet.thin",
                "Below " + limit + " the thickness of a sheet no longer goes with its grammage. Measure a sheet.",
                "given",
                grammage.toString(),
                "limit",
                limit.toString());
    }

    /**
     * Refuses a density no dry sheet can have.
     *
     * @param density density of the sheet, kg/m³
     */
    public static void requirePaper(double density) {
        if (density > SOLID_FIBRE * (1 + ROUNDING)) {
            String given = Kinds.DENSITY.ofSi(Math.min(density, 25000), "kg/m3").toString();
            String most = Kinds.DENSITY.ofSi(SOLID_FIBRE, "kg/m3").toString();
            throw Refused.of(
                    "density.beyond-fibre",
                    "density of the sheet: " + given + ", more than the " + most
                            + " of fibre without any air. Check mil against micrometre, the weight and the sides.",
                    "given",
                    given,
                    "most",
                    most);
        }
    }

    /** Warns of a density that paper hardly has. */
    public static Optional<Notice> doubtful(
            Amount<ApparentDensity> density, ToDoubleBiFunction<String, Scope> limits, Scope furnish) {
        var least = Kinds.DENSITY.ofSi(limits.applyAsDouble("sheet.density-doubtful-low", furnish), "kg/m3");
        var most = Kinds.DENSITY.ofSi(limits.applyAsDouble("sheet.density-doubtful-high", furnish), "kg/m3");
        if (!(density.si() < least.si() * (1 - ROUNDING) || density.si() > most.si() * (1 + ROUNDING))) {
            return Optional.empty();
        }
        return Optional.of(Notice.warning(
                "density.doubtful",
                "An apparent density of " + density + " is unusual: paper lies from " + least + " to " + most
                        + ". Check the thickness, the unit and the recipe.",
                "given",
                density.toString(),
                "least",
                least.toString(),
                "most",
                most.toString()));
    }

    /** Warns from which dampness on mould grows. */
    public static Optional<Notice> mould(Amount<RelativeHumidity> humidity, ToDoubleBiFunction<String, Scope> limits) {
        String at = "The room is at " + humidity + " relative humidity: ";
        Amount<RelativeHumidity> stop = limit("room.mould-stop", limits);
        if (humidity.si() >= stop.si()) {
            return Optional.of(Notice.warning(
                    "room.mould-stop",
                    at + "from " + stop + " on mould grows fast on paper and size (" + MOULD_GUIDANCE
                            + "). Stop drying, and ventilate or dry the air.",
                    "given",
                    humidity.toString(),
                    "limit",
                    stop.toString(),
                    "guidance",
                    MOULD_GUIDANCE));
        }
        Amount<RelativeHumidity> caution = limit("room.mould-caution", limits);
        if (humidity.si() >= caution.si()) {
            return Optional.of(Notice.warning(
                    "room.mould-caution",
                    at + "from " + caution + " on mould grows on paper (" + MOULD_GUIDANCE + "). Keep it below.",
                    "given",
                    humidity.toString(),
                    "limit",
                    caution.toString(),
                    "guidance",
                    MOULD_GUIDANCE));
        }
        Amount<RelativeHumidity> note = limit("room.mould-note", limits);
        if (humidity.si() >= note.si()) {
            return Optional.of(Notice.note(
                    "room.mould-note",
                    at + "paper is better kept below " + note + " (" + MOULD_GUIDANCE + ").",
                    "given",
                    humidity.toString(),
                    "limit",
                    note.toString(),
                    "guidance",
                    MOULD_GUIDANCE));
        }
        return Optional.empty();
    }

    private static Amount<RelativeHumidity> limit(String id, ToDoubleBiFunction<String, Scope> limits) {
        return Kinds.RELATIVE_HUMIDITY.ofSi(limits.applyAsDouble(id, Scope.GENERAL), "%");
    }

    /** Warns that sheets never dry in air that is full of water. */
    public static Notice saturated(Amount<RelativeHumidity> humidity) {
        return Notice.warning(
                "drying.never-saturated",
                "It never dries: the air is at " + humidity
                        + " relative humidity and takes up no water. Warm or exchange it.",
                "given",
                humidity.toString());
    }
}
