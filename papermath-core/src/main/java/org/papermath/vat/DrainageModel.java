package org.papermath.vat;

import java.util.Objects;
import javax.measure.Quantity;
import javax.measure.quantity.Length;
import javax.measure.quantity.Time;
import org.papermath.air.Water;
import org.papermath.equation.Drainage;
import org.papermath.equation.DrainageLaw;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Reading;
import org.papermath.evidence.Scope;
import org.papermath.pulp.DrainabilityModel;
import org.papermath.quantity.Amount;
import org.papermath.quantity.FibreConcentration;
import org.papermath.quantity.FiltrationResistance;
import org.papermath.quantity.Grammage;
import org.papermath.quantity.Kinds;
import org.papermath.quantity.Refused;
import org.papermath.quantity.SchopperRiegler;
import org.papermath.quantity.Share;

/**
 * How fast stock drains on a mould or in a deckle box, by the falling head of the stock itself:
 * t(V) = f μ/(ρ g) {α R c_v [H ln(H/(H − V)) − V] + R_m ln(H/(H − V))}. Immutable.
 *
 * <p>H is the depth of stock, V the depth of water that has left, α the specific resistance of the mat, R_m that of the
 * cover, f a factor for shake and tilt. The sheen leaves the sheet when about nine tenths have left.
 *
 * @source Darcy's law over a growing mat, integrated; agrees with step-by-step integration
 */
public final class DrainageModel {
    private final DrainageLaw law;
    private final double wallDensity;

    private DrainageModel(DrainageLaw law, double wallDensity) {
        this.law = law;
        this.wallDensity = wallDensity;
    }

    /**
     * Builds the model.
     *
     * @param assumptions where the constants are looked up
     * @param scope the fibre and the mould
     * @return the model
     */
    public static DrainageModel from(Assumptions assumptions, Scope scope) {
        Objects.requireNonNull(assumptions, "assumptions");
        Objects.requireNonNull(scope, "scope");
        return new DrainageModel(
                new DrainageLaw(
                        assumptions.si("drainage.end-share", scope),
                        assumptions.si("drainage.mat-retention", scope),
                        assumptions.si("drainage.wire-resistance", scope),
                        assumptions.si("drainage.suction-factor", scope)),
                assumptions.si("fibre.cell-wall-density", scope));
    }

    /**
     * Builds the model from the shipped table.
     *
     * @return the model
     */
    public static DrainageModel standard() {
        return from(Assumptions.standard(), Scope.GENERAL);
    }

    /**
     * Returns the depth of stock to lift or pour for a grammage: H = W/(R_1 c_v).
     *
     * @param grammage the oven-dry grammage of fibre
     * @param retention the share of the fibre on the mould that stays in the sheet, above zero
     * @param perLitre fibre in a litre of stock, above zero
     * @return the depth
     * @throws Refused if a value is out of range
     */
    public static Amount<Length> depth(
            Quantity<Grammage> grammage, Quantity<Share> retention, Quantity<FibreConcentration> perLitre) {
        return Kinds.LENGTH.ofSi(
                Drainage.depth(
                        Kinds.GRAMMAGE.si(grammage, "grammage"),
                        Kinds.SHARE.siAboveZero(retention, "retention of the fibre"),
                        Kinds.FIBRE_CONCENTRATION.siAboveZero(perLitre, "fibre per litre of stock")),
                "mm");
    }

    /**
     * Sets stock on the mould to drain.
     *
     * @param depth the depth of stock, 1 to 500 mm
     * @param perLitre fibre in a litre of stock, 0.1 to 50 g/L
     * @param resistance the specific resistance of the mat; from {@code DrainabilityModel}, or better from a timed
     *     sheet
     * @param water the water at its temperature
     * @return the sheet while it drains
     * @throws Refused if a value is out of range
     */
    public DrainingSheet drain(
            Quantity<Length> depth,
            Quantity<FibreConcentration> perLitre,
            Quantity<FiltrationResistance> resistance,
            Water water) {
        return new DrainingSheet(
                depth(depth),
                strength(perLitre),
                Kinds.FILTRATION_RESISTANCE.si(resistance, "specific filtration resistance"),
                law,
                wallDensity,
                water);
    }

