package org.papermath.examples;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.papermath.colour.Pigment;
import org.papermath.colour.PigmentedPulp;
import org.papermath.colour.PulpColour;
import org.papermath.colour.Reflectance;
import org.papermath.colour.SwatchLadder;
import org.papermath.colour.Wavebands;
import org.papermath.evidence.Assumptions;
import org.papermath.pulp.Additive;
import org.papermath.pulp.RetentionModel.Circumstance;
import org.papermath.quantity.Dose;
import org.papermath.quantity.Share;

/** The swatches of an invented studio: a white pulp and four pigments, one of them a dispersion of 30 % active matter. */
public final class StudioColours {
    private static final String SWATCHES = "four-pigments/swatches.csv";

    private StudioColours() {}

    /** A ladder for each pigment by its name, made with a retention aid. */
    private static Map<String, SwatchLadder> ladders() {
        Map<String, SwatchLadder> ladders = new LinkedHashMap<>();
        PulpColour white = null;
        for (String line : lines().stream().skip(2).toList()) {
            String[] cells = line.split(",");
            double[] values = Arrays.stream(cells)
                    .skip(2)
                    .mapToDouble(Double::parseDouble)
                    .toArray();
            Reflectance read = Reflectance.of(Wavebands.SIXTEEN, values);
            if (white == null) {
                white = PulpColour.of(read);
                continue;
            }
            ladders.put(
                    cells[0],
                    ladders.getOrDefault(cells[0], SwatchLadder.of(pigment(cells[0]), white))
                            .swatch(Dose.percent(Double.parseDouble(cells[1])), read));
        }
        return ladders;
    }

    /**
     * Returns the pulp with pigments, as the shipped assumptions have it.
     *
     * @param names which pigments; none for all four
     * @return the pulp and its pigments
     */
    public static PigmentedPulp palette(String... names) {
        Assumptions assumptions = Assumptions.standard();
        PigmentedPulp palette = null;
        for (String name : names) {
            if (!ladders().containsKey(name)) {
                throw new IllegalArgumentException(name + ": the swatches are of "
                        + String.join(", ", ladders().keySet()));
            }
        }
        for (Map.Entry<String, SwatchLadder> one : ladders().entrySet()) {
            if (names.length > 0 && !List.of(names).contains(one.getKey())) {
                continue;
            }
            Pigment pigment = one.getValue().pigment(assumptions);
            palette = (palette == null ? PigmentedPulp.of(pigment.pulp(), assumptions, Circumstance.WITH_AID) : palette)
                    .with(pigment);
        }
        if (palette == null) {
            throw new IllegalStateException(SWATCHES + " has none of these pigments");
        }
        return palette;
    }

    private static Additive pigment(String name) {
        Additive pigment = Additive.of(name, Additive.Purpose.PIGMENT);
        return name.equals("bone black") ? pigment.active(Share.percent(30)) : pigment;
    }

    private static List<String> lines() {
        try (InputStream in = StudioColours.class.getResourceAsStream(SWATCHES)) {
            if (in == null) {
                throw new IllegalStateException("the sample is incomplete: " + SWATCHES + " is missing");
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8).lines().toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
