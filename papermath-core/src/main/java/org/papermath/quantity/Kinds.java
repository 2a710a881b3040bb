package org.papermath.quantity;

import static org.papermath.quantity.Units.known;
import static org.papermath.quantity.Units.symbols;

import java.util.ArrayList;
import java.util.List;
import javax.measure.Quantity;
import javax.measure.Unit;
import javax.measure.quantity.Area;
import javax.measure.quantity.Dimensionless;
import javax.measure.quantity.Energy;
import javax.measure.quantity.Force;
import javax.measure.quantity.Length;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Power;
import javax.measure.quantity.Pressure;
import javax.measure.quantity.Speed;
import javax.measure.quantity.Temperature;
import javax.measure.quantity.Time;
import javax.measure.quantity.Volume;

/** The kinds of quantity the library knows. */
public final class Kinds {
    private static final List<Kind<?>> ALL = new ArrayList<>();

    /** The kind of length. Canonical unit of calculation: {@code m}. */
    public static final Kind<Length> LENGTH = kind(
            "length",
            Length.class,
            "m",
            0,
            false,
            1e4,
            "mm",
            "cm",
            "m",
            "um",
            "km",
            "in",
            "ft",
            "yd",
            "mil",
            "pt_paper",
            "pt_type",
            "shaku");

    /** The kind of area. Canonical unit of calculation: {@code m2}. */
    public static final Kind<Area> AREA =
            kind("area", Area.class, "m2", 0, false, 1e8, "m2", "cm2", "mm2", "in2", "ft2");

    /** The kind of volume. Canonical unit of calculation: {@code m3}. */
    public static final Kind<Volume> VOLUME = kind(
            "volume",
            Volume.class,
            "m3",
            0,
            false,
            1e6,
            "L",
            "mL",
            "m3",
            "cm3",
            "gal_us",
            "qt_us",
            "pt_us",
            "cup_us",
            "floz_us",
            "tbsp_us",
            "tsp_us",
            "gal_uk",
            "qt_uk",
            "pt_uk",
            "floz_uk");

    /** The kind of mass. Canonical unit of calculation: {@code kg}. */
    public static final Kind<Mass> MASS = kind(
            "mass", Mass.class, "kg", 0, false, 1e7, "g", "kg", "mg", "t", "lb", "oz", "momme", "cwt_us", "cwt_uk");

    /** The kind of time. Canonical unit of calculation: {@code s}. */
    public static final Kind<Time> TIME = kind("time", Time.class, "s", 0, false, 1e10, "h", "min", "s", "d");

    /** The kind of temperature. Canonical unit of calculation: {@code K}. */
    public static final Kind<Temperature> TEMPERATURE =
            kind("temperature", Temperature.class, "K", 0, false, 2000, "Cel", "K", "degF");

    /** The kind of pressure. Canonical unit of calculation: {@code Pa}. */
    public static final Kind<Pressure> AIR_PRESSURE =
            kind("pressure", Pressure.class, "Pa", 0, false, 1e9, "kPa", "Pa", "hPa", "bar", "MPa", "psi", "inHg");

    /** The kind of pressure on the sheet. Canonical unit of calculation: {@code Pa}. */
    public static final Kind<SheetPressure> SHEET_PRESSURE =
            kind("pressure on the sheet", SheetPressure.class, "Pa", 0, false, 1e8, "kPa", "MPa", "Pa", "bar", "psi");

    /** The kind of gauge pressure. Canonical unit of calculation: {@code Pa}. */
    public static final Kind<GaugePressure> GAUGE_PRESSURE =
            kind("gauge pressure", GaugePressure.class, "Pa", 0, false, 1e9, "kPa", "MPa", "Pa", "bar", "psi", "inHg");

    /** The kind of force. Canonical unit of calculation: {@code N}. */
    public static final Kind<Force> FORCE =
            kind("force", Force.class, "N", 0, false, 1e8, "kN", "N", "kgf", "lbf", "tonf_us", "tonf_uk", "tf");

    /** The kind of torque. Canonical unit of calculation: {@code N.m}. */
    public static final Kind<Torque> TORQUE = kind("torque", Torque.class, "N.m", 0, false, 1e8, "N.m", "lbf.in");

    /** The kind of power. Canonical unit of calculation: {@code W}. */
    public static final Kind<Power> POWER = kind("power", Power.class, "W", 0, false, 1e7, "W", "kW", "hp");

    /** The kind of energy, such as what a meter counts. Canonical unit of calculation: {@code J}. */
    public static final Kind<Energy> ENERGY = kind("energy", Energy.class, "J", 0, false, 1e15, "kW.h", "MJ", "J");