    /**
     * Reads the specific resistance of the mat from one timed sheet.
     *
     * @param time the time until the sheen has gone, with its error
     * @param depth the depth of stock at the start, 1 to 500 mm
     * @param perLitre fibre in a litre of stock, 0.1 to 50 g/L
     * @param water the water at its temperature
     * @return the resistance with the error that of the time brings
     * @throws Refused if a value is out of range, or the time is shorter than the bare cover alone takes
     */
    public Reading<FiltrationResistance> resistance(
            Reading<Time> time, Quantity<Length> depth, Quantity<FibreConcentration> perLitre, Water water) {
        double h = depth(depth);
        double c = strength(perLitre);
        double seconds = Kinds.TIME.siAboveZero(time.value(), "drainage time");
        double alpha =
                law.alpha(seconds, h, c, water.viscosity().si(), water.density().si());
        double cover = law.time(h, 0, c, water.viscosity().si(), water.density().si());
        if (!(alpha > 0)) {
            throw Refused.of(
                    "drainage.faster-than-cover",
                    "drainage time: " + Kinds.TIME.ofSi(seconds, "s") + " given, but the bare cover alone takes "
                            + Kinds.TIME.ofSi(cover, "s")
                            + " for that depth. Check the depth, or the cover is more open than"
                            + " assumed.",
                    "given",
                    Kinds.TIME.ofSi(seconds, "s").toString(),
                    "least",
                    Kinds.TIME.ofSi(cover, "s").toString());
        }
        double error = time.error().si() / (seconds - cover) * alpha;
        return Reading.of(
                Kinds.FILTRATION_RESISTANCE.ofSi(alpha, "m/kg"), Kinds.FILTRATION_RESISTANCE.ofSi(error, "m/kg"));
    }

    /**
     * Calibrates the resistance of the mat on a mould by one timed sheet of stock whose drainability is known.
     *
     * @param assumptions what is taken for the rest
     * @param scope the vat, perhaps with the fibre
     * @param time the time until the sheen has gone
     * @param depth the depth of stock at the start, 1 to 500 mm
     * @param perLitre fibre in a litre of stock, 0.1 to 50 g/L
     * @param number the Schopper–Riegler number of the stock
     * @param water the water at its temperature
     * @return the assumptions with {@code drainage.resistance-factor} in that scope
     * @throws Refused as {@link #resistance} and {@link DrainabilityModel#calibrate}
     */
    public static Assumptions calibrate(
            Assumptions assumptions,
            Scope scope,
            Reading<Time> time,
            Reading<Length> depth,
            Reading<FibreConcentration> perLitre,
            Reading<SchopperRiegler> number,
            Water water) {
        Objects.requireNonNull(depth, "depth");
        Objects.requireNonNull(perLitre, "perLitre");
        DrainabilityModel drainability = DrainabilityModel.from(assumptions, scope);
        DrainageModel model = from(assumptions, scope);
        Reading<FiltrationResistance> found = model.resistance(time, depth.value(), perLitre.value(), water);
        double alpha = found.value().si();
        double deeper = model.resistance(time, depth.above(), perLitre.value(), water)
                .value()
                .si();
        double thicker = model.resistance(time, depth.value(), perLitre.above(), water)
                .value()
                .si();
        double harder = drainability.errorOfResistance(number);
        double error =
                Math.hypot(Math.hypot(found.error().si(), deeper - alpha), Math.hypot(thicker - alpha, harder * alpha));
        return DrainabilityModel.calibrate(
                assumptions,
                scope,
                number.value(),
                Reading.of(found.value(), Kinds.FILTRATION_RESISTANCE.ofSi(error, "m/kg")));
    }

    private static double depth(Quantity<Length> depth) {
        return Kinds.LENGTH.siWithin(depth, "depth of stock", 1e-3, 0.5);
    }

    private static double strength(Quantity<FibreConcentration> perLitre) {
        return Kinds.FIBRE_CONCENTRATION.siWithin(perLitre, "fibre per litre of stock", 0.1, 50);
    }

    @Override
    public String toString() {
        return "drainage to " + Kinds.SHARE.ofSi(law.endShare(), "%") + " of the water above the mould";
    }
}
