package org.papermath.colour;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.papermath.quantity.Refused;

class PhotographPropertyTest {
    private static Lab read(Photograph photograph) {
        return StagedPhotograph.calibration(photograph)
                .build()
                .read(StagedPhotograph.SHEET_REGION)
                .lab();
    }

    /** How long it was exposed, the colour of the light and the white balance cancel. */
    @Property(tries = 25, seed = "2026")
    void exposureAndCastCancel(
            @ForAll @DoubleRange(min = 0.3, max = 0.8) double exposure,
            @ForAll @DoubleRange(min = 0.5, max = 1.2) double red,
            @ForAll @DoubleRange(min = 0.5, max = 1.2) double blue,
            @ForAll @DoubleRange(min = 30, max = 85) double lightness,
            @ForAll @DoubleRange(min = -12, max = 25) double a,
            @ForAll @DoubleRange(min = -15, max = 30) double b) {
        Lab sheet = Lab.of(lightness, a, b);
        Photograph photograph = Photograph.of(new StagedPhotograph()
                .exposure(exposure)
                .cast(red, 1, blue)
                .sheet(sheet)
                .scene());
        assertThat(read(photograph).difference(sheet)).isLessThan(0.02);
    }

    /** A slope of the light in any direction, and a fall towards the corners, cancel through the board. */
    @Property(tries = 25, seed = "2026")
    void unevenLightCancels(
            @ForAll @DoubleRange(min = -0.3, max = 0.3) double across,
            @ForAll @DoubleRange(min = -0.3, max = 0.3) double down,
            @ForAll @DoubleRange(min = 0, max = 0.3) double corners,
            @ForAll @DoubleRange(min = 0.3, max = 0.7) double boardExposure) {
        StagedPhotograph day = new StagedPhotograph()
                .exposure(0.55)
                .light((x, y) -> 1
                        + across * (x - 0.5)
                        + down * (y - 0.5)
                        - corners * ((x - 0.5) * (x - 0.5) + (y - 0.5) * (y - 0.5)));
        Photograph scene = Photograph.of(day.scene());
        Photograph board = Photograph.of(day.exposure(boardExposure).board());
        PhotographCalibration calibration =
                StagedPhotograph.calibration(scene).flatField(board).build();
        assertThat(calibration.read(StagedPhotograph.SHEET_REGION).lab().difference(Lab.of(68, 12, 34)))
                .isLessThan(0.05);
        assertThat(calibration.meanDifference()).isLessThan(0.05);
    }

    /** Wherever a region lies, it is read or refused. */
    @Property(tries = 500, seed = "2026")
    void aRegionIsReadOrRefused(
            @ForAll @IntRange(min = -5, max = 500) int left,
            @ForAll @IntRange(min = -5, max = 340) int top,
            @ForAll @IntRange(min = -5, max = 200) int width,
            @ForAll @IntRange(min = -5, max = 200) int height) {
        PhotographCalibration calibration = Once.CALIBRATION;
        try {
            PhotographCalibration.RegionColour colour =
                    calibration.read(PictureRegion.pixels(left, top, width, height));
            assertThat(colour.pixels()).isEqualTo(width * height);
            assertThat(colour.lab().l()).isBetween(15.0, 97.0);
            assertThat(colour.scatter()).isBetween(0.0, 100.0);
        } catch (Refused refused) {
            assertThat(refused.code()).startsWith("photograph.region");
            assertThat(left < 0
                            || top < 0
                            || width < 1
                            || height < 1
                            || left + width > 480
                            || top + height > 320
                            || width * height < 100)
                    .isTrue();
        }
    }

    private static final class Once {
        static final PhotographCalibration CALIBRATION = StagedPhotograph.calibration(
                        Photograph.of(new StagedPhotograph().bits(8).scene()))
                .build();
    }

    /** The weights make an error of a patch count by what the eye sees of it: the slope is that of lightness. */
    @Property(tries = 200, seed = "2026")
    void weightsAreTheSteepnessOfLightness(@ForAll @DoubleRange(min = 0, max = 1) double share) {
        double step = 1e-7;
        double low = Lab.of(0, 100 * Math.max(0, share - step), 0, Illuminant.D65)[0];
        double high = Lab.of(0, 100 * (share + step), 0, Illuminant.D65)[0];
        double slope = (high - low) / (share - step < 0 ? share + step : 2 * step) / 116;
        assertThat(Lab.steepness(share)).isCloseTo(slope, within(1e-4 * slope + 1e-4));
    }
}
