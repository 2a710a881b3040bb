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

    /** Volume flow (m3/s) of a dry air flow (kg/s) at a volume per kg of dry air (m3/kg). */
    public static double volumeFlow(double dryAirFlow, double specificVolume) {
        return dryAirFlow * specificVolume;
    }

    /** Relative humidity (fraction) of room air at a surface of another temperature (°C); 1 and above is dew. */
    public static double surfaceRelativeHumidity(double vapourPressure, double surfaceCelsius) {
        return vapourPressure / Psychrometrics.saturationPressure(surfaceCelsius);
    }
}
