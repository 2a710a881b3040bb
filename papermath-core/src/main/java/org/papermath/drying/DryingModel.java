package org.papermath.drying;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import javax.measure.Quantity;
import javax.measure.quantity.Area;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Time;
import org.papermath.air.Air;
import org.papermath.equation.BlotterDrying;
import org.papermath.equation.Drying;
import org.papermath.equation.HungDrying;
import org.papermath.equation.Psychrometrics;
import org.papermath.equation.Room;
import org.papermath.equation.StackDrying;
import org.papermath.evidence.Assumption;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Bands;
import org.papermath.evidence.Basis;
import org.papermath.evidence.Estimate;
import org.papermath.evidence.Notice;
import org.papermath.evidence.Reading;
import org.papermath.evidence.Scope;
import org.papermath.evidence.Source;
import org.papermath.fibre.SorptionModel;
import org.papermath.notice.SheetNotices;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Irradiance;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.MassFlow;
import org.papermath.quantity.MassFlux;
import org.papermath.quantity.MoistureRatio;
import org.papermath.quantity.Refused;
import org.papermath.quantity.Share;
import org.papermath.quantity.VolumeFlow;
import org.papermath.sheet.PressedSheet;

/**
 * How long sheets dry and how much water they give up, by dryer. Immutable.
 *
 * <p>Stack: {@code E = (1 - exp(-k A/V)) m_da (Ws(t*) - W_in)}, where k leads from the sheet through its blotter to the
 * air, A is both faces of all sheets and V the air that a fan blows through; the air cools to its wet bulb, the rate is
 * constant down to a critical moisture ratio and falls with the distance to equilibrium from there. So one sheet and a
 * full stack take about the same time, and a heavy sheet longer than a thin one. Without a fan a share of k is left. The
 * k shipped was fitted to the day that makers tell of for one load; that day is no check of it. Loft and boards: heat
 * gained by the wet face is spent on evaporation; {@code t = W (M0 - Xf) n tail/(faces j)}; in a loft sheets screen each
 * other from the heat of the room. Blotters: each change keeps
 * a share of the water the blotters can take, {@code X = Xe + (X0 - Xe) k^n}. Good from 10 to 35 °C and 20 to 80 %
 * relative humidity, within a factor of two; ±20 % after one timed and weighed drying.
 *
 * @source forms of drying engineering; constants as stated at {@code drying.stack-conductance} and its neighbours
 */
public final class DryingModel {
    private static final double ZERO_CELSIUS = 273.15;

    private final Assumptions assumptions;
    private final Scope scope;

    private DryingModel(Assumptions assumptions, Scope scope) {
        this.assumptions = assumptions;
        this.scope = scope;
    }

    /**
     * Returns the model by the shipped assumptions.
     *
     * @return the model
     */
    public static DryingModel standard() {
        return from(Assumptions.standard(), Scope.GENERAL);
    }

    /**
     * Makes the model of a dryer.
     *
     * @param assumptions the store
     * @param scope the dryer, for example {@code Scope.at(dryer.name())}
     * @return the model
     */
    public static DryingModel from(Assumptions assumptions, Scope scope) {
        Objects.requireNonNull(assumptions, "assumptions");
        Objects.requireNonNull(scope, "scope");
        return new DryingModel(assumptions, scope);
    }

