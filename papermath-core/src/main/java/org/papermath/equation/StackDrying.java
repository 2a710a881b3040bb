package org.papermath.equation;

/**
 * Drying in a stack of sheets, blotters and fluted boards, with a fan that blows through or without one. Water goes
 * through sheet and blotter before it comes to the air, so each face gives off so much however many there are; only a
 * great load fills the air that is blown in.
 *
 * @param conductance from the wet sheet through the blotter to moving air, m/s
 * @param still share of that conductance that is left where no fan blows
 * @param critical moisture ratio at which the rate begins to fall
 */
public record StackDrying(double conductance, double still, double critical) {
    /**
     * The air that is drawn in.
     *
     * @param volume of a kilogram of dry air in it, m3/kg
     * @param saturated humidity ratio at its wet bulb
     * @param ratio its humidity ratio
     */
    public record Inlet(double volume, double saturated, double ratio) {
        /** The air of a temperature (°C), humidity and pressure (Pa). */
        public static Inlet of(double celsius, double humidity, double pressure) {
            double ratio = Psychrometrics.humidityRatio(Psychrometrics.vapourPressure(celsius, humidity), pressure);
            return new Inlet(
                    Psychrometrics.volume(celsius, ratio, pressure),
                    Psychrometrics.saturatedHumidityRatio(Psychrometrics.wetBulb(celsius, ratio, pressure), pressure),
                    ratio);
        }

        /** The greatest evaporation (kg/s) into a flow of such air (m3/s): all of it leaves saturated. */
        public double most(double flow) {
            return Drying.stackEvaporation(1, Drying.dryAirFlow(flow, volume), saturated, ratio);
        }
    }

    /**
     * Water (kg/s) that wet sheets give up; never less than without a fan.
     *
     * @param faces both faces of all sheets, m2
     * @param flow air blown through, m3/s; 0 without a fan
     * @param air the air drawn in
     */
    public double evaporation(double faces, double flow, Inlet air) {
        double carried = flow > 0 ? flow * Drying.stackEfficiency(conductance, faces, flow) : 0;
        return air.most(Math.max(carried, still * conductance * faces));
    }

    /**
     * The conductance behind a weighed evaporation (kg/s); infinite where it is more than the air can take up, not a
     * number where the air takes up none.
     */
    public static double conductanceOf(double evaporation, double still, double faces, double flow, Inlet air) {
        // The flow that would leave saturated with just so much water.
        double saturated = evaporation / air.most(1);
        double without = saturated / (still * faces);
        return flow > 0 ? Math.min(without, Drying.stackConductance(saturated / flow, faces, flow)) : without;
    }

    /** Time (s) to dry an oven-dry mass (kg) from one moisture ratio to another. */
    public double time(double ovenDry, double evaporation, double start, double end, double equilibrium) {
        return Drying.twoPeriodTime(ovenDry, evaporation, start, critical, equilibrium, end);
    }

    /**
     * The share of the free shrinkage a stack holds back under a weight. Sheets are held by friction, which falls with
     * the pressure below a least one.
     *
     * @param share held back at the least pressure and above
     * @param pressure on the sheet, Pa
     * @param least pressure, Pa
     */
    public static double held(double share, double pressure, double least) {
        return share * Math.min(1, pressure / least);
    }

    /** Pressure (Pa) of a mass (kg) on an area (m2). */
    public static double pressure(double mass, double area) {
        return mass * PressForce.STANDARD_GRAVITY / area;
    }
}