    /** The kind of speed. Canonical unit of calculation: {@code m/s}. */
    public static final Kind<Speed> SPEED = kind("speed", Speed.class, "m/s", 0, false, 1e4, "m/s", "ft/min");

    /** The kind of rate. Canonical unit of calculation: {@code 1/s}. */
    public static final Kind<Rate> RATE = kind("rate", Rate.class, "1/s", 0, false, 1e6, "1/h", "1/min", "1/s");

    /** The kind of volume flow. Canonical unit of calculation: {@code m3/s}. */
    public static final Kind<VolumeFlow> VOLUME_FLOW =
            kind("volume flow", VolumeFlow.class, "m3/s", 0, false, 1e5, "m3/h", "L/min", "ft3/min", "m3/s");

    /** The kind of mass flow. Canonical unit of calculation: {@code kg/s}. */
    public static final Kind<MassFlow> MASS_FLOW =
            kind("mass flow", MassFlow.class, "kg/s", 0, false, 1e5, "kg/h", "g/h", "kg/s");

    /** The kind of mass flux. Canonical unit of calculation: {@code kg/(m2.s)}. */
    public static final Kind<MassFlux> MASS_FLUX =
            kind("mass flux", MassFlux.class, "kg/(m2.s)", 0, false, 1e3, "g/(m2.h)", "kg/(m2.s)");

    /** The kind of irradiance. Canonical unit of calculation: {@code W/m2}. */
    public static final Kind<Irradiance> IRRADIANCE =
            kind("irradiance", Irradiance.class, "W/m2", 0, false, 2000, "W/m2");

    /** The kind of grammage. Canonical unit of calculation: {@code kg/m2}. */
    public static final Kind<Grammage> GRAMMAGE =
            kind("grammage", Grammage.class, "kg/m2", 0, true, 20, "g/m2", "kg/m2");

    /** The kind of consistency. Canonical unit of calculation: {@code 1}. */
    public static final Kind<Consistency> CONSISTENCY =
            kind("consistency", Consistency.class, "1", 0, false, 1, "%", "1", "g/kg", "kg/kg");

    /** The kind of fibre per volume. Canonical unit of calculation: {@code kg/m3}. */
    public static final Kind<FibreConcentration> FIBRE_CONCENTRATION =
            kind("fibre per volume", FibreConcentration.class, "kg/m3", 0, false, 1600, "g/L", "kg/m3");

    /** The kind of strength of a solution. Canonical unit of calculation: {@code kg/m3}. */
    public static final Kind<SolutionStrength> SOLUTION_STRENGTH =
            kind("solution strength", SolutionStrength.class, "kg/m3", 0, false, 2500, "g/L", "kg/m3");

    /** The kind of moisture, wet basis. Canonical unit of calculation: {@code 1}. */
    public static final Kind<Moisture> MOISTURE =
            kind("moisture, wet basis", Moisture.class, "1", 0, false, 1, "%", "1", "g/kg", "kg/kg");

    /** The kind of moisture ratio, dry basis. Canonical unit of calculation: {@code 1}. */
    public static final Kind<MoistureRatio> MOISTURE_RATIO =
            kind("moisture ratio, dry basis", MoistureRatio.class, "1", 0, false, 1e5, "g/g", "kg/kg", "%", "1");

    /** The kind of solids. Canonical unit of calculation: {@code 1}. */
    public static final Kind<Solids> SOLIDS = kind("solids", Solids.class, "1", 0, true, 1, "%", "1", "kg/kg");

    /** The kind of dose on oven-dry fibre. Canonical unit of calculation: {@code 1}. */
    public static final Kind<Dose> DOSE =
            kind("dose on oven-dry fibre", Dose.class, "1", 0, false, 0.5, "%", "g/kg", "kg/kg", "1");

    /** The kind of share. Canonical unit of calculation: {@code 1}. */
    public static final Kind<Share> SHARE = kind("share", Share.class, "1", 0, false, 1, "%", "1");

    /** The kind of linear shrinkage. Canonical unit of calculation: {@code 1}. */
    public static final Kind<LinearShrinkage> LINEAR_SHRINKAGE =
            kind("linear shrinkage", LinearShrinkage.class, "1", -0.2, false, 0.6, "%", "1");

    /** The kind of area shrinkage. Canonical unit of calculation: {@code 1}. */
    public static final Kind<AreaShrinkage> AREA_SHRINKAGE =
            kind("area shrinkage", AreaShrinkage.class, "1", -0.4, false, 0.84, "%", "1");

    /** The kind of relative humidity. Canonical unit of calculation: {@code 1}. */
    public static final Kind<RelativeHumidity> RELATIVE_HUMIDITY =
            kind("relative humidity", RelativeHumidity.class, "1", 0, false, 1, "%", "1");