    /**
     * What is to be dried at once.
     *
     * @param ovenDry the oven-dry mass of all sheets
     * @param faceArea the area of one face of all sheets
     * @param start the moisture ratio they come with
     * @param end the moisture ratio at which they are called dry
     * @param equilibrium the moisture ratio they would come to in this air
     */
    public record Batch(
            Amount<Mass> ovenDry,
            Amount<Area> faceArea,
            Amount<MoistureRatio> start,
            Amount<MoistureRatio> end,
            Amount<MoistureRatio> equilibrium) {
        /**
         * Checks the batch.
         *
         * @param ovenDry the oven-dry mass of all sheets, above zero
         * @param faceArea the area of one face of all sheets, above zero
         * @param start the moisture ratio they come with
         * @param end the moisture ratio at which they are called dry
         * @param equilibrium the moisture ratio they would come to in this air
         * @throws Refused if there is nothing to dry
         */
        public Batch {
            ovenDry = Kinds.MASS.checkAboveZero(ovenDry, "oven-dry mass to dry");
            faceArea = Kinds.AREA.checkAboveZero(faceArea, "area to dry");
            start = Kinds.MOISTURE_RATIO.check(start, "moisture ratio at the start");
            end = Kinds.MOISTURE_RATIO.check(end, "moisture ratio at the end");
            equilibrium = Kinds.MOISTURE_RATIO.check(equilibrium, "moisture ratio in this air");
        }

        /**
         * Makes a batch from its numbers.
         *
         * @param ovenDry the oven-dry mass of all sheets, above zero
         * @param faceArea the area of one face of all sheets, above zero
         * @param start the moisture ratio they come with
         * @param end the moisture ratio at which they are called dry
         * @param equilibrium the moisture ratio they would come to in this air
         * @return the batch
         * @throws Refused if a value is out of range
         */
        public static Batch of(
                Quantity<Mass> ovenDry,
                Quantity<Area> faceArea,
                Quantity<MoistureRatio> start,
                Quantity<MoistureRatio> end,
                Quantity<MoistureRatio> equilibrium) {
            return new Batch(
                    Kinds.MASS.check(ovenDry, "oven-dry mass to dry"),
                    Kinds.AREA.check(faceArea, "area to dry"),
                    Kinds.MOISTURE_RATIO.check(start, "moisture ratio at the start"),
                    Kinds.MOISTURE_RATIO.check(end, "moisture ratio at the end"),
                    Kinds.MOISTURE_RATIO.check(equilibrium, "moisture ratio in this air"));
        }

        /**
         * Makes a batch of like sheets that is called dry the shipped margin above the moisture of the room;
         * {@link DryingModel#batch} takes that of a model's own store.
         *
         * @param sheet one of them
         * @param sheets how many, 1 or more
         * @param sorption their moisture in air
         * @param air the air of the room
         * @return the batch
         * @throws Refused if the number is below one
         */
        public static Batch of(PressedSheet sheet, int sheets, SorptionModel sorption, Air air) {
            return of(Assumptions.standard(), Scope.GENERAL, sheet, sheets, sorption, air);
        }

        /**
         * Makes a batch of like sheets that is called dry a margin ({@code drying.end-margin}) above the moisture of
         * the room.
         *
         * @param assumptions where the margin is looked up
         * @param scope the dryer, for example {@code Scope.at(dryer.name())}
         * @param sheet one of them
         * @param sheets how many, 1 or more
         * @param sorption their moisture in air
         * @param air the air of the room
         * @return the batch
         * @throws Refused if the number is below one
         */
        public static Batch of(
                Assumptions assumptions, Scope scope, PressedSheet sheet, int sheets, SorptionModel sorption, Air air) {
            Objects.requireNonNull(assumptions, "assumptions");
            Objects.requireNonNull(scope, "scope");
            Objects.requireNonNull(sheet, "sheet");
            Objects.requireNonNull(sorption, "sorption");
            Objects.requireNonNull(air, "air");
            if (sheets < 1) {
                throw Refused.of(
                        "count.below-one",
                        "sheets to dry: " + sheets + " given; must be 1 or more.",
                        "given",
                        sheets,
                        "least",
                        1);
            }
            double equilibrium = sorption.ratio(air).si();
            double margin = assumptions.si("drying.end-margin", scope);
            return of(
                    Kinds.MASS.ofSi(sheets * sheet.ovenDry().si(), "kg"),
                    Kinds.AREA.ofSi(sheets * sheet.area().si(), "m2"),
                    sheet.ratio(),
                    Kinds.MOISTURE_RATIO.ofSi(equilibrium + margin, "g/g"),
                    sorption.ratio(air));
        }

        /**
         * Returns the water to take out.
         *
         * @return the mass
         */
        public Amount<Mass> water() {
            return Kinds.MASS.ofSi(ovenDry.si() * Math.max(0, start.si() - end.si()), "kg");
        }

        double grammage() {
            return ovenDry.si() / faceArea.si();
        }

        @Override
        public String toString() {
            return ovenDry + " from " + start + " to " + end;
        }
    }

    /** How long a batch dries, or that it never does. Immutable. */
    public static final class Result {
        private final double seconds;
        private final double evaporation;
        private final double water;
        private final List<Notice> notices;

        Result(double seconds, double evaporation, double water, List<Notice> notices) {
            this.seconds = seconds;
            this.evaporation = evaporation;
            this.water = water;
            this.notices = List.copyOf(notices);
        }

        /**
         * Returns whether it never gets dry; {@link #notices()} says why.
         *
         * @return whether there is no time
         */
        public boolean neverDries() {
            return Double.isInfinite(seconds);
        }

        /**
         * Returns the time.
         *
         * @return the time, empty if it never gets dry
         */
        public Optional<Amount<Time>> time() {
            return neverDries() ? Optional.empty() : Optional.of(Kinds.TIME.ofSi(seconds, "h"));
        }

        /**
         * Returns the time and insists on it.
         *
         * @return the time
         * @throws Refused if it never gets dry, with the reason
         */
        public Amount<Time> hours() {
            return time().orElseThrow(() -> {
                Notice why = notices.stream()
                        .filter(one -> one.code().startsWith("drying.never"))
                        .findFirst()
                        .orElseThrow();
                return new Refused(why.code(), why.text(), why.arguments());
            });
        }

        /**
         * Returns the water given up at first, while the sheets are wet.
         *
         * @return the mass in a time
         */
        public Amount<MassFlow> rate() {
            return Kinds.MASS_FLOW.ofSi(evaporation, "kg/h");
        }

        /**
         * Returns the water the batch gives to the room.
         *
         * @return the mass
         */
        public Amount<Mass> water() {
            return Kinds.MASS.ofSi(water, "kg");
        }

        /**
         * Returns what the result should not be read without.
         *
         * @return an unmodifiable list
         */
        public List<Notice> notices() {
            return notices;
        }

        @Override
        public String toString() {
            return neverDries()
                    ? "never dries"
                    : "dry in " + Kinds.TIME.ofSi(seconds, "h") + ", " + water() + " of water";
        }
    }

    /**
     * Makes a batch of like sheets that is called dry a margin ({@code drying.end-margin}, of this model's store) above
     * the moisture of the room.
     *
     * @param sheet one of them
     * @param sheets how many, 1 or more
     * @param sorption their moisture in air
     * @param air the air of the room
     * @return the batch
     * @throws Refused if the number is below one
     */
    public Batch batch(PressedSheet sheet, int sheets, SorptionModel sorption, Air air) {
        return Batch.of(assumptions, scope, sheet, sheets, sorption, air);
    }

