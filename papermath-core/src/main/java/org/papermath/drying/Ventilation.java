package org.papermath.drying;

import javax.measure.Quantity;
import javax.measure.quantity.Volume;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Limits;
import org.papermath.quantity.Rate;
import org.papermath.quantity.Refused;
import org.papermath.quantity.VolumeFlow;

/**
 * How much air passes through the room the work dries in. The air that comes in is taken to hold as much water as that
 * of the room before anything dries there.
 *
 * @param volume the volume of the room
 * @param airChanges how often its air is exchanged in a time
 */
public record Ventilation(Amount<Volume> volume, Amount<Rate> airChanges) {
    /**
     * Checks the values.
     *
     * @param volume the volume of the room, 1 to 100 000 m³
     * @param airChanges how often its air is exchanged, 0.01 to 1000 times an hour
     * @throws Refused if a value is out of range
     */
    public Ventilation {
        volume = Limits.ROOM_VOLUME.check(volume, "volume of the room");
        airChanges = Limits.AIR_CHANGES.check(airChanges, "air changes of the room");
    }

    /**
     * Makes the ventilation of a room.
     *
     * @param volume the volume of the room, 1 to 100 000 m³
     * @param airChanges how often its air is exchanged, 0.01 to 1000 times an hour
     * @return the ventilation
     * @throws Refused if a value is out of range
     */
    public static Ventilation of(Quantity<Volume> volume, Quantity<Rate> airChanges) {
        return new Ventilation(
                Limits.ROOM_VOLUME.check(volume, "volume of the room"),
                Limits.AIR_CHANGES.check(airChanges, "air changes of the room"));
    }

    /**
     * Returns the air that passes through the room.
     *
     * @return the flow
     */
    public Amount<VolumeFlow> flow() {
        return Kinds.VOLUME_FLOW.ofSi(volume.si() * airChanges.si(), "m3/h");
    }

    @Override
    public String toString() {
        return volume + ", " + airChanges + " air changes";
    }
}
