package org.papermath.equation;

import org.papermath.numeric.Roots;

/** Rate and time of drying in a fan stack, on a line, on a board and between blotters. */
public final class Drying {
    /** Density (kg/m3) and specific heat (J/(kg K)) of room air in the analogy of heat and mass transfer. */
    private static final double AIR_DENSITY = 1.2;

    private static final double AIR_SPECIFIC_HEAT = 1006;
    /** Specific gas constant of water vapour, J/(kg K). */
    private static final double VAPOUR_GAS_CONSTANT = 461.5;

    private static final double ZERO_CELSIUS = 273.15;
    private static final double COLDEST = -100;

    private Drying() {}

    /** Dry air (kg/s) in a flow of moist air (m3/s) of a volume per kg dry air (m3/kg). */
    public static double dryAirFlow(double volumeFlow, double specificVolume) {
        return volumeFlow / specificVolume;
    }

    /**
     * Water evaporated (kg/s) in a fan stack: {@code eps m_da (W_s(t*) - W_in)}; zero when the incoming air is not
     * below saturation at its wet bulb.
     */
    public static double stackEvaporation(
            double efficiency, double dryAirFlow, double saturatedAtWetBulb, double humidityRatioIn) {
        return efficiency * dryAirFlow * Math.max(0, saturatedAtWetBulb - humidityRatioIn);
    }

    /**
     * The share of the drying power of a flow of air that a stack uses: {@code 1 - exp(-NTU)}, where
     * {@code NTU = k A/V}.
     *
     * @param conductance k from sheet to air, m/s
     * @param faces A, both faces of all sheets, m2
     * @param flow V of air, m3/s
     */
    public static double stackEfficiency(double conductance, double faces, double flow) {
        return -Math.expm1(-conductance * faces / flow);
    }

    /** The conductance (m/s) behind an efficiency; infinite where all of the drying power is used, or more. */
    public static double stackConductance(double efficiency, double faces, double flow) {
        return efficiency < 1 ? -Math.log1p(-efficiency) * flow / faces : Double.POSITIVE_INFINITY;
    }

    /**
     * Time (s) of drying in two periods, constant rate down to a critical moisture ratio, then falling straight with
     * the distance to equilibrium: {@code (m/E)((X0 - Xc) + (Xc - Xe) ln((Xc - Xe)/(Xf - Xe)))}.
     *
     * @param ovenDry oven-dry mass, kg
     * @param evaporation rate E of the first period, kg/s
     * @param start moisture ratio X0
     * @param critical moisture ratio Xc
     * @param equilibrium moisture ratio Xe with the air
     * @param end wanted moisture ratio Xf
     * @return zero when already at the end; positive infinity when the end is never reached, because nothing
     *     evaporates or the end is not above equilibrium
     */
    public static double twoPeriodTime(
            double ovenDry, double evaporation, double start, double critical, double equilibrium, double end) {
        if (start <= end) {
            return 0;
        }
        if (evaporation <= 0 || end <= equilibrium) {
            return Double.POSITIVE_INFINITY;
        }
        double constant = Math.max(0, start - Math.max(critical, end));
        double falling = 0;
        if (end < critical) {
            double from = Math.min(start, critical);
            falling = (critical - equilibrium) * Math.log((from - equilibrium) / (end - equilibrium));
        }
        return ovenDry / evaporation * (constant + falling);
    }

    /** Heat (J/kg) to evaporate water at a temperature (°C). */
    public static double heatOfEvaporation(double celsius) {
        return (2501 - 2.361 * celsius) * 1e3;
    }

    /** Vapour density (kg/m3) of a vapour pressure (Pa) at a temperature (°C). */
    public static double vapourDensity(double vapourPressure, double celsius) {
        return vapourPressure / (VAPOUR_GAS_CONSTANT * (celsius + ZERO_CELSIUS));
    }

    /** Mass transfer coefficient (m/s) from that of heat (W/(m2 K)) and the Lewis number. */
    public static double massTransfer(double heatTransfer, double lewis) {
        return heatTransfer / (AIR_DENSITY * AIR_SPECIFIC_HEAT) * Math.pow(lewis, -2.0 / 3);
    }

