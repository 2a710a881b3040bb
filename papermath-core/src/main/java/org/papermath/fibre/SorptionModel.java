package org.papermath.fibre;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Mass;
import javax.measure.quantity.Temperature;
import org.papermath.air.Air;
import org.papermath.equation.Sorption;
import org.papermath.equation.SorptionLaw;
import org.papermath.evidence.Assumption;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Bands;
import org.papermath.evidence.Basis;
import org.papermath.evidence.Estimate;
import org.papermath.evidence.Notice;
import org.papermath.evidence.Reading;
import org.papermath.evidence.Scope;
import org.papermath.evidence.Source;
import org.papermath.quantity.Amount;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Moisture;
import org.papermath.quantity.MoistureRatio;
import org.papermath.quantity.Refused;
import org.papermath.quantity.RelativeHumidity;
import org.papermath.quantity.Share;

/**
 * Moisture of fibre and paper in equilibrium with air. Immutable.
 *
 * <p>Guggenheim–Anderson–de Boer isotherm {@code M = M0 C K a/((1 - K a)(1 - K a + C K a))}, a the relative humidity as
 * a fraction; a furnish by the oven-dry masses of its fibres. It is stated at 23 °C; at another temperature the ratio
 * changes by a slope given at 50 % relative humidity and scaled with the ratio. Good from 5 to 90 % relative humidity,
 * about ±1 point of moisture; ±0.3 after one oven-dry weighing.
 *
 * @source regain tables of fibres, fitted; see the sources of {@code sorption.monolayer}, {@code .energy} and
 *     {@code .bulk}
 */
public final class SorptionModel {
    /** The three constants of the isotherm; a calibration scales the first. */
    private static final List<String> IDS = List.of("sorption.monolayer", "sorption.energy", "sorption.bulk");

    private static final double ZERO_CELSIUS = 273.15;

    private static final double LEAST_ACTIVITY = 0.05;
    private static final double MOST_ACTIVITY = 0.90;

    private final Assumptions assumptions;
    private final List<Part> parts;
    private final double slope;
    private final double offset;
    private final double factor;
    private final boolean desorbing;
    private final boolean longBeaten;

    private record Part(double share, Scope scope, SorptionLaw law) {
        static Part of(double share, Assumptions assumptions, Scope scope) {
            return new Part(
                    share,
                    scope,
                    new SorptionLaw(
                            assumptions.si("sorption.monolayer", scope),
                            assumptions.si("sorption.energy", scope),
                            assumptions.si("sorption.bulk", scope)));
        }
    }

    private SorptionModel(Assumptions assumptions, List<Part> parts, boolean desorbing, boolean longBeaten) {
        this.assumptions = assumptions;
        this.parts = parts;
        this.desorbing = desorbing;
        this.longBeaten = longBeaten;
        this.slope = assumptions.si("sorption.temperature-slope", Scope.GENERAL);
        this.offset = desorbing ? assumptions.si("sorption.desorption-offset", Scope.GENERAL) : 0;
        this.factor = longBeaten ? assumptions.si("sorption.long-beaten-factor", Scope.GENERAL) : 1;
    }

    /**
     * Returns the model of finished rag paper by the shipped assumptions.
     *
     * @return the model
     */
    public static SorptionModel standard() {
        return from(Assumptions.standard(), Scope.of("rag-paper"));
    }

    /**
     * Returns the model of a furnish by the shipped assumptions.
     *
     * @param furnish the fibres
     * @return the model
     * @throws Refused if there is no isotherm for one of the fibres
     */
    public static SorptionModel standard(Furnish furnish) {
        Objects.requireNonNull(furnish, "furnish");
        return from(Assumptions.standard(), furnish);
    }

    /**
     * Makes the model of one material.
     *
     * @param assumptions the store
     * @param scope the material, for example a fibre, {@code cotton} (raw) or {@code rag-paper} (finished)
     * @return the model
     * @throws Refused if the store has no isotherm for it
     */
    public static SorptionModel from(Assumptions assumptions, Scope scope) {
        Objects.requireNonNull(assumptions, "assumptions");
        Objects.requireNonNull(scope, "scope");
        return new SorptionModel(assumptions, List.of(Part.of(1, assumptions, scope)), false, false);
    }

