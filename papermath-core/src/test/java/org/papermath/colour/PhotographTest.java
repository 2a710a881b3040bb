package org.papermath.colour;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import javax.imageio.ImageIO;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Scope;
import org.papermath.quantity.Refused;

/** Photographs made here, whose colours are known. */
class PhotographTest {
    private static final Lab SHEET = Lab.of(68, 12, 34);

    private static StagedPhotograph staged() {
        return new StagedPhotograph();
    }

    private static double off(PhotographCalibration calibration) {
        return calibration.read(StagedPhotograph.SHEET_REGION).lab().difference(SHEET);
    }

    private static double falling(double x, double y) {
        return 1 - 0.35 * x - 0.15 * y * y;
    }

    /** Without noise only the rounding to the steps of the picture is left, which at 8 bits nothing evens out. */
    @ParameterizedTest
    @CsvSource({"16,LINEAR,0.005", "16,SRGB,0.005", "8,SRGB,1.2", "8,LINEAR,1.2"})
    void colourComesBackInEvenLight(int bits, Photograph.Tone tone, double most) {
        Photograph photograph = Photograph.of(staged().bits(bits).tone(tone).scene(), tone);
        PhotographCalibration calibration =
                StagedPhotograph.calibration(photograph).build();
        assertThat(off(calibration)).isLessThan(most);
        assertThat(calibration.meanDifference()).isLessThan(most);
        assertThat(calibration.leftOutDifference()).isLessThan(2 * most);
        assertThat(calibration.cardDifference()).isLessThan(2 * most);
        assertThat(calibration.worst().difference()).isGreaterThanOrEqualTo(calibration.meanDifference());
    }

    /** Noise of 1 % of the range at each pixel, 8 bits, light that falls off by half across the picture, and a warm lamp. */
    @Test
    void colourComesBackInUnevenLightThroughAFlatField() {
        StagedPhotograph day = staged().bits(8).noise(0.01).cast(1.1, 0.9, 0.6).light(PhotographTest::falling);
        Photograph photograph = Photograph.of(day.scene());
        PhotographCalibration flat = StagedPhotograph.calibration(photograph)
                .flatField(Photograph.of(day.exposure(0.7).board()))
                .build();
        assertThat(off(flat)).isLessThan(0.5);
        assertThat(flat.meanDifference()).isLessThan(0.6);
        assertThat(flat.read(StagedPhotograph.SHEET_REGION).scatter()).isLessThan(0.5);
        PhotographCalibration bare =
                StagedPhotograph.calibration(photograph, limit(20)).build();
        assertThat(off(bare)).isGreaterThan(5);
        assertThat(bare.meanDifference()).isGreaterThan(3 * flat.meanDifference());
        assertThat(bare.leftOutDifference()).isGreaterThan(3);
    }

    @Test
    void aFlatFieldDoesNoHarmInEvenLight() {
        StagedPhotograph day = staged().bits(8).noise(0.01);
        Photograph photograph = Photograph.of(day.scene());
        double without = off(StagedPhotograph.calibration(photograph).build());
        double with = off(StagedPhotograph.calibration(photograph)
                .flatField(Photograph.of(day.board()))
                .build());
        assertThat(without).isLessThan(0.3);
        assertThat(with).isLessThan(0.3);
    }

    @Test
    void theScatterTellsAnUnevenSheetAndNotItsNoise() {
        PhotographCalibration calibration = StagedPhotograph.calibration(
                        Photograph.of(staged().noise(0.02).scene()))
                .build();
        PhotographCalibration.RegionColour even = calibration.read(StagedPhotograph.SHEET_REGION);
        PhotographCalibration.RegionColour edge = calibration.read(PictureRegion.pixels(200, 200, 80, 80));
        assertThat(even.scatter()).isLessThan(0.8);
        assertThat(edge.scatter()).isGreaterThan(5);
        assertThat(even.pixels()).isEqualTo(192 * 112);
        assertThat(even.reflectance().lab().difference(even.lab())).isLessThan(1e-6);
        assertThat(even.toString()).contains("scatter ΔE00").contains("21504 pixels");
    }

