package org.papermath.colour;

import java.awt.color.ColorSpace;
import java.awt.image.BufferedImage;
import java.awt.image.ColorModel;
import java.awt.image.DataBuffer;
import java.awt.image.IndexColorModel;
import java.awt.image.Raster;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.util.Iterator;
import java.util.Locale;
import java.util.Objects;
import javax.imageio.ImageIO;
import javax.imageio.ImageReader;
import javax.imageio.stream.ImageInputStream;
import javax.imageio.stream.MemoryCacheImageInputStream;
import org.jspecify.annotations.Nullable;
import org.papermath.evidence.Assumptions;
import org.papermath.quantity.Refused;

/**
 * A photograph as so much linear light in red, green and blue at each pixel, to measure colour in once it is
 * {@linkplain PhotographCalibration calibrated}. It shows the sheets beside a grey card and patches of known colour, all lying
 * flat in one light from the side. Take it with fixed exposure and white balance, and without any picture style: best as a
 * linear picture of 16 bits developed from the camera's raw file, else as sRGB of 8 or 16 bits. What a phone does to make
 * pictures pleasing cannot be undone; the patches then show it, and it is refused. Immutable.
 *
 * <p>Here a picture is painted, in place of one that is {@linkplain #read(InputStream) read}: a grey card, six patches, a sheet.
 *
 * <pre>{@code
 * List<String> painted = List.of(
 *         "#767676", "#e8e4da", "#8a4b32", "#c79a4a", "#6b7f5e", "#3f4a66", "#5a3f38", "#c8a05a");
 * var picture = new java.awt.image.BufferedImage(160, 20, java.awt.image.BufferedImage.TYPE_INT_RGB);
 * for (int i = 0; i < 160 * 20; i++) {
 *     picture.setRGB(i % 160, i / 160, Integer.parseInt(painted.get(i % 160 / 20).substring(1), 16));
 * }
 * var builder = Photograph.of(picture).calibration(Assumptions.standard());
 * builder.greyCard(PictureRegion.pixels(0, 0, 20, 20), 0.181);
 * for (int i = 1; i < 7; i++) {
 *     Lab known = Srgb.parse(painted.get(i)).xyz().lab();
 *     builder.patch(painted.get(i), PictureRegion.pixels(20 * i, 0, 20, 20), known);
 * }
 * PhotographCalibration calibration = builder.build();
 * calibration.read(PictureRegion.pixels(140, 0, 20, 20)).xyz().srgb(); // #c8a05a
 * }</pre>
 *
 * <p>Pictures are decoded by the JDK. The library does not require the module {@code java.desktop} of those who measure no
 * colour; a program that is a module and uses this class says {@code requires java.desktop} itself, or is started with
 * {@code --add-modules java.desktop}. Programs on the class path need nothing.
 */
public final class Photograph {
    /**
     * Some 400 MB at 16 bits. A region of a few hundred pixels is told well, and no sheet needs more of them than any camera
     * of a studio has.
     */
    private static final long MOST_PIXELS = 64_000_000;
    /** Not packed, the most pixels at 16 bits take somewhat more; every camera packs. */
    private static final int MOST_BYTES = 256 << 20;
    /** A smaller region tells the noise of its pixels. */
    private static final int LEAST_PIXELS = 100;
    /** Fewer pixels of a region at the top of the range, as a speck that glints, do not move its mean to speak of. */
    private static final double MOST_CLIPPED = 0.001;
    /** Into so many fields each way a region is divided to see how even it is. */
    private static final int FIELDS = 8;

    private final Raster pixels;
    private final double[] linear;

    /** How the numbers of a picture stand for light. */
    public enum Tone {
        /**
         * By the curve of sRGB, as in pictures for the screen; Display P3 has the same.
         *
         * @source IEC 61966-2-1
         */
        SRGB,
        /** In proportion, as in pictures developed from raw files with a gamma of 1; the greatest number is the brightest. */
        LINEAR
    }

    private Photograph(Raster pixels, double[] linear) {
        this.pixels = pixels;
        this.linear = linear;
    }

    /**
     * Takes a picture for a photograph with the tone of sRGB.
     *
     * @param image red, green and blue of 8 to 16 bits; it is copied
     * @return the photograph
     * @throws Refused if it is too large or no picture of that kind
     */
    public static Photograph of(BufferedImage image) {
        return of(image, Tone.SRGB);
    }

    /**
     * Takes a picture for a photograph. Its numbers are read as they stand, by the tone said; what the picture says of its
     * colour space is not used.
     *
     * @param image red, green and blue of 8 to 16 bits; it is copied
     * @param tone how its numbers stand for light
     * @return the photograph
     * @throws Refused if it is too large or no picture of that kind
     */
    public static Photograph of(BufferedImage image, Tone tone) {
        Objects.requireNonNull(image, "image");
        Objects.requireNonNull(tone, "tone");
        checkSize(image.getWidth(), image.getHeight());
        checkKind(image);
        return new Photograph(image.copyData(null), table(image.getColorModel().getComponentSize(0), tone));
    }

