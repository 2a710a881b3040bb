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
        double meanChroma = (c1 + c2) / 2;
        return new double[] {
            (other[0] - one[0]) / lightWeight((one[0] + other[0]) / 2),
            (c2 - c1) / chromaWeight(meanChroma),
            2 * Math.sqrt(c1 * c2) * Math.sin(Math.toRadians(turn) / 2) / hueWeight(meanChroma, middle),
            turned(meanChroma, middle)
        };
    }

    /**
     * Three axes at a colour along which small changes of L, a and b add up to CIEDE2000 by the rule of Pythagoras: rows for
     * lightness, chroma and hue.
     */
    public static double[][] axes(double[] lab) {
        double chroma = Math.hypot(lab[1], lab[2]);
        double seventh = Math.pow(chroma, 7);
        double widened = 1.5 - 0.5 * Math.sqrt(seventh / (seventh + TO_THE_SEVENTH));
        double a = lab[1] * widened;
        double strong = Math.hypot(a, lab[2]);
        double cos = strong == 0 ? 1 : a / strong;
        double sin = strong == 0 ? 0 : lab[2] / strong;
        double hue = hue(a, lab[2]);
        double light = lightWeight(lab[0]);
        double chromaWeight = chromaWeight(strong);
        double hueWeight = hueWeight(strong, hue);
        double turned = turned(strong, hue);
        double along = Math.sqrt(Math.max(0, 1 - turned * turned / 4));
        double[][] rows = new double[3][3];
        rows[0][0] = 1 / light;
        rows[1][1] = (cos / chromaWeight - turned / 2 * sin / hueWeight) * widened;
        rows[1][2] = sin / chromaWeight + turned / 2 * cos / hueWeight;
        rows[2][1] = -sin / hueWeight * along * widened;
        rows[2][2] = cos / hueWeight * along;
        return rows;
    }

    /**
     * Three axes at a colour that hold for far ways too: rows for lightness, chroma and hue. CIEDE2000 is not made for them: a
     * grey would be nearer to a strong red than a duller red is.
     *
     * @source CIE 116, 1995 (CIE94), with the weights of the colour gone from; recalled, not looked up
     */
    public static double[][] farAxes(double[] lab) {
        double chroma = Math.hypot(lab[1], lab[2]);
        double cos = chroma == 0 ? 1 : lab[1] / chroma;
        double sin = chroma == 0 ? 0 : lab[2] / chroma;
        double strong = 1 + 0.045 * chroma;
        double hue = 1 + 0.015 * chroma;
        return new double[][] {{1, 0, 0}, {0, cos / strong, sin / strong}, {0, -sin / hue, cos / hue}};
    }

    private static double lightWeight(double lightness) {
        double off = (lightness - 50) * (lightness - 50);
        return 1 + 0.015 * off / Math.sqrt(20 + off);
    }

    private static double chromaWeight(double chroma) {
        return 1 + 0.045 * chroma;
    }

    private static double hueWeight(double chroma, double hue) {
        return 1
                + 0.015
                        * chroma
                        * (1
                                - 0.17 * cos(hue - 30)
                                + 0.24 * cos(2 * hue)
                                + 0.32 * cos(3 * hue + 6)
                                - 0.20 * cos(4 * hue - 63));
    }

    private static double turned(double chroma, double hue) {
        double seventh = Math.pow(chroma, 7);
        double blue = (hue - 275) / 25;
        return -2
                * Math.sqrt(seventh / (seventh + TO_THE_SEVENTH))
                * Math.sin(Math.toRadians(60 * Math.exp(-blue * blue)));
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
