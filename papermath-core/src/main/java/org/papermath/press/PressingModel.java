package org.papermath.press;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Function;
import javax.measure.Quantity;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Time;
import org.papermath.equation.Pressing;
import org.papermath.equation.PressingLaw;
import org.papermath.equation.WetWeb;
import org.papermath.evidence.Assumption;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Bands;
import org.papermath.evidence.Basis;
import org.papermath.evidence.Estimate;
import org.papermath.evidence.Notice;
import org.papermath.evidence.Reading;
import org.papermath.evidence.Scope;
import org.papermath.evidence.Source;
import org.papermath.notice.SheetNotices;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Limits;
import org.papermath.quantity.MoistureRatio;
import org.papermath.quantity.Refused;
import org.papermath.quantity.SheetPressure;
import org.papermath.quantity.Solids;
import org.papermath.quantity.WaterRetention;
import org.papermath.sheet.CouchedSheet;
import org.papermath.sheet.PressedSheet;
import org.papermath.sheet.Sheet;

/**
 * Water left in a sheet after pressing. Immutable.
 *
 * <p>Long pressing comes to {@code M_eq = max(M_floor, a WRV (p/p0)^-b)}; on the way
 * {@code M = M_eq + (M_in - M_eq) exp(-t/tau)} with {@code tau = tau0 (W/0.1)² (WRV/1.5)²}, W the oven-dry grammage in
 * kg/m². When the load is taken off the sheet takes back {@code R/W} from the felts, so that light sheets come out
 * wetter; it never comes out wetter than it went in. A second and a third pressing with the felts exchanged come to
 * rest at a share of the water of the one before. One law holds from the couch to the press: boards and weights by
 * hand are a low pressure. For felts on both sides, damp and not dripping; 0.03 to 1.5 MPa on the sheet, up to 400 g/m². About ±0.06 of
 * the solids; ±0.02 after one sheet weighed couched, pressed and dry.
 *
 * @source form and constants of the library from published results quoted at {@code press.factor}; the square of the
 *     grammage after Kerekes and McDonald 1991
 */
public final class PressingModel {
    private static final List<String> IDS =
            List.of("press.factor", "press.exponent", "press.floor", "press.time-constant", "press.rewet");
    private static final double GREATEST_GRAMMAGE = 0.4;
    private static final double LEAST_PRESSURE = 0.03e6;

    private final Assumptions assumptions;
    private final Scope scope;
    private final PressingLaw law;

    /** What pressing leaves. */
    public sealed interface Result permits FoundResult {
        /** {@return the pressed sheet} */
        PressedSheet sheet();

        /** {@return the moisture ratio after very long pressing, while the load is on} */
        Amount<MoistureRatio> equilibrium();

        /** {@return the time in which the distance to it falls to 37 %} */
        Amount<Time> timeConstant();

        /** {@return what the result should not be read without} */
        List<Notice> notices();

        /**
         * Returns the solids after pressing.
         *
         * @return the solids
         */
        Amount<Solids> solids();
    }

    private record FoundResult(
            PressedSheet sheet, Amount<MoistureRatio> equilibrium, Amount<Time> timeConstant, List<Notice> notices)
            implements Result {
        @Override
        public Amount<Solids> solids() {
            return sheet.solids();
        }

        @Override
        public String toString() {
            return "pressed to " + solids() + " solids";
        }
    }

    private PressingModel(Assumptions assumptions, Scope scope) {
        this.assumptions = assumptions;
        this.scope = scope;
        this.law = new PressingLaw(
                assumptions.si("press.factor", scope),
                assumptions.si("press.exponent", scope),
                assumptions.si("press.reference-pressure", scope),
                assumptions.si("press.floor", scope),
                assumptions.si("press.time-constant", scope),
                assumptions.si("press.rewet", scope));
    }

    /**
     * Returns the model by the shipped assumptions.
     *
     * @return the model
     */
    public static PressingModel standard() {
        return from(Assumptions.standard(), Scope.GENERAL);
    }

    /**
     * Makes the model for a press, and a fibre on it.
     *
     * @param assumptions the store
     * @param scope the press, for example {@code Scope.at(press.name())}
     * @return the model
     * @throws Refused if the store lacks one of its numbers
     */
    public static PressingModel from(Assumptions assumptions, Scope scope) {
        Objects.requireNonNull(assumptions, "assumptions");
        Objects.requireNonNull(scope, "scope");
        return new PressingModel(assumptions, scope);
    }