    /**
     * Dries a batch in a dryer.
     *
     * @param dryer the dryer
     * @param batch what is dried at once
     * @param air the air of the room
     * @return how long it takes
     */
    public Result dry(Dryer dryer, Batch batch, Air air) {
        if (dryer instanceof Dryer.FanStack stack) {
            Assumption share = assumptions.get("drying.delivered-share", scope);
            Amount<VolumeFlow> delivered = Kinds.VOLUME_FLOW.ofSi(
                    share.likelySi() * stack.freeAirFlow().si(), "m3/h");
            Result result = stack(delivered, batch, air);
            if (!stack.hasFan()
                    || share.basis() == Basis.MEASURED_HERE
                    || assumptions.get("drying.stack-conductance", scope).basis() == Basis.MEASURED_HERE) {
                return result;
            }
            List<Notice> more = new ArrayList<>(result.notices());
            more.add(Notice.note(
                    "drying.fan-label",
                    "Of the " + stack.freeAirFlow() + " on the label of the fan " + delivered
                            + " are taken to come through the stack; a fan loses most of its flow against flutes.",
                    "label",
                    stack.freeAirFlow().toString(),
                    "delivered",
                    delivered.toString()));
            return new Result(result.seconds, result.evaporation, result.water, more);
        }
        if (dryer instanceof Dryer.Loft loft) {
            return loft(batch, air, loft.sheetsInSpur(), false);
        }
        if (dryer instanceof Dryer.Boards) {
            return boards(batch, air, Irradiance.wattsPerSquareMetre(0));
        }
        return blotters(batch);
    }

    /**
     * Dries a batch in a dryer in a room that is ventilated and keeps its temperature: the damper it makes the room, the
     * slower it dries. Sheets and ventilation stand in series, {@code 1/E = 1/E_free + 1/(m (Ws - W_in))}. Between blotters it is as
     * {@link #dry(Dryer, Batch, Air)}, since they dry elsewhere.
     *
     * @param dryer the dryer
     * @param batch what is dried at once
     * @param air the air of the room before anything dries in it, which is that of the air coming in too
     * @param ventilation the air that passes through the room
     * @return how long it takes
     */
    public Result dry(Dryer dryer, Batch batch, Air air, Ventilation ventilation) {
        Objects.requireNonNull(ventilation, "ventilation");
        Result open = dry(dryer, batch, air);
        if (open.neverDries() || dryer instanceof Dryer.Blotters) {
            return open;
        }
        StackDrying.Inlet in = inlet(air);
        double through = Room.dryAirMass(ventilation.flow().si(), in.volume());
        double saturated = Psychrometrics.saturatedHumidityRatio(
                air.temperature().si() - ZERO_CELSIUS, air.pressure().si());
        return new Result(
                open.seconds + Room.delay(batch.water().si(), through, saturated, in.ratio()),
                Room.evaporation(open.evaporation, through, saturated, in.ratio()),
                open.water,
                open.notices);
    }

    /**
     * Returns the share of the free shrinkage that a dryer holds back. Under a given weight a stack holds less below a
     * least pressure ({@code drying.stack-pressure}), as friction does.
     *
     * @param dryer the dryer
     * @param sheet the area of a sheet, above zero; of the sheets of a layer where several lie in one
     * @return the share
     * @throws Refused if the area is not above zero
     */
    public Amount<Share> restraint(Dryer dryer, Quantity<Area> sheet) {
        double area = Kinds.AREA.siAboveZero(sheet, "area of the sheet");
        double share = assumptions.si("restraint.share", Scope.of(dryer.name(), dryer.restraint()));
        Optional<Amount<Mass>> weight = dryer instanceof Dryer.FanStack stack ? stack.weight() : Optional.empty();
        return Kinds.SHARE.ofSi(
                weight.map(mass -> StackDrying.held(
                                share,
                                StackDrying.pressure(mass.si(), area),
                                assumptions.si("drying.stack-pressure", scope)))
                        .orElse(share),
                "%");
    }

    /**
     * Returns how long a batch dries with the band of it.
     *
     * @param dryer the dryer
     * @param batch what is dried at once
     * @param air the air of the room
     * @return the time
     * @throws Refused if it never gets dry, with the reason
     */
    public Estimate<Time> time(Dryer dryer, Batch batch, Air air) {
        List<String> ids = dryer instanceof Dryer.FanStack
                ? List.of(
                        "drying.stack-conductance",
                        "drying.stack-still",
                        "drying.delivered-share",
                        "drying.critical-ratio")
                : dryer instanceof Dryer.Blotters
                        ? List.of("drying.blotter-kept", "drying.blotter-capacity")
                        : dryer instanceof Dryer.Loft
                                ? List.of(
                                        "drying.film-still",
                                        "drying.radiative",
                                        "drying.loft-view",
                                        "drying.lewis",
                                        "drying.loft-tail")
                                : List.of("drying.film-still", "drying.radiative", "drying.lewis", "drying.loft-tail");
        return Bands.of(
                assumptions,
                scope,
                ids,
                store -> from(store, scope).dry(dryer, batch, air).hours());
    }

    /**
     * Dries a batch in a stack.
     *
     * @param delivered the air that comes through the flutes, 0 without a fan; a fan delivers a tenth to a third of its
     *     label there
     * @param batch what is dried at once
     * @param air the air that is drawn in
     * @return how long it takes
     * @throws Refused if the flow is out of range
     */
    public Result stack(Quantity<VolumeFlow> delivered, Batch batch, Air air) {
        double flow = Kinds.VOLUME_FLOW.si(delivered, "air delivered into the stack");
        double evaporation = evaporation(batch, flow, inlet(air));
        double time = stackLaw()
                .time(
                        batch.ovenDry().si(),
                        evaporation,
                        batch.start().si(),
                        batch.end().si(),
                        batch.equilibrium().si());
        List<Notice> notices = rangeNotices(air);
        if (assumptions.get("drying.stack-conductance", scope).basis() != Basis.MEASURED_HERE) {
            notices.add(Notice.note(
                    "drying.uncalibrated",
                    "How fast water comes through the blotters of a stack is known within a factor of two; weigh the"
                            + " stack, or one sheet, twice."));
        }
        return result(time, evaporation, batch, air, notices);
    }

