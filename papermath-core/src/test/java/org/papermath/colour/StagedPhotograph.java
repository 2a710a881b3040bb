package org.papermath.colour;

import java.awt.color.ColorSpace;
import java.awt.image.BufferedImage;
import java.awt.image.ColorModel;
import java.awt.image.ComponentColorModel;
import java.awt.image.DataBuffer;
import java.awt.image.DataBufferUShort;
import java.awt.image.PixelInterleavedSampleModel;
import java.awt.image.Raster;
import java.awt.image.WritableRaster;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.function.ToDoubleBiFunction;
import org.papermath.evidence.Assumptions;

/**
 * What a camera would have seen: rectangles of known colour on a board, in a light, with an exposure and noise. The camera is
 * a matrix from tristimulus values, so that it sees as an eye does; what it says of a colour is worked out here apart from the
 * library.
 */
final class StagedPhotograph {
    static final int WIDTH = 480;
    static final int HEIGHT = 320;

    /** Tristimulus values over 100 to a camera's red, green and blue, which overlap as those of real ones do. */
    private static final double[][] CAMERA = {{0.75, 0.35, -0.12}, {-0.28, 1.12, 0.14}, {0.03, -0.08, 0.72}};

    /** Patches of a studio: white, black and pigmented swatches. */
    static final Map<String, Lab> PATCHES = patches();

    static final double CARD = 0.184;
    static final PictureRegion CARD_REGION = PictureRegion.pixels(24, 214, 72, 72);
    static final PictureRegion SHEET_REGION = PictureRegion.pixels(244, 174, 192, 112);

    private ToDoubleBiFunction<Double, Double> light = (x, y) -> 1.0;
    private double[] cast = {1, 1, 1};
    private double exposure = 0.8;
    private double noise;
    private int bits = 16;
    private Photograph.Tone tone = Photograph.Tone.SRGB;
    private Lab sheet = Lab.of(68, 12, 34);
    private double card = CARD;

    private static Map<String, Lab> patches() {
        Map<String, Lab> patches = new LinkedHashMap<>();
        patches.put("white", Lab.of(93, -0.5, 3));
        patches.put("black", Lab.of(22, 0.5, 0.5));
        patches.put("red ochre", Lab.of(44, 30, 26));
        patches.put("yellow ochre", Lab.of(66, 13, 48));
        patches.put("green earth", Lab.of(52, -16, 14));
        patches.put("indigo", Lab.of(32, 2, -24));
        patches.put("madder", Lab.of(46, 42, 12));
        patches.put("umber", Lab.of(36, 9, 16));
        return patches;
    }

    static PictureRegion region(int patch) {
        return PictureRegion.pixels(12 + 58 * patch, 24, 40, 60);
    }

    StagedPhotograph light(ToDoubleBiFunction<Double, Double> falling) {
        light = falling;
        return this;
    }

    /** A light of a colour, or a white balance. */
    StagedPhotograph cast(double red, double green, double blue) {
        cast = new double[] {red, green, blue};
        return this;
    }

    StagedPhotograph exposure(double of) {
        exposure = of;
        return this;
    }

    StagedPhotograph noise(double deviation) {
        noise = deviation;
        return this;
    }

    StagedPhotograph bits(int of) {
        bits = of;
        return this;
    }

    StagedPhotograph tone(Photograph.Tone of) {
        tone = of;
        return this;
    }

    StagedPhotograph sheet(Lab of) {
        sheet = of;
        return this;
    }

    StagedPhotograph card(double reflectance) {
        card = reflectance;
        return this;
    }

    BufferedImage scene() {
        List<Lab> colours = List.copyOf(PATCHES.values());
        double[] board = camera(Lab.of(90, 0, 2).xyz());
        double[] grey = camera(grey(card));
        double[] paper = camera(sheet.xyz());
        double[][] patches = colours.stream().map(lab -> camera(lab.xyz())).toArray(double[][]::new);
        return image((x, y) -> {
            if (y >= 20 && y < 88 && x >= 8 && (x - 8) % 58 < 48 && (x - 8) / 58 < patches.length) {
                return patches[(x - 8) / 58];
            }
            if (y >= 210 && y < 290 && x >= 20 && x < 100) {
                return grey;
            }
            return y >= 170 && y < 290 && x >= 240 && x < 440 ? paper : board;
        });
    }

    BufferedImage board() {
        double[] white = camera(Lab.of(94, 0.5, 2).xyz());
        return image((x, y) -> white);
    }

    static Xyz grey(double reflectance) {
        Xyz white = Illuminant.D65.white();
        return new Xyz(white.x() * reflectance, white.y() * reflectance, white.z() * reflectance, Illuminant.D65);
    }

    static double[] camera(Xyz colour) {
        double[] seen = new double[3];
        for (int k = 0; k < 3; k++) {
            seen[k] = (CAMERA[k][0] * colour.x() + CAMERA[k][1] * colour.y() + CAMERA[k][2] * colour.z()) / 100;
        }
        return seen;
    }

    interface Scene {
        double[] at(int x, int y);
    }

    BufferedImage image(Scene scene) {
        Random random = new Random(7);
        BufferedImage image =
                bits == 8 ? new BufferedImage(WIDTH, HEIGHT, BufferedImage.TYPE_3BYTE_BGR) : sixteenBits(WIDTH, HEIGHT);
        WritableRaster raster = image.getRaster();
        int top = (1 << bits) - 1;
        int[] pixel = new int[3];
        for (int y = 0; y < HEIGHT; y++) {
            for (int x = 0; x < WIDTH; x++) {
                double[] light = scene.at(x, y);
                double falls = this.light.applyAsDouble((x + 0.5) / WIDTH, (y + 0.5) / HEIGHT);
                for (int k = 0; k < 3; k++) {
                    double value = light[k] * cast[k] * exposure * falls + noise * random.nextGaussian();
                    double within = Math.max(0, Math.min(1, value));
                    pixel[k] = (int) Math.round(top * (tone == Photograph.Tone.LINEAR ? within : screen(within)));
                }
                raster.setPixel(x, y, pixel);
            }
        }
        return image;
    }

    private static BufferedImage sixteenBits(int width, int height) {
        ColorModel model = new ComponentColorModel(
                ColorSpace.getInstance(ColorSpace.CS_sRGB),
                new int[] {16, 16, 16},
                false,
                false,
                ColorModel.OPAQUE,
                DataBuffer.TYPE_USHORT);
        WritableRaster raster = Raster.createWritableRaster(
                new PixelInterleavedSampleModel(
                        DataBuffer.TYPE_USHORT, width, height, 3, 3 * width, new int[] {0, 1, 2}),
                new DataBufferUShort(3 * width * height),
                null);
        return new BufferedImage(model, raster, false, null);
    }

    /** The curve of sRGB, written down once more. */
    private static double screen(double light) {
        return light <= 0.0031308 ? 12.92 * light : 1.055 * Math.pow(light, 1 / 2.4) - 0.055;
    }

    /** A calibration by all patches, and by a flat field if there is one. */
    static PhotographCalibration.Builder calibration(Photograph photograph) {
        return calibration(photograph, Assumptions.standard());
    }

    static PhotographCalibration.Builder calibration(Photograph photograph, Assumptions assumptions) {
        PhotographCalibration.Builder builder =
                photograph.calibration(assumptions).greyCard(CARD_REGION, CARD);
        int i = 0;
        for (Map.Entry<String, Lab> patch : PATCHES.entrySet()) {
            builder.patch(patch.getKey(), region(i++), patch.getValue());
        }
        return builder;
    }
}
