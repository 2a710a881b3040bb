package org.papermath.drying;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Temperature;
import javax.measure.quantity.Time;
import javax.measure.quantity.Volume;
import org.papermath.air.Air;
import org.papermath.equation.Psychrometrics;
import org.papermath.equation.Room;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Notice;
import org.papermath.notice.SheetNotices;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.MassFlow;
import org.papermath.quantity.Refused;
import org.papermath.quantity.RelativeHumidity;
import org.papermath.quantity.VolumeFlow;

/**
 * The room that bears the water of drying: its volume, its air, and the outside air that passes through. Immutable.
 *
 * <p>Temperature is held; walls take up nothing. What a hygrometer shows later is known to about ±8 % relative
 * humidity.
 */
public final class DryingRoom {
    private static final double ZERO_CELSIUS = 273.15;
    private static final double COLD_SURFACE = 0.80;

    private final double volume;
    private final Air air;
    private final Air outside;
    private final double flow;

    private DryingRoom(double volume, Air air, Air outside, double flow) {
        this.volume = volume;
        this.air = air;
        this.outside = outside;
        this.flow = flow;
    }

    /**
     * Makes a closed room.
     *
     * @param volume its volume, above zero
     * @param air its air at the start
     * @return the room
     * @throws Refused if the volume is not above zero
     */
    public static DryingRoom of(Quantity<Volume> volume, Air air) {
        Objects.requireNonNull(air, "air");
        return new DryingRoom(Kinds.VOLUME.siAboveZero(volume, "volume of the room"), air, air, 0);
    }

    /**
     * Returns the room with outside air passing through.
     *
     * @param airFlow the flow, measured at the air of the room
     * @param outsideAir the air outside, before it is warmed
     * @return the room
     * @throws Refused if the flow is out of range
     */
    public DryingRoom ventilated(Quantity<VolumeFlow> airFlow, Air outsideAir) {
        return new DryingRoom(volume, air, outsideAir, Kinds.VOLUME_FLOW.si(airFlow, "ventilation of the room"));
    }

    /**
     * Returns the air at the start.
     *
     * @return the air
     */
    public Air air() {
        return air;
    }

    double humidityRatio() {
        return ratio(air);
    }

    private static double ratio(Air air) {
        return Psychrometrics.humidityRatio(
                Psychrometrics.vapourPressure(
                        air.temperature().si() - ZERO_CELSIUS, air.humidity().si()),
                air.pressure().si());
    }

    private static double specificVolume(Air air) {
        return Psychrometrics.volume(
                air.temperature().si() - ZERO_CELSIUS,
                ratio(air),
                air.pressure().si());
    }

    /** Dry air in the room, kg. */
    double dryAirMass() {
        return Room.dryAirMass(volume, specificVolume(air));
    }

    /** Humidity ratio after some seconds in which water (kg/s) was given off evenly. */
    double ratioAfter(double start, double evaporation, double seconds) {
        double mass = dryAirMass();
        double through = flow / specificVolume(air);
        if (through <= 0) {
            return start + evaporation * seconds / mass;
        }
        double rest = ratio(outside) + evaporation / through;
        return rest + (start - rest) * Math.exp(-through * seconds / mass);
    }

    /**
     * Returns the dry air in the room.
     *
     * @return the mass
     */
    public Amount<Mass> dryAir() {
        return Kinds.MASS.ofSi(dryAirMass(), "kg");
    }

    /**
     * Returns the water the air of the closed room takes up until a relative humidity.
     *
     * @param limit the relative humidity
     * @return the water; zero when the room is there already
     * @throws Refused if the humidity is out of range
     */
    public Amount<Mass> waterTo(Quantity<RelativeHumidity> limit) {
        Air there = Air.of(air.temperature(), limit).at(air.pressure());
        return Kinds.MASS.ofSi(Math.max(0, Room.waterToLimit(dryAirMass(), ratio(there), ratio(air))), "kg");
    }

