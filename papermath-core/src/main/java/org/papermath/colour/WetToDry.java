package org.papermath.colour;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.function.DoubleUnaryOperator;
import org.papermath.equation.KubelkaMunk;
import org.papermath.equation.WetColour;
import org.papermath.evidence.Assumption;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Scope;
import org.papermath.evidence.Shape;
import org.papermath.numeric.Normal;

/**
 * The colour a wet sheet or wet pulp dries to. Wet fibre scatters less than dry fibre, so it is darker; how much less is little
 * known, and one pair of readings of the same sheet wet and dry says more than the table. Immutable.
 *
 * <p>Two laws, as both are in use: by {@link Law#SCATTERING} the scattering of the wet sheet is a part of that of the dry one;
 * by {@link Law#FILM} light is caught under a film of water. They part on dark colours, and the band covers both.
 *
 * @source {@link Law}
 */
public final class WetToDry {
    private final Law law;
    private final double part;
    private final double deviation;
    private final double error;
    private final boolean calibrated;

    /** Why wet paper is darker. */
    public enum Law {
        /**
         * Wet fibre scatters a part ({@code colour.wet-scattering}) of what it does dry.
         *
         * @source K/S of Kubelka and Munk 1931; the part by common practice
         */
        SCATTERING,
        /**
         * Light is sent back into the sheet by the face of the water on it, and fibre in water absorbs less.
         *
         * @source Lekner and Dorf, Applied Optics 27, 1988
         */
        FILM
    }

    private WetToDry(Law law, double part, double deviation, double error, boolean calibrated) {
        this.law = law;
        this.part = part;
        this.deviation = deviation;
        this.error = error;
        this.calibrated = calibrated;
    }

    /**
     * Takes the law of scattering.
     *
     * @param assumptions where {@code colour.wet-scattering} and {@code colour.reading-error} are looked up
     * @return the law, not calibrated
     */
    public static WetToDry from(Assumptions assumptions) {
        Objects.requireNonNull(assumptions, "assumptions");
        Assumption row = assumptions.get("colour.wet-scattering", Scope.GENERAL);
        double deviation =
                (Shape.LOGIT.scaled(row.highSi()) - Shape.LOGIT.scaled(row.lowSi())) / (2 * Normal.FIVE_PERCENT_POINT);
        return new WetToDry(
                Law.SCATTERING,
                row.likelySi(),
                deviation,
                assumptions.si("colour.reading-error", Scope.GENERAL),
                false);
    }

    /**
     * Calibrates by one sheet read wet and dry: the law that comes nearer to the pair, and of scattering the part that fits
     * all bands best, each counting as much as it tells.
     *
     * @param wet the sheet wet, water just gone from its face
     * @param dry the same sheet dry
     * @return the law that fits
     * @throws org.papermath.quantity.Refused if the dry reading has fewer bands than the wet one
     */
    public WetToDry calibrated(Reflectance wet, Reflectance dry) {
        Objects.requireNonNull(wet, "wet");
        Objects.requireNonNull(dry, "dry");
        Reflectance other = dry.in(wet.bands());
        double above = 0;
        double below = 0;
        for (int i = 0; i < wet.values().length; i++) {
            double ratio = KubelkaMunk.ratio(wet.value(i));
            if (ratio > 0) {
                double found = Math.log(Math.min(0.999, WetColour.part(wet.value(i), other.value(i))));
                double told = ratio / (1 + ratio);
                above += told * found;
                below += told;
            }
        }
        double fitted = below == 0 ? part : Math.exp(above / below);
        WetToDry scattering = new WetToDry(Law.SCATTERING, fitted, 0, error, true);
        WetToDry film = new WetToDry(Law.FILM, fitted, 0, error, true);
        double left = scattering.told(wet).lab().difference(other.lab());
        double leftByFilm = film.told(wet).lab().difference(other.lab());
        WetToDry nearer = leftByFilm < left ? film : scattering;
        double residual = Math.min(left, leftByFilm);
        return new WetToDry(nearer.law, fitted, deviation / 3, Math.hypot(Math.sqrt(2) * error, residual), true);
    }

    /**
     * Returns the law.
     *
     * @return which one it goes by
     */
    public Law law() {
        return law;
    }

    /**
     * Returns whether a pair of readings stands behind it.
     *
     * @return true after {@link #calibrated}
     */
    public boolean isCalibrated() {
        return calibrated;
    }

    /**
     * Tells the dry colour of a wet reading.
     *
     * @param wet the wet sheet or pulp, so thick that nothing shines through, water just gone from its face
     * @return the dry colour, and how far off it may come out
     */
    public PredictedColour dry(Reflectance wet) {
        Objects.requireNonNull(wet, "wet");
        return predicted(
                told(wet),
                part -> new WetToDry(Law.SCATTERING, part, 0, error, true).told(wet),
                new WetToDry(Law.FILM, part, 0, error, true).told(wet));
    }

    /**
     * Tells how dark the wet sheet must look for a dry colour.
     *
     * @param dry the colour wanted of the dry sheet
     * @return the wet colour, and how far off it may be
     */
    public PredictedColour wet(Reflectance dry) {
        Objects.requireNonNull(dry, "dry");
        return predicted(
                wetOf(dry),
                part -> new WetToDry(Law.SCATTERING, part, 0, error, true).wetOf(dry),
                new WetToDry(Law.FILM, part, 0, error, true).wetOf(dry));
    }

    private interface ByPart {
        Reflectance at(double part);
    }

    /** The half band of the part as a step of the colour, and the other law where no pair has chosen. */
    private PredictedColour predicted(Reflectance told, ByPart byPart, Reflectance byFilm) {
        double[] lab = told.lab().values();
        ColourError whole = new ColourError(lab);
        List<PredictedColour.Cause> causes = new ArrayList<>();
        double moved = Shape.LOGIT.plain(Shape.LOGIT.scaled(part) - deviation);
        because(
                whole,
                causes,
                lab,
                "how much less wet fibre scatters",
                minus(byPart.at(moved).lab(), byPart.at(part).lab()));
        if (!calibrated) {
            double[] between = minus(byFilm.lab(), told.lab());
            because(whole, causes, lab, "which law holds", new double[] {between[0] / 2, between[1] / 2, between[2] / 2
            });
        }
        whole.loose(error);
        causes.add(new PredictedColour.FoundCause("the readings", error));
        causes.sort(
                Comparator.comparingDouble(PredictedColour.Cause::difference).reversed());
        return new PredictedColour(told, whole, causes, List.of(), null);
    }

    private static void because(
            ColourError whole, List<PredictedColour.Cause> causes, double[] lab, String what, double[] step) {
        ColourError alone = new ColourError(lab);
        whole.step(step);
        alone.step(step);
        causes.add(new PredictedColour.FoundCause(what, Math.sqrt(alone.meanSquare())));
    }

    private static double[] minus(Lab one, Lab other) {
        return new double[] {one.l() - other.l(), one.a() - other.a(), one.b() - other.b()};
    }

    private Reflectance told(Reflectance wet) {
        return wet.each(dryLaw());
    }

    private Reflectance wetOf(Reflectance dry) {
        return dry.each(law == Law.FILM ? WetColour::wetInFilm : value -> WetColour.wetByScattering(value, part));
    }

    private DoubleUnaryOperator dryLaw() {
        return law == Law.FILM ? WetColour::dryInFilm : value -> WetColour.dryByScattering(value, part);
    }

    @Override
    public String toString() {
        return (law == Law.FILM ? "under a film of water" : "wet fibre scatters " + ColourRange.said(part))
                + (calibrated ? ", by a pair of readings" : ", not calibrated");
    }
}