    private double evaporation(Batch batch, double flow, StackDrying.Inlet air) {
        return stackLaw().evaporation(2 * batch.faceArea().si(), flow, air);
    }

    private static StackDrying.Inlet inlet(Air air) {
        return StackDrying.Inlet.of(
                air.temperature().si() - ZERO_CELSIUS,
                air.humidity().si(),
                air.pressure().si());
    }

    private StackDrying stackLaw() {
        return new StackDrying(
                assumptions.si("drying.stack-conductance", scope),
                assumptions.si("drying.stack-still", scope),
                assumptions.si("drying.critical-ratio", scope));
    }

    /**
     * Dries a batch in a fan stack in a closed or ventilated room that takes up the water: the room grows damper while
     * the stack dries, and may fill before the sheets are dry.
     *
     * @param room the room
     * @param delivered the air that comes through the flutes, 0 without a fan
     * @param batch what is dried at once
     * @param sorption the moisture of the sheets in air, which rises with the room
     * @return how long it takes; never, if the room fills
     * @throws Refused if the flow is out of range
     */
    public Result stackIn(DryingRoom room, Quantity<VolumeFlow> delivered, Batch batch, SorptionModel sorption) {
        double flow = Kinds.VOLUME_FLOW.si(delivered, "air delivered into the stack");
        Air start = room.air();
        double celsius = start.temperature().si() - ZERO_CELSIUS;
        double pressure = start.pressure().si();
        double margin = batch.end().si() - batch.equilibrium().si();
        if (margin <= 0 && batch.start().si() > batch.end().si()) {
            return result(
                    Double.POSITIVE_INFINITY,
                    evaporation(batch, flow, inlet(start)),
                    batch,
                    start,
                    rangeNotices(start));
        }
        double critical = assumptions.si("drying.critical-ratio", scope);
        double mass = batch.ovenDry().si();
        double humidityRatio = room.humidityRatio();
        double saturated = Psychrometrics.saturatedHumidityRatio(celsius, pressure);
        double x = batch.start().si();
        double seconds = 0;
        double step = 120;
        double first = -1;
        // Thirty days are longer than anybody waits; the steps are short against hours of drying.
        while (seconds < 30 * 86400.0) {
            double humidity = Math.min(1, Psychrometrics.relativeHumidity(celsius, humidityRatio, pressure));
            double equilibrium = sorption.ratio(
                            Air.of(start.temperature(), Kinds.RELATIVE_HUMIDITY.ofSi(Math.max(0.01, humidity), "%")))
                    .si();
            double rate = evaporation(batch, flow, StackDrying.Inlet.of(celsius, humidity, pressure));
            if (first < 0) {
                first = rate;
            }
            double drive = x > critical ? 1 : Math.max(0, (x - equilibrium) / (critical - equilibrium));
            double leaving = rate * drive;
            if (x <= equilibrium + margin) {
                return result(seconds, first, batch, start, rangeNotices(start));
            }
            x -= leaving * step / mass;
            humidityRatio = Math.min(saturated, room.ratioAfter(humidityRatio, leaving, step));
            seconds += step;
        }
        double humidity = Math.min(1, Psychrometrics.relativeHumidity(celsius, humidityRatio, pressure));
        List<Notice> notices = new ArrayList<>(rangeNotices(start));
        notices.add(Notice.warning(
                "drying.never-room-full",
                "It never dries: the room takes up no more water. It comes to "
                        + Kinds.RELATIVE_HUMIDITY.ofSi(humidity, "%") + " relative humidity with the sheets still at "
                        + Kinds.MOISTURE_RATIO.ofSi(Math.max(0, x), "g/g") + ". Ventilate, or dry less at a time.",
                "humidity",
                Kinds.RELATIVE_HUMIDITY.ofSi(humidity, "%").toString(),
                "left",
                Kinds.MOISTURE_RATIO.ofSi(Math.max(0, x), "g/g").toString()));
        return new Result(
                Double.POSITIVE_INFINITY,
                Math.max(0, first),
                mass * (batch.start().si() - x),
                notices);
    }

    /**
     * Dries a batch hung in a loft, among other sheets that screen it from the room ({@code drying.loft-view}; 1 for a
     * single line), and with as much air as in the open: where the air of the loft is not changed fast enough to carry
     * the water off, {@link DryingRoom} says how much longer it takes.
     *
     * @param batch what is dried at once
     * @param air the air of the loft
     * @param sheetsInSpur sheets that hang together, 1 for single ones
     * @param draught whether air moves through the loft
     * @return how long it takes
     * @throws Refused if the spur is below one
     */
    public Result loft(Batch batch, Air air, int sheetsInSpur, boolean draught) {
        if (sheetsInSpur < 1) {
            throw Refused.of(
                    "count.below-one",
                    "sheets in a spur: " + sheetsInSpur + " given; must be 1 or more.",
                    "given",
                    sheetsInSpur,
                    "least",
                    1);
        }
        HungDrying law = hungLaw(draught, assumptions.si("drying.loft-view", scope));
        double flux = flux(law, air, 0);
        return hung(
                law.time(
                        batch.grammage(),
                        batch.start().si(),
                        batch.end().si(),
                        batch.equilibrium().si(),
                        sheetsInSpur,
                        2,
                        flux),
                flux * 2 / sheetsInSpur,
                batch,
                air);
    }