    /**
     * Returns the ventilation that holds the air of this room while water is given off:
     * {@code m_da = E/(W_room - W_outside)}, the volume at the air of the room.
     *
     * @param evaporation the water given off
     * @param outsideAir the air outside
     * @return the flow of outside air
     * @throws Refused if the outside air holds as much water as the room, so that no ventilation helps
     */
    public Amount<VolumeFlow> ventilationFor(Quantity<MassFlow> evaporation, Air outsideAir) {
        double needed =
                Room.ventilation(Kinds.MASS_FLOW.si(evaporation, "water given off"), ratio(air), ratio(outsideAir));
        if (Double.isInfinite(needed)) {
            throw Refused.of(
                    "room.outside-damper",
                    "ventilation: the outside air of " + outsideAir + " holds as much water as the room of " + air
                            + "; no ventilation dries it. Wait for drier weather or take the water out of the air.",
                    "outside",
                    outsideAir.toString(),
                    "room",
                    air.toString());
        }
        return Kinds.VOLUME_FLOW.ofSi(Room.volumeFlow(needed, specificVolume(air)), "m3/h");
    }

    /**
     * Returns the room after a time in which water was given off evenly, at held temperature; the ventilation carries
     * off its part: {@code m dW/dt = E - m_v (W - W_outside)}.
     *
     * @param evaporation the water given off
     * @param time how long
     * @return the air then, at most saturated
     * @throws Refused if a value is out of range
     */
    public Air after(Quantity<MassFlow> evaporation, Quantity<Time> time) {
        double given = Kinds.MASS_FLOW.si(evaporation, "water given off");
        double seconds = Kinds.TIME.si(time, "time");
        double end = ratioAfter(ratio(air), given, seconds);
        double humidity = Psychrometrics.relativeHumidity(
                air.temperature().si() - ZERO_CELSIUS, end, air.pressure().si());
        return Air.of(air.temperature(), Kinds.RELATIVE_HUMIDITY.ofSi(Math.max(0.01, Math.min(1, humidity)), "%"))
                .at(air.pressure());
    }

    /**
     * Returns the relative humidity of the room's air at a cold surface.
     *
     * @param surface the temperature of the surface
     * @return the relative humidity; 100 % where water condenses
     * @throws Refused if the temperature is outside −20 to 60 °C
     */
    public Amount<RelativeHumidity> atSurface(Quantity<Temperature> surface) {
        double celsius =
                Kinds.TEMPERATURE.siWithin(surface, "temperature of the surface", 253.15, 333.15) - ZERO_CELSIUS;
        double vapour = Psychrometrics.vapourPressure(
                air.temperature().si() - ZERO_CELSIUS, air.humidity().si());
        return Kinds.RELATIVE_HUMIDITY.ofSi(Math.min(1, Room.surfaceRelativeHumidity(vapour, celsius)), "%");
    }

    /**
     * Returns what a room of this air should not be kept without knowing: the levels of mould growth, as shipped.
     *
     * @return an unmodifiable list; empty below 60 % relative humidity
     */
    public List<Notice> mouldNotices() {
        return mouldNotices(Assumptions.standard());
    }

    /**
     * Returns what a room of this air should not be kept without knowing: the levels of mould growth.
     *
     * @param assumptions where {@code room.mould-note}, {@code room.mould-caution} and {@code room.mould-stop} are
     *     looked up
     * @return an unmodifiable list; empty below the first of them
     * @source guidance of the Canadian Conservation Institute and others: keep paper below 60 %, growth above 65 %,
     *     fast from 75 to 80 %
     */
    public List<Notice> mouldNotices(Assumptions assumptions) {
        return SheetNotices.mould(air.humidity(), assumptions::si).map(List::of).orElse(List.of());
    }

    /**
     * Returns what a cold surface in this room gives cause for.
     *
     * @param surface the temperature of the surface
     * @return an unmodifiable list; empty below 80 % at the surface
     * @throws Refused as {@link #atSurface}
     */
    public List<Notice> surfaceNotices(Quantity<Temperature> surface) {
        Amount<RelativeHumidity> there = atSurface(surface);
        List<Notice> notices = new ArrayList<>();
        if (there.si() >= 1) {
            notices.add(Notice.warning(
                    "room.condensation",
                    "Water condenses on a surface of " + surface + " in this room.",
                    "surface",
                    surface.toString()));
        } else if (there.si() >= COLD_SURFACE) {
            notices.add(Notice.warning(
                    "room.cold-surface",
                    "At a surface of " + surface + " the air is at " + there
                            + " relative humidity; 80 % there is enough for mould, however dry the room feels.",
                    "surface",
                    surface.toString(),
                    "given",
                    there.toString(),
                    "limit",
                    "80 %"));
        }
        return List.copyOf(notices);
    }

    @Override
    public String toString() {
        return "room of " + Kinds.VOLUME.ofSi(volume, "m3") + ", " + air;
    }
}
