package org.papermath.json.schema;

import java.util.List;
import org.papermath.colour.Illuminant;
import org.papermath.json.mapping.ColourMapping;

/** Colours in documents. */
final class ColourSchemas {
    private ColourSchemas() {}

    static SchemaObject wanted() {
        return inLight("A colour that is wanted, to the observer of 2°.")
                .optional(
                        "told",
                        lab("The colour the doses are told to give, in the same light."),
                        "What the doses are told to give. Stands with within.",
                        OmittedMembers.then("nothing is told of what comes out"))
                .optional(
                        "within",
                        SchemaWords.number(0, ColourMapping.FARTHEST),
                        "How far from the colour told sheets come out at most, nine times in ten: a difference by CIEDE2000.",
                        OmittedMembers.then("nothing is told of what comes out"),
                        1.2);
    }

    static SchemaObject read() {
        return inLight("A colour that was read, to the observer of 2°.");
    }

    private static SchemaObject inLight(String meaning) {
        return lab(meaning)
                .optional(
                        "illuminant",
                        SchemaWords.words(List.of(Illuminant.values()), Illuminant::name),
                        "The light it is told in.",
                        OmittedMembers.is("D65", "daylight"),
                        "D50");
    }

    private static SchemaObject lab(String meaning) {
        return SchemaObject.object()
                .meaning(meaning)
                .required(
                        "l",
                        SchemaWords.number(0, ColourMapping.LIGHTEST),
                        "Lightness L*, 0 for black to 100 for a perfect white.",
                        62.4)
                .required(
                        "a",
                        SchemaWords.number(-ColourMapping.STRONGEST, ColourMapping.STRONGEST),
                        "From green, below zero, to red: a*.",
                        14.1)
                .required(
                        "b",
                        SchemaWords.number(-ColourMapping.STRONGEST, ColourMapping.STRONGEST),
                        "From blue, below zero, to yellow: b*.",
                        48);
    }
}