    /**
     * Makes the model of a furnish: where the furnish has an isotherm of its own, measured, that one, else those of its
     * fibres by oven-dry mass.
     *
     * @param assumptions the store
     * @param furnish the fibres
     * @return the model
     * @throws Refused if the store has no isotherm for one of the fibres
     */
    public static SorptionModel from(Assumptions assumptions, Furnish furnish) {
        Objects.requireNonNull(assumptions, "assumptions");
        Objects.requireNonNull(furnish, "furnish");
        boolean own = IDS.stream()
                .allMatch(id -> assumptions.find(id, furnish.scope()).isPresent());
        if (own || !furnish.isBlend()) {
            return from(assumptions, furnish.scope());
        }
        List<Part> parts = new ArrayList<>();
        for (Map.Entry<Fibre, Amount<Share>> entry : furnish.shares().entrySet()) {
            parts.add(Part.of(entry.getValue().si(), assumptions, entry.getKey().scope()));
        }
        return new SorptionModel(assumptions, List.copyOf(parts), false, false);
    }

    /**
     * Returns the model of paper that comes to the air from the wet side, as in drying: higher by the desorption
     * offset, which is stated at mid humidity and goes to nothing in dry and in saturated air.
     *
     * @return the model
     */
    public SorptionModel fromWetSide() {
        return new SorptionModel(assumptions, parts, true, longBeaten);
    }

    /**
     * Returns the model of long-beaten stock, which holds a little more moisture at any humidity.
     *
     * @return the model
     */
    public SorptionModel longBeaten() {
        return new SorptionModel(assumptions, parts, desorbing, true);
    }

    /**
     * Returns the moisture ratio in some air.
     *
     * @param air the air
     * @return water over oven-dry mass
     */
    public Amount<MoistureRatio> ratio(Air air) {
        return Kinds.MOISTURE_RATIO.ofSi(
                ratioSi(air.humidity().si(), air.temperature().si()), "%");
    }

    /**
     * Returns the moisture in some air, wet basis.
     *
     * @param air the air
     * @return water over the whole mass
     */
    public Amount<Moisture> moisture(Air air) {
        return Kinds.MOISTURE.ofSi(
                org.papermath.equation.Moisture.wetBasisOfRatio(
                        ratioSi(air.humidity().si(), air.temperature().si())),
                "%");
    }

    /**
     * Returns the moisture ratio with its band. The loop between wetting and drying counts as part of it, so it is at
     * least as wide as the offset.
     *
     * @param air the air
     * @return water over oven-dry mass
     */
    public Estimate<MoistureRatio> estimate(Air air) {
        Estimate<MoistureRatio> band =
                Bands.of(assumptions, uses(), store -> of(store).ratio(air));
        double loop = assumptions.si("sorption.desorption-offset", Scope.GENERAL);
        double likely = band.likely().si();
        double low = Math.max(0, likely - Math.hypot(likely - band.low().si(), desorbing ? loop : 0));
        double high = likely + Math.hypot(band.high().si() - likely, desorbing ? 0 : loop);
        return Estimate.of(
                band.likely(),
                Kinds.MOISTURE_RATIO.ofSi(low, "%"),
                Kinds.MOISTURE_RATIO.ofSi(high, "%"),
                band.drivers());
    }

