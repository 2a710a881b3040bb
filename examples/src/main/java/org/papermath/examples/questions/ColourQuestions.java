package org.papermath.examples.questions;

import org.papermath.colour.ColourMatch;
import org.papermath.colour.Lab;
import org.papermath.examples.StudioColours;

/** Questions of colour. */
public final class ColourQuestions {
    private ColourQuestions() {}

    /** How do I match this colour? */
    @Question(number = "G5", words = "colour match pigment dose shade old sheet")
    public static ColourMatch g05MatchAColour() {
        return StudioColours.palette().match(Lab.of(74.2, 3.6, 19.8));
    }
}
