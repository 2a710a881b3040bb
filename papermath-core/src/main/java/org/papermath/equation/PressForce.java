package org.papermath.equation;

/**
 * Force and pressure on the post: ram, screw, lever, dead weight.
 *
 * <p>Power-screw equations as in engineering textbooks (a square thread has a half thread angle of 0).
 */
public final class PressForce {
    /** Standard acceleration of free fall, m/s2 (exact by definition). */
    public static final double STANDARD_GRAVITY = 9.80665;

    private PressForce() {}

    /** Area (m2) of a ram from its diameter (m). */
    public static double ramArea(double diameter) {
        return Math.PI / 4 * diameter * diameter;
    }

    /** Force (N) of a ram: gauge pressure (Pa), ram diameter (m), less platen weight and return springs (N). */
    public static double ramForce(double gaugePressure, double diameter, double takenUp) {
        return gaugePressure * ramArea(diameter) - takenUp;
    }

    /** Gauge pressure (Pa) a ram needs for a force; inverse of {@link #ramForce}. */
    public static double ramGauge(double force, double diameter, double takenUp) {
        return (force + takenUp) / ramArea(diameter);
    }

    /** The loaded area (m2): the smaller of the wet sheets (or felt) and the platen. */
    public static double loadedArea(double sheetArea, double platenArea) {
        return Math.min(sheetArea, platenArea);
    }

    /** Pressure on the sheet (Pa) from force (N) and loaded area (m2). */
    public static double pressure(double force, double loadedArea) {
        return force / loadedArea;
    }

    /** Force (N) for a pressure on the sheet (Pa) over the loaded area (m2). */
    public static double force(double pressure, double loadedArea) {
        return pressure * loadedArea;
    }

    /** Force (N) of a dead weight (kg). */
    public static double weightForce(double mass) {
        return mass * STANDARD_GRAVITY;
    }

    /** Torque (N m) on a lever from the number of people, the force of each (N) and the lever (m). */
    public static double leverTorque(double people, double handForce, double length) {
        return people * handForce * length;
    }

    /** Force (N) each of so many people pulls with on a lever (m) for a torque (N m). */
    public static double leverPull(double torque, double people, double length) {
        return torque / (people * length);
    }

    /**
     * Torque (N m) that presses with a screw: {@code F dm/2 (l + pi f dm sec a)/(pi dm - f l sec a) + F fc dc/2}.
     *
     * @param force axial force, N
     * @param lead advance per turn, m
     * @param meanDiameter mean thread diameter, m
     * @param threadFriction coefficient of friction in the thread
     * @param halfThreadAngle half thread angle, rad
     * @param collarFriction coefficient of friction under the collar
     * @param collarDiameter mean collar diameter, m
     * @return positive infinity when the thread jams, that is when friction lets no torque advance it
     */
    public static double screwRaisingTorque(
            double force,
            double lead,
            double meanDiameter,
            double threadFriction,
            double halfThreadAngle,
            double collarFriction,
            double collarDiameter) {
        return force * raisingArm(lead, meanDiameter, threadFriction, halfThreadAngle, collarFriction, collarDiameter);
    }

    /**
     * Torque (N m) that lets a loaded screw go: {@code F dm/2 (pi f dm sec a - l)/(pi dm + f l sec a) + F fc dc/2};
     * negative when the screw runs back by itself. Arguments as for {@link #screwRaisingTorque}.
     */
    public static double screwLoweringTorque(
            double force,
            double lead,
            double meanDiameter,
            double threadFriction,
            double halfThreadAngle,
            double collarFriction,
            double collarDiameter) {
        double f = threadFriction / Math.cos(halfThreadAngle);
        double thread = meanDiameter / 2 * (Math.PI * f * meanDiameter - lead) / (Math.PI * meanDiameter + f * lead);
        return force * (thread + collarFriction * collarDiameter / 2);
    }

    /** Axial force (N) of a screw from the torque (N m) on it; zero when the thread jams. */
    public static double screwForce(
            double torque,
            double lead,
            double meanDiameter,
            double threadFriction,
            double halfThreadAngle,
            double collarFriction,
            double collarDiameter) {
        return torque / raisingArm(lead, meanDiameter, threadFriction, halfThreadAngle, collarFriction, collarDiameter);
    }

    /** Share of the work on a screw that presses: {@code F l/(2 pi T)}. */
    public static double screwEfficiency(double force, double lead, double raisingTorque) {
        return force * lead / (2 * Math.PI * raisingTorque);
    }

    /** Whether thread friction alone holds a loaded screw: {@code f sec a > l/(pi dm)}. */
    public static boolean isSelfLocking(
            double lead, double meanDiameter, double threadFriction, double halfThreadAngle) {
        return threadFriction / Math.cos(halfThreadAngle) > lead / (Math.PI * meanDiameter);
    }

    /** The force to stay below (N): a share of the weakest rated part. */
    public static double allowedForce(double share, double... ratings) {
        double weakest = Double.POSITIVE_INFINITY;
        for (double rating : ratings) {
            weakest = Math.min(weakest, rating);
        }
        return share * weakest;
    }

    private static double raisingArm(
            double lead,
            double meanDiameter,
            double threadFriction,
            double halfThreadAngle,
            double collarFriction,
            double collarDiameter) {
        double f = threadFriction / Math.cos(halfThreadAngle);
        double left = Math.PI * meanDiameter - f * lead;
        if (left <= 0) {
            return Double.POSITIVE_INFINITY;
        }
        return meanDiameter / 2 * (lead + Math.PI * f * meanDiameter) / left + collarFriction * collarDiameter / 2;
    }
}