    /**
     * Forecasts what paper weighed in one air comes to in another. The oven-dry mass behind it is not known either, so most
     * of what is uncertain of the moisture cancels, and the band is narrower than that of either moisture.
     *
     * <pre>{@code
     * Air damp = Air.of(celsius(21), RelativeHumidity.percent(65));
     * SorptionModel.standard().massIn(grams(12.4), damp, Air.reference()); // 12.19 g, mean 12.16–12.31
     * }</pre>
     *
     * @param mass what the scale shows, paper without fillers
     * @param from the air it was weighed in, in equilibrium with it
     * @param to the other air
     * @return the mass in equilibrium with that; the loop between wetting and drying counts as part of the band
     * @throws Refused if the mass is not above zero
     */
    public Estimate<Mass> massIn(Quantity<Mass> mass, Air from, Air to) {
        Objects.requireNonNull(from, "from");
        Objects.requireNonNull(to, "to");
        double weighed = Kinds.MASS.siAboveZero(mass, "mass of the paper");
        Estimate<Mass> band = Bands.of(
                assumptions,
                uses(),
                store -> of(store).inAir(weighed, Kinds.MASS.check(mass, "mass of the paper"), from, to));
        double loop = weighed
                * assumptions.si("sorption.desorption-offset", Scope.GENERAL)
                / (1 + ratio(from).si());
        double likely = band.likely().si();
        double low = likely - Math.hypot(likely - band.low().si(), desorbing ? loop : 0);
        double high = likely + Math.hypot(band.high().si() - likely, desorbing ? 0 : loop);
        return Estimate.of(
                band.likely(),
                Kinds.MASS.ofSi(low).to(band.likely().getUnit()),
                Kinds.MASS.ofSi(high).to(band.likely().getUnit()),
                band.drivers());
    }

    private Amount<Mass> inAir(double weighed, Amount<Mass> like, Air from, Air to) {
        return Kinds.MASS
                .ofSi(weighed / (1 + ratio(from).si()) * (1 + ratio(to).si()))
                .to(like.getUnit());
    }

    private List<Bands.Use> uses() {
        List<Bands.Use> uses = new ArrayList<>();
        for (Part part : parts) {
            uses.add(Bands.Use.of(part.scope(), "sorption.monolayer", "sorption.temperature-slope"));
        }
        return uses;
    }

    /** Returns the model with the values of another store. */
    private SorptionModel of(Assumptions store) {
        return new SorptionModel(
                store,
                parts.stream()
                        .map(part -> Part.of(part.share(), store, part.scope()))
                        .toList(),
                desorbing,
                longBeaten);
    }

    private double ratioSi(double activity, double kelvin) {
        double ratio = 0;
        double middle = 0;
        for (Part part : parts) {
            ratio += part.share() * part.law().ratio(activity);
            middle += part.share() * part.law().ratio(SorptionLaw.MIDDLE);
        }
        double there = SorptionLaw.at(kelvin - ZERO_CELSIUS, ratio, middle, slope);
        return Sorption.desorption(factor * there, offset, activity);
    }

