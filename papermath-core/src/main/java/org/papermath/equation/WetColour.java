package org.papermath.equation;

import org.papermath.numeric.Roots;

/**
 * What water does to the reflectance of a sheet that lets no light through. Two laws: in the first wet fibre scatters a part
 * of what dry fibre does; in the second light is caught under a film of water, and the fibre in it absorbs less than in air.
 *
 * @source first: K/S with a scattering factor, Kubelka and Munk 1931; second: Lekner and Dorf, Applied Optics 27, 1988
 */
public final class WetColour {
    /** Of water, in the middle of the seen light. */
    public static final double WATER = 1.333;

    /** Of cellulose. */
    public static final double FIBRE = 1.53;

    /** What water sends back of light that falls straight on it. */
    private static final double STRAIGHT = Math.pow((WATER - 1) / (WATER + 1), 2);

    /** What of the light under water is sent down again by its surface. */
    private static final double CAUGHT = 1 - (1 - diffuse(WATER)) / (WATER * WATER);

    private WetColour() {}

    /** Wet reflectance from the dry one: S falls to a part of itself. */
    public static double wetByScattering(double dry, double part) {
        return KubelkaMunk.reflectance(KubelkaMunk.ratio(dry) / part);
    }

    /** Dry reflectance from the wet one: S rises again. */
    public static double dryByScattering(double wet, double part) {
        return KubelkaMunk.reflectance(KubelkaMunk.ratio(wet) * part);
    }

    /** The part from a pair of readings. */
    public static double part(double wet, double dry) {
        return KubelkaMunk.ratio(dry) / KubelkaMunk.ratio(wet);
    }

    /** Wet reflectance from the dry one, under a film, the fibre absorbing less because water bends light as fibre does. */
    public static double wetInFilm(double dry) {
        double absorbed = 1 - dry;
        double less = (1 - diffuse(FIBRE / WATER)) / (1 - diffuse(FIBRE));
        return underFilm((1 - absorbed) * absorbed * less + absorbed * absorbed);
    }

    /** Dry reflectance from the wet one under a film, the fibre absorbing less: the other way round, solved for. */
    public static double dryInFilm(double wet) {
        double absorbed = wet >= wetInFilm(1) ? 0 : Roots.between(0, 1, a -> wetInFilm(1 - a) - wet);
        return 1 - absorbed;
    }

    /** Reflectance under a film, by what one meeting with the fibre absorbs. */
    static double underFilm(double absorbed) {
        return 1 - (1 - STRAIGHT) * absorbed / (1 - CAUGHT * (1 - absorbed));
    }

    /** What a smooth surface sends back of light from everywhere, by the index of what is under it. */
    public static double diffuse(double index) {
        double n = index;
        double square = n * n;
        double more = square + 1;
        double less = square - 1;
        double fourth = square * square;
        return 0.5
                + (n - 1) * (3 * n + 1) / (6 * (n + 1) * (n + 1))
                + square * less * less / (more * more * more) * Math.log((n - 1) / (n + 1))
                - 2 * n * square * (square + 2 * n - 1) / (more * (fourth - 1))
                + 8 * fourth * (fourth + 1) / (more * (fourth - 1) * (fourth - 1)) * Math.log(n);
    }
}