    /**
     * Returns the moisture ratio after very long pressing, while the load is on.
     *
     * @param retention the water retention value of the stock as beaten
     * @param pressure the pressure on the sheet
     * @return water over oven-dry mass
     * @throws Refused if the pressure is above the limit for hand presses, or a value is out of range
     */
    public Amount<MoistureRatio> equilibrium(Quantity<WaterRetention> retention, Quantity<SheetPressure> pressure) {
        return Kinds.MOISTURE_RATIO.ofSi(
                law.equilibrium(
                        Kinds.WATER_RETENTION.siAboveZero(retention, "water retention value"), pressed(pressure)),
                "g/g");
    }

    private double pressed(Quantity<SheetPressure> pressure) {
        double p = Kinds.SHEET_PRESSURE.siAboveZero(pressure, "pressure on the sheet");
        pressureNotices(Kinds.SHEET_PRESSURE.check(pressure, "pressure on the sheet"), assumptions);
        return p;
    }

    /**
     * Presses a sheet.
     *
     * @param sheet the couched sheet
     * @param retention the water retention value of the stock as beaten
     * @param pressure the pressure on the sheet
     * @param hold the time at load
     * @return the pressed sheet, and what to know of it
     * @throws Refused if the pressure is above the limit for hand presses ({@code press.pressure-limit}), or a value is
     *     out of range
     */
    public Result press(
            CouchedSheet sheet,
            Quantity<WaterRetention> retention,
            Quantity<SheetPressure> pressure,
            Quantity<Time> hold) {
        return press(law, sheet, sheet::pressed, retention, pressure, hold);
    }

    /**
     * Presses a sheet a second time, with the felts exchanged. The law takes it on from the water it came with, to
     * {@code press.second-factor} of the water one pressing comes to; a sheet that is already drier than this pressure
     * leaves it stays as it is.
     *
     * @param sheet the sheet out of the press before
     * @param retention the water retention value of the stock as beaten
     * @param pressure the pressure on the sheet this time
     * @param hold the time at load this time
     * @return the pressed sheet, and what to know of it
     * @throws Refused as {@link #press}
     */
    public Result pressAgain(
            PressedSheet sheet,
            Quantity<WaterRetention> retention,
            Quantity<SheetPressure> pressure,
            Quantity<Time> hold) {
        return pressAgain(sheet, 2, retention, pressure, hold);
    }

    /**
     * Presses a sheet a second or a third time, with the felts exchanged each time.
     *
     * @param sheet the sheet out of the press before
     * @param time which time it is: 2, or 3 with {@code press.third-factor} besides
     * @param retention the water retention value of the stock as beaten
     * @param pressure the pressure on the sheet this time
     * @param hold the time at load this time
     * @return the pressed sheet, and what to know of it
     * @throws Refused as {@link #press}, or if the time is neither the second nor the third
     */
    public Result pressAgain(
            PressedSheet sheet,
            int time,
            Quantity<WaterRetention> retention,
            Quantity<SheetPressure> pressure,
            Quantity<Time> hold) {
        if (time < 2 || time > Limits.PRESSINGS.most()) {
            throw Refused.of(
                    "press.which-time",
                    "pressing a sheet again: time " + time + " given; must be 2 or 3. Use press for the first.",
                    "given",
                    time);
        }
        PressingLaw again = law.again(assumptions.si("press.second-factor", scope));
        if (time > 2) {
            again = again.again(assumptions.si("press.third-factor", scope));
        }
        return press(again, sheet, sheet::pressedAgain, retention, pressure, hold);
    }

    /**
     * Presses a sheet by hand, between blotters under boards and weights, until it gives no more water up. This is the
     * law of pressing at the low pressure {@code press.blotter-pressure}; a sheet out of a press that is drier already
     * stays as it is.
     *
     * @param sheet the sheet as couched, or out of the press
     * @param retention the water retention value of the stock as beaten
     * @return the sheet, ready to dry
     * @throws Refused if the water retention value is out of range
     */
    public PressedSheet betweenBlotters(PressedSheet sheet, Quantity<WaterRetention> retention) {
        Objects.requireNonNull(sheet, "sheet");
        double ratio = law.ratioAtRest(
                sheet.ratio().si(),
                Kinds.WATER_RETENTION.siAboveZero(retention, "water retention value"),
                assumptions.si("press.blotter-pressure", scope),
                sheet.ovenDryGrammage().si());
        return sheet.pressedAgain(Kinds.SOLIDS.ofSi(Pressing.solidsOfRatio(ratio), "%"));
    }