    /**
     * Returns the relative humidity at which a moisture ratio is in equilibrium.
     *
     * @param ratio water over oven-dry mass
     * @param temperature the temperature, 0 to 60 °C
     * @return the relative humidity
     * @throws Refused if no air from 1 to 99 % relative humidity gives that ratio
     */
    public Amount<RelativeHumidity> humidityFor(Quantity<MoistureRatio> ratio, Quantity<Temperature> temperature) {
        double wanted = Kinds.MOISTURE_RATIO.si(ratio, "moisture ratio");
        double kelvin = Kinds.TEMPERATURE.siWithin(temperature, "temperature", 273.15, 333.15);
        double low = 0.01;
        double high = 0.99;
        if (wanted < ratioSi(low, kelvin) || wanted > ratioSi(high, kelvin)) {
            throw Refused.of(
                    "sorption.out-of-reach",
                    "moisture ratio: " + ratio + " given; air from 1 to 99 % relative humidity brings this fibre to "
                            + Kinds.MOISTURE_RATIO.ofSi(ratioSi(low, kelvin), "%") + " to "
                            + Kinds.MOISTURE_RATIO.ofSi(ratioSi(high, kelvin), "%") + ". Wetter than that it is not in"
                            + " equilibrium with air.",
                    "given",
                    ratio.toString());
        }
        // The ratio rises with humidity, so halving the bracket finds it; 60 halvings reach the last bit.
        for (int i = 0; i < 60; i++) {
            double middle = (low + high) / 2;
            if (ratioSi(middle, kelvin) < wanted) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return Kinds.RELATIVE_HUMIDITY.ofSi((low + high) / 2, "%");
    }

    /**
     * Returns what a moisture in this air should not be read without.
     *
     * @param air the air
     * @return an unmodifiable list
     */
    public List<Notice> notices(Air air) {
        List<Notice> notices = new ArrayList<>();
        double activity = air.humidity().si();
        if (activity < LEAST_ACTIVITY || activity > MOST_ACTIVITY) {
            notices.add(Notice.warning(
                    "sorption.humidity-range",
                    "The isotherms hold from 5 to 90 % relative humidity; " + air.humidity()
                            + " is outside, and the moisture"
                            + " there is doubtful.",
                    "given",
                    air.humidity().toString(),
                    "least",
                    "5 %",
                    "most",
                    "90 %"));
        }
        if (!desorbing) {
            notices.add(Notice.note(
                    "sorption.direction",
                    "Paper that comes from the wet side holds up to "
                            + Kinds.MOISTURE_RATIO.ofSi(
                                    assumptions.si("sorption.desorption-offset", Scope.GENERAL), "%")
                            + " of its dry mass more than this.",
                    "offset",
                    assumptions.si("sorption.desorption-offset", Scope.GENERAL)));
        }
        return List.copyOf(notices);
    }

    /**
     * Calibrates the isotherm of a material by one oven-dry weighing of a sheet that came to the air from the wet side,
     * as sheets do: the monolayer is scaled so that the curve meets it.
     *
     * @param assumptions the store
     * @param scope the material
     * @param inAir the mass after some hours in the air
     * @param ovenDry the mass after the oven
     * @param air the air
     * @return the store with {@code sorption.monolayer} measured for the scope
     * @throws Refused if the air is outside 5 to 90 % relative humidity, or the oven-dry mass is not below that in air
     */
    public static Assumptions calibrate(
            Assumptions assumptions, Scope scope, Reading<Mass> inAir, Reading<Mass> ovenDry, Air air) {
        Objects.requireNonNull(ovenDry, "ovenDry");
        double dry = Kinds.MASS.siAboveZero(ovenDry.value(), "oven-dry mass");
        double wet = inAir.value().si();
        if (!(wet > dry)) {
            throw Refused.of(
                    "sorption.no-moisture",
                    "moisture: " + inAir.value() + " in air and " + ovenDry.value()
                            + " oven-dry given; the oven-dry mass must be"
                            + " the smaller. Weigh the dried sample at once, before it takes up water.",
                    "inAir",
                    inAir.value().toString(),
                    "ovenDry",
                    ovenDry.value().toString());
        }
        Kinds.RELATIVE_HUMIDITY.siWithin(
                air.humidity(), "relative humidity of the weighing", LEAST_ACTIVITY, MOST_ACTIVITY);
        Assumption monolayer = assumptions.get("sorption.monolayer", scope);
        SorptionModel model = from(assumptions, scope);
        double stated = model.ratioSi(air.humidity().si(), SorptionLaw.STATED_CELSIUS + ZERO_CELSIUS);
        // The steps with temperature and from the wet side do not change with the monolayer, only the rest is scaled.
        double warmth = model.fromWetSide().ratio(air).si() - stated;
        double ratio = wet / dry - 1;
        double scale = Math.max(0.05, (ratio - warmth) / stated);
        double error = Math.hypot(inAir.error().si() / dry, ovenDry.error().si() * wet / (dry * dry));
        // What one weighing leaves: 0.3 point of moisture, beside the error of the scale.
        double half = Math.hypot(1.645 * error, 0.003) / ratio;
        double likely = monolayer.likely() * scale;
        return assumptions.with(monolayer.with(
                scope,
                likely,
                likely * Math.max(0.05, 1 - half),
                likely * (1 + half),
                Basis.MEASURED_HERE,
                new Source("one oven-dry weighing in air of " + air)));
    }

    @Override
    public String toString() {
        return "moisture in air of "
                + parts.stream()
                        .map(part -> part.scope().toString())
                        .reduce((a, b) -> a + " " + b)
                        .orElse("") + (desorbing ? ", from the wet side" : "") + (longBeaten ? ", long beaten" : "");
    }
}