    /**
     * Dries a batch on boards, one face open.
     *
     * @param batch what is dried at once
     * @param air the air
     * @param sun the irradiance of the sun on the boards, 0 in the shade to 1200 W/m²; the sheet is taken to use a
     *     share of it ({@code drying.sun-share})
     * @return how long it takes
     * @throws Refused if the irradiance is out of range
     */
    public Result boards(Batch batch, Air air, Quantity<Irradiance> sun) {
        double watts = Kinds.IRRADIANCE.siWithin(sun, "sun on the boards", 0, 1200);
        HungDrying law = hungLaw(false, 1);
        double flux = flux(law, air, Drying.boardSun(assumptions.si("drying.sun-share", scope), watts));
        return hung(
                law.time(
                        batch.grammage(),
                        batch.start().si(),
                        batch.end().si(),
                        batch.equilibrium().si(),
                        1,
                        1,
                        flux),
                flux,
                batch,
                air);
    }

    private Result hung(double time, double flux, Batch batch, Air air) {
        return result(time, Math.max(0, flux) * batch.faceArea().si(), batch, air, rangeNotices(air));
    }

    /**
     * Returns the water leaving one wet face that hangs alone in air.
     *
     * @param air the air
     * @param draught whether the air moves
     * @return the flux; zero in saturated air
     */
    public Amount<MassFlux> flux(Air air, boolean draught) {
        return Kinds.MASS_FLUX.ofSi(Math.max(0, flux(hungLaw(draught, 1), air, 0)), "g/(m2.h)");
    }

    private static double flux(HungDrying law, Air air, double sun) {
        return law.flux(air.temperature().si() - ZERO_CELSIUS, air.humidity().si(), sun);
    }

    /** The law of sheets that see the room with a share of their face. */
    private HungDrying hungLaw(boolean draught, double view) {
        return new HungDrying(
                assumptions.si(draught ? "drying.film-draught" : "drying.film-still", scope),
                assumptions.si("drying.radiative", scope) * view,
                assumptions.si("drying.lewis", scope),
                assumptions.si("drying.loft-tail", scope));
    }

    /**
     * Dries a batch between blotters changed by hand.
     *
     * @param batch what is dried at once
     * @return how long it takes: whole changes ({@link #blotterChanges}) at the usual distance
     *     ({@code drying.blotter-hours})
     */
    public Result blotters(Batch batch) {
        int changes = blotterChanges(batch);
        double time = blotterLaw().time(changes);
        double rate = time > 0 ? batch.water().si() / time : 0;
        return new Result(
                time,
                rate,
                batch.water().si(),
                List.of(Notice.note(
                        "drying.blotter-changes",
                        changes + " changes of blotters; wet blotters have to dry somewhere too.",
                        "changes",
                        changes)));
    }

    /**
     * Returns the changes of blotters that bring a batch down: {@code X = Xe + (X0 - Xe) k^n}. Blotters that lie in the
     * same air take the less the damper it is, so damper air never asks for fewer changes of wet sheets.
     *
     * @param batch what is dried at once
     * @return whole changes
     * @throws Refused if it is to come down to the moisture of the room or below, which blotters never do
     */
    public int blotterChanges(Batch batch) {
        double changes = blotterLaw()
                .changes(
                        batch.start().si(),
                        batch.end().si(),
                        batch.equilibrium().si());
        if (Double.isInfinite(changes)) {
            throw Refused.of(
                    "drying.never-blotters",
                    "blotters: they leave a share of the water at each change and never come to " + batch.end() + ".",
                    "given",
                    batch.end().toString());
        }
        return (int) changes;
    }

    private BlotterDrying blotterLaw() {
        return new BlotterDrying(
                assumptions.si("drying.blotter-kept", scope),
                assumptions.si("drying.blotter-hours", scope),
                assumptions.si("drying.blotter-capacity", scope));
    }

    /**
     * Returns the blotters that hold the water of a batch.
     *
     * @param water the water to take up
     * @param blotter the dry mass of one blotter, above zero
     * @return the number
     * @throws Refused if a value is out of range
     */
    public int blottersFor(Quantity<Mass> water, Quantity<Mass> blotter) {
        return (int) Drying.blotters(
                Kinds.MASS.si(water, "water to take up"),
                Kinds.MASS.siAboveZero(blotter, "dry mass of a blotter"),
                assumptions.si("drying.blotter-capacity", scope));
    }

    private Result result(double seconds, double evaporation, Batch batch, Air air, List<Notice> notices) {
        double water = batch.water().si();
        if (Double.isInfinite(seconds)) {
            boolean saturated = evaporation <= 0;
            notices.add(
                    saturated
                            ? SheetNotices.saturated(air.humidity())
                            : Notice.warning(
                                    "drying.never-equilibrium",
                                    "It never dries to " + batch.end() + ": in this air the paper itself stays at "
                                            + batch.equilibrium() + ". Dry the air, or call it dry at more.",
                                    "wanted",
                                    batch.end().toString(),
                                    "equilibrium",
                                    batch.equilibrium().toString()));
            water = saturated
                    ? 0
                    : batch.ovenDry().si()
                            * Math.max(
                                    0, batch.start().si() - batch.equilibrium().si());
        }
        return new Result(seconds, evaporation, water, notices);
    }