    @Test
    void aPictureGoesThroughAStreamAsItIs() throws IOException {
        BufferedImage scene = staged().bits(8).scene();
        BufferedImage deep = staged().scene();
        for (BufferedImage image : List.of(scene, deep)) {
            Photograph read = Photograph.read(written(image, "png"));
            PhotographCalibration.RegionColour here =
                    StagedPhotograph.calibration(read).build().read(StagedPhotograph.SHEET_REGION);
            PhotographCalibration.RegionColour there =
                    StagedPhotograph.calibration(Photograph.of(image)).build().read(StagedPhotograph.SHEET_REGION);
            assertThat(here).isEqualTo(there);
        }
        Photograph tiff =
                Photograph.read(written(staged().tone(Photograph.Tone.LINEAR).scene(), "tiff"), Photograph.Tone.LINEAR);
        assertThat(off(StagedPhotograph.calibration(tiff).build())).isLessThan(0.005);
        assertThat(tiff).hasToString("photograph of 480 by 320 pixels, 16 bits");
        Photograph jpeg = Photograph.read(written(staged().bits(8).noise(0.01).scene(), "jpeg"));
        assertThat(off(StagedPhotograph.calibration(jpeg).build())).isLessThan(1);
    }

    private static InputStream written(BufferedImage image, String format) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        assertThat(ImageIO.write(image, format, bytes)).isTrue();
        return new ByteArrayInputStream(bytes.toByteArray());
    }

    @Test
    void whatIsDoneToAPictureLaterDoesNotReachThePhotograph() {
        BufferedImage scene = staged().bits(8).scene();
        Photograph photograph = Photograph.of(scene);
        double before = off(StagedPhotograph.calibration(photograph).build());
        Graphics2D brush = scene.createGraphics();
        brush.setColor(Color.GREEN);
        brush.fillRect(0, 0, scene.getWidth(), scene.getHeight());
        brush.dispose();
        assertThat(off(StagedPhotograph.calibration(photograph).build())).isEqualTo(before);
    }

    /** The order of the colours in memory is the picture's own matter. */
    @ParameterizedTest
    @ValueSource(
            ints = {
                BufferedImage.TYPE_INT_RGB,
                BufferedImage.TYPE_INT_BGR,
                BufferedImage.TYPE_INT_ARGB,
                BufferedImage.TYPE_4BYTE_ABGR,
                BufferedImage.TYPE_INT_ARGB_PRE
            })
    void picturesOfEveryLayoutAreReadAlike(int type) {
        BufferedImage scene = staged().bits(8).scene();
        BufferedImage other = new BufferedImage(scene.getWidth(), scene.getHeight(), type);
        for (int y = 0; y < scene.getHeight(); y++) {
            for (int x = 0; x < scene.getWidth(); x++) {
                other.setRGB(x, y, scene.getRGB(x, y));
            }
        }
        assertThat(off(StagedPhotograph.calibration(Photograph.of(other)).build()))
                .isEqualTo(
                        off(StagedPhotograph.calibration(Photograph.of(scene)).build()));
    }

    @Test
    void regionsInSharesAreTheSamePixels() {
        PhotographCalibration calibration =
                StagedPhotograph.calibration(Photograph.of(staged().scene())).build();
        PictureRegion shares = PictureRegion.shares(244 / 480.0, 174 / 320.0, 0.4, 0.35);
        assertThat(calibration.read(shares)).isEqualTo(calibration.read(StagedPhotograph.SHEET_REGION));
        assertThat(shares).isNotEqualTo(StagedPhotograph.SHEET_REGION);
        assertThat(PictureRegion.pixels(1, 2, 3, 4))
                .isEqualTo(PictureRegion.pixels(1, 2, 3, 4))
                .hasSameHashCodeAs(PictureRegion.pixels(1, 2, 3, 4))
                .hasToString("3 by 4 pixels at 1, 2");
    }

    /** Nothing of the card is taken for granted: twice the reflectance makes no colour of a sheet lighter by itself. */
    @Test
    void aCardOfAnotherReflectanceServesAsWellAndAWrongOneIsSeen() {
        Photograph dark = Photograph.of(staged().card(0.12).scene());
        assertThat(off(StagedPhotograph.calibration(dark)
                        .greyCard(StagedPhotograph.CARD_REGION, 0.12)
                        .build()))
                .isLessThan(0.005);
        assertThat(refused(() -> StagedPhotograph.calibration(dark).build()))
                .satisfies(refused -> assertThat(refused.code()).isEqualTo("photograph.card-off"))
                .hasMessageContaining("0.184 was given");
        PhotographCalibration near = StagedPhotograph.calibration(Photograph.of(staged().scene()))
                .greyCard(StagedPhotograph.CARD_REGION, 0.17)
                .build();
        assertThat(near.cardDifference()).isGreaterThan(near.worst().difference());
    }

    @Test
    void anotherPhotographIsReadByItsCard() {
        StagedPhotograph day = staged().light(PhotographTest::falling);
        PhotographCalibration calibration = StagedPhotograph.calibration(Photograph.of(day.scene()))
                .flatField(Photograph.of(day.board()))
                .build();
        Lab blue = Lab.of(40, -4, -20);
        Photograph second = Photograph.of(day.sheet(blue).exposure(0.5).scene());
        assertThat(calibration
                        .read(second, StagedPhotograph.CARD_REGION, StagedPhotograph.SHEET_REGION)
                        .lab()
                        .difference(blue))
                .isLessThan(0.05);
        Photograph small = Photograph.of(new BufferedImage(100, 100, BufferedImage.TYPE_INT_RGB));
        assertThat(refused(() -> calibration.read(small, StagedPhotograph.CARD_REGION, StagedPhotograph.SHEET_REGION)))
                .hasMessageContaining("the flat field has 480 by 320 pixels and the photograph 100 by 100");
    }

    @Test
    void patchesToldInAnotherLightAreBroughtToDaylight() {
        Photograph photograph = Photograph.of(staged().scene());
        PhotographCalibration.Builder builder = photograph
                .calibration(Assumptions.standard())
                .greyCard(StagedPhotograph.CARD_REGION, StagedPhotograph.CARD);
        int i = 0;
        for (Map.Entry<String, Lab> patch : StagedPhotograph.PATCHES.entrySet()) {
            builder.patch(
                    patch.getKey(),
                    StagedPhotograph.region(i++),
                    patch.getValue().xyz().adaptedTo(Illuminant.D50).lab());
        }
        PhotographCalibration calibration = builder.build();
        assertThat(off(calibration)).isLessThan(0.005);
        assertThat(calibration.patches().get(2).known().difference(Lab.of(44, 30, 26)))
                .isLessThan(1e-6);
        assertThat(calibration.toString()).startsWith("8 patches left ΔE00 0");
    }

    /** A patch given wrongly stands out more where it is left out; which it is can be read. */
    @Test
    void aPatchGivenWronglyIsNamed() {
        Photograph photograph = Photograph.of(staged().scene());
        PhotographCalibration calibration =
                withAGreenGivenWrongly(photograph, Assumptions.standard()).build();
        assertThat(calibration.worst().name()).isEqualTo("green earth");
        assertThat(calibration.worst().leftOut())
                .isGreaterThan(calibration.worst().difference())
                .isCloseTo(Lab.of(57, -16, 14).difference(Lab.of(52, -16, 14)), within(0.1));
        assertThat(calibration.worst().toString()).startsWith("green earth: ΔE00 ");
        assertThat(refused(withAGreenGivenWrongly(photograph, limit(0.5))::build))
                .satisfies(refused -> assertThat(refused.code()).isEqualTo("photograph.residual"))
                .hasMessageContaining("the worst is green earth");
    }

    private static Assumptions limit(double most) {
        return Assumptions.standard().given("colour.patch-residual", Scope.GENERAL, most);
    }

    private static PhotographCalibration.Builder withAGreenGivenWrongly(Photograph photograph, Assumptions table) {
        PhotographCalibration.Builder builder =
                photograph.calibration(table).greyCard(StagedPhotograph.CARD_REGION, StagedPhotograph.CARD);
        int i = 0;
        for (Map.Entry<String, Lab> patch : StagedPhotograph.PATCHES.entrySet()) {
            Lab lab = patch.getKey().equals("green earth") ? Lab.of(57, -16, 14) : patch.getValue();
            builder.patch(patch.getKey(), StagedPhotograph.region(i++), lab);
        }
        return builder;
    }

    /** Left out by the leverage is left out by working it out without. */
    @Test
    void leftOutIsWhatTheOthersTell() {
        Photograph photograph = Photograph.of(staged().bits(8).noise(0.02).scene());
        PhotographCalibration all = StagedPhotograph.calibration(photograph).build();
        List<String> names = List.copyOf(StagedPhotograph.PATCHES.keySet());
        for (int left = 0; left < names.size(); left++) {
            PhotographCalibration.Builder builder = photograph
                    .calibration(Assumptions.standard())
                    .greyCard(StagedPhotograph.CARD_REGION, StagedPhotograph.CARD);
            for (int i = 0; i < names.size(); i++) {
                if (i != left) {
                    builder.patch(names.get(i), StagedPhotograph.region(i), StagedPhotograph.PATCHES.get(names.get(i)));
                }
            }
            Lab without = builder.build().read(StagedPhotograph.region(left)).lab();
            assertThat(without.difference(StagedPhotograph.PATCHES.get(names.get(left))))
                    .isCloseTo(all.patches().get(left).leftOut(), within(1e-6));
        }
    }

    /**
     * A camera that does not see as an eye does: three bell curves over the spectrum. Sheets and patches are pigments whose
     * reflectance rises over a wavelength; what is left is what one matrix cannot turn.
     */
    @Test
    void aCameraUnlikeTheEyeLeavesLittle() {
        List<Reflectance> swatches = List.of(
                rising(0.85, 0.92, 480, 40),
                rising(0.05, 0.06, 500, 60),
                rising(0.07, 0.45, 590, 25),
                rising(0.10, 0.62, 540, 35),
                rising(0.08, 0.55, 575, 20),
                rising(0.22, 0.06, 530, 30),
                rising(0.30, 0.12, 560, 25),
                rising(0.12, 0.30, 510, 40));
        Reflectance sheet = rising(0.25, 0.70, 520, 45);
        double[] card = seenByBells(rising(0.184, 0.184, 500, 10));
        Photograph photograph = Photograph.of(staged().noise(0.005).image((x, y) -> {
            if (y < 150) {
                return seenByBells(swatches.get(Math.min(7, x / 60)));
            }
            return x < 200 ? card : seenByBells(sheet);
        }));
        PhotographCalibration.Builder builder =
                photograph.calibration(Assumptions.standard()).greyCard(PictureRegion.pixels(20, 180, 100, 100), 0.184);
        for (int i = 0; i < swatches.size(); i++) {
            builder.patch(
                    "swatch " + i,
                    PictureRegion.pixels(10 + 60 * i, 20, 40, 100),
                    swatches.get(i).lab());
        }
        PhotographCalibration calibration = builder.build();
        assertThat(calibration.meanDifference()).isBetween(0.1, 2.0);
        assertThat(calibration
                        .read(PictureRegion.pixels(240, 180, 200, 100))
                        .lab()
                        .difference(sheet.lab()))
                .isLessThan(1.5);
    }

    private static Reflectance rising(double from, double to, double at, double over) {
        double[] values = new double[31];
        Arrays.setAll(values, i -> from + (to - from) / (1 + Math.exp((at - 400 - 10 * i) / over)));
        return Reflectance.of(400, 10, values);
    }

    private static double[] seenByBells(Reflectance reflectance) {
        double[][] bells = {{600, 42}, {535, 45}, {460, 32}};
        double[] seen = new double[3];
        for (int k = 0; k < 3; k++) {
            double all = 0;
            for (int i = 0; i < 31; i++) {
                double away = (400 + 10 * i - bells[k][0]) / bells[k][1];
                double share = Math.exp(-away * away / 2);
                seen[k] += share * reflectance.value(i);
                all += share;
            }
            seen[k] /= all;
        }
        return seen;
    }

    private static Refused refused(ThrowingCallable asked) {
        Refused refused = catchThrowableOfType(Refused.class, asked);
        assertThat(refused).isNotNull();
        return refused;
    }

    @Test
    void tooFewOrUnfitPatchesAreRefused() {
        Photograph photograph = Photograph.of(staged().scene());
        PhotographCalibration.Builder builder = photograph.calibration(Assumptions.standard());
        assertThat(refused(builder::build)).hasMessageContaining("no grey card given");
        builder.greyCard(StagedPhotograph.CARD_REGION, StagedPhotograph.CARD);
        for (int i = 0; i < 5; i++) {
            builder.patch("patch " + i, StagedPhotograph.region(i), Lab.of(50, 0, 0));
        }
        assertThat(refused(builder::build)).hasMessageContaining("5 known patches given; at least 6");
        assertThat(refused(() -> builder.patch("patch 3", StagedPhotograph.region(5), SHEET)))
                .hasMessageContaining("a name of its own");
        assertThat(refused(() -> builder.patch(" ", StagedPhotograph.region(5), SHEET)))
                .hasMessageContaining("a name of its own");
        assertThat(refused(() -> builder.greyCard(StagedPhotograph.CARD_REGION, 18)))
                .hasMessageContaining("reflectance of the grey card, a share: 18 is not from 0.02 to 1");
    }

    /** Greys, with the small casts that greys of a shop have. */
    @Test
    void greysDoNotTellColours() {
        double[] lightness = {95, 80, 65, 50, 35, 22, 72, 58};
        double[][] seen = new double[8][];
        for (int i = 0; i < 8; i++) {
            seen[i] = StagedPhotograph.camera(
                    Lab.of(lightness[i], 0.6 * (i % 3 - 1), 0.8 * (i % 2)).xyz());
        }
        double[] card = StagedPhotograph.camera(StagedPhotograph.grey(0.184));
        Photograph photograph = Photograph.of(staged().image((x, y) -> y < 150 ? seen[Math.min(7, x / 60)] : card));
        PhotographCalibration.Builder builder =
                photograph.calibration(Assumptions.standard()).greyCard(StagedPhotograph.CARD_REGION, 0.184);
        for (int i = 0; i < 8; i++) {
            builder.patch("grey " + i, PictureRegion.pixels(10 + 60 * i, 20, 40, 100), Lab.of(lightness[i], 0, 0));
        }
        assertThat(refused(builder::build))
                .satisfies(refused -> assertThat(refused.code()).isEqualTo("photograph.patches-alike"))
                .hasMessageContaining("Greys alone do not tell colours");
    }

    /** One and the same grey to the last bit leaves nothing to divide by. */
    @Test
    void onePatchSixTimesTellsNothing() {
        Photograph photograph = Photograph.of(staged().scene());
        PhotographCalibration.Builder builder = photograph
                .calibration(Assumptions.standard())
                .greyCard(StagedPhotograph.CARD_REGION, StagedPhotograph.CARD);
        for (int i = 0; i < 6; i++) {
            builder.patch(
                    "card " + i,
                    StagedPhotograph.CARD_REGION,
                    StagedPhotograph.grey(0.184).lab());
        }
        assertThat(refused(builder::build).code()).isEqualTo("photograph.patches-alike");
    }

    @Test
    void aColourThatOnePatchAloneTellsIsRefused() {
        Lab[] colours = {
            Lab.of(93, 0, 0),
            Lab.of(70, 0, 0),
            Lab.of(60, 0, 0),
            Lab.of(50, 0, 0),
            Lab.of(40, 45, 20),
            Lab.of(35, 5, -40),
        };
        double[][] seen = Arrays.stream(colours)
                .map(lab -> StagedPhotograph.camera(lab.xyz()))
                .toArray(double[][]::new);
        double[] card = StagedPhotograph.camera(StagedPhotograph.grey(0.184));
        Photograph photograph = Photograph.of(staged().image((x, y) -> y < 150 ? seen[Math.min(5, x / 80)] : card));
        PhotographCalibration.Builder builder =
                photograph.calibration(Assumptions.standard()).greyCard(StagedPhotograph.CARD_REGION, 0.184);
        for (int i = 0; i < colours.length; i++) {
            builder.patch("patch " + i, PictureRegion.pixels(10 + 80 * i, 20, 60, 100), colours[i]);
        }
        assertThat(refused(builder::build))
                .satisfies(refused -> assertThat(refused.code()).isEqualTo("photograph.patch-alone"))
                .hasMessageContaining("only patch patch");
    }

    @Test
    void regionsThatTellNothingAreRefused() {
        PhotographCalibration calibration =
                StagedPhotograph.calibration(Photograph.of(staged().scene())).build();
        assertThat(refused(() -> calibration.read(PictureRegion.pixels(400, 300, 90, 10))))
                .hasMessageContaining("90 by 10 pixels at 400, 300 is not within the picture of 480 by 320 pixels");
        assertThat(refused(() -> calibration.read(PictureRegion.pixels(Integer.MAX_VALUE, 0, Integer.MAX_VALUE, 10)))
                        .code())
                .isEqualTo("photograph.region-outside");
        assertThat(refused(() -> calibration.read(PictureRegion.shares(0.5, 0.5, 0.6, 0.2)))
                        .code())
                .isEqualTo("photograph.region-outside");
        assertThat(refused(() -> calibration.read(PictureRegion.pixels(250, 180, 9, 9))))
                .hasMessageContaining("holds 81 pixels; at least 100");
        assertThat(refused(() -> calibration.read(PictureRegion.shares(0.5, 0.5, 1e-6, 1e-6)))
                        .code())
                .isEqualTo("photograph.region-small");
        assertThat(refused(() -> PictureRegion.pixels(-1, 0, 10, 10)).code()).isEqualTo("photograph.region");
        assertThat(refused(() -> PictureRegion.pixels(0, 0, 0, 10)).code()).isEqualTo("photograph.region");
        assertThat(refused(() -> PictureRegion.shares(0, Double.NaN, 0.1, 0.1))).hasMessageContaining("not a number");
    }

    @Test
    void tooMuchLightIsRefused() {
        Photograph bright = Photograph.of(staged().bits(8).exposure(1.5).scene());
        assertThat(refused(() -> StagedPhotograph.calibration(bright).build()))
                .hasMessageContaining("patch white: 100 % of its pixels stand at the top of the range");
        BufferedImage glint = staged().scene();
        for (int i = 0; i < 30; i++) {
            glint.getRaster().setPixel(250 + i, 200, new int[] {65535, 65535, 65535});
        }
        PhotographCalibration calibration =
                StagedPhotograph.calibration(Photograph.of(glint)).build();
        assertThat(refused(() -> calibration.read(StagedPhotograph.SHEET_REGION))
                        .code())
                .isEqualTo("photograph.clipped");
        for (int i = 10; i < 30; i++) {
            glint.getRaster().setPixel(250 + i, 200, new int[] {30000, 30000, 30000});
        }
        assertThat(off(StagedPhotograph.calibration(Photograph.of(glint)).build()))
                .isLessThan(0.2);
    }

    @Test
    void tooLittleLightToDivideByIsRefused() {
        Photograph dark = Photograph.of(staged().exposure(0.05).scene());
        assertThat(refused(() -> StagedPhotograph.calibration(dark).build()))
                .hasMessageContaining("grey card: its light is 0.7 % of the range");
        Photograph photograph = Photograph.of(staged().scene());
        PhotographCalibration.Builder dim = StagedPhotograph.calibration(photograph)
                .flatField(Photograph.of(staged().exposure(0.02).board()));
        assertThat(refused(dim::build)).hasMessageContaining("white board behind");
        PhotographCalibration.Builder glaring = StagedPhotograph.calibration(photograph)
                .flatField(Photograph.of(staged().exposure(2).board()));
        assertThat(refused(glaring::build).code()).isEqualTo("photograph.clipped");
        Photograph small = Photograph.of(new BufferedImage(100, 100, BufferedImage.TYPE_INT_RGB));
        assertThat(refused(() -> photograph.calibration(Assumptions.standard()).flatField(small)))
                .hasMessageContaining("the flat field has 100 by 100 pixels and the photograph 480 by 320");
    }

    @Test
    void aColourBeyondThePatchesIsRefused() {
        BufferedImage scene = staged().scene();
        for (int y = 170; y < 290; y++) {
            for (int x = 240; x < 440; x++) {
                scene.getRaster().setPixel(x, y, new int[] {0, 20000, 64000});
            }
        }
        PhotographCalibration calibration =
                StagedPhotograph.calibration(Photograph.of(scene)).build();
        assertThat(refused(() -> calibration.read(StagedPhotograph.SHEET_REGION)))
                .satisfies(refused -> assertThat(refused.code()).isEqualTo("photograph.beyond-patches"))
                .hasMessageContaining("Add known patches near its colour");
    }

    @Test
    void picturesOfAnotherKindAreRefused() {
        Map<Integer, String> kinds = Map.of(
                BufferedImage.TYPE_BYTE_GRAY, "grey only",
                BufferedImage.TYPE_BYTE_INDEXED, "a palette of 256 colours",
                BufferedImage.TYPE_USHORT_555_RGB, "5 bits of a colour",
                BufferedImage.TYPE_INT_ARGB, "pixels that are not opaque");
        kinds.forEach((type, said) -> assertThat(refused(() -> Photograph.of(new BufferedImage(20, 20, type))))
                .hasMessageContaining(said));
    }

    @Test
    void hugePicturesAreRefusedBeforeTheyAreDecoded() throws IOException {
        BufferedImage huge = new BufferedImage(8001, 8001, BufferedImage.TYPE_BYTE_BINARY);
        assertThat(refused(() -> Photograph.of(huge)))
                .hasMessageContaining("8001 by 8001 pixels given; at most 64 million pixels");
        InputStream png = written(huge, "png");
        assertThat(refused(() -> Photograph.read(png))).hasMessageContaining("8001 by 8001 pixels given");
    }

    @Test
    void whatIsNoPictureIsRefusedAndAStreamThatFailsFails() throws IOException {
        assertThat(refused(() -> Photograph.read(new ByteArrayInputStream("no picture".getBytes("UTF-8")))))
                .hasMessageContaining("its kind is not known");
        byte[] whole = written(staged().bits(8).scene(), "png").readAllBytes();
        byte[] cut = Arrays.copyOf(whole, whole.length / 2);
        assertThat(refused(() -> Photograph.read(new ByteArrayInputStream(cut))))
                .satisfies(refused -> assertThat(refused.code()).isEqualTo("photograph.unreadable"))
                .hasMessageContaining("Write it as PNG, TIFF or JPEG");
        InputStream broken = new InputStream() {
            @Override
            public int read() throws IOException {
                throw new IOException("gone");
            }
        };
        assertThatThrownBy(() -> Photograph.read(broken))
                .isInstanceOf(IOException.class)
                .hasMessage("gone");
    }

    /** Every byte of the head and some of the rest turned about: a photograph or a refusal, and nothing else. */
    @Test
    void brokenPicturesAreReadOrRefused() throws IOException {
        BufferedImage small = new BufferedImage(24, 16, BufferedImage.TYPE_3BYTE_BGR);
        for (String format : List.of("png", "jpeg", "tiff", "bmp", "gif")) {
            byte[] whole = written(small, format).readAllBytes();
            int refusals = 0;
            for (int i = 0; i < Math.min(whole.length, 200); i++) {
                byte[] turned = whole.clone();
                turned[i] ^= (byte) 0x5a;
                try {
                    assertThat(Photograph.read(new ByteArrayInputStream(turned)).width())
                            .isPositive();
                } catch (Refused refused) {
                    refusals++;
                }
            }
            assertThat(refusals).as(format).isPositive();
        }
    }
}