    /**
     * Reads a picture with the tone of sRGB.
     *
     * @param stream PNG, TIFF, JPEG or what else the JDK decodes, at most 256 MB, read to its end and not closed
     * @return the photograph
     * @throws Refused if the JDK cannot decode it, or it is too large or no picture in red, green and blue
     * @throws IOException if the stream fails
     */
    public static Photograph read(InputStream stream) throws IOException {
        return read(stream, Tone.SRGB);
    }

    /**
     * Reads a picture.
     *
     * @param stream PNG, TIFF, JPEG or what else the JDK decodes, at most 256 MB, read to its end and not closed
     * @param tone how its numbers stand for light
     * @return the photograph
     * @throws Refused if the JDK cannot decode it, or it is too large or no picture in red, green and blue
     * @throws IOException if the stream fails
     */
    public static Photograph read(InputStream stream, Tone tone) throws IOException {
        Objects.requireNonNull(stream, "stream");
        Objects.requireNonNull(tone, "tone");
        byte[] all = stream.readNBytes(MOST_BYTES + 1);
        if (all.length > MOST_BYTES) {
            throw tooLarge("more than " + (MOST_BYTES >> 20) + " MB", (MOST_BYTES >> 20) + " MB");
        }
        BufferedImage image = decoded(all);
        checkKind(image);
        return new Photograph(image.getRaster(), table(image.getColorModel().getComponentSize(0), tone));
    }

    private static BufferedImage decoded(byte[] all) {
        try (ImageInputStream input = new MemoryCacheImageInputStream(new ByteArrayInputStream(all))) {
            Iterator<ImageReader> readers = ImageIO.getImageReaders(input);
            if (!readers.hasNext()) {
                throw unreadable("its kind is not known");
            }
            ImageReader reader = readers.next();
            try {
                reader.setInput(input, true, true);
                checkSize(reader.getWidth(0), reader.getHeight(0));
                return reader.read(0);
            } finally {
                reader.dispose();
            }
        } catch (Refused refused) {
            throw refused;
        } catch (IOException | RuntimeException broken) {
            // Decoders answer a broken picture with exceptions of many kinds.
            String reason = broken.getMessage();
            Refused refused = unreadable(reason == null ? "it is broken" : reason);
            refused.initCause(broken);
            throw refused;
        }
    }

    private static Refused unreadable(String reason) {
        return Refused.of(
                "photograph.unreadable",
                "photograph: it cannot be decoded (" + reason + "). Write it as PNG, TIFF or JPEG, for example with the"
                        + " program that develops the camera's raw files.",
                "reason",
                reason);
    }

    private static void checkSize(int width, int height) {
        if ((long) width * height > MOST_PIXELS) {
            throw tooLarge(width + " by " + height + " pixels", MOST_PIXELS / 1_000_000 + " million pixels");
        }
    }

    private static Refused tooLarge(String given, String most) {
        return Refused.of(
                "photograph.too-large",
                "photograph: " + given + " given; at most " + most + " are read. Scale it to half, or cut off what lies"
                        + " around the sheets; patches of a few hundred pixels are told as well.",
                "given",
                given,
                "most",
                most);
    }

    private static void checkKind(BufferedImage image) {
        String found = wrong(image);
        if (found != null) {
            throw Refused.of(
                    "photograph.kind",
                    "photograph: it has " + found + "; give red, green and blue of 8 to 16 bits each, and nothing that"
                            + " shines through.",
                    "found",
                    found);
        }
    }

    private static @Nullable String wrong(BufferedImage image) {
        ColorModel model = image.getColorModel();
        if (model instanceof IndexColorModel palette) {
            return "a palette of " + palette.getMapSize() + " colours";
        }
        if (model.getColorSpace().getType() != ColorSpace.TYPE_RGB) {
            return model.getNumColorComponents() == 1 ? "grey only" : "other colours than red, green and blue";
        }
        int type = image.getRaster().getDataBuffer().getDataType();
        int bits = model.getComponentSize(0);
        boolean whole = type == DataBuffer.TYPE_BYTE || type == DataBuffer.TYPE_USHORT || type == DataBuffer.TYPE_INT;
        if (!whole || bits < 8 || bits > 16 || model.getComponentSize(1) != bits || model.getComponentSize(2) != bits) {
            return whole ? bits + " bits of a colour" : "numbers with a sign or a point";
        }
        return model.hasAlpha() && isAnywhereClear(image) ? "pixels that are not opaque" : null;
    }

    private static boolean isAnywhereClear(BufferedImage image) {
        Raster raster = image.getRaster();
        int alpha = image.getColorModel().getNumColorComponents();
        int[] row = new int[raster.getWidth()];
        int opaque = (1 << image.getColorModel().getComponentSize(alpha)) - 1;
        for (int y = 0; y < raster.getHeight(); y++) {
            raster.getSamples(0, y, row.length, 1, alpha, row);
            for (int value : row) {
                if (value != opaque) {
                    return true;
                }
            }
        }
        return false;
    }

