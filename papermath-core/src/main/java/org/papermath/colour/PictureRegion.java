package org.papermath.colour;

import java.util.Objects;
import org.papermath.quantity.Refused;

/**
 * A rectangle of a picture, in pixels or in shares of its width and height, from its upper left corner. It counts in the
 * picture as it is stored: that a phone was held upright is often only noted beside it, and is not followed here. Immutable.
 */
public final class PictureRegion {
    private final double left;
    private final double top;
    private final double width;
    private final double height;
    private final boolean inShares;

    private PictureRegion(double left, double top, double width, double height, boolean inShares) {
        this.left = left;
        this.top = top;
        this.width = width;
        this.height = height;
        this.inShares = inShares;
        if (!(left >= 0 && top >= 0 && width > 0 && height > 0) || !Double.isFinite(left + top + width + height)) {
            throw Refused.of(
                    "photograph.region",
                    "region: " + this + " given; left and top are zero or more, width and height above zero.",
                    "given",
                    toString());
        }
    }

    /**
     * Makes a region in pixels.
     *
     * @param left columns of pixels left of it, zero or more
     * @param top rows of pixels above it, zero or more
     * @param width columns in it, above zero
     * @param height rows in it, above zero
     * @return the region
     * @throws Refused if it has no pixels, or begins outside of every picture
     */
    public static PictureRegion pixels(int left, int top, int width, int height) {
        return new PictureRegion(left, top, width, height, false);
    }

    /**
     * Makes a region in shares of the width and height of the picture, which stays in place when a picture is scaled.
     *
     * @param left share of the width left of it, zero or more
     * @param top share of the height above it, zero or more
     * @param width share of the width in it, above zero
     * @param height share of the height in it, above zero
     * @return the region
     * @throws Refused if it has no pixels, or begins outside of every picture
     */
    public static PictureRegion shares(double left, double top, double width, double height) {
        return new PictureRegion(left, top, width, height, true);
    }

    /** Where it begins and ends in a picture: left, top, right, bottom. */
    int[] in(int pictureWidth, int pictureHeight, String what) {
        double across = inShares ? pictureWidth : 1;
        double down = inShares ? pictureHeight : 1;
        double right = Math.rint((left + width) * across);
        double bottom = Math.rint((top + height) * down);
        if (right > pictureWidth || bottom > pictureHeight) {
            throw Refused.of(
                    "photograph.region-outside",
                    what + ": " + this + " is not within the picture of " + pictureWidth + " by " + pictureHeight
                            + " pixels. Count from its upper left corner, in the picture as it is stored.",
                    "what",
                    what,
                    "region",
                    toString(),
                    "picture",
                    pictureWidth + " x " + pictureHeight);
        }
        return new int[] {(int) Math.rint(left * across), (int) Math.rint(top * down), (int) right, (int) bottom};
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof PictureRegion that
                && that.left == left
                && that.top == top
                && that.width == width
                && that.height == height
                && that.inShares == inShares;
    }

    @Override
    public int hashCode() {
        return Objects.hash(left, top, width, height, inShares);
    }

    @Override
    public String toString() {
        return said(width) + " by " + said(height) + (inShares ? " of the picture" : " pixels") + " at " + said(left)
                + ", " + said(top);
    }

    private static String said(double value) {
        return Double.isFinite(value) ? ColourRange.said(value, 4) : "not a number";
    }
}
