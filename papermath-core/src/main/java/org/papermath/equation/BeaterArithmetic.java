package org.papermath.equation;

/**
 * Charge, speed and work of a beater.
 *
 * <p>Consistency is oven-dry mass over stock mass; fibre per volume is oven-dry mass over stock volume (kg/m³).
 * Power in W, masses oven-dry in kg, roll speed in revolutions a second.
 */
public final class BeaterArithmetic {
    private BeaterArithmetic() {}

    /** Consistency of oven-dry fibre stirred into water: c = f / (f + water). */
    public static double consistency(double ovenDry, double water) {
        return ovenDry / (ovenDry + water);
    }

    /** Water, all of it, that goes with oven-dry fibre at a consistency. */
    public static double waterForOvenDry(double consistency, double ovenDry) {
        return ovenDry * (1 - consistency) / consistency;
    }

    /** Stock volume that holds an oven-dry mass at a fibre per volume. */
    public static double stockVolume(double ovenDry, double fibrePerVolume) {
        return ovenDry / fibrePerVolume;
    }

    /** Oven-dry mass in a stock volume at a fibre per volume. */
    public static double ovenDryInVolume(double fibrePerVolume, double stockVolume) {
        return fibrePerVolume * stockVolume;
    }

    /** Length of bar edge crossed in a second, m/s: roll bars × bed bars × bar length × revolutions a second. */
    public static double edgeLengthPerSecond(double rollBars, double bedBars, double barLength, double speed) {
        return rollBars * bedBars * barLength * speed;
    }

    /** Bar crossings a second. */
    public static double crossingsPerSecond(double rollBars, double bedBars, double speed) {
        return rollBars * bedBars * speed;
    }

    /** Speed of the bar tips, m/s, from the diameter over the bars. */
    public static double tipSpeed(double diameterOverBars, double speed) {
        return Math.PI * diameterOverBars * speed;
    }

    /** Power that reaches the stock: loaded less idle. */
    public static double netPower(double power, double idlePower) {
        return power - idlePower;
    }

    /** Specific energy of beating, J/kg oven-dry. */
    public static double specificEnergy(double netPower, double time, double ovenDry) {
        return netPower * time / ovenDry;
    }

    /** Edge load, J/m: energy on each metre of bar edge crossed. */
    public static double edgeLoad(double netPower, double edgeLengthPerSecond) {
        return netPower / edgeLengthPerSecond;
    }

    /** Beating time carried over to another load or beater at the same feel of the bars (equal edge per mass). */
    public static double timeAtSameEdgePerMass(
            double time, double ovenDry, double edgeLengthPerSecond, double ovenDry2, double edgeLengthPerSecond2) {
        return time * (ovenDry2 / ovenDry) * (edgeLengthPerSecond / edgeLengthPerSecond2);
    }

    /** Beating time carried over to another load or beater at the same specific energy. */
    public static double timeAtSameSpecificEnergy(
            double time, double ovenDry, double netPower, double ovenDry2, double netPower2) {
        return time * (ovenDry2 / ovenDry) * (netPower / netPower2);
    }
}