    /** The kind of humidity ratio. Canonical unit of calculation: {@code 1}. */
    public static final Kind<HumidityRatio> HUMIDITY_RATIO =
            kind("humidity ratio", HumidityRatio.class, "1", 0, false, 10, "g/kg", "kg/kg", "1");

    /** The kind of density. Canonical unit of calculation: {@code kg/m3}. */
    public static final Kind<ApparentDensity> DENSITY =
            kind("density", ApparentDensity.class, "kg/m3", 0, true, 25000, "kg/m3", "g/cm3", "g/mL");

    /** The kind of bulk. Canonical unit of calculation: {@code m3/kg}. */
    public static final Kind<Bulk> BULK = kind("bulk", Bulk.class, "m3/kg", 0, true, 1, "cm3/g", "m3/kg");

    /** The kind of liquor ratio. Canonical unit of calculation: {@code m3/kg}. */
    public static final Kind<LiquorRatio> LIQUOR_RATIO =
            kind("liquor ratio", LiquorRatio.class, "m3/kg", 0, false, 10, "L/kg", "m3/kg");

    /** The kind of hydroxide on oven-dry fibre. Canonical unit of calculation: {@code mol/kg}. */
    public static final Kind<HydroxideDose> HYDROXIDE_DOSE =
            kind("hydroxide on oven-dry fibre", HydroxideDose.class, "mol/kg", 0, false, 20, "mol/kg");

    /** The kind of Schopper-Riegler number. Canonical unit of calculation: {@code SR}. */
    public static final Kind<SchopperRiegler> SCHOPPER_RIEGLER =
            kind("Schopper-Riegler number", SchopperRiegler.class, "SR", 0, false, 100, "SR");

    /** The kind of Canadian Standard freeness. Canonical unit of calculation: {@code mL_CSF}. */
    public static final Kind<CanadianFreeness> CANADIAN_FREENESS =
            kind("Canadian Standard freeness", CanadianFreeness.class, "mL_CSF", 0, false, 1000, "mL_CSF");

    /** The kind of specific filtration resistance. Canonical unit of calculation: {@code m/kg}. */
    public static final Kind<FiltrationResistance> FILTRATION_RESISTANCE =
            kind("specific filtration resistance", FiltrationResistance.class, "m/kg", 0, false, 1e16, "m/kg");

    /** The kind of water retention value. Canonical unit of calculation: {@code 1}. */
    public static final Kind<WaterRetention> WATER_RETENTION =
            kind("water retention value", WaterRetention.class, "1", 0, false, 20, "g/g", "1");

    /** The kind of energy per mass. Canonical unit of calculation: {@code J/kg}. */
    public static final Kind<MassicEnergy> MASSIC_ENERGY =
            kind("energy per mass", MassicEnergy.class, "J/kg", 0, false, 1e12, "kW.h/t", "J/kg", "kJ/kg");

    /** The kind of specific edge load. Canonical unit of calculation: {@code J/m}. */
    public static final Kind<EdgeLoad> EDGE_LOAD =
            kind("specific edge load", EdgeLoad.class, "J/m", 0, false, 1e6, "J/m");

    /** The kind of light scattering coefficient. Canonical unit of calculation: {@code m2/kg}. */
    public static final Kind<LightScattering> LIGHT_SCATTERING =
            kind("light scattering coefficient", LightScattering.class, "m2/kg", 0, true, 1000, "m2/kg");

    /** The kind of viscosity. Canonical unit of calculation: {@code Pa.s}. */
    public static final Kind<Viscosity> VISCOSITY =
            kind("viscosity", Viscosity.class, "Pa.s", 0, true, 1e6, "mPa.s", "Pa.s");

    /** The kind of number. Canonical unit of calculation: {@code 1}. */
    public static final Kind<Dimensionless> NUMBER = kind(
            "number",
            Dimensionless.class,
            "1",
            Double.NEGATIVE_INFINITY,
            false,
            Double.POSITIVE_INFINITY,
            "1",
            "%",
            "g/kg",
            "kg/kg",
            "g/g");

    private Kinds() {}

    @SuppressWarnings("unchecked")
    private static <Q extends Quantity<Q>> Kind<Q> kind(
            String name, Class<Q> type, String siCode, double low, boolean lowOpen, double high, String... codes) {
        Kind<Q> kind = new Kind<>(
                name,
                type,
                (Unit<Q>) known(siCode).unit(),
                low,
                lowOpen,
                high,
                PerCentBasis.said(name, symbols(codes)));
        ALL.add(kind);
        return kind;
    }

    /**
     * Returns every kind.
     *
     * @return an unmodifiable list
     */
    public static List<Kind<?>> all() {
        return List.copyOf(ALL);
    }
}