    private static List<Notice> rangeNotices(Air air) {
        List<Notice> notices = new ArrayList<>();
        double celsius = air.temperature().si() - ZERO_CELSIUS;
        double humidity = air.humidity().si();
        if (celsius < 10 || celsius > 35 || humidity < 0.2 || humidity > 0.8) {
            notices.add(Notice.note(
                    "drying.range",
                    "Drying is known from 10 to 35 °C and 20 to 80 % relative humidity; " + air + " is outside.",
                    "given",
                    air.toString()));
        }
        return notices;
    }

    /** What two weighings say. */
    public sealed interface Weighings permits FoundWeighings {
        /** {@return whether it is dry: less than half a per cent lost in an hour} */
        boolean dry();

        /** {@return the mass lost in an hour} */
        Amount<MassFlow> lost();

        /** {@return the time the rest needs at least, if the water left was given; the last part is slower} */
        Optional<Amount<Time>> leastTime();
    }

    private record FoundWeighings(boolean dry, Amount<MassFlow> lost, Optional<Amount<Time>> leastTime)
            implements Weighings {
        @Override
        public String toString() {
            return (dry ? "dry" : "not dry") + ", " + lost
                    + leastTime.map(time -> ", at least " + time + " more").orElse("");
        }
    }

    /**
     * Returns from two weighings whether a sheet or stack is dry.
     *
     * @param first the first mass, above zero
     * @param second the second mass, at most the first
     * @param between the time between, above zero
     * @return what they say
     * @throws Refused if a value is out of range
     */
    public static Weighings isDry(Quantity<Mass> first, Quantity<Mass> second, Quantity<Time> between) {
        return weighings(first, second, between, Double.NaN);
    }

    /**
     * Returns from two weighings whether a sheet or stack is dry, and how long the water left takes at least.
     *
     * @param first the first mass, above zero
     * @param second the second mass, at most the first
     * @param between the time between, above zero
     * @param waterLeft the water still to go
     * @return what they say
     * @throws Refused if a value is out of range
     */
    public static Weighings isDry(
            Quantity<Mass> first, Quantity<Mass> second, Quantity<Time> between, Quantity<Mass> waterLeft) {
        return weighings(first, second, between, Kinds.MASS.si(waterLeft, "water still to go"));
    }

    private static Weighings weighings(
            Quantity<Mass> first, Quantity<Mass> second, Quantity<Time> between, double left) {
        double before = Kinds.MASS.siAboveZero(first, "first weighing");
        double after = Kinds.MASS.siWithin(second, "second weighing", 0, before);
        double seconds = Kinds.TIME.siAboveZero(between, "time between the weighings");
        double rate = (before - after) / seconds;
        Optional<Amount<Time>> least =
                Double.isNaN(left) || rate <= 0 ? Optional.empty() : Optional.of(Kinds.TIME.ofSi(left / rate, "h"));
        return new FoundWeighings(rate * 3600 / before < 0.005, Kinds.MASS_FLOW.ofSi(rate, "g/h"), least);
    }

    /**
     * Returns when each load of a dryer is dry, the loads following one another.
     *
     * @param dryer the dryer, for how many sheets dry at once
     * @param sheets the sheets of all posts, 1 or more; the layers they fill where its layers take several
     * @param oneLoad the time of a full load
     * @return the end of each load from the start of the first
     * @throws Refused if the number is below one
     */
    public static List<Amount<Time>> schedule(Dryer dryer, int sheets, Quantity<Time> oneLoad) {
        Objects.requireNonNull(dryer, "dryer");
        if (sheets < 1) {
            throw Refused.of(
                    "count.below-one",
                    "sheets to dry: " + sheets + " given; must be 1 or more.",
                    "given",
                    sheets,
                    "least",
                    1);
        }
        double time = Kinds.TIME.si(oneLoad, "time of a load");
        List<Amount<Time>> ends = new ArrayList<>();
        for (int load = 1; load <= (sheets - 1) / dryer.capacity() + 1; load++) {
            ends.add(Kinds.TIME.ofSi(load * time, "h"));
        }
        return List.copyOf(ends);
    }

    /**
     * A post that comes out of the press.
     *
     * @param sheets its sheets, 1 or more; the layers they fill where a layer of the dryer takes several
     * @param at when it is ready to dry, from the start of the day
     */
    public record Ready(int sheets, Amount<Time> at) {
        /**
         * Checks the post.
         *
         * @param sheets its sheets, 1 or more
         * @param at when it is ready to dry
         * @throws Refused if it has no sheets, or what is given is no time
         */
        public Ready {
            if (sheets < 1) {
                throw Refused.of(
                        "count.below-one",
                        "sheets of the post: " + sheets + " given; must be 1 or more.",
                        "given",
                        sheets,
                        "least",
                        1);
            }
            at = Kinds.TIME.check(at, "time when the post is ready");
        }

        @Override
        public String toString() {
            return sheets + " sheets at " + at;
        }
    }

    /** One filling of a dryer. */
    public sealed interface Load permits FoundLoad {
        /** {@return the sheets in it} */
        int sheets();

        /** {@return when it is filled} */
        Amount<Time> start();

        /** {@return when it is dry} */
        Amount<Time> end();

        /** {@return sheets that are ready and find no room in it; keep them wet under a weight or a cloth} */
        int waiting();
    }

    private record FoundLoad(int sheets, Amount<Time> start, Amount<Time> end, int waiting) implements Load {
        @Override
        public String toString() {
            return sheets + " sheets from " + start + " to " + end + (waiting > 0 ? ", " + waiting + " wait" : "");
        }
    }