    private Result press(
            PressingLaw law,
            Sheet sheet,
            Function<Amount<Solids>, PressedSheet> pressing,
            Quantity<WaterRetention> retention,
            Quantity<SheetPressure> pressure,
            Quantity<Time> hold) {
        double wrv = Kinds.WATER_RETENTION.siAboveZero(retention, "water retention value");
        double p = pressed(pressure);
        double seconds = Kinds.TIME.si(hold, "time at load");
        double grammage = sheet.ovenDryGrammage().si();
        double equilibrium = law.equilibrium(wrv, p);
        double constant = law.timeConstant(grammage, wrv);
        double ratio = law.ratioAfter(sheet.ratio().si(), wrv, p, grammage, seconds);
        PressedSheet out = pressing.apply(Kinds.SOLIDS.ofSi(Pressing.solidsOfRatio(ratio), "%"));
        List<Notice> notices =
                new ArrayList<>(pressureNotices(Kinds.SHEET_PRESSURE.check(pressure, "pressure"), assumptions));
        if (seconds < 3 * constant) {
            notices.add(Notice.note(
                    "press.short-hold",
                    "The load is held for " + hold
                            + "; this sheet would still give up water after three time constants, "
                            + Kinds.TIME.ofSi(3 * constant, "s") + ".",
                    "given",
                    hold.toString(),
                    "wanted",
                    Kinds.TIME.ofSi(3 * constant, "s").toString()));
        }
        if (p < LEAST_PRESSURE || grammage > GREATEST_GRAMMAGE) {
            notices.add(Notice.warning(
                    "press.outside-range",
                    "The pressing model holds from 0.03 MPa and up to 400 g/m² oven-dry; " + pressure + " and "
                            + sheet.ovenDryGrammage() + " are outside.",
                    "pressure",
                    pressure.toString(),
                    "grammage",
                    sheet.ovenDryGrammage().toString()));
        }
        if (Pressing.solidsOfRatio(ratio) > 0.5) {
            notices.add(Notice.warning(
                    "press.dry",
                    "Solids above 50 % after a hand press are more than presses are known to reach; weigh a sheet.",
                    "solids",
                    out.solids().toString()));
        }
        if (assumptions.get("press.factor", scope).basis() != Basis.MEASURED_HERE) {
            notices.add(Notice.note(
                    "press.uncalibrated",
                    "The water retention value rules this result; one from a table, of unstated basis or from a gentler"
                            + " spinning"
                            + " overstates the water. One sheet weighed couched, pressed and dry settles it.",
                    "retention",
                    retention.toString()));
        }
        return new FoundResult(
                out,
                Kinds.MOISTURE_RATIO.ofSi(equilibrium, "g/g"),
                Kinds.TIME.ofSi(constant, "s"),
                List.copyOf(notices));
    }

    /**
     * Returns the solids after pressing with their band.
     *
     * @param sheet the couched sheet
     * @param retention the water retention value of the stock as beaten
     * @param pressure the pressure on the sheet
     * @param hold the time at load
     * @return the solids
     * @throws Refused as {@link #press}
     */
    public Estimate<Solids> solids(
            CouchedSheet sheet,
            Quantity<WaterRetention> retention,
            Quantity<SheetPressure> pressure,
            Quantity<Time> hold) {
        return Bands.of(
                assumptions,
                scope,
                IDS,
                store -> from(store, scope)
                        .press(sheet, retention, pressure, hold)
                        .solids());
    }

    /**
     * Returns the time at load until a sheet comes to some solids.
     *
     * @param sheet the couched sheet
     * @param retention the water retention value of the stock as beaten
     * @param pressure the pressure on the sheet
     * @param wanted the target solids
     * @return the time
     * @throws Refused if this pressure never brings the sheet there, or a value is out of range
     */
    public Amount<Time> timeTo(
            CouchedSheet sheet,
            Quantity<WaterRetention> retention,
            Quantity<SheetPressure> pressure,
            Quantity<Solids> wanted) {
        double wrv = Kinds.WATER_RETENTION.siAboveZero(retention, "water retention value");
        double p = pressed(pressure);
        double time = law.timeTo(
                Pressing.ratioOfSolids(Kinds.SOLIDS.si(wanted, "target solids")),
                sheet.ratio().si(),
                wrv,
                p,
                sheet.ovenDryGrammage().si());
        if (Double.isInfinite(time)) {
            Amount<Solids> best = Kinds.SOLIDS.ofSi(
                    Pressing.solidsOfRatio(law.ratioAtRest(
                            sheet.ratio().si(), wrv, p, sheet.ovenDryGrammage().si())),
                    "%");
            throw Refused.of(
                    "press.never",
                    "pressing: " + wanted + " solids asked for; " + pressure + " on this stock never comes above "
                            + best + ". Press harder within what the press allows, or dry from there.",
                    "given",
                    wanted.toString(),
                    "limit",
                    best.toString());
        }
        return Kinds.TIME.ofSi(time, "min");
    }

