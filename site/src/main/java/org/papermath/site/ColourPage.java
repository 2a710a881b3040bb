package org.papermath.site;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.papermath.colour.ColourDrawing;
import org.papermath.colour.ColourMatch;
import org.papermath.colour.Lab;
import org.papermath.colour.PigmentedPulp;
import org.papermath.colour.PulpColour;
import org.papermath.colour.Reflectance;
import org.papermath.colour.SwatchLadder;
import org.papermath.colour.Wavebands;
import org.papermath.evidence.Assumptions;
import org.papermath.evidence.Scope;
import org.papermath.pulp.Additive;
import org.papermath.pulp.RetentionModel.Circumstance;
import org.papermath.quantity.Dose;
import org.papermath.quantity.Units;

/** What the page on colour shows: the ladders of the examples, a match by them, and its pictures. */
record ColourPage(PigmentedPulp palette, ColourMatch match) {
    private static final String SWATCHES =
            "examples/src/main/resources/org/papermath/examples/four-pigments/swatches.csv";

    static ColourPage of(Path top) throws IOException {
        Assumptions table = Assumptions.standard();
        Map<String, SwatchLadder> ladders = new LinkedHashMap<>();
        List<String> lines = Files.readAllLines(top.resolve(SWATCHES));
        PulpColour pulp = PulpColour.of(reading(lines.get(2)));
        for (String line : lines.subList(3, lines.size())) {
            String[] cells = line.split(",", -1);
            SwatchLadder begun = ladders.getOrDefault(
                    cells[0], SwatchLadder.of(Additive.of(cells[0], Additive.Purpose.PIGMENT), pulp));
            ladders.put(cells[0], begun.swatch(Dose.percent(Double.parseDouble(cells[1])), reading(line)));
        }
        PigmentedPulp palette = PigmentedPulp.of(pulp, table, Circumstance.WITH_AID);
        for (SwatchLadder ladder : ladders.values()) {
            palette = palette.with(ladder.pigment(table));
        }
        return new ColourPage(palette, palette.match(Lab.of(58, 2, 8)));
    }

    private static Reflectance reading(String line) {
        return Reflectance.of(
                Wavebands.SIXTEEN,
                Arrays.stream(line.split(",", -1))
                        .skip(2)
                        .mapToDouble(Double::parseDouble)
                        .toArray());
    }

    Map<String, String> figures() {
        Map<String, String> out = new LinkedHashMap<>();
        out.put("just-seen", likely("colour.just-seen"));
        out.put("seen-at-once", likely("colour.seen-at-once"));
        out.put("departure", likely("colour.mixture-departure"));
        out.put("departure-by-distance", likely("colour.mixture-departure-by-distance"));
        out.put("three-bands", likely("colour.three-bands"));
        out.put("reading-error", likely("colour.reading-error"));
        out.put(
                "first-part",
                Units.fourDigits(100 * Assumptions.standard().si("colour.first-part", Scope.GENERAL)) + " %");
        return out;
    }

    private static String likely(String id) {
        return Units.fourDigits(Assumptions.standard().si(id, Scope.GENERAL));
    }

    /** The swatches, each with its fit. */
    List<String> ladderWords() {
        return palette.pigments().get(0).rungs().stream().map(Object::toString).toList();
    }

    /** What was wanted and what comes nearest, and why it may come out otherwise. */
    List<String> matchWords() {
        List<String> words = new ArrayList<>();
        words.add("wanted " + match.target());
        match.proposals().forEach(one -> words.add(one.toString()));
        words.add("why the last may come out otherwise: "
                + match.proposals().get(match.proposals().size() - 1).colour().causes().stream()
                        .map(Object::toString)
                        .collect(Collectors.joining(", ")));
        return words;
    }

    Map<String, String> pictures() {
        return Map.of(
                "ladder.svg",
                ColourDrawing.ladder(
                                "Yellow ochre on white rag", palette.pigments().get(0))
                        .svg(),
                "reach.svg",
                ColourDrawing.reach("What four pigments reach", palette, match).svg());
    }
}