    /**
     * Temperature (°C) of a wet surface at which heat gained from air, surroundings and sun is spent on evaporation:
     * {@code (h_c + h_r)(T_a - T_s) + q = h_m (rho_s - rho_a) h_fg}.
     *
     * @param celsius air temperature, °C
     * @param relativeHumidity of the air, fraction from 0 to 1
     * @param convection h_c, W/(m2 K)
     * @param radiation h_r, W/(m2 K)
     * @param lewis Lewis number
     * @param sun heat absorbed from the sun, W/m2
     */
    public static double surfaceTemperature(
            double celsius, double relativeHumidity, double convection, double radiation, double lewis, double sun) {
        double transfer = massTransfer(convection, lewis);
        double air = vapourDensity(Psychrometrics.vapourPressure(celsius, relativeHumidity), celsius);
        double heat = convection + radiation;
        return Roots.between(
                COLDEST,
                celsius + sun / heat,
                surface -> heat * (celsius - surface)
                        + sun
                        - transfer * (saturatedVapourDensity(surface) - air) * heatOfEvaporation(surface));
    }

    /** Water (kg/(m2 s)) leaving one wet face at {@link #surfaceTemperature}; arguments as there. */
    public static double surfaceFlux(
            double celsius, double relativeHumidity, double convection, double radiation, double lewis, double sun) {
        double surface = surfaceTemperature(celsius, relativeHumidity, convection, radiation, lewis, sun);
        double air = vapourDensity(Psychrometrics.vapourPressure(celsius, relativeHumidity), celsius);
        return massTransfer(convection, lewis) * (saturatedVapourDensity(surface) - air);
    }

    /** Heat (W/m2) a sheet on a board takes from the sun: the share that gets into it of the irradiance (W/m2). */
    public static double boardSun(double share, double irradiance) {
        return share * irradiance;
    }

    /**
     * Time (s) to dry on a line, in a loft or on a board: {@code W (M0 - Xf) n tail/(faces j)}.
     *
     * @param grammage oven-dry, kg/m2
     * @param start moisture ratio
     * @param end moisture ratio
     * @param sheets sheets in a spur, 1 when single
     * @param faces open faces of a spur: 2 hung, 1 on a board
     * @param flux kg/(m2 s) a face, {@link #surfaceFlux}
     * @param tail factor for the falling rate at the end
     * @return zero when already dry enough; positive infinity when nothing evaporates
     */
    public static double hungTime(
            double grammage, double start, double end, double sheets, double faces, double flux, double tail) {
        if (start <= end) {
            return 0;
        }
        if (flux <= 0) {
            return Double.POSITIVE_INFINITY;
        }
        return grammage * (start - end) * sheets * tail / (faces * flux);
    }

    /** The tail factor behind one timed drying, from the time by {@link #hungTime} with a tail of 1. */
    public static double tailOfTime(double time, double timeWithoutTail) {
        return time / timeWithoutTail;
    }

    /**
     * Blotter changes to come down to a moisture ratio, not rounded; zero when already there, positive infinity when
     * the blotters take nothing or the end is 0.
     */
    public static double blotterChanges(double start, double end, double shareTaken) {
        if (start <= end) {
            return 0;
        }
        if (shareTaken <= 0 || end <= 0) {
            return Double.POSITIVE_INFINITY;
        }
        if (shareTaken >= 1) {
            return 1;
        }
        return Math.log(end / start) / Math.log1p(-shareTaken);
    }

    /** Share of the water taken by each change, from the moisture ratio after some changes. */
    public static double blotterShare(double start, double after, double changes) {
        return 1 - Math.pow(after / start, 1 / changes);
    }

    /** Blotters (whole, as a double) that hold a mass of water (kg): dry mass of one (kg), water per dry mass. */
    public static double blotters(double water, double blotterMass, double capacity) {
        return Math.ceil(water / (blotterMass * capacity));
    }

    private static double saturatedVapourDensity(double celsius) {
        return vapourDensity(Psychrometrics.saturationPressure(celsius), celsius);
    }
}
