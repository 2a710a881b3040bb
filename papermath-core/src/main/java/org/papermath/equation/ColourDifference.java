package org.papermath.equation;

/**
 * How far two colours lie apart, by lightness L, red-green a and yellow-blue b.
 *
 * @source ISO/CIE 11664-6 (CIEDE2000), in the form of Sharma, Wu and Dalal, Color Research and Application 30, 2005, with all
 *     three weights at 1
 */
public final class ColourDifference {
    private static final double TO_THE_SEVENTH = Math.pow(25, 7);

    private ColourDifference() {}

    /** CIEDE2000 of two colours, each as L, a, b. */
    public static double of(double[] one, double[] other) {
        double[] part = parts(one, other);
        return Math.sqrt(
                Math.max(0, part[0] * part[0] + part[1] * part[1] + part[2] * part[2] + part[3] * part[1] * part[2]));
    }

    /**
     * The parts CIEDE2000 is made of: lightness, chroma and hue, each over its weight and with the sign of the way from the
     * first colour to the other, and by how much chroma and hue go together.
     */
    public static double[] parts(double[] one, double[] other) {
        double chroma = (Math.hypot(one[1], one[2]) + Math.hypot(other[1], other[2])) / 2;
        double seventh = Math.pow(chroma, 7);
        double widened = 1.5 - 0.5 * Math.sqrt(seventh / (seventh + TO_THE_SEVENTH));
        double a1 = one[1] * widened;
        double a2 = other[1] * widened;
        double c1 = Math.hypot(a1, one[2]);
        double c2 = Math.hypot(a2, other[2]);
        double h1 = hue(a1, one[2]);
        double h2 = hue(a2, other[2]);
        boolean grey = c1 * c2 == 0;
        double turn = 0;
        double middle = h1 + h2;
        if (!grey) {
            turn = h2 - h1;
            if (turn > 180) {
                turn -= 360;
            } else if (turn < -180) {
                turn += 360;
            }
            if (Math.abs(h1 - h2) > 180) {
                middle = middle < 360 ? middle + 360 : middle - 360;
            }
            middle /= 2;
        }
        double lightness = (one[0] + other[0]) / 2 - 50;
        double meanChroma = (c1 + c2) / 2;
        double hueWeight = 1
                - 0.17 * cos(middle - 30)
                + 0.24 * cos(2 * middle)
                + 0.32 * cos(3 * middle + 6)
                - 0.20 * cos(4 * middle - 63);
        double meanSeventh = Math.pow(meanChroma, 7);
        double blue = (middle - 275) / 25;
        double turned = -2
                * Math.sqrt(meanSeventh / (meanSeventh + TO_THE_SEVENTH))
                * Math.sin(Math.toRadians(60 * Math.exp(-blue * blue)));
        return new double[] {
            (other[0] - one[0]) / (1 + 0.015 * lightness * lightness / Math.sqrt(20 + lightness * lightness)),
            (c2 - c1) / (1 + 0.045 * meanChroma),
            2 * Math.sqrt(c1 * c2) * Math.sin(Math.toRadians(turn) / 2) / (1 + 0.015 * meanChroma * hueWeight),
            turned
        };
    }

    private static double hue(double a, double b) {
        if (a == 0 && b == 0) {
            return 0;
        }
        double degrees = Math.toDegrees(Math.atan2(b, a));
        return degrees < 0 ? degrees + 360 : degrees;
    }

    private static double cos(double degrees) {
        return Math.cos(Math.toRadians(degrees));
    }
}