    /** What runs out of a post in the press. */
    public sealed interface Water permits FoundWater {
        /** {@return the water the sheets give up} */
        Amount<Mass> fromSheets();

        /** {@return the water the felts give up; they go in damp and come out drier} */
        Amount<Mass> fromFelts();

        /** {@return what the result should not be read without} */
        List<Notice> notices();

        /**
         * Returns what runs to the floor and the drain.
         *
         * @return the water of sheets and felts
         */
        Amount<Mass> toDrain();
    }

    private record FoundWater(Amount<Mass> fromSheets, Amount<Mass> fromFelts, List<Notice> notices) implements Water {
        @Override
        public Amount<Mass> toDrain() {
            return Kinds.MASS.ofSi(fromSheets.si() + fromFelts.si(), "kg");
        }

        @Override
        public String toString() {
            return toDrain() + " of water to the drain";
        }
    }

    /**
     * Returns the water that runs out of a post: {@code n A W (M_in - M_out)} of the sheets, and what the felts lose.
     *
     * @param post the post
     * @param felts its felts
     * @param couched one sheet before
     * @param pressed the same sheet after
     * @return the water
     * @throws Refused if a value is out of range
     */
    public Water waterOf(Post post, Felts felts, CouchedSheet couched, PressedSheet pressed) {
        double sheets = post.sheets() * (couched.water().si() - pressed.water().si());
        double dry =
                felts.width().si() * felts.length().si() * felts.dryGrammage().si();
        double before = post.wetFelt().si() / dry - 1;
        double out = -WetWeb.feltWater(post.felts(), dry, assumptions.si("felt.water-after", scope), before);
        List<Notice> notices = new ArrayList<>();
        if (out > sheets) {
            notices.add(Notice.note(
                    "press.felt-water",
                    "The felts give up more water than the sheets: wring or spin them before the post is laid.",
                    "felts",
                    Kinds.MASS.ofSi(Math.max(0, out), "kg").toString(),
                    "sheets",
                    Kinds.MASS.ofSi(Math.max(0, sheets), "kg").toString()));
        }
        return new FoundWater(
                Kinds.MASS.ofSi(sheets, "kg"), Kinds.MASS.ofSi(Math.max(0, out), "kg"), List.copyOf(notices));
    }

    /**
     * Calibrates a press by one sheet weighed couched, pressed and dry: the factor a in
     * {@code M_eq = a WRV (p/p0)^-b}. A hold shorter than five time constants is allowed for, and what the sheet takes
     * back from the felts.
     *
     * @param assumptions the store
     * @param press the press; its name is the scope
     * @param sheet the sheet as couched, with its oven-dry mass and size
     * @param pressedMass the mass out of the press
     * @param retention the water retention value of the stock as beaten
     * @param pressure the pressure on the sheet
     * @param hold the time at load
     * @return the store with {@code press.factor} measured for the press
     * @throws Refused if the pressed mass is not between the oven-dry and the couched one, the hold is too short to
     *     tell, or the sheet is at the floor no press goes below
     */
    public static Assumptions calibrate(
            Assumptions assumptions,
            Press press,
            CouchedSheet sheet,
            Reading<Mass> pressedMass,
            Quantity<WaterRetention> retention,
            Quantity<SheetPressure> pressure,
            Quantity<Time> hold) {
        Objects.requireNonNull(press, "press");
        return calibrate(assumptions, Scope.at(press.name()), sheet, pressedMass, retention, pressure, hold);
    }