    /**
     * Plans the fillings of a dryer for several posts: as soon as it is free and a post is ready it takes the sheets
     * that are there, first come, first dried, up to its capacity.
     *
     * @param dryer the dryer, for how many sheets dry at once
     * @param posts the posts, in any order
     * @param oneLoad the time of a full load
     * @return the fillings in order, an unmodifiable list
     * @throws Refused if the time is out of range
     */
    public static List<Load> schedule(Dryer dryer, List<Ready> posts, Quantity<Time> oneLoad) {
        Objects.requireNonNull(dryer, "dryer");
        Objects.requireNonNull(posts, "posts");
        double time = Kinds.TIME.siAboveZero(oneLoad, "time of a load");
        List<Ready> coming = new ArrayList<>(posts);
        coming.sort(Comparator.comparingDouble(post -> post.at().si()));
        List<Load> loads = new ArrayList<>();
        double free = 0;
        int there = 0;
        int next = 0;
        while (there > 0 || next < coming.size()) {
            double start =
                    there > 0 ? free : Math.max(free, coming.get(next).at().si());
            while (next < coming.size() && coming.get(next).at().si() <= start) {
                there += coming.get(next++).sheets();
            }
            int taken = Math.min(there, dryer.capacity());
            there -= taken;
            free = start + time;
            loads.add(new FoundLoad(taken, Kinds.TIME.ofSi(start, "h"), Kinds.TIME.ofSi(free, "h"), there));
        }
        return List.copyOf(loads);
    }

    /**
     * Calibrates a stack by the water it lost in a time while the sheets were wet: the conductance k that gives off as
     * much.
     *
     * @param assumptions the store
     * @param dryer the stack; its name is the scope
     * @param lost the mass lost
     * @param over the time it took, above zero
     * @param sheets the area of one face of all its sheets, above zero
     * @param air the air drawn in
     * @return the store with {@code drying.stack-conductance} measured for the dryer
     * @throws Refused if the air is saturated, or more was lost than the air delivered could take up
     */
    public static Assumptions calibrate(
            Assumptions assumptions,
            Dryer.FanStack dryer,
            Reading<Mass> lost,
            Quantity<Time> over,
            Quantity<Area> sheets,
            Air air) {
        Objects.requireNonNull(assumptions, "assumptions");
        Objects.requireNonNull(dryer, "dryer");
        Objects.requireNonNull(lost, "lost");
        Objects.requireNonNull(air, "air");
        Scope scope = Scope.at(dryer.name());
        double flow = dryer.hasFan()
                ? assumptions.si("drying.delivered-share", scope)
                        * dryer.freeAirFlow().si()
                : 0;
        StackDrying.Inlet in = inlet(air);
        double rate =
                Kinds.MASS.siAboveZero(lost.value(), "mass lost") / Kinds.TIME.siAboveZero(over, "time of the drying");
        double faces = 2 * Kinds.AREA.siAboveZero(sheets, "area of the sheets");
        Assumption old = assumptions.get("drying.stack-conductance", scope);
        double still = assumptions.si("drying.stack-still", scope);
        // So weak a fan as does less than still air tells nothing of the most there can be.
        double most = dryer.hasFan() ? in.most(Math.max(flow, still * old.highSi() * faces)) : Double.POSITIVE_INFINITY;
        if (in.most(1) <= 0 || !(rate < most)) {
            String limit =
                    Kinds.MASS_FLOW.ofSi(in.most(1) <= 0 ? 0 : most, "kg/h").toString();
            throw Refused.of(
                    "drying.calibration",
                    "drying: " + lost.value() + " lost in " + over + "; the air delivered takes up at most " + limit
                            + ". The fan delivers more than thought, or the readings are off.",
                    "given",
                    Kinds.MASS_FLOW.ofSi(rate, "kg/h").toString(),
                    "limit",
                    limit);
        }
        double likely = StackDrying.conductanceOf(rate, still, faces, flow, in);
        // What one weighing leaves: 20 %.
        double half = Math.hypot(1.645 * lost.error().si() / lost.value().si(), 0.2);
        return assumptions.with(old.with(
                scope,
                likely,
                likely / (1 + half),
                likely * (1 + half),
                Basis.MEASURED_HERE,
                new Source("stack weighed twice in air of " + air)));
    }

    /**
     * Calibrates a loft, line or board by one timed drying: {@code tail = t/t(tail 1)}.
     *
     * @param assumptions the store
     * @param dryer the dryer; its name is the scope
     * @param batch what was dried
     * @param took the time it took
     * @param air the air
     * @return the store with {@code drying.loft-tail} measured for the dryer
     * @throws Refused if the dryer is neither loft nor boards, if it should never have dried, or dried faster than wet
     *     faces do
     */
    public static Assumptions calibrate(
            Assumptions assumptions, Dryer dryer, Batch batch, Reading<Time> took, Air air) {
        Objects.requireNonNull(assumptions, "assumptions");
        Objects.requireNonNull(dryer, "dryer");
        Objects.requireNonNull(batch, "batch");
        Objects.requireNonNull(took, "took");
        Objects.requireNonNull(air, "air");
        if (!(dryer instanceof Dryer.Loft || dryer instanceof Dryer.Boards)) {
            throw Refused.of(
                    "drying.calibration-dryer",
                    "calibration: " + dryer
                            + " given; a timed drying calibrates a loft or boards. Weigh a stack twice instead.",
                    "given",
                    dryer.name());
        }
        Scope scope = Scope.at(dryer.name());
        Assumption old = assumptions.get("drying.loft-tail", scope);
        double without = from(assumptions, scope).dry(dryer, batch, air).hours().si() / old.likelySi();
        double likely = Drying.tailOfTime(Kinds.TIME.siAboveZero(took.value(), "time of the drying"), without);
        if (likely < 1) {
            throw Refused.of(
                    "drying.calibration-fast",
                    "drying: dry in " + took.value() + "; even with wet faces to the end it takes "
                            + Kinds.TIME.ofSi(without, "h") + " in this air. Was there a draught, sun or drier air?",
                    "given",
                    took.value().toString(),
                    "limit",
                    Kinds.TIME.ofSi(without, "h").toString());
        }
        double half = Math.hypot(1.645 * took.error().si() / took.value().si(), 0.25);
        return assumptions.with(old.with(
                scope,
                likely,
                Math.max(1, likely / (1 + half)),
                likely * (1 + half),
                Basis.MEASURED_HERE,
                new Source("one timed drying in air of " + air)));
    }

