package org.papermath.engine;

import org.papermath.air.Air;
import org.papermath.equation.PieceLayout;
import org.papermath.equation.Psychrometrics;
import org.papermath.equation.Room;
import org.papermath.equation.StackDrying;
import org.papermath.equation.WaterProperties;
import org.papermath.evidence.Scope;
import org.papermath.order.Order;
import org.papermath.order.Studio;
import org.papermath.press.Felts;
import org.papermath.press.Press;
import org.papermath.quantity.Amount;
import org.papermath.vat.Vat;

/** The studio in plain numbers: the steps of its tools, its water and its air, what more than one stage has to know. */
public final class Workshop {
    private static final double ZERO_CELSIUS = 273.15;

    /** Without a vat the stuff is poured from water of the usual room. */
    private static final double USUAL_CELSIUS = 20;

    /** The step of the scale for fibre, kg. */
    final double scale;
    /** The step of the scale for additives, kg. */
    final double fineScale;
    /** The step of the jug, m³. */
    final double jug;

    final boolean hasVat;
    /** The level it is run down to at the end, m³; not a number where it is kept at the mark. */
    final double runDown;
    /** Whether the fibre in what is bailed goes back. */
    final boolean isStrained;

    final double vatVolume;
    /** Inside sides of the vat; not a number where they are not known. */
    final double vatWidth;

    final double vatLength;
    final double waterDensity;
    final double waterViscosity;

    final boolean hasPress;
    final double platenWidth;
    final double platenLength;
    final boolean hasFelts;
    final double feltWidth;
    final double feltLength;

    final double roomCelsius;
    final double roomHumidity;
    final StackDrying.Inlet roomAir;
    /** Dry air that passes through the room, kg/s; infinite where it is not given. */
    final double ventilation;

    /** Dry air in the room, kg; not a number where it is not given. */
    final double roomMass;

    /** The humidity ratio of the room when it takes up no more water. */
    final double roomSaturated;

    final double referenceCelsius;
    final double referenceHumidity;

    /** Where values measured at the vat and at the press are kept. */
    final Scope vat;

    final Scope press;

    Workshop(Order order, Studio studio) {
        scale = studio.scaleStep().si();
        fineScale = studio.fineScaleStep().si();
        jug = studio.jugStep().si();

        hasVat = studio.vat().isPresent();
        runDown = studio.vat().flatMap(Vat::runDown).map(Amount::si).orElse(Double.NaN);
        isStrained = studio.vat().map(Vat::isStrained).orElse(true);
        vatVolume = studio.vat().map(one -> one.workingVolume().si()).orElse(0.0);
        vatWidth = studio.vat().flatMap(Vat::width).map(Amount::si).orElse(Double.NaN);
        vatLength = studio.vat().flatMap(Vat::length).map(Amount::si).orElse(Double.NaN);
        double vatCelsius =
                studio.vat().map(one -> one.temperature().si() - ZERO_CELSIUS).orElse(USUAL_CELSIUS);
        waterDensity = WaterProperties.density(vatCelsius);
        waterViscosity = WaterProperties.viscosity(vatCelsius);

        hasPress = studio.press().isPresent();
        platenWidth = studio.press().map(one -> one.platenWidth().si()).orElse(0.0);
        platenLength = studio.press().map(one -> one.platenLength().si()).orElse(0.0);
        hasFelts = studio.felts().isPresent();
        feltWidth = studio.felts().map(Felts::width).map(Amount::si).orElse(0.0);
        feltLength = studio.felts().map(Felts::length).map(Amount::si).orElse(0.0);

        Air room = studio.room();
        roomCelsius = room.temperature().si() - ZERO_CELSIUS;
        roomHumidity = room.humidity().si();
        roomAir =
                StackDrying.Inlet.of(roomCelsius, roomHumidity, room.pressure().si());
        roomSaturated = Psychrometrics.saturatedHumidityRatio(
                roomCelsius, room.pressure().si());
        roomMass = studio.ventilation()
                .map(one -> Room.dryAirMass(one.volume().si(), roomAir.volume()))
                .orElse(Double.NaN);
        ventilation = studio.ventilation()
                .map(one -> roomMass * one.airChanges().si())
                .orElse(Double.POSITIVE_INFINITY);
        Air reference = order.weighedIn();
        referenceCelsius = reference.temperature().si() - ZERO_CELSIUS;
        referenceHumidity = reference.humidity().si();

        vat = studio.vat().map(one -> Scope.at(one.name())).orElse(Scope.GENERAL);
        press = studio.press().map(Press::name).map(Scope::at).orElse(Scope.GENERAL);
    }

    /** Whether a mould with such a sheet goes into the vat. */
    boolean isInVat(double width, double height) {
        return Double.isNaN(vatWidth) || Fit.within(width, height, vatWidth, vatLength);
    }

    /** Whether such a wet sheet lies on a felt. */
    boolean isFelted(double width, double height) {
        return Fit.within(width, height, feltWidth, feltLength);
    }

    /**
     * How many such wet sheets lie side by side on a felt where the platen covers them all; one, where it does not
     * cover even that, or there are no felts.
     */
    int onFelt(double width, double height, double gap) {
        if (!hasFelts) {
            return 1;
        }
        double longSide = Math.max(feltWidth, feltLength);
        double shortSide = Math.min(feltWidth, feltLength);
        if (hasPress) {
            longSide = Math.min(longSide, Math.max(platenWidth, platenLength));
            shortSide = Math.min(shortSide, Math.min(platenWidth, platenLength));
        }
        return Math.max(1, PieceLayout.sideBySide(shortSide, longSide, width, height, gap));
    }

    /** Whether the platen covers such a wet sheet. */
    public boolean isCovered(double width, double height) {
        return Fit.within(width, height, platenWidth, platenLength);
    }

    /** Whether such a wet sheet goes to the press; where there are felts and it lies on none, there is no post. */
    boolean isPressed(double width, double height) {
        return hasPress && (!hasFelts || isFelted(width, height));
    }

    /** How many of vat, felts and platen a wet sheet is too large for. */
    int misfits(double width, double height) {
        return (hasVat && !isInVat(width, height) ? 1 : 0)
                + (hasFelts && !isFelted(width, height) ? 1 : 0)
                + (hasPress && !isCovered(width, height) ? 1 : 0);
    }

    /** The step of the scale fibre is weighed on, kg. */
    public double fibreScale() {
        return scale;
    }

    /** Viscosity of the water of the vat, Pa s. */
    public double waterViscosity() {
        return waterViscosity;
    }

    /** Density of the water the sheets are formed in, kg/m³. */
    public double waterDensity() {
        return waterDensity;
    }

    /** The humidity ratio of the room when it takes up no more water. */
    public double roomSaturated() {
        return roomSaturated;
    }

    /** The air of the room before anything dries in it. */
    public StackDrying.Inlet roomAir() {
        return roomAir;
    }

    /** Dry air that passes through the room, kg/s; infinite where it is not given. */
    public double ventilation() {
        return ventilation;
    }

    /** Dry air in the room, kg; not a number where it is not given. */
    public double roomMass() {
        return roomMass;
    }

    /** Relative humidity of the room. */
    public double roomHumidity() {
        return roomHumidity;
    }

    /** Sides of the vat inside, m; not a number where they are not known. */
    public double vatWidth() {
        return vatWidth;
    }

    /** The other side of the vat inside, m. */
    public double vatLength() {
        return vatLength;
    }
}