    /**
     * Calibrates a press of which no more than the name is at hand, as {@link #calibrate(Assumptions, Press,
     * CouchedSheet, Reading, Quantity, Quantity, Quantity)} does.
     *
     * @param assumptions the store
     * @param scope the press, {@code Scope.at(name)}
     * @param sheet the sheet as couched, with its oven-dry mass and size
     * @param pressedMass the mass out of the press
     * @param retention the water retention value of the stock as beaten
     * @param pressure the pressure on the sheet
     * @param hold the time at load
     * @return the store with {@code press.factor} measured for the press
     * @throws Refused as the other
     */
    public static Assumptions calibrate(
            Assumptions assumptions,
            Scope scope,
            CouchedSheet sheet,
            Reading<Mass> pressedMass,
            Quantity<WaterRetention> retention,
            Quantity<SheetPressure> pressure,
            Quantity<Time> hold) {
        Objects.requireNonNull(assumptions, "assumptions");
        Objects.requireNonNull(scope, "scope");
        Objects.requireNonNull(sheet, "sheet");
        Objects.requireNonNull(pressedMass, "pressedMass");
        PressingModel model = from(assumptions, scope);
        double wrv = Kinds.WATER_RETENTION.siAboveZero(retention, "water retention value");
        double p = model.pressed(pressure);
        double dry = sheet.ovenDry().si();
        double mass = pressedMass.value().si();
        if (!(mass > dry && mass < sheet.mass().si())) {
            throw Refused.of(
                    "press.calibration-mass",
                    "mass of the pressed sheet: " + pressedMass.value()
                            + " given; it must lie between the oven-dry mass "
                            + sheet.ovenDry() + " and the couched mass " + sheet.mass() + ".",
                    "given",
                    pressedMass.value().toString(),
                    "least",
                    sheet.ovenDry().toString(),
                    "most",
                    sheet.mass().toString());
        }
        double ratio = mass / dry - 1;
        double grammage = sheet.ovenDryGrammage().si();
        double constant = model.law.timeConstant(grammage, wrv);
        double equilibrium = model.law.equilibriumOf(
                sheet.ratio().si(), ratio, wrv, grammage, Kinds.TIME.siAboveZero(hold, "time at load"));
        if (!(equilibrium > 0)) {
            throw Refused.of(
                    "press.calibration-hold",
                    "time at load: " + hold
                            + " given; too short to tell where this sheet would have come to rest. Hold for at"
                            + " least " + Kinds.TIME.ofSi(5 * constant, "s") + ".",
                    "given",
                    hold.toString(),
                    "least",
                    Kinds.TIME.ofSi(5 * constant, "s").toString());
        }
        if (equilibrium < model.law.floor()) {
            throw Refused.of(
                    "press.calibration-floor",
                    "pressed sheet: " + Kinds.MOISTURE_RATIO.ofSi(equilibrium, "g/g")
                            + " water on dry; that is less than the"
                            + " fibre walls hold, " + Kinds.MOISTURE_RATIO.ofSi(model.law.floor(), "g/g")
                            + ", and says nothing about the press. Check the oven-dry mass.",
                    "given",
                    equilibrium,
                    "limit",
                    model.law.floor());
        }
        Assumption old = assumptions.get("press.factor", scope);
        double likely = model.law.factorOf(equilibrium, wrv, p);
        // What one weighing leaves: 0.02 of the solids, beside the error of the scale.
        double left = 0.02 * (1 + ratio) * (1 + ratio);
        double half = Math.hypot(1.645 * pressedMass.error().si() / dry, left) / ratio;
        return assumptions.with(old.with(
                scope,
                likely,
                likely / (1 + half),
                likely * (1 + half),
                Basis.MEASURED_HERE,
                new Source("one sheet weighed couched, pressed and dry at " + pressure)));
    }

    /** Returns the warning for a high pressure and refuses one above the limit. */
    static List<Notice> pressureNotices(Amount<SheetPressure> pressure, Assumptions assumptions) {
        Optional<Notice> above = aboveLimit(pressure, assumptions);
        if (above.isPresent()) {
            Notice why = above.get();
            throw new Refused(why.code(), why.text(), why.arguments());
        }
        return SheetNotices.pressure(pressure, assumptions::si).map(List::of).orElse(List.of());
    }

    /** Returns the warning for a high pressure, and that for one above the limit. */
    static List<Notice> pressureWarnings(Amount<SheetPressure> pressure, Assumptions assumptions) {
        return aboveLimit(pressure, assumptions)
                .or(() -> SheetNotices.pressure(pressure, assumptions::si))
                .map(List::of)
                .orElse(List.of());
    }

    private static Optional<Notice> aboveLimit(Amount<SheetPressure> pressure, Assumptions assumptions) {
        Amount<SheetPressure> limit =
                Kinds.SHEET_PRESSURE.ofSi(assumptions.si("press.pressure-limit", Scope.GENERAL), "MPa");
        return pressure.compareTo(limit) <= 0
                ? Optional.empty()
                : Optional.of(Notice.warning(
                        "press.pressure-limit",
                        "pressure on the sheet: " + pressure + " given; no hand press is known above " + limit
                                + ". Check the area that carries the force and which ton"
                                + " is meant.",
                        "given",
                        pressure.toString(),
                        "limit",
                        limit.toString()));
    }

    @Override
    public String toString() {
        return "pressing" + scope + ": a " + law.factor() + ", b " + law.exponent();
    }
}