    /**
     * Calibrates blotters by the moisture before and after some changes: {@code k = ((X - Xe)/(X0 - Xe))^(1/n)}, freed of
     * what the air of the room had the blotters hold.
     *
     * @param assumptions the store
     * @param dryer the blotters; their name is the scope
     * @param before the moisture ratio before
     * @param after the moisture ratio after, below that before and above that in the air of the room
     * @param equilibrium the moisture ratio the sheets would come to in the air of the room
     * @param changes the changes between, 1 or more
     * @return the store with {@code drying.blotter-kept} measured
     * @throws Refused if a value is out of range
     */
    public static Assumptions calibrate(
            Assumptions assumptions,
            Dryer.Blotters dryer,
            Quantity<MoistureRatio> before,
            Quantity<MoistureRatio> after,
            Quantity<MoistureRatio> equilibrium,
            int changes) {
        Objects.requireNonNull(assumptions, "assumptions");
        Objects.requireNonNull(dryer, "dryer");
        double first = Kinds.MOISTURE_RATIO.siAboveZero(before, "moisture ratio before");
        double last = Kinds.MOISTURE_RATIO.siAboveZero(after, "moisture ratio after");
        double room = Kinds.MOISTURE_RATIO.si(equilibrium, "moisture ratio in the air of the room");
        Scope scope = Scope.at(dryer.name());
        double capacity = assumptions.si("drying.blotter-capacity", scope);
        double likely = last < first && last > room && room < capacity && changes >= 1
                ? BlotterDrying.keptOf(first, last, room, capacity, changes)
                : Double.NaN;
        if (!(likely > 0)) {
            throw Refused.of(
                    "drying.calibration-blotters",
                    "blotters: from " + before + " to " + after + " in " + changes
                            + " changes given; it must come down in 1 change or more, slowly enough for blotters of"
                            + " this room, and stay above " + equilibrium + ", where the air of the room holds it.",
                    "before",
                    before.toString(),
                    "after",
                    after.toString(),
                    "changes",
                    changes);
        }
        Assumption old = assumptions.get("drying.blotter-kept", scope);
        return assumptions.with(old.with(
                scope,
                likely,
                likely * 0.85,
                Math.min(0.999, likely * 1.15),
                Basis.MEASURED_HERE,
                new Source(changes + " changes of blotters weighed")));
    }

    /**
     * Calibrates a fan stack by weighing its sheets twice while they are wet.
     *
     * @param assumptions the store
     * @param dryer the fan stack; its name is the scope
     * @param before the sheets as they came
     * @param after the same sheets, weighed again
     * @param ovenDry their oven-dry mass, above zero
     * @param over the time between, above zero
     * @param sheets the area of one face of all of them, above zero
     * @param air the air drawn in
     * @return the store with {@code drying.stack-conductance} measured for the dryer
     * @throws Refused if they were no longer wet, or as {@link #calibrate(Assumptions, Dryer.FanStack, Reading,
     *     Quantity, Quantity, Air)}
     */
    public static Assumptions calibrateByWeighings(
            Assumptions assumptions,
            Dryer.FanStack dryer,
            Reading<Mass> before,
            Reading<Mass> after,
            Quantity<Mass> ovenDry,
            Quantity<Time> over,
            Quantity<Area> sheets,
            Air air) {
        Objects.requireNonNull(assumptions, "assumptions");
        Objects.requireNonNull(dryer, "dryer");
        Objects.requireNonNull(after, "after");
        double end = after.value().si() / Kinds.MASS.siAboveZero(ovenDry, "oven-dry mass of the sheets") - 1;
        double critical = assumptions.si("drying.critical-ratio", Scope.at(dryer.name()));
        if (end < critical) {
            throw Refused.of(
                    "calibration.no-longer-wet",
                    "stack: weighed again at " + Kinds.MOISTURE_RATIO.ofSi(end, "g/g") + " water on dry; below "
                            + Kinds.MOISTURE_RATIO.ofSi(critical, "g/g")
                            + " sheets give up water ever more slowly, which says less about the air. Weigh"
                            + " sooner.",
                    "given",
                    end,
                    "limit",
                    critical);
        }
        Reading<Mass> lost = Reading.of(
                Kinds.MASS.ofSi(before.value().si() - after.value().si(), "g"),
                Kinds.MASS.ofSi(Math.hypot(before.error().si(), after.error().si()), "g"));
        return calibrate(assumptions, dryer, lost, over, sheets, air);
    }

    @Override
    public String toString() {
        return "drying" + scope;
    }
}
