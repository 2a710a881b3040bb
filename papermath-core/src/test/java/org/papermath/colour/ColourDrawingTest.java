package org.papermath.colour;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.papermath.evidence.Assumptions;
import org.papermath.pulp.RetentionModel.Circumstance;
import org.papermath.quantity.Refused;

class ColourDrawingTest {
    private static final Assumptions TABLE = Assumptions.standard();
    private static final PigmentedPulp PALETTE =
            new MadeUpStudio(new Random(1), 0.5, 0).palette(Wavebands.THIRTY_ONE, Circumstance.WITH_AID);
    private static final Pattern PATCH = Pattern.compile("<rect fill=\"(#[0-9a-f]{6})\" x=\"([0-9.]+)\" y=\"([0-9.]+)\""
            + " width=\"([0-9.]+)\" height=\"([0-9.]+)\"><title>([^<]+)</title></rect>");

    /** Where a folder is named, pictures are put there to be looked at. */
    private static String shown(String name, ColourDrawing drawing) {
        String folder = System.getProperty("papermath.pictures", "");
        if (!folder.isEmpty()) {
            try {
                Files.writeString(Path.of(folder, name + ".svg"), drawing.svg());
            } catch (IOException e) {
                throw new java.io.UncheckedIOException(e);
            }
        }
        return drawing.svg();
    }

    @Test
    void aLadderHasReadAboveFittedAndBothInWords() {
        Pigment ochre = PALETTE.pigments().get(0);
        String svg = shown("ladder", ColourDrawing.ladder("ochre <on> rag", ochre));
        Matcher patch = PATCH.matcher(svg);
        assertThat(patch.find()).isTrue();
        assertThat(patch.group(6)).startsWith("the pulp: L* ");
        for (SwatchLadder.Rung rung : ochre.rungs()) {
            assertThat(patch.find()).isTrue();
            assertThat(patch.group(1))
                    .isEqualTo(Srgb.shown(rung.read().xyz(Illuminant.D65)).hex());
            assertThat(patch.group(6))
                    .isEqualTo(rung.dose() + " read: " + rung.read().lab());
            double x = Double.parseDouble(patch.group(2));
            double below = Double.parseDouble(patch.group(3)) + Double.parseDouble(patch.group(5));
            assertThat(patch.find()).isTrue();
            assertThat(patch.group(1))
                    .isEqualTo(Srgb.shown(rung.fitted().xyz(Illuminant.D65)).hex());
            assertThat(Double.parseDouble(patch.group(2))).isEqualTo(x);
            assertThat(Double.parseDouble(patch.group(3))).isEqualTo(below);
            assertThat(svg)
                    .contains(">" + rung.dose() + "<")
                    .contains(">L* " + ColourRange.said(rung.read().lab().l(), 1) + "<")
                    .contains(">a* " + ColourRange.said(rung.fitted().lab().a(), 1) + "<")
                    .contains(">ΔE00 " + ColourRange.said(rung.difference()) + "<");
        }
        assertThat(patch.find()).isFalse();
        assertThat(svg)
                .contains("role=\"img\"", "<title>ochre &lt;on&gt; rag</title>", "<desc>The pulp: L* ")
                .contains(">" + ochre + "<")
                .doesNotContain("◊");
    }

    @Test
    void toldAndMadeLieSideBySide() {
        Reflectance told = PALETTE.pulp().reflectance();
        Reflectance made = PALETTE.pigments().get(1).rungs().get(0).read();
        // Stronger in the green than a screen has it.
        Reflectance strong = Reflectance.of(Wavebands.THREE, 0.1, 0.7, 0.1);
        List<ColourDrawing.Pair> pairs =
                List.of(new ColourDrawing.Pair("first", told, made), new ColourDrawing.Pair("second", strong, strong));
        String svg = shown("pairs", ColourDrawing.toldAndMade("a round", pairs, TABLE));
        assertThat(PATCH.matcher(svg).results()).hasSize(4);
        Matcher patch = PATCH.matcher(svg);
        assertThat(patch.find()).isTrue();
        double right = Double.parseDouble(patch.group(2)) + Double.parseDouble(patch.group(4));
        assertThat(patch.group(6)).isEqualTo("first, told: " + told.lab());
        assertThat(patch.find()).isTrue();
        assertThat(Double.parseDouble(patch.group(2))).isEqualTo(right);
        String words = ColourComparison.of(told, made, TABLE).toString();
        assertThat(svg)
                .contains("<desc>first: told " + told.lab() + ", made " + made.lab() + ", " + words + ". second: ")
                .contains(">made " + made.lab() + "<", ">told " + strong.lab() + " ◊<")
                .contains("◊ a screen cannot show this colour; the nearest it can is drawn.");
        assertThat(svg.replaceAll("</text>\n<text[^>]*>", " ")).contains(words);
    }

    @Test
    void theReachHasAllPigmentsByNameAndTheColourWanted() {
        Lab wanted = Lab.of(60, 5, 25);
        ColourMatch match = PALETTE.match(wanted);
        String svg = shown("reach", ColourDrawing.reach("six pigments", PALETTE, match));
        assertThat(svg).contains(">× wanted<", "× wanted: " + wanted + "; ");
        for (Pigment pigment : PALETTE.pigments()) {
            String name = pigment.additive().name();
            assertThat(svg)
                    .contains(">" + name + "<")
                    .contains(">" + name + ", line to " + pigment.strongest() + " on fibre: L* ");
        }
        // Eight steps of each, 25 mixtures of each of 15 pairs, and the pulp.
        assertThat(Pattern.compile("<circle").matcher(svg).results()).hasSize(6 * 8 + 15 * 25 + 1);
        assertThat(ColourDrawing.reach("six pigments", PALETTE).svg()).doesNotContain("wanted");
    }

    /** No dot lies outside the line that is drawn round them. */
    @Test
    void theOutlineHoldsAllDots() {
        String svg = ColourDrawing.reach("x", PALETTE).svg();
        Matcher corners = Pattern.compile("<polygon points=\"([^\"]+)\"").matcher(svg);
        assertThat(corners.find()).isTrue();
        double[][] points = Pattern.compile(" ")
                .splitAsStream(corners.group(1))
                .map(one -> one.split(","))
                .map(one -> new double[] {Double.parseDouble(one[0]), Double.parseDouble(one[1])})
                .toArray(double[][]::new);
        Matcher dot = Pattern.compile("cx=\"([0-9.]+)\" cy=\"([0-9.]+)\"").matcher(svg);
        int dots = 0;
        while (dot.find()) {
            dots++;
            for (int i = 0; i < points.length; i++) {
                double[] from = points[i];
                double[] to = points[(i + 1) % points.length];
                double length = Math.hypot(to[0] - from[0], to[1] - from[1]);
                double off = ((to[0] - from[0]) * (Double.parseDouble(dot.group(2)) - from[1])
                                - (to[1] - from[1]) * (Double.parseDouble(dot.group(1)) - from[0]))
                        / length;
                // The page has b upward, so the inside is on the other hand.
                assertThat(off).isLessThan(0.05);
            }
        }
        assertThat(dots).isGreaterThan(400);
    }

    @Test
    void withoutPigmentsThereIsNothingToReach() {
        PigmentedPulp bare = PigmentedPulp.of(PALETTE.pulp(), TABLE, Circumstance.WITH_AID);
        assertThatThrownBy(() -> ColourDrawing.reach("x", bare))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("no pigment is known");
        assertThat(ColourDrawing.reach("six", PALETTE)).hasToString("colours \"six\"");
    }
}
