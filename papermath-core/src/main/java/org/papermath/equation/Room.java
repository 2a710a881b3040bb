package org.papermath.equation;

/** Humidity of the room the work dries in; humidity ratios in kg water per kg dry air. */
public final class Room {
    private Room() {}

    /** Dry air (kg) in a room volume (m3) at a volume per kg of dry air (m3/kg). */
    public static double dryAirMass(double volume, double specificVolume) {
        return volume / specificVolume;
    }

    /** Water (kg) the air of a closed room takes up to a limit; negative when the room is beyond it. */
    public static double waterToLimit(double dryAirMass, double limitRatio, double presentRatio) {
        return dryAirMass * (limitRatio - presentRatio);
    }

    /**
     * Dry air (kg/s) that has to pass through a room to carry off an evaporation (kg/s) and hold it at a humidity
     * ratio; positive infinity when the air brought in is no drier than the room, zero when nothing evaporates.
     */
    public static double ventilation(double evaporation, double roomRatio, double outsideRatio) {
        if (evaporation <= 0) {
            return 0;
        }
        if (roomRatio <= outsideRatio) {
            return Double.POSITIVE_INFINITY;
        }
        return evaporation / (roomRatio - outsideRatio);
    }

    /**
     * Time (s) by which a drying takes longer because the room has to let its water out. In a room whose temperature is
     * held, evaporation falls about straight with the distance of its air to saturation; so sheets and ventilation
     * stand in series, {@code 1/E = 1/E_free + 1/(m (W_s - W_in))}, at each moment of a drying whatever its course,
     * which adds up to the water over the most the ventilation carries.
     *
     * @param water given off in all, kg
     * @param dryAirFlow m of the ventilation, kg/s; infinite for open air
     * @param saturatedRatio W_s at the temperature of the room
     * @param inRatio W_in of the air that comes in
     */
    public static double delay(double water, double dryAirFlow, double saturatedRatio, double inRatio) {
        return water <= 0 || Double.isInfinite(dryAirFlow) ? 0 : water / (dryAirFlow * (saturatedRatio - inRatio));
    }

    /**
     * What is given off (kg/s) into a room with such a ventilation by what would give off so much (kg/s) into open air.
     */
    public static double evaporation(double free, double dryAirFlow, double saturatedRatio, double inRatio) {
        return free <= 0 ? 0 : 1 / (1 / free + 1 / (dryAirFlow * (saturatedRatio - inRatio)));
    }

    /** Volume flow (m3/s) of a dry air flow (kg/s) at a volume per kg of dry air (m3/kg). */
    public static double volumeFlow(double dryAirFlow, double specificVolume) {
        return dryAirFlow * specificVolume;
    }

    /** Relative humidity (fraction) of room air at a surface of another temperature (°C); 1 and above is dew. */
    public static double surfaceRelativeHumidity(double vapourPressure, double surfaceCelsius) {
        return vapourPressure / Psychrometrics.saturationPressure(surfaceCelsius);
    }
}