    private static double[] table(int bits, Tone tone) {
        double[] table = new double[1 << bits];
        for (int i = 0; i < table.length; i++) {
            double value = (double) i / (table.length - 1);
            table[i] = tone == Tone.LINEAR ? value : Srgb.decoded(value);
        }
        return table;
    }

    /**
     * Begins a calibration by what the photograph shows.
     *
     * @param assumptions where {@code colour.patch-residual} is looked up
     * @return a builder
     */
    public PhotographCalibration.Builder calibration(Assumptions assumptions) {
        return new PhotographCalibration.Builder(this, Objects.requireNonNull(assumptions, "assumptions"));
    }

    /**
     * Returns the width.
     *
     * @return columns of pixels, as stored
     */
    public int width() {
        return pixels.getWidth();
    }

    /**
     * Returns the height.
     *
     * @return rows of pixels, as stored
     */
    public int height() {
        return pixels.getHeight();
    }

    /** The mean light of a region, and of its fields. */
    record Light(double[] mean, double[][] fields, int count) {}

    /** What stands in a region, over the light that a flat field tells there; refused where it is clipped. */
    Light light(PictureRegion region, String what, @Nullable FlatField flat) {
        int[] box = region.in(width(), height(), what);
        int across = box[2] - box[0];
        int down = box[3] - box[1];
        long count = (long) across * down;
        if (count < LEAST_PIXELS) {
            throw Refused.of(
                    "photograph.region-small",
                    what + ": " + region + " holds " + count + " pixels; at least " + LEAST_PIXELS
                            + " are needed, for single pixels are noise. Make it larger, or photograph from nearer.",
                    "what",
                    what,
                    "pixels",
                    count,
                    "least",
                    LEAST_PIXELS);
        }
        if (flat != null) {
            flat.check(box, what);
        }
        Sums whole = sums(box, flat, FIELDS, FIELDS);
        checkClipped(what, whole.clippedShare());
        return new Light(whole.mean(), whole.means(), (int) count);
    }

    static boolean isClipped(double share) {
        return share > MOST_CLIPPED;
    }

    static void checkClipped(String what, double share) {
        if (isClipped(share)) {
            throw Refused.of(
                    "photograph.clipped",
                    what + ": " + ColourRange.said(Math.max(0.1, 100 * share), 1)
                            + " % of its pixels stand at the top of the"
                            + " range, where brighter light makes no difference. Expose less, or choose a part that does"
                            + " not glint.",
                    "what",
                    what,
                    "share",
                    share);
        }
    }

    /** Sums over a rectangle divided into so many fields each way, fewer where it is not so many pixels wide. */
    Sums sums(int[] box, @Nullable FlatField flat, int most, int mostDown) {
        int across = box[2] - box[0];
        int bands = pixels.getNumBands();
        int[] row = new int[across * bands];
        double[] there = {1, 1, 1};
        Sums sums = new Sums(Math.min(most, across), Math.min(mostDown, box[3] - box[1]));
        for (int y = box[1]; y < box[3]; y++) {
            pixels.getPixels(box[0], y, across, 1, row);
            int down = (int) ((long) (y - box[1]) * sums.down / (box[3] - box[1]));
            for (int x = 0; x < across; x++) {
                if (flat != null) {
                    flat.at(box[0] + x, y, there);
                }
                int field = down * sums.across + (int) ((long) x * sums.across / across);
                boolean top = false;
                for (int k = 0; k < 3; k++) {
                    int value = row[x * bands + k];
                    sums.light[field][k] += linear[value] / there[k];
                    top |= value == linear.length - 1;
                }
                sums.count[field]++;
                sums.clipped[field] += top ? 1 : 0;
            }
        }
        return sums;
    }

    /** Light summed over fields. */
    static final class Sums {
        final int across;
        final int down;
        final double[][] light;
        final int[] count;
        final int[] clipped;

        private Sums(int across, int down) {
            this.across = across;
            this.down = down;
            this.light = new double[across * down][3];
            this.count = new int[across * down];
            this.clipped = new int[across * down];
        }

        double[][] means() {
            double[][] means = new double[light.length][3];
            for (int i = 0; i < means.length; i++) {
                for (int k = 0; k < 3; k++) {
                    means[i][k] = light[i][k] / count[i];
                }
            }
            return means;
        }

        private double[] mean() {
            double[] mean = new double[3];
            long all = 0;
            for (int i = 0; i < light.length; i++) {
                all += count[i];
                for (int k = 0; k < 3; k++) {
                    mean[k] += light[i][k];
                }
            }
            for (int k = 0; k < 3; k++) {
                mean[k] /= all;
            }
            return mean;
        }

        private double clippedShare() {
            long all = 0;
            long top = 0;
            for (int i = 0; i < count.length; i++) {
                all += count[i];
                top += clipped[i];
            }
            return (double) top / all;
        }
    }

    @Override
    public String toString() {
        int bits = Integer.numberOfTrailingZeros(linear.length);
        return String.format(Locale.ROOT, "photograph of %d by %d pixels, %d bits", width(), height(), bits);
    }
}
